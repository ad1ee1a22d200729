package sheet_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// onSquares is 900 mm long and goes from 0.2 mm below the axis to 0.7 mm above it.
func TestSuggestedScales(t *testing.T) {
	flat := func(d *drawing) { d.line = align.Line{} }
	rows := []struct {
		name                    string
		width, height           units.Length // of the field
		change                  func(*drawing)
		reduction, exaggeration float64
	}{
		{"as large as it goes", 90 * millimetre, 90 * millimetre, nil, 10, 100},
		{"a nanometre too small", 90*millimetre - 1, 90*millimetre - 1, nil, 20, 50},
		{"a sheet as long as the machine", 900 * millimetre, 180 * millimetre, nil, 1, 200},
		{"not longer than the machine", 2000 * millimetre, 899 * millimetre, nil, 1, 500},
		{"not finer than a micrometre", 180 * millimetre, 9000 * millimetre, nil, 5, 1000},
		{"in line", 90 * millimetre, 90 * millimetre, flat, 10, 1000},
		{"far off, and made smaller", 90 * millimetre, 90 * millimetre, func(d *drawing) { d.line = align.Line{Offset: -450 * millimetre} }, 10, 0.2},
		{"farther off", 90 * millimetre, 90 * millimetre, func(d *drawing) { d.line = align.Line{Offset: -900 * millimetre} }, 10, 0.1},
		{"farther still", 90 * millimetre, 90 * millimetre, func(d *drawing) { d.line = align.Line{Offset: 1800 * millimetre} }, 10, 0.05},
		{"out of all reason, and a round step still", 90 * millimetre, 90 * millimetre, func(d *drawing) { d.line.Offset = 17_000 * units.Metre }, 10, 5e-6},
		{"as far apart as can be, on as little", 2.1 * millimetre, millimetre + 1, func(d *drawing) {
			d.through[0].X, d.through[1].X, d.line, d.feet = -1e15, 1e15, align.Line{Slope: 1}, nil
		}, 1e9, 5e-10},
		{"all on one side of the axis, which has to be on the sheet", 90 * millimetre, 90 * millimetre, func(d *drawing) { d.line = align.Line{Offset: millimetre} }, 10, 50},
		{"a foot on the left", 90 * millimetre, 90 * millimetre, func(d *drawing) { d.feet[0].X, d.line.Slope = -900*millimetre, 0 }, 20, 200},
		{"all on the right of the coupling, which has to be on the sheet", 60 * millimetre, 90 * millimetre, func(d *drawing) { d.through[0].X, d.feet = 300*millimetre, nil }, 10, 200},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			d := onSquares()
			if row.change != nil {
				row.change(&d)
			}
			got, err := d.suggest(row.width, row.height)
			if want := (sheet.Paper{Reduction: row.reduction, Exaggeration: row.exaggeration}); err != nil || got != want {
				t.Errorf("got %v, %v, want %v", got, err, want)
			}
		})
	}
}

// What is suggested goes on the sheet, and with the next step of either scale it
// would not, or would be larger than a suggestion goes; both steps would make every
// tolerance smaller, and those the other way larger.
func TestSuggestionFitsAndNoMoreWould(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDrawing(t)
		width := units.Length(rapid.Float64Range(100, 500).Draw(t, "width")) * millimetre
		height := units.Length(rapid.Float64Range(50, 500).Draw(t, "height")) * millimetre
		p, err := d.suggest(width, height)
		if err != nil {
			t.Skip("points too close on this sheet")
		}
		d.paper = p
		g := d.mustDraw(t)
		wide, high := g.Movable[1].X-g.Movable[0].X, height0(g)
		if wide > width*(1+1e-12) || high > height*(1+1e-12) {
			t.Errorf("%v by %v do not go on %v by %v", wide, high, width, height)
		}
		shorter, larger := nextStep(p.Reduction, -1), nextStep(p.Exaggeration, 1)
		if p.Reduction != 1 && wide*units.Length(p.Reduction/shorter) <= width {
			t.Errorf("%v would do, too, not just %v", shorter, p.Reduction)
		}
		if p.Exaggeration != 1000 && high*units.Length(larger/p.Exaggeration) <= height {
			t.Errorf("%v would do, too, not just %v", larger, p.Exaggeration)
		}
		for _, worse := range []sheet.Paper{{Reduction: nextStep(p.Reduction, 1), Exaggeration: p.Exaggeration}, {Reduction: p.Reduction, Exaggeration: nextStep(p.Exaggeration, -1)}} {
			e := d
			e.paper = worse
			if h, err := e.draw(); err == nil {
				for i := range h.Feet {
					if h.Feet[i].Tolerance < g.Feet[i].Tolerance*(1-1e-12) {
						t.Errorf("%v makes the tolerance smaller than %v", worse, p)
					}
				}
			}
		}
	})
}

