# Sharing: links, comparisons, what is written out, earlier versions, and backups.

## A formula written out for people.

material = Rohstoff
total = Summe
phase-to = { $phase } (auf { $degrees })
phase-under = { $phase } (unter { $degrees })
caution = Erst in der Armbeuge testen; von Augen fernhalten und außer Reichweite von Kindern aufbewahren. Ein Konservierungsbereich ist kein Nachweis: Ein Produkt für andere braucht einen Konservierungsbelastungstest durch ein Labor und die gesetzlich verlangte Sicherheitsbewertung. Laugen verlangen Schutzbrille und Handschuhe und kommen in das Wasser, nie umgekehrt. Keine gesundheitsbezogenen Aussagen; es gilt das örtliche Recht.
column-phase = Phase
column-material = Rohstoff
column-percent = Prozent
column-mass = Masse in { $unit }
column-note = Notiz

## Links.

link-damaged = Dieser Link ist beschädigt: Unterwegs ging ein Zeichen verloren oder wurde verändert, oder es ist keine Rezeptur von Stillroom. Nichts wurde geöffnet, und an deinen Daten hat sich nichts geändert. Noch einmal um den Link bitten.
link-cut-off = Dieser Link ist abgeschnitten: Sein Ende fehlt. Das passiert, wenn eine lange Adresse umbricht. Ihn ganz kopieren und noch einmal öffnen. An deinen Daten hat sich nichts geändert.
link-newer = Dieser Link stammt von einer neueren Fassung von Stillroom. Die Seite neu laden, um diese Fassung zu bekommen, und den Link noch einmal öffnen. An deinen Daten hat sich nichts geändert.
link-too-large =
    { $part ->
        [characters] Dieser Link enthält mehr, als ein Link darf: höchstens { $most } Zeichen. Er wurde nicht geöffnet.
        [text] Dieser Link enthält mehr, als ein Link darf: höchstens { $most } Byte Text. Er wurde nicht geöffnet.
        [lines] Dieser Link enthält mehr, als ein Link darf: höchstens { $most } Zeilen in einer Phase. Er wurde nicht geöffnet.
        [phases] Dieser Link enthält mehr, als ein Link darf: höchstens { $most } Phasen. Er wurde nicht geöffnet.
        [materials] Dieser Link enthält mehr, als ein Link darf: höchstens { $most } eigene Rohstoffe. Er wurde nicht geöffnet.
        [parts] Dieser Link enthält mehr, als ein Link darf: höchstens { $most } Bestandteile in einem Rohstoff. Er wurde nicht geöffnet.
       *[steps] Dieser Link enthält mehr, als ein Link darf: höchstens { $most } Schritte. Er wurde nicht geöffnet.
    }
no-link-too-large =
    { $part ->
        [characters] Diese Rezeptur ist zu groß für einen Link; der fasst höchstens { $most } Zeichen. Stattdessen eine Sicherungsdatei schreiben.
        [text] Diese Rezeptur ist zu groß für einen Link; der fasst höchstens { $most } Byte Text. Stattdessen eine Sicherungsdatei schreiben.
        [lines] Diese Rezeptur ist zu groß für einen Link; der fasst höchstens { $most } Zeilen in einer Phase. Stattdessen eine Sicherungsdatei schreiben.
        [phases] Diese Rezeptur ist zu groß für einen Link; der fasst höchstens { $most } Phasen. Stattdessen eine Sicherungsdatei schreiben.
        [materials] Diese Rezeptur ist zu groß für einen Link; der fasst höchstens { $most } eigene Rohstoffe. Stattdessen eine Sicherungsdatei schreiben.
        [parts] Diese Rezeptur ist zu groß für einen Link; der fasst höchstens { $most } Bestandteile in einem Rohstoff. Stattdessen eine Sicherungsdatei schreiben.
       *[steps] Diese Rezeptur ist zu groß für einen Link; der fasst höchstens { $most } Schritte. Stattdessen eine Sicherungsdatei schreiben.
    }
