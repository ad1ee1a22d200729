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

// standing is a rim dial that stands at a clock position and shows something.
func standing(carrier align.Shaft, x float64, t units.Clock, shows float64) arc.Standing {
	return arc.Standing{
		Probe: align.Probe{Kind: align.Rim, Carrier: carrier, Station: length(x)},
		Start: align.Reading{At: t, Value: length(shows), U: 2 * um},
	}
}

// rims is a follow of case A with a rim dial on either side of the coupling, of
// which one looks along the move and the other back.
func rims(plane arc.Plane) arc.Follow {
	look, back := units.Twelve, units.Six
	if plane == arc.Horizontal {
		look, back = units.Three, units.Nine
	}
	return arc.Follow{
		From:  align.Exact(caseA),
		Plane: plane,
		Probes: []arc.Standing{
			standing(align.Stationary, 40, look, 0.3),
			standing(align.Movable, -50, back, -0.1),
		},
	}
}

func mustBegin(tb fataler, f arc.Follow) *arc.Following {
	tb.Helper()
	g, err := f.Begin()
	if err != nil {
		tb.Fatalf("Begin: %v", err)
	}
	return g
}

func mustNow(tb fataler, g *arc.Following, readings ...units.Length) arc.Followed {
	tb.Helper()
	e, err := g.Now(readings...)
	if err != nil {
		tb.Fatalf("Now: %v", err)
	}
	return e
}

// Signs by hand: the machine goes up, or towards 3, by 0.05 mm and its slope grows
// by 0.2 mm/m, so 0.058 mm at x = 40 and 0.04 mm at x = -50. A dial on its rim that
// looks down on it from 12, or in from 3, is pushed in; one that it carries, at 6 or
// 9 on the rim of the other, as well. Derived here.
func TestFollowByHand(t *testing.T) {
	for _, row := range []struct {
		name  string
		plane arc.Plane
		view  align.View
		moved align.Centreline
	}{
		{"up", arc.Vertical, align.FromMovable, line(0, 0, 0.05, 0.2e-3)},
		{"towards 3", arc.Horizontal, align.FromMovable, line(0.05, 0.2e-3, 0, 0)},
		{"up, seen from the other end", arc.Vertical, align.FromStationary, line(0, 0, 0.05, 0.2e-3)},
		{"towards the crew's 3 is the library's 9", arc.Horizontal, align.FromStationary, line(-0.05, -0.2e-3, 0, 0)},
	} {
		f := rims(row.plane)
		f.View = row.view
		e := mustNow(t, mustBegin(t, f), length(0.3+0.058), length(-0.1+0.04))
		nearLine(t, row.name, e.Moved.Value, row.moved, 1e-6)
		nearLine(t, row.name, e.Value, caseA.Plus(row.moved), 1e-6)
		if e.Miss != 0 {
			t.Errorf("%s: two probes decide, and miss by %v", row.name, e.Miss)
		}
	}
}

// Case A, then the vertical offset +0.05 mm and slope +0.2 mm/m: the changes of the
// two rims of 75 mm, from an exact simulation of two rigid shafts made on its own
// (0.01 um is what its figures show). What is found departs from the move by the
// second order of the slope, rho (0.5^2 - 0.7^2)/2 um on each rim.
func TestFollowCaseA(t *testing.T) {
	moved := line(0, 0, 0.05, 0.2e-3)
	p := []rigid.Instrument{
		{Kind: rigid.Rim, Carrier: rigid.Stationary, Station: 40, Radius: 75},
		{Kind: rigid.Rim, Carrier: rigid.Movable, Station: -50, Radius: 75},
	}
	change := func(i int, clock float64) float64 {
		return p[i].Read(pose(caseA.Plus(moved)), clock) - p[i].Read(pose(caseA), clock)
	}
	first, second := change(0, 0), change(1, 180)
	near(t, "rim at 40 of the stationary carrier, at 12", first, 0.05799, 5e-6)
	near(t, "rim at -50 of the movable carrier, at 6", second, 0.03999, 5e-6)
	e := mustNow(t, mustBegin(t, rims(arc.Vertical)), length(0.3+first), length(-0.1+second))
	nearLine(t, "found", e.Moved.Value, moved, 9.5)
}

