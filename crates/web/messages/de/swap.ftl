# Making it with what one has: a line swapped, the formula rebuilt from a shelf, lines brought to a figure.

act-name = mit Vorhandenem gemacht
act-note = was ersatzweise zu nehmen ist
takes-figure = eine Zahl von 0 bis 100, etwa 8
none-open = Keine Rezeptur ist geöffnet.
taken = Geändert: { $what }
take = In die Rezeptur übernehmen

## Why there is no answer.

no-unbalanced = Die Mengen ergeben noch keine 100 %, oder etwas darin ist nicht bekannt. Erst die Rezeptur in Ordnung bringen.
no-nothing-at-hand = Nichts Vorhandenes ergibt das.
no-too-many = Mit mehr als { $most } Rohstoffen auf einmal wird nicht gerechnet.
no-too-large = Mit so vielen Rohstoffen und Inhaltsstoffen auf einmal wird nicht gerechnet. Weniger als vorhanden kennzeichnen.
no-failed = Es ließen sich keine Mengen ausrechnen.
no-step-too-coarse = Mengen gibt es, aber keine in Schritten von 0,01 %, die dies einhalten: { $bounds }.
no-conflict = Dies lässt sich nicht alles einhalten: { $bounds }.
least-relaxation = Die kleinste Änderung, die reicht: { $way }.
or-else = Oder: { $way }.
least-together = Die kleinste Änderung, die reicht, alles zusammen: { $ways }.
nothing-gives-way = Nichts davon kann nachgeben.
gives-way = hier nachgeben: { $bound }
gives-way-to = { $bound }: { $to } statt { $from }
bound-at-hand = Vorrat ({ $material })
bound-needs = verlangte Menge ({ $material })
bound-law = gesetzliche Grenze für „{ $subject }“ ({ $jurisdiction })
bound-advice = empfohlene Grenze für „{ $subject }“ ({ $jurisdiction })
bound-dissolves = was gelöst bleibt ({ $substance })
bound-dose = Dosis ({ $substance })
bound-usual = übliche Menge ({ $substance })
bound-wanted = gewünschte Menge ({ $substance })
bound-emulsifier = genug Emulgator für das Öl
bound-balance = HLB-Wert der Emulgatoren
bound-oil = Ölanteil
bound-water = Wasseranteil
bound-density = Dichte

## What changes.

goes = { $name }: entfällt
comes = { $name } { $percent }
becomes = { $name } { $percent } statt { $before }
and-more =
    { $count ->
        [one] 1 weitere Änderung
       *[other] { $count } weitere Änderungen
    }
stays = Nichts ändert sich.
more-rest = mehr von der auffüllenden Zeile
bar-before = Geschrieben
bar-after = Dann
bar = { $which }: { $layers }
cost = Rohstoffe für { $batch }: { $before } wie geschrieben, dann { $after } ({ $currency }; Wasser ohne Preis nicht gezählt).
cost-unknown = Was es kostet, ist nicht bekannt. Ohne Preis: { $names }.
no-prices = Es sind keine Preise bekannt. Preis und Packung auf den Karten der Rohstoffe eintragen.
unpriced = Ohne Preis und darum nicht erhöht: { $names }.
nothing-expires = Nichts im Bestand läuft binnen eines Jahres ab. Die Daten auf den Karten der Rohstoffe eintragen.
missed = { $substance }: { $got } statt { $wanted }
felt-oils-more = Öle { $after } statt { $before }: reichhaltiger, zieht langsamer ein.
felt-oils-less = Öle { $after } statt { $before }: leichter, zieht schneller ein.
felt-humectants-more = Feuchthalter { $after } statt { $before }: klebriger.
felt-humectants-less = Feuchthalter { $after } statt { $before }: weniger klebrig, hält weniger Feuchtigkeit.
felt-solids-more = Wachse und Butter { $after } statt { $before }: fester, mehr Film.
felt-solids-less = Wachse und Butter { $after } statt { $before }: weicher, dünner.
felt-thickeners-more = Verdicker { $after } statt { $before }: dicker.
felt-thickeners-less = Verdicker { $after } statt { $before }: dünner, trennt sich vielleicht eher.

## Ways to do without a line.

