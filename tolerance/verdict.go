package tolerance

import (
	"iter"

	"example.org/collinear/align"
	"example.org/collinear/internal/words"
	"example.org/collinear/units"
)

// Verdict is how what was found stands against its limits. The zero value is no
// verdict; its Outcome is not Within.
//
// In JSON items are just the used ones, an uncertainty and a probability that are
// unknown are left out, and so are a rule that is simple and what was not asked
// for.
type Verdict struct {
	Outcome Outcome      // what the items come to by the Rule
	Governs int          // index of the item that is closest to being outside, see Governing
	Items   [4]Item      // the first Used of them count
	Used    int          // how many
	Basis   align.Basis  // where the uncertainties come from
	Rule    DecisionRule // how it was decided: Simple also where Asked could not be, on the basis Unknown
	Asked   Acceptance   // what was asked for
	AtLeast float64      // the probability that all items are within at once is this or more; NaN where unknown
}

// Outcome is what a verdict comes to. The zero value is none, and so never reads
// as within.
type Outcome uint8

// The outcomes.
const (
	Within    Outcome = iota + 1 // every item is at or below its limit, as the rule asks
	Outside                      // at least one is above
	Undecided                    // neither can be said, as the rule asks
)

var outcomeNames = words.List{"", "within", "outside", "undecided"}

// String returns the wire form, for one "within".
func (o Outcome) String() string { return outcomeNames.Word(uint8(o)) }

// MarshalText gives the wire form.
func (o Outcome) MarshalText() ([]byte, error) { return outcomeNames.Marshal(uint8(o)) }

// UnmarshalText reads the wire form.
func (o *Outcome) UnmarshalText(text []byte) error { return words.Unmarshal(o, outcomeNames, text) }

// All walks over the items that are used, with their index in Items.
func (v Verdict) All() iter.Seq2[int, Item] {
	return func(yield func(int, Item) bool) {
		for i := range v.used() {
			if !yield(i, v.Items[i]) {
				return
			}
		}
	}
}

// used is how many items there are, also in a verdict that was not made here.
func (v Verdict) used() int { return min(max(0, v.Used), len(v.Items)) }

// Governing returns the item with the largest Ratio; by probability the one with
// the least Probability, and guarded the one with the largest (Found + guard
// U)/Limit, then by Ratio. Of equals it is the first, and where there is none the
// zero item.
func (v Verdict) Governing() Item {
	if v.Governs < 0 || v.Governs >= v.used() {
		return Item{}
	}
	return v.Items[v.Governs]
}

// Item is one quantity held against its limit. Found, U and Limit are lengths
// where Of is Offset and slopes otherwise, and have no sign.
type Item struct {
	Of    Quantity
	Plane Plane
	Found Amount  // what was found less the target, its size; not rounded
	U     Amount  // standard uncertainty of Found; NaN where it is unknown
	Limit Amount  // up to and with which it is within
	Ratio float64 // Found/Limit, both rounded to the Resolution: within is exactly at most 1

	// Probability that the true value is at or below the limit, to 1e-9; exactly 1
	// or 0 only where U is zero, NaN where it is unknown.
	Probability float64
}

// Amount is a length or a slope. Which of the two counts is told by Of of the
// item that it belongs to; the other is zero.
type Amount struct {
	Length units.Length
	Slope  units.Slope
}

// Within tells whether the item is at or below its limit, both rounded to the
// Resolution. An item without a limit, as the zero one, is not.
func (i Item) Within() bool {
	limit := i.Of.nanometres(i.Limit)
	return limit >= Resolution && i.Of.nanometres(i.Found) <= limit
}

func (i Item) ratio() float64 {
	return float64(i.Of.nanometres(i.Found)) / float64(i.Of.nanometres(i.Limit))
}

// Quantity is what an item of a verdict is about. The zero value is none.
type Quantity uint8

// The quantities.
const (
	Offset         Quantity = iota + 1 // short coupling: offset at the coupling centre, a length
	Slope                              // short coupling: slope between the shafts
	FlexStationary                     // spacer coupling: tilt at the flex plane on the stationary side
	FlexMovable                        // spacer coupling: tilt at the flex plane on the movable side
)

var quantityNames = words.List{"", "offset", "slope", "flex_stationary", "flex_movable"}

// String returns the wire form, for one "flex_stationary".
func (q Quantity) String() string { return quantityNames.Word(uint8(q)) }

// MarshalText gives the wire form.
func (q Quantity) MarshalText() ([]byte, error) { return quantityNames.Marshal(uint8(q)) }

// UnmarshalText reads the wire form.
func (q *Quantity) UnmarshalText(text []byte) error { return words.Unmarshal(q, quantityNames, text) }

// amount is x, in nanometres or as a ratio, as what q is counted in.
func (q Quantity) amount(x float64) Amount {
	if q == Offset {
		return Amount{Length: units.Length(x)}
	}
	return Amount{Slope: units.Slope(x)}
}

// nanometres is a, or its rise over a metre, rounded for comparison.
func (q Quantity) nanometres(a Amount) units.Length {
	if q == Offset {
		return a.Length.Round(Resolution)
	}
	return rise(a.Slope).Round(Resolution)
}

// Plane is the plane that an item is judged in. The zero value is none.
type Plane uint8

// The planes.
const (
	Both       Plane = iota + 1 // horizontal and vertical together, as the length of a vector
	Horizontal                  // sideways
	Vertical                    // in height
)

var planeNames = words.List{"", "both", "horizontal", "vertical"}

// String returns the wire form, for one "horizontal".
func (p Plane) String() string { return planeNames.Word(uint8(p)) }

// MarshalText gives the wire form.
func (p Plane) MarshalText() ([]byte, error) { return planeNames.Marshal(uint8(p)) }

// UnmarshalText reads the wire form.
func (p *Plane) UnmarshalText(text []byte) error { return words.Unmarshal(p, planeNames, text) }
