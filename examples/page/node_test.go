//go:build !js

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/pumpset"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// given is what the program for the browser gives.
type given struct {
	Sheet, Record string
	Faults        []*units.Fault
}

// ask puts calls to the program under node, and calls of its own that no page makes.
func ask(t *testing.T, calls [][]string) (answers, refusals []given) {
	t.Helper()
	folder, _ := built(t)
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("there is no node to run the program with")
	}
	input, err := json.Marshal(calls)
	if err != nil {
		t.Fatal(err)
	}
	child := exec.Command(node, "testdata/ask.mjs", folder)
	child.Stdin = bytes.NewReader(input)
	child.Stderr = os.Stderr
	output, err := child.Output()
	if err != nil {
		t.Fatal(err)
	}
	var out struct{ Answers, Refusals []given }
	if err := json.Unmarshal(output, &out); err != nil {
		t.Fatal(err)
	}
	return out.Answers, out.Refusals
}

// natively answers a call without the browser's program.
func natively(t *testing.T, call []string) given {
	t.Helper()
	j, err := pumpset.Read([]byte(call[0]))
	var r pumpset.Record
	if err == nil {
		r, err = pumpset.Solve(j)
	}
	if err != nil {
		return given{Faults: units.Faults(err)}
	}
	var sheet, record strings.Builder
	if err := pumpset.WriteSheet(&sheet, r, pumpset.System(call[1])); err != nil {
		t.Fatal(err)
	}
	if err := pumpset.WriteRecord(&record, r); err != nil {
		t.Fatal(err)
	}
	return given{sheet.String(), record.String(), []*units.Fault{}}
}

// calls are jobs that are sound and jobs that are not.
func calls(t *testing.T) [][]string {
	t.Helper()
	sample := string(pumpset.Sample())
	all := [][]string{{sample, ""}, {sample, "metric"}, {sample, "inch"}}
	others, err := filepath.Glob("../internal/pumpset/testdata/*.json")
	if err != nil || len(others) < 5 {
		t.Fatalf("only the jobs %q: %v", others, err)
	}
	for _, name := range others {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, []string{string(data), ""})
	}
	for _, bad := range []string{
		"", "{}", "[]", "null", sample[:1000], sample + "x", strings.Repeat(" ", pumpset.MaxSize+1),
		strings.Repeat("[", 100000), `{"title": "` + "\x00" + `"}`,
		strings.Replace(sample, `"+0.55 mm"`, `"abc"`, 1),
		strings.Replace(sample, `"7 1/2 in"`, `"7 1/0 in"`, 1),
		strings.Replace(sample, `"+0.55 mm"`, `"1e300 km"`, 1),
		strings.Replace(sample, `"12:00"`, `"10:30"`, 1),
		strings.Replace(sample, `"flex"`, `"slope"`, 1),
		`{"found": [` + strings.Repeat(`1,`, 300) + `1], "x": {"y/z": 1}}`,
	} {
		all = append(all, []string{bad, ""})
	}
	return all
}

// The program for the browser gives what the library gives elsewhere: the same
// faults, the same sheet, and numbers that are the same to 12 digits.
func TestAnswersAreThoseOfTheLibrary(t *testing.T) {
	all := calls(t)
	answers, _ := ask(t, all)
	if len(answers) != len(all) {
		t.Fatalf("%d answers to %d calls", len(answers), len(all))
	}
	solved := 0
	for i, call := range all {
		name, want := call[0][:min(len(call[0]), 60)], natively(t, call)
		if diff := cmp.Diff(want.Faults, answers[i].Faults); diff != "" {
			t.Errorf("%q: %s", name, diff)
		}
		if diff := cmp.Diff(want.Sheet, answers[i].Sheet); diff != "" {
			t.Errorf("%q: %s", name, diff)
		}
		if want.Record != "" {
			solved++
			sameRecord(t, answers[i].Record, want.Record)
		} else if answers[i].Record != "" || len(want.Faults) == 0 {
			t.Errorf("%q: neither solved nor refused", name)
		}
	}
	if solved < 8 || solved > len(all)-10 {
		t.Errorf("%d of %d were solved", solved, len(all))
	}
}

func TestCallsThatNoPageMakes(t *testing.T) {
	_, refusals := ask(t, [][]string{{"", "furlong"}})
	if len(refusals) < 20 {
		t.Fatalf("only %d calls", len(refusals))
	}
	for i, r := range refusals {
		if len(r.Faults) != 1 || r.Faults[0].Code != units.Malformed || r.Sheet+r.Record != "" {
			t.Errorf("call %d: %+v", i, r)
		}
	}
}

func TestUnitsThatAreNone(t *testing.T) {
	answers, _ := ask(t, [][]string{{string(pumpset.Sample()), "furlong"}})
	if a := answers[0]; len(a.Faults) != 1 || a.Faults[0].Code != units.Unknown || a.Sheet != "" {
		t.Errorf("got %+v", a)
	}
}

// sameRecord compares two records to 12 digits.
func sameRecord(t *testing.T, got, want string) {
	t.Helper()
	var g, w any
	if err := json.Unmarshal([]byte(got), &g); err != nil {
		t.Errorf("no record: %v in %q", err, got)
		return
	}
	if err := json.Unmarshal([]byte(want), &w); err != nil {
		t.Fatal(err)
	}
	same := cmp.Options{
		cmp.FilterValues(func(a, b string) bool { return a != b }, cmp.Comparer(sameQuantity)),
		cmp.Comparer(sameNumber),
	}
	if diff := cmp.Diff(w, g, same); diff != "" {
		t.Error(diff)
	}
}

func sameNumber(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-12*max(math.Abs(a), math.Abs(b))
}

// sameQuantity compares texts that begin with a number and go on with its unit.
func sameQuantity(a, b string) bool {
	x, ofX, _ := strings.Cut(a, " ")
	y, ofY, _ := strings.Cut(b, " ")
	p, errP := strconv.ParseFloat(x, 64)
	q, errQ := strconv.ParseFloat(y, 64)
	return errP == nil && errQ == nil && ofX == ofY && sameNumber(p, q)
}

func TestSameQuantity(t *testing.T) {
	for _, row := range []struct {
		a, b string
		same bool
	}{
		{"1.0000000000001 mm", "1 mm", true}, {"1.00000000001 mm", "1 mm", false},
		{"1 mm", "1 mil", false}, {"a mm", "b mm", false}, {"-1 mm", "1 mm", false},
	} {
		if sameQuantity(row.a, row.b) != row.same {
			t.Error(fmt.Sprint(row))
		}
	}
}
