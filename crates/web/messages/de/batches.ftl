# The bench and the journal: batches that are weighed, their record, and what became of them.

## What a field takes.

takes-temperature = was das Thermometer zeigt, von −20 bis 150 °C, etwa 70 °C oder 158 °F
takes-minutes = Minuten, etwa 3 oder { $half }
takes-ph = ein pH-Wert von 0 bis 14 wie { $number }
takes-filling = eine ganze Zahl von Gefäßen, und für jedes eine Masse wie { $half } g
takes-mass = was die Waage zeigt, etwa { $half }, { $half } g oder 2 oz

## Acts, for undo.

act-new = neuer Ansatz
act-delete = Ansatz gelöscht
act-lot = Chargennummer
act-finish = Ansatz abgeschlossen
act-take-back = Zurücknahme am Werktisch
act-journal = Journal
act-step = Schritt am Werktisch

## Why not.

unsound-formula = Die Mengen ergeben noch nicht 100 %. Erst die Rezeptur in Ordnung bringen, dann kann eingewogen werden.
no-batch = Noch gibt es keinen Ansatz einzuwiegen. Am Werktisch angeben, wie groß er werden soll.
too-many-batches = Auf diesem Gerät sind { $most } Ansätze gespeichert, mehr geht nicht. Einen löschen, der nicht mehr gebraucht wird.
too-many-deeds = Diese Herstellung hat { $most } Einträge, mehr passen nicht hinein. Abschließen und eine neue beginnen.
too-many-photos = Ein Tag fasst { $most } Fotos. Erst eines entfernen oder einen anderen Tag eintragen.
too-many-days = Ein Journal fasst { $most } Tage.
less-than-before = Im Becherglas waren schon { $before }; { $shown } wären weniger. Oder wurde die Waage für diese Zeile tariert?
nothing-poured = Es kam nichts hinein. Soll die Zeile wegbleiben, unten „Weglassen“ wählen.
heavier-than-before = { $hot } ist mehr als die { $cold } vor dem Erwärmen. Ist es dasselbe Becherglas, nur mit dieser Phase?
lighter-than-beaker = { $mass } ist weniger als das leere Becherglas ({ $empty }).
pour-no-such-line = Diese Zeile hat keinen Anteil am Ansatz.
pour-no-rest = Keine Zeile dieser Rezeptur füllt auf 100 % auf.
pour-is-the-rest = Das ist die auffüllende Zeile selbst.
pour-rest-is-poured = Die auffüllende Zeile ist schon im Becherglas. Wird nach dem Erwärmen Wasser ergänzt, es dort weglassen.
pour-rest-too-small = Die auffüllende Zeile hat weniger als das abzugeben.
pour-other-too-much = Für diesen Ansatz wäre schon zu viel im Becherglas: { $other }.
pour-too-large = Der Ansatz wäre zu groß zum Einwiegen.
colour-no-pixels = Dort ist nichts abzulesen. Auf das Foto selbst tippen.
colour-white-overexposed = Das Weiß ist überbelichtet: Wie weiß es ist, lässt sich nicht sagen. Das Foto mit weniger Licht wiederholen.
colour-white-too-dark = Das Weiß ist zu dunkel. Auf einfaches weißes Papier neben dem Produkt tippen, bei gleichem Licht.
colour-lighter-than-white = Das Produkt ist heller als das Weiß. Erst auf das weiße Papier tippen, dann auf das Produkt.
cooling-too-few = Nötig sind zwei Messwerte im Abstand einiger Minuten.
cooling-under-room = Ein Messwert liegt nicht über der Raumtemperatur.
cooling-does-not-fall = Die Messwerte fallen noch nicht.
cooling-never-reached = Der Raum ist selbst so warm: Von allein kühlt der Ansatz nicht so weit ab.

## What was done.

batch-deleted = Ansatz { $lot } und sein Journal sind gelöscht.
entry-removed = Die Beobachtung ist entfernt.
finished =
    { $drawn ->
        [0] Fertig. Von diesen Rohstoffen ist kein Vorrat eingetragen, also wurde nichts abgebucht.
        [1] Fertig. Ein Rohstoff wurde vom Vorrat abgebucht.
       *[other] Fertig. { $drawn } Rohstoffe wurden vom Vorrat abgebucht.
    }

