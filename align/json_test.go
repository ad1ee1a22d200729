package align_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// thereAndBack writes a value as JSON, reads it, and returns both.
func thereAndBack[V any](tb fataler, v V) (text string, back V) {
	tb.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		tb.Fatalf("%+v: %v", v, err)
	}
	if err := json.Unmarshal(b, &back); err != nil {
		tb.Fatalf("%s: %v", b, err)
	}
	return string(b), back
}

// roundTrip asks that a value comes back the same. Variances are written as
// standard uncertainties and correlations, so they come back to rounding: a root,
// two products and a quotient.
func roundTrip[V any](tb fataler, v V) {
	tb.Helper()
	text, back := thereAndBack(tb, v)
	if diff := cmp.Diff(v, back, openly, closely(8*eps, 4*eps)); diff != "" {
		tb.Errorf("%s comes back changed (-was +is):\n%s", text, diff)
	}
}

func TestRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawScattered(t)
		f := mustFit(t, sets...)
		for _, s := range sets {
			if _, back := thereAndBack(t, s); !cmp.Equal(s, back) { // exact: nothing is computed
				t.Errorf("set comes back changed:\n%s", cmp.Diff(s, back))
			}
			roundTrip(t, s.Probe)
		}
		roundTrip(t, f)
		roundTrip(t, f.Estimate)
		roundTrip(t, f.Cov)
		moves, err := f.Corrections(align.Foot{Name: "in", X: 300 * mm, U: mm}, align.Foot{X: 900 * mm})
		if err != nil {
			t.Fatal(err)
		}
		roundTrip(t, moves)
		roundTrip(t, mustResiduals(t, sets, f))
	})
}

func TestRoundTripsOfEveryBasis(t *testing.T) {
	for _, b := range []align.Basis{align.Declared, align.Stated, align.Scatter, align.Unknown} {
		e := estimate(t, b, 3)
		roundTrip(t, e)
		moves, err := e.Corrections(align.Foot{Name: "a", X: 10 * mm})
		if err != nil {
			t.Fatal(err)
		}
		roundTrip(t, moves[0])
	}
	warned := mustFit(t, read(t, align.Centreline{}, reverse(), quarters...)...)
	if len(warned.Warnings) == 0 {
		t.Fatal("readings all alike bring no warning")
	}
	roundTrip(t, warned)
	roundTrip(t, align.Coupling{Name: "c", Diameter: 150 * mm, Span: 800 * mm})
	roundTrip(t, align.Style{Unit: units.InMils, Digits: 2, View: align.FromStationary, Three: "north", Six: "ladder"})
	roundTrip(t, align.Point{X: mm, W: um})
}

// What is written says what it is, with units, and leaves out what is not known.
func TestWireForms(t *testing.T) {
	moves, _ := estimate(t, align.Unknown, 0).Corrections(align.Foot{Name: "a", X: 10 * mm})
	set := rim(align.Movable, -50)
	set.Readings = []align.Reading{{At: units.Three, Value: 10 * um}}
	rows := []struct {
		name  string
		value any
		want  string
	}{
		{"set", set, `{"probe":{"kind":"rim","carrier":"movable","station":"-50 mm"},"view":"from_movable","readings":[{"at":"3:00","value":"0.01 mm"}]}`},
		{"zero covariance", align.Covariance{}, `{"basis":"declared"}`},
		{"unknown covariance", align.Covariance{Basis: align.Unknown}, `{"basis":"unknown"}`},
		{"move of unknown certainty", moves[0], `{"foot":{"name":"a","x":"10 mm"},"by":{"horizontal":"-0.124 mm","vertical":"0.207 mm"},"basis":"unknown"}`},
		{"zero estimate", align.Estimate{}, `{"value":{"horizontal":{"offset":"0 mm","slope":"0 mm/m"},"vertical":{"offset":"0 mm","slope":"0 mm/m"}},"cov":{"basis":"declared"}}`},
	}
	for _, row := range rows {
		got, err := json.Marshal(row.value)
		if err != nil || string(got) != row.want {
			t.Errorf("%s:\ngot  %s, %v\nwant %s", row.name, got, err, row.want)
		}
	}
}

