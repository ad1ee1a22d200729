package arc_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// What Fit asks for is asked for here, and a sound twin passes.
func TestRobustRefuses(t *testing.T) {
	sound := filled(t, caseA, sensorPair(5*um, nine(180)...))
	rows := []struct {
		name string
		bad  func(sets []align.Set) []align.Set
		want string
	}{
		{"no sets", func([]align.Set) []align.Set { return nil }, "missing /sets"},
		{"no kind", func(s []align.Set) []align.Set { s[1].Probe.Kind = 0; return s }, "missing /sets/1/probe/kind"},
		{"a value that is none", func(s []align.Set) []align.Set { s[0].Readings[4].Value = units.Length(math.NaN()); return s }, "not_finite /sets/0/readings/4/value"},
		{"an uncertainty below zero", func(s []align.Set) []align.Set { s[0].U.Reading = -1; return s }, "out_of_range /sets/0/u/reading"},
		{"some stated, some not", func(s []align.Set) []align.Set { s[0].U.Reading = 0; return s }, "conflict /sets"},
		{"one station", func(s []align.Set) []align.Set { s[1].Probe.Station = s[0].Probe.Station; return s }, "unseen /sets"},
	}
	for _, row := range rows {
		_, err := arc.FitRobust(row.bad(ownReadings(sound))...)
		if got := codesAndPaths(err); !slices.Equal(got, []string{row.want}) {
			t.Errorf("%s: got %v, want %s", row.name, got, row.want)
		}
	}
	mustRobust(t, sound...)
}

// Readings whose scatter is rounding, and one that is off; and none that differ.
func TestRobustOfExactReadings(t *testing.T) {
	sets := filled(t, caseA, sensorPair(0, nine(180)...))
	r := mustRobust(t, spoilt(sets, 0, 2, 50*um)...)
	if down := r.Down(); len(down) != 1 || down[0].Reading != 2 || r.Cov.Basis != align.Unknown {
		t.Errorf("down %+v, basis %v", down, r.Cov.Basis)
	}
	still := sensorPair(0, nine(180)...)
	if r := mustRobust(t, still...); r.Down() != nil || r.Value != (align.Centreline{}) {
		t.Errorf("readings of nothing: %+v", r)
	}
}

func TestRobustZeroValues(t *testing.T) {
	if (arc.Robust{}).Down() != nil {
		t.Error("the zero value has readings")
	}
	if down := (arc.Robust{Weights: []arc.Weight{{}}}).Down(); len(down) != 1 {
		t.Error("the zero weight is that of a reading left out")
	}
}

func TestRobustJSON(t *testing.T) {
	r := mustRobust(t, spoilt(wiggled(filled(t, caseA, sensorPair(0, nine(180)...))), 0, 2, 90*um)...)
	checkJSON(t, r, `"weights":[{"set":0,"reading":0,"weight":`, `"scale":`, `"settled":true`, `"cov":`)
}

// checkJSON writes and reads a value, which has to come back but for rounding of the
// covariance, and asks for some of its text.
func checkJSON[T any](tb fataler, v T, words ...string) {
	tb.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		tb.Fatalf("Marshal: %v", err)
	}
	for _, w := range words {
		if !strings.Contains(string(text), w) {
			tb.Errorf("%s does not hold %s", text, w)
		}
	}
	var back T
	if err := json.Unmarshal(text, &back); err != nil {
		tb.Fatalf("Unmarshal: %v", err)
	}
	close := cmp.Comparer(func(a, b align.Covariance) bool {
		g, w := plain(a.Standard()), plain(b.Standard())
		for i := range g {
			if !(math.Abs(g[i]-w[i]) <= 1e-12*w[i]) {
				return false
			}
		}
		return a.Basis == b.Basis && a.DoF == b.DoF
	})
	if diff := cmp.Diff(v, back, close); diff != "" {
		tb.Errorf("not what was written:\n%s", diff)
	}
}

// Whatever comes, FitRobust and Diagnose answer with numbers or with faults.
func FuzzFitRobust(f *testing.F) {
	f.Add([]byte{}, uint8(0), int16(0))
	f.Add([]byte{0, 40, 80, 120, 160, 200, 240}, uint8(3), int16(300))
	f.Add([]byte{0, 0, 80, 80, 160}, uint8(1), int16(-9))
	f.Add([]byte{0, 85, 170, 9, 200, 31, 77, 140}, uint8(200), int16(32000))
	f.Fuzz(func(t *testing.T, at []byte, which uint8, by int16) {
		if len(at) > 24 {
			return
		}
		var clocks []units.Clock
		for _, b := range at {
			clocks = append(clocks, units.Clock(b)*360/256)
		}
		sets := sensorPair(units.Length(which%3)*um, clocks...)
		for i := range sets {
			for j := range sets[i].Readings {
				sets[i].Readings[j].Value = units.Length(int(at[j])*(i+2)%7) * um
				if uint8(j) == which%16 {
					sets[i].Readings[j].Value += units.Length(by) * um
				}
			}
		}
		plainFit, err := align.Fit(sets...)
		r, robustErr := arc.FitRobust(sets...)
		if err != nil {
			if robustErr == nil {
				t.Errorf("answered what Fit refuses: %v", err)
			}
			return
		}
		if robustErr != nil {
			t.Fatalf("refused: %v", robustErr)
		}
		for _, w := range r.Weights {
			if !(w.Weight >= 0 && w.Weight <= 1) || math.IsNaN(w.Off) || math.IsInf(w.Off, 0) {
				t.Errorf("%+v", w)
			}
		}
		if _, err := json.Marshal(r); err != nil {
			t.Error(err)
		}
		d, err := arc.Diagnose(plainFit, sets...)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(d); err != nil {
			t.Errorf("%v: %+v", err, d)
		}
	})
}
