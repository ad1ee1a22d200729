"""What came to verdict.json with 1.1.0: probabilities, and outcomes at a confidence or with a guard.

generate/verdict.py runs this before it saves; it is no program of its own.

What is left of position less target at an item is (y, z) with a 2 x 2 covariance. First way: the probability
within a circle by Green's theorem as an integral round it, whose integrand is periodic, by the trapezoidal rule with points
doubled until 30 digits stand; in one plane by erf, or Student's t by the hypergeometric series. Second way:
Cartesian, over y = limit sin t the density times what the other plane adds on condition of y; in one plane the density,
by mpmath's quadrature. Both agree to 25 digits of 1.

Mistakes, as in verdict.py; their probabilities are in double precision, which the flags (1000 tolerances, 1e-4) allow.
An integral round the circle in double precision must pass every tolerance at half its width.
"""

import math

import __main__ as old
from common import *

NEW = "1.1.0"
SECOND = "mpmath %s, 40 digits" % mpmath.__version__
WITHIN = F(1, 10**7)  # what a sound quadrature in double precision reaches
MISTAKES = ["first_order_length", "probability_of_each_plane", "planes_of_one_u", "planes_uncorrelated", "target_known", "one_sided_interval", "normal_for_student", "student_u_as_deviation",
            "sum_not_bound", "smallest_for_all", "confidence_each_item", "confidence_ignored", "undecided_as_outside", "outside_by_bound", "guard_ignored", "guard_added", "guard_once"]


# ---------------------------------------------------------------- numbers of 60 digits, and doubles

class Exact:
    num = staticmethod(big)
    sqrt, exp, cos, sin, pi = mp.sqrt, mp.exp, mp.cos, mp.sin, mp.pi
    erf = mp.erf

    @staticmethod
    def settled(left):
        return left < mpf(10) ** -32


class Double:
    num = staticmethod(float)
    sqrt, exp, cos, sin, pi, erf = math.sqrt, math.exp, math.cos, math.sin, math.pi, math.erf

    @staticmethod
    def settled(left):
        return left < 1e-11


# ---------------------------------------------------------------- first way

def in_circle(ctx, mean, V, limit, n=None):
    """Probability of (y, z) within a circle about zero. In coordinates of independent errors of size one,
    seen from the mean, the circle is an ellipse; the mass inside of radius r in a narrow sector d(phi) is F(r) d(phi)/2pi."""
    a = ctx.sqrt(V[0][0])
    b = V[0][1] / a
    c = ctx.sqrt(V[1][1] - b * b)
    step = lambda k, m: ring(ctx, 2 * ctx.pi * k / m, mean, (a, b, c), limit, n)
    m = 64
    total, sum = None, math.fsum if ctx is Double else mp.fsum
    inner = sum(step(k, m) for k in range(m))
    while True:
        before, total = total, inner / m
        if before is not None and ctx.settled(abs(total - before)):
            return total
        inner += sum(step(2 * k + 1, 2 * m) for k in range(m))
        m *= 2


def ring(ctx, t, mean, factor, limit, n):
    a, b, c = factor
    s, k = ctx.sin(t), ctx.cos(t)
    y, z = limit * k - mean[0], limit * s - mean[1]
    X, Y = y / a, (z - b * y / a) / c
    dX, dY = -limit * s / a, (limit * k + b * limit * s / a) / c
    r2 = X * X + Y * Y
    if r2 == 0:
        return (X * dY - Y * dX) * 0
    inside = 1 - (ctx.exp(-r2 / 2) if n is None else (1 + r2 / n) ** (-n / 2))
    return inside * (X * dY - Y * dX) / r2


def below(ctx, x, n=None):
    """Probability of at most x standard uncertainties."""
    if n is None:
        return (1 + ctx.erf(x / ctx.sqrt(2))) / 2
    if ctx is Double:
        return below_double(x, n)
    front = mp.exp(mp.loggamma((n + 1) / mpf(2)) - mp.loggamma(n / mpf(2))) / mp.sqrt(n * mp.pi)
    return mpf(1) / 2 + x * front * mp.hyp2f1(mpf(1) / 2, (n + 1) / mpf(2), mpf(3) / 2, -x * x / n)


def below_double(x, n):
    """Student's t by Simpson's rule in the angle atan(x/sqrt(n))."""
    end = math.atan(x / math.sqrt(n))
    f = [math.cos(end * i / 400) ** (n - 1) for i in range(401)]
    front = math.exp(math.lgamma((n + 1) / 2) - math.lgamma(n / 2)) / math.sqrt(math.pi)
    return 0.5 + front * end / 1200 * (f[0] + f[-1] + 4 * sum(f[1:-1:2]) + 2 * sum(f[2:-1:2]))


def in_interval(ctx, mean, v, limit, n=None):
    if v == 0:
        return ctx.num(int(abs(mean) <= limit))
    u = ctx.sqrt(v)
    return below(ctx, (limit - mean) / u, n) - below(ctx, (-limit - mean) / u, n)


def probability(ctx, item, n):
    """Of an item: in the plane that it names, or in both."""
    mean, V = [ctx.num(x) for x in item["mean"]], [[ctx.num(x) for x in row] for row in item["V"]]
    limit, n = ctx.num(item["limit"]), None if n is None else ctx.num(n)
    k = {"horizontal": 0, "vertical": 1, "both": None}[item["plane"]]
    if k is not None:
        return in_interval(ctx, mean[k], V[k][k], limit, n)
    if V[0][0] == 0 or V[1][1] == 0:  # one plane is known exactly and leaves a chord to the other
        k = 0 if V[0][0] else 1
        chord = limit**2 - mean[1 - k] ** 2
        return in_interval(ctx, mean[k], V[k][k], ctx.sqrt(chord), n) if chord > 0 else ctx.num(0)
    return in_circle(ctx, mean, V, limit, n)


