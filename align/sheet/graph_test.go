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

// Derived by hand from the formula at Graph, for a line that climbs 1 mm/m: drawn
// 10 times shorter and 100 times larger, it climbs at 45 degrees, S = 1.
func TestDrawnOnSquares(t *testing.T) {
	g := onSquares().mustDraw(t)
	want := sheet.Graph{
		Paper:      sheet.Paper{Reduction: 10, Exaggeration: 100, Pencil: 500 * micrometre},
		Stationary: [2]sheet.Mark{{}, {X: 90 * millimetre}},
		Movable:    [2]sheet.Mark{{Y: -20 * millimetre}, {X: 90 * millimetre, Y: 70 * millimetre}},
		Points:     [2]sheet.Mark{{Name: "stationary dial", Y: -20 * millimetre}, {Name: "movable dial", X: 40 * millimetre, Y: 20 * millimetre}},
		Feet: []sheet.FootMark{
			{align.Foot{Name: "front", X: 300 * millimetre}, 100 * micrometre, 20 * micrometre, sheet.Mark{Name: "front", X: 30 * millimetre, Y: 10 * millimetre}},
			{align.Foot{Name: "rear", X: 900 * millimetre}, 700 * micrometre, 20 * micrometre * 90 / 39, sheet.Mark{Name: "rear", X: 90 * millimetre, Y: 70 * millimetre}},
		},
	}
	nearly := cmp.Comparer(func(a, b units.Length) bool { return math.Abs(float64(a-b)) < 1e-3 })
	if diff := cmp.Diff(want, g, nearly); diff != "" {
		t.Errorf("drawn (-want +got):\n%s", diff)
	}
}

// What a place beyond, between or before the points costs, on a line that is flat
// (S = 0) and on one that climbs or falls at 45 degrees. A pencil of 0.5 mm is
// 5 um on the machine; the points stand at 0 and 40 mm on paper. Derived here.
func TestToleranceByPlace(t *testing.T) {
	rows := []struct {
		name  string
		slope units.Slope
		x     units.Length
		want  float64 // in um
	}{
		{"in the middle", 0, 200 * millimetre, 10},
		{"between", 0, 30 * millimetre, 10},
		{"at a point, which may stand too near the other", 0, 400 * millimetre, 10 * 40.0 / 39},
		{"just inside, where neither is worse", 0, 390 * millimetre, 10},
		{"beyond", 0, 900 * millimetre, 10 * 90.0 / 39},
		{"as far on the other side", 0, -500 * millimetre, 10 * 90.0 / 39},
		{"climbing, between", units.MillimetrePerMetre, 200 * millimetre, 20},
		{"falling, between", -units.MillimetrePerMetre, 200 * millimetre, 20},
		{"falling, beyond", -units.MillimetrePerMetre, 900 * millimetre, 20 * 90.0 / 39},
		{"falling twice as steep", -2 * units.MillimetrePerMetre, 200 * millimetre, 30},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			d := onSquares()
			d.line.Slope, d.feet = row.slope, []align.Foot{{Name: "foot", X: row.x}}
			want := units.Length(row.want) * micrometre
			within(t, "tolerance", d.mustDraw(t).Feet[0].Tolerance, want, 1e-3)
			within(t, "worst by hand", worstByHand(d, row.x), want, 1e-3)
			d.through[0], d.through[1] = d.through[1], d.through[0]
			within(t, "points the other way round", d.mustDraw(t).Feet[0].Tolerance, want, 1e-3)
		})
	}
}

// With a fine pencil and a flat line, what is left is the error of a line through
// two points and that of the reading.
func TestToleranceOfAFinePencil(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDrawing(t)
		d.line.Slope, d.paper.Pencil = 0, 1
		x1, x2 := float64(d.through[0].X), float64(d.through[1].X)
		for _, f := range d.mustDraw(t).Feet {
			x := float64(f.Foot.X)
			lever := (math.Abs(x-x1) + math.Abs(x-x2)) / math.Abs(x2-x1)
			want := (lever + 1) / d.paper.Exaggeration
			if got := float64(f.Tolerance); math.Abs(got-want) > 1e-5*want {
				t.Errorf("%s: %v, want %v", f.Foot.Name, got, want)
			}
		}
	})
}

