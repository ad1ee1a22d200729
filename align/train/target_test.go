package train_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// On target beside a machine that stays nothing is left to choose: every machine moves
// by what was found between it and the reference, less the target, whatever the work is.
// Derived here: the couplings add up along the train.
func TestOnTargetBesideReference(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 43))
		tr := roomier(job{machines: 2 + r.IntN(5), perPlane: seed%2 == 0, crowded: seed%4 > 1, scale: 1}.draw(r), 100*mm)
		reference := r.IntN(len(tr.Machines))
		tr.Reference = tr.Machines[reference].Name
		tr.Machines[reference].Feet[0].Vertical = train.AtLeast(1 * mm) // does not count
		for w := train.TotalTravel; w <= train.FewestFeet; w++ {
			p, name := plan(t, tr, w), fmt.Sprint(seed, " ", w)
			if p.Reach != train.OnTarget || !p.Proven {
				t.Fatalf("%s: %v, proven %v", name, p.Reach, p.Proven)
			}
			for i, m := range tr.Machines {
				for k, f := range m.Feet {
					by, want := p.Machines[i].Feet[k].By, followed(&tr, reference, i, f.X)
					side, height := by.Horizontal-want.Horizontal, by.Vertical-want.Vertical
					if max(side, -side, height, -height) > 0.51*nm {
						t.Errorf("%s: %s of %s moves by %v, want %v", name, f.Name, m.Name, by, want)
					}
				}
			}
		}
	}
}

// followed is what machine i moves by at x for all couplings between it and the reference
// to come to their targets.
func followed(tr *train.Train, reference, i int, x units.Length) (by align.Vector) {
	for j := min(i, reference); j < max(i, reference); j++ {
		off, sign := tr.Joints[j].Off().Value.At(x-tr.Joints[j].At), units.Length(1)
		if i > reference {
			sign = -1
		}
		by.Horizontal += sign * off.Horizontal
		by.Vertical += sign * off.Vertical
	}
	return by
}

// Where no machine stays the train moves as one body beyond that: least work and reach
// are those of exact rationals, with limits that a line just reaches or just does not.
func TestOnTargetWithoutReference(t *testing.T) {
	reached := 0
	for seed := range uint64(40) {
		if testing.Short() && seed > 9 {
			break
		}
		r := rand.New(rand.NewPCG(seed, 44))
		tr := roomier(job{machines: 2 + r.IntN(3), perPlane: true, crowded: seed%4 == 3, scale: 1}.draw(r), units.Length(r.IntN(3))*mm)
		tr.Reference = ""
		checkTrain(t, fmt.Sprint("seed ", seed), tr)
		if plan(t, tr, train.TotalTravel).Reach == train.OnTarget {
			reached++
		}
	}
	t.Log(reached, "on target")
	if reached < 3 {
		t.Errorf("%d trains alone came on target", reached)
	}
}

// roomier is the train with all limits wider by so much at each end.
func roomier(tr train.Train, by units.Length) train.Train {
	tr = copied(tr)
	for i := range tr.Machines {
		for k := range tr.Machines[i].Feet {
			f := &tr.Machines[i].Feet[k]
			for _, l := range []*train.Limit{&f.Vertical, &f.Horizontal} {
				if *l != (train.Limit{}) {
					*l = widened(widened(*l, train.Low, by), train.High, by)
				}
			}
		}
	}
	return tr
}
