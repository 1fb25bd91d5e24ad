# What is in the jar.

density-unknown = Masse volumique inconnue
density-estimate = Masse volumique d’environ { $density } g/ml, estimée d’après { $known } de la formule
layer-water = Eau totale
layer-humectants = Humectants
layer-thickeners = Épaississants
layer-oils = Huiles
layer-solids = Cires, beurres
layer-emulsifiers = Émulsifiants
layer-surfactants = Tensioactifs
layer-actives = Actifs
layer-preservatives = Conservateurs
layer-fragrance = Parfum
layer-minerals = Minéraux, couleur
layer-helpers = Autres
empty = Un pot vide
description = Pot, depuis le fond : { $layers }
layer-share = { $label } { $percent }

# Fixed texts of the page.
page-title = Dans le pot
page-empty = Encore rien dans le pot.
page-constituents = Constituants
page-fedBy = apporté par
