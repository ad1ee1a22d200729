package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
)

// TestCommandOnAProgram tests the status and the words for programs that fail,
// that are not there, and that are.
func TestCommandOnAProgram(t *testing.T) {
	self := itself(t)
	rows := []struct {
		behaviour, command string
		status             int
		out, notes         string
	}{
		{"sound", self, passed, "2 passed     0 failed", ""},
		{"ends at once", self, failed, "crash", ""},
		{"result null", self, failed, "bad_answer", ""},
		{"sound", "./no-such-program", broken, "", "conform: cannot start ./no-such-program: no such file"},
		{"sound", "no-such-program", broken, "", "conform: cannot start no-such-program: "},
	}
	for _, row := range rows {
		t.Setenv("CONFORM_BEHAVIOUR", row.behaviour)
		var out, notes bytes.Buffer
		status := run([]string{"-suite", folder, "-vector", "dial-no-view", "--", row.command}, nil, &out, &notes)
		if status != row.status || !strings.Contains(out.String(), row.out) || !strings.Contains(notes.String(), row.notes) || strings.Contains(notes.String(), "exec:") {
			t.Errorf("%s %s: status %d, %s %s", row.behaviour, row.command, status, out.String(), notes.String())
		}
	}
}

// TestChoice tests that a part of the suite can be asked, and that the report
// says so.
func TestChoice(t *testing.T) {
	dial := 0
	_, areas := ours(t)
	for _, a := range areas {
		if a.Area == "dial" {
			dial = a.Count
		}
	}
	for _, row := range []struct {
		args []string
		only string
		many int
	}{
		{[]string{"-area", "dial"}, "dial", dial},
		{[]string{"-vector", "dial-rim-face-mcmillan"}, "dial-rim-face-mcmillan", 1},
		{[]string{"-vector", "dial-no-view"}, "dial-no-view", 2}, // with its twin
	} {
		file := filepath.Join(t.TempDir(), "report.json")
		var out, notes bytes.Buffer
		status := run(append([]string{"-suite", folder, "-report", file}, row.args...), nil, &out, &notes)
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err, notes.String())
		}
		var r report
		if err := json.Unmarshal(text, &r); err != nil {
			t.Fatal(err)
		}
		if status != passed || r.Suite.Only != row.only || r.Counts.Vectors.Passed != row.many || !strings.Contains(out.String(), "only "+row.only+" was asked") {
			t.Errorf("%v: status %d, %+v\n%s", row.args, status, r.Counts, out.String())
		}
	}
}

// TestReportReadsLikeThis tests a whole report, word for word.
func TestReportReadsLikeThis(t *testing.T) {
	s := small()
	s.only = "x"
	r := s.newReport()
	r.Implementation.Name, r.Implementation.Note = "gauge", "has a note"
	answers := []outcome{
		{ID: "x-1", Op: "fit", Flags: []string{"a"}, Kind: off, At: []difference{{At: "/offset", Got: "2 mm", Want: "1 mm", Within: "0.1 mm"}, {At: "/word", Got: "a", Want: "b"}}},
		{ID: "x-2", Flags: []string{"a", "b"}, Kind: crash, Detail: "exit status 3"},
		{ID: "x-3", Flags: []string{"b"}, Kind: unproven, Detail: "the twin x-1 is not answered right"},
		{ID: "x-4", Reason: "no gauges"}, {ID: "f-1", Reason: "no gauges"}, {ID: "f-2"},
	}
	r.take(answers, map[string]string{"f-2": "once"}, &r.Counts.Vectors)
	r.rank(s, answers)
	r.take([]outcome{{ID: "f-1/turned"}}, nil, &r.Counts.Invariants)
	var out bytes.Buffer
	r.print(&out)
	const want = `gauge against suite 9.9.9 (manifest 0123456789ab)
it has a note
only x was asked
vectors        0 passed     2 failed     2 skipped     1 unproven     0 known to fail     1 known to fail, but passed
invariants     1 passed     0 failed     0 skipped
bad lines      0 passed     0 failed     0 skipped

mistakes that explain the failures, the likeliest first:
  a (1 of the 1 vectors that betray it and were answered failed, match 1.00)
    mistake a;
    effect a

failed:
  x-1: wrong
    /offset: got 2 mm, want 1 mm within 0.1 mm
    /word: got a, want b
  x-2: crash exit status 3

unproven: refused as wanted, but the sound twin was not answered right:
  x-3: unproven the twin x-1 is not answered right

known to fail, but passed: take it off the list:
  f-2: once

skipped:
  2: no gauges
`
	if out.String() != want {
		t.Errorf("got\n%s", out.String())
	}
}

// TestManifestIsHeldToItsCounts tests a file whose hash is right and whose count
// is not.
func TestManifestIsHeldToItsCounts(t *testing.T) {
	area := []byte(`{"vectors":[{"id":"a-1"},{"id":"a-2"}]}`)
	for count, says := range map[string]string{"2": "", "1": "a.json: the count", "3": "a.json: the count"} {
		m := `{"version":"1.0.0","files":[{"name":"a.json","sha256":"` + sum(area) + `","count":` + count + `}]}`
		s, err := loadSuite(fstest.MapFS{"a.json": {Data: area}, "manifest.json": {Data: []byte(m)}})
		switch {
		case says == "" && (err != nil || len(s.vectors) != 2 || s.vectors[0].area != "a"):
			t.Errorf("%+v %v", s, err)
		case says != "" && (err == nil || !strings.HasPrefix(err.Error(), says)):
			t.Errorf("count %s: %v", count, err)
		}
	}
}

// TestInvariantMayBeKnown tests that the list of known failures reaches the
// invariants.
func TestInvariantMayBeKnown(t *testing.T) {
	s := small()
	known, err := parseKnown("known", "f-1/turned of old\n", s)
	if err != nil {
		t.Fatal(err)
	}
	r := s.newReport()
	r.take([]outcome{{ID: "f-1/turned", Kind: off}}, known, &r.Counts.Invariants)
	if !r.good() || r.Counts.Invariants.Known != 1 {
		t.Errorf("%+v", r)
	}
}

// TestPagesSayTheBounds tests that whoever writes an adapter is told how much it
// may answer.
func TestPagesSayTheBounds(t *testing.T) {
	for _, page := range []string{"PROTOCOL.md", "README.md"} {
		text, err := os.ReadFile(filepath.Join(folder, page))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), strconv.Itoa(mostLine)+" bytes") {
			t.Errorf("%s does not say that an answer has at most %d bytes", page, mostLine)
		}
	}
}
