package arc

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"gonum.org/v1/gonum/mathext"
)

// Agreement tells whether two measurements of one centreline agree, all four
// numbers together.
type Agreement struct {
	Difference align.Estimate // the first less the second
	Compared   int            // how many numbers are uncertain: the rank of the covariance of the difference, 0 to 4
	Apart      bool           // they differ where both are exact, so that no chance explains it
	Chi2       float64        // chi-square: the difference against its covariance; NaN when the basis is Unknown
	DoF        float64        // degrees of freedom behind that covariance; zero: none to count
	P          float64        // probability of a difference as large by chance alone, of two right measurements; NaN when the basis is Unknown
}

// Compare tells whether two independent measurements of one centreline agree:
// before and after a coupling was closed, two crews, dials and sensors. A small P,
// by common practice below 0.05, says that a difference like this is hardly chance
// (no source: it is convention); a large one, that nothing speaks against both.
// What both have in common, a tape or a bracket, is counted as independent: the
// difference looks less sure than it is, and P is too large.
//
// With d the difference and V the sum of both covariances
//
//	Chi2 = d' V^-1 d
//
// over the Compared directions in which V is not zero. Where nothing comes from a
// scatter, P is that of the chi-square distribution with as many degrees of
// freedom. Where a part does, V is known by its size alone from DoF degrees of
// freedom, and Chi2/Compared follows Fisher's F with Compared and DoF: exactly for
// one fit with its own scatter against what is exact, since its readings tell how
// large V is and not its shape (Draper and Smith, Applied Regression Analysis,
// joint confidence region; from memory). That is why it is not Hotelling's
// T-square, whose V is estimated whole. Of two scatters, or one beside what was
// stated, DoF is that of Welch and Satterthwaite (JCGM 100:2008, G.4.1) for the
// combination V^-1 d of the four numbers, the one in which both differ most (after
// Yao, Biometrika 52 (1965) 139, from memory):
//
//	u^4/DoF = u_a^4/DoF_a + u_b^4/DoF_b
//
// where DoF_a is what align.Covariance.EffectiveDoF gives. This is approximate: in
// simulations of right measurements P was below 0.05 in 3 to 9 % of cases where one
// side had 2 degrees of freedom, and in 5 % where both had 14.
//
// Of exact estimates the difference is zero, to rounding, or they are Apart, with P
// one or zero; so too for one direction of several. A direction counts as exact
// where its standard uncertainty is a millionth of those of the numbers in it. With
// the basis Unknown there is a difference, and nothing to hold it against. It
// refuses an estimate that is not sound, with paths below /a and /b.
func Compare(a, b align.Estimate) (Agreement, error) {
	if err := checkPair(a, b); err != nil {
		return Agreement{}, err
	}
	return compare(a, b), nil
}

// compare compares sound estimates.
func compare(a, b align.Estimate) Agreement {
	c := Agreement{Difference: a.Minus(b)}
	if c.Difference.Cov.Basis == align.Unknown {
		c.Chi2, c.P = math.NaN(), math.NaN()
		return c
	}
	p := newPool(a, b)
	c.Compared, c.Apart = len(p.known), p.apart
	c.Chi2 = min(p.chi2, math.MaxFloat64)
	c.DoF = p.freedom(a.Cov, b.Cov)
	c.P = c.probability()
	return c
}

// probability is that of a Chi2 as large or larger.
func (c *Agreement) probability() float64 {
	const many = 1e8 // from here on F and chi-square agree to 1e-6 of themselves
	p := float64(c.Compared)
	if c.Apart {
		return 0
	}
	if c.Chi2 == 0 {
		return 1
	}
	if c.DoF == 0 || c.DoF > many {
		return mathext.GammaIncRegComp(p/2, c.Chi2/2)
	}
	// The upper tail of F (Abramowitz and Stegun, 26.6.2, from memory).
	return mathext.RegIncBeta(c.DoF/2, p/2, c.DoF/(c.DoF+c.Chi2))
}

func checkPair(a, b align.Estimate) error {
	var faults check.Faults
	var root check.Path
	faults.Adopt(root.Field("a"), a.Validate())
	faults.Adopt(root.Field("b"), b.Validate())
	return faults.Err()
}
