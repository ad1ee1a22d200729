"""Writes arc.json: what an arc of clock positions covers, sensors, forecasts, residuals,
budgets, what dials should show, moves that are followed, and two measurements of one position.

Run as `python3 generate/arc.py` from testdata. Needs mpmath and pari-gp (Debian packages
python3-mpmath, pari-gp); takes under a minute.

First way: each operation is a function of an input and a context, which holds the numbers.
In the context Exact these are mpmath's with 60 digits (arc, compare and merge: fractions);
least squares go by an orthogonal factor of the whole weighted design, and what is shared by its
analytic derivative. Second way (SECOND, in pari-gp with 110 digits): moments of each set about its
weighted mean, and every derivative a central difference with a step of 1e-30; a position merged or compared
as eight observations of four numbers; an arc by trying each position. Both agree to 30 digits.

Mistakes: every operation takes the name of one (`slip`) and errs by it. A vector carries the flags of all that change its
answer by over 1000 tolerances. `normal_equations` is set where the normal equations, formed in Python's double
precision, miss by over 30 tolerances, with their columns as they come and scaled; `small_p_cancelled` likewise comes from a double.
In the context Double the same operations must pass every tolerance at half its width, in millimetres and in nanometres.
"""

import math
import random
import subprocess
from types import SimpleNamespace

from asked import *
from common import *

GP = "pari-gp " + subprocess.run(["gp", "--version-short"], capture_output=True, text=True, check=True).stdout.strip()
PLANES = ("horizontal", "vertical")
NUMBERS = [("horizontal", "offset", "mm"), ("horizontal", "slope", "mm/m"), ("vertical", "offset", "mm"), ("vertical", "slope", "mm/m")]
CROSS = {"rim", "bore", "straightedge", "displacement"}  # see the offset at a station
JOINTS = {"spacer_face", "spacer_far_face"}
SHARED = ("station", "radius", "sag", "clock")


class Exact:
    """Numbers of 60 digits, lengths in mm."""
    unit = F(1)
    sqrt = staticmethod(mp.sqrt)
    num = staticmethod(big)
    trig = staticmethod(sincos)


class Double:
    """Double precision, with lengths in `unit` mm."""

    def __init__(self, unit):
        self.unit = F(unit)

    sqrt = staticmethod(math.sqrt)
    num = staticmethod(float)

    @staticmethod
    def trig(degrees):
        t = math.radians(float(degrees))
        return math.sin(t), math.cos(t)


EXACT = Exact()


def dot(a, b): return sum(x * y for x, y in zip(a, b))
def gain(x): return F(str(x))


# ---------------------------------------------------------------- what an input says, with slips

def at_clock(text, slip=""):
    """Reads a clock position in degrees, as the crew sees it."""
    return clock(text) / 30 if slip == "hours_as_degrees" and ":" in text else clock(text)


def mirror(input, slip=""):
    return -1 if input["view"] == "from_stationary" and slip != "view_mirrored" else 1


TAKEN_FOR = {
    "face_sign": {"near_face": "far_face", "far_face": "near_face", "spacer_face": "spacer_far_face", "spacer_far_face": "spacer_face"},
    "bore_as_rim": {"bore": "rim"},
    "gap_as_dial": {"gap": "near_face"},
    "straightedge_as_rim": {"straightedge": "rim"},
}


def law(probe, slip=""):
    """r = c + k (a offset + b slope) . u(t); da and db are what a and b change by with radius and station."""
    kind = TAKEN_FOR.get(slip, {}).get(probe["kind"], probe["kind"])
    side = -1 if probe.get("carrier") == "movable" else 1
    if slip == "carrier_sign" and kind in CROSS or slip == "joints_exchanged" and kind in JOINTS:
        side = -side
    x, r, span = (measure(probe.get(p, "0 mm"), slip) for p in ("station", "radius", "span"))
    x = abs(x) if slip == "station_unsigned" else x
    r = r / 2 if slip == "radius_for_diameter" else r
    span = span / 2 if slip == "half_span" else span
    s = SimpleNamespace(a=F(0), b=r, da=F(0), dbx=F(0), dbr=F(1), sign=-1 if kind == "bore" else 1)
    if kind in CROSS:
        s.k = {"rim": side, "bore": -side, "straightedge": -side}.get(kind) or (F(1) if slip == "gain_ignored" else gain(probe["gain"]))
        s.a, s.b, s.dbx, s.dbr = F(1), x, F(1), F(0)
    elif kind in JOINTS:
        s.k = 1 if kind == "spacer_face" else -1
        s.a, s.b, s.da, s.dbr = side * r / span, r / 2, side / span, F(1, 2)
    else:
        s.k = 1 if kind == "near_face" else -1
    return s


def uncertainty(what, text, slip=""):
    return angle(text) if what in ("clock", "angle") else measure(text, slip)


def take(s, own, view, slip):
    """Adds to a law the readings of a set, or only where they will stand, and their uncertainties."""
    readings = own.get("readings") or [{"at": t} for t in own["at"]]
    given = own.get("u", {})
    s.t = [view * (F(90 * (i % 4)) if slip == "quarters_assumed" else at_clock(r["at"], slip)) for i, r in enumerate(readings)]
    s.y = [measure(r["value"], slip) if "value" in r else F(0) for r in readings]
    texts = [r.get("u") or given.get("reading") for r in readings]
    s.u = [t and measure(t, slip) for t in texts]
    part = {"sag_added": -1, "sag_ignored": 0, "sag_once": F(1, 2)}.get(slip, 1)
    s.sag = part * s.sign * measure(own.get("sag", "0 mm"), slip)
    s.shared = {w: uncertainty(w, given[w], slip) for w in SHARED if w in given}
    s.angle = uncertainty("angle", given["angle"]) if "angle" in given else None
    s.mounting = None if slip == "mounting_ignored" else own.get("mounting")
    return s


def sensor_sets(sensor, view, slip):
    """A sensor is a displacement of k = +gain or -gain, and a near face of radius 1 m that reads slope x 1 m."""
    side = -1 if sensor["carrier"] == "movable" else 1
    g = F(1) if slip == "gain_ignored" else gain(sensor["gain"])
    x = measure(sensor["station"], slip)
    x = abs(x) if slip == "station_unsigned" else x
    k = g if slip == "carrier_ignored_in_sensor" else side * g
    sets = [take(SimpleNamespace(k=k, a=F(1), b=x, da=F(0), dbx=F(1), dbr=F(0), sign=1), sensor, view, slip)]
    channel = sensor.get("angle")
    if channel and slip != "angle_channel_dropped":
        g = F(1) if slip == "gain_ignored" else gain(channel["gain"])
        k = side * g if slip == "angle_channel_mirrored" else g
        own = {"readings": [{"at": r["at"], "value": mm(slope(r["value"]) * 1000)} for r in channel["readings"]]}
        if "u" in channel:
            own["u"] = {"reading": mm(slope(channel["u"]) * 1000)}
        sets.append(take(SimpleNamespace(k=k, a=F(0), b=F(1000), da=F(0), dbx=F(0), dbr=F(0), sign=1), own, view, slip))
    return sets


def sets_of(op, input, slip=""):
    view = mirror(input, slip)
    if op == "sensor":
        return [s for sensor in input["sensors"] for s in sensor_sets(sensor, view, slip)]
    return [take(law(s["probe"], slip), s, view, slip) for s in input["sets"]]


def four(position):
    """Reads the four numbers of a position."""
    return [(length if what == "offset" else slope)(position[plane][what]) for plane, what, _ in NUMBERS]


def four_u(position):
    """Reads its standard uncertainties, or None."""
    if "u" not in position["horizontal"]:
        return None
    return [(length if what == "offset" else slope)(position[plane]["u"][what]) for plane, what, _ in NUMBERS]


OFFSETS_FIRST = (0, 2, 1, 3)


def covariance(position, slip=""):
    """Returns the covariance of a position as fractions, or None."""
    u, rows = four_u(position), position.get("correlation")
    if u is None:
        return None
    r = [[gain(x) for x in row] for row in rows] if rows and slip != "correlation_ignored" else [[F(int(i == j)) for j in range(4)] for i in range(4)]
    if slip == "correlation_order":
        r = [[r[OFFSETS_FIRST[i]][OFFSETS_FIRST[j]] for j in range(4)] for i in range(4)]
    return [[u[i] * r[i][j] * u[j] for j in range(4)] for i in range(4)]


# ---------------------------------------------------------------- least squares

def orthogonal(A, b, ctx):
    """Returns x, the pseudo-inverse and R by Gram and Schmidt's way, every column made orthogonal twice."""
    n = len(A[0])
    columns = [[row[j] for row in A] for j in range(n)]
    Q, R = [], [[0] * n for _ in range(n)]
    for j, v in enumerate(columns):
        for _ in range(2):
            for i, q in enumerate(Q):
                part = dot(q, v)
                R[i][j] += part
                v = [a - part * c for a, c in zip(v, q)]
        R[j][j] = ctx.sqrt(dot(v, v))
        if R[j][j] < 1e-13:  # columns have length one
            raise Refused
        Q.append([a / R[j][j] for a in v])
    x = backwards(R, [dot(q, b) for q in Q])
    inverse = [backwards(R, [ctx.num(F(int(i == j))) for i in range(n)]) for j in range(n)]  # by columns
    P = [[sum(inverse[k][i] * Q[k][r] for k in range(i, n)) for r in range(len(A))] for i in range(n)]
    return x, P, R


def backwards(R, rhs):
    x = [0] * len(rhs)
    for i in reversed(range(len(rhs))):
        x[i] = (rhs[i] - sum(R[i][j] * x[j] for j in range(i + 1, len(rhs)))) / R[i][i]
    return x


def normal(A, b, ctx):
    """The same by the normal equations and Cholesky's factor."""
    n = len(A[0])
    N = [[sum(row[i] * row[j] for row in A) for j in range(n)] for i in range(n)]
    L = [[0.0] * n for _ in range(n)]
    for i in range(n):
        for j in range(i + 1):
            v = N[i][j] - sum(L[i][k] * L[j][k] for k in range(j))
            if i == j and v <= 0:
                raise Refused
            L[i][j] = math.sqrt(v) if i == j else v / L[j][j]

    def both(rhs):
        z = []
        for i in range(n):
            z.append((rhs[i] - sum(L[i][k] * z[k] for k in range(i))) / L[i][i])
        return backwards([[L[k][i] for k in range(n)] for i in range(n)], z)

    x = both([sum(row[j] * v for row, v in zip(A, b)) for j in range(n)])
    columns = [both(row) for row in A]
    return x, [[c[j] for c in columns] for j in range(n)], None


def condition(R):
    singular = sorted(mp.svd_r(mp.matrix(R), compute_uv=False))
    return singular[-1] / singular[0]


def solved(A, b, ctx, method=orthogonal, scaled=True):
    """Solves weighted equations; returns x, pseudo-inverse, R of the scaled columns, and their norms."""
    norms = [ctx.sqrt(sum(row[j] ** 2 for row in A)) for j in range(len(A[0]))]
    if min(norms) == 0:
        raise Refused
    d = norms if scaled else [1.0] * len(norms)
    x, P, R = method([[v / e for v, e in zip(row, d)] for row in A], b, ctx)
    return [v / e for v, e in zip(x, d)], [[v / e for v in row] for row, e in zip(P, d)], R, norms


class Fit:
    """Sets of readings, solved with or without a slip."""

    def __init__(self, ctx, sets, slip="", expected=None, method=orthogonal, scaled=True):
        self.ctx, self.sets, self.slip = ctx, sets, slip
        self.stated = any(u is not None for s in sets for u in s.u)
        self.rows = [r for number, s in enumerate(sets) for r in self.rows_of(number, s)]
        if expected:  # readings that will lie exactly on the law
            for r in self.rows:
                r.y = dot(r.g, expected)
        self.weigh()
        self.solve(method, scaled)
        if expected:
            self.x, self.rest = list(expected), [0 * r.y for r in self.rows]
        self.spread()

    def rows_of(self, number, s):
        """Each reading less its droop is zero + g . (offset_h, slope_h, offset_v, slope_v)."""
        ctx = self.ctx
        ka, kb, sag = ctx.num(F(s.k * s.a)), ctx.num(s.k * s.b / ctx.unit), ctx.num(F(s.sag) / ctx.unit)
        for t, y, u in zip(s.t, s.y, s.u):
            sn, c = ctx.trig(t)
            y = ctx.num(y / ctx.unit)
            yield SimpleNamespace(g=[ka * sn, kb * sn, ka * c, kb * c], turned=[ka * c, kb * c, -ka * sn, -kb * sn], s=sn, c=c,
                                  y=y - sag * c, size=abs(y) + abs(sag * c), sag=sag, u=ctx.num(u / ctx.unit) if self.stated else ctx.num(F(1)), set=number)

    def weigh(self):
        mean = self.ctx.sqrt(sum(r.u**2 for r in self.rows) / len(self.rows))
        for r in self.rows:
            if self.slip == "weights_ignored":
                r.u = mean
            if self.slip == "weights_not_squared":
                r.u = self.ctx.sqrt(r.u * mean)
            r.w = 1 / r.u

    def solve(self, method, scaled):
        rows, groups = self.rows, 1 if self.slip == "one_zero" else len(self.sets)
        if self.slip == "first_reading_exact":
            first = {}
            for i, r in enumerate(rows):
                first.setdefault(r.set, i)
            use = [i for i in range(len(rows)) if i not in first.values()]
            A = [[rows[i].w * (a - b) for a, b in zip(rows[i].g, rows[first[rows[i].set]].g)] for i in use]
            y = [rows[i].w * (rows[i].y - rows[first[rows[i].set]].y) for i in use]
        else:
            use = range(len(rows))
            A = [[r.w * g for g in r.g] + [r.w if z == (r.set if groups > 1 else 0) else 0 * r.w for z in range(groups)] for r in rows]
            y = [r.w * r.y for r in rows]
        if len(A) < len(A[0]):
            raise Refused
        self.full, P, self.R, self.norms = solved(A, y, self.ctx, method, scaled)
        self.x = self.full[:4]
        self.cofactor = [[dot(P[i], P[j]) for j in range(4)] for i in range(4)]
        self.P = [[0 * rows[0].y] * len(rows) for _ in range(4)]
        for k in range(4):
            for p, i in zip(P[k], use):
                self.P[k][i] += p * rows[i].w
                if self.slip == "first_reading_exact":
                    self.P[k][first[rows[i].set]] -= p * rows[i].w
        weighted = [b - dot(row, self.full) for row, b in zip(A, y)]
        self.rest = [0 * rows[0].y] * len(rows)
        self.leverage = [0 * rows[0].y] * len(rows)
        for row, e, i, n in zip(A, weighted, use, range(len(A))):
            self.rest[i] = e / rows[i].w
            self.leverage[i] = sum(row[j] * P[j][n] for j in range(len(row)))
        self.left = len(A) - len(A[0])
        divisor = len(A) if self.slip == "scatter_over_all" else self.left
        self.scatter = self.ctx.sqrt(sum(e * e for e in weighted) / divisor) if divisor else None

    def spread(self):
        """Sets shares, [set, of, covariance], and V, their sum."""
        self.shares = []
        for number, s in enumerate(self.sets):
            own = [i for i, r in enumerate(self.rows) if r.set == number]
            self.own(number, s, own)
        seen = set()
        for number, s in enumerate(self.sets):
            if s.mounting is None or s.mounting not in seen:
                seen.add(s.mounting)
                self.mounted(number, s)
        self.shares.sort(key=lambda e: ORDER(e[0], e[1]))
        self.V = [[sum(e[2][i][j] for e in self.shares) for j in range(4)] for i in range(4)]

    def own(self, number, s, own):
        """The share of the readings of one set, and of their positions."""
        u = {i: self.rows[i].u if self.stated else self.scatter for i in own}
        if None in u.values():
            u = {i: 0 * self.rows[i].y for i in own}
        first = own[0] if self.slip == "first_reading_exact" else None
        self.share(number, "reading", [[self.P[k][i] * u[i] for k in range(4)] for i in own if i != first])
        if s.angle is not None and self.stated and self.slip != "angle_ignored":
            each = [self.derivative("clock", s, [i], s.angle) for i in own]
            if self.slip == "angle_as_clock":
                each = [[sum(p) for p in zip(*each)]]
            self.share(number, "angle", each)

    def mounted(self, number, s):
        """The shares of what all sets of a mounting have in common."""
        if self.slip == "shared_ignored":
            return
        sets = [(n, t) for n, t in enumerate(self.sets) if n == number or s.mounting is not None and t.mounting == s.mounting]
        for what, u in s.shared.items():
            rows = [(t, i) for n, t in sets for i, r in enumerate(self.rows) if r.set == n]
            each = [self.derivative(what, t, [i], u) for t, i in rows]
            self.share(number, what, each if self.slip == "shared_as_independent" else [[sum(p) for p in zip(*each)]])

    def share(self, number, of, parts):
        self.shares.append((number, of, [[sum(p[i] * p[j] for p in parts) for j in range(4)] for i in range(4)]))

    def derivative(self, what, s, own, u):
        """x solves A'W(y - Ax) = 0, so dx = (A'WA)^-1 (dA'W(y - Ax) + A'W(dy - dA x)); dA has nothing in the columns of the zeros."""
        u = self.ctx.num(u) if what == "clock" else self.ctx.num(u / self.ctx.unit)
        total = [0 * u] * 4
        for i in own:
            r = self.rows[i]
            dg, dy = self.change(what, s, r)
            rest = 0 * u if self.slip == "residual_share_forgotten" else self.rest[i]
            e = dy - dot(dg, self.x)
            total = [t + dot(self.cofactor[k], dg) * r.w**2 * rest + self.P[k][i] * e for k, t in enumerate(total)]
        return [t * u for t in total]

    def change(self, what, s, r):
        """How one row changes with a shared quantity: in g, and in y."""
        zero = 0 * r.y
        if what == "clock":  # also in the droop that is taken off
            return r.turned, r.sag * r.s
        if what == "sag":
            return [zero] * 4, -s.sign * r.c
        a = self.ctx.num(F(s.k * s.da * self.ctx.unit)) if what == "radius" else zero
        b = self.ctx.num(F(s.k * (s.dbr if what == "radius" else s.dbx)))
        return [a * r.s, b * r.s, a * r.c, b * r.c], zero


