# Extracts: a glycerite or solution that is planned, made, verified and used.

## What a field takes.

takes-day = ein Tag des Kalenders, etwa 2026-03-01
takes-temperature = eine Temperatur wie 20 °C oder 68 °F
takes-volume = ein Volumen wie 250 ml
takes-activity = eine Wasseraktivität zwischen 0 und 1 wie { $number }
takes-liquid-per-plant = Gramm Flüssigkeit je Gramm Pflanze, etwa { $number }
takes-refractometer = was das Refraktometer zeigt, etwa 50 oder { $number }
takes-hydrometer = was das Aräometer zeigt, etwa { $number }
takes-scale-step = der kleinste Schritt der Skala, etwa { $number }
takes-ph = ein pH-Wert von 0 bis 14 wie { $number }, oder nichts
takes-mass = eine Masse wie { $number }, { $number } g oder 2 oz
takes-mass-or-all = eine Masse wie { $number } g, oder nichts für alles
takes-percent = ein Prozentwert wie { $number }
not-a-day = „{ $text }“ ist kein Tag. Einen Tag des Kalenders eingeben, etwa 2026-03-01.

## Acts, for undo.

act-new = neuer Auszug
act-delete = Auszug gelöscht
act-example = Beispiel zurückgeholt
act-step = Änderung eines Auszugs
act-solve = Mengen eines Auszugs
act-blend = Mischung
act-shelve = Auszug unter den Rohstoffen
act-use = Auszug in einer Rezeptur
act-other = Auszug

## Days.

## Why an extract comes to nothing yet.

no-plant-water = Wie viel Wasser in der Pflanze ist, ist noch nicht bekannt. Eine Pflanze wählen, den Wassergehalt in Prozent eingeben oder eine Probe wiegen, bis zur Massekonstanz trocknen und noch einmal wiegen.
nothing-planned = Noch ist nichts im Glas. Angeben, wie viel Pflanze und wie viel Glycerin.
no-material = Zuerst den Rohstoff wählen.
nothing-to-mix = Es gibt nichts zu rechnen: Eine Masse steht noch auf 0.
numbers-too-large = Mit so großen Zahlen lässt sich nicht rechnen.
not-a-share = { $share }: { $value } %. Möglich sind { $minimum } bis { $maximum } %.
nothing-left = { $substance }: { $available } g sind da, { $taken } g gingen weg. Zum Ablaufen bleibt nichts.
out-of-reach =
    { $reason ->
        [plant-water] { $target } ist nicht erreichbar: Das Wasser der Pflanze verdünnt weiter. Mehr Flüssigkeit je Gramm Pflanze nehmen oder die Pflanze erst trocknen. Am nächsten kommt { $nearest }.
        [nothing-stronger] { $target } ist nicht erreichbar: Nichts hier ist stark genug. Am nächsten kommt { $nearest }.
        [nothing-weaker] { $target } ist nicht erreichbar: Nichts hier ist schwach genug. Am nächsten kommt { $nearest }.
       *[not-enough] { $target } ist nicht erreichbar: Es ist nicht genug davon da. Am nächsten kommt { $nearest }.
    }
activity-out-of-reach =
    { $reason ->
        [plant-water] Eine Wasseraktivität von { $target } ist nicht erreichbar: Das Wasser der Pflanze verdünnt weiter. Mehr Flüssigkeit je Gramm Pflanze nehmen oder die Pflanze erst trocknen. Am nächsten kommt { $nearest }.
        [nothing-stronger] Eine Wasseraktivität von { $target } ist nicht erreichbar: Nichts hier ist stark genug. Am nächsten kommt { $nearest }.
        [nothing-weaker] Eine Wasseraktivität von { $target } ist nicht erreichbar: Nichts hier ist schwach genug. Am nächsten kommt { $nearest }.
       *[not-enough] Eine Wasseraktivität von { $target } ist nicht erreichbar: Es ist nicht genug davon da. Am nächsten kommt { $nearest }.
    }
