package tolerance

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// RunoutLimit is the total indicated runout up to which a shaft extension is
// accepted, for diameters over one length up to and with another. The zero value
// is none.
type RunoutLimit struct {
	Over   units.Length `json:"over"`   // the class begins above this diameter
	UpTo   units.Length `json:"up_to"`  // and ends with this one
	Limit  units.Length `json:"limit"`  // total indicator reading over a full turn
	Source string       `json:"source"` // the work and its edition
}

const runoutSource = "EASA AR100-2015, table 2-4, IEC machines (read)"

// The classes of table 2-4 of EASA AR100-2015, IEC machines (read): the largest
// diameter of each, and its total indicated runout. The first class begins above
// runoutFrom.
var runoutClasses = [...]struct{ millimetres, micrometres units.Length }{
	{10, 30},
	{18, 35},
	{30, 40},
	{50, 50},
	{80, 60},
	{120, 70},
	{180, 80},
	{250, 90},
	{315, 100},
	{400, 110},
	{500, 125},
	{630, 140},
}

const runoutFrom = 6 * units.Millimetre

// ShaftRunout returns the limit for the runout of a shaft extension of an IEC
// machine, by its diameter, as EASA AR100-2015 prints it in table 2-4 (read). The
// diameter is rounded to the Resolution before it is sorted into its class. It
// says nothing about alignment: runout is a property of one shaft, and a shaft
// beyond it is put right first.
//
// It refuses a diameter that is not given or not finite, and one outside the
// table, which goes from above 6 mm up to 630 mm (OutOfRange), each at /diameter.
func ShaftRunout(diameter units.Length) (RunoutLimit, error) {
	var faults check.Faults
	var root check.Path
	at := root.Field("diameter")
	if !check.Positive(&faults, at, diameter, "a diameter") {
		return RunoutLimit{}, faults.Err()
	}
	over, size := runoutFrom, diameter.Round(Resolution)
	for _, class := range runoutClasses {
		upTo := class.millimetres * units.Millimetre
		if over < size && size <= upTo {
			return RunoutLimit{over, upTo, class.micrometres * units.Micrometre, runoutSource}, nil
		}
		over = upTo
	}
	faults.Add(units.OutOfRange, at, diameter, "a diameter over 6 mm up to 630 mm, which the table has")
	return RunoutLimit{}, faults.Err()
}
