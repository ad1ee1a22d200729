package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type arcInput struct {
	View align.View    `json:"view"`
	At   []units.Clock `json:"at"`
}

type arcResult struct {
	Covered units.Angle `json:"covered"`
	Hole    units.Angle `json:"hole"`
	Middle  units.Clock `json:"middle"`
}

func covered(in *arcInput, f *strict.Faults) arcResult {
	set := align.Set{View: in.View, Readings: make([]align.Reading, len(in.At))}
	for i, at := range in.At {
		set.Readings[i].At = at
	}
	a, err := arc.Of(set)
	f.Adopt(err, func(path string) string {
		if path == "/readings" {
			return "/at"
		}
		return path
	})
	return arcResult(a)
}
