package align

// addShared adds to c what the readings of one set have in common: an error of
// the station, the radius, the sag or the clock. Each moves the set's harmonic
// (its sine and cosine amplitudes S and C) as a whole, so the readings cannot
// average it out. With J the law that turns beta into (S, C), G the weight of the
// harmonic and g what the readings that miss it pull at it, the fit follows with
//
//	d beta = (A'WA)^-1 (dJ' g - J' G (dS, dC))
//
// the derivative of the normal equations. To first order, JCGM 100:2008, 5.2;
// derived here.
func (s *solution) addShared(c *Covariance, set *Set) {
	u := set.U
	if u.Station == 0 && u.Radius == 0 && u.Sag == 0 && u.Clock == 0 {
		return
	}
	h := s.harmonic(set)
	if u.Station != 0 {
		h.addLaw(c, law{0, h.law.onOffset * mm(u.Station)})
	}
	if u.Radius != 0 && usesOf[set.Probe.Kind].radius {
		h.addLaw(c, h.law.times(float64(u.Radius/set.Probe.Radius))) // faces: S and C grow with the radius
	}
	if u.Sag != 0 {
		h.add(c, 0, mm(u.Sag), [four]float64{})
	}
	if u.Clock != 0 { // the droop turns with the clock as well, and the law with the harmonic
		turn := h.law.times(float64(u.Clock))
		sin, cos := h.solution.amplitudes(turn)
		h.add(c, -cos-float64(set.droop()*float64(u.Clock)), sin, turn.row(h.pull[1], -h.pull[0]))
	}
}

// harmonic is what one set reads as an amplitude of sine and of cosine, and how
// a change of it moves the fit.
type harmonic struct {
	solution *solution
	law      law
	gain     [four][2]float64 // (A'WA)^-1 J' G
	pull     [2]float64       // g: the weighted residuals, on sine and cosine; zero where all readings lie on the harmonic
}

func (s *solution) harmonic(set *Set) harmonic {
	var r reduced
	r.reduce(set)
	h := harmonic{solution: s, law: set.Probe.law()}
	ss, sc, cc := r.normal()
	for i := range h.gain {
		onSin := float64(s.unit[i][offsetY]*h.law.onOffset) + float64(s.unit[i][slopeY]*h.law.onSlope)
		onCos := float64(s.unit[i][offsetZ]*h.law.onOffset) + float64(s.unit[i][slopeZ]*h.law.onSlope)
		h.gain[i] = [2]float64{
			float64(onSin*ss) + float64(onCos*sc),
			float64(onSin*sc) + float64(onCos*cc),
		}
	}
	sin, cos := s.amplitudes(h.law)
	for i, row := range r.rows {
		left := r.rhs[i] - float64(row[0]*sin) - float64(row[1]*cos)
		h.pull[0] += float64(row[0] * left)
		h.pull[1] += float64(row[1] * left)
	}
	return h
}

// amplitudes returns the sine and the cosine that a law makes of the answer.
func (s *solution) amplitudes(l law) (sin, cos float64) {
	sin = float64(l.onOffset*s.beta[offsetY]) + float64(l.onSlope*s.beta[slopeY])
	cos = float64(l.onOffset*s.beta[offsetZ]) + float64(l.onSlope*s.beta[slopeZ])
	return sin, cos
}

// normal returns G, the normal matrix of the two equations in sine and cosine.
func (r *reduced) normal() (ss, sc, cc float64) {
	for _, row := range r.rows {
		ss += float64(row[0] * row[0])
		sc += float64(row[0] * row[1])
		cc += float64(row[1] * row[1])
	}
	return ss, sc, cc
}

// addLaw adds the variance that a standard uncertainty of the law brings.
func (h *harmonic) addLaw(c *Covariance, d law) {
	sin, cos := h.solution.amplitudes(d)
	h.add(c, sin, cos, d.row(h.pull[0], h.pull[1]))
}

// add adds the variance that a standard uncertainty (sin, cos) of the harmonic
// brings, pulled being dJ' g.
func (h *harmonic) add(c *Covariance, sin, cos float64, pulled [four]float64) {
	var d [four]float64
	for i := range d {
		d[i] = -float64(h.gain[i][0]*sin) - float64(h.gain[i][1]*cos)
		for j := range pulled {
			d[i] += float64(h.solution.unit[i][j] * pulled[j])
		}
	}
	for i := range c.v {
		for j := range c.v[i] {
			c.v[i][j] += float64(d[i] * d[j])
		}
	}
}
