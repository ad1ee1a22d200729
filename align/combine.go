package align

import (
	"math"

	"example.org/collinear/internal/check"
)

// Part is one independent part of a standard uncertainty, in the unit of the
// whole: what an input is uncertain by, times how much the whole changes with it.
// A part that lies anywhere within +-a has a/sqrt 3, so the step d of a dial that
// is rounded to its marks has d/sqrt 12 (JCGM 100:2008, 4.3.7 and F.2.2.1).
type Part[Q ~float64] struct {
	U   Q       `json:"u"`
	DoF float64 `json:"dof,omitzero"` // degrees of freedom, where it comes from a scatter; zero: known
}

// Combine returns the standard uncertainty that independent parts make together,
// such as the step of a dial, its calibration and how it repeats, and its degrees
// of freedom by the formula of Welch and Satterthwaite; zero where none are to be
// counted:
//
//	u^2 = sum u_i^2        u^4/dof = sum u_i^4/dof_i
//
// JCGM 100:2008, 5.1.2 and G.4.1. It refuses a part that is negative or not finite
// (at /parts/2/u) and degrees of freedom as [CoverageFactor] does (/parts/2/dof).
func Combine[Q ~float64](parts ...Part[Q]) (u Q, dof float64, err error) {
	var faults check.Faults
	var root check.Path
	list := root.Field("parts")
	sum, fourth := 0.0, 0.0
	for i, p := range parts {
		part := list.Index(i)
		check.Uncertainty(&faults, part.Field("u"), p.U)
		checkFreedom(&faults, part.Field("dof"), p.DoF)
		square := float64(p.U * p.U)
		sum += square
		if p.DoF != 0 {
			fourth += float64(square*square) / p.DoF
		}
	}
	if err := faults.Err(); err != nil {
		return 0, 0, err
	}
	return Q(math.Sqrt(sum)), welchSatterthwaite(sum, fourth), nil
}

// welchSatterthwaite returns the degrees of freedom of a variance, of whose parts
// the sum of u_i^4/dof_i is given (JCGM 100:2008, G.4.1). Zero: none to count.
func welchSatterthwaite(variance, fourth float64) float64 {
	const noEnd = 1e9 // more make no difference to any factor
	dof := float64(variance*variance) / fourth
	if !(dof <= noEnd) {
		return 0
	}
	return dof
}
