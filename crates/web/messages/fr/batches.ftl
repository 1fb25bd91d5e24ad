# The bench and the journal: batches that are weighed, their record, and what became of them.

## What a field takes.

takes-temperature = la lecture du thermomètre, de −20 à 150 °C, par exemple 70 °C ou 158 °F
takes-minutes = des minutes, par exemple 3 ou { $half }
takes-ph = un pH de 0 à 14 tel que { $number }
takes-filling = un nombre entier de contenants, et pour chacun une masse telle que { $half } g
takes-mass = ce que la balance affiche, par exemple { $half }, { $half } g ou 2 oz

## Acts, for undo.

act-new = nouvelle préparation
act-delete = préparation supprimée
act-lot = numéro de lot
act-finish = préparation terminée
act-take-back = annulation à la paillasse
act-journal = journal
act-step = étape à la paillasse

## Why not.

unsound-formula = Les quantités ne font pas encore 100 %. Corriger d’abord la formule ; elle pourra ensuite être pesée.
no-batch = Il n’y a pas encore de préparation à peser. Indiquer à la paillasse la quantité voulue.
too-many-batches = { $most } préparations sont enregistrées sur cet appareil : c’est le maximum. En supprimer une devenue inutile.
too-many-deeds = Cette fabrication compte { $most } entrées ; il n’en tient pas davantage. La terminer et en commencer une autre.
too-many-photos = Une journée prend { $most } photos. En retirer une d’abord, ou noter un autre jour.
too-many-days = Un journal prend { $most } jours.
less-than-before = Le bécher contenait déjà { $before } ; { $shown }, ce serait moins. Ou la balance a-t-elle été tarée pour cette ligne ?
nothing-poured = Rien n’a été versé. Pour omettre la ligne, choisir « Omettre » ci-dessous.
heavier-than-before = { $hot }, c’est plus que les { $cold } d’avant la chauffe. Est-ce bien le même bécher, avec cette seule phase ?
lighter-than-beaker = { $mass }, c’est moins que le bécher vide ({ $empty }).
pour-no-such-line = Cette ligne n’a pas de part dans la préparation.
pour-no-rest = Aucune ligne de cette formule n’est en q.s.p.
pour-is-the-rest = C’est la ligne en q.s.p. elle-même.
pour-rest-is-poured = La ligne en q.s.p. est déjà dans le bécher. Si de l’eau est remise après la chauffe, ne pas y remettre cette quantité.
pour-rest-too-small = La ligne en q.s.p. n’a pas autant à céder.
pour-other-too-much = Pour cette préparation, il y aurait déjà trop dans le bécher : { $other }.
pour-too-large = La préparation serait trop grande pour être pesée.
colour-no-pixels = Il n’y a rien à lire là. Toucher la photo elle-même.
colour-white-overexposed = Le blanc est surexposé : impossible de dire à quel point il est blanc. Reprendre la photo avec moins de lumière.
colour-white-too-dark = Le blanc est trop sombre. Toucher un papier blanc ordinaire à côté du produit, sous la même lumière.
colour-lighter-than-white = Le produit est plus clair que le blanc. Toucher le papier blanc, puis le produit.
cooling-too-few = Il faut deux lectures à quelques minutes d’intervalle.
cooling-under-room = Une lecture n’est pas au-dessus de la température de la pièce.
cooling-does-not-fall = Les lectures ne baissent pas encore.
cooling-never-reached = La pièce est aussi chaude que cela : la préparation n’y descendra pas d’elle-même.

## What was done.

batch-deleted = Préparation { $lot } et son journal : supprimés.
entry-removed = L’observation est retirée.
finished =
    { $drawn ->
        [0] Terminé. Aucun stock n’est noté pour ces matières : rien n’a été déduit.
        [1] Terminé. Une matière a été déduite du stock.
       *[other] Terminé. { $drawn } matières ont été déduites du stock.
    }

## The list of batches.

offer-batch = Préparer { $mass } : { $name }
about-batch = { $lot } · { $mass }
about-running = { $lot } · { $mass } · étape { $step } sur { $steps }
about-finished = { $lot } · { $mass } · terminé le { $day }
expired =
    { $days ->
        [1] { $name } : date dépassée. À utiliser avant le { $day }, c’était hier.
       *[other] { $name } : date dépassée. À utiliser avant le { $day }, c’était il y a { $days } jours.
    }

## Steps of a run.

