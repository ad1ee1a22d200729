package align_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// W at the two feet of a machine, off a drawing.
func ExampleThrough() {
	l, err := align.Through(
		align.Point{X: 300 * units.Millimetre, W: 40 * units.Micrometre},
		align.Point{X: 900 * units.Millimetre, W: 160 * units.Micrometre})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(l.Offset, l.Slope)
	// Output: -0.02 mm 0.2 mm/m
}

func ExampleLine() {
	growth := align.Line{Offset: 30 * units.Micrometre, Slope: 0.05 * units.MillimetrePerMetre}
	fmt.Println(growth.At(400*units.Millimetre), growth.Times(2).Plus(align.Line{Offset: units.Micrometre}).Offset)
	// Output: 0.05 mm 0.061 mm
}

// The misalignment of a pump, 0.12 mm towards 3 o'clock and 0.20 mm low at the
// coupling, at its far foot.
func ExampleCentreline_At() {
	w := pump.At(900 * units.Millimetre)
	fmt.Println(w.Horizontal, w.Vertical)
	// Output: 0.48 mm -0.83 mm
}

var pump = align.Centreline{
	Horizontal: align.Line{Offset: 120 * units.Micrometre, Slope: 0.4 * units.MillimetrePerMetre},
	Vertical:   align.Line{Offset: -200 * units.Micrometre, Slope: -0.7 * units.MillimetrePerMetre},
}

func ExampleCentreline_Tilt() {
	fmt.Println(pump.Tilt().Horizontal, pump.Tilt().Vertical)
	// Output: 0.4 mm/m -0.7 mm/m
}

// After the front is raised 0.20 mm and the rear as much, only the slope is left
// and what stands sideways.
func ExampleCentreline_Plus() {
	raised := pump.Plus(align.Centreline{Vertical: align.Line{Offset: 200 * units.Micrometre}})
	fmt.Println(raised.Vertical.Offset, raised.Vertical.Slope)
	// Output: 0 mm -0.7 mm/m
}

func ExampleCentreline_Minus() {
	target := align.Centreline{Vertical: align.Line{Offset: -150 * units.Micrometre}}
	fmt.Println(pump.Minus(target).Vertical.Offset)
	// Output: -0.05 mm
}

func ExampleCentreline_Times() {
	half := pump.Times(0.5)
	fmt.Println(half.Horizontal.Offset, half.Vertical.Slope)
	// Output: 0.06 mm -0.35 mm/m
}

// Calling the other machine the movable one, seen from the other end: the motor
// stands as much high as the pump was low.
func ExampleCentreline_Exchanged() {
	motor := pump.Exchanged()
	fmt.Println(motor.Horizontal.Offset, motor.Horizontal.Slope)
	fmt.Println(motor.Vertical.Offset, motor.Vertical.Slope)
	// Output:
	// 0.12 mm -0.4 mm/m
	// 0.2 mm -0.7 mm/m
}

func ExampleVector_Size() {
	v := align.Vector{Horizontal: 30 * units.Micrometre, Vertical: 40 * units.Micrometre}
	fmt.Println(v.Size())
	// Output: 0.05 mm
}

// Low and towards 3 is half past four.
func ExampleVector_Direction() {
	v := align.Vector{Horizontal: 50 * units.Micrometre, Vertical: -50 * units.Micrometre}
	fmt.Println(v.Direction().Round(units.Minute))
	// Output: 4:30
}

func ExampleTilt_Size() {
	t := align.Tilt{Horizontal: 0.3 * units.MillimetrePerMetre, Vertical: 0.4 * units.MillimetrePerMetre}
	fmt.Println(t.Size().Text(units.InMillimetresPerMetre, 2))
	// Output: 0.50 mm/m
}

func ExampleTilt_Direction() {
	t := align.Tilt{Horizontal: -0.3 * units.MillimetrePerMetre}
	fmt.Println(t.Direction())
	// Output: 9:00
}

