package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type sensorInput struct {
	View    align.View   `json:"view"`
	Sensors []sensor     `json:"sensors"`
	Feet    []align.Foot `json:"feet,omitzero"`
}

type sensor struct {
	Carrier  align.Shaft   `json:"carrier"`
	Station  units.Length  `json:"station"`
	Gain     float64       `json:"gain"`
	Readings []fitReading  `json:"readings"`
	U        sensorU       `json:"u,omitzero"`
	Angle    *angleChannel `json:"angle,omitzero"`
}

type sensorU struct {
	Reading *units.Length `json:"reading,omitzero"`
	Station units.Length  `json:"station,omitzero"`
	Clock   units.Angle   `json:"clock,omitzero"`
	Angle   units.Angle   `json:"angle,omitzero"`
}

type angleChannel struct {
	Gain     float64        `json:"gain"`
	Readings []angleReading `json:"readings"`
	U        *units.Slope   `json:"u,omitzero"`
}

type angleReading struct {
	At    units.Clock  `json:"at"`
	Value units.Slope  `json:"value"`
	U     *units.Slope `json:"u,omitzero"`
}

func sense(in *sensorInput, f *strict.Faults) fitResult {
	if len(in.Sensors) == 0 {
		f.Add(units.Missing, "/sensors", "", "at least one sensor")
	}
	var sets []align.Set
	for i := range in.Sensors {
		path := strict.Step("/sensors", i)
		of, err := in.Sensors[i].sensor(f, path, in.View).Sets()
		f.Adopt(err, below(path))
		sets = append(sets, of...)
	}
	if len(*f) > 0 {
		return fitResult{}
	}
	fitted, err := align.Fit(sets...)
	f.Adopt(err, func(path string) string {
		if path == "/sets" {
			return "/sensors"
		}
		return path
	})
	as := fitInput{View: in.View, Feet: in.Feet}
	return as.told(f, fitted)
}

func (s *sensor) sensor(f *strict.Faults, path string, view align.View) arc.Sensor {
	above(f, path+"/u/reading", s.U.Reading)
	out := arc.Sensor{
		Carrier: s.Carrier, Station: s.Station, View: view, Gain: s.Gain,
		Readings: make([]align.Reading, len(s.Readings)),
		U: align.Uncertainty{
			Reading: value(s.U.Reading), Station: s.U.Station, Clock: s.U.Clock, Angle: s.U.Angle,
		},
	}
	for i, r := range s.Readings {
		above(f, strict.Step(path+"/readings", i)+"/u", r.U)
		out.Readings[i] = align.Reading{At: r.At, Value: r.Value, U: value(r.U)}
	}
	if s.Angle != nil {
		out.Angle = s.Angle.channel(f, path+"/angle")
	}
	return out
}

func (a *angleChannel) channel(f *strict.Faults, path string) arc.AngleChannel {
	above(f, path+"/u", a.U)
	out := arc.AngleChannel{Gain: a.Gain, U: value(a.U), Readings: make([]arc.AngleReading, len(a.Readings))}
	for i, r := range a.Readings {
		above(f, strict.Step(path+"/readings", i)+"/u", r.U)
		out.Readings[i] = arc.AngleReading{At: r.At, Value: r.Value, U: value(r.U)}
	}
	return out
}
