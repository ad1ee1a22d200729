package pumpset

import (
	"cmp"
	"fmt"

	"example.org/collinear/units"
)

// checked shows what was looked at before the alignment.
func (p *report) checked() {
	if p.Checks == nil {
		return
	}
	p.section("Checks before the alignment")
	for i, r := range p.Checks.Runout {
		p.runout(&p.Job.Checks.Runout[i], r)
	}
	if p.Checks.Strain != nil {
		p.strain(p.Job.Checks.Strain, p.Checks.Strain)
	}
	if p.Checks.Spacing != nil {
		p.spacing(p.Job.Checks.Spacing, p.Checks.Spacing)
	}
}

func (p *report) runout(entered *runout, r runoutFound) {
	where := ""
	if entered.Where != "" {
		where = ", " + string(entered.Where)
	}
	p.item("runout", fmt.Sprintf("%s shaft%s, %s across: %s over a full turn, %s %s (%s). %s",
		r.Shaft, where, p.entered(entered.Diameter, p.station), p.size(r.Reading), against(r.Over), p.fine(r.Limit), source(entered, r),
		when(r.Over, "Put the shaft or the hub right first.")))
}

// source says where the limit of a runout comes from.
func source(entered *runout, r runoutFound) string {
	if r.Class != nil {
		return r.Class.Source
	}
	return cmp.Or(string(entered.Source), "the job's own")
}

// strain shows how the shaft moved. It is cured at the pipe, never at the feet.
func (p *report) strain(entered *strain, s *strainFound) {
	for _, one := range s.Released {
		by := one.Release
		p.item("strain", fmt.Sprintf("%s released: the shaft moved %s, %s; %s %s in each plane. %s",
			by.What, p.rise(by.Vertical), p.across(by.Horizontal), against(one.Over), p.fine(s.Limit),
			when(one.Over, "Cure it at the pipe and its supports, not at the feet, before the alignment.")))
	}
	source := "of Bloch and Geitner, Machinery Component Maintenance and Repair, p. 173 (read), since the job sets none"
	if entered.Limit.given() {
		source = "of the job's own"
		if entered.Source != "" {
			source = "of " + string(entered.Source)
		}
	}
	p.item("", "The limit for strain is that "+source+". The machine's maker may allow less.")
}

// spacing says what to do along the shafts, which no move at the feet mends.
func (p *report) spacing(entered *spacing, s *spacingFound) {
	between := "between the shafts"
	if entered.Between != "" {
		between = string(entered.Between)
	}
	p.item("spacing", fmt.Sprintf("%s: %s measured, %s wanted: %s; %s %s either way. %s",
		between, p.entered(entered.Measured, p.apart), p.entered(entered.Wanted, p.apart),
		p.way(s.Off, "too wide", "too narrow", "as wanted"), against(s.Over), p.fine(entered.Allowed.Value), p.alongBy(s)))
}

func (p *report) alongBy(s *spacingFound) string {
	if !s.Over {
		return ""
	}
	way := "towards"
	if s.Off < 0 {
		way = "away from"
	}
	return fmt.Sprintf("Move the movable machine along the shafts %s the stationary one, by %s, before the alignment, and read the tape and the dials again.", way, p.size(s.Off))
}

// rise and across are movements, whose words are those of directions.
func (p *report) rise(l units.Length) string { return p.way(l, "up", "down", "neither up nor down") }

func (p *report) across(l units.Length) string {
	if words := p.sideways(l); words != p.sideways(0) {
		return words
	}
	return "not sideways"
}

func against(over bool) string {
	if over {
		return "OVER the limit of"
	}
	return "within the limit of"
}

func when(is bool, words string) string {
	if is {
		return words
	}
	return ""
}
