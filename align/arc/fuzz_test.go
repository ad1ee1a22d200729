package arc_test

import (
	"encoding/hex"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// bytesOf makes inputs out of bytes.
type bytesOf struct{ fuzzed.Tape }

// number is mostly one that a crew could give, so that the fuzzer gets past the
// checks, and sometimes any float64.
func (b *bytesOf) number() float64 {
	switch kind := b.Byte(); kind % 8 {
	case 0:
		return b.Float64()
	case 1:
		return math.Ldexp(float64(int8(b.Byte())), 4*int(int8(b.Byte())))
	default:
		return float64(int8(b.Byte())) * 1000
	}
}

func (b *bytesOf) length() units.Length { return units.Length(b.number()) }

func (b *bytesOf) clock() units.Clock {
	if b.Byte()%16 == 0 {
		return units.Clock(b.number())
	}
	return 5 * units.Clock(int8(b.Byte()))
}

func (b *bytesOf) uncertainty() align.Uncertainty {
	if b.Byte()%4 != 0 {
		return align.Uncertainty{Reading: um}
	}
	return align.Uncertainty{
		Reading: b.length(), Station: b.length(), Radius: b.length(), Sag: b.length(),
		Clock: units.Angle(b.number() * 1e-6), Angle: units.Angle(b.number() * 1e-6),
	}
}

func (b *bytesOf) readings() []align.Reading {
	readings := make([]align.Reading, b.Byte()%7)
	for i := range readings {
		readings[i] = align.Reading{At: b.clock(), Value: b.length()}
		if b.Byte()%8 == 0 {
			readings[i].U = b.length()
		}
	}
	return readings
}

func (b *bytesOf) sensor() arc.Sensor {
	s := arc.Sensor{
		Carrier: align.Shaft(b.Byte() % 4), Station: b.length(), View: align.View(b.Byte() % 3),
		Gain: b.number(), Readings: b.readings(), U: b.uncertainty(),
	}
	if b.Byte()%2 == 0 {
		return s
	}
	s.Angle = arc.AngleChannel{Gain: b.number() * 1e-3, U: units.Slope(b.number() * 1e-9)}
	for _, r := range b.readings() {
		s.Angle.Readings = append(s.Angle.Readings, arc.AngleReading{
			At: r.At, Value: units.Slope(r.Value) * 1e-9, U: units.Slope(r.U) * 1e-9,
		})
	}
	return s
}

func (b *bytesOf) sets() []align.Set {
	sets := make([]align.Set, b.Byte()%4)
	for i := range sets {
		sets[i] = align.Set{
			Probe: align.Probe{
				Kind: align.Kind(b.Byte() % 11), Carrier: align.Shaft(b.Byte() % 4), Station: b.length(), Radius: b.length(),
			},
			View: align.View(b.Byte() % 3), Readings: b.readings(), U: b.uncertainty(),
		}
		if sets[i].Probe.Kind == align.Displacement {
			sets[i].Probe.Gain, sets[i].Probe.Carrier, sets[i].Probe.Radius = b.number(), 0, 0
		}
	}
	return sets
}

// below asks that every fault of an error says where it is: at one of the places
// or below it.
func below(t *testing.T, err error, places ...string) {
	t.Helper()
	if err != nil && len(units.Faults(err)) == 0 {
		t.Fatalf("%v is not made of faults", err)
	}
	for _, f := range units.Faults(err) {
		within := func(place string) bool { return f.Path == place || strings.HasPrefix(f.Path, place+"/") }
		if !slices.ContainsFunc(places, within) {
			t.Fatalf("%v: stands at none of %v", f, places)
		}
	}
}

// seeds adds inputs, in hexadecimal, that get past all checks.
func seeds(f *testing.F, inputs ...string) {
	f.Helper()
	for _, text := range inputs {
		data, err := hex.DecodeString(text)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
}

// A sensor that is not refused makes sets that are sound to the fit, with faults
// left only in what they see together.
func FuzzSensor(f *testing.F) {
	f.Add([]byte{})
	seeds(f,
		"f90bb1553ab4115ac3e64d4329d166cc2d55258e3a8dd2250b10ca4e60ef256204e19758",
		"ea37cdf60f58a45d64c731c19bf287f9abaa992b897e86fb5d71db51e3a0bf2231f782020f7717",
	)
	f.Fuzz(func(t *testing.T, data []byte) {
		tape := bytesOf{data}
		s := tape.sensor()
		sets, err := s.Sets()
		below(t, err, "/carrier", "/station", "/view", "/gain", "/readings", "/u", "/angle")
		if err != nil {
			return
		}
		for _, set := range sets {
			if err := set.Validate(); err != nil {
				t.Fatalf("%+v makes a set that is refused: %v", s, err)
			}
		}
		_, err = align.Fit(sets...)
		for _, fault := range units.Faults(err) {
			if fault.Path != "/sets" {
				t.Fatalf("%+v: %v", s, err)
			}
		}
	})
}

// A forecast that is not refused is made of finite numbers, whatever it was asked.
func FuzzForecast(f *testing.F) {
	f.Add([]byte{})
	seeds(f,
		"4ef3596add4c07eaf3373002c646e88a5a3281e28f95dec8854c04585eda0dbf9f5e0b73a5ffc5bec3a6773328fb1c87aaf207c1afbc63dc20b72244335cad1fd47931275f94ae7737fd8c7a153621e4f4d4",
		"368dca240fe70ea534e8bf5f050e44a3e2513ca5b2b8e5bd0fe65d2107db1ecb12f170a5d8ea95e5a27f4c96356f441059d16e82f9137b63aa8d59f516cb9e3933bd9a2d54c6d3753270074adc9a0ee747d460",
		"deda14c1cfea13f0a843aa26f72854bf6f0962e47d0bd36a5e13298582a02067607b94bb0904a990f830fe8f1e319be2c25ddf1b87c0c5d87f73199517591d9f6480dad97a394c65df5c0eb6a4442b98c64194c27361c0fa1ae6ac4d8865",
	)
	f.Fuzz(func(t *testing.T, data []byte) {
		tape := bytesOf{data}
		sets := tape.sets()
		expected := line(tape.number(), tape.number()*1e-6, tape.number(), tape.number()*1e-6)
		feet := make([]align.Foot, tape.Byte()%3)
		for i := range feet {
			feet[i] = align.Foot{X: tape.length(), U: tape.length()}
		}
		o, err := arc.Forecast(expected, feet, sets...)
		below(t, err, "/sets", "/expected", "/feet")
		if err != nil {
			return
		}
		for _, p := range append(o.Wider, o.Now) {
			if err := (align.Estimate{Cov: p.Cov}).Validate(); err != nil {
				t.Fatalf("%v: %v", p, err)
			}
			if u := p.UCoupling; !(u.Vertical >= 0 && u.Horizontal >= 0) || p.Arc < 0 || p.Arc > 360*units.Degree {
				t.Fatalf("got %+v", p)
			}
		}
	})
}

// Whatever is done to a buffer, it holds what a plain list would hold and fits it
// alike.
func FuzzBuffer(f *testing.F) {
	f.Add([]byte{})
	seeds(f,
		"4ef3596add4c07eaf3373002c646e88a5a3281e28f95dec8854c04585eda0dbf9f5e0b73a5ffc5bec3a6773328fb1c87aaf207c1afbc63dc20b72244335cad1fd47931275f94ae7737fd8c7a153621e4f4d4",
		"368dca240fe70ea534e8bf5f050e44a3e2513ca5b2b8e5bd0fe65d2107db1ecb12f170a5d8ea95e5a27f4c96356f441059d16e82f9137b63aa8d59f516cb9e3933bd9a2d54c6d3753270074adc9a0ee747d460",
		"deda14c1cfea13f0a843aa26f72854bf6f0962e47d0bd36a5e13298582a02067607b94bb0904a990f830fe8f1e319be2c25ddf1b87c0c5d87f73199517591d9f6480dad97a394c65df5c0eb6a4442b98c64194c27361c0fa1ae6ac4d8865",
	)
	f.Fuzz(func(t *testing.T, data []byte) {
		tape := bytesOf{data}
		sets := tape.sets()
		buffer, held := arc.NewBuffer(sets...), batch(arc.NewBuffer(sets...).Sets())
		for len(tape.Tape) > 0 {
			set := int(int8(tape.Byte()))%4 - 1
			if tape.Byte()%3 == 0 {
				reading := int(int8(tape.Byte())) % 8
				err := buffer.Drop(set, reading)
				below(t, err, "/set", "/reading")
				if err == nil {
					held.drop(set, reading)
				}
				continue
			}
			r := align.Reading{At: tape.clock(), Value: tape.length()}
			err := buffer.Add(set, r)
			below(t, err, "/set", "/reading")
			if err == nil {
				held.add(set, r)
			}
		}
		got, gotErr := buffer.Fit()
		want, wantErr := align.Fit(held...)
		sameBits(t, "at the end", got, gotErr, want, wantErr)
	})
}
