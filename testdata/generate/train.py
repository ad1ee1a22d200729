"""Writes train.json: machines in line, and the plan of moves that brings their couplings into line.

Run from testdata: python3 generate/train.py (Python 3.11 with mpmath; glpsol of GLPK and pari-gp as gp on the path).
"""

import itertools
import subprocess
import tempfile
from multiprocessing import Pool

from common import *
from train_solve import *
import train_lines as lines

GP = "pari-gp " + subprocess.run(["gp", "--version-short"], capture_output=True, text=True).stdout.strip() + ", 60 digits"
GLPSOL = "glpsol " + subprocess.run(["glpsol", "--version"], capture_output=True, text=True).stdout.split("\n")[0].split()[-1]
NEW = "1.2.0"
SLACK = F(1, 10**10)  # by which what is best on circles is held less tightly, so that a set remains to search
PLANES = ("horizontal", "vertical")


# ---- reading an input

class Train:
    """What stands in an input: lengths in mm, slopes as ratios, joints seen from the last machine, found less target."""

    def __init__(self, input, slip=""):
        self.input = input
        names = [m["name"] for m in input["machines"]]
        self.names, self.reference = names, names.index(input["reference"]) if "reference" in input else None
        self.heights = [length(m["height"]) if "height" in m else None for m in input["machines"]]
        self.feet = [[(f["name"], measure(f["x"], slip)) for f in m.get("feet", [])] for m in input["machines"]]
        self.limits = {}  # (machine, foot, plane) -> (at least, at most), None where it is free
        for i, m in enumerate(input["machines"]):
            for k, f in enumerate(m.get("feet", [])):
                for p in PLANES:
                    self.limits[i, k, p] = tuple(measure(f[p][e], slip) if e in f.get(p, {}) else None for e in ("at_least", "at_most"))
        self.joints = [Joint(j, slip) for j in input["joints"]]
        self.work = input.get("work", "total_travel")
        self.apart = all(j.per_plane for j in self.joints)


class Joint:
    def __init__(self, j, slip=""):
        self.at = measure(j["at"], slip)
        sign = {"horizontal": (1, -1), "vertical": (-1, 1)} if j.get("seen_from") == "first" else {p: (1, 1) for p in PLANES}
        line = lambda q, p: (sign[p][0] * measure(q[p]["offset"], slip), sign[p][1] * slope(q[p]["slope"]))
        none = {p: {"offset": "0 mm", "slope": "0 mm/m"} for p in PLANES}
        self.found = {p: line(j["found"], p) for p in PLANES}
        target = j.get("target", none)
        self.off = {p: tuple(a - b for a, b in zip(line(j["found"], p), line(target, p))) for p in PLANES}
        self.span = measure(j["coupling"]["span"], slip) if "span" in j.get("coupling", {}) else None
        limits = j.get("limits", {})
        self.per_plane = limits.get("per_plane", False)
        if self.span is not None:
            flex = slope(limits["flex"])
            self.items = [((1 / self.span, F(1, 2)), flex), ((-1 / self.span, F(1, 2)), flex)]
        else:
            self.items = [((F(1), F(0)), measure(limits["offset"], slip))] if "offset" in limits else []
            self.items += [((F(0), F(1)), slope(limits["slope"]))] if "slope" in limits else []


# ---- the program of a plan

class Program:
    """Unknowns are the moves at the first and the last foot of each machine that moves, in each plane that is planned."""

    def __init__(self, t, planes, free_reference=False):
        self.t, self.planes = t, planes
        self.moving = [i for i in range(len(t.names)) if i != t.reference or free_reference and t.feet[i]]
        self.at = {(i, p): 2 * k for k, (p, i) in enumerate(itertools.product(planes, self.moving))}
        self.n = 2 * len(self.at)
        self.feet = [(i, k, p) for p in planes for i in self.moving for k in range(len(t.feet[i]))]
        self.moves = {f: self.line(f[0], f[2], t.feet[f[0]][f[1]][1]) for f in self.feet}
        self.limits = []  # (row, bound, (machine, foot, plane, side))
        for f in self.feet:
            low, high = t.limits[f] if f[0] != t.reference else (F(0), F(0))
            if low is not None:
                self.limits.append(([-v for v in self.moves[f]], -low, f + ("low",)))
            if high is not None:
                self.limits.append((self.moves[f], high, f + ("high",)))
        self.items = []  # (limit, [(row, constant) in one plane or in both])
        for j, joint in enumerate(t.joints):
            for (a, b), limit in joint.items:
                rows = {p: self.left(j, p, a, b) for p in planes}
                together = [list(rows.values())] if not joint.per_plane else [[r] for r in rows.values()]
                self.items += [(limit, r) for r in together]

    def line(self, i, p, x):
        """The move of machine i at x, as a row of the unknowns."""
        row = [F(0)] * self.n
        if (i, p) in self.at:
            k, xs = self.at[i, p], [q for _, q in self.t.feet[i]]
            row[k + 1] = (x - min(xs)) / (max(xs) - min(xs))
            row[k] = 1 - row[k + 1]
        return row

    def left(self, j, p, a, b):
        """a * offset + b * slope of what is left at joint j: a row, and what is off."""
        x, (offset, tilt) = self.t.joints[j].at, self.t.joints[j].off[p]
        at0, at1 = ([v - u for u, v in zip(self.line(j, p, q), self.line(j + 1, p, q))] for q in (x, x + 1000))
        return [a * u + b * (v - u) / 1000 for u, v in zip(at0, at1)], a * offset + b * tilt

    def targets(self):
        """Rows that hold every coupling on its target."""
        rows = [self.left(j, p, *ab) for p in self.planes for j in range(len(self.t.joints)) for ab in ((F(1), F(0)), (F(0), F(1)))]
        return [([s * v for v in r], -s * c) for r, c in rows for s in (1, -1)]

    def fixed_rows(self, cap):
        """Limits, and items in one plane within cap of their limits; a cap of None is the last unknown."""
        rows = [(a, b) for a, b, _ in self.limits]
        z = [F(0)] if cap is None else []
        rows = [(a + z, b) for a, b in rows]
        for limit, parts in self.items:
            if len(parts) == 1:
                (r, c), = parts
                rows += [([s * v for v in r] + ([-limit] if cap is None else []), (0 if cap is None else cap * limit) - s * c) for s in (1, -1)]
        return rows

    def circles(self, cap, num, gap=Decimal("1e-16")):
        """What cuts off x where a vector is longer than its limit: the tangent where x looks at the circle.

        The direction is a rational point of the unit circle, so that every cut is exact.
        """

        def cuts(x):
            rows = []
            top = x[self.n] if cap is None else num(cap)
            for limit, parts in self.items:
                if len(parts) == 2:
                    u, v = (sum(num(p) * q for p, q in zip(r, x) if p) + num(c) for r, c in parts)
                    size = (u * u + v * v).sqrt()
                    if size - top * num(limit) > gap * num(limit) * max(1, abs(top)):
                        c, s = unit(u / size, v / size)
                        row = [c * p + s * q for p, q in zip(parts[0][0], parts[1][0])]
                        b = -(c * parts[0][1] + s * parts[1][1])
                        rows.append((row + ([-limit] if cap is None else []), b + (0 if cap is None else cap * limit)))
            return rows
        return cuts

    def ratio(self, x, num=F):
        """The worst ratio at x."""
        worst = num(F(0))
        for limit, parts in self.items:
            left = [sum(num(p) * q for p, q in zip(r, x) if p) + num(c) for r, c in parts]
            worst = max(worst, (abs(left[0]) if len(left) == 1 else (left[0] ** 2 + left[1] ** 2).sqrt()) / num(limit))
        return worst

    def values(self, x, num=F):
        return {f: sum((num(p) * q for p, q in zip(m, x) if p), num(F(0))) for f, m in self.moves.items()}


