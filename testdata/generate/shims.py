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
CBC = "cbc 2.10.8"  # it does not tell its version reliably
MCMILLAN = "R. B. McMillan, Rotating Machinery, 2004, pp. 112-113 (read)"
SEARCH = "search over all packs of all feet, cut by lower bounds, Python"
ALL = "every combination of packs tried, Python"
RANKS = ("short", "excess", "pieces", "error", "handling")


AREA = Area("shims", {
    # plain
    "one_foot": ("plain", "one foot, nothing under it yet"),
    "one_foot_mil": ("plain", "one foot, a box in mils"),
    "fewest_first": ("plain", "fewer pieces go before a smaller error, once the error is small enough"),
    "four_feet": ("plain", "four feet from one box, nothing under them yet"),
    "four_feet_mil": ("plain", "four feet from a box in mils"),
    "packs_there": ("plain", "packs lie there and are added to or thinned"),
    "taken_across": ("plain", "pieces that come out from under one foot go under another"),
    "measured": ("plain", "pieces that measure other than they are marked"),
    "unmarked": ("plain", "pieces whose mark has worn off, measured"),
    "soft_feet": ("plain", "shims against soft foot go along with the correction"),
    "keep": ("plain", "something has to stay under each foot, so that the machine can go down later"),
    "going_down": ("plain", "feet that have to go down"),
    "few_pieces": ("plain", "a rule that allows few pieces"),
    "defaults": ("plain", "no rule given: 0.0254 mm, four pieces, nothing to keep"),
    "two_units": ("plain", "metric and inch pieces in one box"),
    "spacers": ("plain", "spacer plates in fractions of an inch under the feet"),
    "spacers_keep": ("plain", "spacer plates that have to stay to a part"),
    "spacers_two": ("plain", "spacer plates of different height"),
    # hard
    "wanted_twice": ("hard", "one piece that two feet want"),
    "scarce": ("hard", "a box too small to give each foot its best"),
    "just_works": ("hard", "the box holds exactly what it takes"),
    "just_fails": ("hard", "one piece less than it takes"),
    "greedy_fails": ("hard", "the thickest piece first leads astray"),
    "pieces_bind": ("hard", "the number of pieces decides"),
    "tight": ("hard", "an allowed error of a nanometre, or of none"),
    "on_error": ("hard", "a pack whose error is exactly the allowed one"),
    "out_of_reach": ("hard", "no pack comes near enough"),
    "below_nothing": ("hard", "less than nothing is wanted under a foot"),
    "counts_zero": ("hard", "pieces that have run out"),
    "listed_twice": ("hard", "one thickness on several rows"),
    "pack_too_high": ("hard", "a pack there of more pieces than the rule allows"),
    "rounded_half": ("hard", "a wanted sum that ends at half a nanometre"),
    "rounded_inch": ("hard", "a fraction of an inch that is no whole number of nanometres"),
    "rounded_below": ("hard", "wanted sums a trace off a whole nanometre"),
    "six_feet": ("hard", "six feet"),
    "six_feet_mil": ("hard", "six feet, half up and half down: what comes out has to go in elsewhere"),
    "eight_feet": ("hard", "eight feet"),
    "eight_feet_scarce": ("hard", "eight feet that have to share"),
    "keep_short": ("hard", "not enough in the box to keep what has to stay"),
    "tie_handled": ("hard", "packs of the same sum: the one that leaves more pieces where they are"),
    # refused
    **{name: ("invalid", about) for name, about in {
        "zero_thickness": "a piece of no thickness", "negative_thickness": "a piece of negative thickness", "zero_measured": "a piece that measures nothing",
        "negative_count": "less than no pieces", "no_count": "how many pieces there are is not said", "count_as_text": "a count in words",
        "no_orders": "no orders", "empty_orders": "an empty list of orders", "no_foot": "an order for no foot", "same_foot": "two orders for one foot",
        "no_correction": "an order without a correction", "negative_pieces": "a rule of less than no pieces", "negative_error": "a negative error allowed",
        "negative_keep": "less than nothing to keep", "zero_there": "a piece of no thickness under a foot", "negative_there": "a negative count under a foot",
        "no_unit": "a number without its unit", "decimal_comma": "a comma where the point belongs", "wrong_type": "a value of a wrong type",
        "unknown_member": "a member that is not known", "unknown_in_stock": "a member of a piece that is not known", "unknown_in_rule": "a member of the rule that is not known",
        "unknown_in_order": "a member of an order that is not known"}.items()},
})


