package thermal_test

import (
	"errors"
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// R. B. McMillan, Rotating Machinery: Practical Solutions to Unbalance and
// Misalignment, Fairmont, 2004, example 8-3, pp. 137-141, with the coefficient of
// table 8-3, p. 134 (read): legs of 17 in and 22 in, cold at 78 F, running at a
// mean of 106 F and 138 F. Printed: growth 2.99 and 8.3 mils, which are 2.9988
// and 8.316; and with the feet found 2 and 7 mils low, +1 and +1 mil when hot. Only
// 28 and 60 degrees F count: with the 32 of a point on the scale nothing would
// come out right.
func ExampleGrowth() {
	steel, err := thermal.FindMaterial("steel")
	if err != nil {
		log.Fatal(err)
	}
	inboard := thermal.Support{Name: "inboard", X: 16 * units.Inch, Pieces: []thermal.Piece{{
		Height: 17 * units.Inch, Material: steel, Rise: 28 * units.FahrenheitDegree,
	}}}
	outboard := thermal.Support{Name: "outboard", X: 36 * units.Inch, Pieces: []thermal.Piece{{
		Height: 22 * units.Inch, Material: steel, Cold: units.Fahrenheit(78),
		Profile: []thermal.Spot{{Running: units.Fahrenheit(138)}}, // one spot is the mean
	}}}
	growth, err := thermal.Growth(inboard, outboard)
	if err != nil {
		log.Fatal(err)
	}
	found, err := align.Through(
		align.Point{X: inboard.X, W: -2 * units.Mil},
		align.Point{X: outboard.X, W: -7 * units.Mil})
	if err != nil {
		log.Fatal(err)
	}
	hot := align.Exact(align.Centreline{Vertical: found}).Plus(growth)
	for _, s := range []thermal.Support{inboard, outboard} {
		grown, _ := growth.At(s.X)
		runs, _ := hot.At(s.X)
		fmt.Println(s.Name, "grows", grown.Vertical.Text(units.InMils, 4)+", runs", runs.Vertical.Text(units.InMils, 0), "high")
	}
	fmt.Println("uncertainty:", growth.Cov.Basis)
	// Output:
	// inboard grows 2.9988 mil, runs 1 mil high
	// outboard grows 8.3160 mil, runs 1 mil high
	// uncertainty: unknown
}

// A fan casing on four pedestals along its shaft, one of them beside the hot
// inlet.
func ExampleGrowthWithin() {
	steel, err := thermal.FindMaterial("steel")
	if err != nil {
		log.Fatal(err)
	}
	var supports []thermal.Support
	for i, rise := range []units.TemperatureDifference{20, 24, 41, 32} {
		supports = append(supports, thermal.Support{
			Name: string(rune('A' + i)), X: units.Length(400+500*i) * units.Millimetre,
			Pieces: []thermal.Piece{{Height: 800 * units.Millimetre, Material: steel, Rise: rise * units.Kelvin}},
		})
	}
	_, err = thermal.Growth(supports...)
	fmt.Println(errors.Is(err, units.Conflict), err)

	growth, err := thermal.GrowthWithin(0.15*units.Millimetre, supports...)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("climbing away by", growth.Value.Vertical.Slope.Text(units.InMillimetresPerMetre, 3))
	// Output:
	// true /supports/2: want supports that grow along one line, to 0.0508 mm, got C, 0.083 mm off the line (conflict)
	// climbing away by 0.096 mm/m
}

// A turbine's pedestal with steam pipes on one side: the leg at 3 o'clock gets
// 30 K warmer than the other, lifts the shaft by half of the difference and rolls
// it towards 9.
func ExampleSupport_Growth() {
	steel, err := thermal.FindMaterial("steel")
	if err != nil {
		log.Fatal(err)
	}
	leg := func(rise units.TemperatureDifference) []thermal.Piece {
		return []thermal.Piece{{
			Height: 600 * units.Millimetre, Material: steel, Rise: rise,
			U: thermal.Uncertainty{Temperature: 3 * units.Kelvin},
		}}
	}
	support := thermal.Support{Three: leg(50 * units.Kelvin), Nine: leg(20 * units.Kelvin), Track: 900 * units.Millimetre}
	by, u, err := support.Growth()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("up", by.Vertical.Text(units.InMillimetres, 3), "+/-", u.Vertical.Text(units.InMillimetres, 3))
	fmt.Println("towards 3", by.Horizontal.Text(units.InMillimetres, 3), "+/-", u.Horizontal.Text(units.InMillimetres, 3))
	// By hand: 0.6 m * 11.34 um/m/K is 6.804 um/K, so the legs grow 0.3402 and 0.1361
	// mm; half the sum is 0.238, and 600/900 of the difference 0.136.

	// Output:
	// up 0.238 mm +/- 0.014 mm
	// towards 3 -0.136 mm +/- 0.019 mm
}

// A motor drives a pump that moves hot oil. The motor stands still on the left,
// its growth is the maker's; the pump is measured with a fixture, cold and
// running. How must the pump lie cold, and what do the dials show then?
func ExampleColdTarget() {
	motor, err := thermal.Growth(
		thermal.Support{Name: "drive end", X: -350 * units.Millimetre, Measured: &thermal.Measured{
			By: align.Vector{Vertical: 120 * units.Micrometre}, U: align.Vector{Vertical: 15 * units.Micrometre}}},
		thermal.Support{Name: "other end", X: -850 * units.Millimetre, Measured: &thermal.Measured{
			By: align.Vector{Vertical: 100 * units.Micrometre}, U: align.Vector{Vertical: 15 * units.Micrometre}}})
	if err != nil {
		log.Fatal(err)
	}
	pump, err := thermal.Growth(
		thermal.Support{Name: "coupling end", X: 300 * units.Millimetre, Measured: &thermal.Measured{
			By: align.Vector{Horizontal: 30 * units.Micrometre, Vertical: 310 * units.Micrometre},
			U:  align.Vector{Horizontal: 10 * units.Micrometre, Vertical: 10 * units.Micrometre}}},
		thermal.Support{Name: "far end", X: 700 * units.Millimetre, Measured: &thermal.Measured{
			By: align.Vector{Horizontal: 30 * units.Micrometre, Vertical: 290 * units.Micrometre},
			U:  align.Vector{Horizontal: 10 * units.Micrometre, Vertical: 10 * units.Micrometre}}})
	if err != nil {
		log.Fatal(err)
	}
	target := thermal.ColdTarget(motor, pump)
	w, u := target.At(0)
	fmt.Println("at the coupling the pump must lie", w.Vertical.Text(units.InMillimetres, 2), "+/-", u.Vertical.Text(units.InMillimetres, 2))

	dials := dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 100 * units.Millimetre, Sag: 0.02 * units.Millimetre},
		CarriedByMovable:    dial.Rim{Station: -100 * units.Millimetre, Sag: 0.02 * units.Millimetre},
	}
	for _, set := range dials.Sets() {
		readings, err := set.Predict(target.Value, units.Twelve, units.Three, units.Six, units.Nine)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Print("dial carried by the ", set.Probe.Carrier, " shaft:")
		for _, r := range readings {
			fmt.Print("  ", r.At, " ", r.Value.Text(units.InMillimetres, 2))
		}
		fmt.Println()
	}
	// By hand, vertical: the motor's line is at 0.134 mm at the coupling and climbs
	// 0.04 mm/m, the pump's is at 0.325 mm and falls 0.05 mm/m. So the target is -0.182
	// mm at x = 100, where the first dial shows 2 * 0.182 - 2 * 0.02 mm at 6, and -0.200
	// mm at x = -100, where the second shows -2 * 0.200 - 2 * 0.02 mm.

	// Output:
	// at the coupling the pump must lie -0.19 mm +/- 0.03 mm
	// dial carried by the stationary shaft:  12:00 0.00 mm  3:00 0.13 mm  6:00 0.32 mm  9:00 0.19 mm
	// dial carried by the movable shaft:  12:00 0.00 mm  3:00 -0.19 mm  6:00 -0.44 mm  9:00 -0.25 mm
}

