package dial_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// floats is how far the movable shaft stands along its axis when dial a is at a
// clock position, in millimetres. It is no harmonic, and far larger than what the
// slope shows.
func floats(clock float64) float64 {
	return 0.4*math.Sin(clock*math.Pi/180) + 0.3*math.Cos(clock*math.Pi/90) + clock/500
}

// Two dials half a turn apart, on one carrier and one side, read together at each
// place: the shaft floats, both droop, radii differ, and the pair sees the slope
// alone.
func TestFloatDropsOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bare := spanning(methods[1].draw(t), drawLength(t, "span", 200, 800), 1).(dial.RimFace)
		a, b := bare.Face, drawFace(t)
		b.Far = a.Far
		want := drawWithin(t, units.Millimetre, 2*units.MillimetrePerMetre)
		at := func(places []units.Clock, by units.Clock) []units.Clock {
			var moved []units.Clock
			for _, p := range places {
				moved = append(moved, p+by)
			}
			return moved
		}
		dialOf := func(f dial.Face, behind float64, places []units.Clock) sweep {
			bare.Face = f
			set := bare.Sets()[1]
			i := instrument(set, 0)
			i.Float = func(clock float64) float64 { return floats(math.Mod(clock-behind+720, 360)) }
			s := read(i, want, set.View, places...)
			for n := range s {
				s[n].Value += units.Millimetre // a zero of its own
			}
			return s
		}
		places := drawPlaces(t)
		a.Readings, b.Readings = dialOf(a, 0, places), dialOf(b, 180, at(places, -180))
		pair, err := dial.WithoutFloat(a, b)
		if err != nil {
			t.Fatal(err)
		}
		bare.Face = pair
		bare.Rim.Readings = read(instrument(bare.Sets()[0], 100*units.Millimetre), want, bare.View, quarters...)
		got := solved(t, bare)
		if by := differ(bare.Sets(), got.Value, want); !(by <= 10*units.Nanometre) {
			t.Errorf("off by %v:\n got %+v\nwant %+v", by, got.Value, want)
		}
		if miss := got.Checks[1].Miss; !got.Checks[1].Completed && max(miss, -miss) > 10*units.Nanometre {
			t.Errorf("the pair misses the validity rule by %v", miss)
		}
	})
}

// By hand, whole nanometres: the float of each reading is in both dials and is
// gone without a trace. r = a - b, D = 120 + 80, sag 2 + 3, u = hypot(3, 4); the
// radius of the pair is the sum of both, and its uncertainty hypot(5, 12).
func TestFloatByHand(t *testing.T) {
	float := []units.Length{0, 700, -12345, 999_999}
	clean := []units.Length{500, 400, 300, 200}
	a := dial.Face{
		Diameter: 120 * units.Millimetre, Far: true, Sag: 2,
		U: align.Uncertainty{Reading: 3, Radius: 5, Sag: 8, Clock: 0.01},
	}
	b := dial.Face{
		Diameter: 80 * units.Millimetre, Far: true, Sag: 3,
		U: align.Uncertainty{Reading: 4, Radius: 12, Sag: 15, Clock: 0.02},
	}
	want := dial.Face{
		Diameter: 200 * units.Millimetre, Far: true, Sag: 5,
		U: align.Uncertainty{Reading: 5, Radius: 13, Sag: 17, Clock: 0.02},
	}
	for i, at := range []units.Clock{0, 90, 180, 270} {
		a.Readings = append(a.Readings, align.Reading{At: at, Value: clean[i] + float[i]})
		b.Readings = append(b.Readings, align.Reading{At: at.Opposite(), Value: 77 + float[i]})
		want.Readings = append(want.Readings, align.Reading{At: at, Value: clean[i] - 77})
	}
	got, err := dial.WithoutFloat(a, b)
	if err != nil {
		t.Fatal(err)
	}
	for i := range got.Readings { // wherever the uncertainty of a reading stands
		got.Readings[i].U = effective(got, i)
		want.Readings[i].U = 5
	}
	got.U.Reading = want.U.Reading
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// effective is the uncertainty of a reading: its own, or that of its set.
func effective(f dial.Face, i int) units.Length {
	if u := f.Readings[i].U; u != 0 {
		return u
	}
	return f.U.Reading
}

// The uncertainty of a reading that states none is that of its set, for each of
// the two dials: what counts of a pair is hypot of both, wherever each stands.
func TestFloatCombinesUncertaintyWhereverItStands(t *testing.T) {
	for _, row := range []struct {
		name           string
		readingA, setA units.Length
		readingB, setB units.Length
		want           units.Length
	}{
		{"both in the set", 0, 3, 0, 4, 5},
		{"both with the readings", 3, 0, 4, 0, 5},
		{"one with the readings, one in the set", 3, 0, 0, 4, 5},
		{"one in the set, one with the readings", 0, 3, 4, 0, 5},
		{"a reading's own comes before its set's", 3, 100, 4, 100, 5},
	} {
		face := func(turned units.Clock, reading, set units.Length) dial.Face {
			f := dial.Face{Diameter: 100 * units.Millimetre, U: align.Uncertainty{Reading: set}}
			for i, at := range quarters {
				f.Readings = append(f.Readings, align.Reading{At: at + turned, Value: units.Length(1000 * i * i), U: reading})
			}
			return f
		}
		pair, err := dial.WithoutFloat(face(0, row.readingA, row.setA), face(180, row.readingB, row.setB))
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
			continue
		}
		for i, r := range pair.Readings {
			if got := effective(pair, i); got != row.want {
				t.Errorf("%s: the reading at %v has u = %v, want %v", row.name, r.At, got, row.want)
			}
		}
	}
}

// Where one dial states an uncertainty and the other none, that of the pair is not
// known. It may be refused, as the general fit refuses such sets, but not be taken
// for the one that was stated.
func TestFloatOfUnknownUncertainty(t *testing.T) {
	a := dial.Face{Diameter: 100 * units.Millimetre, Readings: fair(), U: align.Uncertainty{Reading: 5}}
	b := dial.Face{Diameter: 100 * units.Millimetre, Readings: fair()}
	for i := range b.Readings {
		b.Readings[i].At += 180
	}
	for name, faces := range map[string][2]dial.Face{"first states": {a, b}, "second states": {b, a}} {
		pair, err := dial.WithoutFloat(faces[0], faces[1])
		if err != nil {
			continue
		}
		for i := range pair.Readings {
			if u := effective(pair, i); u != 0 {
				t.Errorf("%s: reading %d claims u = %v", name, i, u)
				break
			}
		}
	}
}
