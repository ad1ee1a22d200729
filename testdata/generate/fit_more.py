"""What came to fit.json with 1.1.0: errors of single clock positions, mountings, intervals, and fit_exact.

generate/fit.py runs this before it saves; it is no program of its own.

First way: class Interval is fit.py's Fit with more that is shared, and with intervals; class Exact fits the
exact geometry by Gauss and Newton, the intersection of ray and surface in closed form. Second way (SECOND, in pari-gp):
every derivative as a central difference, the quantile of Student's t by quadrature of its density; for
fit_exact each contact found by Newton's method on the implicit equation of cylinder or plane, and the sum of squares,
zeros taken out by their means, made smallest by Newton's method with differences. Both agree to 25 digits.

Mistakes are slips, as in fit.py. An answer in mpmath with 53 bits, which rounds as a double
does, must pass every tolerance at half its width.
"""

from __main__ import GP, NUMBERS, SECOND, SLIPS, Crew, Fit, area, dot, gp_set, length, listed, normal, position, SHARED, orthogonal, reduced, region, tolerance_of, worst, written

import functools
import math
import statistics
import subprocess

import fit_exact
from asked import *
from common import *

NEW = "1.1.0"
HALF = F(1, 10**9)  # of a half width: what a sound quantile of Student's t reaches in double precision


# ---------------------------------------------------------------- distributions

def normal_quantile(q):
    return mp.sqrt(2) * mp.erfinv(2 * q - 1)


def student_cdf(x, n):
    """Probability of at most x, by the hypergeometric series."""
    front = mp.exp(mp.loggamma((n + 1) / 2) - mp.loggamma(n / 2)) / mp.sqrt(n * mp.pi)
    return mpf(1) / 2 + x * front * mp.hyp2f1(mpf(1) / 2, (n + 1) / 2, mpf(3) / 2, -x * x / n)


def student_quantile(q, n):
    """By Newton's method from the normal quantile."""
    if n > mpf(10) ** 40:  # no scatter to speak of
        return normal_quantile(q)
    front = mp.exp(mp.loggamma((n + 1) / 2) - mp.loggamma(n / 2)) / mp.sqrt(n * mp.pi)
    x = normal_quantile(q)
    for _ in range(60):
        step = (student_cdf(x, n) - q) / (front * (1 + x * x / n) ** (-(n + 1) / 2))
        x -= step
        if abs(step) < mpf(10) ** (-mp.dps + 8) * abs(x):
            return x
    raise Refused


@functools.cache
def rough_quantile(q, n):
    """The same for the slips, good to ten digits: the area under the density by Simpson's rule in the angle atan(x/sqrt(n))."""
    z = statistics.NormalDist().inv_cdf(q)
    if n > 1e9:
        return z
    front = math.exp(math.lgamma((n + 1) / 2) - math.lgamma(n / 2)) / math.sqrt(math.pi)
    x, before = z, 0.0
    while abs(x - before) > 1e-12 * abs(x):
        end = math.atan(x / math.sqrt(n))
        f = [math.cos(end * i / 200) ** (n - 1) for i in range(201)]
        area = end / 600 * (f[0] + f[-1] + 4 * sum(f[1:-1:2]) + 2 * sum(f[2:-1:2]))
        before, x = x, x - (0.5 + front * area - q) / (front / math.sqrt(n) * (1 + x * x / n) ** (-(n + 1) / 2))
    return x


# ---------------------------------------------------------------- intervals

