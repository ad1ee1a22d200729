package tolerance_test

import (
	"maps"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// hot are the calls that a front end makes again and again while a machine is
// being moved.
func hot(tb testing.TB) map[string]func() {
	off := stated(tb, caseA, line(0.005, 0.02, 0.005, 0.02), uncorrelated)
	limits := tolerance.Limits{Offset: mm, Slope: mmm, Flex: mmm, Source: "a source"}
	perPlane := limits
	perPlane.PerPlane = true
	short, spacer := align.Coupling{Name: "a"}, align.Coupling{Span: 800 * mm}
	unknown := align.Estimate{Value: caseA, Cov: align.Covariance{Basis: align.Unknown}}
	scattered := spread{y: 0.9, uy: 0.2, uz: 0.1, r: 0.9, dof: 3}.estimate(tb).Times(1e-3)
	onLimit := spread{z: 1 - 1e-9, uy: 0.2, uz: 0.001, r: 0.9}.estimate(tb).Times(1e-3) // slow: the circle passes by the mean
	rows := make([]tolerance.Row, 12)
	for i := range rows {
		rows[i] = tolerance.Row{Speed: 300 * rpm * units.RotationalSpeed(i+1), Offset: 100*um - units.Length(i)*um}
	}
	table := mustTable(tb, rows...)
	verdict := judged(tb, perPlane, off, short)
	sum := 0.0
	return map[string]func(){
		"Judge/short":         func() { _, _ = limits.Judge(off, short) },
		"Judge/spacer":        func() { _, _ = limits.Judge(off, spacer) },
		"Judge/planes":        func() { _, _ = perPlane.Judge(off, spacer) },
		"Judge/outside":       func() { _, _ = tolerance.Limits{Slope: mmm / 9}.Judge(off, short) },
		"Judge/unknown":       func() { _, _ = limits.Judge(unknown, short) },
		"Judge/nothing":       func() { _, _ = limits.Judge(align.Estimate{}, short) },
		"JudgeBy/probability": func() { _, _ = limits.JudgeBy(off, short, tolerance.Acceptance{Confidence: 0.95}) },
		"JudgeBy/guarded":     func() { _, _ = perPlane.JudgeBy(off, spacer, tolerance.Acceptance{Guard: 2}) },
		"JudgeBy/scatter":     func() { _, _ = limits.JudgeBy(scattered, short, tolerance.Acceptance{Confidence: 0.95}) },
		"JudgeBy/onLimit":     func() { _, _ = limits.JudgeBy(onLimit, short, tolerance.Acceptance{Confidence: 0.95}) },
		"At":                  func() { _, _ = table.At(1480) },
		"ShaftRunout":         func() { _, _ = tolerance.ShaftRunout(42 * mm) },
		"Validate":            func() { _ = limits.Validate() },
		"Governing":           func() { sum += verdict.Governing().Ratio },
		"All": func() {
			for _, item := range verdict.All() {
				sum += item.Ratio
			}
		},
	}
}

func TestNoAllocations(t *testing.T) {
	for name, f := range hot(t) {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func BenchmarkHot(b *testing.B) {
	calls := hot(b)
	for _, name := range slices.Sorted(maps.Keys(calls)) {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				calls[name]()
			}
		})
	}
}

func BenchmarkReadCSV(b *testing.B) {
	text := []byte("source,a\nspeed (rpm),offset (mm),slope (mm/m)\n1000,0.1,1\n1500,0.08,0.7\n3000,0.04,0.5\n")
	b.ReportAllocs()
	for b.Loop() {
		var table tolerance.Table
		if err := table.UnmarshalText(text); err != nil {
			b.Fatal(err)
		}
	}
}
