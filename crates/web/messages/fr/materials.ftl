# Materials: what there is of them, what is known of them, and tables of them.

## What a maker has.

not-a-currency = Une monnaie s’écrit en trois lettres, par exemple EUR, USD ou GBP.
currency-without-price = Saisir d’abord le prix : une monnaie seule vaudrait un prix nul.
not-a-day = Ce n’est pas un jour du calendrier. Saisir année-mois-jour, par exemple 2027-05-31, ou rien.
price-per-hundred-grams = { $amount } { $currency } pour 100 g
price-with-currency = { $amount } { $currency }
price-noted = Prix noté le { $day }.
price-before = Avant : { $price }, noté le { $day }.
price-before-pack = Avant : { $price } pour { $pack }, noté le { $day }.
cell-incomplete = Un montant demande sa monnaie, et un port son prix.
past-its-date = Date dépassée : à utiliser avant le { $day }.
your-own-source = saisi sur cet appareil, à la place de la valeur du catalogue
your-own-basis = à vous

## Tables of own materials.

table-too-large = Le fichier est plus grand que tout tableau de matières ; 2 Mo au plus sont lus.
table-not-utf8 = La ligne { $line } n’est pas écrite en UTF-8. Enregistrer le tableau en « CSV UTF-8 » et réessayer.
table-no-name-column = La première ligne doit nommer les colonnes, dont l’une doit être « name ». Les autres peuvent être inci, class, phase, density, parts et note.
table-too-many-lines = Le tableau a plus de { $most } lignes. Rien n’a été lu.
table-empty = Le tableau ne contient aucune matière.
table-sound =
    { $rows ->
        [one] Une matière a été lue et rien n’y est faux.
       *[other] { $rows } matières ont été lues et rien n’y est faux.
    }
table-wrong =
    { $problems ->
        [one] Il y a une erreur : rien ne peut encore être repris.
       *[other] Il y a { $problems } erreurs : rien ne peut encore être repris.
    }
materials-imported =
    { $count ->
        [one] Une matière est reprise.
       *[other] { $count } matières sont reprises.
    }
# What is wrong with a cell is one of those below.
cell-problem = Ligne { $line }, { $column } : { $problem }
cell-no-name = le nom manque
cell-name-twice = le même nom se trouve à la ligne { $first }
cell-too-long = le texte dépasse { $most } caractères
cell-spreadsheet-formula = le texte commence comme une formule de tableur ; l’écrire sans ce signe
cell-unknown-class = « { $text } » n’est pas un type de matière ; sont lus des mots tels que oil, humectant, emulsifier ou active
cell-unknown-phase = « { $text } » n’est pas une phase ; sont lus heated-water, heated-oil, cool-down ou room-temperature
cell-unknown-material = aucune matière ne s’appelle « { $name } » ; les composants s’écrivent ainsi : « 65 % Glycérine végétale; q.s. Eau distillée »
cell-parts-out-of-balance = les composants ne font pas 100 %
cell-too-many-cells = il y a plus de cellules que de colonnes

## Values of the catalogue.

figure-in-range = { $figure } ({ $low } à { $high })
range = { $low } à { $high }
value-with-conditions = { $value }, { $conditions }
value-with-note = { $value } ({ $note })
value-with-conditions-and-note = { $value }, { $conditions } ({ $note })
source = { $citation }, { $locator }
basis-published = publié
basis-computed = calculé
basis-supplier-typical = typique des fournisseurs
basis-memory = de mémoire, à vérifier

source-of = { $kind }, { $edition }

## What the fatty acids of a fat say.

from-fatty-acids = calculé d’après les acides gras ; l’insaponifiable n’est pas pris en compte
takes-up-oxygen = Rancit
oxidation-slow = lentement, d’après les acides gras ; lumière, air et métaux l’accélèrent
oxidation-moderate = assez lentement, d’après les acides gras ; lumière, air et métaux l’accélèrent
oxidation-fast = vite, d’après les acides gras ; conserver au frais, à l’abri de la lumière, fermé
oxidation-very-fast = très vite, d’après les acides gras ; conserver au froid et utiliser rapidement

## Properties.

