package tolerance_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// drawLine draws a misalignment of up to 1 mm and 2 mm/m, in whole micrometres.
func drawLine(t *rapid.T) align.Centreline {
	f := func(bound int, name string) float64 {
		return float64(rapid.IntRange(-bound, bound).Draw(t, name)) / 1000
	}
	return line(f(1000, "offset y"), f(2000, "slope y"), f(1000, "offset z"), f(2000, "slope z"))
}

// drawEstimate draws a misalignment with any covariance: that of four sums of
// independent parts.
func drawEstimate(t *rapid.T) align.Estimate {
	var parts, v, r [4][4]float64
	for i := range parts {
		for j := range parts {
			parts[i][j] = rapid.Float64Range(-1, 1).Draw(t, "part")
		}
		parts[i][i] += math.Copysign(0.1, parts[i][i])
	}
	for i := range v {
		for j := range v {
			for k := range v {
				v[i][j] += parts[i][k] * parts[j][k]
			}
		}
	}
	for i := range r {
		for j := range r {
			r[i][j] = v[i][j] / math.Sqrt(v[i][i]*v[j][j])
		}
		r[i][i] = 1
	}
	size := func(i int, scale float64) float64 { return math.Sqrt(v[i][i]) * scale }
	u := line(size(0, 0.005), size(1, 0.03), size(2, 0.005), size(3, 0.03))
	return stated(t, drawLine(t), u, r)
}

// drawCoupling draws a short coupling or one with a spacer.
func drawCoupling(t *rapid.T) align.Coupling {
	if rapid.Bool().Draw(t, "short") {
		return align.Coupling{}
	}
	return align.Coupling{Span: units.Length(rapid.IntRange(50, 5000).Draw(t, "span")) * mm}
}

func drawLimits(t *rapid.T) tolerance.Limits {
	f := func(name string) float64 { return float64(rapid.IntRange(1, 200).Draw(t, name)) }
	return tolerance.Limits{
		Offset: units.Length(f("offset") * 1e4), Slope: units.Slope(f("slope") * 1e-5), Flex: units.Slope(f("flex") * 1e-5),
		PerPlane: rapid.Bool().Draw(t, "per plane"),
	}
}

// weights are a and b of a*offset + b*slope, which is what an item is: written
// down once more from the geometry.
func weights(of tolerance.Quantity, k align.Coupling) (a, b float64) {
	switch of {
	case tolerance.Offset:
		return 1, 0
	case tolerance.Slope:
		return 0, 1
	case tolerance.FlexStationary:
		return 1 / float64(k.Span), 0.5
	}
	return -1 / float64(k.Span), 0.5
}

// The law of propagation in full: the gradient of the size with respect to each
// of the four numbers, and the 4x4 covariance, in 200 bits. Derived here.
func TestUncertaintyInBigNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off, k, l := drawEstimate(t), drawCoupling(t), drawLimits(t)
		v := judged(t, l, off, k)
		for _, item := range v.All() {
			if item.Ratio == 0 {
				continue // has no direction
			}
			a, b := weights(item.Of, k)
			h, w := off.Value.Horizontal, off.Value.Vertical
			y := a*float64(h.Offset) + b*float64(h.Slope)
			z := a*float64(w.Offset) + b*float64(w.Slope)
			toY, toZ := y, z
			switch item.Plane {
			case tolerance.Horizontal:
				toY, toZ = 1, 0
			case tolerance.Vertical:
				toY, toZ = 0, 1
			}
			want := quadratic(off.Cov, [4]float64{toY * a, toY * b, toZ * a, toZ * b})
			want.Quo(want, norm2(toY, toZ))
			expected, _ := want.Float64()
			_, u, _ := numbers(item)
			worst := scaleOf(off.Cov, a, b)
			near(t, item.Of.String()+" "+item.Plane.String(), u*u, expected, 32*eps*worst*worst)
		}
	})
}

func precise(x float64) *big.Float { return new(big.Float).SetPrec(200).SetFloat64(x) }

func norm2(y, z float64) *big.Float {
	yy, zz := precise(y), precise(z)
	return new(big.Float).Add(yy.Mul(yy, yy), zz.Mul(zz, zz))
}

