package align_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// tape makes an input out of bytes.
type tape struct{ fuzzed.Tape }

// number is any float64, or more often one of a size that machines have: only
// those get past the first checks.
func (t *tape) number() float64 {
	switch b := t.Byte(); b % 4 {
	case 0:
		return 0
	case 1:
		return float64(int8(t.Byte())) * 1e6
	case 2:
		return float64(int8(t.Byte()))*1e4 + float64(int8(b))
	}
	return t.Float64()
}

func (t *tape) length() units.Length { return units.Length(t.number()) }

func (t *tape) set() align.Set {
	s := align.Set{Probe: align.Probe{
		Kind: align.Kind(t.Byte() % 11), Carrier: align.Shaft(t.Byte() % 4), Station: t.length(), Radius: t.length(),
		Span: t.length(), Gain: t.number(),
	}}
	if t.Byte()%8 != 0 { // mostly with just the fields that the kind has
		s.Probe = fitting(s.Probe)
	}
	s.View = align.View(t.Byte() % 3)
	s.Sag = t.length()
	for range t.Byte() % 6 {
		s.Readings = append(s.Readings, align.Reading{At: units.Clock(t.number() / 1e6), Value: t.length(), U: t.length()})
	}
	s.U = align.Uncertainty{Reading: t.length(), Station: t.length(), Radius: t.length(), Sag: t.length(), Clock: units.Angle(t.number())}
	return s
}

// fitting keeps of a probe what its kind uses.
func fitting(p align.Probe) align.Probe {
	carrier, station, radius, span, gain, _ := needs(p.Kind)
	if !carrier {
		p.Carrier = 0
	}
	if !station {
		p.Station = 0
	}
	if !radius {
		p.Radius = 0
	}
	if !span {
		p.Span = 0
	}
	if !gain {
		p.Gain = 0
	}
	return p
}

// soundTape is two rims with three readings each.
var soundTape = []byte{
	2,
	1, 1, 1, 40, 0, 0, 0, 1, 0, 0, 3, 0, 0, 0, 1, 90, 1, 1, 0, 1, 166, 1, 2, 0, 0, 0, 0, 0, 0,
	1, 2, 1, 200, 0, 0, 0, 1, 0, 0, 3, 0, 0, 0, 1, 90, 1, 255, 0, 1, 166, 1, 254, 0, 0, 0, 0, 0, 0,
}

// seed is a tape with one set of four readings for each kind; an uncertainty of
// zero millimetres is none.
func seed(view align.View, uncertainty byte, kinds ...align.Kind) []byte {
	raw := []byte{byte(len(kinds))}
	for i, kind := range kinds {
		n := byte(i)
		raw = append(raw, byte(kind), 1+n%2, 1, 40+10*n, 1, 75, 1, 100, 1, 2, 1, byte(view), 0) // up to the sag
		raw = append(raw, 4, 1, 166, 1, n, 0, 1, 0, 1, 3, 0, 1, 45, 1, 7+n, 0, 1, 90, 1, 8, 0)  // at, value, u
		raw = append(raw, 1, uncertainty, 0, 0, 0, 0)
	}
	return raw
}

// seeds has every kind in a fit that is answered, from either end, with and
// without uncertainties.
func seeds() [][]byte {
	list := [][]byte{soundTape}
	for _, kind := range everyKind {
		list = append(list,
			seed(align.FromMovable, 0, align.Rim, align.NearFace, kind),
			seed(align.FromStationary, 2, kind, align.Bore, align.Gap))
	}
	return list
}

// Seeds that were all refused would leave the fuzzer on this side of the checks.
func TestSeedsAreAnswered(t *testing.T) {
	for _, raw := range seeds() {
		sets := setsOf(raw)
		if _, err := align.Fit(sets...); err != nil {
			t.Errorf("%+v: %v", sets, err)
		}
	}
}

func setsOf(raw []byte) []align.Set {
	from := tape{raw}
	sets := make([]align.Set, from.Byte()%5)
	for i := range sets {
		sets[i] = from.set()
	}
	return sets
}

// FuzzFit makes sets from raw bytes. Whatever comes, Fit answers with finite
// numbers or with faults that say where; it never panics.
func FuzzFit(f *testing.F) {
	f.Add([]byte{})
	f.Add(append([]byte{4}, soundTape[1:]...)) // ends too early
	for _, raw := range seeds() {
		f.Add(raw)
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		checkFinite(t, "fuzzed", setsOf(raw))
	})
}
