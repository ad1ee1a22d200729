package softfoot_test

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// What the zero values are: nothing there, nothing moved, the default.
func TestZeroValues(t *testing.T) {
	_, err := softfoot.Survey{}.Judge(softfoot.Limits{})
	if got, want := faultsOf(err), []string{"missing /feet", "missing /height"}; !slices.Equal(got, want) {
		t.Errorf("the zero survey: %q, want %q", got, want)
	}
	s := rectangle(um, 0, 0, 0, 0)
	s.Feet[2] = softfoot.Foot{}
	_, err = s.Judge(softfoot.Limits{})
	// the place of the zero foot is that of no other: near 3 stands at y = 200 mm
	if got, want := faultsOf(err), []string{"missing /feet/2/name"}; !slices.Equal(got, want) {
		t.Errorf("the zero foot: %q, want %q", got, want)
	}
	s = rectangle(um, 0, 0, 0, 0)
	s.Feet[2].Gaps = make([]softfoot.Gap, 3)
	_, err = s.Judge(softfoot.Limits{})
	if got, want := faultsOf(err), []string{"duplicate /feet/2/gaps/1", "duplicate /feet/2/gaps/2"}; !slices.Equal(got, want) {
		t.Errorf("the zero gap, three times: %q, want %q", got, want)
	}
	_, err = softfoot.AtShaft{}.Rolling(0)
	if got, want := faultsOf(err), []string{"missing /y", "missing /height"}; !slices.Equal(got, want) {
		t.Errorf("the zero movement of the shaft: %q, want %q", got, want)
	}
	_, err = softfoot.Strains(0, softfoot.Release{})
	if got, want := faultsOf(err), []string{"missing /limit", "missing /releases/0/what"}; !slices.Equal(got, want) {
		t.Errorf("the zero release: %q, want %q", got, want)
	}
	if got := (softfoot.Shift{}).At(1 * units.Metre); got != 0 {
		t.Errorf("the zero shift moves the shaft by %v", got)
	}
}

// The zero limits are the defaults spelt out.
func TestZeroLimits(t *testing.T) {
	spelt := softfoot.Limits{Act: 2 * units.Mil, Margin: 1 * units.Mil, Common: 4 * units.Mil, Taper: 2 * units.Mil, Least: 1 * units.Mil}
	for _, s := range []softfoot.Survey{rectangle(um, 150, 101, 20, 130), rectangle(um, 250, 150, 150, 250), sound(), rectangle(um, -26, 0, 0, 51)} {
		if diff := cmp.Diff(judge(t, s, spelt), judge(t, s, softfoot.Limits{})); diff != "" {
			t.Errorf("%+v: %s", s, diff)
		}
	}
}

// A cause or a check that does not exist has no wire form, and what is not one
// cannot be read.
func TestWordsOfKindAndCheck(t *testing.T) {
	for k, want := range map[softfoot.Kind]string{softfoot.Parallel: "parallel", softfoot.Angular: "angular", softfoot.Springing: "springing", softfoot.Induced: "induced"} {
		text, err := k.MarshalText()
		var back softfoot.Kind
		if err != nil || string(text) != want || k.String() != want || back.UnmarshalText(text) != nil || back != k {
			t.Errorf("got %q, %q and %v, want %q", text, k.String(), back, want)
		}
	}
	for c, want := range map[softfoot.Check]string{softfoot.FeelCorners: "feel_corners", softfoot.PartLoads: "part_loads", softfoot.RenewPacking: "renew_packing"} {
		text, err := c.MarshalText()
		var back softfoot.Check
		if err != nil || string(text) != want || c.String() != want || back.UnmarshalText(text) != nil || back != c {
			t.Errorf("got %q, %q and %v, want %q", text, c.String(), back, want)
		}
	}
	for _, bad := range []interface{ MarshalText() ([]byte, error) }{softfoot.Kind(0), softfoot.Kind(5), softfoot.Kind(255), softfoot.Check(0), softfoot.Check(4), softfoot.Check(255)} {
		if text, err := bad.MarshalText(); !hasFault(err) {
			t.Errorf("%T %d: %q, %v", bad, bad, text, err)
		}
	}
	for _, text := range []string{"", "Parallel", "parallel ", "tapered", "1"} {
		k, c := softfoot.Induced, softfoot.PartLoads
		if err := k.UnmarshalText([]byte(text)); !hasFault(err) || k != softfoot.Induced {
			t.Errorf("kind %q: %v, %v", text, k, err)
		}
		if err := c.UnmarshalText([]byte(text)); !hasFault(err) || c != softfoot.PartLoads {
			t.Errorf("check %q: %v, %v", text, c, err)
		}
	}
}

