package arc_test

import (
	"encoding/json"
	"math"
	"math/big"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

func mustCompare(tb fataler, a, b align.Estimate) arc.Agreement {
	tb.Helper()
	c, err := arc.Compare(a, b)
	if err != nil {
		tb.Fatalf("Compare: %v", err)
	}
	return c
}

// stated makes an estimate whose four numbers have independent uncertainties.
func stated(tb fataler, value, u align.Centreline) align.Estimate {
	tb.Helper()
	c, err := align.NewCovariance(align.Stated, u, alone)
	if err != nil {
		tb.Fatalf("NewCovariance: %v", err)
	}
	return align.Estimate{Value: value, Cov: c}
}

// alone is the correlation of numbers that have none.
var alone = [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}

// drawEstimate draws one with uncertainties and correlations of a fit's size.
func drawEstimate(t *rapid.T, name string) align.Estimate {
	u := func(what string, most float64) float64 { return rapid.Float64Range(most/50, most).Draw(t, name+what) }
	size := line(u(" u offset y", 0.05), u(" u slope y", 1e-4), u(" u offset z", 0.05), u(" u slope z", 1e-4))
	// Correlations of four mixtures of four independent numbers.
	var mix, r [4][4]float64
	for i := range mix {
		for j := range mix {
			mix[i][j] = rapid.Float64Range(-0.5, 0.5).Draw(t, name+" mix")
		}
		mix[i][i]++
	}
	for i := range r {
		for j := range r {
			r[i][j] = dotOf(mix[i], mix[j]) / math.Sqrt(dotOf(mix[i], mix[i])*dotOf(mix[j], mix[j]))
		}
		r[i][i] = 1
	}
	c, err := align.NewCovariance(align.Stated, size, r)
	if err != nil {
		t.Fatalf("NewCovariance: %v", err)
	}
	return align.Estimate{Value: drawLine(t).Times(0.1), Cov: c}
}

func dotOf(a, b [4]float64) (sum float64) {
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

// rational solves V x = d for the sum V of both covariances and returns d and x, in
// millimetres and ratios, without rounding, by Gauss and Jordan.
func rational(a, b align.Estimate) (d, x [4]*big.Rat) {
	var v [4][5]*big.Rat
	of := func(f float64) *big.Rat { return new(big.Rat).SetFloat64(f) }
	times := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Mul(p, q) }
	ua, ub := plain(a.Cov.Standard()), plain(b.Cov.Standard())
	ra, rb := a.Cov.Correlation(), b.Cov.Correlation()
	va, vb := plain(a.Value), plain(b.Value)
	for i := range v {
		for j := range 4 {
			va := times(of(ra[i][j]), times(of(ua[i]), of(ua[j])))
			vb := times(of(rb[i][j]), times(of(ub[i]), of(ub[j])))
			v[i][j] = va.Add(va, vb)
		}
		v[i][4] = new(big.Rat).Sub(of(va[i]), of(vb[i]))
		d[i] = new(big.Rat).Set(v[i][4])
	}
	for k := range v {
		for i := range v {
			if i == k {
				continue
			}
			f := new(big.Rat).Quo(v[i][k], v[k][k])
			for j := range v[i] {
				v[i][j] = new(big.Rat).Sub(v[i][j], times(f, v[k][j]))
			}
		}
	}
	for i := range x {
		x[i] = new(big.Rat).Quo(v[i][4], v[i][i])
	}
	return d, x
}

// Chi-square against an inverse without rounding. The worst mixture has an
// eigenvalue of some hundredths, the values cancel to a tenth or so.
func TestCompareAgainstRationals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawEstimate(t, "a"), drawEstimate(t, "b")
		d, x := rational(a, b)
		sum := new(big.Rat)
		for i := range d {
			sum.Add(sum, new(big.Rat).Mul(d[i], x[i]))
		}
		want, _ := sum.Float64()
		c := mustCompare(t, a, b)
		near(t, "chi-square", c.Chi2, want, 1e-9*(want+1e-3))
		near(t, "probability", c.P, distuv.ChiSquared{K: 4}.Survival(c.Chi2), 1e-12)
		if c.Compared != 4 || c.DoF != 0 || c.Apart {
			t.Errorf("compared %d with %v degrees of freedom, apart %t", c.Compared, c.DoF, c.Apart)
		}
	})
}

