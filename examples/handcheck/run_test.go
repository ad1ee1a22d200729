package main

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The golden files hold whole runs of the program. They say that nothing has
// changed; whether it is right the other tests tell.
func TestGolden(t *testing.T) {
	for _, row := range []struct {
		name string
		code int
		args []string
	}{
		{"metric", right, nil},
		{"inch", right, []string{"-units", "inch"}},
		{"metric-markdown", right, []string{"-markdown"}},
		{"inch-markdown", right, []string{"-markdown", "-units", "inch"}},
		{"marking", wrong, []string{"-check", "example"}},
		{"graph", right, []string{"-graph"}},
		{"graph-inch", right, []string{"-graph", "-units", "inch"}},
		{"blank", right, []string{"-json"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := play("", row.args...)
			if got.code != row.code || got.stderr != "" {
				t.Fatalf("ends with %d and says %q", got.code, got.stderr)
			}
			if again := play("", row.args...); again != got {
				t.Error("two runs differ")
			}
			file := filepath.Join("testdata", row.name+".golden")
			if *update {
				if err := os.WriteFile(file, []byte(got.stdout), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(strings.ReplaceAll(string(want), "\r\n", "\n"), got.stdout); diff != "" {
				t.Errorf("differs from %s (-want +got):\n%s", file, diff)
			}
		})
	}
}

func TestExitCodes(t *testing.T) {
	dir := t.TempDir()
	file := func(name string, doc []byte) string {
		name = filepath.Join(dir, name)
		if err := os.WriteFile(name, doc, 0o644); err != nil {
			t.Fatal(err)
		}
		return name
	}
	good := file("good.json", builtIn)
	sound := file("sound.json", answered("vertical.slope", "-0.5 mm/m")(t, builtIn))
	bad := file("bad.json", all(with("/units", `"yards"`), with("/answers/vertical.slope", `"1"`), with("/colour", `1`))(t, builtIn))
	for _, row := range []struct {
		name   string
		args   []string
		stdin  string
		code   int
		stdout string
		stderr string
	}{
		{"built in", nil, "", right, "Reverse dials", ""},
		{"a file", []string{"-job", good, "-units", "inch"}, "", right, "mil high", ""},
		{"the standard input", []string{"-job", "-"}, string(builtIn), right, "Reverse dials", ""},
		{"the file's own units", []string{"-job", "-"}, strings.Replace(string(builtIn), `"metric"`, `"inch"`, 1), right, "mil high", ""},
		{"help", []string{"-h"}, "", right, "", "-job file"},
		{"the sheet", []string{"-sheet"}, "", right, string(builtIn), ""},
		{"the example marked", []string{"-check", "example"}, "", wrong, "DOES NOT FOLLOW", ""},
		{"a file marked", []string{"-check", good}, "", wrong, "DOES NOT FOLLOW", ""},
		{"a right file marked", []string{"-check", sound}, "", right, "Every line on the sheet follows.", ""},
		{"the standard input marked", []string{"-check", "-"}, string(builtIn), wrong, "DOES NOT FOLLOW", ""},
		{"an exercise", []string{"-exercise", "7"}, "", right, "\n", ""},
		{"refused", []string{"-check", bad}, "", refused, "", bad + ": /colour: want "},
		{"refused, the name of the standard input", []string{"-check", "-"}, "{}", refused, "", "standard input: /problem: want "},
		{"too long by all of it", []string{"-check", "-"}, strings.Repeat(" ", bounds.Size) + string(builtIn), refused, "", "standard input: want a sheet of at most 1048576 bytes"},
		{"no answers", []string{"-check", "-"}, string(without("/answers")(t, builtIn)), refused, "", "standard input: /answers: want "},
		{"empty answers", []string{"-check", "-"}, string(answered("vertical.slope", " ")(t, builtIn)), refused, "", "standard input: /answers: want "},
		{"no such file", []string{"-job", filepath.Join(dir, "none.json")}, "", refused, "", "none.json: "},
		{"a folder", []string{"-check", dir}, "", refused, "", dir},
		{"no graph", []string{"-graph", "-job", "-"}, `{"problem": {"sag": {"at12": "0 mm", "at6": "-0.1 mm"}}}`, refused, "", "standard input: /problem/job: want a job"},

		{"unknown flag", []string{"-colour"}, "", misused, "", "-colour"},
		{"unknown units", []string{"-units", "furlong"}, "", misused, "", "inch"},
		{"unknown difficulty", []string{"-exercise", "1", "-difficulty", "steep"}, "", misused, "", "one_step"},
		{"a seed that is none", []string{"-exercise", "-1"}, "", misused, "", "a whole number"},
		{"left over", []string{"job.json"}, "", misused, "", `want flags only, got "job.json"`},
		{"two files", []string{"-job", good, "-check", good}, "", misused, "", "-check does not go with -job"},
		{"a marking as Markdown", []string{"-check", good, "-markdown"}, "", misused, "", "-check does not go with -markdown"},
		{"a sheet in other units", []string{"-sheet", "-units", "inch"}, "", misused, "", "-sheet does not go with -units"},
		{"a graph as JSON", []string{"-graph", "-json"}, "", misused, "", "-graph does not go with -json"},
		{"difficulty of no exercise", []string{"-difficulty", "one_step"}, "", misused, "", "-difficulty goes with -exercise"},
		{"working of no exercise", []string{"-worked"}, "", misused, "", "-worked goes with -exercise"},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := play(row.stdin, row.args...)
			if got.code != row.code {
				t.Errorf("ends with %d, want %d", got.code, row.code)
			}
			if !strings.Contains(got.stdout, row.stdout) || (row.stdout == "") != (got.stdout == "") {
				t.Errorf("prints %q, want %q in it", got.stdout, row.stdout)
			}
			if !strings.Contains(got.stderr, row.stderr) || (row.stderr == "") != (got.stderr == "") {
				t.Errorf("says %q, want %q in it", got.stderr, row.stderr)
			}
		})
	}
}