// filled has every field of every exported type with a wire form.
func filled() []any {
	taper := softfoot.Taper{Rise: 80 * um, Along: 2 * units.MillimetrePerMetre, Across: -1 * units.MillimetrePerMetre}
	gap := softfoot.Gap{X: 30 * mm, Y: -40 * mm, Gap: 70 * um}
	foot := softfoot.Foot{Name: "a", X: 300 * mm, Y: -200 * mm, Lift: -3 * um, Gaps: []softfoot.Gap{gap}}
	shim := softfoot.Shim{Foot: "a", Flat: 100 * um, Stepped: &taper}
	shift := softfoot.Shift{Up: 50 * um, Slope: -0.1 * units.MillimetrePerMetre, Sideways: -35 * um}
	advice := softfoot.Advice{Shims: []softfoot.Shim{shim}, Left: 1 * um, Shift: shift}
	fits := softfoot.Explanation{Kind: softfoot.Springing, Feet: []string{"a", "b"}}
	next := softfoot.FollowUp{Check: softfoot.PartLoads, Feet: []string{"b"}}
	of := softfoot.FootFinding{Foot: "a", Lift: 120 * um, Excess: 100 * um, Soft: true, Taper: &taper}
	release := softfoot.Release{What: "flange", Horizontal: -2 * units.Mil, Vertical: 4 * units.Mil}
	return []any{
		gap, foot, taper, shim, shift, advice, fits, next, of, release,
		softfoot.Survey{Feet: []softfoot.Foot{foot}, Height: 280 * mm},
		softfoot.Limits{Act: 1 * um, Margin: 2 * um, Common: 3 * um, Taper: 4 * um, Least: 5 * um},
		softfoot.Finding{Common: 20 * um, Worst: 100 * um, Feet: []softfoot.FootFinding{of}, Fits: []softfoot.Explanation{fits}, Next: []softfoot.FollowUp{next}, Advice: []softfoot.Advice{advice}},
		softfoot.Strain{Release: release, Largest: 4 * units.Mil, Over: true},
		softfoot.AtShaft{Y: -200 * mm, Up: 60 * um, Sideways: -20 * um},
	}
}

// Everything that has a wire form comes back from JSON as it was, filled and zero
// (but for words, whose zero has none).
func TestRoundTrips(t *testing.T) {
	for _, value := range filled() {
		v := reflect.ValueOf(value)
		for i := range v.NumField() {
			if v.Field(i).IsZero() {
				t.Errorf("%T: %s is not filled", value, v.Type().Field(i).Name)
			}
		}
		roundTrip(t, value)
		switch value.(type) {
		case softfoot.Explanation, softfoot.FollowUp:
			if text, err := json.Marshal(reflect.Zero(v.Type()).Interface()); err == nil {
				t.Errorf("the zero %T is written as %s", value, text)
			}
		default:
			roundTrip(t, reflect.Zero(v.Type()).Interface())
		}
	}
	for _, s := range []softfoot.Survey{sound(), rectangle(um, 100, 0, 0, 100), rectangle(um, 100, 100, 0, 0), rectangle(um, 0, 0, 0, 0)} {
		roundTrip[any](t, s)
		roundTrip[any](t, judge(t, s, softfoot.Limits{}))
	}
}

// roundTrip writes a value and reads it into another of its type.
func roundTrip[T any](t *testing.T, value T) {
	t.Helper()
	text, err := json.Marshal(value)
	if err != nil {
		t.Fatalf("%T: %v", value, err)
	}
	back := reflect.New(reflect.TypeOf(value))
	if err := json.Unmarshal(text, back.Interface()); err != nil {
		t.Fatalf("%T: %v", value, err)
	}
	if diff := cmp.Diff(any(value), back.Elem().Interface()); diff != "" {
		t.Errorf("%T: %s\n%s", value, diff, text)
	}
}

