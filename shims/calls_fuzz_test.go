package shims_test

import (
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/shims"
)

var callOrders = []shims.Order{
	{Foot: "front left", Correction: 350 * um, SoftFoot: 50 * um, Now: []shims.Piece{{Marked: mm, Measured: 990 * um, Count: 1}}},
	{Foot: "front right", Correction: -200 * um, Now: []shims.Piece{{Marked: mm, Count: 1}}},
}

// calls are the functions that reckon with thicknesses.
var calls = fuzzed.Calls{
	{Name: "Choose", Of: choose, With: []any{shims.CommonMetric(3), shims.Rule{Pieces: 3, Keep: 100 * um}, callOrders}},
	{Name: "CommonInch", Of: shims.CommonInch, With: []any{4}},
	{Name: "CommonMetric", Of: shims.CommonMetric, With: []any{4}},
	{Name: "Piece.Thickness", Of: shims.Piece.Thickness, With: []any{shims.Piece{Marked: mm, Measured: 990 * um, Count: 2}}},
}

// choose keeps the search short.
func choose(stock shims.Stock, rule shims.Rule, orders ...shims.Order) (shims.Choice, error) {
	if rule.Nodes >= 0 {
		rule.Nodes = 500
	}
	return shims.Choose(stock, rule, orders...)
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
