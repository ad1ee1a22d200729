package units

// Expansion is a coefficient of linear thermal expansion: growth per length and
// kelvin.
type Expansion float64

// The coefficients that others are counted in.
const (
	PerKelvin           Expansion = 1
	PerFahrenheitDegree Expansion = 9.0 / 5
)
