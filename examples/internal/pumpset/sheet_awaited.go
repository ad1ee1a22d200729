package pumpset

// awaited is a form for the readings after the moves, beside what they should be.
func (p *sheet) awaited() {
	p.Leaf("p", "Not measured. On the target this should be read, counted from the first position, the sag of a bracket in it:")
	if lost := p.notReached(); lost != nil {
		p.Leaf("p", "This holds only on the target, which the packs under "+list(lost)+" do not reach.", "class", "first")
	}
	m := p.Job.methods(&p.Job.Found)[0]
	for i, set := range m.Sets() {
		p.Open("table", "class", "form")
		p.Leaf("caption", what(set.Probe))
		p.row("th", "at", "should be", "is")
		for k, r := range p.Expected[i] {
			words := p.change(&m.parts[i], r.Value)
			if k == 0 {
				words = "start"
			}
			p.row("td", m.parts[i].readings[k].At.text, words, "")
		}
		p.End()
	}
}
