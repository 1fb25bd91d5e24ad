# Sharing: links, comparisons, what is written out, earlier versions, and backups.

## A formula written out for people.

material = Material
total = Total
phase-to = { $phase } (to { $degrees })
phase-under = { $phase } (under { $degrees })
caution = Patch test first; keep away from eyes and out of the reach of children. A preservative range is no proof: a product for others needs a challenge test by a laboratory and the safety assessment the law asks for. Caustics need goggles and gloves and go into the water. No medical claims; local rules decide.
column-phase = phase
column-material = material
column-percent = percent
column-mass = mass in { $unit }
column-note = note

## Links.

link-damaged = This link is damaged: a character of it was lost or changed on its way, or it is no formula of Stillroom. Nothing was opened and nothing of yours was touched. Ask for the link once more.
link-cut-off = This link is cut off: its end is missing, as happens when a long address is broken across two lines. Copy all of it and open it again. Nothing of yours was touched.
link-newer = This link was made by a later version of Stillroom. Reload the page to get that version, then open the link again. Nothing of yours was touched.
link-too-large =
    { $part ->
        [characters] This link holds more than a link may: at most { $most } characters. It was not opened.
        [text] This link holds more than a link may: at most { $most } bytes of text. It was not opened.
        [lines] This link holds more than a link may: at most { $most } lines in a phase. It was not opened.
        [phases] This link holds more than a link may: at most { $most } phases. It was not opened.
        [materials] This link holds more than a link may: at most { $most } own materials. It was not opened.
        [parts] This link holds more than a link may: at most { $most } parts in a material. It was not opened.
       *[steps] This link holds more than a link may: at most { $most } steps. It was not opened.
    }
no-link-too-large =
    { $part ->
        [characters] This formula is too large for a link, which holds at most { $most } characters. Write a backup file instead.
        [text] This formula is too large for a link, which holds at most { $most } bytes of text. Write a backup file instead.
        [lines] This formula is too large for a link, which holds at most { $most } lines in a phase. Write a backup file instead.
        [phases] This formula is too large for a link, which holds at most { $most } phases. Write a backup file instead.
        [materials] This formula is too large for a link, which holds at most { $most } own materials. Write a backup file instead.
        [parts] This formula is too large for a link, which holds at most { $most } parts in a material. Write a backup file instead.
       *[steps] This formula is too large for a link, which holds at most { $most } steps. Write a backup file instead.
    }
no-link = This formula cannot be made a link. Write a backup file instead.
no-formula = There is no such formula on this device.
link-length = { $characters } characters. The formula itself is in the link: no server sees or keeps it.
link-length-long = { $characters } characters. The formula itself is in the link: no server sees or keeps it. Some programs cut off addresses longer than about 2000 characters: try it before you publish it.
code-width = On paper make it at least { $millimetres } mm wide, flat and with its white margin, so that a phone reads it.
notes-left-out = Left out of it, and for nobody else to read: what you have at hand, the notes of your own materials and why you set findings aside.
notes-carried = It carries what you have at hand, the notes of your own materials and why you set findings aside. Whoever opens it reads them.
no-code = Too long for a code that a phone reads from a label: { $characters } characters, and such a code holds { $most }. Shorter notes and steps help, or share the link itself.
material-comes-along = { $name }: { $brings }
name-of-kept-copy = { $name } (from a link)
copy-kept = “{ $name }” is on your shelf now.
already-kept = “{ $name }” is on your shelf already, unchanged.

## What is different between two versions.

same = Nothing is different.
# The counts are those below, without those that are nothing.
different = Different: { $counts }.
count-of-materials =
    { $count ->
        [one] 1 material
       *[other] { $count } materials
    }
count-of-constituents =
    { $count ->
        [one] 1 constituent of the product
       *[other] { $count } constituents of the product
    }
count-of-others =
    { $count ->
        [one] 1 other thing
       *[other] { $count } other things
    }
name-differs = Name: { $before } → { $after }
use-differs = Use: { $before } → { $after }
use-of-product =
    { $purpose ->
        [leave-on] stays on the skin
       *[rinse-off] is rinsed off
    }
kind-differs = Kind of product: { $before } → { $after }
kind-of-product =
    { $kind ->
        [face] face
        [face-wash] face wash
        [eyes] eyes
        [lips] lips
        [body] body
        [body-wash] body wash
        [hand] hand
        [hand-wash] hand wash
        [bath] bath
        [hair] hair
        [shampoo] shampoo
        [conditioner] conditioner
        [deodorant] deodorant
        [deodorant-spray] deodorant spray
        [mist] mist
        [oral] oral
        [child] child
       *[child-wash] child wash
    }
ph-differs = pH: { $before } → { $after }
measured-ph-differs = Measured pH: { $before } → { $after }
phases-differ = Phases: { $before } → { $after }
nothing-there = none
method-differs = The method reads differently.
notes-differ = The notes read differently.
batch-differs = Another batch is asked for.

## Earlier versions.

version =
    { $lines ->
        [one] No. { $number }, { $when }: “{ $name }”, 1 line
       *[other] No. { $number }, { $when }: “{ $name }”, { $lines } lines
    }
version-made = { $version }. Made from it: { $lots }
name-of-version = { $name } ({ $when })

## Reading a backup.

