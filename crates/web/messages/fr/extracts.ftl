# Extracts: a glycerite or solution that is planned, made, verified and used.

## What a field takes.

takes-day = un jour du calendrier, par exemple 2026-03-01
takes-temperature = une température telle que 20 °C ou 68 °F
takes-volume = un volume tel que 250 ml
takes-activity = une activité de l’eau entre 0 et 1 telle que { $number }
takes-liquid-per-plant = des grammes de liquide par gramme de plante, par exemple { $number }
takes-refractometer = ce que montre le réfractomètre, par exemple 50 ou { $number }
takes-hydrometer = ce que montre le densimètre, par exemple { $number }
takes-scale-step = le plus petit échelon de la graduation, par exemple { $number }
takes-ph = un pH de 0 à 14 tel que { $number }, ou rien
takes-mass = une masse telle que { $number }, { $number } g ou 2 oz
takes-mass-or-all = une masse telle que { $number } g, ou rien pour le tout
takes-percent = un pourcentage tel que { $number }
not-a-day = « { $text } » n’est pas un jour. Saisir un jour du calendrier, par exemple 2026-03-01.

## Acts, for undo.

act-new = nouvel extrait
act-delete = extrait supprimé
act-example = exemple remis
act-step = modification d’un extrait
act-solve = quantités d’un extrait
act-blend = mélange
act-shelve = extrait parmi les matières
act-use = extrait dans une formule
act-other = extrait

## Days.

## Why an extract comes to nothing yet.

no-plant-water = La teneur en eau de la plante n’est pas encore connue. Choisir une plante, saisir son pourcentage d’eau, ou peser un échantillon, le sécher jusqu’à masse constante et le repeser.
nothing-planned = Il n’y a encore rien dans le bocal. Dire combien de plante et combien de glycérine.
no-material = Choisir d’abord la matière.
nothing-to-mix = Il n’y a rien à calculer : une masse est encore à 0.
numbers-too-large = Les nombres sont trop grands pour être calculés.
not-a-share = { $share } : { $value } %. Possible : de { $minimum } à { $maximum } %.
nothing-left = { $substance } : il y en a { $available } g, et { $taken } g s’en iraient. Il ne reste rien à recueillir.
out-of-reach =
    { $reason ->
        [plant-water] { $target } est hors d’atteinte : l’eau de la plante dilue davantage. Prendre plus de liquide par gramme de plante, ou sécher d’abord la plante. Le plus proche possible : { $nearest }.
        [nothing-stronger] { $target } est hors d’atteinte : rien ici n’est assez fort. Le plus proche possible : { $nearest }.
        [nothing-weaker] { $target } est hors d’atteinte : rien ici n’est assez faible. Le plus proche possible : { $nearest }.
       *[not-enough] { $target } est hors d’atteinte : il n’y en a pas assez. Le plus proche possible : { $nearest }.
    }
activity-out-of-reach =
    { $reason ->
        [plant-water] Une activité de l’eau de { $target } est hors d’atteinte : l’eau de la plante dilue davantage. Prendre plus de liquide par gramme de plante, ou sécher d’abord la plante. Le plus proche possible : { $nearest }.
        [nothing-stronger] Une activité de l’eau de { $target } est hors d’atteinte : rien ici n’est assez fort. Le plus proche possible : { $nearest }.
        [nothing-weaker] Une activité de l’eau de { $target } est hors d’atteinte : rien ici n’est assez faible. Le plus proche possible : { $nearest }.
       *[not-enough] Une activité de l’eau de { $target } est hors d’atteinte : il n’y en a pas assez. Le plus proche possible : { $nearest }.
    }