// Numbers by hand: one or more that are uncertain. Of four independent ones the
// chi-square is the sum of squares over variances; survival of chi-square with 2 and
// 4 degrees is exp(-x/2) and exp(-x/2)(1 + x/2), of 1 it is erfc(sqrt(x/2)).
func TestCompareByHand(t *testing.T) {
	for _, row := range []struct {
		name     string
		da       align.Centreline
		ua, ub   align.Centreline
		compared int
		chi2, p  float64
	}{
		{"all four, each two of its uncertainties", line(0.1, 0.1e-3, 0.1, 0.1e-3), line(0.03, 3e-5, 0.05, 4e-5), line(0.04, 4e-5, 0, 3e-5), 4, 16, math.Exp(-8) * 9},
		{"both offsets", line(0.03, 0, 0.04, 0), line(0.01, 0, 0.02, 0), line(0, 0, 0, 0), 2, 13, math.Exp(-6.5)},
		{"one number", line(0, 0, 0, 0.2e-3), line(0, 0, 0, 0.1e-3), line(0, 0, 0, 0), 1, 4, math.Erfc(math.Sqrt2)},
	} {
		c := mustCompare(t, stated(t, row.da, row.ua), stated(t, line(0, 0, 0, 0), row.ub))
		near(t, row.name+": chi-square", c.Chi2, row.chi2, 1e-12*row.chi2)
		near(t, row.name+": probability", c.P, row.p, 1e-12*row.p)
		if c.Compared != row.compared || c.Apart {
			t.Errorf("%s: compared %d, apart %t", row.name, c.Compared, c.Apart)
		}
	}
}

// What is exact in both agrees or does not; no chance comes in.
func TestCompareExact(t *testing.T) {
	nextUp := caseA
	nextUp.Vertical.Slope = units.Slope(math.Nextafter(float64(nextUp.Vertical.Slope), 1))
	nextUpOffset := caseA
	nextUpOffset.Vertical.Offset = units.Length(math.Nextafter(float64(caseA.Vertical.Offset), 1e9))
	off := caseA
	off.Vertical.Slope += 1e-9
	half := line(0.01, 1e-5, 0, 0) // the vertical plane is exact
	for _, row := range []struct {
		name  string
		a, b  align.Estimate
		apart bool
		p     float64
	}{
		{"zero values", align.Estimate{}, align.Estimate{}, false, 1},
		{"the same", align.Exact(caseA), align.Exact(caseA), false, 1},
		{"the same to rounding", align.Exact(caseA), align.Exact(nextUp), false, 1},
		{"the same to rounding of the offset", align.Exact(caseA), align.Exact(nextUpOffset), false, 1},
		{"a nanometre on a metre", align.Exact(caseA), align.Exact(off), true, 0},
		{"one plane exact, the same", stated(t, caseA, half), stated(t, nextUp, half), false, 1},
		{"one plane exact, another", stated(t, caseA, half), stated(t, off, half), true, 0},
		{"one exact only", align.Exact(caseA), stated(t, caseA, line(1, 1, 1, 1)), false, 1},
	} {
		c := mustCompare(t, row.a, row.b)
		if c.Apart != row.apart || c.P != row.p || c.Chi2 != 0 {
			t.Errorf("%s: %+v, want apart %t and P %v", row.name, c, row.apart, row.p)
		}
	}
}

