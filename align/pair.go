package align

// pair solves two sets, each of which sees a harmonic of its own. Its two amplitudes
// h and the four numbers are the same but for the laws of the probes, plane by plane:
//
//	(h1, h2) = L (offset, slope)    L = [a1 b1; a2 b2]    (offset, slope) = L^-1 (h1, h2)
//
// so nothing is left to fit, and the covariance is the sum of (L^-1)_j V_j (L^-1)_j',
// with (L^-1)_j a column and V_j the covariance of one harmonic. It is the joint fit;
// derived here. It tells whether the condition is such that this is good.
func (s *solution) pair(sets []Set, scale [four]float64) bool {
	l1, l2 := sets[0].Probe.law(), sets[1].Probe.law()
	det := float64(l1.onOffset*l2.onSlope) - float64(l1.onSlope*l2.onOffset)
	s.beta, s.unit = [four]float64{}, matrix{}
	s.addHarmonic(&s.kept[0], l2.onSlope/det, -l2.onOffset/det)
	s.addHarmonic(&s.kept[1], -l1.onSlope/det, l1.onOffset/det)
	return s.plain(scale)
}

// addHarmonic adds what one harmonic says of the four numbers, where it counts so
// much for offset and slope.
func (s *solution) addHarmonic(r *reduced, offset, slope float64) {
	sin, cos, ss, sc, cc := r.harmonic()
	count := [2]float64{offset, slope}
	for i, p := range count {
		s.beta[offsetY+i] += float64(p * sin)
		s.beta[offsetZ+i] += float64(p * cos)
		for j, q := range count {
			pq := p * q
			s.unit[offsetY+i][offsetY+j] += float64(pq * ss)
			s.unit[offsetZ+i][offsetZ+j] += float64(pq * cc)
			s.unit[offsetY+i][offsetZ+j] += float64(pq * sc)
			s.unit[offsetZ+i][offsetY+j] += float64(pq * sc)
		}
	}
}

// harmonic returns the amplitudes of sine and cosine of the set alone, and their
// covariance (R'R)^-1. Of one that the set does not see they are not finite, or
// rounding.
func (r *reduced) harmonic() (sin, cos, ss, sc, cc float64) {
	a, b := r.rows[0], r.rows[1]
	det := float64(a[0]*b[1]) - float64(a[1]*b[0])
	u, v := [2]float64{b[1] / det, -a[1] / det}, [2]float64{-b[0] / det, a[0] / det} // R^-1
	sin = float64(u[0]*r.rhs[0]) + float64(u[1]*r.rhs[1])
	cos = float64(v[0]*r.rhs[0]) + float64(v[1]*r.rhs[1])
	return sin, cos, square(u[0]) + square(u[1]), float64(u[0]*v[0]) + float64(u[1]*v[1]), square(v[0]) + square(v[1])
}
