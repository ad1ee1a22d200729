package dial_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// rough is the form of a surface, in millimetres: eccentric, oval, with three
// lobes.
func rough(theta float64) float64 {
	wave := func(height, lobes, at float64) float64 {
		return height * math.Cos((lobes*theta-at)*math.Pi/180)
	}
	return wave(0.040, 1, 25) + wave(0.015, 2, 70) + wave(0.010, 3, 10)
}

// ofForm bounds what is left to second order in a reading: shafts that lie less
// than 0.02 mm apart let a plunger 20 mm from the axis touch up to 0.001 rad
// beside the spot it is meant for, and the form climbs by under 0.12 mm a radian.
// Four such errors count: of the sweep and of the runout, each from its zero.
const ofForm = 4 * 0.001 * 0.12 * units.Millimetre

// drawRough draws a job and a misalignment for which ofForm holds.
func drawRough(t *rapid.T, m method) (solver, align.Centreline) {
	bare := spanning(withoutSag(m.draw(t)), drawLength(t, "span", 200, 800), 1)
	return bare, drawWithin(t, units.Millimetre/100, units.MillimetrePerMetre/50)
}

// runsOut tells the instrument that only the carrier is turned, over a rough
// surface whose mark stands at a clock position.
func runsOut(i rigid.Instrument, mark float64) rigid.Instrument {
	i.Runout, i.Mark = rough, mark
	return i
}

// A sweep in which only the carrier turned, less the runout measured on its own
// under a still dial, is the sweep on a perfect surface: whichever probe, view,
// place of the still dial and zeros.
func TestRunoutIsRemoved(t *testing.T) {
	eachMethod(t, func(t *rapid.T, m method) {
		bare, c := drawRough(t, m)
		for n, set := range bare.Sets() {
			i := instrument(set, 150*units.Millimetre)
			t0 := units.Clock(rapid.SampledFrom([]float64{0, 90, 180, -90, 30, 225}).Draw(t, "t0"))
			// The crew turns the target clockwise as it sees it.
			var runout sweep
			for _, turned := range drawTurns(t, t0) {
				still := runsOut(i, float64(set.View.Clock(turned)))
				r := read(still, c, set.View, t0)[0]
				r.At, r.Value = turned, r.Value+3*units.Millimetre
				runout = append(runout, r)
			}
			got, err := dial.RemoveRunout(read(runsOut(i, 0), c, set.View, quarters...), t0, runout)
			if err != nil {
				t.Fatal(err)
			}
			for j, want := range read(i, c, set.View, quarters...) {
				checkNear(t, m.fields[n], got[j].Value-got[0].Value, want.Value-read(i, c, set.View, 0)[0].Value, ofForm)
				if got[j].At != want.At {
					t.Errorf("reading %d stands at %v, want %v", j, got[j].At, want.At)
				}
			}
		}
	})
}

// drawTurns draws the order in which the turns that the quarters need are
// measured from a dial at t0, with one that is not needed and names a turn on.
func drawTurns(t *rapid.T, t0 units.Clock) []units.Clock {
	turns := []units.Clock{t0, t0 - 90, t0 - 180 + 360, t0 - 270, t0 + 45}
	return rapid.Permutation(turns).Draw(t, "turns")
}

// Left in, the runout of a carrier's sweep makes the answer wrong; with both shafts
// turned there is nothing to remove.
func TestRunoutMattersOnlyWhenOneShaftTurns(t *testing.T) {
	for _, m := range methods {
		bare := soundJobs[m.name]
		sets := bare.Sets()
		solve := func(together bool) units.Length {
			var sweeps []sweep
			for _, set := range sets {
				i := runsOut(instrument(set, 150*units.Millimetre), 70)
				i.TargetTurned = together
				sweeps = append(sweeps, read(i, caseA, set.View, quarters...))
			}
			return differ(sets, solved(t, m.with(bare, sweeps...)).Value, caseA)
		}
		if by := solve(false); by < 10*units.Micrometre {
			t.Errorf("%s: only the carrier turned, off by %v", m.name, by)
		}
		if by := solve(true); !(by <= units.Micrometre) {
			t.Errorf("%s: both shafts turned, off by %v", m.name, by)
		}
	}
}

// Half a turn of the targets between two sets of sweeps separates misalignment
// and runout. The runout is what
// the first set was wrong by.
func TestRunoutIsSeparated(t *testing.T) {
	eachMethod(t, func(t *rapid.T, m method) {
		bare, c := drawRough(t, m)
		mark := rapid.Float64Range(0, 360).Draw(t, "mark")
		indexed := func(c align.Centreline, by float64) align.Fitted {
			var sweeps []sweep
			for _, set := range bare.Sets() {
				i := runsOut(instrument(set, 150*units.Millimetre), mark+by)
				sweeps = append(sweeps, read(i, c, set.View, quarters...))
			}
			return solved(t, m.with(bare, sweeps...)).Fitted
		}
		first := indexed(c, 0)
		misalignment, runout := dial.SeparateRunout(first.Estimate, indexed(c, 180).Estimate)
		sets := bare.Sets()
		left := units.Length(first.Condition) * ofForm // the geometry magnifies it
		if by := differ(sets, misalignment.Value, c); !(by <= left) {
			t.Errorf("misalignment off by %v", by)
		}
		alone := indexed(align.Centreline{}, 0).Value // in line, runout is all there is
		if by := differ(sets, runout.Value, alone); !(by <= left) {
			t.Errorf("runout off by %v: got %+v, want %+v", by, runout.Value, alone)
		}
	})
}

