package sheet_test

import (
	"sort"
	"strconv"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

func inMM(l units.Length) float64 { return float64(l) / 1e6 }

// roundOf sorts readings to the quarters of the library's clock.
func roundOf(name string, view align.View, sag units.Length, readings []align.Reading) (*handRound, int) {
	r := &handRound{name: name, sag: inMM(sag), from: [4]int{-1, -1, -1, -1}}
	var seen [4]bool
	for _, x := range readings {
		hour := int(x.At.Normal()) / 90
		if view == align.FromStationary {
			hour = (4 - hour) % 4
		}
		r.given[hour], seen[hour] = inMM(x.Value), true
	}
	for q, ok := range seen {
		if !ok {
			return r, q
		}
	}
	return r, -1
}

// handCentre is where the lines of a plane stand that lay the centreline.
type handCentre struct{ offset, slope int }

// workJob works an alignment.
func workJob(j sheet.Job) *handPage {
	p := &handPage{}
	centres, dials := p.measured(j)
	for i, in := range handPlanes {
		target := p.growth(j.Stationary, j.Movable, in)
		p.feet(in, centres[i], target, j.Feet, dials)
	}
	return p
}

// measured works the method of a job: where the lines are that lay the centreline in each
// plane, and the stations from which a distance may be counted.
func (p *handPage) measured(j sheet.Job) (centres [2]handCentre, dials []float64) {
	switch {
	case j.RimFace != nil:
		return p.rimFace(j.RimFace)
	case j.RimGap != nil:
		return p.rimGap(j.RimGap)
	case j.StraightedgeGap != nil:
		return p.straightedgeGap(j.StraightedgeGap)
	case j.Reverse != nil:
		return p.reverse(j.Reverse)
	}
	return p.faceFace(j.FaceFace)
}

func (p *handPage) rimFace(m *dial.RimFace) (centres [2]handCentre, dials []float64) {
	p.view = m.View
	rim := p.round("rim", m.View, m.Rim.Sag, m.Rim.Readings, m.Rim.Bore)
	face := p.round("face", m.View, m.Face.Sag, m.Face.Readings, false)
	x := inMM(m.Rim.Station)
	for i, in := range handPlanes {
		w := p.half(rim, in, signOf(m.Carrier == align.Movable, m.Rim.Bore))
		a := p.faceSlope(face, in, signOf(m.Face.Far), inMM(m.Face.Diameter))
		centres[i] = p.carryBack(in, w, a, x)
	}
	return centres, []float64{x}
}

func (p *handPage) rimGap(m *dial.RimGap) (centres [2]handCentre, dials []float64) {
	p.view = m.View
	rim := p.round("rim", m.View, m.Rim.Sag, m.Rim.Readings, m.Rim.Bore)
	gap := p.round("gap", m.View, 0, m.Gap.Readings, false)
	x := inMM(m.Rim.Station)
	for i, in := range handPlanes {
		w := p.half(rim, in, signOf(m.Carrier == align.Movable, m.Rim.Bore))
		a := p.faceSlope(gap, in, -1, inMM(m.Gap.Diameter))
		centres[i] = p.carryBack(in, w, a, x)
	}
	return centres, []float64{x}
}

func (p *handPage) straightedgeGap(m *dial.StraightedgeGap) (centres [2]handCentre, dials []float64) {
	p.view = m.View
	edge := p.round("straightedge", m.View, 0, m.Straightedge.Readings, false)
	gap := p.round("gap", m.View, 0, m.Gap.Readings, false)
	x := inMM(m.Straightedge.Station)
	for i, in := range handPlanes {
		w := p.half(edge, in, signOf(m.Straightedge.On == align.Stationary))
		a := p.faceSlope(gap, in, -1, inMM(m.Gap.Diameter))
		centres[i] = p.carryBack(in, w, a, x)
	}
	return centres, []float64{x}
}

func (p *handPage) reverse(m *dial.Reverse) (centres [2]handCentre, dials []float64) {
	p.view = m.View
	far, near := m.CarriedByStationary, m.CarriedByMovable
	xm, xs := inMM(far.Station), inMM(near.Station)
	onMovable := p.round("carried_by_stationary", m.View, far.Sag, far.Readings, far.Bore)
	onStationary := p.round("carried_by_movable", m.View, near.Sag, near.Readings, near.Bore)
	for i, in := range handPlanes {
		wm := p.half(onMovable, in, signOf(far.Bore))
		ws := p.half(onStationary, in, -signOf(near.Bore))
		centres[i] = p.throughTwo(in, wm, ws, xm, xs)
	}
	return centres, []float64{xm, xs}
}

func (p *handPage) faceFace(m *dial.FaceFace) (centres [2]handCentre, dials []float64) {
	p.view = m.View
	span := inMM(m.Span)
	s := p.round("at_stationary", m.View, m.AtStationary.Sag, m.AtStationary.Readings, false)
	v := p.round("at_movable", m.View, m.AtMovable.Sag, m.AtMovable.Readings, false)
	for i, in := range handPlanes {
		as := p.faceSlope(s, in, signOf(m.AtStationary.Far), inMM(m.AtStationary.Diameter))
		am := p.faceSlope(v, in, signOf(m.AtMovable.Far), inMM(m.AtMovable.Diameter))
		centres[i] = p.spacer(in, as, am, span)
	}
	return centres, []float64{-span / 2, span / 2}
}

func (p *handPage) round(name string, view align.View, sag units.Length, readings []align.Reading, bore bool) *handRound {
	if bore {
		sag = -sag
	}
	r, missing := roundOf(name, view, sag, readings)
	p.rule12369(r, missing)
	return r
}

// carryBack carries an offset at station x to the coupling centre.
func (p *handPage) carryBack(in handPlane, w, a int, x float64) handCentre {
	return handCentre{slope: a, offset: p.put(handLine{
		id: in.name + ".offset", sort: in.lies, from: []int{w, a},
		work: func(v []float64, m mistake) float64 {
			if m.kind == sheet.LeftAtDial {
				return v[0]
			}
			return v[0] - v[1]*x
		},
		can: []chance{can(sheet.LeftAtDial, "", "")},
	})}
}

// throughTwo is the line through the offsets at two dials.
func (p *handPage) throughTwo(in handPlane, wm, ws int, xm, xs float64) handCentre {
	slope := p.put(handLine{
		id: in.name + ".slope", sort: in.leans, from: []int{wm, ws},
		work: func(v []float64, m mistake) float64 {
			apart := xm - xs
			switch {
			case m.is(sheet.WrongDatum, "movable dial from the coupling"):
				apart = absolute(xm)
			case m.is(sheet.WrongDatum, "stationary dial from the coupling"):
				apart = absolute(xs)
			}
			if m.is(sheet.MachinesExchanged, "offsets") {
				return (v[1] - v[0]) / apart
			}
			return (v[0] - v[1]) / apart
		},
		can: []chance{
			can(sheet.MachinesExchanged, "offsets", ""),
			can(sheet.WrongDatum, "movable dial from the coupling", ""),
			can(sheet.WrongDatum, "stationary dial from the coupling", ""),
		},
	})
	offset := p.put(handLine{
		id: in.name + ".offset", sort: in.lies, from: []int{wm, slope, ws},
		work: func(v []float64, m mistake) float64 {
			w := v[0]
			if m.is(sheet.MachinesExchanged, "offsets") {
				w = v[2]
			}
			switch {
			case m.is(sheet.LeftAtDial, "movable"):
				return v[0]
			case m.is(sheet.LeftAtDial, "stationary"):
				return v[2]
			}
			return w - v[1]*xm
		},
		can: []chance{
			can(sheet.LeftAtDial, "movable", ""), can(sheet.LeftAtDial, "stationary", ""),
			can(sheet.MachinesExchanged, "offsets", ""),
		},
	})
	return handCentre{offset, slope}
}

func absolute(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// spacer is the line that the tilts at both joints lay.
func (p *handPage) spacer(in handPlane, as, am int, span float64) handCentre {
	slope := p.put(handLine{id: in.name + ".slope", sort: in.leans, from: []int{as, am},
		work: func(v []float64, _ mistake) float64 { return v[0] + v[1] }})
	offset := p.put(handLine{
		id: in.name + ".offset", sort: in.lies, from: []int{as, am},
		work: func(v []float64, m mistake) float64 {
			if m.kind == sheet.MachinesExchanged {
				return (v[1] - v[0]) * span / 2
			}
			return (v[0] - v[1]) * span / 2
		},
		can: []chance{can(sheet.MachinesExchanged, "joints", "")},
	})
	return handCentre{offset, slope}
}

// feet carries the centreline on to the feet.
func (p *handPage) feet(in handPlane, found handCentre, target *handCentre, feet []align.Foot, dials []float64) {
	if len(feet) == 0 {
		return
	}
	twin := twins(feet)
	position := make([]int, len(feet))
	for i, f := range feet {
		x, other := inMM(f.X), inMM(feet[twin[i]].X)
		l := handLine{
			id: in.name + ".foot." + f.Name + ".position", sort: in.lies, from: []int{found.offset, found.slope},
			work: func(v []float64, m mistake) float64 {
				far := x
				if m.kind == sheet.FeetExchanged {
					far = other
				}
				if m.kind == sheet.WrongDatum {
					n, _ := strconv.Atoi(m.form[len("from dial "):])
					far = x - dials[n]
				}
				return v[0] + v[1]*far
			},
			can: []chance{can(sheet.FeetExchanged, "distances", "")},
		}
		for n, d := range dials {
			if d != 0 {
				l.can = append(l.can, can(sheet.WrongDatum, "from dial "+strconv.Itoa(n), ""))
			}
		}
		position[i] = p.put(l)
	}
	wanted := make([]int, len(feet))
	for i, f := range feet {
		if target != nil {
			wanted[i] = p.targetAt(in, *target, f, feet[twin[i]])
		}
	}
	for i, f := range feet {
		from := []int{position[i], position[twin[i]]}
		if target != nil {
			from = append(from, wanted[i], wanted[twin[i]])
		}
		p.put(handLine{
			id: in.name + ".foot." + f.Name + ".correction", sort: in.goes, from: from,
			work: func(v []float64, m mistake) float64 {
				lies, should := v[0], 0.0
				if target != nil {
					should = v[2]
				}
				if m.kind == sheet.FeetExchanged {
					lies = v[1]
					if target != nil {
						should = v[3]
					}
				}
				if m.kind == sheet.PositionForCorrection {
					return lies - should
				}
				return wrongUnit(should-lies, m)
			},
			can: append(canMistakeUnit("corrections"), can(sheet.FeetExchanged, "corrections", ""), can(sheet.PositionForCorrection, "", "")),
		})
	}
}

func (p *handPage) targetAt(in handPlane, target handCentre, f, other align.Foot) int {
	x, exchanged := inMM(f.X), inMM(other.X)
	return p.put(handLine{id: in.name + ".foot." + f.Name + ".target", sort: in.lies, from: []int{target.offset, target.slope},
		work: func(v []float64, m mistake) float64 {
			if m.kind == sheet.FeetExchanged {
				return v[0] + v[1]*exchanged
			}
			return v[0] + v[1]*x
		},
		can: []chance{can(sheet.FeetExchanged, "distances", "")},
	})
}

// twins are the feet counted from the other end.
func twins(feet []align.Foot) []int {
	order := make([]int, len(feet))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return feet[order[a]].X < feet[order[b]].X })
	twin := make([]int, len(feet))
	for rank, i := range order {
		twin[i] = order[len(order)-1-rank]
	}
	return twin
}
