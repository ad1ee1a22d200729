package train

import "math"

// The unknowns of a plan are two coordinates a machine and plane, chosen so that
// the moves of the machine's feet are an orthonormal combination of them:
//
//	move(x) = y1/sqrt(n) + y2 (x - mean)/spread        sum of move(x_f)^2 = y1^2 + y2^2
//
// with n feet, the mean of their stations and spread^2 = sum (x_f - mean)^2. So the
// least squares of all moves are the point nearest to the origin. All lengths are
// counted in a unit of the train's own, the scale, so that solvers meet numbers
// around one whatever the size of the job.

// body is a machine as the model sees it.
type body struct {
	root, mean, spread float64 // square root of the number of feet, the rest in mm
}

// newBody returns the body of a machine, or of several that move as one.
func newBody(machines []Machine) body {
	n := 0.0
	for i := range machines {
		n += float64(len(machines[i].Feet))
	}
	var b body
	for i := range machines {
		for k := range machines[i].Feet {
			b.mean += mm(machines[i].Feet[k].X) / n
		}
	}
	for i := range machines {
		for k := range machines[i].Feet {
			off := mm(machines[i].Feet[k].X) - b.mean
			b.spread += float64(off * off)
		}
	}
	b.root, b.spread = math.Sqrt(n), math.Sqrt(b.spread)
	return b
}

// at returns the shares of the two coordinates in the move at station x.
func (b body) at(x float64) [2]float64 { return [2]float64{1 / b.root, (x - b.mean) / b.spread} }

// affine is a linear function of the coordinates and a constant.
type affine struct {
	of []float64
	c  float64
}

// at returns the value of the function.
func (f *affine) at(y []float64) float64 {
	sum := f.c
	for i, a := range f.of {
		sum += float64(a * y[i])
	}
	return sum
}

// combined returns a f + b g.
func (m *model) combined(a float64, f *affine, b float64, g *affine) affine {
	sum := affine{m.vector(len(f.of)), float64(a*f.c) + float64(b*g.c)}
	for i := range sum.of {
		sum.of[i] = float64(a*f.of[i]) + float64(b*g.of[i])
	}
	return sum
}

// item is what a coupling is judged by, each part in one plane over its limit: its
// size is the ratio to the limit.
type item struct {
	both  [2]affine // its parts
	count int       // of planes
}

// round tells whether the item is the length of a vector.
func (it *item) round() bool { return it.count > 1 }

// at returns the size of the item and the direction in which it points, if it has a
// size.
func (it *item) at(y []float64) (size float64, direction [2]float64) {
	for i := range it.count {
		direction[i] = it.both[i].at(y)
	}
	size = math.Sqrt(float64(direction[0]*direction[0]) + float64(direction[1]*direction[1]))
	direction[0] /= size
	direction[1] /= size
	return size, direction
}

// along returns the component of the item in a direction: what no cut may have
// above the ratio allowed.
func (m *model) along(it *item, direction [2]float64) affine {
	if it.round() {
		return m.combined(direction[0], &it.both[0], direction[1], &it.both[1])
	}
	return m.combined(direction[0], &it.both[0], 0, &it.both[0])
}

// stop is the move of one foot in one plane and how far it can go.
type stop struct {
	machine, foot, plane int
	x                    float64 // mm
	move                 affine
	low, high            float64
	outer                bool // it carries coordinates, see moves.go
}

// model is a train in one plane or in both together.
type model struct {
	train *Train
	space *workspace
	scale float64  // mm
	first [][2]int // of each machine and plane: its first coordinate, or -1 where it does not move
	n     int      // coordinates
	stops []stop
	items []item

	carriers []carrier // of each pair of coordinates

	rays  []ray // on target: what each machine moves by, whatever the coordinates
	whole body  // on target: all feet, where the train moves as one

	ease float64 // room for the stages that follow, see flatEases
}

// newModel lays out the train in the given planes. The reference moves only in a
// model that is asked what would help if it did; its feet are fixed then.
func (p *planner) newModel(withReference bool, in ...int) *model {
	t := p.train
	m := &model{train: t, space: p.space, scale: p.scale, first: make([][2]int, len(t.Machines))}
	bodies := make([]body, len(t.Machines))
	for i := range t.Machines {
		bodies[i] = newBody(t.Machines[i : i+1])
		m.first[i] = [2]int{-1, -1}
		for _, plane := range in {
			if i != t.reference() || withReference && len(t.Machines[i].Feet) > 0 {
				m.first[i][plane], m.n = m.n, m.n+2
			}
		}
	}
	m.stops = make([]stop, 0, t.feet()*len(in))
	m.carriers = make([]carrier, 0, m.n/2)
	m.items = make([]item, 0, 2*len(t.Joints)*len(in))
	for i := range t.Machines {
		for _, plane := range in {
			m.addStops(bodies[i], i, plane)
		}
	}
	for j := range t.Joints {
		m.addJoint(bodies, j, in)
	}
	return m
}

