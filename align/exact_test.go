package align_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// The exact fit against rigid shafts, which share no code with it. A nanometre is
// promised; what is left is rounding, so the bound is a thousandth of that, in
// millimetres.
const picometre = 1e-9

// known gives the rims of the sets a radius.
func known(radius float64, sets ...align.Set) []align.Set {
	return each(sets, func(s *align.Set) {
		if s.Probe.Kind == align.Rim || s.Probe.Kind == align.Bore {
			s.Probe.Radius = length(radius)
		}
	})
}

// swept fills a set with what the rigid shafts show at the clock positions as its
// crew names them, and the droop of its bracket.
func swept(truth align.Centreline, s align.Set, clocks []units.Clock) align.Set {
	degrees := make([]float64, len(clocks))
	for i, c := range clocks {
		degrees[i] = float64(s.View.Clock(c))
	}
	s.Readings = at(mm, clocks, toRigid(s.Probe).Sweep(pose(truth), degrees...)...)
	for i := range s.Readings {
		_, cos := direction(s.View, clocks[i])
		s.Readings[i].Value += units.Length(droopSign(s.Probe.Kind) * float64(s.Sag) * cos)
	}
	return s
}

func mustFitExact(tb fataler, sets ...align.Set) align.ExactFit {
	tb.Helper()
	f, err := align.FitExact(sets...)
	if err != nil {
		tb.Fatalf("FitExact: %v", err)
	}
	return f
}

// drawKnown draws a set of a kind whose geometry is known.
func drawKnown(t *rapid.T, kind align.Kind, station float64) align.Set {
	s := drawSet(t, kind)
	switch kind {
	case align.Rim, align.Bore:
		s.Probe.Station = length(station)
		s.Probe.Radius = length(rapid.Float64Range(40, 500).Draw(t, "radius of a rim"))
	case align.NearFace, align.FarFace, align.Gap:
		s.Probe.Radius = length(rapid.Float64Range(40, 500).Draw(t, "radius of a face"))
	case align.Displacement:
		s.Probe.Station = length(station)
		s.Probe.Gain = rapid.SampledFrom([]float64{-3, -1, 1, 2}).Draw(t, "gain of a sensor")
	}
	return s
}

// drawArc draws positions on an arc of 60 degrees and more, anywhere.
func drawArc(t *rapid.T) []units.Clock {
	width := units.Clock(rapid.Float64Range(60, 360).Draw(t, "arc"))
	middle := units.Clock(rapid.Float64Range(-360, 360).Draw(t, "middle"))
	return even(rapid.IntRange(4, 12).Draw(t, "readings"), middle, width)
}

var (
	outside = []align.Kind{align.Rim, align.Bore, align.Displacement}
	faces   = []align.Kind{align.NearFace, align.FarFace, align.Gap}
	spacers = []align.Kind{align.SpacerFace, align.SpacerFarFace}
)

// drawTold draws two sets that see all of a misalignment of up to 5 mm and 2 mm/m,
// read on rigid shafts.
func drawTold(t *rapid.T) (truth align.Centreline, sets []align.Set) {
	truth = drawVectors(t, 5, 2e-3)
	side := rapid.SampledFrom([]float64{-1, 1}).Draw(t, "side")
	one := drawKnown(t, rapid.SampledFrom(outside[:2]).Draw(t, "one"), side*rapid.Float64Range(10, 1000).Draw(t, "station"))
	var other align.Set
	if rapid.Bool().Draw(t, "with a face") {
		other = drawKnown(t, rapid.SampledFrom(faces).Draw(t, "face"), 0)
	} else {
		far := -side * rapid.Float64Range(10, 1000).Draw(t, "other station")
		other = drawKnown(t, rapid.SampledFrom(outside).Draw(t, "other"), far)
	}
	return truth, []align.Set{swept(truth, one, drawArc(t)), swept(truth, other, drawArc(t))}
}

