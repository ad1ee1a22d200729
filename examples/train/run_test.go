package main

import (
	"bytes"
	"errors"
	"flag"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"example.org/collinear/examples/internal/lines"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The golden files hold whole runs of the program. They say that nothing has
// changed; whether it is right the other tests tell.
func TestGolden(t *testing.T) {
	for _, row := range []struct {
		name string
		args []string
	}{
		{"metric", nil},
		{"inch", []string{"-units", "inch"}},
		{"record", []string{"-json"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			var stdout, again, stderr bytes.Buffer
			if code := run(row.args, &stdout, &stderr); code != solved || stderr.Len() > 0 {
				t.Fatalf("ends with %d and says %q", code, stderr.String())
			}
			if run(row.args, &again, &stderr); !bytes.Equal(stdout.Bytes(), again.Bytes()) {
				t.Error("two runs differ")
			}
			file := filepath.Join("testdata", row.name+".golden")
			if *update {
				if err := os.WriteFile(file, []byte(rounded(stdout.String())), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(strings.ReplaceAll(string(want), "\r\n", "\n"), rounded(stdout.String())); diff != "" {
				t.Errorf("differs from %s (-want +got):\n%s", file, diff)
			}
		})
	}
}

// decimals is a number with decimals, as the record has it.
var decimals = regexp.MustCompile(`-?\d+\.\d{5,}(e[+-]\d+)?|-?\d+(\.\d+)?e[+-]\d+`)

// rounded keeps four decimals of every number, 0.1 um: what is below is left of a
// search, and changes with its order.
func rounded(text string) string {
	return decimals.ReplaceAllStringFunc(text, func(number string) string {
		x, err := strconv.ParseFloat(number, 64)
		if err != nil {
			return number
		}
		return strconv.FormatFloat(math.Round(x*1e4)/1e4+0, 'f', -1, 64) // no negative zero
	})
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
	bad := file("bad.json", all(with("/couplings/0/at", `"1800"`), with("/reference", `"nobody"`))(t, builtIn))
	for _, row := range []struct {
		name   string
		args   []string
		code   int
		stdout bool
		stderr string
	}{
		{"built in", nil, solved, true, ""},
		{"a file", []string{"-job", good, "-units", "inch"}, solved, true, ""},
		{"help", []string{"-h"}, solved, false, "-job file"},
		{"refused", []string{"-job", bad}, refused, false, bad + ": /couplings/0/at: want "},
		{"no such file", []string{"-job", filepath.Join(dir, "none.json")}, refused, false, "none.json: "},
		{"a folder", []string{"-job", dir}, refused, false, dir},
		{"unknown flag", []string{"-colour"}, misused, false, "-colour"},
		{"unknown units", []string{"-units", "furlong"}, misused, false, `"metric" or "inch"`},
		{"left over", []string{"job.json"}, misused, false, `want flags only, got "job.json"`},
	} {
		t.Run(row.name, func(t *testing.T) {
			var stdout, stderr bytes.Buffer
			if code := run(row.args, &stdout, &stderr); code != row.code {
				t.Errorf("ends with %d, want %d", code, row.code)
			}
			if (stdout.Len() > 0) != row.stdout {
				t.Errorf("prints %q", stdout.String())
			}
			if said := stderr.String(); !strings.Contains(said, row.stderr) || (row.stderr == "") != (said == "") {
				t.Errorf("says %q, want %q in it", said, row.stderr)
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

// signed is a number with a sign that is not part of a name.
var signed = regexp.MustCompile(`(^|[^\p{L}\p{N}])[+−-]\d`)

// Each row is a job with another outcome; its report has to hold the texts in their
// order, keeps to the width of the page and shows no number with a sign.
func TestReports(t *testing.T) {
	for _, row := range []struct {
		name string
		edit edit
		want []string
	}{
		{"out of reach, then on target", all(), []string{
			"clock as seen from behind motor M-4", "clock as seen from behind pump P-4",
			"vertical offset 0.63 mm of 0.06 mm: OVER", "horizontal slope 0.20 mm/m of 0.50 mm/m: within",
			"Plan 1: gearbox G-4 stays", "OUT OF REACH",
			"gearbox G-4 low-speed end, downwards (which moves the machine that is to stay): by 0.23 mm alone", // 0.2249 mm, and 0.22 were too little
			"pump P-4 inboard, downwards: by", "So this is not the plan to carry out",
			"Plan 2: every machine may move", "Every coupling comes to its target.", "gearbox G-4 high-speed end: raise", "Moving gearbox G-4 loads",
			// The motor tilts by 0.52 mm in 1100 mm, 450 mm up, the gearbox by 0.08 mm in 600 mm, 400 mm up.
			"motor M-4 tilts about its feet, and its shaft goes 0.21 mm back along the tape", "gearbox G-4 tilts about its feet, and its shaft goes 0.05 mm back",
			"Left at the low-speed coupling, less what is wanted there; its shafts 0.16 mm wider apart",
		}},
		{"nothing in the way", all(without("/machines/0/feet/1/horizontal"), without("/machines/2/feet/0/vertical")), []string{
			"Plan 1: gearbox G-4 stays", "Every coupling comes to its target.", " 1. motor M-4 ", "next to gearbox G-4, which stands",
		}},
		{"within limits", all(without("/machines/0/feet/1/horizontal"), with("/machines/2/feet/0/vertical/down_by", `"0.5 mm"`)), []string{
			"Plan 1", "but every one within its limits",
		}},
		{"out of reach for all", all(with("/machines/1/feet/0/vertical", `{"fixed": true}`), with("/machines/1/feet/1/vertical", `{"fixed": true}`)), []string{
			"Plan 1", "OUT OF REACH", "Plan 2", "OUT OF REACH", "THIS DOES NOT BRING THE TRAIN WITHIN ITS LIMITS",
		}},
		{"nobody was to stay", without("/reference"), []string{"Centrelines as found, against motor M-4 as it lies", "Plan 1: every machine may move"}},
		{"planes together", all(without("/couplings/0/limits/per_plane"), without("/couplings/1/limits/per_plane")), []string{
			"  - tilt at the flex plane beside motor M-4", "OUT OF REACH", "not enough alone",
		}},
		{"a target as given", all(without("/machines/0/growth"), without("/machines/1/growth"), without("/machines/2/growth"),
			with("/couplings/1/target", `{"source": "maker", "high": "-0.1 mm", "to_three": "0.05 mm", "climb": "0.2 mm/m", "drift": "-0.1 mm/m"}`)), []string{
			"wanted, cold  0.10 mm low", "climbing 0.20 mm/m; 0.05 mm towards the canal", "drifting 0.10 mm/m towards the road",
		}},
		{"no names for the sides, no place", all(without("/three"), without("/nine"), without("/place"), without("/people"), without("/notes"), without("/units")), []string{"3 on the right is 3 o'clock"}},
		{"a reading that does not fit", with("/couplings/0/found/carried_by_later/at_9", `"-0.44 mm"`), []string{"LOOK AGAIN", "/couplings/0/found/carried_by_later"}},
		{"no uncertainty stated", all(without("/couplings/0/found/carried_by_earlier/u"), without("/couplings/0/found/carried_by_later/u"), without("/machines/0/growth/0/u")), []string{"off by"}},
		{"no height, no shift told", all(without("/machines/0/height"), without("/machines/1/height"), without("/machines/2/height")), []string{"its shafts as far apart as before"}},
		{"a foot that cannot move at all", with("/machines/0/feet/0", `{"name": "outboard", "at": "300 mm", "vertical": {"fixed": true}, "horizontal": {"fixed": true}}`), []string{"fixed in height; fixed sideways"}},
		{"a foot on its base", with("/machines/2/feet/0/vertical/down_by", `"0 mm"`), []string{"pump P-4 inboard, at 3500 mm: not down, free up"}},
		{"the fewest feet", with("/work", `"fewest_feet"`), []string{"Made least: the number of moves."}},
		{"the largest move", with("/work", `"largest_move"`), []string{"Made least: the largest move."}},
	} {
		t.Run(row.name, func(t *testing.T) {
			r := mustSolve(t, row.edit(t, builtIn))
			for _, s := range []system{inch, metric} {
				var out strings.Builder
				if err := writeReport(&out, r, s); err != nil {
					t.Fatal(err)
				}
				for line := range strings.Lines(out.String()) {
					if utf8.RuneCountInString(line) > lines.Columns+1 || signed.MatchString(line) || strings.HasSuffix(line, " \n") || strings.Contains(line, "NaN") {
						t.Errorf("%s: %q", s, line)
					}
				}
				if s != metric {
					continue
				}
				rest := strings.Join(strings.Fields(out.String()), " ")
				for _, want := range row.want {
					_, after, there := strings.Cut(rest, strings.Join(strings.Fields(want), " "))
					if !there {
						t.Fatalf("%q is not (any more) in\n%s", want, out.String())
					}
					rest = after
				}
			}
		})
	}
}

func TestPage(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"a line that is just full", strings.Repeat("x", 60) + " " + strings.Repeat("y", 15), strings.Repeat("x", 60) + " " + strings.Repeat("y", 15) + "\n"},
		{"one too long by a column", strings.Repeat("x", 60) + " " + strings.Repeat("y", 16), strings.Repeat("x", 60) + "\n    " + strings.Repeat("y", 16) + "\n"},
		{"a number and its unit", strings.Repeat("x", 71) + " 10 mm", strings.Repeat("x", 71) + "\n    10 mm\n"},
		{"a word longer than a line", strings.Repeat("x", 80), strings.Repeat("x", 76) + "\n    xxxx\n"},
	} {
		var p page
		p.point("-", row.text)
		if got := p.String(); got != "  - "+row.want {
			t.Errorf("%s: %q", row.name, got)
		}
	}
}
