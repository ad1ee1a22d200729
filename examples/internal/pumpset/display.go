package pumpset

import (
	"cmp"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// display is how a report puts numbers into words: in which units, and with
// whose names for the sides. No number with a sign is shown without the word
// that tells its way.
type display struct {
	length, along units.LengthUnit
	slope         units.SlopeUnit
	digits        int // of a length across the shaft
	places        int // of a length along it
	view          align.View
	three, nine   string
}

func (j *Job) display(s System) display {
	d := display{
		length: units.InMillimetres, digits: 2, along: units.InMillimetres, places: 1, slope: units.InMillimetresPerMetre,
		view: j.View, three: cmp.Or(string(j.Three), "3 o'clock"), nine: cmp.Or(string(j.Nine), "9 o'clock"),
	}
	if cmp.Or(s, j.Units, Metric) == Inch {
		d.length, d.digits, d.along, d.places, d.slope = units.InMils, 1, units.InInches, 3, units.InMilsPerInch
	}
	return d
}

// style is the same for the moves, which the library puts into words.
func (d display) style() align.Style {
	return align.Style{Unit: d.length, Digits: d.digits, View: d.view, Three: d.three, Nine: d.nine}
}

// size is a length without its sign.
func (d display) size(l units.Length) string { return max(l, -l).Text(d.length, d.digits) }

// fine is a size to one digit more, for uncertainties and limits.
func (d display) fine(l units.Length) string { return max(l, -l).Text(d.length, d.digits+1) }

// station is a length along the shafts, without its sign.
func (d display) station(x units.Length) string { return max(x, -x).Text(d.along, d.places) }

// apart is a distance to one digit more, for gaps along the shafts.
func (d display) apart(l units.Length) string { return max(l, -l).Text(d.along, d.places+1) }

// entered is a size that the job tells: as it stands there, if that is in the
// sheet's own units, or as show puts it.
func (d display) entered(l length, show func(units.Length) string) string {
	isMetric := strings.HasSuffix(strings.TrimSpace(l.text), "m") // no unit of the other system ends so
	if isMetric == (d.along == units.InMillimetres) {
		return unsigned(l.text)
	}
	return show(l.Value)
}

func (d display) slopeSize(s units.Slope) string { return max(s, -s).Text(d.slope, 2) }

// way is the size of l and one of three texts: for a length above zero, below
// zero, and one that rounds to nothing, which has no size to show.
func (d display) way(l units.Length, above, below, nothing string) string {
	switch size := d.size(l); {
	case size == d.size(0):
		return nothing
	case l > 0:
		return size + " " + above
	default:
		return size + " " + below
	}
}

func (d display) height(w units.Length) string {
	return d.way(w, "high", "low", "neither high nor low")
}

// sideways tells where a length in the library's signs points, with the crew's
// names.
func (d display) sideways(w units.Length) string {
	if d.view == align.FromStationary {
		w = -w
	}
	return d.way(w, "towards "+d.three, "towards "+d.nine, "off to neither side")
}

func (d display) climb(s units.Slope) string {
	return d.slopeWay(s, "climbs", "falls", "runs level")
}

func (d display) drift(s units.Slope) string {
	if d.view == align.FromStationary {
		s = -s
	}
	return d.slopeWay(s, "drifts towards "+d.three+" by", "drifts towards "+d.nine+" by", "runs straight")
}

func (d display) slopeWay(s units.Slope, above, below, nothing string) string {
	switch size := d.slopeSize(s); {
	case size == d.slopeSize(0):
		return nothing
	case s > 0:
		return above + " " + size
	default:
		return below + " " + size
	}
}

// clock is a clock position in the library's view, as the crew names it, to a
// quarter of an hour.
func (d display) clock(at units.Clock) string {
	return d.view.Clock(at).Round(units.Hour / 4).String()
}

// plunger tells a change of a dial: which way the plunger went. "In" alone would
// read like the unit.
func (d display) plunger(l units.Length) string {
	return d.way(l, "inwards", "outwards", "no change")
}

// feeler tells a change of a gap.
func (d display) feeler(l units.Length) string {
	return d.way(l, "wider", "narrower", "no change")
}

// doubt is a standard uncertainty.
func (d display) doubt(u units.Length, basis align.Basis) string {
	if basis == align.Unknown {
		return "u unknown"
	}
	return "u " + d.fine(u)
}

func (d display) slopeDoubt(u units.Slope, basis align.Basis) string {
	if basis == align.Unknown {
		return "u unknown"
	}
	return "u " + u.Text(d.slope, 3)
}