// quadratic is g V g.
func quadratic(c align.Covariance, g [4]float64) *big.Float {
	s, r := c.Standard(), c.Correlation()
	u := [4]float64{float64(s.Horizontal.Offset), float64(s.Horizontal.Slope), float64(s.Vertical.Offset), float64(s.Vertical.Slope)}
	sum := precise(0)
	for i := range u {
		for j := range u {
			term := precise(g[i])
			for _, x := range []float64{g[j], u[i], u[j], r[i][j]} {
				term.Mul(term, precise(x))
			}
			sum.Add(sum, term)
		}
	}
	return sum
}

// scaleOf is the largest uncertainty that a*offset + b*slope could have, were
// everything correlated for the worst: what may cancel within the sum, and so what
// rounding is counted against.
func scaleOf(c align.Covariance, a, b float64) float64 {
	s := c.Standard()
	y := math.Abs(a)*float64(s.Horizontal.Offset) + math.Abs(b)*float64(s.Horizontal.Slope)
	z := math.Abs(a)*float64(s.Vertical.Offset) + math.Abs(b)*float64(s.Vertical.Slope)
	return y + z
}

// Two hundred thousand draws of the four numbers (PCG, seed 1, 2) about case A,
// each judged by a plain formula: the standard deviation of the sizes is U. That
// many draws know it to 1/sqrt(2N), 0.16 %, so five times that is asked; the
// curvature of the size adds u/(2 |w|) squared, below 0.1 % here.
func TestUncertaintyByDrawing(t *testing.T) {
	const n = 200_000
	r := [4][4]float64{{1, -0.6, 0.3, 0}, {-0.6, 1, 0, 0.2}, {0.3, 0, 1, -0.4}, {0, 0.2, -0.4, 1}}
	u := line(0.004, 0.02, 0.006, 0.03)
	off := stated(t, caseA, u, r)
	k := align.Coupling{Span: 800 * mm}
	factor := cholesky(t, r)
	random := rand.New(rand.NewPCG(1, 2))
	type moments struct{ sum, squares float64 }
	seen := map[tolerance.Quantity]*moments{
		tolerance.Offset: {}, tolerance.Slope: {}, tolerance.FlexStationary: {}, tolerance.FlexMovable: {},
	}
	for range n {
		var normal, x [4]float64
		for i := range normal {
			normal[i] = random.NormFloat64()
		}
		for i := range x {
			for j := range i + 1 {
				x[i] += factor[i][j] * normal[j]
			}
		}
		offsetY, slopeY := 0.12e6+x[0]*0.004e6, 0.4e-3+x[1]*0.02e-3
		offsetZ, slopeZ := -0.20e6+x[2]*0.006e6, -0.7e-3+x[3]*0.03e-3
		for of, m := range seen {
			a, b := weights(of, k)
			size := math.Hypot(a*offsetY+b*slopeY, a*offsetZ+b*slopeZ)
			m.sum += size
			m.squares += size * size
		}
	}
	l := tolerance.Limits{Offset: mm, Slope: mmm, Flex: mmm}
	for _, coupling := range []align.Coupling{{}, k} {
		v := judged(t, l, off, coupling)
		for _, item := range v.All() {
			m := seen[item.Of]
			mean := m.sum / n
			want := math.Sqrt(m.squares/n - mean*mean)
			_, got, _ := numbers(item)
			near(t, item.Of.String(), got/want, 1, 5/math.Sqrt(2*n)+1e-3)
		}
	}
}

func cholesky(tb fataler, r [4][4]float64) (l [4][4]float64) {
	tb.Helper()
	for i := range r {
		for j := range i + 1 {
			sum := r[i][j]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			if i == j {
				l[i][i] = math.Sqrt(sum)
			} else {
				l[i][j] = sum / l[j][j]
			}
		}
	}
	return l
}

