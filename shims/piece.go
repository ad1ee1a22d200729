package shims

import "example.org/collinear/units"

// Piece is one kind of shim, and how many there are of it.
type Piece struct {
	Marked   units.Length `json:"marked,omitzero"`   // thickness that stands on it; zero: no mark, then Measured is needed
	Measured units.Length `json:"measured,omitzero"` // thickness that was measured; zero: as marked
	Count    int          `json:"count"`
}

// Thickness returns the thickness that counts: Measured where it was given, and
// Marked otherwise.
func (p Piece) Thickness() units.Length {
	if p.Measured != 0 {
		return p.Measured
	}
	return p.Marked
}

// sameKind tells whether two pieces bear the same mark and measure the same.
func (p Piece) sameKind(q Piece) bool { return p.Marked == q.Marked && p.Measured == q.Measured }

// Stock is what lies in the box. Pieces with the same mark and measure are the
// same kind, and the counts of a kind that stands there twice add up. A count of
// zero is a size that has run out, which [Choice.Add] may name again. The zero
// value is an empty box.
type Stock []Piece

// CommonInch returns the thicknesses, from 0.001 in to 0.125 in, that boxes of
// inch shims commonly have, with so many pieces of each. From memory, no source:
// look into your own box. The count is not checked here but by [Choose].
func CommonInch(count int) Stock {
	return common(units.Mil, count, 1, 2, 3, 4, 5, 10, 15, 20, 25, 31, 50, 62, 75, 100, 125)
}

// CommonMetric returns the thicknesses, from 0.05 mm to 3 mm, that boxes of
// metric shims commonly have, with so many pieces of each. From memory, no source:
// look into your own box. The count is not checked here but by [Choose].
func CommonMetric(count int) Stock {
	return common(10*units.Micrometre, count, 5, 10, 20, 25, 40, 50, 70, 100, 200, 300)
}

func common(unit units.Length, count int, sizes ...units.Length) Stock {
	stock := make(Stock, len(sizes))
	for i, n := range sizes {
		stock[i] = Piece{Marked: n * unit, Count: count}
	}
	return stock
}
