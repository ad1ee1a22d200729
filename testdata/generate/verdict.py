"""Writes verdict.json: positions held against limits.

Run from testdata: python3 generate/verdict.py (Python 3.11 with mpmath; pari-gp as gp on the path).
"""

import subprocess

from common import *

GP = "pari-gp " + subprocess.run(["gp", "--version-short"], capture_output=True, text=True).stdout.strip() + ", 60 digits"
ALONE = {"kind": "exact", "by": "rational arithmetic, Python fractions", "second": GP + ", lengths as complex moduli: over 45 digits agree"}
ROOTS = {"kind": "multi_precision", "by": MPMATH, "second": GP + ", lengths as complex moduli and variances as J V J~: over 45 digits agree"}

INVALID = {
    "no_position": "no position", "no_plane": "a position in one plane only", "no_slope": "a position without its slope", "no_limits": "no limits",
    "no_flex": "a spacer coupling, and no limit at its flex planes", "target_in_one_plane": "a target in one plane only", "zero_limit": "a limit of zero",
    "negative_limit": "a negative limit", "negative_span": "a negative span", "negative_u": "a negative uncertainty", "u_in_one_plane": "an uncertainty in one plane only",
    "u_without_slope": "an uncertainty of the offset only", "no_unit": "a number without its unit", "decimal_comma": "a comma where the point belongs",
    "wrong_type": "a value of a wrong type", "empty_text": "a text with nothing in it", "other_quantity": "a unit of another quantity", "angle_for_slope": "an angle where a ratio belongs",
    "unknown_member": "a member that is not known", "unknown_limit": "a limit that is not known", "unknown_in_position": "a member of the position that is not known"}

AREA = Area("verdict", {
    "short": ("plain", "a short coupling within its limits"),
    "offset_governs": ("plain", "a short coupling whose offset is closest to its limit"),
    "short_outside": ("plain", "a short coupling outside its limits"),
    "spacer": ("plain", "a spacer coupling within its limits"),
    "spacer_outside": ("plain", "a spacer coupling outside its limits"),
    "per_plane": ("plain", "each plane by itself, as the owner's rule says"),
    "per_plane_spacer": ("plain", "each plane by itself at both flex planes"),
    "target": ("plain", "what counts is the distance from the target"),
    "target_spacer": ("plain", "the same at the flex planes"),
    "inch": ("plain", "inches, mils and mils per inch"),
    "one_limit": ("plain", "one limit is given, and only that is judged"),
    "uncertain": ("plain", "with uncertainties, which decide nothing"),
    "uncertain_per_plane": ("plain", "the same in each plane by itself"),
    "uncertain_spacer": ("plain", "the same at the flex planes"),
    "on_limit": ("hard", "exactly on a limit that binary fractions miss"),
    "on_limit_difference": ("hard", "position less target exactly on a limit"),
    "on_limit_vector": ("hard", "the length of a vector exactly on its limit"),
    "on_limit_spacer": ("hard", "a flex plane exactly on its limit"),
    "under_half_nm": ("hard", "over the limit by less than rounding to 1 nm"),
    "over_by_1_nm": ("hard", "over the limit by a nanometre"),
    "two_fifths": ("hard", "within in each plane, outside as a vector"),
    "two_fifths_per_plane": ("hard", "outside as a vector, within in each plane, and that is the rule"),
    "negative": ("hard", "far out, and negative"),
    "one_plane_zero": ("hard", "nothing left in one plane"),
    "nothing_left": ("hard", "nothing left at all"),
    "correlated": ("hard", "errors of offset and slope that belong together"),
    "shared_by_planes": ("hard", "errors that the two planes share"),
    "correlated_target": ("hard", "position and target each with errors that belong together"),
    "huge_target": ("hard", "a large position less a large target"),
    "tilt_zero": ("hard", "no tilt at one of the flex planes"),
    "fine": ("hard", "very tight limits"),
    **{name: ("invalid", about) for name, about in INVALID.items()},
})


# ---- reading; lengths in mm, slopes as ratios, in the order of a position

def lengths(text, mistake):
    if mistake == "mil_as_hundredth" and text.endswith(" mil"):
        return number(text[:-4]) / 100
    return length(text)


