package align

import (
	"example.org/collinear/internal/words"
	"example.org/collinear/units"
)

// Shaft names one of the two machines. The zero value is none: which shaft
// carries a dial is never guessed.
type Shaft uint8

// The two shafts.
const (
	Stationary Shaft = iota + 1 // the reference
	Movable                     // the one whose feet are shimmed and slid
)

var shaftNames = words.List{"", "stationary", "movable"}

// String returns the wire form, "stationary" or "movable".
func (s Shaft) String() string { return shaftNames.Word(uint8(s)) }

// MarshalText gives the wire form.
func (s Shaft) MarshalText() ([]byte, error) { return shaftNames.Marshal(uint8(s)) }

// UnmarshalText reads the wire form.
func (s *Shaft) UnmarshalText(text []byte) error { return words.Unmarshal(s, shaftNames, text) }

// Kind is what a probe touches and how. The zero value is none.
type Kind uint8

// The kinds. A plunger counts up as it is pushed in, so a gauge that reads a
// gap counts the other way round.
const (
	Rim           Kind = iota + 1 // dial on the outside of the other shaft's rim
	Bore                          // dial in a bore of the other shaft, plunger outwards
	NearFace                      // dial on a face, plunger pointing from the carrying machine towards the other; an angle sensor is one at a radius of 1 m
	FarFace                       // dial on a face, plunger pointing back towards the carrying machine
	Gap                           // feeler or inside gauge between the two near faces; carried by neither shaft
	Straightedge                  // feeler under a straightedge that lies on the carrier's rim, at the other rim
	SpacerFace                    // near-face dial at one joint of a spacer coupling; the carrier names the joint
	SpacerFarFace                 // the same with the plunger pointing back
	Displacement                  // sensor of the movable shaft's displacement towards the sensor's clock position; its gain carries the sign
)

var kindNames = words.List{
	"", "rim", "bore", "near_face", "far_face", "gap", "straightedge",
	"spacer_face", "spacer_far_face", "displacement",
}

// String returns the wire form, for one "near_face".
func (k Kind) String() string { return kindNames.Word(uint8(k)) }

// MarshalText gives the wire form.
func (k Kind) MarshalText() ([]byte, error) { return kindNames.Marshal(uint8(k)) }

// UnmarshalText reads the wire form.
func (k *Kind) UnmarshalText(text []byte) error { return words.Unmarshal(k, kindNames, text) }

// Probe is one dial, gauge or sensor and how it is mounted. Which fields a kind
// uses stands beside them; one that it does not use must be zero.
type Probe struct {
	Kind    Kind         `json:"kind"`
	Carrier Shaft        `json:"carrier,omitzero"` // the shaft that carries it (Straightedge: on whose rim it lies; spacer faces: whose joint); not Gap, Displacement
	Station units.Length `json:"station,omitzero"` // signed x where it touches: Rim, Bore, Straightedge, Displacement
	Radius  units.Length `json:"radius,omitzero"`  // of the circle that the tip sweeps, above zero: faces and Gap; may be given for Rim and Bore
	Span    units.Length `json:"span,omitzero"`    // flex plane to flex plane, above zero: spacer faces
	Gain    float64      `json:"gain,omitzero"`    // reading per displacement towards the sensor, not zero: Displacement
}

// A law is what a probe reads, in millimetres, up to a constant:
//
//	r(t) = c + (onOffset*offset + onSlope*slope) . u(t)    u(t) = (sin t, cos t)
//
// in the horizontal and the vertical plane. Derived here from two rigid shafts
// to first order, and checked against their exact simulation.
type law struct{ onOffset, onSlope float64 }

func (l law) times(k float64) law { return law{k * l.onOffset, k * l.onSlope} }

// law returns the law of a sound probe.
func (p Probe) law() law {
	radius := mm(p.Radius)
	displacement := law{1, mm(p.Station)}
	opening := law{0, radius}
	spacer := law{radius / mm(p.Span) * p.Carrier.sign(), radius / 2}
	switch p.Kind {
	case Rim:
		return displacement.times(p.Carrier.sign())
	case Bore, Straightedge:
		return displacement.times(-p.Carrier.sign())
	case NearFace:
		return opening
	case FarFace, Gap:
		return opening.times(-1)
	case SpacerFace:
		return spacer
	case SpacerFarFace:
		return spacer.times(-1)
	default: // Displacement
		return displacement.times(p.Gain)
	}
}

// sign is +1 for the stationary shaft, -1 for the movable one.
func (s Shaft) sign() float64 {
	if s == Movable {
		return -1
	}
	return 1
}

// sagSign tells how droop of the bracket at 12 o'clock changes the reading: it
// pushes in a plunger that points inwards and lets out one that points outwards.
// The droop of a face dial is entered with its own sign.
func (k Kind) sagSign() float64 {
	if k == Bore {
		return -1
	}
	return 1
}

func mm(l units.Length) float64 { return float64(l) / float64(units.Millimetre) }

func fromMM(x float64) units.Length { return units.Length(x * float64(units.Millimetre)) }
