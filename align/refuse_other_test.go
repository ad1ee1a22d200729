package align_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// What the other entry points refuse, each with a twin that passes.
func TestOthersRefuse(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	feet := func(feet ...align.Foot) func() error {
		return func() error { _, err := align.Exact(caseA).Corrections(feet...); return err }
	}
	predict := func(s align.Set, at ...units.Clock) func() error {
		return func() error { _, err := s.Predict(caseA, at...); return err }
	}
	through := func(p, q align.Point) func() error {
		return func() error { _, err := align.Through(p, q); return err }
	}
	gap := func(d units.Length) func() error {
		return func() error { _, _, err := align.Coupling{Diameter: d}.Gap(caseA); return err }
	}
	flex := func(l units.Length) func() error {
		return func() error { _, _, err := align.Coupling{Span: l}.FlexTilts(caseA); return err }
	}
	from := func(l units.Length) func() error {
		return func() error { _, err := align.Coupling{Span: l}.FromFlexTilts(align.Tilt{}, align.Tilt{}); return err }
	}
	slope := func(opening units.Length, at units.Clock, d units.Length) func() error {
		return func() error { _, err := align.SlopeFromGap(opening, at, d); return err }
	}
	wrongCarrier := rim(0, 40)
	rows := []struct {
		name      string
		bad, twin func() error
		want      string
	}{
		{"no feet", feet(), feet(align.Foot{}), "missing /feet"},
		{"a name twice", feet(align.Foot{Name: "a"}, align.Foot{Name: "b", X: 1}, align.Foot{Name: "a", X: 2}), feet(align.Foot{Name: "a"}, align.Foot{Name: "b", X: 1}, align.Foot{Name: "c", X: 2}), "duplicate /feet/2/name"},
		{"no station of a foot", feet(align.Foot{}, align.Foot{X: nan}), feet(align.Foot{}, align.Foot{X: -1}), "not_finite /feet/1/x"},
		{"foot uncertain below zero", feet(align.Foot{U: -1}), feet(align.Foot{U: 1}), "out_of_range /feet/0/u"},

		{"nowhere to predict", predict(rim(align.Stationary, 40)), predict(rim(align.Stationary, 40), 0), "missing /at"},
		{"predict at no place", predict(rim(align.Stationary, 40), 0, units.Clock(inf)), predict(rim(align.Stationary, 40), 0, 1e6), "not_finite /at/1"},
		{"predict for no carrier", predict(wrongCarrier, 0), predict(rim(align.Movable, 40), 0), "missing /probe/carrier"},

		{"two points at one station", through(align.Point{X: 5, W: 1}, align.Point{X: 5, W: 2}), through(align.Point{X: 5, W: 1}, align.Point{X: 6, W: 1}), "conflict /q/x"},
		{"a point that is no number", through(align.Point{X: 5, W: inf}, align.Point{X: 6}), through(align.Point{X: 5}, align.Point{X: 6}), "not_finite /p/w"},
		{"a station that is no number", through(align.Point{X: 5}, align.Point{X: nan}), through(align.Point{X: 5}, align.Point{X: -5}), "not_finite /q/x"},

		{"gap without a diameter", gap(0), gap(1), "missing /diameter"},
		{"gap across less than nothing", gap(-1), gap(1), "out_of_range /diameter"},
		{"flex planes without a span", flex(0), flex(1), "missing /span"},
		{"flex planes of no number", flex(nan), flex(1), "not_finite /span"},
		{"from flex planes without a span", from(0), from(1), "missing /span"},
		{"slope of a gap that is no number", slope(nan, 0, 1), slope(-3, 0, 1), "not_finite /opening"},
		{"slope of a gap at no place", slope(1, units.Clock(nan), 1), slope(1, 1e4, 1), "not_finite /at"},
		{"slope of a gap across nothing", slope(1, 0, 0), slope(1, 0, 1), "missing /diameter"},
	}
	for _, row := range rows {
		if got := codesAndPaths(row.bad()); !slices.Equal(got, []string{row.want}) {
			t.Errorf("%s: got %v, want just %s", row.name, got, row.want)
		}
		if err := row.twin(); err != nil {
			t.Errorf("%s: the twin is refused: %v", row.name, err)
		}
	}
}

// Feet without a name may be many.
func TestNamelessFeet(t *testing.T) {
	moves, err := align.Exact(caseA).Corrections(align.Foot{X: 1}, align.Foot{X: 2}, align.Foot{X: 3})
	if err != nil || len(moves) != 3 {
		t.Errorf("got %d moves, %v", len(moves), err)
	}
}

