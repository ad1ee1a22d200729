package pumpset

import (
	"fmt"
	"slices"
	"strings"

	"example.org/collinear/shims"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// packs shows what goes under each single foot, both jobs together.
func (p *report) packs() {
	if p.Packs == nil {
		return
	}
	p.section("Shims, foot by foot")
	if lost := p.notReached(); lost != nil {
		p.para("FIT NONE OF THESE PACKS until this is settled: the stock does not reach what is wanted under " + list(lost) + ".")
	}
	p.para("What is wanted is the move of the station and what the soft foot needs, together.")
	for i := range p.Packs.Orders {
		if i > 0 {
			p.blank()
		}
		p.wanted(i)
		if p.Packs.Choice != nil {
			p.stack(p.Packs.Choice.Stacks[i])
		}
	}
	if p.Packs.Choice != nil {
		p.lacking()
		p.forecast()
	}
}

// notReached lists the feet whose packs are not as they should be.
func (p *report) notReached() []string {
	if p.Packs == nil || p.Packs.Choice == nil {
		return nil
	}
	var feet []string
	for _, s := range p.Packs.Choice.Stacks {
		if !s.Reached {
			feet = append(feet, s.Foot)
		}
	}
	return feet
}

// wanted is the change at one foot.
func (p *report) wanted(i int) {
	foot, o := &p.Job.SingleFeet.Feet[i], p.Packs.Orders[i]
	across := p.three
	if foot.Side == nine {
		across = p.nine
	}
	p.para(fmt.Sprintf("%s (%s, on the side of %s): %s", foot.Name, foot.Station, across, p.more(o.Correction+o.SoftFoot)))
	if p.SoftFoot != nil {
		p.item("of which", fmt.Sprintf("alignment %s, soft foot %s", p.more(o.Correction), p.way(o.SoftFoot, "more", "less", "nothing")))
	}
	if p.stepped(foot.Name) {
		p.item("on top", "the stepped shim that is planned above, which is not in these numbers")
	}
	if o.Now == nil {
		p.item("lies there", "no shims")
		return
	}
	p.item("lies there", p.pieces(o.Now))
	p.item("in all", p.fine(total(o.Now)))
}

// stepped tells whether the cure puts a stepped shim under a foot.
func (p *report) stepped(foot words) bool {
	c := p.cure()
	return c != nil && slices.ContainsFunc(c.Shims, func(s softfoot.Shim) bool { return s.Foot == string(foot) && s.Stepped != nil })
}

func (p *report) more(l units.Length) string { return p.way(l, "more", "less", "no change") }

// stack is what the hands do at one foot.
func (p *report) stack(s shims.Stack) {
	p.item("take out", p.hands(s.Out))
	p.item("put in", p.hands(s.In))
	p.item("pack", p.laid(s.Pieces))
	p.item("comes to", fmt.Sprintf("%s, %s", p.fine(s.Total), p.error(s)))
}

func (p *report) hands(list []shims.Piece) string {
	if list == nil {
		return "nothing"
	}
	return p.pieces(list)
}

func (p *report) laid(list []shims.Piece) string {
	if list == nil {
		return "none"
	}
	return "from the base up: " + p.pieces(list)
}

func (p *report) error(s shims.Stack) string {
	words := p.fine(s.Error)
	switch {
	case words == p.fine(0):
		words = "as wanted"
	case s.Error > 0:
		words += " too high"
	default:
		words += " too low"
	}
	if !s.Reached {
		words += ". NOT REACHED: this is the nearest that the stock allows"
	}
	return words
}

// pieces lists shims as the crew wrote them down.
func (p *report) pieces(list []shims.Piece) string {
	words := make([]string, len(list))
	for i, one := range list {
		words[i] = p.piece(one)
		if one.Count > 1 {
			words[i] = fmt.Sprintf("%d of %s", one.Count, words[i])
		}
	}
	return strings.Join(words, ", ")
}

// piece is a shim by its mark, and by its measure where it has one.
func (p *report) piece(s shims.Piece) string {
	marked, measured := p.fine(s.Marked), p.fine(s.Measured)
	if e := p.listed(s); e != nil {
		marked, measured = e.Marked.text, e.Measured.text
	}
	switch {
	case s.Measured == 0:
		return marked
	case s.Marked == 0:
		return measured + " (measured, no mark)"
	}
	return marked + " (measures " + measured + ")"
}

// listed is how the job lists a piece, if it does.
func (p *report) listed(s shims.Piece) *piece {
	for _, e := range p.stocked() {
		if e.Marked.Value == s.Marked && e.Measured.Value == s.Measured {
			return &e
		}
	}
	return nil
}

// stocked are all pieces of the job.
func (p *report) stocked() []piece {
	var all []piece
	if p.Job.Shims != nil {
		all = slices.Clone(p.Job.Shims.Stock)
	}
	for _, foot := range p.Job.SingleFeet.Feet {
		all = append(all, foot.Pack...)
	}
	return all
}

func total(list []shims.Piece) units.Length {
	sum := units.Length(0)
	for _, s := range list {
		sum += units.Length(float64(s.Thickness()) * float64(s.Count))
	}
	return sum
}

// lacking says what the stock does not have, and how good the choice is.
func (p *report) lacking() {
	c := p.Packs.Choice
	p.blank()
	for _, s := range c.Stacks {
		if !s.Reached {
			p.point(fmt.Sprintf("%s: %s is wanted, and %s is the nearest.%s", s.Foot, p.under(s.Wanted), p.fine(s.Total), p.beyond(s)))
		}
	}
	if c.Add != nil {
		p.point("Add to the stock: " + p.added(c.Add) + ".")
	}
	if c.Proven {
		p.para("No choice from this stock and these packs is better.")
	} else {
		p.para("The search ended before all choices were tried: there may be a better one.")
	}
}

// added lists what the stock lacks: sizes of the job, and others, which have to be
// cut or made up.
func (p *report) added(list []shims.Piece) string {
	var known, others []shims.Piece
	for _, one := range list {
		if p.listed(one) != nil {
			known = append(known, one)
		} else {
			others = append(others, one)
		}
	}
	var words []string
	if known != nil {
		words = append(words, p.pieces(known))
	}
	if others != nil {
		words = append(words, "to be cut or made up: "+p.pieces(others))
	}
	return strings.Join(words, "; ")
}

// under is a total that is wanted, which may be less than none.
func (p *report) under(l units.Length) string {
	if l < 0 {
		return p.fine(l) + " less than no shims"
	}
	return p.fine(l)
}

// beyond says where no stock would help.
func (p *report) beyond(s shims.Stack) string {
	if !s.TooLow {
		return ""
	}
	return " No stock goes so low: raise the stationary machine, if it can be, and measure again."
}