property =
    { $property ->
        [usual-percent] Dose d’emploi usuelle
        [usual-ph] Plage de pH
        [max-add-temperature] Incorporer au plus à
        [heat-sensitive] Thermosensible
        [charge] Charge
        [density] Masse volumique
        [melting-point] Point de fusion
        [refractive-index] Indice de réfraction
        [specific-heat] Capacité thermique massique
        [boiling-point] Point d’ébullition
        [flash-point] Point d’éclair
        [lower-flammable-limit] Limite inférieure d’inflammabilité
        [heat-of-vaporization] Chaleur de vaporisation
        [heat-of-fusion] Chaleur de fusion
        [permittivity] Permittivité relative
        [hansen-dispersion] Paramètre de Hansen, dispersion
        [hansen-polar] Paramètre de Hansen, polaire
        [hansen-hydrogen] Paramètre de Hansen, liaisons hydrogène
        [hlb] HLB
        [required-hlb] HLB requis, huile dans eau
        [required-hlb-water-in-oil] HLB requis, eau dans huile
        [saponification-value] Indice de saponification
        [iodine-value] Indice d’iode
        [molar-mass] Masse molaire
        [water-solubility] Se dissout dans l’eau
        [log-kow] log P (octanol/eau)
        [pka-1] pKa 1
        [pka-2] pKa 2
        [pka-3] pKa 3
        [pka-4] pKa 4
        [water-content] Eau contenue
        [shelf-life] Se conserve non ouvert
       *[other] Valeur
    }

## Units behind a number.

unit-percent-by-volume = { $number } % V/V
unit-grams-in-water = { $number } g/100 g d’eau
unit-months = { $number } mois
unit-ph = pH { $number }
held-lot = Lot { $lot }
held-until = À utiliser avant le { $day }
held-past = Périmé le { $day }

# Fixed texts of the page.
page-title = Matières premières
page-search = Rechercher par nom, INCI, usage ou numéro CAS
page-own = Matières personnelles
page-none = Choisir une matière pour voir ce qu’on en sait.
page-noOwn = Encore aucune. Un extrait glycériné, une solution mère ou un mélange acheté ont leur place ici.
page-newComposite = Nouveau mélange
page-newSimple = Nouvelle matière simple
page-found = Trouvé
page-nothing = Rien trouvé. Vérifier l’orthographe, ou créer une matière personnelle.
page-name = Nom de la matière
page-inci = Nom INCI
page-class = Type de matière
page-phase = Phase usuelle
page-density = Masse volumique
page-note = Note
page-parts = Composé de
page-addPart = Ajouter un composant
page-removePart = Retirer : { $name }
page-partsTotal = Les composants font { $percent } %
page-partOf = Pourcentage : { $name }
page-brings = Apporte
page-values = Valeurs connues
page-usedIn = Utilisée dans
page-notUsed = Aucune formule ne l’utilise.
page-copy = Copier comme matière personnelle
page-remove = Supprimer
page-valuesHelp = Chaque valeur, avec sa source et le crédit à lui accorder.
page-noValues = Aucune valeur connue : cela ne dit rien de la matière.
page-everyClass = tous les types
page-everyPhase = toutes les phases
page-filterPhase = Phase usuelle
page-holding = Stock et prix
page-price = Prix de l’emballage
page-currency = Monnaie
page-pack = Contenance
page-shipping = Port par emballage
page-stock = En stock
page-lot = Lot
page-expiry = À utiliser avant le
page-ownDensity = Masse volumique, si mesurée
page-ownUsual = Pourcentage usuel, par expérience
page-ownNote = Notes personnelles
page-table = Tableaux de matières personnelles
page-tableHelp = Un fichier CSV avec une colonne « name » et, au choix, inci, class, phase, density, parts et note. Il est vérifié ligne par ligne et repris en entier ou pas du tout.
page-readTable = Lire un tableau
page-takeIn = Reprendre ces matières
page-writeTable = Enregistrer en tableau
page-tableName = stillroom-matieres.csv
page-sources = Toutes les sources
page-sourcesHelp = Chaque valeur du catalogue repose sur l’une d’elles. Une valeur « de mémoire » a été citée de mémoire d’après la source nommée et reste à vérifier.
page-filterClass = Type
page-picker--search = Nom, INCI, usage, numéro CAS
page-picker--nothing = Rien trouvé. Vérifier l’orthographe, ou créer une matière personnelle.
page-picker--describe = Créer « { $name } » comme matière personnelle
page-classes--water = eau
page-classes--humectant = humectant
page-classes--solvent = solvant
page-classes--thickener = épaississant
page-classes--oil = huile
page-classes--butter = beurre
page-classes--emollient = émollient
page-classes--wax = cire
page-classes--fatty-alcohol = alcool gras
page-classes--fatty-acid = acide gras
page-classes--emulsifier = émulsifiant
page-classes--surfactant = tensioactif
page-classes--active = actif
page-classes--extract = extrait
page-classes--protein = protéine
page-classes--preservative = conservateur
page-classes--chelator = chélateur
page-classes--antioxidant = antioxydant
page-classes--ph-adjuster = régulateur de pH
page-classes--salt = sel
page-classes--essential-oil = huile essentielle
page-classes--fragrance = parfum
page-classes--colourant = colorant
page-classes--mineral = minéral
page-classes--exfoliant = exfoliant
page-classes--other = autre
page-held = Ce que j’ai
page-noHeld = Rien n’est encore noté. Ouvrez une matière et notez-en la quantité, le lot et la date.
page-holdingMore = Prix, densité et notes personnelles
page-all = Toutes les matières
