"""Fatty acids of fats and oils out of the USDA National Nutrient Database, Release 28, by food number.

An oil is matched by hand to one food number each, because neither has a registry number of the other. Kernels and
seeds stand for the oil pressed from them: only their fatty acids are taken, and core computes with shares of the sum.
"""

import csv
from pathlib import Path

from common import DATA, plain, read, write

COLUMNS = [
    "constituent", "inci", "material", "acid", "grams_per_100_g", "note", "source", "locator", "basis",
]
# Nutrient numbers of the database. A sum of isomers stands for the common one.
ACIDS = {
    "607": "4:0", "625": "14:1", "652": "15:0", "671": "24:1", "672": "20:2",
    "608": "6:0", "609": "8:0", "610": "10:0", "611": "12:0", "612": "14:0", "613": "16:0",
    "614": "18:0", "615": "20:0", "617": "18:1", "618": "18:2", "619": "18:3", "620": "20:4", "624": "22:0",
    "626": "16:1", "628": "20:1", "630": "22:1", "653": "17:0", "654": "24:0", "687": "17:1",
}
# INCI name, number of the material where the constituent is sold in several kinds, food number, remark.
OILS = [
    ("Helianthus Annuus Seed Oil", "", "04506", ""),
    ("Helianthus Annuus Seed Oil", "616", "04584", ""),
    ("Butyrospermum Parkii Butter", "", "04536", ""),
    ("Prunus Amygdalus Dulcis Oil", "", "04529", ""),
    ("Olea Europaea Fruit Oil", "", "04053", ""),
    ("Vitis Vinifera Seed Oil", "", "04517", ""),
    ("Cocos Nucifera Oil", "", "04047", ""),
    ("Theobroma Cacao Seed Butter", "", "04501", ""),
    ("Persea Gratissima Oil", "", "04581", ""),
    ("Macadamia Ternifolia Seed Oil", "", "12131", "of the raw nut"),
    ("Prunus Armeniaca Kernel Oil", "", "04530", ""),
    ("Sesamum Indicum Seed Oil", "", "04058", ""),
    ("Oryza Sativa Bran Oil", "", "04037", ""),
    ("Cannabis Sativa Seed Oil", "", "12012", "of the hulled seed"),
    ("Linum Usitatissimum Seed Oil", "", "42231", ""),
    ("Zea Mays Germ Oil", "", "04518", ""),
    ("Glycine Soja Oil", "", "04044", ""),
    ("Canola Oil", "", "04582", ""),
    ("Arachis Hypogaea Oil", "", "04042", ""),
    ("Elaeis Guineensis Oil", "", "04055", ""),
    ("Elaeis Guineensis Kernel Oil", "", "04513", ""),
    ("Orbignya Oleifera Seed Oil", "", "04534", ""),
    ("Triticum Vulgare Germ Oil", "", "04038", ""),
    ("Camellia Oleifera Seed Oil", "", "04516", ""),
    ("Corylus Avellana Seed Oil", "", "04532", ""),
    ("Juglans Regia Seed Oil", "", "04528", ""),
    ("Carthamus Tinctorius Seed Oil", "", "04510", ""),
    ("Carthamus Tinctorius Seed Oil", "617", "04511", ""),
    ("Cucurbita Pepo Seed Oil", "", "12014", "of the dried kernel"),
    ("Gossypium Herbaceum Seed Oil", "", "04502", ""),
    ("Pistacia Vera Seed Oil", "", "12151", "of the raw nut"),
    ("Brassica Alba Seed Oil", "", "04583", ""),
    ("Salvia Hispanica Seed Oil", "", "12006", "of the dried seed"),
    ("Solanum Lycopersicum Seed Oil", "", "04515", ""),
    ("Theobroma Grandiflorum Seed Butter", "", "04541", ""),
    ("Adeps Bovis", "", "04001", ""),
    ("Adeps Suillus", "", "04002", ""),
    ("Papaver Somniferum Seed Oil", "", "04514", ""),
    ("Bertholletia Excelsa Seed Oil", "", "12078", "of the dried nut"),
    ("Carya Illinoensis Seed Oil", "", "12142", "of the nut"),
    ("Anacardium Occidentale Seed Oil", "", "12087", "of the raw nut"),
    ("Virola Sebifera Nut Oil", "", "04573", "species of Virola not named"),
    ("Avena Sativa Kernel Oil", "", "04588", ""),
]


def run(folder):
    folder = Path(folder)
    numbers = {row["inci"]: row["number"] for row in read("constituents.csv")}
    wanted = {food for _, _, food, _ in OILS}
    content = {}
    with open(folder / "NUT_DATA.txt", encoding="latin-1", newline="") as file:
        for row in csv.reader(file, delimiter="^", quotechar="~"):
            if row[0] in wanted and row[1] in ACIDS and float(row[2]) > 0:
                content.setdefault(row[0], {})[row[1]] = float(row[2])
    # What was not read in the database is kept as it stands: it was written by hand and says from where.
    path = "fatty-acids.csv"
    others = [row for row in read(path) if row["source"] != "usda-sr28"] if (DATA / path).exists() else []
    rows = []
    for inci, material, food, note in OILS:
        if inci not in numbers:
            continue
        for nutrient, acid in ACIDS.items():
            amount = content.get(food, {}).get(nutrient)
            if amount:
                rows.append(
                    {
                        "constituent": numbers[inci], "inci": inci, "material": material, "acid": acid,
                        "grams_per_100_g": plain(amount, 3), "note": note, "source": "usda-sr28",
                        "locator": f"NDB {food}, nutrient {nutrient}", "basis": "published",
                    }
                )
    write(path, rows + others, COLUMNS)

