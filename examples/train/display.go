package main

import (
	"cmp"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/lines"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// display is how a report puts numbers into words. No number with a sign is shown
// without the word that tells its way.
type display struct {
	length, along  units.LengthUnit
	slope          units.SlopeUnit
	digits, places int // of a length across the shaft, and along it
	three, nine    string
}

func (j *job) display(s system) display {
	d := display{
		length: units.InMillimetres, digits: 2, along: units.InMillimetres, slope: units.InMillimetresPerMetre,
		three: cmp.Or(string(j.Three), "3 o'clock"), nine: cmp.Or(string(j.Nine), "9 o'clock"),
	}
	if cmp.Or(s, j.Units, metric) == inch {
		d.length, d.digits, d.along, d.places, d.slope = units.InMils, 1, units.InInches, 2, units.InMilsPerInch
	}
	return d
}

// style is the same for steps, which the library puts into words.
func (d display) style() align.Style {
	return align.Style{Unit: d.length, Digits: d.digits, Three: d.three, Nine: d.nine}
}

// verdictStyle is the same for the items of a verdict.
func (d display) verdictStyle() tolerance.Style {
	return tolerance.Style{Length: d.length, LengthDigits: d.digits, Slope: d.slope, SlopeDigits: 2}
}

// size is a length without its sign.
func (d display) size(l units.Length) string { return max(l, -l).Text(d.length, d.digits) }

// place is a place on the tape.
func (d display) place(x units.Length) string { return x.Text(d.along, d.places) }

// way is the size of l and one of two texts, for a length above or below zero; or
// the third alone, for one that rounds to nothing.
func (d display) way(l units.Length, above, below, nothing string) string {
	return choice(d.size(l), d.size(0), l > 0, "* "+above, "* "+below, nothing)
}

func (d display) slopeWay(s units.Slope, above, below, nothing string) string {
	return choice(max(s, -s).Text(d.slope, 2), units.Slope(0).Text(d.slope, 2), s > 0, above, below, nothing)
}

// choice is one of three texts, with the size in the place of its star.
func choice(size, none string, positive bool, above, below, nothing string) string {
	switch {
	case size == none:
		return nothing
	case positive:
		return strings.Replace(above, "*", size, 1)
	default:
		return strings.Replace(below, "*", size, 1)
	}
}

func (d display) height(w units.Length) string {
	return d.way(w, "high", "low", "neither high nor low")
}

func (d display) across(w units.Length) string {
	return d.way(w, "towards "+d.three, "towards "+d.nine, "to neither side")
}

// lies tells where a centreline is above a foot.
func (d display) lies(e align.Estimate, f foot) string {
	w, _ := e.At(f.At)
	return d.height(w.Vertical) + ", " + d.across(w.Horizontal)
}

func (d display) climb(s units.Slope) string {
	return d.slopeWay(s, "climbing *", "falling *", "level")
}

func (d display) drift(s units.Slope) string {
	return d.slopeWay(s, "drifting * towards "+d.three, "drifting * towards "+d.nine, "straight")
}

// plunger tells a change of a dial: which way its plunger went.
func (d display) plunger(l units.Length) string { return d.way(l, "inwards", "outwards", "no change") }

// doubt is a standard uncertainty.
func (d display) doubt(u units.Length) string {
	if u != u {
		return "u unknown"
	}
	return lines.Tied("u " + u.Text(d.length, d.digits+1))
}
