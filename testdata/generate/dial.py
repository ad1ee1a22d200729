"""Writes dial.json: the hand methods and the single steps of dial work.

Run as `python3 generate/dial.py` from testdata. Needs mpmath and pari-gp (Debian packages
python3-mpmath, pari-gp); takes a few seconds.

First way: the closed forms for readings at 12, 3, 6 and 9, in exact fractions (class Crew and the
functions named after the operations). Each of them can also be made to err: `slip` is a flag of
flags.json, and a vector carries the flags whose slip changes its answer. Second way: pari-gp solves
the general law r(t) = c + k (a offset + b slope) . u(t) by least squares in exact fractions; its
coefficients come from the table of PROTOCOL.md, not from the first way. Both have to agree exactly.
Some sweeps are read off two shafts in exact three-dimensional geometry (section Shafts), and the
answer has to find these shafts again.
"""

import subprocess

from common import *

GP = "pari-gp " + subprocess.run(["gp", "--version-short"], capture_output=True, text=True, check=True).stdout.strip()
FRACTIONS = "Python fractions: the closed forms of readings at the quarters"
QUARTERS = (0, 90, 180, 270)
SIN = {0: 0, 90: 1, 180: 0, 270: -1}
COS = {0: 1, 90: 0, 180: -1, 270: 0}


# ---------------------------------------------------------------- what an input says, with slips

def position(text, slip=""):
    """Reads a clock position in degrees."""
    if slip == "hours_as_degrees" and ":" in text:
        return clock(text) / 30
    return clock(text) % 360


class Sweep:
    """The readings of one dial at the quarters, in the library's view, free of droop."""

    def __init__(self, probe, view, slip="", droops=1):
        rows = [(position(r["at"], slip), measure(r["value"], slip)) for r in probe["readings"]]
        self.check = {}
        self.size = sum(abs(v) for _, v in rows)
        back = rows[0][0] == rows[-1][0]
        if back and slip != "return_as_reading":
            self.check["return"] = mm(rows[-1][1] - rows[0][1])
        if back:
            last = rows.pop()
            if slip == "return_as_reading":
                rows[0] = last
        if slip == "one_way_pairs":
            rows = [(t, v) for t, (_, v) in zip(QUARTERS, rows)]
        if any(t not in QUARTERS for t, _ in rows):
            raise Refused
        if view == "from_stationary" and slip != "view_mirrored":
            rows = [(-t % 360, v) for t, v in rows]
        self.at = dict(rows)
        if slip == "zero_assumed" and 0 in self.at:
            self.at[0] = F(0)
        self.close(slip)
        sag = measure(probe.get("sag", "0 mm"), slip)
        self.size += 2 * abs(sag)
        self.sag = sag * droops
        share = {"sag_added": -1, "sag_ignored": 0, "sag_once": F(1, 2)}.get(slip, 1)
        for t in QUARTERS:
            self.at[t] -= share * self.sag * COS[t]

    def close(self, slip):
        """Puts the fourth reading in, or tells the miss."""
        r = self.at
        lacking = [t for t in QUARTERS if t not in r]
        if not lacking:
            self.check["miss"] = mm(r[0] + r[180] - r[90] - r[270])
            return
        (t,) = lacking
        r[t] = missing_reading(r[(t + 180) % 360], r[(t + 90) % 360], r[(t + 270) % 360], slip)
        self.check.update(completed=True, supplied=out(F(t), "deg"))

    def half(self, slip=""):
        """Returns half of the difference of opposite readings: horizontal, vertical."""
        r = self.at
        return (r[90] - r[270]) / 2, (r[0] - r[180]) / 2


def missing_reading(opposite, one, other, slip=""):
    if slip == "fourth_as_zero":
        return F(0)
    if slip == "fourth_from_across":
        return one + other
    return one + other - opposite


# ---------------------------------------------------------------- the closed forms

class Line:
    """One plane's offset and slope."""

    def __init__(self, offset, slope):
        self.offset, self.slope = offset, slope

    def at(self, x):
        return self.offset + self.slope * x


class Crew:
    """One input of a hand method, evaluated with or without a slip."""

    def __init__(self, op, input, slip=""):
        self.input, self.slip, self.view = input, slip, input["view"]
        self.sweeps = []
        horizontal, vertical, self.sizes = getattr(self, op)()
        if slip == "planes_mixed":
            horizontal, vertical = vertical, horizontal
        self.lines = {"horizontal": horizontal, "vertical": vertical}

    def take(self, probe, droops=1):
        self.sweeps.append(Sweep(probe, self.view, self.slip, droops))
        return self.sweeps[-1]

    def station(self, probe):
        x = measure(probe["station"], self.slip)
        return abs(x) if self.slip == "station_unsigned" else x

    def rim(self, probe, carrier):
        """Returns the station of a rim or bore dial, w(x) in both planes, and its size."""
        bore = probe.get("bore", False) and self.slip != "bore_as_rim"
        k = (1 if carrier == "stationary" else -1) * (-1 if bore else 1)
        if self.slip == "carrier_sign":
            k = -k
        x = self.station(probe)
        s = self.take(probe, -1 if bore else 1)
        whole = 2 if self.slip == "tir_not_halved" else 1
        return x, [k * whole * h for h in s.half()], s.size / 2

    def face(self, probe, k=None):
        """Returns the tilt that a face dial or gap sees in both planes, and its size."""
        if k is None:
            k = -1 if probe.get("far") else 1
            if self.slip == "face_sign":
                k = -k
        d = measure(probe["diameter"], self.slip)
        s = self.take(probe)
        by = d / 2 if self.slip == "radius_for_diameter" else d
        return [k * 2 * h / by for h in s.half()], s.size / d, d

    def carried(self, x, w, slope, size, w_size):
        """Carries w(x) along the slope to the coupling centre."""
        to = 0 if self.slip == "offset_at_dial_plane" else x
        h, v = (Line(wx - sl * to, sl) for wx, sl in zip(w, slope))
        return h, v, (w_size + abs(x) * size, size, 1)

    def rim_face(self):
        x, w, w_size = self.rim(self.input["rim"], self.input["carrier"])
        slope, size, d = self.face(self.input["face"])
        return self.carried(x, w, slope, size + 2 * w_size / d, w_size)

    def rim_gap(self):
        x, w, w_size = self.rim(self.input["rim"], self.input["carrier"])
        slope, size, d = self.face(self.input["gap"], 1 if self.slip == "gap_as_dial" else -1)
        return self.carried(x, w, slope, size + 2 * w_size / d, w_size)

    def straightedge_gap(self):
        edge = self.input["straightedge"]
        # The feeler reads what is lacking: the other way round than a dial.
        other = {"stationary": "movable", "movable": "stationary"}[edge["on"]]
        x, w, w_size = self.rim(edge, other)
        slope, size, d = self.face(self.input["gap"], 1 if self.slip == "gap_as_dial" else -1)
        return self.carried(x, w, slope, size + 2 * w_size / d, w_size)

    def reverse(self):
        xm, wm, m_size = self.rim(self.input["carried_by_stationary"], "stationary")
        xs, ws, s_size = self.rim(self.input["carried_by_movable"], "movable")
        apart = xm - xs
        if apart == 0:
            raise Refused
        slope = [(a - b) / apart for a, b in zip(wm, ws)]
        to = 0 if self.slip == "offset_at_dial_plane" else xm
        kappa = (abs(xm) + abs(xs)) / abs(apart)
        size = (m_size + s_size) / abs(apart)
        h, v = (Line(wx - sl * to, sl) for wx, sl in zip(wm, slope))
        return h, v, (size * (abs(xm) + abs(xs)), size, max(kappa, 1))

    def face_face(self):
        span = measure(self.input["span"], self.slip)
        if self.slip == "half_span":
            span /= 2
        joints = [self.input["at_stationary"], self.input["at_movable"]]
        if self.slip == "joints_exchanged":
            joints.reverse()
        (s, s_size, ds), (m, m_size, dm) = (self.face(j) for j in joints)
        # A face dial of 1/L of offset and 1/2 of slope at each joint: sum and difference.
        lines = [Line(span * (a - b) / 2, a + b) for a, b in zip(s, m)]
        if self.slip == "spacer_as_short":
            lines = [Line(F(0), (a + b) / 2) for a, b in zip(s, m)]
        size = (s_size * ds + m_size * dm) * (1 / ds + 1 / dm)
        return lines[0], lines[1], (span * size / 2, size, 1)

    def result(self):
        r = {p: {"offset": mm(l.offset), "slope": mm_m(l.slope)} for p, l in self.lines.items()}
        if "feet" in self.input:
            sign = 1 if self.slip == "correction_for_position" else -1
            r["moves"] = [dict({"foot": f["name"]}, **{p: mm(sign * l.at(measure(f["x"], self.slip))) for p, l in self.lines.items()})
                          for f in self.input["feet"]]
        r["checks"] = [s.check for s in self.sweeps]
        r["warnings"] = []
        return r

    def tolerance(self):
        offset, slope, kappa = self.sizes
        t = {}
        for plane in ("horizontal", "vertical"):
            t["/%s/offset" % plane] = rounding(offset, "mm", kappa)
            t["/%s/slope" % plane] = rounding(slope, "mm/m", kappa)
            if self.input.get("feet"):
                far = max(abs(measure(f["x"])) for f in self.input["feet"])
                t["/moves/*/" + plane] = rounding(offset + far * slope, "mm", kappa)
        return dict(t, **check_tolerance(self.sweeps))


def check_tolerance(sweeps):
    t, size = {}, max(s.size for s in sweeps)
    for key in ("miss", "return"):
        if any(key in s.check for s in sweeps):
            t["/checks/*/" + key] = rounding(size, "mm")
    if any("supplied" in s.check for s in sweeps):
        t["/checks/*/supplied"] = rounding(F(360), "deg")
    return t


# ---------------------------------------------------------------- single steps

def quarters(i, slip=""):
    r12, r3, r6, r9 = (measure(i[k], slip) for k in ("at12", "at3", "at6", "at9"))
    if slip == "zero_assumed":
        r12 = F(0)
    by = 1 if slip == "tir_not_halved" else 2
    half = {"horizontal": mm((r3 - r9) / by), "vertical": mm((r12 - r6) / by)}
    if slip == "planes_mixed":
        half = {"horizontal": half["vertical"], "vertical": half["horizontal"]}
    return {"miss": mm(r12 + r6 - r3 - r9), "half": half}


def quarters_tolerance(i):
    size = sum(abs(measure(v)) for v in i.values())
    return {"/miss": rounding(size, "mm"), "/half/horizontal": rounding(size / 2, "mm"), "/half/vertical": rounding(size / 2, "mm")}


def fourth(i, slip=""):
    return {"reading": mm(missing_reading(measure(i["opposite"], slip), *(measure(v, slip) for v in i["across"]), slip))}


def fourth_tolerance(i):
    return {"/reading": rounding(sum(abs(measure(v)) for v in [i["opposite"], *i["across"]]), "mm")}


def mandrel_sag(i, slip=""):
    s = (measure(i["at12"], slip) - measure(i["at6"], slip)) / 2
    return {"sag": mm({"tir_not_halved": 2 * s, "sag_added": -s, "zero_assumed": -measure(i["at6"]) / 2}.get(slip, s))}


def mandrel_sag_tolerance(i):
    return {"/sag": rounding((abs(measure(i["at12"])) + abs(measure(i["at6"]))) / 2, "mm")}


def turned(text):
    value, unit = text.split()
    assert unit == "deg"
    return number(value) % 360


def remove_runout(i, slip=""):
    t0 = F(0) if slip == "runout_from_12" else position(i["t0"], slip)
    e = {turned(r["turned"]): measure(r["value"], slip) for r in i["runout"]}
    answer = []
    for r in i["readings"]:
        t = position(r["at"], slip)
        at = (t - t0 if slip == "runout_turned_back" else t0 - t) % 360
        if at not in e:
            raise Refused
        share = {"runout_kept": 0, "runout_added": -1}.get(slip, 1)
        answer.append({"at": out(t, "deg"), "value": mm(measure(r["value"], slip) - share * e[at])})
    return {"readings": answer}


def remove_runout_tolerance(i):
    size = max(abs(measure(r["value"])) for r in i["readings"]) + max(abs(measure(r["value"])) for r in i["runout"])
    return {"/readings/*/value": rounding(size, "mm"), "/readings/*/at": rounding(F(360), "deg")}


def without_float(i, slip=""):
    a, b = i["a"], i["b"]
    d = measure(a["diameter"], slip) + measure(b["diameter"], slip)
    if slip == "float_kept":
        d = measure(a["diameter"])
    if slip == "radius_for_diameter":
        d /= 2
    share = {"sag_added": -1, "sag_ignored": 0, "sag_once": F(1, 2)}.get(slip, 1)
    answer = []
    for ra, rb in zip(a["readings"], b["readings"]):
        ta, tb = position(ra["at"], slip), position(rb["at"], slip)
        if ta not in QUARTERS or tb != (ta + 180) % 360:
            raise Refused
        va, vb = (measure(r["value"], slip) - share * measure(f.get("sag", "0 mm"), slip) * COS[t] for f, r, t in ((a, ra, ta), (b, rb, tb)))
        value = {"float_kept": va, "float_added": va + vb}.get(slip, va - vb)
        answer.append({"at": out(ta, "deg"), "value": mm(value)})
    return {"diameter": mm(d), "readings": answer}


