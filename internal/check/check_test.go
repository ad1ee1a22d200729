package check_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

func Example() {
	var faults check.Faults
	var root check.Path
	list := root.Field("feet")
	foot := list.Index(2)
	check.Positive(&faults, foot.Field("x"), -3*units.Millimetre, "a station")
	check.Finite(&faults, foot.Field("u"), units.Length(math.NaN()))
	fmt.Println(faults.Err())
	// Output:
	// /feet/2/x: want a station above zero, got -3 mm (out_of_range)
	// /feet/2/u: want a finite number, got NaN mm (not_finite)
}

// JSON Pointers as RFC 6901, sections 3 to 5, has them: a tilde in a name becomes
// ~0, a slash ~1, and the tilde goes first, so that ~1 in a name comes out as ~01.
func TestPath(t *testing.T) {
	var root check.Path
	sets := root.Field("sets")
	second := sets.Index(1)
	readings := second.Field("readings")
	tenth := readings.Index(10)
	slash := root.Field("a/b")
	number := root.Field("0")
	for _, row := range []struct {
		name string
		path check.Path
		want string
	}{
		{"the input itself", root, ""},
		{"a field", sets, "/sets"},
		{"an element", second, "/sets/1"},
		{"the first element", sets.Index(0), "/sets/0"},
		{"nested", tenth.Field("value"), "/sets/1/readings/10/value"},
		{"a list of lists", tenth.Index(0), "/sets/1/readings/10/0"},
		{"element of the input", root.Index(3), "/3"},
		{"slash", slash, "/a~1b"},
		{"tilde", root.Field("m~n"), "/m~0n"},
		{"what looks escaped", root.Field("~1~0"), "/~01~00"},
		{"both, below a name with a slash", slash.Field("~/"), "/a~1b/~0~1"},
		{"a name that is a number", number.Field("x"), "/0/x"},
		{"a name with a space and a quote", root.Field(` "`), `/ "`},
	} {
		if got := row.path.String(); got != row.want {
			t.Errorf("%s: got %q, want %q", row.name, got, row.want)
		}
	}
}

// Each helper against the numbers at its edges.
func TestHelpers(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	const small = units.Length(math.SmallestNonzeroFloat64)
	negativeZero := units.Length(math.Copysign(0, -1))
	type helper func(*check.Faults, check.Path, units.Length) bool
	finite := helper(check.Finite[units.Length])
	positive := func(f *check.Faults, at check.Path, q units.Length) bool { return check.Positive(f, at, q, "a span") }
	notNegative := func(f *check.Faults, at check.Path, q units.Length) bool {
		return check.NotNegative(f, at, q, "a sag")
	}
	uncertainty, weight := helper(check.Uncertainty[units.Length]), helper(check.Weight[units.Length])
	unused := func(f *check.Faults, at check.Path, q units.Length) bool { return check.Unused(f, at, q, "a gap") }
	for _, row := range []struct {
		name string
		help helper
		q    units.Length
		want string // the whole fault, or "" for none
	}{
		{"finite, zero", finite, 0, ""},
		{"finite, negative", finite, -1, ""},
		{"finite, largest", finite, check.Largest, ""},
		{"finite, the other way", finite, -check.Largest, ""},
		{"finite, too large", finite, 1e16, "/q: want a number that can be reckoned with (a length of at most 1000 km), got 10000000000 mm (out_of_range)"},
		{"finite, too large the other way", finite, -1e16, "/q: want a number that can be reckoned with (a length of at most 1000 km), got -10000000000 mm (out_of_range)"},
		{"finite, NaN", finite, nan, "/q: want a finite number, got NaN mm (not_finite)"},
		{"finite, Inf", finite, inf, "/q: want a finite number, got +Inf mm (not_finite)"},
		{"finite, -Inf", finite, -inf, "/q: want a finite number, got -Inf mm (not_finite)"},

		{"positive, a millimetre", positive, 1e6, ""},
		{"positive, the least", positive, check.Least, ""},
		{"positive, too small", positive, small, "/q: want a span above zero, got " + small.String() + " (out_of_range)"},
		{"positive, zero is missing", positive, 0, "/q: want a span above zero, got 0 mm (missing)"},
		{"positive, negative zero is zero", positive, negativeZero, "/q: want a span above zero, got 0 mm (missing)"},
		{"positive, negative", positive, -1e6, "/q: want a span above zero, got -1 mm (out_of_range)"},
		{"positive, NaN", positive, nan, "/q: want a finite number, got NaN mm (not_finite)"},
		{"positive, Inf", positive, inf, "/q: want a finite number, got +Inf mm (not_finite)"},
		{"positive, -Inf is blamed once", positive, -inf, "/q: want a finite number, got -Inf mm (not_finite)"},

		{"not negative, zero", notNegative, 0, ""},
		{"not negative, negative zero", notNegative, negativeZero, ""},
		{"not negative, positive", notNegative, 1, ""},
		{"not negative, negative", notNegative, -5e5, "/q: want a sag not below zero, got -0.5 mm (out_of_range)"},
		{"not negative, NaN", notNegative, nan, "/q: want a finite number, got NaN mm (not_finite)"},
		{"not negative, -Inf is blamed once", notNegative, -inf, "/q: want a finite number, got -Inf mm (not_finite)"},

		{"uncertainty, however small", uncertainty, small, ""},
		{"uncertainty, negative", uncertainty, -5e5, "/q: want a standard uncertainty not below zero, got -0.5 mm (out_of_range)"},

		{"weight, none", weight, 0, ""},
		{"weight, the finest", weight, check.Finest, ""},
		{"weight, too small", weight, small, "/q: want a standard uncertainty of 0.001 nm or more, or none, got " + small.String() + " (out_of_range)"},
		{"weight, negative", weight, -5e5, "/q: want a standard uncertainty not below zero, got -0.5 mm (out_of_range)"},
		{"weight, NaN", weight, nan, "/q: want a finite number, got NaN mm (not_finite)"},

		{"unused, zero", unused, 0, ""},
		{"unused, negative zero", unused, negativeZero, ""},
		{"unused, given", unused, 2e6, "/q: want no value: a gap does not use it, got 2 mm (conflict)"},
		{"unused, negative", unused, -2e6, "/q: want no value: a gap does not use it, got -2 mm (conflict)"},
		{"unused, NaN was given too", unused, nan, "/q: want no value: a gap does not use it, got NaN mm (conflict)"},
	} {
		var faults check.Faults
		var root check.Path
		sound := row.help(&faults, root.Field("q"), row.q)
		if want := row.want == ""; sound != want {
			t.Errorf("%s: says %t, want %t", row.name, sound, want)
		}
		got := ""
		if err := faults.Err(); err != nil {
			got = err.Error()
		}
		if got != row.want {
			t.Errorf("%s:\n got %q\nwant %q", row.name, got, row.want)
		}
		if n := faults.Len(); n > 1 || (n == 1) != (row.want != "") {
			t.Errorf("%s: %d faults", row.name, n)
		}
	}
}