no-link = Aus dieser Rezeptur lässt sich kein Link machen. Stattdessen eine Sicherungsdatei schreiben.
no-formula = Auf diesem Gerät gibt es keine solche Rezeptur.
link-length = { $characters } Zeichen. Die Rezeptur selbst steckt im Link: Kein Server sieht oder speichert sie.
link-length-long = { $characters } Zeichen. Die Rezeptur selbst steckt im Link: Kein Server sieht oder speichert sie. Manche Programme schneiden Adressen über etwa 2000 Zeichen ab: vor dem Veröffentlichen ausprobieren.
code-width = Auf Papier mindestens { $millimetres } mm breit, flach und mit weißem Rand drucken, damit ein Telefon ihn liest.
notes-left-out = Darin fehlt, was sonst niemand lesen soll: was Sie vorrätig haben, die Notizen zu eigenen Rohstoffen und warum Sie Befunde beiseitegelegt haben.
notes-carried = Darin steht, was Sie vorrätig haben, die Notizen zu eigenen Rohstoffen und warum Sie Befunde beiseitegelegt haben. Wer ihn öffnet, liest es.
no-code = Zu lang für einen Code, den ein Telefon von einem Etikett liest: { $characters } Zeichen, ein solcher Code fasst { $most }. Kürzere Notizen und Schritte helfen, oder den Link selbst teilen.
material-comes-along = { $name }: { $brings }
name-of-kept-copy = { $name } (aus einem Link)
copy-kept = „{ $name }“ steht jetzt im Regal.
already-kept = „{ $name }“ steht schon im Regal, unverändert.

## What is different between two versions.

same = Nichts ist anders.
# The counts are those below, without those that are nothing.
different = Anders: { $counts }.
count-of-materials =
    { $count ->
        [one] 1 Rohstoff
       *[other] { $count } Rohstoffe
    }
count-of-constituents =
    { $count ->
        [one] 1 Inhaltsstoff des Produkts
       *[other] { $count } Inhaltsstoffe des Produkts
    }
count-of-others =
    { $count ->
        [one] 1 andere Angabe
       *[other] { $count } andere Angaben
    }
name-differs = Name: { $before } → { $after }
use-differs = Anwendung: { $before } → { $after }
use-of-product =
    { $purpose ->
        [leave-on] bleibt auf der Haut
       *[rinse-off] wird abgespült
    }
kind-differs = Art des Produkts: { $before } → { $after }
kind-of-product =
    { $kind ->
        [face] Gesicht
        [face-wash] Gesichtsreinigung
        [eyes] Augen
        [lips] Lippen
        [body] Körper
        [body-wash] Körperreinigung
        [hand] Hände
        [hand-wash] Handreinigung
        [bath] Bad
        [hair] Haar
        [shampoo] Shampoo
        [conditioner] Spülung
        [deodorant] Deodorant
        [deodorant-spray] Deodorant-Spray
        [mist] Sprühnebel
        [oral] Mund
        [child] Kind
       *[child-wash] Kinderreinigung
    }
ph-differs = pH-Wert: { $before } → { $after }
measured-ph-differs = Gemessener pH-Wert: { $before } → { $after }
phases-differ = Phasen: { $before } → { $after }
nothing-there = keine Angabe
method-differs = Die Arbeitsweise lautet anders.
notes-differ = Die Notizen lauten anders.
batch-differs = Ein anderer Ansatz ist verlangt.

## Earlier versions.

version =
    { $lines ->
        [one] Nr. { $number }, { $when }: „{ $name }“, 1 Zeile
       *[other] Nr. { $number }, { $when }: „{ $name }“, { $lines } Zeilen
    }
version-made = { $version }. Danach hergestellt: { $lots }
name-of-version = { $name } ({ $when })

## Reading a backup.

