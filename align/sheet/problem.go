package sheet

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Problem is one calculation by hand, whichever it is: exactly one of its fields. It is
// the form in which a problem is written to a file.
type Problem struct {
	Job            *Job            `json:"job,omitempty"`
	Sweep          *Sweep          `json:"sweep,omitempty"`
	Sag            *Sag            `json:"sag,omitempty"`
	GapFromSlope   *GapFromSlope   `json:"gap_from_slope,omitempty"`
	SlopeFromGap   *SlopeFromGap   `json:"slope_from_gap,omitempty"`
	FlexTilts      *FlexTilts      `json:"flex_tilts,omitempty"`
	ColdTarget     *ColdTarget     `json:"cold_target,omitempty"`
	TargetReadings *TargetReadings `json:"target_readings,omitempty"`
	SoftFoot       *SoftFoot       `json:"soft_foot,omitempty"`
	SlidingLimit   *SlidingLimit   `json:"sliding_limit,omitempty"`
	FlangeShims    *FlangeShims    `json:"flange_shims,omitempty"`
	ShimStacks     *ShimStacks     `json:"shim_stacks,omitempty"`
}

// worked is what can be worked line by line.
type worked interface{ Working() (Working, error) }

// Working works the problem. It refuses none (Missing, at the root), more than one
// (Conflict, at each but the first), and what the Working of the one refuses, with paths
// from the problem (/sweep/rim/readings/2/at).
func (p Problem) Working() (Working, error) {
	var faults check.Faults
	var root check.Path
	name, one := "", worked(nil)
	for _, f := range p.fields() {
		if !f.given {
			continue
		}
		if one == nil {
			name, one = f.name, f.worked
		} else {
			faults.Add(units.Conflict, root.Field(f.name), nil, "one problem: "+name+" is there already")
		}
	}
	if one == nil {
		faults.Add(units.Missing, root, nil, "a problem")
		return Working{}, faults.Err()
	}
	w, err := one.Working()
	faults.Adopt(root.Field(name), err)
	if err := faults.Err(); err != nil {
		return Working{}, err
	}
	return w, nil
}

// field is one of a problem's fields.
type field struct {
	worked
	name  string
	given bool
}

func (p Problem) fields() []field {
	return []field{
		{p.Job, "job", p.Job != nil},
		{p.Sweep, "sweep", p.Sweep != nil},
		{p.Sag, "sag", p.Sag != nil},
		{p.GapFromSlope, "gap_from_slope", p.GapFromSlope != nil},
		{p.SlopeFromGap, "slope_from_gap", p.SlopeFromGap != nil},
		{p.FlexTilts, "flex_tilts", p.FlexTilts != nil},
		{p.ColdTarget, "cold_target", p.ColdTarget != nil},
		{p.TargetReadings, "target_readings", p.TargetReadings != nil},
		{p.SoftFoot, "soft_foot", p.SoftFoot != nil},
		{p.SlidingLimit, "sliding_limit", p.SlidingLimit != nil},
		{p.FlangeShims, "flange_shims", p.FlangeShims != nil},
		{p.ShimStacks, "shim_stacks", p.ShimStacks != nil},
	}
}