# ---- the problem

def nanometres(x):
    """Rounds a length in mm to whole nanometres, halves away from zero."""
    n = abs(x) * 10**6
    whole = (2 * n.numerator + n.denominator) // (2 * n.denominator)
    return -whole if x < 0 else whole


class Problem:
    """What stands in an input, or what a mistake makes of it."""

    def __init__(self, input, slip=""):
        def nm(text): return nanometres(measure(text, slip))

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
            change = measure(o["correction"], slip) * (-1 if slip == "correction_for_position" else 1)
            if slip != "soft_foot_forgotten":
                change += measure(o.get("soft_foot", "0 mm"), slip)
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


def best_packs(p, more=0, apart=False, most=400, ceiling=None):
    """The best rank and the combinations that reach it (up to most of them).

    Foot after foot; a branch ends where its rank plus the best of each foot to
    come, as far as the box still allows it, is worse than what was found. Ranks
    are compared in order, so sums of best ranks are a bound. apart: pieces lie
    in the stock or under their own foot only. ceiling: nothing worse is looked for.
    """
    own = p.now if apart else [Counter()] * len(p.feet)
    box = p.stock if apart else p.there
    lists = [[(r, k, drawn(k, own[f])) for r, k in all_packs(p, f, p.limit + more, box + own[f])] for f in range(len(p.feet))]
    best, found = [ceiling], []

    def fits(need, left): return all(left[t] >= n for t, n in need.items())

    def go(f, rank, left, packs):
        if f == len(lists):
            if best[0] is None or rank < best[0]:
                best[0] = rank
                found.clear()
            if rank == best[0] and len(found) < most:
                found.append(packs)
            return
        base = add(rank, *(next(c[0] for c in later if fits(c[2], left)) for later in lists[f + 1:]))
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
    """Solves a program with GLPK; values by the names of the whole numbers."""
    with tempfile.TemporaryDirectory() as d:
        with open(d + "/in.lp", "w") as f:
            f.write(text)
        run = subprocess.run(["glpsol", "--lp", d + "/in.lp", "-o", d + "/out", "--cuts"], capture_output=True, text=True)
        assert "INTEGER OPTIMAL SOLUTION FOUND" in run.stdout, run.stdout[-800:]
        with open(d + "/out") as f:
            fields = f.read().split("Column name")[1].split()
    value = {w: fields[k + 2] for k, w in enumerate(fields[:-2]) if fields[k + 1] == "*"}  # a star marks a whole number
    return {n: float(value[n]) for n in names}


def cbc(text, names):
    """Solves a program with cbc, for lengths whose last digits GLPK's tolerance would swallow.

    Its preprocessing is switched off: with it on, some of these come out wrong.
    """
    with tempfile.TemporaryDirectory() as d:
        with open(d + "/in.lp", "w") as f:
            f.write(text)
        subprocess.run(["cbc", d + "/in.lp", "-preprocess", "off", "-integerTolerance", "1e-9", "-primalTolerance", "1e-9", "-ratio", "0", "-allow", "0", "-solve", "-solution", d + "/out"],
                       capture_output=True, check=True)
        with open(d + "/out") as f:
            first, *rows = f.read().replace("**", "").strip().split("\n")
    assert first.startswith("Optimal"), first
    value = {w[1]: w[2] for w in map(str.split, rows)}  # zeros are left out
    return {n: float(value.get(n, 0)) for n in names}


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


def apart(p, best):
    """A pack that is taken out is not used under another foot: does any such answer reach the best rank?"""
    return best_packs(p, apart=True, ceiling=best)[1]


def scrapped(p, best):
    """Pieces that lie under the feet are not used again: does any such answer reach the best rank?"""
    q = Problem.__new__(Problem)
    q.__dict__.update(p.__dict__, there=Counter(p.stock), thick=sorted(p.stock))
    return best_packs(q, ceiling=best)[1]


REREAD = ("mil_as_hundredth", "fraction_misread", "marked_for_measured", "pack_forgotten", "keep_ignored", "soft_foot_forgotten",
          "correction_for_position", "error_unused", "usual_limits", "nanometre_cut")
