"""Writes thermal.json: growth of machines on their supports, cold targets, running positions.

Run from testdata: python3 generate/thermal.py (Python 3.11 with mpmath; pari-gp as gp on the path).
"""

import subprocess

from common import *

GP = "pari-gp " + subprocess.run(["gp", "--version-short"], capture_output=True, text=True).stdout.strip() + ", 60 digits"
RATIONAL = "rational arithmetic, Python fractions"
WAYS = GP + ": profiles by antiderivatives, the line by the normal equations%s; over 45 digits agree"
MCMILLAN = "R. B. McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment, 2004, example 8-3, pp. 137-141 (read)"

INVALID = {
    "no_supports": "no list of supports", "empty_supports": "a list without a support", "no_x": "a support that says not where it stands", "no_track": "legs that differ, and no track",
    "no_nine": "legs that differ, and only one of them", "no_nine_at_all": "an empty list of pieces for one leg", "empty_pieces": "a leg without a piece", "no_height": "a piece without its height",
    "no_material": "a piece without its material", "no_expansion": "a material without its coefficient", "no_cold": "a profile without the temperature when cold", "no_profile": "a temperature when cold without a profile",
    "empty_profile": "a profile without a spot", "no_running": "a spot without its temperature", "no_up": "a spot that says not where it is", "no_by": "a measured movement without its numbers",
    "no_measured_vertical": "a movement measured in one plane only", "negative_height": "a negative height", "zero_track": "a track of zero", "negative_track": "a negative track",
    "negative_within": "a negative tolerance for the line", "negative_u_height": "a negative uncertainty of a height", "negative_u_temperature": "a negative uncertainty of a temperature",
    "negative_u_material": "a negative uncertainty of a coefficient", "below_absolute_zero": "a temperature that does not exist", "off_line": "supports that stand on no line",
    "no_unit": "a number without its unit", "decimal_comma": "a comma where the point belongs", "wrong_type": "a value of a wrong type", "empty_text": "a text with nothing in it",
    "other_quantity": "a unit of another quantity", "coefficient_without_degree": "a coefficient that says not for what degree", "unknown_member": "a member that is not known",
    "unknown_member_deep": "a member that is not known, further in", "no_movable": "the growth of the movable machine is not there", "no_stationary": "the growth of the stationary machine is not there",
    "no_plane": "a position in one plane only", "no_slope": "a position without its slope", "u_in_one_plane": "an uncertainty in one plane only", "negative_u": "a negative uncertainty", "no_cold_position": "no cold position"}

AREA = Area("thermal", {
    "two_supports": ("plain", "two supports of one piece each"),
    "tape": ("plain", "stations and heights off the tape"),
    "published_inboard": ("plain", "a published example, the inboard leg at the origin"),
    "published_outboard": ("plain", "the same, the outboard leg at the origin"),
    "published_coupling": ("plain", "the same, the growth carried to the plane of the rim dial"),
    "published_line": ("hard", "a published line through eleven points, taken for eleven supports"),
    "fahrenheit": ("plain", "rises and coefficients in degrees F"),
    "materials": ("plain", "legs of several pieces and materials"),
    "materials_f": ("plain", "legs of several pieces in inches and degrees F"),
    "one_spot": ("plain", "one temperature for a piece"),
    "profile": ("plain", "temperatures at several heights of a piece"),
    "profile_f": ("plain", "temperatures at several heights in inches and degrees F"),
    "mixed_scales": ("plain", "temperatures of one piece in different scales"),
    "mixed_profile": ("plain", "a profile in another scale than the temperature when cold"),
    "legs": ("plain", "left and right leg differ: the machine rolls"),
    "legs_and_pieces": ("plain", "legs that differ in height and material"),
    "measured": ("plain", "growth as it was measured"),
    "measured_mil": ("plain", "measured at one end, computed at the other"),
    "three_supports": ("plain", "three supports on a line"),
    "uncertain": ("plain", "uncertainties of heights, temperatures, coefficients"),
    "uncertain_f": ("plain", "uncertainties in degrees F"),
    "uncertain_measured": ("plain", "uncertainties of measured growth"),
    "targets": ("plain", "cold targets from two growths"),
    "targets_mil": ("plain", "cold targets in mils"),
    "targets_uncertain": ("plain", "the same with uncertainties"),
    "running": ("plain", "where a machine runs that is known cold"),
    "running_mil": ("plain", "running positions in mils"),
    "running_uncertain": ("plain", "the same with uncertainties"),
    "off_the_line": ("hard", "three supports slightly off a line: least squares"),
    "four_supports": ("hard", "four supports slightly off a line, in no order"),
    "nearly_off": ("hard", "a support that is just not too far off the line"),
    "within_given": ("hard", "a support just not too far off by a tolerance that was given"),
    "far_stations": ("hard", "supports far from the coupling"),
    "close_supports": ("hard", "supports close together, far away"),
    "negative_stations": ("hard", "supports on the stationary side"),
    "both_sides": ("hard", "supports on both sides of the origin"),
    "cryogenic": ("hard", "a machine that runs colder than it was aligned"),
    "cryogenic_profile": ("hard", "temperatures below zero on both scales"),
    "slope_zero": ("hard", "both ends grow alike"),
    "roll_zero": ("hard", "different legs that grow alike"),
    "roll_other_way": ("hard", "the leg at 9 o'clock grows more"),
    "roll_against": ("hard", "ends that roll against one another"),
    "spots_short": ("hard", "spots that do not reach the ends of the piece"),
    "spots_high": ("hard", "spots near the top only"),
    "shared_coefficient": ("hard", "one uncertain coefficient at several pieces"),
    "shared_in_a_leg": ("hard", "one uncertain coefficient twice in a leg"),
    "same_name": ("hard", "materials of one name that are not the same"),
    "same_name_legs": ("hard", "legs of two steels"),
    "same_name_other_u": ("hard", "one material of two uncertainties, which are two materials"),
    "partly_stated": ("hard", "uncertainties stated at one support only"),
    "partly_stated_height": ("hard", "uncertainties of one height and one coefficient stated, and no other"),
    "partly_stated_spot": ("hard", "the uncertainty of a profile's temperature stated, and no other"),
    "legs_uncertain": ("hard", "uncertain legs that make the machine roll"),
    "legs_shared": ("hard", "one uncertain coefficient in both legs"),
    "hardly_warm": ("hard", "rises of a hundredth of a degree"),
    "very_hot": ("hard", "a hot machine on high legs"),
    "nearly_equal": ("hard", "two growths that nearly cancel"),
    "correlated": ("hard", "growths whose errors belong together"),
    "large_slopes": ("hard", "positions far out of line"),
    **{name: ("invalid", about) for name, about in INVALID.items()},
})


# ---- reading, with the mistakes that are made in reading

def lengths(text, mistake):
    if mistake == "mil_as_hundredth" and text.endswith(" mil"):
        return number(text[:-4]) / 100
    if mistake == "fraction_misread" and text.count(" ") == 2:  # 17 1/4 in: the fraction is dropped
        whole, _, unit = text.split()
        return length(whole + " " + unit)
    return length(text)


def expansion(text, mistake=None):
    if mistake == "coefficient_per_other_degree":
        text = text.replace("/degF", "/K").replace("um/m/°F", "um/m/K").replace("1/°F", "1/K")
        if text.endswith(" mil/in/°F"):
            return number(text.split()[0]) / 1000
    return read(text, "expansion")


