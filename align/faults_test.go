package align_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// A located entry point names, in a fault, the very field of its input; the
// fields of these structs are called what its documentation calls them.
type located struct {
	name  string
	input func() any // a pointer to an input that is sound, made anew
	call  func(input any) error
}

type (
	predictFields struct {
		Probe      align.Probe
		Sag        units.Length
		Centreline align.Centreline
		At         []units.Clock
	}
	gapFields struct {
		Diameter   units.Length
		Centreline align.Centreline
	}
	spanFields struct {
		Span       units.Length
		Centreline align.Centreline
	}
	tiltFields struct {
		Span                units.Length
		Stationary, Movable align.Tilt
	}
)

func locatedEntries() []located {
	list := []located{
		{"Corrections", func() any {
			return &feetInput{caseA, []align.Foot{{Name: "a", X: 300 * mm, U: mm}, {Name: "b", X: 900 * mm, U: mm}}}
		}, func(in any) error {
			f := in.(*feetInput)
			_, err := align.Exact(f.Value).Corrections(f.Feet...)
			return err
		}},
		{"Gap", func() any { return &gapFields{150 * mm, caseA} }, func(in any) error {
			g := in.(*gapFields)
			_, _, err := align.Coupling{Diameter: g.Diameter}.Gap(g.Centreline)
			return err
		}},
		{"FlexTilts", func() any { return &spanFields{800 * mm, caseA} }, func(in any) error {
			f := in.(*spanFields)
			_, _, err := align.Coupling{Span: f.Span}.FlexTilts(f.Centreline)
			return err
		}},
		{"FromFlexTilts", func() any { return &tiltFields{800 * mm, caseA.Tilt(), caseA.Tilt()} }, func(in any) error {
			f := in.(*tiltFields)
			_, err := align.Coupling{Span: f.Span}.FromFlexTilts(f.Stationary, f.Movable)
			return err
		}},
	}
	for _, kind := range everyKind {
		s := soundSet(kind)
		list = append(list, located{"Predict of a " + kind.String(), func() any {
			return &predictFields{s.Probe, s.Sag, caseA, []units.Clock{45, 90}}
		}, func(in any) error {
			p := in.(*predictFields)
			_, err := align.Set{Probe: p.Probe, Sag: p.Sag}.Predict(p.Centreline, p.At...)
			return err
		}})
	}
	return list
}

// NaN and the infinities, in every field of every input, are one fault each, at
// that field: not finite, or in conflict with a kind that has no use for it.
func TestFaultNamesTheNumber(t *testing.T) {
	for _, e := range locatedEntries() {
		t.Run(e.name, func(t *testing.T) {
			if err := e.call(e.input()); err != nil {
				t.Fatalf("the sound input is refused: %v", err)
			}
			for i, n := range numbers("", reflect.ValueOf(e.input())) {
				for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
					input := e.input()
					field := numbers("", reflect.ValueOf(input))[i].value
					code := units.NotFinite
					if field.Float() == 0 && !optionalRadius(e.name, n.path) { // the sound input has all that its kind uses
						code = units.Conflict
					}
					field.SetFloat(bad)
					got, want := codesAndPaths(e.call(input)), string(code)+" "+n.path
					if !slices.Equal(got, []string{want}) {
						t.Errorf("%v at %s: got %v, want just %s", bad, n.path, got, want)
					}
				}
			}
		})
	}
}

// optionalRadius tells whether this is the radius that a rim or a bore may give
// and the sound input does not.
func optionalRadius(entry, path string) bool {
	return path == "/probe/radius" && (strings.HasSuffix(entry, " rim") || strings.HasSuffix(entry, " bore"))
}

// Any number of fields can be wrong together: each is told of, once.
func TestEveryWrongNumberIsToldOf(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		input := full(t).(*setsInput)
		var want []string
		for _, n := range numbers("", reflect.ValueOf(input)) {
			if n.value.Float() != 0 && rapid.IntRange(0, 9).Draw(t, n.path) == 0 {
				n.value.SetFloat(math.NaN())
				want = append(want, "not_finite "+n.path)
			}
		}
		_, err := align.Fit(input.Sets...)
		slices.Sort(want)
		if diff := cmp.Diff(want, codesAndPaths(err)); diff != "" {
			t.Errorf("faults (-want +got):\n%s", diff)
		}
	})
}

// One set on its own is judged as Fit judges it, with paths from the set.
func TestValidateIsFitOfOneSet(t *testing.T) {
	for i, s := range full(t).(*setsInput).Sets {
		t.Run(s.Probe.Kind.String(), func(t *testing.T) {
			if err := s.Validate(); err != nil {
				t.Fatalf("the sound set is refused: %v", err)
			}
			for n, field := range numbers("", reflect.ValueOf(&s)) {
				for _, bad := range []float64{math.NaN(), -1, 1e300} {
					sets := full(t).(*setsInput).Sets
					numbers("", reflect.ValueOf(&sets[i]))[n].value.SetFloat(bad)
					want := belowSet(sets, i)
					if got := codesAndPaths(sets[i].Validate()); !slices.Equal(got, want) {
						t.Errorf("%v at %s: got %v, Fit says %v", bad, field.path, got, want)
					}
				}
			}
		})
	}
}

// belowSet lists what Fit has against one of the sets, with paths from the set.
func belowSet(sets []align.Set, i int) []string {
	_, err := align.Fit(sets...)
	prefix := fmt.Sprintf(" /sets/%d/", i)
	var list []string
	for _, fault := range codesAndPaths(err) {
		list = append(list, strings.Replace(fault, prefix, " /", 1))
	}
	return list
}

