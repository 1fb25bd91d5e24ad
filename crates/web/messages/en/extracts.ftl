# Extracts: a glycerite or solution that is planned, made, verified and used.

## What a field takes.

takes-day = a day of the calendar, such as 2026-03-01
takes-temperature = a temperature such as 20 °C or 68 °F
takes-volume = a volume such as 250 mL
takes-activity = a water activity between 0 and 1 such as { $number }
takes-liquid-per-plant = grams of liquid per gram of plant, such as { $number }
takes-refractometer = what the refractometer shows, such as 50 or { $number }
takes-hydrometer = what the hydrometer shows, such as { $number }
takes-scale-step = the smallest step of the scale, such as { $number }
takes-ph = a pH from 0 to 14 such as { $number }, or nothing
takes-mass = a mass such as { $number }, { $number } g or 2 oz
takes-mass-or-all = a mass such as { $number } g, or nothing for all of it
takes-percent = a percent such as { $number }
not-a-day = “{ $text }” is not a day. Type a day of the calendar, such as 2026-03-01.

## Acts, for undo.

act-new = new extract
act-delete = extract deleted
act-example = example put back
act-step = change of an extract
act-solve = amounts of an extract
act-blend = blend
act-shelve = extract on the shelf
act-use = extract in a formula
act-other = extract

## Days.

## Why an extract comes to nothing yet.

no-plant-water = How much water is in the plant is not known yet. Choose a plant, type its percent of water, or weigh a sample, dry it until it loses no more, and weigh it again.
nothing-planned = Nothing is in the jar yet. Say how much plant and how much glycerin.
no-material = Choose the material first.
nothing-to-mix = There is nothing to work with: a mass is still at 0.
numbers-too-large = The numbers are too large to be worked with.
not-a-share = The { $share } is { $value } %; it lies between { $minimum } and { $maximum } %.
nothing-left = Of the { $substance } there are { $available } g, and { $taken } g would go: nothing is left to run off.
out-of-reach =
    { $reason ->
        [plant-water] { $target } cannot be reached: the plant's own water dilutes it further than that. Use more liquid per gram of plant, or dry the plant first. The nearest possible is { $nearest }.
        [nothing-stronger] { $target } cannot be reached: nothing here is strong enough. The nearest possible is { $nearest }.
        [nothing-weaker] { $target } cannot be reached: nothing here is weak enough. The nearest possible is { $nearest }.
       *[not-enough] { $target } cannot be reached: there is not enough of it. The nearest possible is { $nearest }.
    }
activity-out-of-reach =
    { $reason ->
        [plant-water] A water activity of { $target } cannot be reached: the plant's own water dilutes it further than that. Use more liquid per gram of plant, or dry the plant first. The nearest possible is { $nearest }.
        [nothing-stronger] A water activity of { $target } cannot be reached: nothing here is strong enough. The nearest possible is { $nearest }.
        [nothing-weaker] A water activity of { $target } cannot be reached: nothing here is weak enough. The nearest possible is { $nearest }.
       *[not-enough] A water activity of { $target } cannot be reached: there is not enough of it. The nearest possible is { $nearest }.
    }
gained-mass = It weighs more now ({ $now } g) than before ({ $before } g). Water only leaves; weigh again, and take the jar's own mass off.
read-as-water = This is the reading of water, and the plan has { $planned } % glycerin. Zero the instrument with water, dry the prism, and read a fresh drop.
reading-outside = No such liquid shows { $reading }: this one could show { $minimum } to { $maximum }. Check the scale of the instrument and the temperature.
unusable-readings = Type what the refractometer or the hydrometer shows.
physics-out-of-range = No answer: what was published holds for a { $quantity } from { $minimum } to { $maximum }, and here it is { $value }.
physics-no-data = No answer: no trustworthy figures are published for the { $quantity } of a liquid with { $substance }.
too-many-steps = An extract takes at most { $most } steps. Take one out first, or begin another.

## Quantities, shares and substances in such a sentence. The word comes along, with a key.

quantity =
    { $key ->
       *[any] { $word }
    }
substance =
    { $key ->
       *[any] { $word }
    }
unit-percent-by-volume = { $number } % v/v

