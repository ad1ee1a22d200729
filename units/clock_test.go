package units_test

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"example.org/collinear/units"
)

func TestQuartersAreExact(t *testing.T) {
	rows := []struct {
		at       units.Clock
		sin, cos float64
	}{
		{units.Twelve, 0, 1}, {units.Three, 1, 0}, {units.Six, 0, -1}, {units.Nine, -1, 0},
	}
	for _, row := range rows {
		for _, turns := range []units.Clock{0, 1, -1, 7, -7, 1 << 40, -1 << 40} {
			sin, cos := (row.at + 360*turns).SinCos()
			if sin != row.sin || cos != row.cos || sin == 0 && math.Signbit(sin) || cos == 0 && math.Signbit(cos) {
				t.Errorf("%v and %v turns: got %v, %v, want %v, %v", row.at, float64(turns), sin, cos, row.sin, row.cos)
			}
		}
	}
}

func TestSinCosOfNothingFinite(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if sin, cos := units.Clock(x).SinCos(); !math.IsNaN(sin) || !math.IsNaN(cos) {
			t.Errorf("%v: got %v, %v, want NaN for both", x, sin, cos)
		}
	}
}

// Next to 12 o'clock the sine keeps all its digits, on either side, and at 12 it is
// zero without a sign.
func TestSinCosOfSmallAngles(t *testing.T) {
	if sin, _ := units.Clock(math.Copysign(0, -1)).SinCos(); sin != 0 || math.Signbit(sin) {
		t.Errorf("at a negative zero: %v", sin)
	}
	for _, c := range []float64{1e-20, 1e-9, 1e-3} {
		sin, cos := units.Clock(c).SinCos()
		if want := math.Sin(c * (math.Pi / 180)); math.Abs(sin-want) > 4e-16*want {
			t.Errorf("%v degrees: got %v, want %v", c, sin, want)
		}
		if backSin, backCos := units.Clock(-c).SinCos(); backSin != -sin || backCos != cos {
			t.Errorf("%v degrees back: got %v, %v, want %v, %v", c, backSin, backCos, -sin, cos)
		}
	}
}

// TestSinCosAgainstMath compares within a few turns, where the library's own
// reduction is good, and tests symmetries that hold to the last bit.
func TestSinCosAgainstMath(t *testing.T) {
	t.Run("random", rapid.MakeCheck(func(t *rapid.T) {
		c := rapid.Float64Range(-720, 720).Draw(t, "degrees")
		sin, cos := units.Clock(c).SinCos()
		wantSin, wantCos := math.Sincos(c * (math.Pi / 180))
		// At 4 pi the argument of the library's is good to 2e-15.
		if math.Abs(sin-wantSin) > 4e-15 || math.Abs(cos-wantCos) > 4e-15 {
			t.Errorf("%v degrees: got %v, %v, want %v, %v", c, sin, cos, wantSin, wantCos)
		}
	}))
	for half := units.Clock(0); half < 360; half += units.Minute {
		sin, cos := half.SinCos()
		oppositeSin, oppositeCos := half.Opposite().SinCos()
		if oppositeSin != -sin || oppositeCos != -cos {
			t.Errorf("%v and the place opposite: (%v, %v) and (%v, %v)", half, sin, cos, oppositeSin, oppositeCos)
		}
		quarterSin, quarterCos := (half + 90).SinCos()
		onAxis := half == 0 || half == 90 || half == 180 || half == 270
		atTie := math.Mod(float64(half), 90) == 45 // the eighths round to one side
		if !onAxis && !atTie && (quarterSin != cos || quarterCos != -sin) {
			t.Errorf("%v and a quarter on: (%v, %v) and (%v, %v)", half, sin, cos, quarterSin, quarterCos)
		}
	}
}

func TestNormal(t *testing.T) {
	rows := []struct {
		name string
		c    units.Clock
		want units.Clock
	}{
		{"already", 37.5, 37.5},
		{"a full turn", 360, 0},
		{"below zero", -30, 330},
		{"below zero, a full turn", -360, 0},
		{"below zero, two turns", -720, 0},
		{"negative zero", units.Clock(math.Copysign(0, -1)), 0},
		{"too small to tell from a full turn", -1e-300, 0},
		{"just below a full turn", units.Clock(math.Nextafter(360, 0)), units.Clock(math.Nextafter(360, 0))},
		{"many turns", 360e12 + 90, 90},
		{"many turns back", -360e12 - 90, 270},
	}
	for _, row := range rows {
		if got := row.c.Normal(); got != row.want || math.Signbit(float64(got)) {
			t.Errorf("%s: got %v, want %v", row.name, float64(got), float64(row.want))
		}
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got := units.Clock(x).Normal(); !math.IsNaN(float64(got)) {
			t.Errorf("%v becomes %v, want NaN", x, got)
		}
	}
}

// TestNormalIsTheSamePlace takes whole turns off an exact ratio, at any size.
func TestNormalIsTheSamePlace(t *testing.T) {
	t.Run("random", rapid.MakeCheck(func(t *rapid.T) {
		c := rapid.Float64().Draw(t, "degrees")
		turn := big.NewRat(360, 1)
		turns := new(big.Rat).Quo(new(big.Rat).SetFloat64(c), turn)
		whole := new(big.Int).Div(turns.Num(), turns.Denom()) // rounds down, as the denominator is positive
		rest := new(big.Rat).Sub(turns, new(big.Rat).SetInt(whole))
		want, _ := rest.Mul(rest, turn).Float64()
		if want == 360 {
			want = 0
		}
		if got := float64(units.Clock(c).Normal()); got != want {
			t.Errorf("%v: got %v, want %v", c, got, want)
		}
	}))
}

func TestClockRound(t *testing.T) {
	rows := []struct {
		name    string
		c, step units.Clock
		want    string
	}{
		{"to the minute", 37.3, units.Minute, "1:15"},
		{"up to twelve", 359.9, units.Minute, "12:00"},
		{"back from twelve", -0.1, units.Minute, "12:00"},
		{"to the hour", -44, units.Hour, "11:00"},
		{"half a step goes on", 45, units.Hour, "2:00"},
		{"to the quarter", 140, units.Three, "6:00"},
		{"no step", 37.3, 0, "37.3 deg"},
	}
	for _, row := range rows {
		if got := row.c.Round(row.step).String(); got != row.want {
			t.Errorf("%s: got %s, want %s", row.name, got, row.want)
		}
	}
}

func TestOpposite(t *testing.T) {
	for from, want := range map[units.Clock]units.Clock{0: 180, 180: 0, 90: 270, 345: 165, -30: 150} {
		if got := from.Opposite(); got != want {
			t.Errorf("opposite %v is %v, want %v", from, got, want)
		}
	}
}

// TestEveryMinute prints and reads every position that has hours and minutes,
// and the half minutes between, which do not.
func TestEveryMinute(t *testing.T) {
	for c := units.Clock(0); c < 360; c += units.Minute / 2 {
		s := c.String()
		if got, err := units.ParseClock(s); err != nil || got != c {
			t.Errorf("%v is printed %q and read as %v, %v", float64(c), s, float64(got), err)
		}
		if whole := math.Mod(float64(c), 0.5) == 0; whole != (s[len(s)-3] == ':') {
			t.Errorf("%v is printed %q", float64(c), s)
		}
	}
}
