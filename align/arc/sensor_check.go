package arc

import (
	"slices"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

func (s *Sensor) check() error {
	var faults check.Faults
	var root check.Path
	checkCarrier(&faults, root.Field("carrier"), s.Carrier)
	set := s.displacement()
	set.Probe.Gain = s.Gain // as the caller knows it
	adoptSensor(&faults, set.Validate())
	if s.Angle.given() {
		s.checkAngle(&faults, root.Field("angle"))
	}
	return faults.Err()
}

func checkCarrier(faults *check.Faults, at check.Path, carrier align.Shaft) {
	switch carrier {
	case align.Stationary, align.Movable:
	case 0:
		faults.Add(units.Missing, at, nil, "the shaft that carries the sensor")
	default:
		faults.Add(units.OutOfRange, at, carrier, "stationary or movable")
	}
}

// adoptSensor notes the faults of the displacement channel's set. A sensor has
// the fields of the set's probe as its own.
func adoptSensor(faults *check.Faults, err error) {
	for _, fault := range units.Faults(err) {
		moved := *fault
		moved.Path = strings.TrimPrefix(fault.Path, "/probe")
		faults.Append(&moved)
	}
}

func (s *Sensor) checkAngle(faults *check.Faults, at check.Path) {
	a := &s.Angle
	sound := checkGain(faults, at.Field("gain"), a.Gain)
	list := at.Field("readings")
	if len(a.Readings) < 2 {
		faults.Add(units.Missing, list, len(a.Readings), "at least two readings: one alone only sets the zero")
	}
	for i := range a.Readings {
		r, field := &a.Readings[i], list.Index(i)
		check.Finite(faults, field.Field("at"), r.At)
		a.checkNumber(faults, field.Field("value"), r.Value, sound)
		a.checkWeight(faults, field.Field("u"), r.U, sound)
	}
	a.checkWeight(faults, at.Field("u"), a.U, sound)
	s.checkStated(faults, at)
}

// checkGain asks for a gain that a reading can be divided by.
func checkGain(faults *check.Faults, at check.Path, gain float64) bool {
	if gain == 0 {
		faults.Add(units.Missing, at, gain, "a gain other than zero")
		return false
	}
	if check.Finite(faults, at, gain) && max(gain, -gain) >= check.Least {
		return true
	}
	if check.Sound(gain) {
		faults.Add(units.OutOfRange, at, gain, "a gain that can be reckoned with")
	}
	return false
}

// checkNumber asks for a reading that is finite, also once its gain is out of it.
func (a *AngleChannel) checkNumber(faults *check.Faults, at check.Path, value units.Slope, gainSound bool) {
	if check.Finite(faults, at, value) && gainSound && !check.Sound(a.at(value)) {
		faults.Add(units.OutOfRange, at, value, "a reading that makes a slope of at most 1 000 000")
	}
}

// checkWeight asks for an uncertainty that readings can be weighed by.
func (a *AngleChannel) checkWeight(faults *check.Faults, at check.Path, u units.Slope, gainSound bool) {
	if !check.Uncertainty(faults, at, u) || !gainSound || u == 0 {
		return
	}
	if one := a.certain(u); one < check.Finest || !check.Sound(one) {
		faults.Add(units.OutOfRange, at, u, "a standard uncertainty of a slope from 1e-12 to 1 000 000, or none")
	}
}

// checkStated asks for an uncertainty on every reading of both channels or on
// none: they are weighed against each other.
func (s *Sensor) checkStated(faults *check.Faults, angle check.Path) {
	displacement, slope := s.stated(), s.Angle.stated()
	if slope != 0 && slope != len(s.Angle.Readings) {
		faults.Add(units.Conflict, angle.Field("readings"), nil, "an uncertainty for every reading or for none")
	} else if displacement && slope == 0 && len(s.Angle.Readings) != 0 {
		faults.Add(units.Missing, angle.Field("u"), nil, "an uncertainty, as the displacement channel has one")
	} else if !displacement && slope != 0 {
		var root check.Path
		u := root.Field("u")
		faults.Add(units.Missing, u.Field("reading"), nil, "an uncertainty, as the angle channel has one")
	}
}

// stated tells whether the displacement channel states the uncertainty of a
// reading.
func (s *Sensor) stated() bool {
	own := func(r align.Reading) bool { return r.U != 0 }
	return s.U.Reading != 0 || slices.ContainsFunc(s.Readings, own)
}

// stated counts the readings of the channel that state an uncertainty.
func (a *AngleChannel) stated() (n int) {
	for _, r := range a.Readings {
		if r.U != 0 || a.U != 0 {
			n++
		}
	}
	return n
}
