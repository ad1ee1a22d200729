"""Writes corrections.json: positions, and what follows from them.

Run from testdata: python3 generate/corrections.py (Python 3.11 with mpmath). Every
result comes by two ways that are written here side by side: the first in
fractions as far as it goes, the second by another picture of the same thing.
"""

from common import *

RATIONAL = "rational arithmetic, Python fractions"
BOTH = "rational arithmetic, Python fractions; sines and roots by " + MPMATH

AREA = Area("corrections", {})
PLANES = ("horizontal", "vertical")


# ---- reading

def misread(text, slip):
    """Reads a length, or misreads it."""
    if slip == "mil_as_hundredth" and text.endswith(" mil"):
        return number(text[:-4]) / 100
    if slip == "fraction_misread" and "/" in text and text.count(" ") == 2:  # 5 7/16 as 57/16: the blank is lost
        value, unit = text.rsplit(" ", 1)
        return number(value.replace(" ", "")) * UNITS["length"][unit]
    return length(text)


def position(p, slip="", sign=1):
    """Returns offset and slope of both planes."""
    return [(sign * misread(p[n]["offset"], slip), sign * slope(p[n]["slope"])) for n in PLANES]


def hours(text, slip):
    return clock(text) / 30 if slip == "hours_as_degrees" and ":" in text else clock(text)


def seen(view, degrees, slip):
    """Returns a clock position in the library's view."""
    return -degrees if view == "from_stationary" and slip != "view_mirrored" else degrees


def positions(found):
    return {n: {"offset": mm(o), "slope": mm_m(s)} for n, (o, s) in zip(PLANES, found)}


def tilts(found):
    return {n: mm_m(s) for n, s in zip(PLANES, found)}


def root(x):
    return mp.sqrt(big(x))


# ---- corrections

def left(input, slip):
    """Returns position less target, what is left to correct."""
    p = position(input["position"], slip)
    if "target" not in input or slip == "target_ignored":
        return p
    t = position(input["target"], slip, -1 if slip != "target_added" else 1)
    return [(a + c, b + d) for (a, b), (c, d) in zip(p, t)]


def covariance(p):
    """Returns the 4 x 4 covariance of a position, or None where none is stated."""
    if "u" not in p["horizontal"]:
        return None
    u = [length(p[n]["u"]["offset"]) if k == 0 else slope(p[n]["u"]["slope"]) for n in PLANES for k in (0, 1)]
    r = p.get("correlation", [[int(i == j) for j in range(4)] for i in range(4)])
    return [[u[i] * u[j] * F(str(r[i][j])) for j in range(4)] for i in range(4)]


def spread(input, slip):
    """Returns the covariance of what is left, or None."""
    parts = [covariance(input[n]) for n in ("position", "target") if n in input and not (n == "target" and slip == "target_ignored")]
    parts = [p for p in parts if p]
    return [[sum(p[i][j] for p in parts) for j in range(4)] for i in range(4)] if parts else None


def straight(input, i, x, station):
    """Adds what errs on its own as it is: of each position its offset, and what of its slope does not go with the offset."""
    total = abs(big(station))
    for name in ("position", "target"):
        v = covariance(input[name]) if name in input else None
        if v:
            o = root(v[i][i])
            along = big(v[i][i + 1]) / o if o else mpf(0)
            total += abs(o + big(x) * along) + abs(big(x)) * mp.sqrt(abs(big(v[i + 1][i + 1]) - along * along))
    return total


def moves(input, slip=""):
    """By = -(offset + slope x); u^2 = Voo + 2 x Vos + x^2 Vss + slope^2 u(x)^2."""
    lines, v = left(input, slip), spread(input, slip)
    answer = []
    for foot in input["feet"]:
        x = misread(foot["x"], slip)
        if slip == "station_unsigned":
            x = abs(x)
        sign = 1 if slip == "correction_for_position" else -1
        by = {n: mm(sign * (o + s * x)) for n, (o, s) in zip(PLANES, lines)}
        if slip == "planes_mixed":
            by = dict(zip(PLANES, reversed(by.values())))
        move = {"foot": foot["name"], **by}
        if v:
            ux = F(0) if slip == "shared_ignored" else length(foot.get("u", "0 mm"))
            cross = 0 if slip == "feet_uncorrelated" else 1
            move["u"] = {n: mm(root(v[i][i] + cross * 2 * x * v[i][i + 1] + x * x * v[i + 1][i + 1] + s * s * ux * ux))
                         for n, i, (_, s) in zip(PLANES, (0, 2), lines)}
            if slip == "added_straight":
                move["u"] = {n: mm(straight(input, i, x, s * ux)) for n, i, (_, s) in zip(PLANES, (0, 2), lines)}
        answer.append(move)
    return {"moves": answer}


def moves_again(input):
    """The line through the places at x = 0 and at x = 1 m; u by J V J' of the four numbers and the station."""
    lines, v = left(input, ""), spread(input, "")
    for foot, move in zip(input["feet"], moves(input)["moves"]):
        x = length(foot["x"])
        for n, i, (o, s) in zip(PLANES, (0, 2), lines):
            here, there = o, o + s * 1000
            assert length(move[n]) == -(here + (there - here) * x / 1000) or close(move[n], -(here + (there - here) * x / 1000))
            if v:
                J = [0, 0, 0, 0]
                J[i], J[i + 1] = 1, x
                square = sum(J[a] * v[a][b] * J[b] for a in range(4) for b in range(4)) + (s * length(foot.get("u", "0 mm"))) ** 2
                assert close(move["u"][n], root(square))


def close(text, value):
    """Tells whether a written quantity is a value held in the unit inside, to 30 digits."""
    number_text, unit = text.rsplit(" ", 1)
    return abs(mpf(number_text) * big(OUT[unit]) - big(value)) <= abs(big(value)) * mpf(10) ** -30 + mpf(10) ** -45


