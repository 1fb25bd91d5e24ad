# Une recette que l’on a déjà, collée sous forme de texte.

act-name = formule tirée d’une recette
default-name = Recette collée
lettered-phase = { $letter } · { $phase }
as-written = Dans la recette : { $line }
own-note = D’une recette collée : { $line }. Inconnu ici ; à décrire d’après la fiche du fournisseur.
too-long = Ce texte est plus long qu’une recette ({ $bytes } octets). Ne collez que la liste des matières premières.
too-many-lines = Ce texte compte { $lines } lignes, plus qu’une recette. Ne collez que la liste des matières premières.

found =
    { $lines ->
        [one] { $found } ligne trouvée sur 1
       *[other] { $found } lignes trouvées sur { $lines }
    }
to-choose =
    { $lines ->
        [one] 1 à choisir
       *[other] { $lines } à choisir
    }
in-all = { $mass } { $unit } en tout
left-open =
    { $lines ->
        [one] 1 ligne devient une matière première personnelle, notée comme inconnue.
       *[other] { $lines } lignes deviennent des matières premières personnelles, notées comme inconnues.
    }
made = « { $name } » est sur l’étagère.
made-with-own =
    { $lines ->
        [one] « { $name } » est sur l’étagère, avec 1 matière première personnelle à décrire.
       *[other] « { $name } » est sur l’étagère, avec { $lines } matières premières personnelles à décrire.
    }
nearly = Presque ce nom. À vérifier.

## Ce qu’il faut regarder.

doubt-missing = Pas de quantité
doubt-not-read = Quantité non comprise : à remplir
doubt-not-weighable = Cuillères, tasses et gouttes ne sont pas un poids : pesez une fois et remplissez
doubt-no-density = Un volume sans densité connue : à peser
doubt-by-density = Converti en masse par sa densité
doubt-range = Un intervalle : le milieu a été pris
doubt-mass-among-percents = Une masse parmi des pourcentages : indiquez la masse totale ou remplissez
doubt-percent-among-masses = Un pourcentage parmi des masses : à remplir
doubt-enough = Autant que nécessaire : notez ce que vous avez mis
doubt-second-rest = Une deuxième ligne qui complète : à remplir
doubt-too-large = Plus que le tout : à remplir

## Colonnes d’un tableau, fichiers.

column-number = colonne { $number }
prices-left-out = Les prix ne font pas partie d’une formule et sont laissés de côté : { $columns }
columns-left-out = Laissé de côté, inutile : { $columns }
grams-beside = Les pourcentages comptent. Les grammes à côté disent seulement ce que pèse le tout : { $columns }
file-utf16 = Le fichier est écrit en UTF-16 et lu comme tel.
file-latin1 = Le fichier ne dit pas comment ses lettres sont écrites. Il est lu en Latin-1 (Windows-1252) : vérifiez les accents et les symboles monétaires.
file-too-large = Ce fichier est plus grand qu’une recette ({ $bytes } octets). Rien n’a changé. N’enregistrez ou ne collez que la liste des matières premières.
file-packed = C’est un classeur ou un document compressé, pas du texte simple. Rien n’a changé. Enregistrez-le en CSV ou en texte, ou copiez ses cellules et collez-les.
file-no-text = Ce fichier ne contient pas de texte. Rien n’a changé. Sont lus le texte, le CSV et les tableaux à tabulations.
file-empty = Ce fichier est vide. Rien n’a changé.

## Comment les autres lignes ont été comprises.

taken-for-title = nom
taken-for-size = taille du lot
taken-for-head = en-tête du tableau
taken-for-heading = titre
taken-for-total = somme, inutile
taken-for-step = étape du mode opératoire
taken-for-note = note, conservée

# Textes fixes de la page.
page-title = Coller une recette
page-text = Une matière première par ligne, nom et quantité dans n’importe quel ordre
page-placeholder = Eau distillée 70 %
page-file = D’un fichier
page-clear = Effacer
page-numbers = Les nombres sont
page-percent = des pourcentages
page-grams = des grammes
page-parts = des parts
page-recognised = Ce qui a été reconnu
page-choose = À choisir
page-chooseFor = Que désigne « { $name } » ?
page-own = La décrire moi-même
page-search = Chercher
page-change = Une autre matière première pour { $name }
page-others = Autres lignes
page-make = En faire une formule
page-nothing = Collez ou tapez une recette ci-dessus. Pourcentages, grammes, onces, listes, tableaux et phases sont compris. Rien ne quitte cet appareil.
page-caution = Comparez chaque ligne à l’original. Une recette venue d’ailleurs peut être fausse, et personne ici ne l’a essayée.
page-total = Total
page-columns = Ce que contient chaque colonne
page-holds--name = matière première
page-holds--percent = pourcentage
page-holds--grams = grammes
page-holds--amount = quantité
page-holds--unit = unité
page-holds--phase = phase
page-holds--inci = INCI ou autre nom
page-holds--note = note, conservée
page-holds--price = prix, laissé de côté
page-holds--left-out = inutile, laissé de côté
page-first = « { $name } », etc.
page-bringBack = Reprendre le texte d’avant
page-dropHere = Un texte ou un tableau peut aussi être déposé ici.
page-oneFile = Un fichier à la fois. Rien n’a changé.