def difference(text, mistake=None):
    n, unit = text.split()
    if mistake == "difference_with_32" and unit in ("degF", "°F"):
        return (number(n) - 32) * F(5, 9)
    return read(text, "difference")


def temperature(text, mistake=None):
    """Degrees C."""
    n, unit = text.split()
    if unit in ("degF", "°F"):
        return (number(n) - (0 if mistake == "point_without_32" else 32)) * F(5, 9)
    return number(n) - (F(27315, 100) if unit == "K" else 0)


# ---- growth: every support gives what it moves in each plane, and what its errors contribute

def profile_at(spots, up):
    """Straight between the spots, constant below the lowest and above the highest."""
    if up >= spots[-1][0]:
        return spots[-1][1]
    if up <= spots[0][0]:
        return spots[0][1]
    k = max([j for j in range(len(spots) - 1) if spots[j][0] <= up], default=0)
    (a, s), (b, t) = spots[k], spots[k + 1]
    return s + (t - s) * (up - a) / (b - a)


def mean(spots, height, mistake):
    """Trapezoids between the bends."""
    if mistake == "middle_for_mean":
        return profile_at(spots, height / 2)
    if mistake == "spots_averaged":
        return sum(t for _, t in spots) / len(spots)
    bends = [F(0)] + [up for up, _ in spots if 0 < up < height] + [height]
    return sum((profile_at(spots, a) + profile_at(spots, b)) / 2 * (b - a) for a, b in zip(bends, bends[1:])) / height


def warmth(piece, mistake):
    """The rise of the mean temperature."""
    if "rise" in piece:
        return difference(piece["rise"], mistake)
    spots = [(lengths(s["up"], mistake), temperature(s["running"], mistake)) for s in piece["profile"]]
    return mean(spots, lengths(piece["height"], mistake), mistake) - temperature(piece["cold"], mistake)


def leg(pieces, at, mistake):
    """Growth, height, and contributions of errors: {source: amount}."""
    growth, height, errors = F(0), F(0), {}
    for k, piece in enumerate(pieces[:1] if mistake == "pieces_forgotten" else pieces):
        h, m, rise = lengths(piece["height"], mistake), piece["material"], warmth(piece, mistake)
        alpha = expansion(m["expansion"], mistake)
        growth, height = growth + h * alpha * rise, height + h
        if "u" in m:  # one error for all pieces of the material
            source = (m["name"], m["expansion"], m["u"])
            if mistake == "material_by_name":
                source = m["name"]
            if mistake == "material_independent":
                source = (source, at, k)
            errors[source] = errors.get(source, 0) + h * rise * expansion(m["u"], mistake)
        u = piece.get("u", {})
        if "height" in u:
            errors[at, k, "height"] = alpha * rise * lengths(u["height"], mistake)
        if "temperature" in u:
            errors[at, k, "temperature"] = h * alpha * difference(u["temperature"], mistake)
    return growth, height, errors


def support(s, at, mistake):
    """Movement in both planes, and contributions of errors in both."""
    if "measured" in s:
        by, u = s["measured"]["by"], s["measured"].get("u", {})
        y, z = (lengths(by[p], mistake) for p in ("horizontal", "vertical"))
        return y, z, {(at, p): (length(u[p]) * (p == "horizontal"), length(u[p]) * (p == "vertical")) for p in u}
    if "pieces" in s:
        g, _, errors = leg(s["pieces"], (at,), mistake)
        return F(0), g, {k: (F(0), e) for k, e in errors.items()}
    g3, h3, e3 = leg(s["three"], (at, 3), mistake)
    g9, h9, e9 = leg(s["nine"], (at, 9), mistake)
    roll = -(h3 + h9) / 2 / lengths(s["track"], mistake)
    roll *= {"roll_forgotten": 0, "roll_sign": -1, "half_track": 2}.get(mistake, 1)
    errors = {k: (roll * (e3.get(k, 0) - e9.get(k, 0)), (e3.get(k, 0) + e9.get(k, 0)) / 2) for k in {**e3, **e9}}
    return roll * (g3 - g9), (g3 + g9) / 2, errors


def line_weights(x):
    """How the value of each station goes into offset and slope, by centred sums."""
    n, middle = len(x), sum(x) / len(x)
    spread = sum((a - middle) ** 2 for a in x)
    slope = [(a - middle) / spread for a in x]
    return [F(1, n) - middle * b for b in slope], slope


def growth_numbers(input, mistake=None):
    """In each plane offset and slope, and their u or None."""
    supports = input["supports"]
    x = [lengths(s["x"], mistake) for s in supports]
    moved = [support(s, i, mistake) for i, s in enumerate(supports)]
    if mistake == "ends_only":
        ends = [x.index(min(x)), x.index(max(x))]
        x, moved = [x[i] for i in ends], [moved[i] for i in ends]
    weights = line_weights(x)
    sources = {k for m in moved for k in m[2]}
    answer = {}
    for p, plane in enumerate(("horizontal", "vertical")):
        g = [m[p] for m in moved]
        values = [sum(w * v for w, v in zip(ws, g)) for ws in weights]
        if mistake == "growth_not_projected":
            values[0] = g[min(range(len(x)), key=lambda i: abs(x[i]))]
        u = None
        if sources:
            parts = [[sum(w * m[2].get(k, (0, 0))[p] for w, m in zip(ws, moved)) for k in sources] for ws in weights]
            u = [sum(abs(big(F(e))) for e in es) if mistake == "added_straight" else mp.sqrt(big(F(sum(e * e for e in es)))) for es in parts]
        answer[plane] = (values, u)
    return answer


GROWTH_MISTAKES = ["growth_not_projected", "difference_with_32", "point_without_32", "coefficient_per_other_degree", "middle_for_mean", "spots_averaged", "pieces_forgotten", "roll_forgotten", "roll_sign",
                   "half_track", "ends_only", "material_independent", "material_by_name", "added_straight", "mil_as_hundredth", "fraction_misread"]


# ---- cold targets and running positions

def plane_numbers(position, plane, mistake=None):
    p = position[plane]
    u = [length(p["u"]["offset"]), slope(p["u"]["slope"])] if "u" in p else None
    return [lengths(p["offset"], mistake), slope(p["slope"])], u


def combine(signs, input, mistake=None):
    """Sum of the named positions with their signs; variances add."""
    answer = {}
    for plane in ("horizontal", "vertical"):
        values, squares, straight, stated = [F(0)] * 2, [F(0)] * 2, [F(0)] * 2, False
        for name, sign in signs.items():
            v, u = plane_numbers(input[name], plane, mistake)
            values = [a + sign * b for a, b in zip(values, v)]
            if u:
                stated, squares, straight = True, [a + b * b for a, b in zip(squares, u)], [a + b for a, b in zip(straight, u)]
        u = [big(a) for a in straight] if mistake == "added_straight" else [mp.sqrt(big(a)) for a in squares]
        answer[plane] = (values, u if stated else None)
    return answer


def target_numbers(input, mistake=None):
    signs = {"growth_sign": {"stationary": -1, "movable": 1}, "other_machine_forgotten": {"movable": -1}}.get(mistake, {"stationary": 1, "movable": -1})
    return combine(signs, input, mistake)


