package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math/big"
	"slices"
)

// shimsInput is the input of the operation shims, as far as it is verified.
type shimsInput struct {
	Stock []shimPiece `json:"stock"`
	Rule  struct {
		Error  string `json:"error"`
		Pieces int    `json:"pieces"`
		Keep   string `json:"keep"`
	} `json:"rule"`
	Orders []shimsOrder `json:"orders"`
}

type shimsOrder struct {
	Foot       string      `json:"foot"`
	Correction string      `json:"correction"`
	SoftFoot   string      `json:"soft_foot"`
	Now        []shimPiece `json:"now"`
}

type shimPiece struct {
	Marked    string `json:"marked"`
	Measured  string `json:"measured"`
	Thickness string `json:"thickness"` // in answers
	Count     int    `json:"count"`
}

// thickness returns what counts, to the nanometre in millimetres.
func (p shimPiece) thickness(l *lengths) string {
	return toNanometre(l.mm(cmp.Or(p.Thickness, p.Measured, p.Marked))).RatString()
}

// pack counts pieces by their thickness.
type pack map[string]int

func packOf(pieces []shimPiece, l *lengths) pack {
	p := pack{}
	for _, piece := range pieces {
		p[piece.thickness(l)] += piece.Count
	}
	return p
}

func (p pack) count() int {
	n := 0
	for _, count := range p {
		n += count
	}
	return n
}

func (p pack) total() *big.Rat {
	sum := new(big.Rat)
	for thickness, count := range p {
		sum.Add(sum, new(big.Rat).Mul(rational(thickness), new(big.Rat).SetInt64(int64(count))))
	}
	return sum
}

// handled returns how many pieces change on the way from one pack to another.
func (p pack) handled(q pack) int {
	n := 0
	for thickness, count := range p {
		n += max(0, count-q[thickness])
	}
	for thickness, count := range q {
		n += max(0, count-p[thickness])
	}
	return n
}

// rankOfPacks is how good a choice is: five numbers, of which the first that differs
// decides.
type rankOfPacks struct {
	short, excess *big.Rat
	pieces        int
	errors        *big.Rat
	handling      int
}

func (r rankOfPacks) String() string {
	mm := func(x *big.Rat) string { return x.FloatString(6) + " mm" }
	return fmt.Sprintf("short of keep %s, beyond the error %s, pieces %d, errors %s, handled %d",
		mm(r.short), mm(r.excess), r.pieces, mm(r.errors), r.handling)
}

// verifyShims asks that every pack can be made, and that the choice ranks as
// the best does.
func verifyShims(v vector, result json.RawMessage) []difference {
	var in shimsInput
	var out struct {
		Stacks []stack `json:"stacks"`
	}
	var best struct {
		Short, Excess, Error string
		Pieces, Handling     int
	}
	if err := decodeAll(v.Input, &in, result, &out, v.Verify, &best); err != nil {
		return junk("/stacks", misread(err), "stacks as the protocol has them")
	}
	var l lengths
	packs := map[string]pack{}
	for _, s := range out.Stacks {
		if why := in.fault(s, packs); why != "" {
			return junk("/stacks", why, "a stack for each foot of the orders, of pieces with thickness and count")
		}
		packs[s.Foot] = packOf(s.Pieces, &l)
	}
	if d := append(l.differences("/stacks"), in.cannot(packs, &l)...); d != nil {
		return d
	}
	want := rankOfPacks{l.mm(best.Short), l.mm(best.Excess), best.Pieces, l.mm(best.Error), best.Handling}
	if got := in.rank(packs, &l); got.String() != want.String() {
		return wrong("/stacks", got.String(), want.String())
	}
	return nil
}

// stack is what an answer puts under one foot.
type stack struct {
	Foot   string      `json:"foot"`
	Pieces []shimPiece `json:"pieces"`
}

// fault says in what a stack is none for these orders, beside those before it.
func (in shimsInput) fault(s stack, before map[string]pack) string {
	const mostCount = 1_000_000 // sums of it are still numbers
	isOrder := func(o shimsOrder) bool { return o.Foot == s.Foot }
	isNone := func(p shimPiece) bool { return p.Thickness == "" || p.Count < 0 || p.Count > mostCount }
	switch {
	case !slices.ContainsFunc(in.Orders, isOrder):
		return fmt.Sprintf("no order for foot %q", s.Foot)
	case before[s.Foot] != nil:
		return fmt.Sprintf("foot %q twice", s.Foot)
	case slices.ContainsFunc(s.Pieces, isNone):
		return fmt.Sprintf("foot %q: a piece without thickness, or a count that is none", s.Foot)
	}
	return ""
}

// cannot says why packs cannot be made: for a foot there is none, or too many
// pieces, or pieces are used that are not there.
func (in shimsInput) cannot(packs map[string]pack, l *lengths) []difference {
	there := packOf(in.Stock, l)
	most := in.Rule.Pieces
	if most == 0 {
		most = 4
	}
	var d []difference
	used := pack{}
	for _, o := range in.Orders {
		for thickness, count := range packOf(o.Now, l) {
			there[thickness] += count
		}
		p, given := packs[o.Foot]
		if !given || p.count() > most {
			d = append(d, wrong("/stacks", fmt.Sprintf("foot %s: %d pieces", o.Foot, p.count()), fmt.Sprintf("a pack of at most %d", most))...)
		}
		for thickness, count := range p {
			used[thickness] += count
		}
	}
	for thickness, count := range used {
		if count > there[thickness] {
			d = append(d, wrong("/stacks", fmt.Sprintf("%d pieces of %s mm", count, thickness), fmt.Sprintf("at most the %d that are there", there[thickness]))...)
		}
	}
	return d
}

// rank says how good packs are.
func (in shimsInput) rank(packs map[string]pack, l *lengths) rankOfPacks {
	allowed, keep := l.or(in.Rule.Error, "0.0254 mm"), l.mm(in.Rule.Keep)
	r := rankOfPacks{short: new(big.Rat), excess: new(big.Rat), errors: new(big.Rat)}
	for _, o := range in.Orders {
		now, p := packOf(o.Now, l), packs[o.Foot]
		wanted := toNanometre(new(big.Rat).Add(now.total(), new(big.Rat).Add(l.mm(o.Correction), l.mm(o.SoftFoot))))
		off := new(big.Rat).Sub(p.total(), wanted)
		off.Abs(off)
		r.short.Add(r.short, above(keep, p.total()))
		r.excess.Add(r.excess, above(off, allowed))
		r.pieces += p.count()
		r.errors.Add(r.errors, off)
		r.handling += now.handled(p)
	}
	return r
}

// above returns by how much a is above b, or zero.
func above(a, b *big.Rat) *big.Rat {
	d := new(big.Rat).Sub(a, b)
	if d.Sign() < 0 {
		return new(big.Rat)
	}
	return d
}

// toNanometre rounds millimetres to the nanometre, halves away from zero.
func toNanometre(x *big.Rat) *big.Rat { return rational(x.FloatString(6)) }

// decodeAll reads pairs of a document and where it goes.
func decodeAll(pairs ...any) error {
	for i := 0; i < len(pairs); i += 2 {
		if err := json.Unmarshal(pairs[i].(json.RawMessage), pairs[i+1]); err != nil {
			return err
		}
	}
	return nil
}
