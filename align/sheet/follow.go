package sheet

// answers are what stands on a sheet, by the index of the line.
type answers map[int]written

// follow computes every line again from what stands above it on the sheet: from the
// sheet's own answers where they are written, from its own numbers carried on where
// not. chosen are the ways that a hand took instead of the rules.
func (w Working) follow(sheet answers, chosen map[int]rule) []span {
	expected := make([]span, len(w.lines))
	carried := make([]span, len(w.lines)) // what the lines below go on with
	for i := range w.lines {
		l := &w.lines[i]
		r := l.rule
		if taken, ok := chosen[i]; ok {
			r = taken
		}
		expected[i] = r.through(l.spans(carried)).wider(l.allow)
		carried[i] = expected[i].wider(natures[l.kind].keeps / 2)
		if own, ok := sheet[i]; ok {
			carried[i] = own.span
		}
	}
	return expected
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
