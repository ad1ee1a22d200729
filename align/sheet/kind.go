package sheet

import "example.org/collinear/units"

// kind is what sort of number a line or an input is: its units, the last place that
// a hand keeps, and the words that its sign stands for.
type kind uint8

const (
	reading      kind = iota // of a dial or a gauge, with the sign that it shows
	height                   // of a shaft: positive is high
	aside                    // of a shaft: positive is towards 3 o'clock
	raise                    // a move up or down
	push                     // a move to the side
	thickness                // of a shim, or another length without a direction
	climb                    // a vertical slope between the shafts: positive opens at 6 o'clock
	swing                    // a horizontal one: positive opens at 9 o'clock
	rising                   // a vertical slope of one machine's own shaft
	drifting                 // a horizontal one
	steepness                // a slope without a direction
	openVertical             // a gap: positive is open at 6 o'clock
	openSideways             // a gap: positive is open at 9 o'clock
	warming                  // a difference of temperatures
	station                  // a distance off a tape
	expansion                // a coefficient
	temperature              // a point on the scale, in degrees C
	rotation                 // a shaft speed
	sliding                  // a linear speed
	clock                    // a clock position
)

// nature is what the numbers of a kind are made of.
type nature struct {
	text    func(x float64, s System, digits int) string
	parse   func(string) (float64, error) // of kinds that a line can be
	digits  [2]int                        // after the point, as a hand rounds: metric, inch
	keeps   float64                       // the last place that a hand keeps in a line that it does not write down
	words   [2]string                     // what a positive and a negative sign stand for; % is the amount
	mirrors bool                          // the words exchange with the end from which the crew looks
}

// The last places that a hand is taken to keep in lines that it does not write down.
// No figure was found for them, these are ours.
const (
	keepsLength  = 1 * units.Micrometre
	keepsSlope   = 1e-6 // a micrometre in a metre
	keepsWarming = 0.1  // K
)

var natures = [...]nature{
	reading:      small(3, 2),
	height:       small(3, 2).says("% high", "% low"),
	aside:        small(3, 2).says("% towards 3 o'clock", "% towards 9 o'clock").mirrored(),
	raise:        small(2, 1).says("raise %", "lower %"),
	push:         small(2, 1).says("push % towards 3 o'clock", "push % towards 9 o'clock").mirrored(),
	thickness:    small(3, 2),
	climb:        steep().says("% open at 6 o'clock", "% open at 12 o'clock"),
	swing:        steep().says("% open at 9 o'clock", "% open at 3 o'clock").mirrored(),
	rising:       steep().says("% rising along x", "% falling along x"),
	drifting:     steep().says("% to 3 o'clock along x", "% to 9 o'clock along x").mirrored(),
	steepness:    steep(),
	openVertical: small(3, 2).says("% open at 6 o'clock", "% open at 12 o'clock"),
	openSideways: small(3, 2).says("% open at 9 o'clock", "% open at 3 o'clock").mirrored(),
	warming: {
		text:   in(units.TemperatureDifference.Text, units.InKelvins, units.InFahrenheitDegrees),
		parse:  number(units.ParseTemperatureDifference),
		digits: [2]int{1, 1}, keeps: keepsWarming,
	},
	station:     {text: in(units.Length.Text, units.InMillimetres, units.InInches), digits: [2]int{3, 5}},
	expansion:   {text: in(units.Expansion.Text, units.InMicrometresPerMetreKelvin, units.InMilsPerInchFahrenheitDegree), digits: [2]int{3, 6}},
	temperature: {text: inDegrees, digits: [2]int{2, 2}},
	rotation:    {text: in(units.RotationalSpeed.Text, units.InRevolutionsPerMinute, units.InRevolutionsPerMinute), digits: [2]int{1, 1}},
	sliding:     {text: in(units.LinearSpeed.Text, units.InMillimetresPerSecond, units.InInchesPerSecond), digits: [2]int{3, 4}},
	clock:       {text: onClock},
}

// small are lengths of the size of readings.
func small(metric, inch int) nature {
	return nature{
		text:   in(units.Length.Text, units.InMillimetres, units.InMils),
		parse:  number(units.ParseLength),
		digits: [2]int{metric, inch},
		keeps:  float64(keepsLength),
	}
}

func steep() nature {
	return nature{
		text:   in(units.Slope.Text, units.InMillimetresPerMetre, units.InMilsPerInch),
		parse:  number(units.ParseSlope),
		digits: [2]int{3, 3},
		keeps:  keepsSlope,
	}
}

func (n nature) says(positive, negative string) nature {
	n.words = [2]string{positive, negative}
	return n
}

func (n nature) mirrored() nature {
	n.mirrors = true
	return n
}

// in shows a quantity in one unit or the other.
func in[Q ~float64, U any](text func(Q, U, int) string, metric, inch U) func(float64, System, int) string {
	return func(x float64, s System, digits int) string {
		if s == Inch {
			return text(Q(x), inch, digits)
		}
		return text(Q(x), metric, digits)
	}
}

func inDegrees(x float64, s System, digits int) string {
	unit := units.InCelsius
	if s == Inch {
		unit = units.InFahrenheit
	}
	return units.Celsius(x).Text(unit, digits)
}

// onClock shows a position to the minute, or to hundredths of a degree between.
func onClock(x float64, _ System, _ int) string { return units.Clock(x).Normal().Round(0.01).String() }

func number[Q ~float64](parse func(string) (Q, error)) func(string) (float64, error) {
	return func(s string) (float64, error) {
		q, err := parse(s)
		return float64(q), err
	}
}
