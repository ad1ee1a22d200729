package dial_test

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// found lists the faults of an error as "code path", in their order.
func found(err error) []string {
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	return list
}

// twice returns the first entry that stands twice in a list.
func twice(list []string) (string, bool) {
	seen := map[string]bool{}
	for _, entry := range list {
		if seen[entry] {
			return entry, true
		}
		seen[entry] = true
	}
	return "", false
}

// jsonName is the name of a field in JSON.
func jsonName(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}

// pointed returns what a JSON Pointer leads to in a value, going by the names in
// its tags, and whether it leads anywhere.
func pointed(v reflect.Value, pointer string) (reflect.Value, bool) {
	if pointer == "" {
		return v, true
	}
	for step := range strings.SplitSeq(strings.TrimPrefix(pointer, "/"), "/") {
		next, ok := child(v, step)
		if !ok {
			return v, false
		}
		v = next
	}
	return v, true
}

func child(v reflect.Value, step string) (reflect.Value, bool) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if jsonName(v.Type().Field(i)) == step {
				return v.Field(i), true
			}
		}
	case reflect.Slice:
		if i, err := strconv.Atoi(step); err == nil && 0 <= i && i < v.Len() {
			return v.Index(i), true
		}
	}
	return v, false
}

// numbers calls see with the path of every number in v.
func numbers(v reflect.Value, path string, see func(path string)) {
	switch v.Kind() {
	case reflect.Float64:
		see(path)
	case reflect.Struct:
		for i := range v.NumField() {
			numbers(v.Field(i), path+"/"+jsonName(v.Type().Field(i)), see)
		}
	case reflect.Slice:
		for i := range v.Len() {
			numbers(v.Index(i), path+"/"+strconv.Itoa(i), see)
		}
	}
}

// checkPaths tests that every fault leads to a field of the input, and that none
// comes twice.
func checkPaths(t interface {
	Helper()
	Errorf(string, ...any)
}, input any, err error) {
	t.Helper()
	for _, f := range units.Faults(err) {
		if _, ok := pointed(reflect.ValueOf(input), f.Path); !ok {
			t.Errorf("the path %q of %v leads nowhere", f.Path, f)
		}
	}
	if entry, ok := twice(found(err)); ok {
		t.Errorf("%q comes twice", entry)
	}
}

// fullSweep is a sweep with every field set, and the return to its start.
func fullSweep() sweep {
	s := append(fair(), align.Reading{At: 360})
	for i := range s {
		s[i].U = 2 * units.Micrometre
	}
	return s
}

func fullRim(station units.Length) dial.Rim {
	return dial.Rim{
		Station: station, Sag: 20 * units.Micrometre, Radius: 75 * units.Millimetre, Readings: fullSweep(),
		U: align.Uncertainty{Reading: 2 * units.Micrometre, Station: units.Millimetre, Radius: units.Millimetre, Sag: units.Micrometre, Clock: units.Degree},
	}
}

func fullFace() dial.Face {
	return dial.Face{
		Diameter: 150 * units.Millimetre, Sag: -5 * units.Micrometre, Readings: fullSweep(),
		U: align.Uncertainty{Reading: 2 * units.Micrometre, Radius: units.Millimetre, Sag: units.Micrometre, Clock: units.Degree},
	}
}

func fullGap() dial.Gap {
	return dial.Gap{
		Diameter: 150 * units.Millimetre, Readings: fullSweep(),
		U: align.Uncertainty{Reading: 2 * units.Micrometre, Radius: units.Millimetre, Clock: units.Degree},
	}
}

func fullStraightedge() dial.Straightedge {
	return dial.Straightedge{
		On: align.Movable, Station: -40 * units.Millimetre, Readings: fullSweep(),
		U: align.Uncertainty{Reading: 2 * units.Micrometre, Station: units.Millimetre, Clock: units.Degree},
	}
}

