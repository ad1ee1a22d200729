package sheet_test

import (
	"maps"
	"slices"
	"testing"

	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/internal/fuzzed"
)

// wire holds every type that is written to JSON and read from it.
var wire = fuzzed.Wire{Slack: 1e-12, Values: append(eachProblem(),
	sheet.System(0), sheet.Difficulty(3), sheet.SlipKind(1), sheet.Slip{Kind: sheet.TotalNotHalved, Steps: []string{"sag"}},
	callExercise, callMarking, callMarking.Lines[0], sheet.Explanation{Left: []string{"sag"}}, callGraph, callGraph.Paper, callGraph.Feet[0],
	callGraph.Feet[0].Mark, sheet.Station{Name: "a", X: 1}, sheet.ReadOff{Foot: "front", Value: 1, Within: true}, callWorking.Steps(sheet.Inch)[0],
	sheet.Job{FaceFace: &dial.FaceFace{Span: 1}}, *soundReverse(),
)}

// eachProblem has every problem, alone and under its name.
func eachProblem() (list []any) {
	for _, name := range sortedNames(callProblems) {
		list = append(list, callProblems[name])
	}
	p := callProblems
	return append(list,
		*p["job"].Job, *p["sweep"].Sweep, *p["sag"].Sag, *p["gap_from_slope"].GapFromSlope, *p["slope_from_gap"].SlopeFromGap, *p["flex_tilts"].FlexTilts,
		*p["cold_target"].ColdTarget, *p["target_readings"].TargetReadings, *p["soft_foot"].SoftFoot, *p["sliding_limit"].SlidingLimit,
		*p["flange_shims"].FlangeShims, *p["shim_stacks"].ShimStacks)
}

func sortedNames(all map[string]sheet.Problem) []string { return slices.Sorted(maps.Keys(all)) }

func TestWireIsSound(t *testing.T) {
	if err := wire.Sound(); err != nil {
		t.Error(err)
	}
}

// FuzzWire: whatever text a value is read from, it is refused with faults or as JSON,
// or what is read comes back when it is written.
func FuzzWire(f *testing.F) {
	wire.Fuzz(f)
}
