package train_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

func init() {
	fuzzed.Fresh(func(t *fuzzed.Tape) train.Limit {
		low, high := units.Length(t.Near(-3e5)), units.Length(t.Near(4e5))
		return []train.Limit{{}, train.Fixed(), train.AtLeast(low), train.AtMost(high), train.Between(low, high)}[t.Byte()%5]
	})
}

// must is for what is made before any test runs.
func must[V any](v V, err error) V {
	if err != nil {
		panic(err)
	}
	return v
}

// calls are the functions that reckon with readings or with geometry.
var calls = fuzzed.Calls{
	{Name: "Joint.Off", Of: train.Joint.Off, With: []any{four(true).Joints[0]}},
	{Name: "Limit.High", Of: train.Limit.High, With: []any{train.Between(-mm, mm)}},
	{Name: "Limit.Low", Of: train.Limit.Low, With: []any{train.Between(-mm, mm)}},
	{Name: "Step.Because", Of: train.Step.Because, With: []any{callPlan.Steps[0]}},
	{Name: "Step.String", Of: train.Step.String, With: []any{callPlan.Steps[0]}},
	{Name: "Step.Text", Of: train.Step.Text, With: []any{callPlan.Steps[0], align.Style{Three: "north"}}},
	{Name: "Train.Centrelines", Of: train.Train.Centrelines, With: []any{four(true)}},
	{Name: "Train.Plan", Of: train.Train.Plan, With: []any{pair(), train.TotalTravel}},
	{Name: "Train.Plan of four", Of: train.Train.Plan, With: []any{four(true), train.TotalTravel}},
	{Name: "Train.PlanShims", Of: planShims, With: []any{soundShims().t, shims.CommonMetric(3), shims.Rule{}}},
	{Name: "Train.Validate", Of: train.Train.Validate, With: []any{four(false)}},
}

var callPlan = must(four(true).Plan(train.TotalTravel))

// planShims keeps the search short, which may be long, and the numbers of pieces
// small, for the same reason.
func planShims(tr train.Train, stock shims.Stock, rule shims.Rule) (train.ShimPlan, error) {
	if rule.Nodes >= 0 {
		rule.Nodes = 200
	}
	return tr.PlanShims(train.TotalTravel, stock, rule)
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
