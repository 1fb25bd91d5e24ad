# L’étiquette : les ingrédients dans l’ordre, ce qu’elle doit dire d’autre, et comment tout y tient.

act-name = étiquette
none-open = Aucune formule n’est ouverte.
unsound = Les quantités ne font pas encore 100 %, ou quelque chose n’est pas connu. Corriger d’abord la formule.
unnamed = (sans nom INCI)
declaration = Ingredients: { $names }.
lead-ingredients = Ingredients:
lead-before = À utiliser de préférence avant fin :
lead-lot = Lot :
made-in = Fabriqué en { $country }
function-face = Crème pour le visage
function-face-wash = Nettoyant pour le visage
function-eyes = Crème pour les yeux
function-lips = Baume à lèvres
function-body = Lotion pour le corps
function-body-wash = Gel douche
function-hand = Crème pour les mains
function-hand-wash = Savon pour les mains
function-bath = Pour le bain
function-hair = Soin capillaire sans rinçage
function-shampoo = Shampooing
function-conditioner = Après-shampooing
function-deodorant = Déodorant
function-deodorant-spray = Déodorant en spray
function-mist = Brume pour la peau
function-oral = Soin de la bouche
function-child = Crème pour bébé
function-child-wash = Produit lavant pour bébé

## Champs.

field-market = Vendu ou offert dans
market-eu = Union européenne
market-uk = Royaume-Uni
market-us = États-Unis
field-container = Contenant
container-jar = Pot, { $volume } ml
container-lid = Couvercle de pot, { $volume } ml
container-tin = Couvercle de boîte, { $volume } ml
container-bottle = Flacon, { $volume } ml
container-tube = Tube, { $volume } ml
container-own = Un autre
field-volume = Rempli de
field-by = Contenu en
by-volume = ml
by-mass = g
field-function = Ce que c’est
field-claims = Ce qu’il fait et comment l’utiliser
field-caution = Autres précautions
field-lot = Numéro de lot
field-before = À utiliser de préférence avant fin
field-opening = Une fois ouvert
unit-months = mois
field-person = Nom de la personne responsable
field-address = Adresse
field-country = Pays de fabrication
field-contact = Téléphone ou courriel
field-site = Votre page sur le web
field-site-as = Sur l’étiquette
site-as-nothing = aucune adresse
site-as-text = en toutes lettres
site-as-code = en code QR
field-shape = Étiquette
shape-flat = plate
shape-wrap = tout autour
shape-round = ronde
field-width = Largeur
field-height = Hauteur
field-diameter = Diamètre
field-paper = Papier
paper-a4 = A4
paper-letter = Letter
field-count = Étiquettes
field-nano = { $name } : nanomatériau
nano-not-known = non connu
nano-no = non
nano-yes = oui
takes-side = des millimètres de 10 à 400, par exemple { $number }
takes-volume = des millilitres de 1 à 10000, par exemple 50
takes-months = des mois entiers jusqu’à 120, par exemple 6 ; 0 pour aucun
takes-count = un nombre entier de 1 à 500

## Contenu et dates.

contents-fluid-ounces = { $ounces } fl oz ({ $metric })
contents-ounces = Net wt { $ounces } oz ({ $metric })
contents-no-density = Aucune masse volumique n’est connue, donc pas la masse d’un remplissage. En saisir une mesurée à la quantité à préparer.
contents-measured = { $volume } à { $density } mesurés, arrondi vers le bas.
contents-reckoned = { $volume } à { $density }, calculé d’après la composition et arrondi vers le bas. Les émulsions contiennent de l’air : en peser un.
date-of-batch = Date et lot de la dernière préparation, { $lot }. Ce qui se conserve 30 mois au plus porte une date.
date-of-today = Aucune préparation encore : la date est comptée à partir d’aujourd’hui. Ce qui se conserve 30 mois au plus porte une date.
date-own = Date telle que saisie. Ce qui se conserve 30 mois au plus porte une date.
date-opening = Se conserve plus de 30 mois : les mois après ouverture remplacent la date. Ils sont usuels, non testés.
date-unknown = La durée de conservation n’est pas connue : aucune matière n’indique de jour.

## Ce qui n’est pas certain.

