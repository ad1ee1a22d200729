package sheet_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

var (
	exerciseDifficulties = []sheet.Difficulty{sheet.OneStep, sheet.OneMethod, sheet.WholeJob}
	exerciseSystems      = []sheet.System{sheet.Metric, sheet.Inch}
)

// eachExercise draws exercises of every difficulty in both systems, a tenth of them in
// short tests.
func eachExercise(t *testing.T, seeds int, check func(t *testing.T, e sheet.Exercise, w sheet.Working)) {
	if testing.Short() {
		seeds = max(1, seeds/10)
	}
	for _, d := range exerciseDifficulties {
		for _, s := range exerciseSystems {
			t.Run(fmt.Sprintf("%v/%v", d, s), func(t *testing.T) {
				for seed := range uint64(seeds) {
					e, w := mustExercise(t, seed, d, s)
					check(t, e, w)
					if t.Failed() {
						t.Fatalf("seed %d:\n%s", seed, e.Text())
					}
				}
			})
		}
	}
}

// exerciseKey is what an exercise is drawn by.
type exerciseKey struct {
	seed       uint64
	difficulty sheet.Difficulty
	system     sheet.System
}

// exerciseKept is an exercise with its working.
type exerciseKept struct {
	sheet.Exercise
	working sheet.Working
}

// exercisesKept has what was drawn before: most tests look at the same exercises, and none
// changes one.
var exercisesKept = map[exerciseKey]exerciseKept{}

func mustExercise(t *testing.T, seed uint64, d sheet.Difficulty, s sheet.System) (sheet.Exercise, sheet.Working) {
	t.Helper()
	key := exerciseKey{seed, d, s}
	kept, ok := exercisesKept[key]
	if !ok {
		e, err := sheet.NewExercise(seed, d, s)
		if err != nil {
			t.Fatalf("seed %d, %v, %v: %v", seed, d, s, err)
		}
		w, err := e.Problem.Working()
		if err != nil {
			t.Fatalf("seed %d, %v, %v: %v", seed, d, s, err)
		}
		kept = exerciseKept{e, w}
		exercisesKept[key] = kept
	}
	return kept.Exercise, kept.working
}

func TestExerciseIsDrawnAgain(t *testing.T) {
	eachExercise(t, 30, func(t *testing.T, e sheet.Exercise, _ sheet.Working) {
		again, _ := sheet.NewExercise(e.Seed, e.Difficulty, e.System) // not the one that is kept
		if diff := cmp.Diff(mustMarshal(e), mustMarshal(again)); diff != "" {
			t.Error(diff)
		}
		for _, d := range exerciseDifficulties {
			for _, s := range exerciseSystems {
				other, _ := mustExercise(t, e.Seed+1, d, s)
				if mustMarshal(other.Problem) == mustMarshal(e.Problem) {
					t.Errorf("seed %d of %v, %v has the same problem", other.Seed, d, s)
				}
			}
		}
	})
}

func mustMarshal(v any) string {
	text, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return string(text)
}

// Exercises are the same on every platform and stay the same: sums over the JSON of their
// problems, as they were when this was written. A change of what is drawn, or of what an
// exercise has to show, changes them.
func TestExerciseIsTheSameEverywhere(t *testing.T) {
	for _, row := range []struct {
		difficulty sheet.Difficulty
		system     sheet.System
		want       string
	}{
		{sheet.OneStep, sheet.Metric, "144d58e7b0f398ed"},
		{sheet.OneStep, sheet.Inch, "4df5e713ab6f33bf"},
		{sheet.OneMethod, sheet.Metric, "668463bab0400eb6"},
		{sheet.OneMethod, sheet.Inch, "13bc63796e92bffe"},
		{sheet.WholeJob, sheet.Metric, "a9d94f446b98f0ba"},
		{sheet.WholeJob, sheet.Inch, "0f4fafc23c6b5d34"},
	} {
		sum := fnv.New64a()
		for seed := range uint64(60) {
			e, _ := mustExercise(t, seed, row.difficulty, row.system)
			io.WriteString(sum, mustMarshal(e.Problem))
		}
		if got := fmt.Sprintf("%016x", sum.Sum64()); got != row.want {
			t.Errorf("%v, %v: got %s, want %s", row.difficulty, row.system, got, row.want)
		}
	}
}