def without_float_tolerance(i):
    size = sum(max(abs(measure(r["value"])) for r in i[f]["readings"]) + abs(measure(i[f].get("sag", "0 mm"))) for f in "ab")
    d = measure(i["a"]["diameter"]) + measure(i["b"]["diameter"])
    return {"/diameter": rounding(d, "mm"), "/readings/*/value": rounding(size, "mm"), "/readings/*/at": rounding(F(360), "deg")}


PLANES = ("horizontal", "vertical")
KINDS = (("offset", measure, "mm"), ("slope", lambda text, slip="": slope(text), "mm/m"))


def separate_runout(i, slip=""):
    answer = {"misalignment": {}, "runout": {}}
    for plane in PLANES:
        one, two = i["first"][plane], i["second"][plane]
        for name in answer:
            answer[name][plane] = {}
        for kind, get, unit in KINDS:
            a, b = get(one[kind], slip), get(two[kind], slip)
            if slip == "runout_kept":
                both = a, F(0)
            else:
                by = 1 if slip == "tir_not_halved" else 2
                both = (a + b) / by, (a - b) / by
            for name, value in zip(answer, both):
                answer[name][plane][kind] = out(value, unit)
        if "u" in one:
            u = {k: out(mp.hypot(big(get(one["u"][k], slip)), big(get(two["u"][k], slip))) / 2, unit) for k, get, unit in KINDS}
            for name in answer:
                answer[name][plane]["u"] = u
    if slip == "planes_mixed":
        answer = {n: {"horizontal": p["vertical"], "vertical": p["horizontal"]} for n, p in answer.items()}
    return answer


def separate_runout_tolerance(i):
    t = {}
    for plane in PLANES:
        one, two = i["first"][plane], i["second"][plane]
        for kind, get, unit in KINDS:
            for name in ("misalignment", "runout"):
                at = "/%s/%s/" % (name, plane)
                t[at + kind] = rounding((abs(get(one[kind])) + abs(get(two[kind]))) / 2, unit)
                if "u" in one:
                    t[at + "u/" + kind] = rounding((get(one["u"][kind]) + get(two["u"][kind])) / 2, unit)
    return t


STEPS = {f.__name__: (f, t) for f, t in ((quarters, quarters_tolerance), (fourth, fourth_tolerance), (mandrel_sag, mandrel_sag_tolerance),
         (remove_runout, remove_runout_tolerance), (without_float, without_float_tolerance), (separate_runout, separate_runout_tolerance))}

# ---------------------------------------------------------------- flags

READ = ["mil_as_hundredth", "fraction_misread"]
SWEEP = READ + ["hours_as_degrees", "one_way_pairs", "return_as_reading", "view_mirrored", "zero_assumed", "fourth_as_zero",
                "fourth_from_across", "planes_mixed", "correction_for_position"]
DROOP = ["sag_added", "sag_ignored", "sag_once"]
RIM = ["tir_not_halved", "carrier_sign", "station_unsigned", "offset_at_dial_plane"]
SLIPS = {
    "rim_face": SWEEP + DROOP + RIM + ["bore_as_rim", "face_sign", "radius_for_diameter"],
    "reverse": SWEEP + DROOP + RIM + ["bore_as_rim"],
    "face_face": SWEEP + DROOP + ["face_sign", "radius_for_diameter", "spacer_as_short", "joints_exchanged", "half_span"],
    "rim_gap": SWEEP + DROOP + RIM + ["bore_as_rim", "gap_as_dial", "radius_for_diameter"],
    "straightedge_gap": SWEEP + RIM + ["gap_as_dial", "radius_for_diameter"],
    "quarters": READ + ["tir_not_halved", "planes_mixed", "zero_assumed"],
    "fourth": READ + ["fourth_as_zero", "fourth_from_across"],
    "mandrel_sag": READ + ["tir_not_halved", "sag_added", "zero_assumed"],
    "remove_runout": READ + ["hours_as_degrees", "runout_kept", "runout_turned_back", "runout_added", "runout_from_12"],
    "without_float": READ + ["hours_as_degrees", "float_kept", "float_added", "radius_for_diameter"] + DROOP,
    "separate_runout": READ + ["runout_kept", "tir_not_halved", "planes_mixed"],
}


def answer(op, input, slip=""):
    return STEPS[op][0](input, slip) if op in STEPS else Crew(op, input, slip).result()


def tolerance_of(op, input):
    return STEPS[op][1](input) if op in STEPS else Crew(op, input).tolerance()


def flags_of(op, input, right, tolerance):
    flags = []
    for slip in SLIPS[op]:
        try:
            wrong = answer(op, input, slip)
        except Refused:
            flags.append(slip)
            continue
        if differs(right, wrong, tolerance):
            flags.append(slip)
    return flags

# ---------------------------------------------------------------- the second way

class Second:
    """Systems for pari-gp, solved all at once, each with a check of what comes back."""

    def __init__(self):
        self.script, self.checks = ["default(realprecision,60)", "show=((v)->for(i=1,#v,print1(v[i],if(i<#v,\" \",\"\\n\"))));"], []

    def least_squares(self, rows, check):
        """rows hold the coefficients and what was read; solved by exact normal equations."""
        a = ";".join(",".join(str(c) for c in r[:-1]) for r in rows)
        b = ",".join(str(r[-1]) for r in rows)
        self.ask("A=[%s];b=[%s]~;show(matsolve(A~*A,A~*b)~)" % (a, b), check)

    def ask(self, command, check):
        self.script.append(command)
        self.checks.append(check)

    def run(self):
        done = subprocess.run(["gp", "-q", "-f"], input="\n".join(self.script) + "\n", capture_output=True, text=True, check=True)
        lines = done.stdout.splitlines()
        assert len(lines) == len(self.checks) and not done.stderr.strip(), (done.stdout, done.stderr)
        for text, check in zip(lines, self.checks):
            check(text.replace(" E", "E").split())


second = Second()


def same(id, found, want):
    assert [F(x) for x in found] == [F(x) for x in want], (id, found, want)


K = {"rim": 1, "bore": -1, "near_face": 1, "far_face": -1, "gap": -1, "straightedge": -1, "spacer_face": 1, "spacer_far_face": -1}


def sets_of(op, i):
    """Returns the sets of a hand method as the general law knows them: kind, carrier, set."""
    rim = lambda r: "bore" if r.get("bore") else "rim"
    face = lambda f, name="near_face": {"near_face": "far_face", "spacer_face": "spacer_far_face"}[name] if f.get("far") else name
    if op == "reverse":
        return [(rim(i[n]), n[len("carried_by_"):], i[n]) for n in ("carried_by_stationary", "carried_by_movable")]
    if op == "face_face":
        return [(face(i[n], "spacer_face"), n[len("at_"):], i[n]) for n in ("at_stationary", "at_movable")]
    first = ("straightedge", i["straightedge"]["on"], i["straightedge"]) if "straightedge" in i else (rim(i["rim"]), i["carrier"], i["rim"])
    return [first, ("gap", None, i["gap"]) if "gap" in i else (face(i["face"]), None, i["face"])]


def coefficients(kind, carrier, s, input):
    """Returns k a and k b of the law."""
    k, other = K[kind], -1 if carrier == "movable" else 1
    if kind in ("rim", "bore", "straightedge"):
        return k * other, k * other * length(s["station"])
    radius = length(s["diameter"]) / 2
    if kind in ("spacer_face", "spacer_far_face"):
        return k * other * radius / length(input["span"]), k * radius / 2
    return 0, k * radius


def law(op, input):
    """Returns rows of the general law: four coefficients, two zeros, and the reading less its droop."""
    rows = []
    for i, (kind, carrier, s) in enumerate(sets_of(op, input)):
        a, b = coefficients(kind, carrier, s, input)
        droop = length(s.get("sag", "0 mm")) * (-1 if kind == "bore" else 1)
        for j, r in enumerate(s["readings"]):
            t = clock(r["at"]) * (-1 if input["view"] == "from_stationary" else 1) % 360
            if j and t == rows[-j][0]:  # back at the start
                break
            rows.append((t, [a * SIN[t], b * SIN[t], a * COS[t], b * COS[t], int(i == 0), int(i == 1), length(r["value"]) - droop * COS[t]]))
    return rows


def check_hand(id, op, input):
    crew, rows = Crew(op, input), law(op, input)

    def check(found):
        h, v = crew.lines["horizontal"], crew.lines["vertical"]
        same(id, found[:4], [h.offset, h.slope, v.offset, v.slope])
        # The miss is what the fit leaves over at 12 and 6 less what it leaves at 3 and 9.
        for i, s in enumerate(crew.sweeps):
            rest = sum((1 if t in (0, 180) else -1) * (r[-1] - sum(F(c) * F(x) for c, x in zip(r, found))) for t, r in rows if r[4 + i])
            assert "miss" not in s.check or rest == length(s.check["miss"]), id
            assert "miss" in s.check or rest == 0, id

    second.least_squares([r for _, r in rows], check)
    return "least squares of the general law with four numbers and a zero for each set, %s, exact fractions: equal" % GP


def circle(values):
    """Rows of r = c + h sin t + v cos t for readings by clock position."""
    return [[SIN[t], COS[t], 1, v] for t, v in values]


