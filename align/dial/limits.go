package dial

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Limits are what a set may miss before a warning asks to read it again. They
// never change the answer. No published figure was found for either; a zero
// takes [DefaultLimit].
type Limits struct {
	Miss   units.Length `json:"miss,omitzero"`   // of the validity rule, either way, not below zero
	Return units.Length `json:"return,omitzero"` // between first and last reading at the start, either way, not below zero
}

// DefaultLimit is the miss that passes without a warning where the caller has
// set none: a mil, 0.0254 mm. It is ours, without a source.
const DefaultLimit = 1 * units.Mil

func (l Limits) check(faults *check.Faults) {
	var root check.Path
	at := root.Field("limits")
	check.NotNegative(faults, at.Field("miss"), l.Miss, "a limit")
	check.NotNegative(faults, at.Field("return"), l.Return, "a limit")
}

// judge appends a warning for each check of a set that is over its limit. Both
// are compared after rounding to a nanometre, so that a miss of exactly the
// limit passes.
func (l Limits) judge(warnings []units.Fault, c *Check, field string) []units.Fault {
	warn := func(by, limit units.Length, what string) {
		if limit == 0 {
			limit = DefaultLimit
		}
		if max(by, -by).Above(limit) {
			warnings = append(warnings, units.Fault{
				Code: units.Suspect, Path: "/" + field + "/readings", Value: by.String(),
				Want: what + " within " + limit.String() + " of zero: read the set again",
			})
		}
	}
	if !c.Completed {
		warn(c.Miss, l.Miss, "12 + 6 - 3 - 9 o'clock")
	}
	if c.Returned {
		warn(c.Return, l.Return, "a return to the first reading")
	}
	return warnings
}