// Offset and slope of one error, a tilt about x = -100 mm say: apart from that line
// both are exact. A difference along it is chance, another is not.
func TestCompareAlongOneDirection(t *testing.T) {
	r := alone
	r[2][3], r[3][2] = 1, 1
	c, err := align.NewCovariance(align.Stated, line(0, 0, 0.01, 1e-4), r)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name  string
		d     align.Centreline
		apart bool
		chi2  float64
	}{
		{"along it", line(0, 0, 0.02, 2e-4), false, 4},
		{"across it", line(0, 0, 0.02, -2e-4), true, 0},
		{"across it by a hundredth", line(0, 0, 0.02, 2.04e-4), true, 4.0804},
	} {
		got := mustCompare(t, align.Estimate{Value: row.d, Cov: c}, align.Estimate{})
		if got.Compared != 1 || got.Apart != row.apart {
			t.Errorf("%s: %+v", row.name, got)
		}
		near(t, row.name, got.Chi2, row.chi2, 1e-9+0.01*row.chi2*b2f(row.apart))
	}
}

func b2f(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func TestCompareUnknown(t *testing.T) {
	unknown := align.Estimate{Value: caseA, Cov: align.Covariance{Basis: align.Unknown}}
	for _, c := range []arc.Agreement{mustCompare(t, unknown, align.Estimate{}), mustCompare(t, align.Estimate{}, unknown)} {
		if !math.IsNaN(c.P) || !math.IsNaN(c.Chi2) || c.Difference.Cov.Basis != align.Unknown {
			t.Errorf("%+v", c)
		}
		nearLine(t, "size", absolute(c.Difference.Value), absolute(caseA), 0)
	}
}

func absolute(c align.Centreline) align.Centreline {
	p := plain(c)
	return line(math.Abs(p[0]), math.Abs(p[1]), math.Abs(p[2]), math.Abs(p[3]))
}

// Either way round the same; the same as itself; the same at any scale, and from
// the other end of the machines.
func TestCompareProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawEstimate(t, "a"), drawEstimate(t, "b")
		c := mustCompare(t, a, b)
		same := func(what string, d arc.Agreement) {
			near(t, what+": chi-square", d.Chi2, c.Chi2, 1e-9*(c.Chi2+1e-3))
			near(t, what+": probability", d.P, c.P, 1e-9)
		}
		same("exchanged", mustCompare(t, b, a))
		k := rapid.SampledFrom([]float64{1e-3, -1, 1e4}).Draw(t, "k")
		same("scaled", mustCompare(t, a.Times(k), b.Times(k)))
		both := align.Exact(drawLine(t))
		same("from another axis", mustCompare(t, a.Plus(both), b.Plus(both)))
		if i := mustCompare(t, a, a); i.Chi2 != 0 || i.P != 1 {
			t.Errorf("with itself: %+v", i)
		}
	})
}

