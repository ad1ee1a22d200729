package sheet

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Graph is the drawing by which corrections are found without reckoning. It shows
// one plane: the stationary centreline as a straight line across the sheet, on a
// line of the print, and the movable centreline through two points that were
// plotted, lengthened with a ruler over the feet. There w is read off, and what is
// to be done about it is the opposite.
//
// The stationary machine is on the left. Of the vertical plane the sheet is a
// side view, up being up; of the horizontal plane it is a plan, the upper edge
// lying towards 3 o'clock. Marks are measured on the paper, W and Tolerance on the
// machine.
//
// # What may be asked of a value that was read off
//
// The hand is off by at most the pencil's e on paper, along and across, in each of
// three places: at both plotted points, and where the foot's station is marked
// and the value read. The axis and the scales are print and taken as exact; so is
// the ruler. With all lengths on paper, let D be the distance between the plotted
// points along the shaft, L that from the foot to the farther of them, and
// S = slope * Reduction * Exaggeration the slope of the line as it is drawn. Then
//
//	Tolerance = 2 e (1 + |S|) max(1, L/(D - 2e)) / Exaggeration
//
// This is the worst case, exactly: it can be reached and not be exceeded. Derived
// here. A point that is off by (a, b) lies d = b - S a above the true line, the
// drawn line is off by d1 (1 - t) + d2 t at the foot, t being the foot's place as a
// share of the way from one drawn point to the other, and the reading adds
// b + S a of its own. As each |d| is at most e (1 + |S|), the sum is at most
// e (1 + |S|) (|1 - t| + |t| + 1). Between the points that is 2 e (1 + |S|);
// beyond them it grows with t, which is largest, L/(D - 2e), when both points are
// drawn e too close to one another and the foot is off as much as the point it is
// farther from. Those errors are also the ones that make S a count in full.
//
// With D large against e, and a line that is flat on the paper, what is left is
// the error of a line through two points, e (|x - x1| + |x - x2|)/|x2 - x1|, and e
// for reading it. A steep line costs more since a place that is off along the
// shaft then shows across it: at S = 1, as much again.
type Graph struct {
	Paper      Paper      `json:"paper"`      // as drawn, the pencil stated
	Stationary [2]Mark    `json:"stationary"` // left and right end of the stationary centreline
	Movable    [2]Mark    `json:"movable"`    // ends of the movable centreline, above or below those
	Points     [2]Mark    `json:"points"`     // where the ruler is laid, in the order given
	Feet       []FootMark `json:"feet,omitempty"`
}

// FootMark is a foot on a graph: what is read off there, and how well.
type FootMark struct {
	Foot      align.Foot   `json:"foot"`      // as given; its uncertainty has no part in the drawing
	W         units.Length `json:"w"`         // the movable centreline there, on the machine: the truth
	Tolerance units.Length `json:"tolerance"` // what a value read off may differ by, on the machine
	Mark      Mark         `json:"mark"`      // on the movable centreline, on paper
}

// Station is a place along the shaft at which a point is plotted: a plane in which
// a dial ran, or any other.
type Station struct {
	Name string       `json:"name,omitempty"`
	X    units.Length `json:"x"` // signed station; zero is the coupling centre, not "not given"
}

// Draw makes the graph of one plane. The line is the movable centreline there:
// what was found less the target, if the feet are to be moved by the opposite of
// what is read off. Through are the stations of the two points that are plotted:
// the dial planes of a reverse set; the rim's plane of a rim and face set, and a
// second as far from it as the drawer likes. The lines reach over the points, the
// feet and the coupling centre. There may be no feet; a foot needs a name, by
// which [Graph.Check] knows it.
//
// It refuses scales that are not above zero (at /reduction), a pencil below zero,
// numbers that are not finite (at /line/slope, /through/0/x), points that the
// pencil's error can bring together (Conflict, at /through/1/x), names that are
// missing or given twice (at /feet/0/name), a foot where the line, or what may
// be asked of the reading, is beyond 1000 km (OutOfRange, at /feet/0/x), and scales
// that put a mark beyond 1000 km on the paper (OutOfRange, at /exaggeration).
func (p Paper) Draw(line align.Line, through [2]Station, feet ...align.Foot) (Graph, error) {
	var faults check.Faults
	var root check.Path
	p.check(&faults, root)
	checkGraphed(&faults, root, line, through, feet)
	p.checkApart(&faults, root.Field("through"), through)
	if err := faults.Err(); err != nil {
		return Graph{}, err
	}
	p.Pencil = p.pencil()
	left, right := reach(through, feet)
	g := Graph{
		Paper:      p,
		Stationary: [2]Mark{p.mark("", left, 0), p.mark("", right, 0)},
		Movable:    [2]Mark{p.mark("", left, line.At(left)), p.mark("", right, line.At(right))},
	}
	for i, s := range through {
		g.Points[i] = p.mark(s.Name, s.X, line.At(s.X))
	}
	for _, f := range feet {
		w := line.At(f.X) + 0 // no negative zero
		g.Feet = append(g.Feet, FootMark{f, w, p.tolerance(line.Slope, through, f.X), p.mark(f.Name, f.X, w)})
	}
	g.checkTolerances(&faults, root.Field("feet"))
	g.checkMarks(&faults, root)
	if err := faults.Err(); err != nil {
		return Graph{}, err
	}
	return g, nil
}

// reach returns the outermost stations of all that is marked.
func reach(through [2]Station, feet []align.Foot) (left, right units.Length) {
	left = min(0, through[0].X, through[1].X)
	right = max(0, through[0].X, through[1].X)
	for _, f := range feet {
		left, right = min(left, f.X), max(right, f.X)
	}
	return left, right
}
