package sheet_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// readings off a graph, by foot.
type readings = map[string]units.Length

// The front foot's w is 100 um and may be off by 20, the rear's 700 um by 46.2.
func TestCheckJudges(t *testing.T) {
	g := onSquares().mustDraw(t)
	rows := []struct {
		name   string
		foot   string
		value  units.Length
		within bool
	}{
		{"the truth", "front", 100 * micrometre, true},
		{"on the upper edge", "front", 120 * micrometre, true},
		{"on the lower edge", "front", 80 * micrometre, true},
		{"above it", "front", 120*micrometre + 1, false},
		{"below it", "front", 80*micrometre - 1, false},
		{"less than a nanometre above", "front", 120*micrometre + 0.4, true},
		{"the correction in place of w", "front", -100 * micrometre, false},
		{"the rear foot is given more", "rear", 746 * micrometre, true},
		{"but not so much more", "rear", 747 * micrometre, false},
		{"the front's value at the rear", "rear", 100 * micrometre, false},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got, err := g.Check(readings{row.foot: row.value})
			if err != nil || len(got) != 1 {
				t.Fatalf("%v, %v", got, err)
			}
			i := slices.IndexFunc(g.Feet, func(f sheet.FootMark) bool { return f.Foot.Name == row.foot })
			want := sheet.ReadOff{Foot: row.foot, Value: row.value, Difference: row.value - g.Feet[i].W, Tolerance: g.Feet[i].Tolerance, Within: row.within}
			if got[0] != want {
				t.Errorf("got %+v, want %+v", got[0], want)
			}
		})
	}
}

// H. P. Bloch and F. K. Geitner, Machinery Component Maintenance and Repair, ch. 5,
// p. 203 (read), as in the example: w is 19/7 and -46/7 mil at the feet, and what
// the book prints, in mils and rounded to whole ones, comes from such a graph. The
// corrections themselves do not.
func TestPublishedGraph(t *testing.T) {
	line, err := align.Through(align.Point{X: -7 * units.Inch, W: 12 * units.Mil}, align.Point{X: 7 * units.Inch, W: 7 * units.Mil})
	if err != nil {
		t.Fatal(err)
	}
	g := drawing{
		paper:   sheet.Paper{Reduction: 10, Exaggeration: 200},
		line:    line,
		through: [2]sheet.Station{{Name: "S", X: -7 * units.Inch}, {Name: "A", X: 7 * units.Inch}},
		feet:    []align.Foot{{Name: "inboard", X: 19 * units.Inch}, {Name: "outboard", X: 45 * units.Inch}},
	}.mustDraw(t)
	same(t, "inboard", g.Feet[0].W, 19*units.Mil/7)
	same(t, "outboard", g.Feet[1].W, -46*units.Mil/7)
	rows := []struct {
		name              string
		inboard, outboard units.Length
		within            bool
	}{
		{"to a tenth of a mil", 27 * units.Mil / 10, -66 * units.Mil / 10, true},
		{"to a mil", 3 * units.Mil, -7 * units.Mil, true},
		{"the corrections", -3 * units.Mil, 7 * units.Mil, false},
	}
	for _, row := range rows {
		answer, err := g.Check(readings{"inboard": row.inboard, "outboard": row.outboard})
		if err != nil || answer[0].Within != row.within || answer[1].Within != row.within {
			t.Errorf("%s: %+v, %v", row.name, answer, err)
		}
	}
}

// A hand that errs by the pencil at most is never refused, and one that errs by
// more than the worst always is.
func TestCheckTakesACarefulHand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDrawing(t)
		g, err := d.draw()
		if err != nil {
			t.Skip("points too close")
		}
		sides := rapid.SampledFrom([]float64{-1, 1})
		read, wrong := readings{}, readings{}
		for _, f := range g.Feet {
			var h handErrors
			for i := range 3 {
				h.along[i] = float64(d.pencilOf()) * sides.Draw(t, "along")
				h.across[i] = float64(d.pencilOf()) * sides.Draw(t, "across")
			}
			read[f.Foot.Name] = f.W + units.Length(readByHand(d, f.Foot.X, h))
			wrong[f.Foot.Name] = f.W + units.Length(sides.Draw(t, "side"))*(f.Tolerance+2)
		}
		careful, err := g.Check(read)
		if err != nil || len(careful) != len(g.Feet) {
			t.Fatalf("%v, %v", careful, err)
		}
		careless, err := g.Check(wrong)
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range careful {
			if !r.Within {
				t.Errorf("a careful hand is refused: %+v", r)
			}
			if careless[i].Within {
				t.Errorf("a careless hand is taken: %+v", careless[i])
			}
		}
	})
}

