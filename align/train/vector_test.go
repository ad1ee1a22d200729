package train_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align/train"
)

// Where couplings are judged by the length of a vector, no plan betters the one
// given: a program in exact rationals that allows more than the limits do, for it
// holds the items in a few directions alone, has no better optimum.
func TestPlansAreOptimalTogether(t *testing.T) {
	rows := []struct{ machines, each int }{{2, 15}, {3, 2}, {4, 1}}
	var worst gaps
	for _, row := range rows {
		for _, j := range perPlaneJobs(row.machines) {
			j.perPlane = false
			for seed := range row.each {
				if testing.Short() && (seed > 1 || row.machines > 3) {
					break
				}
				checkTogether(t, j, uint64(seed), &worst)
			}
		}
	}
	t.Logf("%+v", worst)
}

// gaps are the largest seen, as shares of the ratio.
type gaps struct {
	plans, offTarget int
	bound, ratio     float64
}

func checkTogether(t *testing.T, j job, seed uint64, worst *gaps) {
	t.Helper()
	tr := j.draw(rand.New(rand.NewPCG(seed, uint64(100+j.machines))))
	for w := train.TotalTravel; w <= train.LargestMove; w++ {
		name := fmt.Sprint(j, " seed ", seed, " ", w)
		p, err := tr.Plan(w)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		worst.plans++
		checkConsistent(t, name, &tr, p)
		if onTarget := newOracle(&tr, true).reaches() && newOracle(&tr, false).reaches(); onTarget != (p.Reach == train.OnTarget) {
			t.Errorf("%s: reach %v, and targets can be reached: %v", name, p.Reach, onTarget)
		}
		if p.Reach == train.OnTarget {
			continue // each plane by itself, as tested there
		}
		worst.offTarget++
		o := newJoined(&tr)
		tangents := o.tangents(p)
		least := o.ratioBound(tangents)
		worst.bound = max(worst.bound, share(p.Ratio-p.Bound, p.Ratio))
		worst.ratio = max(worst.ratio, share(p.Ratio-least, p.Ratio))
		if p.Ratio-p.Bound > 1e-3*p.Ratio+rounding || p.Ratio-least > 1e-3*p.Ratio+rounding {
			t.Errorf("%s: ratio %v with bound %v; none betters %v", name, p.Ratio, p.Bound, least)
		}
		if p.Bound > p.Ratio*(1+1e-9) || least > p.Ratio*(1+1e-9)+1e-12 {
			t.Errorf("%s: ratio %v below its bound %v or %v", name, p.Ratio, p.Bound, least)
		}
	}
}

func share(part, whole float64) float64 {
	if whole < 1e-3 {
		return 0 // on the target of all that is judged
	}
	return part / whole
}
