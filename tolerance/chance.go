package tolerance

import (
	"math"
	"strconv"

	"example.org/collinear/align"
)

// Chance puts the rule and the probability into words, for one "by simple
// acceptance; all limits are kept with a probability of at least 93 %". It
// belongs beside [Verdict.Text], which has no probability. A probability below 1
// is never shown as 100 %, nor the bound as more than it is: from 99 % on it has
// one decimal, and above 99.9 % it is "over 99.9 %".
func (v Verdict) Chance() string {
	if !outcomeNames.Known(uint8(v.Outcome)) {
		return "no verdict"
	}
	return v.ruleWords() + "; " + v.boundWords()
}

func (v *Verdict) ruleWords() string {
	if v.Rule == ByProbability {
		return "by a probability of " + strconv.FormatFloat(v.Asked.Confidence*100, 'g', 6, 64) + " %"
	}
	if v.Rule == Guarded {
		return "by limits less " + strconv.FormatFloat(v.Asked.Guard, 'g', 6, 64) + " standard uncertainties"
	}
	if v.Asked.rule() != Simple {
		return "by simple acceptance, for the uncertainty is unknown"
	}
	return "by simple acceptance"
}

func (v *Verdict) boundWords() string {
	if math.IsNaN(v.AtLeast) {
		return "how probable it is that all limits are kept is not known"
	}
	if v.Basis == align.Declared {
		return "exact by declaration"
	}
	if v.AtLeast < 0.01 {
		return "for all limits at once no probability can be promised, see each"
	}
	if v.AtLeast > 0.999 {
		return "all limits are kept with a probability of " + percent(v.AtLeast)
	}
	return "all limits are kept with a probability of at least " + percent(v.AtLeast)
}

// Chance puts the probability that the item is within its limit into words, for
// one "93 %", "over 99.9 %", "under 0.1 %" or, where it is not known, "unknown".
// It is rounded down.
func (i Item) Chance() string {
	if !quantityNames.Known(uint8(i.Of)) || math.IsNaN(i.Probability) {
		return "unknown"
	}
	return percent(i.Probability)
}

// percent rounds down; only what is exactly 0 or 1 looks like it.
func percent(p float64) string {
	const hair = 1e-9 // so that 0.29, which is a hair below, is 29 %
	if p == 0 || p == 1 {
		return strconv.Itoa(int(p)*100) + " %"
	}
	if p > 0.999 {
		return "over 99.9 %"
	}
	if p < 0.001 {
		return "under 0.1 %"
	}
	if p >= 0.99 || p < 0.01 {
		return strconv.FormatFloat(math.Floor(float64(p*1000)+hair)/10, 'f', 1, 64) + " %"
	}
	return strconv.FormatFloat(math.Floor(float64(p*100)+hair), 'f', 0, 64) + " %"
}
