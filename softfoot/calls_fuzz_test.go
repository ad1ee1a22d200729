package softfoot_test

import (
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// The arguments that the calls start from. They are copied for each call.
var (
	callShaft   = softfoot.AtShaft{Y: 200 * mm, Up: 100 * um, Sideways: 20 * um}
	callRelease = softfoot.Release{What: "suction flange", Horizontal: 50 * um, Vertical: -20 * um}
	callShims   = []softfoot.Shim{{Foot: "near 3", Flat: 100 * um}, {Foot: "far 9", Flat: 50 * um, Stepped: &softfoot.Taper{Rise: um}}}
)

// calls are the functions that reckon with readings or with geometry.
var calls = fuzzed.Calls{
	{Name: "AtShaft.Hinged", Of: softfoot.AtShaft.Hinged, With: []any{callShaft, -200 * mm}},
	{Name: "AtShaft.Rolling", Of: softfoot.AtShaft.Rolling, With: []any{callShaft, 280 * mm}},
	{Name: "Shift.At", Of: softfoot.Shift.At, With: []any{softfoot.Shift{Up: um, Slope: 1e-5}, 200 * mm}},
	{Name: "Strains", Of: softfoot.Strains, With: []any{softfoot.PipingLimit, []softfoot.Release{callRelease, {What: "discharge flange"}}}},
	{Name: "Survey.Judge", Of: softfoot.Survey.Judge, With: []any{sound(), softfoot.Limits{Act: 50 * units.Micrometre}}},
	{Name: "Survey.Shift", Of: softfoot.Survey.Shift, With: []any{sound(), callShims}},
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
