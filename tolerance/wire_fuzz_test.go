package tolerance_test

import (
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/tolerance"
)

// wire holds every type that is written to JSON and read from it.
var wire = fuzzed.Wire{Slack: 1e-12, Values: []any{
	tolerance.DecisionRule(1), tolerance.Outcome(1), tolerance.Quantity(4), tolerance.Plane(1),
	callVerdicts[0], callVerdicts[1], callVerdicts[2], callItem, callTable, callRows[0], callLimits, callAsked, callRunout, callStyle,
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
