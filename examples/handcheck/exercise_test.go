package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// sheetOf is the file that a trainee fills in, with answers put in.
func sheetOf(t *testing.T, blank string, answers map[string]string) string {
	t.Helper()
	var tree map[string]json.RawMessage
	if err := json.Unmarshal([]byte(blank), &tree); err != nil {
		t.Fatalf("%v\n%s", err, blank)
	}
	filled, err := json.Marshal(answers)
	if err != nil {
		t.Fatal(err)
	}
	tree["answers"] = filled
	data, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// An exercise goes out with empty answers, comes back filled in as the working
// rounds, and is right; with one answer spoiled it is not, and nothing but that line
// is wrong.
func TestExercisesThereAndBack(t *testing.T) {
	seeds := uint64(4)
	if testing.Short() {
		seeds = 1
	}
	for seed := range seeds {
		for _, difficulty := range []string{"one_step", "one_method", "whole_job"} {
			for _, system := range []string{"metric", "inch"} {
				args := []string{"-exercise", fmt.Sprint(seed), "-difficulty", difficulty, "-units", system}
				t.Run(strings.Join(args[1:], " "), func(t *testing.T) { thereAndBack(t, args) })
			}
		}
	}
}

func thereAndBack(t *testing.T, args []string) {
	blank := play("", append(args, "-json")...)
	if blank.code != right {
		t.Fatal(blank.stderr)
	}
	if got := play(blank.stdout, "-check", "-"); got.code != refused || !strings.Contains(got.stderr, "/answers: want the answer of at least one line") {
		t.Errorf("empty answers: ends with %d and says %q", got.code, got.stderr)
	}
	d := mustRead(t, []byte(blank.stdout))
	answers := map[string]string{}
	for _, step := range d.working.Steps(d.Units) {
		answers[step.ID] = step.Answer
	}
	if strings.Count(blank.stdout, `": ""`) != len(answers) {
		t.Errorf("%d lines, but\n%s", len(answers), blank.stdout)
	}
	if got := play(sheetOf(t, blank.stdout, answers), "-check", "-"); got.code != right || got.stderr != "" {
		t.Errorf("filled in: ends with %d\n%s%s", got.code, got.stdout, got.stderr)
	}
	last := d.working.Steps(d.Units)[len(d.steps)-1]
	answers[last.ID] = off(t, last.Answer)
	if got := play(sheetOf(t, blank.stdout, answers), "-check", "-"); got.code != wrong || strings.Count(got.stdout, "DOES NOT FOLLOW") != 1 || !strings.Contains(got.stdout, "What explains it") {
		t.Errorf("%s: %q for %q: ends with %d\n%s%s", last.ID, answers[last.ID], last.Answer, got.code, got.stdout, got.stderr)
	}
}

// What a trainee is handed has no answer; what a trainer asks for has all.
func TestExerciseAndItsWorking(t *testing.T) {
	for _, difficulty := range []string{"one_step", "one_method", "whole_job"} {
		args := []string{"-exercise", "5", "-difficulty", difficulty}
		task, worked := play("", args...), play("", append(args, "-worked")...)
		if task.code != right || worked.code != right || !strings.HasPrefix(worked.stdout, task.stdout) {
			t.Errorf("%s: ends with %d and %d", difficulty, task.code, worked.code)
		}
		d := mustRead(t, []byte(play("", append(args, "-json")...).stdout))
		for _, step := range d.steps {
			if exactly := "(exactly " + step.Exact + ")"; strings.Contains(task.stdout, exactly) || !strings.Contains(worked.stdout, exactly) {
				t.Errorf("%s: %s: %q", difficulty, step.ID, exactly)
			}
		}
		markdown := play("", append(args, "-worked", "-markdown")...)
		if !strings.Contains(markdown.stdout, "|---:|") || markdown.code != right {
			t.Errorf("%s: ends with %d\n%s", difficulty, markdown.code, markdown.stdout)
		}
	}
}

// The default is one method in metric; a seed is drawn anew the same.
func TestExerciseDefaults(t *testing.T) {
	plain, asked := play("", "-exercise", "9"), play("", "-exercise", "9", "-difficulty", "one_method", "-units", "metric")
	if plain != asked || plain.code != right {
		t.Errorf("%v\n%v", plain, asked)
	}
	if inches := play("", "-exercise", "9", "-units", "inch"); !strings.Contains(inches.stdout, " mil") || strings.Contains(inches.stdout, " mm") {
		t.Errorf("in inches:\n%s", inches.stdout)
	}
	if other := play("", "-exercise", "10"); other == plain {
		t.Error("two seeds, one exercise")
	}
}

// A slip that is made on purpose at an exercise is named: where the shaft lies, with
// the words of a move.
func TestExerciseWithASlip(t *testing.T) {
	for seed := range uint64(10) {
		blank := play("", "-exercise", fmt.Sprint(seed), "-json")
		d := mustRead(t, []byte(blank.stdout))
		answers := map[string]string{}
		for _, step := range d.steps {
			answers[step.ID] = step.Answer
			if place := strings.TrimSuffix(step.ID, "correction"); place != step.ID {
				w, err := sheet.Value[units.Length](d.working, place+"position")
				if err != nil {
					t.Fatal(err)
				}
				answers[step.ID] = w.Text(units.InMillimetres, 2)
			}
		}
		got := play(sheetOf(t, blank.stdout, answers), "-check", "-")
		if got.code != wrong || !strings.Contains(flat(got.stdout), "where the shaft lies was given as the way it has to go, in line") {
			t.Errorf("seed %d: ends with %d\n%s%s", seed, got.code, got.stdout, got.stderr)
		}
	}
}