def running_numbers(input, mistake=None):
    signs = {"growth_sign": {"cold": 1, "stationary": 1, "movable": -1}, "other_machine_forgotten": {"cold": 1, "movable": 1},
             "cold_forgotten": {"stationary": -1, "movable": 1}}.get(mistake, {"cold": 1, "stationary": -1, "movable": 1})
    return combine(signs, input, mistake)


TARGET_MISTAKES = ["growth_sign", "other_machine_forgotten", "added_straight", "mil_as_hundredth"]
RUNNING_MISTAKES = TARGET_MISTAKES + ["cold_forgotten"]


# ---- tolerances

def growth_tolerance(input, answer):
    """That of a fit: condition of the line's equations, norm of the sizes over norm of the column."""
    x = [length(s["x"]) for s in input["supports"]]
    n, norm = len(x), mp.sqrt(big(sum(a * a for a in x)))
    cosine = abs(big(sum(x))) / (mp.sqrt(n) * norm)
    kappa = mp.sqrt((1 + cosine) / (1 - cosine))
    columns = {"offset": mp.sqrt(n), "slope": norm}
    unit = {"offset": "mm", "slope": "mm/m"}
    at = {}
    for p, plane in enumerate(("horizontal", "vertical")):
        sizes = [size(s)[p] for s in input["supports"]]
        errors = [sum(abs(big(F(e[p]))) for e in support(s, i, None)[2].values()) for i, s in enumerate(input["supports"])]
        for k, what in enumerate(("offset", "slope")):
            total = mp.sqrt(sum(big(F(a)) ** 2 for a in sizes)) / columns[what]
            at["/%s/%s" % (plane, what)] = rounding(total, unit[what], kappa, 64)
            if answer[plane][1]:
                # Variances may cancel: the size once more over what is left.
                straight = mp.sqrt(sum(e * e for e in errors)) / columns[what]
                left = answer[plane][1][k]
                loss = max(1, straight / left) if left else 1
                assert loss < 300, "uncertainties cancel"
                at["/%s/u/%s" % (plane, what)] = rounding(straight, unit[what], kappa * loss, 64)
    return at


def size(s):
    """The size of what goes into a support's movement; a program may hold temperatures in kelvins."""
    def of(pieces):
        total = F(0)
        for piece in pieces:
            degrees = abs(difference(piece["rise"])) if "rise" in piece else abs(temperature(piece["cold"])) + max(abs(temperature(t["running"])) for t in piece["profile"]) + 2 * 273
            total += length(piece["height"]) * expansion(piece["material"]["expansion"]) * degrees
        return total
    if "measured" in s:
        return [abs(length(s["measured"]["by"][p])) for p in ("horizontal", "vertical")]
    if "pieces" in s:
        return F(0), of(s["pieces"])
    g = of(s["three"]) + of(s["nine"])
    height = sum(length(p["height"]) for p in s["three"] + s["nine"]) / 2
    return height * g / length(s["track"]), g / 2


def sum_tolerance(names):
    def tolerance(input, answer):
        at, unit = {}, {"offset": "mm", "slope": "mm/m"}
        for plane in ("horizontal", "vertical"):
            parts = [plane_numbers(input[name], plane)[0] for name in names]
            for k, what in enumerate(("offset", "slope")):
                at["/%s/%s" % (plane, what)] = rounding(sum(abs(v[k]) for v in parts), unit[what])
                if answer[plane][1]:
                    at["/%s/u/%s" % (plane, what)] = rounding(answer[plane][1][k], unit[what])
        return at
    return tolerance


# ---- the second way

def gp(lines):
    run = subprocess.run(["gp", "-q", "-f"], input="default(realprecision,60);\n" + "\n".join(lines) + "\n", capture_output=True, text=True, check=True)
    return [mpf(a.replace(" E", "e")) for a in run.stdout.split("\n") if a]


def gp_rise(piece):
    """The mean of a profile by antiderivatives of its straight parts."""
    if "rise" in piece:
        return "(%s)" % difference(piece["rise"])
    h = length(piece["height"])
    spots = [(length(s["up"]), temperature(s["running"])) for s in piece["profile"]]
    if len(spots) == 1:
        return "(%s-(%s))" % (spots[0][1], temperature(piece["cold"]))
    parts = []
    for k, ((a, s), (b, t)) in enumerate(zip(spots, spots[1:])):
        low, high = a, min(b, h)
        parts.append("my(p=intformal((%s)+((%s)-(%s))*(x-(%s))/((%s)-(%s))));subst(p,x,%s)-subst(p,x,%s)" % (s, t, s, a, b, a, high, low))
    parts = ["((()->%s)())" % p for p in parts]
    parts.append("(%s)*(%s)" % (spots[0][1], spots[0][0]))
    if h > spots[-1][0]:
        parts.append("(%s)*((%s)-(%s))" % (spots[-1][1], h, spots[-1][0]))
    return "((%s)/(%s)-(%s))" % ("+".join(parts), h, temperature(piece["cold"]))


def gp_support(s):
    if "measured" in s:
        return tuple("(%s)" % length(s["measured"]["by"][p]) for p in ("horizontal", "vertical"))
    total = lambda pieces: "(" + "+".join("(%s)*(%s)*%s" % (length(p["height"]), expansion(p["material"]["expansion"]), gp_rise(p)) for p in pieces) + ")"
    if "pieces" in s:
        return "0", total(s["pieces"])
    a, b = total(s["three"]), total(s["nine"])
    # Two points of the frame rise by a and b at +-track/2; what stands above them turns by the same angle.
    height = sum(length(p["height"]) for p in s["three"] + s["nine"]) / 2
    return "(%s)*(%s-%s)/(%s)" % (height, b, a, length(s["track"])), "(%s+%s)/2" % (a, b)


def confirm_growth(id, input, answer):
    x = [length(s["x"]) for s in input["supports"]]
    lines = ["A=[%s];N=matsolve(A~*A,A~);" % ";".join("1,%s" % a for a in x)]
    pairs = [gp_support(s) for s in input["supports"]]
    wanted = []
    for p, plane in enumerate(("horizontal", "vertical")):
        lines.append("g=[%s]~;r=N*g;print(1.0*r[1]);print(1.0*r[2]);" % ",".join(pair[p] for pair in pairs))
        wanted += answer[plane][0]
        if answer[plane][1]:
            # The covariance of the supports' movements, carried through the line: N V N~.
            moved = [support(s, i, None)[2] for i, s in enumerate(input["supports"])]
            v = [[sum(F(a[k][p] * b[k][p]) for k in a if k in b) for b in moved] for a in moved]
            lines.append("V=[%s];C=N*V*N~;print(sqrt(C[1,1]));print(sqrt(C[2,2]));" % ";".join(",".join(str(c) for c in row) for row in v))
            wanted += answer[plane][1]
    for got, want in zip(gp(lines), wanted, strict=True):
        assert abs(got - big(want)) <= mpf(10) ** -45 * max(abs(got), mpf(10) ** -6), (id, got, want)


def confirm_sum(names, signs):
    def confirm(id, input, answer):
        lines, wanted = [], []
        for plane in ("horizontal", "vertical"):
            for k in (0, 1):
                parts = [plane_numbers(input[name], plane) for name in names]
                lines.append("print(1.0*([%s]*[%s]~));" % (",".join(str(s) for s in signs), ",".join(str(v[k]) for v, _ in parts)))
                wanted.append(answer[plane][0][k])
                if answer[plane][1]:  # as the length of a vector
                    lines.append("print(sqrt(1.0*norml2([%s])));" % ",".join(str(u[k]) if u else "0" for _, u in parts))
                    wanted.append(answer[plane][1][k])
        for got, want in zip(gp(lines), wanted, strict=True):
            assert abs(got - big(want)) <= mpf(10) ** -45 * max(abs(got), mpf(10) ** -6), (id, got, want)
    return confirm


