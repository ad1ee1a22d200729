package train_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// rounding is how far the answers of the planner may be from the exact ones, as a
// share: it eases what it holds by less than a part in a million, to leave itself
// room to turn in.
const rounding = 2e-6

// perPlaneJobs are trains whose planes are independent, of every awkward sort.
func perPlaneJobs(machines int) []job {
	plain := job{machines: machines, perPlane: true, scale: 1}
	with := func(change func(*job)) job { j := plain; change(&j); return j }
	return []job{
		plain,
		with(func(j *job) { j.alike = true }),
		with(func(j *job) { j.crowded = true }),
		with(func(j *job) { j.away = true }),
		with(func(j *job) { j.scale = 1e-3 }),
		with(func(j *job) { j.scale = 1e3 }),
	}
}

// Where each plane is judged by itself, the plan is as good as the best in exact
// rationals: in reach, in the worst ratio, and in the least work within it.
func TestPlansAreOptimalPerPlane(t *testing.T) {
	rows := []struct{ machines, each int }{{2, 40}, {3, 12}, {4, 4}, {5, 1}}
	plans := 0
	for _, row := range rows {
		for _, j := range perPlaneJobs(row.machines) {
			for seed := range row.each {
				if testing.Short() && (seed > 1 || row.machines > 3) {
					break
				}
				plans += checkOptimal(t, j, uint64(seed))
			}
		}
	}
	t.Log(plans, "whole plans compared")
}

func checkOptimal(t *testing.T, j job, seed uint64) (plans int) {
	t.Helper()
	return checkTrain(t, fmt.Sprint(j, " seed ", seed), j.draw(rand.New(rand.NewPCG(seed, uint64(j.machines)))))
}

func checkTrain(t *testing.T, of string, tr train.Train) (plans int) {
	t.Helper()
	exact := [2]exactPlane{solvePlane(&tr, true), solvePlane(&tr, false)}
	for w := train.TotalTravel; w <= train.LargestMove; w++ {
		name := fmt.Sprint(of, " ", w)
		p, err := tr.Plan(w)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		plans++
		checkConsistent(t, name, &tr, p)
		checkReach(t, name, p, exact)
		for plane, e := range exact {
			checkPlane(t, name, &tr, p, plane == 0, e, w)
		}
	}
	return plans
}

// exactPlane is the best that can be had in one plane.
type exactPlane struct {
	reaches               bool
	ratio                 float64
	travel, travelEased   float64 // mm; eased: with a hair more ratio
	largest, largestEased float64
}

func solvePlane(tr *train.Train, side bool) exactPlane {
	o := newOracle(tr, side)
	if o.reaches() {
		e := exactPlane{reaches: true, travel: float(o.travel(o.targetRows())), largest: float(o.largest(o.targetRows()))}
		e.travelEased, e.largestEased = e.travel, e.largest
		return e
	}
	ratio, result := o.ratio()
	eased := new(big.Rat).Add(ratio, new(big.Rat).Mul(new(big.Rat).SetFloat64(rounding), new(big.Rat).Add(rat(1), ratio)))
	return exactPlane{
		ratio:  float(ratio, result),
		travel: float(o.travel(o.levelRows(ratio))), travelEased: float(o.travel(o.levelRows(eased))),
		largest: float(o.largest(o.levelRows(ratio))), largestEased: float(o.largest(o.levelRows(eased))),
	}
}

func float(x *big.Rat, result outcome) float64 {
	if result != solved {
		panic(fmt.Sprint("the oracle came to outcome ", result))
	}
	f, _ := x.Float64()
	return f
}

func checkReach(t *testing.T, name string, p train.Plan, exact [2]exactPlane) {
	t.Helper()
	want := train.OutOfReach
	worst := max(exact[0].ratio, exact[1].ratio)
	switch {
	case exact[0].reaches && exact[1].reaches:
		want = train.OnTarget
	case worst <= 1:
		want = train.WithinLimits
	}
	if p.Reach != want && math.Abs(worst-1) > rounding {
		t.Errorf("%s: reach %v, want %v", name, p.Reach, want)
	}
	if math.Abs(p.Ratio-worst) > rounding*(1+worst) || math.Abs(p.Bound-worst) > 1e-9*(1+worst) {
		t.Errorf("%s: ratio %v with bound %v, want %v", name, p.Ratio, p.Bound, worst)
	}
	for _, w := range p.Warnings {
		if w.Code == units.Suspect {
			t.Errorf("%s: warns %v", name, w.Error())
		}
	}
}

