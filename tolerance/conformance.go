package tolerance

import "math"

// conformance is the probability that the true vector, of which item tells the
// size, is at or below the limit: rounded, and neither 0 nor 1 unless the vector
// is exact. It is NaN where the covariance is.
func (w vector) conformance(item *Item) float64 {
	limit := item.Of.number(item.Limit)
	major := w.principal() / limit
	if math.IsNaN(major) {
		return math.NaN()
	}
	if major > exact {
		d := w.disc(limit, major)
		return min(max(finest, rounded(d.probability())), 1-finest)
	}
	if item.Within() {
		return 1
	}
	return 0
}

// exact is the uncertainty, in limits, below which a float64 cannot tell what was
// found from another value that would be as likely.
const exact = 1e-15

// disc turns w to its principal axes, in units of the limit. The smaller variance
// is the determinant over the larger, which does not cancel as the difference of
// mean and radius would.
func (w vector) disc(limit, major float64) disc {
	sin, cos := math.Sincos(math.Atan2(2*w.yz, w.yy-w.zz) / 2)
	y, z := w.y/limit, w.z/limit
	yy, yz, zz := w.yy/limit/limit, w.yz/limit/limit, w.zz/limit/limit
	return disc{
		m:   [2]float64{float64(y*cos) + float64(z*sin), float64(z*cos) - float64(y*sin)},
		s:   [2]float64{major, root(float64(yy*zz)-float64(yz*yz)) / major},
		dof: fewer(w.dof),
	}
}

// fewer returns the smaller of two degrees of freedom, of which zero is none to
// count.
func fewer(dof [2]float64) float64 {
	if dof[0] == 0 || dof[1] == 0 {
		return dof[0] + dof[1]
	}
	return min(dof[0], dof[1])
}

// horizontal and vertical are w in one plane alone, laid along y.
func (w vector) horizontal() vector { return vector{y: w.y, yy: w.yy, dof: [2]float64{w.dof[0]}} }

func (w vector) vertical() vector { return vector{y: w.z, yy: w.zz, dof: [2]float64{w.dof[1]}} }
