# The post: the page that a maker publishes about a formula.

act-name = what the post says

## The parts.

title-notes = About it
title-formula = Formula
title-sizes = For three sizes of batch
title-method = Method
title-cautions = Cautions
title-why = Why each material is in it
title-instead = What can be taken instead
title-keeping = How long it keeps
title-findings = What the checks say
title-ingredients = Ingredients
title-link = The formula at your own bench
title-code = The link as a code
title-embed = Put it on your own page
about-notes = Your notes on the formula.
about-why = With your notes on the lines.
about-instead-waiting = Your own notes so far; what is worked out is still being fetched.
about-cautions = Always in it.
about-code = In HTML and in print; Markdown holds no drawing.
about-embed = The lines to copy, with the link in them.

# What an item of a list is about, before it.
item-about = { $about }:

## The formula and its sizes.

size-small = Small batch
size-usual = Batch
size-large = Large batch
formula-for = For { $batch }
sizes-about = Masses in { $unit }
sizes-larger = Percent stay the same in a larger batch; times for heating, blending and cooling do not.
mass-of = { $name } { $mass }

## The method.

step-prepare = Clear and clean the bench, clean your hands and tools, and lay everything out.
step-weigh = { $phase }: weigh { $lines }.
step-heat-to = { $phase }: heat to { $degrees }.
step-heat = { $phase }: heat until all of it is clear and liquid.
step-replace = { $phase }: weigh it again and put back the water that evaporated.
step-combine = Bring together: { $phases }.
step-blend = Blend; stop halfway to scrape the walls.
step-stir = Stir until it is even.
step-cool-under = Keep stirring until it is below { $degrees }.
step-cool = Keep stirring until it is as warm as the hand.
step-top-up = Weigh the batch and put back the water that evaporated.
step-add-under = { $phase }: stir a little of the batch into it, then stir it all into the batch below { $degrees }.
step-add-tempered = { $phase }: stir a little of the batch into it, then stir it all into the batch.
step-add = { $phase }: stir into the batch.
step-ph = Measure the pH and write it down.
step-ph-to = Measure the pH and set it to { $ph }.
step-fill = Fill clean containers and label them with the day.
degrees-to = { $phase }: to { $degrees }
degrees-under = { $phase }: under { $degrees }
tool-scale = Scale that shows 0.1 g or less
tool-beakers = Heat-proof beakers
tool-bath = Water bath
tool-thermometer = Thermometer
tool-blender = Hand blender
tool-stirrer = Stirrer or whisk
tool-ph = pH meter or test strips
tool-guards = Goggles and gloves

## Why, and what instead.

class-that-brings = { $class }; { $brings }
why-source = Functions as the inventory of cosmetic ingredients of the European Commission (CosIng) lists them: what a material may be used for, not a promise of what it does.
instead-author = Its author: { $note }
instead-way = { $name }: { $takes }
instead-ways = { $ways }.
between = { "; " }
instead-source = Worked out for this formula, in percent of the whole; the other lines stay as written. Another version is no longer tried as this one is.

## How long it keeps.

keeping-whole = Unopened
keeping-open = After opening
keeping-months = { $months }. { $how }
keeping-water = Water and what preserves it
water-none = It holds no water. Water that gets in later, from wet fingers or a shower, is not preserved.
water-preserved = { $water } water; preservatives: { $names }.
water-unpreserved = { $water } water and no preservative.
keeping-oils = Antioxidants for the oils
keeping-practice = Common practice, and never longer than the material that has to be used first. Throw it away when its smell, colour or feel changes.

## What was found.

findings-none = The checks found nothing. They know what stands in their tables and no more.
tone =
    { $tone ->
        [stop] Stop
        [caution] Caution
       *[note] Note
    }
tone-aside =
    { $tone ->
        [stop] Stop, known to the author
        [caution] Caution, known to the author
       *[note] Note, known to the author
    }

## Beyond the kitchen.

title-larger = What changes in a larger batch
about-larger = Estimates for the large batch.
larger-time = { $estimate } min ({ $low } to { $high })
larger-heating-head = Heating
larger-heating = { $small } for { $batch }, { $time } for { $large }. What is heated, from { $cold } to { $hot } with 1 kW, of which 40 to 80 % reaches it: t = m c ΔT / (P η).
larger-cooling-head = Cooling
larger-cooling = { $small } for { $batch }, { $time } for { $large }. Stirred, from { $hot } to { $warm } in still air of { $cold }, at 5 to 25 W/(m² K): t = m c / (h A) · ln(ΔT₁ / ΔT₂). There is { $times } times as much volume for its surface. Evaporating water and a cold bath make it faster.
larger-blending-head = Blending
larger-blending = Vessel and blade are { $times } times as wide. For the same speed of the tip, and so the same shear: { $tip } of the turns a minute, and { $times } times as long for as much energy in each gram. For the same power per volume, and so the same drops: { $power } of the turns, and as long as before. N D or N³ D² stay as they were; for thick creams a rough guide.
larger-fill-head = Least fill
larger-fill = In a vessel { $width } wide a blade of { $head } is covered from about { $mass } ({ $low } to { $high }): m = ρ π/4 D² k d, k 1 to 2.
larger-no-density = Not estimated: the density of the product is not known. The same holds for heating and cooling.
larger-source = Estimates for upright vessels of one shape. Equations: { $heat }; { $mixing }. What reaches the batch, how air takes up heat and how deep a blade is covered are common practice. Make a batch between first, and measure.

## The link and the picture.

open-at-bench = Open this formula with your own batch and units
code-is = QR code that opens { $name }
picture-description = { $name }: the jar with its layers, and every line in percent and by mass.
picture-caution = Patch test first; keep away from eyes and children. This is no safety assessment; local rules decide.

# Fixed texts of the page.

page-title = The post
page-intro = The page you publish about this formula. Prices, lots, suppliers, stock, batches and journals never get into it. What you wrote into names, notes and the method is published as it stands.
page-back = Back to sharing
page-parts = What is in it
page-sizes = Batches
page-acts = Take it along
page-copyMarkdown = Copy Markdown
page-copyHtml = Copy HTML
page-savePage = Save as .html
page-print = Print
page-copied = Copied.
page-notCopied = Your browser does not let it be copied. Save it as .html instead.
page-preview = How it reads
page-picture = The formula as a picture
page-withLink = With the link as a code
page-saveSvg = Save as .svg
page-savePng = Save as .png
page-notPainted = Your browser could not paint the picture. Save it as .svg instead.
page-notFetched = What can be taken instead could not be fetched: check the network. All else is here.
