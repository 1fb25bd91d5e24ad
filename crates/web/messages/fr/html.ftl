# What the page says before a script of its own speaks.

page-description = Mettre au point une formule de soin sur son propre appareil : ce qu’il y a vraiment dans le pot, et ce qu’il faut peser.
page-skip = Aller au contenu
page-bare = La mise en forme de cette page n’est pas arrivée. La recharger dès qu’il y a un réseau.
page-rooms = Espaces
page-what = D’une formule en pour cent, faire une préparation à peser, et voir ce qui s’altérerait, se séparerait ou cristalliserait.
page-opening = Ouverture du carnet…
page-late = C’est long : une partie de Stillroom n’est peut-être pas arrivée. Vérifier le réseau, puis { $link }. Si un lien vers une formule a mené ici, l’ouvrir de nouveau.
page-lateLink = recharger la page
page-noscript = Stillroom calcule sur votre propre appareil et a besoin de JavaScript pour cela. Rien de ce que vous saisissez ne le quitte.
page-manifest--name = Stillroom
page-manifest--description = Mettre au point une formule de soin : ce qu’il y a vraiment dans le pot, et ce qu’il faut peser.
