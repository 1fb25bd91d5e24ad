# How large a batch, on which scales.

no-batch = Rien à préparer : dire combien.
density-needed = Aucune masse volumique connue pour ces matières. Peser 100 ml du produit et la saisir.
allowance-out-of-range = { $value } n’est pas entre 0 et { $largest } %.
nothing-at-hand = Choisir une matière de cette formule et dire combien il en reste.
batch-too-large = La préparation est trop grande pour être pesée en grammes.
scale-needed = Il faut au moins une balance.
scale-step = L’échelon d’une balance est entre { $finest } et { $coarsest } g, par exemple 0,1.
scale-limits = La balance fine demande un échelon plus petit que la balance principale, et une limite au-dessus de 0.
no-sheet = La formule ne fait pas encore 100 % : rien à peser. Voir l’indication au-dessus des phases.
density-estimated = La masse volumique est une estimation : on additionne les volumes de { $known } de la formule, dont elle est connue. Le mélange se contracte et le mixage incorpore de l’air ; peser 100 ml du produit fini et saisir le résultat.
batch-differs = Arrondi à vos balances : { $batch } (demandé : { $asked }).
fill-arithmetic = { $count } × { $volume } × (100 − { $headspace }) % × { $density } ÷ (100 − { $loss }) % = { $mass }
fill-arithmetic-full = { $count } × { $volume } × { $density } ÷ (100 − { $loss }) % = { $mass }
raised-to-scale = Relevé à l’échelon suivant de la balance, pour qu’aucun contenant ne manque : { $mass }
stock-arithmetic = S’épuise en premier : { $name }. { $available } ÷ { $share } % permet { $mass }, arrondi à la balance par défaut
left-over = reste { $mass }
not-in-formula = pas dans cette formule
smallest-batch = Quantité minimale avec chaque ligne à moins de { $tolerance } : { $mass }
lines-too-coarse =
    { $count ->
        [one] L’arrondi de la balance dépasse { $tolerance } sur une ligne : { $names }. Préparer davantage ou peser plus finement.
       *[other] L’arrondi de la balance dépasse { $tolerance } sur { $count } lignes : { $names }. Préparer davantage ou peser plus finement.
    }
too-many-materials-at-hand = Une préparation se compare à { $most } matières au plus.
scale-fine = Balance de précision
scale-kitchen = Balance de cuisine

# Fixed texts of the page.
page-title = Préparation
page-way = Quelle quantité ?
page-ways--mass = Par masse
page-ways--containers = Par contenants
page-ways--stock = Selon le reste
page-mass = Quantité à préparer
page-count = Contenants
page-volume = Contenance
page-headspace = Reste vide
page-loss = Reste sur parois et outils
page-density = Masse volumique du produit, si mesurée
page-stockHelp = De quoi reste-t-il peu ? Le choisir : le stock noté est repris, sauf indication contraire.
page-recorded = { $name } : { $recorded } noté
page-stockOf = Reste : { $name }
page-removeStock = Omettre : { $name }
page-limiting = s’épuise en premier
page-sheet = Fiche de pesée
page-rounding = Arrondi
page-sum = Total
page-print = Imprimer la fiche
page-scales = Balances et unités
page-mainStep = Balance de cuisine, par pas de
page-fineScale = Balance de précision disponible aussi
page-fineStep = Balance de précision, par pas de
page-fineBelow = Pour les masses sous
page-tolerance = Arrondi maximal d’une ligne
page-massUnit = Masses en
page-volumeUnit = Volumes en
page-temperatureUnit = Températures en
page-decimalMark = Séparateur décimal
page-fetched--here = Stillroom est tout entier sur cet appareil et fonctionne sans réseau.
page-fetched--coming = Ce qui dépasse le premier écran, environ { $size } ko, se charge quand la page est au repos et s’enregistre pour l’usage sans réseau.
page-fetched--unasked = Le navigateur demande d’économiser les données : ce qui dépasse le premier écran, environ { $size } ko, se charge espace par espace, à l’ouverture.
page-fetchAll = Tout charger maintenant, pour l’usage sans réseau
page-marks--browser = comme dans ce navigateur
page-marks--point = point, 1.5
page-marks--comma = virgule, 1,5
page-massUnits--mg = milligrammes
page-massUnits--g = grammes
page-massUnits--kg = kilogrammes
page-massUnits--oz = onces (oz)
page-massUnits--lb = livres (lb)
page-volumeUnits--mL = millilitres
page-volumeUnits--L = litres
page-volumeUnits--US_fl_oz = onces liquides US
page-volumeUnits--UK_fl_oz = onces liquides impériales
page-temperatureUnits--C = degrés Celsius
page-temperatureUnits--F = degrés Fahrenheit
page-language = Langue
page-languageOfBrowser = comme dans ce navigateur
caustic-1 = Caustique : lunettes étanches, gants, manches longues ; ni enfants ni animaux à proximité. Cela rend aveugle et brûle.
caustic-2 = Le verser peu à peu dans l’eau froide, jamais l’eau dessus : cela chauffe et projette. Pas d’aluminium.
caustic-3 = Sur la peau ou dans l’œil : rincer 20 minutes à l’eau courante et consulter un médecin. Les règles locales régissent le stockage et l’étiquetage.
