package align

import (
	"math/rand/v2"

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
	columns [][]float64 // all outcomes, output by output
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

// follow fills the columns behind those of the four numbers, which are given: what
// follows from each residual. The stations of the feet are drawn; without random
// numbers they are as stated.
func (m *MonteCarlo) follow(columns [][]float64, random *rand.Rand) {
	y, z := columns[offsetY], columns[offsetZ]
	ySlope, zSlope := columns[slopeY], columns[slopeZ]
	sizes(columns[offsetSize], y, z)
	sizes(columns[slopeSize], ySlope, zSlope)
	for i, f := range m.Feet {
		horizontal, vertical := columns[firstFoot+2*i], columns[firstFoot+2*i+1]
		if random == nil || f.U == 0 {
			moves(horizontal, y, ySlope, f.X)
			moves(vertical, z, zSlope, f.X)
			continue
		}
		for k := range y {
			x := about(random, f.X, f.U)
			moves(horizontal[k:k+1], y[k:], ySlope[k:], x)
			moves(vertical[k:k+1], z[k:], zSlope[k:], x)
		}
	}
	if m.Coupling.Span != 0 {
		m.followFlex(columns[:four], columns[m.flexAt():])
	}
}

func lineOf(offset, slope float64) Line { return Line{units.Length(offset), units.Slope(slope)} }

// moves fills dst with what takes lines of these offsets and slopes to zero at x.
func moves(dst, offset, slope []float64, x units.Length) {
	offset, slope = offset[:len(dst)], slope[:len(dst)]
	for k := range dst {
		dst[k] = 0 - float64(lineOf(offset[k], slope[k]).At(x)) // 0 - w: no negative zero
	}
}

// sizes fills dst with the lengths of the vectors (y, z).
func sizes(dst, y, z []float64) {
	y, z = y[:len(dst)], z[:len(dst)]
	for k := range dst {
		dst[k] = root2(y[k], z[k])
	}
}

// followFlex fills three columns for each flex plane. Tilts are linear in offset and
// slope, so those of one of each tell all.
func (m *MonteCarlo) followFlex(numbers, tilts [][]float64) {
	perOffset := m.tiltsOf(lineOf(1, 0))
	perSlope := m.tiltsOf(lineOf(0, 1))
	for i := range perOffset {
		horizontal, vertical := tilts[3*i], tilts[3*i+1]
		combine(horizontal, numbers[offsetY], numbers[slopeY], perOffset[i], perSlope[i])
		combine(vertical, numbers[offsetZ], numbers[slopeZ], perOffset[i], perSlope[i])
		sizes(tilts[3*i+2], horizontal, vertical)
	}
}

// tiltsOf returns the tilts of the stationary and of the movable flex plane that a
// line makes.
func (m *MonteCarlo) tiltsOf(l Line) [2]float64 {
	stationary, movable, _ := m.Coupling.FlexTilts(Centreline{Vertical: l}) // the span was checked
	return [2]float64{float64(stationary.Vertical), float64(movable.Vertical)}
}

// combine fills dst with a*p + b*q.
func combine(dst, a, b []float64, p, q float64) {
	a, b = a[:len(dst)], b[:len(dst)]
	for k := range dst {
		dst[k] = float64(a[k]*p) + float64(b[k]*q)
	}
}

// columns makes room for n trials, output by output.
func (m *MonteCarlo) columns(n int) [][]float64 {
	outputs := m.flexAt()
	if m.Coupling.Span != 0 {
		outputs += 6
	}
	all := make([]float64, outputs*n)
	columns := make([][]float64, outputs)
	for i := range columns {
		columns[i], all = all[:n:n], all[n:]
	}
	return columns
}

func newBlock(m MonteCarlo, f Fitted, seed uint64, number uint32) Block {
	b := Block{job: &m, fitted: f, seed: seed, number: number, columns: m.columns(TrialsPerBlock)}
	off, nominal := f.Value.Minus(m.Target.Value), m.columns(1)
	put(nominal, 0, off.numbers())
	m.follow(nominal, nil)
	for _, column := range nominal {
		b.nominal = append(b.nominal, column[0])
	}
	b.sums, b.squares = make([]float64, len(nominal)), make([]float64, len(nominal))
	return b
}

// put writes the four numbers of trial k, in millimetres and ratios, into their
// columns.
func put(columns [][]float64, k int, off [four]float64) {
	columns[offsetY][k], columns[slopeY][k] = float64(fromMM(off[offsetY])), off[slopeY]
	columns[offsetZ][k], columns[slopeZ][k] = float64(fromMM(off[offsetZ])), off[slopeZ]
}

// run runs all trials of the block.
func (b *Block) run(t *trials) {
	n := 0
	for range TrialsPerBlock {
		if off, ok := t.next(); ok {
			put(b.columns, n, off)
			n++
		}
	}
	b.failed = TrialsPerBlock - n
	for i := range b.columns {
		b.columns[i] = b.columns[i][:n]
	}
	b.job.follow(b.columns, t.random)
	b.sum()
}

// sum takes the sums of what each outcome differs by from the nominal one, so that
// blocks add up and no digits cancel.
func (b *Block) sum() {
	for i, column := range b.columns {
		sum, squares, nominal := 0.0, 0.0, b.nominal[i]
		for _, x := range column {
			d := x - nominal
			sum += d
			squares += float64(d * d)
		}
		b.sums[i], b.squares[i] = sum, squares
	}
	for k := range b.columns[0] {
		var d [four]float64
		for i := range d {
			d[i] = b.columns[i][k] - b.nominal[i]
		}
		b.cross.addSquare(d)
	}
}
