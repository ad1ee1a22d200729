package graph

import (
	"example.org/collinear/examples/internal/markup"
)

// Figure is a drawing, in millimetres of paper.
type Figure struct {
	Width, Height float64
	title, says   string // what it is called, and the same in words for who cannot see it
	marks         string // the elements of SVG that it is made of
}

// SVG returns the figure as an element of SVG that stands in a page or is a file.
func (f Figure) SVG() string {
	var w markup.Writer
	f.open(&w, "xmlns", "http://www.w3.org/2000/svg", "width", coordinate(f.Width)+"mm", "height", coordinate(f.Height)+"mm")
	w.WriteString(f.marks)
	w.End()
	return w.String()
}

func (f Figure) open(w *markup.Writer, attributes ...string) {
	box := "0 0 " + coordinate(f.Width) + " " + coordinate(f.Height)
	w.Open("svg", append(attributes, "viewBox", box, "role", "img", "font-family", "sans-serif", "font-size", coordinate(letters))...)
	w.Leaf("title", f.title)
	w.Leaf("desc", f.says)
}

// gap between figures that stand together.
const gap = 4.0

// Row is a row of figures with a line of words below it.
type Row struct {
	Figures []Figure
	Words   string
}

// Together lays rows of figures below one another, under a title and on white.
func Together(title string, rows ...Row) Figure {
	sheet := Figure{title: title, Height: 2*gap + letters}
	var k ink
	k.Leaf("text", title, "x", coordinate(gap), "y", coordinate(gap+letters), "font-weight", "bold")
	for _, r := range rows {
		x, below := gap, sheet.Height
		for _, f := range r.Figures {
			f.open(&k.Writer, "x", coordinate(x), "y", coordinate(sheet.Height), "width", coordinate(f.Width), "height", coordinate(f.Height))
			k.WriteString(f.marks)
			k.End()
			sheet.says += f.title + ": " + f.says + " "
			x += f.Width + gap
			below = max(below, sheet.Height+f.Height)
		}
		if r.Words != "" {
			below += row
			k.text(point{gap, below}, right, r.Words)
		}
		sheet.Width = max(sheet.Width, x)
		sheet.Height = below + gap
	}
	var ground ink
	ground.Void("rect", "width", coordinate(sheet.Width), "height", coordinate(sheet.Height), "fill", "white")
	sheet.marks = ground.String() + k.String()
	return sheet
}
