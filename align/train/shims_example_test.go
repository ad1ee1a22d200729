package train_test

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/shims"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// A pump stands 0.48 mm too low beside a motor that stays. No shim of 0.48 mm is in
// the box, but within 0.05 mm one piece under each foot will do.
func ExampleTrain_PlanShims() {
	const mm = units.Millimetre
	pack := func(name string) train.Pack {
		return train.Pack{Name: name, Now: []shims.Piece{{Marked: 2 * mm, Count: 1}}}
	}
	under := []train.Pack{pack("left"), pack("right")}
	t := train.Train{
		Reference: "motor",
		Machines: []train.Machine{
			{Name: "motor"},
			{Name: "pump", Feet: []train.Foot{
				{Name: "inboard", X: 300 * mm, Under: under},
				{Name: "outboard", X: 800 * mm, Under: under},
			}},
		},
		Joints: []train.Joint{{
			Found:  align.Exact(align.Centreline{Vertical: align.Line{Offset: -0.48 * mm}}),
			Limits: tolerance.Limits{Offset: 0.05 * mm, Slope: 0.5 * units.MillimetrePerMetre},
		}},
	}
	plan, err := t.PlanShims(train.TotalTravel, shims.CommonMetric(10), shims.Rule{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, step := range plan.Plan.Steps {
		fmt.Println(step)
	}
	for _, stack := range plan.Stacks {
		fmt.Println(stack.Foot, "in:", stack.In[0].Marked)
	}
	fmt.Printf("%v, ratio %.2f, %d pieces handled, proven %v\n", plan.Plan.Reach, plan.Plan.Ratio, plan.Handled, plan.Proven)
	// Output:
	// pump inboard: raise 0.50 mm
	// pump outboard: raise 0.50 mm
	// pump inboard left in: 0.5 mm
	// pump inboard right in: 0.5 mm
	// pump outboard left in: 0.5 mm
	// pump outboard right in: 0.5 mm
	// within_limits, ratio 0.40, 4 pieces handled, proven true
}
