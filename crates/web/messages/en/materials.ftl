# Materials: what there is of them, what is known of them, and tables of them.

## What a maker has.

not-a-currency = A currency is three letters, such as EUR, USD or GBP.
currency-without-price = Type the price first: a currency alone would stand for a price of nothing.
not-a-day = That is not a day of the calendar. Type it as year-month-day, such as 2027-05-31, or nothing.
price-per-hundred-grams = { $amount } { $currency } for 100 g
price-with-currency = { $amount } { $currency }
price-noted = Price noted on { $day }.
price-before = Before that: { $price }, noted on { $day }.
price-before-pack = Before that: { $price } for { $pack }, noted on { $day }.
cell-incomplete = An amount of money needs its currency, and a shipping its price.
past-its-date = Past its date: it should have been used by { $day }.
your-own-source = typed on this device, in place of the catalogue's
your-own-basis = yours

## Tables of own materials.

table-too-large = The file is larger than any table of materials; at most 2 MB are read.
table-not-utf8 = Line { $line } is not written in UTF-8. Save the table as “CSV UTF-8” and try again.
table-no-name-column = The first line must name the columns, and one of them must be “name”. The others may be inci, class, phase, density, parts and note.
table-too-many-lines = The table has more than { $most } lines. Nothing was read.
table-empty = The table has no material in it.
table-sound =
    { $rows ->
        [one] One material was read and nothing is wrong with it.
       *[other] { $rows } materials were read and nothing is wrong with them.
    }
table-wrong =
    { $problems ->
        [one] One thing is wrong, so nothing can be taken in yet.
       *[other] { $problems } things are wrong, so nothing can be taken in yet.
    }
materials-imported =
    { $count ->
        [one] One material is taken in.
       *[other] { $count } materials are taken in.
    }
# What is wrong with a cell is one of those below.
cell-problem = Line { $line }, { $column }: { $problem }
cell-no-name = the name is missing
cell-name-twice = the same name stands on line { $first }
cell-too-long = the text is longer than { $most } characters
cell-spreadsheet-formula = the text begins like a formula of a spreadsheet; write it without that sign
cell-unknown-class = “{ $text }” is no kind of material; use a word such as oil, humectant, emulsifier or active
cell-unknown-phase = “{ $text }” is no phase; use heated-water, heated-oil, cool-down or room-temperature
cell-unknown-material = no material is called “{ $name }”; parts are written such as “65 % Glycerin, vegetable; q.s. Water, distilled”
cell-parts-out-of-balance = the parts do not make 100 %
cell-too-many-cells = there are more cells than columns

## Values of the catalogue.

figure-in-range = { $figure } ({ $low } to { $high })
range = { $low } to { $high }
value-with-conditions = { $value }, { $conditions }
value-with-note = { $value } ({ $note })
value-with-conditions-and-note = { $value }, { $conditions } ({ $note })
source = { $citation }, { $locator }
basis-published = published
basis-computed = computed
basis-supplier-typical = typical of suppliers
basis-memory = from memory, to be checked

source-of = { $kind }, { $edition }

## What the fatty acids of a fat say.

from-fatty-acids = computed from its fatty acids; what does not saponify is left out of account
takes-up-oxygen = Goes rancid
oxidation-slow = slowly, by its fatty acids; light, air and metals hasten it
oxidation-moderate = not fast, by its fatty acids; light, air and metals hasten it
oxidation-fast = fast, by its fatty acids; keep it cool, dark and closed
oxidation-very-fast = very fast, by its fatty acids; keep it cold and use it soon

## Properties.