backup-not-one = Diese Datei ist keine Sicherung von Stillroom. Eine Sicherung endet auf .json oder .zip und wurde hier als Sicherungsdatei geschrieben. Nichts wurde geändert.
backup-damaged = Diese Sicherung ist beschädigt oder abgeschnitten: Das Lesen endete in Zeile { $line }, Spalte { $column }. Nichts wurde geändert. Eine andere Kopie versuchen.
backup-zip-damaged = Diese Zip-Datei ist beschädigt oder abgeschnitten und nicht lesbar. Nichts wurde geändert. Eine andere Kopie versuchen; lässt sie sich mit einem anderen Programm öffnen, backup.json herausnehmen und das einlesen.
backup-newer = Diese Sicherung stammt von einer neueren Fassung von Stillroom. Die Seite neu laden, um diese Fassung zu bekommen, und noch einmal einlesen. Nichts wurde geändert.
backup-too-large = Diese Datei ist größer, als eine Sicherung sein kann: höchstens { $records } Datensätze in { $size } MB und { $photos } Fotos bis { $photo } MB. Nichts wurde geändert.
backup-holds = Geschrieben am { $made }. { $new } neu, { $same } schon hier, { $differs } hier anders.
backup-unreadable = { $count } nicht lesbar; sie bleiben weg.
photos-all-here =
    { $all ->
        [one] Ein Foto ist darin, das schon auf diesem Gerät ist.
       *[other] { $all } Fotos sind darin, alle schon auf diesem Gerät.
    }
photos-all-new =
    { $all ->
        [one] Ein Foto ist darin, das noch nicht auf diesem Gerät ist.
       *[other] { $all } Fotos sind darin, keines davon schon auf diesem Gerät.
    }
photos-some-new = { $all } Fotos sind darin, davon noch nicht auf diesem Gerät: { $new }.
record-formula = Rezeptur
record-material = Rohstoff
record-extract = Auszug
record-holding = Vorrat und Preis
record-batch = Herstellungsprotokoll
record-journal = Journal
record-settings = Einstellungen
record-unknown = bleibt weg: diese Fassung kennt es nicht
record-newer = bleibt weg: von einer neueren Fassung geschrieben
record-damaged = bleibt weg: beschädigt
name-from-backup = { $name } (aus der Sicherung)

## What was restored, and photos that are left over.

restored-records =
    { $count ->
        [one] Ein Datensatz ist jetzt auf diesem Gerät.
       *[other] { $count } Datensätze sind jetzt auf diesem Gerät.
    }
restored-photos =
    { $count ->
        [one] Ein Foto ist jetzt auf diesem Gerät.
       *[other] { $count } Fotos sind jetzt auf diesem Gerät.
    }
lost-photos =
    { $count ->
        [one] Ein Foto ist beschädigt oder fand keinen Platz.
       *[other] { $count } Fotos sind beschädigt oder fanden keinen Platz.
    }
nothing-to-restore = Alles aus der Datei ist schon auf diesem Gerät.
stray-photos =
    { $count ->
        [one] Ein Foto auf diesem Gerät gehört zu keinem Ansatz mehr. Einmal entfernt, lässt es sich nicht zurückholen.
       *[other] { $count } Fotos auf diesem Gerät gehören zu keinem Ansatz mehr. Einmal entfernt, lassen sie sich nicht zurückholen.
    }

