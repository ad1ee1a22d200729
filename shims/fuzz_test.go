package shims_test

import (
	"encoding/binary"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// tape hands out raw bytes as whatever is asked for; at its end all is zero.
type tape []byte

func (t *tape) byte() byte {
	if len(*t) == 0 {
		return 0
	}
	b := (*t)[0]
	*t = (*t)[1:]
	return b
}

// length is mostly one that shims have: others do not get past the first checks.
func (t *tape) length() units.Length {
	switch b := t.byte(); b % 8 {
	case 0:
		return 0
	case 7:
		var raw [8]byte
		for i := range raw {
			raw[i] = t.byte()
		}
		return units.Length(math.Float64frombits(binary.LittleEndian.Uint64(raw[:])))
	case 6:
		return -units.Length(t.byte()) * 10 * um
	case 5:
		return units.Length(t.byte()) * units.Mil
	}
	return units.Length(t.byte()) * 10 * um
}

func (t *tape) pieces() []shims.Piece {
	list := make([]shims.Piece, t.byte()%6)
	for i := range list {
		list[i].Marked = t.length()
		if t.byte()%3 == 0 {
			list[i].Measured = t.length()
		}
		list[i].Count = int(int8(t.byte()))
		if list[i].Count > 5 {
			list[i].Count %= 5
		}
	}
	return list
}

func inputOf(raw []byte) input {
	t := tape(raw)
	in := input{Stock: t.pieces(), Rule: shims.Rule{Error: t.length(), Pieces: int(int8(t.byte())) % 7, Keep: t.length(), Nodes: 2000}}
	for range t.byte() % 5 {
		in.Orders = append(in.Orders, shims.Order{Foot: string(rune('a' + t.byte()%32)), Correction: t.length(), SoftFoot: t.length(), Now: t.pieces()})
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
