package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
)

// RimFace is a rim dial and a face dial on one shaft.
type RimFace struct {
	Carrier align.Shaft `json:"carrier"` // of both dials
	Rim     Rim         `json:"rim"`
	Face    Face        `json:"face"`
	View    align.View  `json:"view"`
	Limits  Limits      `json:"limits,omitzero"`
}

// Sets returns the method's general form, for align.Fit and Predict: the rim,
// then the face. Readings of a return to the start are left out.
func (m RimFace) Sets() [2]align.Set {
	return [2]align.Set{m.Rim.set(m.Carrier, m.View), m.Face.set(m.Carrier, m.View)}
}

// Solve returns the centreline by the closed form
//
//	w(x) = (R12 - R6)/2    slope = (F12 - F6)/D    offset = w(x) - slope x
//
// for the vertical plane, 3 and 9 in place of 12 and 6 for the horizontal; w
// changes sign where the movable shaft carries the dials, the slope where the
// face is far. It refuses input that is not sound with paths from the method
// (/rim/readings/2/at); a miss over the limits is a warning.
func (m RimFace) Solve() (result Result, err error) {
	err = result.solve(&[2]part{
		{set: m.Rim.set(m.Carrier, m.View), readings: m.Rim.Readings, field: "rim", carrier: "/carrier"},
		{set: m.Face.set(m.Carrier, m.View), readings: m.Face.Readings, field: "face", carrier: "/carrier", diameter: m.Face.Diameter, swept: true},
	}, m.Limits, &check.Faults{})
	if err == nil {
		rim, face := result.Checks[0].Quarters, result.Checks[1].Quarters
		result.Value = centrelineAt(m.Rim.displaced(m.Carrier, rim), m.Face.tilt(face), m.Rim.Station)
	}
	return result, err
}
