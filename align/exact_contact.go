package align

import "math"

// contact is what a probe reads at one clock position up to the constant of its
// set, in millimetres, and how that changes: with the four numbers, along with the
// station, with the radius (both per millimetre) and with the clock (per radian).
// size is of the parts that it is computed from.
type contact struct {
	value                  float64
	row                    [four]float64
	station, radius, clock float64
	size                   float64
}

// touch returns the contact of a probe. It is not ok where the plunger's line can
// miss what it should touch.
func (s *shafts) touch(set *Set, sin, cos float64) (contact, bool) {
	p := &set.Probe
	switch p.Kind {
	case Rim, Bore:
		if !p.radiusUnknown() {
			return s.onCylinder(p, sin, cos)
		}
	case NearFace, FarFace, Gap, SpacerFace, SpacerFarFace:
		return s.onPlane(p, sin, cos), true
	}
	return s.onLaw(p, sin, cos), true
}

// onLaw is the linear law.
func (s *shafts) onLaw(p *Probe, sin, cos float64) contact {
	l, slope := p.law(), s.slope()
	beta := [four]float64{s.at.y, slope.y, s.at.z, slope.z}
	c := contact{
		value:   l.at(beta, sin, cos),
		row:     l.row(sin, cos),
		station: law{0, l.onOffset}.at(beta, sin, cos),
		clock:   l.at(beta, cos, -sin),
	}
	for j, b := range beta {
		c.size += math.Abs(float64(c.row[j] * b))
	}
	return c
}

// slope is by how much the movable axis leaves the stationary one per unit of x.
func (s *shafts) slope() vector { return s.moved.axis.times(1 / s.moved.axis.x).minus(still.axis) }

// onCylinder: a ray that leaves the carrier's axis at the station, at right angles
// to it and along u, meets the other shaft's cylinder of radius rho about its axis
// f at a distance rho + d. Across f, with m from the target's axis to the start of
// the ray and n the part of u,
//
//	|m + (rho + d) n|^2 = rho^2
//
// and d is the smaller root of g d^2 + 2 b d + e = 0, written so that nothing of
// the size of rho cancels. Derived here.
func (s *shafts) onCylinder(p *Probe, sin, cos float64) (contact, bool) {
	rho, station := mm(p.Radius), mm(p.Station)
	carrier, target := &still, &s.moved
	if p.Carrier == Movable {
		carrier, target = target, carrier
	}
	// From the target's axis to the carrier's, both at the station.
	apart := s.at.plus(s.moved.axis.minus(still.axis).times(station)).times(-p.Carrier.sign())
	u, f := carrier.towards(sin, cos), target.axis
	m, n := across(apart, f), across(u, f)

	along, mn := u.dot(f), m.dot(n)
	g := 1 - float64(along*along) // n . n
	b := mn + float64(rho*g)
	e := m.dot(m) + float64(2*rho*mn) - float64(rho*along*rho*along)
	d := -e / (b + math.Sqrt(float64(b*b)-float64(g*e)))

	ray := u.times(rho + d)
	normal := m.plus(across(ray, f))
	touched := carrier.axis.times(station).plus(ray) // from the carrier's point of x = 0
	if p.Carrier == Stationary {
		touched = touched.minus(s.at)
	}
	// The ray follows the surface: by normal . move/(normal . u) where the surface
	// moves, and by as much the other way where the ray does.
	follow := func(move vector) float64 { return normal.dot(move) / normal.dot(u) }
	c := contact{
		value:   d,
		station: -follow(carrier.axis),
		radius:  rho/normal.dot(u) - 1,
		clock:   -follow(carrier.towards(cos, -sin).times(rho + d)),
		size:    math.Abs(d) + size(s.at) + float64(math.Abs(station)*size(s.slope())),
	}
	for j := range c.row {
		c.row[j] = p.Carrier.sign() * follow(s.carried(j, touched))
	}
	if p.Kind == Bore { // the plunger points outwards
		c = c.times(-1)
	}
	return c, m.dot(m) < rho*rho
}

// across returns the part of a at right angles to a direction of length one.
func across(a, direction vector) vector { return a.minus(direction.times(a.dot(direction))) }

func size(a vector) float64 { return math.Sqrt(a.dot(a)) }

// onPlane: a ray that starts at R u from the carrier's axis e and runs along it
// meets the plane (P - P0) . f = 0 of the target after
//
//	constant - R (u . f)/(e . f)
//
// which counts down where the plunger points along +e, up where it points along
// -e. Derived here. For a dial on the stationary shaft this is R u . slope, the
// linear law.
func (s *shafts) onPlane(p *Probe, sin, cos float64) contact {
	f, turned := s.facing(p)
	carrier := &still
	if p.Carrier == Movable {
		carrier = &s.moved
	}
	u, e := carrier.towards(sin, cos), carrier.axis
	lever := p.faceSign() * mm(p.Radius)
	ratio := u.dot(f) / e.dot(f)
	value := float64(lever * ratio)
	turn := carrier.towards(cos, -sin)
	c := contact{value: value, radius: value / mm(p.Radius), clock: lever * turn.dot(f) / e.dot(f), size: math.Abs(value)}
	for j := range c.row {
		du, de := u.dot(turned[j]), e.dot(turned[j])
		if p.Carrier == Movable {
			du += s.turned(j, u).dot(f)
			de += s.turned(j, e).dot(f)
		}
		c.row[j] = lever * (du - float64(ratio*de)) / e.dot(f)
	}
	return c
}

// faceSign is + where the reading grows with u . f/(e . f): where the plunger
// points along +x, from the stationary shaft to the other or back.
func (p *Probe) faceSign() float64 {
	switch p.Kind {
	case FarFace, Gap, SpacerFarFace:
		return -p.Carrier.sign()
	}
	return p.Carrier.sign()
}

// facing returns the normal of the face that the other side of a joint has, of
// any length, and how it changes with the four numbers. A spacer runs from the
// stationary axis at x = -span/2 to the movable one at x = span/2.
func (s *shafts) facing(p *Probe) (normal vector, changes [four]vector) {
	if p.Kind == SpacerFace || p.Kind == SpacerFarFace {
		span := mm(p.Span)
		changes = [four]vector{offsetY: {y: 1}, slopeY: {y: span / 2}, offsetZ: {z: 1}, slopeZ: {z: span / 2}}
		return still.axis.times(span).plus(s.at).plus(s.slope().times(span / 2)), changes
	}
	if p.Carrier == Movable {
		return still.axis, changes
	}
	for j := range changes {
		changes[j] = s.turned(j, s.moved.axis)
	}
	return s.moved.axis, changes
}

func (c contact) times(k float64) contact {
	c.value *= k
	c.station *= k
	c.radius *= k
	c.clock *= k
	for j := range c.row {
		c.row[j] *= k
	}
	return c
}