OTHER = {"stock_overdrawn": lambda p: [overdrawn(p)], "nearest_first": lambda p: [greedy(p)], "feet_in_turn": lambda p: [in_turn(p)],
         "pieces_over": lambda p: [best_packs(p, more=1)[1], best_packs(p, more=2)[1]]}
FEWER = {"packs_apart": apart, "old_pieces_unused": scrapped}  # the same aims with fewer pieces


def flags_of(id, input, p, best):
    """A mistake counts if each answer that it may lead to is impossible or ranks worse; it must not depend on luck."""
    found = [slip for slip, reach in FEWER.items() if any(p.now) and not reach(p, best)]
    for slip in list(REREAD) + list(OTHER):
        if slip in OTHER:
            families = OTHER[slip](p)
        else:
            q = Problem(input, slip)
            families = [] if q.__dict__ == p.__dict__ else [best_packs(q)[1]]
        wrong = {verify(p, packs) != best for family in families for packs in family}
        assert len(wrong) < 2, (id, slip, "right or wrong by luck")
        if wrong == {True}:
            found.append(slip)
    return found


# ---- the vectors

def box(text, unit="mm"):
    """Rows of pieces from "0.5*4 0.7=0.69*2 1_1/4*1": marked, = measured, * count; 1_1/4 is 1 1/4."""
    rows = []
    for word in text.split():
        size, count = word.split("*")
        marked, _, measured = size.partition("=")
        rows.append({k: v.replace("_", " ") + " " + unit for k, v in (("marked", marked), ("measured", measured)) if v} | {"count": int(count)})
    return rows


def order(foot, correction, now=None, unit="mm", soft_foot=None):
    o = {"foot": foot, "correction": correction if " " in correction else correction + " " + unit}
    if soft_foot:
        o["soft_foot"] = soft_foot + " " + unit
    if now is not None:
        o["now"] = box(now, unit)
    return o


def case(id, region, about, stock, orders, rule=None, source=None):
    input = {"stock": stock, "orders": orders}
    if rule is not None:
        input["rule"] = rule
    p = Problem(input)
    best, packs = best_packs(p)
    assert all(verify(p, choice) == best for choice in packs), id
    program = Program(p)
    fine = max(p.thick) // program.unit > 10**5
    tried, solved = brute(p), program.solve(cbc if fine else glpsol)
    assert solved == best and tried in (None, best), (id, best, solved, tried)
    programs = "%s, five integer programs one after the other" % (CBC if fine else GLPSOL)
    if tried:
        kind, by, second = "brute_force", ALL, "%s, and %s: equal" % (programs, SEARCH)
    else:
        kind, by, second = "solver", programs, SEARCH + ": equal"
    source = dict(source, second="%s, and %s" % (by, second)) if source else {"kind": kind, "by": by, "second": second}
    optimum = {k: x if k in ("pieces", "handling") else mm(F(x, 10**6)) for k, x in zip(RANKS, best)}
    return AREA.add(id, "shims", region, flags_of(id, input, p, best), about, source, input, {}, verify=optimum)


def check_verifier():
    """The verifier must pass what is best, tell what is worse, and refuse what cannot be."""
    p = Problem({"stock": box("0.5=0.49*1 0.2*2"), "orders": [order("A", "0.5"), order("B", "0.4")], "rule": {"pieces": 2, "error": "0.02 mm"}})

    def nm(*packs): return [Counter(dict(pack)) for pack in packs]

    assert verify(p, nm([(490000, 1)], [(200000, 2)])) == (0, 0, 3, 10000, 3) == best_packs(p)[0]
    assert verify(p, nm([(200000, 2)], [(490000, 1)])) == (0, 150000, 3, 190000, 3)
    assert verify(p, nm([(500000, 1)], [(200000, 2)])) is None  # no piece is that thick
    assert verify(p, nm([(490000, 1)], [(490000, 1)])) is None  # there is but one
    assert verify(p, nm([(490000, 1), (200000, 2)], [])) is None  # three under one foot


check_verifier()

METRIC = "0.05*6 0.1*6 0.2*6 0.25*4 0.4*4 0.5*6 0.7*4 1*6 2*4"
MILS = "1*6 2*6 3*6 4*4 5*6 10*6 15*4 20*4 25*6 31*4 50*4 62*2 75*2 100*4 125*2"


