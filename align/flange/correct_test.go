package flange_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// The worked example, derived by hand: a shaft that climbs 1 mm/m towards 3 has its
// face 0.2 mm behind at 3 and 0.2 mm before at 9, at a radius of 200 mm.
func TestWorkedExample(t *testing.T) {
	c := mustCorrect(t, worked(), align.Exact(line(0, 1e-3, 0, 0)))
	if got, want := thicknesses(c), []units.Length{200 * um, 400 * um, 200 * um, 0}; !slices.Equal(got, want) {
		t.Errorf("shims %v, want %v", got, want)
	}
	if want := (align.Vector{Horizontal: -400 * um}); c.Slide.By != want {
		t.Errorf("slide %v, want %v, 0.4 mm towards 9", c.Slide.By, want)
	}
	if want := (align.Vector{Horizontal: 400 * um}); c.TiltShift != want {
		t.Errorf("the tilt shifts the coupling by %v, want %v", c.TiltShift, want)
	}
	if c.Axial != 200*um || c.Rabbet != flange.NotStated || c.Over != 0 || c.Warnings != nil {
		t.Errorf("axial %v, rabbet %v, over %v, warnings %v", c.Axial, c.Rabbet, c.Over, c.Warnings)
	}
}

// Each input that has a sign, by itself, on the worked flange; by hand from where
// the face lies behind.
func TestSigns(t *testing.T) {
	rows := []struct {
		name   string
		change func(*flange.Flange)
		off    align.Centreline
		shims  []units.Length // at 12, 3, 6, 9 of the crew, in um
		axial  units.Length
		slide  align.Vector
		shift  align.Vector
	}{
		{
			"climbs upwards: the face lies behind at 12", nil, line(0, 0, 0, 1e-3),
			[]units.Length{400, 200, 0, 200}, 200, align.Vector{Vertical: -400}, align.Vector{Vertical: 400},
		},
		{
			"falls: the face lies behind at 6", nil, line(0, 0, 0, -1e-3),
			[]units.Length{0, 200, 400, 200}, 200, align.Vector{Vertical: 400}, align.Vector{Vertical: -400},
		},
		{
			"climbs towards 9", nil, line(0, -1e-3, 0, 0),
			[]units.Length{200, 0, 200, 400}, 200, align.Vector{Horizontal: 400}, align.Vector{Horizontal: -400},
		},
		{
			"both planes", nil, line(0, 1e-3, 0, 0.5e-3),
			[]units.Length{300, 400, 100, 0}, 200, align.Vector{Horizontal: -400, Vertical: -200}, align.Vector{Horizontal: 400, Vertical: 200},
		},
		{
			"offset alone: no shims", nil, line(0.3, 0, -0.1, 0),
			[]units.Length{0, 0, 0, 0}, 0, align.Vector{Horizontal: -300, Vertical: 100}, align.Vector{},
		},
		{
			"offset that the slope makes up at the face", nil, line(0, 0, -0.4, 1e-3),
			[]units.Length{400, 200, 0, 200}, 200, align.Vector{}, align.Vector{Vertical: 400},
		},
		{
			"shims push towards the stationary machine", func(f *flange.Flange) { f.Push = flange.TowardsStationary }, line(0, 1e-3, 0, 0),
			[]units.Length{200, 0, 200, 400}, -200, align.Vector{Horizontal: -400}, align.Vector{Horizontal: 400},
		},
		{
			"the crew faces the movable machine: the library's 3 is its 9", func(f *flange.Flange) { f.View = align.FromStationary }, line(0, 1e-3, 0, 0),
			[]units.Length{200, 0, 200, 400}, 200, align.Vector{Horizontal: -400}, align.Vector{Horizontal: 400},
		},
		{
			"face on the stationary side", func(f *flange.Flange) { f.Face = -400 * mm }, line(0, 1e-3, 0, 0),
			[]units.Length{200, 400, 200, 0}, 200, align.Vector{Horizontal: 400}, align.Vector{Horizontal: -400},
		},
		{
			"face at the coupling centre", func(f *flange.Flange) { f.Face = 0 }, line(0.1, 1e-3, 0, 0),
			[]units.Length{200, 400, 200, 0}, 200, align.Vector{Horizontal: -100}, align.Vector{},
		},
		{
			"a bolt further out", func(f *flange.Flange) { f.Bolts[1].Radius = 300 * mm }, line(0, 1e-3, 0, 0),
			[]units.Length{200, 500, 200, 0}, 200, align.Vector{Horizontal: -400}, align.Vector{Horizontal: 400},
		},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			f := worked()
			if row.change != nil {
				row.change(&f)
			}
			c := mustCorrect(t, f, align.Exact(row.off))
			const rounding = 1e-9 // of nanometres: 0.5 mm/m is no float64, nor is half a millimetre a share of it
			var want []units.Length
			for _, s := range row.shims {
				want = append(want, s*um)
			}
			nearAll(t, "shim", thicknesses(c), want, rounding)
			near(t, "axial", c.Axial, row.axial*um, rounding)
			nearVector(t, "slide", c.Slide.By, row.slide, rounding)
			nearVector(t, "shift", c.TiltShift, row.shift, rounding)
		})
	}
}

