package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Line is a straight line in one plane: w(x) = Offset + Slope*x. The zero value
// is the axis itself.
type Line struct {
	Offset units.Length `json:"offset"` // w at x = 0, the coupling centre
	Slope  units.Slope  `json:"slope"`  // dw/dx
}

// At returns the line's w at station x.
func (l Line) At(x units.Length) units.Length { return l.Offset + l.Slope.Over(x) }

// Plus returns the line whose w is the sum of both.
func (l Line) Plus(m Line) Line { return Line{l.Offset + m.Offset, l.Slope + m.Slope} }

// Times returns the line whose w is k times that of l.
func (l Line) Times(k float64) Line {
	return Line{units.Length(k * float64(l.Offset)), units.Slope(k * float64(l.Slope))}
}

// Point is a place on a line: its station X and its W there.
type Point struct {
	X units.Length `json:"x"`
	W units.Length `json:"w"`
}

// Through returns the line through p and q: two dial planes, two feet, or two
// points read off a drawing. It refuses points at one station (Conflict, at
// /q/x) and numbers that are not finite.
func Through(p, q Point) (Line, error) {
	var faults check.Faults
	var root check.Path
	atP, atQ := root.Field("p"), root.Field("q")
	check.Finite(&faults, atP.Field("x"), p.X)
	check.Finite(&faults, atP.Field("w"), p.W)
	check.Finite(&faults, atQ.Field("x"), q.X)
	check.Finite(&faults, atQ.Field("w"), q.W)
	if apart := q.X - p.X; max(apart, -apart) < check.Least {
		faults.Add(units.Conflict, atQ.Field("x"), q.X, "a station other than that of p")
	}
	if err := faults.Err(); err != nil {
		return Line{}, err
	}
	slope := (q.W - p.W).Per(q.X - p.X)
	return Line{Offset: p.W - slope.Over(p.X), Slope: slope}, nil
}
