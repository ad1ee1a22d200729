package sheet

// ask chooses lines that are not on the sheet and would tell theories apart: each time
// the one that parts most of the pairs that are still together. Of a slip at few lines
// and the same at more, which the sheet does not tell apart, both count, but not against
// each other.
func (w Working) ask(sheet answers, theories []theory) []int {
	together := rivals(sheet, theories)
	var chosen []int
	for range w.lines {
		best, parted := -1, 0
		for i := range w.lines {
			if _, ok := sheet[i]; ok {
				continue
			}
			if n := len(together) - len(w.stay(together, theories, i)); n > parted {
				best, parted = i, n
			}
		}
		if best < 0 {
			break
		}
		chosen = append(chosen, best)
		together = w.stay(together, theories, best)
	}
	return chosen
}

// stay keeps the pairs of theories that a line would not tell apart.
func (w Working) stay(together [][2]int, theories []theory, line int) [][2]int {
	keeps := natures[w.lines[line].kind].keeps
	var left [][2]int
	for _, pair := range together {
		a, b := theories[pair[0]].expected[line], theories[pair[1]].expected[line]
		if a.wider(keeps).meets(b.wider(keeps)) {
			left = append(left, pair)
		}
	}
	return left
}

// rivals are the pairs of theories that say different things of the sheet.
func rivals(sheet answers, theories []theory) [][2]int {
	var list [][2]int
	for i, a := range theories {
		for j, b := range theories[:i] {
			if !saysAll(sheet, a, b) && !saysAll(sheet, b, a) {
				list = append(list, [2]int{i, j})
			}
		}
	}
	return list
}
