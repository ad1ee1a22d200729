package train_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Plans that can be worked out on paper; derived here. The motor stays, the coupling
// stands at 0.8 m, the feet of the pump 0.2 and 0.6 m beyond it.
func TestPlansByHand(t *testing.T) {
	vectors := tolerance.Limits{Offset: 50 * um, Slope: 0.5 * milliPerMetre}
	offsetAlone := tolerance.Limits{Offset: 50 * um}
	rows := []struct {
		name     string
		found    align.Centreline
		limits   tolerance.Limits
		inboard  train.Limit // in height
		outboard train.Limit
		reach    train.Reach
		ratio    float64
		moves    [4]float64 // um: inboard sideways, in height, outboard sideways, in height
	}{
		{"on target: 0.5 mm too low is raised", align.Centreline{Vertical: align.Line{Offset: -500 * um}}, perPlane,
			train.Limit{}, train.Limit{}, train.OnTarget, 0, [4]float64{0, 500, 0, 500}},
		{"slope: what the feet stand off, taken back", align.Centreline{Vertical: align.Line{Offset: 100 * um, Slope: milliPerMetre}}, perPlane,
			train.Limit{}, train.Limit{}, train.OnTarget, 0, [4]float64{0, -300, 0, -700}},
		{"towards 9: pushed towards 3", align.Centreline{Horizontal: align.Line{Offset: -40 * um}}, vectors,
			train.Limit{}, train.Limit{}, train.OnTarget, 0, [4]float64{40, 0, 40, 0}},
		// inboard stuck and 0.2 mm too high: offset + 0.2 slope = 0.2 mm. With offset =
		// 0.05 r and slope = 0.5 r: 0.15 r = 0.2. Outboard then stands 0.05 r + 0.6 x 0.5 r
		// = 0.35 r high.
		{"stuck inboard", align.Centreline{Vertical: align.Line{Offset: 200 * um}}, perPlane,
			train.Fixed(), train.Limit{}, train.OutOfReach, 4.0 / 3, [4]float64{0, 0, 0, 0.35*4000/3 - 200}},
		// the same with vectors: sideways it is in line and stays so.
		{"stuck inboard, vectors", align.Centreline{Vertical: align.Line{Offset: 200 * um}}, vectors,
			train.Fixed(), train.Limit{}, train.OutOfReach, 4.0 / 3, [4]float64{0, 0, 0, 0.35*4000/3 - 200}},
		// stuck in height, 0.2 mm high, which is 4 limits by itself. So the offset sideways
		// has to go: the least travel for 0.16 mm at the coupling, 0.2 m before the inboard
		// feet and 0.6 m before the outboard ones, turns the pump about the latter:
		// 0.16 x 0.4/0.6. The slope of 0.27 mm/m is no worse than 4 limits.
		{"stuck in height, free aside", align.Centreline{Horizontal: align.Line{Offset: 160 * um}, Vertical: align.Line{Offset: 200 * um}}, vectors,
			train.Fixed(), train.Fixed(), train.OutOfReach, 4, [4]float64{-320.0 / 3, 0, 0, 0}},
		// judged by the offset alone, which both feet stand near: the least travel turns the
		// pump about its outboard feet, at 0.6 m, and inboard goes 0.5 x (0.6 - 0.2)/0.6.
		{"outboard stuck, offset alone", align.Centreline{Vertical: align.Line{Offset: -500 * um}}, offsetAlone,
			train.Limit{}, train.Fixed(), train.WithinLimits, 0, [4]float64{0, 1000.0 / 3, 0, 0}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			tr := pair()
			tr.Joints[0].Found, tr.Joints[0].Limits = align.Exact(row.found), row.limits
			tr.Machines[1].Feet[0].Vertical, tr.Machines[1].Feet[1].Vertical = row.inboard, row.outboard
			for w := train.TotalTravel; w <= train.FewestFeet; w++ {
				if w == train.LargestMove && row.ratio == 4 {
					continue // that would move both feet by 80 um
				}
				p := plan(t, tr, w)
				if p.Reach != row.reach || math.Abs(p.Ratio-row.ratio) > rounding*(1+row.ratio) {
					t.Errorf("%v: %v at ratio %v, want %v at %v", w, p.Reach, p.Ratio, row.reach, row.ratio)
				}
				f := p.Machines[1].Feet
				got := [4]units.Length{f[0].By.Horizontal, f[0].By.Vertical, f[1].By.Horizontal, f[1].By.Vertical}
				for i := range got {
					if math.Abs(float64(got[i]/um)-row.moves[i]) > 1 {
						t.Errorf("%v: moves %v, want %v um", w, got, row.moves)
						break
					}
				}
			}
		})
	}
}
