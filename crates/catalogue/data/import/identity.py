"""Names, registry numbers and functions against the European Commission's inventory of cosmetic ingredients.

The inventory is matched by INCI name, because name, number and function stand side by side in it: that row is the
fact. A copy that keeps one number a row is enough to confirm ours, not to say that a second one is wrong.
"""

import csv
from common import Log, check_digit_is_right, numbers_of, read, write

SOURCE = "cosing-inventory-2020"

# Numbers of ours that were looked up one by one: each belongs to another plant, protein or ester. The copy keeps the
# first number of a row, so a mere mismatch does not prove a number wrong; these were read as another thing's number.
WRONG = {
    "116": "151661-87-9",
    "150": "84696-25-3",
    "156": "97676-26-1",
    "158": "68956-68-3",
    "238": "144470-58-6",
    "435": "94350-05-7",
    "455": "90045-38-8",
    "461": "9009-62-5",
    "177": "91082-88-1",
}


def inventory(path):
    by_name, by_cas = {}, {}
    with open(path, newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            by_name.setdefault(row["inci_name"].strip().upper(), row)
            if row["cas_number"]:
                by_cas.setdefault(row["cas_number"], []).append(row["inci_name"].strip())
    return by_name, by_cas


def run(path):
    by_name, by_cas = inventory(path)
    log = Log("identity.csv", ["constituent", "inci", "was", "now", "reason"])
    rows = read("constituents.csv")
    taken = {cas for row in rows for cas in numbers_of(row["cas"])}
    for row in rows:
        found = by_name.get(row["inci"].upper())
        if row["basis"] != "memory" or not (found or row["number"] in WRONG):
            continue
        listed = found["cas_number"] if found and check_digit_is_right(found["cas_number"]) else ""
        ours = numbers_of(row["cas"])
        before = row["cas"]
        reason = ""
        if row["number"] in WRONG and WRONG[row["number"]] in ours:
            wrong = WRONG[row["number"]]
            ours = [cas for cas in ours if cas != wrong] or ([listed] if listed else [])
            reason = "the number is that of " + "; ".join(sorted(by_cas[wrong])[:3])
        elif not ours and listed and listed not in taken:
            ours, reason = [listed], "filled from the inventory"
        if listed and ours and listed not in ours and listed not in taken:
            ours, reason = [listed] + ours, reason or "the inventory's number added before ours"
        row["cas"] = " / ".join(ours)
        taken.update(ours)
        # Published only if nothing stands in the cell that the inventory does not say.
        if found and ours in ([], [listed]) and (ours or not found["cas_number"]):
            row["source"], row["locator"], row["basis"] = SOURCE, "", "published"
        if row["cas"] != before:
            log.add(constituent=row["number"], inci=row["inci"], was=before, now=row["cas"], reason=reason)
    write("constituents.csv", rows, list(rows[0]))
    log.save()

    names = {row["number"]: row["inci"].upper() for row in rows}
    functions = read("functions.csv")
    for row in functions:
        found = by_name.get(names[row["constituent"]])
        if found and found["function"]:
            words = [word.strip().lower() for word in found["function"].split(",")]
            row.update(functions="; ".join(words), source=SOURCE, locator="", basis="published")
    have = {row["constituent"] for row in functions}
    for number, name in names.items():
        found = by_name.get(name)
        if number not in have and found and found["function"]:
            words = [word.strip().lower() for word in found["function"].split(",")]
            row = {"constituent": number, "functions": "; ".join(words)}
            functions.append(row | {"source": SOURCE, "locator": "", "basis": "published"})
    write("functions.csv", functions, list(functions[0]))
