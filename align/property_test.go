package align_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// What must stay the same, or change in a known way, whatever is measured. The
// bounds are those of joint.tolerance: rounding units times the condition times
// the readings.

func TestFitOfPredictionIsTheTruth(t *testing.T) {
	for _, kind := range everyKind { // each kind stands first once, so that none is left to chance
		t.Run(kind.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := drawScene(t, everyKind)
				s.sets[0] = drawSet(t, kind)
				last := &s.sets[len(s.sets)-1]
				if !independent(s.sets) {
					last.Probe, last.Sag = complement(s.sets[0].Probe), 0
				}
				s.sets[0].Readings = drawReadings(t, s.sets[0], s.truth)
				last.Readings = drawReadings(t, *last, s.truth)
				j := stack(s.sets)
				nearLine(t, "fit", mustFit(t, s.sets...).Value, s.truth, j.tolerance(s.sets, false))
			})
		})
	}
}

// Prediction looks at the probe, the sag and the view, and at nothing else of a
// set; the zero stands at the first position asked for.
func TestPredictionDoesNotUseReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		set := drawSet(t, rapid.SampledFrom(everyKind).Draw(t, "kind"))
		truth := drawLine(t)
		clocks := []units.Clock{units.Clock(rapid.Float64Range(-720, 720).Draw(t, "first")), 10, 200}
		bare, err := set.Predict(truth, clocks...)
		if err != nil {
			t.Fatal(err)
		}
		set.Readings = drawReadings(t, set, truth)
		set.U.Reading = 3 * um
		full, err := set.Predict(truth, clocks...)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(bare, full); diff != "" {
			t.Errorf("readings changed the prediction (-without +with):\n%s", diff)
		}
		if full[0].Value != 0 {
			t.Errorf("the first reading is %v, want the zero", full[0].Value)
		}
		for i := range full {
			if full[i].At != clocks[i] {
				t.Errorf("reading %d stands at %v, want %v as asked", i, full[i].At, clocks[i])
			}
		}
	})
}

// The dial's law once more, apart from the code, at any clock position.
func TestPredictionIsTheLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		set := drawSet(t, rapid.SampledFrom(everyKind).Draw(t, "kind"))
		truth := drawLine(t)
		clocks := []units.Clock{0, units.Clock(rapid.Float64Range(-720, 720).Draw(t, "at"))}
		got, err := set.Predict(truth, clocks...)
		if err != nil {
			t.Fatal(err)
		}
		p := plain(truth)
		a, b := coefficients(set.Probe)
		full := func(at units.Clock) float64 {
			sin, cos := direction(set.View, at)
			y, z := a*p[0]+b*p[1], a*p[2]+b*p[3]
			return y*sin + z*cos + droopSign(set.Probe.Kind)*inMM(set.Sag)*cos
		}
		size := math.Abs(a) + 2e-3*math.Abs(b) + 0.3
		near(t, "reading", inMM(got[1].Value), full(clocks[1])-full(clocks[0]), 100*eps*size) // 720 degrees hold 2^-43 rad
	})
}

// alike fits the scene twice and compares the value with the one that the truth
// changed to would have, within the rounding of both.
func alike(t *rapid.T, what string, before, after []align.Set, change func(align.Centreline) align.Centreline) {
	a, b := mustFit(t, before...), mustFit(t, after...)
	ja, jb := stack(before), stack(after)
	tol, other := ja.tolerance(before, true), jb.tolerance(after, true)
	for i := range tol {
		tol[i] += other[i]
	}
	nearLine(t, what, b.Value, change(a.Value), tol)
	if a.DegreesOfFreedom != b.DegreesOfFreedom {
		t.Errorf("%s: degrees of freedom %d, were %d", what, b.DegreesOfFreedom, a.DegreesOfFreedom)
	}
}

func unchanged(c align.Centreline) align.Centreline { return c }

// noisy draws a scene whose readings scatter.
func noisy(t *rapid.T, kinds []align.Kind) []align.Set {
	sets := drawScene(t, kinds).sets
	for i := range sets {
		scatterReadings(t, &sets[i])
	}
	return sets
}

// each copies the sets, readings too, and changes every one.
func each(sets []align.Set, change func(*align.Set)) []align.Set {
	copied := slices.Clone(sets)
	for i := range copied {
		copied[i].Readings = slices.Clone(copied[i].Readings)
		change(&copied[i])
	}
	return copied
}

func TestMachinesExchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := noisy(t, everyKind)
		after := each(sets, func(s *align.Set) { *s = exchange(*s) })
		alike(t, "exchanged", sets, after, align.Centreline.Exchanged)
	})
}

// The same sweep noted by a crew at the other end is the same to the last bit.
func TestViewsOfOneSweep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := noisy(t, everyKind)
		after := each(sets, func(s *align.Set) {
			s.View = align.FromStationary - s.View
			for i := range s.Readings {
				s.Readings[i].At = -s.Readings[i].At
			}
		})
		if diff := cmp.Diff(mustFit(t, sets...), mustFit(t, after...), openly, closely(0, 0)); diff != "" {
			t.Errorf("the other view gives another fit (-one +other):\n%s", diff)
		}
	})
}