// height0 is how high a graph is with its axis.
func height0(g sheet.Graph) units.Length {
	low, high := g.Movable[0].Y, g.Movable[1].Y
	return max(low, high, 0) - min(low, high, 0)
}

// nextStep finds the round step before or after one, in the decimals that a drawer
// writes down.
func nextStep(step float64, by int) float64 {
	var steps []float64
	for power := -6; power < 7; power++ {
		for _, digit := range []string{"1", "2", "5"} {
			s, err := strconv.ParseFloat(digit+"e"+strconv.Itoa(power), 64)
			if err != nil {
				panic(err)
			}
			steps = append(steps, s)
		}
	}
	i := slices.Index(steps, step)
	if i < 0 {
		panic(strconv.FormatFloat(step, 'g', -1, 64) + " is no round step")
	}
	return steps[i+by]
}

// A field that is too small is told how large the pencil of half a millimetre makes it.
func TestSuggestPaperTellsTheLeastField(t *testing.T) {
	_, err := onSquares().suggest(millimetre, 200*millimetre)
	if got := units.Faults(err); len(got) != 1 || got[0].Want != "a side of more than 1 mm, twice the error of the pencil" {
		t.Errorf("%v", err)
	}
}

func TestSuggestPaperRefuses(t *testing.T) {
	nan := units.Length(math.NaN())
	sheetOf := func(l units.Length) [2]units.Length { return [2]units.Length{l, 200 * millimetre} }
	heightOf := func(l units.Length) [2]units.Length { return [2]units.Length{200 * millimetre, l} }
	good := sheetOf(200 * millimetre)
	rows := []struct {
		name       string
		size, twin [2]units.Length
		change     func(*drawing)
		want       []string
	}{
		{"no width", sheetOf(0), sheetOf(30 * millimetre), nil, []string{"missing /width"}},
		{"a width below zero", sheetOf(-millimetre), good, nil, []string{"out_of_range /width"}},
		{"a width that is no number", sheetOf(nan), good, nil, []string{"not_finite /width"}},
		{"a width of two pencil points", sheetOf(millimetre), good, nil, []string{"out_of_range /width"}},
		{"no height", heightOf(0), heightOf(1.1 * millimetre), nil, []string{"missing /height"}},
		{"a height of two pencil points", heightOf(millimetre), heightOf(millimetre + 1), nil, []string{"out_of_range /height"}},
		{"points that meet on so small a sheet", sheetOf(1.8 * millimetre), sheetOf(4.5 * millimetre), nil, []string{"conflict /through/1/x"}},
		{"points that meet on any sheet", good, good, func(d *drawing) { d.through[1].X = millimetre }, []string{"conflict /through/1/x"}},
		{"what Draw refuses", good, good, func(d *drawing) { d.line.Offset, d.feet[0].Name, d.feet[1].X = nan, "", nan },
			[]string{"missing /feet/0/name", "not_finite /feet/1/x", "not_finite /line/offset"}},
		{"all at once", [2]units.Length{nan, -1}, good, func(d *drawing) { d.through[1].X = 0; d.feet[1].Name = "front" },
			[]string{"conflict /through/1/x", "duplicate /feet/1/name", "not_finite /width", "out_of_range /height"}},
		{"a line that is out of sight", good, good, func(d *drawing) { d.line.Slope = 1e9 }, []string{"out_of_range /feet/0/x", "out_of_range /feet/1/x", "out_of_range /through/1/x"}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			d := onSquares()
			if row.change != nil {
				row.change(&d)
			}
			p, err := d.suggest(row.size[0], row.size[1])
			if got := codesAt(err); !slices.Equal(got, row.want) || p != (sheet.Paper{}) {
				t.Errorf("got %v (%v) and %v, want %v", got, err, p, row.want)
			}
			if _, err := onSquares().suggest(row.twin[0], row.twin[1]); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}
