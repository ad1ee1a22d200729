package thermal_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// sound is a machine that is answered: pieces alike, legs that differ, and a
// measurement.
func sound() []thermal.Support {
	profile := profiled(200*mm, 20, 50, 60, 150, 80)
	front := on(200*mm, piece(300*mm, steel, 20), profile)
	middle := sides(600*mm, 700*mm, piece(500*mm, steel, 22), piece(500*mm, steel, 20))
	rear := measured(1000*mm, 0, 120*um)
	front.Name, middle.Name, rear.Name = "front", "middle", "rear"
	return []thermal.Support{front, middle, rear}
}

var (
	nan = math.NaN()
	inf = math.Inf(1)
)

// As many supports as may be are answered; more are one fault, and are not walked.
func TestManySupports(t *testing.T) {
	many := func(n int) []thermal.Support {
		list := make([]thermal.Support, n)
		for i := range list {
			list[i] = measured(units.Length(10*i)*mm, 0, 0)
		}
		return list
	}
	if _, err := thermal.Growth(many(100)...); err != nil {
		t.Error(err)
	}
	for _, n := range []int{101, 100_000} {
		_, err := thermal.Growth(many(n)...)
		if got := units.Faults(err); len(got) != 1 || got[0].Code != units.OutOfRange || got[0].Path != "/supports" {
			t.Errorf("%d supports: %.200v", n, err)
		}
	}
}

// Of supports that stand off as far the first is blamed.
func TestFirstOfThoseThatStandOffIsBlamed(t *testing.T) {
	_, err := thermal.Growth(
		measured(0, 0, mm), measured(200*mm, 0, 0), measured(400*mm, 0, 0), measured(600*mm, 0, mm))
	if got := strings.Join(codesAndPaths(err), ", "); got != "conflict /supports/0" {
		t.Errorf("got %v", err)
	}
}

