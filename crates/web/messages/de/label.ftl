# Das Etikett: die Bestandteile in ihrer Reihenfolge, was es sonst zu sagen hat, und wie alles darauf steht.

act-name = Etikett
none-open = Keine Rezeptur ist geöffnet.
unsound = Die Mengen ergeben noch keine 100 %, oder etwas darin ist nicht bekannt. Zuerst die Rezeptur richtigstellen.
unnamed = (kein INCI-Name)
declaration = Ingredients: { $names }.
lead-ingredients = Ingredients:
lead-before = Mindestens haltbar bis:
lead-lot = Ch.-B.:
made-in = Hergestellt in { $country }
function-face = Gesichtscreme
function-face-wash = Gesichtsreinigung
function-eyes = Augencreme
function-lips = Lippenbalsam
function-body = Körperlotion
function-body-wash = Duschgel
function-hand = Handcreme
function-hand-wash = Handseife
function-bath = Badezusatz
function-hair = Haarpflege ohne Ausspülen
function-shampoo = Shampoo
function-conditioner = Haarspülung
function-deodorant = Deodorant
function-deodorant-spray = Deospray
function-mist = Hautspray
function-oral = Mundpflege
function-child = Babycreme
function-child-wash = Waschprodukt für Babys

## Felder.

field-market = Verkauft oder verschenkt in
market-eu = Europäische Union
market-uk = Vereinigtes Königreich
market-us = Vereinigte Staaten
field-container = Behälter
container-jar = Tiegel, { $volume } ml
container-lid = Tiegeldeckel, { $volume } ml
container-tin = Dosendeckel, { $volume } ml
container-bottle = Flasche, { $volume } ml
container-tube = Tube, { $volume } ml
container-own = Ein anderer
field-volume = Gefüllt mit
field-by = Inhalt in
by-volume = ml
by-mass = g
field-function = Was es ist
field-claims = Was es tut und wie man es anwendet
field-caution = Weitere Warnhinweise
field-lot = Chargennummer
field-before = Mindestens haltbar bis
field-opening = Nach dem Öffnen
unit-months = Monate
field-person = Name der Person, die dafür einsteht
field-address = Anschrift
field-country = Herstellungsland
field-contact = Telefon oder E-Mail
field-site = Ihre Seite im Netz
field-site-as = Auf dem Etikett
site-as-nothing = keine Adresse
site-as-text = als Text
site-as-code = als QR-Code
field-shape = Etikett
shape-flat = flach
shape-wrap = rundum
shape-round = rund
field-width = Breite
field-height = Höhe
field-diameter = Durchmesser
field-paper = Papier
paper-a4 = A4
paper-letter = Letter
field-count = Etiketten
field-nano = { $name }: Nanomaterial
nano-not-known = nicht bekannt
nano-no = nein
nano-yes = ja
takes-side = Millimeter von 10 bis 400, zum Beispiel { $number }
takes-volume = Milliliter von 1 bis 10000, zum Beispiel 50
takes-months = ganze Monate bis 120, zum Beispiel 6; 0 für keine
takes-count = eine ganze Zahl von 1 bis 500

## Inhalt und Daten.

contents-fluid-ounces = { $ounces } fl oz ({ $metric })
contents-ounces = Net wt { $ounces } oz ({ $metric })
contents-no-density = Keine Dichte ist bekannt, also auch nicht die Masse einer Füllung. Bei der Ansatzgröße eine gemessene eintragen.
contents-measured = { $volume } bei gemessenen { $density }, abgerundet.
contents-reckoned = { $volume } bei { $density }, aus der Zusammensetzung gerechnet und abgerundet. Emulsionen enthalten Luft: eine Füllung wiegen.
date-of-batch = Datum und Charge des letzten Ansatzes, { $lot }. Was höchstens 30 Monate haltbar ist, trägt ein Datum.
date-of-today = Noch kein Ansatz: Das Datum ist von heute an gerechnet. Was höchstens 30 Monate haltbar ist, trägt ein Datum.
date-own = Datum wie eingetragen. Was höchstens 30 Monate haltbar ist, trägt ein Datum.
date-opening = Länger als 30 Monate haltbar: Statt eines Datums stehen die Monate nach dem Öffnen darauf. Sie sind üblich, nicht geprüft.
date-unknown = Wie lange es haltbar ist, ist nicht bekannt: Kein Rohstoff nennt einen Tag.

