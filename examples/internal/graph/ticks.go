package graph

import (
	"math"

	"example.org/collinear/units"
)

// ticks draws the ticks of an axis across the shaft between two heights, with sizes
// of lengths counted from zero, of which each millimetre takes so much paper. Two of
// them at least find room, or else the axis would tell no scale.
func (k *ink) ticks(u units.LengthUnit, zero, top, bottom, scale float64) {
	unit := scale / units.Millimetre.In(u)
	step := min(atLeast(1.6*letters/unit, ticking), atMost(max(zero-top, bottom-zero)/unit, round))
	for i := math.Ceil((zero - bottom) / unit / step); i*step*unit <= zero-top; i++ {
		y := zero - i*step*unit
		k.line(fine, point{margin - 1, y}, point{margin, y})
		k.text(point{margin - 1.5, y + 0.9}, left, number(math.Abs(i*step))+" "+u.String())
	}
}

// ends writes what lies above an axis across the shaft, and what below it.
func (k *ink) ends(above, below string, top, bottom float64) {
	const room = width / 2
	k.text(point{0, top - 1.4}, right, cut(above, room))
	k.text(point{0, bottom + row + 0.6}, right, cut(below, room))
}
