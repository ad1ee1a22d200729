package check_test

import (
	"errors"
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

// What another package found is noted below the field that it was given, and the
// fault that it told of stays as it was.
func TestAdopt(t *testing.T) {
	var faults check.Faults
	var root check.Path
	found := &units.Fault{Code: units.NotFinite, Path: "/value/vertical/offset", Want: "a number"}
	faults.Adopt(root.Field("off"), errors.Join(found, &units.Fault{Code: units.Missing}))
	faults.Adopt(root.Field("none"), nil)
	got := units.Faults(faults.Err())
	if len(got) != 2 || got[0].Path != "/off/value/vertical/offset" || got[1].Path != "/off" || got[0].Code != units.NotFinite {
		t.Errorf("got %v", faults.Err())
	}
	if found.Path != "/value/vertical/offset" {
		t.Errorf("the fault that was found is at %s now", found.Path)
	}
}
