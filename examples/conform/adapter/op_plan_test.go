package adapter

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"example.org/collinear/units"
)

const (
	nothing = `{"horizontal":{"offset":"0 mm","slope":"0 mm/m"},"vertical":{"offset":"0 mm","slope":"0 mm/m"}}`

	motorPump = `{"machines":[{"name":"motor","height":"400 mm","feet":[{"name":"outboard","x":"0 mm"},{"name":"inboard","x":"800 mm"}]},{"name":"pump"}],
		"joints":[{"at":"1100 mm",LOOK"found":{` + caseA + `},"limits":{"offset":"0.05 mm"}}],"reference":"pump"}`

	twoOfAKind = `{"machines":[{"name":"M","feet":[{"name":"A","x":"0 m","vertical":LIMIT},{"name":"B","x":"1 m","vertical":LIMIT}]},{"name":"P","feet":[{"name":"A","x":"2 m"},{"name":"B","x":"3 m"}]}],
		"joints":[{"at":"1.5 m","found":{"horizontal":{"offset":"0 mm","slope":"0 mm/m"},"vertical":{"offset":"0.2 mm","slope":"0 mm/m"}},"limits":{"offset":"0.05 mm"}}],"work":"largest_move"}`

	soundTrain = `{"machines":[{"name":"motor","height":"400 mm","feet":[{"name":"outboard","x":"0 mm","vertical":{"at_least":"-0.3 mm","at_most":"2 mm"}},{"name":"inboard","x":"800 mm"}]},` +
		`{"name":"gearbox","feet":[` + threeFeet + `]},{"name":"pump","feet":[{"name":"A","x":"3.5 m"},{"name":"B","x":"4.5 m"}]}],` +
		`"joints":[{"at":"1100 mm","seen_from":"first","found":{` + caseAU + `},"target":{` + caseA + `},"limits":{"offset":"0.05 mm"}},` +
		`{"at":"3000 mm","found":{` + caseA + `},"coupling":{"span":"500 mm"},"limits":{"flex":"0.9 mm/m"}}],"reference":"pump","work":"largest_move"}`
	threeFeet = `{"name":"A","x":"1400 mm"},{"name":"B","x":"2000 mm"},{"name":"C","x":"2600 mm"}`
	bentFeet  = `{"name":"A","x":"1400 mm","vertical":{"at_least":"0 mm","at_most":"0 mm"}},{"name":"B","x":"2000 mm","vertical":{"at_least":"0.1 mm"}},{"name":"C","x":"2600 mm","vertical":{"at_most":"0 mm"}}`
)

