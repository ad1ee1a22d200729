package shims_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/shims"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// tape makes an input out of bytes.
type tape struct{ fuzzed.Tape }

// length is mostly one that shims have: others do not get past the first checks.
func (t *tape) length() units.Length {
	switch b := t.Byte(); b % 8 {
	case 0:
		return 0
	case 7:
		return units.Length(t.Float64())
	case 6:
		return -units.Length(t.Byte()) * 10 * um
	case 5:
		return units.Length(t.Byte()) * units.Mil
	}
	return units.Length(t.Byte()) * 10 * um
}

func (t *tape) pieces() []shims.Piece {
	list := make([]shims.Piece, t.Byte()%6)
	for i := range list {
		list[i].Marked = t.length()
		if t.Byte()%3 == 0 {
			list[i].Measured = t.length()
		}
		list[i].Count = int(int8(t.Byte()))
		if list[i].Count > 5 {
			list[i].Count %= 5
		}
	}
	return list
}

func inputOf(raw []byte) input {
	t := tape{raw}
	in := input{Stock: t.pieces(), Rule: shims.Rule{Error: t.length(), Pieces: int(int8(t.Byte())) % 7, Keep: t.length(), Nodes: 2000}}
	for range t.Byte() % 5 {
		in.Orders = append(in.Orders, shims.Order{Foot: string(rune('a' + t.Byte()%32)), Correction: t.length(), SoftFoot: t.length(), Now: t.pieces()})
	}
	return in
}

// soundTape has three sizes in stock, and two feet, one of them on a pack.
var soundTape = []byte{
	3, 1, 5, 1, 4, 1, 10, 1, 3, 1, 100, 0, 1, 99, 2,
	1, 3, 4, 0,
	2, 0, 1, 115, 0, 0, 1, 6, 20, 0, 1, 1, 100, 1, 1,
}

func TestSoundTapeIsAnswered(t *testing.T) {
	if in := inputOf(soundTape); len(in.Stock) != 3 || len(in.Orders) != 2 || len(in.Orders[1].Now) != 1 {
		t.Errorf("%+v", in)
	} else if c, err := in.choose(); err != nil || !c.Proven {
		t.Errorf("%+v, %v", c, err)
	}
}

// FuzzChoose makes problems from raw bytes. Whatever comes, Choose answers with
// something that can be laid, or with faults that say where; it never panics, and
// a proven answer to a small problem costs what trying everything costs.
func FuzzChoose(f *testing.F) {
	f.Add([]byte{})
	f.Add(soundTape)
	f.Fuzz(func(t *testing.T, raw []byte) {
		in := inputOf(raw)
		c, err := in.choose()
		if err != nil {
			if !cmp.Equal(c, shims.Choice{}) {
				t.Errorf("an answer and %v", err)
			}
			for _, fault := range units.Faults(err) {
				if fault.Want == "" || !strings.HasPrefix(fault.Path, "/") {
					t.Errorf("%+v", fault)
				}
			}
			return
		}
		checkChoice(t, in.Stock, in.Rule, in.Orders, c)
		b := newBrute(in.Stock, in.Rule, in.Orders)
		if c.Proven && len(in.Orders) <= 2 && len(b.kinds) <= 4 && b.rule.Pieces <= 3 {
			want, _ := b.best()
			if cost := costOf(in.Rule, in.Orders, c); slices.Compare(cost[:], want[:]) != 0 {
				t.Errorf("costs %v, want %v: %+v", cost, want, in)
			}
		}
	})
}

// FuzzReadStock reads anything. What is read can be chosen from, and what is not
// comes back as faults.
func FuzzReadStock(f *testing.F) {
	f.Add("marked (mm),measured (mm),count\n0.05,0.052,10\n0.10,,8\n")
	f.Add("count,marked (in)\n3,1/64\n")
	f.Add("marked (mm),count\n\"1\n,1\n")
	f.Fuzz(func(t *testing.T, text string) {
		stock, err := shims.ReadStock(strings.NewReader(text))
		if err != nil {
			if stock != nil || len(units.Faults(err)) == 0 {
				t.Errorf("%v, %v", stock, err)
			}
			return
		}
		if _, err := shims.Choose(stock, shims.Rule{Nodes: 1000}, shims.Order{Foot: "a", Correction: mm}); err != nil {
			t.Errorf("%v from %q: %v", stock, text, err)
		}
	})
}