## Was nicht gewiss ist.

doubt-order = { $name } und { $next } stehen vielleicht umgekehrt: { $materials } ist nur nach der üblichen Zusammensetzung bekannt. Beim Lieferanten nach der Zusammensetzung der Charge fragen.
doubt-group = { $name } liegt vielleicht über, vielleicht unter 1 %: { $materials } ist nur nach der üblichen Zusammensetzung bekannt.
doubt-allergens = Nur für den Fall genannt, dass das Öl so viel enthält, wie es höchstens enthalten kann: { $names }. Die Allergendeklaration der Charge entscheidet.
scents-unknown = Niemand hat aufgeschrieben, was darin ist: { $names }. Die Allergene daraus fehlen hier; sie stehen in der Allergendeklaration des Lieferanten.
no-inci = Ohne INCI-Namen, die Liste ist also nicht vollständig: { $names }.
nano-unknown = Ob es ein Nanomaterial ist, ist nicht bekannt: { $names }. Beim Lieferanten erfragen und unten eintragen.
may-colour = Wo es färben soll, steht es in der Europäischen Union und im Vereinigten Königreich mit seiner Nummer am Schluss: { $names } (CI 77891, CI 77947, CI 77019).
typical = Nur nach üblicher Zusammensetzung, mit bis zu einem Fünftel mehr oder weniger gerechnet (übliche Praxis): { $names }.
neutralised = Säuren und Basen stehen so, wie sie zugegeben wurden. Statt ihrer darf auch stehen, was daraus wird, etwa Seife oder ein Salz.
us-names = Namen für die Vereinigten Staaten sind aus dem Gedächtnis: vor dem Druck im Verzeichnis der Bestandteile nachschlagen.

## Allergene.

allergens-us = In den Vereinigten Staaten ist noch keines zu nennen; eine Regel soll kommen. Wer allergisch ist, sucht sie trotzdem.
allergens-none = Von nichts darin ist bekannt, dass es eines der gelisteten Allergene enthält.
allergens-above = Genannt ab mehr als { $threshold } des Produkts.
allergens-uk = Die aus Verordnung (EU) 2023/1545 sind im Vereinigten Königreich nach dem hier bekannten Stand kein Recht: prüfen.
new-allergens-new = Die aus Verordnung (EU) 2023/1545 werden in neuen Produkten seit 31. Juli 2026 genannt, in allen ab 31. Juli 2028.
new-allergens-not-yet = Die aus Verordnung (EU) 2023/1545 sind in neuen Produkten ab 31. Juli 2026 zu nennen.
new-allergens-every = Die aus Verordnung (EU) 2023/1545 werden seit 31. Juli 2028 in allen Produkten genannt.
allergen-amount = { $typical }, höchstens { $most }
allergen-named = genannt
allergen-perhaps = vorsichtshalber genannt
allergen-below = unter der Schwelle
allergen-not-asked = nicht verlangt
allergen-not-in-uk = in der Europäischen Union verlangt, hier nicht

## Sätze auf dem Etikett.

say-external-use = Nur zur äußerlichen Anwendung.
say-eyes = Kontakt mit den Augen vermeiden.
say-small-children = Nicht für Kinder unter 3 Jahren verwenden.
say-vitamin-a = Enthält Vitamin A. Vor Verwendung die tägliche Aufnahme berücksichtigen.
say-formaldehyde = Setzt Formaldehyd frei.
say-sun = Macht die Haut empfindlicher für Sonne: Sonnenschutz verwenden.
say-ammonia = Enthält Ammoniak.
say-resorcinol = Enthält Resorcin.
say-powder = Puder von Nase und Mund des Kindes fernhalten.
say-nappy-area = Nicht im Windelbereich anwenden.
say-under-ten = Nicht für Kinder unter 10 Jahren verwenden.
say-stop = Nicht weiter verwenden, wenn die Haut rot wird, juckt oder brennt.
say-out-of-reach = Außerhalb der Reichweite von Kindern aufbewahren.
statement-asked = verlangt wegen { $about } ({ $source })
statement-advised-for = wegen { $about }; übliche Praxis
statement-advised = übliche Praxis