def unit(c, s):
    """A rational point of the unit circle next to (c, s)."""
    if c < 0:
        a, b = unit(-c, s)
        return -a, b
    t = F(round(s / (1 + c) * 10**18), 10**18)
    return (1 - t * t) / (1 + t * t), 2 * t / (1 + t * t)



# ---- the plan

class Group:
    """What is planned together: one plane, or both."""

    def __init__(self, program, base, cap, num):
        """base are rows that hold limits, targets and ratios in one plane; cap is the ratio for circles, or None."""
        self.program, self.num, self.planes = program, num, program.planes
        self.base, self.n = base, program.n
        bent = cap is not None and any(len(p) == 2 for _, p in program.items)
        # The least work must be known far more closely than it is held afterwards: it depends steeply on the ratio.
        self.fine, self.cuts = (program.circles(cap, num, Decimal(g)) if bent else lambda x: [] for g in ("1e-22", "1e-13"))
        self.cap = cap

    def padded(self, rows, last=0): return [(a + [F(last)], b) for a, b in rows]

    def work(self, kind):
        """The least total travel or largest move, and the rows that hold it."""
        p, n, num = self.program, self.n, self.num
        largest = [([s * v for v in p.moves[f]], F(0)) for f in p.feet for s in (1, -1)] if kind == "largest_move" else []

        def signs(x, top):
            if kind == "largest_move":
                return []
            m = p.values(x, num)
            if sum(abs(v) for v in m.values()) - top <= 10 * TINY[num]:
                return []
            return [([sum(c if m[f] >= 0 else -c for f, c in zip(p.feet, column)) for column in zip(*(p.moves[f] for f in p.feet))], F(0))]

        x = least([F(0)] * n + [F(1)], self.padded(self.base) + self.padded(largest, -1), lambda x: self.padded(self.fine(x)) + self.padded(signs(x, x[n]), -1), num)
        m = [abs(v) for v in p.values(x[:n], num).values()]
        w = F(sum(m) if kind == "total_travel" else max(m))
        held = w * (1 + SLACK) if num is wide else w
        return w, [(a, b + held) for a, b in largest], lambda x: [(a, held) for a, _ in signs(x, num(held))]

    def squares(self, rows=(), more=lambda x: []):
        p = self.program
        gram = [[sum(p.moves[f][i] * p.moves[f][j] for f in p.feet) for j in range(self.n)] for i in range(self.n)]
        x = least_squares(gram, self.base + list(rows), lambda x: self.cuts(x) + more(x), self.num)
        return None if x is None else p.values(x, self.num)

    def fewest(self):
        """Every choice of feet that move, the smallest first; of those of one size the least squares."""
        p = self.program
        for size in range(len(p.feet) + 1):
            found = []
            for some in itertools.combinations(p.feet, size):
                still = [([s * v for v in p.moves[f]], F(0)) for f in p.feet if f not in some for s in (1, -1)]
                m = self.squares(still)
                if m is not None:
                    found.append((sum(v * v for v in m.values()), some, m))
            if found:
                return F(size), min(found, key=lambda c: c[0])[2]

    def solve(self, kind):
        if kind == "fewest_feet":
            self.best_work, self.moves = self.fewest()
        else:
            self.best_work, rows, more = self.work(kind)
            self.moves = self.squares(rows, more)
        if self.moves is None:
            raise ArithmeticError("a thin set was lost")
        self.best_squares = sum(v * v for v in self.moves.values())
        return self


def ratio_of(program, num):
    """The least worst ratio: a bound and what a plan reaches."""
    cuts = program.circles(None, num)
    x = least([F(0)] * program.n + [F(1)], program.fixed_rows(None), cuts, num)
    if x is None:
        return None
    return F(x[program.n]), F(max(program.ratio(x[:program.n], num), x[program.n]))


def plan(t, num=wide, reach_only=False):
    """The plan of a train; circles are computed with num, all else in fractions. None where limits leave nothing."""
    if any(len(f) < 2 for i, f in enumerate(t.feet) if i != t.reference):
        return None  # refused: a machine that moves has feet
    single = [Program(t, [p]) for p in PLANES]
    bases = [[(a, b) for a, b, _ in s.limits] + s.targets() for s in single]
    if all(least([F(0)] * s.n, b) is not None for s, b in zip(single, bases)):
        groups, ratios = [Group(s, b, None, F) for s, b in zip(single, bases)], [F(0), F(0)]
        reach = "on_target"
    else:
        reach = None
        if t.apart:
            programs, kind = single, F
        else:
            programs, kind = [Program(t, PLANES)], num
        bounds = [ratio_of(s, kind) for s in programs]
        if None in bounds:
            return None
        ratios = [b[1] for b in bounds]
        groups = []
        for s, (low, high) in zip(programs, bounds):
            if kind is wide:
                assert high - low <= F(1, 10**12) * max(high, 1), "bracket"
            cap = high * (1 + SLACK) if kind is wide else high
            on = s.targets() if high == 0 else []
            groups.append(Group(s, s.fixed_rows(cap) + on, cap, kind))
        reach = "within_limits" if max(ratios) <= 1 else "out_of_reach"
    if not reach_only:
        for g in groups:
            g.solve(t.work)
    answer = {"reach": reach, "ratio": max(ratios), "groups": groups, "ratios": ratios}
    if not reach_only:
        answer["moves"] = {f: F(v) for g in groups for f, v in g.moves.items()}
        answer["ways"] = {}
    return answer