// All that is drawn of the movable line lies on it, measures back to the machine,
// and stands between the ends of both lines, which stand above one another.
func TestMarksMeasureBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDrawing(t)
		g := d.mustDraw(t)
		back := func(what string, m sheet.Mark, x units.Length) {
			same(t, what+": x", m.X*units.Length(d.paper.Reduction), x)
			within(t, what+": w", m.Y/units.Length(d.paper.Exaggeration), d.line.At(x), 1e-5)
			if m.X < g.Movable[0].X || m.X > g.Movable[1].X {
				t.Errorf("%s stands at %v, beyond the ends %v", what, m.X, g.Movable)
			}
		}
		for i, m := range g.Points {
			back(m.Name, m, d.through[i].X)
		}
		for i, f := range g.Feet {
			back(f.Foot.Name, f.Mark, d.feet[i].X)
			if f.Foot != d.feet[i] || f.Mark.Name != f.Foot.Name || f.W != d.line.At(f.Foot.X) {
				t.Errorf("foot %d: %+v", i, f)
			}
		}
		for i, m := range g.Movable {
			back("end", m, m.X*units.Length(d.paper.Reduction))
			if g.Stationary[i] != (sheet.Mark{X: m.X}) {
				t.Errorf("end %d: %v under %v", i, g.Stationary[i], m)
			}
		}
		if g.Movable[0].X > 0 || g.Movable[1].X < 0 {
			t.Errorf("the coupling centre is beyond the ends %v", g.Movable)
		}
	})
}

// The lines end at the outermost of what is marked, whichever that is.
func TestEndsOfLines(t *testing.T) {
	station := func(a, b units.Length) [2]sheet.Station { return [2]sheet.Station{{X: a}, {X: b}} }
	rows := []struct {
		name        string
		through     [2]sheet.Station
		feet        []align.Foot
		left, right units.Length // on paper
	}{
		{"the points", station(-100*millimetre, 200*millimetre), nil, -10 * millimetre, 20 * millimetre},
		{"the points, the other way round", station(200*millimetre, -100*millimetre), nil, -10 * millimetre, 20 * millimetre},
		{"the coupling centre on the left", station(100*millimetre, 200*millimetre), nil, 0, 20 * millimetre},
		{"the coupling centre on the right", station(-100*millimetre, -200*millimetre), nil, -20 * millimetre, 0},
		{"feet on both sides", station(-100*millimetre, 200*millimetre),
			[]align.Foot{{Name: "a", X: 500 * millimetre}, {Name: "b", X: -300 * millimetre}, {Name: "c"}}, -30 * millimetre, 50 * millimetre},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			d := onSquares()
			d.through, d.feet = row.through, row.feet
			g := d.mustDraw(t)
			for i, want := range []units.Length{row.left, row.right} {
				if g.Stationary[i].X != want || g.Movable[i].X != want {
					t.Errorf("end %d: %v and %v, want %v", i, g.Stationary[i].X, g.Movable[i].X, want)
				}
			}
		})
	}
}

// The same line and machine, told in another order, is the same drawing.
func TestOrderOfFeetIsTheCallers(t *testing.T) {
	d := onSquares()
	forward := d.mustDraw(t)
	slices.Reverse(d.feet)
	backward := d.mustDraw(t)
	slices.Reverse(backward.Feet)
	if diff := cmp.Diff(forward, backward); diff != "" {
		t.Errorf("the order of the feet changes more than their order:\n%s", diff)
	}
}

func TestPencilStated(t *testing.T) {
	d := onSquares()
	byDefault := d.mustDraw(t)
	d.paper.Pencil = sheet.DefaultPencil
	if diff := cmp.Diff(byDefault, d.mustDraw(t)); diff != "" {
		t.Errorf("the default, stated:\n%s", diff)
	}
	d.paper.Pencil /= 5
	within(t, "a fifth of it", d.mustDraw(t).Feet[0].Tolerance, 4*micrometre, 1e-3)
}

// A graph in which nothing is off has no minus signs before its zeros.
func TestGraphHasNoNegativeZero(t *testing.T) {
	negative := math.Copysign(0, -1)
	d := onSquares()
	d.line = align.Line{Offset: units.Length(negative), Slope: units.Slope(negative)}
	d.through[0].X, d.feet[0].X = units.Length(negative), units.Length(negative)
	g := d.mustDraw(t)
	all := []units.Length{g.Feet[0].W, g.Feet[1].W}
	for _, m := range []sheet.Mark{g.Stationary[0], g.Stationary[1], g.Movable[0], g.Movable[1], g.Points[0], g.Points[1], g.Feet[0].Mark, g.Feet[1].Mark} {
		all = append(all, m.X, m.Y)
	}
	for i, l := range all {
		if l == 0 && math.Signbit(float64(l)) {
			t.Errorf("number %d is a negative zero", i)
		}
	}
}
