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

# What an item of a list is about, before it.
item-about = { $about }:

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
step-weigh = { $phase }: { $lines } einwiegen.
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
between = { "; " }
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

## Beyond the kitchen.

title-larger = Was sich im größeren Ansatz ändert
about-larger = Schätzungen für den großen Ansatz.
larger-time = { $estimate } min ({ $low } bis { $high })
larger-heating-head = Erwärmen
larger-heating = { $small } für { $batch }, { $time } für { $large }. Was erwärmt wird, von { $cold } auf { $hot } mit 1 kW, wovon 40 bis 80 % ankommen: t = m c ΔT / (P η).
larger-cooling-head = Abkühlen
larger-cooling = { $small } für { $batch }, { $time } für { $large }. Gerührt, von { $hot } auf { $warm } in ruhiger Luft von { $cold }, bei 5 bis 25 W/(m² K): t = m c / (h A) · ln(ΔT₁ / ΔT₂). Auf die Oberfläche kommt das { $times }-Fache an Volumen. Verdunstendes Wasser und ein kaltes Bad machen es schneller.
larger-blending-head = Emulgieren
larger-blending = Gefäß und Messer sind { $times }-mal so breit. Bei gleicher Geschwindigkeit der Spitze, also gleicher Scherung: { $tip } der Drehzahl, und { $times }-mal so lange für ebenso viel Energie je Gramm. Bei gleicher Leistung je Volumen, also gleichen Tropfen: { $power } der Drehzahl, und so lange wie zuvor. N D oder N³ D² bleiben gleich; für dicke Cremes ein grober Anhalt.
larger-fill-head = Mindestfüllung
larger-fill = In einem { $width } breiten Gefäß ist ein Messer von { $head } ab etwa { $mass } bedeckt ({ $low } bis { $high }): m = ρ π/4 D² k d, k 1 bis 2.
larger-no-density = Nicht geschätzt: Die Dichte des Produkts ist nicht bekannt. Dasselbe gilt für Erwärmen und Abkühlen.
larger-source = Schätzungen für stehende Gefäße gleicher Form. Gleichungen: { $heat }; { $mixing }. Wie viel ankommt, wie die Luft Wärme aufnimmt und wie tief ein Messer bedeckt ist, ist übliche Praxis. Erst einen Ansatz dazwischen machen und messen.

## The link and the picture.

open-at-bench = Diese Rezeptur mit eigenem Ansatz und eigenen Einheiten öffnen
code-is = QR-Code zum Öffnen: { $name }
picture-description = { $name }: der Tiegel mit seinen Schichten und jede Zeile in Prozent und als Masse.
picture-caution = Erst in der Armbeuge testen; von Augen und Kindern fernhalten. Dies ist keine Sicherheitsbewertung; es gilt das örtliche Recht.

# Fixed texts of the page.

page-title = Der Beitrag
page-intro = Die Seite, die du über diese Rezeptur veröffentlichst. Preise, Chargennummern, Lieferanten, Bestände, Ansätze und Journale kommen nie hinein. Was du in Namen, Notizen und die Herstellung geschrieben hast, erscheint, wie es dasteht.
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
