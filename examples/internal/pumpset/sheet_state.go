package pumpset

import (
	"fmt"
	"math"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/graph"
	"example.org/collinear/tolerance"
)

// found shows what was found, and what is to be done about it.
func (p *sheet) found(d drawn) {
	p.Open("section")
	p.Leaf("h2", "As found")
	p.state(&p.Found, p.report.before())
	p.pictures(d)
	p.End()
}

// leftAs shows what was left, if it was measured.
func (p *sheet) leftAs(d []drawn) {
	p.Open("section")
	p.Leaf("h2", "As left")
	if p.Left == nil {
		p.awaited()
	} else {
		p.state(p.Left, p.after())
		p.pictures(d[0])
	}
	p.End()
}

// state shows one survey: how the shafts lie, the verdict, the moves.
func (p *sheet) state(s *state, before []string) {
	p.Leaf("p", "Movable shaft as measured, at the coupling centre and going away from it: "+p.lies(s.Result.Estimate)+". "+p.uncertainty(s))
	p.acceptance(s.Verdict)
	p.toMove(s, before)
}

// pictures are those of one survey.
func (p *sheet) pictures(d drawn) {
	for _, f := range [...]graph.Figure{d.planes[0], d.planes[1], d.turns[0], d.turns[1]} {
		p.WriteString(f.SVG())
	}
	if d.lacks != "" {
		p.Leaf("p", d.lacks, "class", "small")
	}
}

// uncertainty tells what u is, and where it is not as stated.
func (p *sheet) uncertainty(s *state) string {
	if s.Result.Cov.Basis == align.Stated {
		return "u: standard uncertainty."
	}
	return basisWords(s)
}

// lies says in one line where a shaft lies.
func (p *sheet) lies(e align.Estimate) string {
	value, u, basis := e.Value, e.Cov.Standard(), e.Cov.Basis
	return fmt.Sprintf("%s (%s), %s (%s); %s (%s), %s (%s)",
		p.height(value.Vertical.Offset), p.doubt(u.Vertical.Offset, basis), p.climb(value.Vertical.Slope), p.slopeDoubt(u.Vertical.Slope, basis),
		p.sideways(value.Horizontal.Offset), p.doubt(u.Horizontal.Offset, basis), p.drift(value.Horizontal.Slope), p.slopeDoubt(u.Horizontal.Slope, basis))
}

// acceptance shows each quantity against its limit, and what they come to.
func (p *sheet) acceptance(v *tolerance.Verdict) {
	if v == nil {
		return
	}
	p.Open("table")
	p.row("th", "off the target", "measured", "chance", "against the limit")
	for _, item := range v.All() {
		p.Open("tr")
		p.Leaf("td", item.Text(p.tolerance())+" ("+p.itemDoubt(item)+")")
		p.Leaf("td", inOrOut(item.Within()))
		p.Leaf("td", item.Chance())
		p.Open("td")
		p.WriteString(shown(item))
		p.End()
		p.End()
	}
	p.End()
	p.Open("p")
	p.Leaf("strong", outcomeWords(v)+" It is not permission to run.")
	p.Text(" " + decidedBy(v))
	if p.rubs(v) {
		p.Text(" " + p.slidingWords(v))
	}
	p.End()
}

// shown draws an item, with twice its standard uncertainty either way.
func shown(i tolerance.Item) string {
	u, limit := float64(i.U.Slope), float64(i.Limit.Slope)
	if i.Of == tolerance.Offset {
		u, limit = float64(i.U.Length), float64(i.Limit.Length)
	}
	return graph.Against(i.Ratio, 2*u/limit, fmt.Sprintf("%.2f times the limit", i.Ratio)).SVG()
}

// toMove says how far each foot goes.
func (p *sheet) toMove(s *state, before []string) {
	if len(before) > 0 {
		p.Leaf("p", "Settle this before anything is moved, and read again: "+strings.Join(before, "; ")+".", "class", "first")
	}
	p.Open("table")
	p.row("th", "feet", "up or down", "right to", "sideways", "right to")
	for i, m := range s.Moves {
		up, aside := "unknown", "unknown"
		if s.Within != nil && !math.IsNaN(float64(s.Within[i].Vertical)) {
			up, aside = p.fine(s.Within[i].Vertical), p.fine(s.Within[i].Horizontal)
		}
		p.row("td", m.Foot.Name, p.inPlace(p.moveUp(m.By)), up, p.inPlace(p.moveAside(m.By)), aside)
	}
	p.End()
	if s.Within != nil {
		p.Leaf("p", "Each right to so much in 95 of 100 such jobs: a move smaller than that cannot be told from none.", "class", "small")
	}
}

// scopes are of a heading: it is that of its column.
var scopes = map[string]string{"th": "col"}

// row writes a row of a table.
func (p *sheet) row(cell string, texts ...string) {
	p.Open("tr")
	for _, text := range texts {
		p.Leaf(cell, text, "scope", scopes[cell])
	}
	p.End()
}