class Interval(Fit):
    """A fit with errors of single clock positions, with mountings, and with intervals."""

    def __init__(self, input, slip=""):
        self.single, self.mounted = [], {}
        super().__init__(input, slip)

    def take(self, group, s):
        self.own = s  # share is called for a clock error of nothing at least
        super().take(group, {**s, "u": {"clock": "0 deg", **s.get("u", {})}})

    def share(self, what, text, probe, sag, angles, start):
        stated = self.own.get("u", {})
        if what in stated:
            super().share(what, text, probe, sag, angles, start)
            self.join(what)
        if what == "clock" and "angle" in stated and self.slip != "angle_ignored":
            super().share("clock", stated["angle"], probe, sag, angles, start)
            if self.slip != "angle_as_clock":
                dg, dy, u = self.shared.pop()
                self.single += [({i: dg[i]}, {i: dy[i]}, u) for i in dg]

    def join(self, what):
        """Makes one error of that of a mounting's later set and that of its first."""
        mounting = self.own.get("mounting")
        if mounting is None or self.slip == "mounting_ignored":
            return
        if (mounting, what) not in self.mounted:
            self.mounted[mounting, what] = self.shared[-1]
            return
        dg, dy, _ = self.shared.pop()
        first = self.mounted[mounting, what]
        first[0].update(dg), first[1].update(dy)

    def solve(self):
        solver = reduced if self.slip else orthogonal
        solver(self)
        if self.slip == "angle_in_weights":
            for dg, dy, u in self.single:
                for i in dg:
                    r = self.rows[i]
                    r.w = 1 / mp.sqrt(1 / r.w**2 + ((dy[i] - dot(dg[i], self.x)) * u) ** 2)
            solver(self)
        self.spread()
        self.V = [row[:] for row in self.S]
        for part in self.parts():
            for i in range(4):
                for j in range(4):
                    self.V[i][j] += part[i] * part[j]

    def spread(self):
        """Sets n, the readings left over, and S, the covariance that the readings alone cause."""
        N, zeros = len(self.rows), len({r.group for r in self.rows})
        self.n = N - 4 - (0 if self.slip == "zeros_not_counted" else zeros)
        square = mpf(1)
        if not self.stated or self.slip == "scatter_for_stated":
            over = N if self.slip == "scatter_over_all" else self.n
            square = mp.fsum((e * r.w) ** 2 for e, r in zip(self.rest, self.rows)) / over if self.n > 0 else mpf(0)
        self.S = [[square * c for c in row] for row in self.C]

    def parts(self):
        """Lists what each independent error does to the four numbers."""
        stated = self.stated or self.slip == "angle_twice"
        single = self.single if stated and self.slip != "angle_in_weights" else []
        common = [] if self.slip == "shared_ignored" else self.shared
        own, self.shared = self.shared, common + single
        parts = []
        for (dg, dy, u), d in zip(self.shared, self.derivatives()):
            if self.slip == "shared_as_independent" and len(dg) > 1:
                parts += [[self.P[j][i] * (dy[i] - dot(dg[i], self.x)) * u for j in range(4)] for i in dg]
            else:
                parts.append([dj * u for dj in d])
        self.shared = own
        return parts

    def half(self, all, scatter):
        """Half the interval of a number with the variance `all`, of which readings' scatter makes `scatter`."""
        p = big(F(str(self.input["probability"])))
        q = p if self.slip == "one_sided" else (1 + p) / 2
        if self.slip == "half_is_u":
            return mp.sqrt(all)
        if self.slip == "always_two_u":
            return 2 * mp.sqrt(all)
        student = not self.stated or self.slip == "student_for_normal"
        if not student or self.slip == "normal_for_student":
            n = mp.inf
        elif self.slip in ("dof_not_spread", "student_for_normal") or scatter == 0:
            n = mpf(self.n) if scatter else mp.inf
        else:
            n = self.n * (all / scatter) ** 2
        factor = mpf(rough_quantile(float(q), float(n))) if self.slip else student_quantile(q, n)
        return (2 if self.slip == "whole_width" else 1) * factor * mp.sqrt(all)

    def at(self, foot, o, of):
        """Variance at a foot in the plane whose offset has the place o, from the covariance `of`."""
        x = big(measure(foot["x"], self.slip))
        both = 0 if self.slip == "feet_uncorrelated" else 2 * x * of[o][o + 1]
        return of[o][o] + both + x**2 * of[o + 1][o + 1]

    def result(self):
        answer = super().result()
        if "probability" not in self.input or not (self.stated or self.n > 0):
            return answer
        order = (2, 3, 0, 1) if self.slip == "planes_mixed" else (0, 1, 2, 3)
        V, S, x = ([[M[i][j] for j in order] for i in order] for M in (self.V, self.S, [[c] * 4 for c in self.x]))
        for i, (plane, what, unit) in enumerate(NUMBERS):
            answer[plane].setdefault("half", {})[what] = written(self.half(V[i][i], S[i][i]), unit)
        for m, foot in zip(answer.get("moves", []), self.input.get("feet", [])):
            known = big(length(foot.get("u", "0 mm")))
            m["half"] = {plane: written(self.half(self.at(foot, o, V) + (x[o + 1][0] * known) ** 2, self.at(foot, o, S)), "mm")
                         for plane, o in (("horizontal", 0), ("vertical", 2))}
        return answer


