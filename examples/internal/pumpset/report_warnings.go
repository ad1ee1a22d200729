package pumpset

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
)

// trouble is something that is not as it should be, and the section that tells
// more of it.
type trouble struct{ what, where string }

// troubles is a list that grows by what is the case.
type troubles []trouble

func (t *troubles) add(is bool, what, where string) {
	if is {
		*t = append(*t, trouble{what, where})
	}
}

// warnings gathers all that is not as it should be, wherever it stands, and what
// the library finds odd about readings that it could use.
func (p *report) warnings() {
	p.section("Warnings")
	all := append(p.unsettled(), p.unfit()...)
	all = append(all, p.leftOver()...)
	for _, t := range all {
		p.point(capital(t.what) + ": see " + strings.ToUpper(t.where) + ".")
	}
	odd := p.odd()
	for _, words := range odd {
		p.point(words)
	}
	if len(all)+len(odd) == 0 {
		p.para("None.")
	}
}

// unsettled is what has to be settled before anything is moved.
func (p *report) unsettled() (t troubles) {
	const checks, feet = "Checks before the alignment", "Soft foot"
	for _, shaft := range []align.Shaft{align.Stationary, align.Movable} {
		t.add(p.runsOut(shaft), "the "+shaft.String()+" shaft runs out by more than its limit", checks)
	}
	t.add(p.strained(), "the piping strains the machine", checks)
	t.add(p.Checks != nil && p.Checks.Spacing != nil && p.Checks.Spacing.Over, "the spacing along the shafts is wrong", checks)
	t.add(p.uncured(), "feet are soft, and shims do not cure it", feet)
	t.add(!p.uncured() && p.beyondShims(), "feet are soft in part from what shims do not cure", feet)
	return t
}

func (p *report) runsOut(shaft align.Shaft) bool {
	if p.Checks == nil {
		return false
	}
	for _, r := range p.Checks.Runout {
		if r.Over && r.Shaft == shaft {
			return true
		}
	}
	return false
}

func (p *report) strained() bool {
	if p.Checks == nil || p.Checks.Strain == nil {
		return false
	}
	for _, s := range p.Checks.Strain.Released {
		if s.Over {
			return true
		}
	}
	return false
}

// unfit is what is wrong with the packs.
func (p *report) unfit() (t troubles) {
	const packs = "Shims, foot by foot"
	if p.Packs == nil || p.Packs.Choice == nil {
		return nil
	}
	lost := p.notReached()
	t.add(lost != nil, "fit none of the packs: what is wanted is not reached under "+list(lost), packs)
	t.add(!p.Packs.Choice.Proven, "the search for packs ended early, and there may be better ones", packs)
	if w := p.Packs.Leave; w != nil && w.Verdict != nil {
		t.add(w.Verdict.Outcome == tolerance.Outside, "the packs would leave the alignment outside its limits", packs)
		t.add(w.Verdict.Outcome == tolerance.Undecided, "it is not sure enough that the packs would leave the alignment within its limits", packs)
		t.add(p.rubs(w.Verdict), bothRub, packs)
	}
	return t
}

const bothRub = "offset and slope are each within, but both at once may be over the sliding speed"

// leftOver is what is wrong with what was left.
func (p *report) leftOver() (t troubles) {
	t.add(p.stillSoft(), "feet are still soft", "Soft foot as left")
	if p.Left != nil && p.Left.Verdict != nil {
		const left = "Acceptance as left"
		t.add(p.Left.Verdict.Outcome == tolerance.Outside, "the alignment as left is outside its limits", left)
		t.add(p.Left.Verdict.Outcome == tolerance.Undecided, "it is not sure enough that the alignment as left is within its limits", left)
		t.add(p.rubs(p.Left.Verdict), bothRub, left)
	}
	return t
}

func (p *report) stillSoft() bool { return p.SoftFootLeft != nil && len(p.SoftFootLeft.Fits) > 0 }

// odd is what the library finds about readings.
func (p *report) odd() []string {
	var list []string
	for _, s := range []*state{&p.Found, p.Left} {
		if s == nil {
			continue
		}
		for i := range s.Result.Warnings {
			list = append(list, s.Result.Warnings[i].Error())
		}
	}
	return list
}

// before lists what has to be settled before anything is moved.
func (p *report) before() []string {
	var list []string
	for _, t := range p.unsettled() {
		list = append(list, t.what)
	}
	return append(list, warned(&p.Found)...)
}

// after lists what has to be settled before the rest is taken out.
func (p *report) after() []string {
	var list []string
	if p.stillSoft() {
		list = append(list, "feet are still soft")
	}
	return append(list, warned(p.Left)...)
}

func warned(s *state) []string {
	if len(s.Result.Warnings) == 0 {
		return nil
	}
	return []string{"the readings have warnings, see there"}
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
