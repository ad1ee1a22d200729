package graph

import (
	"math"

	"example.org/collinear/units"
)

// Line is a centreline: at a station, how far it lies off the stationary one, and
// half the width of its band, which is not a number where nothing is known of it.
type Line func(x units.Length) (w, half units.Length)

// Plane is what the graph of one plane shows. Stations grow from the stationary
// machine, which is on the left, to the movable one.
type Plane struct {
	Title        string
	Says         string // what the graph shows, in words
	Above, Below string // what lies above the stationary centreline, and below it: "high", "low"
	From, To     units.Length
	Rims         []units.Length  // where the dials touch
	Joint        [2]units.Length // where the stationary shaft ends and the movable one begins
	Movable      Line
	Target       Line
	Feet         []Foot
	Unit         units.LengthUnit // of the ticks across
}

// Foot is a station that can be moved.
type Foot struct {
	X     units.Length
	Words string       // its name, and how far it goes; which way an arrow tells
	First units.Length // how far other work moves the shaft here
	Then  units.Length // and how far the move does
}

// paper of one graph.
const (
	width   = 92.0 // of the figure
	margin  = 14.0 // on its left, for the ticks
	across  = 74.0 // of the plot
	tallest = 24.0 // of the plot
	least   = 8.0  // of the plot, which may be all straight
	head    = 8.0  // above it, for the title and the word for what lies above
	row     = 3.3  // from one line of text to the next
)

// Fit returns the largest round scale at which all of these planes find room.
func Fit(planes ...Plane) Scale {
	long, high := 0.0, 0.0
	for i := range planes {
		p := &planes[i]
		low, top := p.extent()
		long = max(long, millimetres(p.To-p.From))
		high = max(high, top-low)
	}
	const smallest = 0.05 // mm: less than this is not drawn over the whole height
	return Scale{atLeast(long/across, round), atMost(tallest/max(high, smallest), round)}
}

// extent is between which heights, in millimetres of the machine, the plane has
// something to show.
func (p *Plane) extent() (low, high float64) {
	add := func(w units.Length) {
		low, high = min(low, millimetres(w)), max(high, millimetres(w))
	}
	for _, l := range []Line{p.Movable, p.Target} {
		for _, x := range []units.Length{p.Joint[1], p.To} {
			w, half := l(x)
			if math.IsNaN(float64(half)) {
				half = 0
			}
			add(w - half)
			add(w + half)
		}
	}
	for _, f := range p.Feet {
		w, _ := p.Movable(f.X)
		add(w + f.First)
		add(w + f.First + f.Then)
	}
	return low, high
}

// plot is a plane at its scale on paper.
type plot struct {
	ink
	*Plane
	scale  Scale
	zero   float64 // where the stationary centreline lies, from the top of the figure
	top    float64
	bottom float64
}

// Draw draws the graph at a scale, which Fit chooses.
func (p Plane) Draw(s Scale) Figure {
	low, high := p.extent()
	spare := max(0, least-(high-low)*s.Across) / 2
	g := plot{Plane: &p, scale: s, top: head, zero: head + spare + high*s.Across}
	g.bottom = g.zero + spare - low*s.Across
	g.title(p.Title)
	g.frame()
	g.shafts()
	g.moves()
	end := g.labels()
	return Figure{Width: width, Height: end + 1, title: p.Title, says: p.Says, marks: g.String()}
}

// at is a place of the machine on paper.
func (g *plot) at(x, w units.Length) point {
	return point{margin + millimetres(x-g.From)/g.scale.Along, g.zero - millimetres(w)*g.scale.Across}
}

// frame draws the axis across with its ticks, and the words for both sides.
func (g *plot) frame() {
	g.line(fine, point{margin, g.top}, point{margin, g.bottom})
	g.ticks(g.Unit, g.zero, g.top, g.bottom, g.scale.Across)
	g.ends(g.Above, g.Below, g.top, g.bottom)
}

