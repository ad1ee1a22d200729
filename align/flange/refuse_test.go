package flange_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
)

// ring has n bolts round the shaft.
func ring(n int) (bolts []flange.Bolt) {
	for i := range n {
		bolts = append(bolts, flange.Bolt{Name: fmt.Sprint(i), Radius: 200 * mm, At: units.Clock(360 * float64(i) / float64(n))})
	}
	return bolts
}

// One thing wrong in a flange that is sound otherwise: the fault, and a twin that is
// nearly the same and passes.
func TestCorrectRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	rows := []struct {
		name      string
		bad, twin func(*flange.Flange)
		want      string
	}{
		{"no push", func(f *flange.Flange) { f.Push = 0 }, func(f *flange.Flange) { f.Push = flange.TowardsStationary }, "missing /push"},
		{"a push that does not exist", func(f *flange.Flange) { f.Push = 3 }, func(f *flange.Flange) { f.Push = 1 }, "out_of_range /push"},
		{"a view that does not exist", func(f *flange.Flange) { f.View = 2 }, func(f *flange.Flange) { f.View = 1 }, "out_of_range /view"},
		{"a face that is no number", func(f *flange.Flange) { f.Face = units.Length(nan) }, func(f *flange.Flange) { f.Face = 0 }, "not_finite /face"},
		{"a face without end", func(f *flange.Flange) { f.Face = units.Length(-inf) }, func(f *flange.Flange) { f.Face = -900 * mm }, "not_finite /face"},
		{"a face beyond all machines", func(f *flange.Flange) { f.Face = 2e15 }, func(f *flange.Flange) { f.Face = 1e10 }, "out_of_range /face"},
		{"uncertainty of the face below zero", func(f *flange.Flange) { f.UFace = -1 }, func(f *flange.Flange) { f.UFace = 1 }, "out_of_range /u_face"},

		{"no bolts", func(f *flange.Flange) { f.Bolts = nil }, nil, "missing /bolts"},
		{"two bolts", func(f *flange.Flange) { f.Bolts = f.Bolts[:2] }, func(f *flange.Flange) { f.Bolts = f.Bolts[:3] }, "missing /bolts"},
		{"more bolts than any flange", func(f *flange.Flange) { f.Bolts = ring(201) }, func(f *flange.Flange) { f.Bolts = ring(200) }, "out_of_range /bolts"},
		{"a bolt without a name", func(f *flange.Flange) { f.Bolts[2].Name = "" }, func(f *flange.Flange) { f.Bolts[2].Name = " " }, "missing /bolts/2/name"},
		{"a name twice", func(f *flange.Flange) { f.Bolts[3].Name = "3" }, func(f *flange.Flange) { f.Bolts[3].Name = "03" }, "duplicate /bolts/3/name"},
		{"no radius", func(f *flange.Flange) { f.Bolts[1].Radius = 0 }, func(f *flange.Flange) { f.Bolts[1].Radius = 2 * um }, "missing /bolts/1/radius"},
		{"a radius below zero", func(f *flange.Flange) { f.Bolts[1].Radius *= -1 }, nil, "out_of_range /bolts/1/radius"},
		{"a radius that is no number", func(f *flange.Flange) { f.Bolts[1].Radius = units.Length(nan) }, nil, "not_finite /bolts/1/radius"},
		{"a clock position without end", func(f *flange.Flange) { f.Bolts[0].At = units.Clock(inf) }, func(f *flange.Flange) { f.Bolts[0].At = 720 }, "not_finite /bolts/0/at"},
		{"a place twice", func(f *flange.Flange) { f.Bolts[3].At = units.Three }, func(f *flange.Flange) { f.Bolts[3].At = units.Three + 1 }, "duplicate /bolts/3"},
		{"a place twice, a turn on", func(f *flange.Flange) { f.Bolts[3].At = -270 }, func(f *flange.Flange) { f.Bolts[3].At = -269 }, "duplicate /bolts/3"},
		{"a place twice but for half a micrometre", func(f *flange.Flange) { f.Bolts[3] = flange.Bolt{Name: "x", Radius: 200*mm + um/2, At: units.Three} },
			func(f *flange.Flange) { f.Bolts[3] = flange.Bolt{Name: "x", Radius: 200*mm + 2*um, At: units.Three} }, "duplicate /bolts/3"},
		{"a place twice but for a little less than a micrometre", func(f *flange.Flange) { f.Bolts[3] = flange.Bolt{Name: "x", Radius: 200*mm + um - 1, At: units.Three} },
			func(f *flange.Flange) { f.Bolts[3] = flange.Bolt{Name: "x", Radius: 200*mm + um, At: units.Three} }, "duplicate /bolts/3"},
		{"three bolts in one line", func(f *flange.Flange) {
			f.Bolts = f.Bolts[:3]
			f.Bolts[1] = flange.Bolt{Name: "x", Radius: 100 * mm, At: units.Twelve}
		},
			func(f *flange.Flange) {
				f.Bolts = f.Bolts[:3]
				f.Bolts[1] = flange.Bolt{Name: "x", Radius: 100 * mm, At: units.Hour}
			}, "conflict /bolts"},
		{"three bolts in a line beside the shaft", func(f *flange.Flange) {
			f.Bolts = []flange.Bolt{{"a", 100 * mm, units.Three}, {"b", 100 * math.Sqrt2 * mm, 45}, {"c", 100 * math.Sqrt2 * mm, 135}}
		}, func(f *flange.Flange) {
			f.Bolts = []flange.Bolt{{"a", 110 * mm, units.Three}, {"b", 100 * math.Sqrt2 * mm, 45}, {"c", 100 * math.Sqrt2 * mm, 135}}
		}, "conflict /bolts"},
		{"three bolts in a slanting line", func(f *flange.Flange) {
			f.Bolts = []flange.Bolt{{"a", 100 * mm, 45}, {"b", 200 * mm, 45}, {"c", 100 * mm, 225}}
		}, func(f *flange.Flange) {
			f.Bolts = []flange.Bolt{{"a", 100 * mm, 45}, {"b", 200 * mm, 46}, {"c", 100 * mm, 225}}
		}, "conflict /bolts"},
		{"three bolts nearly in a slanting line", func(f *flange.Flange) {
			f.Bolts = []flange.Bolt{{"a", 100 * mm, 30}, {"b", 100 * mm, 210}, {"c", 120 * um, 120}}
		}, func(f *flange.Flange) {
			f.Bolts = []flange.Bolt{{"a", 100 * mm, 30}, {"b", 100 * mm, 210}, {"c", 180 * um, 120}}
		}, "conflict /bolts"},
		{"a place twice, and the rest in one line", func(f *flange.Flange) { f.Bolts[1].At, f.Bolts[3] = 180, flange.Bolt{Name: "x", Radius: 90 * mm} },
			func(f *flange.Flange) { f.Bolts[1].At, f.Bolts[3] = 181, flange.Bolt{Name: "x", Radius: 90 * mm} }, "duplicate /bolts/2"},
		{"three bolts in a line above the shaft", func(f *flange.Flange) {
			f.Bolts = []flange.Bolt{{"a", 100 * mm, units.Twelve}, {"b", 100 * math.Sqrt2 * mm, 45}, {"c", 100 * math.Sqrt2 * mm, -45}}
		}, func(f *flange.Flange) {
			f.Bolts = []flange.Bolt{{"a", 110 * mm, units.Twelve}, {"b", 100 * math.Sqrt2 * mm, 45}, {"c", 100 * math.Sqrt2 * mm, -45}}
		}, "conflict /bolts"},

		{"a clearance below zero", func(f *flange.Flange) { f.Clearance = -1 }, func(f *flange.Flange) { f.Clearance = 1 }, "out_of_range /clearance"},
		{"a clearance that is no number", func(f *flange.Flange) { f.Clearance = units.Length(nan) }, nil, "not_finite /clearance"},
		{"a spigot that is no place", func(f *flange.Flange) { f.Clearance = mm; f.Spigot.Vertical = units.Length(nan) }, func(f *flange.Flange) { f.Clearance = mm; f.Spigot.Vertical = 1 }, "not_finite /spigot/vertical"},
		{"a spigot without end", func(f *flange.Flange) { f.Clearance = mm; f.Spigot.Horizontal = units.Length(inf) }, nil, "not_finite /spigot/horizontal"},
		{"a spigot beyond its rabbet", func(f *flange.Flange) {
			f.Clearance = mm
			f.Spigot = align.Vector{Horizontal: 300 * um, Vertical: 401 * um}
		},
			func(f *flange.Flange) {
				f.Clearance = mm
				f.Spigot = align.Vector{Horizontal: 300 * um, Vertical: 400 * um}
			}, "conflict /spigot"},
		{"a spigot in a rabbet that nobody stated", func(f *flange.Flange) { f.Spigot.Vertical = 2 * um }, func(f *flange.Flange) { f.Clearance = 4 * um; f.Spigot.Vertical = 2 * um }, "conflict /spigot"},
	}
	off := align.Exact(line(0.1, 1e-3, -0.2, 0.5e-3))
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			f := worked()
			row.bad(&f)
			c, err := f.Correct(off)
			if got := faults(err); !slices.Equal(got, []string{row.want}) {
				t.Errorf("got %v (%v), want just %s", got, err, row.want)
			}
			if c.Shims != nil || c.Slide != (align.Move{}) || c.Axial != 0 {
				t.Errorf("refused, and yet %+v", c)
			}
			if got := faults(f.Validate()); !slices.Equal(got, []string{row.want}) {
				t.Errorf("Validate: got %v, want just %s", got, row.want)
			}
			twin := worked()
			if row.twin != nil {
				row.twin(&twin)
			}
			if _, err := twin.Correct(off); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
			if err := twin.Validate(); err != nil {
				t.Errorf("Validate refuses the twin: %v", err)
			}
		})
	}
}