def ways_out(t, best, num=wide):
    """Each end of a limit that suffices alone where tolerance is out of reach, and by how much it has to open."""
    found = {}
    if best["reach"] != "out_of_reach":
        return found
    for g, ratio in zip(best["groups"], best["ratios"]):
        if ratio <= 1:
            continue
        p = Program(t, g.planes, free_reference=True)
        tags = [tag for _, _, tag in p.limits]
        cuts = p.circles(F(1), num) if g.num is not F else lambda x: []
        rows = p.fixed_rows(F(1))
        for k, tag in enumerate(tags):
            opened = [(a + [F(-1 if j == k else 0)], b) for j, (a, b) in enumerate(rows)] + [([F(0)] * p.n + [F(-1)], F(0))]
            x = least([F(0)] * p.n + [F(1)], opened, lambda x: [(a + [F(0)], b) for a, b in cuts(x)], F if g.num is F else num)
            if x is not None and x[p.n] < BOX / 10:
                found[tag] = F(x[p.n])
    return found


def shifts(t, moves):
    """What each machine with a height does along its axis as its vertical slope changes."""
    found = {}
    for i, h in enumerate(t.heights):
        if h is not None and i != t.reference:
            (_, x0), (_, x1) = t.feet[i][0], t.feet[i][1]
            found[i] = -h * (moves[i, 1, "vertical"] - moves[i, 0, "vertical"]) / (x1 - x0)
    return found


# ---- the same by GLPK: lines through each machine's middle as unknowns, circles as tangents, the sizes of moves in two parts

class Lp:
    """Terms are dicts of a name and a number; a constant has the name ""."""

    def __init__(self, t, planes, best=None, free_reference=False):
        self.t, self.rows = t, []
        self.moving = [i for i in range(len(t.names)) if i != t.reference or free_reference and t.feet[i]]
        self.feet = [(i, k, p) for p in planes for i in self.moving for k in range(len(t.feet[i]))]
        self.planes = planes

    def m(self, i, p, x):
        if i not in self.moving:
            return {}
        middle = sum(x for _, x in self.t.feet[i]) / len(self.t.feet[i])
        return {"a%d%s" % (i, p): F(1), "s%d%s" % (i, p): (x - middle) / 1000}

    def add(self, *parts):
        total = {}
        for factor, term in parts:
            for k, v in term.items():
                total[k] = total.get(k, 0) + factor * v
        return total

    def foot(self, f): return self.m(f[0], f[2], self.t.feet[f[0]][f[1]][1])

    def at_most(self, term, bound): self.rows.append((term, "<=", bound))

    def limits(self, opened=None):
        for f in self.feet:
            low, high = self.t.limits[f] if f[0] != self.t.reference else (F(0), F(0))
            for side, s, b in (("low", -1, low), ("high", 1, high)):
                if b is not None:
                    z = {"z": F(-1)} if opened == f + (side,) else {}
                    self.at_most(self.add((s, self.foot(f)), (1, z)), s * b)

    def left(self, j, p):
        """Offset and slope (times 1000) that are left."""
        x, (offset, tilt) = self.t.joints[j].at, self.t.joints[j].off[p]
        change = lambda q: self.add((1, self.m(j + 1, p, q)), (-1, self.m(j, p, q)))
        return self.add((1, change(x)), (1, {"": offset})), self.add((1, change(x + 500)), (-1, change(x - 500)), (1, {"": 1000 * tilt}))

    def on_target(self):
        for p in self.planes:
            for j in range(len(self.t.joints)):
                for term in self.left(j, p):
                    self.rows.append((term, "=", 0))

    def ratios(self, cap, moves, around=72):
        """cap of None is z. Tangents all round, and closely where the plan that was found touches."""
        known = lambda term: float(sum(v * moves.get(k, 1 if k == "" else 0) for k, v in term.items()))
        for j, joint in enumerate(self.t.joints):
            for (a, b), limit in joint.items:
                terms = [self.add((a / limit, o), (b / limit / 1000, s)) for o, s in (self.left(j, p) for p in self.planes)]
                if joint.per_plane or len(terms) == 1:
                    turns = [[s if k == q else 0 for k in range(len(terms))] for q in range(len(terms)) for s in (1, -1)]
                else:
                    to = float(mp.atan2(known(terms[1]), known(terms[0])))
                    angles = [2 * float(mp.pi) * k / around for k in range(around)] + [to + k * 1e-5 for k in range(-12, 13)]
                    turns = [tuple(F(round(v * 10**11), 10**11) for v in (mp.cos(q), mp.sin(q))) for q in angles]  # no traces that upset GLPK
                for turn in turns:
                    self.at_most(self.add(*zip(turn, terms), (1, {"z": F(-1)} if cap is None else {})), 0 if cap is None else cap)

    def work(self, kind, cap=None):
        for n, f in enumerate(self.feet):
            self.rows.append((self.add((1, self.foot(f)), (1, {"u%d" % n: F(-1), "d%d" % n: F(1)})), "=", 0))
        sizes = [{"u%d" % n: F(1), "d%d" % n: F(1)} for n in range(len(self.feet))]
        if kind == "total_travel":
            sizes = [self.add(*((1, s) for s in sizes))]
        elif kind == "fewest_feet":
            for n, s in enumerate(sizes):
                self.at_most(self.add((1, s), (1, {"y%d" % n: F(-20)})), 0)
            sizes = [{"y%d" % n: F(1) for n in range(len(sizes))}]
        for s in sizes:
            self.at_most(self.add((1, s), (1, {"z": F(-1)} if cap is None else {})), 0 if cap is None else cap)

    def minimise(self, goal):
        """Returns the least of a term, or None."""
        text = lambda term: " ".join("%+.17g %s" % (float(v), k) for k, v in term.items() if k and v) or "0 z"
        rows = [" r%d: %s %s %.17g" % (n, text(t), op, float(b - t.get("", 0))) for n, (t, op, b) in enumerate(self.rows)]
        names = {k for t, _, _ in self.rows for k in t if k} | {k for k in goal if k}
        free = sorted(k for k in names if k[0] in "as")
        whole = sorted(k for k in names if k[0] == "y")
        lp = "Minimize\n o: %s\nSubject To\n%s\nBounds\n%s\n%sEnd\n" % (text(goal), "\n".join(rows), "\n".join(" %s free" % k for k in free), "Binary\n %s\n" % " ".join(whole) if whole else "")
        with tempfile.TemporaryDirectory() as d:
            with open(d + "/in.lp", "w") as f:
                f.write(lp)
            run = subprocess.run(["glpsol", "--lp", d + "/in.lp", "-w", d + "/out", "--tmlim", "20"], capture_output=True, text=True)
            assert "time limit" not in run.stdout.lower(), "GLPK needs too long"
            with open(d + "/out") as f:
                line = next(r for r in f if r.startswith("s "))
        words = line.split()
        if words[1] == "mip":
            return float(words[-1]) if words[4] == "o" else None
        return float(words[-1]) if words[4] == "f" and words[5] == "f" else None


