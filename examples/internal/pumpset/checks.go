package pumpset

import (
	"cmp"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/softfoot"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// checked is what the checks before the alignment come to.
type checked struct {
	Runout  []runoutFound `json:"runout,omitempty"`
	Strain  *strainFound  `json:"strain,omitempty"`
	Spacing *spacingFound `json:"spacing,omitempty"`
}

type runoutFound struct {
	Shaft   align.Shaft            `json:"shaft"`
	Reading units.Length           `json:"reading"`
	Limit   units.Length           `json:"limit"`
	Class   *tolerance.RunoutLimit `json:"class,omitempty"` // of the table that the limit is from; none: it is the job's own
	Over    bool                   `json:"over"`
}

type strainFound struct {
	Limit    units.Length      `json:"limit"`
	Released []softfoot.Strain `json:"released"`
}

type spacingFound struct {
	Off  units.Length `json:"off"` // positive: too wide
	Over bool         `json:"over"`
}

func (j *Job) checked(f *strict.Faults) *checked {
	if j.Checks == nil {
		return nil
	}
	var c checked
	for i, r := range j.Checks.Runout {
		c.Runout = append(c.Runout, r.found(f, strict.Step("/checks/runout", i)))
	}
	if s := j.Checks.Strain; s != nil {
		c.Strain = s.found(f, j)
	}
	if s := j.Checks.Spacing; s != nil {
		c.Spacing = s.found(f, "/checks/spacing")
	}
	return &c
}

func (r *runout) found(f *strict.Faults, path string) runoutFound {
	notNegative(f, path+"/reading", r.Reading, "the largest reading less the smallest")
	out := runoutFound{Shaft: r.Shaft, Reading: r.Reading.Value, Limit: r.Limit.Value}
	checkSource(f, path, r.Limit, r.Source)
	if r.Limit.given() {
		positive(f, path+"/diameter", r.Diameter, "a diameter")
	} else {
		class, err := tolerance.ShaftRunout(r.Diameter.Value)
		f.Adopt(err, func(of string) string { return path + of })
		out.Limit, out.Class = class.Limit, &class
	}
	out.Over = out.Reading.Above(out.Limit)
	return out
}

// checkSource asks that a limit of the job's own is above zero, and that there is
// one where there is a source of it.
func checkSource(f *strict.Faults, path string, limit length, source words) {
	if limit.given() {
		positive(f, path+"/limit", limit, "a limit")
	} else if source != "" {
		f.Add(units.Missing, path+"/limit", "", "the limit that has this source")
	}
}

func (s *strain) found(f *strict.Faults, j *Job) *strainFound {
	const path = "/checks/strain"
	checkSource(f, path, s.Limit, s.Source)
	releases := make([]softfoot.Release, len(s.Released))
	for i, r := range s.Released {
		releases[i] = softfoot.Release{What: string(r.What), Horizontal: j.toThree(r.ToThree.Value), Vertical: r.Up.Value}
	}
	limit := cmp.Or(s.Limit.Value, softfoot.PipingLimit)
	list, err := softfoot.Strains(limit, releases...)
	f.Adopt(err, func(of string) string {
		of = strings.Replace(of, "/releases", "/released", 1)
		of = strings.Replace(of, "/horizontal", "/to_three", 1)
		return path + strings.Replace(of, "/vertical", "/up", 1)
	})
	return &strainFound{limit, list}
}

func (s *spacing) found(f *strict.Faults, path string) *spacingFound {
	positive(f, path+"/wanted", s.Wanted, "a distance")
	positive(f, path+"/measured", s.Measured, "a distance")
	notNegative(f, path+"/allowed", s.Allowed, "what is allowed either way")
	off := s.Measured.Value - s.Wanted.Value
	return &spacingFound{off, max(off, -off).Above(s.Allowed.Value)}
}

// toThree turns a length towards the crew's 3 o'clock into the library's, or
// back.
func (j *Job) toThree(l units.Length) units.Length {
	if j.View == align.FromStationary {
		return 0 - l // no negative zero
	}
	return l
}
