# The post: the page that a maker publishes about a formula.

act-name = le contenu de l’article

## The parts.

title-notes = À propos
title-formula = Formule
title-sizes = Pour trois tailles de préparation
title-method = Mode opératoire
title-cautions = Précautions
title-why = À quoi sert chaque matière
title-instead = Ce qui peut remplacer
title-keeping = Durée de conservation
title-findings = Ce que disent les vérifications
title-ingredients = Ingrédients
title-link = La formule sur votre paillasse
title-code = Le lien en code
title-embed = L’intégrer à votre page
about-notes = Vos notes sur la formule.
about-why = Avec vos notes sur les lignes.
about-instead-waiting = Vos indications pour l’instant ; ce qui se calcule est en cours de chargement.
about-cautions = Toujours présentes.
about-code = En HTML et à l’impression ; Markdown ne contient pas de dessin.
about-embed = Les lignes à copier, avec le lien.

# What an item of a list is about, before it.
item-about = { $about } :

## The formula and its sizes.

size-small = Petite préparation
size-usual = Préparation
size-large = Grande préparation
formula-for = Pour { $batch }
sizes-about = Masses en { $unit }
sizes-larger = Dans une préparation plus grande, les pourcentages restent les mêmes ; les durées de chauffe, de mélange et de refroidissement changent.
mass-of = { $name } { $mass }

## The method.

step-prepare = Dégager et nettoyer la paillasse, nettoyer les mains et les ustensiles, et tout préparer.
step-weigh = { $phase } : peser { $lines }.
step-heat-to = { $phase } : chauffer à { $degrees }.
step-heat = { $phase } : chauffer jusqu’à ce que tout soit limpide et liquide.
step-replace = { $phase } : peser de nouveau et remettre l’eau évaporée.
step-combine = Réunir : { $phases }.
step-blend = Émulsionner ; racler les parois à mi-temps.
step-stir = Remuer jusqu’à ce que ce soit homogène.
step-cool-under = Continuer à remuer jusqu’à passer sous { $degrees }.
step-cool = Continuer à remuer jusqu’à tiédeur.
step-top-up = Peser la préparation et remettre l’eau évaporée.
step-add-under = { $phase } : y délayer un peu de la préparation, puis incorporer le tout sous { $degrees }.
step-add-tempered = { $phase } : y délayer un peu de la préparation, puis incorporer le tout.
step-add = { $phase } : incorporer à la préparation.
step-ph = Mesurer le pH et le noter.
step-ph-to = Mesurer le pH et l’ajuster à { $ph }.
step-fill = Remplir des contenants propres et les étiqueter avec la date.
degrees-to = { $phase } : à { $degrees }
degrees-under = { $phase } : sous { $degrees }
tool-scale = Balance affichant 0,1 g ou moins
tool-beakers = Béchers résistant à la chaleur
tool-bath = Bain-marie
tool-thermometer = Thermomètre
tool-blender = Mixeur plongeant
tool-stirrer = Agitateur ou fouet
tool-ph = pH-mètre ou bandelettes
tool-guards = Lunettes de protection et gants

## Why, and what instead.

class-that-brings = { $class } ; { $brings }
why-source = Fonctions d’après l’inventaire des ingrédients cosmétiques de la Commission européenne (CosIng) : à quoi une matière peut servir, non la promesse d’un effet.
instead-author = Indication de l’original : { $note }
instead-way = { $name } : { $takes }
instead-ways = { $ways }.
between = { " ; " }
instead-source = Calculé pour cette formule, en pour cent du tout ; les autres lignes restent comme écrites. Une autre version n’est plus éprouvée comme celle-ci.

## How long it keeps.

keeping-whole = Non ouvert
keeping-open = Après ouverture
keeping-months = { $months }. { $how }
keeping-water = Eau et conservation
water-none = Sans eau. L’eau qui y entre ensuite, par des doigts mouillés ou sous la douche, n’est pas conservée.
water-preserved = { $water } d’eau ; conservateurs : { $names }.
water-unpreserved = { $water } d’eau et aucun conservateur.
keeping-oils = Antioxydants pour les huiles
keeping-practice = Pratique courante, et jamais plus que la matière à utiliser en premier. Jeter dès que l’odeur, la couleur ou la texture change.

