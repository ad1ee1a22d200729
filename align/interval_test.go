package align_test

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Student's t at its textbook values: JCGM 100:2008, table G.2 (from memory, to
// the digits printed there), the closed forms for one and two degrees of freedom,
// and the first term (z^3 + z)/(4 dof) of the expansion at 1e5 (derived here); 1.96
// to its digits from the inverse error function at high precision.
func TestCoverageFactor(t *testing.T) {
	normal95 := 1.9599639845400542355
	rows := []struct {
		name             string
		p, dof, want, by float64
	}{
		{"G.2, 1, 95 %", 0.95, 1, 12.71, 0.005},
		{"G.2, 2, 95 %", 0.95, 2, 4.30, 0.005},
		{"G.2, 5, 95 %", 0.95, 5, 2.57, 0.005},
		{"G.2, 8, 95 %", 0.95, 8, 2.31, 0.005},
		{"G.2, 16, 99 %", 0.99, 16, 2.92, 0.005},
		{"G.2, 50, 95.45 %", 0.9545, 50, 2.05, 0.005},
		{"one, tan(pi p/2)", 0.95, 1, math.Tan(math.Pi * 0.95 / 2), 1e-12},
		{"two, p sqrt(2/(1-p^2))", 0.8, 2, 0.8 * math.Sqrt(2/0.36), 1e-12},
		{"none to count", 0.95, 0, normal95, 1e-14},
		{"none, as sure as can be", 0.999999, 0, math.Sqrt2 * math.Erfinv(0.999999), 1e-9},
		{"very many", 0.95, 1e9, normal95, 1e-8},
		{"where the expansion takes over, below", 0.95, 1e5, normal95 + 2.3722512e-5, 1e-9},
		{"and above", 0.95, math.Nextafter(1e5, 2e5), normal95 + 2.3722512e-5, 1e-9},
	}
	for _, row := range rows {
		got, err := align.CoverageFactor(row.p, row.dof)
		if err != nil {
			t.Fatal(err)
		}
		near(t, row.name, got, row.want, row.by)
	}
}

func TestCoverageFactorRefuses(t *testing.T) {
	nan := math.NaN()
	rows := []struct {
		name   string
		p, dof float64
		code   units.Code
		path   string
	}{
		{"no probability", 0, 3, units.OutOfRange, "/probability"},
		{"certainty", 1, 3, units.OutOfRange, "/probability"},
		{"per cent", 95, 3, units.OutOfRange, "/probability"},
		{"surer than quantiles are right", 0.9999991, 3, units.OutOfRange, "/probability"},
		{"no number", nan, 3, units.OutOfRange, "/probability"},
		{"negative", 0.95, -1, units.OutOfRange, "/dof"},
		{"hardly any", 0.95, 0.05, units.OutOfRange, "/dof"},
		{"no number of degrees", 0.95, nan, units.NotFinite, "/dof"},
	}
	for _, row := range rows {
		_, err := align.CoverageFactor(row.p, row.dof)
		checkFault(t, err, row.code, row.path)
	}
}

// scattered is a fit whose uncertainty comes from the scatter of seven readings a
// dial, and from a tape that was stated.
func scattered(t *testing.T, tape units.Length) align.Fitted {
	sets := read(t, caseA, reverse(), even(7, 0, 200)...)
	for i := range sets {
		sets[i].U.Station = tape
		for j := range sets[i].Readings {
			sets[i].Readings[j].Value += units.Length(i+j*j%5) * um
		}
	}
	return mustFit(t, sets...)
}

// With the tape exact all is scatter, and the degrees of freedom are those of the
// fit, in any direction.
func TestEffectiveDoFOfScatterAlone(t *testing.T) {
	f := scattered(t, 0)
	rapid.Check(t, func(t *rapid.T) {
		var a [4]float64
		for i := range a {
			a[i] = rapid.Float64Range(0.1, 1).Draw(t, "a") * float64(1-2*rapid.IntRange(0, 1).Draw(t, "sign"))
		}
		near(t, "degrees", f.Cov.EffectiveDoF(a), 8, 1e-9)
	})
}

// With the tape stated the formula of Welch and Satterthwaite, from the budget.
func TestEffectiveDoFBesideATape(t *testing.T) {
	f, without := scattered(t, 2*mm), scattered(t, 0)
	u, s := f.Cov.Standard().Vertical.Slope, without.Cov.Standard().Vertical.Slope
	want := 8 * math.Pow(float64(u/s), 4)
	if want < 9 {
		t.Fatalf("the tape does not count: %g degrees", want)
	}
	near(t, "slope", f.Cov.EffectiveDoF([4]float64{3: 1}), want, want*1e-9)
	half, err := f.Expanded(0.95)
	if err != nil {
		t.Fatal(err)
	}
	k, _ := align.CoverageFactor(0.95, want)
	near(t, "half width", half.Vertical.Slope, u*units.Slope(k), u*1e-9)
	k8, _ := align.CoverageFactor(0.95, 8)
	alone, _ := without.Expanded(0.95)
	near(t, "half width of scatter alone", alone.Vertical.Slope, s*units.Slope(k8), s*1e-9)
}

