# What is kept, what can be taken back, what another tab changed.

kept = Enregistré sur cet appareil
kept-at = Enregistré sur cet appareil, { $time }
kept-loosely = { $kept } ; si le navigateur ou le courant lâche maintenant, la dernière minute peut être perdue
keeping = Enregistrement…
store-full = La mémoire est pleine : les dernières modifications ne sont que sur cet écran. Supprimer une formule devenue inutile ; l’enregistrement reprend de lui-même.
store-blocked = Ce navigateur ne laisse rien enregistrer : tout n’est que sur cet écran. Autoriser les données du site ou quitter la navigation privée.
changed-in-other-tab = Modifié aussi dans un autre onglet
something-changed-elsewhere = Un élément enregistré ici a été modifié dans un autre onglet pendant qu’il l’était dans celui-ci. Rien n’est écrasé.
changed-elsewhere = « { $name } » a été modifié dans un autre onglet pendant qu’il l’était dans celui-ci. Rien n’est écrasé.
record-newer = Une fiche a été écrite par une version plus récente de Stillroom et reste telle quelle ({ $key }). Recharger pour obtenir cette version.
record-damaged = Une fiche de cet appareil est endommagée et reste telle quelle ({ $key }).
undo = Annuler : { $act }
redo = Rétablir : { $act }
act-last-change = dernière modification
act-formula-new = nouvelle formule
act-formula-duplicate = copie d’une formule
act-formula-rename = nom de la formule
act-formula-delete = formule supprimée
act-formula-example = exemple sur l’étagère
act-formula-purpose = usage du produit
act-formula-ph = pH
act-formula-measured-ph = pH mesuré
act-formula-kind = type de produit
act-formula-tags = mots-clés
act-formula-notes = notes
act-formula-steps = mode opératoire
act-formula-write-in = pour cent et grammes
act-formula-keep-copy = copie gardée
act-formula-version = version antérieure
act-backup-restore = sauvegarde restaurée
act-cure = correction appliquée
act-finding-set-aside = constat mis de côté
act-finding-take-back = constat repris
act-line-suspend = doit rester solide
act-phase-add = nouvelle phase
act-phase-rename = nom de la phase
act-phase-kind = type de phase
act-phase-temperature = température de la phase
act-phase-move = phase déplacée
act-phase-remove = phase retirée
act-line-add = nouvelle ligne
act-line-amount = quantité
act-line-rest = ligne q.s.p.
act-line-note = note
act-line-move = ligne déplacée
act-line-replace = matière d’une ligne
act-line-remove = ligne retirée
act-batch-size = quantité à préparer
act-batch-stock = matière sous la main
act-settings = réglages
act-material = matière
act-material-new = nouvelle matière
act-material-copy = copie d’une matière
act-material-delete = matière supprimée
act-material-holding = stock d’une matière
act-material-import = matières reprises
act-parts = composants d’un mélange
storage-cleared = Le navigateur a effacé ce que cette page avait enregistré sur cet appareil. Ce qui est ouvert ici a été enregistré de nouveau ; si des formules manquent, lire le dernier fichier de sauvegarde (« Partager »).
clock-went-back = L’horloge de cet appareil est en retard sur la dernière modification ({ $last }). Rien n’est perdu ; l’ordre de l’étagère et des versions peut être faux tant qu’elle n’est pas à l’heure.
# A moment, in a list and in a sentence.
day =
    { $day ->
        [1] 1er
       *[any] { $day }
    } { $month ->
        [1] janvier
        [2] février
        [3] mars
        [4] avril
        [5] mai
        [6] juin
        [7] juillet
        [8] août
        [9] septembre
        [10] octobre
        [11] novembre
       *[12] décembre
    } { $year }
day-and-time = { $day }/{ $month }/{ $year } à { $hour } h { $minute }
