package align_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

func init() {
	fuzzed.Fresh(func(t *fuzzed.Tape) align.Covariance {
		u := line(t.Near(0.003), t.Near(1e-5), t.Near(0.004), t.Near(2e-5))
		r := uncorrelated
		r[0][1] = t.Near(0.5)
		r[1][0] = r[0][1]
		c, err := align.NewCovariance(align.Basis(t.Byte()%5), u, r)
		if err == nil && c.Basis == align.Scatter {
			c.DoF = t.Near(3)
		}
		return c
	})
}

// The arguments that the calls start from. They are copied for each call.
var (
	soundU         = line(0.003, 1e-5, 0.004, 2e-5)
	soundEstimates = estimatesFor(align.Stated, align.Scatter)
	soundSets      = setsOf(soundTape)
	statedSets     = state(setsOf(seed(align.FromStationary, 2, align.Rim, align.Bore, align.Gap)), um)
	soundFeet      = []align.Foot{{Name: "inboard", X: 300 * mm, U: mm}, {Name: "outboard", X: 900 * mm}}
	soundCoupling  = align.Coupling{Name: "spacer", Diameter: 150 * mm, Span: 400 * mm}
	soundTilt      = align.Tilt{Horizontal: 1e-3, Vertical: -5e-4}
	soundVector    = align.Vector{Horizontal: 20 * um, Vertical: -30 * um}
	soundMove      = align.Move{
		Foot: soundFeet[0], By: soundVector, U: align.Vector{Horizontal: um, Vertical: 2 * um}, Basis: align.Scatter,
		DoF: align.Freedom{Horizontal: 3, Vertical: 4.5},
	}
)

func estimatesFor(bases ...align.Basis) (list []align.Estimate) {
	for _, b := range bases {
		c, err := align.NewCovariance(b, soundU, uncorrelated)
		if err != nil {
			panic(err)
		}
		if b == align.Scatter {
			c.DoF = 3
		}
		list = append(list, align.Estimate{Value: caseA, Cov: c})
	}
	return list
}

func fittedOf(sets ...align.Set) align.Fitted {
	f, err := align.Fit(sets...)
	if err != nil {
		panic(err)
	}
	return f
}