OPS = {"growth": (growth_numbers, GROWTH_MISTAKES, growth_tolerance, confirm_growth),
       "cold_target": (target_numbers, TARGET_MISTAKES, sum_tolerance(["stationary", "movable"]), confirm_sum(["stationary", "movable"], [1, -1])),
       "running": (running_numbers, RUNNING_MISTAKES, sum_tolerance(["cold", "stationary", "movable"]), confirm_sum(["cold", "stationary", "movable"], [1, -1, 1]))}


def write(answer):
    result = {}
    for plane, (values, u) in answer.items():
        result[plane] = {"offset": mm(values[0]), "slope": mm_m(values[1])}
        if u:
            result[plane]["u"] = {"offset": mm(u[0]), "slope": mm_m(u[1])}
    return result


def add(op, id, region, about, input, published=None):
    numbers, mistakes, tolerance, confirm = OPS[op]
    answer = numbers(input)
    confirm(id, input, answer)
    if op == "growth":
        stand_on_line(id, input, answer)
    result, allowed = write(answer), tolerance(input, answer)
    flags = [m for m in mistakes if differs(result, write(numbers(input, m)), allowed)]
    stated = answer["vertical"][1]
    second = WAYS % ("; covariances as N V N~" if stated else "") if op == "growth" else GP + ", as scalar products%s: over 45 digits agree" % (" and lengths of vectors" if stated else "")
    source = {"kind": "multi_precision" if stated else "exact", "by": MPMATH if stated else RATIONAL, "second": second}
    if published:
        work, published = published if isinstance(published, tuple) else (MCMILLAN, published)
        source = {"kind": "published", "by": work, "published": published, "second": second}
    return AREA.add(id, op, region, flags, about, source, input, result, allowed)


def stand_on_line(id, input, answer):
    within = length(input.get("within", "0.0508 mm"))
    for i, s in enumerate(input["supports"]):
        for p, plane in enumerate(("horizontal", "vertical")):
            offset, slope = answer[plane][0]
            assert abs(support(s, i, None)[p] - offset - slope * length(s["x"])) < within, id


# ---- short forms

def stuff(name, coefficient, u=None):
    return {"name": name, "expansion": coefficient, **({"u": u} if u else {})}


# Coefficients as sources give them: McMillan's steel and cast iron, engineering tables for the others; the u are invented.
STEEL, IRON, CONCRETE = stuff("steel", "11.3 um/m/K"), stuff("grey cast iron", "10.4 um/m/K"), stuff("concrete", "14.5 um/m/K")
STEEL_F, IRON_F, STAINLESS_F = stuff("steel", "0.0063 mil/in/°F"), stuff("grey cast iron", "5.8 um/m/degF"), stuff("stainless 304", "9.6 um/m/°F")
ALUMINIUM = stuff("aluminium", "2.36e-5 1/K")


def piece(height, material, rise, /, **u):
    return {"height": height, "material": material, "rise": rise, **({"u": u} if u else {})}


def warm(height, material, cold, /, *spots, **u):
    return {"height": height, "material": material, "cold": cold, "profile": [{"up": a, "running": t} for a, t in spots], **({"u": u} if u else {})}


def on(x, *pieces): return {"x": x, "pieces": list(pieces)}
def legs(x, three, nine, track): return {"x": x, "three": three, "nine": nine, "track": track}


def shown(x, y, z, u=None):
    return {"x": x, "measured": {"by": {"horizontal": y, "vertical": z}, **({"u": {"horizontal": u[0], "vertical": u[1]}} if u else {})}}


def grow(id, region, about, *supports, within=None, published=None):
    return add("growth", id, region, about, {"supports": list(supports), **({"within": within} if within else {})}, published)


# ---- growth: plain

two = grow("two-supports", "two_supports", "a motor on two pairs of feet, warmer at the drive end", on("310 mm", piece("355 mm", STEEL, "31 K")), on("905 mm", piece("355 mm", STEEL, "24 K")))
tape = grow("two-supports-tape", "tape", "stations and heights off the tape", on("11 3/8 in", piece("14 1/2 in", STEEL, "22 K")), on("34 5/16 in", piece("14 3/4 in", STEEL, "35 K")))
inboard = grow("mcmillan-inboard", "published_inboard", "legs of 17 and 22 in, 28 and 60 degrees F warmer; the offset is the growth of the inboard leg",
               on("0 in", piece("17 in", STEEL_F, "28 °F")), on("20 in", piece("22 in", STEEL_F, "60 °F")), published="2.99 mil (2.9988, cut off and not rounded)")
grow("mcmillan-outboard", "published_outboard", "the same from 78 F to mean temperatures of 106 and 138 F; the offset is the growth of the outboard leg",
     on("-20 in", warm("17 in", STEEL_F, "78 °F", ("0 in", "106 °F"))), on("0 in", warm("22 in", STEEL_F, "78 °F", ("0 in", "138 °F"))), published="8.3 mil")
grow("mcmillan-coupling", "published_coupling", "the same 16 and 36 in from the stem of the rim dial: carried to its plane the growth is negative",
     on("16 in", piece("17 in", STEEL_F, "28 degF")), on("36 in", piece("22 in", STEEL_F, "60 degF")), published="2.99 mil (2.9988, cut off) and 8.3 mil at the feet")
for v, k, mil in ((AREA.vectors[2], 0, F("2.9988")), (AREA.vectors[3], 0, F("8.316"))):
    assert length(v["result"]["vertical"]["offset"]) == mil * F("0.0254")
assert int(F("2.9988") * 100) == 299 and round(F("8.316"), 1) == F("8.3")

# JCGM 100:2008 (GUM), H.3: corrections b of a thermometer at temperatures t. Here
# (t - 20) m are stations and b mm are movements, so that the offset is y1, the slope y2.
GUM_T = "21.521 22.012 22.512 23.003 23.507 23.999 24.513 25.002 25.503 26.010 26.511".split()
GUM_B = "-0.171 -0.169 -0.166 -0.159 -0.164 -0.165 -0.156 -0.157 -0.159 -0.161 -0.160".split()
line = grow("gum-h3", "published_line", "the line of a thermometer's calibration, as if each temperature were a support: an ordinary least-squares line",
            *[shown("%s m" % decimal(F(t) - 20), "0 mm", b + " mm") for t, b in zip(GUM_T, GUM_B)], within="0.01 mm",
            published=("JCGM 100:2008 (GUM), H.3 (numbers second-hand)", "y1 -0.1712, y2 0.00218"))
assert abs(F(line["result"]["vertical"]["offset"].split()[0]) + F("0.1712")) < F("0.00005") and abs(F(line["result"]["vertical"]["slope"].split()[0]) - F("0.00218")) < F("0.000005")
assert abs(F(line["result"]["vertical"]["offset"].split()[0]) - F("-0.17120379013134998")) < F("1e-17")  # recomputed exactly elsewhere

