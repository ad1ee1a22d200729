package softfoot_test

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
)

// plate is a machine's frame as an elastic plate, flat when free, that stands on
// pads under its own weight and is drawn down onto them by bolts. It knows
// nothing of the code it judges: where that reasons with planes, this minimises
// energy. Lengths in millimetres, forces in weights of the machine.
//
// The deflection is a sum of products of powers of x and y up to the fourth
// degree (method of Ritz), with the bending energy of an orthotropic plate,
//
//	1/2 integral (Dx wxx^2 + Dy wyy^2 + 2 D1 wxx wyy + 4 Dxy wxy^2),
//
// as in S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.
// (from memory).
type plate struct {
	halfLength, halfWidth float64
	bending               *mat.SymDense // stiffness of the shape functions
	weight                *mat.VecDense // gravity's share in each of them
	feet                  []spot
	pads                  []float64 // heights of the pads, shims included
	bolt                  float64   // stiffness of a foot that is drawn down
}

// spot is a place in plan.
type spot struct{ x, y float64 }

// powers are the shape functions x^p y^q, p + q <= 4.
var powers = func() (list [][2]int) {
	for sum := range 5 {
		for q := range sum + 1 {
			list = append(list, [2]int{sum - q, q})
		}
	}
	return list
}()

// shape is shape function k at a foot.
func (p *plate) shape(k int, at spot) float64 {
	return math.Pow(at.x/p.halfLength, float64(powers[k][0])) * math.Pow(at.y/p.halfWidth, float64(powers[k][1]))
}

// derived returns the d-th derivative of u^n: factor u^power.
func derived(n, d int) (factor float64, power int) {
	factor = 1
	for ; d > 0; d-- {
		factor *= float64(n)
		n--
	}
	return factor, n
}

// square is the integral, over the square from -1 to 1, of the product of shape
// function a, derived da times along x and y, and function b.
func square(a int, da [2]int, b int, db [2]int) float64 {
	integral := 1.0
	for axis := range 2 {
		fa, na := derived(powers[a][axis], da[axis])
		fb, nb := derived(powers[b][axis], db[axis])
		if fa*fb == 0 || (na+nb)%2 == 1 {
			return 0
		}
		integral *= fa * fb * 2 / float64(na+nb+1)
	}
	return integral
}

// The products of curvatures, integrated over the square.
var curvatures = func() (c struct{ xx, yy, both, twist [15][15]float64 }) {
	x, y, xy := [2]int{2, 0}, [2]int{0, 2}, [2]int{1, 1}
	for a := range powers {
		for b := range powers {
			c.xx[a][b] = square(a, x, b, x)
			c.yy[a][b] = square(a, y, b, y)
			c.both[a][b] = square(a, x, b, y) + square(a, y, b, x)
			c.twist[a][b] = square(a, xy, b, xy)
		}
	}
	return c
}()

// stiffness gives the plate its bending energy and its weight.
func (p *plate) stiffness(dx, dy, d1, dxy float64) {
	n := len(powers)
	p.bending, p.weight = mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	l, w := p.halfLength, p.halfWidth
	for a := range n {
		p.weight.SetVec(a, -square(a, [2]int{}, 0, [2]int{})/4) // function 0 is 1
		for b := a; b < n; b++ {
			p.bending.SetSym(a, b, l*w*(dx*curvatures.xx[a][b]/math.Pow(l, 4)+dy*curvatures.yy[a][b]/math.Pow(w, 4)+
				(d1*curvatures.both[a][b]+4*dxy*curvatures.twist[a][b])/(l*l*w*w)))
		}
	}
}

// settle returns how high each foot stands with the bolt of one of them loose
// (none: -1). A loose foot may lift off; its pad can only push.
func (p *plate) settle(loose int) []float64 {
	heights := p.balance(loose)
	if loose >= 0 && heights[loose] < p.pads[loose] {
		return p.balance(-1) // it rests on its pad, which carries it as a bolted one
	}
	return heights
}

