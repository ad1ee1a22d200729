package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Sensor is one rotating sensor: clamped to one shaft, it looks at the other and
// is read at its own angles while the shaft turns. It needs the readings of its
// displacement channel, three or more at different angles, and may have those of
// an angle channel beside them. The zero of each channel may stand anywhere. The
// zero Sensor is refused.
type Sensor struct {
	Carrier  align.Shaft       `json:"carrier"`           // the shaft that it is clamped to and turns with
	Station  units.Length      `json:"station"`           // signed x where it looks at the other shaft, or at the target on it
	Mounting string            `json:"mounting,omitzero"` // sweeps of one name were taken without re-clamping, see align.Set
	View     align.View        `json:"view"`              // where the crew stands that names the clock positions
	Gain     float64           `json:"gain"`              // reading per displacement of the other shaft towards the sensor: +1 where it counts true lengths that grow as the other shaft comes nearer
	Readings []align.Reading   `json:"readings"`          // of the displacement channel, each at the clock position where the sensor stands
	U        align.Uncertainty `json:"u,omitzero"`        // Reading, Station, Clock and Angle; a sensor has no use for Radius and Sag
	Angle    AngleChannel      `json:"angle,omitzero"`    // the channel that sees how the shafts lean, if it has one
}

// AngleChannel is the channel of a sensor that sees slopes. Its readings stand at the
// sensor's clock positions, not necessarily those of the displacement channel.
// The zero value is no such channel.
type AngleChannel struct {
	Gain     float64        `json:"gain"`       // reading per slope of the other shaft that leads away from the carrying machine towards the sensor; the faces close at its clock position then
	Readings []AngleReading `json:"readings"`   // three or more at different angles
	U        units.Slope    `json:"u,omitzero"` // standard uncertainty of a reading; zero: not stated
}

// AngleReading is what an angle channel shows at one clock position.
type AngleReading struct {
	At    units.Clock `json:"at"`         // where the sensor stands, as the crew's view names it
	Value units.Slope `json:"value"`      // as shown, the gain in it
	U     units.Slope `json:"u,omitzero"` // standard uncertainty; zero: that of the channel, if any
}

// Sets returns the sensor as sets for [align.Fit] and all that takes sets: its
// displacement channel, then its angle channel if it has readings or a gain.
// Sets of several sensors go to one fit together; one sensor with two channels is
// enough.
//
// A sensor carried by the stationary shaft sees the movable one, which misses the
// axis by w; one carried by the movable shaft sees the stationary one, which from
// there lies at -w. With the displacement of the movable shaft that [align.Set]
// wants, its gain changes sign:
//
//	r(t) = c + Gain (w(Station) . u(t))      carried by the stationary shaft
//	r(t) = c - Gain (w(Station) . u(t))      carried by the movable shaft
//
// An angle has one sign for both, as a near face has: what leans the other shaft
// towards the sensor is the same slope, whichever of the two carries it,
//
//	a(t) = c + Angle.Gain (slope . u(t))
//
// and enters as a near face at R = 1 m that reads slope times R. Derived here,
// linear as align.Fit, and checked against an exact simulation of two rigid
// shafts; the angle's own readings are divided by their gain, which costs one
// rounding.
//
// It refuses input that is not sound with paths from the sensor
// (/readings/2/value, /angle/readings/0/u): no carrier, no gain, too few readings
// (Missing), numbers that are not finite (NotFinite) or cannot be (OutOfRange),
// an uncertainty for a part of the readings (Conflict), for one channel and not
// for the other (Missing). Whether the readings see enough only the fit of all
// sets can tell. What it returns shares no memory with the sensor.
//
// The channels are two sets to the fit, so a stated Clock counts for each of them
// as an error of its own, though on one sensor they turn together.
func (s Sensor) Sets() ([]align.Set, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	sets := []align.Set{s.displacement()}
	if s.Angle.given() {
		sets = append(sets, s.slopes())
	}
	return sets, nil
}

// displacement is the channel as a set. The probe's gain is per displacement of
// the movable shaft: see Sets for the sign.
func (s *Sensor) displacement() align.Set {
	gain := s.Gain
	if s.Carrier == align.Movable {
		gain = -gain
	}
	return align.Set{
		Probe:    align.Probe{Kind: align.Displacement, Station: s.Station, Gain: gain},
		Mounting: s.Mounting,
		View:     s.View,
		Readings: append([]align.Reading(nil), s.Readings...),
		U:        s.U,
	}
}

// lever is the radius at which a slope enters as a near face.
const lever = units.Metre

// slopes is the angle channel as a set.
func (s *Sensor) slopes() align.Set {
	set := align.Set{
		Probe:    align.Probe{Kind: align.NearFace, Carrier: s.Carrier, Radius: lever},
		View:     s.View,
		Readings: make([]align.Reading, len(s.Angle.Readings)),
		U:        align.Uncertainty{Reading: s.Angle.certain(s.Angle.U), Clock: s.U.Clock, Angle: s.U.Angle},
	}
	if s.Mounting != "" {
		set.Mounting = s.Mounting + " (angle)" // another probe than that of the displacement channel
	}
	for i, r := range s.Angle.Readings {
		set.Readings[i] = align.Reading{At: r.At, Value: s.Angle.at(r.Value), U: s.Angle.certain(r.U)}
	}
	return set
}

// given tells whether there is an angle channel, sound or not.
func (a *AngleChannel) given() bool { return a.Gain != 0 || a.U != 0 || len(a.Readings) != 0 }

// at is what a near face at the lever reads for a reading of the channel.
func (a *AngleChannel) at(reading units.Slope) units.Length {
	return units.Slope(float64(reading) / a.Gain).Over(lever)
}

// certain is the standard uncertainty of such a reading.
func (a *AngleChannel) certain(u units.Slope) units.Length {
	return max(a.at(u), -a.at(u))
}
