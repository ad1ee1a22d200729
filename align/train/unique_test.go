package train_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// agreed is how near two correct plans of one job are in every move, as the comment of
// Plan has it.
func agreed(j job) units.Length {
	if j.perPlane {
		return 10 * units.Nanometre
	}
	return 5 * um
}

// told is one way to tell the same job, and how its plan reads in the first.
type told struct {
	name  string
	train func(train.Train) train.Train
	back  func(by align.Vector) align.Vector
}

func same(by align.Vector) align.Vector { return by }

var tellings = []told{
	{"feet in another order", permuted, same},
	{"x from elsewhere", shifted, same},
	{"seen from the other end", reversed, func(by align.Vector) align.Vector {
		return align.Vector{Horizontal: -by.Horizontal, Vertical: by.Vertical}
	}},
	{"planes exchanged", exchanged, func(by align.Vector) align.Vector {
		return align.Vector{Horizontal: by.Vertical, Vertical: by.Horizontal}
	}},
	{"a thousand times as large", enlarged, func(by align.Vector) align.Vector {
		return align.Vector{Horizontal: by.Horizontal / 1000, Vertical: by.Vertical / 1000}
	}},
}

// However a job is told, the moves are the same to what is agreed: the plan is the one
// of least squares among those of least work, which only one is.
func TestPlanIsUnique(t *testing.T) {
	for _, machines := range []int{2, 3, 4} {
		for _, j := range uniqueJobs(machines) {
			for seed := range uint64(3) {
				if testing.Short() && (seed > 1 || machines > 3) {
					break
				}
				tr := j.draw(rand.New(rand.NewPCG(seed, 7)))
				for w := train.TotalTravel; w <= train.LargestMove; w++ {
					name := fmt.Sprint(j, " seed ", seed, " ", w)
					first, err := tr.Plan(w)
					if err != nil {
						t.Errorf("%s: %v", name, err)
						continue
					}
					for _, other := range tellings {
						compare(t, name, tr, first, other, agreed(j))
					}
				}
			}
		}
	}
}

func uniqueJobs(machines int) []job {
	plain := job{machines: machines, scale: 1}
	alike, crowded, away, planes := plain, plain, plain, plain
	alike.alike, crowded.crowded, away.away, planes.perPlane = true, true, true, true
	return []job{plain, alike, crowded, away, planes}
}

func compare(t *testing.T, name string, tr train.Train, first train.Plan, other told, within units.Length) {
	t.Helper()
	p, err := other.train(tr).Plan(first.Work)
	if err != nil {
		t.Errorf("%s, %s: %v", name, other.name, err)
		return
	}
	if math.Abs(p.Ratio-first.Ratio) > rounding*(1+first.Ratio) || p.Reach != first.Reach {
		t.Errorf("%s, %s: %v at ratio %v, was %v at %v", name, other.name, p.Reach, p.Ratio, first.Reach, first.Ratio)
	}
	moves := movesByName(p)
	for foot, by := range movesByName(first) {
		got := other.back(moves[foot])
		if d := got; max(d.Horizontal-by.Horizontal, by.Horizontal-d.Horizontal, d.Vertical-by.Vertical, by.Vertical-d.Vertical) > within {
			t.Errorf("%s, %s: %s moves by %v, was %v", name, other.name, foot, got, by)
		}
	}
}

func movesByName(p train.Plan) map[string]align.Vector {
	moves := map[string]align.Vector{}
	for _, s := range p.Machines {
		for _, f := range s.Feet {
			moves[s.Machine+"/"+f.Foot.Name] = f.By
		}
	}
	return moves
}

// copied is the train with lists of its own.
func copied(tr train.Train) train.Train {
	tr.Machines, tr.Joints = slices.Clone(tr.Machines), slices.Clone(tr.Joints)
	for i := range tr.Machines {
		tr.Machines[i].Feet = slices.Clone(tr.Machines[i].Feet)
	}
	return tr
}

func permuted(tr train.Train) train.Train {
	tr = copied(tr)
	for i := range tr.Machines {
		slices.Reverse(tr.Machines[i].Feet)
	}
	return tr
}

// mapped changes every station of the train.
func mapped(tr train.Train, at func(units.Length) units.Length) train.Train {
	tr = copied(tr)
	for i := range tr.Machines {
		for k := range tr.Machines[i].Feet {
			tr.Machines[i].Feet[k].X = at(tr.Machines[i].Feet[k].X)
		}
	}
	for i := range tr.Joints {
		tr.Joints[i].At = at(tr.Joints[i].At)
	}
	return tr
}

func shifted(tr train.Train) train.Train {
	return mapped(tr, func(x units.Length) units.Length { return x - 12345*mm })
}

// reversed tells the train from its other end, where the observer then stands.
func reversed(tr train.Train) train.Train {
	tr = mapped(tr, func(x units.Length) units.Length { return -x })
	slices.Reverse(tr.Machines)
	slices.Reverse(tr.Joints)
	for i := range tr.Joints {
		j := &tr.Joints[i]
		j.Found, j.Target = j.Found.Exchanged(), j.Target.Exchanged()
	}
	for i := range tr.Machines {
		for k := range tr.Machines[i].Feet {
			f := &tr.Machines[i].Feet[k]
			f.Horizontal = mirrored(f.Horizontal)
		}
	}
	return tr
}

func mirrored(l train.Limit) train.Limit {
	low, hasLow := l.Low()
	high, hasHigh := l.High()
	switch {
	case hasLow && hasHigh:
		return train.Between(-high, -low)
	case hasLow:
		return train.AtMost(-low)
	case hasHigh:
		return train.AtLeast(-high)
	}
	return train.Limit{}
}

func exchanged(tr train.Train) train.Train {
	tr = copied(tr)
	for i := range tr.Machines {
		for k := range tr.Machines[i].Feet {
			f := &tr.Machines[i].Feet[k]
			f.Horizontal, f.Vertical = f.Vertical, f.Horizontal
		}
	}
	for i := range tr.Joints {
		for _, e := range []*align.Estimate{&tr.Joints[i].Found, &tr.Joints[i].Target} {
			e.Value.Horizontal, e.Value.Vertical = e.Value.Vertical, e.Value.Horizontal
		}
	}
	return tr
}

// enlarged makes every length a thousand times as large; slopes stay.
func enlarged(tr train.Train) train.Train {
	const times = 1000
	tr = mapped(tr, func(x units.Length) units.Length { return times * x })
	for i := range tr.Joints {
		j := &tr.Joints[i]
		j.Coupling.Span *= times
		j.Limits.Offset *= times
		for _, e := range []*align.Estimate{&j.Found, &j.Target} {
			e.Value.Horizontal.Offset *= times
			e.Value.Vertical.Offset *= times
		}
	}
	for i := range tr.Machines {
		for k := range tr.Machines[i].Feet {
			f := &tr.Machines[i].Feet[k]
			f.Horizontal, f.Vertical = grown(f.Horizontal, times), grown(f.Vertical, times)
		}
	}
	return tr
}

func grown(l train.Limit, times units.Length) train.Limit {
	low, hasLow := l.Low()
	high, hasHigh := l.High()
	switch {
	case hasLow && hasHigh:
		return train.Between(times*low, times*high)
	case hasLow:
		return train.AtLeast(times * low)
	case hasHigh:
		return train.AtMost(times * high)
	}
	return train.Limit{}
}
