package dial_test

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// show prints the four numbers of a centreline.
func show(c align.Centreline) {
	for _, plane := range []struct {
		name string
		align.Line
	}{{"horizontal", c.Horizontal}, {"vertical", c.Vertical}} {
		fmt.Printf("%s: offset %s, slope %s\n", plane.name,
			plane.Offset.Text(units.InMillimetres, 3), plane.Slope.Text(units.InMillimetresPerMetre, 2))
	}
}

// A blower behind its motor, a dial on each shaft. The bracket that the motor's
// shaft carries sags 0.03 mm.
func ExampleReverse_Solve() {
	found, err := dial.Reverse{
		CarriedByStationary: dial.Rim{
			Station: 80 * units.Millimetre, Sag: 0.03 * units.Millimetre,
			Readings: dial.Quarters(units.Millimetre/100, 0, 5, 14, 9),
		},
		CarriedByMovable: dial.Rim{
			Station:  -80 * units.Millimetre,
			Readings: dial.Quarters(units.Millimetre/100, 0, -8, -12, -4),
		},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	show(found.Value)
	// By hand: w_z(80) = (-0.03 - 0.17)/2 = -0.10, w_z(-80) = (-0.12 - 0)/2 = -0.06.

	// Output:
	// horizontal: offset 0.000 mm, slope -0.25 mm/m
	// vertical: offset -0.080 mm, slope -0.25 mm/m
}

func ExampleReverse_Sets() {
	job := dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 80 * units.Millimetre, Sag: 0.03 * units.Millimetre},
		CarriedByMovable:    dial.Rim{Station: -80 * units.Millimetre},
	}
	// What will the first dial show once the shafts are in line?
	readings, err := job.Sets()[0].Predict(align.Centreline{}, units.Twelve, units.Three, units.Six, units.Nine)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range readings {
		fmt.Println(r.At, r.Value.Text(units.InMillimetres, 2))
	}
	// Output:
	// 12:00 0.00 mm
	// 3:00 -0.03 mm
	// 6:00 -0.06 mm
	// 9:00 -0.03 mm
}

// A small pump: both dials on the motor's shaft, which is the movable one here.
func ExampleRimFace_Solve() {
	found, err := dial.RimFace{
		Carrier: align.Movable,
		Rim:     dial.Rim{Station: -50 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 9, 24, 15)},
		Face:    dial.Face{Diameter: 120 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 3, -6, -9)},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	show(found.Value)
	// By hand: w_z(-50) = +0.12, slope_z = 0.06/120, offset_z = 0.12 + 50 * 0.0005.

	// Output:
	// horizontal: offset 0.080 mm, slope 1.00 mm/m
	// vertical: offset 0.145 mm, slope 0.50 mm/m
}

func ExampleRimFace_Sets() {
	job := dial.RimFace{
		Carrier: align.Stationary,
		Rim:     dial.Rim{Station: 40 * units.Millimetre},
		Face:    dial.Face{Diameter: 150 * units.Millimetre, Far: true},
	}
	for _, set := range job.Sets() {
		fmt.Println(set.Probe.Kind, set.Probe.Carrier, set.Probe.Station, set.Probe.Radius)
	}
	// Output:
	// rim stationary 40 mm 0 mm
	// far_face stationary 0 mm 75 mm
}

// A cooling tower's drive shaft of 2 m between flex planes.
func ExampleFaceFace_Solve() {
	found, err := dial.FaceFace{
		Span:         2 * units.Metre,
		AtStationary: dial.Face{Diameter: 200 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 4, 10, 6)},
		AtMovable:    dial.Face{Diameter: 200 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, -1, -4, -3)},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	show(found.Value)
	// By hand, vertical: tilts -0.10/200 = -0.5 and +0.04/200 = +0.2 mm/m; their
	// difference times half the span is -0.7 mm.

	// Output:
	// horizontal: offset -0.200 mm, slope 0.00 mm/m
	// vertical: offset -0.700 mm, slope -0.30 mm/m
}

func ExampleFaceFace_Sets() {
	job := dial.FaceFace{
		Span:         2 * units.Metre,
		AtStationary: dial.Face{Diameter: 200 * units.Millimetre},
		AtMovable:    dial.Face{Diameter: 200 * units.Millimetre},
	}
	for _, set := range job.Sets() {
		fmt.Println(set.Probe.Kind, "at the joint of the", set.Probe.Carrier, "machine")
	}
	// Output:
	// spacer_face at the joint of the stationary machine
	// spacer_face at the joint of the movable machine
}

