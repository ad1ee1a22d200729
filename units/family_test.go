package units_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/collinear/units"
)

func TestTextFamily(t *testing.T) {
	for _, k := range kinds {
		t.Run(k.name, k.family)
	}
	t.Run("LengthUnit", unitFamily("mil", units.ParseLengthUnit))
	t.Run("SlopeUnit", unitFamily("mil/in", units.ParseSlopeUnit))
	t.Run("AngleUnit", unitFamily("deg", units.ParseAngleUnit))
	t.Run("TemperatureUnit", unitFamily("°F", units.ParseTemperatureUnit))
	t.Run("TemperatureDifferenceUnit", unitFamily("°F", units.ParseTemperatureDifferenceUnit))
	t.Run("RotationalSpeedUnit", unitFamily("Hz", units.ParseRotationalSpeedUnit))
	t.Run("LinearSpeedUnit", unitFamily("in/s", units.ParseLinearSpeedUnit))
	t.Run("ExpansionUnit", unitFamily("mil/in/°F", units.ParseExpansionUnit))
}

// checkZero tests that the zero value prints as documented and is read back.
func checkZero[Q textual](t *testing.T, zero string, parse func(string) (Q, error)) {
	var q Q
	if q.String() != zero {
		t.Errorf("the zero value prints as %q, want %q", q, zero)
	}
	if got, err := parse(zero); err != nil || got != q {
		t.Errorf("%q is read as %v, %v, want the zero value", zero, got, err)
	}
}

// checkMust tests that must gives what parse does, and panics where that fails.
func checkMust[Q textual](t *testing.T, good string, parse func(string) (Q, error), must func(string) Q) {
	want, err := parse(good)
	if err != nil {
		t.Fatal(err)
	}
	if got := must(good); got != want {
		t.Errorf("%q: got %v, want %v", good, got, want)
	}
	defer func() {
		if _, ok := recover().(*units.Fault); !ok {
			t.Error("an empty text did not panic with a fault")
		}
	}()
	must("")
}

// checkFamily tests that a text, which has to be in the wire form, goes through
// every door of the family and comes out the same, and that a text that is not
// sound is a fault at each and changes nothing.
func checkFamily[Q textual, P readable[Q]](t *testing.T, wire string, parse func(string) (Q, error)) {
	want, err := parse(wire)
	if err != nil {
		t.Fatal(err)
	}
	if want.String() != wire {
		t.Errorf("%q prints as %q", wire, want)
	}
	if b, err := want.MarshalText(); err != nil || string(b) != wire {
		t.Errorf("MarshalText gives %q, %v, want %q", b, err, wire)
	}
	doors := []struct {
		name string
		read func(dst *Q, text string) error
	}{
		{"UnmarshalText", func(dst *Q, text string) error { return P(dst).UnmarshalText([]byte(text)) }},
		{"JSON string", func(dst *Q, text string) error {
			return json.Unmarshal([]byte(`"`+text+`"`), dst)
		}},
		{"JSON map key", func(dst *Q, text string) error {
			var m map[Q]bool
			err := json.Unmarshal([]byte(`{"`+text+`":true}`), &m)
			for q := range m {
				*dst = q
			}
			return err
		}},
	}
	for _, door := range doors {
		var got Q
		if err := door.read(&got, wire); err != nil || got != want {
			t.Errorf("%s: got %v, %v, want %v", door.name, got, err, want)
		}
		got = want
		err := door.read(&got, "1,5 furlong")
		if faults := units.Faults(err); len(faults) != 1 || faults[0].Value != `"1,5 furlong"` {
			t.Errorf("%s: an unsound text gives %v, want one fault that quotes it", door.name, err)
		}
		if got != want {
			t.Errorf("%s: an unsound text set the value to %v", door.name, got)
		}
	}
	checkJSON(t, want, wire)
	checkFlag[Q, P](t, want, wire)
}

// checkJSON tests what a value is written as in JSON.
func checkJSON[Q textual](t *testing.T, q Q, wire string) {
	got, err := json.Marshal(map[Q]Q{q: q})
	if want := fmt.Sprintf("{%q:%q}", wire, wire); err != nil || string(got) != want {
		t.Errorf("JSON is %s, %v, want %s", got, err, want)
	}
}

