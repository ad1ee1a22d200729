package sheet

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// largestExaggeration is as far as a suggestion goes: 1 um on the machine is 1 mm
// on paper, less than any hand method tells. The figure is ours, no source.
const largestExaggeration = 1000

// SuggestPaper returns the scales that show most of a graph on a field of this
// width and height, which has to hold both centrelines over all that is marked:
// the least Reduction and the largest Exaggeration of the round steps 1, 2, 5, 10
// and so on (or 0.5, 0.2, 0.1 of an exaggeration) that fit. The reduction is not
// below 1 and the exaggeration not above 1000. The pencil is left at its default.
//
// Both choices make the tolerance of every foot as small as a round step can.
//
// It refuses a field on which the default pencil cannot tell one edge from the
// other (at /width), and what [Paper.Draw] refuses, with the same paths: points
// that stand too close on so small a sheet as well, at /through/1/x.
func SuggestPaper(width, height units.Length, line align.Line, through [2]Station, feet ...align.Foot) (Paper, error) {
	var faults check.Faults
	var root check.Path
	checkField(&faults, root.Field("width"), width)
	checkField(&faults, root.Field("height"), height)
	checkGraphed(&faults, root, line, through, feet)
	Paper{Reduction: 1, Exaggeration: 1}.checkApart(&faults, root.Field("through"), through)
	if err := faults.Err(); err != nil {
		return Paper{}, err
	}
	left, right := reach(through, feet)
	low := min(0, line.At(left), line.At(right))
	high := max(0, line.At(left), line.At(right))
	p := Paper{Reduction: leastReduction(right-left, width), Exaggeration: mostExaggeration(high-low, height)}
	if _, err := p.Draw(line, through, feet...); err != nil {
		return Paper{}, err
	}
	return p, nil
}

// leastReduction is the least round step, from 1, that makes a length fit.
func leastReduction(length, width units.Length) float64 {
	least := math.Inf(1)
	for _, step := range roundSteps {
		if step >= 1 && length/units.Length(step) <= width {
			least = min(least, step)
		}
	}
	return least
}

// mostExaggeration is the largest round step at which a length fits.
func mostExaggeration(length, height units.Length) float64 {
	most := 0.0
	for _, step := range roundSteps {
		if step <= largestExaggeration && length*units.Length(step) <= height {
			most = max(most, step)
		}
	}
	return most
}

// roundSteps are 1, 2 and 5 of each power of ten from 1e-10 to 1e9, each the float64
// nearest to its decimal. On a field of more than 1 mm one of them fits whatever
// is within 1000 km.
var roundSteps = func() (steps []float64) {
	for power := range 20 {
		for _, digit := range [...]float64{1, 2, 5} {
			steps = append(steps, digit*math.Pow10(power)/1e10) // rounded once
		}
	}
	return steps
}()

// checkField asks for a side of a field that the pencil does not blot out.
func checkField(faults *check.Faults, at check.Path, side units.Length) {
	if check.Positive(faults, at, side, "a side of the field to draw on") && side <= 2*DefaultPencil {
		faults.Add(units.OutOfRange, at, side, "a side of more than "+(2*DefaultPencil).String()+", twice the error of the pencil")
	}
}