// Two probes anywhere against the closed form of the handbook, for displacement
// sensors of any gain.
func TestFollowClosedForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := arc.Follow{From: align.Exact(drawLine(t)), Plane: drawPlane(t), View: drawView(t)}
		var d, u, x [2]float64
		var now [2]units.Length
		for j := range 2 {
			x[j] = rapid.Float64Range(30, 300).Draw(t, "station") * float64(2*j-1)
			gain := rapid.SampledFrom([]float64{1, -1, 2.5, -0.01}).Draw(t, "gain")
			clock, c := drawSight(t, f.Plane, f.View)
			start := rapid.Float64Range(-1, 1).Draw(t, "start")
			r := rapid.Float64Range(-1, 1).Draw(t, "reading")
			f.Probes = append(f.Probes, arc.Standing{
				Probe: align.Probe{Kind: align.Displacement, Station: length(x[j]), Gain: gain},
				Start: align.Reading{At: clock, Value: length(start), U: units.Length(j+1) * um},
			})
			now[j] = length(r)
			d[j] = (r - start) / (gain * c)
			u[j] = math.Sqrt2 * float64(j+1) * 1e-3 / math.Abs(gain*c)
		}
		slope := (d[1] - d[0]) / (x[1] - x[0])
		offset := (x[1]*d[0] - x[0]*d[1]) / (x[1] - x[0])
		e := mustNow(t, mustBegin(t, f), now[:]...)
		got, other := e.Moved.Value.Vertical, e.Moved.Value.Horizontal
		if f.Plane == arc.Horizontal {
			got, other = other, got
		}
		scale := math.Abs(d[0]) + math.Abs(d[1])
		near(t, "offset", float64(got.Offset)/1e6, offset, 1e-13*scale)
		near(t, "slope", float64(got.Slope), slope, 1e-13*scale/30)
		if other != (align.Line{}) {
			t.Errorf("the other plane moved: %v", other)
		}
		for j := range 2 { // what is known at each station is what its probe knows
			v := e.Moved.Cov.At(length(x[j]))
			got, other := v.Vertical, v.Horizontal
			if f.Plane == arc.Horizontal {
				got, other = other, got
			}
			near(t, "uncertainty", float64(got)/1e6, u[j], 1e-9*(u[0]+u[1]))
			if other != 0 {
				t.Errorf("uncertainty %v in the other plane", other)
			}
		}
	})
}

func drawPlane(t *rapid.T) arc.Plane {
	return rapid.SampledFrom([]arc.Plane{arc.Horizontal, arc.Vertical}).Draw(t, "plane")
}

// drawSight returns a clock position at which a probe sees the plane, and how much.
func drawSight(t *rapid.T, plane arc.Plane, view align.View) (units.Clock, float64) {
	clock := units.Clock(rapid.Float64Range(-60, 60).Draw(t, "off"))
	if rapid.Bool().Draw(t, "back") {
		clock += 180
	}
	sign := 1.0
	if plane == arc.Horizontal {
		clock += 90
		if view == align.FromStationary {
			sign = -1
		}
		return clock, sign * math.Sin(float64(clock)*math.Pi/180)
	}
	return clock, math.Cos(float64(clock) * math.Pi / 180)
}

// everyStanding has a probe of every kind.
var everyStanding = []align.Probe{
	{Kind: align.Rim, Carrier: align.Stationary, Station: 40 * mm},
	{Kind: align.Rim, Carrier: align.Movable, Station: -50 * mm, Radius: 75 * mm},
	{Kind: align.Bore, Carrier: align.Movable, Station: -90 * mm},
	{Kind: align.Straightedge, Carrier: align.Stationary, Station: 70 * mm},
	{Kind: align.Displacement, Station: 100 * mm, Gain: -3},
	{Kind: align.NearFace, Carrier: align.Stationary, Radius: 75 * mm},
	{Kind: align.FarFace, Carrier: align.Movable, Radius: 60 * mm},
	{Kind: align.Gap, Radius: 90 * mm},
	{Kind: align.SpacerFace, Carrier: align.Movable, Radius: 80 * mm, Span: 500 * mm},
	{Kind: align.SpacerFarFace, Carrier: align.Stationary, Radius: 80 * mm, Span: 500 * mm},
}

