# The label: its ingredients in order, what else it has to say, and how it stands on it.

act-name = label
none-open = No formula is open.
unsound = The amounts do not make 100 % yet, or something in it is not known. Mend the formula first.
unnamed = (no INCI name)
declaration = Ingredients: { $names }.
lead-ingredients = Ingredients:
lead-before = Best used before end of:
lead-lot = Lot:
made-in = Made in { $country }
function-face = Face cream
function-face-wash = Face wash
function-eyes = Eye cream
function-lips = Lip balm
function-body = Body lotion
function-body-wash = Shower gel
function-hand = Hand cream
function-hand-wash = Hand wash
function-bath = For the bath
function-hair = Leave-in hair care
function-shampoo = Shampoo
function-conditioner = Conditioner
function-deodorant = Deodorant
function-deodorant-spray = Deodorant spray
function-mist = Mist for the skin
function-oral = Mouth care
function-child = Baby cream
function-child-wash = Baby wash

## Fields.

field-market = Sold or given away in
market-eu = European Union
market-uk = United Kingdom
market-us = United States
field-container = Container
container-jar = Jar, { $volume } mL
container-lid = Lid of a jar, { $volume } mL
container-tin = Lid of a tin, { $volume } mL
container-bottle = Bottle, { $volume } mL
container-tube = Tube, { $volume } mL
container-own = Another
field-volume = Filled with
field-by = Contents in
by-volume = mL
by-mass = g
field-function = What it is
field-claims = What it does and how it is used
field-caution = Further cautions
field-lot = Lot
field-before = Best used before end of
field-opening = Once open
unit-months = months
field-person = Name of who answers for it
field-address = Address
field-country = Country it is made in
field-contact = Telephone or e-mail
field-site = Your page on the web
field-site-as = On the label
site-as-nothing = no address
site-as-text = as text
site-as-code = as a QR code
field-shape = Label
shape-flat = flat
shape-wrap = around
shape-round = round
field-width = Width
field-height = Height
field-diameter = Diameter
field-paper = Paper
paper-a4 = A4
paper-letter = Letter
field-count = Labels
field-nano = { $name }: nanomaterial
nano-not-known = not known
nano-no = no
nano-yes = yes
takes-side = millimetres from 10 to 400, such as { $number }
takes-volume = millilitres from 1 to 10000, such as 50
takes-months = whole months up to 120, such as 6; 0 for none
takes-count = a whole number from 1 to 500

## Contents and dates.

contents-fluid-ounces = { $ounces } fl oz ({ $metric })
contents-ounces = Net wt { $ounces } oz ({ $metric })
contents-no-density = No density is known, so the mass of one filling is not. Measure it on the bench page.
contents-measured = { $volume } at the measured { $density }, rounded down.
contents-reckoned = { $volume } at { $density }, calculated from what is in it and rounded down. Emulsions hold air: weigh one.
date-of-batch = Date and lot of the batch made last, { $lot }. It keeps 30 months or less, so a date stands on the label.
date-of-today = No batch is made yet: the date is counted from today. It keeps 30 months or less, so a date stands on the label.
date-own = Date as you filled it in. What keeps 30 months or less carries a date.
date-opening = It keeps longer than 30 months: the months after opening stand on the label in place of a date. They are usual, not tested.
date-unknown = How long it keeps is not known: no material states a day.

## What is not certain.

doubt-order = { $name } and { $next } may stand the other way round: { $materials } is known by its usual composition only. Ask your supplier for the composition of your lot.
doubt-group = { $name } may be above or below 1 %: { $materials } is known by its usual composition only.
doubt-allergens = Named only in case the oil holds the most it may: { $names }. The allergen sheet of your lot decides.
scents-unknown = Nobody wrote down what { $names } holds: its allergens are missing here. Take them from the supplier’s allergen sheet.
no-inci = Without an INCI name, so the list is not complete: { $names }.
nano-unknown = Whether it is a nanomaterial is not known: { $names }. Ask your supplier, and say so below.
may-colour = Where it is there to colour, it stands last by its number in the European Union and the United Kingdom: { $names } (CI 77891, CI 77947, CI 77019).
typical = By usual composition only, taken as up to a fifth more or less (common practice): { $names }.
neutralised = Acids and bases stand as they were added. What they turn into, such as soap or a salt, may stand in their place.
us-names = Names for the United States are from memory: look them up in the dictionary of ingredient names before printing.

## Allergens.

allergens-us = None has to be named in the United States yet; a rule is to come. Anyone who is allergic still looks for them.
allergens-none = Nothing in it is known to hold one of the listed allergens.
allergens-above = Named above { $threshold } of the product.
allergens-uk = Those of Regulation (EU) 2023/1545 are no law in the United Kingdom by what is known here: check.
new-allergens-new = Those of Regulation (EU) 2023/1545 are named in new products since 31 July 2026, in every product from 31 July 2028.
new-allergens-not-yet = Those of Regulation (EU) 2023/1545 have to be named in new products from 31 July 2026.
new-allergens-every = Those of Regulation (EU) 2023/1545 are named in every product since 31 July 2028.
allergen-amount = { $typical }, at most { $most }
allergen-named = named
allergen-perhaps = named to be on the careful side
allergen-below = below the threshold
allergen-not-asked = not asked for
allergen-not-in-uk = asked for in the European Union, not here

## Sentences of the label.

