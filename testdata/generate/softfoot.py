"""Writes softfoot.json: soft feet, what unequal shims do to the shaft, a foot's lift seen from the shaft, strain from piping.

Run from testdata: python3 generate/softfoot.py (Python 3.11 with mpmath; pari-gp as gp on the path).
"""

import itertools
import subprocess

from common import *

GP = "pari-gp " + subprocess.run(["gp", "--version-short"], capture_output=True, text=True).stdout.strip()
RATIONAL = "rational arithmetic, Python fractions"
FIST = "US Bureau of Reclamation, FIST 4-1A, p. 17 (read)"
MCMILLAN = "R. B. McMillan, Rotating Machinery, 2004, pp. 112-113 (read)"
BLOCH = "H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, p. 173 (read)"
TWO_MIL = F("0.0508")  # act and taper where they are left out

AREA = Area("softfoot", {
    # soft_foot
    "printed": ("plain", "numbers of published works"),
    "diagonal": ("plain", "a flat frame on four feet, one pad low: two feet across a diagonal lift"),
    "pad_high": ("plain", "a flat frame on four feet, one pad high: the other two feet lift"),
    "common": ("plain", "all feet move a little, and some more"),
    "inch": ("plain", "feeler and tape in inches and mils"),
    "corners": ("plain", "gaps at the corners of a foot"),
    "corners_even": ("plain", "gaps at the corners of a foot that nearly agree"),
    "three_feet": ("plain", "three feet"),
    "many_feet": ("plain", "six or eight feet"),
    "springing": ("plain", "all feet lift alike: packing that can be compressed"),
    "induced": ("plain", "both feet of one end or one side lift: a pull from outside"),
    "own_limits": ("plain", "limits of the owner, wider or narrower than the usual ones"),
    "odd_plan": ("plain", "feet that stand on no rectangle"),
    "on_limit": ("hard", "exactly on the limit, which is not above it"),
    "on_usual": ("hard", "on the limit that holds where none is given, or a trace over it"),
    "over_limit": ("hard", "a hundredth of a micrometre over the limit"),
    "went_down": ("hard", "a foot that went down when it was loosened"),
    "lifts_tiny": ("hard", "lifts of nanometres"),
    "lifts_huge": ("hard", "lifts of centimetres"),
    "common_huge": ("hard", "a common movement that is hundreds of times the excess"),
    "taper_edge": ("hard", "gaps that differ by exactly the limit of taper, or by a trace more"),
    "skew_corners": ("hard", "gaps at corners that lie on no plane, or a small foot far away"),
    "six_corners": ("hard", "gaps at more places than four"),
    # shim_shift
    "shift_square": ("plain", "four feet on a rectangle"),
    "shift_three": ("plain", "three feet: the machine follows its shims exactly"),
    "shift_feet": ("plain", "six or eight feet"),
    "shift_tape": ("plain", "stations off the tape and shims in mils"),
    "shift_tape_all": ("plain", "stations off the tape and a shim under every foot"),
    "shift_odd": ("hard", "feet that stand on no rectangle"),
    "shift_hanging": ("hard", "all feet on one side of the shaft"),
    "shift_far": ("hard", "feet far from the coupling, where a small error grows"),
    "shift_narrow": ("hard", "feet close together across, or along"),
    "shift_nothing": ("hard", "shims that lift without tilting, or do nothing at all to the shaft's height"),
    # lift_at_shaft
    "seen": ("plain", "one foot loosened, the shaft watched"),
    "seen_rolling": ("plain", "the frame taken as rigid, no foot named as a hinge"),
    "seen_inch": ("plain", "the same in mils and off the tape"),
    "seen_uneven": ("hard", "feet not equally far from the shaft"),
    "seen_still": ("hard", "a shaft that moved in one plane only"),
    "seen_cancels": ("hard", "rise and roll that nearly cancel at the foot"),
    "seen_low": ("hard", "a wide frame close under its shaft"),
    # pipe_strain
    "pipes": ("plain", "flanges made up one after the other"),
    "pipes_on_limit": ("hard", "movement exactly on the limit, or a trace over it"),
    "pipes_down": ("hard", "movement downwards"),
    "pipes_to_nine": ("hard", "movement towards 9"),
    # refused
    **{name: ("invalid", about) for name, about in {
        "no_feet": "no feet", "empty_feet": "a list without feet", "no_name": "a foot without a name", "no_x": "a place along the shaft is not given",
        "no_y": "a place across the shaft is not given", "same_name": "two feet of one name", "negative_limit": "a limit below zero", "negative_taper": "a limit of taper below zero", "no_unit": "a number without its unit",
        "decimal_comma": "a comma where the point belongs", "wrong_type": "a value of a wrong type", "unknown_member": "a member that is not known",
        "unknown_member_deep": "a member that is not known, further in", "no_gap": "a corner without its gap", "corner_unplaced": "a corner whose place is not given",
        "no_height": "no height of the shaft", "zero_height": "a shaft at the height of the feet", "foot_not_there": "a shim under a foot that is not there",
        "shim_unnamed": "a shim for no foot", "no_shim": "a foot named for a shim, and no shim", "foot_twice": "two entries for one foot",
        "no_up": "how much the shaft rose is not given", "no_sideways": "how much the shaft went sideways is not given", "zero_across": "the foot that holds stands under the shaft",
        "no_limit": "no limit", "no_horizontal": "the horizontal plane not read", "no_vertical": "the vertical plane not read", "no_releases": "no flange was made up"}.items()},
})


# ---- how quantities may be misread

# ---- the plane a + b x + c y of least squares

def solve(rows, right):
    """Solves a square system of fractions by Gauss and Jordan."""
    m = [list(row) + [r] for row, r in zip(rows, right)]
    for i in range(len(m)):
        p = next(k for k in range(i, len(m)) if m[k][i] != 0)
        m[i], m[p] = m[p], m[i]
        m[i] = [v / m[i][i] for v in m[i]]
        m = [row if k == i else [v - row[i] * w for v, w in zip(row, m[i])] for k, row in enumerate(m)]
    return [row[-1] for row in m]


def plane(points):
    """The normal equations; points are (x, y, z)."""
    rows = [(F(1), x, y) for x, y, _ in points]
    return solve([[sum(r[i] * r[j] for r in rows) for j in range(3)] for i in range(3)], [sum(r[i] * p[2] for r, p in zip(rows, points)) for i in range(3)])