step-prepare = Préparer la paillasse
step-beaker = Bécher vide : { $name }
step-heat = Chauffer : { $name }
step-replace = Repeser, remettre l’eau : { $name }
step-combine = Réunir les phases
step-blend = Mixer
step-cool = Laisser refroidir
step-temper = Tempérer : { $name }
step-add = Ajouter : { $name }
step-top-up = Peser la préparation, dernière eau
step-ph = Mesurer le pH
step-fill = Conditionner
step-finish = Examiner et signer

## Weighing a line.

place-in-phase = { $phase } · { $at } sur { $of }
tolerance =
    { $scale ->
        [fine] ± { $step } sur la balance de précision
        [kitchen] ± { $step } sur la balance de cuisine
       *[any] ± { $step } sur la balance
    }
running-total = Dans le bécher : { $before } maintenant, { $after } après
lot = Lot { $lot }
use-by = à utiliser avant le { $day }
lot-and-use-by = Lot { $lot }, à utiliser avant le { $day }
too-much = { $over } en trop : { $poured } au lieu de { $target }.
too-little = Pesé : { $poured } sur { $target }.
cure-add = Ajouter encore { $mass }
cure-rescale = Tout adapter : { $batch } en tout
rescale-adds-nothing = Chaque pourcentage reste tel quel. Rien à changer dans le bécher.
rescale-adds = Chaque pourcentage reste tel quel. À ajouter encore : { $items }.
cure-take-from-rest = Retirer du q.s.p. : { $name }
rest-becomes = En peser { $mass } en tout. La préparation garde sa masse.
cure-accept = Laisser et le noter au dossier
percent-becomes = Cela fait { $percent } % au lieu de { $planned } %. Le dossier l’indique.
# An item of a list.
mass-of-material = { $mass } { $name }

## Heat and cold.

heat-of-line =
    { $basis ->
        [material] { $name } { $heat } kJ/(kg K), valeur propre
        [parts] { $name } { $heat } kJ/(kg K), d’après les composants
       *[class] { $name } { $heat } kJ/(kg K), usuel pour ce type
    }
under-melting = Une fois réunies, les phases sont à { $together }. { $name } : fond jusqu’à { $melts } et peut grainer en figeant. Chauffer un peu plus les deux phases, ou davantage la phase aqueuse.
melts-last = Dernier à fondre : { $name }, jusqu’à { $melts }.
melting-unknown = Point de fusion inconnu : { $names }. Regarder jusqu’à ce que tout soit limpide.
most-sensitive = Le plus sensible à la chaleur : { $name }, { $bears } au plus.
sensitivity-unknown = Tenue à la chaleur inconnue : { $names }.
# A time of day in a sentence.
time-of-day = { $hours } h { $minutes }
reached-at = { $time } ({ $low } à { $high })

## The record: its head and its results.

record-formula = Formule
record-version = Version
record-version-not-kept = pas encore enregistrée au début de la fabrication
record-lot = Numéro de lot
record-made-on = Fabriqué le
record-times = Début, fin
record-from-until = { $from } – { $until }
record-method = Mode opératoire
record-planned = Préparation prévue
result-weighed-in = Masse pesée
result-water-back = Eau remise
result-there = Préparation à la fin
result-ph = pH
result-filled = Conditionné
result-yield = Rendement
result-drawn = Déduit du stock

## The record: its log.

did-start = Paillasse prête, début
did-put-first = Pesé en premier : { $phase }
did-beaker = { $phase } : bécher vide { $mass }
did-pour = { $name } : { $mass } dans le bécher
did-leave-out = Omis : { $name }
did-accept = { $name } : laissé tel quel, comme écart
did-rescale = Tout adapté à la masse pesée : { $name }
did-take-from-rest = { $name } : pris sur la ligne en q.s.p.
did-weigh-cold = { $phase } : { $mass } avec son bécher avant la chauffe
did-weigh-hot = { $phase } : { $mass } avec son bécher après la chauffe
did-add-water = Eau remise dans la préparation : { $mass }
did-add-water-to-phase = { $phase } : eau remise, { $mass }
did-read-phase = { $phase } : { $degrees }
did-read-batch = Préparation : { $degrees }
did-read-room = Pièce : { $degrees }
did-start-timer = { $step } : minuteur sur { $minutes } min
did-stop-timer = { $step } : arrêt
did-resume-timer = { $step } : reprise
did-temper = { $phase } : incorporé d’abord, { $mass } de la préparation
did-weigh-batch = Préparation avec bécher { $gross }, bécher { $empty }
did-measure-ph = pH { $ph }
did-fill = Conditionné : { $count } × { $each }
did-say = { $label } : { $text }
did-strike-out = { $label } : rayé
did-close = { $step } : fait
did-finish = Terminé
did-read-line = Lecture de la balance : tarée pour chaque ligne
did-read-whole = Lecture de la balance : elle affiche tout ce qui est dans le bécher

