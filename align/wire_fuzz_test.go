package align_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

var (
	soundDistribution = align.Distribution[units.Length]{
		Mean: um, Deviation: 2 * um,
		Symmetric: align.Interval[units.Length]{Low: -3 * um, High: 5 * um}, Shortest: align.Interval[units.Length]{Low: -2 * um, High: 4 * um},
	}
	soundSlopes = align.Distribution[units.Slope]{Mean: 1e-5, Deviation: 2e-5, Symmetric: align.Interval[units.Slope]{Low: -1e-5, High: 3e-5}}
	soundAcross = align.Across[units.Slope]{Horizontal: soundSlopes, Vertical: soundSlopes, Size: soundSlopes}
)

// wire holds every type that is written to JSON and read from it. Variances are
// written as standard uncertainties and correlations, so they come back to rounding.
var wire = fuzzed.Wire{Slack: 1e-12, Values: []any{
	align.Shaft(1), align.Kind(1), align.View(1), align.Basis(2), align.Input(1),
	soundEstimates[0].Cov, soundEstimates[1].Cov, soundEstimates[0], soundEstimates[1],
	soundMove, soundDistribution, soundSlopes, soundAcross,
	align.FootDistribution{Foot: soundFeet[0], Horizontal: soundDistribution, Vertical: soundDistribution},
	align.Summary{
		Probability: 0.95, Seed: 1<<64 - 1, Blocks: []uint32{0, 7}, Trials: 20000, Failed: 1, Slope: soundAcross, Movable: &soundAcross,
		Offset: align.Across[units.Length]{Horizontal: soundDistribution, Vertical: soundDistribution, Size: soundDistribution},
		Cov:    soundEstimates[0].Cov, Feet: []align.FootDistribution{{Foot: soundFeet[0]}},
		Warnings: []units.Fault{{Code: units.Suspect, Path: "/sets", Value: "1", Want: "an answer from every trial"}},
	},
	align.MonteCarlo{Sets: statedSets, Target: soundEstimates[0], Feet: soundFeet, Coupling: soundCoupling},
	statedSets[0], statedSets[0].Probe, statedSets[0].U, statedSets[0].Readings[0], fittedOf(statedSets...), fittedOf(soundSets...),
	soundCoupling, caseA, caseA.Vertical, align.Point{X: mm, W: um}, soundVector, soundTilt, soundFeet[0], soundMove.DoF,
	align.Style{Unit: units.InMils, Digits: 2, View: align.FromStationary, Three: "north", Six: "ladder"},
	align.Part[units.Length]{U: um, DoF: 3}, align.Share{Set: 1, Mounting: "a", Of: align.OfStation, Cov: soundEstimates[0].Cov},
	align.Residual{}, align.ExactFit{},
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
