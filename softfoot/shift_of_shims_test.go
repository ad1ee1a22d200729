package softfoot_test

import (
	"slices"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// The shift of an advice is that of its shims, and taking the same shims out again
// moves the shaft back.
func TestShiftOfShims(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lift := rapid.Float64Range(60, 300)
		s := rectangle(um, lift.Draw(t, "near 3"), 0, 0, lift.Draw(t, "far 9"))
		for _, way := range judge(t, s, softfoot.Limits{}).Advice {
			got, err := s.Shift(way.Shims...)
			if err != nil || got != way.Shift {
				t.Errorf("%+v: got %+v, %v", way, got, err)
			}
			for i := range way.Shims {
				way.Shims[i].Flat *= -1
			}
			back, err := s.Shift(way.Shims...)
			if err != nil || back.Up+got.Up != 0 || back.Slope+got.Slope != 0 || back.Sideways+got.Sideways != 0 {
				t.Errorf("%+v: back by %+v, %v", way, back, err)
			}
		}
	})
}

func TestShiftRefuses(t *testing.T) {
	sound := rectangle(um, 0, 0, 0, 0)
	for _, row := range []struct {
		name   string
		survey softfoot.Survey
		shims  []softfoot.Shim
		want   []string
	}{
		{"sound", sound, []softfoot.Shim{{Foot: "near 3", Flat: 1 * um}, {Foot: "far 9", Flat: -1 * um}}, nil},
		{"no shims", sound, nil, nil},
		{"no such foot", sound, []softfoot.Shim{{Foot: "near 6", Flat: 1 * um}}, []string{"unknown /shims/0/foot"}},
		{"one foot twice", sound, []softfoot.Shim{{Foot: "near 3"}, {Foot: "near 3"}}, []string{"duplicate /shims/1/foot"}},
		{"no number", sound, []softfoot.Shim{{Foot: "near 3", Flat: notNumbers[0]}}, []string{"not_finite /shims/0/flat"}},
		{"no height", softfoot.Survey{Feet: sound.Feet}, []softfoot.Shim{{Foot: "near 3"}}, []string{"missing /height"}},
		{"too many feet, the last shimmed", onFeet(make([]spot, 9), make([]units.Length, 9)), []softfoot.Shim{{Foot: "8"}}, []string{"out_of_range /feet"}},
	} {
		shift, err := row.survey.Shift(row.shims...)
		if got := faultsOf(err); !slices.Equal(got, row.want) || err != nil && shift != (softfoot.Shift{}) {
			t.Errorf("%s: got %q and %+v, want %q", row.name, got, shift, row.want)
		}
	}
}