# Fixed texts of the page.
page-title = Teilen und sichern
page-back = Zurück zur Rezeptur
page-none = Keine Rezeptur ist geöffnet. Eine aus dem Regal wählen.
page-link--title = Ein Link zu dieser Rezeptur
page-link--intro = Die ganze Rezeptur steckt im Link, samt den eigenen Rohstoffen, aus denen sie besteht. Wer ihn öffnet, bekommt eine Kopie zum Lesen; an deinen Daten ändert das nichts.
page-link--withNotes = Mit meinen Notizen, für ein anderes Gerät von mir
page-link--address = Der Link
page-link--copy = Link kopieren
page-link--copied = Kopiert.
page-link--cannotCopy = Der Browser lässt das Kopieren nicht zu: Link markieren und selbst kopieren.
page-link--send = Senden…
page-link--code = Der Link als Code
page-link--codeIs = QR-Code zum Öffnen: { $name }
page-link--print = Code drucken
page-link--embed = Auf der eigenen Seite einbetten
page-write--post = Den Beitrag dazu schreiben
page-write--postAbout = Eine Seite über diese Rezeptur, mit Ansätzen, Herstellung, Gründen, Vorsicht und Link: zum Kopieren, Speichern oder Drucken.
page-write--title = Ausgeschrieben
page-write--markdown = Als Markdown, für ein Blog
page-write--text = Als reiner Text
page-write--csv = Als Tabelle (CSV)
page-write--html = Als HTML, für eine Seite
page-write--substitutions = Mit Ersatz für jede Zeile
page-write--failed = Der Ersatz ließ sich nicht laden: das Netz prüfen.
page-versions--title = Frühere Fassungen dieser Rezeptur
page-versions--none = Noch keine. Eine Fassung wird gespeichert, wenn eine Charge nach ihr hergestellt wird und wenn die Arbeit an einer Rezeptur nach zehn Minuten oder mehr weitergeht.
page-versions--compare = Was sich seither geändert hat
page-versions--restore = Diese Fassung als Kopie ins Regal
page-versions--with = Mit einer anderen Rezeptur vergleichen
page-versions--choose = Rezeptur wählen
page-versions--experiment = Etwas versuchen: an einer Kopie arbeiten
page-compare--lines = Rohstoffe
page-compare--composition = Im fertigen Produkt
page-compare--others = Sonstiges:
page-compare--before = vorher
page-compare--after = jetzt
page-compare--other = die andere
page-compare--this = diese
page-compare--difference = Unterschied
page-compare--theirs = im Link
page-compare--ours = eigene
page-compare--column = { $head } %
page-backup--title = Sicherung
page-backup--intro = Eine Datei mit allem, was auf diesem Gerät ist: Rezepturen, Rohstoffe, Preise, Auszüge, Ansätze, Journale mit ihren Fotos, Einstellungen. Die Datei nicht nur auf diesem Gerät aufbewahren.
page-backup--write = Sicherungsdatei schreiben
page-backup--read = Sicherungsdatei einlesen
page-backup--writing = Die Datei wird geschrieben…
page-backup--opening = Die Datei wird gelesen…
page-backup--reading = Die Fotos werden auf dieses Gerät übertragen…
page-backup--records = Die Datensätze werden auf dieses Gerät übertragen…
page-backup--progress = Fotos, die schon hier sind
page-backup--stop = Anhalten und alles lassen, wie es war
page-backup--stopped = Angehalten. Nichts wurde wiederhergestellt: Alles ist, wie es vorher war.
page-backup--notRemoved = Angehalten. Kein Datensatz wurde wiederhergestellt, aber Fotos der Datei ließen sich nicht wieder entfernen. Sie stehen unten zum Entfernen.
page-backup--busy = Gerade ist eine andere Datei in Arbeit. Danach diese noch einmal wählen.
page-backup--notRead = Der Browser konnte die Datei nicht lesen. Noch einmal wählen.
page-backup--noPhotos = Der Browser lässt die Fotos nicht lesen: Die Datei enthält alles andere.
page-backup--tooMuch = Dieses Notizbuch enthält mehr, als eine Sicherungsdatei fasst (20 000 Datensätze, 40 MB). Nichts wurde geschrieben: erst löschen, was nicht mehr gebraucht wird.
page-backup--writingFailed = Ein Foto ließ sich nicht lesen, darum wurde keine Datei geschrieben. Noch einmal versuchen.
page-backup--removeStrays = Diese Fotos entfernen
page-backup--drop = Oder eine Datei irgendwo auf diese Seite ziehen.
page-backup--preview = Was in der Datei ist
page-backup--take = Auf dieses Gerät übertragen
page-backup--differing = Was schon hier ist und anders lautet
page-backup--both = beides behalten
page-backup--theirs = aus der Datei nehmen
page-backup--cancel = Nicht übernehmen
page-backup--item = { $kind }: { $name }
page-fates--new = neu
page-fates--same = schon hier
page-fates--differs = hier anders
page-fates--unreadable = nicht lesbar
page-reading--title = Geteilte Rezeptur
page-reading--intro = Dies ist eine Kopie zum Lesen. Sie steht nicht im Regal, und an deinen Daten hat sich nichts geändert.
page-reading--same = Diese Rezeptur steht schon im Regal, genau so wie hier.
page-reading--differs = Von dieser Rezeptur steht eine andere Fassung im Regal. Sie bleibt, wie sie ist; eine behaltene Kopie steht daneben.
page-reading--keep = Kopie behalten
page-reading--open = Eigene öffnen
page-reading--close = Weglegen
page-reading--compare = Was anders ist als in der eigenen
page-reading--bad = Dieser Link lässt sich nicht öffnen
page-reading--toShelf = Zum Regal