def check_quarters(id, i, r):
    values = [(t, measure(i["at%d" % (t // 30 or 12)])) for t in QUARTERS]

    def check(x):
        h, v, c = map(F, x)
        same(id, [h, v, 4 * (values[0][1] - v - c)], [length(r["half"]["horizontal"]), length(r["half"]["vertical"]), length(r["miss"])])

    second.least_squares(circle(values), check)
    return "least squares of one harmonic and a zero, the miss as four times what is left over, %s, exact fractions: equal" % GP


def check_fourth(id, i, r):
    values = zip((180, 90, 270), [measure(v) for v in [i["opposite"], *i["across"]]])
    second.least_squares(circle(values), lambda x: same(id, [F(x[1]) + F(x[2])], [length(r["reading"])]))
    return "the harmonic through the three readings, taken at the fourth place, %s, exact fractions: equal" % GP


def check_mandrel_sag(id, i, r):
    rows = [[1, 1, measure(i["at12"])], [-1, 1, measure(i["at6"])]]
    second.least_squares(rows, lambda x: same(id, x[:1], [length(r["sag"])]))
    return "sag cos t and a zero through the two readings, %s, exact fractions: equal" % GP


def check_remove_runout(id, i, r):
    """The trigonometric polynomial through the measured runout, taken at t0 - t: no table, no turns counted."""
    z = lambda t: mp.expjpi(big(F(t)) / 180)
    e = [(z(number(p["turned"].split()[0])), big(measure(p["value"]))) for p in i["runout"]]
    for p, q in zip(i["readings"], r["readings"]):
        w = z(clock(i["t0"]) - clock(p["at"]))
        at = mp.fsum(v * mp.fprod((w - zj) / (zi - zj) for zj, _ in e if zj != zi) for zi, v in e)
        assert abs(big(measure(p["value"])) - at - big(length(q["value"]))) < mpf(10) ** -45, id
    return "the polynomial in exp(i turned) through the runout, taken at exp(i (t0 - t)), %s: equal to 45 digits" % MPMATH


def check_without_float(id, i, r):
    """Both dials at once, the float at each stop an unknown of its own."""
    n = len(i["a"]["readings"])
    rows = []
    for f, first in (("a", 1), ("b", 0)):
        radius, sag = measure(i[f]["diameter"]) / 2, measure(i[f].get("sag", "0 mm"))
        for j, p in enumerate(i[f]["readings"]):
            t = position(p["at"])
            rows.append([radius * SIN[t], radius * COS[t], first, *(int(j == k) for k in range(n)), measure(p["value"]) - sag * COS[t]])
    radius = length(r["diameter"]) / 2
    one = [[radius * SIN[t], radius * COS[t], 1, length(p["value"])] for p in r["readings"] for t in (clock(p["at"]) % 360,)]
    both = []
    second.least_squares(rows, both.append)
    second.least_squares(one, lambda x: same(id, x[:2], both[0][:2]))
    return "the slopes from both dials at once with the float at each stop unknown, %s, exact fractions: those of the one face here" % GP


def check_separate_runout(id, i, r):
    for plane in PLANES:
        one, two = i["first"][plane], i["second"][plane]
        for kind, get, unit in KINDS:
            a, b = get(one[kind]), get(two[kind])
            want = [read(r[n][plane][kind], "length" if unit == "mm" else "slope") for n in ("misalignment", "runout")]
            second.least_squares([[1, 1, a], [1, -1, b]], lambda x, want=want: same(id, x, want))
            if "u" in one:
                u = [mpf(r["runout"][plane]["u"][kind].split()[0]) / (1 if unit == "mm" else 1000)]
                cmd = "J=matsolve([1,1;1,-1],matid(2));V=[(%s)^2,0;0,(%s)^2];W=J*V*J~;show([sqrt(W[1,1]*1.),sqrt(W[2,2]*1.)])" % (
                    get(one["u"][kind]), get(two["u"][kind]))
                second.ask(cmd, lambda x, u=u: [close(id, mpf(y), u[0]) for y in x])
    return "m + e and m - e solved for both, uncertainties as J V J', %s: equal, uncertainties to 32 digits" % GP


def close(id, a, b):
    assert abs(a - b) <= abs(b) * mpf(10) ** -32, (id, a, b)


# ---------------------------------------------------------------- Shafts: exact three-dimensional geometry

class Shafts:
    """Two rigid round bodies; vectors are (x, y, z), the stationary axis is x. mm and ratios."""

    def __init__(self, oy, sy, oz, sz):
        self.numbers = [F(v) for v in (oy, sy, oz, sz)]
        oy, sy, oz, sz = (big(v) for v in self.numbers)
        n = mp.sqrt(1 + sy * sy + sz * sz)
        self.frames = {"stationary": ((mpf(0),) * 3, frame((mpf(1), mpf(0), mpf(0)))),
                       "movable": ((mpf(0), oy, oz), frame((1 / n, sy / n, sz / n)))}

    def ray(self, carrier, t, radius, x):
        """Returns a place at clock t beside the carrier's axis, its radial and its axial direction."""
        origin, (axis, right, up) = self.frames[carrier]
        s, c = sincos(t)
        radial = tuple(s * r + c * u for r, u in zip(right, up))
        return tuple(o + x * a + radius * q for o, a, q in zip(origin, axis, radial)), radial, axis

    def rim(self, carrier, x, t, rho):
        """How far the plunger is pushed in: from the carrier's axis to the other body's cylinder."""
        other = "movable" if carrier == "stationary" else "stationary"
        start, way, _ = self.ray(carrier, t, 0, big(F(x)))
        origin, (axis, _, _) = self.frames[other]
        # |p + l w|^2 = rho^2 across the other axis, the root further out
        p, w = across(sub(start, origin), axis), across(way, axis)
        a, b, c = dot(w, w), dot(p, w), dot(p, p) - big(F(rho)) ** 2
        return (-b + mp.sqrt(b * b - a * c)) / a

    def face(self, carrier, radius, t):
        """A near-face dial's reading: the plunger runs along the carrier's axis to the other's face at x = 0."""
        start, _, axis = self.ray(carrier, t, big(F(radius)), 0)
        other = "movable" if carrier == "stationary" else "stationary"
        origin, (normal, _, _) = self.frames[other]
        way = dot(sub(origin, start), normal) / dot(axis, normal)
        return -way if carrier == "stationary" else way


def frame(axis):
    """Returns axis, right and up of a body; up lies in the vertical plane through the axis, right is up x axis."""
    n = mp.sqrt(axis[0] ** 2 + axis[2] ** 2)
    up = (-axis[2] / n, mpf(0), axis[0] / n)
    right = (up[1] * axis[2] - up[2] * axis[1], up[2] * axis[0] - up[0] * axis[2], up[0] * axis[1] - up[1] * axis[0])
    return axis, right, up


def dot(a, b): return mp.fsum(x * y for x, y in zip(a, b))
def sub(a, b): return tuple(x - y for x, y in zip(a, b))
def across(a, axis): return tuple(x - dot(a, axis) * n for x, n in zip(a, axis))


def rounded(x, step, unit):
    """Writes a length as the dial shows it, to a step given as text in the unit."""
    step = F(step)
    n = int(mp.nint(big(x) / big(step * UNITS["length"][unit])))
    return decimal(n * step) + " " + unit


def crew_clock(t, view):
    """Returns where the crew calls a library position."""
    return -t % 360 if view == "from_stationary" else t


def shown(law, at, step="0.01", unit="mm", sag=0, view="from_movable", zero=None, hours=True):
    """Readings of a sweep at the crew's positions, zeroed at the first or with a given reading there."""
    values = [law(crew_clock(t, view)) + big(F(sag)) * COS[t] for t in at]
    start = big(F(zero)) if zero is not None else mpf(0)
    return [{"at": "%d:00" % (t // 30 or 12) if hours else "%d deg" % t, "value": rounded(v - values[0] + start, step, unit)} for t, v in zip(at, values)]


# ---------------------------------------------------------------- vectors

def sweep(unit, text):
    """Readings from words: '12 0, 3 -0.1, 180d -0.2' in a unit."""
    rows = []
    for part in text.split(","):
        at, value = part.split(maxsplit=1)
        at = at[:-1] + " deg" if at.endswith("d") else at + ":00"
        rows.append({"at": at, "value": value.strip() + " " + unit})
    return rows


def feet(*pairs):
    return [{"name": n, "x": x} for n, x in pairs]


REGIONS = {}
area = Area("dial", REGIONS)
SIMULATED = "readings by a ray to an inclined cylinder or plane, " + MPMATH + ", rounded as the dial shows; then " + FRACTIONS


def put(id, op, region, about, input, source="exact", by=None, published=None, holds=None, truth=None):
    """Adds a vector: both ways, tolerance and flags. holds checks what was printed; truth is (Shafts, reading step in mm)."""
    right = answer(op, input)
    tolerance = tolerance_of(op, input)
    if op in STEPS:
        how = globals()["check_" + op](id, input, right)
    else:
        how = check_hand(id, op, input)
    if holds:
        assert holds(right), (id, right)
    if truth:
        source, by = "simulation", SIMULATED
        near_truth(id, op, input, *truth)
    if op == "separate_runout" and "u" in input["first"]["horizontal"]:
        source, by = "multi_precision", "values in Python fractions, uncertainties with " + MPMATH
    first = "Python fractions: the definition" if op in STEPS else FRACTIONS
    s = {"kind": source, "by": by or first, "second": how}
    if published:
        s["published"] = published
        s["second"] = first + "; " + how
    return area.add(id, op, region, flags_of(op, input, right, tolerance), about, s, input, right, tolerance)


def near_truth(id, op, input, shafts, step):
    """The closed forms give back the shafts that the readings came from, as far as reading steps and second order allow."""
    crew = Crew(op, input)
    oy, sy, oz, sz = shafts.numbers
    d = [length(x["diameter"]) for x in input.values() if isinstance(x, dict) and "diameter" in x]
    x = [length(x["station"]) for x in input.values() if isinstance(x, dict) and "station" in x]
    slope_step = 2 * len(d) * F(step) / min(d) if d else 2 * F(step) / abs(x[0] - x[1])
    far = length(input["span"]) / 2 if "span" in input else max(map(abs, x))
    for line, o, s in ((crew.lines["horizontal"], oy, sy), (crew.lines["vertical"], oz, sz)):
        assert abs(line.slope - s) <= slope_step * F(11, 10) + F(1, 10**9), (id, float(line.slope), float(s))
        assert abs(line.offset - o) <= F(step) + 2 * far * slope_step, (id, float(line.offset), float(o))


def refuse(id, twin, region, code, path, input, about):
    area.refuse(id, twin, region, code, path, input, about)


def near(text, unit_text, digits):
    """Tells whether a quantity rounds to a printed number: near(value, '0.0093 in', 4)."""
    value, unit = unit_text.split()
    return abs(length(text) / UNITS["length"][unit] - F(value)) <= F(1, 2 * 10**digits)

REGIONS.update({
    "printed": ("plain", "numbers of published works"),
    "everyday": ("plain", "four quarters from zero at 12, no droop, metric, the usual carrier and faces"),
    "geometry": ("plain", "readings by exact geometry, to a nanometre and less"),
    "signs": ("plain", "one displacement at a time, to check a sign by heart"),
    "other_carrier": ("plain", "dial or straightedge of the movable shaft"),
    "far_face": ("plain", "plunger of the face dial points back to its carrier"),
    "bore": ("plain", "dial in the other shaft's bore"),
    "from_stationary": ("plain", "crew stands at the stationary end, names of 3 and 9 exchanged"),
    "droop": ("plain", "bracket that droops"),
    "inch": ("plain", "mils on the dials, fractions off the tape"),
    "completed": ("plain", "three quarters read, the fourth by the validity rule"),
    "returned": ("plain", "sweep read back to its start"),
    "own_zero": ("plain", "zero and start of the sweep elsewhere than at 12"),
    "degrees": ("plain", "clock positions in degrees"),
    "indexed": ("plain", "the target turned on between two sweeps, or its runout measured"),
    "two_faces": ("plain", "two face dials half a turn apart"),
    "huge_offset": ("hard", "large offset, slope that hardly shows"),
    "parallel": ("hard", "slope exactly zero, or next to it"),
    "aligned": ("hard", "nothing to find: amplitude zero"),
    "far_feet": ("hard", "feet so far away that they multiply every error"),
    "behind": ("hard", "dial plane on the stationary side, or in the coupling centre"),
    "close_planes": ("hard", "dial planes close together and far from the centre"),
    "missed": ("hard", "readings that break the validity rule"),
    "all_at_once": ("hard", "view, droop, three quarters, return and far faces together"),
    "tiny_huge": ("hard", "readings down to a nanometre or up to centimetres"),
    "other_turns": ("hard", "turns below zero or over a full one"),
    "between_quarters": ("hard", "places between the quarters, the dial at rest at one of them"),
})

# Sound vectors by short names, for the twins below.
V = {}

# ---- rim_face

A = Shafts("0.12", "0.0004", "-0.2", "-0.0007")
A_RIM = shown(lambda t: A.rim("stationary", 40, t, 75), QUARTERS, "0.000001")
A_FACE = shown(lambda t: A.face("stationary", 75, t), QUARTERS, "0.0000001")
assert [r["value"] for r in A_RIM] == ["0 mm", "0.363764 mm", "0.456 mm", "0.091764 mm"], A_RIM
METRIC = feet(("inboard", "300 mm"), ("outboard", "900 mm"))

put("rim-face-mcmillan", "rim_face", "printed",
    "inboard feet 2 mils low, outboard 7: shims of 2 and 7 mils; 3 and 9 are ours, by the validity rule",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "2 in", "readings": sweep("mil", "12 0, 3 1, 6 -4, 9 -5")},
     "face": {"diameter": "12 in", "readings": sweep("mil", "12 0, 3 2.5, 6 3, 9 0.5")},
     "feet": feet(("inboard", "18 in"), ("outboard", "38 in"))},
    "published", "R. B. McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment, Fairmont 2004, example 8-3, pp. 137-141 (read)",
    "-2 and -7 mils, positions of the feet",
    lambda r: [length(m["vertical"]) for m in r["moves"]] == [length("2 mil"), length("7 mil")])

V["rim_face"] = put("rim-face-everyday", "rim_face", "everyday", "a pump set, dials zeroed at 12, read off a step of 0.01 mm",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "40 mm", "readings": sweep("mm", "12 0, 3 0.36, 6 0.46, 9 0.10")},
     "face": {"diameter": "150 mm", "readings": sweep("mm", "12 0, 3 0.08, 6 0.11, 9 0.03")},
     "feet": METRIC}, truth=(A, "0.01"))

put("rim-face-signs", "rim_face", "geometry", "offset and slope in both planes, from exact geometry to a nanometre; the rim dial stands just beyond the centre",
    {"view": "from_movable", "carrier": "stationary", "rim": {"station": "40 mm", "readings": A_RIM},
     "face": {"diameter": "150 mm", "readings": A_FACE}, "feet": feet(("front", "410 mm"), ("back", "1130 mm"))}, truth=(A, "0.000001"))

B = Shafts("-0.31", "0.0011", "0.47", "0.0009")
put("rim-face-other-carrier", "rim_face", "other_carrier", "both dials clamped on the motor's shaft, on a rim and a face of the pump's hub",
    {"view": "from_movable", "carrier": "movable",
     "rim": {"station": "-65 mm", "readings": shown(lambda t: B.rim("movable", -65, t, 80), QUARTERS)},
     "face": {"diameter": "180 mm", "readings": shown(lambda t: B.face("movable", 90, t), QUARTERS)},
     "feet": feet(("inboard", "260 mm"), ("outboard", "710 mm"))}, truth=(B, "0.01"))

E = Shafts("0.17", "0.0005", "-0.29", "-0.0003")
put("rim-face-far", "rim_face", "far_face", "face dial behind the flange, its plunger pointing back",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "55 mm", "readings": shown(lambda t: E.rim("stationary", 55, t, 120), QUARTERS)},
     "face": {"diameter": "210 mm", "far": True, "readings": shown(lambda t: -E.face("stationary", 105, t), QUARTERS)},
     "feet": feet(("inboard", "350 mm"), ("outboard", "1050 mm"))}, truth=(E, "0.01"))

put("rim-face-bore", "rim_face", "bore", "dial in the bore of the other hub, plunger outwards, with a bracket that droops",
    {"view": "from_movable", "carrier": "stationary",
     # The plunger looks outwards: it goes in as the wall comes nearer to the carrier's axis, and out at 12 as the bracket droops.
     "rim": {"station": "25 mm", "bore": True, "sag": "0.03 mm", "readings": shown(lambda t: -E.rim("stationary", 25, t, 45), QUARTERS, sag="-0.03")},
     "face": {"diameter": "120 mm", "readings": shown(lambda t: E.face("stationary", 60, t), QUARTERS)},
     "feet": feet(("inboard", "225 mm"), ("outboard", "585 mm"))}, truth=(E, "0.01"))

put("rim-face-from-stationary", "rim_face", "from_stationary", "readings named by a crew at the pump's end",
    {"view": "from_stationary", "carrier": "stationary",
     "rim": {"station": "48 mm", "readings": shown(lambda t: B.rim("stationary", 48, t, 70), QUARTERS, view="from_stationary")},
     "face": {"diameter": "130 mm", "readings": shown(lambda t: B.face("stationary", 65, t), QUARTERS, view="from_stationary")},
     "feet": feet(("inboard", "310 mm"), ("outboard", "830 mm"))}, truth=(B, "0.01"))

V["rim_face_sag"] = put("rim-face-pump-handbook", "rim_face", "printed", "rim reads 10 mils at the bottom, bracket droops 3: the true vertical offset is 8 mils; the face readings are ours",
    {"view": "from_movable", "carrier": "movable",
     "rim": {"station": "-3 in", "sag": "3 mil", "readings": sweep("mil", "12 0, 3 5, 6 10, 9 5")},
     "face": {"diameter": "6 in", "readings": sweep("mil", "12 0, 3 0, 6 0, 9 0")}},
    "published", "a pump handbook, fig. 19A-D (second-hand)", "8 mils",
    lambda r: length(r["vertical"]["offset"]) == length("8 mil"))

put("rim-face-droop", "rim_face", "droop", "both brackets droop; that of the face dial pulls its plunger out at 12",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "62 mm", "sag": "0.05 mm", "readings": sweep("mm", "12 0, 3 0.13, 6 -0.38, 9 -0.51")},
     "face": {"diameter": "240 mm", "sag": "-0.01 mm", "readings": sweep("mm", "12 0, 3 0.08, 6 0.12, 9 0.04")},
     "feet": feet(("inboard", "420 mm"), ("outboard", "1320 mm"))})

