package main

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

const howToDraw = "The stationary machine is on the left. On paper, x is measured to the right of the coupling centre, y up from " +
	"the stationary centreline. Plot the two points, lay a ruler through them and draw the movable centreline over the feet. " +
	"A foot has to go as far as it lies off, the other way."

const targetTaken = "The target is taken off already: the stationary centreline stands for where the movable one has to lie cold."

// sideView is a plane in which a graph is drawn, and its words.
type sideView struct {
	id, title string
	line      align.Line
	words     [2]string // above and below the stationary centreline
}

// viewsOf are the side view and the plan. The plan has the library's 3 o'clock up the
// page, which a crew at the other end calls 9.
func viewsOf(c align.Centreline, from align.View) [2]sideView {
	up, down := "3 o'clock", "9 o'clock"
	if from == align.FromStationary {
		up, down = down, up
	}
	return [...]sideView{
		{"vertical", "Side view, up is up", c.Vertical, [2]string{"high", "low"}},
		{"horizontal", "Plan, " + up + " is up", c.Horizontal, [2]string{"towards " + up, "towards " + down}},
	}
}

// graphs prints what to draw of a job on squared paper, as coordinates, and what may
// be asked of the values that are read off.
func (d *document) graphs(s sheet.System) (string, error) {
	j := d.Problem.Job
	if j == nil {
		return "", &units.Fault{Code: units.Missing, Path: "/problem/job", Want: "a job: other problems have no graph"}
	}
	m := methodOf(j)
	off, err := lessTarget(m, j)
	if err != nil {
		return "", err
	}
	var p page
	d.top(&p)
	p.para(howToDraw)
	if j.Stationary != nil || j.Movable != nil {
		p.para(targetTaken)
	}
	for _, v := range viewsOf(off, m.Sets()[0].View) {
		g, err := draw(s, v.line, m.through, j.Feet)
		if err != nil {
			return "", err
		}
		p.graph(s, v, g)
	}
	p.para(caution)
	return p.text(), nil
}

// fields are what is drawn on: a sheet of A4 or of letter paper, lying, less its
// margins.
var fields = [...][2]units.Length{
	sheet.Metric: {250 * units.Millimetre, 170 * units.Millimetre},
	sheet.Inch:   {10 * units.Inch, 7 * units.Inch},
}

// draw makes the graph at the scales that fit on the sheet.
func draw(s sheet.System, l align.Line, through [2]sheet.Station, feet []align.Foot) (sheet.Graph, error) {
	paper, err := sheet.SuggestPaper(fields[s][0], fields[s][1], l, through, feet...)
	if err != nil {
		return sheet.Graph{}, err
	}
	return paper.Draw(l, through, feet...)
}

// graph prints one plane.
func (p *page) graph(s sheet.System, v sideView, g sheet.Graph) {
	p.heading(v.title)
	p.para(fmt.Sprintf("Along the shaft %v times shorter than the machine, across it %v times larger.", g.Paper.Reduction, g.Paper.Exaggeration))
	p.item("  stationary centreline  ", "from "+at(s, g.Stationary[0])+" to "+at(s, g.Stationary[1]))
	for i, m := range g.Points {
		p.item(fmt.Sprintf("  point %d  ", i+1), m.Name+": "+at(s, m))
	}
	p.item("  movable centreline  ", "from "+at(s, g.Movable[0])+" to "+at(s, g.Movable[1]))
	for _, f := range g.Feet {
		p.item("  feet  ", f.Foot.Name+": "+at(s, f.Mark)+"; "+lies(s, v, f.W)+", may be read off wrong by "+across(s, f.Tolerance, 1)+
			" either way  ["+v.id+".foot."+f.Foot.Name+".correction]")
	}
	p.WriteByte('\n')
}

// at are the coordinates of a mark on the paper.
func at(s sheet.System, m sheet.Mark) string {
	unit, digits := units.InMillimetres, 1
	if s == sheet.Inch {
		unit, digits = units.InInches, 2
	}
	return "x " + m.X.Text(unit, digits) + ", y " + m.Y.Text(unit, digits)
}

// lies tells where the movable centreline is above a foot.
func lies(s sheet.System, v sideView, w units.Length) string {
	size := across(s, max(w, -w), 0)
	switch {
	case size == across(s, 0, 0):
		return "lies on the stationary centreline"
	case w < 0:
		return "lies " + size + " " + v.words[1]
	}
	return "lies " + size + " " + v.words[0]
}

// across is a length across the shaft, on the machine, with so many digits more than
// a hand writes.
func across(s sheet.System, l units.Length, more int) string {
	if s == sheet.Inch {
		return l.Text(units.InMils, 1+more)
	}
	return l.Text(units.InMillimetres, 2+more)
}