// Turning all clock positions by an angle turns the misalignment with them.
// There is no sag, which would stay behind.
func TestClockTurned(t *testing.T) {
	turn := func(t *rapid.T, by units.Clock) {
		sets := each(noisy(t, everyKind), func(s *align.Set) { s.Sag = 0 })
		after := each(sets, func(s *align.Set) {
			for i := range s.Readings {
				s.Readings[i].At = s.View.Clock(s.View.Clock(s.Readings[i].At) + by)
			}
		})
		sin, cos := math.Sincos(float64(by) * math.Pi / 180)
		alike(t, "turned", sets, after, func(c align.Centreline) align.Centreline {
			p := plain(c)
			return line(p[0]*cos+p[2]*sin, p[1]*cos+p[3]*sin, p[2]*cos-p[0]*sin, p[3]*cos-p[1]*sin)
		})
		// The condition does not know of the turn; positions up to 760 degrees hold 2^-43 rad.
		a, b := mustFit(t, sets...).Condition, mustFit(t, after...).Condition
		near(t, "condition", b, a, 1e-11*a*a)
	}
	t.Run("quarters", func(t *testing.T) {
		rapid.Check(t, func(t *rapid.T) { turn(t, 90*units.Clock(rapid.IntRange(-4, 4).Draw(t, "quarters"))) })
	})
	t.Run("any angle", func(t *testing.T) {
		rapid.Check(t, func(t *rapid.T) { turn(t, units.Clock(rapid.Float64Range(-360, 360).Draw(t, "degrees"))) })
	})
}

// Counting x from another origin changes the offset and nothing else. Spacer
// faces are left out: their law names the coupling centre.
func TestOriginMoved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := noisy(t, earthbound)
		d := length(rapid.Float64Range(-300, 300).Draw(t, "origin"))
		after := each(sets, func(s *align.Set) {
			if s.Probe.Radius == 0 {
				s.Probe.Station -= d
			}
		})
		a, b := mustFit(t, sets...), mustFit(t, after...)
		ja, jb := stack(sets), stack(after)
		tol, other := ja.tolerance(sets, true), jb.tolerance(after, true)
		for i := range tol {
			tol[i] += other[i]
		}
		w := a.Value.At(d)
		want := a.Value
		want.Horizontal.Offset, want.Vertical.Offset = w.Horizontal, w.Vertical
		for i := range tol {
			if i%2 == 0 { // the old slope is carried over d
				tol[i] += math.Abs(inMM(d)) * tol[i+1]
			}
		}
		nearLine(t, "moved", b.Value, want, tol)
	})
}

func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := noisy(t, everyKind)
		after := each(rapid.Permutation(sets).Draw(t, "sets"), func(s *align.Set) {
			s.Readings = rapid.Permutation(s.Readings).Draw(t, "readings")
		})
		alike(t, "in another order", sets, after, unchanged)
	})
}

func TestZeroDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := noisy(t, everyKind)
		after := each(sets, func(s *align.Set) {
			zero := length(rapid.Float64Range(-5, 5).Draw(t, "another zero"))
			for i := range s.Readings {
				s.Readings[i].Value += zero
			}
		})
		alike(t, "with another zero", sets, after, unchanged)
	})
}

// A machine of another size, all lengths by k: offsets by k, slopes as they
// were, uncertainties likewise.
func TestLengthsScaled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := state(noisy(t, everyKind), 5*um)
		k := units.Length(rapid.Float64Range(0.01, 100).Draw(t, "scale"))
		after := each(sets, func(s *align.Set) {
			s.Probe.Station *= k
			s.Probe.Radius *= k
			s.Probe.Span *= k
			s.Sag *= k
			s.U.Reading *= k
			for i := range s.Readings {
				s.Readings[i].Value *= k
			}
		})
		scaled := func(c align.Centreline) align.Centreline {
			c.Horizontal.Offset *= k
			c.Vertical.Offset *= k
			return c
		}
		alike(t, "scaled", sets, after, scaled)
		a, b := mustFit(t, sets...), mustFit(t, after...)
		near(t, "condition", b.Condition, a.Condition, 1e-12*a.Condition*a.Condition)
		if diff := cmp.Diff(scaled(a.Cov.Standard()), b.Cov.Standard(), closely(1e-12*a.Condition*a.Condition, 0)); diff != "" {
			t.Errorf("uncertainty (-want +got):\n%s", diff)
		}
	})
}

// A reading taken twice is worth one of u/sqrt 2.
func TestRepeatIsWeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := state(noisy(t, everyKind), 5*um)
		again := rapid.IntRange(0, 3).Draw(t, "which")
		repeated := each(sets, func(s *align.Set) { s.Readings = append(s.Readings, s.Readings[again]) })
		weighted := each(sets, func(s *align.Set) { s.Readings[again].U = s.U.Reading / math.Sqrt2 })
		a, b := mustFit(t, repeated...), mustFit(t, weighted...)
		ja, jb := stack(repeated), stack(weighted)
		tol, other := ja.tolerance(repeated, true), jb.tolerance(weighted, true)
		for i := range tol {
			tol[i] += other[i]
		}
		nearLine(t, "value", a.Value, b.Value, tol)
		nearMatrix(t, "covariance", matrix(a.Cov), matrix(b.Cov), 1e-12*a.Condition*a.Condition)
	})
}

// A sweep broken in two by a new zero tells less, at no station more.
func TestNewZeroCostsCertainty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := state(noisy(t, everyKind), 5*um)
		first, second := sets[0], sets[0]
		first.Readings, second.Readings = sets[0].Readings[:2], sets[0].Readings[2:]
		broken, err := align.Fit(append([]align.Set{first, second}, sets[1:]...)...)
		if err != nil { // two readings of the one and few of the other may see too little
			checkFault(t, err, units.Unseen, "/sets")
			return
		}
		x := length(rapid.Float64Range(-1000, 1000).Draw(t, "station"))
		_, whole := mustFit(t, sets...).At(x)
		_, parts := broken.At(x)
		room := units.Length(1 + 1e-12*broken.Condition*broken.Condition)
		if whole.Horizontal > parts.Horizontal*room || whole.Vertical > parts.Vertical*room {
			t.Errorf("broken in two the sweep tells more: u %v, whole %v", parts, whole)
		}
	})
}
