package align

import "math/rand/v2"

// Block holds the outcomes of some trials of a job; see [MonteCarlo.Block]. The
// zero value comes from no job, and [Summarise] refuses it.
type Block struct {
	job      *MonteCarlo
	fitted   Fitted // of the sets as they stand
	seed     uint64
	number   uint32
	failed   int
	outputs  []output
	nominal  []float64       // the outputs of the inputs as they stand
	sums     []float64       // of outputs less nominal
	squares  []float64       // of their squares
	cross    matrix          // of products, for the four numbers
	numbers  [four][]float64 // of all trials, found minus target: lengths in nanometres, and slopes
	stations [][]float64     // of each foot, in nanometres; none where it is exact
}

// run runs all trials of the block.
func (b *Block) run(t *trials) {
	for i := range b.numbers {
		b.numbers[i] = make([]float64, 0, TrialsPerBlock)
	}
	for range TrialsPerBlock {
		if off, ok := t.next(); ok {
			b.keep(off)
		}
	}
	b.failed = TrialsPerBlock - b.trials()
	b.drawStations(t.random)
	b.sum()
}

// trials is how many have an outcome.
func (b *Block) trials() int { return len(b.numbers[0]) }

// keep takes in the four numbers of one trial, in millimetres and ratios.
func (b *Block) keep(off [four]float64) {
	b.numbers[offsetY] = append(b.numbers[offsetY], float64(fromMM(off[offsetY])))
	b.numbers[slopeY] = append(b.numbers[slopeY], off[slopeY])
	b.numbers[offsetZ] = append(b.numbers[offsetZ], float64(fromMM(off[offsetZ])))
	b.numbers[slopeZ] = append(b.numbers[slopeZ], off[slopeZ])
}

func (b *Block) drawStations(random *rand.Rand) {
	for i, f := range b.job.Feet {
		if f.U == 0 {
			continue
		}
		b.stations[i] = make([]float64, b.trials())
		for k := range b.stations[i] {
			b.stations[i][k] = float64(about(random, f.X, f.U))
		}
	}
}

// sum takes the sums of what each output differs by from the nominal one, so that
// blocks add up and no digits cancel.
func (b *Block) sum() {
	column := make([]float64, b.trials())
	for i := range b.outputs {
		b.fill(column, i)
		sum, squares, nominal := 0.0, 0.0, b.nominal[i]
		for _, x := range column {
			d := x - nominal
			sum += d
			squares += float64(d * d)
		}
		b.sums[i], b.squares[i] = sum, squares
	}
	for k := range b.trials() {
		var d [four]float64
		for i := range d {
			d[i] = b.numbers[i][k] - b.nominal[i]
		}
		b.cross.addSquare(d)
	}
}

// newBlock is a block without a trial.
func newBlock(m MonteCarlo, f Fitted, seed uint64, number uint32) Block {
	b := Block{job: &m, fitted: f, seed: seed, number: number, outputs: m.outputs()}
	b.stations = make([][]float64, len(m.Feet))
	n := len(b.outputs)
	b.nominal, b.sums, b.squares = make([]float64, n), make([]float64, n), make([]float64, n)
	stated := b
	stated.keep(f.Value.Minus(m.Target.Value).numbers())
	for i := range b.nominal {
		stated.fill(b.nominal[i:i+1], i)
	}
	return b
}