def rule(error=None, pieces=None, keep=None):
    return {k: v for k, v in (("error", error), ("pieces", pieces), ("keep", keep)) if v is not None}


# plain

first = case("one-foot", "one_foot", "0.62 mm under one foot", box(METRIC), [order("A", "0.62")], rule("0.02 mm", 4))
case("one-foot-exact", "fewest_first", "1.17 mm, where three pieces come within a hundredth and four would hit", box("0.02*2 0.05*4 0.1*4 0.4*2 0.7*4"), [order("NE", "1.17")], rule("0.05 mm", 5))
inch = case("one-foot-mil", "one_foot_mil", "47 mil under one foot", box(MILS, "mil"), [order("inboard left", "47", unit="mil")], rule("1 mil", 4))
case("one-foot-gauge", "one_foot_mil", "a correction in decimals of an inch from a box in mils", box("1*4 2*4 5*4 10*4 25*4 50*2", "mil"), [order("outboard", "0.0835 in")], rule("0.001 in", 5))
four = case("four-feet", "four_feet", "four feet, all different", box(METRIC), [order("A", "0.85"), order("B", "0.9"), order("C", "1.42"), order("D", "1.55")], rule("0.03 mm", 3))
four_mil = case("four-feet-mil", "four_feet_mil", "four feet from a box in mils, one of them with a soft foot", box(MILS, "mil"),
                [order("1", "18", unit="mil"), order("2", "18", unit="mil", soft_foot="6"), order("3", "64", unit="mil"), order("4", "66.5", unit="mil")], rule("0.5 mil", 3))
there = case("packs-there", "packs_there", "packs of 3 mm lie there; up by a few tenths", box(METRIC), [order("A", "0.33", "2*1 1*1"), order("B", "0.27", "2*1 1*1")], rule("0.07 mm", 4))
case("packs-there-mil", "packs_there", "a pack of 175 mil, one foot up and one down", box(MILS, "mil"), [order("left", "22", "100*1 75*1", "mil"), order("right", "-13", "100*1 75*1", "mil")], rule("1 mil", 4))
across = case("taken-across", "taken_across", "the box has no 1 mm left: the one that comes out at A goes in at B", box("0.1*4 0.2*4 0.5*4"), [order("A", "-0.7", "1*2 0.2*1"), order("B", "1", "0.5*1", soft_foot="0.2")], rule("0.02 mm", 3))
case("taken-across-mil", "taken_across", "the ends change places: what one gives the other takes", box("1*4 2*4 5*2", "mil"),
     [order("in left", "45", "25*1", "mil"), order("in right", "45", "25*1", "mil"), order("out left", "-45", "50*1 20*1", "mil"), order("out right", "-45", "50*1 20*1", "mil")], rule("1 mil", 4))
measured = case("measured", "measured", "the half millimetres measure 0.47, the tenths 0.11", box("0.5=0.47*4 0.1=0.11*4 0.2*4 0.05=0.045*4 1=1.01*2"), [order("A", "0.7"), order("B", "1.15")], rule("0.01 mm", 4))
case("measured-there", "measured", "the pieces that lie there measure other than marked, too", box("0.5=0.49*2 0.25=0.26*2 0.1*2"), [order("A", "0.35", "2=1.96*1"), order("B", "0.11", "2=2.03*1")], rule("0.015 mm", 4))
soft = case("soft-foot", "soft_feet", "0.18 mm more under the foot that was soft", box(METRIC), [order("A", "0.4"), order("B", "0.4", soft_foot="0.18"), order("C", "1.1"), order("D", "1.1")], rule("0.01 mm", 4))
case("soft-foot-only", "soft_feet", "nothing to correct, one foot soft by 7 mil", box("1*4 2*4 5*4 10*4", "mil"), [order("A", "0", "50*1", "mil", soft_foot="7"), order("B", "0", "50*1", "mil")], rule("0.5 mil", 4))
keep = case("keep", "keep", "two feet go down, and 1.5 mm must stay under each", box(METRIC), [order("A", "-0.8", "2*1 0.2*1"), order("B", "-0.3", "2*1")], rule("0.02 mm", 4, "1.5 mm"))
case("keep-first", "keep", "first setting: 125 mil at least under each foot", box("5*4 10*4 25*4 50*6 100*4 125*2", "mil"), [order("A", "118", unit="mil"), order("B", "131", unit="mil")], rule("1 mil", 5, "0.125 in"))
down = case("going-down", "going_down", "all four feet down by a tenth and more", box("0.05*4 0.1*4 0.2*4 0.5*2 0.7*2"),
            [order("A", "-0.12", "2*1 0.5*1"), order("B", "-0.12", "2*1 0.5*1"), order("C", "-0.31", "2*1 1*1"), order("D", "-0.33", "2*1 1*1")], rule("0.02 mm", 4))
