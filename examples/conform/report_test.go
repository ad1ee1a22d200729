package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// small is a suite of two areas of our own.
func small() *suite {
	return &suite{
		version: "9.9.9", hash: "0123456789abcdef",
		flags: map[string]flagText{"a": {"mistake a", "effect a"}, "b": {"mistake b", "effect b"}},
		lines: []badLine{{id: "l-1"}},
		vectors: []vector{
			{ID: "x-1", Flags: []string{"a"}}, {ID: "x-2", Flags: []string{"a", "b"}},
			{ID: "x-3", Flags: []string{"b"}}, {ID: "x-4", Flags: []string{"b"}},
			{ID: "f-1", Op: "fit"}, {ID: "f-2", Op: "fit", Error: &fault{"missing", "/sets"}},
		},
	}
}

// TestKnownFailures tests that a known failure is none of the failures, and that
// one which passes is.
func TestKnownFailures(t *testing.T) {
	s := small()
	known, err := parseKnown("known", "# we know\n\nx-1 counts the other way\nx-2  no reason to hide\n", s)
	if err != nil || known["x-2"] != "no reason to hide" {
		t.Fatal(known, err)
	}
	r := s.newReport()
	r.take([]outcome{{ID: "x-1", Kind: off}, {ID: "x-3"}, {ID: "x-4", Reason: "not here"}}, known, &r.Counts.Vectors)
	if !r.good() || len(r.Known) != 1 || r.Known[0].Reason != "counts the other way" {
		t.Errorf("%+v", r)
	}
	r.take([]outcome{{ID: "x-2"}}, known, &r.Counts.Vectors)
	if r.good() || len(r.Stale) != 1 {
		t.Errorf("an entry that passes: %+v", r)
	}
	r.take([]outcome{{ID: "x-1", Reason: "counts the other way"}}, known, &r.Counts.Vectors)
	if len(r.Stale) != 1 || len(r.Skips) != 2 {
		t.Errorf("a skip with the very words of the list: %+v", r)
	}
	if want := (tally{Passed: 1, Skipped: 2, Known: 1, Stale: 1}); r.Counts.Vectors != want {
		t.Errorf("%+v", r.Counts.Vectors)
	}
}

func TestKnownListIsRead(t *testing.T) {
	for _, row := range []struct{ text, says string }{
		{"x-1\n", "without a reason"},
		{"x-1 a\nx-1 b\n", "twice"},
		{"x-9 a\n", "no x-9"},
		{"x-1/turned a\n", "no x-1/turned"}, // not a fit
		{"f-1/turnt a\n", "no f-1/turnt"},
		{"f-1/ a\n", "no f-1/"},
		{"f-2/turned a\n", "no f-2/turned"}, // a refusal
		{"x-1 a\nf-1 a\nf-1/turned a\nf-1/predicted a\nf-1/moved a\nlines-stop a\nl-1 a\nl-2\n", "line 8"},
	} {
		if _, err := parseKnown("known", row.text, small()); err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("%q: %v", row.text, err)
		}
	}
}

// TestRank tests that a mistake whose vectors are just those that failed is put
// first, before one that has them all and more.
func TestRank(t *testing.T) {
	s := small()
	r := s.newReport()
	r.rank(s, []outcome{
		{ID: "x-1", Flags: []string{"a"}, Kind: off}, {ID: "x-2", Flags: []string{"a", "b"}, Kind: off},
		{ID: "x-3", Flags: []string{"b"}}, {ID: "x-4", Flags: []string{"b"}, Kind: crash},
		{ID: "x-5", Flags: []string{"a", "b"}, Kind: badAnswer}, {ID: "x-6", Flags: []string{"a", "b"}, Kind: unproven},
		{ID: "x-7", Flags: []string{"a", "b"}, Reason: "not here"},
	})
	if len(r.Mistakes) != 2 || r.Mistakes[0] != (suspicion{"a", "mistake a", "effect a", 2, 2, 1}) ||
		r.Mistakes[1] != (suspicion{"b", "mistake b", "effect b", 1, 2, 0.5}) {
		t.Errorf("%+v", r.Mistakes)
	}
}

// TestCommand tests the command as a person runs it: the report as text and as
// a file, and the status.
func TestCommand(t *testing.T) {
	file := filepath.Join(t.TempDir(), "report.json")
	var out, notes bytes.Buffer
	if status := run([]string{"-suite", folder, "-report", file}, nil, &out, &notes); status != passed {
		t.Fatal(status, out.String(), notes.String())
	}
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var r report
	if err := json.Unmarshal(text, &r); err != nil {
		t.Fatal(err)
	}
	s, _ := ours(t)
	if r.Suite.Version != s.version || r.Suite.Manifest != s.hash || r.Implementation.Name != "collinear" || r.Counts.Vectors.Passed != len(s.vectors) {
		t.Errorf("%+v", r)
	}
	if !strings.Contains(out.String(), "collinear") || !strings.Contains(out.String(), s.version) || bytes.Contains(text, []byte("null")) {
		t.Errorf("%s\n%s", out.String(), text)
	}
}

func TestCommandThatCannotRun(t *testing.T) {
	known := filepath.Join(t.TempDir(), "known")
	if err := os.WriteFile(known, []byte("no-such-vector because\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"-suite", "no-such-folder"},
		{"-suite", folder, "-known", "no-such-file"},
		{"-suite", folder, "-known", known},
		{"-no-such-flag"},
		{"-timeout", "soon"},
		{"-suite", folder, "-timeout", "0"},
		{"-suite", folder, "-area", "dail"},
		{"-suite", folder, "-vector", "dial-no-such"},
		{"-suite", folder, "-report", "no-such-folder/report.json"},
	} {
		var out, notes bytes.Buffer
		if status := run(args, nil, &out, &notes); status != broken || notes.Len() == 0 {
			t.Errorf("%v: status %d, %s", args, status, notes.String())
		}
	}
}

// TestServe tests the adapter as the command runs it.
func TestServe(t *testing.T) {
	var out, notes bytes.Buffer
	in := strings.NewReader(`{"seq":7,"op":"mandrel_sag","input":{"at12":"3 mil","at6":"-3 mil"}}` + "\n")
	status := run([]string{"-serve"}, in, &out, &notes)
	if want := `{"seq":7,"result":{"sag":"0.0762 mm"}}` + "\n"; status != passed || out.String() != want {
		t.Errorf("status %d, %s %s", status, out.String(), notes.String())
	}
}

// TestSpoiledSuiteIsRefused tests that a file which the manifest does not vouch
// for is not asked.
func TestSpoiledSuiteIsRefused(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(folder)); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "dial.json")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, slices.Concat(text, []byte(" ")), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := loadSuite(os.DirFS(dir)); err == nil || !strings.Contains(err.Error(), "dial.json") {
		t.Error(err)
	}
}