gained-mass = Cela pèse maintenant plus ({ $now } g) qu’avant ({ $before } g). L’eau ne fait que partir ; repeser, et déduire la masse du bocal.
read-as-water = C’est la lecture de l’eau, et le plan prévoit { $planned } % de glycérine. Faites le zéro à l’eau, séchez le prisme et mesurez une goutte fraîche.
reading-outside = Aucun liquide de ce genre ne montre { $reading } : celui-ci pourrait montrer de { $minimum } à { $maximum }. Vérifier la graduation de l’instrument et la température.
unusable-readings = Saisir ce que montre le réfractomètre ou le densimètre.
physics-out-of-range = Pas de réponse : ce qui est publié vaut de { $minimum } à { $maximum } ({ $quantity }) ; ici, c’est { $value }.
physics-no-data = Pas de réponse ({ $quantity }) : aucune valeur fiable n’est publiée pour un liquide avec { $substance }.
too-many-steps = Un extrait prend au plus { $most } étapes. En retirer une d’abord, ou commencer un autre extrait.

## Quantities, shares and substances in such a sentence. The word comes along, with a key.

quantity =
    { $key ->
        [temperature] température
        [brix] Brix
        [ethanol-by-volume] titre alcoométrique
        [water-activity] activité de l’eau
        [molality] molalité
        [mass] masse
        [volume] volume
        [density] masse volumique
        [share] part
        [resolution] échelon
        [refractive-index] indice de réfraction
        [specific-gravity] densité relative
        [viscosity] viscosité
        [freezing-point] point de congélation
        [evaporation] évaporation
        [mass-fraction] fraction massique
        [glycerol] part de glycérine
        [dissolved-solids] matières dissoutes
        [liquid-per-dry-marc] liquide par marc sec
        [purity-of-the-glycerin] titre de la glycérine
        [purity-of-the-solvent] titre du solvant
        [purity] titre
        [strength] titre
        [glycerin] glycérine
        [water-of-the-plant] teneur en eau de la plante
        [liquid-left-in-the-marc] liquide resté dans le marc
        [other-solvent] autre solvant
        [headspace] espace de tête
        [preservative] conservateur
        [wanted] part voulue
        [soluble-share-least] part soluble, au moins
        [soluble-share-typical] part soluble, usuelle
        [soluble-share-most] part soluble, au plus
       *[any] { $word }
    }
substance =
    { $key ->
        [glycerin] glycérine
        [plant] plante
        [solvent] solvant
        [liquid] liquide
        [menstruum] solvant d’extraction
        [water] eau
        [stock-solution] solution mère
        [propylene-glycol] propylène glycol
        [propanediol] propanediol
        [ethanol] éthanol
       *[any] { $word }
    }
unit-percent-by-volume = { $number } % V/V

## Plants, as the catalogue knows them.

plant-choice = { $plant }, { $part }, { $state }
plant-choice-by-limit = { $plant }, { $part }, { $state }, d’après la limite
plant-water = { $percent } % en est de l’eau ({ $source }).
plant-water-at-most = { $percent } % en est de l’eau (au plus ; { $source }).
plant-water-in-range = { $percent } % en est de l’eau ({ $range } dans les sources ; { $source }).
plant-water-weighed = D’après votre pesée, { $percent } % en est de l’eau.

## What a liquid is made of.

part-glycerin = Glycérine
part-water = Eau
part-propylene-glycol = Propylène glycol
part-propanediol = Propanediol
part-ethanol = Alcool
part-plant-solids = Extrait sec de la plante, environ
range = { $low } à { $high }
water-arithmetic = Eau : { $plant } de la plante + { $glycerin } avec la glycérine et le solvant + { $added } ajoutés − { $evaporated } évaporés.
pressing = Recueilli au pressage : { $pressed } ; { $held } du même liquide restent dans le marc.
glycerin-arithmetic = Glycérine : { $mass } × { $purity } % = { $pure }
solids-arithmetic = Estimation : 20 à 70 % de la matière sèche de la plante se dissolvent, 40 % sont comptés (usage courant). Nul ne le sait pour un lot donné, d’où une plage.

## What to expect of it: a figure, what it rests on, and where that was published.

