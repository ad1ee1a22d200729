package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// What a fit says of an uncertainty of each single angle, against changing each
// angle by hand and fitting again: the squares of all of them add up. Residuals
// are there, so that the share of a reading that misses the fit is seen too.
func TestAnglesByDifferences(t *testing.T) {
	for _, kind := range everyKind {
		t.Run(kind.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				sets := drawShared(t, kind)
				sets[0].Readings = drawErrors(t, sets[0].Readings)
				const u = 0.02
				want := matrix(mustFit(t, sets...).Cov)
				for k := range sets[0].Readings {
					turn := func(s *align.Set, h float64) { s.Readings[k].At += units.Clock(h * 180 / math.Pi) }
					d := derivative(t, sets, 0, turn, 0.001)
					for i := range want {
						for j := range want {
							want[i][j] += u * u * d[i] * d[j]
						}
					}
				}
				doubtful := each(sets, func(*align.Set) {})
				doubtful[0].U.Angle = u
				nearMatrix(t, "covariance", matrix(mustFit(t, doubtful...).Cov), want, 1e-6)
			})
		})
	}
}

// A dial of 12 o'clock with 1 mm of offset, read at the quarters: an angle that
// is wrong by e changes what a dial reads at 3 and 9 by w e each, and so half
// their difference by w e/sqrt 2; at 12 and 6 by nothing.
func TestAngleOnAQuarter(t *testing.T) {
	sets := state(read(t, line(0, 0, 1, 0), reverse(), quarters...), 1e-3*um)
	for i := range sets {
		sets[i].U.Angle = 0.01
	}
	_, u := mustFit(t, sets...).At(40 * mm)
	near(t, "sideways", u.Horizontal, units.Length(10/math.Sqrt2)*um, um*1e-3)
	near(t, "in height", u.Vertical, 0, um*1e-2)
}

// Where no uncertainty of the readings is stated their scatter holds that of the
// angles already.
func TestAnglesAreInTheScatter(t *testing.T) {
	sets := read(t, caseA, reverse(), even(7, 0, 200)...)
	sets[0].Readings[3].Value += 3 * um
	want := mustFit(t, sets...)
	for i := range sets {
		sets[i].U.Angle = 0.1
	}
	if got := mustFit(t, sets...); got.Cov != want.Cov {
		t.Errorf("got %v, want %v", got.Cov.Standard(), want.Cov.Standard())
	}
}
