package units

import "math"

// Clock is a position round a shaft in degrees from 12 o'clock, growing
// clockwise for the observer. A minute of the clock is half a degree, so hours,
// minutes, quarters and their sums are exact.
//
// Held to the last bit: 60*Minute == Hour, 3*Hour == Three, 12*Hour is a full
// turn, and sine and cosine of the quarters. Not held: the sine of Hour is not
// 0.5 but the float64 below it. Positions a full turn apart are the same place
// but not the same value; Normal brings them together.
//
// The zero value is 12 o'clock.
type Clock float64

// The positions and steps that others are counted in.
const (
	Twelve Clock = 0
	Three  Clock = 90
	Six    Clock = 180
	Nine   Clock = 270
	Hour   Clock = 30
	Minute Clock = 0.5
)

// Normal returns the same place as a value from 0 up to but not including 360.
// Of a value that is not finite it is NaN.
func (c Clock) Normal() Clock {
	if c >= 0 && c < 360 {
		return c + 0 // turns a negative zero into zero
	}
	return c.reduced()
}

func (c Clock) reduced() Clock {
	r := float64(c)
	if !(r >= -360 && r <= 360) {
		r = math.Mod(r, 360)
	}
	if r < 0 {
		r += 360
	}
	if r == 360 { // a full turn, or a negative too small to tell from one
		r = 0
	}
	return Clock(r + 0)
}

// Round returns the place nearest to c that is a whole number of steps from 12
// o'clock, as a normal value: c.Round(Minute) prints as hours and minutes. A
// step that is zero, negative or not finite leaves the place as it is.
func (c Clock) Round(step Clock) Clock {
	return Clock(round(float64(c.Normal()), float64(step))).Normal()
}

// Opposite returns the place across the shaft, half a turn on.
func (c Clock) Opposite() Clock { return (c + 180).Normal() }

// SinCos returns the sine and the cosine of the position: the horizontal part
// (towards 3 o'clock) and the vertical part (up) of the direction from the
// shaft's centre to c. At the quarters both are exact; elsewhere they are as
// good as math.Sincos within an eighth of a turn, with the same bits on every
// platform. Of a value that is not finite both are NaN.
func (c Clock) SinCos() (sin, cos float64) {
	if !(c >= -360 && c <= 360) {
		c = c.Normal()
	}
	quarter := int(float64(c*(1./90))+4.5) - 4                                  // the nearest
	sin, cos = series((float64(c) - float64(90*quarter) + 0) * (math.Pi / 180)) // the zeros turn a negative zero into zero
	switch quarter & 3 {
	case 1:
		return cos, -sin + 0
	case 2:
		return -sin + 0, -cos
	case 3:
		return -cos, sin
	}
	return sin, cos
}

// series returns sin x and cos x for x within an eighth of a turn, by their power
// series up to the terms in x^17 and x^16: the first that is left out is below
// 1/300 of the last place. Every second term is added up by itself, which makes two
// short chains of a long one; the largest part is added last.
func series(x float64) (sin, cos float64) {
	if x == 0 {
		return 0, 1 // at a quarter
	}
	z := float64(x * x)
	zz := float64(z * z)
	even := 1/f3 + float64(zz*(1/f7+float64(zz*(1/f11+float64(zz*(1/f15))))))
	odd := 1/f5 + float64(zz*(1/f9+float64(zz*(1/f13+float64(zz*(1/f17))))))
	sin = x - float64(x*float64(z*(even-float64(z*odd))))
	even = 1/f2 + float64(zz*(1/f6+float64(zz*(1/f10+float64(zz*(1/f14))))))
	odd = 1/f4 + float64(zz*(1/f8+float64(zz*(1/f12+float64(zz*(1/f16))))))
	cos = 1 - float64(z*(even-float64(z*odd)))
	return sin, cos
}

// Factorials.
const (
	f2  = 2.
	f3  = 6.
	f4  = 24.
	f5  = 120.
	f6  = 720.
	f7  = 5040.
	f8  = 40320.
	f9  = 362880.
	f10 = 3628800.
	f11 = 39916800.
	f12 = 479001600.
	f13 = 6227020800.
	f14 = 87178291200.
	f15 = 1307674368000.
	f16 = 20922789888000.
	f17 = 355687428096000.
)
