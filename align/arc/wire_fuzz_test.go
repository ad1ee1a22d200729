package arc_test

import (
	"testing"

	"example.org/collinear/align/arc"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

var agreement = arc.Agreement(must(arc.Compare(callEstimates[0], callEstimates[1])))

// wire holds every type that is written to JSON and read from it. Variances are
// written as standard uncertainties and correlations, so they come back to rounding.
var wire = fuzzed.Wire{Slack: 1e-9, Values: []any{
	arc.Plane(2), agreement, callSensor, callSensor.Angle, callSensor.Angle.Readings[0], callFollow, callFollow.Probes[2],
	must(now(callFollow, um, um, um)), must(arc.FitRobust(callSets...)), arc.Weight{Set: 1, Reading: 2, Weight: 0.5},
	must(arc.Forecast(caseA, callFeet, callSets...)), must(arc.Of(callSets[0])), must(arc.Diagnose(must(arc.FitRobust(callSets...)).Fitted, callSets...)),
	arc.Prospect{}, arc.Sweep{Reversed: []int{1}}, arc.Effect{Value: units.Micrometre, P: 1}, arc.Agreeing{Ratio: 1.5, Known: true},
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