def near(a, b, rel, least=1e-8): return a is not None and abs(a - float(b)) <= rel * abs(float(b)) + least


def second_way(id, t, best):
    """Asks GLPK for every number of a plan."""
    for g, ratio in zip(best["groups"], best["ratios"]):
        rough = 2e-5 if g.cap is not None and g.num is wide else 1e-8
        moves = {}
        for (i, p), k in g.program.at.items():  # the moves as lines through the middle
            xs = [x for _, x in t.feet[i]]
            f = [best["moves"][i, n, p] for n in (xs.index(min(xs)), xs.index(max(xs)))]
            tilt = (f[1] - f[0]) / (max(xs) - min(xs))
            moves["a%d%s" % (i, p)], moves["s%d%s" % (i, p)] = f[0] + tilt * (sum(xs) / len(xs) - min(xs)), tilt * 1000

        def start(cap=True, opened=None, free=False):
            lp = Lp(t, g.planes, free_reference=free)
            lp.limits(opened)
            if best["reach"] == "on_target":
                lp.on_target()
            elif cap is not False:
                if ratio == 0:
                    lp.on_target()
                lp.ratios(cap if cap is not True else ratio * (1 + F(1, 10**10)), moves, 240 if opened else 72)
            return lp

        if best["reach"] != "on_target":
            assert near(start(None).minimise({"z": F(1)}), ratio, rough), (id, "ratio", start(None).minimise({"z": F(1)}), float(ratio))
        lp = start()
        lp.work(t.work)
        w = lp.minimise({"z": F(1)})
        assert near(w, g.best_work, 1e-8 if rough == 1e-8 else 1e-3, 1e-7), (id, "work", w, float(g.best_work))
        if t.work != "fewest_feet":
            # Least squares: no feasible plan lies on the near side of the plane that stands on the moves at their end.
            lp = start()
            lp.work(t.work, F(g.best_work) * (1 + F(1, 10**10)))
            s = lp.minimise(lp.add(*((F(v), lp.foot(f)) for f, v in g.moves.items())))
            assert near(s, g.best_squares, 1e-6 if rough == 1e-8 else 5e-3, 1e-6), (id, "squares", s, float(g.best_squares))
        for tag in [tag for _, _, tag in Program(t, g.planes, True).limits]:
            if ratio > 1 and best["reach"] == "out_of_reach":
                z = start(F(1), tag, True)
                z.rows.append(({"z": F(1)}, ">=", 0))
                z = z.minimise({"z": F(1)})
                assert near(z, best["ways"][tag], 1e-8 if rough == 1e-8 else 1e-3) if tag in best["ways"] else z is None, (id, tag, z, best["ways"].get(tag))


# ---- what the verifier does

def planned(planes): return planes[0] if len(planes) == 1 else "both"


def grade(t, best, answer):
    """0 where an answer is passed, 2 where it is far off, 1 where that is not certain."""
    if answer is None or set(answer["moves"]) != set(best["moves"]) or answer["reach"] != best["reach"]:
        return 2
    off = []

    def measure(error, fine, far): off.append(0 if error <= fine else 2 if error > far else 1)

    m = answer["moves"]
    for (i, k, p), v in m.items():
        low, high = t.limits[i, k, p]
        measure(max(0 if low is None else low - v, 0 if high is None else v - high), 1e-6, 1e-3)
        (_, x0), (_, x1), x = t.feet[i][0], t.feet[i][-1], t.feet[i][k][1]
        on = m[i, 0, p] + (m[i, len(t.feet[i]) - 1, p] - m[i, 0, p]) * (x - x0) / (x1 - x0)
        measure(abs(on - v), 1e-6, 1e-3)
    program = Program(t, PLANES)
    x = [None] * program.n
    for (i, p), k in program.at.items():
        xs = [q for _, q in t.feet[i]]
        x[k], x[k + 1] = wide(m[i, xs.index(min(xs)), p]), wide(m[i, xs.index(max(xs)), p])
    ratio = F(program.ratio(x, wide))
    measure(ratio - best["ratio"], 1e-3 * best["ratio"] + F(1, 10**9), 1e-2 * best["ratio"] + F(1, 10**5))
    measure(abs(ratio - answer["ratio"]), 1e-6 * (1 + ratio), 1e-3 * (1 + ratio))
    for g in best["groups"]:
        own = [m[f] for f in g.program.feet]
        w = {"total_travel": sum(abs(v) for v in own), "largest_move": max(abs(v) for v in own), "fewest_feet": sum(abs(v) > F(1, 1000) for v in own)}[t.work]
        measure(w - g.best_work, float(g.best_work) * 1e-3 + 1e-6, float(g.best_work) * 1e-2 + 1e-4)
        measure(float(sum(v * v for v in own)) - float(g.best_squares), float(g.best_squares) * 1e-2 + 1e-9, float(g.best_squares) * 5e-2 + 1e-6)
    if set(answer["ways"]) != set(best["ways"]):
        return 2
    for tag, v in best["ways"].items():
        measure(abs(answer["ways"][tag] - v), float(v) * 1e-3 + 1e-3, float(v) * 1e-2 + 1e-2)
    return 2 if 2 in off else max(off)


# ---- mistakes in planning: another input planned, or the right plan spoiled

def edited(input, edit):
    new = json.loads(json.dumps(input))
    edit(new)
    return new


def each_foot(change):
    def edit(new):
        for m in new["machines"]:
            for k, f in enumerate(m.get("feet", [])):
                change(m, k, f)
    return edit


def each_joint(change):
    def edit(new):
        for k, j in enumerate(new["joints"]):
            change(k, j)
    return edit


def minus(text): return text[1:] if text[0] == "-" else "-" + text


