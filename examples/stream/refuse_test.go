package main

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// in is the sample's set-up with something else in its place.
func in(what, by string) string {
	if strings.Count(sampleSetUp, what) == 0 {
		panic("the set-up has no " + what)
	}
	return strings.Replace(sampleSetUp, what, by, 1)
}

const (
	probes = "/setup/probes"
	limits = `"limits":{"offset":"0.05 mm","slope":"0.5 mm/m","source":"invented"}`
)

// Each row is a first line that is refused.
var refusedFirst = []struct {
	name, line string
	want       []string
}{
	{"empty", "\n", []string{"malformed "}},
	{"no JSON", "hello", []string{"malformed "}},
	{"a list", "[]", []string{"malformed "}},
	{"two documents", sampleSetUp + "{}", []string{"malformed "}},
	{"deep", strings.Repeat("[", 100), []string{"out_of_range " + strings.Repeat("/0", bounds.Depth)}},
	{"too long", strings.Repeat(" ", bounds.Size) + sampleSetUp, []string{"out_of_range "}},
	{"nothing", "{}", []string{"missing /setup"}},
	{"readings first", `{"readings":[]}`, []string{"missing /setup"}},
	{"a rest first", `{"rest":{"plane":"vertical","readings":[]}}`, []string{"missing /setup"}},
	{"and readings", strings.TrimSuffix(sampleSetUp, "}") + `,"readings":[]}`, []string{"conflict "}},
	{"null", `{"setup":null}`, []string{"malformed /setup"}},
	{"an empty one", `{"setup":{}}`, []string{"missing /setup/view", "missing " + probes, "missing /setup/feet"}},
	{"another field", in(`"view"`, `"colour":"x","view"`), []string{"unknown /setup/colour"}},
	{"a field twice", in(`"view"`, `"view":"from_movable","view"`), []string{"duplicate /setup/view"}},
	{"another view", in("from_movable", "from_above"), []string{"unknown /setup/view"}},
	{"another kind", in(`"rim"`, `"laser"`), []string{"unknown " + probes + "/0/probe/kind"}},
	{"no carrier", in(`"carrier":"stationary",`, ``), []string{"missing " + probes + "/0/probe/carrier"}},
	{"a length without a unit", in(`"110 mm"`, `"110"`), []string{"missing " + probes + "/0/probe/station"}},
	{"a number for a length", in(`"110 mm"`, `110`), []string{"malformed " + probes + "/0/probe/station"}},
	{"a gain of a dial", in(`"station":"110 mm"`, `"station":"110 mm","gain":2`), []string{"conflict " + probes + "/0/probe/gain"}},
	{"a sag below zero", in(`"sag":"0.04 mm"`, `"sag":"-0.04 mm"`), []string{"out_of_range " + probes + "/0/sag"}},
	{"an uncertainty below zero", in(`"reading":"2 um"`, `"reading":"-2 um"`), []string{"out_of_range " + probes + "/0/u/reading"}},
	{"an uncertainty of no use", in(`"reading":"2 um"`, `"reading":"2 um","radius":"1 mm"`), []string{"conflict " + probes + "/0/u/radius"}},
	{"an uncertainty for one", in(`"reading":"2 um",`, ``), []string{"conflict " + probes}},
	{"no name", in(`"A"`, `""`), []string{"missing " + probes + "/0/name"}},
	{"a name twice", in(`"B"`, `"A"`), []string{"duplicate " + probes + "/1/name"}},
	{"no probes", sampleSetUp[:strings.Index(sampleSetUp, `{"name":"A"`)] + sampleSetUp[strings.Index(sampleSetUp, `],"feet"`):], []string{"missing " + probes}},
	{"probes at one station", in(`"-90 mm"`, `"110 mm"`), []string{"unseen " + probes}},
	{"no feet", in(`{"name":"inboard","x":"400 mm","u":"1 mm"},{"name":"outboard","x":"1 m","u":"1 mm"}`, ``), []string{"missing /setup/feet"}},
	{"a foot twice", in(`"outboard"`, `"inboard"`), []string{"duplicate /setup/feet/1/name"}},
	{"a foot too far", in(`"1 m"`, `"1e9 m"`), []string{"out_of_range /setup/feet/1/x"}},
	{"a target too far", in(`"judge"`, `"target":{"horizontal":{"offset":"0 mm","slope":"0 mm/m"},"vertical":{"offset":"1e9 m","slope":"0 mm/m"}},"judge"`), []string{"out_of_range /setup/target/vertical/offset"}},
	{"half a target", in(`"judge"`, `"target":{"horizontal":{"offset":"0 mm","slope":"0 mm/m"}},"judge"`), []string{"missing /setup/target/vertical"}},
	{"no limits", in(limits+",", ``), []string{"missing /setup/judge/limits"}},
	{"empty limits", in(limits, `"limits":{}`), []string{"missing /setup/judge/limits/offset"}},
	{"a limit of nothing", in(`"offset":"0.05 mm"`, `"offset":"-0.05 mm"`), []string{"out_of_range /setup/judge/limits/offset"}},
	{"no limit for a spacer", in(limits, limits+`,"coupling":{"span":"1 m"}`), []string{"missing /setup/judge/limits/flex"}},
	{"a span below zero", in(limits, limits+`,"coupling":{"span":"-1 m"}`), []string{"out_of_range /setup/judge/coupling/span"}},
	{"a confidence beyond", in(`0.95`, `95`), []string{"out_of_range /setup/judge/acceptance/confidence"}},
	{"many at once", strings.NewReplacer(`"B"`, `"A"`, `"outboard"`, `"inboard"`, `"sag":"0.04 mm"`, `"sag":"-1 mm"`).Replace(sampleSetUp), []string{
		"duplicate " + probes + "/1/name", "out_of_range " + probes + "/0/sag", "out_of_range " + probes + "/1/sag", "duplicate /setup/feet/1/name",
	}},
}