def moves_tolerance(input):
    scale = {n: max(sum(abs(o) + abs(s * length(f["x"])) for o, s in
                        [position(input[p])[i] for p in ("position", "target") if p in input]) for f in input["feet"]) for i, n in enumerate(PLANES)}
    t = {"/moves/*/" + n: rounding(scale[n] or F(1, 10**6), "mm") for n in PLANES}
    v = spread(input, "")
    if v:
        for n, i in zip(PLANES, (0, 2)):
            worst = max(big(v[i][i] + 2 * abs(length(f["x"]) * v[i][i + 1]) + length(f["x"]) ** 2 * v[i + 1][i + 1]
                            + (left(input, "")[i // 2][1] * length(f.get("u", "0 mm"))) ** 2) / mpf(m["u"][n].split()[0]) for f, m in zip(input["feet"], moves(input)["moves"]))
            t["/moves/*/u/" + n] = rounding(worst, "mm")
    return t


# ---- what probes show

SIGNS = {"rim": "side", "bore": "back", "straightedge": "back", "near_face": 1, "far_face": -1, "gap": -1}


def law(probe, slip):
    """Returns k a and k b of r = c + k (a offset + b slope) . u(t)."""
    kind = probe["kind"]
    side = -1 if probe.get("carrier") == "movable" else 1
    if slip == "carrier_sign" and kind in ("rim", "bore", "straightedge"):
        side = -side
    if slip == "joints_exchanged" and kind.startswith("spacer"):
        side = -side
    if slip == "face_sign":
        kind = {"near_face": "far_face", "far_face": "near_face", "spacer_face": "spacer_far_face", "spacer_far_face": "spacer_face"}.get(kind, kind)
    if slip == "bore_as_rim" and kind == "bore":
        kind = "rim"
    if slip == "straightedge_as_rim" and kind == "straightedge":
        kind = "rim"
    if slip == "spacer_as_short" and kind.startswith("spacer"):
        kind = {"spacer_face": "near_face", "spacer_far_face": "far_face"}[kind]
    if slip == "gap_as_dial" and kind == "gap":
        kind = "near_face"
    x, r = (misread(probe.get(n, "0 mm"), slip) for n in ("station", "radius"))
    if slip == "station_unsigned":
        x = abs(x)
    if slip == "offset_at_dial_plane":
        x = F(0)
    if slip == "radius_for_diameter":
        r = r / 2
    if kind in ("rim", "bore", "straightedge"):
        k = side if kind == "rim" else -side
        return k, k * x
    if kind == "displacement":
        g = F(1) if slip == "gain_ignored" else F(str(probe["gain"]))
        return g, g * x
    if kind.startswith("spacer"):
        k = 1 if kind == "spacer_face" else -1
        span = misread(probe["span"], slip) / (2 if slip == "half_span" else 1)
        return k * side * r / span, k * r / 2
    return F(0), (1 if kind == "near_face" else -1) * r


def droop(s, slip):
    sag = misread(s.get("sag", "0 mm"), slip) * {"sag_ignored": F(0), "sag_once": F(1, 2), "sag_added": F(-1)}.get(slip, F(1))
    outwards = s["probe"]["kind"] == "bore" and slip != "bore_as_rim"
    return -sag if outwards else sag


def show(input, slip=""):
    """r(t) - r(t0), by the dot product."""
    lines = position(input["position"], slip)
    sets = []
    for s in input["sets"]:
        a, b = law(s["probe"], slip)
        y, z = (big(a * o + b * m) for o, m in lines)
        sag, values = big(droop(s, slip)), []
        for at in s["at"]:
            sin, cos = sincos(seen(input["view"], hours(at, slip), slip))
            values.append(y * sin + z * cos + sag * cos)
        sets.append({"readings": [{"at": at, "value": mm(v - values[0])} for at, v in zip(s["at"], values)]})
    return {"sets": sets}


# The table of probes once more, for the second way: what a dial reads where the movable
# centreline has the offset o and the slope m towards the dial.
TOWARDS = {
    ("rim", "stationary"): lambda o, m, p: o + m * p["station"],
    ("rim", "movable"): lambda o, m, p: -o - m * p["station"],
    ("bore", "stationary"): lambda o, m, p: -o - m * p["station"],
    ("bore", "movable"): lambda o, m, p: o + m * p["station"],
    ("straightedge", "stationary"): lambda o, m, p: -o - m * p["station"],
    ("straightedge", "movable"): lambda o, m, p: o + m * p["station"],
    ("near_face", "stationary"): lambda o, m, p: m * p["radius"],
    ("near_face", "movable"): lambda o, m, p: m * p["radius"],
    ("far_face", "stationary"): lambda o, m, p: -m * p["radius"],
    ("far_face", "movable"): lambda o, m, p: -m * p["radius"],
    ("gap", None): lambda o, m, p: -m * p["radius"],
    ("displacement", None): lambda o, m, p: p["gain"] * (o + m * p["station"]),
    # A joint shows its own tilt: spacer less stationary shaft, movable shaft less spacer.
    ("spacer_face", "stationary"): lambda o, m, p: p["radius"] * (o + m * p["span"] / 2) / p["span"],
    ("spacer_face", "movable"): lambda o, m, p: p["radius"] * (m - (o + m * p["span"] / 2) / p["span"]),
    ("spacer_far_face", "stationary"): lambda o, m, p: -p["radius"] * (o + m * p["span"] / 2) / p["span"],
    ("spacer_far_face", "movable"): lambda o, m, p: -p["radius"] * (m - (o + m * p["span"] / 2) / p["span"]),
}


def show_again(input):
    """The same by an explicit rotation that brings the dial's place up to 12 o'clock, with the table above."""
    lines = position(input["position"])
    for s, answer in zip(input["sets"], show(input)["sets"]):
        p = {n: length(v) for n, v in s["probe"].items() if n in ("station", "radius", "span")}
        p["gain"] = F(str(s["probe"].get("gain", 0)))
        towards = TOWARDS[s["probe"]["kind"], s["probe"].get("carrier")]
        across, up = (big(towards(o, m, p)) for o, m in lines)
        sag = big(length(s.get("sag", "0 mm"))) * (-1 if s["probe"]["kind"] == "bore" else 1)
        values = []
        for at in s["at"]:
            t = big(clock(at)) * mp.pi / 180 * (-1 if input["view"] == "from_stationary" else 1)
            turn = mp.matrix([[mp.cos(t), -mp.sin(t)], [mp.sin(t), mp.cos(t)]])
            values.append((turn * mp.matrix([across, up]))[1] + sag * turn[0, 0])
        for r, v in zip(answer["readings"], values):
            assert abs(mpf(r["value"].split()[0]) - (v - values[0])) < mpf(10) ** -30


def show_tolerance(input):
    worst = F(1, 10**9)
    for s in input["sets"]:
        a, b = law(s["probe"], "")
        for o, m in position(input["position"]):
            worst = max(worst, 2 * (abs(a * o) + abs(b * m) + abs(droop(s, ""))))
    return {"/sets/*/readings/*/value": rounding(2 * worst, "mm")}


# ---- the ends exchanged, couplings, gaps, a maker's words

def exchange(input, slip=""):
    (oy, sy), (oz, sz) = position(input["position"], slip)
    if slip == "exchange_forgotten":
        return positions([(oy, sy), (oz, sz)])
    if slip == "planes_mixed":
        return positions([(-oz, sz), (oy, -sy)])
    return positions([(oy, -sy), (-oz, sz)])


def exchange_again(input):
    """Where the other shaft's axis passes, seen from the first, at two stations, with the observer turned round."""
    lines, answer = position(input["position"]), exchange(input)
    for x in (F(-70), F(310)):
        here = [o + s * x for o, s in lines]  # the movable axis above the stationary one; the other way round it is below, and 3 is 9
        there = [here[0], -here[1]]
        for n, w in zip(PLANES, there):
            assert length(answer[n]["offset"]) + slope(answer[n]["slope"]) * -x == w


def couple(input, slip=""):
    (oy, sy), (oz, sz) = position(input["position"], slip)
    k, answer = input["coupling"], {}
    if "diameter" in k:
        d = misread(k["diameter"], slip) / (2 if slip == "radius_for_diameter" else 1)
        size = root(sy * sy + sz * sz)
        at = (mp.atan2(big(sy), big(sz)) * 180 / mp.pi + 180) % 360  # open where the centreline climbs away
        if slip == "gap_place_opposite":
            at = (at + 180) % 360
        if slip == "planes_mixed":
            at = (mp.atan2(big(sz), big(sy)) * 180 / mp.pi + 180) % 360
        answer["gap"] = {"opening": mm(size * big(d)), "at": out(at, "deg")}
    if "span" in k:
        L = misread(k["span"], slip) / (2 if slip == "half_span" else 1)
        s, m = [oy / L + sy / 2, oz / L + sz / 2], [sy / 2 - oy / L, sz / 2 - oz / L]
        if slip == "joints_exchanged":
            s, m = m, s
        if slip == "planes_mixed":
            s, m = s[::-1], m[::-1]
        answer["flex"] = {"stationary": tilts(s), "movable": tilts(m)}
    return answer


def couple_again(input):
    """The gap from the opening at 6 and at 9 and their place by the arc sine; the tilts from three points on the shafts and the spacer."""
    lines, answer, k = position(input["position"]), couple(input), input["coupling"]
    if "gap" in answer:
        nine, six = (big(s * length(k["diameter"])) for _, s in lines)
        size = abs(mp.mpc(six, nine))
        assert close(answer["gap"]["opening"], size)
        at = mp.asin(-nine / size) * 180 / mp.pi
        at = (at if -six >= 0 else 180 - at) % 360
        assert abs((mpf(answer["gap"]["at"].split()[0]) - at + 180) % 360 - 180) < mpf(10) ** -28
    if "flex" in answer:
        half = length(k["span"]) / 2
        for n, (o, s) in zip(PLANES, lines):
            spacer = ((o + s * half) - 0) / (2 * half)  # from the stationary axis at -L/2 to the movable one at +L/2
            assert close(answer["flex"]["stationary"][n], spacer) and close(answer["flex"]["movable"][n], s - spacer)


def couple_tolerance(input):
    lines, k, t = position(input["position"]), input["coupling"], {}
    if "diameter" in k:
        t["/gap/opening"] = rounding(sum(abs(s) for _, s in lines) * length(k["diameter"]), "mm")
        t["/gap/at"] = rounding(F(360), "deg")
    if "span" in k:
        for joint in ("stationary", "movable"):
            for n, (o, s) in zip(PLANES, lines):
                t["/flex/%s/%s" % (joint, n)] = rounding(abs(o / length(k["span"])) + abs(s / 2) or F(1, 10**9), "mm/m")
    return t


def from_gap(input, slip=""):
    d = misread(input["diameter"], slip) / (2 if slip == "radius_for_diameter" else 1)
    sin, cos = sincos(hours(input["at"], slip))
    size = -big(misread(input["opening"], slip) / d)
    if slip == "gap_place_opposite":
        size = -size
    found = [size * sin, size * cos]
    return tilts(found[::-1] if slip == "planes_mixed" else found)


def from_gap_again(input):
    """The opening back from the tilt, on the diameter at the place given and across it."""
    found = [mpf(from_gap(input)[n].split()[0]) / 1000 for n in PLANES]
    turn = mp.expj(big(clock(input["at"])) * mp.pi / 180)
    along = found[1] * turn.real + found[0] * turn.imag
    across = found[0] * turn.real - found[1] * turn.imag
    d = big(length(input["diameter"]))
    assert abs(-along * d - big(length(input["opening"]))) < mpf(10) ** -28 and abs(across * d) < mpf(10) ** -28


def from_gap_tolerance(input):
    return {"/" + n: rounding(2 * abs(length(input["opening"]) / length(input["diameter"])), "mm/m") for n in PLANES}


def from_flex(input, slip=""):
    L = misread(input["span"], slip) / (2 if slip == "half_span" else 1)
    s, m = ([slope(input[j][n]) for n in PLANES] for j in ("stationary", "movable"))
    if slip == "joints_exchanged":
        s, m = m, s
    found = [((a - b) * L / 2, a + b) for a, b in zip(s, m)]
    return positions(found[::-1] if slip == "planes_mixed" else found)


def from_flex_again(input):
    """The shafts' axes meet the spacer's at the flex planes: stationary at -L/2, movable at +L/2."""
    half, answer = length(input["span"]) / 2, from_flex(input)
    for n in PLANES:
        o, s = length(answer[n]["offset"]), slope(answer[n]["slope"])
        spacer = slope(input["stationary"][n])
        assert o + s * half == spacer * 2 * half and s - spacer == slope(input["movable"][n])


def from_flex_tolerance(input):
    t = {}
    for n in PLANES:
        size = abs(slope(input["stationary"][n])) + abs(slope(input["movable"][n]))
        t["/%s/offset" % n], t["/%s/slope" % n] = rounding(size * length(input["span"]) / 2, "mm"), rounding(size, "mm/m")
    return t


def words(input, slip=""):
    x = misread(input.get("station", "0 mm"), slip)
    if slip == "station_unsigned":
        x = abs(x)
    if slip == "offset_at_dial_plane":
        x = F(0)
    high, three = (big(misread(input.get(n, "0 mm"), slip)) for n in ("high", "to_three"))
    mirrored = -1 if input["view"] == "from_stationary" and slip != "view_mirrored" else 1
    found = [mpf(0), mpf(0)]
    if "opening" in input:
        d = misread(input["diameter"], slip) / (2 if slip == "radius_for_diameter" else 1)
        sin, cos = sincos(seen(input["view"], hours(input["open_at"], slip), slip))
        size = big(misread(input["opening"], slip) / d) * (1 if slip == "gap_place_opposite" else -1)
        found = [size * sin, size * cos]
    lines = [(w - s * big(x), s) for w, s in zip((mirrored * three, high), found)]
    return positions(lines[::-1] if slip == "planes_mixed" else lines)


def words_again(input):
    """What the maker said, read back off the answer."""
    answer, x = words(input), big(length(input.get("station", "0 mm")))
    o = [mpf(answer[n]["offset"].split()[0]) for n in PLANES]
    s = [mpf(answer[n]["slope"].split()[0]) / 1000 for n in PLANES]
    side = -1 if input["view"] == "from_stationary" else 1
    assert abs(o[1] + s[1] * x - big(length(input.get("high", "0 mm")))) < mpf(10) ** -28
    assert abs(side * (o[0] + s[0] * x) - big(length(input.get("to_three", "0 mm")))) < mpf(10) ** -28
    if "opening" in input:
        t = side * big(clock(input["open_at"])) * mp.pi / 180
        gap = [mpf(1) / 2 * big(length(input["diameter"])) * -(s[0] * mp.sin(a) + s[1] * mp.cos(a)) for a in (t, t + mp.pi)]
        assert abs(gap[0] - gap[1] - big(length(input["opening"]))) < mpf(10) ** -28


def words_tolerance(input):
    tilt = 2 * abs(length(input["opening"]) / length(input["diameter"])) if "opening" in input else F(1, 10**9)
    size = abs(length(input.get("high", "0 mm"))) + abs(length(input.get("to_three", "0 mm"))) + tilt * abs(length(input.get("station", "0 mm")))
    t = {}
    for n in PLANES:
        t["/%s/offset" % n], t["/%s/slope" % n] = rounding(size or F(1, 10**6), "mm"), rounding(tilt, "mm/m")
    return t


def exchange_tolerance(input):
    t = {}
    for n, (o, s) in zip(PLANES, position(input["position"])):
        t["/%s/offset" % n], t["/%s/slope" % n] = rounding(abs(o) or F(1, 10**9), "mm"), rounding(abs(s) or F(1, 10**9), "mm/m")
    return t


OPS = {
    "corrections": (moves, moves_again, moves_tolerance, "lines through two points and J V J' by hand: equal, roots to 30 digits"),
    "predict": (show, show_again, show_tolerance, "a rotation that brings the dial up to 12, with a table of probes of its own: to 1e-30 mm"),
    "exchange": (exchange, exchange_again, exchange_tolerance, "places on the axes at two stations: equal"),
    "coupling": (couple, couple_again, couple_tolerance, "gaps at 6 and 9 with the arc sine, points on shafts and spacer: to 28 digits"),
    "slope_from_gap": (from_gap, from_gap_again, from_gap_tolerance, "the gap read back, along and across: to 28 digits"),
    "from_flex": (from_flex, from_flex_again, from_flex_tolerance, "the axes meet the spacer at its flex planes: equal"),
    "maker_target": (words, words_again, words_tolerance, "the maker's words read back off the answer: to 28 digits"),
}
SLIPS = ["correction_for_position", "target_ignored", "target_added", "feet_uncorrelated", "station_unsigned", "planes_mixed", "mil_as_hundredth",
         "fraction_misread", "shared_ignored", "added_straight", "carrier_sign", "face_sign", "bore_as_rim", "straightedge_as_rim", "spacer_as_short", "gap_as_dial", "gain_ignored", "sag_ignored", "sag_once", "sag_added",
         "view_mirrored", "hours_as_degrees", "joints_exchanged", "half_span", "radius_for_diameter", "offset_at_dial_plane", "gap_place_opposite",
         "exchange_forgotten"]


def put(id, op, kind, about, input, published=None, holds=lambda result: True):
    """Adds a vector in a region of its own, the case that its name tells."""
    answer, again, tolerance, second = OPS[op]
    again(input)
    result, within = answer(input), tolerance(input)
    assert holds(result), (id, result)
    flags = [s for s in SLIPS if differs(result, answer(input, s), within)]
    region = id.replace("-", "_")
    AREA.regions[region] = (kind, about)
    source = {"kind": "exact" if op in ("exchange", "from_flex") else "multi_precision", "by": RATIONAL if op in ("exchange", "from_flex") else BOTH, "second": second}
    if published:
        source = {"kind": "published", "by": published[0], "published": published[1], "second": BOTH + "; " + second}
    return AREA.add(id, op, region, flags, about, source, input, result, within)


def bad(id, twin, code, pointer, value, about, at=None):
    """Adds a refusal: the twin's input with one value changed, added, or (None) taken out."""
    region = id.replace("-", "_")
    AREA.regions[region] = ("invalid", about)
    AREA.refuse(id, twin, region, code, at or pointer, changed(twin["input"], pointer, value), about)


def at(oy, sy, oz, sz, unit="mm", per="mm/m", u=None, r=None):
    """Writes a position, with uncertainties of the four numbers and their correlations where they are known."""
    p = {n: {"offset": "%s %s" % (o, unit), "slope": "%s %s" % (s, per)} for n, o, s in zip(PLANES, (oy, oz), (sy, sz))}
    if u:
        for n, (a, b) in zip(PLANES, (u[:2], u[2:])):
            p[n]["u"] = {"offset": "%s %s" % (a, unit), "slope": "%s %s" % (b, per)}
    return {**p, "correlation": r} if r else p


def feet(unit="mm", **stations):
    return [{"name": n.replace("_", " "), "x": "%s %s" % (x, unit)} for n, x in stations.items()]


def rounds(pointer, printed, digits):
    """Asks that a result rounds to what was printed."""
    def holds(result):
        for p in pointer.split("/"):
            result = result[int(p) if p.isdigit() else p]
        return abs(mpf(result.split()[0]) - mpf(printed)) <= mpf(10) ** -digits / 2
    return holds


CASE_A = at("0.12", "0.4", "-0.2", "-0.7")
GEOMETRY = "sign table and formulae of the trade's geometry, derived here from two rigid shafts"

# ---- corrections

plain = put("moves", "corrections", "plain", "two feet, both planes",
            {"position": CASE_A, "feet": feet(inboard="300", outboard="900")})
put("moves-bloch", "corrections", "plain", "a centreline 12 mils high at one plane and 7 at the other, 14 in apart: lower 3 and raise 7 mils at the feet",
    {"position": at("0", "0", "0.0095", "-0.35714285714285714285714285714285714", "in", "mil/in"), "feet": feet("in", inboard="19", outboard="45")},
    ("H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, ch. 5, p. 203 (read); the origin midway between the planes is ours",
     "-0.0027 in and +0.0066 in"),
    lambda r: abs(length(r["moves"][0]["vertical"]) / F("25.4") + F("0.0027")) < F("0.00005") and abs(length(r["moves"][1]["vertical"]) / F("25.4") - F("0.0066")) < F("0.00005"))
put("moves-mcmillan", "corrections", "plain", "feet that stand 2 and 7 mils low go up by as much",
    {"position": at("0", "0", "0", "-0.25", "mil", "mil/in", None), "feet": feet("in", inboard="8", outboard="28")},
    ("R. B. McMillan, Rotating Machinery, Fairmont, 2004, example 8-3, pp. 137-141 (read): positions of the feet; their stations are counted so that the line through them passes the origin, which is ours",
     "-2 and -7 mils"), lambda r: [length(m["vertical"]) for m in r["moves"]] == [F("0.0508"), F("0.1778")])
put("moves-tape", "corrections", "plain", "stations off the tape, in fractions", {"position": at("-3.5", "0.25", "6.25", "0.5", "mil", "mil/in"),
    "feet": feet("in", front="11 5/8", back="34 3/16")})
targeted = put("moves-target", "corrections", "plain", "a cold target that is taken off first",
    {"position": at("0.08", "-0.15", "0.31", "0.22"), "target": at("0.01", "0", "-0.12", "-0.09"), "feet": feet(near="410", far="1260")})
put("moves-at-target", "corrections", "hard", "a machine that stands on its target: nothing moves", {"position": at("0.03", "0.11", "-0.25", "0.07"),
    "target": at("0.03", "0.11", "-0.25", "0.07"), "feet": feet(near="455", far="1105")})
put("moves-three", "corrections", "plain", "three stations: the moves lie on one line", {"position": at("0.21", "0.13", "-0.17", "0.31"),
    "feet": feet(front="355", middle="905", back="1705")})
put("moves-behind", "corrections", "hard", "feet on the stationary side: a signed station", {"position": at("0.15", "0.6", "0.09", "-0.35"),
    "feet": feet(front="-240", back="-980")})
put("moves-far", "corrections", "hard", "a foot eleven metres away", {"position": at("0.002", "0.031", "-0.004", "0.027"), "feet": feet("m", bearing="3.75", end="11.2")})
put("moves-huge", "corrections", "hard", "an offset of centimetres with a slope that is next to nothing", {"position": at("38.25", "0.0003", "-41.5", "-0.0002"),
    "feet": feet(near="620", far="1940")})
put("moves-cancel", "corrections", "hard", "offset and slope that cancel at a foot", {"position": at("-0.3", "0.75", "0.24", "-0.6"), "feet": feet(over="400", beyond="1000")})
put("moves-origin", "corrections", "hard", "a foot right below the coupling", {"position": at("0.07", "1.1", "-0.06", "0.9"), "feet": feet(under="0", back="515")})
uncertain = put("moves-uncertain", "corrections", "plain", "uncertain offset and slope, nothing in common",
    {"position": at("0.14", "0.35", "-0.22", "-0.48", u=("0.011", "0.021", "0.013", "0.024")), "feet": feet(inboard="330", outboard="870")})
correlated = [[1, "-0.8", 0, 0], ["-0.8", 1, 0, 0], [0, 0, 1, "0.65"], [0, 0, "0.65", 1]]
correlated = [[float(x) if x not in (0, 1) else x for x in row] for row in correlated]
put("moves-correlated", "corrections", "plain", "offset and slope that err together", {"position": at("0.14", "0.35", "-0.22", "-0.48", u=("0.012", "0.025", "0.015", "0.03"), r=correlated),
    "feet": feet(inboard="345", outboard="995")})
opposed = [[1, -1, 0, 0], [-1, 1, 0, 0], [0, 0, 1, -1], [0, 0, -1, 1]]
put("moves-opposed", "corrections", "hard", "offset and slope that err wholly against one another", {"position": at("0.11", "0.2", "0.05", "-0.4", u=("0.02", "0.05", "0.03", "0.04"), r=opposed),
    "feet": feet(near="260", far="1150")})
put("moves-foot-uncertain", "corrections", "plain", "stations that were paced off count with the slope",
    {"position": at("0.02", "1.25", "0.03", "-1.5", u=("0.004", "0.01", "0.004", "0.01")), "feet": [{"name": "near", "x": "375 mm", "u": "3 mm"}, {"name": "far", "x": "1425 mm", "u": "12 mm"}]})
put("moves-target-uncertain", "corrections", "plain", "a growth that is not well known: its uncertainty comes along",
    {"position": at("0.03", "0.06", "0.19", "0.11", u=("0.008", "0.017", "0.009", "0.018")),
     "target": at("0", "0", "-0.21", "-0.14", u=("0.005", "0.01", "0.04", "0.06")), "feet": feet(front="390", back="1190")})
put("moves-target-alone-uncertain", "corrections", "plain", "only the target is uncertain",
    {"position": at("0.05", "-0.02", "0.15", "0.33"), "target": at("0", "0", "-0.3", "0.12", u=("0.003", "0.004", "0.05", "0.07")), "feet": feet(front="365", back="1015")})

tied = [[1, 0.45, 0, 0], [0.45, 1, 0, 0], [0, 0, 1, -0.7], [0, 0, -0.7, 1]]
put("moves-both-correlated", "corrections", "hard", "position and target each with errors that go together, the one so and the other the other way",
    {"position": at("0.16", "-0.27", "0.34", "0.18", u=("0.009", "0.014", "0.01", "0.022"), r=tied),
     "target": at("-0.02", "0.04", "-0.26", "-0.13", u=("0.006", "0.012", "0.035", "0.055"), r=correlated), "feet": feet(drive="425", free="1310")})
put("moves-far-correlated", "corrections", "hard", "a foot eight metres away, offset and slope nearly tied to one another",
    {"position": at("-0.09", "0.07", "0.12", "-0.05", u=("0.01", "0.003", "0.012", "0.0035"),
                    r=[[1, 0.97, 0, 0], [0.97, 1, 0, 0], [0, 0, 1, -0.97], [0, 0, -0.97, 1]]), "feet": feet("m", near="2.85", far="8.1")})
put("moves-steep", "corrections", "hard", "a steep shaft whose feet were paced off: there the stations matter most",
    {"position": at("0.4", "8.5", "-0.3", "-11.25", u=("0.002", "0.003", "0.002", "0.003")),
     "feet": [{"name": "front", "x": "14 3/4 in", "u": "1/4 in"}, {"name": "rear", "x": "41 1/2 in", "u": "1/2 in"}]})
put("moves-level", "corrections", "hard", "level in one plane: there a station that is not well known does no harm",
    {"position": at("0.13", "0", "-0.19", "0.62", u=("0.005", "0.008", "0.006", "0.009")), "feet": [{"name": "only", "x": "735 mm", "u": "9 mm"}]})

# ---- predict

def probe(kind, **more): return {"kind": kind, **more}
def ask(p, *clocks, sag=None): return {"probe": p, **({"sag": sag} if sag else {}), "at": list(clocks)}


HOURS = ("12:00", "3:00", "6:00", "9:00")
RIM_A = probe("rim", carrier="stationary", station="40 mm")
shown = put("shows-rim", "predict", "plain", "a rim dial carried by the stationary shaft, zeroed at 12", {"position": CASE_A, "view": "from_movable", "sets": [ask(RIM_A, *HOURS)]},
    holds=lambda r: length(r["sets"][0]["readings"][2]["value"]) == F("0.456"))
shown_face = put("shows-face", "predict", "plain", "a near face", {"position": CASE_A, "view": "from_movable", "sets": [ask(probe("near_face", carrier="stationary", radius="75 mm"), *HOURS)]},
    holds=lambda r: [length(x["value"]) for x in r["sets"][0]["readings"]] == [0, F("0.0825"), F("0.105"), F("0.0225")])
put("shows-rim-back", "predict", "plain", "a rim dial carried by the movable shaft", {"position": CASE_A, "view": "from_movable",
    "sets": [ask(probe("rim", carrier="movable", station="-50 mm"), *HOURS)]}, holds=lambda r: length(r["sets"][0]["readings"][2]["value"]) == F("-0.33"))
put("shows-high", "predict", "plain", "a tenth high and parallel: minus two tenths at 6", {"position": at("0", "0", "0.1", "0"), "view": "from_movable",
    "sets": [ask(probe("rim", carrier="stationary", station="35 mm"), *HOURS), ask(probe("rim", carrier="movable", station="-35 mm"), *HOURS)]},
    holds=lambda r: length(r["sets"][0]["readings"][2]["value"]) == F("-0.2") and length(r["sets"][1]["readings"][2]["value"]) == F("0.2"))
put("shows-face-slope", "predict", "plain", "a slope alone on a face of 50 mm", {"position": at("0", "0", "0", "1"), "view": "from_movable",
    "sets": [ask(probe("near_face", carrier="movable", radius="50 mm"), *HOURS)]}, holds=lambda r: length(r["sets"][0]["readings"][2]["value"]) == F("-0.1"))
put("shows-far-face", "predict", "plain", "a far face: the plunger points back", {"position": at("0.05", "0.35", "0.11", "-0.45"), "view": "from_movable",
    "sets": [ask(probe("far_face", carrier="movable", radius="110 mm"), *HOURS)]})
put("shows-bore", "predict", "plain", "a dial in a bore, with its bracket's droop", {"position": at("-0.09", "0.25", "0.18", "0.15"), "view": "from_movable",
    "sets": [ask(probe("bore", carrier="stationary", station="62 mm"), *HOURS, sag="0.06 mm")]})
put("shows-gap", "predict", "plain", "a gauge between the faces", {"position": at("0.1", "-0.4", "0.07", "0.55"), "view": "from_movable",
    "sets": [ask(probe("gap", radius="95 mm"), *HOURS)]})
put("shows-straightedge", "predict", "plain", "a straightedge on either rim", {"position": at("0.16", "0.2", "-0.13", "0.3"), "view": "from_movable",
    "sets": [ask(probe("straightedge", carrier="stationary", station="22 mm"), *HOURS), ask(probe("straightedge", carrier="movable", station="-22 mm"), *HOURS)]})
put("shows-joints", "predict", "plain", "face dials at both joints of a spacer", {"position": CASE_A, "view": "from_movable",
    "sets": [ask(probe("spacer_face", carrier="stationary", radius="90 mm", span="800 mm"), *HOURS), ask(probe("spacer_face", carrier="movable", radius="90 mm", span="800 mm"), *HOURS)]})
put("shows-far-joint", "predict", "plain", "a joint of a spacer, the plunger pointing back", {"position": at("0.7", "-0.3", "0.4", "0.25"), "view": "from_movable",
    "sets": [ask(probe("spacer_far_face", carrier="movable", radius="120 mm", span="1250 mm"), *HOURS)]})
sensed = put("shows-sensor", "predict", "plain", "sensors that grow and that fall", {"position": at("0.06", "0.5", "0.14", "-0.2"), "view": "from_movable",
    "sets": [ask(probe("displacement", station="85 mm", gain=-1.5), *HOURS), ask(probe("displacement", station="-130 mm", gain=0.8), *HOURS)]})
viewed = put("shows-other-end", "predict", "plain", "a crew at the stationary end names 3 and 9 the other way round", {"position": at("0.13", "0.45", "-0.08", "0.35"), "view": "from_stationary",
    "sets": [ask(probe("rim", carrier="stationary", station="55 mm"), *HOURS), ask(probe("near_face", carrier="stationary", radius="80 mm"), *HOURS)]})
put("shows-other-end-sag", "predict", "hard", "the same with droop on both dials of a reverse set", {"position": at("-0.11", "0.26", "0.17", "-0.52"), "view": "from_stationary",
    "sets": [ask(probe("rim", carrier="stationary", station="5 in"), *HOURS, sag="3 mil"), ask(probe("rim", carrier="movable", station="-5 in"), *HOURS, sag="4.5 mil")]})
sagging = put("shows-sag", "predict", "plain", "a droop of 3 mils shows as -6 at the bottom of a shaft in line", {"position": at("0", "0", "0", "0"), "view": "from_movable",
    "sets": [ask(probe("rim", carrier="movable", station="-4 in"), *HOURS, sag="3 mil")]},
    ("a pump handbook, fig. 19A-D (second-hand): true sag 3 mils", "sag 3 mils; -6 at the bottom follows"),
    lambda r: length(r["sets"][0]["readings"][2]["value"]) == 6 * F("-0.0254"))
put("shows-handbook-sag", "predict", "plain", "8 mils low with 3 mils of droop: the dial shows +10 at the bottom and +5 at the sides", {"position": at("0", "0", "-8", "0", "mil", "mil/in"), "view": "from_movable",
    "sets": [ask(probe("rim", carrier="stationary", station="4 in"), *HOURS, sag="3 mil")]},
    ("a pump handbook, fig. 19A-D (second-hand): true offset 8 mils in size, stationary carrier", "+10, +5, +5"),
    lambda r: [length(x["value"]) / F("0.0254") for x in r["sets"][0]["readings"]] == [0, 5, 10, 5])
put("shows-zero-at-three", "predict", "plain", "zeroed at 3", {"position": at("0.22", "-0.1", "0.19", "0.4"), "view": "from_movable",
    "sets": [ask(probe("rim", carrier="stationary", station="70 mm"), "3:00", "6:00", "9:00", "12:00")]})
put("shows-arc", "predict", "hard", "a partial turn over 12 o'clock", {"position": at("0.17", "0.3", "-0.21", "0.65"), "view": "from_movable",
    "sets": [ask(probe("rim", carrier="stationary", station="48 mm"), "10:40", "11:30", "12:10", "1:20")]})
put("shows-degrees", "predict", "hard", "odd degrees, below none and over a turn", {"position": at("-0.26", "0.15", "0.12", "-0.35"), "view": "from_movable",
    "sets": [ask(probe("rim", carrier="movable", station="-64 mm"), "-17.3 deg", "61.9 deg", "401.25 deg")]})
put("shows-diagonal", "predict", "hard", "on the diagonals", {"position": at("0.09", "0.5", "0.09", "0.5"), "view": "from_movable",
    "sets": [ask(probe("near_face", carrier="stationary", radius="66 mm"), "1:30", "4:30", "7:30", "10:30")]})
put("shows-before-move", "predict", "plain", "one probe at 12 and one at 6, before a move", {"position": CASE_A, "view": "from_movable",
    "sets": [ask(RIM_A, "9:00", "12:00"), ask(probe("rim", carrier="movable", station="-50 mm"), "9:00", "6:00")]})
put("shows-after-move", "predict", "plain", "the same after 0.05 mm and 0.2 mm/m upwards", {"position": at("0.12", "0.4", "-0.15", "-0.5"), "view": "from_movable",
    "sets": [ask(RIM_A, "9:00", "12:00"), ask(probe("rim", carrier="movable", station="-50 mm"), "9:00", "6:00")]})
put("shows-huge", "predict", "hard", "centimetres out, with next to no slope", {"position": at("17.5", "0.001", "-23.25", "-0.002"), "view": "from_movable",
    "sets": [ask(probe("rim", carrier="stationary", station="150 mm"), *HOURS)]})

put("shows-bore-movable", "predict", "hard", "a dial in the stationary bore with its droop, a crew at the other end, between the quarters", {"position": at("0.07", "-0.55", "-0.24", "0.4"),
    "view": "from_stationary", "sets": [ask(probe("bore", carrier="movable", station="-47 mm"), "1:00", "4:10", "8:45", sag="0.05 mm")]})
put("shows-bore-inch", "predict", "plain", "a bore in inches, its station off the tape", {"position": at("6", "0.35", "-4.5", "0.8", "mil", "mil/in"), "view": "from_movable",
    "sets": [ask(probe("bore", carrier="movable", station="-2 3/8 in"), *HOURS)]})
put("shows-gap-other-end", "predict", "hard", "a gauge between the faces at odd degrees, seen from the other end", {"position": at("0.3", "0.65", "-0.2", "-0.15"), "view": "from_stationary",
    "sets": [ask(probe("gap", radius="77.5 mm"), "12.5 deg", "132.5 deg", "252.5 deg")]})
put("shows-gap-inch", "predict", "hard", "an offset that is large beside the slope does not show in a gap", {"position": at("240", "0.02", "-310", "0.03", "mil", "mil/in"), "view": "from_movable",
    "sets": [ask(probe("gap", radius="4 1/2 in"), *HOURS)]})
put("shows-sensor-other-end", "predict", "hard", "a sensor that falls, over less than a quarter of a turn", {"position": at("-0.18", "0.33", "0.21", "0.44"), "view": "from_stationary",
    "sets": [ask(probe("displacement", station="112 mm", gain=-0.35), "40 deg", "75 deg", "100 deg")]})
put("shows-sensor-steep", "predict", "plain", "a sensor of high gain on the stationary side", {"position": at("0.025", "-0.06", "0.015", "0.09"), "view": "from_movable",
    "sets": [ask(probe("displacement", station="-205 mm", gain=7.875), "6:00", "9:00", "12:00", "3:00")]})
put("shows-straightedge-inch", "predict", "plain", "a feeler under a straightedge on the movable rim, in inches", {"position": at("-9", "0.45", "14", "-0.6", "mil", "mil/in"), "view": "from_movable",
    "sets": [ask(probe("straightedge", carrier="movable", station="-1 1/4 in"), *HOURS)]})
put("shows-straightedge-other-end", "predict", "hard", "a straightedge at places where there is room for one, seen from the other end", {"position": at("0.42", "0.7", "-0.36", "0.25"), "view": "from_stationary",
    "sets": [ask(probe("straightedge", carrier="stationary", station="31 mm"), "1:40", "3:00", "10:20")]})
put("shows-joint-long", "predict", "hard", "the joint at the stationary shaft of a spacer of four metres, plunger pointing back, seen from the other end", {"position": at("6.4", "-0.2", "9.3", "0.45"),
    "view": "from_stationary", "sets": [ask(probe("spacer_far_face", carrier="stationary", radius="155 mm", span="4.2 m"), "12:00", "2:30", "7:15")]})
put("shows-face-sag", "predict", "hard", "a face dial whose bracket's droop lets the plunger out at 12", {"position": at("0", "0.25", "0", "0.38"), "view": "from_stationary",
    "sets": [ask(probe("near_face", carrier="movable", radius="5 5/8 in"), *HOURS, sag="-2 mil")]})

# ---- the rest

turned = put("exchanged", "exchange", "plain", "the other machine moves instead, seen from its end", {"position": CASE_A})
put("exchanged-back", "exchange", "plain", "and back", {"position": at("0.12", "-0.4", "0.2", "-0.7")})
put("exchanged-offset", "exchange", "hard", "an offset alone", {"position": at("0.31", "0", "-0.46", "0")})
put("exchanged-slope", "exchange", "hard", "a slope alone, in inches", {"position": at("0", "0.35", "0", "-0.85", "mil", "mil/in")})

joined = put("flex", "coupling", "plain", "a spacer of 800 mm", {"position": CASE_A, "coupling": {"span": "800 mm"}},
    holds=lambda r: [slope(r["flex"][j][n]) * 1000 for j in ("stationary", "movable") for n in PLANES] == [F("0.35"), F("-0.6"), F("0.05"), F("-0.1")])
gapped = put("gap", "coupling", "plain", "the gap of a coupling, wider below", {"position": at("0.1", "0", "0.2", "0.6"), "coupling": {"diameter": "180 mm"}},
    holds=lambda r: close(r["gap"]["opening"], F("0.108")) and close(r["gap"]["at"], F(180)))
put("gap-nine", "coupling", "plain", "a slope towards 3 opens at 9", {"position": at("0.05", "0.9", "0.02", "0"), "coupling": {"diameter": "6 1/2 in"}})
put("gap-diagonal", "coupling", "hard", "open between the quarters", {"position": at("0", "-0.35", "0", "0.84"), "coupling": {"diameter": "240 mm"}})
put("gap-both", "coupling", "plain", "a gap and the tilts of a spacer", {"position": at("-0.6", "0.28", "0.45", "0.21"), "coupling": {"diameter": "320 mm", "span": "1400 mm"}})
put("flex-long", "coupling", "hard", "a spacer of six metres between a turbine and its tower", {"position": at("14.5", "0.3", "-22.75", "0.15"), "coupling": {"span": "6.1 m"}})
put("flex-inch", "coupling", "plain", "a spacer off the tape", {"position": at("12", "0.4", "-7.5", "0.65", "mil", "mil/in"), "coupling": {"span": "18 1/4 in"}})
put("flex-one-plane", "coupling", "hard", "a tilt at one flex plane only", {"position": at("0.2", "0.5", "0.3", "0.75"), "coupling": {"span": "800 mm"}})
put("gap-tiny", "coupling", "hard", "a slope of nanometres to the metre", {"position": at("0.4", "0.000003", "0.1", "-0.000004"), "coupling": {"diameter": "150 mm"}})

opened = put("from-gap", "slope_from_gap", "plain", "wider at the top by 12 thousandths over 5 inches: the shaft falls away from the coupling",
    {"opening": "0.012 in", "at": "12:00", "diameter": "5 in"}, ("a compressor builder's start-up manual, p. 213 (read); per 30 in between the bolts", "0.072 in"),
    lambda r: slope(r["vertical"]) * 30 == F("-0.072"))
put("from-gap-nine", "slope_from_gap", "plain", "wider at 9", {"opening": "0.08 mm", "at": "9:00", "diameter": "160 mm"})
put("from-gap-closed", "slope_from_gap", "hard", "narrower where it was looked for", {"opening": "-0.055 mm", "at": "3:00", "diameter": "210 mm"})
put("from-gap-diagonal", "slope_from_gap", "hard", "wider at half past four", {"opening": "7 mil", "at": "4:30", "diameter": "8 3/8 in"})
put("from-gap-degrees", "slope_from_gap", "hard", "wider at an odd place", {"opening": "0.035 mm", "at": "-73.6 deg", "diameter": "92.5 mm"})

flexed = put("from-flex", "from_flex", "plain", "what the tilts at both joints make", {"span": "800 mm", "stationary": {"horizontal": "0.35 mm/m", "vertical": "-0.6 mm/m"},
    "movable": {"horizontal": "0.05 mm/m", "vertical": "-0.1 mm/m"}}, holds=lambda r: length(r["vertical"]["offset"]) == F("-0.2"))
put("from-flex-inch", "from_flex", "plain", "the same in inches", {"span": "22 5/16 in", "stationary": {"horizontal": "0.6 mil/in", "vertical": "0.25 mil/in"},
    "movable": {"horizontal": "-0.4 mil/in", "vertical": "0.75 mil/in"}})
put("from-flex-parallel", "from_flex", "hard", "tilts that only an offset makes", {"span": "1150 mm", "stationary": {"horizontal": "0.4 mm/m", "vertical": "-0.3 mm/m"},
    "movable": {"horizontal": "-0.4 mm/m", "vertical": "0.3 mm/m"}})

said = put("maker", "maker_target", "plain", "a twentieth low, gap two hundredths open at the top", {"high": "-0.05 mm", "opening": "0.02 mm", "open_at": "12:00", "diameter": "200 mm", "view": "from_movable"})
put("maker-side", "maker_target", "plain", "set towards 3 as the crew at the stationary end sees it", {"to_three": "0.12 mm", "high": "-0.07 mm", "view": "from_stationary"})
put("maker-gap-side", "maker_target", "plain", "a gap at the crew's 3 o'clock", {"opening": "0.06 mm", "open_at": "3:00", "diameter": "150 mm", "view": "from_stationary"})
put("maker-elsewhere", "maker_target", "plain", "high at the plane of the dial, not at the coupling centre", {"station": "65 mm", "high": "0.2 mm", "to_three": "-0.04 mm", "opening": "0.09 mm",
    "open_at": "6:00", "diameter": "180 mm", "view": "from_movable"})
put("maker-behind", "maker_target", "hard", "meant on the stationary side, in inches", {"station": "-3 1/4 in", "high": "12 mil", "opening": "5 mil", "open_at": "7:30", "diameter": "9 in", "view": "from_stationary"})
put("maker-even", "maker_target", "hard", "a hair high and a gap that is even all round", {"station": "40 mm", "high": "0.01 mm", "opening": "0 mm", "open_at": "12:00", "diameter": "90 mm", "view": "from_movable"})

# ---- refusals

bad("no-position", plain, "missing", "/position", None, "no position")
bad("no-plane", plain, "missing", "/position/horizontal", None, "one plane only")
bad("no-slope", targeted, "missing", "/target/vertical/slope", None, "a target without its slope")
bad("no-feet", plain, "missing", "/feet", [], "no feet")
bad("no-x", targeted, "missing", "/feet/1/x", None, "a foot without its station")
bad("no-name", uncertain, "missing", "/feet/0/name", None, "a foot without a name")
bad("same-name", plain, "duplicate", "/feet/1/name", "inboard", "two feet of one name")
bad("no-unit", plain, "malformed", "/position/vertical/offset", "-0.2", "an offset without its unit")
bad("mrad", plain, "unknown", "/position/vertical/slope", "-0.7 mrad", "a slope given as an angle")
bad("comma", targeted, "malformed", "/feet/0/x", "410,5 mm", "a comma for the point")
bad("negative-u", uncertain, "out_of_range", "/position/vertical/u/slope", "-0.024 mm/m", "an uncertainty below zero")
bad("one-u", uncertain, "missing", "/position/horizontal/u", None, "an uncertainty in one plane only")
bad("shift", targeted, "unknown", "/shift", "1 mm", "a member that is not known")
bad("no-view", shown, "missing", "/view", None, "nobody said where the crew stands")
bad("strange-view", viewed, "unknown", "/view", "from_above", "a place where no crew stands")
bad("no-places", shown, "missing", "/sets/0/at", [], "no positions to be read at")
bad("no-dial-station", shown, "missing", "/sets/0/probe/station", None, "a dial without its station")
bad("strange-kind", shown, "unknown", "/sets/0/probe/kind", "edge", "a kind of probe that is not known")
bad("carried-by-both", shown, "unknown", "/sets/0/probe/carrier", "both", "a carrier that is no shaft")
bad("span-on-rim", shown, "conflict", "/sets/0/probe/span", "300 mm", "a span on a rim, which has none")
bad("negative-sag", sagging, "out_of_range", "/sets/0/sag", "-3 mil", "a bracket that droops upwards")
bad("half-past", shown, "malformed", "/sets/0/at/1", "half past three", "a clock position in words")
bad("no-offset", turned, "missing", "/position/vertical/offset", None, "a position without an offset to exchange")
bad("zero-diameter", gapped, "out_of_range", "/coupling/diameter", "0 mm", "a coupling without a diameter")
bad("negative-span", joined, "out_of_range", "/coupling/span", "-800 mm", "a span below zero")
bad("no-coupling", joined, "missing", "/coupling", None, "no coupling")
bad("no-opening", opened, "missing", "/opening", None, "no gap")
bad("no-diameter", opened, "missing", "/diameter", None, "a gap across nothing")
bad("zero-gap-diameter", opened, "out_of_range", "/diameter", "0 in", "a gap across a diameter of zero")
bad("zero-span", flexed, "out_of_range", "/span", "0 mm", "a spacer without a length")
bad("no-tilt", flexed, "missing", "/movable/vertical", None, "a tilt that is not there")
bad("no-open-at", said, "missing", "/open_at", None, "an opening, and nobody said where")
bad("no-maker-view", said, "missing", "/view", None, "3 o'clock without a crew that sees it")
bad("opening-no-unit", said, "malformed", "/opening", "0.02", "an opening without its unit")
bad("no-plane-exchange", turned, "missing", "/position/horizontal", None, "one plane only to exchange")
bad("no-gain", sensed, "missing", "/sets/0/probe/gain", None, "a sensor without its gain")
bad("zero-gain", sensed, "out_of_range", "/sets/0/probe/gain", 0, "a sensor that shows nothing")
bad("zero-radius", shown_face, "out_of_range", "/sets/0/probe/radius", "0 mm", "a face without a radius")
bad("no-maker-diameter", said, "missing", "/diameter", None, "an opening without the diameter that it is meant across")

AREA.save()
