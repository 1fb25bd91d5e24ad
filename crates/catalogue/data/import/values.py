"""Physical constants out of open tables, matched by CAS registry number.

What is taken is a figure that stands in one table: where several tables have one, the median of them. A second
figure is taken beside it where two tables differ by more than such a constant is uncertain; the card shows both.
"""

import csv
import gzip
import statistics
from dataclasses import dataclass
from pathlib import Path

from common import Log, hyphenated, plain, pure_substances, read, write

COLUMNS = [
    "subject", "number", "property", "value", "minimum", "maximum", "unit", "conditions", "note", "source", "locator",
    "basis",
]
KELVIN = 273.15


@dataclass
class Figure:
    value: float
    source: str
    table: str
    conditions: str = ""


@dataclass
class Kind:
    """A property: unit, places kept, believable range, how far tables may differ, and whether by share."""

    unit: str
    places: int
    low: float
    high: float
    differ: float
    by_share: bool = False


KINDS = {
    "melting-point": Kind("°C", 1, -150, 900, 5),
    "boiling-point": Kind("°C", 1, -50, 600, 5),
    "flash-point": Kind("°C", 0, -60, 350, 10),
    "density": Kind("g/mL", 4, 0.6, 2.5, 0.01, True),
    "refractive-index": Kind("", 4, 1.3, 1.7, 0.004),
    "specific-heat": Kind("kJ/(kg K)", 3, 0.5, 4.5, 0.05, True),
    "heat-of-vaporization": Kind("kJ/kg", 0, 50, 3000, 0.05, True),
    "lower-flammable-limit": Kind("% by volume", 2, 0.1, 30, 0.3, True),
    "heat-of-fusion": Kind("kJ/kg", 0, 20, 500, 0.1, True),
    "permittivity": Kind("", 2, 1.5, 200, 0.05, True),
    "hansen-dispersion": Kind("MPa^0.5", 1, 10, 25, 1.5),
    "hansen-polar": Kind("MPa^0.5", 1, 0, 30, 2.5),
    "hansen-hydrogen": Kind("MPa^0.5", 1, 0, 45, 3),
    "log-kow": Kind("", 2, -8, 20, 0.5),
    "molar-mass": Kind("g/mol", 2, 1, 5000, 0.1),
}

# Looked at one by one: what every table but one contradicts, where there is no third table to outvote it.
KNOWN_WRONG = {
    ("64-17-5", "flash-point", "serat-flash"): "ethanol flashes near 13 °C in a closed cup: the sign was lost",
    ("67-63-0", "flash-point", "serat-flash"): "2-propanol flashes near 12 °C in a closed cup",
    ("57-13-6", "flash-point", "serat-flash"): "lies below the melting point of a solid without vapour",
    ("69-72-7", "flash-point", "serat-flash"): "lies below the melting point of a solid without vapour",
    ("57-88-5", "boiling-point", "wikidata-constants"): "boils so low only at reduced pressure",
    ("124-04-9", "boiling-point", "wikidata-constants"): "boils so low only at reduced pressure",
}
# Two tables agree and a third differs, but the two are gathered from the same pages: both figures are kept.
UNDECIDED = {("60-12-8", "melting-point"), ("102-76-1", "melting-point")}
# Sold as a solution in water only: constants of the gas would mislead.
NOT_ITSELF = {"7647-01-0"}


def table(path, key="CAS"):
    opener = gzip.open if str(path).endswith(".gz") else open
    with opener(path, "rt", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file, delimiter="\t"):
            yield hyphenated(row[key].strip()), row


def number(text):
    try:
        return float(text)
    except (TypeError, ValueError):
        return None


def celsius(kelvin):
    return kelvin - KELVIN


