package thermal_test

import (
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/thermal"
)

// wire holds every type that is written to JSON and read from it.
var wire = fuzzed.Wire{Slack: 1e-12, Values: []any{
	callSupports[0], callSupports[1], callPiece, callPiece.Material, callPiece.Profile[0], callPiece.U, callSupports[2], *callSupports[2].Measured, thermal.Support{},
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
