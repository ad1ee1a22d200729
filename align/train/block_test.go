package train_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Each limit that is said to stand in the way does: opened by what is told the train
// comes within its limits, opened by a micrometre less it does not. A limit that is
// not told helps nothing if it is opened altogether.
func TestBlocksAreInTheWay(t *testing.T) {
	counted := map[string]int{}
	for _, machines := range []int{2, 3, 4} {
		for _, j := range blockJobs(machines) {
			for seed := range uint64(3) {
				if testing.Short() && (seed > 0 || machines > 3) {
					break
				}
				checkBlocks(t, j, seed, counted)
			}
		}
	}
	t.Log(counted)
}

func blockJobs(machines int) []job {
	jobs := uniqueJobs(machines)
	vectors := len(jobs)
	for _, j := range jobs[:vectors] {
		if !j.perPlane {
			j.perPlane = true
			jobs = append(jobs, j)
		}
	}
	return jobs
}

func checkBlocks(t *testing.T, j job, seed uint64, counted map[string]int) {
	t.Helper()
	tr := j.draw(rand.New(rand.NewPCG(seed, 13)))
	name := fmt.Sprint(j, " seed ", seed)
	p, err := tr.Plan(train.TotalTravel)
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	if (len(p.InTheWay) > 0) != (p.Reach == train.OutOfReach) && math.Abs(p.Ratio-1) > rounding {
		t.Errorf("%s: %v with %d limits in the way", name, p.Reach, len(p.InTheWay))
	}
	if p.Reach != train.OutOfReach {
		return
	}
	freed := loosened(tr)
	for _, b := range everyBlock(freed) {
		if ratioOf(&tr, p, b.Plane) <= 1+rounding {
			continue // the other plane is out
		}
		told, ok := find(p.InTheWay, b)
		switch {
		case !ok:
			counted["not told"]++
			if now := ratioIn(t, opened(freed, b, 1e3*mm*units.Length(j.scale)), b.Plane); now < ratioOf(&tr, p, b.Plane)*(1-rounding) {
				t.Errorf("%s: opening %v, which is not told, brings the ratio from %v to %v", name, b, ratioOf(&tr, p, b.Plane), now)
			}
		case told.Alone > 0:
			counted["alone"]++
			checkAlone(t, name, freed, told)
		default:
			counted["not alone"]++
			if now := ratioIn(t, opened(freed, b, 1e3*mm*units.Length(j.scale)), b.Plane); now < 1-rounding {
				t.Errorf("%s: %v alone is said not to help, and does: %v", name, told, now)
			}
		}
	}
	checkAllOpened(t, name, tr, p, j.perPlane)
}

// loosened is the train whose reference may move as far as its limits let it, and
// they do not let it.
func loosened(tr train.Train) train.Train {
	tr = copied(tr)
	for i := range tr.Machines {
		for k := range tr.Machines[i].Feet {
			if f := &tr.Machines[i].Feet[k]; tr.Machines[i].Name == tr.Reference {
				f.Horizontal, f.Vertical = train.Fixed(), train.Fixed()
			}
		}
	}
	tr.Reference = ""
	return tr
}

func everyBlock(tr train.Train) []train.Block {
	var list []train.Block
	for _, m := range tr.Machines {
		for _, f := range m.Feet {
			for plane, l := range map[tolerance.Plane]train.Limit{tolerance.Horizontal: f.Horizontal, tolerance.Vertical: f.Vertical} {
				if _, ok := l.Low(); ok {
					list = append(list, train.Block{Machine: m.Name, Foot: f.Name, Plane: plane, Side: train.Low})
				}
				if _, ok := l.High(); ok {
					list = append(list, train.Block{Machine: m.Name, Foot: f.Name, Plane: plane, Side: train.High})
				}
			}
		}
	}
	return list
}

// find looks for the block whatever its openings are.
func find(list []train.Block, b train.Block) (train.Block, bool) {
	for _, told := range list {
		if told.Machine == b.Machine && told.Foot == b.Foot && told.Plane == b.Plane && told.Side == b.Side {
			return told, true
		}
	}
	return train.Block{}, false
}