// shafts draws both centrelines, what joins them, the band, and the target.
func (g *plot) shafts() {
	g.band(g.Movable)
	g.edge(fine, g.Movable, -1) // a copier loses the grey
	g.edge(fine, g.Movable, +1)
	g.line(axial, g.at(g.From, 0), g.at(g.To, 0))
	g.line(bold, g.at(g.From, 0), g.at(g.Joint[0], 0))
	for _, x := range g.Rims {
		g.line(firm, g.shift(x, -1.1), g.shift(x, 1.1))
	}
	g.edge(dotted, g.Target, -1)
	g.edge(dotted, g.Target, +1)
	g.edge(dashed, g.Target, 0)
	g.edge(bold, g.Movable, 0)
	if g.Joint[0] != g.Joint[1] {
		w, _ := g.Movable(g.Joint[1])
		g.line(firm, g.at(g.Joint[0], 0), g.at(g.Joint[1], w))
	}
}

// shift is a place on the axis, and so far below it.
func (g *plot) shift(x units.Length, below float64) point {
	at := g.at(x, 0)
	return point{at.x, at.y + below}
}

// edge draws a line, or one side of its band; a band without width has none.
func (g *plot) edge(p pen, l Line, side float64) {
	points := g.along(l, side)
	if points != nil {
		g.line(p, points...)
	}
}

// band fills the band of a line.
func (g *plot) band(l Line) {
	low, high := g.along(l, -1), g.along(l, +1)
	for i := len(high) - 1; i >= 0; i-- {
		low = append(low, high[i])
	}
	if low != nil {
		g.area(low...)
	}
}

// along follows a line from the joint to the end of the movable machine, so many
// halves of its band off; nil where there is no band to follow.
func (g *plot) along(l Line, halves float64) []point {
	const pieces = 24
	var points []point
	for i := range pieces + 1 {
		x := g.Joint[1] + (g.To-g.Joint[1])*units.Length(i)/pieces
		w, half := l(x)
		if halves != 0 {
			if !(half > 0) {
				return nil
			}
			w += units.Length(halves) * half
		}
		points = append(points, g.at(x, w))
	}
	return points
}

// moves draws an arrow for what happens at each foot, to scale.
func (g *plot) moves() {
	for _, f := range g.Feet {
		w, _ := g.Movable(f.X)
		if f.First != 0 {
			g.arrow(fine, g.beside(f.X, w), g.beside(f.X, w+f.First))
		}
		if f.Then != 0 {
			g.arrow(firm, g.at(f.X, w+f.First), g.at(f.X, w+f.First+f.Then))
		}
	}
}

// beside is a place a little to the left, so that two arrows can be told apart.
func (g *plot) beside(x, w units.Length) point {
	at := g.at(x, w)
	return point{at.x - 1.5, at.y}
}

// labels writes what stands at each station below the plot, and returns where the
// last line ends.
func (g *plot) labels() float64 {
	below := g.bottom + row + 2
	labels := []label{{at: g.at((g.Joint[0]+g.Joint[1])/2, 0).x, words: "coupling"}}
	g.tick(g.Joint[0], below)
	g.tick(g.Joint[1], below)
	for _, f := range g.Feet {
		g.tick(f.X, below)
		labels = append(labels, label{at: g.at(f.X, 0).x, words: cut(f.Words, width/2)})
	}
	labels, last := placed(labels), 0
	for _, l := range labels {
		g.line(fine, point{l.at, below}, point{l.at, below + row*float64(l.row) + 0.8})
		last = max(last, l.row)
	}
	for _, l := range labels { // over the lines that lead to the others
		g.text(point{l.start, below + row*float64(l.row+1)}, right, l.words)
	}
	return below + row*float64(last+1)
}

// tick marks a station on the axis and leads down to its label.
func (g *plot) tick(x units.Length, down float64) {
	at := g.at(x, 0)
	g.line(firm, point{at.x, at.y - 0.8}, point{at.x, at.y + 0.8})
	g.line(dotted, point{at.x, g.top}, point{at.x, down})
}
