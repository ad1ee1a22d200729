package rigid

import "math"

// Kind is what an instrument is and how it is set up.
type Kind int

// The kinds of instrument. A dial's reading grows when its plunger is pushed
// in; a feeler reads the gap.
const (
	// Rim is a dial whose plunger points inwards at the carrier's axis and
	// touches the other shaft's rim.
	Rim Kind = iota
	// Bore is a dial whose plunger points outwards and touches the other
	// shaft's bore from inside.
	Bore
	// NearFace is a dial parallel to the carrier's axis whose plunger points
	// from the carrying machine towards the other one. An angle sensor that
	// reads slope times 1 m is a NearFace of radius 1000.
	NearFace
	// FarFace is a dial parallel to the carrier's axis whose plunger points
	// back at the carrying machine.
	FarFace
	// Gap is a feeler or an inside gauge between the near faces of both shafts,
	// parallel to the carrier's axis.
	Gap
	// Straightedge is a straightedge that lies along the carrier's rim, with a
	// feeler between it and the other shaft's rim.
	Straightedge
	// SpacerNearFace is a NearFace between a spacer and the machine that
	// Carrier names; the machine carries it unless BySpacer is set.
	SpacerNearFace
	// SpacerFarFace is a FarFace between a spacer and the machine that Carrier
	// names; the machine carries it unless BySpacer is set.
	SpacerFarFace
	// Displacement is a sensor that reads Gain times the displacement of the
	// movable shaft's centre towards the sensor's clock position, relative to
	// the stationary axis in the plane of its station.
	Displacement
)

// Shaft is one of the two shafts.
type Shaft int

// The two shafts.
const (
	Stationary Shaft = iota
	Movable
)

// Instrument is a probe as it is set up. Lengths are in millimetres. Fields that
// a kind does not name are not used by it.
type Instrument struct {
	Kind Kind
	// Carrier is the shaft the instrument turns with. For Straightedge it is
	// the shaft whose rim the straightedge lies on; for the spacer faces it
	// names the joint.
	Carrier Shaft
	// Station is where the plunger's plane stands, as a signed x along the
	// carrier's own axis: Rim, Bore, Straightedge, Displacement.
	Station float64
	// Radius is the radius of the touched cylinder for Rim, Bore and
	// Straightedge, above zero; for the faces and Gap it is the radius of the
	// circle that the tip sweeps.
	Radius float64
	// Span is the length of the spacer, flex plane to flex plane, with the flex
	// planes at x = -Span/2 and +Span/2: spacer faces.
	Span float64
	// Gain multiplies what a Displacement senses.
	Gain float64
	// Sag is the droop of the bracket at the dial. On Rim, Bore and
	// Straightedge it lowers the instrument and is zero or more. On faces it is
	// what the droop pushes the plunger in at 12, with its sign.
	Sag float64
	// Runout is the form of the touched surface, or nil for a perfect one, at an
	// angle of 0 up to 360 degrees clockwise round the target from its own mark.
	// It is positive away from the target's axis on Rim, Bore and Straightedge,
	// and towards the dial (narrowing the gap) on faces and Gap. It should change
	// slowly against the radius, as runout does.
	Runout func(theta float64) float64
	// TargetTurned says that the touched shaft turns together with the
	// carrier, so that its mark stays at the same angle from the dial.
	TargetTurned bool
	// Mark is the clock angle, round the target's own axis, at which the
	// target's mark stands; with TargetTurned, when the dial is at 12.
	Mark float64
	// BySpacer says that the spacer carries the dial and the machine is touched:
	// spacer faces.
	BySpacer bool
	// Float is how far the movable shaft has moved along its own axis, away from
	// the stationary machine, when the dial is at a clock angle; nil for none.
	Float func(clock float64) float64
}

// Read returns what the instrument reads at a clock angle in degrees round its
// carrier's own axis, in millimetres (times Gain for Displacement), up to a
// constant that is the same at all clock angles. It is NaN where the plunger's
// line misses the target, as it does with a radius of zero, and for an unknown
// kind, so that no comparison with it holds.
func (i Instrument) Read(p Pose, clock float64) float64 {
	s := i.setUp(p, clock)
	switch i.Kind {
	case Rim: // the plunger points inwards: what stands further out pushes it in
		return s.rise()
	case Bore: // the plunger points outwards
		return -s.rise()
	case Straightedge: // what stands further out narrows the gap
		return -s.rise()
	case NearFace, SpacerNearFace: // a face further ahead of the plunger lets it out
		return -s.ahead(s.toOther) + s.push()
	case FarFace, SpacerFarFace:
		return -s.ahead(-s.toOther) + s.push()
	case Gap:
		return s.ahead(s.toOther)
	case Displacement:
		return i.Gain * s.shift() * s.toOther
	}
	return math.NaN()
}

// Sweep returns the readings at the clock angles, with the zero set at the first
// of them.
func (i Instrument) Sweep(p Pose, clocks ...float64) []float64 {
	readings := make([]float64, len(clocks))
	for n, clock := range clocks {
		readings[n] = i.Read(p, clock)
	}
	for n := len(readings) - 1; n >= 0; n-- { // the first, which is the zero, last
		readings[n] -= readings[0]
	}
	return readings
}
