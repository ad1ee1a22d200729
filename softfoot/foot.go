package softfoot

import "example.org/collinear/units"

// Foot is one foot and what was seen when its bolt alone was loosened, all others
// tight: either how far it lifted, or the gaps that a feeler found under its
// corners.
type Foot struct {
	Name string       `json:"name"`
	X    units.Length `json:"x"`             // along the shaft; any zero, for one the coupling centre
	Y    units.Length `json:"y"`             // across, from below the shaft centreline, positive towards 3 o'clock
	Lift units.Length `json:"lift,omitzero"` // of the foot, positive upwards; zero: it did not lift
	Gaps []Gap        `json:"gaps,omitzero"` // instead of Lift
}

// Gap is what a feeler found at one corner of a foot.
type Gap struct {
	X   units.Length `json:"x"` // of the corner, from the middle of the foot, along the shaft
	Y   units.Length `json:"y"` // the same across, positive towards 3 o'clock
	Gap units.Length `json:"gap"`
}

// Survey is one round over all feet of a machine.
type Survey struct {
	Feet   []Foot       `json:"feet"`   // three to eight, not all in one line (narrower than a thousandth of its length)
	Height units.Length `json:"height"` // of the shaft centreline above the undersides of the feet
}

// Limits are the caller's thresholds. Each one that is zero takes its default.
type Limits struct {
	Act    units.Length `json:"act,omitzero"`    // excess of a lift above which a foot is soft
	Margin units.Length `json:"margin,omitzero"` // how far a pattern may miss a lift, beside a share of the largest (package comment); what lifts no more shows no cause
	Common units.Length `json:"common,omitzero"` // lift of all feet above which the packing springs
	Taper  units.Length `json:"taper,omitzero"`  // difference across the corners of a foot above which it is angular
	Least  units.Length `json:"least,omitzero"`  // thinnest shim that is worth its handling
}

// The defaults of Limits, in round mils, which also are round in hundredths of a
// millimetre but for a little more. That of Act is common practice; R. B. McMillan,
// Rotating Machinery: Practical Solutions to Unbalance and Misalignment, 2004,
// p. 112, has 2 mil (read). The others are our own. None of them is permission to
// run.
const (
	DefaultAct    = 2 * units.Mil // 0.0508 mm
	DefaultMargin = 1 * units.Mil
	DefaultCommon = 4 * units.Mil
	DefaultTaper  = 2 * units.Mil
	DefaultLeast  = 1 * units.Mil
)

// orDefaults fills in what was not given.
func (l Limits) orDefaults() Limits {
	for _, limit := range []struct {
		given    *units.Length
		standard units.Length
	}{
		{&l.Act, DefaultAct}, {&l.Margin, DefaultMargin}, {&l.Common, DefaultCommon},
		{&l.Taper, DefaultTaper}, {&l.Least, DefaultLeast},
	} {
		if *limit.given == 0 {
			*limit.given = limit.standard
		}
	}
	return l
}
