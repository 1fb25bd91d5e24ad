# The bench and the journal: batches that are weighed, their record, and what became of them.

## What a field takes.

takes-temperature = what the thermometer shows from −20 to 150 °C, such as 70 °C or 158 °F
takes-minutes = minutes, such as 3 or { $half }
takes-ph = a pH from 0 to 14 such as { $number }
takes-filling = a whole number of containers, and a mass such as { $half } g for each
takes-mass = what the scale shows, such as { $half }, { $half } g or 2 oz

## Acts, for undo.

act-new = new batch
act-delete = batch deleted
act-lot = batch number
act-finish = batch finished
act-take-back = taking back at the bench
act-journal = journal
act-step = step at the bench

## Why not.

unsound-formula = The amounts do not make 100 % yet. Fix the formula first; then it can be weighed.
no-batch = There is no batch to weigh yet. Say at the bench how large it is to be.
too-many-batches = { $most } batches are kept on this device, which is the most. Delete one that you no longer need.
too-many-deeds = This run has { $most } entries, and more do not fit. Finish it and begin another.
too-many-photos = A day takes { $most } photos. Take one out first, or write down another day.
too-many-days = A journal takes { $most } days.
less-than-before = The beaker already held { $before }; { $shown } would be less. Or was the scale set to zero for this line?
nothing-poured = Nothing went in. To leave the line out, choose that below.
heavier-than-before = { $hot } is more than the { $cold } before heating. Is it the same beaker, with nothing in it but this phase?
lighter-than-beaker = { $mass } is less than the empty beaker, { $empty }.
pour-no-such-line = This line has no share in the batch.
pour-no-rest = No line of this formula is q.s.
pour-is-the-rest = This is the q.s. line itself.
pour-rest-is-poured = The q.s. line is in the beaker already. If you put water back after heating, leave it out there.
pour-rest-too-small = The q.s. line has less than that to give.
pour-other-too-much = For that batch there would be too much { $other } in the beaker already.
pour-too-large = The batch would be too large to weigh.
colour-no-pixels = There is nothing to read there. Tap on the photo itself.
colour-white-overexposed = The white is overexposed: how white it is cannot be told. Take the photo again in less light.
colour-white-too-dark = The white is too dark. Tap on plain white paper beside the product, in the same light.
colour-lighter-than-white = The product is lighter than the white. Tap on the white paper, and then on the product.
cooling-too-few = Two readings some minutes apart are needed.
cooling-under-room = A reading is not above the temperature of the room.
cooling-does-not-fall = The readings do not fall yet.
cooling-never-reached = The room is as warm as that: the batch will not get there by itself.

## What was done.

batch-deleted = Batch { $lot } and its journal were deleted.
entry-removed = The observation was taken out.
finished =
    { $drawn ->
        [0] Finished. No stock was known of these materials, so none was drawn down.
        [1] Finished. One material was taken from your stock.
       *[other] Finished. { $drawn } materials were taken from your stock.
    }

## The list of batches.

offer-batch = Make { $mass } of { $name }
about-batch = { $lot } · { $mass }
about-running = { $lot } · { $mass } · step { $step } of { $steps }
about-finished = { $lot } · { $mass } · finished { $day }
expired =
    { $days ->
        [1] { $name } is past its date: it should have been used by { $day }, yesterday.
       *[other] { $name } is past its date: it should have been used by { $day }, { $days } days ago.
    }

## Steps of a run.

step-prepare = Ready the bench
step-beaker = Empty beaker: { $name }
step-heat = Heat: { $name }
step-replace = Weigh again, put water back: { $name }
step-combine = Combine the phases
step-blend = Blend
step-cool = Let it cool
step-temper = Temper: { $name }
step-add = Add: { $name }
step-top-up = Weigh the batch, last water
step-ph = Measure the pH
step-fill = Fill
step-finish = Look and sign

## Weighing a line.

place-in-phase = { $phase } · { $at } of { $of }
tolerance =
    { $scale ->
        [fine] ± { $step } on the fine scale
        [kitchen] ± { $step } on the kitchen scale
       *[any] ± { $step } on the scale
    }