## The list of batches.

offer-batch = { $mass } ansetzen: { $name }
about-batch = { $lot } · { $mass }
about-running = { $lot } · { $mass } · Schritt { $step } von { $steps }
about-finished = { $lot } · { $mass } · fertig am { $day }
expired =
    { $days ->
        [1] { $name }: abgelaufen. Aufzubrauchen bis { $day }, das war gestern.
       *[other] { $name }: abgelaufen. Aufzubrauchen bis { $day }, das war vor { $days } Tagen.
    }

## Steps of a run.

step-prepare = Arbeitsplatz vorbereiten
step-beaker = Leeres Becherglas: { $name }
step-heat = Erwärmen: { $name }
step-replace = Noch einmal wiegen, Wasser ergänzen: { $name }
step-combine = Phasen vereinigen
step-blend = Mixen
step-cool = Abkühlen lassen
step-temper = Angleichen: { $name }
step-add = Zugeben: { $name }
step-top-up = Ansatz wiegen, letztes Wasser
step-ph = pH-Wert messen
step-fill = Abfüllen
step-finish = Ansehen und unterschreiben

## Weighing a line.

place-in-phase = { $phase } · { $at } von { $of }
tolerance =
    { $scale ->
        [fine] ± { $step } auf der Feinwaage
        [kitchen] ± { $step } auf der Küchenwaage
       *[any] ± { $step } auf der Waage
    }
running-total = Im Becherglas: jetzt { $before }, danach { $after }
lot = Charge { $lot }
use-by = aufbrauchen bis { $day }
lot-and-use-by = Charge { $lot }, aufbrauchen bis { $day }
too-much = { $over } zu viel: { $poured } statt { $target }.
too-little = Eingewogen: { $poured } von { $target }.
cure-add = Noch { $mass } zugeben
cure-rescale = Alles anpassen: Ansatz { $batch }
rescale-adds-nothing = Jeder Prozentwert bleibt, wie er war. Im Becherglas muss sich nichts ändern.
rescale-adds = Jeder Prozentwert bleibt, wie er war. Noch zugeben: { $items }.
cure-take-from-rest = Vom Rest abziehen: { $name }
rest-becomes = Davon insgesamt { $mass } einwiegen. Der Ansatz behält seine Masse.
cure-accept = So lassen und protokollieren
percent-becomes = Es werden { $percent } % statt { $planned } %. Das steht im Protokoll.
# An item of a list.
mass-of-material = { $mass } { $name }

## Heat and cold.

heat-of-line =
    { $basis ->
        [material] { $name } { $heat } kJ/(kg K), eigener Wert
        [parts] { $name } { $heat } kJ/(kg K), aus den Bestandteilen
       *[class] { $name } { $heat } kJ/(kg K), üblich für diese Art
    }
under-melting = Vereinigt haben die Phasen { $together }. { $name }: schmilzt erst bei bis zu { $melts } und kann körnig erstarren. Beide Phasen etwas weiter erwärmen oder die Wasserphase stärker.
melts-last = Zuletzt schmilzt { $name }, bei bis zu { $melts }.
melting-unknown = Kein Schmelzpunkt bekannt: { $names }. Warten, bis alles klar geschmolzen ist.
most-sensitive = Am hitzeempfindlichsten: { $name }, höchstens { $bears }.
sensitivity-unknown = Verträgliche Temperatur nicht bekannt: { $names }.
# A time of day in a sentence.
time-of-day = { $hours }:{ $minutes }
reached-at = { $time } Uhr ({ $low } bis { $high } Uhr)

## The record: its head and its results.

record-formula = Rezeptur
record-version = Fassung
record-version-not-kept = bei Beginn der Herstellung noch nicht gespeichert
record-lot = Chargennummer
record-made-on = Hergestellt am
record-times = Begonnen, beendet
record-from-until = { $from } – { $until }
record-method = Arbeitsweise
record-planned = Ansatz geplant
result-weighed-in = Einwaage
result-water-back = Wasser ergänzt
result-there = Ansatz am Ende
result-ph = pH-Wert
result-filled = Abgefüllt
result-yield = Ausbeute
result-drawn = Vom Vorrat abgebucht

