package train_test

import (
	"testing"

	"example.org/collinear/align/train"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/shims"
)

// wire holds every type that is written to JSON and read from it. Variances are
// written as standard uncertainties and correlations, so they come back to rounding.
var wire = fuzzed.Wire{Slack: 1e-9, Values: []any{
	train.Side(1), train.Work(1), train.Reason(1), train.Reach(1), train.Limit{}, train.Fixed(), train.Between(-mm, mm), train.AtLeast(-mm), train.AtMost(mm),
	pair(), four(true), four(true).Machines[0], four(true).Joints[1], four(true).Machines[0].Feet[0], soundShims().t.Machines[1].Feet[0].Under,
	callPlan, callPlan.Steps[0], callPlan.Machines[0], callPlan.Joints[0],
	train.Block{Machine: "pump", Foot: "inboard", Plane: 1, Side: train.Low, Alone: mm},
	must(planShims(soundShims().t, shims.CommonMetric(3), shims.Rule{})), train.Pack{Name: "left", Now: shims.CommonInch(1)},
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
