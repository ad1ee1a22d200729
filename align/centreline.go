package align

import (
	"math"

	"example.org/collinear/units"
)

// Centreline is a line in each of two planes, relative to the stationary axis:
// a misalignment, a growth, a target or a move. Horizontal is positive towards
// 3 o'clock, vertical is positive upwards. The zero value is in line.
type Centreline struct {
	Horizontal Line `json:"horizontal"`
	Vertical   Line `json:"vertical"`
}

// At returns where the centreline passes at station x.
func (c Centreline) At(x units.Length) Vector {
	return Vector{c.Horizontal.At(x), c.Vertical.At(x)}
}

// Tilt returns the slopes of the centreline.
func (c Centreline) Tilt() Tilt { return Tilt{c.Horizontal.Slope, c.Vertical.Slope} }

// Plus returns the sum of both: a misalignment after growth or after a move.
func (c Centreline) Plus(d Centreline) Centreline {
	return Centreline{c.Horizontal.Plus(d.Horizontal), c.Vertical.Plus(d.Vertical)}
}

// Minus returns c less d: what was found less the target.
func (c Centreline) Minus(d Centreline) Centreline { return c.Plus(d.Times(-1)) }

// Times returns k times c.
func (c Centreline) Times(k float64) Centreline {
	return Centreline{c.Horizontal.Times(k), c.Vertical.Times(k)}
}

// About returns the same centreline told from station x: its offset is what stood
// at x, and its stations count from there. Slopes stay.
func (c Centreline) About(x units.Length) Centreline {
	c.Horizontal.Offset, c.Vertical.Offset = c.Horizontal.At(x), c.Vertical.At(x)
	return c
}

// Exchanged returns the same misalignment with the roles of the two machines
// exchanged and the observer at the other end: the movable machine becomes the
// stationary one, x becomes -x, and 3 o'clock becomes 9. Exchanging twice gives
// c back.
func (c Centreline) Exchanged() Centreline {
	return Centreline{
		Horizontal: Line{c.Horizontal.Offset, -c.Horizontal.Slope},
		Vertical:   Line{-c.Vertical.Offset, c.Vertical.Slope},
	}
}

// Vector is a displacement across the axis: horizontal positive towards 3
// o'clock, vertical positive upwards.
type Vector struct {
	Horizontal units.Length `json:"horizontal"`
	Vertical   units.Length `json:"vertical"`
}

// Size returns the length of the vector, both planes together.
func (v Vector) Size() units.Length {
	return units.Length(root2(float64(v.Horizontal), float64(v.Vertical)))
}

// Direction returns the clock position that the vector points to; 12 o'clock
// for a vector of no length.
func (v Vector) Direction() units.Clock {
	return direction(float64(v.Horizontal), float64(v.Vertical))
}

// Tilt is the slope of a centreline in both planes.
type Tilt struct {
	Horizontal units.Slope `json:"horizontal"`
	Vertical   units.Slope `json:"vertical"`
}

// Size returns the slope in the plane in which it is steepest, both planes
// together.
func (t Tilt) Size() units.Slope {
	return units.Slope(root2(float64(t.Horizontal), float64(t.Vertical)))
}

// Direction returns the clock position towards which the centreline climbs,
// seen along +x; 12 o'clock for no tilt.
func (t Tilt) Direction() units.Clock {
	return direction(float64(t.Horizontal), float64(t.Vertical))
}

// root2 is the square root of the sum of two squares. math.Hypot would be safer
// far out of range but does not give the same bits on every platform.
func root2(a, b float64) float64 { return math.Sqrt(float64(a*a) + float64(b*b)) }

func direction(horizontal, vertical float64) units.Clock {
	return units.Clock(math.Atan2(horizontal, vertical) * 180 / math.Pi).Normal()
}
