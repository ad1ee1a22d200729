package tolerance_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// roundTrip asks that a value comes back from JSON the same, to the last bit; NaN
// comes back as NaN.
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
	nan := cmp.Options{
		cmpopts.EquateNaNs(),
		cmp.Comparer(func(a, b units.Length) bool { return a == b || math.IsNaN(float64(a)) && math.IsNaN(float64(b)) }),
		cmp.Comparer(func(a, b units.Slope) bool { return a == b || math.IsNaN(float64(a)) && math.IsNaN(float64(b)) }),
	}
	if diff := cmp.Diff(v, back, nan); diff != "" {
		tb.Errorf("%s comes back changed (-was +is):\n%s", text, diff)
	}
}

func TestRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off, l := drawEstimate(t), drawLimits(t)
		if rapid.Bool().Draw(t, "unknown") {
			off.Cov = align.Covariance{Basis: align.Unknown}
		}
		a := drawAcceptance(t)
		v := judgedBy(t, l, off, drawCoupling(t), a)
		roundTrip(t, v)
		roundTrip(t, a)
		for _, item := range v.All() {
			roundTrip(t, item)
		}
		l.Rule, l.Source = rapid.StringN(0, 20, -1).Draw(t, "rule"), "a <work> & more"
		roundTrip(t, l)
		for _, row := range drawRows(t) {
			roundTrip(t, row)
		}
	})
	runout, _ := tolerance.ShaftRunout(42 * mm)
	roundTrip(t, runout)
	roundTrip(t, tolerance.APIRP686())
	roundTrip(t, tolerance.Style{Length: units.InMils, LengthDigits: 2, Slope: units.InMilsPerInch, SlopeDigits: -1})
}

func TestWireForms(t *testing.T) {
	off := align.Exact(line(0.03, 0, 0.04, 0))
	unknown := off
	unknown.Cov.Basis = align.Unknown
	l := tolerance.Limits{Offset: 100 * um}
	doubtful := stated(t, off.Value, line(0.05, 0, 0.05, 0), uncorrelated)
	for _, row := range []struct {
		name  string
		value any
		want  string
	}{
		{"verdict", judged(t, l, off, align.Coupling{}), `{"outcome":"within","governs":0,"items":[{"of":"offset","plane":"both","found":"0.05 mm","u":"0 mm","limit":"0.1 mm","ratio":0.5,"probability":1}],"basis":"declared","at_least":1}`},
		{"verdict by probability", judgedBy(t, l, doubtful, align.Coupling{}, tolerance.Acceptance{Confidence: 0.95}), `{"outcome":"undecided","governs":0,"items":[{"of":"offset","plane":"both","found":"0.05 mm","u":"0.05 mm","limit":"0.1 mm","ratio":0.5,"probability":0.73098794}],"basis":"stated","rule":"by_probability","asked":{"confidence":0.95},"at_least":0.73098794}`},
		{"guarded verdict of unknown certainty", judgedBy(t, l, unknown, align.Coupling{}, tolerance.Acceptance{Guard: 2}), `{"outcome":"within","governs":0,"items":[{"of":"offset","plane":"both","found":"0.05 mm","limit":"0.1 mm","ratio":0.5}],"basis":"unknown","asked":{"guard":2}}`},
		{"acceptance", tolerance.Acceptance{}, `{}`},
		{"verdict of unknown certainty", judged(t, l, unknown, align.Coupling{}), `{"outcome":"within","governs":0,"items":[{"of":"offset","plane":"both","found":"0.05 mm","limit":"0.1 mm","ratio":0.5}],"basis":"unknown"}`},
		{"limits", tolerance.Limits{Offset: um, Slope: mmm, Flex: mmm, PerPlane: true, Rule: "r", Source: "s"}, `{"offset":"0.001 mm","slope":"1 mm/m","flex":"1 mm/m","per_plane":true,"rule":"r","source":"s"}`},
		{"no limits", tolerance.Limits{}, `{}`},
		{"row", tolerance.Row{Speed: 1500, Flex: mmm}, `{"speed":"1500 rpm","flex":"1 mm/m"}`},
		{"table", mustTable(t, tolerance.Row{Speed: 1500, Flex: mmm}), `"source,Works standard 4-12\nedition,2024\nspeed (rpm),flex (mm/m)\n1500,1\n"`},
	} {
		got, err := json.Marshal(row.value)
		if err != nil || string(got) != row.want {
			t.Errorf("%s: got %s, %v\nwant %s", row.name, got, err, row.want)
		}
	}
}