// Every kind of problem, method, view, and what may be missing comes up.
func TestExercisesAreOfEveryKind(t *testing.T) {
	seeds, least := uint64(300), 5
	if testing.Short() {
		seeds, least = 80, 1
	}
	seen := map[string]int{}
	for _, d := range exerciseDifficulties {
		for _, s := range exerciseSystems {
			for seed := range seeds {
				e, w := mustExercise(t, seed, d, s)
				for _, trait := range exerciseTraits(e, w) {
					seen[d.String()+" "+trait]++
				}
			}
		}
	}
	for d, traits := range map[string]string{
		"one_step": "sweep sag gap_from_slope slope_from_gap flex_tilts cold_target target_readings soft_foot sliding_limit flange_shims shim_stacks" +
			" from_stationary from_movable mandrel sag rim near_face far_face gap zero3 zero6 zero9",
		"one_method": "rim_face reverse face_face rim_gap straightedge_gap from_stationary from_movable sag fourth feet2 feet3 far carrier_movable",
		"whole_job":  "rim_face reverse face_face from_stationary from_movable sag feet2 feet3 growth carrier_movable",
	} {
		for _, trait := range strings.Fields(traits) {
			if seen[d+" "+trait] < least {
				t.Errorf("%s %s: seen %d times in %d", d, trait, seen[d+" "+trait], 2*seeds)
			}
		}
	}
	for _, never := range []string{"one_method growth", "whole_job rim_gap", "whole_job fourth", "one_step reverse"} {
		if seen[never] > 0 {
			t.Errorf("%s is not asked for", never)
		}
	}
}

// exerciseTraits tells what an exercise is about, by the names of its JSON and the ids of
// its working.
func exerciseTraits(e sheet.Exercise, w sheet.Working) []string {
	text := mustMarshal(e.Problem)
	var traits []string
	has := func(trait string, found bool) {
		if found {
			traits = append(traits, trait)
		}
	}
	for _, name := range strings.Fields("sweep sag gap_from_slope slope_from_gap flex_tilts cold_target target_readings soft_foot sliding_limit flange_shims shim_stacks " +
		"rim_face reverse face_face rim_gap straightedge_gap mandrel") {
		has(name, strings.Contains(text, `"`+name+`":`))
	}
	for _, name := range strings.Fields("from_stationary from_movable near_face far_face gap rim") {
		has(name, strings.Contains(text, `:"`+name+`"`))
	}
	has("zero3", strings.Contains(text, `"zero":"3:00"`))
	has("zero6", strings.Contains(text, `"zero":"6:00"`))
	has("zero9", strings.Contains(text, `"zero":"9:00"`))
	has("far", strings.Contains(text, `"far":true`))
	has("carrier_movable", strings.Contains(text, `"carrier":"movable"`))
	if j := e.Problem.Job; j != nil {
		has(fmt.Sprint("feet", len(j.Feet)), true)
		has("growth", j.Stationary != nil && j.Movable != nil)
	}
	for _, step := range w.Steps(e.System) {
		has("fourth", strings.HasSuffix(step.ID, ".fourth"))
	}
	return traits
}

// The full sheet as the working shows it is right, in the system of the exercise.
func TestExerciseSheetIsRight(t *testing.T) {
	eachExercise(t, 200, func(t *testing.T, e sheet.Exercise, w sheet.Working) {
		answers := map[string]string{}
		for _, step := range w.Steps(e.System) {
			answers[step.ID] = step.Answer
		}
		m, err := w.Check(answers)
		if err != nil || !m.Right() {
			t.Errorf("%v %+v", err, m)
		}
	})
}

// In each plane that a problem has, some line is ten or more of its last place, and where
// totals are read some total is: a plane in which nothing happens would hide its slips.
func TestExerciseIsOfSomeSize(t *testing.T) {
	eachExercise(t, 200, func(t *testing.T, e sheet.Exercise, w sheet.Working) {
		largest := map[string]float64{}
		for _, step := range w.Steps(e.System) {
			part, _, _ := strings.Cut(step.ID, ".")
			if part != "vertical" && part != "horizontal" {
				part = "all"
			}
			size := math.Abs(mustFloat(t, strings.Fields(step.Exact)[0]))
			largest[part] = max(largest[part], size)
			if strings.HasSuffix(step.ID, ".total") {
				largest["totals, "+part] = max(largest["totals, "+part], size)
			}
		}
		for part, size := range largest {
			if size < 0.01 && (part != "all" || len(largest) == 1) {
				t.Errorf("%s: nothing above %v", part, size)
			}
		}
	})
}