def ORDER(number, of):
    """The order of the shares of a budget: set by set, and in each as PROTOCOL.md names them."""
    return number, ("reading", "angle", "station", "radius", "sag", "clock").index(of)


# ---------------------------------------------------------------- operations: trees with leaves (value, unit)

def position_tree(ctx, x, u=None):
    back = [ctx.num(ctx.unit), 1, ctx.num(ctx.unit), 1]
    tree = {plane: {} for plane in PLANES}
    for i, (plane, what, unit) in enumerate(NUMBERS):
        tree[plane][what] = (x[i] * back[i], unit)
    for i, (plane, what, unit) in enumerate(NUMBERS if u else []):
        tree[plane].setdefault("u", {})[what] = (u[i] * back[i], unit)
    return tree


def at_foot(ctx, fit, foot, o):
    """Returns the variance of a move at a foot in one plane."""
    x = ctx.num(length(foot["x"]) / ctx.unit)
    u = ctx.num(length(foot.get("u", "0 mm")) / ctx.unit) if fit.slip != "foot_station_ignored" else 0
    both = 0 if fit.slip == "feet_uncorrelated" else 2 * x * fit.V[o][o + 1]
    return fit.V[o][o] + both + x * x * fit.V[o + 1][o + 1] + (fit.x[o + 1] * u) ** 2


def do_sensor(ctx, input, slip="", **how):
    fit = Fit(ctx, sets_of("sensor", input, slip), slip, **how)
    x, V, back = list(fit.x), fit.V, ctx.num(ctx.unit)
    if slip == "offset_at_dial_plane":
        at = ctx.num(length(input["sensors"][0]["station"]) / ctx.unit)
        x[0], x[2] = x[0] + at * x[1], x[2] + at * x[3]
    order = (2, 3, 0, 1) if slip == "planes_mixed" else (0, 1, 2, 3)
    tree = position_tree(ctx, [x[i] for i in order], [ctx.sqrt(V[i][i]) for i in order] if fit.stated else None)
    if "feet" in input:
        tree["moves"] = []
        sign = 1 if slip == "correction_for_position" else -1
        for foot in input["feet"]:
            at = ctx.num(length(foot["x"]) / ctx.unit)
            o = {p: order[2 * i] for i, p in enumerate(PLANES)}
            m = {"foot": foot["name"], **{p: (sign * (x[o[p]] + at * x[o[p] + 1]) * back, "mm") for p in PLANES}}
            if fit.stated:
                m["u"] = {p: (ctx.sqrt(at_foot(ctx, fit, foot, o[p])) * back, "mm") for p in PLANES}
            tree["moves"].append(m)
    tree["warnings"] = []
    return tree, fit


def do_forecast(ctx, input, slip="", **how):
    x = four(input["expected"])
    x = [ctx.num(F(0) if slip == "expected_ignored" else v / (ctx.unit if i % 2 == 0 else 1)) for i, v in enumerate(x)]
    fit = Fit(ctx, sets_of("forecast", input, slip), slip, expected=x, **how)
    back = ctx.num(ctx.unit)
    u = position_tree(ctx, [ctx.sqrt(fit.V[i][i]) for i in range(4)])
    tree = {"u": u}
    if "feet" in input:
        tree["feet"] = [{"foot": f["name"], **{p: (ctx.sqrt(at_foot(ctx, fit, f, 2 * i)) * back, "mm") for i, p in enumerate(PLANES)}} for f in input["feet"]]
    return tree, fit


def do_residuals(ctx, input, slip="", **how):
    fit = Fit(ctx, sets_of("residuals", input, slip), slip, **how)
    back, entries, counts = ctx.num(ctx.unit), [], {}
    for r, e, h in zip(fit.rows, fit.rest, fit.leverage):
        number = counts.get(r.set, 0)
        counts[r.set] = number + 1
        if slip == "leverage_without_zero":
            h = h - r.w**2 / sum(q.w**2 for q in fit.rows if q.set == r.set)
        u = fit.scatter if not fit.stated or slip == "scatter_for_stated" else r.u
        if not fit.stated:
            u = fit.scatter
        if slip == "scatter_for_stated" and fit.stated:
            u = ctx.sqrt(sum(q * q for q in fit.rest) / fit.left)
        entry = {"set": r.set, "reading": number, "value": ((-e if slip == "residual_reversed" else e) * back, "mm")}
        if 1 - h > 1e-9:  # of a reading that has its fitted value for itself there is no standardised residual
            entry["standardised"] = (e / (u if slip == "leverage_ignored" else u * ctx.sqrt(1 - h)) * (-1 if slip == "residual_reversed" else 1), "")
        entry["leverage"] = (h, "")
        entries.append(entry)
    return {"residuals": entries}, fit


def do_budget(ctx, input, slip="", **how):
    fit = Fit(ctx, sets_of("budget", input, slip), slip, **how)
    return {"shares": [{"set": n, "of": of, "u": position_tree(ctx, [ctx.sqrt(abs(V[i][i])) for i in range(4)])} for n, of, V in fit.shares]}, fit


def do_follow(ctx, input, slip="", method=orthogonal, scaled=True):
    view, plane = mirror(input, slip), PLANES.index(input["plane"])
    stated = "u" in input["probes"][0]
    A, b, sizes, back = [], [], [], ctx.num(ctx.unit)
    us = [ctx.num(length(p["u"]) / ctx.unit) if stated else ctx.num(F(1)) for p in input["probes"]]
    mean = ctx.sqrt(sum(u * u for u in us) / len(us))
    for p, u in zip(input["probes"], us):
        s, u = law(p["probe"], slip), {"weights_ignored": mean, "weights_not_squared": ctx.sqrt(u * mean)}.get(slip, u)
        trig = ctx.trig(view * at_clock(p["at"], slip))
        c = trig[1 - plane if slip == "across_for_along" else plane]
        if slip == "cosine_forgotten":
            c = ctx.num(F(1 if c > 0 else -1))
        start, now = (ctx.num(measure(p[w], slip) / ctx.unit) for w in ("start", "now"))
        change = {"start_ignored": now, "change_reversed": start - now}.get(slip, now - start)
        w = 1 / u if slip == "reading_not_doubled" else 1 / (ctx.sqrt(ctx.num(F(2))) * u)
        A.append([w * ctx.num(F(s.k * s.a)) * c, w * ctx.num(s.k * s.b / ctx.unit) * c])
        b.append(w * change)
        sizes.append(w * (abs(now) + abs(start)))
    if len(A) < 2:
        raise Refused
    d, P, R, norms = solved(A, b, ctx, method, scaled)
    V = [dot(row, row) for row in P]
    x = [ctx.num(v / (ctx.unit if i % 2 == 0 else 1)) for i, v in enumerate(four(input["from"]))]
    if slip == "from_forgotten":
        x[2 * plane] = x[2 * plane + 1] = 0
    to = 2 * (1 - plane if slip == "plane_exchanged" else plane)
    x[to], x[to + 1] = x[to] + d[0], x[to + 1] + d[1]
    u = four_u(input["from"]) if stated else None
    if u:
        u = [ctx.num(v / (ctx.unit if i % 2 == 0 else 1)) for i, v in enumerate(u)]
        for i in (0, 1):
            known = 0 if slip == "from_known" else u[to + i]
            u[to + i] = known + ctx.sqrt(V[i]) if slip == "added_straight" else ctx.sqrt(known**2 + V[i])
            if slip == "change_known":
                u[to + i] = known
    return position_tree(ctx, x, u), SimpleNamespace(R=R, norms=norms, size=ctx.sqrt(dot(sizes, sizes)), d=d, V=V, x=x, to=to, u=u)


def do_expect(ctx, input, slip="", **_):
    x = [ctx.num(v / (ctx.unit if i % 2 == 0 else 1)) for i, v in enumerate(four(input["position"]))]
    V = covariance(input["position"], slip) if slip != "position_known" else None
    if V:
        V = [[ctx.num(v / (ctx.unit if i % 2 == 0 else 1) / (ctx.unit if j % 2 == 0 else 1)) for j, v in enumerate(row)] for i, row in enumerate(V)]
    back, tree, info = ctx.num(ctx.unit), [], SimpleNamespace(value=0, u=0)
    for s, own in zip(sets_of("expect", input, slip), input["sets"]):
        fit = Fit.__new__(Fit)  # only for its rows
        fit.ctx, fit.slip, fit.stated = ctx, slip, False
        rows, shown = list(fit.rows_of(0, s)), []
        for r in rows:
            r.value = dot(r.g, x) + r.sag * r.c
        first = rows[0]
        for i, (r, text) in enumerate(zip(rows, own["at"])):
            entry = {"at": text, "value": ((r.value - (0 if slip == "zero_forgotten" else first.value)) * back, "mm")}
            parts = squares(ctx, fit, s, r, first, x, V, slip)
            if i and parts:
                u2 = sum(p for p, _ in parts)
                u = sum(ctx.sqrt(abs(p)) for p, _ in parts) if slip == "added_straight" else ctx.sqrt(abs(u2))
                entry["u"] = (u * back, "mm")
                info.u = max(info.u, sum(size for _, size in parts) / u * back) if u else info.u
            info.value = max(info.value, (sum(abs(a * b) + abs(c * b) for a, b, c in zip(r.g, x, first.g)) + 2 * abs(r.sag)) * back)
            shown.append(entry)
        tree.append({"readings": shown})
    return {"sets": tree}, info


def squares(ctx, fit, s, r, first, x, V, slip):
    """Returns the parts of the variance of one reading against the first, each with the size of what goes into it."""
    parts = []
    if V:
        g = r.g if slip == "first_not_taken_off" else [a - b for a, b in zip(r.g, first.g)]
        h = [abs(a) + abs(b) for a, b in zip(r.g, first.g)]
        parts.append((sum(g[i] * V[i][j] * g[j] for i in range(4) for j in range(4)), sum(h[i] * abs(V[i][j]) * h[j] for i in range(4) for j in range(4))))

    def moved(what, q):
        dg, dy = fit.change(what, s, q)  # dy is what is taken off a reading
        return dot(dg, x) - dy

    for what, u in s.shared.items() if slip != "shared_ignored" else []:
        u = ctx.num(u) if what == "clock" else ctx.num(u / ctx.unit)
        a, b = moved(what, r), moved(what, first)
        if slip == "shared_as_independent":
            parts.append(((a * a + b * b) * u * u, (a * a + b * b) * u * u))
        else:
            parts.append((((a - b) * u) ** 2, ((abs(a) + abs(b)) * u) ** 2))
    once = slip == "start_counted_once"
    if s.u[0] is not None:
        u = ctx.num(s.u[0] / ctx.unit)
        parts.append(((1 if once else 2) * u * u, 2 * u * u))
    if s.angle is not None and slip != "angle_ignored":
        u, a, b = ctx.num(s.angle), moved("clock", r), moved("clock", first)
        p = ((a - b) * u) ** 2 if slip == "angle_as_clock" else (a * a + (0 if once else b * b)) * u * u
        parts.append((p, (abs(a) + abs(b)) ** 2 * u * u))
    return parts


# ---------------------------------------------------------------- compare and merge: in fractions

def matrix_of(ctx, V):
    d = [ctx.unit, F(1), ctx.unit, F(1)]
    rows = [[v / d[i] / d[j] for j, v in enumerate(row)] for i, row in enumerate(V)]
    return rows if ctx is EXACT else [[float(v) for v in row] for row in rows]


def vector_of(ctx, x):
    d = [ctx.unit, F(1), ctx.unit, F(1)]
    x = [v / e for v, e in zip(x, d)]
    return x if ctx is EXACT else [float(v) for v in x]


def eliminated(M, rhs):
    """Solves M X = rhs for a positive definite M; rhs is a list of columns."""
    n = len(M)
    M = [list(row) + [c[i] for c in rhs] for i, row in enumerate(M)]
    for j in range(n):
        for i in range(j + 1, n):
            f = M[i][j] / M[j][j]
            M[i] = [a - f * b for a, b in zip(M[i], M[j])]
    return [backwards([row[:n] for row in M], [row[n + c] for row in M]) for c in range(len(rhs))]


def unit_columns(ctx):
    one = F(1) if ctx is EXACT else 1.0
    return [[one * int(i == j) for i in range(4)] for j in range(4)]


def added(A, B): return [[a + b for a, b in zip(r, s)] for r, s in zip(A, B)]


def root(ctx, v): return mp.sqrt(big(v)) if ctx is EXACT else math.sqrt(v)


def do_compare(ctx, input, slip="", **_):
    (x, V), (y, W) = ((vector_of(ctx, four(input[w])), matrix_of(ctx, covariance(input[w], slip))) for w in ("first", "second"))
    if slip == "covariances_not_added":
        W = [[0 * v for v in row] for row in W]
    T = added(V, W)
    if slip == "added_straight":
        f = [(root(ctx, V[i][i]) + root(ctx, W[i][i])) / root(ctx, T[i][i]) for i in range(4)]
        T = [[big(T[i][j]) * f[i] * f[j] for j in range(4)] for i in range(4)]
    d = [b - a if slip == "difference_reversed" else a - b for a, b in zip(x, y)]
    if slip == "added_straight":
        d = [big(v) for v in d]
    chi = dot(d, eliminated(T, [d])[0])
    chi = big(chi) if ctx is EXACT else chi
    exp = mp.exp if ctx is EXACT else math.exp
    p, n = exp(-chi / 2) * (1 + chi / 2), 4
    if slip == "degrees_miscounted":
        p, n = mp.gammainc(mpf(3) / 2, chi / 2, regularized=True), 3
    if slip == "p_lower_tail":
        p = 1 - p
    d = [big(v) if ctx is EXACT else v for v in d]
    tree = {"difference": position_tree(ctx, d, [root(ctx, T[i][i]) for i in range(4)]), "chi_squared": (chi, ""), "degrees_of_freedom": n, "p": (p, "")}
    return tree, SimpleNamespace(x=x, y=y, T=T, V=V, W=W, chi=chi, p=p)


def do_merge(ctx, input, slip="", **_):
    (x, V), (y, W) = ((vector_of(ctx, four(input[w])), matrix_of(ctx, covariance(input[w], slip))) for w in ("first", "second"))
    if slip in ("weights_ignored", "weights_not_squared", "each_number_apart"):
        return merged_wrongly(ctx, x, V, y, W, slip)
    I, J = (eliminated(M, unit_columns(ctx)) for M in (V, W))
    if slip == "weights_not_inverse":
        I, J = J, I
    T = added(I, J)
    rhs = [dot(a, x) + dot(b, y) for a, b in zip(I, J)]
    found = eliminated(T, [rhs] + unit_columns(ctx))
    z, U = found[0], found[1:]
    if ctx is EXACT:
        z = [big(v) for v in z]
    u = [min(root(ctx, V[i][i]), root(ctx, W[i][i])) if slip == "u_not_reduced" else root(ctx, U[i][i]) for i in range(4)]
    return position_tree(ctx, z, u), SimpleNamespace(x=x, y=y, V=V, W=W)


def merged_wrongly(ctx, x, V, y, W, slip):
    z, u = [], []
    for i in range(4):
        a, b = big(V[i][i]), big(W[i][i])
        p, q = {"weights_ignored": (1, 1), "weights_not_squared": (1 / mp.sqrt(a), 1 / mp.sqrt(b))}.get(slip, (1 / a, 1 / b))
        z.append((p * big(x[i]) + q * big(y[i])) / (p + q))
        u.append(mp.sqrt(p * p * a + q * q * b) / (p + q))
    return position_tree(ctx, z, u), None


# ---------------------------------------------------------------- arcs: in fractions

def do_arc(ctx, input, slip="", **_):
    view = mirror(input)
    positions = [view * at_clock(t, slip) for t in input["at"]]
    if slip != "turns_kept":
        positions = [t % 360 for t in positions]
    if slip != "list_order_assumed":
        positions = sorted(set(positions))
    n = len(positions)
    holes = [((positions[(i + 1) % n] - positions[i]) % 360 or F(360 if n == 1 else 0), positions[i]) for i in range(n)]
    if slip == "turns_kept":
        holes = [((positions[i + 1] - positions[i]) if i + 1 < n else 360 + positions[0] - positions[i], positions[i]) for i in range(n)]
    holes = holes[-1:] + holes[:-1]  # in the order of their ends, clockwise from 12
    if slip == "last_hole_forgotten" and n > 1:
        holes = holes[1:]
    if slip == "arc_over_twelve":
        holes = [(360 - (positions[-1] - positions[0]), positions[-1])]
    if slip == "last_of_equal":
        holes = holes[::-1]
    hole, start = max(holes, key=lambda h: h[0])
    covered = 360 - hole
    middle = start + hole + covered / 2
    if slip == "hole_for_arc":
        hole, covered, middle = covered, hole, start + hole / 2
    if slip == "mean_for_middle":
        s, c = (mp.fsum(sincos(t)[k] for t in positions) for k in (0, 1))
        middle = mp.atan2(s, c) * 180 / mp.pi if abs(s) + abs(c) > mpf(10) ** -40 else mpf(0)
    middle = middle * (1 if slip == "view_mirrored" else view) % 360
    return {"covered": (covered, "deg"), "hole": (hole, "deg"), "middle": (middle, "deg")}, None


OPS = {"arc": do_arc, "sensor": do_sensor, "forecast": do_forecast, "residuals": do_residuals, "budget": do_budget,
       "follow": do_follow, "expect": do_expect, "compare": do_compare, "merge": do_merge}


# ---------------------------------------------------------------- second way