running-total = In the beaker: { $before } now, { $after } afterwards
lot = Lot { $lot }
use-by = use by { $day }
lot-and-use-by = Lot { $lot }, use by { $day }
too-much = { $over } too much: { $poured } is in, { $target } was wanted.
too-little = { $poured } of { $target } is in.
cure-add = Add { $mass } more
cure-rescale = Bring everything to it: a batch of { $batch }
rescale-adds-nothing = Every percent stays as it was. Nothing in the beaker has to change.
rescale-adds = Every percent stays as it was. Add { $items } more.
cure-take-from-rest = Take it out of { $name } (q.s.)
rest-becomes = Of it, weigh { $mass } in all. The batch keeps its mass.
cure-accept = Leave it and write it down
percent-becomes = It becomes { $percent } % in place of { $planned } %. The record says so.
# An item of a list.
mass-of-material = { $mass } { $name }

## Heat and cold.

heat-of-line =
    { $basis ->
        [material] { $name } { $heat } kJ/(kg K), its own value
        [parts] { $name } { $heat } kJ/(kg K), from its parts
       *[class] { $name } { $heat } kJ/(kg K), what its kind usually has
    }
under-melting = The phases come together at { $together }, and { $name } melts at up to { $melts }: it may set in grains. Heat both phases a little further, or warm the water phase more.
melts-last = { $name } melts last, at up to { $melts }.
melting-unknown = No melting point is known of { $names }: look until all is clear.
most-sensitive = { $name } bears the least heat of what is added: at most { $bears }.
sensitivity-unknown = How much heat it bears is not known of { $names }.
# A time of day in a sentence.
time-of-day = { $hours }:{ $minutes }
reached-at = { $time } ({ $low } to { $high })

## The record: its head and its results.

record-formula = Formula
record-version = Version
record-version-not-kept = not kept yet when the run began
record-lot = Batch number
record-made-on = Made on
record-times = Begun, finished
record-from-until = { $from } – { $until }
record-method = Method
record-planned = Batch planned
result-weighed-in = Weighed in
result-water-back = Water put back
result-there = Batch at the end
result-ph = pH
result-filled = Filled
result-yield = Yield
result-drawn = Taken from stock

## The record: its log.

did-start = Bench ready, begun
did-put-first = { $phase } weighed first
did-beaker = { $phase }: empty beaker { $mass }
did-pour = { $name }: { $mass } in
did-leave-out = { $name } left out
did-accept = { $name }: kept as it is, as a deviation
did-rescale = All brought to what was poured of { $name }
did-take-from-rest = { $name }: the q.s. line gave way
did-weigh-cold = { $phase }: { $mass } with its beaker before heating
did-weigh-hot = { $phase }: { $mass } with its beaker after heating
did-add-water = { $mass } of water put back into the batch
did-add-water-to-phase = { $phase }: { $mass } of water put back
did-read-phase = { $phase }: { $degrees }
did-read-batch = Batch: { $degrees }
did-read-room = Room: { $degrees }
did-start-timer = { $step }: timer for { $minutes } min
did-stop-timer = { $step }: stopped
did-resume-timer = { $step }: went on
did-temper = { $phase }: { $mass } of the batch stirred in first
did-weigh-batch = Batch with beaker { $gross }, beaker { $empty }
did-measure-ph = pH { $ph }
did-fill = Filled { $count } × { $each }
did-say = { $label }: { $text }
did-strike-out = { $label }: struck out
did-close = { $step }: done
did-finish = Finished
did-read-line = How the scale is read: set to zero for each line
did-read-whole = How the scale is read: it shows all that is in the beaker

## The record: where it is not as planned.

deviation-mass = { $name }: { $poured } weighed, { $target } wanted ({ $percent } %).
deviation-left-out = { $name } was left out.
deviation-share = { $name }: { $from } → { $to } %
deviation-batch = The batch was brought from { $planned } to { $now }; every percent stayed as it was.
deviation-water = { $mass } of water were lost and not put back.
deviation-water-more = { $mass } more water is in it than the lines brought.
deviation-ph = pH { $ph }; the formula aims at { $wanted }.
deviation-yield = Yield { $percent } %: more than 5 % is missing.

## The record: dates.

common-practice = common practice
best-before = Best before
day-unknown = not known
limit-material = { $name } has to be used by { $day }, before any other material: no longer than that without a stability test.
limit-stated =
    { $months ->
        [one] One month by the stability test you state, which is earlier than any material.
       *[other] { $months } months by the stability test you state, which is earlier than any material.
    }
