package adapter

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/units"
)

// example is an input and what has to come out.
type example struct{ name, op, input, result string }

// answered has one row or more for each operation.
var answered = slices.Concat(convertAnswers, arcAnswers, handAnswers, dialAnswers, positionAnswers, limitAnswers, growthAnswers, footAnswers, planAnswers, flangeAnswers)

const (
	caseA   = `"horizontal":{"offset":"0.12 mm","slope":"0.4 mm/m"},"vertical":{"offset":"-0.2 mm","slope":"-0.7 mm/m"}`
	rimA    = `[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.363764 mm"},{"at":"6:00","value":"0.456 mm"},{"at":"9:00","value":"0.091764 mm"}]`
	faceA   = `[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.0825 mm"},{"at":"6:00","value":"0.105 mm"},{"at":"9:00","value":"0.0225 mm"}]`
	gapA    = `[{"at":"12:00","value":"3 mm"},{"at":"3:00","value":"2.9175 mm"},{"at":"6:00","value":"2.895 mm"},{"at":"9:00","value":"2.9775 mm"}]`
	feetA   = `[{"name":"inboard","x":"300 mm"},{"name":"outboard","x":"900 mm"}]`
	movesA  = `[{"foot":"inboard","horizontal":"-0.24 mm","vertical":"0.41 mm"},{"foot":"outboard","horizontal":"-0.48 mm","vertical":"0.83 mm"}]`
	surveyA = `[{"name":"A","x":"350 mm","y":"-180 mm","lift":"0.12 mm"},{"name":"B","x":"350 mm","y":"180 mm","lift":"0.02 mm"},{"name":"C","x":"900 mm","y":"-180 mm","lift":"0.02 mm"},{"name":"D","x":"900 mm","y":"180 mm","lift":"0.12 mm"}]`
)

// at returns a position: offsets in mm, horizontal first, then slopes in mm/m.
func at(y, z, slopeY, slopeZ string) string {
	return `{"horizontal":{"offset":"` + y + ` mm","slope":"` + slopeY + ` mm/m"},"vertical":{"offset":"` + z + ` mm","slope":"` + slopeZ + ` mm/m"}}`
}

func TestAnswers(t *testing.T) {
	shown := map[string]bool{"fit": true} // has tests of its own
	for _, row := range answered {
		shown[row.op] = true
		t.Run(row.op+", "+row.name, func(t *testing.T) {
			a := ask(t, row.op, row.input)
			if a.Error != nil {
				t.Fatalf("refused: %+v", a.Faults)
			}
			if !alike(decoded(t, string(a.Result)), decoded(t, row.result)) {
				t.Errorf("got  %s\nwant %s", a.Result, row.result)
			}
		})
	}
	for op := range operations {
		if !shown[op] {
			t.Errorf("%s: no row", op)
		}
	}
}

func decoded(t *testing.T, text string) (v any) {
	t.Helper()
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// alike compares documents: the same members, and quantities to a millionth of
// a nanometre, or of what a slope does over a metre.
func alike(got, want any) bool {
	switch want := want.(type) {
	case map[string]any:
		got, ok := got.(map[string]any)
		for name, value := range want {
			ok = ok && alike(got[name], value)
		}
		return ok && len(got) == len(want)
	case []any:
		got, ok := got.([]any)
		ok = ok && len(got) == len(want)
		for i := range want {
			ok = ok && alike(got[i], want[i])
		}
		return ok
	case string:
		got, ok := got.(string)
		return ok && (got == want || near(units.ParseLength, got, want, 1e-6) || near(units.ParseSlope, got, want, 1e-15) || rounded(got, want))
	case float64:
		got, ok := got.(float64)
		return ok && math.Abs(got-want) <= 1e-12
	}
	return got == want
}

func near[Q ~float64](parse func(string) (Q, error), got, want string, most Q) bool {
	a, err := parse(got)
	b, err2 := parse(want)
	return err == nil && err2 == nil && max(a-b, b-a) <= most
}

// rounded tells whether two texts have one unit and, to the last place of a
// float64, one number.
func rounded(got, want string) bool {
	a, unit, _ := strings.Cut(got, " ")
	b, wanted, _ := strings.Cut(want, " ")
	x, err := strconv.ParseFloat(a, 64)
	y, err2 := strconv.ParseFloat(b, 64)
	return unit == wanted && err == nil && err2 == nil && math.Abs(x-y) <= 0x1p-52*math.Abs(y)
}
