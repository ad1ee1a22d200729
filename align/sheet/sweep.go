package sheet

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Sweep is one round of a rim dial by itself: sag, the validity rule, and half of the
// total reading on both diameters.
type Sweep struct {
	Carrier align.Shaft `json:"carrier"`
	Rim     dial.Rim    `json:"rim"`
	View    align.View  `json:"view"`
	Zero    units.Clock `json:"zero"` // where the corrected readings are to be zero, as the view names it; left out it is 12

	// Mandrel holds what the bracket read on a straight mandrel. Give it or Rim.Sag, not
	// both; neither: no sag.
	Mandrel *Sag `json:"mandrel,omitempty"`
}

// Working works the sweep: the sag, the readings without it from the wanted zero, the
// reading that was not taken or the miss, and the offset at the dial in both planes,
// which is what dial.HalfTIR answers.
//
// It refuses what dial.RimFace.Solve refuses of a rim (/rim/readings/2/at, /carrier), a
// zero that is not a quarter of the clock (OutOfRange), a mandrel beside a sag
// (Conflict), and one that shows a sag below zero.
func (s Sweep) Working() (Working, error) {
	var faults check.Faults
	sag := s.mandrel(&faults)
	found := s.solve(&faults, sag)
	var root check.Path
	if !check.Sound(s.Zero) || s.Zero.Normal() != units.Clock(90*quarter(s.Zero)) {
		faults.Add(units.OutOfRange, root.Field("zero"), s.Zero, "12:00, 3:00, 6:00 or 9:00")
	}
	if err := faults.Err(); err != nil {
		return Working{}, err
	}
	var p page
	s.Rim.Sag = sag
	set := dial.RimFace{Carrier: s.Carrier, Rim: s.Rim, View: s.View}.Sets()[0]
	droop := put("s", thickness, sag)
	if s.Mandrel != nil {
		droop = p.sag(*s.Mandrel)
	}
	r := p.sweep(set, found.Checks[0], droop, quarter(s.View.Clock(s.Zero)))
	for _, in := range planes {
		p.displaced(r, in, outwards(s.Carrier == align.Movable, s.Rim.Bore))
	}
	return p.working("A sweep of the rim", s.View)
}

// mandrel is the sag, however it was given.
func (s Sweep) mandrel(faults *check.Faults) units.Length {
	if s.Mandrel == nil {
		return s.Rim.Sag
	}
	var root check.Path
	at := root.Field("mandrel")
	sound := s.Mandrel.check(faults, at)
	if s.Rim.Sag != 0 {
		faults.Add(units.Conflict, at, nil, "a mandrel or a sag, not both")
	}
	if !sound {
		return 0
	}
	sag := dial.MandrelSag(s.Mandrel.At12, s.Mandrel.At6)
	if sag < 0 {
		faults.Add(units.OutOfRange, at.Field("at6"), s.Mandrel.At6, "a reading at 6 that is not above that at 12: brackets hang down")
	}
	return max(0, sag)
}

// solve has package dial judge the rim. A face that is always sound stands in for the
// second set that its methods need.
func (s Sweep) solve(faults *check.Faults, sag units.Length) dial.Result {
	rim := s.Rim
	rim.Sag = sag
	found, err := dial.RimFace{
		Carrier: s.Carrier, Rim: rim, View: s.View,
		Face: dial.Face{Diameter: units.Metre, Readings: dial.Quarters(units.Millimetre, 0, 0, 0, 0)},
	}.Solve()
	var root check.Path
	faults.Adopt(root, err)
	return found
}

// Sag is the droop of a bracket, seen on a straight mandrel.
type Sag struct {
	At12 units.Length `json:"at12"` // reading at 12 o'clock
	At6  units.Length `json:"at6"`
}

// Working works the sag, which is what dial.MandrelSag answers: below zero where the
// droop lets the plunger out, as of a face dial it may. It refuses readings
// that are not finite (/at12, /at6).
func (s Sag) Working() (Working, error) {
	var faults check.Faults
	var root check.Path
	s.check(&faults, root)
	if err := faults.Err(); err != nil {
		return Working{}, err
	}
	var p page
	p.sag(s)
	return p.working("The sag of a bracket", align.FromMovable)
}