// checkFlag tests a value as a flag: its default, and one that is set.
func checkFlag[Q textual, P readable[Q]](t *testing.T, q Q, wire string) {
	var got, zero Q
	flags := flag.NewFlagSet("", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.TextVar(P(&got), "q", zero, "")
	if want := zero.String(); flags.Lookup("q").DefValue != want {
		t.Errorf("flag: the default is %q, want %q", flags.Lookup("q").DefValue, want)
	}
	if err := flags.Parse([]string{"-q", wire}); err != nil || got != q {
		t.Errorf("flag: got %v, %v, want %v", got, err, q)
	}
	if err := flags.Parse([]string{"-q", ""}); err == nil || got != q {
		t.Errorf("flag: an empty text set %v, %v", got, err)
	}
}

// unitFamily returns a test of the text family of a unit.
func unitFamily[U interface {
	~uint8
	textual
}, P readable[U]](name string, parse func(string) (U, error)) func(*testing.T) {
	return func(t *testing.T) {
		checkFamily[U, P](t, name, parse)
		for u := U(0); ; u++ {
			b, err := u.MarshalText()
			if err != nil {
				checkUnknownUnit(t, u, err)
				break
			}
			if got, err := parse(string(b)); err != nil || got != u {
				t.Errorf("unit %d is written %q and read as %d, %v", u, b, got, err)
			}
		}
		if _, err := parse(""); !errors.Is(err, units.Missing) {
			t.Errorf("an empty text gives %v, want missing", err)
		}
	}
}

// checkUnknownUnit tests the first number that stands for no unit.
func checkUnknownUnit[U interface {
	~uint8
	textual
}](t *testing.T, u U, err error) {
	if want := fmt.Sprintf("%T(%d)", u, uint8(u))[len("units."):]; u.String() != want {
		t.Errorf("a unit that does not exist prints as %q, want %q", u, want)
	}
	if faults := units.Faults(err); len(faults) != 1 || faults[0].Code != units.Unknown || faults[0].Value != u.String() {
		t.Errorf("a unit that does not exist gives %v, want an unknown fault", err)
	}
	if u == 0 {
		t.Error("the zero value is no unit")
	}
}

// TestWireLosesNothing reads back what it printed of any float64 at all.
func TestWireLosesNothing(t *testing.T) {
	for _, k := range kinds {
		t.Run(k.name, rapid.MakeCheck(func(t *rapid.T) {
			x := math.Float64frombits(rapid.Uint64().Draw(t, "bits"))
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Skip("only finite values have a wire form")
			}
			checkRoundTrip(t, k, x)
		}))
	}
}

// Values at the edges of the formats, which random bits do not find.
var edges = []float64{
	0, math.Copysign(0, -1), 1, -1, 0.5, 20, -30, 359.5, 360, 90.25, 1e20, 1e21, 1e22, 1e23, 1e26, 1e27, 1e28,
	1e-1, 1e-2, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-13, 1e-14, 123456789, 0.1, 1.0 / 3, 1 << 53, 1<<53 + 2,
	math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, 0x1p-1022,
	0x1.fffffffffffffp-1023, // the largest subnormal
	9.5e-323, 5e-324, 2.2250738585072011e-308,
}

func TestWireAtTheEdges(t *testing.T) {
	for _, k := range kinds {
		for _, x := range edges {
			checkRoundTrip(t, k, x)
		}
	}
}

func checkRoundTrip(t interface{ Errorf(string, ...any) }, k kind, x float64) {
	s := k.print(x)
	got, err := k.parse(s)
	if err != nil || got != x {
		t.Errorf("%s: %v is printed %q and read as %v, %v", k.name, x, s, got, err)
	}
	if x == 0 && math.Signbit(got) || s[0] == '-' && x >= 0 {
		t.Errorf("%s: zero keeps a sign: %q", k.name, s)
	}
	if again := k.print(got); again != s {
		t.Errorf("%s: %q is printed %q again", k.name, s, again)
	}
	if len(s) > 40 {
		t.Errorf("%s: %q is longer than need be", k.name, s)
	}
}

// TestNotFiniteIsNotWritten tests the values that have no wire form.
func TestNotFiniteIsNotWritten(t *testing.T) {
	for _, k := range kinds {
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			s := k.print(x)
			want := []*units.Fault{{
				Code:  units.NotFinite,
				Value: s,
				Want:  "units." + k.name + ".MarshalText: a finite number",
			}}
			if diff := cmp.Diff(want, units.Faults(k.lost(x))); diff != "" {
				t.Errorf("%s: %s (-want +got):\n%s", k.name, s, diff)
			}
			if _, err := k.parse(s); !errors.Is(err, units.NotFinite) {
				t.Errorf("%s: %q is read with %v, want not finite", k.name, s, err)
			}
		}
	}
	if got := units.Length(math.NaN()).String(); got != "NaN mm" {
		t.Errorf("NaN prints as %q", got)
	}
	_, err := json.Marshal(units.Slope(math.Inf(1)))
	if !errors.Is(err, units.NotFinite) {
		t.Errorf("JSON of an infinite slope gives %v, want not finite", err)
	}
}