# ---------------------------------------------------------------- second way

def second(item, n):
    mean, V = [big(x) for x in item["mean"]], [[big(x) for x in row] for row in item["V"]]
    limit, n = big(item["limit"]), None if n is None else big(n)
    k = {"horizontal": 0, "vertical": 1, "both": None}[item["plane"]]
    if k is None and (V[0][0] == 0 or V[1][1] == 0):
        k = 0 if V[0][0] else 1
        limit = mp.sqrt(limit**2 - mean[1 - k] ** 2)
    if k is not None:
        u = mp.sqrt(V[k][k])
        return integral(lambda x: density((x - mean[k]) / u, n) / u, mean[k], u, -limit, limit)
    u = mp.sqrt(V[0][0])
    slope, rest = V[0][1] / V[0][0], V[1][1] - V[0][1] ** 2 / V[0][0]

    def strip(t):  # y = limit sin t takes the root off the ends
        y = limit * mp.sin(t)
        chord, at = limit * mp.cos(t), mean[1] + slope * (y - mean[0])
        d = (y - mean[0]) / u
        w = mp.sqrt(rest * (1 if n is None else (n + d * d) / (n + 1)))
        m = None if n is None else n + 1
        return density(d, n) / u * chord * (below(Exact, (chord - at) / w, m) - below(Exact, (-chord - at) / w, m))

    # On beyond the ends the strip runs backwards: all round it is periodic, and counted twice.
    m, total = 32, None
    while True:
        before, total = total, mp.fsum(strip(2 * mp.pi * (k + mpf(1) / 3) / m) for k in range(m)) * mp.pi / m
        if before is not None and abs(total - before) < mpf(10) ** -27:
            return total
        m *= 2


def density(x, n):
    if n is None:
        return mp.exp(-x * x / 2) / mp.sqrt(2 * mp.pi)
    return mp.exp(mp.loggamma((n + 1) / 2) - mp.loggamma(n / 2)) / mp.sqrt(n * mp.pi) * (1 + x * x / n) ** (-(n + 1) / 2)


def integral(f, middle, u, low, high):
    cuts = {low, high} | {middle + s * u * mpf(2) ** k for k in range(-2, 12) for s in (-1, 1)} | {middle}
    return mp.quad(f, sorted(c for c in cuts if low <= c <= high))


# ---------------------------------------------------------------- judging

def bare(input):
    """The input without uncertainties, as verdict.py judges it."""
    new = {k: v for k, v in input.items() if k not in ("dof", "probability", "guard")}
    for name in ("position", "target"):
        if name in new:
            new[name] = {p: {k: x for k, x in new[name][p].items() if k != "u"} for p in ("horizontal", "vertical")}
    return new


def spread(input, mistake):
    """Covariance of position less target, 4 x 4."""
    v = old.covariance(input["position"])
    if "target" in input and mistake != "target_known":
        w = old.covariance(input["target"])
        v = [[a + b for a, b in zip(*rows)] for rows in zip(v, w)] if w else v
    return v


def left(input, mistake):
    """Position less target."""
    p, t = old.numbers(input["position"], mistake), [F(0)] * 4
    if "target" in input and mistake != "target_ignored":
        t = old.numbers(input["target"], mistake)
    return [a + b if mistake == "target_added" else a - b for a, b in zip(p, t)]


def assess(input, mistake=None):
    """Items with what verdict.py finds, and with u, mean and V; the outcome by what is asked."""
    answer = old.judge(bare(input), mistake)
    x, v = left(input, mistake), spread(input, mistake)
    if mistake == "feet_uncorrelated":
        v = [[v[a][b] if a == b else F(0) for b in range(4)] for a in range(4)]
    rows = {of: ab for of, _, ab in old.sought(input, mistake)}
    for item in answer["items"]:
        a, b = rows[item["of"]]
        item["found"] = abs(item["found"])  # a size
        item["mean"] = (a * x[0] + b * x[1], a * x[2] + b * x[3])
        J = [[a, b, 0, 0], [0, 0, a, b]]
        item["V"] = [[sum(J[i][k] * v[k][m] * J[j][m] for k in range(4) for m in range(4)) for j in (0, 1)] for i in (0, 1)]
        y, z = item["mean"]
        along = {"horizontal": (1, 0), "vertical": (0, 1), "both": (y, z)}[item["plane"]]
        size = old.root(F(along[0]) ** 2 + F(along[1]) ** 2)
        if size:
            full = spread(input, None if mistake == "target_known" else mistake)  # that mistake is one of probabilities
            direction = [big(along[0]) / size * a, big(along[0]) / size * b, big(along[1]) / size * a, big(along[1]) / size * b]
            item["u"] = old.uncertainty(direction, full, mistake)
    return answer


