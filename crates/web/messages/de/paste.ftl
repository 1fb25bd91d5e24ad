# Ein vorhandenes Rezept, als Text eingefügt.

act-name = Rezeptur aus einem Rezept
default-name = Eingefügtes Rezept
lettered-phase = { $letter } · { $phase }
as-written = Im Rezept: { $line }
own-note = Aus einem eingefügten Rezept: { $line }. Hier nicht bekannt; nach den Unterlagen des Lieferanten beschreiben.
too-long = Dieser Text ist länger als ein Rezept ({ $bytes } Bytes). Nur die Liste der Rohstoffe einfügen.
too-many-lines = Dieser Text hat { $lines } Zeilen, mehr als ein Rezept. Nur die Liste der Rohstoffe einfügen.

found =
    { $lines ->
        [one] { $found } von 1 Zeile gefunden
       *[other] { $found } von { $lines } Zeilen gefunden
    }
to-choose =
    { $lines ->
        [one] 1 zu wählen
       *[other] { $lines } zu wählen
    }
in-all = { $mass } { $unit } insgesamt
left-open =
    { $lines ->
        [one] 1 Zeile wird ein eigener Rohstoff, als nicht bekannt vermerkt.
       *[other] { $lines } Zeilen werden eigene Rohstoffe, als nicht bekannt vermerkt.
    }
made = „{ $name }“ steht im Regal.
made-with-own =
    { $lines ->
        [one] „{ $name }“ steht im Regal, mit 1 eigenen Rohstoff, der noch zu beschreiben ist.
       *[other] „{ $name }“ steht im Regal, mit { $lines } eigenen Rohstoffen, die noch zu beschreiben sind.
    }
nearly = Fast dieser Name. Bitte prüfen.

## Was anzusehen ist.

doubt-missing = Keine Menge
doubt-not-read = Menge nicht verstanden: bitte eintragen
doubt-not-weighable = Löffel, Tassen und Tropfen sind kein Gewicht: einmal wiegen und eintragen
doubt-no-density = Ein Volumen ohne bekannte Dichte: bitte wiegen
doubt-by-density = Über die Dichte in Masse umgerechnet
doubt-range = Ein Bereich: genommen ist die Mitte
doubt-mass-among-percents = Eine Masse unter Prozenten: Gesamtmenge angeben oder eintragen
doubt-percent-among-masses = Ein Prozentwert unter Massen: bitte eintragen
doubt-enough = So viel wie nötig: eintragen, was gebraucht wurde
doubt-second-rest = Eine zweite Zeile, die auffüllt: bitte eintragen
doubt-too-large = Mehr als das Ganze: bitte eintragen

## Spalten einer Tabelle, Dateien.

column-number = Spalte { $number }
prices-left-out = Preise gehören nicht in eine Rezeptur und bleiben weg: { $columns }
columns-left-out = Nicht gebraucht, bleibt weg: { $columns }
grams-beside = Es gelten die Prozente. Die Gramm daneben sagen nur, was das Ganze wiegt: { $columns }
file-utf16 = Die Datei ist in UTF-16 geschrieben und wird so gelesen.
file-latin1 = Die Datei sagt nicht, wie ihre Buchstaben geschrieben sind. Gelesen wird sie als Latin-1 (Windows-1252): Umlaute und Währungszeichen prüfen.
file-too-large = Diese Datei ist größer als ein Rezept ({ $bytes } Bytes). Nichts wurde geändert. Nur die Liste der Rohstoffe speichern oder einfügen.
file-packed = Das ist eine Arbeitsmappe oder ein gepacktes Dokument, kein reiner Text. Nichts wurde geändert. Als CSV oder Text speichern, oder die Zellen kopieren und einfügen.
file-no-text = In dieser Datei steht kein Text. Nichts wurde geändert. Gelesen werden Text, CSV und Tabellen mit Tabulatoren.
file-empty = Diese Datei ist leer. Nichts wurde geändert.

## Wofür andere Zeilen genommen wurden.

taken-for-title = Name
taken-for-size = Menge
taken-for-head = Kopf der Tabelle
taken-for-heading = Überschrift
taken-for-total = Summe, nicht gebraucht
taken-for-step = Arbeitsschritt
taken-for-note = Notiz, kommt mit

# Feste Texte der Seite.
page-title = Rezept einfügen
page-text = Ein Rohstoff je Zeile, Name und Menge in beliebiger Folge
page-placeholder = Destilliertes Wasser 70 %
page-file = Aus einer Datei
page-clear = Leeren
page-numbers = Die Zahlen sind
page-percent = Prozent
page-grams = Gramm
page-parts = Teile
page-recognised = Was erkannt wurde
page-choose = Zu wählen
page-chooseFor = Was ist mit „{ $name }“ gemeint?
page-own = Als eigenen Rohstoff beschreiben
page-search = Suchen
page-change = Anderer Rohstoff für { $name }
page-others = Übrige Zeilen
page-make = Daraus eine Rezeptur machen
page-nothing = Oben ein Rezept einfügen oder eintippen. Prozent, Gramm, Unzen, Listen, Tabellen und Phasen werden verstanden. Nichts verlässt dieses Gerät.
page-caution = Jede Zeile mit der Vorlage vergleichen. Ein fremdes Rezept kann falsch sein, und hier hat es niemand geprüft.
page-total = Summe
page-columns = Was in jeder Spalte steht
page-holds--name = Rohstoff
page-holds--percent = Prozent
page-holds--grams = Gramm
page-holds--amount = Menge
page-holds--unit = Einheit
page-holds--phase = Phase
page-holds--inci = INCI oder anderer Name
page-holds--note = Notiz, kommt mit
page-holds--price = Preis, bleibt weg
page-holds--left-out = nicht gebraucht, bleibt weg
page-first = „{ $name }“ und so weiter
page-bringBack = Text von vorhin zurückholen
page-dropHere = Ein Text oder eine Tabelle lässt sich auch hierher ziehen.
page-oneFile = Eine Datei auf einmal. Nichts wurde geändert.
