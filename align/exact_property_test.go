package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// What must stay the same, or change in a known way, in the exact fit too.

// alikeExactly fits twice readings that scatter, and asks for the same answer to a
// picometre at each rim, and the same statistics.
func alikeExactly(t *rapid.T, before, after []align.Set) {
	t.Helper()
	a, b := mustFitExact(t, before...), mustFitExact(t, after...)
	for _, s := range before {
		if d := seenApart(s.Probe, a.Value, b.Value); !(d <= picometre) {
			t.Errorf("what %+v sees is %.3g nm off", s.Probe, 1e6*d)
		}
	}
	near(t, "scatter", inMM(b.Scatter), inMM(a.Scatter), picometre)
	near(t, "condition", b.Condition, a.Condition, 1e-9*a.Condition*a.Condition)
	nearMatrix(t, "covariance", matrix(b.Cov), matrix(a.Cov), 1e-8*a.Condition)
}

func drawScatteredArcs(t *rapid.T) []align.Set {
	_, sets := drawTold(t)
	for i := range sets {
		roughen(t, &sets[i])
	}
	return sets
}

func TestExactFitWithoutOrderZeroOrView(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawScatteredArcs(t)
		alikeExactly(t, sets, each(rapid.Permutation(sets).Draw(t, "sets"), func(s *align.Set) {
			s.Readings = rapid.Permutation(s.Readings).Draw(t, "readings")
		}))
		alikeExactly(t, sets, each(sets, func(s *align.Set) {
			zero := length(rapid.Float64Range(-5, 5).Draw(t, "another zero"))
			for i := range s.Readings {
				s.Readings[i].Value += zero
			}
		}))
		other := each(sets, func(s *align.Set) {
			s.View = align.FromStationary - s.View
			for i := range s.Readings {
				s.Readings[i].At = -s.Readings[i].At
			}
		})
		if diff := cmp.Diff(mustFitExact(t, sets...), mustFitExact(t, other...), openly, closely(0, 0)); diff != "" {
			t.Errorf("the other view gives another fit (-one +other):\n%s", diff)
		}
	})
}

// Roles exchanged, with the slope in one plane, where the vertical planes through
// both axes are one so that the clocks of both descriptions agree. The point of the
// stationary axis that is abreast of the movable one's x = 0 lies offset . slope
// along, so that much is taken off the stations that count along it. Derived here.
func TestExactFitWithRolesExchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		oy, oz := rapid.Float64Range(-3, 3).Draw(t, "offset y"), rapid.Float64Range(-3, 3).Draw(t, "offset z")
		sy, sz := rapid.Float64Range(-2e-3, 2e-3).Draw(t, "slope"), 0.0
		if rapid.Bool().Draw(t, "vertical slope") {
			sy, sz = 0, sy
		}
		truth := line(oy, sy, oz, sz)
		var sets []align.Set
		for _, x := range []float64{rapid.Float64Range(-900, -20).Draw(t, "one"), rapid.Float64Range(20, 900).Draw(t, "other")} {
			kind := rapid.SampledFrom(outside[:2]).Draw(t, "kind")
			sets = append(sets, swept(truth, drawKnown(t, kind, x), drawArc(t)))
		}
		got := mustFitExact(t, each(sets, func(s *align.Set) {
			if s.Probe.Carrier == align.Stationary {
				s.Probe.Station -= length(oy*sy + oz*sz)
			}
			*s = exchange(*s)
		})...)
		for _, x := range []float64{-500, 0, 500} {
			if d := apart(got.Value, exchangedExactly(truth), x); !(d <= 10*picometre) {
				t.Errorf("at x = %v the exchanged fit is %.3g nm off", x, 1e6*d)
			}
		}
	})
}

// exchangedExactly is where the stationary axis lies in the axes (-e, -e_3, e_12)
// of the movable shaft.
func exchangedExactly(c align.Centreline) align.Centreline {
	p := plain(c)
	oy, sy, oz, sz := p[0], p[1], p[2], p[3]
	h := math.Hypot(1, sy)
	n := math.Hypot(h, sz)
	// The stationary axis passes the point -o from where the movable one has x = 0.
	x := (oy*sy + oz*sz) / n
	y := oy / h
	z := -(-oy*sy*sz + oz*h*h) / (n * h)
	slopeY, slopeZ := -sy*n/h, sz/h
	return line(y-x*slopeY, slopeY, z-x*slopeZ, slopeZ)
}

// A machine of another size.
func TestExactFitScaled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawScatteredArcs(t)
		k := units.Length(rapid.Float64Range(0.1, 10).Draw(t, "scale"))
		after := mustFitExact(t, each(sets, func(s *align.Set) {
			s.Probe.Station *= k
			s.Probe.Radius *= k
			s.Sag *= k
			for i := range s.Readings {
				s.Readings[i].Value *= k
			}
		})...)
		a := mustFitExact(t, sets...).Value
		a.Horizontal.Offset *= k
		a.Vertical.Offset *= k
		tolerance := 1000 * picometre * float64(k)
		nearLine(t, "scaled", after.Value, a, [4]float64{tolerance, 1e-9, tolerance, 1e-9})
	})
}

// Whatever the bytes, an answer is made of finite numbers and counts as Fit does,
// and what is refused is refused with faults.
func FuzzFitExact(f *testing.F) {
	f.Add([]byte{})
	for _, raw := range seeds() {
		f.Add(raw)
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		sets := setsOf(raw)
		exact, err := align.FitExact(sets...)
		linear, refused := align.Fit(sets...)
		switch {
		case refused != nil && err == nil:
			t.Errorf("Fit refuses what FitExact takes: %v", refused)
		case err != nil && len(units.Faults(err)) == 0:
			t.Errorf("not a fault: %v", err)
		case err == nil && (exact.Validate() != nil || exact.DegreesOfFreedom != linear.DegreesOfFreedom):
			t.Errorf("%+v", exact)
		}
	})
}