def chance(item, n, mistake, ctx):
    """Probability of an item within its limit, with the mistakes that are made there."""
    if mistake == "normal_for_student":
        n = None
    V = item["V"]
    if mistake == "student_u_as_deviation" and n is not None and n > 2:
        V = [[x * (n - 2) / n for x in row] for row in V]
    if item["plane"] == "both" and mistake == "planes_uncorrelated":
        V = [[V[0][0], F(0)], [F(0), V[1][1]]]
    if item["plane"] == "both" and mistake == "planes_of_one_u":
        V = [[(V[0][0] + V[1][1]) / 2, F(0)], [F(0), (V[0][0] + V[1][1]) / 2]]
    item = {**item, "V": V}
    if item["plane"] == "both" and mistake == "first_order_length":
        u = item.get("u") or mp.sqrt(big(max(V[0][0], V[1][1])))
        return below(ctx, (ctx.num(item["limit"]) - ctx.num(item["found"])) / ctx.num(u), n if n is None else ctx.num(n))
    if item["plane"] == "both" and mistake == "probability_of_each_plane":
        return probability(ctx, {**item, "plane": "horizontal"}, n) * probability(ctx, {**item, "plane": "vertical"}, n)
    if item["plane"] != "both" and mistake == "one_sided_interval":
        k = int(item["plane"] == "vertical")
        return below(ctx, (ctx.num(item["limit"]) - abs(ctx.num(item["mean"][k]))) / ctx.sqrt(ctx.num(V[k][k])), n if n is None else ctx.num(n))
    return probability(ctx, item, n)


def decide(input, mistake=None, ctx=Exact):
    """The whole answer."""
    answer = assess(input, mistake)
    n = F(str(input["dof"])) if "dof" in input else None
    for item in answer["items"]:
        item["p"] = chance(item, n, mistake, ctx)
    ps = [i["p"] for i in answer["items"]]
    answer["at_least"] = max(ctx.num(0), 1 - sum(1 - p for p in ps))
    if mistake == "sum_not_bound":
        answer["at_least"] = mp.fprod(ps) if ctx is Exact else math.prod(ps)
    if mistake == "smallest_for_all":
        answer["at_least"] = min(ps)
    if "probability" in input and mistake != "confidence_ignored":
        answer["outcome"] = at_confidence(ctx.num(F(str(input["probability"]))), ps, answer["at_least"], mistake)
        answer["governs"] = min(answer["items"], key=lambda i: i["p"])
    elif "guard" in input or mistake == "guarded_by_u":
        g = F(str(input.get("guard", 0)))
        g = {"guard_ignored": 0, "guard_added": -g, "guard_once": min(g, 1), "guarded_by_u": g + 1}.get(mistake, g)
        answer["outcome"] = guarded_by(answer["items"], g, mistake)
        answer["governs"] = max(answer["items"], key=lambda i: (big(i["found"]) + big(g) * i.get("u", 0)) / big(i["limit"]))
    return answer


def guarded_by(items, g, mistake):
    if mistake == "guard_added":
        return "outside" if any(over(i, g, mistake) for i in items) else "within"
    if any(over(i, 0, mistake) for i in items):
        return "outside"
    if any(over(i, g, mistake) for i in items):
        return "outside" if mistake == "undecided_as_outside" else "undecided"
    return "within"


def at_confidence(c, ps, bound, mistake):
    reached = all(p >= c for p in ps) if mistake == "confidence_each_item" else bound >= c
    if reached:
        return "within"
    failed = bound <= 1 - c if mistake == "outside_by_bound" else any(p <= 1 - c for p in ps)
    return "outside" if failed or mistake == "undecided_as_outside" else "undecided"


def over(item, g, mistake):
    reach = big(item["limit"]) - big(g) * item.get("u", 0)  # nothing found has no direction and no u
    found, allowed = old.steps(item["found"], item["of"], mistake or "x"), int(mp.nint(reach / big(old.step(item["of"]))))
    if mistake is None:
        n = big(reach) / big(old.step(item["of"]))
        assert abs(n - mp.floor(n) - mpf(1) / 2) > mpf("1e-3"), "on half a step"
    if mistake == "limit_stretched":
        return found > allowed * (1 + F(1, 10**4))
    return found >= allowed if mistake == "limit_excluded" else found > allowed


def write(answer, guarded):
    """The answer as the suite holds it; limit and ratio are of the limit as it is given, with a guard too."""
    items = []
    for i in answer["items"]:
        unit = old.unit(i["of"])
        item = {"of": i["of"], "plane": i["plane"], "found": out(i["found"], unit), "limit": out(i["limit"], unit), "ratio": out(i["ratio"], "")}
        if "u" in i:
            item["u"] = out(i["u"], unit)
        items.append({**item, "probability": out(mpf(i["p"]), "")})
    return {"outcome": answer["outcome"], "governs": {k: answer["governs"][k] for k in ("of", "plane")}, "items": items, "at_least": out(mpf(answer["at_least"]), "")}


def tolerances(input, answer, guarded):
    """verdict.py's, and those of the quadratures; at_least adds up as many as there are items."""
    items = answer["items"]
    if all("u" in i for i in items):
        held = old.tolerances(input, answer, False)
    else:  # nothing was found in one, and no u is held
        held = old.tolerances(bare(input), {**answer, "items": [{k: x for k, x in i.items() if k != "u"} for i in items]}, False)
    held["/items/*/probability"] = {"within": short(big(WITHIN), ""), "reason": "quadrature"}
    held["/at_least"] = {"within": short(big(WITHIN) * len(items), ""), "reason": "quadrature"}
    return held


