package arc_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func mustForecast(tb fataler, expected align.Centreline, feet []align.Foot, sets ...align.Set) arc.Outlook {
	tb.Helper()
	o, err := arc.Forecast(expected, feet, sets...)
	if err != nil {
		tb.Fatalf("Forecast: %v", err)
	}
	return o
}

// The uncertainty of the displacement that N equally good readings dense on an arc
// see, times sqrt(N)/u, along the arc's middle and across it. Derived here, from
// the integrals of 1, sin, cos and their squares over the arc.
var denseArcs = []struct {
	degrees       units.Clock
	along, across string
}{
	{360, "1.41421", "1.41421"},
	{180, "3.2493", "1.41421"},
	{120, "6.61826", "1.84663"},
	{90, "11.3663", "2.34603"},
	{60, "24.9531", "3.40004"},
	{45, "43.9819", "4.47923"},
	{30, "98.3549", "6.66146"},
}

func TestForecastOfDenseArcs(t *testing.T) {
	const n, u = 10000, 5 * um
	six := func(v units.Length) string { return strconv.FormatFloat(math.Sqrt(n)*float64(v/u), 'g', 6, 64) }
	for _, row := range denseArcs {
		h := float64(row.degrees) / 2 * math.Pi / 180
		along := 1 / math.Sqrt(0.5+math.Sin(2*h)/(4*h)-math.Pow(math.Sin(h)/h, 2))
		across := 1 / math.Sqrt(0.5-math.Sin(2*h)/(4*h))
		for what, pair := range map[string][2]string{
			"the table against its formula, along":  {strconv.FormatFloat(along, 'g', 6, 64), row.along},
			"the table against its formula, across": {strconv.FormatFloat(across, 'g', 6, 64), row.across},
		} {
			if pair[0] != pair[1] {
				t.Errorf("%v degrees: %s: got %s, want %s", float64(row.degrees), what, pair[0], pair[1])
			}
		}
		for _, middle := range []units.Clock{units.Twelve, units.Three} {
			o := mustForecast(t, align.Centreline{}, nil, sensorPair(u, shared(n, middle, row.degrees)...)...)
			at := o.Now.Cov.At(-80 * mm)
			got := [2]string{six(at.Vertical), six(at.Horizontal)}
			if middle == units.Three {
				got[0], got[1] = got[1], got[0]
			}
			if want := [2]string{row.along, row.across}; got != want {
				t.Errorf("%v degrees about %v: got %v along and across, want %v", float64(row.degrees), middle, got, want)
			}
		}
	}
}

// The same, read off the wider arcs that the forecast tries: many readings over an
// arc with its ends are dense up to a share of 1/n.
func TestForecastOfWiderDenseArcs(t *testing.T) {
	const n = 2000
	o := mustForecast(t, align.Centreline{}, nil, sensorPair(um, shared(n, 0, 60)...)...)
	var widths []string
	for _, p := range o.Wider {
		widths = append(widths, fmt.Sprintf("%.0f", float64(p.Arc/units.Degree)))
		for _, row := range denseArcs {
			if math.Abs(float64(p.Arc/units.Degree)-float64(row.degrees)) > 1e-9 {
				continue
			}
			along, _ := strconv.ParseFloat(row.along, 64)
			at := p.Cov.At(-80 * mm)
			near(t, "along "+widths[len(widths)-1], math.Sqrt(n)*float64(at.Vertical/um), along, along*3/n)
		}
	}
	if want := []string{"90", "120", "180", "270", "360"}; !slices.Equal(widths, want) {
		t.Errorf("got widths %v, want %v", widths, want)
	}
}

