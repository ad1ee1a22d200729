package sheet_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// must is for what is made before any test runs.
func must[V any](v V, err error) V {
	if err != nil {
		panic(err)
	}
	return v
}

// The arguments that the calls start from. They are copied for each call.
var (
	callWorking  = must(soundJob().Working())
	callAnswers  = answersOf(callWorking, sheet.Inch)
	callMarking  = must(callWorking.Check(withSlip(callAnswers)))
	callGraph    = must(onSquares().draw())
	callExercise = must(sheet.NewExercise(7, sheet.OneStep, sheet.Inch))
	callProblems = problems()
	callFeet     = []align.Foot{{Name: "inboard", X: 20 * units.Inch}, {Name: "outboard", X: 45 * units.Inch}}
)

// withSlip takes the sign of one answer wrong.
func withSlip(answers map[string]string) map[string]string {
	wrong := map[string]string{}
	for id, answer := range answers {
		wrong[id] = answer
	}
	wrong["vertical.slope"] = "0.357 mil/in open at 12"
	return wrong
}

// calls are the functions that reckon with readings or with geometry.
var calls = fuzzed.Calls{
	{Name: "ColdTarget.Working", Of: sheet.ColdTarget.Working, With: []any{*callProblems["cold_target"].ColdTarget}},
	{Name: "Exercise.Text", Of: sheet.Exercise.Text, With: []any{callExercise}},
	{Name: "Explanation.String", Of: sheet.Explanation.String, With: []any{sheet.Explanation{Slips: []sheet.Slip{{Kind: sheet.TotalNotHalved, Steps: []string{"vertical.slope"}}}, Left: []string{"sag"}}}},
	{Name: "FaceFace", Of: sheet.FaceFace, With: []any{soundFaceFace(), callFeet}},
	{Name: "FlangeShims.Working", Of: sheet.FlangeShims.Working, With: []any{*callProblems["flange_shims"].FlangeShims}},
	{Name: "FlexTilts.Working", Of: sheet.FlexTilts.Working, With: []any{*callProblems["flex_tilts"].FlexTilts}},
	{Name: "GapFromSlope.Working", Of: sheet.GapFromSlope.Working, With: []any{*callProblems["gap_from_slope"].GapFromSlope}},
	{Name: "Graph.Check", Of: sheet.Graph.Check, With: []any{callGraph, map[string]units.Length{"front": micrometre * 100, "rear": millimetre}}},
	{Name: "Job.Working", Of: sheet.Job.Working, With: []any{soundJob()}},
	{Name: "Marking.Right", Of: sheet.Marking.Right, With: []any{callMarking}},
	{Name: "Marking.Unexplained", Of: sheet.Marking.Unexplained, With: []any{callMarking}},
	{Name: "NewExercise", Of: newExercise, With: []any{uint64(7), sheet.OneStep, sheet.Inch}},
	{Name: "Paper.Draw", Of: sheet.Paper.Draw, With: []any{onSquares().paper, onSquares().line, onSquares().through, onSquares().feet}},
	{Name: "Problem.Working", Of: sheet.Problem.Working, With: []any{callProblems["soft_foot"]}},
	{Name: "Reverse", Of: sheet.Reverse, With: []any{*soundReverse(), callFeet}},
	{Name: "RimFace", Of: sheet.RimFace, With: []any{dial.RimFace{Carrier: align.Movable, Rim: soundRim(), Face: soundFaceFace().AtMovable}, callFeet}},
	{Name: "RimGap", Of: sheet.RimGap, With: []any{dial.RimGap{Carrier: align.Movable, Rim: soundRim(), Gap: soundGap()}, callFeet}},
	{Name: "Sag.Working", Of: sheet.Sag.Working, With: []any{*callProblems["sag"].Sag}},
	{Name: "ShimStacks.Working", Of: sheet.ShimStacks.Working, With: []any{soundStacks()}},
	{Name: "SlidingLimit.Working", Of: sheet.SlidingLimit.Working, With: []any{*callProblems["sliding_limit"].SlidingLimit}},
	{Name: "Slip.String", Of: sheet.Slip.String, With: []any{sheet.Slip{Kind: sheet.TotalNotHalved, Steps: []string{"sag"}}}},
	{Name: "SlipKind.Words", Of: sheet.SlipKind.Words, With: []any{sheet.TotalNotHalved}},
	{Name: "SlopeFromGap.Working", Of: sheet.SlopeFromGap.Working, With: []any{*callProblems["slope_from_gap"].SlopeFromGap}},
	{Name: "SoftFoot.Working", Of: sheet.SoftFoot.Working, With: []any{*callProblems["soft_foot"].SoftFoot}},
	{Name: "StraightedgeGap", Of: sheet.StraightedgeGap, With: []any{dial.StraightedgeGap{Straightedge: dial.Straightedge{On: align.Movable, Readings: soundRim().Readings}, Gap: soundGap()}, callFeet}},
	{Name: "SuggestPaper", Of: sheet.SuggestPaper, With: []any{260 * millimetre, 180 * millimetre, onSquares().line, onSquares().through, onSquares().feet}},
	{Name: "Sweep.Working", Of: sheet.Sweep.Working, With: []any{*callProblems["sweep"].Sweep}},
	{Name: "TargetReadings.Working", Of: sheet.TargetReadings.Working, With: []any{*callProblems["target_readings"].TargetReadings}},
	{Name: "Value", Of: sheet.Value[units.Slope], With: []any{callWorking, "vertical.slope"}},
	{Name: "Working.Check", Of: sheet.Working.Check, With: []any{callWorking, callAnswers}},
	{Name: "Working.CheckDrawn", Of: sheet.Working.CheckDrawn, With: []any{callWorking, callAnswers, map[string]units.Length{"vertical.offset": micrometre}}},
	{Name: "Working.Markdown", Of: sheet.Working.Markdown, With: []any{callWorking, sheet.Metric}},
	{Name: "Working.Steps", Of: sheet.Working.Steps, With: []any{callWorking, sheet.Metric}},
	{Name: "Working.Text", Of: sheet.Working.Text, With: []any{callWorking, sheet.Inch}},
	{Name: "Working.Title", Of: sheet.Working.Title, With: []any{callWorking}},
}

// newExercise leaves the whole jobs to FuzzExercise: they take long to draw.
func newExercise(seed uint64, d sheet.Difficulty, s sheet.System) (sheet.Exercise, error) {
	if d == sheet.WholeJob {
		d = sheet.OneStep
	}
	return sheet.NewExercise(seed, d, s)
}

func soundRim() dial.Rim {
	return dial.Rim{Station: -50 * millimetre, Readings: dial.Quarters(units.Mil, 0, 5, 10, 5)}
}

func soundGap() dial.Gap {
	return dial.Gap{Diameter: 150 * millimetre, Readings: dial.Quarters(units.Mil, 100, 102, 104, 102)}
}

func soundFaceFace() dial.FaceFace {
	face := dial.Face{Diameter: 150 * millimetre, Readings: dial.Quarters(units.Mil, 0, 1, 2, 1)}
	return dial.FaceFace{Span: 800 * millimetre, AtStationary: face, AtMovable: face}
}

func TestCallsAreSound(t *testing.T) {
	if err := calls.Sound(testing.Short()); err != nil {
		t.Error(err)
	}
}

// FuzzCalls: whatever is asked of a function, it answers with finite numbers, the same
// again, or refuses with faults; it leaves its arguments alone and never panics.
func FuzzCalls(f *testing.F) {
	calls.Fuzz(f)
}
