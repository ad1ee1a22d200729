package train_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
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
	for _, seed := range slices.Concat(noAnswers, upTo(300)) {
		tr := extreme(seed)
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

// extreme is a train with numbers that no machine has.
func extreme(seed uint64) train.Train {
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
	return tr
}

// upTo lists the numbers below n.
func upTo(n uint64) (list []uint64) {
	for i := range n {
		list = append(list, i)
	}
	return list
}

// noAnswers are extremes where some solver comes to no answer: to the openings, to the
// best ratio with a reference that is set free, and, on target, to the least work.
var noAnswers = []uint64{433, 1328, 753, 2086}

// A plane that is on target stays so where no solver tells the least work of it, and the
// plan says that less may do.
func TestTargetsComeBeforeTheLeastWork(t *testing.T) {
	for _, seed := range noAnswers[2:] {
		p, err := planOrPanic(extreme(seed), train.Work(seed%3))
		suspect := slices.ContainsFunc(p.Warnings, func(f units.Fault) bool { return f.Code == units.Suspect && f.Path == "/moves" })
		if err != nil || p.Proven || !suspect {
			t.Errorf("seed %d: proven %v, %v, %v", seed, p.Proven, p.Warnings, err)
		}
		aside, up := true, true
		for _, j := range p.Joints {
			aside = aside && isNothing(j.After.Value.Horizontal)
			up = up && isNothing(j.After.Value.Vertical)
		}
		if !aside && !up {
			t.Errorf("seed %d: neither plane is on target: %+v", seed, p.Joints)
		}
	}
}

// isNothing tells whether a line is zero to a nanometre, also over a metre.
func isNothing(l align.Line) bool {
	return l.Offset.Round(nm) == 0 && l.Slope.Over(1000*mm).Round(nm) == 0
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

// Nine hundred kilometres from the first coupling its slope is so much that rounding leaves
// the second off its target, seen from machines as small as these. No solver comes to an
// answer with such numbers either, and the train is not said to be on target.
func TestRoundingIsNotOnTarget(t *testing.T) {
	const far = 9e8 * mm
	tr := train.Train{
		Machines: []train.Machine{
			machine("motor", -2*mm, -1*mm),
			machine("shaft", 1*mm, 2*mm),
			machine("pump", far+1*mm, far+2*mm),
		},
		Joints: []train.Joint{
			{At: 0, Found: height(0, units.Slope(1)/3), Limits: perPlane},
			{At: far, Found: height(100*um, 0), Limits: perPlane},
		},
		Reference: "motor",
	}
	_, err := planOrPanic(tr, train.TotalTravel)
	refuses(t, err, units.Unreachable, "/machines")
}