// drawPlan draws sets with all their uncertainties, on arcs of any width.
func drawPlan(t *rapid.T) []align.Set {
	station := rapid.Float64Range(30, 300)
	plan := func(p align.Probe, sag units.Length) align.Set {
		n := rapid.IntRange(3, 9).Draw(t, "readings")
		width := rapid.Float64Range(40, 330).Draw(t, "arc")
		s := align.Set{
			Probe: p, Sag: sag, View: drawView(t),
			Readings: taken(within(n, units.Clock(rapid.Float64Range(-400, 400).Draw(t, "middle")), units.Clock(width))...),
			U:        align.Uncertainty{Reading: 5 * um, Clock: 0.01, Angle: 0.005},
		}
		s.Readings[1].U = 7 * um
		return s
	}
	sensor := plan(align.Probe{Kind: align.Displacement, Station: length(station.Draw(t, "station")), Gain: -2}, 0)
	rim := plan(align.Probe{Kind: align.Rim, Carrier: align.Movable, Station: -length(station.Draw(t, "station of the rim"))}, 30*um)
	sensor.U.Station, rim.U.Station, rim.U.Sag = mm, mm, um
	return []align.Set{sensor, rim}
}

// A forecast is the covariance that the fit of such readings has.
func TestForecastIsWhatTheFitWillSay(t *testing.T) {
	feet := []align.Foot{{Name: "inboard", X: 300 * mm, U: mm}, {Name: "outboard", X: 900 * mm}}
	rapid.Check(t, func(t *rapid.T) {
		truth, sets := drawLine(t), drawPlan(t)
		f := mustFit(t, filled(t, truth, sets)...)
		now := mustForecast(t, truth, feet, sets...).Now
		nearCov(t, "now", now.Cov, f.Cov, 1e-7)
		near(t, "condition", now.Condition, f.Condition, 1e-9*f.Condition)
		if now.DegreesOfFreedom != f.DegreesOfFreedom {
			t.Errorf("degrees of freedom: got %v, want %v", now.DegreesOfFreedom, f.DegreesOfFreedom)
		}
		_, u := f.At(0)
		near(t, "at the coupling", now.UCoupling.Vertical, u.Vertical, 1e-6*u.Vertical)
		near(t, "at the coupling", now.UCoupling.Horizontal, u.Horizontal, 1e-6*u.Horizontal)
		moves, err := f.Corrections(feet...)
		if err != nil {
			t.Fatal(err)
		}
		for i, m := range moves {
			got := now.Feet[i]
			near(t, "at a foot", got.U.Vertical, m.U.Vertical, 1e-6*m.U.Vertical)
			near(t, "the move", got.By.Horizontal, m.By.Horizontal, 1e-3)
			if got.Foot != m.Foot || got.Basis != align.Stated {
				t.Errorf("foot %v on a basis %v, want %v, stated", got.Foot, got.Basis, m.Foot)
			}
		}
	})
}

// Wider arcs are those of readings placed by hand, about the middle that each set
// has; what covers more keeps its place.
func TestForecastOfWiderArcs(t *testing.T) {
	place := func(n int, middle, width units.Clock) []units.Clock {
		if width < 360 {
			return within(n, middle, width)
		}
		return shared(n, middle, width)
	}
	build := func(view align.View, first, second []units.Clock) []align.Set {
		sets := sensorPair(5*um, first...)
		sets[1].Readings = taken(second...)
		for i := range sets {
			sets[i].U.Clock, sets[i].View = 0.02, view
			sets[i].Readings[0].U = 9 * um // stays with the first
		}
		return sets
	}
	for _, view := range []align.View{align.FromMovable, align.FromStationary} {
		first, second := within(4, 20, 70), within(5, 200, 150)
		sense := units.Clock(1)
		if view == align.FromStationary { // the crew's positions run down where the library's run up
			sense = -1
		}
		o := mustForecast(t, caseA, nil, build(view, first, second)...)
		near(t, "now", float64(o.Now.Arc/units.Degree), 70, 1e-9)
		if len(o.Wider) != 5 {
			t.Fatalf("got %d wider arcs, want 5", len(o.Wider))
		}
		for i, width := range []units.Clock{90, 120, 180, 270, 360} {
			first, second := place(4, 20, sense*width), second
			if width == 360 {
				first = shared(4, 20, sense*360)
			}
			if width > 150 {
				second = place(5, 200, sense*width)
			}
			if width == 360 {
				second = shared(5, 200, sense*360)
			}
			f := mustFit(t, filled(t, caseA, build(view, first, second))...)
			what := fmt.Sprintf("%v, %v degrees", view, float64(width))
			nearCov(t, what, o.Wider[i].Cov, f.Cov, 1e-6)
			near(t, what, o.Wider[i].Arc, units.Angle(width)*units.Degree, 1e-12)
		}
	}
}

