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
	Outcome Outcome     `json:"outcome"`
	Governs int         `json:"governs"`
	Items   []itemJSON  `json:"items"`
	Basis   align.Basis `json:"basis"`
}

// MarshalJSON writes the used items. It refuses a verdict that UnmarshalJSON
// would not read.
func (v Verdict) MarshalJSON() ([]byte, error) {
	wire := verdictJSON{Outcome: v.Outcome, Governs: v.Governs, Basis: v.Basis}
	var faults check.Faults
	var root check.Path
	v.check(&faults, root)
	list := root.Field("items")
	for i, item := range v.All() {
		wire.Items = append(wire.Items, item.wire(&faults, list.Index(i)))
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives. It refuses a verdict without an
// outcome or items (Missing), with more than four or an index outside them
// (OutOfRange), one that contradicts itself (Conflict), by an outcome, a ratio or
// an index that does not follow from the items, or by uncertainties that do not go
// with the basis, and what an Item refuses, with paths from /items/2.
func (v *Verdict) UnmarshalJSON(data []byte) error {
	var wire verdictJSON
	if err := json.Unmarshal(data, &wire); err != nil {
		return err
	}
	var faults check.Faults
	var root check.Path
	list := root.Field("items")
	read := Verdict{Outcome: wire.Outcome, Governs: wire.Governs, Used: len(wire.Items), Basis: wire.Basis}
	for i := range wire.Items[:read.used()] {
		read.Items[i] = wire.Items[i].item(&faults, list.Index(i))
	}
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
	switch {
	case v.Used <= 0:
		faults.Add(units.Missing, list, nil, "at least one item")
		return
	case v.Used > len(v.Items):
		faults.Add(units.OutOfRange, list, v.Used, "at most four items")
		return
	}
	v.checkFollows(faults, at)
	for i, item := range v.All() {
		v.checkItem(faults, list.Index(i), &item)
	}
}

// checkFollows asks that the outcome and the governing item are those that the
// items give.
func (v *Verdict) checkFollows(faults *check.Faults, at check.Path) {
	follows, governs := Within, 0
	for i, item := range v.All() {
		if !item.Within() {
			follows = Outside
		}
		if item.Ratio > v.Items[governs].Ratio {
			governs = i
		}
	}
	switch v.Outcome {
	case follows:
	case 0:
		faults.Add(units.Missing, at.Field("outcome"), nil, "an outcome")
	default:
		faults.Add(units.Conflict, at.Field("outcome"), v.Outcome, follows.String()+", which follows from the items")
	}
	switch {
	case v.Governs < 0 || v.Governs >= v.Used:
		faults.Add(units.OutOfRange, at.Field("governs"), v.Governs, "the index of an item")
	case v.Governs != governs:
		faults.Add(units.Conflict, at.Field("governs"), v.Governs, "the first item with the largest ratio")
	}
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
}