// Faults of feet come all at once, and dst is returned as it was.
func TestFeetTogether(t *testing.T) {
	dst := []align.Move{{Foot: align.Foot{Name: "mine"}}}
	got, err := align.Exact(caseA).AppendCorrections(dst,
		align.Foot{Name: "a", X: units.Length(math.Inf(-1))}, align.Foot{Name: "a", U: -1})
	want := []string{"duplicate /feet/1/name", "not_finite /feet/0/x", "out_of_range /feet/1/u"}
	if !slices.Equal(codesAndPaths(err), want) {
		t.Errorf("got %v, want %v", codesAndPaths(err), want)
	}
	if !slices.Equal(got, dst) {
		t.Errorf("dst came back as %v", got)
	}
}

func TestCovarianceRefuses(t *testing.T) {
	good := line(0.003, 1e-5, 0.004, 2e-5)
	with := func(i, j int, r float64) [4][4]float64 {
		m := uncorrelated
		m[i][j], m[j][i] = r, r
		return m
	}
	oneSided := uncorrelated
	oneSided[0][1] = 0.5
	diagonal := uncorrelated
	diagonal[2][2] = 0.9
	three := with(0, 1, 0.9) // a with b, b with c, yet a against c
	three[1][2], three[2][1], three[0][2], three[2][0] = 0.9, 0.9, -0.9, -0.9
	possible := three
	possible[0][2], possible[2][0] = 0.9, 0.9
	rows := []struct {
		name  string
		basis align.Basis
		u     align.Centreline
		r     [4][4]float64
		twin  [4][4]float64
		want  string
	}{
		{"not symmetric", align.Stated, good, oneSided, with(0, 1, 0.5), "conflict /correlation/0/1"},
		{"not one with itself", align.Stated, good, diagonal, uncorrelated, "conflict /correlation/2/2"},
		{"above one", align.Stated, good, with(0, 3, 1.01), with(0, 3, 1), "conflict /correlation"},
		{"below minus one", align.Stated, good, with(2, 3, -1.01), with(2, 3, -1), "conflict /correlation"},
		{"impossible together", align.Scatter, good, three, possible, "conflict /correlation"},
		{"no number", align.Stated, good, with(0, 1, math.NaN()), uncorrelated, "not_finite /correlation/0/1"},
		{"below zero", align.Stated, line(-0.003, 0, 0, 0), uncorrelated, uncorrelated, "out_of_range /u/horizontal/offset"},
		{"slope below zero", align.Stated, line(0, 0, 0, -1e-5), uncorrelated, uncorrelated, "out_of_range /u/vertical/slope"},
		{"infinite", align.Stated, line(0, 0, math.Inf(1), 0), uncorrelated, uncorrelated, "not_finite /u/vertical/offset"},
		{"exact and yet uncertain", align.Declared, good, uncorrelated, uncorrelated, "conflict /u"},
		{"unknown and yet known", align.Unknown, good, uncorrelated, uncorrelated, "conflict /u"},
		{"a basis that does not exist", 4, good, uncorrelated, uncorrelated, "out_of_range /basis"},
	}
	for _, row := range rows {
		_, err := align.NewCovariance(row.basis, row.u, row.r)
		if got := codesAndPaths(err); !slices.Equal(got, []string{row.want}) {
			t.Errorf("%s: got %v (%v), want just %s", row.name, got, err, row.want)
		}
		if _, err := align.NewCovariance(align.Stated, good, row.twin); err != nil {
			t.Errorf("%s: the twin is refused: %v", row.name, err)
		}
	}
}

func TestCovarianceKeepsWhatItIsGiven(t *testing.T) {
	u := line(0.003, 1e-5, 0.004, 2e-5)
	r := [4][4]float64{{1, -0.5, 0.1, 0}, {-0.5, 1, 0, 0.2}, {0.1, 0, 1, 0.7}, {0, 0.2, 0.7, 1}}
	c, err := align.NewCovariance(align.Stated, u, r)
	if err != nil {
		t.Fatal(err)
	}
	got, want := plain(c.Standard()), plain(u)
	for i := range want {
		near(t, fourNames[i], got[i], want[i], 4*eps*want[i])
		for j := range want {
			near(t, "correlation", c.Correlation()[i][j], r[i][j], 4*eps)
		}
	}
}
