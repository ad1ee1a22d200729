package units

// Temperature is a point on the scale, not a difference: two of them cannot be
// added, only a TemperatureDifference to one. It holds degrees C. The zero
// value is 20 degrees C, the reference temperature of ISO 1. Two temperatures
// are equal under == when their values in degrees C are.
//
// Held to the last bit: Fahrenheit(68) == Celsius(20) == Temperature{},
// Fahrenheit(32) == Celsius(0), Fahrenheit(212) == Celsius(100). Not held: most
// degrees F are not a float64 in degrees C, so Fahrenheit(f).Fahrenheit() may
// differ from f in the last bits, and so may Fahrenheit(f), which rounds three
// times, from the same temperature read as text, which is rounded once.
type Temperature struct {
	celsius float64 // zero unless other is set
	other   bool    // not 20 degrees C
}

// TemperatureDifference is the distance between two temperatures. It counts
// kelvin.
//
// Held to the last bit: Kelvin is 1, 9*FahrenheitDegree == 5*Kelvin, and
// t.Plus(d).Minus(t) == d for whole degrees. Not held: a degree F is not a
// float64, so nine of them added up one by one are not 5*Kelvin. The zero value
// is no difference.
type TemperatureDifference float64

// The differences that others are counted in.
const (
	Kelvin           TemperatureDifference = 1
	FahrenheitDegree TemperatureDifference = 5.0 / 9 // rounded to the nearest float64
)

// Celsius returns the temperature of c degrees C.
func Celsius(c float64) Temperature {
	if c == 20 {
		return Temperature{}
	}
	return Temperature{celsius: c, other: true}
}

// Fahrenheit returns the temperature of f degrees F. Only a point takes the
// offset of 32; a difference in degrees F converts by 5/9 alone.
func Fahrenheit(f float64) Temperature { return Celsius((f - 32) * 5 / 9) }

// Celsius returns t in degrees C.
func (t Temperature) Celsius() float64 {
	if !t.other {
		return 20
	}
	return t.celsius
}

// Fahrenheit returns t in degrees F.
func (t Temperature) Fahrenheit() float64 { return t.In(InFahrenheit) }

// Minus returns how much warmer t is than u.
func (t Temperature) Minus(u Temperature) TemperatureDifference {
	return TemperatureDifference(t.Celsius() - u.Celsius())
}

// Plus returns the temperature that is d above t.
func (t Temperature) Plus(d TemperatureDifference) Temperature {
	return Celsius(t.Celsius() + float64(d))
}
