package softfoot_test

import (
	"math"
	"math/big"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// leastSquaresPlane fits a + b x + c y to shims under all feet, those without a
// shim at nothing, by the normal equations in rationals.
func leastSquaresPlane(s softfoot.Survey, shims []units.Length) (a, b, c float64) {
	var normal [][]*big.Rat
	var right []*big.Rat
	for i := range 3 {
		normal = append(normal, []*big.Rat{rat(0), rat(0), rat(0)})
		right = append(right, rat(0))
		for k, f := range s.Feet {
			row := []*big.Rat{rat(1), exact(f.X), exact(f.Y)}
			for j := range 3 {
				normal[i][j].Add(normal[i][j], times(row[i], row[j]))
			}
			right[i].Add(right[i], times(row[i], exact(shims[k])))
		}
	}
	plane, ok := solve(normal, right)
	if !ok {
		panic("feet in one line")
	}
	a, _ = plane[0].Float64()
	b, _ = plane[1].Float64()
	c, _ = plane[2].Float64()
	return a, b, c
}

// A machine that follows the plane of least squares through its shims rises at the
// shaft by a + b x, and its shaft, at a height above the feet, goes -height c
// sideways.
func TestShiftFollowsPlaneOfLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan, n := drawPlan(t)
		s, _ := twisted(t, plan, n, 0)
		s.Height = units.Length(rapid.IntRange(50, 900).Draw(t, "height")) * mm
		for _, way := range judge(t, s, softfoot.Limits{}).Advice {
			a, b, c := leastSquaresPlane(s, flats(s, way))
			checkShift(t, way.Shift, a, b, -float64(s.Height/mm)*c)
		}
	})
}

// checkShift compares a shift with millimetres, a ratio and millimetres: shims are
// given to the nanometre, and a plan of some hundred millimetres makes at most 20
// times that of it.
func checkShift(t rapid.TB, got softfoot.Shift, up, slope, sideways float64) {
	t.Helper()
	const tolerance = 20e-6 // mm
	if math.Abs(float64(got.Up/mm)-up) > tolerance || math.Abs(float64(got.Slope)-slope) > tolerance/100 ||
		math.Abs(float64(got.Sideways/mm)-sideways) > tolerance {
		t.Errorf("got %+v, want up %v mm, slope %v, sideways %v mm", got, up, slope, sideways)
	}
}

// Shims h3 and h9 under the feet of a station, on a track B with the shaft at H
// above them, lift the shaft there by (h3 + h9)/2 and push it by -H (h3 - h9)/B:
// on a rectangle each station does half of the push.
func TestShiftOfRectangleByHand(t *testing.T) {
	const g, track, height, length = 0.12, 400.0, 280.0, 600.0 // mm
	for _, row := range []struct {
		name               string
		lifts              []float64
		shimmed            int
		up, upFar, towards float64
	}{
		{"near 3 o'clock", []float64{g, 0, 0, 0}, 0, g / 2, 0, -height * g / track / 2},
		{"near 9 o'clock", []float64{0, g, 0, 0}, 1, g / 2, 0, height * g / track / 2},
		{"far 3 o'clock", []float64{0, 0, g, 0}, 2, 0, g / 2, -height * g / track / 2},
		{"far 9 o'clock", []float64{0, 0, 0, g}, 3, 0, g / 2, height * g / track / 2},
	} {
		s := rectangle(mm, row.lifts...)
		way := judge(t, s, softfoot.Limits{}).Advice[0]
		if under := flats(s, way); under[row.shimmed] != 120*um || len(way.Shims) != 1 {
			t.Errorf("%s: shims %v", row.name, way.Shims)
		}
		checkShift(t, way.Shift, row.up, (row.upFar-row.up)/length, row.towards)
		if far := way.Shift.At(600 * mm); math.Abs(float64(far/mm)-row.upFar) > 1e-9 {
			t.Errorf("%s: %v at the far feet, want %v", row.name, far, row.upFar)
		}
	}
}

// At is a straight line in x.
func TestShiftAt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		up := units.Length(rapid.IntRange(-1000, 1000).Draw(t, "up")) * um
		slope := units.Slope(rapid.IntRange(-64, 64).Draw(t, "slope")) / 1024
		x := units.Length(rapid.IntRange(-2000, 2000).Draw(t, "x")) * 1024 * um
		s := softfoot.Shift{Up: up, Slope: slope, Sideways: 5 * um}
		if got, want := s.At(x), up+units.Length(slope)*x; got != want {
			t.Errorf("got %v, want %v", got, want)
		}
	})
}