// The motor runs 0.15 mm higher than it stands cold, the gearbox 0.22 mm. They
// were found in line when cold.
func ExampleRunning() {
	up := func(rise units.Length) align.Estimate {
		return align.Exact(align.Centreline{Vertical: align.Line{Offset: rise}})
	}
	motor, gearbox := up(150*units.Micrometre), up(220*units.Micrometre)
	running := thermal.Running(align.Estimate{}, motor, gearbox)
	fmt.Println("the gearbox runs", running.Value.Vertical.Offset, "high")

	running = thermal.Running(thermal.ColdTarget(motor, gearbox), motor, gearbox)
	fmt.Println("set to the target it runs", running.Value.Vertical.Offset, "high")
	// Output:
	// the gearbox runs 0.07 mm high
	// set to the target it runs 0 mm high
}

// Each coefficient comes in the unit of its source.
func ExampleMaterials() {
	for _, m := range thermal.Materials()[:2] {
		fmt.Println(m.Name, m.Expansion.Text(units.InPerFahrenheitDegree, 7), m.Expansion.Text(units.InMicrometresPerMetreKelvin, 2))
	}
	fmt.Println(thermal.Materials()[0].Source)
	// Output:
	// steel 0.0000063 1/°F 11.34 um/m/K
	// cast-iron frame 0.0000063 1/°F 11.34 um/m/K
	// R. B. McMillan, Rotating Machinery, Fairmont, 2004, table 8-3, p. 134: steel and cast-iron frames (read)
}

// A coefficient known to 5 % moves front and rear together: the line is
// lifted, and tilted only as far as one end grows more.
func ExampleFindMaterial() {
	aluminium, err := thermal.FindMaterial("aluminium")
	if err != nil {
		log.Fatal(err)
	}
	aluminium.U = aluminium.Expansion / 20
	leg := []thermal.Piece{{Height: 200 * units.Millimetre, Material: aluminium, Rise: 40 * units.Kelvin}}
	growth, err := thermal.Growth(
		thermal.Support{X: 200 * units.Millimetre, Pieces: leg},
		thermal.Support{X: 600 * units.Millimetre, Pieces: leg})
	if err != nil {
		log.Fatal(err)
	}
	u := growth.Cov.Standard().Vertical
	fmt.Println(growth.Value.Vertical.Offset.Text(units.InMillimetres, 3), "+/-", u.Offset.Text(units.InMillimetres, 3))
	fmt.Println(growth.Value.Vertical.Slope.Text(units.InMillimetresPerMetre, 3), "+/-", u.Slope.Text(units.InMillimetresPerMetre, 3))

	_, err = thermal.FindMaterial("unobtainium")
	fmt.Println(errors.Is(err, units.Unknown))
	// Output:
	// 0.189 mm +/- 0.009 mm
	// 0.000 mm/m +/- 0.000 mm/m
	// true
}
