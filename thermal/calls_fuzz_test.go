package thermal_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// The arguments that the calls start from. They are copied for each call.
var (
	callPiece = thermal.Piece{
		Name: "pedestal", Height: 400 * mm, Material: thermal.Material{Name: "steel", Expansion: 11e-6, U: 1e-6, Source: "a source"},
		Cold: units.Celsius(15), Profile: []thermal.Spot{{Up: 10 * mm, Running: units.Celsius(60)}, {Up: 300 * mm, Running: units.Celsius(40)}},
		U: thermal.Uncertainty{Height: mm, Temperature: 2},
	}
	callSupports = []thermal.Support{
		{Name: "near", X: 300 * mm, Pieces: []thermal.Piece{callPiece, piece(100*mm, steel, 30)}},
		{
			Name: "far", X: 900 * mm, Three: []thermal.Piece{callPiece}, Nine: []thermal.Piece{piece(400*mm, steel, 20)}, Track: 500 * mm,
		},
		{X: 600 * mm, Measured: &thermal.Measured{By: align.Vector{Vertical: 200 * um}, U: align.Vector{Horizontal: um, Vertical: um}}},
	}
	callGrown = align.Exact(align.Centreline{Vertical: align.Line{Offset: 20 * um, Slope: 1e-4}})
)

// calls are the functions that reckon with temperatures or with geometry.
var calls = fuzzed.Calls{
	{Name: "ColdTarget", Of: thermal.ColdTarget, With: []any{callGrown, callGrown}},
	{Name: "FindMaterial", Of: thermal.FindMaterial, With: []any{"steel"}},
	{Name: "Growth", Of: thermal.Growth, With: []any{callSupports[:2]}},
	{Name: "GrowthWithin", Of: thermal.GrowthWithin, With: []any{100 * mm, callSupports}},
	{Name: "Materials", Of: thermal.Materials, With: []any{}},
	{Name: "Running", Of: thermal.Running, With: []any{callGrown, callGrown, callGrown}},
	{Name: "Support.Growth", Of: thermal.Support.Growth, With: []any{callSupports[1]}},
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