def numbers(position, mistake=None):
    """Horizontal offset and slope, vertical offset and slope."""
    return [x for plane in ("horizontal", "vertical") for x in (lengths(position[plane]["offset"], mistake), slope(position[plane]["slope"]))]


def covariance(position):
    """The 4x4 covariance, or None."""
    if "u" not in position["horizontal"]:
        return None
    u = numbers({p: position[p]["u"] for p in ("horizontal", "vertical")})
    r = position.get("correlation") or [[F(a == b) for b in range(4)] for a in range(4)]
    return [[u[a] * F(str(r[a][b])) * u[b] for b in range(4)] for a in range(4)]


# ---- judging

# What is judged: the name, the limit, and how offset and slope of one plane go into it.
def sought(input, mistake):
    if "span" not in input.get("coupling", {}) or mistake == "short_for_spacer":
        return [("offset", "offset", (1, 0)), ("slope", "slope", (0, 1))]
    span = length(input["coupling"]["span"]) / (2 if mistake == "half_span" else 1)
    ends = [("flex_stationary", "flex", (1 / span, F(1, 2))), ("flex_movable", "flex", (-1 / span, F(1, 2)))]
    if mistake == "joints_exchanged":
        ends = [(ends[k][0], "flex", ends[1 - k][2]) for k in (0, 1)]
    return ends


def root(x):
    """Square root: a fraction where it is one, else 60 digits."""
    exact = F(int(mp.sqrt(x.numerator)), int(mp.sqrt(x.denominator)))
    return exact if exact * exact == x else mp.sqrt(big(x))


def step(of):
    """What is rounded to: 1 nm in mm, or over a metre."""
    return F(1, 10**6) if of == "offset" else F(1, 10**9)


def steps(x, of, mistake=None):
    """Rounds to whole steps; halves are kept out of the vectors."""
    n = big(abs(x)) / big(step(of))
    assert mistake or abs(n - mp.floor(n) - mpf(1) / 2) > mpf("1e-3"), "on half a step"
    return int(mp.nint(n))


def uncertainty(row, v, mistake):
    """Square root of row V row^T, summed over the columns of V's Cholesky factor: each column is a contribution of its own."""
    if mistake == "feet_uncorrelated":
        v = [[v[a][b] if a == b else F(0) for b in range(4)] for a in range(4)]
    if mistake == "added_straight":
        return sum(abs(big(r)) * mp.sqrt(big(v[k][k])) for k, r in enumerate(row))
    factor = [[mpf(0)] * 4 for _ in range(4)]
    for a in range(4):
        for b in range(a + 1):
            rest = big(v[a][b]) - sum(factor[a][k] * factor[b][k] for k in range(b))
            factor[a][b] = mp.sqrt(rest) if a == b else rest / factor[b][b] if factor[b][b] else mpf(0)
    return mp.sqrt(sum(sum(big(row[a]) * factor[a][k] for a in range(4)) ** 2 for k in range(4)))


def judge(input, mistake=None):
    """Items with numbers, and the outcome."""
    position, target = numbers(input["position"], mistake), [F(0)] * 4
    if "target" in input and mistake != "target_ignored":
        target = numbers(input["target"], mistake)
    left = [p + t if mistake == "target_added" else p - t for p, t in zip(position, target)]
    v = covariance(input["position"])
    w = covariance(input["target"]) if "target" in input else None
    if v and w:
        v = [[v[a][b] + w[a][b] for b in range(4)] for a in range(4)]
    limits = input["limits"]
    per_plane = limits.get("per_plane", False)
    per_plane = {"planes_apart": True, "planes_together": False}.get(mistake, per_plane)
    items = []
    for of, limit, (a, b) in sought(input, mistake):
        if limit not in limits and "span" not in input.get("coupling", {}) and len(limits) > 0:
            continue  # only what is limited is judged
        bound = lengths(limits[limit], mistake) if limit == "offset" else slope(limits[limit])
        y, z = a * left[0] + b * left[1], a * left[2] + b * left[3]
        size = root(y * y + z * z)
        rows = [("both", size, [big(y) / size * a, big(y) / size * b, big(z) / size * a, big(z) / size * b] if size else None)]
        if per_plane:
            rows = [("horizontal", y, [a, b, 0, 0]), ("vertical", z, [0, 0, a, b])]
        for plane, found, row in rows:
            item = {"of": of, "plane": plane, "found": found, "limit": bound, "ratio": F(steps(found, of, mistake), steps(bound, of, mistake))}
            if v:
                item["u"] = uncertainty(row, v, mistake)
            if mistake == "negative_passes" and found < 0:
                item["ratio"] = -item["ratio"]
            items.append(item)
    governs = max(items, key=(lambda i: big(abs(i["found"])) / big(step(i["of"]))) if mistake == "governs_by_size" else (lambda i: i["ratio"]))
    over = lambda i: i["ratio"] > 1
    if mistake == "limit_excluded":
        over = lambda i: i["ratio"] >= 1
    if mistake == "limit_stretched":
        over = lambda i: i["ratio"] > 1 + F(1, 10**4)
    if mistake == "guarded_by_u" and v:
        over = lambda i: i["ratio"] > 1 or big(abs(i["found"])) + i["u"] > big(i["limit"])
    return {"outcome": "outside" if any(over(i) for i in items) else "within", "governs": governs, "items": items}


