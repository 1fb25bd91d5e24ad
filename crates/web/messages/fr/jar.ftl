# What is in the jar.

density-unknown = Masse volumique inconnue
density-estimate = Masse volumique d’environ { $density } g/ml, estimée d’après { $known } de la formule
layer-water = Eau totale
layer-humectants = Humectants
layer-thickeners = Épaissis­sants
layer-oils = Huiles
layer-solids = Cires, beurres
layer-emulsifiers = Émul­sifiants
layer-surfactants = Tensio­actifs
layer-actives = Actifs
layer-preservatives = Conser­vateurs
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