// The probability of a scatter with few degrees of freedom: Fisher's F, from the
// distribution itself, and by hand where it is a t. A single number with one degree
// of freedom follows Cauchy: at one uncertainty P = 1/2.
func TestCompareScatter(t *testing.T) {
	scatter := func(u align.Centreline, dof float64) align.Estimate {
		c, err := align.NewCovariance(align.Scatter, u, alone)
		if err != nil {
			t.Fatal(err)
		}
		c.DoF = dof
		return align.Estimate{Cov: c}
	}
	one := scatter(line(0.01, 0, 0, 0), 1)
	c := mustCompare(t, align.Exact(line(0.01, 0, 0, 0)), one)
	near(t, "Cauchy", c.P, 0.5, 1e-12)
	for _, dof := range []float64{0.5, 1, 2, 3.7, 50, 1e4, 1e7, 1e9} {
		c := mustCompare(t, align.Exact(line(0.02, 1e-5, 0.01, 2e-5)), scatter(line(0.01, 1e-5, 0.01, 1e-5), dof))
		near(t, "chi-square", c.Chi2, 10, 1e-12)
		near(t, "degrees of freedom", c.DoF, dof, 1e-9*dof)
		near(t, "probability", c.P, distuv.F{D1: 4, D2: dof}.Survival(c.Chi2/4), 1e-7)
	}
	// Both scatter alike with 3: Welch and Satterthwaite find 6. Beside as much
	// that is stated: 3 over a quarter, 12.
	d := line(0.02, 0, 0, 0)
	moved := scatter(line(0.01, 1e-5, 0.01, 1e-5), 3).Plus(align.Exact(d))
	c = mustCompare(t, moved, scatter(line(0.01, 1e-5, 0.01, 1e-5), 3))
	near(t, "two scatters", c.DoF, 6, 1e-9)
	c = mustCompare(t, moved, stated(t, align.Centreline{}, line(0.01, 1e-5, 0.01, 1e-5)))
	near(t, "one scatter", c.DoF, 12, 1e-9)
	// The offset from a scatter of 3, the slope stated, each off by one of its
	// uncertainties: half the variance of what differs most is scatter.
	mixed := scatter(line(0.01, 0, 0, 0), 3).Plus(stated(t, align.Centreline{}, line(0, 1e-5, 0, 0)))
	c = mustCompare(t, align.Exact(line(0.01, 1e-5, 0, 0)), mixed)
	near(t, "a scatter in one number of two", c.DoF, 12, 1e-9)
}

// Of correlated numbers that both scatter, against an inverse without rounding: the
// degrees of freedom are those of V^-1 d (Welch and Satterthwaite), with 5 on one side and
// 9 on the other.
func TestCompareScatterAgainstRationals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		scatter := func(name string, dof float64) align.Estimate {
			e := drawEstimate(t, name)
			c, err := align.NewCovariance(align.Scatter, e.Cov.Standard(), e.Cov.Correlation())
			if err != nil {
				t.Fatalf("NewCovariance: %v", err)
			}
			c.DoF = dof
			return align.Estimate{Value: e.Value, Cov: c}
		}
		a, b := scatter("a", 5), scatter("b", 9)
		_, x := rational(a, b)
		along := func(e align.Estimate) (variance float64) {
			u, r := plain(e.Cov.Standard()), e.Cov.Correlation()
			for i := range u {
				for j := range u {
					xi, _ := x[i].Float64()
					xj, _ := x[j].Float64()
					variance += xi * u[i] * r[i][j] * u[j] * xj
				}
			}
			return variance
		}
		both := along(a) + along(b)
		if both < 1e-250 {
			t.Skip("no difference, or one whose square is below the least number")
		}
		share := along(a) / both
		want := 1 / (share*share/5 + (1-share)*(1-share)/9)
		near(t, "degrees of freedom", mustCompare(t, a, b).DoF, want, 1e-6*want)
	})
}

// Two estimates of one error, good to 10 um: across it both are exact, and 2 nm apart
// there are no chance, though both are 10 mm off.
func TestCompareNanometresAcrossOneDirection(t *testing.T) {
	r := alone
	r[2][3], r[3][2] = 1, 1
	c, err := align.NewCovariance(align.Stated, line(0, 0, 0.01, 1e-5), r)
	if err != nil {
		t.Fatal(err)
	}
	a := align.Estimate{Value: line(0, 0, 10, 0), Cov: c}
	for by, apart := range map[float64]bool{0: false, 2e-6: true} {
		b := align.Estimate{Value: line(0, 0, 10+by, 0), Cov: c}
		if got := mustCompare(t, a, b); got.Apart != apart {
			t.Errorf("%v mm: %+v", by, got)
		}
	}
}

