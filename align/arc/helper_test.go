package arc_test

import (
	"errors"
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

const (
	mm = units.Millimetre
	um = units.Micrometre
)

// caseA is the misalignment that checks share: offsets +0.12 and -0.20 mm, slopes
// +0.4 and -0.7 mm/m.
var caseA = line(0.12, 0.4e-3, -0.20, -0.7e-3)

// line makes a centreline of four plain numbers, in millimetres and ratios, in
// the order horizontal offset and slope, vertical offset and slope.
func line(offsetY, slopeY, offsetZ, slopeZ float64) align.Centreline {
	return align.Centreline{
		Horizontal: align.Line{Offset: length(offsetY), Slope: units.Slope(slopeY)},
		Vertical:   align.Line{Offset: length(offsetZ), Slope: units.Slope(slopeZ)},
	}
}

// plain is the inverse of line.
func plain(c align.Centreline) [4]float64 {
	return [4]float64{
		float64(c.Horizontal.Offset) / 1e6, float64(c.Horizontal.Slope),
		float64(c.Vertical.Offset) / 1e6, float64(c.Vertical.Slope),
	}
}

// pose is the same for the simulator.
func pose(c align.Centreline) rigid.Pose {
	p := plain(c)
	return rigid.Pose{OffsetY: p[0], SlopeY: p[1], OffsetZ: p[2], SlopeZ: p[3]}
}

func length(millimetres float64) units.Length { return units.Length(millimetres * 1e6) }

// within returns n clock positions over an arc about a middle, ends included.
func within(n int, middle, width units.Clock) []units.Clock {
	clocks := make([]units.Clock, n)
	for i := range clocks {
		clocks[i] = middle - width/2 + width*units.Clock(i)/units.Clock(n-1)
	}
	return clocks
}

// shared returns n clock positions over an arc about a middle, each in the middle
// of its share.
func shared(n int, middle, width units.Clock) []units.Clock {
	clocks := make([]units.Clock, n)
	for i := range clocks {
		clocks[i] = middle + width*units.Clock((float64(i)+0.5)/float64(n)-0.5)
	}
	return clocks
}

// taken makes readings at clock positions, without values.
func taken(clocks ...units.Clock) []align.Reading {
	readings := make([]align.Reading, len(clocks))
	for i, t := range clocks {
		readings[i].At = t
	}
	return readings
}

// sensorPair is a displacement sensor on either side of the coupling, both seen
// as sets that read the displacement of the movable shaft.
func sensorPair(u units.Length, clocks ...units.Clock) []align.Set {
	at := func(x float64) align.Set {
		return align.Set{
			Probe:    align.Probe{Kind: align.Displacement, Station: length(x), Gain: 1},
			Readings: taken(clocks...),
			U:        align.Uncertainty{Reading: u},
		}
	}
	return []align.Set{at(-80), at(120)}
}

// filled returns the sets with the values that a misalignment makes.
func filled(tb fataler, c align.Centreline, sets []align.Set) []align.Set {
	tb.Helper()
	sets = slices.Clone(sets)
	for i := range sets {
		var at []units.Clock
		for _, r := range sets[i].Readings {
			at = append(at, r.At)
		}
		predicted, err := sets[i].Predict(c, at...)
		if err != nil {
			tb.Fatalf("Predict: %v", err)
		}
		for j := range predicted {
			predicted[j].U = sets[i].Readings[j].U
		}
		sets[i].Readings = predicted
	}
	return sets
}

func mustFit(tb fataler, sets ...align.Set) align.Fitted {
	tb.Helper()
	f, err := align.Fit(sets...)
	if err != nil {
		tb.Fatalf("Fit: %v", err)
	}
	return f
}

func mustSets(tb fataler, sensors ...arc.Sensor) (sets []align.Set) {
	tb.Helper()
	for _, s := range sensors {
		one, err := s.Sets()
		if err != nil {
			tb.Fatalf("Sets: %v", err)
		}
		sets = append(sets, one...)
	}
	return sets
}

// fataler is what testing.TB and rapid.T have in common.
type fataler interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// near fails unless got lies within tolerance of want; NaN never does.
func near[Q ~float64](tb fataler, what string, got, want, tolerance Q) {
	tb.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tolerance)) {
		tb.Errorf("%s: got %.12g, want %.12g within %.3g, off by %.3g", what,
			float64(got), float64(want), float64(tolerance), float64(got-want))
	}
}

// nearLine compares two centrelines, offsets to nanometres and slopes to the same
// over a metre.
func nearLine(tb fataler, what string, got, want align.Centreline, nanometres float64) {
	tb.Helper()
	g, w := plain(got), plain(want)
	for i, name := range []string{"horizontal offset", "horizontal slope", "vertical offset", "vertical slope"} {
		unit := []float64{1e-6, 1e-9}[i%2]
		near(tb, what+": "+name, g[i], w[i], nanometres*unit)
	}
}

// nearCov compares covariances: bases, and each standard uncertainty and
// correlation.
func nearCov(tb fataler, what string, got, want align.Covariance, relative float64) {
	tb.Helper()
	if got.Basis != want.Basis {
		tb.Errorf("%s: basis %v, want %v", what, got.Basis, want.Basis)
	}
	g, w := plain(got.Standard()), plain(want.Standard())
	r, s := got.Correlation(), want.Correlation()
	for i := range g {
		near(tb, what+": standard uncertainty", g[i], w[i], relative*w[i])
		for j := range r {
			near(tb, what+": correlation", r[i][j], s[i][j], relative)
		}
	}
}

// codesAndPaths lists the faults of an error as "code path", sorted.
func codesAndPaths(err error) []string {
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	slices.Sort(list)
	return list
}

// checkFault asks for an error that is of a code and holds a fault at a path.
func checkFault(tb fataler, err error, code units.Code, path string) {
	tb.Helper()
	if !errors.Is(err, code) || !slices.Contains(codesAndPaths(err), string(code)+" "+path) {
		tb.Errorf("got %v, want a fault %s at %s", err, code, path)
	}
}

func drawLine(t *rapid.T) align.Centreline {
	offset, slope := rapid.Float64Range(-1, 1), rapid.Float64Range(-2e-3, 2e-3)
	return line(offset.Draw(t, "offset y"), slope.Draw(t, "slope y"), offset.Draw(t, "offset z"), slope.Draw(t, "slope z"))
}

func drawShaft(t *rapid.T) align.Shaft {
	return rapid.SampledFrom([]align.Shaft{align.Stationary, align.Movable}).Draw(t, "carrier")
}

func drawView(t *rapid.T) align.View {
	return rapid.SampledFrom([]align.View{align.FromMovable, align.FromStationary}).Draw(t, "view")
}
