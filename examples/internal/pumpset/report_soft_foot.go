package pumpset

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
		p.point(explain(e, len(s.Feet)))
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
		return p.entered(l, p.fine)
	}
	return p.size(softfoot.DefaultAct) + " (common practice; the job sets no limit)"
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
	softfoot.Angular:   "its underside is not parallel to its pad: a stepped shim, or machining (angular)",
	softfoot.Springing: "the packing gives: too many shims, rust, burrs, paint or dirt (springing)",
	softfoot.Induced:   "piping, conduit or coupling load the machine, which no shim cures (induced)",
}

// explain puts a cause into words, of a survey of so many feet.
func explain(e softfoot.Explanation, surveyed int) string {
	if e.Kind == softfoot.Parallel {
		return lowPads(e.Feet, surveyed) + ": flat shims (parallel)"
	}
	return list(e.Feet) + ": " + kindWords[e.Kind]
}

// lowPads says whose pads are low. On four, two feet lift whichever of them is the
// low one; on more, both may be.
func lowPads(feet []string, surveyed int) string {
	switch {
	case len(feet) == 1:
		return feet[0] + " stands on a low pad, or is short"
	case len(feet) == 2 && surveyed == 4:
		return fmt.Sprintf("one of %s and %s stands on a low pad, or is short; their lifts do not tell which", feet[0], feet[1])
	}
	return fmt.Sprintf("one or more of %s stand on a low pad, or are short; their lifts do not tell which", list(feet))
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

// cures lists the ways to cure, and what the one that the sheet plans with does
// to the shaft.
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
		name := fmt.Sprintf("Way %d", i+1)
		if i == p.Job.SingleFeet.chosen() {
			name += ", planned below"
		}
		p.point(fmt.Sprintf("%s: %s. Then %s.", name, p.shims(a.Shims), p.still(a.Left)))
	}
	if len(s.Advice) > 1 {
		p.para("For another of these ways put its number into the job, as the \"way\" of the single feet.")
	}
	p.shifts()
	p.para("Go round the feet again when all is tight: a frame that bends hides some of it.")
}

// still is what a cure leaves: nothing, where that is less than a dial shows.
func (p *report) still(left units.Length) string {
	if left.Round(units.Nanometre) < 5*units.Micrometre {
		return "no foot should lift above the others"
	}
	return "a foot may still lift by up to " + p.fine(left) + " above the others"
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