// checkPlane compares the work of one plane with the least of all plans that are as
// good, and as the plan may be a hair better or worse, with both.
func checkPlane(t *testing.T, name string, tr *train.Train, p train.Plan, side bool, e exactPlane, w train.Work) {
	t.Helper()
	moves := planeMoves(p, side)
	travel, largest := 0.0, 0.0
	for _, by := range moves {
		travel += math.Abs(by)
		largest = max(largest, math.Abs(by))
	}
	got, most, least := travel, e.travel, e.travelEased
	if w == train.LargestMove {
		got, most, least = largest, e.largest, e.largestEased
	}
	slack := float64(len(moves))*0.5e-6 + rounding*(scaleOf(tr)+most)
	if got > most+slack || got < least-slack {
		t.Errorf("%s: side %v: %v is %.9f mm, want %.9f to %.9f mm", name, side, w, got, least, most)
	}
	if math.Abs(planeRatio(tr, p, side)-e.ratio) > rounding*(1+e.ratio) {
		t.Errorf("%s: side %v: ratio %.9f, want %.9f", name, side, planeRatio(tr, p, side), e.ratio)
	}
}

// scaleOf is a size of the moves that the job is about, in millimetres, which a hair
// is a share of: the farthest that a foot stands from where the first machine points,
// or that a limit makes it go.
func scaleOf(tr *train.Train) float64 {
	var size units.Length
	var line align.Centreline
	for i, m := range tr.Machines {
		if i > 0 {
			j := tr.Joints[i-1]
			line = line.Plus(j.Off().Value.About(-j.At))
		}
		for _, f := range m.Feet {
			w := line.At(f.X)
			size = max(size, w.Horizontal, -w.Horizontal, w.Vertical, -w.Vertical)
			for _, l := range []train.Limit{f.Horizontal, f.Vertical} {
				low, _ := l.Low()
				high, _ := l.High()
				size = max(size, low, -high)
			}
		}
	}
	return float64(size / mm)
}

func planeOf(c align.Centreline, side bool) align.Line {
	if side {
		return c.Horizontal
	}
	return c.Vertical
}

// planeMoves lists the moves of all feet in one plane, in millimetres.
func planeMoves(p train.Plan, side bool) []float64 {
	var list []float64
	for _, s := range p.Machines {
		for _, f := range s.Feet {
			by := f.By.Vertical
			if side {
				by = f.By.Horizontal
			}
			list = append(list, float64(by/mm))
		}
	}
	return list
}

// planeRatio is the worst ratio of one plane by itself, from what the plan says is
// left.
func planeRatio(tr *train.Train, p train.Plan, side bool) float64 {
	worst := 0.0
	for i, j := range tr.Joints {
		for _, r := range jointRatios(j, planeOf(p.Joints[i].After.Value, side)) {
			worst = max(worst, math.Abs(r))
		}
	}
	return worst
}

// jointRatios are the items of a coupling in one plane over their limits.
func jointRatios(j train.Joint, l align.Line) []float64 {
	if span := j.Coupling.Span; span != 0 {
		mean, across := float64(l.Slope)/2, float64(l.Offset/span)
		return []float64{(across + mean) / float64(j.Limits.Flex), (mean - across) / float64(j.Limits.Flex)}
	}
	var list []float64
	if j.Limits.Offset != 0 {
		list = append(list, float64(l.Offset/j.Limits.Offset))
	}
	if j.Limits.Slope != 0 {
		list = append(list, float64(l.Slope/j.Limits.Slope))
	}
	return list
}