limit-unknown = No material in it states a last day, and no stability test is stated. Type the days beside the materials you have.
limit-unpreserved-water = Nothing preserves the water in it: a week, in the cold.
limit-preserved-water = Preserved, and no stability test is stated: a year at most.
limit-bound-water = Its water is bound, and no stability test is stated: six months at most.
limit-anhydrous = Without water, and no stability test is stated: two years at most.
limit-delicate-oil = Its oils turn rancid soon and nothing keeps them from it: six months at most.
days-unknown = No last day is known of { $names }.
after-opening = After opening
opening-months =
    { $months ->
        [one] 1 month
       *[other] { $months } months
    }
opening-months-range = { $fewest } to { $most } months
opening-how = Usual where no laboratory has tested: 6 to 12 months with water and a preservative, 12 without water.
opening-none = none
opening-none-how = It holds water and no preservative: days, in the refrigerator. There is no such period.
on-label = On the label
label-date-when-known = a date, once one is known
label-date = a date
label-open-jar = the open jar, with months
thirty-months =
    { $months ->
        [one] It keeps one month from making. Up to 30 months a best-before date stands on the label, above 30 the months after opening.
       *[other] It keeps { $months } months from making. Up to 30 months a best-before date stands on the label, above 30 the months after opening.
    }
thirty-months-unknown = Up to 30 months a best-before date stands on the label, above 30 the months after opening.
thirty-months-source = Regulation (EC) No 1223/2009, Article 19(1)(c), from memory; local rules decide

## The record: what the maker fills in, cautions, signatures.

field-weighed-by = Weighed by
field-checked-by = Checked by
field-line-clearance = Bench clear of other batches
field-cleaning = Cleaned and sanitised: who, when, with what
field-equipment = Equipment: pots, mixer, thermometer, pH meter
field-balance = Scale and when it was last checked
field-water = Water: source, purified, boiled
field-look = Look, colour, smell
field-viscosity = Viscosity, in your words or by an instrument
field-ph-method = How the pH was measured, what it was adjusted with
field-packaging = Lots of containers, closures and labels
field-net-content = Net content checked: units weighed
field-loss = Why more than 5 % is missing
field-retained = Where the retained sample is kept
field-durability = Months it keeps by your stability test, if there is one
field-released = Released, rejected or to be reworked
field-released-by = Released by, on
caution-patch-test = Patch test for 24 to 48 hours first; stop on redness, itching or swelling. Keep away from eyes and children.
caution-no-assessment = This record is no safety assessment. A product for others needs a challenge test by a laboratory and the assessment the law asks for; local rules decide.
caution-no-claims = No medical claims.
signature-made = Made by, date
signature-checked = Checked by, date
signature-released = Released by, date

## The journal.

day-of-batch = Day { $number } · { $day }
due-day = Day { $number }
due-seen = ✓ looked at
due-to-come = to come
due-today = due today
due-overdue =
    { $days ->
        [1] overdue by a day
       *[other] overdue by { $days } days
    }
noted-ph = pH
noted-look = Look
noted-separation = Separation
noted-smell = Smell
noted-viscosity = Viscosity
noted-storage = Stored where
noted-note = Note
reminder = Look at { $name }, batch { $lot }: day { $number }
reminder-about = pH, look, separation, smell, viscosity, and a photo beside white paper in the same light.

## Colours of the journal.

colour-in-numbers = L* { $lightness }, a* { $a }, b* { $b }
colour-difference = { $numbers } · ΔE00 { $difference } from the first
change = Change since the first
change-how = CIEDE2000 between the last colour and the first; about 1 can just be seen side by side
change-source = CIE 142-2001; Sharma, Wu and Dalal (2005)
unchanged = No change that photos can tell.
changed =
    { $size ->
        [visibly] Changed, to be seen side by side.
       *[clearly] Clearly changed.
    }
# The ways are some of those below, the largest first.
changed-ways =
    { $size ->
        [visibly] Changed, to be seen side by side: { $ways }.
       *[clearly] Clearly changed: { $ways }.
    }
way-lighter = lighter
way-darker = darker
way-redder = redder
way-greener = greener
way-yellower = yellower
way-bluer = bluer
way-stronger = stronger
way-paler = paler
fade = Half the colour is gone after
fade-days =
    { $days ->
        [one] 1 day
       *[other] { $days } days
    }