def gather(folder, masses):
    """Every figure of every table by registry number and property."""
    found = {}

    def put(cas, kind, figure):
        if figure.value is not None:
            found.setdefault((cas, kind), []).append(figure)

    misc, phase = folder / "Misc", folder / "Phase Change"
    for name in ["Physical Constants of Organic Compounds.csv", "Physical Constants of Inorganic Compounds.csv"]:
        for cas, row in table(misc / name):
            short = "organic compounds" if "Organic" in name else "inorganic compounds"
            for column, kind in [("Tm", "melting-point"), ("Tb", "boiling-point")]:
                if (value := number(row[column])) is not None:
                    put(cas, kind, Figure(celsius(value), "crc-constants", f"{short}, {column} {row[column]} K"))
            density, melts = number(row["rho"]), number(row["Tm"])
            # The printed temperature of a density is lost in this table: only liquids at room temperature are taken.
            liquid = celsius(melts) < 18 if melts is not None else number(row.get("RI")) is not None
            if density and "Organic" in name and liquid:
                text = f"{short}, rho {row['rho']} kg/m3"
                put(cas, "density", Figure(density / 1000, "crc-constants", text, "20 °C to 25 °C"))
    for cas, row in table(phase / "OpenNotebook Melting Points.tsv"):
        if (value := number(row["Tm"])) is not None:
            put(cas, "melting-point", Figure(celsius(value), "open-notebook-melting", f"Tm {row['Tm']} K"))
    for cas, row in table(misc / "wikidata_properties.tsv"):
        for column, kind in [("Tm", "melting-point"), ("Tb", "boiling-point"), ("T_flash", "flash-point")]:
            if (value := number(row[column])) is not None:
                put(cas, kind, Figure(celsius(value), "wikidata-constants", f"{column} {row[column]} K"))
    for cas, row in table(misc / "CRC Handbook Organic RI.csv"):
        value, at = number(row["RI"]), number(row["RIT"])
        if value and at:
            text = f"RI {row['RI']} at {row['RIT']} K"
            put(cas, "refractive-index", Figure(value, "crc-refractive-index", text, f"{round(celsius(at))} °C"))
    for cas, row in table(folder / "Safety" / "DIPPR T_flash Serat.csv"):
        if (value := number(row["T_flash"])) is not None:
            put(cas, "flash-point", Figure(celsius(value), "serat-flash", f"{row['T_flash']} K"))
    for name, source in [("IS IEC 60079-20-1 2010.tsv", "iec-60079"), ("NFPA 497 2008.tsv", "nfpa-497")]:
        for cas, row in table(folder / "Safety" / name):
            if (value := number(row["T_flash"])) is not None:
                put(cas, "flash-point", Figure(celsius(value), source, f"{row['T_flash']} K"))
            if (value := number(row["LFL"])) is not None:
                put(cas, "lower-flammable-limit", Figure(value * 100, source, f"LFL {row['LFL']}"))
    for cas, row in table(phase / "CRC Handbook Heat of Vaporization.tsv"):
        mass = masses.get(cas)
        for column, at in [("Hvap298", "25 °C"), ("HvapTb", "")]:
            value, boils = number(row[column]), number(row["Tb"])
            if value and mass:
                at = at or f"{round(celsius(boils))} °C"
                put(cas, "heat-of-vaporization", Figure(value / mass, "crc-vaporization", f"{row[column]} J/mol", at))
                break
    for cas, row in table(phase / "CRC Handbook Heat of Fusion.tsv"):
        value, mass = number(row["Hfus"]), masses.get(cas)
        if value and mass:
            put(cas, "heat-of-fusion", Figure(value / mass, "crc-fusion", f"{row['Hfus']} J/mol"))
    heats = folder / "Heat Capacity" / "CRC Standard Thermodynamic Properties of Chemical Substances.tsv"
    for cas, row in table(heats):
        mass = masses.get(cas)
        value = number(row["Cpl"]) or number(row["Cps"])
        if value and mass:
            text = f"{value:g} J/(mol K)"
            put(cas, "specific-heat", Figure(value / mass, "crc-heat-capacity", text, "25 °C"))
    for cas, row in table(folder / "Electrolytes" / "Permittivity (Dielectric Constant) of Liquids.tsv"):
        value, at = number(row["Permittivity"]), number(row["T"])
        if value and at:
            put(cas, "permittivity", Figure(value, "crc-permittivity", f"at {row['T']} K", f"{round(celsius(at))} °C"))
    for name, source in [
        ("ruben_manuel_hansen_solubility_parameters.tsv", "hansen-diaz-2022"),
        ("alshehri_hansen_solubility_parameters.tsv", "hansen-alshehri-2022"),
    ]:
        for cas, row in table(misc / name):
            for column, kind in [("D", "dispersion"), ("P", "polar"), ("H", "hydrogen")]:
                if (value := number(row["HANSEN_DELTA_" + column])) is not None:
                    put(cas, "hansen-" + kind, Figure(value / 1000, source, ""))
    for name, source in [("Syrres logP data.csv.gz", "syracuse-logp"), ("CRC logP table.tsv", "crc-logp")]:
        for cas, row in table(folder / "Environment" / name):
            if (value := number(row["logP"])) is not None:
                put(cas, "log-kow", Figure(value, source, ""))
    return found


