package flange_test

import (
	"testing"

	"example.org/collinear/align/flange"
	"example.org/collinear/internal/fuzzed"
)

// wire holds every type that is written to JSON and read from it.
var wire = fuzzed.Wire{Values: []any{
	flange.Push(1), flange.Rabbet(2), callCorrection.Shims[0], flange.Shim{Bolt: fitted().Bolts[1], Thickness: mm},
	callCorrection, fitted(), fitted().Bolts[0], callLimit,
}}

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