def without_limits(m, k, f):
    for p in PLANES:
        f.pop(p, None)


def sides_exchanged(m, k, f):
    for p in PLANES:
        if p in f:
            low, high = f[p].pop("at_least", None), f[p].pop("at_most", None)
            f[p] = {e: minus(v) for e, v in (("at_least", high), ("at_most", low)) if v is not None}


def only_ends(m, k, f):
    xs = [length(g["x"]) for g in m["feet"]]
    if min(xs) < length(f["x"]) < max(xs):
        without_limits(m, k, f)


def planes_swapped(m, k, f):
    own = {p: f.pop(p) for p in PLANES if p in f}
    for p, v in own.items():
        f[PLANES[1 - PLANES.index(p)]] = v


def turned(k, j):
    for q in ("found", "target"):
        for p in PLANES:
            if q in j:
                j[q][p].update({n: minus(j[q][p][n]) for n in ("offset", "slope")})


def target_plus(k, j):
    for p in PLANES:
        if "target" in j:
            j["target"][p] = {n: minus(v) for n, v in j["target"][p].items() if n != "u"}


def from_zero_of_train(k, j):
    """found is taken as a line along the x of the train."""
    for q in ("found", "target"):
        for p in PLANES:
            if q in j:
                j[q][p]["offset"] = mm(length(j[q][p]["offset"]) + slope(j[q][p]["slope"]) * length(j["at"]))


def half_exchanged(k, j):
    """Horizontal and vertical both turned, as if only the roles changed and not the standpoint."""
    if j.pop("seen_from", "last") == "first":
        for q in ("found", "target"):
            for p in PLANES:
                if q in j:
                    j[q][p]["slope" if p == "vertical" else "offset"] = minus(j[q][p]["slope" if p == "vertical" else "offset"])


def set_planes(value):
    return each_joint(lambda k, j: j["limits"].update(per_plane=True) if value else j["limits"].pop("per_plane", None))


def looser(k, j):
    for n in ("offset", "slope", "flex"):
        if k and n in j["limits"]:
            value, u = j["limits"][n].split(" ")
            j["limits"][n] = decimal(number(value) * 1000) + " " + u


def short_for_spacer(k, j):
    if "span" in j.get("coupling", {}):
        if not {"offset", "slope"} & set(j["limits"]):
            raise Refused
        del j["coupling"]


def half_span(k, j):
    if "span" in j.get("coupling", {}):
        value, u = j["coupling"]["span"].split(" ")
        j["coupling"]["span"] = decimal(number(value) / 2) + " " + u


def other_work(new):
    work = new.get("work", "total_travel")
    new["work"] = {"total_travel": "largest_move", "largest_move": "total_travel", "fewest_feet": "total_travel"}[work]


INPUT_SLIPS = {
    "limits_ignored": each_foot(without_limits),
    "limit_sides_exchanged": each_foot(sides_exchanged),
    "middle_foot_ignored": each_foot(only_ends),
    "limits_of_other_plane": each_foot(planes_swapped),
    "relative_reversed": each_joint(turned),
    "target_ignored": each_joint(lambda k, j: j.pop("target", None)),
    "target_added": each_joint(target_plus),
    "slope_not_carried": each_joint(from_zero_of_train),
    "seen_from_ignored": each_joint(lambda k, j: j.pop("seen_from", None)),
    "exchange_forgotten": each_joint(half_exchanged),
    "planes_apart": set_planes(True),
    "planes_together": set_planes(False),
    "first_coupling_only": each_joint(looser),
    "short_for_spacer": each_joint(short_for_spacer),
    "half_span": each_joint(half_span),
    "reference_ignored": lambda new: new.pop("reference", None),
    "first_as_reference": lambda new: new.update(reference=new["machines"][0]["name"]),
    "work_ignored": lambda new: new.pop("work", None),
    "work_confused": other_work,
}


def answer_of(t):
    a = plan(t)
    if a:
        a["ways"] = ways_out(t, a)
        a["shifts"] = shifts(t, a["moves"])
    return a


def clipped(t, input):
    """Planned without limits, then each foot stopped at its own; what comes out is judged, and nothing stands in the way."""
    free = Train(edited(input, each_foot(without_limits)))
    a = plan(free)
    for f, v in a["moves"].items():
        low, high = t.limits[f]
        a["moves"][f] = max(v, low) if low is not None and v < low else min(v, high) if high is not None else v
    program = Program(t, PLANES)
    x = [None] * program.n
    for (i, p), k in program.at.items():
        xs = [q for _, q in t.feet[i]]
        x[k], x[k + 1] = (wide(a["moves"][i, xs.index(e(xs)), p]) for e in (min, max))
    a["ratio"] = F(program.ratio(x, wide))
    a["reach"] = "on_target" if a["ratio"] < F(1, 10**9) else "within_limits" if a["ratio"] <= 1 else "out_of_reach"
    return a


def neighbour_still(t):
    """Each machine moved onto its neighbour on the side of the reference (left out: the first machine) as that stands now; limits are not looked at."""
    r, moves = t.reference or 0, {}
    for i in range(len(t.names)):
        for k, (_, x) in enumerate(t.feet[i]):
            for p in PLANES:
                if i != t.reference:
                    j, s = (i - 1, -1) if i > r else (i, 1)
                    o, tilt = t.joints[j].off[p] if i != r else (F(0), F(0))
                    moves[i, k, p] = s * (o + tilt * (x - t.joints[j].at))
    return {"reach": "on_target", "ratio": F(0), "moves": moves, "ways": {}}


def wrong_answers(input, best):
    """The name of each mistake and what comes of it; None is a refusal. Equal inputs are left out."""
    t = Train(input)
    for name, edit in INPUT_SLIPS.items():
        try:
            new = edited(input, edit)
            if name == "work_ignored" and input.get("work") == "total_travel":
                continue
            if new != input:
                yield name, Train(new)
        except Refused:
            yield name, None
    if " mil" in json.dumps(input):
        yield "mil_as_hundredth", Train(input, "mil_as_hundredth")
    if "/" in "".join(m["feet"][0]["x"] for m in input["machines"] if "feet" in m):
        yield "fraction_misread", Train(input, "fraction_misread")
    yield "clipped_to_limits", lambda: clipped(t, input)
    yield "neighbour_taken_as_still", lambda: neighbour_still(t)
    ways = best["ways"]
    if ways:
        flip = {"low": "high", "high": "low"}
        yield "ways_out_forgotten", lambda: dict(best, ways={})
        yield "way_out_side_exchanged", lambda: dict(best, ways={k[:3] + (flip[k[3]],): v for k, v in ways.items()})
        if any(k[0] == t.reference for k in ways):
            yield "reference_not_a_way_out", lambda: dict(best, ways={k: v for k, v in ways.items() if k[0] != t.reference})