SECOND = r"""
default(realprecision,110);
law(k,c,x,R,L,g)={my(s=if(c=="movable",-1,1));
 if(k=="rim",return([s,s*x]));
 if(k=="bore"||k=="straightedge",return([-s,-s*x]));
 if(k=="near_face",return([0,R]));
 if(k=="far_face"||k=="gap",return([0,-R]));
 if(k=="spacer_face",return([s*R/L,R/2]));
 if(k=="spacer_far_face",return([-s*R/L,-R/2]));
 if(k=="sensor",return([s*g,s*g*x]));
 if(k=="channel",return([0,1000*g]));
 [g,g*x]};
\\ A set is [kind, carrier, [station, radius, sag, clock error], span, gain, readings]; a reading [degrees, value, u, error of its position].
hof(S)=law(S[1],S[2],S[3][1],S[3][2],S[4],S[5]);
turn(S,q,v)=v*(q[1]*Pi/180+S[3][4]+q[4]);
seen(S,q,v)={my(t=turn(S,q,v),z=if(S[1]=="bore",-1,1));[sin(t),cos(t),q[2]-z*S[3][3]*cos(t)]};
weight(S)=vector(#S[6],i,1/S[6][i][3]^2);
mean(S,v)={my(w=weight(S));sum(i=1,#w,w[i]*seen(S,S[6][i],v))/vecsum(w)};
solve4(D,v)={my(N=matrix(4,4),b=vector(4)~);
 for(i=1,#D,my(S=D[i],m=mean(S,v),w=weight(S),h=hof(S),Q=sum(j=1,#w,my(e=seen(S,S[6][j],v)-m);w[j]*e~*e));
  for(m=1,2,for(n=1,2,for(k=1,2,b[2*m-2+k]+=if(n==1,Q[m,3]*h[k],0);
   for(l=1,2,N[2*m-2+k,2*n-2+l]+=Q[m,n]*h[k]*h[l])))));
 [matsolve(N,b),N^-1]};
G(S,e)={my(h=hof(S));[h[1]*e[1],h[2]*e[1],h[1]*e[2],h[2]*e[2]]~};
\\ [rest, leverage] of each reading, set by set
rests(D,v)={my(a=solve4(D,v),out=List());
 for(i=1,#D,my(S=D[i],m=mean(S,v),w=weight(S),W=vecsum(w));
  for(j=1,#w,my(e=seen(S,S[6][j],v)-m,g=G(S,e));listput(out,[e[3]-g~*a[1],w[j]*(1/W+g~*a[2]*g),S[6][j][3],i-1,j-1])));
 out};
scatter2(D,v)={my(r=rests(D,v),n=#r-4-#D);if(n>0,sum(i=1,#r,r[i][1]^2)/n,0)};
fromreadings(D,v,s)={my(x=solve4(D,v)[1],V=matrix(4,4));
 for(j=1,#D[s][6],my(P=D,d);P[s][6][j][2]+=1;d=solve4(P,v)[1]-x;V+=d*d~*D[s][6][j][3]^2);V};
fromangles(D,v,s,u)={my(V=matrix(4,4),h=1e-30);
 for(j=1,#D[s][6],my(P=D,M=D,d);P[s][6][j][4]+=h;M[s][6][j][4]-=h;d=(solve4(P,v)[1]-solve4(M,v)[1])/(2*h)*u;V+=d*d~);V};
\\ m is [u, place among the four, sets]
fromshared(D,v,m)={my(P=D,M=D,h=1e-30,d);
 for(i=1,#m[3],P[m[3][i]][3][m[2]]+=h;M[m[3][i]][3][m[2]]-=h);
 d=(solve4(P,v)[1]-solve4(M,v)[1])/(2*h)*m[1];d*d~};
spread(D,v,A,M)={my(V=solve4(D,v)[2]);for(i=1,#A,V+=fromangles(D,v,A[i][1],A[i][2]));for(i=1,#M,V+=fromshared(D,v,M[i]));V};
put(x)=print1(strprintf("%.75f",x)," ");
both(x,V,stated)=for(p=0,1,put(x[2*p+1]);put(x[2*p+2]);if(stated,put(sqrt(V[2*p+1,2*p+1]));put(sqrt(V[2*p+2,2*p+2]))));
foot(x,V,f,p)={my(l=[1,f[1]]~);sqrt(l~*V[2*p+1..2*p+2,2*p+1..2*p+2]*l+(x[2*p+2]*f[2])^2)};
sensors(D,v,A,M,feet,stated)={my(x=solve4(D,v)[1],V=spread(D,v,A,M));both(x,V,stated);
 for(i=1,#feet,for(p=0,1,put(-(x[2*p+1]+x[2*p+2]*feet[i][1])));if(stated,for(p=0,1,put(foot(x,V,feet[i],p)))));print("")};
\\ Readings are made to lie on the law, droop included, before anything is varied.
filled(D,v,x)={my(E=D);for(i=1,#D,for(j=1,#D[i][6],my(S=D[i],e=seen(S,S[6][j],v));E[i][6][j][2]=G(S,e)~*x-e[3]));E};
forecast(x,D,v,A,M,feet)={my(E=filled(D,v,x~),V=spread(E,v,A,M));for(i=1,4,put(sqrt(V[i,i])));
 for(i=1,#feet,for(p=0,1,put(foot(x,V,feet[i],p))));print("")};
residuals(D,v,stated)={my(r=rests(D,v),s=sqrt(scatter2(D,v)));for(i=1,#r,put(r[i][1]);
 if(1-r[i][2]>1e-9,put(r[i][1]/if(stated,r[i][3],s)/sqrt(1-r[i][2])));put(r[i][2]));print("")};
\\ L lists the shares in their order: [0, set], [1, set, u of its positions], [2, what is shared]
budget(D,v,L,stated)={my(s=if(stated,1,scatter2(D,v)));
 for(i=1,#L,my(l=L[i],V=if(l[1]==0,s*fromreadings(D,v,l[2]),l[1]==1,fromangles(D,v,l[2],l[3]),fromshared(D,v,l[2])));for(k=1,4,put(sqrt(V[k,k]))));print("")};
\\ probes [kind, carrier, station, radius, span, gain, degrees, start, now, u]; plane 1 horizontal, 2 vertical
follow(x,ux,plane,v,B)={my(N=matrix(2,2),b=[0,0]~,d,U,V=matrix(4,4));
 for(i=1,#B,my(q=B[i],h=law(q[1],q[2],q[3],q[4],q[5],q[6])*if(plane==1,sin(v*q[7]*Pi/180),cos(q[7]*Pi/180)),w=1/(2*q[10]^2));N+=w*h~*h;b+=w*h~*(q[9]-q[8]));
 d=matadjoint(N)*b/matdet(N);U=matadjoint(N)/matdet(N);
 my(y=x);y[2*plane-1]+=d[1];y[2*plane]+=d[2];
 if(#ux,for(i=1,4,V[i,i]=ux[i]^2);for(i=1,2,V[2*plane-2+i,2*plane-2+i]+=U[i,i]));both(y,V,#ux);print("")};
shown(S,v,x,d1,d2,j)={my(h=hof(S),z=if(S[1]=="bore",-1,1),f=(q)->my(t=turn(S,q,v));(h[1]*x[1]+h[2]*x[2])*sin(t)+(h[1]*x[3]+h[2]*x[4])*cos(t)+z*S[3][3]*cos(t),a=S[6][j],b=S[6][1]);
 a[4]+=d1;b[4]+=d2;f(a)-f(b)};
\\ U of a set: [u of station, radius, sag, clock], u of a reading and of a position
expect(x,V,D,v,U,has)={my(h=1e-30);
 for(i=1,#D,my(S=D[i]);for(j=1,#S[6],put(shown(S,v,x,0,0,j));
  if(j>1&&has[i],my(q=2*U[i][2]^2,g=vector(4),e);
   for(k=1,4,my(y=x,z=x);y[k]+=1;z[k]-=1;g[k]=(shown(S,v,y,0,0,j)-shown(S,v,z,0,0,j))/2);
   q+=g*V*g~;
   for(k=1,4,my(P=S,M=S);P[3][k]+=h;M[3][k]-=h;q+=((shown(P,v,x,0,0,j)-shown(M,v,x,0,0,j))/(2*h)*U[i][1][k])^2);
   q+=((shown(S,v,x,h,0,j)-shown(S,v,x,-h,0,j))/(2*h)*U[i][3])^2+((shown(S,v,x,0,h,j)-shown(S,v,x,0,-h,j))/(2*h)*U[i][3])^2;
   put(sqrt(q)))));print("")};
\\ both positions as eight observations of four numbers, by least squares with their joint covariance
joint(x,V,y,W)={my(A=matconcat([matid(4);matid(4)]),C=matconcat([V,0;0,W])^-1,o=concat(x,y)~,U=(A~*C*A)^-1,z=U*(A~*C*o),r=o-A*z);[z,U,r~*C*r]};
compare(x,V,y,W)={my(j=joint(x,V,y,W));both(x-y,V+W,1);put(j[3]);put(intnum(t=[j[3]/2,0],[oo,1],t*exp(-t)));print("")};
merge(x,V,y,W)={my(j=joint(x,V,y,W));both(j[1]~,j[2],1);print("")};
"""


def listed(items): return "[" + ",".join(str(i) for i in items) + "]"
def gp_set(kind, p, s, readings):
    lengths = listed([length(p.get("station", "0 mm")), length(p.get("radius", "0 mm")), length(s.get("sag", "0 mm")), 0])
    return listed(['"%s"' % kind, '"%s"' % p.get("carrier", ""), lengths, length(p.get("span", "0 mm")), F(str(p.get("gain", 0))), listed(readings)])


def gp_sets(op, input):
    """Returns the sets for gp, with the uncertainties that they carry."""
    sets, owners = [], []
    for s in input["sensors" if op == "sensor" else "sets"]:
        u = s.get("u", {}).get("reading", "1 mm")
        readings = s.get("readings") or [{"at": t, "value": "0 mm"} for t in s["at"]]
        p = s if op == "sensor" else s["probe"]
        sets.append(gp_set("sensor" if op == "sensor" else p["kind"], p, s, [listed([clock(r["at"]), length(r["value"]), length(r.get("u", u)), 0]) for r in readings]))
        owners.append(s)
        if "angle" in s and op == "sensor":
            c = s["angle"]
            cu = slope(c["u"]) * 1000 if "u" in c else 1
            sets.append(gp_set("channel", {"gain": c["gain"]}, {}, [listed([clock(r["at"]), slope(r["value"]) * 1000, cu, 0]) for r in c["readings"]]))
            owners.append({})
    return sets, owners


def gp_shared(owners):
    """Returns angles [set, u], and what is shared [u, place, sets] with [set, what] of each."""
    angles, shared, names = [], [], []
    for i, s in enumerate(owners, 1):
        u = s.get("u", {})
        if "angle" in u:
            angles.append(listed([i, gp_angle(u["angle"])]))
        group = [k for k, o in enumerate(owners, 1) if k == i or "mounting" in s and o.get("mounting") == s["mounting"]]
        for place, what in enumerate(SHARED, 1):
            if what in u and group[0] == i:
                shared.append(listed([gp_angle(u[what]) if what == "clock" else length(u[what]), place, listed(group)]))
                names.append((i, what))
    return angles, shared, names


def is_stated(op, input):
    return any("reading" in s.get("u", {}) or any("u" in r for r in s.get("readings", [])) for s in input["sensors" if op == "sensor" else "sets"])


def gp_call(op, input, result):
    v = -1 if input.get("view") == "from_stationary" else 1
    if op in ("compare", "merge"):
        parts = [w for n in ("first", "second") for w in (listed(four(input[n])), gp_matrix(covariance(input[n])))]
        return "%s(%s);\n" % (op, ",".join(parts))
    if op == "follow":
        probes = []
        for p in input["probes"]:
            q = p["probe"]
            probes.append(listed(['"%s"' % q["kind"], '"%s"' % q.get("carrier", "")] + [length(q.get(n, "0 mm")) for n in ("station", "radius", "span")]
                                 + [F(str(q.get("gain", 0))), clock(p["at"]), length(p["start"]), length(p["now"]), length(p.get("u", "1 mm"))]))
        ux = four_u(input["from"]) if "u" in input["probes"][0] else None
        return "follow(%s,%s,%d,%d,%s);\n" % (listed(four(input["from"])), listed(ux or []), PLANES.index(input["plane"]) + 1, v, listed(probes))
    sets, owners = gp_sets(op, input)
    angles, shared, names = gp_shared(owners)
    stated = int(is_stated(op, input))
    feet = listed(listed([length(f["x"]), length(f.get("u", "0 mm"))]) for f in input.get("feet", []))
    if op == "sensor":
        return "sensors(%s,%d,%s,%s,%s,%d);\n" % (listed(sets), v, listed(angles), listed(shared), feet, stated)
    if op == "forecast":
        return "forecast(%s,%s,%d,%s,%s,%s);\n" % (listed(four(input["expected"])), listed(sets), v, listed(angles), listed(shared), feet)
    if op == "residuals":
        return "residuals(%s,%d,%d);\n" % (listed(sets), v, stated)
    if op == "budget":
        order = []
        for e in result["shares"]:
            i, of = e["set"] + 1, e["of"]
            order.append(listed([0, i] if of == "reading" else [1, i, gp_angle(owners[i - 1]["u"]["angle"])] if of == "angle" else [2, shared[names.index((i, of))]]))
        return "budget(%s,%d,%s,%d);\n" % (listed(sets), v, listed(order), stated)
    V = covariance(input["position"])
    us, has = [], []
    for s in input["sets"]:
        u = s.get("u", {})
        us.append(listed([listed([(gp_angle(u[w]) if w == "clock" else length(u[w])) if w in u else 0 for w in SHARED]),
                          length(u.get("reading", "0 mm")), gp_angle(u["angle"]) if "angle" in u else 0]))
        has.append(int(bool(u) or V is not None))
    return "expect(%s,%s,%s,%d,%s,%s);\n" % (listed(four(input["position"])), gp_matrix(V) if V else "matrix(4,4)", listed(sets), v, listed(us), listed(has))


def leaves(tree, at=""):
    """Yields path (with * for an index), value, unit of each number of a tree of values or of texts."""
    if isinstance(tree, dict):
        for k, v in tree.items():
            yield from leaves(v, at + "/" + k)
    elif isinstance(tree, list):
        for v in tree:
            yield from leaves(v, at + "/*")
    elif isinstance(tree, tuple):
        yield at, tree[0], tree[1]


def tried(input):
    """The second way of an arc: every position tried as the beginning of the largest hole, without sorting."""
    view = mirror(input)
    positions = [view * clock(t) % 360 for t in input["at"]]
    best = None
    for t in positions:
        ahead = min([(q - t) % 360 for q in positions if q != t] or [F(360)])
        if best is None or (ahead, -((t + ahead) % 360)) > best[:2]:
            best = (ahead, -((t + ahead) % 360), t)
    hole, _, begin = best
    return [360 - hole, hole, view * (begin - (360 - hole) / 2) % 360]


def check_second(jobs):
    """Asserts that both ways agree to 30 digits of the larger of the number and its own scale."""
    arcs = [j for j in jobs if j[1] == "arc"]
    for id, _, input, tree in arcs:
        assert [v for _, v, _ in leaves(tree)] == tried(input), id
    rest = [j for j in jobs if j[1] != "arc"]
    script = SECOND + "".join(gp_call(op, input, tree) for _, op, input, tree in rest)
    done = subprocess.run(["gp", "-q", "-f", "-s", "1G"], input=script, capture_output=True, text=True, check=True)
    lines = done.stdout.strip().splitlines()
    assert len(lines) == len(rest), done.stderr[-2000:] + done.stdout[-500:]
    for (id, op, _, tree), printed in zip(rest, lines):
        ours, theirs = [(p, big(v)) for p, v, _ in leaves(tree)], [mpf(x) for x in printed.split()]
        assert len(ours) == len(theirs), (id, len(ours), len(theirs))
        for (path, a), b in zip(ours, theirs):
            assert abs(a - b) <= mpf(10) ** -30 * max(abs(a), mpf(10) ** -9), (id, path, mp.nstr(a, 40), mp.nstr(b, 40))


# ---------------------------------------------------------------- tolerances

def of_fit(fit, leading, c=64):
    """The tolerance of four numbers, or (leading False) of their uncertainties."""
    kappa = condition(fit.R)
    size = mp.sqrt(sum((r.w * r.size) ** 2 for r in fit.rows))
    if leading:
        return [rounding(size / fit.norms[i], NUMBERS[i][2], kappa, c) for i in range(4)]
    return [rounding(mp.sqrt(fit.V[i][i]), NUMBERS[i][2], kappa, c) for i in range(4)]


def at_feet(fit, input, path, what):
    """A move takes in the scales of offset and slope at its distance, and its own two parts; its u may be the
    small difference of large parts, so its scale is the sum of their squares over u. All feet share the largest."""
    kappa, tolerance = condition(fit.R), {}
    size = mp.sqrt(sum((r.w * r.size) ** 2 for r in fit.rows))
    for plane, o in (("horizontal", 0), ("vertical", 2)):
        scale = mpf(0)
        for f in input.get("feet", []):
            x, u = big(length(f["x"])), big(length(f.get("u", "0 mm")))
            if what == "move":
                scale = max(scale, size / fit.norms[o] + abs(x) * size / fit.norms[o + 1] + abs(fit.x[o]) + abs(x * fit.x[o + 1]))
            else:
                squares = fit.V[o][o] + x**2 * fit.V[o + 1][o + 1] + (fit.x[o + 1] * u) ** 2
                scale = max(scale, squares / mp.sqrt(squares + 2 * x * fit.V[o][o + 1]))
        if input.get("feet"):
            tolerance[path + plane] = rounding(scale, "mm", kappa, 64)
    return tolerance


def paths(head=""): return ["%s/%s/%s" % (head, p, w) for p, w, _ in NUMBERS]
def u_paths(): return ["/%s/u/%s" % (p, w) for p, w, _ in NUMBERS]


def tol_sensor(input, fit):
    tolerance = dict(zip(paths(), of_fit(fit, True)))
    tolerance.update(at_feet(fit, input, "/moves/*/", "move"))
    if fit.stated:
        tolerance.update(zip(u_paths(), of_fit(fit, False)))
        tolerance.update(at_feet(fit, input, "/moves/*/u/", "u"))
    return tolerance


