package arc_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// droop of the brackets, in millimetres.
const droop = 0.08

// simulatedRims reads two rims of the given radius, whose brackets droop, before and
// after a move.
func simulatedRims(f *arc.Follow, radius float64, after align.Centreline) []units.Length {
	now := make([]units.Length, len(f.Probes))
	for i := range f.Probes {
		p := &f.Probes[i]
		in := rigid.Instrument{Kind: rigid.Rim, Station: float64(p.Probe.Station) / 1e6, Radius: radius, Sag: droop}
		if p.Probe.Carrier == align.Movable {
			in.Carrier = rigid.Movable
		}
		clock := float64(f.View.Clock(p.Start.At))
		p.Start.Value = length(in.Read(pose(f.From.Value), clock))
		now[i] = length(in.Read(pose(after), clock))
	}
	return now
}

// bend is the second order of a rim's reading: w is where the target stands from a
// dial that droops with its bracket.
func bend(c align.Centreline, p align.Probe, radius float64, clock units.Clock) float64 {
	sin, cos := clock.SinCos()
	w := c.At(p.Station)
	low := length(droop)
	if p.Carrier == align.Movable {
		low = -low
	}
	across := (float64(w.Horizontal)*cos - float64(w.Vertical+low)*sin) / 1e6
	tilt := c.Tilt()
	lean := float64(tilt.Horizontal)*sin + float64(tilt.Vertical)*cos
	return -across*across/(2*radius) + radius*lean*lean/2
}

// Against exact three-dimensional geometry: what is found departs from the move by
// what the second order of the readings makes, but for the third.
func TestFollowAgainstExactGeometry(t *testing.T) {
	const radius, third = 75.0, 5e-7 // mm; of displacements up to 0.6 mm, with the droop, and slopes up to 0.9 mm/m: one times the other squared
	rapid.Check(t, func(t *rapid.T) {
		f := arc.Follow{From: align.Exact(drawLine(t).Times(0.2)), Plane: drawPlane(t), View: drawView(t)}
		for i, x := range []float64{rapid.Float64Range(-100, -40).Draw(t, "x"), rapid.Float64Range(40, 100).Draw(t, "x")} {
			clock, _ := drawSight(t, f.Plane, f.View)
			f.Probes = append(f.Probes, standing([]align.Shaft{align.Movable, align.Stationary}[i], x, clock, 0))
		}
		moved := inPlane(f.Plane, drawLine(t).Times(0.2))
		after := f.From.Value.Plus(moved)
		now := simulatedRims(&f, radius, after)
		g := mustBegin(t, f)
		e := mustNow(t, g, now...)

		bent := make([]units.Length, len(now))
		for i, p := range f.Probes {
			clock := f.View.Clock(p.Start.At)
			bent[i] = p.Start.Value + length(bend(after, p.Probe, radius, clock)-bend(f.From.Value, p.Probe, radius, clock))
		}
		want := moved.Plus(mustNow(t, g, bent...).Moved.Value)
		for _, x := range []float64{float64(f.Probes[0].Probe.Station), float64(f.Probes[1].Probe.Station)} {
			got, want := e.Moved.Value.At(units.Length(x)), want.At(units.Length(x))
			near(t, "horizontal", float64(got.Horizontal)/1e6, float64(want.Horizontal)/1e6, third/math.Cos(math.Pi/3))
			near(t, "vertical", float64(got.Vertical)/1e6, float64(want.Vertical)/1e6, third/math.Cos(math.Pi/3))
		}
	})
}

// A machine that tilts about its feet goes along as well: a face reads slope (H +
// R cos t). With H = 400 and R = 75 one face alone would find more than six times
// the slope; two across from each other, read as one, find it. Exact, from the
// simulation of the shafts with the shift of geometry beside it.
func TestFollowFacesAndAxialShift(t *testing.T) {
	const high, radius, slope = 400.0, 75.0, 0.3e-3
	read := func(clock float64, after align.Centreline) float64 {
		in := rigid.Instrument{Kind: rigid.NearFace, Radius: radius, Float: func(float64) float64 { return -high * float64(after.Vertical.Slope) }}
		return in.Read(pose(after), clock)
	}
	after := line(0, 0, 0, slope)
	near(t, "one face alone", read(0, after), slope*(high+radius), 1e-6)
	pair := arc.Follow{
		Plane: arc.Vertical,
		Probes: []arc.Standing{
			{Probe: align.Probe{Kind: align.Displacement, Gain: 1}},
			{Probe: align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: length(2 * radius)}, AxialFree: true},
		},
	}
	e := mustNow(t, mustBegin(t, pair), 0, length(read(0, after)-read(180, after)))
	nearLine(t, "a pair", e.Value, after, 1e-1)
}
