package train

import (
	"strconv"
	"strings"

	"example.org/collinear/internal/check"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// shimmed tells whether foot k of machine i can go up or down.
func (t *Train) shimmed(i, k int) bool {
	low, high := t.Machines[i].Feet[k].Vertical.ends()
	return i != t.reference() && (low != 0 || high != 0)
}

// checkShims asks for packs where they are needed, and that they, the stock and the
// rule are sound.
func (t *Train) checkShims(faults *check.Faults, stock shims.Stock, rule shims.Rule) {
	var root check.Path
	var p packCheck
	settled := t.Reference == "" || t.reference() >= 0 // otherwise it is not known which machines move
	machines := root.Field("machines")
	for i := range t.Machines {
		machine := machines.Index(i)
		feet := machine.Field("feet")
		for k := range t.Machines[i].Feet {
			foot := feet.Index(k)
			p.check(faults, foot.Field("under"), t.Machines[i].Feet[k].Under, settled && t.shimmed(i, k))
		}
	}
	if n := len(p.orders); n > shims.MostFeet {
		faults.Add(units.OutOfRange, machines, n, "at most "+strconv.Itoa(shims.MostFeet)+" packs under the feet together")
		p.orders = p.orders[:shims.MostFeet]
	}
	p.adopt(faults, checkOrders(stock, rule, p.orders))
}

// packCheck gathers the packs to check them as package shims does: each is an order
// there, of a foot of its own.
type packCheck struct {
	orders []shims.Order
	paths  []string // of the packs
}

// check walks the packs of a station.
func (p *packCheck) check(faults *check.Faults, at check.Path, packs []Pack, needed bool) {
	if len(packs) == 0 && needed {
		faults.Add(units.Missing, at, nil, "the packs under the single feet of a station that can go up or down")
	}
	for i := range packs {
		pack := at.Index(i)
		taken := func(k int) bool { return packs[k].Name == packs[i].Name }
		checkName(faults, pack.Field("name"), packs[i].Name, i, taken, "a name that no other pack of the station has")
		p.orders = append(p.orders, shims.Order{Foot: strconv.Itoa(len(p.orders)), Now: packs[i].Now})
		p.paths = append(p.paths, pack.String())
	}
}

// checkOrders returns what package shims finds wrong. A choice is its only check, so
// one is made, of a single node.
func checkOrders(stock shims.Stock, rule shims.Rule, orders []shims.Order) error {
	if len(orders) == 0 {
		orders = []shims.Order{{Foot: "none"}} // the stock and the rule are to be looked at as well
	}
	rule = withDefaults(rule)
	rule.Nodes = min(rule.Nodes, 1)
	_, err := shims.Choose(stock, rule, orders...)
	return err
}

// adopt notes the faults, those of an order at the path of its pack.
func (p *packCheck) adopt(faults *check.Faults, err error) {
	for _, fault := range units.Faults(err) {
		moved := *fault
		if rest, found := strings.CutPrefix(fault.Path, "/orders/"); found {
			index, field, _ := strings.Cut(rest, "/")
			if i, err := strconv.Atoi(index); err == nil {
				moved.Path = p.paths[i] + "/" + field
			}
		}
		faults.Append(&moved)
	}
}