gained-mass = Es wiegt jetzt mehr ({ $now } g) als vorher ({ $before } g). Wasser geht nur verloren; noch einmal wiegen und die Masse des Glases abziehen.
read-as-water = Das ist der Messwert von Wasser, und der Plan hat { $planned } % Glycerin. Das Gerät mit Wasser auf null stellen, das Prisma trocknen und einen frischen Tropfen messen.
reading-outside = Keine solche Flüssigkeit zeigt { $reading }: Diese könnte { $minimum } bis { $maximum } zeigen. Skala des Geräts und Temperatur prüfen.
unusable-readings = Eingeben, was Refraktometer oder Aräometer zeigt.
physics-out-of-range = Kein Ergebnis: Veröffentlicht ist es nur von { $minimum } bis { $maximum } ({ $quantity }); hier sind es { $value }.
physics-no-data = Kein Ergebnis ({ $quantity }): Für eine Flüssigkeit mit { $substance } sind keine verlässlichen Werte veröffentlicht.
too-many-steps = Ein Auszug fasst höchstens { $most } Schritte. Erst einen entfernen oder einen neuen Auszug beginnen.

## Quantities, shares and substances in such a sentence. The word comes along, with a key.

quantity =
    { $key ->
        [temperature] Temperatur
        [brix] Brix
        [ethanol-by-volume] Alkoholgehalt
        [water-activity] Wasseraktivität
        [molality] Molalität
        [mass] Masse
        [volume] Volumen
        [density] Dichte
        [share] Anteil
        [resolution] Ablesbarkeit
        [refractive-index] Brechungsindex
        [specific-gravity] relative Dichte
        [viscosity] Viskosität
        [freezing-point] Gefrierpunkt
        [evaporation] Verdunstung
        [mass-fraction] Massenanteil
        [glycerol] Glycerinanteil
        [dissolved-solids] gelöste Stoffe
        [liquid-per-dry-marc] Flüssigkeit je trockenem Pressrückstand
        [purity-of-the-glycerin] Gehalt des Glycerins
        [purity-of-the-solvent] Gehalt des Lösungsmittels
        [purity] Gehalt
        [strength] Gehalt
        [glycerin] Glycerin
        [water-of-the-plant] Wassergehalt der Pflanze
        [liquid-left-in-the-marc] Flüssigkeit im Pressrückstand
        [other-solvent] anderes Lösungsmittel
        [headspace] Kopfraum
        [preservative] Konservierungsstoff
        [wanted] gewünschter Anteil
        [soluble-share-least] löslicher Anteil, mindestens
        [soluble-share-typical] löslicher Anteil, üblich
        [soluble-share-most] löslicher Anteil, höchstens
       *[any] { $word }
    }
substance =
    { $key ->
        [glycerin] Glycerin
        [plant] Pflanze
        [solvent] Lösungsmittel
        [liquid] Flüssigkeit
        [menstruum] Auszugsmittel
        [water] Wasser
        [stock-solution] Stammlösung
        [propylene-glycol] Propylenglycol
        [propanediol] Propandiol
        [ethanol] Ethanol
       *[any] { $word }
    }
unit-percent-by-volume = { $number } % (V/V)

## Plants, as the catalogue knows them.

plant-choice = { $plant }, { $part }, { $state }
plant-choice-by-limit = { $plant }, { $part }, { $state }, nach Höchstwert
plant-water = { $percent } % davon sind Wasser ({ $source }).
plant-water-at-most = { $percent } % davon sind Wasser (höchstens; { $source }).
plant-water-in-range = { $percent } % davon sind Wasser ({ $range } in den Quellen; { $source }).
plant-water-weighed = Nach der eigenen Wägung sind { $percent } % davon Wasser.

## What a liquid is made of.

part-glycerin = Glycerin
part-water = Wasser
part-propylene-glycol = Propylenglycol
part-propanediol = Propandiol
part-ethanol = Alkohol
part-plant-solids = Gelöste Pflanzenstoffe, etwa
range = { $low } bis { $high }
water-arithmetic = Wasser: { $plant } aus der Pflanze + { $glycerin } mit Glycerin und Lösungsmittel + { $added } zugegeben − { $evaporated } verdunstet.
pressing = Abgepresst: { $pressed }; { $held } derselben Flüssigkeit bleiben im Pressrückstand.
glycerin-arithmetic = Glycerin: { $mass } × { $purity } % = { $pure }
solids-arithmetic = Geschätzt: 20 bis 70 % der Trockensubstanz der Pflanze lösen sich, gerechnet wird mit 40 % (gängige Praxis). Für die einzelne Charge weiß es niemand, daher ein Bereich.

## What to expect of it: a figure, what it rests on, and where that was published.

