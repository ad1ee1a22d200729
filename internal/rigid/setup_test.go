package rigid_test

import (
	"math"
	"testing"

	"example.org/collinear/internal/rigid"
	"pgregory.net/rapid"
)

// Droop adds s cos t to a rim reading whoever carries it, and takes it from a
// bore reading. The second order, (w + s)^2/(2 rho), is the tolerance.
func TestSagAddsToTheReading(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, 0.3, 1e-3)
		sag := rapid.Float64Range(0, 0.5).Draw(t, "sag")
		clock := rapid.Float64Range(0, 360).Draw(t, "clock")
		const x, rho = 60, 75
		w := math.Hypot(p.OffsetY, p.OffsetZ) + x*math.Hypot(p.SlopeY, p.SlopeZ)
		tolerance := ((w+sag)*(w+sag)-w*w)/(2*rho) + 1e-6*sag + 1e-14
		for _, kind := range []struct {
			of   rigid.Kind
			sign float64
		}{{rigid.Rim, +1}, {rigid.Bore, -1}} {
			for _, c := range carriers {
				stiff := rigid.Instrument{Kind: kind.of, Carrier: c.by, Station: x, Radius: rho}
				limp := stiff
				limp.Sag = sag
				added := limp.Read(p, clock) - stiff.Read(p, clock)
				checkNear(t, c.name, added, kind.sign*along(0, sag, clock), tolerance)
			}
		}
	})
}

// On a face the droop is what it pushes in at 12, with its sign.
func TestSagOnAFace(t *testing.T) {
	for _, kind := range []rigid.Kind{rigid.NearFace, rigid.FarFace, rigid.SpacerNearFace, rigid.SpacerFarFace} {
		for _, c := range carriers {
			for _, sag := range []float64{0.02, -0.02} {
				stiff := rigid.Instrument{Kind: kind, Carrier: c.by, Radius: 75, Span: 400}
				limp := stiff
				limp.Sag = sag
				for _, clock := range []float64{0, 50, 90, 180, 290} {
					added := limp.Read(caseA, clock) - stiff.Read(caseA, clock)
					checkNear(t, c.name, added, along(0, sag, clock), 1e-15)
				}
			}
		}
	}
}

// Ignored, sag shifts w_z by +s seen from the stationary carrier and by -s seen
// from the movable one, and gives a reverse set a false slope.
func TestSagIgnored(t *testing.T) {
	const xm, xs, sm, ss = 60.0, -40.0, 0.03, 0.05
	onMovable := rigid.Instrument{Station: xm, Radius: 75, Sag: ss}
	onStationary := rigid.Instrument{Carrier: rigid.Movable, Station: xs, Radius: 75, Sag: sm}
	_, za := harmonic(quarters(onMovable, caseA))
	_, zb := harmonic(quarters(onStationary, caseA))
	_, wm := caseA.At(xm)
	_, ws := caseA.At(xs)
	checkNear(t, "seen from the stationary carrier", za-wm, +ss, nm)
	checkNear(t, "seen from the movable carrier", -zb-ws, -sm, nm)
	checkNear(t, "false slope", (za+zb)/(xm-xs)-caseA.SlopeZ, (sm+ss)/(xm-xs), 2*nm/100)
}

// On a straight mandrel only sag remains: s = (M12 - M6)/2.
func TestSagFromAMandrel(t *testing.T) {
	m := quarters(rigid.Instrument{Radius: 75, Sag: 0.07}, rigid.Pose{})
	checkNear(t, "sag", (m[0]-m[2])/2, 0.07, 1e-15)
}

// Two face dials on one carrier, same side, 180 degrees apart: their difference
// does not see the float and is one probe with b = R_A + R_B. Alone, each dial
// reads the float in full.
func TestAxialFloatCancels(t *testing.T) {
	float := func(clock float64) float64 { return 0.3 + clock/1000 }
	for _, c := range carriers {
		for _, side := range []struct {
			kind rigid.Kind
			k    float64
		}{{rigid.NearFace, +1}, {rigid.FarFace, -1}} {
			pair := func(float func(float64) float64, clock float64) (a, b float64) {
				face := rigid.Instrument{Kind: side.kind, Carrier: c.by, Float: float}
				face.Radius = 80
				a = face.Read(caseA, clock)
				// The second dial is half a turn round, at the same moment.
				face.Radius = -50
				return a, face.Read(caseA, clock)
			}
			a0, b0 := pair(float, 0)
			still, _ := pair(nil, 0)
			checkNear(t, "float away from the other machine lets a near dial out", a0-still, -side.k*0.3, 1e-6)
			for _, clock := range []float64{90, 180, 200, 270} {
				a, b := pair(float, clock)
				law := func(clock float64) float64 { return side.k * 130 * along(caseA.SlopeY, caseA.SlopeZ, clock) }
				checkNear(t, c.name, (a-b)-(a0-b0), law(clock)-law(0), nm)
			}
		}
	}
}

// A straightedge and a feeler read what a rim dial on the same carrier reads,
// the other way round, because the gap closes where the plunger is pushed in.
func TestStraightedgeAgainstRim(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, 1, 2e-3)
		clock := rapid.Float64Range(0, 360).Draw(t, "clock")
		for _, c := range carriers {
			rim := rigid.Instrument{Carrier: c.by, Station: 120, Radius: 75}
			edge := rim
			edge.Kind = rigid.Straightedge
			checkNear(t, c.name, rim.Read(p, clock), -edge.Read(p, clock), 0)
		}
	})
}