grow("rise-f-coefficient-k", "fahrenheit", "a rise in degrees F, a coefficient per K", on("420 mm", piece("410 mm", IRON, "63 degF")), on("1130 mm", piece("410 mm", IRON, "45 degF")))
per_f = grow("rise-k-coefficient-f", "fahrenheit", "a rise in K, a coefficient per degree F", on("15 in", piece("18 in", IRON_F, "26 K")), on("41 in", piece("18 in", IRON_F, "19 K")))
stack = grow("materials", "materials", "a foot of cast iron on a steel base on concrete, each with its own rise", on("365 mm", piece("250 mm", IRON, "38 K"), piece("180 mm", STEEL, "21 K"), piece("600 mm", CONCRETE, "4 K")),
             on("985 mm", piece("250 mm", IRON, "29 K"), piece("180 mm", STEEL, "17 K"), piece("600 mm", CONCRETE, "3 K")))
grow("materials-f", "materials_f", "stainless legs on a carbon steel base, in degrees F", on("18 in", piece("21 1/4 in", STAINLESS_F, "112 °F"), piece("6 in", STEEL_F, "41 °F")), on("52 in", piece("20 3/4 in", STAINLESS_F, "95 °F"), piece("6 in", STEEL_F, "36 °F")))
spot = grow("one-spot", "one_spot", "one spot is the mean, wherever it was taken", on("280 mm", warm("315 mm", STEEL, "21 degC", ("120 mm", "57.5 degC"))), on("760 mm", warm("315 mm", STEEL, "21 degC", ("250 mm", "49 degC"))))
profile = grow("profile", "profile", "hot above, cool at the base: three spots, unevenly spread", on("345 mm", warm("500 mm", STEEL, "18 degC", ("0 mm", "24 degC"), ("400 mm", "46 degC"), ("500 mm", "71 degC"))),
               on("1045 mm", warm("500 mm", STEEL, "18 degC", ("0 mm", "23 degC"), ("350 mm", "40 degC"), ("500 mm", "66 degC"))))
grow("profile-f", "profile_f", "a profile in degrees F off the tape, coefficients per degree F", on("14 in", warm("22 1/2 in", IRON_F, "72 degF", ("2 1/2 in", "88 degF"), ("12 in", "121 degF"), ("20 in", "175 degF"))),
     on("39 in", warm("22 1/2 in", IRON_F, "72 degF", ("2 1/2 in", "85 degF"), ("13 in", "118 degF"), ("20 in", "160 degF"))))
grow("mixed-scales", "mixed_scales", "aligned at 68 degrees F, running temperatures in degrees C", on("295 mm", warm("280 mm", STEEL, "68 degF", ("100 mm", "52 degC"))), on("815 mm", warm("280 mm", STEEL, "68 degF", ("100 mm", "44 degC"))))
grow("mixed-scales-profile", "mixed_profile", "cold in kelvins, running in degrees F", on("450 mm", warm("640 mm", ALUMINIUM, "293.15 K", ("80 mm", "95 °F"), ("500 mm", "149 °F"))), on("1350 mm", warm("640 mm", ALUMINIUM, "293.15 K", ("80 mm", "86 °F"), ("560 mm", "140 °F"))))
rolled = grow("legs", "legs", "the leg at 3 o'clock is warmer: the machine lifts, and leans towards 9", legs("330 mm", [piece("450 mm", STEEL, "36 K")], [piece("450 mm", STEEL, "22 K")], "610 mm"),
              legs("1010 mm", [piece("450 mm", STEEL, "27 K")], [piece("450 mm", STEEL, "20 K")], "610 mm"))
grow("legs-and-pieces", "legs_and_pieces", "legs of different heights and materials at one end, even legs at the other", legs("19 in", [piece("16 in", STEEL_F, "85 °F"), piece("3 in", IRON_F, "60 °F")], [piece("17 1/2 in", STAINLESS_F, "52 °F")], "28 3/4 in"), on("47 in", piece("18 in", STEEL_F, "50 °F")))
measured = grow("measured", "measured", "both planes measured at both ends", shown("395 mm", "-0.06 mm", "0.21 mm"), shown("1180 mm", "0.04 mm", "0.13 mm"))
grow("measured-mil", "measured_mil", "measured in mils at one end, computed at the other", shown("16.5 in", "1.5 mil", "7.25 mil"), on("45.5 in", piece("19 in", STEEL_F, "44 °F")))
three = grow("three-supports", "three_supports", "three supports whose growth lies on a line", on("300 mm", piece("400 mm", STEEL, "30 K")), on("900 mm", piece("400 mm", STEEL, "26 K")), on("1500 mm", piece("400 mm", STEEL, "22 K")))
unsure = grow("uncertain", "uncertain", "heights, temperatures and coefficients, all uncertain", on("290 mm", piece("340 mm", stuff("steel", "11.3 um/m/K", "0.6 um/m/K"), "33 K", height="2 mm", temperature="3 K")),
              on("870 mm", piece("345 mm", stuff("grey cast iron", "10.4 um/m/K", "0.4 um/m/K"), "24 K", height="1.5 mm", temperature="2.5 K")))
grow("uncertain-f", "uncertain_f", "uncertain temperatures in degrees F: a difference again", on("12 in", piece("15 1/4 in", stuff("steel", "6.3 um/m/degF", "0.3 um/m/degF"), "54 °F", temperature="5 °F")), on("37 in", piece("15 1/4 in", stuff("stainless 316", "8.9 um/m/°F", "0.5 um/m/°F"), "40 °F", temperature="4 °F")))
grow("uncertain-measured", "uncertain_measured", "measured movements with their uncertainty", shown("410 mm", "0.05 mm", "0.32 mm", ("0.012 mm", "0.02 mm")), shown("1260 mm", "-0.03 mm", "0.18 mm", ("0.015 mm", "0.018 mm")))

# ---- growth: hard

grow("off-the-line-three", "off_the_line", "the middle support grows more: least squares, not the ends", on("320 mm", piece("400 mm", STEEL, "25 K")), on("850 mm", piece("400 mm", STEEL, "33 K")), on("1450 mm", piece("400 mm", STEEL, "21 K")))
grow("off-the-line-four", "four_supports", "four supports in no order, `within` widened, legs that differ at one of them", on("1800 mm", piece("520 mm", IRON, "28 K")), on("350 mm", piece("520 mm", IRON, "45 K")),
     legs("1250 mm", [piece("500 mm", STEEL, "41 K")], [piece("540 mm", STEEL, "39 K")], "760 mm"), on("820 mm", piece("520 mm", IRON, "30 K")), within="0.2 mm")
