package align

// addAngles adds to c what an error of each clock position by itself brings. A
// reading taken at an angle that is wrong by e stands off the harmonic by
// -(dr/dt) e, and its row of the equations is off by (da/dt) e, which counts as
// far as the reading misses the fit: with r its residual and m the mean row,
//
//	d beta = (A'WA)^-1 w^2 ((a - m) k + (da/dt) r)        k = -(dr/dt) e
//
// To first order, JCGM 100:2008, 5.2; derived here. Where the uncertainty of the
// readings comes from their scatter, that of the angles is in the scatter already.
func (s *solution) addAngles(c *Covariance, set *Set) {
	if set.U.Angle == 0 {
		return
	}
	l, e := set.Probe.law(), float64(set.U.Angle)
	zero := set.zero(s.beta)
	meanSin, meanCos := set.meanDirection()
	for i := range set.Readings {
		sin, cos := set.sinCos(i)
		w := set.weight(i)
		slope := set.slopeAt(s.beta, sin, cos)
		off := l.row(sin-meanSin, cos-meanCos)
		turned := l.row(cos, -sin)
		r := set.corrected(i, cos) - l.at(s.beta, sin, cos) - zero
		var pull [four]float64
		for j := range pull {
			pull[j] = float64(w*w) * (float64(turned[j]*r) - float64(off[j]*slope)) * e
		}
		c.v.addSquare(s.unit.of(pull))
	}
}

// of returns M a.
func (m *matrix) of(a [four]float64) (b [four]float64) {
	for i := range b {
		for j := range a {
			b[i] += float64(m[i][j] * a[j])
		}
	}
	return b
}
