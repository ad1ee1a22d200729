package align

import (
	"encoding/json"
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// covarianceJSON is the wire form of a Covariance. U and Correlation are absent
// where there is nothing to say: exact, or unknown.
type covarianceJSON struct {
	Basis       Basis          `json:"basis"`
	DoF         float64        `json:"dof,omitzero"`
	U           *standardJSON  `json:"u,omitempty"`
	Correlation *[4][4]float64 `json:"correlation,omitempty"`
	Scattered   *scatteredJSON `json:"scattered,omitempty"` // the part that comes from scatter, where that is not all
}

type scatteredJSON struct {
	U           *standardJSON `json:"u"`
	Correlation [4][4]float64 `json:"correlation"`
}

// standardJSON has the shape of a Centreline and tells what was left out, which
// is not zero.
type standardJSON struct {
	Horizontal lineJSON `json:"horizontal"`
	Vertical   lineJSON `json:"vertical"`
}

type lineJSON struct {
	Offset *units.Length `json:"offset"`
	Slope  *units.Slope  `json:"slope"`
}

func standardOf(u *Centreline) *standardJSON {
	plane := func(l *Line) lineJSON { return lineJSON{&l.Offset, &l.Slope} }
	return &standardJSON{plane(&u.Horizontal), plane(&u.Vertical)}
}

// centreline returns what was read, if nothing was left out.
func (s *standardJSON) centreline() (u Centreline, err error) {
	var faults check.Faults
	var root check.Path
	at := root.Field("u")
	plane := func(at check.Path, wire lineJSON, l *Line) {
		const want = "a standard uncertainty: unknown is not zero"
		if wire.Offset == nil {
			faults.Add(units.Missing, at.Field("offset"), nil, want)
		} else {
			l.Offset = *wire.Offset
		}
		if wire.Slope == nil {
			faults.Add(units.Missing, at.Field("slope"), nil, want)
		} else {
			l.Slope = *wire.Slope
		}
	}
	plane(at.Field("horizontal"), s.Horizontal, &u.Horizontal)
	plane(at.Field("vertical"), s.Vertical, &u.Vertical)
	return u, faults.Err()
}

// MarshalJSON gives the basis, the standard uncertainties and the correlations.
func (c Covariance) MarshalJSON() ([]byte, error) {
	wire := covarianceJSON{Basis: c.Basis, DoF: c.DoF}
	if c.Basis != Declared && c.Basis != Unknown {
		u, r := c.Standard(), c.Correlation()
		wire.U, wire.Correlation = standardOf(&u), &r
	}
	if c.Basis == Scatter && c.scattered != c.v {
		part := Covariance{Basis: Scatter, v: c.scattered}
		u := part.Standard()
		wire.Scattered = &scatteredJSON{standardOf(&u), part.Correlation()}
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives; the variances come back to
// rounding. It refuses what NewCovariance refuses, a covariance without its basis
// (Missing, at /basis), which would be exact without a word, and what cannot be read
// with the path in the covariance: values of a wrong type (Malformed) and members
// that it does not know (Unknown).
func (c *Covariance) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[covarianceJSON](data, "basis")
	if err != nil {
		return err
	}
	u, r := Centreline{}, uncorrelated
	if wire.U != nil {
		if u, err = wire.U.centreline(); err != nil {
			return err
		}
	} else if wire.Basis == Stated || wire.Basis == Scatter {
		return &units.Fault{Code: units.Missing, Path: "/u", Want: "the standard uncertainties, or another basis"}
	}
	if wire.Correlation != nil {
		r = *wire.Correlation
	}
	read, err := NewCovariance(wire.Basis, u, r)
	if err != nil {
		return err
	}
	if err := checkDoF(wire.Basis, wire.DoF); err != nil {
		return err
	}
	read.DoF = wire.DoF
	if wire.Scattered != nil {
		if err := read.readScattered(wire.Scattered); err != nil {
			return err
		}
	}
	*c = read
	return nil
}

// readScattered takes in the part that comes from scatter, which cannot be more
// than the whole.
func (c *Covariance) readScattered(wire *scatteredJSON) error {
	var faults check.Faults
	var root check.Path
	at := root.Field("scattered")
	if c.Basis != Scatter || wire.U == nil {
		faults.Add(units.Conflict, at, nil, "the uncertainties that come from scatter, and that basis")
		return faults.Err()
	}
	u, err := wire.U.centreline()
	if err == nil {
		var part Covariance
		part, err = NewCovariance(Scatter, u, wire.Correlation)
		c.scattered = part.v
	}
	faults.Adopt(at, err)
	for i := range c.v {
		if c.scattered[i][i] > c.v[i][i]*(1+1e-9) {
			faults.Add(units.Conflict, at.Field("u"), nil, "no more than the whole uncertainty")
			break
		}
	}
	return faults.Err()
}

var uncorrelated = [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}

func checkDoF(basis Basis, dof float64) error {
	var faults check.Faults
	var root check.Path
	at := root.Field("dof")
	checkFreedom(&faults, at, dof)
	if faults.Len() == 0 && dof > 0 && basis != Scatter {
		faults.Add(units.Conflict, at, dof, "none: only a scatter has them")
	}
	return faults.Err()
}

// check asks for a covariance that was made here: its numbers can also leave a
// float64 when it is multiplied, and its basis can be set to one that has none.
func (c *Covariance) check(faults *check.Faults, at check.Path) {
	if !basisNames.Known(uint8(c.Basis)) {
		faults.Add(units.OutOfRange, at.Field("basis"), c.Basis, "a known basis")
	}
	checkFreedom(faults, at.Field("dof"), c.DoF)
	if (c.Basis == Declared || c.Basis == Unknown) && (c.v != matrix{} || c.scattered != matrix{}) {
		faults.Add(units.Conflict, at.Field("basis"), c.Basis, "a basis that goes with the uncertainty behind it")
		return
	}
	if c.Basis == Unknown {
		return
	}
	u, field := c.standard(), at.Field("u")
	checkLine(faults, field.Field("horizontal"), u.Horizontal)
	checkLine(faults, field.Field("vertical"), u.Vertical)
}

func checkCovariance(basis Basis, u Centreline, r [4][4]float64) error {
	var faults check.Faults
	var root check.Path
	if !basisNames.Known(uint8(basis)) {
		faults.Add(units.OutOfRange, root.Field("basis"), basis, "a known basis")
	}
	checkStandard(&faults, root.Field("u"), basis, u)
	checkCorrelation(&faults, root.Field("correlation"), r)
	return faults.Err()
}

func checkStandard(faults *check.Faults, at check.Path, basis Basis, u Centreline) {
	plane := func(name string, l Line) {
		line := at.Field(name)
		check.Uncertainty(faults, line.Field("offset"), l.Offset)
		check.Uncertainty(faults, line.Field("slope"), l.Slope)
	}
	plane("horizontal", u.Horizontal)
	plane("vertical", u.Vertical)
	if (basis == Declared || basis == Unknown) && u != (Centreline{}) {
		faults.Add(units.Conflict, at, nil, "no uncertainty: the basis is "+basis.String())
	}
}

// checkCorrelation asks for a matrix that random numbers could have. Rounding
// of one part in 1e9 is let through, so that what was written out reads back.
func checkCorrelation(faults *check.Faults, at check.Path, r [4][4]float64) {
	const rounding = 1e-9
	for i := range r {
		row := at.Index(i)
		for j := range r[i] {
			if !check.Finite(faults, row.Index(j), r[i][j]) {
				return
			}
		}
	}
	for i := range r {
		row := at.Index(i)
		for j := range r[i] {
			if math.Abs(r[i][j]-r[j][i]) > rounding || (i == j && r[i][j] != 1) {
				faults.Add(units.Conflict, row.Index(j), r[i][j], "a symmetric matrix with ones on its diagonal")
				return
			}
		}
	}
	if !possible(r, rounding) {
		faults.Add(units.Conflict, at, nil, "correlations that are possible together (no negative eigenvalue)")
	}
}

// possible runs a Cholesky factorisation, which ends at a pivot that is not above zero
// exactly where a symmetric matrix has an eigenvalue that is not. Rounding of each
// correlation moves an eigenvalue by up to three times as much (Gershgorin), so all are
// raised by that: no pivot is then so small that what came before it decides its sign.
func possible(r [4][4]float64, rounding float64) bool {
	for k := range r {
		r[k][k] += 3 * rounding
	}
	for k := range r {
		top, below := &r[k], r[k+1:]
		if top[k] <= 0 {
			return false
		}
		for i := range below {
			row := &below[i]
			for j := range row[k+1:] {
				row[k+1+j] -= row[k] * top[k+1+j] / top[k]
			}
		}
	}
	return true
}
