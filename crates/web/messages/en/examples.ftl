# The examples beyond the one of the first visit: invented, and marked so. Each teaches one thing.

balm = Elbow balm
balm-melt = Melt the wax, the butter and the oils together in the water bath, no hotter than they need.
balm-cool = Take it off the heat and stir; under 50 °C add the tocopherol.
balm-fill = Pour it into dry tins and leave them open until it has set.
balm-notes = An invented example. It holds no water for microbes to grow in, so it needs no preservative; what ages it is air, and the tocopherol slows that. Keep it dry: wet fingers bring water in. Patch test first; keep away from eyes and children.
toner = Rose toner
toner-phase-acid = Acid, last
toner-dissolve = Dissolve the two preservatives in the water first, then stir in everything else of this phase.
toner-acid = Add the acid last and in small parts, stirring: where it is poured in at once, benzoic acid can come out of solution.
toner-fill = Measure the pH, bring it to 4.6 and fill clean bottles.
toner-notes = An invented example. Benzoate and sorbate act mostly as far as they stand there as acids, and the pH decides how far that is: change it and read the findings. A preservative range is no proof: a product for others needs a challenge test by a laboratory and the assessment the law asks for. Patch test first; keep away from eyes and children.
gel = Cleansing gel
gel-phase-gel = Gel
gel-phase-surfactants = Surfactants
gel-phase-finish = Finish
gel-swell = Dissolve the preservatives in the water, stir in the xanthan slurry and leave it to swell for half an hour.
gel-fold = Fold in the surfactants slowly, without beating in air.
gel-ph = Stir in the panthenol, then the citric acid drop by drop; measure the pH and bring it to 4.8.
gel-notes = An invented example. Surfactants are sold dissolved in water: the jar shows how much of what is poured in is washing substance. To be rinsed off; keep it out of the eyes. A preservative range is no proof: a product for others needs a challenge test by a laboratory and the assessment the law asks for. Patch test first; keep away from children.

# Fixed texts of the page.
page-title = Four invented examples
page-about = Each teaches one thing. What you choose goes on your shelf, to be changed as you like.
page-names--gel-cream = Cucumber and oat gel cream
page-names--balm = Elbow balm
page-names--toner = Rose toner
page-names--cleansing-gel = Cleansing gel
page-lessons--gel-cream = A home-made extract is counted by what it brings: its water and its glycerin.
page-lessons--balm = Without water it needs no preservative; what ages it is air, hence the antioxidant.
page-lessons--toner = A preservative acts only as far as the pH lets it.
page-lessons--cleansing-gel = Surfactants are sold in water: what counts is the active matter.
