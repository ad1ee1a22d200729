package pumpset

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// jobs are the job files at hand: the one built in, two published examples, and
// one for each method that these leave out; the one built in also without all that
// is not alignment, and one with everything to put right.
var jobs = []string{
	"job.json",
	"testdata/alignment-alone.json",
	"testdata/bloch-geitner-p203.json",
	"testdata/mcmillan-8-3.json",
	"testdata/gauges.json",
	"testdata/spacer.json",
	"testdata/rim-gap.json",
	"testdata/mcmillan-8-3-growth.json",
	"testdata/trouble.json",
}

func load(t rapid.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// outcome does the whole job but for the flags.
func outcome(data []byte) (Record, error) {
	j, err := Read(data)
	if err != nil {
		return Record{}, err
	}
	return Solve(j)
}

func mustSolve(t rapid.TB, data []byte) Record {
	t.Helper()
	r, err := outcome(data)
	if err != nil {
		t.Fatalf("refused: %v\n%s", err, data)
	}
	return r
}

// text is a report in one system of units.
func text(t rapid.TB, r Record, s System) string {
	t.Helper()
	var out strings.Builder
	if err := WriteReport(&out, r, s); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// found lists the faults of an error as "code path". An error that holds none
// fails the test.
func found(t rapid.TB, err error) []string {
	t.Helper()
	if err == nil {
		return nil
	}
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
		if f.Want == "" {
			t.Errorf("fault does not say what was wanted: %q", f)
		}
	}
	var lines strings.Builder
	strict.Complain(&lines, "FILE", err)
	if n := strings.Count(lines.String(), "\n"); n != len(list) {
		t.Errorf("%d lines for %d faults: %q", n, len(list), lines.String())
	}
	if len(list) == 0 {
		t.Errorf("an error without a fault: %v", err)
	}
	return list
}

// An edit changes a document.
type edit func(t rapid.TB, doc []byte) []byte

// with sets the field at a JSON Pointer to a JSON value.
func with(pointer, value string) edit {
	return func(t rapid.TB, doc []byte) []byte {
		return change(t, doc, pointer, func(in any, key string) any {
			return put(t, in, key, json.RawMessage(value))
		})
	}
}

// without takes a field out.
func without(pointer string) edit {
	return func(t rapid.TB, doc []byte) []byte {
		return change(t, doc, pointer, func(in any, key string) any {
			object, ok := in.(map[string]any)
			if _, there := object[key]; !ok || !there {
				t.Fatalf("%s: nothing there to take out", pointer)
			}
			delete(object, key)
			return object
		})
	}
}

// swap replaces text, which has to be there.
func swap(old, by string) edit {
	return func(t rapid.TB, doc []byte) []byte {
		if !bytes.Contains(doc, []byte(old)) {
			t.Fatalf("%q is not in the document", old)
		}
		return bytes.Replace(doc, []byte(old), []byte(by), 1)
	}
}

func both(edits ...edit) edit {
	return func(t rapid.TB, doc []byte) []byte {
		for _, e := range edits {
			doc = e(t, doc)
		}
		return doc
	}
}

// change calls do with the object or list that holds the field at a pointer.
func change(t rapid.TB, doc []byte, pointer string, do func(in any, key string) any) []byte {
	t.Helper()
	tree := parse(t, doc)
	steps := strings.Split(pointer, "/")[1:]
	tree = descend(t, tree, steps, do)
	data, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func descend(t rapid.TB, in any, steps []string, do func(in any, key string) any) any {
	t.Helper()
	if len(steps) == 1 {
		return do(in, steps[0])
	}
	var next any
	switch in := in.(type) {
	case map[string]any:
		next = in[steps[0]]
	case []any:
		next = in[index(t, steps[0])]
	default:
		t.Fatalf("no %s in %v", steps[0], in)
	}
	return put(t, in, steps[0], descend(t, next, steps[1:], do))
}

func put(t rapid.TB, in any, key string, value any) any {
	t.Helper()
	switch in := in.(type) {
	case map[string]any:
		in[key] = value
	case []any:
		in[index(t, key)] = value
	default:
		t.Fatalf("no place for %s in %v", key, in)
	}
	return in
}

func index(t rapid.TB, key string) int {
	t.Helper()
	i, err := strconv.Atoi(key)
	if err != nil {
		t.Fatal(err)
	}
	return i
}

// pointers lists the JSON Pointers of all values below in, itself left out.
func pointers(in any, at string) []string {
	var all []string
	add := func(key string, value any) {
		at := at + "/" + escape.Replace(key)
		all = append(all, at)
		all = append(all, pointers(value, at)...)
	}
	switch in := in.(type) {
	case map[string]any:
		for key, value := range in {
			add(key, value)
		}
	case []any:
		for i, value := range in {
			add(fmt.Sprint(i), value)
		}
	}
	return all
}

// values lists the pointers of a whole document.
func values(t rapid.TB, doc []byte) []string {
	t.Helper()
	return pointers(parse(t, doc), "")
}

// parse reads a document of any kind; numbers keep their digits.
func parse(t rapid.TB, doc []byte) any {
	t.Helper()
	dec := json.NewDecoder(bytes.NewReader(doc))
	dec.UseNumber()
	var tree any
	if err := dec.Decode(&tree); err != nil {
		t.Fatal(err)
	}
	return tree
}

var escape = strings.NewReplacer("~", "~0", "/", "~1")

// exhaustive leaves out a test that goes through every field of every job.
func exhaustive(t *testing.T) {
	if testing.Short() {
		t.Skip("goes through every field of every job")
	}
}
