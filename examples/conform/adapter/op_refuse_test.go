package adapter

import (
	"slices"
	"strings"
	"testing"
)

// sound is a sound input, and changes in one place that are refused.
type sound struct {
	op, input string
	changes   []change
}

// change puts with in for the first what; the code and the path of the fault are
// wanted then, and no other fault.
type change struct{ name, what, with, want string }

var refused = slices.Concat(convertRefused, arcRefused, fitRefused, dialRefused, positionRefused, limitRefused, growthRefused, footRefused, planRefused, flangeRefused)

const (
	caseAU    = `"horizontal":{"offset":"0.12 mm","slope":"0.4 mm/m","u":{"offset":"0.01 mm","slope":"0.02 mm/m"}},"vertical":{"offset":"-0.2 mm","slope":"-0.7 mm/m","u":{"offset":"0.01 mm","slope":"0.02 mm/m"}},"correlation":[[1,0,0,0],[0,1,0,0],[0,0,1,0],[0,0,0,1]]`
	soundSets = `{"probe":{"kind":"rim","carrier":"stationary","station":"40 mm"},"sag":"0.01 mm","readings":` + rimA + `},{"probe":{"kind":"near_face","carrier":"stationary","radius":"75 mm"},"readings":` + faceA + `}`
	soundFit  = `{"view":"from_movable","sets":[` + soundSets + `],"feet":` + feetA + `}`

	soundGrowth = `{"supports":[{"x":"0 m","pieces":[{"height":"1 m","material":{"expansion":"10 um/m/K"},"rise":"5 K"}]},` +
		`{"x":"1 m","three":[{"height":"1 m","material":{"expansion":"10 um/m/K"},"cold":"20 degC","profile":[{"up":"0 m","running":"25 degC"}]}],` +
		`"nine":[{"height":"1 m","material":{"expansion":"10 um/m/K"},"rise":"5 K"}],"track":"1 m"},` +
		`{"x":"2 m","measured":{"by":{"horizontal":"0 mm","vertical":"0.06 mm"}}}]}`
)

func TestRefusals(t *testing.T) {
	for _, row := range refused {
		if a := ask(t, row.op, row.input); a.Error != nil {
			t.Errorf("%s: the sound one is refused: %+v", row.op, a.Faults)
		}
		for _, c := range row.changes {
			t.Run(row.op+", "+c.name, func(t *testing.T) {
				if !strings.Contains(row.input, c.what) {
					t.Fatal("nothing changes")
				}
				a := ask(t, row.op, strings.Replace(row.input, c.what, c.with, 1))
				if a.Error == nil || a.Error.Code+" "+a.Error.Path != c.want || len(a.Faults) != 1 {
					t.Errorf("got %+v %s\nwant %s alone", a.Faults, a.Result, c.want)
				}
			})
		}
	}
}

// What is no input at all is a fault of the input as a whole.
func TestNoInput(t *testing.T) {
	for _, row := range []struct{ name, line, want string }{
		{"none", `{"seq":1,"op":"fit"}`, "missing "},
		{"null", `{"seq":1,"op":"fit","input":null}`, "malformed "},
		{"a list", `{"seq":1,"op":"fit","input":[]}`, "malformed "},
		{"text", `{"seq":1,"op":"fit","input":"x"}`, "malformed "},
	} {
		t.Run(row.name, func(t *testing.T) {
			a := readReply(t, served(t, row.line)[0])
			if a.Error == nil || a.Error.Code+" "+a.Error.Path != row.want {
				t.Errorf("got %+v", a.Error)
			}
		})
	}
}

// Independent faults come at once, those of the document before all others.
func TestAllFaults(t *testing.T) {
	list := func(a asked) string {
		var all []string
		for _, f := range a.Faults {
			all = append(all, f.Code+" "+f.Path)
		}
		return strings.Join(all, ", ")
	}
	document := strings.NewReplacer(`"75 mm"`, `"75"`, `"inboard"`, `3`, `"from_movable"`, `"x"`).Replace(soundFit)
	if got, want := list(ask(t, "fit", document)), "unknown /view, malformed /sets/1/probe/radius, malformed /feet/0/name"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	values := strings.NewReplacer(`"75 mm"`, `"0 mm"`, `"inboard"`, `"outboard"`, `,"station":"40 mm"`, ``, `"0.01 mm"`, `"-0.01 mm"`).Replace(soundFit)
	if got, want := list(ask(t, "fit", values)), "missing /sets/0/probe/station, out_of_range /sets/1/probe/radius, out_of_range /sets/0/sag, duplicate /feet/1/name"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// That readings see too little says nothing where it is not known what they see.
func TestUnseenIsExplained(t *testing.T) {
	const alone = `{"view":"from_movable","sets":[{"probe":{"kind":"rim","carrier":"stationary"},"readings":` + rimA + `}]}`
	if a := ask(t, "fit", alone); len(a.Faults) != 1 || a.Faults[0] != (refusal{"missing", "/sets/0/probe/station"}) {
		t.Errorf("got %+v", a.Faults)
	}
}

// Numbers that no float64 holds are refused, whatever operation they come out of.
func TestOverflow(t *testing.T) {
	a := ask(t, "quarters", `{"at12":"1e302 mm","at3":"-1e302 mm","at6":"1e302 mm","at9":"-1e302 mm"}`)
	if a.Error == nil || *a.Error != (refusal{"out_of_range", ""}) {
		t.Errorf("got %+v %s", a.Error, a.Result)
	}
}
