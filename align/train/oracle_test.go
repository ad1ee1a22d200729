package train_test

import (
	"math"
	"math/big"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// The oracle lays out a plan of one plane from the equations alone: machine i moves
// by a_i + s_i x, whose a (mm) and s (mm/m) are the unknowns, and
//
//	left at coupling j:  offset + m_(j+1)(X) - m_j(X),  slope + s_(j+1) - s_j
//
// in exact rationals. A job is given in whole nanometres, so nothing is rounded.
type oracle struct {
	train     *train.Train
	side      bool // the horizontal plane
	unknowns  int  // two a machine
	stopRows  []rationalRow
	footMoves []line // the move of every foot that can move
	parts     []line // what couplings are judged by, over their limits
	targets   []line
}

// line is a linear function of the unknowns.
type line struct {
	of []*big.Rat
	c  *big.Rat
}

func newLine(n int) line {
	l := line{make([]*big.Rat, n), new(big.Rat)}
	for i := range l.of {
		l.of[i] = new(big.Rat)
	}
	return l
}

// add adds k times m to l.
func (l line) add(k *big.Rat, m line) line {
	for i := range l.of {
		l.of[i].Add(l.of[i], new(big.Rat).Mul(k, m.of[i]))
	}
	l.c.Add(l.c, new(big.Rat).Mul(k, m.c))
	return l
}

func rat(x float64) *big.Rat { return big.NewRat(int64(math.Round(x)), 1) }

// ratMM is a length in millimetres, of whole nanometres.
func ratMM(l units.Length) *big.Rat { return new(big.Rat).Quo(rat(l.In(units.InNanometres)), rat(1e6)) }

// ratMetre is a length in metres.
func ratMetre(l units.Length) *big.Rat { return new(big.Rat).Quo(ratMM(l), rat(1000)) }

// ratSlope is a slope in mm/m, of whole nanometres over a metre.
func ratSlope(s units.Slope) *big.Rat { return new(big.Rat).Quo(rat(float64(s)*1e9), rat(1e6)) }

func newOracle(t *train.Train, side bool) *oracle {
	o := &oracle{train: t, side: side, unknowns: 2 * len(t.Machines)}
	for i := range t.Machines {
		o.addMachine(i)
	}
	for j := range t.Joints {
		o.addJoint(j)
	}
	return o
}

func (o *oracle) plane(e align.Estimate) align.Line {
	if o.side {
		return e.Value.Horizontal
	}
	return e.Value.Vertical
}

func (o *oracle) limit(f train.Foot) train.Limit {
	if o.side {
		return f.Horizontal
	}
	return f.Vertical
}

// move is that of machine i at station x, in millimetres; zero of the reference.
func (o *oracle) move(i int, x units.Length) line {
	l := newLine(o.unknowns)
	if o.train.Machines[i].Name != o.train.Reference {
		l.of[2*i], l.of[2*i+1] = rat(1), ratMetre(x)
	}
	return l
}

// tilt is the change of slope of machine i, in mm/m.
func (o *oracle) tilt(i int) line {
	l := newLine(o.unknowns)
	if o.train.Machines[i].Name != o.train.Reference {
		l.of[2*i+1] = rat(1)
	}
	return l
}

func (o *oracle) addMachine(i int) {
	m := o.train.Machines[i]
	if m.Name == o.train.Reference {
		return
	}
	for _, f := range m.Feet {
		move := o.move(i, f.X)
		o.footMoves = append(o.footMoves, move)
		if low, ok := o.limit(f).Low(); ok {
			o.stopRows = append(o.stopRows, atMost(newLine(o.unknowns).add(rat(-1), move), new(big.Rat).Neg(ratMM(low))))
		}
		if high, ok := o.limit(f).High(); ok {
			o.stopRows = append(o.stopRows, atMost(move, ratMM(high)))
		}
	}
}

func (o *oracle) addJoint(j int) {
	joint := o.train.Joints[j]
	off := o.plane(joint.Off())
	offset := newLine(o.unknowns).add(rat(1), o.move(j+1, joint.At)).add(rat(-1), o.move(j, joint.At))
	slope := newLine(o.unknowns).add(rat(1), o.tilt(j+1)).add(rat(-1), o.tilt(j))
	offset.c, slope.c = ratMM(off.Offset), ratSlope(off.Slope)
	o.targets = append(o.targets, offset, slope)
	if span := joint.Coupling.Span; span != 0 {
		for _, sign := range []float64{+1, -1} {
			tilt := newLine(o.unknowns).add(new(big.Rat).Quo(rat(sign), ratMetre(span)), offset).add(big.NewRat(1, 2), slope)
			o.judge(tilt, ratSlope(joint.Limits.Flex))
		}
		return
	}
	if joint.Limits.Offset != 0 {
		o.judge(offset, ratMM(joint.Limits.Offset))
	}
	if joint.Limits.Slope != 0 {
		o.judge(slope, ratSlope(joint.Limits.Slope))
	}
}

func (o *oracle) judge(part line, limit *big.Rat) {
	o.parts = append(o.parts, newLine(o.unknowns).add(new(big.Rat).Inv(limit), part))
}

// atMost is the row l <= most.
func atMost(l line, most *big.Rat) rationalRow {
	return rationalRow{of: clone(l.of), most: new(big.Rat).Sub(most, l.c)}
}

// minimum solves with so many unknowns beside those of the machines, each of which
// costs one.
func (o *oracle) minimum(more int, rows []rationalRow) (*big.Rat, outcome) {
	p := rationalProgram{rows: make([]rationalRow, len(rows))}
	for k := range o.unknowns + more {
		p.cost = append(p.cost, rat(0))
		if k >= o.unknowns {
			p.cost[k] = rat(1)
		}
	}
	for i, r := range rows {
		for len(r.of) < o.unknowns+more {
			r.of = append(r.of, rat(0))
		}
		p.rows[i] = r
	}
	return p.minimum()
}

func (o *oracle) targetRows() []rationalRow {
	rows := append([]rationalRow{}, o.stopRows...)
	for _, l := range o.targets {
		row := atMost(l, rat(0))
		row.equal = true
		rows = append(rows, row)
	}
	return rows
}

// levelRows hold every part within a level either way.
func (o *oracle) levelRows(level *big.Rat) []rationalRow {
	rows := append([]rationalRow{}, o.stopRows...)
	for _, l := range o.parts {
		rows = append(rows, atMost(l, level), atMost(newLine(o.unknowns).add(rat(-1), l), level))
	}
	return rows
}

// reaches tells whether every coupling can come to its target in this plane.
func (o *oracle) reaches() bool {
	_, result := o.minimum(0, o.targetRows())
	return result == solved
}

// ratio is the least worst ratio.
func (o *oracle) ratio() (*big.Rat, outcome) {
	rows := append([]rationalRow{}, o.stopRows...)
	for _, l := range o.parts {
		for _, signed := range []line{l, newLine(o.unknowns).add(rat(-1), l)} {
			row := atMost(signed, rat(0))
			row.of = append(row.of, rat(-1))
			rows = append(rows, row)
		}
	}
	return o.minimum(1, rows)
}

// travel is the least sum of all moves within the rows.
func (o *oracle) travel(rows []rationalRow) (*big.Rat, outcome) {
	return o.work(len(o.footMoves), rows, func(foot int) int { return foot })
}

// largest is the least largest move within the rows.
func (o *oracle) largest(rows []rationalRow) (*big.Rat, outcome) {
	return o.work(1, rows, func(int) int { return 0 })
}

func (o *oracle) work(sizes int, rows []rationalRow, of func(foot int) int) (*big.Rat, outcome) {
	if len(o.footMoves) == 0 {
		return rat(0), solved
	}
	for i, move := range o.footMoves {
		for _, signed := range []line{move, newLine(o.unknowns).add(rat(-1), move)} {
			row := atMost(signed, rat(0))
			for range sizes {
				row.of = append(row.of, rat(0))
			}
			row.of[o.unknowns+of(i)] = rat(-1)
			rows = append(rows, row)
		}
	}
	return o.minimum(sizes, rows)
}