figure-activity = Wasseraktivität bei 25 °C
figure-activity-how = Glycerin, jedes andere Lösungsmittel und die gelösten Pflanzenstoffe je für sich in allem Wasser gerechnet und multipliziert. Das obere Ende rechnet mit keiner Wirkung der Pflanzenstoffe; danach wird die Haltbarkeit beurteilt.
figure-activity-source = Scott WJ, Advances in Food Research 7:83 (1957) und spätere Messungen; Ross KD, Food Technology 29:26 (1975)
figure-volume = Volumen
figure-volume-how = Masse geteilt durch Dichte.
figure-brix = Refraktometer
figure-brix-how = Der Brechungsindex auf der Brix-Skala, die für Zucker gemacht ist: 65 % Glycerin zeigen etwa 50.
figure-brix-source = ICUMSA SPS-3, abgedruckt in OIV-MA-AS2-02
figure-brix-corrected = Refraktometer mit Temperaturkorrektur
figure-brix-corrected-how = Dasselbe mit der Korrektur für Zucker, die ein solches Gerät einrechnet.
figure-brix-corrected-source = International Temperature Correction Table 1936
figure-index = Brechungsindex
figure-index-how = Der Brechungsindex von Glycerin in Wasser, und von Zucker für die Pflanzenstoffe, nach Volumen addiert.
figure-index-source = Hoyt LF, Oil & Soap 10:43 (1933); bekannt auf 0,0005
figure-gravity = Aräometer
figure-gravity-how = Was ein Aräometer für 20 °C zeigt: Dichte geteilt durch die von Wasser, mit dem Glas bei dieser Temperatur.
figure-gravity-source = Wasser: Tanaka M et al., Metrologia 38:301 (2001)
figure-density = Dichte
figure-density-how = Dichte von Glycerin und Wasser mit ihrer Volumenkontraktion beim Mischen; gelöste Pflanzenstoffe werden als Zucker gerechnet.
figure-density-source = Volk A, Kähler CJ, Experiments in Fluids 59:75 (2018); bekannt auf 0,1 %
figure-viscosity = Viskosität
figure-viscosity-how = Nur von Glycerin und Wasser; Pflanzenstoffe machen dickflüssiger.
figure-viscosity-source = Cheng N-S, Industrial & Engineering Chemistry Research 47:3285 (2008); auf 5 % genau
figure-freezing = Beginnt zu gefrieren bei
figure-freezing-how = Nur von Glycerin und Wasser; Pflanzenstoffe senken ihn ein wenig.
figure-freezing-source = CRC Handbook; Lange’s Handbook; Lane LB, Industrial & Engineering Chemistry 17:924 (1925)

## What was done to it after pressing.

step-glycerin = { $mass } Glycerin { $purity } % zugegossen
step-water = { $mass } Wasser zugegossen
step-weighed = nach dem Verdunsten noch einmal gewogen: { $mass }
step-measured = gemessen: { $percent } % Glycerin

## Names and the list of extracts.

new-glycerite = Neues Glycerit
new-solution = Neue Stammlösung
new-alcohol = Alkohol, verdünnt
name-of-blend = { $name }, gemischt
about-glycerite-unknown = Noch nicht berechnet
about-glycerite = { $percent } % Glycerin
about-glycerite-made = { $percent } % Glycerin · { $day }
about-solution-unknown = Stammlösung
about-solution = { $percent } % { $substance }
about-alcohol = Alkohol { $percent } % vol
deleted = „{ $name }“ ist gelöscht. Ein daraus gemachter Rohstoff bleibt im Regal.

## Working backwards, adjusting, evaporating.

solved = Pflanze { $plant }, Glycerin { $glycerin }, Wasser dazu { $water }
solved-with-solvent = Pflanze { $plant }, Glycerin { $glycerin }, anderes Lösungsmittel { $solvent }, Wasser dazu { $water }
solved-gives = Ergibt { $mass } Flüssigkeit mit { $percent } % Glycerin.
use-amounts = Diese Mengen übernehmen
pour-in-water = { $mass } Wasser zugießen: Dann sind es { $whole } mit { $percent } % Glycerin.
pour-in-glycerin = { $mass } Glycerin { $purity } % zugießen: Dann sind es { $whole } mit { $percent } % Glycerin.
poured-in = Zugegossen
already = Es hat schon { $percent } %.
evaporated = { $lost } Wasser sind weg; der Rest hat { $percent } % Glycerin. Mit { $lost } Wasser ist es wieder wie vorher.
note-evaporation = Von jetzt an damit rechnen

