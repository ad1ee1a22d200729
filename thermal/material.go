package thermal

import (
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/units"
)

// Material is what a piece is made of. A material of the caller's own is one
// that he fills in. Two pieces are of one material, and share the error of its
// coefficient, when all four fields are the same. The zero value is refused.
type Material struct {
	Name      string          `json:"name,omitzero"`
	Expansion units.Expansion `json:"expansion"`       // coefficient of linear expansion, mean from cold to running
	U         units.Expansion `json:"u,omitzero"`      // its standard uncertainty; zero where none is stated
	Source    string          `json:"source,omitzero"` // work, page, range of temperature
}

// What the sources of more than one material are called.
const (
	frames     = "R. B. McMillan, Rotating Machinery, Fairmont, 2004, table 8-3, p. 134: steel and cast-iron frames (read)"
	table      = "an engineering table (read)"
	tableRange = "an engineering table, 32 °F to 212 °F (read)"
	tableCopy  = "a copy of an engineering table (second-hand)"
	metrology  = "a list for users of measuring machines (read)"
)

// Materials lists coefficients of expansion, each with its source and whether
// that was read or seen second-hand. The list is the caller's to change.
//
// None has an uncertainty, for no source states one. Sources of what is called
// the same material differ by up to 15 %, concrete by more, so a coefficient
// from a maker or a certificate is better, and U is worth stating: 15 % from end
// to end, anything between as likely, is a standard uncertainty of 4.3 % (JCGM
// 100:2008, 4.3.7).
//
// Each is given in the unit of its source: 6.3e-6 per degree F is not the 11.3e-6 per
// K that is printed beside it, and a worked example needs the one that its author used.
func Materials() []Material {
	return []Material{
		{Name: "steel", Expansion: 6.3e-6 * units.PerFahrenheitDegree, Source: frames},
		{Name: "cast-iron frame", Expansion: 6.3e-6 * units.PerFahrenheitDegree, Source: frames},
		{Name: "grey cast iron", Expansion: 5.8e-6 * units.PerFahrenheitDegree, Source: tableRange},
		{Name: "cast steel, 3 % carbon", Expansion: 7.0e-6 * units.PerFahrenheitDegree, Source: table},
		{Name: "stainless steel 304", Expansion: 9.6e-6 * units.PerFahrenheitDegree, Source: tableCopy},
		{Name: "stainless steel 316", Expansion: 8.9e-6 * units.PerFahrenheitDegree, Source: tableCopy},
		{Name: "stainless steel 410", Expansion: 5.5e-6 * units.PerFahrenheitDegree, Source: tableCopy},
		{Name: "aluminium", Expansion: 13.1e-6 * units.PerFahrenheitDegree, Source: table},
		{Name: "aluminium 6061", Expansion: 13.0e-6 * units.PerFahrenheitDegree, Source: table},
		{Name: "aluminium bronze", Expansion: 9.0e-6 * units.PerFahrenheitDegree, Source: table},
		{Name: "phosphor bronze, 5 %", Expansion: 9.9e-6 * units.PerFahrenheitDegree, Source: table},
		{Name: "concrete", Expansion: 14.5e-6 * units.PerKelvin, Source: metrology},
		{Name: "concrete structure", Expansion: 9.8e-6 * units.PerKelvin, Source: metrology},
	}
}

// FindMaterial returns the material of that name from [Materials]: steel,
// cast-iron frame, grey cast iron, cast steel, stainless steel, aluminium, bronze
// or concrete, some of them with their grade. The error, which lists the names, is
// a *units.Fault: Missing for no name, Unknown for one that is not in the list.
func FindMaterial(name string) (Material, error) {
	materials := Materials()
	i := slices.IndexFunc(materials, func(m Material) bool { return m.Name == name })
	if i >= 0 {
		return materials[i], nil
	}
	fault := &units.Fault{Code: units.Unknown, Value: strconv.Quote(name[:min(len(name), 40)]), Want: "one of " + strings.Join(names(materials), "; ")}
	if name == "" {
		fault.Code, fault.Value = units.Missing, ""
	}
	return Material{}, fault
}

func names(materials []Material) []string {
	list := make([]string, len(materials))
	for i, m := range materials {
		list[i] = m.Name
	}
	return list
}
