package pumpset

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/graph"
	"example.org/collinear/units"
)

// sideView is the vertical plane, up being up.
func (p *report) sideView(st *state, shift align.Centreline) graph.Plane {
	g := p.plane(st, shift, func(v align.Vector) units.Length { return v.Vertical }, p.moveUp)
	e := st.Result.Value.Vertical
	g.Says = p.height(e.Offset) + " at the coupling centre; " + p.climb(e.Slope) + ". " + g.Says
	g.Above, g.Below = "high", "low"
	return g
}

// planView is the horizontal plane from above. The library's 3 o'clock is up the page,
// since the stationary machine is on the left.
func (p *report) planView(st *state, shift align.Centreline) graph.Plane {
	g := p.plane(st, shift, func(v align.Vector) units.Length { return v.Horizontal }, p.moveAside)
	e := st.Result.Value.Horizontal
	g.Says = p.sideways(e.Offset) + " at the coupling centre; " + p.drift(e.Slope) + ". " + g.Says
	g.Above, g.Below = "towards "+p.three, "towards "+p.nine
	if p.view == align.FromStationary {
		g.Above, g.Below = g.Below, g.Above
	}
	return g
}

func (p *report) moveUp(by align.Vector) string    { return p.style().Height(by.Vertical) }
func (p *report) moveAside(by align.Vector) string { return p.style().Sideways(by.Horizontal) }

// plane is what both planes have in common.
func (p *report) plane(st *state, shift align.Centreline, of func(align.Vector) units.Length, move func(align.Vector) string) graph.Plane {
	g := graph.Plane{
		Joint:   [2]units.Length{-p.Job.Coupling.Span.Value / 2, p.Job.Coupling.Span.Value / 2},
		Movable: line(st.Result.Estimate, of),
		Target:  line(p.aim(), of),
		Rims:    p.rims(),
		Unit:    p.length,
	}
	for _, m := range st.Moves {
		g.Feet = append(g.Feet, graph.Foot{X: m.Foot.X, Words: m.Foot.Name + " " + p.size(of(m.By)), First: of(shift.At(m.Foot.X)), Then: of(m.By)})
		g.Says += m.Foot.Name + ": " + p.inPlace(move(m.By)) + ". "
	}
	g.From, g.To = p.ends()
	return g
}

// inPlace says of a foot with no move that it stays.
func (p *report) inPlace(move string) string {
	if move == "" {
		return "leave"
	}
	return move
}

// nearSide is from where the stationary machine is on the left.
func (p *report) nearSide() string {
	if p.view == align.FromStationary {
		return p.three
	}
	return p.nine
}

// ends are the stations between which the shafts are drawn: all that is told of, and
// an eighth of that more on either side.
func (p *report) ends() (from, to units.Length) {
	from, to = -p.Job.Coupling.Span.Value/2, p.Job.Coupling.Span.Value/2
	reach := func(x units.Length) { from, to = min(from, x), max(to, x) }
	for _, rim := range p.rims() {
		reach(rim)
	}
	for _, f := range p.Stations.Feet {
		reach(f.X)
	}
	spare := (to - from) / 8
	return from - spare, to + spare
}

// rims are where the dials touch, as far as that is on a rim.
func (p *report) rims() []units.Length {
	var list []units.Length
	for _, rim := range []*units.Length{p.Stations.StationaryRim, p.Stations.MovableRim} {
		if rim != nil {
			list = append(list, *rim)
		}
	}
	return list
}

// line is an estimate in one plane, with half the width of its interval.
func line(e align.Estimate, of func(align.Vector) units.Length) graph.Line {
	return func(x units.Length) (w, half units.Length) {
		at, _ := e.At(x)
		wide, err := e.ExpandedAt(x, usual)
		if err != nil {
			return of(at), units.Length(math.NaN()) // the drawing says that it is unknown
		}
		return of(at), of(wide)
	}
}