## The record: its log.

did-start = Arbeitsplatz bereit, begonnen
did-put-first = Zuerst eingewogen: { $phase }
did-beaker = { $phase }: leeres Becherglas { $mass }
did-pour = { $name }: { $mass } eingewogen
did-leave-out = Weggelassen: { $name }
did-accept = { $name }: als Abweichung so belassen
did-rescale = Alles angepasst an die Einwaage: { $name }
did-take-from-rest = { $name }: von der auffüllenden Zeile abgezogen
did-weigh-cold = { $phase }: { $mass } mit Becherglas vor dem Erwärmen
did-weigh-hot = { $phase }: { $mass } mit Becherglas nach dem Erwärmen
did-add-water = { $mass } Wasser im Ansatz ergänzt
did-add-water-to-phase = { $phase }: { $mass } Wasser ergänzt
did-read-phase = { $phase }: { $degrees }
did-read-batch = Ansatz: { $degrees }
did-read-room = Raum: { $degrees }
did-start-timer = { $step }: Timer auf { $minutes } min
did-stop-timer = { $step }: angehalten
did-resume-timer = { $step }: weiter
did-temper = { $phase }: zuerst { $mass } vom Ansatz eingerührt
did-weigh-batch = Ansatz mit Becherglas { $gross }, Becherglas { $empty }
did-measure-ph = pH { $ph }
did-fill = Abgefüllt: { $count } × { $each }
did-say = { $label }: { $text }
did-strike-out = { $label }: gestrichen
did-close = { $step }: erledigt
did-finish = Abgeschlossen
did-read-line = Ablesung der Waage: für jede Zeile tariert
did-read-whole = Ablesung der Waage: sie zeigt alles, was im Becherglas ist

## The record: where it is not as planned.

deviation-mass = { $name }: { $poured } eingewogen, { $target } gewünscht ({ $percent } %).
deviation-left-out = { $name }: weggelassen.
deviation-share = { $name }: { $from } → { $to } %
deviation-batch = Der Ansatz wurde von { $planned } auf { $now } gebracht; jeder Prozentwert blieb, wie er war.
deviation-water = { $mass } Wasser gingen verloren und wurden nicht ergänzt.
deviation-water-more = { $mass } mehr Wasser ist darin, als die Zeilen mitbrachten.
deviation-ph = pH { $ph }; Ziel der Rezeptur ist { $wanted }.
deviation-yield = Ausbeute { $percent } %: Es fehlen mehr als 5 %.

## The record: dates.

common-practice = gängige Praxis
best-before = Haltbar bis
day-unknown = nicht bekannt
limit-material = { $name }: aufzubrauchen bis { $day }, früher als jeder andere Rohstoff. Ohne Stabilitätstest gilt es nicht länger.
limit-stated =
    { $months ->
        [one] Ein Monat laut angegebenem Stabilitätstest, früher als jeder Rohstoff.
       *[other] { $months } Monate laut angegebenem Stabilitätstest, früher als jeder Rohstoff.
    }
limit-unknown = Kein Rohstoff darin nennt einen letzten Tag, und kein Stabilitätstest ist angegeben. Die Tage bei den vorhandenen Rohstoffen eintragen.
limit-unpreserved-water = Nichts konserviert das Wasser darin: eine Woche, gekühlt.
limit-preserved-water = Konserviert, aber kein Stabilitätstest angegeben: höchstens ein Jahr.
limit-bound-water = Das Wasser ist gebunden, aber kein Stabilitätstest angegeben: höchstens sechs Monate.
limit-anhydrous = Ohne Wasser, aber kein Stabilitätstest angegeben: höchstens zwei Jahre.
limit-delicate-oil = Die Öle werden schnell ranzig, und nichts schützt sie davor: höchstens sechs Monate.
days-unknown = Letzter Tag nicht bekannt: { $names }.
after-opening = Nach dem Öffnen
opening-months =
    { $months ->
        [one] 1 Monat
       *[other] { $months } Monate
    }