var planAnswers = []example{
	// The motor has to come to w(x) = offset + slope (x - 1.1 m) as the pump has it now, at 0 and at 0.8 m;
	// its vertical slope changes by -0.7 mm/m, 0.4 m above its feet.
	{"case A, on target", "plan", strings.Replace(motorPump, "LOOK", ``, 1), `{"reach":"on_target","ratio":0,"moves":[
		{"machine":"motor","foot":"outboard","horizontal":"-0.32 mm","vertical":"0.57 mm"},{"machine":"motor","foot":"inboard","horizontal":"0 mm","vertical":"0.01 mm"}],
		"machines":[{"machine":"motor","shift":"0.28 mm"},{"machine":"pump"}],"in_the_way":[]}`},
	// Case A with the roles exchanged has the horizontal slope -0.4 mm/m and stands 0.2 mm high.
	{"case A, seen from the other end", "plan", strings.Replace(motorPump, "LOOK", `"seen_from":"first",`, 1), `{"reach":"on_target","ratio":0,"moves":[
		{"machine":"motor","foot":"outboard","horizontal":"0.56 mm","vertical":"0.97 mm"},{"machine":"motor","foot":"inboard","horizontal":"0.24 mm","vertical":"0.41 mm"}],
		"machines":[{"machine":"motor","shift":"0.28 mm"},{"machine":"pump"}],"in_the_way":[]}`},
	{"a target of either end", "plan", strings.Replace(motorPump, "LOOK", `"seen_from":"first","target":{`+caseA+`},`, 1), `{"reach":"on_target","ratio":0,"moves":[
		{"machine":"motor","foot":"outboard","horizontal":"0 mm","vertical":"0 mm"},{"machine":"motor","foot":"inboard","horizontal":"0 mm","vertical":"0 mm"}],
		"machines":[{"machine":"motor","shift":"0 mm"},{"machine":"pump"}],"in_the_way":[]}`},
	// The motor stays, and the pump comes by 0.2 mm to it.
	{"nobody is the reference", "plan", strings.Replace(twoOfAKind, "LIMIT", `{"at_least":"0 mm","at_most":"0 mm"}`, 2), `{"reach":"on_target","ratio":0,"moves":[
		{"machine":"M","foot":"A","horizontal":"0 mm","vertical":"0 mm"},{"machine":"M","foot":"B","horizontal":"0 mm","vertical":"0 mm"},
		{"machine":"P","foot":"A","horizontal":"0 mm","vertical":"-0.2 mm"},{"machine":"P","foot":"B","horizontal":"0 mm","vertical":"-0.2 mm"}],
		"machines":[{"machine":"M"},{"machine":"P"}],"in_the_way":[]}`},

	// The motor is less what was found, the pump more, each from its coupling to x = 0: -(0.1 - 0.2 * 1) and
	// -0.3 - 0.1 * 2, known to the root of 0.03^2 + (2 * 0.02)^2.
	{"from the middle", "centrelines", `{"machines":[{"name":"motor","feet":[{"name":"A","x":"0 m"},{"name":"B","x":"0.8 m"}]},{"name":"gearbox"},{"name":"pump","feet":[{"name":"A","x":"3 m"},{"name":"B","x":"4 m"}]}],
		"joints":[{"at":"1 m","found":` + at("0.1", "0", "0.2", "0") + `,"limits":{"offset":"1 mm"}},
		{"at":"2 m","found":{"horizontal":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0.01 mm","slope":"0 mm/m"}},"vertical":{"offset":"-0.3 mm","slope":"0.1 mm/m","u":{"offset":"0.03 mm","slope":"0.02 mm/m"}}},
		"target":{` + caseA + `},"limits":{"offset":"1 mm"}}],"reference":"gearbox"}`,
		`{"machines":[{"machine":"motor","at":{"horizontal":{"offset":"0.1 mm","slope":"-0.2 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}},"vertical":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}}}},
		{"machine":"gearbox","at":{"horizontal":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}},"vertical":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}}}},
		{"machine":"pump","at":{"horizontal":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0.01 mm","slope":"0 mm/m"}},"vertical":{"offset":"-0.5 mm","slope":"0.1 mm/m","u":{"offset":"0.05 mm","slope":"0.02 mm/m"}}}}]}`},
	{"from the first, seen from the other end", "centrelines", `{"machines":[{"name":"M","feet":[{"name":"A","x":"0 m"},{"name":"B","x":"1 m"}]},{"name":"P","feet":[{"name":"A","x":"3 m"},{"name":"B","x":"4 m"}]}],
		"joints":[{"at":"2 m","seen_from":"first","found":{` + caseA + `},"limits":{"offset":"1 mm"}}]}`,
		`{"machines":[{"machine":"M","at":` + nothing + `},{"machine":"P","at":{"horizontal":{"offset":"0.92 mm","slope":"-0.4 mm/m"},"vertical":{"offset":"1.6 mm","slope":"-0.7 mm/m"}}}]}`},
}

var planRefused = []sound{
	{"plan", soundTrain, trainChanges},
	{"plan", soundTrain, []change{
		{"no such work", `"largest_move"`, `"travel"`, "unknown /work"},
		{"work of no word", `"largest_move"`, `""`, "missing /work"},
	}},
	{"centrelines", strings.Replace(soundTrain, `,"work":"largest_move"`, ``, 1), trainChanges},
	{"centrelines", strings.Replace(soundTrain, `,"work":"largest_move"`, ``, 1), []change{
		{"work, which nobody asks for", `"reference":"pump"`, `"reference":"pump","work":"total_travel"`, "unknown /work"},
	}},
}

