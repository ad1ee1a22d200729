package arc_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// must is for what is made before any test runs.
func must[V any](v V, err error) V {
	if err != nil {
		panic(err)
	}
	return v
}

// callReadings are sets that leave readings over, so that their scatter is known.
func callReadings() []align.Set {
	list := sensorPair(2*um, within(6, 20, 140)...)
	for i := range list {
		list[i].Readings = must(list[i].Predict(caseA, within(6, 20, 140)...))
		list[i].Readings[i].Value += 3 * um
	}
	return list
}

// The arguments that the calls start from. They are copied for each call.
var (
	callSets      = callReadings()
	callEstimates = [2]align.Estimate{
		must(align.Fit(callSets...)).Estimate,
		{Value: line(0.1, 0.3e-3, -0.2, -0.6e-3), Cov: must(align.NewCovariance(align.Stated, line(0.003, 1e-5, 0.004, 2e-5), [4][4]float64{{1, 0.5}, {0.5, 1}, {0, 0, 1}, {0, 0, 0, 1}}))},
	}
	callSensor = arc.Sensor{
		Carrier: align.Movable, Station: -50 * mm, Gain: -2, Readings: callSets[0].Readings, U: align.Uncertainty{Reading: um},
		Angle: arc.AngleChannel{Gain: 1.5, U: 1e-6, Readings: []arc.AngleReading{{At: 0, Value: 1e-4}, {At: 60, Value: 2e-4}, {At: 120, Value: 3e-4}}},
	}
	callFollow = arc.Follow{
		From: callEstimates[1], Plane: arc.Vertical, View: align.FromMovable,
		Probes: []arc.Standing{
			{Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: 40 * mm}, Start: align.Reading{At: 10, Value: um, U: um}},
			{Probe: align.Probe{Kind: align.Rim, Carrier: align.Movable, Station: -50 * mm}, Start: align.Reading{At: 170, U: um}},
			{Probe: align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 75 * mm}, Start: align.Reading{At: 0, U: um}, AxialFree: true},
		},
	}
	callFeet = []align.Foot{{Name: "inboard", X: 300 * mm, U: mm}, {Name: "outboard", X: 900 * mm}}
)

// calls are the functions that reckon with readings or with geometry.
var calls = fuzzed.Calls{
	{Name: "Compare", Of: arc.Compare, With: []any{callEstimates[0], callEstimates[1]}, Open: "unknown is NaN"},
	{Name: "Diagnose", Of: arc.Diagnose, With: []any{must(align.Fit(callSets...)), callSets}},
	{Name: "FitRobust", Of: arc.FitRobust, With: []any{callSets}},
	{Name: "Follow.Begin", Of: arc.Follow.Begin, With: []any{callFollow}},
	{Name: "Following.Now", Of: now, With: []any{callFollow, []units.Length{um, 2 * um, 3 * um}}},
	{Name: "Following.TurnError", Of: turnError, With: []any{callFollow, units.Degree}},
	{Name: "Following.UnseenError", Of: unseenError, With: []any{callFollow, align.Line{Offset: um, Slope: 1e-6}}},
	{Name: "Forecast", Of: arc.Forecast, With: []any{caseA, callFeet, callSets}},
	{Name: "Merge", Of: merged, With: []any{callEstimates[0], callEstimates[1]}, Open: "unknown is NaN"},
	{Name: "NewBuffer", Of: buffered, With: []any{callSets, 1, callSets[0].Readings[0], 2}},
	{Name: "Of", Of: arc.Of, With: []any{callSets[0]}},
	{Name: "Robust.Down", Of: arc.Robust.Down, With: []any{must(arc.FitRobust(callSets...))}},
	{Name: "Sensor.Sets", Of: arc.Sensor.Sets, With: []any{callSensor}},
}

// merged leaves the agreement, which goes with some refusals, to Compare.
func merged(a, b align.Estimate) (align.Estimate, error) {
	e, _, err := arc.Merge(a, b)
	return e, err
}

func now(f arc.Follow, readings ...units.Length) (arc.Followed, error) {
	g, err := f.Begin()
	if err != nil {
		return arc.Followed{}, err
	}
	return g.Now(readings...)
}

func turnError(f arc.Follow, by units.Angle) (align.Centreline, error) {
	g, err := f.Begin()
	if err != nil {
		return align.Centreline{}, err
	}
	return g.TurnError(by)
}

func unseenError(f arc.Follow, other align.Line) (align.Centreline, error) {
	g, err := f.Begin()
	if err != nil {
		return align.Centreline{}, err
	}
	return g.UnseenError(other)
}

// buffered adds a reading to a buffer and drops another.
func buffered(sets []align.Set, set int, r align.Reading, drop int) (align.Fitted, error) {
	b := arc.NewBuffer(sets...)
	if err := b.Add(set, r); err != nil {
		return align.Fitted{}, err
	}
	if err := b.Drop(set, drop); err != nil {
		return align.Fitted{}, err
	}
	return b.Fit()
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
