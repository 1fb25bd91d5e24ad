# Was ein Ansatz kostet, was dafür zu kaufen ist und welche Behälter er füllt.

act-name = Kosten
act-prices = Preise aus einer Tabelle
none-open = Keine Rezeptur ist geöffnet.
unsound = Die Mengen ergeben noch keine 100 %. Zuerst die Rezeptur richtigstellen.
money = { $amount } { $currency }

## Was gerechnet wird.

about-planned =
    { $units ->
        [0] Geplant: { $batch }.
        [one] Geplant: ein Stück zu { $volume }, zusammen { $batch }.
       *[other] Geplant: { $units } Stück zu { $volume }, zusammen { $batch }.
    }
about-planned-kinds =
    { $units ->
        [one] Geplant: eine Einheit, { $batch } insgesamt.
       *[other] Geplant: { $units } Einheiten verschiedener Art, { $batch } insgesamt.
    }
about-made =
    { $units ->
        [0] Zuletzt hergestellt: Charge { $lot }, { $batch } eingewogen.
        [one] Zuletzt hergestellt: Charge { $lot }, { $batch } eingewogen, ein Stück.
       *[other] Zuletzt hergestellt: Charge { $lot }, { $batch } eingewogen, { $units } Stück.
    }
headline-unit = für ein Stück
headline-unit-least = mindestens, für ein Stück
headline-hundred-least = mindestens, für 100 g
headline-hundred = für 100 g
headline-batch = für den Ansatz
headline-unit-of = für eine Einheit: { $kind }
headline-unit-of-least = mindestens, für eine Einheit: { $kind }
figure-unit-of = Eine Einheit: { $kind }
how-unit-of = Inhalt { $content }, nach dem Anteil an der abgefüllten Masse; Verpackung { $packaging }.
how-unit-sold = Mit Ihrem Aufschlag { $amount }.
kinds-without-price = Behälter ohne Preis, die in jeder Summe fehlen: { $kinds }. Ein Behälter, der nichts gekostet hat, ist 0.
figure-unit = Ein Stück
figure-batch = Der Ansatz
figure-hundred = 100 g
figure-sold = Ein Stück mit Aufschlag
at-least = mindestens
how-batch = Rohstoffe { $materials }, Verpackung { $packaging }, Arbeit { $labour }.
how-unit = { $batch } geteilt durch { $units }.
how-hundred = Der Ansatz geteilt durch die Einwaage, auf 100 g.
how-sold = Ein Stück und { $margin } davon dazu. Der Aufschlag bezieht sich auf die Kosten (übliche Praxis); Steuern und Gebühren sind nicht enthalten.
line-packaging = Verpackung
line-labour = Arbeit
units =
    { $units ->
        [one] ein Stück
       *[other] { $units } Stück
    }
price-free = kostenlos
price-unknown = kein Preis
price-at-least = mindestens { $amount }
unpriced = Ohne Preis oder Packungsinhalt, fehlt in jeder Summe: { $names }. Unten den Rohstoff öffnen und beides eintragen.
other-currency = Preis in einer anderen Währung als { $currency }, fehlt in jeder Summe: { $names }. Kurse sind hier nicht bekannt.
prices-of-day = Rohstoffe kosten, was bis { $day } notiert war, als dieser Ansatz gemacht wurde. Was unten zu kaufen ist, kostet, was es heute kostet.
prices-of-day-but = Rohstoffe kosten, was bis { $day } notiert war, als dieser Ansatz gemacht wurde; ohne einen Preis bis dahin, zum heutigen: { $names }. Was unten zu kaufen ist, kostet, was es heute kostet.
no-container-price = Der Behälter hat noch keinen Preis: Er fehlt in jeder Summe. Was nichts gekostet hat, ist 0.
no-labour = Arbeit ist nicht eingerechnet.
no-hourly = Die Arbeitszeit ist bekannt, aber nicht, was eine Stunde kostet: Arbeit ist nicht eingerechnet.
what-is-not-in-it = Eine Zeile kostet ihren Teil der Packungen, mit Versand und Schwund. Miete, Strom, Geräte, Prüfungen und Steuern sind nicht enthalten.
empty-pack = Mit einer leeren Packung lässt sich nicht rechnen. Den Packungsinhalt eintragen.
too-large = Eine Zahl ist zu groß zum Rechnen.

## Felder.