func mustFloat(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// Readings are whole divisions, and each full round keeps the validity rule to one.
func TestExerciseReadings(t *testing.T) {
	division := map[sheet.System]units.Length{sheet.Metric: 10 * units.Micrometre, sheet.Inch: units.Mil / 2}
	eachExercise(t, 200, func(t *testing.T, e sheet.Exercise, _ sheet.Working) {
		one := division[e.System]
		for _, round := range exerciseRounds(e.Problem) {
			at := map[units.Clock]units.Length{}
			for _, r := range round {
				if r.Value.Round(one) != r.Value {
					t.Errorf("%v at %v is no whole division", r.Value, r.At)
				}
				at[r.At] = r.Value
			}
			if len(round) < 3 || len(at) != len(round) {
				t.Errorf("%d readings", len(round))
			}
			if miss := at[0] + at[180] - at[90] - at[270]; len(round) == 4 && math.Abs(float64(miss)) > float64(one) {
				t.Errorf("a miss of %v", miss)
			}
		}
	})
}

func exerciseRounds(p sheet.Problem) [][]align.Reading {
	if p.Sweep != nil {
		return [][]align.Reading{p.Sweep.Rim.Readings}
	}
	switch j := p.Job; {
	case j == nil:
		return nil
	case j.Reverse != nil:
		return [][]align.Reading{j.Reverse.CarriedByStationary.Readings, j.Reverse.CarriedByMovable.Readings}
	case j.RimFace != nil:
		return [][]align.Reading{j.RimFace.Rim.Readings, j.RimFace.Face.Readings}
	case j.FaceFace != nil:
		return [][]align.Reading{j.FaceFace.AtStationary.Readings, j.FaceFace.AtMovable.Readings}
	case j.RimGap != nil:
		return [][]align.Reading{j.RimGap.Rim.Readings, j.RimGap.Gap.Readings}
	default:
		return [][]align.Reading{j.StraightedgeGap.Straightedge.Readings, j.StraightedgeGap.Gap.Readings}
	}
}

func TestExerciseRefuses(t *testing.T) {
	for _, row := range []struct {
		name       string
		difficulty sheet.Difficulty
		system     sheet.System
		paths      []string
	}{
		{"no difficulty", 0, sheet.Metric, []string{"/difficulty"}},
		{"a difficulty past the last", 4, sheet.Inch, []string{"/difficulty"}},
		{"a system past the last", sheet.OneStep, 2, []string{"/system"}},
		{"both", 255, 255, []string{"/difficulty", "/system"}},
		{"sound", sheet.WholeJob, sheet.Inch, nil},
	} {
		t.Run(row.name, func(t *testing.T) {
			e, err := sheet.NewExercise(1, row.difficulty, row.system)
			var paths []string
			for _, f := range units.Faults(err) {
				paths = append(paths, f.Path)
				if !errors.Is(f, units.Unknown) {
					t.Errorf("%v", f)
				}
			}
			if diff := cmp.Diff(row.paths, paths); diff != "" {
				t.Error(diff)
			}
			if err != nil && mustMarshal(e.Problem) != "{}" {
				t.Errorf("an exercise comes with the refusal: %+v", e)
			}
		})
	}
}

func TestExerciseJSON(t *testing.T) {
	eachExercise(t, 50, func(t *testing.T, e sheet.Exercise, _ sheet.Working) {
		var back sheet.Exercise
		text := mustMarshal(e)
		if err := json.Unmarshal([]byte(text), &back); err != nil {
			t.Fatal(err)
		}
		if again := mustMarshal(back); again != text {
			t.Errorf("got %s\nwant %s", again, text)
		}
		if back.Text() != e.Text() {
			t.Errorf("another text: %s", back.Text())
		}
	})
}

func TestDifficultyWords(t *testing.T) {
	for d, word := range map[sheet.Difficulty]string{sheet.OneStep: "one_step", sheet.OneMethod: "one_method", sheet.WholeJob: "whole_job"} {
		text, err := d.MarshalText()
		var back sheet.Difficulty
		if err != nil || string(text) != word || d.String() != word || back.UnmarshalText(text) != nil || back != d {
			t.Errorf("%v: %s %v", d, text, err)
		}
	}
	var none sheet.Difficulty
	if _, err := none.MarshalText(); err == nil || none.String() != "0" {
		t.Errorf("no difficulty is %q", none)
	}
	if err := none.UnmarshalText([]byte("easy")); !errors.Is(err, units.Unknown) || none != 0 {
		t.Errorf("easy: %v %v", err, none)
	}
}

// Zero and odd exercises have a text all the same: they are data.
func TestExerciseOddText(t *testing.T) {
	for _, e := range []sheet.Exercise{
		{},
		{System: 9, Title: "A", Story: "B", Problem: sheet.Problem{Sag: &sheet.Sag{At12: units.Length(math.NaN())}}},
		{Problem: sheet.Problem{Job: &sheet.Job{}}},
		{Problem: sheet.Problem{TargetReadings: &sheet.TargetReadings{}, SoftFoot: &sheet.SoftFoot{}, ShimStacks: &sheet.ShimStacks{}}},
		{System: sheet.Inch, Problem: sheet.Problem{FlexTilts: &sheet.FlexTilts{Span: units.Length(math.Inf(1))}}},
	} {
		if text := e.Text(); !strings.Contains(text, "no permission to start") {
			t.Errorf("%q", text)
		}
	}
}

func FuzzExercise(f *testing.F) {
	f.Add(uint64(0), uint8(1), uint8(0))
	f.Add(uint64(1)<<63, uint8(3), uint8(1))
	f.Add(^uint64(0), uint8(2), uint8(1))
	f.Add(uint64(7), uint8(9), uint8(3))
	f.Fuzz(func(t *testing.T, seed uint64, d, s uint8) {
		e, err := sheet.NewExercise(seed, sheet.Difficulty(d), sheet.System(s))
		if sound := d >= 1 && d <= 3 && s <= 1; sound != (err == nil) {
			t.Fatalf("%d %d: %v", d, s, err)
		}
		if err != nil {
			return
		}
		w, err := e.Problem.Working()
		if err != nil || !strings.Contains(e.Text(), w.Steps(e.System)[0].ID) {
			t.Errorf("%v\n%s", err, e.Text())
		}
	})
}