// What is stated beside a scatter counts as known, also after the estimates were
// added and turned round.
func TestWelchSatterthwaiteOfASum(t *testing.T) {
	for _, part := range []struct{ scatter, stated, dof float64 }{{25, 20, 18}, {9.7, 30, 25.6}, {16.6, 1, 2}} {
		u := func(nm float64) align.Centreline {
			return align.Centreline{Vertical: align.Line{Offset: units.Length(nm)}}
		}
		identity := [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}
		scatter, err := align.NewCovariance(align.Scatter, u(part.scatter), identity)
		if err != nil {
			t.Fatal(err)
		}
		scatter.DoF = part.dof
		stated, err := align.NewCovariance(align.Stated, u(part.stated), identity)
		if err != nil {
			t.Fatal(err)
		}
		sum := align.Estimate{Cov: scatter}.Plus(align.Estimate{Cov: stated})
		all := math.Hypot(part.scatter, part.stated)
		near(t, "u", sum.Cov.Standard().Vertical.Offset, units.Length(all), 1e-9)
		want := math.Pow(all, 4) / (math.Pow(part.scatter, 4) / part.dof)
		near(t, "degrees", sum.Cov.EffectiveDoF([4]float64{2: 1}), want, want*1e-12)
		near(t, "degrees of the same turned round", sum.Times(-3).Cov.EffectiveDoF([4]float64{2: 1}), want, want*1e-12)
	}
}

// In each plane, by hand: the offset is known to 3 um from a scatter of 5 degrees of
// freedom, the slope to 4 um/m as stated. One metre away u is 5 um, of which the scatter
// has 3: 5 (5/3)^4 degrees.
func TestEffectiveDoFOfAnOffsetAndASlope(t *testing.T) {
	identity := [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}
	scatter, err := align.NewCovariance(align.Scatter, line(0.003, 0, 0.003, 0), identity)
	if err != nil {
		t.Fatal(err)
	}
	scatter.DoF = 5
	stated, err := align.NewCovariance(align.Stated, line(0, 4e-6, 0, 4e-6), identity)
	if err != nil {
		t.Fatal(err)
	}
	both := align.Estimate{Cov: scatter}.Plus(align.Estimate{Cov: stated}).Cov
	const metre, want = float64(1000 * mm), 5 * 625.0 / 81
	near(t, "horizontal", both.EffectiveDoF([4]float64{1, metre, 0, 0}), want, 1e-9)
	near(t, "vertical", both.EffectiveDoF([4]float64{0, 0, 1, metre}), want, 1e-9)
}

// A scatter that is nothing beside what was stated leaves no degrees to count,
// where the formula would give a number without meaning.
func TestHardlyAnyScatter(t *testing.T) {
	if got := scattered(t, 5000*mm).Cov.EffectiveDoF([4]float64{3: 1}); got != 0 {
		t.Errorf("%g degrees, want none to count", got)
	}
}

// A foot far out: its move has the interval of w there, and its own tape counts
// as known.
func TestMoveExpanded(t *testing.T) {
	f := scattered(t, 0)
	foot := align.Foot{Name: "outboard", X: 1200 * mm}
	moves, err := f.Corrections(foot)
	if err != nil {
		t.Fatal(err)
	}
	half, err := moves[0].Expanded(0.95)
	if err != nil {
		t.Fatal(err)
	}
	want, err := f.ExpandedAt(foot.X, 0.95)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "vertical", half.Vertical, want.Vertical, want.Vertical*1e-12)
	near(t, "horizontal", half.Horizontal, want.Horizontal, want.Horizontal*1e-12)

	foot.U = 20 * mm
	moves, _ = f.Corrections(foot)
	_, u := f.At(foot.X)
	share := float64(moves[0].U.Vertical / u.Vertical)
	near(t, "degrees with the foot's own tape", moves[0].DoF.Vertical, 8*math.Pow(share, 4), 1e-6)
}

func TestExpandedOfOtherBases(t *testing.T) {
	exact, err := align.Exact(caseA).Expanded(0.95)
	if err != nil || exact != (align.Centreline{}) {
		t.Errorf("exact: %v, %v", exact, err)
	}
	unknown, err := align.Estimate{Cov: align.Covariance{Basis: align.Unknown}}.Expanded(0.95)
	if err != nil || !math.IsNaN(float64(unknown.Vertical.Offset)) {
		t.Errorf("unknown: %v, %v", unknown, err)
	}
	stated := mustFit(t, state(read(t, caseA, reverse(), quarters...), um)...)
	half, _ := stated.Expanded(0.95)
	near(t, "stated", half.Vertical.Offset, stated.Cov.Standard().Vertical.Offset*1.959963984540054, 1e-9)
}

