package units

import "math"

// Clock is a position round a shaft in degrees from 12 o'clock, growing
// clockwise for the observer. Half a minute of the clock is a quarter of a
// degree, so hours, minutes and quarters are exact. Positions a full turn apart
// are the same place but not the same value; Normal brings them together.
type Clock float64

// The positions and steps that others are counted in.
const (
	Twelve Clock = 0
	Three  Clock = 90
	Six    Clock = 180
	Nine   Clock = 270
	Hour   Clock = 30
)

// Normal returns the same place as a value from 0 up to but not including 360.
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

// Opposite returns the place across the shaft, half a turn on.
func (c Clock) Opposite() Clock { return (c + 180).Normal() }

// SinCos returns the sine and the cosine of the position: the horizontal part
// (towards 3 o'clock) and the vertical part (up) of the direction from the
// shaft's centre to c. At the quarters both are exact.
func (c Clock) SinCos() (sin, cos float64) {
	r := float64(c.Normal())
	quarter := math.Round(r / 90)
	sin, cos = math.Sincos((r - float64(quarter*90)) * (math.Pi / 180))
	switch int(quarter) {
	case 1:
		return cos, -sin + 0
	case 2:
		return -sin + 0, -cos
	case 3:
		return -cos, sin
	}
	return sin, cos
}
