package align

import (
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/stat/distuv"
)

// CoverageFactor returns how many standard uncertainties an interval has to reach
// to either side to hold the true value with probability p: a quantile of
// Student's t with dof degrees of freedom, or of the normal distribution where
// dof is zero, which means none to count (JCGM 100:2008, G.3.2 and G.6.4). A dof
// that is not whole is taken as it is. Above 1e5 the normal distribution serves
// with the first term of its expansion in 1/dof (Abramowitz and Stegun, Handbook
// of Mathematical Functions, 26.7.5, from memory). Good to 1e-9 of itself for p
// from 0.01 to 0.999999.
//
// It refuses p that is not above 0 and up to 0.999999 (OutOfRange, at /probability) and a
// dof that is negative, or above zero and below 0.1 (OutOfRange, at /dof).
func CoverageFactor(p, dof float64) (float64, error) {
	var faults check.Faults
	var root check.Path
	checkCoverage(&faults, root.Field("probability"), p)
	checkFreedom(&faults, root.Field("dof"), dof)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return coverage(p, dof), nil
}

// fewest degrees of freedom leave a factor that is a finite number.
const fewest = 0.1

// surest is the probability up to which the quantiles were checked; not far beyond it
// they go wrong: at 1e5 degrees of freedom from 1 - 1e-12 on, to infinity at last.
const surest = 0.999999

func checkCoverage(faults *check.Faults, at check.Path, p float64) {
	if !(p > 0 && p <= surest) {
		faults.Add(units.OutOfRange, at, p, "a probability above 0, up to 0.999999")
	}
}

func coverage(p, dof float64) float64 {
	const many = 1e5
	upper := (1 + p) / 2
	if dof > 0 && dof <= many {
		return distuv.StudentsT{Sigma: 1, Nu: dof}.Quantile(upper)
	}
	z := distuv.UnitNormal.Quantile(upper)
	if dof == 0 {
		return z
	}
	return z + z*(float64(z*z)+1)/(4*dof)
}

// EffectiveDoF returns the degrees of freedom of the uncertainty of
//
//	q = a[0] horizontal offset + a[1] horizontal slope + a[2] vertical offset + a[3] vertical slope
//
// with offsets in nanometres and slopes as ratios, by the formula of Welch and
// Satterthwaite (JCGM 100:2008, G.4.1):
//
//	dof = u(q)^4 / (s(q)^4 / DoF)
//
// where s(q) is the part that the scatter gave: what was stated beside it counts
// as known, with no end of degrees of freedom. Zero means none to count: nothing
// comes from a scatter, or so little that they are above 1e9. In a sum of estimates the scatters of all count as one
// with the fewest degrees of freedom among them, which never claims more than is
// known.
func (c Covariance) EffectiveDoF(a [4]float64) float64 {
	const perMM = float64(units.Millimetre)
	return c.effective([four]float64{a[offsetY] * perMM, a[slopeY], a[offsetZ] * perMM, a[slopeZ]}, 0)
}

// effective does so for a in millimetres and ratios, with a variance beside that
// of the centreline that is known.
func (c *Covariance) effective(a [four]float64, known float64) float64 {
	s := c.scattered.along(a)
	if !(s > 0) {
		return 0
	}
	return welchSatterthwaite(max(s, c.v.along(a)+known), float64(s*s)/c.DoF)
}

// expanded is the half width of the interval with probability p of the linear
// combination a; NaN when the basis is Unknown.
func (c *Covariance) expanded(p float64, a [four]float64) float64 {
	u := c.root(c.v.along(a))
	if u == 0 || math.IsNaN(u) {
		return u
	}
	return u * coverage(p, c.effective(a, 0))
}

// Expanded returns the expanded uncertainty of each of the four numbers: half
// the width of the interval that holds the true one with probability p, which is
// [CoverageFactor] times the standard uncertainty, with the [Covariance.EffectiveDoF]
// of that number (JCGM 100:2008, 6.2 and G.6.4). NaN in each when the basis is
// Unknown. Each interval is for its number alone; all four together hold with a
// lower probability. It refuses p that is not above 0 and up to 0.999999 (OutOfRange, at
// /probability) and an estimate that is not sound (/cov/u/vertical/offset).
func (e Estimate) Expanded(p float64) (Centreline, error) {
	if err := e.checkExpanded(p); err != nil {
		return Centreline{}, err
	}
	var half [four]float64
	for i := range half {
		var a [four]float64
		a[i] = 1
		half[i] = e.Cov.expanded(p, a)
	}
	return centreline(half), nil
}

// ExpandedAt returns the expanded uncertainty of where the centreline passes at
// station x, in each plane: as [Estimate.Expanded] does, for w(x).
func (e Estimate) ExpandedAt(x units.Length, p float64) (Vector, error) {
	if err := e.checkExpanded(p); err != nil {
		return Vector{}, err
	}
	var faults check.Faults
	var root check.Path
	if check.Finite(&faults, root.Field("x"), x); faults.Len() > 0 {
		return Vector{}, faults.Err()
	}
	h, v := passing(x)
	return Vector{fromMM(e.Cov.expanded(p, h)), fromMM(e.Cov.expanded(p, v))}, nil
}

// passing returns w(x) in each plane as a combination of the four numbers.
func passing(x units.Length) (horizontal, vertical [four]float64) {
	return [four]float64{offsetY: 1, slopeY: mm(x)}, [four]float64{offsetZ: 1, slopeZ: mm(x)}
}

func (e *Estimate) checkExpanded(p float64) error {
	var faults check.Faults
	var root check.Path
	checkCoverage(&faults, root.Field("probability"), p)
	e.check(&faults, root)
	return faults.Err()
}

// Freedom holds degrees of freedom in each plane; zero: none to count.
type Freedom struct {
	Horizontal float64 `json:"horizontal"`
	Vertical   float64 `json:"vertical"`
}

// Expanded returns the expanded uncertainty of the move in each plane: half the
// width of the interval that holds the true move with probability p, with the
// move's own degrees of freedom; see [Estimate.Expanded]. NaN when the basis is
// Unknown. It refuses p that is not above 0 and up to 0.999999 (OutOfRange, at
// /probability), and degrees of freedom that [CoverageFactor] refuses (at
// /dof/vertical).
func (m Move) Expanded(p float64) (Vector, error) {
	var faults check.Faults
	var root check.Path
	checkCoverage(&faults, root.Field("probability"), p)
	m.DoF.check(&faults, root.Field("dof"))
	if err := faults.Err(); err != nil {
		return Vector{}, err
	}
	return Vector{
		m.U.Horizontal * units.Length(coverage(p, m.DoF.Horizontal)),
		m.U.Vertical * units.Length(coverage(p, m.DoF.Vertical)),
	}, nil
}

func (d Freedom) check(faults *check.Faults, at check.Path) {
	checkFreedom(faults, at.Field("horizontal"), d.Horizontal)
	checkFreedom(faults, at.Field("vertical"), d.Vertical)
}

// checkFreedom asks for degrees of freedom, or zero for none to count.
func checkFreedom(faults *check.Faults, at check.Path, dof float64) {
	if check.NotNegative(faults, at, dof, "degrees of freedom") && dof != 0 && dof < fewest {
		faults.Add(units.OutOfRange, at, dof, "at least 0.1 degrees of freedom, or zero for none to count")
	}
}
