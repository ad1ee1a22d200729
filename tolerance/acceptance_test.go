package tolerance_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// drawAcceptance draws any of the three rules.
func drawAcceptance(t *rapid.T) tolerance.Acceptance {
	switch rapid.IntRange(0, 2).Draw(t, "rule") {
	case 1:
		return tolerance.Acceptance{Confidence: rapid.Float64Range(0.500001, 0.999999).Draw(t, "confidence")}
	case 2:
		return tolerance.Acceptance{Guard: rapid.Float64Range(0.001, 5).Draw(t, "guard")}
	}
	return tolerance.Acceptance{}
}

// One number in one plane, u a tenth of the limit of 1 mm; the other plane is in
// line, known and within at any rate. At a distance of z uncertainties from the
// limit the normal distribution has: z = 1.6449, 95 %; z = 1.2816, 90 %.
func TestDecisions(t *testing.T) {
	p95, p90 := tolerance.Acceptance{Confidence: 0.95}, tolerance.Acceptance{Confidence: 0.9}
	guard2 := tolerance.Acceptance{Guard: 2}
	for _, row := range []struct {
		name    string
		z       float64 // uncertainties inside the limit
		by      tolerance.Acceptance
		outcome tolerance.Outcome
		rule    tolerance.DecisionRule
	}{
		{"simple, a hair inside", 0.001, tolerance.Acceptance{}, tolerance.Within, tolerance.Simple},
		{"simple, on it", 0, tolerance.Acceptance{}, tolerance.Within, tolerance.Simple},
		{"simple, a hair outside", -0.001, tolerance.Acceptance{}, tolerance.Outside, tolerance.Simple},
		{"95 %, enough", 1.645, p95, tolerance.Within, tolerance.ByProbability},
		{"95 %, not enough", 1.644, p95, tolerance.Undecided, tolerance.ByProbability},
		{"95 %, on the limit", 0, p95, tolerance.Undecided, tolerance.ByProbability},
		{"95 %, not enough to be outside", -1.644, p95, tolerance.Undecided, tolerance.ByProbability},
		{"95 %, enough to be outside", -1.645, p95, tolerance.Outside, tolerance.ByProbability},
		{"90 %, enough", 1.282, p90, tolerance.Within, tolerance.ByProbability},
		{"90 %, not enough", 1.281, p90, tolerance.Undecided, tolerance.ByProbability},
		{"90 %, enough to be outside", -1.282, p90, tolerance.Outside, tolerance.ByProbability},
		{"guard of two, on it", 2, guard2, tolerance.Within, tolerance.Guarded},
		{"guard of two, 1 nm within the band", 2 - 1e-5, guard2, tolerance.Undecided, tolerance.Guarded},
		{"guard of two, on the limit", 0, guard2, tolerance.Undecided, tolerance.Guarded},
		{"guard of two, above the limit", -1e-5, guard2, tolerance.Outside, tolerance.Guarded},
		{"guard wider than the limit", 9, tolerance.Acceptance{Guard: 11}, tolerance.Undecided, tolerance.Guarded},
	} {
		off := stated(t, line(1-0.1*row.z, 0, 0, 0), line(0.1, 0, 0, 0), uncorrelated)
		v := judgedBy(t, tolerance.Limits{Offset: mm, PerPlane: true}, off, align.Coupling{}, row.by)
		if v.Outcome != row.outcome || v.Rule != row.rule || v.Asked != row.by || v.Governs != 0 {
			t.Errorf("%s: got %v by %v, governed by %d; want %v by %v", row.name, v.Outcome, v.Rule, v.Governs, row.outcome, row.rule)
		}
		if v.Items[1].Probability != 1 {
			t.Errorf("%s: the plane that is exact has %v", row.name, v.Items[1].Probability)
		}
	}
}

// Two items of 96 % each are not both within at 95 %: at worst 8 % are not.
func TestBoundOfSeveralItems(t *testing.T) {
	off := stated(t, line(1-0.1*1.7507, 0, 1-0.1*1.7507, 0), line(0.1, 0, 0.1, 0), uncorrelated)
	l := tolerance.Limits{Offset: mm, PerPlane: true}
	v := judgedBy(t, l, off, align.Coupling{}, tolerance.Acceptance{Confidence: 0.95})
	near(t, "each", v.Items[0].Probability, 0.96, 1e-5)
	near(t, "at least", v.AtLeast, 0.92, 2e-5)
	if v.Outcome != tolerance.Undecided {
		t.Errorf("got %v", v.Outcome)
	}
	if v := judgedBy(t, l, off, align.Coupling{}, tolerance.Acceptance{Confidence: 0.91}); v.Outcome != tolerance.Within {
		t.Errorf("at 91 %%: got %v", v.Outcome)
	}
	far := stated(t, line(1.05, 0, 1.05, 0), line(0.1, 0, 0.1, 0), uncorrelated)
	if v := judged(t, l, far, align.Coupling{}); v.AtLeast != 0 { // 31 % each
		t.Errorf("at least %v", v.AtLeast)
	}
}