func faces(k align.Kind) bool {
	switch k {
	case align.Rim, align.Bore, align.Straightedge, align.Displacement:
		return false
	}
	return true
}

// drawFollow draws two to five probes of any kinds that see their plane, the first
// two on rims, so that they always see it together.
func drawFollow(t *rapid.T) arc.Follow {
	f := arc.Follow{From: align.Exact(drawLine(t)), Plane: drawPlane(t), View: drawView(t)}
	for i := range rapid.IntRange(2, 5).Draw(t, "probes") {
		p := everyStanding[i%2]
		if i > 1 {
			p = rapid.SampledFrom(everyStanding).Draw(t, "probe")
		}
		clock, _ := drawSight(t, f.Plane, f.View)
		f.Probes = append(f.Probes, arc.Standing{
			Probe:     p,
			Start:     align.Reading{At: clock, Value: length(rapid.Float64Range(-1, 1).Draw(t, "start")), U: units.Length(rapid.Float64Range(500, 5000).Draw(t, "u"))},
			AxialFree: faces(p.Kind),
		})
	}
	return f
}

// shown is what the probes show once the machine has moved and the shafts have
// turned, by the law that align.Set.Predict follows: an oracle without the
// equations that are solved.
func shown(tb fataler, f arc.Follow, before, after align.Centreline, turned units.Clock) []units.Length {
	tb.Helper()
	readings := make([]units.Length, len(f.Probes))
	for i, p := range f.Probes {
		s := align.Set{Probe: p.Probe, View: f.View}
		// A reading against one half a turn on leaves twice what the probe sees.
		at := func(c align.Centreline, t units.Clock) units.Length {
			r, err := s.Predict(c, t+180, t)
			if err != nil {
				tb.Fatalf("Predict: %v", err)
			}
			return r[1].Value / 2
		}
		readings[i] = p.Start.Value + at(after, p.Start.At+turned) - at(before, p.Start.At)
	}
	return readings
}

// The condition by hand: of the columns of offset and slope, each over its length, (1, 1)
// and (-1, 3) have a cosine of 1/sqrt 5, so that the least singular value is
// sqrt(1 - 1/sqrt 5); probes that look along the move by a half make it half that.
func TestFollowConditionByHand(t *testing.T) {
	for _, at := range []struct {
		clock units.Clock
		sees  float64
	}{{0, 1}, {60, 0.5}, {240, 0.5}} {
		f := rims(arc.Vertical)
		for i, x := range []float64{-100, 300} {
			f.Probes[i].Probe = align.Probe{Kind: align.Displacement, Station: length(x), Gain: 1}
			f.Probes[i].Start.At = at.clock
		}
		want := 1 / (at.sees * math.Sqrt(1-1/math.Sqrt(5)))
		near(t, "condition", mustNow(t, mustBegin(t, f), 0, 0).Condition, want, 1e-12*want)
	}
}

// Any probes find the move that was made, and miss nothing.
func TestFollowFindsTheMove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFollow(t)
		moved := inPlane(f.Plane, drawLine(t))
		from := f.From.Value
		e := mustNow(t, mustBegin(t, f), shown(t, f, from, from.Plus(moved), 0)...)
		nearLine(t, "moved", e.Moved.Value, moved, 1e-6)
		nearLine(t, "now", e.Value, from.Plus(moved), 1e-6)
		near(t, "miss", e.Miss, 0, 1e-5)
		if !(e.Condition >= 1-1e-12) || e.Condition > 100 {
			t.Errorf("condition %v", e.Condition)
		}
	})
}

func inPlane(p arc.Plane, c align.Centreline) align.Centreline {
	if p == arc.Horizontal {
		return align.Centreline{Horizontal: c.Horizontal}
	}
	return align.Centreline{Vertical: c.Vertical}
}