def flags_of(id, input, t, best, result):
    found = []
    for name, how in wrong_answers(input, best):
        if isinstance(how, Train):
            quick = plan(how, reach_only=True)
            # A ratio that is off is either claimed wrongly or worse than the best: no moves are needed to tell.
            if quick is None or quick["reach"] != best["reach"] or how.reference != t.reference or abs(quick["ratio"] - best["ratio"]) > best["ratio"] / 50:
                found.append(name)
                continue
            how = lambda how=how: answer_of(how)
        a = how() if how else None
        g = grade(t, best, a)
        if g == 1:
            raise AssertionError((id, name, "neither right nor wrong"))
        if g:
            found.append(name)
    if any("shift" in m for m in result.get("machines", [])):
        found.append("shift_reversed")
    return found


# ---- vectors of plans

def limit(text, unit):
    """at_least..at_most, either left out; one number is both."""
    low, dots, high = text.partition("..")
    high = high if dots else low
    return {e: v + " " + unit for e, v in (("at_least", low), ("at_most", high)) if v}


def foot(name, x, v=None, h=None, unit="mm"):
    f = {"name": name, "x": x if " " in x else x + " mm"}
    return f | {p: limit(q, unit) for p, q in (("vertical", v), ("horizontal", h)) if q}


def machine(name, *feet, height=None): return {"name": name, **({"height": height} if height else {}), "feet": list(feet)}


def place(text, unit=("mm", "mm/m")):
    ho, hs, vo, vs = text.split()
    return {p: {"offset": o + " " + unit[0], "slope": s + " " + unit[1]} for p, o, s in (("horizontal", ho, hs), ("vertical", vo, vs))}


def joint(at, found, limits, target=None, span=None, first=False, unit=("mm", "mm/m")):
    j = {"at": at if " " in at else at + " mm", "found": place(found, unit), "limits": limits}
    if first:
        j["seen_from"] = "first"
    if target:
        j["target"] = place(target, unit)
    if span:
        j["coupling"] = {"span": span if " " in span else span + " mm"}
    return j


def short_coupling(offset, tilt, apart=False, unit=("mm", "mm/m")):
    return {"offset": offset + " " + unit[0], "slope": tilt + " " + unit[1]} | ({"per_plane": True} if apart else {})


def spacer(flex, apart=False, unit="mm/m", also=None):
    return {"flex": flex + " " + unit} | (also or {}) | ({"per_plane": True} if apart else {})


def train(machines, joints, reference=None, work=None):
    return {"machines": machines, "joints": joints} | ({"reference": reference} if reference else {}) | ({"work": work} if work else {})


CASES = []


def case(id, region, about, input): CASES.append((id, region, about, input))


def solved(c):
    """Plans one case in both ways and finds its flags; what add is to be given."""
    id, region, about, input = c
    t = Train(input)
    best = answer_of(t)
    second_way(id, t, best)
    assert grade(t, best, best) == 0, id
    for g, r in zip(best["groups"], best["ratios"]):  # no plan of fewer feet or less work a thousandth farther on
        assert r == 0 or t.apart or g.cap is not None, id
    result, tolerance = {"reach": best["reach"]}, {}
    if best["reach"] == "on_target":
        result["ratio"] = "0"
        tolerance["/ratio"] = rounding(F(1), "", 10)
        if t.reference is not None:
            result |= forced(t, best, tolerance)
    elif t.apart:
        pass
    bent = any(g.num is wide for g in best["groups"])
    digits = (lambda x: mp.nstr(big(F(x)), 9, strip_zeros=False, min_fixed=-9)) if bent else (lambda x: decimal(F(x)))
    verify = {"ratio": digits(best["ratio"]),
              "work": {planned(g.planes): digits(g.best_work) + ("" if t.work == "fewest_feet" else " mm") for g in best["groups"]},
              "squares": {planned(g.planes): digits(g.best_squares) for g in best["groups"]},
              "in_the_way": [{"machine": t.names[i], "foot": t.feet[i][k][0], "plane": p, "side": s, "alone": digits(v) + " mm"} for (i, k, p, s), v in best["ways"].items()]}
    flags = flags_of(id, input, t, best, result)
    how = "linear programs by the dual simplex method and least squares by the method of Goldfarb and Idnani"
    certain = "; least squares: GLPK finds no plan on the near side of the plane through the answer"
    if t.work == "fewest_feet":
        how, certain = "every choice of feet that move, each with least squares by the method of Goldfarb and Idnani", " as an integer program"
    if bent:
        source = {"kind": "multi_precision", "by": how + ", circles cut by tangents at rational points until plan and bound differ by less than 1e-12, Python decimals of 70 digits",
                  "second": GLPSOL + ", lines through the machines' middles, tangents all round and closely where the plan touches: ratio to 2e-5, work to 1e-3" + certain}
    else:
        source = {"kind": "brute_force" if t.work == "fewest_feet" else "exact", "by": how + ", Python fractions",
                  "second": GLPSOL + ", lines through the machines' middles and moves in two parts: 8 digits" + certain}
    return (id, "plan", region, flags, about, source, input, result, tolerance, verify)


def forced(t, best, tolerance):
    """On target with a reference every move is forced, and so is what each machine does along its axis."""
    size = max(abs(v) for j in t.joints for p in PLANES for v in (j.off[p][0], j.off[p][1] * 1000)) + F(1, 1000)
    reach = max(1, max(abs(x - j.at) for f in t.feet for _, x in f for j in t.joints) / 1000)
    for p in PLANES:
        tolerance["/moves/*/" + p] = rounding(size, "mm", reach * len(t.names))
    moves = [{"machine": t.names[i], "foot": t.feet[i][k][0], **{p: mm(best["moves"][i, k, p]) for p in PLANES}}
             for i in range(len(t.names)) if i != t.reference for k in range(len(t.feet[i]))]
    found = {"moves": moves}
    if best["shifts"]:
        high = max(h for h in t.heights if h is not None)
        tolerance["/machines/*/shift"] = rounding(size, "mm", reach * len(t.names) * max(1, high / 300))
        found["machines"] = [{"machine": n, **({"shift": mm(best["shifts"][i])} if i in best["shifts"] else {})} for i, n in enumerate(t.names)]
    return found