func TestCompareRefuses(t *testing.T) {
	bad := align.Estimate{Value: line(math.NaN(), 0, 0, 0)}
	unsound := align.Estimate{Cov: align.Covariance{Basis: 9}}
	for _, row := range []struct {
		name string
		a, b align.Estimate
		want []string
	}{
		{"the first", bad, align.Estimate{}, []string{"not_finite /a/value/horizontal/offset"}},
		{"the second", align.Estimate{}, unsound, []string{"out_of_range /b/cov/basis"}},
		{"both", unsound, bad, []string{"not_finite /b/value/horizontal/offset", "out_of_range /a/cov/basis"}},
		{"neither", align.Estimate{}, align.Estimate{}, nil},
	} {
		_, err := arc.Compare(row.a, row.b)
		if got := codesAndPaths(err); !slices.Equal(got, row.want) {
			t.Errorf("Compare, %s: got %v, want %v", row.name, got, row.want)
		}
		_, _, err = arc.Merge(row.a, row.b)
		if got := codesAndPaths(err); !slices.Equal(got, row.want) {
			t.Errorf("Merge, %s: got %v, want %v", row.name, got, row.want)
		}
	}
}

func TestAgreementJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sameAfterJSON(t, mustCompare(t, drawEstimate(t, "a"), drawEstimate(t, "b")), 1e-13)
	})
	far := line(1, 0, 0, 0)
	sameAfterJSON(t, mustCompare(t, align.Exact(caseA), align.Exact(far)), 0)
	sameAfterJSON(t, mustCompare(t, align.Exact(caseA), stated(t, far, line(1e-160, 1, 1, 1))), 0)
	sameAfterJSON(t, mustCompare(t, align.Exact(caseA), align.Estimate{Cov: align.Covariance{Basis: align.Unknown}}), 0)
	sameAfterJSON(t, arc.Agreement{}, 0)
	const exact, unknown = `{"difference":{"value":{"horizontal":{"offset":"0 mm","slope":"0 mm/m"},"vertical":{"offset":"0 mm","slope":"0 mm/m"}},"cov":{"basis":"declared"}},`,
		`{"difference":{"cov":{"basis":"unknown"}},`
	for _, row := range []struct{ name, text, want string }{
		{"no probability", exact + `"chi2":0}`, "missing /p"},
		{"no chi-square", exact + `"p":1}`, "missing /chi2"},
		{"a probability above one", exact + `"chi2":0,"p":1.5}`, "out_of_range /p"},
		{"a chi-square below zero", exact + `"chi2":-1,"p":1}`, "out_of_range /chi2"},
		{"five numbers", exact + `"compared":5,"chi2":0,"p":1}`, "out_of_range /compared"},
		{"degrees of freedom below zero", exact + `"dof":-1,"chi2":0,"p":1}`, "out_of_range /dof"},
		{"a probability of what is unknown", unknown + `"p":1}`, "conflict /p"},
		{"no difference", `{"compared":0,"chi2":0,"p":1}`, "missing /difference"},
		{"a covariance without its basis", `{"difference":{"cov":{}},"chi2":0,"p":1}`, "missing /difference/cov/basis"},
		{"a covariance misspelt", `{"difference":{"kov":{"basis":"unknown"}},"chi2":0,"p":1}`, "unknown /difference/kov"},
		{"a basis that does not exist", `{"difference":{"cov":{"basis":"guessed"}}}`, "unknown /difference/cov/basis"},
		{"a slope as a number", `{"difference":{"value":{"vertical":{"slope":1}},"cov":{"basis":"unknown"}}}`, "malformed /difference/value/vertical/slope"},
		{"a text for a probability", exact + `"chi2":0,"p":"1"}`, "malformed /p"},
		{"a misspelt member", exact + `"chi2":0,"p":1,"appart":true}`, "unknown /appart"},
		{"sound", exact + `"compared":0,"chi2":0,"p":1}`, ""},
		{"sound, unknown", unknown + `"compared":0}`, ""},
	} {
		var c arc.Agreement
		err := json.Unmarshal([]byte(row.text), &c)
		var want []string
		if row.want != "" {
			want = []string{row.want}
		}
		if got := codesAndPaths(err); !slices.Equal(got, want) || (err == nil) != (want == nil) {
			t.Errorf("%s: got %v (%v), want %v", row.name, got, err, want)
		}
	}
}
