package rigid_test

import (
	"math"
	"testing"

	"example.org/collinear/internal/rigid"
)

// lobed is a form with an eccentricity, an oval and three lobes, in millimetres.
func lobed(theta float64) float64 {
	wave := func(height, lobes, at float64) float64 {
		return height * math.Cos((lobes*theta-at)*math.Pi/180)
	}
	return wave(0.040, 1, 25) + wave(0.015, 2, 70) + wave(0.010, 3, 10)
}

// touched are the probes that ride on a surface, with the sign by which its
// form enters the reading.
var touched = []struct {
	name  string
	probe rigid.Instrument
	sign  float64
}{
	{"rim", rigid.Instrument{Kind: rigid.Rim, Station: 30, Radius: 75}, +1},
	{"rim, movable carrier", rigid.Instrument{Kind: rigid.Rim, Carrier: rigid.Movable, Station: -30, Radius: 75}, +1},
	{"bore", rigid.Instrument{Kind: rigid.Bore, Station: 30, Radius: 75}, -1},
	{"straightedge", rigid.Instrument{Kind: rigid.Straightedge, Station: 30, Radius: 75}, -1},
	{"near face", rigid.Instrument{Kind: rigid.NearFace, Radius: 75}, +1},
	{"near face, movable carrier", rigid.Instrument{Kind: rigid.NearFace, Carrier: rigid.Movable, Radius: 75}, +1},
	{"far face", rigid.Instrument{Kind: rigid.FarFace, Radius: 75}, +1},
	{"far face, movable carrier", rigid.Instrument{Kind: rigid.FarFace, Carrier: rigid.Movable, Radius: 75}, +1},
	{"gap", rigid.Instrument{Kind: rigid.Gap, Radius: 75}, -1},
	{"spacer", rigid.Instrument{Kind: rigid.SpacerNearFace, Radius: 75, Span: 500}, +1},
}

// secondOrderOfForm bounds how the point that is touched wanders: the shafts lie
// under 0.3 mm apart at 75 mm and the form climbs under 0.12 mm a radian.
const secondOrderOfForm = 0.12 * 0.3 / 75

// clocks are eight places round the turn, 12 o'clock first.
var clocks = []float64{0, 45, 90, 135, 180, 225, 270, 315}

// Only the carrier turns: the form is added to what the misalignment gives.
func TestRunoutIsAdded(t *testing.T) {
	for _, row := range touched {
		rough := row.probe
		rough.Runout = lobed
		for _, clock := range clocks {
			added := rough.Read(caseA, clock) - row.probe.Read(caseA, clock)
			checkNear(t, row.name, added, row.sign*lobed(clock), secondOrderOfForm)
			inLine := rough.Read(rigid.Pose{}, clock) - row.probe.Read(rigid.Pose{}, clock)
			checkNear(t, row.name+", in line", inLine, row.sign*lobed(clock), 1e-14)
		}
	}
}

// Both shafts turn together: the form drops out, to first order.
func TestRunoutDropsOutWhenBothTurn(t *testing.T) {
	for _, row := range touched {
		rough := row.probe
		rough.Runout, rough.TargetTurned, rough.Mark = lobed, true, 130
		got, want := rough.Sweep(caseA, clocks...), row.probe.Sweep(caseA, clocks...)
		for n := range clocks {
			checkNear(t, row.name, got[n], want[n], 2*secondOrderOfForm)
		}
		for _, r := range rough.Sweep(rigid.Pose{}, clocks...) {
			checkNear(t, row.name+", in line", r, 0, 1e-14)
		}
	}
}

// Only the target turns under a still dial at t0: runout alone. What is measured
// in this way, E(theta) with the target turned clockwise by theta, is removed
// from a sweep of the carrier by r(t) - E(t0 - t).
func TestMeasuredRunoutIsRemoved(t *testing.T) {
	const t0 = 90
	for _, row := range touched {
		sweep := row.probe
		sweep.Runout = lobed
		measured := func(theta float64) float64 {
			still := sweep
			still.Mark = theta
			return still.Read(caseA, t0) - row.probe.Read(caseA, t0)
		}
		for _, clock := range clocks {
			corrected := sweep.Read(caseA, clock) - measured(t0-clock)
			checkNear(t, row.name, corrected, row.probe.Read(caseA, clock), 2*secondOrderOfForm)
		}
		checkNear(t, row.name+", the form itself", measured(40), row.sign*lobed(t0-40), secondOrderOfForm)
	}
}

// Two sweeps with the target indexed by half a turn: half the sum of the fitted
// vectors is the misalignment and half their difference the runout. Lobes of the
// second order never reach the vectors; those of the first and third change
// their sign. For feeler gaps it is both shafts that turn.
func TestIndexingByHalfATurn(t *testing.T) {
	for _, row := range touched {
		y, z := harmonic(quarters(row.probe, caseA))
		formY, formZ := (lobed(90)-lobed(270))/2, (lobed(0)-lobed(180))/2
		marked := func(mark float64) (y, z float64) {
			rough := row.probe
			rough.Runout, rough.Mark = lobed, mark
			return harmonic(quarters(rough, caseA))
		}
		y0, z0 := marked(0)
		y180, z180 := marked(180)
		checkNear(t, row.name+", misalignment y", (y0+y180)/2, y, secondOrderOfForm)
		checkNear(t, row.name+", misalignment z", (z0+z180)/2, z, secondOrderOfForm)
		checkNear(t, row.name+", runout y", (y0-y180)/2, row.sign*formY, secondOrderOfForm)
		checkNear(t, row.name+", runout z", (z0-z180)/2, row.sign*formZ, secondOrderOfForm)
	}
}

// The angle round the target starts at its mark, grows clockwise and stays
// within 0 up to 360, whatever turns.
func TestAnglesRoundTheTarget(t *testing.T) {
	for _, row := range []struct {
		name        string
		turned      bool
		mark, clock float64
		want        float64
	}{
		{"mark at 12", false, 0, 40, 40},
		{"mark ahead of the dial", false, 100, 40, 300},
		{"mark beyond a turn", false, 730, 40, 30},
		{"turning together", true, 15, 200, 345},
	} {
		var seen float64
		probe := rigid.Instrument{Radius: 75, Mark: row.mark, TargetTurned: row.turned}
		probe.Runout = func(theta float64) float64 { seen = theta; return 0 }
		probe.Read(rigid.Pose{}, row.clock)
		checkNear(t, row.name, seen, row.want, 1e-10)
	}
	probe := rigid.Instrument{Radius: 75, TargetTurned: true}
	probe.Runout = func(theta float64) float64 {
		if !(theta >= 0 && theta < 360) {
			t.Errorf("angle %v is not within 0 up to 360", theta)
		}
		return 0
	}
	for clock := -400.0; clock < 800; clock += 7 {
		probe.Read(rigid.Pose{}, clock)
	}
}
