"""Writes fit.json: any mix of probes, solved by weighted least squares.

Run as `python3 generate/fit.py` from testdata. Needs mpmath and pari-gp (Debian packages
python3-mpmath, pari-gp); takes under a minute.

First way (class Fit, function orthogonal): the whole weighted design matrix, four numbers and one zero
for each set, by Householder's QR in mpmath with 60 digits. u from the inverse of R; what is shared through the
derivative of the least-squares solution, the share of its residuals included. Second way (SECOND, in pari-gp
with 110 digits): each set reduced to its moments about its weighted mean, the 4 x 4 equations solved, and
every derivative taken as a central difference with a step of 1e-30. Both have to agree to 30 digits.

Mistakes: Fit takes the name of one and errs by it (`slip`); a vector carries the flags of all that change its
answer by over 1000 tolerances. `normal_equations` is set where the normal equations, formed in Python's
double precision, miss by over 30 tolerances, with their columns as they come and scaled. In the same double precision
an orthogonal solution must pass every tolerance at half its width, in millimetres and in nanometres (function worst).
"""

import math
import random
import subprocess

from asked import *
from common import *

GP = "pari-gp " + subprocess.run(["gp", "--version-short"], capture_output=True, text=True, check=True).stdout.strip()
NUMBERS = [("horizontal", "offset", "mm"), ("horizontal", "slope", "mm/m"), ("vertical", "offset", "mm"), ("vertical", "slope", "mm/m")]
CROSS = {"rim", "bore", "straightedge", "displacement"}  # see the offset at a station
FACES = {"near_face", "far_face", "gap"}
JOINTS = {"spacer_face", "spacer_far_face"}
SHARED = ("station", "radius", "sag", "clock")


# ---------------------------------------------------------------- what an input says, with slips

def position(text, slip=""):
    """Reads a clock position in degrees, as the crew sees it."""
    return clock(text) / 30 if slip == "hours_as_degrees" and ":" in text else clock(text)


EXCHANGED = {  # what a slip takes a kind for
    "face_sign": {"near_face": "far_face", "far_face": "near_face", "spacer_face": "spacer_far_face", "spacer_far_face": "spacer_face"},
    "bore_as_rim": {"bore": "rim"},
    "gap_as_dial": {"gap": "near_face"},
    "straightedge_as_rim": {"straightedge": "rim"},
    "spacer_as_short": {"spacer_face": "near_face", "spacer_far_face": "far_face"},
}
OTHER = {"stationary": "movable", "movable": "stationary"}


class Probe:
    """k, a and b of the law, what b and a change by with station and radius, and how sag enters."""

    def __init__(self, probe, slip=""):
        kind = EXCHANGED.get(slip, {}).get(probe["kind"], probe["kind"])
        side = -1 if probe.get("carrier") == "movable" else 1
        if slip == "carrier_sign" and kind in CROSS or slip == "joints_exchanged" and kind in JOINTS:
            side = -side
        x, r, span = (measure(probe.get(p, "0 mm"), slip) for p in ("station", "radius", "span"))
        if slip == "station_unsigned":
            x = abs(x)
        if slip == "radius_for_diameter":
            r = r / 2
        if slip == "half_span":
            span = span / 2
        self.da = {"radius": F(0)}
        self.db = {"station": F(0), "radius": F(0)}
        if kind in CROSS:
            self.k = {"rim": side, "bore": -side, "straightedge": -side}.get(kind) or F(str(probe["gain"]))
            if slip == "gain_ignored" and kind == "displacement":
                self.k = 1
            self.a, self.b = F(1), x
            self.db["station"] = F(1)
        elif kind in FACES:
            self.k = 1 if kind == "near_face" else -1
            self.a, self.b = F(0), r
            self.db["radius"] = F(1)
        else:
            self.k = 1 if kind == "spacer_face" else -1
            self.a, self.b = side * r / span, r / 2
            self.da["radius"], self.db["radius"] = side / span, F(1, 2)
        self.sag = -1 if kind == "bore" else 1


class Row:
    """One reading: r - sag cos t = zero + g . (offset_h, slope_h, offset_v, slope_v)."""

    def __init__(self, probe, t, r, sag, u, group):
        s, c = t
        a, b = big(probe.k * probe.a), big(probe.k * probe.b)
        self.g = [a * s, b * s, a * c, b * c]
        self.y = big(r) - sag * c
        self.size = abs(big(r)) + abs(sag * c)
        self.u, self.group = u, group


class Fit:
    """One input, solved with or without a slip."""

    def __init__(self, input, slip=""):
        self.input, self.slip = input, slip
        self.mirror = -1 if input["view"] == "from_stationary" and slip != "view_mirrored" else 1
        self.stated = any("u" in r or "reading" in s.get("u", {}) for s in input["sets"] for r in s["readings"])
        self.rows, self.shared = [], []
        for group, s in enumerate(input["sets"]):
            self.take(group, s)
        self.weigh()
        self.solve()

    def take(self, group, s):
        """Adds the rows of a set, and what its shared uncertainties change in them."""
        probe = Probe(s["probe"], self.slip)
        share = {"sag_added": -1, "sag_ignored": 0, "sag_once": F(1, 2)}.get(self.slip, 1) * probe.sag
        sag = big(share * measure(s.get("sag", "0 mm"), self.slip))
        common_u = s.get("u", {})
        start = len(self.rows)
        angles = []
        for i, r in enumerate(s["readings"]):
            at = F(90 * (i % 4)) if self.slip == "quarters_assumed" else position(r["at"], self.slip)
            angles.append(sincos(self.mirror * at))
            text = r.get("u") or common_u.get("reading")
            u = big(measure(text, self.slip)) if self.stated else mpf(1)
            self.rows.append(Row(probe, angles[-1], measure(r["value"], self.slip), sag, u, 0 if self.slip == "one_zero" else group))
        for what in SHARED:
            if what in common_u:
                self.share(what, common_u[what], probe, sag, angles, start)

    def share(self, what, text, probe, sag, angles, start):
        """Notes how the rows of one set change with one shared quantity: in g, and in y."""
        u = big(angle(text)) if what == "clock" else big(measure(text, self.slip))
        dg, dy = {}, {}
        for i, (s, c) in enumerate(angles, start):
            a, b = big(probe.k * probe.da.get(what, F(0))), big(probe.k * probe.db.get(what, F(0)))
            dg[i], dy[i] = [a * s, b * s, a * c, b * c], mpf(0)
            if what == "sag":
                dy[i] = -probe.sag * c
            if what == "clock":  # d sin = cos, d cos = -sin, also in the droop that is taken off
                a, b = big(probe.k * probe.a), big(probe.k * probe.b)
                dg[i], dy[i] = [a * c, b * c, -a * s, -b * s], sag * s
        self.shared.append((dg, dy, u))

    def weigh(self):
        """Sets the weights; slips replace the uncertainties by others."""
        mean = mp.sqrt(mp.fsum(r.u**2 for r in self.rows) / len(self.rows))
        for r in self.rows:
            if self.slip == "weights_ignored":
                r.u = mean
            if self.slip == "weights_not_squared":
                r.u = mp.sqrt(r.u * mean)
            r.w = 1 / r.u

    def solve(self):
        if self.slip:
            reduced(self)
        else:
            orthogonal(self)
        self.V = [[x for x in row] for row in self.C]
        if self.slip == "shared_ignored":
            return
        for (dg, dy, u), d in zip(self.shared, self.derivatives()):
            if self.slip == "shared_as_independent":
                parts = [[self.P[j][i] * (dy[i] - dot(dg[i], self.x)) * u for j in range(4)] for i in dg]
            else:
                parts = [[dj * u for dj in d]]
            for p in parts:
                for i in range(4):
                    for j in range(4):
                        self.V[i][j] += p[i] * p[j]

    def derivatives(self):
        """Returns dx/dp for each shared quantity p: x solves A'W(y - Ax) = 0, so
        dx = (A'WA)^-1 (dA'W(y - Ax) + A'W(dy - dA x)); dA has nothing in the columns of the zeros."""
        found = []
        for dg, dy, _ in self.shared:
            rest = [mpf(0)] * len(self.rows) if self.slip == "residual_share_forgotten" else self.rest
            left = [mp.fsum(dg[i][j] * self.rows[i].w ** 2 * rest[i] for i in dg) for j in range(4)]
            found.append([dot(self.C[k], left) + mp.fsum(self.P[k][i] * (dy[i] - dot(dg[i], self.x)) for i in dg) for k in range(4)])
        return found

    def result(self):
        x, V = list(self.x), self.V
        if self.slip == "offset_at_dial_plane":
            at = [s["probe"]["station"] for s in self.input["sets"] if "station" in s["probe"]]
            x[0] += big(measure(at[0])) * x[1]
            x[2] += big(measure(at[0])) * x[3]
        order = (2, 3, 0, 1) if self.slip == "planes_mixed" else (0, 1, 2, 3)
        x, V = [x[i] for i in order], [[V[i][j] for j in order] for i in order]
        answer = {}
        for i, (plane, what, unit) in enumerate(NUMBERS):
            answer.setdefault(plane, {})[what] = written(x[i], unit)
        if self.stated:
            for i, (plane, what, unit) in enumerate(NUMBERS):
                answer[plane].setdefault("u", {})[what] = written(mp.sqrt(V[i][i]), unit)
        if "feet" in self.input:
            answer["moves"] = [self.move(f, x, V) for f in self.input["feet"]]
        answer["warnings"] = []
        return answer

    def move(self, foot, x, V):
        at = big(measure(foot["x"], self.slip))
        sign = 1 if self.slip == "correction_for_position" else -1
        m = {"foot": foot["name"]}
        for plane, o in (("horizontal", 0), ("vertical", 2)):
            m[plane] = written(sign * (x[o] + at * x[o + 1]), "mm")
        if self.stated:
            u = big(measure(foot["u"], self.slip)) if "u" in foot else mpf(0)
            m["u"] = {}
            for plane, o in (("horizontal", 0), ("vertical", 2)):
                both = 0 if self.slip == "feet_uncorrelated" else 2 * at * V[o][o + 1]
                m["u"][plane] = written(mp.sqrt(V[o][o] + both + at**2 * V[o + 1][o + 1] + (x[o + 1] * u) ** 2), "mm")
        return m


def dot(a, b): return mp.fsum(x * y for x, y in zip(a, b))


def written(x, unit):
    """Writes a number; one that is a short decimal but for the last of 60 digits as that decimal."""
    x = x / big(OUT[unit])
    near = F(int(mp.nint(x * mpf(10) ** 16)), 10**16)
    if abs(x - big(near)) < mpf(10) ** -45:
        x = near
    return (decimal(x) + " " + unit).strip()


# ---------------------------------------------------------------- first way, and the one of the slips

def design(fit):
    """Returns the weighted design matrix with a column for each zero, and the weighted readings."""
    groups = sorted({r.group for r in fit.rows})
    A = [[r.w * g for g in r.g] + [r.w if r.group == z else mpf(0) for z in groups] for r in fit.rows]
    return A, [r.w * r.y for r in fit.rows]


