package sheet

import (
	"math/rand/v2"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// draw draws the numbers of exercises. All of them are whole numbers, of divisions, of
// marks on a tape, of degrees, so that they are the same on every platform.
type draw struct {
	measures
	system System
	source *rand.PCG
}

// measures are what a crew reads off its instruments.
type measures struct {
	division units.Length // of a dial or a gauge
	tape     units.Length // between two marks
	place    units.Length // the last that is shown of a height
}

var measuresOf = [...]measures{
	Metric: {10 * units.Micrometre, 5 * units.Millimetre, units.Micrometre},
	Inch:   {units.Mil / 2, units.Inch / 8, units.Mil / 100},
}

func newDraw(seed uint64, d Difficulty, s System) *draw {
	return &draw{measuresOf[s], s, rand.NewPCG(seed, uint64(d)<<8|uint64(s))}
}

// below draws a number from 0 up to n, without n. That the remainder favours low numbers
// by one part in 2^50 does not matter here; it is the same everywhere.
func (d *draw) below(n int) int { return int(d.source.Uint64() % uint64(n)) }

// between draws a number from low to high, both included.
func (d *draw) between(low, high int) int { return low + d.below(high-low+1) }

// either draws a number of a size from low to high, and its sign.
func (d *draw) either(low, high int) int {
	n := d.between(low, high)
	if d.oneIn(2) {
		return -n
	}
	return n
}

func (d *draw) oneIn(n int) bool { return d.below(n) == 0 }

// oneOf draws one of a list.
func oneOf[T any](d *draw, list ...T) T { return list[d.below(len(list))] }

// distance draws a distance off a tape.
func (d *draw) distance(low, high units.Length) units.Length {
	return oneOf(d, d.marks(low, high)...)
}

// onTape is how many marks a tape has: it is 5 m long, or a little over 10 ft.
const onTape = 1000

// marks are the marks of the tape from low to high.
func (d *draw) marks(low, high units.Length) []units.Length {
	var list []units.Length
	for n := range onTape {
		if mark := units.Length(n) * d.tape; low <= mark && mark <= high {
			list = append(list, mark)
		}
	}
	return list
}

// shownSlope is the last place that is shown of a slope: 0.001 mm/m, or mil/in.
const shownSlope = 1e-6

// run draws a distance over which every multiple of rise makes a slope that has no more
// digits than are shown: it divides the rise by the last place of a slope.
func (d *draw) run(rise, low, high units.Length) units.Length {
	var list []units.Length
	for _, mark := range d.marks(low, high) {
		if int64(rise)*1_000_000%int64(mark) == 0 {
			list = append(list, mark)
		}
	}
	return oneOf(d, list...)
}

// slope draws a slope from 0.2 to 1.5 mm/m, either way, that makes a rise over a run which
// has no more digits than are shown of a height.
func (d *draw) slope(run units.Length) units.Slope {
	const least, most = 200, 1500 // in the last place of a slope
	whole := int64(d.place) * 1_000_000
	step := int(whole / divisor(int64(run), whole))
	n := d.either((least+step-1)/step, most/step)
	return units.Slope(float64(n*step) * shownSlope)
}

// divisor is the greatest common divisor of two numbers.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// anySlope is a run for slopes that are not worked over one that is known: it draws them
// in hundredths of a mm/m or a mil/in.
func (d *draw) anySlope() units.Length { return d.place * 100_000 }

// offset draws a misalignment from 0.05 to 0.8 mm, either way, in whole divisions.
func (d *draw) offset() units.Length {
	const least, most = 50 * units.Micrometre, 800 * units.Micrometre
	return units.Length(d.either(int(least/d.division)+1, int(most/d.division))) * d.division
}

// centreline draws a misalignment in both planes, whose slopes suit a run.
func (d *draw) centreline(run units.Length) align.Centreline {
	return align.Centreline{
		Horizontal: align.Line{Offset: d.offset(), Slope: d.slope(run)},
		Vertical:   align.Line{Offset: d.offset(), Slope: d.slope(run)},
	}
}

// sag draws the droop of a bracket, in whole divisions.
func (d *draw) sag() units.Length { return units.Length(d.between(2, 12)) * d.division }

func (d *draw) view() align.View { return oneOf(d, align.FromMovable, align.FromStationary) }

func (d *draw) shaft() align.Shaft { return oneOf(d, align.Stationary, align.Movable) }

// onDial is the misalignment c as the dial of the set shows it: at the four quarters as
// the crew calls them, from the reading first at 12, in whole divisions.
func (d *draw) onDial(set align.Set, c align.Centreline, first units.Length) []align.Reading {
	shown, _ := set.Predict(c, units.Twelve, units.Three, units.Six, units.Nine) // what is drawn is sound
	for i := range shown {
		shown[i].Value = first + shown[i].Value.Round(d.division)
	}
	return shown
}
