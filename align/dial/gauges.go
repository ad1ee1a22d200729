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
func (m RimGap) Solve() (result Result, err error) {
	err = result.solve(&[2]part{
		{set: m.Rim.set(m.Carrier, m.View), readings: m.Rim.Readings, field: "rim", carrier: "/carrier"},
		{set: m.Gap.set(m.View), readings: m.Gap.Readings, field: "gap", diameter: m.Gap.Diameter, swept: true},
	}, m.Limits, &check.Faults{})
	if err == nil {
		rim, gap := result.Checks[0].Quarters, result.Checks[1].Quarters
		result.Value = centrelineAt(m.Rim.displaced(m.Carrier, rim), m.Gap.tilt(gap), m.Rim.Station)
	}
	return result, err
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
func (m StraightedgeGap) Solve() (result Result, err error) {
	err = result.solve(&[2]part{
		{set: m.Straightedge.set(m.View), readings: m.Straightedge.Readings, field: "straightedge", carrier: "/straightedge/on"},
		{set: m.Gap.set(m.View), readings: m.Gap.Readings, field: "gap", diameter: m.Gap.Diameter, swept: true},
	}, m.Limits, &check.Faults{})
	if err == nil {
		edge, gap := result.Checks[0].Quarters, result.Checks[1].Quarters
		result.Value = centrelineAt(m.Straightedge.displaced(edge), m.Gap.tilt(gap), m.Straightedge.Station)
	}
	return result, err
}
