package train_test

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The golden files hold whole plans. They say that nothing has changed; whether it is
// right the other tests tell.
func TestGolden(t *testing.T) {
	rows := []struct {
		name  string
		train train.Train
		work  train.Work
	}{
		{"four-machines-per-plane", four(true), train.TotalTravel},
		{"four-machines-vectors", four(false), train.LargestMove},
	}
	for _, row := range rows {
		p := plan(t, row.train, row.work)
		record, err := json.MarshalIndent(p, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		golden(t, row.name+".txt", printed(p))
		golden(t, row.name+".json", rounded(string(record))+"\n")
	}
}

var decimals = regexp.MustCompile(`-?\d+\.\d+(e[+-]?\d+)?`)

// rounded keeps four decimals of every number, 0.1 um of a length: processors that
// fuse a product with a sum differ below that.
func rounded(text string) string {
	return decimals.ReplaceAllStringFunc(text, func(number string) string {
		x, err := strconv.ParseFloat(number, 64)
		if err != nil {
			return number
		}
		return strconv.FormatFloat(math.Round(x*1e4)/1e4+0, 'f', -1, 64)
	})
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name+".golden")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	want := strings.ReplaceAll(string(data), "\r\n", "\n")
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("differs from %s (-want +got):\n%s", file, diff)
	}
}

// printed is the plan as a page.
func printed(p train.Plan) string {
	var page strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&page, format+"\n", args...) }
	line("%v, worst ratio %.4f, none betters %.4f, proven %v", p.Reach, p.Ratio, p.Bound, p.Proven)
	line("%v: travel %v, largest %v, %d moves", p.Work, p.Travel.Round(10*nm), p.Largest.Round(10*nm), p.Moves)
	line("\nsteps")
	for i, s := range p.Steps {
		line("%2d. %s  (%s)", i+1, s.Text(align.Style{Digits: 3}), s.Because())
	}
	line("\nmachines")
	for _, s := range p.Machines {
		line("%s: shift %v", s.Machine, s.Shift.Round(10*nm))
		for _, f := range s.Feet {
			before, after := s.Before.Value.At(f.Foot.X), s.After.Value.At(f.Foot.X)
			line("  %-8s %7.3f -> %7.3f sideways, %7.3f -> %7.3f in height, mm", f.Foot.Name,
				before.Horizontal/mm, after.Horizontal/mm, before.Vertical/mm, after.Vertical/mm)
		}
	}
	line("\ncouplings")
	for _, j := range p.Joints {
		line("%s: %v, opens %v", j.Coupling, j.Verdict.Outcome, j.Opens.Round(10*nm))
		for _, item := range j.Verdict.All() {
			line("  %v", item)
		}
	}
	line("\nin the way")
	for _, b := range p.InTheWay {
		line("%s %s %v %v: alone %v, together %v", b.Machine, b.Foot, b.Plane, b.Side, b.Alone.Round(10*nm), b.Together.Round(10*nm))
	}
	line("\nwarnings")
	for i := range p.Warnings {
		line("%v", p.Warnings[i].Error())
	}
	return page.String()
}