opening-months-range = { $fewest } bis { $most } Monate
opening-how = Üblich, wo kein Labor geprüft hat: 6 bis 12 Monate mit Wasser und Konservierungsstoff, 12 ohne Wasser.
opening-none = keine Frist
opening-none-how = Enthält Wasser und keinen Konservierungsstoff: einige Tage, im Kühlschrank. Eine solche Frist gibt es nicht.
on-label = Auf dem Etikett
label-date-when-known = ein Datum, sobald eines bekannt ist
label-date = ein Datum
label-open-jar = der offene Tiegel mit Monaten
thirty-months =
    { $months ->
        [one] Ab Herstellung einen Monat haltbar. Bis 30 Monate steht ein Datum auf dem Etikett („mindestens haltbar bis“), darüber die Verwendungsdauer nach dem Öffnen.
       *[other] Ab Herstellung { $months } Monate haltbar. Bis 30 Monate steht ein Datum auf dem Etikett („mindestens haltbar bis“), darüber die Verwendungsdauer nach dem Öffnen.
    }
thirty-months-unknown = Bis 30 Monate steht ein Datum auf dem Etikett („mindestens haltbar bis“), darüber die Verwendungsdauer nach dem Öffnen.
thirty-months-source = Verordnung (EG) Nr. 1223/2009, Artikel 19 Absatz 1 Buchstabe c, aus dem Gedächtnis; es gilt das örtliche Recht

## The record: what the maker fills in, cautions, signatures.

field-weighed-by = Eingewogen von
field-checked-by = Geprüft von
field-line-clearance = Tisch frei von anderen Ansätzen
field-cleaning = Gereinigt und desinfiziert: wer, wann, womit
field-equipment = Geräte: Gefäße, Mixer, Thermometer, pH-Meter
field-balance = Waage und ihre letzte Prüfung
field-water = Wasser: Herkunft, gereinigt, abgekocht
field-look = Aussehen, Farbe, Geruch
field-viscosity = Viskosität, in Worten oder mit Messgerät
field-ph-method = Wie der pH-Wert gemessen, womit er eingestellt wurde
field-packaging = Chargen von Gefäßen, Verschlüssen und Etiketten
field-net-content = Nettoinhalt geprüft: gewogene Stücke
field-loss = Warum mehr als 5 % fehlen
field-retained = Wo das Rückstellmuster steht
field-durability = Haltbarkeit laut Stabilitätstest (Monate), falls es einen gibt
field-released = Freigegeben, zurückgewiesen oder nachzuarbeiten
field-released-by = Freigegeben von, am
caution-patch-test = Erst 24 bis 48 Stunden in der Armbeuge testen; bei Rötung, Jucken oder Schwellung absetzen. Von Augen und Kindern fernhalten.
caution-no-assessment = Dieses Protokoll ist keine Sicherheitsbewertung. Ein Produkt für andere braucht einen Konservierungsbelastungstest durch ein Labor und die gesetzlich verlangte Bewertung; es gilt das örtliche Recht.
caution-no-claims = Keine gesundheitsbezogenen Aussagen.
signature-made = Hergestellt von, Datum
signature-checked = Geprüft von, Datum
signature-released = Freigegeben von, Datum

## The journal.

day-of-batch = Tag { $number } · { $day }
due-day = Tag { $number }
due-seen = ✓ nachgesehen
due-to-come = kommt noch
due-today = heute fällig
due-overdue =
    { $days ->
        [1] seit einem Tag fällig
       *[other] seit { $days } Tagen fällig
    }
noted-ph = pH-Wert
noted-look = Aussehen
noted-separation = Trennung
noted-smell = Geruch
noted-viscosity = Viskosität
noted-storage = Wo es steht
noted-note = Notiz
reminder = Nachsehen: { $name }, Ansatz { $lot }, Tag { $number }
reminder-about = pH-Wert, Aussehen, Trennung, Geruch, Viskosität und ein Foto neben weißem Papier bei gleichem Licht.

## Colours of the journal.

colour-in-numbers = L* { $lightness }, a* { $a }, b* { $b }
colour-difference = { $numbers } · ΔE00 { $difference } zur ersten
change = Änderung seit dem ersten Mal
change-how = CIEDE2000 zwischen der letzten und der ersten Farbe; etwa 1 ist nebeneinander gerade zu sehen
change-source = CIE 142-2001; Sharma, Wu und Dalal (2005)
unchanged = Keine Änderung, die Fotos zeigen könnten.
changed =
    { $size ->
        [visibly] Verändert, nebeneinander zu sehen.
       *[clearly] Deutlich verändert.
    }
