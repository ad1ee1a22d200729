package rigid

import "math"

// Pose is where the movable axis lies relative to the stationary one: the line
// w(x) = offset + slope*x in each plane. Offsets are in millimetres at x = 0 and
// slopes are ratios dw/dx; Y is positive towards 3 o'clock, Z upwards. The zero
// Pose is in line.
type Pose struct{ OffsetY, SlopeY, OffsetZ, SlopeZ float64 }

// At returns where the movable axis passes the plane x, in millimetres from the
// stationary axis towards 3 o'clock and upwards.
func (p Pose) At(x float64) (y, z float64) {
	return p.OffsetY + float64(p.SlopeY*x), p.OffsetZ + float64(p.SlopeZ*x)
}

// spacer returns the pose of a spacer of the given length, whose axis runs from
// the stationary axis at x = -length/2 to the point of the movable axis at
// x = +length/2.
func (p Pose) spacer(length float64) Pose {
	y, z := p.At(length / 2)
	return Pose{OffsetY: y / 2, SlopeY: y / length, OffsetZ: z / 2, SlopeZ: z / length}
}

// body is a rigid body of revolution with directions of length one. Its own
// stations count from at, where its axis passes x = 0.
type body struct {
	at    vector
	along vector // the axis, towards the movable machine
	right vector // its 3 o'clock, level
	up    vector // its 12 o'clock, in the vertical plane through the axis
}

// body returns the body whose axis lies in the pose.
func (p Pose) body() body {
	level := 1 + float64(p.SlopeY*p.SlopeY) // squared length of (1, SlopeY, 0)
	whole := level + float64(p.SlopeZ*p.SlopeZ)
	return body{
		at:    vector{0, p.OffsetY, p.OffsetZ},
		along: vector{1, p.SlopeY, p.SlopeZ}.times(1 / math.Sqrt(whole)),
		right: vector{-p.SlopeY, 1, 0}.times(1 / math.Sqrt(level)),
		up:    vector{-p.SlopeZ, -p.SlopeY * p.SlopeZ, level}.times(1 / math.Sqrt(level*whole)),
	}
}

// towards returns the direction from the body's axis towards its own clock
// angle.
func (b body) towards(clock float64) vector {
	sin, cos := sincos(clock)
	return b.right.times(sin).plus(b.up.times(cos))
}

// station returns the point of the axis at a station along it.
func (b body) station(s float64) vector { return b.at.plus(b.along.times(s)) }

// clock returns the clock angle round the body, in degrees, at which a point
// lies whose position is given from the body's own at.
func (b body) clock(v vector) float64 {
	return math.Atan2(v.dot(b.right), v.dot(b.up)) * (180 / math.Pi)
}

// full brings an angle in degrees into 0 up to, but not including, 360.
func full(degrees float64) float64 {
	degrees = math.Mod(degrees, 360)
	if degrees < 0 {
		degrees += 360
	}
	return math.Mod(degrees, 360) // a hair below zero has become 360 itself
}
