package align_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// What reads itself and cannot is refused with a fault that has the path in it, and
// keeps what it was. A name that is misspelt is not taken for one that was left out:
// an uncertainty would become none, without a word.
func TestUnreadable(t *testing.T) {
	const (
		u     = `"u":{"horizontal":{"offset":"1 um","slope":"1 um/m"},"vertical":{"offset":"1 um","slope":"1 um/m"}}`
		foot  = `"foot":{"name":"a","x":"10 mm"},"by":{"horizontal":"1 mm","vertical":"2 mm"}`
		one   = `"correlation":[[1,0,0,0],[0,1,0,0],[0,0,1,0],[0,0,0,1]]`
		ends  = `{"low":"0 mm","high":"1 mm"}`
		given = `"symmetric":` + ends + `,"shortest":` + ends
	)
	rows := []struct{ name, bad, want, twin string }{
		{"covariance", `5`, "malformed ", `{"basis":"declared"}`},
		{"covariance", `{}`, "missing /basis", `{"basis":"unknown"}`},
		{"covariance", `null`, "missing /basis", `{"basis":"unknown"}`},
		{"covariance", `{"basis":null}`, "missing /basis", `{"basis":"declared"}`},
		{"covariance", `{"basis":1}`, "malformed /basis", `{"basis":"declared"}`},
		{"covariance", `{"basis":"guessed"}`, "unknown /basis", `{"basis":"unknown"}`},
		{"covariance", `{"basis":"declared","kov":0}`, "unknown /kov", `{"basis":"declared","dof":0}`},
		{"covariance", `{"basis":"scatter","dof":"3",` + u + `}`, "malformed /dof", `{"basis":"scatter","dof":3,` + u + `}`},
		{"covariance", `{"basis":"stated",` + u + `,"correlatoin":[]}`, "unknown /correlatoin", `{"basis":"stated",` + u + `,` + one + `}`},
		{"covariance", `{"basis":"stated","u":{"horizontal":{"offset":1}}}`, "malformed /u/horizontal/offset", `{"basis":"stated",` + u + `}`},
		{"covariance", `{"basis":"stated",` + u + `,"correlation":[[1,"0"]]}`, "malformed /correlation/0/1", `{"basis":"stated",` + u + `}`},
		{"covariance", `{"basis":"scatter",` + u + `,"scattered":{"u":[]}}`, "malformed /scattered/u", `{"basis":"scatter",` + u + `}`},
		{"move", `{` + foot + `,"basis":"unknown","by_hand":1}`, "unknown /by_hand", `{` + foot + `,"basis":"unknown"}`},
		{"move", `{"foot":{"x":10},"basis":"unknown"}`, "malformed /foot/x", `{"foot":{"x":"10 mm"},"basis":"unknown"}`},
		{"move", `[]`, "malformed ", `{"basis":"unknown"}`},
		{"distribution", `{"symmetric":` + ends + `}`, "missing /shortest", `{` + given + `}`},
		{"distribution", `{` + given + `,"mean":0}`, "malformed /mean", `{` + given + `,"mean":"0 mm"}`},
		{"distribution", `{` + given + `,"median":"0 mm"}`, "unknown /median", `{` + given + `}`},
	}
	for _, row := range rows {
		covariance, moved, spread := estimate(t, align.Scatter, 7).Cov, move("inboard", 10*um, -20*um), soundDistribution
		into := map[string]any{"covariance": &covariance, "move": &moved, "distribution": &spread}[row.name]
		err := json.Unmarshal([]byte(row.bad), into)
		if got := codesAndPaths(err); !slices.Equal(got, []string{row.want}) {
			t.Errorf("%s %s: got %v (%v), want just %s", row.name, row.bad, got, err, row.want)
		}
		if covariance != estimate(t, align.Scatter, 7).Cov || moved != move("inboard", 10*um, -20*um) || spread != soundDistribution {
			t.Errorf("%s %s: what it was to be read into is changed", row.name, row.bad)
		}
		if err := json.Unmarshal([]byte(row.twin), into); err != nil {
			t.Errorf("%s %s: the twin is refused: %v", row.name, row.twin, err)
		}
	}
}