figure-activity = Activité de l’eau à 25 °C
figure-activity-how = Glycérine, chaque autre solvant et l’extrait sec de la plante, chacun comme s’il était seul dans toute l’eau, multipliés. L’extrémité haute ne compte aucun effet de l’extrait sec ; c’est elle qui sert à juger la conservation.
figure-activity-source = Scott WJ, Advances in Food Research 7:83 (1957) et mesures ultérieures ; Ross KD, Food Technology 29:26 (1975)
figure-volume = Volume
figure-volume-how = Masse divisée par masse volumique.
figure-brix = Réfractomètre
figure-brix-how = L’indice sur l’échelle Brix, faite pour le sucre : 65 % de glycérine montrent environ 50.
figure-brix-source = ICUMSA SPS-3, reproduit dans OIV-MA-AS2-02
figure-brix-corrected = Réfractomètre à correction de température
figure-brix-corrected-how = De même, avec la correction pour le sucre qu’ajoute un tel instrument.
figure-brix-corrected-source = International Temperature Correction Table 1936
figure-index = Indice de réfraction
figure-index-how = L’indice de la glycérine dans l’eau, et du sucre pour l’extrait sec, additionnés en volume.
figure-index-source = Hoyt LF, Oil & Soap 10:43 (1933) ; connu à 0,0005 près
figure-gravity = Densimètre
figure-gravity-how = Ce que montre un densimètre fait pour 20 °C : masse volumique rapportée à celle de l’eau, le verre étant à cette température.
figure-gravity-source = Eau : Tanaka M et al., Metrologia 38:301 (2001)
figure-density = Masse volumique
figure-density-how = Masse volumique de la glycérine et de l’eau avec leur contraction au mélange ; l’extrait sec dissous est compté comme du sucre.
figure-density-source = Volk A, Kähler CJ, Experiments in Fluids 59:75 (2018) ; connue à 0,1 % près
figure-viscosity = Viscosité
figure-viscosity-how = De la glycérine et de l’eau seules ; l’extrait sec épaissit.
figure-viscosity-source = Cheng N-S, Industrial & Engineering Chemistry Research 47:3285 (2008) ; à 5 % près
figure-freezing = Début de congélation à
figure-freezing-how = De la glycérine et de l’eau seules ; l’extrait sec l’abaisse un peu.
figure-freezing-source = CRC Handbook ; Lange’s Handbook ; Lane LB, Industrial & Engineering Chemistry 17:924 (1925)

## What was done to it after pressing.

step-glycerin = { $mass } de glycérine à { $purity } % versés
step-water = { $mass } d’eau versés
step-weighed = repesé après évaporation : { $mass }
step-measured = mesuré : { $percent } % de glycérine

## Names and the list of extracts.

new-glycerite = Nouvel extrait glycériné
new-solution = Nouvelle solution mère
new-alcohol = Alcool dilué
name-of-blend = { $name }, mélangé
about-glycerite-unknown = Pas encore calculé
about-glycerite = { $percent } % de glycérine
about-glycerite-made = { $percent } % de glycérine · { $day }
about-solution-unknown = Solution mère
about-solution = { $percent } % { $substance }
about-alcohol = Alcool à { $percent } % vol
deleted = « { $name } » : supprimé. Une matière qui en est faite reste sur l’étagère.

## Working backwards, adjusting, evaporating.

solved = Plante { $plant }, glycérine { $glycerin }, eau ajoutée { $water }
solved-with-solvent = Plante { $plant }, glycérine { $glycerin }, autre solvant { $solvent }, eau ajoutée { $water }
solved-gives = Donne { $mass } de liquide à { $percent } % de glycérine.
use-amounts = Reprendre ces quantités
pour-in-water = Verser { $mass } d’eau : cela fait { $whole } à { $percent } % de glycérine.
pour-in-glycerin = Verser { $mass } de glycérine à { $purity } % : cela fait { $whole } à { $percent } % de glycérine.
poured-in = C’est versé
already = Il y a déjà { $percent } %.
evaporated = { $lost } d’eau sont partis ; ce qui reste a { $percent } % de glycérine. Remettre { $lost } d’eau rétablit l’état d’avant.
note-evaporation = En tenir compte désormais

