package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type followInput struct {
	From   position   `json:"from"`
	Plane  arc.Plane  `json:"plane"`
	View   align.View `json:"view"`
	Probes []standing `json:"probes"`
}

// standing is a probe that stands still while a machine moves.
type standing struct {
	Probe     probe         `json:"probe"`
	At        units.Clock   `json:"at"`
	Start     units.Length  `json:"start"`
	Now       units.Length  `json:"now"`
	U         *units.Length `json:"u,omitzero"`
	AxialFree bool          `json:"axial_free,omitzero"`
}

func follow(in *followInput, f *strict.Faults) position {
	from := in.From.estimate(f, "/from")
	follow := arc.Follow{From: from, Plane: in.Plane, View: in.View, Probes: make([]arc.Standing, len(in.Probes))}
	now := make([]units.Length, len(in.Probes))
	for i, p := range in.Probes {
		path := strict.Step("/probes", i)
		above(f, path+"/u", p.U)
		follow.Probes[i] = arc.Standing{
			Probe: p.Probe.probe(f, path+"/probe"), AxialFree: p.AxialFree,
			Start: align.Reading{At: p.At, Value: p.Start, U: value(p.U)},
		}
		now[i] = p.Now
	}
	following, err := follow.Begin()
	f.Adopt(err, standingPath)
	if err != nil {
		return position{}
	}
	followed, err := following.Now(now...)
	f.Adopt(err, func(path string) string {
		if rest, found := strings.CutPrefix(path, "/readings/"); found {
			return "/probes/" + rest + "/now"
		}
		return path
	})
	if in.moved() && from.Cov.Basis != align.Stated {
		followed.Cov = align.Covariance{} // the input states one part alone
	}
	return told(followed.Estimate)
}

// moved tells whether the readings state an uncertainty.
func (in *followInput) moved() bool { return len(in.Probes) > 0 && in.Probes[0].U != nil }

// standingPath turns the paths of a start reading into those of the wire.
func standingPath(path string) string {
	path = strings.Replace(path, "/start/value", "/start", 1)
	path = strings.Replace(path, "/start/at", "/at", 1)
	return strings.Replace(path, "/start/u", "/u", 1)
}
