package sheet

import (
	"math"
	"slices"
)

// independent counts the lines of a sheet of which none follows from the others: the
// rank of what they do when the given numbers change.
func (w Working) independent(sheet answers) int {
	var rows [][]float64
	for i := range w.lines {
		if _, ok := sheet[i]; ok {
			rows = append(rows, w.slopes(i))
		}
	}
	return rank(rows)
}

// nudge is by how much of itself a given number is changed.
const nudge = 1e-4

// slopes are how much line i changes with each of the given numbers.
func (w Working) slopes(line int) []float64 {
	var row []float64
	before := w.compute(nil, asGiven)[line]
	for _, in := range w.givens() {
		row = append(row, w.compute(nil, nudged(in))[line]-before)
	}
	return row
}

// givens lists the given numbers, each once wherever it is put in. Two that look alike
// count as one, which never claims too much.
func (w Working) givens() []input {
	var list []input
	for i := range w.lines {
		for _, in := range w.lines[i].inputs {
			if in.from == given && in.kind != clock && !slices.Contains(list, in) {
				list = append(list, in)
			}
		}
	}
	return list
}

// nudged changes one of the given numbers by a little.
func nudged(one input) func(input) float64 {
	return func(in input) float64 {
		if in == one {
			return in.value + float64(nudge*max(math.Abs(in.value), 1))
		}
		return in.value
	}
}

// rank counts the rows that are no sums of the others.
func rank(rows [][]float64) int {
	const none = 1e-6 // of a row's own size, left by the rounding of differences
	var basis [][]float64
	for _, row := range rows {
		size := norm(row)
		for _, b := range basis {
			along := dot(row, b)
			for k := range row {
				row[k] -= float64(along * b[k])
			}
		}
		if left := norm(row); left > none*size {
			for k := range row {
				row[k] /= left
			}
			basis = append(basis, row)
		}
	}
	return len(basis)
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}

func norm(a []float64) float64 { return math.Sqrt(dot(a, a)) }
