package train

import (
	"cmp"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/internal/words"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Reason is why a step stands where it does in the list. The zero value is none.
type Reason uint8

// The reasons. That heights come before sideways moves, and that work goes outward
// from what stands, is common practice, no source.
const (
	StartsHere      Reason = iota + 1 // no machine stands yet: this one moves least, and the others are set to it
	BesideOneThatIs                   // its neighbour stands where it is to be: their coupling can be measured as soon as this machine is set
	WhileLoose                        // the bolts of this machine are loose already
	HeightsAreSet                     // sideways after the heights, for changing shims shifts a machine sideways
)

var reasonNames = words.List{"", "starts_here", "beside_one_that_is", "while_loose", "heights_are_set"}

// String returns the wire form, for one "while_loose".
func (r Reason) String() string { return reasonNames.Word(uint8(r)) }

// MarshalText gives the wire form.
func (r Reason) MarshalText() ([]byte, error) { return reasonNames.Marshal(uint8(r)) }

// UnmarshalText reads the wire form.
func (r *Reason) UnmarshalText(text []byte) error { return words.Unmarshal(r, reasonNames, text) }

// Step is one move of one foot in one plane, of [LeastStep] or more.
type Step struct {
	Machine string          `json:"machine"`
	Foot    string          `json:"foot"`
	Plane   tolerance.Plane `json:"plane"`            // vertical or horizontal
	By      units.Length    `json:"by"`               // up, or towards 3 o'clock, is positive; to 1 nm
	Why     Reason          `json:"why"`              // why now
	Beside  string          `json:"beside,omitempty"` // the neighbour that stands, where that is why
}

// Text puts the step into words, for one "gearbox inboard: raise 0.21 mm". A step
// that rounds to nothing is left.
func (s Step) Text(style align.Style) string {
	words := style.Height(s.By)
	if s.Plane == tolerance.Horizontal {
		words = style.Sideways(s.By)
	}
	return s.Machine + " " + s.Foot + ": " + cmp.Or(words, "leave")
}

// String puts the step into words in the zero [align.Style].
func (s Step) String() string { return s.Text(align.Style{}) }

// Because puts the reason of the step into words, for one "next to motor, which
// stands".
func (s Step) Because() string {
	switch s.Why {
	case StartsHere:
		return s.Machine + " moves least, and the others are set to it"
	case BesideOneThatIs:
		return "next to " + s.Beside + ", which stands"
	case WhileLoose:
		return "while " + s.Machine + " is loose"
	case HeightsAreSet:
		return "sideways once the heights of " + s.Machine + " are set"
	}
	return s.Why.String()
}

// steps orders the moves: machine by machine outward from the one that stays, or
// that moves least; of a machine the heights before the sideways moves, each the
// larger first.
func (t *Train) steps(standings []Standing) []Step {
	start := t.start(standings)
	var list []Step
	for _, i := range outward(start, len(standings)) {
		steps := standings[i].steps()
		for k := range steps {
			s := &steps[k]
			if k > 0 && s.Plane == tolerance.Horizontal && steps[k-1].Plane == tolerance.Vertical {
				s.Why = HeightsAreSet
			} else if k > 0 {
				s.Why = WhileLoose
			} else if i == start {
				s.Why = StartsHere
			} else {
				s.Why, s.Beside = BesideOneThatIs, standings[towards(i, start)].Machine
			}
		}
		list = append(list, steps...)
	}
	return list
}

// start returns the machine to work outward from: the reference, or the one whose
// largest move is the least.
func (t *Train) start(standings []Standing) int {
	if t.Reference != "" {
		return t.reference()
	}
	return leastOf(len(standings), func(i int) float64 { return float64(standings[i].largest()) })
}

// leastOf returns the first of n machines of which there is least.
func leastOf(n int, of func(int) float64) int {
	return slices.MinFunc(outward(0, n), func(a, b int) int { return cmp.Compare(of(a), of(b)) })
}

func (s *Standing) largest() units.Length {
	largest := units.Length(0)
	for i := range s.Feet {
		by := s.Feet[i].By
		largest = max(largest, by.Horizontal, -by.Horizontal, by.Vertical, -by.Vertical)
	}
	return largest
}

// outward lists n machines by their distance from start, of two that are equally
// far the earlier first.
func outward(start, n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(max(a-start, start-a), max(b-start, start-b)) })
	return list
}

// towards returns the neighbour of machine i on the side of another.
func towards(i, other int) int { return i + cmp.Compare(other, i) }

// LeastStep is the size from which on a move is a step. Solvers leave as much where a
// foot could as well stay, and no hand makes it.
const LeastStep = 100 * units.Nanometre

// steps lists the moves of the machine from LeastStep on, heights first and the
// larger first.
func (s *Standing) steps() []Step {
	var list []Step
	add := func(plane tolerance.Plane, of func(align.Vector) units.Length) {
		first := len(list)
		for i := range s.Feet {
			if by := of(s.Feet[i].By); max(by, -by) >= LeastStep {
				list = append(list, Step{Machine: s.Machine, Foot: s.Feet[i].Foot.Name, Plane: plane, By: by})
			}
		}
		slices.SortStableFunc(list[first:], func(a, b Step) int { return cmp.Compare(max(b.By, -b.By), max(a.By, -a.By)) })
	}
	add(tolerance.Vertical, func(v align.Vector) units.Length { return v.Vertical })
	add(tolerance.Horizontal, func(v align.Vector) units.Length { return v.Horizontal })
	return list
}
