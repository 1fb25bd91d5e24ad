# Ce que coûte une préparation, ce qu’il faut acheter et les récipients qu’elle remplit.

act-name = coûts
act-prices = prix d’un tableau
none-open = Aucune formule n’est ouverte.
unsound = Les quantités ne font pas encore 100 %. Corriger d’abord la formule.
money = { $amount } { $currency }

## Ce qui est calculé.

about-planned =
    { $units ->
        [0] Prévu : { $batch }.
        [one] Prévu : une unité de { $volume }, { $batch } en tout.
       *[other] Prévu : { $units } unités de { $volume }, { $batch } en tout.
    }
about-planned-kinds =
    { $units ->
        [one] Prévu : une unité, { $batch } en tout.
       *[other] Prévu : { $units } unités de plusieurs sortes, { $batch } en tout.
    }
about-made =
    { $units ->
        [0] Dernière préparation : lot { $lot }, { $batch } pesés.
        [one] Dernière préparation : lot { $lot }, { $batch } pesés, une unité.
       *[other] Dernière préparation : lot { $lot }, { $batch } pesés, { $units } unités.
    }
headline-unit = pour une unité
headline-unit-least = au moins, pour une unité
headline-hundred-least = au moins, pour 100 g
headline-hundred = pour 100 g
headline-batch = pour la préparation
headline-unit-of = pour une unité : { $kind }
headline-unit-of-least = au moins, pour une unité : { $kind }
figure-unit-of = Une unité : { $kind }
how-unit-of = Contenu { $content }, selon sa part de la masse remplie ; emballage { $packaging }.
how-unit-sold = Avec votre marge { $amount }.
kinds-without-price = Contenants sans prix, qui manquent à chaque somme : { $kinds }. Un contenant qui n’a rien coûté vaut 0.
figure-unit = Une unité
figure-batch = La préparation
figure-hundred = 100 g
figure-sold = Une unité avec votre marge
at-least = au moins
how-batch = Matières { $materials }, emballage { $packaging }, travail { $labour }.
how-unit = { $batch } divisé par { $units }.
how-hundred = La préparation divisée par la masse pesée, pour 100 g.
how-sold = Une unité plus { $margin } de son coût. La marge porte sur le coût (usage courant) ; taxes et frais n’y sont pas.
line-packaging = Emballage
line-labour = Travail
units =
    { $units ->
        [one] une unité
       *[other] { $units } unités
    }
price-free = gratuit
price-unknown = pas de prix
price-at-least = au moins { $amount }
unpriced = Sans prix ou sans contenance, absents de toutes les sommes : { $names }. Ouvrir la matière ci-dessous et indiquer les deux.
other-currency = Prix dans une autre monnaie que { $currency }, absents de toutes les sommes : { $names }. Aucun taux n’est connu ici.
prices-of-day = Les matières coûtent ce qui était noté au { $day }, quand ce lot a été fabriqué. Ce qui est à acheter ci-dessous coûte son prix d’aujourd’hui.
prices-of-day-but = Les matières coûtent ce qui était noté au { $day }, quand ce lot a été fabriqué ; sans prix noté jusque-là, au prix d’aujourd’hui : { $names }. Ce qui est à acheter ci-dessous coûte son prix d’aujourd’hui.
no-container-price = Le récipient n’a pas encore de prix : il manque dans toutes les sommes. Ce qui n’a rien coûté vaut 0.
no-labour = Le travail n’est pas compté.
no-hourly = Le temps est connu, mais pas le coût d’une heure : le travail n’est pas compté.
what-is-not-in-it = Une ligne coûte sa part des emballages, avec le port et les pertes. Loyer, énergie, matériel, essais et taxes n’y sont pas.
empty-pack = Un emballage vide ne permet pas de calculer. Indiquer sa contenance.
too-large = Un nombre est trop grand pour le calcul.

## Champs.

