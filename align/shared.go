package align

// addShared adds to c what the readings of one set have in common: an error of
// the station, the radius, the sag or the clock. Each moves the set's harmonic
// (its sine and cosine amplitudes S and C) as a whole, so the readings cannot
// average it out, and the fit follows with
//
//	d beta = (A'WA)^-1 J' G (dS, dC)
//
// where G weighs the harmonic and J is its law. To first order, JCGM 100:2008,
// 5.2; derived here. How an error of station, radius or clock weighs on the
// residuals is left out: exact where the readings lie on their harmonic, some
// hundredths where they miss it by a tenth.
func (s *solution) addShared(c *Covariance, set *Set) {
	u := set.U
	if u.Station == 0 && u.Radius == 0 && u.Sag == 0 && u.Clock == 0 {
		return
	}
	h := s.harmonic(set)
	if u.Station != 0 {
		x := h.law.onOffset * mm(u.Station)
		h.add(c, x*s.beta[slopeY], x*s.beta[slopeZ])
	}
	if u.Radius != 0 && usesOf[set.Probe.Kind].radius {
		part := float64(u.Radius / set.Probe.Radius) // faces: S and C grow with the radius
		h.add(c, h.sin*part, h.cos*part)
	}
	if u.Sag != 0 {
		h.add(c, 0, mm(u.Sag))
	}
	if u.Clock != 0 { // the droop turns with the clock as well
		delta := float64(u.Clock)
		h.add(c, -(h.cos+set.droop())*delta, h.sin*delta)
	}
}

// harmonic is what one set reads as an amplitude of sine and of cosine, and how
// a change of it moves the fit.
type harmonic struct {
	law      law
	sin, cos float64
	gain     [four][2]float64 // (A'WA)^-1 J' G
}

func (s *solution) harmonic(set *Set) harmonic {
	var r reduced
	r.reduce(set)
	h := harmonic{law: set.Probe.law()}
	h.sin = float64(h.law.onOffset*s.beta[offsetY]) + float64(h.law.onSlope*s.beta[slopeY])
	h.cos = float64(h.law.onOffset*s.beta[offsetZ]) + float64(h.law.onSlope*s.beta[slopeZ])
	ss, sc, cc := r.normal()
	for i := range h.gain {
		onSin := float64(s.unit[i][offsetY]*h.law.onOffset) + float64(s.unit[i][slopeY]*h.law.onSlope)
		onCos := float64(s.unit[i][offsetZ]*h.law.onOffset) + float64(s.unit[i][slopeZ]*h.law.onSlope)
		h.gain[i] = [2]float64{
			float64(onSin*ss) + float64(onCos*sc),
			float64(onSin*sc) + float64(onCos*cc),
		}
	}
	return h
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

// add adds the variance that a standard uncertainty (sin, cos) of the harmonic
// brings.
func (h *harmonic) add(c *Covariance, sin, cos float64) {
	var d [four]float64
	for i := range d {
		d[i] = float64(h.gain[i][0]*sin) + float64(h.gain[i][1]*cos)
	}
	for i := range c.v {
		for j := range c.v[i] {
			c.v[i][j] += float64(d[i] * d[j])
		}
	}
}
