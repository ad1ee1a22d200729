package dial_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// checkNear fails unless got lies within tolerance of want; NaN never does.
func checkNear[Q ~float64](t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, tolerance Q) {
	t.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tolerance)) {
		t.Errorf("%s: got %v, want %v within %v", what, got, want, tolerance)
	}
}

// checkLine compares a line with the offset and slope that it should have, to
// what rounding leaves of readings of millimetres.
func checkLine(t *testing.T, what string, got align.Line, offset units.Length, slope units.Slope) {
	t.Helper()
	checkNear(t, what+", offset", got.Offset, offset, 1e-6)
	checkNear(t, what+", slope", got.Slope, slope, 1e-15)
}

// opposites returns a sweep that is zero at the top and reads r at the bottom.
// The readings at the sides are ours, by the validity rule.
func opposites(r units.Length) sweep {
	return dial.Quarters(1, 0, float64(r)/2, float64(r), float64(r)/2)
}

// McMillan, eq. 8.3 and 8.4, p. 141 (read): with the bottom readings R of the rim
// and F of the face, zeroed at the top, A the diameter of the face's swing and B
// the distance from the rim's stem, a bolt stands at +-(F B/A + R/2). The sign is
// left to the reader's arrangement: minus for a near face and a stationary
// carrier. The book's one sign does not cover every arrangement: both terms have
// their own. Example 8-3 has F +3, R -4 mils, A 12 in, B 16 and 36 in.
func TestRimFaceFormulae(t *testing.T) {
	for _, row := range []struct {
		name              string
		carrier           align.Shaft
		far               bool
		onF, onR          units.Length // the signs of both terms
		inboard, outboard units.Length // of example 8-3, mils
	}{
		{"stationary carrier, near face", align.Stationary, false, -1, -1, -2, -7},
		{"stationary carrier, far face", align.Stationary, true, +1, -1, +6, +11},
		{"movable carrier, near face", align.Movable, false, -1, +1, -6, -11},
		{"movable carrier, far face", align.Movable, true, +1, +1, +2, +7},
	} {
		bolt := func(t *testing.T, a, stem, b, f, r units.Length) units.Length {
			found := solved(t, dial.RimFace{
				Carrier: row.carrier,
				Rim:     dial.Rim{Station: stem, Readings: opposites(r)},
				Face:    dial.Face{Diameter: a, Far: row.far, Readings: opposites(f)},
			})
			return found.Value.Vertical.At(stem + b)
		}
		t.Run(row.name+", example 8-3", func(t *testing.T) {
			const in, mil = units.Inch, units.Mil
			checkNear(t, "inboard", bolt(t, 12*in, 5*in, 16*in, 3*mil, -4*mil), row.inboard*mil, 1e-6)
			checkNear(t, "outboard", bolt(t, 12*in, 5*in, 36*in, 3*mil, -4*mil), row.outboard*mil, 1e-6)
		})
		t.Run(row.name+", any numbers", func(outer *testing.T) {
			rapid.Check(outer, func(t *rapid.T) {
				a, b, stem := drawLength(t, "A", 40, 500), drawLength(t, "B", -500, 3000), drawLength(t, "stem", -300, 300)
				f, r := drawLength(t, "F", -2, 2), drawLength(t, "R", -2, 2)
				checkNear(t, "bolt", bolt(outer, a, stem, b, f, r), row.onF*f*b/a+row.onR*r/2, 1e-6)
			})
		})
	}
}

// McMillan, p. 161 (read): on the plot of a reverse-dial set the stationary point
// is half the bottom reading S of the dial on the stationary rim, and the
// adjustable point minus half the bottom reading A of the dial on the movable
// rim. Eq. 9.1 and 9.2, p. 164 (read), carry the line through both on to the
// feet; written out here from the rule: at a distance B beyond the adjustable
// point, C between both points, a foot stands at -A/2 - (A + S)/2 * B/C.
func TestReverseFormulae(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, a := drawLength(t, "S", -2, 2), drawLength(t, "A", -2, 2)
		xs, c := drawLength(t, "station", -500, 500), drawLength(t, "C", 50, 1000)
		b := drawLength(t, "B", 0, 2000)
		line := solved(t, dial.Reverse{
			CarriedByStationary: dial.Rim{Station: xs + c, Readings: opposites(a)},
			CarriedByMovable:    dial.Rim{Station: xs, Readings: opposites(s)},
		}).Value.Vertical
		checkNear(t, "stationary point", line.At(xs), s/2, 1e-6)
		checkNear(t, "adjustable point", line.At(xs+c), -a/2, 1e-6)
		checkNear(t, "foot", line.At(xs+c+b), -a/2-(a+s)/2*b/c, 1e-5)
	})
}

// The angular step of a start-up manual, p. 213 (read), through a whole method: a
// gap 0.012 in wider at the top of a 5 in face.
func TestAngularStep(t *testing.T) {
	found := solved(t, dial.StraightedgeGap{
		Straightedge: dial.Straightedge{On: align.Stationary, Readings: dial.Quarters(units.Mil, 3, 3, 3, 3)},
		Gap:          dial.Gap{Diameter: 5 * units.Inch, Readings: dial.Quarters(units.Mil, 112, 106, 100, 106)},
	})
	checkLine(t, "vertical", found.Value.Vertical, 0, -0.012/5)
	checkLine(t, "horizontal", found.Value.Horizontal, 0, 0)
}

// Piotrowski, fig. 8.10 (second-hand): a sweep re-zeroed at the east gives the
// same answer. Which dial each sweep belongs to and that east is 3 o'clock is
// ours.
func TestRezeroedSweeps(t *testing.T) {
	solve := func(stationary, movable sweep) dial.Result {
		return solved(t, dial.Reverse{
			CarriedByStationary: dial.Rim{Station: 3 * units.Inch, Readings: stationary},
			CarriedByMovable:    dial.Rim{Station: -5 * units.Inch, Readings: movable},
		})
	}
	const mil = units.Mil
	want := solve(dial.Quarters(mil, 0, -50, -40, 10), dial.Quarters(mil, 0, 30, 20, -10))
	got := solve(dial.Quarters(mil, 50, 0, 10, 60), dial.Quarters(mil, -30, 0, -10, -40))
	if got.Value != want.Value {
		t.Errorf("re-zeroed: got %+v, want %+v", got.Value, want.Value)
	}
	for i, r := range []dial.Result{want, got} {
		for j, c := range r.Checks {
			if c.Miss != 0 {
				t.Errorf("answer %d, set %d misses by %v", i, j, c.Miss)
			}
		}
	}
	// By hand, vertical: w(3 in) = (0 - -40)/2 = 20, w(-5 in) = (20 - 0)/2 = 10 mil:
	// slope 10/8 mil/in, offset 20 - 3*1.25 = 16.25 mil. Horizontal: w(3 in) =
	// (-50 - 10)/2 = -30, w(-5 in) = (-10 - 30)/2 = -20: slope -10/8, offset -26.25.
	checkLine(t, "vertical", want.Value.Vertical, 16.25*mil, 1.25e-3)
	checkLine(t, "horizontal", want.Value.Horizontal, -26.25*mil, -1.25e-3)
}
