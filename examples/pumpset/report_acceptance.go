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
	p.items(v)
	outcome := "All are within."
	if v.Outcome != tolerance.Within {
		outcome = "Not all are within."
	}
	p.para(outcome + " This is simple acceptance: what is off target against its limit. u stands beside it and decides nothing, so look at it where a value is close to its limit. It is not permission to run.")
}

// items shows each item with its ratio.
func (p *report) items(v *tolerance.Verdict) {
	for i, item := range v.All() {
		text := fmt.Sprintf("%s, %s (%s); %.2f times the limit", item.Text(p.tolerance()), inOrOut(item.Within()), p.itemDoubt(item), item.Ratio)
		if i == v.Governs && v.Used > 1 {
			text += "; this one governs"
		}
		p.point(text)
	}
	if p.Job.Acceptance.Sliding.given() {
		p.para(p.slidingWords(v))
	}
}

// slidingWords say what limits by a sliding speed are silent about: what two of
// them do at once. The flex planes of a spacer are apart.
func (p *report) slidingWords(v *tolerance.Verdict) string {
	speed := p.Job.Acceptance.Sliding.text
	if p.Job.Coupling.Span.given() {
		return "At its limit each flex plane by itself reaches " + speed + "."
	}
	words := "At its limit each of the two by itself reaches " + speed + "; both at once reach up to the sum."
	if p.rubs(v) {
		words += fmt.Sprintf(" HERE THE SUM IS %.2f TIMES THE LIMIT: each is within, but both at once may reach more than %s.", ratios(v), speed)
	}
	return words
}

// rubs tells whether offset and slope are each within limits by a sliding speed,
// and at once may be over it.
func (p *report) rubs(v *tolerance.Verdict) bool {
	return v != nil && p.Job.Acceptance.Sliding.given() && !p.Job.Coupling.Span.given() &&
		v.Outcome == tolerance.Within && ratios(v) > 1
}

func ratios(v *tolerance.Verdict) float64 {
	sum := 0.0
	for _, item := range v.All() {
		sum += item.Ratio
	}
	return sum
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
