package tolerance_test

import (
	"strings"
	"testing"

	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// EASA AR100-2015, table 2-4, IEC machines (read), as it stands there: over, up
// to, total indicated runout, all in mm.
const easaTable24 = `
6   10  0.030
10  18  0.035
18  30  0.040
30  50  0.050
50  80  0.060
80  120 0.070
120 180 0.080
180 250 0.090
250 315 0.100
315 400 0.110
400 500 0.125
500 630 0.140`

// Every class at both edges, a nanometre beyond each, and in the middle.
func TestShaftRunoutClasses(t *testing.T) {
	length := func(s string) units.Length { return units.MustParseLength(s + " mm") }
	lines := strings.Split(strings.TrimSpace(easaTable24), "\n")
	for _, line := range lines {
		f := strings.Fields(line)
		over, upTo := length(f[0]), length(f[1])
		want := tolerance.RunoutLimit{Over: over, UpTo: upTo, Limit: length(f[2])}
		for _, d := range []units.Length{over + 1, over + 0.6, (over + upTo) / 2, upTo - 1, upTo, upTo + 0.4} {
			got, err := tolerance.ShaftRunout(d)
			want.Source = got.Source
			if err != nil || got != want || !strings.Contains(got.Source, "EASA AR100-2015, table 2-4") {
				t.Errorf("%v: got %+v, %v, want %+v", d, got, err, want)
			}
		}
		if got, err := tolerance.ShaftRunout(over); err == nil && got.UpTo != over {
			t.Errorf("%v, on the edge, is in the class above: %+v", over, got)
		}
	}
	for _, outside := range []string{"5.9", "6", "630.000001", "2000"} {
		_, err := tolerance.ShaftRunout(length(outside))
		wantFaults(t, outside, err, "out_of_range /diameter")
	}
}
