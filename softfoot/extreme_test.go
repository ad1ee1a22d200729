package softfoot_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// checkFinite demands that every number of a finding is one: what is not has no
// wire form.
func checkFinite(t rapid.TB, s softfoot.Survey, f softfoot.Finding) {
	t.Helper()
	if _, err := json.Marshal(f); err != nil {
		t.Errorf("%+v: %+v: %v", s, f, err)
	}
}

// Plans that are tiny, vast, far from x = 0, or nearly in one line: a survey is
// refused as a whole, or every number of what is found is finite.
func TestExtremePlans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSurvey(t)
		size := math.Pow(10, float64(rapid.IntRange(-9, 9).Draw(t, "size")))
		squeeze := math.Pow(10, float64(rapid.IntRange(-6, 0).Draw(t, "squeeze")))
		away := units.Length(rapid.SampledFrom([]float64{0, 1e6, 1e9, 1e12, 1e15}).Draw(t, "away"))
		turn := float64(rapid.IntRange(0, 90).Draw(t, "turn")) * math.Pi / 180
		sin, cos := math.Sincos(turn)
		s = mapped(s, func(f *softfoot.Foot) {
			x, y := float64(f.X)*size, float64(f.Y)*size*squeeze
			f.X, f.Y = units.Length(x*cos-y*sin)+away, units.Length(x*sin+y*cos)
		}, sameGap)
		found, err := s.Judge(softfoot.Limits{})
		if err != nil {
			if !hasFault(err) {
				t.Errorf("%v is no fault", err)
			}
			return
		}
		checkFinite(t, s, found)
		checkFinding(t, s, found)
	})
}

// Lifts and heights as large as numbers go.
func TestExtremeLifts(t *testing.T) {
	sizes := []float64{math.SmallestNonzeroFloat64, 1e-300, 1e-9, 1, 1e9, 1e15, 1e100, 1e200, 1e300, math.MaxFloat64 / 4, math.MaxFloat64}
	for _, size := range sizes {
		for _, lifts := range [][]float64{{1, 0, 0, 1}, {1, 0, 0, 0}, {1, 1, 0, 0}, {-1, 1, 1, -1}, {1, 1, 1, 1}} {
			for _, height := range []float64{1e-300, 1e8, 1e300} {
				s := rectangle(units.Length(size), lifts...)
				s.Height = units.Length(height)
				found, err := s.Judge(softfoot.Limits{})
				if err != nil && !hasFault(err) {
					t.Errorf("%v is no fault", err)
				}
				if err == nil {
					checkFinite(t, s, found)
				}
			}
		}
	}
}

// What a shaft shows, and what comes out, as large as numbers go.
func TestExtremeAtShaft(t *testing.T) {
	sizes := []units.Length{-math.MaxFloat64, -1e300, -1e8, -1e-300, 1e-300, 1e8, 1e300, math.MaxFloat64}
	for _, y := range sizes {
		for _, up := range sizes {
			for _, other := range sizes {
				seen := softfoot.AtShaft{Y: y, Up: up, Sideways: other}
				for _, last := range sizes {
					if lift, err := seen.Rolling(last); err == nil && (math.IsNaN(float64(lift)) || math.IsInf(float64(lift), 0)) {
						t.Fatalf("%+v rolls by %v at a height of %v", seen, lift, last)
					}
					if lift, err := seen.Hinged(last); err == nil && (math.IsNaN(float64(lift)) || math.IsInf(float64(lift), 0)) {
						t.Fatalf("%+v swings by %v about %v", seen, lift, last)
					}
				}
			}
		}
	}
}