## Readings of instruments.

verified = { $percent } % Glycerin, zwischen { $low } und { $high } %.
agrees-with-plan = Die berechneten { $percent } % liegen darin.
differs-from-plan = Die berechneten { $percent } % liegen nicht darin. Die Messung ist verlässlicher: umrühren, noch einmal ablesen, dann damit rechnen.
solids-counted = Gelöste Pflanzenzucker erhöhen beide Anzeigen: Hier sind { $low } bis { $high } % davon gerechnet. Refraktometer und Aräometer zusammen engen den Bereich ein.
solids-found = Beide Messwerte zusammen lassen { $low } bis { $high } % Pflanzenstoffe zu.
solids-disagree = Beide Messwerte zusammen verlangen { $low } bis { $high } % Pflanzenstoffe, anders als angenommen. Einer davon kann falsch sein; angegeben ist der weitere Bereich.
use-measured = Mit dem gemessenen Gehalt rechnen

## Blending.

blend-amount = { $mass }: { $name }
blend-gives = Zusammen { $mass } mit { $percent } % Glycerin.
make-blend = Die Mischung als neuen Auszug eintragen

## On the shelf of materials, and in a formula.

shelf-part = { $name } { $percent } %
shelve = Unter die Rohstoffe aufnehmen
shelve-again = Rohstoff aktualisieren
shelved = „{ $name }“ steht unter den Rohstoffen.
name-on-shelf = { $name }, Charge { $lot }
made-on = Hergestellt am { $day }.
plant-solids = Gelöste Pflanzenstoffe
plant-solids-of = Gelöste Pflanzenstoffe: { $plant }
not-on-shelf = Erst unter die Rohstoffe aufnehmen; dann kann eine Rezeptur es verwenden.
no-formula = Keine Rezeptur ist offen. Zuerst eine im Regal öffnen.
add-to = { $percent } % davon in „{ $formula }“
shelve-and-add = Unter die Rohstoffe aufnehmen, dann { $percent } % davon in „{ $formula }“
added-to = In „{ $formula }“: { $name }.
formula-does-not-total = „{ $name }“ ergäbe damit nicht 100 %. Erst eine Zeile auf 100 % auffüllen lassen.
compared = „{ $formula }“ mit { $percent } % davon, und mit ebenso viel Glycerin und Wasser an seiner Stelle.

## Whether it keeps: the verdict, and the steps of the scale.

verdict-nothing-multiplies = Trocken genug, dass sich nichts Bekanntes darin vermehrt. Zellen und Sporen können trotzdem darin überleben.
verdict-osmophilic-yeasts = Nur zucker- und trockenheitsliebende Hefen und Schimmelpilze vermehren sich darin.
verdict-xerophilic-moulds = Einige Schimmelpilze und Hefen vermehren sich darin, aber kein bekanntes Bakterium.
verdict-toxin-forming-moulds = Schimmelpilze, die Gifte bilden, können sich darin vermehren. Durch das Glycerin allein ist es nicht haltbar.
verdict-most-moulds = Die meisten Schimmelpilze vermehren sich darin, vielleicht auch Staphylococcus. Durch das Glycerin ist es nicht haltbar.
verdict-many-yeasts = Schimmelpilze, viele Hefen und Staphylococcus vermehren sich darin. Es ist nicht haltbar.
verdict-many-bacteria = Viele Bakterien vermehren sich darin. Es verdirbt in wenigen Tagen.
verdict-nearly-everything = Fast alles vermehrt sich darin. Es verdirbt in wenigen Tagen.
keep-nothing-multiplies = nichts Bekanntes
keep-osmophilic-yeasts = zuckerliebende Hefen
keep-xerophilic-moulds = trockenheitsliebende Schimmel
keep-toxin-forming-moulds = giftbildende Schimmel
keep-most-moulds = die meisten Schimmel
keep-many-yeasts = viele Hefen
keep-many-bacteria = viele Bakterien
keep-nearly-everything = fast alles
scale-mark = { $activity } { $what }
scale-here = ≤ { $activity }
scale-description =
    { $criterion ->
        [met] Skala von Wasser unten bis zu reinem Glycerin oben. Diese Flüssigkeit steht, wo { $percent } % Glycerin stünden: Ihre Wasseraktivität beträgt bis zu { $activity }; dabei vermehren sich: { $what }. Das Kriterium der ISO 29621, eine Wasseraktivität von höchstens 0,75, ist erfüllt.
       *[missed] Skala von Wasser unten bis zu reinem Glycerin oben. Diese Flüssigkeit steht, wo { $percent } % Glycerin stünden: Ihre Wasseraktivität beträgt bis zu { $activity }; dabei vermehren sich: { $what }. Das Kriterium der ISO 29621, eine Wasseraktivität von höchstens 0,75, ist nicht erfüllt.
    }

