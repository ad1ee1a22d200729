package flange

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// RunoutLimit is the total indicator reading up to which a mounting flange is
// accepted, for spigots of one class of diameters: the same for the eccentricity of
// the spigot and for the runout of the face. The zero value is none.
type RunoutLimit struct {
	From   units.Length `json:"from"`   // the class begins above this diameter, the first with it
	UpTo   units.Length `json:"up_to"`  // and ends with this one
	Limit  units.Length `json:"limit"`  // total indicator reading over a full turn
	Source string       `json:"source"` // the work and its edition
}

const runoutSource = "EASA AR100-2020, table 2-11, IEC flange-mounted machines (read)"

// The classes of table 2-11 of EASA AR100-2020, IEC flange-mounted machines (read):
// the largest spigot diameter of each, and its limit. The first class begins with
// runoutFrom.
var runoutClasses = [...]struct{ millimetres, micrometres units.Length }{
	{100, 80},
	{230, 100},
	{450, 125},
	{800, 160},
	{1250, 200},
	{2000, 250},
	{2240, 315},
}

const runoutFrom = 40 * units.Millimetre

// Runout returns the limit for the eccentricity of the spigot and for the runout of
// the face of an IEC flange-mounted machine, by the diameter of its spigot, as EASA
// AR100-2020 prints it in table 2-11 (read).
//
// The table has each inner boundary in two classes, 100 mm in 40 to 100 and in 100 to
// 230, and does not tell which of them counts, as far as it was read. Here the lower
// class has it, whose limit is the smaller; that choice is ours. The diameter is
// rounded to 1 nm before it is sorted.
//
// It says nothing about alignment: runout is a property of one machine, and a flange
// beyond it is put right first.
//
// It refuses a diameter that is not given (Missing) or not finite, and one outside
// the table, which goes from 40 to 2240 mm (OutOfRange), each at /spigot.
func Runout(spigot units.Length) (RunoutLimit, error) {
	var faults check.Faults
	var root check.Path
	at := root.Field("spigot")
	if !check.Positive(&faults, at, spigot, "a diameter") {
		return RunoutLimit{}, faults.Err()
	}
	from, size := runoutFrom, spigot.Round(units.Nanometre)
	for _, class := range runoutClasses {
		upTo := class.millimetres * units.Millimetre
		if from <= size && size <= upTo {
			return RunoutLimit{from, upTo, class.micrometres * units.Micrometre, runoutSource}, nil
		}
		from = upTo
	}
	faults.Add(units.OutOfRange, at, spigot, "a diameter from 40 to 2240 mm, which the table has")
	return RunoutLimit{}, faults.Err()
}

// Within tells whether a total indicator reading over a full turn, on the spigot or
// on the face, is within the limit when both are rounded to 1 nm: what stands on its
// limit is within. It refuses a reading that is negative or not finite (at /found),
// and a limit that is none (Missing, at /limit): its zero would be held against
// everything.
func (l RunoutLimit) Within(found units.Length) (bool, error) {
	var faults check.Faults
	var root check.Path
	check.NotNegative(&faults, root.Field("found"), found, "a total indicator reading")
	check.Positive(&faults, root.Field("limit"), l.Limit, "a limit")
	if err := faults.Err(); err != nil {
		return false, err
	}
	return !found.Above(l.Limit), nil
}
