package pumpset

import "strings"

// locked stands before the first bolt is touched, where it is read in time.
func (p *report) locked() {
	p.section("Before a bolt or the coupling is touched")
	p.point("Isolate the driver, lock it out, and try to start it. Shut off and drain what could turn the pump.")
	if p.SoftFoot == nil {
		p.point("Look for soft foot, and take it out before the moves: it is not looked at here.")
	} else {
		p.point("For soft foot loosen one bolt at a time, and tighten it before the next.")
	}
	p.point("Lift with proper gear, never with a hand under the machine. Use jacking bolts, not a hammer.")
	p.point("The instructions of the machine's and the coupling's makers, local codes and licensed practice come before this sheet.")
}

// silent says what a reader must not take from the sheet.
func (p *report) silent() {
	p.section("What this sheet does not say")
	if p.Limits == nil {
		p.point("Nothing here is permission to run. No tolerance is judged: whether what is left will do is for the reader to decide, by the limits of the makers.")
	} else {
		p.point("Nothing here is permission to run, within a limit or not: the limits of the machine's and the coupling's makers come first.")
	}
	p.point(sentence(p.unseen()) + " are not looked at.")
	if p.Growth != nil {
		p.point("The growth is reckoned from what the job tells. Forces of the piping, bending frames and the oil film of the bearings are not in it, unless it was measured.")
	}
	p.point("Put the guard back before the lock is taken off.")
}

// unseen lists what a reader might think was looked at.
func (p *report) unseen() []string {
	var list []string
	add := func(seen bool, what string) {
		if !seen {
			list = append(list, what)
		}
	}
	c := p.Checks
	if c == nil {
		c = &checked{}
	}
	add(p.SoftFoot != nil, "soft foot")
	add(c.Strain != nil, "strain from the pipes")
	add(c.Runout != nil, "runout")
	add(c.Spacing != nil, "the spacing along the shafts")
	if p.Growth == nil {
		return append(list, "growth beyond what the target allows for")
	}
	return append(list, "growth along the shafts", "the tightness of the bolts")
}

// sentence joins at least two things to the beginning of a sentence.
func sentence(list []string) string {
	last := len(list) - 1
	s := list[last]
	if last > 0 {
		comma := ","
		if last == 1 {
			comma = ""
		}
		s = strings.Join(list[:last], ", ") + comma + " and " + s
	}
	return capital(s)
}
