package train_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// exampleTrain is a motor, a gearbox that stays and a pump. The pump stands 0.60 mm
// too high and its base leaves 0.40 mm to take out from under its inboard feet.
func exampleTrain() train.Train {
	limits := tolerance.Limits{Offset: 50 * units.Micrometre, Slope: 0.5 * units.MillimetrePerMetre}
	high := align.Centreline{Vertical: align.Line{Offset: 600 * units.Micrometre}}
	aside := align.Centreline{Horizontal: align.Line{Offset: -40 * units.Micrometre, Slope: 0.4 * units.MillimetrePerMetre}}
	return train.Train{
		Machines: []train.Machine{
			{Name: "motor", Feet: []train.Foot{
				{Name: "outboard", X: 200 * units.Millimetre},
				{Name: "inboard", X: 800 * units.Millimetre}}},
			{Name: "gearbox"}, // it stays, so its feet are not needed
			{Name: "pump", Feet: []train.Foot{
				{Name: "inboard", X: 2200 * units.Millimetre, Vertical: train.AtLeast(-400 * units.Micrometre)},
				{Name: "outboard", X: 3000 * units.Millimetre}}},
		},
		Joints: []train.Joint{
			{Coupling: align.Coupling{Name: "high speed"}, At: 1000 * units.Millimetre, Found: align.Exact(aside), Limits: limits},
			{Coupling: align.Coupling{Name: "low speed"}, At: 2000 * units.Millimetre, Found: align.Exact(high), Limits: limits},
		},
		Reference: "gearbox",
	}
}

// With 0.40 mm to take out the pump cannot come down by 0.60 mm. The best is to tilt
// it, which the coupling does not allow yet: 0.05 mm more would have to come out.
func ExampleTrain_Plan() {
	plan, err := exampleTrain().Plan(train.TotalTravel)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%v, worst ratio %.2f\n", plan.Reach, plan.Ratio)
	for _, step := range plan.Steps {
		fmt.Printf("%v (%s)\n", step, step.Because())
	}
	for _, block := range plan.InTheWay {
		fmt.Printf("%s %s %v %v: open by %v\n", block.Machine, block.Foot, block.Plane, block.Side, block.Alone.Text(units.InMillimetres, 2))
	}
	// Output:
	// out_of_reach, worst ratio 1.33
	// pump inboard: lower 0.40 mm (next to gearbox, which stands)
	// pump outboard: raise 0.13 mm (while pump is loose)
	// pump inboard vertical low: open by 0.05 mm
}

func ExampleTrain_Centrelines() {
	lines, err := exampleTrain().Centrelines()
	if err != nil {
		log.Fatal(err)
	}
	for i, m := range exampleTrain().Machines {
		for _, f := range m.Feet {
			w := lines[i].Value.At(f.X)
			fmt.Printf("%s %s: %s sideways, %s in height\n", m.Name, f.Name,
				w.Horizontal.Text(units.InMillimetres, 2), w.Vertical.Text(units.InMillimetres, 2))
		}
	}
	// Output:
	// motor outboard: 0.36 mm sideways, 0.00 mm in height
	// motor inboard: 0.12 mm sideways, 0.00 mm in height
	// pump inboard: 0.00 mm sideways, 0.60 mm in height
	// pump outboard: 0.00 mm sideways, 0.60 mm in height
}

func ExampleTrain_Validate() {
	t := exampleTrain()
	t.Machines[2].Feet[0].Vertical = train.Between(2*units.Millimetre, 1*units.Millimetre)
	t.Machines[2].Feet[1].Name = "inboard"
	for _, fault := range units.Faults(t.Validate()) {
		fmt.Println(fault.Code, fault.Path)
	}
	// Output:
	// conflict /machines/2/feet/0/vertical/at_least
	// duplicate /machines/2/feet/1/name
}

// The pump will grow by 0.25 mm, so it is to stand that much lower when cold.
func ExampleJoint_Off() {
	joint := train.Joint{
		Found:  align.Exact(align.Centreline{Vertical: align.Line{Offset: 100 * units.Micrometre}}),
		Target: align.Exact(align.Centreline{Vertical: align.Line{Offset: -250 * units.Micrometre}}),
	}
	fmt.Println(joint.Off().Value.Vertical.Offset)
	// Output: 0.35 mm
}

func ExampleFixed() {
	low, _ := train.Fixed().Low()
	high, _ := train.Fixed().High()
	fmt.Println(low, high)
	// Output: 0 mm 0 mm
}

// Bolt-bound: 1.5 mm towards 9 o'clock, 0.8 mm towards 3 o'clock.
func ExampleBetween() {
	limit := train.Between(-1.5*units.Millimetre, 0.8*units.Millimetre)
	low, _ := limit.Low()
	high, _ := limit.High()
	fmt.Println(low, high)
	// Output: -1.5 mm 0.8 mm
}

// Base-bound: 0.4 mm of shims can come out, as much as is wanted can go in.
func ExampleAtLeast() {
	limit := train.AtLeast(-0.4 * units.Millimetre)
	low, bound := limit.Low()
	fmt.Println(low, bound)
	_, bound = limit.High()
	fmt.Println(bound)
	// Output:
	// -0.4 mm true
	// false
}

// Under a ceiling: the machine can rise by 2 mm.
func ExampleAtMost() {
	limit := train.AtMost(2 * units.Millimetre)
	high, bound := limit.High()
	fmt.Println(high, bound)
	// Output: 2 mm true
}

// The zero limit is free.
func ExampleLimit_Low() {
	var free train.Limit
	_, bound := free.Low()
	fmt.Println(bound)
	// Output: false
}

func ExampleLimit_High() {
	high, bound := train.Between(0, 2*units.Millimetre).High()
	fmt.Println(high, bound)
	// Output: 2 mm true
}

func ExampleStep_Text() {
	step := train.Step{Machine: "pump", Foot: "inboard", Plane: tolerance.Horizontal, By: 0.27 * units.Millimetre}
	fmt.Println(step.Text(align.Style{}))
	fmt.Println(step.Text(align.Style{Unit: units.InMils, Three: "the river"}))
	// Output:
	// pump inboard: push 0.27 mm towards 3 o'clock
	// pump inboard: push 10.6 mil towards the river
}

func ExampleStep_Because() {
	step := train.Step{Machine: "pump", Why: train.BesideOneThatIs, Beside: "gearbox"}
	fmt.Println(step.Because())
	// Output: next to gearbox, which stands
}
