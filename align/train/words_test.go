package train_test

import (
	"encoding"
	"fmt"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Each word is written and read; a number that has none is neither.
func TestWords(t *testing.T) {
	type text interface {
		fmt.Stringer
		encoding.TextMarshaler
	}
	rows := []struct {
		value text
		into  encoding.TextUnmarshaler
		want  string
	}{
		{train.TotalTravel, new(train.Work), "total_travel"},
		{train.LargestMove, new(train.Work), "largest_move"},
		{train.FewestFeet, new(train.Work), "fewest_feet"},
		{train.OnTarget, new(train.Reach), "on_target"},
		{train.WithinLimits, new(train.Reach), "within_limits"},
		{train.OutOfReach, new(train.Reach), "out_of_reach"},
		{train.Low, new(train.Side), "low"},
		{train.High, new(train.Side), "high"},
		{train.StartsHere, new(train.Reason), "starts_here"},
		{train.BesideOneThatIs, new(train.Reason), "beside_one_that_is"},
		{train.WhileLoose, new(train.Reason), "while_loose"},
		{train.HeightsAreSet, new(train.Reason), "heights_are_set"},
	}
	for _, row := range rows {
		got, err := row.value.MarshalText()
		if err != nil || string(got) != row.want || row.value.String() != row.want {
			t.Errorf("%v is written %q (%v), want %q", row.value, got, err, row.want)
		}
		if err := row.into.UnmarshalText(got); err != nil || fmt.Sprint(row.into) == "" {
			t.Errorf("%q is not read: %v", got, err)
		}
		if read := row.into.(fmt.Stringer).String(); read != row.want {
			t.Errorf("%q is read as %q", got, read)
		}
		if err := row.into.UnmarshalText([]byte("No_Such_Word")); err == nil {
			t.Errorf("%T reads a word that there is not", row.into)
		}
	}
}

func TestNumbersWithoutAWord(t *testing.T) {
	for _, v := range []encoding.TextMarshaler{train.Work(3), train.Reach(4), train.Side(3), train.Reason(5)} {
		if got, err := v.MarshalText(); err == nil {
			t.Errorf("%T %v is written %q", v, v, got)
		}
	}
}

// A step is told in the words of its plane and of where the crew stands.
func TestStepText(t *testing.T) {
	step := train.Step{Machine: "pump", Foot: "inboard", By: 212 * um}
	rows := []struct {
		plane tolerance.Plane
		by    units.Length // times the move
		style align.Style
		want  string
	}{
		{tolerance.Vertical, 1, align.Style{}, "pump inboard: raise 0.21 mm"},
		{tolerance.Vertical, -1, align.Style{Digits: 3}, "pump inboard: lower 0.212 mm"},
		{tolerance.Horizontal, 1, align.Style{}, "pump inboard: push 0.21 mm towards 3 o'clock"},
		{tolerance.Horizontal, 1, align.Style{View: align.FromStationary}, "pump inboard: push 0.21 mm towards 9 o'clock"},
		{tolerance.Horizontal, -1, align.Style{Nine: "north"}, "pump inboard: push 0.21 mm towards north"},
		{tolerance.Horizontal, 1e-3, align.Style{}, "pump inboard: leave"},
		{tolerance.Vertical, -1e-3, align.Style{}, "pump inboard: leave"},
	}
	for _, row := range rows {
		s := step
		s.Plane = row.plane
		s.By *= row.by
		if got := s.Text(row.style); got != row.want {
			t.Errorf("%v %v: %q, want %q", row.plane, s.By, got, row.want)
		}
	}
	if step.Plane = tolerance.Vertical; step.String() != "pump inboard: raise 0.21 mm" {
		t.Errorf("in the zero style: %q", step.String())
	}
}

func TestReasonsInWords(t *testing.T) {
	rows := []struct {
		step train.Step
		want string
	}{
		{train.Step{Machine: "pump", Why: train.StartsHere}, "pump moves least, and the others are set to it"},
		{train.Step{Machine: "pump", Why: train.BesideOneThatIs, Beside: "motor"}, "next to motor, which stands"},
		{train.Step{Machine: "pump", Why: train.WhileLoose}, "while pump is loose"},
		{train.Step{Machine: "pump", Why: train.HeightsAreSet}, "sideways once the heights of pump are set"},
		{train.Step{Machine: "pump"}, "0"}, // no reason has no word,
	}
	for _, row := range rows {
		if got := row.step.Because(); got != row.want {
			t.Errorf("%v: %q, want %q", row.step.Why, got, row.want)
		}
	}
}
