package thermal_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// Nothing stated is unknown; anything stated makes the rest exact.
func TestBasis(t *testing.T) {
	plainPiece := piece(500*mm, steel, 30)
	with := func(change func(*thermal.Piece)) []thermal.Support {
		p := plainPiece
		change(&p)
		return []thermal.Support{on(300*mm, plainPiece), on(900*mm, p)}
	}
	moved := measured(900*mm, 0, 100*um)
	sure := measured(900*mm, 0, 100*um)
	sure.Measured.U.Horizontal = um
	rows := []struct {
		name    string
		machine []thermal.Support
		want    align.Basis
	}{
		{"nothing", with(func(*thermal.Piece) {}), align.Unknown},
		{"height", with(func(p *thermal.Piece) { p.U.Height = mm }), align.Stated},
		{"rise", with(func(p *thermal.Piece) { p.U.Temperature = 1 }), align.Stated},
		{"coefficient", with(func(p *thermal.Piece) { p.Material.U = 1e-7 }), align.Stated},
		{"coefficient of what does not warm up", with(func(p *thermal.Piece) { p.Material.U, p.Rise = 1e-7, 0 }), align.Stated},
		{"measured, not how well", []thermal.Support{on(300*mm, plainPiece), moved}, align.Unknown},
		{"measured sideways alone", []thermal.Support{on(300*mm, plainPiece), sure}, align.Stated},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got := grow(t, row.machine...).Cov
			if got.Basis != row.want || got.DoF != 0 {
				t.Errorf("basis %v with %v degrees of freedom, want %v", got.Basis, got.DoF, row.want)
			}
			if u := float64(got.Standard().Vertical.Offset); math.IsNaN(u) != (row.want == align.Unknown) {
				t.Errorf("u %v on basis %v", u, got.Basis)
			}
		})
	}
}

// By hand: legs of 500 mm, 11 um/m/K, 40 and 20 K warmer, at 400 and 800 mm.
func TestUncertaintyByHand(t *testing.T) {
	sure := steel
	sure.U = 1e-6
	other := sure
	other.Name = "another melt"
	rows := []struct {
		name            string
		front, rear     thermal.Piece
		atFront, atRear units.Length
		correlation     float64 // of the growth at front and rear
	}{
		{"rise: 0.5 m * 11 um/m/K * 2 K", withU(piece(500*mm, steel, 40), 0, 2), withU(piece(500*mm, steel, 20), 0, 2), 11 * um, 11 * um, 0},
		{"height: 5 mm * 11 um/m/K * rise", withU(piece(500*mm, steel, 40), 5*mm, 0), withU(piece(500*mm, steel, 20), 5*mm, 0), 2200, 1100, 0},
		{"one coefficient: 0.5 m * 1 um/m/K * rise", piece(500*mm, sure, 40), piece(500*mm, sure, 20), 20 * um, 10 * um, 1},
		{"two coefficients", piece(500*mm, sure, 40), piece(500*mm, other, 20), 20 * um, 10 * um, 0},
		{"one coefficient, one end cools", piece(500*mm, sure, 40), piece(500*mm, sure, -20), 20 * um, 10 * um, -1},
		{"rise and height and coefficient", withU(piece(500*mm, sure, 40), 5*mm, 2), withU(piece(500*mm, sure, 20), 0, 0),
			units.Length(math.Sqrt(11*11+2.2*2.2+20*20)) * um, 10 * um, 20 / math.Sqrt(11*11+2.2*2.2+20*20)},
	}
	const near4, far8 = 400 * mm, 800 * mm
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			line := growWithin(t, mm, on(near4, row.front), on(far8, row.rear))
			_, front := line.At(near4)
			_, rear := line.At(far8)
			near(t, "front", front.Vertical, row.atFront, 1e-3)
			near(t, "rear", rear.Vertical, row.atRear, 1e-3)
			// Half way the growth is the mean: u^2 = (f^2 + r^2 + 2 c f r)/4.
			_, half := line.At(600 * mm)
			f, r, h := float64(front.Vertical), float64(rear.Vertical), float64(half.Vertical)
			near(t, "correlation", (4*h*h-f*f-r*r)/(2*f*r), row.correlation, 1e-6)
		})
	}
}

func withU(p thermal.Piece, height units.Length, rise units.TemperatureDifference) thermal.Piece {
	p.U = thermal.Uncertainty{Height: height, Temperature: rise}
	return p
}