def orthogonal(fit):
    """Solves by QR of the whole; sets x, C (covariance of the readings), P (pseudo-inverse), rest, kappa and scales."""
    A, y = design(fit)
    m, n = len(A), len(A[0])
    norms = [mp.sqrt(mp.fsum(row[j] ** 2 for row in A)) for j in range(n)]
    Q, R = mp.qr(mp.matrix([[row[j] / norms[j] for j in range(n)] for row in A]), mode="skinny")
    singular = sorted(mp.svd_r(R, compute_uv=False))
    if singular[0] < mpf(10) ** -40:
        raise Refused
    fit.kappa = singular[-1] / singular[0]
    I = mp.inverse(R)
    P = I * Q.T
    fit.P = [[P[j, i] / norms[j] * fit.rows[i].w for i in range(m)] for j in range(n)]
    full = [dot(fit.P[j], [r.y for r in fit.rows]) for j in range(n)]
    C = I * I.T
    fit.C = [[C[i, j] / norms[i] / norms[j] for j in range(4)] for i in range(4)]
    fit.x = full[:4]
    fit.rest = [(y[i] - dot(A[i], full)) / fit.rows[i].w for i in range(m)]
    size = mp.sqrt(mp.fsum((r.w * r.size) ** 2 for r in fit.rows))
    fit.scales = [size / norms[j] for j in range(4)]
    fit.loose = mp.sqrt(mp.fsum((e * r.w) ** 2 for e, r in zip(fit.rest, fit.rows))) / size if size else mpf(0)


def reduced(fit):
    """Solves by the 4 x 4 equations about each set's weighted mean, good enough in 60 digits."""
    rows = fit.rows
    g, y, w = [None] * len(rows), [None] * len(rows), [r.w**2 for r in rows]
    for group in {r.group for r in rows}:
        own = [i for i, r in enumerate(rows) if r.group == group]
        share = [w[i] for i in own]
        if fit.slip == "first_reading_exact":
            share = [1] + [0] * (len(own) - 1)
            w[own[0]] = mpf(0)
        total = mp.fsum(share)
        mean = [mp.fsum(s * rows[i].g[j] for s, i in zip(share, own)) / total for j in range(4)]
        middle = mp.fsum(s * rows[i].y for s, i in zip(share, own)) / total
        for i in own:
            g[i], y[i] = [a - b for a, b in zip(rows[i].g, mean)], rows[i].y - middle
    N = mp.matrix(4, 4)
    for i in range(4):
        for j in range(4):
            N[i, j] = mp.fsum(w[k] * g[k][i] * g[k][j] for k in range(len(rows)))
    d = [mp.sqrt(N[i, i]) for i in range(4)]
    if min(d) == 0:
        raise Refused
    for i in range(4):
        for j in range(4):
            N[i, j] /= d[i] * d[j]
    if mp.det(N) < mpf(10) ** -40:
        raise Refused
    C = mp.inverse(N)
    fit.C = [[C[i, j] / d[i] / d[j] for j in range(4)] for i in range(4)]
    fit.P = [[dot(fit.C[i], g[k]) * w[k] for k in range(len(rows))] for i in range(4)]
    fit.x = [dot(fit.P[i], y) for i in range(4)]
    fit.rest = [y[k] - dot(g[k], fit.x) for k in range(len(rows))]


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
 [g,g*x]};
\\ A set is [kind, carrier, [station, radius, sag, clock error], span, gain, readings]; a reading [degrees, value, u].
\\ Moments of a set about its weighted mean: those of sine and cosine, and of either with the readings.
moments(S,v)={my(W=0,M=[0,0,0],Q=matrix(3,3),p=S[3],z=if(S[1]=="bore",-1,1));
 for(i=1,#S[6],my(q=S[6][i],t=v*(q[1]*Pi/180+p[4]),w=1/q[3]^2,e);
  e=[sin(t),cos(t),q[2]-z*p[3]*cos(t)];W+=w;M+=w*e;Q+=w*e~*e);
 Q-M~*M/W};
solve4(D,v)={my(N=matrix(4,4),b=vector(4)~);
 for(i=1,#D,my(S=D[i],Q=moments(S,v),h=law(S[1],S[2],S[3][1],S[3][2],S[4],S[5]));
  for(m=1,2,for(n=1,2,for(k=1,2,b[2*m-2+k]+=if(n==1,Q[m,3]*h[k],0);
   for(l=1,2,N[2*m-2+k,2*n-2+l]+=Q[m,n]*h[k]*h[l])))));
 [matsolve(N,b),N]};
