package nearest

import "math"

// Products are rounded before they are added, so that no platform fuses the two.

func dot(a, b []float64) float64 {
	b = b[:len(a)]
	sum := 0.0
	for i, v := range a {
		sum += float64(v * b[i])
	}
	return sum
}

// addTo adds factor times a to sum.
func addTo(sum []float64, factor float64, a []float64) {
	sum = sum[:len(a)]
	for i, v := range a {
		sum[i] += float64(factor * v)
	}
}

// rotate turns the pair of vectors by the angle with cosine c and sine s.
func rotate(a, b []float64, c, s float64) {
	b = b[:len(a)]
	for i, v := range a {
		w := b[i]
		a[i] = float64(c*v) + float64(s*w)
		b[i] = float64(c*w) - float64(s*v)
	}
}

// length is free of overflow and underflow in between.
func length(a []float64) float64 {
	largest := 0.0
	for _, v := range a {
		largest = max(largest, math.Abs(v)) // NaN if one is
	}
	if largest == 0 || math.IsInf(largest, 0) {
		return largest
	}
	sum := 0.0
	for _, v := range a {
		sum += float64(v / largest * (v / largest))
	}
	return largest * math.Sqrt(sum)
}
