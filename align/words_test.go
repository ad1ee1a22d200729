package align_test

import (
	"math"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

func move(name string, horizontal, vertical units.Length) align.Move {
	return align.Move{Foot: align.Foot{Name: name}, By: align.Vector{Horizontal: horizontal, Vertical: vertical}}
}

func TestMoveInWords(t *testing.T) {
	negativeZero := units.Length(math.Copysign(0, -1))
	mils, micrometres, inches := align.Style{Unit: units.InMils}, align.Style{Unit: units.InMicrometres}, align.Style{Unit: units.InInches}
	other := align.Style{View: align.FromStationary}
	compass := align.Style{Three: "north", Nine: "south"}
	compassOther := align.Style{View: align.FromStationary, Three: "south", Nine: "north"}
	vertical := align.Style{Twelve: "mark", Six: "ladder", Three: "east", Nine: "west"}
	rows := []struct {
		name  string
		move  align.Move
		style align.Style
		want  string
	}{
		{"up, towards 3", move("", 270*um, 210*um), align.Style{}, "raise 0.21 mm, push 0.27 mm towards 3 o'clock"},
		{"up, towards 9", move("", -270*um, 210*um), align.Style{}, "raise 0.21 mm, push 0.27 mm towards 9 o'clock"},
		{"down, towards 3", move("", 270*um, -210*um), align.Style{}, "lower 0.21 mm, push 0.27 mm towards 3 o'clock"},
		{"down, towards 9", move("", -270*um, -210*um), align.Style{}, "lower 0.21 mm, push 0.27 mm towards 9 o'clock"},
		{"with a name", move("inboard", -4*mil, -2.7*mil), mils, "inboard: lower 2.7 mil, push 4.0 mil towards 9 o'clock"},

		{"3 is 9 from the other end", move("", 270*um, 210*um), other, "raise 0.21 mm, push 0.27 mm towards 9 o'clock"},
		{"9 is 3 from the other end", move("", -270*um, 210*um), other, "raise 0.21 mm, push 0.27 mm towards 3 o'clock"},
		{"down and 3 is 9 from the other end", move("", 270*um, -210*um), other, "lower 0.21 mm, push 0.27 mm towards 9 o'clock"},
		{"down and 9 is 3 from the other end", move("", -270*um, -210*um), other, "lower 0.21 mm, push 0.27 mm towards 3 o'clock"},
		{"a name for 9 only", move("", -270*um, 210*um), align.Style{Nine: "south"}, "raise 0.21 mm, push 0.27 mm towards south"},
		{"a name for the crew's 9, the library's 3", move("", 270*um, 0), align.Style{View: align.FromStationary, Nine: "south"}, "leave the height, push 0.27 mm towards south"},
		{"vertical machine, a mark at 6 only", move("", 0, 210*um), align.Style{Six: "ladder"}, "push 0.21 mm towards 12 o'clock"},
		{"a name for 3", move("", 270*um, 210*um), compass, "raise 0.21 mm, push 0.27 mm towards north"},
		{"a name for 9", move("", -270*um, 210*um), compass, "raise 0.21 mm, push 0.27 mm towards south"},
		{"north stays north from the other end", move("", 270*um, 210*um), compassOther, "raise 0.21 mm, push 0.27 mm towards north"},
		{"south stays south from the other end", move("", -270*um, 210*um), compassOther, "raise 0.21 mm, push 0.27 mm towards south"},
		{"a name for 3 only, towards 9", move("", -270*um, 210*um), align.Style{Three: "north"}, "raise 0.21 mm, push 0.27 mm towards 9 o'clock"},

		{"vertical machine, towards 12 and 3", move("", 270*um, 210*um), vertical, "push 0.21 mm towards mark, push 0.27 mm towards east"},
		{"vertical machine, towards 6 and 9", move("", -270*um, -210*um), vertical, "push 0.21 mm towards ladder, push 0.27 mm towards west"},
		{"vertical machine, one mark only", move("", 270*um, -210*um), align.Style{Twelve: "mark"}, "push 0.21 mm towards 6 o'clock, push 0.27 mm towards 3 o'clock"},

		{"vertical machine, towards 12 only", move("", 0, 210*um), vertical, "push 0.21 mm towards mark"},
		{"vertical machine, towards 9 only", move("", -270*um, 0), vertical, "push 0.27 mm towards west"},
		{"vertical machine, nothing", move("outboard", 0, 0), vertical, "outboard: leave"},
		{"vertical machine from the other end", move("", 270*um, 210*um), align.Style{View: align.FromStationary, Twelve: "mark"}, "push 0.21 mm towards mark, push 0.27 mm towards 9 o'clock"},

		{"nothing", move("outboard", 0, 0), align.Style{}, "outboard: leave"},
		{"nothing, without a name", move("", 0, 0), align.Style{}, "leave"},
		{"negative zero", move("", negativeZero, negativeZero), align.Style{}, "leave"},
		{"rounds to nothing", move("", 4.9*um, -4.9*um), align.Style{}, "leave"},
		{"half of the last digit does not", move("", 5*um, -5*um), align.Style{}, "lower 0.01 mm, push 0.01 mm towards 3 o'clock"},
		{"rounds to nothing in mils", move("", 0.049*mil, -0.049*mil), mils, "leave"},

		{"0.01 mm unless told", move("", 1234.5*um, 0), align.Style{}, "leave the height, push 1.23 mm towards 3 o'clock"},
		{"0.1 mil unless told", move("", 0, 12.34*mil), mils, "raise 12.3 mil, leave sideways"},
		{"0.0001 in unless told", move("", 0, 12.34*mil), inches, "raise 0.0123 in, leave sideways"},
		{"1 um unless told", move("", 0, 12.34*um), micrometres, "raise 12 um, leave sideways"},
		{"three digits", move("", 0, 12.34*um), align.Style{Digits: 3}, "raise 0.012 mm, leave sideways"},
		{"0.001 cm unless told", move("", 0, 123.4*um), align.Style{Unit: units.InCentimetres}, "raise 0.012 cm, leave sideways"},
		{"0.01 mm in metres unless told", move("", 0, 123.4*um), align.Style{Unit: units.InMetres}, "raise 0.00012 m, leave sideways"},
		{"0.00001 ft unless told", move("", 0, 12*mil), align.Style{Unit: units.InFeet}, "raise 0.00100 ft, leave sideways"},
		{"whole nanometres unless told", move("", 0, 12340), align.Style{Unit: units.InNanometres}, "raise 12340 nm, leave sideways"},
		{"far more digits than there are", move("", 0, 0.5*um), align.Style{Digits: 5}, "raise 0.00050 mm, leave sideways"},
		{"negative digits round to nothing", move("", 0, 490*um), align.Style{Digits: -9}, "leave"},
		{"negative digits are none", move("", 0, 1600*um), align.Style{Digits: -1}, "raise 2 mm, leave sideways"},
	}
	for _, row := range rows {
		if got := row.move.Text(row.style); got != row.want {
			t.Errorf("%s: got %q, want %q", row.name, got, row.want)
		}
		if row.style == (align.Style{}) && row.move.String() != row.want {
			t.Errorf("%s: String gives %q, want what the zero style does", row.name, row.move)
		}
	}
}

// Nothing is raised, lowered or left at its height on a vertical machine.
func TestVerticalMachineHasNoHeight(t *testing.T) {
	style := align.Style{Twelve: "mark", Six: "ladder"}
	for _, by := range []align.Vector{{}, {Horizontal: mm}, {Horizontal: -mm}, {Vertical: mm}, {Vertical: -mm}, {Horizontal: mm, Vertical: mm}} {
		text := align.Move{By: by}.Text(style)
		for _, word := range []string{"raise", "lower", "height"} {
			if strings.Contains(text, word) {
				t.Errorf("%+v: %q speaks of %q", by, text, word)
			}
		}
	}
}

// In no unit do the digits that are taken unless told hide a move that a crew
// would make: 0.05 mm, at which common practice starts to act on a foot.
func TestDefaultDigitsHideNoMove(t *testing.T) {
	for u := range 8 {
		unit := units.LengthUnit(u)
		if text := move("", 0, 50*um).Text(align.Style{Unit: unit}); text == "leave" {
			t.Errorf("in %v a move of 0.05 mm is %q", unit, text)
		}
	}
}

// A view that does not exist is one and the same for positions and for words.
func TestUnknownViewIsOne(t *testing.T) {
	view := align.View(9)
	towards := "3 o'clock"
	if view.Clock(units.Three) != units.Three {
		towards = "9 o'clock"
	}
	if text := move("", mm, 0).Text(align.Style{View: view}); !strings.HasSuffix(text, towards) {
		t.Errorf("%q, though View.Clock makes 3 o'clock %v", text, view.Clock(units.Three))
	}
}

// What is no number has no words, in either direction.
func TestNoNumberHasNoWords(t *testing.T) {
	for _, by := range []units.Length{units.Length(math.NaN()), units.Length(math.Inf(1)), units.Length(math.Inf(-1))} {
		for _, s := range []align.Style{{}, {Twelve: "mark"}} {
			if up, side := s.Height(by), s.Sideways(by); up != "" || side != "" {
				t.Errorf("%v: %q, %q", by, up, side)
			}
		}
	}
}
