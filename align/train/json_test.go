package train_test

import (
	"encoding/json"
	"math/rand/v2"
	"reflect"
	"testing"

	"example.org/collinear/align/train"
	"github.com/google/go-cmp/cmp"
)

// identical compares values with all that is not exported in them.
func identical(a, b any) bool { return reflect.DeepEqual(a, b) }

// roundTrip writes a value and reads it back into another of its type.
func roundTrip[T any](t *testing.T, name string, v T) T {
	t.Helper()
	data, err := json.Marshal(v)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	var read T
	if err := json.Unmarshal(data, &read); err != nil {
		t.Fatalf("%s: %v in %s", name, err, data)
	}
	again, err := json.Marshal(read)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if diff := cmp.Diff(string(data), string(again)); diff != "" {
		t.Errorf("%s: written again it differs (-first +second):\n%s", name, diff)
	}
	return read
}

// A train that was written and read has the same plan, and the plan can be written
// and read.
func TestRoundTrip(t *testing.T) {
	trains := map[string]train.Train{"per plane": four(true), "vectors": four(false), "pair": pair(), "three": three(t)}
	for seed := range uint64(10) {
		trains["random"] = job{machines: 3, crowded: true, away: true, scale: 1}.draw(rand.New(rand.NewPCG(seed, 1)))
		for name, tr := range trains {
			read := roundTrip(t, name, tr)
			p := plan(t, tr, train.TotalTravel)
			q := plan(t, read, train.TotalTravel)
			if !identical(p, q) {
				t.Errorf("%s: read from JSON it has another plan", name)
			}
			if got := roundTrip(t, name, p); !identical(p.Steps, got.Steps) || !identical(p.InTheWay, got.InTheWay) || p.Reach != got.Reach || p.Proven != got.Proven {
				t.Errorf("%s: the plan comes back as another", name)
			}
		}
	}
}

func TestLimitJSON(t *testing.T) {
	rows := []struct {
		limit train.Limit
		want  string
	}{
		{train.Limit{}, `{}`},
		{train.Fixed(), `{"at_least":"0 mm","at_most":"0 mm"}`},
		{train.Between(-300*um, 2*mm), `{"at_least":"-0.3 mm","at_most":"2 mm"}`},
		{train.AtLeast(0), `{"at_least":"0 mm"}`},
		{train.AtMost(-2 * mm), `{"at_most":"-2 mm"}`},
	}
	for _, row := range rows {
		data, err := json.Marshal(row.limit)
		if err != nil || string(data) != row.want {
			t.Errorf("%v is written %s (%v), want %s", row.limit, data, err, row.want)
		}
		if got := roundTrip(t, row.want, row.limit); got != row.limit {
			t.Errorf("%s comes back as %v", row.want, got)
		}
	}
}

// An end that is misspelt would leave a station free, and a limit that is read over
// another takes nothing over from it.
func TestLimitRefusesOtherNames(t *testing.T) {
	for _, text := range []string{`{"at_lest":"-0.3 mm"}`, `{"low":"0 mm"}`, `{"at_least":-0.3}`, `{"at_most":"high"}`, `"free"`, `[]`} {
		l := train.Fixed()
		if err := json.Unmarshal([]byte(text), &l); err == nil {
			t.Errorf("%s is read as %v", text, l)
		}
		if l != train.Fixed() {
			t.Errorf("%s is refused and leaves %v", text, l)
		}
	}
	l := train.Fixed()
	if err := json.Unmarshal([]byte(`{"at_most":"1 mm"}`), &l); err != nil || l != train.AtMost(1*mm) {
		t.Errorf("read over Fixed: %v (%v)", l, err)
	}
}

// The wire form of a limit in a train, and of a foot that has none.
func TestFreeFeetSayNothing(t *testing.T) {
	data, err := json.Marshal(train.Foot{Name: "inboard", X: 1 * mm, Vertical: train.AtLeast(0)})
	if want := `{"name":"inboard","x":"1 mm","vertical":{"at_least":"0 mm"}}`; err != nil || string(data) != want {
		t.Errorf("written %s (%v), want %s", data, err, want)
	}
}
