package main

import (
	"fmt"
	"slices"
	"strings"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// softFoot shows what each foot did, why, and what to do about it.
func (p *report) softFoot(heading string, s *softfoot.Finding) {
	p.section(heading)
	p.para("Each foot when its bolt alone was loosened, all others tight. A foot is soft where it lifts by more than " + p.softLimit() + " above what all of them lift.")
	p.lifts(s)
	if s.Common > 0 {
		p.para("All feet lift by " + p.size(s.Common) + " at least: that is common to them.")
	}
	if len(s.Fits) == 0 {
		p.para("No foot is soft.")
		return
	}
	p.blank()
	p.para("What explains it, the likeliest first:")
	for _, e := range s.Fits {
		p.point(fmt.Sprintf("%s: %s", list(e.Feet), kindWords[e.Kind]))
	}
	if len(s.Next) > 0 {
		p.para("What to look at, to tell:")
	}
	for _, n := range s.Next {
		p.point(fmt.Sprintf("%s: %s", list(n.Feet), checkWords[n.Check]))
	}
}

func (p *report) softLimit() string {
	if l := p.Job.SingleFeet.Limit; l.given() {
		return l.text
	}
	return p.fine(softfoot.DefaultAct) + " (common practice; the job sets no limit)"
}

func (p *report) lifts(s *softfoot.Finding) {
	widths := []int{28, 16}
	p.row(widths, "foot", "lifts", "above the others")
	for _, f := range s.Feet {
		note := ""
		if f.Soft {
			note = ", soft"
		}
		if f.Taper != nil {
			note += ", gap wider on one side by " + p.size(f.Taper.Rise)
		}
		p.row(widths, f.Foot, p.way(f.Lift, "up", "down", "none"), p.way(f.Excess, "more", "less", "none")+note)
	}
}

var kindWords = map[softfoot.Kind]string{
	softfoot.Parallel:  "stands on a pad that is low, or a foot that is short: flat shims (parallel)",
	softfoot.Angular:   "its underside is not parallel to its pad: a stepped shim, or machining (angular)",
	softfoot.Springing: "the packing gives: too many shims, rust, burrs, paint or dirt (springing)",
	softfoot.Induced:   "piping, conduit or coupling load the machine, which no shim cures (induced)",
}

var checkWords = map[softfoot.Check]string{
	softfoot.FeelCorners:  "with its bolt loose, a feeler under its corners: a gap that differs is angular",
	softfoot.PartLoads:    "part piping, conduit and coupling, and go round again: what goes away was induced",
	softfoot.RenewPacking: "clean the pads, take fewer and thicker shims, and go round again: what goes away was springing",
}

// uncured tells whether feet are soft and no shims are advised.
func (p *report) uncured() bool {
	return p.SoftFoot != nil && len(p.SoftFoot.Fits) > 0 && len(p.SoftFoot.Advice) == 0
}

// beyondShims tells whether any of what explains the lifts is not cured by shims.
func (p *report) beyondShims() bool {
	return p.SoftFoot != nil && slices.ContainsFunc(p.SoftFoot.Fits, func(e softfoot.Explanation) bool {
		return e.Kind == softfoot.Induced || e.Kind == softfoot.Springing
	})
}

// cures lists the ways to cure, and what the first of them, which the sheet
// plans with, does to the shaft.
func (p *report) cures() {
	s := p.SoftFoot
	if len(s.Fits) == 0 {
		return
	}
	p.blank()
	if p.uncured() {
		p.para("No shims are advised. WAIT WITH THE ALIGNMENT until this is settled, then read everything again: the moves below hold only for the feet as they stand.")
		return
	}
	if p.beyondShims() {
		p.para("Look at that first: these shims do not cure what is induced or springs.")
	}
	for i, a := range s.Advice {
		name := "This way is planned below"
		if i > 0 {
			name = "Another way"
		}
		p.point(fmt.Sprintf("%s: %s. Then %s.", name, p.shims(a.Shims), p.still(a.Left)))
	}
	p.shifts()
	p.para("Go round the feet again when all is tight: a frame that bends hides some of it.")
}

// still is what a cure leaves.
func (p *report) still(left units.Length) string {
	if p.size(left) == p.size(0) {
		return "no foot should lift above the others"
	}
	return "a foot may still lift by " + p.size(left) + " above the others"
}

func (p *report) shims(shims []softfoot.Shim) string {
	var words []string
	for _, s := range shims {
		if s.Flat != 0 {
			words = append(words, fmt.Sprintf("%s flat under %s", p.size(s.Flat), s.Foot))
		}
		if t := s.Stepped; t != nil {
			words = append(words, fmt.Sprintf("steps from nothing to %s under %s, thickest %s", p.size(t.Rise), s.Foot, p.thickest(t)))
		}
	}
	return strings.Join(words, ", and ")
}

// thickest tells where the steps go, by the slope that counts more.
func (p *report) thickest(t *softfoot.Taper) string {
	along, across := "at the end away from the coupling", p.three
	if t.Along < 0 {
		along = "at the end towards the coupling"
	}
	if p.Job.toThree(units.Length(t.Across)) < 0 {
		across = p.nine
	}
	switch a, b := max(t.Along, -t.Along), max(t.Across, -t.Across); {
	case b < a/4:
		return along
	case a < b/4:
		return "on the side of " + across
	}
	return along + " and on the side of " + across
}

// shifts says how the shims of soft foot move the shaft.
func (p *report) shifts() {
	c := p.shift()
	var words []string
	for _, foot := range p.Stations.Feet {
		words = append(words, fmt.Sprintf("%s at %s", p.rise(c.At(foot.X).Vertical), foot.Name))
	}
	p.para(fmt.Sprintf("These shims alone move the shaft %s, and %s. The moves below allow for that, so that both jobs are done in one.",
		strings.Join(words, ", "), p.across(c.Horizontal.Offset)))
}

// list joins names.
func list(names []string) string { return strings.Join(names, ", ") }