// A covariance that cannot be is refused on the way in as NewCovariance does,
// and leaves what it was to be read into.
func TestCovarianceRefusesOnTheWayIn(t *testing.T) {
	const u = `"u":{"horizontal":{"offset":"1 um","slope":"1 um/m"},"vertical":{"offset":"1 um","slope":"1 um/m"}}`
	matrix := func(rows string) string { return `,"correlation":[` + rows + `]` }
	rows := []struct {
		name, text string
		want       string // "" passes
	}{
		{"not symmetric", `{"basis":"stated",` + u + matrix(`[1,0.5,0,0],[0,1,0,0],[0,0,1,0],[0,0,0,1]`) + `}`, "conflict /correlation/0/1"},
		{"impossible", `{"basis":"stated",` + u + matrix(`[1,1.5,0,0],[1.5,1,0,0],[0,0,1,0],[0,0,0,1]`) + `}`, "conflict /correlation"},
		{"possible", `{"basis":"stated",` + u + matrix(`[1,0.5,0,0],[0.5,1,0,0],[0,0,1,0],[0,0,0,1]`) + `}`, ""},
		{"three that are impossible together", `{"basis":"stated",` + u + matrix(`[1,0.9,0.9,0],[0.9,1,0.6,0],[0.9,0.6,1,0],[0,0,0,1]`) + `}`, "conflict /correlation"},
		{"three that are possible together", `{"basis":"stated",` + u + matrix(`[1,0.9,0.9,0],[0.9,1,0.63,0],[0.9,0.63,1,0],[0,0,0,1]`) + `}`, ""},
		{"below zero", `{"basis":"stated",` + strings.Replace(u, `"1 um"`, `"-1 um"`, 1) + `}`, "out_of_range /u/horizontal/offset"},
		{"exact and yet uncertain", `{"basis":"declared",` + u + `}`, "conflict /u"},
		{"unknown and yet known", `{"basis":"unknown",` + u + `}`, "conflict /u"},
		{"no basis, but uncertain", `{` + u + `}`, "missing /basis"},
		{"stated", `{"basis":"stated",` + u + `}`, ""},
		{"stated, but not what", `{"basis":"stated"}`, "missing /u"},
		{"scatter, but not what", `{"basis":"scatter","dof":3}`, "missing /u"},
		{"degrees of freedom of what is stated", `{"basis":"stated","dof":3,` + u + `}`, "conflict /dof"},
		{"degrees of freedom below zero", `{"basis":"scatter","dof":-3,` + u + `}`, "out_of_range /dof"},
		{"scatter", `{"basis":"scatter","dof":3,` + u + `}`, ""},
	}
	for _, row := range rows {
		before := estimate(t, align.Scatter, 7).Cov
		c := before
		err := json.Unmarshal([]byte(row.text), &c)
		if row.want == "" {
			if err != nil {
				t.Errorf("%s: refused: %v", row.name, err)
			}
			continue
		}
		if got := codesAndPaths(err); !slices.Equal(got, []string{row.want}) {
			t.Errorf("%s: got %v (%v), want just %s", row.name, got, err, row.want)
		}
		if c != before {
			t.Errorf("%s: what it was to be read into is changed", row.name)
		}
	}
}

func TestMoveRefusesOnTheWayIn(t *testing.T) {
	const rest = `"foot":{"name":"a","x":"10 mm"},"by":{"horizontal":"1 mm","vertical":"2 mm"}`
	var m align.Move
	err := json.Unmarshal([]byte(`{`+rest+`,"basis":"stated"}`), &m)
	checkFault(t, err, units.Missing, "/u")
	if err := json.Unmarshal([]byte(`{`+rest+`,"basis":"unknown"}`), &m); err != nil || !math.IsNaN(float64(m.U.Vertical)) {
		t.Errorf("unknown: got %+v, %v, want NaN", m, err)
	}
}

// word is an enum by its text.
type word interface {
	encoding.TextMarshaler
	String() string
}

