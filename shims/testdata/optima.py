#!/usr/bin/env python3
"""Makes optima.json: shim problems with their optima, found by two solvers of
integer programs that share no line with the package.

    python3 optima.py            # glpsol and cbc have to be on the path

Each problem is written as an integer program by the words of the package comment:
how many of each kind of piece lie under each foot, with the five objectives one
after the other, each held at its least before the next is minimised. GLPK and CBC
solve every stage on their own; a case is stored only if both come to the same
number at every stage. A case on which they differ, or that one of them does not
finish in time, is left out, and the run says so.

CBC runs with its preprocessing off: with it, CBC 2.10.8 calls 10 the least number
of pieces in the very first case, where GLPK, CBC without it, and a look at the
case (0.1 mm is one piece, not two of 0.05 mm) give 9.

Standard library only. Lengths are whole nanometres; inside a program they are
divided by their greatest common divisor, which keeps the numbers small.
"""

import json
import math
import os
import random
import re
import subprocess
import sys
import tempfile

LIMIT = 40  # seconds for one stage
OBJECTIVES = ["short", "excess", "pieces", "error", "handled"]

INCH = [25_400 * n for n in (1, 2, 3, 4, 5, 10, 15, 20, 25, 31, 50, 62, 75, 100, 125)]
METRIC = [10_000 * n for n in (5, 10, 20, 25, 40, 50, 70, 100, 200, 300)]


# Problems.

def piece(marked, measured=0, count=0):
    return {"marked": marked, "measured": measured, "count": count}


def thickness(p):
    return p["measured"] or p["marked"]