// A verdict that contradicts itself is not read: somebody typed it, or it was
// damaged. Each row changes one thing in a text that is read.
func TestVerdictRefusesOnTheWire(t *testing.T) {
	const sound = `{"outcome":"outside","governs":1,"items":[` +
		`{"of":"offset","plane":"both","found":"0.05 mm","u":"0.01 mm","limit":"0.1 mm","ratio":0.5,"probability":0.99},` +
		`{"of":"slope","plane":"both","found":"0.6 mm/m","u":"0.1 mm/m","limit":"0.5 mm/m","ratio":1.2,"probability":0.04}],"basis":"stated","rule":"by_probability","asked":{"confidence":0.95},"at_least":0.03}`
	var v tolerance.Verdict
	if err := json.Unmarshal([]byte(sound), &v); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct{ name, from, to, want string }{
		{"no outcome", `"outcome":"outside",`, ``, "missing /outcome"},
		{"within, with an item outside", `"outside"`, `"within"`, "conflict /outcome"},
		{"an outcome unknown", `"outside"`, `"good"`, "unknown /outcome"},
		{"undecided, with an item outside", `"outside"`, `"undecided"`, "conflict /outcome"},
		{"no item as unlikely as was asked", `0.95`, `0.97`, "conflict /outcome"},
		{"decided by another rule", `"by_probability"`, `"guarded"`, "conflict /rule"},
		{"decided by simple acceptance", `"rule":"by_probability",`, ``, "conflict /rule"},
		{"a rule unknown", `"by_probability"`, `"by_eye"`, "unknown /rule"},
		{"a confidence that decides nothing", `0.95`, `0.5`, "out_of_range /asked/confidence"},
		{"nothing asked", `"asked":{"confidence":0.95},`, ``, "conflict /rule"},
		{"another bound", `0.03}`, `0.04}`, "conflict /at_least"},
		{"no bound", `,"at_least":0.03`, ``, "conflict /at_least"},
		{"a bound that is none", `0.03}`, `1.03}`, "out_of_range /at_least"},
		{"a probability that is none", `"probability":0.99`, `"probability":1.01`, "out_of_range /items/0/probability"},
		{"a probability below zero", `"probability":0.99`, `"probability":-0.01`, "out_of_range /items/0/probability"},
		{"governed by the smaller", `"governs":1`, `"governs":0`, "conflict /governs"},
		{"governed by none", `"governs":1`, `"governs":2`, "out_of_range /governs"},
		{"governed by less than none", `"governs":1`, `"governs":-1`, "out_of_range /governs"},
		{"another ratio", `"ratio":0.5`, `"ratio":0.51`, "conflict /items/0/ratio"},
		{"a small ratio that is as little off", `"found":"0.05 mm","u":"0.01 mm","limit":"0.1 mm","ratio":0.5`, `"found":"0.0001 mm","u":"0.01 mm","limit":"0.1 mm","ratio":0.001000001`, "conflict /items/0/ratio"},
		{"no uncertainty", `"u":"0.01 mm",`, ``, "missing /items/0/u"},
		{"uncertainty below zero", `"u":"0.01 mm"`, `"u":"-0.01 mm"`, "out_of_range /items/0/u"},
		{"a basis unknown", `"stated"`, `"guessed"`, "unknown /basis"},
		{"no quantity", `"of":"slope",`, ``, "missing /items/1/of"},
		{"a quantity unknown", `"of":"slope"`, `"of":"gap"`, "unknown /items/1/of"},
		{"no plane", `"plane":"both","found":"0.05`, `"found":"0.05`, "missing /items/0/plane"},
		{"nothing found", `"found":"0.05 mm",`, ``, "missing /items/0/found"},
		{"found below zero", `"found":"0.05 mm"`, `"found":"-0.05 mm"`, "out_of_range /items/0/found"},
		{"a slope for an offset", `"found":"0.05 mm"`, `"found":"0.05 mm/m"`, "unknown /items/0/found"},
		{"no limit", `,"limit":"0.1 mm"`, ``, "missing /items/0/limit"},
		{"a number for an amount", `"found":"0.05 mm"`, `"found":0.05`, "malformed /items/0/found"},
		{"a text for a ratio", `"ratio":1.2`, `"ratio":"1.2"`, "malformed /items/1/ratio"},
		{"a list for what was asked", `{"confidence":0.95}`, `[0.95]`, "malformed /asked"},
		{"a confidence misspelt", `"confidence"`, `"konfidence"`, "unknown /asked/konfidence"},
		{"an uncertainty misspelt", `"u":"0.01 mm"`, `"U95":"0.01 mm"`, "unknown /items/0/U95"},
		{"no basis", `"basis":"stated",`, ``, "missing /basis"},
		{"a limit of nothing", `"limit":"0.1 mm"`, `"limit":"0 mm"`, "out_of_range /items/0/limit"},
	} {
		text := strings.Replace(sound, row.from, row.to, 1)
		if text == sound {
			t.Fatalf("%s: nothing was changed", row.name)
		}
		read := v
		wantFaults(t, row.name, json.Unmarshal([]byte(text), &read), row.want)
		if read != v {
			t.Errorf("%s: refused and yet changed to %v", row.name, read)
		}
	}
	wantFaults(t, "an item without a probability", json.Unmarshal([]byte(strings.Replace(sound, `,"probability":0.99`, ``, 1)), &v),
		"missing /items/0/probability", "conflict /at_least", "conflict /governs")
	item := `{"of":"offset","plane":"both","found":"0 mm","u":"0 mm","limit":"0.1 mm","ratio":0}`
	five := `{"outcome":"within","governs":0,"items":[` + strings.Repeat(item+",", 4) + item + `],"basis":"stated"}`
	wantFaults(t, "five items", json.Unmarshal([]byte(five), &v), "out_of_range /items")
	wantFaults(t, "no items", json.Unmarshal([]byte(`{"outcome":"within","governs":0,"items":[],"basis":"stated"}`), &v), "missing /items")
	unknown := `{"outcome":"within","governs":0,"items":[` + item + `],"basis":"unknown"}`
	wantFaults(t, "an uncertainty that is unknown", json.Unmarshal([]byte(unknown), &v), "conflict /items/0/u")
	likely := strings.Replace(unknown, `"ratio":0`, `"ratio":0,"probability":1`, 1)
	wantFaults(t, "a probability of what is unknown", json.Unmarshal([]byte(likely), &v), "conflict /items/0/u", "conflict /items/0/probability", "conflict /at_least")
	declared := strings.Replace(strings.Replace(likely, "unknown", "declared", 1), `"probability":1`, `"probability":0.5`, 1)
	declared = strings.Replace(declared, `"basis"`, `"at_least":0.5,"basis"`, 1)
	wantFaults(t, "a probability of what is exact", json.Unmarshal([]byte(declared), &v), "conflict /items/0/probability")
	bare := strings.Replace(unknown, "unknown", "stated", 1) // of one who gives no probabilities
	if err := json.Unmarshal([]byte(bare), &v); err != nil || !math.IsNaN(v.AtLeast) || !math.IsNaN(v.Items[0].Probability) || v.Rule != tolerance.Simple {
		t.Errorf("%s: got %+v, %v", bare, v, err)
	}
	wantFaults(t, "a list", json.Unmarshal([]byte(`[]`), &v), "malformed ")
	var one tolerance.Item
	wantFaults(t, "an item alone", json.Unmarshal([]byte(`{"of":"slope","found":"1 mm","limit":"-1 mm/m"}`), &one), "missing /plane", "unknown /found", "out_of_range /limit")
	wantFaults(t, "a text for an item", json.Unmarshal([]byte(`"offset"`), &one), "malformed ")
	wantFaults(t, "a number for a limit", json.Unmarshal([]byte(`{"limit":1}`), &one), "malformed /limit")
}