case("going-down-mil", "going_down", "down by the thickness of a piece: it is taken out", box("1*2 2*2 5*2", "mil"), [order("A", "-10", "100*1 10*1 5*1", "mil"), order("B", "-5", "100*1 10*1 5*1", "mil")], rule("0.5 mil", 4))
three = case("three-pieces", "few_pieces", "at most three shims under a foot", box(MILS, "mil"), [order("A", "88", unit="mil"), order("B", "94", unit="mil")], rule("0.25 mil", 3),
             {"kind": "published", "by": MCMILLAN, "published": "at most 3 shims a foot"})
case("two-pieces", "few_pieces", "at most two pieces, and the thickest possible", box(METRIC), [order("A", "0.93"), order("B", "1.28"), order("C", "2.33")], rule("0.05 mm", 2))
case("defaults", "defaults", "no rule at all", box("0.05*4 0.1*4 0.2*4 0.25*4 0.5*4 1*4"), [order("A", "0.88"), order("B", "1.32")])
case("defaults-pieces", "defaults", "a rule that says what to keep and nothing else", box("0.1*4 0.25*4 0.5*4 1*4"), [order("A", "-0.4", "1*1 0.25*1"), order("B", "0.6", "1*1")], rule(keep="1 mm"))
case("two-units", "two_units", "a metric box and a handful of inch shims", box("0.05*2 0.1*2 0.25*2 0.5*2") + box("2*3 5*3 20*2 31*2", "mil"), [order("A", "0.684"), order("B", "33.5 mil"), order("C", "1.33")], rule("0.01 mm", 4))
case("spacers", "spacers", "spacers of 1 1/4 in under the feet, corrections in mils", box("1*4 2*4 5*4 10*4 25*2", "mil"),
     [order("A", "17 mil", "1_1/4*1", "in"), order("B", "-24 mil", "1_1/4*1 1/16*1", "in")], rule("1 mil", 4))
case("unmarked", "unmarked", "two sizes whose marks have worn off, one of them under a foot", box("=0.47*2 0.3*3 =0.12*2"), [order("A", "0.77"), order("B", "0.12", "=0.82*1")], rule("0.01 mm", 3))
case("spacers-measured", "spacers", "spacers that measure a little less than their mark", box("1*4 3*4 10*4 20*2", "mil"),
     [order("A", "12 mil", "1_1/2=1.497*1", "in"), order("B", "9 mil", "1_1/2=1.494*1", "in")], rule("0.5 mil", 3))
case("spacers-keep", "spacers_keep", "1 3/8 in have to stay", box("2*4 5*4 15*4 50*2", "mil") + box("1/4*2 1/8*2 1*2", "in"), [order("A", "1 7/16 in"), order("B", "1 5/16 in")], rule("1 mil", 4, "1 3/8 in"))

case("spacers-two", "spacers_two", "two spacers of different height, shimmed to one height", box("5*4 10*4 25*3 31*2 50*2", "mil"),
     [order("A", "31 mil", "2_1/2*1", "in"), order("B", "-6 mil", "2_9/16*1", "in")], rule("2 mil", 4))

# hard

