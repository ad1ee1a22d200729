package graph

import (
	"math"

	"example.org/collinear/units"
)

// ticks draws the ticks of an axis across the shaft between two heights, with sizes
// of lengths counted from zero, of which each millimetre takes so much paper. They
// stand one and a half lines of text apart at least.
func (k *ink) ticks(u units.LengthUnit, zero, top, bottom, scale float64) {
	unit := scale / units.Millimetre.In(u)
	step := atLeast(1.6*letters/unit, ticking)
	for i := math.Ceil((zero - bottom) / unit / step); i*step*unit <= zero-top; i++ {
		y := zero - i*step*unit
		k.line(fine, point{margin - 1, y}, point{margin, y})
		k.text(point{margin - 1.5, y + 0.9}, left, number(math.Abs(i*step))+" "+u.String())
	}
}
