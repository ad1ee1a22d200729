package shims_test

import (
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/shims"
)

// wire holds every type that is written to JSON and read from it.
var wire = fuzzed.Wire{Values: []any{
	shims.Piece{Marked: mm, Measured: 990 * um, Count: 2}, shims.CommonInch(3), shims.Rule{Error: um, Pieces: 3, Keep: mm, Nodes: 100}, callOrders[0],
	callChoice(), callChoice().Stacks[0],
}}

func callChoice() shims.Choice {
	c, err := choose(shims.CommonMetric(3), shims.Rule{}, callOrders...)
	if err != nil {
		panic(err)
	}
	return c
}

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
