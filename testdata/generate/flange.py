"""Writes flange.json: machines that hang on or stand by a flange, and the runout of flanges.

Run from testdata: python3 generate/flange.py (Python 3.11 with mpmath). Every result
comes by two ways: by the equations of PROTOCOL.md, and by asking the shimmed and slid
machine whether it stands where it should.
"""

from itertools import combinations

from common import *

NEW = "1.2.0"
BY = "rational arithmetic, Python fractions; sines and roots by " + MPMATH
SECOND = "the plane through three shims, by Cramer's rule, leans as the machine did; the machine turned about its face and slid stands on its target at two stations; " \
         "what does not fit by its square; u by J V J' with unit steps: to 28 digits"
AREA = Area("flange", {})
PLANES = ("horizontal", "vertical")
NM = F(1, 10**6)


# ---- reading

def line_of(p, slip="", sign=1):
    """Returns offset and slope of both planes."""
    return [(sign * measure(p[n]["offset"], slip), sign * slope(p[n]["slope"])) for n in PLANES]


def off(input, slip=""):
    """Returns position less target, both planes."""
    p = line_of(input["position"], slip)
    if "target" in input and slip != "target_ignored":
        t = line_of(input["target"], slip, 1 if slip == "target_added" else -1)
        p = [(a + c, b + d) for (a, b), (c, d) in zip(p, t)]
    return p


def face(input, slip=""):
    x = measure(input["face"], slip)
    return abs(x) if slip == "station_unsigned" else x


def place(input, i, slip=""):
    """Returns the clock position of a bolt in the library's view, in degrees."""
    text = input["bolts"][i]["at"]
    t = clock(text) / 30 if slip == "hours_as_degrees" and ":" in text else clock(text)
    if slip == "bolts_assumed_even":
        t = clock(input["bolts"][0]["at"]) + F(360 * i, len(input["bolts"]))
    return -t if input["view"] == "from_stationary" and slip != "view_mirrored" else t


def bolts(input, slip=""):
    """Returns r u(t) of each bolt."""
    found = []
    for i, bolt in enumerate(input["bolts"]):
        r = measure(input["bolts"][0 if slip == "one_radius" else i]["radius"], slip) / (2 if slip == "diameter_for_radius" else 1)
        found.append([big(r) * part for part in sincos(place(input, i, slip))])
    return found


def covariance(p):
    """Returns the 4 x 4 covariance of a position, of zeros where none is stated."""
    if "u" not in p["horizontal"]:
        return [[F(0)] * 4 for _ in range(4)]
    u = [read(p[n]["u"][k], kind) for n in PLANES for k, kind in (("offset", "length"), ("slope", "slope"))]
    r = p.get("correlation", [[int(i == j) for j in range(4)] for i in range(4)])
    return [[u[i] * u[j] * F(str(r[i][j])) for j in range(4)] for i in range(4)]


def misheld(p, slip):
    """Returns a position as a slip takes its correlation."""
    if "correlation" not in p:
        return p
    if slip == "correlation_ignored":
        return {n: p[n] for n in PLANES}
    if slip == "correlation_order":  # both offsets first, then both slopes
        order = [0, 2, 1, 3]
        return {**p, "correlation": [[p["correlation"][a][b] for b in order] for a in order]}
    return p


def spread(input, slip=""):
    """Returns the covariances that add up to that of position less target."""
    names = ["position"] + (["target"] if "target" in input and slip not in ("target_ignored", "target_exact") else [])
    return [covariance(misheld(input[n], slip)) for n in names]


def stated(input): return "u" in input["position"]["horizontal"]


def root(x): return mp.sqrt(big(x))


# ---- shims and slide

def squared(parts, J):
    """Returns J V J', V the sum of the parts."""
    return sum((J[a] * v[a][b] * J[b] for v in parts for a in range(4) for b in range(4) if J[a] and J[b]), F(0))


def straight(parts, J):
    """Adds uncertainties as they are: the slip added_straight."""
    return sum((abs(big(J[a])) * root(v[a][a]) for v in parts for a in range(4)), mpf(0))


def clamp(input, slip=""):
    """Returns the bolts' heights s . r u(t), signed by the push, their thinnest, and the sign."""
    s = [big(m) for _, m in off(input, slip)]
    away = input["push"] == "away_from_stationary"
    if slip == "push_ignored":
        away = True
    if slip == "push_reversed":
        away = not away
    sign = 1 if away else -1
    return [sign * (s[0] * y + s[1] * z) for y, z in bolts(input, slip)], sign


def first_thinnest(heights): return heights.index(min(heights))


def shims(input, slip=""):
    """shim_i = s . r_i u(t_i) + c, the smallest zero."""
    heights, sign = clamp(input, slip)
    c = mpf(0) if slip == "shims_below_zero" else -min(heights)
    found = [{"bolt": b["name"], "thickness": mm(h + c)} for b, h in zip(input["bolts"], heights)]
    axial = (-1 if slip == "axial_reversed" else 1) * sign * c
    if slip == "axial_unsigned":
        axial = abs(axial)
    if stated(input):
        parts, at = spread(input, slip), bolts(input, slip)
        y0, z0 = at[first_thinnest(heights)]
        if slip == "shim_u_alone":
            y0, z0 = 0, 0
        for shim, (y, z) in zip(found, at):
            J = [0, y - y0, 0, z - z0]
            parts_big = [[[big(x) for x in row] for row in v] for v in parts]
            shim["u"] = mm(straight(parts, J) if slip == "added_straight" else mp.sqrt(squared(parts_big, J)))
    return found, axial


