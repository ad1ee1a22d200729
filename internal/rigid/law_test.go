package rigid_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/collinear/internal/rigid"
	"pgregory.net/rapid"
)

// law is an instrument with its first-order law
// r = c + k (a*offset + b*slope) . u(t).
type law struct {
	name    string
	probe   rigid.Instrument
	k, a, b float64
}

// laws returns the law of every kind and carrier at one set of sizes.
func laws(x, radius, span float64) []law {
	face := func(kind rigid.Kind, by rigid.Shaft) rigid.Instrument {
		return rigid.Instrument{Kind: kind, Carrier: by, Radius: radius}
	}
	radial := func(kind rigid.Kind, by rigid.Shaft) rigid.Instrument {
		return rigid.Instrument{Kind: kind, Carrier: by, Radius: radius, Station: x, Gain: 1}
	}
	all := []law{
		{"rim, stationary", radial(rigid.Rim, rigid.Stationary), +1, 1, x},
		{"rim, movable", radial(rigid.Rim, rigid.Movable), -1, 1, x},
		{"bore, stationary", radial(rigid.Bore, rigid.Stationary), -1, 1, x},
		{"bore, movable", radial(rigid.Bore, rigid.Movable), +1, 1, x},
		{"straightedge on the stationary rim", radial(rigid.Straightedge, rigid.Stationary), -1, 1, x},
		{"straightedge on the movable rim", radial(rigid.Straightedge, rigid.Movable), +1, 1, x},
		{"near face, stationary", face(rigid.NearFace, rigid.Stationary), +1, 0, radius},
		{"near face, movable", face(rigid.NearFace, rigid.Movable), +1, 0, radius},
		{"far face, stationary", face(rigid.FarFace, rigid.Stationary), -1, 0, radius},
		{"far face, movable", face(rigid.FarFace, rigid.Movable), -1, 0, radius},
		{"gap, from the stationary face", face(rigid.Gap, rigid.Stationary), -1, 0, radius},
		{"gap, from the movable face", face(rigid.Gap, rigid.Movable), -1, 0, radius},
		{"displacement, on the stationary side", radial(rigid.Displacement, rigid.Stationary), +1, 1, x},
		{"displacement, on the movable side", radial(rigid.Displacement, rigid.Movable), +1, 1, x},
	}
	falling := law{"displacement, falling", radial(rigid.Displacement, rigid.Stationary), -2.5, 1, x}
	falling.probe.Gain = -2.5
	return append(append(all, falling), spacerLaws(radius, span)...)
}

// spacerLaws returns the laws of the faces at both joints, near and far, carried
// by the machine and by the spacer.
func spacerLaws(radius, span float64) []law {
	var all []law
	for _, joint := range []struct {
		by rigid.Shaft
		a  float64
	}{{rigid.Stationary, radius / span}, {rigid.Movable, -radius / span}} {
		for _, bySpacer := range []bool{false, true} {
			for kind, k := range map[rigid.Kind]float64{rigid.SpacerNearFace: +1, rigid.SpacerFarFace: -1} {
				all = append(all, law{
					fmt.Sprintf("spacer, joint %d, kind %d, by spacer %t", joint.by, kind, bySpacer),
					rigid.Instrument{Kind: kind, Carrier: joint.by, Radius: radius, Span: span, BySpacer: bySpacer},
					k, joint.a, radius / 2,
				})
			}
		}
	}
	return all
}

// part returns the law's reading at a clock angle.
func (l law) part(p rigid.Pose, clock float64) float64 {
	return l.k * along(l.a*p.OffsetY+l.b*p.SlopeY, l.a*p.OffsetZ+l.b*p.SlopeZ, clock)
}

// size bounds what the law's reading can be.
func (l law) size(p rigid.Pose) float64 {
	return math.Abs(l.k) * (math.Abs(l.a)*math.Hypot(p.OffsetY, p.OffsetZ) + math.Abs(l.b)*math.Hypot(p.SlopeY, p.SlopeZ))
}

// For a pose that shrinks to nothing the geometry must become the law. What is
// left is of second order: a millionth of the reading covers w^2/radius, and
// 1e-15 mm covers radius*slope^2 where w happens to vanish.
func TestFirstOrderLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, 1e-6, 1e-9)
		from := rapid.Float64Range(-720, 720).Draw(t, "from")
		to := rapid.Float64Range(-720, 720).Draw(t, "to")
		sizes := laws(
			rapid.Float64Range(-3000, 3000).Draw(t, "x"),
			rapid.Float64Range(40, 500).Draw(t, "radius"),
			rapid.Float64Range(100, 3000).Draw(t, "span"))
		for _, l := range sizes {
			got := l.probe.Sweep(p, from, to)[1]
			checkNear(t, l.name, got, l.part(p, to)-l.part(p, from), 1e-6*l.size(p)+1e-15)
		}
	})
}

// At the quarters and after (R12 - R6)/2 and (R3 - R9)/2 the law holds to 10 nm
// for an offset up to 1 mm and a slope up to 2 mm/m (lengths of the vectors),
// radii from 40 mm (faces up to 150 mm), stations up to 1000 mm and spacers from
// 200 mm. Derived here by this very search over directions and sizes.
func TestLinearDomain(t *testing.T) {
	worst := 0.0
	for _, x := range []float64{-1000, 0, 1000} {
		for _, sizes := range [][2]float64{{40, 2000}, {40, 200}, {150, 200}} {
			for _, l := range laws(x, sizes[0], sizes[1]) {
				worst = max(worst, l.worst(1, 2e-3))
			}
		}
	}
	if worst > 10*nm || worst < 5*nm {
		t.Errorf("the law is off by up to %.3g nm, want 5 to 10", worst/nm)
	}
}

// worst returns the largest error of the law at the quarters over all directions
// of an offset and a slope of the given lengths.
func (l law) worst(offset, slope float64) float64 {
	worst := 0.0
	for offsetAt := 0.0; offsetAt < 360; offsetAt += 15 {
		for slopeAt := 0.0; slopeAt < 360; slopeAt += 15 {
			p := pointing(offset, offsetAt, slope, slopeAt)
			y, z := harmonic(quarters(l.probe, p))
			worst = max(worst, math.Abs(y-l.part(p, 90)), math.Abs(z-l.part(p, 0)))
		}
	}
	return worst
}

// Where the domain ends: the angles at a short spacer grow with offset/span, and
// their third order with the swing radius.
func TestLinearDomainEnds(t *testing.T) {
	worst := 0.0
	for _, l := range spacerLaws(500, 200) {
		worst = max(worst, l.worst(1, 2e-3))
	}
	checkNear(t, "swing radius 500 on a spacer of 200", worst, 32*nm, 2*nm)

	inBothPlanes := rigid.Pose{OffsetY: 1, SlopeY: -2e-3, OffsetZ: -1, SlopeZ: -2e-3}
	y, z := harmonic(quarters(rigid.Instrument{Carrier: rigid.Movable, Station: -1000, Radius: 75}, inBothPlanes))
	wy, wz := inBothPlanes.At(-1000)
	checkNear(t, "1 mm and 2 mm/m in both planes at once", max(math.Abs(-y-wy), math.Abs(-z-wz)), 18*nm, 1*nm)
}
