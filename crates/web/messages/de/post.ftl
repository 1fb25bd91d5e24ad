# The post: the page that a maker publishes about a formula.

act-name = was im Beitrag steht

## The parts.

title-notes = Zum Produkt
title-formula = Rezeptur
title-sizes = Für drei Ansatzgrößen
title-method = Herstellung
title-cautions = Vorsicht
title-why = Wozu jeder Rohstoff dient
title-instead = Was sich ersetzen lässt
title-keeping = Wie lange es hält
title-findings = Was die Prüfungen ergeben
title-ingredients = Bestandteile
title-link = Die Rezeptur am eigenen Werktisch
title-code = Der Link als Code
title-embed = Auf der eigenen Seite einbetten
about-notes = Deine Notizen zur Rezeptur.
about-why = Mit deinen Notizen zu den Zeilen.
about-instead-waiting = Bisher deine eigenen Angaben; das Ausgerechnete wird noch geladen.
about-cautions = Immer dabei.
about-code = In HTML und im Druck; Markdown enthält keine Zeichnung.
about-embed = Die Zeilen zum Kopieren, mit dem Link darin.

## The formula and its sizes.

size-small = Kleiner Ansatz
size-usual = Ansatz
size-large = Großer Ansatz
formula-for = Für { $batch }
sizes-about = Massen in { $unit }
sizes-larger = Die Prozente bleiben im größeren Ansatz gleich; die Zeiten zum Erwärmen, Emulgieren und Abkühlen nicht.
mass-of = { $name } { $mass }

## The method.

step-prepare = Den Werktisch freiräumen und reinigen, Hände und Geräte säubern und alles bereitlegen.
step-weigh = { $phase }: einwiegen: { $lines }.
step-heat-to = { $phase }: auf { $degrees } erwärmen.
step-heat = { $phase }: erwärmen, bis alles klar und flüssig ist.
step-replace = { $phase }: noch einmal wiegen und verdunstetes Wasser ersetzen.
step-combine = Vereinigen: { $phases }.
step-blend = Emulgieren; auf halbem Weg die Wände abstreifen.
step-stir = Rühren, bis es gleichmäßig ist.
step-cool-under = Weiterrühren, bis es unter { $degrees } ist.
step-cool = Weiterrühren, bis es handwarm ist.
step-top-up = Den Ansatz wiegen und verdunstetes Wasser ersetzen.
step-add-under = { $phase }: etwas vom Ansatz hineinrühren, dann alles unter { $degrees } in den Ansatz rühren.
step-add-tempered = { $phase }: etwas vom Ansatz hineinrühren, dann alles in den Ansatz rühren.
step-add = { $phase }: in den Ansatz rühren.
step-ph = Den pH-Wert messen und aufschreiben.
step-ph-to = Den pH-Wert messen und auf { $ph } einstellen.
step-fill = In saubere Gefäße füllen und mit dem Datum beschriften.
degrees-to = { $phase }: auf { $degrees }
degrees-under = { $phase }: unter { $degrees }
tool-scale = Waage, die 0,1 g oder weniger anzeigt
tool-beakers = Hitzefeste Bechergläser
tool-bath = Wasserbad
tool-thermometer = Thermometer
tool-blender = Stabmixer
tool-stirrer = Rührer oder Schneebesen
tool-ph = pH-Messgerät oder Teststreifen
tool-guards = Schutzbrille und Handschuhe

## Why, and what instead.

class-that-brings = { $class }; { $brings }
why-source = Funktionen nach dem Inventar kosmetischer Bestandteile der Europäischen Kommission (CosIng): wofür ein Rohstoff verwendet werden kann, kein Versprechen einer Wirkung.
instead-author = Angabe des Originals: { $note }
instead-way = { $name }: { $takes }
instead-ways = { $ways }.
instead-between = { "; " }
instead-source = Für diese Rezeptur ausgerechnet, in Prozent des Ganzen; die anderen Zeilen bleiben wie geschrieben. Eine andere Fassung ist nicht mehr so erprobt wie diese.

## How long it keeps.

keeping-whole = Ungeöffnet
keeping-open = Nach dem Öffnen
keeping-months = { $months }. { $how }
keeping-water = Wasser und was es konserviert
water-none = Es enthält kein Wasser. Wasser, das später hineinkommt, von nassen Fingern oder in der Dusche, ist nicht konserviert.
water-preserved = { $water } Wasser; Konservierungsstoffe: { $names }.
water-unpreserved = { $water } Wasser und kein Konservierungsstoff.
keeping-oils = Antioxidantien für die Öle
keeping-practice = Übliche Praxis, und nie länger als der Rohstoff, der zuerst zu verbrauchen ist. Wegwerfen, wenn sich Geruch, Farbe oder Konsistenz ändern.

## What was found.

findings-none = Die Prüfungen haben nichts gefunden. Sie wissen, was in ihren Tabellen steht, und nicht mehr.
tone =
    { $tone ->
        [stop] Stopp
        [caution] Vorsicht
       *[note] Hinweis
    }
tone-aside =
    { $tone ->
        [stop] Stopp, im Original bekannt
        [caution] Vorsicht, im Original bekannt
       *[note] Hinweis, im Original bekannt
    }

## The link and the picture.

open-at-bench = Diese Rezeptur mit eigenem Ansatz und eigenen Einheiten öffnen
code-is = QR-Code zum Öffnen: { $name }
picture-description = { $name }: der Tiegel mit seinen Schichten und jede Zeile in Prozent und als Masse.
picture-caution = Erst in der Armbeuge testen; von Augen und Kindern fernhalten. Dies ist keine Sicherheitsbewertung; es gilt das örtliche Recht.

# Fixed texts of the page.

page-title = Der Beitrag
page-intro = Die Seite, die du über diese Rezeptur veröffentlichst. Preise, Chargennummern, Lieferanten, Bestände, Ansätze und Journale kommen nie hinein.
page-back = Zurück zum Teilen
page-parts = Was drin steht
page-sizes = Ansätze
page-acts = Mitnehmen
page-copyMarkdown = Markdown kopieren
page-copyHtml = HTML kopieren
page-savePage = Als .html speichern
page-print = Drucken
page-copied = Kopiert.
page-notCopied = Der Browser lässt das Kopieren nicht zu. Stattdessen als .html speichern.
page-preview = Wie er sich liest
page-picture = Die Rezeptur als Bild
page-withLink = Mit dem Link als Code
page-saveSvg = Als .svg speichern
page-savePng = Als .png speichern
page-notPainted = Der Browser konnte das Bild nicht malen. Stattdessen als .svg speichern.
page-notFetched = Der Ersatz ließ sich nicht laden: das Netz prüfen. Alles andere ist da.
