# About the numbers: methods, equations, limits and sources, as the code has them.

# Fixed texts of the page.
page-title = Über die Zahlen
page-intro = Wie jede Art von Zahl entsteht, wo das gilt und wo es endet, und worauf es beruht. Jeder Befund und jede Zahl öffnet sich außerdem zu ihrer eigenen Rechnung und Quelle.
page-limit = Wo es endet
page-rests = Beruht auf
page-trust = Wie weit einem Wert zu trauen ist
page-trustAbout = Jeder Wert des Katalogs trägt seine Quelle und eine von vier Stufen: veröffentlicht, wo er in der genannten Quelle gelesen wurde; aus einer veröffentlichten Gleichung berechnet; von Anbietern solcher Rohstoffe angegeben; oder aus dem Gedächtnis, nachzuschlagen, bevor etwas davon abhängt. Was nicht bekannt ist, wird gesagt, und keine Zahl ist keine gute Zahl.
page-sources = Woher die Daten stammen: { $count } Quellen
page-caution = Es ist ein Rechner zum Planen. Er ersetzt keinen Konservierungsbelastungstest, keine Stabilitätsprüfung und keine Sicherheitsbewertung; örtliche Regeln entscheiden.
page-heads--composition = Zusammensetzung
page-heads--batch = Ansatz zum Abfüllen
page-heads--rounding = Einwaageliste
page-heads--solubility = Was sich löst
page-heads--ph = Der pH-Wert
page-heads--preservation = Konservierung
page-heads--emulsion = Emulsionen
page-heads--glycerite = Glycerite und Lösungen
page-heads--cooling = Abkühlen
page-heads--dates = Daten
page-heads--colour = Farbe
page-methods--composition = Jede Zeile wird in die Inhaltsstoffe zerlegt, die ihr Rohstoff mitbringt, auch Mischungen in Mischungen, und über die Zeilen addiert: c ist der Anteil eines Inhaltsstoffs am Produkt in Prozent, pᵢ der Anteil einer Zeile und wᵢ der Anteil des Inhaltsstoffs an dem, was dort eingewogen wird. Die ad-100-Zeile ist, was an 100 % fehlt.
page-methods--batch = n Gefäße vom Volumen V, davon jeweils h leer, ein Produkt der Dichte ρ und der Anteil l, der an Gefäß und Gerät bleibt. Ohne gemessene Dichte wird sie aus denen der Rohstoffe geschätzt, als addierten sich die Volumen.
page-methods--rounding = Jede Masse erhält zuerst die ganzen Schritte ihrer Waage; die fehlenden Schritte gehen einzeln an die Zeilen mit den größten Resten. So ergibt die Liste den Ansatz, und keine Zeile ist um einen Schritt oder mehr daneben.
page-methods--solubility = Zwischen zwei veröffentlichten Temperaturen ist der Logarithmus der Löslichkeit eine Gerade über dem Kehrwert der absoluten Temperatur T. Alkohol, Glykole und Glycerin im Wasser vervielfachen sie, jedes nach seiner Kraft σ und seinem Volumenanteil f am Lösungsmittel.
page-methods--ph = Der pH-Wert, bei dem sich alle Ladungen aufheben: m ist die gelöste Menge jeder Form in mol je kg Wasser, z ihre Ladung, I die Ionenstärke, γ sagt, wie viel davon zählt, und A folgt aus Temperatur und Wasser. Die Konstanten gelten ohne Ionenstärke und werden auf die Temperatur umgerechnet, wo das bekannt ist.
page-methods--preservation = Von einer schwachen Säure zählt nur der undissoziierte Anteil a. Von einem Stoff, der nicht dissoziiert, bleibt im Wasser einer Emulsion so viel frei: C ist die Konzentration im Ganzen, φ das Volumen des Öls zu dem des Wassers, K seine Verteilung zwischen beiden, S das Tensid, dessen Mizellen ihn festhalten, und k wie stark. Was wirkt, wird mit der veröffentlichten Konzentration verglichen, die jede Art von Keimen hemmt, und mit mehr als dem, denn Abtöten verlangt mehr.
page-methods--emulsion = Was eine Mischung nichtionischer Emulgatoren liefert und was eine Fettphase verlangt, ist jeweils das nach der Masse m gewichtete Mittel. Daneben gilt: Tropfen, die mehr als 64 % des Volumens füllen, berühren sich, über 74 % werden sie flachgedrückt.
page-methods--glycerite = Die Massen von Glycerin, Wasser, anderen Lösungsmitteln und Pflanzenextraktivstoffen werden vom Plan bis zur Flasche getrennt geführt. Dichte, Lichtbrechung, Fließen und Gefrieren folgen aus veröffentlichten Tabellen für Glycerin und Wasser; die Wasseraktivität aus einer Kurve durch veröffentlichte Formen, x ist der Stoffmengenanteil des Glycerins. Beurteilt wird ihr oberes Ende, denn ein zu niedriger Wert ließe eine Flüssigkeit haltbarer scheinen, als sie ist. Alkohol folgt den gesetzlichen Alkoholtafeln.
page-methods--cooling = Aus den notierten Temperaturen, der Umgebung Tₛ und der Zeit t wird k angepasst und die Zeit bis zu einer Temperatur mit ihrem Band vorhergesagt. Die Temperatur vereinigter Phasen folgt aus ihren Massen und spezifischen Wärmen.
page-methods--dates = Ohne Stabilitätsdaten hält ein Produkt nicht länger als der Rohstoff, der zuerst abläuft, und nicht länger als solche Produkte üblicherweise: mit konserviertem Wasser ungeprüft 12 Monate. Was länger als 30 Monate hält, trägt statt eines Datums die Verwendungsdauer nach dem Öffnen.
page-methods--colour = Ein Foto wird gegen ein mattes Weiß im selben Licht gelesen, Kanal für Kanal, und in CIELAB umgerechnet. Der Abstand zum ersten Tag ist der von CIEDE2000; ein Verblassen wird als Abbau erster Ordnung angepasst.
page-limits--composition = Unterwegs wird nichts gerundet, und was eine Zeile mitbringt, ergibt immer genau die Zeile. Eine Mischung ist so genau wie ihre angegebene Zusammensetzung; eine typische ist die Mitte dessen, was Anbieter angeben.
page-limits--batch = Beim Mischen schrumpfen Wasser und Glycerin um bis zu etwa 1 %, und eine Emulsion enthält Luft. Eine gemessene Dichte ist besser.
page-limits--rounding = Der gezeigte Fehler ist nur der des Rundens. Um wie viel die Waage selbst danebenliegt, ist hier nicht bekannt.
page-limits--solubility = Weit von den veröffentlichten Temperaturen gibt es keine Antwort. Die Regel für Mischungen liegt üblicherweise um 0,3 bis 0,5 eines Logarithmus daneben; ein Befund nennt den Bereich und ist nur dann ein Stopp, wenn selbst das Beste davon nicht reicht.
page-limits--ph = Bis zu einer Ionenstärke von 0,5 mol/kg und von 0 bis 50 °C; darüber trägt hier kein Modell, und das wird gesagt. Ausfallende Feststoffe, entweichendes Gas und was Mizellen und Polymere binden, bleiben außer Acht; viel Alkohol oder Glykol verbreitert das Band. Das Messgerät entscheidet.
page-limits--preservation = Konservierungsmittel addieren sich; Synergie wird nicht angenommen. Was Mizellen geladener Tenside festhalten, zählt nicht mit, denn dafür fand sich keine Zahl. Hemmkonzentrationen verschiedener Labore unterscheiden sich um ein Mehrfaches. Ein Nachweis ist das nicht: Der Konservierungsbelastungstest entscheidet.
page-limits--emulsion = Veröffentlichte Werte streuen um etwa eine Einheit. Bis zu zwei Einheiten daneben sind kein Befund. Bei ionischen Emulgatoren, Polymeren und Flüssigkristallen sagt der HLB-Wert nichts, und dann wird nichts gesagt.
page-limits--glycerite = Die Dichte gilt von 15 bis 30 °C, die Kurve der Wasseraktivität bis 95 % Glycerin bei 25 °C. Was Pflanzen abgeben, ist ein Bereich. Unter einer Mindestaktivität vermehren sich Keime nicht, aber Zellen und Sporen überleben, und ein Tropfen Kondenswasser ist Wasser.
page-limits--cooling = Für eine Umgebung, die bleibt, wie sie ist, und nichts, was unterwegs erstarrt oder schmilzt.
page-limits--dates = Übliche Zeiten sind gängige Praxis und keine Stabilitätsprüfung. Örtliche Regeln entscheiden.
page-limits--colour = Ein Telefon ist kein Farbmessgerät: Nimm denselben Ort und dasselbe Licht. Überbelichtete Stellen werden abgelehnt.
page-equations--composition = c = Σ pᵢ · wᵢ
page-equations--batch = m = n · V · (1 − h) · ρ ÷ (1 − l);  1 ÷ ρ = Σ wᵢ ÷ ρᵢ
page-equations--solubility = ln s = a + b ÷ T;  s(mixture) = s(water) · 10^Σσf
page-equations--ph = Σ z · m = 0;  log γ = −A z² (√I ÷ (1 + √I) − 0.3 I)
page-equations--preservation = a = 1 ÷ (1 + 10^(pH − pKa));  free = C (φ + 1) ÷ (K φ + R),  R = 1 + k S
page-equations--emulsion = HLB = Σ mᵢ · HLBᵢ ÷ Σ mᵢ
page-equations--glycerite = a(water) = (1 − x) · exp(−1.14727 x² + 1.35471 x³)
page-equations--cooling = T = Tₛ + (T₀ − Tₛ) · e^(−k t)
page-sourcesOf--composition = Decimal arithmetic; mass is conserved to the last digit.
page-sourcesOf--batch = Mass = volume × density; ideal mixing.
page-sourcesOf--rounding = Largest remainder (Hamilton’s method of apportionment).
page-sourcesOf--solubility = van ’t Hoff; Yalkowsky’s log-linear rule; Li and Yalkowsky, Ind. Eng. Chem. Res. 37 (1998) 4470.
page-sourcesOf--ph = Davies, Ion Association (1962); Malmberg and Maryott, J. Res. NBS 56 (1956) 1.
page-sourcesOf--preservation = Henderson–Hasselbalch; Bean, J. Soc. Cosmet. Chem. 23 (1972) 703; Kazmi and Mitchell, J. Pharm. Sci. 67 (1978) 1260; Leo, Hansch and Elkins, Chem. Rev. 71 (1971) 525.
page-sourcesOf--emulsion = Griffin, J. Soc. Cosmet. Chem. 1 (1949) 311 and 5 (1954) 249.
page-sourcesOf--glycerite = Volk and Kähler, Exp. Fluids 59 (2018) 75; Hoyt, Oil & Soap 10 (1933) 43; Cheng, Ind. Eng. Chem. Res. 47 (2008) 3285; Scott, Adv. Food Res. 7 (1957) 83; Zhang, Grace and Sun, Drying Technol. 40 (2022) 2404; OIML R 22 (1975); ICUMSA SPS-3.
page-sourcesOf--cooling = Newton’s law of cooling; least squares with 95 % bands.
page-sourcesOf--dates = Regulation (EC) No 1223/2009, Article 19(1)(c), from memory of the text; common practice.
page-sourcesOf--colour = IEC 61966-2-1; CIE 15; CIE 142-2001, held to the pairs of Sharma, Wu and Dalal (2005).
