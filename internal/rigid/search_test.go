package rigid_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.org/collinear/internal/rigid"
)

// The second way to a reading: every length in 200 bits, the frame of an axis
// made by turning the stationary frame about z and then about the level, and the
// point of contact found by halving an interval on which an implicit function
// changes its sign. Nothing here is rearranged against cancellation.

const bits = 200

// wide returns x in 200 bits.
func wide(x float64) *big.Float { return new(big.Float).SetPrec(bits).SetFloat64(x) }

func mul(a, b *big.Float) *big.Float { return wide(0).Mul(a, b) }
func add(a, b *big.Float) *big.Float { return wide(0).Add(a, b) }
func sub(a, b *big.Float) *big.Float { return wide(0).Sub(a, b) }
func quo(a, b *big.Float) *big.Float { return wide(0).Quo(a, b) }

// vec is a vector in x, y, z.
type vec [3]*big.Float

func vecOf(x, y, z float64) vec { return vec{wide(x), wide(y), wide(z)} }

// step returns a + f b.
func step(a vec, f *big.Float, b vec) (sum vec) {
	for n := range sum {
		sum[n] = add(a[n], mul(f, b[n]))
	}
	return sum
}

func dot(a, b vec) *big.Float {
	return add(add(mul(a[0], b[0]), mul(a[1], b[1])), mul(a[2], b[2]))
}

// frame is an axis with its level and upright directions.
type frame struct{ at, along, right, up vec }

// frameOf turns the stationary frame about z by atan SlopeY, towards 3 o'clock,
// and then about its level direction until the axis rises by SlopeZ.
func frameOf(p rigid.Pose) frame {
	cosYaw := quo(wide(1), wide(0).Sqrt(add(wide(1), mul(wide(p.SlopeY), wide(p.SlopeY)))))
	sinYaw := mul(wide(p.SlopeY), cosYaw)
	rise := mul(wide(p.SlopeZ), cosYaw) // tangent of the pitch
	cosPitch := quo(wide(1), wide(0).Sqrt(add(wide(1), mul(rise, rise))))
	sinPitch := mul(rise, cosPitch)
	ahead, upright := vec{cosYaw, sinYaw, wide(0)}, vecOf(0, 0, 1)
	none := vecOf(0, 0, 0)
	return frame{
		at:    vecOf(0, p.OffsetY, p.OffsetZ),
		along: step(step(none, cosPitch, ahead), sinPitch, upright),
		right: vec{wide(0).Neg(sinYaw), cosYaw, wide(0)},
		up:    step(step(none, wide(0).Neg(sinPitch), ahead), cosPitch, upright),
	}
}

// root halves the interval until its ends differ by 1e-20 mm; f is below zero
// at low and not below it at high.
func root(low, high float64, f func(*big.Float) *big.Float) *big.Float {
	a, b := wide(low), wide(high)
	for range 80 {
		middle := mul(wide(0.5), add(a, b))
		if f(middle).Sign() < 0 {
			a = middle
		} else {
			b = middle
		}
	}
	return a
}

// searched returns what the instrument reads, less the reading of perfectly
// aligned shafts. Only the radial kinds and the faces between the two machines
// are searched: the spacer's are the same between other bodies.
func searched(i rigid.Instrument, p rigid.Pose, clock float64) float64 {
	carrier, target, other := frameOf(rigid.Pose{}), frameOf(p), 1.0
	if i.Carrier == rigid.Movable {
		carrier, target, other = target, carrier, -1
	}
	sin, cos := math.Sincos(clock * math.Pi / 180)
	u := step(step(vecOf(0, 0, 0), wide(sin), carrier.right), wide(cos), carrier.up)
	minus := wide(-1)
	switch i.Kind {
	case rigid.Rim, rigid.Bore, rigid.Straightedge:
		tip := step(carrier.at, wide(i.Station), carrier.along)
		tip[2] = sub(tip[2], wide(i.Sag))
		out := root(0, 2*i.Radius, func(q *big.Float) *big.Float {
			from := step(step(tip, q, u), minus, target.at)
			across := step(from, wide(0).Neg(dot(from, target.along)), target.along)
			return sub(dot(across, across), mul(wide(i.Radius), wide(i.Radius)))
		})
		rise, _ := sub(out, wide(i.Radius)).Float64()
		if i.Kind == rigid.Rim {
			return rise
		}
		return -rise
	default:
		sense := other
		if i.Kind == rigid.FarFace {
			sense = -other
		}
		tip := step(carrier.at, wide(i.Radius), u)
		travel, _ := root(-i.Radius, i.Radius, func(q *big.Float) *big.Float {
			return dot(step(step(tip, q, carrier.along), minus, target.at), target.along)
		}).Float64()
		if i.Kind == rigid.Gap {
			return sense * travel
		}
		return -sense*travel + i.Sag*cos
	}
}

func TestAgainstSearch(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	within := func(size float64) float64 { return size * (2*random.Float64() - 1) }
	kinds := []rigid.Kind{rigid.Rim, rigid.Bore, rigid.Straightedge, rigid.NearFace, rigid.FarFace, rigid.Gap}
	for range 40 {
		p := rigid.Pose{OffsetY: within(5), SlopeY: within(5e-3), OffsetZ: within(5), SlopeZ: within(5e-3)}
		for _, kind := range kinds {
			for _, c := range carriers {
				probe := rigid.Instrument{Kind: kind, Carrier: c.by, Station: within(5000), Radius: 270 + within(230)}
				if kind != rigid.Straightedge && kind != rigid.Gap {
					probe.Sag = math.Abs(within(0.5))
				}
				clock := 180 + within(180)
				what := fmt.Sprintf("kind %d, %s, %v at %.1f of %+v", kind, c.name, probe, clock, p)
				checkNear(t, what, probe.Read(p, clock), searched(probe, p, clock), 1e-13)
			}
		}
	}
}

// With a form the contact must lie on the formed surface itself: the radius
// there is the nominal one and the form at that very angle.
func TestContactLiesOnTheForm(t *testing.T) {
	for _, c := range carriers {
		probe := rigid.Instrument{Carrier: c.by, Station: 200, Radius: 75, Runout: lobed, Mark: 20}
		p := rigid.Pose{OffsetY: 1, SlopeY: 1e-3, OffsetZ: -2, SlopeZ: 2e-3}
		carrier, target := frameOf(rigid.Pose{}), frameOf(p)
		if c.by == rigid.Movable {
			carrier, target = target, carrier
		}
		for _, clock := range clocks {
			sin, cos := math.Sincos(clock * math.Pi / 180)
			u := step(step(vecOf(0, 0, 0), wide(sin), carrier.right), wide(cos), carrier.up)
			foot := step(carrier.at, wide(200), carrier.along)
			from := step(step(foot, wide(75+probe.Read(p, clock)), u), wide(-1), target.at)
			y, _ := dot(from, target.right).Float64()
			z, _ := dot(from, target.up).Float64()
			form := lobed(math.Atan2(y, z)*180/math.Pi - 20)
			checkNear(t, c.name, math.Hypot(y, z), 75+form, 1e-12)
		}
	}
}

func TestMissedTargetIsNaN(t *testing.T) {
	for name, probe := range map[string]rigid.Instrument{
		"the plunger passes beside the rim": {Radius: 1},
		"no radius":                         {},
		"unknown kind":                      {Kind: -1, Radius: 75},
	} {
		if r := probe.Read(rigid.Pose{OffsetY: 2}, 0); !math.IsNaN(r) {
			t.Errorf("%s: got %v, want NaN", name, r)
		}
	}
}
