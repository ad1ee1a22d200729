package softfoot_test

import (
	"fmt"
	"log"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// Two feet across from each other lift: the frame stands on the other two. Which
// of the two is short the lifts do not tell, so there is a choice, and each way
// moves the shaft differently.
func ExampleSurvey_Judge() {
	feet := []softfoot.Foot{
		{Name: "inboard left", X: 350 * units.Millimetre, Y: -180 * units.Millimetre, Lift: 120 * units.Micrometre},
		{Name: "inboard right", X: 350 * units.Millimetre, Y: 180 * units.Millimetre, Lift: 20 * units.Micrometre},
		{Name: "outboard left", X: 900 * units.Millimetre, Y: -180 * units.Millimetre, Lift: 20 * units.Micrometre},
		{Name: "outboard right", X: 900 * units.Millimetre, Y: 180 * units.Millimetre, Lift: 120 * units.Micrometre},
	}
	found, err := softfoot.Survey{Feet: feet, Height: 250 * units.Millimetre}.Judge(softfoot.Limits{})
	if err != nil {
		log.Fatal(err)
	}
	for _, e := range found.Fits {
		fmt.Println(e.Kind, e.Feet)
	}
	for _, way := range found.Advice {
		for _, s := range way.Shims {
			fmt.Print(s.Foot, ": ", s.Flat.Text(units.InMillimetres, 2), "; ")
		}
		fmt.Println("raises the shaft at the coupling by", way.Shift.Up.Text(units.InMillimetres, 3),
			"and moves it towards 3 o'clock by", way.Shift.Sideways.Text(units.InMillimetres, 3))
	}
	// Output:
	// parallel [inboard left outboard right]
	// inboard left: 0.10 mm; raises the shaft at the coupling by 0.082 mm and moves it towards 3 o'clock by 0.035 mm
	// outboard right: 0.10 mm; raises the shaft at the coupling by -0.032 mm and moves it towards 3 o'clock by -0.035 mm
	// inboard left: 0.05 mm; outboard right: 0.05 mm; raises the shaft at the coupling by 0.025 mm and moves it towards 3 o'clock by 0.000 mm
}

// Both feet of one end lift. No pads make a flat frame do that.
func ExampleSurvey_Judge_induced() {
	feet := []softfoot.Foot{
		{Name: "inboard left", X: 350 * units.Millimetre, Y: -180 * units.Millimetre, Lift: 110 * units.Micrometre},
		{Name: "inboard right", X: 350 * units.Millimetre, Y: 180 * units.Millimetre, Lift: 90 * units.Micrometre},
		{Name: "outboard left", X: 900 * units.Millimetre, Y: -180 * units.Millimetre},
		{Name: "outboard right", X: 900 * units.Millimetre, Y: 180 * units.Millimetre, Lift: 10 * units.Micrometre},
	}
	found, err := softfoot.Survey{Feet: feet, Height: 250 * units.Millimetre}.Judge(softfoot.Limits{})
	if err != nil {
		log.Fatal(err)
	}
	for _, e := range found.Fits {
		fmt.Println(e.Kind, e.Feet)
	}
	for _, n := range found.Next {
		fmt.Println("next:", n.Check)
	}
	fmt.Println("ways to cure with shims:", len(found.Advice))
	// Output:
	// induced [inboard left inboard right]
	// springing [inboard left inboard right]
	// next: part_loads
	// next: renew_packing
	// ways to cure with shims: 0
}

// A feeler under the corners of one foot finds it open on the far side.
func ExampleTaper() {
	half := 30 * units.Millimetre
	feet := []softfoot.Foot{
		{Name: "inboard left", X: 350 * units.Millimetre, Y: -180 * units.Millimetre},
		{Name: "inboard right", X: 350 * units.Millimetre, Y: 180 * units.Millimetre},
		{Name: "outboard left", X: 900 * units.Millimetre, Y: -180 * units.Millimetre},
		{Name: "outboard right", X: 900 * units.Millimetre, Y: 180 * units.Millimetre, Gaps: []softfoot.Gap{
			{X: -half, Y: -half}, {X: half, Y: -half, Gap: 150 * units.Micrometre},
			{X: -half, Y: half}, {X: half, Y: half, Gap: 150 * units.Micrometre},
		}},
	}
	found, err := softfoot.Survey{Feet: feet, Height: 250 * units.Millimetre}.Judge(softfoot.Limits{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(found.Fits[0].Kind, found.Fits[0].Feet)
	taper := found.Advice[0].Shims[0].Stepped
	fmt.Println("stepped up to", taper.Rise.Text(units.InMillimetres, 2), "rising along the shaft by", taper.Along.Text(units.InMillimetresPerMetre, 1), "and across by", taper.Across.Text(units.InMillimetresPerMetre, 1))
	// Output:
	// angular [outboard right]
	// stepped up to 0.15 mm rising along the shaft by 2.5 mm/m and across by 0.0 mm/m
}

// The shaft rose by 0.06 mm and went 0.02 mm towards 9 o'clock at the station of a
// foot on the 3 o'clock side as its bolt came loose.
func ExampleAtShaft_Rolling() {
	seen := softfoot.AtShaft{Y: 180 * units.Millimetre, Up: 60 * units.Micrometre, Sideways: -20 * units.Micrometre}
	lift, err := seen.Rolling(250 * units.Millimetre)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(lift.Text(units.InMillimetres, 4))
	// Output:
	// 0.0744 mm
}

// The same foot, taken to swing about the one across from it, 180 mm on the other
// side: the foot rises twice as far as the shaft.
func ExampleAtShaft_Hinged() {
	seen := softfoot.AtShaft{Y: 180 * units.Millimetre, Up: 60 * units.Micrometre}
	lift, err := seen.Hinged(-180 * units.Millimetre)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(lift)
	// Output:
	// 0.12 mm
}

// A shift goes into the alignment as a centreline would: what was found plus what
// the shims will do.
func ExampleShift_At() {
	shift := softfoot.Shift{Up: 20 * units.Micrometre, Slope: 0.1 * units.MillimetrePerMetre}
	fmt.Println(shift.At(350 * units.Millimetre))
	// Output:
	// 0.055 mm
}

func ExampleStrains() {
	strains, err := softfoot.Strains(softfoot.PipingLimit,
		softfoot.Release{What: "suction flange", Horizontal: 1 * units.Mil, Vertical: -2 * units.Mil},
		softfoot.Release{What: "discharge flange", Horizontal: 5 * units.Mil})
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range strains {
		fmt.Println(s.Release.What, s.Largest.Text(units.InMils, 1), "over the limit:", s.Over)
	}
	// Output:
	// suction flange 2.0 mil over the limit: false
	// discharge flange 5.0 mil over the limit: true
}

// Two shims of 0.10 mm go under the inboard feet, and the one on the left becomes
// 0.02 mm too thick: the rest rolls the machine.
func ExampleSurvey_Shift() {
	s := softfoot.Survey{Height: 250 * units.Millimetre, Feet: []softfoot.Foot{
		{Name: "inboard left", X: 350 * units.Millimetre, Y: -180 * units.Millimetre},
		{Name: "inboard right", X: 350 * units.Millimetre, Y: 180 * units.Millimetre},
		{Name: "outboard left", X: 900 * units.Millimetre, Y: -180 * units.Millimetre},
		{Name: "outboard right", X: 900 * units.Millimetre, Y: 180 * units.Millimetre},
	}}
	shift, err := s.Shift(
		softfoot.Shim{Foot: "inboard left", Flat: 120 * units.Micrometre},
		softfoot.Shim{Foot: "inboard right", Flat: 100 * units.Micrometre})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("inboard up by", shift.At(350*units.Millimetre).Text(units.InMillimetres, 3))
	fmt.Println("towards 3 o'clock by", shift.Sideways.Text(units.InMillimetres, 3))
	// Output:
	// inboard up by 0.110 mm
	// towards 3 o'clock by 0.007 mm
}