// entries are all that this package solves, each with a full and sound input,
// made anew.
var entries = []struct {
	name string
	full func() any // a pointer to a struct
	run  func(any) error
}{
	{"reverse", func() any {
		return &dial.Reverse{CarriedByStationary: fullRim(90 * units.Millimetre), CarriedByMovable: fullRim(-60 * units.Millimetre), Limits: fullLimits}
	}, solve},
	{"rim-face", func() any {
		return &dial.RimFace{Carrier: align.Movable, Rim: fullRim(-50 * units.Millimetre), Face: fullFace(), Limits: fullLimits}
	}, solve},
	{"face-face", func() any {
		return &dial.FaceFace{Span: 800 * units.Millimetre, AtStationary: fullFace(), AtMovable: fullFace(), Limits: fullLimits}
	}, solve},
	{"rim and gap", func() any {
		return &dial.RimGap{Carrier: align.Movable, Rim: fullRim(-50 * units.Millimetre), Gap: fullGap(), Limits: fullLimits}
	}, solve},
	{"straightedge and gap", func() any {
		return &dial.StraightedgeGap{Straightedge: fullStraightedge(), Gap: fullGap(), Limits: fullLimits}
	}, solve},
	{"target", func() any {
		return &dial.Target{
			Station: units.Metre, High: units.Mil, ToThree: units.Mil, Opening: units.Mil, OpenAt: 10, Diameter: units.Inch,
		}
	}, func(input any) error { _, err := input.(*dial.Target).Centreline(); return err }},
	{"without float", func() any {
		in := &pair{A: fullFace(), B: fullFace()}
		for i := range in.B.Readings {
			in.B.Readings[i].At += 180
		}
		return in
	}, func(input any) error { in := input.(*pair); _, err := dial.WithoutFloat(in.A, in.B); return err }},
	{"remove runout", func() any {
		return &swept{T0: 90, Readings: fullSweep(), Runout: sweep{{At: 90, U: 1}, {At: 0, U: 1}, {At: -90, U: 1}, {At: 180, U: 1}}}
	}, func(input any) error {
		in := input.(*swept)
		_, err := dial.RemoveRunout(in.Readings, in.T0, in.Runout)
		return err
	}},
}

var fullLimits = dial.Limits{Miss: units.Millimetre, Return: units.Millimetre}

func solve(input any) error {
	_, err := input.(solver).Solve()
	return err
}

// pair and swept hold the arguments of functions, named as their paths name them.
type (
	pair struct {
		A dial.Face `json:"a"`
		B dial.Face `json:"b"`
	}
	swept struct {
		Readings sweep       `json:"readings"`
		T0       units.Clock `json:"t0"`
		Runout   sweep       `json:"runout"`
	}
)

// unused are the fields that a kind of probe has no use for: whatever stands
// there contradicts the kind.
var unused = map[string][]string{
	"rim-face":             {"/face/u/station"},
	"face-face":            {"/at_stationary/u/station", "/at_movable/u/station"},
	"rim and gap":          {"/gap/u/station", "/gap/u/sag"},
	"straightedge and gap": {"/straightedge/u/radius", "/straightedge/u/sag", "/gap/u/station", "/gap/u/sag"},
	"without float":        {"/a/u/station", "/b/u/station"},
}

// One number that is not finite, in any field of any input, is one fault: it has
// the field's path, and nothing else is blamed for it.
func TestNotFinite(t *testing.T) {
	for _, e := range entries {
		t.Run(e.name, func(t *testing.T) {
			if err := e.run(e.full()); err != nil {
				t.Fatal("the sound one is refused:", err)
			}
			numbers(reflect.ValueOf(e.full()).Elem(), "", func(path string) {
				want := "not_finite " + path
				if slices.Contains(unused[e.name], path) {
					want = "conflict " + path
				}
				for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
					input := e.full()
					field, _ := pointed(reflect.ValueOf(input).Elem(), path)
					field.SetFloat(x)
					if got := found(e.run(input)); len(got) != 1 || got[0] != want {
						t.Errorf("%s = %v: got %q, want only %q", path, x, got, want)
						break // one value of a field says enough
					}
				}
			})
		})
	}
}

// A field that its kind does not use is a fault, not ignored.
func TestUnusedFields(t *testing.T) {
	for _, e := range entries {
		for _, path := range unused[e.name] {
			input := e.full()
			field, ok := pointed(reflect.ValueOf(input).Elem(), path)
			if !ok {
				t.Fatalf("%s has no %s", e.name, path)
			}
			field.SetFloat(1000)
			if got, want := found(e.run(input)), "conflict "+path; len(got) != 1 || got[0] != want {
				t.Errorf("%s, %s: got %q, want only %q", e.name, path, got, want)
			}
		}
	}
}

// One number that is far from anything on this planet is one fault as well, at its
// own field. A position is left out: 1e300 degrees is a place on the clock, though
// a strange one, and may contradict another.
func TestTooLarge(t *testing.T) {
	for _, e := range entries {
		numbers(reflect.ValueOf(e.full()).Elem(), "", func(path string) {
			if strings.HasSuffix(path, "/at") {
				return
			}
			input := e.full()
			field, _ := pointed(reflect.ValueOf(input).Elem(), path)
			field.SetFloat(1e300)
			if all := units.Faults(e.run(input)); len(all) != 1 || all[0].Path != path {
				t.Errorf("%s, %s = 1e300: got %v, want one fault at that path", e.name, path, found(e.run(input)))
			}
		})
	}
}
