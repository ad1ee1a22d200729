package arc

import (
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// weighted makes f, the plain fit, the one under the given weights.
func (s *search) weighted(f *align.Fitted, sets []align.Set, weights []float64) (err error) {
	if slices.Min(weights) == 1 {
		return nil
	}
	asked := f.Warnings // about the readings as they were given
	partly := slices.ContainsFunc(weights, func(w float64) bool { return w > 0 && w < 1 })
	kept := s.kept(sets, weights, s.stated || partly)
	if *f, err = align.Fit(kept...); err != nil {
		return err
	}
	f.Warnings = asked
	if partly && !s.stated {
		return scattered(f, kept, weights)
	}
	return nil
}

// kept returns the sets without the readings of weight zero. With weigh the others
// have the uncertainties that give them their weight.
func (s *search) kept(sets []align.Set, weights []float64, weigh bool) []align.Set {
	var list []align.Set
	n := 0
	for _, set := range sets {
		var readings []align.Reading
		for _, r := range set.Readings {
			if weigh {
				r.U = inflated(s.u[n], weights[n])
			}
			if weights[n] > 0 {
				readings = append(readings, r)
			}
			n++
		}
		if set.Readings = readings; len(readings) > 0 {
			list = append(list, set)
		}
	}
	return list
}

// scattered gives the fit f of kept readings, whose weights stand in uncertainties
// that nobody stated, the scatter and the covariance that follow from the residuals:
//
//	s^2 = sum(w r^2)/(sum(w) - unknowns)
func scattered(f *align.Fitted, kept []align.Set, weights []float64) error {
	left, _ := align.Residuals(nil, kept, *f) // f is the fit of these
	squares, full, count := 0.0, math.Inf(1), 0.0
	for _, r := range left {
		u := float64(kept[r.Set].Readings[r.Reading].U)
		squares += float64(float64(r.Value) / u * float64(r.Value) / u)
		full = min(full, u) // of weight one
	}
	for _, w := range weights {
		count += w
	}
	freedom := count - float64(len(left)-f.DegreesOfFreedom)
	if freedom < 1 {
		f.Cov, f.Scatter = align.Covariance{Basis: align.Unknown}, 0
		return nil
	}
	ratio := math.Sqrt(squares / freedom)
	f.Scatter = units.Length(ratio * full)
	var err error
	f.Cov, err = rebased(kept, ratio, freedom)
	return err
}

// rebased is the covariance of the readings with its standard uncertainties times a
// ratio, as from their scatter, and of what else is stated. What single angles bring
// is in the scatter.
func rebased(kept []align.Set, ratio, freedom float64) (align.Covariance, error) {
	shares, _ := align.Budget(kept...) // of sets that were fitted
	var sum align.Estimate
	var err error
	for _, share := range shares {
		cov := share.Cov
		switch share.Of {
		case align.OfAngle:
			continue
		case align.OfReading:
			if cov, err = align.NewCovariance(align.Scatter, cov.Standard().Times(ratio), cov.Correlation()); err != nil {
				return cov, err
			}
			cov.DoF = freedom
		}
		sum = sum.Plus(align.Estimate{Cov: cov})
	}
	return sum.Cov, nil
}
