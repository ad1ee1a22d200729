package arc_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// Readings without any scatter have nothing to judge a return by, not even one of
// zero: no probability comes out of a nought over a nought.
func TestDiagnoseOfNoScatter(t *testing.T) {
	round := []units.Clock{0, 90, 180, 270, 360}
	for _, s := range mustDiagnose(t, sensorPair(0, round...)...).Sweeps {
		nothing := arc.Effect{Basis: align.Unknown, P: 1}
		if !s.Returned || s.Return != nothing || s.Drift != nothing {
			t.Errorf("%+v", s)
		}
	}
}

// Two readings at 12 o'clock on one sweep differ by e, about what all others agree
// on: the miss is the whole scatter, t^2 is all the degrees of freedom, and beside
// it nothing is left that could explain it. Rounding takes t^2 to either side.
func TestDiagnoseWhereTheRestAgrees(t *testing.T) {
	round := []units.Clock{0, 90, 180, 270, 360}
	for k := range 400 {
		e := units.Length(10+k) * um
		sets := filled(t, caseA, sensorPair(0, round...))
		sets[0].Readings[0].Value -= e / 2
		sets[0].Readings[4].Value += e / 2
		d := mustDiagnose(t, sets...)
		miss := d.Sweeps[0].Return
		if !(miss.P >= 0 && miss.P < 1e-6) || !(miss.U >= 0 && miss.U < e/1000) || miss.Basis != align.Scatter {
			t.Errorf("a miss of %v: %+v", e, miss)
		}
		if math.Abs(float64(miss.Value-e)) > 1 {
			t.Errorf("a miss of %v is said to be %v", e, miss.Value)
		}
		checkWarned(t, "a miss of "+e.String(), d.Warnings, warnedOf(d)...)
		if !slices.Contains(warnedOf(d), "/sets/0/readings/4") {
			t.Errorf("a miss of %v: no warning, but %v", e, d.Warnings)
		}
	}
}

func warnedOf(d arc.Diagnosis) (paths []string) {
	for _, w := range d.Warnings {
		paths = append(paths, w.Path)
	}
	return paths
}

// A clock position may be as large as any number. One of 1e15 degrees, which is 280
// beyond whole turns, is 280: a quarter on from it there is still a slope.
func TestDiagnoseAtTheLargestPosition(t *testing.T) {
	const largest units.Clock = 1e15
	if math.Mod(float64(largest), 360) != 280 {
		t.Fatal("another position")
	}
	diagnose := func(at units.Clock) (arc.Diagnosis, arc.Robust) {
		sets := sensorPair(3*um, 0, 70, 140, 210, at)
		for i := range sets {
			sets[i].U.Angle = units.Degree
		}
		sets = filled(t, caseA, sets)
		sets[0].Readings[4].Value += 100 * um
		return mustDiagnose(t, sets...), mustRobust(t, sets...)
	}
	want, wantRobust := diagnose(280)
	got, gotRobust := diagnose(largest)
	for i, r := range want.Residuals {
		near(t, "standardised", got.Residuals[i].Standardised, r.Standardised, 1e-9)
	}
	for i, w := range wantRobust.Weights {
		near(t, "weight", gotRobust.Weights[i].Weight, w.Weight, 1e-9)
		near(t, "off", gotRobust.Weights[i].Off, w.Off, 1e-9)
	}
}

// Two sensors a millionth of a millionth of a millimetre apart see readings of
// nothing lie in line. A drift of a millimetre a reading would be a slope of 1e15
// and more there, which cannot be reckoned with: that is said, and no number.
func TestDiagnoseOfStationsThatNothingTellsApart(t *testing.T) {
	sets := sensorPair(3*um, 0, 90, 180, 270, 300)
	sets[0].Probe.Station, sets[1].Probe.Station = 0, 1e-10
	d, err := arc.Diagnose(mustFit(t, sets...), sets...)
	if got := codesAndPaths(err); !slices.Equal(got, []string{"out_of_range /sets"}) || d.Sweeps != nil {
		t.Errorf("%v: %+v", got, d)
	}
}

