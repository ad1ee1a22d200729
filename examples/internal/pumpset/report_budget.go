package pumpset

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// budget tells what the uncertainty of the moves rests on.
func (p *report) budget(s *state) {
	b := s.Budget
	if b == nil {
		return
	}
	p.section("What the uncertainty rests on")
	p.para(fmt.Sprintf("Of the moves at %s, which is farthest from the coupling: u %s up or down, %s sideways. Each line is a part of its square.",
		b.Foot, p.fine(b.U.Vertical), p.fine(b.U.Horizontal)))
	m := p.Job.methods(&p.Job.Found)[0]
	sets := m.Sets()
	widths := []int{54, 12}
	p.row(widths, "", "up or down", "sideways")
	for _, e := range b.Entries {
		p.row(widths, entryWords(e, sets), share(e.U.Vertical, b.U.Vertical), share(e.U.Horizontal, b.U.Horizontal))
	}
	p.para("To know the moves better, improve what stands for most. What the job does not state counts as exact here.")
}

// share is a part of a square in hundredths.
func share(u, of units.Length) string {
	if of == 0 {
		return "none"
	}
	share := 100 * float64(u/of) * float64(u/of)
	if share < 0.5 {
		return "under 1 %"
	}
	return fmt.Sprintf("%.0f %%", share)
}

// entryWords say what a part of the uncertainty comes from.
func entryWords(e budgetEntry, sets [2]align.Set) string {
	switch e.Of {
	case "growth":
		return "how the machines grow"
	case "foot":
		return "where these feet stand on the tape"
	}
	return map[string]string{
		"reading": "readings of the ",
		"angle":   "single clock positions of the ",
		"station": "place on the tape of the ",
		"radius":  "diameter swept by the ",
		"sag":     "sag of the ",
		"clock":   "clock positions of the ",
	}[e.Of] + shortTitle(sets[*e.Set].Probe)
}

// shortTitle names a probe by what it is and by who carries it.
func shortTitle(probe align.Probe) string {
	switch probe.Kind {
	case align.Rim:
		return fmt.Sprintf("rim dial, %s carrier", probe.Carrier)
	case align.NearFace, align.FarFace:
		return fmt.Sprintf("face dial, %s carrier", probe.Carrier)
	case align.SpacerFace, align.SpacerFarFace:
		return fmt.Sprintf("face dial at the %s hub", probe.Carrier)
	case align.Straightedge:
		return "feeler under the straightedge"
	}
	return "gauge in the gap"
}