scarce = case("scarce", "wanted_twice", "two feet want the only 0.7 mm", box("0.1*3 0.2*2 0.25*2 0.4*1 0.5*1 0.7*1"), [order("A", "0.7"), order("B", "0.9"), order("C", "0.62")], rule("0.02 mm", 4))
case("scarce-later", "scarce", "the first foot must leave what only the last can use", box("0.3*1 0.5*1 0.2*1 0.1*2"), [order("A", "0.5"), order("B", "0.8")], rule("0 mm", 2))
case("scarce-mil", "scarce", "four feet and a nearly empty box", box("1*2 2*2 5*2 10*2 20*1 25*1 31*1", "mil"), [order("A", "26", unit="mil"), order("B", "31", unit="mil"), order("C", "17", unit="mil"), order("D", "22", unit="mil")], rule("1 mil", 3))
case("just-works", "just_works", "each piece in the box is needed", box("0.1*1 0.2*1 0.3*1 0.4*1 0.5*1"), [order("A", "0.6"), order("B", "0.5"), order("C", "0.4")], rule("1 um", 3))
case("just-works-packs", "just_works", "it works with the pieces that come out, and with none to spare", box("0.2*1 0.4*1"), [order("A", "-0.3", "1*1 0.3*1"), order("B", "0.9", "0.5*1"), order("C", "-0.6", "0.5*1 0.3*1")], rule("1 um", 3))
case("just-fails", "just_fails", "one tenth less in the box than it takes", box("0.2*1 0.3*1 0.4*1 0.5*1"), [order("A", "0.6"), order("B", "0.5"), order("C", "0.4")], rule("1 um", 3))
case("just-fails-packs", "just_fails", "the one piece that is missing lies under no foot either", box("0.2*1 0.4*1 0.15*1"), [order("A", "-0.3", "1*1 0.3*1"), order("B", "0.9", "0.5*1"), order("C", "-0.6", "0.5*1 0.35*1")], rule("1 um", 3))
greedy_case = case("greedy-fails", "greedy_fails", "0.81 is near enough to twice 0.4; the 0.5 taken first needs two more", box("0.5*1 0.4*2 0.2*1 0.1*1 0.01*1"), [order("A", "0.81")], rule("0.02 mm", 4))
case("greedy-fails-mil", "greedy_fails", "62 mil is twice 31; from 50 on it takes three pieces more", box("50*2 31*4 10*2 5*2 2*4 1*2", "mil"), [order("A", "62", unit="mil"), order("B", "93", unit="mil")], rule("0.5 mil", 4))
case("greedy-fails-over", "greedy_fails", "a pack a trace too thick is nearer than what fits below", box("0.36*2 0.3*2 0.05*2"), [order("A", "0.345", "1*1"), order("B", "1.01", "0.36*1")], rule("0.015 mm", 2))
case("pieces-bind", "pieces_bind", "three pieces would hit, two are allowed", box("0.1*4 0.25*4 0.5*4 1*4"), [order("A", "0.65", soft_foot="0.2"), order("B", "1.6")], rule("0.02 mm", 2))
case("pieces-bind-packs", "pieces_bind", "no room for one piece more: the thin ones must give way", box("0.05*4 0.1*4 0.25*2 0.5*2"), [order("A", "0.15", "1*1 0.25*1 0.1*1"), order("B", "0.1", "1*1 0.25*1 0.1*1")], rule("0.01 mm", 3))
case("tight", "tight", "a nanometre allowed", box("0.05*4 0.1*4 0.2=0.199*4 0.5*4"), [order("A", "0.849"), order("B", "0.350001")], rule("1 nm", 4))
case("tight-none", "tight", "no error allowed at all", box("1*3 2*3 5*3 10*3 25*2", "mil"), [order("A", "38", unit="mil", soft_foot="2"), order("B", "17", "10*1", "mil")], rule("0 mm", 4))
case("on-error", "on_error", "two pieces are off by exactly the 0.05 mm allowed, which is enough", box("0.05*4 0.1*4 0.3*4 0.4*4"), [order("A", "0.75"), order("B", "0.35")], rule("0.05 mm", 4))
case("on-error-mil", "on_error", "one mil off with one mil allowed", box("1*4 4*4 10*4 20*4", "mil"), [order("A", "31", unit="mil"), order("B", "19", "4*1", "mil")], rule("0.0254 mm", 4))
far = case("out-of-reach", "out_of_reach", "3.2 mm wanted, four pieces of 0.7 are the most", box("0.1*4 0.5*4 0.7*8"), [order("A", "3.2"), order("B", "0.6")], rule("0.02 mm", 4))
case("out-of-reach-empty", "out_of_reach", "an empty box: only what lies there can be shared out anew", box("0.5*0"), [order("A", "0.5", "1*1"), order("B", "-0.4", "0.5*1 0.2*1")], rule("0.02 mm", 4))
below = case("below-nothing", "below_nothing", "down by 1.3 mm where 1 mm lies: it comes out and helps elsewhere, and 0.3 mm is missing", box("0.05*4 0.1*4 0.2*4"), [order("A", "-1.3", "1*1"), order("B", "1", "1*1")], rule("0.02 mm", 4))
case("below-nothing-bare", "below_nothing", "a bare foot that should go down by 12 mil", box("1*4 2*4 5*4 10*4", "mil"), [order("A", "-12", unit="mil"), order("B", "17", unit="mil"), order("C", "-12", "10*1", "mil", soft_foot="5")], rule("1 mil", 3))
case("counts-zero", "counts_zero", "the 0.6 mm that would do have run out", box("0.6*0 0.5*1 0.1*3 0.05*0 0.2*2"), [order("A", "0.62"), order("B", "0.65")], rule("0.01 mm", 3))
case("listed-twice", "listed_twice", "0.2 mm on two rows, of which together four are there", box("0.2*2 0.5*1 0.2*2 0.1*1"), [order("A", "0.6"), order("B", "0.2"), order("C", "0.6")], rule("0.01 mm", 3))
case("listed-twice-measured", "listed_twice", "differently marked, and all measure 0.3 mm", box("0.3*1 0.25=0.3*1 0.35=0.3*2 0.1*2"), [order("A", "0.9"), order("B", "0.4", "0.3*1")], rule("0.01 mm", 3))
case("listed-twice-units", "listed_twice", "20 mil and 0.508 mm are the same piece", box("20*1 5*2", "mil") + box("0.508*2 0.127*1"), [order("A", "40 mil"), order("B", "0.635")], rule("0.01 mm", 2))
case("pack-too-high", "pack_too_high", "seven thin pieces lie there and three are allowed; 1.2 mm have to stay", box("0.25*2 0.5*2 1*2 2*1"), [order("A", "0.1", "0.1*4 0.2*3"), order("B", "0", "1*1")], rule("0.02 mm", 3, "1.2 mm"))
case("pack-too-high-mil", "pack_too_high", "nothing to correct, but six pieces under a foot are too many", box("20*2 25*2 50*2", "mil"), [order("A", "0", "5*4 10*2", "mil"), order("B", "3", "25*1 2*2", "mil")], rule("1 mil", 2))
case("rounded-half", "rounded_half", "a sum that ends at half a nanometre is rounded away from zero", box("0.5*1 0.500001*1 0.25*1"), [order("A", "0.5000005")], rule("0.01 mm", 1))
case("rounded-inch", "rounded_inch", "1/128 in are 198437.5 nm", box("0.198437*1 0.198438*1 0.1*2"), [order("A", "1/128 in", "0.1*1")], rule("0 mm", 3))
case("rounded-below", "rounded_below", "0.7 of a nanometre counts as a whole one, 0.4 as none", box("0.3*2 0.300001*2"), [order("A", "0.3000007"), order("B", "0.3000004")], rule("1 nm", 2))
six = case("six-feet", "six_feet", "six feet of a gearbox with packs there", box("0.05*5 0.1*5 0.2*4 0.25*3 0.4*3 0.5*4 0.7*3 1*3"),
           [order("1L", "0.35", "1*1"), order("1R", "0.37", "1*1"), order("2L", "0.62", "1*1 0.5*1"), order("2R", "0.64", "1*1 0.5*1"), order("3L", "0.93", "2*1"), order("3R", "0.95", "2*1")], rule("0.02 mm", 4))
