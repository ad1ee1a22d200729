package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type predictInput struct {
	Position position     `json:"position"`
	View     align.View   `json:"view"`
	Sets     []predictSet `json:"sets"`
}

type predictSet struct {
	Probe probe         `json:"probe"`
	Sag   *units.Length `json:"sag,omitzero"`
	At    []units.Clock `json:"at"`
}

type predictResult struct {
	Sets []predicted `json:"sets"`
}

type predicted struct {
	Readings []reading `json:"readings"`
}

func predict(in *predictInput, f *strict.Faults) predictResult {
	position := in.Position.estimate(f, "/position").Value
	if len(in.Sets) == 0 {
		f.Add(units.Missing, "/sets", "", "at least one set")
	}
	sets := make([]predicted, len(in.Sets))
	for i := range in.Sets {
		sets[i].Readings = in.Sets[i].shows(f, strict.Step("/sets", i), in.View, position)
	}
	return predictResult{sets}
}

func (s *predictSet) shows(f *strict.Faults, path string, view align.View, c align.Centreline) []reading {
	set := align.Set{Probe: s.Probe.probe(f, path+"/probe"), Sag: value(s.Sag), View: view}
	s.Probe.unused(f, path, "sag", s.Sag != nil)
	shown, err := set.Predict(c, s.At...)
	f.Adopt(err, ofPrediction(path))
	return toldReadings(shown)
}

// ofPrediction turns the paths of a prediction into those of the input, path being
// that of the set.
func ofPrediction(path string) func(string) string {
	return func(of string) string {
		if rest, found := strings.CutPrefix(of, "/centreline"); found {
			return "/position" + rest
		}
		if rest, found := strings.CutPrefix(of, "/estimate"); found {
			return ofPosition(rest)
		}
		return path + of
	}
}