// Of two independent answers of one covariance V, half the sum and half the
// difference have V/2 each; what is unknown stays unknown.
func TestUncertaintyOfSeparatedRunout(t *testing.T) {
	const u = 4 * units.Micrometre
	job := func(u units.Length) solver {
		r := dial.Quarters(units.Micrometre, 0, 100, 40, -60)
		for i := range r {
			r[i].U = u
		}
		return dial.Reverse{
			CarriedByStationary: dial.Rim{Station: 90 * units.Millimetre, Readings: r},
			CarriedByMovable:    dial.Rim{Station: -60 * units.Millimetre, Readings: r},
		}
	}
	e := solved(t, job(u)).Estimate
	misalignment, runout := dial.SeparateRunout(e, e)
	// By hand: u(w) = u/sqrt 2 at each dial, and so the slope sqrt 2 u(w)/150 mm
	// and the offset u(w) hypot(90, 60)/150 of one answer; both over sqrt 2.
	slope := units.Slope(float64(u) / 150e6 / math.Sqrt2)
	offset := units.Length(float64(u) / 2 * math.Sqrt(90*90+60*60) / 150)
	for name, part := range map[string]align.Estimate{"misalignment": misalignment, "runout": runout} {
		for plane, line := range map[string]align.Line{
			"horizontal": part.Cov.Standard().Horizontal, "vertical": part.Cov.Standard().Vertical,
		} {
			checkNear(t, name+", "+plane+" offset", line.Offset, offset, 1e-9)
			checkNear(t, name+", "+plane+" slope", line.Slope, slope, 1e-18)
		}
		if part.Cov.Basis != align.Stated {
			t.Errorf("%s: basis %v, want stated", name, part.Cov.Basis)
		}
	}
	if misalignment.Value != e.Value || runout.Value != (align.Centreline{}) {
		t.Errorf("of equal answers: got %+v and %+v", misalignment.Value, runout.Value)
	}
	three := solved(t, dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 90 * units.Millimetre, Readings: dial.Quarters(units.Mil, 1, 2, 3, 0)[:3]},
		CarriedByMovable:    dial.Rim{Readings: dial.Quarters(units.Mil, 1, 2, 3, 0)[:3]},
	}).Estimate
	misalignment, runout = dial.SeparateRunout(e, three)
	if misalignment.Cov.Basis != align.Unknown || runout.Cov.Basis != align.Unknown {
		t.Errorf("with one of unknown uncertainty: bases %v and %v", misalignment.Cov.Basis, runout.Cov.Basis)
	}
}

// Uncertainties of the reading and of the runout combine as independent ones.
func TestUncertaintyOfRemovedRunout(t *testing.T) {
	readings := sweep{{At: 90, Value: 10, U: 3}, {At: 180, Value: 20, U: 3}}
	clean, err := dial.RemoveRunout(readings, 90, sweep{{At: -90, Value: 1, U: 4}, {At: 0, Value: 2, U: 4}})
	if err != nil {
		t.Fatal(err)
	}
	want := sweep{{At: 90, Value: 8, U: 5}, {At: 180, Value: 19, U: 5}}
	for i := range want {
		if clean[i] != want[i] {
			t.Errorf("reading %d: got %+v, want %+v", i, clean[i], want[i])
		}
	}
	if readings[0].Value != 10 || readings[1].Value != 20 {
		t.Errorf("the input was changed: %v", readings)
	}
}

// A runout may be measured at many turns, and not at any number.
func TestManyTurns(t *testing.T) {
	turns := func(n int) []align.Reading {
		list := make([]align.Reading, n)
		for i := range list {
			list[i].At = units.Clock(i) * 360 / units.Clock(n)
		}
		return list
	}
	once := []align.Reading{{At: units.Twelve}}
	if _, err := dial.RemoveRunout(once, units.Twelve, turns(dial.MostTurns)); err != nil {
		t.Error(err)
	}
	for _, n := range []int{dial.MostTurns + 1, 100_000} {
		_, err := dial.RemoveRunout(once, units.Twelve, turns(n))
		if got := units.Faults(err); len(got) != 1 || got[0].Code != units.OutOfRange || got[0].Path != "/runout" {
			t.Errorf("%d turns: %.200v", n, err)
		}
	}
}
