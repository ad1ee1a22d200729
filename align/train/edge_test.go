package train_test

import (
	"encoding/json"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// atTheEdge is a pump found 0.35 mm high and climbing 0.2 mm/m behind a motor that
// stays; its inboard foot has to come down by 0.21 mm for an offset of 0.05 mm.
func atTheEdge(low units.Length, perPlane bool) train.Train {
	return train.Train{
		Machines: []train.Machine{
			{Name: "motor"},
			{Name: "pump", Feet: []train.Foot{
				{Name: "inboard", X: 300 * mm, Vertical: train.AtLeast(low)},
				{Name: "outboard", X: 900 * mm},
			}},
		},
		Joints: []train.Joint{{
			Found:  align.Exact(align.Centreline{Vertical: align.Line{Offset: 350 * um, Slope: 0.2 * units.MillimetrePerMetre}}),
			Limits: tolerance.Limits{Offset: 50 * um, Slope: 0.5 * units.MillimetrePerMetre, PerPlane: perPlane},
		}},
		Reference: "motor",
	}
}

// Where the limit of a foot just lets a coupling in, or just does not, reach, ratio
// and what is in the way agree.
func TestEdgesAgree(t *testing.T) {
	for _, perPlane := range []bool{true, false} {
		for _, short := range []units.Length{-1000, -10, -1, 0, 1, 10, 100, 1000, 10000} {
			p := plan(t, atTheEdge(-210*um+short*nm, perPlane), train.TotalTravel)
			out := p.Reach == train.OutOfReach
			if out != (p.Ratio > 1) || out != (len(p.InTheWay) > 0) || out != (p.Joints[0].Verdict.Outcome == tolerance.Outside) {
				t.Errorf("per plane %v, short by %v: %v at ratio %v, verdict %v, in the way %v",
					perPlane, short*nm, p.Reach, p.Ratio, p.Joints[0].Verdict.Outcome, p.InTheWay)
			}
			if short >= 100 && !out || short <= 0 && out {
				t.Errorf("per plane %v, short by %v: %v", perPlane, short*nm, p.Reach)
			}
		}
	}
}

// Limits of a few nanometres make ratios of ten thousands, which cuts come near to as
// they do to others.
func TestTightRoundLimits(t *testing.T) {
	for _, offset := range []units.Length{1 * nm, 10 * nm, 1 * um} {
		tr := atTheEdge(0, false)
		tr.Machines[1].Feet[0].Vertical = train.Fixed()
		tr.Joints[0].Limits.Offset, tr.Joints[0].Limits.Slope = offset, units.Slope(offset/units.Metre)*10
		tr.Joints[0].Found.Value.Horizontal = align.Line{Offset: 0.1 * mm, Slope: 0.1 * units.MillimetrePerMetre}
		tr.Machines[1].Feet[1].Horizontal = train.Fixed()
		p := plan(t, tr, train.TotalTravel)
		if p.Ratio-p.Bound > 1e-3*p.Ratio || p.Ratio < 100 {
			t.Errorf("limit %v: ratio %v, bound %v", offset, p.Ratio, p.Bound)
		}
		if len(p.InTheWay) == 0 && len(p.Warnings) < 2 {
			t.Errorf("limit %v: nothing in the way, and nothing said of that", offset)
		}
	}
}

// What cannot be read as a limit is a fault: a name that is misspelt would leave the
// foot free.
func TestLimitsThatCannotBeRead(t *testing.T) {
	for _, text := range []string{`{"at_lest":"0 mm"}`, `"fixed"`, `300`, `{"at_most":300}`, `{"at_most":"300"}`} {
		var l train.Limit
		if err := json.Unmarshal([]byte(text), &l); len(units.Faults(err)) == 0 {
			t.Errorf("%s: %v is no fault", text, err)
		}
	}
	var l train.Limit
	err := json.Unmarshal([]byte(`{"at_most":300,"at_lest":"0 mm"}`), &l)
	if f := units.Faults(err); len(f) != 2 || f[0].Path != "/at_most" || f[0].Code != units.Malformed || f[1].Path != "/at_lest" || f[1].Code != units.Unknown {
		t.Errorf("got %v", err)
	}
}