def tol_forecast(input, fit):
    return {**dict(zip(paths("/u"), of_fit(fit, False))), **at_feet(fit, input, "/feet/*/", "u")}


def tol_budget(input, fit):
    """A scatter that is not stated has lost in the norm of the readings what they are larger than their rests."""
    kappa, size = condition(fit.R), mp.sqrt(sum((r.w * r.size) ** 2 for r in fit.rows))
    lost = 1 if fit.stated else size / mp.sqrt(sum(e**2 for e in fit.rest))
    return {path: rounding(mp.sqrt(fit.V[i][i]) * lost, NUMBERS[i][2], kappa, 64) for i, path in enumerate(paths("/shares/*/u"))}


def tol_residuals(input, fit):
    """Rests are lost in the norm of the readings; a standardised one where leverage is near 1 as well."""
    kappa, size = condition(fit.R), mp.sqrt(sum((r.w * r.size) ** 2 for r in fit.rows))
    u = max(r.u for r in fit.rows)
    s = 1 if fit.stated else fit.scatter
    free = [(abs(e) / r.u / s, 1 - h) for r, e, h in zip(fit.rows, fit.rest, fit.leverage) if 1 - h > 1e-9]
    scale = max(size / s / mp.sqrt(f) + e / f ** 1.5 + (0 if fit.stated else size / s * e / mp.sqrt(f)) for e, f in free)
    return {"/residuals/*/value": rounding(size * u, "mm", kappa, 64), "/residuals/*/standardised": rounding(scale, "", kappa, 64),
            "/residuals/*/leverage": rounding(mpf(1), "", kappa, 64)}


def tol_follow(input, f):
    kappa, tolerance = condition(f.R), {}
    for i, (path, (_, _, unit)) in enumerate(zip(paths(), NUMBERS)):
        known = abs(big(four(input["from"])[i]))
        moved = i - f.to in (0, 1)
        scale = known + f.size / f.norms[i - f.to] if moved else known
        tolerance[path] = rounding(scale, unit, kappa if moved else 1, 64)
        if f.u:
            tolerance[u_paths()[i]] = rounding(f.u[i], unit, kappa if moved else 1, 64)
    return tolerance


def tol_expect(input, info):
    tolerance = {"/sets/*/readings/*/value": rounding(info.value, "mm")}
    if info.u:
        tolerance["/sets/*/readings/*/u"] = rounding(info.u, "mm")
    return tolerance


def correlated(V):
    """Returns the condition of a covariance with its diagonal scaled to one."""
    d = [mp.sqrt(big(V[i][i])) for i in range(4)]
    e = mp.eigsy(mp.matrix([[big(V[i][j]) / d[i] / d[j] for j in range(4)] for i in range(4)]), eigvals_only=True)
    return max(e) / min(e)


def tol_compare(input, i):
    """Chi squared loses the condition of the joint covariance, and what the difference has lost already; p follows by its derivative."""
    kappa = correlated(i.T)
    sizes = [big(abs(a) + abs(b)) for a, b in zip(i.x, i.y)]
    u = [mp.sqrt(big(i.T[k][k])) for k in range(4)]
    lost = mp.sqrt(sum((s / v) ** 2 for s, v in zip(sizes, u)))
    chi = i.chi + mp.sqrt(i.chi) * lost
    tolerance = {}
    for k, (_, _, unit) in enumerate(NUMBERS):
        tolerance["/difference" + paths()[k]] = rounding(sizes[k], unit)
        tolerance["/difference" + u_paths()[k]] = rounding(u[k], unit)
    tolerance["/chi_squared"] = rounding(chi, "", kappa)
    tolerance["/p"] = rounding(i.chi / 4 * mp.exp(-i.chi / 2) * chi + i.p / kappa, "", kappa)
    return tolerance


def tol_merge(input, i):
    """Every number takes in the others, each by its own u."""
    kappa = max(correlated(V) for V in (i.V, i.W, added(i.V, i.W)))
    I, J = (eliminated(M, unit_columns(EXACT)) for M in (i.V, i.W))
    U = eliminated(added(I, J), unit_columns(EXACT))
    u = [mp.sqrt(big(U[k][k])) for k in range(4)]
    sizes = [big(abs(a) + abs(b)) for a, b in zip(i.x, i.y)]
    whole = sum(s / v for s, v in zip(sizes, u))
    tolerance = {}
    for k, (_, _, unit) in enumerate(NUMBERS):
        independent = all(V[k][j] == 0 for V in (i.V, i.W) for j in range(4) if j != k)
        tolerance[paths()[k]] = rounding(sizes[k] if independent else u[k] * whole, unit, 1 if independent else kappa)
        tolerance[u_paths()[k]] = rounding(u[k], unit, 1 if independent else kappa)
    return tolerance


def tol_arc(input, _):
    turn = rounding(F(360) * max(1, int(max(abs(clock(t)) for t in input["at"]) / 360)), "deg")
    return {"/covered": turn, "/hole": turn, "/middle": turn}


TOLERANCES = {"arc": tol_arc, "sensor": tol_sensor, "forecast": tol_forecast, "residuals": tol_residuals, "budget": tol_budget,
              "follow": tol_follow, "expect": tol_expect, "compare": tol_compare, "merge": tol_merge}


# ---------------------------------------------------------------- flags

LAW = ["carrier_sign", "face_sign", "bore_as_rim", "gap_as_dial", "straightedge_as_rim", "joints_exchanged", "half_span", "station_unsigned", "radius_for_diameter", "gain_ignored"]
SPREAD = ["shared_ignored", "shared_as_independent", "mounting_ignored", "angle_ignored", "angle_as_clock"]
READING = ["view_mirrored", "quarters_assumed", "hours_as_degrees", "one_zero", "first_reading_exact", "weights_ignored", "weights_not_squared"]
SLIPS = {
    "arc": ["view_mirrored", "arc_over_twelve", "hole_for_arc", "last_hole_forgotten", "list_order_assumed", "mean_for_middle", "turns_kept", "last_of_equal", "hours_as_degrees"],
    "sensor": READING + ["carrier_ignored_in_sensor", "gain_ignored", "angle_channel_mirrored", "angle_channel_dropped", "station_unsigned", "offset_at_dial_plane", "shared_ignored",
                         "shared_as_independent", "angle_ignored", "angle_as_clock", "residual_share_forgotten", "feet_uncorrelated", "foot_station_ignored", "correction_for_position",
                         "planes_mixed", "mil_as_hundredth"],
    "forecast": LAW + READING + SPREAD + ["sag_added", "sag_ignored", "sag_once", "expected_ignored", "feet_uncorrelated", "foot_station_ignored"],
    "residuals": LAW + READING + ["sag_ignored", "sag_added", "sag_once", "leverage_ignored", "leverage_without_zero", "scatter_over_all", "scatter_for_stated", "residual_reversed", "mil_as_hundredth"],
    "budget": LAW + READING + SPREAD + ["sag_added", "sag_ignored", "sag_once", "scatter_over_all", "residual_share_forgotten"],
    "follow": LAW + ["view_mirrored", "hours_as_degrees", "reading_not_doubled", "cosine_forgotten", "across_for_along", "plane_exchanged", "start_ignored", "change_reversed", "from_forgotten", "from_known",
                     "change_known", "added_straight", "weights_ignored", "weights_not_squared", "mil_as_hundredth"],
    "expect": LAW + ["view_mirrored", "hours_as_degrees", "quarters_assumed", "sag_added", "sag_ignored", "sag_once", "correlation_ignored", "correlation_order", "position_known", "first_not_taken_off",
                     "shared_ignored", "shared_as_independent", "start_counted_once", "angle_ignored", "angle_as_clock", "added_straight", "zero_forgotten"],
    "compare": ["correlation_ignored", "correlation_order", "covariances_not_added", "added_straight", "difference_reversed", "degrees_miscounted", "p_lower_tail"],
    "merge": ["correlation_ignored", "correlation_order", "weights_ignored", "weights_not_squared", "weights_not_inverse", "u_not_reduced", "each_number_apart"],
}
FITS = {"sensor", "forecast", "residuals", "budget", "follow"}


def written(x, unit):
    """Writes a number; one that is a short decimal but for the last of 60 digits as that decimal."""
    x = big(x) / big(OUT[unit])
    near = F(int(mp.nint(x * mpf(10) ** 16)), 10**16)
    if abs(x - big(near)) < mpf(10) ** -45:
        x = near
    return (decimal(x) + " " + unit).strip()


def texts(tree):
    if isinstance(tree, dict):
        return {k: texts(v) for k, v in tree.items()}
    if isinstance(tree, list):
        return [texts(v) for v in tree]
    return written(*tree) if isinstance(tree, tuple) else tree


def worst(op, input, right, tolerance, ctx, **how):
    """Returns the largest error of an operation in double precision over its tolerance."""
    try:
        tree, _ = OPS[op](ctx, input, **how)
    except (Refused, ValueError, ZeroDivisionError):
        return math.inf
    high = 0.0
    for (path, want, unit), (_, got, _) in zip(leaves(right), leaves(tree)):
        bound = mpf(tolerance[path]["within"].split()[0]) * big(OUT[unit])
        off = abs(big(got) - big(want))
        high = max(high, float(off / bound) if bound else (math.inf if off else 0.0))
    return high


def cancelled(right):
    """Returns by how much p is off as one less the probability of a smaller chi squared, in double precision; half a unit
    in the last place of one is the least that a program must be expected to lose."""
    p = right["p"][0]
    chi = float(right["chi_squared"][0])
    lower = 1.0 - math.exp(-chi / 2) * (1 + chi / 2)
    return float(abs(mpf(1.0 - lower) - p))


def flags_of(id, op, input, right, tolerance):
    flags, result = [], texts(right)
    for slip in SLIPS[op]:
        try:
            wrong = texts(OPS[op](EXACT, input, slip)[0])
        except (Refused, ZeroDivisionError):
            wrong = {}
        if differs(result, wrong, tolerance):
            flags.append(slip)
    if op in FITS or op == "compare":
        # 30 times: rounding errors are a matter of luck, so no more than a lower bound can be asked
        if op in FITS:
            miss = min(worst(op, input, right, tolerance, Double(1), method=normal, scaled=s) for s in (False, True))
        else:
            miss = cancelled(right) / float(F(tolerance["/p"]["within"]))
        if not (miss < 1 or miss > 30):
            DOUBTFUL.append((id, miss))
        if miss > 30:
            flags.append("normal_equations" if op in FITS else "small_p_cancelled")
    return flags


# ---------------------------------------------------------------- vectors

REGIONS, WORST, JOBS, DOUBTFUL = {}, [], [], []
area = Area("arc", REGIONS)
GP_WAY = {
    "sensor": "moments of each channel, 4 x 4 equations, derivatives as differences", "forecast": "readings made for the position, 4 x 4 equations, derivatives as differences",
    "residuals": "moments of each set, leverage from the 4 x 4 covariance", "budget": "each reading and each shared quantity varied by itself",
    "follow": "2 x 2 equations by Cramer's rule", "expect": "what a dial shows, varied in each quantity by itself",
    "compare": "eight observations of four numbers by least squares, p by numerical integration", "merge": "eight observations of four numbers by least squares",
}
FIRST_WAY = {"arc": ("exact", "Python's fractions"), "compare": ("exact", "Python's fractions, roots and p by " + MPMATH), "merge": ("exact", "Python's fractions, roots by " + MPMATH)}


def region(name, kind, about): REGIONS[name] = (kind, about)


def put(op, id, where, about, input, kind=None, by=None, published=None, holds=None):
    """Adds a vector; `holds` maps a path without * to a number that is known beforehand, and to how closely."""
    tree, info = OPS[op](EXACT, input)
    tolerance = TOLERANCES[op](input, info)
    tolerance = {p: t for p, t in tolerance.items() if p in {q for q, _, _ in leaves(tree)}}
    for ctx in (Double(1), Double(F(1, 10**6))):
        off = worst(op, input, tree, tolerance, ctx)
        WORST.append((off, id))
        assert off < 0.5, (id, off)
    first = FIRST_WAY.get(op, ("multi_precision", MPMATH + (": orthogonal factor of the whole weighted design" if op in FITS else ": derivatives of the law")))
    second = "every position tried as the beginning of the hole; agrees exactly" if op == "arc" else "%s, 110 digits: %s; agrees to 30 digits" % (GP, GP_WAY[op])
    source = {"kind": kind or first[0], "by": by or first[1], "second": second if not by else first[1] + "; " + second}
    if published:
        source["published"] = published
    result = texts(tree)
    for path, (want, within) in (holds or {}).items():
        at = tree
        for step in path.strip("/").split("/"):
            at = at[int(step)] if step.isdigit() else at[step]
        assert abs(big(at[0]) - want) <= within, (id, path, at[0], want)
    JOBS.append((id, op, input, tree))
    return area.add(id, op, where, flags_of(id, op, input, tree, tolerance), about, source, input, result, tolerance, since="1.1.0")


def bad(id, twin, code, path, value, about, at=None):
    """Adds a refusal: one place of the twin's input, `at` or else path, changed."""
    where = id.replace("-", "_")
    region(where, "invalid", about[0].lower() + about[1:])
    area.refuse(id, twin, where, code, path, changed(twin["input"], at or path, value), about, since="1.1.0")


# ---------------------------------------------------------------- readings as a crew sees them


def place(oh, sh, ov, sv, u=None, correlation=None, unit="mm", ratio="mm/m"):
    """Writes a position; u as four numbers in the same units, correlation as {(row, column): number}."""
    p = {"horizontal": {"offset": "%s %s" % (oh, unit), "slope": "%s %s" % (sh, ratio)}, "vertical": {"offset": "%s %s" % (ov, unit), "slope": "%s %s" % (sv, ratio)}}
    if u:
        for plane, o in (("horizontal", 0), ("vertical", 2)):
            p[plane]["u"] = {"offset": "%s %s" % (u[o], unit), "slope": "%s %s" % (u[o + 1], ratio)}
    if correlation:
        r = [[1 if i == j else 0 for j in range(4)] for i in range(4)]
        for (i, j), v in correlation.items():
            r[i][j] = r[j][i] = v
        assert min(mp.eigsy(mp.matrix(r), eigvals_only=True)) > 0
        p["correlation"] = r
    return p


class Crew:
    """Where the movable centreline lies (mm and mm/m), and how readings of it are written down."""

    def __init__(self, oh, sh, ov, sv, view="from_movable", unit="mm", digits=3, seed=1, noise="0.004"):
        self.truth = [big(F(str(v)) / d) for v, d in ((oh, 1), (sh, 1000), (ov, 1), (sv, 1000))]
        self.view, self.unit, self.digits = view, unit, digits
        self.random, self.noise = random.Random(seed), mpf(noise)

    def read(self, k, a, b, at, zero, droop=0, noise=None):
        view, values = -1 if self.view == "from_stationary" else 1, []
        for t in at:
            s, c = sincos(view * clock(t))
            w = [self.truth[i] * big(a) + self.truth[i + 1] * big(b) for i in (0, 2)]
            values.append(big(F(str(zero))) + big(k) * (w[0] * s + w[1] * c) + droop * c + (self.noise if noise is None else noise) * self.random.gauss(0, 1))
        return values

    def write(self, v, unit, factor, digits):
        return "%s %s" % (decimal(F(int(mp.nint(v / big(factor) * 10**digits)), 10**digits)), unit)

    def sweep(self, probe, at, zero=0, sag=None, u=None, shared=None, mounting=None):
        """Returns a set of readings; u is the uncertainty of each, a text for all or a list; `shared` that of the set."""
        s = law(probe)
        values = self.read(s.k, s.a, s.b, at, zero, s.sign * big(length(sag)) if sag else 0)
        one = {"probe": probe, "readings": [{"at": t, "value": self.write(v, self.unit, UNITS["length"][self.unit], self.digits)} for t, v in zip(at, values)]}
        for r, text in zip(one["readings"], [u] * len(at) if isinstance(u, str) else u or []):
            r["u"] = text
        return {**one, **({"sag": sag} if sag else {}), **({"u": shared} if shared else {}), **({"mounting": mounting} if mounting else {})}

    def sensor(self, carrier, station, gain, at, zero=0, u=None, channel=None):
        """channel: (gain, positions, zero, u), zero in mm/m."""
        side = -1 if carrier == "movable" else 1
        values = self.read(side * F(str(gain)), 1, length(station), at, zero)
        one = {"carrier": carrier, "station": station, "gain": gain,
               "readings": [{"at": t, "value": self.write(v, self.unit, UNITS["length"][self.unit], self.digits)} for t, v in zip(at, values)]}
        if u:
            one["u"] = u
        if channel:
            g, places, zero, cu = channel
            values = self.read(F(str(g)), 0, 1, places, F(str(zero)) / 1000, noise=self.noise / 1000)
            one["angle"] = {"gain": g, "readings": [{"at": t, "value": self.write(v, "mm/m", F(1, 1000), 4)} for t, v in zip(places, values)]}
            if cu:
                one["angle"]["u"] = cu
        return one


# ---------------------------------------------------------------- arc

def arc_of(view, at): return {"view": view, "at": at}