func TestEnumsInText(t *testing.T) {
	enums := []struct {
		name  string
		words []string
		first uint8
		of    func(uint8) word
		read  func([]byte) (word, error)
	}{
		{"Shaft", []string{"stationary", "movable"}, 1, func(i uint8) word { return align.Shaft(i) }, func(b []byte) (word, error) { var v align.Shaft; err := v.UnmarshalText(b); return v, err }},
		{"Kind", []string{"rim", "bore", "near_face", "far_face", "gap", "straightedge", "spacer_face", "spacer_far_face", "displacement"}, 1, func(i uint8) word { return align.Kind(i) }, func(b []byte) (word, error) { var v align.Kind; err := v.UnmarshalText(b); return v, err }},
		{"View", []string{"from_movable", "from_stationary"}, 0, func(i uint8) word { return align.View(i) }, func(b []byte) (word, error) { var v align.View; err := v.UnmarshalText(b); return v, err }},
		{"Basis", []string{"declared", "stated", "scatter", "unknown"}, 0, func(i uint8) word { return align.Basis(i) }, func(b []byte) (word, error) { var v align.Basis; err := v.UnmarshalText(b); return v, err }},
	}
	for _, e := range enums {
		t.Run(e.name, func(t *testing.T) {
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
			for _, text := range []string{"RIM", "Rim", " rim", "rim ", "nonsense", strings.Repeat("x", 1000), "0", "\x00"} {
				_, err := e.read([]byte(text))
				var f *units.Fault
				if !errors.As(err, &f) || f.Code != units.Unknown || len(f.Value) > 100 || !strings.Contains(f.Want, e.words[0]) {
					t.Errorf("%.20q: got %v, want a fault that lists the words", text, err)
				}
			}
			if _, err := e.read(nil); !errors.Is(err, units.Missing) {
				t.Errorf("no text: got %v, want missing", err)
			}
			beyond := e.first + uint8(len(e.words))
			for _, i := range []uint8{beyond, 255} {
				v := e.of(i)
				if _, err := v.MarshalText(); !errors.Is(err, units.Unknown) {
					t.Errorf("%d is written as text: %v", i, err)
				}
				if s := v.String(); s == "" || slices.Contains(e.words, s) {
					t.Errorf("%d prints as %q", i, s)
				}
			}
		})
	}
}

// lineProtocol is a request of the suite's line protocol, as far as a fit needs
// it, and its answer.
const lineProtocol = `{"view":"from_movable",
  "sets":[
   {"probe":{"kind":"rim","carrier":"stationary","station":"40 mm"},"sag":"0 mm",
    "readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.363764 mm"},
                {"at":"6:00","value":"0.456 mm"},{"at":"9:00","value":"0.091764 mm"}]},
   {"probe":{"kind":"rim","carrier":"movable","station":"-50 mm"},
    "readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"-0.265127 mm"},
                {"at":"180 deg","value":"-0.33 mm"},{"at":"9:00","value":"-0.065127 mm"}]}],
  "feet":[{"name":"inboard","x":"300 mm"},{"name":"outboard","x":"900 mm"}]}`

func TestLineProtocol(t *testing.T) {
	var request struct {
		View align.View   `json:"view"`
		Sets []align.Set  `json:"sets"`
		Feet []align.Foot `json:"feet"`
	}
	if err := json.Unmarshal([]byte(lineProtocol), &request); err != nil {
		t.Fatal(err)
	}
	for i := range request.Sets {
		request.Sets[i].View = request.View
	}
	f := mustFit(t, request.Sets...)
	nearLine(t, "fit", f.Value, caseA, uniform(1e-6))
	moves, err := f.Corrections(request.Feet...)
	if err != nil {
		t.Fatal(err)
	}
	want := []align.Vector{{Horizontal: -240 * um, Vertical: 410 * um}, {Horizontal: -480 * um, Vertical: 830 * um}}
	for i, m := range moves {
		if m.Foot.Name != request.Feet[i].Name {
			t.Errorf("move %d is of %q", i, m.Foot.Name)
		}
		near(t, "horizontal", m.By.Horizontal, want[i].Horizontal, 1e-6)
		near(t, "vertical", m.By.Vertical, want[i].Vertical, 1e-6)
	}
	if len(f.Warnings) != 0 {
		t.Errorf("warnings %v, want none", f.Warnings)
	}
}

// Kinds of the protocol, each with what it needs, and with uncertainties.
func TestLineProtocolOfEveryKind(t *testing.T) {
	const tail = `,"view":"from_stationary","readings":[{"at":"12:00","value":"0 mm","u":"2 um"},{"at":"37.5 deg","value":"1.5 mil"}],
		"u":{"reading":"5 um","clock":"0.5 deg"}}`
	for _, probe := range []string{
		`"kind":"rim","carrier":"stationary","station":"40 mm"`,
		`"kind":"rim","carrier":"stationary","station":"40 mm","radius":"75 mm"`,
		`"kind":"bore","carrier":"movable","station":"-40 mm"`,
		`"kind":"near_face","carrier":"movable","radius":"75 mm"`,
		`"kind":"far_face","carrier":"movable","radius":"3 in"`,
		`"kind":"gap","radius":"75 mm"`,
		`"kind":"straightedge","carrier":"movable","station":"0 mm"`,
		`"kind":"spacer_face","carrier":"movable","radius":"75 mm","span":"800 mm"`,
		`"kind":"spacer_far_face","carrier":"stationary","radius":"75 mm","span":"800 mm"`,
		`"kind":"displacement","station":"-50 mm","gain":-2.5`,
	} {
		var s align.Set
		if err := json.Unmarshal([]byte(`{"probe":{`+probe+`}`+tail), &s); err != nil {
			t.Errorf("%s: %v", probe, err)
			continue
		}
		if _, err := s.Predict(caseA, 0); err != nil {
			t.Errorf("%s: %v", probe, err)
		}
		if s.View != align.FromStationary || s.Readings[1].At != 37.5 || s.Readings[1].Value != 1.5*mil || s.Readings[0].U != 2*um || s.U.Reading != 5*um {
			t.Errorf("%s: read as %+v", probe, s)
		}
		roundTrip(t, s)
	}
}

