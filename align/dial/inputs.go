package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Rim is a sweep of a dial that touches the other shaft's rim, or a bore.
type Rim struct {
	Station  units.Length      `json:"station"`         // signed x of the plane that the plunger touches; zero is the coupling centre, not "not given"
	Bore     bool              `json:"bore,omitzero"`   // the plunger points outwards, into a bore
	Sag      units.Length      `json:"sag,omitzero"`    // droop of the bracket at the dial, not below zero; see [MandrelSag]
	Radius   units.Length      `json:"radius,omitzero"` // of the rim, if known; the closed forms do without
	Readings []align.Reading   `json:"readings"`
	U        align.Uncertainty `json:"u,omitzero"`
}

// Face is a sweep of a dial that touches a face, parallel to the axis.
type Face struct {
	Diameter units.Length      `json:"diameter"`     // of the circle that the plunger sweeps, above zero
	Far      bool              `json:"far,omitzero"` // the plunger points back towards the machine that carries it
	Sag      units.Length      `json:"sag,omitzero"` // signed: positive if droop pushes the plunger in at 12
	Readings []align.Reading   `json:"readings"`
	U        align.Uncertainty `json:"u,omitzero"` // its radius is half the diameter's
}

// Gap is a round of a feeler or an inside gauge between the near faces. It reads
// the gap itself.
type Gap struct {
	Diameter units.Length      `json:"diameter"` // across the places where the gauge is put, above zero
	Readings []align.Reading   `json:"readings"`
	U        align.Uncertainty `json:"u,omitzero"` // its radius is half the diameter's
}

// Straightedge is a round of feelers under a straightedge that lies on one rim
// and reaches over the other. It reads the gap between the straightedge and the
// other rim; a difference of the two rims' radii is the same all round and
// drops out.
type Straightedge struct {
	On       align.Shaft       `json:"on"`      // the shaft on whose rim it lies
	Station  units.Length      `json:"station"` // signed x of the other rim, where the feeler goes in
	Readings []align.Reading   `json:"readings"`
	U        align.Uncertainty `json:"u,omitzero"`
}

// Quarters returns readings at 12, 3, 6 and 9 o'clock, in that order, each a
// number of the unit: Quarters(units.Mil, 0, -7, -14, -7). A number that is no
// whole multiple of a power of two, such as 1.1, may miss its decimal value by a
// rounding unit; the text "1.1 mil" does not.
func Quarters(unit units.Length, at12, at3, at6, at9 float64) []align.Reading {
	return []align.Reading{
		{At: units.Twelve, Value: units.Length(at12) * unit},
		{At: units.Three, Value: units.Length(at3) * unit},
		{At: units.Six, Value: units.Length(at6) * unit},
		{At: units.Nine, Value: units.Length(at9) * unit},
	}
}

// set returns the general form of the sweep, without the return to the start:
// a check on the set, not a reading of its own.
func (r Rim) set(carrier align.Shaft, view align.View) align.Set {
	kind := align.Rim
	if r.Bore {
		kind = align.Bore
	}
	return align.Set{
		Probe: align.Probe{Kind: kind, Carrier: carrier, Station: r.Station, Radius: r.Radius},
		Sag:   r.Sag, View: view, Readings: outward(r.Readings), U: r.U,
	}
}

func (f Face) set(carrier align.Shaft, view align.View) align.Set {
	kind := align.NearFace
	if f.Far {
		kind = align.FarFace
	}
	return align.Set{
		Probe: align.Probe{Kind: kind, Carrier: carrier, Radius: f.Diameter / 2},
		Sag:   f.Sag, View: view, Readings: outward(f.Readings), U: f.U,
	}
}

// joint returns the set of a face dial at one joint of a spacer.
func (f Face) joint(carrier align.Shaft, span units.Length, view align.View) align.Set {
	s := f.set(carrier, view)
	s.Probe.Kind, s.Probe.Span = align.SpacerFace, span
	if f.Far {
		s.Probe.Kind = align.SpacerFarFace
	}
	return s
}

func (g Gap) set(view align.View) align.Set {
	return align.Set{
		Probe: align.Probe{Kind: align.Gap, Radius: g.Diameter / 2},
		View:  view, Readings: outward(g.Readings), U: g.U,
	}
}

func (s Straightedge) set(view align.View) align.Set {
	return align.Set{
		Probe: align.Probe{Kind: align.Straightedge, Carrier: s.On, Station: s.Station},
		View:  view, Readings: outward(s.Readings), U: s.U,
	}
}
