# Sharing: links, comparisons, what is written out, earlier versions, and backups.

## A formula written out for people.

material = Matière
total = Total
phase-to = { $phase } (à { $degrees })
phase-under = { $phase } (sous { $degrees })
caution = Faire d’abord un test au pli du coude ; tenir à l’écart des yeux et hors de portée des enfants. Une plage de conservateur ne prouve rien : un produit destiné à d’autres demande un challenge test par un laboratoire et l’évaluation de la sécurité exigée par la loi. Les produits caustiques exigent lunettes de protection et gants, et se versent dans l’eau. Aucune allégation médicale ; la réglementation locale fait foi.
column-phase = phase
column-material = matière
column-percent = pour cent
column-mass = masse en { $unit }
column-note = note

## Links.

link-damaged = Ce lien est endommagé : un caractère s’est perdu ou a changé en route, ou ce n’est pas une formule de Stillroom. Rien n’a été ouvert et vos données n’ont pas été touchées. Redemander le lien.
link-cut-off = Ce lien est incomplet : la fin manque. Cela arrive quand une longue adresse est coupée sur deux lignes. Le copier en entier et l’ouvrir de nouveau. Vos données n’ont pas été touchées.
link-newer = Ce lien vient d’une version plus récente de Stillroom. Recharger la page pour obtenir cette version, puis ouvrir le lien de nouveau. Vos données n’ont pas été touchées.
link-too-large =
    { $part ->
        [characters] Ce lien contient plus qu’un lien ne le peut : au plus { $most } caractères. Il n’a pas été ouvert.
        [text] Ce lien contient plus qu’un lien ne le peut : au plus { $most } octets de texte. Il n’a pas été ouvert.
        [lines] Ce lien contient plus qu’un lien ne le peut : au plus { $most } lignes par phase. Il n’a pas été ouvert.
        [phases] Ce lien contient plus qu’un lien ne le peut : au plus { $most } phases. Il n’a pas été ouvert.
        [materials] Ce lien contient plus qu’un lien ne le peut : au plus { $most } matières personnelles. Il n’a pas été ouvert.
        [parts] Ce lien contient plus qu’un lien ne le peut : au plus { $most } composants par matière. Il n’a pas été ouvert.
       *[steps] Ce lien contient plus qu’un lien ne le peut : au plus { $most } étapes. Il n’a pas été ouvert.
    }
no-link-too-large =
    { $part ->
        [characters] Cette formule est trop grande pour un lien, qui contient au plus { $most } caractères. Écrire plutôt un fichier de sauvegarde.
        [text] Cette formule est trop grande pour un lien, qui contient au plus { $most } octets de texte. Écrire plutôt un fichier de sauvegarde.
        [lines] Cette formule est trop grande pour un lien, qui contient au plus { $most } lignes par phase. Écrire plutôt un fichier de sauvegarde.
        [phases] Cette formule est trop grande pour un lien, qui contient au plus { $most } phases. Écrire plutôt un fichier de sauvegarde.
        [materials] Cette formule est trop grande pour un lien, qui contient au plus { $most } matières personnelles. Écrire plutôt un fichier de sauvegarde.
        [parts] Cette formule est trop grande pour un lien, qui contient au plus { $most } composants par matière. Écrire plutôt un fichier de sauvegarde.
       *[steps] Cette formule est trop grande pour un lien, qui contient au plus { $most } étapes. Écrire plutôt un fichier de sauvegarde.
    }
no-link = Impossible de faire un lien de cette formule. Écrire plutôt un fichier de sauvegarde.
no-formula = Cette formule n’est pas sur cet appareil.
link-length = { $characters } caractères. La formule elle-même est dans le lien : aucun serveur ne la voit ni ne la garde.
link-length-long = { $characters } caractères. La formule elle-même est dans le lien : aucun serveur ne la voit ni ne la garde. Certains programmes coupent les adresses au-delà de 2000 caractères environ : l’essayer avant de la publier.
code-width = Sur papier, l’imprimer sur au moins { $millimetres } mm de large, à plat et avec sa marge blanche, pour qu’un téléphone le lise.
notes-left-out = N’y figure pas ce que personne d’autre ne doit lire : ce que vous avez en réserve, les notes de vos propres matières et pourquoi vous avez écarté des constats.
notes-carried = Il contient ce que vous avez en réserve, les notes de vos propres matières et pourquoi vous avez écarté des constats. Qui l’ouvre les lit.
no-code = Trop long pour un code qu’un téléphone lit sur une étiquette : { $characters } caractères, alors qu’un tel code en contient { $most }. Raccourcir les notes et les étapes, ou partager le lien lui-même.
material-comes-along = { $name } : { $brings }
name-of-kept-copy = { $name } (reçu par lien)
copy-kept = « { $name } » est maintenant sur l’étagère.
already-kept = « { $name } » est déjà sur l’étagère, sans changement.

## What is different between two versions.

same = Rien n’est différent.
# The counts are those below, without those that are nothing.
different = Différences : { $counts }.
count-of-materials =
    { $count ->
        [one] { $count } matière
       *[other] { $count } matières
    }
