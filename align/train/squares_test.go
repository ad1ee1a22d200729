package train_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align/train"
)

// The plan is the one of least squares among those of least work. Of a convex set, y
// is the point nearest to zero just if y.z >= y.y for every z in it, so that one
// linear program in exact rationals, the least y.z among all best plans z, tells.
func TestLeastSquaresAmongTheBest(t *testing.T) {
	for _, machines := range []int{2, 3} {
		for _, j := range perPlaneJobs(machines) {
			for seed := range uint64(6) {
				if testing.Short() && seed > 1 {
					break
				}
				checkSquares(t, j, seed)
			}
		}
	}
}

func checkSquares(t *testing.T, j job, seed uint64) {
	t.Helper()
	tr := j.draw(rand.New(rand.NewPCG(seed, 23)))
	for w := train.TotalTravel; w <= train.LargestMove; w++ {
		name := fmt.Sprint(j, " seed ", seed, " ", w)
		p, err := tr.Plan(w)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, side := range []bool{true, false} {
			y := movable(&tr, p, side)
			squares := 0.0
			for _, by := range y {
				squares += by * by
			}
			size := scaleOf(&tr)
			if least := newOracle(&tr, side).leastAlong(y, w); squares-least > 20*rounding*float64(len(y))*size*size+1e-6*math.Sqrt(squares) {
				t.Errorf("%s: side %v: a plan of %.9f mm^2 is not the least: another has %.9f along it", name, side, squares, least)
			}
		}
	}
}

// movable lists the moves of the feet that can move, in millimetres.
func movable(tr *train.Train, p train.Plan, side bool) []float64 {
	var list []float64
	all := planeMoves(p, side)
	for _, m := range tr.Machines {
		if m.Name != tr.Reference {
			list = append(list, all[:len(m.Feet)]...)
		}
		all = all[len(m.Feet):]
	}
	return list
}

// leastAlong is the least y.z of all plans z of the best ratio and the least work.
func (o *oracle) leastAlong(y []float64, w train.Work) float64 {
	rows := o.targetRows()
	if !o.reaches() {
		ratio, _ := o.ratio()
		rows = o.levelRows(ratio)
	}
	along := newLine(o.unknowns)
	for i, by := range y {
		along.add(new(big.Rat).SetFloat64(by), o.footMoves[i])
	}
	n := len(o.footMoves)
	if n == 0 {
		return 0
	}
	if w == train.LargestMove {
		most, _ := o.largest(rows)
		for _, move := range o.footMoves {
			rows = append(rows, atMost(move, most), atMost(newLine(o.unknowns).add(rat(-1), move), most))
		}
		return float((&rationalProgram{cost: along.of, rows: rows}).minimum())
	}
	most, _ := o.travel(rows)
	for i := range rows {
		rows[i].of = append(rows[i].of[:o.unknowns:o.unknowns], newLine(n).of...)
	}
	for i, move := range o.footMoves {
		for _, sign := range []float64{+1, -1} {
			row := atMost(newLine(o.unknowns).add(rat(sign), move), rat(0))
			row.of = append(row.of, newLine(n).of...)
			row.of[o.unknowns+i] = rat(-1)
			rows = append(rows, row)
		}
	}
	sum := newLine(o.unknowns + n)
	for i := range n {
		sum.of[o.unknowns+i] = rat(1)
	}
	rows = append(rows, atMost(sum, most))
	return float((&rationalProgram{cost: append(along.of, newLine(n).of...), rows: rows}).minimum())
}
