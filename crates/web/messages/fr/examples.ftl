# Les exemples autres que celui de la première visite : inventés et signalés comme tels. Chacun montre une chose.

balm = Baume pour les coudes
balm-melt = Faire fondre la cire, le beurre et les huiles ensemble au bain-marie, sans chauffer plus que nécessaire.
balm-cool = Retirer du bain-marie et remuer ; sous 50 °C, ajouter le tocophérol.
balm-fill = Couler dans des boîtes sèches et laisser ouvert jusqu’à ce que le baume ait pris.
balm-notes = Un exemple inventé. Il ne contient pas d’eau où des germes puissent se développer et n’a donc pas besoin de conservateur ; c’est l’air qui le fait vieillir, et le tocophérol ralentit cela. Garder au sec : des doigts mouillés apportent de l’eau. Faire d’abord un test au pli du coude ; tenir à l’écart des yeux et des enfants.
toner = Lotion à la rose
toner-phase-acid = Acide, en dernier
toner-dissolve = Dissoudre d’abord les deux conservateurs dans l’eau, puis incorporer le reste de cette phase.
toner-acid = Ajouter l’acide en dernier, par petites quantités et en remuant : versé d’un coup, il peut faire précipiter l’acide benzoïque.
toner-fill = Mesurer le pH, l’amener à 4,6 et remplir des flacons propres.
toner-notes = Un exemple inventé. Le benzoate et le sorbate agissent surtout dans la mesure où ils sont présents sous forme d’acide, et c’est le pH qui en décide : changez-le et lisez les constats. Une plage de conservateur ne prouve rien : un produit destiné à d’autres demande un challenge test par un laboratoire et l’évaluation exigée par la loi. Faire d’abord un test au pli du coude ; tenir à l’écart des yeux et des enfants.
gel = Gel nettoyant
gel-phase-gel = Gel
gel-phase-surfactants = Tensioactifs
gel-phase-finish = Finition
gel-swell = Dissoudre les conservateurs dans l’eau, incorporer le xanthane dispersé dans la glycérine et laisser gonfler une demi-heure.
gel-fold = Incorporer lentement les tensioactifs, sans battre d’air.
gel-ph = Incorporer le panthénol, puis l’acide citrique goutte à goutte ; mesurer le pH et l’amener à 4,8.
gel-notes = Un exemple inventé. Les tensioactifs se vendent dissous dans l’eau : le pot montre quelle part de ce qui est versé est de la matière active lavante. À rincer ; éviter le contact avec les yeux. Une plage de conservateur ne prouve rien : un produit destiné à d’autres demande un challenge test par un laboratoire et l’évaluation exigée par la loi. Faire d’abord un test au pli du coude ; tenir à l’écart des enfants.

# Fixed texts of the page.
page-title = Quatre exemples inventés
page-about = Chacun montre une chose. Celui que vous choisissez rejoint l’étagère, où tout peut être changé.
page-names--gel-cream = Gel-crème concombre et avoine
page-names--balm = Baume pour les coudes
page-names--toner = Lotion à la rose
page-names--cleansing-gel = Gel nettoyant
page-lessons--gel-cream = Un extrait maison compte pour ce qu’il apporte : son eau et sa glycérine.
page-lessons--balm = Sans eau, il n’a pas besoin de conservateur ; c’est l’air qui le fait vieillir, d’où l’antioxydant.
page-lessons--toner = Un conservateur n’agit que dans la mesure où le pH le permet.
page-lessons--cleansing-gel = Les tensioactifs se vendent dans l’eau : c’est la matière active qui compte.
