"""Writes shims.json: which shims from one box go under which foot.

Run from testdata: python3 generate/shims.py (Python 3.11; glpsol of GLPK and cbc on the path).

The answers are verified, not compared: a vector gives the best that can be had in the five
numbers by which packs are ranked, over all feet. Lengths are counted in whole nanometres.
"""

import itertools
import math
import subprocess
import tempfile
from collections import Counter

from common import *

GLPSOL = "glpsol " + subprocess.run(["glpsol", "--version"], capture_output=True, text=True).stdout.split("\n")[0].split()[-1]
CBC = "cbc 2.10.8"
MCMILLAN = "R. B. McMillan, Rotating Machinery, 2004, pp. 112-113 (read)"
SEARCH = "search over all packs of all feet, cut by lower bounds, Python"
ALL = "every combination of packs tried, Python"
RANKS = ("short", "excess", "pieces", "error", "handling")


# ---- the problem

def nanometres(x):
    """Rounds a length in mm to whole nanometres, halves away from zero."""
    n = abs(x) * 10**6
    whole = (2 * n.numerator + n.denominator) // (2 * n.denominator)
    return -whole if x < 0 else whole


def lengths(text, slip=""):
    """Reads a length, with the mistakes that are made in reading one."""
    if slip == "mil_as_hundredth" and text.endswith(" mil"):
        return number(text[:-4]) / 100
    whole = re.fullmatch(r"([+-]?\d+) (\d+/\d+) (\w+)", text)
    if slip == "fraction_misread" and whole:  # 5 7/16 as 57/16: the blank is lost
        text = whole[1] + whole[2] + " " + whole[3]
    return length(text)


class Problem:
    """What stands in an input, or what a mistake makes of it."""

    def __init__(self, input, slip=""):
        def nm(text): return nanometres(lengths(text, slip))

        def pieces(rows):
            """Counts pieces by thickness: measured counts where it is given."""
            found = Counter()
            for r in rows:
                other = slip == "marked_for_measured" and "marked" in r
                found[nm(r["marked"] if other or "measured" not in r else r["measured"])] += r["count"]
            return +found

        rule = input.get("rule", {}) if slip != "usual_limits" else {"keep": input.get("rule", {}).get("keep", "0 mm")}
        self.error = 0 if slip == "error_unused" else nm(rule.get("error", "0.0254 mm"))
        self.limit = rule.get("pieces", 4)
        self.keep = 0 if slip == "keep_ignored" else nm(rule.get("keep", "0 mm"))
        orders = input["orders"]
        self.feet = [o["foot"] for o in orders]
        self.now = [Counter() if slip == "pack_forgotten" else pieces(o.get("now", [])) for o in orders]
        self.stock = pieces(input["stock"])
        self.wanted = []
        for o, pack in zip(orders, self.now):
            change = lengths(o["correction"], slip) * (-1 if slip == "correction_for_position" else 1)
            if slip != "soft_foot_forgotten":
                change += lengths(o.get("soft_foot", "0 mm"), slip)
            x = F(sum(t * n for t, n in pack.items()), 10**6) + change
            self.wanted.append(math.trunc(x * 10**6) if slip == "nanometre_cut" else nanometres(x))
        self.there = sum(self.now, Counter()) + self.stock  # all pieces that there are
        self.thick = sorted(self.there)

    def rank(self, foot, pack):
        """The five numbers of one foot: lack of keep, error over the allowed one, pieces, size of the error, pieces taken out and put in."""
        total, now = sum(t * n for t, n in pack.items()), self.now[foot]
        off = abs(total - self.wanted[foot])
        handled = sum(abs(pack.get(t, 0) - now.get(t, 0)) for t in set(pack) | set(now))
        return max(0, self.keep - total), max(0, off - self.error), sum(pack.values()), off, handled


def add(*ranks): return tuple(map(sum, zip(*ranks)))


def verify(problem, packs):
    """The verifier: the five sums of an answer, or None where it cannot be made or breaks the rule. packs are Counters by thickness."""
    used = sum(packs, Counter())
    if any(n > problem.there.get(t, 0) for t, n in used.items()) or any(sum(p.values()) > problem.limit for p in packs):
        return None
    return add(*(problem.rank(f, p) for f, p in enumerate(packs)))


# ---- way 1: all packs of a foot, all combinations of them

def all_packs(p, foot, limit, there):
    """Every pack that could lie under a foot, by rank."""
    found, thick = [], [t for t in p.thick if there.get(t, 0)]

    def grow(k, pack, left):
        if k == len(thick):
            found.append((p.rank(foot, pack), pack))
            return
        for n in range(min(left, there[thick[k]]) + 1):
            grow(k + 1, {**pack, thick[k]: n} if n else pack, left - n)

    grow(0, {}, limit)
    return sorted(found, key=lambda c: c[0])


