package arc_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// What the other plane does unseen, and a turn of the shafts, make the error that
// is foretold: the first exactly, the second to second order of the angle.
func TestFollowErrors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFollow(t)
		g, from := mustBegin(t, f), f.From.Value
		other := rapid.SampledFrom([]align.Line{drawLine(t).Horizontal, {}}).Draw(t, "other")
		unseen := align.Centreline{Vertical: other}
		if f.Plane == arc.Vertical {
			unseen = align.Centreline{Horizontal: other}
		}
		want, err := g.UnseenError(other)
		if err != nil {
			t.Fatal(err)
		}
		e := mustNow(t, g, shown(t, f, from, from.Plus(unseen), 0)...)
		nearLine(t, "unseen", want, e.Moved.Value, 1e-6)

		const turned = 1e-4 // degrees
		by := turned * units.Degree
		want, err = g.TurnError(by)
		if err != nil {
			t.Fatal(err)
		}
		e = mustNow(t, g, shown(t, f, from, from, turned)...)
		// Second order: by^2/2 = 1.5e-12 of a displacement up to 3 mm, times at most the gain of 5 probes.
		nearLine(t, "turned", want, e.Moved.Value, 1e-2)
	})
}

// The error of one probe as geometry has it: at t = 30 degrees, w = (0.12, -0.20)
// at the coupling, and a second sensor at the same t, so that offset and slope are
// wrong as one line.
func TestFollowErrorsByHand(t *testing.T) {
	sensor := func(x float64) arc.Standing {
		return arc.Standing{
			Probe: align.Probe{Kind: align.Displacement, Station: length(x), Gain: 1},
			Start: align.Reading{At: 30},
		}
	}
	f := arc.Follow{From: align.Exact(caseA), Plane: arc.Vertical, Probes: []arc.Standing{sensor(-80), sensor(120)}}
	tan := math.Tan(math.Pi / 6)
	check := func(what string, got align.Centreline, err error, want align.Centreline) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		nearLine(t, what, got, want, 1e-6)
	}
	const by = 0.01 // rad
	g := mustBegin(t, f)
	got, err := g.TurnError(by)
	check("vertical, turned", got, err, line(0, 0, by*(0.12+0.20*tan), by*(0.4e-3+0.7e-3*tan)))
	got, err = g.UnseenError(line(0.03, 1e-4, 0, 0).Horizontal)
	check("vertical, unseen", got, err, line(0, 0, 0.03*tan, 1e-4*tan))
	f.Plane = arc.Horizontal
	g = mustBegin(t, f)
	got, err = g.TurnError(by)
	check("horizontal, turned", got, err, line(by*(0.12/tan+0.20), by*(0.4e-3/tan+0.7e-3), 0, 0))
	got, err = g.UnseenError(line(0.03, 1e-4, 0, 0).Horizontal)
	check("horizontal, unseen", got, err, line(0.03/tan, 1e-4/tan, 0, 0))
}
