package thermal

import (
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

func checkPieces(faults *check.Faults, at check.Path, pieces []Piece) {
	for i := range pieces {
		checkPiece(faults, at.Index(i), &pieces[i])
	}
}

func checkPiece(faults *check.Faults, at check.Path, p *Piece) {
	check.Positive(faults, at.Field("height"), p.Height, "a height")
	checkMaterial(faults, at.Field("material"), &p.Material)
	if len(p.Profile) == 0 {
		checkRise(faults, at.Field("rise"), p.Rise)
		if p.Cold != (units.Temperature{}) {
			faults.Add(units.Conflict, at.Field("cold"), p.Cold, "a profile of running temperatures with it: a rise does not use it")
		}
	} else {
		check.Unused(faults, at.Field("rise"), p.Rise, "a profile")
		checkProfile(faults, at, p)
	}
	u := at.Field("u")
	check.Uncertainty(faults, u.Field("height"), p.U.Height)
	if temperature := u.Field("temperature"); check.Uncertainty(faults, temperature, p.U.Temperature) {
		checkRise(faults, temperature, p.U.Temperature)
	}
}

// checkMaterial lets a coefficient be a little below zero: alloys of iron and
// nickel and laminates of carbon fibre can be made so (from memory). One that is
// zero was left out.
func checkMaterial(faults *check.Faults, at check.Path, m *Material) {
	expansion, u := at.Field("expansion"), at.Field("u")
	if a := m.Expansion; a == 0 {
		faults.Add(units.Missing, expansion, nil, "a coefficient of expansion")
	} else if check.Finite(faults, expansion, a) && (a > largestExpansion || a < leastExpansion) {
		faults.Add(units.OutOfRange, expansion, a, "a coefficient from -2 um/m/K to 1000 um/m/K")
	}
	if check.Uncertainty(faults, u, m.U) && m.U > largestExpansion {
		faults.Add(units.OutOfRange, u, m.U, "a standard uncertainty of at most 1000 um/m/K")
	}
}

func checkRise(faults *check.Faults, at check.Path, rise units.TemperatureDifference) {
	if check.Finite(faults, at, rise) && max(rise, -rise) > largestRise {
		faults.Add(units.OutOfRange, at, rise, "a difference of at most 2000 K")
	}
}

func checkProfile(faults *check.Faults, at check.Path, p *Piece) {
	cold := checkTemperature(faults, at.Field("cold"), p.Cold)
	list := at.Field("profile")
	for i := range p.Profile {
		spot := list.Index(i)
		checkUp(faults, spot.Field("up"), p, i)
		running := spot.Field("running")
		if checkTemperature(faults, running, p.Profile[i].Running) && cold {
			checkSpan(faults, running, p.Profile[i].Running, p.Cold)
		}
	}
}

// checkUp asks for a spot inside its piece and above the spot before.
func checkUp(faults *check.Faults, at check.Path, p *Piece, i int) {
	up := p.Profile[i].Up
	if !check.NotNegative(faults, at, up, "a place") {
		return
	}
	if up > p.Height && p.Height > 0 {
		faults.Add(units.OutOfRange, at, up, "a place inside the piece, which is "+p.Height.String()+" high")
	} else if i > 0 && up <= p.Profile[i-1].Up {
		faults.Add(units.Conflict, at, up, "a place above the spot before it")
	}
}

func checkSpan(faults *check.Faults, at check.Path, running, cold units.Temperature) {
	if rise := running.Minus(cold); max(rise, -rise) > largestRise {
		faults.Add(units.OutOfRange, at, running, "a temperature within 2000 K of the cold one")
	}
}

func checkTemperature(faults *check.Faults, at check.Path, t units.Temperature) bool {
	c := t.Celsius()
	if math.IsNaN(c) || math.IsInf(c, 0) {
		faults.Add(units.NotFinite, at, t, "a finite temperature")
		return false
	}
	if c < absoluteZero {
		faults.Add(units.OutOfRange, at, t, "a temperature not below absolute zero, -273.15 °C")
		return false
	}
	return true
}
