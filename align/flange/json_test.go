package flange_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// sameNumber takes two NaN for equal.
var sameNumber = cmp.Comparer(func(a, b units.Length) bool {
	return a == b || math.IsNaN(float64(a)) && math.IsNaN(float64(b))
})

// roundTrip writes a value as JSON and asks that it comes back the same.
func roundTrip[V any](tb fataler, v V) {
	tb.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		tb.Fatalf("%+v: %v", v, err)
	}
	var back V
	if err := json.Unmarshal(text, &back); err != nil {
		tb.Fatalf("%s: %v", text, err)
	}
	if diff := cmp.Diff(v, back, sameNumber); diff != "" {
		tb.Errorf("%s comes back changed (-was +is):\n%s", text, diff)
	}
}

func TestRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFlange(t)
		f.Clearance = drawLength(t, "clearance", 0.1, 2)
		f.Spigot.Vertical, f.UFace = f.Clearance/3, mm
		roundTrip(t, f)
		roundTrip(t, f.Bolts[0])
		c := drawCentreline(t, 20e-3)
		unknown, scatter := align.Exact(c), known(t, align.Scatter, c, um, 1e-5, 0.3)
		unknown.Cov.Basis, scatter.Cov.DoF = align.Unknown, 5
		for _, off := range []align.Estimate{align.Exact(c), known(t, align.Stated, c, um, 1e-5, -0.3), scatter, unknown} {
			found := mustCorrect(t, f, off)
			roundTrip(t, found)
			roundTrip(t, found.Shims[1])
		}
	})
}

// What is written says what it is, with units, and leaves out what is not known.
func TestWireForms(t *testing.T) {
	unknown := align.Exact(line(0, 1e-3, 0, 0))
	unknown.Cov.Basis = align.Unknown
	limit, err := flange.Runout(300 * mm)
	if err != nil {
		t.Fatal(err)
	}
	bare := worked()
	bare.Bolts = bare.Bolts[:1]
	rows := []struct {
		name  string
		value any
		want  string
	}{
		{"flange", bare, `{"face":"400 mm","push":"away_from_stationary","bolts":[{"name":"12","radius":"200 mm","at":"12:00"}],"view":"from_movable"}`},
		{"shim", flange.Shim{Bolt: bare.Bolts[0], Thickness: 200 * um}, `{"bolt":{"name":"12","radius":"200 mm","at":"12:00"},"thickness":"0.2 mm","u":"0 mm","basis":"declared"}`},
		{"shim of unknown certainty", mustCorrect(t, worked(), unknown).Shims[3], `{"bolt":{"name":"9","radius":"200 mm","at":"9:00"},"thickness":"0 mm","basis":"unknown"}`},
		{"runout", limit, `{"from":"230 mm","up_to":"450 mm","limit":"0.125 mm","source":"EASA AR100-2020, table 2-11, IEC flange-mounted machines (read)"}`},
		{"nothing to do", flange.Correction{}, `{"slide":{"foot":{"name":"","x":"0 mm"},"by":{"horizontal":"0 mm","vertical":"0 mm"},"u":{"horizontal":"0 mm","vertical":"0 mm"},"basis":"declared"},"axial":"0 mm","tilt_shift":{"horizontal":"0 mm","vertical":"0 mm"},"rabbet":"not_stated"}`},
	}
	for _, row := range rows {
		got, err := json.Marshal(row.value)
		if err != nil || string(got) != row.want {
			t.Errorf("%s:\ngot  %s, %v\nwant %s", row.name, got, err, row.want)
		}
	}
}