// Where no clearance was stated, that may be what is wrong.
func TestSpigotAsksForItsClearance(t *testing.T) {
	for clearance, want := range map[units.Length]string{
		0:      "a place within half of the clearance, which has to be stated with it",
		3 * um: "a place within half of the clearance",
	} {
		f := worked()
		f.Clearance, f.Spigot.Vertical = clearance, 2*um
		if got := units.Faults(f.Validate()); len(got) != 1 || got[0].Want != want {
			t.Errorf("clearance %v: got %v, want %q", clearance, got, want)
		}
	}
}

func TestCorrectRefusesEstimates(t *testing.T) {
	bad := align.Exact(line(0, math.NaN(), math.Inf(1), 0))
	_, err := worked().Correct(bad)
	if got, want := faults(err), []string{"not_finite /off/value/horizontal/slope", "not_finite /off/value/vertical/offset"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	unknown := align.Estimate{Cov: align.Covariance{Basis: 9}}
	_, err = worked().Correct(unknown)
	if got, want := faults(err), []string{"out_of_range /off/cov/basis"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// All that is wrong is told at once.
func TestFaultsComeTogether(t *testing.T) {
	f := flange.Flange{View: 7, Clearance: -mm, Bolts: []flange.Bolt{{}, {Name: "a", Radius: mm, At: units.Clock(math.NaN())}, {Name: "a", Radius: mm}, {Name: "b", Radius: mm}}}
	f.UFace = units.Length(math.NaN())
	_, err := f.Correct(align.Exact(line(math.NaN(), 0, 0, 0)))
	want := []string{
		"duplicate /bolts/2/name", "duplicate /bolts/3", "missing /bolts/0/name", "missing /bolts/0/radius", "missing /push",
		"not_finite /bolts/1/at", "not_finite /off/value/horizontal/offset", "not_finite /u_face", "out_of_range /clearance", "out_of_range /view",
	}
	if got := faults(err); !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// A slope that may be given, and of which nobody could make the shims.
func TestCorrectionBeyondReckoning(t *testing.T) {
	for _, row := range []struct {
		name      string
		bad, twin align.Estimate
	}{
		{"shims", align.Exact(line(0, 0, 0, 1e12)), align.Exact(line(0, 0, 0, 1e3))},
		{"uncertainty of shims", uncertain(t, 1e12), uncertain(t, 1e3)},
	} {
		c, err := worked().Correct(row.bad)
		if got := faults(err); !slices.Equal(got, []string{"out_of_range /off"}) || c.Shims != nil {
			t.Errorf("%s: got %v, %+v", row.name, got, c)
		}
		if _, err := worked().Correct(row.twin); err != nil {
			t.Errorf("%s: the twin is refused: %v", row.name, err)
		}
	}
	if _, err := worked().Correct(align.Estimate{Cov: align.Covariance{Basis: align.Unknown}}); err != nil {
		t.Errorf("what is not known is not too large: %v", err)
	}
}

// uncertain is in line, with a slope that is known so badly.
func uncertain(t *testing.T, slope units.Slope) align.Estimate {
	t.Helper()
	u := align.Centreline{Vertical: align.Line{Slope: slope}}
	cov, err := align.NewCovariance(align.Stated, u, [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}})
	if err != nil {
		t.Fatal(err)
	}
	return align.Estimate{Cov: cov}
}
