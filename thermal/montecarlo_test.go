package thermal_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// mixed is a machine with every way to tell how a support moves, and with a
// coefficient that front and rear share.
func mixed() []thermal.Support {
	steel := thermal.Material{Name: "steel", Expansion: 11.34e-6, U: 0.4e-6}
	iron := thermal.Material{Name: "iron", Expansion: 10.4e-6, U: 0.3e-6}
	u := thermal.Uncertainty{Height: 3 * mm, Temperature: 4 * units.Kelvin}
	casing := thermal.Piece{
		Name: "casing", Height: 300 * mm, Material: iron, Cold: units.Celsius(15), U: u,
		Profile: []thermal.Spot{{Up: 40 * mm, Running: units.Celsius(60)}, {Up: 280 * mm, Running: units.Celsius(110)}},
	}
	pedestal := thermal.Piece{Name: "pedestal", Height: 450 * mm, Material: steel, Rise: 25 * units.Kelvin, U: u}
	warm := pedestal
	warm.Rise = 38 * units.Kelvin
	moved := thermal.Measured{
		By: align.Vector{Horizontal: -60 * um, Vertical: 400 * um},
		U:  align.Vector{Horizontal: 12 * um, Vertical: 8 * um},
	}
	return []thermal.Support{
		{Name: "front", X: 300 * mm, Pieces: []thermal.Piece{pedestal, casing}},
		{Name: "middle", X: 800 * mm, Three: []thermal.Piece{warm, casing}, Nine: []thermal.Piece{pedestal, casing}, Track: 700 * mm},
		{Name: "rear", X: 1400 * mm, Measured: &moved},
	}
}

// The propagation of distributions, JCGM 101:2008: every input drawn from its
// own normal distribution, one coefficient for all pieces of a material. The
// sample covariance of N draws scatters by sqrt((1+r^2)/N), so that five times
// that is missed once in a million; the seed is fixed.
func TestAgainstMonteCarlo(t *testing.T) {
	const n = 20_000
	machine := mixed()
	predicted := growWithin(t, mm, machine...)
	random := rand.New(rand.NewPCG(8, 3))
	var sum [4]float64
	var product [4][4]float64
	centre := plain(predicted.Value)
	for range n {
		b := plain(growWithin(t, 5*mm, shaken(random, machine)...).Value)
		for i := range b {
			b[i] -= centre[i]
			sum[i] += b[i]
		}
		for i := range b {
			for j := range b {
				product[i][j] += b[i] * b[j]
			}
		}
	}
	v := matrix(predicted.Cov)
	for i := range v {
		u := math.Sqrt(v[i][i])
		near(t, "mean of "+fourNames[i], sum[i]/n/u, 0, 5/math.Sqrt(n))
		for j := range v {
			sample := (product[i][j] - sum[i]*sum[j]/n) / (n - 1)
			scale := math.Sqrt(v[i][i] * v[j][j])
			r := v[i][j] / scale
			near(t, fmt.Sprint(fourNames[i], " with ", fourNames[j]), sample/scale, r, 5*math.Sqrt((1+r*r)/n))
		}
	}
}

// shaken draws every input of a machine anew.
func shaken(random *rand.Rand, machine []thermal.Support) []thermal.Support {
	coefficients := map[thermal.Material]units.Expansion{}
	drawn := slices.Clone(machine)
	for i := range drawn {
		s := &drawn[i]
		for _, pieces := range []*[]thermal.Piece{&s.Pieces, &s.Three, &s.Nine} {
			*pieces = slices.Clone(*pieces)
			for k := range *pieces {
				shake(random, &(*pieces)[k], coefficients)
			}
		}
		if s.Measured != nil {
			m := *s.Measured
			m.By.Horizontal += m.U.Horizontal * units.Length(random.NormFloat64())
			m.By.Vertical += m.U.Vertical * units.Length(random.NormFloat64())
			s.Measured = &m
		}
	}
	return drawn
}

// shake draws one piece anew. Of a profile the mean moves; its places stay at
// the same share of the height.
func shake(random *rand.Rand, p *thermal.Piece, coefficients map[thermal.Material]units.Expansion) {
	m := p.Material
	if _, known := coefficients[m]; !known {
		coefficients[m] = m.Expansion + m.U*units.Expansion(random.NormFloat64())
	}
	p.Material.Expansion = coefficients[m]
	taller := 1 + p.U.Height/p.Height*units.Length(random.NormFloat64())
	warmer := p.U.Temperature * units.TemperatureDifference(random.NormFloat64())
	p.Height *= taller
	p.Profile = slices.Clone(p.Profile)
	for k := range p.Profile {
		p.Profile[k].Up *= taller
		p.Profile[k].Running = p.Profile[k].Running.Plus(warmer)
	}
	if len(p.Profile) == 0 {
		p.Rise += warmer
	}
}
