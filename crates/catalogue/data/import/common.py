"""What every part of the import shares: reading and writing the data files, sources, logs, registry numbers."""

import csv
import io
import re
from pathlib import Path

DATA = Path(__file__).resolve().parent.parent
REFERENCE = DATA.parents[2] / "tests" / "reference" / "data"
LOGS = Path(__file__).resolve().parent

# A name with one of these is a polymer or a mixture of homologues, whatever number it shares.
POLYMER = re.compile(
    r"\bPEG\b|\bPPG\b|poly|eth-\d|-\d+\b.*(?:stearate|oleate|laurate)|dimethicone|siliconyl|cellulose|gum\b"
    r"|starch|alginat|carrageenan|pectin|chitosan|dextrin|hyaluron|carbomer|acrylate|copolymer|nylon|silica\b|gelatin"
    r"|collagen|glucan|guar|xanthan|konjac|glucomannan|hydrolyzed|lecithin|cera\b|wax\b|petrolatum|paraffin"
    r"|oil\b|butter\b|extract\b|juice|water$|powder|glucoside|lactylate|olivate|cocoate|palmitate/|lauroyl|cocoyl"
    r"|cocam|coco-|oleoyl|sulfosuccinate|sarcosinate|/",
    re.IGNORECASE,
)
# Classes of mixtures: a number that such a thing shares with a pure substance is not its own.
MIXTURES = {"oil", "butter", "wax", "extract", "essential-oil", "protein", "exfoliant", "fragrance", "surfactant"}


def read(name, folder=DATA):
    with open(Path(folder) / name, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def write(name, rows, columns, folder=DATA):
    text = io.StringIO()
    writer = csv.DictWriter(text, columns, lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    (Path(folder) / name).write_text(text.getvalue(), encoding="utf-8")


def numbers_of(cell):
    return [cas for cas in cell.split(" / ") if cas]


def check_digit_is_right(cas):
    if not re.fullmatch(r"\d{2,7}-\d{2}-\d", cas):
        return False
    digits = cas.replace("-", "")
    total = sum(int(digit) * place for place, digit in enumerate(reversed(digits[:-1]), 1))
    return total % 10 == int(digits[-1])


def hyphenated(number):
    text = str(number)
    return text if "-" in text else f"{text[:-3]}-{text[-3:-1]}-{text[-1]}"


def plain(value, places):
    """A number as the data files want it: no exponent, no idle zeros."""
    text = f"{value:.{places}f}"
    return (text.rstrip("0").rstrip(".") if "." in text else text).replace("-0", "-0") or "0"


def pure_substances(constituents):
    """Constituents that are one substance each, by registry number; a number that stays shared is left out."""
    owners = {}
    for row in constituents:
        if row["class"] in MIXTURES or POLYMER.search(row["inci"]):
            continue
        for cas in numbers_of(row["cas"]):
            owners.setdefault(cas, []).append(row)
    pure = {}
    for cas, rows in owners.items():
        # Of two that share a number, one with a formula is the substance and the other is made of it: sea salt.
        exact = rows if len(rows) == 1 else [row for row in rows if row["formula"]]
        if len(exact) == 1:
            pure[cas] = exact[0]
    return pure


class Log:
    """What was replaced and what was refused, each with its reason; kept in git beside the data."""

    def __init__(self, name, columns):
        self.name, self.columns = name, columns
        path = LOGS / name
        self.rows = read(name, LOGS) if path.exists() else []

    def add(self, **row):
        row = {column: str(row.get(column, "")) for column in self.columns}
        if row not in self.rows:
            self.rows.append(row)

    def save(self):
        write(self.name, self.rows, self.columns, LOGS)
