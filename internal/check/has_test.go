package check_test

import (
	"testing"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// A path is known from the first fault at it, whatever its code, and only that
// path: not the field's parent, nor what it holds.
func TestHas(t *testing.T) {
	var faults check.Faults
	var root check.Path
	list := root.Field("feet")
	faults.Add(units.Missing, list.Index(1), nil, "a foot")
	faults.Append(&units.Fault{Code: units.Unseen, Path: "/sets"})
	for path, want := range map[string]bool{
		"/feet/1": true, "/sets": true,
		"": false, "/feet": false, "/feet/1/x": false, "/feet/10": false, "/feet/0": false,
	} {
		if got := faults.Has(path); got != want {
			t.Errorf("%q: got %t, want %t", path, got, want)
		}
	}
	faults.Add(units.Conflict, root, nil, "something else")
	if !faults.Has("") {
		t.Error("a fault of the input itself is not found")
	}
}