# Deviation d of the middle one of three even supports leaves 2d/3 there.
near = grow("nearly-off", "nearly_off", "the middle support stands 0.0507 mm off the line, 0.0508 mm are allowed", shown("300 mm", "0 mm", "0.1 mm"), shown("800 mm", "0 mm", "0.17605 mm"), shown("1300 mm", "0 mm", "0.1 mm"))
grow("nearly-off-within", "within_given", "`within` is 0.5 mil, and 0.49 mil are needed", on("12 in", piece("18 in", STEEL_F, "50 °F")), shown("24 in", "0 mil", "6.405 mil"), on("36 in", piece("18 in", STEEL_F, "50 °F")), within="0.5 mil")
grow("far-stations", "far_stations", "a floating shaft: the feet are 4 m and more from the coupling", on("4150 mm", piece("630 mm", STEEL, "34 K")), on("4890 mm", piece("630 mm", STEEL, "29 K")))
grow("close-supports", "close_supports", "supports 3 in apart, 5 ft away: what differs there is carried a long way", on("5 ft", piece("20 1/2 in", STEEL_F, "47 °F")), on("63 in", piece("20 1/2 in", STEEL_F, "45 °F")))
grow("stationary-side", "negative_stations", "the stationary machine: all stations are negative", on("-340 mm", piece("375 mm", IRON, "52 K")), on("-1160 mm", piece("375 mm", IRON, "37 K")))
grow("both-sides", "both_sides", "a bearing pedestal on either side of the origin", on("-16 1/4 in", piece("24 in", STEEL_F, "33 °F")), on("22 in", piece("24 in", STEEL_F, "58 °F")))
grow("cryogenic", "cryogenic", "a pump for cold liquids shrinks", on("-380 mm", piece("460 mm", stuff("stainless 304", "17.3 um/m/K"), "-112 K")), on("-920 mm", piece("460 mm", stuff("stainless 304", "17.3 um/m/K"), "-64 K")))
grow("cryogenic-profile", "cryogenic_profile", "from 59 degrees F down to -40, which is the same on both scales", on("-15 in", warm("18 in", STAINLESS_F, "59 degF", ("0 in", "5 degF"), ("12 in", "-40 degC"))), on("-36 in", warm("18 in", STAINLESS_F, "59 degF", ("0 in", "23 degF"), ("15 in", "-22 degF"))))
grow("slope-zero", "slope_zero", "different legs that grow alike: no slope, and none by rounding", on("375 mm", piece("300 mm", STEEL, "50.4 degF")), on("1025 mm", piece("400 mm", STEEL, "21 K")))
grow("slope-zero-pieces", "slope_zero", "the same with pieces that make up for one another", on("540 mm", piece("200 mm", stuff("steel", "12 um/m/K"), "30 K"), piece("300 mm", stuff("concrete", "8 um/m/K"), "5 K")), on("1410 mm", piece("150 mm", stuff("steel", "12 um/m/K"), "40 K"), piece("250 mm", stuff("concrete", "8 um/m/K"), "6 K")))
grow("roll-zero", "roll_zero", "a tall cool leg and a short warm one: lift, but no roll", legs("360 mm", [piece("420 mm", STEEL, "25 K")], [piece("350 mm", STEEL, "30 K")], "580 mm"), on("940 mm", piece("385 mm", STEEL, "22 K")))
grow("roll-other-way", "roll_other_way", "the leg at 9 o'clock grows more: the shaft goes towards 3", legs("405 mm", [piece("560 mm", IRON, "19 K")], [piece("560 mm", IRON, "47 K")], "720 mm"), legs("1305 mm", [piece("560 mm", IRON, "18 K")], [piece("560 mm", IRON, "33 K")], "690 mm"))
grow("roll-against", "roll_against", "the ends roll against one another, on a narrow track", legs("14 1/2 in", [piece("26 in", STEEL_F, "71 °F")], [piece("26 in", STEEL_F, "55 °F")], "13 1/4 in"), legs("38 in", [piece("26 in", STEEL_F, "50 °F")], [piece("26 in", STEEL_F, "66 °F")], "13 1/4 in"))
short_of = grow("spots-short", "spots_short", "spots between 150 and 350 of 600 mm: straight on down, constant above", on("385 mm", warm("600 mm", STEEL, "20 degC", ("150 mm", "34 degC"), ("250 mm", "45 degC"), ("350 mm", "62 degC"))),
                on("1175 mm", warm("600 mm", STEEL, "20 degC", ("200 mm", "33 degC"), ("300 mm", "41 degC"), ("350 mm", "50 degC"))))
grow("spots-high", "spots_high", "two spots near the top: the line goes far down, below the cold temperature", on("20 in", warm("24 in", STEEL_F, "75 °F", ("19 1/2 in", "140 °F"), ("22 in", "158 °F"))), on("50 in", warm("24 in", STEEL_F, "75 °F", ("18 in", "120 °F"), ("22 in", "136 °F"))))
UNSURE_STEEL = stuff("steel", "11.3 um/m/K", "0.7 um/m/K")
shared = grow("shared-coefficient", "shared_coefficient", "one steel, one error: it does not average out over the supports", on("335 mm", piece("430 mm", UNSURE_STEEL, "40 K", temperature="2 K")), on("965 mm", piece("430 mm", UNSURE_STEEL, "25 K", temperature="2 K")))
grow("shared-in-a-leg", "shared_in_a_leg", "one steel twice in each leg, with iron between, which has an error of its own", on("16 1/2 in", piece("8 in", stuff("steel", "6.3 um/m/°F", "0.4 um/m/°F"), "75 °F"), piece("4 in", stuff("iron", "5.8 um/m/°F", "0.3 um/m/°F"), "60 °F"), piece("9 in", stuff("steel", "6.3 um/m/°F", "0.4 um/m/°F"), "30 °F")),
     on("44 in", piece("8 in", stuff("steel", "6.3 um/m/°F", "0.4 um/m/°F"), "52 °F"), piece("4 in", stuff("iron", "5.8 um/m/°F", "0.3 um/m/°F"), "45 °F"), piece("9 in", stuff("steel", "6.3 um/m/°F", "0.4 um/m/°F"), "24 °F")))
grow("same-name", "same_name", "two steels of different coefficients are two materials", on("275 mm", piece("365 mm", stuff("steel", "11.3 um/m/K", "0.5 um/m/K"), "35 K")), on("795 mm", piece("365 mm", stuff("steel", "12.6 um/m/K", "0.5 um/m/K"), "28 K")))
grow("same-name-other-u", "same_name_other_u", "one steel from two sources that trust it differently: two materials", on("425 mm", piece("200 mm", stuff("steel", "11.3 um/m/K", "0.4 um/m/K"), "42 K"), piece("150 mm", stuff("steel", "11.3 um/m/K", "0.9 um/m/K"), "20 K")), on("1225 mm", piece("350 mm", stuff("steel", "11.3 um/m/K", "0.4 um/m/K"), "27 K")))
grow("same-name-legs", "same_name_legs", "the legs of a machine are of two steels", legs("390 mm", [piece("480 mm", stuff("steel", "11.3 um/m/K", "0.5 um/m/K"), "39 K")], [piece("480 mm", stuff("steel", "11.9 um/m/K", "0.8 um/m/K"), "31 K")], "640 mm"), on("1090 mm", piece("480 mm", STEEL, "26 K")))
grow("partly-stated", "partly_stated", "only the inboard temperature has a u; what has none counts as exact", on("355 mm", piece("390 mm", STEEL, "29 K", temperature="4 K")), on("1015 mm", piece("390 mm", STEEL, "23 K")))
grow("partly-stated-spot", "partly_stated_spot", "the u of a temperature shifts the whole profile", on("460 mm", warm("550 mm", IRON, "17 degC", ("100 mm", "38 degC"), ("450 mm", "59 degC"), temperature="2.5 K")), shown("1390 mm", "0.02 mm", "0.11 mm"))
grow("partly-stated-height", "partly_stated_height", "only a height has a u, and a coefficient", on("17 in", piece("20 in", STEEL_F, "68 °F", height="1/4 in"), piece("5 1/2 in", stuff("concrete", "8 um/m/°F", "1.5 um/m/°F"), "10 °F")), on("49 in", piece("25 1/2 in", STEEL_F, "42 °F")))
grow("legs-uncertain", "legs_uncertain", "temperatures of the legs are independent: lift and roll are uncertain", legs("370 mm", [piece("440 mm", STEEL, "37 K", temperature="3 K")], [piece("440 mm", STEEL, "26 K", temperature="2 K")], "600 mm"),
     legs("1120 mm", [piece("440 mm", STEEL, "28 K", temperature="2.5 K")], [piece("440 mm", STEEL, "24 K", temperature="3.5 K")], "600 mm"))
