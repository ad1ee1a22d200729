package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type expectInput struct {
	Position position    `json:"position"`
	View     align.View  `json:"view"`
	Sets     []fitReadAt `json:"sets"`
}

// fitReadAt is a set that will be read at clock positions.
type fitReadAt struct {
	Probe    probe         `json:"probe"`
	Mounting string        `json:"mounting,omitzero"`
	Sag      *units.Length `json:"sag,omitzero"`
	U        fitU          `json:"u,omitzero"`
	At       []units.Clock `json:"at"`
}

type expectResult struct {
	Sets []expected `json:"sets"`
}

type expected struct {
	Readings []expectedReading `json:"readings"`
}

type expectedReading struct {
	reading
	U *units.Length `json:"u,omitzero"`
}

func expect(in *expectInput, f *strict.Faults) expectResult {
	position := in.Position.estimate(f, "/position")
	if len(in.Sets) == 0 {
		f.Add(units.Missing, "/sets", "", "at least one set")
	}
	result := expectResult{make([]expected, len(in.Sets))}
	for i := range in.Sets {
		path := strict.Step("/sets", i)
		set := in.Sets[i].set(f, path, in.View)
		set.Readings = nil
		shown, err := set.Expect(position, in.Sets[i].At...)
		f.Adopt(err, ofPrediction(path))
		for j, r := range toldReadings(shown) {
			told := expectedReading{reading: r}
			if j > 0 {
				told.U = &shown[j].U
			}
			result.Sets[i].Readings = append(result.Sets[i].Readings, told)
		}
	}
	return result
}

// set returns the set with readings of zero at its positions.
func (s *fitReadAt) set(f *strict.Faults, path string, view align.View) align.Set {
	readings := make([]fitReading, len(s.At))
	for i, at := range s.At {
		readings[i].At = at
	}
	as := fitSet{s.Probe, s.Mounting, s.Sag, readings, s.U}
	return as.set(f, path, view)
}
