package dial_test

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, ch. 5,
// p. 203 (read). Stationary plane to adjusted plane 14 in, on to the inboard
// foot 12 in, on to the outboard foot 26 in; the adjusted machine's centreline
// is 0.012 in high at the stationary plane and 0.007 in high at its own. Printed:
// lower 3 mils, raise 7 mils. The book has the vertical plane only; the readings
// at 3 and 9 are ours, by the validity rule.
func ExampleReverse_Solve_blochGeitner() {
	found, err := dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 7 * units.Inch, Readings: dial.Quarters(units.Mil, 0, -7, -14, -7)},
		CarriedByMovable:    dial.Rim{Station: -7 * units.Inch, Readings: dial.Quarters(units.Mil, 0, 12, 24, 12)},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	moves, err := found.Corrections(
		align.Foot{Name: "inboard", X: (7 + 12) * units.Inch},
		align.Foot{Name: "outboard", X: (7 + 12 + 26) * units.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range moves {
		fmt.Println(m.Text(align.Style{Unit: units.InMils, Digits: -1}))
		fmt.Printf("exactly %.11f in\n", m.By.Vertical.In(units.InInches))
	}
	// Output:
	// inboard: lower 3 mil, leave sideways
	// exactly -0.00271428571 in
	// outboard: raise 7 mil, leave sideways
	// exactly 0.00657142857 in
}

// R. B. McMillan, Rotating Machinery: Practical Solutions to Unbalance and
// Misalignment, Fairmont, 2004, example 8-3, pp. 137-141 (read). Face swing
// diameter 12 in; from the rim's stem to the inboard bolt 16 in, to the outboard
// bolt 36 in; at the bottom, zeroed at the top, rim -4 mils and face +3 mils.
// Printed: the feet stand at -2 and -7 mils. In our signs that is a stationary
// carrier and a near face. The book has the vertical plane only; the readings at
// 3 and 9 are ours, by the validity rule.
func ExampleRimFace_Solve_mcMillan() {
	const stem = 4 * units.Inch // ours: the book counts from the stem
	found, err := dial.RimFace{
		Carrier: align.Stationary,
		Rim:     dial.Rim{Station: stem, Readings: dial.Quarters(units.Mil, 0, -2, -4, -2)},
		Face:    dial.Face{Diameter: 12 * units.Inch, Readings: dial.Quarters(units.Mil, 0, 1.5, 3, 1.5)},
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, distance := range []units.Length{16 * units.Inch, 36 * units.Inch} {
		fmt.Println(found.Value.Vertical.At(stem+distance).Text(units.InMils, 0))
	}
	// Output:
	// -2 mil
	// -7 mil
}

// A compressor builder's start-up manual, p. 213 (read): the shim that closes an
// angular gap is (bolt to bolt / face diameter) * difference of the gaps, for one
// (30/5) * 0.012 in = 0.072 in. Wider at the top, the rear feet go up by so much
// more than the front ones. The distance to the front feet is ours, and drops
// out.
func ExampleGapSlope_angularStep() {
	slope := dial.GapSlope(12*units.Mil, 0, 5*units.Inch) // at 12, at 6
	found := align.Exact(align.Centreline{Vertical: align.Line{Slope: slope}})
	moves, err := found.Corrections(
		align.Foot{Name: "front", X: 10 * units.Inch},
		align.Foot{Name: "rear", X: (10 + 30) * units.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	step := moves[1].By.Vertical - moves[0].By.Vertical
	fmt.Println("slope", slope.Text(units.InMilsPerInch, 1))
	fmt.Println("rear feet up by", step.Text(units.InInches, 3))
	// Output:
	// slope -2.4 mil/in
	// rear feet up by 0.072 in
}

// J. Piotrowski, Shaft Alignment Handbook, 3rd edition, ch. 8, fig. 8.10
// (second-hand): two sweeps in mils, zeroed at the top, that satisfy
// top + bottom = east + west, and the same sweeps zeroed at the east. The figure
// does not fix which side east is; 3 o'clock here is our choice.
func ExampleMiss_piotrowski() {
	const mil = units.Mil
	for _, s := range []struct{ top, east, west, bottom units.Length }{
		{0, -50 * mil, 10 * mil, -40 * mil},
		{0, 30 * mil, -10 * mil, 20 * mil},
	} {
		fmt.Println("misses by", dial.Miss(s.top, s.east, s.bottom, s.west).Text(units.InMils, 0))
		for _, r := range []units.Length{s.top, s.east, s.west, s.bottom} {
			fmt.Println("  from the east", (r-s.east).Text(units.InMils, 0))
		}
	}
	// Output:
	// misses by 0 mil
	//   from the east 50 mil
	//   from the east 0 mil
	//   from the east 60 mil
	//   from the east 10 mil
	// misses by 0 mil
	//   from the east -30 mil
	//   from the east 0 mil
	//   from the east -40 mil
	//   from the east -10 mil
}

// A pump handbook, fig. 19A-D (second-hand): a bracket that sags 3 mils read
// bottom +10, right +5, left +5 mils, zeroed at the top; corrected they are +16,
// +8 and +8, and the vertical offset is 8 mils in size. Which way follows from
// the shaft that carries the dial.
func ExampleRim_sag() {
	rim := dial.Rim{Sag: 3 * units.Mil, Readings: dial.Quarters(units.Mil, 0, 5, 10, 5)}
	for _, carrier := range []align.Shaft{align.Movable, align.Stationary} {
		found, err := dial.RimFace{
			Carrier: carrier,
			Rim:     rim,
			Face:    dial.Face{Diameter: 5 * units.Inch, Readings: dial.Quarters(units.Mil, 0, 1, 2, 1)}, // ours
		}.Solve()
		if err != nil {
			fmt.Println(err)
			return
		}
		q := found.Checks[0].Quarters
		fmt.Printf("carried by the %v shaft: offset %s; bottom %s, right %s, left %s\n", carrier,
			found.Value.Vertical.At(0).Text(units.InMils, 0), (q[2]-q[0]).Text(units.InMils, 0),
			(q[1]-q[0]).Text(units.InMils, 0), (q[3]-q[0]).Text(units.InMils, 0))
	}
	// Output:
	// carried by the movable shaft: offset 8 mil; bottom 16 mil, right 8 mil, left 8 mil
	// carried by the stationary shaft: offset -8 mil; bottom 16 mil, right 8 mil, left 8 mil
}

// US Bureau of Reclamation, FIST 4-1A, Maintenance Scheduling for Mechanical
// Equipment, p. 17 (read): turning the bar from top to bottom reads twice the
// sag, and twice the sag is added to the rim's reading at the bottom. The numbers
// are ours.
func ExampleMandrelSag_bureauOfReclamation() {
	sag := dial.MandrelSag(0, -6*units.Mil)
	fmt.Println("sag", sag.Text(units.InMils, 0))

	rim := dial.Rim{Sag: sag, Readings: dial.Quarters(units.Mil, 0, 1, 2, 1)}
	face := dial.Face{Diameter: 5 * units.Inch, Readings: dial.Quarters(units.Mil, 0, 1, 2, 1)}
	found, err := dial.RimFace{Carrier: align.Stationary, Rim: rim, Face: face}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	q := found.Checks[0].Quarters
	fmt.Println("bottom, zeroed at the top", (q[2]-q[0]).Text(units.InMils, 0))
	// Output:
	// sag 3 mil
	// bottom, zeroed at the top 8 mil
}