// A probability of just what was asked is enough, and one of just the rest is too
// little. In quarters nothing is rounded.
func TestProbabilityOfJustWhatWasAsked(t *testing.T) {
	for probability, want := range map[string]string{"0.75": "within", "0.7499": "undecided", "0.2501": "undecided", "0.25": "outside"} {
		text := `{"outcome":"` + want + `","governs":0,"items":[{"of":"offset","plane":"both","found":"0.05 mm","u":"0.05 mm","limit":"0.1 mm","ratio":0.5,"probability":` +
			probability + `}],"basis":"stated","rule":"by_probability","asked":{"confidence":0.75},"at_least":` + probability + `}`
		var v tolerance.Verdict
		if err := json.Unmarshal([]byte(text), &v); err != nil {
			t.Errorf("%s, %s: %v", probability, want, err)
		}
	}
}

func TestLeastLimitIsRead(t *testing.T) {
	var item tolerance.Item
	if err := json.Unmarshal([]byte(`{"of":"offset","plane":"both","found":"0 mm","u":"0 mm","limit":"0.000001 mm","ratio":0,"probability":1}`), &item); err != nil {
		t.Error(err)
	}
}

// What was not judged is not written.
func TestVerdictRefusesToWrite(t *testing.T) {
	sound := judged(t, tolerance.Limits{Offset: mm, Slope: mmm}, align.Exact(caseA), align.Coupling{})
	change := func(f func(*tolerance.Verdict)) tolerance.Verdict { v := sound; f(&v); return v }
	for _, row := range []struct {
		name  string
		value tolerance.Verdict
		want  string
	}{
		{"the zero verdict", tolerance.Verdict{}, "missing /items"},
		{"more items than there are", change(func(v *tolerance.Verdict) { v.Used = 5 }), "out_of_range /items"},
		{"another outcome", change(func(v *tolerance.Verdict) { v.Outcome = tolerance.Outside }), "conflict /outcome"},
		{"no outcome", change(func(v *tolerance.Verdict) { v.Outcome = 0 }), "missing /outcome"},
		{"uncertainty lost", change(func(v *tolerance.Verdict) { v.Items[1].U.Slope = units.Slope(nan) }), "missing /items/1/u"},
		{"uncertainty without end", change(func(v *tolerance.Verdict) { v.Items[1].U.Slope = units.Slope(inf) }), "not_finite /items/1/u"},
		{"probability above one", change(func(v *tolerance.Verdict) { v.Items[1].Probability = 1.5 }), "out_of_range /items/1/probability conflict /items/1/probability conflict /at_least"},
		{"another rule", change(func(v *tolerance.Verdict) { v.Rule = tolerance.Guarded }), "conflict /rule"},
	} {
		_, err := json.Marshal(row.value)
		wantFaults(t, row.name, err, pairs(row.want)...)
	}
	item := sound.Items[0]
	item.Found.Length = units.Length(nan)
	_, err := json.Marshal(item)
	wantFaults(t, "found no number", err, "not_finite /found")
}