// Readings with and without an uncertainty in one set are in conflict there.
func TestValidateAsksForAllOrNone(t *testing.T) {
	s := read(t, caseA, reverse(), quarters...)[0]
	s.Readings[2].U = 5 * um
	if got := codesAndPaths(s.Validate()); !slices.Equal(got, []string{"conflict /readings"}) {
		t.Errorf("got %v", got)
	}
	s.U.Reading = 4 * um
	if err := s.Validate(); err != nil {
		t.Errorf("the twin is refused: %v", err)
	}
}

// What Predict looks at it refuses as Fit does; each with a twin that passes.
func TestPredictRefuses(t *testing.T) {
	rows := []struct {
		name      string
		kind      align.Kind
		bad, twin func(*align.Set)
		want      []string
	}{
		{"no kind", align.Rim, func(s *align.Set) { s.Probe.Kind = 0 }, nil, []string{"missing /probe/kind"}},
		{"a kind that does not exist", align.Rim, func(s *align.Set) { s.Probe.Kind = 10 }, nil, []string{"out_of_range /probe/kind"}},
		{"no carrier", align.NearFace, func(s *align.Set) { s.Probe.Carrier = 0 }, nil, []string{"missing /probe/carrier"}},
		{"a carrier that does not exist", align.Rim, func(s *align.Set) { s.Probe.Carrier = 3 }, nil, []string{"out_of_range /probe/carrier"}},
		{"a carrier of a gap", align.Gap, func(s *align.Set) { s.Probe.Carrier = align.Movable }, nil, []string{"conflict /probe/carrier"}},
		{"a carrier of a sensor", align.Displacement, func(s *align.Set) { s.Probe.Carrier = align.Stationary }, nil, []string{"conflict /probe/carrier"}},
		{"no radius", align.FarFace, func(s *align.Set) { s.Probe.Radius = 0 }, nil, []string{"missing /probe/radius"}},
		{"a radius below zero", align.Gap, func(s *align.Set) { s.Probe.Radius *= -1 }, nil, []string{"out_of_range /probe/radius"}},
		{"no span", align.SpacerFarFace, func(s *align.Set) { s.Probe.Span = 0 }, nil, []string{"missing /probe/span"}},
		{"no gain", align.Displacement, func(s *align.Set) { s.Probe.Gain = 0 }, func(s *align.Set) { s.Probe.Gain = 1e-6 }, []string{"missing /probe/gain"}},
		{"a bracket that rises", align.Rim, func(s *align.Set) { s.Sag *= -1 }, func(s *align.Set) { s.Sag = 0 }, []string{"out_of_range /sag"}},
		{"sag of a straightedge", align.Straightedge, func(s *align.Set) { s.Sag = um }, nil, []string{"conflict /sag"}},
		{"a view that does not exist", align.Bore, func(s *align.Set) { s.View = 2 }, func(s *align.Set) { s.View = 1 }, []string{"out_of_range /view"}},
		{"all at once", align.Rim, func(s *align.Set) { s.Probe.Carrier, s.Probe.Span, s.Sag, s.View = 0, mm, -um, 9 }, nil,
			[]string{"conflict /probe/span", "missing /probe/carrier", "out_of_range /sag", "out_of_range /view"}},
	}
	for _, row := range rows {
		bad, twin := soundSet(row.kind), soundSet(row.kind)
		row.bad(&bad)
		if row.twin != nil {
			row.twin(&twin)
		}
		readings, err := bad.Predict(caseA, quarters...)
		if got := codesAndPaths(err); !slices.Equal(got, row.want) || readings != nil {
			t.Errorf("%s: got %v and %v, want just %v", row.name, readings, got, row.want)
		}
		if _, err := twin.Predict(caseA, quarters...); err != nil {
			t.Errorf("%s: the twin is refused: %v", row.name, err)
		}
	}
}

// What belongs wholly together must have the same part in all else.
func TestWhollyCorrelated(t *testing.T) {
	u := line(0.003, 1e-5, 0.004, 2e-5)
	pair := func(with0, with1 float64) [4][4]float64 { // 0 and 1 are one and the same
		r := uncorrelated
		r[0][1], r[1][0] = 1, 1
		r[0][2], r[2][0] = with0, with0
		r[1][2], r[2][1] = with1, with1
		return r
	}
	rows := []struct {
		name string
		r    [4][4]float64
		ok   bool
	}{
		{"nothing else", pair(0, 0), true},
		{"the same part in a third", pair(0.5, 0.5), true},
		{"wholly one with a third", pair(-1, -1), true},
		{"another part in a third", pair(0.5, -0.5), false},
		{"a little more of a third", pair(0.5, 0.501), false},
		{"apart by the rounding of text", pair(0.5, 0.5+1e-12), true},
	}
	for _, row := range rows {
		_, err := align.NewCovariance(align.Stated, u, row.r)
		var want []string
		if !row.ok {
			want = []string{"conflict /correlation"}
		}
		if got := codesAndPaths(err); !slices.Equal(got, want) {
			t.Errorf("%s: got %v, want %v", row.name, got, want)
		}
	}
}

// A target that is no number and feet that are no feet are told of together.
func TestCorrectionsTellAll(t *testing.T) {
	nowhere := caseA
	nowhere.Vertical.Slope = units.Slope(math.Inf(1))
	_, err := align.Exact(nowhere).Corrections(align.Foot{Name: "a"}, align.Foot{Name: "a", U: -um})
	want := []string{"duplicate /feet/1/name", "not_finite /value/vertical/slope", "out_of_range /feet/1/u"}
	if got := codesAndPaths(err); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	_, err = align.Exact(nowhere).Corrections()
	if got := codesAndPaths(err); !slices.Equal(got, []string{"missing /feet", "not_finite /value/vertical/slope"}) {
		t.Errorf("without feet: got %v", got)
	}
}