// The item that governs is the one that the rule makes closest to being outside,
// which need not be that with the largest ratio: horizontally 0.8 +/- 0.01,
// vertically 0.6 +/- 0.3 of the limit.
func TestGoverningByRule(t *testing.T) {
	off := stated(t, line(0.8, 0, 0.6, 0), line(0.01, 0, 0.3, 0), uncorrelated)
	l := tolerance.Limits{Offset: mm, PerPlane: true}
	for by, want := range map[tolerance.Acceptance]tolerance.Plane{
		{}: tolerance.Horizontal, {Confidence: 0.95}: tolerance.Vertical,
		{Guard: 2}: tolerance.Vertical, {Guard: 0.5}: tolerance.Horizontal,
	} {
		if got := judgedBy(t, l, off, align.Coupling{}, by).Governing().Plane; got != want {
			t.Errorf("%+v: governed by the %v, want %v", by, got, want)
		}
	}
	exact := judgedBy(t, l, align.Exact(off.Value), align.Coupling{}, tolerance.Acceptance{Confidence: 0.9})
	if exact.Governs != 0 || exact.Governing().Ratio != 0.8 { // both are certain, so the ratio tells
		t.Errorf("exact: governed by %v", exact.Governing())
	}
}

// Exact by declaration is 1 or 0, as simple acceptance, and needs no guard.
func TestAcceptanceOfWhatIsExact(t *testing.T) {
	for _, by := range []tolerance.Acceptance{{}, {Confidence: 0.999}, {Guard: 5}} {
		for offset, want := range map[float64]tolerance.Outcome{1: tolerance.Within, 1.000001: tolerance.Outside} {
			v := judgedBy(t, tolerance.Limits{Offset: mm}, align.Exact(line(0, 0, offset, 0)), align.Coupling{}, by)
			p := 0.0
			if want == tolerance.Within {
				p = 1
			}
			if v.Outcome != want || v.Items[0].Probability != p || v.AtLeast != p {
				t.Errorf("%+v, %v mm: %+v", by, offset, v)
			}
		}
	}
}

// Unknown is not zero: simple acceptance whatever was asked, and it says so.
func TestAcceptanceOfWhatIsUnknown(t *testing.T) {
	off := align.Estimate{Value: line(0.5, 0, 0, 0), Cov: align.Covariance{Basis: align.Unknown}}
	for _, by := range []tolerance.Acceptance{{}, {Confidence: 0.95}, {Guard: 2}} {
		for _, perPlane := range []bool{false, true} {
			v := judgedBy(t, tolerance.Limits{Offset: mm, PerPlane: perPlane}, off, align.Coupling{}, by)
			if v.Outcome != tolerance.Within || v.Rule != tolerance.Simple || v.Asked != by || !math.IsNaN(v.AtLeast) || !math.IsNaN(v.Items[0].Probability) {
				t.Errorf("%+v: %+v", by, v)
			}
		}
	}
}

// Of all verdicts: the rules do not contradict one another where they should not.
func TestRulesTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off, k, l, by := drawEstimate(t), drawCoupling(t), drawLimits(t), drawAcceptance(t)
		simple, v := judged(t, l, off, k), judgedBy(t, l, off, k, by)
		if v.Items != simple.Items || v.AtLeast != simple.AtLeast {
			t.Error("the rule changes the items")
		}
		open := 0.0
		for _, item := range v.All() {
			if item.Probability <= 0 || item.Probability >= 1 {
				t.Errorf("probability %v of what is uncertain", item.Probability)
			}
			open += 1 - item.Probability
		}
		near(t, "at least", v.AtLeast, max(0, 1-open), 1e-9)
		switch {
		case v.Rule == tolerance.Simple && v != simple,
			v.Outcome == tolerance.Within && simple.Outcome == tolerance.Outside && v.Rule == tolerance.Guarded,
			(v.Outcome == tolerance.Outside) != (simple.Outcome == tolerance.Outside) && v.Rule == tolerance.Guarded:
			t.Errorf("%v by %v, simply %v", v.Outcome, v.Rule, simple.Outcome)
		}
		stricter := by // whoever asks for more gets no more decided
		if by.Confidence != 0 {
			stricter.Confidence = (1 + by.Confidence) / 2
		} else {
			stricter.Guard++
		}
		if w := judgedBy(t, l, off, k, stricter); w.Outcome == tolerance.Within && v.Outcome != tolerance.Within {
			t.Errorf("%+v: %v, %+v: %v", by, v.Outcome, stricter, w.Outcome)
		}
	})
}

