package arc_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// twoSets are two complete measurements of one pair of shafts, with independent
// uncertainties: dials before the coupling was closed, sensors after.
func twoSets() (dials, sensors align.Estimate) {
	const mm = units.Millimetre
	none := [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}
	estimate := func(offsetY, offsetZ units.Length, slope units.Slope, u align.Line) align.Estimate {
		cov, err := align.NewCovariance(align.Stated, align.Centreline{Horizontal: u, Vertical: u}, none)
		if err != nil {
			log.Fatal(err)
		}
		return align.Estimate{
			Value: align.Centreline{
				Horizontal: align.Line{Offset: offsetY, Slope: slope},
				Vertical:   align.Line{Offset: offsetZ, Slope: slope},
			},
			Cov: cov,
		}
	}
	dials = estimate(0.12*mm, -0.20*mm, 0.40e-3, align.Line{Offset: 0.010 * mm, Slope: 0.04e-3})
	sensors = estimate(0.13*mm, -0.18*mm, 0.40e-3, align.Line{Offset: 0.005 * mm, Slope: 0.03e-3})
	return dials, sensors
}

// The offsets differ by 0.01 and 0.02 mm, where 0.011 mm is the standard uncertainty
// of a difference: that can well be chance.
func ExampleCompare() {
	dials, sensors := twoSets()
	c, err := arc.Compare(dials, sensors)
	if err != nil {
		log.Fatal(err)
	}
	d := c.Difference.Value
	fmt.Printf("difference %.2f mm sideways, %.2f mm up\n", d.Horizontal.Offset/units.Millimetre, d.Vertical.Offset/units.Millimetre)
	fmt.Printf("chi-square %.1f in %d numbers: P = %.2f\n", c.Chi2, c.Compared, c.P)
	// Output:
	// difference -0.01 mm sideways, -0.02 mm up
	// chi-square 4.0 in 4 numbers: P = 0.41
}

// They agree, so both together are the best that is known. The sensors, at half the
// uncertainty, count four times as much in the offsets.
func ExampleMerge() {
	dials, sensors := twoSets()
	both, agreement, err := arc.Merge(dials, sensors)
	if err != nil {
		log.Fatal(err)
	}
	if agreement.P < 0.05 {
		log.Fatal("the two measurements do not agree: find out why")
	}
	w, u := both.At(0)
	fmt.Printf("coupling: %.4f mm (u %.4f) up\n", w.Vertical/units.Millimetre, u.Vertical/units.Millimetre)
	// Output:
	// coupling: -0.1840 mm (u 0.0045) up
}
