package arc_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

var touching = map[align.Shaft]rigid.Shaft{align.Stationary: rigid.Stationary, align.Movable: rigid.Movable}

// simulated returns the sensor with what both channels read on two rigid shafts,
// exactly in three dimensions. The simulator's sensor counts the displacement of
// the movable shaft; one on the movable shaft sees the stationary one go the
// other way.
func simulated(s arc.Sensor, c align.Centreline, clocks []units.Clock) arc.Sensor {
	at := make([]float64, len(clocks))
	for i, t := range clocks {
		at[i] = float64(s.View.Clock(t))
	}
	gain := map[align.Shaft]float64{align.Stationary: s.Gain, align.Movable: -s.Gain}[s.Carrier]
	shift := rigid.Instrument{Kind: rigid.Displacement, Carrier: touching[s.Carrier], Station: float64(s.Station) / 1e6, Gain: gain}
	lean := rigid.Instrument{Kind: rigid.NearFace, Carrier: touching[s.Carrier], Radius: 1000}
	s.Readings = taken(clocks...)
	for i, shifted := range shift.Sweep(pose(c), at...) {
		s.Readings[i].Value = length(shifted)
	}
	if s.Angle.Gain == 0 {
		return s
	}
	s.Angle.Readings = make([]arc.AngleReading, len(clocks))
	for i, leant := range lean.Sweep(pose(c), at...) {
		s.Angle.Readings[i] = arc.AngleReading{At: clocks[i], Value: units.Slope(s.Angle.Gain * leant / 1000)}
	}
	return s
}

// Two sensors read at three angles on a quarter turn, wherever the guard leaves it
// free, find the pose.
func TestTwoSensorsOnAQuarterTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		truth, middle := drawLine(t), units.Clock(rapid.Float64Range(0, 360).Draw(t, "middle"))
		clocks := within(3, middle, 90)
		a := arc.Sensor{Carrier: align.Stationary, Station: 120 * mm, Gain: 1, View: drawView(t)}
		b := arc.Sensor{Carrier: drawShaft(t), Station: -80 * mm, Gain: -0.5, View: drawView(t)}
		f := mustFit(t, mustSets(t, simulated(a, truth, clocks), simulated(b, truth, clocks))...)
		nearAtCoupling(t, f.Value, truth, 20)
	})
}

// So does one sensor with two channels.
func TestOneSensorWithTwoChannelsOnAQuarterTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		truth, middle := drawLine(t), units.Clock(rapid.Float64Range(0, 360).Draw(t, "middle"))
		s := drawSensor(t)
		s.Station = 100 * mm
		f := mustFit(t, mustSets(t, simulated(s, truth, within(3, middle, 90)))...)
		nearAtCoupling(t, f.Value, truth, 20)
	})
}

// nearAtCoupling compares where centrelines pass 100 mm either side of the
// coupling centre.
func nearAtCoupling(tb fataler, got, want align.Centreline, nanometres units.Length) {
	tb.Helper()
	for _, x := range []units.Length{-100 * mm, 100 * mm} {
		g, w := got.At(x), want.At(x)
		near(tb, "horizontal at "+x.String(), g.Horizontal, w.Horizontal, nanometres)
		near(tb, "vertical at "+x.String(), g.Vertical, w.Vertical, nanometres)
	}
}

// A rim dial counts up as the other shaft comes nearer: a sensor with gain +1. Its
// simulation knows either carrier, and a hundredth of case A keeps the circle of
// the rim out.
func TestSensorReadsAsADialOnEitherShaft(t *testing.T) {
	small := caseA.Times(0.01)
	at := []float64{0, 90, 180, 270}
	for carrier, x := range map[align.Shaft]float64{align.Stationary: 40, align.Movable: -50} {
		rim := rigid.Instrument{Kind: rigid.Rim, Carrier: touching[carrier], Station: x, Radius: 500}
		face := rigid.Instrument{Kind: rigid.NearFace, Carrier: touching[carrier], Radius: 100}
		s := sensor(carrier, x, 1, quarters, rim.Sweep(pose(small), at...)...)
		lean := face.Sweep(pose(small), at...)
		for i := range lean {
			lean[i] *= 10 // mm at 100 mm, in mm/m
		}
		s.Angle = leaning(1, quarters, lean...)
		nearLine(t, carrier.String(), mustFit(t, mustSets(t, s)...).Value, small, 0.1)
	}
}

// With the roles of the machines exchanged in the simulation itself, the sensor on
// the movable shaft is one on the stationary shaft, which counts as it reads.
func TestSensorOnTheMovableShaftIsOneOnTheStationary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		truth, clocks := drawLine(t), drawClocks(t)
		s := drawSensor(t)
		s.Carrier, s.View = align.Movable, align.FromMovable
		p := pose(truth)
		exchanged := rigid.Pose{OffsetY: p.OffsetY, SlopeY: -p.SlopeY, OffsetZ: -p.OffsetZ, SlopeZ: p.SlopeZ}
		shift := rigid.Instrument{Kind: rigid.Displacement, Station: -float64(s.Station) / 1e6, Gain: s.Gain}
		lean := rigid.Instrument{Kind: rigid.NearFace, Radius: 1000}
		s.Readings = taken(clocks...)
		for i, at := range clocks {
			s.Readings[i].Value = length(shift.Read(exchanged, -float64(at)))
			reading := s.Angle.Gain * lean.Read(exchanged, -float64(at)) / 1000
			s.Angle.Readings = append(s.Angle.Readings, arc.AngleReading{At: at, Value: units.Slope(reading)})
		}
		nearAtCoupling(t, mustFit(t, mustSets(t, s)...).Value, truth, 0.01)
	})
}
