# Making it with what one has: a line swapped, the formula rebuilt from a shelf, lines brought to a figure.

act-name = fait avec ce que l’on a
act-note = quoi prendre à la place
takes-figure = un nombre de 0 à 100, par exemple 8
none-open = Aucune formule n’est ouverte.
taken = Modifié : { $what }
take = Mettre dans la formule

## Why there is no answer.

no-unbalanced = Les quantités ne font pas encore 100 %, ou quelque chose n’y est pas connu. Corriger d’abord la formule.
no-nothing-at-hand = Rien de disponible ne donne cela.
no-too-many = Plus de { $most } matières à la fois ne se calculent pas.
no-too-large = Tant de matières et de constituants à la fois ne se calculent pas. En marquer moins comme disponibles.
no-failed = Aucune quantité n’a pu être calculée.
no-step-too-coarse = Des quantités existent, mais aucune par pas de 0,01 % qui respecte ceci : { $bounds }.
no-conflict = Tout ceci ne peut pas être respecté : { $bounds }.
least-relaxation = Le plus petit changement qui suffit : { $way }.
or-else = Ou : { $way }.
least-together = Le plus petit changement qui suffit, tout ensemble : { $ways }.
nothing-gives-way = Rien de cela ne peut céder.
gives-way = céder ici : { $bound }
gives-way-to = { $bound } : { $to } au lieu de { $from }
bound-at-hand = quantité disponible ({ $material })
bound-needs = quantité demandée ({ $material })
bound-law = limite légale pour « { $subject } » ({ $jurisdiction })
bound-advice = limite conseillée pour « { $subject } » ({ $jurisdiction })
bound-dissolves = ce qui reste dissous ({ $substance })
bound-dose = dose ({ $substance })
bound-usual = quantité usuelle ({ $substance })
bound-wanted = quantité voulue ({ $substance })
bound-emulsifier = assez d’émulsifiant pour l’huile
bound-balance = HLB des émulsifiants
bound-oil = part d’huile
bound-water = part d’eau
bound-density = masse volumique

## What changes.

goes = { $name } : retiré
comes = { $name } { $percent }
becomes = { $name } { $percent } au lieu de { $before }
and-more =
    { $count ->
        [one] { $count } autre changement
       *[other] { $count } autres changements
    }
stays = Rien ne change.
more-rest = davantage de la ligne en q.s.p.
bar-before = Écrit
bar-after = Alors
bar = { $which } : { $layers }
cost = Matières pour { $batch } : { $before } comme écrit, { $after } alors ({ $currency } ; eau sans prix non comptée).
cost-unknown = Le coût n’est pas connu. Sans prix : { $names }.
no-prices = Aucun prix n’est connu. Noter prix et conditionnement sur les cartes des matières.
unpriced = Sans prix, donc pas augmenté : { $names }.
nothing-expires = Rien dans les stocks ne périme d’ici un an. Noter les dates sur les cartes des matières.
missed = { $substance } : { $got } au lieu de { $wanted }
felt-oils-more = Huiles { $after } au lieu de { $before } : plus riche, pénètre moins vite.
felt-oils-less = Huiles { $after } au lieu de { $before } : plus léger, pénètre plus vite.
felt-humectants-more = Humectants { $after } au lieu de { $before } : plus collant.
felt-humectants-less = Humectants { $after } au lieu de { $before } : moins collant, retient moins l’eau.
felt-solids-more = Cires et beurres { $after } au lieu de { $before } : plus ferme, plus de film.
felt-solids-less = Cires et beurres { $after } au lieu de { $before } : plus souple, plus fluide.
felt-thickeners-more = Épaississants { $after } au lieu de { $before } : plus épais.
felt-thickeners-less = Épaississants { $after } au lieu de { $before } : plus fluide, peut se séparer plus tôt.

## Ways to do without a line.

way-apart = Ce qui le compose
reason-apart = Pesé séparément, comme l’indique sa carte.
reason-together = Contient ce qu’apportent ces lignes : { $lines }
reason-same-substance = Apporte la même chose ({ $substance }) : { $before } dans ce qui est écrit, { $after } dans ceci
reason-same-acting = Le même acide agit : { $acid }
reason-same-in-part = { $share } de ce qu’il apporte est pareil
reason-same-group = Le métier emploie les deux ainsi : { $group }
reason-same-class = Les deux sont de même nature : { $class }
reason-balance = HLB { $before } comme écrit, { $after } dans ceci
reason-required-balance = Demande HLB { $after } au lieu de { $before }
reason-melting = Fond à { $after }, ce qui est écrit à { $before }
reason-fatty-acids = { $alike } des acides gras concordent
reason-spectrum = Agit sur chaque type de microbe couvert à présent
feels = Toucher { $after } plutôt que { $before }
brings-also = Apporte aussi : { $substance }
lacks = Il manque : { $substance }
window = Agit de pH { $low } à { $high }
dosed = Dose propre, pas gramme pour gramme : { $low } à { $high } du produit
needs-base = N’épaissit qu’une fois neutralisé
keep-cool = Ne pas chauffer : ajouter au refroidissement
rancid-sooner = Rancit plus tôt
finds-also = Alors aussi : { $what }
finds-no-more = Alors plus : { $what }
source = { $source } ({ $basis })
feel =
    { $feel ->
        [very-light] très léger
        [light] léger
        [medium] moyen
        [rich] riche
        [heavy] lourd
        [waxy] cireux
       *[sticky] collant
    }