def answer(input, slip=""):
    lines, x = off(input, slip), face(input, slip)
    found, axial = shims(input, slip)
    tilt = [(-1 if slip == "tilt_reversed" else 1) * s * x for _, s in lines]
    times = {"slide_at_coupling": 0, "tilt_twice": 2}.get(slip, 1)
    slide = [-(o + times * k) for (o, _), k in zip(lines, tilt)]
    if slip == "correction_for_position":
        slide = [-v for v in slide]
    result = {"shims": found, "axial": mm(axial), "slide": dict(zip(PLANES, map(mm, slide))), "tilt_shift": dict(zip(PLANES, map(mm, tilt)))}
    if stated(input):
        parts, ux = spread(input, slip), F(0) if slip == "shared_ignored" else length(input.get("u_face", "0 mm"))
        u = {}
        for n, i, (_, s) in zip(PLANES, (0, 2), lines):
            J = [F(0)] * 4
            J[i], J[i + 1] = F(1), x
            u[n] = mm(straight(parts, J) + abs(big(s * ux)) if slip == "added_straight" else root(squared(parts, J) + (s * ux) ** 2))
        result["slide"]["u"] = u
    if slip == "planes_mixed":
        result = swapped(result)
    return {**result, **rabbet(input, slide, slip)}


def swapped(x):
    """Returns a result with horizontal and vertical exchanged."""
    if not isinstance(x, dict):
        return x
    x = {k: swapped(v) for k, v in x.items()}
    return {**x, "horizontal": x["vertical"], "vertical": x["horizontal"]} if "vertical" in x else x


def rounded(x, step=NM): return mp.floor(big(x) / big(step) + mpf(1) / 2)


def rabbet(input, slide, slip=""):
    """Tells whether the spigot stays in the rabbet, and by how much it does not."""
    if "clearance" not in input:
        return {}
    half = measure(input["clearance"], slip) / (1 if slip == "clearance_as_radial" else 2)
    now = [measure(input["spigot"][n], slip) if "spigot" in input and slip != "spigot_ignored" else F(0) for n in PLANES]
    y, z = (a * (-1 if slip == "spigot_reversed" else 1) + b for a, b in zip(now, slide))
    size = big(max(abs(y), abs(z))) if slip == "planes_apart" else root(y * y + z * z)
    fits = rounded(size) <= rounded(half)
    if slip == "limit_excluded":
        fits = size < big(half)
    if slip == "limit_stretched":
        fits = rounded(size, NM * 1000) <= rounded(half, NM * 1000)
    return {"rabbet": "fits"} if fits else {"rabbet": "does_not_fit", "over": mm(size - big(half))}


# ---- the second way: does the machine stand where it should?

def value(text): return mpf(text.split()[0])


def near(a, b, digits=28): assert abs(big(a) - big(b)) <= mpf(10) ** -digits * (1 + abs(big(b))), (a, b)


def determinant(m):
    (a, b, c), (d, e, f), (g, h, i) = m
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)


def plane_through(points):
    """Returns a, b, c of a y + b z + c through three points (y, z, height), by Cramer's rule."""
    rows = [[y, z, mpf(1)] for y, z, _ in points]
    columns = ([[h if k == j else row[k] for k in range(3)] for row, (_, _, h) in zip(rows, points)] for j in range(3))
    return [determinant(m) / determinant(rows) for m in columns]


def centre(p, x): return [length(p[n]["offset"]) + slope(p[n]["slope"]) * x for n in PLANES]


def metre(f): return f(F(1000)), f(F(0))


def again(input, result):
    """Asks all of a result."""
    target = input.get("target") or {n: {"offset": "0 mm", "slope": "0 mm/m"} for n in PLANES}
    stands, aims = (lambda x: centre(input["position"], x)), (lambda x: centre(target, x))
    lean = [((a - b) - (c - d)) / 1000 for (a, c), (b, d) in zip(zip(*metre(stands)), zip(*metre(aims)))]
    at, heights = again_plane(input, result, lean)
    again_line(input, result, stands, aims)
    if "clearance" in input:
        again_rabbet(input, result, stands, aims)
    if stated(input):
        again_u(input, result, at, heights, lean)


def again_plane(input, result, lean):
    """The plane of the shims takes the lean out, and holds the machine off by its height at the centre."""
    side = -1 if input["view"] == "from_stationary" else 1
    at = [big(length(b["radius"])) * mp.expj(mp.pi / 2 - side * big(clock(b["at"])) * mp.pi / 180) for b in input["bolts"]]
    heights = [value(s["thickness"]) for s in result["shims"]]

    def area(three):
        a, b, c = (at[i] for i in three)
        return abs(mp.im((b - a) * mp.conj(c - a)))

    widest = max(combinations(range(len(at)), 3), key=area)
    a, b, c = plane_through([(at[i].real, at[i].imag, heights[i]) for i in widest])
    push = 1 if input["push"] == "away_from_stationary" else -1
    for found, wanted in ((a, lean[0]), (b, lean[1]), (c, value(result["axial"]))):
        near(push * found, wanted)
    for p, h in zip(at, heights):
        near(a * p.real + b * p.imag + c, h)
    assert min(heights) == 0
    return at, heights


def again_line(input, result, stands, aims):
    """The machine turned about the centre of its face to the slope of the target, and then slid, lies on the target."""
    face_at = length(input["face"])
    slopes = [(far - here) / 1000 for far, here in zip(*metre(aims))]

    def turned(x): return [w + m * (x - face_at) for w, m in zip(stands(face_at), slopes)]

    for n, now, before in zip(PLANES, turned(F(0)), stands(F(0))):
        near(value(result["tilt_shift"][n]), now - before)
    for x in (F(0), F(1000)):
        for n, now, wanted in zip(PLANES, turned(x), aims(x)):
            near(big(now) + value(result["slide"][n]), wanted)


def again_rabbet(input, result, stands, aims):
    """By the square of how far the spigot comes from the middle, which is a fraction."""
    x, half = length(input["face"]), length(input["clearance"]) / 2
    spigot = [length(input["spigot"][n]) if "spigot" in input else F(0) for n in PLANES]
    square = sum((v + t - w) ** 2 for v, t, w in zip(spigot, aims(x), stands(x)))
    assert (half / NM).denominator == 1, "half a clearance is whole nanometres"
    assert square != (half + NM / 2) ** 2 and (square < (half + NM / 2) ** 2) == (result["rabbet"] == "fits")
    if result["rabbet"] != "fits":
        over = F(result["over"].split()[0])
        assert (over + half) ** 2 == square and (over / NM).denominator == 1, "whole nanometres: the same rounded and not"