region("clear_arc", "plain", "an arc that does not cross 12 o'clock")
region("other_end", "plain", "seen from the stationary end")
region("full_turn", "plain", "readings all round")
region("arc_crossing_12", "hard", "an arc across 12 o'clock")
region("arc_crossing_12_seen", "hard", "the same from the stationary end")
region("one_position", "hard", "one position, or all at the same")
region("equal_holes", "hard", "several holes of one size")
region("turns_seen", "hard", "the same from the stationary end")
region("turns", "hard", "degrees beyond a full turn, or below zero")
region("nearly_even", "hard", "holes that differ by a trace")
region("repeated", "hard", "the same position more than once")
region("unordered", "plain", "positions in no order")
region("hours_and_degrees", "plain", "hours and degrees mixed")
region("all_holes_equal", "hard", "all holes of one size")
region("two_equal_holes", "hard", "two holes of one size")
region("one_position_alone", "hard", "one position only")
region("two_angles", "plain", "a channel for the angle on both shafts")
arc_plain = put("arc", "positions", "clear_arc", "Five positions from 2 to 6 o'clock", arc_of("from_movable", hours(60, 90, 120, 150, 180)))
put("arc", "uneven", "clear_arc", "Positions crowd at one end: the middle is that of the ends, not their mean", arc_of("from_movable", degrees("30.5", "36", "41.25", "47", "123")))
arc_seen = put("arc", "other-end", "other_end", "Quarter of a turn, named from the stationary end: so is the middle", arc_of("from_stationary", hours(120, 150, 180, 210)))
put("arc", "other-end-12", "arc_crossing_12_seen", "Across 12 o'clock, from the stationary end", arc_of("from_stationary", hours(345, 0, 30, 75)))
put("arc", "12", "arc_crossing_12", "From 11 to 3 o'clock across 12", arc_of("from_movable", hours(330, 0, 30, 60, 90)))
put("arc", "12-short", "arc_crossing_12", "Twenty degrees across 12, out of order", arc_of("from_movable", degrees("352", "1.5", "357", "4", "344.5")))
put("arc", "mixed", "hours_and_degrees", "To and fro, in hours and degrees mixed", arc_of("from_movable", ["8:00", "175 deg", "9:30", "4:30", "222.5 deg"]))
put("arc", "unordered-end", "unordered", "The ends of the arc come in the middle of the list, from the stationary end", arc_of("from_stationary", ["5:00", "3:30", "9:00", "2:00", "7:15"]))
put("arc", "two-groups", "full_turn", "Two groups of positions far apart: the larger hole counts, and it does not lie at 12", arc_of("from_movable", hours(15, 30, 45, 195, 210, 240)))
put("arc", "six", "all_holes_equal", "Every two hours: all holes equal, the first one ends at 12", arc_of("from_movable", SIX))
put("arc", "two-equal", "two_equal_holes", "Two equal holes; the one that ends first, clockwise from 12, counts", arc_of("from_movable", hours(30, 60, 180, 210, 330)))
put("arc", "two-equal-seen", "equal_holes", "Two equal holes from the stationary end: the one that ends first in the library's view is another in the crew's", arc_of("from_stationary", hours(15, 45, 150, 195, 300, 330)))
put("arc", "one", "one_position_alone", "One position only: it covers nothing", arc_of("from_movable", ["4:30"]))
put("arc", "all-same", "one_position", "The same position three times, once a full turn on; from the stationary end", arc_of("from_stationary", ["217.5 deg", "7:15", "577.5 deg"]))
put("arc", "turns", "turns", "Degrees that count on over several turns, and below zero", arc_of("from_movable", degrees("-30", "370.5", "45", "740", "-700")))
put("arc", "turns-many", "turns", "A shaft that turned on: every position lies in another turn", arc_of("from_movable", degrees("100", "485", "870", "1265")))
put("arc", "turns-seen", "turns_seen", "One position written a turn on, one below zero, from the stationary end", arc_of("from_stationary", degrees("415", "20", "-5", "60.5")))
put("arc", "opposite-repeated", "repeated", "Positions there and back, each twice", arc_of("from_movable", hours(300, 315, 330, 345, 15, 345, 330, 315, 300)))
put("arc", "nearly-even", "nearly_even", "A hole larger than the others by a millionth of a degree", arc_of("from_movable", degrees("20", "110", "200.000001", "290")))
put("arc", "nearly-even-seen", "nearly_even", "The larger hole by a trace crosses 12 o'clock, from the stationary end", arc_of("from_stationary", degrees("59.9999995", "180", "300.0000005", "240", "120")))
bad("positions-no-view", arc_plain, "missing", "/view", None, "Nothing said of the standpoint of who names the positions")
bad("no-positions", arc_plain, "missing", "/at", None, "No list of positions")
bad("positions-empty", arc_seen, "missing", "/at", [], "An empty list of positions")
bad("positions-hour-13", arc_plain, "out_of_range", "/at/3", "13:30", "An hour that no dial's face has")
bad("positions-in-gon", arc_plain, "unknown", "/at/4", "200 gon", "A position in a unit that is none of a clock position")
bad("positions-looked-at-from-above", arc_seen, "unknown", "/view", "from_above", "A standpoint that is none of the two")
bad("positions-nan", arc_plain, "not_finite", "/at/0", "NaN deg", "A position that is no number")

# ---------------------------------------------------------------- sensor

region("two_sensors", "plain", "a sensor on each shaft")
region("two_sensors_seen", "plain", "a sensor on each shaft, seen from the stationary end")
region("sensor_angle", "plain", "a sensor with a channel for the angle")
region("sensor_angle_movable", "plain", "the same, carried by the movable shaft")
region("gain_negative", "plain", "a gain below zero, or far from one")
region("inch", "plain", "inches and mils")
region("shared", "plain", "uncertainties of what readings have in common")
region("three_points", "hard", "three positions exactly: nothing is left over")
region("arc_60", "hard", "readings over 60 degrees")
region("arc_90", "hard", "readings over 90 degrees")
region("arc_120", "hard", "readings over 120 degrees")
region("arc_20", "hard", "readings over 20 degrees")

region("huge_offset", "hard", "a huge offset with a small slope")
region("far_foot", "hard", "a foot far away")
region("close_stations", "hard", "stations close to each other")
region("in_line", "hard", "nothing out of line")

c = Crew("0.21", "-0.34", "-0.17", "0.52", seed=11)
sensor_two = put("sensor", "sensors", "two_sensors", "A sensor on each shaft, read all round",
    {"view": c.view, "sensors": [c.sensor("stationary", "135 mm", 1, SIX, "1.2"), c.sensor("movable", "-120 mm", 1, FIVE, "0.8")], "feet": feet("360 mm", "940 mm")})
c = Crew("-0.44", "0.27", "0.36", "-0.61", "from_stationary", seed=12)
put("sensor", "sensors-seen", "two_sensors_seen", "The crew stands at the stationary end; the sensor on the movable shaft falls where the other grows",
    {"view": c.view, "sensors": [c.sensor("stationary", "182 mm", 0.96, FIVE, "2.1"), c.sensor("movable", "-166 mm", 1.04, SIX, "1.7")], "feet": feet("475 mm", "1215 mm")})
c = Crew("0.3", "0.8", "-0.25", "-0.45", seed=13)
U5 = {"reading": "0.005 mm"}
sensor_one = put("sensor", "sensor-angle", "sensor_angle", "One sensor that sees displacement and angle, each with its uncertainty: one is enough",
    {"view": c.view, "sensors": [c.sensor("stationary", "95 mm", 1.1, SIX, "0.6", U5, (0.9, SIX, "0.3", "0.02 mm/m"))], "feet": feet("310 mm", "860 mm")})
c = Crew("-0.28", "-0.72", "0.41", "0.39", "from_stationary", seed=14)
put("sensor", "sensor-angle-movable", "sensor_angle_movable", "The movable shaft carries it: the displacement counts the other way, the angle does not",
    {"view": c.view, "sensors": [c.sensor("movable", "-88 mm", 1.2, FIVE, "1.1", {"reading": "0.004 mm"}, (1.3, hours(30, 120, 210, 300), "-0.4", "0.015 mm/m"))], "feet": feet("295 mm", "910 mm")})
c = Crew("0.15", "-0.55", "0.32", "0.7", seed=15)
put("sensor", "sensor-both-angles", "two_angles", "A sensor on each shaft, both with a channel for the angle, of unequal quality",
    {"view": c.view, "sensors": [c.sensor("stationary", "110 mm", 1, FIVE, "1", {"reading": "0.006 mm"}, (1.05, FIVE, "0.1", "0.03 mm/m")),
                                 c.sensor("movable", "-105 mm", 0.95, SIX, "1.4", {"reading": "0.002 mm"}, (-1.15, QUARTERS, "0.2", "0.01 mm/m"))], "feet": feet("405 mm", "1105 mm")})
c = Crew("0.26", "0.33", "-0.48", "-0.9", seed=16)
sensor_gain = put("sensor", "sensors-gain", "gain_negative", "Gains of -0.8 and 25: one falls as the shaft comes nearer, the other reads in another unit",
    {"view": c.view, "sensors": [c.sensor("stationary", "148 mm", -0.8, FIVE, "0.75"), c.sensor("movable", "-133 mm", 25, SIX, "12")], "feet": feet("390 mm", "1020 mm")})
c = Crew("0.35", "-0.2", "0.18", "0.41", "from_stationary", unit="mil", digits=1, seed=17, noise="0.005")
put("sensor", "sensors-mil", "inch", "Readings in mils, stations in inches",
    {"view": c.view, "sensors": [c.sensor("stationary", "5 1/4 in", 1.02, SIX, "0.9"), c.sensor("movable", "-6 3/8 in", 0.98, SIX, "0.7")], "feet": feet("14 1/2 in", "3 ft")})
c = Crew("0.19", "0.48", "-0.29", "0.37", seed=18)
sensor_u = put("sensor", "sensors-shared", "shared", "Stations and clocks are uncertain too, and so is each clock position by itself; the feet's stations are",
    {"view": c.view, "sensors": [c.sensor("stationary", "155 mm", 1, FIVE, "0.5", {"reading": "0.003 mm", "station": "1.5 mm", "clock": "0.8 deg", "angle": "0.5 deg"}),
                                 c.sensor("movable", "-142 mm", 1.08, SIX, "0.9", {"reading": "0.006 mm", "station": "2 mm", "clock": "12 mrad"})], "feet": feet("420 mm", "1180 mm", u=["3 mm", "5 mm"])})
c = Crew("-0.5", "0.66", "0.4", "0.58", "from_stationary", seed=19)
put("sensor", "sensors-shared-seen", "shared", "The same from the stationary end, over half a turn",
    {"view": c.view, "sensors": [c.sensor("stationary", "171 mm", 0.9, hours(270, 315, 0, 45, 90), "1.5", {"reading": "0.004 mm", "station": "1 mm", "angle": "9 mrad"}),
                                 c.sensor("movable", "-129 mm", 1, hours(285, 330, 15, 60, 105), "1.3", {"reading": "0.004 mm", "clock": "0.6 deg", "angle": "0.4 deg"})], "feet": feet("455 mm", "1320 mm", u=["4 mm", "4 mm"])})
c = Crew("0.27", "-0.46", "-0.33", "0.29", seed=20)
sensor_three = put("sensor", "sensor-three-points", "three_points", "One sensor, three positions in each channel: six readings for six unknowns",
    {"view": c.view, "sensors": [c.sensor("movable", "-76 mm", 1, hours(0, 90, 180), "0.4", None, (1.25, hours(30, 150, 270), "0.5", None))], "feet": feet("285 mm", "790 mm")})
c = Crew("0.31", "0.24", "-0.4", "-0.37", seed=21, noise="0.002")
put("sensor", "sensors-arc-120", "arc_120", "Both sensors read over 120 degrees across 12 o'clock",
    {"view": c.view, "sensors": [c.sensor("stationary", "160 mm", 1, spread(10, 120, 9), "1"), c.sensor("movable", "-150 mm", 0.85, spread(10, 120, 9), "1.6")], "feet": feet("430 mm", "1090 mm")})
c = Crew("-0.38", "0.51", "0.22", "0.63", "from_stationary", seed=22, noise="0.002")
put("sensor", "sensors-arc-90", "arc_90", "A quarter of a turn between 1 and 4 o'clock, of unequal readings",
    {"view": c.view, "sensors": [c.sensor("stationary", "210 mm", 1.1, spread(75, 90, 10), "0.7", {"reading": "0.002 mm"}), c.sensor("movable", "-190 mm", 1, spread(75, 90, 7), "0.9", {"reading": "0.005 mm"})],
     "feet": feet("520 mm", "1410 mm")})
c = Crew("0.42", "-0.28", "0.37", "-0.55", seed=23, noise="0.001")
put("sensor", "sensors-arc-60", "arc_60", "Sixty degrees on one side, with uncertain stations",
    {"view": c.view, "sensors": [c.sensor("stationary", "190 mm", 1, spread(105, 60, 7), "0.5", {"reading": "0.002 mm", "station": "1 mm"}), c.sensor("movable", "-205 mm", 1.15, spread(105, 60, 8), "0.3", {"reading": "0.003 mm", "station": "2 mm"})],
     "feet": feet("505 mm", "1290 mm")})
c = Crew("-0.25", "0.44", "0.52", "0.3", seed=24, noise="0")
put("sensor", "sensors-arc-20", "arc_20", "Twenty degrees across 12: the zeros are nearly one with the offset",
    {"view": c.view, "sensors": [c.sensor("stationary", "225 mm", 1.05, spread(352, 20, 6), "0.5"), c.sensor("movable", "-215 mm", 1, spread(352, 20, 6), "0.6")], "feet": feet("530 mm", "1440 mm")})
c = Crew("38", "0.012", "-45", "0.008", digits=4, seed=25, noise="0")
put("sensor", "sensors-huge-offset", "huge_offset", "Offsets of 40 mm with slopes of a hundredth of a millimetre a metre",
    {"view": c.view, "sensors": [c.sensor("stationary", "240 mm", 1.3, SIX, "3"), c.sensor("movable", "-230 mm", 0.7, FIVE, "5")], "feet": feet("600 mm", "1500 mm")})
bad("no-sensors", sensor_two, "missing", "/sensors", None, "No sensor at all")
bad("sensor-no-station", sensor_two, "missing", "/sensors/1/station", None, "A sensor of which nobody knows where it looks")
bad("sensor-zero-gain", sensor_gain, "out_of_range", "/sensors/0/gain", 0, "A sensor that answers to nothing")
bad("sensor-other-carrier", sensor_two, "unknown", "/sensors/0/carrier", "coupling", "A carrier that is none of the two shafts")
bad("sensor-angle-in-mrad", sensor_one, "unknown", "/sensors/0/angle/readings/2/value", "0.3 mrad", "An angle in mrad where a slope belongs")
bad("sensor-negative-u", sensor_u, "out_of_range", "/sensors/0/u/station", "-1.5 mm", "A negative uncertainty of a sensor's station")
bad("sensor-alone", sensor_one, "unseen", "/sensors", None, "One sensor without its channel for the angle: offset and slope cannot be told apart", "/sensors/0/angle")
bad("sensor-gain-as-text", sensor_u, "malformed", "/sensors/1/gain", "1.08", "A gain as text where a number belongs")
bad("sensor-no-angle-value", sensor_three, "missing", "/sensors/0/angle/readings/1/value", None, "A position of the angle channel without its reading")

# ---------------------------------------------------------------- forecast

def dense(middle, width, count, sigma):
    """u of one probe's part along the middle of an arc and across it, for `count` positions evenly over it, ends included: with
    the sums of cosines in closed form, along^2 = s^2/(N/2 + sin(Nd)/(2 sin d) - (sin(Nd/2)/sin(d/2))^2/N), across^2 = s^2/(N/2 - sin(Nd)/(2 sin d))."""
    d, n = mpf(width) / (count - 1) * mp.pi / 180, mpf(count)
    twice = mp.sin(n * d) / (2 * mp.sin(d))
    return sigma / mp.sqrt(n / 2 + twice - (mp.sin(n * d / 2) / mp.sin(d / 2)) ** 2 / n), sigma / mp.sqrt(n / 2 - twice)


TABLE = {360: ("1.41421", "1.41421"), 180: ("3.24930", "1.41421"), 120: ("6.61826", "1.84663"), 90: ("11.3663", "2.34603"),
         60: ("24.9531", "3.40004"), 45: ("43.9819", "4.47923"), 30: ("98.3549", "6.66146")}  # for infinitely many readings, over sigma/sqrt(N)


def check_table():
    """Many readings come to the limit, and the limit to the table: along 1/sqrt(1/2 + sin 2h/(4h) - (sin h/h)^2), across 1/sqrt(1/2 - sin 2h/(4h))."""
    for width, printed in TABLE.items():
        h = mpf(width) / 2 * mp.pi / 180
        limits = 1 / mp.sqrt(mpf(1) / 2 + mp.sin(2 * h) / (4 * h) - (mp.sin(h) / h) ** 2), 1 / mp.sqrt(mpf(1) / 2 - mp.sin(2 * h) / (4 * h))
        for limit, many, text in zip(limits, dense(0, width, 10**9, mp.sqrt(mpf(10) ** 9)), printed):
            assert abs(limit - mpf(text)) <= mpf("0.5") * mpf(10) ** -len(text.split(".")[1]), (width, limit)
            assert abs(many - limit) < mpf(10) ** -6 * limit, (width, many, limit)


check_table()


def planned(view, expected, sets, stations=None):
    new = {"view": view, "expected": expected, "sets": sets}
    return {**new, "feet": stations} if stations else new


def plan(probe, at, u, sag=None, mounting=None):
    return {"probe": probe, **({"sag": sag} if sag else {}), "u": u, **({"mounting": mounting} if mounting else {}), "at": at}


region("sigma", "plain", "what follows from the scatter of the readings alone, by closed forms")
region("rim_face", "plain", "a rim and a face")
region("two_rims", "plain", "reverse dials")
region("spacer", "plain", "faces at the joints of a spacer")
region("spacer_shared", "plain", "the same with what their readings share")
region("other_kinds", "plain", "bores, gauges, straightedges and displacement sensors")
region("mounted", "plain", "sweeps repeated on one mounting")
region("mounted_twice", "hard", "repeats whose tape does not average out")
region("angle_apart", "plain", "each clock position with an error of its own")
region("table_180", "hard", "half a turn, by the closed form of the arc's cost")
region("table_120", "hard", "120 degrees, by the closed form")
region("table_90", "hard", "90 degrees, by the closed form")
region("table_60", "hard", "60 degrees, by the closed form")
region("table_45", "hard", "45 degrees, by the closed form")
region("movable_carrier", "hard", "carried by the movable shaft")
LEVEL = ("0.1", "-0.3", "0.2", "0.4")
DERIVED = "derived: weights of the quarters by hand"
r2 = mp.sqrt(2)
forecast_rim = put("forecast", "forecast-rim-face", "sigma", "Rim and face at the quarters: u(w) is sigma over root 2, that of the slope root 2 sigma over the diameter",
    planned("from_movable", place(*LEVEL), [plan(rim("stationary", "0 mm"), QUARTERS, {"reading": "0.006 mm"}), plan(face("stationary", "80 mm"), QUARTERS, {"reading": "0.004 mm"})], feet("325 mm", "875 mm")),
    by=DERIVED, holds={"/u/horizontal/offset": (mpf("0.006") / r2, mpf(10) ** -40), "/u/vertical/slope": (r2 * mpf("0.004") / 160, mpf(10) ** -40)})
