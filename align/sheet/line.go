package sheet

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// line is one line of a working: a number that follows from given ones and from
// lines above it.
type line struct {
	id      string
	sought  string
	formula string // "w = T/2", in the symbols of the inputs
	source  string
	kind    kind
	inputs  []input
	rule    rule
	exact   float64 // what the library answers; rule gives it to rounding
	allow   float64 // how far an answer may be off by the sheet's own choice, as of shims
	ways    []way
}

// input is what a line's formula puts in for one symbol.
type input struct {
	symbol string
	from   int // index of the line above that it comes from, or given
	kind   kind
	value  float64 // where it is given
}

// given marks an input that comes from no line.
const given = -1

// rule computes a line from its inputs, in their order.
type rule func(v values) float64

// values are inputs of a rule, counted as their types count.
type values []float64

func (v values) length(i int) units.Length { return units.Length(v[i]) }
func (v values) slope(i int) units.Slope   { return units.Slope(v[i]) }

// way is another rule that a hand may take in place of the right one.
type way struct {
	kind  SlipKind
	form  string // which of several ways to make it: mils for hundredths, or hundredths for mils
	sort  string // of the line, where a hand makes it at lines of different sorts: readings, corrections
	group string // what the line is of, among others of its sort: one dial, one leg
	rule  rule
}

// part is the first word of the id of a line: the plane, of one that there is for each
// plane, or what else it is of.
func (l *line) part() string {
	word, _, _ := strings.Cut(l.id, ".")
	return word
}

// page gathers the lines of a working.
type page struct{ lines []line }

// add puts a line on the page, computes its answer, and returns where it stands.
func (p *page) add(l line) int {
	v := make(values, len(l.inputs))
	for i, in := range l.inputs {
		v[i] = in.value
		if in.from != given {
			v[i] = p.lines[in.from].exact
		}
	}
	l.exact = 0 + l.rule(v) // 0 + x: no negative zero
	p.lines = append(p.lines, l)
	return len(p.lines) - 1
}

// answers puts the library's own answer in the place of the one that the rule gave,
// which is the same up to the order of the roundings.
func (p *page) answers(i int, exact float64) int {
	p.lines[i].exact = 0 + exact
	return i
}

// working returns what is on the page. It refuses names, of feet or of supports, that make
// the ids of two lines the same.
func (p *page) working(title string, v align.View) (Working, error) {
	var faults check.Faults
	var root check.Path
	seen := map[string]bool{}
	for i := range p.lines {
		if id := p.lines[i].id; seen[id] {
			faults.Add(units.Duplicate, root, id, "names that give every line an id of its own")
		} else {
			seen[id] = true
		}
	}
	if err := faults.Err(); err != nil {
		return Working{}, err
	}
	return Working{title: title, view: v, lines: p.lines}, nil
}

// above returns the input that a line above is.
func (p *page) above(symbol string, i int) input {
	return input{symbol: symbol, from: i, kind: p.lines[i].kind}
}

// put returns the input of a given number.
func put[Q ~float64](symbol string, k kind, q Q) input {
	return input{symbol: symbol, from: given, kind: k, value: float64(q)}
}
