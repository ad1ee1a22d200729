package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/collinear/examples/conform/adapter"
)

var update = flag.Bool("update", false, "write down what this module answers where platforms may differ in the last digits")

// exactly is the SHA-256 of all answers to the suite but those that library functions of
// others have a part in. It is the same on every platform, for this module keeps to
// + - * / and square roots there, each rounded by itself, and to a sine of its own. A
// change of a formula, or of the suite, changes it: look at which answers, then write the
// new one here.
const exactly = "dc61a95162360b44f4165b28f31a240f1733b02a36d52ea7a323aaa61f061fdb"

// elsewhere holds the other answers as an amd64 processor gave them.
const elsewhere = "testdata/elsewhere.json"

// replies are the answers of this module to the whole suite, those that are the same on
// every platform and the others by the id of their vector.
func replies(t *testing.T) (exact []byte, other map[string]json.RawMessage) {
	t.Helper()
	s, _ := ours(t)
	p := newProgram(inside(adapter.Serve), time.Hour)
	defer p.stop()
	other = map[string]json.RawMessage{}
	for _, v := range s.vectors {
		a, bad := p.ask(v.Op, v.Input)
		if bad != nil {
			t.Fatal(v.ID, bad)
		}
		if a.Error == nil && mayDiffer(v.Op, a.Result) {
			other[v.ID] = a.Result
		} else {
			exact = fmt.Appendf(exact, "%s %s %v\n", v.ID, a.Result, a.Error)
		}
	}
	return exact, other
}

// mayDiffer tells whether quantiles, tails or matrices of other libraries are in an answer.
func mayDiffer(op string, result []byte) bool {
	return op == "compare" || op == "merge" || bytes.Contains(result, []byte(`"half":`))
}

func TestExactAnswersAreTheSameEverywhere(t *testing.T) {
	exact, other := replies(t)
	sum := sha256.Sum256(exact)
	if got := hex.EncodeToString(sum[:]); got != exactly {
		t.Errorf("got %s, want %s", got, exactly)
	}
	if *update {
		text, err := json.MarshalIndent(other, "", " ")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(elsewhere, append(text, '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// TestOtherAnswersAgreeEverywhere holds the others against those of another platform, to
// 1e-12 of the largest number with the same unit in the same answer.
func TestOtherAnswersAgreeEverywhere(t *testing.T) {
	text, err := os.ReadFile(elsewhere)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]json.RawMessage{}
	if err := json.Unmarshal(text, &want); err != nil {
		t.Fatal(err)
	}
	_, got := replies(t)
	if len(got) != len(want) || len(got) < 20 {
		t.Fatalf("%d answers, %d were written down", len(got), len(want))
	}
	for id := range want {
		a, b := numbers(t, got[id]), numbers(t, want[id])
		if len(a) != len(b) {
			t.Fatalf("%s: %s, want %s", id, got[id], want[id])
		}
		scale := map[string]float64{}
		for _, n := range b {
			scale[n.unit] = max(scale[n.unit], math.Abs(n.value))
		}
		for i := range b {
			if a[i].unit != b[i].unit || !(math.Abs(a[i].value-b[i].value) <= 1e-12*scale[b[i].unit]) {
				t.Errorf("%s: %v, want %v", id, a[i], b[i])
			}
		}
	}
}

// amount is a number of an answer with its unit, or a word of it as a unit.
type amount struct {
	value float64
	unit  string
}

// numbers lists what stands in an answer, in its order.
func numbers(t *testing.T, reply []byte) (list []amount) {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(reply))
	for d.More() || len(list) == 0 {
		token, err := d.Token()
		if err != nil {
			t.Fatal(err)
		}
		switch x := token.(type) {
		case float64:
			list = append(list, amount{value: x})
		case string:
			number, unit, _ := strings.Cut(x, " ")
			value, err := strconv.ParseFloat(number, 64)
			if err != nil {
				unit = x
			}
			list = append(list, amount{value, unit})
		}
	}
	return list
}
