package sheet_test

import (
	"encoding/json"
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// brinePump is the job that the class works.
func brinePump() sheet.Working {
	w, err := sheet.Reverse(dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 7 * units.Inch, Sag: 2 * units.Mil, Readings: dial.Quarters(units.Mil, 0, -9, -18, -9)},
		CarriedByMovable:    dial.Rim{Station: -7 * units.Inch, Sag: 2 * units.Mil, Readings: dial.Quarters(units.Mil, 0, 10, 20, 10)},
	}, align.Foot{Name: "inboard", X: 19 * units.Inch}, align.Foot{Name: "outboard", X: 45 * units.Inch})
	if err != nil {
		log.Fatal(err)
	}
	return w
}

// The steps are data: for a projector, a form, or a page of a workbook.
func ExampleWorking_Steps() {
	for _, step := range brinePump().Steps(sheet.Inch) {
		if step.ID == "vertical.carried_by_stationary.total" {
			fmt.Println("sought: ", step.Sought)
			fmt.Println("formula:", step.Formula)
			fmt.Println("filled: ", step.Filled)
			fmt.Println("answer: ", step.Answer)
			fmt.Println("exact:  ", step.Exact)
			fmt.Println("source: ", step.Source)
		}
	}
	// Output:
	// sought:  vertical total reading of the dial that the stationary shaft carries, sag taken off
	// formula: T = (R12 - s) - (R6 + s)
	// filled:  (0 mil - 2 mil) - ((-18 mil) + 2 mil)
	// answer:  14.00 mil
	// exact:   14.00000000 mil
	// source:  sag counts twice from top to bottom: US Bureau of Reclamation, FIST 4-1A, p. 17 (read)
}

// A handout in plain text.
func ExampleWorking_Text() {
	w, err := sheet.Sag{At12: 0, At6: -6 * units.Mil}.Working()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(w.Text(sheet.Inch))
	// Output:
	// The sag of a bracket
	//
	// 1. sag of the bracket  [sag]
	//    s = (M12 - M6)/2
	//    = (0 mil - (-6 mil))/2
	//    = 3.00 mil   (exactly 3.00000000 mil)
	//    turned from top to bottom it shows twice: US Bureau of Reclamation, FIST 4-1A, p. 17 (read)
	//
	// Numbers from lines above are put in as they were rounded there; the answers go on with all their digits. Sources are marked (read) where the work itself was seen, (second-hand) where others quote it.
	//
	// A worked number is no permission to start or to run a machine. Isolate and lock out the driver before loosening a coupling or a bolt; the makers' instructions, local codes and licensed practice come first.
}

// The same for a page of Markdown.
func ExampleWorking_Markdown() {
	w, err := sheet.Sag{At12: 0, At6: -6 * units.Mil}.Working()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(w.Markdown(sheet.Inch))
	// Output:
	// ## The sag of a bracket
	//
	// | | sought | formula | filled in | answer | exactly | source | line |
	// |---:|---|---|---|---|---|---|---|
	// | 1 | sag of the bracket | s = (M12 - M6)/2 | (0 mil - (-6 mil))/2 | 3.00 mil | 3.00000000 mil | turned from top to bottom it shows twice: US Bureau of Reclamation, FIST 4-1A, p. 17 (read) | sag |
	//
	// Numbers from lines above are put in as they were rounded there; the answers go on with all their digits. Sources are marked (read) where the work itself was seen, (second-hand) where others quote it.
	//
	// A worked number is no permission to start or to run a machine. Isolate and lock out the driver before loosening a coupling or a bolt; the makers' instructions, local codes and licensed practice come first.
}

// A trainee hands in a sheet on which the outboard foot came out wrong, and all else
// follows from what stands above it.
func ExampleWorking_Check() {
	m, err := brinePump().Check(map[string]string{
		"vertical.carried_by_stationary.total":  "14 mil",
		"vertical.carried_by_stationary.offset": "7 mil high",
		"vertical.carried_by_movable.total":     "-24 mil",
		"vertical.carried_by_movable.offset":    "12 mil high",
		"vertical.slope":                        "-0.357 mil/in",
		"vertical.offset":                       "9.5 mil high",
		"vertical.foot.inboard.position":        "2.7 mil high",
		"vertical.foot.inboard.correction":      "raise 2.7 mil",
	})
	if err != nil {
		log.Fatal(err)
	}
	for _, line := range m.Lines {
		if !line.Right {
			fmt.Printf("%s: %s, expected %s\n", line.Step, line.Written, line.Expected)
		}
	}
	for _, e := range m.Explanations {
		fmt.Println(e)
	}
	// Output:
	// vertical.foot.inboard.correction: raise 2.7 mil, expected lower 2.7 mil
	// where the shaft lies was given as the way it has to go (at vertical.foot.inboard.correction)
}