## Plants, as the catalogue knows them.

plant-choice = { $plant }, { $part }, { $state }
plant-choice-by-limit = { $plant }, { $part }, { $state } (most moisture allowed)
plant-water = { $percent } % of it is water ({ $source }).
plant-water-at-most = { $percent } % of it is water (at most; { $source }).
plant-water-in-range = { $percent } % of it is water ({ $range } in the sources; { $source }).
plant-water-weighed = By your weighing { $percent } % of it is water.

## What a liquid is made of.

part-glycerin = Glycerin
part-water = Water
part-propylene-glycol = Propylene glycol
part-propanediol = Propanediol
part-ethanol = Alcohol
part-plant-solids = Plant solids, about
range = { $low } to { $high }
water-arithmetic = Water: { $plant } from the plant + { $glycerin } with glycerin and solvent + { $added } added − { $evaporated } evaporated.
pressing = Pressed off: { $pressed }; { $held } of the same liquid stay in the marc.
glycerin-arithmetic = Glycerin: { $mass } × { $purity } % = { $pure }
solids-arithmetic = Estimated: 20 to 70 % of the plant's dry matter dissolves, 40 % is counted (common practice). Nobody knows it for a given lot, so it is a range.

## What to expect of it: a figure, what it rests on, and where that was published.

figure-activity = Water activity at 25 °C
figure-activity-how = Glycerin, each other solvent and the plant solids as if alone in all the water, multiplied. The upper end counts no effect of plant solids at all, and what keeps is judged by it.
figure-activity-source = Scott WJ, Advances in Food Research 7:83 (1957) and later measurements; Ross KD, Food Technology 29:26 (1975)
figure-volume = Volume
figure-volume-how = Mass divided by density.
figure-brix = Refractometer
figure-brix-how = The index on the Brix scale, which is made for sugar: 65 % glycerin shows about 50.
figure-brix-source = ICUMSA SPS-3 as printed in OIV-MA-AS2-02
figure-brix-corrected = Refractometer that corrects temperature
figure-brix-corrected-how = The same with the correction for sugar that such an instrument adds.
figure-brix-corrected-source = International Temperature Correction Table 1936
figure-index = Refractive index
figure-index-how = The index of glycerin in water, and of sugar for the plant solids, added by volume.
figure-index-source = Hoyt LF, Oil & Soap 10:43 (1933); known to 0.0005
figure-gravity = Hydrometer
figure-gravity-how = What a hydrometer made for 20 °C shows: density over that of water, with the glass at this temperature.
figure-gravity-source = Water: Tanaka M et al., Metrologia 38:301 (2001)
figure-density = Density
figure-density-how = Density of glycerin and water with their contraction on mixing; dissolved plant solids are added as sugar.
figure-density-source = Volk A and Kähler CJ, Experiments in Fluids 59:75 (2018); known to 0.1 %
figure-viscosity = Viscosity
figure-viscosity-how = Of the glycerin and water alone; plant solids make it thicker.
figure-viscosity-source = Cheng N-S, Industrial & Engineering Chemistry Research 47:3285 (2008); within 5 %
figure-freezing = Begins to freeze at
figure-freezing-how = Of the glycerin and water alone; plant solids lower it a little.
figure-freezing-source = CRC Handbook; Lange's Handbook; Lane LB, Industrial & Engineering Chemistry 17:924 (1925)

## What was done to it after pressing.

step-glycerin = { $mass } of glycerin { $purity } % poured in
step-water = { $mass } of water poured in
step-weighed = weighed again after evaporation: { $mass }
step-measured = measured: { $percent } % glycerin

## Names and the list of extracts.

new-glycerite = New glycerite
new-solution = New stock solution
new-alcohol = Alcohol, diluted
name-of-blend = { $name }, blended
about-glycerite-unknown = Not worked out yet
about-glycerite = { $percent } % glycerin
about-glycerite-made = { $percent } % glycerin · { $day }
about-solution-unknown = Stock solution
about-solution = { $percent } % { $substance }
about-alcohol = Alcohol { $percent } % by volume
deleted = “{ $name }” is deleted. A material made from it stays on the shelf.

## Working backwards, adjusting, evaporating.

