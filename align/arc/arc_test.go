package arc_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestArcOf(t *testing.T) {
	rows := []struct {
		name                  string
		view                  align.View
		at                    []units.Clock
		covered, hole, middle float64 // degrees
	}{
		{"three on a quarter turn", 0, []units.Clock{90, 45, 135}, 90, 270, 90},
		{"across 12 o'clock", 0, []units.Clock{350, 20, 5}, 30, 330, 5},
		{"across 12 o'clock, counted from below it", 0, []units.Clock{-10, 20, 5}, 30, 330, 5},
		{"turns further on", 0, []units.Clock{350 + 720, 20 - 360, 5}, 30, 330, 5},
		{"across 6 o'clock", 0, []units.Clock{170, 190}, 20, 340, 180},
		{"more than half a turn", 0, []units.Clock{0, 120, 240, 200}, 240, 120, 120},
		{"the quarters: from 12 to 9", 0, quarters, 270, 90, 135},
		{"one reading", 0, []units.Clock{400}, 0, 360, 40},
		{"one place, twice", 0, []units.Clock{-320, 40}, 0, 360, 40},
		{"from the stationary end", align.FromStationary, []units.Clock{80, 100, 60}, 40, 320, 80},
		{"across 12 from the stationary end", align.FromStationary, []units.Clock{350, 20}, 30, 330, 5},
	}
	for _, row := range rows {
		got, err := arc.Of(align.Set{View: row.view, Readings: taken(row.at...)})
		if err != nil {
			t.Fatalf("%s: %v", row.name, err)
		}
		near(t, row.name+": covered", got.Covered, units.Angle(row.covered)*units.Degree, 1e-12)
		near(t, row.name+": hole", got.Hole, units.Angle(row.hole)*units.Degree, 1e-12)
		near(t, row.name+": middle", float64(got.Middle), row.middle, 1e-10)
	}
}

// The arc is the shortest run clockwise from any reading that passes all others.
func TestArcIsTheShortestRun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.SliceOfN(rapid.Float64Range(-1000, 1000), 1, 8).Draw(t, "positions")
		set := align.Set{View: drawView(t)}
		for _, a := range at {
			set.Readings = append(set.Readings, align.Reading{At: units.Clock(a)})
		}
		shortest := math.Inf(1)
		for _, from := range at {
			run := 0.0
			for _, to := range at {
				run = max(run, math.Mod(math.Mod(to-from, 360)+360, 360))
			}
			shortest = min(shortest, run)
		}
		got, err := arc.Of(set)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "covered", float64(got.Covered/units.Degree), shortest, 1e-9)
		near(t, "covered and hole", float64(got.Covered+got.Hole), 2*math.Pi, 1e-12)
		for _, a := range at { // every reading lies within half the arc of its middle
			apart := math.Abs(math.Remainder(a-float64(got.Middle), 360))
			if apart > shortest/2+1e-9 {
				t.Errorf("a reading at %v lies %v degrees from the middle of %v degrees", a, apart, shortest)
			}
		}
	})
}

func TestArcRefuses(t *testing.T) {
	rows := []struct {
		name      string
		bad, twin align.Set
		code      units.Code
		path      string
	}{
		{"no readings", align.Set{}, align.Set{Readings: taken(0)}, units.Missing, "/readings"},
		{"a position that is no number", align.Set{Readings: taken(0, units.Clock(math.NaN()))}, align.Set{Readings: taken(0, -1e6)}, units.NotFinite, "/readings/1/at"},
		{"an unknown view", align.Set{View: 2, Readings: taken(0)}, align.Set{View: 1, Readings: taken(0)}, units.OutOfRange, "/view"},
	}
	for _, row := range rows {
		_, err := arc.Of(row.bad)
		if diff := cmp.Diff([]string{string(row.code) + " " + row.path}, codesAndPaths(err)); diff != "" {
			t.Errorf("%s: %s", row.name, diff)
		}
		if _, err := arc.Of(row.twin); err != nil {
			t.Errorf("%s: its twin: %v", row.name, err)
		}
	}
}

func TestArcJSON(t *testing.T) {
	for name, want := range map[string]arc.Arc{
		"zero":       {},
		"everything": {Covered: 90 * units.Degree, Hole: 270 * units.Degree, Middle: units.Three},
	} {
		text, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		var got arc.Arc
		if err := json.Unmarshal(text, &got); err != nil || got != want {
			t.Errorf("%s: got %v, %v from %s, want %v", name, got, err, text, want)
		}
	}
}
