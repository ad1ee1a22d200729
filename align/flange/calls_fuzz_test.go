package flange_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
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

// fitted is a flange with a rabbet, whose bolts are not even.
func fitted() flange.Flange {
	f := worked()
	f.Bolts = append(f.Bolts, flange.Bolt{Name: "1:30", Radius: 180 * mm, At: 45})
	f.Clearance, f.UFace, f.Spigot = 300*um, mm, align.Vector{Horizontal: 20 * um}
	return f
}

var (
	callOff        = align.Exact(line(0.05, 0.2e-3, -0.1, -0.1e-3))
	callCorrection = must(fitted().Correct(callOff))
	callLimit      = must(flange.Runout(200 * mm))
)

// calls are the functions that reckon with readings or with geometry.
var calls = fuzzed.Calls{
	{Name: "Correction.String", Of: flange.Correction.String, With: []any{callCorrection}},
	{Name: "Correction.Text", Of: flange.Correction.Text, With: []any{callCorrection, align.Style{Unit: units.InMils}}},
	{Name: "Flange.Correct", Of: flange.Flange.Correct, With: []any{fitted(), callOff}},
	{Name: "Flange.Validate", Of: flange.Flange.Validate, With: []any{fitted()}},
	{Name: "Runout", Of: flange.Runout, With: []any{200 * mm}},
	{Name: "RunoutLimit.Within", Of: flange.RunoutLimit.Within, With: []any{callLimit, 20 * um}},
	{Name: "Shim.String", Of: flange.Shim.String, With: []any{callCorrection.Shims[0]}},
	{Name: "Shim.Text", Of: flange.Shim.Text, With: []any{callCorrection.Shims[1], align.Style{Digits: 2}}},
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
