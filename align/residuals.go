package align

import (
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Residual is how far one reading stands from a fit.
type Residual struct {
	Set          int          `json:"set"`
	Reading      int          `json:"reading"`
	Value        units.Length `json:"value"`        // reading less fit
	Standardised float64      `json:"standardised"` // Value over its own standard deviation; zero where the reading alone decides (Leverage 1) or nothing tells the deviation
	Leverage     float64      `json:"leverage"`     // share of the reading in its own fitted value, 0 to 1
}

// Residuals appends to dst one residual for every reading of the sets, in their
// order. f must be the fit of these very sets; its value and scatter are used.
// It refuses what [Fit] refuses, and a fit that is not finite (at /fit/scatter).
//
// The deviation of a residual is that of its reading times sqrt(1 - leverage),
// with the uncertainty stated for the reading or else the scatter of the fit.
func Residuals(dst []Residual, sets []Set, f Fitted) ([]Residual, error) {
	if err := checkSets(sets); err != nil {
		return dst, err
	}
	var faults check.Faults
	var root check.Path
	f.check(&faults, root.Field("fit"))
	if err := faults.Err(); err != nil {
		return dst, err
	}
	var s solution
	if err := s.solve(sets); err != nil {
		return dst, err
	}
	for i := range sets {
		dst = s.residuals(dst, i, &sets[i], f)
	}
	return dst, nil
}

// residuals does one set. The zero of the set is the weighted mean of what the
// centreline leaves, and its share of a leverage is that of a mean.
func (s *solution) residuals(dst []Residual, number int, set *Set, f Fitted) []Residual {
	beta, l := f.Value.numbers(), set.Probe.law()
	zero := set.zero(beta)
	meanSin, meanCos := set.meanDirection()
	total := set.totalWeight()
	for i := range set.Readings {
		sin, cos := set.sinCos(i)
		w := set.weight(i)
		left := set.corrected(i, cos) - l.at(beta, sin, cos) - zero
		leverage := float64(float64(w*w) * (1/total + s.unit.along(l.row(sin-meanSin, cos-meanCos))))
		dst = append(dst, Residual{
			Set: number, Reading: i, Value: fromMM(left), Leverage: leverage,
			Standardised: standardised(left, set.deviation(i, f), leverage),
		})
	}
	return dst
}

// mean is the weighted mean of a value over the readings of the set.
func (s *Set) mean(value func(i int, sin, cos float64) float64) float64 {
	sum := 0.0
	for i := range s.Readings {
		sin, cos := s.sinCos(i)
		w := s.weight(i)
		sum += float64(w * w * value(i, sin, cos))
	}
	return sum / s.totalWeight()
}

// zero is where a centreline puts the zero of the set: the weighted mean of what
// it leaves of the readings.
func (s *Set) zero(beta [four]float64) float64 {
	l := s.Probe.law()
	return s.mean(func(i int, sin, cos float64) float64 { return s.corrected(i, cos) - l.at(beta, sin, cos) })
}

// meanDirection is the weighted mean of the sines and of the cosines of the set.
func (s *Set) meanDirection() (sin, cos float64) {
	sin = s.mean(func(_ int, sin, _ float64) float64 { return sin })
	cos = s.mean(func(_ int, _, cos float64) float64 { return cos })
	return sin, cos
}

func (s *Set) totalWeight() float64 {
	sum := 0.0
	for i := range s.Readings {
		w := s.weight(i)
		sum += float64(w * w)
	}
	return sum
}

// deviation is the standard deviation of reading i in millimetres.
func (s *Set) deviation(i int, f Fitted) float64 {
	if u := s.uncertainty(i); u != 0 {
		return mm(u)
	}
	return mm(f.Scatter)
}

func standardised(left, deviation, leverage float64) float64 {
	const decides = 1 - 1e-9
	if deviation == 0 || leverage > decides {
		return 0
	}
	return left / (deviation * math.Sqrt(1-leverage))
}