doubt-order = { $name } et { $next } sont peut-être dans l’ordre inverse : { $materials } n’est connu que par sa composition usuelle. Demander au fournisseur celle du lot.
doubt-group = { $name } est peut-être au-dessus, peut-être au-dessous de 1 % : { $materials } n’est connu que par sa composition usuelle.
doubt-allergens = Nommés seulement au cas où l’huile en contient le plus possible : { $names }. La déclaration allergènes du lot décide.
scents-unknown = Personne n’a noté ce que contient : { $names }. Ses allergènes manquent ici ; ils sont dans la déclaration allergènes du fournisseur.
no-inci = Sans nom INCI, donc la liste n’est pas complète : { $names }.
nano-unknown = Nanomatériau ou non, ce n’est pas connu : { $names }. Demander au fournisseur, et l’indiquer plus bas.
may-colour = Là où il sert à colorer, il vient en dernier sous son numéro dans l’Union européenne et au Royaume-Uni : { $names } (CI 77891, CI 77947, CI 77019).
typical = Seulement par composition usuelle, compté à un cinquième près (usage courant) : { $names }.
neutralised = Acides et bases figurent tels qu’ajoutés. Ce qu’ils deviennent, savon ou sel, peut figurer à leur place.
us-names = Les noms pour les États-Unis sont cités de mémoire : les vérifier dans le dictionnaire des ingrédients avant d’imprimer.

## Allergènes.

allergens-us = Aucun n’est encore à nommer aux États-Unis ; une règle doit venir. Qui est allergique les cherche quand même.
allergens-none = Rien dans la formule n’est connu pour contenir un allergène de la liste.
allergens-above = Nommés au-dessus de { $threshold } du produit.
allergens-uk = Ceux du règlement (UE) 2023/1545 ne font pas loi au Royaume-Uni d’après ce qui est connu ici : à vérifier.
new-allergens-new = Ceux du règlement (UE) 2023/1545 sont nommés dans les nouveaux produits depuis le 31 juillet 2026, dans tous à partir du 31 juillet 2028.
new-allergens-not-yet = Ceux du règlement (UE) 2023/1545 sont à nommer dans les nouveaux produits à partir du 31 juillet 2026.
new-allergens-every = Ceux du règlement (UE) 2023/1545 sont nommés dans tous les produits depuis le 31 juillet 2028.
allergen-amount = { $typical }, { $most } au plus
allergen-named = nommé
allergen-perhaps = nommé par prudence
allergen-below = sous le seuil
allergen-not-asked = non exigé
allergen-not-in-uk = exigé dans l’Union européenne, pas ici

## Phrases de l’étiquette.

say-external-use = Usage externe uniquement.
say-eyes = Éviter le contact avec les yeux.
say-small-children = Ne pas utiliser chez les enfants de moins de 3 ans.
say-vitamin-a = Contient de la vitamine A. Tenir compte de votre apport journalier avant utilisation.
say-formaldehyde = Libère du formaldéhyde.
say-sun = Rend la peau plus sensible au soleil : se protéger du soleil.
say-ammonia = Contient de l’ammoniaque.
say-resorcinol = Contient du résorcinol.
say-powder = Tenir la poudre à l’écart du nez et de la bouche de l’enfant.
say-nappy-area = Ne pas utiliser sur le siège.
say-under-ten = Ne pas utiliser chez les enfants de moins de 10 ans.
say-stop = Cesser l’utilisation si la peau rougit, démange ou brûle.
say-out-of-reach = Tenir hors de portée des enfants.
statement-asked = exigé à cause de { $about } ({ $source })
statement-advised-for = à cause de { $about } ; usage courant
statement-advised = usage courant

## Ce qui manque.

missing-sentence = Omis, alors que la loi le demande : « { $sentence } » { $source }.
missing-person-eu = Nom et adresse de la personne responsable dans l’Union européenne. La loi les exige si le produit est vendu ou offert.
missing-person-uk = Nom et adresse de la personne responsable au Royaume-Uni. La loi les exige si le produit est vendu ou offert.
missing-person-us = Nom et siège du fabricant, du conditionneur ou du distributeur.
missing-contact = Une adresse, un téléphone ou un courriel aux États-Unis pour signaler les effets indésirables.
missing-country = Le pays d’origine, si le produit est importé.
missing-function = Ce que c’est, si le nom et l’aspect ne le disent pas.
missing-contents = Le contenu nominal.
missing-lot = Un numéro de lot : commencer une préparation, ou en saisir un.
missing-date = Une date, ou les mois après ouverture.
missing-assessment-eu = Pas par ce calculateur : le rapport de sécurité d’une personne qualifiée, le dossier d’information et la notification que la loi exige avant toute vente ou tout don. Les règles locales décident.
missing-assessment-uk = Pas par ce calculateur : le rapport de sécurité d’une personne qualifiée, le dossier d’information et la notification que la loi exige avant toute vente ou tout don. Les règles locales décident.
missing-assessment-us = Pas par ce calculateur : la preuve qu’il ne nuit pas. Sans elle, 21 CFR 740.10 exige sur le devant : Warning: The safety of this product has not been determined.

## Mots qui en font autre chose.