FRESH = ["angle_ignored", "angle_as_clock", "angle_in_weights", "angle_twice", "mounting_ignored", "normal_for_student", "student_for_normal", "dof_not_spread", "half_is_u",
         "one_sided", "whole_width", "always_two_u", "scatter_over_all", "zeros_not_counted", "scatter_for_stated"]


def tolerance_with_half(fit, result):
    """Where readings state their u a half width is as good as that; Student's quantile is a quadrature."""
    if not fit.stated:
        fit.V = fit.C  # nothing of V is held
    tolerance = tolerance_of(fit)
    if "half" not in result["vertical"]:
        return tolerance
    where = [("/%s/half/%s" % (p, w), "/%s/u/%s" % (p, w), unit, [result[p]["half"][w]]) for p, w, unit in NUMBERS]
    if result.get("moves"):
        where += [("/moves/*/half/" + p, "/moves/*/u/" + p, "mm", [m["half"][p] for m in result["moves"]]) for p in ("horizontal", "vertical")]
    for path, like, unit, halves in where:
        size = max(mpf(h.split()[0]) for h in halves) * big(OUT[unit])
        if fit.stated:
            factor = normal_quantile((1 + big(F(str(fit.input["probability"])))) / 2)
            scale = mpf(tolerance[like]["scale"].split()[0]) * big(OUT[unit])
            tolerance[path] = rounding(scale * factor, unit, mpf(tolerance[like]["kappa"]), 64)
        else:
            tolerance[path] = {"within": short(size * big(HALF), unit), "reason": "quadrature"}
    return tolerance


def flat(x, at=""):
    """Lists the quantities of a result with their places."""
    if isinstance(x, dict):
        return [y for k, v in x.items() for y in flat(v, at + "/" + k)]
    if isinstance(x, list):
        return [y for v in x for y in flat(v, at + "/*")]
    return [(at, x)] if isinstance(x, str) and at.split("/")[-1] != "foot" else []


def passes_in_double(solver, input, result, tolerance, id):
    """Asserts that numbers of 53 bits pass at half the width of the tolerances."""
    with mp.workprec(53):
        rough = solver(input).result()
    for (path, want), (_, got) in zip(flat(result), flat(rough)):
        assert abs(F(want.split()[0]) - F(got.split()[0])) <= F(tolerance[path]["within"].split()[0]) / 2, (id, path, want, got, tolerance[path])


def plain(input):
    """What 1.0.0 knows of an input."""
    old = changed(input, "/view", input["view"])
    old.pop("probability", None)
    for s in old["sets"]:
        s.pop("mounting", None)
        s.get("u", {}).pop("angle", None)
    return old


def normal_equations_do(input, id):
    """Asserts that a program that forms the normal equations may pass, so that the flag is not due."""
    fit = Fit(plain(input))
    off = min(worst(plain(input), fit.result(), tolerance_of(fit), 1.0, normal(s)) for s in (False, True))
    assert off < 1, (id, "normal equations", off)


def flags_of(solver, slips, input, result, tolerance):
    flags = []
    for slip in slips:
        if slip == "offset_at_dial_plane" and not any("station" in s["probe"] for s in input["sets"]):
            continue
        try:
            wrong = solver(input, slip).result()
        except (Refused, ZeroDivisionError):
            wrong = {}
        if differs(result, wrong, tolerance):
            flags.append(slip)
    return flags


def put(id, where, about, input):
    """Adds a vector of fit."""
    fit = Interval(input)
    result = fit.result()
    tolerance = tolerance_with_half(fit, result)
    assert fit.loose * fit.kappa < 1.5, id
    passes_in_double(Interval, input, result, tolerance, id)
    normal_equations_do(input, id)
    source = {"kind": "multi_precision", "by": "%s: QR of the whole weighted design, quantiles by series" % MPMATH,
              "second": "%s, 110 digits: moments of each set, derivatives as differences, quantiles by quadrature of the density; agrees to 25 digits" % GP}
    return area.add(id, "fit", where, flags_of(Interval, SLIPS + FRESH, input, result, tolerance), about, source, input, result, tolerance, since=NEW)