// nearVector compares with a vector in micrometres.
func nearVector(tb fataler, what string, got, want align.Vector, tolerance units.Length) {
	tb.Helper()
	near(tb, what+" horizontal", got.Horizontal, want.Horizontal*um, tolerance)
	near(tb, what+" vertical", got.Vertical, want.Vertical*um, tolerance)
}

// All bolts on the side that has to come forward: the one that has to least keeps
// its place, and the middle of the face, where no bolt is, goes back.
func TestBoltsOnOneSide(t *testing.T) {
	f := worked()
	f.Bolts = []flange.Bolt{{"a", 200 * mm, 330}, {"b", 100 * mm, 0}, {"c", 200 * mm, 30}}
	c := mustCorrect(t, f, align.Exact(line(0, 0, 0, 1e-3)))
	outer := units.Length(200*math.Sqrt(0.75)) * mm / 1000
	nearAll(t, "shim", thicknesses(c), []units.Length{outer - 100*um, 0, outer - 100*um}, 2*units.Nanometre*1e-3)
	near(t, "axial", c.Axial, -100*um, 1e-9)
}

// The flange of the stationary machine, told from the other end. By hand in the axes
// of the movable machine's job, with the face at x = -300 mm: the shaft has to follow
// w, so it goes by w(-300 mm) and climbs by s; its face goes back by s . r u, away from
// the movable machine, which is what the shims push. The crew looks from there, and
// has that job's 3 at its 9.
func TestFlangeOfTheStationaryMachine(t *testing.T) {
	off := align.Exact(line(0.1, 1e-3, 0.2, 0.5e-3)) // w(-300 mm) is -0.2 and +0.05 mm
	f := worked()
	f.Face = 300 * mm
	c := mustCorrect(t, f, off.Exchanged())
	nearAll(t, "shim at 12, 9, 6, 3 of the job", thicknesses(c), []units.Length{300 * um, 0, 100 * um, 400 * um}, 1e-9)
	nearVector(t, "slide, 3 and 9 exchanged", c.Slide.By, align.Vector{Horizontal: 200, Vertical: 50}, 1e-9)
}

// What is slid and shimmed depends on no name, and a result names its bolts in the
// order in which they were given, as the crew sees them.
func TestShimsKeepTheirBolts(t *testing.T) {
	f := worked()
	f.View = align.FromStationary
	slices.Reverse(f.Bolts)
	for i, s := range mustCorrect(t, f, align.Exact(line(0, 1e-3, 0, 2e-3))).Shims {
		if s.Bolt != f.Bolts[i] {
			t.Errorf("shim %d is at %+v, want %+v", i, s.Bolt, f.Bolts[i])
		}
	}
}

// Correct neither writes to what it is given nor keeps hold of it.
func TestCorrectLeavesItsInput(t *testing.T) {
	f, before := worked(), worked()
	c := mustCorrect(t, f, align.Exact(line(1, 1e-3, 0, 0)))
	if diff := cmp.Diff(before, f); diff != "" {
		t.Errorf("the flange is changed:\n%s", diff)
	}
	f.Bolts[0].Name = "other"
	if c.Shims[0].Bolt.Name != "12" {
		t.Error("the correction shares its bolts with the flange")
	}
}