fade-days-range = { $low } to { $high } days
fade-days-or-longer =
    { $days ->
        [one] 1 day or longer: that it does not fade at all is not ruled out
       *[other] { $days } days or longer: that it does not fade at all is not ruled out
    }
fade-how = chroma falls by the same share each day (first order), fitted to your photos; a photo is taken as good to 1.5
fade-source = first-order decay, least squares, 95 % band
fade-curve = Chroma by day, with the fitted fade
fade-too-few = Photos of two days are needed.
fade-grey-already = The colour is grey already.
fade-holds = It holds, as far as photos can tell.
fade-otherwise = It does not get paler, but it changes: see above.

## Cards: what the large area says.

next-back = Back to what comes next
next-choose = Choose one of these
next-begin = Begin
next-done = Done
next-skip = Go on without
next-finish = Finish and draw down the stock
next-note = Note it
next-pour = { $mass } is in
next-water = { $mass } of water is in

## Cards: readying the bench.

own-method = Your own method:
card-prepare = Ready the bench
card-prepare-clear = Clear the bench, clean the pots and tools, wash your hands, tie back your hair.
card-prepare-lay-out = Lay out the materials and read each label.
card-caustics = Goggles and gloves for acids above 10 %, for caustics and for fine powders. Caustics go into water, never water onto them.
card-lot = Batch number
card-room = Room
card-weigh-first = Weigh first: { $phase }

## Cards: weighing.

card-beaker = Weigh the empty beaker
card-beaker-about = Its weight tells later how much water has evaporated. Write it on tape on the beaker, too.
card-beaker-field = Empty beaker
card-pour-field = What the scale shows
card-reads-line = The scale was set to zero for this line
card-reads-beaker = I didn’t zero the scale
card-leave-out = Leave it out
card-left-out = It was left out.
card-already-in = { $mass } is in.

## Cards: heating, and what evaporated.

card-heat = Heat it
card-heat-to = Heat it to { $degrees }
card-heat-about = In a water bath, covered, stirred now and then: less evaporates.
card-thermometer = Thermometer
card-hold = Hold it there for 20 minutes: common practice, to hydrate gums and to begin with few germs. No proof of anything.
card-heat-over = The time is up.
card-replace = Weigh the beaker again
card-cold-field = Before heating, with its beaker
card-hot-field = Now, with its beaker
card-evaporated = Evaporated
card-evaporated-how = before − now
card-by-weight = conservation of mass
card-put-back = Put { $mass } of water back, hot
card-put-back-warm = Put { $mass } of water back, as warm as the batch
card-forecast = If it is not weighed: an open beaker may lose some { $percent } % of its water, { $loss }. Then the finished product would hold:
card-from-to = { $from } → { $to } %
card-forecast-how = percent × batch ÷ (batch − loss); nothing but water goes
card-alcohol = There is alcohol in it: that evaporates faster than water, so the loss is not water alone. Keep it covered.

## Cards: combining and blending.

card-combine = Bring the phases together
card-combine-cold = Stir the phases together
card-together = Temperature together
card-together-how = Σ m·c·T ÷ Σ m·c over { $lines }
card-together-source = conservation of energy; no heat lost to beaker or room, no heat given off by what sets
card-if-it-sets = { $degrees } if all that can set or melt has
card-assumed = No thermometer was read: the temperatures of the formula are taken.
card-blend = Blend
card-stir = Stir until it is even
card-blend-about = The timer stops half-way: scrape down, then continue.
card-minutes = Minutes
card-timer-go = Start the timer
card-scrape = Stop. Scrape the walls, then go on.
card-blend-over = Blended.

## Cards: cooling, and what goes in cool.

card-cool-to = Stir while it cools to { $degrees }
card-batch-field = Batch
card-room-assumed = The room is taken as { $degrees }. Type what it is.
card-cool-now = It is cool enough now.
card-cool-enough = Cool enough at
card-cool-how = Fitted to your readings in a room of { $room }: every { $half } min it loses half of what it is warmer.
card-cool-source = Newton's law of cooling, least squares; 95 % band from a thermometer good to 0.5 K; a stirred batch in a still room
card-cool-curve =
    { $readings ->
        [one] Cooling curve through 1 reading, down to { $wanted }
       *[other] Cooling curve through { $readings } readings, down to { $wanted }
    }
