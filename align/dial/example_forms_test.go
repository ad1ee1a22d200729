package dial_test

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

func ExampleQuarters() {
	for _, r := range dial.Quarters(units.Mil, 0, -7, -14, -7) {
		fmt.Println(r.At, r.Value.Text(units.InMils, 1))
	}
	// Output:
	// 12:00 0.0 mil
	// 3:00 -7.0 mil
	// 6:00 -14.0 mil
	// 9:00 -7.0 mil
}

// A dial that the stationary shaft carries shows +0.30 mm at the bottom, zeroed at
// the top: the movable shaft is low by half of it.
func ExampleHalfTIR() {
	fmt.Println(dial.HalfTIR(0, 0.30*units.Millimetre).Text(units.InMillimetres, 2))
	// Output: -0.15 mm
}

// A near face across 120 mm shows 0.06 mm less at the bottom than at the top: the
// movable shaft climbs away from the coupling.
func ExampleFaceSlope() {
	fmt.Println(dial.FaceSlope(0, -0.06*units.Millimetre, 120*units.Millimetre).Text(units.InMillimetresPerMetre, 1))
	// Output: 0.5 mm/m
}

// Feelers find 3.20 mm at the top and 3.26 mm at the bottom of a 120 mm coupling.
func ExampleGapSlope() {
	slope := dial.GapSlope(3.20*units.Millimetre, 3.26*units.Millimetre, 120*units.Millimetre)
	fmt.Println(slope.Text(units.InMillimetresPerMetre, 1))
	// Output: 0.5 mm/m
}

// One of four readings was written down wrong.
func ExampleMiss() {
	const mm = units.Millimetre
	fmt.Println(dial.Miss(0, 0.05*mm, 0.14*mm, 0.06*mm).Text(units.InMillimetres, 2))
	// Output: 0.03 mm
}

// A pipe is in the way at 9 o'clock; the other three give the reading there.
func ExampleFourth() {
	const mm = units.Millimetre
	at12, at3, at6 := 0*mm, 0.05*mm, 0.14*mm
	fmt.Println(dial.Fourth(at3, at12, at6).Text(units.InMillimetres, 2))
	// Output: 0.09 mm
}

// The bracket is clamped on a piece of stiff pipe and turned from top to bottom.
func ExampleMandrelSag() {
	fmt.Println(dial.MandrelSag(0, -0.14*units.Millimetre).Text(units.InMillimetres, 2))
	// Output: 0.07 mm
}

// The dial showed +0.20 mm at the bottom, zeroed at the top, on a bracket that hangs down
// by 0.07 mm: without it 12 o'clock reads less, and 6 o'clock more.
func ExampleWithoutSag() {
	const mm = units.Millimetre
	fmt.Println(dial.WithoutSag(0, 0.07*mm, units.Twelve).Text(units.InMillimetres, 2))
	fmt.Println(dial.WithoutSag(0.20*mm, 0.07*mm, units.Six).Text(units.InMillimetres, 2))
	// Output:
	// -0.07 mm
	// 0.27 mm
}

// Only the motor's shaft would turn, so the dial saw the pump's rim run out too.
// It was then held at 12 while the pump was turned by hand.
func ExampleRemoveRunout() {
	swept := dial.Quarters(units.Millimetre/100, 0, 9, 20, 11)
	runout := []align.Reading{
		{At: 0, Value: 0},
		{At: units.Three, Value: 20 * units.Micrometre}, // turned clockwise by a quarter
		{At: units.Six, Value: 40 * units.Micrometre},
		{At: units.Nine, Value: 20 * units.Micrometre},
	}
	clean, err := dial.RemoveRunout(swept, units.Twelve, runout)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range clean {
		fmt.Println(r.At, r.Value.Text(units.InMillimetres, 2))
	}
	// Output:
	// 12:00 0.00 mm
	// 3:00 0.07 mm
	// 6:00 0.16 mm
	// 9:00 0.09 mm
}

// Two answers, the pump's shaft turned by half a turn in between.
func ExampleSeparateRunout() {
	first := align.Exact(align.Centreline{Vertical: align.Line{Offset: 0.17 * units.Millimetre}})
	second := align.Exact(align.Centreline{Vertical: align.Line{Offset: 0.11 * units.Millimetre}})
	misalignment, runout := dial.SeparateRunout(first, second)
	fmt.Println(misalignment.Value.Vertical.Offset.Text(units.InMillimetres, 2))
	fmt.Println(runout.Value.Vertical.Offset.Text(units.InMillimetres, 2))
	// Output:
	// 0.14 mm
	// 0.03 mm
}

// A sleeve bearing lets the motor float by tenths while it is turned. Two dials,
// opposite one another, both see it.
func ExampleWithoutFloat() {
	const mm = units.Millimetre
	a := dial.Face{Diameter: 160 * mm, Readings: dial.Quarters(mm/100, 0, 32, -18, 6)}
	b := dial.Face{Diameter: 140 * mm, Readings: []align.Reading{
		{At: units.Six, Value: 0}, // when dial a stood at 12
		{At: units.Nine, Value: 0.295 * mm},
		{At: units.Twelve, Value: -0.105 * mm},
		{At: units.Three, Value: 0.110 * mm},
	}}
	pair, err := dial.WithoutFloat(a, b)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("across", pair.Diameter)
	for _, r := range pair.Readings {
		fmt.Println(r.At, r.Value.Text(units.InMillimetres, 3))
	}
	// Output:
	// across 300 mm
	// 12:00 0.000 mm
	// 3:00 0.025 mm
	// 6:00 -0.075 mm
	// 9:00 -0.050 mm
}

// "Set the motor 0.05 mm low, coupling gap 0.02 mm open at the top."
func ExampleTarget_Centreline() {
	target, err := dial.Target{
		High:     -0.05 * units.Millimetre,
		Opening:  0.02 * units.Millimetre,
		OpenAt:   units.Twelve,
		Diameter: 200 * units.Millimetre,
	}.Centreline()
	if err != nil {
		fmt.Println(err)
		return
	}
	show(target)
	// Output:
	// horizontal: offset 0.000 mm, slope 0.00 mm/m
	// vertical: offset -0.050 mm, slope -0.10 mm/m
}
