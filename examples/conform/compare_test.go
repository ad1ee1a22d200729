package main

import (
	"encoding/json"
	"strings"
	"testing"
)

func TestCompare(t *testing.T) {
	within := map[string]tolerance{"/offset": {"0.001 mm"}, "/moves/*/by": {"0.001 mm"}, "/at": {"1e-9 deg"}, "/ratio": {"1e-12"}}
	rows := []struct {
		name, want, got string
		places          int
	}{
		{"the same", `{"offset":"0.12 mm"}`, `{"offset":"0.12 mm"}`, 0},
		{"another unit", `{"offset":"25.4 mm"}`, `{"offset":"1 in"}`, 0},
		{"an exponent", `{"offset":"0.12 mm"}`, `{"offset":"1.2e-1 mm"}`, 0},
		{"on the tolerance", `{"offset":"0.12 mm"}`, `{"offset":"0.121 mm"}`, 0},
		{"just beyond it", `{"offset":"0.12 mm"}`, `{"offset":"0.1210000000000000000001 mm"}`, 1},
		{"the other sign", `{"offset":"0.12 mm"}`, `{"offset":"-0.12 mm"}`, 1},
		{"another kind", `{"offset":"0.12 mm"}`, `{"offset":"0.12 mm/m"}`, 1},
		{"no unit", `{"offset":"0.12 mm"}`, `{"offset":"0.12"}`, 1},
		{"a number for a quantity", `{"offset":"0.12 mm"}`, `{"offset":0.12}`, 1},
		{"not there", `{"offset":"0.12 mm"}`, `{}`, 1},
		{"null", `{"offset":"0.12 mm"}`, `{"offset":null}`, 1},
		{"no object", `{"offset":"0.12 mm"}`, `"0.12 mm"`, 1},
		{"more than asked", `{"offset":"0.12 mm"}`, `{"offset":"0.12 mm","slope":"1 mm/m"}`, 0},
		{"in a list", `{"moves":[{"by":"1 mm"},{"by":"2 mm"}]}`, `{"moves":[{"by":"1 mm"},{"by":"2.1 mm"}]}`, 1},
		{"a shorter list", `{"moves":[{"by":"1 mm"},{"by":"2 mm"}]}`, `{"moves":[{"by":"1 mm"}]}`, 1},
		{"a longer list", `{"moves":[{"by":"1 mm"}]}`, `{"moves":[{"by":"1 mm"},{"by":"2 mm"}]}`, 1},
		{"an empty list", `{"moves":[]}`, `{"moves":[]}`, 0},
		{"null for a list", `{"moves":[]}`, `{"moves":null}`, 1},
		{"a place on the clock", `{"at":"270 deg"}`, `{"at":"9:00"}`, 0},
		{"behind 12", `{"at":"0 deg"}`, `{"at":"359.9999999999 deg"}`, 0},
		{"across", `{"at":"0 deg"}`, `{"at":"180 deg"}`, 1},
		{"a full turn that is no place", `{"covered":"0 deg"}`, `{"covered":"360 deg"}`, 1},
		{"without a tolerance the same place", `{"from":"3:00"}`, `{"from":"90 deg"}`, 0},
		{"without a tolerance nearly", `{"from":"3:00"}`, `{"from":"90.0000001 deg"}`, 1},
		{"a ratio", `{"ratio":"0.5"}`, `{"ratio":0.5}`, 0},
		{"a ratio as text", `{"ratio":"0.5"}`, `{"ratio":"0.5"}`, 1},
		{"a count", `{"set":2}`, `{"set":2}`, 0},
		{"a count as text", `{"set":2}`, `{"set":"2"}`, 1},
		{"another ratio", `{"ratio":"0.5"}`, `{"ratio":0.6}`, 1},
		{"a word", `{"outcome":"within"}`, `{"outcome":"outside"}`, 1},
		{"true", `{"soft":true}`, `{"soft":false}`, 1},
		{"true as text", `{"soft":true}`, `{"soft":"true"}`, 1},
		{"a wanted warning", `{"warnings":[{"code":"suspect","path":"/a"}]}`, `{"warnings":[{"code":"missing","path":"/b"},{"code":"suspect","path":"/a","want":"x"}]}`, 0},
		{"no wanted warning", `{"warnings":[{"code":"suspect","path":"/a"}]}`, `{"warnings":[{"code":"suspect","path":"/b"}]}`, 1},
		{"more warnings", `{"warnings":[]}`, `{"warnings":[{"code":"suspect","path":"/b"}]}`, 0},
		{"no list of warnings", `{"warnings":[]}`, `{}`, 1},
	}
	for _, row := range rows {
		if d := compare(json.RawMessage(row.want), json.RawMessage(row.got), within); len(d) != row.places {
			t.Errorf("%s: %v, want %d places", row.name, d, row.places)
		}
	}
}

