"""Centrelines of a train: the way from joint to joint, and the same as a system of equations in pari-gp."""

import subprocess

from common import *

PLANES = ("horizontal", "vertical")
U = [(p, q) for p in PLANES for q in ("offset", "slope")]  # the order of correlations
EXCHANGED = {("horizontal", "offset"): 1, ("horizontal", "slope"): -1, ("vertical", "offset"): -1, ("vertical", "slope"): 1}


def value(j, key, n, slip=""):
    return (slope if n[1] == "slope" else lambda q: measure(q, slip))(j[key][n[0]][n[1]])


def covariance(j, slip):
    """The 4x4 covariance of what was found, exact; None where it states none."""
    found = j["found"]
    if "u" not in found["horizontal"]:
        return None
    u = [(slope if q == "slope" else lambda t: measure(t, slip))(found[p]["u"][q]) for p, q in U]
    r = found.get("correlation") if slip != "correlation_ignored" else None
    return [[u[a] * u[b] * (F(str(r[a][b])) if r else F(a == b)) for b in range(4)] for a in range(4)]


def joints(input, slip=""):
    """Of each joint: x, the four numbers, covariance; as seen from the last machine."""
    found = []
    for j in input["joints"]:
        sign = {n: 1 for n in U}
        if j.get("seen_from") == "first" and slip != "seen_from_ignored":
            sign = EXCHANGED if slip != "exchange_forgotten" else {n: -1 if n in (("horizontal", "offset"), ("vertical", "offset")) else 1 for n in U}
        if slip == "relative_reversed":
            sign = {n: -s for n, s in sign.items()}
        w = [sign[n] * (value(j, "found", n, slip) - (value(j, "target", n, slip) if slip == "target_taken_off" and "target" in j else 0)) for n in U]
        v = covariance(j, slip)
        if v:
            v = [[sign[U[a]] * sign[U[b]] * v[a][b] for b in range(4)] for a in range(4)]
        found.append((measure(j["at"], slip), w, v))
    return found


def centrelines(input, slip=""):
    """Each machine's four numbers along the x of the train, and their uncertainties."""
    names = [m["name"] for m in input["machines"]]
    r = names.index(input["reference"]) if "reference" in input and slip != "reference_ignored" else 0
    all_joints = joints(input, slip)
    stated = any(v for _, _, v in all_joints)
    places = []
    for i in range(len(names)):
        between = all_joints[r:i] if i >= r else all_joints[i:r]
        if slip == "last_joint_only" and between:
            between = between[-1:] if i >= r else between[:1]
        total, cov, straight = [F(0)] * 4, [[F(0)] * 4 for _ in range(4)], [mpf(0)] * 4
        for x, w, v in between:
            x = 0 if slip == "slope_not_carried" else -x if slip == "at_sign" else x
            jac = [[1, -x, 0, 0], [0, 1, 0, 0], [0, 0, 1, -x], [0, 0, 0, 1]]
            if slip == "u_not_carried":
                used = [[F(a == b) for b in range(4)] for a in range(4)]
            else:
                used = jac
            step = [sum(jac[a][b] * w[b] for b in range(4)) for a in range(4)]
            total = [t + (s if i >= r else -s) for t, s in zip(total, step)]
            if v:
                jv = [[sum(used[a][c] * v[c][d] * used[b][d] for c in range(4) for d in range(4)) for b in range(4)] for a in range(4)]
                cov = [[cov[a][b] + jv[a][b] for b in range(4)] for a in range(4)]
                straight = [t + mp.sqrt(big(jv[a][a])) for a, t in enumerate(straight)]
        u = straight if slip == "added_straight" else [mp.sqrt(big(cov[a][a])) for a in range(4)]
        places.append((names[i], total, u if stated and i != r else None))
    return places


def by_gp(input):
    """All lines at once: w = D y, where D takes lines to what is found at the joints; covariances through the inverse of D."""
    names = [m["name"] for m in input["machines"]]
    r = names.index(input["reference"]) if "reference" in input else 0
    own = [i for i in range(len(names)) if i != r]
    all_joints = joints(input)
    n = 4 * len(own)
    d = [[F(0)] * n for _ in range(n)]
    for k, (x, _, _) in enumerate(all_joints):
        for i, s in ((k, -1), (k + 1, 1)):
            if i != r:
                c = 4 * own.index(i)
                for q in range(4):
                    d[4 * k + q][c + q] += s
                    if q % 2 == 0:
                        d[4 * k + q][c + q + 1] += s * x
    w = [v for _, four, _ in all_joints for v in four]
    cov = [[F(0)] * n for _ in range(n)]
    for k, (_, _, v) in enumerate(all_joints):
        for a in range(4):
            for b in range(4):
                cov[4 * k + a][4 * k + b] = v[a][b] if v else F(0)
    script = "default(realprecision,60);\nd=%s;w=%s~;v=%s;y=matsolve(d,w);e=1/d;c=e*v*e~;print(Vec(y~*1.));print(vector(%d,k,sqrt(c[k,k])*1.))\n" % (
        gp_matrix(d), "[" + ",".join(map(str, w)) + "]", gp_matrix(cov), n)
    out_ = subprocess.run(["gp", "-q"], input=script, capture_output=True, text=True, check=True).stdout.split("\n")
    y, u = ([mpf(q.replace(" E", "e")) for q in line_.strip("[]").split(", ")] for line_ in out_[:2])
    return {names[i]: (y[4 * k:4 * k + 4], u[4 * k:4 * k + 4]) for k, i in enumerate(own)}