MISTAKES = ["planes_apart", "planes_together", "limit_excluded", "limit_stretched", "target_ignored", "target_added", "short_for_spacer", "half_span", "joints_exchanged",
            "feet_uncorrelated", "added_straight", "guarded_by_u", "negative_passes", "governs_by_size", "mil_as_hundredth"]


def unit(of):
    return "mm" if of == "offset" else "mm/m"


def write(answer, quiet):
    """quiet leaves out what is found in single planes: PROTOCOL.md says nothing of its sign."""
    items = []
    for i in answer["items"]:
        item = {"of": i["of"], "plane": i["plane"], "found": out(i["found"], unit(i["of"])), "limit": out(i["limit"], unit(i["of"])), "ratio": out(i["ratio"], "")}
        if "u" in i:
            item["u"] = out(i["u"], unit(i["of"]))
        if quiet:
            del item["found"]
        items.append(item)
    return {"outcome": answer["outcome"], "governs": {k: answer["governs"][k] for k in ("of", "plane")}, "items": items}


def tolerances(input, answer, quiet):
    """Rounding. One entry serves all items: a number of mm for lengths and of mm/m for slopes, the larger where both occur."""
    names = {i["of"] for i in answer["items"]}
    one = "mm" if "offset" in names else "mm/m"  # mm and mm/m count alike
    counts = lambda x, of: big(x) / big(OUT[unit(of)]) * big(OUT[one])
    size = [abs(x) for x in numbers(input["position"])]
    if "target" in input:
        size = [a + abs(b) for a, b in zip(size, numbers(input["target"]))]
    spread = []  # the size of what is added up in what is found
    for of, _, (a, b) in sought(input, None):
        if of in names:
            spread.append(counts(root((abs(a) * size[0] + abs(b) * size[1]) ** 2 + (abs(a) * size[2] + abs(b) * size[3]) ** 2), of))
    at = {"/items/*/limit": rounding(max(counts(i["limit"], i["of"]) for i in answer["items"]), one),
          "/items/*/ratio": rounding(max(i["ratio"] for i in answer["items"]), "")}
    if not quiet:
        at["/items/*/found"] = rounding(max(spread), one)
    if "u" in answer["items"][0]:
        # The direction is as good as what is found: the spread over it is the condition.
        kappa = max([1] + [s / abs(counts(i["found"], i["of"])) for s in spread for i in answer["items"] if i["plane"] == "both"])
        at["/items/*/u"] = rounding(max(counts(uncertainty_straight(input, i), i["of"]) for i in answer["items"]), one, kappa)
    return at


def uncertainty_straight(input, item):
    """An upper bound on what is added up in u."""
    a, b = {of: ab for of, _, ab in sought(input, None)}[item["of"]]
    v = covariance(input["position"])
    w = covariance(input["target"]) if "target" in input else None
    u = [mp.sqrt(big(v[k][k] + (w[k][k] if w else 0))) for k in range(4)]
    return abs(big(a)) * (u[0] + u[2]) + abs(big(b)) * (u[1] + u[3])


# ---- the second way

def gp(lines, count):
    run = subprocess.run(["gp", "-q", "-f"], input="default(realprecision,60);\n" + "\n".join(lines) + "\n", capture_output=True, text=True, check=True)
    answers = run.stdout.split("\n")[:count]
    return [mpf(a.replace(" E", "e")) for a in answers]