## Whether it keeps: low risk, what it needs, until when.

not-low-risk = Nach ISO 29621:2017 ist es nicht mikrobiologisch risikoarm: Die Wasseraktivität beträgt bis zu { $activity }, mehr als 0,75.
# The grounds are some of those below.
low-risk = Nach ISO 29621:2017 ist es mikrobiologisch risikoarm ({ $grounds }). Das ersetzt weder sauberes Arbeiten noch einen Test.
ground-water-activity = Wasseraktivität 0,75 oder weniger
ground-alcohol = mehr als 20 % Alkohol
ground-acid = pH 3,0 oder weniger
ground-alkaline = pH 10,0 oder mehr
needs-nothing = So wie es ist, verlangt nichts nach einem Konservierungsstoff. In einem Produkt verdünnt braucht es, was das Produkt braucht.
needs-few-and-slow = Geringes Risiko, aber nicht keines: Wenige Hefen und Schimmelpilze wachsen langsam darin. Sauber arbeiten und binnen Monaten aufbrauchen.
needs-against-yeasts-and-moulds = Es braucht einen Konservierungsstoff gegen Hefen und Schimmelpilze, etwa Kaliumsorbat unter pH 5,5, oder mehr Glycerin.
needs-against-all = Es braucht einen Konservierungsstoff gegen Bakterien, Hefen und Schimmelpilze in passendem pH-Wert und passender Menge, oder mehr Glycerin. Ohne beides: wenige Tage, im Kühlschrank.
preserved-against-yeasts-and-moulds = Angegeben ist: konserviert. Gegen Hefen und Schimmelpilze, in richtiger Menge und bei richtigem pH-Wert, ist das, was es braucht.
preserved-against-all = Angegeben ist: konserviert. Es muss gegen Bakterien, Hefen und Schimmelpilze wirken, in richtiger Menge und bei richtigem pH-Wert. Ob es das tut, zeigt nur ein Konservierungsbelastungstest.
use-by-day =
    { $place ->
        [refrigerated] Aufbrauchen bis { $day }, im Kühlschrank aufbewahrt.
       *[cool] Aufbrauchen bis { $day }, kühl und dunkel aufbewahrt.
    }
use-within-days =
    { $place ->
        [refrigerated] Binnen { $days } Tagen nach der Herstellung aufbrauchen, im Kühlschrank aufbewahrt.
       *[cool] Binnen { $days } Tagen nach der Herstellung aufbrauchen, kühl und dunkel aufbewahrt.
    }
use-by-basis = Diese Frist ist gängige Praxis, knapp bemessen, und kein Test. Bei den ersten Anzeichen von Gas, Trübung, Schleim, Schimmel oder fremdem Geruch wegwerfen.
ph-missing = Der pH-Wert ist nicht gemessen: Ob ein Konservierungsstoff darin wirkt, lässt sich nicht sagen.
not-measured = Der Gehalt ist berechnet, nicht gemessen. Vor dem Verwenden mit Refraktometer oder Aräometer prüfen.
minima-basis = Die meisten Mindestwerte stammen aus Lebensmitteln mit Salz oder Zucker; in Glycerin können sie tiefer oder höher liegen. Kondenswasser an Deckel und Oberfläche ist Wasser: umrühren und den Deckel trocken halten.

## Organisms: their least water activity, and where it was published. Names and sources come along, with a key.

organism-published =
    { $kind ->
        [bacterium] Bakterium · ab { $minimum } · { $source }
        [yeast] Hefe · ab { $minimum } · { $source }
       *[mould] Schimmelpilz · ab { $minimum } · { $source }
    }
