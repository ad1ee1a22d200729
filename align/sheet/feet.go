package sheet

import (
	"cmp"
	"slices"
	"strconv"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// goal is where the target of one plane stands on the page; nowhere where the shafts
// are to lie in line.
type goal struct {
	offset, slope int
	wanted        bool
}

// feet puts on the page where the shaft lies at every foot, where it should, and how
// far the foot has to go. moves are the library's, foot by foot.
func (p *page) feet(in plane, found laid, target goal, feet []align.Foot, moves []align.Move) {
	lies := make([]int, len(feet))
	for i, f := range feet {
		lies[i] = p.position(in, found, f, across(feet, i))
	}
	wanted := make([]int, len(feet))
	for i, f := range feet {
		if target.wanted {
			wanted[i] = p.wanted(in, target, f, across(feet, i))
		}
	}
	for i, f := range feet {
		inputs := []input{p.above("wf", lies[i]), p.above("", lies[mirror(feet, i)])}
		if target.wanted {
			inputs = append(inputs, p.above("tf", wanted[i]), p.above("", wanted[mirror(feet, i)]))
		}
		p.answers(p.correction(in, f, inputs), float64(in.length(moves[i].By)))
	}
}

// mirror is the foot that a hand would take for foot i: as far from the other end.
func mirror(feet []align.Foot, i int) int {
	order := make([]int, len(feet))
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(feet[a].X, feet[b].X) })
	return order[len(order)-1-slices.Index(order, i)]
}

// across is the station of that foot.
func across(feet []align.Foot, i int) units.Length { return feet[mirror(feet, i)].X }

func footID(in plane, f align.Foot, what string) string {
	return in.String() + ".foot." + f.Name + "." + what
}

// position is where the shaft lies at a foot.
func (p *page) position(in plane, found laid, f align.Foot, other units.Length) int {
	ways := []way{feetExchanged(other)}
	for i, x := range found.stations {
		if x != 0 {
			ways = append(ways, way{kind: WrongDatum, form: strconv.Itoa(i), sort: "position", rule: func(v values) float64 {
				return along(values{v[0], v[1], v[2] - float64(x)})
			}})
		}
	}
	return p.add(line{
		id:      footID(in, f, "position"),
		sought:  in.String() + " position of the shaft at the " + f.Name + " feet",
		formula: "wf = w0 + a * x",
		source:  carriedOn,
		kind:    in.lies(),
		inputs:  []input{p.above("w0", found.offset), p.above("a", found.slope), put("x", station, f.X)},
		rule:    along,
		ways:    ways,
	})
}

// feetExchanged takes the station of the foot at the other end.
func feetExchanged(other units.Length) way {
	return way{kind: FeetExchanged, sort: "position", rule: func(v values) float64 {
		return along(values{v[0], v[1], float64(other)})
	}}
}

// along is w0 + a x.
func along(v values) float64 {
	return float64(align.Line{Offset: v.length(0), Slope: v.slope(1)}.At(v.length(2)))
}

// wanted is where the shaft should lie at a foot.
func (p *page) wanted(in plane, target goal, f align.Foot, other units.Length) int {
	return p.add(line{
		id:      footID(in, f, "target"),
		sought:  in.String() + " position that the shaft should have at the " + f.Name + " feet, cold",
		formula: "tf = t0 + ta * x",
		source:  carriedOn,
		kind:    in.lies(),
		inputs:  []input{p.above("t0", target.offset), p.above("ta", target.slope), put("x", station, f.X)},
		rule:    along,
		ways:    []way{feetExchanged(other)},
	})
}

// correction is how far a foot has to go from where it lies to where it should. Its
// inputs are where the foot and the one at the other end lie, and where there is a
// target, where both should.
func (p *page) correction(in plane, f align.Foot, inputs []input) int {
	formula, right := "c = -wf", func(v values) float64 { return 0 - v[0] }
	other := func(v values) float64 { return 0 - v[1] }
	if len(inputs) > 2 {
		formula, right = "c = tf - wf", func(v values) float64 { return v[2] - v[0] }
		other = func(v values) float64 { return v[3] - v[1] }
	}
	return p.add(line{
		id:      footID(in, f, "correction"),
		sought:  in.String() + " correction at the " + f.Name + " feet",
		formula: formula,
		source:  "from where the shaft lies to where it should: H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, ch. 5, p. 203 (read)",
		kind:    in.moves(),
		inputs:  inputs,
		rule:    right,
		ways: append(unitWays("corrections", f.Name, right),
			way{kind: FeetExchanged, sort: "correction", rule: other},
			way{kind: PositionForCorrection, rule: func(v values) float64 { return -right(v) }}),
	})
}
