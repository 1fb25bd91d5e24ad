# Materials: what there is of them, what is known of them, and tables of them.

## What a maker has.

not-a-currency = Eine Währung hat drei Buchstaben, etwa EUR, USD oder GBP.
currency-without-price = Zuerst den Preis eingeben: Eine Währung allein stünde für einen Preis von nichts.
not-a-day = Das ist kein Tag des Kalenders. Als Jahr-Monat-Tag eingeben, etwa 2027-05-31, oder nichts.
price-per-hundred-grams = { $amount } { $currency } für 100 g
price-with-currency = { $amount } { $currency }
price-noted = Preis vom { $day }.
price-before = Davor: { $price }, notiert am { $day }.
price-before-pack = Davor: { $price } für { $pack }, notiert am { $day }.
cell-incomplete = Ein Betrag braucht seine Währung und ein Versand seinen Preis.
past-its-date = Abgelaufen: aufzubrauchen bis { $day }.
your-own-source = auf diesem Gerät eingegeben, anstelle des Werts im Katalog
your-own-basis = eigene

## Tables of own materials.

table-too-large = Die Datei ist größer als jede Tabelle von Rohstoffen; höchstens 2 MB werden gelesen.
table-not-utf8 = Zeile { $line } ist nicht in UTF-8 geschrieben. Die Tabelle als „CSV UTF-8“ speichern und noch einmal versuchen.
table-no-name-column = Die erste Zeile muss die Spalten nennen, und eine davon muss „name“ heißen. Die anderen dürfen inci, class, phase, density, parts und note sein.
table-too-many-lines = Die Tabelle hat mehr als { $most } Zeilen. Nichts wurde gelesen.
table-empty = Die Tabelle enthält keinen Rohstoff.
table-sound =
    { $rows ->
        [one] Ein Rohstoff wurde gelesen, und nichts ist daran falsch.
       *[other] { $rows } Rohstoffe wurden gelesen, und nichts ist daran falsch.
    }
table-wrong =
    { $problems ->
        [one] Ein Fehler ist darin, deshalb kann noch nichts übernommen werden.
       *[other] { $problems } Fehler sind darin, deshalb kann noch nichts übernommen werden.
    }
materials-imported =
    { $count ->
        [one] Ein Rohstoff ist übernommen.
       *[other] { $count } Rohstoffe sind übernommen.
    }
# What is wrong with a cell is one of those below.
cell-problem = Zeile { $line }, { $column }: { $problem }
cell-no-name = der Name fehlt
cell-name-twice = derselbe Name steht in Zeile { $first }
cell-too-long = der Text ist länger als { $most } Zeichen
cell-spreadsheet-formula = der Text beginnt wie eine Formel der Tabellenkalkulation; ohne dieses Zeichen schreiben
cell-unknown-class = „{ $text }“ ist keine Art von Rohstoff; gelesen werden Wörter wie oil, humectant, emulsifier oder active
cell-unknown-phase = „{ $text }“ ist keine Phase; gelesen werden heated-water, heated-oil, cool-down oder room-temperature
cell-unknown-material = kein Rohstoff heißt „{ $name }“; Bestandteile werden so geschrieben: „65 % Glycerin, pflanzlich; q.s. Wasser, destilliert“
cell-parts-out-of-balance = die Bestandteile ergeben nicht 100 %
cell-too-many-cells = es sind mehr Zellen als Spalten

## Values of the catalogue.

figure-in-range = { $figure } ({ $low } bis { $high })
range = { $low } bis { $high }
value-with-conditions = { $value }, { $conditions }
value-with-note = { $value } ({ $note })
value-with-conditions-and-note = { $value }, { $conditions } ({ $note })
source = { $citation }, { $locator }
basis-published = veröffentlicht
basis-computed = berechnet
basis-supplier-typical = typisch für Lieferanten
basis-memory = aus dem Gedächtnis, noch zu prüfen

source-of = { $kind }, { $edition }

## What the fatty acids of a fat say.

from-fatty-acids = aus den Fettsäuren berechnet; Unverseifbares ist nicht berücksichtigt
takes-up-oxygen = Wird ranzig
oxidation-slow = langsam, nach den Fettsäuren; Licht, Luft und Metalle beschleunigen es
oxidation-moderate = nicht schnell, nach den Fettsäuren; Licht, Luft und Metalle beschleunigen es
oxidation-fast = schnell, nach den Fettsäuren; kühl, dunkel und verschlossen aufbewahren
oxidation-very-fast = sehr schnell, nach den Fettsäuren; gekühlt aufbewahren und bald aufbrauchen

## Properties.

property =
    { $property ->
        [usual-percent] Übliche Einsatzkonzentration
        [usual-ph] pH-Bereich
        [max-add-temperature] Höchstens einarbeiten bei
        [heat-sensitive] Hitzeempfindlich
        [charge] Ladung
        [density] Dichte
        [melting-point] Schmelzpunkt
        [refractive-index] Brechungsindex
        [specific-heat] Spezifische Wärmekapazität
        [boiling-point] Siedepunkt
        [flash-point] Flammpunkt
        [lower-flammable-limit] Untere Explosionsgrenze
        [heat-of-vaporization] Verdampfungswärme
        [heat-of-fusion] Schmelzwärme
        [permittivity] Relative Permittivität
        [hansen-dispersion] Hansen-Parameter, Dispersion
        [hansen-polar] Hansen-Parameter, polar
        [hansen-hydrogen] Hansen-Parameter, Wasserstoffbrücken
        [hlb] HLB-Wert
        [required-hlb] Erforderlicher HLB-Wert, Öl-in-Wasser
        [required-hlb-water-in-oil] Erforderlicher HLB-Wert, Wasser-in-Öl
        [saponification-value] Verseifungszahl
        [iodine-value] Iodzahl
        [molar-mass] Molare Masse
        [water-solubility] Löst sich in Wasser
        [log-kow] log P (Octanol/Wasser)
        [pka-1] pKs 1
        [pka-2] pKs 2
        [pka-3] pKs 3
        [pka-4] pKs 4
        [water-content] Wasser darin
        [shelf-life] Ungeöffnet haltbar
       *[other] Wert
    }

