# How large a batch, on which scales.

no-batch = Nothing to make: say how much.
density-needed = No density is known for these materials. Weigh 100 mL of the product and type its density.
allowance-out-of-range = { $value } is outside 0 to { $largest } %.
nothing-at-hand = Choose a material of this formula and say how much of it is left.
batch-too-large = The batch is too large to be weighed in grams.
scale-needed = At least one scale is needed.
scale-step = A scale's step lies between { $finest } and { $coarsest } g, such as 0.1.
scale-limits = The fine scale needs a finer step than the main scale, and a limit above 0.
no-sheet = The formula does not make 100 % yet, so there is nothing to weigh. See what it says above the phases.
density-estimated = The density is an estimate: volumes are added up over the { $known } of the formula whose density is known. Mixing shrinks and blending brings in air, so weigh 100 mL of the finished product and type what you find.
batch-differs = Rounded to your scales: { $batch } (asked for: { $asked }).
fill-arithmetic = { $count } × { $volume } × (100 − { $headspace }) % × { $density } ÷ (100 − { $loss }) % = { $mass }
fill-arithmetic-full = { $count } × { $volume } × { $density } ÷ (100 − { $loss }) % = { $mass }
raised-to-scale = Raised to the next step of the scale, so that no container runs short: { $mass }
stock-arithmetic = { $name } runs out first: { $available } ÷ { $share } % allows { $mass }, rounded down to the scale
left-over = { $mass } left over
not-in-formula = not in this formula
smallest-batch = Smallest batch with every line within { $tolerance }: { $mass }
lines-too-coarse =
    { $count ->
        [one] The scale rounds { $names } by more than { $tolerance }. Make a larger batch or weigh it on a finer scale.
       *[other] The scale rounds { $count } lines by more than { $tolerance }: { $names }. Make a larger batch or weigh them on a finer scale.
    }
too-many-materials-at-hand = A batch is held against at most { $most } materials.
scale-fine = Fine scale
scale-kitchen = Kitchen scale
caustic-1 = Caustic: goggles, gloves, long sleeves; no children, no animals near. It blinds and burns.
caustic-2 = Put it into cold water a little at a time, never water onto it: it heats up and spits. No aluminium.
caustic-3 = On skin or in an eye: rinse with running water for 20 minutes and get medical help. Local rules decide on keeping and labelling it.

# Fixed texts of the page.
page-title = Batch
page-way = How large?
page-ways--mass = By mass
page-ways--containers = To fill
page-ways--stock = From what is left
page-mass = Batch
page-count = Containers
page-volume = Each holds
page-headspace = Left empty
page-loss = Lost on walls and tools
page-density = Density of the product, if measured
page-stockHelp = What are you short of? Choose it: what you recorded as stock is taken, and you can say otherwise.
page-recorded = { $name }: { $recorded } recorded
page-stockOf = Left of { $name }
page-removeStock = Leave out { $name }
page-limiting = runs out first
page-sheet = Weigh sheet
page-rounding = Rounding
page-sum = Sum
page-print = Print the sheet
page-scales = Scales and units
page-mainStep = Kitchen scale shows steps of
page-fineScale = I have a finer scale, too
page-fineStep = Fine scale shows steps of
page-fineBelow = Use it for masses under
page-tolerance = Largest rounding error of a line
page-massUnit = Masses in
page-volumeUnit = Volumes in
page-temperatureUnit = Temperatures in
page-decimalMark = Decimal mark
page-fetched--here = All of Stillroom is on this device and works without a network.
page-fetched--coming = What goes beyond the first view, about { $size } kB, is fetched while the page is idle and kept for use without a network.
page-fetched--unasked = Your browser asks to save data: what goes beyond the first view, about { $size } kB, is fetched room by room as you open them.
page-fetchAll = Fetch all of it now, for use without a network
page-marks--browser = as in this browser
page-marks--point = point, 1.5
page-marks--comma = comma, 1,5
page-massUnits--mg = milligrams
page-massUnits--g = grams
page-massUnits--kg = kilograms
page-massUnits--oz = ounces
page-massUnits--lb = pounds
page-volumeUnits--mL = millilitres
page-volumeUnits--L = litres
page-volumeUnits--US_fl_oz = US fluid ounces
page-volumeUnits--UK_fl_oz = imperial fluid ounces
page-temperatureUnits--C = degrees Celsius
page-temperatureUnits--F = degrees Fahrenheit
page-language = Language
page-languageOfBrowser = as in this browser
