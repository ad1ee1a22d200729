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

// What the zero values are: refused where they would lie, nothing otherwise.
func TestZeroValues(t *testing.T) {
	t.Run("Support says nothing", func(t *testing.T) {
		_, _, err := thermal.Support{}.Growth()
		if got := codesAndPaths(err); !slices.Equal(got, []string{"missing "}) {
			t.Errorf("got %v", err)
		}
		_, err = thermal.Growth(thermal.Support{}, thermal.Support{})
		want := "conflict /supports/1/x, missing /supports/0, missing /supports/1"
		if got := strings.Join(codesAndPaths(err), ", "); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	})
	t.Run("Piece and Material have no height and no coefficient", func(t *testing.T) {
		_, _, err := on(0, thermal.Piece{}).Growth()
		want := "missing /pieces/0/height, missing /pieces/0/material/expansion"
		if got := strings.Join(codesAndPaths(err), ", "); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	})
	t.Run("Rise stays as it is", func(t *testing.T) {
		by, u := alone(t, on(0, piece(500*mm, steel, 0)))
		if by != (align.Vector{}) || !math.IsNaN(float64(u.Vertical)) {
			t.Errorf("moves by %v, u %v", by, u)
		}
	})
	t.Run("Spot is 20 °C at the base, as cold as what is left out", func(t *testing.T) {
		by, _ := alone(t, on(0, thermal.Piece{Height: mm, Material: steel, Profile: []thermal.Spot{{}}}))
		if by != (align.Vector{}) {
			t.Errorf("moves by %v", by)
		}
	})
	t.Run("Uncertainty is none stated", func(t *testing.T) {
		line := grow(t, on(0, withU(piece(mm, steel, 1), 0, 0)), on(mm, piece(mm, steel, 1)))
		if line.Cov != (align.Covariance{Basis: align.Unknown}) {
			t.Errorf("%+v", line.Cov)
		}
	})
	t.Run("Measured did not move", func(t *testing.T) {
		line := grow(t, measured(0, 0, 0), measured(mm, 0, 0))
		if line != (align.Estimate{Cov: align.Covariance{Basis: align.Unknown}}) {
			t.Errorf("%+v", line)
		}
	})
	t.Run("Estimates: no growth, in line", func(t *testing.T) {
		var none align.Estimate
		if thermal.ColdTarget(none, none) != none || thermal.Running(none, none, none) != none {
			t.Error("machines that do not grow do not stay in line")
		}
	})
}

// What stays as it is has no minus sign.
func TestNoNegativeZero(t *testing.T) {
	still := func(x units.Length) thermal.Support {
		return sides(x, mm, piece(mm, steel, 0), piece(mm, steel, 0))
	}
	none := grow(t, still(-2*mm), still(-mm))
	by, _ := alone(t, still(0))
	target := thermal.ColdTarget(none, none)
	running := thermal.Running(target, none, none)
	for name, c := range map[string]align.Centreline{"growth": none.Value, "target": target.Value, "running": running.Value} {
		for i, v := range plain(c) {
			if v != 0 || math.Signbit(v) {
				t.Errorf("%s: %s is %v", name, fourNames[i], v)
			}
		}
	}
	if math.Signbit(float64(by.Horizontal)) || math.Signbit(float64(by.Vertical)) {
		t.Errorf("moves by %v", by)
	}
}

// An unknown growth makes an unknown target.
func TestTargetOfUnknown(t *testing.T) {
	known := growWithin(t, mm, mixed()...)
	unknown := grow(t, measured(0, 0, um), measured(mm, 0, um))
	for _, e := range []align.Estimate{
		thermal.ColdTarget(known, unknown), thermal.ColdTarget(unknown, known),
		thermal.Running(unknown, known, known), thermal.Running(known, unknown, known), thermal.Running(known, known, unknown),
	} {
		if e.Cov.Basis != align.Unknown {
			t.Errorf("basis %v", e.Cov.Basis)
		}
	}
}

// Targets, by hand: what the stationary machine grows raises the target, what
// the movable one grows lowers it; and both uncertainties count.
func TestTargetByHand(t *testing.T) {
	part := func(x1, x2, w1, w2, u units.Length) align.Estimate {
		a, b := measured(x1, 0, w1), measured(x2, 0, w2)
		a.Measured.U.Vertical, b.Measured.U.Vertical = u, u
		return grow(t, a, b)
	}
	stationary := part(-700*mm, -300*mm, 100*um, 120*um, 3*um) // at x = 0: 135 um, +0.05 mm/m
	movable := part(300*mm, 700*mm, 310*um, 290*um, 4*um)      // at x = 0: 325 um, -0.05 mm/m
	cold := align.Exact(align.Centreline{Vertical: align.Line{Offset: -100 * um}})
	rows := []struct {
		name          string
		got           align.Estimate
		offset        units.Length
		slope         units.Slope
		uOffset       units.Length
		uSlopeSquared float64
	}{
		// u of the offset: hypot(7, 3)/4 of each u, of the slope sqrt 2/400 mm.
		{"target", thermal.ColdTarget(stationary, movable), -190 * um, 1e-4, units.Length(math.Sqrt(58.0/16*25)) * um, 2 * 25e-6 / 160e3},
		{"running", thermal.Running(cold, stationary, movable), 90 * um, -1e-4, units.Length(math.Sqrt(58.0/16*25)) * um, 2 * 25e-6 / 160e3},
	}
	for _, row := range rows {
		near(t, row.name+": offset", row.got.Value.Vertical.Offset, row.offset, 1e-6)
		near(t, row.name+": slope", row.got.Value.Vertical.Slope, row.slope, 1e-15)
		u := row.got.Cov.Standard().Vertical
		near(t, row.name+": u of offset", u.Offset, row.uOffset, 1e-6)
		near(t, row.name+": u of slope squared", float64(u.Slope*u.Slope), row.uSlopeSquared, 1e-12*row.uSlopeSquared)
	}
}
