package rigid_test

import (
	"math"
	"testing"

	"example.org/collinear/internal/rigid"
)

// The rows follow from the definitions by hand to the digits given, except case
// A on the rim, whose second-order parts were derived here from the crossing of
// a line and an inclined cylinder.
func TestSignTable(t *testing.T) {
	const exact = 1e-12
	high := rigid.Pose{OffsetZ: 0.10}
	beside := rigid.Pose{OffsetY: 0.10}
	tilted := rigid.Pose{SlopeZ: 1e-3}
	rim := rigid.Instrument{Radius: 75}
	byMovable := rigid.Instrument{Carrier: rigid.Movable, Radius: 75}
	second := 0.10*0.10/(2*75) + 1e-9 // what a parallel rim adds at second order
	digits := 0.5e-6
	rows := []struct {
		name      string
		pose      rigid.Pose
		probe     rigid.Instrument
		want      [4]float64
		tolerance float64
	}{
		{"high, the dial rides down on its way to 6", high, rim, [4]float64{0, -0.10, -0.20, -0.10}, second},
		{"high, carried the other way round", high, byMovable, [4]float64{0, +0.10, +0.20, +0.10}, second},
		{"towards 3, pushed in there", beside, rim, [4]float64{0, +0.10, 0, -0.10}, second},
		{"rising away, the near face opens at 6", tilted, rigid.Instrument{Kind: rigid.NearFace, Radius: 50}, [4]float64{0, -0.05, -0.10, -0.05}, exact},
		{"the far face is the back of it", tilted, rigid.Instrument{Kind: rigid.FarFace, Radius: 50}, [4]float64{0, +0.05, +0.10, +0.05}, exact},
		{"a feeler reads the opening itself", tilted, rigid.Instrument{Kind: rigid.Gap, Radius: 50}, [4]float64{0, +0.05, +0.10, +0.05}, exact},
		{"A on the movable rim", caseA, at(rim, 40), [4]float64{0, 0.363764, 0.456000, 0.091764}, digits},
		{"A on the near face", caseA, rigid.Instrument{Kind: rigid.NearFace, Radius: 75}, [4]float64{0, 0.082500, 0.105000, 0.022500}, exact},
		{"A on the stationary rim", caseA, at(byMovable, -50), [4]float64{0, -0.265127, -0.330000, -0.065127}, digits},
		{"A with roles and standpoint exchanged", swapped(caseA), at(rim, 50), [4]float64{0, -0.065127, -0.330000, -0.265127}, digits},
		{"a drooping bracket alone", rigid.Pose{}, rigid.Instrument{Radius: 75, Sag: 0.1}, [4]float64{0, -0.1, -0.2, -0.1}, second},
		{"the same, other carrier", rigid.Pose{}, rigid.Instrument{Carrier: rigid.Movable, Radius: 75, Sag: 0.1}, [4]float64{0, -0.1, -0.2, -0.1}, second},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got := quarters(row.probe, row.pose)
			for n, want := range row.want {
				checkNear(t, [4]string{"12", "3", "6", "9"}[n], got[n], want, row.tolerance)
			}
		})
	}
}

// at returns the instrument moved to a station.
func at(i rigid.Instrument, station float64) rigid.Instrument {
	i.Station = station
	return i
}

// swapped is the pose as it is seen with roles and standpoint exchanged, to
// first order.
func swapped(p rigid.Pose) rigid.Pose {
	return rigid.Pose{OffsetY: p.OffsetY, SlopeY: -p.SlopeY, OffsetZ: -p.OffsetZ, SlopeZ: p.SlopeZ}
}