def gp(program):
    """Runs a program, whose last line is a vector of fractions."""
    run = subprocess.run(["gp", "-q", "-f"], input=program + "\n", capture_output=True, text=True, check=True)
    return [F(v) for v in run.stdout.strip().strip("[]~ ").split(",")]


def plane_by_gp(points):
    """Plane and residuals together: [I A; A' 0] [r; p] = [z; 0], with no normal equations."""
    n = len(points)
    a = [(F(1), x, y) for x, y, _ in points]
    top = [[F(i == k) for k in range(n)] + list(a[i]) for i in range(n)]
    bottom = [[a[k][i] for k in range(n)] + [F(0)] * 3 for i in range(3)]
    right = [p[2] for p in points] + [F(0)] * 3
    return gp("print(matsolve(%s, %s~)~)" % (gp_matrix(top + bottom), gp_matrix([right])))[-3:]


def plane_tolerance(points):
    """Tolerances of a, b and c: condition of the equations whose columns have length one, norm of the heights over that of the column."""
    columns = [[mpf(1)] * len(points), [big(p[0]) for p in points], [big(p[1]) for p in points]]
    norms = [mp.sqrt(sum(v * v for v in c)) for c in columns]
    s = mp.svd_r(mp.matrix([[c[i] / n for c, n in zip(columns, norms)] for i in range(len(points))]), compute_uv=False)
    size = mp.sqrt(sum(big(p[2]) ** 2 for p in points))
    return s[0] / s[2], [size / n for n in norms]


# ---- soft_foot

def points_of(foot, slip=""): return [tuple(measure(g[k], slip) for k in ("x", "y", "gap")) for g in foot["gaps"]]


def lift_of(foot, slip=""):
    """The lift, or the smallest gap at the corners."""
    if "lift" in foot:
        lift = measure(foot["lift"], slip)
        return abs(lift) if slip == "down_as_up" else lift
    return (max if slip == "corner_as_foot" else min)(g[2] for g in points_of(foot, slip))


def taper_of(foot, limit, slip=""):
    points = points_of(foot, slip)
    gaps = [p[2] for p in points]
    if max(gaps) - min(gaps) <= limit:
        return None
    _, along, across = plane(points[:3] if slip == "three_corners" else points)
    if slip == "taper_turned":
        along, across = across, along
    return {"rise": max(gaps) - min(gaps), "along": along, "across": across}