backup-not-one = This file is no backup of Stillroom. A backup ends in .json or .zip and was written here with “Write a backup file”. Nothing was changed.
backup-damaged = This backup is damaged or cut off: reading stopped at line { $line }, column { $column }. Nothing was changed. Try another copy of it.
backup-zip-damaged = This zip file is damaged or cut off and cannot be read. Nothing was changed. Try another copy of it; if you can open it with another program, take out backup.json and read that.
backup-newer = This backup was written by a later version of Stillroom. Reload the page to get that version, then read it again. Nothing was changed.
backup-too-large = This file is larger than a backup can be: at most { $records } records in { $size } MB, and { $photos } photos of up to { $photo } MB. Nothing was changed.
backup-holds = Made on { $made }. { $new } new, { $same } here already, { $differs } different here.
backup-unreadable = { $count } cannot be read and will be left out.
photos-all-here =
    { $all ->
        [one] One photo is in it, which is on this device already.
       *[other] { $all } photos are in it, all of them on this device already.
    }
photos-all-new =
    { $all ->
        [one] One photo is in it, which is not on this device yet.
       *[other] { $all } photos are in it, none of them on this device yet.
    }
photos-some-new = { $all } photos are in it, { $new } of them not on this device yet.
record-formula = Formula
record-material = Material
record-extract = Extract
record-holding = Stock and price
record-batch = Batch record
record-journal = Journal
record-settings = Settings
record-unknown = left out: this version does not know what it is
record-newer = left out: a later version wrote it
record-damaged = left out: it is damaged
name-from-backup = { $name } (from the backup)

## What was restored, and photos that are left over.

restored-records =
    { $count ->
        [one] One record is on this device now.
       *[other] { $count } records are on this device now.
    }
restored-photos =
    { $count ->
        [one] One photo is on this device now.
       *[other] { $count } photos are on this device now.
    }
lost-photos =
    { $count ->
        [one] One photo is damaged or found no room.
       *[other] { $count } photos are damaged or found no room.
    }
nothing-to-restore = Everything in the file is on this device already.
stray-photos =
    { $count ->
        [one] One photo on this device belongs to no batch any more. Once removed it cannot be brought back.
       *[other] { $count } photos on this device belong to no batch any more. Once removed they cannot be brought back.
    }

# Fixed texts of the page.
page-title = Share and keep
page-back = Back to the formula
page-none = No formula is open. Choose one from the shelf.
page-link--title = A link to this formula
page-link--intro = The whole formula is in the link, with your own materials it is made of. Whoever opens it gets a copy to read; nothing of yours can be changed by it.
page-link--withNotes = With my notes, for another device of mine
page-link--address = The link
page-link--copy = Copy the link
page-link--copied = Copied.
page-link--cannotCopy = Your browser does not let it be copied: select it and copy it yourself.
page-link--send = Send…
page-link--code = The link as a code
page-link--codeIs = QR code that opens { $name }
page-link--print = Print the code
page-link--embed = Put it on your own page
page-write--post = Write the post about it
page-write--postAbout = One page about this formula, with its batches, method, reasons, cautions and link: to copy, save or print.
page-write--title = Written out
page-write--markdown = As Markdown, for a blog
page-write--text = As plain text
page-write--csv = As a table (CSV)
page-write--html = As HTML, for a page
page-write--substitutions = With what can be taken instead of each line
page-write--failed = What can be taken instead could not be fetched: check the network.
page-versions--title = Earlier versions of this formula
page-versions--none = None yet. A version is kept when you make a batch of it, and when you come back to a formula after ten minutes or more.
page-versions--compare = What changed since
page-versions--restore = Put this version on the shelf as a copy
page-versions--with = Compare it with another formula
page-versions--choose = Choose a formula
page-versions--experiment = Try something: work on a copy
page-compare--lines = Materials
page-compare--composition = In the finished product
page-compare--others = Otherwise:
page-compare--before = before
page-compare--after = now
page-compare--other = the other
page-compare--this = this one
page-compare--difference = difference
page-compare--theirs = in the link
page-compare--ours = yours
page-compare--column = { $head } %
page-backup--title = Backup
page-backup--intro = One file with everything on this device: formulas, materials, prices, extracts, batches, journals with their photos, settings. Keep the file somewhere else than on this device.
page-backup--write = Write a backup file
page-backup--read = Read a backup file
page-backup--writing = The file is being written…
page-backup--opening = The file is being read…
page-backup--reading = The photos are being put on this device…
page-backup--records = The records are being put on this device…
page-backup--progress = Photos that are here already
page-backup--stop = Stop and leave everything as it was
page-backup--stopped = Stopped. Nothing was restored: everything is as it was before.
page-backup--notRemoved = Stopped. No record was restored, but photos of the file could not be taken away again. They are offered for removal below.
page-backup--busy = Another file is being worked on. When that is done, choose this one again.
page-backup--notRead = The browser could not read the file. Choose it again.
page-backup--noPhotos = Your browser does not let the photos be read: the file holds everything else.
page-backup--tooMuch = This notebook holds more than one backup file can (20,000 records, 40 MB). Nothing was written: delete what you no longer need first.
page-backup--writingFailed = A photo could not be read, so no file was written. Try again.
page-backup--removeStrays = Remove these photos
page-backup--drop = Or drop a file anywhere on this page.
page-backup--preview = What is in the file
page-backup--take = Put it on this device
page-backup--differing = What is here already and reads differently
page-backup--both = keep both
page-backup--theirs = take the file’s
page-backup--cancel = Leave it
page-backup--item = { $kind }: { $name }
page-fates--new = new
page-fates--same = here already
page-fates--differs = different here
page-fates--unreadable = cannot be read
page-reading--title = A formula that was shared with you
page-reading--intro = This is a copy to read. It is not on your shelf, and nothing of yours changed.
page-reading--same = You have this formula on your shelf, exactly as it is here.
page-reading--differs = You have another version of this formula. Yours stays as it is; a copy you keep stands beside it.
page-reading--keep = Keep a copy
page-reading--open = Open mine
page-reading--close = Put it away
page-reading--compare = What is different from yours
page-reading--bad = This link cannot be opened
page-reading--toShelf = To your shelf