put("rim-face-inch", "rim_face", "inch", "stations and diameter off the tape, dials in mils",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "1 7/16 in", "readings": sweep("mil", "12 0, 3 -7, 6 11, 9 18")},
     "face": {"diameter": "5 3/8 in", "readings": sweep("mil", "12 0, 3 2, 6 -3, 9 -5")},
     "feet": feet(("inboard", "10 5/8 in"), ("outboard", "31 1/2 in"))})

V["rim_face_three"] = put("rim-face-no-nine", "rim_face", "completed", "a pipe stands at 9 o'clock: three readings on both dials",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "35 mm", "readings": sweep("mm", "12 0, 3 0.17, 6 -0.24")},
     "face": {"diameter": "165 mm", "readings": sweep("mm", "12 0, 3 -0.07, 6 0.05")},
     "feet": feet(("inboard", "275 mm"), ("outboard", "765 mm"))})

put("rim-face-returned", "rim_face", "returned", "the rim dial does not come back to zero, the face dial does",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "44 mm", "readings": sweep("mm", "12 0, 3 0.28, 6 0.19, 9 -0.09, 12 0.01")},
     "face": {"diameter": "175 mm", "readings": sweep("mm", "12 0, 3 0.02, 6 0.09, 9 0.07, 12 0")},
     "feet": feet(("inboard", "330 mm"), ("outboard", "980 mm"))})

put("rim-face-own-zero", "rim_face", "own_zero", "rim zeroed at 3 and turned the other way, face from a reading of 1.50 mm",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "52 mm", "readings": sweep("mm", "3 0, 12 -0.15, 9 0.09, 6 0.24")},
     "face": {"diameter": "145 mm", "readings": sweep("mm", "6 1.50, 9 1.44, 12 1.47, 3 1.53")},
     "feet": feet(("inboard", "290 mm"), ("outboard", "870 mm"))})

put("rim-face-degrees", "rim_face", "degrees", "positions in degrees clockwise from 12",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "58 mm", "readings": sweep("mm", "0d 0, 90d -0.33, 180d -0.12, 270d 0.21")},
     "face": {"diameter": "195 mm", "readings": sweep("mm", "0d 0, 90d 0.09, 180d -0.02, 270d -0.11")}})

put("rim-face-huge", "rim_face", "huge_offset", "a machine just set down: 7 mm out, the slope shows in hundredths",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "70 mm", "readings": sweep("mm", "12 0, 3 -9.61, 6 -14.36, 9 -4.75")},
     "face": {"diameter": "320 mm", "readings": sweep("mm", "12 0, 3 0.01, 6 0.01, 9 0")},
     "feet": feet(("inboard", "480 mm"), ("outboard", "1560 mm"))})

put("rim-face-parallel", "rim_face", "parallel", "parallel and out: all feet move alike",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "46 mm", "readings": sweep("mm", "12 0, 3 -0.06, 6 -0.20, 9 -0.14")},
     "face": {"diameter": "155 mm", "readings": sweep("mm", "12 0.02, 3 0.02, 6 0.02, 9 0.02")},
     "feet": feet(("inboard", "315 mm"), ("outboard", "905 mm"))})

put("rim-face-aligned", "rim_face", "aligned", "both dials stand still over the turn, at other readings than zero",
    {"view": "from_movable", "carrier": "movable",
     "rim": {"station": "-38 mm", "readings": sweep("mm", "12 0.4, 3 0.4, 6 0.4, 9 0.4, 12 0.4")},
     "face": {"diameter": "125 mm", "readings": sweep("mm", "12 -0.7, 3 -0.7, 6 -0.7, 9 -0.7")},
     "feet": feet(("inboard", "240 mm"), ("outboard", "660 mm"))})

put("rim-face-far-feet", "rim_face", "far_feet", "a small face and feet at 4 m",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "33 mm", "readings": sweep("mm", "12 0, 3 0.05, 6 0.11, 9 0.06")},
     "face": {"diameter": "60 mm", "readings": sweep("mm", "12 0, 3 0.04, 6 0.03, 9 -0.01")},
     "feet": feet(("inboard", "1.2 m"), ("middle", "2600 mm"), ("outboard", "4 m"))})

put("rim-face-behind", "rim_face", "behind", "the motor's bracket reaches over the gap: its rim dial stands on the stationary side",
    {"view": "from_movable", "carrier": "movable",
     "rim": {"station": "-110 mm", "readings": sweep("mm", "12 0, 3 0.31, 6 0.48, 9 0.17")},
     "face": {"diameter": "225 mm", "readings": sweep("mm", "12 0, 3 -0.12, 6 -0.26, 9 -0.14")},
     "feet": feet(("inboard", "365 mm"), ("outboard", "1015 mm"))})

put("rim-face-missed", "rim_face", "missed", "both sweeps break the validity rule by some hundredths: reported, and answered all the same",
    {"view": "from_stationary", "carrier": "stationary",
     "rim": {"station": "37 mm", "readings": sweep("mm", "12 0, 3 0.24, 6 0.41, 9 0.12")},
     "face": {"diameter": "135 mm", "readings": sweep("mm", "12 0, 3 -0.08, 6 -0.02, 9 0.03")},
     "feet": feet(("inboard", "265 mm"), ("outboard", "745 mm"))})

V["rim_face_all"] = put("rim-face-all-at-once", "rim_face", "all_at_once",
    "crew at the stationary end, dials on the motor's shaft, in a bore and behind a flange, both droop, 3 and 12 not read, one sweep read back",
    {"view": "from_stationary", "carrier": "movable",
     "rim": {"station": "-72 mm", "bore": True, "sag": "0.04 mm", "readings": sweep("mm", "6 0.20, 9 0.31, 12 -0.15, 6 0.21")},
     "face": {"diameter": "205 mm", "far": True, "sag": "0.02 mm", "readings": sweep("mm", "90d -0.05, 180d 0.08, 270d 0.11")},
     "feet": feet(("inboard", "340 mm"), ("outboard", "945 mm"))})

# ---- reverse

V["reverse"] = put("reverse-bloch", "reverse", "printed", "12 mils high at the pump's plane and 7 at the motor's: inboard down 3, outboard up 7; 3 and 9 are ours, by the validity rule",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "7 in", "readings": sweep("in", "12 0, 3 -0.010, 6 -0.014, 9 -0.004")},
     "carried_by_movable": {"station": "-7 in", "readings": sweep("in", "12 0, 3 0.014, 6 0.024, 9 0.010")},
     "feet": feet(("inboard", "19 in"), ("outboard", "45 in"))},
    "published", "H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, ch. 5, p. 203 (read)", "-0.0027 in and +0.0066 in",
    lambda r: near(r["moves"][0]["vertical"], "-0.0027 in", 4) and near(r["moves"][1]["vertical"], "0.0066 in", 4))

V["reverse_metric"] = put("reverse-everyday", "reverse", "everyday", "two brackets over a coupling of 100 mm, read off a step of 0.01 mm",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "50 mm", "readings": shown(lambda t: B.rim("stationary", 50, t, 60), QUARTERS)},
     "carried_by_movable": {"station": "-50 mm", "readings": shown(lambda t: B.rim("movable", -50, t, 60), QUARTERS)},
     "feet": feet(("inboard", "320 mm"), ("outboard", "940 mm"))}, truth=(B, "0.01"))

EXCHANGED = Shafts("0.12", "-0.0004", "0.2", "-0.0007")
put("reverse-exchanged", "reverse", "geometry", "the shafts of dial-rim-face-signs, the crew at the other end and the other machine called movable",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "50 mm", "readings": shown(lambda t: EXCHANGED.rim("stationary", 50, t, 75), QUARTERS, "0.000001")},
     "carried_by_movable": {"station": "-40 mm", "readings": shown(lambda t: EXCHANGED.rim("movable", -40, t, 75), QUARTERS, "0.000001")},
     "feet": feet(("coupling end", "290 mm"), ("free end", "1010 mm"))}, truth=(EXCHANGED, "0.000001"))
# The same two dials seen from the other end: readings of one dial are those of the other case, 3 and 9 exchanged.
swap = shown(lambda t: A.rim("movable", -50, t, 75), (0, 270, 180, 90), "0.000001")
assert [r["value"] for r in swap] == ["0 mm", "-0.065127 mm", "-0.33 mm", "-0.265127 mm"], swap
assert [r["value"] for r in swap] == [r["value"] for r in area.vectors[-1]["input"]["carried_by_stationary"]["readings"]]

C = Shafts("0.26", "-0.0013", "-0.18", "0.0006")
put("reverse-from-stationary", "reverse", "from_stationary", "both dials named by the crew at the pump's end",
    {"view": "from_stationary",
     "carried_by_stationary": {"station": "85 mm", "readings": shown(lambda t: C.rim("stationary", 85, t, 55), QUARTERS, view="from_stationary")},
     "carried_by_movable": {"station": "-70 mm", "readings": shown(lambda t: C.rim("movable", -70, t, 55), QUARTERS, view="from_stationary")},
     "feet": feet(("inboard", "355 mm"), ("outboard", "1195 mm"))}, truth=(C, "0.01"))

put("reverse-droop", "reverse", "droop", "long brackets that droop by different amounts: left in, they make an angle too",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "210 mm", "sag": "0.11 mm", "readings": shown(lambda t: C.rim("stationary", 210, t, 90), QUARTERS, sag="0.11")},
     "carried_by_movable": {"station": "-190 mm", "sag": "0.07 mm", "readings": shown(lambda t: C.rim("movable", -190, t, 90), QUARTERS, sag="0.07")},
     "feet": feet(("inboard", "560 mm"), ("outboard", "1480 mm"))}, truth=(C, "0.01"))

put("reverse-bore", "reverse", "bore", "one of the dials reads in a bore",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "40 mm", "bore": True, "readings": sweep("mm", "12 0, 3 -0.19, 6 0.10, 9 0.29")},
     "carried_by_movable": {"station": "-45 mm", "readings": sweep("mm", "12 0, 3 -0.12, 6 0.14, 9 0.26")},
     "feet": feet(("inboard", "285 mm"), ("outboard", "705 mm"))})

put("reverse-inch", "reverse", "inch", "tenths of a mil on the dials, sixty-fourths off the tape",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "3 9/64 in", "readings": sweep("mil", "12 0, 3 4.5, 6 -6.2, 9 -10.7")},
     "carried_by_movable": {"station": "-2 27/32 in", "readings": sweep("mil", "12 0, 3 1.8, 6 9.4, 9 7.6")},
     "feet": feet(("inboard", "14 1/4 in"), ("outboard", "39 3/4 in"))})

V["reverse_three"] = put("reverse-no-twelve-no-six", "reverse", "completed", "the guard hides 12 on one rim, the base hides 6 on the other",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "66 mm", "readings": sweep("mm", "3 0, 6 -0.17, 9 0.06")},
     "carried_by_movable": {"station": "-58 mm", "readings": sweep("mm", "12 0, 3 0.21, 9 -0.13")},
     "feet": feet(("inboard", "345 mm"), ("outboard", "1035 mm"))})

