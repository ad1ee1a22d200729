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
	}, "shaft, and where it lies in 95 of 100 jobs"},
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
	{func(k *ink, at point) { k.arrow(fine, point{at.x + 4, at.y + 1.5}, point{at.x + 4, at.y - 1.5}) }, "move that the shims of soft foot make by themselves"},
	{func(k *ink, at point) { k.hollow(point{at.x + 4, at.y}) }, "reading, the sag taken off"},
	{func(k *ink, at point) {
		k.line(bold, point{at.x + 1, at.y}, point{at.x + 5, at.y})
		k.dot(point{at.x + 3, at.y})
		k.line(firm, point{at.x + 6, at.y - 1.4}, point{at.x + 6, at.y + 1.4})
	}, "value, two u either way, and its limit"},
	{func(k *ink, at point) { k.line(firm, at, point{at.x + 8, at.y}) }, "what the misalignment that was found makes of a turn"},
}

// Legend tells what the lines of both drawings mean, half of them in each figure.
func Legend() [2]Figure {
	half := (len(signs) + 1) / 2
	return [2]Figure{legend("How it is drawn", signs[:half]), legend("How it is drawn, the rest", signs[half:])}
}

func legend(title string, some []sign) Figure {
	const line = 3.6
	var k ink
	f := Figure{Width: width, title: title}
	for i, s := range some {
		at := point{0, 2 + float64(i)*line}
		s.draw(&k, at)
		k.text(point{at.x + 9.5, at.y + 0.9}, right, s.words)
		f.Height = at.y + 2
		f.says += s.words + ". "
	}
	f.marks = k.String()
	return f
}