solved = { $plant } plant, { $glycerin } glycerin, { $water } added water
solved-with-solvent = { $plant } plant, { $glycerin } glycerin, { $solvent } other solvent, { $water } added water
solved-gives = Gives { $mass } of liquid with { $percent } % glycerin.
use-amounts = Use these amounts
pour-in-water = Pour in { $mass } of water: then it is { $whole } with { $percent } % glycerin.
pour-in-glycerin = Pour in { $mass } of glycerin { $purity } %: then it is { $whole } with { $percent } % glycerin.
poured-in = I poured it in
already = It has { $percent } % already.
evaporated = { $lost } of water are gone; what is left has { $percent } % glycerin. Pouring { $lost } of water back restores it.
note-evaporation = Reckon with it from now on

## Readings of instruments.

verified = { $percent } % glycerin, between { $low } and { $high } %.
agrees-with-plan = The calculated { $percent } % lies within that.
differs-from-plan = The reading disagrees with the plan ({ $percent } %). Stir and measure again, then trust the reading.
solids-counted = Dissolved plant sugars raise both instruments: counted here are { $low } to { $high } % of them. A refractometer and a hydrometer together narrow the range.
solids-found = Both readings together leave { $low } to { $high } % of plant solids.
solids-disagree = Both readings together ask for { $low } to { $high } % of plant solids, which is not what was supposed. One of them may be wrong; the wider range is given.
use-measured = Use the measured strength

## Blending.

blend-amount = { $mass } of { $name }
blend-gives = Together { $mass } with { $percent } % glycerin.
make-blend = Note the blend as a new extract

## On the shelf of materials, and in a formula.

shelf-part = { $name } { $percent } %
shelve = Put it on the shelf of materials
shelve-again = Update the material
shelved = “{ $name }” is on the shelf of materials.
name-on-shelf = { $name }, lot { $lot }
made-on = Made on { $day }.
plant-solids = Plant solids
plant-solids-of = Plant solids of { $plant }
not-on-shelf = Put it on the shelf of materials first; then a formula can use it.
no-formula = No formula is open. Open one on the shelf first.
add-to = Add { $percent } % to “{ $formula }”
shelve-and-add = Put it among the materials and add { $percent } % to “{ $formula }”
added-to = { $name } is in “{ $formula }”.
formula-does-not-total = “{ $name }” would not make 100 % with it. Give it a q.s. line first.
compared = “{ $formula }” with { $percent } % of this, and with as much glycerin and water instead.

## Whether it keeps: the verdict, and the steps of the scale.

verdict-nothing-multiplies = Dry enough that nothing known multiplies in it. Cells and spores may survive in it all the same.
verdict-osmophilic-yeasts = Only yeasts and moulds that love sugar and dryness multiply in it.
verdict-xerophilic-moulds = Some moulds and yeasts multiply in it; no bacterium known does.
verdict-toxin-forming-moulds = Moulds that form toxins can multiply in it. It does not keep by its glycerin alone.
verdict-most-moulds = Most moulds multiply in it, and Staphylococcus may. It does not keep by its glycerin.
verdict-many-yeasts = Moulds, many yeasts and Staphylococcus multiply in it. It does not keep.
verdict-many-bacteria = Many bacteria multiply in it. It spoils within days.
verdict-nearly-everything = Nearly everything multiplies in it. It spoils within days.
keep-nothing-multiplies = nothing known
keep-osmophilic-yeasts = yeasts that love sugar
keep-xerophilic-moulds = moulds that love dryness
keep-toxin-forming-moulds = toxin-forming moulds
keep-most-moulds = most moulds
keep-many-yeasts = many yeasts
keep-many-bacteria = many bacteria
keep-nearly-everything = nearly everything
scale-mark = { $activity } { $what }
scale-here = ≤ { $activity }
scale-description =
    { $criterion ->
        [met] Scale from water at the foot to pure glycerin at the top. This liquid stands where { $percent } % glycerin would: its water activity is up to { $activity }, at which there multiply: { $what }. It meets the criterion of ISO 29621, a water activity of at most 0.75.
       *[missed] Scale from water at the foot to pure glycerin at the top. This liquid stands where { $percent } % glycerin would: its water activity is up to { $activity }, at which there multiply: { $what }. It does not meet the criterion of ISO 29621, a water activity of at most 0.75.
    }

