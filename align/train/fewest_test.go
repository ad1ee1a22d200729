package train_test

import (
	"fmt"
	"math/big"
	"math/bits"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align/train"
)

// Up to four machines the fewest moves are those of a search through all sets of
// feet that stay, each tried in exact rationals.
func TestFewestFeetIsBruteForce(t *testing.T) {
	rows := []struct{ machines, each int }{{2, 60}, {3, 2}, {4, 1}}
	planes := 0
	for _, row := range rows {
		for _, j := range perPlaneJobs(row.machines) {
			if row.machines > 2 && j.crowded || row.machines > 3 && j.scale != 1 {
				continue // too many sets to try
			}
			for seed := range row.each {
				if testing.Short() && (seed > 1 || row.machines > 2) {
					break
				}
				planes += checkFewest(t, j, uint64(seed))
			}
		}
	}
	t.Log(planes, "planes compared")
}

func checkFewest(t *testing.T, j job, seed uint64) (planes int) {
	t.Helper()
	tr := j.draw(rand.New(rand.NewPCG(seed, 11)))
	name := fmt.Sprint(j, " seed ", seed)
	p, err := tr.Plan(train.FewestFeet)
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return 0
	}
	checkConsistent(t, name, &tr, p)
	if !p.Proven {
		t.Errorf("%s: not proven", name)
	}
	for _, side := range []bool{true, false} {
		o := newOracle(&tr, side)
		got := 0
		for _, by := range planeMoves(p, side) {
			if by != 0 {
				got++
			}
		}
		if most, least := o.fewest(0), o.fewest(rounding); got > most || got < least {
			t.Errorf("%s: side %v takes %d moves, want %d to %d", name, side, got, least, most)
		}
		planes++
	}
	return planes
}

// fewest is the least number of feet that have to move for the best ratio, or a hair
// more than it.
func (o *oracle) fewest(hair float64) int {
	rows := o.targetRows()
	if !o.reaches() {
		ratio, _ := o.ratio()
		more := new(big.Rat).Mul(new(big.Rat).SetFloat64(hair), new(big.Rat).Add(rat(1), ratio))
		rows = o.levelRows(more.Add(more, ratio))
	}
	n := len(o.footMoves)
	for count := range n {
		for moved := range uint(1) << n {
			if bits.OnesCount(moved) == count && o.allows(rows, moved) {
				return count
			}
		}
	}
	return n
}

// allows tells whether the rows can be kept while the other feet stay.
func (o *oracle) allows(rows []rationalRow, moved uint) bool {
	rows = append([]rationalRow{}, rows...)
	for i, move := range o.footMoves {
		if moved&(1<<i) == 0 { // two rows, for an equation may say the same as others
			rows = append(rows, atMost(move, rat(0)), atMost(newLine(o.unknowns).add(rat(-1), move), rat(0)))
		}
	}
	_, result := o.minimum(0, rows)
	return result == solved
}