V["reverse_back"] = put("reverse-returned", "reverse", "returned", "both sweeps end at their start, one of them 0.02 mm off",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "74 mm", "readings": sweep("mm", "12 0, 3 0.09, 6 -0.31, 9 -0.40, 12 -0.02")},
     "carried_by_movable": {"station": "-69 mm", "readings": sweep("mm", "12 0, 3 -0.15, 6 0.22, 9 0.37, 12 0")},
     "feet": feet(("inboard", "385 mm"), ("outboard", "1155 mm"))})

put("reverse-own-zero", "reverse", "own_zero", "the second dial stands opposite to the first: zeroed at 6, and turned anticlockwise",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "57 mm", "readings": sweep("mm", "12 0.10, 9 0.32, 6 0.45, 3 0.23")},
     "carried_by_movable": {"station": "-61 mm", "readings": sweep("mm", "6 0, 3 -0.08, 12 -0.24, 9 -0.16")},
     "feet": feet(("inboard", "325 mm"), ("outboard", "895 mm"))})

put("reverse-degrees", "reverse", "degrees", "positions in degrees, one dial swept from 270 on",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "92 mm", "readings": sweep("mm", "0d 0, 90d 0.14, 180d 0.37, 270d 0.23")},
     "carried_by_movable": {"station": "-88 mm", "readings": sweep("mm", "270d 0, 0d -0.26, 90d -0.58, 180d -0.32")}})

put("reverse-huge", "reverse", "huge_offset", "9 mm too high, the two rims differ by a hundredth",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "105 mm", "readings": sweep("mm", "12 0, 3 -3.22, 6 -18.04, 9 -14.82")},
     "carried_by_movable": {"station": "-115 mm", "readings": sweep("mm", "12 0, 3 3.21, 6 18.02, 9 14.81")},
     "feet": feet(("inboard", "610 mm"), ("outboard", "1730 mm"))})

put("reverse-parallel", "reverse", "parallel", "both rims show the same with the sign turned: no slope at all, a foot at the coupling centre moves as all others",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "0.1 m", "readings": sweep("mm", "12 0, 3 0.33, 6 0.27, 9 -0.06")},
     "carried_by_movable": {"station": "-120 mm", "readings": sweep("mm", "12 0, 3 -0.33, 6 -0.27, 9 0.06")},
     "feet": feet(("middle", "0 mm"), ("outboard", "1270 mm"))})

put("reverse-aligned", "reverse", "aligned", "nothing but droop on both dials: the shafts are in line",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "130 mm", "sag": "0.06 mm", "readings": sweep("mm", "12 0, 3 -0.06, 6 -0.12, 9 -0.06")},
     "carried_by_movable": {"station": "-140 mm", "sag": "0.08 mm", "readings": sweep("mm", "12 0, 3 -0.08, 6 -0.16, 9 -0.08")},
     "feet": feet(("inboard", "430 mm"), ("outboard", "1390 mm"))})

put("reverse-far-feet", "reverse", "far_feet", "planes 46 mm apart, feet out to 4 m",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "22 mm", "readings": sweep("mm", "12 0, 3 0.07, 6 0.16, 9 0.09")},
     "carried_by_movable": {"station": "-24 mm", "readings": sweep("mm", "12 0, 3 -0.05, 6 -0.18, 9 -0.13")},
     "feet": feet(("inboard", "0.95 m"), ("outboard", "3985 mm"))})

put("reverse-both-behind", "reverse", "behind", "both dial planes on the stationary side of the coupling centre",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "-35 mm", "readings": sweep("mm", "12 0, 3 -0.11, 6 0.23, 9 0.34")},
     "carried_by_movable": {"station": "-155 mm", "readings": sweep("mm", "12 0, 3 0.18, 6 -0.29, 9 -0.47")},
     "feet": feet(("inboard", "395 mm"), ("outboard", "1225 mm"))})

put("reverse-centre-and-before", "reverse", "behind", "one dial in the coupling centre, the other on the movable side",
    {"view": "from_stationary",
     "carried_by_stationary": {"station": "145 mm", "readings": sweep("mm", "12 0, 3 -0.12, 6 0.17, 9 0.29")},
     "carried_by_movable": {"station": "0 mm", "readings": sweep("mm", "12 0, 3 0.15, 6 -0.21, 9 -0.36")},
     "feet": feet(("inboard", "405 mm"), ("outboard", "1245 mm"))})

put("reverse-close-planes", "reverse", "close_planes", "two dials 12 mm apart at the end of a long shaft, 1.9 m from the coupling",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "1912 mm", "readings": sweep("mm", "12 0, 3 0.44, 6 0.61, 9 0.17")},
     "carried_by_movable": {"station": "1900 mm", "readings": sweep("mm", "12 0, 3 -0.43, 6 -0.59, 9 -0.16")},
     "feet": feet(("inboard", "520 mm"), ("outboard", "2380 mm"))})

put("reverse-missed", "reverse", "missed", "both sets miss the validity rule, one by a quarter of a millimetre",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "81 mm", "readings": sweep("mm", "12 0, 3 0.31, 6 0.12, 9 -0.44")},
     "carried_by_movable": {"station": "-79 mm", "readings": sweep("mm", "12 0, 3 -0.26, 6 -0.08, 9 0.15")},
     "feet": feet(("inboard", "375 mm"), ("outboard", "1105 mm"))})

V["reverse_all"] = put("reverse-all-at-once", "reverse", "all_at_once", "inches, a bore, droop, crew at the stationary end, three quarters in another order and back again",
    {"view": "from_stationary",
     "carried_by_stationary": {"station": "4 5/8 in", "sag": "1.5 mil", "readings": sweep("mil", "9 12, 12 3, 3 -8, 9 12.5")},
     "carried_by_movable": {"station": "-3 11/16 in", "bore": True, "sag": "2 mil", "readings": sweep("mil", "6 0, 9 -7, 3 9, 12 2, 6 -0.5")},
     "feet": feet(("inboard", "1 1/2 ft"), ("outboard", "52 3/8 in"))})

put("reverse-nanometres", "reverse", "tiny_huge", "a laboratory spindle: readings of some nanometres, planes 30 mm apart",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "1.4 cm", "readings": sweep("nm", "12 0, 3 7, 6 -12, 9 -19")},
     "carried_by_movable": {"station": "-16 mm", "readings": sweep("um", "12 0, 3 -0.003, 6 0.008, 9 0.011")},
     "feet": feet(("inboard", "110 mm"), ("outboard", "190 mm"))})

# ---- face_face

def joint(y, z):
    """Two bodies at a spacer's joint, the other inclined by y and z."""
    return Shafts(0, y, 0, z)


SPACER = joint("0.00035", "-0.0006"), joint("0.00005", "-0.0001")
V["face_face"] = put("face-face-spacer", "face_face", "geometry", "a spacer of 800 mm: the shafts of dial-rim-face-signs, from exact geometry to a tenth of a micrometre",
    {"view": "from_movable", "span": "800 mm",
     "at_stationary": {"diameter": "200 mm", "readings": shown(lambda t: SPACER[0].face("stationary", 100, t), QUARTERS, "0.0001")},
     "at_movable": {"diameter": "160 mm", "readings": shown(lambda t: SPACER[1].face("stationary", 80, t), QUARTERS, "0.0001")},
     "feet": feet(("inboard", "700 mm"), ("outboard", "1500 mm"))}, truth=(A, "0.0001"))
assert area.vectors[-1]["result"]["vertical"] == {"offset": "-0.2 mm", "slope": "-0.7 mm/m"}

put("face-face-everyday", "face_face", "everyday", "a cooling tower drive, dials at both joints from zero at 12",
    {"view": "from_movable", "span": "1850 mm",
     "at_stationary": {"diameter": "230 mm", "readings": sweep("mm", "12 0, 3 0.11, 6 -0.19, 9 -0.30")},
     "at_movable": {"diameter": "225 mm", "readings": sweep("mm", "12 0, 3 -0.06, 6 0.08, 9 0.14")},
     "feet": feet(("inboard", "1220 mm"), ("outboard", "1780 mm"))})

put("face-face-far", "face_face", "far_face", "at the stationary joint the plunger points back",
    {"view": "from_movable", "span": "640 mm",
     "at_stationary": {"diameter": "185 mm", "far": True, "readings": sweep("mm", "12 0, 3 -0.04, 6 0.13, 9 0.17")},
     "at_movable": {"diameter": "190 mm", "readings": sweep("mm", "12 0, 3 0.10, 6 0.03, 9 -0.07")},
     "feet": feet(("inboard", "550 mm"), ("outboard", "1310 mm"))})

put("face-face-from-stationary", "face_face", "from_stationary", "both joints named by the crew at the stationary end",
    {"view": "from_stationary", "span": "1120 mm",
     "at_stationary": {"diameter": "260 mm", "readings": sweep("mm", "12 0, 3 0.15, 6 0.06, 9 -0.09")},
     "at_movable": {"diameter": "255 mm", "readings": sweep("mm", "12 0, 3 -0.02, 6 -0.13, 9 -0.11")},
     "feet": feet(("inboard", "810 mm"), ("outboard", "1640 mm"))})

put("face-face-droop", "face_face", "droop", "one dial is pushed in at 12 by its arm's weight, the other pulled out",
    {"view": "from_movable", "span": "925 mm",
     "at_stationary": {"diameter": "300 mm", "sag": "0.02 mm", "readings": sweep("mm", "12 0, 3 0.07, 6 -0.09, 9 -0.16")},
     "at_movable": {"diameter": "310 mm", "sag": "-0.03 mm", "readings": sweep("mm", "12 0, 3 -0.05, 6 0.12, 9 0.17")},
     "feet": feet(("inboard", "690 mm"), ("outboard", "1450 mm"))})

put("face-face-inch", "face_face", "inch", "spacer off the tape, dials in mils",
    {"view": "from_movable", "span": "31 1/2 in",
     "at_stationary": {"diameter": "7 3/4 in", "readings": sweep("mil", "12 0, 3 -5, 6 7, 9 12")},
     "at_movable": {"diameter": "7 13/16 in", "readings": sweep("mil", "12 0, 3 3, 6 -4, 9 -7")},
     "feet": feet(("inboard", "26 1/4 in"), ("outboard", "58 1/8 in"))})

put("face-face-completed", "face_face", "completed", "6 out of reach at one joint, 3 at the other",
    {"view": "from_movable", "span": "1400 mm",
     "at_stationary": {"diameter": "215 mm", "readings": sweep("mm", "12 0, 3 0.12, 9 -0.08")},
     "at_movable": {"diameter": "220 mm", "readings": sweep("mm", "12 0, 6 0.09, 9 -0.03")},
     "feet": feet(("inboard", "980 mm"), ("outboard", "1920 mm"))})

put("face-face-returned", "face_face", "returned", "both joints read round to the start",
    {"view": "from_movable", "span": "505 mm",
     "at_stationary": {"diameter": "170 mm", "readings": sweep("mm", "12 0, 3 -0.09, 6 -0.14, 9 -0.05, 12 0.01")},
     "at_movable": {"diameter": "172 mm", "readings": sweep("mm", "12 0, 3 0.04, 6 0.11, 9 0.07, 12 -0.01")},
     "feet": feet(("inboard", "460 mm"), ("outboard", "1140 mm"))})

put("face-face-own-zero", "face_face", "own_zero", "the joints swept from different places, neither from zero",
    {"view": "from_movable", "span": "760 mm",
     "at_stationary": {"diameter": "196 mm", "readings": sweep("mm", "9 2.00, 12 1.93, 3 2.05, 6 2.12")},
     "at_movable": {"diameter": "204 mm", "readings": sweep("mm", "6 0.50, 3 0.42, 12 0.45, 9 0.53")},
     "feet": feet(("inboard", "620 mm"), ("outboard", "1380 mm"))})

put("face-face-offset-only", "face_face", "parallel", "the joints tilt against one another: offset and no slope",
    {"view": "from_movable", "span": "1000 mm",
     "at_stationary": {"diameter": "250 mm", "readings": sweep("mm", "12 0, 3 -0.02, 6 -0.12, 9 -0.10")},
     "at_movable": {"diameter": "250 mm", "readings": sweep("mm", "12 0, 3 0.02, 6 0.12, 9 0.10")},
     "feet": feet(("inboard", "720 mm"), ("outboard", "1560 mm"))})

put("face-face-slope-only", "face_face", "parallel", "the joints tilt alike: slope and no offset, the joints may be exchanged unseen",
    {"view": "from_stationary", "span": "880 mm",
     "at_stationary": {"diameter": "240 mm", "far": True, "readings": sweep("mm", "12 0, 3 0.07, 6 -0.05, 9 -0.12")},
     "at_movable": {"diameter": "120 mm", "far": True, "readings": sweep("mm", "12 0, 3 0.035, 6 -0.025, 9 -0.06")}})

put("face-face-long", "face_face", "far_feet", "5.6 m of carbon tube between small flanges, a foot at 4 m behind the centre",
    {"view": "from_movable", "span": "5.6 m",
     "at_stationary": {"diameter": "95 mm", "readings": sweep("mm", "12 0, 3 0.01, 6 0.04, 9 0.03")},
     "at_movable": {"diameter": "90 mm", "readings": sweep("mm", "12 0, 3 -0.03, 6 -0.02, 9 0.01")},
     "feet": feet(("inboard", "3120 mm"), ("outboard", "4000 mm"))})

