package train_test

import (
	"encoding/json"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// The zero value of each type says what its comment says, and nothing panics.
func TestZeroValues(t *testing.T) {
	_, err := train.Train{}.Plan(0)
	refuses(t, err, units.Missing, "/machines")
	_, err = train.Train{}.Centrelines()
	refuses(t, err, units.Missing, "/machines")
	if off := (train.Joint{}).Off(); off != (align.Estimate{}) {
		t.Errorf("nothing found and no target is off by %v", off)
	}
	if _, low := (train.Limit{}).Low(); low {
		t.Error("the zero limit has a low end")
	}
	if _, high := (train.Limit{}).High(); high {
		t.Error("the zero limit has a high end")
	}
	if train.Work(0) != train.TotalTravel {
		t.Error("the zero measure of work is not the travel")
	}
	for _, none := range []interface{ String() string }{train.Reach(0), train.Side(0), train.Reason(0)} {
		if got := none.String(); got != "0" && got != "" {
			t.Errorf("the zero %T reads as %q", none, got)
		}
	}
	if got := (train.Step{}).String(); got != " : leave" {
		t.Errorf("the zero step reads as %q", got)
	}
}

// Values that are inputs can be written and read when they are zero.
func TestZeroValuesInJSON(t *testing.T) {
	for _, v := range []any{train.Train{}, train.Machine{}, train.Joint{}, train.Foot{}, train.Limit{}, train.Work(0)} {
		if _, err := json.Marshal(v); err != nil {
			t.Errorf("%T: %v", v, err)
		}
	}
}

// A train that is on target needs no step, and none of its numbers are anything but
// zero.
func TestNothingToDo(t *testing.T) {
	tr := pair()
	tr.Joints[0].Found = align.Estimate{}
	for w := train.TotalTravel; w <= train.FewestFeet; w++ {
		p := plan(t, tr, w)
		if p.Reach != train.OnTarget || p.Ratio != 0 || p.Bound != 0 || p.Moves != 0 || p.Travel != 0 || p.Largest != 0 || len(p.Steps) != 0 || !p.Proven || len(p.Warnings) != 0 || len(p.InTheWay) != 0 {
			t.Errorf("%v: %+v", w, p)
		}
	}
}
