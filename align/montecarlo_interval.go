package align

import "math"

// within returns how many steps from one outcome to the next an interval of
// probability p spans among n: q of JCGM 101:2008, 7.7.1.
func within(n int, p float64) int {
	return int(math.Floor(float64(p*float64(n)) + 0.5))
}

// symmetric returns the probabilistically symmetric interval of probability p of
// outcomes in rising order (JCGM 101:2008, 7.7.2).
func symmetric(rising []float64, p float64) (low, high float64) {
	n := len(rising)
	q := within(n, p)
	r := (n - q + 1) / 2 // (n-q)/2, or half more where that is not whole
	return rising[r-1], rising[r-1+q]
}

// shortest returns the shortest interval of probability p of outcomes in rising
// order (JCGM 101:2008, 7.7.3); the lowest, where several are as short.
func shortest(rising []float64, p float64) (low, high float64) {
	q := within(len(rising), p)
	best := 0
	for r := range len(rising) - q {
		if rising[r+q]-rising[r] < rising[best+q]-rising[best] {
			best = r
		}
	}
	return rising[best], rising[best+q]
}

// merged returns the numbers of all runs in rising order; each run rises.
func merged(runs [][]float64) []float64 {
	if len(runs) == 1 {
		return runs[0]
	}
	half := len(runs) / 2
	a, b := merged(runs[:half]), merged(runs[half:])
	all := make([]float64, 0, len(a)+len(b))
	for len(a) > 0 && len(b) > 0 {
		if b[0] < a[0] {
			all, b = append(all, b[0]), b[1:]
		} else {
			all, a = append(all, a[0]), a[1:]
		}
	}
	all = append(all, a...)
	return append(all, b...)
}