func TestExpandedRefuses(t *testing.T) {
	e := align.Exact(caseA)
	_, err := e.Expanded(1)
	checkFault(t, err, units.OutOfRange, "/probability")
	_, err = e.ExpandedAt(units.Length(math.Inf(1)), 0.95)
	checkFault(t, err, units.NotFinite, "/x")
	_, err = align.Move{}.Expanded(0)
	checkFault(t, err, units.OutOfRange, "/probability")
	if _, err := (align.Move{DoF: align.Freedom{Vertical: 0.1}}).Expanded(0.95); err != nil {
		t.Errorf("a tenth of a degree of freedom: %v", err)
	}
	_, err = align.Move{DoF: align.Freedom{Vertical: -1}}.Expanded(0.95)
	checkFault(t, err, units.OutOfRange, "/dof/vertical")
	e.Value.Vertical.Offset = units.Length(math.NaN())
	_, err = e.Expanded(0.95)
	checkFault(t, err, units.NotFinite, "/value/vertical/offset")
}

// The part that is scatter survives JSON, and is left out where it is all.
func TestScatteredPartInJSON(t *testing.T) {
	f := scattered(t, 2*mm)
	data, err := json.Marshal(f.Cov)
	if err != nil {
		t.Fatal(err)
	}
	var back align.Covariance
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(f.Cov, back, openly, closely(1e-9, 0)); diff != "" {
		t.Error(diff)
	}
	for i := range 4 {
		var a [4]float64
		a[i] = 1
		near(t, "degrees", back.EffectiveDoF(a), f.Cov.EffectiveDoF(a), 1e-6*f.Cov.EffectiveDoF(a))
	}
	all, err := json.Marshal(scattered(t, 0).Cov)
	if err != nil {
		t.Fatal(err)
	}
	var members map[string]json.RawMessage
	if err := json.Unmarshal(all, &members); err != nil {
		t.Fatal(err)
	}
	if _, there := members["scattered"]; there {
		t.Errorf("scatter alone: %s", all)
	}
}

func TestScatteredPartRefused(t *testing.T) {
	const (
		u    = `{"horizontal":{"offset":"1 um","slope":"1 um/m"},"vertical":{"offset":"1 um","slope":"1 um/m"}}`
		big  = `{"horizontal":{"offset":"1 um","slope":"1 um/m"},"vertical":{"offset":"2 um","slope":"1 um/m"}}`
		half = `{"horizontal":{"offset":"1 um","slope":"1 um/m"},"vertical":{"offset":"0.5 um","slope":"1 um/m"}}`
		one  = `[[1,0,0,0],[0,1,0,0],[0,0,1,0],[0,0,0,1]]`
	)
	doc := func(basis, part string) string {
		return `{"basis":"` + basis + `","u":` + u + `,"scattered":` + part + `}`
	}
	var c align.Covariance
	if err := json.Unmarshal([]byte(doc("scatter", `{"u":`+half+`,"correlation":`+one+`}`)), &c); err != nil {
		t.Errorf("the sound twin: %v", err)
	}
	rows := []struct{ name, doc, path string }{
		{"more than the whole", doc("scatter", `{"u":`+big+`,"correlation":`+one+`}`), "/scattered/u"},
		{"of another basis", doc("stated", `{"u":`+half+`,"correlation":`+one+`}`), "/scattered"},
		{"no uncertainties", doc("scatter", `{"correlation":`+one+`}`), "/scattered"},
		{"no correlations", doc("scatter", `{"u":`+half+`}`), "/scattered/correlation/0/0"},
	}
	for _, row := range rows {
		checkFault(t, json.Unmarshal([]byte(row.doc), &c), units.Conflict, row.path)
	}
}

// Where the centreline passes is known no better than the centreline: what Expanded
// refuses, ExpandedAt does.
func TestExpandedAtRefusesAProbability(t *testing.T) {
	for _, p := range []float64{0, 1, -0.5, math.NaN()} {
		_, want := align.Estimate{}.Expanded(p)
		v, err := align.Estimate{}.ExpandedAt(10*mm, p)
		if got := codesAndPaths(err); len(got) != 1 || !slices.Equal(got, codesAndPaths(want)) || v != (align.Vector{}) {
			t.Errorf("%v: %v, %v", p, v, got)
		}
	}
	if _, err := (align.Estimate{}).ExpandedAt(10*mm, 0.95); err != nil {
		t.Error(err)
	}
}