# ---- vectors of centrelines

def written(places):
    return {"machines": [{"machine": n, "at": {p: {q: out(four[2 * k + m], ("mm", "mm/m")[m]) for m, q in enumerate(("offset", "slope"))}
                          | ({"u": {q: out(u[2 * k + m], ("mm", "mm/m")[m]) for m, q in enumerate(("offset", "slope"))}} if u else {})
                          for k, p in enumerate(PLANES)}} for n, four, u in places]}


LINE_SLIPS = ("seen_from_ignored", "exchange_forgotten", "relative_reversed", "reference_ignored", "slope_not_carried", "at_sign", "target_taken_off",
              "last_joint_only", "u_not_carried", "added_straight", "correlation_ignored", "mil_as_hundredth", "fraction_misread")


def lines_case(id, region, about, input):
    places = lines.centrelines(input)
    for n, (y, u) in lines.by_gp(input).items():
        four, own = next((f, v) for m, f, v in places if m == n)
        assert all(abs(big(a) - b) <= mpf(10) ** -40 * (1 + abs(b)) for a, b in zip(four, y)), (id, n)
        assert own is None or all(abs(a - b) <= mpf(10) ** -40 for a, b in zip(own, u)), (id, n)
    found = lines.joints(input)
    size = [sum(abs(w[k]) + (abs(x * w[k + 1]) if k % 2 == 0 else 0) for x, w, _ in found) for k in range(4)]
    tolerance = {}
    for k, p in enumerate(PLANES):
        tolerance["/machines/*/at/%s/offset" % p] = rounding(size[2 * k], "mm", len(found))
        tolerance["/machines/*/at/%s/slope" % p] = rounding(size[2 * k + 1], "mm/m", len(found))
        spread = [max(u[2 * k + m] for _, _, u in places if u) if any(u for _, _, u in places) else 0 for m in (0, 1)]
        if spread[0]:
            tolerance["/machines/*/at/%s/u/offset" % p] = rounding(spread[0], "mm", 10)
            tolerance["/machines/*/at/%s/u/slope" % p] = rounding(spread[1], "mm/m", 10)
    result = written(places)
    flags = [s for s in LINE_SLIPS if differs(result, written(lines.centrelines(input, s)), tolerance)]
    return AREA.add(id, "centrelines", region, flags, about, {"kind": "exact" if not spread[0] else "multi_precision", "by": "from joint to joint, Python fractions" + (", roots by " + MPMATH if spread[0] else ""),
                    "second": GP + ", all lines at once as a linear system: 40 digits"}, input, result, tolerance, since=NEW)


def with_u(j, text, correlation=None, unit=("mm", "mm/m")):
    ho, hs, vo, vs = text.split()
    for p, o, s in (("horizontal", ho, hs), ("vertical", vo, vs)):
        j["found"][p]["u"] = {"offset": o + " " + unit[0], "slope": s + " " + unit[1]}
    if correlation:
        j["found"]["correlation"] = correlation
    return j


def mutual(**pairs):
    """A correlation: ab=0.3 sets row a, column b, and its mirror."""
    r = [[int(a == b) for b in range(4)] for a in range(4)]
    for k, v in pairs.items():
        a, b = int(k[1]), int(k[2])
        r[a][b] = r[b][a] = v
    return r


def refusals(by):
    def refuse(twin, region, code, path, about, at=None, value=None):
        AREA.regions[region] = ("invalid", about)
        AREA.refuse(region.replace("_", "-"), by[twin], region, code, path, changed(by[twin]["input"], at or path, value), about, since=NEW)

    refuse("hot-targets", "no_machines", "missing", "/machines", "a plan for no machines")
    refuse("two-machines", "one_foot", "missing", "/machines/0/feet", "one foot does not hold a line", "/machines/0/feet/1")
    refuse("nobody-stays", "no_feet", "missing", "/machines/2/feet", "no feet, and it is not the one that stays")
    refuse("nobody-stays", "unnamed_machine", "missing", "/machines/1/name", "a machine without a name")
    refuse("nobody-stays", "same_machine", "duplicate", "/machines/2/name", "two machines of one name", value="motor")
    refuse("last-stays", "unnamed_foot", "missing", "/machines/1/feet/0/name", "a foot without a name")
    refuse("three-stations", "same_foot", "duplicate", "/machines/0/feet/2/name", "two feet of one name", value="a")
    refuse("gearbox-stays", "too_few_joints", "conflict", "/joints", "three machines and one coupling", "/joints/1")
    refuse("bolt-bound", "limits_crossed", "conflict", "/machines/0/feet/0/horizontal/at_least", "at least more than at most", value="1.1 mm")
    refuse("three-stations-free", "no_line", "conflict", "/machines/0/feet", "three feet that no straight line serves", "/machines/0/feet/1/vertical/at_least", "4.1 mm")
    refuse("ceiling", "beyond_coupling", "conflict", "/machines/1/feet/0/x", "a foot of the pump on the motor's side of the coupling", value="-200 mm")
    refuse("line-shaft-between", "joints_crossed", "conflict", "/joints/1/at", "the second coupling in front of the first", value="-210 mm")
    refuse("fixed-foot", "same_place", "duplicate", "/machines/1/feet/1/x", "two feet at one place", value="0.45 m")
    refuse("base-bound", "no_limits", "missing", "/joints/0/limits", "a coupling without any limit")
    refuse("spacer-vector", "no_span", "missing", "/joints/0/coupling/span", "a limit at flex planes, and no span between them")
    refuse("spacer-per-plane", "no_flex", "missing", "/joints/0/limits/flex", "a spacer without a limit at its flex planes")
    refuse("one-way-out", "unknown_reference", "unknown", "/reference", "a machine that is not in the train stays", value="boiler")
    refuse("nobody-stays-largest", "unknown_work", "unknown", "/work", "a measure that is not known", value="least_sweat")
    refuse("crew-at-first", "unknown_side", "unknown", "/joints/0/seen_from", "seen from where?", value="above")
    refuse("vector-two", "no_place", "missing", "/joints/0/at", "a coupling that is nowhere")
    refuse("first-stays", "not_found", "missing", "/joints/1/found", "a coupling at which nothing was measured")
    refuse("crew-both-ends", "one_plane", "missing", "/joints/1/found/vertical", "found in one plane only")
    refuse("just-short", "zero_limit", "out_of_range", "/joints/0/limits/offset", "a limit of nothing", value="0 mm")
    refuse("vector-three", "negative_limit", "out_of_range", "/joints/1/limits/slope", "a limit below nothing", value="-0.8 mm/m")
    refuse("spacer-as-short", "negative_span", "out_of_range", "/joints/0/coupling/span", "a spacer of less than no length", value="-800 mm")
    refuse("must-move", "no_unit", "malformed", "/machines/0/feet/1/vertical/at_most", "two of what?", value="2")
    refuse("two-inch", "decimal_comma", "malformed", "/machines/0/feet/0/x", "a decimal comma is not guessed at", value="-61,5 in")
    refuse("zero-width", "unknown_in_limit", "unknown", "/machines/0/feet/0/vertical/about", "a limit that is not known", value="0.3 mm")
    refuse("far-zero", "unknown_in_joint", "unknown", "/joints/0/bolts", "bolts of a coupling are not known here", value=8)
    refuse("lines-three", "lines_no_joint", "conflict", "/joints", "three machines and one coupling", "/joints/1")
    refuse("lines-three", "lines_unknown_reference", "unknown", "/reference", "a machine that is not in the train", value="boiler")
    refuse("lines-correlated", "lines_negative_u", "out_of_range", "/joints/0/found/vertical/u/offset", "an uncertainty below nothing", value="-0.01 mm")
    refuse("lines-u", "lines_u_in_one_plane", "missing", "/joints/0/found/horizontal/u", "an uncertainty in one plane only")
    refuse("lines-inch", "lines_same_machine", "duplicate", "/machines/1/name", "two machines of one name", value="motor")