put("face-face-missed", "face_face", "missed", "the faces run out by the grain of the casting: the rule is missed at both",
    {"view": "from_movable", "span": "590 mm",
     "at_stationary": {"diameter": "152 mm", "readings": sweep("mm", "12 0, 3 0.10, 6 0.16, 9 0.01")},
     "at_movable": {"diameter": "148 mm", "readings": sweep("mm", "12 0, 3 -0.06, 6 -0.08, 9 0.05")},
     "feet": feet(("inboard", "530 mm"), ("outboard", "1270 mm"))})

put("face-face-all-at-once", "face_face", "all_at_once", "far faces, droop, crew at the stationary end, three quarters in degrees and back, inches",
    {"view": "from_stationary", "span": "42 3/16 in",
     "at_stationary": {"diameter": "9 1/2 in", "far": True, "sag": "1 mil", "readings": sweep("mil", "180d 4, 90d -3, 0d 6, 180d 4.5")},
     "at_movable": {"diameter": "8 7/8 in", "far": True, "sag": "-0.5 mil", "readings": sweep("mil", "3 10, 12 7, 9 2, 6 5, 3 10.5")},
     "feet": feet(("inboard", "35 1/4 in"), ("outboard", "70 5/8 in"))})

# ---- one displacement at a time, for the board of a classroom

put("signs-high", "reverse", "signs", "the movable shaft 0.10 mm high and parallel: one dial goes down to -0.20 at 6, the other up to +0.20",
    {"view": "from_movable",
     "carried_by_stationary": {"station": "60 mm", "readings": sweep("mm", "12 0, 3 -0.10, 6 -0.20, 9 -0.10")},
     "carried_by_movable": {"station": "-60 mm", "readings": sweep("mm", "12 0, 3 0.10, 6 0.20, 9 0.10")},
     "feet": feet(("inboard", "300 mm"), ("outboard", "800 mm"))})

put("signs-to-three", "rim_face", "signs", "0.10 mm towards 3 o'clock and 1 mm/m rising: rim plus at 3, face minus at 6",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "0 mm", "readings": sweep("mm", "12 0, 3 0.10, 6 0, 9 -0.10")},
     "face": {"diameter": "100 mm", "readings": sweep("mm", "12 0, 3 -0.05, 6 -0.10, 9 -0.05")},
     "feet": feet(("inboard", "200 mm"), ("outboard", "600 mm"))})

put("signs-open-below", "straightedge_gap", "signs", "high and rising: the straightedge on the pump's rim is lifted off at the bottom, the gap opens there too",
    {"view": "from_movable",
     "straightedge": {"on": "stationary", "station": "20 mm", "readings": sweep("mm", "12 0, 3 0.12, 6 0.24, 9 0.12")},
     "gap": {"diameter": "100 mm", "readings": sweep("mm", "12 3.00, 3 3.05, 6 3.10, 9 3.05")},
     "feet": feet(("inboard", "220 mm"), ("outboard", "620 mm"))})

# ---- rim_gap

V["rim_gap"] = put("rim-gap-compressor", "rim_gap", "printed",
    "gap 12 mils wider at the top of a 5 inch hub, bolts 30 inches apart, rim without a sign: 72 mils from the front shims to the rear; stations are ours",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "1 1/4 in", "readings": sweep("in", "12 0, 3 0, 6 0, 9 0")},
     "gap": {"diameter": "5 in", "readings": sweep("in", "12 0.112, 3 0.106, 6 0.100, 9 0.106")},
     "feet": feet(("front", "8 in"), ("rear", "38 in"))},
    "published", "a compressor builder's start-up manual, p. 213 (read)", "0.072 in",
    lambda r: length(r["moves"][1]["vertical"]) - length(r["moves"][0]["vertical"]) == length("0.072 in"))

V["rim_gap_metric"] = put("rim-gap-everyday", "rim_gap", "everyday", "dial on the rim, an inside gauge between the faces",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "28 mm", "readings": sweep("mm", "12 0, 3 0.22, 6 -0.18, 9 -0.40")},
     "gap": {"diameter": "140 mm", "readings": sweep("mm", "12 4.06, 3 4.11, 6 4.15, 9 4.10")},
     "feet": feet(("inboard", "255 mm"), ("outboard", "685 mm"))})

D = Shafts("-0.44", "-0.0008", "0.23", "-0.0012")
def gap_of(shafts, radius):
    return lambda t: 6 - shafts.face("stationary", radius, t)


put("rim-gap-other-carrier", "rim_gap", "other_carrier", "the dial sits on the motor's shaft, the gauge belongs to neither",
    {"view": "from_movable", "carrier": "movable",
     "rim": {"station": "-42 mm", "readings": shown(lambda t: D.rim("movable", -42, t, 65), QUARTERS)},
     "gap": {"diameter": "128 mm", "readings": shown(gap_of(D, 64), QUARTERS, zero="6.05")},
     "feet": feet(("inboard", "270 mm"), ("outboard", "730 mm"))}, truth=(D, "0.01"))

put("rim-gap-from-stationary", "rim_gap", "from_stationary", "gap and rim named from the stationary end",
    {"view": "from_stationary", "carrier": "stationary",
     "rim": {"station": "31 mm", "readings": shown(lambda t: D.rim("stationary", 31, t, 65), QUARTERS, view="from_stationary")},
     "gap": {"diameter": "122 mm", "readings": shown(gap_of(D, 61), QUARTERS, zero="3.20", view="from_stationary")},
     "feet": feet(("inboard", "245 mm"), ("outboard", "655 mm"))}, truth=(D, "0.01"))

put("rim-gap-handbook-stationary", "rim_gap", "droop", "the handbook's bracket of 3 mils on the stationary shaft: 8 mils low; the even gap is ours",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "2 in", "sag": "3 mil", "readings": sweep("mil", "12 0, 3 5, 6 10, 9 5")},
     "gap": {"diameter": "6 in", "readings": sweep("mil", "12 125, 3 125, 6 125, 9 125")}},
    "published", "a pump handbook, fig. 19A-D (second-hand)", "8 mils",
    lambda r: length(r["vertical"]["offset"]) == length("-8 mil"))

put("rim-gap-bore", "rim_gap", "bore", "dial in the bore, feelers between the faces",
    {"view": "from_movable", "carrier": "movable",
     "rim": {"station": "-20 mm", "bore": True, "readings": sweep("mm", "12 0, 3 0.14, 6 0.26, 9 0.12")},
     "gap": {"diameter": "112 mm", "readings": sweep("mm", "12 2.50, 3 2.44, 6 2.41, 9 2.47")},
     "feet": feet(("inboard", "235 mm"), ("outboard", "625 mm"))})

put("rim-gap-inch", "rim_gap", "inch", "feelers in decimals of an inch, all else off the tape",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "1 3/16 in", "readings": sweep("mil", "12 0, 3 13, 6 9, 9 -4")},
     "gap": {"diameter": "4 15/16 in", "readings": sweep("in", "12 0.187, 3 0.190, 6 0.193, 9 0.190")},
     "feet": feet(("inboard", "9 7/8 in"), ("outboard", "27 1/4 in"))})

put("rim-gap-completed", "rim_gap", "completed", "no feeler fits at 12 for the guard, no dial at 6",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "43 mm", "readings": sweep("mm", "12 0, 3 -0.28, 9 0.16")},
     "gap": {"diameter": "158 mm", "readings": sweep("mm", "3 3.36, 6 3.30, 9 3.25")},
     "feet": feet(("inboard", "305 mm"), ("outboard", "885 mm"))})

put("rim-gap-returned", "rim_gap", "returned", "the gap is measured at 12 again: the shafts drifted apart by 0.04 mm",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "36 mm", "readings": sweep("mm", "12 0, 3 0.05, 6 -0.22, 9 -0.27, 12 0")},
     "gap": {"diameter": "162 mm", "readings": sweep("mm", "12 5.10, 3 5.13, 6 5.21, 9 5.18, 12 5.14")},
     "feet": feet(("inboard", "318 mm"), ("outboard", "922 mm"))})

put("rim-gap-own-zero", "rim_gap", "own_zero", "gap measured up one side and down the other, rim zeroed at 9",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "49 mm", "readings": sweep("mm", "9 0, 12 0.13, 3 0.30, 6 0.17")},
     "gap": {"diameter": "176 mm", "readings": sweep("mm", "6 4.42, 3 4.46, 12 4.55, 9 4.51")},
     "feet": feet(("inboard", "336 mm"), ("outboard", "954 mm"))})

put("rim-gap-huge", "rim_gap", "huge_offset", "11 mm low on a large hub, the gap even to a hundredth",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "88 mm", "readings": sweep("mm", "12 0, 3 14.18, 6 22.46, 9 8.28")},
     "gap": {"diameter": "1900 mm", "readings": sweep("mm", "12 12.40, 3 12.41, 6 12.40, 9 12.39")},
     "feet": feet(("inboard", "1150 mm"), ("outboard", "3450 mm"))})

put("rim-gap-dial-behind", "rim_gap", "behind", "the stationary bracket turned back on itself reads the rim of a long hub, on the stationary side of the centre",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "-18 mm", "readings": sweep("mm", "12 0, 3 -0.21, 6 -0.34, 9 -0.13")},
     "gap": {"diameter": "133 mm", "readings": sweep("mm", "12 2.00, 3 2.05, 6 1.92, 9 1.87")},
     "feet": feet(("inboard", "248 mm"), ("outboard", "672 mm"))})

put("rim-gap-all-at-once", "rim_gap", "all_at_once", "inches and degrees, droop in a bore, crew at the stationary end, three quarters and back",
    {"view": "from_stationary", "carrier": "stationary",
     "rim": {"station": "1 5/8 in", "bore": True, "sag": "1 mil", "readings": sweep("mil", "270d 2, 180d -6, 90d 5, 270d 2.5")},
     "gap": {"diameter": "6 7/16 in", "readings": sweep("in", "9 0.250, 6 0.256, 3 0.253, 9 0.249")},
     "feet": feet(("inboard", "12 3/4 in"), ("outboard", "36 1/8 in"))})

# ---- straightedge_gap

V["straightedge"] = put("straightedge-everyday", "straightedge_gap", "everyday", "straightedge on the pump's rim, feelers under it at the motor's",
    {"view": "from_movable",
     "straightedge": {"on": "stationary", "station": "18 mm", "readings": sweep("mm", "12 0.55, 3 0.30, 6 0.05, 9 0.30")},
     "gap": {"diameter": "98 mm", "readings": sweep("mm", "12 3.00, 3 3.15, 6 3.25, 9 3.10")},
     "feet": feet(("inboard", "185 mm"), ("outboard", "435 mm"))})

def under_edge(shafts, on, x, rho):
    """The feeler under a straightedge that lies along the axis of the shaft it lies on: the rims' radii differ by 1 mm."""
    return lambda t: 1 - shafts.rim(on, x, t, rho)


put("straightedge-on-movable", "straightedge_gap", "other_carrier", "straightedge on the motor's rim",
    {"view": "from_movable",
     "straightedge": {"on": "movable", "station": "-22 mm", "readings": shown(under_edge(D, "movable", -22, 50), QUARTERS, "0.05", zero="0.80")},
     "gap": {"diameter": "105 mm", "readings": shown(gap_of(D, F(105, 2)), QUARTERS, "0.05", zero="3.10")},
     "feet": feet(("inboard", "195 mm"), ("outboard", "515 mm"))}, truth=(D, "0.05"))

put("straightedge-from-stationary", "straightedge_gap", "from_stationary", "the fitter kneels at the pump",
    {"view": "from_stationary",
     "straightedge": {"on": "stationary", "station": "21 mm", "readings": shown(under_edge(B, "stationary", 21, 50), QUARTERS, "0.05", zero="0.40", view="from_stationary")},
     "gap": {"diameter": "102 mm", "readings": shown(gap_of(B, 51), QUARTERS, "0.05", zero="2.90", view="from_stationary")},
     "feet": feet(("inboard", "205 mm"), ("outboard", "545 mm"))}, truth=(B, "0.05"))

put("straightedge-inch", "straightedge_gap", "inch", "feelers in mils, a taper gauge in thirty-seconds",
    {"view": "from_movable",
     "straightedge": {"on": "stationary", "station": "15/16 in", "readings": sweep("mil", "12 25, 3 16, 6 9, 9 18")},
     "gap": {"diameter": "4 1/8 in", "readings": sweep("in", "12 1/8, 3 9/64, 6 5/32, 9 9/64")},
     "feet": feet(("inboard", "7 3/4 in"), ("outboard", "19 1/2 in"))})

put("straightedge-completed", "straightedge_gap", "completed", "3 o'clock lies against a wall: neither feeler nor gauge goes in",
    {"view": "from_movable",
     "straightedge": {"on": "stationary", "station": "26 mm", "readings": sweep("mm", "12 0.20, 6 0.75, 9 0.60")},
     "gap": {"diameter": "118 mm", "readings": sweep("mm", "12 3.40, 6 3.25, 9 3.20")},
     "feet": feet(("inboard", "215 mm"), ("outboard", "565 mm"))})

