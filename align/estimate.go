package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Estimate is a centreline with its covariance. The zero value is in line,
// exactly. In JSON, too, a cov that is left out is exact by declaration: write
// {"basis":"unknown"} where nothing is known. One that is there has to say its basis.
// A name that is misspelt counts as left out unless the reader refuses it, as an
// [encoding/json.Decoder] can.
type Estimate struct {
	Value Centreline `json:"value"`
	Cov   Covariance `json:"cov"`
}

// Exact returns c as an estimate without uncertainty, by declaration: a target
// from the maker, a line off a drawing.
func Exact(c Centreline) Estimate { return Estimate{Value: c} }

// Plus returns the sum of two independent estimates; their covariances add. The
// weaker basis is kept, and the fewer degrees of freedom.
func (e Estimate) Plus(f Estimate) Estimate {
	return Estimate{Value: e.Value.Plus(f.Value), Cov: e.Cov.plus(f.Cov)}
}

// Minus returns e less f, two independent estimates; their covariances add, as
// for Plus. What both have in common, a tape or a bracket, is counted twice.
// What was found minus the target is the residual from which corrections and
// verdicts follow.
func (e Estimate) Minus(f Estimate) Estimate {
	return Estimate{Value: e.Value.Minus(f.Value), Cov: e.Cov.plus(f.Cov)}
}

// Times returns k times e.
func (e Estimate) Times(k float64) Estimate {
	return Estimate{Value: e.Value.Times(k), Cov: e.Cov.times(k)}
}

// About returns the same estimate told from station x: its offset is what stood
// at x, and its stations count from there. Slopes stay. In a train it takes a
// coupling's own x to that of the train and back.
func (e Estimate) About(x units.Length) Estimate {
	return Estimate{Value: e.Value.About(x), Cov: e.Cov.about(x)}
}

// Exchanged returns the same estimate with the roles of the two machines
// exchanged and the observer at the other end, as [Centreline.Exchanged] does.
func (e Estimate) Exchanged() Estimate {
	return Estimate{Value: e.Value.Exchanged(), Cov: e.Cov.exchanged()}
}

// At returns where the centreline passes at station x, and the standard
// uncertainty in each plane; that is NaN when the basis is Unknown.
func (e Estimate) At(x units.Length) (w, u Vector) {
	return e.Value.At(x), e.Cov.At(x)
}

// Validate asks that the estimate is made of finite numbers that can be reckoned
// with, and its covariance of a known basis, with paths from the estimate
// (/value/vertical/offset, /cov/u/vertical/offset). It refuses a covariance with
// uncertainty in it whose basis was set to Declared or Unknown (Conflict, at
// /cov/basis). Every entry point that takes an estimate does so by itself.
func (e Estimate) Validate() error {
	var faults check.Faults
	var root check.Path
	e.check(&faults, root)
	return faults.Err()
}

func (e *Estimate) check(faults *check.Faults, at check.Path) {
	checkCentreline(faults, at.Field("value"), e.Value)
	e.Cov.check(faults, at.Field("cov"))
}