## The record: where it is not as planned.

deviation-mass = { $name } : { $poured } pesés, { $target } voulus ({ $percent } %).
deviation-left-out = { $name } : omis.
deviation-share = { $name } : { $from } → { $to } %
deviation-batch = La préparation est passée de { $planned } à { $now } ; chaque pourcentage est resté tel quel.
deviation-water = { $mass } d’eau ont été perdus et non remis.
deviation-water-more = Il y a { $mass } d’eau de plus que n’en apportaient les lignes.
deviation-ph = pH { $ph } ; la formule vise { $wanted }.
deviation-yield = Rendement { $percent } % : il manque plus de 5 %.

## The record: dates.

common-practice = usage courant
best-before = À utiliser de préférence avant le
day-unknown = inconnu
limit-material = { $name } : à utiliser avant le { $day }, plus tôt que toute autre matière. Sans test de stabilité, pas plus longtemps.
limit-stated =
    { $months ->
        [one] { $months } mois selon le test de stabilité indiqué, plus tôt que toute matière.
       *[other] { $months } mois selon le test de stabilité indiqué, plus tôt que toute matière.
    }
limit-unknown = Aucune matière n’y porte de date limite, et aucun test de stabilité n’est indiqué. Saisir les dates des matières en stock.
limit-unpreserved-water = Rien n’en conserve l’eau : une semaine, au froid.
limit-preserved-water = Avec conservateur, mais sans test de stabilité indiqué : un an au plus.
limit-bound-water = L’eau y est liée, mais sans test de stabilité indiqué : six mois au plus.
limit-anhydrous = Sans eau, mais sans test de stabilité indiqué : deux ans au plus.
limit-delicate-oil = Les huiles rancissent vite et rien ne les en protège : six mois au plus.
days-unknown = Date limite inconnue : { $names }.
after-opening = Après ouverture
opening-months =
    { $months ->
        [one] { $months } mois
       *[other] { $months } mois
    }
opening-months-range = { $fewest } à { $most } mois
opening-how = Usuel sans essai de laboratoire : 6 à 12 mois avec de l’eau et un conservateur, 12 sans eau.
opening-none = aucune durée
opening-none-how = Contient de l’eau et aucun conservateur : quelques jours, au réfrigérateur. Il n’y a pas de telle durée.
on-label = Sur l’étiquette
label-date-when-known = une date, dès qu’elle sera connue
label-date = une date
label-open-jar = le pot ouvert, avec les mois
thirty-months =
    { $months ->
        [one] Se conserve { $months } mois après fabrication. Jusqu’à 30 mois, l’étiquette porte une date (« à utiliser de préférence avant fin ») ; au-delà, la durée d’utilisation après ouverture.
       *[other] Se conserve { $months } mois après fabrication. Jusqu’à 30 mois, l’étiquette porte une date (« à utiliser de préférence avant fin ») ; au-delà, la durée d’utilisation après ouverture.
    }
thirty-months-unknown = Jusqu’à 30 mois, l’étiquette porte une date (« à utiliser de préférence avant fin ») ; au-delà, la durée d’utilisation après ouverture.
thirty-months-source = Règlement (CE) nº 1223/2009, article 19, paragraphe 1, point c), de mémoire ; la réglementation locale fait foi

## The record: what the maker fills in, cautions, signatures.

field-weighed-by = Pesé par
field-checked-by = Contrôlé par
field-line-clearance = Paillasse libre d’autres préparations
field-cleaning = Nettoyé et désinfecté : qui, quand, avec quoi
field-equipment = Matériel : récipients, mixeur, thermomètre, pH-mètre
field-balance = Balance et son dernier contrôle
field-water = Eau : origine, purifiée, bouillie
field-look = Aspect, couleur, odeur
field-viscosity = Viscosité, en vos mots ou à l’instrument
field-ph-method = Comment le pH a été mesuré, avec quoi il a été ajusté
field-packaging = Lots des contenants, bouchages et étiquettes
field-net-content = Contenu net contrôlé : unités pesées
field-loss = Pourquoi il manque plus de 5 %
field-retained = Où se trouve l’échantillon témoin
field-durability = Durée validée par le test de stabilité (mois), s’il y en a un
field-released = Libéré, refusé ou à retraiter
field-released-by = Libéré par, le
caution-patch-test = Faire d’abord un test au pli du coude pendant 24 à 48 heures ; arrêter en cas de rougeur, de démangeaison ou de gonflement. Tenir à l’écart des yeux et des enfants.
caution-no-assessment = Ce dossier n’est pas une évaluation de la sécurité. Un produit destiné à d’autres demande un challenge test par un laboratoire et l’évaluation exigée par la loi ; la réglementation locale fait foi.
caution-no-claims = Aucune allégation médicale.
signature-made = Fabriqué par, date
signature-checked = Contrôlé par, date
signature-released = Libéré par, date