// Where the spigot may go, from where it stands, and by how much it would go too
// far. The slide of the worked example is 0.4 mm towards 9.
func TestRabbet(t *testing.T) {
	rows := []struct {
		name      string
		clearance units.Length
		spigot    align.Vector
		want      flange.Rabbet
		over      units.Length
	}{
		{"not stated", 0, align.Vector{}, flange.NotStated, 0},
		{"ample", 2 * mm, align.Vector{}, flange.Fits, 0},
		{"just enough", 800 * um, align.Vector{}, flange.Fits, 0},
		{"a rounding short", 800*um - 0.5, align.Vector{}, flange.Fits, 0},
		{"two nanometres short on the diameter", 800*um - 2, align.Vector{}, flange.DoesNotFit, 1},
		{"half of it", 400 * um, align.Vector{}, flange.DoesNotFit, 200 * um},
		{"stands on the far side: twice as far", 400 * um, align.Vector{Horizontal: 200 * um}, flange.Fits, 0},
		{"stands on the near side already", 1 * mm, align.Vector{Horizontal: -200 * um}, flange.DoesNotFit, 100 * um},
		{"stands aside", 1 * mm, align.Vector{Vertical: 300 * um}, flange.Fits, 0},
		{"stands aside by too much", 1 * mm, align.Vector{Vertical: -400 * um}, flange.DoesNotFit, units.Length(400*math.Sqrt2-500) * um},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			f := worked()
			f.Clearance, f.Spigot = row.clearance, row.spigot
			c := mustCorrect(t, f, align.Exact(line(0, 1e-3, 0, 0)))
			if c.Rabbet != row.want {
				t.Errorf("got %v, want %v", c.Rabbet, row.want)
			}
			near(t, "over", c.Over, row.over, 1e-6)
			var want []string
			if row.want == flange.DoesNotFit {
				want = []string{"unreachable /clearance"}
			}
			if got := codes(c.Warnings); !slices.Equal(got, want) {
				t.Errorf("warnings %q, want %q", got, want)
			}
		})
	}
}

// A spigot that stands low by 0.2 mm has 0.6 mm to go up in a clearance of 0.8 mm, and
// 0.2 mm to go down.
func TestRabbetUpAndDown(t *testing.T) {
	f := worked()
	f.Clearance, f.Spigot.Vertical = 800*um, -200*um
	if c := mustCorrect(t, f, align.Exact(line(0, 0, -0.6, 0))); c.Rabbet != flange.Fits {
		t.Errorf("0.6 mm up %v, over %v", c.Rabbet, c.Over)
	}
	if c := mustCorrect(t, f, align.Exact(line(0, 0, 0.3, 0))); c.Rabbet != flange.DoesNotFit || c.Over != 100*um {
		t.Errorf("0.3 mm down %v, over %v", c.Rabbet, c.Over)
	}
}

// Of a slope that leaves more than the last digit of a dial the warning tells, and
// of none that leaves less: R s^2 is 10 um at 7.07 mm/m for 200 mm.
func TestSteepSlopesAreWarnedOf(t *testing.T) {
	rows := []struct {
		name string
		off  align.Centreline
		want []string
	}{
		{"7 mm/m", line(0, 7e-3, 0, 0), nil},
		{"7.2 mm/m", line(0, 0, 0, -7.2e-3), []string{"suspect /off/value"}},
		{"5.1 mm/m in both planes", line(0, 5.1e-3, 0, 5.1e-3), []string{"suspect /off/value"}},
		{"4.9 mm/m in both planes", line(0, 4.9e-3, 0, -4.9e-3), nil},
		{"offset alone", line(50, 0, 50, 0), nil},
	}
	for _, row := range rows {
		f := worked()
		f.Bolts[0].Radius = 20 * mm // the widest counts
		if got := codes(mustCorrect(t, f, align.Exact(row.off)).Warnings); !slices.Equal(got, row.want) {
			t.Errorf("%s: warnings %q, want %q", row.name, got, row.want)
		}
	}
}
