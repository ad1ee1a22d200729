package sheet_test

import (
	"fmt"
	"math"
	"math/big"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// handErrors are how far the hand is off on paper: at the first and at the second
// plotted point, and at the foot's station and its reading.
type handErrors struct{ along, across [3]float64 }

// readByHand draws the graph of d with these errors, in numbers of many times the digits
// of what is on trial, and reads w off at the foot: along the steps of one who
// draws, and not with the formula that is on trial. It returns how far off it is.
func readByHand(d drawing, foot units.Length, e handErrors) float64 {
	long := func() *big.Float { return new(big.Float).SetPrec(512) }
	exact := func(x float64) *big.Float { return long().SetFloat64(x) }
	sum := func(a, b *big.Float) *big.Float { return long().Add(a, b) }
	less := func(a, b *big.Float) *big.Float { return long().Sub(a, b) }
	times := func(a, b *big.Float) *big.Float { return long().Mul(a, b) }
	over := func(a, b *big.Float) *big.Float { return long().Quo(a, b) }
	reduction, exaggeration := exact(d.paper.Reduction), exact(d.paper.Exaggeration)
	truth := func(x units.Length) *big.Float {
		return sum(exact(float64(d.line.Offset)), times(exact(float64(d.line.Slope)), exact(float64(x))))
	}
	// The hand puts the points on the paper.
	var x, y [2]*big.Float
	for i, s := range d.through {
		x[i] = sum(over(exact(float64(s.X)), reduction), exact(e.along[i]))
		y[i] = sum(times(truth(s.X), exaggeration), exact(e.across[i]))
	}
	// It looks for the foot, goes up to the ruler, and reads.
	at := sum(over(exact(float64(foot)), reduction), exact(e.along[2]))
	climb := over(less(y[1], y[0]), less(x[1], x[0]))
	up := sum(y[0], times(climb, less(at, x[0])))
	value := over(sum(up, exact(e.across[2])), exaggeration)
	off, _ := less(value, truth(foot)).Float64()
	return off
}

// corners are all ways of being off by e in full.
func corners(e float64) (all []handErrors) {
	for bits := range 1 << 6 {
		var h handErrors
		for i := range 3 {
			h.along[i] = e * float64(bits>>i&1*2-1)
			h.across[i] = e * float64(bits>>(3+i)&1*2-1)
		}
		all = append(all, h)
	}
	return all
}

// worstByHand is the most that a reading can be off by. The reading is monotone in
// each error as long as the points cannot meet (a straight line in those across
// and in that of the foot's station, a hyperbola in those of the points), so the
// worst stands in a corner.
func worstByHand(d drawing, foot units.Length) units.Length {
	worst := 0.0
	for _, h := range corners(float64(d.pencilOf())) {
		worst = max(worst, math.Abs(readByHand(d, foot, h)))
	}
	return units.Length(worst)
}

// The worst that a hand can do is the tolerance, and nothing between the corners is
// worse.
func TestToleranceIsTheWorstCase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDrawing(t)
		for d.points() <= 2.2*d.pencilOf() { // closer is for the test of refusals
			d.paper.Reduction /= 2
		}
		e := float64(d.pencilOf())
		share := rapid.Float64Range(-1, 1)
		for _, f := range d.mustDraw(t).Feet {
			same(t, f.Foot.Name, f.Tolerance, worstByHand(d, f.Foot.X))
			var h handErrors
			for i := range 3 {
				h.along[i], h.across[i] = e*share.Draw(t, "along"), e*share.Draw(t, "across")
			}
			if off := readByHand(d, f.Foot.X, h); math.Abs(off) > float64(f.Tolerance)*(1+1e-9) {
				t.Errorf("%s is off by %v with %v, over %v", f.Foot.Name, off, h, f.Tolerance)
			}
		}
	})
}

// Points so close that the pencil nearly brings them together, and feet all about
// them: which errors are the worst changes there from place to place.
func TestToleranceOfPointsThatStandClose(t *testing.T) {
	d := onSquares()
	d.paper = sheet.Paper{Reduction: 1, Exaggeration: 1, Pencil: millimetre}
	for _, apart := range []units.Length{2.125, 3, 5} {
		for _, slope := range []units.Slope{0.5, -3} {
			for x := units.Length(-2); x <= 7; x += 0.5 {
				d.line.Slope, d.through[1].X = slope, apart*millimetre
				d.feet = []align.Foot{{Name: "foot", X: x * millimetre}}
				what := fmt.Sprintf("slope %v, points %v apart, foot at %v", slope, apart, x)
				same(t, what, d.mustDraw(t).Feet[0].Tolerance, worstByHand(d, x*millimetre))
			}
		}
	}
}

// points is how far apart the plotted points stand on paper.
func (d drawing) points() units.Length {
	apart := math.Abs(float64(d.through[0].X - d.through[1].X))
	return units.Length(apart / d.paper.Reduction)
}

// Without an error of the hand the oracle reads the truth, in nanometres to a hundred digits:
// it is off by what the hand does and by nothing else.
func TestOracleReadsTheTruth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDrawing(t)
		if off := readByHand(d, d.feet[0].X, handErrors{}); math.Abs(off) > 1e-130 {
			t.Errorf("off by %v", off)
		}
	})
	if got := len(corners(1)); got != 64 {
		t.Errorf("%d corners", got)
	}
	if c := corners(1); c[0].along[0] != -1 || c[63].across[2] != 1 || c[1].along[0] != 1 || c[1].across[0] != -1 {
		t.Errorf("corners %v", c)
	}
}
