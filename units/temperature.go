package units

// Temperature is a point on the scale, not a difference: two of them cannot be
// added. The zero value is 20 degrees C, the reference temperature of ISO 1.
// Two temperatures are equal under == when their values in degrees C are.
type Temperature struct {
	celsius float64 // zero unless other is set
	other   bool    // not 20 degrees C
}

// TemperatureDifference is the distance between two temperatures, in kelvin.
type TemperatureDifference float64

// The differences that others are counted in.
const (
	Kelvin           TemperatureDifference = 1
	FahrenheitDegree TemperatureDifference = 5.0 / 9 // rounded; 9 of them are 5 K to 2e-16 of it
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
func (t Temperature) Fahrenheit() float64 { return float64(t.Celsius()*9/5) + 32 }

// Minus returns how much warmer t is than u.
func (t Temperature) Minus(u Temperature) TemperatureDifference {
	return TemperatureDifference(t.Celsius() - u.Celsius())
}

// Plus returns the temperature that is d above t.
func (t Temperature) Plus(d TemperatureDifference) Temperature {
	return Celsius(t.Celsius() + float64(d))
}