func TestExactFitOfRigidShafts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		truth, sets := drawTold(t)
		f := mustFitExact(t, sets...)
		for _, s := range sets {
			if d := seenApart(s.Probe, f.Value, truth); !(d <= picometre) {
				t.Errorf("what %+v sees is %.3g nm off", s.Probe, 1e6*d)
			}
		}
		if d := apart(f.Value, truth, 0); !(d <= 1000*picometre) {
			t.Errorf("at the coupling the fit is %.3g nm off", 1e6*d)
		}
	})
}

// The two ways that the trade mounts dials, by either carrier, with the rims on
// either side, on arcs of 60 degrees to a full turn, at 5 mm and 2 mm/m.
func TestExactFitOnArcs(t *testing.T) {
	truth := line(3, 1.2e-3, -4, 1.6e-3)
	for _, arc := range []units.Clock{60, 90, 120, 180, 360} {
		for _, carrier := range carriers {
			for _, x := range []float64{-300, 50, 300} {
				one := known(75, rim(carrier, x))[0]
				for _, other := range []align.Set{known(60, rim(carrier, -x/2))[0], face(carrier, 80)} {
					name := fmt.Sprintf("%v degrees, %v by the %v shaft, rim at %v", arc, other.Probe.Kind, carrier, x)
					f := mustFitExact(t, swept(truth, one, even(12, 50, arc)), swept(truth, other, even(9, 250, arc)))
					near(t, name+", at the rim", apart(f.Value, truth, x), 0, picometre)
					near(t, name+", at the coupling", apart(f.Value, truth, 0), 0, picometre)
				}
			}
		}
	}
}

// Far from the coupling centre w is a small difference of large numbers, whose
// rounding must not keep the search from coming to its end.
func TestExactFitFarFromTheCoupling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slope := rapid.Float64Range(1e-3, 2e-3).Draw(t, "slope")
		truth := line(0.1-5000*slope, slope, 0.05+5000*slope, -slope)
		one, other := known(75, rim(align.Stationary, 5000))[0], known(60, rim(align.Movable, 5100))[0]
		f := mustFitExact(t, swept(truth, one, drawArc(t)), swept(truth, other, drawArc(t)))
		near(t, "at the rim, in nm", 1e6*apart(f.Value, truth, 5000), 0, 0.1)
	})
}

// Both joints of a spacer, the machines carrying the dials.
func TestExactFitOfSpacers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		truth := drawVectors(t, 5, 2e-3)
		var sets []align.Set
		for _, joint := range carriers {
			s := drawKnown(t, rapid.SampledFrom(spacers).Draw(t, "side"), 0)
			s.Probe.Carrier, s.Probe.Span = joint, 400*mm
			sets = append(sets, swept(truth, s, drawArc(t)))
		}
		f := mustFitExact(t, sets...)
		for _, x := range []float64{-200, 0, 200} {
			if d := apart(f.Value, truth, x); !(d <= picometre) {
				t.Errorf("at x = %.0f mm the fit is %.3g nm off", x, 1e6*d)
			}
		}
	})
}

// What the linear fit misses with 1 mm along the middle of an arc on a rim of 75
// mm, the figures of the package comment: derived there, printed to 0.1 um.
func TestExactFitShowsWhatLinearMisses(t *testing.T) {
	for _, row := range []struct{ arc, micrometres float64 }{{180, 7.5}, {120, 10.4}, {90, 11.6}, {60, 12.6}} {
		for _, carrier := range carriers {
			truth := line(math.Sin(1), 0, math.Cos(1), 0)
			clocks := even(2001, units.Clock(180/math.Pi), units.Clock(row.arc))
			one := swept(truth, known(75, rim(carrier, 0))[0], clocks)
			level := read(t, truth, []align.Set{face(carrier, 75)}, quarters...)[0]
			f := mustFitExact(t, one, level)
			name := fmt.Sprintf("%v degrees, %v", row.arc, carrier)
			near(t, name+": exact, in um", 1e3*apart(f.Value, truth, 0), 0, 1e3*picometre)
			near(t, name+": linear, in um", 1e3*inMM(f.Difference.At(0).Size()), row.micrometres, 0.05)
			linear := mustFit(t, one, level)
			nearLine(t, name+": difference", f.Difference, f.Value.Minus(linear.Value), [4]float64{})
		}
	}
}