field-basis = Gerechnet wird mit
basis-made = letztem Ansatz, Charge { $lot }
basis-plan = geplantem Ansatz
field-units = Stückzahl
field-volume = Eines fasst
field-name = Heißt
field-first = Von dieser Art
first-number = so viele wie geplant: { $count }
first-rest = so viele, wie der Inhalt reicht
field-kind-count = Wie viele; leer: der Rest
takes-kind-count = eine ganze Zahl ab 1, zum Beispiel 4; leer für den Rest
field-walls = Behälter aus
walls-unsaid = nicht angegeben
walls-glass = Glas
walls-polyethylene = Polyethylen (PE)
walls-polypropylene = Polypropylen (PP)
walls-polyester = Polyester (PET)
walls-polystyrene = Polystyrol (PS, SAN)
walls-bare-aluminium = Aluminium, blank
walls-lacquered-metal = Metall, lackiert
field-price = Preis eines Behälters
field-further = Etikett, Schachtel usw. je Stück
field-headspace = Bleibt leer
field-stays = Bleibt im Spender
field-loss = Verlust an Wänden und Gerät
field-density = Gemessene Dichte
field-wastage = Schwund der Einwaage
field-minutes = Arbeit für den Ansatz
unit-minutes = min
field-hour = Eine Stunde kostet
field-margin = Aufschlag auf die Kosten
field-currency = Währung
field-batches = Ansätze
takes-minutes = Minuten ab 0, zum Beispiel 90
takes-margin = Prozent von 0 bis 10000, zum Beispiel 60
takes-batches = eine ganze Zahl von 1 bis 1000

## Behälter.

figure-out = Kommt heraus
came-planned = { $batch } ohne { $loss } an Wänden und Gerät.
came-made = Was aus Charge { $lot } abgefüllt wurde; wo nichts notiert ist, was gewogen wurde.
no-density = Keine Dichte ist bekannt, die Behälter lassen sich nicht zählen. Eine messen und eintragen.
figure-full = Volle Behälter
full-containers =
    { $count ->
        [0] keiner zu { $volume }
        [one] einer zu { $volume }
       *[other] { $count } zu { $volume }
    }
filled-measured = Bei gemessenen { $density }.
filled-reckoned = Bei { $density }, aus der Zusammensetzung gerechnet; mit eingerührter Luft zwischen { $low } und { $high } (übliche Praxis). Eine Füllung wiegen.
figure-left = Bleibt übrig
one-takes = Einer nimmt { $mass } auf.
figure-gives = Lässt sich entnehmen
stays-inside = { $share } davon bleiben im Spender.
size-filled = { $count }, Rest { $left }
from-to = { $fewest } bis { $most }
kind-of-volume = Behälter mit { $volume }
left-of-kinds = Weniger, als der kleinste fasst, der den Rest aufnimmt, oder als die fassen, die fehlen.
one-takes-and-gives = Einer fasst { $mass }; { $gives } lassen sich entnehmen.
kind-short =
    { $count ->
        [one] Einer wird nicht voll: { $kind }. Was herauskommt, reicht dafür nicht.
       *[other] { $count } werden nicht voll: { $kind }. Was herauskommt, reicht dafür nicht.
    }
no-kind-takes-rest = Keine Art nimmt den Rest auf. Leeren Sie eine Anzahl, dann tut es diese Art.
plan-kinds = { $mass } planen, damit alle voll werden
misfit-of = { $kind }: { $misfit }
misfit-scent = Ätherische Öle und Parfüm weichen Polystyrol und seine Copolymere auf: Es wird rissig und nimmt den Duft auf. Besser Glas, PET oder PP. { $source }.
misfit-acid = Unter pH 4 hält die Oxidschicht auf blankem Aluminium nicht: Lochfraß, und Aluminium geht ins Produkt. Besser lackiertes oder Glas. { $source }.
misfit-alkali = Über pH 8,5 hält die Oxidschicht auf blankem Aluminium nicht: Es löst sich und setzt Wasserstoff frei. Besser Glas, PE oder PP. { $source }.
misfit-polyester = Starke Lauge zersetzt Polyester; Flaschen reißen. Besser PE, PP oder Glas. { $source }.
misfit-lacquer = Lack hält Säure und Lauge nur ab, wo er unverletzt und dafür gemacht ist. Nach der Prüfung fragen und ein gefülltes Muster lagern. { $source }.
misfit-ph = Der pH ist nicht bekannt, und bei diesem Behälter kommt es auf ihn an. Messen. { $source }.
misfit-none = Hier ist nichts bekannt, was dagegen spricht. Das ist kein Nachweis: einen füllen, warm lagern und ansehen (übliche Praxis).