## Readings of instruments.

verified = { $percent } % de glycérine, entre { $low } et { $high } %.
agrees-with-plan = Les { $percent } % calculés s’y trouvent.
differs-from-plan = Les { $percent } % calculés ne s’y trouvent pas. La lecture est le meilleur témoin : remuer, relire, puis compter avec elle.
solids-counted = Les sucres dissous de la plante font monter les deux instruments : { $low } à { $high } % en sont comptés ici. Réfractomètre et densimètre ensemble resserrent la plage.
solids-found = Les deux lectures ensemble laissent { $low } à { $high } % d’extrait sec de la plante.
solids-disagree = Les deux lectures ensemble demandent { $low } à { $high } % d’extrait sec de la plante, ce qui n’était pas supposé. L’une d’elles peut être fausse ; la plage la plus large est donnée.
use-measured = Compter avec le titre mesuré

## Blending.

blend-amount = { $mass } : { $name }
blend-gives = Ensemble { $mass } à { $percent } % de glycérine.
make-blend = Noter le mélange comme nouvel extrait

## On the shelf of materials, and in a formula.

shelf-part = { $name } { $percent } %
shelve = Mettre parmi les matières
shelve-again = Mettre la matière à jour
shelved = « { $name } » est parmi les matières.
name-on-shelf = { $name }, lot { $lot }
made-on = Fabriqué le { $day }.
plant-solids = Extrait sec de la plante
plant-solids-of = Extrait sec de plante : { $plant }
not-on-shelf = Le mettre d’abord parmi les matières ; une formule pourra alors l’utiliser.
no-formula = Aucune formule n’est ouverte. En ouvrir d’abord une sur l’étagère.
add-to = En ajouter { $percent } % à « { $formula } »
shelve-and-add = Le mettre parmi les matières et en ajouter { $percent } % à « { $formula } »
added-to = Dans « { $formula } » : { $name }.
formula-does-not-total = « { $name } » ne ferait pas 100 % avec cela. Passer d’abord une ligne en q.s.p.
compared = « { $formula } » avec { $percent } % de ceci, et avec autant de glycérine et d’eau à sa place.

## Whether it keeps: the verdict, and the steps of the scale.

verdict-nothing-multiplies = Assez sec pour que rien de connu ne s’y multiplie. Des cellules et des spores peuvent y survivre malgré tout.
verdict-osmophilic-yeasts = Seules s’y multiplient des levures et des moisissures qui aiment le sucre et la sécheresse.
verdict-xerophilic-moulds = Certaines moisissures et levures s’y multiplient, mais aucune bactérie connue.
verdict-toxin-forming-moulds = Des moisissures productrices de toxines peuvent s’y multiplier. Sa glycérine seule ne le conserve pas.
verdict-most-moulds = La plupart des moisissures s’y multiplient, et peut-être Staphylococcus. Sa glycérine ne le conserve pas.
verdict-many-yeasts = Moisissures, nombreuses levures et Staphylococcus s’y multiplient. Il ne se conserve pas.
verdict-many-bacteria = De nombreuses bactéries s’y multiplient. Il se gâte en quelques jours.
verdict-nearly-everything = Presque tout s’y multiplie. Il se gâte en quelques jours.
keep-nothing-multiplies = rien de connu
keep-osmophilic-yeasts = levures aimant le sucre
keep-xerophilic-moulds = moisissures aimant le sec
keep-toxin-forming-moulds = moisissures à toxines
keep-most-moulds = la plupart des moisissures
keep-many-yeasts = nombreuses levures
keep-many-bacteria = nombreuses bactéries
keep-nearly-everything = presque tout
scale-mark = { $activity } { $what }
scale-here = ≤ { $activity }
scale-description =
    { $criterion ->
        [met] Échelle de l’eau en bas à la glycérine pure en haut. Ce liquide se place où seraient { $percent } % de glycérine : son activité de l’eau va jusqu’à { $activity } ; s’y multiplient : { $what }. Il satisfait au critère de l’ISO 29621, une activité de l’eau d’au plus 0,75.
       *[missed] Échelle de l’eau en bas à la glycérine pure en haut. Ce liquide se place où seraient { $percent } % de glycérine : son activité de l’eau va jusqu’à { $activity } ; s’y multiplient : { $what }. Il ne satisfait pas au critère de l’ISO 29621, une activité de l’eau d’au plus 0,75.
    }