property =
    { $property ->
        [usual-percent] Usual use
        [usual-ph] pH window
        [max-add-temperature] Add at most at
        [heat-sensitive] Spoilt by heat
        [charge] Charge
        [density] Density
        [melting-point] Melting point
        [refractive-index] Refractive index
        [specific-heat] Specific heat
        [boiling-point] Boiling point
        [flash-point] Flash point
        [lower-flammable-limit] Vapour burns from
        [heat-of-vaporization] Heat of vaporization
        [heat-of-fusion] Heat of fusion
        [permittivity] Relative permittivity
        [hansen-dispersion] Hansen parameter, dispersion
        [hansen-polar] Hansen parameter, polar
        [hansen-hydrogen] Hansen parameter, hydrogen bonds
        [hlb] HLB
        [required-hlb] Required HLB, oil in water
        [required-hlb-water-in-oil] Required HLB, water in oil
        [saponification-value] Saponification value
        [iodine-value] Iodine value
        [molar-mass] Molar mass
        [water-solubility] Dissolves in water
        [log-kow] log P (octanol/water)
        [pka-1] pKa 1
        [pka-2] pKa 2
        [pka-3] pKa 3
        [pka-4] pKa 4
        [water-content] Water in it
        [shelf-life] Keeps unopened
       *[other] Value
    }

## Units behind a number.

unit-percent-by-volume = { $number } % by volume
unit-grams-in-water = { $number } g/100 g water
unit-months = { $number } months
unit-ph = { $number } pH
held-lot = Lot { $lot }
held-until = Use by { $day }
held-past = Past { $day }

# Fixed texts of the page.
page-title = Materials
page-search = Search by name, INCI, use or CAS number
page-own = Your own
page-none = Choose a material to see what is known of it.
page-noOwn = None yet. A glycerite, a stock solution or a purchased blend belongs here.
page-newComposite = New blend
page-newSimple = New material
page-found = Found
page-nothing = Nothing found. Check the spelling, or describe it as a material of your own.
page-name = Name of the material
page-inci = INCI name
page-class = What it is
page-phase = Usual phase
page-density = Density
page-note = Note
page-parts = Made of
page-addPart = Add a part
page-removePart = Take out { $name }
page-partsTotal = Parts make { $percent } %
page-partOf = Percent of { $name }
page-brings = What it brings
page-values = Known values
page-usedIn = Used in
page-notUsed = No formula uses it.
page-copy = Make one of my own from it
page-remove = Delete
page-valuesHelp = Each value with its source and how far it may be trusted.
page-noValues = No value is known for it: that says nothing about the material.
page-everyClass = every kind
page-everyPhase = every phase
page-filterPhase = Usual phase
page-holding = What you have of it
page-price = Price of a pack
page-currency = Currency
page-pack = A pack holds
page-shipping = Shipping of a pack
page-stock = In stock
page-lot = Lot
page-expiry = Use by
page-ownDensity = Density, if you measured it
page-ownUsual = Usual percent, by your experience
page-ownNote = Your notes
page-table = Tables of your own materials
page-tableHelp = A CSV file with a column “name” and, if you like, inci, class, phase, density, parts and note. It is checked line by line and taken in whole or not at all.
page-readTable = Read a table
page-takeIn = Take them in
page-writeTable = Save my materials as a table
page-tableName = stillroom-materials.csv
page-sources = All sources
page-sourcesHelp = Every value of the catalogue rests on one of these. A value “from memory” was recalled from the source named and is still to be checked.
page-filterClass = Kind
page-picker--search = Name, INCI, use or CAS number
page-picker--nothing = Nothing found. Check the spelling, or describe it as a material of your own.
page-picker--describe = Describe “{ $name }” as a material of my own
page-classes--water = water
page-classes--humectant = humectant
page-classes--solvent = solvent
page-classes--thickener = thickener
page-classes--oil = oil
page-classes--butter = butter
page-classes--emollient = emollient
page-classes--wax = wax
page-classes--fatty-alcohol = fatty alcohol
page-classes--fatty-acid = fatty acid
page-classes--emulsifier = emulsifier
page-classes--surfactant = surfactant
page-classes--active = active
page-classes--extract = extract
page-classes--protein = protein
page-classes--preservative = preservative
page-classes--chelator = chelator
page-classes--antioxidant = antioxidant
page-classes--ph-adjuster = pH adjuster
page-classes--salt = salt
page-classes--essential-oil = essential oil
page-classes--fragrance = fragrance
page-classes--colourant = colourant
page-classes--mineral = mineral
page-classes--exfoliant = exfoliant
page-classes--other = other
page-held = What I have
page-noHeld = Nothing is noted yet. Open a material and write down how much there is, its lot and its date.
page-holdingMore = Price, density and notes of my own
page-all = All materials