// checkConsistent recomputes all that follows from the moves of a plan.
func checkConsistent(t *testing.T, name string, tr *train.Train, p train.Plan) {
	t.Helper()
	for i, m := range tr.Machines {
		s := p.Machines[i]
		by := s.After.Value.Minus(s.Before.Value)
		if m.Name == tr.Reference && by != (align.Centreline{}) {
			t.Errorf("%s: the reference moves by %v", name, by)
		}
		for k, f := range m.Feet {
			checkFoot(t, name, f, by.At(f.X), s.Feet[k].By, m.Name == tr.Reference)
		}
	}
	worst := 0.0
	for j, joint := range tr.Joints {
		moved := movesOf(p, j+1).Minus(movesOf(p, j)).About(joint.At)
		want := joint.Off().Value.Plus(moved)
		left := p.Joints[j].After.Value
		slip := left.Minus(want).At(joint.Coupling.Span / 2)
		if slip.Size() > 1e-3*nm+1e-9*want.At(0).Size()+1e-12*joint.At || left.Minus(want).Tilt().Size() > 1e-12 {
			t.Errorf("%s: %v is left at coupling %d, want %v", name, left, j, want)
		}
		worst = max(worst, worstItem(joint, left))
	}
	if p.Reach != train.OnTarget && math.Abs(worst-p.Ratio) > 1e-9*max(1, worst) {
		t.Errorf("%s: ratio %v, but %v is left", name, p.Ratio, worst)
	}
	if p.Reach == train.OnTarget && worst > 1e-6 {
		t.Errorf("%s: on target, and yet a ratio of %v is left", name, worst)
	}
	checkSums(t, name, p)
}

func movesOf(p train.Plan, i int) align.Centreline {
	return p.Machines[i].After.Value.Minus(p.Machines[i].Before.Value)
}

// checkFoot asks that the move is that of the machine's line to a nanometre, and
// within the limits of the foot.
func checkFoot(t *testing.T, name string, f train.Foot, line, by align.Vector, reference bool) {
	t.Helper()
	allowed := 0.6*nm + units.Length(1e-7)*max(line.Size(), 0) // a limit kept by a hair is kept to the digit
	if max(line.Horizontal-by.Horizontal, by.Horizontal-line.Horizontal, line.Vertical-by.Vertical, by.Vertical-line.Vertical) > allowed {
		t.Errorf("%s: %s moves by %v, its machine there by %v", name, f.Name, by, line)
	}
	if reference {
		return
	}
	if !keeps(f.Horizontal, by.Horizontal) || !keeps(f.Vertical, by.Vertical) {
		t.Errorf("%s: %s moves by %v, beyond %v or %v", name, f.Name, by, f.Horizontal, f.Vertical)
	}
}

func keeps(l train.Limit, by units.Length) bool {
	low, hasLow := l.Low()
	high, hasHigh := l.High()
	return (!hasLow || by >= low) && (!hasHigh || by <= high)
}

// worstItem is the largest ratio at a coupling, planes together or apart.
func worstItem(j train.Joint, left align.Centreline) float64 {
	side, height := jointRatios(j, left.Horizontal), jointRatios(j, left.Vertical)
	worst := 0.0
	for i := range side {
		if j.Limits.PerPlane {
			worst = max(worst, math.Abs(side[i]), math.Abs(height[i]))
		} else {
			worst = max(worst, math.Hypot(side[i], height[i]))
		}
	}
	return worst
}

func checkSums(t *testing.T, name string, p train.Plan) {
	t.Helper()
	var travel, largest units.Length
	moves := 0
	for _, side := range []bool{true, false} {
		for _, by := range planeMoves(p, side) {
			size := units.Length(math.Abs(by)) * mm
			if size < train.LeastStep {
				continue
			}
			travel += size
			largest = max(largest, size)
			moves++
		}
	}
	if d := travel - p.Travel; max(d, -d) > 0.01*nm+1e-12*travel || max(largest-p.Largest, p.Largest-largest) > 0.01*nm+1e-12*largest || moves != p.Moves || moves != len(p.Steps) {
		t.Errorf("%s: travel %v, largest %v, %d moves; the feet make it %v, %v, %d", name, p.Travel, p.Largest, p.Moves, travel, largest, moves)
	}
}
