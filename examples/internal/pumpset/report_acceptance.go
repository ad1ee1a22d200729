package pumpset

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
	p.para(outcomeWords(v) + " " + decidedBy(v) + " It is not permission to run.")
}

func outcomeWords(v *tolerance.Verdict) string {
	switch v.Outcome {
	case tolerance.Within:
		return "All are within."
	case tolerance.Undecided:
		return "NOT DECIDED: what was measured is not sure enough to say within or over. Measure better, see what the uncertainty rests on, or take the rest out."
	}
	return "Not all are within."
}

// decidedBy tells how the verdict came about, and how sure it is.
func decidedBy(v *tolerance.Verdict) string {
	words := "Decided " + v.Chance() + "."
	if v.Rule == tolerance.Simple {
		words += " Simple acceptance holds what is off target against its limit; u and the probability stand beside it and decide nothing, so look at them where a value is close to its limit."
	}
	return words
}

// items shows each item with its ratio.
func (p *report) items(v *tolerance.Verdict) {
	for i, item := range v.All() {
		text := fmt.Sprintf("%s, %s (%s); %.2f times the limit; probability of being within it: %s",
			item.Text(p.tolerance()), inOrOut(item.Within()), p.itemDoubt(item), item.Ratio, item.Chance())
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