// What is written has units and leaves out what was not given.
func TestWireForms(t *testing.T) {
	found := judge(t, rectangle(um, 0, 0, 0, 0), softfoot.Limits{})
	found.Feet = nil
	for _, row := range []struct {
		value any
		want  string
	}{
		{softfoot.Foot{Name: "a", X: 300 * mm}, `{"name":"a","x":"300 mm","y":"0 mm"}`},
		{softfoot.Foot{Name: "a", Lift: -20 * um}, `{"name":"a","x":"0 mm","y":"0 mm","lift":"-0.02 mm"}`},
		{softfoot.Limits{}, `{}`},
		{softfoot.Limits{Least: 1 * units.Mil}, `{"least":"0.0254 mm"}`},
		{softfoot.Shim{Foot: "a", Flat: 100 * um}, `{"foot":"a","flat":"0.1 mm"}`},
		{softfoot.Explanation{Kind: softfoot.Angular, Feet: []string{"a"}}, `{"kind":"angular","feet":["a"]}`},
		{softfoot.FollowUp{Check: softfoot.RenewPacking, Feet: []string{"a"}}, `{"check":"renew_packing","feet":["a"]}`},
		{found, `{"common":"0 mm","worst":"0 mm","feet":null,"fits":[]}`},
	} {
		if got, err := json.Marshal(row.value); err != nil || string(got) != row.want {
			t.Errorf("got  %s (%v)\nwant %s", got, err, row.want)
		}
	}
}

// Judge and Strains leave what they are given alone, and what they return shares
// no memory with it.
func TestInputsAreNotWrittenTo(t *testing.T) {
	s := sound()
	s.Feet[3] = felt(sound(), 3, 0, 0, 90, 90).Feet[3]
	s.Feet = append(s.Feet, softfoot.Foot{Name: "spare"})[:4]
	text, _ := json.Marshal(s)
	spare := s.Feet[:5][4]
	found := judge(t, s, softfoot.Limits{})
	for i := range found.Feet {
		found.Feet[i] = softfoot.FootFinding{}
	}
	for _, e := range found.Fits {
		clear(e.Feet)
	}
	for _, n := range found.Next {
		clear(n.Feet)
	}
	if again, _ := json.Marshal(s); string(again) != string(text) || !reflect.DeepEqual(spare, s.Feet[:5][4]) {
		t.Errorf("%s became %s", text, again)
	}
	releases := []softfoot.Release{{What: "b", Vertical: 1}, {What: "a"}}
	before := slices.Clone(releases)
	strains, err := softfoot.Strains(1*um, releases...)
	if err != nil {
		t.Fatal(err)
	}
	strains[0].Release.What = "c"
	if !slices.Equal(before, releases) {
		t.Errorf("%v became %v", before, releases)
	}
}

// Lists of a finding share no memory with one another: a caller may change one.
func TestListsOfFindingAreApart(t *testing.T) {
	for _, s := range []softfoot.Survey{rectangle(um, 120, 0, 0, 0), rectangle(um, 120, 120, 0, 0), rectangle(um, 250, 150, 150, 250), felt(rectangle(um, 0, 0, 0, 120), 0, 100, 100, 200, 200)} {
		found := judge(t, s, softfoot.Limits{})
		want := judge(t, s, softfoot.Limits{})
		for i := range found.Fits {
			found.Fits[i].Feet[0] = "changed"
			want.Fits[i].Feet[0] = "changed"
			if diff := cmp.Diff(want, found); diff != "" {
				t.Errorf("fits %d: %s", i, diff)
				return
			}
		}
		for i := range found.Next {
			found.Next[i].Feet[0] = "changed too"
			want.Next[i].Feet[0] = "changed too"
		}
		if diff := cmp.Diff(want, found); diff != "" {
			t.Errorf("next: %s", diff)
		}
	}
}
