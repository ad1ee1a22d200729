package shims

import "example.org/collinear/units"

// Order is what one single foot needs. The left and the right foot of one end
// are two orders.
type Order struct {
	Foot       string       `json:"foot"`               // its name, needed and unlike all others
	Correction units.Length `json:"correction"`         // positive: the foot goes up
	SoftFoot   units.Length `json:"soft_foot,omitzero"` // flat shim that cures soft foot here, added to the correction; that has to allow for what such shims do to the shaft (softfoot.Shift)
	Now        []Piece      `json:"now,omitempty"`      // the pack that lies there now, in any order; may have more pieces than the rule allows
}

// Rule is what a pack has to keep to. The zero value is the default, all of
// which is ours.
type Rule struct {
	Error  units.Length `json:"error,omitzero"`  // largest error of a foot, up or down; zero: DefaultError; for none at all give a nanometre
	Pieces int          `json:"pieces,omitzero"` // most pieces under a foot, up to MostPieces; zero: DefaultPieces
	Keep   units.Length `json:"keep,omitzero"`   // least total that stays under every foot, so that the machine can still go down; zero: none
	Nodes  int          `json:"nodes,omitzero"`  // steps after which the search gives up; to name what to add may take as many again; zero: DefaultNodes
}

// The rule where nothing else is said.
const (
	// DefaultError, 0.0254 mm, is the finest step of [CommonInch], and a little over
	// half of the finest of [CommonMetric]. Ours.
	DefaultError = 1 * units.Mil
	// DefaultPieces lies between 3 and 5, see the sources in the package comment.
	DefaultPieces = 4
	// DefaultNodes ends a search that would not come to its end after about half a
	// second. Ours.
	DefaultNodes = 1_000_000
)

// The limits of an input. They are far beyond what machines need, and keep the
// arithmetic exact.
const (
	MostFeet   = 64              // orders in one call
	MostPieces = 16              // pieces that a rule may allow under one foot
	MostRows   = 1000            // rows of the stock and of the packs under the feet, all together
	MostCount  = 1_000_000       // pieces in the stock and under the feet, all together
	Thickest   = 1 * units.Metre // a piece, a pack, and what is wanted or kept
)

// withDefaults fills in what the rule leaves open.
func (r Rule) withDefaults() Rule {
	if r.Error == 0 {
		r.Error = DefaultError
	}
	if r.Pieces == 0 {
		r.Pieces = DefaultPieces
	}
	if r.Nodes == 0 {
		r.Nodes = DefaultNodes
	}
	return r
}
