# What is in the jar.

density-unknown = Density not known
density-estimate = Density about { $density } g/mL, estimated from { $known } of the formula
layer-water = Water, all sources
layer-humectants = Humectants
layer-thickeners = Thickeners
layer-oils = Oils
layer-solids = Waxes, butters
layer-emulsifiers = Emulsifiers
layer-surfactants = Surfactants
layer-actives = Actives
layer-preservatives = Preservatives
layer-fragrance = Fragrance
layer-minerals = Minerals, colour
layer-helpers = Other
empty = An empty jar
description = Jar, from the bottom: { $layers }
layer-share = { $label } { $percent }

# Fixed texts of the page.
page-title = In the jar
page-empty = Nothing is in the jar yet.
page-constituents = Constituents
page-fedBy = brought by
