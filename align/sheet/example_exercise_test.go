package sheet_test

import (
	"fmt"
	"log"
	"strings"

	"example.org/collinear/align/sheet"
)

// A trainer draws an exercise, and has its working at hand.
func ExampleNewExercise() {
	e, err := sheet.NewExercise(7, sheet.WholeJob, sheet.Inch)
	if err != nil {
		log.Fatal(err)
	}
	w, err := e.Problem.Working()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(e.Title)
	for _, step := range w.Steps(e.System) {
		if strings.HasSuffix(step.ID, ".correction") {
			fmt.Printf("%s: %s\n", step.Sought, step.Answer)
		}
	}

	// The trainee has worked one end in millimetres.
	m, err := w.Check(map[string]string{
		"vertical.foot.inboard.correction":   "lower 0.56 mm",
		"horizontal.foot.inboard.correction": "push 0.51 mm towards 3 o'clock",
	})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("right:", m.Right())
	// Output:
	// Rim and face: motor CM-12
	// vertical correction at the inboard feet: lower 22.0 mil
	// vertical correction at the outboard feet: lower 49.7 mil
	// horizontal correction at the inboard feet: push 20.2 mil towards 3 o'clock
	// horizontal correction at the outboard feet: push 36.7 mil towards 3 o'clock
	// right: true
}

// What the trainee is handed has all that is given, and no answer.
func ExampleExercise_Text() {
	e, err := sheet.NewExercise(42, sheet.OneStep, sheet.Metric)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(e.Text())
	// Output:
	// The sag of a bracket: engine LE-1
	//
	// On the tidal island of Skerrow the lamps hang on one generator, and it has just been lifted back onto its frame. Generator LG-1 stays where it is, engine LE-1 can be moved. Before anything is measured, the bracket goes onto a straight mandrel. Work out how far it droops.
	//
	// Given
	// - On a straight mandrel the bracket showed +0.06 mm at 12 o'clock and -0.14 mm at 6 o'clock.
	//
	// To find
	// 1. sag of the bracket  [sag]
	//
	// Write every answer with its unit, and its sign or words for it. Heights are positive upwards; what lies or goes to the side is positive towards 3 o'clock as seen from behind the movable machine; a slope is positive where the shaft climbs, or swings towards that 3 o'clock, away from the stationary machine.
	//
	// A worked number is no permission to start or to run a machine. Isolate and lock out the driver before loosening a coupling or a bolt; the makers' instructions, local codes and licensed practice come first.
}
