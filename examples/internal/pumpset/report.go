package pumpset

import (
	"io"

	"example.org/collinear/align"
)

// report writes a record for the people at the machine, in the order of the job.
type report struct {
	page
	Record
	display
}

// WriteReport prints the report for the people at the machine, in their words, with
// lengths in the system that is asked for.
func WriteReport(w io.Writer, r Record, s System) error {
	p := report{Record: r, display: r.Job.display(s)}
	p.wrap("", "", string(r.Job.Title))
	p.job()
	p.dimensions()
	p.prepared()
	p.readings("as found", "/found", &r.Job.Found, &r.Found)
	p.misalignment("as found", &r.Found)
	p.target()
	p.verdict("as found", &r.Found)
	if !p.touched() {
		p.locked()
	}
	p.moves("Moves at the feet", &p.Found, p.before())
	p.budget(&p.Found)
	p.packs()
	p.expected()
	p.left()
	p.warnings()
	p.silent()
	_, err := io.WriteString(w, p.String())
	return err
}

// touched tells whether bolts are touched before the moves.
func (p *report) touched() bool { return p.Checks != nil || p.SoftFoot != nil }

// prepared shows what is done before the readings.
func (p *report) prepared() {
	if p.touched() {
		p.locked()
	}
	p.checked()
	if p.SoftFoot != nil {
		p.softFoot("Soft foot", p.SoftFoot)
		p.cures()
	}
}

// left shows what was measured after the moves, if anything was.
func (p *report) left() {
	if p.SoftFootLeft != nil {
		p.softFoot("Soft foot as left", p.SoftFootLeft)
	}
	left := p.Left
	if left == nil {
		p.section("As left")
		p.para("Not measured. After the moves read the same dials again, and put the readings into the job under \"left\".")
		return
	}
	p.readings("as left", "/left", p.Job.Left, left)
	p.misalignment("as left", left)
	p.verdict("as left", left)
	if left.Running != nil {
		p.runs()
	}
	p.moves("Moves that would take the rest out", left, p.after())
}

// basisWords tell where the uncertainties of a state come from.
func basisWords(s *state) string {
	switch s.Result.Cov.Basis {
	case align.Stated:
		return "u is a standard uncertainty, from those that the job states."
	case align.Scatter:
		return "u is a standard uncertainty, from the scatter of the readings alone, which are few: take it as rough."
	}
	return "u is unknown: the job states no uncertainty of the readings, and they are too few, or agree too well, to tell. Unknown is not zero."
}