organism-from-memory =
    { $kind ->
        [bacterium] Bakterium · ab { $minimum } · { $source } (aus dem Gedächtnis, noch zu prüfen)
        [yeast] Hefe · ab { $minimum } · { $source } (aus dem Gedächtnis, noch zu prüfen)
       *[mould] Schimmelpilz · ab { $minimum } · { $source } (aus dem Gedächtnis, noch zu prüfen)
    }
organism-name =
    { $key ->
        [clostridium-botulinum-non-proteolytic] Clostridium botulinum, nicht proteolytisch
        [burkholderia-cepacia-complex] Burkholderia-cepacia-Komplex
        [clostridium-botulinum-a-and-b] Clostridium botulinum A und B
        [fusarium-and-penicillium-that-form-mycotoxins] Fusarium und Penicillium, die Mykotoxine bilden
       *[any] { $word }
    }
organism-source =
    { $key ->
        [fda-bad-bug-book-1992-table-of-growth-factors] FDA Bad Bug Book (1992), Tabelle der Wachstumsfaktoren
        [food-pathogen-control-data-summary-citing-hauschild-1989-and-nzfsa-2001] Datenübersicht zu Krankheitserregern in Lebensmitteln, nach Hauschild (1989) und NZFSA (2001)
        [icmsf-microorganisms-in-foods-5-1996-as-cited-in-the-fda-bad-bug-book] ICMSF, Microorganisms in Foods 5 (1996), nach dem FDA Bad Bug Book
        [review-chapter-2019-doi-10-1016-b978-0-12-816333-7-00009-6-table-9-3] Übersichtskapitel (2019), doi 10.1016/B978-0-12-816333-7.00009-6, Tabelle 9.3
        [usp-general-chapter-1112-representative-microorganisms] USP, allgemeines Kapitel <1112>, beispielhafte Mikroorganismen
        [note-of-a-maker-of-laboratory-equipment-on-water-activity-in-quality-control-2024] Mitteilung eines Herstellers von Laborgeräten zur Wasseraktivität in der Qualitätskontrolle (2024)
       *[any] { $word }
    }

## Stock solutions and alcohol.

weigh-out = { $mass } { $name }
portion = { $portion } davon bringen { $wanted } % in einen Ansatz von { $batch }.
no-preservative = Eine wässrige Lösung verdirbt in wenigen Tagen. Angeben, welcher Konservierungsstoff hineinkommt und wie viel, oder sie frisch ansetzen.
alcohol-amount = { $volume } ({ $mass }) Alkohol { $percent } % vol
water-amount = { $volume } ({ $mass }) Wasser
alcohol-makes = Zusammen ergeben sie { $volume } bei 20 °C: { $contraction } weniger als die Summe, wegen der Volumenkontraktion von Alkohol und Wasser. Besser wiegen als messen.
alcohol-caution = Starker Alkohol und sein Dampf brennen: keine Flamme, frische Luft, geschlossenes Gefäß. Dichten: OIML R 22 (1975).

