package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
)

// RimGap is a rim dial, and a feeler or inside gauge between the faces.
type RimGap struct {
	Carrier align.Shaft `json:"carrier"` // of the rim dial
	Rim     Rim         `json:"rim"`
	Gap     Gap         `json:"gap"`
	View    align.View  `json:"view"`
	Limits  Limits      `json:"limits,omitzero"`
}

// Sets returns the method's general form, for align.Fit and Predict: the rim,
// then the gap. Readings of a return to the start are left out.
func (m RimGap) Sets() [2]align.Set {
	return [2]align.Set{m.Rim.set(m.Carrier, m.View), m.Gap.set(m.View)}
}

// Solve returns the centreline as [RimFace.Solve] does, with the slope from the
// gaps: slope = (G6 - G12)/D.
func (m RimGap) Solve() (Result, error) {
	sets := m.Sets()
	return solve([2]part{
		{set: sets[0], readings: m.Rim.Readings, field: "rim", carrier: "/carrier"},
		{set: sets[1], readings: m.Gap.Readings, field: "gap", diameter: &m.Gap.Diameter},
	}, m.Limits, &check.Faults{}, func(rim, gap *sweep) align.Centreline {
		return centrelineAt(m.Rim.displaced(m.Carrier, rim), m.Gap.tilt(gap), m.Rim.Station)
	})
}

// StraightedgeGap is a straightedge with feelers on the rims, and a feeler or
// inside gauge between the faces.
type StraightedgeGap struct {
	Straightedge Straightedge `json:"straightedge"`
	Gap          Gap          `json:"gap"`
	View         align.View   `json:"view"`
	Limits       Limits       `json:"limits,omitzero"`
}

// Sets returns the method's general form, for align.Fit and Predict: the
// straightedge, then the gap. Readings of a return to the start are left out.
func (m StraightedgeGap) Sets() [2]align.Set {
	return [2]align.Set{m.Straightedge.set(m.View), m.Gap.set(m.View)}
}

// Solve returns the centreline by the closed form
//
//	w(x) = +-(S6 - S12)/2    slope = (G6 - G12)/D    offset = w(x) - slope x
//
// for the vertical plane, 3 and 9 in place of 12 and 6 for the horizontal; plus
// where the straightedge lies on the stationary rim. It refuses input that is
// not sound with paths from the method; a miss over the limits is a warning.
func (m StraightedgeGap) Solve() (Result, error) {
	sets := m.Sets()
	return solve([2]part{
		{set: sets[0], readings: m.Straightedge.Readings, field: "straightedge", carrier: "/straightedge/on"},
		{set: sets[1], readings: m.Gap.Readings, field: "gap", diameter: &m.Gap.Diameter},
	}, m.Limits, &check.Faults{}, func(edge, gap *sweep) align.Centreline {
		w := edge.displacement()
		if m.Straightedge.On == align.Stationary {
			w = reversed(w)
		}
		return centrelineAt(w, m.Gap.tilt(gap), m.Straightedge.Station)
	})
}