xs, xm, w = mpf(-55), mpf(45), mpf("0.005") / r2
put("forecast", "forecast-two-rims", "two_rims", "Reverse dials at the quarters: slope, offset and feet by the closed forms of two stations",
    planned("from_movable", place("0.3", "0.1", "-0.1", "0.5"), [plan(rim("stationary", "45 mm"), QUARTERS, {"reading": "0.005 mm"}), plan(rim("movable", "-55 mm"), QUARTERS, {"reading": "0.005 mm"})], feet("355 mm", "985 mm")),
    by=DERIVED, holds={"/u/horizontal/slope": (r2 * w / (xm - xs), mpf(10) ** -40), "/u/vertical/offset": (w * mp.sqrt(xm**2 + xs**2) / (xm - xs), mpf(10) ** -40),
                       "/feet/1/vertical": (w * mp.sqrt((985 - xs) ** 2 + (985 - xm) ** 2) / (xm - xs), mpf(10) ** -40)})
for width, count, middle, radius, sigma in ((180, 19, 0, 90, "0.004"), (120, 13, 90, 75, "0.005"), (90, 10, 180, 110, "0.003"), (60, 13, 270, 120, "0.006"), (45, 16, 0, 65, "0.002")):
    along, across = dense(middle, width, count, mpf(sigma))
    plane, other = ("vertical", "horizontal") if middle % 180 == 0 else ("horizontal", "vertical")
    put("forecast", "forecast-arc-%d" % width, "table_%d" % width, "%d readings evenly over %d degrees about %s: what the arc costs along its middle and across" % (count, width, hours(middle)[0]),
        planned("from_movable", place("0.2", "0.2", "0.3", "-0.%d" % (count % 9 + 1)), [plan(rim("stationary", "0 mm"), spread(middle, width, count), {"reading": sigma + " mm"}),
                plan(face("movable", "%d mm" % radius), spread(middle, width, count), {"reading": sigma + " mm"})]),
        by="derived: the law of errors over an arc of finitely many readings, whose limit is the printed table", published=None,
        holds={"/u/%s/offset" % plane: (along, mpf(10) ** -40), "/u/%s/offset" % other: (across, mpf(10) ** -40),
               "/u/%s/slope" % plane: (along / radius, mpf(10) ** -40), "/u/%s/slope" % other: (across / radius, mpf(10) ** -40)})
FULL = {"reading": "0.004 mm", "station": "1.2 mm", "sag": "0.006 mm", "clock": "0.7 deg"}
forecast_shared = put("forecast", "forecast-shared", "shared", "Tape, droop and clock are uncertain: what they cost depends on where the shafts are expected",
    planned("from_movable", place("0.6", "-0.9", "-0.7", "1.1"), [plan(rim("stationary", "62 mm"), FIVE, FULL, "0.15 mm"), plan(face("stationary", "98 mm"), SIX, {"reading": "0.003 mm", "radius": "1 mm", "clock": "9 mrad"})],
            feet("445 mm", "1135 mm", u=["2 mm", "3 mm"])))
put("forecast", "forecast-shared-movable", "movable_carrier", "The movable shaft carries both, 150 degrees are free, the crew stands at the stationary end",
    planned("from_stationary", place("-0.8", "0.7", "0.5", "-1.2"), [plan(rim("movable", "-71 mm"), spread(70, 150, 7), {"reading": "0.005 mm", "station": "2 mm", "sag": "0.01 mm", "clock": "0.5 deg"}, "0.2 mm"),
            plan(far("movable", "105 mm"), spread(40, 110, 6), {"reading": "0.004 mm", "radius": "0.8 mm", "sag": "0.004 mm"}, "-0.02 mm")], feet("495 mm", "1265 mm", u=["4 mm", "6 mm"])))
put("forecast", "forecast-spacer", "spacer_shared", "Faces at both joints of a spacer with uncertain radii, and clock positions that err one by one",
    planned("from_movable", place("1.4", "-1.1", "-2.2", "1.7"), [plan(joint("stationary", "115 mm", "920 mm"), QUARTERS, {"reading": "0.005 mm", "radius": "1.5 mm", "angle": "0.8 deg"}),
            plan(far_joint("movable", "125 mm", "920 mm"), FIVE, {"reading": "0.008 mm", "radius": "2 mm", "clock": "1 deg"})], feet("760 mm", "1850 mm")))
forecast_mount = put("forecast", "forecast-mounted", "mounted", "Three sweeps on one mounting and one on another: readings average out, the tape of the mounting does not",
    planned("from_movable", place("0.4", "0.8", "-0.5", "-0.6"), [plan(rim("stationary", "58 mm"), QUARTERS, {"reading": "0.006 mm", "station": "1.5 mm", "clock": "0.5 deg"}, mounting="coupling rim")] * 3
            + [plan(face("stationary", "87 mm"), QUARTERS, {"reading": "0.005 mm", "radius": "1.2 mm"})], feet("415 mm", "1065 mm")))
put("forecast", "forecast-mounted-two", "mounted_twice", "Two mountings, each swept twice over other positions; droop and clock are in common",
    planned("from_stationary", place("-0.9", "0.5", "0.8", "1.3"), [plan(rim("stationary", "84 mm"), FIVE, {"reading": "0.004 mm", "sag": "0.02 mm", "clock": "1 deg", "station": "2 mm"}, "0.3 mm", "near"),
            plan(rim("movable", "-92 mm"), QUARTERS, {"reading": "0.005 mm", "station": "3 mm"}, mounting="away"), plan(rim("stationary", "84 mm"), spread(90, 140, 5), {"reading": "0.006 mm", "sag": "0.02 mm", "clock": "1 deg", "station": "2 mm"}, "0.3 mm", "near"),
            plan(rim("movable", "-92 mm"), SIX, {"reading": "0.007 mm", "station": "3 mm"}, mounting="away")], feet("545 mm", "1345 mm")))
put("forecast", "forecast-other-kinds", "other_kinds", "Bore, gauge, straightedge and displacement sensor, of unequal quality",
    planned("from_movable", place("0.7", "1.2", "-0.4", "0.9"), [plan(bore("movable", "-34 mm"), spread(20, 200, 6), {"reading": "0.006 mm", "station": "1 mm", "sag": "0.01 mm"}, "0.1 mm"), plan(gap("92 mm"), hours(0, 60, 180, 300), {"reading": "0.02 mm", "radius": "1 mm"}),
            plan(edge("stationary", "41 mm"), QUARTERS, {"reading": "0.03 mm"}), plan(displacement("175 mm", -1.4), spread(300, 160, 5), {"reading": "0.003 mm", "station": "2 mm", "clock": "0.4 deg"})], feet("385 mm", "1045 mm")))
put("forecast", "forecast-angle", "angle_apart", "Clock positions read off by eye, each with an error of its own, against a bracket that slipped as a whole",
    planned("from_movable", place("-1.1", "0.3", "0.9", "0.6"), [plan(rim("stationary", "77 mm"), SIX, {"reading": "0.004 mm", "angle": "1.5 deg"}, "0.2 mm"), plan(rim("movable", "-81 mm"), FIVE, {"reading": "0.003 mm", "angle": "20 mrad", "clock": "0.3 deg"}, "0.1 mm")],
            feet("485 mm", "1205 mm", u=["5 mm", "5 mm"])))
put("forecast", "forecast-in-line", "in_line", "Nothing expected out of line: tape and clock cost nothing, droop does",
    planned("from_movable", place("0", "0", "0", "0"), [plan(rim("stationary", "66 mm"), QUARTERS, {"reading": "0.007 mm", "station": "2 mm", "sag": "0.01 mm"}), plan(face("movable", "94 mm"), FIVE, {"reading": "0.002 mm", "radius": "1 mm"})], feet("505 mm", "1155 mm", u=["3 mm", "2 mm"])))
put("forecast", "forecast-far-foot", "far_foot", "Two rims 60 mm apart, and a foot 6 m away: offset and slope are nearly one at the foot",
    planned("from_stationary", place("0.2", "-0.1", "0.4", "0.3"), [plan(rim("stationary", "430 mm"), FIVE, {"reading": "0.003 mm", "station": "0.5 mm"}), plan(rim("movable", "370 mm"), SIX, {"reading": "0.005 mm", "station": "0.7 mm"})], feet("900 mm", "6 m", u=["5 mm", "10 mm"])))
bad("no-expected", forecast_rim, "missing", "/expected", None, "No position is expected")
bad("forecast-no-reading-u", forecast_shared, "missing", "/sets/1/u/reading", None, "A forecast without the uncertainty of the readings to come")
bad("forecast-empty", forecast_rim, "missing", "/sets/1/at", [], "A sweep without positions")
bad("forecast-rim-alone", forecast_rim, "unseen", "/sets", None, "A rim alone is planned, which cannot tell offset from slope", "/sets/1")
bad("forecast-mounting-moved", forecast_mount, "conflict", "/sets/2/mounting", "59 mm", "Sweeps of one mounting at two stations", "/sets/2/probe/station")

# ---------------------------------------------------------------- residuals

def given(view, *sets): return {"view": view, "sets": list(sets)}


region("scattered", "plain", "readings of one quality, whose scatter is not stated")
region("stated", "plain", "readings with their uncertainties")
region("leverage_one", "hard", "a reading that has its fitted value for itself")
region("outlier", "hard", "one reading far off")
region("one_left", "hard", "one reading more than unknowns")
region("large_zero", "hard", "zeros that are large beside the scatter")
region("unequal", "plain", "sets of different quality")
c = Crew("0.24", "-0.31", "0.18", "0.47", seed=31, noise="0.006")
residuals_two = put("residuals", "residuals", "two_rims", "Reverse dials whose scatter shows in what is left over",
    given(c.view, c.sweep(rim("stationary", "52 mm"), SIX, "0.2"), c.sweep(rim("movable", "-63 mm"), FIVE, "0.3")))
c = Crew("-0.33", "0.42", "0.27", "-0.52", "from_stationary", seed=32, noise="0.008")
residuals_sag = put("residuals", "residuals-face", "scattered", "Rim and face from the stationary end: where two sets differ in kind, sides count",
    given(c.view, c.sweep(rim("movable", "-49 mm"), FIVE, "0.5", sag="0.12 mm"), c.sweep(far("stationary", "83 mm"), SIX, "0.4"), c.sweep(gap("71 mm"), QUARTERS, "2.5")))
c = Crew("0.45", "0.22", "-0.38", "0.65", seed=33, noise="0.005")
residuals_u = put("residuals", "residuals-stated", "stated", "Each set with an uncertainty of its own: a residual is held against that, not against the scatter",
    given(c.view, c.sweep(rim("stationary", "74 mm"), FIVE, "0.1", shared={"reading": "0.005 mm"}), c.sweep(rim("movable", "-69 mm"), SIX, "0.2", shared={"reading": "0.015 mm"}),
          c.sweep(face("stationary", "91 mm"), QUARTERS, "0.3", shared={"reading": "0.004 mm"})))
put("residuals", "residuals-unequal", "unequal", "Readings of one sweep of unequal quality, three sets that overlap",
    given(c.view, c.sweep(bore("stationary", "37 mm"), SIX, 1, u=["0.004 mm", "0.004 mm", "0.02 mm", "0.004 mm", "0.03 mm", "0.004 mm"]), c.sweep(displacement("-118 mm", 1.3), FIVE, "0.4", u="0.006 mm"),
          c.sweep(edge("movable", "-44 mm"), QUARTERS, "0.7", u=["0.02 mm", "0.03 mm", "0.02 mm", "0.01 mm"])))
c = Crew("0.8", "-1.3", "-1.1", "0.9", seed=34, noise="0.007")
put("residuals", "residuals-spacer", "spacer", "Both joints of a spacer and a rim across it",
    given(c.view, c.sweep(joint("stationary", "108 mm", "740 mm"), FIVE, "0.6", u="0.006 mm"), c.sweep(far_joint("movable", "112 mm", "740 mm"), SIX, "0.9", u="0.009 mm"), c.sweep(rim("stationary", "365 mm"), QUARTERS, "1.4", sag="0.4 mm", u="0.02 mm")))
c = Crew("-0.2", "0.6", "0.5", "-0.3", unit="mil", digits=1, seed=35, noise="0.008")
put("residuals", "residuals-mil", "inch", "In mils, a straightedge and a gauge among the dials",
    given(c.view, c.sweep(edge("stationary", "1 5/8 in"), FIVE, "30"), c.sweep(gap("3 1/4 in"), SIX, "110"), c.sweep(rim("movable", "-2 1/2 in"), QUARTERS, "10")))
c = Crew("0.3", "0.5", "-0.2", "0.4", seed=36, noise="0.005")
put("residuals", "residuals-leverage-one", "leverage_one", "A rim read at two positions that alone see sideways: its readings share their fitted values, and one face reading is free of doubt",
    given(c.view, c.sweep(rim("stationary", "46 mm"), hours(0, 180, 0, 180), "0.2", u="0.005 mm"), c.sweep(rim("stationary", "47 mm"), hours(0, 90), "0.1", u="0.006 mm"), c.sweep(face("stationary", "79 mm"), SIX, "0.2", u="0.004 mm")))
one = given(c.view, c.sweep(rim("stationary", "53 mm"), SIX, "0.4"), c.sweep(rim("movable", "-57 mm"), SIX, "0.3"))
one["sets"][1]["readings"][2]["value"] = "0.913 mm"
put("residuals", "residuals-outlier", "outlier", "One reading was misread by half a millimetre: it pulls the fit, and its leverage hides part of it", one)
c = Crew("-0.15", "-0.45", "0.33", "0.28", "from_stationary", seed=37, noise="0.006")
residuals_one = put("residuals", "residuals-one-left", "one_left", "Seven readings for six unknowns",
    given(c.view, c.sweep(rim("stationary", "68 mm"), spread(130, 160, 4), "0.2"), c.sweep(face("movable", "86 mm"), hours(0, 120, 240), "0.3")))
c = Crew("0.37", "0.29", "0.44", "-0.36", seed=38, noise="0.003")
put("residuals", "residuals-arc-90", "arc_90", "A quarter of a turn: the ends have most of the leverage",
    given(c.view, c.sweep(rim("stationary", "118 mm"), spread(20, 90, 8), "0.5"), c.sweep(rim("movable", "-124 mm"), spread(20, 90, 7), "0.7")))
c = Crew("0.17", "0.39", "-0.23", "0.34", seed=39, noise="0.002")
put("residuals", "residuals-arc-60", "arc_60", "Sixty degrees across 12, read to and fro, positions repeated",
    given(c.view, c.sweep(rim("stationary", "131 mm"), spread(355, 60, 5) + spread(355, 60, 5)[::-1], "0.4", u="0.003 mm"), c.sweep(rim("movable", "-139 mm"), spread(355, 60, 6), "0.2", u="0.002 mm")))
put("residuals", "residuals-large-zero", "large_zero", "Sensors that stand at 20 and 35 mm: residuals of micrometres beside them",
    given(c.view, c.sweep(displacement("145 mm", 0.8), SIX, "20"), c.sweep(displacement("-152 mm", -1.2), FIVE, "35"), c.sweep(face("stationary", "99 mm"), FIVE, "5", sag="0.05 mm")))
bad("residuals-feet", residuals_two, "unknown", "/feet", [{"name": "inboard", "x": "400 mm"}], "Feet, of which nothing is asked here")
bad("residuals-one-station", residuals_two, "unseen", "/sets", "52 mm", "Both rims at one station: no slope", "/sets/1/probe/station")
bad("residuals-sag-on-gap", residuals_sag, "conflict", "/sets/2/sag", "0.01 mm", "A droop for a gauge that hangs on nothing")
bad("residuals-negative-u", residuals_u, "out_of_range", "/sets/0/u/reading", "-0.005 mm", "A negative uncertainty of the readings of a set")

# ---------------------------------------------------------------- budget

region("scatter", "plain", "the readings' share from their scatter")
region("scatter_shared", "hard", "scatter of readings beside what is stated of tape and droop")
region("contradicting", "hard", "sets that contradict each other")
c = Crew("0.5", "0.7", "-0.6", "-0.8", seed=41, noise="0.006")
S1 = {"reading": "0.006 mm", "station": "1.5 mm", "clock": "0.6 deg"}
budget_u = put("budget", "budget", "shared", "Readings, tape, droop and clock of two rims, each on its own",
    given(c.view, c.sweep(rim("stationary", "61 mm"), FIVE, "0.2", "0.14 mm", shared={**S1, "sag": "0.008 mm"}), c.sweep(rim("movable", "-73 mm"), SIX, "0.3", "0.11 mm", shared={**S1, "sag": "0.005 mm"})))
c = Crew("-0.7", "0.4", "0.3", "1.1", "from_stationary", seed=42, noise="0.005")
put("budget", "budget-face", "rim_face", "Rim and face from the stationary end, an uncertain radius",
    given(c.view, c.sweep(rim("movable", "-54 mm"), FIVE, "0.4", shared={"reading": "0.005 mm", "station": "1 mm"}), c.sweep(far("movable", "96 mm"), SIX, "0.5", shared={"reading": "0.004 mm", "radius": "1.5 mm", "clock": "8 mrad"})))
c = Crew("0.9", "-0.5", "0.7", "0.8", seed=43, noise="0.004")
put("budget", "budget-angle", "angle_apart", "Positions that err one by one have a share beside the readings' own",
    given(c.view, c.sweep(rim("stationary", "81 mm"), SIX, "0.3", shared={"reading": "0.004 mm", "angle": "1 deg"}), c.sweep(rim("movable", "-86 mm"), spread(100, 180, 7), "0.2", shared={"reading": "0.005 mm", "angle": "15 mrad"})))