// One thing wrong in a machine that is sound otherwise: the faults, and a twin
// that is nearly the same and passes.
func TestGrowthRefuses(t *testing.T) {
	type machine = []thermal.Support
	rows := []struct {
		name string
		bad  func(machine)
		twin func(machine) // nil: the sound machine as it is
		want string
	}{
		{"station not a number", func(m machine) { m[0].X = units.Length(nan) }, nil, "not_finite /supports/0/x"},
		{"station beyond all reach", func(m machine) { m[0].X = 1.1e15 }, nil, "out_of_range /supports/0/x"},
		{"station given twice", func(m machine) { m[2].X = m[1].X }, nil, "conflict /supports/2/x"},
		{"stations 0.999 mm apart", func(m machine) { m[2].X = m[1].X - 999*um }, func(m machine) { m[1].X = m[2].X - mm }, "conflict /supports/2/x"},
		{"name given twice", func(m machine) { m[2].Name = "front" }, func(m machine) { m[2].Name, m[0].Name = "", "" }, "duplicate /supports/2/name"},
		{"station given three times", func(m machine) { m[1].X, m[2].X = m[0].X, m[0].X }, nil, "conflict /supports/1/x, conflict /supports/2/x"},
		{"name given three times", func(m machine) { m[1].Name, m[2].Name = "front", "front" }, nil, "duplicate /supports/1/name, duplicate /supports/2/name"},

		{"no way to move", func(m machine) { m[0].Pieces = nil }, nil, "missing /supports/0"},
		{"pieces of none", func(m machine) { m[0].Pieces = []thermal.Piece{} }, nil, "missing /supports/0"},
		{"pieces and a measurement", func(m machine) { m[0].Measured = &thermal.Measured{} }, nil, "conflict /supports/0"},
		{"pieces and legs", func(m machine) { m[1].Pieces = m[0].Pieces }, nil, "conflict /supports/1"},
		{"pieces and one leg", func(m machine) { m[0].Nine = m[1].Nine }, nil, "conflict /supports/0"},
		{"legs and a measurement", func(m machine) { m[1].Measured = &thermal.Measured{} }, nil, "conflict /supports/1"},
		{"track beside pieces", func(m machine) { m[0].Track = mm }, nil, "conflict /supports/0/track"},
		{"track beside a measurement", func(m machine) { m[2].Track = mm }, nil, "conflict /supports/2/track"},
		{"no leg at 3", func(m machine) { m[1].Three = nil }, nil, "missing /supports/1/three"},
		{"no leg at 9", func(m machine) { m[1].Nine = nil }, nil, "missing /supports/1/nine"},
		{"a track without legs", func(m machine) { m[1].Three, m[1].Nine = nil, nil }, nil, "missing /supports/1/nine, missing /supports/1/three"},
		{"no track", func(m machine) { m[1].Track = 0 }, nil, "missing /supports/1/track"},
		{"track below zero", func(m machine) { m[1].Track *= -1 }, nil, "out_of_range /supports/1/track"},
		{"track not a number", func(m machine) { m[1].Track = units.Length(nan) }, nil, "not_finite /supports/1/track"},

		{"no height", func(m machine) { m[0].Pieces[0].Height = 0 }, func(m machine) { m[0].Pieces[0].Height = mm }, "missing /supports/0/pieces/0/height"},
		{"height below zero", func(m machine) { m[1].Three[0].Height = -mm }, nil, "out_of_range /supports/1/three/0/height"},
		{"height not finite", func(m machine) { m[1].Nine[0].Height = units.Length(inf) }, nil, "not_finite /supports/1/nine/0/height"},

		{"no coefficient", func(m machine) { m[0].Pieces[0].Material.Expansion = 0 }, func(m machine) { m[0].Pieces[0].Material.Expansion = 1e-9 }, "missing /supports/0/pieces/0/material/expansion"},
		{"an e-6 forgotten", func(m machine) { m[0].Pieces[0].Material.Expansion = 11.3 }, nil, "out_of_range /supports/0/pieces/0/material/expansion"},
		{"an e-6 entered as e-3", func(m machine) { m[0].Pieces[0].Material.Expansion = 1.001e-3 }, func(m machine) { m[0].Pieces[0].Material.Expansion, m[0].Pieces[0].Rise = 1e-3, 0 }, "out_of_range /supports/0/pieces/0/material/expansion"},
		{"a sign too many", func(m machine) { m[0].Pieces[0].Material.Expansion *= -1 }, func(m machine) { m[0].Pieces[0].Material.Expansion = -2e-6 }, "out_of_range /supports/0/pieces/0/material/expansion"},
		{"coefficient not a number", func(m machine) { m[0].Pieces[0].Material.Expansion = units.Expansion(nan) }, nil, "not_finite /supports/0/pieces/0/material/expansion"},
		{"coefficient minus infinity", func(m machine) { m[0].Pieces[0].Material.Expansion = units.Expansion(-inf) }, nil, "not_finite /supports/0/pieces/0/material/expansion"},
		{"u of a coefficient below zero", func(m machine) { m[0].Pieces[0].Material.U = -1e-7 }, func(m machine) { m[0].Pieces[0].Material.U = 1e-7 }, "out_of_range /supports/0/pieces/0/material/u"},
		{"u of a coefficient with its e-6 forgotten", func(m machine) { m[0].Pieces[0].Material.U = 0.5 }, func(m machine) { m[0].Pieces[0].Material.U = 1e-3 }, "out_of_range /supports/0/pieces/0/material/u"},
		{"u of a coefficient not finite", func(m machine) { m[0].Pieces[0].Material.U = units.Expansion(inf) }, nil, "not_finite /supports/0/pieces/0/material/u"},

		{"rise beyond 2000 K", func(m machine) { m[0].Pieces[0].Rise = 2000.1 }, func(m machine) { m[0].Pieces[0].Rise, m[0].Pieces[0].Material.Expansion = 2000, 1e-7 }, "out_of_range /supports/0/pieces/0/rise"},
		{"rise beyond -2000 K", func(m machine) { m[0].Pieces[0].Rise = -2000.1 }, func(m machine) { m[0].Pieces[0].Rise, m[0].Pieces[0].Material.Expansion = -2000, 1e-7 }, "out_of_range /supports/0/pieces/0/rise"},
		{"rise not a number", func(m machine) { m[0].Pieces[0].Rise = units.TemperatureDifference(nan) }, nil, "not_finite /supports/0/pieces/0/rise"},
		{"rise beside a profile", func(m machine) { m[0].Pieces[1].Rise = 1 }, nil, "conflict /supports/0/pieces/1/rise"},
		{"cold without a profile", func(m machine) { m[0].Pieces[0].Cold = units.Celsius(15) }, func(m machine) { m[0].Pieces[0].Cold = units.Celsius(20) }, "conflict /supports/0/pieces/0/cold"},
		{"cold, and a profile forgotten", func(m machine) { m[0].Pieces[1].Cold, m[0].Pieces[1].Profile = units.Celsius(15), nil }, func(m machine) { m[0].Pieces[1].Cold = units.Celsius(15) }, "conflict /supports/0/pieces/1/cold"},
		{"cold below absolute zero", func(m machine) { m[0].Pieces[1].Cold = units.Celsius(-273.16) }, func(m machine) { p := &m[0].Pieces[1]; p.Material.Expansion, p.Cold = 1e-7, units.Celsius(-273.15) }, "out_of_range /supports/0/pieces/1/cold"},
		{"cold far below absolute zero, and the spots are not blamed", func(m machine) { m[0].Pieces[1].Cold = units.Celsius(-5000) }, nil, "out_of_range /supports/0/pieces/1/cold"},
		{"cold not a number", func(m machine) { m[0].Pieces[1].Cold = units.Celsius(nan) }, nil, "not_finite /supports/0/pieces/1/cold"},

		{"spot below absolute zero", func(m machine) { m[0].Pieces[1].Profile[0].Running = units.Celsius(-273.16) }, func(m machine) {
			p := &m[0].Pieces[1]
			p.Material.Expansion, p.Profile[0].Running = 1e-7, units.Celsius(-273.15)
		}, "out_of_range /supports/0/pieces/1/profile/0/running"},
		{"spot not finite", func(m machine) { m[0].Pieces[1].Profile[1].Running = units.Celsius(inf) }, nil, "not_finite /supports/0/pieces/1/profile/1/running"},
		{"spot 2000 K off the cold one", func(m machine) { m[0].Pieces[1].Profile[1].Running = units.Celsius(2021) }, func(m machine) {
			p := &m[0].Pieces[1]
			p.Material.Expansion, p.Profile[1].Running = 1e-7, units.Celsius(2020)
		}, "out_of_range /supports/0/pieces/1/profile/1/running"},
		{"spot 2000 K below the cold one", func(m machine) { m[0].Pieces[1].Cold = units.Celsius(2061) }, func(m machine) {
			p := &m[0].Pieces[1]
			p.Material.Expansion, p.Cold = 1e-7, units.Celsius(2060)
		}, "out_of_range /supports/0/pieces/1/profile/0/running"},
		{"spot below its piece", func(m machine) { m[0].Pieces[1].Profile[0].Up = -1 }, func(m machine) { m[0].Pieces[1].Profile[0].Up = 0 }, "out_of_range /supports/0/pieces/1/profile/0/up"},
		{"spot above its piece", func(m machine) { m[0].Pieces[1].Profile[1].Up = 200*mm + 1 }, func(m machine) { m[0].Pieces[1].Profile[1].Up = 200 * mm }, "out_of_range /supports/0/pieces/1/profile/1/up"},
		{"spot not a number", func(m machine) { m[0].Pieces[1].Profile[0].Up = units.Length(nan) }, nil, "not_finite /supports/0/pieces/1/profile/0/up"},
		{"spots from the top down", func(m machine) { p := m[0].Pieces[1].Profile; p[0], p[1] = p[1], p[0] }, nil, "conflict /supports/0/pieces/1/profile/1/up"},
		{"two spots at one place", func(m machine) { p := m[0].Pieces[1].Profile; p[0].Up = p[1].Up }, func(m machine) { p := m[0].Pieces[1].Profile; p[0].Up = p[1].Up - 1 }, "conflict /supports/0/pieces/1/profile/1/up"},

		{"u of a height below zero", func(m machine) { m[0].Pieces[0].U.Height = -1 }, func(m machine) { m[0].Pieces[0].U.Height = 1 }, "out_of_range /supports/0/pieces/0/u/height"},
		{"u of a rise below zero", func(m machine) { m[0].Pieces[1].U.Temperature = -1 }, func(m machine) { m[0].Pieces[1].U.Temperature = 1 }, "out_of_range /supports/0/pieces/1/u/temperature"},
		{"u of a rise beyond 2000 K", func(m machine) { m[0].Pieces[0].U.Temperature = 2001 }, func(m machine) { m[0].Pieces[0].U.Temperature = 2000 }, "out_of_range /supports/0/pieces/0/u/temperature"},
		{"u of a rise not a number", func(m machine) { m[0].Pieces[0].U.Temperature = units.TemperatureDifference(nan) }, nil, "not_finite /supports/0/pieces/0/u/temperature"},

		{"measured not a number", func(m machine) { m[2].Measured.By.Vertical = units.Length(nan) }, nil, "not_finite /supports/2/measured/by/vertical"},
		{"measured without end", func(m machine) { m[2].Measured.By.Horizontal = units.Length(inf) }, nil, "not_finite /supports/2/measured/by/horizontal"},
		{"u of a measurement below zero", func(m machine) { m[2].Measured.U.Horizontal = -1 }, func(m machine) { m[2].Measured.U.Horizontal = 1 }, "out_of_range /supports/2/measured/u/horizontal"},
		{"u of a measurement below zero, upwards", func(m machine) { m[2].Measured.U.Vertical = -1 }, func(m machine) { m[2].Measured.U.Vertical = 1 }, "out_of_range /supports/2/measured/u/vertical"},

		{"one support off the line", func(m machine) { m[2].Measured.By.Vertical = 500 * um }, nil, "conflict /supports/1"},
		{"one support off the line sideways", func(m machine) { m[2].Measured.By.Horizontal = 500 * um }, nil, "conflict /supports/1"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			bad := sound()
			row.bad(bad)
			e, err := thermal.Growth(bad...)
			if got := strings.Join(codesAndPaths(err), ", "); got != row.want {
				t.Errorf("got %v (%v), want just %s", got, err, row.want)
			}
			if e != (align.Estimate{}) {
				t.Errorf("an answer beside the refusal: %+v", e)
			}
			twin := sound()
			if row.twin != nil {
				row.twin(twin)
			}
			if _, err := thermal.GrowthWithin(mm, twin...); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// Too few supports, and a limit that is none.
func TestGrowthRefusesAsAWhole(t *testing.T) {
	good := sound()
	rows := []struct {
		name     string
		limit    units.Length
		supports []thermal.Support
		want     string // "": passes
	}{
		{"no support", mm, nil, "missing /supports"},
		{"one support", mm, good[:1], "missing /supports"},
		{"two supports", mm, good[:2], ""},
		{"limit below zero", -1, good[:2], "out_of_range /limit"},
		{"limit not a number", units.Length(nan), good[:2], "not_finite /limit"},
		{"limit without end", units.Length(inf), good, "not_finite /limit"},
		{"limit of nothing, two supports", 0, good[:2], ""},
		{"limit of nothing, three supports", 0, good, "conflict /supports/1"},
		{"limit large enough", mm, good, ""},
	}
	for _, row := range rows {
		_, err := thermal.GrowthWithin(row.limit, row.supports...)
		if got := strings.Join(codesAndPaths(err), ", "); got != row.want {
			t.Errorf("%s: got %s (%v), want %s", row.name, got, err, row.want)
		}
	}
}

// Faults that do not depend on one another come all at once.
func TestFaultsComeTogether(t *testing.T) {
	m := sound()
	m[0].X = units.Length(nan)
	m[0].Pieces[0] = thermal.Piece{Cold: units.Celsius(1), U: thermal.Uncertainty{Height: -1, Temperature: -1}}
	m[0].Pieces[1].Height = -1
	m[0].Pieces[1].Profile[1] = thermal.Spot{Up: -1, Running: units.Celsius(-300)}
	m[1].Track, m[1].Nine = 0, nil
	m[1].Three[0].Material.U = -1
	m[2].Name = "front"
	m[2].Measured.U.Vertical = -1
	_, err := thermal.GrowthWithin(-1, m...)
	want := []string{
		"conflict /supports/0/pieces/0/cold",
		"duplicate /supports/2/name",
		"missing /supports/0/pieces/0/height",
		"missing /supports/0/pieces/0/material/expansion",
		"missing /supports/1/nine",
		"missing /supports/1/track",
		"not_finite /supports/0/x",
		"out_of_range /limit",
		"out_of_range /supports/0/pieces/0/u/height",
		"out_of_range /supports/0/pieces/0/u/temperature",
		"out_of_range /supports/0/pieces/1/height",
		"out_of_range /supports/0/pieces/1/profile/1/running",
		"out_of_range /supports/0/pieces/1/profile/1/up",
		"out_of_range /supports/1/three/0/material/u",
		"out_of_range /supports/2/measured/u/vertical",
	}
	if got := codesAndPaths(err); !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// A support alone has its faults placed from itself.
func TestSupportRefuses(t *testing.T) {
	s := sound()[0]
	s.Pieces[1].Height = 0
	_, _, err := s.Growth()
	if got := codesAndPaths(err); !slices.Equal(got, []string{"missing /pieces/1/height"}) {
		t.Errorf("got %v", got)
	}
	s = sound()[1]
	s.X = units.Length(inf)
	_, _, err = s.Growth()
	if got := codesAndPaths(err); !slices.Equal(got, []string{"not_finite /x"}) {
		t.Errorf("got %v", got)
	}
	_, _, err = sides(0, 1e-9, piece(9e14, steel, 2000), piece(9e14, steel, 1)).Growth()
	if got := codesAndPaths(err); !slices.Equal(got, []string{"out_of_range "}) {
		t.Errorf("got %v", got)
	}
}

// Numbers that pass one by one can together give one that cannot be reckoned
// with: a planet's height, on a hair's track, far from the coupling.
func TestTooLargeTogether(t *testing.T) {
	wild := withU(piece(mm, thermal.Material{Expansion: 1e-3}, 1000), 0.9e15, 0)
	rows := []struct {
		name     string
		machine  []thermal.Support
		tooLarge bool
	}{
		{"offset", []thermal.Support{measured(1e15, 0, 1e15), measured(1e15-1e6, 0, -1e15)}, true},
		{"offset, nearer", []thermal.Support{measured(1e8, 0, 1e12), measured(1e8-1e6, 0, -1e12)}, false},
		{"roll", []thermal.Support{sides(0, 1e-9, piece(9e14, steel, 2000), piece(9e14, steel, 1)), measured(mm, 0, 0)}, true},
		{"uncertainty", []thermal.Support{on(0, withU(piece(1e15, steel, 1), 1e15, 0)), sides(mm, 1e-9, withU(piece(1e9, steel, 1), 1e15, 0), piece(1e9, steel, 1))}, true},
		{"uncertainty of three together", []thermal.Support{on(0, wild, wild, wild), measured(mm, 0, 0)}, true},
		{"uncertainty of one alone", []thermal.Support{on(0, wild), measured(mm, 0, 0)}, false},
		{"uncertainty, less", []thermal.Support{uncertain(0, 0.9e12), uncertain(mm, 0.9e12)}, false},
	}
	for _, row := range rows {
		_, err := thermal.GrowthWithin(1e15, row.machine...)
		if got := codesAndPaths(err); slices.Equal(got, []string{"out_of_range /supports"}) != row.tooLarge || !row.tooLarge && err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
	}
}

func uncertain(x, u units.Length) thermal.Support {
	s := measured(x, 0, 0)
	s.Measured.U.Vertical = u
	return s
}

// Coefficients near zero and a little below are somebody's: the shaft comes
// down.
func TestShrinkingMaterial(t *testing.T) {
	by, _ := alone(t, on(0, piece(500*mm, thermal.Material{Expansion: -1.5e-6}, 100)))
	near(t, "down", by.Vertical, -75*um, 1e-9)
}

// The support that stands off most is named, and by how much; one that stands
// right on the limit passes.
func TestStandOff(t *testing.T) {
	// The middle one of three that are evenly spaced stands off by two thirds of
	// its height over the chord, the others by one third.
	bowed := func(by units.Length) []thermal.Support {
		return []thermal.Support{measured(0, 0, 0), measured(100*mm, 0.6*by, 0.8*by), measured(200*mm, 0, 0)}
	}
	growWithin(t, thermal.DefaultStandOff, bowed(1.5*thermal.DefaultStandOff)...)
	_, err := thermal.Growth(bowed(1.5*thermal.DefaultStandOff + 3)...)
	faults := units.Faults(err)
	if len(faults) != 1 || faults[0].Code != units.Conflict || faults[0].Path != "/supports/1" || faults[0].Value != "0.051 mm off the line" {
		t.Errorf("got %v", err)
	}
	named := bowed(300 * um)
	named[1].Name = "inlet"
	_, err = thermal.GrowthWithin(0.1*mm, named...)
	faults = units.Faults(err)
	if len(faults) != 1 || faults[0].Value != "inlet, 0.200 mm off the line" || !strings.HasSuffix(faults[0].Want, "to 0.1 mm") {
		t.Errorf("got %v", err)
	}
	growWithin(t, 0.2*mm, named...)
}
