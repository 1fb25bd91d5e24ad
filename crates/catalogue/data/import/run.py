"""Imports open data into the data files. Run by hand; what it writes is committed, and no build fetches anything.

    python -m venv import-tools && pip install chemicals==1.5.2
    python run.py --inventory cosing.csv --foods sr28/ --solubility data_curated.csv

`README.md` beside this file says where the inputs come from. A part whose input is not named is left as it is.
"""

import argparse
from pathlib import Path

import identity
import oils
import solubility
import values


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--inventory", help="the inventory of cosmetic ingredients, a CSV of name, number, functions")
    parser.add_argument("--foods", help="folder of the food database with NUT_DATA.txt")
    parser.add_argument("--solubility", help="the curated solubility table, data_curated.csv")
    parser.add_argument("--no-constants", action="store_true", help="leave the physical constants as they are")
    arguments = parser.parse_args()
    if arguments.inventory:
        identity.run(arguments.inventory)
    if arguments.foods:
        oils.run(arguments.foods)
    if not arguments.no_constants:
        import chemicals

        values.run(Path(chemicals.__file__).parent)
    if arguments.solubility:
        solubility.run(arguments.solubility)


if __name__ == "__main__":
    main()
