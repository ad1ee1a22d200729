package tolerance

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
)

// Judge holds off, which is what was found less the target, against the limits
// that count for the coupling: for a short one (Span zero) the offset at x = 0
// and the slope, as far as limits are given, for a spacer coupling the tilt at
// each flex plane. All items have to be within; one that stands on its limit is.
//
// This is simple acceptance, whatever the basis of the uncertainty: the standard
// uncertainty and the probability of being within are stated beside each item and
// decide nothing. On the basis Unknown both are NaN, which is not zero. See
// [Limits.JudgeBy] for a verdict that counts with them.
//
// The uncertainty of a vector's length is that along the direction found, by the
// law of propagation to first order (JCGM 100:2008, 5.2.2). Where the length is
// not large against its own uncertainty first order fails: the length found is
// then more likely too long than too short, and its spread is not that of a
// normal distribution. Where it rounds to nothing there is no direction; the
// larger principal standard uncertainty is stated, which is the largest in any
// direction. The probability is not taken from it, but from the joint
// distribution of both planes, and holds there too.
//
// Accuracy: rounding in the last digits; the tilts at the flex planes are exact
// for lines of small slope. Judge allocates nothing when it answers. It refuses
// limits as Validate does, a limit that is needed and not given (Missing, at
// /offset or /flex), and numbers of off and of the coupling that are not finite
// or are below zero where they cannot be, with paths from /off/value, /off/cov
// and /coupling, and an estimate of which the tilts at the flex planes cannot be
// reckoned with (OutOfRange, at /off). The coupling's diameter does not matter.
func (l Limits) Judge(off align.Estimate, k align.Coupling) (Verdict, error) {
	return l.JudgeBy(off, k, Acceptance{})
}

// items adds the items that the coupling is judged by.
func (l *Limits) items(v *Verdict, off *align.Estimate, k align.Coupling) {
	if k.Span != 0 {
		perSpan, limit := 1/float64(k.Span), Amount{Slope: l.Flex}
		v.judge(FlexStationary, combined(off, +perSpan, 0.5), limit, l.PerPlane)
		v.judge(FlexMovable, combined(off, -perSpan, 0.5), limit, l.PerPlane)
		return
	}
	if l.Offset != 0 {
		v.judge(Offset, combined(off, 1, 0), Amount{Length: l.Offset}, l.PerPlane)
	}
	if l.Slope != 0 {
		v.judge(Slope, combined(off, 0, 1), Amount{Slope: l.Slope}, l.PerPlane)
	}
}

// judge adds the one item of both planes together, or the two of each by itself.
func (v *Verdict) judge(of Quantity, w vector, limit Amount, perPlane bool) {
	if !perPlane {
		v.add(Item{Of: of, Plane: Both, Found: of.amount(w.size()), U: of.amount(w.along(of)), Limit: limit}, w)
		return
	}
	v.add(Item{Of: of, Plane: Horizontal, Found: of.amount(math.Abs(w.y)), U: of.amount(root(w.yy)), Limit: limit}, w.horizontal())
	v.add(Item{Of: of, Plane: Vertical, Found: of.amount(math.Abs(w.z)), U: of.amount(root(w.zz)), Limit: limit}, w.vertical())
}

func (v *Verdict) add(item Item, w vector) {
	item.Ratio = item.ratio()
	item.Probability = w.conformance(&item)
	v.Items[v.Used] = item
	v.Used++
}

// sound tells whether what is held against the limits can be reckoned with.
func (v *Verdict) sound() bool {
	for i := range v.used() {
		item := &v.Items[i]
		u := item.Of.number(item.U)
		if !check.Sound(item.Of.number(item.Found)) || v.Basis != align.Unknown && !check.Sound(u) {
			return false
		}
	}
	return true
}

// vector is an item in both planes, y horizontal and z vertical, with its
// covariance: in nanometres, or as a ratio.
type vector struct {
	y, z       float64
	yy, yz, zz float64
	dof        [2]float64 // effective degrees of freedom of y and of z; zero: none to count
}

// combined returns a*offset + b*slope in both planes. Every item of a verdict is
// one, and so every uncertainty comes from here.
//
//	V(p,q) = a^2 V(o_p,o_q) + a b (V(o_p,s_q) + V(s_p,o_q)) + b^2 V(s_p,s_q)
func combined(off *align.Estimate, a, b float64) vector {
	h, v := off.Value.Horizontal, off.Value.Vertical
	u, r := off.Cov.Standard(), off.Cov.Correlation()
	share := [...]float64{ // of each of the four numbers, in their order in r
		a * float64(u.Horizontal.Offset), b * float64(u.Horizontal.Slope),
		a * float64(u.Vertical.Offset), b * float64(u.Vertical.Slope),
	}
	cov := func(p, q int) (sum float64) {
		for i := p; i < p+2; i++ {
			for j := q; j < q+2; j++ {
				sum += float64(share[i] * share[j] * r[i][j])
			}
		}
		return sum
	}
	return vector{
		y:  float64(a*float64(h.Offset)) + float64(b*float64(h.Slope)),
		z:  float64(a*float64(v.Offset)) + float64(b*float64(v.Slope)),
		yy: cov(0, 0), yz: cov(0, 2), zz: cov(2, 2),
		dof: [2]float64{
			off.Cov.EffectiveDoF([4]float64{a, b, 0, 0}),
			off.Cov.EffectiveDoF([4]float64{0, 0, a, b}),
		},
	}
}

// size is the length of the vector. math.Hypot does not give the same bits on
// every platform.
func (w vector) size() float64 { return math.Sqrt(float64(w.y*w.y) + float64(w.z*w.z)) }

// along is the standard uncertainty of the size to first order:
//
//	u^2 = n_y^2 V_yy + 2 n_y n_z V_yz + n_z^2 V_zz        n = w/|w|
func (w vector) along(of Quantity) float64 {
	size := w.size()
	if of.nanometres(of.amount(size)) == 0 {
		return w.principal()
	}
	y, z := w.y/size, w.z/size
	return root(float64(y*y*w.yy) + float64(2*y*z*w.yz) + float64(z*z*w.zz))
}

// principal is the larger principal standard uncertainty: the root of the larger
// eigenvalue of the covariance.
func (w vector) principal() float64 {
	mean, half := (w.yy+w.zz)/2, (w.yy-w.zz)/2
	return root(mean + math.Sqrt(float64(half*half)+float64(w.yz*w.yz)))
}

// root is the standard uncertainty whose square is variance, which rounding may
// have left a hair below zero.
func root(variance float64) float64 { return math.Sqrt(max(0, variance)) }

func (l *Limits) checkJudge(off *align.Estimate, k align.Coupling, a *Acceptance) error {
	var faults check.Faults
	var root check.Path
	l.check(&faults, root)
	l.checkNeeded(&faults, root, k)
	faults.Adopt(root.Field("off"), off.Validate())
	checkCoupling(&faults, root.Field("coupling"), k)
	a.check(&faults, root.Field("acceptance"))
	return faults.Err()
}

// checkCoupling asks for lengths that are given or are zero; a span is divided
// by.
func checkCoupling(faults *check.Faults, at check.Path, k align.Coupling) {
	check.NotNegative(faults, at.Field("diameter"), k.Diameter, "a diameter")
	if k.Span != 0 {
		check.Positive(faults, at.Field("span"), k.Span, "a distance from flex plane to flex plane")
	}
}
