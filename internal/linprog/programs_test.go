package linprog

import (
	"math"
	"math/rand/v2"
)

// The programs that the tests solve. Each maker draws one from a generator; none
// knows whether its program is feasible unless its name says so.

var inf = math.Inf(1)

type maker struct {
	name string
	make func(r *rand.Rand) Program
}

var makers = []maker{
	{"small whole numbers", func(r *rand.Rand) Program { return draw(r, wholes(2), 6, 8) }},
	{"signs alone", func(r *rand.Rand) Program { return draw(r, signs, 6, 10) }},
	{"eighths", func(r *rand.Rand) Program { return draw(r, eighths, 7, 12) }},
	{"any fractions", func(r *rand.Rand) Program { return draw(r, normal, 6, 9) }},
	{"coefficients a thousand apart", func(r *rand.Rand) Program { return draw(r, spread, 5, 8) }},
	{"doubled and summed rows", redundant},
	{"many rows through one point", degenerate},
	{"all bounds equal", zeroWidth},
	{"infeasible", contradicting},
	{"least largest", minimax},
	{"least sum", leastSum},
	{"least one", leastOne},
}

func wholes(most int) func(*rand.Rand) float64 {
	return func(r *rand.Rand) float64 { return float64(r.IntN(2*most+1) - most) }
}

func signs(r *rand.Rand) float64   { return wholes(1)(r) }
func eighths(r *rand.Rand) float64 { return wholes(16)(r) / 8 }
func normal(r *rand.Rand) float64  { return r.NormFloat64() }
func spread(r *rand.Rand) float64  { return r.NormFloat64() * math.Pow(10, float64(r.IntN(4)-2)) }

// draw makes a program of up to n variables and m rows around a point that meets
// most of them. About half of the costs are zero, a third of the coefficients.
func draw(r *rand.Rand, number func(*rand.Rand) float64, n, m int) Program {
	n, m = 1+r.IntN(n), r.IntN(m+1)
	p := empty(n)
	point := make([]float64, n)
	for j := range point {
		point[j] = number(r)
		p.Lower[j], p.Upper[j] = around(r, number, point[j])
		p.Cost[j] = costFor(r, number, p.Lower[j], p.Upper[j])
	}
	for range m {
		row := coefficients(r, number, n)
		lower, upper := around(r, number, dot(row, point))
		p.Rows = append(p.Rows, Row{row, lower, upper})
	}
	return p
}

func empty(n int) Program {
	return Program{Cost: make([]float64, n), Lower: make([]float64, n), Upper: make([]float64, n)}
}

func coefficients(r *rand.Rand, number func(*rand.Rand) float64, n int) []float64 {
	row := make([]float64, n)
	for j := range row {
		if r.IntN(3) > 0 {
			row[j] = number(r)
		}
	}
	return row
}

// around draws bounds: mostly with x between them, now and then not.
func around(r *rand.Rand, number func(*rand.Rand) float64, x float64) (lower, upper float64) {
	lower, upper = x-math.Abs(number(r)), x+math.Abs(number(r))
	switch r.IntN(8) {
	case 0:
		upper = lower
	case 1:
		return x, x
	case 2, 3:
		lower = -inf
	case 4, 5:
		upper = inf
	case 6:
		return -inf, inf
	}
	if r.IntN(12) == 0 {
		lower, upper = lower+1, upper+1
	}
	return lower, upper
}

func costFor(r *rand.Rand, number func(*rand.Rand) float64, lower, upper float64) float64 {
	c := number(r)
	if r.IntN(2) == 0 || c > 0 && math.IsInf(lower, -1) || c < 0 && math.IsInf(upper, 1) {
		return 0
	}
	return c
}

func redundant(r *rand.Rand) Program {
	p := draw(r, eighths, 5, 5)
	for i := range len(p.Rows) {
		old, factor := p.Rows[i], []float64{1, -1, 2, 0.5, 3, 0.1}[r.IntN(6)]
		p.Rows = append(p.Rows, scaledRow(old, factor))
	}
	if len(p.Rows) >= 2 {
		p.Rows = append(p.Rows, sumRow(p.Rows[0], p.Rows[1]))
	}
	p.Rows = append(p.Rows, Row{make([]float64, len(p.Cost)), -1, float64(r.IntN(2))})
	r.Shuffle(len(p.Rows), func(i, k int) { p.Rows[i], p.Rows[k] = p.Rows[k], p.Rows[i] })
	return p
}

func scaledRow(row Row, factor float64) Row {
	out := Row{make([]float64, len(row.Coefficients)), row.Lower * factor, row.Upper * factor}
	for j, a := range row.Coefficients {
		out.Coefficients[j] = a * factor
	}
	if factor < 0 {
		out.Lower, out.Upper = out.Upper, out.Lower
	}
	return out
}

func sumRow(a, b Row) Row {
	out := Row{make([]float64, len(a.Coefficients)), a.Lower + b.Lower, a.Upper + b.Upper}
	for j := range out.Coefficients {
		out.Coefficients[j] = a.Coefficients[j] + b.Coefficients[j]
	}
	return out
}

