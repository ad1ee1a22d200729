package train_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align/train"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

var benchmarked = []int{2, 4, 6, 10}

func benchmarkTrain(machines int, planes bool) train.Train {
	return job{machines: machines, perPlane: planes, scale: 1}.draw(rand.New(rand.NewPCG(1, 1)))
}

// A whole plan, both planes, that comes out of reach: reach, ratio, least work, least
// squares and the limits in the way.
func BenchmarkPlan(b *testing.B) {
	for _, machines := range benchmarked {
		for _, planes := range []bool{true, false} {
			tr := benchmarkTrain(machines, planes)
			b.Run(fmt.Sprintf("machines=%d/per_plane=%v", machines, planes), func(b *testing.B) { benchmarkPlan(b, tr, train.OutOfReach) })
		}
	}
}

// A whole plan of the same trains, each plane by itself: on target, as the feet are free,
// with a machine that stays and without one; within limits, as those of the couplings are
// as wide as it takes.
func BenchmarkPlanInReach(b *testing.B) {
	for _, machines := range benchmarked {
		tr := benchmarkTrain(machines, true)
		tr.Reference = tr.Machines[machines/2].Name
		b.Run(fmt.Sprintf("machines=%d/on_target", machines), func(b *testing.B) { benchmarkPlan(b, unbound(tr), train.OnTarget) })
		within := admitted(b, tr)
		b.Run(fmt.Sprintf("machines=%d/within_limits", machines), func(b *testing.B) { benchmarkPlan(b, within, train.WithinLimits) })
		tr.Reference = ""
		b.Run(fmt.Sprintf("machines=%d/on_target/no_reference", machines), func(b *testing.B) { benchmarkPlan(b, unbound(tr), train.OnTarget) })
	}
}

func benchmarkPlan(b *testing.B, tr train.Train, reach train.Reach) {
	b.ReportAllocs()
	for b.Loop() {
		if p, err := tr.Plan(train.TotalTravel); err != nil || p.Reach != reach {
			b.Fatal(p.Reach, err)
		}
	}
}

// unbound is a train whose feet are free but for what they stand on.
func unbound(tr train.Train) train.Train {
	tr.Machines = slices.Clone(tr.Machines)
	for i := range tr.Machines {
		m := &tr.Machines[i]
		m.Feet = slices.Clone(m.Feet)
		for k := range m.Feet {
			m.Feet[k].Vertical, m.Feet[k].Horizontal = train.AtLeast(-20*mm), train.Limit{}
		}
	}
	return tr
}

// admitted is a train whose couplings have limits so wide that it comes within them.
func admitted(b *testing.B, tr train.Train) train.Train {
	tr.Joints = slices.Clone(tr.Joints)
	for range 20 {
		p := plan(b, tr, train.TotalTravel)
		if p.Reach == train.WithinLimits {
			return tr
		}
		for i := range tr.Joints {
			l := &tr.Joints[i].Limits
			l.Offset, l.Slope, l.Flex = 2*l.Offset, 2*l.Slope, 2*l.Flex
		}
	}
	b.Fatal("no limits are wide enough")
	return tr
}

// The least worst ratio alone of both planes, by a general simplex method, for
// comparison: in millimetres, for with other units it often comes to no answer.
func BenchmarkGonumRatio(b *testing.B) {
	for _, machines := range benchmarked {
		tr := benchmarkTrain(machines, true)
		sides := [2]*oracle{newOracle(&tr, true), newOracle(&tr, false)}
		b.Run(fmt.Sprintf("machines=%d", machines), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				for _, o := range sides {
					if _, err := gonumRatio(o); err != nil {
						b.Skip(err)
					}
				}
			}
		})
	}
}

// The two oracles of the ratio agree, so that a mistake in either would show.
func TestOraclesAgree(t *testing.T) {
	for _, machines := range []int{2, 3, 5} {
		tr := benchmarkTrain(machines, true)
		for _, side := range []bool{true, false} {
			o := newOracle(&tr, side)
			exact := float(o.ratio())
			if got, err := gonumRatio(o); err != nil || math.Abs(got-exact) > 1e-9*(1+exact) {
				t.Errorf("%d machines: ratio %v (%v), in exact rationals %v", machines, got, err, exact)
			}
		}
	}
}

// gonumRatio turns the program of the least worst ratio into the standard form: two
// variables in the place of each that is free, and a slack a row.
func gonumRatio(o *oracle) (float64, error) {
	var rows []rationalRow
	rows = append(rows, o.stopRows...)
	for _, l := range o.parts {
		for _, sign := range []float64{+1, -1} {
			row := atMost(newLine(o.unknowns).add(rat(sign), l), rat(0))
			row.of = append(row.of, rat(-1))
			rows = append(rows, row)
		}
	}
	var used []int // the reference does not move, and a column of zeros is refused
	for k := range o.unknowns {
		for _, r := range rows {
			if r.of[k].Sign() != 0 {
				used = append(used, k)
				break
			}
		}
	}
	free := len(used)
	columns := 2*free + 1 + len(rows)
	a := mat.NewDense(len(rows), columns, nil)
	most := make([]float64, len(rows))
	for i, r := range rows {
		most[i], _ = r.most.Float64()
		for k, of := range used {
			share, _ := r.of[of].Float64()
			a.Set(i, 2*k, share)
			a.Set(i, 2*k+1, -share)
		}
		if len(r.of) > o.unknowns {
			a.Set(i, 2*free, -1)
		}
		a.Set(i, 2*free+1+i, 1)
	}
	cost := make([]float64, columns)
	cost[2*free] = 1
	ratio, _, err := lp.Simplex(cost, a, most, 1e-10, nil)
	if math.IsNaN(ratio) && err == nil {
		err = lp.ErrInfeasible
	}
	return ratio, err
}