def stepped(input, name, n, k):
    """Returns the input with one of the eight numbers of position and target one unit up."""
    unit = {"offset": "mm", "slope": "mm/m"}[k]
    now = (length if k == "offset" else slope)(input[name][n][k]) / OUT[unit]
    return changed(input, "/%s/%s/%s" % (name, n, k), "%s %s" % (now + 1, unit))  # a fraction: read as one


def again_u(input, result, at, heights, lean):
    """J V J' of the slide and of the differences of shims, J by unit steps, which are exact as both are linear."""
    first = heights.index(0)
    assert all(lean_n == 0 for lean_n in lean) or all(h > mpf(10) ** -6 for i, h in enumerate(heights) if i != first), "which is the thinnest must not hang on rounding"
    unit = {"offset": mpf(1), "slope": mpf(1) / 1000}
    push = 1 if input["push"] == "away_from_stationary" else -1
    squares = {n: mpf(0) for n in PLANES}
    of_shims = [mpf(0)] * len(heights)
    bare = {k: v for k, v in input.items() if k not in ("clearance", "spigot")}
    for name in ("position", "target"):
        if name not in input:
            continue
        v, J = covariance(input[name]), {}
        for n in PLANES:
            for k in ("offset", "slope"):
                more = stepped(bare, name, n, k)
                lines, x = off(more), length(input["face"])
                slide = [-big(o + s * x) for o, s in lines]
                rises = [push * (big(lines[0][1]) * p.real + big(lines[1][1]) * p.imag) for p in at]
                rises = [h - rises[first] for h in rises]
                J[n, k] = ([(a - value(result["slide"][m])) / unit[k] for m, a in zip(PLANES, slide)], [(a - b) / unit[k] for a, b in zip(rises, heights)])
        rows = [J[n, k] for n in PLANES for k in ("offset", "slope")]
        for a in range(4):
            for b in range(4):
                for j, n in enumerate(PLANES):
                    squares[n] += rows[a][0][j] * big(v[a][b]) * rows[b][0][j]
                for i in range(len(heights)):
                    of_shims[i] += rows[a][1][i] * big(v[a][b]) * rows[b][1][i]
    for j, n in enumerate(PLANES):
        near(value(result["slide"]["u"][n]) ** 2, squares[n] + (big(lean[j]) * big(length(input.get("u_face", "0 mm")))) ** 2)
    for shim, square in zip(result["shims"], of_shims):
        near(value(shim["u"]) ** 2, square)


# ---- tolerances

def tolerance(input, result):
    """What goes into each quantity: slopes times radii, offsets and slopes times the station, the covariances."""
    known = [line_of(input[n]) for n in ("position", "target") if n in input]
    radius, x = max(length(b["radius"]) for b in input["bolts"]), abs(length(input["face"]))
    tilt = [sum(abs(p[i][1]) for p in known) for i in range(2)]
    offset = [sum(abs(p[i][0]) for p in known) for i in range(2)]
    least = F(1, 10**6)
    t = {"/shims/*/thickness": rounding(2 * radius * sum(tilt) or least, "mm"), "/axial": rounding(radius * sum(tilt) or least, "mm")}
    for i, n in enumerate(PLANES):
        t["/slide/" + n] = rounding(offset[i] + tilt[i] * x or least, "mm")
        t["/tilt_shift/" + n] = rounding(tilt[i] * x or least, "mm")
    if "over" in result:
        now = sum(abs(length(input["spigot"][n])) for n in PLANES) if "spigot" in input else 0
        t["/over"] = rounding(sum(offset) + sum(tilt) * x + now + length(input["clearance"]) / 2, "mm")
    if stated(input):
        t.update(tolerance_u(input, result, x))
    return t


def tolerance_u(input, result, x):
    """Sums of products, each as large as it is, over the uncertainty that comes of them."""
    sizes = [[sum(abs(v[a][b]) for v in spread(input)) for b in range(4)] for a in range(4)]
    t, at = {}, bolts(input)
    heights, _ = clamp(input)
    y0, z0 = at[first_thinnest(heights)]
    for n, i, (_, s) in zip(PLANES, (0, 2), off(input)):
        J = [F(0)] * 4
        J[i], J[i + 1] = F(1), x
        total = squared([sizes], J) + (s * length(input.get("u_face", "0 mm"))) ** 2
        u = value(result["slide"]["u"][n])
        t["/slide/u/" + n] = rounding(big(total) / u if u else F(1, 10**6), "mm")
    worst = mpf(0)
    for shim, (y, z) in zip(result["shims"], at):
        J = [0, abs(y) + abs(y0), 0, abs(z) + abs(z0)]
        if value(shim["u"]):
            worst = max(worst, squared([[[big(v) for v in row] for row in sizes]], J) / value(shim["u"]))
    t["/shims/*/u"] = rounding(worst, "mm")
    return t


# ---- adding

SLIPS = ["view_mirrored", "hours_as_degrees", "target_ignored", "target_added", "planes_mixed", "diameter_for_radius", "one_radius", "bolts_assumed_even", "mil_as_hundredth",
         "fraction_misread", "station_unsigned", "push_reversed", "push_ignored", "shims_below_zero", "axial_reversed", "axial_unsigned", "correction_for_position",
         "slide_at_coupling", "tilt_twice", "tilt_reversed", "clearance_as_radial", "spigot_ignored", "spigot_reversed", "planes_apart", "limit_excluded",
         "limit_stretched", "correlation_ignored", "correlation_order", "added_straight", "shared_ignored", "target_exact", "shim_u_alone"]