func degenerate(r *rand.Rand) Program {
	n := 2 + r.IntN(5)
	p := empty(n)
	point := coefficients(r, wholes(2), n)
	for j := range point {
		p.Lower[j], p.Upper[j] = -3, 3
		if r.IntN(2) == 0 {
			p.Lower[j] = point[j]
		}
		p.Cost[j] = wholes(1)(r)
	}
	for range 2 * n {
		row := coefficients(r, wholes(2), n)
		p.Rows = append(p.Rows, Row{row, dot(row, point), inf})
	}
	return p
}

func zeroWidth(r *rand.Rand) Program {
	p := draw(r, eighths, 6, 8)
	for j := range p.Lower {
		if !math.IsInf(p.Lower[j], 0) && r.IntN(3) > 0 {
			p.Upper[j] = p.Lower[j]
		}
	}
	for i := range p.Rows {
		if !math.IsInf(p.Rows[i].Lower, 0) {
			p.Rows[i].Upper = p.Rows[i].Lower
		}
	}
	return p
}

// contradicting adds a row that others rule out, by a little or by much.
func contradicting(r *rand.Rand) Program {
	p := draw(r, eighths, 5, 5)
	n := len(p.Cost)
	a, b := Row{coefficients(r, eighths, n), -inf, 1}, Row{coefficients(r, eighths, n), -inf, 0.5}
	both := sumRow(a, b)
	by := []float64{1e-7, 1e-5, 1e-3, 1, 100}[r.IntN(5)]
	both.Lower, both.Upper = 1.5+by, inf
	p.Rows = append(p.Rows, a, both, b)
	return p
}

// chain returns rows like those of a train of shafts: each depends on a few moves
// next to each other, with fractions for weights.
func chain(r *rand.Rand, moves, rows int) [][]float64 {
	out := make([][]float64, rows)
	for i := range out {
		out[i] = make([]float64, moves)
		at := i * moves / rows
		for j := at; j < min(moves, at+4); j++ {
			out[i][j] = math.Round(r.NormFloat64()*64) / 32
		}
	}
	return out
}

// minimax: the least r with |a.y + b| <= r for all rows and limits on some d = q.y.
func minimax(r *rand.Rand) Program {
	n := 1 + r.IntN(8)
	p := moves(r, n, 1)
	p.Cost[n], p.Upper[n] = 1, inf
	for _, a := range chain(r, n, n+r.IntN(n+1)) {
		p.Rows = append(p.Rows, within(a, n, n+1, fraction(r))...)
	}
	limits(r, &p, n)
	return p
}

// leastSum: the least sum of t with t >= |q.y + c|.
func leastSum(r *rand.Rand) Program {
	n := 1 + r.IntN(5)
	rows := chain(r, n, n+r.IntN(4))
	p := moves(r, n, len(rows))
	for k, a := range rows {
		p.Cost[n+k], p.Upper[n+k] = 1, inf
		p.Rows = append(p.Rows, within(a, n+k, n+len(rows), fraction(r))...)
	}
	limits(r, &p, n)
	return p
}

// leastOne: as leastSum, with only one t that costs.
func leastOne(r *rand.Rand) Program {
	p := leastSum(r)
	at := 0
	for j, c := range p.Cost {
		if c != 0 {
			p.Cost[j], p.Upper[j] = 0, 1
			at = j
		}
	}
	p.Cost[at] = 1
	return p
}

// moves returns a program of n moves, free or within limits, and more variables that
// are not negative.
func moves(r *rand.Rand, n, more int) Program {
	p := empty(n + more)
	for j := range n {
		p.Lower[j], p.Upper[j] = -inf, inf
		switch r.IntN(4) {
		case 0:
			p.Lower[j], p.Upper[j] = -0.5, 1
		case 1:
			p.Lower[j], p.Upper[j] = 0, 0
		}
	}
	return p
}

// within returns the two rows |a.y + b| <= variable t of a program of n variables.
func within(a []float64, t, n int, b float64) []Row {
	low, high := make([]float64, n), make([]float64, n)
	copy(low, a)
	copy(high, a)
	low[t], high[t] = 1, -1
	return []Row{{low, -b, inf}, {high, -inf, -b}}
}

func limits(r *rand.Rand, p *Program, n int) {
	for _, q := range chain(r, n, 1+n/2) {
		row := append(q, make([]float64, len(p.Cost)-n)...)
		c := fraction(r)
		p.Rows = append(p.Rows, Row{row, c - float64(r.IntN(3)), c + float64(r.IntN(3))})
	}
}

func fraction(r *rand.Rand) float64 { return math.Round(r.NormFloat64()*100) / 100 }

// stretched returns the program with all lengths (bounds of rows and variables)
// multiplied.
func stretched(p Program, by float64) Program {
	out := Program{Cost: p.Cost, Lower: times(p.Lower, by), Upper: times(p.Upper, by)}
	for _, row := range p.Rows {
		out.Rows = append(out.Rows, Row{row.Coefficients, row.Lower * by, row.Upper * by})
	}
	return out
}

func times(a []float64, by float64) []float64 {
	out := make([]float64, len(a))
	for j := range a {
		out[j] = a[j] * by
	}
	return out
}
