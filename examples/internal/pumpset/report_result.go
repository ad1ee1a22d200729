package pumpset

import (
	"fmt"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// misalignment says how the movable shaft lies against the stationary one.
func (p *report) misalignment(when string, s *state) {
	p.section("Misalignment " + when)
	p.para("The movable shaft against the stationary one, going away from the coupling:")
	p.lie(s.Result.Estimate)
	p.item("together", p.together(s))
	if p.Job.Target != nil || p.Growth != nil {
		off := s.Off.Value
		p.item("off target", fmt.Sprintf("up and down, %s at the coupling centre, %s; sideways, %s, %s",
			p.height(off.Vertical.Offset), p.climb(off.Vertical.Slope), p.sideways(off.Horizontal.Offset), p.drift(off.Horizontal.Slope)))
	}
	if s.Flex != nil {
		p.item("spacer", fmt.Sprintf("the flex planes tilt by %s at the stationary end, %s at the movable end",
			p.slopeSize(s.Flex.Stationary.Size()), p.slopeSize(s.Flex.Movable.Size())))
	}
	p.para(basisWords(s))
}

// together combines both planes.
func (p *report) together(s *state) string {
	off := s.Result.Value.At(0)
	return p.offset(off) + " at the coupling centre; " + p.open(s.Gap)
}

func (p *report) offset(off align.Vector) string {
	if p.size(off.Size()) == p.size(0) {
		return "no offset"
	}
	return fmt.Sprintf("%s towards about %s", p.size(off.Size()), p.clock(off.Direction()))
}

func (p *report) open(g opening) string {
	across := " across the coupling's " + p.entered(p.Job.Coupling.Diameter, p.station)
	if p.size(g.Wider) == p.size(0) {
		return "faces parallel" + across
	}
	return fmt.Sprintf("gap open by %s at about %s%s", p.size(g.Wider), p.clock(g.At), across)
}

// target says where the shaft is wanted.
func (p *report) target() {
	if p.Growth != nil {
		p.grown()
		return
	}
	p.section("Target")
	t := p.Job.Target
	if t == nil {
		p.para("In line as the machines stand when measured: the job gives no target, so no growth is allowed for.")
		return
	}
	if t.Source != "" {
		p.item("source", string(t.Source))
	}
	where := units.Length(0)
	place := "at the coupling centre"
	if t.At.given() {
		where = p.Job.Tape.station(t.At)
		place = "at " + t.At.text + " on the tape"
	}
	w := p.Target.At(where)
	p.item("up and down", "movable shaft "+p.height(w.Vertical)+" "+place+"; "+p.climb(p.Target.Vertical.Slope))
	p.item("sideways", "movable shaft "+p.sideways(w.Horizontal)+" "+place+"; "+p.drift(p.Target.Horizontal.Slope))
}

// moves says how far and which way each foot goes, and what has to be settled
// before.
func (p *report) moves(heading string, s *state, before []string) {
	p.section(heading)
	p.para("Machine: " + string(p.Job.Movable) + ". The same shims go under both feet of a station. A move smaller than its u cannot be told from none.")
	if s == &p.Found && p.cure() != nil {
		p.para("The shims of soft foot come on top, foot by foot, and what they do to the shaft is allowed for here.")
	}
	if len(before) > 0 {
		p.para("Settle this before anything is moved, and read again: " + strings.Join(before, "; ") + ".")
	}
	for i, m := range s.Moves {
		p.point(m.Text(p.style()))
		p.moveDoubt(m)
		if s.Within != nil {
			p.wrap("    ", "    ", fmt.Sprintf("right to %s up or down, %s sideways, each in 95 of 100 such jobs",
				p.fine(s.Within[i].Vertical), p.fine(s.Within[i].Horizontal)))
		}
	}
}

// moveDoubt tells how well a move is known.
func (p *report) moveDoubt(m align.Move) {
	words := "(u unknown)"
	if m.Basis != align.Unknown {
		words = fmt.Sprintf("(u %s up or down, %s sideways)", p.fine(m.U.Vertical), p.fine(m.U.Horizontal))
	}
	p.wrap("    ", "    ", words)
}

// expected shows what the dials will read when the shaft lies on its target.
func (p *report) expected() {
	p.section("What the dials should show after the moves")
	if lost := p.notReached(); lost != nil {
		p.para("THESE HOLD ONLY ON THE TARGET, which the packs under " + list(lost) + " do not reach: do not look for them until that is settled.")
	}
	p.para("On the target, at the same positions, counted from the first. The sag of a bracket is in them: compare with the dials as they stand.")
	m := p.Job.methods(&p.Job.Found)[0]
	sets := m.Sets()
	for i, list := range p.Expected {
		p.blank()
		p.para(title(sets[i].Probe, &p.Job.Found) + ".")
		for k, r := range list {
			words := p.change(&m.parts[i], r.Value)
			if k == 0 {
				words = "start"
			}
			p.row([]int{10}, m.parts[i].readings[k].At.text, words)
		}
	}
}
