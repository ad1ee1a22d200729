package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type makerTargetInput struct {
	Station  units.Length  `json:"station,omitzero"`
	High     units.Length  `json:"high,omitzero"`
	ToThree  units.Length  `json:"to_three,omitzero"`
	Opening  *units.Length `json:"opening,omitzero"`
	OpenAt   *units.Clock  `json:"open_at,omitzero"`
	Diameter *units.Length `json:"diameter,omitzero"`
	View     align.View    `json:"view"`
}

func makerTarget(in *makerTargetInput, f *strict.Faults) position {
	above(f, "/diameter", in.Diameter)
	if in.Opening != nil && in.OpenAt == nil { // the library takes 12 o'clock then
		f.Add(units.Missing, "/open_at", "", "the place where the opening is meant")
	}
	if in.Opening != nil && in.Diameter == nil { // also with an opening of zero
		f.Add(units.Missing, "/diameter", "", "the diameter across which the opening is meant")
	}
	c, err := dial.Target{
		Station: in.Station, High: in.High, ToThree: in.ToThree, View: in.View,
		Opening: value(in.Opening), OpenAt: value(in.OpenAt), Diameter: value(in.Diameter),
	}.Centreline()
	f.Adopt(err, same)
	return told(align.Exact(c))
}
