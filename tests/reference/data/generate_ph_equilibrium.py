"""Writes ph_equilibrium.csv: equilibria of PHREEQC, run from Python (PyPI phreeqpython), on the catalogue's constants.

Run beside this file: python generate_ph_equilibrium.py > ph_equilibrium.csv
PHREEQC is the general chemistry program of the USGS (Parkhurst & Appelo). Its own solver and its own dielectric
constant, density and Davies equation are used; the constants are those of crates/catalogue/data (acid-steps.csv,
ion-pairs.csv) and the hydroxide pairs in HYDROXIDES, so that the comparison is of the solving and not of the constants.
Mixtures are fixed lists and a seeded draw; none is left out. Those beyond an ionic strength of 0.5 mol/kg, where the
Davies equation ends, are kept too: the core must refuse them.
"""

import csv
import importlib.metadata
import math
import pathlib
import random
import sys
import tempfile

import phreeqpython

HERE = pathlib.Path(__file__).parent
DATA = HERE / "../../../crates/catalogue/data"
R, T0 = 8.314462618, 298.15
CHARGE = {"Na": 1, "K": 1, "Mg": 2, "Ca": 2, "Zn": 2}
WATER = (-13.995, 55.81, -224.0)
HYDROXIDES = {"Na": (-0.75, -2.4), "K": (-0.46, 10.6), "Mg": (2.6, 12.0), "Ca": (1.3, 8.3), "Zn": (5.0, 0.0)}

ASKED = """SELECTED_OUTPUT
-reset false
-pH true
-ionic_strength true
-high_precision true
KNOBS
-convergence_tolerance 1e-12
-iterations 500
"""


def number(text):
    return float(text) if text else 0.0


def add(*constants):
    return tuple(sum(part) for part in zip(*constants))


def analytical(log_k, enthalpy, capacity):
    """log10 K = a + b T + c / T + d log10 T, the form of van 't Hoff's law with a constant heat capacity."""
    ln10 = math.log(10)
    a = log_k + (enthalpy * 1e3 / (R * T0) - capacity / R - capacity / R * math.log(T0)) / ln10
    c = (-enthalpy * 1e3 / R + capacity * T0 / R) / ln10
    return f"-analytical_expression {a:.12g} 0 {c:.12g} {capacity / R:.12g}"


def signed(charge):
    return {0: "", 1: "+", -1: "-"}.get(charge, f"{charge:+d}")


