package align

// vector is one in space: x along the stationary axis, y towards 3 o'clock, z up.
type vector struct{ x, y, z float64 }

func (a vector) plus(b vector) vector { return vector{a.x + b.x, a.y + b.y, a.z + b.z} }

func (a vector) minus(b vector) vector { return vector{a.x - b.x, a.y - b.y, a.z - b.z} }

func (a vector) times(k float64) vector {
	return vector{float64(k * a.x), float64(k * a.y), float64(k * a.z)}
}

func (a vector) dot(b vector) float64 {
	return float64(a.x*b.x) + float64(a.y*b.y) + float64(a.z*b.z)
}

func (a vector) cross(b vector) vector {
	return vector{
		float64(a.y*b.z) - float64(a.z*b.y),
		float64(a.z*b.x) - float64(a.x*b.z),
		float64(a.x*b.y) - float64(a.y*b.x),
	}
}
