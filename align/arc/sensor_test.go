package arc_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var quarters = []units.Clock{units.Twelve, units.Three, units.Six, units.Nine}

// sensor makes one with readings of its displacement channel in millimetres.
func sensor(carrier align.Shaft, x, gain float64, clocks []units.Clock, values ...float64) arc.Sensor {
	s := arc.Sensor{Carrier: carrier, Station: length(x), Gain: gain, Readings: taken(clocks...)}
	for i, v := range values {
		s.Readings[i].Value = length(v)
	}
	return s
}

// leaning is an angle channel with readings in mm/m.
func leaning(gain float64, clocks []units.Clock, values ...float64) arc.AngleChannel {
	a := arc.AngleChannel{Gain: gain, Readings: make([]arc.AngleReading, len(values))}
	for i, v := range values {
		a.Readings[i] = arc.AngleReading{At: clocks[i], Value: units.Slope(v) * units.MillimetrePerMetre}
	}
	return a
}

// What case A makes of each channel, worked by hand from w(40) = (+0.136, -0.228),
// w(-50) = (+0.100, -0.165) and the slope (+0.4, -0.7 mm/m). Derived here.
func TestSensorSignsByHand(t *testing.T) {
	onStationary := sensor(align.Stationary, 40, 1, quarters, 0, 0.364, 0.456, 0.092)
	onMovable := sensor(align.Movable, -50, 1, quarters, 0, -0.265, -0.330, -0.065)
	falling := sensor(align.Movable, -50, -2, quarters, 0, 0.530, 0.660, 0.130)
	fromBehind := sensor(align.Movable, -50, 1, quarters, 0, -0.065, -0.330, -0.265)
	fromBehind.View = align.FromStationary
	twoChannels := onMovable
	twoChannels.Angle = leaning(1, quarters, 0, 1.1, 1.4, 0.3)
	otherCarrier := onStationary
	otherCarrier.Angle = leaning(-10, quarters, 0, -11, -14, -3)
	rows := []struct {
		name    string
		sensors []arc.Sensor
	}{
		{"one on either shaft", []arc.Sensor{onStationary, onMovable}},
		{"a reading that falls as the other shaft comes nearer", []arc.Sensor{onStationary, falling}},
		{"seen from the stationary machine", []arc.Sensor{onStationary, fromBehind}},
		{"one with two channels, on the movable shaft", []arc.Sensor{twoChannels}},
		{"one with two channels, on the stationary shaft, gain -10", []arc.Sensor{otherCarrier}},
	}
	for _, row := range rows {
		f := mustFit(t, mustSets(t, row.sensors...)...)
		nearLine(t, row.name, f.Value, caseA, 1e-3)
	}
}

// drawSensor draws a sensor with both channels, without readings.
func drawSensor(t *rapid.T) arc.Sensor {
	gain := func(name string) float64 {
		return rapid.Float64Range(0.1, 10).Draw(t, name) * rapid.SampledFrom([]float64{1, -1}).Draw(t, "sense of the "+name)
	}
	return arc.Sensor{
		Carrier: drawShaft(t), Station: length(rapid.Float64Range(-500, 500).Draw(t, "station")),
		View: drawView(t), Gain: gain("gain"), Angle: arc.AngleChannel{Gain: gain("gain of the angle")},
	}
}

// drawClocks draws three to six angles over 60 degrees and more, anywhere.
func drawClocks(t *rapid.T) []units.Clock {
	n := rapid.IntRange(3, 6).Draw(t, "readings")
	width := units.Clock(rapid.Float64Range(60, 300).Draw(t, "arc"))
	return within(n, units.Clock(rapid.Float64Range(-400, 400).Draw(t, "middle")), width)
}

// With the roles of the machines and the standpoint exchanged, a sensor that turns
// with the same shaft, now called the other, reads the same and finds the
// misalignment as it looks from there.
func TestSensorWithRolesExchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := simulated(drawSensor(t), drawLine(t), drawClocks(t))
		twin := s
		twin.Carrier = align.Stationary + align.Movable - s.Carrier
		twin.Station = -s.Station
		twin.View = align.FromMovable + align.FromStationary - s.View
		f, g := mustFit(t, mustSets(t, s)...), mustFit(t, mustSets(t, twin)...)
		nearLine(t, "exchanged", g.Value, f.Value.Exchanged(), 1e-2)
	})
}

