package train

import "math"

// With every coupling on its target each machine follows from its neighbour,
//
//	m_(j+1) = m_j - off_j
//
// so that where one machine stays all moves are known, and where none does the train
// moves as one body, by one line beyond the moves that follow from each other. That
// line has the two coordinates of a model whose body has the feet of all machines.

// ray is a line by its value at a station and its slope, in mm.
type ray struct{ x, offset, slope float64 }

func (r ray) at(x float64) float64 { return r.offset + float64(r.slope*(x-r.x)) }

// plus returns r + sign s, told at the station of s.
func (r ray) plus(sign float64, s ray) ray {
	return ray{s.x, r.at(s.x) + float64(sign*s.offset), r.slope + float64(sign*s.slope)}
}

// newTargetModel lays out the train in one plane with every coupling on its target:
// two coordinates where all machines may move and none where one stays. ok is false
// where rounding leaves couplings off their targets.
func (p *planner) newTargetModel(plane int) (m *model, ok bool) {
	t := p.train
	m = &model{train: t, space: p.space, scale: p.scale, rays: t.targetRays(plane)}
	if t.reference() < 0 {
		m.n, m.whole = 2, newBody(t.Machines)
		m.centre()
	}
	m.stops = make([]stop, 0, t.feet())
	for i := range t.Machines {
		for k := range t.Machines[i].Feet {
			if i != t.reference() {
				m.addTargetStop(i, k, plane)
			}
		}
	}
	if m.n > 0 {
		m.carry(0, 0)
	}
	return m, m.meets(plane)
}

// off is what was found at the joint less the target, in one plane.
func (j *Joint) off(plane int) ray {
	off := j.offValue().Horizontal
	if plane == vertical {
		off = j.offValue().Vertical
	}
	return ray{mm(j.At), mm(off.Offset), float64(off.Slope)}
}

// targetRays returns moves of all machines that bring every coupling to its target:
// none of the reference or, without one, of the first.
func (t *Train) targetRays(plane int) []ray {
	rays, from := make([]ray, len(t.Machines)), t.axis()
	for i := from; i < len(t.Joints); i++ {
		rays[i+1] = rays[i].plus(-1, t.Joints[i].off(plane))
	}
	for i := from - 1; i >= 0; i-- {
		rays[i] = rays[i+1].plus(+1, t.Joints[i].off(plane))
	}
	return rays
}

// centre takes from all moves the line that they have in common, so that the point of
// least squares is the one nearest to zero.
func (m *model) centre() {
	var common [2]float64
	for i := range m.rays {
		for k := range m.train.Machines[i].Feet {
			x := mm(m.train.Machines[i].Feet[k].X)
			at, by := m.whole.at(x), m.rays[i].at(x)
			common[0] += float64(at[0] * by)
			common[1] += float64(at[1] * by)
		}
	}
	for i := range m.rays {
		m.rays[i] = m.rays[i].plus(-1, m.whole.ray(common, m.rays[i].x))
	}
}

// ray returns the line of the coordinates, told at x.
func (b body) ray(y [2]float64, x float64) ray {
	at := b.at(x)
	return ray{x, float64(at[0]*y[0]) + float64(at[1]*y[1]), y[1] / b.spread}
}

func (m *model) addTargetStop(machine, foot, plane int) {
	f := &m.train.Machines[machine].Feet[foot]
	s := stop{machine: machine, foot: foot, plane: plane, x: mm(f.X)}
	s.low, s.high = f.limit(plane).ends()
	s.low, s.high = s.low/m.scale, s.high/m.scale
	s.move = affine{of: m.vector(m.n), c: m.rays[machine].at(s.x) / m.scale}
	at := m.whole.at(s.x)
	copy(s.move.of, at[:]) // nothing beside a machine that stays
	m.stops = append(m.stops, s)
}

// meets tells whether every coupling is on its target, as seen at the feet of its
// machines, but for a share of what it was off or of the scale.
func (m *model) meets(plane int) bool {
	const share = 1e-10
	for j := range m.train.Joints {
		off := m.train.Joints[j].off(plane)
		for _, i := range [...]int{j, j + 1} {
			for k := range m.train.Machines[i].Feet {
				x := mm(m.train.Machines[i].Feet[k].X)
				left := off.at(x) + m.rays[j+1].at(x) - m.rays[j].at(x)
				if !(math.Abs(left) <= share*(m.scale+math.Abs(off.at(x)))) {
					return false
				}
			}
		}
	}
	return true
}
