package main

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// method is the one by which a job was measured, and the two stations at which its
// centreline is plotted.
type method struct {
	solver
	through [2]sheet.Station
}

// solver is what the methods of package dial have in common.
type solver interface {
	Solve() (dial.Result, error)
	Sets() [2]align.Set
}

// methodOf is that of a job that was accepted, and so has one.
func methodOf(j *sheet.Job) method {
	switch {
	case j.RimFace != nil:
		return method{j.RimFace, onwards("rim dial", j.RimFace.Rim.Station, j.Feet)}
	case j.RimGap != nil:
		return method{j.RimGap, onwards("rim dial", j.RimGap.Rim.Station, j.Feet)}
	case j.StraightedgeGap != nil:
		return method{j.StraightedgeGap, onwards("straightedge", j.StraightedgeGap.Straightedge.Station, j.Feet)}
	case j.FaceFace != nil:
		half := j.FaceFace.Span / 2
		return method{j.FaceFace, [2]sheet.Station{{Name: "stationary flex plane", X: -half}, {Name: "movable flex plane", X: half}}}
	}
	return method{j.Reverse, [2]sheet.Station{
		{Name: "dial on the stationary rim", X: j.Reverse.CarriedByMovable.Station},
		{Name: "dial on the movable rim", X: j.Reverse.CarriedByStationary.Station},
	}}
}

// onwards are the station of a rim, and the feet farthest from it: the slope is
// plotted as what it comes to over that distance. Without feet a metre will do.
func onwards(name string, x units.Length, feet []align.Foot) [2]sheet.Station {
	second := sheet.Station{Name: "a metre further on", X: x + units.Metre}
	farthest := units.Length(0)
	for _, f := range feet {
		if far := max(f.X-x, x-f.X); far > farthest {
			second, farthest = sheet.Station{Name: f.Name + " feet", X: f.X}, far
		}
	}
	return [2]sheet.Station{{Name: name, X: x}, second}
}

// lessTarget is the movable centreline as it was found, less where it should lie.
func lessTarget(m method, j *sheet.Job) (align.Centreline, error) {
	found, err := m.Solve()
	if err != nil {
		return align.Centreline{}, err
	}
	stationary, err := growth(j.Stationary)
	if err != nil {
		return align.Centreline{}, err
	}
	movable, err := growth(j.Movable)
	return found.Estimate.Minus(thermal.ColdTarget(stationary, movable)).Value, err
}

// growth is that of a machine; one without supports does not grow.
func growth(supports []thermal.Support) (align.Estimate, error) {
	if supports == nil {
		return align.Estimate{}, nil
	}
	return thermal.Growth(supports...)
}
