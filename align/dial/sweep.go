package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// The quarters of the clock, as the library's own view names them.
const (
	twelve = iota
	three
	six
	nine
	quarters // how many
)

// Check tells how far a set satisfies the checks that it carries in itself.
type Check struct {
	Quarters  [4]units.Length `json:"quarters"`           // at 12, 3, 6 and 9 in the library's view, sag removed, from the set's own zero: 12 shows minus the sag where the dial was zeroed there
	Miss      units.Length    `json:"miss"`               // of the validity rule, 12 + 6 - 3 - 9; says nothing when Completed
	Completed bool            `json:"completed,omitzero"` // one quarter was not read but supplied by the rule
	Supplied  units.Clock     `json:"supplied"`           // which, in the library's view; says nothing unless Completed
	Return    units.Length    `json:"return"`             // last reading less first, back at the start; says nothing unless Returned
	Returned  bool            `json:"returned,omitzero"`  // the sweep ended where it began
}

// sweep is one set at the quarters, sag removed, all four there.
type sweep [quarters]units.Length

// read brings a sound part to its quarters.
func (c *Check) read(p *part) {
	var seen [quarters]bool
	droop := sweep{twelve: p.sag(), six: -p.sag()} // sag cos t, as in WithoutSag
	for i := range p.set.Readings {
		r := &p.set.Readings[i]
		q, _ := quarter(p.set.View.Clock(r.At))
		c.Quarters[q], seen[q] = r.Value-droop[q], true
	}
	c.complete(seen)
	at := &c.Quarters
	c.Miss = Miss(at[twelve], at[three], at[six], at[nine])
	if p.returned() {
		c.Returned = true
		c.Return = p.readings[len(p.readings)-1].Value - p.readings[0].Value
	}
}

// quarter returns which quarter of the clock t is, if it is one.
func quarter(t units.Clock) (q int, ok bool) {
	switch t.Normal() {
	case units.Twelve:
		return twelve, true
	case units.Three:
		return three, true
	case units.Six:
		return six, true
	case units.Nine:
		return nine, true
	}
	return 0, false
}

// returned tells whether the sweep ended where it began: its set leaves that out.
func (p *part) returned() bool { return len(p.readings) > len(p.set.Readings) }

// sag is that of the part's set, the other way round in a bore.
func (p *part) sag() units.Length {
	if p.set.Probe.Kind == align.Bore {
		return -p.set.Sag
	}
	return p.set.Sag
}

// complete supplies the one quarter that was not seen, if there is one.
func (c *Check) complete(seen [quarters]bool) {
	at := &c.Quarters
	for q := range seen {
		if !seen[q] {
			at[q] = Fourth(at[(q+2)%4], at[(q+1)%4], at[(q+3)%4])
			c.Completed, c.Supplied = true, units.Clock(90*q)
		}
	}
}

// outward returns the readings without the return to the start, which is a
// check on the set and not a reading of its own.
func outward(readings []align.Reading) []align.Reading {
	if returns(readings) {
		return readings[:len(readings)-1]
	}
	return readings
}

// returns tells whether the last reading stands where the first did.
func returns(readings []align.Reading) bool {
	last := len(readings) - 1
	return last >= 2 && samePlace(readings[last].At, readings[0].At)
}
