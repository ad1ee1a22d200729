package units

// Expansion is a coefficient of linear thermal expansion: growth per length and
// kelvin. It counts 1/K.
//
// Held to the last bit: PerKelvin is 1. Not held: PerFahrenheitDegree is 1.8
// rounded, and no coefficient of a metal is a whole number of anything, so what
// is entered as 11.34e-6 per kelvin and as 6.3e-6 per degree F may differ in the
// last bit. The zero value does not grow.
type Expansion float64

// The coefficients that others are counted in.
const (
	PerKelvin           Expansion = 1
	PerFahrenheitDegree Expansion = 9.0 / 5 // rounded to the nearest float64
)
