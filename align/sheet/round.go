package sheet

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// round is one probe's way over the quarters of the clock.
type round struct {
	probe
	bore bool // its sag counts the other way round
	sag  units.Length
	view align.View
	at   [4]input // readings at the library's 12, 3, 6 and 9

	quarters [4]units.Length // the same as package dial has them: without sag, all four
}

// probe names a round: in the ids ("rim"), for a person ("rim dial"), and by the
// letter of its readings ("R" for R12).
type probe struct{ name, what, letter string }

// round puts on the page what a round of readings tells of itself: the reading that
// was not taken, or how far the four miss the validity rule.
func (p *page) round(named probe, set align.Set, found dial.Check) *round {
	r := newRound(named, set, found)
	if found.Completed {
		p.fourth(r, quarter(found.Supplied))
	} else {
		p.answers(p.miss(r), float64(found.Miss))
	}
	return r
}

// newRound sorts the readings of a set that package dial accepts.
func newRound(named probe, set align.Set, found dial.Check) *round {
	r := &round{probe: named, bore: set.Probe.Kind == align.Bore, sag: set.Sag, view: set.View, quarters: found.Quarters}
	if r.bore {
		r.sag = -r.sag
	}
	for _, shown := range set.Readings {
		q := quarter(set.View.Clock(shown.At))
		r.at[q] = put(r.symbol(q), reading, shown.Value)
	}
	return r
}

// quarter is the index of a clock position that is one of the quarters.
func quarter(t units.Clock) int { return int(t.Normal() / 90) }

// symbol names a reading by the hour that the crew calls it.
func (r *round) symbol(q int) string { return r.letter + hour(r.view, q) }

// hour is what a crew calls a quarter.
func hour(v align.View, q int) string {
	return [...]string{"12", "3", "6", "9"}[quarter(v.Clock(units.Clock(90*q)))]
}

const validity = "validity rule, 12 + 6 = 3 + 9: J. Piotrowski, Shaft Alignment Handbook, 3rd ed., ch. 8 (second-hand)"

// fourth supplies the reading at quarter q.
func (p *page) fourth(r *round, q int) {
	opposite, left, right := r.at[(q+2)%4], r.at[(q+1)%4], r.at[(q+3)%4]
	i := p.add(line{
		id:      r.name + ".fourth",
		sought:  "the reading of the " + r.what + " that was not taken",
		formula: r.symbol(q) + " = " + left.symbol + " + " + right.symbol + " - " + opposite.symbol,
		source:  validity, kind: reading,
		inputs: []input{opposite, left, right},
		rule:   func(v values) float64 { return float64(dial.Fourth(v.length(0), v.length(1), v.length(2))) },
	})
	r.at[q] = p.above(r.symbol(q), i)
}

// miss tells how far the readings miss the validity rule.
func (p *page) miss(r *round) int {
	return p.add(line{
		id:      r.name + ".miss",
		sought:  "how far the readings of the " + r.what + " miss the validity rule",
		formula: "miss = (" + r.letter + "12 + " + r.letter + "6) - (" + r.letter + "3 + " + r.letter + "9)",
		source:  validity, kind: reading,
		inputs: r.at[:],
		rule:   func(v values) float64 { return float64(dial.Miss(v.length(0), v.length(1), v.length(2), v.length(3))) },
	})
}

// ends are the quarters that the crew calls 12 and 6, or 3 and 9.
func (r *round) ends(in plane) (here, there int) {
	here = quarter(r.view.Clock(in.here()))
	return here, (here + 2) % 4
}

// sign is that of the crew's total reading in the library's view: a crew at the
// stationary end has its 3 o'clock where 9 is counted from behind the movable machine.
func (r *round) sign(in plane) float64 {
	return outwards(in == horizontal && r.view == align.FromStationary)
}

