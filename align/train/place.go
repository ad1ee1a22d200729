package train

import (
	"math"

	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// The two planes, as an index.
const (
	horizontal = iota
	vertical
)

var (
	planeNames = [...]string{horizontal: "horizontal", vertical: "vertical"}
	planes     = [...]tolerance.Plane{horizontal: tolerance.Horizontal, vertical: tolerance.Vertical}
)

// limit is that of the foot in one plane.
func (f *Foot) limit(plane int) Limit {
	if plane == vertical {
		return f.Vertical
	}
	return f.Horizontal
}

// ends returns the least and the largest move in millimetres, infinite where there
// is none.
func (l Limit) ends() (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	if l.hasLow {
		low = mm(l.low)
	}
	if l.hasHigh {
		high = mm(l.high)
	}
	return low, high
}

func mm(l units.Length) float64 { return float64(l / units.Millimetre) }

func fromMM(x float64) units.Length { return units.Length(x) * units.Millimetre }

// hasPlace tells whether a straight line keeps the limits of all feet. Two feet
// always have one. That any three have one is enough: each limit allows a convex
// set of lines, which have two parameters (Helly's theorem, from memory).
func (m *Machine) hasPlace(plane int) bool {
	for i := range m.Feet {
		for j := range m.Feet {
			for k := range m.Feet {
				if f, g, h := &m.Feet[i], &m.Feet[j], &m.Feet[k]; f.X < g.X && g.X < h.X && !lineThrough(f, g, h, plane) {
					return false
				}
			}
		}
	}
	return true
}

// lineThrough tells whether a line keeps the limits of three feet in the order of
// their stations: whether that of the middle one reaches what lies between the
// chords of the others.
func lineThrough(f, g, h *Foot, plane int) bool {
	const rounding = 1e-9 // mm
	lowF, highF := f.limit(plane).ends()
	lowG, highG := g.limit(plane).ends()
	lowH, highH := h.limit(plane).ends()
	share := mm(g.X-f.X) / mm(h.X-f.X) // above 0 and below 1: an infinite end stays one
	chord := func(first, last float64) float64 { return float64((1-share)*first) + float64(share*last) }
	return max(lowG-chord(highF, highH), chord(lowF, lowH)-highG) <= rounding
}