// opened is the train with one end of a limit opened.
func opened(tr train.Train, b train.Block, by units.Length) train.Train {
	tr = copied(tr)
	for i := range tr.Machines {
		for k := range tr.Machines[i].Feet {
			f := &tr.Machines[i].Feet[k]
			if tr.Machines[i].Name != b.Machine || f.Name != b.Foot {
				continue
			}
			if b.Plane == tolerance.Horizontal {
				f.Horizontal = widened(f.Horizontal, b.Side, by)
			} else {
				f.Vertical = widened(f.Vertical, b.Side, by)
			}
		}
	}
	return tr
}

func widened(l train.Limit, side train.Side, by units.Length) train.Limit {
	low, hasLow := l.Low()
	high, hasHigh := l.High()
	if side == train.Low {
		low -= by
	} else {
		high += by
	}
	switch {
	case hasLow && hasHigh:
		return train.Between(low, high)
	case hasLow:
		return train.AtLeast(low)
	}
	return train.AtMost(high)
}

// ratioIn plans the train and returns the worst ratio of a plane, or of both
// together.
func ratioIn(t *testing.T, tr train.Train, plane tolerance.Plane) float64 {
	t.Helper()
	p, err := tr.Plan(train.TotalTravel)
	if err != nil {
		t.Error(err)
		return math.NaN()
	}
	return ratioOf(&tr, p, plane)
}

func ratioOf(tr *train.Train, p train.Plan, plane tolerance.Plane) float64 {
	if !tr.Joints[0].Limits.PerPlane {
		return p.Ratio
	}
	return planeRatio(tr, p, plane == tolerance.Horizontal)
}

func checkAlone(t *testing.T, name string, tr train.Train, b train.Block) {
	t.Helper()
	wide, narrow := opened(tr, b, b.Alone), opened(tr, b, max(0, b.Alone-um))
	if now := ratioIn(t, wide, b.Plane); !(now <= 1+rounding) {
		t.Errorf("%s: %v opened leaves a ratio of %v", name, b, now)
	}
	if now := ratioIn(t, narrow, b.Plane); !(now > 1) {
		t.Errorf("%s: %v opened by a micrometre less already brings it to %v", name, b, now)
	}
}

// checkAllOpened opens all that is told at once, the reference staying, and compares
// the sum of openings with the least in exact rationals.
func checkAllOpened(t *testing.T, name string, tr train.Train, p train.Plan, planes bool) {
	t.Helper()
	all := tr
	sums := map[tolerance.Plane]float64{}
	for _, b := range p.InTheWay {
		if b.Together > 0 {
			all = opened(all, b, b.Together)
			sums[b.Plane] += float64(b.Together / mm)
		}
	}
	if q, err := all.Plan(train.TotalTravel); err != nil || q.Ratio > 1+rounding {
		t.Errorf("%s: with all opened together the ratio is %v (%v)", name, q.Ratio, err)
	}
	if !planes {
		return
	}
	for plane, side := range map[tolerance.Plane]bool{tolerance.Horizontal: true, tolerance.Vertical: false} {
		want := newOracle(&tr, side).opening()
		if math.Abs(sums[plane]-want) > 1e-4*max(1e-3, scaleOf(&tr)) {
			t.Errorf("%s: openings of plane %v come to %.9f mm together, want %.9f", name, plane, sums[plane], want)
		}
	}
}

// opening is the least sum of openings that lets every coupling within its limits.
func (o *oracle) opening() float64 {
	n := len(o.stopRows)
	rows := o.levelRows(rat(1))
	for i := range rows {
		for k := range n {
			share := rat(0)
			if i == k { // the first rows are the stops
				share = rat(-1)
			}
			rows[i].of = append(rows[i].of[:len(rows[i].of):len(rows[i].of)], share)
		}
	}
	for k := range n {
		row := newLine(o.unknowns + n)
		row.of[o.unknowns+k] = rat(-1)
		rows = append(rows, atMost(row, new(big.Rat)))
	}
	return float(o.minimum(n, rows))
}