// A set-up that is refused is answered with all its faults, and ends the program.
func TestSetUpRefused(t *testing.T) {
	for _, row := range refusedFirst {
		answers, code := sent(t, row.line, sampleSetUp)
		if r := read(t, answers[0]); len(answers) != 1 || code != failed || r.Line != 1 {
			t.Errorf("%s: %d answers, ends with %d", row.name, len(answers), code)
		} else if diff := cmp.Diff(row.want, listed(r.Faults)); diff != "" {
			t.Errorf("%s (-want +got):\n%s%s", row.name, diff, answers[0])
		}
	}
}

// Lines of the sample behind which a row is put.
const (
	setUpRead = 1
	seen      = 11
	rests     = 12
)

func pair(a, b string) string {
	return `{"readings":[{"probe":"A","at":` + a + `},{"probe":"B","at":` + b + `}]}`
}

func rest1(plane, rest string) string {
	return `{"rest":{"plane":` + plane + `,"readings":[{"probe":"A","at":` + rest + `]}}`
}

const (
	goodA = `"12:00","value":"1 mm"`
	goodB = `"6:00","value":"2 mm"`
)

// Each row is a line behind so many of the sample that is refused.
var refusals = []struct {
	name   string
	behind int
	line   string
	want   []string
}{
	{"empty", setUpRead, "", []string{"malformed "}},
	{"no JSON", seen, "{", []string{"malformed "}},
	{"no UTF-8", seen, "{\"readings\":[{\"probe\":\"\xff\"}]}", []string{"malformed /readings/0/probe"}},
	{"too long", seen, `{"readings":"` + strings.Repeat("x", bounds.Size) + `"}`, []string{"out_of_range "}},
	{"another set-up", setUpRead, sampleSetUp, []string{"duplicate /setup"}},
	{"another field", seen, `{"stop":{}}`, []string{"unknown /stop"}},
	{"two fields", seen, strings.TrimSuffix(pair(goodA, goodB), "}") + `,` + rest1(`"vertical"`, goodA+"}")[1:], []string{"conflict "}},
	{"nothing", setUpRead, "{}", []string{"missing /readings"}},
	{"no readings", setUpRead, `{"readings":[]}`, []string{"missing /readings"}},
	{"no list", setUpRead, `{"readings":{}}`, []string{"malformed /readings"}},
	{"an empty reading", setUpRead, `{"readings":[{}]}`, []string{"missing /readings/0/probe", "missing /readings/0/at", "missing /readings/0/value"}},
	{"no unit", setUpRead, pair(goodA, `"6:00","value":"2"`), []string{"missing /readings/1/value"}},
	{"a comma", setUpRead, pair(`"12:00","value":"1,0 mm"`, goodB), []string{"malformed /readings/0/value"}},
	{"no hour", setUpRead, pair(`"13:00","value":"1 mm"`, goodB), []string{"out_of_range /readings/0/at"}},
	{"a value beyond any probe", setUpRead, pair(goodA, `"6:00","value":"-1.1 m"`), []string{"out_of_range /readings/1/value"}},
	{"no number", setUpRead, pair(goodA, `"6:00","value":"NaN mm"`), []string{"not_finite /readings/1/value"}},
	{"another probe", setUpRead, strings.Replace(pair(goodA, goodB), `"B"`, `"C"`, 1), []string{"unknown /readings/1/probe"}},
	{"a probe twice", setUpRead, strings.Replace(pair(goodA, goodB), `"B"`, `"A"`, 1), []string{"duplicate /readings/1/probe"}},
	{"all at once", setUpRead, `{"readings":[{"probe":"C","at":"12:00","value":"2 m"},{"probe":"C","at":"12:00","value":"2 m"}]}`, []string{
		"unknown /readings/0/probe", "out_of_range /readings/0/value", "unknown /readings/1/probe", "out_of_range /readings/1/value",
	}},

	{"a rest too early", setUpRead, rest1(`"vertical"`, goodA+`},{"probe":"B","at":`+goodB+`}`), []string{"unseen /rest"}},
	{"no plane", seen, rest1(`""`, goodA+`},{"probe":"B","at":`+goodB+`}`), []string{"missing /rest/plane"}},
	{"another plane", seen, rest1(`"axial"`, goodA+`},{"probe":"B","at":`+goodB+`}`), []string{"unknown /rest/plane"}},
	{"nothing that follows", seen, `{"rest":{"plane":"vertical","readings":[]}}`, []string{"missing /rest/readings"}},
	{"one that follows", seen, rest1(`"vertical"`, goodA+`}`), []string{"missing /rest/readings"}},
	{"across the move", seen, rest1(`"vertical"`, `"3:00","value":"1 mm"},{"probe":"B","at":`+goodB+`}`), []string{"unseen /rest/readings/0/at"}},
	{"another probe follows", seen, rest1(`"vertical"`, goodA+`},{"probe":"C","at":`+goodB+`}`), []string{"unknown /rest/readings/1/probe"}},
	{"a probe follows twice", seen, rest1(`"vertical"`, goodA+`},{"probe":"A","at":`+goodB+`}`), []string{"duplicate /rest/readings/1/probe"}},
	{"a start beyond any probe", seen, rest1(`"vertical"`, `"12:00","value":"2 m"},{"probe":"B","at":`+goodB+`}`), []string{"out_of_range /rest/readings/0/value"}},

	{"one of two", rests, `{"readings":[{"probe":"A","at":` + goodA + `}]}`, []string{"missing /readings"}},
	{"one twice", rests, strings.Replace(pair(goodA, goodB), `"B"`, `"A"`, 1), []string{"duplicate /readings/1/probe"}},
	{"a shaft that has turned", rests, pair(`"12:02","value":"1 mm"`, `"6:02","value":"2 mm"`), []string{"conflict /readings/0/at", "conflict /readings/1/at"}},
	{"a shaft that has turned back", rests, pair(`"-0.6 deg","value":"1 mm"`, goodB), []string{"conflict /readings/0/at"}},
	{"a value beyond any probe, at rest", rests, pair(goodA, `"6:00","value":"2 m"`), []string{"out_of_range /readings/1/value"}},
	{"a rest that cannot be", rests, rest1(`"horizontal"`, goodA+`},{"probe":"B","at":`+goodB+`}`), []string{"unseen /rest/readings/0/at", "unseen /rest/readings/1/at"}},
}