// A slope of 1 mm/m that climbs away from the coupling opens 0.15 mm across 150
// mm, at the bottom.
func ExampleCoupling_Gap() {
	k := align.Coupling{Diameter: 150 * units.Millimetre}
	opening, at, err := k.Gap(align.Centreline{Vertical: align.Line{Slope: units.MillimetrePerMetre}})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(opening, "open at", at)
	// Output: 0.15 mm open at 6:00
}

// The angles that the two flex planes of a spacer coupling have to take.
func ExampleCoupling_FlexTilts() {
	k := align.Coupling{Span: 800 * units.Millimetre}
	stationary, movable, err := k.FlexTilts(pump)
	if err != nil {
		log.Fatal(err)
	}
	show := func(t align.Tilt) string {
		return t.Horizontal.Text(units.InMillimetresPerMetre, 2) + ", " + t.Vertical.Text(units.InMillimetresPerMetre, 2)
	}
	fmt.Println(show(stationary))
	fmt.Println(show(movable))
	// Output:
	// 0.35 mm/m, -0.60 mm/m
	// 0.05 mm/m, -0.10 mm/m
}

// Face dials on both joints of a spacer gave these angles.
func ExampleCoupling_FromFlexTilts() {
	k := align.Coupling{Span: 800 * units.Millimetre}
	c, err := k.FromFlexTilts(
		align.Tilt{Vertical: -0.60 * units.MillimetrePerMetre},
		align.Tilt{Vertical: -0.10 * units.MillimetrePerMetre})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Vertical.Offset.Text(units.InMillimetres, 2), c.Vertical.Slope.Text(units.InMillimetresPerMetre, 2))
	// Output: -0.20 mm -0.70 mm/m
}

// A compressor builder's start-up manual, p. 213 (read): across a face of 5 in
// the gap is 0.012 in wider at the top, and the bolts are 30 in apart. Printed:
// 0.072 in of shims, under the rear feet.
func ExampleSlopeFromGap() {
	tilt, err := align.SlopeFromGap(12*units.Mil, units.Twelve, 5*units.Inch)
	if err != nil {
		log.Fatal(err)
	}
	front := align.Foot{Name: "front"}
	rear := align.Foot{Name: "rear", X: 30 * units.Inch}
	moves, err := align.Exact(align.Centreline{Vertical: align.Line{Slope: tilt.Vertical}}).Corrections(front, rear)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(moves[1].Text(align.Style{Unit: units.InInches, Digits: 3}))
	// Output: rear: raise 0.072 in, leave sideways
}

// A crew behind the stationary machine calls 3 what the library calls 9.
func ExampleView_Clock() {
	fmt.Println(align.FromStationary.Clock(units.Three).Normal())
	fmt.Println(align.FromMovable.Clock(units.Three))
	// Output:
	// 9:00
	// 3:00
}

func ExampleMove_Text() {
	m := align.Move{
		Foot: align.Foot{Name: "drive end"},
		By:   align.Vector{Horizontal: -270 * units.Micrometre, Vertical: 210 * units.Micrometre},
	}
	fmt.Println(m)
	fmt.Println(m.Text(align.Style{Unit: units.InMils}))
	// Output:
	// drive end: raise 0.21 mm, push 0.27 mm towards 9 o'clock
	// drive end: raise 8.3 mil, push 10.6 mil towards 9 o'clock
}

// The crew stands at the stationary end, north on its right hand, and reads in
// micrometres. On a vertical machine the mark at 12 has a name as well.
func ExampleStyle() {
	m := align.Move{By: align.Vector{Horizontal: -270 * units.Micrometre, Vertical: 210 * units.Micrometre}}
	fmt.Println(m.Text(align.Style{Unit: units.InMicrometres, View: align.FromStationary, Three: "north", Nine: "south"}))
	fmt.Println(m.Text(align.Style{Twelve: "the ladder", Six: "the wall", Three: "the door", Nine: "the window"}))
	// Output:
	// raise 210 um, push 270 um towards north
	// push 0.21 mm towards the ladder, push 0.27 mm towards the window
}
