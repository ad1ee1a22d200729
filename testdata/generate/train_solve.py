"""Programs for plans of moves: linear ones and one of least squares, in exact fractions, with cuts as they are needed.

    from train_solve import *

Both methods start from a point that is best without most of the rows and take rows in as they are violated. With fractions
they are exact. Where circles are cut from outside the numbers are decimals of 70 digits, and what is smaller than TINY counts as nothing.
"""

from decimal import Decimal, getcontext

from common import F

getcontext().prec = 70


def wide(x):
    """A fraction as a decimal of 70 digits."""
    return Decimal(x.numerator) / Decimal(x.denominator)


TINY = {F: 0, wide: Decimal("1e-45")}  # by the kind of numbers that is computed with
BOX = 10**9  # mm; wider than any move, so that a program has a vertex to start from


def dot(a, b): return sum(x * y for x, y in zip(a, b) if x and y)


def convert(rows, num): return [([num(v) if v else 0 for v in a], num(b)) for a, b in rows]


def least(cost, rows, more=lambda x: [], num=F):
    """Minimises cost . x over a . x <= b for all rows (a, b), by the dual simplex method, in the end with Bland's rule.

    more gives further rows that x violates, until there are none. The answer is x, or None if there is none.
    """
    n, tiny = len(cost), TINY[num]
    one = lambda k, s: [num(F(s)) if j == k else 0 for j in range(n)]
    signs = [-1 if c > 0 else 1 for c in cost]
    rows = [(one(k, signs[k]), num(F(BOX))) for k in range(n)] + convert(rows, num)
    basis, inverse, y = list(range(n)), [one(k, signs[k]) for k in range(n)], [num(F(abs(c))) for c in cost]
    steps = 0
    while True:
        b = [rows[k][1] for k in basis]
        x = [dot(inverse[i], b) for i in range(n)]  # the vertex where the rows of the basis meet
        over = [(dot(a, x) - c, -j) for j, (a, c) in enumerate(rows)]
        steps += 1  # the row that is violated most is quick, the first one cannot go round in circles
        new = max((v, j) for v, j in over) if steps < 200 else next(((v, j) for v, j in over if v > tiny), over[0])
        new = -new[1] if new[0] > tiny else None
        if new is None:
            extra = more(x)
            if not extra:
                return x
            rows += convert(extra, num)
            continue
        a = rows[new][0]
        d = [dot(a, [inverse[i][k] for i in range(n)]) for k in range(n)]  # a as a sum of the basis
        out = min(((y[k] / d[k], basis[k], k) for k in range(n) if d[k] > tiny), default=None)
        if out is None:
            return None
        theta, _, k = out
        y = [max(v - theta * w, 0) for v, w in zip(y, d)]
        y[k] = theta
        for i in range(n):
            if inverse[i][k]:
                t = inverse[i][k] / d[k]
                inverse[i] = [inverse[i][j] - t * d[j] if d[j] else inverse[i][j] for j in range(n)]
                inverse[i][k] = t
        basis[k] = new


def solve(matrix, right):
    """Solves a small linear system by elimination with the largest pivot."""
    n = len(right)
    m = [list(r) + [v] for r, v in zip(matrix, right)]
    for c in range(n):
        p = max(range(c, n), key=lambda r: abs(m[r][c]))
        m[c], m[p] = m[p], m[c]
        for r in range(n):
            if r != c and m[r][c]:
                t = m[r][c] / m[c][c]
                m[r] = [u - t * v for u, v in zip(m[r], m[c])]
    return [m[k][n] / m[k][k] for k in range(n)]


def inverse_of(matrix):
    n = len(matrix)
    columns = [solve(matrix, [F(i == k) for i in range(n)]) for k in range(n)]
    return [[columns[j][i] for j in range(n)] for i in range(n)]


def least_squares(gram, rows, more=lambda x: [], num=F):
    """Minimises x . gram x / 2 over a . x <= b, by the dual active-set method of Goldfarb and Idnani."""
    n, tiny = len(gram), TINY[num]
    g = [[num(v) for v in r] for r in inverse_of(gram)]
    times = lambda m, v: [dot(r, v) for r in m]
    x, rows, active, u = [num(F(0))] * n, convert(rows, num), [], []
    while True:
        worst = max(((dot(a, x) - b, -j) for j, (a, b) in enumerate(rows)), default=(0, 0))
        if worst[0] <= tiny:
            extra = more(x)
            if not extra:
                return x
            rows += convert(extra, num)
            continue
        new, added = -worst[1], num(F(0))
        a, b = rows[new]
        while True:
            ga = times(g, a)
            held = [rows[k][0] for k in active]
            gh = [times(g, h) for h in held]
            r = solve([[dot(p, q) for q in gh] for p in held], [dot(h, ga) for h in held]) if held else []
            z = [v - sum(r[k] * gh[k][i] for k in range(len(held))) for i, v in enumerate(ga)]
            slope = dot(z, a)
            full = (dot(a, x) - b) / slope if slope > tiny else None
            part = min(((u[k] / r[k], k) for k in range(len(r)) if r[k] > tiny), default=None)
            if full is None and part is None:
                return None
            t = full if part is None or full is not None and full <= part[0] else part[0]
            if full is not None:
                x = [v - t * w for v, w in zip(x, z)]
            u = [v - t * w for v, w in zip(u, r)]
            added += t
            if full is not None and t == full:
                active.append(new)
                u.append(added)
                break
            del active[part[1]], u[part[1]]