# The ways are some of those below, the largest first.
changed-ways =
    { $size ->
        [visibly] Verändert, nebeneinander zu sehen: { $ways }.
       *[clearly] Deutlich verändert: { $ways }.
    }
way-lighter = heller
way-darker = dunkler
way-redder = röter
way-greener = grüner
way-yellower = gelber
way-bluer = blauer
way-stronger = kräftiger
way-paler = blasser
fade = Farbe halb verblasst nach
fade-days =
    { $days ->
        [one] 1 Tag
       *[other] { $days } Tagen
    }
fade-days-range = { $low } bis { $high } Tage
fade-days-or-longer =
    { $days ->
        [one] 1 Tag oder länger: Dass es gar nicht verblasst, ist nicht ausgeschlossen
       *[other] { $days } Tage oder länger: Dass es gar nicht verblasst, ist nicht ausgeschlossen
    }
fade-how = die Buntheit fällt jeden Tag um denselben Anteil (erste Ordnung), an die Fotos angepasst; ein Foto gilt als auf 1,5 genau
fade-source = Abklingen erster Ordnung, kleinste Quadrate, 95-%-Band
fade-curve = Buntheit nach Tagen, mit angepasstem Verblassen
fade-too-few = Nötig sind Fotos von zwei Tagen.
fade-grey-already = Die Farbe ist schon grau.
fade-holds = Sie hält, soweit Fotos es zeigen.
fade-otherwise = Sie wird nicht blasser, ändert sich aber: siehe oben.

## Cards: what the large area says.

next-back = Zurück zum nächsten Schritt
next-choose = Eines davon wählen
next-begin = Beginnen
next-done = Erledigt
next-skip = Ohne Eintrag weiter
next-finish = Abschließen und vom Vorrat abbuchen
next-note = Notieren
next-pour = { $mass } sind drin
next-water = { $mass } Wasser sind drin

## Cards: readying the bench.

own-method = Die eigene Arbeitsweise:
card-prepare = Arbeitsplatz vorbereiten
card-prepare-clear = Tisch freiräumen, Gefäße und Geräte reinigen, Hände waschen, Haare zusammenbinden.
card-prepare-lay-out = Rohstoffe bereitstellen und jedes Etikett lesen.
card-caustics = Schutzbrille und Handschuhe bei Säuren über 10 %, bei ätzenden Stoffen und bei feinen Pulvern. Ätzende Stoffe in das Wasser geben, nie Wasser darauf.
card-lot = Chargennummer
card-room = Raum
card-weigh-first = Zuerst einwiegen: { $phase }

## Cards: weighing.

card-beaker = Das leere Becherglas wiegen
card-beaker-about = Sein Gewicht zeigt später, wie viel Wasser verdunstet ist. Auch auf ein Klebeband am Becherglas schreiben.
card-beaker-field = Leeres Becherglas
card-pour-field = Die Waage zeigt
card-reads-line = Die Waage wurde für diese Zeile tariert
card-reads-beaker = Die Waage war nicht auf null gestellt
card-leave-out = Weglassen
card-left-out = Weggelassen.
card-already-in = { $mass } sind drin.

## Cards: heating, and what evaporated.

card-heat = Erwärmen
card-heat-to = Auf { $degrees } erwärmen
card-heat-about = Im Wasserbad, zugedeckt, ab und zu umrühren: So verdunstet weniger.
card-thermometer = Thermometer
card-hold = 20 Minuten auf dieser Temperatur halten: gängige Praxis, damit Gelbildner quellen und der Ansatz keimarm beginnt. Ein Nachweis ist das nicht.
card-heat-over = Die Zeit ist um.
card-replace = Das Becherglas noch einmal wiegen
card-cold-field = Vor dem Erwärmen, mit Becherglas
card-hot-field = Jetzt, mit Becherglas
card-evaporated = Verdunstet
card-evaporated-how = vorher − jetzt
card-by-weight = Massenerhaltung
card-put-back = { $mass } heißes Wasser ergänzen
card-put-back-warm = { $mass } Wasser ergänzen, so warm wie der Ansatz
card-forecast = Ohne Wiegen: Ein offenes Becherglas kann etwa { $percent } % seines Wassers verlieren, { $loss }. Dann enthielte das fertige Produkt:
card-from-to = { $from } → { $to } %
card-forecast-how = Prozent × Ansatz ÷ (Ansatz − Verlust); nur Wasser geht verloren
card-alcohol = Es enthält Alkohol: Der verdunstet schneller als Wasser, der Verlust ist also nicht nur Wasser. Zugedeckt halten.

