package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/collinear/examples/conform/adapter"
)

// TestMatchIsOneForJustThoseVectors tests the whole run on a program with one
// mistake: invariants that it breaks as well do not blur what the vectors say.
func TestMatchIsOneForJustThoseVectors(t *testing.T) {
	s, _ := ours(t)
	if err := s.choose("fit", ""); err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(slips, func(w slip) bool { return w.flag == "correction_for_position" })
	r := s.hold(newProgram(inside(wrongly(slips[i])), time.Minute), nil)
	if len(r.Mistakes) == 0 || r.Mistakes[0].Flag != slips[i].flag || r.Mistakes[0].Match != 1 || r.Counts.Invariants.Failed == 0 {
		t.Errorf("%+v, %+v", r.Mistakes, r.Counts)
	}
}

// TestReportStaysSmall tests that a program which talks much does not fill the
// memory: of what it says only the beginning is kept.
func TestReportStaysSmall(t *testing.T) {
	long, many := strings.Repeat("x", mostLine/3), strings.Repeat("{},", mostLine/8)
	for name, member := range map[string]string{
		"code":    `"error":{"code":"` + long + `","path":""}`,
		"path":    `"error":{"code":"missing","path":"` + long + `"}`,
		"no code": `"error":{"kind":"` + long + `"}`,
		"reason":  `"skipped":"` + long + `"`,
		"text":    `"result":{"name":"` + long + `","offset":"` + long + `"}`,
		"number":  `"result":{"name":"a","offset":1` + strings.Repeat("0", mostLine/3) + `}`,
		"list":    `"result":{"offset":[` + many + `{}],"advice":[` + many + `{}]}`,
		"kinds":   `"result":{"kinds":["` + long + `"],"advice":[]}`,
		"stacks":  `"result":{"stacks":[` + many + `{}]}`,
		"count":   `"result":{"stacks":[{"foot":"A","pieces":[{"count":1` + strings.Repeat("0", mostLine/3) + `}]}]}`,
		"foot":    `"result":{"stacks":[{"foot":"` + long + `"}],"advice":[{"shims":[{"foot":"` + long + `"}]}]}`,
	} {
		order, feet := smallOrder(), fourFeet()
		order.ID, feet.ID = "order", "feet"
		s := &suite{vectors: []vector{order, feet, {ID: "other", Result: json.RawMessage(`{"offset":"1 mm"}`)}}}
		r := s.hold(newProgram(inside(always(member)), time.Minute), nil)
		text, err := json.Marshal(r)
		if err != nil || len(text) > 20_000 || bytes.Contains(text, []byte(tooMuch)) {
			t.Errorf("%s: %d bytes, %v: %.300s", name, len(text), err, text)
		}
	}
}

// TestDifferencesAreBounded tests that of thousands the first are kept.
func TestDifferencesAreBounded(t *testing.T) {
	var o outcome
	o.differ(make([]difference, 3*mostDifferences))
	if len(o.At) != mostDifferences || o.Kind != off || !strings.Contains(o.Detail, fmt.Sprint(2*mostDifferences)) {
		t.Errorf("%d, %+v", len(o.At), o)
	}
}

// TestRefusalIsHeldToCodeAndPath tests each against what is wanted.
func TestRefusalIsHeldToCodeAndPath(t *testing.T) {
	want := fault{"missing", "/feet"}
	for _, row := range []struct {
		a    answer
		kind string
	}{
		{answer{Error: &fault{"missing", "/feet"}}, ""},
		{answer{Error: &fault{"missing", "/sets"}}, otherwise},
		{answer{Error: &fault{"unknown", "/feet"}}, otherwise},
		{answer{Result: json.RawMessage(`{}`)}, answered},
	} {
		if kind, detail := holdRefusal(row.a, want); kind != row.kind {
			t.Errorf("%+v: %s, %s", row.a, kind, detail)
		}
	}
}

// until answers as the adapter does, up to a line with a word in it: then it says
// its last words, and ends.
func until(word, last string, end error) func(io.Reader, io.Writer) error {
	return func(in io.Reader, out io.Writer) error {
		for lines := bufio.NewScanner(in); lines.Scan(); {
			if strings.Contains(lines.Text(), word) {
				io.WriteString(out, last)
				return end
			}
			if err := adapter.Serve(strings.NewReader(lines.Text()+"\n"), out); err != nil {
				return err
			}
		}
		return nil
	}
}

