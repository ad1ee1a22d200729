package pumpset

import (
	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// budget tells what the uncertainty of the moves at one station rests on. The
// squares of its entries add up to that of the whole.
type budget struct {
	Foot    string        `json:"foot"` // the station that is farthest from the coupling
	U       align.Vector  `json:"u"`
	Entries []budgetEntry `json:"entries"`
}

// budgetEntry is the part of one input, in the order in which a crew meets them.
type budgetEntry struct {
	Of  string       `json:"of"`            // an align.Input, "growth", or "foot"
	Set *int         `json:"set,omitempty"` // of the method, where it is an input of the readings
	U   align.Vector `json:"u"`
}

// budget splits up the uncertainty of the moves of a sound state; nothing where
// it is not known.
func (r *Record) budget(f *strict.Faults, m *measured, s *state) *budget {
	if len(*f) > 0 || s.Within == nil {
		return nil
	}
	sets := m.Sets()
	shares, err := align.Budget(sets[:]...)
	f.Adopt(err, m.rename)
	move := farthest(s.Moves)
	b := budget{Foot: move.Foot.Name, U: move.U}
	for _, share := range shares {
		b.add(share.Of.String(), &share.Set, share.Cov.At(move.Foot.X))
	}
	if r.Growth != nil {
		b.add("growth", nil, r.Growth.Target.Cov.At(move.Foot.X))
	}
	tilt := s.Off.Value.Tilt()
	b.add("foot", nil, align.Vector{Horizontal: tilt.Horizontal.Over(move.Foot.U), Vertical: tilt.Vertical.Over(move.Foot.U)})
	return &b
}

func (b *budget) add(of string, set *int, u align.Vector) {
	size := func(l units.Length) units.Length { return max(l, -l) }
	u = align.Vector{Horizontal: size(u.Horizontal), Vertical: size(u.Vertical)}
	if u != (align.Vector{}) {
		b.Entries = append(b.Entries, budgetEntry{of, set, u})
	}
}

// farthest returns the move at the station farthest from the coupling.
func farthest(moves []align.Move) align.Move {
	far := moves[0]
	for _, m := range moves {
		if max(m.Foot.X, -m.Foot.X) > max(far.Foot.X, -far.Foot.X) {
			far = m
		}
	}
	return far
}
