package pumpset

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
)

// The five methods of package dial, each from its survey.

func (m *reverse) measured(j *Job) measured {
	t := &j.Tape
	return measured{
		dial.Reverse{
			CarriedByStationary: m.CarriedByStationary.dial(t, t.MovableRim),
			CarriedByMovable:    m.CarriedByMovable.dial(t, t.StationaryRim),
			View:                j.View, Limits: j.Limits.dial(),
		},
		"/reverse",
		[2]part{
			m.CarriedByStationary.part("carried_by_stationary", "movable_rim"),
			m.CarriedByMovable.part("carried_by_movable", "stationary_rim"),
		},
	}
}

func (m *rimFace) measured(j *Job) measured {
	place, name := j.Tape.across(m.Carrier)
	return measured{
		dial.RimFace{
			Carrier: m.Carrier, Rim: m.Rim.dial(&j.Tape, place), Face: m.Face.dial(),
			View: j.View, Limits: j.Limits.dial(),
		},
		"/rim_face",
		[2]part{m.Rim.part("rim", name), m.Face.part("face")},
	}
}

func (m *faceFace) measured(j *Job) measured {
	return measured{
		dial.FaceFace{
			Span: j.Coupling.Span.Value, AtStationary: m.AtStationary.dial(), AtMovable: m.AtMovable.dial(),
			View: j.View, Limits: j.Limits.dial(),
		},
		"/face_face",
		[2]part{m.AtStationary.part("at_stationary"), m.AtMovable.part("at_movable")},
	}
}

func (m *rimGap) measured(j *Job) measured {
	place, name := j.Tape.across(m.Carrier)
	return measured{
		dial.RimGap{
			Carrier: m.Carrier, Rim: m.Rim.dial(&j.Tape, place), Gap: m.Gap.dial(),
			View: j.View, Limits: j.Limits.dial(),
		},
		"/rim_gap",
		[2]part{m.Rim.part("rim", name), m.Gap.part()},
	}
}

func (m *straightedgeGap) measured(j *Job) measured {
	place, name := j.Tape.across(m.Straightedge.On)
	return measured{
		dial.StraightedgeGap{
			Straightedge: m.Straightedge.dial(&j.Tape, place), Gap: m.Gap.dial(),
			View: j.View, Limits: j.Limits.dial(),
		},
		"/straightedge_gap",
		[2]part{m.Straightedge.part(name), m.Gap.part()},
	}
}

// across returns the place of the rim that a dial touches, or a straightedge
// reaches over, from the carrier.
func (t *tape) across(carrier align.Shaft) (place length, name string) {
	if carrier == align.Movable {
		return t.StationaryRim, "stationary_rim"
	}
	return t.MovableRim, "movable_rim"
}