put("straightedge-returned", "straightedge_gap", "returned", "feelers read round to 12 again",
    {"view": "from_movable",
     "straightedge": {"on": "stationary", "station": "24 mm", "readings": sweep("mm", "12 0.45, 3 0.65, 6 0.30, 9 0.10, 12 0.50")},
     "gap": {"diameter": "115 mm", "readings": sweep("mm", "12 2.80, 3 2.90, 6 2.95, 9 2.85, 12 2.80")},
     "feet": feet(("inboard", "212 mm"), ("outboard", "558 mm"))})

put("straightedge-other-order", "straightedge_gap", "own_zero", "top and bottom first, then the sides",
    {"view": "from_movable",
     "straightedge": {"on": "stationary", "station": "29 mm", "readings": sweep("mm", "12 0.15, 6 0.90, 3 0.70, 9 0.35")},
     "gap": {"diameter": "124 mm", "readings": sweep("mm", "12 4.10, 6 4.30, 3 4.15, 9 4.25")},
     "feet": feet(("inboard", "226 mm"), ("outboard", "594 mm"))})

put("straightedge-degrees", "straightedge_gap", "degrees", "places in degrees, no feet asked for",
    {"view": "from_movable",
     "straightedge": {"on": "movable", "station": "-27 mm", "readings": sweep("mm", "0d 0.60, 90d 0.25, 180d 0.35, 270d 0.70")},
     "gap": {"diameter": "138 mm", "readings": sweep("mm", "0d 3.55, 90d 3.70, 180d 3.50, 270d 3.35")}})

put("straightedge-at-centre", "straightedge_gap", "behind", "feelers at the edge of the rim, in the coupling centre: nothing to carry",
    {"view": "from_movable",
     "straightedge": {"on": "stationary", "station": "0 mm", "readings": sweep("mm", "12 0.35, 3 0.20, 6 0.85, 9 1.00")},
     "gap": {"diameter": "131 mm", "readings": sweep("mm", "12 3.05, 3 3.20, 6 3.30, 9 3.15")},
     "feet": feet(("inboard", "238 mm"), ("outboard", "632 mm"))})

put("straightedge-parallel", "straightedge_gap", "parallel", "the same gap all round, the rims stepped",
    {"view": "from_stationary",
     "straightedge": {"on": "stationary", "station": "32 mm", "readings": sweep("mm", "12 0.95, 3 0.25, 6 0.25, 9 0.95")},
     "gap": {"diameter": "142 mm", "readings": sweep("mm", "12 3.00, 3 3.00, 6 3.00, 9 3.00")},
     "feet": feet(("inboard", "258 mm"), ("outboard", "692 mm"))})

put("straightedge-missed", "straightedge_gap", "missed", "feelers of 0.05 mm: the rule is missed by a whole leaf and more",
    {"view": "from_movable",
     "straightedge": {"on": "movable", "station": "-34 mm", "readings": sweep("mm", "12 0.30, 3 0.55, 6 0.70, 9 0.35")},
     "gap": {"diameter": "148 mm", "readings": sweep("mm", "12 3.60, 3 3.45, 6 3.35, 9 3.60")},
     "feet": feet(("inboard", "266 mm"), ("outboard", "714 mm"))})

# ---- quarters, fourth, mandrel_sag

def set_of(unit, *values):
    return {k: "%s %s" % (v, unit) for k, v in zip(("at12", "at3", "at6", "at9"), values)}


HANDBOOK = "J. Piotrowski, Shaft Alignment Handbook, 3rd ed., ch. 8, fig. 8.10 (second-hand); east taken as 3 o'clock"


def piotrowski(r):
    return length(r["miss"]) == 0 and {k: length(v) for k, v in r["half"].items()} == {"horizontal": length("-30 mil"), "vertical": length("20 mil")}


V["quarters"] = put("quarters-handbook", "quarters", "printed", "top and bottom make as much as east and west: a valid set",
    set_of("mil", 0, -50, -40, 10), "published", HANDBOOK, "T 0, E -50, W +10, B -40, valid", piotrowski)

put("quarters-handbook-rezeroed", "quarters", "own_zero", "the same set zeroed on the east: other readings, the same misalignment",
    set_of("mil", 50, 0, 10, 60), "published", HANDBOOK, "T +50, E 0, W +60, B +10", piotrowski)

put("quarters-total-reading", "quarters", "everyday", "the manual judges by the larger total reading, top to bottom or side to side, which is twice the offset; the numbers are ours",
    set_of("mm", 0, "0.07", "-0.18", "-0.25"), "published", "US Army TM 10-4320-307-24, 3-7 (read)", "total reading = 2 (twice the offset)",
    lambda r: max(abs(length(v)) for v in r["half"].values()) * 2 == max(F("0.18"), F("0.32")))

put("quarters-missed", "quarters", "missed", "a dial that slipped on its post: a miss of 0.13 mm",
    set_of("mm", "0.02", "0.31", "0.24", "-0.18"))

put("quarters-still", "quarters", "aligned", "the dial does not move: shafts in line, or a plunger that does not touch",
    set_of("mm", "1.25", "1.25", "1.25", "1.25"))

put("quarters-huge", "quarters", "tiny_huge", "two turns of a large dial on one side, a micrometre on the other",
    set_of("mm", "0", "24.861", "24.86", "-0.001"))

V["fourth"] = put("fourth-handbook", "fourth", "printed", "west from top, bottom and east: the second set of the handbook, zeroed on the east",
    {"opposite": "0 mil", "across": ["-30 mil", "-10 mil"]}, "published", HANDBOOK, "W -40",
    lambda r: length(r["reading"]) == length("-40 mil"))

put("fourth-bottom", "fourth", "everyday", "the bottom cannot be seen: the sides less the top",
    {"opposite": "0.15 mm", "across": ["-0.22 mm", "0.58 mm"]})

put("fourth-inch", "fourth", "inch", "tape fractions for readings of a slide between large flanges",
    {"opposite": "1 1/16 in", "across": ["1 7/32 in", "63/64 in"]})

put("fourth-units", "fourth", "tiny_huge", "one reading in mils, one in millimetres, one in micrometres, all but cancelling",
    {"opposite": "100 mil", "across": ["1.27 mm", "1270.001 um"]})

V["mandrel"] = put("mandrel-sag-turned", "mandrel_sag", "printed", "from top to bottom the dial shows twice the droop of 3 mils, as in the pump handbook's figure",
    {"at12": "0 mil", "at6": "-6 mil"}, "published",
    "US Bureau of Reclamation, Maintenance Scheduling for Mechanical Equipment (FIST 4-1A), p. 17 (read), the rule; a pump handbook, fig. 19A-D (second-hand), the size", "3 mils",
    lambda r: length(r["sag"]) == length("3 mil"))

put("mandrel-sag-from-elsewhere", "mandrel_sag", "own_zero", "zeroed at the bottom: the top shows plus twice the droop",
    {"at12": "0.17 mm", "at6": "0 mm"})

put("mandrel-sag-inch", "mandrel_sag", "inch", "a long bracket on a pipe of 2 inches, dial preset to a hundred mils",
    {"at12": "100 mil", "at6": "86.5 mil"})

put("mandrel-sag-stiff", "mandrel_sag", "aligned", "no droop to be seen",
    {"at12": "0.5 mm", "at6": "0.5 mm"})

put("mandrel-sag-fine", "mandrel_sag", "tiny_huge", "a stub bracket under a comparator: 80 nm",
    {"at12": "1.00003 mm", "at6": "999.87 um"})

# ---- remove_runout, separate_runout, without_float

def turns(unit, text):
    """Runout from words: '0 0, 90 0.02' in degrees and a unit."""
    return [{"turned": "%s deg" % a, "value": "%s %s" % (v, unit)} for a, v in (p.split() for p in text.split(","))]


V["runout"] = put("runout-rim", "remove_runout", "indexed", "a rim bored off its centre: read under a dial standing still at 12, then taken off",
    {"readings": sweep("mm", "12 0, 3 0.16, 6 0.31, 9 0.09"), "t0": "12:00", "runout": turns("mm", "0 0, 90 0.03, 180 -0.02, 270 -0.05")})

put("runout-inch", "remove_runout", "inch", "in mils and tenths, a dent at one place",
    {"readings": sweep("mil", "12 0, 3 -4.2, 6 -9.1, 9 -6.6"), "t0": "12:00", "runout": turns("mil", "0 0, 90 0.4, 180 0.3, 270 -1.8")})

put("runout-degrees", "remove_runout", "degrees", "positions in degrees, the runout read at 3",
    {"readings": sweep("mm", "0d 0, 90d -0.12, 180d -0.27, 270d -0.14"), "t0": "90 deg", "runout": turns("mm", "0 0, 90 0.01, 180 0.04, 270 -0.03")})

put("runout-own-zero", "remove_runout", "own_zero", "sweep from 6 on, turned anticlockwise, runout zeroed after a quarter turn",
    {"readings": sweep("mm", "6 0.40, 3 0.28, 12 0.11, 9 0.22"), "t0": "6:00", "runout": turns("mm", "90 0, 180 -0.06, 270 0.02, 0 0.05")})

put("runout-round", "remove_runout", "aligned", "the surface runs true, its dial stood at 0.50 mm all the way: the readings keep their differences",
    {"readings": sweep("mm", "12 0, 3 0.21, 6 0.17, 9 -0.04"), "t0": "12:00", "runout": turns("mm", "0 0.50, 90 0.50, 180 0.50, 270 0.50")})

put("runout-eighths", "remove_runout", "between_quarters", "eight places, the dial at rest at half past ten",
    {"readings": [{"at": a, "value": v + " mm"} for a, v in (("12:00", "0"), ("1:30", "0.07"), ("3:00", "0.11"), ("4:30", "0.05"),
                                                            ("6:00", "-0.04"), ("7:30", "-0.12"), ("9:00", "-0.15"), ("10:30", "-0.09"))],
     "t0": "10:30", "runout": turns("mm", "0 0, 45 0.01, 90 0.03, 135 0.02, 180 -0.01, 225 -0.04, 270 -0.02, 315 0.005")})

put("runout-backwards", "remove_runout", "other_turns", "the target was turned backwards, and past a full turn: the same places on its rim; in mils",
    {"readings": sweep("mil", "0d 0, 90d 6, 180d 15, 270d 9"), "t0": "3:00", "runout": turns("mil", "0 0, -90 1.5, -180 2.5, 450 -1")})

def place(offset_h, slope_h, offset_v, slope_v, u=None):
    planes = {"horizontal": {"offset": offset_h, "slope": slope_h}, "vertical": {"offset": offset_v, "slope": slope_v}}
    if u:
        for p, (o, s) in zip(PLANES, u):
            planes[p]["u"] = {"offset": o, "slope": s}
    return planes


V["separate"] = put("separate-hub", "separate_runout", "indexed", "a hub bored skew: half a turn on, its runout has changed sides",
    {"first": place("0.14 mm", "0.52 mm/m", "-0.23 mm", "-0.31 mm/m"), "second": place("0.08 mm", "0.28 mm/m", "-0.11 mm", "0.07 mm/m")})

V["separate_u"] = put("separate-uncertain", "separate_runout", "two_faces", "two fits of face sweeps with their uncertainties: both answers are as sure as each other",
    {"first": place("0.31 mm", "-0.45 mm/m", "0.19 mm", "0.66 mm/m", (("0.008 mm", "0.05 mm/m"), ("0.011 mm", "0.07 mm/m"))),
     "second": place("0.25 mm", "-0.61 mm/m", "0.28 mm", "0.58 mm/m", (("0.006 mm", "0.04 mm/m"), ("0.009 mm", "0.03 mm/m")))})

put("separate-inch", "separate_runout", "inch", "offsets in mils, slopes in mils an inch",
    {"first": place("4.5 mil", "0.3 mil/in", "-7 mil", "1.1 mil/in"), "second": place("2.5 mil", "-0.2 mil/in", "-8.5 mil", "0.8 mil/in")})

put("separate-runout-only", "separate_runout", "aligned", "all that was seen was runout: the shafts are in line",
    {"first": place("0.09 mm", "-0.33 mm/m", "-0.12 mm", "0.27 mm/m"), "second": place("-0.09 mm", "0.33 mm/m", "0.12 mm", "-0.27 mm/m")})

put("separate-huge", "separate_runout", "huge_offset", "6 mm out, the runout in micrometres",
    {"first": place("6.203 mm", "0.002 mm/m", "-4.871 mm", "0.013 mm/m"), "second": place("6.201 mm", "0.005 mm/m", "-4.874 mm", "0.012 mm/m")})

V["float"] = put("float-motor", "without_float", "two_faces", "a sleeve-bearing motor floats by tenths while the dials read hundredths",
    {"a": {"diameter": "180 mm", "readings": sweep("mm", "12 0, 3 0.31, 6 -0.12, 9 0.25")},
     "b": {"diameter": "180 mm", "readings": sweep("mm", "6 0, 9 0.27, 12 -0.20, 3 0.23")}})

put("float-droop", "without_float", "droop", "arms of different length that droop both ways",
    {"a": {"diameter": "260 mm", "sag": "0.02 mm", "readings": sweep("mm", "12 0, 3 -0.08, 6 0.05, 9 0.11")},
     "b": {"diameter": "220 mm", "sag": "-0.01 mm", "readings": sweep("mm", "6 0, 9 -0.13, 12 0.09, 3 0.18")}})

