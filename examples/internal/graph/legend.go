package graph

// sign is how something is drawn, and what that means.
type sign struct {
	draw  func(k *ink, at point)
	words string
}

// signs are all of them, each on a piece of paper 8 mm wide.
var signs = []sign{
	{func(k *ink, at point) {
		k.area(point{at.x, at.y - 1.2}, point{at.x + 8, at.y - 1.5}, point{at.x + 8, at.y + 1.5}, point{at.x, at.y + 1.2})
		k.line(bold, at, point{at.x + 8, at.y})
	}, "shaft, stationary on the left; grey: holds it in 95 of 100 jobs"},
	{func(k *ink, at point) {
		k.line(dotted, point{at.x, at.y - 1}, point{at.x + 8, at.y - 1})
		k.line(dashed, at, point{at.x + 8, at.y})
		k.line(dotted, point{at.x, at.y + 1}, point{at.x + 8, at.y + 1})
	}, "target, dots: the same of it"},
	{func(k *ink, at point) {
		k.line(axial, at, point{at.x + 8, at.y})
		k.line(firm, point{at.x + 4, at.y - 1.1}, point{at.x + 4, at.y + 1.1})
	}, "stationary centreline; mark: a dial touches here"},
	{func(k *ink, at point) { k.arrow(firm, point{at.x + 4, at.y + 1.5}, point{at.x + 4, at.y - 1.5}) }, "move of a foot"},
	{func(k *ink, at point) { k.arrow(fine, point{at.x + 4, at.y + 1.5}, point{at.x + 4, at.y - 1.5}) }, "by the shims of soft foot"},
	{func(k *ink, at point) { k.hollow(point{at.x + 4, at.y}) }, "reading, the sag taken off"},
	{func(k *ink, at point) { k.line(firm, at, point{at.x + 8, at.y}) }, "sine that fits all readings"},
}

// Legend tells what the lines of both drawings mean, in two columns.
func Legend() Figure {
	const columns, line = 2, 3.6
	var k ink
	f := Figure{Width: columns*width + gap, title: "How it is drawn"}
	for i, s := range signs {
		at := point{float64(i%columns) * (width + gap), 2 + float64(i/columns)*line}
		s.draw(&k, at)
		k.text(point{at.x + 9.5, at.y + 0.9}, right, s.words)
		f.Height = at.y + 2
		f.says += s.words + ". "
	}
	f.marks = k.String()
	return f
}