// A line that is refused is answered with all its faults, and what comes behind it is
// answered as if it had never been.
func TestLineRefused(t *testing.T) {
	lines := sampleLines(t)
	sound, _ := sent(t, lines...)
	for _, row := range refusals {
		answers, code := sent(t, slices.Insert(slices.Clone(lines), row.behind, row.line)...)
		if len(answers) != len(lines)+1 || code != ended {
			t.Fatalf("%s: %d answers, ends with %d", row.name, len(answers), code)
		}
		r := read(t, answers[row.behind])
		if diff := cmp.Diff(row.want, refusedAs(r)); diff != "" || r.Line != row.behind+1 {
			t.Errorf("%s (-want +got):\n%s%s", row.name, diff, answers[row.behind])
		}
		if diff := cmp.Diff(unnumbered(sound), unnumbered(slices.Delete(answers, row.behind, row.behind+1))); diff != "" {
			t.Errorf("%s: changes something: %s", row.name, diff)
		}
	}
}

// refusedAs are the faults of an answer, and what it says when it has none.
func refusedAs(r reply) []string {
	if len(r.Faults) == 0 {
		return []string{"answered"}
	}
	return listed(r.Faults)
}

// unnumbered takes the number of the line off every answer.
func unnumbered(answers []string) []string {
	all := make([]string, len(answers))
	for i, a := range answers {
		_, all[i], _ = strings.Cut(a, ",")
	}
	return all
}

// A face is no probe to raise a machine by unless it says that it does not see it go
// along, and a dial on a rim has no use for that.
func TestAxialFree(t *testing.T) {
	const face = `{"kind":"near_face","carrier":"stationary","radius":"60 mm"}`
	rim := `{"kind":"rim","carrier":"movable","station":"-90 mm"}`
	setUp := strings.Replace(in(rim, face), `,"station":"0.5 mm"`, ``, 2)
	for _, row := range []struct {
		name, setUp string
		want        []string
	}{
		{"face", setUp, []string{"unseen /rest/readings/1/probe"}},
		{"free face", strings.Replace(setUp, face, face+`,"axial_free":true`, 1), []string{"answered"}},
		{"free rim", in(rim, rim+`,"axial_free":true`), []string{"conflict /rest/readings/1/probe"}},
	} {
		lines := append([]string{row.setUp}, sampleLines(t)[1:rests]...)
		if got := refusedAs(last(t, lines...)); !slices.Equal(got, row.want) {
			t.Errorf("%s: got %v, want %v", row.name, got, row.want)
		}
	}
}
