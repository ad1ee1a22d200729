package units

// Length is a distance, a reading or a displacement. It counts nanometres.
//
// A float64 holds every whole number up to 2^53 exactly, so each of these
// identities holds to the last bit, and so do sums of a few of them:
//
//	Mil = 25 400 nm   0.01 mm = 10 000 nm   1/64 in = 396 875 nm
//	Mil + 2*Mil == 3*Mil   2.5*Mil == 63 500 nm   1000*Mil == Inch   12*Inch == Foot
//
// Not held: a third of an inch is not a whole number of nanometres, so Inch/3*3
// happens to give Inch back but Inch/41*41 does not. And a decimal fraction
// that is no float64 is rounded before it is multiplied, constants too: 1.1*Mil
// misses 27 940 nm by 4e-12 nm. The text "1.1 mil", 11*Mil/10 and a Round to
// whole nanometres hit it.
//
// Whole nanometres stay exact up to 9 007 km. The zero value is no length.
type Length float64

// The lengths that others are counted in.
const (
	Nanometre  Length = 1
	Micrometre Length = 1e3
	Millimetre Length = 1e6
	Centimetre Length = 1e7
	Metre      Length = 1e9
	Mil        Length = 25_400     // a thousandth of an inch, also called a thou
	Inch       Length = 25_400_000 // 25.4 mm exactly, by the international agreement of 1959 (from memory)
	Foot       Length = 12 * Inch
)

// Round returns the multiple of step that is nearest to l, halves away from
// zero. Limits and sums of shims are compared after rounding, so that what was
// entered as equal compares equal. The answer is the float64 nearest to that
// multiple, also where l is so large that it is not exact; beyond the largest
// float64 it is infinite. A step that is zero, negative or not finite leaves l
// as it is, and so does any step an l that is not finite.
func (l Length) Round(step Length) Length {
	return Length(round(float64(l), float64(step)))
}

// Above tells whether l is above a limit when both are rounded to the nanometre: what
// stands exactly on its limit is not above it, though sums and conversions round in
// their last bits. What is no number is above nothing.
func (l Length) Above(limit Length) bool { return l.Round(Nanometre) > limit.Round(Nanometre) }

// Per returns the slope of a rise l over a run. A run of zero gives an
// infinity, or NaN if l is zero as well.
func (l Length) Per(run Length) Slope { return Slope(l / run) }