// balance is where the energy is least with the given foot free in the air.
func (p *plate) balance(free int) []float64 {
	n := len(powers)
	stiff := mat.NewSymDense(n, nil)
	stiff.CopySym(p.bending)
	load := mat.VecDenseCopyOf(p.weight)
	rows := make([]*mat.VecDense, len(p.feet))
	for i, foot := range p.feet {
		rows[i] = mat.NewVecDense(n, nil)
		for k := range n {
			rows[i].SetVec(k, p.shape(k, foot))
		}
		if i == free {
			continue
		}
		stiff.SymRankOne(stiff, p.bolt, rows[i])
		load.AddScaledVec(load, p.bolt*p.pads[i], rows[i])
	}
	var factors mat.Cholesky
	if !factors.Factorize(stiff) {
		panic("the plate is not held")
	}
	var q mat.VecDense
	if err := factors.SolveVecTo(&q, load); err != nil {
		panic(err)
	}
	heights := make([]float64, len(p.feet))
	for i, row := range rows {
		heights[i] = mat.Dot(row, &q)
	}
	return heights
}

// lifts is what a dial on each foot shows when its bolt alone is loosened.
func (p *plate) lifts() []float64 {
	tight := p.settle(-1)
	list := make([]float64, len(p.feet))
	for i := range list {
		list[i] = p.settle(i)[i] - tight[i]
	}
	return list
}

// randomPlate draws a machine with n feet: its plan, its stiffness, and pads that
// are wrong in one of three ways.
func randomPlate(rng *rand.Rand, n int) *plate {
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	p := &plate{
		halfLength: between(200, 900),
		halfWidth:  between(150, 500),
		pads:       make([]float64, n),
		bolt:       1 / 0.002, // a foot that is drawn down gives by 2 um under the machine's weight
	}
	p.feet = randomFeet(rng, n, p.halfLength, p.halfWidth)
	dx, dy := between(0.5, 2), between(0.5, 2)
	p.stiffness(dx, dy, 0.3*math.Sqrt(dx*dy), between(0.15, 0.6))
	p.stiffen(0.06 * math.Pow(10, between(-1, 0)))
	p.spoil(rng)
	return p
}

// stiffen scales the frame's stiffness until, of its four corners, the one that
// sags most when the frame stands on the three others alone sags by so much.
func (p *plate) stiffen(sag float64) {
	last := len(p.feet)/2*2 - 1
	corners := *p
	corners.feet = []spot{p.feet[0], p.feet[1], p.feet[last-1], p.feet[last]}
	corners.pads = make([]float64, 4)
	for range 6 {
		most := 0.0
		for i := range corners.feet {
			most = max(most, -corners.balance(i)[i])
		}
		p.bending.ScaleSym(most/sag, p.bending)
	}
}

// spoil sets the pads: one low, one high, or all of them uneven.
func (p *plate) spoil(rng *rand.Rand) {
	one, by := rng.IntN(len(p.pads)), 0.05+0.35*rng.Float64()
	switch rng.IntN(3) {
	case 0:
		p.pads[one] = -by
	case 1:
		p.pads[one] = by
	default:
		for i := range p.pads {
			p.pads[i] = 0.1 * rng.NormFloat64()
		}
	}
}

// randomFeet places n feet in two rows along the sides, none where it belongs
// exactly; an odd one stands in the middle of an end.
func randomFeet(rng *rand.Rand, n int, halfLength, halfWidth float64) []spot {
	astray := func() float64 { return 0.05 * (2*rng.Float64() - 1) }
	var feet []spot
	for i := range n / 2 {
		along := 2*float64(i)/float64(n/2-1) - 1
		for _, across := range []float64{-1, 1} {
			feet = append(feet, spot{halfLength * (0.95*along + astray()), halfWidth * (0.95*across + astray())})
		}
	}
	if n%2 == 1 {
		feet = append(feet, spot{-halfLength, 2 * halfWidth * astray()})
	}
	return feet
}