def put(id, kind, about, input, holds=lambda result: True, only=()):
    """Adds a flange in a region of its own, the case that its name tells; only says of what alone it asks."""
    result = answer(input)
    again(input, result)
    assert holds(result), (id, result)
    within = tolerance(input, result)
    if only:
        result = {k: result[k] for k in only}
        within = {k: v for k, v in within.items() if k.split("/")[1] in only}
    flags = [s for s in SLIPS if differs(result, answer(input, s), within)]
    region = id.replace("-", "_")
    AREA.regions[region] = (kind, about)
    return AREA.add(id, "flange", region, flags, about, {"kind": "multi_precision", "by": BY, "second": SECOND}, input, result, within, since=NEW)


def bad(id, twin, code, path, new, about, at=None):
    """Adds a refusal: the twin's input with one value changed, added, or (None) taken out; at says where, if not at the path."""
    region = id.replace("-", "_")
    AREA.regions[region] = ("invalid", about)
    AREA.refuse(id, twin, region, code, path, changed(twin["input"], at or path, new), about, since=NEW)


def at(oy, sy, oz, sz, unit="mm", per="mm/m", u=None, r=None):
    """Writes a position, with uncertainties of the four numbers and their correlations where they are known."""
    p = {n: {"offset": "%s %s" % (o, unit), "slope": "%s %s" % (s, per)} for n, o, s in zip(PLANES, (oy, oz), (sy, sz))}
    if u:
        for n, (a, b) in zip(PLANES, (u[:2], u[2:])):
            p[n]["u"] = {"offset": "%s %s" % (a, unit), "slope": "%s %s" % (b, per)}
    return {**p, "correlation": r} if r else p


def circle(radius, *places):
    """Names bolts on one circle A, B, C..."""
    return [{"name": chr(65 + i), "radius": radius, "at": p} for i, p in enumerate(places)]


def bolted(*bolts): return [dict(zip(("name", "radius", "at"), b)) for b in bolts]


def correlated(ho_hs=0, vo_vs=0, hs_vs=0, ho_vo=0):
    """Writes a correlation in the order horizontal offset and slope, vertical offset and slope."""
    return [[1, ho_hs, ho_vo, 0], [ho_hs, 1, 0, hs_vs], [ho_vo, 0, 1, vo_vs], [0, hs_vs, vo_vs, 1]]


def ask(position, x, bolts, push="away_from_stationary", view="from_movable", **more):
    return {"position": position, "face": x, "push": push, "view": view, "bolts": bolts, **more}


def across(y, z, unit="mm"): return {"horizontal": "%s %s" % (y, unit), "vertical": "%s %s" % (z, unit)}


TOWARDS, OTHER_END = "towards_stationary", "from_stationary"
QUARTERS = ("12:00", "3:00", "6:00", "9:00")
DIAGONALS = ("1:30", "4:30", "7:30", "10:30")


def has(**numbers):
    """Asks that a result has these exact numbers, shims in order."""
    def holds(r):
        shown = {"shims": [F(s["thickness"].split()[0]) for s in r["shims"]], "axial": F(r["axial"].split()[0]),
                 "slide": [F(r["slide"][n].split()[0]) for n in PLANES], "over": F(r.get("over", "0 mm").split()[0])}
        return all(shown[k] == v for k, v in numbers.items())
    return holds


# ---- flanges

plain = put("tilt-to-three", "plain", "a slope of 1 mm/m towards 3 at a flange of 400 mm across, 400 mm behind the coupling",
            ask(at("0", "1", "0", "0"), "400 mm", circle("200 mm", *QUARTERS)), has(shims=[F("0.2"), F("0.4"), F("0.2"), 0], axial=F("0.2"), slide=[F("-0.4"), 0]))
hanging = put("towards", "plain", "shims that pull the machine up to the stationary one: thin where they were thick",
              ask(at("0.15", "-0.35", "-0.22", "0.6"), "310 mm", circle("175 mm", *QUARTERS), TOWARDS))
put("other-end", "plain", "bolts named by a crew that stands at the stationary machine",
    ask(at("-0.08", "0.45", "0.11", "0.25"), "265 mm", circle("150 mm", "1:00", "4:00", "7:00", "10:00"), view=OTHER_END))
targeted = put("target", "plain", "a motor that is to stand off the line of a pump that grows",
               ask(at("0.2", "0.3", "-0.1", "-0.55"), "420 mm", circle("225 mm", *DIAGONALS), target=at("0.05", "-0.1", "0.12", "0.2")))
inch = put("inch", "plain", "an inch flange, its circle and its face off the tape",
           ask(at("6", "0.45", "-9.5", "0.7", "mil", "mil/in"), "14 3/8 in", circle("7 1/4 in", *DIAGONALS)))
put("inch-towards", "plain", "an inch flange seen from the other end, the face in whole and broken inches",
    ask(at("-3.5", "-0.25", "12", "0.4", "mil", "mil/in"), "9 11/16 in", circle("5 3/8 in", "2:00", "5:00", "8:00", "11:00"), TOWARDS, OTHER_END))
put("eight-bolts", "plain", "eight bolts, between the quarters",
    ask(at("0.31", "-0.62", "0.14", "0.28"), "515 mm", circle("265 mm", "12:45", "2:15", "3:45", "5:15", "6:45", "8:15", "9:45", "11:15")))
put("degrees", "plain", "six bolts in degrees from a mark on the flange",
    ask(at("-0.17", "0.5", "0.26", "-0.15"), "288 mm", circle("132.5 mm", "20 deg", "80 deg", "140 deg", "200 deg", "260 deg", "320 deg"), TOWARDS))
put("two-circles", "plain", "bolts on two circles, the studs farther out",
    ask(at("0.12", "0.7", "0.09", "-0.45"), "350 mm", bolted(("A", "180 mm", "12:00"), ("B", "180 mm", "4:00"), ("C", "180 mm", "8:00"),
        ("stud 1", "240 mm", "2:00"), ("stud 2", "240 mm", "6:00"), ("stud 3", "240 mm", "10:00"))))