def put(id, region, about, position, limits, target=None, span=None, source=None, since=NEW, **more):
    """Adds a vector of judge; more is dof, confidence, guard."""
    input = {"position": position, **({"target": target} if target else {}), "limits": limits, **({"coupling": {"span": span}} if span else {}), **more}
    answer = decide(input)
    n = F(str(input["dof"])) if "dof" in input else None
    for item in answer["items"]:
        with mp.workdps(40):
            other = second(item, n)
        assert abs(other - item["p"]) < mpf(10) ** -25, (id, item["of"], item["plane"], item["p"], other)
    rough = decide(input, None, Double)
    assert rough["outcome"] == answer["outcome"], id
    for a, b in zip(answer["items"], rough["items"]):
        assert abs(a["p"] - b["p"]) < float(WITHIN) / 2, (id, a["p"], b["p"])
    if "probability" in input:  # an outcome must not hang on the digits of a quadrature
        c = F(str(input["probability"]))
        assert abs(answer["at_least"] - big(c)) > 1e-5 and all(abs(i["p"] - big(1 - c)) > 1e-5 for i in answer["items"]), id
    ratios = sorted(i["ratio"] for i in answer["items"])
    assert len(ratios) == 1 or ratios[-1] > ratios[-2] * F(1001, 1000), "a tie: " + id
    guarded = "guard" in input
    result, tolerance = write(answer, guarded), tolerances(input, answer, guarded)
    if any("u" not in i for i in result["items"]):  # nothing found has no direction
        for i in result["items"]:
            i.pop("u", None)
    flags = []
    for mistake in old.MISTAKES + MISTAKES:
        try:
            wrong = write(decide(input, mistake, Double), guarded)
            if differs(result, wrong, tolerance):
                flags.append(mistake)
        except KeyError:
            flags.append(mistake)
    source = source or {"kind": "multi_precision", "by": "%s: probabilities round the circle by Green's theorem, in one plane by erf or a series" % MPMATH,
                        "second": "Cartesian quadrature of the density with %s: 25 digits agree" % SECOND}
    return old.AREA.add(id, "judge", region, flags, about, source, input, result, tolerance, since=since)


# ---------------------------------------------------------------- vectors

REGIONS = {
    "probability": ("plain", "the probability of each item, and of all"),
    "probability_target": ("plain", "the same with a target that is uncertain as well"),
    "probability_out": ("plain", "the same outside a limit"),
    "probability_per_plane": ("plain", "the same where each plane is judged by itself"),
    "probability_spacer": ("plain", "the same at the flex planes"),
    "probability_student": ("plain", "uncertainties of few degrees of freedom"),
    "student_per_plane": ("plain", "the same in each plane by itself"),
    "student_spacer": ("plain", "the same at the flex planes"),
    "confidence_within": ("plain", "within at a confidence"),
    "confidence_outside": ("plain", "outside at a confidence"),
    "confidence_undecided": ("plain", "inside the limits, and undecided at a confidence"),
    "confidence_undecided_out": ("plain", "outside a limit, and undecided at a confidence"),
    "confidence": ("plain", "confidences where each plane is judged by itself, and with few degrees of freedom"),
    "guard_within": ("plain", "within limits drawn in by so many uncertainties"),
    "guard": ("plain", "limits drawn in by so many uncertainties"),
    "published_one_sided": ("plain", "numbers of a published guide, one limit"),
    "published_two_sided": ("plain", "a number of a published guide, two limits"),
    "probability_small_u": ("hard", "limits many uncertainties wide"),
    "probability_edge": ("hard", "exactly on the limit: one half, less what the edge curves"),
    "probability_large_u": ("hard", "uncertainties many limits wide"),
    "probability_centre": ("hard", "nothing left, and yet not certain"),
    "probability_centre_target": ("hard", "the same with an uncertain target"),
    "probability_ridge": ("hard", "errors of the two planes that all but go together"),
    "probability_ridge_edge": ("hard", "errors that all but cancel, past the edge of the circle"),
    "probability_far_out": ("hard", "three limits off"),
    "probability_one_exact": ("hard", "one plane known exactly"),
    "probability_two_fifths": ("hard", "within in each plane, hardly so together"),
    "student_one": ("hard", "one degree of freedom, whose tails go on for ever"),
    "student_ridge": ("hard", "Student's t with errors that go together"),
    "student_odd": ("hard", "degrees of freedom that are no whole number"),
    "bound_zero": ("hard", "probabilities that add up to nothing"),
    "confidence_edge": ("hard", "items that come to the confidence, and all together do not"),
    "confidence_edge_planes": ("hard", "the same with four items"),
    "confidence_edge_spacer": ("hard", "the same at the flex planes, with an uncertain target"),
    "confidence_bound_low": ("hard", "a bound of nothing that proves no item to be out"),
    "guard_spacer": ("hard", "a guard at the flex planes, with errors that belong together"),
    "guard_target": ("hard", "a guard where the target is uncertain as well"),
    "guard_on_limit": ("hard", "exactly on a limit that a guard has drawn in"),
    "guard_all": ("hard", "a guard that takes the whole limit"),
    "probability_sliver": ("hard", "exactly on the limit, with errors that lie on a line: a quadrature of few points agrees with itself and is wrong"),
    "probability_sliver_student": ("hard", "the same with few degrees of freedom"),
}
INVALID = {
    "dof_zero": "no degrees of freedom", "dof_negative": "degrees of freedom below zero", "dof_text": "degrees of freedom as text",
    "confidence_half": "a confidence of one half", "confidence_one": "certainty", "confidence_percent": "per cent where a part of one belongs", "confidence_low": "a confidence below one half",
    "guard_negative": "a guard below zero", "guard_text": "a guard with a unit", "confidence_text": "a confidence as text", "probability_asked": "a member that is not known beside the confidence"}