card-temper = Temper the cool-down dish
card-temper-about = Stir { $mass } of the batch into the dish, a spoon at a time: it comes to { $wanted }. Then it goes in without lumps, and nothing in it is scorched.
card-temper-unknown = Stir a few spoons of the batch into the dish first, about as much as is in it.
card-temper-field = Stirred into the dish
card-temper-take = To take out
card-temper-how = m_dish·c_dish·(T − T_dish) ÷ (c_batch·(T_batch − T)), half-way between the two
card-add = Add it to the batch
card-too-warm = The batch is at { $batch }, and { $name } bears { $bears } at most. Wait.

## Cards: the last water, pH, filling, the end.

card-top-up = Weigh the batch
card-gross-field = Batch with its beaker
card-empty-field = That beaker empty
card-missing = Missing
card-missing-how = all that was weighed in − what is there
card-missing-about = What stuck to other beakers and tools is missing too. Scrape them out first: only what evaporated is to be replaced by water.
card-heavier-about = It weighs more than was weighed in: water that was put back has not evaporated. There is nothing to add.
card-ph = Measure the pH
card-ph-about = In the cooled batch, with a meter set today. Adjust a drop at a time, stir, and measure again.
card-ph-wanted = The formula aims at { $ph }.
card-fill = Fill
card-count-field = Containers
card-each-field = In each
card-filled = { $count } × { $each }
card-fill-plan =
    { $full ->
        [one] { $full } container full at { $each }; { $left } left over.
       *[other] { $full } containers full at { $each }; { $left } left over.
    }
card-fill-alike = Or all { $count } alike: { $each } in each.
card-fill-density = By the density estimated from the materials.
card-fill-density-measured = By the density you measured.
card-fill-no-density = No density is known: what a container takes cannot be worked out. Fill one and weigh it.
card-finish = Look at it and sign
card-will-draw = From your stock: { $items }.
card-yield = Yield
card-yield-value = { $percent } %, { $filled } of { $of }
card-yield-how = filled ÷ weighed in
card-explain-loss = More than 5 % is missing: write down why.

# Fixed texts of the page.
page-title = Batches
page-intro = Weigh, heat, blend and fill, one thing at a time. Every step is kept at once: a dead battery loses nothing.
page-empty = No batch yet. Open a formula, say how large the batch is to be, and make it.
page-resume = Go on
page-open = Open
page-remove = Delete { $name }
page-deleteRecord = Delete this record with its journal? What was weighed and seen is nowhere else.
page-keepRecord = Keep it
page-deleteIt = Delete it
page-leave = Leave the run
page-left = This run is kept as it stands. Leave it for now?
page-leftUnkept = Not everything of this run is kept yet. Leave it all the same?
page-notKept = Not kept
page-stay = Stay
page-go = Leave
page-list = All steps
page-back = Take back: { $act }
page-of = elapsed
page-done = done
page-awake = The screen stays on
page-hint = or press the space bar
page-record = Record: { $name }
page-showRecord = The record so far
page-timerStop = Stop
page-timerResume = Go on
page-toList = All batches
page-print = Print the record
page-takeBackFinish = Reopen this batch
page-materials = Materials
page-material = Material
page-lot = Lot
page-expiry = Use by
page-percent = %
page-target = Wanted
page-weighed = Weighed
page-deviation = Off by %
page-total = Total
page-deviations = Deviations
page-noDeviations = None.
page-results = What came out
page-composition = In the jar, where it differs from the plan
page-findings = What the checks say of it
page-dates = Dates
page-fields = Written down
page-log = What was done
page-takenBack = taken back
page-signatures = Signatures
page-journal = Journal
page-journalIntro = Look on day 0, 1, 7, 30 and 90, or on any day.
page-lookToday = Write down today
page-onDay = Or of another day
page-write = Write
page-reminders = Remind me: save a calendar file
page-addPhoto = Add a photo and read its colour
page-photoHelp = Put white paper beside the product, in the same light, without flash. Photos stay on this device.
page-tapWhite = Tap on the white paper.
page-tapProduct = Now tap on the product.
page-again = Tap the white again
page-photoOf = Photo
page-close = Close
page-takeOut = Take out
page-noPhoto = This photo is not on this device.
page-photoFailed = The photo could not be read or kept.
page-colour = Colour
page-ahead--title = What comes next
page-ahead--done = done
page-ahead--now = now
page-ahead--next = next