c = Crew("0.6", "1.2", "-0.9", "0.5", seed=44, noise="0.006")
near = {"reading": "0.006 mm", "station": "2 mm", "clock": "0.8 deg"}
budget_mounted = put("budget", "budget-mounted", "mounted", "Two sweeps of one mounting: its tape has one share, at the first of them",
    given(c.view, c.sweep(rim("stationary", "64 mm"), QUARTERS, "0.1", shared=near, mounting="hub"), c.sweep(rim("stationary", "64 mm"), FIVE, "0.6", shared=near, mounting="hub"),
          c.sweep(face("stationary", "88 mm"), SIX, "0.4", shared={"reading": "0.005 mm", "radius": "1 mm"})))
c = Crew("-1.0", "0.9", "1.2", "-0.7", "from_stationary", seed=45, noise="0.007")
away = {"reading": "0.005 mm", "station": "3 mm", "sag": "0.02 mm"}
put("budget", "budget-mounted-two", "mounted_twice", "Two mountings, swept in turn; the tape of each stays in",
    given(c.view, c.sweep(rim("movable", "-110 mm"), FIVE, "0.3", "0.25 mm", shared=away, mounting="A"), c.sweep(rim("stationary", "95 mm"), SIX, "0.2", shared=near, mounting="B"),
          c.sweep(rim("movable", "-110 mm"), QUARTERS, "0.7", "0.25 mm", shared=away, mounting="A"), c.sweep(rim("stationary", "95 mm"), spread(60, 150, 5), "0.9", shared=near, mounting="B")))
put("budget", "budget-mounted-apart", "mounted_twice", "Four sweeps of one mounting over half a turn each, and a face without a name",
    given(c.view, *[c.sweep(rim("stationary", "57 mm"), spread(m, 180, 5), z, shared={"reading": "0.01 mm", "station": "1.8 mm", "clock": "1.2 deg"}, mounting="rim") for m, z in ((0, "0.2"), (90, "0.4"), (180, "0.1"), (270, "0.3"))],
          c.sweep(face("movable", "102 mm"), SIX, "0.2", shared={"reading": "0.006 mm"})))
c = Crew("0.25", "-0.65", "0.55", "0.35", seed=46, noise="0.008")
budget_scatter = put("budget", "budget-scatter", "scatter", "Nothing is stated: the readings' shares follow from their scatter",
    given(c.view, c.sweep(rim("stationary", "59 mm"), SIX, "0.5", "0.09 mm"), c.sweep(rim("movable", "-67 mm"), FIVE, "0.4")))
put("budget", "budget-scatter-shared", "scatter_shared", "Readings without, tape and droop with their uncertainties",
    given(c.view, c.sweep(rim("stationary", "63 mm"), FIVE, "0.5", "0.2 mm", shared={"station": "1.2 mm", "sag": "0.01 mm"}), c.sweep(gap("84 mm"), SIX, "2.4", shared={"radius": "0.9 mm"}), c.sweep(bore("movable", "-39 mm"), FIVE, "0.8")))
c = Crew("0.35", "0.15", "-0.45", "0.25", seed=47, noise="0.004")
budget_one = put("budget", "budget-one-left", "one_left", "One reading more than unknowns, and its scatter counts",
    given(c.view, c.sweep(edge("stationary", "43 mm"), QUARTERS, "0.6"), c.sweep(face("stationary", "93 mm"), hours(0, 120, 240), "0.3")))
odd = given(c.view, c.sweep(rim("stationary", "72 mm"), SIX, "0.2", shared={"reading": "0.01 mm", "station": "3 mm", "clock": "2 deg"}), c.sweep(displacement("-101 mm", 1.5), FIVE, "0.2", shared={"reading": "0.01 mm", "station": "3 mm"}),
            c.sweep(face("movable", "101 mm"), QUARTERS, "0.5", shared={"reading": "0.01 mm", "radius": "2 mm"}))
for i, v in enumerate(("0.41", "0.97", "0.32", "0.18", "0.66")):
    odd["sets"][1]["readings"][i]["value"] = v + " mm"
put("budget", "budget-contradicting", "contradicting", "A sensor that contradicts the dials: what is left over counts in the derivatives", odd)
c = Crew("0.4", "-0.3", "0.2", "0.6", seed=48, noise="0.003")
put("budget", "budget-arc-120", "arc_120", "120 degrees on one side: the readings cost more than the tape",
    given(c.view, c.sweep(joint("stationary", "121 mm", "650 mm"), spread(95, 120, 7), "0.4", shared={"reading": "0.004 mm", "radius": "1 mm", "angle": "0.6 deg"}), c.sweep(joint("movable", "117 mm", "650 mm"), spread(95, 120, 8), "0.3", shared={"reading": "0.006 mm", "radius": "1.5 mm"})))
bad("budget-feet", budget_u, "unknown", "/feet", [{"name": "outboard", "x": "900 mm"}], "Feet, of which a budget says nothing")
bad("budget-nothing-left", budget_one, "unseen", "/sets", None, "As many readings as unknowns, and no uncertainty: no scatter", "/sets/0/readings/3")
bad("budget-mounting-turned", budget_mounted, "conflict", "/sets/1/mounting", "movable", "Sweeps of one mounting, carried by two shafts", "/sets/1/probe/carrier")
bad("budget-mounting-u", budget_mounted, "conflict", "/sets/1/mounting", "3 mm", "Sweeps of one mounting with two uncertainties of its station", "/sets/1/u/station")
bad("budget-unknown-u", budget_u, "unknown", "/sets/1/u/tape", "1 mm", "An uncertainty of something that is not known here")

# ---------------------------------------------------------------- follow

def followed(start, plane, probes, view="from_movable"): return {"from": start, "plane": plane, "view": view, "probes": probes}


def watch(probe, at, start, now, u=None, axial_free=None):
    return {"probe": probe, "at": at, "start": start, "now": now, **({"u": u} if u else {}), **({"axial_free": axial_free} if axial_free is not None else {})}


def rim_of_cylinder(position, station, radius, degrees):
    """Where a ray at a station, towards the stationary axis at a clock position, meets an inclined cylinder of that radius."""
    oh, sh, ov, sv = position
    s, c = sincos(degrees)
    # The point t (s, c) at x = station; less its part along the cylinder's axis (1, sh, sv) its distance is the radius.
    p0, d = [mpf(station), -oh, -ov], [mpf(0), s, c]
    axis = [mpf(1), sh, sv]
    n2 = dot(axis, axis)

    def across(v): return [a - dot(v, axis) / n2 * b for a, b in zip(v, axis)]
    p, q = across(p0), across(d)
    A, B, C = dot(q, q), dot(p, q), dot(p, p) - mpf(radius) ** 2
    return (-B + mp.sqrt(B * B - A * C)) / A


def check_followed():
    """The check of a followed move, exactly in three dimensions: two rims of 75 mm, before and after."""
    before, after = ("0.12", "0.0004", "-0.2", "-0.0007"), ("0.12", "0.0004", "-0.15", "-0.0005")
    before, after = ([mpf(x) for x in w] for w in (before, after))
    front = rim_of_cylinder(after, 40, 75, 0) - rim_of_cylinder(before, 40, 75, 0)
    # Seen with the roles of the machines and the standpoint exchanged, x and t change sign, and so do slope_h and offset_v.
    back = [rim_of_cylinder([w[0], -w[1], -w[2], w[3]], 50, 75, 180) for w in (before, after)]
    assert abs(front - mpf("0.05799")) < mpf("0.000005") and abs(back[1] - back[0] - mpf("0.03999")) < mpf("0.000005"), (front, back)
    assert abs(rim_of_cylinder(before, 40, 75, 90) - rim_of_cylinder(before, 40, 75, 0) - mpf("0.363764")) < mpf("0.0000005")


check_followed()
region("two_probes", "plain", "two probes follow a move")
region("sideways", "plain", "a move sideways")
region("sideways_seen", "plain", "a move sideways, seen from the stationary end")
region("more_probes", "plain", "more probes than needed")
region("with_u", "plain", "position and readings with their uncertainties")
region("with_u_correlated", "plain", "the same with errors that belong together")
region("gap_followed", "plain", "a gauge and a face follow a move sideways")
region("face_followed", "plain", "a face among the probes")
region("at_45", "hard", "probes that stand at 45 degrees to the move")
region("nearly_across", "hard", "a probe that stands nearly across the move")
region("good_and_poor", "hard", "one very good and one very poor")
region("no_move", "hard", "a machine that did not move")
CASE_A = place("0.12", "0.4", "-0.2", "-0.7")
follow_a = put("follow", "follow-exact", "two_probes", "Two rims of rigid shafts in exact three-dimensional geometry: the machine goes up by 0.05 mm and tilts by 0.2 mm/m",
    followed(CASE_A, "vertical", [watch(rim("stationary", "40 mm"), "12:00", "0 mm", "0.05799 mm"), watch(rim("movable", "-50 mm"), "6:00", "0.456 mm", "0.49599 mm")]),
    "simulation", "changes of two rims in exact three-dimensional geometry (ray meets inclined cylinder), to five decimals of a mm",
    holds={"/vertical/offset": (mpf("-0.15"), mpf("0.00002")), "/vertical/slope": (mpf("-0.0005"), mpf("0.0000001")), "/horizontal/offset": (mpf("0.12"), 0)})
follow_side = put("follow", "follow-sideways", "sideways", "Pushed towards 3 o'clock, watched at 3 and 9",
    followed(place("-0.35", "0.6", "0.1", "0.2"), "horizontal", [watch(rim("stationary", "70 mm"), "3:00", "0.21 mm", "0.47 mm"), watch(rim("movable", "-64 mm"), "9:00", "1.2 mm", "1.51 mm")]))
put("follow", "follow-sideways-seen", "sideways_seen", "The crew stands at the stationary end: its 3 o'clock is the library's 9",
    followed(place("0.42", "-0.3", "-0.15", "0.5"), "horizontal", [watch(rim("stationary", "88 mm"), "3:00", "0.6 mm", "0.94 mm"), watch(bore("movable", "-41 mm"), "2:30", "0.55 mm", "0.33 mm"), watch(displacement("240 mm", 1.6), "265 deg", "1 mm", "0.52 mm")], "from_stationary"))
follow_more = put("follow", "follow-weighted", "more_probes", "Four probes of unequal quality; the starting position has no uncertainty",
    followed(place("0.2", "0.1", "-0.5", "-0.9"), "vertical", [watch(rim("stationary", "55 mm"), "12:00", "0.1 mm", "0.352 mm", "0.004 mm"), watch(rim("movable", "-61 mm"), "12:30", "0.3 mm", "0.118 mm", "0.01 mm"),
             watch(displacement("310 mm", -0.8), "11:00", "2.2 mm", "1.914 mm", "0.003 mm"), watch(edge("stationary", "48 mm"), "6:00", "0.5 mm", "0.73 mm", "0.03 mm")]))
follow_u = put("follow", "follow-u", "with_u", "Position and readings have their uncertainties: they add by their squares, a change has root two of a reading's",
    followed(place("0.3", "-0.4", "-0.25", "0.55", ("0.01", "0.03", "0.006", "0.02")), "vertical", [watch(rim("stationary", "77 mm"), "12:00", "0 mm", "0.163 mm", "0.005 mm"), watch(rim("movable", "-83 mm"), "6:30", "0.2 mm", "0.334 mm", "0.007 mm")]))
put("follow", "follow-u-correlated", "with_u_correlated", "Three probes sideways in mils; offset and slope of the starting position belong together",
    followed(place("-12", "0.3", "8", "-0.5", ("0.4", "0.05", "0.3", "0.04"), {(0, 1): -0.8, (2, 3): -0.7, (0, 2): 0.2}, "mil", "mil/in"), "horizontal",
             [watch(rim("stationary", "3 in"), "3:00", "4 mil", "9.5 mil", "0.2 mil"), watch(rim("movable", "-3 1/2 in"), "8:00", "10 mil", "15 mil", "0.5 mil"), watch(rim("stationary", "2 3/4 in"), "4:30", "20 mil", "23.5 mil", "0.3 mil")]))
put("follow", "follow-mil", "inch", "In mils, with a bore and a straightedge",
    followed(place("6", "-0.4", "-15", "0.7", unit="mil", ratio="mil/in"), "vertical", [watch(bore("stationary", "1 3/4 in"), "6:00", "50 mil", "61 mil"), watch(edge("movable", "-2 1/8 in"), "12:00", "22 mil", "31.5 mil")]))
follow_face = put("follow", "follow-face", "face_followed", "A face that no axial shift reaches, as its float is taken out, beside a rim",
    followed(place("0.1", "0.2", "-0.3", "-0.6"), "vertical", [watch(rim("stationary", "66 mm"), "11:30", "0.4 mm", "0.583 mm", "0.005 mm"), watch(face("stationary", "160 mm"), "12:00", "0.1 mm", "0.147 mm", "0.003 mm", True)]))
put("follow", "follow-gap-sideways", "gap_followed", "Sideways a gauge between the faces may follow too; from the stationary end",
    followed(place("0.5", "0.9", "0.2", "-0.1", ("0.02", "0.05", "0.02", "0.05")), "horizontal", [watch(rim("movable", "-58 mm"), "3:30", "0.9 mm", "0.72 mm", "0.006 mm"), watch(gap("140 mm"), "9:00", "4.1 mm", "4.02 mm", "0.02 mm"),
             watch(far("stationary", "150 mm"), "8:30", "0.5 mm", "0.46 mm", "0.005 mm")], "from_stationary"))
put("follow", "follow-45", "at_45", "Both probes stand at 45 degrees: they see seven tenths of the move",
    followed(place("0.25", "0.35", "-0.45", "0.15", ("0.008", "0.02", "0.008", "0.02")), "vertical", [watch(rim("stationary", "92 mm"), "1:30", "0.3 mm", "0.451 mm", "0.004 mm"), watch(rim("movable", "-97 mm"), "10:30", "0.4 mm", "0.262 mm", "0.004 mm")]))
put("follow", "follow-45-seen", "at_45", "Three probes at 45 degrees, sideways, from the stationary end",
    followed(place("-0.6", "0.25", "0.35", "-0.2"), "horizontal", [watch(rim("stationary", "104 mm"), "45 deg", "0.2 mm", "0.418 mm", "0.005 mm"), watch(rim("movable", "-99 mm"), "135 deg", "0.7 mm", "0.511 mm", "0.004 mm"), watch(displacement("-260 mm", 0.5), "4:30", "1.5 mm", "1.42 mm", "0.008 mm")], "from_stationary"))
put("follow", "follow-nearly-across", "nearly_across", "One probe stands at 80 degrees to the move and sees a sixth of it",
    followed(place("0.1", "-0.2", "0.3", "0.1", ("0.01", "0.03", "0.01", "0.03")), "vertical", [watch(rim("stationary", "115 mm"), "80 deg", "0.2 mm", "0.231 mm", "0.003 mm"), watch(rim("movable", "-108 mm"), "170 deg", "0.3 mm", "0.457 mm", "0.004 mm")]))
put("follow", "follow-close", "close_stations", "Two rims 8 mm apart: the slope is seen badly",
    followed(place("-0.2", "0.1", "0.5", "-0.3", ("0.01", "0.02", "0.01", "0.02")), "vertical", [watch(rim("stationary", "254 mm"), "12:00", "0.1 mm", "0.288 mm", "0.002 mm"), watch(rim("movable", "246 mm"), "5:30", "0.1 mm", "0.279 mm", "0.003 mm")]))
put("follow", "follow-good-and-poor", "good_and_poor", "Two probes good to a micrometre, a feeler to a tenth of a millimetre",
    followed(place("0.3", "0.3", "-0.6", "0.4"), "vertical", [watch(displacement("180 mm", 2), "12:00", "3.1 mm", "3.712 mm", "0.001 mm"), watch(displacement("-175 mm", -1.5), "6:00", "2.8 mm", "3.131 mm", "0.001 mm"), watch(edge("stationary", "50 mm"), "12:00", "0.8 mm", "0.5 mm", "0.1 mm")]))
put("follow", "follow-no-move", "no_move", "Large readings that did not change: the position stays where it was, only less certain",
    followed(place("0.05", "0.15", "-0.07", "0.12", ("0.003", "0.01", "0.004", "0.012")), "vertical", [watch(rim("stationary", "81 mm"), "1:00", "4.731 mm", "4.731 mm", "0.004 mm"), watch(rim("movable", "-76 mm"), "7:30", "3.962 mm", "3.962 mm", "0.005 mm")]))
bad("follow-no-plane", follow_a, "missing", "/plane", None, "Nothing said of the plane of the move")
bad("follow-no-from", follow_side, "missing", "/from", None, "Nobody knows where the machine stood before")
bad("follow-no-probes", follow_a, "missing", "/probes", None, "Nothing that follows the move")
bad("follow-axial-plane", follow_u, "unknown", "/plane", "axial", "A plane that is none of the two")
bad("follow-across", follow_more, "unseen", "/probes/2/at", "3:00", "A probe that stands across a move upwards")
bad("follow-across-sideways", follow_side, "unseen", "/probes/0/at", "6:00", "A probe that stands across a move sideways")
bad("follow-one-station", follow_u, "unseen", "/probes", "77 mm", "Both rims at one station: offset and slope cannot be told apart", "/probes/1/probe/station")
bad("follow-face-not-free", follow_face, "unseen", "/probes/1/axial_free", None, "A face that follows a move upwards, and sees the shift along the axis")
bad("follow-face-false", follow_face, "unseen", "/probes/1/axial_free", False, "A face of which it is said that the shift reaches it")
bad("follow-rim-axial", follow_u, "conflict", "/probes/0/axial_free", True, "Said of a rim that no axial shift reaches it")
bad("follow-negative-u", follow_u, "out_of_range", "/probes/1/u", "-0.007 mm", "A negative uncertainty of a probe that follows")

