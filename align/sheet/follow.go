package sheet

import "slices"

// answers are what stands on a sheet, by the index of the line.
type answers map[int]written

// track is what the lines of a sheet should come to, and what those below go on with.
type track struct{ expected, carried []span }

// follow computes every line again from what stands above it on the sheet: from the
// sheet's own answers where they are written, from its own numbers carried on where not.
func (w Working) follow(sheet answers) track {
	t := track{make([]span, len(w.lines)), make([]span, len(w.lines))}
	for i := range w.lines {
		t.step(&w.lines[i], i, w.lines[i].rule, sheet)
	}
	return t
}

// by is the same track where the chosen ways are taken instead of the rules. Only lines
// that this changes are computed.
func (t track) by(w Working, sheet answers, chosen map[int]rule) track {
	t = track{slices.Clone(t.expected), slices.Clone(t.carried)}
	moved := make([]bool, len(w.lines))
	for i := range w.lines {
		l := &w.lines[i]
		r, taken := chosen[i]
		if !taken {
			r = l.rule
		}
		if taken || slices.ContainsFunc(l.inputs, func(in input) bool { return in.from != given && moved[in.from] }) {
			before := t.carried[i]
			t.step(l, i, r, sheet)
			moved[i] = t.carried[i] != before
		}
	}
	return t
}

// step computes line i by a rule.
func (t track) step(l *line, i int, r rule, sheet answers) {
	t.expected[i] = r.through(l.spans(t.carried)).wider(l.allow)
	t.carried[i] = t.expected[i].wider(natures[l.kind].keeps / 2)
	if own, ok := sheet[i]; ok {
		t.carried[i] = own.span
	}
}

// spans are the inputs of a line, where the lines above it come to what carried says.
func (l *line) spans(carried []span) []span {
	inputs := make([]span, len(l.inputs))
	for j, in := range l.inputs {
		inputs[j] = exactlyAt(in.value)
		if in.from != given {
			inputs[j] = carried[in.from]
		}
	}
	return inputs
}

// wrong lists the lines of a sheet that do not follow, in the order of the working.
func (w Working) wrong(sheet answers, expected []span) []int {
	var list []int
	for i := range w.lines {
		if own, ok := sheet[i]; ok && !own.meets(expected[i]) {
			list = append(list, i)
		}
	}
	return list
}
