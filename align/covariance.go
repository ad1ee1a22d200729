package align

import (
	"math"

	"example.org/collinear/internal/words"
	"example.org/collinear/units"
)

// Basis says where an uncertainty comes from. Unknown is not zero.
type Basis uint8

// The bases, from the firmest to the weakest.
const (
	Declared Basis = iota // exact by declaration: a target, a drawing
	Stated                // from uncertainties that the caller stated
	Scatter               // from the scatter of the readings about the fit
	Unknown               // nothing was stated, and no reading left over tells
)

var basisNames = words.List{"declared", "stated", "scatter", "unknown"}

// String returns the wire form, for one "stated".
func (b Basis) String() string { return basisNames.Word(uint8(b)) }

// MarshalText gives the wire form.
func (b Basis) MarshalText() ([]byte, error) { return basisNames.Marshal(uint8(b)) }

// UnmarshalText reads the wire form.
func (b *Basis) UnmarshalText(text []byte) error { return words.Unmarshal(b, basisNames, text) }

// The four numbers of a centreline, always in this order.
const (
	offsetY = iota
	slopeY
	offsetZ
	slopeZ
	four // how many there are
)

// Covariance is the joint uncertainty of the four numbers of a centreline. The
// zero value is exact by declaration. Its JSON form holds the basis, the four
// standard uncertainties with their units, and their correlations.
//
// Where the basis is Scatter, it keeps apart the part that the scatter gave,
// with its DoF degrees of freedom, from what was stated beside it (a tape, a
// clock) and is as good as known; see [Covariance.EffectiveDoF].
type Covariance struct {
	Basis     Basis
	DoF       float64 // degrees of freedom behind a Scatter; zero for the other bases
	v         matrix  // millimetres and ratios; zero when Declared or Unknown
	scattered matrix  // the part of v that comes from scatter; zero unless the basis is Scatter
}

type matrix [four][four]float64

// plus returns the sum of both.
func (m matrix) plus(n matrix) matrix {
	for i := range m {
		for j := range m[i] {
			m[i][j] += n[i][j]
		}
	}
	return m
}

func (m matrix) times(k float64) matrix {
	for i := range m {
		for j := range m[i] {
			m[i][j] *= k
		}
	}
	return m
}

// along returns the variance a' M a.
func (m *matrix) along(a [four]float64) float64 {
	sum := 0.0
	for i := range a {
		for j := range a {
			sum += float64(a[i] * m[i][j] * a[j])
		}
	}
	return sum
}

// NewCovariance returns a covariance from the standard uncertainty u of each of
// the four numbers and their correlations, in the order horizontal offset and
// slope, vertical offset and slope. Declared and Unknown take no numbers. It
// refuses numbers that are not finite (NotFinite), a negative uncertainty
// (OutOfRange), and correlations that cannot be: not symmetric, not one on the
// diagonal, or together impossible (Conflict). With the basis Scatter all of it
// counts as scatter; its DoF are set afterwards.
func NewCovariance(basis Basis, u Centreline, correlation [4][4]float64) (Covariance, error) {
	c := Covariance{Basis: basis}
	if err := checkCovariance(basis, u, correlation); err != nil {
		return Covariance{}, err
	}
	s := u.numbers()
	for i := range c.v {
		for j := range c.v[i] {
			c.v[i][j] = 0 + float64(s[i]*s[j]*correlation[i][j]) // no negative zero
		}
	}
	if basis == Scatter {
		c.scattered = c.v
	}
	return c, nil
}

// numbers returns the four numbers in millimetres and ratios.
func (c Centreline) numbers() [four]float64 {
	return [four]float64{
		mm(c.Horizontal.Offset), float64(c.Horizontal.Slope),
		mm(c.Vertical.Offset), float64(c.Vertical.Slope),
	}
}

