package main

import (
	"io"

	"example.org/collinear/align"
)

// report writes a record for the people at the machine, in the order of the job.
type report struct {
	page
	record
	display
}

func writeReport(w io.Writer, r record, s system) error {
	p := report{record: r, display: r.Job.display(s)}
	p.wrap("", "", string(r.Job.Title))
	p.job()
	p.dimensions()
	p.readings("as found", "/found", &r.Job.Found, &r.Found)
	p.misalignment("as found", &r.Found)
	p.target()
	p.locked()
	p.moves("Moves at the feet", &r.Found)
	p.expected()
	p.left()
	p.warnings()
	p.silent()
	_, err := io.WriteString(w, p.String())
	return err
}

// left shows what was measured after the moves, if anything was.
func (p *report) left() {
	left := p.Left
	if left == nil {
		p.section("As left")
		p.para("Not measured. After the moves read the same dials again, and put the readings into the job under \"left\".")
		return
	}
	p.readings("as left", "/left", p.Job.Left, left)
	p.misalignment("as left", left)
	p.moves("Moves that would take the rest out", left)
}

// warnings lists what the library finds odd about readings it could use.
func (p *report) warnings() {
	p.section("Warnings")
	warnings := p.Found.Result.Warnings
	if p.Left != nil {
		warnings = append(warnings[:len(warnings):len(warnings)], p.Left.Result.Warnings...)
	}
	if len(warnings) == 0 {
		p.para("None.")
	}
	for i := range warnings {
		p.point(warnings[i].Error())
	}
}

// locked stands before the moves, where it is read in time.
func (p *report) locked() {
	p.section("Before a bolt or the coupling is touched")
	p.point("Isolate the driver, lock it out, and try to start it. Shut off and drain what could turn the pump.")
	p.point("Look for soft foot, and take it out before the moves: it is not looked at here.")
	p.point("Lift with proper gear, never with a hand under the machine. Use jacking bolts, not a hammer.")
	p.point("The instructions of the machine's and the coupling's makers, local codes and licensed practice come before this sheet.")
}

// silent says what a reader must not take from the sheet.
func (p *report) silent() {
	p.section("What this sheet does not say")
	p.point("Nothing here is permission to run. No tolerance is judged: whether what is left will do is for the reader to decide, by the limits of the makers.")
	p.point("Soft foot, strain from the pipes, runout, and growth beyond what the target allows for are not looked at.")
	p.point("Put the guard back before the lock is taken off.")
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