grow("legs-shared", "legs_shared", "one steel in both legs: its error lifts, and hardly rolls", legs("345 mm", [piece("410 mm", UNSURE_STEEL, "45 K", temperature="2 K")], [piece("410 mm", UNSURE_STEEL, "33 K")], "550 mm"), on("1145 mm", piece("410 mm", UNSURE_STEEL, "30 K")))
grow("hardly-warm", "hardly_warm", "a hundredth of a degree: nanometres", on("265 mm", piece("225 mm", STEEL, "0.01 K")), on("685 mm", piece("225 mm", STEEL, "0.027 degF")))
grow("hardly-warm-points", "hardly_warm", "temperatures that differ by hundredths", on("385 mm", warm("325 mm", IRON, "20.00 degC", ("50 mm", "20.01 degC"), ("300 mm", "20.03 degC"))), on("1005 mm", warm("325 mm", IRON, "20.00 degC", ("50 mm", "20.01 degC"), ("250 mm", "20.02 degC"))))
grow("very-hot", "very_hot", "a turbine case 3 m above its sole plate at 540 degrees C", on("-1850 mm", warm("3 m", stuff("cast steel", "12.6 um/m/K"), "15 degC", ("0 m", "60 degC"), ("1.2 m", "210 degC"), ("2.5 m", "540 degC"))), on("-4 m", warm("2.4 m", stuff("cast steel", "12.6 um/m/K"), "15 degC", ("0 m", "45 degC"), ("1.5 m", "180 degC"), ("2.4 m", "410 degC"))))
grow("very-hot-f", "very_hot", "1000 degrees F of rise, per degree F", on("-5 1/2 ft", piece("9 1/4 ft", stuff("cast steel", "7e-6 1/°F"), "1000 °F")), on("-13 ft", piece("8 ft", stuff("cast steel", "7e-6 1/degF"), "620 °F")))


# ---- cold targets and running positions

def at(y, dy, z, dz, u=None, correlation=None):
    p = {"horizontal": {"offset": y, "slope": dy}, "vertical": {"offset": z, "slope": dz}}
    if u:
        p["horizontal"]["u"], p["vertical"]["u"] = {"offset": u[0], "slope": u[1]}, {"offset": u[2], "slope": u[3]}
    if correlation:
        p["correlation"] = correlation
    return p


def cold(id, region, about, stationary, movable):
    return add("cold_target", id, region, about, {"stationary": stationary, "movable": movable})


def run(id, region, about, cold, stationary, movable):
    return add("running", id, region, about, {"cold": cold, "stationary": stationary, "movable": movable})


aim = cold("cold-target", "targets", "what the stationary machine grows more, the movable one stands high when cold", at("0.02 mm", "0.01 mm/m", "0.31 mm", "-0.12 mm/m"), at("-0.01 mm", "0.03 mm/m", "0.14 mm", "0.05 mm/m"))
cold("cold-target-mil", "targets_mil", "growths in mils and mils per inch", at("-0.5 mil", "0.02 mil/in", "4.75 mil", "0.11 mil/in"), at("1.25 mil", "-0.04 mil/in", "9.5 mil", "-0.08 mil/in"))
aim_u = cold("cold-target-uncertain", "targets_uncertain", "both growths are uncertain, each by itself", at("0.01 mm", "0.02 mm/m", "0.27 mm", "0.09 mm/m", ("0.006 mm", "0.01 mm/m", "0.03 mm", "0.04 mm/m")), at("0.03 mm", "-0.01 mm/m", "0.42 mm", "0.16 mm/m", ("0.008 mm", "0.02 mm/m", "0.04 mm", "0.03 mm/m")))
cold("cold-target-one-uncertain", "targets_uncertain", "only one growth is uncertain: the other counts as exact", at("0 mil", "0 mil/in", "6.5 mil", "0.07 mil/in", ("0.2 mil", "0.01 mil/in", "0.7 mil", "0.03 mil/in")), at("-1 mil", "0.02 mil/in", "2.25 mil", "-0.05 mil/in"))
cold("cold-target-nearly-equal", "nearly_equal", "two machines that grow alike but for a micrometre", at("0.081 mm", "0.24 mm/m", "0.6543 mm", "-0.331 mm/m"), at("0.0801 mm", "0.2401 mm/m", "0.6533 mm", "-0.3311 mm/m"))
cold("cold-target-nearly-equal-units", "nearly_equal", "the same to the nanometre, in different units", at("0.0508 mm", "0.1 mm/m", "0.254 mm", "0.2 mm/m"), at("2 mil", "0.1 mil/in", "0.01 in", "0.0002 in/in"))
S = [[1, -0.9, 0, 0], [-0.9, 1, 0, 0], [0, 0, 1, -0.85], [0, 0, -0.85, 1]]
cold("cold-target-correlated", "correlated", "correlations of offset and slope change neither u by itself", at("0.04 mm", "0.05 mm/m", "0.36 mm", "-0.21 mm/m", ("0.012 mm", "0.03 mm/m", "0.05 mm", "0.06 mm/m"), S), at("-0.02 mm", "0.07 mm/m", "0.19 mm", "-0.1 mm/m", ("0.009 mm", "0.02 mm/m", "0.025 mm", "0.05 mm/m"), S))
runs = run("running", "running", "cold position, plus what the movable machine grows, less what the stationary one does", at("0.05 mm", "-0.1 mm/m", "-0.22 mm", "0.3 mm/m"), at("0.01 mm", "0.02 mm/m", "0.12 mm", "0.04 mm/m"), at("0.02 mm", "0.06 mm/m", "0.38 mm", "-0.17 mm/m"))
run("running-mil", "running_mil", "in mils", at("-2.5 mil", "0.3 mil/in", "5 mil", "-0.15 mil/in"), at("0.25 mil", "0.01 mil/in", "3.5 mil", "0.06 mil/in"), at("-0.75 mil", "0.02 mil/in", "8.25 mil", "0.09 mil/in"))
run("running-uncertain", "running_uncertain", "three uncertain positions add as squares", at("0.03 mm", "0.2 mm/m", "0.1 mm", "-0.25 mm/m", ("0.004 mm", "0.02 mm/m", "0.005 mm", "0.03 mm/m")), at("0 mm", "0.01 mm/m", "0.2 mm", "0.07 mm/m", ("0.003 mm", "0.01 mm/m", "0.02 mm", "0.02 mm/m")), at("0.01 mm", "0 mm/m", "0.33 mm", "0.12 mm/m", ("0.006 mm", "0.015 mm/m", "0.03 mm", "0.025 mm/m")))
run("running-one-uncertain", "running_uncertain", "only the cold position has a u", at("1.1 mil", "0.2 mil/in", "-3 mil", "0.4 mil/in", ("0.15 mil", "0.02 mil/in", "0.2 mil", "0.03 mil/in")), at("0.3 mil", "0 mil/in", "5.1 mil", "0.02 mil/in"), at("0 mil", "0.05 mil/in", "8.8 mil", "-0.03 mil/in"))
run("running-on-target", "nearly_equal", "set cold to its target it runs in line to the last digit", at("0.03 mm", "-0.02 mm/m", "0.17 mm", "-0.17 mm/m"), at("0.02 mm", "0.01 mm/m", "0.31 mm", "-0.12 mm/m"), at("-0.01 mm", "0.03 mm/m", "0.14 mm", "0.05 mm/m"))
run("running-large", "large_slopes", "before the rough alignment: 30 mm and 40 mm/m out, growth of tenths", at("31.7 mm", "-42.3 mm/m", "-28.4 mm", "37.6 mm/m"), at("0.015 mm", "0.02 mm/m", "0.22 mm", "0.06 mm/m"), at("0.02 mm", "-0.04 mm/m", "0.41 mm", "-0.13 mm/m"))
run("running-correlated", "correlated", "a cold position from one fit, with its correlation", at("-0.07 mm", "0.31 mm/m", "0.15 mm", "0.44 mm/m", ("0.01 mm", "0.04 mm/m", "0.02 mm", "0.05 mm/m"), S), at("0.02 mm", "0.03 mm/m", "0.28 mm", "0.08 mm/m", ("0.005 mm", "0.01 mm/m", "0.03 mm", "0.02 mm/m")), at("0.03 mm", "-0.05 mm/m", "0.36 mm", "0.11 mm/m"))