def confirm(id, input, answer):
    """The spacer's tilts from where the flex planes lie, w(x2)/L and -w(x1)/L; both planes as one complex number."""
    p, t = numbers(input["position"]), numbers(input["target"]) if "target" in input else [F(0)] * 4
    lines = ["o=(%s)-(%s)+I*((%s)-(%s));s=(%s)-(%s)+I*((%s)-(%s));" % (p[0], t[0], p[2], t[2], p[1], t[1], p[3], t[3])]
    lines.append("w(x)=o+s*x;")
    span = input.get("coupling", {}).get("span")
    if span:
        lines.append("L=%s;" % length(span))
    vector = {"offset": "w(0)", "slope": "(w(1)-w(0))", "flex_stationary": "w(L/2)/L", "flex_movable": "-w(-L/2)/L"} if span else {"offset": "w(0)", "slope": "(w(1)-w(0))"}
    if "u" in input["position"]["horizontal"]:
        v = covariance(input["position"])
        w = covariance(input["target"]) if "target" in input else None
        v = [[v[a][b] + (w[a][b] if w else 0) for b in range(4)] for a in range(4)]
        lines.append("V=[%s];" % ";".join(",".join(str(x) for x in row) for row in v))
    prints = []
    for i in answer["items"]:
        z = vector[i["of"]]
        prints.append("print(1.0*%s);" % {"both": "abs(%s)", "horizontal": "real(%s)", "vertical": "imag(%s)"}[i["plane"]] % z)
        if "u" in i:
            # Both components first, through the 2x4 Jacobian; then along the direction.
            a, b = {"offset": ("1", "0"), "slope": ("0", "1"), "flex_stationary": ("1/L", "1/2"), "flex_movable": ("-1/L", "1/2")}[i["of"]]
            j = "[%s,%s,0,0;0,0,%s,%s]" % (a, b, a, b)
            d = {"both": "[real(%s),imag(%s)]/abs(%s)" % (z, z, z), "horizontal": "[1,0]", "vertical": "[0,1]"}[i["plane"]]
            prints.append("print(sqrt(%s*((%s)*V*(%s)~)*(%s)~));" % (d, j, j, d))
    answers = iter(gp(lines + prints, len(prints)))
    for i in answer["items"]:
        for k in ("found", "u") if "u" in i else ("found",):
            got = next(answers)
            assert abs(got - big(i[k])) <= mpf(10) ** -45 * (abs(got) + mpf(10) ** -6), (id, i["of"], k, got)


def add(id, region, about, position, limits, target=None, span=None, source=None):
    input = {"position": position}
    if target:
        input["target"] = target
    input["limits"] = limits
    if span:
        input["coupling"] = {"span": span}
    answer = judge(input)
    confirm(id, input, answer)
    ratios = sorted(i["ratio"] for i in answer["items"])
    assert len(ratios) == 1 or ratios[-1] > ratios[-2] * F(1001, 1000), "a tie: " + id
    quiet = any(i["found"] < 0 for i in answer["items"])
    result, tolerance = write(answer, quiet), tolerances(input, answer, quiet)
    flags = []
    for mistake in MISTAKES:
        try:
            if differs(result, write(judge(input, mistake), quiet), tolerance):
                flags.append(mistake)
        except KeyError:  # the mistake asks for a limit that is not there
            flags.append(mistake)
    rational = all(isinstance(i[k], F) for i in answer["items"] for k in ("found", "u") if k in i)
    return AREA.add(id, "judge", region, flags, about, source or (ALONE if rational else ROOTS), input, result, tolerance)


def at(y, dy, z, dz, u=None, correlation=None):
    """A position; u: offset and slope in the horizontal, offset and slope in the vertical plane."""
    p = {"horizontal": {"offset": y, "slope": dy}, "vertical": {"offset": z, "slope": dz}}
    if u:
        p["horizontal"]["u"], p["vertical"]["u"] = {"offset": u[0], "slope": u[1]}, {"offset": u[2], "slope": u[3]}
    if correlation:
        p["correlation"] = correlation
    return p


def limits(offset=None, slope=None, flex=None, per_plane=False):
    given = {k: x for k, x in (("offset", offset), ("slope", slope), ("flex", flex)) if x}
    return {**given, "per_plane": True} if per_plane else given


# ---- plain

