package main

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
)

// surveyFoot is a foot of the operation soft_foot.
type surveyFoot struct {
	Name string `json:"name"`
	X    string `json:"x"`
	Y    string `json:"y"`
	Lift string `json:"lift"`
}

// verifyFeet asks that the kinds are named, and that each advice takes the twist
// out of a rigid frame on four feet.
func verifyFeet(v vector, result json.RawMessage) []difference {
	var in struct{ Feet []surveyFoot }
	var out struct {
		Kinds  []string
		Advice []advice
	}
	var want struct {
		Kinds []string
		Left  string
	}
	if err := decodeAll(v.Input, &in, result, &out, v.Verify, &want); err != nil {
		return junk("", misread(err), "kinds and advice as the protocol has them")
	}
	var d []difference
	for _, kind := range want.Kinds {
		if !slices.Contains(out.Kinds, kind) {
			d = append(d, wrong("/kinds", fmt.Sprint(out.Kinds), kind+" among them")...)
		}
	}
	if want.Left != "" && len(out.Advice) == 0 {
		d = append(d, wrong("/advice", "none", "shims")...)
	}
	for i, a := range out.Advice {
		d = append(d, a.differences(fmt.Sprintf("/advice/%d", i), in.Feet, want.Left)...)
	}
	return d
}

// advice is one way to cure soft feet.
type advice struct {
	Shims []struct{ Foot, Flat string }
}

// differences says in what it is no advice for these feet, or leaves more than it
// may; that is not asked where nothing stands in left.
func (a advice) differences(at string, feet []surveyFoot, left string) []difference {
	seen := map[string]bool{}
	for _, s := range a.Shims {
		if seen[s.Foot] || !slices.ContainsFunc(feet, func(f surveyFoot) bool { return f.Name == s.Foot }) {
			return junk(at, fmt.Sprintf("foot %q twice, or not among the feet", s.Foot), "each foot once at most")
		}
		seen[s.Foot] = true
	}
	if left == "" {
		return nil
	}
	return leavesTwist(at, feet, a.thicknesses(), left)
}

// thicknesses returns what goes under which foot.
func (a advice) thicknesses() map[string]string {
	under := map[string]string{}
	for _, s := range a.Shims {
		under[s.Foot] = s.Flat
	}
	return under
}

// leavesTwist says what a rigid frame still lifts over shims, if that is too
// much. With n such that the sums of n, n x and n y are zero, the pads' twist is
// the sum of n times their heights. A foot lifts by -twist/n where that is above
// zero: two of the four do, so that the twist is half the sum of -n times lift.
// Shims under the feet add theirs.
func leavesTwist(at string, feet []surveyFoot, shims map[string]string, left string) []difference {
	var l lengths
	n := outOfPlane(feet, l.float)
	lowest := math.Inf(1)
	for _, f := range feet {
		lowest = min(lowest, l.float(f.Lift))
	}
	twist := 0.0
	for i, f := range feet {
		twist += n[i] * (l.float(shims[f.Name]) - (l.float(f.Lift)-lowest)/2)
	}
	lift := 0.0
	for _, n := range n {
		lift = max(lift, -twist/n)
	}
	if l.err != nil || !(lift <= l.float(left)*(1+1e-9)) {
		return append(wrong(at, fmt.Sprintf("leaves a lift of %.4f mm", lift), "no more than "+left), l.differences(at)...)
	}
	return nil
}

// outOfPlane returns n for four feet: the cofactors of the heights in the
// condition that four points lie in a plane.
func outOfPlane(feet []surveyFoot, mm func(string) float64) [4]float64 {
	var n [4]float64
	for i := range n {
		var x, y []float64
		for j, f := range feet {
			if j != i {
				x, y = append(x, mm(f.X)), append(y, mm(f.Y))
			}
		}
		area := (x[1]-x[0])*(y[2]-y[0]) - (x[2]-x[0])*(y[1]-y[0])
		n[i] = area * float64(1-i%2*2)
	}
	return n
}
