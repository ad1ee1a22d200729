package tolerance_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

const (
	mm  = units.Millimetre
	um  = units.Micrometre
	mmm = units.MillimetrePerMetre
	rpm = units.RevolutionPerMinute
	eps = 0x1p-52
)

// caseA is the misalignment that geometry checks share: offsets +0.12 and -0.20
// mm, slopes +0.4 and -0.7 mm/m.
var caseA = line(0.12, 0.4, -0.20, -0.7)

// line makes a centreline of horizontal offset and slope, vertical offset and
// slope, in millimetres and millimetres per metre.
func line(offsetY, slopeY, offsetZ, slopeZ float64) align.Centreline {
	return align.Centreline{
		Horizontal: align.Line{Offset: units.Length(offsetY * 1e6), Slope: units.Slope(slopeY * 1e-3)},
		Vertical:   align.Line{Offset: units.Length(offsetZ * 1e6), Slope: units.Slope(slopeZ * 1e-3)},
	}
}

var uncorrelated = [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}

// stated makes an estimate with uncertainties, in the units of line.
func stated(tb fataler, c, u align.Centreline, r [4][4]float64) align.Estimate {
	tb.Helper()
	cov, err := align.NewCovariance(align.Stated, u, r)
	if err != nil {
		tb.Fatalf("NewCovariance: %v", err)
	}
	return align.Estimate{Value: c, Cov: cov}
}

// fataler is what testing.TB and rapid.T have in common.
type fataler interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

func judged(tb fataler, l tolerance.Limits, off align.Estimate, k align.Coupling) tolerance.Verdict {
	tb.Helper()
	v, err := l.Judge(off, k)
	if err != nil {
		tb.Fatalf("Judge: %v", err)
	}
	return v
}

func judgedBy(tb fataler, l tolerance.Limits, off align.Estimate, k align.Coupling, a tolerance.Acceptance) tolerance.Verdict {
	tb.Helper()
	v, err := l.JudgeBy(off, k, a)
	if err != nil {
		tb.Fatalf("JudgeBy: %v", err)
	}
	return v
}

// numbers are found, u and limit of an item in nanometres or as a ratio.
func numbers(i tolerance.Item) (found, u, limit float64) {
	if i.Of == tolerance.Offset {
		return float64(i.Found.Length), float64(i.U.Length), float64(i.Limit.Length)
	}
	return float64(i.Found.Slope), float64(i.U.Slope), float64(i.Limit.Slope)
}

// near fails unless got lies within tolerance of want; NaN never does.
func near[Q ~float64](tb fataler, what string, got, want, tolerance Q) {
	tb.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tolerance)) {
		tb.Errorf("%s: got %.17g, want %.17g within %.3g", what, float64(got), float64(want), float64(tolerance))
	}
}

// codesAndPaths lists the faults of an error as "code path", sorted.
func codesAndPaths(err error) []string {
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	slices.Sort(list)
	return list
}

// wantFaults asks for just these faults.
func wantFaults(tb fataler, name string, err error, want ...string) {
	tb.Helper()
	slices.Sort(want)
	if got := codesAndPaths(err); !slices.Equal(got, want) {
		tb.Errorf("%s: got %q (%v), want %q", name, got, err, want)
	}
}

func mustTable(tb testing.TB, rows ...tolerance.Row) tolerance.Table {
	tb.Helper()
	table, err := tolerance.NewTable("Works standard 4-12", "2024", rows...)
	if err != nil {
		tb.Fatal(err)
	}
	return table
}