short = add("short", "short", "both planes together, as vectors", at("0.021 mm", "-0.28 mm/m", "-0.033 mm", "0.19 mm/m"), limits("0.06 mm", "0.5 mm/m"))
add("short-offset-governs", "offset_governs", "the offset governs, though the slope is the larger number", at("-0.047 mm", "0.11 mm/m", "0.029 mm", "0.23 mm/m"), limits("0.0635 mm", "0.8 mm/m"))
add("short-outside", "short_outside", "the slope is out, the offset is not", at("0.012 mm", "0.61 mm/m", "0.044 mm", "-0.47 mm/m"), limits("0.07 mm", "0.62 mm/m"))
spacer = add("spacer", "spacer", "tilts at the flex planes: offset over span and half of the slope", at("0.18 mm", "0.24 mm/m", "-0.31 mm", "-0.36 mm/m"), limits(flex="0.75 mm/m"), span="800 mm")
add("spacer-outside", "spacer_outside", "the movable end is tilted too far", at("0.42 mm", "-0.63 mm/m", "0.27 mm", "-0.55 mm/m"), limits(flex="0.72 mm/m"), span="1.15 m")
plane = add("per-plane", "per_plane", "the rule of the owner: horizontal and vertical each by itself", at("0.038 mm", "0.41 mm/m", "0.045 mm", "0.22 mm/m"), limits("0.05 mm", "0.55 mm/m", per_plane=True))
joints = add("per-plane-spacer", "per_plane_spacer", "four items: two planes at two joints", at("0.05 mm", "0.74 mm/m", "0.11 mm", "0.68 mm/m"), limits(flex="0.6 mm/m", per_plane=True), span="620 mm")
target = add("target-in", "target", "far from zero and near its target", at("0.24 mm", "-0.15 mm/m", "-0.46 mm", "0.92 mm/m"), limits("0.05 mm", "0.4 mm/m"), target=at("0.22 mm", "-0.08 mm/m", "-0.43 mm", "0.77 mm/m"))
add("target-out", "target", "fine by itself, but far from its target", at("0.018 mm", "0.09 mm/m", "-0.025 mm", "0.14 mm/m"), limits("1.75 mil", "0.09 mm/m"), target=at("-1.25 mil", "0.2 mm/m", "3.5 mil", "0.42 mm/m"))
add("target-spacer", "target_spacer", "the target takes the spacer in", at("-0.52 mm", "0.88 mm/m", "1.37 mm", "-0.66 mm/m"), limits(flex="0.5 mm/m"), target=at("-0.4 mm", "0.7 mm/m", "1.1 mm", "-0.5 mm/m"), span="950 mm")
# API RP 686: 0.5 mil/in at each flex plane.
api = {"kind": "published", "by": "API RP 686, 2nd ed., 2009, cl. 5.4.6.2 (second-hand), for the limit", "published": "0.5 mil/in at each flex plane", "second": ROOTS["second"]}
add("inch-flex", "inch", "0.5 mil an inch at each flex plane", at("6.5 mil", "-0.22 mil/in", "-4.25 mil", "0.31 mil/in"), limits(flex="0.5 mil/in"), span="24 1/2 in", source=api)
inch = add("inch-short", "inch", "mils off a dial, limits in mils", at("1.5 mil", "0.3 mil/in", "-1 mil", "-0.2 mil/in"), limits("2 mil", "0.5 mil/in"))
add("offset-only", "one_limit", "only the offset has a limit", at("-0.9 mil", "0.77 mil/in", "1.3 mil", "0.4 mil/in"), limits("2.25 mil"))
add("slope-only", "one_limit", "only the slope has a limit", at("0.19 mm", "0.026 mm/100mm", "0.15 mm", "0.033 mm/100mm"), limits(slope="0.3 mm/m"), target=at("0 mm", "0.1 mm/m", "0.02 mm", "0.25 mm/m"))
unsure = add("uncertain", "uncertain", "u along the direction found; nothing is added to be safe", at("0.031 mm", "0.24 mm/m", "0.038 mm", "-0.27 mm/m", ("0.006 mm", "0.03 mm/m", "0.009 mm", "0.05 mm/m")), limits("0.051 mm", "0.41 mm/m"))
add("uncertain-target", "uncertain", "the target is uncertain as well, independently", at("0.25 mm", "0.4 mm/m", "0.33 mm", "0.7 mm/m", ("0.012 mm", "0.07 mm/m", "0.008 mm", "0.04 mm/m")), limits("0.07 mm", "0.5 mm/m"),
    target=at("0.21 mm", "0.19 mm/m", "0.3 mm", "0.45 mm/m", ("0.01 mm", "0.06 mm/m", "0.015 mm", "0.09 mm/m")))