// Of evenly spread readings, dense enough, more arc is always better in the worse
// plane; and a full turn has nothing wider.
func TestForecastGainsWithTheArc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(8, 20).Draw(t, "readings")
		width := rapid.Float64Range(30, 85).Draw(t, "arc")
		o := mustForecast(t, align.Centreline{}, nil, sensorPair(um, within(n, 0, units.Clock(width))...)...)
		last := o.Now.UCoupling.Vertical
		for _, p := range o.Wider {
			if !(p.UCoupling.Vertical < last) {
				t.Errorf("%v rad: u %v, no better than %v", float64(p.Arc), p.UCoupling.Vertical, last)
			}
			last = p.UCoupling.Vertical
		}
		o = mustForecast(t, align.Centreline{}, nil, sensorPair(um, shared(n, 77, 360)...)...)
		if len(o.Wider) != 0 {
			t.Errorf("got wider arcs than a full turn: %v", o.Wider)
		}
	})
}

// Values are not used, whatever they are, and the caller's are left alone.
func TestForecastDoesNotUseValues(t *testing.T) {
	sets := sensorPair(5*um, within(5, 100, 80)...)
	want := mustForecast(t, caseA, nil, sets...)
	for i := range sets {
		for j := range sets[i].Readings {
			sets[i].Readings[j].Value = units.Length(math.NaN())
		}
	}
	if diff := cmp.Diff(want, mustForecast(t, caseA, nil, sets...), cmp.AllowUnexported(align.Covariance{})); diff != "" {
		t.Error(diff)
	}
	for i := range sets {
		for j, at := range within(5, 100, 80) {
			if r := sets[i].Readings[j]; r.At != at || r.Value == r.Value {
				t.Errorf("the caller's reading became %v", r)
			}
		}
	}
}

// An uncertain clock counts in proportion to what is expected.
func TestForecastDependsOnWhatIsExpected(t *testing.T) {
	sets := sensorPair(um, within(9, 0, 120)...)
	for i := range sets {
		sets[i].U.Clock = 0.02
	}
	u := func(expected align.Centreline) units.Length {
		return mustForecast(t, expected, nil, sets...).Now.UCoupling.Horizontal
	}
	none, some := u(align.Centreline{}), u(line(0, 0, 1, 0))
	// w_z = 1 mm seen 0.02 rad off at both stations, at -80 and 120: the errors are
	// independent and reach the coupling centre by 0.6 and 0.4.
	want := math.Sqrt(float64(none*none) + math.Pow(20e3*math.Hypot(0.6, 0.4), 2))
	near(t, "with 1 mm expected", float64(some), want, 1e-6*want)
}