put("float-inch", "without_float", "inch", "circles off the tape, dials in mils",
    {"a": {"diameter": "8 3/4 in", "readings": sweep("mil", "12 0, 3 5, 6 -3, 9 2")},
     "b": {"diameter": "7 5/8 in", "readings": sweep("mil", "6 0, 9 2, 12 -8, 3 1")}})

put("float-own-zero", "without_float", "own_zero", "swept from 9, the dials preset to 2 and 3 mm",
    {"a": {"diameter": "152 mm", "readings": sweep("mm", "9 2.00, 12 2.14, 3 2.09, 6 1.95")},
     "b": {"diameter": "168 mm", "readings": sweep("mm", "3 3.00, 6 3.11, 9 3.15, 12 3.02")}})

put("float-degrees", "without_float", "degrees", "places in degrees, the second dial with a droop",
    {"a": {"diameter": "205 mm", "readings": sweep("mm", "0d 0, 90d 0.06, 180d 0.19, 270d 0.13")},
     "b": {"diameter": "195 mm", "sag": "0.015 mm", "readings": sweep("mm", "180d 0, 270d 0.02, 0d 0.03, 90d 0.05")}})

put("float-large", "without_float", "huge_offset", "the rotor wanders by 8 mm, the faces are square to a few micrometres",
    {"a": {"diameter": "610 mm", "readings": sweep("mm", "12 0, 3 7.913, 6 -3.244, 9 1.077")},
     "b": {"diameter": "590 mm", "readings": sweep("mm", "6 0, 9 7.916, 12 -3.243, 3 1.075")}})

put("float-only", "without_float", "aligned", "both dials always show the same: float and nothing else",
    {"a": {"diameter": "144 mm", "readings": sweep("mm", "12 0, 3 0.22, 6 0.35, 9 -0.14")},
     "b": {"diameter": "136 mm", "readings": sweep("mm", "6 0, 9 0.22, 12 0.35, 3 -0.14")}})

# ---- more that is hard

put("rim-gap-far-feet", "rim_gap", "far_feet", "an engine on a long bed, the gap of a small hub carried out to 3.9 m",
    {"view": "from_movable", "carrier": "stationary",
     "rim": {"station": "17 mm", "readings": sweep("mm", "12 0, 3 0.09, 6 -0.07, 9 -0.16")},
     "gap": {"diameter": "72 mm", "readings": sweep("mm", "12 1.95, 3 1.98, 6 1.97, 9 1.94")},
     "feet": feet(("first", "640 mm"), ("second", "1.7 m"), ("third", "280 cm"), ("last", "3900 mm"))})

put("rim-gap-parallel", "rim_gap", "parallel", "offset alone, the gap the same all round at 1/8 inch",
    {"view": "from_stationary", "carrier": "movable",
     "rim": {"station": "-30 mm", "readings": sweep("mm", "12 0, 3 -0.35, 6 -0.11, 9 0.24")},
     "gap": {"diameter": "127 mm", "readings": sweep("in", "12 1/8, 3 1/8, 6 1/8, 9 1/8")},
     "feet": feet(("inboard", "262 mm"), ("outboard", "708 mm"))})

put("straightedge-aligned", "straightedge_gap", "aligned", "rims of equal size flush all round, gap even: nothing to move",
    {"view": "from_movable",
     "straightedge": {"on": "stationary", "station": "23 mm", "readings": sweep("mm", "12 0, 3 0, 6 0, 9 0")},
     "gap": {"diameter": "110 mm", "readings": sweep("mm", "12 3.10, 3 3.10, 6 3.10, 9 3.10, 12 3.10")},
     "feet": feet(("inboard", "208 mm"), ("outboard", "552 mm"))})

put("face-face-aligned", "face_face", "aligned", "droop of the arms and nothing else at both joints",
    {"view": "from_movable", "span": "1250 mm",
     "at_stationary": {"diameter": "245 mm", "sag": "0.03 mm", "readings": sweep("mm", "12 0.03, 3 0, 6 -0.03, 9 0")},
     "at_movable": {"diameter": "235 mm", "sag": "-0.02 mm", "readings": sweep("mm", "12 0, 3 0.02, 6 0.04, 9 0.02")},
     "feet": feet(("inboard", "915 mm"), ("outboard", "1785 mm"))})

put("face-face-huge", "face_face", "huge_offset", "30 mm out of line over a spacer of 3 m, the two joints differ by two hundredths",
    {"view": "from_movable", "span": "3 m",
     "at_stationary": {"diameter": "280 mm", "readings": sweep("mm", "12 0, 3 -1.71, 6 -2.80, 9 -1.09")},
     "at_movable": {"diameter": "280 mm", "readings": sweep("mm", "12 0, 3 1.72, 6 2.82, 9 1.10")},
     "feet": feet(("inboard", "1930 mm"), ("outboard", "3170 mm"))})

put("runout-fine", "remove_runout", "huge_offset", "a shaft 4 mm out on a rim that runs true to 2 um: what is taken off hardly shows",
    {"readings": sweep("mm", "12 0, 3 3.914, 6 8.223, 9 4.309"), "t0": "9:00", "runout": turns("um", "0 0, 90 1, 180 2, 270 -1")})

put("separate-slope-unseen", "separate_runout", "parallel", "the misalignment has an offset and no slope, the runout a slope and no offset",
    {"first": place("-0.37 mm", "0.41 mm/m", "0.16 mm", "-0.24 mm/m"), "second": place("-0.37 mm", "-0.41 mm/m", "0.16 mm", "0.24 mm/m")})

put("float-hidden", "without_float", "tiny_huge", "micrometres of tilt under half a millimetre of float, one dial in mils",
    {"a": {"diameter": "310 mm", "readings": sweep("mm", "12 0, 3 0.508, 6 -0.254, 9 0.1016")},
     "b": {"diameter": "290 mm", "readings": sweep("mil", "6 0, 9 19.95, 12 -10.05, 3 3.95")}})

# ---------------------------------------------------------------- refusals

def bad(id, twin, region, code, pointer, value, about, at=None, why=None):
    """Adds a refusal: one value of the twin changed, added, or (None) removed. The fault is there, or at a path of its own."""
    REGIONS.setdefault(region, ("invalid", why or about))
    refuse(id, V[twin], region, code, at or pointer, changed(V[twin]["input"], pointer, value), about)


GONE = "a value that is needed is not there: "
bad("no-view", "reverse_metric", "no_view", "missing", "/view", None, "nobody says where the crew stood", why=GONE + "view")
bad("no-carrier", "rim_face", "no_carrier", "missing", "/carrier", None, "which shaft carries the dials is not said", why=GONE + "carrier")
bad("straightedge-on-what", "straightedge", "no_carrier", "missing", "/straightedge/on", None, "which rim the straightedge lies on is not said")
bad("no-rim", "rim_face", "no_set", "missing", "/rim", None, "a face sweep alone: nothing tells the offset", why=GONE + "a whole set")
bad("no-face-at-joint", "face_face", "no_set", "missing", "/at_movable", None, "one joint of the spacer was not read")
bad("no-second-sweep", "separate", "no_set", "missing", "/second", None, "the target was not indexed")
bad("no-second-face", "float", "no_set", "missing", "/b", None, "one face dial alone cannot tell float from angle")
bad("no-station", "rim_face", "no_station", "missing", "/rim/station", None, "where the rim dial stands was not measured", why=GONE + "station")
bad("reverse-no-station", "reverse_metric", "no_station", "missing", "/carried_by_movable/station", None, "one of the two stations is not there")
bad("no-foot-station", "rim_gap_metric", "no_station", "missing", "/feet/1/x", None, "a foot without a place")
bad("no-diameter", "rim_face", "no_diameter", "missing", "/face/diameter", None, "the circle of the face dial is not there", why=GONE + "diameter")
bad("float-no-diameter", "float", "no_diameter", "missing", "/b/diameter", None, "the circle of the second dial is not there")
bad("no-span", "face_face", "no_span", "missing", "/span", None, "the spacer was not measured", why=GONE + "span")
bad("no-readings", "rim_gap_metric", "no_readings", "missing", "/gap/readings", None, "a gauge that nobody read", why=GONE + "readings")
bad("no-readings-left", "reverse_metric", "no_readings", "missing", "/carried_by_stationary/readings", [], "an empty list of readings")
bad("no-runout", "runout", "no_readings", "missing", "/runout", [], "the runout has no reading")
bad("no-value", "rim_face", "no_value", "missing", "/rim/readings/2/value", None, "the reading at 6 has a place and no value", why=GONE + "value of a reading")
bad("no-bottom-on-mandrel", "mandrel", "no_value", "missing", "/at6", None, "the bracket was not turned over")
bad("quarters-no-nine", "quarters", "no_value", "missing", "/at9", None, "three readings where all four are asked for")
bad("fourth-no-opposite", "fourth", "no_value", "missing", "/opposite", None, "the sides alone do not give the fourth reading")
bad("runout-no-value", "runout", "no_value", "missing", "/runout/3/value", None, "a turn without its reading")
bad("separate-no-slope", "separate", "no_value", "missing", "/first/horizontal/slope", None, "an offset without its slope")
bad("no-place", "face_face", "no_place", "missing", "/at_stationary/readings/1/at", None, "a reading of nowhere", why=GONE + "clock position")
bad("runout-no-place", "runout", "no_place", "missing", "/t0", None, "where the dial stood still is not said")
bad("uncertain-in-one-plane", "separate_u", "no_u", "missing", "/first/vertical/u", None, "an uncertainty in one plane only", why=GONE + "uncertainty")

bad("zero-diameter", "rim_gap_metric", "zero_length", "out_of_range", "/gap/diameter", "0 mm", "a face of no size has no slope", why="a length that cannot be 0")
bad("zero-span", "face_face", "zero_length", "out_of_range", "/span", "0 mm", "a spacer of no length")
bad("negative-diameter", "straightedge", "negative_length", "out_of_range", "/gap/diameter", "-98 mm", "a sign that slipped in before the diameter", why="a length that cannot be below 0")
bad("float-negative-diameter", "float", "negative_length", "out_of_range", "/a/diameter", "-180 mm", "a circle of less than nothing")
bad("negative-sag", "rim_face_sag", "negative_sag", "out_of_range", "/rim/sag", "-3 mil", "a bracket on a rim cannot droop upwards", why="droop below 0 on a rim or in a bore")
bad("negative-sag-in-bore", "reverse_all", "negative_sag", "out_of_range", "/carried_by_movable/sag", "-2 mil", "nor can one in a bore")
bad("negative-u", "separate_u", "negative_u", "out_of_range", "/second/horizontal/u/slope", "-0.04 mm/m", "an uncertainty below nothing", why="an uncertainty below 0")

bad("quarter-twice", "rim_face", "twice", "duplicate", "/rim/readings/3/at", "3:00", "3 o'clock is read twice, and not as a return to the start", why="the same thing given twice")
bad("foot-twice", "reverse_metric", "twice", "duplicate", "/feet/1/name", "inboard", "two feet of one name")
bad("turn-twice", "runout", "twice", "duplicate", "/runout/4", {"turned": "90 deg", "value": "0.02 mm"}, "one turn with two different readings", at="/runout/4/turned")

bad("view-from-above", "face_face", "strange_word", "unknown", "/view", "from_above", "nobody stands there", why="a word that is not known here")
bad("carried-by-both", "rim_face", "strange_word", "unknown", "/carrier", "both", "one shaft carries the dials")
bad("straightedge-on-spacer", "straightedge", "strange_word", "unknown", "/straightedge/on", "spacer", "the straightedge lies on one of two rims")
bad("strange-member", "rim_face", "strange_member", "unknown", "/rim/clamp", "magnetic", "a member that nobody knows, inside a set", why="a member that is not known here")
bad("quarters-strange-member", "quarters", "strange_member", "unknown", "/at1030", "5 mil", "a reading at half past ten among the quarters")

bad("comma", "rim_face", "comma", "malformed", "/rim/readings/1/value", "0,36 mm", "a decimal comma", why="a decimal comma")
bad("no-unit", "reverse_metric", "no_unit", "malformed", "/carried_by_stationary/station", "50", "fifty of what", why="a number without a unit")
bad("fourth-no-unit", "fourth", "no_unit", "malformed", "/across/1", "-10", "mils or hundredths, nobody knows")
bad("number-for-text", "rim_gap_metric", "wrong_type", "malformed", "/rim/readings/1/value", 0.22, "a bare JSON number", why="a value of a wrong type")
bad("text-for-readings", "straightedge", "wrong_type", "malformed", "/gap/readings", "3.00 mm", "one text where a list of readings belongs")
bad("yes-for-bore", "rim_face_all", "wrong_type", "malformed", "/rim/bore", "yes", "a word where true or false belongs")
bad("half-a-number", "mandrel", "garbled", "malformed", "/at6", "-6.0.5 mil", "two points in one number", why="text that is no number")
bad("separate-garbled", "separate", "garbled", "malformed", "/first/vertical/offset", "-O.23 mm", "a letter O for a zero")

second.run()
area.save()
