package sheet

import (
	"strconv"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// written is an answer as it stands on a sheet.
type written struct {
	text   string
	system System // of its unit
	span          // what it may stand for
}

// read reads an answer: a number with its unit, and in place of a sign, if the writer
// likes, the words that the working has for it.
func (k kind) read(text string, v align.View) (written, error) {
	amount, sign := k.unworded(spelt.Replace(strings.TrimSpace(text)), v)
	x, err := natures[k].parse(amount)
	if err != nil {
		return written{}, k.misread(text, v, err)
	}
	if sign != 0 && strings.ContainsAny(amount[:1], "+-") {
		return written{}, &units.Fault{Code: units.Conflict, Want: "a sign or words for it, not both"}
	}
	one, unit, err := lastPlace(amount)
	if err != nil {
		return written{}, err
	}
	place, err := natures[k].parse(one)
	if err != nil {
		return written{}, err
	}
	if sign < 0 {
		x = -x
	}
	return written{text: text, system: systemOf(unit), span: roundedFrom(x, place)}, nil
}

// spelt takes a few other spellings of the words of a sign.
var spelt = strings.NewReplacer("’", "'", "toward ", "towards ")

// misread is the fault of an answer that cannot be read: that of its number, with the
// words that could have stood for its sign.
func (k kind) misread(text string, v align.View, err error) error {
	fault := *units.Faults(err)[0]
	if words := natures[k].words; words[0] != "" {
		up, down := words[k.side(false, v)], words[k.side(true, v)]
		fault.Value = strconv.Quote(text[:min(len(text), 64)])
		fault.Want += "; or a number with its unit and words: " + strings.Replace(up, "%", "...", 1) + ", " + strings.Replace(down, "%", "...", 1)
	}
	return &fault
}

// roundedFrom is what may stand behind a number that was rounded to a place: half of
// that place either way, or away from zero all of it, for many hands cut off what they
// do not write.
func roundedFrom(x, place float64) span {
	s := span{x, x - place/2, x + place/2}
	if x >= 0 {
		s.high = x + place
	}
	if x <= 0 {
		s.low = x - place
	}
	return s
}

// leave is what a sheet says for a move that rounds to nothing.
const leave = "leave"

// unworded returns the amount of an answer without the words of its sign, and the sign
// that they stand for; 0 where there are none.
func (k kind) unworded(text string, v align.View) (amount string, sign int) {
	if (k == raise || k == push) && strings.EqualFold(text, leave) {
		return natures[k].text(0, Metric, natures[k].digits[0]), 0
	}
	for _, sign := range [...]int{+1, -1} {
		before, after, _ := strings.Cut(natures[k].words[k.side(sign < 0, v)], "%")
		if before+after == "" {
			continue
		}
		if amount, ok := between(text, strings.TrimSpace(before), strings.TrimSpace(after)); ok {
			return amount, sign
		}
	}
	return text, 0
}

// between takes the words off both ends of a text. A word in front may be left out
// where there are words behind, and so may "o'clock"; a comma may stand before them.
func between(text, before, after string) (rest string, ok bool) {
	rest, found := cutPrefix(text, before)
	if !found && after == "" {
		return "", false
	}
	for _, end := range [...]string{after, strings.TrimSuffix(after, " o'clock")} {
		if rest, ok := cutSuffix(rest, end); ok {
			rest = strings.TrimRight(strings.TrimSpace(rest), ", ")
			return rest, rest != ""
		}
	}
	return "", false
}

// cutPrefix is strings.CutPrefix for letters of either case.
func cutPrefix(s, prefix string) (string, bool) {
	n := min(len(s), len(prefix))
	if strings.EqualFold(s[:n], prefix) {
		return s[n:], true
	}
	return s, false
}

func cutSuffix(s, suffix string) (string, bool) {
	n := max(0, len(s)-len(suffix))
	return s[:n], strings.EqualFold(s[n:], suffix)
}

// lastPlace is one of the last place of an amount, with the amount's unit: "0.1 mil"
// of "2.7 mil", "1/16 in" of "5 7/16 in". The amount is one that package units reads: it
// has digits after a point, and after the stroke of a fraction.
func lastPlace(amount string) (one, unit string, err error) {
	number := strings.TrimLeft(amount, "+-")
	rest := strings.TrimLeft(number, "0123456789")
	one = "1"
	if decimals, ok := strings.CutPrefix(rest, "."); ok {
		rest = strings.TrimLeft(decimals, "0123456789")
		one = "0." + strings.Repeat("0", len(decimals)-len(rest)-1) + "1"
	} else if isFraction(rest) {
		_, rest, _ = strings.Cut(rest, "/")
		below := rest[:len(rest)-len(strings.TrimLeft(rest, "0123456789"))]
		one, rest = "1/"+below, rest[len(below):]
	}
	unit = strings.TrimSpace(rest)
	first, _, _ := strings.Cut(unit, "/") // "mm/100 mm" is one unit
	if strings.ContainsAny(first, "0123456789") {
		return "", "", &units.Fault{Code: units.Malformed, Want: "one decimal number or fraction, and one unit"}
	}
	return one + rest, unit, nil
}

// isFraction tells whether what follows a whole number makes it, or goes on to, a
// fraction: "/16 in", " 7/16 in", "-7/16 in".
func isFraction(rest string) bool {
	return strings.HasPrefix(strings.TrimLeft(strings.TrimLeft(rest, " -"), "0123456789"), "/")
}

// systemOf is the system that a unit belongs to.
func systemOf(unit string) System {
	for _, of := range [...]string{"mil", "thou", "in", "ft", "'", "′", `"`, "″", "F"} {
		if strings.Contains(unit, of) {
			return Inch
		}
	}
	return Metric
}