func TestExactFitOfNothing(t *testing.T) {
	var inLine align.Centreline
	for _, carrier := range carriers {
		for _, other := range []align.Set{face(carrier, 80), known(60, rim(carrier, -70))[0]} {
			one := swept(inLine, known(75, rim(carrier, 40))[0], even(9, 33, 120))
			f := mustFitExact(t, one, swept(inLine, other, even(9, 33, 120)))
			if f.Value != inLine || f.Difference != inLine || f.Linear != nil || f.Scatter != 0 {
				t.Errorf("%v in line by the %v shaft: %+v", other.Probe.Kind, carrier, f)
			}
		}
	}
}

// Sets without known geometry, and a sensor, are answered as by Fit.
func TestExactFitTakesAsLinear(t *testing.T) {
	edge := align.Set{Probe: align.Probe{Kind: align.Straightedge, Carrier: align.Movable, Station: 40 * mm}}
	bore := align.Set{Probe: align.Probe{Kind: align.Bore, Carrier: align.Movable, Station: 60 * mm}}
	sensor := align.Set{Probe: align.Probe{Kind: align.Displacement, Station: -80 * mm, Gain: -2}}
	sets := read(t, caseA, []align.Set{rim(align.Stationary, 20), sensor, edge, bore}, even(7, 40, 200)...)
	f := mustFitExact(t, sets...)
	if want := []int{0, 2, 3}; fmt.Sprint(f.Linear) != fmt.Sprint(want) {
		t.Errorf("linear: %v, want %v", f.Linear, want)
	}
	nearLine(t, "value", f.Value, caseA, uniform(1e-6))
	nearLine(t, "difference", f.Difference, align.Centreline{}, uniform(1e-6))
	want := mustFit(t, sets...)
	near(t, "condition", f.Condition, want.Condition, 1e-12)
	roundTrip(t, f)
}

// Least squares by its meaning: no neighbour of the answer has a smaller sum of
// squares, with the readings of the rigid shafts and the best zero of each set,
// and scatter is the root of that sum over the readings left over.
func TestExactFitIsLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, sets := drawTold(t)
		for i := range sets {
			roughen(t, &sets[i])
		}
		f := mustFitExact(t, sets...)
		least := squares(f.Value, sets)
		left := f.DegreesOfFreedom
		if want := len(sets[0].Readings) + len(sets[1].Readings) - 6; left != want {
			t.Errorf("degrees of freedom %d, want %d", left, want)
		}
		near(t, "scatter", inMM(f.Scatter), math.Sqrt(least/float64(left)), 1e-9)
		u := plain(f.Cov.Standard())
		for j := range u {
			for _, way := range []float64{-0.1, 0.1} {
				var by [4]float64
				by[j] = way * u[j]
				if sum := squares(f.Value.Plus(line(by[0], by[1], by[2], by[3])), sets); sum <= least {
					t.Errorf("a neighbour in %s has the sum %v, the answer %v", fourNames[j], sum, least)
				}
			}
		}
	})
}

// roughen moves each reading by up to 5 um, as dials do.
func roughen(t *rapid.T, s *align.Set) {
	phase := rapid.Float64Range(0, 6).Draw(t, "phase of the noise")
	for i := range s.Readings {
		s.Readings[i].Value += length(0.005 * math.Sin(phase+float64(3*i*i*i)))
	}
}

// squares is the sum of the squares of what a centreline leaves of the readings.
func squares(c align.Centreline, sets []align.Set) float64 {
	sum := 0.0
	for _, s := range sets {
		left, mean := make([]float64, len(s.Readings)), 0.0
		for i, r := range s.Readings {
			_, cos := direction(s.View, r.At)
			shown := toRigid(s.Probe).Read(pose(c), float64(s.View.Clock(r.At)))
			left[i] = inMM(r.Value) - shown - droopSign(s.Probe.Kind)*inMM(s.Sag)*cos
			mean += left[i] / float64(len(left))
		}
		for _, l := range left {
			sum += (l - mean) * (l - mean)
		}
	}
	return sum
}
