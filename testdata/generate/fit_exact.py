"""Vectors of fit_exact for fit.json: rims, bores and faces of rigid shafts, exactly in three dimensions.

generate/fit_more.py runs this; it is no program of its own. Both ways and the slips are told there.

The stationary axis is the x axis. The movable one goes through (x, offset + slope x) in each plane, along
e = (1, slope_h, slope_v) over its length. A carrier's dial turns about the carrier's axis: u(t) = sin t right + cos t up, both
at right angles to the axis, up in the vertical plane through it. What is read:

    rim, bore   how far it is along u(t), from the point of the carrier's axis at the station, to the other shaft's cylinder
    near face   how far it is along the carrier's axis, from the circle of radius R, to the other shaft's face: less of it is more

A station counts along the carrier's own axis, that of the movable one from where it meets the plane x = 0. A face is at right angles to its own axis; where it stands is in the zero.
"""

from __main__ import CROSS, EXCHANGED, GP, NUMBERS, SECOND, SLIPS, Crew, Fit, Probe, area, dot, gp_set, listed, orthogonal, reduced, region, tolerance_of, written

from asked import *
from common import *

NEW = "1.1.0"
AXIS = (mpf(1), mpf(0), mpf(0))


def cross(a, b): return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
def unit(a): return tuple(c / mp.sqrt(dot(a, a)) for c in a)
def mix(s, a, c, b): return tuple(s * p + c * q for p, q in zip(a, b))


class Ray:
    """What one probe of the exact kinds reads, with slips; other kinds have exact = False."""

    def __init__(self, probe, slip=""):
        self.slip = slip
        self.kind = EXCHANGED.get(slip, {}).get(probe["kind"], probe["kind"])
        self.movable = probe.get("carrier") == "movable"
        if slip == "carrier_sign" and self.kind in CROSS:
            self.movable = not self.movable
        get = lambda name: big(measure(probe.get(name, "0 mm"), slip))
        self.x, self.radius = abs(get("station")) if slip == "station_unsigned" else get("station"), get("radius")
        if slip == "radius_for_diameter":
            self.radius /= 2
        self.exact = self.kind in ("near_face", "far_face") or self.kind in ("rim", "bore") and "radius" in probe

    def frame(self, e):
        """Right and up at right angles to the carrier's axis."""
        if not self.movable or self.slip == "clock_of_carrier_ignored":
            return (mpf(0), mpf(1), mpf(0)), (mpf(0), mpf(0), mpf(1))
        if self.slip == "clock_not_from_vertical":  # turned with the axis the shortest way
            h = (1 + e[0], e[1], e[2])
            return tuple(tuple(b - e[i] / (1 + e[0]) * a for a, b in zip(h, w)) for i, w in ((1, (0, 1, 0)), (2, (0, 0, 1))))
        right = unit(cross((0, 0, 1), e))
        return right, cross(e, right)

    def read(self, x, s, c):
        """The reading but for its zero; x are the four numbers, s and c sine and cosine of the position."""
        e = unit((mpf(1), x[1], x[3]))
        right, up = self.frame(e)
        u = mix(s, right, c, up)
        along = self.x * e[0] if self.movable else self.x  # of its own axis
        at = (along, x[0] + x[1] * along, x[2] + x[3] * along)
        if self.kind in ("rim", "bore"):
            return (1 if self.kind == "rim" else -1) * (self.second_order(x, s, c) if self.slip == "second_order_for_exact" else self.reach(e, u, at) - self.radius)
        sign = 1 if self.kind == "near_face" else -1
        if not self.movable or self.slip in ("clock_of_carrier_ignored", "second_order_for_exact"):
            return sign * self.radius * (x[1] * s + x[3] * c)
        return -sign * self.radius * u[0] / e[0]

    def reach(self, e, u, at):
        """From the carrier's axis along u to the cylinder: |q + d u| across the cylinder's axis is its radius."""
        q, axis = (tuple(-v for v in (0, at[1], at[2])), e)
        if self.movable:
            q, axis = (mpf(0), at[1], at[2]), AXIS
        if self.slip == "inclination_ignored":
            axis = e if self.movable else AXIS
        q, w = (tuple(a - dot(v, axis) * b for a, b in zip(v, axis)) for v in (q, u))
        p = dot(q, w)
        return (-p + mp.sqrt(p * p - dot(w, w) * (dot(q, q) - self.radius**2))) / dot(w, w)

    def second_order(self, x, s, c):
        h, v = x[0] + x[1] * self.x, x[2] + x[3] * self.x
        side = -1 if self.movable else 1
        return side * (h * s + v * c) - (h * c - v * s) ** 2 / (2 * self.radius) + self.radius * (x[1] * s + x[3] * c) ** 2 / 2


