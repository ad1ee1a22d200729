package align

// bends tells whether an error of a set changes the law that its readings
// follow, so that the answer is no longer linear in what is drawn. Errors of
// readings and of sag do not.
func (s *Set) bends() bool {
	return s.U.Station != 0 || s.U.Clock != 0 || s.U.Angle != 0 || s.U.Radius != 0 && usesOf[s.Probe.Kind].radius
}

// answer fits the sets as drawn.
func (t *trials) answer() (beta [four]float64, ok bool) {
	if t.gain != nil {
		return t.gain.apply(t.drawn), true
	}
	for i := range t.drawn {
		if p := &t.drawn[i].Probe; usesOf[p.Kind].radius && !(p.Radius > 0) {
			return beta, false
		}
	}
	var s solution
	if err := s.solve(t.drawn); err != nil {
		return beta, false
	}
	return s.beta, true
}

// gain is by how much each number of the answer moves with each reading, where
// probes and angles stay: the fit is linear in the readings then.
type gain struct {
	perReading [][four]float64 // of all sets, one after the other
	cos        []float64       // of each reading
}

// gain returns (A'WA)^-1 w^2 (a - m) for every reading, with a its row and m the
// mean row of its set.
func (s *solution) gain(sets []Set) *gain {
	g := new(gain)
	for k := range sets {
		set := &sets[k]
		l := set.Probe.law()
		meanSin, meanCos := set.meanDirection()
		for i := range set.Readings {
			sin, cos := set.sinCos(i)
			w := set.weight(i)
			row := l.row(float64(w*w)*(sin-meanSin), float64(w*w)*(cos-meanCos))
			g.perReading = append(g.perReading, s.unit.of(row))
			g.cos = append(g.cos, cos)
		}
	}
	return g
}

// apply returns the answer for the readings and the sag of the sets.
func (g *gain) apply(sets []Set) (beta [four]float64) {
	k := 0
	for i := range sets {
		droop := sets[i].droop()
		for j := range sets[i].Readings {
			r := mm(sets[i].Readings[j].Value) - float64(droop*g.cos[k])
			for n, x := range g.perReading[k] {
				beta[n] += float64(x * r)
			}
			k++
		}
	}
	return beta
}