// centreline is the inverse of numbers.
func centreline(b [four]float64) Centreline {
	return Centreline{
		Horizontal: Line{fromMM(b[offsetY]), units.Slope(b[slopeY])},
		Vertical:   Line{fromMM(b[offsetZ]), units.Slope(b[slopeZ])},
	}
}

// Standard returns the standard uncertainty of each of the four numbers, never
// negative; NaN in each when the basis is Unknown.
func (c Covariance) Standard() Centreline { return c.standard() }

func (c *Covariance) standard() Centreline {
	var u [four]float64
	for i := range u {
		u[i] = c.root(c.v[i][i])
	}
	return centreline(u)
}

// root is the standard uncertainty whose square is variance.
func (c *Covariance) root(variance float64) float64 {
	if c.Basis == Unknown {
		return math.NaN()
	}
	return math.Sqrt(max(0, variance))
}

// Correlation returns the correlations of the four numbers, in the order
// horizontal offset and slope, vertical offset and slope. A number that is
// exact or unknown is not correlated with any other.
func (c Covariance) Correlation() [4][4]float64 {
	var r [four][four]float64
	for i := range r {
		for j := range r[i] {
			if scale := math.Sqrt(c.v[i][i]) * math.Sqrt(c.v[j][j]); scale > 0 {
				r[i][j] = c.v[i][j] / scale
			}
		}
		r[i][i] = 1
	}
	return r
}

// At returns the standard uncertainty of w at station x, in each plane; NaN when
// the basis is Unknown.
func (c Covariance) At(x units.Length) Vector { return c.at(x) }

func (c *Covariance) at(x units.Length) Vector {
	v, m := &c.v, mm(x)
	plane := func(o, s int) units.Length {
		return fromMM(c.root(v[o][o] + float64(2*m*v[o][s]) + float64(m*m*v[s][s])))
	}
	return Vector{plane(offsetY, slopeY), plane(offsetZ, slopeZ)}
}

// plus returns the covariance of a sum or a difference of independent parts. Its
// basis is the weaker of the two; its degrees of freedom are the fewer, which
// never claims more than is known.
func (c Covariance) plus(d Covariance) Covariance {
	sum := Covariance{Basis: max(c.Basis, d.Basis)}
	switch sum.Basis {
	case Unknown:
		return sum
	case Scatter:
		sum.DoF = fewer(c.DoF, d.DoF)
	}
	sum.v = c.v.plus(d.v)
	sum.scattered = c.scattered.plus(d.scattered)
	return sum
}

// fewer returns the smaller of two degrees of freedom, where zero means that
// the part has none to count.
func fewer(a, b float64) float64 {
	if a == 0 || b == 0 {
		return a + b
	}
	return min(a, b)
}

// times returns the covariance of k times the centreline.
func (c Covariance) times(k float64) Covariance {
	c.v, c.scattered = c.v.times(k*k), c.scattered.times(k*k)
	return c
}

// mapped returns the covariance of T times the four numbers: T M T'.
func (m matrix) mapped(t *matrix) matrix {
	var out matrix
	for i := range out {
		for j := range out[i] {
			for k := range four {
				for l := range four {
					out[i][j] += float64(t[i][k] * m[k][l] * t[j][l])
				}
			}
		}
	}
	return out
}

func (c Covariance) mapped(t *matrix) Covariance {
	c.v, c.scattered = c.v.mapped(t), c.scattered.mapped(t)
	return c
}

// about returns the covariance of the same lines told from station x:
//
//	offset' = offset + x slope        slope' = slope
func (c Covariance) about(x units.Length) Covariance {
	m := mm(x)
	return c.mapped(&matrix{{1, m, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, m}, {0, 0, 0, 1}})
}

// exchanged returns the covariance of the centreline seen from the other end.
func (c Covariance) exchanged() Covariance {
	return c.mapped(&matrix{{1, 0, 0, 0}, {0, -1, 0, 0}, {0, 0, -1, 0}, {0, 0, 0, 1}})
}
