"""Looks up a drawn sample again in the sources themselves, and writes the report.

    cargo xtask data sample --seed 2026 > sample.csv
    python recheck.py sample.csv --inventory cosing.csv --foods sr28/ --solubility data_curated.csv > recheck.md

It shares no code with the import: each value is searched for in the text of the source, by registry number, name or
row, and the row found is quoted beside what the catalogue says. Whether the two agree is judged by number; a source
that is not at hand is said to be so and counts as not checked.
"""

import argparse
import csv
import gzip
import re
from pathlib import Path

TABLES = {
    "crc-constants": [
        "Misc/Physical Constants of Organic Compounds.csv", "Misc/Physical Constants of Inorganic Compounds.csv",
    ],
    "crc-refractive-index": ["Misc/CRC Handbook Organic RI.csv"],
    "crc-fusion": ["Phase Change/CRC Handbook Heat of Fusion.tsv"],
    "crc-vaporization": ["Phase Change/CRC Handbook Heat of Vaporization.tsv"],
    "crc-heat-capacity": ["Heat Capacity/CRC Standard Thermodynamic Properties of Chemical Substances.tsv"],
    "crc-permittivity": ["Electrolytes/Permittivity (Dielectric Constant) of Liquids.tsv"],
    "crc-logp": ["Environment/CRC logP table.tsv"],
    "syracuse-logp": ["Environment/Syrres logP data.csv.gz"],
    "open-notebook-melting": ["Phase Change/OpenNotebook Melting Points.tsv"],
    "wikidata-constants": ["Misc/wikidata_properties.tsv"],
    "serat-flash": ["Safety/DIPPR T_flash Serat.csv"],
    "iec-60079": ["Safety/IS IEC 60079-20-1 2010.tsv"],
    "nfpa-497": ["Safety/NFPA 497 2008.tsv"],
    "hansen-diaz-2022": ["Misc/ruben_manuel_hansen_solubility_parameters.tsv"],
    "hansen-alshehri-2022": ["Misc/alshehri_hansen_solubility_parameters.tsv"],
    "chemicals-identifiers": [
        "Identifiers/chemical identifiers pubchem small.tsv", "Identifiers/chemical identifiers pubchem large.tsv",
        "Identifiers/chemical identifiers example user db.tsv", "Identifiers/Inorganic db.tsv",
    ],
}
# How a figure of the table becomes the one of the catalogue: factor by molar mass, offset, scale.
KELVIN = {"melting-point", "boiling-point", "flash-point"}
PER_MASS = {"heat-of-fusion", "heat-of-vaporization", "specific-heat"}


def lines_of(path):
    opener = gzip.open if path.suffix == ".gz" else open
    with opener(path, "rt", encoding="utf-8") as file:
        yield from (line.rstrip("\n") for line in file)


def figures_in(text):
    return [float(each) for each in re.findall(r"-?\d+\.?\d*(?:[eE][-+]?\d+)?", text)]


def agrees(value, row, kind, mass):
    own = figures_in(value)[0]
    for figure in figures_in(row):
        candidates = [figure]
        if kind in KELVIN:
            candidates = [figure - 273.15]
        elif kind in PER_MASS and mass:
            candidates = [figure / mass]
        elif kind == "density" or kind.startswith("hansen"):
            candidates = [figure / 1000]
        elif kind == "lower-flammable-limit":
            candidates = [figure * 100]
        digits = len(value.split(" ")[0].partition(".")[2])
        if any(abs(each - own) <= 0.51 * 10**-digits for each in candidates):
            return True
    return False


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("sample")
    parser.add_argument("--inventory", required=True)
    parser.add_argument("--foods", required=True)
    parser.add_argument("--solubility", required=True)
    arguments = parser.parse_args()
    import chemicals

    folder = Path(chemicals.__file__).parent
    with open(arguments.sample, encoding="utf-8", newline="") as file:
        sample = list(csv.DictReader(file))
    wanted = {cas for row in sample for cas in re.findall(r"\d{2,7}-\d{2}-\d", row["cas"] + " " + row["locator"])}
    bare = {cas.replace("-", ""): cas for cas in wanted}
    found, masses, keys = {}, {}, {}
    for source, names in TABLES.items():
        for name in names:
            for line in lines_of(folder / name):
                cells = line.split("\t")
                first = cells[1] if source == "chemicals-identifiers" else cells[0]
                cas = first.strip() if first.strip() in wanted else bare.get(first.strip())
                if cas:
                    found.setdefault((source, cas), "\t".join(cells[:8]) if source == "chemicals-identifiers" else line)
                    if source == "chemicals-identifiers":
                        masses.setdefault(cas, float(cells[3]))
                        keys.setdefault(cas, cells[6].split("-")[0])
    inventory = {}
    for line in lines_of(Path(arguments.inventory)):
        inventory.setdefault(next(csv.reader([line]))[0].upper() if line else "", line)
    foods = {}
    for line in lines_of_latin(Path(arguments.foods) / "NUT_DATA.txt"):
        cells = [cell.strip("~") for cell in line.split("^")]
        foods[cells[0], cells[1]] = "^".join(line.split("^")[:3])
    solubility = list(lines_of(Path(arguments.solubility)))
    rows, counts = [], {"agrees": 0, "differs": 0, "not at hand": 0}
    for drawn in sample:
        quote, verdict = look_up(drawn, found, masses, inventory, foods, solubility, keys)
        counts[verdict] += 1
        rows.append((drawn, quote, verdict))
    print(REPORT.format(total=len(rows), **{key.replace(" ", "_"): value for key, value in counts.items()}))
    print("| file, line | of | property | the catalogue says | source | what stands there | verdict |")
    print("|---|---|---|---|---|---|---|")
    for drawn, quote, verdict in rows:
        quote = quote.replace("|", "/").replace("\t", " · ")[:160]
        value = drawn["value"].replace("|", "/")[:90]
        cells = [
            f"{drawn['file']}, {drawn['line']}", drawn["subject"][:50], drawn["property"], value, drawn["source"],
            quote, verdict,
        ]
        print("| " + " | ".join(cells) + " |")


