package strict_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

func TestFaults(t *testing.T) {
	var f strict.Faults
	if f.Err() != nil {
		t.Fatal("no faults are an error")
	}
	f.Add(units.Missing, "/a", "", "a value")
	f.Adopt(errors.Join(
		&units.Fault{Code: units.Conflict, Path: "/x"},
		&units.Fault{Code: units.Unknown, Path: "/y"},
	), func(path string) string { return map[string]string{"/x": "/a", "/y": "/b"}[path] })
	f.Adopt(nil, nil)
	f.Adopt(errors.New("no fault"), nil)
	err := f.Err()
	if got, want := listed(err), "missing /a, unknown /b"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if !errors.Is(err, units.Unknown) || errors.Is(err, units.Conflict) || strings.Count(err.Error(), "\n") != 1 {
		t.Errorf("got %q", err)
	}
}

// The library's own faults stay as they are: they may be told elsewhere.
func TestAdoptCopies(t *testing.T) {
	var f strict.Faults
	library := &units.Fault{Code: units.Conflict, Path: "/x"}
	f.Adopt(library, func(string) string { return strict.Step("/list", 3) })
	if library.Path != "/x" || f[0].Path != "/list/3" {
		t.Errorf("got %v and %v", library, f[0])
	}
}

func TestShort(t *testing.T) {
	for _, row := range []struct{ name, in, want string }{
		{"as it is", "5 mm", "5 mm"},
		{"on one line", "5\n\t mm ", "5 mm"},
		{"no UTF-8", "5\xff", "5?"},
		{"cut between characters", strings.Repeat("°", 61), strings.Repeat("°", 60) + "..."},
	} {
		if got := strict.Short(row.in); got != row.want {
			t.Errorf("%s: got %q, want %q", row.name, got, row.want)
		}
	}
}