put("rectangle", "plain", "studs in a rectangle: four at its corners, two in the middle of its sides",
    ask(at("0.06", "-0.3", "-0.14", "0.52"), "205 mm", bolted(("near left", "210 mm", "300 deg"), ("near right", "210 mm", "60 deg"), ("right", "185 mm", "90 deg"),
        ("far right", "210 mm", "120 deg"), ("far left", "210 mm", "240 deg"), ("left", "185 mm", "270 deg")), TOWARDS))
put("stool", "plain", "the stool belongs to the motor, so that the face lies on the stationary side of the coupling",
    ask(at("0.13", "0.4", "-0.18", "0.65"), "-160 mm", circle("190 mm", *DIAGONALS)))
put("stool-inch", "plain", "a stool in inches, with a target", ask(at("8", "-0.35", "5", "0.5", "mil", "mil/in"), "-6 1/2 in",
    circle("8 3/4 in", "1:00", "4:00", "7:00", "10:00"), TOWARDS, target=at("2", "0.15", "-4", "0.1", "mil", "mil/in")))
fits = put("spigot-fits", "plain", "a spigot with play enough", ask(at("0.02", "0.15", "-0.03", "0.1"), "240 mm", circle("160 mm", *QUARTERS), clearance="0.16 mm"),
           lambda r: r["rabbet"] == "fits")
put("spigot-tight", "plain", "a spigot that would have to go through its rabbet: 0.15 mm to slide, 0.05 of play to a side",
    ask(at("0.05", "0.2", "0.08", "0.2"), "200 mm", circle("140 mm", *DIAGONALS), clearance="0.1 mm"), has(slide=[F("-0.09"), F("-0.12")], over=F("0.1")))
aside = put("spigot-aside", "plain", "a spigot that lies to one side now, and has room only because of that",
            ask(at("0.06", "0.1", "-0.05", "-0.15"), "300 mm", circle("170 mm", "12:00", "4:00", "8:00"), clearance="0.14 mm", spigot=across("0.05", "-0.04")),
            lambda r: r["rabbet"] == "fits")
put("spigot-wrong-side", "plain", "a spigot that lies at the side to which it has to go", ask(at("-0.05", "0.1", "-0.065", "0.05"), "300 mm",
    circle("155 mm", "1:00", "5:00", "9:00"), TOWARDS, clearance="0.12 mm", spigot=across("0.04", "0.03")), has(slide=[F("0.02"), F("0.05")], over=F("0.04")))
known = put("u", "plain", "what is known of the position, at the face and at the bolts",
            ask(at("0.11", "0.3", "-0.16", "0.45", u=("0.012", "0.03", "0.015", "0.025")), "330 mm", circle("185 mm", "1:00", "4:00", "7:00", "10:00"), u_face="4 mm"))

# ---- hard

put("in-line", "hard", "no slope at all: no shims, and the slide is the offset",
    ask(at("0.27", "0", "-0.34", "0"), "375 mm", circle("205 mm", *DIAGONALS)), has(shims=[0] * 4, axial=0, slide=[F("-0.27"), F("0.34")]))
put("no-slide", "hard", "offset and slope that meet in the face: shims alone bring the machine into line",
    ask(at("-0.105", "0.35", "0.18", "-0.6"), "300 mm", circle("165 mm", "2:00", "6:00", "10:00")), has(slide=[0, 0]))
put("far-face", "hard", "a face 4.1 m behind the coupling, a slope of micrometres to the metre, an offset of millimetres",
    ask(at("3.6", "0.004", "-2.75", "-0.007"), "4.1 m", circle("900 mm", "12:00", "2:00", "4:00", "6:00", "8:00", "10:00"), TOWARDS))
put("steep", "hard", "a machine set down roughly, on a large flange in inches",
    ask(at("190", "14", "-260", "-21", "mil", "mil/in"), "33 in", circle("21 1/2 in", "12:30", "3:30", "6:30", "9:30"), view=OTHER_END))
put("target-cancels", "hard", "position and target that differ in the seventh digit", ask(at("0.8000003", "1.2500004", "-0.6000002", "-0.9500001"), "450 mm",
    circle("230 mm", "1:15", "5:15", "9:15"), target=at("0.8", "1.25", "-0.6", "-0.95")))
put("one-side", "hard", "bolts on one side of the flange only, which all would be shimmed: the machine as a whole goes the other way",
    ask(at("0.04", "0.5", "0.07", "0.2"), "255 mm", circle("180 mm", "1:00", "2:30", "4:00")), lambda r: r["axial"].startswith("-"))
put("one-side-towards", "hard", "bolts on one side of a machine that shims pull up: now the axial shift is positive",
    ask(at("0.1", "-0.55", "-0.12", "-0.3"), "-145 mm", circle("6 3/4 in", "60 deg", "95 deg", "125 deg"), TOWARDS), lambda r: not r["axial"].startswith("-"))
put("turns", "hard", "places of bolts below none and beyond a turn",
    ask(at("-0.21", "-0.4", "0.19", "0.33"), "340 mm", circle("195 mm", "-73.6 deg", "46.4 deg", "526.4 deg"), view=OTHER_END))
put("uneven", "hard", "bolts where there is room for them, in no order",
    ask(at("0.09", "0.24", "-0.2", "0.58"), "270 mm", circle("148 mm", "5:10", "12:20", "8:35", "2:50", "10:05"), TOWARDS, OTHER_END))
narrow = put("nearly-in-line", "hard", "three bolts nearly in one line, but not in it",
             ask(at("0.16", "-0.38", "0.05", "0.42"), "295 mm", bolted(("middle", "120 mm", "12:00"), ("right", "240 mm", "2:00"), ("left", "230 mm", "10:00"))))
put("sixteen-bolts", "hard", "sixteen bolts of a turbine's flange, and shims of micrometres",
    ask(at("0.045", "0.012", "-0.038", "0.009"), "620 mm", circle("480 mm", *("%g deg" % (11.25 + 22.5 * i) for i in range(16)))))
