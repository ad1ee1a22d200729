package train

import "math"

// aims are the directions in which an item is held from the start: both ways in one
// plane, and all around where both planes count together.
var (
	bothWays  = [][2]float64{{1, 0}, {-1, 0}}
	allAround = compass(8)
)

func compass(n int) [][2]float64 {
	list := make([][2]float64, n)
	for i := range list {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		list[i] = [2]float64{sin, cos}
	}
	return list
}

func (it *item) aims() [][2]float64 {
	if it.round() {
		return allAround
	}
	return bothWays
}

// cuts are items held in directions. An item in both planes has a round limit; each
// direction cuts off what lies beyond a tangent of it. A cut is right whatever the
// level is: its constant and the level are put beside it where it is used.
type cuts struct {
	m    *model
	list []affine
}

func (m *model) newCuts() *cuts {
	n := 0
	for k := range m.items {
		n += len(m.items[k].aims())
	}
	c := &cuts{m: m, list: make([]affine, 0, n)}
	for k := range m.items {
		for _, aim := range m.items[k].aims() {
			c.list = append(c.list, m.along(&m.items[k], aim))
		}
	}
	return c
}

// beyond is how far a round item may go above a level before it is cut.
func (m *model) beyond(level float64) float64 {
	if !m.round() {
		return level
	}
	return above(level, m.ease/10)
}

// deepen adds a cut at every round item that is above the level at y, and returns those.
func (c *cuts) deepen(y []float64, level float64) []affine {
	before := len(c.list)
	for k := range c.m.items {
		it := &c.m.items[k]
		if size, direction := it.at(y); it.round() && size > c.m.beyond(level) {
			c.list = append(c.list, c.m.along(it, direction))
		}
	}
	return c.list[before:]
}

// prune drops the tangents that are of no more use at y: those far from holding.
// They would be made again where they are needed.
func (c *cuts) prune(y []float64, level float64) {
	const near = 1e-3
	first := 0
	for k := range c.m.items {
		first += len(c.m.items[k].aims())
	}
	kept := c.list[:first]
	for _, f := range c.list[first:] {
		if f.at(y) > level*(1-near) {
			kept = append(kept, f)
		}
	}
	c.list = kept
}