## Cards: combining and blending.

card-combine = Die Phasen vereinigen
card-combine-cold = Die Phasen zusammenrühren
card-together = Temperatur vereinigt
card-together-how = Σ m·c·T ÷ Σ m·c über { $lines }
card-together-source = Energieerhaltung; ohne Wärmeverlust an Becherglas und Raum, ohne Erstarrungswärme
card-if-it-sets = { $degrees }, wenn alles, was erstarren oder schmelzen kann, es getan hat
card-assumed = Kein Thermometer abgelesen: Es gelten die Temperaturen der Rezeptur.
card-blend = Emulgieren
card-stir = Rühren, bis es gleichmäßig ist
card-blend-about = Nach der halben Zeit hält der Timer an: die Wände abstreifen, dann weiter.
card-minutes = Minuten
card-timer-go = Timer starten
card-scrape = Halt. Die Wände abstreifen, dann weiter.
card-blend-over = Fertig gemixt.

## Cards: cooling, and what goes in cool.

card-cool-to = Kalt rühren bis { $degrees }
card-batch-field = Ansatz
card-room-assumed = Für den Raum werden { $degrees } angenommen. Den wirklichen Wert eintragen.
card-cool-now = Jetzt ist es kühl genug.
card-cool-enough = Kühl genug um
card-cool-how = An die Messwerte in einem Raum von { $room } angepasst: Alle { $half } min halbiert sich der Abstand zur Raumtemperatur.
card-cool-source = Newtonsches Abkühlungsgesetz, kleinste Quadrate; 95-%-Band bei einem auf 0,5 K genauen Thermometer; gerührter Ansatz in ruhiger Luft
card-cool-curve =
    { $readings ->
        [one] Abkühlkurve durch 1 Messwert, bis { $wanted }
       *[other] Abkühlkurve durch { $readings } Messwerte, bis { $wanted }
    }
card-temper = Die Abkühlphase angleichen
card-temper-about = { $mass } vom Ansatz löffelweise in die Schale rühren: Sie kommt auf { $wanted }. Dann geht sie ohne Klümpchen hinein, und nichts darin nimmt Schaden.
card-temper-unknown = Zuerst ein paar Löffel vom Ansatz in die Schale rühren, etwa so viel, wie darin ist.
card-temper-field = In die Schale eingerührt
card-temper-take = Zu entnehmen
card-temper-how = m_Schale·c_Schale·(T − T_Schale) ÷ (c_Ansatz·(T_Ansatz − T)), in der Mitte zwischen beiden
card-add = In den Ansatz geben
card-too-warm = Der Ansatz hat { $batch }; höchstens verträglich: { $bears } ({ $name }). Warten.

## Cards: the last water, pH, filling, the end.

card-top-up = Den Ansatz wiegen
card-gross-field = Ansatz mit Becherglas
card-empty-field = Dieses Becherglas leer
card-missing = Es fehlen
card-missing-how = alles Eingewogene − was da ist
card-missing-about = Was an anderen Gefäßen und Geräten hängen blieb, fehlt auch. Sie zuerst ausschaben: Nur Verdunstetes wird durch Wasser ersetzt.
card-heavier-about = Es wiegt mehr als die Einwaage: Ergänztes Wasser ist nicht verdunstet. Es ist nichts zuzugeben.
card-ph = Den pH-Wert messen
card-ph-about = Im abgekühlten Ansatz, mit heute kalibriertem pH-Meter. Tropfenweise einstellen, rühren, noch einmal messen.
card-ph-wanted = Ziel der Rezeptur: pH { $ph }.
card-fill = Abfüllen
card-count-field = Gefäße
card-each-field = In jedem
card-filled = { $count } × { $each }
card-fill-plan =
    { $full ->
        [one] { $full } volles Gefäß mit { $each }; Rest { $left }.
       *[other] { $full } volle Gefäße mit je { $each }; Rest { $left }.
    }
