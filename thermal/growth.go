package thermal

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// DefaultStandOff is how far [Growth] lets one of three or more supports stand
// off the line through all of them. No published figure was found: it is ours,
// the 2 mil (0.0508 mm) at which common practice, without a source, calls a foot
// soft.
const DefaultStandOff = 2 * units.Mil

// Growth returns how the shaft's centreline moves from cold to running: the
// line through the growth of at least two supports, with its covariance. Two
// supports give the line that passes both; through more it is laid by
// unweighted least squares, and refused where a support stands off it by more
// than DefaultStandOff, both planes together. How far each stands off is its
// [Support.Growth] less the line at its station; the covariance holds what was
// stated, and nothing of that.
//
// It refuses, with paths from /supports:
//
//   - Missing: a second support, what tells how a support moves, a height, a
//     track or a coefficient of zero;
//   - Duplicate: a name that another support has;
//   - Conflict: supports less than 1 mm apart along the shaft, a support whose
//     movement is told in two ways, a rise beside a profile, a cold temperature
//     without one, spots that do not go up, a support off the line;
//   - NotFinite: numbers that are none;
//   - OutOfRange: a height or a track below zero, a coefficient above 1e-3 per K
//     (an e-6 was forgotten) or below -2e-6 per K (there are alloys and laminates
//     that shrink a little), a rise beyond 2000 K, a temperature below absolute
//     zero, a spot outside its piece, a negative uncertainty, more than 100 supports.
func Growth(supports ...Support) (align.Estimate, error) {
	return GrowthWithin(DefaultStandOff, supports...)
}

// GrowthWithin is [Growth] with the caller's own limit for how far a support may
// stand off the line; what is compared is rounded to a nanometre. A limit that is
// negative or not finite is refused at /limit.
func GrowthWithin(limit units.Length, supports ...Support) (align.Estimate, error) {
	if err := checkGrowth(limit, supports); err != nil {
		return align.Estimate{}, err
	}
	line, err := combine(supports, sharesOf(supports))
	if err != nil {
		return align.Estimate{}, tooLarge("/supports")
	}
	if err := checkStandOff(limit, supports, line.Value); err != nil {
		return align.Estimate{}, err
	}
	return line, nil
}

// Growth returns how the shaft's centreline moves at this support alone, and the
// standard uncertainty in each plane; that is NaN where none is stated. It
// refuses what the [Growth] of a machine refuses, with paths from the support
// (/pieces/0/height).
func (s Support) Growth() (by, u align.Vector, err error) {
	if err := s.check(); err != nil {
		return align.Vector{}, align.Vector{}, err
	}
	alone, err := combine([]Support{s}, []share{{offset: 1}})
	if err != nil {
		return align.Vector{}, align.Vector{}, tooLarge("")
	}
	by, u = alone.At(0)
	return by, u, nil
}

// combine adds up what the supports' movements do to the line. Its error is
// that the sum cannot be reckoned with.
func combine(supports []Support, shares []share) (align.Estimate, error) {
	var line align.Centreline
	for i := range supports {
		line = line.Plus(shares[i].of(supports[i].movement()))
	}
	cov, err := covariance(supports, shares)
	if err != nil {
		return align.Estimate{}, err
	}
	sum := align.Estimate{Value: line, Cov: cov}
	return sum, checkSum(sum)
}

// share is what the movement of one support contributes to the line through
// all of them: so much of it to the offset, and so much per nanometre to the
// slope.
type share struct{ offset, slope float64 }

func (s share) of(v align.Vector) align.Centreline {
	plane := func(w units.Length) align.Line {
		return align.Line{Offset: units.Length(s.offset * float64(w)), Slope: units.Slope(s.slope * float64(w))}
	}
	return align.Centreline{Horizontal: plane(v.Horizontal), Vertical: plane(v.Vertical)}
}

// sharesOf gives the shares in the line of least squares, for n supports at x
// about their mean m,
//
//	slope = sum (x-m) w / sum (x-m)^2        offset = sum w/n - m slope
//
// which for two supports is the line that passes both.
//
// Stations are counted from the first support: of supports that stand close
// together and far away, the digits in which they differ would be lost.
func sharesOf(supports []Support) []share {
	n := float64(len(supports))
	from := func(i int) float64 { return float64(supports[i].X - supports[0].X) }
	var mean, square float64
	for i := range supports {
		mean += from(i) / n
	}
	for i := range supports {
		d := from(i) - mean
		square += float64(d * d)
	}
	middle := float64(supports[0].X) + mean
	shares := make([]share, len(supports))
	for i := range shares {
		slope := (from(i) - mean) / square
		shares[i] = share{offset: 1/n - float64(middle*slope), slope: slope}
	}
	return shares
}
