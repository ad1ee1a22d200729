package units

// Expansion is a coefficient of linear thermal expansion: growth per length and
// kelvin. It counts 1/K.
//
// Held to the last bit: PerKelvin is 1. Not held: PerFahrenheitDegree is 1.8
// rounded, and no coefficient of a metal is a whole number of anything, so
// 9.5e-6*PerFahrenheitDegree at run time may differ in the last bit from the
// text "9.5e-6 1/°F", which is rounded once. The zero value does not grow.
type Expansion float64

// The coefficients that others are counted in.
const (
	PerKelvin           Expansion = 1
	PerFahrenheitDegree Expansion = 9.0 / 5 // rounded to the nearest float64
)