// A rim dial, and an inside gauge between the hubs.
func ExampleRimGap_Solve() {
	found, err := dial.RimGap{
		Carrier: align.Stationary,
		Rim:     dial.Rim{Readings: dial.Quarters(units.Mil, 0, -2, -6, -4)},
		Gap:     dial.Gap{Diameter: 8 * units.Inch, Readings: dial.Quarters(units.Mil, 125, 127, 129, 127)},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(found.Value.Vertical.Offset.Text(units.InMils, 1), found.Value.Vertical.Slope.Text(units.InMilsPerInch, 2))
	fmt.Println(found.Value.Horizontal.Offset.Text(units.InMils, 1), found.Value.Horizontal.Slope.Text(units.InMilsPerInch, 2))
	// Output:
	// 3.0 mil 0.50 mil/in
	// 1.0 mil 0.00 mil/in
}

func ExampleRimGap_Sets() {
	sets := dial.RimGap{
		Carrier: align.Stationary,
		Gap:     dial.Gap{Diameter: 8 * units.Inch, Readings: dial.Quarters(units.Mil, 125, 127, 129, 127)},
	}.Sets()
	fmt.Println(sets[1].Probe.Kind, sets[1].Probe.Radius.Text(units.InInches, 0), len(sets[1].Readings), "readings")
	// Output:
	// gap 4 in 4 readings
}

// A straightedge on the pump's rim, and feelers.
func ExampleStraightedgeGap_Solve() {
	found, err := dial.StraightedgeGap{
		Straightedge: dial.Straightedge{
			On: align.Stationary, Station: 20 * units.Millimetre,
			Readings: dial.Quarters(units.Millimetre/100, 10, 25, 40, 25),
		},
		Gap: dial.Gap{Diameter: 100 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 320, 310, 300, 310)},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	show(found.Value)
	// By hand: the movable rim stands (0.40 - 0.10)/2 = 0.15 high at 20 mm; the gap,
	// 0.20 wider at 12 across 100 mm, falls by 2 mm/m: 0.15 + 20 * 0.002 at the centre.

	// Output:
	// horizontal: offset 0.000 mm, slope 0.00 mm/m
	// vertical: offset 0.190 mm, slope -2.00 mm/m
}

func ExampleStraightedgeGap_Sets() {
	sets := dial.StraightedgeGap{
		Straightedge: dial.Straightedge{On: align.Movable, Station: -20 * units.Millimetre},
		View:         align.FromStationary,
	}.Sets()
	fmt.Println(sets[0].Probe.Kind, sets[0].Probe.Carrier, sets[0].Probe.Station, sets[0].View)
	// Output:
	// straightedge movable -20 mm from_stationary
}

// A set of three readings is completed by the validity rule, and says so.
func ExampleCheck() {
	readings := dial.Quarters(units.Millimetre/100, 0, 5, 14, 9)
	found, err := dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 80 * units.Millimetre, Readings: readings[:3]},
		CarriedByMovable:    dial.Rim{Station: -80 * units.Millimetre, Readings: append(readings, align.Reading{Value: 10 * units.Micrometre})},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	first, second := found.Checks[0], found.Checks[1]
	fmt.Println("supplied:", first.Completed, first.Supplied, first.Quarters[3])
	fmt.Println("miss:", second.Miss, "return:", second.Returned, second.Return)
	// Output:
	// supplied: true 9:00 0.09 mm
	// miss: 0 mm return: true 0.01 mm
}

// The crew's own limit, stricter than the default. The answer stands, with a
// warning.
func ExampleLimits() {
	found, err := dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 80 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 5, 14, 7)},
		CarriedByMovable:    dial.Rim{Station: -80 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 5, 14, 9)},
		Limits:              dial.Limits{Miss: 10 * units.Micrometre},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, w := range found.Warnings {
		fmt.Println(w.Code, w.Path, w.Value)
	}
	// Output:
	// suspect /carried_by_stationary/readings 0.02 mm
}

// A result is an estimate: what was found less the target goes on to the feet.
func ExampleResult() {
	found, err := dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 80 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 6, 20, 14)},
		CarriedByMovable:    dial.Rim{Station: -80 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, -8, -12, -4)},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	target, err := dial.Target{High: -0.02 * units.Millimetre}.Centreline()
	if err != nil {
		fmt.Println(err)
		return
	}
	moves, err := found.Minus(align.Exact(target)).Corrections(
		align.Foot{Name: "drive end", X: 240 * units.Millimetre},
		align.Foot{Name: "free end", X: 640 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range moves {
		fmt.Println(m)
	}
	// By hand: w_z(80) = -0.10, w_z(-80) = -0.06, so w_z(240) = -0.14 against -0.02;
	// w_y(80) = -0.04, w_y(-80) = +0.02, so w_y(240) = -0.10.

	// Output:
	// drive end: raise 0.12 mm, push 0.10 mm towards 3 o'clock
	// free end: raise 0.22 mm, push 0.25 mm towards 3 o'clock
}
