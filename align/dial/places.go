package dial

import (
	"math"
	"strconv"

	"example.org/collinear/units"
)

// samePlace tells whether two clock positions are one place. Positions that were
// entered in tenths of a degree and added up meet to rounding only, so a
// millionth of a degree apart is the same; no hand or sensor tells it.
func samePlace(a, b units.Clock) bool {
	const near = 1e-6
	apart := float64((a - b).Normal())
	return apart <= near || 360-apart <= near
}

// degrees shows a computed position without the digits of its rounding.
func degrees(t units.Clock) string {
	x := math.Round(float64(t.Normal())*1e6) / 1e6
	return strconv.FormatFloat(x, 'g', -1, 64) + " deg"
}
