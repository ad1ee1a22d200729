package units

// RotationalSpeed is the speed of a shaft in revolutions per minute.
type RotationalSpeed float64

// The rotational speeds that others are counted in.
const (
	RevolutionPerMinute RotationalSpeed = 1
	Hertz               RotationalSpeed = 60
)

// LinearSpeed is the speed of a point, for one a sliding speed in a coupling,
// in millimetres per second.
type LinearSpeed float64

// The linear speeds that others are counted in.
const (
	MillimetrePerSecond LinearSpeed = 1
	MetrePerSecond      LinearSpeed = 1000
	InchPerSecond       LinearSpeed = 25.4
)
