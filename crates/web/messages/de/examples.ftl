# Die Beispiele außer dem des ersten Besuchs: erfunden und so bezeichnet. Jedes zeigt eines.

balm = Ellbogenbalsam
balm-melt = Wachs, Butter und Öle zusammen im Wasserbad schmelzen, nicht heißer als nötig.
balm-cool = Vom Wasserbad nehmen und rühren; unter 50 °C das Tocopherol zugeben.
balm-fill = In trockene Dosen gießen und offen stehen lassen, bis der Balsam fest ist.
balm-notes = Ein erfundenes Beispiel. Es enthält kein Wasser, in dem Keime wachsen könnten, und braucht deshalb kein Konservierungsmittel; was es altern lässt, ist Luft, und das Tocopherol verzögert das. Trocken halten: Nasse Finger bringen Wasser hinein. Erst in der Armbeuge testen; von Augen und Kindern fernhalten.
toner = Rosen-Gesichtswasser
toner-phase-acid = Säure, zuletzt
toner-dissolve = Zuerst die beiden Konservierungsmittel im Wasser lösen, dann alles Übrige dieser Phase einrühren.
toner-acid = Die Säure zuletzt und in kleinen Teilen unter Rühren zugeben: Auf einmal zugegossen kann Benzoesäure ausfallen.
toner-fill = Den pH-Wert messen, auf 4,6 einstellen und in saubere Flaschen füllen.
toner-notes = Ein erfundenes Beispiel. Benzoat und Sorbat wirken vor allem, soweit sie als Säure vorliegen, und darüber entscheidet der pH-Wert: Ändere ihn und lies die Befunde. Ein Konservierungsbereich ist kein Nachweis: Ein Produkt für andere braucht einen Konservierungsbelastungstest durch ein Labor und die gesetzlich verlangte Bewertung. Erst in der Armbeuge testen; von Augen und Kindern fernhalten.
gel = Reinigungsgel
gel-phase-gel = Gel
gel-phase-surfactants = Tenside
gel-phase-finish = Abschluss
gel-swell = Die Konservierungsmittel im Wasser lösen, das angeriebene Xanthan einrühren und eine halbe Stunde quellen lassen.
gel-fold = Die Tenside langsam unterheben, ohne Luft einzuschlagen.
gel-ph = Das Panthenol einrühren, dann die Citronensäure tropfenweise; den pH-Wert messen und auf 4,8 einstellen.
gel-notes = Ein erfundenes Beispiel. Tenside werden in Wasser gelöst verkauft: Der Tiegel zeigt, wie viel des Eingewogenen waschaktive Substanz ist. Zum Abspülen; nicht in die Augen bringen. Ein Konservierungsbereich ist kein Nachweis: Ein Produkt für andere braucht einen Konservierungsbelastungstest durch ein Labor und die gesetzlich verlangte Bewertung. Erst in der Armbeuge testen; von Kindern fernhalten.

# Fixed texts of the page.
page-title = Vier erfundene Beispiele
page-about = Jedes zeigt eines. Was du wählst, kommt ins Regal und lässt sich dort beliebig ändern.
page-names--gel-cream = Gelcreme mit Gurke und Hafer
page-names--balm = Ellbogenbalsam
page-names--toner = Rosen-Gesichtswasser
page-names--cleansing-gel = Reinigungsgel
page-lessons--gel-cream = Ein eigener Auszug zählt mit dem, was er mitbringt: sein Wasser und sein Glycerin.
page-lessons--balm = Ohne Wasser braucht er kein Konservierungsmittel; altern lässt ihn die Luft, daher das Antioxidans.
page-lessons--toner = Ein Konservierungsmittel wirkt nur, soweit der pH-Wert es zulässt.
page-lessons--cleansing-gel = Tenside werden in Wasser verkauft: Es zählt die waschaktive Substanz.
