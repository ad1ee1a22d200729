// Package units holds the quantities of shaft alignment and the one type of
// fault that the whole module reports.
//
// Every quantity is a type of its own, so that a length cannot be passed where
// a slope is wanted. Most are a float64 that counts a small unit, so that what
// is entered in either system of units is a whole number and adds up exactly.
//
// # Text
//
// Text is what stands in JSON strings, map keys and flags. Each quantity Q has
// ParseQ, MustParseQ, String, MarshalText and UnmarshalText, and String loses
// nothing: what is printed is read as the same value, to the bit (a negative
// zero comes back as zero). Text and In show a quantity in a unit of choice,
// and those units have names that can be read and printed as well.
//
// A text is an optional sign, a number, at most one space, and a unit, in at
// most 64 bytes of which nothing is left over. The number is decimal: digits
// with at most one point that has a digit after it (".5" but not "5."), and an
// exponent of at most three digits ("6.3e-6"). Lengths in inches and feet may
// have fractions, see ParseLength; positions may be hours and minutes, see
// ParseClock. Units are a closed list for each quantity and are case sensitive.
// The micro sign may be either character or u, the degree sign may be deg, and
// a mil may be a thou.
//
// Nothing is repaired: a unit missing, a comma for a point, a space too many, a
// value beyond the range of a float64 or so small that it would become zero are
// each refused with a *Fault that quotes the text and tells which function
// wanted what, at which byte (counted from 0).
//
// What a text denotes is worked out as an exact ratio and rounded once, so the
// result is the same on every machine.
package units
