package arc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// Each row spoils a sound sensor and says what is refused; its twin is next to it
// and sound.
var badSensors = []struct {
	name   string
	spoil  func(*arc.Sensor)
	code   units.Code
	path   string
	repair func(*arc.Sensor)
}{
	{"no carrier", func(s *arc.Sensor) { s.Carrier = 0 }, units.Missing, "/carrier", func(s *arc.Sensor) { s.Carrier = align.Stationary }},
	{"a carrier that does not exist", func(s *arc.Sensor) { s.Carrier = 3 }, units.OutOfRange, "/carrier", func(s *arc.Sensor) { s.Carrier = 2 }},
	{"a station that is no number", func(s *arc.Sensor) { s.Station = units.Length(math.NaN()) }, units.NotFinite, "/station", func(s *arc.Sensor) { s.Station = 0 }},
	{"a view that does not exist", func(s *arc.Sensor) { s.View = 2 }, units.OutOfRange, "/view", func(s *arc.Sensor) { s.View = 1 }},
	{"no gain", func(s *arc.Sensor) { s.Gain = 0 }, units.Missing, "/gain", func(s *arc.Sensor) { s.Gain = -1 }},
	{"a gain that is no number", func(s *arc.Sensor) { s.Gain = math.Inf(-1) }, units.NotFinite, "/gain", func(s *arc.Sensor) { s.Gain = -1e3 }},
	{"a gain too small", func(s *arc.Sensor) { s.Gain = 1e-16 }, units.OutOfRange, "/gain", func(s *arc.Sensor) { s.Gain = 1e-14 }},
	{"one reading", func(s *arc.Sensor) { s.Readings = s.Readings[:1] }, units.Missing, "/readings", func(s *arc.Sensor) { s.Readings = taken(0, 60) }},
	{"a position that is no number", func(s *arc.Sensor) { s.Readings[2].At = units.Clock(math.Inf(1)) }, units.NotFinite, "/readings/2/at", func(s *arc.Sensor) { s.Readings[2].At = -720 }},
	{"a value that is no number", func(s *arc.Sensor) { s.Readings[1].Value = units.Length(math.NaN()) }, units.NotFinite, "/readings/1/value", func(s *arc.Sensor) { s.Readings[1].Value = -mm }},
	{"a negative uncertainty", func(s *arc.Sensor) { s.Readings[1].U = -um }, units.OutOfRange, "/readings/1/u", func(s *arc.Sensor) { s.Readings[1].U = um }},
	{"an uncertainty of the sag", func(s *arc.Sensor) { s.U.Sag = um }, units.Conflict, "/u/sag", func(s *arc.Sensor) { s.U.Sag = 0 }},
	{"an uncertainty of the radius", func(s *arc.Sensor) { s.U.Radius = um }, units.Conflict, "/u/radius", func(s *arc.Sensor) { s.U.Radius = 0 }},
	{"a negative uncertainty of the clock", func(s *arc.Sensor) { s.U.Clock = -0.1 }, units.OutOfRange, "/u/clock", func(s *arc.Sensor) { s.U.Clock = 0.1 }},
	{"a part of the uncertainties", func(s *arc.Sensor) { s.U.Reading = 0; s.Readings[0].U = um }, units.Conflict, "/readings", func(s *arc.Sensor) {
		for i := range s.Readings {
			s.Readings[i].U = um
		}
	}},

	{"no gain of the angle", func(s *arc.Sensor) { s.Angle.Gain = 0 }, units.Missing, "/angle/gain", func(s *arc.Sensor) { s.Angle.Gain = -1 }},
	{"a gain of the angle that is no number", func(s *arc.Sensor) { s.Angle.Gain = math.NaN() }, units.NotFinite, "/angle/gain", func(s *arc.Sensor) { s.Angle.Gain = 2 }},
	{"a gain of the angle too small", func(s *arc.Sensor) { s.Angle.Gain = -1e-16 }, units.OutOfRange, "/angle/gain", func(s *arc.Sensor) { s.Angle.Gain = -1e-10 }},
	{"one reading of the angle", func(s *arc.Sensor) { s.Angle.Readings = s.Angle.Readings[:1] }, units.Missing, "/angle/readings", func(s *arc.Sensor) { s.Angle.Readings = s.Angle.Readings[:2] }},
	{"a gain of the angle alone", func(s *arc.Sensor) { s.Angle = arc.AngleChannel{Gain: 1} }, units.Missing, "/angle/readings", func(s *arc.Sensor) { s.Angle = arc.AngleChannel{} }},
	{"a position of the angle that is no number", func(s *arc.Sensor) { s.Angle.Readings[1].At = units.Clock(math.NaN()) }, units.NotFinite, "/angle/readings/1/at", func(s *arc.Sensor) { s.Angle.Readings[1].At = 0 }},
	{"an angle that is no number", func(s *arc.Sensor) { s.Angle.Readings[2].Value = units.Slope(math.Inf(1)) }, units.NotFinite, "/angle/readings/2/value", func(s *arc.Sensor) { s.Angle.Readings[2].Value = 0.5 }},
	{"an angle too large for its gain", func(s *arc.Sensor) { s.Angle.Gain = 1e-8; s.Angle.Readings[2].Value = 1 }, units.OutOfRange, "/angle/readings/2/value", func(s *arc.Sensor) { s.Angle.Gain = 1e-6; s.Angle.Readings[2].Value = 1 }},
	{"a negative uncertainty of the angle", func(s *arc.Sensor) { s.Angle.U = -1e-6 }, units.OutOfRange, "/angle/u", func(s *arc.Sensor) { s.Angle.U = 1e-6 }},
	{"an uncertainty of the angle that is no number", func(s *arc.Sensor) { s.Angle.Readings[0].U = units.Slope(math.NaN()) }, units.NotFinite, "/angle/readings/0/u", func(s *arc.Sensor) { s.Angle.Readings[0].U = 1e-3 }},
	{"an uncertainty of the angle too fine for its gain", func(s *arc.Sensor) { s.Angle.Readings[0].U = 1e-19 }, units.OutOfRange, "/angle/readings/0/u", func(s *arc.Sensor) { s.Angle.Readings[0].U = 1e-12 * 0x1p-20 }},
	{"an uncertainty of the angle too large for its gain", func(s *arc.Sensor) { s.Angle.Gain = 1e-8; s.Angle.U = 1 }, units.OutOfRange, "/angle/u", func(s *arc.Sensor) { s.Angle.Gain = 1e-6; s.Angle.U = 1 }},
	{"a part of the uncertainties of the angle", func(s *arc.Sensor) { s.Angle.U = 0 }, units.Conflict, "/angle/readings", func(s *arc.Sensor) {
		s.Angle.U = 0
		for i := range s.Angle.Readings {
			s.Angle.Readings[i].U = 1e-6
		}
	}},
	{"an uncertainty of the displacement alone", func(s *arc.Sensor) { s.Angle.U, s.Angle.Readings[0].U = 0, 0 }, units.Missing, "/angle/u", func(s *arc.Sensor) { s.Angle = arc.AngleChannel{} }},
	{"an uncertainty of the angle alone", func(s *arc.Sensor) { s.U.Reading, s.Readings[0].U = 0, 0 }, units.Missing, "/u/reading", func(s *arc.Sensor) {
		s.U.Reading, s.Readings[0].U, s.Angle.U, s.Angle.Readings[0].U = 0, 0, 0, 0
	}},
}

