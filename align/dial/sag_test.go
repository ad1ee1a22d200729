package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// On a straight mandrel a bracket reads 0, -s, -2s, -s, whatever the zero and
// whichever shaft will carry it.
func TestMandrelSag(t *testing.T) {
	const s = 80 * units.Micrometre
	for _, carrier := range []rigid.Shaft{rigid.Stationary, rigid.Movable} {
		mandrel := rigid.Instrument{Kind: rigid.Rim, Carrier: carrier, Station: 50, Radius: 75, Sag: inMM(s)}
		sweep := mandrel.Sweep(rigid.Pose{}, 0, 90, 180, 270)
		for i, want := range []units.Length{0, -s, -2 * s, -s} {
			// A droop of 80 um across the plunger at 3 and 9 adds s^2/(2 rho) = 43 nm.
			checkNear(t, "mandrel", units.Length(sweep[i])*units.Millimetre, want, 43*units.Nanometre)
		}
		at12, at6 := units.Length(sweep[0])*units.Millimetre, units.Length(sweep[2])*units.Millimetre
		checkNear(t, "sag", dial.MandrelSag(at12, at6), s, 1e-6)
		checkNear(t, "sag from another zero", dial.MandrelSag(at12+units.Mil, at6+units.Mil), s, 1e-6)
	}
	// A face dial's droop lets the plunger out at 12: it is negative.
	face := rigid.Instrument{Kind: rigid.NearFace, Radius: 75, Sag: -0.02}
	turn := face.Sweep(rigid.Pose{}, 0, 180)
	checkNear(t, "droop of a face dial", dial.MandrelSag(units.Length(turn[0])*units.Millimetre, units.Length(turn[1])*units.Millimetre),
		-20*units.Micrometre, 1e-6)
}

// Sag that is left out moves the answer in the vertical plane alone: w_z by +s
// with a stationary carrier, by -s with a movable one; the other way round in a
// bore. On a reverse set it makes a false slope (s_m + s_s)/(x_m - x_s), on a
// face (+s near, -s far) a false slope 2s/D.
func TestSagLeftOut(t *testing.T) {
	const s, ss, sm = 50 * units.Micrometre, 80 * units.Micrometre, 30 * units.Micrometre
	const x, d = 60 * units.Millimetre, 150 * units.Millimetre
	wz := func(by units.Length) (shift align.Centreline) { shift.Vertical.Offset = by; return shift }
	tilted := func(about units.Length, slope units.Slope) (shift align.Centreline) {
		shift.Vertical = align.Line{Offset: -slope.Over(about), Slope: slope}
		return shift
	}
	rim := func(carrier align.Shaft, bore bool, sag, droop units.Length, far bool) solver {
		return dial.RimFace{
			Carrier: carrier,
			Rim:     dial.Rim{Station: x, Bore: bore, Sag: sag},
			Face:    dial.Face{Diameter: d, Far: far, Sag: droop},
		}
	}
	across := tilted(-x, (ss + sm).Per(2*x))
	across.Vertical.Offset = -sm + (ss + sm).Per(2*x).Over(x)
	for _, row := range []struct {
		name          string
		with, without solver
		m             method
		shift         align.Centreline
	}{
		{"stationary carrier", rim(align.Stationary, false, s, 0, false), rim(align.Stationary, false, 0, 0, false), methods[1], wz(+s)},
		{"movable carrier", rim(align.Movable, false, s, 0, false), rim(align.Movable, false, 0, 0, false), methods[1], wz(-s)},
		{"bore, stationary carrier", rim(align.Stationary, true, s, 0, false), rim(align.Stationary, true, 0, 0, false), methods[1], wz(+s)},
		{"near face", rim(align.Stationary, false, 0, s, false), rim(align.Stationary, false, 0, 0, false), methods[1], tilted(x, (2 * s).Per(d))},
		{"far face", rim(align.Stationary, false, 0, -s, true), rim(align.Stationary, false, 0, 0, true), methods[1], tilted(x, (2 * s).Per(d))},
		{
			"reverse",
			dial.Reverse{CarriedByStationary: dial.Rim{Station: x, Sag: ss}, CarriedByMovable: dial.Rim{Station: -x, Sag: sm}},
			dial.Reverse{CarriedByStationary: dial.Rim{Station: x}, CarriedByMovable: dial.Rim{Station: -x}},
			methods[0], across,
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			first, second := simulated(row.with, 75*units.Millimetre, caseA)
			right, wrong := solved(t, row.m.with(row.with, first, second)).Value, solved(t, row.m.with(row.without, first, second)).Value
			checkLine(t, "vertical shift", wrong.Minus(right).Vertical, row.shift.Vertical.Offset, row.shift.Vertical.Slope)
			checkLine(t, "horizontal shift", wrong.Minus(right).Horizontal, 0, 0)
			if by := differ(row.with.Sets(), right, caseA); !(by <= units.Nanometre) {
				t.Errorf("sag put in, off by %v", by)
			}
		})
	}
}

// A sag moves the readings at 12 and 6 by as much to either side, so the validity
// rule cannot see it.
func TestMissIsBlindToSag(t *testing.T) {
	if miss := dial.Miss(0, -3, -6, -3); miss != 0 {
		t.Errorf("a mandrel sweep misses by %v", miss)
	}
	eachMethod(t, func(t *rapid.T, m method) {
		bare := m.draw(t)
		a, b := drawSweep(t, 0), drawSweep(t, 0)
		with, without := solved(t, m.with(bare, a, b)), solved(t, m.with(withoutSag(bare), a, b))
		for i := range with.Checks {
			checkNear(t, "miss", with.Checks[i].Miss, without.Checks[i].Miss, 1e-6)
			checkNear(t, "return", with.Checks[i].Return, without.Checks[i].Return, 0)
		}
	})
}

// At 2 o'clock half of the sag counts.
func TestSagBetweenTheQuarters(t *testing.T) {
	const um = units.Micrometre
	checkNear(t, "reading", dial.WithoutSag(10*um, 80*um, 2*units.Hour), -30*um, 1e-9)
}