def correlation(hv_offset=0, own=0, hv_slope=None):
    """own: of offset and slope in each plane; hv: of the two planes."""
    hv_slope = hv_offset if hv_slope is None else hv_slope
    return [[1, own, hv_offset, 0], [own, 1, 0, hv_slope], [hv_offset, 0, 1, own], [0, hv_slope, own, 1]]


def probabilities():
    at, limits = old.at, old.limits
    put("probability", "probability", "two items, each with its probability; both together at least so much",
            at("0.022 mm", "-0.21 mm/m", "-0.027 mm", "0.16 mm/m", ("0.012 mm", "0.09 mm/m", "0.018 mm", "0.14 mm/m")), limits("0.06 mm", "0.5 mm/m"))
    put("probability-target", "probability_target", "the target is uncertain as well", at("0.31 mm", "0.5 mm/m", "-0.22 mm", "0.66 mm/m", ("0.016 mm", "0.06 mm/m", "0.011 mm", "0.1 mm/m")),
        limits("0.07 mm", "0.45 mm/m"), target=at("0.28 mm", "0.36 mm/m", "-0.25 mm", "0.42 mm/m", ("0.012 mm", "0.11 mm/m", "0.02 mm", "0.05 mm/m")))
    put("probability-out", "probability_out", "outside, though two times in five it would not be", at("1.9 mil", "0.2 mil/in", "-1.2 mil", "0.3 mil/in", ("0.9 mil", "0.08 mil/in", "0.5 mil", "0.11 mil/in")), limits("2 mil", "0.5 mil/in"))
    put("probability-per-plane", "probability_per_plane", "four items, each an interval with two ends", at("0.031 mm", "0.12 mm/m", "-0.038 mm", "-0.27 mm/m", ("0.03 mm", "0.2 mm/m", "0.025 mm", "0.3 mm/m")),
                 limits("0.05 mm", "0.4 mm/m", per_plane=True))
    put("probability-flex-per-plane", "probability_per_plane", "at the flex planes, offset and slope from one fit", at("0.3 mm", "0.25 mm/m", "-0.18 mm", "0.42 mm/m", ("0.12 mm", "0.2 mm/m", "0.09 mm", "0.15 mm/m"), correlation(0, -0.7)),
        limits(flex="0.6 mm/m", per_plane=True), span="680 mm")
    put("probability-spacer", "probability_spacer", "the tilts at both ends of a spacer", at("0.24 mm", "0.36 mm/m", "-0.31 mm", "0.2 mm/m", ("0.09 mm", "0.12 mm/m", "0.14 mm", "0.2 mm/m")), limits(flex="0.7 mm/m"), span="820 mm")
    put("probability-spacer-correlated", "probability_spacer", "offset and slope from one fit, the planes with a clock in common", at("-0.2 mm", "0.5 mm/m", "0.36 mm", "-0.3 mm/m", ("0.11 mm", "0.25 mm/m", "0.08 mm", "0.18 mm/m"), correlation(0.4, -0.5)),
        limits(flex="0.8 mm/m"), span="36 in", target=at("0.05 mm", "0.1 mm/m", "0 mm", "0 mm/m"))
    student = put("student", "probability_student", "four degrees of freedom: wider tails than a normal distribution has",
                  at("0.018 mm", "0.22 mm/m", "0.035 mm", "-0.14 mm/m", ("0.014 mm", "0.1 mm/m", "0.01 mm", "0.13 mm/m")), limits("0.065 mm", "0.5 mm/m"), dof=4)
    put("student-per-plane", "student_per_plane", "three degrees of freedom, each plane by itself", at("0.042 mm", "0.1 mm/m", "0.012 mm", "0.3 mm/m", ("0.03 mm", "0.22 mm/m", "0.02 mm", "0.16 mm/m")), limits("0.055 mm", "0.5 mm/m", per_plane=True), dof=3)
    put("student-spacer", "student_spacer", "seven degrees of freedom at the flex planes", at("0.5 mm", "-0.4 mm/m", "0.2 mm", "0.3 mm/m", ("0.15 mm", "0.2 mm/m", "0.1 mm", "0.3 mm/m"), correlation(0.3, 0.6)), limits(flex="0.9 mm/m"), span="740 mm", dof=7)

    sure = put("confidence-within", "confidence_within", "95 % sure that all is within", at("0.012 mm", "0.11 mm/m", "-0.017 mm", "0.2 mm/m", ("0.009 mm", "0.07 mm/m", "0.012 mm", "0.1 mm/m")), limits("0.06 mm", "0.55 mm/m"), probability=0.95)
    put("confidence-undecided", "confidence_undecided", "inside every limit, but not known well enough", at("0.029 mm", "0.24 mm/m", "-0.035 mm", "0.31 mm/m", ("0.015 mm", "0.09 mm/m", "0.012 mm", "0.12 mm/m")), limits("0.06 mm", "0.55 mm/m"), probability=0.95)
    put("confidence-undecided-out", "confidence_undecided_out", "outside a limit, but not known well enough to say so", at("0.049 mm", "0.14 mm/m", "-0.051 mm", "0.21 mm/m", ("0.015 mm", "0.06 mm/m", "0.018 mm", "0.08 mm/m")), limits("0.06 mm", "0.5 mm/m"), probability=0.9)
    put("confidence-outside", "confidence_outside", "99 % sure that the slope is out", at("0.011 mm", "0.61 mm/m", "0.02 mm", "-0.57 mm/m", ("0.01 mm", "0.06 mm/m", "0.01 mm", "0.08 mm/m")), limits("0.06 mm", "0.5 mm/m"), probability=0.99)
    put("confidence-per-plane", "confidence", "four items at 80 %", at("0.02 mm", "0.1 mm/m", "-0.024 mm", "-0.19 mm/m", ("0.015 mm", "0.12 mm/m", "0.014 mm", "0.11 mm/m")), limits("0.06 mm", "0.5 mm/m", per_plane=True), probability=0.8)
    put("confidence-student", "confidence", "sure with a normal distribution, undecided with three degrees of freedom", at("0.015 mm", "0.1 mm/m", "0.02 mm", "-0.12 mm/m", ("0.011 mm", "0.09 mm/m", "0.012 mm", "0.1 mm/m")), limits("0.06 mm", "0.5 mm/m"), probability=0.95, dof=3)
    guard = put("guard-within", "guard_within", "1.64 uncertainties off each limit, and still within", at("0.021 mm", "0.12 mm/m", "-0.025 mm", "0.18 mm/m", ("0.008 mm", "0.06 mm/m", "0.01 mm", "0.05 mm/m")), limits("0.055 mm", "0.5 mm/m"), guard=1.64)
    put("guard-outside", "guard", "within the limits, but not within what the guard leaves of them: undecided", at("0.034 mm", "0.13 mm/m", "-0.03 mm", "0.19 mm/m", ("0.009 mm", "0.05 mm/m", "0.012 mm", "0.06 mm/m")), limits("0.055 mm", "0.5 mm/m"), guard=1.64)
    put("guard-per-plane", "guard", "two uncertainties, each plane by itself", at("0.4 mm", "0.3 mm/m", "-0.1 mm", "0.22 mm/m", ("0.06 mm", "0.08 mm/m", "0.05 mm", "0.07 mm/m")), limits(flex="0.8 mm/m", per_plane=True), span="900 mm", guard=2)
    put("guard-nothing", "guard", "a guard of nothing is simple acceptance", at("0.043 mm", "0.22 mm/m", "-0.021 mm", "0.3 mm/m", ("0.011 mm", "0.08 mm/m", "0.013 mm", "0.07 mm/m")), limits("0.052 mm", "0.5 mm/m"), guard=0)
    published()
    hard(at, limits)

    refuse(student, "dof_zero", "/dof", 0)
    refuse(student, "dof_negative", "/dof", -4)
    refuse(student, "dof_text", "/dof", "four", "malformed")
    refuse(sure, "confidence_half", "/probability", 0.5)
    refuse(sure, "confidence_one", "/probability", 1)
    refuse(sure, "confidence_percent", "/probability", 95)
    refuse(sure, "confidence_low", "/probability", 0.05)
    refuse(sure, "confidence_text", "/probability", "95 %", "malformed")
    refuse(guard, "guard_negative", "/guard", -1.64)
    refuse(guard, "guard_text", "/guard", "1.64 mm", "malformed")
    refuse(sure, "probability_asked", "/certainty", 0.95, "unknown")


