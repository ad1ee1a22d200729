package arc

import (
	"math"

	"example.org/collinear/align"
	"gonum.org/v1/gonum/mat"
)

// numbers are the four of a centreline: horizontal offset and slope, vertical
// offset and slope; offsets in nanometres.
type numbers [4]float64

func numbersOf(c align.Centreline) numbers {
	return numbers{
		float64(c.Horizontal.Offset), float64(c.Horizontal.Slope),
		float64(c.Vertical.Offset), float64(c.Vertical.Slope),
	}
}

// pool is two estimates side by side, each number counted in the standard
// uncertainty of its difference, so that nanometres and ratios do not meet.
// A number that both know exactly is counted as zero there.
type pool struct {
	scale   numbers       // standard uncertainties of the difference
	scaled  numbers       // the difference, scaled
	a, b    *mat.SymDense // the covariances, scaled
	known   []direction   // in which the difference has an uncertainty
	chi2    float64
	apart   bool       // whether both differ where both are exact
	toward  numbers    // V^-1 d, scaled
	inverse *mat.Dense // V^-1, over the known directions
}

// direction is a principal axis of the covariance of the difference.
type direction struct {
	axis     numbers
	variance float64
}

// exactly is the variance of a direction that counts as exact, in those of the
// numbers: rounding is a thousandth of it.
const exactly = 1e-12

func newPool(a, b align.Estimate) *pool {
	p := &pool{inverse: mat.NewDense(4, 4, nil)}
	ua, ub := numbersOf(a.Cov.Standard()), numbersOf(b.Cov.Standard())
	va, vb := numbersOf(a.Value), numbersOf(b.Value)
	var rounding numbers // of the values, scaled
	for i := range p.scale {
		p.scale[i] = math.Hypot(ua[i], ub[i])
		d, r := va[i]-vb[i], 4*0x1p-52*(math.Abs(va[i])+math.Abs(vb[i]))
		if p.scale[i] == 0 {
			p.apart = p.apart || math.Abs(d) > r
			continue
		}
		p.scaled[i], rounding[i] = d/p.scale[i], r/p.scale[i]
	}
	p.a, p.b = p.covariance(ua, a.Cov), p.covariance(ub, b.Cov)
	for _, d := range directions(p.a, p.b) {
		p.take(d, rounding)
	}
	return p
}

// covariance is that of one estimate, scaled.
func (p *pool) covariance(u numbers, c align.Covariance) *mat.SymDense {
	v, r := mat.NewSymDense(4, nil), c.Correlation()
	for i := range u {
		for j := range i + 1 {
			if p.scale[i] != 0 && p.scale[j] != 0 {
				v.SetSym(i, j, u[i]/p.scale[i]*r[i][j]*(u[j]/p.scale[j]))
			}
		}
	}
	return v
}

// directions are the principal axes of the sum of two covariances.
func directions(a, b *mat.SymDense) (list [4]direction) {
	var sum mat.SymDense
	sum.AddSym(a, b)
	variances, axes := principal(&sum)
	for k := range list {
		list[k].variance = variances[k]
		mat.Col(list[k].axis[:], k, axes)
	}
	return list
}

// principal returns the eigenvalues of a covariance and, in its columns, the axes.
func principal(v *mat.SymDense) (variances []float64, axes *mat.Dense) {
	var eigen mat.EigenSym
	eigen.Factorize(v, true)
	axes = new(mat.Dense)
	eigen.VectorsTo(axes)
	return eigen.Values(nil), axes
}

// take adds what the difference has along one direction.
func (p *pool) take(d direction, rounding numbers) {
	along, blur := 0.0, 10*math.Sqrt(exactly)
	for i, e := range d.axis {
		along += float64(e * p.scaled[i])
		blur += float64(math.Abs(e) * rounding[i])
	}
	if d.variance <= exactly {
		p.apart = p.apart || math.Abs(along) > blur
		return
	}
	p.known = append(p.known, d)
	p.chi2 += float64(along * along / d.variance)
	for i := range d.axis {
		p.toward[i] += float64(along * d.axis[i] / d.variance)
		for j := range d.axis {
			p.inverse.Set(i, j, p.inverse.At(i, j)+float64(d.axis[i]*d.axis[j]/d.variance))
		}
	}
}

// freedom is that of the covariance of the difference, along V^-1 d.
func (p *pool) freedom(a, b align.Covariance) float64 {
	var along [4]float64
	size := math.Sqrt(dot(p.toward, p.toward))
	if !(size > 0) || math.IsInf(size, 0) {
		return 0
	}
	unit := mat.NewVecDense(4, nil)
	for i := range along {
		unit.SetVec(i, p.toward[i]/size)
		if p.scale[i] != 0 {
			along[i] = unit.AtVec(i) / p.scale[i]
		}
	}
	part := func(v *mat.SymDense, c align.Covariance) align.Part[float64] {
		return align.Part[float64]{U: math.Sqrt(max(0, mat.Inner(unit, v, unit))), DoF: c.EffectiveDoF(along)}
	}
	_, dof, _ := align.Combine(part(p.a, a), part(p.b, b)) // parts of sound estimates are sound
	return dof
}

func dot(a, b numbers) (sum float64) {
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}
