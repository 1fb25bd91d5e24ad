# A recipe that a maker already has, pasted as text.

act-name = formula of a recipe
default-name = Pasted recipe
lettered-phase = { $letter } · { $phase }
as-written = In the recipe: { $line }
own-note = From a pasted recipe: { $line }. Not known here; describe it from the supplier’s papers.
too-long = This text is longer than a recipe ({ $bytes } bytes). Paste the list of materials alone.
too-many-lines = This text has { $lines } lines, more than a recipe has. Paste the list of materials alone.

found =
    { $lines ->
        [one] { $found } of 1 line found
       *[other] { $found } of { $lines } lines found
    }
to-choose =
    { $lines ->
        [one] 1 to choose
       *[other] { $lines } to choose
    }
in-all = { $mass } { $unit } in all
left-open =
    { $lines ->
        [one] 1 line becomes a material of your own, marked as not known.
       *[other] { $lines } lines become materials of your own, marked as not known.
    }
made = “{ $name }” is on the shelf.
made-with-own =
    { $lines ->
        [one] “{ $name }” is on the shelf, with 1 material of your own to describe.
       *[other] “{ $name }” is on the shelf, with { $lines } materials of your own to describe.
    }
nearly = Nearly this name. Look at it.

## What has to be looked at.

doubt-missing = No amount
doubt-not-read = Amount not understood: fill it in
doubt-not-weighable = Spoons, cups and drops are no weight: weigh it once and fill it in
doubt-no-density = A volume, and no density is known: weigh it
doubt-by-density = Made a mass by its density
doubt-range = A range: its middle was taken
doubt-mass-among-percents = A mass among percents: say what the whole weighs, or fill it in
doubt-percent-among-masses = A percent among masses: fill it in
doubt-enough = As much as is needed: fill in what you used
doubt-second-rest = A second line that fills up: fill it in
doubt-too-large = More than the whole: fill it in

## Columns of a table, and files.

column-number = column { $number }
prices-left-out = Prices are no part of a formula and are left out: { $columns }
columns-left-out = Left out, not needed: { $columns }
grams-beside = The percents count. The grams beside them only say what the whole weighs: { $columns }
file-utf16 = The file was written in UTF-16 and is read so.
file-latin1 = The file does not say how its letters are written. It is read as Latin-1 (Windows-1252): look at accents and the signs of currencies.
file-too-large = This file is larger than a recipe ({ $bytes } bytes). Nothing was changed. Save the list of materials alone, or paste it.
file-packed = This is a workbook or a packed document, not plain text. Nothing was changed. Save it as CSV or as text, or copy its cells and paste them.
file-no-text = There is no text in this file. Nothing was changed. Text, CSV and tables parted by tabs are read.
file-empty = This file is empty. Nothing was changed.

## What other lines were taken for.

taken-for-title = name
taken-for-size = size
taken-for-head = head of the table
taken-for-heading = heading
taken-for-total = sum, not needed
taken-for-step = step of the method
taken-for-note = note, goes along

# Fixed texts of the page.
page-title = Paste a recipe
page-text = One material to a line, in any order: name and amount
page-placeholder = Distilled water 70 %
page-file = From a file
page-clear = Clear
page-numbers = The numbers are
page-percent = percent
page-grams = grams
page-parts = parts
page-recognised = What was recognised
page-choose = To choose
page-chooseFor = What is meant by “{ $name }”?
page-own = Describe it as my own
page-search = Search
page-change = Another material for { $name }
page-others = Other lines
page-make = Make this a formula
page-nothing = Paste or type a recipe above. Percent, grams, ounces, lists, tables and phases are understood. Nothing leaves this device.
page-caution = Check every line against the original. A recipe from elsewhere may be wrong, and no one here has tested it.
page-total = Total
page-columns = What each column holds
page-holds--name = material
page-holds--percent = percent
page-holds--grams = grams
page-holds--amount = amount
page-holds--unit = unit
page-holds--phase = phase
page-holds--inci = INCI or other name
page-holds--note = note, goes along
page-holds--price = price, left out
page-holds--left-out = nothing needed, left out
page-first = “{ $name }” and so on
page-bringBack = Bring back the text from before
page-dropHere = A text or table can be dropped here, too.
page-oneFile = One file at a time. Nothing was changed.