// In an estimate a covariance that is left out is exact, as documented; one that is
// there and empty, or null, is not.
func TestEstimateWithoutCovariance(t *testing.T) {
	var e align.Estimate
	if err := json.Unmarshal([]byte(`{"value":{}}`), &e); err != nil || e != (align.Estimate{}) {
		t.Errorf("left out: got %+v, %v", e, err)
	}
	for _, cov := range []string{`{}`, `null`, `{"bassis":"unknown"}`} {
		if err := json.Unmarshal([]byte(`{"value":{},"cov":`+cov+`}`), &e); len(units.Faults(err)) == 0 {
			t.Errorf("%s: read as %+v, %v", cov, e, err)
		}
	}
}

// A basis that was set by hand to one that has no uncertainty hides the one behind it.
func TestBasisThatHidesItsUncertainty(t *testing.T) {
	for _, from := range []align.Basis{align.Stated, align.Scatter} {
		for _, to := range []align.Basis{align.Declared, align.Unknown} {
			e := estimate(t, from, 0)
			if err := e.Validate(); err != nil {
				t.Fatalf("%v: %v", from, err)
			}
			e.Cov.Basis, e.Cov.DoF = to, 0
			if got := codesAndPaths(e.Validate()); !slices.Equal(got, []string{"conflict /cov/basis"}) {
				t.Errorf("%v set to %v: got %v", from, to, got)
			}
			if _, err := e.Corrections(align.Foot{X: mm}); err == nil {
				t.Errorf("%v set to %v: corrections", from, to)
			}
		}
	}
	for _, basis := range []align.Basis{align.Declared, align.Unknown} {
		if err := estimate(t, basis, 0).Validate(); err != nil {
			t.Errorf("%v: %v", basis, err)
		}
	}
}

// Sound numbers of which the answer cannot be reckoned with.
func TestAnswersBeyondReckoning(t *testing.T) {
	steep, far := line(0, 1e15, 0, 0), line(0, 1, 0, 0)
	wide := align.Coupling{Diameter: 2e8}
	_, _, err := wide.Gap(steep)
	checkBeyond(t, "Gap", err, "")
	if _, _, err = wide.Gap(far); err != nil {
		t.Error(err)
	}
	short, off := align.Coupling{Span: 1e-15}, align.Centreline{Vertical: align.Line{Offset: mm}}
	s, m, err := short.FlexTilts(off)
	checkBeyond(t, "FlexTilts", err, "")
	if diff := cmp.Diff([2]align.Tilt{}, [2]align.Tilt{s, m}); diff != "" {
		t.Errorf("refused, and yet\n%s", diff)
	}
	if _, _, err := (align.Coupling{Span: mm}).FlexTilts(off); err != nil {
		t.Error(err)
	}
	_, _, err = short.FlexUncertainty(estimate(t, align.Stated, 0).Cov)
	checkBeyond(t, "FlexUncertainty", err, "")
	if _, _, err := short.FlexUncertainty(align.Covariance{Basis: align.Unknown}); err != nil {
		t.Errorf("what is not known is not too large: %v", err)
	}
	_, err = align.SlopeFromGap(mm, 0, 1e-15)
	checkBeyond(t, "SlopeFromGap", err, "")
	set := soundSet(align.NearFace)
	_, err = set.Expect(align.Exact(steep), 0, 90)
	checkBeyond(t, "Expect", err, "/estimate")
	if _, err := set.Expect(align.Exact(far), 0, 90); err != nil {
		t.Error(err)
	}
}

func checkBeyond(t *testing.T, name string, err error, path string) {
	t.Helper()
	if got := codesAndPaths(err); !slices.Equal(got, []string{"out_of_range " + path}) {
		t.Errorf("%s: got %v (%v), want out_of_range %s", name, got, err, path)
	}
}

// A correlation below zero of a number that is known makes no negative zero, which would
// not come back from JSON.
func TestNoNegativeZeroCovariance(t *testing.T) {
	r := [4][4]float64{{1, -0.5, 0, 0}, {-0.5, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}
	made, err := align.NewCovariance(align.Stated, align.Centreline{Horizontal: align.Line{Slope: 1e-5}}, r)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(made)
	if err != nil {
		t.Fatal(err)
	}
	var read align.Covariance
	if err := json.Unmarshal(text, &read); err != nil {
		t.Fatal(err)
	}
	if a, b := fmt.Sprint(made), fmt.Sprint(read); a != b {
		t.Errorf("%s comes back as %s", a, b)
	}
}
