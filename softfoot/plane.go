package softfoot

import "example.org/collinear/internal/lsq"

// narrow is the share of a plan's length below which its width does not count:
// points so near to one line bear no plane.
const narrow = 1e-3

// inLine tells whether n points stand in one line. The product of the squared
// spreads along their long and short axes is the determinant of their scatter,
// the sum its trace.
func inLine(n int, x, y column) bool {
	middleX, middleY := mean(n, x), mean(n, y)
	xx, xy, yy := 0.0, 0.0, 0.0
	for i := range n {
		dx, dy := x[i]-middleX, y[i]-middleY
		xx += float64(dx * dx)
		xy += float64(dx * dy)
		yy += float64(dy * dy)
	}
	trace := xx + yy
	return !(float64(xx/trace*yy/trace)-float64(xy/trace*xy/trace) > narrow*narrow)
}

// plane is z = level + along*x + across*y, lengths in millimetres.
type plane struct{ level, along, across float64 }

// planeThrough returns the plane of least squares through n points that do not
// stand in one line.
func planeThrough(n int, x, y, z column) plane {
	const unknowns = 3
	t := lsq.In(make([]float64, lsq.Size(unknowns)), unknowns)
	middleX, middleY := mean(n, x), mean(n, y) // far from x = 0 the columns would be nearly alike
	for i := range n {
		t.Add([]float64{1, x[i] - middleX, y[i] - middleY}, z[i])
	}
	var s [unknowns]float64
	t.Solve(s[:])
	return plane{level: s[0] - float64(s[1]*middleX) - float64(s[2]*middleY), along: s[1], across: s[2]}
}

func mean(n int, v column) float64 {
	sum := 0.0
	for i := range n {
		sum += v[i]
	}
	return sum / float64(n)
}
