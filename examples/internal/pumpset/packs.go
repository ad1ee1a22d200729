package pumpset

import (
	"strings"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// packs are the shims for all single feet.
type packs struct {
	Orders []shims.Order `json:"orders"`           // in the order of the job's feet
	Choice *shims.Choice `json:"choice,omitempty"` // from the job's stock, if it has one
	Leave  *forecast     `json:"leave,omitempty"`  // what the choice comes to, where that can be told
}

// packs joins what every single foot needs for the alignment and for soft foot,
// and lays it from the stock.
func (r *Record) packs(f *strict.Faults, limits *judge) *packs {
	j := &r.Job
	if j.Shims != nil && j.SingleFeet == nil {
		f.Add(units.Missing, "/single_feet", "", "the single feet under which the shims go")
	}
	if j.SingleFeet == nil {
		return nil
	}
	p := packs{Orders: []shims.Order{}}
	for i := range j.SingleFeet.Feet {
		p.Orders = append(p.Orders, r.order(&j.SingleFeet.Feet[i]))
	}
	box, rule := j.Shims.shims()
	choice, err := shims.Choose(box, rule, p.Orders...)
	f.Adopt(err, renamePacks)
	if j.Shims == nil {
		return &p // the packs under the feet are sound, and that is all
	}
	for i := range choice.Warnings {
		w := &choice.Warnings[i]
		w.Path = renamePacks(w.Path)
	}
	p.Choice = &choice
	p.Leave = r.forecast(f, limits, choice.Stacks)
	return &p
}

// order is what one foot needs.
func (r *Record) order(foot *singleFoot) shims.Order {
	o := shims.Order{Foot: string(foot.Name), SoftFoot: r.flat(foot.Name), Now: pieces(foot.Pack)}
	if k := r.Job.Tape.named(foot.Station); k >= 0 && k < len(r.Found.Moves) {
		o.Correction = r.Found.Moves[k].By.Vertical
	}
	return o
}

func pieces(list []piece) []shims.Piece {
	var out []shims.Piece
	for _, p := range list {
		out = append(out, p.shims())
	}
	return out
}

func (p piece) shims() shims.Piece {
	return shims.Piece{Marked: p.Marked.Value, Measured: p.Measured.Value, Count: int(p.Count.Value)}
}

func (s *stock) shims() (shims.Stock, shims.Rule) {
	if s == nil {
		return nil, shims.Rule{}
	}
	return pieces(s.Stock), shims.Rule{Error: s.Error.Value, Pieces: int(s.Pieces.Value), Keep: s.Keep.Value}
}

// check refuses zeros that the library would take for its defaults.
func (s *stock) check(f *strict.Faults) {
	if s == nil {
		return
	}
	if len(s.Stock) == 0 {
		f.Add(units.Missing, "/shims/stock", "", "at least one piece")
	}
	checkPieces(f, "/shims/stock", s.Stock)
	if s.Error.given() {
		positive(f, "/shims/error", s.Error, "an error")
	}
	if s.Pieces.given() && s.Pieces.Value == 0 {
		f.Add(units.OutOfRange, "/shims/pieces", s.Pieces.text, "at least one piece")
	}
}

// renamePacks returns where in the job a fault of the choice stands.
func renamePacks(of string) string {
	if rest, mine := strings.CutPrefix(of, "/rule"); mine {
		return "/shims" + rest
	}
	rest, mine := strings.CutPrefix(of, "/orders")
	if !mine {
		return "/shims" + of
	}
	i, field, _ := strings.Cut(strings.TrimPrefix(rest, "/"), "/")
	here := strings.TrimSuffix("/single_feet/feet/"+i, "/")
	switch {
	case field == "foot":
		return here + "/name"
	case field == "now", strings.HasPrefix(field, "now/"):
		return here + "/pack" + strings.TrimPrefix(field, "now")
	}
	return here
}