## Whether it keeps: low risk, what it needs, until when.

not-low-risk = ISO 29621:2017 does not count it as of low microbiological risk: its water activity is up to { $activity }, above 0.75.
# The grounds are some of those below.
low-risk = ISO 29621:2017 counts it as of low microbiological risk, because { $grounds }. That replaces neither clean work nor a test.
ground-water-activity = its water activity is 0.75 or less
ground-alcohol = it holds more than 20 % alcohol
ground-acid = its pH is 3.0 or less
ground-alkaline = its pH is 10.0 or more
needs-nothing = As it stands nothing asks for a preservative. Diluted in a product it needs what the product needs.
needs-few-and-slow = Low risk, but not none: a few yeasts and moulds grow in it slowly. Work clean and use it within months.
needs-against-yeasts-and-moulds = It needs a preservative against yeasts and moulds, such as potassium sorbate below pH 5.5, or more glycerin.
needs-against-all = It needs a preservative against bacteria, yeasts and moulds within its pH and dose, or more glycerin. Without either: a few days, refrigerated.
preserved-against-yeasts-and-moulds = You say it is preserved: against yeasts and moulds, in its dose and pH, that is what it needs.
preserved-against-all = You say it is preserved: it has to work against bacteria, yeasts and moulds, in its dose and pH. Only a challenge test shows whether it does.
use-by-day =
    { $place ->
        [refrigerated] Use by { $day }, kept refrigerated.
       *[cool] Use by { $day }, kept cool and dark.
    }
use-within-days =
    { $place ->
        [refrigerated] Use within { $days } days of making it, kept refrigerated.
       *[cool] Use within { $days } days of making it, kept cool and dark.
    }
use-by-basis = The use-by is common practice on its short side, not a test. Throw it away at the first sign of gas, haze, slime, mould or an odd smell.
ph-missing = Its pH is not measured: whether a preservative works in it cannot be said.
not-measured = Calculated, not measured. Read a refractometer or a hydrometer before you rely on it.
minima-basis = Most minima were found in food with salt or sugar; in glycerin they can lie lower or higher. Condensation on lid and surface is water: stir, and keep the lid dry.

## Organisms: their least water activity, and where it was published. Names and sources come along, with a key.

organism-published =
    { $kind ->
        [bacterium] bacterium · from { $minimum } · { $source }
        [yeast] yeast · from { $minimum } · { $source }
       *[mould] mould · from { $minimum } · { $source }
    }
organism-from-memory =
    { $kind ->
        [bacterium] bacterium · from { $minimum } · { $source } (from memory, to be checked)
        [yeast] yeast · from { $minimum } · { $source } (from memory, to be checked)
       *[mould] mould · from { $minimum } · { $source } (from memory, to be checked)
    }
organism-name =
    { $key ->
       *[any] { $word }
    }
organism-source =
    { $key ->
       *[any] { $word }
    }

## Stock solutions and alcohol.

weigh-out = { $mass } { $name }
portion = { $portion } of it bring { $wanted } % into a batch of { $batch }.
no-preservative = A solution in water spoils within days. Say which preservative goes in and how much, or make it fresh.
alcohol-amount = { $volume } ({ $mass }) of alcohol { $percent } % by volume
water-amount = { $volume } ({ $mass }) of water
alcohol-makes = They make { $volume } at 20 °C: { $contraction } less than both together, because alcohol and water contract. Weigh rather than measure.
alcohol-caution = Strong alcohol and its vapour burn: no flame, fresh air, closed vessel. Densities: OIML R 22 (1975).