def drawn(pack, own):
    """What a pack takes out of the common box, if its foot has pieces of its own."""
    return {t: n - own.get(t, 0) for t, n in pack.items() if n > own.get(t, 0)}


def brute(p):
    """Tries everything: the best rank over all combinations that the box allows."""
    lists = [all_packs(p, f, p.limit, p.there) for f in range(len(p.feet))]
    if math.prod(map(len, lists)) > 60000:
        return None
    best = None
    for choice in itertools.product(*lists):
        used = sum((Counter(c[1]) for c in choice), Counter())
        if all(n <= p.there[t] for t, n in used.items()):
            rank = add(*(c[0] for c in choice))
            best = rank if best is None else min(best, rank)
    return best


def best_packs(p, more=0, apart=False, most=400):
    """The best rank and the combinations that reach it (up to most of them).

    Foot after foot; a branch ends where its rank plus the best of each foot to
    come, as far as the box still allows it, is worse than what was found. Ranks
    are compared in order, so sums of best ranks are a bound. apart: pieces lie
    in the stock or under their own foot only.
    """
    own = p.now if apart else [Counter()] * len(p.feet)
    box = p.stock if apart else p.there
    lists = [[(r, k, drawn(k, own[f])) for r, k in all_packs(p, f, p.limit + more, box + own[f])] for f in range(len(p.feet))]
    best, found = [None], []

    def fits(need, left): return all(left[t] >= n for t, n in need.items())

    def go(f, rank, left, packs):
        if f == len(lists):
            if best[0] is None or rank < best[0]:
                best[0] = rank
                found.clear()
            if rank == best[0] and len(found) < most:
                found.append(packs)
            return
        rest = [rank] + [next(c[0] for c in later if fits(c[2], left)) for later in lists[f + 1:]]
        base = add(*rest)
        for r, pack, need in lists[f]:
            if best[0] is not None and (add(base, r) > best[0] or add(base, r) == best[0] and len(found) >= most):
                break
            if fits(need, left):
                go(f + 1, add(rank, r), {t: n - need.get(t, 0) for t, n in left.items()}, packs + [Counter(pack)])

    go(0, (0,) * 5, {t: box.get(t, 0) for t in p.thick}, [])
    return best[0], found


# ---- way 2: an integer program, five times over

