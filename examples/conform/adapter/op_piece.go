package adapter

import (
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// piece is a part of a leg. Its rise is given, or follows from a profile.
type piece struct {
	Height   units.Length                 `json:"height"`
	Material material                     `json:"material"`
	Rise     *units.TemperatureDifference `json:"rise,omitzero"`
	Cold     *units.Temperature           `json:"cold,omitzero"`
	Profile  []thermal.Spot               `json:"profile,omitzero"`
	U        struct {
		Height      units.Length                `json:"height,omitzero"`
		Temperature units.TemperatureDifference `json:"temperature,omitzero"`
	} `json:"u,omitzero"`
}

type material struct {
	Name      string          `json:"name,omitzero"`
	Expansion units.Expansion `json:"expansion"`
	U         units.Expansion `json:"u,omitzero"`
}

// pieces returns nothing for no list, so that the library sees which leg there
// is.
func pieces(f *strict.Faults, path string, list []piece) []thermal.Piece {
	var all []thermal.Piece
	for i := range list {
		all = append(all, list[i].piece(f, strict.Step(path, i)))
	}
	return all
}

func (p *piece) piece(f *strict.Faults, path string) thermal.Piece {
	p.checkRise(f, path)
	return thermal.Piece{
		Height:   p.Height,
		Material: thermal.Material{Name: p.Material.Name, Expansion: p.Material.Expansion, U: p.Material.U},
		Rise:     value(p.Rise), Cold: value(p.Cold), Profile: p.Profile,
		U: thermal.Uncertainty{Height: p.U.Height, Temperature: p.U.Temperature},
	}
}

// checkRise asks for a rise, or for a profile and the temperature when cold.
// The library would take 20 degC for one that is left out.
func (p *piece) checkRise(f *strict.Faults, path string) {
	profile := p.Cold != nil || p.Profile != nil
	switch {
	case !profile && p.Rise == nil:
		f.Add(units.Missing, path+"/rise", "", "a rise, or cold and profile")
	case p.Profile == nil && p.Rise != nil && p.Cold != nil:
		f.Add(units.Conflict, path+"/cold", p.Cold.String(), "no value: a rise does not use it")
	case p.Rise != nil && profile:
		f.Add(units.Conflict, path+"/rise", p.Rise.String(), "no value: the profile tells the rise")
	case profile && len(p.Profile) == 0:
		f.Add(units.Missing, path+"/profile", "", "at least one spot")
	case profile && p.Cold == nil:
		f.Add(units.Missing, path+"/cold", "", "the temperature of the piece when cold")
	}
}
