# What is kept, what can be taken back, what another tab changed.

kept = Auf diesem Gerät gespeichert
kept-at = Auf diesem Gerät gespeichert, { $time }
kept-loosely = { $kept }; fällt jetzt der Browser oder der Strom aus, kann die letzte Minute verloren sein
keeping = Wird gespeichert…
store-full = Der Speicher ist voll: Die letzten Änderungen stehen nur auf diesem Bildschirm. Eine Rezeptur löschen, die nicht mehr gebraucht wird; danach wird von selbst weiter gespeichert.
store-blocked = Dieser Browser lässt die Seite nichts speichern: Alles steht nur auf diesem Bildschirm. Websitedaten erlauben oder das private Fenster verlassen.
changed-in-other-tab = Auch in einem anderen Tab geändert
something-changed-elsewhere = Etwas hier Gespeichertes wurde in einem anderen Tab geändert, während es in diesem geändert wurde. Nichts wird überschrieben.
changed-elsewhere = „{ $name }“ wurde in einem anderen Tab geändert, während es in diesem geändert wurde. Nichts wird überschrieben.
record-newer = Ein Datensatz stammt von einer neueren Fassung von Stillroom und bleibt, wie er ist ({ $key }). Neu laden, um diese Fassung zu bekommen.
record-damaged = Ein Datensatz auf diesem Gerät ist beschädigt und bleibt, wie er ist ({ $key }).
undo = Rückgängig: { $act }
redo = Wiederholen: { $act }
act-last-change = letzte Änderung
act-formula-new = neue Rezeptur
act-formula-duplicate = Kopie einer Rezeptur
act-formula-rename = Name der Rezeptur
act-formula-delete = Rezeptur gelöscht
act-formula-example = Beispiel im Regal
act-formula-purpose = Anwendung des Produkts
act-formula-ph = pH-Wert
act-formula-measured-ph = gemessener pH-Wert
act-formula-kind = Art des Produkts
act-formula-tags = Stichworte
act-formula-notes = Notizen
act-formula-steps = Herstellungsanweisung
act-formula-write-in = Prozent und Gramm
act-formula-keep-copy = Kopie behalten
act-formula-version = frühere Fassung
act-backup-restore = Sicherung eingelesen
act-cure = Abhilfe übernommen
act-finding-set-aside = Befund beiseitegelegt
act-finding-take-back = Befund zurückgeholt
act-line-suspend = soll fest bleiben
act-phase-add = neue Phase
act-phase-rename = Name der Phase
act-phase-kind = Art der Phase
act-phase-temperature = Temperatur der Phase
act-phase-move = Phase verschoben
act-phase-remove = Phase entfernt
act-line-add = neue Zeile
act-line-amount = Menge
act-line-rest = ad-100-Zeile
act-line-note = Notiz
act-line-move = Zeile verschoben
act-line-replace = Rohstoff einer Zeile
act-line-remove = Zeile entfernt
act-batch-size = Ansatzgröße
act-batch-stock = vorhandener Rohstoff
act-settings = Einstellungen
act-material = Rohstoff
act-material-new = neuer Rohstoff
act-material-copy = Kopie eines Rohstoffs
act-material-delete = Rohstoff gelöscht
act-material-holding = Vorrat eines Rohstoffs
act-material-import = Rohstoffe übernommen
act-parts = Bestandteile einer Mischung
storage-cleared = Der Browser hat gelöscht, was diese Seite auf diesem Gerät gespeichert hatte. Was hier offen ist, wurde wieder gespeichert; fehlen Rezepturen, die letzte Sicherungsdatei einlesen („Teilen“).
clock-went-back = Die Uhr dieses Geräts steht vor der letzten Änderung ({ $last }). Nichts ist verloren; die Reihenfolge im Regal und bei den Fassungen kann falsch sein, bis sie richtig geht.
# A moment, in a list and in a sentence.
day =
    { $day }. { $month ->
        [1] Januar
        [2] Februar
        [3] März
        [4] April
        [5] Mai
        [6] Juni
        [7] Juli
        [8] August
        [9] September
        [10] Oktober
        [11] November
       *[12] Dezember
    } { $year }
day-and-time = { $day }.{ $month }.{ $year }, { $hour }:{ $minute } Uhr
