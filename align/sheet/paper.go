package sheet

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Paper is how a graph is drawn on squared paper: the two scales, and how well
// the drawer's hand keeps to them. Distances along the shaft are made shorter, or
// the machine would not go on the sheet; distances across it are made larger, or
// nobody would see them.
//
// The zero value has no scale and draws nothing; [SuggestPaper] finds scales.
type Paper struct {
	Reduction    float64 `json:"reduction"`    // how many times shorter than the machine, along the shaft; above zero: at 10, 1 mm on paper is 10 mm
	Exaggeration float64 `json:"exaggeration"` // how many times larger than the truth, across the shaft; above zero: at 100, 1 mm on paper is 0.01 mm

	// Pencil is how far a point that is put on the paper, or read off it, may be
	// off on the paper, along as well as across, either way. Zero: DefaultPencil.
	Pencil units.Length `json:"pencil,omitzero"`
}

// DefaultPencil is what a careful hand with a sharp pencil keeps to: half of a
// square of 1 mm. The figure is ours, no source gives one.
const DefaultPencil = 500 * units.Micrometre

// Mark is a place on the paper: X to the right of the coupling centre, Y up from
// the stationary axis, both as a rule laid on the paper shows them.
type Mark struct {
	Name string       `json:"name,omitempty"` // what stands beside it; ends of lines have none
	X    units.Length `json:"x"`
	Y    units.Length `json:"y"`
}

// along is a distance along the shaft as it stands on the paper.
func (p Paper) along(x units.Length) units.Length { return x / units.Length(p.Reduction) }

// mark puts a place of the machine on the paper.
func (p Paper) mark(name string, x, w units.Length) Mark {
	y := units.Length(float64(w) * p.Exaggeration)
	return Mark{Name: name, X: p.along(x) + 0, Y: y + 0} // no negative zero
}

func (p Paper) pencil() units.Length {
	if p.Pencil == 0 {
		return DefaultPencil
	}
	return p.Pencil
}

// tolerance is what a value of w, read off at station x from a line of this slope
// laid through two points, may be off by at most: see [Graph].
func (p Paper) tolerance(slope units.Slope, through [2]Station, x units.Length) units.Length {
	e := p.pencil()
	d := p.along(distance(through[0].X, through[1].X))
	l := p.along(max(distance(x, through[0].X), distance(x, through[1].X)))
	s := units.Length(float64(slope) * p.Reduction * p.Exaggeration)
	across := 2 * e * (1 + distance(s, 0)) * max(1, l/(d-2*e)) // derived at Graph
	return across / units.Length(p.Exaggeration)
}

// distance is how far two places are from each other.
func distance(a, b units.Length) units.Length { return max(a-b, b-a) }

func (p Paper) check(faults *check.Faults, root check.Path) {
	check.Positive(faults, root.Field("reduction"), p.Reduction, "a reduction")
	check.Positive(faults, root.Field("exaggeration"), p.Exaggeration, "an exaggeration")
	check.NotNegative(faults, root.Field("pencil"), p.Pencil, "an error of the pencil")
}

// sound tells whether check finds nothing.
func (p Paper) sound() bool {
	var faults check.Faults
	p.check(&faults, check.Path{})
	return faults.Len() == 0
}
