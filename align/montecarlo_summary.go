package align

import (
	"cmp"
	"math"
	"slices"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Summary is what a simulation of a job gave: how its answers are distributed,
// as far as the inputs are known.
type Summary struct {
	Probability float64              `json:"probability"` // of every interval, each for its number alone
	Seed        uint64               `json:"seed,string"`
	Blocks      []uint32             `json:"blocks"` // their numbers, in rising order
	Trials      int                  `json:"trials"` // in all, those that failed too
	Failed      int                  `json:"failed"` // trials without an answer: see [MonteCarlo.Block]; the rest speaks of the others alone
	Offset      Across[units.Length] `json:"offset"` // of found minus target, at the coupling centre
	Slope       Across[units.Slope]  `json:"slope"`
	Cov         Covariance           `json:"cov"` // of the four numbers, from the trials: its deviations are not to be widened by a t factor; Unknown where a t distribution has none
	Feet        []FootDistribution   `json:"feet,omitempty"`
	Stationary  *Across[units.Slope] `json:"stationary,omitempty"` // the tilt at the stationary flex plane, where a span is given
	Movable     *Across[units.Slope] `json:"movable,omitempty"`    // and at the movable one
	Warnings    []units.Fault        `json:"warnings,omitempty"`   // those of the fit, and one for trials that failed
}

// FootDistribution is how the move of one foot is distributed: up and towards 3
// o'clock are positive, as for [Move].
type FootDistribution struct {
	Foot       Foot                       `json:"foot"`
	Horizontal Distribution[units.Length] `json:"horizontal"`
	Vertical   Distribution[units.Length] `json:"vertical"`
}

// Across is a quantity in both planes, and its size with both together.
type Across[Q units.Length | units.Slope] struct {
	Horizontal Distribution[Q] `json:"horizontal"`
	Vertical   Distribution[Q] `json:"vertical"`
	Size       Distribution[Q] `json:"size"` // its mean is above zero even where both planes are in line
}

// Distribution sums up how one quantity came out. A t distribution with one
// degree of freedom or fewer has no mean, with two or fewer no deviation: these
// are NaN then, and left out in JSON. The intervals always have their meaning.
type Distribution[Q units.Length | units.Slope] struct {
	Mean      Q           // the estimate (JCGM 101:2008, 7.6)
	Deviation Q           // its standard uncertainty
	Symmetric Interval[Q] // as probable to lie above as below it
	Shortest  Interval[Q] // the shortest that holds the probability; of a skewed or one-sided quantity this is not the symmetric one
}

// Interval reaches from Low to High.
type Interval[Q units.Length | units.Slope] struct {
	Low  Q `json:"low"`
	High Q `json:"high"`
}

// Summarise sums up blocks of one job, run with one seed: mean, deviation and
// both intervals of probability p for every output, by JCGM 101:2008, 7.6 and
// 7.7. The order in which blocks are given changes nothing, to the last bit.
//
// Intervals rest on a finite number of trials; compare the summaries of halves of
// the blocks to see how far they are settled (JCGM 101:2008, 7.9).
//
// It refuses a probability that is not between 0 and 1 (OutOfRange, at
// /probability), or that so many trials cannot tell, with less than one inside or
// outside the interval (OutOfRange, there); no blocks, and a block that is zero
// (Missing, at /blocks and /blocks/1); a block number given twice (Duplicate, at
// /blocks/1), and a seed or a job that is not that of the first block (Conflict,
// there); and blocks in which every trial failed (Unseen, at /blocks).
func Summarise(p float64, blocks ...Block) (Summary, error) {
	if err := checkBlocks(p, blocks); err != nil {
		return Summary{}, err
	}
	c := gather(p, blocks)
	if err := c.check(); err != nil {
		return Summary{}, err
	}
	first := c.blocks[0]
	m := first.job
	s := Summary{
		Probability: p, Seed: first.seed, Trials: c.trials + c.failed, Failed: c.failed,
		Offset:   Across[units.Length]{distribution[units.Length](c, offsetY), distribution[units.Length](c, offsetZ), distribution[units.Length](c, offsetSize)},
		Slope:    Across[units.Slope]{distribution[units.Slope](c, slopeY), distribution[units.Slope](c, slopeZ), distribution[units.Slope](c, slopeSize)},
		Cov:      c.covariance(),
		Warnings: c.warnings(),
	}
	for _, b := range c.blocks {
		s.Blocks = append(s.Blocks, b.number)
	}
	for i, f := range m.Feet {
		k := firstFoot + 2*i
		s.Feet = append(s.Feet, FootDistribution{f, distribution[units.Length](c, k), distribution[units.Length](c, k+1)})
	}
	if m.Coupling.Span != 0 {
		s.Stationary, s.Movable = tilts(c, m.flexAt()), tilts(c, m.flexAt()+3)
	}
	return s, nil
}

// tilts are three outputs from k on.
func tilts(c *gathered, k int) *Across[units.Slope] {
	return &Across[units.Slope]{distribution[units.Slope](c, k), distribution[units.Slope](c, k+1), distribution[units.Slope](c, k+2)}
}

// gathered is what some blocks hold together.
type gathered struct {
	p              float64
	blocks         []Block   // by their numbers
	trials, failed int       // with an outcome, and without
	dof            float64   // the fewest behind a scatter; zero: none to count
	column         []float64 // one output after the other
	tails          tails
}

func gather(p float64, blocks []Block) *gathered {
	c := &gathered{p: p, blocks: slices.Clone(blocks)}
	slices.SortFunc(c.blocks, func(a, b Block) int { return cmp.Compare(a.number, b.number) })
	for i := range c.blocks {
		c.trials += c.blocks[i].trials()
		c.failed += c.blocks[i].failed
	}
	first := &c.blocks[0]
	c.column = make([]float64, c.trials)
	c.dof = fewer(first.fitted.Cov.DoF, first.job.Target.Cov.DoF)
	return c
}

// distribution sums up output k.
func distribution[Q units.Length | units.Slope](c *gathered, k int) (d Distribution[Q]) {
	mean, variance := c.moments(k)
	c.tails.take(c.outcomes(k), c.trials-within(c.trials, c.p))
	low, high := c.tails.symmetric()
	d.Symmetric = Interval[Q]{Q(low), Q(high)}
	low, high = c.tails.shortest()
	d.Shortest = Interval[Q]{Q(low), Q(high)}
	d.Mean, d.Deviation = Q(mean), Q(math.Sqrt(variance))
	return d
}

// outcomes returns output k of all trials, until the next call.
func (c *gathered) outcomes(k int) []float64 {
	n := 0
	for i := range c.blocks {
		b := &c.blocks[i]
		b.fill(c.column[n:n+b.trials()], k)
		n += b.trials()
	}
	return c.column
}

// moments returns the mean and the variance of output k; NaN where its
// distribution has none.
func (c *gathered) moments(k int) (mean, variance float64) {
	var sum, squares float64
	for i := range c.blocks {
		sum += c.blocks[i].sums[k]
		squares += c.blocks[i].squares[k]
	}
	n := float64(c.trials)
	mean = c.blocks[0].nominal[k] + sum/n
	variance = max(0, squares-float64(sum*sum)/n) / (n - 1)
	if c.lacks(1) {
		mean = math.NaN()
	}
	if c.lacks(2) {
		variance = math.NaN()
	}
	return mean, variance
}

// lacks tells whether a t distribution with the degrees of freedom there are has
// no moment of this order.
func (c *gathered) lacks(order float64) bool { return c.dof != 0 && c.dof <= order }

// covariance is that of the four numbers.
func (c *gathered) covariance() Covariance {
	if c.lacks(2) {
		return Covariance{Basis: Unknown}
	}
	first := &c.blocks[0]
	v := Covariance{Basis: max(first.fitted.Cov.Basis, first.job.Target.Cov.Basis)}
	var sums [four]float64
	for k := range c.blocks {
		v.v = v.v.plus(c.blocks[k].cross)
		for i := range sums {
			sums[i] += c.blocks[k].sums[i]
		}
	}
	scale := [four]float64{offsetY: mm(1), slopeY: 1, offsetZ: mm(1), slopeZ: 1}
	n := float64(c.trials)
	for i := range v.v {
		for j := range v.v {
			v.v[i][j] = scale[i] * scale[j] * (v.v[i][j] - float64(sums[i]*sums[j])/n) / (n - 1)
		}
	}
	return v
}

func checkProbability(faults *check.Faults, at check.Path, p float64) {
	if !(p > 0 && p < 1) {
		faults.Add(units.OutOfRange, at, p, "a probability between 0 and 1")
	}
}

func (c *gathered) warnings() []units.Fault {
	list := slices.Clone(c.blocks[0].fitted.Warnings)
	if c.failed == 0 {
		return list
	}
	var faults check.Faults
	var root check.Path
	faults.Add(units.Suspect, root.Field("sets"), c.failed, "an answer from every trial: what is said holds for the others alone")
	return append(list, *units.Faults(faults.Err())[0])
}

func checkBlocks(p float64, blocks []Block) error {
	var faults check.Faults
	var root check.Path
	checkProbability(&faults, root.Field("probability"), p)
	list := root.Field("blocks")
	if len(blocks) == 0 {
		faults.Add(units.Missing, list, nil, "at least one block of trials")
	}
	seen := make(map[uint32]bool, len(blocks))
	for i := range blocks {
		first, b, at := &blocks[0], &blocks[i], list.Index(i)
		if b.job == nil {
			faults.Add(units.Missing, at, nil, "a block that was run")
			continue
		}
		if first.job == nil {
			continue // a fault already
		}
		if b.seed != first.seed {
			faults.Add(units.Conflict, at, b.seed, "the seed of the first block")
		} else if !b.job.equal(first.job) {
			faults.Add(units.Conflict, at, b.number, "the job of the first block")
		} else if seen[b.number] {
			faults.Add(units.Duplicate, at, b.number, "a number that no other block has")
		}
		seen[b.number] = true
	}
	return faults.Err()
}

// check asks for trials enough.
func (c *gathered) check() error {
	var faults check.Faults
	var root check.Path
	if c.trials == 0 {
		faults.Add(units.Unseen, root.Field("blocks"), c.failed, "trials that do not all fail")
	} else if q := within(c.trials, c.p); q < 1 || q >= c.trials {
		faults.Add(units.OutOfRange, root.Field("probability"), c.p, "a probability that the trials can tell: one at least inside the interval, and one outside")
	}
	return faults.Err()
}