// trainChanges are refused by both operations.
var trainChanges = []change{
	{"one machine", soundTrain[:strings.Index(soundTrain, `,"joints"`)], `{"machines":[{"name":"pump"}]`, "missing /machines"},
	{"no machines", `"machines":`, `"machines":[],"others":`, "unknown /others"},
	{"one foot", `,{"name":"inboard","x":"800 mm"}`, ``, "missing /machines/0/feet"},
	{"no feet", `,"feet":[` + threeFeet + `]`, ``, "missing /machines/1/feet"},
	{"a machine without name", `"name":"gearbox",`, ``, "missing /machines/1/name"},
	{"a machine of no name", `"gearbox"`, `""`, "missing /machines/1/name"},
	{"a machine twice", `"gearbox"`, `"motor"`, "duplicate /machines/1/name"},
	{"a foot of no name", `"inboard"`, `""`, "missing /machines/0/feet/1/name"},
	{"a foot twice", `"inboard"`, `"outboard"`, "duplicate /machines/0/feet/1/name"},
	{"a foot nowhere", `,"x":"800 mm"`, ``, "missing /machines/0/feet/1/x"},
	{"two feet at one place", `"800 mm"`, `"0 mm"`, "duplicate /machines/0/feet/1/x"},
	{"a foot beyond its coupling", `"800 mm"`, `"1101 mm"`, "conflict /machines/0/feet/1/x"},
	{"below its feet", `"400 mm"`, `"-400 mm"`, "out_of_range /machines/0/height"},
	{"limits the wrong way round", `"-0.3 mm"`, `"2.1 mm"`, "conflict /machines/0/feet/0/vertical/at_least"},
	{"a limit without unit", `"-0.3 mm"`, `"-0.3"`, "malformed /machines/0/feet/0/vertical/at_least"},
	{"no end of a limit", `"at_most"`, `"up_to"`, "unknown /machines/0/feet/0/vertical/up_to"},
	{"a limit of nothing", `{"at_least":"-0.3 mm","at_most":"2 mm"}`, `null`, "malformed /machines/0/feet/0/vertical"},
	{"limits for a bent machine", threeFeet, bentFeet, "conflict /machines/1/feet"},
	{"a joint too few", `{"name":"pump",`, `{"name":"fan","feet":[{"name":"A","x":"5 m"},{"name":"B","x":"6 m"}]},{"name":"pump",`, "conflict /joints"},
	{"a spacer that reaches the coupling before", `"500 mm"`, `"3800 mm"`, "conflict /joints/1/at"},
	{"neither first nor last", `"seen_from":"first"`, `"seen_from":"left"`, "unknown /joints/0/seen_from"},
	{"seen from nowhere", `"seen_from":"first"`, `"seen_from":""`, "missing /joints/0/seen_from"},
	{"nothing found", `"coupling":{"span":"500 mm"}`, `"found":null,"coupling":{"span":"500 mm"}`, "duplicate /joints/1/found"},
	{"found too far to reckon with", `"found":{"horizontal":{"offset":"0.12 mm"`, `"found":{"horizontal":{"offset":"1e10 m"`, "out_of_range /joints/0/found/horizontal/offset"},
	{"a target too far to reckon with", `"target":{"horizontal":{"offset":"0.12 mm"`, `"target":{"horizontal":{"offset":"1e10 m"`, "out_of_range /joints/0/target/horizontal/offset"},
	{"one plane with uncertainties", `"slope":"-0.7 mm/m","u":{"offset":"0.01 mm","slope":"0.02 mm/m"}`, `"slope":"-0.7 mm/m"`, "missing /joints/0/found/vertical/u"},
	{"an uncertainty below zero", `"0.02 mm/m"`, `"-0.02 mm/m"`, "out_of_range /joints/0/found/horizontal/u/slope"},
	{"no correlation there can be", `[[1,0,0,0],[0,1,0,0]`, `[[1,2,0,0],[2,1,0,0]`, "conflict /joints/0/found/correlation"},
	{"no limits", `{"offset":"0.05 mm"}`, `{}`, "missing /joints/0/limits"},
	{"a limit of zero", `{"offset":"0.05 mm"}`, `{"offset":"0 mm"}`, "out_of_range /joints/0/limits/offset"},
	{"a limit of zero beside another", `{"flex":"0.9 mm/m"}`, `{"flex":"0 mm/m","offset":"1 mm"}`, "out_of_range /joints/1/limits/flex"},
	{"a limit below zero", `{"offset":"0.05 mm"}`, `{"offset":"-0.05 mm"}`, "out_of_range /joints/0/limits/offset"},
	{"a spacer of no length", `{"offset":"0.05 mm"}`, `{"flex":"1 mm/m"}`, "missing /joints/0/coupling/span"},
	{"no limit for a spacer", `{"flex":"0.9 mm/m"}`, `{"slope":"0.9 mm/m"}`, "missing /joints/1/limits/flex"},
	{"a span of zero", `"500 mm"`, `"0 mm"`, "out_of_range /joints/1/coupling/span"},
	{"a span of zero is not short", `{"span":"500 mm"},"limits":{`, `{"span":"0 mm"},"limits":{"offset":"1 mm",`, "out_of_range /joints/1/coupling/span"},
	{"a span below zero", `"500 mm"`, `"-500 mm"`, "out_of_range /joints/1/coupling/span"},
	{"nobody's reference", `"reference":"pump"`, `"reference":"fan"`, "unknown /reference"},
	{"a reference of no name", `"reference":"pump"`, `"reference":""`, "missing /reference"},
}