## Units behind a number.

unit-percent-by-volume = { $number } % (V/V)
unit-grams-in-water = { $number } g/100 g Wasser
unit-months = { $number } Monate
unit-ph = pH { $number }
held-lot = Charge { $lot }
held-until = Verbrauchen bis { $day }
held-past = Abgelaufen am { $day }

# Fixed texts of the page.
page-title = Rohstoffe
page-search = Suche nach Name, INCI, Zweck oder CAS-Nummer
page-own = Eigene Rohstoffe
page-none = Einen Rohstoff wählen, um zu sehen, was über ihn bekannt ist.
page-noOwn = Noch keine. Ein Glycerit, eine Stammlösung oder eine gekaufte Mischung gehört hierher.
page-newComposite = Neue Mischung
page-newSimple = Neuer Einzelrohstoff
page-found = Gefunden
page-nothing = Nichts gefunden. Schreibweise prüfen oder als eigenen Rohstoff anlegen.
page-name = Name des Rohstoffs
page-inci = INCI-Bezeichnung
page-class = Art des Rohstoffs
page-phase = Übliche Phase
page-density = Dichte
page-note = Notiz
page-parts = Besteht aus
page-addPart = Bestandteil hinzufügen
page-removePart = Entfernen: { $name }
page-partsTotal = Bestandteile ergeben { $percent } %
page-partOf = Prozent: { $name }
page-brings = Bringt mit
page-values = Bekannte Werte
page-usedIn = Verwendet in
page-notUsed = Keine Rezeptur verwendet ihn.
page-copy = Als eigenen Rohstoff kopieren
page-remove = Löschen
page-valuesHelp = Jeder Wert mit seiner Quelle und damit, wie weit ihm zu trauen ist.
page-noValues = Kein Wert bekannt: Das sagt nichts über den Rohstoff.
page-everyClass = alle Arten
page-everyPhase = alle Phasen
page-filterPhase = Übliche Phase
page-holding = Vorrat und Preis
page-price = Packungspreis
page-currency = Währung
page-pack = Packungsinhalt
page-shipping = Versand je Packung
page-stock = Vorrätig
page-lot = Charge
page-expiry = Aufbrauchen bis
page-ownDensity = Dichte, falls selbst gemessen
page-ownUsual = Üblicher Prozentwert, aus Erfahrung
page-ownNote = Eigene Notizen
page-table = Tabellen eigener Rohstoffe
page-tableHelp = Eine CSV-Datei mit einer Spalte „name“ und, wenn gewünscht, inci, class, phase, density, parts und note. Sie wird Zeile für Zeile geprüft und ganz oder gar nicht übernommen.
page-readTable = Tabelle einlesen
page-takeIn = Übernehmen
page-writeTable = Eigene Rohstoffe als Tabelle speichern
page-tableName = stillroom-rohstoffe.csv
page-sources = Alle Quellen
page-sourcesHelp = Jeder Wert des Katalogs beruht auf einer dieser Quellen. Ein Wert „aus dem Gedächtnis“ wurde aus der genannten Quelle erinnert und ist noch zu prüfen.
page-filterClass = Art
page-picker--search = Name, INCI, Zweck, CAS-Nummer
page-picker--nothing = Nichts gefunden. Schreibweise prüfen oder als eigenen Rohstoff anlegen.
page-picker--describe = „{ $name }“ als eigenen Rohstoff anlegen
page-classes--water = Wasser
page-classes--humectant = Feuchthaltemittel
page-classes--solvent = Lösungsmittel
page-classes--thickener = Verdicker
page-classes--oil = Öl
page-classes--butter = Butter
page-classes--emollient = Emollient
page-classes--wax = Wachs
page-classes--fatty-alcohol = Fettalkohol
page-classes--fatty-acid = Fettsäure
page-classes--emulsifier = Emulgator
page-classes--surfactant = Tensid
page-classes--active = Wirkstoff
page-classes--extract = Extrakt
page-classes--protein = Protein
page-classes--preservative = Konservierungsstoff
page-classes--chelator = Chelatbildner
page-classes--antioxidant = Antioxidans
page-classes--ph-adjuster = pH-Regulator
page-classes--salt = Salz
page-classes--essential-oil = ätherisches Öl
page-classes--fragrance = Duftstoff
page-classes--colourant = Farbstoff
page-classes--mineral = Mineral
page-classes--exfoliant = Peelingstoff
page-classes--other = Sonstiges
page-held = Was da ist
page-noHeld = Noch nichts notiert. Einen Rohstoff öffnen und Menge, Charge und Datum eintragen.
page-holdingMore = Preis, Dichte und eigene Notizen
page-all = Alle Rohstoffe
