package rigid_test

import (
	"math"
	"testing"

	"example.org/collinear/internal/rigid"
	"pgregory.net/rapid"
)

// exchanged is the pose as it is seen with the roles of the machines and the
// standpoint exchanged, exactly: the old stationary axis in a frame whose x runs
// down the old movable axis, whose z lies in the vertical plane through it and
// whose origin is that axis's own coupling centre.
func exchanged(p rigid.Pose) rigid.Pose {
	level := math.Sqrt(1 + p.SlopeY*p.SlopeY)
	whole := math.Sqrt(1 + p.SlopeY*p.SlopeY + p.SlopeZ*p.SlopeZ)
	// x1 is where the plane across the movable axis at its centre cuts the old
	// stationary axis.
	x1 := p.OffsetY*p.SlopeY + p.OffsetZ*p.SlopeZ
	return rigid.Pose{
		OffsetY: (p.OffsetY + p.SlopeY*x1) / level,
		SlopeY:  -p.SlopeY * whole / level,
		OffsetZ: -(p.OffsetZ*level*level + p.SlopeZ*(x1-p.SlopeY*p.OffsetY)) / (level * whole),
		SlopeZ:  p.SlopeZ / level,
	}
}

func TestExchangedMachines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, 2, 5e-3)
		x := rapid.Float64Range(-1000, 1000).Draw(t, "x")
		clock := rapid.Float64Range(0, 360).Draw(t, "clock")
		for _, kind := range []rigid.Kind{rigid.Rim, rigid.Bore, rigid.Straightedge, rigid.NearFace, rigid.FarFace, rigid.Gap} {
			byMovable := rigid.Instrument{Kind: kind, Carrier: rigid.Movable, Station: x, Radius: 75}
			mirrored := rigid.Instrument{Kind: kind, Station: -x, Radius: 75}
			got, want := byMovable.Sweep(p, 0, clock)[1], mirrored.Sweep(exchanged(p), 0, -clock)[1]
			checkNear(t, "movable carrier", got, want, 1e-12)
		}
	})
}

// The rule for hand work, (+offset_y, -slope_y, -offset_z, +slope_z), is the
// exact one but for terms of offset*slope^2 and slope^3.
func TestExchangeToFirstOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, 1, 2e-3)
		got, want := swapped(p), exchanged(p)
		checkNear(t, "offset y", got.OffsetY, want.OffsetY, 12*nm)
		checkNear(t, "offset z", got.OffsetZ, want.OffsetZ, 12*nm)
		checkNear(t, "slope y", got.SlopeY, want.SlopeY, 2e-8)
		checkNear(t, "slope z", got.SlopeZ, want.SlopeZ, 2e-8)
		twice := swapped(swapped(p))
		if twice != p {
			t.Errorf("exchanged twice: %v, want %v", twice, p)
		}
	})
}

// A crew that faces the movable machine sees 3 and 9 exchanged and nothing else:
// the mirrored pose read at mirrored clock angles gives the same readings.
func TestMirroredStandpoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, 1, 2e-3)
		mirror := rigid.Pose{OffsetY: -p.OffsetY, SlopeY: -p.SlopeY, OffsetZ: p.OffsetZ, SlopeZ: p.SlopeZ}
		clock := rapid.Float64Range(0, 360).Draw(t, "clock")
		for _, l := range laws(50, 75, 400) {
			checkNear(t, l.name, l.probe.Read(mirror, -clock), l.probe.Read(p, clock), 1e-14)
		}
	})
}