// A gain that is k times as large with readings, and their uncertainties, k times
// as large is the same measurement.
func TestSensorGainDropsOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := simulated(drawSensor(t), drawLine(t), drawClocks(t))
		s.U.Reading, s.Angle.U = um, units.MillimetrePerMetre/200
		k := rapid.SampledFrom([]float64{-8, -1, 0.25, 3}).Draw(t, "k")
		twin := s
		twin.Gain *= k
		twin.U.Reading *= units.Length(max(k, -k))
		twin.Readings = slices.Clone(s.Readings)
		for i := range twin.Readings {
			twin.Readings[i].Value *= units.Length(k)
		}
		twin.Angle.Gain *= k
		twin.Angle.U *= units.Slope(max(k, -k))
		twin.Angle.Readings = slices.Clone(s.Angle.Readings)
		for i := range twin.Angle.Readings {
			twin.Angle.Readings[i].Value *= units.Slope(k)
		}
		f, g := mustFit(t, mustSets(t, s)...), mustFit(t, mustSets(t, twin)...)
		nearLine(t, "scaled", g.Value, f.Value, 1e-2)
		nearCov(t, "scaled", g.Cov, f.Cov, 1e-9)
	})
}

// Everything that a sensor states stands in its sets.
func TestSensorSetsHoldEverything(t *testing.T) {
	s := fullSensor()
	got := mustSets(t, s)
	want := []align.Set{
		{
			Probe:    align.Probe{Kind: align.Displacement, Station: -80 * mm, Gain: -2},
			Mounting: "coupling hub", View: align.FromStationary,
			Readings: []align.Reading{{At: 0, U: um}, {At: 60, Value: 10 * um}, {At: 120, Value: -4 * um}},
			U:        align.Uncertainty{Reading: 2 * um, Station: mm, Clock: 0.01, Angle: 0.002},
		},
		{
			Probe:    align.Probe{Kind: align.NearFace, Carrier: align.Movable, Radius: units.Metre},
			Mounting: "coupling hub (angle)", View: align.FromStationary,
			Readings: []align.Reading{{At: 10, Value: -25 * um, U: 5 * um}, {At: 70}, {At: 130, Value: 50 * um}},
			U:        align.Uncertainty{Reading: 2.5 * um, Clock: 0.01, Angle: 0.002},
		},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// fullSensor gives every field that a sensor has.
func fullSensor() arc.Sensor {
	const slope = 0x1p-20 // so that products with it are exact
	return arc.Sensor{
		Carrier: align.Movable, Station: -80 * mm, Mounting: "coupling hub", View: align.FromStationary, Gain: 2,
		Readings: []align.Reading{{At: 0, U: um}, {At: 60, Value: 10 * um}, {At: 120, Value: -4 * um}},
		U:        align.Uncertainty{Reading: 2 * um, Station: mm, Clock: 0.01, Angle: 0.002},
		Angle: arc.AngleChannel{
			Gain:     -slope,
			Readings: []arc.AngleReading{{At: 10, Value: 25e-6 * slope, U: 5e-6 * slope}, {At: 70}, {At: 130, Value: -50e-6 * slope}},
			U:        2.5e-6 * slope,
		},
	}
}

func TestSensorSharesNoMemory(t *testing.T) {
	s := fullSensor()
	sets := mustSets(t, s)
	sets[0].Readings[1].Value = 0
	sets[1].Readings[0].Value = 0
	if diff := cmp.Diff(fullSensor(), s); diff != "" {
		t.Error(diff)
	}
}

// Two sweeps without re-clamping do not average the tape out, in either channel.
func TestSensorMountingKeepsTheTape(t *testing.T) {
	once := fullSensor()
	once.U.Station, once.U.Clock = 5*mm, 0.05
	apart := once
	apart.Mounting = "clamped again"
	offset := func(sensors ...arc.Sensor) units.Length {
		return mustFit(t, filled(t, caseA, mustSets(t, sensors...))...).Cov.Standard().Vertical.Offset
	}
	if same, two := offset(once, once), offset(once, apart); !(same > 1.2*two) {
		t.Errorf("u of the offset: %v with one mounting, %v with two, want clearly less with two", same, two)
	}
}

// A sensor without an angle channel has none in its JSON.
func TestSensorJSON(t *testing.T) {
	for name, s := range map[string]arc.Sensor{
		"everything":  fullSensor(),
		"one channel": sensor(align.Stationary, 40, 1, quarters, 0, 0.364, 0.456, 0.092),
		"zero":        {},
	} {
		text, err := json.Marshal(s)
		if name == "zero" { // no carrier has no word
			if err == nil {
				t.Errorf("zero: got %s, want a refusal", text)
			}
			continue
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if has := strings.Contains(string(text), `"angle":{`); has != (name == "everything") {
			t.Errorf("%s: has an angle channel: %v, in %s", name, has, text)
		}
		var back arc.Sensor
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if diff := cmp.Diff(s, back); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}
