# What a batch costs, what has to be bought for it, and the containers it fills.

act-name = costs
act-prices = prices from a table
none-open = No formula is open.
unsound = The amounts do not make 100 % yet. Mend the formula first.
money = { $amount } { $currency }

## What is reckoned.

about-planned =
    { $units ->
        [0] Planned: { $batch }.
        [one] Planned: one unit of { $volume }, { $batch } in all.
       *[other] Planned: { $units } units of { $volume }, { $batch } in all.
    }
about-planned-kinds =
    { $units ->
        [one] Planned: one unit, { $batch } in all.
       *[other] Planned: { $units } units of several kinds, { $batch } in all.
    }
about-made =
    { $units ->
        [0] Made last: lot { $lot }, { $batch } weighed in.
        [one] Made last: lot { $lot }, { $batch } weighed in, one unit.
       *[other] Made last: lot { $lot }, { $batch } weighed in, { $units } units.
    }
headline-unit = for one unit
headline-unit-least = at least, for one unit
headline-hundred-least = at least, for 100 g
headline-hundred = for 100 g
headline-batch = for the batch
headline-unit-of = for one unit: { $kind }
headline-unit-of-least = at least, for one unit: { $kind }
figure-unit-of = One unit: { $kind }
how-unit-of = Content { $content }, by its share of the mass filled; packaging { $packaging }.
how-unit-sold = With your margin { $amount }.
kinds-without-price = Containers without a price, which every sum lacks: { $kinds }. A container that cost nothing is 0.
figure-unit = One unit
figure-batch = The batch
figure-hundred = 100 g
figure-sold = A unit, with your margin
at-least = at least
how-batch = Materials { $materials }, packaging { $packaging }, labour { $labour }.
how-unit = { $batch } divided by { $units }.
how-hundred = The batch divided by what is weighed in, for 100 g.
how-sold = One unit and { $margin } of it on top. The margin is on cost (common practice); taxes and fees are not in it.
line-packaging = Packaging
line-labour = Labour
units =
    { $units ->
        [one] one unit
       *[other] { $units } units
    }
price-free = taken as free
price-unknown = no price
price-at-least = at least { $amount }
unpriced = Without a price or a pack size, and missing from every sum: { $names }. Open a material below and fill both in.
other-currency = Priced in another currency than { $currency }, and missing from every sum: { $names }. No rates are known here.
prices-of-day = Materials cost what was noted by { $day }, when this batch was made. What has to be bought below costs what it costs today.
prices-of-day-but = Materials cost what was noted by { $day }, when this batch was made; with no price noted by then, at today’s: { $names }. What has to be bought below costs what it costs today.
no-container-price = The container has no price yet: every sum lacks it. A container that cost nothing is 0.
no-labour = No labour is counted.
no-hourly = The hours are known, but not what an hour costs: no labour is counted.
what-is-not-in-it = A line costs its part of the packs, with shipping and what is wasted. Rent, power, tools, tests and taxes are not in it.
empty-pack = A pack that holds nothing cannot be counted. Say what it holds.
too-large = A number is too large to calculate with.

## Fields.

field-basis = Reckon with
basis-made = the batch made last, lot { $lot }
basis-plan = the batch that is planned
field-units = Units
field-volume = One holds
field-name = Called
field-first = Of this kind
first-number = as many as are planned: { $count }
first-rest = as many as there is enough for
field-kind-count = How many; empty: the rest
takes-kind-count = a whole number from 1, such as 4; empty for the rest
field-walls = Container made of
walls-unsaid = not said
walls-glass = glass
walls-polyethylene = polyethylene (PE)
walls-polypropylene = polypropylene (PP)
walls-polyester = polyester (PET)
walls-polystyrene = polystyrene (PS, SAN)
walls-bare-aluminium = aluminium, bare
walls-lacquered-metal = metal, lacquered
field-price = Price of a container
field-further = Label, box and the like, a unit
field-headspace = Left empty
field-stays = Stays in the dispenser
field-loss = Lost on walls and tools
field-density = Measured density
field-wastage = Wasted of what is weighed
field-minutes = Labour for the batch
unit-minutes = min
field-hour = An hour costs
field-margin = Margin on cost
field-currency = Currency
field-batches = Batches
takes-minutes = minutes from 0, such as 90
takes-margin = a percent from 0 to 10000, such as 60
takes-batches = a whole number from 1 to 1000

## Containers.

figure-out = Comes out
came-planned = { $batch }, less { $loss } on walls and tools.
came-made = What lot { $lot } filled, or weighed where no filling was noted.
no-density = No density is known, so containers cannot be counted. Measure one and fill it in.
figure-full = Full containers
full-containers =
    { $count ->
        [0] none of { $volume }
        [one] one of { $volume }
       *[other] { $count } of { $volume }
    }
