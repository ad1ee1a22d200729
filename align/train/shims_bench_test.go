package train_test

import (
	"fmt"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/shims"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// shimmedTrain is so many machines in line on two stations with two feet each, with a
// pack of two pieces under every foot, some tenths out.
func shimmedTrain(machines int, reference string) train.Train {
	const mm = units.Millimetre
	t := train.Train{Reference: reference}
	x := 0 * mm
	for i := range machines {
		m := train.Machine{Name: fmt.Sprint("m", i)}
		for k, name := range []string{"inboard", "outboard"} {
			x += units.Length(350+90*i+170*k) * mm
			f := train.Foot{Name: name, X: x, Vertical: train.AtLeast(-4 * mm)}
			for _, side := range []string{"left", "right"} {
				f.Under = append(f.Under, train.Pack{Name: side, Now: []shims.Piece{{Marked: 3 * mm, Count: 1}, {Marked: mm, Count: 1}}})
			}
			m.Feet = append(m.Feet, f)
		}
		t.Machines = append(t.Machines, m)
		x += 280 * mm
		if i == machines-1 {
			break
		}
		sign := units.Length(1 - 2*(i%2))
		t.Joints = append(t.Joints, train.Joint{
			At: x,
			Found: align.Exact(align.Centreline{
				Horizontal: align.Line{Offset: 0.31 * mm, Slope: -0.8 * units.MillimetrePerMetre},
				Vertical:   align.Line{Offset: sign * 0.47 * mm, Slope: 0.6 * units.MillimetrePerMetre},
			}),
			Limits: tolerance.Limits{Offset: 50 * um, Slope: 0.3 * units.MillimetrePerMetre},
		})
	}
	return t
}

func BenchmarkPlanShims(b *testing.B) {
	for _, machines := range []int{2, 3, 4} {
		for _, reference := range []string{"m0", "m1", ""} {
			for _, scarce := range []bool{false, true} {
				t := shimmedTrain(machines, reference)
				stock := shims.CommonMetric(20)
				if scarce {
					stock = shims.CommonMetric(1)
				}
				b.Run(fmt.Sprintf("machines=%d/reference=%s/scarce=%v", machines, reference, scarce), func(b *testing.B) {
					proven := 0.0
					for b.Loop() {
						p, err := t.PlanShims(train.TotalTravel, stock, shims.Rule{})
						if err != nil {
							b.Fatal(err)
						}
						if proven = 0; p.Proven {
							proven = 1
						}
					}
					b.ReportMetric(proven, "proven")
				})
			}
		}
	}
}
