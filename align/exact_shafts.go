package align

import "math"

// frame is a shaft in space: its axis, and where 3 and 12 o'clock point on it.
// The three are of length one and at right angles.
type frame struct{ axis, three, twelve vector }

// still is the stationary shaft.
var still = frame{axis: vector{x: 1}, three: vector{y: 1}, twelve: vector{z: 1}}

// towards returns the direction of a clock position.
func (f *frame) towards(sin, cos float64) vector {
	return f.three.times(sin).plus(f.twelve.times(cos))
}

// shafts is the movable shaft as it lies beside the stationary one: where its
// axis meets the plane x = 0, its frame, and about which vector it turns as one of
// its slopes grows.
type shafts struct {
	at    vector
	moved frame
	turns [four]vector
}

// posed puts the movable shaft where the four numbers say. Its 12 o'clock stands
// in the vertical plane through its axis, so its 3 o'clock is level. A slope of
// the axis (1, slopeY, slopeZ) turns it by the angle atan slopeY about the
// vertical, and then by atan(slopeZ/h) about its level 3 o'clock (a positive pitch
// is a negative turn); turns holds the derivatives of these angles.
func posed(beta [four]float64) shafts {
	sy, sz := beta[slopeY], beta[slopeZ]
	h := math.Sqrt(1 + float64(sy*sy))
	n := math.Sqrt(1 + float64(sy*sy) + float64(sz*sz))
	axis := vector{1, sy, sz}.times(1 / n)
	three := vector{-sy, 1, 0}.times(1 / h)
	var turns [four]vector
	turns[slopeY] = still.twelve.times(1 / (h * h)).plus(three.times(sy * sz / (h * n * n)))
	turns[slopeZ] = three.times(-h / (n * n))
	return shafts{
		at:    vector{0, beta[offsetY], beta[offsetZ]},
		moved: frame{axis: axis, three: three, twelve: axis.cross(three)},
		turns: turns,
	}
}

// turned returns how a direction fixed to the movable shaft changes with number j.
func (s *shafts) turned(j int, direction vector) vector { return s.turns[j].cross(direction) }

// carried returns how a point fixed to the movable shaft, given from where its axis
// meets x = 0, moves with number j.
func (s *shafts) carried(j int, point vector) vector {
	moves := s.turned(j, point)
	switch j {
	case offsetY:
		moves.y++
	case offsetZ:
		moves.z++
	}
	return moves
}
