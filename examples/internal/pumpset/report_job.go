package pumpset

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// job says who measured what, and who names the clock.
func (p *report) job() {
	j := &p.Job
	p.section("Job")
	p.item("place", string(j.Place))
	p.item("stationary", string(j.Stationary)+" (stays where it is)")
	p.item("movable", string(j.Movable)+" (its feet are shimmed and slid)")
	p.item("measured by", string(j.By))
	p.item("when", string(j.When))
	p.item("instrument", string(j.Instrument))
	p.item("conditions", string(j.Conditions))
	p.item("speed", j.Speed.text)
	p.item("clock", p.standpoint())
	for _, note := range j.Notes {
		p.item("note", string(note))
	}
}

func (p *report) standpoint() string {
	from, towards := "movable", "stationary"
	if p.view == align.FromStationary {
		from, towards = towards, from
	}
	s := fmt.Sprintf("as seen from behind the %s machine, looking at the %s one: 12 is up, 3 on the right", from, towards)
	if p.Job.Three != "" {
		s += ", which is " + p.three
	}
	s += ", 9 on the left"
	if p.Job.Nine != "" {
		s += ", which is " + p.nine
	}
	return s
}

// dimensions shows the tape as it was read, and what became of it.
func (p *report) dimensions() {
	t := &p.Job.Tape
	p.section("Dimensions")
	p.para("Off the tape, then along the shafts from the coupling centre:")
	widths := []int{24, 16}
	place := func(name string, at length, x units.Length) {
		if at.given() {
			p.row(widths, name, at.text, p.side(x))
		}
	}
	place("rim, stationary shaft", t.StationaryRim, t.station(t.StationaryRim))
	place("coupling centre", t.Centre, 0)
	place("rim, movable shaft", t.MovableRim, t.station(t.MovableRim))
	for i, f := range t.Feet {
		place("feet: "+string(f.Name), f.At, p.Stations.Feet[i].X)
	}
	p.blank()
	p.dialToFeet()
	p.para("Coupling: gaps are told across a diameter of " + p.entered(p.Job.Coupling.Diameter, p.station) + ". " + p.spacer())
	if t.U.given() {
		p.para("Standard uncertainty of a reading off the tape: " + p.entered(t.U, p.apart) + ".")
	}
	for _, f := range t.Feet {
		if f.U.given() {
			p.para(fmt.Sprintf("Standard uncertainty at the feet %s: %s.", f.Name, p.entered(f.U, p.apart)))
		}
	}
}

// side tells on which side of the coupling centre a station lies.
func (p *report) side(x units.Length) string {
	switch {
	case x < 0:
		return p.station(x) + " to the stationary side"
	case x > 0:
		return p.station(x) + " to the movable side"
	}
	return "0"
}

// dialToFeet gives the distances that the handbooks' formulae take.
func (p *report) dialToFeet() {
	s := p.Stations
	if s.StationaryRim != nil && s.MovableRim != nil {
		p.para("From rim to rim: " + p.station(*s.MovableRim-*s.StationaryRim) + ".")
	}
	for _, f := range s.Feet {
		switch {
		case s.MovableRim != nil:
			p.para(fmt.Sprintf("From the movable rim to the feet %s: %s.", f.Name, p.station(f.X-*s.MovableRim)))
		case s.StationaryRim != nil:
			p.para(fmt.Sprintf("From the stationary rim to the feet %s: %s.", f.Name, p.station(f.X-*s.StationaryRim)))
		}
	}
}

func (p *report) spacer() string {
	if span := p.Job.Coupling.Span; span.given() {
		return "It has a spacer, " + p.entered(span, p.station) + " from flex plane to flex plane."
	}
	return "No spacer was given: it is taken for a short one."
}
