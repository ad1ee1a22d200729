package main

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// An edit changes a document.
type edit func(t rapid.TB, doc []byte) []byte

// with sets the member at a JSON Pointer to a JSON value.
func with(pointer, value string) edit {
	return at(pointer, func(in any, key string) {
		put(in, key, json.RawMessage(value))
	})
}

// without takes a member out of its object.
func without(pointer string) edit {
	return at(pointer, func(in any, key string) {
		if _, there := in.(map[string]any)[key]; !there {
			panic(pointer + ": nothing there to take out")
		}
		delete(in.(map[string]any), key)
	})
}

// all does one edit after another.
func all(edits ...edit) edit {
	return func(t rapid.TB, doc []byte) []byte {
		for _, e := range edits {
			doc = e(t, doc)
		}
		return doc
	}
}

// whole takes the place of the document.
func whole(text string) edit { return func(rapid.TB, []byte) []byte { return []byte(text) } }

// at calls do with the object or list that holds what a pointer points to.
func at(pointer string, do func(in any, key string)) edit {
	return func(t rapid.TB, doc []byte) []byte {
		t.Helper()
		var tree any
		if err := json.Unmarshal(doc, &tree); err != nil {
			t.Fatal(err)
		}
		steps := strings.Split(pointer, "/")[1:]
		in := tree
		for _, step := range steps[:len(steps)-1] {
			in = get(in, step)
		}
		do(in, steps[len(steps)-1])
		changed, err := json.Marshal(tree)
		if err != nil {
			t.Fatal(err)
		}
		return changed
	}
}

func get(in any, key string) any {
	if list, ok := in.([]any); ok {
		return list[number(key)]
	}
	return in.(map[string]any)[key]
}

func put(in any, key string, value any) {
	if list, ok := in.([]any); ok {
		list[number(key)] = value
		return
	}
	in.(map[string]any)[key] = value
}

func number(key string) int {
	i, err := strconv.Atoi(key)
	if err != nil {
		panic(err)
	}
	return i
}

// pointers lists the JSON Pointers of all values below in.
func pointers(in any, at string) []string {
	var list []string
	add := func(key string, value any) {
		list = append(append(list, at+"/"+key), pointers(value, at+"/"+key)...)
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
	return list
}

func mustSolve(t rapid.TB, doc []byte) record {
	t.Helper()
	r, err := outcome(doc)
	if err != nil {
		t.Fatalf("refused: %v\n%s", err, doc)
	}
	return r
}

// faults lists the faults of an error as "code path", and asks each to be one line
// that says what was wanted.
func faults(t rapid.TB, err error) []string {
	t.Helper()
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
		if f.Want == "" {
			t.Errorf("%v does not say what was wanted", f)
		}
	}
	var lines strings.Builder
	if err != nil {
		strict.Complain(&lines, "FILE", err)
	}
	if n := strings.Count(lines.String(), "\n"); n != len(list) {
		t.Errorf("%d lines for %d faults: %q", n, len(list), lines.String())
	}
	return list
}

// everyMember lists the pointers of the job that is built in.
func everyMember(t rapid.TB) []string {
	t.Helper()
	var tree any
	if err := json.Unmarshal(builtIn, &tree); err != nil {
		t.Fatal(err)
	}
	return pointers(tree, "")
}
