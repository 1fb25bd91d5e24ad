# How large a batch, on which scales.

no-batch = Nichts anzusetzen: angeben, wie viel.
density-needed = Für diese Rohstoffe ist keine Dichte bekannt. 100 ml des Produkts wiegen und die Dichte eintragen.
allowance-out-of-range = { $value } liegt nicht zwischen 0 und { $largest } %.
nothing-at-hand = Einen Rohstoff dieser Rezeptur wählen und angeben, wie viel davon noch da ist.
batch-too-large = Der Ansatz ist zu groß, um ihn in Gramm zu wiegen.
scale-needed = Mindestens eine Waage ist nötig.
scale-step = Die Ablesbarkeit einer Waage liegt zwischen { $finest } und { $coarsest } g, zum Beispiel 0,1.
scale-limits = Die Feinwaage braucht eine feinere Ablesbarkeit als die Hauptwaage und eine Grenze über 0.
no-sheet = Die Rezeptur ergibt noch nicht 100 %, also gibt es nichts einzuwiegen. Siehe Hinweis über den Phasen.
density-estimated = Die Dichte ist ein Schätzwert: Die Volumen von { $known } der Rezeptur, deren Dichte bekannt ist, werden addiert. Mischen lässt schrumpfen, Mixen bringt Luft hinein; daher 100 ml des fertigen Produkts wiegen und das Ergebnis eintragen.
batch-differs = Auf die Waagen gerundet: { $batch } (verlangt: { $asked }).
fill-arithmetic = { $count } × { $volume } × (100 − { $headspace }) % × { $density } ÷ (100 − { $loss }) % = { $mass }
fill-arithmetic-full = { $count } × { $volume } × { $density } ÷ (100 − { $loss }) % = { $mass }
raised-to-scale = Auf den nächsten Schritt der Waage erhöht, damit kein Behältnis zu wenig bekommt: { $mass }
stock-arithmetic = Geht zuerst aus: { $name }. { $available } ÷ { $share } % erlaubt { $mass }, auf die Waage abgerundet
left-over = { $mass } Rest
not-in-formula = nicht in dieser Rezeptur
smallest-batch = Kleinster Ansatz mit jeder Zeile innerhalb von { $tolerance }: { $mass }
lines-too-coarse =
    { $count ->
        [one] Die Waage rundet eine Zeile um mehr als { $tolerance }: { $names }. Größer ansetzen oder feiner wiegen.
       *[other] Die Waage rundet { $count } Zeilen um mehr als { $tolerance }: { $names }. Größer ansetzen oder feiner wiegen.
    }
too-many-materials-at-hand = Ein Ansatz wird mit höchstens { $most } Rohstoffen verglichen.
scale-fine = Feinwaage
scale-kitchen = Küchenwaage

# Fixed texts of the page.
page-title = Ansatz
page-way = Wie groß?
page-ways--mass = Nach Masse
page-ways--containers = Nach Gefäßen
page-ways--stock = Nach Restmenge
page-mass = Ansatzgröße
page-count = Gefäße
page-volume = Inhalt je Gefäß
page-headspace = Bleibt leer
page-loss = Bleibt an Gefäß und Gerät
page-density = Dichte des Produkts, falls gemessen
page-stockHelp = Wovon ist wenig da? Auswählen: der eingetragene Bestand gilt, sofern nichts anderes angegeben wird.
page-recorded = { $name }: { $recorded } eingetragen
page-stockOf = Rest: { $name }
page-removeStock = Weglassen: { $name }
page-limiting = geht zuerst aus
page-sheet = Einwaageliste
page-rounding = Rundung
page-sum = Summe
page-print = Liste drucken
page-scales = Waagen und Einheiten
page-mainStep = Küchenwaage zeigt Schritte von
page-fineScale = Auch eine Feinwaage ist da
page-fineStep = Feinwaage zeigt Schritte von
page-fineBelow = Für Massen unter
page-tolerance = Größte Rundung einer Zeile
page-massUnit = Massen in
page-volumeUnit = Volumen in
page-temperatureUnit = Temperaturen in
page-decimalMark = Dezimalzeichen
page-fetched--here = Stillroom ist ganz auf diesem Gerät und funktioniert ohne Netz.
page-fetched--coming = Was über die erste Ansicht hinausgeht, etwa { $size } kB, wird geladen, während die Seite ruht, und für den Betrieb ohne Netz gespeichert.
page-fetched--unasked = Der Browser soll Daten sparen: Was über die erste Ansicht hinausgeht, etwa { $size } kB, wird Bereich für Bereich erst beim Öffnen geladen.
page-fetchAll = Jetzt alles laden, für den Betrieb ohne Netz
page-marks--browser = wie in diesem Browser
page-marks--point = Punkt, 1.5
page-marks--comma = Komma, 1,5
page-massUnits--mg = Milligramm
page-massUnits--g = Gramm
page-massUnits--kg = Kilogramm
page-massUnits--oz = Unzen (oz)
page-massUnits--lb = Pfund (lb)
page-volumeUnits--mL = Milliliter
page-volumeUnits--L = Liter
page-volumeUnits--US_fl_oz = US-Flüssigunzen
page-volumeUnits--UK_fl_oz = britische Flüssigunzen
page-temperatureUnits--C = Grad Celsius
page-temperatureUnits--F = Grad Fahrenheit
page-language = Sprache
page-languageOfBrowser = wie in diesem Browser
caustic-1 = Ätzend: Schutzbrille, Handschuhe, lange Ärmel; keine Kinder, keine Tiere in der Nähe. Es macht blind und verätzt.
caustic-2 = In kleinen Mengen in kaltes Wasser geben, nie Wasser darauf: Es wird heiß und spritzt. Kein Aluminium.
caustic-3 = Auf der Haut oder im Auge: 20 Minuten mit fließendem Wasser spülen und ärztliche Hilfe holen. Für Lagerung und Kennzeichnung gelten die örtlichen Vorschriften.