def middle(values):
    s = sorted(values)
    return (s[(len(s) - 1) // 2] + s[len(s) // 2]) / 2


def soft_foot(i, slip=""):
    """Excess is what a foot lifts more than the one that lifts least."""
    limit = {k: measure(i.get("limits", {})[k], slip) if k in i.get("limits", {}) and slip != "usual_limits" else TWO_MIL for k in ("act", "taper")}
    lifts = [lift_of(f, slip) for f in i["feet"]]
    common = middle(lifts) if slip == "median_common" else min(lifts)
    common = max(common, F(0))
    feet = []
    for foot, lift in zip(i["feet"], lifts):
        excess = lift if slip == "common_kept" else lift - common
        f = {"foot": foot["name"], "excess": excess, "soft": excess >= limit["act"] if slip == "limit_excluded" else excess > limit["act"]}
        if "gaps" in foot and taper_of(foot, limit["taper"], slip):
            f["taper"] = taper_of(foot, limit["taper"], slip)
        feet.append(f)
    return {"common": common, "worst": max(f["excess"] for f in feet), "feet": feet}


# ---- what is verified: the twist of a rigid frame on four feet

def twist_weights(feet):
    """n with sum n = sum n x = sum n y = 0: the cofactors of the rows (1, x, y)."""
    p = [(measure(f["x"]), measure(f["y"])) for f in feet]

    def area(a, b, c): return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    n = [area(p[1], p[2], p[3]), -area(p[0], p[2], p[3]), area(p[0], p[1], p[3]), -area(p[0], p[1], p[2])]
    assert sum(n) == 0 and sum(w * q[0] for w, q in zip(n, p)) == 0 and sum(w * q[1] for w, q in zip(n, p)) == 0 and sorted(w > 0 for w in n) == [False, False, True, True]
    return n


def left_after(input, shims):
    """What the foot that lifts most lifts more than the one that lifts least, after these flat shims."""
    feet = input["feet"]
    n, lifts = twist_weights(feet), [lift_of(f) for f in feet]
    excess = [v - min(lifts) for v in lifts]
    twist = -sum(w * e for w, e in zip(n, excess)) / 2  # each foot of the lifting pair says n lift = -T
    twist += sum(w * shims.get(f["name"], F(0)) for w, f in zip(n, feet))
    after = [max(F(0), -twist / w) for w in n]
    return max(after) - min(after)


def check_verifier(id, input, left):
    """The verifier must pass right advice and refuse wrong advice."""
    names = [f["name"] for f in input["feet"]]
    lifts = [lift_of(f) for f in input["feet"]]
    n, excess = twist_weights(input["feet"]), {a: v - min(lifts) for a, v in zip(names, lifts)}
    lit = [a for a, w in zip(names, n) if (w > 0) == (n[lifts.index(max(lifts))] > 0)]
    dark = [a for a in names if a not in lit]
    right = [{a: excess[a]} for a in lit] + [{a: excess[a] / 2 for a in lit}]
    wrong = {"both_of_a_diagonal": {a: excess[a] for a in lit}, "nothing": {}, "other_diagonal": {dark[0]: excess[lit[0]]}}
    for shims in right:
        assert left_after(input, shims) <= left, (id, shims)
    for name, shims in wrong.items():
        assert left_after(input, shims) > 1.5 * left, (id, name)


# ---- shim_shift, lift_at_shaft, pipe_strain

def shifted(i, slip=""):
    """Places of all feet and the shim under each."""
    shims = {s["foot"]: measure(s["flat"], slip) for s in i["shims"]}
    feet = [f for f in i["feet"] if slip != "bare_feet_forgotten" or f["name"] in shims]
    return [(measure(f["x"], slip), measure(f["y"], slip), shims.get(f["name"], F(0))) for f in feet]


def shim_shift(i, slip=""):
    """The machine follows the plane through its shims: up a, slope b, sideways -H c."""
    points = shifted(i, slip)
    try:
        a, b, c = plane(points)
    except StopIteration:  # the feet that are left do not hold a plane
        return {}
    if slip == "rise_at_feet":
        a = sum(p[2] for p in points) / len(points)
    c = {"roll_sign": -c, "roll_forgotten": F(0)}.get(slip, c)
    return {"up": a, "slope": b, "sideways": -measure(i["height"], slip) * c}


def lift_at_shaft(i, slip=""):
    """What the foot does, from what the shaft does above it."""
    y, up, sideways = (measure(i[k], slip) for k in ("y", "up", "sideways"))
    if slip == "planes_mixed":
        up, sideways = sideways, up
    if slip == "side_unsigned":
        y = abs(y)
    roll = {"roll_sign": 1, "roll_forgotten": 0}.get(slip, -1)
    answer = {}
    if "height" in i:
        answer["rolling"] = up + roll * y / measure(i["height"], slip) * sideways
    if "across" in i:
        n = measure(i["across"], slip)
        n = abs(n) if slip == "side_unsigned" else n
        answer["hinged"] = up if slip == "rise_for_lift" else up * (y - n) / -n
    return answer


def pipe_strain(i, slip=""):
    """The larger of both planes in size, against the limit."""
    limit, strains = measure(i["limit"], slip), []
    for r in i["releases"]:
        moved = [measure(r[k], slip) for k in ("horizontal", "vertical")]
        largest = max(moved) if slip == "minus_as_small" else max(abs(v) for v in moved)
        largest = abs(moved[1]) if slip == "height_only" else largest
        over = largest >= limit if slip == "limit_excluded" else largest > limit
        if slip == "planes_together":
            over = moved[0] ** 2 + moved[1] ** 2 > limit ** 2
        strains.append({"what": r["what"], "largest": largest, "over": over})
    return {"strains": strains}


SLIPS = {
    soft_foot: ["median_common", "common_kept", "limit_excluded", "corner_as_foot", "three_corners", "taper_turned", "down_as_up", "usual_limits", "mil_as_hundredth", "fraction_misread"],
    shim_shift: ["roll_sign", "roll_forgotten", "rise_at_feet", "bare_feet_forgotten", "mil_as_hundredth", "fraction_misread"],
    lift_at_shaft: ["roll_sign", "roll_forgotten", "rise_for_lift", "side_unsigned", "planes_mixed", "mil_as_hundredth", "fraction_misread"],
    pipe_strain: ["limit_excluded", "planes_together", "minus_as_small", "height_only", "mil_as_hundredth"],
}
SLOPES = ("slope", "along", "across")


def write(x, key=""):
    """Turns fractions into text; slopes are known by their names."""
    if isinstance(x, dict):
        return {k: write(v, k) for k, v in x.items()}
    if isinstance(x, list):
        return [write(v) for v in x]
    return out(x, "mm/m" if key in SLOPES else "mm") if isinstance(x, F) else x


def add(op, id, region, about, input, tolerance, source, verify=None, hide=None):
    """hide takes from the answer what PROTOCOL.md leaves open."""
    result = write(op(input))
    if hide:
        hide(result)
    flags = [s for s in SLIPS[op] if differs(result, write(op(input, s)), tolerance)]
    if verify and "left" in verify:
        check_verifier(id, input, length(verify["left"]))
        flags.append("both_of_a_diagonal")
    return AREA.add(id, op.__name__, region, flags, about, source, input, result, tolerance, verify)


def exact_source(second): return {"kind": "exact", "by": RATIONAL, "second": second}


def soft(id, region, about, feet, limits=None, height="315 mm", kinds=None, left=None, source=None, hide=None):
    """One survey. The second way: excess as the largest difference to any other foot, planes by gp without normal equations."""
    input = {"feet": feet, "height": height}
    if limits is not None:
        input["limits"] = limits
    answer = soft_foot(input)
    lifts = [min(p[2] for p in points_of(f)) if "gaps" in f else length(f["lift"]) for f in feet]
    floor = [F(0)] if min(lifts) < 0 else []
    tolerance = {"/" + k: rounding(max(abs(v) for v in lifts), "mm") for k in ("common", "worst", "feet/*/excess")}
    for f, foot, lift in zip(answer["feet"], feet, lifts):
        assert f["excess"] == (lift if floor else max(lift - other for other in lifts)), id
        if "taper" not in f:
            assert "gaps" not in foot or all(p[2] - q[2] <= length(input.get("limits", {}).get("taper", "0.0508 mm")) for p in points_of(foot) for q in points_of(foot)), id
            continue
        points = points_of(foot)
        assert f["taper"]["rise"] == max(p[2] - q[2] for p, q in itertools.permutations(points, 2)), id
        assert [f["taper"]["along"], f["taper"]["across"]] == plane_by_gp(points)[1:], id
        kappa, scales = plane_tolerance(points)
        for k, bound in (("rise", rounding(max(p[2] for p in points), "mm")), ("along", rounding(scales[1], "mm/m", kappa, 64)), ("across", rounding(scales[2], "mm/m", kappa, 64))):
            at = "/feet/*/taper/" + k
            tolerance[at] = max(bound, tolerance.get(at, bound), key=lambda t: F(t["within"].split()[0]))
    second = "excess as the largest difference to any other foot" + (", planes by %s, matsolve on plane and residuals together" % GP if any("taper" in f for f in answer["feet"]) else "") + ": equal"
    verify = {k: v for k, v in (("kinds", kinds), ("left", left)) if v}
    source = dict(source, second=second) if source else exact_source(second)
    return add(soft_foot, id, region, about, input, tolerance, source, verify or None, hide)


def shift(id, region, about, feet, shims, height):
    input = {"feet": feet, "height": height, "shims": [{"foot": k, "flat": v} for k, v in shims.items()]}
    points, answer, h = shifted(input), shim_shift(input), length(height)
    a, b, c = plane_by_gp(points)
    assert [answer["up"], answer["slope"], answer["sideways"]] == [a, b, -h * c], id
    kappa, (up, slope, roll) = plane_tolerance(points)
    tolerance = {"/up": rounding(up, "mm", kappa, 64), "/slope": rounding(slope, "mm/m", kappa, 64), "/sideways": rounding(roll * big(h), "mm", kappa, 64)}
    return add(shim_shift, id, region, about, input, tolerance, exact_source(GP + ", matsolve on plane and residuals together: equal"))


def seen(id, region, about, **input):
    answer = lift_at_shaft(input)
    y, up, sideways = (length(input[k]) for k in ("y", "up", "sideways"))
    tolerance = {}
    if "rolling" in answer:  # a body that turns by p: up = z(0), sideways = -H p, lift = z(0) + p y
        h = length(input["height"])
        z, p, lift = gp("print(matsolve([1,0,0;0,%s,0;1,%s,-1],[%s,%s,0]~)~)" % (-h, y, up, sideways))
        assert lift == answer["rolling"], id
        tolerance["/rolling"] = rounding(abs(up) + abs(y / h * sideways), "mm")
    if "hinged" in answer:  # z = p (y - n) holds the foot across; z(0) = up
        n = length(input["across"])
        p, lift = gp("print(matsolve([%s,0;%s,-1],[%s,0]~)~)" % (-n, y - n, up))
        assert lift == answer["hinged"], id
        tolerance["/hinged"] = rounding(abs(up) * (abs(y) + abs(n)) / abs(n), "mm")
    return add(lift_at_shaft, id, region, about, input, tolerance, exact_source(GP + ", matsolve for the turn of a rigid body: equal"))


def pipes(id, region, about, limit, releases, source=None):
    input = {"limit": limit, "releases": [{"what": w, "horizontal": h, "vertical": v} for w, h, v in releases]}
    answer = pipe_strain(input)
    for s, r in zip(answer["strains"], input["releases"]):
        h, v = length(r["horizontal"]), length(r["vertical"])
        assert s["largest"] == (abs(h + v) + abs(h - v)) / 2, id
        assert s["over"] == any(not -length(limit) <= w <= length(limit) for w in (h, v)), id
    tolerance = {"/strains/*/largest": rounding(max(s["largest"] for s in answer["strains"]), "mm")}
    second = "half of |h + v| + |h - v|, and each plane by itself: equal"
    return add(pipe_strain, id, region, about, input, tolerance, dict(source, second=second) if source else exact_source(second))


# ---- the vectors: feet are (name, x, y, lift or None)

def feet_of(places, *lifts):
    """Feet from rows of name, x, y and their lifts."""
    return [dict(zip(("name", "x", "y"), p), **({"lift": v} if v else {})) for p, v in itertools.zip_longest(places, lifts)]


def rectangle(x1, x2, y, names="ABCD", unit="mm"):
    """A and C towards 9, B and D towards 3; A and B at x1: n = (1, -1, -1, 1)."""
    return [(names[k], "%s %s" % (x, unit), "%s %s" % (s + y, unit)) for k, (x, s) in enumerate([(x1, "-"), (x1, ""), (x2, "-"), (x2, "")])]


def with_gaps(foot, half_x, half_y, *gaps):
    """The foot with gaps at its corners, half_x and half_y from its middle (fractions of mm): minus minus, minus plus, plus minus, plus plus."""
    x, y = length(foot["x"]), length(foot["y"])
    corners = [(x + sx * half_x, y + sy * half_y) for sx in (-1, 1) for sy in (-1, 1)]
    return {"name": foot["name"], "x": foot["x"], "y": foot["y"], "gaps": [{"x": mm(cx), "y": mm(cy), "gap": g} for (cx, cy), g in zip(corners, gaps)]}


# soft feet, plain

fist = soft("fist", "printed", "one foot lifts 5 thousandths, the others 2: 3 thousandths go under the one", feet_of(rectangle("18", "44", "11.5", unit="in"), "0.005 in", "0.002 in", "0.002 in", "0.002 in"),
            height="12.5 in", source={"kind": "published", "by": FIST, "published": "0.003 in"})
assert fist["result"]["worst"] == mm(length("0.003 in"))
soft("mcmillan-two-mils", "printed", "act when feet differ by more than 2 mils: 2 mils are not more, 2.5 are", feet_of(rectangle("16", "36", "9", unit="in"), "0 mil", "2 mil", "0.5 mil", "2.5 mil"),
     {"act": "2 mil"}, "10.5 in", source={"kind": "published", "by": MCMILLAN, "published": "more than 2 mils"})

RECT = rectangle("300", "900", "250")
geometry = soft("diagonal-twelve", "diagonal", "0.12, 0.02, 0.02, 0.12: the smallest is common, so 0.10 is in excess on the diagonal and not 0.05", feet_of(RECT, "0.12 mm", "0.02 mm", "0.02 mm", "0.12 mm"),
                {"act": "0.05 mm", "taper": "0.05 mm"}, "250 mm", ["parallel"], "0.05 mm")
soft("diagonal-clean", "diagonal", "pad B low by 12.5 mil: B lifts, and so does C across from it", feet_of(rectangle("265", "775", "210"), "0 mm", "12.5 mil", "12.5 mil", "0 mm"),
     kinds=["parallel"], left="0.0508 mm", height="225 mm")
high = soft("pad-high-springs", "pad_high", "a pad high under D on a frame that springs: the lifts of the pair do not quite agree", feet_of(rectangle("290", "840", "245"), "0.05 mm", "0.34 mm", "0.36 mm", "0.05 mm"),
     None, "280 mm", ["parallel"], "0.0508 mm")
soft("pad-high-mil", "pad_high", "pad B high: 11 and 11.5 mil on the other diagonal, nothing at B and C", feet_of(rectangle("14.5", "33.5", "10.25", unit="in"), "11 mil", "0 mil", "0 mil", "11.5 mil"),
     {"act": "2 mil"}, "11 in", ["parallel"], "2 mil")
common = soft("common-all-differ", "common", "four lifts, all different; limits left out", feet_of(rectangle("320", "1015", "305"), "0.19 mm", "0.06 mm", "0.11 mm", "0.045 mm"))
soft("common-mil", "common", "a mil is 0.0254 mm: 3.2 mil over what is common is soft", feet_of(rectangle("330", "960", "273"), "4.7 mil", "1.5 mil", "1.5 mil", "1.5 mil"), {"act": "2 mil"})
soft("inch-feelers", "inch", "feelers in decimals of an inch", feet_of(rectangle("17.5", "43", "12.75", unit="in"), "0.0075 in", "0.0015 in", "0.0035 in", "0.006 in"), {"act": "0.002 in"}, "13 in")
soft("inch-own-act", "inch", "4 mil allowed, the usual 2 do not count", feet_of(rectangle("15.25", "38.5", "10.5", unit="in"), "2 mil", "5.5 mil", "6.5 mil", "2 mil"), {"act": "4 mil"}, "11 in")

TAPE = [("NE", "18 3/8 in", "12 7/16 in"), ("NW", "18 3/8 in", "-12 7/16 in"), ("SE", "45 1/8 in", "12 7/16 in"), ("SW", "45 1/8 in", "-12 7/16 in")]
tape = feet_of(TAPE, "3.25 mil", "1 mil", "1.5 mil")
tape[3] = {"name": "SW", "x": "45 1/8 in", "y": "-12 7/16 in", "gaps": [
    {"x": "43 5/8 in", "y": "-13 15/16 in", "gap": "2 mil"}, {"x": "43 5/8 in", "y": "-10 15/16 in", "gap": "2.5 mil"},
    {"x": "46 5/8 in", "y": "-13 15/16 in", "gap": "8 mil"}, {"x": "46 5/8 in", "y": "-10 15/16 in", "gap": "8.5 mil"}]}
soft("inch-tape-corners", "inch", "corners of a foot off the tape, gaps in mils", tape, {"act": "2 mil", "taper": "2 mil"}, "12 1/2 in", ["angular"])

base = feet_of(rectangle("305", "995", "280"), "0.02 mm", "0.03 mm", "0.02 mm", "0.02 mm")
angled = soft("corners-across", "corners", "a foot that stands on its outer edge: the gap opens towards the shaft", base[:1] + [with_gaps(base[1], F(45), F(35), "0.3 mm", "0.04 mm", "0.31 mm", "0.05 mm")] + base[2:],
              {"act": "0.05 mm", "taper": "0.1 mm"}, "280 mm", ["angular"])
base = feet_of(rectangle("345", "1120", "310"), "0.015 mm", "0 mm", "0.11 mm", "0.025 mm")
soft("corners-along", "corners", "a gap that opens along the shaft; another foot is soft", [with_gaps(base[0], F(60), F(40), "0.02 mm", "0.02 mm", "0.38 mm", "0.38 mm")] + base[1:], None, "315 mm", ["angular"])
base = feet_of(rectangle("285", "815", "222"), "0.01 mm", "0.02 mm", "0.02 mm", "0.01 mm")
soft("corners-even", "corners_even", "corners that nearly agree: no taper, the smallest is the foot's lift", [with_gaps(base[0], F(40), F(30), "0.13 mm", "0.12 mm", "0.15 mm", "0.14 mm")] + base[1:], {"act": "0.08 mm"}, "225 mm")

SIX = [(n, x, y) for n, x, y in (("1L", "410 mm", "-390 mm"), ("1R", "410 mm", "390 mm"), ("2L", "1105 mm", "-390 mm"), ("2R", "1105 mm", "390 mm"), ("3L", "1800 mm", "-390 mm"), ("3R", "1800 mm", "390 mm"))]
EIGHT = [("%d%s" % (k + 1, s), "%d mm" % (520 + 640 * k), ("-" if s == "L" else "") + "455 mm") for k in range(4) for s in "LR"]
soft("six-feet", "many_feet", "six feet, the middle ones low", feet_of(SIX, "0.04 mm", "0.05 mm", "0.21 mm", "0.18 mm", "0.04 mm", "0.03 mm"), height="400 mm")
eight = soft("eight-feet", "many_feet", "eight feet, one of them short; a limit of 0.1 mm", feet_of(EIGHT, "0.05 mm", "0.05 mm", "0.07 mm", "0.05 mm", "0.42 mm", "0.05 mm", "0.11 mm", "0.05 mm"), {"act": "0.1 mm"}, "500 mm")
soft("three-feet", "three_feet", "three feet always stand: what lifts was pulled down by its bolt", feet_of([("front", "260 mm", "0 mm"), ("back left", "610 mm", "-180 mm"), ("back right", "610 mm", "180 mm")], "0.2 mil", "1.1 mil", "4.6 mil"))

soft("springing-nearly", "springing", "all four feet lift 0.3 mm, give or take a hundredth: too many thin shims, and hardly an excess", feet_of(rectangle("325", "945", "279"), "0.31 mm", "0.29 mm", "0.3 mm", "0.3 mm"), {"act": "0.05 mm"}, kinds=["springing"])
soft("springing-mil", "springing", "12 mil at all six feet", feet_of([(n, x.replace(" mm", "e-1 cm"), y) for n, x, y in SIX], "12 mil", "12 mil", "12.5 mil", "12 mil", "12 mil", "12 mil"), {"act": "2.5 mil"}, "16 in", ["springing"])
induced = soft("induced-side", "induced", "both feet on the side of 3 o'clock lift, the others hardly", feet_of(rectangle("275", "795", "216"), "0.01 mm", "0.28 mm", "0.01 mm", "0.29 mm"), {"act": "0.08 mm"}, "225 mm", ["induced"])
soft("induced-mil", "induced", "the inner end lifts 14 mil, at the outer end nothing moves", feet_of(rectangle("12.75", "29.25", "8.875", unit="in"), "14 mil", "14 mil", "0 mil", "0 mil"), height="9 in", kinds=["induced"])
wide = soft("own-wide", "own_limits", "a limit of 0.15 mm: 0.14 in excess is not soft", feet_of(rectangle("480", "1640", "470"), "0.17 mm", "0.03 mm", "0.05 mm", "0.03 mm"), {"act": "0.15 mm"}, "450 mm")
soft("own-narrow", "own_limits", "a limit of half a mil on a small pump", feet_of(rectangle("6.25", "13.5", "4.125", unit="in"), "0 mil", "0.7 mil", "0.1 mil", "0.4 mil"), {"act": "0.5 mil"}, "5.5 in")
base = feet_of(rectangle("375", "1235", "340"), "0.02 mm", "0.01 mm", "0.02 mm", "0 mm")
soft("own-taper", "own_limits", "a taper of 0.2 mm allowed: 0.18 across one foot gives none, 0.26 across another does", [with_gaps(base[0], F(50), F(50), "0.03 mm", "0.21 mm", "0.03 mm", "0.21 mm"), with_gaps(base[1], F(50), F(50), "0.28 mm", "0.02 mm", "0.28 mm", "0.03 mm")] + base[2:],
     {"act": "0.0508 mm", "taper": "0.2 mm"}, "355 mm")

TRAPEZE = [("drive left", "310 mm", "-180 mm"), ("drive right", "310 mm", "180 mm"), ("free left", "950 mm", "-300 mm"), ("free right", "950 mm", "300 mm")]
# n of the trapeze: drive 600 to free 360 parts, so the lifts across a diagonal stand as 3 to 5.
soft("odd-trapeze", "odd_plan", "feet on a trapeze: the wide end lifts 0.4 mm where the narrow one lifts 0.24 mm", feet_of(TRAPEZE, "0.24 mm", "0 mm", "0 mm", "0.4 mm"), kinds=["parallel"], left="0.0508 mm", height="280 mm")
KITE = [("P", "220 mm", "-40 mm"), ("Q", "480 mm", "-260 mm"), ("R", "510 mm", "230 mm"), ("S", "905 mm", "75 mm")]
soft("odd-skew", "odd_plan", "feet on a skew four-sided figure", feet_of(KITE, "0.165 mm", "0.05 mm", "0.02 mm", "0.03 mm"), {"act": "0.12 mm"}, "200 mm")
soft("odd-mil", "odd_plan", "a compressor's feet in no order, in mils", feet_of([("d", "41.5 in", "-17 in"), ("a", "9.5 in", "14 in"), ("c", "39 in", "19 in"), ("b", "11 in", "-12 in")], "0 mil", "0.4 mil", "5.6 mil", "0.3 mil"), {"act": "3 mil"}, "22 in")

# soft feet, hard

soft("on-limit-mm", "on_limit", "0.17 less 0.12 is 0.05 and not a trace more", feet_of(rectangle("340", "1010", "295"), "0.17 mm", "0.12 mm", "0.12 mm", "0.13 mm"), {"act": "0.05 mm"})
soft("on-limit-usual", "on_usual", "0.0508 mm in excess where the limit is left out", feet_of(rectangle("350", "1065", "308"), "0.0508 mm", "0 mm", "0 mm", "0.0008 mm"))
soft("on-limit-mixed", "on_limit", "3 mil of lift against a limit of 0.0762 mm", feet_of(rectangle("13.5", "30.5", "9.5", unit="in"), "0 mil", "3 mil", "1.5 mil", "1.75 mil"), {"act": "0.0762 mm"}, "10 in")
soft("over-limit-usual", "on_usual", "0.05081 mm in excess, limits left out", feet_of(rectangle("355", "1090", "318"), "0.03 mm", "0.03 mm", "0.08081 mm", "0.03 mm"))
soft("over-limit-diagonal", "over_limit", "both feet of a diagonal 10 nm over 0.1 mm", feet_of(rectangle("360", "1130", "325"), "0.12501 mm", "0.025 mm", "0.025 mm", "0.12501 mm"), {"act": "0.1 mm"})
soft("over-limit-under", "over_limit", "one foot 10 nm over 2 mil, one 10 nm under", feet_of(rectangle("365", "1145", "330"), "0.05081 mm", "0 mm", "0.05079 mm", "0.01 mm"), {"act": "2 mil"})


def no_excess(*names):
    """What a foot that went down exceeds is left open."""
    def hide(result):
        for f in result["feet"]:
            if f["foot"] in names:
                del f["excess"]
    return hide


soft("down-one", "went_down", "one foot went down by 0.04 mm: nothing is common, the others lift in full, one of them by just the limit", feet_of(rectangle("370", "1160", "335"), "-0.04 mm", "0.09 mm", "0.0508 mm", "0.02 mm"), hide=no_excess("A"))
base = feet_of(rectangle("380", "1175", "345"), "0.02 mm", "0.13 mm", "-0.21 mm", "0.035 mm")
soft("down-far", "went_down", "one foot went down further than the others came up; one was felt at its corners", base[:1] + [with_gaps(base[1], F(48), F(38), "0.15 mm", "0.13 mm", "0.14 mm", "0.16 mm")] + base[2:], hide=no_excess("C"))
soft("down-mil", "went_down", "one foot went down by half a mil", feet_of(rectangle("11.5", "27.25", "8.5", unit="in"), "2.5 mil", "4.5 mil", "-0.5 mil", "1 mil"), {"act": "4 mil"}, "9.5 in", hide=no_excess("C"))
soft("tiny", "lifts_tiny", "lifts of nanometres against a limit of 25 nm", feet_of(rectangle("120", "260", "85"), "41 nm", "12 nm", "37 nm", "14 nm"), {"act": "25 nm"}, "90 mm")
soft("huge", "lifts_huge", "a base that is out by centimetres under an engine of 4 m", feet_of(rectangle("1.1", "4", "0.95", unit="m"), "3.2 cm", "0.4 cm", "0.45 cm", "3.1 cm"), {"act": "1 mm"}, "1.2 m")
soft("common-huge", "common_huge", "a common movement of 12 mm with 40 um on top", feet_of(rectangle("405", "1290", "366"), "12.04 mm", "12 mm", "12.005 mm", "12.01 mm"), {"act": "0.02 mm"})
base = feet_of(rectangle("415", "1305", "372"), "0.02 mm", "0.02 mm", "0.03 mm", "0.01 mm")
soft("taper-on-limit", "taper_edge", "one foot differs by exactly the limit across its corners, which is not more; another by 10 nm more",
     [with_gaps(base[0], F(55), F(45), "0.02 mm", "0.07 mm", "0.02 mm", "0.07 mm"), with_gaps(base[1], F(55), F(45), "0.02 mm", "0.07001 mm", "0.02 mm", "0.07001 mm")] + base[2:], {"act": "0.05 mm", "taper": "0.05 mm"})
soft("taper-on-usual", "taper_edge", "taper left out: 2 mil across the corners are none, 2.01 mil are", [with_gaps(base[0], F(52), F(41), "0.5 mil", "2.5 mil", "0.5 mil", "2.5 mil"), base[1], with_gaps(base[2], F(52), F(41), "0.49 mil", "0.49 mil", "2.5 mil", "2.5 mil"), base[3]], {"act": "2 mil"})
base = feet_of(rectangle("425", "1330", "378"), "0.02 mm", "0.04 mm", "0.03 mm", "0.01 mm")
soft("skew-four", "skew_corners", "one corner of a bent foot stands off: the plane of least squares goes between", base[:2] + [with_gaps(base[2], F(65), F(50), "0.03 mm", "0.05 mm", "0.04 mm", "0.41 mm")] + base[3:], {"act": "0.05 mm", "taper": "0.05 mm"}, "375 mm", ["angular"])
base = feet_of(rectangle("435", "1345", "382"), "0.02 mm", "0.03 mm", "0.02 mm", "0.03 mm")
ring = [("390", "-350", "0.33"), ("480", "-350", "0.12"), ("480", "-414", "0.05"), ("390", "-414", "0.28"), ("435", "-350", "0.2"), ("435", "-414", "0.21")]
soft("skew-six", "six_corners", "six places around one foot, gaps that no plane meets", [{"name": "A", "x": "435 mm", "y": "-382 mm", "gaps": [{"x": x + " mm", "y": y + " mm", "gap": g + " mm"} for x, y, g in ring]}] + base[1:], {"taper": "0.06 mm"}, "375 mm", ["angular"])
far = feet_of(rectangle("3870", "4025", "140"), "0.03 mm", "0.02 mm", "0.04 mm", "0.05 mm")
skew = soft("skew-far", "skew_corners", "a small foot 4 m from the coupling: its slopes must not suffer from that; two feet are tapered", far[:2] + [with_gaps(far[2], F(9), F(7), "0.62 mm", "0.47 mm", "0.17 mm", "0.02 mm"), with_gaps(far[3], F(9), F(7), "1.5 mil", "4 mil", "1.5 mil", "4 mil")], {"act": "1 mil", "taper": "2 mil"}, "160 mm", ["angular"])

# shims under the feet

square = shift("shift-side", "shift_square", "0.2 mm under both feet towards 3: the shaft rises 0.1 mm and moves towards 9", feet_of(RECT), {"B": "0.2 mm", "D": "0.2 mm"}, "250 mm")
shift("shift-all-differ", "shift_square", "a shim under every foot, all different", feet_of(rectangle("295", "905", "265")), {"A": "0.15 mm", "B": "0.25 mm", "C": "0.4 mm", "D": "0.1 mm"}, "282 mm")
tripod = shift("shift-three", "shift_three", "three feet: the machine follows exactly", feet_of([("front", "255 mm", "0 mm"), ("left", "640 mm", "-195 mm"), ("right", "640 mm", "195 mm")]), {"front": "0.3 mm", "left": "0.05 mm", "right": "0.45 mm"}, "180 mm")
shift("shift-six", "shift_feet", "six feet, shims under two of them", feet_of(SIX), {"2L": "0.5 mm", "3L": "0.7 mm"}, "420 mm")
shift("shift-eight", "shift_feet", "eight feet, a shim under each, in mils", feet_of(EIGHT), {n: v + " mil" for (n, _, _), v in zip(EIGHT, ("4", "6", "10", "12", "16", "22", "28", "25"))}, "510 mm")
taped = shift("shift-tape", "shift_tape", "stations off the tape, shims of 5 and 12 mil", feet_of(TAPE), {"NE": "5 mil", "SE": "12 mil"}, "14 5/8 in")
shift("shift-tape-all", "shift_tape_all", "all four feet shimmed, in thousandths of an inch", feet_of([("1", "9 3/4 in", "7 1/2 in"), ("2", "9 3/4 in", "-7 1/2 in"), ("3", "26 1/4 in", "7 1/2 in"), ("4", "26 1/4 in", "-7 1/2 in")]),
      {"1": "0.01 in", "2": "0.015 in", "3": "0.02 in", "4": "0.031 in"}, "9 in")
shift("shift-odd-plan", "shift_odd", "feet on a skew figure, one shim", feet_of(KITE), {"R": "0.35 mm"}, "210 mm")
shift("shift-one-side", "shift_hanging", "a machine that hangs beside its shaft: all feet on the side of 3", feet_of([("a", "-150 mm", "90 mm"), ("b", "-160 mm", "510 mm"), ("c", "520 mm", "120 mm"), ("d", "530 mm", "495 mm"), ("e", "190 mm", "500 mm")]),
      {"a": "0.6 mm", "b": "0.1 mm", "c": "0.2 mm", "d": "0.15 mm", "e": "0.05 mm"}, "330 mm")
shift("shift-far", "shift_far", "feet 3.8 and 4 m away from the coupling", feet_of(rectangle("3800", "4000", "350")), {"A": "0.11 mm", "C": "0.1 mm"}, "400 mm")
shift("shift-far-mil", "shift_far", "a fan 12 ft away, in mils, every foot shimmed", feet_of(rectangle("138", "147", "16", unit="in")), {"A": "31 mil", "B": "30 mil", "C": "30.5 mil", "D": "31.5 mil"}, "20 in")
shift("shift-narrow-track", "shift_narrow", "feet 60 mm apart under a shaft 900 mm up: a hundredth moves it far", feet_of(rectangle("700", "1500", "30")), {"B": "0.01 mm", "D": "0.02 mm"}, "900 mm")
shift("shift-narrow-length", "shift_narrow", "feet 45 mm apart along, fed with mils", feet_of([("u", "610 mm", "-220 mm"), ("v", "610 mm", "220 mm"), ("w", "655 mm", "-220 mm"), ("z", "655 mm", "220 mm")]), {"u": "1 mil", "v": "2 mil", "w": "3 mil", "z": "1.5 mil"}, "240 mm")
shift("shift-lift-only", "shift_nothing", "10 mil under all feet: the machine rises level", feet_of(rectangle("420", "1260", "405")), {"A": "10 mil", "B": "10 mil", "C": "10 mil", "D": "10 mil"}, "390 mm")
shift("shift-twist-only", "shift_nothing", "two feet of a diagonal against the other two: pure twist and level lift, the shaft neither tilts nor rolls", feet_of(rectangle("430", "1270", "410")), {"A": "0.3 mm", "D": "0.3 mm"}, "400 mm")

# a foot seen from the shaft

both = seen("seen-both", "seen", "the shaft rose 0.05 mm and went 0.045 mm towards 9 when the foot at 3 was loosened", y="250 mm", up="0.05 mm", sideways="-0.045 mm", height="225 mm", across="-250 mm")
roll = seen("seen-nine", "seen_rolling", "a foot towards 9, the frame taken as rigid", y="-310 mm", up="0.03 mm", sideways="0.028 mm", height="280 mm")
seen("seen-inch", "seen_inch", "mils at the shaft, feet off the tape", y="-9 1/2 in", up="1.75 mil", sideways="1.5 mil", height="10 1/4 in", across="9 1/2 in")
seen("seen-uneven", "seen_uneven", "a foot 180 mm off the shaft, the one across 420 mm", y="180 mm", up="0.07 mm", sideways="-0.02 mm", height="260 mm", across="-420 mm")
seen("seen-up-only", "seen_still", "the shaft rose and did not go sideways", y="260 mm", up="0.08 mm", sideways="0 mm", height="250 mm", across="-260 mm")
seen("seen-sideways-only", "seen_still", "the shaft went sideways and did not rise: a frame that bends", y="-270 mm", up="0 mm", sideways="0.05 mm", height="275 mm", across="270 mm")
seen("seen-cancels", "seen_cancels", "rise and roll nearly cancel at the foot", y="300 mm", up="0.1 mm", sideways="0.0999 mm", height="300 mm", across="-300 mm")
seen("seen-low", "seen_low", "a wide frame close under the shaft: a micrometre sideways counts thirtyfold", y="-900 mm", up="2 um", sideways="-3.5 um", height="30 mm", across="850 mm")

# piping

pipes("pipes-bloch", "pipes", "at most 3 thousandths in either plane", "0.003 in", [("suction", "0.002 in", "0.0035 in"), ("discharge", "0.0025 in", "0.0028 in")], {"kind": "published", "by": BLOCH, "published": "0.003 in"})
strain = pipes("pipes-mm", "pipes", "three flanges in mm", "0.05 mm", [("suction", "0.03 mm", "0.01 mm"), ("discharge", "0.07 mm", "0.04 mm"), ("drain", "0 mm", "0.002 mm")])
pipes("pipes-mil", "pipes", "two mil allowed, the dial in mils too", "2 mil", [("suction", "-0.5 mil", "1.5 mil"), ("discharge", "0.25 mil", "-2.25 mil")])
on = pipes("pipes-on-limit", "pipes_on_limit", "2 thousandths up and 3 to the side: on the limit is not over", "0.003 in", [("suction", "0.003 in", "0.002 in"), ("discharge", "-0.001 in", "0.0029 in")])
pipes("pipes-over-limit", "pipes_on_limit", "10 nm over in one plane, 10 nm under in the other", "0.0762 mm", [("discharge", "0.07619 mm", "-0.07621 mm"), ("suction", "0.01 mm", "0.07619 mm")])
pipes("pipes-on-limit-mixed", "pipes_on_limit", "3 mil of movement upwards, the limit in mm", "0.0762 mm", [("suction", "0.4 mil", "3 mil"), ("discharge", "0.1 mil", "0.3 mil")])
pipes("pipes-down", "pipes_down", "pulled down by 0.09 mm: size counts, not sign", "0.076 mm", [("suction", "0.02 mm", "-0.09 mm"), ("discharge", "-0.03 mm", "-0.05 mm")])
pipes("pipes-to-nine", "pipes_to_nine", "pulled towards 9 in both, and hardly up", "0.08 mm", [("inlet", "-0.11 mm", "0.03 mm"), ("outlet", "-0.07 mm", "-0.06 mm")])


# ---- refused

def refuse(twin, region, code, path, about, at=None, value=None):
    """One change of the twin: at is where, if not at the path of the fault."""
    op = twin["op"].replace("_", "-")
    AREA.refuse(op + "-" + region.replace("_", "-"), twin, region, code, path, changed(twin["input"], at or path, value), about)


refuse(common, "no_feet", "missing", "/feet", "no feet")
refuse(wide, "empty_feet", "missing", "/feet", "a list of feet with nothing in it", value=[])
refuse(geometry, "no_name", "missing", "/feet/2/name", "the third foot has no name to report under")
refuse(fist, "no_x", "missing", "/feet/1/x", "where a foot stands along the shaft is not given")
refuse(high, "no_y", "missing", "/feet/3/y", "where a foot stands across the shaft is not given")
refuse(eight, "same_name", "duplicate", "/feet/5/name", "two of eight feet have the name 2R", value="2R")
refuse(angled, "negative_taper", "out_of_range", "/limits/taper", "a taper below zero", value="-0.1 mm")
refuse(geometry, "negative_limit", "out_of_range", "/limits/act", "a limit below zero is no limit", value="-0.05 mm")
refuse(common, "no_unit", "malformed", "/feet/0/lift", "0.19 of what?", value="0.19")
refuse(induced, "decimal_comma", "malformed", "/feet/1/lift", "a decimal comma is not guessed at", value="0,28 mm")
refuse(wide, "wrong_type", "malformed", "/limits/act", "a bare number for a limit", value=0.15)
refuse(high, "unknown_member", "unknown", "/bolts", "what bolts there are is not known here", value="M20")
refuse(eight, "unknown_member_deep", "unknown", "/feet/4/torque", "a torque at a foot is not known here", value="120 Nm")
refuse(angled, "no_gap", "missing", "/feet/1/gaps/2/gap", "one corner has a place and no gap")
refuse(skew, "corner_unplaced", "missing", "/feet/3/gaps/0/y", "the place of a corner is given along and not across")

refuse(square, "no_height", "missing", "/height", "without the shaft's height nobody knows how far it goes sideways")
refuse(taped, "foot_not_there", "unknown", "/shims/1/foot", "a shim under a foot that the machine does not have", value="EAST")
refuse(square, "shim_unnamed", "missing", "/shims/0/foot", "a shim that belongs to no foot")
refuse(tripod, "no_shim", "missing", "/shims/2/flat", "a foot is named and its shim is not given")
refuse(tripod, "foot_twice", "duplicate", "/shims/1/foot", "two entries for the front foot", value="front")
refuse(square, "same_name", "duplicate", "/feet/2/name", "two feet called A", value="A")
refuse(square, "no_x", "missing", "/feet/0/x", "where a foot stands along the shaft is not given")
refuse(taped, "decimal_comma", "malformed", "/shims/0/flat", "a decimal comma in a shim", value="5,0 mil")
refuse(square, "unknown_member", "unknown", "/pivot", "a pivot is not known here", value="A")

refuse(both, "no_up", "missing", "/up", "the rise was not written down")
refuse(roll, "no_sideways", "missing", "/sideways", "a rigid frame needs the movement sideways")
refuse(both, "no_y", "missing", "/y", "which foot was loosened? its place is not given")
refuse(roll, "zero_height", "out_of_range", "/height", "at height zero a roll does not move the shaft sideways", value="0 mm")
refuse(both, "zero_across", "out_of_range", "/across", "a foot under the shaft is no hinge for it", value="0 mm")
refuse(roll, "no_unit", "malformed", "/sideways", "0.028 of what?", value="0.028")
refuse(both, "unknown_member", "unknown", "/foot", "a name is not known here", value="B")

refuse(on, "no_limit", "missing", "/limit", "no limit, and none is assumed")
refuse(strain, "negative_limit", "out_of_range", "/limit", "a limit below zero", value="-0.05 mm")
refuse(strain, "no_horizontal", "missing", "/releases/1/horizontal", "one plane was not read")
refuse(on, "no_vertical", "missing", "/releases/0/vertical", "one plane was not read")
refuse(strain, "wrong_type", "malformed", "/releases", "a word where the list belongs", value="suction")
refuse(on, "decimal_comma", "malformed", "/limit", "a decimal comma in the limit", value="0,003 in")
refuse(strain, "unknown_member_deep", "unknown", "/releases/2/axial", "movement along the shaft is not known here", value="0.01 mm")
refuse(strain, "no_releases", "missing", "/releases", "no list of flanges")

AREA.save()
