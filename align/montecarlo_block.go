package align

import (
	"math"
	"slices"

	"example.org/collinear/units"
)

// Block holds the outcomes of some trials of a job; see [MonteCarlo.Block]. The
// zero value comes from no job, and [Summarise] refuses it.
type Block struct {
	job     *MonteCarlo
	fitted  Fitted // of the sets as they stand
	seed    uint64
	number  uint32
	failed  int
	nominal []float64   // the outcome of the inputs as they stand
	sums    []float64   // of outcome less nominal, output by output
	squares []float64   // of its squares
	cross   matrix      // of its products, for the four numbers
	columns [][]float64 // all outcomes, output by output, in rising order at the end
}

// The outputs of a job, in lengths of nanometres and slopes, begin with the four
// numbers and go on with these; two follow for each foot, and six for the flex
// planes where there is a span.
const (
	offsetSize = four + iota
	slopeSize
	firstFoot
)

// flexAt is where the tilts of the flex planes begin.
func (m *MonteCarlo) flexAt() int { return firstFoot + 2*len(m.Feet) }

// appendOutcome appends to dst what follows from a residual; station tells where
// a foot stands in this trial. A number that is not finite tells that the outcome
// is none.
func (m *MonteCarlo) appendOutcome(dst []float64, off Centreline, station func(Foot) units.Length) []float64 {
	w, tilt := off.At(0), off.Tilt()
	dst = append(dst,
		float64(off.Horizontal.Offset), float64(off.Horizontal.Slope),
		float64(off.Vertical.Offset), float64(off.Vertical.Slope),
		float64(w.Size()), float64(tilt.Size()))
	for _, f := range m.Feet {
		at := off.At(station(f))
		dst = append(dst, 0-float64(at.Horizontal), 0-float64(at.Vertical)) // 0 - w: no negative zero
	}
	if m.Coupling.Span == 0 {
		return dst
	}
	stationary, movable, err := m.Coupling.FlexTilts(off)
	if err != nil { // what is drawn can leave the numbers that it takes
		return append(dst, math.NaN())
	}
	for _, k := range [2]Tilt{stationary, movable} {
		dst = append(dst, float64(k.Horizontal), float64(k.Vertical), float64(k.Size()))
	}
	return dst
}

func newBlock(m MonteCarlo, f Fitted, seed uint64, number uint32) Block {
	b := Block{job: &m, fitted: f, seed: seed, number: number}
	off := f.Value.Minus(m.Target.Value)
	b.nominal = m.appendOutcome(nil, off, func(f Foot) units.Length { return f.X })
	n := len(b.nominal)
	b.sums, b.squares, b.columns = make([]float64, n), make([]float64, n), make([][]float64, n)
	for i := range b.columns {
		b.columns[i] = make([]float64, 0, TrialsPerBlock)
	}
	return b
}

// add takes in the outcome of one trial. Sums are taken of what it differs by
// from the nominal one, so that blocks add up and no digits cancel.
func (b *Block) add(outcome []float64) {
	for i, x := range outcome {
		d := x - b.nominal[i]
		b.columns[i] = append(b.columns[i], x)
		b.sums[i] += d
		b.squares[i] += float64(d * d)
	}
	var d [four]float64
	for i := range d {
		d[i] = outcome[i] - b.nominal[i]
	}
	b.cross.addSquare(d)
}

func (b *Block) sort() {
	for _, column := range b.columns {
		slices.Sort(column)
	}
}