group =
    { $group ->
        [fatty-alcohol] alcools gras
        [saturated-fatty-acid] acides gras solides
        [liquid-fatty-acid] acides gras liquides
        [hard-butter] beurres durs
        [lauric-fat] graisses lauriques
        [hard-wax] cires dures
        [soft-wax] cires souples
        [mineral-wax] cires minérales
        [kernel-oil] huiles d’amandon
        [linoleic-oil] huiles riches en acide linoléique
        [oleic-oil] huiles riches en acide oléique
        [high-oleic-oil] huiles à haute teneur en acide oléique
        [rose-seed-oil] huiles de graines de rose
        [linolenic-oil] huiles riches en acide linolénique
        [gamma-linolenic-oil] huiles à acide gamma-linolénique
        [liquid-wax] cires liquides
        [light-ester] esters légers
        [alkyl-ester] esters d’alkyle légers
        [medium-ester] esters moyens
        [branched-hydrocarbon] hydrocarbures ramifiés
        [volatile-hydrocarbon] hydrocarbures volatils
        [volatile-silicone] silicones volatiles
        [occlusive] corps gras occlusifs
        [solubiliser] solubilisants
        [polysorbate] polysorbates
        [low-sorbitan] esters de sorbitan à HLB bas
        [low-co-emulsifier] co-émulsifiants à HLB bas
        [lamellar-system] systèmes émulsifiants à cristaux liquides
        [emulsifying-wax] cires émulsifiantes
        [conditioning-emulsifier] émulsifiants conditionneurs
        [anionic-emulsifier] émulsifiants anioniques
        [polyacrylate] polyacrylates
        [clear-gum] gommes limpides
        [cellulose] celluloses
        [liquid-humectant] humectants liquides
        [glycol] glycols
        [spirit] alcools
        [urea-kin] urée et apparentés
        [hyaluronate] hyaluronates
        [paraben] parabènes
        [polyol-chelator] chélatants sans EDTA
        [edta] sels d’EDTA
        [vitamin-c] formes de vitamine C
        [silicate-clay] argiles
        [starch] amidons
        [acid] acides pour le pH
        [strong-base] bases fortes
        [organic-base] bases organiques
        [glucoside-surfactant] tensioactifs glucosides
        [betaine-surfactant] tensioactifs bétaïnes
       *[aloe] aloès
    }

## The shelf.

shelf-none-left = épuisé
shelf-past = périmé, { $day }
shelf-short = { $stock } sur les { $needed } nécessaires
shelf-stock = { $stock } en stock
shelf-some = dans les stocks
shelf-not-noted = pas noté dans les stocks
stands-in = À la place de « { $name } » : { $material }.
nothing-on-shelf = Rien dans les stocks ne fait le travail de « { $name } ». Le feraient : { $names }.
nothing-stands-in = Rien de connu ne fait le travail de « { $name } ».
field-count = Est disponible
count-marked = tout sauf ce qui est coché
count-stores = seulement ce qui est noté dans les stocks
field-further = L’écart avec la formule peut être
further-hardly = infime
further-somewhat = modéré
further-freely = large
field-figure = Amener à une valeur
field-target = À
field-target-now = À (à présent { $now })
figure-oil = Huile, en tout
figure-water = Eau totale
figure-balance = HLB des émulsifiants
figure-density = Masse volumique

## A reader who lacks something.

readers-version = C’est votre version, pas l’original. Sans : { $names }. Ce qui y est dit du résultat, de la conservation et du toucher vaut pour l’original.
reader-nothing = Rien de connu ne fait le travail de « { $name } ». Laisser la formule, ou demander à la personne qui l’a écrite.
reader-by-author = Comme indiqué dans l’original
reader-by-author-takes = Les quantités restent comme écrites ; l’indication se suit à la main.

## The author's table.

table-title = S’il vous manque quelque chose
table-intro = Calculé pour cette formule ; les autres lignes restent comme écrites. Les pourcentages sont du tout. Émulsifiants et conservateurs suivent leur dose et leur pH, pas gramme pour gramme. Une autre version n’est plus éprouvée comme celle-ci.
table-line = À la place de
table-instead = prendre
table-takes = et peser
table-author = indication de l’original

# Fixed texts of the page.
page-title = Faire avec ce que l’on a
page-intro = Remplacer une ligne, refaire la formule avec ses stocks ou l’amener à une valeur. Rien ne change sans votre accord.
page-wanted = Ce qui est demandé
page-uses--line = Remplacer une ligne
page-uses--shelf = Avec mes stocks
page-uses--expiring = Utiliser ce qui périme
page-uses--cheapest = Au moins cher
page-uses--figure = Viser une valeur
page-chooseLine = Quelle ligne
page-note = Ce qui peut la remplacer
page-noteHelp = Avec vos mots. Cela part avec le lien ; à qui il manque cette matière, c’est montré en premier.
page-ways--same = La même chose, autre concentration
page-ways--parts = Séparé et assemblé
page-ways--other = Fait le même travail
page-noWays = Rien de connu ne peut la remplacer.
page-atHand = dans les stocks
page-tryWay = Regarder
page-why = Pourquoi, et ce qui change
page-missing = Manque dans les stocks
page-mayVary = Peut varier
page-compare = Avant et après
page-material = Matière
page-layer = Couche
page-before = écrit (%)
page-after = alors (%)
page-weigh = à peser
page-findings = Constats
page-goneFindings = N’est plus constaté
page-newFindings = Alors constaté
page-noFindings = Les constats restent les mêmes.
page-expect = À quoi s’attendre sur la peau
page-practice = Usage courant, non mesuré : faire d’abord une petite quantité et la tester de nouveau sur la peau.
page-missed = Ce qui manquerait
page-toFormula = Vers la formule
page-cautions = Une version est une nouvelle formule : une émulsion peut casser, un conservateur ne pas suffire. Tester de nouveau ; pour d’autres, un laboratoire et une évaluation de la sécurité décident.