# ---- refused

def refuse(twin, region, code, path, about, value=None, at=None):
    op = "" if twin["op"] == "growth" else twin["op"].replace("_", "-") + "-"
    AREA.refuse(op + region.replace("_", "-"), twin, region, code, path, changed(twin["input"], at or path, value), about)


refuse(two, "no_supports", "missing", "/supports", "nothing that stands")
refuse(three, "empty_supports", "missing", "/supports", "an empty list of supports", [])
refuse(two, "no_x", "missing", "/supports/1/x", "a station is not there, and is not zero")
refuse(rolled, "no_track", "missing", "/supports/1/track", "without the track nobody knows how far it rolls")
refuse(rolled, "no_nine", "missing", "/supports/0/nine", "one leg only")
refuse(rolled, "no_nine_at_all", "missing", "/supports/1/nine", "a leg without pieces", [])
refuse(stack, "empty_pieces", "missing", "/supports/1/pieces", "a support without pieces", [])
refuse(stack, "no_height", "missing", "/supports/0/pieces/1/height", "the second piece has no height")
refuse(two, "no_material", "missing", "/supports/0/pieces/0/material", "no material, and none is assumed")
refuse(per_f, "no_expansion", "missing", "/supports/1/pieces/0/material/expansion", "a coefficient is always the owner's to give")
refuse(spot, "no_cold", "missing", "/supports/0/pieces/0/cold", "running temperatures, but how cold was it?")
refuse(spot, "no_profile", "missing", "/supports/1/pieces/0/profile", "how warm does it run?")
refuse(spot, "empty_profile", "missing", "/supports/0/pieces/0/profile", "a profile of no spots", [])
refuse(profile, "no_running", "missing", "/supports/0/pieces/0/profile/1/running", "a spot without its temperature")
refuse(profile, "no_up", "missing", "/supports/1/pieces/0/profile/2/up", "a spot without its height")
refuse(measured, "no_by", "missing", "/supports/0/measured/by", "measured, but by how much?")
refuse(measured, "no_measured_vertical", "missing", "/supports/1/measured/by/vertical", "how far up is not there, and is not zero")
refuse(two, "negative_height", "out_of_range", "/supports/0/pieces/0/height", "a leg of negative height", "-355 mm")
refuse(rolled, "zero_track", "out_of_range", "/supports/0/track", "legs on one spot", "0 mm")
refuse(rolled, "negative_track", "out_of_range", "/supports/1/track", "a track has no sign", "-610 mm")
refuse(near, "negative_within", "out_of_range", "/within", "no support can stand less than nothing off", "-0.1 mm")
refuse(unsure, "negative_u_height", "out_of_range", "/supports/0/pieces/0/u/height", "an uncertainty below zero", "-2 mm")
refuse(unsure, "negative_u_temperature", "out_of_range", "/supports/1/pieces/0/u/temperature", "an uncertainty below zero", "-2.5 K")
refuse(unsure, "negative_u_material", "out_of_range", "/supports/0/pieces/0/material/u", "an uncertainty below zero", "-0.6 um/m/K")
refuse(spot, "below_absolute_zero", "out_of_range", "/supports/0/pieces/0/profile/0/running", "colder than absolute zero", "-300 degC")
refuse(three, "off_line", "conflict", "/supports/1/x", "the middle support grows 0.14 mm more than the ends say", "57 K", at="/supports/1/pieces/0/rise")
refuse(two, "no_unit", "malformed", "/supports/1/pieces/0/rise", "24 of what?", "24")
refuse(tape, "decimal_comma", "malformed", "/supports/0/x", "a decimal comma is not guessed at", "11,375 in")
refuse(two, "wrong_type", "malformed", "/supports/0/pieces/0/height", "a bare number", 355)
refuse(measured, "empty_text", "missing", "/supports/0/measured/by/horizontal", "a field that was left empty", "")
refuse(two, "other_quantity", "unknown", "/supports/0/pieces/0/rise", "a length where the rise belongs", "31 mm")
refuse(two, "coefficient_without_degree", "unknown", "/supports/1/pieces/0/material/expansion", "per K or per degree F?", "11.3 um/m")
refuse(three, "unknown_member", "unknown", "/weights", "supports are not weighted", "equal")
refuse(stack, "unknown_member_deep", "unknown", "/supports/0/pieces/2/grout", "what lies between the pieces is not known here", "20 mm")
refuse(aim, "no_movable", "missing", "/movable", "one machine alone gives no target")
refuse(aim, "no_stationary", "missing", "/stationary", "the stationary machine grows as well")
refuse(aim, "no_plane", "missing", "/stationary/horizontal", "growth in one plane only")
refuse(aim_u, "u_in_one_plane", "missing", "/movable/horizontal/u", "if one plane has u, both have")
refuse(aim_u, "negative_u", "out_of_range", "/stationary/vertical/u/slope", "an uncertainty below zero", "-0.04 mm/m")
refuse(aim, "no_unit", "malformed", "/movable/vertical/offset", "0.14 of what?", "0.14")
refuse(aim, "unknown_member", "unknown", "/cold", "a cold position has no place in its own target", "0 mm")
refuse(runs, "no_cold_position", "missing", "/cold", "where does the machine stand cold?")
refuse(runs, "no_movable", "missing", "/movable", "the growth of the movable machine is not there, and is not zero")
refuse(runs, "no_slope", "missing", "/stationary/vertical/slope", "a growth without its slope")
refuse(runs, "decimal_comma", "malformed", "/cold/vertical/offset", "a decimal comma", "-0,22 mm")
refuse(runs, "other_quantity", "unknown", "/movable/horizontal/slope", "an angle is no ratio", "0.06 mrad")
refuse(runs, "unknown_member", "unknown", "/hours", "how long it has run is not known here", 8)

AREA.save()
