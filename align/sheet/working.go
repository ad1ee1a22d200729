package sheet

import (
	"strings"
	"unicode"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Step is one line of a working as it is shown: all text.
type Step struct {
	ID      string `json:"id"`      // its name, under which an answer is checked: "vertical.foot.inboard.correction"
	Sought  string `json:"sought"`  // what the line is for
	Formula string `json:"formula"` // in symbols
	Filled  string `json:"filled"`  // with the numbers and their units put in
	Answer  string `json:"answer"`  // rounded as a hand does, with words for its sign
	Exact   string `json:"exact"`   // signed, with six digits more; see Value for all of them
	Source  string `json:"source"`  // rule or work, and how that was seen: read in it, or second-hand, as others quote it
}

// Working is a calculation by hand, line by line. It comes from the functions of this
// package; the zero value has no line.
type Working struct {
	title string
	view  align.View // from which end the crew looks
	lines []line
}

// Title says what the working is of.
func (w Working) Title() string { return w.title }

// Steps returns the lines, in the order in which a hand needs them.
func (w Working) Steps(s System) []Step {
	steps := make([]Step, len(w.lines))
	for i := range w.lines {
		l := &w.lines[i]
		steps[i] = Step{
			ID: l.id, Sought: l.sought, Formula: l.formula, Source: l.source,
			Filled: w.filled(l, s),
			Answer: l.kind.rounded(l.exact, s, w.view),
			Exact:  l.kind.long(l.exact, s),
		}
	}
	return steps
}

// filled is the right side of the formula with numbers for its symbols. What comes
// from a line above is put in as that line was rounded.
func (w Working) filled(l *line, s System) string {
	_, right, _ := strings.Cut(l.formula, " = ")
	var b strings.Builder
	for len(right) > 0 {
		n := max(1, len(right)-len(strings.TrimLeftFunc(right, inSymbol)))
		word := right[:n]
		b.WriteString(w.value(l, word, s))
		right = right[n:]
	}
	return b.String()
}

func inSymbol(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' }

// value is what stands for a word of a formula: the number of the input of that
// symbol, or the word itself.
func (w Working) value(l *line, word string, s System) string {
	for _, in := range l.inputs {
		if in.symbol != word {
			continue
		}
		x := in.value
		if in.from != given {
			x = w.lines[in.from].exact
		}
		return in.kind.put(x, s, in.from != given)
	}
	return word
}

// compute computes every line without rounding, by the chosen ways where there are any
// and from given numbers as number tells them.
func (w Working) compute(chosen map[int]rule, number func(input) float64) values {
	all := make(values, len(w.lines))
	for i := range w.lines {
		l := &w.lines[i]
		v := make(values, len(l.inputs))
		for j, in := range l.inputs {
			if in.from == given {
				v[j] = number(in)
			} else {
				v[j] = all[in.from]
			}
		}
		r := l.rule
		if taken, ok := chosen[i]; ok {
			r = taken
		}
		all[i] = r(v)
	}
	return all
}

func asGiven(in input) float64 { return in.value }

// find returns where the line of an ID stands.
func (w Working) find(id string) (int, bool) {
	for i := range w.lines {
		if w.lines[i].id == id {
			return i, true
		}
	}
	return 0, false
}

// Answered are the types of what a line can come to.
type Answered interface {
	units.Length | units.Slope | units.TemperatureDifference
}

// Value returns the answer of one line to the last bit: what the packages of this
// module answer to the same question. It refuses a line that the working does not
// have (Unknown, at /id) and one that comes to another type (Conflict).
func Value[Q Answered](w Working, id string) (Q, error) {
	var faults check.Faults
	var root check.Path
	i, ok := w.find(id)
	if !ok {
		faults.Add(units.Unknown, root.Field("id"), id, "the id of a line of the working")
		return 0, faults.Err()
	}
	l := &w.lines[i]
	if sort := l.kind.sort(); sort != sortOf[Q]() {
		faults.Add(units.Conflict, root.Field("id"), id, "a line that comes to "+sortOf[Q]()+"; this one comes to "+sort)
		return 0, faults.Err()
	}
	return Q(l.exact), nil
}

// sort is what type the numbers of a kind have.
func (k kind) sort() string {
	switch k {
	case climb, swing, rising, drifting, steepness:
		return "a slope"
	case warming:
		return "a temperature difference"
	}
	return "a length"
}

func sortOf[Q Answered]() string {
	switch any(Q(0)).(type) {
	case units.Slope:
		return "a slope"
	case units.TemperatureDifference:
		return "a temperature difference"
	}
	return "a length"
}