# ---------------------------------------------------------------- the second way

MORE = r"""
\\ the density of t = sqrt(n) tan(a), which has no pole nearby
tcdf(T,n)=1/2+exp(lngamma((n+1)/2)-lngamma(n/2))/sqrt(Pi)*intnum(a=0,atan(T/sqrt(n)),cos(a)^(n-1));
zcdf(T)=1-erfc(T/sqrt(2))/2;
quantile(q,n)={my(x=1.,s=1);localprec(45);
 while(abs(s)>1e-33,s=if(n,(tcdf(x,n)-q)/(exp(lngamma((n+1)/2)-lngamma(n/2))/sqrt(n*Pi)*(1+x^2/n)^(-(n+1)/2)),(zcdf(x)-q)*sqrt(2*Pi)*exp(x^2/2));x-=s);x};
turned(D,i,j,h)={my(E=D,S=E[i],R=S[6],q=R[j]);q[1]+=h*180/Pi;R[j]=q;S[6]=R;E[i]=S;E};
moved(D,w,k,h)={my(E=D);for(i=1,#w,my(S=E[w[i]],p=S[3]);p[k]+=h;S[3]=p;E[w[i]]=S);E};
squares(D,v)={my(s=0);for(i=1,#D,s+=moments(D[i],v)[3,3]);my(a=solve4(D,v));s-a[1]~*a[2]*a[1]};
\\ U: [sets, place, u] of what is shared; A: [set, reading, u] of single angles; n: readings left over; p: probability
more(D,v,U,A,feet,stated,p,n)={my(a=solve4(D,v),x=a[1],S=a[2]^-1,V,h=1e-30,d,out=List());
 if(!stated,S*=if(n>0,squares(D,v)/n,0));V=S;
 for(i=1,#U,my(q=U[i]);d=(solve4(moved(D,q[1],q[2],h),v)[1]-solve4(moved(D,q[1],q[2],-h),v)[1])/(2*h)*q[3];V+=d*d~);
 for(i=1,#A,my(q=A[i]);d=(solve4(turned(D,q[1],q[2],h),v)[1]-solve4(turned(D,q[1],q[2],-h),v)[1])/(2*h)*q[3];V+=d*d~);
 my(half(all,sc)=if(!p||!(stated||n>0),0,quantile((1+p)/2,if(stated,0,sc>1e-60,n*(all/sc)^2,0))*sqrt(all)));
 for(i=1,4,listput(out,x[i]));for(i=1,4,listput(out,sqrt(V[i,i])));for(i=1,4,listput(out,half(V[i,i],S[i,i])));
 for(i=1,#feet,my(f=[1,feet[i][1]]~,all,sc);for(k=0,1,
  all=f~*V[2*k+1..2*k+2,2*k+1..2*k+2]*f+(x[2*k+2]*feet[i][2])^2;sc=f~*S[2*k+1..2*k+2,2*k+1..2*k+2]*f;
  listput(out,-(x[2*k+1]+x[2*k+2]*f[2]));listput(out,sqrt(all));listput(out,half(all,sc))));
 for(i=1,#out,print1(strprintf("%.75f",out[i])," "));print("")};
"""


def gp_call(input):
    fit = Interval(input)
    sets, shared, seen, angles = input["sets"], [], set(), []
    for i, s in enumerate(sets, 1):
        one = [k for k, o in enumerate(sets, 1) if k == i or "mounting" in s and o.get("mounting") == s["mounting"]]
        for what, text in s.get("u", {}).items():
            if what in SHARED and i == one[0]:
                u = gp_angle(text) if what == "clock" else str(length(text))
                shared.append(listed([listed(map(str, one)), str(SHARED.index(what) + 1), u]))
            if what == "angle" and fit.stated:
                angles += [listed([str(i), str(j), gp_angle(text)]) for j in range(1, len(s["readings"]) + 1)]
    at = [listed([str(length(f["x"])), str(length(f.get("u", "0 mm")))]) for f in input.get("feet", [])]
    return "more(%s,%d,%s,%s,%s,%d,%s,%d);\n" % (listed([gp_set(s, fit.stated) for s in sets]), -1 if input["view"] == "from_stationary" else 1,
                                                listed(shared), listed(angles), listed(at), fit.stated, F(str(input.get("probability", 0))), fit.n)


