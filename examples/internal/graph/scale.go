package graph

import (
	"math"
	"strconv"

	"example.org/collinear/units"
)

// Scale is how large a machine is drawn.
type Scale struct {
	Along  float64 // millimetres of the machine on one of paper, along the shafts
	Across float64 // millimetres of paper for one of the machine, across them
}

// Exaggeration is by how much slopes look steeper than they are.
func (s Scale) Exaggeration() float64 { return s.Along * s.Across }

// String tells the scale in words.
func (s Scale) String() string {
	return "Along the shafts " + times(s.Along, "smaller than") + " the machine, across them " + times(s.Across, "larger than") +
		" it: slopes are drawn " + s.Slopes() + "."
}

// Slopes tells in words how much steeper than on the machine a slope is drawn, which
// stays true where a drawing is made larger or smaller.
func (s Scale) Slopes() string {
	if s.Exaggeration() == 1 {
		return "as steep as they are"
	}
	return number(s.Exaggeration()) + " times steeper"
}

func times(x float64, words string) string {
	if x == 1 {
		return "as large as"
	}
	return number(x) + " times " + words
}

// number writes six digits of a number, without an exponent and without zeros at
// its end.
func number(x float64) string {
	six, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 6, 64), 64) // reads what was just written
	return strconv.FormatFloat(six, 'f', -1, 64)
}

// round are the leading figures of a scale.
var round = []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8}

// ticking are the leading figures of a step between two ticks.
var ticking = []float64{1, 2, 5}

// atMost returns the largest round number that is not above x, which is above zero.
func atMost(x float64, figures []float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	best := power / 10 * figures[len(figures)-1] // where rounding put the power above x
	for _, f := range figures {
		if f*power <= x*(1+1e-12) {
			best = f * power
		}
	}
	return best
}

// atLeast returns the smallest round number that is not below x, which is above zero.
func atLeast(x float64, figures []float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, f := range figures {
		if f*power >= x*(1-1e-12) {
			return f * power
		}
	}
	return 10 * power
}

// millimetres is a length of the machine as a number.
func millimetres(l units.Length) float64 { return l.In(units.InMillimetres) }
