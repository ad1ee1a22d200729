package rigid

import "math"

// setting is an instrument standing at one clock angle.
type setting struct {
	Instrument
	clock           float64
	carrier, target body
	u               vector  // from the carrier's axis towards the instrument
	toOther         float64 // +1 if the carrying body looks along +x at the other, else -1
}

// setUp places the instrument between the two bodies of its joint.
func (i Instrument) setUp(p Pose, clock float64) setting {
	first, second := i.joint(p, clock)
	s := setting{Instrument: i, clock: clock, carrier: first, target: second, toOther: 1}
	if (i.Carrier == Movable) != i.BySpacer {
		s.carrier, s.target, s.toOther = second, first, -1
	}
	s.u = s.carrier.towards(clock)
	return s
}

// joint returns the two bodies that the instrument compares, in the order of x.
func (i Instrument) joint(p Pose, clock float64) (first, second body) {
	first, second = Pose{}.body(), p.body()
	if i.Float != nil {
		second.at = second.station(i.Float(clock))
	}
	if i.Kind != SpacerNearFace && i.Kind != SpacerFarFace {
		return first, second
	}
	spacer := p.spacer(i.Span).body()
	if i.Carrier == Movable {
		return spacer, second
	}
	return first, spacer
}

// rise returns how much further out along u than Radius the touched cylinder
// stands: the point at q along u from the carrier's axis (lowered by the droop)
// lies at the cylinder's radius from the target's axis, and rise is q - Radius.
func (s setting) rise() float64 {
	foot := s.carrier.station(s.Station).minus(s.target.at)
	foot.z -= s.Sag // gravity pulls down in space, wherever the carrier stands
	return s.settle(func(form float64) (float64, vector) {
		rise := form + beyond(
			foot.dot(s.target.right), foot.dot(s.target.up),
			s.u.dot(s.target.right), s.u.dot(s.target.up),
			s.u.dot(s.target.along), s.Radius+form)
		return rise, foot.plus(s.u.times(s.Radius + rise))
	})
}

// beyond returns q - radius, where q > 0 solves |a + q d| = radius in the plane
// across a cylinder's axis. (dr, du, da) has length one and da is its part along
// the axis, so that |d|^2 = 1 - da^2.
//
// With D = |d|^2 and S = sqrt(D radius^2 - (a x d)^2) the root is
// q = (S - a.d)/D, and S - D radius is written as
// (D da^2 radius^2 - (a x d)^2)/(S + D radius), in which nothing cancels.
func beyond(ar, au, dr, du, da, radius float64) float64 {
	dd := float64(dr*dr) + float64(du*du)
	across := float64(ar*du) - float64(au*dr)
	root := math.Sqrt(float64(dd*radius*radius) - float64(across*across))
	excess := (float64(dd*da*da*radius*radius) - float64(across*across)) / (root + float64(dd*radius))
	return (excess - (float64(ar*dr) + float64(au*du))) / dd
}

// ahead returns how far ahead, in the direction sense*along of the carrier, the
// target's face lies from the plane of the carrier's own zero station, on the
// line at Radius from its axis. The face is taken through the target's zero
// station: where it really is only changes the constant.
func (s setting) ahead(sense float64) float64 {
	start := s.carrier.at.minus(s.target.at).plus(s.u.times(s.Radius))
	return s.settle(func(form float64) (float64, vector) {
		// Form stands towards the dial, against sense.
		travel := (-float64(sense*form) - start.dot(s.target.along)) / s.carrier.along.dot(s.target.along)
		return sense * travel, start.plus(s.carrier.along.times(travel))
	})
}

// push returns what the droop of a face dial's bracket adds: it acts along the
// axis by how the bracket stands to gravity.
func (s setting) push() float64 {
	_, cos := sincos(s.clock)
	return s.Sag * cos
}

// shift returns how far towards the instrument the target's axis lies from the
// carrier's, in the plane across the carrier's axis at Station.
func (s setting) shift() float64 {
	apart := s.target.at.minus(s.carrier.at)
	reach := (s.Station - apart.dot(s.carrier.along)) / s.target.along.dot(s.carrier.along)
	return apart.dot(s.u) + float64(reach*s.target.along.dot(s.u))
}

// settle returns the first value of contact for the form at the very point that
// is touched. The point hardly moves with the form, so a few rounds settle it to
// the last bit.
func (s setting) settle(contact func(form float64) (value float64, point vector)) float64 {
	value, point := contact(0)
	if s.Runout == nil {
		return value
	}
	mark := s.Mark
	if s.TargetTurned {
		mark += s.clock
	}
	for range 6 {
		value, point = contact(s.Runout(full(s.target.clock(point) - mark)))
	}
	return value
}