// The words: never 100 % for less than 1, never more than the bound.
func TestChanceInWords(t *testing.T) {
	item := tolerance.Item{Of: tolerance.Offset}
	for p, want := range map[float64]string{
		0: "0 %", 1e-9: "under 0.1 %", 0.0009999: "under 0.1 %", 0.001: "0.1 %", 0.00555: "0.5 %", 0.01: "1 %",
		0.29: "29 %", 0.57: "57 %", 0.949999: "94 %", 0.95: "95 %", 0.98999: "98 %", 0.99: "99.0 %", 0.9949: "99.4 %",
		0.998: "99.8 %", 0.999: "99.9 %", 0.9990001: "over 99.9 %", 1 - 1e-9: "over 99.9 %", 1: "100 %", nan: "unknown",
	} {
		if item.Probability = p; item.Chance() != want {
			t.Errorf("%v: got %q, want %q", p, item.Chance(), want)
		}
	}
	unknown := align.Estimate{Cov: align.Covariance{Basis: align.Unknown}}
	sure, doubtful := spread{uy: 0.01, uz: 0.01}, spread{y: 0.5, uy: 0.25, uz: 0.25}
	off, by := spread{y: 3, uy: 0.1, uz: 0.1}, tolerance.Acceptance{Confidence: 0.95}
	for _, row := range []struct {
		off  align.Estimate
		by   tolerance.Acceptance
		want string
	}{
		{doubtful.estimate(t), tolerance.Acceptance{}, "by simple acceptance; all limits are kept with a probability of at least 96 %"},
		{doubtful.estimate(t), by, "by a probability of 95 %; all limits are kept with a probability of at least 96 %"},
		{doubtful.estimate(t), tolerance.Acceptance{Guard: 1.5}, "by limits less 1.5 standard uncertainties; all limits are kept with a probability of at least 96 %"},
		{sure.estimate(t), by, "by a probability of 95 %; all limits are kept with a probability of over 99.9 %"},
		{off.estimate(t), by, "by a probability of 95 %; for all limits at once no probability can be promised, see each"},
		{unknown, tolerance.Acceptance{}, "by simple acceptance; how probable it is that all limits are kept is not known"},
		{unknown, by, "by simple acceptance, for the uncertainty is unknown; how probable it is that all limits are kept is not known"},
		{align.Estimate{}, by, "by a probability of 95 %; exact by declaration"},
	} {
		v := judgedBy(t, tolerance.Limits{Offset: units.Metre}, row.off, align.Coupling{}, row.by)
		if got := v.Chance(); got != row.want {
			t.Errorf("got %q, want %q (%v)", got, row.want, v.AtLeast)
		}
	}
}

// The words turn at the figure itself.
func TestWordsOfBounds(t *testing.T) {
	v := judgedBy(t, tolerance.Limits{Offset: units.Metre}, spread{y: 0.5, uy: 0.25, uz: 0.25}.estimate(t), align.Coupling{}, tolerance.Acceptance{})
	for bound, want := range map[float64]string{
		0.01:  "by simple acceptance; all limits are kept with a probability of at least 1 %",
		0.999: "by simple acceptance; all limits are kept with a probability of at least 99.9 %",
	} {
		if v.AtLeast = bound; v.Chance() != want {
			t.Errorf("%v: got %q", bound, v.Chance())
		}
	}
}

// Whatever is asked, it is answered or refused; an answer is written and read,
// and its probabilities are some.
func FuzzJudgeBy(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("any bytes will do, as long as there are some"))
	f.Fuzz(func(t *testing.T, data []byte) {
		tape := fuzzed.Tape(data)
		mode, next := tape.Byte(), tape.Float64
		if mode&8 != 0 { // numbers that pass, mostly
			next = func() float64 { return float64(int8(tape.Byte())) * math.Pow(10, float64(int8(tape.Byte())%12)) }
		}
		u := line(math.Abs(next()), math.Abs(next()), math.Abs(next()), math.Abs(next()))
		r := uncorrelated
		r[0][2] = math.Mod(next(), 1)
		r[2][0] = r[0][2]
		cov, err := align.NewCovariance(align.Basis(mode&3), u, r)
		if err != nil {
			cov = align.Covariance{Basis: align.Basis(mode & 3)}
		}
		if mode&3 == 2 {
			cov.DoF = math.Abs(next())
		}
		off := align.Estimate{Value: line(next(), next(), next(), next()), Cov: cov}
		l := tolerance.Limits{Offset: units.Length(next()), Slope: units.Slope(next()), Flex: units.Slope(next()), PerPlane: mode&4 != 0}
		v, err := l.JudgeBy(off, align.Coupling{Span: units.Length(next())}, tolerance.Acceptance{Confidence: next(), Guard: next()})
		if err != nil {
			if len(units.Faults(err)) == 0 {
				t.Errorf("an error that is no fault: %v", err)
			}
			return
		}
		for _, item := range v.All() {
			if unknown := v.Basis == align.Unknown; math.IsNaN(item.Probability) != unknown || item.Probability < 0 || item.Probability > 1 {
				t.Errorf("probability %v in %+v", item.Probability, v)
			}
		}
		roundTrip(t, v)
	})
}
