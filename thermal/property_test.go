package thermal_test

import (
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// near enough: a millionth of a nanometre for what is some millimetres, that is
// 1e-6 over 1e7 and so some hundred roundings.
const rounding = 1e-6 * units.Nanometre

// Twice the rise, twice the growth; and no rise, none.
func TestLinearInTheRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMaterials(t)[0]
		h := between(t, 20*mm, 1500*mm, "height")
		a, b := between(t, -150*units.Kelvin, 500*units.Kelvin, "a"), between(t, -150*units.Kelvin, 500*units.Kelvin, "b")
		rise := func(d units.TemperatureDifference) units.Length {
			by, _ := alone(t, on(0, piece(h, m, d)))
			return by.Vertical
		}
		near(t, "sum", rise(a+b), rise(a)+rise(b), rounding)
		near(t, "double", rise(2*a), 2*rise(a), 0)
		near(t, "none", rise(0), 0, 0)
	})
}

// A leg that is cut in two of the same material and rise grows the same, and so
// does one whose pieces are stacked in another order.
func TestCutLeg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := drawPieces(t, drawMaterials(t))
		whole, _ := alone(t, on(0, pieces...))
		i := rapid.IntRange(0, len(pieces)-1).Draw(t, "which")
		if len(pieces[i].Profile) == 0 {
			lower, upper := pieces[i], pieces[i]
			lower.Height = between(t, 1*mm, pieces[i].Height-mm, "cut")
			upper.Height -= lower.Height
			pieces = slices.Concat(pieces[:i], []thermal.Piece{lower, upper}, pieces[i+1:])
		}
		cut, _ := alone(t, on(0, rapid.Permutation(pieces).Draw(t, "order")...))
		nearVector(t, "cut", cut, whole, rounding)
	})
}

// Legs given side by side that are the same do what pieces alike do.
func TestSameOnBothSides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := drawPieces(t, drawMaterials(t))
		alike, _ := alone(t, on(0, pieces...))
		side, _ := alone(t, thermal.Support{Three: pieces, Nine: pieces, Track: between(t, 100*mm, 3000*mm, "track")})
		nearVector(t, "both sides", side, alike, rounding)
		if side.Horizontal != 0 {
			t.Errorf("rolls by %v", side.Horizontal)
		}
	})
}

// Exchanging the legs rolls the other way and lifts the same.
func TestSidesExchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMaterials(t)
		s := thermal.Support{Three: drawPieces(t, m), Nine: drawPieces(t, m), Track: between(t, 100*mm, 3000*mm, "track")}
		by, _ := alone(t, s)
		s.Three, s.Nine = s.Nine, s.Three
		back, _ := alone(t, s)
		nearVector(t, "exchanged", back, align.Vector{Horizontal: -by.Horizontal, Vertical: by.Vertical}, rounding)
	})
}

// The line of two supports passes both, and their uncertainties are the
// supports' own where no material ties them.
func TestTwoSupports(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		machine := drawMachine(t, 2, 2)
		line := growWithin(t, 0, machine...) // nothing stands off a line through two points
		size := 1e6 * uncertainSize(machine)[0]
		for _, s := range machine {
			by, u := alone(t, s)
			w, uw := line.At(s.X)
			nearVector(t, s.Name, w, by, 100*rounding)
			if line.Cov.Basis == align.Stated {
				if u.Vertical != u.Vertical { // this support states nothing, the other one does
					u = align.Vector{}
				}
				nearSquares(t, s.Name+", u", uw, u, units.Length(16*eps*size*size))
			}
		}
	})
}

// nearSquares compares variances, which is where parts cancel.
func nearSquares(tb fataler, what string, got, want align.Vector, tolerance units.Length) {
	tb.Helper()
	near(tb, what+", horizontal", got.Horizontal*got.Horizontal, want.Horizontal*want.Horizontal, tolerance)
	near(tb, what+", vertical", got.Vertical*got.Vertical, want.Vertical*want.Vertical, tolerance)
}

// Supports that move along one line give that line, in any order, however many.
func TestOnALine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		truth := align.Centreline{
			Horizontal: align.Line{Offset: between(t, -mm, mm, "y"), Slope: between[units.Slope](t, -1e-3, 1e-3, "slope y")},
			Vertical:   align.Line{Offset: between(t, -mm, mm, "z"), Slope: between[units.Slope](t, -1e-3, 1e-3, "slope z")},
		}
		machine := drawMachine(t, 3, 6)
		for i := range machine {
			by := truth.At(machine[i].X)
			machine[i] = measured(machine[i].X, by.Horizontal, by.Vertical)
		}
		nearLine(t, "line", growWithin(t, 0, machine...).Value, truth, 1e-3*units.Nanometre)
	})
}

