package align

import (
	"math"

	"example.org/collinear/internal/lsq"
	"example.org/collinear/units"
)

// A solution is the least-squares answer in millimetres and ratios, before it
// is put into quantities.
type solution struct {
	beta      [four]float64
	unit      matrix // (A'WA)^-1: the covariance if the weights are right
	condition float64
	stated    bool    // whether weights are 1/u
	readings  int     // how many
	zeros     int     // how many constants were fitted beside beta
	sum       float64 // weighted squares of the residuals
	size      float64 // weighted squares of the readings
	weight    float64 // sum of the squared weights

	kept [few]reduced // of the first sets
}

// few is for how many sets their equations are kept; of more they are made again
// where they are asked for, as memory would have to be allocated.
const few = 6

func (s *solution) solve(sets []Set) error {
	var seen law // squared lengths of the columns of an offset and of a slope, before the zeros were eliminated
	var b block
	for i := range min(len(sets), few) {
		s.kept[i].reduce(&sets[i], &b)
	}
	for i := range sets {
		s.count(&seen, &sets[i], s.reduced(sets, i))
	}
	if scale := seen.fullTurn(); len(sets) != 2 || !s.pair(sets, scale) {
		return s.joint(sets, scale)
	}
	return nil
}

// reduced returns the equations of set i.
func (s *solution) reduced(sets []Set, i int) reduced {
	if i < few {
		return s.kept[i]
	}
	return reduceAgain(&sets[i])
}

func reduceAgain(set *Set) (r reduced) {
	var b block
	r.reduce(set, &b)
	return r
}

// joint solves the equations of all sets together. Plane rotations keep this equal
// to the fit with all zeros, also where a set alone is singular.
func (s *solution) joint(sets []Set, scale [four]float64) error {
	var work [four * (four + 1)]float64
	common := lsq.In(work[:], four)
	for i := range sets {
		r, l := s.reduced(sets, i), sets[i].Probe.law()
		for k := range r.rows {
			row := l.row(r.rows[k][0], r.rows[k][1])
			common.Add(row[:], r.rhs[k])
		}
	}
	s.sum += common.SumSquares()
	if err := s.judge(&common, scale); err != nil {
		return err
	}
	common.Solve(s.beta[:])
	return nil
}

// keepCovariance keeps that of the equations.
func (s *solution) keepCovariance(common *lsq.Triangle) {
	var flat [four * four]float64
	common.Covariance(flat[:])
	for i := range s.unit {
		copy(s.unit[i][:], flat[four*i:])
	}
}

// count adds up what does not depend on the answer.
func (s *solution) count(seen *law, set *Set, r reduced) {
	seen.addFullTurn(set.Probe.law(), r.weight)
	s.sum += r.sum
	s.size += r.size
	s.weight += r.weight
	s.stated = set.uncertainty(0) != 0
	s.readings += len(set.Readings)
	s.zeros++
}

// addFullTurn adds the squared lengths of the columns of an offset and of a slope
// as a full turn of a set with this law and weight would leave them.
func (l *law) addFullTurn(own law, weight float64) {
	l.onOffset += float64(own.onOffset * own.onOffset * weight / 2)
	l.onSlope += float64(own.onSlope * own.onSlope * weight / 2)
}

// row spreads a sine and a cosine over the four numbers.
func (l law) row(sin, cos float64) [four]float64 {
	return [four]float64{
		offsetY: l.onOffset * sin, slopeY: l.onSlope * sin,
		offsetZ: l.onOffset * cos, slopeZ: l.onSlope * cos,
	}
}

func (s *solution) dof() int { return max(0, s.readings-s.zeros-four) }

// residualVariance is the weighted variance of a reading of weight one, from the
// residuals. It is zero where no reading is left over, or where the residuals
// are no more than rounding: they say nothing then.
func (s *solution) residualVariance() float64 {
	const rounding = 1e-12
	if s.dof() == 0 {
		return 0
	}
	variance := s.sum / float64(s.dof())
	if variance <= float64(rounding*rounding)*s.size {
		return 0
	}
	return variance
}

// scatter is the standard deviation of a reading of average weight.
func (s *solution) scatter() units.Length {
	average := s.weight / float64(s.readings)
	return fromMM(math.Sqrt(s.residualVariance() / average))
}

// covariance sets c to that of the readings, stated or from their scatter, and that
// of what the readings of a mounting share.
func (s *solution) covariance(c *Covariance, sets []Set) {
	s.ofReadings(c)
	if c.Basis == Unknown {
		return
	}
	for i := range sets {
		if s.stated {
			s.addAngles(c, &sets[i])
		}
		if sets[i].exact() || mountedAt(sets, i) != i {
			continue
		}
		for _, d := range s.effects(sets, i) {
			c.v.addSquare(d)
		}
	}
}

// ofReadings sets c to the covariance that the errors of single readings make.
func (s *solution) ofReadings(c *Covariance) {
	if s.stated {
		c.Basis, c.v = Stated, s.unit
		return
	}
	variance := s.residualVariance()
	if variance == 0 {
		c.Basis = Unknown
		return
	}
	c.Basis, c.DoF = Scatter, float64(s.dof())
	for i := range c.v {
		for j := range c.v[i] {
			c.v[i][j] = s.unit[i][j] * variance
		}
	}
	c.scattered = c.v
}
