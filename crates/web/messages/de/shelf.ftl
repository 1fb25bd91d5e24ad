# The shelf.

new-formula = Neue Rezeptur
new-old-batch = Ein früherer Ansatz
this-pages-version = { $name }, wie im anderen Tab
deleted = „{ $name }“ ist aus dem Regal genommen.
about-empty = Noch nichts darin
about =
    { $lines ->
        [one] 1 Zeile
       *[other] { $lines } Zeilen
    } · { $purpose ->
        [leave-on] bleibt auf der Haut
       *[rinse-off] wird abgespült
    }
about-ph = { $about } · pH { $ph }
about-unsound = { $about } · ergibt { $total }

## The example on the shelf at the first visit: invented, and marked so.

example-formula = Gelcreme mit Gurke und Hafer
example-glycerite = Gurkenglycerit, Charge 7 (erfunden)
example-extract = Gurkenglycerit (erfunden)
example-extract-note = Für das Beispiel erfunden: frische Gurke in Glycerin ausgezogen, nach zehn Tagen abgepresst.
example-step-gum = Das Xanthan auf das Glycerit streuen, glatt rühren, dann Wasser, Betain und Allantoin einrühren.
example-step-heat = Wasserphase und Fettphase im Wasserbad auf 70 °C erwärmen; das Becherglas mit der Wasserphase noch einmal wiegen und Verdunstetes ergänzen.
example-step-blend = Die Fettphase in die Wasserphase gießen und zwei Minuten emulgieren; nach der halben Zeit anhalten und die Wände abstreifen.
example-step-cool = Kalt rühren; unter 40 °C die Abkühlphase zugeben, jeden Konservierungsstoff zuvor in etwas vom Wasser gelöst.
example-step-ph = Den pH-Wert messen und mit einigen Tropfen einer 10-prozentigen Citronensäurelösung auf 4,8 einstellen.
example-notes = Ein erfundenes Beispiel. Ein Konservierungsbereich ist kein Nachweis: Ein Produkt für andere braucht einen Konservierungsbelastungstest durch ein Labor und die gesetzlich verlangte Bewertung. Erst in der Armbeuge testen; von Augen und Kindern fernhalten.
count =
    { $formulas ->
        [0] Keine Rezepturen
        [one] 1 Rezeptur
       *[other] { $formulas } Rezepturen
    }
takes-tags = Höchstens 12 Stichworte mit je 40 Buchstaben.
due-look = { $name }: { $day }
due-batch = Ansatz { $lot } ansehen
due-stock = { $until }, noch { $stock }

# Fixed texts of the page.
page-title = Regal
page-newFormula = Rezeptur anlegen
page-fromGrams = Aus einem alten Ansatz in Gramm
page-example = Beispiel ansehen
page-empty = Das Regal ist leer. Eine Rezeptur in Prozent beginnen oder einen alten Ansatz in Gramm aufschreiben und daraus eine machen.
page-further = { $more } weitere
page-duplicate = Kopieren
page-remove = Löschen
page-more = Mehr: { $name }
page-nameOf = Umbenennen
page-caution = Stillroom ist ein Rechner für die Planung. Er ersetzt keinen Konservierungs­belastungs­test, keinen Stabilitätstest und nicht die Bewertung, die das Recht verlangt, bevor ein Produkt an andere geht. Erst in der Armbeuge testen; von Augen und Kindern fernhalten; es gilt das örtliche Recht.
page-sources = Nichts, was du eingibst, verlässt dieses Gerät.
page-notices = Woraus Stillroom gemacht ist
page-newFormulaAbout = Ein leeres Blatt, nach Phasen
page-paste = Rezept einfügen
page-pasteAbout = Prozent, Gramm oder Unzen
page-exampleAbout = Vier erfundene Rezepturen
page-what = Aus einer Rezeptur in Prozent wird ein Ansatz zum Einwiegen – mit Blick darauf, was verdirbt, sich trennt oder auskristallisiert.
page-search = Im Regal suchen
page-order = Reihenfolge
page-orders--changed = zuletzt geändert zuerst
page-orders--name = nach Name
page-nothingFound = Nichts im Regal heißt so.
page-due = Heute fällig
page-dueLook = Ansehen
page-dueUse = Zeigen
page-tags = Stichworte, mit Komma getrennt
page-tagged = Nur zeigen, was dieses Stichwort hat