func TestClosedForms(t *testing.T) {
	const diameter, tolerance = 150.0, 2 * nm
	y, z := caseA.At(40)
	wy, wz := harmonic(quarters(rigid.Instrument{Station: 40, Radius: 75}, caseA))
	checkNear(t, "w_y at 40", wy, y, tolerance)
	checkNear(t, "w_z at 40", wz, z, tolerance)

	y, z = caseA.At(-50)
	uy, uz := harmonic(quarters(rigid.Instrument{Carrier: rigid.Movable, Station: -50, Radius: 75}, caseA))
	checkNear(t, "w_y at -50", -uy, y, tolerance)
	checkNear(t, "w_z at -50", -uz, z, tolerance)

	checkNear(t, "reverse, slope_y", (wy+uy)/90, caseA.SlopeY, 2*tolerance/90)
	checkNear(t, "reverse, slope_z", (wz+uz)/90, caseA.SlopeZ, 2*tolerance/90)

	for _, face := range []struct {
		kind rigid.Kind
		k    float64
	}{{rigid.NearFace, +1}, {rigid.FarFace, -1}, {rigid.Gap, -1}} {
		fy, fz := harmonic(quarters(rigid.Instrument{Kind: face.kind, Radius: diameter / 2}, caseA))
		slopeY, slopeZ := face.k*2*fy/diameter, face.k*2*fz/diameter
		checkNear(t, "face, slope_y", slopeY, caseA.SlopeY, 1e-15)
		checkNear(t, "face, slope_z", slopeZ, caseA.SlopeZ, 1e-15)
		checkNear(t, "rim-face, offset_y", wy-slopeY*40, caseA.OffsetY, tolerance)
		checkNear(t, "rim-face, offset_z", wz-slopeZ*40, caseA.OffsetZ, tolerance)
	}
}

// Flex planes 800 mm apart, case A: the angles at the two joints are the ones
// that the faces of the spacer read.
func TestSpacerAngles(t *testing.T) {
	const diameter = 150.0
	for _, joint := range []struct {
		by     rigid.Shaft
		ay, az float64
	}{
		{rigid.Stationary, 0.35e-3, -0.60e-3},
		{rigid.Movable, 0.05e-3, -0.10e-3},
	} {
		for _, bySpacer := range []bool{false, true} {
			face := rigid.Instrument{Kind: rigid.SpacerNearFace, Carrier: joint.by, Radius: diameter / 2, Span: 800, BySpacer: bySpacer}
			y, z := harmonic(quarters(face, caseA))
			checkNear(t, "alpha_y", 2*y/diameter, joint.ay, 1e-9)
			checkNear(t, "alpha_z", 2*z/diameter, joint.az, 1e-9)
		}
	}
}

// The trade's words for the signs of a slope.
func TestGapOpens(t *testing.T) {
	gap := rigid.Instrument{Kind: rigid.Gap, Radius: 60}
	for _, row := range []struct {
		name  string
		pose  rigid.Pose
		opens float64
	}{
		{"rising away from the coupling opens at 6", rigid.Pose{SlopeZ: 1e-3}, 180},
		{"running out towards 3 opens at 9", rigid.Pose{SlopeY: 1e-3}, 270},
	} {
		r := gap.Sweep(row.pose, row.opens, row.opens-180)
		checkNear(t, row.name, r[0]-r[1], 1e-3*120, 1e-12)
	}
}

// The difference of two opposite readings is twice the part of w(x) on their
// diameter, and the whole travel over a turn is twice its length.
func TestTotalIndicatorReading(t *testing.T) {
	rim := rigid.Instrument{Station: 40, Radius: 75}
	y, z := caseA.At(40)
	least, most := math.Inf(1), math.Inf(-1)
	for clock := 0.0; clock < 360; clock += 0.25 {
		r := rim.Read(caseA, clock)
		least, most = min(least, r), max(most, r)
		checkNear(t, "opposite readings", r-rim.Read(caseA, clock+180), 2*along(y, z, clock), 5*nm)
	}
	// Between steps of 1/4 degree the crest is missed by 1e-6 of its height.
	checkNear(t, "total indicator reading", most-least, 2*math.Hypot(y, z), 2*nm)
}
