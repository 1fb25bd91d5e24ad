"""Writes linear_programs.csv: linear programs and their least cost by HiGHS, run from Python (PyPI scipy).

Run beside this file: python generate_linear_programs.py > linear_programs.csv
HiGHS is an open solver of linear programs (Huangfu and Hall, Math. Prog. Comp. 10 (2018) 119). Its tolerances are set to the
finest it takes. The programs are a seeded draw of the shapes that remaking a formula asks for, with degenerate, badly
scaled, infeasible and unbounded ones, and a few that are known to make a simplex method cycle or crawl, recalled from
textbooks. None is left out.

columns: "cost low high" parted by "|"; rows: "low high column:factor ..." parted by "|"; "inf" and "-inf" for no bound.
"""

import csv
import importlib.metadata
import random
import sys

import numpy
from scipy.optimize import linprog

INF = float("inf")
draw = random.Random(int(sys.argv[1]) if len(sys.argv) > 1 else 20261127)


def short(value, digits=5):
    return float(f"{value:.{digits}g}")


class Program:
    def __init__(self):
        self.columns, self.rows = [], []

    def column(self, cost, low, high):
        self.columns.append((short(cost), short(low), short(high)))
        return len(self.columns) - 1

    def row(self, terms, low, high):
        merged = {}
        for at, factor in terms:
            merged[at] = merged.get(at, 0.0) + factor
        terms = [(at, short(factor)) for at, factor in sorted(merged.items()) if factor]
        self.rows.append((terms, short(low, 9), short(high, 9)))

    def solve(self):
        upper, upper_sides, equal, equal_sides = [], [], [], []
        for terms, low, high in self.rows:
            line = numpy.zeros(len(self.columns))
            for at, factor in terms:
                line[at] = factor
            if low == high:
                equal.append(line)
                equal_sides.append(low)
                continue
            if high < INF:
                upper.append(line)
                upper_sides.append(high)
            if low > -INF:
                upper.append(-line)
                upper_sides.append(-low)
        options = {"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10, "presolve": True}
        arguments = dict(
            c=[cost for cost, _, _ in self.columns],
            A_ub=upper or None, b_ub=upper_sides or None, A_eq=equal or None, b_eq=equal_sides or None,
            bounds=[(low, None if high == INF else high) for _, low, high in self.columns],
        )
        found = linprog(method="highs-ds", options=options, **arguments)
        if found.status == 4:
            # Presolve could not tell infeasible from unbounded.
            found = linprog(method="highs-ds", options={**options, "presolve": False}, **arguments)
        status = {0: "optimal", 2: "infeasible", 3: "unbounded"}[found.status]
        return status, found.fun if status == "optimal" else None


def makeups(materials, constituents, step=1.0):
    """What each material is made of: shares that make 1."""
    answer = []
    for _ in range(materials):
        count = draw.choice([1, 1, 2, 3, 4])
        inside = draw.sample(range(constituents), min(count, constituents))
        parts = [draw.random() + 0.05 for _ in inside]
        answer.append({at: short(part / sum(parts), 4) for at, part in zip(inside, parts)})
    return answer


def nearest(materials, constituents, scale=1.0, ties=False):
    """Least weighted sum of absolute deviations from a target, the amounts summing to 100."""
    program = Program()
    inside = makeups(materials, constituents)
    if ties:
        # The same materials again, and amounts that fit exactly: many answers, many bases.
        inside = inside[: max(1, materials // 2)] * 2
    whole = [draw.choice([0, 1, 2, 5]) if ties else draw.random() for _ in inside]
    total = sum(whole) or 1
    target = [0.0] * constituents
    for share, parts in zip(whole, inside):
        for at, part in parts.items():
            target[at] += 100 * share / total * part
    if not ties:
        target = [max(0.0, value + draw.choice([0, 0, 3, -3]) * draw.random()) for value in target]
    amounts = [program.column(0.0, 0.0, draw.choice([100, 100, 40, 10]) * scale) for _ in inside]
    for at in range(constituents):
        weight = draw.choice([1, 1, 1, 5, 20])
        over, under = program.column(weight / scale, 0, INF), program.column(weight / scale, 0, INF)
        terms = [(amounts[place], parts[at]) for place, parts in enumerate(inside) if at in parts]
        value = short(target[at] * scale, 7)
        program.row(terms + [(over, -1.0), (under, 1.0)], value, value)
    program.row([(amount, 1.0) for amount in amounts], 100 * scale, 100 * scale)
    return program


def banded(materials, constituents, width):
    """As above with bands that must hold: often infeasible where they are narrow."""
    program = nearest(materials, constituents)
    inside = [row for row in program.rows[:constituents]]
    for terms, value, _ in draw.sample(inside, max(1, constituents // 2)):
        own = [(at, factor) for at, factor in terms if program.columns[at][0] == 0.0]
        middle = value * draw.choice([1, 1, 1.05, 0.9])
        program.row(own, max(0.0, middle - width), middle + width)
    # A balance of emulsifiers, linearised, and a cap on what some bring.
    chosen = draw.sample(range(len(inside)), min(3, len(inside)))
    program.row([(at, draw.uniform(-8, 8)) for at in chosen], -INF, draw.choice([0.0, 0.0, 5.0]))
    return program


def alligation():
    """Two or three strengths to one strength, at least cost."""
    program = Program()
    strengths = [short(draw.uniform(0, 100), 3) for _ in range(draw.choice([2, 2, 3, 4]))]
    amounts = [program.column(short(draw.uniform(0.1, 9), 3), 0, draw.choice([INF, 60])) for _ in strengths]
    wanted = short(draw.uniform(5, 80), 3)
    program.row([(amount, 1.0) for amount in amounts], 100, 100)
    program.row([(amount, strength / 100) for amount, strength in zip(amounts, strengths)], wanted, wanted)
    return program


def transport(suppliers, takers):
    """Supplies that equal what is asked for: each basis is degenerate."""
    program = Program()
    asked = [draw.choice([5, 10, 20]) for _ in range(takers)]
    supplied = [0] * suppliers
    for amount in asked:
        supplied[draw.randrange(suppliers)] += amount
    route = [[program.column(draw.randint(1, 9), 0, INF) for _ in range(takers)] for _ in range(suppliers)]
    for place, amount in enumerate(supplied):
        program.row([(each, 1.0) for each in route[place]], amount, amount)
    for place, amount in enumerate(asked):
        program.row([(line[place], 1.0) for line in route], amount, amount)
    return program


def badly_scaled(columns, rows):
    """Factors over many powers of ten: peptides beside water. HiGHS leaves out factors below 1e-9, so none comes near it."""
    program = Program()
    sizes = [10.0 ** draw.randint(-4, 4) for _ in range(columns)]
    point = [draw.choice([0, 1, 2]) * draw.random() / size for size in sizes]
    for size in sizes:
        program.column(draw.uniform(0.1, 5) * size, 0, draw.choice([INF, 50 / size]))
    for _ in range(rows):
        terms = [(at, draw.choice([-1, 1, 1]) * draw.uniform(0.1, 3) * sizes[at]) for at in draw.sample(range(columns), min(columns, 4))]
        stretch = 10.0 ** draw.randint(-2, 2)
        terms = [(at, short(factor * stretch)) for at, factor in terms]
        value = sum(factor * point[at] for at, factor in terms)
        room = abs(value) * draw.choice([0.0, 0.1, 0.5])
        program.row(terms, value - room if draw.random() < 0.7 else -INF, value + room if draw.random() < 0.7 else INF)
        terms, low, high = program.rows[-1]
        if room == 0.0 and low > -INF and high < INF:
            program.rows[-1] = (terms, low, low)
    return program


def contradiction(columns):
    """A sound program with rows that no amounts satisfy together."""
    program = banded(columns, max(3, columns // 2), 20)
    count = len([1 for cost, _, _ in program.columns if cost == 0.0])
    chosen = draw.sample(range(count), min(3, count))
    terms = [(at, draw.uniform(0.2, 1)) for at in chosen]
    bound = draw.uniform(5, 20)
    program.row(terms, -INF, bound)
    program.row(terms, bound + draw.choice([0.01, 0.5, 5]), INF)
    return program


def unbounded(columns):
    program = Program()
    for _ in range(columns):
        program.column(draw.uniform(-1, 1), 0, INF)
    program.row([(at, draw.uniform(0.1, 2)) for at in range(columns)], 1, INF)
    program.columns[0] = (-1.0, 0.0, INF)
    return program


def textbook():
    beale = Program()
    for cost in (-0.75, 150, -0.02, 6):
        beale.column(cost, 0, INF)
    beale.row([(0, 0.25), (1, -60), (2, -0.04), (3, 9)], -INF, 0)
    beale.row([(0, 0.5), (1, -90), (2, -0.02), (3, 3)], -INF, 0)
    beale.row([(2, 1)], -INF, 1)
    yield "cycling after Beale 1955", beale
    chvatal = Program()
    for cost in (-10, 57, 9, 24):
        chvatal.column(cost, 0, INF)
    chvatal.row([(0, 0.5), (1, -5.5), (2, -2.5), (3, 9)], -INF, 0)
    chvatal.row([(0, 0.5), (1, -1.5), (2, -0.5), (3, 1)], -INF, 0)
    chvatal.row([(0, 1)], -INF, 1)
    yield "cycling after Chvatal 1983", chvatal
    for size in (3, 6, 8):
        cube = Program()
        for at in range(size):
            cube.column(-(2.0 ** (size - 1 - at)), 0, INF)
        for at in range(size):
            cube.row([(other, 2.0 ** (at - other + 1)) for other in range(at)] + [(at, 1.0)], -INF, 5.0 ** (at + 1))
        yield f"cube of {size} after Klee and Minty 1972", cube


def cases():
    yield from textbook()
    for _ in range(150):
        yield "nearest", nearest(draw.randint(3, 9), draw.randint(3, 7))
    for _ in range(120):
        yield "bands", banded(draw.randint(4, 9), draw.randint(4, 7), draw.choice([0.2, 1, 3, 8]))
    for _ in range(80):
        yield "alligation", alligation()
    for _ in range(60):
        yield "degenerate: ties", nearest(draw.randint(4, 9), draw.randint(3, 6), ties=True)
    for _ in range(40):
        yield "degenerate: supplies", transport(draw.randint(2, 4), draw.randint(2, 5))
    for _ in range(90):
        yield "badly scaled", badly_scaled(draw.randint(3, 8), draw.randint(2, 6))
    for _ in range(20):
        yield "badly scaled: small wholes", nearest(draw.randint(3, 7), draw.randint(3, 6), scale=draw.choice([1e-4, 1e3]))
    for _ in range(60):
        yield "contradiction", contradiction(draw.randint(4, 7))
    for _ in range(12):
        yield "unbounded", unbounded(draw.randint(2, 6))
    for _ in range(4):
        yield "large", nearest(60, 40)


def text(value):
    return "inf" if value == INF else "-inf" if value == -INF else repr(float(f"{value:.12g}"))


def main():
    writer = csv.writer(sys.stdout, lineterminator="\n")
    writer.writerow(["family", "columns", "rows", "status", "cost", "source", "basis"])
    source = f"HiGHS by scipy {importlib.metadata.version('scipy')}"
    for family, program in cases():
        status, cost = program.solve()
        columns = "|".join(" ".join(map(text, column)) for column in program.columns)
        rows = "|".join(
            " ".join([text(low), text(high)] + [f"{at}:{text(factor)}" for at, factor in terms])
            for terms, low, high in program.rows
        )
        writer.writerow([family, columns, rows, status, "" if cost is None else repr(cost), source, "computed"])


main()
