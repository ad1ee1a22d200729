package sheet

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Answers as hands write them, and what they say: the number, and from where to where
// it may lie, in the last unit that is written.
func TestAnswersAsWritten(t *testing.T) {
	const mil, mm, um = float64(units.Mil), float64(units.Millimetre), float64(units.Micrometre)
	const stationary, movable = align.FromStationary, align.FromMovable
	rows := []struct {
		name, text    string
		k             kind
		view          align.View
		at, low, high float64
		system        System
	}{
		{"words in front", "lower 2.7 mil", raise, movable, -2.7 * mil, -2.8 * mil, -2.65 * mil, Inch},
		{"a sign", "-2.7 mil", raise, movable, -2.7 * mil, -2.8 * mil, -2.65 * mil, Inch},
		{"a sign for plus", "+2.7 mil", raise, movable, 2.7 * mil, 2.65 * mil, 2.8 * mil, Inch},
		{"no sign", "2.7 mil", raise, movable, 2.7 * mil, 2.65 * mil, 2.8 * mil, Inch},
		{"capitals", "Lower 2.7 mil", raise, movable, -2.7 * mil, -2.8 * mil, -2.65 * mil, Inch},
		{"spaces around", "  raise   2.7 mil ", raise, movable, 2.7 * mil, 2.65 * mil, 2.8 * mil, Inch},
		{"words behind", "2.7 mil low", height, movable, -2.7 * mil, -2.8 * mil, -2.65 * mil, Inch},
		{"words behind and a comma", "0.069 mm, high", height, movable, 0.069 * mm, 0.0685 * mm, 0.070 * mm, Metric},
		{"words behind without a space", "2.7 millow", height, movable, -2.7 * mil, -2.8 * mil, -2.65 * mil, Inch},
		{"words on both sides", "push 4.0 mil towards 3 o'clock", push, movable, 4 * mil, 3.95 * mil, 4.1 * mil, Inch},
		{"the hour without o'clock", "push 4.0 mil towards 9", push, movable, -4 * mil, -4.1 * mil, -3.95 * mil, Inch},
		{"no push", "4 mil towards 3", push, movable, 4 * mil, 3.5 * mil, 5 * mil, Inch},
		{"from the other end", "push 4.0 mil towards 3 o'clock", push, stationary, -4 * mil, -4.1 * mil, -3.95 * mil, Inch},
		{"a sign is the library's at either end", "-4.0 mil", push, stationary, -4 * mil, -4.1 * mil, -3.95 * mil, Inch},
		{"up is up at either end", "lower 2.7 mil", raise, stationary, -2.7 * mil, -2.8 * mil, -2.65 * mil, Inch},
		{"a shaft aside", "0.05 mm towards 9 o'clock", aside, movable, -0.05 * mm, -0.06 * mm, -0.045 * mm, Metric},
		{"a shaft aside from the other end", "0.05 mm towards 9", aside, stationary, 0.05 * mm, 0.045 * mm, 0.06 * mm, Metric},
		{"an opening", "0.357 mil/in open at 12 o'clock", climb, movable, -0.357e-3, -0.358e-3, -0.3565e-3, Inch},
		{"an opening, less words", "0.36 mm/m, open at 6", climb, movable, 0.36e-3, 0.355e-3, 0.37e-3, Metric},
		{"an opening aside", "0.36 mm/m open at 9", swing, movable, 0.36e-3, 0.355e-3, 0.37e-3, Metric},
		{"an opening aside from the other end", "0.36 mm/m open at 9", swing, stationary, -0.36e-3, -0.37e-3, -0.355e-3, Metric},
		{"a gap", "2.4 mil open at 6 o'clock", openVertical, movable, 2.4 * mil, 2.35 * mil, 2.5 * mil, Inch},
		{"an angle per foot", "4.3 mil/ft open at 6", climb, movable, 4.3e-3 / 12, 4.25e-3 / 12, 4.4e-3 / 12, Inch},

		{"a whole number", "3 mil", reading, movable, 3 * mil, 2.5 * mil, 4 * mil, Inch},
		{"a dot and nothing before it", ".5 mil", reading, movable, 0.5 * mil, 0.45 * mil, 0.6 * mil, Inch},
		{"a thou", "-3 thou", reading, movable, -3 * mil, -4 * mil, -2.5 * mil, Inch},
		{"hundredths of a millimetre", "0.12 mm", reading, movable, 0.12 * mm, 0.115 * mm, 0.13 * mm, Metric},
		{"micrometres", "120 um", reading, movable, 120 * um, 119.5 * um, 121 * um, Metric},
		{"zeros at the end count", "0.120 mm", reading, movable, 0.12 * mm, 0.1195 * mm, 0.121 * mm, Metric},
		{"nothing", "0.00 mm", reading, movable, 0, -0.01 * mm, 0.01 * mm, Metric},
		{"nothing, with a sign", "-0.0 mil", reading, movable, 0, -0.1 * mil, 0.1 * mil, Inch},
		{"sixteenths", "5 7/16 in", thickness, movable, 5.4375 * 1000 * mil, 5.40625 * 1000 * mil, 5.5 * 1000 * mil, Inch},
		{"ninety-sixths", "5/96 in", thickness, movable, 5000 * mil / 96, 4500 * mil / 96, 6000 * mil / 96, Inch},
		{"sixteenths after a nought", "3/016 in", thickness, movable, 187.5 * mil, 156.25 * mil, 250 * mil, Inch},
		{"sixteenths with a dash", `5-7/16"`, thickness, movable, 5.4375 * 1000 * mil, 5.40625 * 1000 * mil, 5.5 * 1000 * mil, Inch},
		{"a fraction by itself", "1/64 in", thickness, movable, 15.625 * mil, 7.8125 * mil, 31.25 * mil, Inch},
		{"thousandths of an inch", "0.012 in", thickness, movable, 12 * mil, 11.5 * mil, 13 * mil, Inch},
		{"a rise in F", "28 °F", warming, movable, 28 * 5.0 / 9, 27.5 * 5 / 9, 29 * 5.0 / 9, Inch},
		{"a rise in K", "-15.6 K", warming, movable, -15.6, -15.7, -15.55, Metric},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got, err := row.k.read(row.text, row.view)
			if err != nil {
				t.Fatal(err)
			}
			if !near(got.at, row.at) || !near(got.low, row.low) || !near(got.high, row.high) || got.system != row.system {
				t.Errorf("%q is %v from %v to %v in %v, want %v from %v to %v in %v",
					row.text, got.at, got.low, got.high, got.system, row.at, row.low, row.high, row.system)
			}
			if got.text != row.text {
				t.Errorf("%q became %q", row.text, got.text)
			}
		})
	}
}