// Just the end is on the sheet, with the wrong sign. More than one slip does that, and the
// trainer learns for which line to ask.
func ExampleMarking() {
	m, err := brinePump().Check(map[string]string{"vertical.foot.outboard.correction": "lower 6.6 mil"})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(m.Right(), m.Unexplained())
	for _, e := range m.Explanations {
		fmt.Println(e)
	}
	fmt.Println("ask for", m.Ask)
	// Output:
	// false []
	// where the shaft lies was given as the way it has to go (at vertical.foot.outboard.correction)
	// the movable machine and the stationary one were taken for one another (at vertical.carried_by_stationary.offset, vertical.carried_by_movable.offset)
	// the sag of the bracket was left in (at vertical.carried_by_stationary.total, vertical.carried_by_movable.total)
	// ask for [vertical.carried_by_stationary.offset]
}

// A number that no slip leads to.
func ExampleMarking_Unexplained() {
	m, err := brinePump().Check(map[string]string{"vertical.carried_by_movable.offset": "31 mil high"})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(len(m.Explanations), m.Unexplained())
	// Output:
	// 0 [vertical.carried_by_movable.offset]
}

// What was done, and where, in the trade's words.
func ExampleExplanation() {
	e := sheet.Explanation{Slips: []sheet.Slip{
		{Kind: sheet.SagForgotten, Steps: []string{"vertical.carried_by_movable.total"}},
		{Kind: sheet.PositionForCorrection, Steps: []string{"vertical.foot.rear.correction"}},
	}}
	fmt.Println(e)
	// Output:
	// the sag of the bracket was left in (at vertical.carried_by_movable.total); and where the shaft lies was given as the way it has to go (at vertical.foot.rear.correction)
}

// A slip by itself.
func ExampleSlip() {
	fmt.Println(sheet.Slip{Kind: sheet.WrongDatum, Steps: []string{"vertical.foot.rear.position"}})
	// Output:
	// a distance was counted from the wrong place (at vertical.foot.rear.position)
}

// In a file a kind of slip is a word.
func ExampleSlipKind() {
	text, err := json.Marshal([]sheet.SlipKind{sheet.TotalNotHalved, sheet.ThirtyTwo})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(string(text), sheet.CommonNotTakenOff)
	// Output:
	// ["total_not_halved","thirty_two"] common_not_taken_off
}

// One working, in the units of either workshop.
func ExampleSystem() {
	w, err := sheet.Sag{At12: 0, At6: -5.08 * units.Mil}.Working()
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range []sheet.System{sheet.Metric, sheet.Inch} {
		fmt.Println(s, w.Steps(s)[0].Filled, "=", w.Steps(s)[0].Answer)
	}
	// Output:
	// metric (0 mm - (-0.129 mm))/2 = 0.065 mm
	// inch (0 mil - (-5.08 mil))/2 = 2.54 mil
}

// The answer to the last bit, to carry on with.
func ExampleValue() {
	slope, err := sheet.Value[units.Slope](brinePump(), "vertical.slope")
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(slope)
	_, err = sheet.Value[units.Slope](brinePump(), "vertical.offset")
	fmt.Println(err)
	// Output:
	// -0.35714285714285714 mm/m
	// /id: want a line that comes to a slope; this one comes to a length, got vertical.offset (conflict)
}

// A problem as it stands in a file.
func ExampleProblem() {
	var p sheet.Problem
	err := json.Unmarshal([]byte(`{"sag": {"at12": "0 mil", "at6": "-8 mil"}}`), &p)
	if err != nil {
		log.Fatal(err)
	}
	w, err := p.Working()
	onBoard(sheet.Inch, w, err)
	// Output:
	// sag of the bracket: (0 mil - (-8 mil))/2 = 4.00 mil
}

// The foot was read off a drawing on which a pencil line stands for 1 mil.
func ExampleWorking_CheckDrawn() {
	answers := map[string]string{"vertical.foot.outboard.position": "7.5 mil low"}
	w := brinePump()
	for _, off := range []units.Length{0, units.Mil} {
		m, err := w.CheckDrawn(answers, map[string]units.Length{"vertical.foot.outboard.position": off})
		if err != nil {
			log.Fatal(err)
		}
		fmt.Println(off.Text(units.InMils, 0), m.Right())
	}
	// Output:
	// 0 mil false
	// 1 mil true
}
