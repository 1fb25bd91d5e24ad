# About the numbers: methods, equations, limits and sources, as the code has them.

# Fixed texts of the page.
page-title = À propos des chiffres
page-intro = Comment chaque sorte de chiffre est calculée, où cela vaut et où cela s’arrête, et sur quoi cela repose. Chaque constat et chaque chiffre s’ouvre aussi sur son propre calcul et sa source.
page-limit = Où cela s’arrête
page-rests = Repose sur
page-trust = Quelle confiance accorder à une valeur
page-trustAbout = Chaque valeur du catalogue porte sa source et l’un de quatre degrés : publiée, lorsqu’elle a été lue dans la source nommée ; calculée par une équation publiée ; déclarée par les vendeurs d’une telle matière ; ou de mémoire, à vérifier avant que quoi que ce soit en dépende. Ce qui n’est pas connu est dit, et l’absence de chiffre n’est pas un bon chiffre.
page-sources = D’où viennent les données : { $count } sources
page-caution = C’est un calculateur pour préparer. Il ne remplace ni challenge test, ni essai de stabilité, ni évaluation de la sécurité ; les règles locales décident.
page-heads--composition = Composition
page-heads--batch = Quantité à remplir
page-heads--rounding = Fiche de pesée
page-heads--solubility = Ce qui se dissout
page-heads--ph = Le pH
page-heads--preservation = Conservation
page-heads--emulsion = Émulsions
page-heads--glycerite = Extraits glycérinés et solutions
page-heads--cooling = Refroidissement
page-heads--dates = Dates
page-heads--colour = Couleur
page-methods--composition = Chaque ligne est décomposée en constituants que sa matière apporte, mélanges de mélanges compris, puis on additionne : c est le pourcentage d’un constituant dans le produit, pᵢ celui d’une ligne, wᵢ la part du constituant dans ce qui y est pesé. La ligne q.s.p. est ce qui manque à 100 %.
page-methods--batch = n contenants de volume V, dont h reste vide, un produit de masse volumique ρ, et la part l qui reste sur les parois et les ustensiles. Sans mesure, la masse volumique est estimée d’après celles des matières, comme si les volumes s’additionnaient.
page-methods--rounding = Chaque masse reçoit d’abord les échelons entiers de sa balance ; ceux qui manquent vont un à un aux lignes dont le reste est le plus grand. La fiche fait ainsi la préparation, et aucune ligne ne s’écarte d’un échelon ou plus.
page-methods--solubility = Entre deux températures publiées, le logarithme de la solubilité est une droite en fonction de l’inverse de la température absolue T. L’alcool, les glycols et la glycérine présents dans l’eau la multiplient, chacun selon son pouvoir σ et sa part f du solvant en volume.
page-methods--ph = Le pH auquel toutes les charges s’annulent : m est la quantité dissoute de chaque espèce en mol par kg d’eau, z sa charge, I la force ionique, γ ce qui en compte, et A découle de la température et de l’eau. Les constantes sont celles à force ionique nulle, ramenées à la température quand on le peut.
page-methods--preservation = D’un acide faible, seule la part non dissociée a est comptée. De ce qui ne se dissocie pas, l’eau d’une émulsion garde libre : C est la concentration dans l’ensemble, φ le volume d’huile rapporté à celui d’eau, K son partage entre les deux, S le tensioactif dont les micelles le retiennent et k avec quelle force. Ce qui agit est comparé à la concentration publiée qui arrête chaque sorte de germes, et à davantage, car tuer en demande plus.
page-methods--emulsion = Ce que fournit un mélange d’émulsifiants non ioniques, et ce que demande une phase grasse, est chaque fois la moyenne pondérée par la masse m. Par ailleurs, des gouttes qui occupent plus de 64 % du volume se touchent, et au-delà de 74 % elles s’aplatissent.
page-methods--glycerite = Les masses de glycérine, d’eau, d’autres solvants et de matières extraites sont suivies séparément du plan au flacon. Masse volumique, réfraction, viscosité et congélation découlent de tables publiées du glycérol et de l’eau ; l’activité de l’eau, d’une courbe tracée par des formes publiées, x étant la fraction molaire du glycérol. On juge sur sa borne haute, car une valeur trop basse ferait croire un liquide mieux conservé qu’il ne l’est. L’alcool suit les tables alcoométriques légales.
page-methods--cooling = À partir des températures notées, de l’ambiance Tₛ et du temps t, on ajuste k et l’on prévoit avec sa bande le temps jusqu’à une température. La température de phases réunies découle de leurs masses et chaleurs massiques.
page-methods--dates = Sans données de stabilité, un produit ne se garde pas plus longtemps que la première matière qui expire, ni que ses semblables : 12 mois sans essai pour de l’eau conservée. Ce qui se garde plus de 30 mois porte, au lieu d’une date, la durée d’utilisation après ouverture.
page-methods--colour = Une photo est lue par rapport à un blanc mat sous la même lumière, canal par canal, puis convertie en CIELAB. L’écart au premier jour est celui de CIEDE2000 ; une décoloration est ajustée comme un déclin du premier ordre.
page-limits--composition = Rien n’est arrondi en route, et ce qu’une ligne apporte fait toujours exactement la ligne. Un mélange vaut ce que vaut la composition déclarée ; une composition typique est le milieu de ce que les vendeurs déclarent.
page-limits--batch = En se mélangeant, l’eau et la glycérine se contractent d’environ 1 % au plus, et une émulsion contient de l’air. Une valeur mesurée vaut mieux.
page-limits--rounding = L’erreur affichée est celle de l’arrondi seul. L’écart de la balance elle-même n’est pas connu ici.
page-limits--solubility = Loin des températures publiées, il n’y a pas de réponse. La règle des mélanges s’écarte couramment de 0,3 à 0,5 logarithme ; un constat donne la plage et n’est un arrêt que si même le meilleur cas est insuffisant.
page-limits--ph = Jusqu’à une force ionique de 0,5 mol/kg et de 0 à 50 °C ; au-delà aucun modèle ne tient ici, et c’est dit. Les solides qui se forment, le gaz qui s’échappe et ce que lient micelles et polymères sont laissés de côté ; beaucoup d’alcool ou de glycol élargit la bande. L’appareil de mesure décide.
page-limits--preservation = Les conservateurs s’additionnent ; aucune synergie n’est supposée. Ce que retiennent les micelles de tensioactifs chargés n’est pas compté, faute de chiffre. Les concentrations inhibitrices varient de plusieurs fois d’un laboratoire à l’autre. Ce n’est pas une preuve : le challenge test décide.
page-limits--emulsion = Les valeurs publiées s’étalent d’environ une unité. Jusqu’à deux unités d’écart, il n’y a pas de constat. Pour les émulsifiants ioniques, les polymères et les cristaux liquides, la HLB ne dit rien, et rien n’est dit.
page-limits--glycerite = La masse volumique vaut de 15 à 30 °C, la courbe d’activité jusqu’à 95 % de glycérol à 25 °C. Ce que cèdent les plantes est une plage. Sous une activité minimale les germes ne se multiplient pas, mais cellules et spores survivent, et une goutte de condensation est de l’eau.
page-limits--cooling = Pour une ambiance constante et rien qui fige ou fonde en chemin.
page-limits--dates = Les durées usuelles sont de pratique courante et ne sont pas un essai de stabilité. Les règles locales décident.
page-limits--colour = Un téléphone n’est pas un colorimètre : gardez le même endroit et la même lumière. Les zones surexposées sont refusées.
page-equations--composition = c = Σ pᵢ · wᵢ
page-equations--batch = m = n · V · (1 − h) · ρ ÷ (1 − l);  1 ÷ ρ = Σ wᵢ ÷ ρᵢ
page-equations--solubility = ln s = a + b ÷ T;  s(mixture) = s(water) · 10^Σσf
page-equations--ph = Σ z · m = 0;  log γ = −A z² (√I ÷ (1 + √I) − 0.3 I)
page-equations--preservation = a = 1 ÷ (1 + 10^(pH − pKa));  free = C (φ + 1) ÷ (K φ + R),  R = 1 + k S
page-equations--emulsion = HLB = Σ mᵢ · HLBᵢ ÷ Σ mᵢ
page-equations--glycerite = a(water) = (1 − x) · exp(−1.14727 x² + 1.35471 x³)
page-equations--cooling = T = Tₛ + (T₀ − Tₛ) · e^(−k t)
page-sourcesOf--composition = Decimal arithmetic; mass is conserved to the last digit.
page-sourcesOf--batch = Mass = volume × density; ideal mixing.
page-sourcesOf--rounding = Largest remainder (Hamilton’s method of apportionment).
page-sourcesOf--solubility = van ’t Hoff; Yalkowsky’s log-linear rule; Li and Yalkowsky, Ind. Eng. Chem. Res. 37 (1998) 4470.
page-sourcesOf--ph = Davies, Ion Association (1962); Malmberg and Maryott, J. Res. NBS 56 (1956) 1.
page-sourcesOf--preservation = Henderson–Hasselbalch; Bean, J. Soc. Cosmet. Chem. 23 (1972) 703; Kazmi and Mitchell, J. Pharm. Sci. 67 (1978) 1260; Leo, Hansch and Elkins, Chem. Rev. 71 (1971) 525.
page-sourcesOf--emulsion = Griffin, J. Soc. Cosmet. Chem. 1 (1949) 311 and 5 (1954) 249.
page-sourcesOf--glycerite = Volk and Kähler, Exp. Fluids 59 (2018) 75; Hoyt, Oil & Soap 10 (1933) 43; Cheng, Ind. Eng. Chem. Res. 47 (2008) 3285; Scott, Adv. Food Res. 7 (1957) 83; Zhang, Grace and Sun, Drying Technol. 40 (2022) 2404; OIML R 22 (1975); ICUMSA SPS-3.
page-sourcesOf--cooling = Newton’s law of cooling; least squares with 95 % bands.
page-sourcesOf--dates = Regulation (EC) No 1223/2009, Article 19(1)(c), from memory of the text; common practice.
page-sourcesOf--colour = IEC 61966-2-1; CIE 15; CIE 142-2001, held to the pairs of Sharma, Wu and Dalal (2005).
