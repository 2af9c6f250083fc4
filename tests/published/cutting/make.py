"""Makes generated.json: cutting problems whose least total a general-purpose solver proved.

Solver: OR-Tools CP-SAT (PyPI package "ortools"; the version used is in the file). Model: every
maximal way to cut one stick is enumerated; whole numbers of each; every piece covered; the total
bought is least. Only problems with status OPTIMAL are kept. Lengths are in 64ths of an inch, costs
in cents. n pieces from one stick take n - 1 kerfs.

    python3 -m venv v && v/bin/pip install ortools && v/bin/python make.py > generated.json
"""

import json
import random
from importlib.metadata import version

from ortools.sat.python import cp_model

INCH = 64


def patterns(cap, items, kerf):
    """Every way to fill one stick that no further wanted piece fits."""
    found = []

    def go(i, room, cuts):
        if i == len(items):
            if any(l + kerf <= room and cuts[k] < n for k, (l, n) in enumerate(items)):
                return
            if any(cuts):
                found.append(tuple(cuts))
            return
        length, want = items[i]
        for n in range(min(want, room // (length + kerf)), -1, -1):
            go(i + 1, room - n * (length + kerf), cuts + [n])

    go(0, cap + kerf, [])
    return found


def solve(stock, items, kerf):
    model = cp_model.CpModel()
    columns = [(s, p) for s in stock for p in patterns(s["length"], items, kerf)]
    if len(columns) > 30000:
        return None
    most = sum(n for _, n in items)
    x = [model.NewIntVar(0, most, "") for _ in columns]
    for i, (_, want) in enumerate(items):
        model.Add(sum(x[j] * p[i] for j, (_, p) in enumerate(columns) if p[i]) >= want)
    for s in stock:
        if s["on_hand"]:
            model.Add(sum(x[j] for j, (t, _) in enumerate(columns) if t is s) <= s["on_hand"])
    cost = lambda s: 0 if s["on_hand"] else (s["cents"] or s["length"])
    model.Minimize(sum(x[j] * cost(s) for j, (s, _) in enumerate(columns)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 2
    solver.parameters.max_time_in_seconds = 60
    status = solver.Solve(model)
    if status != cp_model.OPTIMAL or solver.BestObjectiveBound() != solver.ObjectiveValue():
        return None
    return int(solver.ObjectiveValue())


def make(rng, number):
    kinds = rng.choice([2, 3, 4, 5, 6, 7, 8, 9, 10])
    grid = rng.choice([4, 4, 4, 2])  # sixteenths, or thirty-seconds
    lengths = sorted({rng.randrange(18 * INCH // grid, 94 * INCH // grid) * grid for _ in range(kinds)}, reverse=True)
    items = [(l, rng.randrange(1, 13)) for l in lengths]
    kerf = rng.choice([8, 8, 8, 0, 6, 4])
    feet = rng.choice([[8], [8, 12], [8, 10, 12], [8, 10, 12, 16], [10, 16], [8, 12, 16, 20]])
    priced = number % 3 == 2
    cents = lambda f: round(f * 101 * rng.uniform(0.9, 1.15)) if priced else None
    stock = [{"length": f * 12 * INCH, "cents": cents(f), "on_hand": None} for f in feet]
    if number % 4 == 1:
        for _ in range(rng.choice([1, 2])):
            stock.append({"length": rng.randrange(30 * 16, 90 * 16) * 4, "cents": None, "on_hand": rng.choice([1, 2, 3])})
    return stock, items, kerf


def main():
    rng = random.Random(20)
    instances = []
    while len(instances) < 48:
        stock, items, kerf = make(rng, len(instances))
        least = solve(stock, items, kerf)
        if least is None:
            continue
        instances.append({
            "id": f"G{len(instances) + 1}", "kerf": kerf, "stock": stock,
            "pieces": [{"length": l, "count": n} for l, n in items],
            "least": least, "unit": "cents" if stock[0]["cents"] else "64ths of an inch",
        })
    rows = ",\n".join(json.dumps(i) for i in instances)
    print(f'{{"solver": "OR-Tools CP-SAT {version("ortools")}", "status": "OPTIMAL, bound equal to value", "instances": [\n{rows}\n]}}')


if __name__ == "__main__":
    main()