// Offsets of 900 km sideways make readings of 616 km within 20 degrees of 12
// o'clock, and of 1273 km and more a quarter turn apart: what a wider arc would say
// cannot be reckoned with.
func TestForecastOfWiderReadingsTooLarge(t *testing.T) {
	const km = 1e6 * mm
	sets := sensorPair(units.Micrometre, within(5, 0, 40)...)
	far := line(0.9e9, 0, 0, 0)
	if far.Horizontal.Offset != 900*km {
		t.Fatal(far)
	}
	_, err := arc.Forecast(far, nil, sets...)
	if got := codesAndPaths(err); !slices.Equal(got, []string{"out_of_range /expected"}) {
		t.Errorf("got %v", got)
	}
	mustForecast(t, line(0.1e9, 0, 0, 0), nil, sets...)
}

// One estimate is better by so much that the weight of the other is below the least
// number: the mean is the better one, and its uncertainty is not made of noughts.
func TestMergeOfOneThatHasNoSay(t *testing.T) {
	estimate := func(c align.Centreline, by float64) align.Estimate {
		cov, err := align.NewCovariance(align.Stated, line(1, 1, 1, 1).Times(by), align.Covariance{}.Correlation())
		if err != nil {
			t.Fatal(err)
		}
		return align.Estimate{Value: c, Cov: cov}
	}
	rough, fine := estimate(line(0.4, 0, 0, 0), 1e6), estimate(caseA, 1e-157)
	for _, m := range []align.Estimate{mustMerge(t, rough, fine), mustMerge(t, fine, rough)} {
		nearLine(t, "merged", m.Value, caseA, 1e-9)
		nearCov(t, "merged", m.Cov, fine.Cov, 1e-6)
	}
}

// Two sets with three positions each, of which two are taken twice: of a pair that
// disagrees either may be wrong, and the fifth reading of a set decides alone. Four
// readings are left over, and yet there is none that can be judged: the answer is
// Fit's, and every reading counts in full.
func TestRobustOfPairs(t *testing.T) {
	sets := filled(t, caseA, sensorPair(0, 0, 0, 90, 90, 180))
	sets = spoilt(sets, 0, 2, 300*um)
	plain, r := mustFit(t, sets...), mustRobust(t, sets...)
	if plain.DegreesOfFreedom != 4 || r.Value != plain.Value || !sameCov(r.Cov, plain.Cov) || r.Scale != 0 || r.Down() != nil {
		t.Errorf("%d left over, scale %v, down %v, off Fit by %v", plain.DegreesOfFreedom, r.Scale, r.Down(), r.Value.Minus(plain.Value))
	}
	for _, w := range r.Weights {
		if w.Judged || w.Weight != 1 || w.Off != 0 {
			t.Errorf("%+v", w)
		}
	}
	if len(r.Warnings) == 0 {
		t.Error("no warning that nothing can be judged")
	}
}

// Where readings count in part, their scatter is made anew from the residuals, and
// what single angles bring is in these: stating the angles' uncertainty beside it
// changes nothing.
func TestRobustPartWeightsCountAnglesOnce(t *testing.T) {
	partly := func(angle units.Angle) arc.Robust {
		sets := wiggled(filled(t, caseA, sensorPair(0, nine(180)...)))
		for i := range sets {
			sets[i].U.Angle = angle
		}
		return mustRobust(t, spoilt(sets, 0, 4, 14*um)...)
	}
	without, with := partly(0), partly(units.Degree)
	if !slices.ContainsFunc(without.Weights, func(w arc.Weight) bool { return w.Weight > 0 && w.Weight < 1 }) {
		t.Fatalf("no part weight: %+v", without.Weights)
	}
	nearCov(t, "with angles", with.Cov, without.Cov, 1e-12)
}