## Whether it keeps: low risk, what it needs, until when.

not-low-risk = L’ISO 29621:2017 ne le compte pas parmi les produits à faible risque microbiologique : son activité de l’eau va jusqu’à { $activity }, au-dessus de 0,75.
# The grounds are some of those below.
low-risk = L’ISO 29621:2017 le compte parmi les produits à faible risque microbiologique ({ $grounds }). Cela ne remplace ni un travail propre ni un test.
ground-water-activity = activité de l’eau de 0,75 ou moins
ground-alcohol = plus de 20 % d’alcool
ground-acid = pH de 3,0 ou moins
ground-alkaline = pH de 10,0 ou plus
needs-nothing = Tel quel, rien ne demande de conservateur. Dilué dans un produit, il lui faut ce qu’il faut au produit.
needs-few-and-slow = Risque faible, mais non nul : quelques levures et moisissures y poussent lentement. Travailler proprement et l’utiliser en quelques mois.
needs-against-yeasts-and-moulds = Il faut un conservateur contre les levures et les moisissures, par exemple du sorbate de potassium sous pH 5,5, ou davantage de glycérine.
needs-against-all = Il faut un conservateur contre les bactéries, les levures et les moisissures, à son pH et à sa dose, ou davantage de glycérine. Sans l’un ni l’autre : quelques jours, au réfrigérateur.
preserved-against-yeasts-and-moulds = Vous indiquez un conservateur : contre les levures et les moisissures, à sa dose et à son pH, c’est ce qu’il faut.
preserved-against-all = Vous indiquez un conservateur : il doit agir contre les bactéries, les levures et les moisissures, à sa dose et à son pH. Seul un challenge test montre s’il le fait.
use-by-day =
    { $place ->
        [refrigerated] À utiliser avant le { $day } ; à conserver au réfrigérateur.
       *[cool] À utiliser avant le { $day } ; à conserver au frais, à l’abri de la lumière.
    }
use-within-days =
    { $place ->
        [refrigerated] À utiliser dans les { $days } jours après fabrication ; à conserver au réfrigérateur.
       *[cool] À utiliser dans les { $days } jours après fabrication ; à conserver au frais, à l’abri de la lumière.
    }
use-by-basis = Cette date suit l’usage courant, au plus court ; ce n’est pas un test. Jeter au premier signe de gaz, de trouble, d’aspect filant, de moisissure ou d’odeur étrange.
ph-missing = Son pH n’est pas mesuré : impossible de dire si un conservateur y agit.
not-measured = Le titre est calculé, non mesuré. Lire un réfractomètre ou un densimètre avant de s’y fier.
minima-basis = La plupart des minimums ont été trouvés dans des aliments salés ou sucrés ; dans la glycérine, ils peuvent être plus bas ou plus hauts. La condensation sur le couvercle et la surface est de l’eau : remuer, et garder le couvercle sec.

## Organisms: their least water activity, and where it was published. Names and sources come along, with a key.

organism-published =
    { $kind ->
        [bacterium] bactérie · à partir de { $minimum } · { $source }
        [yeast] levure · à partir de { $minimum } · { $source }
       *[mould] moisissure · à partir de { $minimum } · { $source }
    }
