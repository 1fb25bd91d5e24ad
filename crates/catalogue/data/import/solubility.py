"""Solubility in water out of AqSolDB: its two well-graded groups, for substances of which no other figure is there.

Matched by the first block of the InChIKey (the connections of the atoms), found by CAS registry number.
"""

import csv
import math
from pathlib import Path

from common import Log, plain, pure_substances, read, write

# Figures that another compilation contradicts far beyond the grade they have here; looked at one by one.
KNOWN_WRONG = {
    "54-12-6": "the pure form and the mixture of both forms dissolve differently; the dataset has them as one",
}

COLUMNS = [
    "constituent", "inci", "name", "cas", "molar_mass", "temperature", "grams_per_100_g_water", "described", "note",
    "source", "locator", "basis",
]
# Two or more measurements that agree within half a unit of the logarithm.
GROUPS = {"G3", "G5"}
# Above this the dataset mixes "per litre of water" with "per litre of solution", g/L.
MOST = 100
# Below this a measurement says no more than "insoluble", g/L.
LEAST = 1e-5


def run(path):
    import chemicals
    from values import identifiers

    substances = pure_substances(read("constituents.csv"))
    known = identifiers(Path(chemicals.__file__).parent, set(substances))
    have = {row["constituent"] for row in read("solubility-water.csv") if row["source"] == "aqsoldb"}
    table = {}
    with open(path, encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            table.setdefault(row["InChIKey"].split("-")[0], []).append(row)
    refused = Log("refused.csv", ["constituent", "inci", "property", "value", "source", "reason"])
    rows, done = [], set()
    for cas, substance in substances.items():
        if substance["number"] in have | done or cas not in known:
            continue
        formula, mass, key = known[cas]
        # A salt is several parts: the first block is the same for another salt of it.
        entries = table.get(key.split("-")[0], []) if "." not in formula else []
        entries = [entry for entry in entries if entry["Group"] in GROUPS and abs(float(entry["MolWt"]) - mass) < 0.2]
        if not entries:
            continue
        entry = max(entries, key=lambda entry: int(entry["Occurrences"]))
        grams = 10 ** float(entry["Solubility"]) * mass
        if not LEAST <= grams < MOST:
            continue
        done.add(substance["number"])
        if reason := KNOWN_WRONG.get(cas):
            refused.add(
                constituent=substance["number"], inci=substance["inci"], property="water-solubility",
                value=f"{grams / 10:.4g}", source="aqsoldb", reason=reason,
            )
            continue
        rows.append(
            {
                "constituent": substance["number"], "inci": substance["inci"], "name": substance["inci"].lower(),
                "cas": cas, "molar_mass": plain(mass, 2), "temperature": "25",
                "grams_per_100_g_water": plain(grams / 10, 3 - math.floor(math.log10(grams / 10))), "described": "",
                "note": "mol/L times molar mass / 10, taken as per 100 g water. Dataset temperature 25 +/- 5 C.",
                "source": "aqsoldb",
                "locator": f"{entry['ID']}, LogS {float(entry['Solubility']):.3f}, group {entry['Group']}",
                "basis": "published",
            }
        )
    rows.sort(key=lambda row: int(row["constituent"]))
    write("solubility-imported.csv", rows, COLUMNS)
    refused.save()
