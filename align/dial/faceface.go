package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// FaceFace is a face dial at each end of a spacer coupling.
type FaceFace struct {
	Span         units.Length `json:"span"`          // flex plane to flex plane, above zero
	AtStationary Face         `json:"at_stationary"` // between the stationary hub and the spacer, on either
	AtMovable    Face         `json:"at_movable"`    // between the spacer and the movable hub, on either
	View         align.View   `json:"view"`
	Limits       Limits       `json:"limits,omitzero"`
}

// Sets returns the method's general form, for align.Fit and Predict: the
// stationary joint, then the movable one. Readings of a return to the start are
// left out.
func (m FaceFace) Sets() [2]align.Set {
	return [2]align.Set{
		m.AtStationary.joint(align.Stationary, m.Span, m.View),
		m.AtMovable.joint(align.Movable, m.Span, m.View),
	}
}

// Solve returns the centreline by the closed form
//
//	tilt = (F12 - F6)/D at each joint    slope = a_s + a_m    offset = (a_s - a_m) L/2
//
// for the vertical plane, 3 and 9 in place of 12 and 6 for the horizontal; a
// tilt changes sign where the face is far. It refuses input that is not sound
// with paths from the method (/at_movable/diameter); a miss over the limits is
// a warning.
func (m FaceFace) Solve() (result Result, err error) {
	s, v := m.AtStationary, m.AtMovable
	err = result.solve(&[2]part{
		{set: s.joint(align.Stationary, m.Span, m.View), readings: s.Readings, field: "at_stationary", diameter: s.Diameter, swept: true},
		{set: v.joint(align.Movable, m.Span, m.View), readings: v.Readings, field: "at_movable", diameter: v.Diameter, swept: true},
	}, m.Limits, &check.Faults{})
	if err == nil {
		first, second := s.tilt(result.Checks[0].Quarters), v.tilt(result.Checks[1].Quarters)
		result.Value, _ = align.Coupling{Span: m.Span}.FromFlexTilts(first, second) // the span is sound
	}
	return result, err
}
