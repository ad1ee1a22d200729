package softfoot_test

import (
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/softfoot"
)

// wire holds every type that is written to JSON and read from it.
var wire = fuzzed.Wire{Values: []any{
	softfoot.Kind(1), softfoot.Check(1), sound(), sound().Feet[2], sound().Feet[2].Gaps[0], softfoot.Limits{Act: um, Least: um}, callShaft, callRelease,
	callFinding(), callFinding().Feet[0], callFinding().Advice[0], callFinding().Fits[0], callShims[1], *callShims[1].Stepped, softfoot.Shift{Up: um, Slope: 1e-5},
	softfoot.FollowUp{Check: softfoot.FeelCorners, Feet: []string{"near 3"}}, softfoot.Strain{Release: callRelease, Over: true},
}}

func callFinding() softfoot.Finding {
	f, err := sound().Judge(softfoot.Limits{})
	if err != nil {
		panic(err)
	}
	return f
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