// total is the difference of two opposite readings, as the crew names them, without sag.
func (p *page) total(r *round, in plane) int {
	here, there := r.ends(in)
	a, b := r.at[here], r.at[there]
	l := line{
		id:      in.String() + "." + r.name + ".total",
		sought:  in.String() + " total reading of the " + r.what,
		formula: "T = " + a.symbol + " - " + b.symbol,
		source:  "difference of opposite readings, from any zero",
		kind:    reading,
		inputs:  []input{a, b},
		rule:    func(v values) float64 { return v[0] - v[1] },
	}
	exchanged := func(v values) float64 { return v[1] - v[0] }
	if in == vertical && r.sag != 0 {
		l.formula = "T = (" + a.symbol + " - s) - (" + b.symbol + " + s)"
		l.sought += ", sag taken off"
		l.source = "sag counts twice from top to bottom: US Bureau of Reclamation, FIST 4-1A, p. 17 (read)"
		l.inputs = append(l.inputs, put("s", reading, r.sag))
		l.rule = sagFree
		exchanged = func(v values) float64 { return sagFree(values{v[1], v[0], v[2]}) }
		l.ways = sagWays(r.name)
	}
	l.ways = append(l.ways, way{kind: in.exchanged(), group: r.name, rule: exchanged})
	l.ways = append(l.ways, unitWays("readings", r.name, l.rule)...)
	i := p.add(l)
	return p.answers(i, float64(r.quarters[here]-r.quarters[there]))
}

// sagFree is the total reading from 12, 6 and the sag.
func sagFree(v values) float64 {
	top := dial.WithoutSag(v.length(0), v.length(2), units.Twelve)
	bottom := dial.WithoutSag(v.length(1), v.length(2), units.Six)
	return float64(top - bottom)
}

func sagWays(group string) []way {
	return []way{
		{kind: SagForgotten, group: group, rule: func(v values) float64 { return v[0] - v[1] }},
		{kind: SagOnce, group: group, rule: func(v values) float64 { return v[0] - v[1] - v[2] }},
		{kind: SagAdded, group: group, rule: func(v values) float64 { return sagFree(values{v[0], v[1], -v[2]}) }},
	}
}

// hundredths is how many hundredths of a millimetre are in a mil.
const hundredths = float64(units.Mil / (10 * units.Micrometre))

// unitWays are the answers in the wrong unit, at lines of one sort.
func unitWays(sort, group string, right rule) []way {
	return []way{
		{kind: MilForHundredth, form: "too large", sort: sort, group: group, rule: func(v values) float64 { return right(v) * hundredths }},
		{kind: MilForHundredth, form: "too small", sort: sort, group: group, rule: func(v values) float64 { return right(v) / hundredths }},
	}
}

// displaced is where the movable shaft lies at the probe's own station: half of its
// total reading, with the given sign.
func (p *page) displaced(r *round, in plane, sign float64) int {
	total := p.total(r, in)
	sign *= r.sign(in)
	half := func(v values) float64 { return sign * float64(dial.HalfTIR(v.length(0), 0)) }
	return p.add(line{
		id:      in.String() + "." + r.name + ".offset",
		sought:  in.String() + " offset of the movable shaft where the " + r.what + " stands",
		formula: "w = " + signed(sign) + "T/2",
		source:  "the total reading is twice the offset: R. B. McMillan, Rotating Machinery, 2004, eq. 9.1 and 9.2, p. 164 (read)",
		kind:    in.lies(),
		inputs:  []input{p.above("T", total)},
		rule:    half,
		ways: []way{
			{kind: TotalNotHalved, group: r.name, rule: func(v values) float64 { return 2 * half(v) }},
			{kind: MachinesExchanged, sort: "carrier", group: r.name, rule: func(v values) float64 { return -half(v) }},
		},
	})
}

// leaning is the slope, or the tilt at a joint, that a probe at a diameter sees.
func (p *page) leaning(r *round, in plane, sign float64, d units.Length) int {
	total := p.total(r, in)
	sign *= r.sign(in)
	slope := func(d units.Length, v values) float64 {
		return sign * float64(dial.FaceSlope(v.length(0), 0, d))
	}
	return p.add(line{
		id:      in.String() + "." + r.name + ".slope",
		sought:  in.String() + " slope that the " + r.what + " sees",
		formula: "a = " + signed(sign) + "T/D",
		source:  "over the diameter that the probe sweeps: R. B. McMillan, Rotating Machinery, 2004, eq. 8.3, p. 141 (read)",
		kind:    in.leans(),
		inputs:  []input{p.above("T", total), put("D", station, d)},
		rule:    func(v values) float64 { return slope(v.length(1), v) },
		ways: []way{
			{kind: RadiusAndDiameter, group: r.name, rule: func(v values) float64 { return slope(v.length(1)/2, v) }},
		},
	})
}

func signed(sign float64) string {
	if sign < 0 {
		return "-"
	}
	return ""
}