func TestShimRefusesOnTheWayIn(t *testing.T) {
	rows := []struct{ name, text, want string }{ // want "" passes
		{"stated", `"thickness":"1 mm","u":"1 um","basis":"stated"`, ""},
		{"below zero", `"thickness":"-1 mm","u":"1 um","basis":"stated"`, "out_of_range /thickness"},
		{"stated, but not what", `"thickness":"1 mm","basis":"stated"`, "missing /u"},
		{"no basis is exact, and says so", `"thickness":"1 mm"`, "missing /u"},
		{"exact", `"thickness":"1 mm","u":"0 mm"`, ""},
		{"exact and yet uncertain", `"thickness":"1 mm","u":"1 um"`, "conflict /u"},
		{"unknown", `"thickness":"1 mm","basis":"unknown"`, ""},
		{"unknown and yet known", `"thickness":"1 mm","u":"0 mm","basis":"unknown"`, "conflict /u"},
		{"uncertainty below zero", `"thickness":"1 mm","u":"-1 um","basis":"stated"`, "out_of_range /u"},
		{"degrees of freedom of a scatter", `"thickness":"1 mm","u":"1 um","basis":"scatter","dof":4`, ""},
		{"degrees of freedom of what is stated", `"thickness":"1 mm","u":"1 um","basis":"stated","dof":4`, "conflict /dof"},
		{"degrees of freedom below zero", `"thickness":"1 mm","u":"1 um","basis":"scatter","dof":-4`, "out_of_range /dof"},
		{"a basis that does not exist", `"thickness":"1 mm","u":"1 um","basis":"guessed"`, "unknown /basis"},
		{"a number for a length", `"thickness":1,"u":"0 mm"`, "malformed /thickness"},
		{"a bolt's place misspelt", `"bolt":{"raduis":"1 mm"},"thickness":"1 mm","u":"0 mm"`, "unknown /bolt/raduis"},
		{"degrees of freedom misspelt", `"thickness":"1 mm","u":"1 um","basis":"scatter","dfo":4`, "unknown /dfo"},
	}
	for _, row := range rows {
		before := flange.Shim{Thickness: 7}
		s := before
		err := json.Unmarshal([]byte("{"+row.text+"}"), &s)
		if row.want == "" {
			if err != nil {
				t.Errorf("%s: refused: %v", row.name, err)
			}
			continue
		}
		if got := faults(err); !slices.Equal(got, []string{row.want}) {
			t.Errorf("%s: got %v (%v), want just %s", row.name, got, err, row.want)
		}
		if s != before {
			t.Errorf("%s: what it was to be read into is changed", row.name)
		}
	}
}

// word is an enum by its text.
type word interface {
	encoding.TextMarshaler
	String() string
}

func TestEnumsInText(t *testing.T) {
	enums := []struct {
		words []string
		first uint8
		of    func(uint8) word
		read  func([]byte) (word, error)
	}{
		{[]string{"away_from_stationary", "towards_stationary"}, 1, func(i uint8) word { return flange.Push(i) },
			func(b []byte) (word, error) { var v flange.Push; err := v.UnmarshalText(b); return v, err }},
		{[]string{"not_stated", "fits", "does_not_fit"}, 0, func(i uint8) word { return flange.Rabbet(i) },
			func(b []byte) (word, error) { var v flange.Rabbet; err := v.UnmarshalText(b); return v, err }},
	}
	for _, e := range enums {
		for i, want := range e.words {
			v := e.of(e.first + uint8(i))
			text, err := v.MarshalText()
			if v.String() != want || string(text) != want || err != nil {
				t.Errorf("%d is %q and %q, %v; want %q", i, v, text, err, want)
			}
			if back, err := e.read([]byte(want)); err != nil || back != v {
				t.Errorf("%q is read as %v, %v", want, back, err)
			}
		}
		if _, err := e.read([]byte("Fits")); !errors.Is(err, units.Unknown) {
			t.Errorf("a capital is read: %v", err)
		}
		if _, err := e.read(nil); !errors.Is(err, units.Missing) {
			t.Errorf("no text: %v", err)
		}
		if _, err := e.of(e.first + uint8(len(e.words))).MarshalText(); !errors.Is(err, units.Unknown) {
			t.Errorf("one beyond is written: %v", err)
		}
	}
	if _, err := flange.Push(0).MarshalText(); !errors.Is(err, units.Unknown) {
		t.Errorf("a push that nobody chose is written: %v", err)
	}
}