# Fixed texts of the page.
page-title = Extracts
page-intro = Plan a glycerite, verify what you made, see whether it keeps, and use it in a formula.
page-newGlycerite = New glycerite
page-newSolution = New stock solution
page-newAlcohol = Dilute alcohol
page-example = Put the invented example here
page-empty = No extract yet. Begin a glycerite, a stock solution or an alcohol dilution.
page-remove = Delete
page-name = Name
page-step = Step
page-stepNames--plan = Plan
page-stepNames--keeping = Keeping
page-stepNames--measure = Measure and use
page-plan = Plan
page-plant = Plant
page-ownPlant = another plant
page-plantName = Which plant
page-waterFrom = Water of the plant
page-waterFroms--catalogue = from the catalogue
page-waterFroms--percent = as a percent
page-waterFroms--weighed = weighed, dried, weighed
page-plantWater = Water in it
page-sampleFresh = Sample, fresh
page-sampleDried = Sample, fully dried
page-plantMass = Plant
page-glycerin = Glycerin
page-purity = Purity of the glycerin
page-addedWater = Added water
page-solvent = Other solvent
page-solvents--none = none
page-solvents--propanediol = propanediol
page-solvents--propylene-glycol = propylene glycol
page-solvents--ethanol = alcohol
page-solventMass = How much
page-solventPurity = Purity by mass
page-press = Pressed
page-presses--hand = by hand
page-presses--press = with a press
page-presses--yield = own yield
page-pressYield = Liquid that runs off
page-evaporation = Evaporates
page-temperature = Read and poured at
page-blended = A blend: there is no plan to change.
page-expected = What to expect
page-figuresHelp = Open a line for its arithmetic and source.
page-keeps = Will it keep?
page-ph = Measured pH
page-preserved = Preservative in it
page-preserveds--no = no
page-preserveds--yes = yes, in its dose
page-multiply = Can multiply in it: { $count }
page-heldBack = Held back: { $count }
page-water = water
page-pure = pure glycerin
page-criterion = criterion of ISO 29621
page-use = Label and use
page-madeOn = Made on
page-lot = Lot
page-note = Note
page-usePercent = Percent of the formula
page-constituent = Constituent
page-with = with it
page-without = without
page-verify = Verify by a reading
page-optical = Refractometer
page-opticals--brix = Brix
page-opticals--brix-corrected = Brix, corrects temperature
page-opticals--index = refractive index
page-opticalValue = It shows
page-opticalStep = Its step
page-gravityValue = Hydrometer shows
page-gravityStep = Its step
page-calibrated = Made for
page-readingTemperature = Liquid at
page-adjust = Adjust and blend
page-adjustTarget = Glycerin wanted
page-steps = Done after pressing
page-takeBack = Leave out: { $step }
page-massNow = Weighs now, after standing open
page-blendWith = Blend with
page-addBatch = Add { $name }
page-addMaterial = Add a material
page-batchMass = Grams of { $name }
page-leaveOut = Leave out { $name }
page-solve = Work backwards
page-wantedBy = Wanted
page-wantedBys--glycerin = glycerin
page-wantedBys--activity = water activity
page-wantedGlycerin = Glycerin in the liquid
page-wantedActivity = Water activity at most
page-wantedSize = From
page-wantedSizes--plant = the plant
page-wantedSizes--glycerin = the glycerin
page-wantedSizes--jar = a jar
page-wantedSizes--finished = a volume
page-wantedSizeHelp--plant = All of the plant above; glycerin and water are worked out.
page-wantedSizeHelp--glycerin = All of the plant and glycerin above; water is worked out.
page-wantedSizeHelp--jar = Plant and liquid fill a jar.
page-wantedSizeHelp--finished = So much pressed liquid.
page-menstruumPerPlant = Liquid per gram of plant
page-jarVolume = Jar to its brim
page-headspace = Left empty
page-finishedVolume = Pressed liquid
page-solution = Stock solution
page-choose = Choose
page-chosen = { $label }: { $name }
page-substance = Substance
page-solventMaterial = Solvent
page-preservativeMaterial = Preservative
page-strength = Strength
page-substancePurity = Purity of the substance
page-preservative = Preservative in the solution
page-total = Make
page-wantedPercent = Wanted in the batch
page-batch = Batch
page-alcohol = Alcohol by volume
page-strong = Stronger
page-weak = Weaker, 0 for water
page-target = Wanted
page-alcoholVolume = Volume
page-alcoholOf = That volume is of
page-alcoholOfs--mixture = the mixture
page-alcoholOfs--strong = the stronger
page-alcoholOfs--weak = the weaker
page-byHydrometer = By a hydrometer, too