// TestBadLineIsSurvived tests that a program has to go on after a bad line, and
// not only to refuse it.
func TestBadLineIsSurvived(t *testing.T) {
	l := badLine{id: "l-1", text: "hello", seq: "null", want: fault{"malformed", ""}}
	refusal := `{"seq":null,"error":{"code":"malformed","path":""}}` + "\n"
	for _, row := range []struct {
		name, kind string
		program    func(io.Reader, io.Writer) error
	}{
		{"the adapter", "", adapter.Serve},
		{"one that dies of it", crash, until("hello", "", nil)},
		{"one that refuses and dies", crash, until("hello", refusal, nil)},
		{"one that refuses something else", otherwise, sayTo("hello", strings.Replace(refusal, `""`, `"/seq"`, 1))},
		{"one that believes it", wrongSeq, sayTo("hello", `{"seq":1,"result":{}}`+"\n")},
	} {
		p := newProgram(inside(row.program), time.Minute)
		if o := l.hold(p); o.Kind != row.kind {
			t.Errorf("%s: %+v, want %q", row.name, o, row.kind)
		}
		p.stop()
	}
}

// sayTo answers as the adapter does, but to a line with a word in it says something
// else.
func sayTo(word, instead string) func(io.Reader, io.Writer) error {
	return func(in io.Reader, out io.Writer) error {
		for lines := bufio.NewScanner(in); lines.Scan(); {
			if strings.Contains(lines.Text(), word) {
				io.WriteString(out, instead)
			} else if err := adapter.Serve(strings.NewReader(lines.Text()+"\n"), out); err != nil {
				return err
			}
		}
		return nil
	}
}

// TestStopIsFollowed tests what a program says to stop, and how it ends.
func TestStopIsFollowed(t *testing.T) {
	for _, row := range []struct {
		name, kind, last string
		end              error
	}{
		{"well", "", `{"seq":1,"result":{}}`, nil},
		{"with an error", crash, `{"seq":1,"result":{}}`, io.ErrUnexpectedEOF},
		{"without a word", crash, "", nil},
		{"with null", badAnswer, `{"seq":1,"result":null}`, nil},
		{"with a list", badAnswer, `{"seq":1,"result":[]}`, nil},
		{"with a skip", badAnswer, `{"seq":1,"skipped":"I go on"}`, nil},
		{"with a refusal", badAnswer, `{"seq":1,"error":{"code":"unknown","path":""}}`, nil},
	} {
		last := row.last
		if last != "" {
			last += "\n"
		}
		p := newProgram(inside(until(`"stop"`, last, row.end)), time.Minute)
		if o := leave(p); o.Kind != row.kind || o.ID != leaveID {
			t.Errorf("%s: %+v, want %q", row.name, o, row.kind)
		}
	}
}

// TestInvariantIsHeldToItsBound tests an answer that is off by less and by more
// than the bound, which is a few tolerances.
func TestInvariantIsHeldToItsBound(t *testing.T) {
	v := vector{Tolerance: map[string]tolerance{
		"/horizontal/offset": {"0.001 mm"}, "/horizontal/slope": {"0.001 mm/m"},
		"/vertical/offset": {"0.001 mm"}, "/vertical/slope": {"0.001 mm/m"},
	}}
	at := func(x string) json.RawMessage {
		plane := `{"offset":"` + x + ` mm","slope":"0 mm/m"}`
		return json.RawMessage(`{"horizontal":` + plane + `,"vertical":` + plane + `}`)
	}
	for _, row := range []struct{ x, kind string }{{"0.0035", ""}, {"-0.0035", ""}, {"0.005", off}, {"-0.005", off}, {"thin", badAnswer}, {"NaN", badAnswer}} {
		var o outcome
		if o.near(at(row.x), coarse{}, v.bound()); o.Kind != row.kind {
			t.Errorf("%s: %+v", row.x, o)
		}
	}
	var o outcome
	if o.near(at(strings.Repeat("x", mostLine/5)), coarse{}, v.bound()); len(o.Detail) > 1000 {
		t.Errorf("%d bytes are kept", len(o.Detail))
	}
}

// TestInvariantsThatAreNotAsked tests that they are skipped, and say why: one for
// each that would have been asked.
func TestInvariantsThatAreNotAsked(t *testing.T) {
	s, _ := ours(t)
	if err := s.choose("", "fit-rim-face"); err != nil {
		t.Fatal(err)
	}
	all := s.invariants(newProgram(inside(adapter.Serve), time.Minute))
	for member, reason := range map[string]string{
		`"skipped":"on leave"`:                 "on leave",
		`"error":{"code":"missing","path":""}`: "no answer to the fit that can be used",
		`"result":[]`:                          "no answer to the fit that can be used: bad_answer",
	} {
		none := s.invariants(newProgram(inside(always(member)), time.Minute))
		if len(none) != len(all) || len(all) < 5 {
			t.Errorf("%s: %d of %d", member, len(none), len(all))
		}
		for _, o := range none {
			if !o.skipped() || o.Reason != reason {
				t.Errorf("%s: %+v", member, o)
			}
		}
	}
}
