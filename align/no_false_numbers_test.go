package align_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

func TestResidualsOfNoFit(t *testing.T) {
	sets := read(t, caseA, reverse(), quarters...)
	f := mustFit(t, sets...)
	f.Value.Horizontal.Offset = units.Length(math.NaN())
	if r, err := align.Residuals(nil, sets, f); err == nil {
		t.Errorf("NaN in the fit is answered with %v", r[0])
	}
	f = mustFit(t, sets...)
	f.Scatter = units.Length(math.NaN())
	if r, err := align.Residuals(nil, sets, f); err == nil {
		t.Errorf("NaN in the scatter is answered with %v", r[0])
	}
}

func TestCovarianceOverflows(t *testing.T) {
	e := align.Estimate{Value: caseA, Cov: estimate(t, align.Stated, 0).Times(1e170).Cov}
	m, err := e.Corrections(align.Foot{X: 300 * mm})
	if err == nil && (math.IsNaN(float64(m[0].U.Vertical)) || math.IsInf(float64(m[0].U.Vertical), 0)) {
		t.Errorf("u %v on basis %v, no fault", m[0].U, m[0].Basis)
	}
}

func TestUnknownBasisLooksExact(t *testing.T) {
	m, err := align.Estimate{Cov: align.Covariance{Basis: 9}}.Corrections(align.Foot{X: mm})
	if err == nil {
		t.Errorf("u %v on basis %v, no fault", m[0].U, m[0].Basis)
	}
}

func TestInfBelowTheDiagonal(t *testing.T) {
	r := uncorrelated
	r[1][0] = math.Inf(1)
	_, err := align.NewCovariance(align.Stated, line(0.003, 1e-5, 0.004, 2e-5), r)
	if got := codesAndPaths(err); !slices.Equal(got, []string{"not_finite /correlation/1/0"}) {
		t.Errorf("got %v (%v)", got, err)
	}
}

func TestMoveReadsWhatCannotBe(t *testing.T) {
	const rest = `{"foot":{"name":"a","x":"10 mm"},"by":{"horizontal":"1 mm","vertical":"2 mm"}`
	for name, tail := range map[string]string{
		"u below zero":          `,"u":{"horizontal":"-1 mm","vertical":"1 mm"},"basis":"stated"}`,
		"declared, yet with u":  `,"u":{"horizontal":"1 mm","vertical":"1 mm"}}`,
		"unknown, u is dropped": `,"u":{"horizontal":"1 mm","vertical":"1 mm"},"basis":"unknown"}`,
	} {
		var m align.Move
		if err := json.Unmarshal([]byte(rest+tail), &m); err == nil {
			t.Errorf("%s: read as u %v, basis %v", name, m.U, m.Basis)
		}
	}
}

func TestHalfACovariance(t *testing.T) {
	var c align.Covariance
	if err := json.Unmarshal([]byte(`{"basis":"stated","u":{"horizontal":{"offset":"1 um"}}}`), &c); err == nil {
		t.Errorf("three uncertainties that were not given are exact: %v", c.Standard())
	}
}

func TestNaNIsAnOrder(t *testing.T) {
	nan := units.Length(math.NaN())
	if text := move("", nan, nan).String(); strings.Contains(text, "lower") || strings.Contains(text, "push") {
		t.Errorf("a move that is no number is an order: %q", text)
	}
}