field-basis = Calculer avec
basis-made = la dernière préparation, lot { $lot }
basis-plan = la préparation prévue
field-units = Unités
field-volume = Une contient
field-name = Nom
field-first = De cette sorte
first-number = autant que prévu : { $count }
first-rest = autant que le contenu le permet
field-kind-count = Combien ; vide : le reste
takes-kind-count = un nombre entier à partir de 1, par exemple 4 ; vide pour le reste
field-walls = Récipient en
walls-unsaid = non précisé
walls-glass = verre
walls-polyethylene = polyéthylène (PE)
walls-polypropylene = polypropylène (PP)
walls-polyester = polyester (PET)
walls-polystyrene = polystyrène (PS, SAN)
walls-bare-aluminium = aluminium nu
walls-lacquered-metal = métal verni
field-price = Prix d’un récipient
field-further = Étiquette, étui, etc. par unité
field-headspace = Reste vide
field-stays = Reste dans le distributeur
field-loss = Perdu sur parois et ustensiles
field-density = Masse volumique mesurée
field-wastage = Gaspillé à la pesée
field-minutes = Travail par préparation
unit-minutes = min
field-hour = Une heure coûte
field-margin = Marge sur le coût
field-currency = Monnaie
field-batches = Préparations
takes-minutes = des minutes à partir de 0, par exemple 90
takes-margin = un pourcentage de 0 à 10000, par exemple 60
takes-batches = un nombre entier de 1 à 1000

## Récipients.

figure-out = Il en sort
came-planned = { $batch } moins { $loss } sur parois et ustensiles.
came-made = Ce que le lot { $lot } a rempli ; sans remplissage noté, ce qui a été pesé.
no-density = Aucune masse volumique n’est connue : les récipients ne peuvent être comptés. En mesurer une et l’indiquer.
figure-full = Récipients pleins
full-containers =
    { $count ->
        [0] aucun de { $volume }
        [one] { $count } de { $volume }
       *[other] { $count } de { $volume }
    }
filled-measured = À { $density }, valeur mesurée.
filled-reckoned = À { $density }, calculé d’après la composition ; avec l’air incorporé, entre { $low } et { $high } (usage courant). Peser un remplissage.
figure-left = Il reste
one-takes = Un récipient prend { $mass }.
figure-gives = Utilisable par récipient
stays-inside = { $share } reste dans le distributeur.
size-filled = { $count }, reste { $left }
from-to = { $fewest } à { $most }
kind-of-volume = Contenant de { $volume }
left-of-kinds = Moins que n’en prend le plus petit qui reçoit le reste, ou que ceux qui manquent.
one-takes-and-gives = Un contenant prend { $mass } ; on peut en retirer { $gives }.
kind-short =
    { $count ->
        [one] Il en manque un : { $kind }. Ce qui sort ne suffit pas à le remplir.
       *[other] Il en manque { $count } : { $kind }. Ce qui sort ne suffit pas à les remplir.
    }
no-kind-takes-rest = Aucune sorte ne reçoit le reste. Videz un nombre, et cette sorte le reçoit.
plan-kinds = Prévoir { $mass }, qui les remplit tous
misfit-of = { $kind } : { $misfit }
misfit-scent = Huiles essentielles et parfum ramollissent le polystyrène et ses copolymères : il se fendille et absorbe l’odeur. Préférer verre, PET ou PP. { $source }.
misfit-acid = Sous pH 4, l’oxyde de l’aluminium nu ne tient pas : il se pique, et de l’aluminium passe dans le produit. Préférer un métal verni ou le verre. { $source }.
misfit-alkali = Au-dessus de pH 8,5, l’oxyde de l’aluminium nu ne tient pas : il se dissout en dégageant de l’hydrogène. Préférer verre, PE ou PP. { $source }.
misfit-polyester = Une base forte dégrade le polyester ; les flacons se fendent. Préférer PE, PP ou verre. { $source }.
misfit-lacquer = Un vernis ne retient acides et bases que s’il est intact et prévu pour cela. Demander son essai et garder un échantillon rempli. { $source }.
misfit-ph = Le pH n’est pas connu, et ce récipient en dépend. Le mesurer. { $source }.
misfit-none = Rien de connu ici ne s’y oppose. Ce n’est pas une preuve : en remplir un, le garder au chaud et l’examiner (usage courant).

