package shims

import "example.org/collinear/units"

// Choice is what [Choose] answers.
type Choice struct {
	Stacks   []Stack       `json:"stacks"`             // one for each order, in their order
	Proven   bool          `json:"proven"`             // no choice is better: the search came to its end
	Nodes    int           `json:"nodes"`              // steps that the search took
	Add      []Piece       `json:"add,omitempty"`      // pieces that, added to the stock, make every order reachable that any stock could; none if all are
	Warnings []units.Fault `json:"warnings,omitempty"` // what is not reached (unreachable), and a choice that is not proven (suspect)
}

// Stack is the pack that is to lie under one foot.
type Stack struct {
	Foot    string       `json:"foot"`
	Wanted  units.Length `json:"wanted"`           // total: what lies there now and the change; may be below zero
	Total   units.Length `json:"total"`            // what the pieces come to
	Error   units.Length `json:"error"`            // Total less Wanted: positive is too high
	Pieces  []Piece      `json:"pieces,omitempty"` // from the base up, one entry for each piece, the thin between the thick
	Out     []Piece      `json:"out,omitempty"`    // what the hands take out, thickest first
	In      []Piece      `json:"in,omitempty"`     // what they put in, thickest first
	Reached bool         `json:"reached"`          // Error is within the rule, and enough stays
	TooLow  bool         `json:"too_low,omitzero"` // no stock could reach it: less is wanted than has to stay, or than nothing
}

// Choose returns the best pack for every foot, as the package comment describes,
// from the stock and all that lies under the feet now: what comes out of one foot
// may go under another.
//
// It refuses no orders or too many, a foot without a name or with that of
// another, thicknesses that are not above zero or no whole number of nanometres,
// counts below zero (in a present pack: or zero), too many pieces, numbers that
// are not finite or too large, and a rule out of range, with paths like
// /stock/3/marked, /rule/pieces and /orders/1/now/0/count.
//
// Of the pieces in [Choice.Add], those of a size that is known bear the mark and
// measure of the first kind of that size; others are marked with just the
// thickness that is missing, to be cut or made up. Where some order can be reached
// by no stock, its warning says so, and Add brings it as near as any stock could.
//
// Up to sixteen feet from a box of a usual size take microseconds while the box
// has enough of all that is wanted. A scarce stock takes longer; where it would
// take too long, [Rule.Nodes] ends the search, and the best choice so far is
// returned as not proven.
func Choose(stock Stock, rule Rule, orders ...Order) (Choice, error) {
	if err := checkInput(stock, rule, orders); err != nil {
		return Choice{}, err
	}
	rule = rule.withDefaults()
	s := searches.Get().(*search)
	defer searches.Put(s)
	s.begin(stock, rule, orders)
	s.run()
	c := Choice{Stacks: s.lay(orders), Proven: s.proven, Nodes: s.nodes}
	c.Add = s.lacking(rule.Nodes)
	c.Warnings = s.warnings(rule)
	return c, nil
}
