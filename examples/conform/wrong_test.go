package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/collinear/examples/conform/adapter"
)

// object is a JSON object.
type object = map[string]any

// slip is one deliberate mistake: this module's adapter with the question spoiled
// on the way in, or the answer on the way out.
type slip struct {
	flag  string
	spoil func(op string, in object)
	twist func(op string, in object, answer object)
}

// wrongly runs the adapter with a slip in it.
func wrongly(w slip) func(io.Reader, io.Writer) error {
	return func(in io.Reader, out io.Writer) error {
		questions := json.NewDecoder(in)
		for {
			var line json.RawMessage
			if err := questions.Decode(&line); err != nil {
				return nil // the end, or a bad line, which is not what is tested here
			}
			if _, err := out.Write(w.answer(line)); err != nil {
				return err
			}
		}
	}
}

func (w slip) answer(line []byte) []byte {
	question, asked := object{}, object{}
	json.Unmarshal(line, &question)
	json.Unmarshal(line, &asked)
	op, _ := question["op"].(string)
	in, isObject := question["input"].(object)
	if isObject && w.spoil != nil {
		w.spoil(op, in)
	}
	answer := honest(question)
	if isObject && w.twist != nil {
		before, _ := asked["input"].(object)
		w.twist(op, before, answer)
	}
	text, err := json.Marshal(answer)
	if err != nil {
		panic(err) // the answer was JSON a moment ago
	}
	return append(text, '\n')
}

// honest asks the adapter.
func honest(question object) object {
	line, err := json.Marshal(question)
	if err != nil {
		panic(err) // the question was JSON a moment ago
	}
	var out bytes.Buffer
	if err := adapter.Serve(bytes.NewReader(line), &out); err != nil {
		panic(err)
	}
	answer := object{}
	json.Unmarshal(out.Bytes(), &answer)
	return answer
}

// each calls f for every object in a document, with the name under which it
// stands.
func each(name string, v any, f func(name string, o object)) {
	switch v := v.(type) {
	case object:
		f(name, v)
		for n, member := range v {
			each(n, member, f)
		}
	case []any:
		for _, element := range v {
			each(name, element, f)
		}
	}
}

// scaled multiplies a quantity.
func scaled(text any, k float64) any {
	t, isText := text.(string)
	q, err := readQuantity(t)
	if !isText || err != nil || strings.Contains(t, ":") {
		return text
	}
	x, _ := q.value.Float64()
	unit := map[string]string{"length": " mm", "slope": " mm/m", "angle": " deg", "expansion": " um/m/K", "rotational speed": " rpm", "speed": " mm/s"}[q.of]
	if unit == "" {
		return text
	}
	return strconv.FormatFloat(x*k, 'g', -1, 64) + unit
}

// times multiplies the named members of an object where they are there.
func (m member) times(o object, k float64) {
	for _, name := range m {
		if v, there := o[name]; there {
			o[name] = scaled(v, k)
		}
	}
}

type member []string

// values multiplies all readings of a sweep.
func values(o object, k float64) {
	readings, _ := o["readings"].([]any)
	for _, r := range readings {
		if r, isObject := r.(object); isObject {
			member{"value"}.times(r, k)
		}
	}
}

func float(text any) float64 {
	t, _ := text.(string)
	q, err := readQuantity(t)
	if err != nil {
		return math.NaN()
	}
	x, _ := q.value.Float64()
	return x
}

// result returns the result of an answer, if it has one.
func result(answer object) object {
	r, _ := answer["result"].(object)
	return r
}

// TestSlipsAreFound tests that each slip fails at least three vectors, that every
// vector that claims to betray it does, and that the report names it first: most
// alone, the others beside a mistake that the very same vectors betray.
func TestSlipsAreFound(t *testing.T) {
	notInShort(t)
	s, _ := ours(t)
	s.lines = nil
	alone := 0
	for _, w := range slips {
		t.Run(w.flag, func(t *testing.T) {
			p := newProgram(inside(wrongly(w)), time.Minute)
			defer p.stop()
			r := s.newReport()
			answers := s.answers(p)
			r.take(answers, nil, &r.Counts.Vectors)
			r.rank(s, answers)
			if len(r.Mistakes) == 0 {
				t.Fatal("nothing failed")
			}
			if why := w.named(r.first()); why != "" {
				t.Error(why)
			}
			if len(r.first()) == 1 {
				alone++
			}
			failed := map[string]bool{}
			for _, o := range r.Failures {
				failed[o.ID] = true
				if !has(o.Flags, w.flag) {
					t.Logf("%s failed and is not flagged: %s %s", o.ID, o.Kind, o.Detail)
				}
			}
			for _, v := range s.vectors {
				if has(v.Flags, w.flag) && !failed[v.ID] {
					t.Errorf("%s is flagged and did not fail", v.ID)
				}
			}
		})
	}
	if alone < 24 {
		t.Errorf("only %d of %d are named alone", alone, len(slips))
	}
}

// named says what is wrong with the mistakes that a report names first.
func (w slip) named(first []suspicion) string {
	for _, m := range first {
		if m.Flag == w.flag && m.Failed >= 3 {
			return ""
		}
	}
	return fmt.Sprintf("first are %+v", first)
}

func has(list []string, name string) bool {
	for _, x := range list {
		if x == name {
			return true
		}
	}
	return false
}

func text(x float64, unit string) string { return strconv.FormatFloat(x, 'g', -1, 64) + unit }
