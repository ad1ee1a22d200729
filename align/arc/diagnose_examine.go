package arc

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/stat/distuv"
)

// An examination counts the readings through all sets.
type examination struct {
	fit       align.Fitted
	sets      []align.Set
	residuals []align.Residual
	first     []int          // number of the first reading of every set
	dev       []units.Length // standard deviation of every reading; zero: nothing tells
	stated    bool
}

// deviations finds the standard deviation of every reading.
func (e *examination) deviations() {
	e.stated = statedAt(e.sets[0], 0) != 0
	for _, set := range e.sets {
		e.first = append(e.first, len(e.dev))
		for j := range set.Readings {
			dev := e.fit.Scatter
			if u := statedAt(set, j); u != 0 {
				dev = deviationAt(set, e.fit.Value, j, u)
			}
			e.dev = append(e.dev, dev)
		}
	}
}

// standardise counts the angles in.
func (e *examination) standardise() {
	for n := range e.residuals {
		r := &e.residuals[n]
		if u := statedAt(e.sets[r.Set], r.Reading); u != 0 {
			r.Standardised *= float64(u / e.dev[n])
		}
	}
}

// effect judges a length whose standard uncertainty is u if the deviations hold.
func (e *examination) effect(value, u units.Length) Effect {
	if p, shrunk, known := e.judge(float64(value / u)); known {
		return Effect{value, u * units.Length(shrunk), e.basis(), p}
	}
	return Effect{Value: value, Basis: align.Unknown, P: 1}
}

func (e *examination) basis() align.Basis {
	if e.stated {
		return align.Stated
	}
	return align.Scatter
}

// judge returns the probability of a length that is t standard uncertainties or
// more off zero, either way. Where these come from the scatter, the length is a part
// of it: with it taken out, one degree of freedom and t^2 of the sum of squares,
//
//	s_rest = s sqrt((dof - t^2)/(dof - 1))
//
// and t s/s_rest is Student's; shrunk is s_rest/s.
func (e *examination) judge(t float64) (p, shrunk float64, known bool) {
	if math.IsNaN(t) || math.IsInf(t, 0) {
		return 1, 0, false // by a deviation of zero: nothing tells
	}
	if e.stated {
		return chance(t), 1, true
	}
	dof := float64(e.fit.DegreesOfFreedom)
	if dof < 2 {
		return 1, 0, false
	}
	if t*t >= dof {
		return 0, 0, true // the rest agrees exactly
	}
	shrunk = math.Sqrt((dof - float64(t*t)) / (dof - 1))
	return chanceT(t/shrunk, dof-1), shrunk, true
}

// chance is the probability of a normal deviate at least as large as t, either way.
func chance(t float64) float64 { return math.Erfc(math.Abs(t) / math.Sqrt2) }

// chanceT is the same for Student's t.
func chanceT(t, dof float64) float64 {
	return min(1, 2*distuv.StudentsT{Sigma: 1, Nu: dof}.Survival(math.Abs(t)))
}
