package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// reading is what a dial shows at one position, in input and result.
type reading struct {
	At    units.Clock  `json:"at"`
	Value units.Length `json:"value"`
}

func readings(list []reading) []align.Reading {
	all := make([]align.Reading, len(list))
	for i, r := range list {
		all[i] = align.Reading{At: r.At, Value: r.Value}
	}
	return all
}

func toldReadings(list []align.Reading) []reading {
	all := make([]reading, len(list))
	for i, r := range list {
		all[i] = reading{At: r.At, Value: r.Value}
	}
	return all
}

// rim is a sweep of a dial on a rim or in a bore.
type rim struct {
	Station  units.Length `json:"station"`
	Bore     bool         `json:"bore,omitzero"`
	Sag      units.Length `json:"sag,omitzero"`
	Readings []reading    `json:"readings"`
}

func (r *rim) dial() dial.Rim {
	return dial.Rim{Station: r.Station, Bore: r.Bore, Sag: r.Sag, Readings: readings(r.Readings)}
}

// face is a sweep of a dial on a face.
type face struct {
	Diameter units.Length `json:"diameter"`
	Far      bool         `json:"far,omitzero"`
	Sag      units.Length `json:"sag,omitzero"`
	Readings []reading    `json:"readings"`
}

func (c *face) dial() dial.Face {
	return dial.Face{Diameter: c.Diameter, Far: c.Far, Sag: c.Sag, Readings: readings(c.Readings)}
}

// gap is a round of a gauge between the faces.
type gap struct {
	Diameter units.Length `json:"diameter"`
	Readings []reading    `json:"readings"`
}

func (g *gap) dial() dial.Gap {
	return dial.Gap{Diameter: g.Diameter, Readings: readings(g.Readings)}
}

// straightedge is a round of feelers under a straightedge.
type straightedge struct {
	On       align.Shaft  `json:"on"`
	Station  units.Length `json:"station"`
	Readings []reading    `json:"readings"`
}

func (s *straightedge) dial() dial.Straightedge {
	return dial.Straightedge{On: s.On, Station: s.Station, Readings: readings(s.Readings)}
}