## Einkauf.

needed-of-stock = { $needed } nötig, { $stock } da
needed-no-stock = { $needed } nötig, Vorrat nicht notiert
enough-there = genug da
packs-to-buy =
    { $packs ->
        [one] eine Packung zu { $pack }; danach bleiben { $left }
       *[other] { $packs } Packungen zu { $pack }; danach bleiben { $left }
    }
pack-unknown = Preis und Packung nicht notiert
nothing-to-buy = Nichts ist zu kaufen.
to-buy-in-all =
    { $count ->
        [one] Ein Rohstoff zu kaufen: { $amount }, soweit Preise bekannt sind.
       *[other] { $count } Rohstoffe zu kaufen: { $amount }, soweit Preise bekannt sind.
    }
pieces =
    { $count ->
        [one] ein Stück
       *[other] { $count } Stück
    }
to-buy-with-containers =
    { $count ->
        [0] Behälter zu kaufen: { $amount }, soweit Preise bekannt sind.
        [one] Ein Rohstoff und die Behälter zu kaufen: { $amount }, soweit Preise bekannt sind.
       *[other] { $count } Rohstoffe und die Behälter zu kaufen: { $amount }, soweit Preise bekannt sind.
    }
list-head =
    { $batches ->
        [one] Einkauf für einen Ansatz: { $name }
       *[other] Einkauf für { $batches } Ansätze: { $name }
    }
list-entry = - { $name }: { $packs }
list-entry-unknown = - { $name }: { $mass }; Preis und Packung nicht notiert
list-entry-priced = - { $name }: { $packs } ({ $amount })
list-sum = Zusammen, soweit Preise bekannt sind: { $amount }

## Preise als Tabelle.

prices-same = Nichts in dieser Tabelle weicht von dem ab, was notiert ist.
prices-read =
    { $count ->
        [one] Ein Rohstoff würde sich ändern:
       *[other] { $count } Rohstoffe würden sich ändern:
    }
prices-wrong =
    { $count ->
        [one] Nichts wird übernommen: Eine Stelle ist unverständlich.
       *[other] Nichts wird übernommen: { $count } Stellen sind unverständlich.
    }
prices-taken =
    { $count ->
        [one] Ein Preis ist übernommen.
       *[other] { $count } Preise sind übernommen.
    }
nothing-noted = nichts notiert
change = { $name }: { $changes }
change-price = Preis { $before } → { $after }
change-pack = Packung { $before } → { $after }
change-shipping = Versand { $before } → { $after }
change-stock = Vorrat { $before } → { $after }

# Feste Texte der Seite.
page-title = Kosten
page-intro = Was ein Ansatz kostet, was dafür zu kaufen ist und was er füllt. Es bleibt auf diesem Gerät: Kein Link enthält es.
page-toFormula = Zur Rezeptur
page-lines = Woraus es sich ergibt
page-sums = Summen
page-batch = Wie viel
page-containers = Behälter dieses Ansatzes
page-kinds = Weitere Arten von Behältern
page-kindsHelp = Arten mit einer Anzahl werden zuerst gefüllt, der Reihe nach; was übrig ist, kommt in die ohne Anzahl.
page-addKind = Art hinzufügen
page-removeKind = Entfernen
page-buyContainers = Behälter zu kaufen
page-sizes = In anderen Größen
page-work = Arbeit und Aufschlag
page-workHelp = Stundensatz und Währung gelten für jede Rezeptur, alles andere für diese.
page-buy = Einkauf
page-noted--price = Packungspreis
page-noted--currency = Währung
page-noted--pack = Packungsinhalt
page-noted--shipping = Versand je Packung
page-noted--stock = Vorrätig
page-copy = Liste kopieren
page-copied = Kopiert.
page-notCopied = Der Browser hat das Kopieren nicht zugelassen: den Text markieren und kopieren.
page-saveList = Als CSV sichern
page-listName = einkauf.csv
page-prices = Preise als Tabelle
page-pricesHelp = Preise, Packungen und Vorräte deiner Rohstoffe als CSV für eine Tabellenkalkulation. Vor jeder Änderung wird gezeigt, was gelesen wurde.
page-savePrices = Preise sichern
page-readPrices = Preise lesen
page-pricesName = preise.csv
page-takeIn = Übernehmen
page-print = Drucken