count-of-constituents =
    { $count ->
        [one] { $count } constituant du produit
       *[other] { $count } constituants du produit
    }
count-of-others =
    { $count ->
        [one] { $count } autre élément
       *[other] { $count } autres éléments
    }
name-differs = Nom : { $before } → { $after }
use-differs = Usage : { $before } → { $after }
use-of-product =
    { $purpose ->
        [leave-on] sans rinçage
       *[rinse-off] à rincer
    }
kind-differs = Type de produit : { $before } → { $after }
kind-of-product =
    { $kind ->
        [face] visage
        [face-wash] nettoyant visage
        [eyes] yeux
        [lips] lèvres
        [body] corps
        [body-wash] nettoyant corps
        [hand] mains
        [hand-wash] nettoyant mains
        [bath] bain
        [hair] cheveux
        [shampoo] shampooing
        [conditioner] après-shampooing
        [deodorant] déodorant
        [deodorant-spray] déodorant en spray
        [mist] brume
        [oral] bouche
        [child] enfant
       *[child-wash] nettoyant enfant
    }
ph-differs = pH : { $before } → { $after }
measured-ph-differs = pH mesuré : { $before } → { $after }
phases-differ = Phases : { $before } → { $after }
nothing-there = non indiqué
method-differs = Le mode opératoire est différent.
notes-differ = Les notes sont différentes.
batch-differs = Une autre préparation est demandée.

## Earlier versions.

version =
    { $lines ->
        [one] N° { $number }, { $when } : « { $name } », { $lines } ligne
       *[other] N° { $number }, { $when } : « { $name } », { $lines } lignes
    }
version-made = { $version }. Fabriqué d’après elle : { $lots }
name-of-version = { $name } ({ $when })

## Reading a backup.

backup-not-one = Ce fichier n’est pas une sauvegarde de Stillroom. Une sauvegarde finit en .json ou .zip et a été écrite ici comme fichier de sauvegarde. Rien n’a été modifié.
backup-damaged = Cette sauvegarde est endommagée ou incomplète : la lecture s’est arrêtée ligne { $line }, colonne { $column }. Rien n’a été modifié. En essayer une autre copie.
backup-zip-damaged = Ce fichier zip est endommagé ou incomplet et ne peut être lu. Rien n’a été modifié. En essayer une autre copie ; s’il s’ouvre avec un autre programme, en sortir backup.json et lire celui-ci.
backup-newer = Cette sauvegarde vient d’une version plus récente de Stillroom. Recharger la page pour obtenir cette version, puis la lire de nouveau. Rien n’a été modifié.
backup-too-large = Ce fichier est plus grand que ne peut l’être une sauvegarde : au plus { $records } fiches en { $size } Mo, et { $photos } photos de { $photo } Mo au plus. Rien n’a été modifié.
backup-holds = Écrite le { $made }. Nouveau : { $new } ; déjà ici : { $same } ; différent ici : { $differs }.
backup-unreadable = Illisible et laissé de côté : { $count }.
photos-all-here =
    { $all ->
        [one] Elle contient { $all } photo, déjà sur cet appareil.
       *[other] Elle contient { $all } photos, toutes déjà sur cet appareil.
    }
photos-all-new =
    { $all ->
        [one] Elle contient { $all } photo, pas encore sur cet appareil.
       *[other] Elle contient { $all } photos, dont aucune n’est encore sur cet appareil.
    }
photos-some-new = Elle contient { $all } photos ; pas encore sur cet appareil : { $new }.
record-formula = Formule
record-material = Matière
record-extract = Extrait
record-holding = Stock et prix
record-batch = Dossier de lot
record-journal = Journal
record-settings = Réglages
record-unknown = laissé de côté : cette version ne sait pas ce que c’est
record-newer = laissé de côté : écrit par une version plus récente
record-damaged = laissé de côté : endommagé
name-from-backup = { $name } (de la sauvegarde)

## What was restored, and photos that are left over.

restored-records =
    { $count ->
        [one] { $count } fiche est maintenant sur cet appareil.
       *[other] { $count } fiches sont maintenant sur cet appareil.
    }
restored-photos =
    { $count ->
        [one] { $count } photo est maintenant sur cet appareil.
       *[other] { $count } photos sont maintenant sur cet appareil.
    }
lost-photos =
    { $count ->
        [one] { $count } photo est endommagée ou n’a pas trouvé de place.
       *[other] { $count } photos sont endommagées ou n’ont pas trouvé de place.
    }
nothing-to-restore = Tout ce que contient le fichier est déjà sur cet appareil.
stray-photos =
    { $count ->
        [one] { $count } photo sur cet appareil n’appartient plus à aucune préparation. Une fois retirée, elle ne peut être récupérée.
       *[other] { $count } photos sur cet appareil n’appartiennent plus à aucune préparation. Une fois retirées, elles ne peuvent être récupérées.
    }