// Of the moves at 0, 1, 2 and 3 m those of the pump are 0.2 mm below a line that those
// of the motor are on: the line that passes 0, 0, 0.2 and 0.2 mm with the least largest
// distance does so by 0.05 mm on alternate sides (Chebyshev's theorem).
func TestWorkIsPassedOn(t *testing.T) {
	p := planned(t, strings.ReplaceAll(twoOfAKind, "LIMIT", `{}`))
	for i, want := range []units.Length{-0.05, 0.05, -0.05, 0.05} {
		if got := p.Moves[i].Vertical; !closeTo(got, want*units.Millimetre) {
			t.Errorf("move %d: %v", i, got)
		}
	}
}

// Moves m and n of the feet at 0 and 1 m take the motor up by 2n - m at the coupling.
// Fixed at 0 and stopped at 0.1 mm it comes up 0.2 of 1 mm, which leaves 0.8 mm or
// four times the limit. Left may be 0.2 mm: with n by 0.3 mm more, or m by 0.6 mm
// less; the feet of the reference, at 3 and 5 m, count as fixed: 1.5m - 0.5n = -0.6 mm.
func TestOutOfReach(t *testing.T) {
	p := planned(t, `{"machines":[{"name":"M","feet":[{"name":"A","x":"0 m","vertical":{"at_least":"0 mm","at_most":"0 mm"}},{"name":"B","x":"1 m","vertical":{"at_most":"0.1 mm"}}]},
		{"name":"P","feet":[{"name":"A","x":"3 m"},{"name":"B","x":"5 m"}]}],
		"joints":[{"at":"2 m","found":`+at("0", "1", "0", "0")+`,"limits":{"offset":"0.2 mm","per_plane":true}}],"reference":"P"}`)
	if p.Reach != "out_of_reach" || math.Abs(p.Ratio-4) > 1e-5 || len(p.Moves) != 2 || !closeTo(p.Moves[1].Vertical, 0.1*units.Millimetre) {
		t.Errorf("%+v", p)
	}
	want := map[string]units.Length{"M A low": 0.6, "M B high": 0.3, "P A low": 0.4, "P B high": 1.2}
	for _, b := range p.InTheWay {
		end := b.Machine + " " + b.Foot + " " + b.Side
		if b.Plane != "vertical" || !closeTo(b.Alone, want[end]*units.Millimetre) {
			t.Errorf("%+v, want %v mm", b, float64(want[end]))
		}
		delete(want, end)
	}
	if len(want) > 0 {
		t.Errorf("not in the way: %v", want)
	}
}

func planned(t *testing.T, input string) (p planResult) {
	t.Helper()
	a := ask(t, "plan", input)
	if err := json.Unmarshal(a.Result, &p); err != nil {
		t.Fatalf("%v: %+v", err, a.Faults)
	}
	return p
}

// closeTo tells whether a length is another to a tenth of a micrometre.
func closeTo(got, want units.Length) bool {
	return math.Abs(float64(got-want)) <= float64(100*units.Nanometre)
}

// Independent faults of a train come at once, under the names of the wire.
func TestAllFaultsOfATrain(t *testing.T) {
	a := ask(t, "plan", strings.NewReplacer(`"inboard"`, `"outboard"`, `"-0.3 mm"`, `"3 mm"`, `{"offset":"0.05 mm"}`, `{"offset":"0 mm"}`, `"reference":"pump"`, `"reference":"fan"`).Replace(soundTrain))
	var got []string
	for _, f := range a.Faults {
		got = append(got, f.Code+" "+f.Path)
	}
	const want = "out_of_range /joints/0/limits/offset, conflict /machines/0/feet/0/vertical/at_least, duplicate /machines/0/feet/1/name, unknown /reference"
	if all := strings.Join(got, ", "); all != want {
		t.Errorf("got  %s\nwant %s", all, want)
	}
}
