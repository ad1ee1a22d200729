package tolerance

import (
	"encoding/json"
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// verdictJSON is the wire form of a Verdict.
type verdictJSON struct {
	Outcome Outcome      `json:"outcome"`
	Governs int          `json:"governs"`
	Items   []itemJSON   `json:"items"`
	Basis   align.Basis  `json:"basis"`
	Rule    DecisionRule `json:"rule,omitzero"`
	Asked   Acceptance   `json:"asked,omitzero"`
	AtLeast *float64     `json:"at_least,omitempty"`
}

// MarshalJSON writes the used items. It refuses a verdict that UnmarshalJSON
// would not read.
func (v Verdict) MarshalJSON() ([]byte, error) {
	wire := verdictJSON{Outcome: v.Outcome, Governs: v.Governs, Basis: v.Basis, Rule: v.Rule, Asked: v.Asked}
	var faults check.Faults
	var root check.Path
	v.check(&faults, root)
	list := root.Field("items")
	for i, item := range v.All() {
		wire.Items = append(wire.Items, item.wire(&faults, list.Index(i)))
	}
	wire.AtLeast = written(&faults, root.Field("at_least"), v.AtLeast)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives. It refuses a verdict without an
// outcome or items (Missing), with more than four or an index outside them
// (OutOfRange), one that contradicts itself (Conflict), by an outcome, a rule, a
// ratio, a bound or an index that does not follow from the items and what was
// asked, or by uncertainties and probabilities that do not go with the basis, and
// what an Acceptance (at /asked) and an Item refuse, with paths from /items/2. One
// that says no basis is refused (Missing, at /basis), and so is what cannot be read:
// values of a wrong type (Malformed) and members that are not known (Unknown).
// Without probabilities a verdict by simple acceptance is read as one that does
// not know them.
func (v *Verdict) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[verdictJSON](data, "basis")
	if err != nil {
		return err
	}
	var faults check.Faults
	var root check.Path
	list := root.Field("items")
	read := Verdict{Outcome: wire.Outcome, Governs: wire.Governs, Used: len(wire.Items), Basis: wire.Basis, Rule: wire.Rule, Asked: wire.Asked}
	for i := range wire.Items[:read.used()] {
		read.Items[i] = wire.Items[i].item(&faults, list.Index(i))
	}
	read.AtLeast = told(&faults, root.Field("at_least"), wire.AtLeast)
	if faults.Len() == 0 { // what follows from items that cannot be read is not known
		read.check(&faults, root)
	}
	if err := faults.Err(); err != nil {
		return err
	}
	*v = read
	return nil
}

// check asks for a verdict that Judge can have given.
func (v *Verdict) check(faults *check.Faults, at check.Path) {
	list := at.Field("items")
	if v.Used <= 0 {
		faults.Add(units.Missing, list, nil, "at least one item")
		return
	}
	if v.Used > len(v.Items) {
		faults.Add(units.OutOfRange, list, v.Used, "at most four items")
		return
	}
	v.checkFollows(faults, at)
	for i, item := range v.All() {
		v.checkItem(faults, list.Index(i), &item)
	}
}

// checkFollows asks that what was asked is sound and that the rule, the outcome,
// the governing item and the bound are those that the items give.
func (v *Verdict) checkFollows(faults *check.Faults, at check.Path) {
	v.Asked.check(faults, at.Field("asked"))
	v.checkRule(faults, at.Field("rule"))
	follows, governs := v.decide()
	switch v.Outcome {
	case follows:
	case 0:
		faults.Add(units.Missing, at.Field("outcome"), nil, "an outcome")
	default:
		faults.Add(units.Conflict, at.Field("outcome"), v.Outcome, follows.String()+", which follows from the items")
	}
	if v.Governs < 0 || v.Governs >= v.Used {
		faults.Add(units.OutOfRange, at.Field("governs"), v.Governs, "the index of an item")
	} else if v.Governs != governs {
		faults.Add(units.Conflict, at.Field("governs"), v.Governs, "the first item that is closest to being outside")
	}
	if !same(v.AtLeast, v.atLeast()) {
		faults.Add(units.Conflict, at.Field("at_least"), v.AtLeast, "one less what the items leave open")
	}
}

func (v *Verdict) checkRule(faults *check.Faults, at check.Path) {
	follows := v.Asked.rule()
	if v.Basis == align.Unknown {
		follows = Simple
	}
	if v.Rule != follows {
		faults.Add(units.Conflict, at, v.Rule, follows.String()+", which follows from what was asked and the basis")
	}
}

// same tells whether two probabilities are the same but for rounding, or both
// unknown.
func same(p, q float64) bool {
	return math.IsNaN(p) && math.IsNaN(q) || math.Abs(p-q) <= 2*finest
}

func (v *Verdict) checkItem(faults *check.Faults, at check.Path, item *Item) {
	const rounding = 1e-9 // by one who writes fewer digits
	if follows := item.ratio(); !(math.Abs(item.Ratio-follows) <= rounding*follows) {
		faults.Add(units.Conflict, at.Field("ratio"), item.Ratio, "found over limit")
	}
	switch unknown := math.IsNaN(item.Of.number(item.U)); {
	case unknown && v.Basis != align.Unknown:
		faults.Add(units.Missing, at.Field("u"), nil, "an uncertainty, or the basis unknown")
	case !unknown && v.Basis == align.Unknown:
		faults.Add(units.Conflict, at.Field("u"), nil, "no uncertainty: the basis is unknown")
	}
	v.checkChance(faults, at.Field("probability"), item)
}

// checkChance asks for a probability that goes with the basis and the rule. A
// verdict by simple acceptance may be without.
func (v *Verdict) checkChance(faults *check.Faults, at check.Path, item *Item) {
	switch absent := math.IsNaN(item.Probability); {
	case absent && v.Rule == ByProbability:
		faults.Add(units.Missing, at, nil, "a probability, by which the verdict was found")
	case !absent && v.Basis == align.Unknown:
		faults.Add(units.Conflict, at, item.Probability, "no probability: the basis is unknown")
	case !absent && v.Basis == align.Declared && (item.Probability == 1) != item.Within():
		faults.Add(units.Conflict, at, item.Probability, "1 for an item that is within and 0 for one that is not: the basis is declared")
	}
}