def read_acids():
    acids = {}
    for row in csv.DictReader(open(DATA / "acid-steps.csv")):
        new = {"charge": int(row["charge_acid_form"]), "steps": [], "pairs": []}
        acid = acids.setdefault(row["name"], new)
        acid["steps"].append((-float(row["pka"]), number(row["enthalpy"]), number(row["heat_capacity"])))
    for row in csv.DictReader(open(DATA / "ion-pairs.csv")):
        constant = (float(row["log_k"]), number(row["enthalpy"]), 0.0)
        acids[row["name"]]["pairs"].append((row["cation"], int(row["cations"]), int(row["lost"]), constant))
    letters = "abcdefghijklmnopqrstuvwxyz"
    for index, acid in enumerate(acids.values()):
        acid["element"] = "X" + letters[index // 26] + letters[index % 26]
    return acids


def database(acids):
    masters = ["H H+ -1 H 1.008", "H(0) H2 0 H", "H(1) H+ -1 H", "E e- 0 0 0"]
    masters += ["O H2O 0 O 16", "O(0) O2 0 O", "O(-2) H2O 0 0"]
    masters += [f"{c} {c}{signed(z)} 0 {c} 20" for c, z in CHARGE.items()] + ["Cl Cl- 0 Cl 35.45"]
    species = ["H+ = H+", "e- = e-", "H2O = H2O"]
    species += ["2H2O = O2 + 4H+ + 4e-\nlog_k -86.08", "2H+ + 2e- = H2\nlog_k -3.15"]
    species += [f"{c}{signed(z)} = {c}{signed(z)}" for c, z in CHARGE.items()] + ["Cl- = Cl-"]

    def made(reaction, constant, charge):
        neutral = "\n-gamma 1 0" if charge == 0 else ""
        species.append(f"{reaction}\nlog_k {constant[0]:.6g}\n{analytical(*constant)}{neutral}")

    made("H2O = OH- + H+", WATER, -1)
    for cation, (log_k, enthalpy) in HYDROXIDES.items():
        z = CHARGE[cation]
        constant = add((log_k, enthalpy, 0.0), WATER)
        made(f"{cation}{signed(z)} + H2O = {cation}OH{signed(z - 1)} + H+", constant, z - 1)
    for acid in acids.values():
        element, count = acid["element"], len(acid["steps"])
        low = acid["charge"] - count
        master = f"{element}{signed(low)}"
        masters.append(f"{element} {master} 0 {element} 100")
        species.append(f"{master} = {master}" + ("\n-gamma 1 0" if low == 0 else ""))
        held = {}
        for kept in range(1, count + 1):
            taken = add((0, 0, 0), *[tuple(-part for part in acid["steps"][count - 1 - at]) for at in range(kept)])
            held[kept] = taken
            charge = low + kept
            hydrogen = "H" if kept == 1 else f"H{kept}"
            made(f"{kept}H+ + {master} = {hydrogen}{element}{signed(charge)}", taken, charge)
        for cation, many, lost, constant in acid["pairs"]:
            kept = count - lost
            charge = low + kept + many * CHARGE[cation]
            whole = add(constant, held.get(kept, (0, 0, 0)))
            hydrogen = {0: "", 1: "H"}.get(kept, f"H{kept}")
            left = f"{many}{cation}{signed(CHARGE[cation])} + " + (f"{kept}H+ + " if kept else "") + master
            made(f"{left} = {cation}{many if many > 1 else ''}{hydrogen}{element}{signed(charge)}", whole, charge)
    return (
        "SOLUTION_MASTER_SPECIES\n" + "\n".join(masters) + "\nSOLUTION_SPECIES\n" + "\n".join(species) + "\nEND\n"
    )


def mixtures(acids):
    """Yields (title, temperature, acids, ions)."""
    single = [name for name in acids if "unit" not in name and "per COOH" not in name]
    for name in single:
        acid = acids[name]
        for moles, share in [(0.05, 0.5), (0.02, 1.0)]:
            equivalents = moles * (share * len(acid["steps"]) * 0.5 - acid["charge"])
            ions = {"Na": equivalents} if equivalents > 0 else {"Cl": -equivalents} if equivalents < 0 else {}
            yield f"{moles} {name}, partly neutralised", 25, {name: moles}, ions
    fixed = [
        ("citrate buffer, sodium 0.1", {"citric acid": 0.04}, {"Na": 0.1}),
        ("citrate buffer, sodium 0.3", {"citric acid": 0.12}, {"Na": 0.3}),
        ("citrate buffer, sodium 0.45", {"citric acid": 0.18}, {"Na": 0.45}),
        ("trisodium citrate", {"citric acid": 0.06}, {"Na": 0.18}),
        ("potassium citrate with magnesium", {"citric acid": 0.05}, {"K": 0.09, "Mg": 0.01}),
        (
            "benzoate, sorbate, citric acid",
            {"benzoic acid": 0.0347, "sorbic acid": 0.02, "citric acid": 0.0156},
            {"Na": 0.0347, "K": 0.02},
        ),
        (
            "gel: carbomer, TEA, disodium EDTA",
            {"carbomer (per acrylic unit)": 0.04, "triethanolamine": 0.03, "EDTA": 0.003},
            {"Na": 0.006},
        ),
        ("peel: glycolic, lactic, arginine", {"glycolic acid": 0.3, "lactic acid": 0.1, "arginine": 0.2}, {}),
        ("lactate cream: lactic acid, sodium lactate, PCA", {"lactic acid": 0.25, "PCA": 0.1}, {"Na": 0.25}),
        ("salicylic acid in bicarbonate", {"salicylic acid": 0.05, "carbonic acid": 0.06}, {"Na": 0.06}),
        (
            "hard water with EDTA and citrate",
            {"EDTA": 0.003, "citric acid": 0.01, "carbonic acid": 0.004},
            {"Ca": 0.002, "Mg": 0.001, "Na": 0.02},
        ),
        ("calcium beyond EDTA", {"EDTA": 0.002}, {"Ca": 0.004, "Na": 0.004, "Cl": 0.008}),
        ("phytate, partly neutralised", {"phytic acid": 0.005}, {"Na": 0.03}),
        ("phosphate, salt", {"phosphoric acid": 0.05}, {"Na": 0.275, "Cl": 0.2}),
        ("ascorbyl phosphate, citrate", {"ascorbyl phosphate": 0.08, "citric acid": 0.02}, {"Na": 0.22}),
        ("zinc PCA like", {"PCA": 0.06, "glycine": 0.02}, {"Zn": 0.03}),
        ("lye 0.1", {}, {"Na": 0.1}),
        ("strong acid 0.05", {}, {"Cl": 0.05}),
        ("salt water", {}, {"Na": 0.3, "Cl": 0.3}),
        ("sulfate, bisulfate", {"hydrogen sulfate": 0.1}, {"Na": 0.15}),
        ("Epsom salt, lactate", {"hydrogen sulfate": 0.03, "lactic acid": 0.1}, {"Mg": 0.03, "Na": 0.06}),
    ]
    for title, some, ions in fixed:
        for celsius in (25, 15, 40):
            yield title, celsius, some, ions
    draw = random.Random(17)
    for index in range(140):
        names = draw.sample(list(acids), draw.randint(3, 6))
        some = {name: round(10 ** draw.uniform(-3, -0.7), 5) for name in names}
        ions = {}
        for cation in draw.sample(["Na", "K"], draw.randint(1, 2)):
            ions[cation] = round(10 ** draw.uniform(-2.5, -0.4), 5)
        if index % 4 == 0:
            ions[draw.choice(["Mg", "Ca", "Zn"])] = round(10 ** draw.uniform(-4, -2), 6)
        if index % 3 == 0:
            ions["Cl"] = round(10 ** draw.uniform(-3, -0.7), 5)
        yield f"drawn {index + 1}", (25, 25, 15, 20, 30, 40)[index % 6], some, ions


def main():
    acids = read_acids()
    with tempfile.TemporaryDirectory() as folder:
        pathlib.Path(folder, "constants.dat").write_text(database(acids))
        program = phreeqpython.PhreeqPython(database="constants.dat", database_directory=pathlib.Path(folder))
    written = csv.writer(sys.stdout, lineterminator="\n")
    written.writerow(["case", "temperature_C", "acids", "ions", "pH", "ionic_strength", "source", "basis"])
    version = importlib.metadata.version("phreeqpython")
    source = f"PHREEQC through phreeqpython {version}; its solver, density, dielectric constant and Davies equation"
    for title, celsius, some, ions in mixtures(acids):
        found = None
        for guess in (7, 4, 10, 2, 12, 5.5, 8.5):
            lines = [f"temp {celsius}", "units mol/kgw", f"pH {guess} charge"]
            lines += [f"{acids[name]['element']} {moles}" for name, moles in some.items()]
            lines += [f"{ion} {moles}" for ion, moles in ions.items()]
            try:
                program.ip.run_string(ASKED + "SOLUTION 1\n" + "\n".join(lines) + "\nEND\n")
                rows = program.ip.get_selected_output_array()
            except Exception:
                continue
            head = list(rows[0])
            found = rows[-1][head.index("pH")], rows[-1][head.index("mu")]
            break
        if found is None:
            sys.exit(f"PHREEQC found nothing for {title}: {some} {ions}")
        join = lambda held: ";".join(f"{name}={moles:.8g}" for name, moles in held.items())
        ph, strength = (f"{figure:.5f}" for figure in found)
        written.writerow([title, celsius, join(some), join(ions), ph, strength, source, "computed"])


if __name__ == "__main__":
    main()
