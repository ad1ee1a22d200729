package pumpset

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// What a job holds, turned into the inputs of package dial.

func (l limits) dial() dial.Limits { return dial.Limits{Miss: l.Miss.Value, Return: l.Return.Value} }

func (r rim) dial(t *tape, place length) dial.Rim {
	u := r.U.align()
	u.Station = t.U.Value
	return dial.Rim{
		Station: t.station(place), Sag: droop(r.Sag, r.Mandrel),
		Readings: readings(r.Readings), U: u,
	}
}

func (r rim) part(field, tape string) part {
	return part{field: field, rim: tape, sag: r.Sag, mandrel: r.Mandrel, readings: r.Readings}
}

func (f face) dial() dial.Face {
	return dial.Face{
		Diameter: f.Diameter.Value, Far: f.Far, Sag: droop(f.Sag, f.Mandrel),
		Readings: readings(f.Readings), U: f.U.align(),
	}
}

func (f face) part(field string) part {
	return part{field: field, sag: f.Sag, mandrel: f.Mandrel, readings: f.Readings}
}

func (g gap) dial() dial.Gap {
	return dial.Gap{Diameter: g.Diameter.Value, Readings: readings(g.Readings), U: g.U.align()}
}

func (g gap) part() part { return part{field: "gap", readings: g.Readings} }

func (s straightedge) dial(t *tape, place length) dial.Straightedge {
	u := s.U.align()
	u.Station = t.U.Value
	return dial.Straightedge{On: s.On, Station: t.station(place), Readings: readings(s.Readings), U: u}
}

func (s straightedge) part(tape string) part {
	return part{field: "straightedge", rim: tape, readings: s.Readings}
}

// droop is the sag as it was told, or as the mandrel shows it.
func droop(sag length, m *mandrel) units.Length {
	if m == nil {
		return sag.Value
	}
	return dial.MandrelSag(m.At12.Value, m.At6.Value)
}

func readings(list []reading) []align.Reading {
	all := make([]align.Reading, len(list))
	for i, r := range list {
		all[i] = align.Reading{At: r.At.Value, Value: r.Value.Value}
	}
	return all
}

// align returns the uncertainties of a set; that of a radius is half that of its
// diameter.
func (d doubt) align() align.Uncertainty {
	return align.Uncertainty{
		Reading: d.Reading.Value, Radius: d.Diameter.Value / 2, Sag: d.Sag.Value, Clock: d.Clock,
	}
}

// dial returns the target in the words of package dial.
func (j *Job) dialTarget() dial.Target {
	if j.Target == nil {
		return dial.Target{View: j.View}
	}
	t := *j.Target
	d := dial.Target{
		High: t.High.Value, ToThree: t.ToThree.Value,
		Opening: t.Opening.Value, OpenAt: t.OpenAt.Value, Diameter: t.Diameter.Value,
		View: j.View,
	}
	if t.At.given() {
		d.Station = j.Tape.station(t.At)
	}
	if t.Opening.given() && !t.Diameter.given() {
		d.Diameter = j.Coupling.Diameter.Value
	}
	return d
}