// Text that is JSON but not of the shape, or a quantity without its unit, is
// refused; what has its own reader is left as it was.
func TestOtherShapesAreRefused(t *testing.T) {
	before := estimate(t, align.Stated, 0).Cov
	moved := move("inboard", 10*um, -20*um)
	covariance, moveInto := before, moved
	rows := []struct {
		name, bad, twin string
		into            any
	}{
		{"a number for a basis", `{"basis":1}`, `{"basis":"declared"}`, &covariance},
		{"a word that is no basis", `{"basis":"guessed"}`, `{"basis":"unknown"}`, &covariance},
		{"a text for a vector", `{"by":"1 mm","basis":"unknown"}`, `{"by":{"vertical":"1 mm"},"basis":"unknown"}`, &moveInto},
		{"a length without a unit", `{"at":"3:00","value":"0.1"}`, `{"at":"3:00","value":"0.1 mm"}`, new(align.Reading)},
		{"a length as a number", `{"at":"3:00","value":0.1}`, `{"at":"3:00","value":"0.1 mil"}`, new(align.Reading)},
		{"a clock of its own", `{"at":"3 pm","value":"0 mm"}`, `{"at":"90 deg","value":"0 mm"}`, new(align.Reading)},
		{"a carrier that is a machine's name", `{"kind":"rim","carrier":"motor"}`, `{"kind":"rim","carrier":"movable"}`, new(align.Probe)},
		{"a kind in capitals", `{"kind":"RIM"}`, `{"kind":"rim"}`, new(align.Probe)},
		{"an empty view", `{"view":""}`, `{"view":"from_stationary"}`, new(align.Set)},
		{"readings that are no list", `{"readings":{"at":"3:00"}}`, `{"readings":[{"at":"3:00"}]}`, new(align.Set)},
	}
	for _, row := range rows {
		if err := json.Unmarshal([]byte(row.bad), row.into); err == nil {
			t.Errorf("%s: %s is read as %+v", row.name, row.bad, row.into)
		}
		if covariance != before || moveInto != moved {
			t.Fatalf("%s: what it was to be read into is changed", row.name)
		}
		if err := json.Unmarshal([]byte(row.twin), row.into); err != nil {
			t.Errorf("%s: the twin %s is refused: %v", row.name, row.twin, err)
		}
		covariance, moveInto = before, moved
	}
}

// As keys of a map the choices stand in words as well.
func TestChoicesAsKeys(t *testing.T) {
	roundTrip(t, map[align.Shaft]align.Kind{align.Stationary: align.Gap, align.Movable: align.SpacerFarFace})
	text, _ := thereAndBack(t, map[align.View]align.Basis{align.FromStationary: align.Scatter})
	if want := `{"from_stationary":"scatter"}`; text != want {
		t.Errorf("got %s, want %s", text, want)
	}
}

// A move whose uncertainty was stated has no degrees of freedom: only a scatter has.
func TestMoveRefusesFreedomOfWhatIsStated(t *testing.T) {
	const text = `{"foot":{"name":"a","x":"10 mm"},"by":{"horizontal":"1 mm","vertical":"2 mm"},` +
		`"u":{"horizontal":"1 um","vertical":"1 um"},"basis":"%s","dof":{"horizontal":3,"vertical":3}}`
	var m align.Move
	err := json.Unmarshal(fmt.Appendf(nil, text, "stated"), &m)
	if got := codesAndPaths(err); !slices.Equal(got, []string{"conflict /dof"}) || m != (align.Move{}) {
		t.Errorf("stated: %v, %+v", got, m)
	}
	if err := json.Unmarshal(fmt.Appendf(nil, text, "scatter"), &m); err != nil || m.DoF.Vertical != 3 {
		t.Errorf("scatter: %v, %+v", err, m)
	}
}