func near(x, y float64) bool { return math.Abs(x-y) <= 1e-12*math.Abs(y) }

// "leave" says that nothing is to be done, which rounding may have come to.
func TestLeaveIsAnAnswer(t *testing.T) {
	for _, k := range []kind{raise, push} {
		for _, text := range []string{"leave", "Leave", " leave "} {
			got, err := k.read(text, align.FromStationary)
			if err != nil || got.at != 0 || !(got.low < 0 && got.high > 0) || got.high > float64(10*units.Micrometre) {
				t.Errorf("%q: %+v, %v", text, got, err)
			}
		}
	}
	if _, err := height.read("leave", align.FromMovable); !errors.Is(err, units.Malformed) {
		t.Errorf("a shaft that is to be left: %v", err)
	}
}

// Nothing is read into an answer that does not say it.
func TestAnswersThatSayTooLittleOrTooMuch(t *testing.T) {
	rows := []struct {
		name, text string
		k          kind
		want       units.Code
		twin       string
	}{
		{"nothing", "", reading, units.Missing, "0 mil"},
		{"blanks", "   ", reading, units.Missing, "0 mil"},
		{"no unit", "2.7", reading, units.Missing, "2.7 mil"},
		{"a unit of something else", "2.7 mil/in", reading, units.Unknown, "2.7 mil"},
		{"a slope without its run", "2.7 mil", climb, units.Unknown, "2.7 mil/in"},
		{"two units", "2.7 mil mm", reading, units.Unknown, "2.7 mil"},
		{"two numbers", "2.7 3 mil", reading, units.Malformed, "2.7 mil"},
		{"feet and inches", "3 ft 5 in", thickness, units.Malformed, "41 in"},
		{"feet and inches in marks", `3'5"`, thickness, units.Malformed, `41"`},
		{"feet and inches in one word", "3ft5in", thickness, units.Malformed, "41in"},
		{"feet, a dash and inches", `3'-5 7/16"`, thickness, units.Malformed, `41 7/16"`},
		{"a power of ten", "1e3 mil", reading, units.Malformed, "1000 mil"},
		{"a power of ten behind a point", "1.5E-3 mm", reading, units.Malformed, "0.0015 mm"},
		{"no number", "NaN mm", reading, units.NotFinite, "0 mm"},
		{"an infinity", "-Inf mm", reading, units.NotFinite, "-1 mm"},
		{"a comma", "2,7 mil", reading, units.Malformed, "2.7 mil"},
		{"a word", "low", height, units.Malformed, "1 mil low"},
		{"a word for a move", "raise", raise, units.Malformed, "raise 1 mil"},
		{"a word for the other plane", "push 4 mil towards 3 o'clock", raise, units.Malformed, "raise 4 mil"},
		{"an hour of the other plane", "0.3 mm/m open at 9 o'clock", climb, units.Unknown, "0.3 mm/m open at 6 o'clock"},
		{"an hour that is none", "4 mil towards 4 o'clock", push, units.Unknown, "4 mil towards 3 o'clock"},
		{"half of an hour", "0.3 mm/m open at 1", climb, units.Unknown, "0.3 mm/m open at 12"},
		{"words of a shaft for a move", "4 mil high", raise, units.Unknown, "raise 4 mil"},
		{"words for a reading", "4 mil high", reading, units.Unknown, "4 mil"},
		{"a sign before the words", "-lower 3 mil", raise, units.Malformed, "lower 3 mil"},
		{"a sign behind the words", "lower -3 mil", raise, units.Conflict, "lower 3 mil"},
		{"a plus behind the words", "lower +3 mil", raise, units.Conflict, "lower 3 mil"},
		{"a sign and words behind", "-3 mil low", height, units.Conflict, "-3 mil"},
		{"two words", "raise lower 3 mil", raise, units.Malformed, "raise 3 mil"},
		{"two signs", "--3 mil", reading, units.Malformed, "-3 mil"},
		{"a dash of a printer", "\u22123 mil", reading, units.Malformed, "-3 mil"},
		{"more than there is room for", "0." + strings.Repeat("1", 70) + " mm", reading, units.Malformed, "0.1 mm"},
		{"a division by nothing", "1/0 in", thickness, units.OutOfRange, "1/2 in"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got, err := row.k.read(row.text, align.FromMovable)
			var codes []units.Code
			for _, f := range units.Faults(err) {
				codes = append(codes, f.Code)
				if f.Want == "" {
					t.Error("it does not say what is wanted")
				}
			}
			if !slices.Equal(codes, []units.Code{row.want}) {
				t.Errorf("%q is %+v (%v), want %s", row.text, got, err, row.want)
			}
			if _, err := row.k.read(row.twin, align.FromMovable); err != nil {
				t.Errorf("the twin %q: %v", row.twin, err)
			}
		})
	}
}