## The journal.

day-of-batch = Jour { $number } · { $day }
due-day = Jour { $number }
due-seen = ✓ observé
due-to-come = à venir
due-today = pour aujourd’hui
due-overdue =
    { $days ->
        [1] en retard d’un jour
       *[other] en retard de { $days } jours
    }
noted-ph = pH
noted-look = Aspect
noted-separation = Déphasage
noted-smell = Odeur
noted-viscosity = Viscosité
noted-storage = Où il se trouve
noted-note = Note
reminder = À observer : { $name }, préparation { $lot }, jour { $number }
reminder-about = pH, aspect, déphasage, odeur, viscosité, et une photo à côté d’un papier blanc sous la même lumière.

## Colours of the journal.

colour-in-numbers = L* { $lightness }, a* { $a }, b* { $b }
colour-difference = { $numbers } · ΔE00 { $difference } par rapport à la première
change = Changement depuis la première fois
change-how = CIEDE2000 entre la dernière couleur et la première ; un écart d’environ 1 se voit tout juste côte à côte
change-source = CIE 142-2001 ; Sharma, Wu et Dalal (2005)
unchanged = Aucun changement que des photos puissent montrer.
changed =
    { $size ->
        [visibly] Changement visible côte à côte.
       *[clearly] Changement net.
    }
# The ways are some of those below, the largest first.
changed-ways =
    { $size ->
        [visibly] Changement visible côte à côte : { $ways }.
       *[clearly] Changement net : { $ways }.
    }
way-lighter = plus clair
way-darker = plus foncé
way-redder = plus rouge
way-greener = plus vert
way-yellower = plus jaune
way-bluer = plus bleu
way-stronger = plus vif
way-paler = plus pâle
fade = Couleur à moitié passée après
fade-days =
    { $days ->
        [one] { $days } jour
       *[other] { $days } jours
    }
fade-days-range = { $low } à { $high } jours
fade-days-or-longer =
    { $days ->
        [one] { $days } jour ou plus : il n’est pas exclu que la couleur ne passe pas du tout
       *[other] { $days } jours ou plus : il n’est pas exclu que la couleur ne passe pas du tout
    }
fade-how = le chroma baisse chaque jour de la même part (premier ordre), ajusté aux photos ; une photo est tenue pour exacte à 1,5 près
fade-source = décroissance du premier ordre, moindres carrés, bande à 95 %
fade-curve = Chroma par jour, avec la décoloration ajustée
fade-too-few = Il faut des photos de deux jours.
fade-grey-already = La couleur est déjà grise.
fade-holds = Elle tient, pour autant que des photos le montrent.
fade-otherwise = Elle ne pâlit pas, mais elle change : voir ci-dessus.

## Cards: what the large area says.

next-back = Revenir à la suite
next-choose = Choisir l’une de ces options
next-begin = Commencer
next-done = Fait
next-skip = Continuer sans
next-finish = Terminer et déduire du stock
next-note = Noter
next-pour = { $mass } dans le bécher
next-water = { $mass } d’eau dans le bécher

## Cards: readying the bench.

own-method = Votre mode opératoire :
card-prepare = Préparer la paillasse
card-prepare-clear = Dégager la paillasse, nettoyer récipients et ustensiles, se laver les mains, attacher les cheveux.
card-prepare-lay-out = Disposer les matières et lire chaque étiquette.
card-caustics = Lunettes de protection et gants pour les acides au-delà de 10 %, les produits caustiques et les poudres fines. Verser les produits caustiques dans l’eau, jamais l’inverse.
card-lot = Numéro de lot
card-room = Pièce
card-weigh-first = Peser d’abord : { $phase }

## Cards: weighing.

