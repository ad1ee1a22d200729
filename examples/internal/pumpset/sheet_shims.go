package pumpset

import "example.org/collinear/shims"

// shims shows what the hands do under each foot.
func (p *sheet) shims() {
	if p.Packs == nil || p.Packs.Choice == nil {
		return
	}
	p.Open("section", "class", "shims")
	p.Leaf("h2", "Shims")
	if lost := p.notReached(); lost != nil {
		p.Leaf("p", "Fit none of these packs until this is settled: the stock does not reach what is wanted under "+list(lost)+".", "class", "first")
	}
	p.Open("table")
	p.row("th", "foot", "alignment and soft foot together", "take out", "put in", "comes to")
	for i, s := range p.Packs.Choice.Stacks {
		p.pack(i, s)
	}
	p.End()
	p.End()
}

func (p *sheet) pack(i int, s shims.Stack) {
	o := p.Packs.Orders[i]
	wanted := p.more(o.Correction + o.SoftFoot)
	if p.stepped(p.Job.SingleFeet.Feet[i].Name) {
		wanted += ", and the stepped shim"
	}
	p.row("td", s.Foot, wanted, p.hands(s.Out), p.hands(s.In), p.fine(s.Total)+", "+p.error(s))
}