put("spigot-on-limit", "hard", "a slide that takes up the play to the last nanometre", ask(at("0.03", "0.1", "-0.01", "-0.2"), "150 mm",
    circle("125 mm", "12:00", "4:00", "8:00"), clearance="0.12 mm", spigot=across("0.009", "0.008")), lambda r: r["rabbet"] == "fits")
put("spigot-three-four-five", "hard", "3 to a side and 4 down make 5, just the play that there is",
    ask(at("-0.018", "0.24", "0.008", "0.16"), "200 mm", circle("95 mm", *QUARTERS), TOWARDS, clearance="0.1 mm"), lambda r: r["rabbet"] == "fits")
put("spigot-under-nanometre", "hard", "a third of a nanometre too far, which nobody measures", ask(at("0.0650003", "0.05", "0", "0.3"), "200 mm",
    circle("115 mm", *DIAGONALS), clearance="0.15 mm", spigot=across("0", "0.06")), lambda r: r["rabbet"] == "fits")
put("spigot-one-nanometre", "hard", "one nanometre too far, both planes together",
    ask(at("0.0100006", "0.08", "-0.0600008", "0.08"), "250 mm", circle("88 mm", "12:15", "4:15", "8:15"), clearance="0.1 mm"), has(over=NM))
put("spigot-two-nanometres", "hard", "two nanometres too far, in one plane alone",
    ask(at("0.055002", "0.08", "-0.016", "0.04"), "400 mm", circle("210 mm", "12:45", "4:45", "8:45"), TOWARDS, clearance="0.174 mm"), has(over=2 * NM))
put("spigot-tenth-over", "hard", "a tenth of a micrometre too far, seen from the other end",
    ask(at("0.02", "-0.1", "-0.1201", "0.2"), "200 mm", circle("118 mm", "1:00", "5:00", "9:00"), view=OTHER_END, clearance="0.16 mm"), has(over=100 * NM))
put("spigot-diagonal", "hard", "in each plane by itself the spigot has room, but not in both together", ask(at("0.032", "0.14", "-0.052", "-0.14"), "200 mm",
    circle("152 mm", "2:15", "6:15", "10:15"), view=OTHER_END, clearance="0.17 mm"), has(slide=[F("-0.06"), F("0.08")], over=F("0.015")))
joint = put("u-correlated", "hard", "offset and slope of one fit, whose errors belong together, and planes that share the clock's error",
            ask(at("-0.24", "0.42", "0.18", "-0.27", u=("0.018", "0.034", "0.014", "0.041"), r=correlated(-0.6, -0.5, 0.35, 0.2)), "480 mm",
                circle("215 mm", "12:40", "3:40", "6:40", "9:40"), TOWARDS, u_face="6 mm"))
put("u-target", "hard", "a target that is not known exactly either, bolts named from the other end",
    ask(at("0.14", "0.28", "-0.19", "0.36", u=("0.011", "0.026", "0.017", "0.022"), r=correlated(0.4, -0.3, -0.25)), "365 mm", circle("172 mm", "45 deg", "135 deg", "225 deg", "315 deg"),
        view=OTHER_END, target=at("-0.05", "0.1", "0.13", "-0.08", u=("0.02", "0.04", "0.03", "0.05"), r=correlated(-0.2, 0.5, 0.15)), u_face="2.5 mm"))
put("u-cancels", "hard", "errors of offset and slope that nearly cancel at the face",
    ask(at("0.33", "-0.48", "-0.29", "0.31", u=("0.04", "0.1", "0.036", "0.09"), r=correlated(-0.998, -0.9995)), "400 mm", circle("198 mm", "1:20", "5:20", "9:20")))
put("u-in-line", "hard", "no slope, and so no shims, but how thick they should be is not known exactly",
    ask(at("0.16", "0", "-0.21", "0", u=("0.013", "0.028", "0.012", "0.033"), r=correlated(0.3, 0.25, 0.5)), "290 mm", circle("142 mm", "2:10", "6:40", "10:50"), u_face="5 mm"))
put("u-inch", "hard", "uncertainties in thousandths, bolts on two circles, a stool, a target that is known as well as the position",
    ask(at("7", "0.6", "-4.5", "0.35", "mil", "mil/in", u=("0.5", "0.03", "0.6", "0.02"), r=correlated(0.45, -0.35, 0.3, -0.15)), "-7 7/8 in",
        bolted(("one", "6 1/4 in", "12:50"), ("two", "9 5/8 in", "3:20"), ("three", "6 1/4 in", "7:05"), ("four", "9 5/8 in", "10:15")), TOWARDS,
        target=at("1.5", "-0.1", "2", "0.2", "mil", "mil/in", u=("0.4", "0.025", "0.3", "0.03")), u_face="1/8 in"))
put("u-one-number", "hard", "all is exact but one slope", ask(at("0.04", "-0.36", "0.07", "0.24", u=("0", "0.045", "0", "0")), "310 mm", circle("136 mm", "1:05", "5:25", "8:55")))
put("u-target-in-line", "hard", "a target in line that is known no better than the machine's growth", ask(at("-0.13", "0.18", "0.22", "0.41", u=("0.009", "0.021", "0.008", "0.019")), "255 mm",
    circle("162 mm", "12:10", "3:10", "6:10", "9:10"), TOWARDS, target=at("0", "0", "0", "0", u=("0.03", "0.06", "0.05", "0.08"), r=correlated(0.2, -0.4))))
put("u-alike", "hard", "correlations that are the same in whatever order they are read, all but independence",
    ask(at("0.19", "-0.22", "0.06", "0.53", u=("0.016", "0.029", "0.016", "0.029"), r=correlated(0.3, 0.25, 0.25, 0.3)), "345 mm", circle("188 mm", "50 deg", "170 deg", "290 deg")))
