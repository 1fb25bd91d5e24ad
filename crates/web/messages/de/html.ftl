# What the page says before a script of its own speaks.

page-description = Eine Hautpflege-Rezeptur auf dem eigenen Gerät ausarbeiten: was wirklich im Tiegel ist und was einzuwiegen ist.
page-skip = Zum Inhalt
page-bare = Die Gestaltung dieser Seite ist nicht angekommen. Neu laden, sobald es ein Netz gibt.
page-rooms = Bereiche
page-what = Aus einer Rezeptur in Prozent wird ein Ansatz zum Einwiegen – mit Blick darauf, was verdirbt, sich trennt oder auskristallisiert.
page-opening = Notizbuch wird geöffnet…
page-late = Das dauert lange: Ein Teil von Stillroom ist vielleicht nicht angekommen. Netz prüfen, dann { $link }. Falls ein Link zu einer Rezeptur hierher geführt hat, diesen Link noch einmal öffnen.
page-lateLink = neu laden
page-noscript = Stillroom rechnet auf dem eigenen Gerät und braucht dafür JavaScript. Nichts, was du eingibst, verlässt es.
page-manifest--name = Stillroom
page-manifest--description = Eine Hautpflege-Rezeptur ausarbeiten: was wirklich im Tiegel ist und was einzuwiegen ist.