def gp_lines(script, calls):
    done = subprocess.run(["gp", "-q", "-f", "--default", "parisize=64M"], input=script + "".join(calls), capture_output=True, text=True, check=True)
    lines = done.stdout.strip().splitlines()
    assert len(lines) == len(calls), done.stderr + done.stdout[-500:]
    return [[mpf(x) for x in printed.split()] for printed in lines]


def agree(id, ours, theirs, least):
    assert abs(ours - theirs) <= mpf(10) ** -25 * max(abs(ours), least), (id, ours, theirs)


def check_intervals(vectors):
    for v, numbers in zip(vectors, gp_lines(SECOND + MORE, [gp_call(v["input"]) for v in vectors])):
        r, theirs = v["result"], iter(numbers)
        value = lambda text, unit: mpf(text.split()[0]) * big(OUT[unit])
        for table in ((lambda p: r[p]), (lambda p: r[p].get("u")), (lambda p: r[p].get("half"))):
            for p, w, unit in NUMBERS:
                got = next(theirs)
                if table(p):
                    agree(v["id"], value(table(p)[w], unit), got, mpf(10) ** -6)
        for m in r.get("moves", []):
            for p in ("horizontal", "vertical"):
                for table in (m, m.get("u"), m.get("half")):
                    got = next(theirs)
                    if table:
                        agree(v["id"], value(table[p], "mm"), got, mpf(10) ** -6)


# ---------------------------------------------------------------- vectors

def mounted(name, one):
    """A set under the name of its mounting."""
    return {**one, "mounting": name}


def asked(input, probability):
    return {**input, "probability": probability}


def refuse(id, twin, code, pointer, value, about, at=None):
    """One thing changed at `pointer`; the fault is there, or at `at`. The region bears the name of the fault."""
    region(id.replace("-", "_"), "invalid", about[0].lower() + about[1:])
    area.refuse(id, twin, id.replace("-", "_"), code, at or pointer, changed(twin["input"], pointer, value), about, since=NEW)