# Fixed texts of the page.
page-title = Partager et sauvegarder
page-back = Retour à la formule
page-none = Aucune formule n’est ouverte. En choisir une sur l’étagère.
page-link--title = Un lien vers cette formule
page-link--intro = Toute la formule est dans le lien, avec les matières personnelles qui la composent. La personne qui l’ouvre reçoit une copie à lire ; vos données n’en sont pas modifiées.
page-link--withNotes = Avec mes notes, pour un autre de mes appareils
page-link--address = Le lien
page-link--copy = Copier le lien
page-link--copied = Copié.
page-link--cannotCopy = Le navigateur ne permet pas de le copier : sélectionner le lien et le copier à la main.
page-link--send = Envoyer…
page-link--code = Le lien en code
page-link--codeIs = QR code qui ouvre : { $name }
page-link--print = Imprimer le code
page-link--embed = L’intégrer à votre page
page-write--post = Rédiger l’article
page-write--postAbout = Une page sur cette formule, avec quantités, mode opératoire, raisons, précautions et lien : à copier, enregistrer ou imprimer.
page-write--title = Par écrit
page-write--markdown = En Markdown, pour un blog
page-write--text = En texte brut
page-write--csv = En tableau (CSV)
page-write--html = En HTML, pour une page
page-write--substitutions = Avec ce qui peut remplacer chaque ligne
page-write--failed = Les remplacements n’ont pas pu être chargés : vérifier le réseau.
page-versions--title = Versions antérieures de cette formule
page-versions--none = Encore aucune. Une version est enregistrée quand on en fabrique un lot, et quand on revient à une formule après dix minutes ou plus.
page-versions--compare = Ce qui a changé depuis
page-versions--restore = La remettre en copie sur l’étagère
page-versions--with = Comparer avec une autre formule
page-versions--choose = Choisir une formule
page-versions--experiment = Essayer : travailler sur une copie
page-compare--lines = Matières
page-compare--composition = Dans le produit fini
page-compare--others = Autres différences :
page-compare--before = avant
page-compare--after = maintenant
page-compare--other = l’autre
page-compare--this = celle-ci
page-compare--difference = écart
page-compare--theirs = dans le lien
page-compare--ours = la vôtre
page-compare--column = { $head } %
page-backup--title = Sauvegarde
page-backup--intro = Un seul fichier avec tout ce qui est sur cet appareil : formules, matières, prix, extraits, préparations, journaux avec leurs photos, réglages. Garder ce fichier ailleurs que sur cet appareil.
page-backup--write = Écrire un fichier de sauvegarde
page-backup--read = Lire un fichier de sauvegarde
page-backup--writing = Écriture du fichier…
page-backup--opening = Lecture du fichier…
page-backup--reading = Copie des photos sur cet appareil…
page-backup--records = Copie des fiches sur cet appareil…
page-backup--progress = Photos déjà ici
page-backup--stop = Arrêter et tout laisser en l’état
page-backup--stopped = Arrêté. Rien n’a été restauré : tout est comme avant.
page-backup--notRemoved = Arrêté. Aucune fiche n’a été restaurée, mais des photos du fichier n’ont pas pu être retirées. Elles sont proposées plus bas, pour être retirées.
page-backup--busy = Un autre fichier est en cours. Ensuite, choisir de nouveau celui-ci.
page-backup--notRead = Le navigateur n’a pas pu lire le fichier. Le choisir de nouveau.
page-backup--noPhotos = Le navigateur ne laisse pas lire les photos : le fichier contient tout le reste.
page-backup--tooMuch = Ce carnet contient plus que ne peut en contenir un fichier de sauvegarde (20 000 fiches, 40 Mo). Rien n’a été écrit : supprimer d’abord ce qui ne sert plus.
page-backup--writingFailed = Une photo n’a pas pu être lue ; aucun fichier n’a été écrit. Réessayer.
page-backup--removeStrays = Retirer ces photos
page-backup--drop = Ou déposer un fichier n’importe où sur cette page.
page-backup--preview = Ce que contient le fichier
page-backup--take = Mettre sur cet appareil
page-backup--differing = Déjà ici, mais différent
page-backup--both = garder les deux
page-backup--theirs = prendre celui du fichier
page-backup--cancel = Ne pas reprendre
page-backup--item = { $kind } : { $name }
page-fates--new = nouveau
page-fates--same = déjà ici
page-fates--differs = différent ici
page-fates--unreadable = illisible
page-reading--title = Formule partagée
page-reading--intro = C’est une copie à lire. Elle n’est pas sur l’étagère, et vos données n’ont pas changé.
page-reading--same = Cette formule est déjà sur l’étagère, exactement comme ici.
page-reading--differs = Une autre version de cette formule est sur l’étagère. Elle reste telle quelle ; une copie gardée se range à côté.
page-reading--keep = Garder une copie
page-reading--open = Ouvrir celle de l’étagère
page-reading--close = Ranger
page-reading--compare = Ce qui diffère de la vôtre
page-reading--bad = Ce lien ne peut pas s’ouvrir
page-reading--toShelf = Vers l’étagère
