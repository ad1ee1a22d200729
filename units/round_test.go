package units_test

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"example.org/collinear/units"
)

func TestRound(t *testing.T) {
	rows := []struct {
		name    string
		l, step units.Length
		want    units.Length
	}{
		{"down", 1_249_999, units.Millimetre / 2, units.Millimetre},
		{"half goes away from zero", 1_250_000, units.Millimetre / 2, 1.5 * units.Millimetre},
		{"half below zero as well", -1_250_000, units.Millimetre / 2, -1.5 * units.Millimetre},
		{"a hair below half", units.Length(math.Nextafter(0.5, 0)), units.Nanometre, 0},
		{"2.35 mil to tenths", 2.35 * units.Mil, units.Mil / 10, 2.4 * units.Mil},
		{"already a multiple, far out", 1 << 60, 1 << 20, 1 << 60},
		{"a step above twice the length", 3, 7, 0},
		{"a step that is no float64 ratio", 1e20, 3, 1e20}, // the multiple beside it rounds to it
		{"no step", 12.5, 0, 12.5},
		{"a step below zero", 12.5, -1, 12.5},
		{"an endless step", 12.5, units.Length(math.Inf(1)), 12.5},
		{"an endless length", units.Length(math.Inf(-1)), 1, units.Length(math.Inf(-1))},
		{"a multiple beyond the range", math.MaxFloat64, 1e308, units.Length(math.Inf(1))},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			if got := row.l.Round(row.step); got != row.want {
				t.Errorf("%v to %v: got %v, want %v", row.l, row.step, got, row.want)
			}
		})
	}
	if got := units.Length(math.NaN()).Round(1); !math.IsNaN(float64(got)) {
		t.Errorf("NaN is rounded to %v", got)
	}
	if got := units.Length(12.5).Round(units.Length(math.NaN())); got != 12.5 {
		t.Errorf("a step of NaN gives %v", got)
	}
	if got := units.Length(-0.3).Round(1); math.Signbit(float64(got)) {
		t.Error("a length that rounds to zero keeps its sign")
	}
}

// Above is not, on the limit and within half a nanometre of it; what is no number is
// above nothing, and nothing above it.
func TestAbove(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	for _, row := range []struct {
		l, limit units.Length
		want     bool
	}{
		{50, 50, false}, {50.4, 50, false}, {50, 49.6, false}, {50.5, 50, true}, {51, 50, true}, {49, 50, false},
		{-50, -51, true}, {-51, -50, false}, {inf, 50, true}, {50, inf, false}, {nan, 50, false}, {50, nan, false},
	} {
		if got := row.l.Above(row.limit); got != row.want {
			t.Errorf("%v above %v: %v", float64(row.l), float64(row.limit), got)
		}
	}
}

// TestRoundIsNearest compares with exact ratios over the whole range, ties
// included.
func TestRoundIsNearest(t *testing.T) {
	t.Run("any", rapid.MakeCheck(func(t *rapid.T) {
		l := rapid.Float64Range(-1e300, 1e300).Draw(t, "length")
		step := rapid.Float64Range(1e-300, 1e300).Draw(t, "step")
		checkRound(t, l, step)
	}))
	t.Run("lengths of the trade", rapid.MakeCheck(func(t *rapid.T) {
		l := rapid.Float64Range(-1e12, 1e12).Draw(t, "length")
		step := rapid.SampledFrom([]float64{1, 10, 100, 2540, 10_000, 25_400, 0.1, 396_875}).Draw(t, "step")
		checkRound(t, l, step)
	}))
	t.Run("ties", rapid.MakeCheck(func(t *rapid.T) {
		step := rapid.IntRange(1, 1<<20).Draw(t, "step")
		halves := rapid.IntRange(-1<<30, 1<<30).Draw(t, "halves")
		checkRound(t, float64(halves)*float64(step)/2, float64(step))
	}))
}

func checkRound(t *rapid.T, l, step float64) {
	ratio := new(big.Rat).Quo(new(big.Rat).SetFloat64(l), new(big.Rat).SetFloat64(step))
	twice := new(big.Int).Mul(new(big.Int).Abs(ratio.Num()), big.NewInt(2))
	twice.Add(twice, ratio.Denom()) // floor((2|n| + d)/2d): halves away from zero
	count := twice.Quo(twice, new(big.Int).Mul(ratio.Denom(), big.NewInt(2)))
	exact := new(big.Rat).SetInt(count)
	exact.Mul(exact, new(big.Rat).SetFloat64(step))
	want, _ := exact.Float64()
	if l < 0 {
		want = -want
	}
	if got := float64(units.Length(l).Round(units.Length(step))); got != want {
		t.Errorf("%v to %v: got %v, want %v", l, step, got, want)
	}
}

func TestPerAndOver(t *testing.T) {
	rows := []struct {
		name      string
		rise, run units.Length
		want      units.Slope
	}{
		{"a mil over an inch", units.Mil, units.Inch, units.MilPerInch},
		{"down", -2 * units.Millimetre, units.Metre, -2 * units.MillimetrePerMetre},
		{"backwards", units.Millimetre, -units.Metre, -units.MillimetrePerMetre},
		{"level", 0, units.Metre, 0},
		{"huge", 1e300, 1e297, 1000},
		{"tiny", 1e-300, 1e-297, 1e-3},
		{"no run", 1, 0, units.Slope(math.Inf(1))},
	}
	for _, row := range rows {
		got := row.rise.Per(row.run)
		if got != row.want {
			t.Errorf("%s: %v per %v is %v, want %v", row.name, row.rise, row.run, got, row.want)
		}
		if row.run == 0 {
			continue
		}
		if back := got.Over(row.run); math.Abs(float64(back-row.rise)) > 0x1p-52*math.Abs(float64(row.rise)) {
			t.Errorf("%s: %v over %v is %v, want %v", row.name, got, row.run, back, row.rise)
		}
	}
	if got := units.Length(0).Per(0); !math.IsNaN(float64(got)) {
		t.Errorf("nothing over nothing is %v, want NaN", got)
	}
}

// TestSlopeAndAngle tests the step between the two, and that it is a step:
// atan x = x - x^3/3 + ..., so at 1 mm/m the angle is short by 3.3e-7 of it.
func TestSlopeAndAngle(t *testing.T) {
	slope := units.MillimetrePerMetre
	short := 1 - float64(slope.Angle())/1e-3
	if math.Abs(short-1e-6/3) > 1e-12 { // the next term is 2e-13
		t.Errorf("1 mm/m is 1 mrad less %g of it, want 3.33e-7", short)
	}
	over := float64(units.Milliradian.Slope())/1e-3 - 1
	if math.Abs(over-1e-6/3) > 1e-12 {
		t.Errorf("1 mrad is 1 mm/m and %g of it, want 3.33e-7", over)
	}
	for _, s := range []units.Slope{0, 1, -1, 0.25, -3e-4, 1e-300} {
		if back := s.Angle().Slope(); math.Abs(float64(back-s)) > 4*0x1p-52*math.Abs(float64(s)) {
			t.Errorf("%v there and back is %v", s, back)
		}
	}
	if got := units.Slope(1).Angle(); math.Abs(float64(got-45*units.Degree)) > 0x1p-52 { // processors with an arctangent of their own round it their own way
		t.Errorf("a slope of 1 is %v, want 45 degrees", got)
	}
}