def line_cases(by):
    S = short_coupling("0.05", "0.5")
    three = [machine("motor", foot("a", "-1500"), foot("b", "-500")), machine("gearbox", foot("c", "300"), foot("d", "900")), machine("pump", foot("e", "1700"), foot("f", "2600"))]
    four = three + [machine("exciter", foot("g", "3400"), foot("h", "3900"))]

    def add(id, region, about, input): by[id] = lines_case(id, region, about, input)

    add("lines-three", "lines_reference", "three machines, relative to the gearbox", train(three, [joint("-100", "0.21 0.4 -0.32 0.15", S), joint("1250", "0.13 -0.22 0.27 0.36", S, "0 0 0.2 0.1")], "gearbox"))
    add("lines-first", "lines_first", "no reference: relative to the first machine", train(three, [joint("-90", "0.11 0.3 -0.22 0.35", S), joint("1240", "-0.17 0.28 0.31 -0.26", S)]))
    add("lines-last", "lines_last", "four machines relative to the last one", train(four, [joint("-110", "0.24 0.1 0.19 -0.2", S), joint("1230", "-0.08 0.33 0.12 0.45", S, "0.02 0.1 0.2 -0.1"), joint("2950", "0.3 -0.5 -0.16 0.2", spacer("1"), span="300")], "exciter"))
    add("lines-other-end", "lines_seen_from_first", "one coupling seen from behind the first machine", train(three, [joint("-120", "0.31 0.24 0.18 -0.43", S, first=True), joint("1260", "0.15 0.21 -0.27 0.34", S)], "pump"))
    add("lines-u", "lines_u", "uncertainties add up along the train", train(three, [with_u(joint("-105", "0.2 0.3 0.1 -0.2", S), "0.006 0.02 0.008 0.03"), with_u(joint("1255", "-0.1 0.2 0.3 0.1", S), "0.01 0.015 0.012 0.025")], "motor"))
    add("lines-u-middle", "lines_u_middle", "uncertainties from a gearbox in the middle, one coupling without", train(four, [with_u(joint("-95", "0.12 0.23 0.31 -0.12", S), "0.005 0.03 0.004 0.02"), with_u(joint("1245", "0.22 -0.13 0.21 0.15", S), "0.007 0.02 0.009 0.01", mutual(r01=0.5, r23=0.6)), joint("2960", "0.1 0.1 0.2 -0.3", S, "0 0 -0.1 0.05")], "gearbox"))
    add("lines-correlated", "lines_correlated", "offset and slope of one sweep belong together, seen from the first", train(three, [with_u(joint("-130", "0.14 0.25 -0.36 0.17", S, first=True), "0.01 0.03 0.012 0.04", mutual(r01=0.6, r23=-0.7, r12=0.2)), with_u(joint("1270", "0.18 0.29 0.11 -0.22", S), "0.008 0.02 0.01 0.03", mutual(r01=-0.5, r23=0.4))], "pump"))
    add("lines-far", "lines_far", "the tape begins 40 m away: offsets there are large and say little", train([machine("motor", foot("a", "39100"), foot("b", "40200")), machine("pump", foot("c", "41100"), foot("d", "42300"))], [with_u(joint("40.6 m", "0.14 0.62 -0.25 0.71", S), "0.004 0.01 0.005 0.012", mutual(r01=-0.4, r23=0.3))], "motor"))
    add("lines-inch", "lines_inch", "mils, and inches off the tape", train([machine("motor", foot("a", "-61 1/2 in"), foot("b", "-20 1/4 in")), machine("fan", foot("c", "17 3/8 in"), foot("d", "49 in"))], [joint("3 5/16 in", "7 0.4 -12 0.6", short_coupling("2", "0.5", unit=("mil", "mil/in")), unit=("mil", "mil/in"))]))


def main():
    import train_cases
    train_cases.cases(case, train, machine, foot, joint, short_coupling, spacer)
    global AREA
    with Pool(2) as pool:
        plans = pool.map(solved, CASES, chunksize=1)
    line_regions = {"lines_reference": ("plain", "where each machine stands, relative to the one that stays"), "lines_first": ("plain", "relative to the first machine"), "lines_last": ("plain", "relative to the last machine"),
                    "lines_seen_from_first": ("plain", "a coupling seen from the other end"), "lines_u": ("plain", "uncertainties along a train"), "lines_u_middle": ("hard", "uncertainties both ways from the middle"),
                    "lines_correlated": ("hard", "errors that belong together"), "lines_far": ("hard", "a zero far away"), "lines_inch": ("plain", "inches and mils")}
    hard = set(train_cases.HARD)
    AREA = Area("train", {v[2]: ("hard" if v[2] in hard else "plain", train_cases.REGIONS.get(v[2], v[4])) for v in plans} | line_regions)
    by = {}
    for v in plans:
        by[v[0]] = AREA.add(*v, since=NEW)
    line_cases(by)

    refusals(by)
    AREA.save()


if __name__ == "__main__":
    main()
