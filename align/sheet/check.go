package sheet

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Judgement is what is found of one line that was written down.
type Judgement struct {
	Step     string `json:"step"`
	Written  string `json:"written"`  // as it stands on the sheet
	Expected string `json:"expected"` // what follows from the lines above it as the sheet has them
	Within   string `json:"within"`   // how far rounding alone may take it from that, either way, its own last place included
	Right    bool   `json:"right"`    // it follows
	True     bool   `json:"true"`     // it is the answer of the working itself, whether or not it follows
}

// Explanation is a slip, or two, that account for lines that are wrong.
type Explanation struct {
	Slips []Slip   `json:"slips"`
	Left  []string `json:"left,omitempty"` // wrong lines that they do not account for
}

// String names the slips and where they were made.
func (e Explanation) String() string {
	parts := make([]string, len(e.Slips))
	for i, s := range e.Slips {
		parts[i] = s.String()
	}
	return strings.Join(parts, "; and ")
}

// Marking is what is found of a sheet.
type Marking struct {
	Lines        []Judgement   `json:"lines"`                  // those that were written down, in the order of the working
	Explanations []Explanation `json:"explanations,omitempty"` // of what is wrong, the likeliest first; more than one: they tie
	Ask          []string      `json:"ask,omitempty"`          // lines not on the sheet that would tell them apart
}

// Right tells whether all that was written down follows.
func (m Marking) Right() bool {
	return !slices.ContainsFunc(m.Lines, func(j Judgement) bool { return !j.Right })
}

// Unexplained lists the wrong lines that no explanation accounts for.
func (m Marking) Unexplained() []string {
	var list []string
	for _, j := range m.Lines {
		left := func(e Explanation) bool { return !slices.Contains(e.Left, j.Step) }
		if !j.Right && !slices.ContainsFunc(m.Explanations, left) {
			list = append(list, j.Step)
		}
	}
	return list
}

// MostMarked is how many lines a working may have to be marked: more than any hand works,
// and few enough that the search for slips takes no more than a second or so.
const MostMarked = 150

// Check marks a sheet: answers by the id of their line, all of them or some. An answer
// is a number with its unit, in any unit, with a sign as the library has it ("-2.7 mil")
// or with the words that the working uses ("lower 2.7 mil").
//
// A line is right when it follows from the lines above it as they stand on the sheet,
// so that one slip is found once. It may be off by half of its last place, or by what
// was cut off after it; by what rounding the lines above may do to it; and a line that
// is not on the sheet counts as kept to 1 um, 1 um/m or 0.1 K. Whoever keeps less writes
// it down.
//
// What is wrong is explained by a single slip wherever one accounts for the whole
// sheet, and by two only where none does and four lines or more are independent. All
// that do are named: they give the same numbers on this sheet, up to rounding, and
// Ask has the lines that would tell them apart. Where no slip accounts for everything,
// those that account for most, and half at least, are named with the lines that are left.
// A slip is named at the fewest lines that show it.
//
// It refuses an empty sheet (Missing, at /answers), a line that the working does not
// have (Unknown, at /answers/ID), an answer that cannot be read, and a working of more
// than MostMarked lines (OutOfRange, at the root). "leave" stands for less than 0.01 mm.
func (w Working) Check(sheet map[string]string) (Marking, error) {
	return w.CheckDrawn(sheet, nil)
}

// CheckDrawn is [Working.Check] of a sheet on which some answers were read off a drawing:
// drawn tells, by the id of their line, how far each of these may be off for that, either
// way (see [Graph]), on top of what rounding may do. It also refuses, with paths from
// /drawn, a line that is not on the sheet (Unknown), one that does not come to a length
// (Conflict), and an amount that is negative or not finite.
func (w Working) CheckDrawn(sheet map[string]string, drawn map[string]units.Length) (Marking, error) {
	var faults check.Faults
	read := w.read(&faults, sheet)
	w.loosen(&faults, read, drawn)
	if err := faults.Err(); err != nil {
		return Marking{}, err
	}
	right := w.follow(read)
	var m Marking
	for i := range w.lines {
		if own, ok := read[i]; ok {
			m.Lines = append(m.Lines, w.judge(i, own, right.expected[i]))
		}
	}
	wrong := w.wrong(read, right.expected)
	if len(wrong) == 0 {
		return m, nil
	}
	theories := w.theories(read, right, wrong)
	for _, t := range merged(read, theories) {
		m.Explanations = append(m.Explanations, w.explanation(t))
	}
	m.Ask = w.named(w.ask(read, theories))
	return m, nil
}

// read reads the answers of a sheet.
func (w Working) read(faults *check.Faults, sheet map[string]string) answers {
	var root check.Path
	if n := len(w.lines); n > MostMarked {
		faults.Add(units.OutOfRange, root, n, "a working of at most "+strconv.Itoa(MostMarked)+" lines to mark")
	}
	at := root.Field("answers")
	if len(sheet) == 0 {
		faults.Add(units.Missing, at, nil, "the answer of at least one line")
	}
	read := answers{}
	for i := range w.lines {
		l := &w.lines[i]
		text, ok := sheet[l.id]
		if !ok {
			continue
		}
		own, err := l.kind.read(text, w.view)
		faults.Adopt(at.Field(l.id), err)
		read[i] = own
	}
	for _, id := range slices.Sorted(maps.Keys(sheet)) {
		if _, ok := w.find(id); !ok {
			faults.Add(units.Unknown, at.Field(id), id, "the id of a line of this working")
		}
	}
	return read
}

// loosen lets answers that were drawn be off by so much more.
func (w Working) loosen(faults *check.Faults, read answers, drawn map[string]units.Length) {
	var root check.Path
	at := root.Field("drawn")
	for _, id := range slices.Sorted(maps.Keys(drawn)) {
		i, _ := w.find(id)
		own, written := read[i]
		if !written || w.lines[i].id != id {
			faults.Add(units.Unknown, at.Field(id), id, "the id of a line that is on the sheet")
		} else if w.lines[i].kind.sort() != sortOf[units.Length]() {
			faults.Add(units.Conflict, at.Field(id), id, "a line that comes to a length")
		} else if by := drawn[id]; check.NotNegative(faults, at.Field(id), by, "how far a drawing may be off") {
			own.span = own.wider(float64(by))
			read[i] = own
		}
	}
}

func (w Working) judge(i int, own written, expected span) Judgement {
	l := &w.lines[i]
	return Judgement{
		Step:     l.id,
		Written:  own.text,
		Expected: l.kind.rounded(expected.at, own.system, w.view),
		Within:   l.kind.amount(own.reach()+expected.reach(), own.system),
		Right:    own.meets(expected),
		True:     own.meets(exactlyAt(l.exact)),
	}
}

func (w Working) explanation(t theory) Explanation {
	e := Explanation{Left: w.named(t.left)}
	for _, s := range t.suspects {
		e.Slips = append(e.Slips, Slip{Kind: s.kind, Steps: w.named(s.lines)})
	}
	return e
}

// named are the ids of lines.
func (w Working) named(lines []int) []string {
	var ids []string
	for _, i := range lines {
		ids = append(ids, w.lines[i].id)
	}
	return ids
}