## What was found.

findings-none = Les vérifications n’ont rien relevé. Elles savent ce que disent leurs tables, et rien de plus.
tone =
    { $tone ->
        [stop] Stop
        [caution] Mise en garde
       *[note] Remarque
    }
tone-aside =
    { $tone ->
        [stop] Stop, connu dans l’original
        [caution] Mise en garde, connue dans l’original
       *[note] Remarque, connue dans l’original
    }

## Beyond the kitchen.

title-larger = Ce qui change dans une grande préparation
about-larger = Estimations pour la grande préparation.
larger-time = { $estimate } min ({ $low } à { $high })
larger-heating-head = Chauffe
larger-heating = { $small } pour { $batch }, { $time } pour { $large }. Ce qui est chauffé, de { $cold } à { $hot } avec 1 kW, dont 40 à 80 % arrivent : t = m c ΔT / (P η).
larger-cooling-head = Refroidissement
larger-cooling = { $small } pour { $batch }, { $time } pour { $large }. En agitant, de { $hot } à { $warm } dans l’air calme à { $cold }, avec 5 à 25 W/(m² K) : t = m c / (h A) · ln(ΔT₁ / ΔT₂). Il y a { $times } fois plus de volume par surface. L’eau qui s’évapore et un bain froid accélèrent.
larger-blending-head = Mélange
larger-blending = Récipient et lame sont { $times } fois plus larges. À vitesse d’extrémité égale, donc à cisaillement égal : { $tip } de la vitesse de rotation, et { $times } fois plus longtemps pour autant d’énergie par gramme. À puissance par volume égale, donc à gouttes égales : { $power } de la vitesse de rotation, aussi longtemps qu’avant. N D ou N³ D² restent constants ; pour les crèmes épaisses, simple repère.
larger-fill-head = Remplissage minimal
larger-fill = Dans un récipient de { $width } de large, une lame de { $head } est couverte à partir d’environ { $mass } ({ $low } à { $high }) : m = ρ π/4 D² k d, k de 1 à 2.
larger-no-density = Non estimé : la densité du produit n’est pas connue. Il en va de même pour la chauffe et le refroidissement.
larger-source = Estimations pour des récipients droits de même forme. Équations : { $heat } ; { $mixing }. Ce qui arrive à la préparation, ce que l’air absorbe et la profondeur de la lame relèvent de la pratique courante. Faire d’abord une préparation intermédiaire, et mesurer.

## The link and the picture.

open-at-bench = Ouvrir cette formule avec votre quantité et vos unités
code-is = QR code qui ouvre : { $name }
picture-description = { $name } : le pot et ses couches, et chaque ligne en pour cent et en masse.
picture-caution = Faire d’abord un test au pli du coude ; tenir loin des yeux et des enfants. Ceci n’est pas une évaluation de la sécurité ; la réglementation locale fait foi.

# Fixed texts of the page.

page-title = L’article
page-intro = La page que vous publiez sur cette formule. Prix, numéros de lot, fournisseurs, stocks, préparations et journaux n’y figurent jamais. Ce que vous avez écrit dans les noms, les notes et le mode opératoire paraît tel quel.
page-back = Retour au partage
page-parts = Ce qui y figure
page-sizes = Préparations
page-acts = L’emporter
page-copyMarkdown = Copier en Markdown
page-copyHtml = Copier en HTML
page-savePage = Enregistrer en .html
page-print = Imprimer
page-copied = Copié.
page-notCopied = Le navigateur ne permet pas la copie. L’enregistrer plutôt en .html.
page-preview = Aperçu
page-picture = La formule en image
page-withLink = Avec le lien en code
page-saveSvg = Enregistrer en .svg
page-savePng = Enregistrer en .png
page-notPainted = Le navigateur n’a pas pu peindre l’image. L’enregistrer plutôt en .svg.
page-notFetched = Les remplacements n’ont pas pu être chargés : vérifier le réseau. Tout le reste est là.