def published():
    """JCGM 106: three items with two-sided limits, of which the first two stand so far from the lower one that it does not count."""
    def source(printed):
        return {"kind": "published", "by": "JCGM 106:2012, examples of conformance probability (inputs from memory, recomputed; set into lengths and slopes here)", "published": printed,
                "second": "erf with %s, quadrature of the density with %s: 25 digits agree" % (MPMATH, SECOND)}

    at, limits = old.at, old.limits
    v = put("jcgm-106-one-sided", "published_one_sided", "one limit counts: 0.07 below an upper one with u 0.05, and 19.7 inside a lower one with u 8.6", at("0.93 mm", "0 mm/m", "-0.9803 mm", "0 mm/m", ("0.05 mm", "0.1 mm/m", "8.6 um", "0.1 mm/m")),
            limits("1 mm", per_plane=True), source=source("0.919243 for y = -5.47, u = 0.05, upper limit -5.40; 0.989010 for y = 509.7, u = 8.6, lower limit 490"))
    prints(v, 0, "0.919243")
    prints(v, 1, "0.989010")
    v = put("jcgm-106-two-sided", "published_two_sided", "both limits count: 13.6 with u 1.8 between 12.5 and 16.3, as a position and a target in their middle", at("13.6 um", "0 mm/m", "14.4 um", "0 mm/m", ("1.8 um", "0.1 mm/m", "0.4 um", "0.1 mm/m")),
            limits("1.9 um", per_plane=True), target=at("14.4 um", "0 mm/m", "14.4 um", "0 mm/m"), source=source("0.662630 for y = 13.6, u = 1.8, limits 12.5 and 16.3"))
    prints(v, 0, "0.662630")


def prints(v, item, printed):
    p = mpf(v["result"]["items"][item]["probability"])
    assert abs(p - mpf(printed)) <= mpf("5e-7"), (v["id"], p)


