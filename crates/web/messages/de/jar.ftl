# What is in the jar.

density-unknown = Dichte nicht bekannt
density-estimate = Dichte etwa { $density } g/ml, geschätzt aus { $known } der Rezeptur
layer-water = Wasser gesamt
layer-humectants = Feucht­halter
layer-thickeners = Verdicker
layer-oils = Öle
layer-solids = Wachse, Butter
layer-emulsifiers = Emul­gatoren
layer-surfactants = Tenside
layer-actives = Wirkstoffe
layer-preservatives = Konser­vierung
layer-fragrance = Duft
layer-minerals = Mineralien, Farbe
layer-helpers = Sonstiges
empty = Ein leerer Tiegel
description = Tiegel, von unten: { $layers }
layer-share = { $label } { $percent }

# Fixed texts of the page.
page-title = Im Tiegel
page-empty = Noch nichts im Tiegel.
page-constituents = Inhaltsstoffe
page-fedBy = mitgebracht von