// The words of the three sets of choices, both ways; zero has none.
func TestWords(t *testing.T) {
	type word interface {
		String() string
		encoding.TextMarshaler
	}
	for word, value := range map[string]word{
		"within": tolerance.Within, "outside": tolerance.Outside,
		"offset": tolerance.Offset, "slope": tolerance.Slope, "flex_stationary": tolerance.FlexStationary, "flex_movable": tolerance.FlexMovable,
		"undecided": tolerance.Undecided, "simple": tolerance.Simple, "by_probability": tolerance.ByProbability, "guarded": tolerance.Guarded,
		"both": tolerance.Both, "horizontal": tolerance.Horizontal, "vertical": tolerance.Vertical,
	} {
		text, err := value.MarshalText()
		if string(text) != word || value.String() != word || err != nil {
			t.Errorf("%s: %s, %v, %v", word, text, value, err)
		}
	}
	var o tolerance.Outcome
	var q tolerance.Quantity
	var p tolerance.Plane
	var r tolerance.DecisionRule
	for text, into := range map[string]encoding.TextUnmarshaler{"outside": &o, "flex_movable": &q, "vertical": &p, "guarded": &r} {
		if err := into.UnmarshalText([]byte(text)); err != nil {
			t.Error(err)
		}
		if err := into.UnmarshalText([]byte("perhaps")); !errors.Is(err, units.Unknown) {
			t.Errorf("got %v", err)
		}
	}
	if o != tolerance.Outside || q != tolerance.FlexMovable || p != tolerance.Vertical || r != tolerance.Guarded {
		t.Errorf("read %v %v %v", o, q, p)
	}
	for _, none := range []word{tolerance.Outcome(0), tolerance.Outcome(4), tolerance.DecisionRule(3), tolerance.Quantity(0), tolerance.Quantity(5), tolerance.Plane(0), tolerance.Plane(4)} {
		if _, err := none.MarshalText(); !errors.Is(err, units.Unknown) {
			t.Errorf("%T %v has a wire form", none, none)
		}
	}
}

// pairs splits "code path code path" into pairs.
func pairs(s string) (list []string) {
	words := strings.Fields(s)
	for i := 0; i+1 < len(words); i += 2 {
		list = append(list, words[i]+" "+words[i+1])
	}
	return list
}
