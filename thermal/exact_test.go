package thermal_test

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"pgregory.net/rapid"
)

// The same model once more in numbers of three hundred digits, put together another way:
// the line from the normal equations instead of shares, derivatives from central
// differences (the formulae are of second degree at most in any one input, so
// these are exact) instead of by hand.

type exactPiece struct {
	height, rise *big.Float
	material     int
}

type exactSupport struct {
	x, track           *big.Float
	alike, three, nine []exactPiece
	by                 [2]*big.Float // nil: not measured
}

type exactMachine struct {
	supports  []exactSupport
	expansion []*big.Float
	inputs    []exactInput
}

// exactInput is a number in the machine that is uncertain.
type exactInput struct{ at, u *big.Float }

func zero() *big.Float { return new(big.Float).SetPrec(1024) }

func long[Q ~float64 | ~int](q Q) *big.Float { return zero().SetFloat64(float64(q)) }

func add(a, b *big.Float) *big.Float { return zero().Add(a, b) }
func sub(a, b *big.Float) *big.Float { return zero().Sub(a, b) }
func mul(a, b *big.Float) *big.Float { return zero().Mul(a, b) }
func quo(a, b *big.Float) *big.Float { return zero().Quo(a, b) }

// exactly takes over a machine, number by number.
func exactly(machine []thermal.Support) *exactMachine {
	e := &exactMachine{}
	var materials []thermal.Material
	take := func(pieces []thermal.Piece) []exactPiece {
		taken := make([]exactPiece, len(pieces))
		for i, p := range pieces {
			k := slices.Index(materials, p.Material)
			if k < 0 {
				k = len(materials)
				materials = append(materials, p.Material)
				e.expansion = append(e.expansion, long(p.Material.Expansion))
				e.inputs = append(e.inputs, exactInput{e.expansion[k], long(p.Material.U)})
			}
			taken[i] = exactPiece{long(p.Height), exactRise(p), k}
			e.inputs = append(e.inputs, exactInput{taken[i].height, long(p.U.Height)}, exactInput{taken[i].rise, long(p.U.Temperature)})
		}
		return taken
	}
	for _, s := range machine {
		x := exactSupport{x: long(s.X), track: long(s.Track), alike: take(s.Pieces), three: take(s.Three), nine: take(s.Nine)}
		if m := s.Measured; m != nil {
			x.by = [2]*big.Float{long(m.By.Horizontal), long(m.By.Vertical)}
			e.inputs = append(e.inputs, exactInput{x.by[0], long(m.U.Horizontal)}, exactInput{x.by[1], long(m.U.Vertical)})
		}
		e.supports = append(e.supports, x)
	}
	return e
}

// exactRise puts the held ends in as spots of their own.
func exactRise(p thermal.Piece) *big.Float {
	if len(p.Profile) == 0 {
		return long(p.Rise)
	}
	ends := slices.Clone(p.Profile)
	ends = slices.Insert(ends, 0, thermal.Spot{Up: 0, Running: ends[0].Running})
	ends = append(ends, thermal.Spot{Up: p.Height, Running: ends[len(ends)-1].Running})
	twice := zero()
	for i := 1; i < len(ends); i++ {
		step := sub(long(ends[i].Up), long(ends[i-1].Up))
		twice = add(twice, mul(step, add(long(ends[i].Running.Celsius()), long(ends[i-1].Running.Celsius()))))
	}
	return sub(quo(twice, mul(long(2), long(p.Height))), long(p.Cold.Celsius()))
}

// leg returns the growth and the height of a stack.
func (e *exactMachine) leg(pieces []exactPiece) (growth, height *big.Float) {
	growth, height = zero(), zero()
	for _, p := range pieces {
		growth = add(growth, mul(mul(p.height, e.expansion[p.material]), p.rise))
		height = add(height, p.height)
	}
	return growth, height
}

func (e *exactMachine) movement(s *exactSupport) [2]*big.Float {
	if s.by[0] != nil {
		return s.by
	}
	if len(s.alike) > 0 {
		up, _ := e.leg(s.alike)
		return [2]*big.Float{zero(), up}
	}
	g3, h3 := e.leg(s.three)
	g9, h9 := e.leg(s.nine)
	half := long(0.5)
	roll := quo(sub(g9, g3), s.track)
	return [2]*big.Float{mul(mul(half, add(h3, h9)), roll), mul(half, add(g3, g9))}
}

// line is horizontal offset and slope, vertical offset and slope, in nanometres.
func (e *exactMachine) line() (beta [4]*big.Float) {
	n, sx, sxx := long(len(e.supports)), zero(), zero()
	sw, sxw := [2]*big.Float{zero(), zero()}, [2]*big.Float{zero(), zero()}
	for i := range e.supports {
		s := &e.supports[i]
		sx, sxx = add(sx, s.x), add(sxx, mul(s.x, s.x))
		for k, w := range e.movement(s) {
			sw[k], sxw[k] = add(sw[k], w), add(sxw[k], mul(s.x, w))
		}
	}
	det := sub(mul(n, sxx), mul(sx, sx))
	for k := range sw {
		beta[2*k] = quo(sub(mul(sxx, sw[k]), mul(sx, sxw[k])), det)
		beta[2*k+1] = quo(sub(mul(n, sxw[k]), mul(sx, sw[k])), det)
	}
	return beta
}