def draw(rng, feet, sizes, counts, grid, packs=0, keep=0, pieces=4, error=25_000, measured=False, span=(0, 4_000_000)):
    """Draws a problem: feet with wanted changes on a grid, from a stock with
    counts between two bounds, and present packs of so many pieces at most."""
    stock = []
    for nm in sizes:
        p = piece(nm, count=rng.randint(*counts))
        if measured and rng.random() < 0.5:
            p["measured"] = nm + 1_000 * rng.randint(-4, 4)
        stock.append(p)
    orders = []
    for i in range(feet):
        now = {}
        for _ in range(rng.randint(0, packs)):
            k = rng.randrange(len(stock))
            now[k] = now.get(k, 0) + 1
        now = [dict(stock[k], count=n) for k, n in sorted(now.items())]
        there = sum(thickness(p) * p["count"] for p in now)
        change = grid * (rng.randint(*span) // grid)
        if now:
            change -= grid * (there // grid)  # the pack stands for what is wanted, more or less
        orders.append({"foot": "foot %d" % (i + 1), "correction": change, "now": now})
    return {"stock": stock, "rule": {"error": error, "pieces": pieces, "keep": keep}, "orders": orders}


def problems():
    """Yields (name, reason, problem)."""
    for n in range(6):
        rng = random.Random("four plenty %d" % n)
        yield "four feet, plenty, metric %d" % n, "what a full box answers", draw(rng, 4, METRIC, (8, 20), 10_000)
    for n in range(6):
        rng = random.Random("four scarce %d" % n)
        yield "four feet, scarce, metric %d" % n, "the feet are in each other's way", draw(rng, 4, METRIC, (0, 2), 10_000, packs=2)
    for n in range(6):
        rng = random.Random("four inch %d" % n)
        yield "four feet, scarce, inch, packs %d" % n, "packs to be reused", draw(rng, 4, INCH, (0, 2), 12_700, packs=3, error=12_700)
    for n in range(5):
        rng = random.Random("four measured %d" % n)
        yield "four feet, measured, keep %d" % n, "thicknesses off the marks, and a total to keep", draw(
            rng, 4, METRIC, (0, 3), 1_000, packs=2, measured=True, keep=1_000_000, pieces=3, error=10_000)
    for n in range(5):
        rng = random.Random("four no stock %d" % n)
        yield "four feet, no stock, packs only %d" % n, "what comes out of one foot goes under another", draw(
            rng, 4, METRIC, (0, 0), 50_000, packs=6, span=(300_000, 3_000_000))
    for n in range(5):
        rng = random.Random("eight mixed %d" % n)
        yield "eight feet, inch and metric mixed %d" % n, "two systems in one box", draw(
            rng, 8, INCH[::2] + METRIC[::2], (0, 4), 200, packs=2, error=12_700)
    for n in range(5):
        rng = random.Random("eight scarce %d" % n)
        yield "eight feet, scarce, metric %d" % n, "the feet are in each other's way", draw(rng, 8, METRIC, (1, 4), 50_000, packs=2)
    for n in range(5):
        rng = random.Random("eight five pieces %d" % n)
        yield "eight feet, five pieces, inch %d" % n, "more pieces a foot", draw(
            rng, 8, INCH, (1, 3), 25_400, pieces=5, error=25_400, packs=2)
    for n in range(5):
        rng = random.Random("sixteen plenty %d" % n)
        yield "sixteen feet, plenty, inch %d" % n, "what a full box answers", draw(rng, 16, INCH, (10, 30), 25_400, packs=2)
    for n in range(6):
        rng = random.Random("sixteen scarce %d" % n)
        yield "sixteen feet, scarce, metric %d" % n, "a box that is not quite full", draw(rng, 16, METRIC, (3, 7), 50_000, packs=2)


# Integer programs.

def kinds_of(problem):
    """Lists the kinds of pieces, and how many there are of each in all."""
    kinds = {}
    for p in problem["stock"] + [p for o in problem["orders"] for p in o["now"]]:
        key = (p["marked"], p["measured"])
        kinds[key] = kinds.get(key, 0) + p["count"]
    return sorted(kinds.items())


class Program:
    """The integer program of a problem, in CPLEX LP format."""

    def __init__(self, problem):
        kinds = kinds_of(problem)
        rule, orders = problem["rule"], problem["orders"]
        wanted = [o["correction"] + sum(thickness(p) * p["count"] for p in o["now"]) for o in orders]
        thick = [measured or marked for (marked, measured), _ in kinds]
        self.unit = math.gcd(rule["error"], rule["keep"], *wanted, *thick)
        u = self.unit
        self.rows, self.integers, self.bounds = [], [], []
        self.terms = {name: [] for name in OBJECTIVES}
        self.lengths = {"short", "excess", "error"}
        for k, (_, count) in enumerate(kinds):
            self.rows.append(" + ".join("x%d_%d" % (i, k) for i in range(len(orders))) + " <= %d" % count)
        for i, o in enumerate(orders):
            now = {(p["marked"], p["measured"]): p["count"] for p in o["now"]}
            xs = ["x%d_%d" % (i, k) for k in range(len(kinds))]
            total = " + ".join("%d %s" % (t // u, x) for t, x in zip(thick, xs))
            w = wanted[i] // u
            self.rows += [
                " + ".join(xs) + " <= %d" % rule["pieces"],
                "%s - e%d <= %d" % (total, i, w),
                "%s + e%d >= %d" % (total, i, w),
                "e%d - b%d <= %d" % (i, i, rule["error"] // u),
                "%s + s%d >= %d" % (total, i, rule["keep"] // u),
            ]
            self.integers += xs
            for k, (kind, _) in enumerate(kinds):
                there = now.get(kind, 0)
                # h is the size of x - there
                self.rows += ["x%d_%d - h%d_%d <= %d" % (i, k, i, k, there), "x%d_%d + h%d_%d >= %d" % (i, k, i, k, there)]
                self.terms["handled"].append("h%d_%d" % (i, k))
            self.terms["short"].append("s%d" % i)
            self.terms["excess"].append("b%d" % i)
            self.terms["pieces"] += xs
            self.terms["error"].append("e%d" % i)

    def text(self, objective, held):
        """The program for one objective, with those before it held."""
        rows = self.rows + [" + ".join(self.terms[name]) + " <= %d" % value for name, value in held]
        return "\n".join(
            ["Minimize", " obj: " + wrapped(" + ".join(self.terms[objective])), "Subject To"]
            + [" r%d: %s" % (n, wrapped(row)) for n, row in enumerate(rows)]
            + ["General"] + [" " + x for x in self.integers] + ["End", ""])


def wrapped(row):
    """Breaks a long row, which the solvers' readers ask for."""
    return re.sub(r"((?:[^+]*\+){8})", r"\1\n  ", row)


def glpsol(path):
    out = path + ".glp"
    subprocess.run(["glpsol", "--lp", path, "--cuts", "--tmlim", str(LIMIT), "-w", out], capture_output=True, check=True)
    with open(out) as f:
        for line in f:
            if line.startswith("s mip"):
                _, _, _, _, status, value = line.split()
                return float(value) if status == "o" else None
    raise RuntimeError("glpsol: no solution line")


def cbc(path):
    out = path + ".cbc"
    subprocess.run(["cbc", path, "preprocess", "off", "ratioGap", "0", "allowableGap", "0", "seconds", str(LIMIT), "solve", "solution", out], capture_output=True, check=True)
    with open(out) as f:
        head = f.readline()
    found = re.match(r"Optimal - objective value ([-+.\deE]+)", head)
    return float(found.group(1)) if found else None


def optimum(problem, folder):
    """Returns the least of each objective, or None and why there is none: None of a
    solver is that it did not finish."""
    program, held = Program(problem), []
    path = os.path.join(folder, "stage.lp")
    for objective in OBJECTIVES:
        with open(path, "w") as f:
            f.write(program.text(objective, held))
        values = [glpsol(path), cbc(path)]
        if None in values:
            return None, "%s: glpsol %s, cbc %s" % (objective, *values)
        whole = [round(v) for v in values]
        if whole[0] != whole[1] or any(abs(v - w) > 1e-4 for v, w in zip(values, whole)):
            return None, "%s: the solvers differ: glpsol %s, cbc %s" % (objective, *values)
        held.append((objective, whole[0]))
    return {name: value * (program.unit if name in program.lengths else 1) for name, value in held}, ""


# The file.

def length(nm):
    return "%d nm" % nm


def wire(problem):
    """The problem as the package writes it."""
    def pieces(list_):
        out = []
        for p in list_:
            q = {"marked": length(p["marked"])}
            if p["measured"]:
                q["measured"] = length(p["measured"])
            out.append(dict(q, count=p["count"]))
        return out

    rule = problem["rule"]
    return {
        "stock": pieces(problem["stock"]),
        "rule": {"error": length(rule["error"]), "pieces": rule["pieces"], "keep": length(rule["keep"])},
        "orders": [{"foot": o["foot"], "correction": length(o["correction"]), "now": pieces(o["now"])} for o in problem["orders"]],
    }


def version(command, pattern):
    text = subprocess.run(command, capture_output=True, text=True).stdout
    return re.search(pattern, text).group(0)


def main():
    cases = []
    with tempfile.TemporaryDirectory() as folder:
        for name, reason, problem in problems():
            best, why = optimum(problem, folder)
            if best is None:
                print("LEFT OUT: %s: %s" % (name, why), flush=True)
                continue
            print(name, best, flush=True)
            best = {k: length(v) if k in ("short", "excess", "error") else v for k, v in best.items()}
            cases.append(dict(name=name, reason=reason, **wire(problem), best=best))
    head = {
        "made_by": "shims/testdata/optima.py",
        "solvers": [version(["glpsol", "--version"], r"GLPK LP/MIP Solver [\d.]+"), version(["cbc", "-quit"], r"Version: [\d.]+").replace("Version:", "CBC")],
    }
    with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "optima.json"), "w") as f:
        lines = ",\n".join("  " + json.dumps(c, separators=(",", ":")) for c in cases)
        f.write("{\n" + "".join(" %s: %s,\n" % (json.dumps(k), json.dumps(v)) for k, v in head.items()) + ' "cases": [\n' + lines + "\n ]\n}\n")
    print(len(cases), "cases")


if __name__ == "__main__":
    main()