\\ U: [set, place among the four, u] of what is shared.
whole(D,v,U,feet,stated)={my(a=solve4(D,v),x=a[1],V=a[2]^-1,h=1e-30);
 for(i=1,#U,my(q=U[i],P=D,M=D,d);P[q[1]][3][q[2]]+=h;M[q[1]][3][q[2]]-=h;
  d=(solve4(P,v)[1]-solve4(M,v)[1])/(2*h)*q[3];V+=d*d~);
 my(out=List());
 for(i=1,4,listput(out,x[i]));
 if(stated,for(i=1,4,listput(out,sqrt(V[i,i]))));
 for(i=1,#feet,my(f=[1,feet[i][1]]~);
  for(p=0,1,listput(out,-(x[2*p+1]+x[2*p+2]*f[2])));
  if(stated,for(p=0,1,listput(out,sqrt(f~*V[2*p+1..2*p+2,2*p+1..2*p+2]*f+(x[2*p+2]*feet[i][2])^2)))));
 for(i=1,#out,print1(strprintf("%.75f",out[i])," "));print("")};
"""


def listed(items): return "[" + ",".join(items) + "]"


def gp_set(s, stated):
    p, common_u = s["probe"], s.get("u", {})
    readings = [listed([str(clock(r["at"])), str(length(r["value"])), str(length(r.get("u") or common_u["reading"])) if stated else "1"])
                for r in s["readings"]]
    four = listed([str(length(x)) for x in (p.get("station", "0 mm"), p.get("radius", "0 mm"), s.get("sag", "0 mm"))] + ["0"])
    return listed(['"%s"' % p["kind"], '"%s"' % p.get("carrier", ""), four, str(length(p.get("span", "0 mm"))),
                   str(F(str(p.get("gain", 0)))), listed(readings)])


def gp_call(input):
    stated = Fit(input).stated
    shared = [listed([str(i), str(SHARED.index(what) + 1), gp_angle(text) if what == "clock" else str(length(text))])
              for i, s in enumerate(input["sets"], 1) for what, text in s.get("u", {}).items() if what in SHARED]
    feet = [listed([str(length(f["x"])), str(length(f.get("u", "0 mm")))]) for f in input.get("feet", [])]
    return "whole(%s,%d,%s,%s,%d);\n" % (listed([gp_set(s, stated) for s in input["sets"]]), -1 if input["view"] == "from_stationary" else 1,
                                        listed(shared), listed(feet), stated)


def flat(result):
    """Returns the numbers of a result in the order in which `whole` prints them, in mm and ratios."""
    numbers = [(result[p][w], u) for p, w, u in NUMBERS]
    if "u" in result["vertical"]:
        numbers += [(result[p]["u"][w], u) for p, w, u in NUMBERS]
    for m in result.get("moves", []):
        numbers += [(m[p], "mm") for p in ("horizontal", "vertical")]
        if "u" in m:
            numbers += [(m["u"][p], "mm") for p in ("horizontal", "vertical")]
    return [mpf(text.split()[0]) * big(OUT[unit]) for text, unit in numbers]


def check_second(vectors):
    """Asserts that both ways agree to 30 digits of the larger of the number and its own scale."""
    script = SECOND + "".join(gp_call(v["input"]) for v in vectors)
    done = subprocess.run(["gp", "-q", "-f"], input=script, capture_output=True, text=True, check=True)
    lines = done.stdout.strip().splitlines()
    assert len(lines) == len(vectors), done.stderr + done.stdout[-500:]
    for v, printed in zip(vectors, lines):
        ours, theirs = flat(v["result"]), [mpf(x) for x in printed.split()]
        assert len(ours) == len(theirs), v["id"]
        for a, b in zip(ours, theirs):
            assert abs(a - b) <= mpf(10) ** -30 * max(abs(a), mpf(10) ** -6), (v["id"], a, b)


# ---------------------------------------------------------------- tolerances

def tolerance_of(fit):
    """A move takes in the scales of offset and slope at its distance, and its own two parts. u of a move may
    be the small difference of large parts; its scale is the sum of their squares over u. All feet share one
    entry, that of the largest. The norm of the readings counts in the droop that is taken off."""
    tolerance = {}
    for i, (plane, what, unit) in enumerate(NUMBERS):
        tolerance["/%s/%s" % (plane, what)] = rounding(fit.scales[i], unit, fit.kappa, 64)
        if fit.stated:
            tolerance["/%s/u/%s" % (plane, what)] = rounding(mp.sqrt(fit.V[i][i]), unit, fit.kappa, 64)
    if "feet" not in fit.input:
        return tolerance
    for plane, o in (("horizontal", 0), ("vertical", 2)):
        scale = scale_u = mpf(0)
        for foot in fit.input["feet"]:
            at, u = abs(big(length(foot["x"]))), big(length(foot.get("u", "0 mm")))
            scale = max(scale, fit.scales[o] + at * fit.scales[o + 1] + abs(fit.x[o]) + abs(at * fit.x[o + 1]))
            squares = fit.V[o][o] + at**2 * fit.V[o + 1][o + 1] + (fit.x[o + 1] * u) ** 2
            x = big(length(foot["x"]))
            scale_u = max(scale_u, squares / mp.sqrt(squares + 2 * x * fit.V[o][o + 1]))
        tolerance["/moves/*/" + plane] = rounding(scale, "mm", fit.kappa, 64)
        if fit.stated:
            tolerance["/moves/*/u/" + plane] = rounding(scale_u, "mm", fit.kappa, 64)
    return tolerance


# ---------------------------------------------------------------- double precision

def double(input, unit, solver):
    """Solves in double precision with lengths in `unit` mm; returns the numbers in the order of flat, in mm.
    solver takes the weighted matrix and readings, and returns x and the pseudo-inverse."""
    fit = Fit(input)  # for its structure: coefficients are rounded to double before anything is solved
    A, y, w = doubles(fit, unit)
    x, P = solver(A, y)
    rest = [(y[i] - sum(a * b for a, b in zip(A[i], x))) for i in range(len(A))]
    C = [[sum(P[i][k] * P[j][k] for k in range(len(A))) for j in range(4)] for i in range(4)]
    V = [row[:] for row in C]
    for dg, dy, u in fit.shared:
        # g of a slope is in mm per 1, so per ratio in units of length: divide by unit
        factor = [1, 1 / unit, 1, 1 / unit]
        G = {i: [float(d) * f for d, f in zip(dg[i], factor)] for i in dg}
        left = [sum(G[i][j] * w[i] * rest[i] for i in dg) for j in range(4)]
        d = [(sum(C[k][j] * left[j] for j in range(4))
              + sum(P[k][i] * w[i] * (float(dy[i]) / unit - sum(g * b for g, b in zip(G[i], x))) for i in dg)) * float(u) for k in range(4)]
        for i in range(4):
            for j in range(4):
                V[i][j] += d[i] * d[j]
    numbers = [x[0] * unit, x[1], x[2] * unit, x[3]]
    if fit.stated:
        numbers += [math.sqrt(V[i][i]) * (unit if i in (0, 2) else 1) for i in range(4)]
    for f in input.get("feet", []):
        at, fu = float(length(f["x"])) / unit, float(length(f.get("u", "0 mm"))) / unit
        numbers += [-(x[o] + at * x[o + 1]) * unit for o in (0, 2)]
        if fit.stated:
            numbers += [math.sqrt(V[o][o] + 2 * at * V[o][o + 1] + at * at * V[o + 1][o + 1] + (x[o + 1] * fu) ** 2) * unit for o in (0, 2)]
    return numbers


def doubles(fit, unit):
    """Returns the weighted design, readings and weights in double precision: sine and cosine of doubles, products of doubles."""
    A, y, weights, groups = [], [], [], len(fit.input["sets"])
    rows = iter(fit.rows)
    for z, s in enumerate(fit.input["sets"]):
        p = Probe(s["probe"])
        a, b = float(p.k) * float(p.a), float(p.k) * (float(p.b) / unit)
        sag = float(length(s.get("sag", "0 mm"))) / unit * p.sag
        for r in s["readings"]:
            t = math.radians(float(clock(r["at"]))) * fit.mirror
            sn, cs, w = math.sin(t), math.cos(t), float(next(rows).w)
            w = w * unit if fit.stated else w  # one over u, which is in the same unit
            A.append([w * a * sn, w * b * sn, w * a * cs, w * b * cs] + [w if j == z else 0.0 for j in range(groups)])
            y.append(w * (float(length(r["value"])) / unit - sag * cs))
            weights.append(w)
    return A, y, weights


def householder(A, y):
    """Least squares by Householder's reflections in double precision, columns scaled first."""
    m, n = len(A), len(A[0])
    norms = [math.sqrt(sum(row[j] ** 2 for row in A)) for j in range(n)]
    R = [[row[j] / norms[j] for j in range(n)] + [v] for row, v in zip(A, y)]
    Q = [[float(i == j) for j in range(m)] for i in range(m)]
    for j in range(n):
        alpha = math.sqrt(sum(R[i][j] ** 2 for i in range(j, m)))
        alpha = -alpha if R[j][j] > 0 else alpha
        v = [R[i][j] - (alpha if i == j else 0.0) for i in range(j, m)]
        vv = sum(c * c for c in v)
        if vv == 0:
            continue
        for M, width in ((R, n + 1), (Q, m)):
            for c in range(width):
                f = 2 * sum(v[i - j] * M[i][c] for i in range(j, m)) / vv
                for i in range(j, m):
                    M[i][c] -= f * v[i - j]
    x = backwards(R, [R[i][n] for i in range(n)], norms)
    columns = [backwards(R, [Q[i][k] for i in range(n)], norms) for k in range(m)]
    return x, [[columns[k][j] for k in range(m)] for j in range(n)]


def backwards(R, rhs, norms):
    """Solves R x = rhs from below, and takes the scales of the columns off again."""
    n = len(rhs)
    x = [0.0] * n
    for i in range(n - 1, -1, -1):
        x[i] = (rhs[i] - sum(R[i][j] * x[j] for j in range(i + 1, n))) / R[i][i]
    return [a / b for a, b in zip(x, norms)]


def normal(scaled):
    """Returns a solver by the normal equations and Cholesky's factor."""
    def solver(A, y):
        m, n = len(A), len(A[0])
        norms = [math.sqrt(sum(row[j] ** 2 for row in A)) if scaled else 1.0 for j in range(n)]
        B = [[row[j] / norms[j] for j in range(n)] for row in A]
        N = [[sum(B[k][i] * B[k][j] for k in range(m)) for j in range(n)] for i in range(n)]
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
            x = [0.0] * n
            for i in range(n - 1, -1, -1):
                x[i] = (z[i] - sum(L[k][i] * x[k] for k in range(i + 1, n))) / L[i][i]
            return [a / b for a, b in zip(x, norms)]

        x = both([sum(B[k][j] * y[k] for k in range(m)) for j in range(n)])
        columns = [both(B[k]) for k in range(m)]
        return x, [[columns[k][j] for k in range(m)] for j in range(n)]
    return solver


def worst(input, result, tolerance, unit, solver):
    """Returns the largest error of a solver over its tolerance."""
    try:
        found = double(input, unit, solver)
    except (Refused, ValueError, ZeroDivisionError):
        return math.inf
    paths = ["/%s/%s" % (p, w) for p, w, _ in NUMBERS]
    if "u" in result["vertical"]:
        paths += ["/%s/u/%s" % (p, w) for p, w, _ in NUMBERS]
    for m in result.get("moves", []):
        paths += ["/moves/*/horizontal", "/moves/*/vertical"]
        if "u" in m:
            paths += ["/moves/*/u/horizontal", "/moves/*/u/vertical"]
    high = 0.0
    for path, want, got in zip(paths, flat(result), found):
        within, u = tolerance[path]["within"].split()
        bound = mpf(within) * big(OUT[u])
        off = abs(mpf(got) - want)
        high = max(high, float(off / bound) if bound else (math.inf if off else 0.0))
    return high


# ---------------------------------------------------------------- flags

SLIPS = ["carrier_sign", "face_sign", "bore_as_rim", "gap_as_dial", "straightedge_as_rim", "gain_ignored", "view_mirrored", "sag_added",
         "sag_ignored", "sag_once", "one_zero", "first_reading_exact", "quarters_assumed", "hours_as_degrees", "weights_ignored",
         "weights_not_squared", "shared_as_independent", "shared_ignored", "residual_share_forgotten", "feet_uncorrelated", "spacer_as_short",
         "joints_exchanged", "half_span", "radius_for_diameter", "station_unsigned", "offset_at_dial_plane",
         "correction_for_position", "planes_mixed", "mil_as_hundredth", "fraction_misread"]


def flags_of(input, result, tolerance):
    flags = []
    for slip in SLIPS:
        if slip == "offset_at_dial_plane" and not any("station" in s["probe"] for s in input["sets"]):
            continue
        try:
            wrong = Fit(input, slip).result()
        except (Refused, ZeroDivisionError):
            wrong = {}
        if differs(result, wrong, tolerance):
            flags.append(slip)
    # 30 times: rounding errors are a matter of luck, so no more than a lower bound can be asked
    miss = min(worst(input, result, tolerance, 1.0, normal(s)) for s in (False, True))
    assert miss < 1 or miss > 30, "a fit on which the normal equations may pass or not: %g" % miss
    if miss > 30:
        flags.append("normal_equations")
    return flags


# ---------------------------------------------------------------- readings as dials show them


class Crew:
    """Where the movable centreline lies (mm and mm/m), and how the crew writes readings down."""

    def __init__(self, oh, sh, ov, sv, view="from_movable", unit="mm", digits=2, seed=None, noise=0):
        self.truth = [big(F(str(v)) / d) for v, d in ((oh, 1), (sh, 1000), (ov, 1), (sv, 1000))]
        self.view, self.unit, self.digits = view, unit, digits
        self.random, self.noise = random.Random(seed), noise

    def sweep(self, probe, at, zero=0, sag=None, u=None, shared=None, first=False):
        """Returns a set of readings, rounded as a dial is read; `first` zeroes the dial at the first position.
        u is the uncertainty of each reading, a text for all or a list; `shared` that of the set."""
        p, mirror = Probe(probe), -1 if self.view == "from_stationary" else 1
        droop = big(length(sag)) * p.sag if sag else mpf(0)
        values = []
        for t in at:
            s, c = sincos(mirror * clock(t))
            row = Row(p, (s, c), F(0), mpf(0), None, 0)
            values.append(dot(row.g, self.truth) + droop * c + self.noise * self.random.gauss(0, 1))
        base = -values[0] if first else big(F(str(zero)))
        readings = [{"at": t, "value": self.write(v + base)} for t, v in zip(at, values)]
        for r, text in zip(readings, [u] * len(at) if isinstance(u, str) else u or []):
            r["u"] = text
        one = {"probe": probe, "readings": readings}
        if sag:
            one["sag"] = sag
        if shared:
            one["u"] = shared
        return one

    def write(self, v):
        n = int(mp.nint(v / big(UNITS["length"][self.unit]) * 10**self.digits))
        return "%s %s" % (decimal(F(n, 10**self.digits)), self.unit)

    def input(self, sets, feet=None):
        new = {"view": self.view, "sets": sets}
        if feet:
            new["feet"] = feet
        return new


def readings(at, unit, *values): return [{"at": t, "value": "%s %s" % (v, unit)} for t, v in zip(at, values)]


# ---------------------------------------------------------------- vectors

REGIONS, WORST = {}, []
area = Area("fit", REGIONS)


def region(name, kind, about): REGIONS[name] = (kind, about)


def put(id, where, about, input, kind="multi_precision", by=None, published=None, holds=None):
    """Adds a vector; `holds` are numbers of the result (by flat's order) that are known beforehand."""
    fit = Fit(input)
    result, tolerance = fit.result(), tolerance_of(fit)
    assert fit.loose * fit.kappa < 1.5, "residuals, which count with the square of the condition: %s" % id
    for i, want in (holds or {}).items():
        assert abs(flat(result)[i] - want) < mpf(10) ** -30, (id, i, flat(result)[i])
    for unit in (1.0, 1e-6):  # an orthogonal solution in double precision, in mm and in nm, has to pass
        off = worst(input, result, tolerance, unit, householder)
        WORST.append((off, id))
        assert off < 0.5, (id, off)
    source = {"kind": kind, "by": by or "%s: QR of the whole weighted design" % MPMATH,
              "second": "%s, 110 digits: moments of each set, 4 x 4 equations, derivatives as differences; agrees to 30 digits" % GP}
    if published:
        source["published"] = published
        source["second"] = "%s; %s" % (MPMATH, source["second"])
    return area.add(id, "fit", where, flags_of(input, result, tolerance), about, source, input, result, tolerance)


def rounds_to(v, index, unit, digits, printed):
    """Asserts that a number of a result rounds to what was printed."""
    x = flat(v["result"])[index] / big(UNITS["length"][unit])
    assert mp.nstr(mp.nint(x * 10**digits)) == mp.nstr(mp.nint(mpf(printed) * 10**digits)), (v["id"], x, printed)


# Case A: offset 0.12 and -0.2 mm, slope 0.4 and -0.7 mm/m, as three dials of exact rigid shafts show it
RIM_A = readings(QUARTERS, "mm", "0", "0.363764", "0.456000", "0.091764")
FACE_A = readings(QUARTERS, "mm", "0", "0.082500", "0.105000", "0.022500")
BACK_A = readings(QUARTERS, "mm", "0", "-0.265127", "-0.330000", "-0.065127")
A_HOLDS = dict(enumerate([mpf("0.12"), mpf("0.0004"), mpf("-0.2"), mpf("-0.0007")]))
SIMULATED = "readings of two rigid shafts in exact three-dimensional geometry, to six decimals of a mm; answer: %s" % MPMATH

region("rim_face", "plain", "a rim and a face dial on one bracket")
rim_face = put("rim-face", "rim_face", "Rim and face at the quarters, both zeroed at 12: the rim's second order cancels over the full turn",
    {"view": "from_movable", "sets": [{"probe": rim("stationary", "40 mm"), "sag": "0 mm", "readings": RIM_A},
                                      {"probe": face("stationary", "75 mm"), "readings": FACE_A}],
     "feet": feet("300 mm", "900 mm")}, "simulation", SIMULATED, holds={**A_HOLDS, 4: mpf("-0.24"), 5: mpf("0.41"), 6: mpf("-0.48"), 7: mpf("0.83")})
c = Crew("-0.31", "0.55", "0.18", "-0.26", "from_stationary")
put("rim-face-other-end", "rim_face", "The crew stands at the stationary end and names 3 and 9 from there",
    c.input([c.sweep(rim("stationary", "62 mm"), QUARTERS, 1), c.sweep(face("stationary", "110 mm"), QUARTERS, "0.5")], feet("410 mm", "1130 mm")))
c = Crew("0.22", "-0.4", "0.35", "0.6")
put("rim-face-movable", "rim_face", "The movable shaft carries both dials; the bracket droops on the rim and pushes the face dial in at 12",
    c.input([c.sweep(rim("movable", "-55 mm"), QUARTERS, sag="0.14 mm"), c.sweep(face("movable", "90 mm"), QUARTERS, sag="0.03 mm")], feet("380 mm", "990 mm")))

region("two_rims", "plain", "reverse dials")
region("simulated", "plain", "readings of rigid shafts in exact three-dimensional geometry")
put("two-rims", "simulated", "Reverse dials at the quarters",
    {"view": "from_movable", "sets": [{"probe": rim("stationary", "40 mm"), "readings": RIM_A}, {"probe": rim("movable", "-50 mm"), "readings": BACK_A}],
     "feet": feet("350 mm", "1020 mm")}, "simulation", SIMULATED, holds=A_HOLDS)
c = Crew("-0.15", "0.35", "-0.28", "0.9", "from_stationary", digits=3)
put("two-rims-sag", "two_rims", "Reverse dials seen from the stationary end; each bracket has a droop of its own, which makes a false slope",
    c.input([c.sweep(rim("stationary", "210 mm"), FIVE, 2, sag="0.21 mm"), c.sweep(rim("movable", "-190 mm"), FIVE, 1, sag="0.16 mm")], feet("560 mm", "1480 mm")))
c = Crew("0.2", "-0.5", "0.1", "0.3", unit="mil", digits=1)
put("two-rims-mil", "two_rims", "Readings in thousandths of an inch, stations in millimetres, feet in inches",
    c.input([c.sweep(rim("stationary", "96 mm"), FIVE, first=True), c.sweep(rim("movable", "-104 mm"), FIVE, first=True)], feet("14 in", "38.5 in")))

region("sign_table", "plain", "one number at a time, as a table of signs has them")
Q = QUARTERS
flat_face = readings(Q, "mm", "0", "0", "0", "0")
region("parallel", "plain", "parallel shafts")
put("high", "parallel", "From the sign table: the movable shaft 0.10 mm high and parallel, seen by both rims",
    {"view": "from_movable", "sets": [{"probe": rim("stationary", "35 mm"), "readings": readings(Q, "mm", "0", "-0.10", "-0.20", "-0.10")},
                                      {"probe": rim("movable", "-45 mm"), "readings": readings(Q, "mm", "0", "0.10", "0.20", "0.10")}], "feet": feet("240 mm", "700 mm")},
    holds={0: 0, 1: 0, 2: mpf("0.1"), 3: 0, 5: mpf("-0.1"), 7: mpf("-0.1")})
put("towards-3", "sign_table", "From the sign table: 0.10 mm towards 3 and parallel, the face dial stands still; named from the stationary end",
    {"view": "from_stationary", "sets": [{"probe": rim("stationary", "-30 mm"), "readings": readings(Q, "mm", "0", "-0.10", "0", "0.10")},
                                         {"probe": face("stationary", "65 mm"), "readings": flat_face}], "feet": feet("260 mm", "720 mm")}, holds={0: mpf("0.1"), 1: 0, 2: 0, 3: 0})
put("slope-up", "sign_table", "From the sign table: the movable shaft rises 1 mm/m away from a coupling centre that is in line",
    {"view": "from_movable", "sets": [{"probe": rim("stationary", "0 mm"), "readings": flat_face},
                                      {"probe": face("movable", "50 mm"), "readings": readings(Q, "mm", "0", "-0.05", "-0.10", "-0.05")}], "feet": feet("230 mm", "710 mm")},
    holds={0: 0, 1: 0, 2: 0, 3: mpf("0.001"), 5: mpf("-0.23")})
put("exchanged", "sign_table", "From the sign table: case A with the machines' roles and the standpoint exchanged; slope to 3 and offset upwards change sign",
    {"view": "from_movable", "sets": [{"probe": rim("stationary", "50 mm"), "readings": readings(Q, "mm", "0", "-0.065127", "-0.330000", "-0.265127")},
                                      {"probe": rim("movable", "-40 mm"), "readings": readings(Q, "mm", "0", "0.091764", "0.456000", "0.363764")}], "feet": feet("-300 mm", "-900 mm")},
    "simulation", SIMULATED, holds=dict(enumerate([mpf("0.12"), mpf("-0.0004"), mpf("0.2"), mpf("-0.0007")])))

region("published", "plain", "worked examples of handbooks; 3 and 9, which the books leave out, chosen by the validity rule")
v = put("bloch-reverse", "published", "A handbook's reverse-dial example, vertical; sideways in line",
    {"view": "from_movable", "sets": [{"probe": rim("movable", "-7 in"), "readings": readings(Q, "in", "0", "0.012", "0.024", "0.012")},
                                      {"probe": rim("stationary", "7 in"), "readings": readings(Q, "in", "0", "-0.007", "-0.014", "-0.007")}],
     "feet": feet("19 in", "45 in")}, "published", "H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, ch. 5, p. 203 (read)",
    "inboard -0.0027 in, outboard +0.0066 in")
rounds_to(v, 5, "in", 4, "-0.0027"), rounds_to(v, 7, "in", 4, "0.0066")
v = put("mcmillan-rim-face", "published", "A handbook's rim-and-face example, vertical, without its growth; sideways in line",
    {"view": "from_movable", "sets": [{"probe": rim("stationary", "2 in"), "readings": readings(Q, "mil", "0", "-2", "-4", "-2")},
                                      {"probe": face("stationary", "6 in"), "readings": readings(Q, "mil", "0", "1.5", "3", "1.5")}],
     "feet": feet("18 in", "38 in")}, "published", "R. B. McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment, 2004, example 8-3, pp. 137-141 (read)",
    "foot positions -2 mils and -7 mils")
rounds_to(v, 5, "mil", 0, "2"), rounds_to(v, 7, "mil", 0, "7")

region("far_face", "plain", "plungers that point back")
region("straightedge", "plain", "feelers under a straightedge")
region("bore", "plain", "dials in a bore")
c = Crew("0.17", "0.8", "-0.33", "0.45")
put("bore-far-face", "far_face", "A dial in the bore and one on the far side of the flange: both count the other way",
    c.input([c.sweep(bore("stationary", "28 mm"), FIVE, "1.5"), c.sweep(far("stationary", "82 mm"), FIVE, 2)], feet("275 mm", "815 mm")))
straightedge = put("straightedge-gap", "straightedge", "A straightedge with feelers and an inside gauge; zeros are the difference of the radii and the mean gap",
    c.input([c.sweep(edge("stationary", "24 mm"), QUARTERS, "0.6"), c.sweep(gap("70 mm"), QUARTERS, "3.2")], feet("290 mm", "840 mm")))
c = Crew("-0.4", "-0.9", "0.5", "0.7", "from_stationary")
put("straightedge-movable", "straightedge", "The straightedge lies on the movable rim, and the crew stands at the stationary end",
    c.input([c.sweep(edge("movable", "-33 mm"), hours(0, 60, 120, 180, 240, 300), "0.9"), c.sweep(far("movable", "95 mm"), FIVE, "0.3")], feet("305 mm", "870 mm")))
rim_gap = put("bore-gap-sag", "bore", "A dial in the movable bore, from which its droop is added, and a gauge between the faces",
    c.input([c.sweep(bore("movable", "-42 mm"), FIVE, "1.1", sag="0.09 mm"), c.sweep(gap("88 mm"), QUARTERS, "4.4")], feet("320 mm", "960 mm")))

region("spacer", "plain", "face dials at the joints of a spacer")
c = Crew("1.6", "-0.8", "-2.3", "1.9")
spacer = put("spacer", "spacer", "A face dial at each joint of a spacer 1250 mm long, one bracket pushes its dial in at 12: offset and slope from the two tilts",
    c.input([c.sweep(joint("stationary", "130 mm", "1250 mm"), QUARTERS, 1, sag="0.02 mm"), c.sweep(joint("movable", "130 mm", "1250 mm"), QUARTERS, 1)], feet("980 mm", "2160 mm")))
c = Crew("-0.9", "1.4", "0.7", "-0.6", "from_stationary")
region("spacer_far", "plain", "plungers that point back at the joints of a spacer")
put("spacer-far", "spacer_far", "Plungers point back at both joints, on circles of different size; seen from the stationary end",
    c.input([c.sweep(far_joint("stationary", "115 mm", "620 mm"), FIVE, 2), c.sweep(far_joint("movable", "98 mm", "620 mm"), FIVE, 1, sag="-0.04 mm")], feet("640 mm", "1710 mm")))
c = Crew("0.8", "1.1", "-1.2", "0.4", unit="mil", digits=1)
put("spacer-rim", "spacer", "One joint is out of reach: a rim dial over the spacer's end stands in for it",
    c.input([c.sweep(joint("movable", "5.5 in", "40 in"), FIVE, 20), c.sweep(rim("stationary", "18.5 in"), QUARTERS, 40)], feet("34 in", "81 in")))

region("displacement", "plain", "displacement sensors, whose gain is not one")
c = Crew("0.26", "0.7", "-0.14", "-0.35", unit="mil", digits=1)
two_sensors = put("sensors", "displacement", "Two sensors in mils, one of which falls as the shaft comes nearer",
    c.input([c.sweep(displacement("-140 mm", -0.85), FIVE, "0.75"), c.sweep(displacement("165 mm", 1.25), FIVE, "-0.4")], feet("430 mm", "1240 mm")))
c = Crew("-0.36", "-0.2", "0.24", "0.8", "from_stationary", digits=3)
put("sensors-as-beam", "displacement", "The same law in another unit: gains of 40 and -25, seen from the stationary end",
    c.input([c.sweep(displacement("-85 mm", -25), hours(30, 90, 150, 210), 5), c.sweep(displacement("245 mm", 40), hours(30, 90, 150, 210), -3), c.sweep(gap("81 mm"), QUARTERS, 3)], feet("510 mm", "1390 mm")))

region("mixed_kinds", "plain", "four and more sets of different kinds, each with a zero of its own")
c = Crew("0.34", "-0.65", "-0.42", "0.27")
put("five-kinds", "mixed_kinds", "Rim, bore, face, gauge and sensor at once: four numbers and five zeros",
    c.input([c.sweep(rim("stationary", "38 mm"), QUARTERS, "0.2"), c.sweep(bore("movable", "-26 mm"), FIVE, 1), c.sweep(face("stationary", "77 mm"), QUARTERS, "-0.6"),
             c.sweep(gap("69 mm"), QUARTERS, "3.6"), c.sweep(displacement("152 mm", -1.6), FIVE, "0.4")], feet("340 mm", "760 mm", "1270 mm")))
c = Crew("-0.3", "0.5", "0.9", "-1.3", "from_stationary", digits=3)
mixed = put("spacer-and-edge", "mixed_kinds", "Joint faces of a spacer on both sides, a straightedge and a rim that droops, from the stationary end",
    c.input([c.sweep(joint("stationary", "105 mm", "480 mm"), QUARTERS, 1), c.sweep(far_joint("movable", "95 mm", "480 mm"), FIVE, 1), c.sweep(edge("movable", "-260 mm"), QUARTERS, "0.8"),
             c.sweep(rim("stationary", "255 mm"), FIVE, 2, sag="0.32 mm")], feet("590 mm", "1610 mm")))

region("many_sets", "plain", "more sets than are needed")
c = Crew("0.12", "0.33", "0.27", "-0.48", digits=3)
put("three-rims", "many_sets", "Three rims, two of them read from the stationary shaft",
    c.input([c.sweep(rim("stationary", "66 mm"), QUARTERS, "0.1"), c.sweep(rim("stationary", "148 mm"), FIVE, "0.7"), c.sweep(rim("movable", "-88 mm"), QUARTERS, "-0.2")], feet("405 mm", "1195 mm")))
c = Crew("-0.28", "-0.37", "-0.19", "0.52", "from_stationary", digits=3)
put("re-zeroed", "many_sets", "One rim swept three times and zeroed anew each time, and a face swept twice",
    c.input([c.sweep(rim("stationary", "51 mm"), QUARTERS, first=True), c.sweep(rim("stationary", "51 mm"), hours(90, 180, 270, 0), first=True),
             c.sweep(rim("stationary", "51 mm"), hours(180, 270, 0, 90), first=True), c.sweep(face("stationary", "84 mm"), QUARTERS, "0.35"),
             c.sweep(face("stationary", "84 mm"), hours(270, 0, 90), "-0.15")], feet("365 mm", "1085 mm")))

region("tape", "plain", "distances off the tape in inches and fractions")
c = Crew("0.25", "0.4", "-0.3", "0.6", unit="mil", digits=1)
put("fractions", "tape", "Stations and feet off the tape, readings in mils",
    c.input([c.sweep(rim("stationary", "3 5/8 in"), QUARTERS, 10), c.sweep(rim("movable", "-2 7/16 in"), QUARTERS, 20)], feet("11 3/4 in", "30 1/2 in")))
c = Crew("0.5", "-1.2", "0.8", "1.5", unit="in", digits=4)
put("sixty-fourths", "tape", "Inch readings, the gap off a taper gauge in 64ths, the radius in a whole number and a fraction",
    c.input([c.sweep(rim("movable", "-1 9/16 in"), QUARTERS, "0.1"), {"probe": gap("4 1/4 in"), "readings": readings(QUARTERS, "in", "9/64", "5/32", "1/8", "7/64")}], feet("1 ft", "2.5 ft")))

region("sag", "plain", "droops on rims, bores and faces")
c = Crew("0.11", "0.3", "0.05", "-0.2", digits=3)
sag = put("long-brackets", "sag", "Brackets across a long spacer droop by more than the misalignment",
    c.input([c.sweep(rim("stationary", "610 mm"), FIVE, 1, sag="0.64 mm"), c.sweep(rim("movable", "-590 mm"), FIVE, 1, sag="0.58 mm")], feet("1150 mm", "2350 mm")))
c = Crew("-0.13", "0.24", "0.16", "0.31", "from_stationary", digits=3)
put("face-sag", "sag", "A face dial that its bracket pulls off at 12, and a bore: droops of the other sign",
    c.input([c.sweep(bore("stationary", "47 mm"), FIVE, "0.8", sag="0.07 mm"), c.sweep(face("stationary", "93 mm"), FIVE, "0.3", sag="-0.05 mm")], feet("352 mm", "948 mm")))

region("zeros", "hard", "dials that stood anywhere")
c = Crew("0.09", "-0.14", "0.06", "0.21", digits=3)
put("zeros-far-apart", "zeros", "One dial near the end of its travel, one near its start: only differences within a set count",
    c.input([c.sweep(rim("stationary", "58 mm"), FIVE, "24.7"), c.sweep(rim("movable", "-63 mm"), FIVE, "-18.2")], feet("370 mm", "1060 mm")))
c = Crew("0.31", "0.16", "-0.22", "0.37", "from_stationary", digits=3)
put("zero-common", "zeros", "Both dials happen to have the same zero, which is not that of the first readings",
    c.input([c.sweep(rim("stationary", "71 mm"), hours(0, 90, 180), "4.125"), c.sweep(rim("movable", "-59 mm"), hours(90, 180, 270), "4.125")], feet("392 mm", "1112 mm")))

ARC = {360: (0, 13, "0.27", "0.18", "-0.16", "0.42"), 180: (60, 7, "-0.21", "0.36", "0.33", "-0.15"), 120: (200, 6, "0.14", "-0.52", "-0.37", "0.28"),
       90: (45, 5, "0.44", "0.12", "0.19", "-0.34"), 60: (110, 5, "-0.35", "0.47", "-0.12", "0.23"), 45: (285, 4, "0.52", "-0.26", "0.41", "0.13"),
       30: (150, 4, "-0.18", "-0.33", "0.57", "0.29")}
for width, (middle, count, *truth) in ARC.items():
    region("arc_%d" % width, "hard", "readings over %d degrees" % width)
    view = "from_stationary" if width in (180, 90, 45) else "from_movable"
    c = Crew(*truth, view, digits=3)
    k = list(ARC).index(width)
    other = face("stationary", "%d mm" % (72 + 9 * k)) if width in (360, 120, 45) else rim("movable", "-%d mm" % (120 + 7 * k))
    put("arc-%d" % width, "arc_%d" % width, "%d positions over %d degrees, %s" % (count, width, "rim and face" if width in (360, 120, 45) else "two rims"),
        c.input([c.sweep(rim("stationary", "%d mm" % (130 + 6 * k)), spread(middle, width, count), "0.5"), c.sweep(other, spread(middle, width, count), 1)],
                feet("%d mm" % (400 + 15 * k), "%d mm" % (1100 + 35 * k))))

region("crossing_12", "hard", "arcs that cross 12 o'clock")
c = Crew("0.29", "-0.41", "0.13", "0.36", digits=3)
put("crossing-12", "crossing_12", "From 10 to 2 o'clock, across 12, as hours",
    c.input([c.sweep(rim("stationary", "99 mm"), hours(300, 330, 0, 30, 60), "0.4"), c.sweep(rim("movable", "-107 mm"), hours(300, 330, 0, 30, 60), "0.6")], feet("415 mm", "1135 mm")))
c = Crew("-0.24", "0.19", "0.38", "0.44", "from_stationary", digits=3)
put("crossing-12-degrees", "crossing_12", "The same as degrees that run on past 360 in one set, and from below 0 in the other",
    c.input([c.sweep(rim("stationary", "83 mm"), degrees(310, 335, 360, 385, 410), "0.2"), c.sweep(face("stationary", "101 mm"), degrees(-50, -25, 0, 25, 50), "0.9")], feet("425 mm", "1155 mm")))

region("clock_forms", "hard", "clock positions in all their forms")
c = Crew("0.37", "0.22", "-0.28", "-0.46", digits=3)
put("clock-forms", "clock_forms", "Hours with minutes, degrees with fractions, negative ones and ones past a turn, all in one sweep",
    c.input([c.sweep(rim("stationary", "76 mm"), ["1:30", "37.5 deg", "-100 deg", "725 deg", "10:15"], "0.3"), c.sweep(rim("movable", "-94 mm"), ["7:45", "-12.25 deg", "480 deg", "2:10"], "0.7")], feet("435 mm", "1165 mm")))
c = Crew("-0.27", "0.31", "0.23", "0.39", "from_stationary", digits=3)
put("clock-odd", "clock_forms", "Degrees that an electronic inclinometer shows, named from the stationary end",
    c.input([c.sweep(rim("stationary", "113 mm"), degrees("12.73", "141.08", "-97.91"), "0.25"), c.sweep(face("stationary", "89 mm"), degrees("-171.36", "63.417", "329.5"), "0.15")], feet("445 mm", "1185 mm")))

region("three_readings", "hard", "three readings to a set, with nothing left over")
c = Crew("0.16", "0.53", "-0.45", "0.34", unit="mil", digits=1)
three = put("three-readings", "three_readings", "Three readings in mils to each rim: values without residuals, and no word on their uncertainty",
    c.input([c.sweep(rim("stationary", "87 mm"), hours(0, 90, 180), first=True), c.sweep(rim("movable", "-92 mm"), hours(0, 90, 180), first=True)], feet("455 mm", "1205 mm")))
c = Crew("-0.39", "-0.28", "0.21", "-0.56", "from_stationary", digits=3)
put("three-uneven", "three_readings", "Three uneven positions, other ones on rim and bore, that droop",
    c.input([c.sweep(rim("stationary", "61 mm"), hours(20, 150, 215), "1.2", sag="0.11 mm"), c.sweep(bore("movable", "-73 mm"), hours(95, 200, 330), "0.8", sag="0.06 mm")], feet("465 mm", "1225 mm")))

region("repeated", "hard", "the same position read more than once")
c = Crew("0.23", "0.27", "0.32", "-0.21", digits=3, seed=11, noise=0.003)
repeated = put("repeated", "repeated", "12 and 6 read twice, 3 and 9 once: a mean counts double",
    c.input([c.sweep(rim("stationary", "69 mm"), hours(0, 90, 180, 270, 0, 180), "0.5"), c.sweep(face("stationary", "78 mm"), hours(0, 90, 180, 270, 180, 0), "0.5")], feet("475 mm", "1245 mm")))
c = Crew("-0.33", "0.14", "-0.26", "0.17", "from_stationary", digits=3, seed=12, noise=0.003)
put("return-reading", "repeated", "A sweep that ends with the return to 12, in degrees; the return counts as one more reading",
    c.input([c.sweep(rim("stationary", "79 mm"), degrees(0, 90, 180, 270, 360), "0.4"), c.sweep(rim("movable", "-81 mm"), degrees(0, 90, 180, 270, 360), "0.6")], feet("485 mm", "1265 mm")))

region("sixty_readings", "hard", "a sweep that an instrument takes by itself")
c = Crew("0.19", "-0.23", "-0.31", "0.24", digits=3, seed=21, noise=0.004)
put("sixty", "sixty_readings", "Thirty readings by each of two sensors over two thirds of a turn, with scatter",
    c.input([c.sweep(displacement("-120 mm", -1.0), spread(75, 240, 30), "0.1"), c.sweep(displacement("132 mm", 0.92), spread(80, 240, 30), "-0.2")], feet("495 mm", "1285 mm")))

region("amplitude_zero", "hard", "machines in line: nothing but the zeros is read")
put("amplitude-zero", "amplitude_zero", "Both dials stand still at values of their own",
    {"view": "from_movable", "sets": [{"probe": rim("stationary", "54 mm"), "readings": readings(FIVE, "mm", *["1.37"] * 5)},
                                      {"probe": face("stationary", "67 mm"), "readings": readings(FIVE, "mm", *["-0.82"] * 5)}], "feet": feet("505 mm", "1305 mm")},
    holds={0: 0, 1: 0, 2: 0, 3: 0})
put("amplitude-sag", "amplitude_zero", "What the dials show is droop and nothing else, from the stationary end",
    {"view": "from_stationary", "sets": [{"probe": rim("stationary", "143 mm"), "sag": "0.13 mm", "readings": readings(Q, "mm", "0", "-0.13", "-0.26", "-0.13")},
                                         {"probe": rim("movable", "-137 mm"), "sag": "0.12 mm", "readings": readings(Q, "mm", "0", "-0.12", "-0.24", "-0.12")}], "feet": feet("515 mm", "1325 mm")},
    holds={0: 0, 1: 0, 2: 0, 3: 0})

region("huge_offset", "hard", "a huge offset with a small slope")
c = Crew("-18.75", "0.02", "22.4", "-0.03", digits=3)
put("huge-offset", "huge_offset", "A machine just set down: offset of 29 mm, slope of a few hundredths of a mm/m",
    c.input([c.sweep(rim("stationary", "4 1/4 in"), QUARTERS, 25), c.sweep(rim("movable", "-116 mm"), QUARTERS, 25)], feet("525 mm", "1345 mm")))
c = Crew("41.2", "-0.015", "-37.9", "0.025", "from_stationary", digits=3)
put("huge-offset-face", "huge_offset", "An offset of 56 mm, and a face dial that sees hundredths of a mm/m; the bracket droops too",
    c.input([c.sweep(rim("movable", "-64 mm"), FIVE, 60, sag="0.08 mm"), c.sweep(face("movable", "125 mm"), FIVE, "0.01")], feet("535 mm", "1365 mm")))

region("far_feet", "hard", "feet far from the coupling, or on the other side of it")
c = Crew("0.07", "0.18", "-0.05", "-0.29", digits=3)
far_feet = put("far-feet", "far_feet", "A long generator: feet to 12 m, seen by rims 180 mm apart",
    c.input([c.sweep(rim("stationary", "86 mm"), FIVE, "0.1"), c.sweep(rim("movable", "-94 mm"), FIVE, "0.2")], feet("1.85 m", "6.4 m", "12.1 m")))
c = Crew("-0.17", "0.26", "0.15", "0.09", "from_stationary", digits=3)
put("feet-behind", "far_feet", "An overhung machine whose inboard feet stand behind the coupling centre",
    c.input([c.sweep(rim("stationary", "72 mm"), FIVE, "0.3"), c.sweep(face("stationary", "116 mm"), FIVE, "0.2", sag="0.02 mm")], feet("-240 mm", "0 mm", "3950 mm")))

region("slope_near_zero", "hard", "slopes near zero")
c = Crew("0.24", "0.000002", "0.31", "-0.000001", digits=6)
put("slope-near-zero", "slope_near_zero", "Slopes of a few nanometres over a metre beside offsets of a third of a millimetre",
    c.input([c.sweep(rim("stationary", "1000 mm"), QUARTERS, "0.4"), c.sweep(rim("movable", "-1000 mm"), QUARTERS, "0.4")], feet("1545 mm", "2385 mm")))
put("parallel", "slope_near_zero", "Exactly parallel: both rims read the same, but for the sign of the carrier; no feet",
    {"view": "from_stationary", "sets": [{"probe": rim("stationary", "102 mm"), "readings": readings(Q, "mm", "0", "0.19", "0.46", "0.27")},
                                         {"probe": bore("stationary", "-98 mm"), "readings": readings(Q, "mm", "0.5", "0.31", "0.04", "0.23")}]}, holds={1: 0, 3: 0})

region("other_units", "hard", "very small and very large numbers, other units")
c = Crew("0.000085", "0.00021", "-0.000064", "0.00018", unit="nm", digits=0)
put("nanometres", "other_units", "An instrument's spindle: readings in nanometres, stations in centimetres, feet in feet",
    c.input([c.sweep(rim("stationary", "12.5 cm"), hours(0, 120, 240), 40), c.sweep(rim("movable", "-0.1875 m"), hours(0, 120, 240), 25)], feet("1.5 ft", "3.25 ft")))
c = Crew("350", "9", "-270", "14", "from_stationary", unit="m", digits=4)
put("metres", "other_units", "A hydro set before the rough setting: readings in metres, and the face's in feet, from the stationary end",
    c.input([c.sweep(rim("stationary", "0.85 m"), QUARTERS, 500), {"probe": face("stationary", "3 ft"), "readings": readings(QUARTERS, "ft", "0.0125", "0.0635", "0.0875", "0.0365")}], feet("2.4 m", "7.9 m")))

region("scatter", "hard", "readings that do not agree, no uncertainty stated")
c = Crew("0.28", "-0.35", "0.22", "0.48", digits=3, seed=31, noise=0.006)
put("scatter", "scatter", "Eight readings a dial with a scatter of 6 um: all count alike, and the result has no u",
    c.input([c.sweep(rim("stationary", "91 mm"), hours(*range(0, 360, 45)), "0.5"), c.sweep(rim("movable", "-97 mm"), hours(*range(0, 360, 45)), "0.5")], feet("555 mm", "1405 mm")))
put("scatter-misfit", "scatter", "Quarters that miss the validity rule by 0.04 mm on the rim, named from the stationary end",
    {"view": "from_stationary", "sets": [{"probe": rim("stationary", "53 mm"), "readings": readings(Q, "mm", "0", "0.21", "0.33", "0.16")},
                                         {"probe": gap("71 mm"), "readings": readings(Q, "mm", "3.05", "3.02", "2.96", "3.01")}], "feet": feet("565 mm", "1425 mm")})

# ---- stated uncertainties

region("sine_fit", "plain", "sine fits that can be solved by hand")
y = ["1", "-2", "-2", "1", "5"]
at = degrees(-90, -45, 0, 45, 90)
five = [{"at": t, "value": v + " mm", "u": "0.1 mm"} for t, v in zip(at, y)]
back = [{"at": t, "value": decimal(-F(v)) + " mm", "u": "0.1 mm"} for t, v in zip(at, y)]
v = put("sine-five", "sine_fit", "Five readings over half a turn, the same by two rims 100 mm before and behind the centre: the offset is the sine fit",
    {"view": "from_movable", "sets": [{"probe": rim("stationary", "100 mm"), "readings": five}, {"probe": rim("movable", "-100 mm"), "readings": back}], "feet": feet("0 mm", "575 mm")})
got = flat(v["result"])
assert abs(got[0] - mpf("2.04044")) < mpf("5e-6") and abs(got[2] + mpf("4.98090")) < mpf("5e-6"), got
s = mp.sqrt(mpf("0.0110231") / 2)  # the scatter that the hand fit found; two sets make its uncertainties smaller by sqrt 2
assert abs(got[6] * mp.sqrt(2) * s * 10 - mpf("0.0812780")) < mpf("5e-7") and abs(got[4] * mp.sqrt(2) * s * 10 - mpf("0.0428625")) < mpf("5e-7"), got
v = put("sine-three", "sine_fit", "Readings at -30, 0 and 30 degrees of 0, 1 and 3 mm, by two bores: cosine -(2 + sqrt 3), sine 3; no feet",
    {"view": "from_stationary", "sets": [{"probe": bore("movable", "150 mm"), "readings": readings(degrees(-30, 0, 30), "mm", "0", "1", "3")},
                                         {"probe": bore("movable", "-150 mm"), "readings": readings(degrees(-30, 0, 30), "mm", "0", "1", "3")}]},
    holds={0: -3, 1: 0, 2: -2 - mp.sqrt(3), 3: 0})

region("one_u", "plain", "one uncertainty for all readings of a set")
c = Crew("0.12", "0.25", "-0.15", "0.5", digits=3)
v = put("one-u", "one_u", "Reverse dials, each reading known to 0.01 mm: the far foot is known far worse than the near one",
    c.input([c.sweep(rim("stationary", "200 mm"), QUARTERS, "0.2", shared={"reading": "0.01 mm"}), c.sweep(rim("movable", "-100 mm"), QUARTERS, "0.1", shared={"reading": "0.01 mm"})], feet("585 mm", "1445 mm")))
uw = mpf("0.01") / mp.sqrt(2)
got = flat(v["result"])
assert abs(got[4] - uw * mp.sqrt(5) / 3) < mpf(10) ** -33 and abs(got[5] - mp.sqrt(2) * uw / 300) < mpf(10) ** -33
assert abs(got[10] - uw * mp.hypot(685, 385) / 300) < mpf(10) ** -33
c = Crew("-0.22", "0.15", "0.2", "-0.4", "from_stationary", digits=3, seed=41, noise=0.005)
put("set-u", "one_u", "A rim dial read to 5 um and a gauge read to 20 um, with scatter: what is stated counts, not what is found",
    c.input([c.sweep(rim("stationary", "65 mm"), hours(0, 60, 120, 180, 240, 300), "0.2", shared={"reading": "5 um"}), c.sweep(gap("85 mm"), FIVE, 3, shared={"reading": "0.02 mm"})], feet("595 mm", "1465 mm")))

region("weights", "hard", "uncertainties of different size")
c = Crew("0.32", "-0.18", "0.26", "0.38", digits=3, seed=51, noise=0.012)
weights = put("reading-u", "weights", "Two of six readings were taken past a bolt head and are ten times worse",
    c.input([c.sweep(rim("stationary", "73 mm"), hours(*range(0, 360, 60)), "0.3", u=["2 um", "2 um", "0.02 mm", "2 um", "2 um", "0.02 mm"]),
             c.sweep(face("stationary", "92 mm"), hours(*range(0, 360, 60)), "0.2", u=["3 um", "0.03 mm", "3 um", "3 um", "3 um", "3 um"])], feet("605 mm", "1485 mm")))
c = Crew("-0.25", "0.34", "-0.17", "0.29", "from_stationary", digits=3, seed=52, noise=0.01)
over = c.input([c.sweep(rim("stationary", "84 mm"), QUARTERS + hours(45), "0.4", shared={"reading": "0.004 mm"}), c.sweep(rim("movable", "-76 mm"), FIVE, "0.6", shared={"reading": "0.5 mil"})], feet("615 mm", "1505 mm"))
over["sets"][0]["readings"][4]["u"] = "0.05 mm"
put("reading-over-set", "weights", "A reading's own uncertainty goes before that of its set; one set in mils, from the stationary end", over)
c = Crew("0.2", "0.2", "-0.2", "0.1", digits=3)
put("wide-u", "weights", "Uncertainties from a tenth of a micrometre to a millimetre, readings that agree to the last digit; one bore droops",
    c.input([c.sweep(rim("stationary", "100 mm"), QUARTERS, "0.3", u=["0.1 um", "10 um", "1 mm", "1 um"]), c.sweep(bore("stationary", "-100 mm"), QUARTERS, "0.7", sag="0.05 mm", u=["1 um", "0.5 um", "2 um", "0.1 mm"])], feet("625 mm", "1525 mm")))

READ = "0.004 mm"
region("u_station", "plain", "an uncertain station")
c = Crew("0.4", "1.2", "-0.6", "-0.9", digits=3)
put("u-station", "u_station", "The tape was read to 1 mm at both rims: an error that no number of readings takes out",
    c.input([c.sweep(rim("stationary", "120 mm"), QUARTERS, "0.5", shared={"reading": READ, "station": "1 mm"}), c.sweep(rim("movable", "-80 mm"), QUARTERS, "0.5", shared={"reading": READ, "station": "1.5 mm"})], feet("635 mm", "1545 mm")))
region("u_radius", "plain", "an uncertain radius")
c = Crew("0.1", "1.5", "0.2", "-2", "from_stationary", digits=3)
put("u-radius", "u_radius", "The circle of the plunger is known to 2 mm; from the stationary end",
    c.input([c.sweep(rim("stationary", "40 mm"), QUARTERS, "0.2", shared={"reading": READ}), c.sweep(face("stationary", "100 mm"), QUARTERS, "0.1", shared={"reading": READ, "radius": "2 mm"})], feet("645 mm", "1565 mm")))
c = Crew("1.2", "0.8", "-0.8", "1.6", digits=3)
put("u-radius-joint", "u_radius", "Both circles at the joints of a spacer are uncertain, which spoils offset and slope alike",
    c.input([c.sweep(joint("stationary", "100 mm", "800 mm"), QUARTERS, 1, shared={"reading": READ, "radius": "1 mm"}), c.sweep(joint("movable", "120 mm", "800 mm"), QUARTERS, 1, shared={"reading": READ, "radius": "1.5 mm"})], feet("655 mm", "1585 mm")))
region("u_sag", "plain", "an uncertain droop")
c = Crew("0.15", "0.4", "0.25", "-0.3", digits=3)
put("u-sag", "u_sag", "The droop of each bracket is known to 0.02 mm: the vertical plane alone gets worse",
    c.input([c.sweep(rim("stationary", "150 mm"), FIVE, "0.5", sag="0.18 mm", shared={"reading": READ, "sag": "0.02 mm"}), c.sweep(rim("movable", "-130 mm"), FIVE, "0.5", sag="0.15 mm", shared={"reading": READ, "sag": "0.02 mm"})], feet("665 mm", "1605 mm")))
c = Crew("-0.35", "0.25", "0.3", "0.45", "from_stationary", digits=3)
put("u-sag-bore", "u_sag", "A bore's and a face's droop are uncertain, the face's pulls off at 12; readings scatter a little by rounding, which a droop does not mind",
    c.input([c.sweep(bore("stationary", "56 mm"), FIVE, "0.7", sag="0.06 mm", shared={"reading": READ, "sag": "0.01 mm"}), c.sweep(face("stationary", "87 mm"), FIVE, "0.2", sag="-0.03 mm", shared={"reading": "0.003 mm", "sag": "8 um"})], feet("675 mm", "1625 mm")))
region("u_clock", "plain", "an uncertain clock")
c = Crew("0.7", "0.5", "-0.9", "0.6", digits=3)
put("u-clock", "u_clock", "All positions of a sweep are off by the same angle, known to a degree: each plane gets a share of the other",
    c.input([c.sweep(rim("stationary", "100 mm"), QUARTERS, "0.5", shared={"reading": READ, "clock": "1 deg"}), c.sweep(rim("movable", "-100 mm"), QUARTERS, "0.5", shared={"reading": READ, "clock": "15 mrad"})], feet("685 mm", "1645 mm")))
c = Crew("-0.8", "0.9", "0.6", "1.1", "from_stationary", digits=3)
put("u-clock-arc", "u_clock", "The same on a third of a turn with three readings, from the stationary end",
    c.input([c.sweep(rim("stationary", "95 mm"), hours(300, 0, 60), "0.5", shared={"reading": READ, "clock": "0.02 rad"}), c.sweep(face("stationary", "105 mm"), hours(30, 90, 150), "0.5", shared={"reading": READ, "clock": "0.5 deg"})], feet("695 mm", "1665 mm")))
region("u_feet", "plain", "uncertain stations of feet")
c = Crew("0.3", "1.6", "-0.5", "-2.2", digits=3)
put("u-feet", "u_feet", "Feet known to 5 and 10 mm on a steep slope",
    c.input([c.sweep(rim("stationary", "110 mm"), QUARTERS, "0.5", shared={"reading": READ}), c.sweep(rim("movable", "-90 mm"), QUARTERS, "0.5", shared={"reading": READ})], feet("705 mm", "1685 mm", u=["5 mm", "10 mm"])))
region("u_all", "hard", "all shared uncertainties together")
c = Crew("0.5", "1.4", "-0.7", "1.8", digits=3)
u_all = put("u-all", "u_all", "Station, radius, droop and clock, all uncertain, and the feet as well; quarters that lie exactly on the law",
    c.input([c.sweep(rim("stationary", "50 mm"), QUARTERS, "0.6", sag="0.12 mm", shared={"reading": READ, "station": "1 mm", "sag": "0.015 mm", "clock": "0.8 deg"}),
             c.sweep(face("stationary", "100 mm"), QUARTERS, "0.4", sag="-0.02 mm", shared={"reading": READ, "radius": "1.2 mm", "sag": "0.01 mm", "clock": "0.8 deg"})], feet("715 mm", "1705 mm", u=["2 mm", "3 mm"])))
c = Crew("-0.6", "-1.1", "0.8", "0.9", "from_stationary", digits=3)
region("u_all_uneven", "hard", "all shared uncertainties, and readings of different uncertainty at uneven positions")
put("u-all-three", "u_all_uneven", "Three readings to a set on half a turn, from the stationary end; a bore, a far face, readings of different uncertainty",
    c.input([c.sweep(bore("movable", "-68 mm"), hours(0, 75, 150), "0.6", sag="0.1 mm", u=["3 um", "6 um", "4 um"], shared={"station": "0.8 mm", "sag": "0.012 mm", "clock": "12 mrad"}),
             c.sweep(far("movable", "112 mm"), hours(200, 280, 20), "0.4", sag="0.03 mm", u=["5 um", "4 um", "9 um"], shared={"radius": "1 mm", "sag": "9 um", "clock": "9 mrad"})], feet("725 mm", "1725 mm", u=["4 mm", "6 mm"])))
c = Crew("0.5", "-0.75", "0.25", "1.25", digits=4)
put("u-all-joints", "u_all", "Joints of a spacer with droop and clock uncertain, and a sensor whose station is",
    c.input([c.sweep(joint("stationary", "100 mm", "500 mm"), QUARTERS, "0.6", sag="0.02 mm", shared={"reading": READ, "radius": "1 mm", "sag": "6 um", "clock": "0.6 deg"}),
             c.sweep(far_joint("movable", "100 mm", "500 mm"), QUARTERS, "0.6", sag="-0.01 mm", shared={"reading": READ, "radius": "1 mm", "sag": "6 um", "clock": "0.6 deg"}),
             c.sweep(displacement("-240 mm", -2.0), QUARTERS, "0.1", shared={"reading": "0.006 mm", "station": "2 mm", "clock": "1.5 deg"})], feet("735 mm", "1745 mm")))
region("shared_scatter", "hard", "shared uncertainties with readings that do not agree")
c = Crew("0.45", "1.3", "-0.55", "0.95", digits=3, seed=61, noise=0.01)
put("shared-scatter", "shared_scatter", "Uneven positions with a scatter of 10 um; station and clock are uncertain; two rims, so that the residuals have no share",
    c.input([c.sweep(rim("stationary", "128 mm"), hours(0, 40, 95, 130, 200), "0.5", shared={"reading": "0.01 mm", "station": "2 mm", "clock": "2 deg"}),
             c.sweep(rim("movable", "-112 mm"), hours(10, 75, 120, 180, 235), "0.5", shared={"reading": "0.01 mm", "station": "2 mm", "clock": "2 deg"})], feet("745 mm", "1765 mm")))
region("shared_residuals", "hard", "more sets than needed that do not agree: what is shared moves the answer by way of the residuals as well")
c = Crew("0.35", "1.1", "-0.45", "0.85", unit="mil", digits=1, seed=62, noise=0.015)
put("shared-residuals", "shared_residuals", "Three rims in mils with a scatter of 15 um, each station known to 2 mm",
    c.input([c.sweep(rim("stationary", "90 mm"), hours(0, 50, 110, 190), "0.5", shared={"reading": "0.01 mm", "station": "2 mm"}),
             c.sweep(rim("stationary", "170 mm"), hours(20, 95, 160, 300), "0.5", shared={"reading": "0.01 mm", "station": "2 mm"}),
             c.sweep(rim("movable", "-105 mm"), FIVE, "0.5", shared={"reading": "0.01 mm", "station": "2 mm"})], feet("748 mm", "1772 mm")))
c = Crew("-0.55", "0.9", "0.4", "-1.2", "from_stationary", digits=3, seed=63, noise=0.012)
put("shared-residuals-face", "shared_residuals", "A rim and two faces that contradict each other a little; the radii are known to 3 mm; from the stationary end",
    c.input([c.sweep(rim("stationary", "44 mm"), FIVE, "0.4", shared={"reading": "8 um"}),
             c.sweep(face("stationary", "96 mm"), hours(0, 70, 150, 230), "0.3", shared={"reading": "8 um", "radius": "3 mm"}),
             c.sweep(face("movable", "122 mm"), hours(35, 100, 185, 290), "0.2", shared={"reading": "8 um", "radius": "3 mm"})], feet("752 mm", "1778 mm")))
c = Crew("0.65", "-0.7", "0.35", "1.05", digits=3, seed=64, noise=0.01)
put("shared-residuals-clock", "shared_residuals", "A bore that droops and two rims of different uncertainty; the clock of each is known to 2 degrees",
    c.input([c.sweep(bore("stationary", "31 mm"), FIVE, "0.9", sag="0.05 mm", shared={"reading": "0.01 mm", "clock": "2 deg"}),
             c.sweep(rim("stationary", "140 mm"), hours(0, 55, 140, 215), "0.5", shared={"reading": "6 um", "clock": "2 deg"}),
             c.sweep(rim("movable", "-125 mm"), hours(25, 105, 175, 295), "0.5", shared={"reading": "0.02 mm", "clock": "2 deg"})], feet("758 mm", "1784 mm")))

# ---- bad condition

region("close_rims", "hard", "rims so close together that the slope hangs on a hair")
c = Crew("0.21", "0.43", "-0.34", "0.25", digits=6)
put("close-rims", "close_rims", "Two rims 2 mm apart, and both 20 m from the point that is called the coupling centre; one bracket droops",
    c.input([c.sweep(rim("stationary", "20000 mm"), hours(0, 90, 180), 1, sag="0.07 mm"), c.sweep(rim("movable", "20002 mm"), hours(0, 90, 180), 2)], feet("19.4 m", "21.2 m")))
c = Crew("-0.14", "0.37", "0.28", "0.31", "from_stationary", digits=6)
put("close-rims-u", "close_rims", "Rims 0.5 mm apart 5 m from the coupling centre, readings with uncertainties of their own",
    c.input([c.sweep(rim("stationary", "4999.75 mm"), hours(0, 90, 180), "0.5", u=["1 um", "2 um", "3 um"]), c.sweep(rim("stationary", "5000.25 mm"), hours(270, 0, 90), "0.5", u=["2 um", "1 um", "2 um"])], feet("4.5 m", "5.75 m")))
region("short_arc", "hard", "arcs of a few degrees: the zero and the two planes are hard to tell apart")
c = Crew("0.36", "0.22", "-0.41", "0.57", digits=6)
put("arc-2", "short_arc", "Three positions over two degrees, rim and face",
    c.input([c.sweep(rim("stationary", "103 mm"), spread(33, 2, 3), "0.5"), c.sweep(face("stationary", "118 mm"), spread(33, 2, 3), "0.5")], feet("755 mm", "1785 mm")))
c = Crew("-0.29", "0.48", "0.35", "-0.27", "from_stationary", digits=6)
put("arc-1", "short_arc", "One degree, across 12 o'clock, two rims, with uncertainties that the arc blows up ten thousandfold",
    c.input([c.sweep(rim("stationary", "300 mm"), spread(0, 1, 3), "0.5", shared={"reading": "1 um"}), c.sweep(rim("movable", "-280 mm"), spread(0, 1, 3), "0.5", shared={"reading": "1 um"})], feet("765 mm", "1805 mm")))
c = Crew("0.43", "-0.39", "0.24", "0.18", unit="mil", digits=1)
put("arc-half", "short_arc", "Half a degree, in mils, whatever that may be worth: the numbers follow all the same; the bracket droops",
    c.input([c.sweep(rim("stationary", "11 1/2 in"), spread(120, 0.5, 3), 20, sag="2 mil"), c.sweep(rim("movable", "-12 1/4 in"), spread(120, 0.5, 3), 30, sag="3 mil")], feet("33 in", "72 in")))
region("close_and_short", "hard", "rims close together, read over a few degrees: conditions of a million and more")
c = Crew("0.33", "0.41", "-0.23", "0.36", digits=6)
put("close-short", "close_and_short", "Four degrees by a rim and a bore 5 mm apart, 0.8 m from the coupling centre",
    c.input([c.sweep(rim("stationary", "800 mm"), spread(70, 4, 3), "0.5"), c.sweep(bore("stationary", "805 mm"), spread(70, 4, 3), "0.5")], feet("1.1 m", "1.9 m")))
c = Crew("-0.38", "0.29", "0.17", "0.44", "from_stationary", digits=6)
put("close-short-u", "close_and_short", "Two degrees by sensors 4 mm apart, 1.5 m from the coupling centre, each reading known to a few nanometres",
    c.input([c.sweep(displacement("-1502 mm", 0.8), spread(215, 2, 3), "0.1", shared={"reading": "5 nm"}), c.sweep(displacement("-1498 mm", -1.2), spread(215, 2, 3), "0.2", shared={"reading": "8 nm"})], feet("1.2 m", "2.1 m")))

# ---------------------------------------------------------------- refusals


def bad(id, twin, code, pointer, value, about, at=None):
    """One thing changed at `pointer`; the fault is there, or at `at`. The region bears the name of the fault."""
    region(id.replace("-", "_"), "invalid", about[0].lower() + about[1:])
    area.refuse(id, twin, id.replace("-", "_"), code, at or pointer, changed(twin["input"], pointer, value), about)


bad("no-view", rim_face, "missing", "/view", None, "Nothing said of the crew's standpoint")
bad("no-sets", rim_face, "missing", "/sets", [], "No set at all")
bad("no-readings", rim_face, "missing", "/sets/1/readings", [], "A probe without readings")
bad("no-probe", rim_face, "missing", "/sets/0/probe", None, "Readings without their probe")
bad("no-kind", rim_face, "missing", "/sets/0/probe/kind", None, "A probe of no kind")
bad("no-station", rim_face, "missing", "/sets/0/probe/station", None, "A rim without its station")
bad("no-radius", rim_face, "missing", "/sets/1/probe/radius", None, "A face dial without the radius of its circle")
bad("no-carrier", rim_face, "missing", "/sets/0/probe/carrier", None, "A rim dial of which nobody knows what carries it")
bad("no-span", spacer, "missing", "/sets/0/probe/span", None, "A spacer's joint without the spacer's length")
bad("no-gain", two_sensors, "missing", "/sets/1/probe/gain", None, "A sensor without its gain")
bad("no-at", rim_face, "missing", "/sets/0/readings/2/at", None, "A reading without its position")
bad("no-value", three, "missing", "/sets/1/readings/1/value", None, "A position without its reading")
bad("no-foot-name", rim_face, "missing", "/feet/1/name", None, "A foot without a name")
bad("no-foot-station", rim_face, "missing", "/feet/0/x", None, "A foot without its station")
bad("zero-radius", rim_face, "out_of_range", "/sets/1/probe/radius", "0 mm", "A circle of no size")
bad("negative-radius", rim_gap, "out_of_range", "/sets/1/probe/radius", "-88 mm", "A negative radius")
bad("zero-span", spacer, "out_of_range", "/sets/1/probe/span", "0 mm", "A spacer without length")
bad("zero-gain", two_sensors, "out_of_range", "/sets/0/probe/gain", 0, "A sensor that answers to nothing")
bad("negative-u", weights, "out_of_range", "/sets/0/readings/3/u", "-2 um", "A negative uncertainty of a reading")
bad("negative-shared-u", u_all, "out_of_range", "/sets/0/u/station", "-1 mm", "A negative uncertainty of a station")
bad("negative-sag", sag, "out_of_range", "/sets/1/sag", "-0.58 mm", "A bracket on a rim that droops upwards")
bad("sag-on-gap", rim_gap, "conflict", "/sets/1/sag", "0.05 mm", "A droop for a gauge, which hangs on no bracket")
bad("span-on-rim", rim_face, "conflict", "/sets/0/probe/span", "500 mm", "A spacer's length for a rim")
bad("station-on-face", rim_face, "conflict", "/sets/1/probe/station", "40 mm", "A station for a face dial, which reads the same at each")
bad("carrier-on-gap", straightedge, "conflict", "/sets/1/probe/carrier", "stationary", "A carrier for a gauge between the faces")
bad("gain-on-rim", rim_face, "conflict", "/sets/0/probe/gain", 1, "A gain for a dial")
bad("unknown-kind", rim_face, "unknown", "/sets/1/probe/kind", "side_face", "A kind of probe that there is not")
bad("unknown-carrier", rim_face, "unknown", "/sets/0/probe/carrier", "pump", "A carrier that is neither of the two")
bad("unknown-view", rim_face, "unknown", "/view", "from_above", "A standpoint that there is not")
bad("unknown-member", rim_face, "unknown", "/sets/1/probe/raduis", "80 mm", "A misspelt member beside the right one, with another value")
bad("no-unit", rim_face, "malformed", "/sets/0/probe/station", "40", "A station without a unit")
bad("comma", mixed, "malformed", "/sets/0/readings/1/value", "1,095 mm", "A comma for the decimal point: a thousand, or one?")
bad("bare-number", rim_face, "malformed", "/feet/0/x", 300, "A number where a quantity belongs, as text with its unit")
bad("no-clock", repeated, "malformed", "/sets/0/readings/1/at", "towards the door", "A position that is no clock position")
bad("one-set", rim_face, "unseen", "/sets/1", None, "A rim alone: its offset and slope cannot be told apart", "/sets")
bad("one-direction", three, "unseen", "/sets/1/readings/2", None, "Two readings on one rim, at 12 and 3: it sees one direction only", "/sets")
c = Crew("0.18", "-0.44", "0.36", "0.27", "from_stationary", digits=3)
region("few_readings", "hard", "sets that cannot stand alone, and see all four numbers together")
joined = put("three-dials", "few_readings", "One rim all round, and two of which one saw up and down only, the other sideways only",
    c.input([c.sweep(rim("stationary", "57 mm"), QUARTERS, "0.3"), c.sweep(rim("movable", "-61 mm"), hours(0, 180), "0.4"), c.sweep(rim("movable", "-77 mm"), hours(90, 270), "0.2")], feet("775 mm", "1825 mm")))
c = Crew("-0.26", "0.13", "0.41", "-0.58", digits=3)
two_faces = put("two-faces-rim", "few_readings", "Two faces and a rim, read at three positions each; the faces see the slope only",
    c.input([c.sweep(face("stationary", "63 mm"), hours(0, 90, 180), "0.3"), c.sweep(far("movable", "96 mm"), hours(0, 90, 180), "0.4"), c.sweep(rim("movable", "-48 mm"), hours(180, 270, 0), "0.2")], feet("785 mm", "1845 mm")))
bad("faces-only", two_faces, "unseen", "/sets/2", None, "Faces only: the offset is not seen", "/sets")
bad("one-position", joined, "unseen", "/sets/2/readings/1/at", "3:00", "Both readings of a rim at the same position: it sees nothing", "/sets")
bad("one-station", sag, "unseen", "/sets/1/probe/station", "610 mm", "Both rims at one station: no slope", "/sets")
bad("duplicate-third-foot", far_feet, "duplicate", "/feet/2/name", "inboard", "The third foot bears the name of the first")
bad("duplicate-foot", rim_face, "duplicate", "/feet/1/name", "inboard", "Two feet of one name")

check_second([v for v in area.vectors if "result" in v])
if __name__ == "__main__":
    __import__("fit_more").extend()  # what came with 1.1.0
    area.save()
    print("largest error of an orthogonal solution in double precision: %.3f of its tolerance (%s)" % max(WORST))
