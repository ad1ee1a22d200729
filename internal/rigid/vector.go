package rigid

import "math"

// vector is a point or a direction in x, y, z.
type vector struct{ x, y, z float64 }

func (v vector) plus(w vector) vector { return vector{v.x + w.x, v.y + w.y, v.z + w.z} }

func (v vector) minus(w vector) vector { return vector{v.x - w.x, v.y - w.y, v.z - w.z} }

func (v vector) times(f float64) vector {
	return vector{float64(f * v.x), float64(f * v.y), float64(f * v.z)}
}

func (v vector) dot(w vector) float64 {
	return float64(v.x*w.x) + float64(v.y*w.y) + float64(v.z*w.z)
}

// sincos returns sine and cosine of a clock angle in degrees, exact at the
// quarters.
func sincos(clock float64) (sin, cos float64) {
	quarters := math.Round(clock / 90)
	s, c := math.Sincos((clock - float64(90*quarters)) * (math.Pi / 180))
	switch math.Mod(quarters, 4) {
	case 1, -3:
		return c, -s
	case 2, -2:
		return -s, -c
	case 3, -1:
		return -c, s
	}
	return s, c
}