add("uncertain-per-plane", "uncertain_per_plane", "each plane with its own u", at("0.037 mm", "0.21 mm/m", "0.044 mm", "0.36 mm/m", ("0.007 mm", "0.04 mm/m", "0.011 mm", "0.02 mm/m")), limits("0.052 mm", "0.46 mm/m", per_plane=True))
add("uncertain-spacer", "uncertain_spacer", "u at the flex planes from offset and slope", at("0.36 mm", "0.5 mm/m", "-0.21 mm", "0.13 mm/m", ("0.02 mm", "0.05 mm/m", "0.03 mm", "0.06 mm/m")), limits(flex="0.82 mm/m"), span="740 mm")

# ---- hard

add("on-limit-sum", "on_limit_difference", "0.4 - 0.1 mm is 0.3 mm, and stands on it", at("0.4 mm", "0.1 mm/m", "0 mm", "0.2 mm/m"), limits("0.3 mm", "0.9 mm/m"), target=at("0.1 mm", "0 mm/m", "0 mm", "0.1 mm/m"))
add("on-limit-slope", "on_limit", "1.1 - 0.8 mm/m is 0.3 mm/m, each plane by itself", at("0.02 mm", "0.2 mm/m", "0.01 mm", "1.1 mm/m"), limits("0.08 mm", "0.3 mm/m", per_plane=True), target=at("0 mm", "0 mm/m", "0 mm", "0.8 mm/m"))
add("on-limit-mil", "on_limit", "0.001 and 0.002 in, 3 mil on 3 mil", at("0 mil", "0.1 mil/in", "0.002 in", "0.2 mil/in"), limits("3 mil", "0.6 mil/in"), target=at("0 mm", "0 mil/in", "-1 mil", "0 mil/in"))
add("on-limit-3-4-5", "on_limit_vector", "0.03 and 0.04 mm are 0.05 mm long", at("0.03 mm", "0.14 mm/m", "-0.04 mm", "0.21 mm/m"), limits("0.05 mm", "0.45 mm/m"))
add("on-limit-5-12-13", "on_limit_vector", "slopes of 0.25 and 0.6 mm/m, limit 0.65 mm/m, with a target", at("0.03 mm", "0.35 mm/m", "0.01 mm", "-0.9 mm/m"), limits("0.08 mm", "0.65 mm/m"), target=at("0 mm", "0.1 mm/m", "0 mm", "-0.3 mm/m"))
add("on-limit-flex", "on_limit_spacer", "0.42 mm over 700 mm and half of 0.4 mm/m are 0.8 mm/m", at("0 mm", "0 mm/m", "0.42 mm", "0.4 mm/m"), limits(flex="0.8 mm/m"), span="700 mm")
add("on-limit-flex-vector", "on_limit_vector", "tilts of 0.33 and 0.44 mm/m at the movable end, limit 0.55 mm/m", at("-0.18 mm", "0.06 mm/m", "0.21 mm", "-0.18 mm/m"), limits(flex="0.55 mm/m"), span="600 mm")
add("under-half-nm", "under_half_nm", "0.4 nm over the limit rounds to the limit", at("0.0700004 mm", "0.2 mm/m", "0 mm", "-0.1 mm/m"), limits("0.06 mm", "0.55 mm/m"), target=at("0.01 mm", "0.05 mm/m", "0 mm", "0 mm/m"))
add("under-half-nm-limit", "under_half_nm", "a computed limit of 63.6619772 um and 63.662 um found, both 63662 nm", at("0 mm", "0.17 mm/m", "-63.662 um", "0.08 mm/m"), limits("63.6619772 um", "0.6 mm/m", per_plane=True))
add("under-half-nm-flex", "under_half_nm", "a slope 0.3 nm over a metre above its limit", at("0 mm", "0 mm/m", "0.2100001 mm", "0.5000002 mm/m"), limits(flex="0.6 mm/m"), span="600 mm")
add("over-by-1-nm", "over_by_1_nm", "a nanometre over the limit is outside", at("0 mm", "0.22 mm/m", "0.050001 mm", "0.05 mm/m"), limits("0.07 mm", "0.6 mm/m"), target=at("0 mm", "0.04 mm/m", "-0.02 mm", "0 mm/m"))
add("over-by-1-nm-flex", "over_by_1_nm", "0.8 nm over a metre above the limit", at("0.24 mm", "0.3000016 mm/m", "0 mm", "0 mm/m"), limits(flex="0.45 mm/m"), span="800 mm")
add("over-by-1-nm-plane", "over_by_1_nm", "0.6 nm over the limit of one plane", at("0.02 mm", "0.1 mm/m", "0.0450006 mm", "0.15 mm/m"), limits("0.045 mm", "0.4 mm/m", per_plane=True))
add("two-fifths", "two_fifths", "0.96 of the limit in each plane is 1.36 of it together", at("0.048 mm", "0.11 mm/m", "-0.048 mm", "0.09 mm/m"), limits("0.05 mm", "0.4 mm/m"))
add("two-fifths-spacer", "two_fifths", "0.85 of the limit in each plane of a flex plane", at("0.34 mm", "0.17 mm/m", "0.34 mm", "0.17 mm/m"), limits(flex="0.6 mm/m"), span="800 mm")
add("two-fifths-allowed", "two_fifths_per_plane", "0.95 and 0.9 of the limit pass where the rule is plane by plane", at("0.057 mm", "0.12 mm/m", "0.054 mm", "0.1 mm/m"), limits("0.06 mm", "0.35 mm/m", per_plane=True))
add("negative-per-plane", "negative", "3 times its limit below: outside as much as above", at("0.01 mm", "-0.2 mm/m", "-0.15 mm", "0.1 mm/m"), limits("0.05 mm", "0.5 mm/m", per_plane=True))
add("negative-spacer", "negative", "the movable end of a spacer tilts back", at("0.46 mm", "0.2 mm/m", "0.38 mm", "0.1 mm/m"), limits(flex="0.4 mm/m", per_plane=True), span="780 mm")
add("one-plane-zero", "one_plane_zero", "only the vertical plane counts, and its u", at("0 mm", "0.3 mm/m", "-0.04 mm", "0 mm/m", ("0.02 mm", "0.04 mm/m", "0.015 mm", "0.06 mm/m")), limits("0.05 mm", "0.4 mm/m"))
add("one-plane-zero-target", "one_plane_zero", "the target takes the horizontal plane to nothing", at("0.3 mm", "-0.7 mm/m", "0.02 mm", "0.1 mm/m"), limits("0.05 mm", "0.5 mm/m"), target=at("0.3 mm", "-0.7 mm/m", "0.045 mm", "-0.05 mm/m"))
add("nothing-left", "nothing_left", "exactly on its target: 0.3 less 0.3 mm, judged by the offset", at("0.3 mm", "0.6 mm/m", "-0.7 mm", "0.2 mm/m"), limits("0.04 mm"), target=at("300 um", "0 mm/m", "-0.07 cm", "0 mm/m"))
R = [[1, -0.9, 0, 0], [-0.9, 1, 0, 0], [0, 0, 1, -0.8], [0, 0, -0.8, 1]]
correlated = add("correlated-spacer", "correlated", "offset and slope from one fit: at the flex planes their errors partly cancel", at("0.3 mm", "0.4 mm/m", "0.16 mm", "-0.22 mm/m", ("0.05 mm", "0.12 mm/m", "0.04 mm", "0.1 mm/m"), R), limits(flex="0.7 mm/m"), span="560 mm")
add("correlated-planes", "shared_by_planes", "errors that the two planes share, as from one clock", at("0.02 mm", "0.21 mm/m", "-0.03 mm", "0.28 mm/m", ("0.004 mm", "0.02 mm/m", "0.006 mm", "0.03 mm/m"),
    [[1, 0.25, 0.6, 0], [0.25, 1, 0, -0.5], [0.6, 0, 1, 0.125], [0, -0.5, 0.125, 1]]), limits("0.09 mm", "0.6 mm/m"))
