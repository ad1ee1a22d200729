package align

// effects is by how much one standard uncertainty of each of the sharedInputs
// moves the answer.
type effects [len(sharedInputs)][four]float64

// effects returns those of what the readings of one mounting have in common, the
// mounting of set first and of later ones. An error of the station, the radius,
// the sag or the clock moves the harmonic of every set that is mounted so as a
// whole: the readings cannot average it out, and repeats neither.
func (s *solution) effects(sets []Set, first int) (d effects) {
	if sets[first].exact() {
		return d
	}
	for i := first; i < len(sets); i++ {
		if !together(sets, first, i) {
			continue
		}
		h := s.harmonic(sets, i)
		for k, in := range sharedInputs {
			if sets[i].U.of(in) != 0 {
				h.addEffect(&d[k], &sets[i], in)
			}
		}
	}
	return d
}

// addSquare adds d d', the covariance that comes from an error whose standard
// uncertainty moves the answer by d (JCGM 100:2008, 5.2.2).
func (m *matrix) addSquare(d [four]float64) {
	if d == [four]float64{} {
		return
	}
	for i := range m {
		row, di := &m[i], d[i]
		for j := range row {
			row[j] += float64(di * d[j])
		}
	}
}

// addEffect adds to d by how much the answer moves with one standard uncertainty
// of an input that the readings of a set share. With J the law that turns beta
// into the set's sine and cosine amplitudes S and C, G the weight of the harmonic
// and g what the readings that miss it pull at it, the fit follows with
//
//	d beta = (A'WA)^-1 (dJ' g - J' G (dS, dC))
//
// the derivative of the normal equations. To first order, JCGM 100:2008, 5.2;
// derived here.
func (h *harmonic) addEffect(d *[four]float64, set *Set, in Input) {
	e := set.disturbance(in, h.solution.beta)
	pulled := e.scaled.row(h.pull[0], h.pull[1])
	for j, p := range e.turned.row(h.pull[1], -h.pull[0]) {
		pulled[j] += p
	}
	for i := range d {
		d[i] += -float64(h.gain[i][0]*e.sin) - float64(h.gain[i][1]*e.cos)
		for j := range pulled {
			d[i] += float64(h.solution.unit[i][j] * pulled[j])
		}
	}
}

// disturbance is what one standard uncertainty of a shared input does to the
// harmonic of a set: to its amplitudes of sine and cosine, and to the law behind
// them, which it scales or turns.
type disturbance struct {
	sin, cos       float64
	scaled, turned law
}

func (s *Set) disturbance(in Input, beta [four]float64) (e disturbance) {
	l := s.Probe.law()
	switch in {
	case OfStation:
		e.scaled = law{0, l.onOffset * mm(s.U.Station)}
		e.sin, e.cos = e.scaled.amplitudes(beta)
	case OfRadius: // faces: both amplitudes grow with the radius
		if usesOf[s.Probe.Kind].radius {
			e.scaled = l.times(float64(s.U.Radius / s.Probe.Radius))
		}
		e.sin, e.cos = e.scaled.amplitudes(beta)
	case OfSag:
		e.cos = mm(s.U.Sag)
	case OfClock: // the droop turns with the clock as well
		e.turned = l.times(float64(s.U.Clock))
		sin, cos := e.turned.amplitudes(beta)
		e.sin, e.cos = -cos-float64(s.droop()*float64(s.U.Clock)), sin
	}
	return e
}

// harmonic is what one set reads as an amplitude of sine and of cosine, and how
// a change of it moves the fit.
type harmonic struct {
	solution *solution
	law      law
	gain     [four][2]float64 // (A'WA)^-1 J' G
	pull     [2]float64       // g: the weighted residuals, on sine and cosine; zero where all readings lie on the harmonic
}

func (s *solution) harmonic(sets []Set, i int) harmonic {
	r := s.reduced(sets, i)
	h := harmonic{solution: s, law: sets[i].Probe.law()}
	ss, sc, cc := r.normal()
	for i := range h.gain {
		onSin := float64(s.unit[i][offsetY]*h.law.onOffset) + float64(s.unit[i][slopeY]*h.law.onSlope)
		onCos := float64(s.unit[i][offsetZ]*h.law.onOffset) + float64(s.unit[i][slopeZ]*h.law.onSlope)
		h.gain[i] = [2]float64{
			float64(onSin*ss) + float64(onCos*sc),
			float64(onSin*sc) + float64(onCos*cc),
		}
	}
	sin, cos := h.law.amplitudes(s.beta)
	for i, row := range r.rows {
		left := r.rhs[i] - float64(row[0]*sin) - float64(row[1]*cos)
		h.pull[0] += float64(row[0] * left)
		h.pull[1] += float64(row[1] * left)
	}
	return h
}

// amplitudes returns the sine and the cosine that a law makes of a centreline.
func (l law) amplitudes(beta [four]float64) (sin, cos float64) {
	sin = float64(l.onOffset*beta[offsetY]) + float64(l.onSlope*beta[slopeY])
	cos = float64(l.onOffset*beta[offsetZ]) + float64(l.onSlope*beta[slopeZ])
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
