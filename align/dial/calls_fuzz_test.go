package dial_test

import (
	"reflect"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// fullOf is a sound input of one of the entries.
func fullOf(name string) any {
	for _, e := range entries {
		if e.name == name {
			return reflect.ValueOf(e.full()).Elem().Interface()
		}
	}
	panic(name)
}

var callEstimate = align.Exact(align.Centreline{Vertical: align.Line{Offset: 20 * units.Micrometre, Slope: 1e-4}})

// calls are the functions that reckon with readings or with geometry.
var calls = fuzzed.Calls{
	{Name: "FaceFace.Sets", Of: dial.FaceFace.Sets, With: []any{fullOf("face-face")}},
	{Name: "FaceFace.Solve", Of: dial.FaceFace.Solve, With: []any{fullOf("face-face")}},
	{Name: "FaceSlope", Of: dial.FaceSlope, With: []any{2 * units.Mil, 5 * units.Mil, units.Inch}, Open: "over a diameter of zero"},
	{Name: "Fourth", Of: dial.Fourth, With: []any{2 * units.Mil, 5 * units.Mil, units.Mil}},
	{Name: "GapSlope", Of: dial.GapSlope, With: []any{2 * units.Mil, 5 * units.Mil, units.Inch}, Open: "over a diameter of zero"},
	{Name: "HalfTIR", Of: dial.HalfTIR, With: []any{2 * units.Mil, 5 * units.Mil}},
	{Name: "MandrelSag", Of: dial.MandrelSag, With: []any{2 * units.Mil, -5 * units.Mil}},
	{Name: "Miss", Of: dial.Miss, With: []any{units.Mil, 2 * units.Mil, 3 * units.Mil, 4 * units.Mil}},
	{Name: "Quarters", Of: dial.Quarters, With: []any{units.Mil, 1.0, 2.0, 3.0, 4.0}},
	{Name: "RemoveRunout", Of: dial.RemoveRunout, With: []any{[]align.Reading(fullSweep()), units.Three, []align.Reading{{At: 90, U: 1}, {At: 0, U: 1}, {At: -90, U: 1}, {At: 180, U: 1}}}},
	{Name: "Reverse.Sets", Of: dial.Reverse.Sets, With: []any{fullOf("reverse")}},
	{Name: "Reverse.Solve", Of: dial.Reverse.Solve, With: []any{fullOf("reverse")}},
	{Name: "RimFace.Sets", Of: dial.RimFace.Sets, With: []any{fullOf("rim-face")}},
	{Name: "RimFace.Solve", Of: dial.RimFace.Solve, With: []any{fullOf("rim-face")}},
	{Name: "RimGap.Sets", Of: dial.RimGap.Sets, With: []any{fullOf("rim and gap")}},
	{Name: "RimGap.Solve", Of: dial.RimGap.Solve, With: []any{fullOf("rim and gap")}},
	{Name: "SeparateRunout", Of: dial.SeparateRunout, With: []any{callEstimate, callEstimate}},
	{Name: "StraightedgeGap.Sets", Of: dial.StraightedgeGap.Sets, With: []any{fullOf("straightedge and gap")}},
	{Name: "StraightedgeGap.Solve", Of: dial.StraightedgeGap.Solve, With: []any{fullOf("straightedge and gap")}},
	{Name: "Target.Centreline", Of: dial.Target.Centreline, With: []any{fullOf("target")}},
	{Name: "WithoutFloat", Of: dial.WithoutFloat, With: []any{fullFace(), turned(fullFace())}},
	{Name: "WithoutSag", Of: dial.WithoutSag, With: []any{units.Mil, 2 * units.Mil, units.Six}},
}

// turned is the same face with the dial across from where it was.
func turned(f dial.Face) dial.Face {
	for i := range f.Readings {
		f.Readings[i].At += 180
	}
	return f
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