way-apart = Woraus es besteht
reason-apart = Einzeln eingewogen, wie die Karte es angibt.
reason-together = Enthält, was diese Zeilen mitbringen: { $lines }
reason-same-substance = Bringt dasselbe mit ({ $substance }): { $before } im Geschriebenen, { $after } hierin
reason-same-acting = Dieselbe Säure wirkt: { $acid }
reason-same-in-part = { $share } von dem, was es mitbringt, ist dasselbe
reason-same-group = Dafür werden beide verwendet: { $group }
reason-same-class = Beide sind von einer Art: { $class }
reason-balance = HLB { $before } im Geschriebenen, { $after } hierin
reason-required-balance = Verlangt HLB { $after }, jetzt wird { $before } verlangt
reason-melting = Schmilzt bei { $after }, das Geschriebene bei { $before }
reason-fatty-acids = { $alike } der Fettsäuren stimmen überein
reason-spectrum = Wirkt gegen jede Art Keim, gegen die jetzt etwas wirkt
feels = Fühlt sich { $after } an statt { $before }
brings-also = Bringt auch mit: { $substance }
lacks = Es fehlt: { $substance }
window = Wirkt bei pH { $low } bis { $high }
dosed = Eigene Dosis, nicht Gramm für Gramm: { $low } bis { $high } des Produkts
needs-base = Verdickt erst, wenn es neutralisiert ist
keep-cool = Nicht erhitzen: in der Abkühlphase zugeben
rancid-sooner = Wird eher ranzig
finds-also = Dann auch: { $what }
finds-no-more = Dann nicht mehr: { $what }
source = { $source } ({ $basis })
feel =
    { $feel ->
        [very-light] sehr leicht
        [light] leicht
        [medium] mittelschwer
        [rich] reichhaltig
        [heavy] schwer
        [waxy] wachsig
       *[sticky] klebrig
    }
group =
    { $group ->
        [fatty-alcohol] Fettalkohole
        [saturated-fatty-acid] feste Fettsäuren
        [liquid-fatty-acid] flüssige Fettsäuren
        [hard-butter] feste Butter
        [lauric-fat] laurische Fette
        [hard-wax] harte Wachse
        [soft-wax] weiche Wachse
        [mineral-wax] Mineralwachse
        [kernel-oil] Kernöle
        [linoleic-oil] Öle mit viel Linolsäure
        [oleic-oil] Öle mit viel Ölsäure
        [high-oleic-oil] High-Oleic-Öle
        [rose-seed-oil] Rosensamenöle
        [linolenic-oil] Öle mit viel Linolensäure
        [gamma-linolenic-oil] Öle mit gamma-Linolensäure
        [liquid-wax] flüssige Wachse
        [light-ester] leichte Ester
        [alkyl-ester] leichte Alkylester
        [medium-ester] mittelschwere Ester
        [branched-hydrocarbon] verzweigte Kohlenwasserstoffe
        [volatile-hydrocarbon] flüchtige Kohlenwasserstoffe
        [volatile-silicone] flüchtige Silikone
        [occlusive] okklusive Fette
        [solubiliser] Lösungsvermittler
        [polysorbate] Polysorbate
        [low-sorbitan] Sorbitanester mit niedrigem HLB
        [low-co-emulsifier] Co-Emulgatoren mit niedrigem HLB
        [lamellar-system] Emulgatorsysteme mit Flüssigkristallen
        [emulsifying-wax] Emulgierwachse
        [conditioning-emulsifier] konditionierende Emulgatoren
        [anionic-emulsifier] anionische Emulgatoren
        [polyacrylate] Polyacrylate
        [clear-gum] klare Gummen
        [cellulose] Cellulosen
        [liquid-humectant] flüssige Feuchthalter
        [glycol] Glykole
        [spirit] Alkohole
        [urea-kin] Harnstoff und Verwandte
        [hyaluronate] Hyaluronate
        [paraben] Parabene
        [polyol-chelator] Chelatbildner ohne EDTA
        [edta] EDTA-Salze
        [vitamin-c] Formen von Vitamin C
        [silicate-clay] Tonerden
        [starch] Stärken
        [acid] Säuren für den pH-Wert
        [strong-base] starke Basen
        [organic-base] organische Basen
        [glucoside-surfactant] Glucosid-Tenside
        [betaine-surfactant] Betain-Tenside
       *[aloe] Aloe
    }