def identifiers(folder, wanted):
    """Formula and molar mass of the registry numbers asked for."""
    known = {}
    parts = ["pubchem small", "pubchem large", "example user db"]
    for name in [f"chemical identifiers {part}.tsv" for part in parts] + ["Inorganic db.tsv"]:
        with open(folder / "Identifiers" / name, encoding="utf-8") as file:
            for line in file:
                cells = line.split("\t", 8)
                if cells[1] in wanted:
                    known.setdefault(cells[1], (cells[2], float(cells[3]), cells[6]))
    return known


def choose(figures, kind, refuse, undecided=False):
    """The figures of a property worth keeping: one, or two that differ. What is refused is told why."""
    rule = KINDS[kind]
    inside = []
    for figure in figures:
        if rule.low <= figure.value <= rule.high:
            inside.append(figure)
        else:
            beyond = kind in ("melting-point", "boiling-point") and figure.value > rule.high
            reason = "beyond what a bench can reach" if beyond else "not believable"
            refuse(figure, f"{reason}: outside {rule.low:g} to {rule.high:g}")
    if not inside:
        return []
    middle = statistics.median_low([figure.value for figure in inside])
    limit = rule.differ * abs(middle) if rule.by_share else rule.differ
    near = [figure for figure in inside if abs(figure.value - middle) <= limit]
    far = [figure for figure in inside if abs(figure.value - middle) > limit]
    if len(near) >= 2 and not undecided:
        # Two that agree outvote one that is far off; it is kept in the log and not on the card.
        for figure in far:
            refuse(figure, f"{len(near)} other tables agree on {middle:g}")
        far = []
    best = min(near, key=lambda figure: (abs(figure.value - middle), inside.index(figure)))
    return [best] + far[:1]


