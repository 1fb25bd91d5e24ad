"""Writes the second tables that the tests hold the imported values to: figures of tables that were not imported.

    python second.py --solubility AqSolDB/ --out ../../../../tests/reference/data/second_table.csv
"""

import argparse
import csv
from pathlib import Path

from common import plain, pure_substances, read, write
from values import KELVIN, identifiers, number, table

COLUMNS = ["inci", "cas", "property", "value", "conditions", "source", "locator", "basis", "doubt"]
WEBBOOK = "NIST Chemistry WebBook, in the Python package chemicals 1.5.2"
VDI = "VDI Heat Atlas, PPDS density of saturated liquids at 22.5 °C, in the Python package chemicals 1.5.2"
WIKIDATA = "Wikidata, in the Python package chemicals 1.5.2"
RDKIT = "AqSolDB, molar mass by structure (RDKit)"
SETS = {
    "A": "eChemPortal as collected in AqSolDB, dataset A",
    "B": "EPI Suite as collected in AqSolDB, dataset B",
}


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--solubility", required=True, help="folder with data_curated.csv, dataset-A.csv, -B.csv")
    parser.add_argument("--out", required=True)
    arguments = parser.parse_args()
    import chemicals

    folder = Path(chemicals.__file__).parent
    substances = pure_substances(read("constituents.csv"))
    known = identifiers(folder, set(substances))
    rows = []

    def put(cas, kind, value, source, conditions="", locator="", doubt=""):
        rows.append(
            {
                "inci": substances[cas]["inci"], "cas": cas, "property": kind, "value": value,
                "conditions": conditions, "source": source, "locator": locator, "basis": "published", "doubt": doubt,
            }
        )

    for cas, row in table(folder / "Misc" / "webbook_constants.tsv"):
        if cas in substances and (value := number(row["Tm"])) is not None:
            put(cas, "melting-point", plain(value - KELVIN, 1), WEBBOOK, locator=f"Tm {row['Tm']} K")
    for cas, row in table(folder / "Density" / "VDI PPDS Density of Saturated Liquids.tsv"):
        if cas in substances:
            critical, least = number(row["Tc"]), number(row["rhoc"])
            tau = 1 - (22.5 + KELVIN) / critical
            powers = zip("ABCD", [0.35, 2 / 3, 1, 4 / 3])
            value = least + sum(number(row[name]) * tau**power for name, power in powers)
            put(cas, "density", plain(value / 1000, 4), VDI, "22.5 °C")
    for cas, row in table(folder / "Misc" / "wikidata_properties.tsv"):
        value, at = number(row["RI"]), number(row["RIT"])
        if cas in substances and value:
            put(cas, "refractive-index", plain(value, 4), WIKIDATA, f"{round(at - KELVIN)} °C" if at else "")
    for cas, row in table(folder / "Environment" / "CRC logP table.tsv"):
        if cas in substances and (value := number(row["logP"])) is not None:
            put(cas, "log-kow", plain(value, 2), "CRC Handbook, in the Python package chemicals 1.5.2")
    data = Path(arguments.solubility)
    curated, others = {}, {"A": {}, "B": {}}
    with open(data / "data_curated.csv", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            curated.setdefault(row["InChIKey"], row)
    for name, by_key in others.items():
        with open(data / f"dataset-{name}.csv", encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                by_key.setdefault(row["InChIKey"], row)
    by_block = {}
    for key in curated:
        by_block.setdefault(key.split("-")[0], []).append(key)
    for cas, (formula, mass, key) in known.items():
        keys = by_block.get(key.split("-")[0], []) if "." not in formula else []
        keys = [each for each in keys if abs(float(curated[each]["MolWt"]) - mass) < 0.2]
        if not keys:
            continue
        chosen = curated[keys[0]]
        put(cas, "molar-mass", plain(float(chosen["MolWt"]), 2), RDKIT, locator=chosen["ID"])
        first = chosen["ID"].split("-")[0]
        for name in "AB":
            other = others[name].get(keys[0])
            # The same figure in both is the same measurement and no second opinion.
            if name != first and other and abs(float(other["Solubility"]) - float(chosen["Solubility"])) > 0.001:
                grams = 10 ** float(other["Solubility"]) * mass / 10
                put(cas, "water-solubility", f"{grams:.6f}", SETS[name], "25 °C", other["ID"])
                break
    rows.sort(key=lambda row: (row["property"], row["inci"], row["cas"]))
    out = Path(arguments.out)
    # What was looked into by hand stays: why a figure is set aside.
    if out.exists():
        doubts = {(row["cas"], row["property"]): row["doubt"] for row in read(out.name, out.parent)}
        for row in rows:
            row["doubt"] = doubts.get((row["cas"], row["property"]), "")
    write(out.name, rows, COLUMNS, out.parent)


if __name__ == "__main__":
    main()