filled-measured = At the measured { $density }.
filled-reckoned = At { $density }, calculated from what is in it; it may lie between { $low } and { $high }, with air stirred in (common practice). Weigh one.
figure-left = Left over
one-takes = One takes { $mass }.
figure-gives = Can be got out of one
stays-inside = { $share } of it stays in the dispenser.
size-filled = { $count }, { $left } left
from-to = { $fewest } to { $most }
kind-of-volume = Container of { $volume }
left-of-kinds = Less than the smallest that takes the rest, or than those that are short.
one-takes-and-gives = One takes { $mass }; { $gives } can be got out of it.
kind-short =
    { $count ->
        [one] One is short: { $kind }. What comes out does not fill it.
       *[other] { $count } are short: { $kind }. What comes out does not fill them.
    }
no-kind-takes-rest = No kind takes the rest. Empty a number, and that kind does.
plan-kinds = Plan { $mass }, which fills them all
misfit-of = { $kind }: { $misfit }
misfit-scent = Essential oils and perfume soften polystyrene and its copolymers: it crazes, and takes the scent in. Take glass, PET or PP. { $source }.
misfit-acid = Below pH 4 the oxide on bare aluminium does not hold: it pits, and aluminium gets into the product. Take a lacquered one or glass. { $source }.
misfit-alkali = Above pH 8.5 the oxide on bare aluminium does not hold: it dissolves and gives off hydrogen. Take glass, PE or PP. { $source }.
misfit-polyester = Strong alkali takes polyester apart; bottles crack. Take PE, PP or glass. { $source }.
misfit-lacquer = A lacquer holds acid and alkali off only where it is whole and made for that. Ask for its test, and store a filled one. { $source }.
misfit-ph = The pH is not known, and this container asks for it. Measure it. { $source }.
misfit-none = Nothing known here speaks against it. That is no proof: fill one, store it warm and look (common practice).

## To buy.

needed-of-stock = { $needed } needed, { $stock } there
needed-no-stock = { $needed } needed, stock not noted
enough-there = enough there
packs-to-buy =
    { $packs ->
        [one] one pack of { $pack }; { $left } left then
       *[other] { $packs } packs of { $pack }; { $left } left then
    }
pack-unknown = price and pack not noted
nothing-to-buy = Nothing has to be bought.
to-buy-in-all =
    { $count ->
        [one] One material to buy: { $amount }, as far as prices are known.
       *[other] { $count } materials to buy: { $amount }, as far as prices are known.
    }
pieces =
    { $count ->
        [one] one piece
       *[other] { $count } pieces
    }
to-buy-with-containers =
    { $count ->
        [0] Containers to buy: { $amount }, as far as prices are known.
        [one] One material and the containers to buy: { $amount }, as far as prices are known.
       *[other] { $count } materials and the containers to buy: { $amount }, as far as prices are known.
    }
list-head =
    { $batches ->
        [one] To buy for one batch of { $name }
       *[other] To buy for { $batches } batches of { $name }
    }
list-entry = - { $name }: { $packs }
list-entry-unknown = - { $name }: { $mass }; price and pack not noted
list-entry-priced = - { $name }: { $packs } ({ $amount })
list-sum = Together, as far as prices are known: { $amount }

## Prices as a table.

prices-same = Nothing in this table differs from what is noted.
prices-read =
    { $count ->
        [one] One material would change:
       *[other] { $count } materials would change:
    }
prices-wrong =
    { $count ->
        [one] Nothing is taken in: one line is not understood.
       *[other] Nothing is taken in: { $count } things are not understood.
    }
prices-taken =
    { $count ->
        [one] One price is taken in.
       *[other] { $count } prices are taken in.
    }
nothing-noted = nothing noted
change = { $name }: { $changes }
change-price = price { $before } → { $after }
change-pack = pack { $before } → { $after }
change-shipping = shipping { $before } → { $after }
change-stock = stock { $before } → { $after }

# Fixed texts of the page.
page-title = Costs
page-intro = What a batch costs, what to buy for it and what it fills. It stays on this device: no link carries it.
page-toFormula = To the formula
page-lines = Where it goes
page-sums = Sums
page-batch = How much
page-containers = Containers of this batch
page-kinds = Further kinds of containers
page-kindsHelp = Kinds with a number are filled first, in their order; what is left goes into those without one.
page-addKind = Add a kind
page-removeKind = Remove
page-buyContainers = Containers to buy
page-sizes = In other sizes
page-work = Work and margin
page-workHelp = An hour’s cost and the currency are kept for every formula, the rest with this one.
page-buy = To buy
page-noted--price = Price of a pack
page-noted--currency = Currency
page-noted--pack = A pack holds
page-noted--shipping = Shipping of a pack
page-noted--stock = How much is there
page-copy = Copy the list
page-copied = Copied.
page-notCopied = The browser did not let it be copied: mark the text and copy it.
page-saveList = Save as CSV
page-listName = to-buy.csv
page-prices = Prices as a table
page-pricesHelp = Prices, packs and stock of your materials as CSV, for a spreadsheet. What is read is shown before anything changes.
page-savePrices = Save the prices
page-readPrices = Read prices
page-pricesName = prices.csv
page-takeIn = Take them in
page-print = Print