// covariance is in millimetres and ratios, like that of the library.
func (e *exactMachine) covariance() (v [4][4]float64) {
	var sum [4][4]*big.Float
	for i := range sum {
		for j := range sum {
			sum[i][j] = zero()
		}
	}
	for _, in := range e.inputs {
		if in.u.Sign() == 0 {
			continue
		}
		value := zero().Set(in.at)
		in.at.Add(value, in.u)
		up := e.line()
		in.at.Sub(value, in.u)
		down := e.line()
		in.at.Set(value)
		for i := range sum {
			for j := range sum {
				sum[i][j] = add(sum[i][j], mul(sub(up[i], down[i]), sub(up[j], down[j])))
			}
		}
	}
	unit := [4]float64{1e-6, 1, 1e-6, 1}
	for i := range v {
		for j := range v {
			x, _ := sum[i][j].Float64()
			v[i][j] = x / 4 * unit[i] * unit[j]
		}
	}
	return v
}

// size is the largest number that enters the sum of a line, as an offset in
// millimetres and a slope: what rounding is measured by. Stations lie within 8 m
// and 100 mm apart, so shares are at most about 80 and 1 per 71 mm.
func size(machine []thermal.Support, of func(s thermal.Support, p thermal.Piece) float64, own func(*thermal.Measured) float64) [4]float64 {
	sum := 0.0
	for _, s := range machine {
		for _, p := range slices.Concat(s.Pieces, s.Three, s.Nine) {
			sum += of(s, p) * lever
		}
		if s.Measured != nil {
			sum += own(s.Measured)
		}
	}
	return [4]float64{80 * sum / 1e6, sum / 71e6, 80 * sum / 1e6, sum / 71e6}
}

// A support rolls by the growth of its legs over the track, and that moves the shaft by
// as much times its height: up to so many times the growth, with its own.
const (
	track = 200e6 // nm, the least that is drawn
	lever = 1 + 4500e6/track
)

func growth(p thermal.Piece) float64 { return abs(p.Height) * abs(p.Material.Expansion) * 650 }

func abs[Q ~float64](q Q) float64 { return math.Abs(float64(q)) }

func grownSize(machine []thermal.Support) [4]float64 {
	return size(machine,
		func(_ thermal.Support, p thermal.Piece) float64 { return growth(p) },
		func(m *thermal.Measured) float64 { return max(abs(m.By.Horizontal), abs(m.By.Vertical)) })
}

func uncertainSize(machine []thermal.Support) [4]float64 {
	return size(machine,
		func(s thermal.Support, p thermal.Piece) float64 {
			a, roll := abs(p.Material.Expansion), 0.0 // of which a height has its share, whatever it grows itself
			for _, other := range slices.Concat(s.Three, s.Nine) {
				roll += growth(other) / track
			}
			return abs(p.U.Height)*(a*650+roll/lever) + abs(p.Height)*a*abs(p.U.Temperature) + abs(p.Height)*650*abs(p.Material.U)
		},
		func(m *thermal.Measured) float64 { return max(abs(m.U.Horizontal), abs(m.U.Vertical)) })
}

func TestAgainstLongNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		machine := drawMachine(t, 2, 4)
		got, want := growWithin(t, anyStandOff, machine...), exactly(machine)
		tolerance := grownSize(machine)
		beta := plain(got.Value)
		for i, w := range want.line() {
			exact, _ := w.Float64()
			if i%2 == 0 {
				exact /= 1e6
			}
			near(t, fourNames[i], beta[i], exact, 4*eps*tolerance[i])
		}
		if got.Cov.Basis == align.Unknown {
			return
		}
		// A covariance is a sum of up to some sixteen products of two, each of five factors:
		// a rounding for each factor and each sum, of half an eps.
		v, exact, u := matrix(got.Cov), want.covariance(), uncertainSize(machine)
		for i := range v {
			for j := range v {
				near(t, fourNames[i]+" with "+fourNames[j], v[i][j], exact[i][j], 13*eps*u[i]*u[j])
			}
		}
	})
}

// A leg alone is good to a few roundings: heights and rises that are exact in
// the sum of some pieces.
func TestLegAgainstLongNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := on(0, drawPieces(t, drawMaterials(t))...)
		by, _ := alone(t, s)
		e := exactly([]thermal.Support{s})
		exact, _ := e.movement(&e.supports[0])[1].Float64()
		largest := 0.0
		for _, p := range s.Pieces {
			largest = max(largest, abs(p.Height)*abs(p.Material.Expansion)*650)
		}
		near(t, "growth", float64(by.Vertical), exact, 16*eps*largest)
	})
}