case("six-feet-mil", "six_feet_mil", "six feet, three up and three down", box("1*6 2*6 5*6 10*4 25*2", "mil"),
     [order(n, v, "50*1 20*1", "mil") for n, v in zip("abcdef", ("12", "-8", "17", "-18", "26", "-23"))], rule("1 mil", 3))
case("eight-feet", "eight_feet", "eight feet from a full box", box("0.05*8 0.1*8 0.2*8 0.25*6 0.4*6 0.5*8 0.7*6 1*8"), [order(str(k + 1), "%.2f" % (0.41 + 0.13 * k), "1*1") for k in range(8)], rule("0.02 mm", 4))
case("eight-feet-scarce", "eight_feet_scarce", "eight feet and a box that goes nearly empty", box("0.05*3 0.1*3 0.2*3 0.25*2 0.5*3 0.7*2 1*2 2*2"),
     [order(str(k + 1), v, "1*1") for k, v in enumerate(("0.46", "0.16", "0.97", "0.58", "0.42", "0.32", "0.25", "-0.17"))], rule("0.03 mm", 3))
case("keep-short", "keep_short", "2 mm have to stay under each foot and cannot: what lacks in all counts first", box("0.5*3 1*1"), [order("A", "0.4", "1*1"), order("B", "-0.3", "1*1 0.5*1")], rule("0.02 mm", 3, "2 mm"))
case("keep-short-mil", "keep_short", "two pieces under each foot are not enough to keep 50 mil under all", box("10*2 20*2 25*2 50*1", "mil"), [order("A", "15", unit="mil"), order("B", "66", unit="mil"), order("C", "35", unit="mil")], rule("1 mil", 2, "50 mil"))
case("tie-handled", "tie_handled", "two packs of the same sum: what lies there stays", box("0.3*2 0.6*2 0.4*2 0.5*2"), [order("A", "0.3", "0.6*1"), order("B", "0.4", "0.5*1")], rule("0.01 mm", 3))
case("tie-handled-own", "tie_handled", "equal pieces under two feet: each foot keeps its own", box("5*4 10*1", "mil"), [order("A", "10", "25*1 10*1", "mil"), order("B", "-10", "25*1 10*1", "mil")], rule("0.5 mil", 3))