func (m *model) addStops(b body, machine, plane int) {
	first, before := m.first[machine][plane], len(m.stops)
	if first < 0 {
		return
	}
	for k := range m.train.Machines[machine].Feet {
		f := &m.train.Machines[machine].Feet[k]
		limit := f.limit(plane)
		if machine == m.train.reference() {
			limit = Fixed()
		}
		s := stop{machine: machine, foot: k, plane: plane, x: mm(f.X), move: affine{of: m.vector(m.n)}}
		s.low, s.high = limit.ends()
		s.low, s.high = s.low/m.scale, s.high/m.scale
		at := b.at(mm(f.X))
		s.move.of[first], s.move.of[first+1] = at[0], at[1]
		m.stops = append(m.stops, s)
	}
	m.carry(before, first)
}

// carry lets the outer ones of the stops from so many on carry the two coordinates from
// first on.
func (m *model) carry(from, first int) {
	c := newCarrier(m.stops[from:], from, first)
	for _, i := range c.stops {
		m.stops[i].outer = true
	}
	m.carriers = append(m.carriers, c)
}

// vector returns so many zeros, which last as long as the plan.
func (m *model) vector(n int) []float64 { return m.space.kept.vector(n) }

// addJoint adds the items of coupling j in the given planes.
func (m *model) addJoint(bodies []body, j int, in []int) {
	joint := &m.train.Joints[j]
	first := len(m.items)
	for _, plane := range in {
		offset, slope := m.residual(bodies, j, plane)
		ratios, n := m.ratios(joint, &offset, &slope)
		for k := range n {
			if joint.Limits.PerPlane || first+k == len(m.items) {
				m.items = append(m.items, item{})
			}
			it := &m.items[len(m.items)-1]
			if !joint.Limits.PerPlane {
				it = &m.items[first+k]
			}
			it.both[it.count] = ratios[k]
			it.count++
		}
	}
}

// residual returns what is left at coupling j in one plane, found less target and
// after the moves m of both machines: the offset at its centre in the unit of the
// model, and the slope.
//
//	w_j = off_j + m_(j+1) - m_j
func (m *model) residual(bodies []body, j, plane int) (offset, slope affine) {
	joint := &m.train.Joints[j]
	off := joint.off(plane)
	offset = affine{m.vector(m.n), off.offset / m.scale}
	slope = affine{m.vector(m.n), off.slope}
	add := func(machine int, sign float64) {
		first := m.first[machine][plane]
		if first < 0 {
			return
		}
		b := bodies[machine]
		at := b.at(mm(joint.At))
		offset.of[first], offset.of[first+1] = sign*at[0], sign*at[1]
		slope.of[first+1] = sign * m.scale / b.spread
	}
	add(j, -1)
	add(j+1, +1)
	return offset, slope
}

// ratios returns what the coupling is judged by in one plane, over its limit, in
// the order of the items of a verdict: for a short one offset and slope, as far as
// limits are given, for a spacer of length L the tilts at its flex planes
//
//	stationary = offset/L + slope/2        movable = -offset/L + slope/2
func (m *model) ratios(j *Joint, offset, slope *affine) (list [2]affine, n int) {
	add := func(a, b float64) {
		list[n] = m.combined(a, offset, b, slope)
		n++
	}
	if span := mm(j.Coupling.Span); span != 0 {
		limit := float64(j.Limits.Flex)
		add(+m.scale/span/limit, 0.5/limit)
		add(-m.scale/span/limit, 0.5/limit)
		return list, n
	}
	if j.Limits.Offset != 0 {
		add(m.scale/mm(j.Limits.Offset), 0)
	}
	if j.Limits.Slope != 0 {
		add(0, 1/float64(j.Limits.Slope))
	}
	return list, n
}

// scale returns a length in millimetres that is typical of the moves: the farthest
// that a coupling is off at the feet of its machines, or that a limit makes a foot go.
func (t *Train) scale() float64 {
	const least = 1e-6 // mm: a train that is on target has to be measured by something
	scale := least
	for j := range t.Joints {
		off := t.Joints[j].offValue().About(-t.Joints[j].At)
		for _, i := range [...]int{j, j + 1} {
			for k := range t.Machines[i].Feet {
				w := off.At(t.Machines[i].Feet[k].X)
				scale = max(scale, math.Abs(mm(w.Horizontal)), math.Abs(mm(w.Vertical)))
			}
		}
	}
	for i := range t.Machines {
		for k := range t.Machines[i].Feet {
			for plane := range planes {
				low, high := t.Machines[i].Feet[k].limit(plane).ends()
				scale = max(scale, low, -high) // above zero only where the foot cannot stay
			}
		}
	}
	return scale
}
