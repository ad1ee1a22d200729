package align_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// A pipe leaves only the upper third of the turn free. The rim is 75 mm in radius
// and lies 1 mm low, with readings every 30 degrees from 10 to 2 o'clock: there the
// circle of the rim counts. A full turn of a face fixes the slope.
func ExampleFitExact() {
	rim := align.Set{Probe: align.Probe{
		Kind: align.Rim, Carrier: align.Stationary,
		Station: 50 * units.Millimetre, Radius: 75 * units.Millimetre,
	}}
	face := align.Set{Probe: align.Probe{
		Kind: align.NearFace, Carrier: align.Stationary, Radius: 70 * units.Millimetre,
	}}
	for i, um := range []float64{495.0, 132.3, 0, 132.3, 495.0} {
		clock := units.Clock(30*i - 60)
		rim.Readings = append(rim.Readings, align.Reading{At: clock, Value: units.Length(um) * units.Micrometre})
	}
	face.Readings = hundredths(0, 0, 0, 0)
	f, err := align.FitExact(rim, face)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("exact:  %.4f mm\n", f.Value.Vertical.Offset.In(units.InMillimetres))
	linear := f.Value.Minus(f.Difference)
	fmt.Printf("linear: %.4f mm\n", linear.Vertical.Offset.In(units.InMillimetres))
	fmt.Printf("taken as linear: %v\n", f.Linear)
	// Output:
	// exact:  -1.0000 mm
	// linear: -0.9904 mm
	// taken as linear: []
}