class Exact(Fit):
    """The fit of the exact geometry by Gauss and Newton; each step is a linear fit of what is left."""

    def __init__(self, input, slip=""):
        self.rays = []
        super().__init__(input, slip)

    def take(self, group, s):
        self.probe = s["probe"]
        super().take(group, {**s, "u": {"clock": "0 deg", **s.get("u", {})}})

    def share(self, what, text, probe, sag, angles, start):
        if what == "clock":
            ray = Ray(self.probe, self.slip)
            self.rays += [(ray, s, c) for s, c in angles]

    def solve(self):
        super().solve()
        self.line, linear = list(self.x), (self.kappa, self.scales, self.loose) if not self.slip else None
        if self.slip == "linear_for_exact":
            return
        y, x, small = [r.y for r in self.rows], list(self.x), mpf(10) ** (-20 if self.slip else -2 * mp.dps // 3)  # the gradient's digits
        for _ in range(40):
            for r, (ray, s, c), seen in zip(self.rows, self.rays, y):
                if ray.exact:
                    r.g, r.y = gradient(ray, x, s, c), seen - ray.read(x, s, c)
                else:
                    r.y = seen - dot(r.g, x)
            (reduced if self.slip else orthogonal)(self)
            x = [a + b for a, b in zip(x, self.x)]
            if max(abs(self.x[0]), abs(self.x[2])) < small and max(abs(self.x[1]), abs(self.x[3])) < small / 1000:
                break
        else:
            raise ArithmeticError("no end")
        self.x = x
        for r, seen in zip(self.rows, y):
            r.y = seen
        if linear:
            self.kappa, self.scales, self.loose = linear

    def result(self):
        answer = super().result()
        for p in ("horizontal", "vertical"):
            answer[p].pop("u", None)  # by which model it would come is left open
        for m in answer.get("moves", []):
            m.pop("u", None)
        d = [a - b for a, b in zip(self.x, self.line)]
        if self.slip == "difference_reversed":
            d = [-v for v in d]
        answer["difference"] = {}
        for v, (plane, what, u) in zip(d, NUMBERS):
            answer["difference"].setdefault(plane, {})[what] = written(v, u)
        return answer


def gradient(ray, x, s, c):
    """Central differences, good to two thirds of the digits: enough, as each step takes what is left."""
    found = []
    for j, h in enumerate([mpf(10) ** (-mp.dps // 3), mpf(10) ** (-mp.dps // 3 - 3)] * 2):
        a, b = list(x), list(x)
        a[j] += h
        b[j] -= h
        found.append((ray.read(a, s, c) - ray.read(b, s, c)) / (2 * h))
    return found


SLIPS_EXACT = [s for s in SLIPS if s not in ("shared_as_independent", "shared_ignored", "residual_share_forgotten", "feet_uncorrelated")] + [
    "linear_for_exact", "second_order_for_exact", "inclination_ignored", "clock_of_carrier_ignored", "clock_not_from_vertical", "difference_reversed"]


def tolerance_exact(fit):
    """As for a linear fit; the way from the axis to a rim goes into the readings as well. A difference takes in both answers."""
    stated, fit.stated = fit.stated, False
    whole = mp.sqrt(mp.fsum((r.w * (r.size + (ray.radius if ray.exact and ray.kind in ("rim", "bore") else 0))) ** 2 for r, (ray, _, _) in zip(fit.rows, fit.rays)))
    alone = mp.sqrt(mp.fsum((r.w * r.size) ** 2 for r in fit.rows))
    fit.scales = [s * whole / alone for s in fit.scales]
    fit.V = fit.C  # nothing of V is held
    tolerance = tolerance_of(fit)
    fit.stated = stated
    for i, (plane, what, unit) in enumerate(NUMBERS):
        tolerance["/difference/%s/%s" % (plane, what)] = rounding(2 * fit.scales[i], unit, fit.kappa, 64)
    return tolerance


def betrays(slip, input, line, result, tolerance):
    """Tells whether a slip shows. A slip of the law shows in the linear answer already, by more than exactness can take back."""
    if slip == "offset_at_dial_plane" and not any("station" in s["probe"] for s in input["sets"]):
        return False
    try:
        if slip in SLIPS:
            bent = Fit(input, slip)
            right, wrong = line.result(), bent.result()
            wide = 1000 + 100 * max(abs(F(result["difference"][p][w].split()[0])) / F(tolerance["/%s/%s" % (p, w)]["within"].split()[0]) for p, w, _ in NUMBERS)
            near = {path: t for path, t in tolerance.items() if not path.startswith("/difference")}
            if differs(numbers(right), numbers(wrong), near, wide):
                return True
            if slip not in ("radius_for_diameter", "first_reading_exact") and numbers(right) == numbers(wrong) and all(vars(a) == vars(b) for a, b in zip(line.rows, bent.rows)):
                return False
        return differs(result, Exact(input, slip).result(), tolerance)
    except (Refused, ArithmeticError, TypeError):  # no answer, or no contact at all
        return True


def numbers(answer):
    """Position and moves of an answer, without uncertainties."""
    position = {p: {w: answer[p][w] for w in ("offset", "slope")} for p in ("horizontal", "vertical")}
    return {**position, "moves": [{p: m[p] for p in ("horizontal", "vertical")} for m in answer.get("moves", [])]}


# ---------------------------------------------------------------- the second way

IMPLICIT = r"""
xprod(a,b)=[a[2]*b[3]-a[3]*b[2],a[3]*b[1]-a[1]*b[3],a[1]*b[2]-a[2]*b[1]];
dot3(a,b)=a*b~;
\\ One dial of a set S, [kind, carrier, [station, radius, sag, clock error], ...], at the angle t of the carrier's clock, for the four numbers w
reads(S,t,w)={my(k=S[1],x=S[3][1],R=S[3][2],e=[1,w[2],w[4]],own,other,O,Q,r,u,l,F);
 e/=sqrt(dot3(e,e));
 if(k=="rim"||k=="bore"||k=="near_face"||k=="far_face",,my(h=law(k,S[2],x,R,S[4],S[5]));return((h[1]*w[1]+h[2]*w[2])*sin(t)+(h[1]*w[3]+h[2]*w[4])*cos(t)));
 if((k=="rim"||k=="bore")&&R==0,my(h=law(k,S[2],x,R,S[4],S[5]));return((h[1]*w[1]+h[2]*w[2])*sin(t)+(h[1]*w[3]+h[2]*w[4])*cos(t)));
 my(y=if(S[2]=="movable",x*e[1],x),P=[y,w[1]+w[2]*y,w[3]+w[4]*y],N=[x,0,0],X=[1,0,0]);
 if(S[2]=="movable",own=e;other=X;O=P;Q=N,own=X;other=e;O=N;Q=P);
 \\ the vertical plane through the axis is spanned by it and the z axis; its normal points to 3
 r=xprod([0,0,1],own);r/=sqrt(dot3(r,r));u=xprod(own,r);
 u=sin(t)*r+cos(t)*u;
 if(k=="rim"||k=="bore",
  my(d=R,c);for(n=1,9,c=xprod(O+d*u-Q,other);F=dot3(c,c)-R^2;d-=F/(2*dot3(c,xprod(u,other)))); \\ right digits double each time
  return(if(k=="rim",d,-d)));
 \\ a face: O + R u moved by l along the axis towards the other machine meets the plane through Q across its axis
 my(v=if(S[2]=="movable",-own,own),B=O+R*u);l=dot3(Q-B,other)/dot3(v,other);
 if(k=="near_face",-l,l)};
cost(D,v,w)={my(all=0);for(i=1,#D,my(S=D[i],M=[0,0],W=0,q=0,z=if(S[1]=="bore",-1,1));
 for(j=1,#S[6],my(g=S[6][j],t=v*g[1]*Pi/180,f=g[2]-z*S[3][3]*cos(t)-reads(S,t,w),p=1/g[3]^2);W+=p;M[1]+=p*f;q+=p*f^2);
 all+=q-M[1]^2/W);all};
\\ Newton's method on the sum of squares, its derivatives by differences
exact(D,v,feet)={my(l=solve4(D,v)[1],w=l~,h=[1e-25,1e-28,1e-25,1e-28],s=vector(4,i,1));
 for(n=1,40,if(vecmax(abs(s))<1e-40,break);
  my(E=matid(4),G=vector(4)~,H=matrix(4,4),c0=cost(D,v,w),up=vector(4),dn=vector(4));
  for(i=1,4,up[i]=cost(D,v,w+h[i]*E[i,]);dn[i]=cost(D,v,w-h[i]*E[i,]);G[i]=(up[i]-dn[i])/(2*h[i]);H[i,i]=(up[i]+dn[i]-2*c0)/h[i]^2);
  for(i=1,4,for(j=1,i-1,H[i,j]=(cost(D,v,w+h[i]*E[i,]+h[j]*E[j,])-up[i]-up[j]+c0)/(h[i]*h[j]);H[j,i]=H[i,j]));
  s=matsolve(H,-G)~;w=vector(4,i,bitprecision(w[i]+s[i],400)));
 my(out=concat(w,w-l~));
 for(i=1,#feet,for(k=0,1,out=concat(out,-(w[2*k+1]+w[2*k+2]*feet[i]))));
 for(i=1,#out,print1(strprintf("%.75f",out[i])," "));print("")};
"""


def gp_exact(input):
    stated = Fit(input).stated
    return "exact(%s,%d,%s);\n" % (listed([gp_set(s, stated) for s in input["sets"]]), -1 if input["view"] == "from_stationary" else 1,
                                   listed([str(length(f["x"])) for f in input.get("feet", [])]))


def check_exact(vectors, gp_lines, agree):
    for v, numbers in zip(vectors, gp_lines(SECOND + IMPLICIT, [gp_exact(v["input"]) for v in vectors])):
        r = v["result"]
        texts = [(r[p][w], u) for p, w, u in NUMBERS] + [(r["difference"][p][w], u) for p, w, u in NUMBERS]
        texts += [(m[p], "mm") for m in r.get("moves", []) for p in ("horizontal", "vertical")]
        assert len(texts) == len(numbers), v["id"]
        for (text, unit), got in zip(texts, numbers):
            agree(v["id"], mpf(text.split()[0]) * big(OUT[unit]), got, mpf(10) ** -6)


# ---------------------------------------------------------------- vectors

class Shafts(Crew):
    """Two rigid shafts; readings to a millionth of a micrometre, 1e-9 mm."""

    def sweep(self, probe, at, zero=0, sag=None, u=None):
        one = super().sweep(probe, at, zero, sag, u)  # for its form
        ray, mirror, p = Ray(probe), -1 if self.view == "from_stationary" else 1, Probe(probe)
        if ray.exact:
            for r in one["readings"]:
                s, c = sincos(mirror * clock(r["at"]))
                droop = big(length(sag)) * p.sag * c if sag else 0
                r["value"] = self.write(ray.read(self.truth, s, c) + droop + big(F(str(zero))))
        return one


def shafts(*pose, view="from_movable", unit="mm", digits=9, **more): return Shafts(*pose, view, unit, digits, **more)


def put(id, where, about, crew, sets, at, passes_in_double):
    input = crew.input(sets, at)
    fit = Exact(input)
    result, tolerance = fit.result(), tolerance_exact(fit)
    assert fit.loose * fit.kappa < 1.5, (id, fit.loose, fit.kappa)
    for a, b, size in zip(fit.x, crew.truth, (1, 1000, 1, 1000)):
        assert abs(a - b) * size < mpf("1e-5"), (id, fit.x, crew.truth)
    passes_in_double(Exact, input, result, tolerance, id)
    line = Fit(input)
    flags = [slip for slip in SLIPS_EXACT if betrays(slip, input, line, result, tolerance)]
    source = {"kind": "simulation", "by": "readings of two rigid shafts in exact three-dimensional geometry, to 1e-9 mm; answer: Gauss-Newton with %s, contacts in closed form" % MPMATH,
              "second": "%s, 110 digits: contacts from implicit equations, Newton's method on the sum of squares; agrees to 25 digits" % GP}
    return area.add(id, "fit_exact", where, flags, about, source, input, result, tolerance, since=NEW)


EIGHT = hours(*range(0, 360, 45))
ARCS = {360: ("0.4", "0.3", "0.9", "-0.4", 0), 180: ("0.6", "0.25", "0.8", "0.5", 37), 120: ("-0.8", "-0.45", "0.6", "0.35", 307), 90: ("0.7", "0.15", "-0.7", "0.55", 135), 60: ("-0.6", "0.4", "-0.8", "-0.3", 217)}


def wide(carrier, station, radius): return rim(carrier, station, radius=radius)
def round_bore(carrier, station, radius): return {**bore(carrier, station), "radius": radius}


def exact(passes_in_double, gp_lines, agree, refuse):
    def one(id, where, about, crew, sets, *stations):
        return put(id, where, about, crew, sets, feet(*stations), passes_in_double)

    region("exact_rim_face", "plain", "a rim and a face dial, exactly")
    c = shafts("0.22", "0.6", "-0.35", "-0.8")
    rim_face = one("exact-rim-face", "exact_rim_face", "Rim and face on a bracket of the stationary shaft: the rim has a second order, the face has none", c,
                   [c.sweep(wide("stationary", "42 mm", "78 mm"), FIVE, "0.5"), c.sweep(face("stationary", "71 mm"), FIVE, "0.3")], "310 mm", "890 mm")
    c = shafts("-0.4", "0.7", "0.3", "0.5", view="from_stationary")
    region("exact_droop", "plain", "the same with brackets that droop")
    one("exact-rim-face-sag", "exact_droop", "From the stationary end, the bracket droops on the rim and pushes the face dial in at 12", c,
        [c.sweep(wide("stationary", "55 mm", "64 mm"), hours(30, 90, 150, 210, 280), "0.6", sag="0.12 mm"), c.sweep(face("stationary", "83 mm"), FIVE, "0.2", sag="0.02 mm")], "335 mm", "940 mm")
    region("exact_bore", "plain", "a dial in a bore and one on the far side, exactly")
    c = shafts("0.5", "-0.9", "0.6", "0.4")
    one("exact-bore", "exact_bore", "A bore counts the other way, in its second order as well", c,
        [c.sweep(round_bore("stationary", "36 mm", "46 mm"), SIX[:5], "1.1"), c.sweep(far("stationary", "92 mm"), FIVE, "0.8", sag="-0.03 mm")], "345 mm", "960 mm")
    region("exact_reverse", "plain", "rims read from both shafts, exactly")
    c = shafts("0.3", "0.5", "-0.25", "0.7", unit="mil")
    one("exact-reverse", "exact_reverse", "Reverse dials in mils; the movable shaft's dial turns about the movable axis", c,
        [c.sweep(wide("stationary", "3 1/2 in", "2 7/8 in"), FIVE, 20), c.sweep(wide("movable", "-3 1/4 in", "2 7/8 in"), FIVE, 30)], "14 in", "37 in")
    region("exact_linear", "plain", "kinds that are linear whatever is asked for")
    c = shafts("0.9", "0.8", "-1.1", "0.6")
    one("exact-linear", "exact_linear", "A rim whose radius is not given and a gauge between the faces: the linear answer, and no difference", c,
        [c.sweep(rim("stationary", "63 mm"), FIVE, "1.5"), c.sweep(gap("81 mm"), QUARTERS, "3.1")], "355 mm", "970 mm")
    region("exact_mixed", "plain", "exact and linear kinds together")
    c = shafts("-0.8", "0.75", "0.65", "-0.55", view="from_stationary")
    mixed = one("exact-mixed", "exact_mixed", "One rim with its radius and one without, a straightedge and a face", c,
        [c.sweep(wide("stationary", "118 mm", "69 mm"), FIVE, "1.2"), c.sweep(rim("movable", "-108 mm"), FIVE, "0.9"), c.sweep(edge("stationary", "74 mm"), QUARTERS, "1.3"),
         c.sweep(face("movable", "88 mm"), SIX, "0.4")], "365 mm", "985 mm")

    for width, (oh, sh, ov, sv, middle) in ARCS.items():
        region("exact_arc_%d" % width, "hard", "about 1 mm off, seen over %d degrees, exactly" % width)
        c, k = shafts(oh, sh, ov, sv, view="from_stationary" if width in (180, 60) else "from_movable"), list(ARCS).index(width)
        at = EIGHT if width == 360 else spread(middle, width, 7)
        one("exact-arc-%d" % width, "exact_arc_%d" % width, "Rim and face over %d degrees: %s" % (width, "the rim's second order cancels" if width == 360 else "the rim's second order passes for an offset of micrometres"), c,
            [c.sweep(wide("stationary", "%d mm" % (44 + 6 * k), "75 mm"), at, "1.5"), c.sweep(face("stationary" if k % 2 else "movable", "%d mm" % (79 + 5 * k)), at, "0.6")], "%d mm" % (375 + 11 * k), "%d mm" % (1010 + 23 * k))

    region("exact_coarse", "hard", "5 mm off with slopes of 2 mm/m, stationary carrier")
    c = shafts("3", "1.2", "-4", "1.6")
    one("exact-coarse", "exact_coarse", "5 mm off with a slope of 2 mm/m, all round: a circle will not do for the inclined cylinder", c,
        [c.sweep(wide("stationary", "48 mm", "75 mm"), EIGHT, 6), c.sweep(face("stationary", "75 mm"), EIGHT, "0.5")], "385 mm", "1025 mm")
    c = shafts("-4", "1.6", "3", "-1.2", view="from_stationary")
    region("exact_coarse_bore", "hard", "5 mm off in a bore, over part of a turn")
    one("exact-coarse-bore", "exact_coarse_bore", "The same in a bore over three quarters of a turn, from the stationary end", c,
        [c.sweep(round_bore("stationary", "33 mm", "55 mm"), hours(0, 50, 100, 150, 200, 250), 7), c.sweep(face("stationary", "66 mm"), hours(0, 70, 140, 210), "0.5")], "395 mm", "1045 mm")
    region("exact_movable_centre", "hard", "dials carried by the movable shaft at the coupling centre, 5 mm off across the slope")
    c = shafts("5", "0", "0", "2")
    one("exact-movable-centre", "exact_movable_centre", "The movable shaft carries rim and face dial at x = 0, off sideways and inclined upwards: which point of its axis is meant is beyond doubt", c,
        [c.sweep(wide("movable", "0 mm", "75 mm"), EIGHT, 6), c.sweep(face("movable", "68 mm"), SIX, "0.4")], "405 mm", "1065 mm")
    c = shafts("1.6", "1.5", "-1.2", "2", view="from_stationary")
    region("exact_movable_arc", "hard", "the same over part of a turn")
    one("exact-movable-arc", "exact_movable_arc", "The same over two thirds of a turn, the offset at right angles to the slope", c,
        [c.sweep(wide("movable", "0 mm", "62 mm"), hours(20, 70, 120, 170, 220, 260), 2), c.sweep(far("movable", "77 mm"), hours(0, 60, 150, 240), "0.8")], "415 mm", "1085 mm")
    region("exact_movable_station", "hard", "rims carried by the movable shaft away from the coupling centre, 5 mm off")
    c = shafts("4", "1.2", "3", "-1.6")
    one("exact-movable-station", "exact_movable_station", "Reverse dials 5 mm off with 2 mm/m; the movable shaft's dial sits 52 mm back along its own axis", c,
        [c.sweep(wide("stationary", "58 mm", "75 mm"), EIGHT, 6), c.sweep(wide("movable", "-52 mm", "75 mm"), EIGHT, 7)], "425 mm", "1105 mm")
    c = shafts("2", "-1.5", "1.5", "2", view="from_stationary")
    region("exact_movable_bore", "hard", "a bore read by the movable shaft over part of a turn")
    one("exact-movable-bore", "exact_movable_bore", "A bore read by the movable shaft over half a turn, with a droop", c,
        [c.sweep(round_bore("movable", "-37 mm", "52 mm"), hours(300, 340, 20, 60, 100), 3, sag="0.08 mm"), c.sweep(wide("stationary", "66 mm", "75 mm"), hours(0, 45, 90, 135, 180), 4)], "435 mm", "1125 mm")
    region("exact_steep_face", "hard", "faces on a steep slope in both planes")
    c = shafts("0.2", "6", "-0.3", "8")
    one("exact-steep-face", "exact_steep_face", "10 mm/m: the movable shaft's face dial turns about an axis that leans, and with it the clock", c,
        [c.sweep(face("movable", "120 mm"), SIX, 2), c.sweep(wide("stationary", "25 mm", "70 mm"), SIX, "0.9")], "445 mm", "1145 mm")
    region("exact_small_rim", "hard", "a thin shaft far off")
    c = shafts("1.1", "0.4", "-1.4", "-0.7", view="from_stationary")
    one("exact-small-rim", "exact_small_rim", "1.8 mm off on a radius of 12 mm: the second order is a tenth of a millimetre, the fourth counts too", c,
        [c.sweep(wide("stationary", "29 mm", "12 mm"), hours(0, 40, 95, 140, 190, 230), 2), c.sweep(face("stationary", "35 mm"), FIVE, "0.2")], "455 mm", "1165 mm")
    region("exact_weights", "hard", "readings of different uncertainty")
    c = shafts("1.3", "0.9", "0.7", "-1.1")
    one("exact-weights", "exact_weights", "Two good readings and three poor ones on an arc, which the weights tell apart", c,
        [c.sweep(wide("stationary", "61 mm", "75 mm"), hours(0, 45, 90, 135, 180), "1.6", u=["1 um", "0.02 mm", "2 um", "0.01 mm", "2 um"]),
         c.sweep(wide("stationary", "-49 mm", "68 mm"), hours(10, 60, 110, 160), "1.4", u=["4 um", "1 um", "0.03 mm", "2 um"])], "465 mm", "1185 mm")
    region("exact_three", "hard", "three readings to a set, with nothing left over")
    c = shafts("0.7", "-0.5", "0.9", "0.8")
    one("exact-three", "exact_three", "Three readings of each rim: equations, not a fit", c,
        [c.sweep(wide("stationary", "53 mm", "57 mm"), hours(0, 90, 180), "0.9"), c.sweep(wide("stationary", "171 mm", "57 mm"), hours(30, 130, 250), "1.1")], "475 mm", "1205 mm")
    region("exact_faces_and_rim", "hard", "faces that see the slope, and one rim for the offset")
    c = shafts("0.45", "0.95", "0.55", "-0.65", view="from_stationary")
    faces = one("exact-two-faces", "exact_faces_and_rim", "A near and a far face carried by different shafts, and a rim on a third of a turn", c,
        [c.sweep(face("stationary", "73 mm"), QUARTERS, "0.4"), c.sweep(far("movable", "96 mm"), FIVE, "0.5"), c.sweep(wide("stationary", "39 mm", "81 mm"), hours(60, 100, 140, 180), "0.7")], "485 mm", "1225 mm")

    check_exact([v for v in area.vectors if v["op"] == "fit_exact" and "result" in v], gp_lines, agree)
    refuse("exact-rim-radius-zero", rim_face, "out_of_range", "/sets/0/probe/radius", "0 mm", "A rim that is a point, exactly")
    refuse("exact-rim-radius-negative", rim_face, "out_of_range", "/sets/0/probe/radius", "-78 mm", "A rim of negative radius, exactly")
    refuse("exact-face-no-radius", rim_face, "missing", "/sets/1/probe/radius", None, "A face without its circle, exactly")
    refuse("exact-no-view", rim_face, "missing", "/view", None, "Nothing said of the standpoint, exactly")
    refuse("exact-radius-on-straightedge", mixed, "conflict", "/sets/2/probe/radius", "74 mm", "A radius for a straightedge, exactly")
    refuse("exact-unknown-carrier", faces, "unknown", "/sets/1/probe/carrier", "motor", "A carrier that is neither of the two, exactly")
    refuse("exact-faces-only", faces, "unseen", "/sets/2", None, "Faces only, exactly: no plane tells where it is off", "/sets")
