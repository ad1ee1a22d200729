package pumpset

import (
	"fmt"

	"example.org/collinear/tolerance"
)

// forecast shows what the packs leave, before they are fitted.
func (p *report) forecast() {
	p.blank()
	w := p.Packs.Leave
	if w == nil {
		p.para("What the errors of these packs do to the shaft is not forecast: that takes the height of the shaft, and three to eight single feet that do not stand in one line.")
		return
	}
	p.para("As these packs leave it, if the feet are slid as told:")
	off := w.Off.Value
	p.item("off target", fmt.Sprintf("up and down, %s at the coupling centre, %s; sideways, %s, as the machine rolls",
		p.height(off.Vertical.Offset), p.climb(off.Vertical.Slope), p.sideways(off.Horizontal.Offset)))
	if w.Verdict != nil {
		p.items(w.Verdict)
		p.para(wouldBe(w.Verdict.Outcome))
	}
	p.para("The errors of the feet also make a soft foot, as far as they do not lie in one plane: go round the feet when the packs are in.")
}

func wouldBe(o tolerance.Outcome) string {
	switch o {
	case tolerance.Within:
		return "All would be within."
	case tolerance.Undecided:
		return "NOT SURE ENOUGH THAT ALL WOULD BE WITHIN: it cannot be told from what was measured."
	}
	return "NOT ALL WOULD BE WITHIN: these packs are too far off what is wanted. Look for shims that come closer."
}