place-name = nom
place-function = ce que c’est
place-claims = ce qu’il fait
place-caution = précautions
place-notes = notes de la formule, non imprimées
wording-medicine = « { $found } » ({ $place }) parle de maladie ou de guérison : cela en fait un médicament. { $source }
wording-function = « { $found } » ({ $place }) promet d’agir sur les fonctions du corps : cela en fait un médicament. { $source }
wording-biocide = « { $found } » ({ $place }) promet d’agir sur des germes ou des nuisibles : cela en fait un biocide ou un médicament. { $source }
wording-sun = « { $found } » ({ $place }) promet une protection solaire : elle doit être mesurée, et en fait un médicament aux États-Unis. { $source }
wording-claim = « { $found } » ({ $place }) doit être vrai et prouvé, et ne pas dénigrer les autres. { $source }

## Une adresse dessus.

wrong-link-space = Une adresse ne contient pas d’espace : par exemple fabricant.example/baume ou https://fabricant.example/baume.
wrong-link-letter = « { $letter } » ne peut pas figurer dans une adresse : copiez l’adresse telle que le navigateur l’écrit, par exemple https://fabricant.example/baume.
wrong-link-scheme = Aucune adresse de page ne commence par « { $scheme } » : écrivez par exemple https://fabricant.example/baume ou fabricant.example/baume.
wrong-link-no-host = Il manque le nom de la page : écrivez par exemple https://fabricant.example/baume ou fabricant.example/baume.
wrong-link-host = « { $host } » n’est pas un nom de page : écrivez par exemple https://fabricant.example/baume ou fabricant.example/baume.
wrong-link-too-long = { $letters } caractères, c’est trop pour une étiquette : { $most } au plus.
missing-link = Indiquez l’adresse qui doit figurer sur l’étiquette.
link-too-long = L’adresse ne tient pas sur cette étiquette et n’y figure pas. Prenez une adresse plus courte ou une étiquette plus grande.
code-too-large = Le code QR ne tient pas sur cette étiquette et n’y figure pas : il lui faut { $side } de côté, avec des modules d’au moins { $module } (usage courant pour qu’un téléphone le lise) et quatre modules vides tout autour. Prenez une adresse plus courte ou une étiquette plus grande.
code-there = Le code QR mesure { $side } de côté, avec la marge vide de quatre modules que demande la norme ISO/IEC 18004 ; un module mesure { $module } (au moins { $least } : usage courant). Il contient l’adresse et rien d’autre. Essayez-en un imprimé avec un téléphone.

## Dessin et impression.

size-flat = { $width } × { $height }
size-round = { $diameter } de diamètre
art = L’étiquette, { $size } : { $name }.
art-with-code = L’étiquette, { $size } : { $name }, avec un code QR de { $address }.
too-small = Elle ne tient pas sur { $size } en lettres de { $least }. Prendre une étiquette plus grande, ou mettre les ingrédients sur une notice ou une carte jointe.
larger-than-paper = { $size } dépasse le papier, ou aucune étiquette n’est demandée.
letters-text = Petites lettres
letters-contents = Chiffres du contenu
letters-least = au moins { $least }
letters-law = Hauteur d’un petit x ou d’un chiffre, tel qu’imprimé.
letters-yardstick = La loi dit « aisément lisible » sans donner de hauteur ; celle exigée pour les denrées alimentaires sert de repère (usage courant).
sheets =
    { $sheets ->
        [one] { $count } étiquettes sur 1 feuille { $paper }, { $each } par feuille. Imprimer à 100 %, sans ajuster à la page.
       *[other] { $count } étiquettes sur { $sheets } feuilles { $paper }, { $each } par feuille. Imprimer à 100 %, sans ajuster à la page.
    }

# Textes fixes de la page.
page-title = Étiquette
page-intro = Ce que la loi demande à une étiquette, calculé d’après ce que contient vraiment le pot. Les règles locales décident.
page-toFormula = À la formule
page-ingredients = Ingrédients
page-copy = Copier les ingrédients
page-copied = Copié.
page-notCopied = Le navigateur ne l’a pas permis : sélectionner le texte et le copier.
page-order = Dans l’ordre
page-places--weight = par poids
page-places--any = ordre libre
page-places--colour = colorant, en dernier
page-doubtful = ordre non certain
page-allergens = Allergènes
page-statements = Précautions dessus
page-missing = Ce qui manque encore
page-wording = Mots à revoir
page-product = Le produit
page-maker = La personne responsable
page-makerHelp = Enregistré sur cet appareil, pour chaque étiquette.
page-link = Une adresse dessus
page-linkHelp = L’adresse reste sur cet appareil, pour toutes les étiquettes. Rien n’y est ajouté.
page-drawn = L’étiquette
page-lettering = Lettres
page-printing = Imprimer
page-print = Imprimer les étiquettes
page-nano = Particules fines