# ---------------------------------------------------------------- compare and merge

def pair(first, second): return {"first": first, "second": second}


region("independent", "plain", "two measurements whose numbers are independent")
region("correlated", "plain", "offset and slope of a measurement belong together")
region("correlated_planes", "plain", "errors that the planes share")
region("unlike", "plain", "measurements that do not agree")
region("correlation_near_1", "hard", "correlations near one")
region("correlation_near_1_far", "hard", "correlations near one, and measurements that do not agree")
region("p_near_0", "hard", "a probability that is nearly nothing")
region("p_near_0_correlated", "hard", "the same with errors that belong together")
region("p_small", "hard", "a probability that is very small")
region("good_in_one_number", "hard", "each is very good in one number and very poor in the other")
region("correlation_opposed", "hard", "correlations near one, of opposed sign")
region("identical", "hard", "two measurements that came out alike")
region("far_apart_sizes", "hard", "very small and very large numbers")
UA, UB = ("0.012", "0.03", "0.01", "0.025"), ("0.008", "0.04", "0.009", "0.035")
compare_plain = put("compare", "compare", "independent", "Two dial sets on one day, independent numbers", pair(place("0.12", "0.4", "-0.2", "-0.7", UA), place("0.135", "0.36", "-0.211", "-0.73", UB)))
compare_r = put("compare", "compare-correlated", "correlated", "Offset and slope of each belong together, one way in the first and the other in the second",
    pair(place("-0.25", "0.33", "0.41", "0.52", ("0.01", "0.05", "0.011", "0.045"), {(0, 1): -0.8, (2, 3): -0.75}), place("-0.231", "0.29", "0.395", "0.56", ("0.02", "0.06", "0.018", "0.055"), {(0, 1): 0.4, (2, 3): 0.5})))
put("compare", "compare-planes", "correlated_planes", "A clock that is off moves both planes together",
    pair(place("0.8", "-0.6", "-0.7", "0.9", ("0.014", "0.04", "0.015", "0.05"), {(0, 2): 0.6, (1, 3): -0.5, (0, 1): -0.3}), place("0.771", "-0.55", "-0.742", "0.96", ("0.009", "0.03", "0.012", "0.02"), {(0, 3): 0.35})))
put("compare", "compare-mil", "inch", "In mils and mils per inch against millimetres",
    pair(place("5", "0.4", "-9", "-0.6", ("0.5", "0.06", "0.4", "0.05"), {(0, 1): -0.5}, "mil", "mil/in"), place("0.115", "0.44", "-0.243", "-0.53", ("0.01", "0.04", "0.012", "0.03"), {(2, 3): -0.6})))
put("compare", "compare-unlike", "unlike", "Measurements further apart than their uncertainties allow", pair(place("0.3", "0.5", "0.1", "0.2", UB), place("0.33", "0.42", "0.12", "0.26", UA)))
put("compare", "compare-near-1", "correlation_near_1", "Errors of offset and slope nearly one: what agrees in each number may not agree together",
    pair(place("0.2", "-0.3", "0.15", "0.45", ("0.05", "0.1", "0.06", "0.12"), {(0, 1): -0.9995, (2, 3): -0.9992}), place("0.212", "-0.325", "0.163", "0.424", ("0.04", "0.08", "0.05", "0.1"), {(0, 1): -0.999, (2, 3): -0.9996})))
put("compare", "compare-near-1-far", "correlation_near_1_far", "The difference goes against the correlation: large, though each number is within its own uncertainty",
    pair(place("0.4", "0.1", "-0.3", "0.2", ("0.03", "0.06", "0.03", "0.06"), {(0, 1): 0.998, (2, 3): 0.997}), place("0.385", "0.125", "-0.288", "0.179", ("0.02", "0.04", "0.02", "0.04"), {(0, 1): 0.996, (2, 3): 0.999})))
put("compare", "compare-p-near-0", "p_near_0", "Before and after a move: chi squared over 200, and a probability that one less a probability loses",
    pair(place("0.9", "1.2", "-0.8", "-1.1", UA), place("0.75", "1.0", "-0.68", "-0.95", UB)))
put("compare", "compare-p-near-0-again", "p_small", "In thousandths: chi squared over a hundred", pair(place("21", "0.9", "14", "0.2", ("0.5", "0.1", "0.4", "0.08"), None, "mil", "mil/in"), place("15", "0.4", "11", "0.5", ("0.4", "0.09", "0.5", "0.1"), None, "mil", "mil/in")))
put("compare", "compare-p-near-0-correlated", "p_near_0_correlated", "Far apart, with correlations that count",
    pair(place("-0.6", "0.7", "0.2", "-0.4", ("0.02", "0.05", "0.02", "0.05"), {(0, 1): -0.7, (2, 3): -0.7}), place("-0.45", "0.9", "0.31", "-0.22", ("0.015", "0.04", "0.02", "0.03"), {(0, 1): -0.6, (2, 3): -0.5})))
put("compare", "compare-identical", "identical", "The same numbers came out twice: nothing is more probable", pair(place("0.27", "-0.14", "0.33", "0.61", UB, {(0, 1): -0.4}), place("0.27", "-0.14", "0.33", "0.61", UA)))
put("compare", "compare-sizes", "far_apart_sizes", "Offsets of metres known to a micrometre, slopes of nanometres a metre",
    pair(place("2400", "0.000012", "-1800", "0.000009", ("0.001", "0.000002", "0.002", "0.000003"), {(0, 1): 0.3}), place("2400.002", "0.00001", "-1800.003", "0.000013", ("0.0015", "0.0000025", "0.001", "0.000002"), {(2, 3): -0.6})))
bad("compare-no-second", compare_plain, "missing", "/second", None, "One measurement, and nothing to compare it with")
bad("compare-u-in-one-plane", compare_plain, "missing", "/second/vertical/u", None, "Uncertainties in one plane only, of two that are compared")
bad("compare-negative-u", compare_r, "out_of_range", "/first/horizontal/u/slope", "-0.05 mm/m", "A negative uncertainty of a slope that is compared")
bad("compare-correlation-as-text", compare_r, "malformed", "/second/correlation/0/1", "0.4", "A correlation as text where a number belongs")
bad("compare-target", compare_r, "unknown", "/target", {"horizontal": {"offset": "0 mm", "slope": "0 mm/m"}, "vertical": {"offset": "0 mm", "slope": "0 mm/m"}}, "A target, of which a comparison knows nothing")

merge_plain = put("merge", "merge", "independent", "Two measurements of equal worth, nearly", pair(place("0.31", "-0.22", "0.17", "0.64", ("0.01", "0.03", "0.012", "0.028")), place("0.325", "-0.26", "0.152", "0.61", ("0.014", "0.025", "0.01", "0.033"))))
merge_r = put("merge", "merge-correlated", "correlated", "Offset and slope of each belong together: each corrects the other",
    pair(place("-0.4", "0.5", "0.22", "-0.35", ("0.03", "0.06", "0.025", "0.055"), {(0, 1): -0.85, (2, 3): -0.8}), place("-0.43", "0.53", "0.247", "-0.31", ("0.02", "0.07", "0.03", "0.05"), {(0, 1): 0.5, (2, 3): -0.2})))
put("merge", "merge-planes", "correlated_planes", "Errors that both planes share, in the second measurement only",
    pair(place("0.66", "0.18", "-0.53", "0.27", ("0.015", "0.04", "0.012", "0.03")), place("0.69", "0.13", "-0.56", "0.24", ("0.02", "0.03", "0.018", "0.05"), {(0, 2): -0.7, (1, 3): 0.4, (0, 3): 0.2})))
put("merge", "merge-mil", "inch", "Mils and mils per foot with millimetres",
    pair(place("-7", "4", "11", "-8", ("0.6", "0.7", "0.5", "0.9"), {(0, 1): -0.3}, "mil", "mil/ft"), place("-0.19", "0.37", "0.271", "-0.61", ("0.02", "0.05", "0.015", "0.06"), {(2, 3): 0.55})))
merge_good = put("merge", "merge-good-and-poor", "good_and_poor", "A laser beside a straightedge: ten thousand times the weight, and the poor one must not spoil it",
    pair(place("0.1234", "0.4321", "-0.2345", "-0.5432", ("0.001", "0.002", "0.001", "0.003")), place("0.3", "0.9", "-0.6", "0.1", ("0.1", "0.3", "0.15", "0.25"))))
put("merge", "merge-good-slope", "good_in_one_number", "One knows the offset, the other the slope; in the first they belong together",
    pair(place("0.21", "0.8", "-0.34", "-0.6", ("0.002", "0.5", "0.003", "0.6"), {(0, 1): -0.9, (2, 3): -0.95}), place("0.5", "0.41", "-0.1", "-0.27", ("0.3", "0.004", "0.25", "0.003"))))
put("merge", "merge-outside", "correlation_near_1", "Errors that belong together nearly wholly: the mean of two numbers lies outside both",
    pair(place("0.2", "0.3", "-0.1", "0.5", ("0.05", "0.1", "0.04", "0.09"), {(0, 1): -0.999, (2, 3): -0.9985}), place("0.22", "0.32", "-0.12", "0.48", ("0.02", "0.15", "0.02", "0.12"), {(0, 1): -0.995, (2, 3): -0.99})))
put("merge", "merge-near-1-opposed", "correlation_opposed", "The same with opposed correlations: together they know much more than either",
    pair(place("-0.3", "0.6", "0.5", "0.1", ("0.06", "0.12", "0.05", "0.1"), {(0, 1): 0.9992, (2, 3): 0.9994}), place("-0.28", "0.57", "0.48", "0.13", ("0.05", "0.11", "0.06", "0.13"), {(0, 1): -0.9993, (2, 3): -0.9991})))
put("merge", "merge-identical", "identical", "The same numbers came out twice: they stay, only more certain", pair(place("0.19", "-0.47", "0.26", "0.38", UA, {(0, 1): -0.6}), place("0.19", "-0.47", "0.26", "0.38", UB, {(2, 3): 0.3})))
put("merge", "merge-sizes", "far_apart_sizes", "Offsets of metres with slopes of nanometres a metre",
    pair(place("1600.004", "0.00002", "-900.002", "0.000015", ("0.002", "0.000003", "0.003", "0.000002"), {(0, 1): -0.2}), place("1600.001", "0.000016", "-900.006", "0.00002", ("0.001", "0.000002", "0.002", "0.000004"))))
bad("merge-no-first", merge_plain, "missing", "/first", None, "Nothing to merge the second measurement with")
bad("merge-u-in-one-plane", merge_plain, "missing", "/first/horizontal/u", None, "Uncertainties in one plane only, of two that are merged")

# ---------------------------------------------------------------- expect

def expected(view, position, *sets): return {"position": position, "view": view, "sets": list(sets)}


def ask(probe, at, u=None, sag=None):
    return {"probe": probe, **({"sag": sag} if sag else {}), **({"u": u} if u else {}), "at": at}


region("without_u", "plain", "no uncertainty at all")
region("position_u", "plain", "the position alone is uncertain")
region("position_correlated", "plain", "a position whose errors belong together")
region("set_u", "plain", "the sets alone are uncertain")
region("return_to_first", "hard", "the first position once more")
region("first_not_at_12", "hard", "sweeps that begin elsewhere, across 12 o'clock")
expect_rim = put("expect", "expect", "without_u", "What the dials of an exactly known position will show, droop included; nothing is uncertain",
    expected("from_movable", place("0.12", "0.4", "-0.2", "-0.7"), ask(rim("stationary", "40 mm"), QUARTERS, sag="0.1 mm"), ask(rim("movable", "-50 mm"), FIVE, sag="0.08 mm"), ask(face("stationary", "75 mm"), QUARTERS)))
expect_u = put("expect", "expect-position-u", "position_u", "Position with independent uncertainties, exact dials",
    expected("from_stationary", place("-0.33", "0.52", "0.27", "-0.41", UA), ask(bore("stationary", "29 mm"), SIX, sag="0.05 mm"), ask(gap("78 mm"), FIVE), ask(edge("movable", "-37 mm"), QUARTERS)))
expect_r = put("expect", "expect-correlated", "position_correlated", "Offset and slope of the position belong together: on a rim far out that counts",
    expected("from_movable", place("0.44", "-0.36", "0.29", "0.67", ("0.02", "0.06", "0.025", "0.05"), {(0, 1): -0.8, (2, 3): 0.7, (0, 2): 0.3}), ask(rim("stationary", "320 mm"), SIX, {"reading": "0.005 mm"}), ask(far("movable", "90 mm"), hours(30, 120, 200), {"reading": "0.004 mm"})))
expect_set = put("expect", "expect-sets-u", "set_u", "Station, droop, radius and clock of the sets are uncertain, each reading and the first have an error of their own",
    expected("from_movable", place("0.7", "1.1", "-0.8", "-0.9"), ask(rim("stationary", "85 mm"), SIX, {"reading": "0.006 mm", "station": "2 mm", "sag": "0.01 mm", "clock": "0.8 deg"}, "0.25 mm"),
             ask(face("movable", "95 mm"), FIVE, {"reading": "0.004 mm", "radius": "1.5 mm", "clock": "10 mrad"}, "-0.02 mm")))
put("expect", "expect-angle", "angle_apart", "Each clock position errs by itself, that of the first too, droop included",
    expected("from_stationary", place("-0.9", "0.4", "1.2", "0.6", UB), ask(rim("movable", "-72 mm"), hours(0, 45, 90, 135, 180), {"reading": "0.003 mm", "angle": "1 deg"}, "0.3 mm"), ask(displacement("160 mm", -1.25), spread(100, 120, 4), {"angle": "15 mrad", "clock": "0.5 deg"})))
put("expect", "expect-spacer", "spacer", "Faces at the joints of a spacer, an uncertain radius",
    expected("from_movable", place("1.6", "-0.7", "-1.9", "1.3", ("0.05", "0.08", "0.04", "0.07"), {(0, 1): -0.5}), ask(joint("stationary", "120 mm", "850 mm"), QUARTERS, {"reading": "0.005 mm", "radius": "2 mm"}), ask(far_joint("movable", "110 mm", "850 mm"), FIVE, {"radius": "1 mm", "sag": "0.005 mm"}, "0.03 mm")))
put("expect", "expect-mil", "inch", "In mils, from the stationary end",
    expected("from_stationary", place("9", "-0.5", "-14", "0.8", ("0.5", "0.04", "0.6", "0.05"), {(2, 3): -0.6}, "mil", "mil/in"), ask(rim("stationary", "2 1/2 in"), hours(180, 270, 0, 90), {"reading": "0.3 mil", "station": "1/16 in"}, "4 mil"), ask(bore("movable", "-1 7/8 in"), QUARTERS, {"reading": "0.4 mil", "sag": "0.2 mil"}, "2 mil")))
put("expect", "expect-return", "return_to_first", "The last position is the first: position and tape cost nothing there, the two readings do",
    expected("from_movable", place("0.36", "0.48", "-0.55", "-0.3", UA), ask(rim("stationary", "68 mm"), QUARTERS + ["12:00"], {"reading": "0.005 mm", "station": "1 mm"}, "0.12 mm"), ask(rim("movable", "-74 mm"), ["3:00", "6:00", "9:00", "3:00"], {"reading": "0.006 mm", "angle": "1.2 deg"})))
put("expect", "expect-not-12", "first_not_at_12", "The sweep begins at 10 and crosses 12; the crew stands at the stationary end",
    expected("from_stationary", place("-0.65", "0.25", "0.45", "-0.85", ("0.015", "0.05", "0.02", "0.04"), {(0, 1): 0.6, (1, 2): -0.3}), ask(rim("movable", "-93 mm"), hours(300, 330, 0, 30, 60), {"reading": "0.004 mm", "sag": "0.02 mm", "clock": "1 deg"}, "0.4 mm"),
             ask(gap("105 mm"), hours(285, 345, 45), {"reading": "0.02 mm", "radius": "2 mm", "angle": "2 deg"})))
put("expect", "expect-near-1", "correlation_near_1", "The position is known at the rim's own station, and there only: offset and slope nearly cancel",
    expected("from_movable", place("0.5", "-0.4", "0.3", "0.6", ("0.1", "1", "0.1", "1"), {(0, 1): -0.9995, (2, 3): -0.9995}), ask(rim("stationary", "100 mm"), SIX, {"reading": "0.002 mm"}), ask(rim("movable", "-150 mm"), FIVE)))
put("expect", "expect-in-line", "in_line", "Shafts in line: droop is all that a dial shows, and tape costs nothing",
    expected("from_movable", place("0", "0", "0", "0", UB), ask(rim("stationary", "56 mm"), QUARTERS, {"reading": "0.005 mm", "station": "3 mm", "sag": "0.015 mm", "clock": "1 deg"}, "0.22 mm"), ask(bore("movable", "-31 mm"), FIVE, {"reading": "0.004 mm", "sag": "0.01 mm"}, "0.07 mm")))
put("expect", "expect-huge", "huge_offset", "Offsets of metres with a small slope, of which a tape of a millimetre sees little",
    expected("from_stationary", place("1500", "0.03", "-2300", "0.05", ("0.4", "0.01", "0.3", "0.02")), ask(rim("stationary", "1250 mm"), QUARTERS, {"reading": "0.05 mm", "station": "2 mm"}), ask(displacement("-1100 mm", 0.001), SIX, {"reading": "0.002 mm", "clock": "20 urad"})))
bad("expect-no-position", expect_rim, "missing", "/position", None, "No position that readings could follow from")
bad("expect-u-in-one-plane", expect_u, "missing", "/position/vertical/u", None, "A position with uncertainties in one plane only")
bad("expect-clock-in-mm", expect_set, "unknown", "/sets/0/u/clock", "0.8 mm", "An uncertainty of the clock as a length")
bad("expect-negative-sag", expect_rim, "out_of_range", "/sets/1/sag", "-0.08 mm", "A bracket on a rim that droops upwards")

check_second(JOBS)
if __name__ == "__main__":
    area.save()
    print("largest error in double precision: %.3f of its tolerance (%s)" % max(WORST))
    print("doubtful: %s" % DOUBTFUL)