def intervals():
    region("u_angle", "plain", "each clock position with an error of its own")
    c = Crew("0.62", "0.85", "-0.74", "0.48", digits=3)
    angle = put("u-angle", "u_angle", "The crew stops within a degree or two of each mark, every time anew: an error of each position by itself",
        c.input([c.sweep(rim("stationary", "92 mm"), FIVE, "0.5", shared={"reading": "0.004 mm", "angle": "1.5 deg"}),
                 c.sweep(rim("movable", "-108 mm"), FIVE, "0.7", shared={"reading": "0.004 mm", "angle": "25 mrad"})], feet("412 mm", "1131 mm")))
    c = Crew("-0.48", "1.15", "0.57", "-0.92", "from_stationary", digits=3)
    put("u-angle-face", "u_angle", "The same on a rim that droops and a far face, with an error of the whole sweep beside it; from the stationary end",
        c.input([c.sweep(rim("stationary", "66 mm"), hours(0, 60, 120, 180, 240, 300), "1.2", sag="0.15 mm", shared={"reading": "5 um", "angle": "0.02 rad", "clock": "0.6 deg"}),
                 c.sweep(far("movable", "104 mm"), QUARTERS, "0.4", shared={"reading": "5 um", "angle": "0.9 deg"})], feet("437 mm", "1212 mm")))
    region("u_angle_uneven", "hard", "errors of single positions, with readings that contradict one another and weigh differently")
    c = Crew("0.55", "-1.25", "0.88", "0.71", unit="mil", digits=1, seed=71, noise=0.012)
    put("u-angle-uneven", "u_angle_uneven", "Readings in mils of different uncertainty at uneven positions; angles change no weight, but move the answer by way of the residuals as well",
        c.input([c.sweep(rim("stationary", "118 mm"), hours(0, 35, 100, 190, 250), 20, u=["3 um", "9 um", "4 um", "12 um", "5 um"], shared={"angle": "2 deg"}),
                 c.sweep(bore("stationary", "-84 mm"), hours(15, 80, 140, 260), 30, u=["6 um", "4 um", "10 um", "5 um"], shared={"angle": "30 mrad"}),
                 c.sweep(rim("movable", "-126 mm"), FIVE, 25, u="8 um", shared={"angle": "1 deg"})], feet("428 mm", "1176 mm", u=["2 mm", "3 mm"])))

    region("mounting", "plain", "a bracket that was left on, and swept more than once")
    c = Crew("0.29", "1.35", "-0.52", "-1.1", digits=3)
    again = lambda probe, at, zero, **more: mounted("bracket", c.sweep(probe, at, zero, **more))
    READ = {"reading": "0.004 mm"}
    station = put("mounting-station", "mounting", "Two sweeps under one mounting have the error of the station in common, and a third probe has its own",
        c.input([again(rim("stationary", "134 mm"), QUARTERS, "0.5", shared={**READ, "station": "1.5 mm"}), again(rim("stationary", "134 mm"), FIVE, "0.8", shared={**READ, "station": "1.5 mm"}),
                 c.sweep(rim("movable", "-96 mm"), QUARTERS, "0.3", shared={**READ, "station": "1.5 mm"})], feet("446 mm", "1218 mm")))
    c = Crew("-0.37", "1.4", "0.61", "1.7", "from_stationary", digits=3)
    put("mounting-radius", "mounting", "A face dial's circle is wrong by the same in both of its sweeps; the rim was set up anew each time",
        c.input([mounted("first", c.sweep(rim("stationary", "58 mm"), QUARTERS, "0.5", sag="0.09 mm", shared={**READ, "sag": "0.015 mm", "clock": "0.7 deg"})),
                 mounted("second", c.sweep(rim("stationary", "58 mm"), QUARTERS, "0.6", sag="0.09 mm", shared={**READ, "sag": "0.015 mm", "clock": "0.7 deg"})),
                 mounted("face", c.sweep(face("stationary", "97 mm"), QUARTERS, "0.2", shared={**READ, "radius": "1.5 mm"})),
                 mounted("face", c.sweep(face("stationary", "97 mm"), hours(180, 270, 0, 90), "0.1", shared={"reading": "0.006 mm", "radius": "1.5 mm"}))], feet("452 mm", "1239 mm")))
    region("mounting_all", "hard", "station, droop and clock of repeated mountings, with readings that contradict one another")
    c = Crew("0.58", "1.1", "-0.66", "1.45", digits=3, seed=72, noise=0.008)
    ALL = {"reading": "8 um", "station": "1.2 mm", "sag": "0.012 mm", "clock": "1 deg", "angle": "1 deg"}
    front, back = (lambda at, zero: mounted("front", c.sweep(rim("stationary", "122 mm"), at, zero, sag="0.16 mm", shared=ALL))), (
        lambda at, zero: mounted("back", c.sweep(rim("movable", "-116 mm"), at, zero, sag="0.14 mm", shared=ALL)))
    all_of = put("mounting-all", "mounting_all", "Reverse dials swept twice without being taken off: four sets, two mountings, and an angle of each position that no sweep shares",
        c.input([front(FIVE, "0.5"), back(FIVE, "0.4"), front(hours(0, 45, 130, 210), "0.9"), back(hours(20, 110, 160, 275), "0.7")], feet("461 mm", "1254 mm")))

    region("half", "plain", "intervals where the uncertainty of readings is stated")
    c = Crew("0.14", "0.36", "-0.23", "0.61", digits=3)
    stated = put("half", "half", "95 %: 1.96 times u where readings have a stated one, however few they are",
        asked(c.input([c.sweep(rim("stationary", "88 mm"), FIVE, "0.4", shared={"reading": "6 um"}), c.sweep(rim("movable", "-102 mm"), FIVE, "0.6", shared={"reading": "6 um"})], feet("447 mm", "1226 mm")), 0.95))
    c = Crew("-0.26", "0.47", "0.31", "-0.38", "from_stationary", unit="mil", digits=1)
    put("half-99", "half", "99 %, in mils, with a station and a droop that are uncertain, and feet that are",
        asked(c.input([c.sweep(rim("stationary", "3 3/4 in"), QUARTERS, 20, sag="4 mil", shared={"reading": "0.3 mil", "station": "1/16 in", "sag": "0.5 mil"}),
                       c.sweep(face("stationary", "4 1/8 in"), QUARTERS, 10, shared={"reading": "0.2 mil"})], feet("17 in", "46 in", u=["1/8 in", "1/8 in"])), 0.99))
    region("half_scatter", "plain", "intervals from the scatter of the readings, by Student's t")
    c = Crew("0.33", "-0.29", "0.18", "0.52", digits=3, seed=73, noise=0.006)
    scatter = put("half-scatter", "half_scatter", "Ten readings and six unknowns leave four: t is 2.776 at 95 %, not 1.960",
        asked(c.input([c.sweep(rim("stationary", "94 mm"), FIVE, "0.5"), c.sweep(rim("movable", "-99 mm"), FIVE, "0.5")], feet("456 mm", "1247 mm")), 0.95))
    c = Crew("-0.19", "0.44", "0.27", "0.35", "from_stationary", digits=3, seed=74, noise=0.009)
    put("half-scatter-90", "half_scatter", "90 %, rim and gauge with eight readings each, from the stationary end",
        asked(c.input([c.sweep(rim("stationary", "77 mm"), hours(*range(0, 360, 45)), "0.5", sag="0.11 mm"), c.sweep(gap("86 mm"), hours(*range(10, 370, 45)), 4)], feet("463 mm", "1261 mm")), 0.9))
    region("half_known_beside", "hard", "scatter beside what is stated of what readings share: degrees of freedom by Welch and Satterthwaite")
    c = Crew("0.72", "1.3", "-0.81", "-0.95", digits=3, seed=75, noise=0.004)
    known = put("half-known-beside", "half_known_beside", "Two readings are left over, but station and clock are known to so much: each number has degrees of freedom of its own",
        asked(c.input([c.sweep(rim("stationary", "106 mm"), QUARTERS, "0.5", shared={"station": "1 mm", "clock": "0.5 deg", "angle": "0.8 deg"}),
                       c.sweep(rim("movable", "-114 mm"), QUARTERS, "0.5", shared={"station": "1 mm", "clock": "0.5 deg", "angle": "0.8 deg"})], feet("468 mm", "1269 mm")), 0.95))
    c = Crew("-0.64", "0.9", "0.43", "1.2", "from_stationary", digits=3, seed=76, noise=0.005)
    put("half-known-mounted", "half_known_beside", "A droop that two sweeps share, and feet known to 4 mm; the vertical numbers gain degrees of freedom, the offset sideways has none to gain",
        asked(c.input([mounted("bar", c.sweep(rim("stationary", "83 mm"), QUARTERS, "0.6", sag="0.2 mm", shared={"sag": "0.01 mm"})),
                       mounted("bar", c.sweep(rim("stationary", "83 mm"), QUARTERS, "0.7", sag="0.2 mm", shared={"sag": "0.01 mm"})),
                       c.sweep(face("stationary", "109 mm"), QUARTERS, "0.3")], feet("474 mm", "1278 mm", u=["4 mm", "4 mm"])), 0.98))
    region("half_angle_in_scatter", "hard", "a stated error of each position that the scatter has in it already")
    c = Crew("0.77", "0.66", "0.59", "-0.83", digits=3, seed=77, noise=0.01)
    put("half-angle-in-scatter", "half_angle_in_scatter", "Readings have no stated u: their scatter shows what single positions are wrong by, and it counts once",
        asked(c.input([c.sweep(rim("stationary", "111 mm"), FIVE, "0.5", shared={"angle": "1 deg"}), c.sweep(rim("movable", "-93 mm"), FIVE, "0.4", shared={"angle": "1 deg"})], feet("481 mm", "1286 mm")), 0.95))
    region("half_one_left", "hard", "one reading left over: t at its widest")
    c = Crew("0.21", "0.58", "-0.34", "0.27", digits=3, seed=78, noise=0.007)
    put("half-one-left", "half_one_left", "Seven readings, six unknowns, 99.9 %: t is 636.6, and the interval says that nothing is known",
        asked(c.input([c.sweep(rim("stationary", "89 mm"), QUARTERS, "0.5", shared={"angle": "1 deg"}), c.sweep(rim("movable", "-91 mm"), hours(0, 90, 180), "0.5", shared={"angle": "1 deg"})], feet("487 mm", "1293 mm")), 0.999))
    region("half_little_scatter", "hard", "less scatter than what is stated of the stations")
    c = Crew("0.6", "2.1", "-0.9", "1.8", digits=4, seed=80, noise=0.004)
    put("half-little-scatter", "half_little_scatter", "What is stated of the stations counts for more than the scatter: many degrees of freedom from a few",
        asked(c.input([c.sweep(rim("stationary", "125 mm"), FIVE, "1", shared={"station": "2 mm"}), c.sweep(rim("stationary", "-75 mm"), FIVE, "2", shared={"station": "1 mm"})], feet("493 mm", "1301 mm")), 0.95))
    region("half_no_one_left", "hard", "no reading left over, so that no scatter is known")
    c = Crew("-0.28", "0.32", "0.46", "-0.19", "from_stationary", digits=3)
    put("half-none-left", "half_no_one_left", "Three readings to each rim: an answer, but no interval however it is asked for",
        asked(c.input([c.sweep(rim("stationary", "78 mm"), hours(10, 95, 200), "0.5"), c.sweep(rim("movable", "-82 mm"), hours(40, 160, 265), "0.5")], feet("498 mm", "1309 mm")), 0.95))
    region("half_odd", "hard", "probabilities that are seldom asked for")
    c = Crew("0.17", "-0.22", "0.39", "0.41", digits=3, seed=79, noise=0.008)
    put("half-half", "half_odd", "50 %: the probable error of old handbooks, 0.6745 u",
        asked(c.input([c.sweep(displacement("-131 mm", 1.2), FIVE, "0.5", shared={"reading": "7 um"}), c.sweep(displacement("144 mm", -0.9), FIVE, "0.5", shared={"reading": "7 um"})], feet("503 mm", "1317 mm")), 0.5))
    c = Crew("0.9", "-1.2", "-0.7", "0.8", digits=3, seed=80, noise=0.006)
    put("half-four-nines", "half_odd", "99.99 % with five readings left over, joints of a spacer",
        asked(c.input([c.sweep(joint("stationary", "112 mm", "640 mm"), hours(0, 60, 120, 180, 240, 300), "0.6"), c.sweep(joint("movable", "112 mm", "640 mm"), FIVE, "0.6")], feet("511 mm", "1323 mm")), 0.9999))

    refuse("angle-negative", angle, "out_of_range", "/sets/0/u/angle", "-1.5 deg", "A negative uncertainty of the positions")
    refuse("angle-no-unit", angle, "malformed", "/sets/1/u/angle", "25", "An uncertainty of the positions without a unit")
    refuse("angle-as-length", angle, "unknown", "/sets/1/u/angle", "0.5 mm", "An uncertainty of the positions as a length along the rim")
    refuse("mounting-other-station", station, "conflict", "/sets/1/probe/station", "136 mm", "Two sets of one mounting with their dials at different stations", "/sets/1/mounting")
    refuse("mounting-other-carrier", all_of, "conflict", "/sets/2/probe/carrier", "movable", "Two sets of one mounting carried by different shafts", "/sets/2/mounting")
    refuse("mounting-other-sag", all_of, "conflict", "/sets/3/sag", "0.19 mm", "Two sets of one mounting whose bracket droops differently", "/sets/3/mounting")
    refuse("mounting-other-u", station, "conflict", "/sets/0/u/station", "2.5 mm", "Two sets of one mounting whose station is known differently well", "/sets/1/mounting")
    refuse("mounting-no-text", station, "malformed", "/sets/0/mounting", 1, "A mounting that is a number instead of a name")
    refuse("probability-zero", stated, "out_of_range", "/probability", 0, "An interval of probability nothing")
    refuse("probability-one", scatter, "out_of_range", "/probability", 1, "An interval of certainty, which has no end")
    refuse("probability-percent", stated, "out_of_range", "/probability", 95, "Per cent where a part of one belongs")
    refuse("probability-negative", scatter, "out_of_range", "/probability", -0.95, "A probability below zero")
    refuse("probability-text", known, "malformed", "/probability", "95 %", "A probability as text, with a unit that there is not")

    check_intervals([v for v in area.vectors if v["since"] == NEW and v["op"] == "fit" and "result" in v])


def on_law(zero, *changes):
    """Readings at the quarters that satisfy R12 + R6 = R3 + R9: zero, and what 3, 6 and 9 differ from it by (9 follows)."""
    three, six = F(changes[0]), F(changes[1])
    return [{"at": t, "value": decimal(F(zero) + d) + " mm"} for t, d in zip(QUARTERS, (F(0), three, six, six - three))]


def extend():
    intervals()
    fit_exact.exact(passes_in_double, gp_lines, agree, refuse)
