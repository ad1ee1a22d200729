package rigid_test

import (
	"testing"

	"example.org/collinear/internal/rigid"
)

// A machine moved under standing dials: from case A, offset_z by +0.05 mm and
// slope_z by +0.2 mm/m. To first order w_z(40) changes by 0.058 and w_z(-50) by
// 0.040; the rest is the roundness of the rim.
func TestMoveUnderStandingDials(t *testing.T) {
	moved := caseA
	moved.OffsetZ += 0.05
	moved.SlopeZ += 0.2e-3
	for _, row := range []struct {
		name        string
		probe       rigid.Instrument
		clock, want float64
	}{
		{"stationary carrier at 12", rigid.Instrument{Station: 40, Radius: 75}, 0, +0.05799},
		{"movable carrier at 6", rigid.Instrument{Carrier: rigid.Movable, Station: -50, Radius: 75}, 180, +0.03999},
	} {
		change := row.probe.Read(moved, row.clock) - row.probe.Read(caseA, row.clock)
		checkNear(t, row.name, change, row.want, 5e-6)
	}
}

// Tilting a machine about its feet, the height H below the shaft, carries the
// shaft along by -H*slope_z, so a near face moves by slope_z (H + R cos t).
func TestTiltingAboutTheFeet(t *testing.T) {
	const height, radius, tilt = 300.0, 75.0, 0.5e-3
	probe := rigid.Instrument{Kind: rigid.NearFace, Radius: radius}
	tilted := probe
	tilted.Float = func(float64) float64 { return -height * tilt }
	for _, clock := range clocks {
		change := tilted.Read(rigid.Pose{SlopeZ: tilt}, clock) - probe.Read(rigid.Pose{}, clock)
		checkNear(t, "face", change, tilt*height+along(0, tilt*radius, clock), 0.05*nm) // H slope^3/2 is left
	}
}
