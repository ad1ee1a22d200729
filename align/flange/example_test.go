package flange_test

import (
	"errors"
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
)

// A motor stands on the lantern of a pump, on four bolts of a circle of 400 mm. The
// pump is the stationary machine, so x points up, and shims lift the motor. Its shaft
// leans towards 3 by 1 mm/m; 12 is where the terminal box is.
func ExampleFlange_Correct() {
	motor := flange.Flange{
		Face: 400 * units.Millimetre, Push: flange.AwayFromStationary, Clearance: units.Millimetre,
		Bolts: []flange.Bolt{
			{Name: "bolt 1", Radius: 200 * units.Millimetre, At: units.Twelve},
			{Name: "bolt 2", Radius: 200 * units.Millimetre, At: units.Three},
			{Name: "bolt 3", Radius: 200 * units.Millimetre, At: units.Six},
			{Name: "bolt 4", Radius: 200 * units.Millimetre, At: units.Nine},
		},
	}
	found := align.Centreline{Horizontal: align.Line{Slope: units.MillimetrePerMetre}}
	target := align.Centreline{}
	c, err := motor.Correct(align.Exact(found).Minus(align.Exact(target)))
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range c.Shims {
		fmt.Println(s)
	}
	fmt.Println(c.Slide.Text(align.Style{Twelve: "the terminal box"}))
	fmt.Println("along the shaft:", c.Axial)
	fmt.Println("in its rabbet the slide", c.Rabbet)
	// Output:
	// bolt 1: add 0.20 mm
	// bolt 2: add 0.40 mm
	// bolt 3: add 0.20 mm
	// bolt 4: leave
	// flange: push 0.40 mm towards 9 o'clock
	// along the shaft: 0.2 mm
	// in its rabbet the slide fits
}

// Bolts on one side alone leave a slope that nothing holds.
func ExampleFlange_Correct_refused() {
	f := flange.Flange{
		Face: 300 * units.Millimetre,
		Bolts: []flange.Bolt{
			{Name: "a", Radius: 150 * units.Millimetre, At: units.Twelve},
			{Name: "b", Radius: 90 * units.Millimetre, At: units.Twelve},
			{Name: "c", Radius: 150 * units.Millimetre, At: units.Six},
		},
	}
	_, err := f.Correct(align.Estimate{})
	for _, fault := range units.Faults(err) {
		fmt.Println(fault)
	}
	// Output:
	// /push: want which way a thicker shim pushes the movable machine (missing)
	// /bolts: want bolts that do not stand in one line, which holds no slope across it (conflict)
}

// All of a correction, in mils, for a gear motor that lies on a flange and whose
// rabbet is too tight.
func ExampleCorrection_Text() {
	f := flange.Flange{
		Face: 10 * units.Inch, Push: flange.AwayFromStationary, Clearance: 4 * units.Mil,
		Bolts: []flange.Bolt{
			{Name: "A", Radius: 5 * units.Inch, At: 0}, {Name: "B", Radius: 5 * units.Inch, At: 120},
			{Name: "C", Radius: 5 * units.Inch, At: 240},
		},
	}
	off := align.Centreline{Vertical: align.Line{Offset: -2 * units.Mil, Slope: 0.8 * units.MilPerInch}}
	c, err := f.Correct(align.Exact(off))
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Text(align.Style{Unit: units.InMils}))
	fmt.Println(c.Warnings[0].Code)
	// Output:
	// A: add 6.0 mil
	// B: leave
	// C: leave
	// flange: lower 6.0 mil, leave sideways
	// machine: goes 2.0 mil away from the stationary one
	// rabbet: in the way by 4.0 mil
	// unreachable
}

// A shim with what it is worth: uncertain against the thinnest one, which is zero by
// choice.
func ExampleShim_Text() {
	u := align.Line{Offset: 5 * units.Micrometre, Slope: units.MillimetrePerMetre / 20}
	cov, err := align.NewCovariance(align.Stated, align.Centreline{Horizontal: u, Vertical: u},
		[4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}})
	if err != nil {
		log.Fatal(err)
	}
	f := flange.Flange{
		Face: 250 * units.Millimetre, Push: flange.TowardsStationary,
		Bolts: []flange.Bolt{
			{Name: "upper", Radius: 150 * units.Millimetre, At: units.Twelve},
			{Name: "right", Radius: 150 * units.Millimetre, At: 4 * units.Hour},
			{Name: "left", Radius: 150 * units.Millimetre, At: 8 * units.Hour},
		},
	}
	off := align.Estimate{Value: align.Centreline{Vertical: align.Line{Slope: -units.MillimetrePerMetre}}, Cov: cov}
	c, err := f.Correct(off)
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range c.Shims {
		fmt.Println(s.Text(align.Style{Digits: 3}), "+/-", s.U.Text(units.InMillimetres, 3))
	}
	// Output:
	// upper: add 0.225 mm +/- 0.013 mm
	// right: leave +/- 0.000 mm
	// left: leave +/- 0.013 mm
}

// The flange of a motor with a spigot of 350 mm, by dial over a full turn.
func ExampleRunout() {
	limit, err := flange.Runout(350 * units.Millimetre)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(limit.Limit, "for spigots over", limit.From, "up to", limit.UpTo)
	fmt.Println(limit.Source)
	_, err = flange.Runout(3 * units.Metre)
	fmt.Println(errors.Is(err, units.OutOfRange))
	// Output:
	// 0.125 mm for spigots over 230 mm up to 450 mm
	// EASA AR100-2020, table 2-11, IEC flange-mounted machines (read)
	// true
}

// Spigot and face are held against the same limit, one after the other.
func ExampleRunoutLimit_Within() {
	limit, err := flange.Runout(350 * units.Millimetre)
	if err != nil {
		log.Fatal(err)
	}
	eccentricity, err := limit.Within(125 * units.Micrometre)
	if err != nil {
		log.Fatal(err)
	}
	face, err := limit.Within(130 * units.Micrometre)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("eccentricity within:", eccentricity)
	fmt.Println("face runout within:", face)
	// Output:
	// eccentricity within: true
	// face runout within: false
}
