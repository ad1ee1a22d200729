package linprog

import "math"

// All scales are powers of two: multiplying by them rounds nothing, so what holds
// for the scaled program holds for the original.

// widest bounds the exponents of scales, so that no product of a number, a row
// scale and a column scale overflows.
const widest = 200

// unit returns the power of two that brings x into (1/2, 1], or near if x is
// extreme; 1 for zero.
func unit(x float64) float64 {
	if x == 0 {
		return 1
	}
	frac, exp := math.Frexp(x)
	if frac == 0.5 {
		exp--
	}
	return math.Ldexp(1, -max(-widest, min(widest, exp)))
}

// equilibrate chooses scales so that the largest coefficient of every row and of
// every column is near 1: rows first, then columns. A column scale is 1 or more
// then and lifts no coefficient above 1. The largest counts, not a mean: what is
// noise beside it stays noise.
func (s *Solver) equilibrate(rows []Row) {
	top := s.column // of each column, under the row scales
	clear(top)
	for i := range rows {
		scale := unit(largestOf(rows[i].Coefficients))
		s.row[i] = scale
		for j, a := range rows[i].Coefficients {
			if a := math.Abs(a) * scale; a > top[j] {
				top[j] = a
			}
		}
	}
	for j := range top {
		s.column[j] = unit(top[j])
	}
}

func largestOf(a []float64) float64 {
	top := 0.0
	for _, x := range a {
		if x := math.Abs(x); x > top {
			top = x
		}
	}
	return top
}

// rowScale returns the scale of a row under the column scales of now.
func (s *Solver) rowScale(coefficients []float64) float64 {
	top := 0.0
	for j, a := range coefficients {
		top = max(top, math.Abs(a)*s.column[j])
	}
	return unit(top)
}

// costScale returns the scale that brings the largest cost near 1.
func (s *Solver) costScale(cost []float64) float64 {
	top := 0.0
	for j, c := range cost {
		top = max(top, math.Abs(c)*s.column[j])
	}
	return unit(top)
}

// length returns what a bound of the scaled program is like: the geometric mean of
// the finite bounds, to a power of two, without zeros and what is noise beside the
// largest; 1 if there is none. One bound that is far larger than the others, as a
// limit that never binds, hardly moves it.
func (s *Solver) length() float64 {
	top := 0.0
	for v := range s.lower {
		top = max(top, finite(s.lower[v]), finite(s.upper[v]))
	}
	sum, count := 0, 0
	take := func(x float64) {
		if x = finite(x); x > 0 && x >= top*noiseLength {
			_, exp := math.Frexp(x)
			sum, count = sum+exp, count+1
		}
	}
	for v := range s.lower {
		take(s.lower[v])
		take(s.upper[v])
	}
	if count == 0 {
		return 1
	}
	return math.Ldexp(1, int(math.Floor(float64(sum)/float64(count))))
}

// noiseLength is the part of the largest bound below which a bound counts as zero
// spoilt by rounding when the length of the program is judged.
const noiseLength = 1e-10

// finite returns the size of a bound, 0 for one that is infinite.
func finite(bound float64) float64 {
	if math.IsInf(bound, 0) {
		return 0
	}
	return math.Abs(bound)
}
