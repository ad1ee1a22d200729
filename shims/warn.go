package shims

import (
	"strconv"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// warnings names the feet that are not reached, with the nearest total, and says
// where the choice is not known to be the best.
func (s *search) warnings(rule Rule) []units.Fault {
	var warnings []units.Fault
	var root check.Path
	orders := root.Field("orders")
	for i := range s.feet {
		if k := &s.chosen[i]; !k.cost.reached() {
			at := orders.Index(i)
			warnings = append(warnings, units.Fault{
				Code: units.Unreachable, Path: at.String(),
				Value: units.Length(k.total).String(), Want: s.want(i, rule),
			})
		}
	}
	if !s.proven {
		warnings = append(warnings, units.Fault{
			Code: units.Suspect, Value: strconv.Itoa(s.nodes) + " nodes",
			Want: "a choice that is proven the best: this one is not, because the search ended before; give it more nodes",
		})
	}
	return warnings
}

// want says what was wanted at foot i, and where no stock could do it, why.
func (s *search) want(i int, rule Rule) string {
	wanted := units.Length(s.feet[i].wanted)
	text := "a total of " + wanted.String() + " within " + rule.Error.String()
	if s.keep > 0 {
		text += ", and at least " + rule.Keep.String()
	}
	if s.out(i) == 0 {
		return text
	}
	if wanted < 0 {
		return text + "; no stock can do that: it is less than nothing"
	}
	return text + "; no stock can do both"
}