func (s Sag) check(faults *check.Faults, at check.Path) (ok bool) {
	top := check.Finite(faults, at.Field("at12"), s.At12)
	return check.Finite(faults, at.Field("at6"), s.At6) && top
}

// sag puts the sag of a bracket on the page.
func (p *page) sag(mandrel Sag) input {
	right := func(v values) float64 { return float64(dial.MandrelSag(v.length(0), v.length(1))) }
	return p.above("s", p.add(line{
		id:      "sag",
		sought:  "sag of the bracket",
		formula: "s = (M12 - M6)/2",
		source:  "turned from top to bottom it shows twice: US Bureau of Reclamation, FIST 4-1A, p. 17 (read)",
		kind:    thickness,
		inputs:  []input{put("M12", reading, mandrel.At12), put("M6", reading, mandrel.At6)},
		rule:    right,
		ways:    append(unitWays("mandrel", "", right), way{kind: TotalNotHalved, sort: "mandrel", rule: func(v values) float64 { return 2 * right(v) }}),
	}))
}

// sweep puts the readings without sag on the page, each from the zero at a quarter.
func (p *page) sweep(set align.Set, found dial.Check, sag input, zero int) *round {
	named := probe{"rim", "rim dial", "R"}
	raw := newRound(named, set, found)
	if found.Completed {
		p.fourth(raw, quarter(found.Supplied))
	}
	r := *raw
	r.sag = 0 // from here on
	for q := range r.at {
		r.at[q] = p.rezeroed(raw, q, zero, sag)
	}
	if !found.Completed {
		p.miss(&r)
	}
	return &r
}

// rezeroed is the reading at a quarter without sag, from the zero at another.
func (p *page) rezeroed(raw *round, q, zero int, sag input) input {
	here, there := units.Clock(90*q), units.Clock(90*zero)
	sign := outwards(raw.bore)
	free := func(v values, s float64) float64 {
		a := dial.WithoutSag(v.length(0), units.Length(sign*s), here)
		b := dial.WithoutSag(v.length(1), units.Length(sign*s), there)
		return float64(a - b)
	}
	l := line{
		id:      "rim." + hour(raw.view, q),
		sought:  "reading at " + hour(raw.view, q) + " o'clock from zero at " + hour(raw.view, zero),
		formula: "R = " + raw.at[q].symbol + " - " + raw.at[zero].symbol,
		source:  "a dial may be zeroed anywhere: J. Piotrowski, Shaft Alignment Handbook, 3rd ed., ch. 8 (second-hand)",
		kind:    reading,
		inputs:  []input{raw.at[q], raw.at[zero], sag},
		rule:    func(v values) float64 { return free(v, v[2]) },
	}
	_, up := here.SinCos()
	_, zeroUp := there.SinCos()
	if turn := up - zeroUp; turn != 0 && (sag.from != given || sag.value != 0) {
		l.formula += " " + times(-sign*turn, "s")
		l.sought += ", without sag"
		l.source = "the sag adds s cos t to a reading, twice from top to bottom: US Bureau of Reclamation, FIST 4-1A, p. 17 (read)"
		l.ways = []way{
			{kind: SagForgotten, rule: func(v values) float64 { return free(v, 0) }},
			{kind: SagAdded, rule: func(v values) float64 { return free(v, -v[2]) }},
		}
		if turn == 2 || turn == -2 {
			l.ways = append(l.ways, way{kind: SagOnce, rule: func(v values) float64 { return free(v, v[2]/2) }})
		}
	}
	return p.above(raw.symbol(q), p.add(l))
}

// times writes a whole multiple of a symbol as a term of a sum.
func times(n float64, symbol string) string {
	switch n {
	case 1:
		return "+ " + symbol
	case -1:
		return "- " + symbol
	case 2:
		return "+ 2 * " + symbol
	}
	return "- 2 * " + symbol
}
