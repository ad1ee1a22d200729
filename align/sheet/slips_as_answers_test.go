package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

func flangeShims(radius units.Length, vertical, horizontal units.Slope) sheet.FlangeShims {
	bolt := func(name string, at units.Clock) flange.Bolt { return flange.Bolt{Name: name, Radius: radius, At: at} }
	return sheet.FlangeShims{
		Flange: flange.Flange{
			Face: mm(300), Push: flange.TowardsStationary, View: align.FromMovable,
			Bolts: []flange.Bolt{bolt("A", units.Hour), bolt("B", 5*units.Hour), bolt("C", 9*units.Hour)},
		},
		Off: align.Centreline{Vertical: align.Line{Slope: vertical}, Horizontal: align.Line{Slope: horizontal}},
	}
}

func rimReadings(vertical, horizontal, sag units.Length) sheet.TargetReadings {
	return sheet.TargetReadings{
		Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: mm(100)}, Sag: sag, View: align.FromMovable,
		Centreline: align.Centreline{Vertical: align.Line{Offset: vertical}, Horizontal: align.Line{Offset: horizontal}},
	}
}

// Many a slip is the right answer to another question: with the radius doubled where
// the diameter was taken for it, with half of the sag where it was counted once. That
// answer, on a sheet that is right up to it, is explained by the slip.
func TestSlipsAreAnswersToOtherQuestions(t *testing.T) {
	type asked interface {
		Working() (sheet.Working, error)
	}
	const a, b = units.Slope(0.0008), units.Slope(0.0003)
	for _, row := range []struct {
		kind  string
		line  string
		asked asked
		other asked
	}{
		{"top_and_bottom_exchanged", "bolt.A.wedge", flangeShims(mm(150), a, b), flangeShims(mm(150), -a, b)},
		{"left_and_right_exchanged", "bolt.A.wedge", flangeShims(mm(150), a, b), flangeShims(mm(150), a, -b)},
		{"radius_and_diameter", "bolt.A.wedge", flangeShims(mm(150), a, b), flangeShims(mm(300), a, b)},
		{"radius_and_diameter", "bolt.B.wedge", flangeShims(mm(150), a, b), flangeShims(mm(300), a, b)},
		{"position_for_correction", "bolt.A.wedge", flangeShims(mm(150), a, b), flangeShims(mm(150), -a, -b)},
		{"sag_forgotten", "reading.6", rimReadings(mm(0.2), mm(0.1), mm(0.05)), rimReadings(mm(0.2), mm(0.1), 0)},
		{"sag_once", "reading.6", rimReadings(mm(0.2), mm(0.1), mm(0.05)), rimReadings(mm(0.2), mm(0.1), mm(0.025))},
		{"sag_once", "reading.3", rimReadings(mm(0.2), mm(0.1), mm(0.05)), rimReadings(mm(0.2), mm(0.1), mm(0.025))},
		{"total_not_halved", "reading.3", rimReadings(mm(0.2), mm(0.1), mm(0.05)), rimReadings(mm(0.1), mm(0.05), mm(0.05))},
		{"top_and_bottom_exchanged", "reading.6", rimReadings(mm(0.2), mm(0.1), mm(0.05)), rimReadings(-mm(0.2), mm(0.1), mm(0.05))},
	} {
		w, err := row.asked.Working()
		if err != nil {
			t.Fatal(err)
		}
		other, err := row.other.Working()
		if err != nil {
			t.Fatal(err)
		}
		written := upTo(w, row.line)
		written[row.line] = upTo(other, row.line)[row.line]
		m, err := w.Check(written)
		if err != nil {
			t.Fatal(err)
		}
		named := func(e sheet.Explanation) bool {
			return len(e.Slips) == 1 && e.Slips[0].Kind.String() == row.kind && slices.Contains(e.Slips[0].Steps, row.line)
		}
		if !slices.ContainsFunc(m.Explanations, named) {
			var lines []string
			for id, text := range written {
				lines = append(lines, id+" "+text)
			}
			t.Errorf("%s at %s is not named, but %v, on\n%s", row.kind, row.line, m.Explanations, strings.Join(lines, "\n"))
		}
	}
}

// upTo are the answers of all lines up to one, with all their digits.
func upTo(w sheet.Working, line string) map[string]string {
	all := map[string]string{}
	for _, s := range w.Steps(sheet.Metric) {
		all[s.ID] = s.Exact
		if s.ID == line {
			break
		}
	}
	return all
}
