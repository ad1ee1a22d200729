package sheet

import (
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// machine is one of the two whose growth is worked.
type machine struct {
	name     string // in the ids
	supports []thermal.Support
	line     align.Estimate // what package thermal answers
}

// newMachine checks the supports of a machine and has package thermal answer for
// them. A machine without supports does not grow.
func newMachine(faults *check.Faults, name string, supports []thermal.Support) machine {
	m := machine{name: name, supports: supports}
	if supports == nil {
		return m
	}
	var err error
	m.line, err = thermal.Growth(supports...)
	for _, fault := range units.Faults(err) {
		moved := *fault
		moved.Path = "/" + name + strings.TrimPrefix(fault.Path, "/supports")
		faults.Append(&moved)
	}
	var root check.Path
	checkByHand(faults, root.Field(name), supports)
	return m
}

// checkByHand asks for supports that are worked line by line.
func checkByHand(faults *check.Faults, at check.Path, supports []thermal.Support) {
	if len(supports) > 2 {
		faults.Add(units.OutOfRange, at, len(supports), "two supports: the line through more is not worked line by line")
	}
	for i, s := range supports {
		support := at.Index(i)
		checkName(faults, support, s.Name)
		if s.Three != nil || s.Nine != nil {
			faults.Add(units.Conflict, support.Field("three"), s.Name, "pieces that are alike on both sides: legs that differ are not worked line by line")
		}
		for j, piece := range s.Pieces {
			pieces := support.Field("pieces")
			if at := pieces.Index(j); len(piece.Profile) > 1 {
				faults.Add(units.Conflict, at.Field("profile"), len(piece.Profile), "one mean temperature: a profile is not worked line by line")
			}
		}
	}
}

// goesSideways tells whether a support was measured to move sideways.
func (m machine) goesSideways() bool {
	return slices.ContainsFunc(m.supports, func(s thermal.Support) bool {
		return s.Measured != nil && s.Measured.By.Horizontal != 0
	})
}

// grown is how a machine grows in one plane.
type grown struct{ offset, slope input }

// growth puts the growth of a machine in one plane on the page: every support, and
// the line through them.
func (p *page) growth(m machine, in plane) grown {
	if m.supports == nil {
		return grown{put("", in.lies(), 0.0), put("", pick(in, rising, drifting), 0.0)}
	}
	var moved [2]input
	for i := range moved {
		moved[i] = p.support(m, in, i)
	}
	return p.through(m, in, moved)
}

// support puts the growth of one support on the page, and returns it as an input.
// Sideways only a measurement tells of it here.
func (p *page) support(m machine, in plane, i int) input {
	symbol := "g" + strconv.Itoa(i+1)
	s := m.supports[i]
	by, _, _ := s.Growth() // checked by newMachine
	if s.Measured != nil || in == horizontal {
		return put(symbol, in.lies(), in.length(by))
	}
	whole := leg{machine: m.name, support: s.Name}
	var pieces []input
	for j, piece := range s.Pieces {
		l, number := whole, strconv.Itoa(j+1)
		if len(s.Pieces) > 1 {
			l.piece = "piece " + number
		}
		pieces = append(pieces, p.above("e"+number, p.piece(l, piece)))
	}
	grown := pieces[0].from
	if len(pieces) > 1 {
		grown = p.stacked(whole, pieces)
	}
	return p.above(symbol, p.answers(grown, float64(by.Vertical)))
}

// leg is what carries a shaft at a support, or one of the pieces of that.
type leg struct{ machine, support, piece string }

// group names the support among others.
func (l leg) group() string { return l.machine + "." + l.support }

func (l leg) id() string {
	if l.piece == "" {
		return l.group()
	}
	return l.group() + "." + l.piece
}

func (l leg) String() string {
	of := l.machine + " machine, " + l.support
	if l.piece == "" {
		return of
	}
	return of + ", " + l.piece
}

// stacked is the growth of pieces that stand one on the other.
func (p *page) stacked(l leg, pieces []input) int {
	return p.add(line{
		id:      l.id() + ".growth",
		sought:  "growth: " + l.String(),
		formula: "g = " + sum(pieces),
		source:  "pieces that stand one on the other",
		kind:    height,
		inputs:  pieces,
		rule: func(v values) float64 {
			total := 0.0
			for _, x := range v {
				total += x
			}
			return total
		},
	})
}

func sum(inputs []input) string {
	text := ""
	for i, in := range inputs {
		if i > 0 {
			text += " + "
		}
		text += in.symbol
	}
	return text
}

// Thirty-two degrees F as a difference, which no difference takes.
const thirtyTwo = float64(32 * units.FahrenheitDegree)

// piece puts the rise and the growth of one piece on the page.
func (p *page) piece(of leg, piece thermal.Piece) int {
	l := line{
		id: of.id() + ".rise", sought: "temperature rise: " + of.String(),
		formula: "dT = rise", source: "as given: a difference, not a point on the scale",
		kind: warming, inputs: []input{put("rise", warming, piece.Rise)},
		rule: func(v values) float64 { return v[0] },
	}
	if len(piece.Profile) == 1 {
		l.formula, l.source = "dT = running - cold", "a difference, not a point on the scale"
		l.inputs = []input{
			put("running", temperature, piece.Profile[0].Running.Celsius()),
			put("cold", temperature, piece.Cold.Celsius()),
		}
		l.rule = func(v values) float64 { return float64(units.Celsius(v[0]).Minus(units.Celsius(v[1]))) }
	}
	right := l.rule
	l.ways = []way{
		{kind: ThirtyTwo, form: "taken off", sort: of.machine, group: of.support, rule: func(v values) float64 { return right(v) - thirtyTwo }},
		{kind: ThirtyTwo, form: "put on", sort: of.machine, group: of.support, rule: func(v values) float64 { return right(v) + thirtyTwo }},
	}
	rise := p.add(l)
	return p.add(line{
		id:      of.id() + ".growth",
		sought:  "growth: " + of.String(),
		formula: "g = h * k * dT",
		source:  "R. B. McMillan, Rotating Machinery, 2004, pp. 134-141 (read)",
		kind:    height,
		inputs:  []input{put("h", station, piece.Height), put("k", expansion, piece.Material.Expansion), p.above("dT", rise)},
		rule:    func(v values) float64 { return v[0] * v[1] * v[2] },
	})
}

// through puts the line through the growth of a machine's two supports on the page.
func (p *page) through(m machine, in plane, grew [2]input) grown {
	answer := in.line(m.line.Value)
	x1, x2 := put("x1", station, m.supports[0].X), put("x2", station, m.supports[1].X)
	slope := p.add(line{
		id:      in.String() + "." + m.name + ".growth.slope",
		sought:  in.String() + " slope of the growth of the " + m.name + " machine, x counting from the stationary machine to the movable one",
		formula: "ga = (g2 - g1)/(x2 - x1)",
		source:  growthLine,
		kind:    pick(in, rising, drifting),
		inputs:  []input{grew[0], grew[1], x1, x2},
		rule:    func(v values) float64 { return (v[1] - v[0]) / (v[3] - v[2]) },
		ways: []way{{kind: FeetExchanged, sort: "growth", group: m.name, rule: func(v values) float64 {
			return (v[0] - v[1]) / (v[3] - v[2])
		}}},
	})
	p.answers(slope, float64(answer.Slope))
	offset := p.add(line{
		id:      in.String() + "." + m.name + ".growth.offset",
		sought:  in.String() + " growth of the " + m.name + " machine, carried to the coupling centre",
		formula: "g0 = g1 - ga * x1",
		source:  growthLine,
		kind:    in.lies(),
		inputs:  []input{grew[0], p.above("ga", slope), x1, grew[1]},
		rule:    carried,
		ways: []way{{kind: FeetExchanged, sort: "growth", group: m.name, rule: func(v values) float64 {
			return carried(values{v[3], v[1], v[2]})
		}}},
	})
	p.answers(offset, float64(answer.Offset))
	return grown{p.above("", offset), p.above("", slope)}
}

const growthLine = "the line through the growth of both supports, derived here"

// coldTarget puts on the page where the movable shaft has to lie cold.
func (p *page) coldTarget(in plane, stationary, movable grown, target align.Line) goal {
	less := func(id, what, formula string, k kind, a, b input, exact float64) int {
		a.symbol, b.symbol = "gs", "gm"
		return p.answers(p.add(line{
			id: in.String() + ".target." + id, sought: in.String() + " " + what + " that the shafts should have cold",
			formula: formula, kind: k,
			source: "running = cold + growth of the movable machine - growth of the stationary one, derived here",
			inputs: []input{a, b},
			rule:   func(v values) float64 { return v[0] - v[1] },
			ways:   []way{{kind: MachinesExchanged, sort: "target", rule: func(v values) float64 { return v[1] - v[0] }}},
		}), exact)
	}
	return goal{
		offset: less("offset", "offset", "t0 = gs - gm", in.lies(), stationary.offset, movable.offset, float64(target.Offset)),
		slope:  less("slope", "slope", "ta = gs - gm", in.leans(), stationary.slope, movable.slope, float64(target.Slope)),
		wanted: true,
	}
}
