package pumpset

import (
	"example.org/collinear/align"
	"example.org/collinear/examples/internal/graph"
	"example.org/collinear/units"
)

// turn is one sweep, counted from its first reading, with the sag taken off. All
// positions are those of the crew.
func (p *report) turn(when string, part *part, set align.Set, c align.Centreline) (graph.Turn, error) {
	t := graph.Turn{
		Title: what(set.Probe) + ", " + when,
		Above: "inwards", Below: "outwards",
		Unit: p.length, Show: p.fine, Name: func(at units.Clock) string { return at.Normal().String() },
	}
	if part.gauge() {
		t.Above, t.Below = "wider", "narrower"
	}
	sag := set.Sag
	set.Sag = 0
	fitted, err := set.Predict(c, part.positions()...)
	if err != nil {
		return graph.Turn{}, err
	}
	n := len(part.readings)
	once := part.once()
	first, zero := part.readings[0], units.Length(0)
	for i, r := range part.readings {
		value := r.Value.Value - first.Value.Value - sagChange(sag, first, r)
		off := value - fitted[i].Value
		if i < once {
			zero += off / units.Length(once)
		}
		t.Readings = append(t.Readings, graph.Reading{At: onTurn(i, r.At.Value), Value: value, Off: off})
	}
	for i := range t.Readings {
		t.Readings[i].Off -= zero
		t.Says += part.readings[i].At.text + " " + p.change(part, t.Readings[i].Value) + ", left over " + p.fine(t.Readings[i].Off) + " " + wayOf(&t, t.Readings[i].Off) + ". "
	}
	t.Sine = fitted[n:]
	for i := range t.Sine {
		t.Sine[i].Value += zero
	}
	return t, nil
}

// wayOf is the word for which way a length goes.
func wayOf(t *graph.Turn, l units.Length) string {
	if l < 0 {
		return t.Below
	}
	return t.Above
}

// once is how many readings there are without that back at the start, which the
// misalignment does not come from.
func (part *part) once() int {
	last := len(part.readings) - 1
	if part.readings[last].At.Value.Normal() == part.readings[0].At.Value.Normal() {
		return last
	}
	return last + 1
}

// what says what touched, in few words.
func what(probe align.Probe) string {
	switch probe.Kind {
	case align.Rim:
		return "Rim dial, carried by the " + probe.Carrier.String() + " shaft"
	case align.NearFace, align.FarFace:
		return "Face dial, carried by the " + probe.Carrier.String() + " shaft"
	case align.SpacerFace, align.SpacerFarFace:
		return "Face dial at the " + probe.Carrier.String() + " hub"
	case align.Straightedge:
		return "Feeler, straightedge on the " + probe.Carrier.String() + " rim"
	}
	return "Gauge in the gap"
}

// onTurn puts a return to 12 o'clock at the end of the turn.
func onTurn(i int, at units.Clock) units.Clock {
	if i > 0 && at.Normal() == units.Twelve {
		return 12 * units.Hour
	}
	return at
}

// positions are those of the readings, and behind them so many of a full turn that a
// sine can be drawn through them.
func (part *part) positions() []units.Clock {
	var at []units.Clock
	for _, r := range part.readings {
		at = append(at, r.At.Value)
	}
	const step = units.Hour / 4
	for i := range 49 {
		at = append(at, step*units.Clock(i))
	}
	return at
}