// More probes than two: weighted least squares. Three sensors at x = 0 would have
// the mean; three at -100, 0 and 100 that show 0, 3 and 0 um find 1 um at the
// coupling, no slope, and miss by 2 um. The middle one at a tenth of the
// uncertainty counts a hundredfold: 100 3/(102).
func TestFollowLeastSquares(t *testing.T) {
	sensor := func(x float64, u units.Length) arc.Standing {
		return arc.Standing{
			Probe: align.Probe{Kind: align.Displacement, Station: length(x), Gain: 1},
			Start: align.Reading{U: u},
		}
	}
	f := arc.Follow{Plane: arc.Vertical, Probes: []arc.Standing{sensor(-100, 5*um), sensor(0, 5*um), sensor(100, 5*um)}}
	e := mustNow(t, mustBegin(t, f), 0, 3*um, 0)
	nearLine(t, "alike", e.Value, line(0, 0, 1e-3, 0), 1e-9)
	near(t, "miss", e.Miss, 2*um, 1e-6)
	near(t, "miss the other way", mustNow(t, mustBegin(t, f), 0, -3*um, 0).Miss, 2*um, 1e-6)
	near(t, "offset", e.Cov.Standard().Vertical.Offset, units.Length(math.Sqrt(2./3))*5*um, 1e-6)
	near(t, "slope", e.Cov.Standard().Vertical.Slope, 5e-3/100, 1e-15)
	f.Probes[1].Start.U = 0.5 * um
	e = mustNow(t, mustBegin(t, f), 0, 3*um, 0)
	nearLine(t, "one better", e.Value, line(0, 0, 3e-3*100/102, 0), 1e-9)
}

// The uncertainty of where it stood stays with it, and an unknown one is not
// forgotten; readings without one make it unknown.
func TestFollowUncertainty(t *testing.T) {
	known := mustCovariance(t, align.Scatter, line(0.01, 1e-5, 0.02, 2e-5))
	known.DoF = 3
	unknown := align.Covariance{Basis: align.Unknown}
	unstated := func(f *arc.Follow) {
		for i := range f.Probes {
			f.Probes[i].Start.U = 0
		}
	}
	for _, row := range []struct {
		name   string
		from   align.Covariance
		change func(*arc.Follow)
		basis  align.Basis
		dof    float64
	}{
		{"exact before", align.Covariance{}, func(*arc.Follow) {}, align.Stated, 0},
		{"scatter before", known, func(*arc.Follow) {}, align.Scatter, 3},
		{"unknown before", unknown, func(*arc.Follow) {}, align.Unknown, 0},
		{"nothing stated", known, unstated, align.Unknown, 0},
	} {
		f := rims(arc.Vertical)
		f.From.Cov = row.from
		row.change(&f)
		e := mustNow(t, mustBegin(t, f), 0, 0)
		if e.Cov.Basis != row.basis || e.Cov.DoF != row.dof {
			t.Errorf("%s: %v with %v degrees of freedom, want %v with %v", row.name, e.Cov.Basis, e.Cov.DoF, row.basis, row.dof)
		}
		if row.basis == align.Unknown {
			continue
		}
		got, was, moved := e.Cov.At(70*mm), row.from.At(70*mm), e.Moved.Cov.At(70*mm)
		near(t, row.name+", vertical", got.Vertical, units.Length(math.Hypot(float64(was.Vertical), float64(moved.Vertical))), 1e-6)
		near(t, row.name+", horizontal", got.Horizontal, was.Horizontal, 1e-6)
	}
}

func mustCovariance(tb fataler, basis align.Basis, u align.Centreline) align.Covariance {
	tb.Helper()
	c, err := align.NewCovariance(basis, u, [4][4]float64{{1, 0.6, 0.1, 0}, {0.6, 1, 0, 0.2}, {0.1, 0, 1, -0.5}, {0, 0.2, -0.5, 1}})
	if err != nil {
		tb.Fatalf("NewCovariance: %v", err)
	}
	return c
}

func TestFollowAllocatesNothing(t *testing.T) {
	for _, plane := range []arc.Plane{arc.Horizontal, arc.Vertical} {
		f := rims(plane)
		f.From.Cov = mustCovariance(t, align.Stated, line(0.01, 1e-5, 0.02, 2e-5))
		f.Probes = append(f.Probes, standing(align.Stationary, 90, f.Probes[0].Start.At, 0))
		g := mustBegin(t, f)
		if n := testing.AllocsPerRun(100, func() { mustNow(t, g, 0, um, 2*um) }); n != 0 {
			t.Errorf("%v: Now allocates %v times", plane, n)
		}
	}
}

func BenchmarkFollowingNow(b *testing.B) {
	g := mustBegin(b, rims(arc.Vertical))
	for b.Loop() {
		mustNow(b, g, um, 2*um)
	}
}
