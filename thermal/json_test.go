package thermal_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Every input comes back as it was, bit for bit, and grows the same.
func TestRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		machine := drawMachine(t, 2, 4)
		copied := clone(t, machine)
		a, b := growWithin(t, anyStandOff, machine...), growWithin(t, anyStandOff, copied...)
		if a != b {
			t.Errorf("grows by %+v, then by %+v", a.Value, b.Value)
		}
	})
}

func TestRoundTripOfEveryType(t *testing.T) {
	roundTrip(t, mixed())
	roundTrip(t, thermal.Support{})
	roundTrip(t, thermal.Piece{})
	roundTrip(t, thermal.Spot{})
	roundTrip(t, thermal.Spot{Up: 3 * units.Inch, Running: units.Fahrenheit(106)})
	roundTrip(t, thermal.Uncertainty{Height: mm, Temperature: units.FahrenheitDegree})
	roundTrip(t, thermal.Measured{By: align.Vector{Horizontal: -um, Vertical: um}})
	roundTrip(t, thermal.Materials())
}

func roundTrip[V any](t *testing.T, v V) {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var back V
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	if diff := cmp.Diff(v, back, openly); diff != "" {
		t.Errorf("%s comes back changed:\n%s", text, diff)
	}
}

// What is written has its units, and leaves out what was not given.
func TestWireForms(t *testing.T) {
	leg := profiled(400*mm, 25, 0, 60, 400, 80)
	leg.Name, leg.U.Temperature = "casing", 3
	rows := []struct {
		name  string
		value any
		want  string
	}{
		{"zero support", thermal.Support{}, `{"x":"0 mm"}`},
		{"zero piece", thermal.Piece{}, `{"height":"0 mm","material":{"expansion":"0 um/m/K"}}`},
		{"piece with a profile", leg, `{"name":"casing","height":"400 mm","material":{"name":"steel","expansion":"11 um/m/K"},"cold":"25 °C",` +
			`"profile":[{"up":"0 mm","running":"60 °C"},{"up":"400 mm","running":"80 °C"}],"u":{"temperature":"3 K"}}`},
		{"legs that differ", sides(mm, 2*mm, piece(mm, steel, 1), piece(mm, bronze, 0)), `{"x":"1 mm",` +
			`"three":[{"height":"1 mm","material":{"name":"steel","expansion":"11 um/m/K"},"rise":"1 K"}],` +
			`"nine":[{"height":"1 mm","material":{"name":"bronze","expansion":"18 um/m/K"}}],"track":"2 mm"}`},
		{"measured", measured(-mm, um, 0), `{"x":"-1 mm","measured":{"by":{"horizontal":"0.001 mm","vertical":"0 mm"}}}`},
		{"measured, and how well", thermal.Measured{U: align.Vector{Vertical: um}},
			`{"by":{"horizontal":"0 mm","vertical":"0 mm"},"u":{"horizontal":"0 mm","vertical":"0.001 mm"}}`},
	}
	for _, row := range rows {
		got, err := json.Marshal(row.value)
		if err != nil || string(got) != row.want {
			t.Errorf("%s:\ngot  %s, %v\nwant %s", row.name, got, err, row.want)
		}
	}
}

// Text that a caller writes in either system of units; a bare number is refused,
// and so is a point on the scale for a difference, each by its twin.
func TestReadingText(t *testing.T) {
	rows := []struct {
		name, bad, twin string
		code            units.Code
	}{
		{"height without a unit", `{"height":"17"}`, `{"height":"17 in"}`, units.Missing},
		{"height as a number", `{"height":17}`, `{"height":"431.8 mm"}`, ""},
		{"rise in a unit of length", `{"rise":"28 in"}`, `{"rise":"28 °F"}`, units.Unknown},
		{"coefficient without a unit", `{"material":{"expansion":"6.3e-6"}}`, `{"material":{"expansion":"6.3e-6 1/°F"}}`, units.Missing},
		{"cold without a scale", `{"cold":"78"}`, `{"cold":"78 °F"}`, units.Missing},
		{"spot without a scale", `{"profile":[{"running":"138"}]}`, `{"profile":[{"running":"138 °F"}]}`, units.Missing},
	}
	for _, row := range rows {
		var p thermal.Piece
		err := json.Unmarshal([]byte(row.bad), &p)
		if err == nil || row.code != "" && !errors.Is(err, row.code) {
			t.Errorf("%s: got %v, want %s", row.name, err, row.code)
		}
		if err := json.Unmarshal([]byte(row.twin), &p); err != nil {
			t.Errorf("%s: the twin is refused: %v", row.name, err)
		}
	}
}
