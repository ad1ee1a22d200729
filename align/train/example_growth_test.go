package train_test

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// A target from growth. Growths are told along the x of the train, the target of a
// coupling from its own centre. There the turbine grows by 0.30 mm and the generator
// behind it by 0.10 mm: cold, the generator has to stand 0.20 mm high.
func ExampleJoint() {
	turbine := align.Exact(align.Centreline{Vertical: align.Line{Offset: 90 * units.Micrometre, Slope: 0.1 * units.MillimetrePerMetre}})
	generator := align.Exact(align.Centreline{Vertical: align.Line{Offset: 100 * units.Micrometre}})
	joint := train.Joint{
		At:    2100 * units.Millimetre,
		Found: align.Exact(align.Centreline{Vertical: align.Line{Offset: 50 * units.Micrometre}}),
	}
	joint.Target = thermal.ColdTarget(turbine.About(joint.At), generator.About(joint.At))
	fmt.Println("wanted", joint.Target.Value.Vertical.Offset, joint.Target.Value.Vertical.Slope)
	fmt.Println("off by", joint.Off().Value.Vertical.Offset, joint.Off().Value.Vertical.Slope)
	// Output:
	// wanted 0.2 mm 0.1 mm/m
	// off by -0.15 mm -0.1 mm/m
}
