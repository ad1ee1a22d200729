package sheet_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// The last lines come out the same however a hand rounds on its way: a calculator of the
// test's own, which shares no rule with the package and reckons in the units of the
// system, rounds every line that it writes down, none of them, or some by chance.
func TestExerciseIsUnique(t *testing.T) {
	eachExercise(t, 300, func(t *testing.T, e sheet.Exercise, w sheet.Working) {
		shown := map[string]string{}
		for _, step := range w.Steps(e.System) {
			shown[step.ID] = step.Answer
		}
		random := rand.New(rand.NewPCG(e.Seed, 77))
		for _, rounds := range []func() bool{
			func() bool { return true }, func() bool { return false },
			func() bool { return random.Uint64()%2 == 0 }, func() bool { return random.Uint64()%2 == 0 }, func() bool { return random.Uint64()%4 == 0 },
		} {
			h := hand{system: e.System, rounds: rounds, last: map[string]string{}}
			h.work(e.Problem)
			if len(h.last) == 0 {
				t.Error("the calculator comes to nothing")
			}
			for id, got := range h.last {
				if got != shown[id] {
					t.Errorf("%s: by hand %s, shown %s", id, got, shown[id])
				}
			}
		}
	})
}

// A hand that cuts off what it does not write of a position and a target, in place of
// rounding, has the same move in the end.
func TestExerciseMovesStandCuttingOff(t *testing.T) {
	eachExercise(t, 200, func(t *testing.T, e sheet.Exercise, w sheet.Working) {
		h := hand{system: e.System, last: map[string]string{}}
		if e.Problem.Job != nil {
			h.view = exerciseView(*e.Problem.Job)
		}
		cut := func(id string) float64 {
			l, err := sheet.Value[units.Length](w, id)
			p := h.pick(1e3, 1e2)
			if err != nil { // no target
				return 0
			}
			return math.Trunc(h.small(l)*p+math.Copysign(1e-7, float64(l))) / p
		}
		for _, step := range w.Steps(e.System) {
			foot, isMove := strings.CutSuffix(step.ID, ".correction")
			if !isMove {
				continue
			}
			h.move(step.ID, cut(foot+".target")-cut(foot+".position"))
			if h.last[step.ID] != step.Answer {
				t.Errorf("%s: cut off it is %s, shown %s", step.ID, h.last[step.ID], step.Answer)
			}
		}
	})
}

func exerciseView(j sheet.Job) align.View {
	switch {
	case j.Reverse != nil:
		return j.Reverse.View
	case j.RimFace != nil:
		return j.RimFace.View
	case j.FaceFace != nil:
		return j.FaceFace.View
	case j.RimGap != nil:
		return j.RimGap.View
	}
	return j.StraightedgeGap.View
}
