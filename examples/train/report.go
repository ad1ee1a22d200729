package main

import (
	"fmt"
	"io"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// report writes a record for the people at the machines.
type report struct {
	page
	record
	display
}

func writeReport(w io.Writer, r record, s system) error {
	p := report{record: r, display: r.Job.display(s)}
	p.para(string(r.Job.Title))
	p.job()
	p.locked()
	p.feet()
	p.grown()
	for i := range r.Joints {
		p.coupling(i)
	}
	p.centrelines()
	for i := range r.Plans {
		p.plan(i)
	}
	p.silent()
	_, err := io.WriteString(w, p.String())
	return err
}

// job says who measured what, and who names the sides.
func (p *report) job() {
	j := p.Job
	p.section("The job")
	p.item("place", string(j.Place))
	p.item("people", string(j.People))
	p.item("machines", p.list())
	p.item("sides", "from behind "+p.name(len(j.Machines)-1)+", looking at "+p.name(0)+": 3 on the right is "+p.three+", 9 on the left is "+p.nine)
	for _, note := range j.Notes {
		p.item("note", string(note))
	}
}

func (p *report) name(machine int) string { return string(p.Job.Machines[machine].Name) }

// list names the machines in their order.
func (p *report) list() string {
	var names []string
	for i := range p.Job.Machines {
		names = append(names, p.name(i))
	}
	return strings.Join(names, ", ")
}

// feet shows where the feet are on the tape, and what holds them.
func (p *report) feet() {
	p.section("Feet, by their places on the tape, and what holds them")
	for i := range p.Job.Machines {
		m := &p.Job.Machines[i]
		for k := range m.Feet {
			f := &m.Feet[k]
			p.point("-", fmt.Sprintf("%s %s, at %s: %s; %s", m.Name, f.Name, p.place(f.At), p.upAndDown(f.Vertical), p.sideways(f.Horizontal)))
		}
	}
}

func (p *report) upAndDown(l *upAndDown) string {
	switch {
	case l == nil:
		return "free up and down"
	case l.Fixed:
		return "fixed in height"
	}
	return p.reach("down", l.DownBy) + ", " + p.reach("up", l.UpBy)
}

func (p *report) sideways(l *sideways) string {
	switch {
	case l == nil:
		return "free sideways"
	case l.Fixed:
		return "fixed sideways"
	}
	return p.reach("towards "+p.three, l.ThreeBy) + ", " + p.reach("towards "+p.nine, l.NineBy)
}

func (p *report) reach(where string, by *units.Length) string {
	switch {
	case by == nil:
		return "free " + where
	case *by == 0:
		return "not " + where
	}
	return where + " by " + p.size(*by) + " at most"
}

// grown shows what each machine does between cold and running.
func (p *report) grown() {
	heading := func() { p.section("Growth from cold to running") }
	for i := range p.Job.Machines {
		m := &p.Job.Machines[i]
		for _, s := range m.Growth {
			heading()
			heading = func() {}
			by, u := p.Growth[i].At(s.At)
			p.point("-", fmt.Sprintf("%s, %s, at %s: %s (%s). %s of %s, warmer by %s.", m.Name, s.Name, p.place(s.At),
				p.way(by.Vertical, "up", "down", "stays"), p.doubt(u.Vertical), p.place(s.Height), s.Material, s.Rise))
		}
	}
}

// coupling shows what was read at a coupling, and what it comes to.
func (p *report) coupling(i int) {
	c, j := &p.Job.Couplings[i], &p.Joints[i]
	earlier, later := p.name(i), p.name(i+1)
	p.section("Found at the " + string(c.Name))
	p.item("between", earlier+" and "+later+", centre at "+p.place(c.At)+p.span(c.Span))
	behind := p.name(len(p.Job.Machines) - 1)
	if c.Found.SeenFrom == first {
		behind = p.name(0)
	}
	p.item("clock", "as seen from behind "+behind)
	p.dial(earlier, later, &c.Found.CarriedByEarlier)
	p.dial(later, earlier, &c.Found.CarriedByLater)
	for _, w := range p.Warnings[i] {
		p.item("LOOK AGAIN", w.Path+": want "+w.Want)
	}
	p.para(later + " against " + earlier + ", at the coupling centre and going on along the train:")
	p.lie("found", j.Found)
	if j.Target != (align.Estimate{}) {
		p.lie("wanted, cold", j.Target)
		p.lie("off by", j.Off())
	}
	if verdict, err := j.Limits.Judge(j.Off(), j.Coupling); err == nil {
		p.verdict(i, verdict)
	}
	p.item("limits of", string(c.Limits.Source))
}

func (p *report) span(span units.Length) string {
	if span == 0 {
		return ", a short one"
	}
	return ", with a spacer of " + p.place(span)
}

// dial shows a sweep against its reading at 12, as read.
func (p *report) dial(carrier, touched string, r *rim) {
	from := func(l units.Length) string { return p.plunger(l - r.At12) }
	p.item("dial", fmt.Sprintf("on %s, touching the rim of %s at %s: from 12 to 3 %s, to 6 %s, to 9 %s; sag of the bracket %s; 12 + 6 and 3 + 9 differ by %s",
		carrier, touched, p.place(r.At), from(r.At3), from(r.At6), from(r.At9), p.size(r.Sag), p.size(r.At12+r.At6-r.At3-r.At9)))
}

// lie says how the later shaft lies against the earlier one.
func (p *report) lie(label string, e align.Estimate) {
	v, h, u := e.Value.Vertical, e.Value.Horizontal, e.Cov.Standard()
	p.item(label, fmt.Sprintf("%s (%s), %s; %s (%s), %s",
		p.height(v.Offset), p.doubt(u.Vertical.Offset), p.climb(v.Slope),
		p.across(h.Offset), p.doubt(u.Horizontal.Offset), p.drift(h.Slope)))
}

// verdict holds what is left at a coupling against each limit.
func (p *report) verdict(i int, v tolerance.Verdict) {
	planes := strings.NewReplacer("the stationary flex plane", "the flex plane beside "+p.name(i), "the movable flex plane", "the flex plane beside "+p.name(i+1))
	for _, item := range v.All() {
		words := "within"
		if !item.Within() {
			words = "OVER"
		}
		p.point("-", fmt.Sprintf("%s: %s, %s", planes.Replace(item.Text(p.verdictStyle())), words, times(item.Ratio)))
	}
}

// times is a ratio to a limit.
func times(ratio float64) string { return fmt.Sprintf("%.2f times the limit", ratio) }

// locked stands before all that has to do with bolts.
func (p *report) locked() {
	p.section("Before a bolt or a coupling is touched")
	p.point("-", "Isolate every driver of the train, lock it out, and try to start it. Shut off and drain what could turn the driven machine.")
	p.point("-", "The instructions of the makers of the machines and the couplings, local codes and licensed practice come before this sheet.")
	p.point("-", "Look for soft foot and for strain from the pipes first: they are not looked at here.")
	p.point("-", "Lift with proper gear, and keep hands from under the feet. Use jacking bolts, not a hammer.")
}

// centrelines shows where the machines stand, before anything moves.
func (p *report) centrelines() {
	plan := &p.Plans[0]
	p.section("Centrelines as found, against " + p.axis(string(p.Job.Reference)))
	for i, s := range plan.Machines {
		for _, f := range p.Job.Machines[i].Feet {
			p.point("-", fmt.Sprintf("%s %s: %s", s.Machine, f.Name, p.lies(s.Before, f)))
		}
	}
}

// axis is what centrelines are told against.
func (p *report) axis(stays string) string {
	if stays != "" {
		return stays
	}
	return p.name(0) + " as it lies before it is moved"
}

// silent says what a reader must not take from the sheet.
func (p *report) silent() {
	p.section("What this sheet does not say")
	p.point("-", "A limit that is kept is no permission to run: that is for the makers of the machines and the couplings to give, and for who answers for the plant.")
	p.point("-", "It knows no pipes, no conduits, no dowels, no gear contact and no axial float. A limit at a foot is what the job tells of it.")
	p.point("-", "The machines count as rigid, and what was found as it is: its uncertainty stays after the moves. Read all dials again when the bolts are tight and the pipes made up.")
	if p.anyGrowth() {
		p.point("-", "The growth is reckoned from what the job tells, upwards alone. What is not known of it counts at each coupling of a machine by itself.")
	}
	p.point("-", "Put the guards back before the locks are taken off.")
}

func (p *report) anyGrowth() bool {
	for i := range p.Job.Machines {
		if p.Job.Machines[i].Growth != nil {
			return true
		}
	}
	return false
}

var workWords = map[train.Work]string{
	train.TotalTravel: "the sum of all moves", train.LargestMove: "the largest move", train.FewestFeet: "the number of moves",
}
