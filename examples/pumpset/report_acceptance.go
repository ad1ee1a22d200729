package main

import (
	"fmt"
	"math"

	"example.org/collinear/tolerance"
)

// verdict shows each item beside its limit and its uncertainty.
func (p *report) verdict(when string, s *state) {
	if s.Verdict == nil {
		return
	}
	p.section("Acceptance " + when)
	p.item("rule", p.ruleWords())
	p.item("source", p.Limits.Source)
	v := s.Verdict
	for i, item := range v.All() {
		text := fmt.Sprintf("%s, %s (%s); %.2f times the limit", item.Text(p.tolerance()), inOrOut(item.Within()), p.itemDoubt(item), item.Ratio)
		if i == v.Governs && v.Used > 1 {
			text += "; this one governs"
		}
		p.point(text)
	}
	outcome := "All are within."
	if v.Outcome != tolerance.Within {
		outcome = "Not all are within."
	}
	p.para(outcome + " This is simple acceptance: what is off target against its limit. u stands beside it and decides nothing, so look at it where a value is close to its limit. It is not permission to run.")
}

func (p *report) ruleWords() string {
	words := p.Limits.Rule
	if s := p.Job.Speed; s.given() {
		words += "; the shafts run at " + s.text
	}
	if p.Limits.PerPlane {
		return words + "; each plane by itself"
	}
	return words + "; both planes together"
}

func (p *report) tolerance() tolerance.Style {
	return tolerance.Style{Length: p.length, LengthDigits: p.digits, Slope: p.slope, SlopeDigits: 2}
}

func inOrOut(within bool) string {
	if within {
		return "within"
	}
	return "OVER"
}

func (p *report) itemDoubt(i tolerance.Item) string {
	u := i.U.Slope.Text(p.slope, 3)
	if i.Of == tolerance.Offset {
		u = p.fine(i.U.Length)
	}
	if math.IsNaN(float64(i.U.Slope)) || math.IsNaN(float64(i.U.Length)) {
		return "u unknown"
	}
	return "u " + u
}