// calls are the functions that reckon with readings or with geometry.
var calls = fuzzed.Calls{
	{Name: "Budget", Of: align.Budget, With: []any{statedSets}},
	{Name: "Centreline.About", Of: align.Centreline.About, With: []any{caseA, 100 * mm}},
	{Name: "Centreline.At", Of: align.Centreline.At, With: []any{caseA, 100 * mm}},
	{Name: "Centreline.Exchanged", Of: align.Centreline.Exchanged, With: []any{caseA}},
	{Name: "Centreline.Minus", Of: align.Centreline.Minus, With: []any{caseA, soundU}},
	{Name: "Centreline.Plus", Of: align.Centreline.Plus, With: []any{caseA, soundU}},
	{Name: "Centreline.Tilt", Of: align.Centreline.Tilt, With: []any{caseA}},
	{Name: "Centreline.Times", Of: align.Centreline.Times, With: []any{caseA, -1.5}},
	{Name: "Combine", Of: align.Combine[units.Length], With: []any{[]align.Part[units.Length]{{U: um}, {U: 2 * um, DoF: 4}}}},
	{Name: "Coupling.FlexTilts", Of: align.Coupling.FlexTilts, With: []any{soundCoupling, caseA}},
	{Name: "Coupling.FlexUncertainty", Of: align.Coupling.FlexUncertainty, With: []any{soundCoupling, soundEstimates[1].Cov}, Open: "unknown is NaN"},
	{Name: "Coupling.FromFlexTilts", Of: align.Coupling.FromFlexTilts, With: []any{soundCoupling, soundTilt, soundTilt}},
	{Name: "Coupling.Gap", Of: align.Coupling.Gap, With: []any{soundCoupling, caseA}},
	{Name: "Covariance.At", Of: align.Covariance.At, With: []any{soundEstimates[1].Cov, 100 * mm}, Open: "unknown is NaN"},
	{Name: "Covariance.Correlation", Of: align.Covariance.Correlation, With: []any{soundEstimates[1].Cov}, Open: "unknown is NaN"},
	{Name: "Covariance.EffectiveDoF", Of: align.Covariance.EffectiveDoF, With: []any{soundEstimates[1].Cov, [4]float64{1, 2e8, 0, 0}}, Open: "DoF may be set to anything"},
	{Name: "Covariance.Standard", Of: align.Covariance.Standard, With: []any{soundEstimates[1].Cov}, Open: "unknown is NaN"},
	{Name: "CoverageFactor", Of: align.CoverageFactor, With: []any{0.95, 3.0}},
	{Name: "Estimate.About", Of: align.Estimate.About, With: []any{soundEstimates[0], 100 * mm}},
	{Name: "Estimate.AppendCorrections", Of: appendCorrections, With: []any{soundEstimates[0], []align.Move{soundMove}, soundFeet}},
	{Name: "Estimate.At", Of: align.Estimate.At, With: []any{soundEstimates[0], 100 * mm}, Open: "unknown is NaN"},
	{Name: "Estimate.Corrections", Of: align.Estimate.Corrections, With: []any{soundEstimates[1], soundFeet}},
	{Name: "Estimate.Exchanged", Of: align.Estimate.Exchanged, With: []any{soundEstimates[0]}},
	{Name: "Estimate.Expanded", Of: align.Estimate.Expanded, With: []any{soundEstimates[1], 0.95}, Open: "unknown is NaN"},
	{Name: "Estimate.ExpandedAt", Of: align.Estimate.ExpandedAt, With: []any{soundEstimates[1], 100 * mm, 0.95}, Open: "unknown is NaN"},
	{Name: "Estimate.Minus", Of: align.Estimate.Minus, With: []any{soundEstimates[0], soundEstimates[1]}},
	{Name: "Estimate.Plus", Of: align.Estimate.Plus, With: []any{soundEstimates[0], soundEstimates[1]}},
	{Name: "Estimate.Times", Of: align.Estimate.Times, With: []any{soundEstimates[0], -1.5}},
	{Name: "Estimate.Validate", Of: align.Estimate.Validate, With: []any{soundEstimates[1]}},
	{Name: "Exact", Of: align.Exact, With: []any{caseA}},
	{Name: "Fit", Of: align.Fit, With: []any{soundSets}},
	{Name: "FitExact", Of: align.FitExact, With: []any{read(quiet{}, caseA, exactSets(), quarters...)}},
	{Name: "Line.At", Of: align.Line.At, With: []any{caseA.Vertical, 100 * mm}},
	{Name: "Line.Plus", Of: align.Line.Plus, With: []any{caseA.Vertical, caseA.Horizontal}},
	{Name: "Line.Times", Of: align.Line.Times, With: []any{caseA.Vertical, -1.5}},
	{Name: "Move.Expanded", Of: align.Move.Expanded, With: []any{soundMove, 0.95}, Open: "the uncertainty of a move may be set to anything"},
	{Name: "Move.String", Of: align.Move.String, With: []any{soundMove}},
	{Name: "Move.Text", Of: align.Move.Text, With: []any{soundMove, align.Style{Unit: units.InMils, Three: "north"}}},
	{Name: "NewCovariance", Of: align.NewCovariance, With: []any{align.Stated, soundU, uncorrelated}},
	{Name: "Residuals", Of: appendResiduals, With: []any{[]align.Residual{{Set: 1}}, soundSets, fittedOf(soundSets...)}},
	{Name: "Set.Expect", Of: align.Set.Expect, With: []any{soundSets[0], soundEstimates[0], quarters}},
	{Name: "Set.Predict", Of: align.Set.Predict, With: []any{soundSets[0], caseA, quarters}},
	{Name: "Set.Validate", Of: align.Set.Validate, With: []any{soundSets[0]}},
	{Name: "SlopeFromGap", Of: align.SlopeFromGap, With: []any{100 * um, units.Six, 150 * mm}},
	{Name: "Style.Height", Of: align.Style.Height, With: []any{align.Style{Digits: 2}, 20 * um}},
	{Name: "Style.Sideways", Of: align.Style.Sideways, With: []any{align.Style{View: align.FromStationary}, 20 * um}},
	{Name: "Through", Of: align.Through, With: []any{align.Point{X: 10 * mm, W: um}, align.Point{X: 200 * mm, W: -um}}},
	{Name: "Tilt.Direction", Of: align.Tilt.Direction, With: []any{soundTilt}},
	{Name: "Tilt.Size", Of: align.Tilt.Size, With: []any{soundTilt}},
	{Name: "Vector.Direction", Of: align.Vector.Direction, With: []any{soundVector}},
	{Name: "Vector.Size", Of: align.Vector.Size, With: []any{soundVector}},
	{Name: "View.Clock", Of: align.View.Clock, With: []any{align.FromStationary, units.Three}},
}

// quiet is for what is made before any test runs.
type quiet struct{}

func (quiet) Helper()                   {}
func (quiet) Errorf(s string, _ ...any) { panic(s) }
func (quiet) Fatalf(s string, _ ...any) { panic(s) }

// exactSets have the radii that the exact equations want.
func exactSets() []align.Set {
	sets := reverse()
	for i := range sets {
		sets[i].Probe.Radius = 75 * mm
	}
	return sets
}

// appendCorrections asks that what was there stays, and that nothing is added to what is refused.
func appendCorrections(e align.Estimate, dst []align.Move, feet ...align.Foot) ([]align.Move, error) {
	list, err := e.AppendCorrections(dst, feet...)
	if want := len(dst) + len(feet); err == nil && len(list) != want || err != nil && len(list) != len(dst) {
		panic("the list has the wrong length")
	}
	return list[len(dst):], err
}

// appendResiduals asks for the same.
func appendResiduals(dst []align.Residual, sets []align.Set, f align.Fitted) ([]align.Residual, error) {
	list, err := align.Residuals(dst, sets, f)
	if len(list) < len(dst) || err != nil && len(list) != len(dst) {
		panic("the list has the wrong length")
	}
	return list[len(dst):], err
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