// TestKindOfDifference tests that an answer which is off is told from one which is
// not as the protocol has it.
func TestKindOfDifference(t *testing.T) {
	rows := []struct{ name, want, got, kind string }{
		{"as wanted", `{"offset":"0.12 mm"}`, `{"offset":"0.12 mm"}`, ""},
		{"off", `{"offset":"0.12 mm"}`, `{"offset":"0.13 mm"}`, off},
		{"one member forgotten", `{"offset":"0.12 mm","slope":"1 mm/m"}`, `{"offset":"0.12 mm"}`, off},
		{"a shorter list", `{"moves":[{"by":"1 mm"}]}`, `{"moves":[]}`, off},
		{"another word", `{"outcome":"within"}`, `{"outcome":"outside"}`, off},
		{"nothing at all", `{"offset":"0.12 mm"}`, `{}`, badAnswer},
		{"another kind", `{"offset":"0.12 mm"}`, `{"offset":"0.12 mm/m"}`, badAnswer},
		{"no unit", `{"offset":"0.12 mm"}`, `{"offset":"0.12"}`, badAnswer},
		{"a number for a quantity", `{"offset":"0.12 mm"}`, `{"offset":0.12}`, badAnswer},
		{"a word for a quantity", `{"offset":"0.12 mm"}`, `{"offset":"little"}`, badAnswer},
		{"an object for a quantity", `{"offset":"0.12 mm"}`, `{"offset":{}}`, badAnswer},
		{"a quantity for an object", `{"u":{"offset":"1 mm"}}`, `{"u":"1 mm"}`, badAnswer},
		{"a quantity for a list", `{"moves":[]}`, `{"moves":"1 mm"}`, badAnswer},
		{"a number for a word", `{"outcome":"within"}`, `{"outcome":1}`, badAnswer},
		{"text for true", `{"soft":true}`, `{"soft":"true"}`, badAnswer},
		{"a ratio as text", `{"ratio":"0.5"}`, `{"ratio":"0.5"}`, badAnswer},
		{"text for a count", `{"set":2}`, `{"set":"2"}`, badAnswer},
	}
	for _, row := range rows {
		var o outcome
		if o.differ(compare(json.RawMessage(row.want), json.RawMessage(row.got), nil)); o.Kind != row.kind {
			t.Errorf("%s: %+v, want %q", row.name, o, row.kind)
		}
	}
}

func TestReadQuantity(t *testing.T) {
	rows := []struct{ text, of, value string }{
		{"5 7/16 in", "length", "11049/80"},
		{"-1/64 in", "length", "-127/320"},
		{"-1 1/2 in", "length", "-381/10"},
		{"1e-3 um", "length", "1/1000000"},
		{"+2.50 mm", "length", "5/2"},
		{"0.5 mil/in", "slope", "1/2"},
		{"10:30", "angle", "315"},
		{"-37.5 deg", "angle", "-75/2"},
		{"68 °F", "temperature", "20"},
		{"0 K", "temperature", "-5463/20"},
		{"0.25", "number", "1/4"},
		{"", "", ""},
		{"mm", "", ""},
		{"1 furlong", "", ""},
		{"1mm", "", ""},
		{"0x10 mm", "", ""},
		{"1_000 mm", "", ""},
		{"1e999999999 mm", "", ""},
		{"1e99999999999999999999 mm", "", ""},
		{"1/0 in", "", ""},
		{"1/2/3 in", "", ""},
		{"NaN mm", "", ""},
		{"Inf mm", "", ""},
		{"1,5 mm", "", ""},
		{"a:30", "", ""},
	}
	for _, row := range rows {
		q, err := readQuantity(row.text)
		if (err != nil) != (row.of == "") || err == nil && (q.of != row.of || q.value.RatString() != row.value) {
			t.Errorf("%q: %v %v", row.text, q, err)
		}
	}
}

// TestLongNumberIsNotRead tests that a number as long as a line is refused for its
// length, before it is worked out, which takes thousands of allocations.
func TestLongNumberIsNotRead(t *testing.T) {
	long := strings.Repeat("9", mostLine)
	for _, text := range []string{long, long + "x", long + "e5", "1e" + long} {
		n := testing.AllocsPerRun(1, func() {
			if _, err := readDecimal(text); err == nil {
				t.Error("it was read")
			}
		})
		if n > 10 {
			t.Errorf("%.0f allocations for %.10q...", n, text)
		}
	}
	if _, err := readDecimal(strings.Repeat("9", 1000)); err != nil {
		t.Error(err)
	}
}

func TestTextThatIsNoQuantityDoesNotPanic(t *testing.T) {
	for _, text := range []string{" ", "/", "1/ in", "/2 in", " 1/2 in", "- in", ". mm", "e mm", "1e mm", ":", "1:", ":1", "1:2:3", "\x00 mm"} {
		if q, err := readQuantity(text); err == nil {
			t.Errorf("%q: %v", text, q)
		}
	}
}