card-beaker = Peser le bécher vide
card-beaker-about = Sa masse dira plus tard combien d’eau s’est évaporée. La noter aussi sur un ruban collé au bécher.
card-beaker-field = Bécher vide
card-pour-field = La balance affiche
card-reads-line = La balance a été tarée pour cette ligne
card-reads-beaker = Je n’ai pas remis la balance à zéro
card-leave-out = Omettre
card-left-out = Omis.
card-already-in = { $mass } dans le bécher.

## Cards: heating, and what evaporated.

card-heat = Chauffer
card-heat-to = Chauffer à { $degrees }
card-heat-about = Au bain-marie, couvert, en remuant de temps en temps : il s’évapore moins d’eau.
card-thermometer = Thermomètre
card-hold = Maintenir 20 minutes à cette température : usage courant, pour hydrater les gommes et partir avec peu de germes. Cela ne prouve rien.
card-heat-over = Le temps est écoulé.
card-replace = Repeser le bécher
card-cold-field = Avant la chauffe, avec son bécher
card-hot-field = Maintenant, avec son bécher
card-evaporated = Évaporé
card-evaporated-how = avant − maintenant
card-by-weight = conservation de la masse
card-put-back = Remettre { $mass } d’eau chaude
card-put-back-warm = Remettre { $mass } d’eau, à la température de la préparation
card-forecast = Sans pesée : un bécher ouvert peut perdre environ { $percent } % de son eau, soit { $loss }. Le produit fini contiendrait alors :
card-from-to = { $from } → { $to } %
card-forecast-how = pourcentage × préparation ÷ (préparation − perte) ; seule l’eau s’en va
card-alcohol = Il y a de l’alcool : il s’évapore plus vite que l’eau, la perte n’est donc pas que de l’eau. Garder couvert.

## Cards: combining and blending.

card-combine = Réunir les phases
card-combine-cold = Mélanger les phases
card-together = Température une fois réunies
card-together-how = Σ m·c·T ÷ Σ m·c sur { $lines }
card-together-source = conservation de l’énergie ; sans perte de chaleur au bécher ni à la pièce, sans chaleur de solidification
card-if-it-sets = { $degrees } si tout ce qui peut figer ou fondre l’a fait
card-assumed = Aucun thermomètre lu : les températures de la formule sont prises.
card-blend = Émulsionner
card-stir = Remuer jusqu’à ce que ce soit homogène
card-blend-about = Arrêt à mi-temps : racler les parois, puis reprendre.
card-minutes = Minutes
card-timer-go = Lancer le minuteur
card-scrape = Arrêt. Racler les parois, puis reprendre.
card-blend-over = Mixé.

## Cards: cooling, and what goes in cool.

card-cool-to = Agiter jusqu’à { $degrees }
card-batch-field = Préparation
card-room-assumed = La pièce est supposée à { $degrees }. Saisir la valeur réelle.
card-cool-now = C’est assez froid maintenant.
card-cool-enough = Assez froid à
card-cool-how = Ajusté aux lectures dans une pièce à { $room } : toutes les { $half } min, l’écart avec la pièce diminue de moitié.
card-cool-source = loi de refroidissement de Newton, moindres carrés ; bande à 95 % pour un thermomètre exact à 0,5 K près ; préparation agitée, air calme
card-cool-curve =
    { $readings ->
        [one] Courbe de refroidissement par { $readings } lecture, jusqu’à { $wanted }
       *[other] Courbe de refroidissement par { $readings } lectures, jusqu’à { $wanted }
    }
card-temper = Tempérer la phase de refroidissement
card-temper-about = Incorporer { $mass } de la préparation dans la coupelle, cuillerée par cuillerée : elle atteint { $wanted }. Elle s’ajoute alors sans grumeaux, et rien n’y est brûlé.
card-temper-unknown = Incorporer d’abord quelques cuillerées de la préparation dans la coupelle, à peu près autant qu’elle contient.
card-temper-field = Incorporé dans la coupelle
card-temper-take = À prélever
card-temper-how = m_coupelle·c_coupelle·(T − T_coupelle) ÷ (c_prép·(T_prép − T)), à mi-chemin entre les deux
card-add = Ajouter à la préparation
card-too-warm = La préparation est à { $batch } ; maximum supporté : { $bears } ({ $name }). Attendre.

## Cards: the last water, pH, filling, the end.

