package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// JCGM 100:2008 (GUM), H.1: calibration of an end gauge of 50 mm, in nanometres;
// inputs and printed results read second-hand, the longer digits recomputed at
// high precision. Sensitivities: 1 for the standard and the comparator, the
// standard's length times the temperature's deviation for the difference of the
// expansions, times the standard's expansion for that of the temperatures; the
// other two are zero to first order.
func TestGUMEndGauge(t *testing.T) {
	comparator, dof, err := align.Combine(
		align.Part[float64]{U: 5.8, DoF: 24},
		align.Part[float64]{U: 3.9, DoF: 5},
		align.Part[float64]{U: 6.7, DoF: 8})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "u(d), printed as 9.7", comparator, 9.681941953967705956, 1e-14)
	near(t, "its degrees of freedom, printed as 25.6, which follows from the rounded 9.7", dof, 25.44725077736271770507863, 1e-13)

	const standard = 50_000_623 // nm
	rectangular := func(half float64) float64 { return half / math.Sqrt(3) }
	u, dof, err := align.Combine(
		align.Part[float64]{U: 25, DoF: 18},
		align.Part[float64]{U: comparator, DoF: dof},
		align.Part[float64]{U: standard * 0.1 * rectangular(1e-6), DoF: 50},
		align.Part[float64]{U: standard * 11.5e-6 * rectangular(0.05), DoF: 2})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "u, printed as 32", u, 31.66387911100863228442021, 1e-12)
	near(t, "degrees of freedom, printed as 16 (cut off)", dof, 16.75185573762724563379289, 1e-11)
	k, err := align.CoverageFactor(0.99, math.Floor(dof))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "half width at 99 %, printed as 93 (from 2.92 times 32)", k*u, 92.48, 0.01)
}

func TestCombineKnownParts(t *testing.T) {
	u, dof, err := align.Combine(align.Part[units.Length]{U: 3 * um}, align.Part[units.Length]{U: 4 * um})
	if err != nil || u != 5*um || dof != 0 {
		t.Errorf("got %v with %g degrees, %v", u, dof, err)
	}
	u, dof, err = align.Combine[units.Length]()
	if err != nil || u != 0 || dof != 0 {
		t.Errorf("of nothing: %v with %g degrees, %v", u, dof, err)
	}
}

func TestCombineRefuses(t *testing.T) {
	good := align.Part[float64]{U: 1, DoF: 3}
	rows := []struct {
		name string
		bad  align.Part[float64]
		code units.Code
		path string
	}{
		{"negative", align.Part[float64]{U: -1, DoF: 3}, units.OutOfRange, "/parts/1/u"},
		{"no number", align.Part[float64]{U: math.NaN(), DoF: 3}, units.NotFinite, "/parts/1/u"},
		{"negative degrees", align.Part[float64]{U: 1, DoF: -3}, units.OutOfRange, "/parts/1/dof"},
	}
	for _, row := range rows {
		_, _, err := align.Combine(good, row.bad)
		checkFault(t, err, row.code, row.path)
	}
}
