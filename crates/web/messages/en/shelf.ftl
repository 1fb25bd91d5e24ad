# The shelf.

new-formula = New formula
new-old-batch = An old batch
this-pages-version = { $name }, as in the other tab
deleted = “{ $name }” is off the shelf.
about-empty = Nothing in it yet
about =
    { $lines ->
        [one] 1 line
       *[other] { $lines } lines
    } · { $purpose ->
        [leave-on] leave-on
       *[rinse-off] rinse-off
    }
about-ph = { $about } · pH { $ph }
about-unsound = { $about } · makes { $total }

## The example on the shelf at the first visit: invented, and marked so.

example-formula = Cucumber and oat gel cream
example-glycerite = Cucumber glycerite, lot 7 (invented)
example-extract = Cucumber glycerite (invented)
example-extract-note = Invented for the example: fresh cucumber steeped in glycerin, pressed after ten days.
example-step-gum = Scatter the xanthan gum over the glycerite, stir it smooth, then stir in the water, betaine and allantoin.
example-step-heat = Heat the water phase and the oil phase to 70 °C in the water bath; weigh the water beaker again and replace what has evaporated.
example-step-blend = Pour the oil phase into the water phase and blend for two minutes; stop half-way and scrape the walls.
example-step-cool = Stir while it cools; under 40 °C add the cool-down phase, each preservative dissolved in a little of the water first.
example-step-ph = Measure the pH and bring it to 4.8 with a few drops of a 10 % citric acid solution.
example-notes = An invented example. A preservative range is no proof: a product for others needs a challenge test by a laboratory and the assessment the law asks for. Patch test first; keep away from eyes and children.
count =
    { $formulas ->
        [0] No formulas
        [one] 1 formula
       *[other] { $formulas } formulas
    }
takes-tags = At most 12 tags of 40 letters each.
due-look = { $name }: { $day }
due-batch = Look at batch { $lot }
due-stock = { $until }, { $stock } left

# Fixed texts of the page.
page-title = Your shelf
page-newFormula = Start a formula
page-fromGrams = From an old batch in grams
page-example = See an example
page-empty = The shelf is empty. Begin a formula in percent, or write down an old batch in grams and turn it into one.
page-further = { $more } more
page-duplicate = Copy
page-remove = Delete
page-more = More for { $name }
page-nameOf = Rename
page-caution = Stillroom is a calculator for planning. It does not replace a challenge test, a stability test or the assessment the law asks for before a product reaches others. Patch test; keep away from eyes and children; local rules decide.
page-sources = Nothing you type leaves this device.
page-notices = What Stillroom is made of
page-newFormulaAbout = An empty sheet, in phases
page-paste = Paste a recipe
page-pasteAbout = Percent, grams or ounces
page-exampleAbout = Four invented formulas
page-what = Turn a percent formula into a batch you can weigh, and see what would spoil, separate or crystallise.
page-search = Search the shelf
page-order = Order
page-orders--changed = last changed first
page-orders--name = by name
page-nothingFound = Nothing on the shelf is called that.
page-due = Due today
page-dueLook = Look
page-dueUse = See it
page-tags = Tags, with commas between
page-tagged = Show only what has this tag
