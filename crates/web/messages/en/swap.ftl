# Making it with what one has: a line swapped, the formula rebuilt from a shelf, lines brought to a figure.

act-name = made with what you have
act-note = what to take instead
takes-figure = a number from 0 to 100, such as 8
none-open = No formula is open.
taken = Changed: { $what }
take = Put it into the formula

## Why there is no answer.

no-unbalanced = The amounts do not make 100 % yet, or something in it is not known. Mend the formula first.
no-nothing-at-hand = Nothing at hand makes this.
no-too-many = At most { $most } materials at once.
no-too-large = So many materials and substances at once are too many to work out. Mark fewer as at hand.
no-failed = No amounts could be worked out.
no-step-too-coarse = Amounts exist, but none in steps of 0.01 % that keep this: { $bounds }.
no-conflict = This cannot all be kept: { $bounds }.
least-relaxation = The smallest change that would do: { $way }.
or-else = Or: { $way }.
least-together = The smallest change that would do, all together: { $ways }.
nothing-gives-way = Nothing of it can give way.
gives-way = give way in { $bound }
gives-way-to = { $bound } { $to } instead of { $from }
bound-at-hand = what there is of { $material }
bound-needs = what is asked of { $material }
bound-law = the legal limit of { $subject } ({ $jurisdiction })
bound-advice = the advised limit of { $subject } ({ $jurisdiction })
bound-dissolves = what stays dissolved of { $substance }
bound-dose = the dose of { $substance }
bound-usual = the usual amount of { $substance }
bound-wanted = the wanted amount of { $substance }
bound-emulsifier = enough emulsifier for the oil
bound-balance = the HLB of the emulsifiers
bound-oil = the share of oil
bound-water = the share of water
bound-density = the density

## What changes.

goes = { $name }: taken out
comes = { $name } { $percent }
becomes = { $name } { $percent } instead of { $before }
and-more =
    { $count ->
        [one] 1 more change
       *[other] { $count } more changes
    }
stays = Nothing changes.
more-rest = more of the q.s. line
bar-before = Written
bar-after = Then
bar = { $which }: { $layers }
cost = Materials for { $batch }: { $before } as written, { $after } then ({ $currency }; water without a price not counted).
cost-unknown = What it costs is not known: no price of { $names }.
no-prices = No prices are known. Note price and pack on the cards of your materials.
unpriced = Without a price, so not increased: { $names }.
nothing-expires = Nothing on the shelf expires within a year. Note the dates on the cards of your materials.
missed = { $substance }: { $got } instead of { $wanted }
felt-oils-more = Oils { $after } instead of { $before }: richer, sinks in slower.
felt-oils-less = Oils { $after } instead of { $before }: lighter, sinks in faster.
felt-humectants-more = Humectants { $after } instead of { $before }: stickier.
felt-humectants-less = Humectants { $after } instead of { $before }: less sticky, holds less moisture.
felt-solids-more = Waxes and butters { $after } instead of { $before }: stiffer, more of a film.
felt-solids-less = Waxes and butters { $after } instead of { $before }: softer, thinner.
felt-thickeners-more = Thickeners { $after } instead of { $before }: thicker.
felt-thickeners-less = Thickeners { $after } instead of { $before }: thinner, may separate sooner.

## Ways to do without a line.

way-apart = What it is made of
reason-apart = Weighed singly, as its card says.
reason-together = Holds what these lines bring: { $lines }
reason-same-substance = Brings the same { $substance }: { $before } in what is written, { $after } in this
reason-same-acting = The same acid acts: { $acid }
reason-same-in-part = { $share } of what it brings is the same
reason-same-group = The trade uses both as { $group }
reason-same-class = Both are of one kind: { $class }
reason-balance = HLB { $before } as written, { $after } in this
reason-required-balance = Asks for HLB { $after } where { $before } is asked for now
reason-melting = Melts at { $after }; what is written at { $before }
reason-fatty-acids = { $alike } of the fatty acids are alike
reason-spectrum = Holds every kind of microbe that is held now
feels = Feels { $after } rather than { $before }
brings-also = Brings { $substance } as well
lacks = Lacks { $substance }
window = Works from pH { $low } to { $high }
dosed = Dosed by itself, not gram for gram: { $low } to { $high } of the product
needs-base = Thickens only once it is neutralised
keep-cool = Must not be heated: add it while cooling down
rancid-sooner = Turns rancid sooner
finds-also = Then also: { $what }
finds-no-more = Then no longer: { $what }
source = { $source } ({ $basis })
feel =
    { $feel ->
        [very-light] very light
        [light] light
        [medium] medium
        [rich] rich
        [heavy] heavy
        [waxy] waxy
       *[sticky] sticky
    }
