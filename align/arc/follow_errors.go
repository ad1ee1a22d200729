package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// TurnError returns by how much what [Following.Now] finds is wrong, found less
// true, when the shafts have turned together by a small angle since the start,
// clockwise positive as the view names it: by what each probe takes for a move,
//
//	by (w_y - w_z tan t)    vertical      by (w_y cot t - w_z)    horizontal
//
// with w the displacement at its station, From. It serves to choose how still a
// shaft must be held. To first order in the angle, for the readings alone: a
// bracket that droops by s adds -s by sin t to its own, which is not counted.
// Derived here. It refuses an angle that is not finite (/by).
func (g *Following) TurnError(by units.Angle) (align.Centreline, error) {
	var faults check.Faults
	var root check.Path
	check.Finite(&faults, root.Field("by"), by)
	if err := faults.Err(); err != nil {
		return align.Centreline{}, err
	}
	var l align.Line
	for i := range g.probes {
		p := &g.probes[i]
		p.add(&l, units.Length(p.turned*float64(by)))
	}
	return g.inPlane(l), nil
}

// UnseenError returns by how much what [Following.Now] finds is wrong, found less
// true, when the machine has moved in the other plane as well since the start: by
// what each probe takes for a move,
//
//	D_y tan t    vertical      D_z cot t    horizontal
//
// with D_y and D_z the displacement of its station in the other plane. It serves
// to choose how well a machine must be held sideways while it is raised. Linear
// and, as such, exact. It refuses a line that is not finite (/other/slope).
func (g *Following) UnseenError(other align.Line) (align.Centreline, error) {
	var faults check.Faults
	var root check.Path
	checkLine(&faults, root.Field("other"), other)
	if err := faults.Err(); err != nil {
		return align.Centreline{}, err
	}
	var l align.Line
	for i := range g.probes {
		p := &g.probes[i]
		p.add(&l, units.Length(p.across*p.displacement(other)))
	}
	return g.inPlane(l), nil
}
