package train_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// The steps go outward from the machine that stands, of a machine the heights first,
// and of each plane the larger first; every move of a foot is one of them.
func TestStepsAreInOrder(t *testing.T) {
	for seed := range uint64(60) {
		tr := job{machines: 2 + int(seed%4), perPlane: seed%2 == 0, crowded: seed%3 == 0, scale: 1}.draw(rand.New(rand.NewPCG(seed, 29)))
		p := plan(t, tr, train.Work(seed%2))
		start := standing(tr, p)
		last := train.Step{}
		for i, s := range p.Steps {
			checkStep(t, seed, tr, start, last, s, i)
			last = s
		}
	}
}

func indexOf(tr train.Train, machine string) int {
	return slices.IndexFunc(tr.Machines, func(m train.Machine) bool { return m.Name == machine })
}

// standing is the machine from which work goes outward: the reference, or the one
// whose largest move is the least.
func standing(tr train.Train, p train.Plan) int {
	if tr.Reference != "" {
		return indexOf(tr, tr.Reference)
	}
	found, least := 0, units.Length(math.Inf(1))
	for i, s := range p.Machines {
		largest := units.Length(0)
		for _, f := range s.Feet {
			largest = max(largest, f.By.Vertical, -f.By.Vertical, f.By.Horizontal, -f.By.Horizontal)
		}
		if largest < least {
			found, least = i, largest
		}
	}
	return found
}

func checkStep(t *testing.T, seed uint64, tr train.Train, start int, last, s train.Step, i int) {
	t.Helper()
	here, before := indexOf(tr, s.Machine), indexOf(tr, last.Machine)
	away := func(i int) int { return max(i-start, start-i) }
	size := func(s train.Step) units.Length { return max(s.By, -s.By) }
	want, beside := train.WhileLoose, ""
	switch {
	case last.Machine == s.Machine && last.Plane == s.Plane:
		if size(s) > size(last) {
			t.Errorf("seed %d: step %d, %v, is larger than %v before it", seed, i, s, last)
		}
	case last.Machine == s.Machine:
		want = train.HeightsAreSet
		if s.Plane != tolerance.Horizontal {
			t.Errorf("seed %d: step %d, %v, comes after %v", seed, i, s, last)
		}
	case here == start:
		want = train.StartsHere
		if i != 0 {
			t.Errorf("seed %d: step %d, %v, is not the first", seed, i, s)
		}
	default:
		want, beside = train.BesideOneThatIs, tr.Machines[here+sign(start-here)].Name
		if i > 0 && away(here) < away(before) {
			t.Errorf("seed %d: step %d, %v, is nearer to %d than %v before it", seed, i, s, start, last)
		}
	}
	if s.Why != want || s.Beside != beside || s.By == 0 {
		t.Errorf("seed %d: step %d, %v: %v %q, want %v %q", seed, i, s, s.Why, s.Beside, want, beside)
	}
}

func sign(i int) int {
	if i < 0 {
		return -1
	}
	return 1
}

// The reference stays, whatever the limits of its feet are: they do not count.
func TestReferenceStaysWhateverItsLimitsAre(t *testing.T) {
	tr := pair()
	tr.Machines[0].Feet[0].Vertical = train.Between(1*mm, 2*mm)
	tr.Machines[0].Feet[1].Horizontal = train.AtMost(-1 * mm)
	p := plan(t, tr, train.TotalTravel)
	for _, s := range p.Steps {
		if s.Machine == "motor" {
			t.Errorf("the reference is to move: %v", s)
		}
	}
	if want := 1 * mm; p.Travel != want || p.Moves != 2 {
		t.Errorf("travel %v in %d moves, want %v in 2", p.Travel, p.Moves, want)
	}
}

// What is not judged can stay off its target; a ratio of nothing is no reason for a
// warning.
func TestNoWarningWhereAllThatIsJudgedIsOnTarget(t *testing.T) {
	tr := pair()
	tr.Joints[0].Limits = tolerance.Limits{Offset: 50 * um, PerPlane: true}
	tr.Joints[0].Found = height(-500*um, milliPerMetre)
	tr.Machines[1].Feet[1].Vertical = train.Fixed() // the slope cannot come to its target as well
	for w := train.TotalTravel; w <= train.FewestFeet; w++ {
		p := plan(t, tr, w)
		if p.Reach != train.WithinLimits || p.Ratio > 1e-6 || len(p.Warnings) != 0 {
			t.Errorf("%v: %v at ratio %v with warnings %v", w, p.Reach, p.Ratio, p.Warnings)
		}
	}
}

// A step is something that a crew can do: none is asked for because the planner
// leaves itself room to turn in.
func TestNoStepIsDust(t *testing.T) {
	for _, planes := range []bool{true, false} {
		for w := train.TotalTravel; w <= train.FewestFeet; w++ {
			for _, s := range plan(t, four(planes), w).Steps {
				if max(s.By, -s.By) < 100*nm {
					t.Errorf("per plane %v, %v: %v by %v nm", planes, w, s, s.By.In(units.InNanometres))
				}
			}
		}
	}
}
