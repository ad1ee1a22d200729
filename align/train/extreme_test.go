package train_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// Numbers that no machine has, far too large and far too small beside one another,
// are planned or refused and never cause a panic or a plan that is not a number.
func TestExtremeNumbers(t *testing.T) {
	planned, refused := 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 17))
		tr := job{machines: 2 + r.IntN(2), scale: 1, perPlane: r.IntN(2) == 0}.draw(r)
		for i := range tr.Joints {
			j := &tr.Joints[i]
			distort(r, &j.Found.Value)
			distort(r, &j.Target.Value)
			j.Limits.Offset = max(nm, wild(r, j.Limits.Offset))
		}
		for i := range tr.Machines {
			for k := range tr.Machines[i].Feet {
				f := &tr.Machines[i].Feet[k]
				f.Vertical, f.Horizontal = wildLimit(r, f.Vertical), wildLimit(r, f.Horizontal)
			}
		}
		p, err := planOrPanic(tr, train.Work(seed%3))
		if err != nil {
			refused++
			if tr.Validate() == nil {
				t.Log(seed, err)
			}
			if units.Faults(err) == nil {
				t.Errorf("seed %d: %v", seed, err)
			}
			continue
		}
		planned++
		if math.IsNaN(p.Ratio) || math.IsInf(p.Ratio, 0) || math.IsNaN(float64(p.Travel)) || math.IsInf(float64(p.Travel), 0) {
			t.Errorf("seed %d: ratio %v, travel %v", seed, p.Ratio, p.Travel)
		}
	}
	t.Log(planned, "planned,", refused, "refused")
}

// planOrPanic turns a panic into an error that no fault is in.
func planOrPanic(tr train.Train, w train.Work) (p train.Plan, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("panic: %v", r)
		}
	}()
	return tr.Plan(w)
}

// wild makes a length far larger or smaller, now and then.
func wild(r *rand.Rand, l units.Length) units.Length {
	if r.IntN(3) > 0 {
		return l
	}
	return l * units.Length(math.Pow(10, float64(r.IntN(61)-30)))
}

func distort(r *rand.Rand, c *align.Centreline) {
	c.Vertical.Offset, c.Horizontal.Offset = wild(r, c.Vertical.Offset), wild(r, c.Horizontal.Offset)
	if r.IntN(4) == 0 {
		c.Vertical.Slope *= units.Slope(math.Pow(10, float64(r.IntN(41)-20)))
	}
}

func wildLimit(r *rand.Rand, l train.Limit) train.Limit {
	return grown(l, units.Length(math.Abs(float64(wild(r, 1)))))
}

// What cannot be planned cannot be shimmed either, and is refused alike.
func TestExtremeNumbersOnShims(t *testing.T) {
	refused := map[string]int{}
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 19))
		tr := job{machines: 2, scale: 1, perPlane: r.IntN(2) == 0}.draw(r)
		tr.Joints[0].Limits.Offset = max(nm, wild(r, tr.Joints[0].Limits.Offset))
		distort(r, &tr.Joints[0].Found.Value)
		for i := range tr.Machines {
			for k := range tr.Machines[i].Feet {
				f := &tr.Machines[i].Feet[k]
				f.Vertical, f.Horizontal = wildLimit(r, f.Vertical), wildLimit(r, f.Horizontal)
				f.Under = []train.Pack{{Name: "left", Now: []shims.Piece{{Marked: mm, Count: 2}}}}
			}
		}
		w := train.Work(seed % 3)
		_, without := planOrPanic(tr, w)
		_, err := tr.PlanShims(w, shims.CommonMetric(2), shims.Rule{Nodes: 3000})
		if err != nil && units.Faults(err) == nil || without != nil && err == nil {
			t.Errorf("seed %d: %v without shims, %v with them", seed, without, err)
		}
		for _, f := range units.Faults(err) {
			refused[string(f.Code)+" "+f.Path]++
		}
	}
	if refused["unreachable /machines"] == 0 {
		t.Errorf("all of them came to an answer: %v", refused)
	}
}
