package pumpset

import (
	"cmp"
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/examples/internal/lines"
	"example.org/collinear/units"
)

// readings shows both sets as they were entered, and the checks that they carry
// in themselves.
func (p *report) readings(when, path string, s *survey, st *state) {
	p.section("Readings " + when)
	m := p.Job.methods(s)[0] // a job that was solved has one
	for i, set := range m.Sets() {
		part := &m.parts[i]
		if i > 0 {
			p.blank()
		}
		p.para(title(set.Probe, s) + ".")
		p.sag(part, set)
		p.table(part, set)
		p.checks(part, st.Result.Checks[i], set)
	}
}

// title says what touched what.
func title(probe align.Probe, s *survey) string {
	other := align.Stationary + align.Movable - probe.Carrier
	switch probe.Kind {
	case align.Rim:
		return fmt.Sprintf("Rim dial, carried by the %s shaft, on the rim of the %s one", probe.Carrier, other)
	case align.NearFace:
		return fmt.Sprintf("Face dial, carried by the %s shaft, plunger pointing towards the %s machine", probe.Carrier, other)
	case align.FarFace:
		return fmt.Sprintf("Face dial, carried by the %s shaft, plunger pointing back to it", probe.Carrier)
	case align.SpacerFace:
		return fmt.Sprintf("Face dial between the %s hub and the spacer, plunger pointing from the body that carries it to the other", probe.Carrier)
	case align.SpacerFarFace:
		return fmt.Sprintf("Face dial between the %s hub and the spacer, plunger pointing back to the body that carries it", probe.Carrier)
	case align.Straightedge:
		return fmt.Sprintf("Feeler under a straightedge that lies on the rim of the %s shaft, at the rim of the %s one", probe.Carrier, other)
	}
	return "Gauge in the gap between the faces"
}

// sag says where the sag comes from. A gauge has none.
func (p *report) sag(part *part, set align.Set) {
	if set.Probe.Radius != 0 {
		p.para("Diameter of the circle swept: " + p.station(2*set.Probe.Radius) + ".")
	}
	switch {
	case part.mandrel != nil:
		turned := part.mandrel.At6.Value - part.mandrel.At12.Value
		p.para(fmt.Sprintf("Sag of the bracket: %s, half of what it showed on a mandrel: %s.",
			p.droop(set.Sag), lines.Tied(fmt.Sprintf("%s at 12, %s at 6 (%s)", part.mandrel.At12, part.mandrel.At6, p.plunger(turned)))))
	case part.sag.given():
		p.para("Sag of the bracket, as entered: " + p.droop(set.Sag) + ".")
	case part.gauge():
	default:
		p.para("Droop of the face dial: none entered.")
	}
}

// droop is a sag in words; only that of a face dial can press the plunger in or
// let it out.
func (p *report) droop(sag units.Length) string {
	if sag == 0 {
		return "none"
	}
	return p.way(sag, "inwards at 12, outwards at 6", "outwards at 12, inwards at 6", "less than is shown")
}

// gauge tells whether the part is a gauge that reads a gap, and not a dial.
func (p *part) gauge() bool { return p.field == "gap" || p.field == "straightedge" }

// change puts the difference of two readings into words.
func (p *report) change(part *part, by units.Length) string {
	if part.gauge() {
		return p.feeler(by)
	}
	return p.plunger(by)
}

// table shows the readings as entered, and against the first of them, as read
// and with the sag taken off.
func (p *report) table(part *part, set align.Set) {
	widths := []int{10, 16, 24}
	head := []string{"at", "as read", "from the first"}
	if set.Sag != 0 {
		head = append(head, "with the sag taken off")
	}
	p.row(widths, head...)
	first := part.readings[0]
	p.row(widths, first.At.text, first.Value.text, "start")
	for _, r := range part.readings[1:] {
		by := r.Value.Value - first.Value.Value
		cells := []string{r.At.text, r.Value.text, p.change(part, by)}
		if set.Sag != 0 {
			cells = append(cells, p.change(part, by-sagChange(set.Sag, first, r)))
		}
		p.row(widths, cells...)
	}
}

// sagChange is what sag adds to a reading against the first.
func sagChange(sag units.Length, first, r reading) units.Length {
	_, c0 := first.At.Value.SinCos()
	_, c := r.At.Value.SinCos()
	return units.Length(float64(sag) * (c - c0))
}

// checks says how the set stands against its own rules, and whether within the
// limits.
func (p *report) checks(part *part, c dial.Check, set align.Set) {
	if c.Completed {
		at := p.view.Clock(c.Supplied).Normal()
		p.para(fmt.Sprintf("Not read at %s: the validity rule (12 + 6 = 3 + 9) supplies %s against the first, and so it cannot check the set.",
			at, p.change(part, p.supplied(part, c, set))))
	} else {
		p.para(fmt.Sprintf("Check, 12 + 6 against 3 + 9: %s.", p.within(c.Miss, p.Job.Limits.Miss)))
	}
	if c.Returned {
		p.para(fmt.Sprintf("Check, back at the start: %s.", p.within(c.Return, p.Job.Limits.Return)))
	} else {
		p.para("Check, back at the start: not read.")
	}
}

// supplied is the reading that was not taken, against the first, as the dial
// would have shown it.
func (p *report) supplied(part *part, c dial.Check, set align.Set) units.Length {
	first := part.readings[0]
	missing := reading{At: position{Value: p.view.Clock(c.Supplied)}}
	quarter := func(at units.Clock) units.Length { return c.Quarters[int(p.view.Clock(at).Normal()/units.Three)] }
	clean := quarter(missing.At.Value) - quarter(first.At.Value)
	return clean + sagChange(set.Sag, first, missing)
}

// within puts a miss beside its limit.
func (p *report) within(miss units.Length, limit length) string {
	allowed := cmp.Or(limit.Value, dial.DefaultLimit)
	whose := "the limit of " + p.fine(allowed)
	if limit.Value == 0 {
		whose += " (this program's own: the job sets none)"
	}
	if max(miss, -miss).Above(allowed) {
		return "off by " + p.size(miss) + ", OVER " + whose + ": read the set again"
	}
	return "off by " + p.size(miss) + ", within " + whose
}
