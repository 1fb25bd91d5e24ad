# The shelf.

new-formula = Nouvelle formule
new-old-batch = Une ancienne préparation
this-pages-version = { $name }, comme dans l’autre onglet
deleted = « { $name } » est retirée de l’étagère.
about-empty = Encore vide
about =
    { $lines ->
        [one] { $lines } ligne
       *[other] { $lines } lignes
    } · { $purpose ->
        [leave-on] sans rinçage
       *[rinse-off] à rincer
    }
about-ph = { $about } · pH { $ph }
about-unsound = { $about } · fait { $total }

## The example on the shelf at the first visit: invented, and marked so.

example-formula = Gel-crème concombre et avoine
example-glycerite = Extrait glycériné de concombre, lot 7 (inventé)
example-extract = Extrait glycériné de concombre (inventé)
example-extract-note = Inventé pour l’exemple : concombre frais macéré dans la glycérine, pressé après dix jours.
example-step-gum = Saupoudrer la gomme xanthane sur l’extrait glycériné, lisser, puis incorporer l’eau, la bétaïne et l’allantoïne.
example-step-heat = Chauffer la phase aqueuse et la phase grasse à 70 °C au bain-marie ; repeser le bécher de la phase aqueuse et remettre l’eau évaporée.
example-step-blend = Verser la phase grasse dans la phase aqueuse et émulsionner deux minutes ; s’arrêter à mi-temps pour racler les parois.
example-step-cool = Agiter jusqu’à refroidissement ; sous 40 °C, ajouter la phase de refroidissement, chaque conservateur dissous d’abord dans un peu d’eau.
example-step-ph = Mesurer le pH et l’amener à 4,8 avec quelques gouttes d’une solution d’acide citrique à 10 %.
example-notes = Un exemple inventé. Une plage de conservateur ne prouve rien : un produit destiné à d’autres demande un challenge test par un laboratoire et l’évaluation exigée par la loi. Faire d’abord un test au pli du coude ; tenir à l’écart des yeux et des enfants.
count =
    { $formulas ->
        [0] Aucune formule
        [one] 1 formule
       *[other] { $formulas } formules
    }
takes-tags = Au plus 12 mots-clés de 40 lettres chacun.
due-look = { $name } : { $day }
due-batch = Examiner le lot { $lot }
due-stock = { $until }, reste { $stock }

# Fixed texts of the page.
page-title = Étagère
page-newFormula = Créer une formule
page-fromGrams = D’après une préparation en grammes
page-example = Voir un exemple
page-empty = L’étagère est vide. Commencer une formule en pour cent, ou noter une ancienne préparation en grammes et en faire une formule.
page-further = { $more } de plus
page-duplicate = Copier
page-remove = Supprimer
page-more = Plus d’options : { $name }
page-nameOf = Renommer
page-caution = Stillroom est un calculateur d’aide à la préparation. Il ne remplace ni challenge test, ni test de stabilité, ni l’évaluation exigée par la loi avant qu’un produit n’arrive à d’autres personnes. Faire d’abord un test au pli du coude ; tenir à l’écart des yeux et des enfants ; la réglementation locale fait foi.
page-sources = Rien de ce que vous saisissez ne quitte cet appareil.
page-notices = De quoi Stillroom est fait
page-newFormulaAbout = Une feuille vide, par phases
page-paste = Coller une recette
page-pasteAbout = Pour cent, grammes ou onces
page-exampleAbout = Quatre formules inventées
page-what = D’une formule en pour cent, faire une préparation à peser, et voir ce qui s’altérerait, se séparerait ou cristalliserait.
page-search = Chercher sur l’étagère
page-order = Ordre
page-orders--changed = dernière modifiée d’abord
page-orders--name = par nom
page-nothingFound = Rien sur l’étagère ne porte ce nom.
page-due = À faire aujourd’hui
page-dueLook = Examiner
page-dueUse = Voir
page-tags = Mots-clés, séparés par des virgules
page-tagged = Ne montrer que ce qui porte ce mot-clé
