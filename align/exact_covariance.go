package align

import "example.org/collinear/units"

// exactCovariance is covariance with the exact model in place of the law.
func (s *solution) exactCovariance(sets []Set) Covariance {
	var c Covariance
	s.ofReadings(&c)
	if c.Basis == Unknown {
		return c
	}
	shafts := posed(s.beta)
	for i := range sets {
		if s.stated && sets[i].U.Angle != 0 {
			s.addExactAngles(&c, &shafts, &sets[i])
		}
		if mountedAt(sets, i) != i {
			continue
		}
		for _, in := range sharedInputs {
			if u := sets[i].U.inUnits(in); u != 0 {
				c.v.addSquare(s.exactEffect(&shafts, sets, i, in, u))
			}
		}
	}
	return c
}

// addExactAngles adds what an error of each clock position by itself brings.
func (s *solution) addExactAngles(c *Covariance, shafts *shafts, set *Set) {
	means := s.means(shafts, set)
	for i := range set.Readings {
		pull := means.pull(shafts, set, i, OfClock)
		for j := range pull {
			pull[j] *= float64(set.U.Angle)
		}
		c.v.addSquare(s.unit.of(pull))
	}
}

// exactEffect is by how much the answer moves with an error u of an input that
// the sets mounted as the first one share.
func (s *solution) exactEffect(shafts *shafts, sets []Set, first int, in Input, u float64) [four]float64 {
	var sum [four]float64
	for i := first; i < len(sets); i++ {
		if !together(sets, first, i) {
			continue
		}
		means := s.means(shafts, &sets[i])
		for k := range sets[i].Readings {
			for j, p := range means.pull(shafts, &sets[i], k, in) {
				sum[j] += float64(p * u)
			}
		}
	}
	return s.unit.of(sum)
}

// means holds the weighted means over a set: of the rows of its equations, and of
// what the model leaves of its readings, which is its zero.
type means struct {
	row  [four]float64
	zero float64
}

func (s *solution) means(shafts *shafts, set *Set) (m means) {
	total := set.totalWeight()
	for i := range set.Readings {
		sin, cos := set.sinCos(i)
		c, _ := shafts.touch(set, sin, cos)
		share := float64(set.weight(i)*set.weight(i)) / total
		m.zero += float64(share * (set.corrected(i, cos) - c.value))
		for j := range m.row {
			m.row[j] += float64(share * c.row[j])
		}
	}
	return m
}

// pull is what an error of one in an input does to reading i in the normal
// equations, with J the row, m its mean over the set, r the residual and k the derivative
// of the reading to the input:
//
//	w^2 ((dJ) r - (J - m) k)
//
// the derivative of the normal equations, to first order (JCGM 100:2008, 5.2);
// derived here. dJ, which only residuals bring in, is that of the linear law.
func (m *means) pull(shafts *shafts, set *Set, i int, in Input) (pull [four]float64) {
	sin, cos := set.sinCos(i)
	c, _ := shafts.touch(set, sin, cos)
	w := set.weight(i)
	r := set.corrected(i, cos) - c.value - m.zero
	k := set.sensitivity(&c, in, sin, cos)
	dJ := set.bentRow(in, sin, cos)
	for j := range pull {
		pull[j] = float64(w*w) * (float64(dJ[j]*r) - float64((c.row[j]-m.row[j])*k))
	}
	return pull
}

// sensitivity is the derivative of a reading, droop included, to a shared input.
func (s *Set) sensitivity(c *contact, in Input, sin, cos float64) float64 {
	switch in {
	case OfStation:
		return c.station
	case OfRadius:
		return c.radius
	case OfSag:
		return s.Probe.Kind.sagSign() * cos
	default: // OfClock
		return c.clock - float64(s.droop()*sin)
	}
}

// bentRow is the derivative of the linear law's row to a shared input.
func (s *Set) bentRow(in Input, sin, cos float64) [four]float64 {
	l := s.Probe.law()
	switch in {
	case OfStation:
		return law{0, l.onOffset}.row(sin, cos)
	case OfRadius:
		if usesOf[s.Probe.Kind].radius {
			return l.times(1/mm(s.Probe.Radius)).row(sin, cos)
		}
	case OfClock:
		return l.row(cos, -sin)
	}
	return [four]float64{}
}

// inUnits returns what is stated of one of the sharedInputs, in millimetres or
// radians.
func (u *Uncertainty) inUnits(in Input) float64 {
	if in == OfClock {
		return float64(u.Clock)
	}
	return mm(units.Length(u.of(in)))
}
