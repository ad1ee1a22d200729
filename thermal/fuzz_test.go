package thermal_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// tape makes an input out of bytes.
type tape struct{ fuzzed.Tape }

// number is any float64, or more often a small one times a unit: only those get
// past the first checks.
func (t *tape) number(unit float64) float64 {
	switch t.Byte() % 4 {
	case 0:
		return 0
	case 1, 2:
		return float64(int8(t.Byte())) * unit
	}
	return t.Float64()
}

func (t *tape) length(unit units.Length) units.Length { return units.Length(t.number(float64(unit))) }

func (t *tape) piece() thermal.Piece {
	p := thermal.Piece{
		Height:   t.length(10 * mm),
		Material: thermal.Material{Expansion: units.Expansion(t.number(1e-7)), U: units.Expansion(t.number(1e-8))},
		U:        thermal.Uncertainty{Height: t.length(mm), Temperature: units.TemperatureDifference(t.number(1))},
	}
	spots := t.Byte() % 4
	if spots == 0 {
		p.Rise = units.TemperatureDifference(t.number(3))
		return p
	}
	p.Cold = units.Celsius(t.number(1))
	for range spots {
		p.Profile = append(p.Profile, thermal.Spot{Up: t.length(mm), Running: units.Celsius(t.number(3))})
	}
	return p
}

func (t *tape) pieces() (list []thermal.Piece) {
	for range t.Byte() % 3 {
		list = append(list, t.piece())
	}
	return list
}

func (t *tape) support() thermal.Support {
	s := thermal.Support{X: t.length(10 * mm)}
	ways := t.Byte() % 8
	if ways == 0 || ways&1 != 0 {
		s.Pieces = t.pieces()
	}
	if ways&2 != 0 {
		s.Three, s.Nine, s.Track = t.pieces(), t.pieces(), t.length(10*mm)
	}
	if ways&4 != 0 {
		s.Measured = &thermal.Measured{
			By: align.Vector{Horizontal: t.length(um), Vertical: t.length(um)},
			U:  align.Vector{Horizontal: t.length(um), Vertical: t.length(um)},
		}
	}
	return s
}

func machineOf(raw []byte) (limit units.Length, machine []thermal.Support) {
	from := tape{raw}
	limit = from.length(mm)
	for range from.Byte() % 5 {
		machine = append(machine, from.support())
	}
	return limit, machine
}

// seeds are machines that are answered: two supports of pieces alike; legs that
// differ, with a profile, and a measurement; three measurements.
var seeds = [][]byte{
	{1, 1, 2,
		1, 20, 1, 1, 1, 50, 1, 110, 1, 4, 0, 1, 2, 0, 1, 10,
		1, 70, 1, 1, 1, 50, 1, 110, 1, 4, 0, 1, 2, 0, 1, 20},
	{1, 1, 2,
		1, 20, 2, 1, 1, 50, 1, 110, 1, 4, 1, 2, 0, 2, 1, 15, 1, 50, 1, 20, 1, 90, 1, 30, 1, 1, 50, 1, 110, 1, 4, 0, 1, 3, 0, 1, 10, 1, 60,
		1, 90, 4, 1, 200, 1, 50, 1, 3, 1, 4},
	{1, 1, 3, 1, 20, 4, 1, 1, 1, 50, 0, 1, 3, 1, 50, 4, 1, 2, 1, 60, 0, 0, 1, 90, 4, 1, 3, 1, 75, 1, 1, 1, 2},
}

// Seeds that were all refused would leave the fuzzer on this side of the checks.
func TestSeedsAreAnswered(t *testing.T) {
	for i, raw := range seeds {
		limit, machine := machineOf(raw)
		e, err := thermal.GrowthWithin(limit, machine...)
		if err != nil || e.Cov.Basis != align.Stated || e.Value == (align.Centreline{}) {
			t.Errorf("seed %d: %+v: %+v, %v", i, machine, e, err)
		}
	}
}

// FuzzGrowth makes machines from raw bytes. Whatever comes is answered with
// numbers that can be reckoned with, or refused with faults that say where; it
// never panics.
func FuzzGrowth(f *testing.F) {
	f.Add([]byte{})
	for _, raw := range seeds {
		f.Add(raw)
		f.Add(raw[:len(raw)/2])
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		limit, machine := machineOf(raw)
		e, err := thermal.GrowthWithin(limit, machine...)
		if err != nil {
			faults(t, err)
			if e != (align.Estimate{}) {
				t.Errorf("an answer beside a refusal: %+v", e)
			}
			return
		}
		for _, x := range plain(e.Value) {
			tame(t, x)
		}
		if e.Cov.Basis == align.Unknown {
			return
		}
		for _, x := range plain(e.Cov.Standard()) {
			tame(t, x)
		}
		if _, err := e.Corrections(align.Foot{X: 300 * mm}); err != nil {
			t.Errorf("cannot be corrected for: %v", err)
		}
		for _, s := range machine {
			by, _, err := s.Growth()
			if err != nil {
				faults(t, err)
				continue
			}
			tame(t, float64(by.Horizontal))
			tame(t, float64(by.Vertical))
		}
	})
}

func faults(t *testing.T, err error) {
	t.Helper()
	list := units.Faults(err)
	if len(list) == 0 {
		t.Errorf("an error without a fault: %v", err)
	}
	for _, fault := range list {
		if fault.Code == "" || fault.Want == "" {
			t.Errorf("a fault that does not say what: %+v", fault)
		}
	}
}

func tame(t *testing.T, x float64) {
	t.Helper()
	if !(math.Abs(x) <= 1e15) {
		t.Errorf("answers %v", x)
	}
}

// FuzzFindMaterial asks for whatever.
func FuzzFindMaterial(f *testing.F) {
	for _, name := range []string{"", "steel", "Steel", "\xff", "cast steel, 3 % carbon"} {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, name string) {
		m, err := thermal.FindMaterial(name)
		if err != nil {
			faults(t, err)
		} else if m.Name != name {
			t.Errorf("%q is found as %q", name, m.Name)
		}
	})
}
