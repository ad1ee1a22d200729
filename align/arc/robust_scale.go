package arc

import (
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// newSearch prepares a search about the plain fit of the sets.
func newSearch(plain align.Fitted, sets []align.Set) *search {
	s := &search{sets: clone(sets), stated: statedAt(sets[0], 0) != 0}
	for _, set := range sets {
		for j := range set.Readings {
			u := statedAt(set, j)
			s.u, s.dev = append(s.u, u), append(s.dev, deviationAt(set, plain.Value, j, u))
		}
	}
	if !s.stated {
		s.measure(units.Micrometre) // any, to begin with
	}
	s.tellable()
	return s
}

// measure gives every reading the same standard deviation.
func (s *search) measure(u units.Length) {
	for n := range s.u {
		s.u[n], s.dev[n] = u, u
	}
}

// scale returns the standard deviation of a reading for sets that state none: from
// the least median of absolute residuals that the plain fit has, or one that leaves
// out one reading, as P. J. Rousseeuw and A. M. Leroy have it for as many readings
// left over (Robust Regression and Outlier Detection, 1987, from memory):
//
//	1.4826 (1 + 5/dof) median |r|
//
// It is zero where nothing can be told. No reading is taken to be better than a
// millionth of the largest (ours): readings that agree more closely are round
// numbers or none that a dial showed.
func (s *search) scale(dof int) units.Length {
	weights := ones(len(s.u))
	least := s.median(weights)
	for n := range weights {
		if s.judge[n] {
			weights[n] = faint
			least = min(least, s.median(weights))
			weights[n] = 1
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return max(units.Length(1.4826*(1+5/float64(dof))*least), 1e-6*s.largest(), check.Finest)
}

// median of the absolute residuals under the given weights, of the readings that
// can be judged; infinite where there are none.
func (s *search) median(weights []float64) float64 {
	if s.fit(weights) != nil {
		return math.Inf(1)
	}
	var list []float64
	for n, r := range s.left {
		if s.judge[n] {
			list = append(list, math.Abs(float64(r.Value)))
		}
	}
	if len(list) == 0 {
		return math.Inf(1)
	}
	slices.Sort(list)
	return list[len(list)/2]
}

// largest reading there is.
func (s *search) largest() (most units.Length) {
	for _, set := range s.sets {
		for _, r := range set.Readings {
			most = max(most, r.Value, -r.Value)
		}
	}
	return most
}
