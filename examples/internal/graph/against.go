package graph

import "math"

// Against draws where a value lies against its limit, both as numbers of times the
// limit: a dot on a line from nothing to twice the limit, which stands in the middle,
// with the interval of which half is told. What lies beyond twice the limit ends in an
// arrow. Half is not a number where nothing is known of it.
func Against(ratio, half float64, says string) Figure {
	const long, high, most = 36.0, 4.0, 2.0
	var k ink
	place := func(ratio float64) point { return point{1 + (long-2)*min(max(ratio, 0), most)/most, high / 2} }
	k.line(fine, place(0), place(most))
	limit := place(1)
	k.line(firm, point{limit.x, 0.2}, point{limit.x, high - 0.2})
	if half > 0 {
		k.line(bold, place(ratio-half), place(ratio+half))
	}
	at := place(ratio)
	if ratio > most {
		k.solid(at, point{at.x - 2, at.y - 1}, point{at.x - 2, at.y + 1})
	} else {
		k.dot(at)
	}
	if math.IsNaN(half) {
		says += "; how sure that is, is unknown"
	}
	return Figure{Width: long, Height: high, title: says, says: says, marks: k.String()}
}