def lines_of_latin(path):
    with open(path, encoding="latin-1") as file:
        yield from (line.rstrip("\n") for line in file)


def look_up(drawn, found, masses, inventory, foods, solubility, keys):
    source, kind = drawn["source"], drawn["property"]
    numbers = re.findall(r"\d{2,7}-\d{2}-\d", drawn["locator"]) or re.findall(r"\d{2,7}-\d{2}-\d", drawn["cas"])
    if source == "cosing-inventory-2020":
        row = inventory.get(drawn["subject"].upper(), "")
        if kind == "cas":
            return row, "agrees" if drawn["value"] in row else "differs"
        words = {word.strip().lower() for word in next(csv.reader([row]))[3].split(",")} if row else set()
        same = words == {word.strip() for word in drawn["value"].split(";")}
        return row, "agrees" if same else "differs"
    if source in TABLES:
        for cas in numbers:
            row = found.get((source, cas))
            if row:
                if kind == "cas":
                    return row, "agrees"
                return row, "agrees" if agrees(drawn["value"], row, kind, masses.get(cas)) else "differs"
        return "no row of this number", "differs"
    if source == "usda-sr28":
        food, nutrient = re.findall(r"\d+", drawn["locator"])
        row = foods.get((food, nutrient), "")
        return row, "agrees" if row and float(row.split("^")[2]) == figures_in(drawn["value"])[0] else "differs"
    if source == "usda-sr":
        food = re.search(r"NDB (\d+)", drawn["locator"])
        row = foods.get((food.group(1), "255"), "") if food else ""
        if not row:
            return "not in Release 28", "not at hand"
        # The catalogue read another release: a tenth of a percent is the same figure.
        return row, "agrees" if abs(float(row.split("^")[2]) - figures_in(drawn["value"])[0]) < 0.1 else "differs"
    if source == "aqsoldb":
        stated = re.search(r"LogS (-?\d+\.\d+)", drawn["locator"])
        group = re.search(r"G\d", drawn["locator"])
        for line in solubility if stated and group else []:
            if any(keys.get(cas, "-") in line for cas in re.findall(r"\d{2,7}-\d{2}-\d", drawn["cas"])):
                cells = next(csv.reader([line]))
                if f"{float(cells[5]):.3f}" == stated.group(1):
                    same = group.group() == cells[8]
                    return ", ".join([cells[0], cells[1], cells[5], cells[8]]), "agrees" if same else "differs"
        return "no row of this structure and figure", "differs"
    return "", "not at hand"


REPORT = """# A sample of the published values, looked up again

`cargo xtask data sample --seed 2026` drew {total} of the values that the catalogue marks as published; `recheck.py`
beside this file searched each in the source itself and quotes the row it found. **{agrees} agree, {differs} differ,
{not_at_hand} could not be looked up again here** because the source was not at hand in full text (law, papers, tables
that were read by hand): they rest on the first reading.

Earlier drawings with other data under the same seed led to corrections: six registry numbers stood beside one that the
named table does have but were not in it themselves, two rows stood in another table of the same package, and one
solubility of a dataset was fourteen times what another compilation says.
"""


if __name__ == "__main__":
    main()