card-fill-alike = Oder alle { $count } gleich: je { $each }.
card-fill-density = Mit der aus den Rohstoffen geschätzten Dichte.
card-fill-density-measured = Mit der gemessenen Dichte.
card-fill-no-density = Keine Dichte bekannt: Was ein Gefäß fasst, lässt sich nicht berechnen. Eines füllen und wiegen.
card-finish = Ansehen und unterschreiben
card-will-draw = Vom Vorrat: { $items }.
card-yield = Ausbeute
card-yield-value = { $percent } %, { $filled } von { $of }
card-yield-how = abgefüllt ÷ eingewogen
card-explain-loss = Es fehlen mehr als 5 %: den Grund aufschreiben.

# Fixed texts of the page.
page-title = Ansätze
page-intro = Einwiegen, erwärmen, mixen, abfüllen, eins nach dem anderen. Jeder Schritt wird sofort gespeichert: Auch bei leerem Akku geht nichts verloren.
page-empty = Noch kein Ansatz. Eine Rezeptur öffnen, die Ansatzgröße angeben und den Ansatz herstellen.
page-resume = Weiter
page-open = Öffnen
page-remove = Löschen: { $name }
page-deleteRecord = Dieses Protokoll samt Journal löschen? Was gewogen und beobachtet wurde, steht sonst nirgends.
page-keepRecord = Behalten
page-deleteIt = Löschen
page-leave = Herstellung verlassen
page-left = Diese Herstellung ist gespeichert, wie sie steht. Vorerst verlassen?
page-leftUnkept = Noch nicht alles von dieser Herstellung ist gespeichert. Trotzdem verlassen?
page-notKept = Nicht gespeichert
page-stay = Bleiben
page-go = Verlassen
page-list = Alle Schritte
page-back = Zurücknehmen: { $act }
page-of = abgelaufen
page-done = erledigt
page-awake = Der Bildschirm bleibt an
page-hint = oder Leertaste drücken
page-record = Protokoll: { $name }
page-showRecord = Bisheriges Protokoll
page-timerStop = Anhalten
page-timerResume = Weiter
page-toList = Alle Ansätze
page-print = Protokoll drucken
page-takeBackFinish = Ansatz wieder öffnen
page-materials = Rohstoffe
page-material = Rohstoff
page-lot = Charge
page-expiry = Aufbrauchen bis
page-percent = %
page-target = Soll
page-weighed = Ist
page-deviation = Abweichung %
page-total = Summe
page-deviations = Abweichungen
page-noDeviations = Keine.
page-results = Ergebnis
page-composition = Im Tiegel, wo es vom Plan abweicht
page-findings = Was die Prüfungen dazu sagen
page-dates = Haltbarkeit
page-fields = Angaben
page-log = Verlauf
page-takenBack = zurückgenommen
page-signatures = Unterschriften
page-journal = Journal
page-journalIntro = Nachsehen an Tag 0, 1, 7, 30 und 90 oder an jedem anderen Tag.
page-lookToday = Heute eintragen
page-onDay = Oder für einen anderen Tag
page-write = Eintragen
page-reminders = Erinnern: Kalenderdatei speichern
page-addPhoto = Foto hinzufügen und Farbe ablesen
page-photoHelp = Weißes Papier neben das Produkt legen, im selben Licht, ohne Blitz. Fotos bleiben auf diesem Gerät.
page-tapWhite = Auf das weiße Papier tippen.
page-tapProduct = Jetzt auf das Produkt tippen.
page-again = Weiß noch einmal antippen
page-photoOf = Foto
page-close = Schließen
page-takeOut = Entfernen
page-noPhoto = Dieses Foto ist nicht auf diesem Gerät.
page-photoFailed = Das Foto ließ sich nicht lesen oder speichern.
page-colour = Farbe
page-ahead--title = Was folgt
page-ahead--done = fertig
page-ahead--now = jetzt
page-ahead--next = dann