def hard(at, limits):
    put("small-u", "probability_small_u", "ten uncertainties to the limit, seven from it", at("0.018 mm", "0.05 mm/m", "0.006 mm", "-0.02 mm/m", ("0.006 mm", "0.05 mm/m", "0.0059 mm", "0.06 mm/m")), limits("0.06 mm", "0.5 mm/m"))
    put("small-u-edge", "probability_edge", "on the very edge: one half, and a little less by the edge's curve", at("0.036 mm", "0.24 mm/m", "0.048 mm", "0.32 mm/m", ("0.006 mm", "0.05 mm/m", "0.004 mm", "0.08 mm/m")), limits("0.06 mm", "0.5 mm/m"))
    put("large-u", "probability_large_u", "uncertainties of ten limits: hardly anything is known", at("0.02 mm", "0.1 mm/m", "-0.03 mm", "0.3 mm/m", ("0.6 mm", "4 mm/m", "0.45 mm", "5.5 mm/m")), limits("0.06 mm", "0.5 mm/m"))
    put("large-u-student", "probability_large_u", "the same in each plane, with five degrees of freedom", at("0.01 mm", "0.2 mm/m", "-0.025 mm", "0.35 mm/m", ("0.5 mm", "3 mm/m", "0.4 mm", "4.5 mm/m")), limits("0.055 mm", "0.45 mm/m", per_plane=True), dof=5)
    put("centre", "probability_centre", "exactly on target, with an uncertainty of half the limit: 1 - exp(-2) where both planes are alike", at("0 mm", "0.1 mm/m", "0 mm", "-0.1 mm/m", ("0.03 mm", "0.15 mm/m", "0.03 mm", "0.2 mm/m")), limits("0.06 mm", "0.5 mm/m"))
    put("centre-target", "probability_centre_target", "0.3 less 0.3 mm, planes of different uncertainty, both uncertain", at("0.3 mm", "0.2 mm/m", "-0.7 mm", "0.3 mm/m", ("0.02 mm", "0.1 mm/m", "0.05 mm", "0.2 mm/m"), correlation(-0.6)), limits("0.07 mm", "0.55 mm/m"),
        target=at("300 um", "0.1 mm/m", "-0.07 cm", "0.05 mm/m", ("0.015 mm", "0.05 mm/m", "0.01 mm", "0.1 mm/m")))
    put("ridge", "probability_ridge", "a correlation of 0.999: errors lie on a line", at("0.02 mm", "0.15 mm/m", "0.025 mm", "0.1 mm/m", ("0.03 mm", "0.2 mm/m", "0.04 mm", "0.25 mm/m"), correlation(0.999)), limits("0.06 mm", "0.5 mm/m"))
    put("ridge-against", "probability_ridge_edge", "-0.999, the line passes the circle's edge", at("0.035 mm", "0.25 mm/m", "0.04 mm", "0.3 mm/m", ("0.03 mm", "0.25 mm/m", "0.03 mm", "0.2 mm/m"), correlation(-0.999)), limits("0.06 mm", "0.5 mm/m"))
    put("far-out", "probability_far_out", "three limits off, and so uncertain that it may be within", at("0.15 mm", "0.9 mm/m", "-0.1 mm", "-1.2 mm/m", ("0.08 mm", "0.6 mm/m", "0.06 mm", "0.7 mm/m")), limits("0.06 mm", "0.5 mm/m"))
    put("one-exact", "probability_one_exact", "the horizontal plane is known exactly: the circle leaves a chord", at("0.036 mm", "0.2 mm/m", "0.02 mm", "0.1 mm/m", ("0 mm", "0 mm/m", "0.03 mm", "0.2 mm/m")), limits("0.06 mm", "0.5 mm/m"))
    put("two-fifths-u", "probability_two_fifths", "0.9 of the limit in each plane: likely within in each, unlikely together", at("0.054 mm", "0.1 mm/m", "-0.054 mm", "0.1 mm/m", ("0.004 mm", "0.06 mm/m", "0.004 mm", "0.06 mm/m")), limits("0.06 mm", "0.4 mm/m"), probability=0.9)
    put("student-one", "student_one", "u from two readings of each", at("0.02 mm", "0.12 mm/m", "-0.015 mm", "0.2 mm/m", ("0.01 mm", "0.06 mm/m", "0.012 mm", "0.08 mm/m")), limits("0.06 mm", "0.5 mm/m"), dof=1)
    put("student-one-plane", "student_one", "the same in each plane: 2 atan(x)/pi", at("0 mm", "0 mm/m", "0.03 mm", "-0.2 mm/m", ("0.02 mm", "0.2 mm/m", "0.015 mm", "0.1 mm/m")), limits("0.06 mm", "0.5 mm/m", per_plane=True), dof=1)
    put("student-ridge", "student_ridge", "0.99 and two degrees of freedom", at("0.025 mm", "0.2 mm/m", "-0.01 mm", "0.15 mm/m", ("0.02 mm", "0.1 mm/m", "0.025 mm", "0.2 mm/m"), correlation(0.99)), limits("0.06 mm", "0.5 mm/m"), dof=2)
    put("student-odd", "student_odd", "6.5 degrees of freedom, as Welch and Satterthwaite give them", at("0.025 mm", "0.2 mm/m", "-0.03 mm", "0.15 mm/m", ("0.016 mm", "0.11 mm/m", "0.019 mm", "0.14 mm/m")), limits("0.06 mm", "0.5 mm/m"), dof=6.5)
    put("bound-zero", "bound_zero", "four items of a third each: at least nothing, not less", at("0.06 mm", "0.5 mm/m", "-0.07 mm", "0.55 mm/m", ("0.03 mm", "0.2 mm/m", "0.04 mm", "0.3 mm/m")), limits("0.05 mm", "0.4 mm/m", per_plane=True), probability=0.95)
    put("confidence-edge", "confidence_edge", "each item comes to 98 %, their bound does not", at("0.018 mm", "0.15 mm/m", "-0.021 mm", "0.18 mm/m", ("0.013 mm", "0.1 mm/m", "0.014 mm", "0.11 mm/m")), limits("0.06 mm", "0.5 mm/m"), probability=0.98)
    put("confidence-edge-planes", "confidence_edge_planes", "four items of 95 % make a bound of 81 %", at("0.021 mm", "0.15 mm/m", "-0.024 mm", "0.19 mm/m", ("0.024 mm", "0.2 mm/m", "0.022 mm", "0.18 mm/m")), limits("0.06 mm", "0.5 mm/m", per_plane=True), probability=0.9)
    put("confidence-edge-spacer", "confidence_edge_spacer", "both flex planes come to it, both together do not", at("0.12 mm", "0.42 mm/m", "-0.06 mm", "-0.55 mm/m", ("0.05 mm", "0.27 mm/m", "0.06 mm", "0.3 mm/m"), correlation(0.2, 0)), limits(flex="0.8 mm/m"),
        target=at("0.1 mm", "0.1 mm/m", "-0.05 mm", "-0.1 mm/m", ("0.03 mm", "0.08 mm/m", "0.04 mm", "0.06 mm/m")), span="780 mm", probability=0.9978)
    put("confidence-bound-low", "confidence_bound_low", "the bound is nothing, and yet neither item is surely out", at("0.062 mm", "0.47 mm/m", "-0.011 mm", "0.2 mm/m", ("0.02 mm", "0.2 mm/m", "0.02 mm", "0.22 mm/m")), limits("0.06 mm", "0.5 mm/m"), probability=0.8)
    put("guard-spacer", "guard_spacer", "three uncertainties at the flex planes, where those of offset and slope belong together", at("0.38 mm", "0.4 mm/m", "-0.1 mm", "0.24 mm/m", ("0.06 mm", "0.1 mm/m", "0.05 mm", "0.09 mm/m"), correlation(0.1, -0.4)), limits(flex="0.8 mm/m"), span="900 mm", guard=3)
    put("guard-target", "guard_target", "two uncertainties, to which the target adds its own", at("0.052 mm", "0.24 mm/m", "-0.021 mm", "0.22 mm/m", ("0.006 mm", "0.05 mm/m", "0.008 mm", "0.06 mm/m")), limits("0.05 mm", "0.5 mm/m"),
        target=at("0.02 mm", "0 mm/m", "0.005 mm", "0.03 mm/m", ("0.003 mm", "0.02 mm/m", "0.004 mm", "0.03 mm/m")), guard=2)
    put("confidence-edge-bound", "confidence_edge", "no item is surely out, though the bound on all is low", at("0.055 mm", "0.45 mm/m", "-0.058 mm", "0.49 mm/m", ("0.02 mm", "0.2 mm/m", "0.03 mm", "0.22 mm/m")), limits("0.06 mm", "0.5 mm/m", per_plane=True), probability=0.75)
    put("guard-on-limit", "guard_on_limit", "0.08 less twice 0.01 mm is 0.06, and 0.06 stands on it", at("0.06 mm", "0.1 mm/m", "-0.03 mm", "0.2 mm/m", ("0.01 mm", "0.05 mm/m", "0.012 mm", "0.06 mm/m")), limits("0.08 mm", "0.6 mm/m", per_plane=True), guard=2)
    put("guard-over", "guard_on_limit", "a nanometre more is undecided", at("0.020001 mm", "0.1 mm/m", "0.055001 mm", "0.22 mm/m", ("0.008 mm", "0.04 mm/m", "0.01 mm", "0.05 mm/m")), limits("0.07 mm", "0.6 mm/m", per_plane=True), guard=1.5)
    put("guard-all", "guard_all", "three uncertainties are more than the limit: nothing passes, however good", at("0.003 mm", "0.02 mm/m", "-0.004 mm", "0.03 mm/m", ("0.025 mm", "0.06 mm/m", "0.022 mm", "0.07 mm/m")), limits("0.06 mm", "0.5 mm/m"), guard=3)
    put("sliver-long", "probability_sliver", "on the edge, and ten limits uncertain along a line that is within half a degree of it", at("0.048 mm", "0.1 mm/m", "0.014 mm", "0.2 mm/m", ("0.5 mm", "0.15 mm/m", "0.005 mm", "0.1 mm/m"), correlation(0.9999, 0, 0)), limits("0.05 mm", "0.5 mm/m"), since="1.3.0")
    put("sliver-student", "probability_sliver_student", "on the edge, a fifth of the limit uncertain along a line: less than one half by a sliver", at("0.03 mm", "0.12 mm/m", "0.04 mm", "-0.2 mm/m", ("0.01 mm", "0.1 mm/m", "0.01 mm", "0.12 mm/m"), correlation(0.9999, 0, 0)), limits("0.05 mm", "0.5 mm/m"), dof=4, since="1.3.0")


def refuse(twin, region, path, value, code="out_of_range"):
    old.AREA.refuse(region.replace("_", "-"), twin, region, code, path, changed(twin["input"], path, value), INVALID[region], since=NEW)


def extend():
    old.AREA.regions.update({**REGIONS, **{name: ("invalid", about) for name, about in INVALID.items()}})
    probabilities()