put("u-planes", "hard", "offsets that share an error of the clock, which no plane by itself notices",
    ask(at("-0.07", "0.39", "-0.25", "0.17", u=("0.022", "0.037", "0.019", "0.032"), r=correlated(ho_vo=0.55)), "275 mm", circle("128 mm", "25 deg", "145 deg", "265 deg"), TOWARDS, u_face="3 mm"))

# ---- what a machine without a slope, a bolt on the axis of tilt or a face at the coupling do not show, and what is asked alone

put("face-at-coupling", "hard", "the face in the plane of the coupling centre: the tilt shifts nothing", ask(at("0.085", "0.27", "-0.115", "-0.49"), "0 mm", circle("212 mm", "2:20", "6:50", "11:10")))
put("thinnest-on-axis", "hard", "no bolt on the low side: two stand on the axis of tilt, and the machine stays where it is along its shaft",
    ask(at("-0.065", "0.44", "0.135", "0"), "325 mm", circle("158 mm", "12:00", "3:00", "6:00")), lambda r: value(r["axial"]) == 0)
put("shims-alone", "plain", "the thicknesses alone", ask(at("0.075", "-0.53", "0.165", "0.34"), "0 mm", circle("168 mm", "12:25", "4:35", "7:45")), only=("shims",))
put("shims-alone-towards", "plain", "the thicknesses alone, of shims that pull up", ask(at("0.21", "0.16", "-0.025", "-0.64"), "335 mm", circle("202 mm", "1:40", "5:10", "9:30"), TOWARDS), only=("shims",))
put("axial-alone", "plain", "how far the machine goes along its shaft, alone", ask(at("-0.155", "0.57", "0.095", "0.125"), "385 mm", circle("252 mm", "3:15", "6:35", "11:20"), TOWARDS), only=("axial",))
put("slide-alone", "hard", "the slide alone, and its uncertainty", ask(at("0.245", "0.19", "-0.065", "-0.31", u=("0.021", "0.031", "0.013", "0.027"), r=correlated(-0.45, 0.3)), "445 mm",
    circle("235 mm", "35 deg", "155 deg", "275 deg"), u_face="5.5 mm"), only=("slide",))
put("shift-alone", "plain", "what the shims alone do at the coupling", ask(at("0.145", "-0.41", "-0.055", "0.265"), "395 mm", circle("206 mm", "15 deg", "135 deg", "255 deg")), only=("tilt_shift",))
put("rabbet-alone", "hard", "a slide that has room, though twice the tilt would not", ask(at("0.012", "0.15", "-0.016", "0.1"), "280 mm", circle("146 mm", "12:35", "4:45", "8:20"), clearance="0.13 mm"),
    lambda r: r["rabbet"] == "fits", only=("rabbet",))
put("rabbet-alone-coupling", "hard", "a slide that has room because of the tilt: at the coupling the machine is farther out", ask(at("0.09", "-0.2", "0.02", "-0.05"), "300 mm", circle("178 mm", "12:55", "4:15", "8:40"), clearance="0.14 mm"),
    lambda r: r["rabbet"] == "fits", only=("rabbet",))
put("spigot-across", "hard", "a spigot that lies across the way that it has to go", ask(at("0.02", "-0.1", "-0.02", "-0.15"), "200 mm", circle("164 mm", "1:25", "5:35", "9:05"),
    clearance="0.09 mm", spigot=across("0.0375", "0")), has(slide=[0, F("0.05")], over=F("0.0175")))

# ---- the runout of a flange

TABLE = [(40, 100, "0.080"), (100, 230, "0.100"), (230, 450, "0.125"), (450, 800, "0.160"), (800, 1250, "0.200"), (1250, 2000, "0.250"), (2000, 2240, "0.315")]
SHAFTS = [(6, 10, "0.030"), (10, 18, "0.035"), (18, 30, "0.040"), (30, 50, "0.050"), (50, 80, "0.060"), (80, 120, "0.070"), (120, 180, "0.080"),
          (180, 250, "0.090"), (250, 315, "0.100"), (315, 400, "0.110"), (400, 500, "0.125"), (500, 630, "0.140")]
TABLE_SLIPS = ["class_edge", "class_next", "rounded_before_class", "fraction_misread", "mil_as_hundredth", "shaft_table_for_flange"]


def runout(input, slip=""):
    """The class up to and with its upper edge."""
    d = measure(input["spigot"], slip)
    if slip == "rounded_before_class":
        d = round(d)
    inside = (lambda a, b: a <= d < b) if slip == "class_edge" else (lambda a, b: a < d <= b)
    table = SHAFTS if slip == "shaft_table_for_flange" else TABLE
    found = [k for k, (a, b, _) in enumerate(table) if inside(a, b)][0]
    return {"limit": mm(F(table[found + (slip == "class_next")][2]))}


def wrong_runout(input, slip):
    """A program that finds no class differs."""
    try:
        return runout(input, slip)
    except IndexError:
        return {}


def spigot(id, about, diameter):
    """Adds a spigot in a region of its own; the second way counts the upper edges below it."""
    input = {"spigot": diameter}
    result, d = runout(input), length(diameter)
    a, b, limit = TABLE[sum(edge < d for _, edge, _ in TABLE)]
    assert a < d and result == {"limit": mm(F(limit))}, id
    if d == b:  # a double in mm or in nm must stand on the edge too
        n, unit = diameter.split()
        assert float(n) * float(UNITS["length"][unit]) == b and float(n) * float(UNITS["length"][unit] * 10**6) == b * 10**6, id
    within = {"/limit": exact(F(limit), "mm")}
    flags = [s for s in TABLE_SLIPS if differs(result, wrong_runout(input, s), within)]
    region = id.replace("-", "_")
    AREA.regions[region] = ("hard" if d == b or d - a < 1 else "plain", about)
    source = {"kind": "published", "by": "EASA AR100-2020, table 2-11 (read)", "published": "%d-%d mm: %s mm" % (a, b, limit),
              "second": "the class by counting the upper edges below the diameter: equal"}
    return AREA.add(id, "flange_runout", region, flags, about, source, input, result, within, since=NEW)