add("correlated-target", "correlated_target", "a target of its own correlation, per plane", at("0.41 mm", "0.9 mm/m", "0.2 mm", "0.8 mm/m", ("0.02 mm", "0.05 mm/m", "0.03 mm", "0.06 mm/m"), R), limits(flex="0.5 mm/m", per_plane=True),
    target=at("0.35 mm", "0.2 mm/m", "0.1 mm", "-0.1 mm/m", ("0.01 mm", "0.03 mm/m", "0.02 mm", "0.04 mm/m"), [[1, 0.5, 0, 0], [0.5, 1, 0, 0], [0, 0, 1, 0.75], [0, 0, 0.75, 1]]), span="1320 mm")
add("huge-target", "huge_target", "25.02 less 25 mm: hardly anything is left", at("25.02 mm", "31.1 mm/m", "-18.03 mm", "-12.2 mm/m"), limits("0.05 mm", "0.5 mm/m"), target=at("25 mm", "31 mm/m", "-18 mm", "-12 mm/m"))
add("tilt-zero", "tilt_zero", "the stationary joint runs straight, the movable one takes it all", at("0.24 mm", "-0.6 mm/m", "-0.36 mm", "0.9 mm/m"), limits(flex="0.7 mm/m"), span="800 mm")
add("fine", "fine", "limits of a few micrometres on a fast machine", at("0.0011 mm", "0.012 mm/m", "-0.0007 mm", "0.019 mm/m"), limits("1.5 um", "25 um/m"))
add("fine-mil", "fine", "a twentieth of a mil, in each plane", at("0.03 mil", "0.011 mil/in", "0.06 mil", "0.004 mil/in"), limits("0.05 mil", "0.02 mil/in", per_plane=True))


