package softfoot

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// leftOut is how far above its own pad a foot ends when it is loosened, worked out
// without K: the surface of least bending through all other feet, each of which
// gives by give times its force, is solved for in gonum and read off where the
// loose foot stands. Places are from the middle of all feet, in the farthest
// foot's distance along or across.
func leftOut(loose int, x, y, h []float64) float64 {
	var others []int
	for i := range x {
		if i != loose {
			others = append(others, i)
		}
	}
	n := len(others)
	basis := func(ax, ay, bx, by float64) float64 {
		r := math.Hypot(ax-bx, ay-by)
		if r == 0 {
			return 0
		}
		return r * r * math.Log(r)
	}
	a, b := mat.NewDense(n+3, n+3, nil), mat.NewVecDense(n+3, nil)
	for i, p := range others {
		for j, q := range others {
			a.Set(i, j, basis(x[p], y[p], x[q], y[q]))
		}
		a.Set(i, i, give)
		for k, v := range []float64{1, x[p], y[p]} {
			a.Set(i, n+k, v)
			a.Set(n+k, i, v)
		}
		b.SetVec(i, h[p])
	}
	var s mat.VecDense
	if err := s.SolveVec(a, b); err != nil {
		panic(err)
	}
	z := s.AtVec(n) + s.AtVec(n+1)*x[loose] + s.AtVec(n+2)*y[loose]
	for j, q := range others {
		z += s.AtVec(j) * basis(x[loose], y[loose], x[q], y[q])
	}
	return z - h[loose]
}

// The lifts that pads make are those of the surface of least bending.
func TestLiftsAgainstSurfaceWithoutFoot(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1972))
	for round := range 500 {
		n := 4 + round%5
		var x, y, h column
		for i := range n { // on a ring, so that no row is nearly straight
			angle := 2 * math.Pi * (float64(i) + 0.3*rng.Float64()) / float64(n)
			x[i], y[i] = 5000+700*math.Cos(angle), -40+250*math.Sin(angle)
			h[i] = 0.2 * rng.NormFloat64()
		}
		p := newPlan(n, x, y)
		got := p.lifts(&h)
		middleX, middleY, size := 0.0, 0.0, 0.0
		for i := range n {
			middleX += x[i] / float64(n)
			middleY += y[i] / float64(n)
		}
		for i := range n {
			x[i], y[i] = x[i]-middleX, y[i]-middleY
			size = max(size, math.Abs(x[i]), math.Abs(y[i]))
		}
		for i := range n {
			x[i], y[i] = x[i]/size, y[i]/size
		}
		for i := range n {
			if want := leftOut(i, x[:n], y[:n], h[:n]); math.Abs(got[i]-want) > 1e-9*max(1, math.Abs(want)) {
				t.Fatalf("%d feet, foot %d: got %v, want %v", n, i, got[i], want)
			}
		}
	}
}