## Was fehlt.

missing-sentence = Weggelassen, obwohl das Recht es verlangt: „{ $sentence }“ { $source }.
missing-person-eu = Name und Anschrift der verantwortlichen Person in der Europäischen Union. Das Recht verlangt sie, wenn es verkauft oder verschenkt wird.
missing-person-uk = Name und Anschrift der verantwortlichen Person im Vereinigten Königreich. Das Recht verlangt sie, wenn es verkauft oder verschenkt wird.
missing-person-us = Name und Geschäftssitz von Hersteller, Abfüller oder Vertrieb.
missing-contact = Eine Anschrift, Telefonnummer oder E-Mail in den Vereinigten Staaten für Meldungen unerwünschter Wirkungen.
missing-country = Das Ursprungsland, falls es eingeführt wird.
missing-function = Was es ist, wenn Name und Aussehen es nicht sagen.
missing-contents = Der Nenninhalt.
missing-lot = Eine Chargennummer: einen Ansatz beginnen oder eine eintragen.
missing-date = Ein Datum oder die Monate nach dem Öffnen.
missing-assessment-eu = Nicht von diesem Rechner: der Sicherheitsbericht einer qualifizierten Person, die Produktinformationsdatei und die Notifizierung, die das Recht verlangt, bevor es verkauft oder verschenkt wird. Es gilt das örtliche Recht.
missing-assessment-uk = Nicht von diesem Rechner: der Sicherheitsbericht einer qualifizierten Person, die Produktinformationsdatei und die Notifizierung, die das Recht verlangt, bevor es verkauft oder verschenkt wird. Es gilt das örtliche Recht.
missing-assessment-us = Nicht von diesem Rechner: der Nachweis, dass es nicht schadet. Ohne ihn verlangt 21 CFR 740.10 auf der Vorderseite: Warning: The safety of this product has not been determined.

## Wörter, die etwas anderes daraus machen.

place-name = Name
place-function = was es ist
place-claims = was es tut
place-caution = Warnhinweise
place-notes = Notizen der Rezeptur, nicht gedruckt
wording-medicine = „{ $found }“ ({ $place }) spricht von Krankheit oder Heilung: Das macht ein Arzneimittel daraus. { $source }
wording-function = „{ $found }“ ({ $place }) verspricht eine Wirkung auf Körperfunktionen: Das macht ein Arzneimittel daraus. { $source }
wording-biocide = „{ $found }“ ({ $place }) verspricht eine Wirkung auf Keime oder Schädlinge: Das macht ein Biozid oder ein Arzneimittel daraus. { $source }
wording-sun = „{ $found }“ ({ $place }) verspricht Sonnenschutz: Der muss gemessen werden und macht in den Vereinigten Staaten ein Arzneimittel daraus. { $source }
wording-claim = „{ $found }“ ({ $place }) muss wahr und belegbar sein und darf andere nicht herabsetzen. { $source }

## Eine Adresse darauf.