func TestCheckAnswersInTheOrderOfFeet(t *testing.T) {
	d := onSquares()
	d.feet = []align.Foot{{Name: "z", X: 800 * millimetre}, {Name: "not read"}, {Name: "a", X: 200 * millimetre}, {Name: "m"}}
	g := d.mustDraw(t)
	answer, err := g.Check(readings{"a": 1, "m": 2, "z": 3})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, r := range answer {
		names = append(names, r.Foot)
	}
	if diff := cmp.Diff([]string{"z", "a", "m"}, names); diff != "" {
		t.Errorf("order (-want +got):\n%s", diff)
	}
	if none, err := g.Check(nil); none != nil || err != nil {
		t.Errorf("nothing read: %v, %v", none, err)
	}
}

// Names and values that a graph's Check refuses, each with a twin that passes.
func TestCheckRefuses(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	rows := []struct {
		name      string
		bad, twin readings
		want      []string
	}{
		{"a foot that is not there", readings{"middle": 0}, readings{"rear": 0}, []string{"unknown /read/middle"}},
		{"a foot in capitals", readings{"Rear": 0}, readings{"rear": 0}, []string{"unknown /read/Rear"}},
		{"a plotted point", readings{"movable dial": 0}, readings{"front": 0}, []string{"unknown /read/movable dial"}},
		{"a name with strokes", readings{"a/b~c": 0}, nil, []string{"unknown /read/a~1b~0c"}},
		{"no name", readings{"": 0}, nil, []string{"unknown /read/"}},
		{"no number", readings{"rear": nan}, readings{"rear": 0}, []string{"not_finite /read/rear"}},
		{"no end", readings{"front": -inf}, readings{"front": -1e15}, []string{"not_finite /read/front"}},
		{"beyond all machines", readings{"front": 2e15}, readings{"front": 1e15}, []string{"out_of_range /read/front"}},
		{"all at once", readings{"rear": nan, "x": nan, "front": inf, "a": 1, "": 2}, readings{"rear": 1, "front": 2},
			[]string{"not_finite /read/front", "not_finite /read/rear", "unknown /read/", "unknown /read/a", "unknown /read/x"}},
	}
	g := onSquares().mustDraw(t)
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			answer, err := g.Check(row.bad)
			if got := codesAt(err); !slices.Equal(got, row.want) || answer != nil {
				t.Errorf("got %v and %v, want %v", got, answer, row.want)
			}
			if _, err := g.Check(row.twin); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// The faults of a map stand in an order of their own, the same each time.
func TestCheckTellsFaultsInOrder(t *testing.T) {
	_, err := onSquares().mustDraw(t).Check(readings{"e": 0, "b": 0, "d": 0, "a": 0, "c": 0})
	var got string
	for _, f := range units.Faults(err) {
		got += f.Path
	}
	if got != "/read/a/read/b/read/c/read/d/read/e" {
		t.Errorf("got %s", got)
	}
}

// A graph may come off the wire, and then be no graph that was ever drawn.
func TestCheckRefusesGraphs(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	rows := []struct {
		name      string
		bad, twin func(*sheet.FootMark)
		want      string
	}{
		{"a foot without a name", func(f *sheet.FootMark) { f.Foot.Name = "" }, func(f *sheet.FootMark) { f.Foot.Name = "back" }, "missing /feet/1/foot/name"},
		{"a name twice", func(f *sheet.FootMark) { f.Foot.Name = "front" }, func(f *sheet.FootMark) { f.Foot.Name = "front 2" }, "duplicate /feet/1/foot/name"},
		{"a truth that is no number", func(f *sheet.FootMark) { f.W = nan }, func(f *sheet.FootMark) { f.W = 0 }, "not_finite /feet/1/w"},
		{"a tolerance that is no number", func(f *sheet.FootMark) { f.Tolerance = nan }, func(f *sheet.FootMark) { f.Tolerance = 0 }, "not_finite /feet/1/tolerance"},
		{"a tolerance without end", func(f *sheet.FootMark) { f.Tolerance = inf }, func(f *sheet.FootMark) { f.Tolerance = 1e9 }, "not_finite /feet/1/tolerance"},
		{"a tolerance below zero", func(f *sheet.FootMark) { f.Tolerance = -1 }, func(f *sheet.FootMark) { f.Tolerance = 1 }, "out_of_range /feet/1/tolerance"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			g, twin := onSquares().mustDraw(t), onSquares().mustDraw(t)
			row.bad(&g.Feet[1])
			if _, err := g.Check(readings{"front": 0}); !slices.Equal(codesAt(err), []string{row.want}) {
				t.Errorf("got %v, want just %s", codesAt(err), row.want)
			}
			row.twin(&twin.Feet[1])
			if _, err := twin.Check(readings{"front": 0}); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}
