package dial_test

import (
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const eps = 0x1p-52

// rounding is how far the closed form and the general fit may stand apart, as a
// dial would show it: both do under a hundred operations on the readings, and
// the condition is what the geometry magnifies their last bits by.
func rounding(sets [2]align.Set, condition float64) units.Length {
	return units.Length(64*eps*condition) * largest(sets)
}

// drawSweep draws what a careless crew might write down: any numbers, any zero,
// any order, and perhaps a return to the start.
func drawSweep(t *rapid.T, u units.Length) sweep {
	zero := drawLength(t, "zero", -20, 20)
	var s sweep
	for _, at := range drawPlaces(t) {
		s = append(s, align.Reading{At: at, Value: zero + drawLength(t, "reading", -5, 5), U: u})
	}
	if rapid.Bool().Draw(t, "return") {
		back := s[0]
		back.At += 360
		back.Value += drawLength(t, "drift", -0.1, 0.1)
		s = append(s, back)
	}
	return s
}

// The closed form is the special case of the general fit, whatever the readings
// are; all that is not the centreline itself comes from the fit.
func TestClosedFormIsTheFit(t *testing.T) {
	eachMethod(t, func(t *rapid.T, m method) {
		u := rapid.SampledFrom([]units.Length{0, units.Micrometre, units.Mil}).Draw(t, "u")
		job := m.with(m.draw(t), drawSweep(t, u), drawSweep(t, u))
		sets := job.Sets()
		fit, err := align.Fit(sets[:]...)
		if err != nil {
			t.Fatal(err)
		}
		got := solved(t, job)
		if by, most := differ(sets, got.Value, fit.Value), rounding(sets, fit.Condition); by > most {
			t.Errorf("closed form and fit differ by %v, more than %v:\n%+v\n%+v", by, most, got.Value, fit.Value)
		}
		if got.Cov != fit.Cov || got.Condition != fit.Condition || got.Scatter != fit.Scatter ||
			got.DegreesOfFreedom != fit.DegreesOfFreedom {
			t.Errorf("not the fit's own:\n%+v\n%+v", got.Fitted, fit)
		}
		checkWarningsOfFit(t, m, got.Warnings, fit.Warnings)
	})
}

// checkWarningsOfFit tests that the warnings of the fit come first, with the
// method's own paths.
func checkWarningsOfFit(t *rapid.T, m method, got, fit []units.Fault) {
	if len(got) < len(fit) {
		t.Fatalf("got %v, want those of the fit as well: %v", got, fit)
	}
	for i, want := range fit {
		place := slices.Index([]string{"/sets/0/readings", "/sets/1/readings"}, want.Path)
		if place < 0 {
			t.Fatalf("the fit warns at %s", want.Path)
		}
		want.Path = "/" + m.fields[place] + "/readings"
		if diff := cmp.Diff(want, got[i]); diff != "" {
			t.Errorf("warning %d (-want +got):\n%s", i, diff)
		}
	}
}

// What the general form predicts for a crew, sag included, gives back the
// misalignment that it was predicted from.
func TestPredictedReadingsGiveTheCentrelineBack(t *testing.T) {
	eachMethod(t, func(t *rapid.T, m method) {
		want := drawCentreline(t)
		job := predicted(t, m, m.draw(t), want)
		got := solved(t, job)
		sets := job.Sets()
		// Predict adds up terms that may cancel in the reading.
		terms := largest(sets) + differ(sets, want, align.Centreline{})
		if by, most := differ(sets, got.Value, want), units.Length(64*eps*got.Condition)*terms; by > most {
			t.Errorf("off by %v, more than %v:\n got %+v\nwant %+v", by, most, got.Value, want)
		}
		for i, c := range got.Checks {
			if size := max(c.Miss, -c.Miss); size > 16*eps*terms {
				t.Errorf("set %d misses by %v, though predicted", i, c.Miss)
			}
		}
	})
}

// predicted returns the job with the readings that the centreline gives, each
// sweep from a zero of its own.
func predicted(t *rapid.T, m method, bare solver, c align.Centreline) solver {
	var sweeps []sweep
	for _, set := range bare.Sets() {
		s, err := set.Predict(c, drawPlaces(t)...)
		if err != nil {
			t.Fatal(err)
		}
		zero := drawLength(t, "zero", -2, 2)
		for i := range s {
			s[i].Value += zero
		}
		sweeps = append(sweeps, s)
	}
	return m.with(bare, sweeps...)
}

// With the roles of the machines exchanged and the observer at the other end the
// four numbers become (+offset_y, -slope_y, -offset_z, +slope_z). The crew, its
// dials and its readings stay as they are.
func TestExchangedMachines(t *testing.T) {
	eachMethod(t, func(t *rapid.T, m method) {
		job := m.with(m.draw(t), drawSweep(t, 0), drawSweep(t, 0))
		turned := m.exchanged(job)
		if m.name == "reverse" || m.name == "face-face" { // the dials change places in the input
			first, second := job.Sets()[0].Readings, job.Sets()[1].Readings
			turned = m.with(turned, second, first)
		}
		got, was := solved(t, turned), solved(t, job)
		v := was.Value
		want := align.Centreline{
			Horizontal: align.Line{Offset: v.Horizontal.Offset, Slope: -v.Horizontal.Slope},
			Vertical:   align.Line{Offset: -v.Vertical.Offset, Slope: v.Vertical.Slope},
		}
		sets := job.Sets()
		if by, most := differ(sets, got.Value, want), rounding(sets, was.Condition); by > most {
			t.Errorf("off by %v, more than %v:\n got %+v\nwant %+v", by, most, got.Value, want)
		}
	})
}

// Three readings determine a sweep as well as four that obey the validity rule,
// and the answer says which one was not read, as the library's view names it.
func TestFourthReadingIsSupplied(t *testing.T) {
	// Of the quarters as a crew on either side names them.
	library := map[align.View]map[units.Clock]units.Clock{
		align.FromMovable:    {0: 0, 90: 90, 180: 180, 270: 270},
		align.FromStationary: {0: 0, 90: 270, 180: 180, 270: 90},
	}
	eachMethod(t, func(t *rapid.T, m method) {
		c := drawCentreline(t)
		bare := m.draw(t)
		left := rapid.IntRange(0, 3).Draw(t, "left out")
		all, view := []units.Clock{0, 90, 180, 270}, bare.Sets()[0].View
		var four, three []sweep
		for _, set := range bare.Sets() {
			s, err := set.Predict(c, all...)
			if err != nil {
				t.Fatal(err)
			}
			four = append(four, s)
			three = append(three, slices.Delete(slices.Clone(s), left, left+1))
		}
		want, got := solved(t, m.with(bare, four...)), solved(t, m.with(bare, three...))
		sets := m.with(bare, four...).Sets()
		if by, most := differ(sets, got.Value, want.Value), 4*rounding(sets, got.Condition); by > most {
			t.Errorf("three and four readings differ by %v, more than %v", by, most)
		}
		for i := range got.Checks {
			c, full := got.Checks[i], want.Checks[i]
			if full.Completed || full.Supplied != 0 {
				t.Errorf("set %d: completed at %v, though all four were read", i, full.Supplied)
			}
			if at := library[view][all[left]]; !c.Completed || c.Supplied != at {
				t.Errorf("set %d: completed %t at %v, want %v", i, c.Completed, c.Supplied, at)
			}
			for q := range c.Quarters {
				if d := c.Quarters[q] - full.Quarters[q]; max(d, -d) > 16*eps*largest(sets) {
					t.Errorf("set %d, quarter %d: %v, want %v", i, q, c.Quarters[q], full.Quarters[q])
				}
			}
		}
	})
}

// Re-zeroing moves all readings of a sweep, whatever the numbers, and so changes
// nothing. The numbers are whole nanometres, so the answer has the same bits.
func TestZeroDropsOut(t *testing.T) {
	eachMethod(t, func(t *rapid.T, m method) {
		whole := func(what string) units.Length {
			return units.Length(rapid.IntRange(-1e6, 1e6).Draw(t, what))
		}
		bare := m.limits(m.draw(t), dial.Limits{Miss: units.Metre})
		var one, two []sweep
		for range 2 {
			shift := 2 * whole("shift")
			var a, b sweep
			for _, at := range drawPlaces(t) {
				r := align.Reading{At: at, Value: 2 * whole("reading")}
				a = append(a, r)
				r.Value += shift
				b = append(b, r)
			}
			one, two = append(one, a), append(two, b)
		}
		bare = withoutSag(bare)
		got, want := solved(t, m.with(bare, two...)), solved(t, m.with(bare, one...))
		if got.Value != want.Value {
			t.Errorf("another zero:\n got %+v\nwant %+v", got.Value, want.Value)
		}
	})
}

// withoutSag returns the job with sags of zero, which are whole nanometres.
func withoutSag(s solver) solver {
	switch m := s.(type) {
	case dial.Reverse:
		m.CarriedByStationary.Sag, m.CarriedByMovable.Sag = 0, 0
		return m
	case dial.RimFace:
		m.Rim.Sag, m.Face.Sag = 0, 0
		return m
	case dial.FaceFace:
		m.AtStationary.Sag, m.AtMovable.Sag = 0, 0
		return m
	case dial.RimGap:
		m.Rim.Sag = 0
		return m
	}
	return s
}

// With numbers that are powers of two nothing is rounded, and the answer is the
// closed form's to the last digit, not the fit's.
func TestClosedFormIsExact(t *testing.T) {
	const unit = 1 << 18 // nm
	face := func(at12, at3, at6, at9 float64) dial.Face {
		return dial.Face{Diameter: 1 << 27, Readings: dial.Quarters(unit, at12, at3, at6, at9)}
	}
	got := solved(t, dial.FaceFace{Span: 1 << 30, AtStationary: face(0, 3, 5, 1), AtMovable: face(0, 7, -6, 2)}).Value
	want := align.Centreline{
		Horizontal: align.Line{Offset: -3 << 20, Slope: 7. / 512},
		Vertical:   align.Line{Offset: -11 << 20, Slope: 1. / 512},
	}
	if got != want {
		t.Errorf("got %v, want %v", got, want)
	}
}