// An answer that cannot be read is told the words that it could have had, of a line that
// has some, as the crew says them.
func TestMisreadTellsTheWords(t *testing.T) {
	for _, row := range []struct {
		k    kind
		view align.View
		want string
	}{
		{height, align.FromMovable, "; or a number with its unit and words: ... high, ... low"},
		{push, align.FromMovable, "; or a number with its unit and words: push ... towards 3 o'clock, push ... towards 9 o'clock"},
		{push, align.FromStationary, "; or a number with its unit and words: push ... towards 9 o'clock, push ... towards 3 o'clock"},
		{reading, align.FromMovable, ""},
	} {
		_, err := row.k.read("a lot", row.view)
		got := units.Faults(err)
		if len(got) != 1 {
			t.Fatalf("kind %d: %v", row.k, err)
		}
		if _, words, _ := strings.Cut(got[0].Want, ";"); words != strings.TrimPrefix(row.want, ";") {
			t.Errorf("kind %d from %v: wanted is %q", row.k, row.view, got[0].Want)
		}
	}
}

// What a working says, it also reads: with the words of either end, in both systems, and
// the number that was rounded lies in what the answer may stand for.
func TestOwnAnswersAreRead(t *testing.T) {
	for k := reading; k <= clock; k++ {
		if natures[k].parse == nil {
			continue // no line comes to it
		}
		for _, v := range []align.View{align.FromMovable, align.FromStationary} {
			for _, s := range []System{Metric, Inch} {
				for _, x := range []float64{0, 1, -1, 0.3, -0.3, 17.0 / 3, -250} {
					x *= natures[k].keeps
					text := k.rounded(x, s, v)
					own, err := k.read(text, v)
					if err != nil {
						t.Errorf("%q of kind %d from %v: %v", text, k, v, err)
					} else if !own.meets(exactlyAt(x)) {
						t.Errorf("%q of kind %d from %v does not stand for %v, but for %v to %v", text, k, v, x, own.low, own.high)
					}
				}
			}
		}
	}
}

func TestLastPlaces(t *testing.T) {
	rows := []struct{ amount, one, unit string }{
		{"2.7 mil", "0.1 mil", "mil"},
		{"-2.70 mil", "0.01 mil", "mil"},
		{"27 mil", "1 mil", "mil"},
		{"27mil", "1mil", "mil"},
		{"0.0005 in", "0.0001 in", "in"},
		{"5 7/16 in", "1/16 in", "in"},
		{`5-7/16"`, `1/16"`, `"`},
		{"3/8 in", "1/8 in", "in"},
		{"1 mm/100mm", "1 mm/100mm", "mm/100mm"},
		{"1.2 mm/100 mm", "0.1 mm/100 mm", "mm/100 mm"},
	}
	for _, row := range rows {
		one, unit, err := lastPlace(row.amount)
		if one != row.one || unit != row.unit || err != nil {
			t.Errorf("%q: %q of %q (%v), want %q of %q", row.amount, one, unit, err, row.one, row.unit)
		}
	}
}

// Units of the bench of either workshop.
func TestSystemOfAnAnswer(t *testing.T) {
	for _, unit := range []string{"mil", "thou", "in", "inch", `"`, "″", "ft", "'", "′", "mil/in", "mil/ft", "in/ft", "in/in", "°F", "F", "degF"} {
		if systemOf(unit) != Inch {
			t.Errorf("%s is not of the inch system", unit)
		}
	}
	for _, unit := range []string{"mm", "um", "µm", "nm", "cm", "m", "mm/m", "um/m", "mm/100mm", "mm/mm", "m/m", "K", "°C", "C", "degC"} {
		if systemOf(unit) != Metric {
			t.Errorf("%s is not metric", unit)
		}
	}
}
