package align_test

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// In a train the second coupling stands at 2.4 m. Its line, told from the zero of
// the train.
func ExampleEstimate_About() {
	atCoupling := align.Exact(align.Centreline{Vertical: align.Line{
		Offset: 100 * units.Micrometre, Slope: 0.25 * units.MillimetrePerMetre,
	}})
	inTrain := atCoupling.About(-2400 * units.Millimetre)
	fmt.Println(inTrain.Value.Vertical.Offset, inTrain.Value.At(2400*units.Millimetre).Vertical)
	// Output: -0.5 mm 0.1 mm
}

// A coupling that was measured with the later machine as the stationary one, by
// a crew behind the earlier one.
func ExampleEstimate_Exchanged() {
	measured := align.Exact(align.Centreline{
		Horizontal: align.Line{Slope: 0.3 * units.MillimetrePerMetre},
		Vertical:   align.Line{Offset: -80 * units.Micrometre},
	})
	later := measured.Exchanged().Value
	fmt.Println("the later machine stands", later.Vertical.Offset, "high, horizontal slope", later.Horizontal.Slope)
	// Output: the later machine stands 0.08 mm high, horizontal slope -0.3 mm/m
}

// Heights and sideways moves are made at different times: each in its own words.
func ExampleStyle_Height() {
	style := align.Style{Unit: units.InMils, Three: "north", Nine: "south"}
	fmt.Println(style.Height(-2.7 * units.Mil))
	fmt.Println(style.Sideways(4 * units.Mil))
	// Output:
	// lower 2.7 mil
	// push 4.0 mil towards north
}