wrong-link-space = Eine Adresse hat kein Leerzeichen: zum Beispiel hersteller.example/balsam oder https://hersteller.example/balsam.
wrong-link-letter = „{ $letter }“ kann in einer Adresse nicht stehen: Kopieren Sie die Adresse, wie der Browser sie schreibt, zum Beispiel https://hersteller.example/balsam.
wrong-link-scheme = Mit „{ $scheme }“ beginnt keine Adresse einer Seite: zum Beispiel https://hersteller.example/balsam oder hersteller.example/balsam.
wrong-link-no-host = Der Name der Seite fehlt: zum Beispiel https://hersteller.example/balsam oder hersteller.example/balsam.
wrong-link-host = „{ $host }“ ist kein Name einer Seite: zum Beispiel https://hersteller.example/balsam oder hersteller.example/balsam.
wrong-link-too-long = { $letters } Zeichen sind zu viele für ein Etikett: höchstens { $most }.
missing-link = Tragen Sie die Adresse ein, die auf dem Etikett stehen soll.
link-too-long = Die Adresse passt nicht auf dieses Etikett und fehlt darauf. Nehmen Sie eine kürzere oder ein größeres Etikett.
code-too-large = Der QR-Code passt nicht auf dieses Etikett und fehlt darauf: Er braucht { $side } in jeder Richtung, bei Modulen von mindestens { $module } (übliche Praxis, damit ein Telefon ihn liest) und vier leeren Modulen ringsum. Nehmen Sie eine kürzere Adresse oder ein größeres Etikett.
code-there = Der QR-Code misst { $side } in jeder Richtung, mit dem leeren Rand von vier Modulen, den ISO/IEC 18004 verlangt; ein Modul misst { $module } (mindestens { $least }: übliche Praxis). Er enthält die Adresse und sonst nichts. Probieren Sie einen gedruckten mit einem Telefon aus.

## Zeichnen und drucken.

size-flat = { $width } × { $height }
size-round = { $diameter } Durchmesser
art = Das Etikett, { $size }: { $name }.
art-with-code = Das Etikett, { $size }: { $name }, mit einem QR-Code von { $address }.
too-small = Auf { $size } passt es nicht in Buchstaben von { $least }. Ein größeres Etikett nehmen oder die Bestandteile auf einen Beileger oder Anhänger drucken.
larger-than-paper = { $size } ist größer als das Papier, oder es sind keine Etiketten verlangt.
letters-text = Kleine Buchstaben
letters-contents = Ziffern des Nenninhalts
letters-least = mindestens { $least }
letters-law = Höhe eines kleinen x oder einer Ziffer, wie gedruckt.
letters-yardstick = Das Recht sagt „leicht lesbar“ und nennt keine Höhe; die für Lebensmittel verlangte dient als Maßstab (übliche Praxis).
sheets =
    { $sheets ->
        [one] { $count } Etiketten auf 1 Bogen { $paper }, { $each } je Bogen. Mit 100 % drucken, nicht an die Seite anpassen.
       *[other] { $count } Etiketten auf { $sheets } Bogen { $paper }, { $each } je Bogen. Mit 100 % drucken, nicht an die Seite anpassen.
    }

# Feste Texte der Seite.
page-title = Etikett
page-intro = Was das Recht auf einem Etikett verlangt, gerechnet aus dem, was wirklich im Tiegel ist. Es gilt das örtliche Recht.
page-toFormula = Zur Rezeptur
page-ingredients = Bestandteile
page-copy = Bestandteile kopieren
page-copied = Kopiert.
page-notCopied = Der Browser ließ es nicht zu: den Text markieren und kopieren.
page-order = In der Reihenfolge
page-places--weight = nach Gewicht
page-places--any = beliebige Reihenfolge
page-places--colour = Farbstoff, am Schluss
page-doubtful = Reihenfolge nicht gewiss
page-allergens = Allergene
page-statements = Warnhinweise darauf
page-missing = Was noch fehlt
page-wording = Wörter zum Überdenken
page-product = Das Produkt
page-maker = Wer dafür einsteht
page-makerHelp = Auf diesem Gerät gespeichert, für jedes Etikett.
page-link = Eine Adresse darauf
page-linkHelp = Die Adresse bleibt auf diesem Gerät, für jedes Etikett. Es wird nichts hinzugefügt.
page-drawn = Das Etikett
page-lettering = Buchstaben
page-printing = Drucken
page-print = Etiketten drucken
page-nano = Feinste Teilchen