// What is left beside a fitted line adds up to nothing, also times the station:
// the two conditions that make it the one of least squares.
func TestLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		machine := drawMachine(t, 2, 6)
		line := growWithin(t, anyStandOff, machine...)
		var sum, turn align.Vector
		for _, s := range machine {
			by, _ := alone(t, s)
			on := line.Value.At(s.X)
			h, v := by.Horizontal-on.Horizontal, by.Vertical-on.Vertical
			sum.Horizontal += h
			sum.Vertical += v
			turn.Horizontal += units.Length(s.X/units.Metre) * h
			turn.Vertical += units.Length(s.X/units.Metre) * v
		}
		nearVector(t, "sum", sum, align.Vector{}, 1e-3*units.Nanometre)
		nearVector(t, "moment", turn, align.Vector{}, 1e-2*units.Nanometre)
	})
}

// Nothing depends on the order in which supports come.
func TestOrderOfSupports(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		machine := drawMachine(t, 2, 5)
		a := growWithin(t, anyStandOff, machine...)
		b := growWithin(t, anyStandOff, rapid.Permutation(machine).Draw(t, "order")...)
		nearLine(t, "other order", b.Value, a.Value, 1e-4*units.Nanometre)
		if a.Cov.Basis != b.Cov.Basis {
			t.Errorf("basis %v, then %v", a.Cov.Basis, b.Cov.Basis)
		}
		if a.Cov.Basis == align.Stated {
			nearLine(t, "u", b.Cov.Standard(), a.Cov.Standard(), 1e-2*units.Nanometre)
		}
	})
}

// Counted from another coupling centre it is the same line at the same places.
func TestOriginMoved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		machine := drawMachine(t, 2, 4)
		a := growWithin(t, anyStandOff, machine...)
		by := between(t, -2000*mm, 2000*mm, "by")
		for i := range machine {
			machine[i].X += by
		}
		b := growWithin(t, anyStandOff, machine...)
		for _, x := range []units.Length{0, 700 * mm} {
			nearVector(t, "moved", b.Value.At(x+by), a.Value.At(x), 1e-3*units.Nanometre)
		}
	})
}

// Set to its target a machine runs in line, and so does one that is found off
// the target and corrected.
func TestTargetRunsInLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stationary, movable := growWithin(t, anyStandOff, drawMachine(t, 2, 3)...), growWithin(t, anyStandOff, drawMachine(t, 2, 3)...)
		target := thermal.ColdTarget(stationary, movable)
		nearLine(t, "at target", thermal.Running(target, stationary, movable).Value, align.Centreline{}, 1e-5*units.Nanometre)

		found := align.Exact(align.Centreline{Horizontal: align.Line{Offset: 30 * um}, Vertical: align.Line{Slope: 1e-4}})
		off := found.Minus(target).Value
		nearLine(t, "off target", thermal.Running(found, stationary, movable).Value, off, 1e-5*units.Nanometre)
	})
}

// The same machines seen from the other end with their roles exchanged: x runs
// the other way, 3 and 9 change places. The target is then the exchanged one.
func TestMachinesExchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stationary, movable := drawMachine(t, 2, 3), drawMachine(t, 2, 3)
		a := thermal.ColdTarget(growWithin(t, anyStandOff, stationary...), growWithin(t, anyStandOff, movable...))
		b := thermal.ColdTarget(growWithin(t, anyStandOff, fromBehind(movable)...), growWithin(t, anyStandOff, fromBehind(stationary)...))
		nearLine(t, "exchanged", b.Value, a.Value.Exchanged(), 1e-5*units.Nanometre)
		if a.Cov.Basis == align.Stated {
			nearLine(t, "u", b.Cov.Standard(), a.Cov.Standard(), 1e-2*units.Nanometre)
		}
	})
}

// fromBehind is a machine as an observer at its other end sees it.
func fromBehind(machine []thermal.Support) []thermal.Support {
	seen := slices.Clone(machine)
	for i := range seen {
		s := &seen[i]
		s.X = -s.X
		s.Three, s.Nine = s.Nine, s.Three
		if s.Measured != nil {
			m := *s.Measured
			m.By.Horizontal = -m.By.Horizontal
			s.Measured = &m
		}
	}
	return seen
}

// Growing does not change what it is given.
func TestInputsAreLeftAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		machine := drawMachine(t, 2, 3)
		before := clone(t, machine)
		growWithin(t, anyStandOff, machine...)
		_, _, _ = machine[0].Growth()
		clone(t, machine)
		if after := clone(t, machine); !equal(before, after) {
			t.Errorf("changed")
		}
	})
}