group =
    { $group ->
        [fatty-alcohol] fatty alcohols
        [saturated-fatty-acid] solid fatty acids
        [liquid-fatty-acid] liquid fatty acids
        [hard-butter] hard butters
        [lauric-fat] lauric fats
        [hard-wax] hard waxes
        [soft-wax] soft waxes
        [mineral-wax] mineral waxes
        [kernel-oil] kernel oils
        [linoleic-oil] oils rich in linoleic acid
        [oleic-oil] oils rich in oleic acid
        [high-oleic-oil] high-oleic oils
        [rose-seed-oil] rose seed oils
        [linolenic-oil] oils rich in linolenic acid
        [gamma-linolenic-oil] oils with gamma-linolenic acid
        [liquid-wax] liquid waxes
        [light-ester] light esters
        [alkyl-ester] light alkyl esters
        [medium-ester] medium esters
        [branched-hydrocarbon] branched hydrocarbons
        [volatile-hydrocarbon] volatile hydrocarbons
        [volatile-silicone] volatile silicones
        [occlusive] occlusive greases
        [solubiliser] solubilisers
        [polysorbate] polysorbates
        [low-sorbitan] sorbitan esters of low HLB
        [low-co-emulsifier] co-emulsifiers of low HLB
        [lamellar-system] emulsifying systems with liquid crystals
        [emulsifying-wax] emulsifying waxes
        [conditioning-emulsifier] conditioning emulsifiers
        [anionic-emulsifier] anionic emulsifiers
        [polyacrylate] polyacrylates
        [clear-gum] clear gums
        [cellulose] celluloses
        [liquid-humectant] liquid humectants
        [glycol] glycols
        [spirit] spirits
        [urea-kin] urea and its kin
        [hyaluronate] hyaluronates
        [paraben] parabens
        [polyol-chelator] chelators without EDTA
        [edta] EDTA salts
        [vitamin-c] forms of vitamin C
        [silicate-clay] clays
        [starch] starches
        [acid] acids for the pH
        [strong-base] strong bases
        [organic-base] organic bases
        [glucoside-surfactant] glucoside surfactants
        [betaine-surfactant] betaine surfactants
       *[aloe] aloe
    }

## The shelf.

shelf-none-left = none left
shelf-past = past its date, { $day }
shelf-short = { $stock } of the { $needed } needed
shelf-stock = { $stock } there
shelf-some = in your stores
shelf-not-noted = not noted in your stores
stands-in = { $material } stands in for { $name }.
nothing-on-shelf = Nothing on the shelf does the job of { $name }. These would: { $names }.
nothing-stands-in = Nothing known does the job of { $name }.
field-count = At hand is
count-marked = everything but what is marked
count-stores = only what is noted in your stores
field-further = It may differ from the formula
further-hardly = hardly
further-somewhat = somewhat
further-freely = freely
field-figure = Bring to a figure
field-target = To
field-target-now = To (now { $now })
figure-oil = Oil, all of it
figure-water = Water, all sources
figure-balance = HLB of the emulsifiers
figure-density = Density

## A reader who lacks something.

readers-version = This is your version, not the author’s: without { $names }. What the author says of the result, its keeping and its feel is about their own.
reader-nothing = Nothing known does the job of { $name }. Leave the formula, or ask its author.
reader-by-author = As the author says
reader-by-author-takes = The amounts stay as written; you follow the note by hand.

## The author's table.

table-title = If you lack something
table-intro = Worked out for this formula; the other lines stay as written. Percents are of the whole. Emulsifiers and preservatives go by their own dose and pH, not gram for gram. Another version is no longer tested as this one was.
table-line = Instead of
table-instead = take
table-takes = then weigh
table-author = as the author says

# Fixed texts of the page.
page-title = Make it with what you have
page-intro = Swap a line, rebuild the formula from your shelf, or bring it to a figure. Nothing changes before you say so.
page-wanted = What is asked
page-uses--line = Swap a line
page-uses--shelf = From my shelf
page-uses--expiring = Use up what expires
page-uses--cheapest = Cheapest
page-uses--figure = Hit a figure
page-chooseLine = Which line
page-note = What readers can take instead
page-noteHelp = In your words. It goes along in a link, and a reader who lacks this sees it first.
page-ways--same = The same in another strength
page-ways--parts = Apart and together
page-ways--other = Does its job
page-noWays = Nothing known can take its place.
page-atHand = on your shelf
page-tryWay = Look at it
page-why = Why, and what changes
page-missing = Missing on the shelf
page-mayVary = May vary
page-compare = Before and after
page-material = Material
page-layer = Layer
page-before = written (%)
page-after = then (%)
page-weigh = to weigh
page-findings = Findings
page-goneFindings = No longer found
page-newFindings = Found then
page-noFindings = The findings stay as they are.
page-expect = What to expect on skin
page-practice = Common practice, not measured: make a small batch first, and test the skin again with it.
page-missed = What you would miss
page-toFormula = To the formula
page-cautions = A version is a new formula: an emulsion may break, a preservative may not do. Test it anew; for others a laboratory and a safety assessment decide.