# Fixed texts of the page.
page-title = Auszüge
page-intro = Ein Glycerit (Glycerinauszug) planen, das Ergebnis prüfen, sehen, ob es haltbar ist, und es in einer Rezeptur verwenden.
page-newGlycerite = Neues Glycerit
page-newSolution = Neue Stammlösung
page-newAlcohol = Alkohol verdünnen
page-example = Erfundenes Beispiel hierherholen
page-empty = Noch kein Auszug. Ein Glycerit, eine Stammlösung oder eine Alkoholverdünnung anlegen.
page-remove = Löschen
page-name = Name
page-step = Schritt
page-stepNames--plan = Planen
page-stepNames--keeping = Haltbarkeit
page-stepNames--measure = Messen und verwenden
page-plan = Plan
page-plant = Pflanze
page-ownPlant = andere Pflanze
page-plantName = Welche Pflanze
page-waterFrom = Wasser der Pflanze
page-waterFroms--catalogue = aus dem Katalog
page-waterFroms--percent = als Prozentwert
page-waterFroms--weighed = gewogen, getrocknet, gewogen
page-plantWater = Wassergehalt
page-sampleFresh = Probe, frisch
page-sampleDried = Probe, ganz getrocknet
page-plantMass = Pflanze
page-glycerin = Glycerin
page-purity = Gehalt des Glycerins
page-addedWater = Zugesetztes Wasser
page-solvent = Anderes Lösungsmittel
page-solvents--none = keines
page-solvents--propanediol = Propandiol
page-solvents--propylene-glycol = Propylenglycol
page-solvents--ethanol = Alkohol
page-solventMass = Menge davon
page-solventPurity = Gehalt nach Masse
page-press = Abgepresst
page-presses--hand = von Hand
page-presses--press = mit einer Presse
page-presses--yield = eigene Ausbeute
page-pressYield = Ablaufende Flüssigkeit
page-evaporation = Verdunstet
page-temperature = Ablesen und Gießen bei
page-blended = Eine Mischung: Es gibt keinen Plan zu ändern.
page-expected = Zu erwarten
page-figuresHelp = Eine Zeile öffnen für Rechenweg und Quelle.
page-keeps = Ist es haltbar?
page-ph = Gemessener pH-Wert
page-preserved = Konservierungsstoff darin
page-preserveds--no = nein
page-preserveds--yes = ja, in üblicher Menge
page-multiply = Können sich darin vermehren: { $count }
page-heldBack = Gehemmt: { $count }
page-water = Wasser
page-pure = reines Glycerin
page-criterion = Kriterium der ISO 29621
page-use = Etikett und Verwendung
page-madeOn = Hergestellt am
page-lot = Charge
page-note = Notiz
page-usePercent = Prozent der Rezeptur
page-constituent = Inhaltsstoff
page-with = mit
page-without = ohne
page-verify = Durch Messung prüfen
page-optical = Refraktometer
page-opticals--brix = Brix
page-opticals--brix-corrected = Brix, mit Temperaturausgleich
page-opticals--index = Brechungsindex
page-opticalValue = Refraktometer zeigt
page-opticalStep = Teilung des Refraktometers
page-gravityValue = Aräometer zeigt
page-gravityStep = Teilung des Aräometers
page-calibrated = Bezugstemperatur
page-readingTemperature = Flüssigkeit bei
page-adjust = Einstellen und mischen
page-adjustTarget = Glycerin gewünscht
page-steps = Nach dem Abpressen getan
page-takeBack = Weglassen: { $step }
page-massNow = Wiegt jetzt, nach offenem Stehen
page-blendWith = Mischen mit
page-addBatch = Hinzufügen: { $name }
page-addMaterial = Rohstoff hinzufügen
page-batchMass = Menge: { $name }
page-leaveOut = Weglassen: { $name }
page-solve = Rückwärts rechnen
page-wantedBy = Gewünscht
page-wantedBys--glycerin = Glycerin
page-wantedBys--activity = Wasseraktivität
page-wantedGlycerin = Glycerin in der Flüssigkeit
page-wantedActivity = Wasseraktivität höchstens
page-wantedSize = Ausgehend von
page-wantedSizes--plant = der Pflanze
page-wantedSizes--glycerin = dem Glycerin
page-wantedSizes--jar = einem Glas
page-wantedSizes--finished = einem Volumen
page-wantedSizeHelp--plant = Die ganze Pflanze von oben; Glycerin und Wasser werden berechnet.
page-wantedSizeHelp--glycerin = Die ganze Pflanze und das ganze Glycerin von oben; das Wasser wird berechnet.
page-wantedSizeHelp--jar = Pflanze und Flüssigkeit füllen ein Glas.
page-wantedSizeHelp--finished = So viel abgepresste Flüssigkeit.
page-menstruumPerPlant = Flüssigkeit je Gramm Pflanze
page-jarVolume = Glas randvoll
page-headspace = Bleibt leer
page-finishedVolume = Abgepresste Flüssigkeit
page-solution = Stammlösung
page-choose = Wählen
page-chosen = { $label }: { $name }
page-substance = Stoff
page-solventMaterial = Lösungsmittel
page-preservativeMaterial = Konservierungsstoff
page-strength = Gehalt
page-substancePurity = Reinheit des Stoffs
page-preservative = Konservierungsstoff in der Lösung
page-total = Herzustellen
page-wantedPercent = Gewünscht im Ansatz
page-batch = Ansatz
page-alcohol = Alkohol in % vol
page-strong = Stärkerer Alkohol
page-weak = Schwächerer, 0 für Wasser
page-target = Gewünscht
page-alcoholVolume = Volumen
page-alcoholOf = Dieses Volumen gilt für
page-alcoholOfs--mixture = die Mischung
page-alcoholOfs--strong = den stärkeren
page-alcoholOfs--weak = den schwächeren
page-byHydrometer = Auch mit dem Aräometer