// Where nothing is off there is no direction: U is then the largest that any
// direction has, found here by trying ten thousand.
func TestUncertaintyOfNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off, k := drawEstimate(t), drawCoupling(t)
		off.Value = align.Centreline{}
		v := judged(t, tolerance.Limits{Offset: mm, Slope: mmm, Flex: mmm}, off, k)
		for _, item := range v.All() {
			a, b := weights(item.Of, k)
			most := 0.0
			for i := range 10_000 {
				y, z := math.Sincos(float64(i) * math.Pi / 10_000)
				most = max(most, math.Sqrt(max(0, quadraticFloat(off.Cov, [4]float64{y * a, y * b, z * a, z * b}))))
			}
			_, u, _ := numbers(item)
			near(t, item.Of.String(), u, most, 1e-7*most) // half a step is 1.6e-4 rad, squared and halved 1.2e-8
		}
	})
}

// quadraticFloat is quadratic in float64, for many of them.
func quadraticFloat(c align.Covariance, g [4]float64) (sum float64) {
	s, r := c.Standard(), c.Correlation()
	share := [4]float64{
		g[0] * float64(s.Horizontal.Offset), g[1] * float64(s.Horizontal.Slope),
		g[2] * float64(s.Vertical.Offset), g[3] * float64(s.Vertical.Slope),
	}
	for i := range share {
		for j := range share {
			sum += share[i] * share[j] * r[i][j]
		}
	}
	return sum
}

// What is less than the resolution has no direction that could be trusted; one
// nanometre has.
func TestUncertaintyNearNothing(t *testing.T) {
	u := line(0.001, 0, 0.003, 0)
	l := tolerance.Limits{Offset: mm}
	for _, row := range []struct {
		name   string
		offset units.Length
		want   units.Length
	}{
		{"nothing, the larger", 0, 3 * um},
		{"rounds to nothing, the larger", 0.49, 3 * um},
		{"rounds to 1 nm, along it", 0.51, 1 * um},
		{"far off, along it", mm, 1 * um},
	} {
		c := align.Centreline{Horizontal: align.Line{Offset: row.offset}}
		v := judged(t, l, stated(t, c, u, uncorrelated), align.Coupling{})
		near(t, row.name, v.Items[0].U.Length, row.want, 1e-9*row.want)
	}
}

// By hand: case A, u of offset 5 um and of slope 0.02 mm/m in each plane, not
// correlated. Isotropic, so the direction does not matter: offset 5 um, slope 0.02
// mm/m, and at the flex planes of 800 mm the root of (5/800)^2 + (0.02/2)^2 um/mm
// and mm/m, 0.0117925 mm/m.
func TestUncertaintyByHand(t *testing.T) {
	off := stated(t, caseA, line(0.005, 0.02, 0.005, 0.02), uncorrelated)
	for _, perPlane := range []bool{false, true} {
		l := tolerance.Limits{Offset: mm, Slope: mmm, Flex: mmm, PerPlane: perPlane}
		for _, k := range []align.Coupling{{}, {Span: 800 * mm}} {
			v := judged(t, l, off, k)
			if v.Basis != align.Stated {
				t.Errorf("basis %v", v.Basis)
			}
			for _, item := range v.All() {
				switch item.Of {
				case tolerance.Offset:
					near(t, "offset", item.U.Length, 5*um, 1e-9*um)
				case tolerance.Slope:
					near(t, "slope", item.U.Slope, 0.02*mmm, 1e-15)
				default:
					near(t, "flex", item.U.Slope, 0.011792476415070755*mmm, 1e-15)
				}
			}
		}
	}
}

// Unknown is not zero, and decides nothing.
func TestUnknownUncertainty(t *testing.T) {
	off := align.Estimate{Value: caseA, Cov: align.Covariance{Basis: align.Unknown}}
	for _, perPlane := range []bool{false, true} {
		l := tolerance.Limits{Offset: mm, Slope: mmm, Flex: mmm, PerPlane: perPlane}
		for _, k := range []align.Coupling{{}, {Span: 800 * mm}} {
			v, exact := judged(t, l, off, k), judged(t, l, align.Exact(caseA), k)
			if v.Basis != align.Unknown || v.Outcome != exact.Outcome || v.Governs != exact.Governs {
				t.Errorf("got %v %v %d", v.Basis, v.Outcome, v.Governs)
			}
			for i, item := range v.All() {
				if _, u, _ := numbers(item); !math.IsNaN(u) || item.Found != exact.Items[i].Found || item.Ratio != exact.Items[i].Ratio {
					t.Errorf("item %v with u %v", item, u)
				}
			}
		}
	}
}
