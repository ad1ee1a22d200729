package sheet

import (
	"math"
	"math/big"
	"regexp"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// Every line of every calculation is what it says: the formula, worked out as it stands,
// gives the answer, and so does the rule that sheets are marked by.
func TestLinesFollow(t *testing.T) {
	for name, draw := range questions {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				w, err := draw(t).Working()
				sound(t, w, err)
				if len(w.lines) == 0 {
					t.Fatal("no line")
				}
				for i := range w.lines {
					checkLine(t, w, &w.lines[i])
				}
			})
		})
	}
}

func checkLine(t *rapid.T, w Working, l *line) {
	at, scale := exactInputs(w, l)
	tolerance := 1e-9 * max(scale, math.Abs(l.exact))
	if strings.HasSuffix(l.id, ".total") || strings.HasSuffix(l.id, ".error") || strings.HasSuffix(l.id, ".wanted") {
		tolerance = max(tolerance, float64(units.Nanometre)) // thicknesses of shims are whole nanometres
	}
	if off := math.Abs(l.rule(at) - l.exact); !(off <= l.allow+tolerance) {
		t.Errorf("%s: the rule comes to %v, the answer is %v", l.id, l.rule(at), l.exact)
	}
	symbols := map[string]float64{}
	for i, in := range l.inputs {
		if in.symbol != "" {
			symbols[in.symbol] = at[i]
		}
		if in.kind == sliding {
			symbols[in.symbol] *= float64(units.Millimetre) // a length a second
		}
	}
	x, used, err := workedOut(l.formula, symbols)
	if off := math.Abs(x - l.exact); err != nil || !(off <= tolerance) {
		t.Errorf("%s: %s comes to %v with %v, the answer is %v (%v)", l.id, l.formula, x, symbols, l.exact, err)
	}
	for i, in := range l.inputs {
		absent := in.from == given && in.value == 0 // no sag
		if in.symbol != "" && !used[in.symbol] && !absent && matters(l, at, i) {
			t.Errorf("%s: %s does not show %s", l.id, l.formula, in.symbol)
		}
	}
}

// exactInputs are the inputs of a line to the last bit, and how large what meets there is:
// where large numbers cancel, as much is left of their rounding. It is what each input does
// to the line, added up, and the largest that is of the line's own sort.
func exactInputs(w Working, l *line) (at values, scale float64) {
	for _, in := range l.inputs {
		x := in.value
		if in.from != given {
			x = w.lines[in.from].exact
		}
		at = append(at, x)
		if in.kind.sort() == l.kind.sort() && in.kind != station {
			scale = max(scale, math.Abs(x))
		}
	}
	before := l.rule(at)
	for i, was := range at {
		at[i] = was + was*0.1234567 // where no other station is
		scale += 8 * math.Abs(l.rule(at)-before)
		at[i] = was
	}
	return at, scale
}

// matters tells whether an input changes what the rule comes to.
func matters(l *line, at values, i int) bool {
	before, was := l.rule(at), at[i]
	at[i] += 1 + math.Abs(was)
	after := l.rule(at)
	at[i] = was
	return math.Abs(after-before) > 1e-9*math.Abs(before)
}

// All of a working's text is there, under names that are used once.
func TestStepsAreWhole(t *testing.T) {
	for name, draw := range questions {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				w, err := draw(t).Working()
				sound(t, w, err)
				seen := map[string]bool{}
				for _, s := range [...]System{Metric, Inch} {
					for i, step := range w.Steps(s) {
						for _, text := range []string{step.ID, step.Sought, step.Formula, step.Filled, step.Answer, step.Exact, step.Source} {
							if strings.TrimSpace(text) == "" || strings.TrimSpace(text) != text {
								t.Errorf("%s: %q among %+v", step.ID, text, step)
							}
						}
						if s == Metric && seen[step.ID] {
							t.Errorf("%s is there twice", step.ID)
						}
						seen[step.ID] = true
						checkFilled(t, step)
						checkRounding(t, w, &w.lines[i], s, step)
					}
				}
			})
		})
	}
}

// quantity is a number as it is put into a formula, with its unit, or a place on the
// clock.
var quantity = regexp.MustCompile(`-?[0-9.]+ (mm/m|mm/s|mil/in/°F|mil/in|mm|mil|um/m/K|in/s|in|K|°F|°C|rpm|deg)\b|-?[0-9.]+ °[FC]|[0-9]+:[0-9]{2}`)

var functions = regexp.MustCompile(`\b(sin|cos|sqrt|min|max|pi)\b`)