// Each fault of a file has a line of its own.
func TestFaultsOneALine(t *testing.T) {
	doc := all(with("/units", `"yards"`), with("/answers/vertical.slope", `1`), with("/colour", `1`))(t, builtIn)
	got := check(doc)
	lines := strings.Split(strings.TrimSpace(got.stderr), "\n")
	if got.code != refused || len(lines) != 3 {
		t.Fatalf("ends with %d and says %q", got.code, got.stderr)
	}
	for _, line := range lines {
		if !strings.HasPrefix(line, "standard input: /") {
			t.Errorf("%q", line)
		}
	}
}

// brokenPipe refuses to be written to.
type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) { return 0, errors.New("nobody reads this") }

func TestOutputThatCannotBeWritten(t *testing.T) {
	for _, args := range [][]string{nil, {"-json"}, {"-check", "example"}, {"-graph"}, {"-exercise", "1"}} {
		var stderr strings.Builder
		if code := run(args, strings.NewReader(""), brokenPipe{}, &stderr); code != refused || stderr.Len() == 0 {
			t.Errorf("%q: ends with %d and says %q", args, code, stderr.String())
		}
	}
}

// brokenFile cannot be read.
type brokenFile struct{}

func (brokenFile) Read([]byte) (int, error) { return 0, errors.New("pulled out") }

func TestInputThatCannotBeRead(t *testing.T) {
	var stdout, stderr strings.Builder
	if code := run([]string{"-check", "-"}, brokenFile{}, &stdout, &stderr); code != refused || !strings.Contains(stderr.String(), "pulled out") {
		t.Errorf("ends with %d and says %q", code, stderr.String())
	}
}

// amountOfMove is a move whose sign stands in front of its number.
var amountOfMove = regexp.MustCompile(`(raise|lower|push|lies) [+−-]`)

// What is printed keeps to the page, ends with the caution, has no mark and no
// traffic light, and tells no move by a sign.
func TestHouseStyleOfThePrint(t *testing.T) {
	for _, args := range [][]string{nil, {"-units", "inch"}, {"-markdown"}, {"-check", "example"}, {"-graph"}, {"-graph", "-units", "inch"},
		{"-exercise", "3"}, {"-exercise", "3", "-worked"}, {"-exercise", "3", "-difficulty", "whole_job", "-worked", "-units", "inch"}} {
		got := play("", args...)
		if !strings.Contains(flat(got.stdout), "permission to start or to run a machine. Isolate and lock out the driver before") {
			t.Errorf("%q: no caution", args)
		}
		for _, word := range []string{"score", "grade", "percent", "%", "green", "amber", "yellow", " red", "NaN", "Inf", "_exchanged", "_halved"} {
			if strings.Contains(got.stdout, word) {
				t.Errorf("%q: says %q", args, word)
			}
		}
		if found := amountOfMove.FindString(got.stdout); found != "" {
			t.Errorf("%q: says %q", args, found)
		}
		for line := range strings.Lines(got.stdout) {
			if strings.HasSuffix(line, " \n") {
				t.Errorf("%q: %q", args, line)
			}
		}
	}
}

func TestPage(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"a line that is just full", strings.Repeat("x", 60) + " " + strings.Repeat("y", 15), strings.Repeat("x", 60) + " " + strings.Repeat("y", 15) + "\n"},
		{"one too long by a column", strings.Repeat("x", 60) + " " + strings.Repeat("y", 16), strings.Repeat("x", 60) + "\n    " + strings.Repeat("y", 16) + "\n"},
		{"a number and its unit", strings.Repeat("x", 71) + " 10 mm", strings.Repeat("x", 71) + "\n    10 mm\n"},
		{"a word longer than a line", strings.Repeat("x", 80), strings.Repeat("x", 80) + "\n"},
	} {
		var p page
		p.item("  - ", row.text)
		if got := p.String(); got != "  - "+row.want {
			t.Errorf("%s: %q", row.name, got)
		}
	}
	var p page
	p.heading(strings.Repeat("x", 90) + " é")
	if lines := strings.Split(p.String(), "\n"); utf8.RuneCountInString(lines[len(lines)-2]) != columns {
		t.Errorf("%q", p.String())
	}
}

// What a file holds cannot steer the terminal, nor make lines or marks of its own.
func TestTextOfAFileIsPlain(t *testing.T) {
	doc := all(with("/title", `"T\u001b[31m*b*"`), with("/notes", `["one\u0007two\u202e\nthree"]`), with("/problem/job/feet/0/name", `"in\u001b[1m"`),
		answered("vertical.slope", "1 mm/m"))(t, builtIn)
	for _, args := range [][]string{{"-job", "-"}, {"-check", "-"}, {"-graph", "-job", "-"}, {"-markdown", "-job", "-"}} {
		got := play(string(doc), args...)
		if strings.ContainsAny(got.stdout, "\x1b\x07\u202e") || !strings.Contains(got.stdout, `\x1b[31m`) && !strings.Contains(got.stdout, `\x1b\[31m`) {
			t.Errorf("%q: %.300q", args, got.stdout)
		}
	}
	if got := play(string(doc), "-markdown", "-job", "-"); !strings.Contains(got.stdout, `\*b\*`) {
		t.Errorf("%q", got.stdout)
	}
}