func TestSensorRefuses(t *testing.T) {
	for _, row := range badSensors {
		t.Run(row.name, func(t *testing.T) {
			bad := fullSensor()
			row.spoil(&bad)
			sets, err := bad.Sets()
			if diff := cmp.Diff([]string{string(row.code) + " " + row.path}, codesAndPaths(err)); diff != "" {
				t.Error(diff)
			}
			if sets != nil {
				t.Errorf("got sets beside the fault: %v", sets)
			}
			twin := fullSensor()
			row.repair(&twin)
			if _, err := twin.Sets(); err != nil {
				t.Errorf("its twin: %v", err)
			}
		})
	}
}

// What is wrong with the gain is told as the caller gave it, whichever shaft
// carries the sensor.
func TestSensorFaultQuotesTheGainAsGiven(t *testing.T) {
	s := fullSensor()
	s.Carrier, s.Gain = align.Movable, 1e-16
	_, err := s.Sets()
	if err == nil || !strings.Contains(err.Error(), "1e-16") || strings.Contains(err.Error(), "-1e-16") {
		t.Errorf("got %v, want the gain as it was given", err)
	}
}

// All independent faults come at once.
func TestSensorFaultsComeTogether(t *testing.T) {
	var zero arc.Sensor
	_, err := zero.Sets()
	want := []string{"missing /carrier", "missing /gain", "missing /readings"}
	if diff := cmp.Diff(want, codesAndPaths(err)); diff != "" {
		t.Error(diff)
	}
	bad := fullSensor()
	bad.Carrier, bad.View, bad.Angle.Gain = 0, 9, 0
	bad.Angle.Readings[1].At = units.Clock(math.NaN())
	_, err = bad.Sets()
	want = []string{"missing /angle/gain", "missing /carrier", "not_finite /angle/readings/1/at", "out_of_range /view"}
	if got := codesAndPaths(err); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}
