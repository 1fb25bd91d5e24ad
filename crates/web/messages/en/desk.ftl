# What is kept, what can be taken back, what another tab changed.

kept = Kept on this device
kept-at = Kept on this device, { $time }
kept-loosely = { $kept }; if the browser or the power fails now, the last minute may be lost
keeping = Keeping…
store-full = Storage is full: your last changes are on this screen only. Delete a formula you no longer need; keeping goes on by itself.
store-blocked = This browser lets the page keep nothing: what you do is on this screen only. Allow site data, or leave private browsing.
changed-in-other-tab = Changed in another tab too
something-changed-elsewhere = Something kept here was changed in another tab while you changed it in this one. Nothing is overwritten.
changed-elsewhere = “{ $name }” was changed in another tab while you changed it in this one. Nothing is overwritten.
record-newer = A record was written by a later version of Stillroom and is left as it is ({ $key }). Reload to get that version.
record-damaged = A record on this device is damaged and is left as it is ({ $key }).
undo = Undo: { $act }
redo = Redo: { $act }
act-last-change = last change
act-formula-new = new formula
act-formula-duplicate = copy of a formula
act-formula-rename = formula name
act-formula-delete = formula deleted
act-formula-example = example on the shelf
act-formula-purpose = use of the product
act-formula-ph = pH
act-formula-measured-ph = measured pH
act-formula-kind = kind of product
act-formula-tags = tags
act-formula-notes = notes
act-formula-steps = method
act-formula-write-in = percent and grams
act-formula-keep-copy = copy kept
act-formula-version = earlier version
act-backup-restore = backup restored
act-cure = cure applied
act-finding-set-aside = finding set aside
act-finding-take-back = finding taken back
act-line-suspend = solid meant to stay solid
act-phase-add = new phase
act-phase-rename = phase name
act-phase-kind = kind of phase
act-phase-temperature = phase temperature
act-phase-move = phase moved
act-phase-remove = phase taken out
act-line-add = new line
act-line-amount = amount
act-line-rest = q.s. line
act-line-note = note
act-line-move = line moved
act-line-replace = material of a line
act-line-remove = line taken out
act-batch-size = batch size
act-batch-stock = material at hand
act-settings = settings
act-material = material
act-material-new = new material
act-material-copy = copy of a material
act-material-delete = material deleted
act-material-holding = what you have of a material
act-material-import = materials taken in
act-parts = parts of a composite
storage-cleared = The browser cleared what this page kept on this device. What is open here was kept again; if formulas are missing, read your last backup file (Share and keep).
clock-went-back = This device's clock stands before your last change ({ $last }). Nothing is lost; the order of the shelf and of versions may be off until it is right.
# A moment, in a list and in a sentence.
day =
    { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } { $year }
day-and-time = { $year }-{ $month }-{ $day } { $hour }:{ $minute }