def run(folder):
    folder = Path(folder)
    constituents = read("constituents.csv")
    substances = pure_substances(constituents)
    known = identifiers(folder, set(substances))
    masses = {cas: mass for cas, (_, mass, _) in known.items()}
    found = gather(folder, masses)
    refused = Log("refused.csv", ["constituent", "inci", "property", "value", "source", "reason"])
    replaced = Log(
        "replaced.csv",
        ["subject", "number", "name", "property", "was", "was_source", "now", "now_source", "difference"],
    )
    own = read("properties.csv")
    materials = {row["number"]: row for row in read("materials.csv")}
    names = {row["number"]: row["inci"] for row in constituents}
    elsewhere = {("log-kow", row["constituent"]) for row in read("partition.csv") if row["record"] == "logKow"}
    imported, done = [], set()
    for cas, substance in substances.items():
        number_of = substance["number"]
        if cas in NOT_ITSELF:
            continue
        for kind, rule in KINDS.items():
            if (kind, number_of) in elsewhere:
                continue
            figures = found.get((cas, kind), [])
            if kind == "molar-mass" and cas in masses:
                figures = [Figure(masses[cas], "chemicals-identifiers", "")]

            def refuse(figure, reason):
                refused.add(
                    constituent=number_of, inci=substance["inci"], property=kind,
                    value=plain(figure.value, rule.places), source=figure.source, reason=reason,
                )

            for figure in list(figures):
                if reason := KNOWN_WRONG.get((cas, kind, figure.source)):
                    refuse(figure, reason)
                    figures.remove(figure)
            # A substance with several numbers is described by the first one that has figures.
            if not figures or (number_of, kind) in done:
                continue
            done.add((number_of, kind))
            if kind == "boiling-point" and "." in known.get(cas, ("",))[0]:
                continue
            stated = [
                float(row["value"])
                for row in own
                if kind == "density" and row["property"] == kind and row["value"]
                and row["conditions"] in ("20 °C", "25 °C") and row["subject"] == "material"
                and materials[row["number"]]["constituent"] == number_of
            ]
            for figure in list(figures) if stated else []:
                if abs(figure.value / stated[0] - 1) > 0.01:
                    refuse(figure, f"more than 1 % from {stated[0]:g} at 20 °C: read at another temperature")
                    figures.remove(figure)
            for figure in choose(figures, kind, refuse, (cas, kind) in UNDECIDED):
                imported.append(
                    {
                        "subject": "constituent", "number": number_of, "property": kind,
                        "value": plain(figure.value, rule.places), "minimum": "", "maximum": "", "unit": rule.unit,
                        "conditions": figure.conditions, "note": "", "source": figure.source,
                        "locator": ", ".join(part for part in [cas, figure.table] if part), "basis": "published",
                    }
                )
    # One row a subject, property, condition, source and spot, however many numbers a substance has.
    unique = {}
    for row in imported:
        unique.setdefault((row["number"], row["property"], row["value"], row["source"]), row)
    imported = sorted(
        unique.values(), key=lambda row: (int(row["number"]), list(KINDS).index(row["property"]))
    )
    by_subject = {}
    for row in imported:
        by_subject.setdefault((row["number"], row["property"]), []).append(row)
    kept = []
    for row in own:
        number_of = row["number"] if row["subject"] == "constituent" else materials[row["number"]]["constituent"]
        news = by_subject.get((number_of, row["property"]), [])
        generic = row["source"] in {"crc-melting-points", "common-chemistry", "syracuse-logp", "crc-logp"}
        if generic and row["property"] in KINDS:
            if not news:
                refused.add(
                    constituent=number_of, inci=names.get(number_of, ""), property=row["property"], value=row["value"],
                    source=row["source"], reason="terms forbid commercial use, and no other open table has it"
                    if row["source"] == "common-chemistry" else "a number shared by several substances or a mixture",
                )
            elif row["source"] == "common-chemistry":
                replaced.add(
                    subject=row["subject"], number=row["number"], name=names[number_of], property=row["property"],
                    was=row["value"], was_source=row["source"], now=news[0]["value"], now_source=news[0]["source"],
                    difference=plain(float(news[0]["value"]) - float(row["value"]), 4),
                )
            continue
        pure_material = row["subject"] == "constituent" or row["conditions"] in ("", "20 °C", "25 °C")
        same_conditions = not row["conditions"] or any(
            not new["conditions"] or new["conditions"].split(" °C")[0] in ("20", "25") for new in news
        )
        if row["basis"] == "memory" and news and pure_material and same_conditions and row["value"]:
            now = news[0]
            replaced.add(
                subject=row["subject"], number=row["number"], name=names[number_of], property=row["property"],
                was=row["value"], was_source=row["source"], now=now["value"], now_source=now["source"],
                difference=plain(float(now["value"]) - float(row["value"]), 4),
            )
            continue
        if row["property"] in ("molar-mass",) and row["basis"] == "published":
            for new in news:
                imported.remove(new)
        kept.append(row)
    published = {
        (row["number"], row["property"])
        for row in kept
        if row["subject"] == "constituent" and row["basis"] == "published"
    }
    imported = [row for row in imported if (row["number"], row["property"]) not in published]
    write("properties.csv", kept, COLUMNS)
    write("properties-imported.csv", imported, COLUMNS)
    refused.save()
    replaced.save()
    formulas(constituents, substances, known)


def formulas(constituents, substances, known):
    """Fills the molecular formula of a substance that has none."""
    for cas, row in substances.items():
        formula = known.get(cas, ("",))[0]
        if formula and not row["formula"] and "." not in formula and "+" not in formula and "-" not in formula:
            row["formula"] = formula
    write("constituents.csv", constituents, list(constituents[0]))
