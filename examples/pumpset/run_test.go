package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/pumpset"
)

func TestExitCodes(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "bad.json")
	two := bytes.Replace(pumpset.Sample(), []byte(`"7 1/2 in"`), []byte(`"190"`), 1)
	two = bytes.Replace(two, []byte(`"from_movable"`), []byte(`"from_above"`), 1)
	if err := os.WriteFile(bad, two, 0o644); err != nil {
		t.Fatal(err)
	}
	rows := []struct {
		name   string
		args   []string
		code   int
		stdout bool
		stderr []string // one line holds each, in this order
	}{
		{"built in", nil, solved, true, nil},
		{"a file", []string{"-job", jobs + "spacer.json", "-units", "inch"}, solved, true, nil},
		{"help", []string{"-h"}, solved, false, []string{"-job file"}},
		{"refused, a line for each fault", []string{"-job", bad}, refused, false, []string{
			bad + ": /view: want one of from_movable, from_stationary, got ",
			bad + ": /tape/centre: want ",
		}},
		{"refused for the record too", []string{"-json", "-job", bad}, refused, false, []string{"(unknown)", "(missing)"}},
		{"no such file", []string{"-job", "testdata/none.json"}, refused, false, []string{"testdata/none.json: "}},
		{"a folder", []string{"-job", "testdata"}, refused, false, []string{"testdata: "}},
		{"unknown flag", []string{"-colour"}, misused, false, []string{"-colour"}},
		{"unknown units", []string{"-units", "furlong"}, misused, false, []string{"metric or inch"}},
		{"no units", []string{"-units", ""}, misused, false, []string{"metric or inch"}},
		{"left over", []string{"job.json"}, misused, false, []string{`want flags only, got "job.json"`}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			var stdout, stderr bytes.Buffer
			if code := run(row.args, &stdout, &stderr); code != row.code {
				t.Errorf("ends with %d, want %d", code, row.code)
			}
			if (stdout.Len() > 0) != row.stdout {
				t.Errorf("prints %q", stdout.String())
			}
			rest := stderr.String()
			for _, want := range row.stderr {
				_, after, there := strings.Cut(rest, want)
				if !there {
					t.Fatalf("%q is not (any more) in what it says:\n%s", want, stderr.String())
				}
				rest = after
			}
			if row.stderr == nil && stderr.Len() > 0 {
				t.Errorf("says %q", stderr.String())
			}
		})
	}
}

// brokenPipe refuses to be written to.
type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) { return 0, errors.New("nobody reads this") }

func TestOutputThatCannotBeWritten(t *testing.T) {
	for _, args := range [][]string{nil, {"-json"}} {
		var stderr bytes.Buffer
		if code := run(args, brokenPipe{}, &stderr); code == solved || stderr.Len() == 0 {
			t.Errorf("%q: ends with %d and says %q", args, code, stderr.String())
		}
	}
}
