package dial_test

import (
	"testing"

	"example.org/collinear/align/dial"
	"example.org/collinear/internal/fuzzed"
)

// wire holds every type that is written to JSON and read from it. Variances are
// written as standard uncertainties and correlations, so they come back to rounding.
var wire = fuzzed.Wire{Slack: 1e-9, Values: []any{
	fullOf("reverse"), fullOf("rim-face"), fullOf("face-face"), fullOf("rim and gap"), fullOf("straightedge and gap"), fullOf("target"),
	fullFace(), fullGap(), fullRim(1), fullStraightedge(), fullLimits, dial.Check{}, resultOf(fullOf("reverse").(dial.Reverse)),
}}

func resultOf(job solver) dial.Result {
	r, err := job.Solve()
	if err != nil {
		panic(err)
	}
	return r
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
