package train_test

import (
	"math"
	"math/big"

	"example.org/collinear/align/train"
)

// joined is both planes together, for couplings that are judged by the length of a
// vector. Every direction in which an item is held to a level gives a row that each
// plan within the level keeps, so that the least of a program with some of them is a
// bound, in exact rationals, that no plan betters.
type joined struct {
	oracle
	parts [2][]line // of both planes, item by item
}

func newJoined(t *train.Train) *joined {
	side, height := newOracle(t, true), newOracle(t, false)
	n := side.unknowns
	j := &joined{oracle: oracle{train: t, unknowns: 2 * n}}
	for plane, o := range []*oracle{side, height} {
		widened := func(of []*big.Rat) []*big.Rat {
			wide := newLine(2 * n).of
			copy(wide[plane*n:], of)
			return wide
		}
		for _, r := range o.stopRows {
			j.stopRows = append(j.stopRows, rationalRow{of: widened(r.of), most: r.most})
		}
		for _, l := range o.footMoves {
			j.footMoves = append(j.footMoves, line{widened(l.of), l.c})
		}
		for _, l := range o.parts {
			j.parts[plane] = append(j.parts[plane], line{widened(l.of), l.c})
		}
	}
	return j
}

// tangent is item i in the direction to which it points where the plan leaves it:
// one that is exactly of length one, by the half-angle formulas of a rational.
func (j *joined) tangent(i int, side, height float64) line {
	const steps = 1 << 12
	half := math.Round(steps * math.Tan(math.Atan2(height, side)/2))
	if math.Abs(half) > 64*steps {
		half = 64 * steps // to the left, all but exactly
	}
	t := big.NewRat(int64(half), steps)
	square := new(big.Rat).Mul(t, t)
	over := new(big.Rat).Inv(new(big.Rat).Add(rat(1), square))
	cos := new(big.Rat).Mul(new(big.Rat).Sub(rat(1), square), over)
	sin := new(big.Rat).Mul(new(big.Rat).Mul(rat(2), t), over)
	return newLine(j.unknowns).add(cos, j.parts[0][i]).add(sin, j.parts[1][i])
}

// tangents are those of all items of a plan, and all items upright and sideways.
func (j *joined) tangents(p train.Plan) []line {
	var list []line
	i := 0
	for k, joint := range j.train.Joints {
		left := p.Joints[k].After.Value
		side, height := jointRatios(joint, left.Horizontal), jointRatios(joint, left.Vertical)
		for m := range side {
			list = append(list, j.tangent(i, side[m], height[m]))
			for plane := range j.parts {
				for _, sign := range []float64{+1, -1} {
					list = append(list, newLine(j.unknowns).add(rat(sign), j.parts[plane][i]))
				}
			}
			i++
		}
	}
	return list
}

// ratioBound is what no plan betters, by the tangents given.
func (j *joined) ratioBound(tangents []line) float64 {
	rows := append([]rationalRow{}, j.stopRows...)
	for _, l := range tangents {
		row := atMost(l, rat(0))
		row.of = append(row.of, rat(-1))
		rows = append(rows, row)
	}
	return float(j.minimum(1, rows))
}
