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

// The classes of table 2-4 of EASA AR100-2015, IEC machines (read), in
// millimetres: the largest diameter of each, and its total indicated runout. The
// first class begins above runoutFrom.
var runoutClasses = [...]struct{ upTo, limit units.Length }{
	{10 * units.Millimetre, 30 * units.Micrometre},
	{18 * units.Millimetre, 35 * units.Micrometre},
	{30 * units.Millimetre, 40 * units.Micrometre},
	{50 * units.Millimetre, 50 * units.Micrometre},
	{80 * units.Millimetre, 60 * units.Micrometre},
	{120 * units.Millimetre, 70 * units.Micrometre},
	{180 * units.Millimetre, 80 * units.Micrometre},
	{250 * units.Millimetre, 90 * units.Micrometre},
	{315 * units.Millimetre, 100 * units.Micrometre},
	{400 * units.Millimetre, 110 * units.Micrometre},
	{500 * units.Millimetre, 125 * units.Micrometre},
	{630 * units.Millimetre, 140 * units.Micrometre},
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
		if over < size && size <= class.upTo {
			return RunoutLimit{over, class.upTo, class.limit, runoutSource}, nil
		}
		over = class.upTo
	}
	faults.Add(units.OutOfRange, at, diameter, "a diameter over 6 mm up to 630 mm, which the table has")
	return RunoutLimit{}, faults.Err()
}
