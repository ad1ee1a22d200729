package lsq_test

import (
	"math"
	"testing"
)

// fit returns the answer to s with its covariance scaled by the variance of the
// residuals, or as it stands if the variance of the data is known.
func fit(s system, varianceKnown bool) answer {
	n := s.unknowns()
	tri := triangle(s)
	a := answerOf(&tri, n)
	if !varianceKnown {
		for i := range a.cov {
			a.cov[i] *= a.sum / float64(len(s.a)-n)
		}
	}
	return a
}

// deviation returns the standard deviation of unknown i.
func (a answer) deviation(i int) float64 { return math.Sqrt(a.cov[i*len(a.x)+i]) }

// published is one number: as computed, as printed by its source to the given
// unit in the last place (zero: not printed there), and exactly.
type published struct {
	name                  string
	got, printed, ulp, by float64
}

func checkPublished(t *testing.T, numbers []published) {
	t.Helper()
	for _, p := range numbers {
		if p.ulp != 0 && math.Abs(p.got-p.printed) > 0.5*p.ulp {
			t.Errorf("%s = %g, printed as %g", p.name, p.got, p.printed)
		}
		if math.Abs(p.got-p.by) > 1e-12*math.Abs(p.by) {
			t.Errorf("%s = %.16g, exactly %.16g", p.name, p.got, p.by)
		}
	}
}

// JCGM 100:2008 (GUM), H.3: calibration of a thermometer, the correction as a
// straight line about 20 °C. Numbers second-hand; the exact ones recomputed in
// rational arithmetic.
func TestGUMThermometer(t *testing.T) {
	temperatures := []float64{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511}
	corrections := []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
	var s system
	for i, temperature := range temperatures {
		s.add(corrections[i], 1, temperature-20)
	}
	a := fit(s, false)
	at30 := a.x[0] + 10*a.x[1]
	u30 := math.Sqrt(a.cov[0] + 20*a.cov[1] + 100*a.cov[3])
	checkPublished(t, []published{
		{"y1", a.x[0], -0.1712, 1e-4, -0.1712037901313499770560631},
		{"u(y1)", a.deviation(0), 0.0029, 1e-4, 0.002877597835159953713434825},
		{"y2", a.x[1], 0.00218, 1e-5, 0.002182697739887277971938732},
		{"u(y2)", a.deviation(1), 0.00067, 1e-5, 0.0006679387732278317017242826},
		{"cov(y1,y2)", a.cov[1], 0, 0, -0.000001788340748673916077598444},
		{"r(y1,y2)", a.cov[1] / a.deviation(0) / a.deviation(1), -0.930, 1e-3, -0.9304296030934458805125824},
		{"s", math.Sqrt(a.sum / 9), 0.0035, 1e-4, 0.003497563963505284055193090},
		{"b(30)", at30, -0.1494, 1e-4, -0.1493768127324771973366758},
		{"u(b(30))", u30, 0.0041, 1e-4, 0.004138595752854947411703727},
	})
}

// ISO/TS 28037:2010, 6.3: weighted straight lines y = a + b x with known
// uncertainties. Numbers second-hand; the exact ones recomputed in rational
// arithmetic.
func TestISO28037WeightedLine(t *testing.T) {
	equal := line([]float64{3.3, 5.6, 7.1, 9.3, 10.7, 12.1}, []float64{0.5, 0.5, 0.5, 0.5, 0.5, 0.5})
	unequal := line([]float64{3.2, 4.3, 7.6, 8.6, 11.7, 12.8}, []float64{0.5, 0.5, 0.5, 1, 1, 1})
	checkPublished(t, []published{
		{"a", equal.x[0], 1.867, 1e-3, 1.866666666666666666666667},
		{"u(a)", equal.deviation(0), 0.465, 1e-3, 0.4654746681256313723294642},
		{"b", equal.x[1], 1.757, 1e-3, 1.757142857142857142857143},
		{"u(b)", equal.deviation(1), 0.120, 1e-3, 0.1195228609334393639968817},
		{"cov", equal.cov[1], -0.050, 1e-3, -0.05},
		{"chi²", equal.sum, 1.665, 1e-3, 1.664761904761904761904762},
		{"weighted a", unequal.x[0], 0.885, 1e-3, 0.8852320675105485232067511},
		{"weighted u(a)", unequal.deviation(0), 0.530, 1e-3, 0.5297081435088364384581638},
		{"weighted b", unequal.x[1], 2.057, 1e-3, 2.056962025316455696202532},
		{"weighted u(b)", unequal.deviation(1), 0.178, 1e-3, 0.1778920167412050128421085},
		{"weighted cov", unequal.cov[1], -0.082, 1e-3, -0.08227848101265822784810127},
		{"weighted chi²", unequal.sum, 4.131, 1e-3, 4.130801687763713080168776},
	})
}

