package pumpset

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/go-json-experiment/json"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// same compares records field by field: numbers to the bit, an unknown
// uncertainty (no number) as equal to another, and covariances by what their
// JSON holds, of which the variances come back to rounding.
var same = cmp.Options{
	cmp.AllowUnexported(length{}, position{}, slope{}, speed{}, sliding{}, rise{}, temperature{}, expansion{}, count{}, percent{}),
	cmp.Comparer(func(a, b units.Temperature) bool { return a == b }),
	cmp.Comparer(func(a, b align.Covariance) bool {
		ra, rb := a.Correlation(), b.Correlation()
		for i := range ra {
			for j := range ra[i] {
				if math.Abs(ra[i][j]-rb[i][j]) > 1e-14 { // a few last bits
					return false
				}
			}
		}
		return a.Basis == b.Basis && a.DoF == b.DoF && cmp.Equal(a.Standard(), b.Standard(), sameOrNone)
	}),
	sameOrNone,
}

var sameOrNone = cmp.Options{
	cmp.Comparer(func(a, b units.Length) bool { return a == b || a != a && b != b }),
	cmp.Comparer(func(a, b units.Slope) bool { return a == b || a != a && b != b }),
	cmp.Comparer(func(a, b float64) bool { return a == b || a != a && b != b }),
}

// checkRecord asks that a record comes back from its JSON as it was, and that
// the job in it is a job as good as the first.
func checkRecord(t rapid.TB, r Record) {
	t.Helper()
	var out bytes.Buffer
	if err := WriteRecord(&out, r); err != nil {
		t.Fatal(err)
	}
	var back Record
	if err := json.Unmarshal(out.Bytes(), &back, json.RejectUnknownMembers(true)); err != nil {
		t.Fatalf("the record does not decode: %v\n%s", err, out.Bytes())
	}
	if diff := cmp.Diff(r, back, same); diff != "" {
		t.Errorf("the record comes back changed (-sent +got):\n%s", diff)
	}
	doc, err := json.Marshal(back.Job)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := Read(doc); err != nil {
		t.Errorf("the job in the record is refused: %v", err)
	} else if diff := cmp.Diff(r.Job, again, same); diff != "" {
		t.Errorf("the job in the record is another one (-sent +got):\n%s", diff)
	}
}

func TestRecordComesBack(t *testing.T) {
	for _, name := range jobs {
		t.Run(name, func(t *testing.T) { checkRecord(t, mustSolve(t, load(t, name))) })
	}
}

// What is written keeps the text of every quantity as the crew had it.
func TestJobIsEchoedAsWritten(t *testing.T) {
	for _, name := range jobs {
		r := mustSolve(t, load(t, name))
		got, err := json.Marshal(r.Job, json.Deterministic(true))
		if err != nil {
			t.Fatal(err)
		}
		var sent, back any
		if err := json.Unmarshal(load(t, name), &sent); err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(got, &back); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(sent, back); diff != "" {
			t.Errorf("%s (-sent +echo):\n%s", name, diff)
		}
	}
}

func TestSameJobSameBytes(t *testing.T) {
	all := func(data []byte) string {
		var out strings.Builder
		r := mustSolve(t, data)
		if err := WriteRecord(&out, r); err != nil {
			t.Fatal(err)
		}
		return out.String() + text(t, r, Metric) + text(t, r, Inch)
	}
	for _, name := range jobs {
		doc := load(t, name)
		if first, second := all(doc), all(doc); first != second {
			t.Errorf("%s: two runs differ", name)
		}
	}
}