# ---- refused

def refuse(twin, region, code, path, about, at=None, value=None):
    AREA.refuse(region.replace("_", "-"), twin, region, code, path, changed(twin["input"], at or path, value), about)


refuse(short, "no_position", "missing", "/position", "nothing to judge")
refuse(short, "no_plane", "missing", "/position/horizontal", "the horizontal plane is not there, and is not zero")
refuse(spacer, "no_slope", "missing", "/position/vertical/slope", "a spacer's tilts need the slope")
refuse(inch, "no_limits", "missing", "/limits", "no limits, and none are assumed")
refuse(joints, "no_flex", "missing", "/limits/flex", "a spacer without its limit")
refuse(target, "target_in_one_plane", "missing", "/target/vertical", "half of a target")
refuse(short, "zero_limit", "out_of_range", "/limits/offset", "nothing can be held against a limit of zero", value="0 mm")
refuse(plane, "negative_limit", "out_of_range", "/limits/slope", "a limit has no sign", value="-0.55 mm/m")
refuse(spacer, "negative_span", "out_of_range", "/coupling/span", "a span that runs backwards", value="-800 mm")
refuse(unsure, "negative_u", "out_of_range", "/position/vertical/u/offset", "an uncertainty below zero", value="-0.009 mm")
refuse(unsure, "u_in_one_plane", "missing", "/position/vertical/u", "if one plane has u, both have")
refuse(unsure, "u_without_slope", "missing", "/position/horizontal/u/slope", "the uncertainty of the slope is not there, and is not zero")
refuse(inch, "no_unit", "malformed", "/limits/offset", "2 of what?", value="2")
refuse(short, "decimal_comma", "malformed", "/position/vertical/offset", "a decimal comma is not guessed at", value="-0,033 mm")
refuse(plane, "wrong_type", "malformed", "/limits/per_plane", "a word where true or false belongs", value="yes")
refuse(target, "empty_text", "missing", "/target/horizontal/offset", "a field that was left empty", value="")
refuse(short, "other_quantity", "unknown", "/limits/offset", "a slope where the limit of the offset belongs", value="0.06 mm/m")
refuse(spacer, "angle_for_slope", "unknown", "/limits/flex", "an angle is no ratio", value="0.75 mrad")
refuse(short, "unknown_member", "unknown", "/confidence", "no probability is asked for here", value="95 %")
refuse(target, "unknown_limit", "unknown", "/limits/gap", "a limit of the gap is not known here", value="0.05 mm")
refuse(spacer, "unknown_in_position", "unknown", "/position/vertical/angle", "a third number for one plane", value="0.02 deg")

__import__("verdict_more").extend()  # what came with 1.1.0
AREA.save()