say-external-use = For external use only.
say-eyes = Avoid contact with eyes.
say-small-children = Not to be used for children under 3 years of age.
say-vitamin-a = Contains Vitamin A. Consider your daily intake before use.
say-formaldehyde = Releases formaldehyde.
say-sun = Makes skin more sensitive to the sun: use sun protection.
say-ammonia = Contains ammonia.
say-resorcinol = Contains resorcinol.
say-powder = Keep powder away from children’s nose and mouth.
say-nappy-area = Do not use on the nappy area.
say-under-ten = Not to be used for children under 10 years of age.
say-stop = Stop using it if skin reddens, itches or burns.
say-out-of-reach = Keep out of reach of children.
statement-asked = asked for: { $about } ({ $source })
statement-advised-for = because of { $about }; common practice
statement-advised = common practice

## What is missing.

missing-sentence = Left off, though the law asks for it: “{ $sentence }” { $source }.
missing-person-eu = Name and address of the responsible person in the European Union. Law asks for it when it is sold or given away.
missing-person-uk = Name and address of the responsible person in the United Kingdom. Law asks for it when it is sold or given away.
missing-person-us = Name and place of business of the maker, packer or distributor.
missing-contact = An address, telephone number or e-mail in the United States for reports of adverse events.
missing-country = The country of origin, if it is imported.
missing-function = What it is, unless that is plain from its name and look.
missing-contents = The contents.
missing-lot = A lot number: begin a batch, or fill one in.
missing-date = A date, or the months after opening.
missing-assessment-eu = Not by this calculator: the safety report by a qualified assessor, the product file and the notification that the law asks for before it is sold or given away. Local rules decide.
missing-assessment-uk = Not by this calculator: the safety report by a qualified assessor, the product file and the notification that the law asks for before it is sold or given away. Local rules decide.
missing-assessment-us = Not by this calculator: proof that it is harmless. Without it 21 CFR 740.10 asks for this on the front: Warning: The safety of this product has not been determined.

## Words that make something else of it.

place-name = name
place-function = what it is
place-claims = what it does
place-caution = cautions
place-notes = notes of the formula, which are not printed
wording-medicine = “{ $found }” ({ $place }) speaks of illness or healing: that makes it a medicine. { $source }
wording-function = “{ $found }” ({ $place }) says it acts on the body’s functions: that makes it a drug. { $source }
wording-biocide = “{ $found }” ({ $place }) says it acts on germs or pests: that makes it a biocide, or a drug. { $source }
wording-sun = “{ $found }” ({ $place }) claims sun protection: that has to be measured, and is a drug in the United States. { $source }
wording-claim = “{ $found }” ({ $place }) has to be true and provable, and must not run others down. { $source }

## An address on it.

wrong-link-space = An address has no space in it: write it as maker.example/balm or https://maker.example/balm.
wrong-link-letter = “{ $letter }” cannot stand in an address: copy the address as the browser writes it, such as https://maker.example/balm.
wrong-link-scheme = “{ $scheme }” begins no address of a page: write https://maker.example/balm, or maker.example/balm.
wrong-link-no-host = The name of the page is missing: write https://maker.example/balm, or maker.example/balm.
wrong-link-host = “{ $host }” is no name of a page: write https://maker.example/balm, or maker.example/balm.
wrong-link-too-long = { $letters } characters are too many for a label: at most { $most }.
missing-link = Fill in the address that is to stand on the label.
link-too-long = The address does not fit on this label and is left off. Take a shorter one, or a larger label.
code-too-large = The QR code does not fit on this label and is left off: it needs { $side } each way, in modules of at least { $module } (common practice for a phone to read it) with four of them left empty around it. Take a shorter address, or a larger label.
code-there = The QR code is { $side } each way, with the empty edge of four modules that ISO/IEC 18004 asks for; a module is { $module } (at least { $least }: common practice). It holds the address and nothing else. Try a printed one with a phone.

## Drawing and printing.

size-flat = { $width } by { $height }
size-round = { $diameter } across
art = The label, { $size }: { $name }.
art-with-code = The label, { $size }: { $name }, with a QR code of { $address }.
too-small = It does not fit on { $size } in letters of { $least }. Take a larger label, or put the ingredients on a leaflet or card that goes along.
larger-than-paper = { $size } is larger than the paper, or no labels are asked for.
letters-text = Small letters
letters-contents = Figures of the contents
letters-least = at least { $least }
letters-law = Height of a small x, or of a figure, as it is printed.
letters-yardstick = The law says easily legible and names no height; the height asked for on food serves as a yardstick (common practice).
sheets =
    { $sheets ->
        [one] { $count } labels on 1 sheet of { $paper }, { $each } to a sheet. Print at 100 %, without fitting to the page.
       *[other] { $count } labels on { $sheets } sheets of { $paper }, { $each } to a sheet. Print at 100 %, without fitting to the page.
    }

# Fixed texts of the page.
page-title = Label
page-intro = What the law asks a label to say, worked out from what is really in the jar. Local rules decide.
page-toFormula = To the formula
page-ingredients = Ingredients
page-copy = Copy the ingredients
page-copied = Copied.
page-notCopied = The browser did not let it be copied: mark the text and copy it.
page-order = In order
page-places--weight = by weight
page-places--any = any order
page-places--colour = colourant, last
page-doubtful = order not certain
page-allergens = Allergens
page-statements = Cautions on it
page-missing = Still missing on it
page-wording = Words to think over
page-product = The product
page-maker = Who answers for it
page-makerHelp = Kept on this device, for every label.
page-link = An address on it
page-linkHelp = The address is kept on this device, for every label. Nothing is added to it.
page-drawn = The label
page-lettering = Letters
page-printing = Print
page-print = Print the labels
page-nano = Fine matter