card-top-up = Peser la préparation
card-gross-field = Préparation avec son bécher
card-empty-field = Ce bécher vide
card-missing = Il manque
card-missing-how = tout ce qui a été pesé − ce qui est là
card-missing-about = Il manque aussi ce qui est resté sur d’autres récipients et ustensiles. Les racler d’abord : seule l’eau évaporée est à remplacer.
card-heavier-about = C’est plus que la masse pesée : de l’eau remise ne s’est pas évaporée. Il n’y a rien à ajouter.
card-ph = Mesurer le pH
card-ph-about = Dans la préparation refroidie, avec un pH-mètre étalonné du jour. Ajuster goutte à goutte, remuer, mesurer de nouveau.
card-ph-wanted = La formule vise pH { $ph }.
card-fill = Conditionner
card-count-field = Contenants
card-each-field = Dans chacun
card-filled = { $count } × { $each }
card-fill-plan =
    { $full ->
        [one] { $full } contenant plein à { $each } ; reste { $left }.
       *[other] { $full } contenants pleins à { $each } ; reste { $left }.
    }
card-fill-alike = Ou les { $count } pareils : { $each } dans chacun.
card-fill-density = D’après la masse volumique estimée à partir des matières.
card-fill-density-measured = D’après la masse volumique mesurée.
card-fill-no-density = Aucune masse volumique connue : impossible de calculer ce que prend un contenant. En remplir un et le peser.
card-finish = Examiner et signer
card-will-draw = Du stock : { $items }.
card-yield = Rendement
card-yield-value = { $percent } %, { $filled } sur { $of }
card-yield-how = conditionné ÷ pesé
card-explain-loss = Il manque plus de 5 % : noter pourquoi.

# Fixed texts of the page.
page-title = Préparations
page-intro = Peser, chauffer, mixer, conditionner, une chose après l’autre. Chaque étape est enregistrée aussitôt : une batterie vide ne fait rien perdre.
page-empty = Encore aucune préparation. Ouvrir une formule, indiquer la quantité à préparer et lancer la préparation.
page-resume = Reprendre
page-open = Ouvrir
page-remove = Supprimer : { $name }
page-deleteRecord = Supprimer ce dossier et son journal ? Ce qui a été pesé et observé n’est nulle part ailleurs.
page-keepRecord = Garder
page-deleteIt = Supprimer
page-leave = Quitter la fabrication
page-left = Cette fabrication est enregistrée en l’état. La quitter pour l’instant ?
page-leftUnkept = Cette fabrication n’est pas encore entièrement enregistrée. La quitter quand même ?
page-notKept = Non enregistré
page-stay = Rester
page-go = Quitter
page-list = Toutes les étapes
page-back = Annuler : { $act }
page-of = écoulé
page-done = fait
page-awake = L’écran reste allumé
page-hint = ou barre d’espace
page-record = Dossier : { $name }
page-showRecord = Le dossier jusqu’ici
page-timerStop = Arrêter
page-timerResume = Reprendre
page-toList = Toutes les préparations
page-print = Imprimer le dossier
page-takeBackFinish = Rouvrir ce lot
page-materials = Matières
page-material = Matière
page-lot = Lot
page-expiry = À utiliser avant le
page-percent = %
page-target = Prévu
page-weighed = Pesé
page-deviation = Écart %
page-total = Total
page-deviations = Écarts
page-noDeviations = Aucun.
page-results = Résultat
page-composition = Dans le pot, là où cela diffère du plan
page-findings = Ce qu’en disent les contrôles
page-dates = Durée de conservation
page-fields = Informations notées
page-log = Déroulement
page-takenBack = annulé
page-signatures = Signatures
page-journal = Journal
page-journalIntro = Observer aux jours 0, 1, 7, 30 et 90, ou n’importe quel autre jour.
page-lookToday = Noter aujourd’hui
page-onDay = Ou pour un autre jour
page-write = Noter
page-reminders = Rappels : enregistrer un fichier d’agenda
page-addPhoto = Ajouter une photo et en lire la couleur
page-photoHelp = Poser du papier blanc à côté du produit, sous la même lumière, sans flash. Les photos restent sur cet appareil.
page-tapWhite = Toucher le papier blanc.
page-tapProduct = Toucher maintenant le produit.
page-again = Toucher de nouveau le blanc
page-photoOf = Photo
page-close = Fermer
page-takeOut = Retirer
page-noPhoto = Cette photo n’est pas sur cet appareil.
page-photoFailed = La photo n’a pas pu être lue ou enregistrée.
page-colour = Couleur
page-ahead--title = La suite
page-ahead--done = fait
page-ahead--now = ici
page-ahead--next = ensuite