organism-from-memory =
    { $kind ->
        [bacterium] bactérie · à partir de { $minimum } · { $source } (de mémoire, à vérifier)
        [yeast] levure · à partir de { $minimum } · { $source } (de mémoire, à vérifier)
       *[mould] moisissure · à partir de { $minimum } · { $source } (de mémoire, à vérifier)
    }
organism-name =
    { $key ->
        [clostridium-botulinum-non-proteolytic] Clostridium botulinum, non protéolytique
        [burkholderia-cepacia-complex] complexe Burkholderia cepacia
        [clostridium-botulinum-a-and-b] Clostridium botulinum A et B
        [fusarium-and-penicillium-that-form-mycotoxins] Fusarium et Penicillium producteurs de mycotoxines
       *[any] { $word }
    }
organism-source =
    { $key ->
        [fda-bad-bug-book-1992-table-of-growth-factors] FDA Bad Bug Book (1992), tableau des facteurs de croissance
        [food-pathogen-control-data-summary-citing-hauschild-1989-and-nzfsa-2001] fiche de données sur les agents pathogènes des aliments, citant Hauschild (1989) et NZFSA (2001)
        [icmsf-microorganisms-in-foods-5-1996-as-cited-in-the-fda-bad-bug-book] ICMSF, Microorganisms in Foods 5 (1996), cité par le FDA Bad Bug Book
        [review-chapter-2019-doi-10-1016-b978-0-12-816333-7-00009-6-table-9-3] chapitre de synthèse (2019), doi 10.1016/B978-0-12-816333-7.00009-6, tableau 9.3
        [usp-general-chapter-1112-representative-microorganisms] USP, chapitre général <1112>, micro-organismes représentatifs
        [note-of-a-maker-of-laboratory-equipment-on-water-activity-in-quality-control-2024] note d’un fabricant d’appareils de laboratoire sur l’activité de l’eau en contrôle qualité (2024)
       *[any] { $word }
    }

## Stock solutions and alcohol.

weigh-out = { $mass } { $name }
portion = { $portion } en apportent { $wanted } % dans une préparation de { $batch }.
no-preservative = Une solution dans l’eau se gâte en quelques jours. Dire quel conservateur y va et combien, ou la préparer au moment.
alcohol-amount = { $volume } ({ $mass }) d’alcool à { $percent } % vol
water-amount = { $volume } ({ $mass }) d’eau
alcohol-makes = Ensemble, cela fait { $volume } à 20 °C : { $contraction } de moins que la somme, car alcool et eau se contractent. Peser plutôt que mesurer.
alcohol-caution = L’alcool fort et sa vapeur brûlent : pas de flamme, de l’air frais, récipient fermé. Masses volumiques : OIML R 22 (1975).

