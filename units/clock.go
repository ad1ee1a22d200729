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
	r := math.Mod(float64(c), 360)
	if r < 0 {
		r += 360
	}
	if r == 360 { // a negative too small to tell from a full turn
		r = 0
	}
	return Clock(r + 0) // turns a negative zero into zero
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
// good as math.Sincos within an eighth of a turn. Of a value that is not finite
// both are NaN.
func (c Clock) SinCos() (sin, cos float64) {
	r := float64(c.Normal())
	quarter := math.Round(r / 90)
	sin, cos = math.Sincos((r - float64(quarter*90)) * (math.Pi / 180))
	switch quarter {
	case 1:
		return cos, -sin + 0 // the zeros turn a negative zero into zero
	case 2:
		return -sin + 0, -cos
	case 3:
		return -cos, sin
	}
	return sin, cos
}