func TestForecastRefuses(t *testing.T) {
	type plan struct {
		expected align.Centreline
		feet     []align.Foot
		sets     []align.Set
	}
	sound := func() plan {
		return plan{caseA, []align.Foot{{Name: "inboard", X: 300 * mm}, {Name: "outboard", X: 900 * mm}}, sensorPair(5*um, 0, 40, 80)}
	}
	rows := []struct {
		name   string
		spoil  func(*plan)
		code   units.Code
		path   string
		repair func(*plan)
	}{
		{"no sets", func(p *plan) { p.sets = nil }, units.Missing, "/sets", func(*plan) {}},
		{"no uncertainty of one set", func(p *plan) { p.sets[1].U.Reading = 0 }, units.Missing, "/sets/1/u/reading", func(p *plan) {
			p.sets[1].U.Reading = 0
			for j := range p.sets[1].Readings {
				p.sets[1].Readings[j].U = um
			}
		}},
		{"an uncertainty of a part", func(p *plan) { p.sets[0].U.Reading = 0; p.sets[0].Readings[1].U = um }, units.Conflict, "/sets/0/readings", func(p *plan) { p.sets[0].Readings[1].U = um }},
		{"a probe that is not sound", func(p *plan) { p.sets[0].Probe.Gain = 0 }, units.Missing, "/sets/0/probe/gain", func(p *plan) { p.sets[0].Probe.Gain = 2 }},
		{"a position that is no number", func(p *plan) { p.sets[1].Readings[2].At = units.Clock(math.NaN()) }, units.NotFinite, "/sets/1/readings/2/at", func(p *plan) { p.sets[1].Readings[2].At = 300 }},
		{"one angle", func(p *plan) { p.sets[0].Readings = taken(0, 360, 720) }, units.Unseen, "/sets", func(p *plan) { p.sets[0].Readings = taken(0, 370, 740) }},
		{"one station", func(p *plan) { p.sets[0].Probe.Station = p.sets[1].Probe.Station }, units.Unseen, "/sets", func(p *plan) { p.sets[0].Probe.Station = 0 }},
		{"an offset that is no number", func(p *plan) { p.expected.Vertical.Offset = units.Length(math.NaN()) }, units.NotFinite, "/expected/vertical/offset", func(p *plan) { p.expected.Vertical.Offset = 0 }},
		{"a slope that is no number", func(p *plan) { p.expected.Horizontal.Slope = units.Slope(math.Inf(1)) }, units.NotFinite, "/expected/horizontal/slope", func(p *plan) { p.expected.Horizontal.Slope = 0 }},
		{"a slope that makes readings no machine can hold", func(p *plan) { p.expected.Horizontal.Slope = 1e14 }, units.OutOfRange, "/expected", func(p *plan) { p.expected.Horizontal.Slope = 1 }},
		{"a foot that is no number", func(p *plan) { p.feet[1].X = units.Length(math.NaN()) }, units.NotFinite, "/feet/1/x", func(p *plan) { p.feet[1].X = -mm }},
		{"two feet of one name", func(p *plan) { p.feet[1].Name = "inboard" }, units.Duplicate, "/feet/1/name", func(p *plan) { p.feet = nil }},
		{"one mounting of two probes", func(p *plan) { p.sets[0].Mounting, p.sets[1].Mounting = "a", "a" }, units.Conflict, "/sets/1/mounting", func(p *plan) { p.sets[0].Mounting, p.sets[1].Mounting = "a", "b" }},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			bad := sound()
			row.spoil(&bad)
			_, err := arc.Forecast(bad.expected, bad.feet, bad.sets...)
			if diff := cmp.Diff([]string{string(row.code) + " " + row.path}, codesAndPaths(err)); diff != "" {
				t.Error(diff)
			}
			twin := sound()
			row.repair(&twin)
			mustForecast(t, twin.expected, twin.feet, twin.sets...)
		})
	}
	all := plan{line(math.NaN(), 0, 0, 0), []align.Foot{{X: units.Length(math.Inf(1))}}, []align.Set{{}}}
	_, err := arc.Forecast(all.expected, all.feet, all.sets...)
	want := []string{"missing /sets/0/probe/kind", "missing /sets/0/readings", "missing /sets/0/u/reading", "not_finite /expected/horizontal/offset", "not_finite /feet/0/x"}
	if diff := cmp.Diff(want, codesAndPaths(err)); diff != "" {
		t.Errorf("all faults at once: %s", diff)
	}
}

func TestOutlookJSON(t *testing.T) {
	feet := []align.Foot{{Name: "inboard", X: 300 * mm}}
	for name, want := range map[string]arc.Outlook{
		"a forecast": mustForecast(t, caseA, feet, sensorPair(5*um, 0, 40, 80)...),
		"zero":       {},
	} {
		text, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		var got arc.Outlook
		if err := json.Unmarshal(text, &got); err != nil {
			t.Fatal(err)
		}
		nearCov(t, name, got.Now.Cov, want.Now.Cov, 1e-12)
		covApart := cmp.Comparer(func(a, b align.Covariance) bool { return a.Basis == b.Basis }) // it comes back by way of u and correlations
		if diff := cmp.Diff(want, got, covApart); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}