# Fixed texts of the page.
page-title = Extraits
page-intro = Planifier un extrait glycériné, vérifier le résultat, voir s’il se conserve et l’utiliser dans une formule.
page-newGlycerite = Nouvel extrait glycériné
page-newSolution = Nouvelle solution mère
page-newAlcohol = Diluer de l’alcool
page-example = Ajouter l’exemple inventé
page-empty = Encore aucun extrait. Commencer un extrait glycériné, une solution mère ou une dilution d’alcool.
page-remove = Supprimer
page-name = Nom
page-step = Étape
page-stepNames--plan = Plan
page-stepNames--keeping = Conservation
page-stepNames--measure = Mesure et emploi
page-plan = Plan
page-plant = Plante
page-ownPlant = autre plante
page-plantName = Quelle plante
page-waterFrom = Eau de la plante
page-waterFroms--catalogue = du catalogue
page-waterFroms--percent = en pourcentage
page-waterFroms--weighed = peser, sécher, peser
page-plantWater = Teneur en eau
page-sampleFresh = Échantillon frais
page-sampleDried = Échantillon bien sec
page-plantMass = Plante
page-glycerin = Glycérine
page-purity = Titre de la glycérine
page-addedWater = Eau ajoutée
page-solvent = Autre solvant
page-solvents--none = aucun
page-solvents--propanediol = propanediol
page-solvents--propylene-glycol = propylène glycol
page-solvents--ethanol = alcool
page-solventMass = Quantité
page-solventPurity = Titre en masse
page-press = Pressage
page-presses--hand = à la main
page-presses--press = avec une presse
page-presses--yield = rendement personnel
page-pressYield = Liquide recueilli
page-evaporation = S’évapore
page-temperature = Lecture et versement à
page-blended = Un mélange : il n’y a pas de plan à modifier.
page-expected = Ce qu’il faut attendre
page-figuresHelp = Ouvrir une ligne pour voir son calcul et sa source.
page-keeps = Se conserve-t-il ?
page-ph = pH mesuré
page-preserved = Avec conservateur
page-preserveds--no = non
page-preserveds--yes = oui, à la dose usuelle
page-multiply = Peuvent s’y multiplier : { $count }
page-heldBack = Inhibés : { $count }
page-water = eau
page-pure = glycérine pure
page-criterion = critère de l’ISO 29621
page-use = Étiquette et emploi
page-madeOn = Fabriqué le
page-lot = Lot
page-note = Note
page-usePercent = Pourcentage de la formule
page-constituent = Constituant
page-with = avec
page-without = sans
page-verify = Vérifier par une mesure
page-optical = Réfractomètre
page-opticals--brix = Brix
page-opticals--brix-corrected = Brix, corrige la température
page-opticals--index = indice de réfraction
page-opticalValue = Le réfractomètre affiche
page-opticalStep = Échelon du réfractomètre
page-gravityValue = Le densimètre affiche
page-gravityStep = Échelon du densimètre
page-calibrated = Température de référence
page-readingTemperature = Liquide à
page-adjust = Ajuster et mélanger
page-adjustTarget = Glycérine voulue
page-steps = Fait après le pressage
page-takeBack = Omettre : { $step }
page-massNow = Pèse maintenant, resté ouvert
page-blendWith = Mélanger avec
page-addBatch = Ajouter : { $name }
page-addMaterial = Ajouter une matière
page-batchMass = Quantité : { $name }
page-leaveOut = Omettre : { $name }
page-solve = Calcul inverse
page-wantedBy = Voulu
page-wantedBys--glycerin = glycérine
page-wantedBys--activity = activité de l’eau
page-wantedGlycerin = Glycérine dans le liquide
page-wantedActivity = Activité de l’eau, au plus
page-wantedSize = À partir de
page-wantedSizes--plant = la plante
page-wantedSizes--glycerin = la glycérine
page-wantedSizes--jar = un bocal
page-wantedSizes--finished = un volume
page-wantedSizeHelp--plant = Toute la plante indiquée plus haut ; la glycérine et l’eau sont calculées.
page-wantedSizeHelp--glycerin = Toute la plante et la glycérine indiquées plus haut ; l’eau est calculée.
page-wantedSizeHelp--jar = La plante et le liquide remplissent un bocal.
page-wantedSizeHelp--finished = Autant de liquide pressé.
page-menstruumPerPlant = Liquide par gramme de plante
page-jarVolume = Bocal à ras bord
page-headspace = Reste vide
page-finishedVolume = Liquide pressé
page-solution = Solution mère
page-choose = Choisir
page-chosen = { $label } : { $name }
page-substance = Substance
page-solventMaterial = Solvant
page-preservativeMaterial = Conservateur
page-strength = Titre
page-substancePurity = Pureté de la substance
page-preservative = Conservateur dans la solution
page-total = À préparer
page-wantedPercent = Voulu dans la préparation
page-batch = Préparation
page-alcohol = Alcool en % vol
page-strong = Alcool plus fort
page-weak = Plus faible, 0 pour l’eau
page-target = Voulu
page-alcoholVolume = Volume
page-alcoholOf = Ce volume concerne
page-alcoholOfs--mixture = le mélange
page-alcoholOfs--strong = le plus fort
page-alcoholOfs--weak = le plus faible
page-byHydrometer = Aussi au densimètre
