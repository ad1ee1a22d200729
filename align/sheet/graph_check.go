package sheet

import (
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// checkGraphed walks what is to be drawn, but not the paper.
func checkGraphed(faults *check.Faults, root check.Path, line align.Line, through [2]Station, feet []align.Foot) {
	atLine, points, list := root.Field("line"), root.Field("through"), root.Field("feet")
	offset := check.Finite(faults, atLine.Field("offset"), line.Offset)
	slope := check.Finite(faults, atLine.Field("slope"), line.Slope)
	station := func(at check.Path, x units.Length) {
		if check.Finite(faults, at, x) && offset && slope && !check.Sound(line.At(x)) {
			faults.Add(units.OutOfRange, at, x, "a station at which the line is within 1000 km of the axis")
		}
	}
	for i, s := range through {
		point := points.Index(i)
		station(point.Field("x"), s.X)
	}
	seen := map[string]bool{}
	for i, f := range feet {
		foot := list.Index(i)
		checkFootName(faults, foot.Field("name"), f.Name, seen)
		station(foot.Field("x"), f.X)
		check.Uncertainty(faults, foot.Field("u"), f.U)
	}
}

// checkFootName asks for a name that was not seen before, and notes it.
func checkFootName(faults *check.Faults, at check.Path, name string, seen map[string]bool) {
	if name == "" {
		faults.Add(units.Missing, at, nil, "a name, by which a value read off is known")
	} else if seen[name] {
		faults.Add(units.Duplicate, at, name, "a name that no other foot has")
	}
	seen[name] = true
}

// checkApart asks for two points that stay apart, and in their order, however the
// hand errs: a line can be laid through no others.
func (p Paper) checkApart(faults *check.Faults, list check.Path, through [2]Station) {
	second := list.Index(1)
	at := second.Field("x")
	apart := distance(through[0].X, through[1].X)
	if apart < check.Least {
		faults.Add(units.Conflict, at, through[1].X, "a station other than that of the first point")
	} else if p.sound() && p.along(apart) <= 2*p.pencil() {
		faults.Add(units.Conflict, at, through[1].X, "a station more than "+(2*p.pencil()).String()+" from the first point on paper, twice the error of the pencil")
	}
}

// checkTolerances refuses feet at which a graph says nothing.
func (g *Graph) checkTolerances(faults *check.Faults, list check.Path) {
	for i, f := range g.Feet {
		if !check.Sound(f.Tolerance) {
			foot := list.Index(i)
			faults.Add(units.OutOfRange, foot.Field("x"), f.Foot.X, "a station at which a value can be read off to 1000 km: points farther apart, or a larger exaggeration")
		}
	}
}

// checkMarks refuses scales that lead off any paper.
func (g *Graph) checkMarks(faults *check.Faults, root check.Path) {
	marks := slices.Concat(g.Stationary[:], g.Movable[:], g.Points[:])
	for _, f := range g.Feet {
		marks = append(marks, f.Mark)
	}
	beyond := func(scale string, value float64, place func(Mark) units.Length) {
		if slices.ContainsFunc(marks, func(m Mark) bool { return !check.Sound(place(m)) }) {
			faults.Add(units.OutOfRange, root.Field(scale), value, "a scale at which every mark is within 1000 km of the coupling centre on the paper")
		}
	}
	beyond("reduction", g.Paper.Reduction, func(m Mark) units.Length { return m.X })
	beyond("exaggeration", g.Paper.Exaggeration, func(m Mark) units.Length { return m.Y })
}
