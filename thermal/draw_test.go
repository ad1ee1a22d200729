package thermal_test

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

func between[Q ~float64](t *rapid.T, lo, hi Q, what string) Q {
	return Q(rapid.Float64Range(float64(lo), float64(hi)).Draw(t, what))
}

// drawUncertainty draws a standard uncertainty, none or at least a millionth of hi: what
// is absurdly small has a square that no float64 holds.
func drawUncertainty[Q ~float64](t *rapid.T, hi Q, what string) Q {
	if rapid.Bool().Draw(t, "no "+what) {
		return 0
	}
	return between(t, hi/1e6, hi, what)
}

// drawMaterials draws what the pieces of a machine are made of: few, so that
// several pieces share one.
func drawMaterials(t *rapid.T) []thermal.Material {
	list := []thermal.Material{
		rapid.SampledFrom(thermal.Materials()).Draw(t, "listed"),
		{Name: "a", Expansion: between[units.Expansion](t, 1e-7, 1e-4, "expansion")},
		{Name: "b", Expansion: between[units.Expansion](t, -2e-6, -1e-8, "expansion")},
	}
	for i := range list {
		if rapid.Bool().Draw(t, "coefficient uncertain") {
			list[i].U = drawUncertainty(t, 0.1*max(list[i].Expansion, -list[i].Expansion), "u of the coefficient")
		}
	}
	return list
}

func drawPiece(t *rapid.T, materials []thermal.Material) thermal.Piece {
	p := thermal.Piece{
		Height:   between(t, 20*mm, 1500*mm, "height"),
		Material: rapid.SampledFrom(materials).Draw(t, "material"),
	}
	if rapid.Bool().Draw(t, "profile") {
		p.Cold = units.Celsius(between(t, -40.0, 60, "cold"))
		p.Profile = drawProfile(t, p.Height)
	} else {
		p.Rise = between(t, -150*units.Kelvin, 500*units.Kelvin, "rise")
	}
	if rapid.Bool().Draw(t, "piece uncertain") {
		p.U.Height = drawUncertainty(t, 5*mm, "u of the height")
		p.U.Temperature = drawUncertainty(t, 20*units.Kelvin, "u of the rise")
	}
	return p
}

func drawProfile(t *rapid.T, height units.Length) []thermal.Spot {
	n := rapid.IntRange(1, 5).Draw(t, "spots")
	profile := make([]thermal.Spot, n)
	for i := range profile {
		place := (float64(i) + between(t, 0.01, 0.99, "place")) / float64(n)
		profile[i] = thermal.Spot{
			Up:      units.Length(place * float64(height)),
			Running: units.Celsius(between(t, -100.0, 500, "running")),
		}
	}
	if rapid.Bool().Draw(t, "from the base") {
		profile[0].Up = 0
	}
	if rapid.Bool().Draw(t, "to the top") {
		profile[n-1].Up = height
	}
	return profile
}

func drawPieces(t *rapid.T, materials []thermal.Material) []thermal.Piece {
	pieces := make([]thermal.Piece, rapid.IntRange(1, 3).Draw(t, "pieces"))
	for i := range pieces {
		pieces[i] = drawPiece(t, materials)
	}
	return pieces
}

func drawVector(t *rapid.T, lo, hi units.Length, what string) align.Vector {
	return align.Vector{Horizontal: between(t, lo, hi, what+" horizontal"), Vertical: between(t, lo, hi, what+" vertical")}
}

func drawSupport(t *rapid.T, materials []thermal.Material) (s thermal.Support) {
	switch rapid.IntRange(0, 2).Draw(t, "way") {
	case 0:
		s.Pieces = drawPieces(t, materials)
	case 1:
		s.Three, s.Nine = drawPieces(t, materials), drawPieces(t, materials)
		s.Track = between(t, 200*mm, 2000*mm, "track")
	default:
		s.Measured = &thermal.Measured{By: drawVector(t, -mm, mm, "by")}
		if rapid.Bool().Draw(t, "measurement uncertain") {
			s.Measured.U = align.Vector{Horizontal: drawUncertainty(t, 50*um, "u horizontal"), Vertical: drawUncertainty(t, 50*um, "u vertical")}
		}
	}
	return s
}

// drawMachine draws lo to hi supports, 100 mm apart or more.
func drawMachine(t *rapid.T, lo, hi int) []thermal.Support {
	materials := drawMaterials(t)
	supports := make([]thermal.Support, rapid.IntRange(lo, hi).Draw(t, "supports"))
	x := between(t, -4000*mm, 2000*mm, "first station")
	for i := range supports {
		supports[i] = drawSupport(t, materials)
		supports[i].Name = fmt.Sprint("support ", i)
		supports[i].X = x
		x += between(t, 100*mm, 1000*mm, "distance")
	}
	return rapid.Permutation(supports).Draw(t, "order")
}

// anyStandOff lets a machine that was drawn at random pass.
const anyStandOff = 1e6 * mm