## The shelf.

shelf-none-left = nichts mehr da
shelf-past = über dem Datum, { $day }
shelf-short = { $stock } von benötigten { $needed }
shelf-stock = { $stock } da
shelf-some = im Bestand
shelf-not-noted = nicht im Bestand vermerkt
stands-in = Ersatz für „{ $name }“: { $material }.
nothing-on-shelf = Nichts im Bestand tut, was „{ $name }“ tut. Das täten: { $names }.
nothing-stands-in = Nichts Bekanntes tut, was „{ $name }“ tut.
field-count = Vorhanden ist
count-marked = alles außer dem Angekreuzten
count-stores = nur, was im Bestand vermerkt ist
field-further = Es darf von der Rezeptur abweichen
further-hardly = kaum
further-somewhat = etwas
further-freely = weit
field-figure = Auf einen Wert bringen
field-target = Auf
field-target-now = Auf (jetzt { $now })
figure-oil = Öl, insgesamt
figure-water = Wasser gesamt
figure-balance = HLB der Emulgatoren
figure-density = Dichte

## A reader who lacks something.

readers-version = Das ist deine Fassung, nicht die der Autorin oder des Autors. Ohne: { $names }. Was dort über Ergebnis, Haltbarkeit und Hautgefühl steht, gilt für das Original.
reader-nothing = Nichts Bekanntes tut, was „{ $name }“ tut. Die Rezeptur lassen oder dort nachfragen, woher sie kommt.
reader-by-author = Wie im Original angegeben
reader-by-author-takes = Die Mengen bleiben wie geschrieben; der Hinweis wird von Hand befolgt.

## The author's table.

table-title = Wenn etwas fehlt
table-intro = Für diese Rezeptur ausgerechnet; die anderen Zeilen bleiben wie geschrieben. Prozente beziehen sich auf das Ganze. Emulgatoren und Konservierungsstoffe gehen nach eigener Dosis und pH-Wert, nicht Gramm für Gramm. Eine andere Fassung ist nicht mehr so erprobt wie diese.
table-line = Anstelle von
table-instead = nehmen
table-takes = dann einwiegen
table-author = eigene Angabe

# Fixed texts of the page.
page-title = Mit Vorhandenem machen
page-intro = Eine Zeile ersetzen, die Rezeptur aus dem eigenen Bestand bauen oder auf einen Wert bringen. Nichts ändert sich, bevor du es sagst.
page-wanted = Was gefragt ist
page-uses--line = Zeile ersetzen
page-uses--shelf = Aus dem Bestand
page-uses--expiring = Ablaufendes aufbrauchen
page-uses--cheapest = Am günstigsten
page-uses--figure = Wert treffen
page-chooseLine = Welche Zeile
page-note = Was ersatzweise zu nehmen ist
page-noteHelp = In eigenen Worten. Es geht in einem Link mit; wem das fehlt, sieht es zuerst.
page-ways--same = Dasselbe in anderer Stärke
page-ways--parts = Zerlegt und zusammengesetzt
page-ways--other = Tut dasselbe
page-noWays = Nichts Bekanntes kann es ersetzen.
page-atHand = im Bestand
page-tryWay = Ansehen
page-why = Warum, und was sich ändert
page-missing = Fehlt im Bestand
page-mayVary = Darf sich ändern
page-compare = Vorher und nachher
page-material = Rohstoff
page-layer = Schicht
page-before = geschrieben (%)
page-after = dann (%)
page-weigh = Ein­waage
page-findings = Befunde
page-goneFindings = Nicht mehr gefunden
page-newFindings = Dann gefunden
page-noFindings = Die Befunde bleiben, wie sie sind.
page-expect = Was auf der Haut zu erwarten ist
page-practice = Übliche Erfahrung, nicht gemessen: erst einen kleinen Ansatz machen und ihn neu auf der Haut testen.
page-missed = Was fehlen würde
page-toFormula = Zur Rezeptur
page-cautions = Eine Fassung ist eine neue Rezeptur: Eine Emulsion kann brechen, ein Konservierungsstoff nicht reichen. Neu testen; für andere entscheiden ein Labor und eine Sicherheitsbewertung.