// line fits a straight line through y at 1, 2, 3 and so on.
func line(y, u []float64) answer {
	var s system
	for i := range y {
		s.add(y[i]/u[i], 1/u[i], float64(i+1)/u[i])
	}
	return fit(s, true)
}

// NIST StRD, nonlinear regression, ENSO: with the two free periods held at
// their certified values the rest is linear and must return the certified
// numbers. The eleven printed digits of the periods allow 9.7 digits.
func TestNISTENSO(t *testing.T) {
	var d struct {
		Y, Periods, Estimates []string
		SumOfSquares          string `json:"sum_of_squares"`
	}
	readJSON(t, "testdata/nist-enso.json", &d)
	var s system
	for i, y := range d.Y {
		row := []float64{1}
		for _, period := range d.Periods {
			sin, cos := math.Sincos(2 * math.Pi * float64(i+1) / number(t, period))
			row = append(row, cos, sin)
		}
		s.add(number(t, y), row...)
	}
	if len(s.a) != 168 || s.unknowns() != 7 {
		t.Fatalf("%d equations in %d unknowns", len(s.a), s.unknowns())
	}
	a := fit(s, false)
	for i, estimate := range d.Estimates {
		if got := logError(a.x[i], number(t, estimate)); got < 9.5 {
			t.Errorf("estimate %d: %.12g, certified %s", i, a.x[i], estimate)
		}
	}
	if got := logError(a.sum, number(t, d.SumOfSquares)); got < 10 {
		t.Errorf("sum of squares %.12g, certified %s", a.sum, d.SumOfSquares)
	}
}

// Three-parameter sine fits, rows [cos, sin, 1] as in IEEE Std 1057 and IEEE
// Std 1241-2010, annex B (second-hand). Derived here: the first two by hand,
// the third recomputed at high precision and rounded.
func TestSineFitsByHand(t *testing.T) {
	quarters := arc([]float64{0, 90, 180}, []float64{5, 4, 1})
	near(t, "quarters", quarters.x, []float64{2, 1, 3}, 1e-14)
	short := arc([]float64{-30, 0, 30}, []float64{0, 1, 3})
	near(t, "short arc", short.x, []float64{-2 - math.Sqrt(3), 3, 3 + math.Sqrt(3)}, 1e-13)
	half := arc([]float64{-90, -45, 0, 45, 90}, []float64{1, -2, -2, 1, 5})
	near(t, "half turn", half.x, []float64{-4.98090, 2.04044, 3.00499}, 6e-6)
	near(t, "its sum of squares", []float64{half.sum}, []float64{0.0110231}, 6e-8)
	near(t, "its deviations", []float64{half.deviation(0), half.deviation(1), half.deviation(2)},
		[]float64{0.0812780, 0.0428625, 0.0514047}, 6e-8)
}

func arc(degrees, y []float64) answer {
	var s system
	for i, d := range degrees {
		sin, cos := math.Sincos(d * math.Pi / 180)
		s.add(y[i], cos, sin, 1)
	}
	return fit(s, len(y) == 3) // three readings leave no residual to estimate from
}