// checkFilled asks that no symbol is left where numbers were put in.
func checkFilled(t *rapid.T, step Step) {
	rest := quantity.ReplaceAllString(step.Filled, "")
	rest = functions.ReplaceAllString(rest, "")
	if strings.ContainsFunc(rest, func(r rune) bool { return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' }) {
		t.Errorf("%s: %q is left of %q, filled into %q", step.ID, rest, step.Filled, step.Formula)
	}
}

// one is how large the unit is in which a line is shown, and its name.
func one(k kind, s System) (size *big.Rat, name string) {
	switch k.sort() {
	case "a slope":
		return big.NewRat(1, 1000), [...]string{"mm/m", "mil/in"}[s]
	case "a temperature difference":
		return [...]*big.Rat{big.NewRat(1, 1), big.NewRat(5, 9)}[s], [...]string{"K", "°F"}[s]
	}
	return [...]*big.Rat{big.NewRat(1_000_000, 1), big.NewRat(25_400, 1)}[s], [...]string{"mm", "mil"}[s]
}

// inWholeNumbers rounds the size of x, of the exact value that its bits stand for, to so
// many digits, halves up. It reckons in whole numbers.
func inWholeNumbers(x float64, unit *big.Rat, digits int) string {
	scaled := new(big.Rat).SetFloat64(math.Abs(x))
	scaled.Quo(scaled, unit)
	ten := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(digits)), nil)
	scaled.Mul(scaled, new(big.Rat).SetInt(ten))
	above := new(big.Int).Add(new(big.Int).Mul(scaled.Num(), big.NewInt(2)), scaled.Denom()) // floor((2n + d)/2d)
	whole := above.Quo(above, new(big.Int).Mul(scaled.Denom(), big.NewInt(2)))
	text := whole.String()
	text = strings.Repeat("0", max(0, digits+1-len(text))) + text
	return text[:len(text)-digits] + "." + text[len(text)-digits:]
}

// checkRounding asks for an answer rounded from the exact one, once, halves away from
// zero, and for an exact one that has six digits more.
func checkRounding(t *rapid.T, w Working, l *line, s System, step Step) {
	unit, name := one(l.kind, s)
	digits := natures[l.kind].digits[s]
	rounded := inWholeNumbers(l.exact, unit, digits) + " " + name
	zero := strings.Trim(rounded[:len(rounded)-len(name)], "0. ") == ""
	amount := step.Answer
	if zero && step.Answer == "leave" && (l.kind == raise || l.kind == push) {
		amount = rounded
	}
	if natures[l.kind].words[0] == "" && l.exact < 0 && !zero {
		rounded = "-" + rounded
	}
	if natures[l.kind].words[0] != "" && !zero {
		worded := strings.Replace(natures[l.kind].words[l.kind.side(l.exact < 0, w.view)], "%", rounded, 1)
		rounded = worded
	}
	if amount != rounded {
		t.Errorf("%s: the answer to %v is %q, want %q", l.id, l.exact, step.Answer, rounded)
	}
	long := inWholeNumbers(l.exact, unit, digits+6)
	if l.exact < 0 && strings.Trim(long, "0.") != "" {
		long = "-" + long
	}
	if step.Exact != long+" "+name {
		t.Errorf("%s: exactly %q, want %q", l.id, step.Exact, long)
	}
}

// Halves go away from zero, and a number whose bits stand a little below a half does
// not count as one.
func TestAnswersRoundHalvesAway(t *testing.T) {
	rows := []struct {
		k    kind
		s    System
		x    units.Length
		want string
	}{
		{raise, Inch, 25 * units.Mil / 100, "raise 0.3 mil"},
		{raise, Inch, -25 * units.Mil / 100, "lower 0.3 mil"},
		{raise, Inch, 6349, "raise 0.2 mil"},
		{raise, Metric, 5 * units.Micrometre, "raise 0.01 mm"},
		{raise, Metric, -5 * units.Micrometre, "lower 0.01 mm"},
		{raise, Metric, units.Length(math.Nextafter(5000, 0)), "leave"},
		{push, Metric, units.Length(math.Nextafter(-5000, 0)), "leave"},
		{height, Metric, 499, "0.000 mm"},
		{height, Metric, -500, "0.001 mm low"},
		{reading, Metric, -500, "-0.001 mm"},
		{reading, Metric, -499, "0.000 mm"},
		{reading, Inch, 127, "0.01 mil"},
		{thickness, Inch, 126.9, "0.00 mil"},
	}
	for _, row := range rows {
		if got := row.k.rounded(float64(row.x), row.s, align.FromMovable); got != row.want {
			t.Errorf("%v in %v: got %q, want %q", row.x, row.s, got, row.want)
		}
	}
}