// A list may be as long as it may be, and not one longer.
func TestAtMost(t *testing.T) {
	for length, want := range map[int]string{0: "", 3: "", 4: "/q: want at most 3 feet, got 4 (out_of_range)"} {
		var faults check.Faults
		var root check.Path
		sound, got := check.AtMost(&faults, root.Field("q"), length, 3, "feet"), ""
		if err := faults.Err(); err != nil {
			got = err.Error()
		}
		if got != want || sound != (want == "") {
			t.Errorf("%d: got %q, %t", length, got, sound)
		}
	}
}

// The zero collector holds none and is no error; an error of no faults would be
// taken for a refusal.
func TestNoFaults(t *testing.T) {
	var faults check.Faults
	if err := faults.Err(); err != nil || faults.Len() != 0 {
		t.Errorf("got %v, %d faults", err, faults.Len())
	}
}

// Faults come out in the order in which they were noted, each as it was noted,
// and every code of the joined error is found.
func TestFaultsKeepTheirOrder(t *testing.T) {
	var faults check.Faults
	var root check.Path
	faults.Add(units.Conflict, root.Field("b"), 3, "another one")
	elsewhere := &units.Fault{Code: units.Unseen, Path: "/sets", Want: "readings that see"}
	faults.Append(elsewhere)
	faults.Add(units.Missing, root, nil, "something")
	faults.Add(units.Conflict, root.Field("a"), units.Nine, "another one") // the same code again
	want := []*units.Fault{
		{Code: units.Conflict, Path: "/b", Value: "3", Want: "another one"},
		{Code: units.Unseen, Path: "/sets", Want: "readings that see"},
		{Code: units.Missing, Path: "", Want: "something"},
		{Code: units.Conflict, Path: "/a", Value: "9:00", Want: "another one"},
	}
	err := faults.Err()
	got := units.Faults(err)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if got[1] != elsewhere {
		t.Error("what was found elsewhere was copied")
	}
	if faults.Len() != len(want) {
		t.Errorf("%d faults, want %d", faults.Len(), len(want))
	}
	for _, code := range []units.Code{units.Conflict, units.Unseen, units.Missing} {
		if !errors.Is(err, code) {
			t.Errorf("%v is not found", code)
		}
	}
	if errors.Is(err, units.Duplicate) {
		t.Error("a code that was not noted is found")
	}
}

// A path is put down when it is noted: that its parents change afterwards, as
// they do in a loop, does not reach a fault that is already there.
func TestPathsOfALoop(t *testing.T) {
	var faults check.Faults
	var root check.Path
	list := root.Field("feet")
	for i := range 3 {
		foot := list.Index(i)
		faults.Add(units.Missing, foot.Field("x"), nil, "a station")
	}
	for i, f := range units.Faults(faults.Err()) {
		if want := fmt.Sprintf("/feet/%d/x", i); f.Path != want {
			t.Errorf("fault %d is at %s, want %s", i, f.Path, want)
		}
	}
}

// On a sound input nothing is allocated, however deep the paths.
func TestSoundInputAllocatesNothing(t *testing.T) {
	readings := make([]units.Length, 50)
	for i := range readings {
		readings[i] = units.Length(i + 1)
	}
	var faults check.Faults
	allocations := testing.AllocsPerRun(100, func() {
		var root check.Path
		sets := root.Field("sets")
		set := sets.Index(1)
		list := set.Field("readings")
		for i, r := range readings {
			reading := list.Index(i)
			check.Finite(&faults, reading.Field("value"), r)
			check.Positive(&faults, reading.Field("value"), r, "a length")
			check.NotNegative(&faults, reading.Field("u"), r, "an uncertainty")
			check.Unused(&faults, reading.Field("sag"), 0*r, "a gap")
		}
		if faults.Err() != nil {
			t.Error(faults.Err())
		}
	})
	if allocations != 0 {
		t.Errorf("%v allocations", allocations)
	}
}
