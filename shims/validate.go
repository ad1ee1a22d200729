package shims

import (
	"math"
	"strconv"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// checkInput walks the whole input, with paths from /stock, /rule and /orders.
func checkInput(stock Stock, rule Rule, orders []Order) error {
	var faults check.Faults
	var root check.Path
	room := wholeRoom
	checkPieces(&faults, root.Field("stock"), stock, 0, &room)
	checkRule(&faults, root.Field("rule"), rule)
	list := root.Field("orders")
	if len(orders) == 0 {
		faults.Add(units.Missing, list, nil, "at least one order")
	} else if len(orders) > MostFeet {
		faults.Add(units.OutOfRange, list, len(orders), "at most "+strconv.Itoa(MostFeet)+" orders")
		return faults.Err()
	}
	for i := range orders {
		checkOrder(&faults, list.Index(i), &orders[i], &room)
		if named(orders[:i], orders[i].Foot) {
			at := list.Index(i)
			faults.Add(units.Duplicate, at.Field("foot"), orders[i].Foot, "a name that no other foot has")
		}
	}
	return faults.Err()
}

// named tells whether one of the orders is for this foot; no name is none.
func named(orders []Order, foot string) bool {
	for i := range orders {
		if foot != "" && orders[i].Foot == foot {
			return true
		}
	}
	return false
}

// room is how many more rows and pieces the input may have.
type room struct{ rows, pieces int }

var wholeRoom = room{MostRows, MostCount}

// checkPieces walks a list of pieces, of each of which there are at least so
// many, and takes them off what there is room for.
func checkPieces(faults *check.Faults, at check.Path, pieces []Piece, least int, room *room) {
	if len(pieces) > room.rows {
		faults.Add(units.OutOfRange, at, len(pieces), "at most "+strconv.Itoa(MostRows)+" rows in the stock and under the feet together")
		return
	}
	room.rows -= len(pieces)
	for i := range pieces {
		checkPiece(faults, at.Index(i), &pieces[i], least, room)
	}
}

func checkPiece(faults *check.Faults, at check.Path, p *Piece, least int, room *room) {
	checkThickness(faults, at, p)
	switch count := at.Field("count"); {
	case p.Count < 0:
		faults.Add(units.OutOfRange, count, p.Count, "a count not below zero")
	case p.Count < least:
		faults.Add(units.Missing, count, p.Count, "how many of these lie there")
	case p.Count > room.pieces:
		faults.Add(units.OutOfRange, count, p.Count, "at most "+strconv.Itoa(MostCount)+" pieces in the stock and under the feet together")
	default:
		room.pieces -= p.Count
	}
}

// checkThickness asks that the thickness that counts is above zero and a whole
// number of nanometres. A mark beside a measure is a name, but a sound one.
func checkThickness(faults *check.Faults, at check.Path, p *Piece) {
	marked, measured := at.Field("marked"), at.Field("measured")
	if p.Measured == 0 {
		if check.Positive(faults, marked, p.Marked, "a thickness") {
			checkWhole(faults, marked, p.Marked)
		}
		return
	}
	if check.NotNegative(faults, marked, p.Marked, "a thickness") {
		checkLimit(faults, marked, p.Marked)
	}
	if check.Positive(faults, measured, p.Measured, "a thickness") {
		checkWhole(faults, measured, p.Measured)
	}
}

func checkWhole(faults *check.Faults, at check.Path, l units.Length) {
	if checkLimit(faults, at, l) && float64(l) != math.Trunc(float64(l)) {
		faults.Add(units.OutOfRange, at, l, "a whole number of nanometres: round the thickness first")
	}
}

func checkLimit(faults *check.Faults, at check.Path, l units.Length) bool {
	if l > Thickest {
		faults.Add(units.OutOfRange, at, l, "at most "+Thickest.String())
		return false
	}
	return true
}

func checkRule(faults *check.Faults, at check.Path, r Rule) {
	if field := at.Field("error"); check.NotNegative(faults, field, r.Error, "an error") {
		checkLimit(faults, field, r.Error)
	}
	if field := at.Field("keep"); check.NotNegative(faults, field, r.Keep, "a total to keep") {
		checkLimit(faults, field, r.Keep)
	}
	if r.Pieces < 0 || r.Pieces > MostPieces {
		faults.Add(units.OutOfRange, at.Field("pieces"), r.Pieces, "a number of pieces from 1 to "+strconv.Itoa(MostPieces)+", or zero for the default")
	}
	if r.Nodes < 0 {
		faults.Add(units.OutOfRange, at.Field("nodes"), r.Nodes, "a number of nodes above zero, or zero for the default")
	}
}

func checkOrder(faults *check.Faults, at check.Path, o *Order, room *room) {
	before := faults.Len()
	if o.Foot == "" {
		faults.Add(units.Missing, at.Field("foot"), nil, "the name of the foot")
	}
	check.Finite(faults, at.Field("correction"), o.Correction)
	check.Finite(faults, at.Field("soft_foot"), o.SoftFoot)
	checkPieces(faults, at.Field("now"), o.Now, 1, room)
	if faults.Len() > before {
		return // the totals would be of no use
	}
	if total := totalOf(o.Now); total > Thickest {
		faults.Add(units.OutOfRange, at.Field("now"), total, "a pack of at most "+Thickest.String())
	} else if wanted := o.wanted(); wanted > Thickest || wanted < -Thickest {
		faults.Add(units.OutOfRange, at.Field("correction"), o.Correction, "a total under the foot of at most "+Thickest.String()+" either way")
	}
}

// totalOf returns the thickness of a pack. Whole nanometres, it is exact.
func totalOf(pack []Piece) units.Length {
	sum := units.Length(0)
	for _, p := range pack {
		sum += units.Length(float64(p.Thickness() * units.Length(p.Count)))
	}
	return sum
}

// wanted returns the total that is to lie under the foot: what lies there now
// and the change, rounded to the nanometre.
func (o *Order) wanted() units.Length {
	return (totalOf(o.Now) + o.Correction + o.SoftFoot).Round(units.Nanometre)
}
