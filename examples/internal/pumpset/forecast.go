package pumpset

import (
	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/shims"
	"example.org/collinear/softfoot"
	"example.org/collinear/tolerance"
)

// forecast is how the shaft lies when the packs are in as they come out, and the
// feet are slid as told.
type forecast struct {
	Shift   softfoot.Shift     `json:"shift"`             // what the errors of the packs do
	Off     align.Estimate     `json:"off"`               // less the target
	Verdict *tolerance.Verdict `json:"verdict,omitempty"` // on what is off
}

// forecast follows from the errors of the packs, as if they were shims of that
// thickness: without them the moves would take the shaft to its target. What is
// not known of where it was found, and of the target, is not known of this either.
// There is none where the plan of the feet does not tell it.
func (r *Record) forecast(f *strict.Faults, limits *judge, stacks []shims.Stack) *forecast {
	errors := make([]softfoot.Shim, len(stacks))
	for i, s := range stacks {
		errors[i] = softfoot.Shim{Foot: s.Foot, Flat: s.Error}
	}
	shift, err := r.survey(false).Shift(errors...)
	if err != nil {
		return nil
	}
	off := align.Estimate{Value: centreline(shift), Cov: r.Found.Off.Cov}
	return &forecast{shift, off, limits.verdict(f, "/single_feet", off, r.Job.coupling())}
}

// centreline is where a shift takes a shaft that was in line.
func centreline(s softfoot.Shift) align.Centreline {
	return align.Centreline{
		Horizontal: align.Line{Offset: s.Sideways},
		Vertical:   align.Line{Offset: s.Up, Slope: s.Slope},
	}
}