class Program:
    """x pieces of each thickness under each foot; p - q the error; e over the allowed one; s lack of keep; i put in, o taken out."""

    def __init__(self, p):
        self.p = p
        lengths = p.thick + p.wanted + [p.error, p.keep]
        self.unit = math.gcd(*lengths) or 1  # small whole numbers for a solver in floating point
        rows, self.ints = [], []
        feet = range(len(p.feet))
        for f in feet:
            x = ["x%d_%d" % (f, k) for k in range(len(p.thick))]
            self.ints += x
            total = " ".join("+ %d %s" % (t // self.unit, v) for t, v in zip(p.thick, x))
            rows += ["%s - p%d + q%d = %d" % (total, f, f, p.wanted[f] // self.unit),
                     "e%d - p%d - q%d >= %d" % (f, f, f, -p.error // self.unit),
                     "%s + s%d >= %d" % (total, f, p.keep // self.unit),
                     "%s <= %d" % (" ".join("+ " + v for v in x), p.limit)]
            rows += ["x%d_%d - i%d_%d + o%d_%d = %d" % (f, k, f, k, f, k, p.now[f].get(t, 0)) for k, t in enumerate(p.thick)]
        rows += ["%s <= %d" % (" ".join("+ x%d_%d" % (f, k) for f in feet), p.there[t]) for k, t in enumerate(p.thick)]
        self.rows = rows
        kinds = range(len(p.thick))
        self.goals = [["s%d" % f for f in feet], ["e%d" % f for f in feet], self.ints, [v + str(f) for f in feet for v in "pq"],
                      ["%s%d_%d" % (v, f, k) for f in feet for k in kinds for v in "io"]]

    def text(self, goal, rows):
        def total(names): return " ".join("+ " + n for n in names)
        return "Minimize\n obj: %s\nSubject To\n%s\nGeneral\n %s\nEnd\n" % (total(goal), "\n".join(" c%d: %s" % (k, r) for k, r in enumerate(rows)), "\n ".join(self.ints))

    def solve(self, run):
        """Each number is made as small as it gets, and then held; ranks are those of the packs found, in exact numbers."""
        rows, rank = list(self.rows), None
        for k, goal in enumerate(self.goals):
            if rank is None or rank[k] > 0:  # less than nothing cannot be
                values = run(self.text(goal, rows), self.ints)
                packs = [Counter() for _ in self.p.feet]
                for name, n in values.items():
                    f, j = map(int, name[1:].split("_"))
                    assert abs(n - round(n)) < 1e-4, (name, n)
                    if round(n):
                        packs[f][self.p.thick[j]] = round(n)
                rank = verify(self.p, packs)
                assert rank is not None
            held = rank[k] if k in (2, 4) else rank[k] // self.unit
            rows.append("%s <= %d" % (" ".join("+ " + n for n in goal), held))
        return rank


def glpsol(text, names):
    """Solves a program with GLPK; its answer as the columns stand in the file."""
    with tempfile.TemporaryDirectory() as d:
        with open(d + "/in.lp", "w") as f:
            f.write(text)
        run = subprocess.run(["glpsol", "--lp", d + "/in.lp", "-o", d + "/out", "--nointopt"][:5] + ["--cuts"], capture_output=True, text=True)
        assert "INTEGER OPTIMAL SOLUTION FOUND" in run.stdout, run.stdout[-800:]
        with open(d + "/out") as f:
            fields = f.read().split("Column name")[1].split()
    values = {}
    for k, w in enumerate(fields):
        if w in names_set(tuple(names)):
            values[w] = float(fields[k + 2] if fields[k + 1] == "*" else fields[k + 1])
    return values


_sets = {}
def names_set(names): return _sets.setdefault(names, set(names))


def cbc(text, names):
    """Solves a program with cbc, whose preprocessing is switched off: with it on, some of these come out wrong."""
    with tempfile.TemporaryDirectory() as d:
        with open(d + "/in.lp", "w") as f:
            f.write(text)
        run = subprocess.run(["cbc", d + "/in.lp", "-preprocess", "off", "-ratio", "0", "-allow", "0", "-solve", "-solution", d + "/out"], capture_output=True, text=True)
        with open(d + "/out") as f:
            lines = f.read().split("\n")
    assert lines[0].startswith("Optimal"), lines[0] + run.stdout[-500:]
    values = {w[1]: float(w[2]) for w in (row.replace("**", "").split() for row in lines[1:] if row)}
    return {n: values.get(n, 0.0) for n in names}


# ---- mistakes: each gives the answers that someone who makes it may come to

def greedy(p):
    """The thickest piece that fits, foot by foot, until none does or the rule stops it."""
    left, packs = Counter(p.there), []
    for f in range(len(p.feet)):
        need, pack = max(p.wanted[f], p.keep), Counter()
        while sum(pack.values()) < p.limit:
            t = max((t for t in p.thick if left[t] and t <= need - sum(k * n for k, n in pack.items())), default=None)
            if t is None:
                break
            pack[t] += 1
            left[t] -= 1
        packs.append(pack)
    return [packs]


def best_of_one(p, f, there): 
    """All best packs of one foot by itself."""
    packs = all_packs(p, f, p.limit, there)
    return [Counter(k) for r, k in packs if r == packs[0][0]]


def in_turn(p, most=400):
    """Each foot gets its best pack in turn, whatever the later ones need."""
    found = []

    def go(f, left, packs):
        if f == len(p.feet):
            found.append(packs)
            return
        for pack in best_of_one(p, f, left):
            if len(found) < most:
                go(f + 1, left - pack, packs + [pack])

    go(0, p.there, [])
    return found


def overdrawn(p, most=3000):
    """The whole box for each foot."""
    return [list(c) for c in itertools.islice(itertools.product(*(best_of_one(p, f, p.there) for f in range(len(p.feet)))), most)]


def scrapped(p):
    """Pieces that lie under the feet are not used again."""
    q = Problem.__new__(Problem)
    q.__dict__.update(p.__dict__, there=Counter(p.stock))
    q.thick = sorted(q.there)
    return best_packs(q)[1]


REREAD = ("mil_as_hundredth", "fraction_misread", "marked_for_measured", "pack_forgotten", "keep_ignored", "soft_foot_forgotten",
          "correction_for_position", "error_unused", "usual_limits", "nanometre_cut")
OTHER = {"stock_overdrawn": lambda p: [overdrawn(p)], "nearest_first": lambda p: [greedy(p)], "feet_in_turn": lambda p: [in_turn(p)],
         "packs_apart": lambda p: [best_packs(p, apart=True)[1]] if any(p.now) else [], "old_pieces_unused": lambda p: [scrapped(p)] if any(p.now) else [],
         "pieces_over": lambda p: [best_packs(p, more=1)[1], best_packs(p, more=2)[1]]}


def flags_of(id, input, p, best):
    """A mistake counts if each answer that it may lead to is impossible or ranks worse; it must not depend on luck."""
    found = []
    for slip in list(REREAD) + list(OTHER):
        if slip in OTHER:
            families = OTHER[slip](p)
        else:
            q = Problem(input, slip)
            families = [] if q.__dict__ == p.__dict__ else [best_packs(q)[1]]
        verdicts = {verify(p, packs) != best for family in families for packs in family}
        if len(verdicts) > 1:
            print("LUCK", id, slip)
        if verdicts == {True}:
            found.append(slip)
    return found
