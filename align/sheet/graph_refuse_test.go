package sheet_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// One thing wrong in a drawing that is sound otherwise: the fault, and a twin that
// is nearly the same and passes.
func TestDrawRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	noNumber, noEnd := units.Length(nan), units.Length(inf)
	rows := []struct {
		name      string
		bad, twin func(*drawing)
		want      string
	}{
		{"no reduction", func(d *drawing) { d.paper.Reduction = 0 }, func(d *drawing) { d.paper.Reduction = 0.5 }, "missing /reduction"},
		{"a reduction below zero", func(d *drawing) { d.paper.Reduction = -10 }, nil, "out_of_range /reduction"},
		{"a reduction that is no number", func(d *drawing) { d.paper.Reduction = nan }, nil, "not_finite /reduction"},
		{"a reduction to nothing", func(d *drawing) { d.paper.Reduction = inf }, nil, "not_finite /reduction"},
		{"no exaggeration", func(d *drawing) { d.paper.Exaggeration = 0 }, func(d *drawing) { d.paper.Exaggeration = 0.5 }, "missing /exaggeration"},
		{"an exaggeration below zero", func(d *drawing) { d.paper.Exaggeration = -1 }, nil, "out_of_range /exaggeration"},
		{"an exaggeration that is no number", func(d *drawing) { d.paper.Exaggeration = nan }, nil, "not_finite /exaggeration"},
		{"a pencil below zero", func(d *drawing) { d.paper.Pencil = -1 }, func(d *drawing) { d.paper.Pencil = 1 }, "out_of_range /pencil"},
		{"a pencil that is no number", func(d *drawing) { d.paper.Pencil = noNumber }, nil, "not_finite /pencil"},
		{"a pencil without end", func(d *drawing) { d.paper.Pencil = noEnd }, nil, "not_finite /pencil"},

		{"an offset that is no number", func(d *drawing) { d.line.Offset = noNumber }, func(d *drawing) { d.line.Offset = 0 }, "not_finite /line/offset"},
		{"a slope without end", func(d *drawing) { d.line.Slope = units.Slope(-inf) }, func(d *drawing) { d.line.Slope = -1 }, "not_finite /line/slope"},

		{"a point that is no place", func(d *drawing) { d.through[0].X = noNumber }, func(d *drawing) { d.through[0].X = -1 }, "not_finite /through/0/x"},
		{"a second point that is no place", func(d *drawing) { d.through[1].X = noEnd }, func(d *drawing) { d.through[1].X *= 2 }, "not_finite /through/1/x"},
		{"one station for both points", func(d *drawing) { d.through[1].X = d.through[0].X }, func(d *drawing) { d.through[1].X = d.through[0].X + 11*millimetre }, "conflict /through/1/x"},
		{"points that the pencil can bring together", func(d *drawing) { d.through[1].X = 10 * millimetre }, func(d *drawing) { d.through[1].X = 10*millimetre + 1 }, "conflict /through/1/x"},
		{"the same on the other side", func(d *drawing) { d.through[1].X = -10 * millimetre }, func(d *drawing) { d.through[1].X = -10*millimetre - 1 }, "conflict /through/1/x"},
		{"a pencil as thick as half the way between", func(d *drawing) { d.paper.Pencil = 20 * millimetre }, func(d *drawing) { d.paper.Pencil = 19 * millimetre }, "conflict /through/1/x"},
		{"a point where the line is out of sight", func(d *drawing) { d.line.Slope, d.through[1].X, d.feet = 1e7, 400*millimetre, nil },
			func(d *drawing) {
				d.line.Slope, d.through[1].X, d.feet, d.paper.Exaggeration = 1e6, 400*millimetre, nil, 1
			}, "out_of_range /through/1/x"},

		{"a foot without a name", func(d *drawing) { d.feet[0].Name = "" }, func(d *drawing) { d.feet[0].Name = " " }, "missing /feet/0/name"},
		{"a name twice", func(d *drawing) { d.feet[1].Name = "front" }, func(d *drawing) { d.feet[1].Name = "Front" }, "duplicate /feet/1/name"},
		{"a foot that is no place", func(d *drawing) { d.feet[1].X = noNumber }, func(d *drawing) { d.feet[1].X = 0 }, "not_finite /feet/1/x"},
		{"a foot where the line is out of sight", func(d *drawing) { d.line.Slope, d.feet[1].X = 2, 0.9e15 }, func(d *drawing) { d.line.Slope, d.feet[1].X, d.paper.Exaggeration = 1, 0.9e15, 1 }, "out_of_range /feet/1/x"},
		{"a foot at which the graph says nothing", func(d *drawing) { d.paper.Exaggeration, d.line.Slope = 1.5e-9, 0 },
			func(d *drawing) { d.paper.Exaggeration, d.line.Slope = 2.5e-9, 0 }, "out_of_range /feet/1/x"},
		{"marks beyond any paper", func(d *drawing) { d.paper.Exaggeration = 1e15 }, func(d *drawing) { d.paper.Exaggeration = 1e6 }, "out_of_range /exaggeration"},
		{"marks beyond any paper along the shaft", func(d *drawing) { d.paper.Reduction = 1e-7 }, func(d *drawing) { d.paper.Reduction = 1e-6 }, "out_of_range /reduction"},
		{"an uncertainty below zero", func(d *drawing) { d.feet[0].U = -1 }, func(d *drawing) { d.feet[0].U = 1 }, "out_of_range /feet/0/u"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			bad := onSquares()
			row.bad(&bad)
			g, err := bad.draw()
			if got := codesAt(err); !slices.Equal(got, []string{row.want}) {
				t.Errorf("got %v (%v), want just %s", got, err, row.want)
			}
			if diff := cmp.Diff(sheet.Graph{}, g); diff != "" {
				t.Errorf("refused, and yet\n%s", diff)
			}
			twin := onSquares()
			if row.twin != nil {
				row.twin(&twin)
			}
			if _, err := twin.draw(); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// A feet list is a caller's, and a graph without feet shows two lines.
func TestDrawWithoutFeet(t *testing.T) {
	d := onSquares()
	d.feet = nil
	if g := d.mustDraw(t); g.Feet != nil || g.Movable[1].X != 40*millimetre {
		t.Errorf("%+v", g)
	}
}

// All that is wrong is told at once.
func TestDrawTellsAllFaults(t *testing.T) {
	nan := math.NaN()
	d := drawing{
		paper:   sheet.Paper{Reduction: nan, Pencil: -1},
		line:    align.Line{Offset: units.Length(nan), Slope: units.Slope(nan)},
		through: [2]sheet.Station{{X: 5}, {X: 5}},
		feet:    []align.Foot{{X: units.Length(nan)}, {Name: "a"}, {Name: "a", U: -1}, {Name: "a"}, {}},
	}
	_, err := d.draw()
	want := []string{
		"conflict /through/1/x", "duplicate /feet/2/name", "duplicate /feet/3/name", "missing /exaggeration",
		"missing /feet/0/name", "missing /feet/4/name", "not_finite /feet/0/x", "not_finite /line/offset",
		"not_finite /line/slope", "not_finite /reduction", "out_of_range /feet/2/u", "out_of_range /pencil",
	}
	if got := codesAt(err); !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// What the zero values are: not given, and nothing drawn.
func TestGraphZeroValues(t *testing.T) {
	_, err := drawing{}.draw()
	if got, want := codesAt(err), []string{"conflict /through/1/x", "missing /exaggeration", "missing /reduction"}; !slices.Equal(got, want) {
		t.Errorf("Paper and Station: %v, want %v", got, want)
	}
	if answer, err := (sheet.Graph{}).Check(nil); answer != nil || err != nil {
		t.Errorf("Graph: %v, %v", answer, err)
	}
	if _, err := (sheet.Graph{}).Check(readings{"rear": 0}); !slices.Equal(codesAt(err), []string{"unknown /read/rear"}) {
		t.Errorf("Graph: %v", err)
	}
	if _, err := (sheet.Graph{Feet: make([]sheet.FootMark, 1)}).Check(nil); !slices.Equal(codesAt(err), []string{"missing /feet/0/foot/name"}) {
		t.Errorf("FootMark: %v", err)
	}
	if (sheet.ReadOff{}).Within {
		t.Error("ReadOff: within, though nothing was read")
	}
}
