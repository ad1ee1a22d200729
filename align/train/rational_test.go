package train_test

import "math/big"

// rationalRow asks of . x <= most, or of . x == most.
type rationalRow struct {
	of    []*big.Rat
	most  *big.Rat
	equal bool
}

// rationalProgram is a linear program in exact rationals: the least of cost . x, with
// x free and the rows kept. It shares nothing with the solver under test.
type rationalProgram struct {
	cost []*big.Rat
	rows []rationalRow
}

type outcome uint8

const (
	solved outcome = iota
	infeasible
	unbounded
)

// dictionary holds every basic variable as a linear function of the nonbasic ones:
// the last entry of a row is its constant. Labels are the numbers of the slacks;
// those of the free variables are negative, for they have no sign to keep.
type dictionary struct {
	rows     [][]*big.Rat
	cost     []*big.Rat
	basic    []int
	nonbasic []int
}

// minimum solves the program by the least-index criss-cross method (Terlaky 1985,
// from memory): it needs no first phase and cannot cycle, even where everything ties.
func (p *rationalProgram) minimum() (*big.Rat, outcome) {
	d := newDictionary(p)
	for i := range p.rows {
		if p.rows[i].equal && !d.substitute(i) {
			return nil, infeasible
		}
	}
	if !d.clearFree() {
		return nil, unbounded // as far as anything is feasible; no plan is
	}
	for {
		row, column := d.leastWrong()
		switch {
		case row < 0 && column < 0:
			return d.cost[len(d.nonbasic)], solved
		case row >= 0:
			if column = d.leastRaising(row); column < 0 {
				return nil, infeasible
			}
		default:
			if row = d.leastFalling(column); row < 0 {
				return nil, unbounded
			}
		}
		d.pivot(row, column)
	}
}

func newDictionary(p *rationalProgram) *dictionary {
	n := len(p.cost)
	d := &dictionary{cost: append(clone(p.cost), new(big.Rat))}
	for k := range n {
		d.nonbasic = append(d.nonbasic, -1-k)
	}
	for i, r := range p.rows {
		row := make([]*big.Rat, n+1)
		for k := range r.of {
			row[k] = new(big.Rat).Neg(r.of[k])
		}
		row[n] = new(big.Rat).Set(r.most)
		d.rows, d.basic = append(d.rows, row), append(d.basic, i)
	}
	return d
}

func clone(list []*big.Rat) []*big.Rat {
	copied := make([]*big.Rat, len(list))
	for i := range list {
		copied[i] = new(big.Rat).Set(list[i])
	}
	return copied
}

// substitute solves the equation with the slack for a free variable and forgets the
// slack, which is zero; false where nothing is left of the equation but a number
// that is not zero.
func (d *dictionary) substitute(slack int) bool {
	i := 0
	for d.basic[i] != slack {
		i++
	}
	for k, label := range d.nonbasic {
		if label < 0 && d.rows[i][k].Sign() != 0 {
			d.pivot(i, k)
			d.dropColumn(k)
			return true
		}
	}
	redundant := d.rows[i][len(d.nonbasic)].Sign() == 0
	d.dropRow(i)
	return redundant
}

// clearFree brings every free variable into the basis, where it never leaves, and
// forgets its row; false where one changes the cost alone.
func (d *dictionary) clearFree() bool {
	for k := 0; k < len(d.nonbasic); {
		i := d.slackWith(k)
		switch {
		case d.nonbasic[k] >= 0:
			k++
		case i >= 0:
			d.pivot(i, k)
		case d.cost[k].Sign() != 0:
			return false
		default:
			d.dropColumn(k)
		}
	}
	for i := len(d.basic) - 1; i >= 0; i-- {
		if d.basic[i] < 0 {
			d.dropRow(i)
		}
	}
	return true
}

func (d *dictionary) slackWith(column int) int {
	for i, label := range d.basic {
		if label >= 0 && d.rows[i][column].Sign() != 0 {
			return i
		}
	}
	return -1
}

// leastWrong finds the variable of the least label that is below zero, or that would
// lower the cost if it grew.
func (d *dictionary) leastWrong() (row, column int) {
	row, column = -1, -1
	least := int(^uint(0) >> 1)
	last := len(d.nonbasic)
	for i, label := range d.basic {
		if label < least && d.rows[i][last].Sign() < 0 {
			row, least = i, label
		}
	}
	for k, label := range d.nonbasic {
		if label < least && d.cost[k].Sign() < 0 {
			row, column, least = -1, k, label
		}
	}
	return row, column
}

func (d *dictionary) leastRaising(row int) int {
	found := -1
	for k, label := range d.nonbasic {
		if d.rows[row][k].Sign() > 0 && (found < 0 || label < d.nonbasic[found]) {
			found = k
		}
	}
	return found
}

func (d *dictionary) leastFalling(column int) int {
	found := -1
	for i, label := range d.basic {
		if d.rows[i][column].Sign() < 0 && (found < 0 || label < d.basic[found]) {
			found = i
		}
	}
	return found
}

// pivot exchanges the basic variable of a row with the nonbasic one of a column.
func (d *dictionary) pivot(row, column int) {
	r := d.rows[row]
	over := new(big.Rat).Inv(r[column])
	for k := range r {
		if k == column {
			r[k] = new(big.Rat).Set(over)
		} else if r[k].Sign() != 0 {
			r[k] = new(big.Rat).Neg(new(big.Rat).Mul(r[k], over))
		}
	}
	for i := range d.rows {
		if i != row {
			replace(d.rows[i], r, column)
		}
	}
	replace(d.cost, r, column)
	d.basic[row], d.nonbasic[column] = d.nonbasic[column], d.basic[row]
}

// replace puts a row in the place of the variable of a column.
func replace(in, row []*big.Rat, column int) {
	share := in[column]
	if share.Sign() == 0 {
		return
	}
	for k := range in {
		switch {
		case k == column:
			in[k] = new(big.Rat).Mul(share, row[k])
		case row[k].Sign() != 0:
			in[k] = new(big.Rat).Add(in[k], new(big.Rat).Mul(share, row[k]))
		}
	}
}

func (d *dictionary) dropRow(i int) {
	d.rows = append(d.rows[:i], d.rows[i+1:]...)
	d.basic = append(d.basic[:i], d.basic[i+1:]...)
}

func (d *dictionary) dropColumn(k int) {
	drop := func(row []*big.Rat) []*big.Rat { return append(row[:k], row[k+1:]...) }
	for i := range d.rows {
		d.rows[i] = drop(d.rows[i])
	}
	d.cost = drop(d.cost)
	d.nonbasic = append(d.nonbasic[:k], d.nonbasic[k+1:]...)
}