turned = spigot("runout", "a spigot of 200 mm", "200 mm")
spigot("runout-smallest", "a small flange", "63.5 mm")
taped = spigot("runout-inch", "a spigot off the tape", "24 3/8 in")
spigot("runout-inch-large", "a large one off the tape, whose whole inches and sixteenths must not run together", "37 5/16 in")
spigot("runout-mil", "a spigot in thousandths of an inch", "7250 mil")
spigot("runout-largest", "the largest class", "2.1 m")
for edge, on, over in ((100, "10 cm", "100.002 mm"), (230, "230 mm", "9.0553 in"), (450, "0.45 m", "45.0003 cm"), (800, "80 cm", "800001 um"), (1250, "1.25 m", "1250.0005 mm"), (2000, "2000000000 nm", "78.7403 in")):
    spigot("runout-%d-on" % edge, "%s, where two classes meet" % on, on)
    spigot("runout-%d-over" % edge, "%s, a trace over where two classes meet" % over, over)
spigot("runout-2240-on", "the end of the table", "224 cm")

# ---- refused

bad("no-position", plain, "missing", "/position", None, "no position")
bad("no-plane", plain, "missing", "/position/vertical", None, "a position in one plane only")
bad("no-slope", targeted, "missing", "/target/horizontal/slope", None, "a target without a slope")
bad("no-face", plain, "missing", "/face", None, "nobody said where the face is")
bad("no-push", hanging, "missing", "/push", None, "nobody said which way a thicker shim pushes")
bad("strange-push", hanging, "unknown", "/push", "upwards", "a push that says nothing of the stationary machine")
bad("no-view", plain, "missing", "/view", None, "bolts named, and nobody said by whom")
bad("strange-view", plain, "unknown", "/view", "from_above", "a place where no crew stands")
bad("no-bolts", hanging, "missing", "/bolts", None, "a flange without bolts")
bad("empty-bolts", hanging, "missing", "/bolts", [], "a list of bolts with none in it")
bad("two-bolts", narrow, "missing", "/bolts", None, "two bolts, on which a flange may lean either way", at="/bolts/1")
bad("bolt-no-name", plain, "missing", "/bolts/1/name", None, "a bolt without a name")
bad("bolt-no-radius", plain, "missing", "/bolts/3/radius", None, "a bolt without its radius")
bad("bolt-no-place", plain, "missing", "/bolts/2/at", None, "a bolt without its place")
bad("bolt-same-name", plain, "duplicate", "/bolts/2/name", "A", "two bolts of one name")
bad("bolt-same-place", plain, "duplicate", "/bolts/3/at", "3:00", "two bolts in one place")
bad("bolt-same-place-degrees", hanging, "duplicate", "/bolts/2/at", "450 deg", "two bolts in one place, one of them in degrees and after a turn")
bad("in-one-line", narrow, "conflict", "/bolts", "240 mm", "three bolts in one line, over which a flange rocks", at="/bolts/2/radius")
bad("zero-radius", hanging, "out_of_range", "/bolts/0/radius", "0 mm", "a bolt in the middle of the shaft")
bad("negative-radius", inch, "out_of_range", "/bolts/1/radius", "-7 1/4 in", "a radius below zero")
bad("thirteen", targeted, "out_of_range", "/bolts/0/at", "13:30", "an hour that no dial has")
bad("place-in-words", plain, "malformed", "/bolts/0/at", "top", "a place in words")
bad("radius-comma", hanging, "malformed", "/bolts/2/radius", "175,0 mm", "a decimal comma")
bad("radius-number", targeted, "malformed", "/bolts/1/radius", 225, "a radius as a bare number")
bad("metric-fraction", hanging, "malformed", "/bolts/3/radius", "175 1/2 mm", "a fraction of a millimetre")
bad("face-no-unit", plain, "malformed", "/face", "400", "a face 400 what behind the coupling?")
bad("face-nan", inch, "not_finite", "/face", "NaN in", "a face at no number")
bad("slope-mrad", plain, "unknown", "/position/horizontal/slope", "1 mrad", "a slope given as an angle")
bad("gasket", plain, "unknown", "/gasket", "1.5 mm", "a member that is not known")
bad("bolt-torque", plain, "unknown", "/bolts/0/torque", "200", "a member of a bolt that is not known")
bad("negative-u-face", known, "out_of_range", "/u_face", "-4 mm", "an uncertainty of the face below zero")
bad("negative-u", known, "out_of_range", "/position/vertical/u/slope", "-0.025 mm/m", "an uncertainty of the position below zero")
bad("one-u", known, "missing", "/position/horizontal/u", None, "an uncertainty in one plane only")
bad("half-u", known, "missing", "/position/vertical/u/offset", None, "an uncertainty of the slope only")
bad("correlation-skew", joint, "conflict", "/position/correlation/0/1", 0.6, "a correlation that is not the same as its mirror")
bad("negative-clearance", fits, "out_of_range", "/clearance", "-0.16 mm", "a spigot larger than its rabbet")
bad("spigot-beyond", aside, "conflict", "/spigot", "0.06 mm", "a spigot that stands where its rabbet does not let it", at="/spigot/horizontal")
bad("spigot-one-plane", aside, "missing", "/spigot/vertical", None, "a spigot's place in one plane only")
bad("runout-no-spigot", turned, "missing", "/spigot", None, "no diameter")
bad("runout-zero", turned, "out_of_range", "/spigot", "0 mm", "a spigot of no diameter")
bad("runout-below", turned, "out_of_range", "/spigot", "35 mm", "thinner than the table goes")
bad("runout-beyond", taped, "out_of_range", "/spigot", "88 1/4 in", "thicker than the table goes")
bad("runout-no-unit", turned, "malformed", "/spigot", "200", "200 of what?")
bad("runout-diameter", turned, "unknown", "/diameter", "200 mm", "a diameter beside that of the spigot")

AREA.save()
