package adapter

import (
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

type shimsInput struct {
	Stock  []shim      `json:"stock"`
	Rule   shimRule    `json:"rule,omitzero"`
	Orders []shimOrder `json:"orders"`
}

// shim is one kind of piece. What was measured counts.
type shim struct {
	Marked   *units.Length `json:"marked,omitzero"`
	Measured *units.Length `json:"measured,omitzero"`
	Count    int           `json:"count"`
}

type shimRule struct {
	Error  *units.Length `json:"error,omitzero"`
	Pieces *int          `json:"pieces,omitzero"`
	Keep   units.Length  `json:"keep,omitzero"`
}

type shimOrder struct {
	Foot       string       `json:"foot"`
	Correction units.Length `json:"correction"`
	SoftFoot   units.Length `json:"soft_foot,omitzero"`
	Now        []shim       `json:"now,omitzero"`
}

type shimsResult struct {
	Stacks []stack `json:"stacks"`
}

type stack struct {
	Foot   string  `json:"foot"`
	Pieces []layer `json:"pieces"`
}

type layer struct {
	Thickness units.Length `json:"thickness"`
	Count     int          `json:"count"`
}

func choosePacks(in *shimsInput, f *strict.Faults) shimsResult {
	orders := make([]shims.Order, len(in.Orders))
	for i, o := range in.Orders {
		orders[i] = shims.Order{
			Foot: o.Foot, Correction: o.Correction, SoftFoot: o.SoftFoot,
			Now: shimPieces(f, strict.Step("/orders", i)+"/now", o.Now),
		}
	}
	stock, rule := shimPieces(f, "/stock", in.Stock), in.Rule.rule(f)
	if len(*f) > 0 { // no search for what does not count; its faults come all the same
		rule.Nodes = 1
	}
	choice, err := shims.Choose(stock, rule, orders...)
	f.Adopt(err, same)
	return shimsResult{toldStacks(choice.Stacks)}
}

func (r *shimRule) rule(f *strict.Faults) shims.Rule {
	if r.Pieces != nil && *r.Pieces == 0 {
		f.Add(units.OutOfRange, "/rule/pieces", "0", "at least one piece")
	}
	return shims.Rule{Error: limit(r.Error), Pieces: value(r.Pieces), Keep: r.Keep}
}

func shimPieces(f *strict.Faults, path string, list []shim) []shims.Piece {
	all := make([]shims.Piece, len(list))
	for i, s := range list {
		above(f, strict.Step(path, i)+"/marked", s.Marked)
		above(f, strict.Step(path, i)+"/measured", s.Measured)
		all[i] = shims.Piece{Marked: value(s.Marked), Measured: value(s.Measured), Count: s.Count}
	}
	return all
}

// toldStacks counts pieces of one thickness together.
func toldStacks(stacks []shims.Stack) []stack {
	list := make([]stack, len(stacks))
	for i, s := range stacks {
		list[i] = stack{Foot: s.Foot, Pieces: []layer{}}
		for _, p := range s.Pieces {
			list[i].lay(p.Thickness(), p.Count)
		}
	}
	return list
}

func (s *stack) lay(thickness units.Length, count int) {
	for i := range s.Pieces {
		if s.Pieces[i].Thickness == thickness {
			s.Pieces[i].Count += count
			return
		}
	}
	s.Pieces = append(s.Pieces, layer{thickness, count})
}
