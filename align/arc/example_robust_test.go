package arc_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

func ExampleFitRobust() {
	sets := sweeps() // the third reading of the second dial is bad
	plain, err := align.Fit(sets...)
	if err != nil {
		log.Fatal(err)
	}
	robust, err := arc.FitRobust(sets...)
	if err != nil {
		log.Fatal(err)
	}
	const foot = 600 * units.Millimetre
	for _, f := range []align.Fitted{plain, robust.Fitted} {
		w, u := f.At(foot)
		fmt.Printf("at the foot the shaft stands at %s in height, u %s\n", w.Vertical.Text(units.InMillimetres, 2), u.Vertical.Text(units.InMillimetres, 2))
	}
	for _, w := range robust.Down() {
		fmt.Printf("set %d, reading %d counts for %.2f: %s off\n", w.Set, w.Reading, w.Weight, w.Residual.Text(units.InMillimetres, 2))
	}
	// Output:
	// at the foot the shaft stands at -0.45 mm in height, u 0.01 mm
	// at the foot the shaft stands at -0.47 mm in height, u 0.01 mm
	// set 1, reading 2 counts for 0.00: 0.05 mm off
}

func ExampleRobust_Down() {
	robust, err := arc.FitRobust(sweeps()...)
	if err != nil {
		log.Fatal(err)
	}
	for _, w := range robust.Down() {
		fmt.Printf("/sets/%d/readings/%d is %.0f standard deviations off\n", w.Set, w.Reading, w.Off)
	}
	// Output:
	// /sets/1/readings/2 is 9 standard deviations off
}
