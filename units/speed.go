package units

// RotationalSpeed is the speed of a shaft. It counts revolutions per minute, so
// whole ones are exact up to 2^53; Hertz == 60*RevolutionPerMinute to the last
// bit. Not held: most speeds in rpm are not a float64 in hertz, 1000 rpm for
// one. The zero value is standing still.
type RotationalSpeed float64

// The rotational speeds that others are counted in.
const (
	RevolutionPerMinute RotationalSpeed = 1
	Hertz               RotationalSpeed = 60
)

// LinearSpeed is the speed of a point, for one a sliding speed in a coupling.
// It counts millimetres per second, so whole ones are exact up to 2^53;
// MetrePerSecond == 1000*MillimetrePerSecond to the last bit. Not held: an inch
// per second is 25.4, which is not a float64, so ten times 0.1*InchPerSecond
// added up is not InchPerSecond. The zero value is standing still.
type LinearSpeed float64

// The linear speeds that others are counted in.
const (
	MillimetrePerSecond LinearSpeed = 1
	MetrePerSecond      LinearSpeed = 1000
	InchPerSecond       LinearSpeed = 25.4 // rounded to the nearest float64
)