# ---- refused

def refuse(twin, region, code, path, about, at=None, value=None):
    """One change of the twin: at is where, if not at the path of the fault."""
    AREA.refuse(region.replace("_", "-"), twin, region, code, path, changed(twin["input"], at or path, value), about)


refuse(first, "zero_thickness", "out_of_range", "/stock/3/marked", "a shim without thickness", value="0 mm")
refuse(inch, "negative_thickness", "out_of_range", "/stock/5/marked", "a shim of less than nothing", value="-10 mil")
refuse(measured, "zero_measured", "out_of_range", "/stock/1/measured", "a shim that measures nothing", value="0 mm")
refuse(four, "negative_count", "out_of_range", "/stock/2/count", "a box cannot hold less than none", value=-1)
refuse(four_mil, "no_count", "missing", "/stock/7/count", "how many shims of 20 mil there are is not said")
refuse(inch, "count_as_text", "malformed", "/stock/0/count", "a count is a number", value="six")
refuse(first, "no_orders", "missing", "/orders", "a box, and nothing to do with it")
refuse(soft, "empty_orders", "missing", "/orders", "a list of orders with nothing in it", value=[])
refuse(four, "no_foot", "missing", "/orders/2/foot", "under which foot?")
refuse(down, "same_foot", "duplicate", "/orders/3/foot", "two orders for A: which one holds?", value="A")
refuse(soft, "no_correction", "missing", "/orders/1/correction", "a foot whose correction is not given")
refuse(three, "negative_pieces", "out_of_range", "/rule/pieces", "less than no pieces allowed", value=-3)
refuse(first, "negative_error", "out_of_range", "/rule/error", "a negative error cannot be allowed", value="-0.02 mm")
refuse(keep, "negative_keep", "out_of_range", "/rule/keep", "less than nothing cannot stay", value="-1.5 mm")
refuse(there, "zero_there", "out_of_range", "/orders/1/now/0/marked", "a piece without thickness under a foot", value="0 mm")
refuse(across, "negative_there", "out_of_range", "/orders/0/now/0/count", "less than none under a foot", value=-2)
refuse(inch, "no_unit", "malformed", "/orders/0/correction", "47 of what?", value="47")
refuse(scarce, "decimal_comma", "malformed", "/orders/2/correction", "a decimal comma is not guessed at", value="0,62 mm")
refuse(far, "wrong_type", "malformed", "/rule/error", "a bare number for a length", value=0.02)
refuse(greedy_case, "unknown_member", "unknown", "/budget", "what shims may cost is not known here", value="20")
refuse(below, "unknown_in_stock", "unknown", "/stock/0/material", "what a shim is made of is not known here", value="brass")
refuse(six, "unknown_in_rule", "unknown", "/rule/thinnest", "a thinnest piece is not known here", value="0.05 mm")
refuse(there, "unknown_in_order", "unknown", "/orders/0/torque", "a torque is not known here", value="90 Nm")

AREA.save()