## À acheter.

needed-of-stock = { $needed } nécessaires, { $stock } en stock
needed-no-stock = { $needed } nécessaires, stock non noté
enough-there = assez en stock
packs-to-buy =
    { $packs ->
        [one] { $packs } emballage de { $pack } ; restera { $left }
       *[other] { $packs } emballages de { $pack } ; restera { $left }
    }
pack-unknown = prix et contenance non notés
nothing-to-buy = Rien n’est à acheter.
to-buy-in-all =
    { $count ->
        [one] { $count } matière à acheter : { $amount }, pour ce dont le prix est connu.
       *[other] { $count } matières à acheter : { $amount }, pour ce dont le prix est connu.
    }
pieces =
    { $count ->
        [one] une pièce
       *[other] { $count } pièces
    }
to-buy-with-containers =
    { $count ->
        [0] Contenants à acheter : { $amount }, pour autant que les prix soient connus.
        [one] Une matière et les contenants à acheter : { $amount }, pour autant que les prix soient connus.
       *[other] { $count } matières et les contenants à acheter : { $amount }, pour autant que les prix soient connus.
    }
list-head =
    { $batches ->
        [one] À acheter pour { $batches } préparation : { $name }
       *[other] À acheter pour { $batches } préparations : { $name }
    }
list-entry = - { $name } : { $packs }
list-entry-unknown = - { $name } : { $mass } ; prix et contenance non notés
list-entry-priced = - { $name } : { $packs } ({ $amount })
list-sum = Ensemble, pour ce dont le prix est connu : { $amount }

## Prix en tableau.

prices-same = Rien dans ce tableau ne diffère de ce qui est noté.
prices-read =
    { $count ->
        [one] { $count } matière changerait :
       *[other] { $count } matières changeraient :
    }
prices-wrong =
    { $count ->
        [one] Rien n’est repris : { $count } point n’est pas compris.
       *[other] Rien n’est repris : { $count } points ne sont pas compris.
    }
prices-taken =
    { $count ->
        [one] { $count } prix est repris.
       *[other] { $count } prix sont repris.
    }
nothing-noted = rien de noté
change = { $name } : { $changes }
change-price = prix { $before } → { $after }
change-pack = contenance { $before } → { $after }
change-shipping = port { $before } → { $after }
change-stock = stock { $before } → { $after }

# Textes fixes de la page.
page-title = Coûts
page-intro = Ce que coûte une préparation, ce qu’il faut acheter et ce qu’elle remplit. Cela reste sur cet appareil : aucun lien ne le contient.
page-toFormula = Vers la formule
page-lines = D’où vient le coût
page-sums = Sommes
page-batch = Combien
page-containers = Récipients de cette préparation
page-kinds = Autres sortes de contenants
page-kindsHelp = Les sortes avec un nombre sont remplies d’abord, dans leur ordre ; le reste va dans celles qui n’en ont pas.
page-addKind = Ajouter une sorte
page-removeKind = Retirer
page-buyContainers = Contenants à acheter
page-sizes = Dans d’autres tailles
page-work = Travail et marge
page-workHelp = Le coût d’une heure et la monnaie valent pour toutes les formules, le reste pour celle-ci.
page-buy = À acheter
page-noted--price = Prix de l’emballage
page-noted--currency = Monnaie
page-noted--pack = Contenance
page-noted--shipping = Port par emballage
page-noted--stock = En stock
page-copy = Copier la liste
page-copied = Copié.
page-notCopied = Le navigateur n’a pas permis la copie : sélectionner le texte et le copier.
page-saveList = Enregistrer en CSV
page-listName = achats.csv
page-prices = Prix en tableau
page-pricesHelp = Prix, contenances et stocks de vos matières en CSV, pour un tableur. Ce qui est lu est montré avant tout changement.
page-savePrices = Enregistrer les prix
page-readPrices = Lire des prix
page-pricesName = prix.csv
page-takeIn = Reprendre
page-print = Imprimer
