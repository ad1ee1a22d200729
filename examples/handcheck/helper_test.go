package main

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/units"
)

// ran is what a run of the program came to.
type ran struct {
	code           int
	stdout, stderr string
}

// play runs the program on arguments and a standard input.
func play(stdin string, args ...string) ran {
	var stdout, stderr bytes.Buffer
	code := run(args, strings.NewReader(stdin), &stdout, &stderr)
	return ran{code, stdout.String(), stderr.String()}
}

// check has a sheet marked.
func check(sheet []byte) ran { return play(string(sheet), "-check", "-") }

// An edit changes a document.
type edit func(t testing.TB, doc []byte) []byte

// with sets the member at a JSON Pointer to a JSON value.
func with(pointer, value string) edit {
	return inside(pointer, func(in any, key string) {
		if list, ok := in.([]any); ok {
			i, _ := strconv.Atoi(key)
			list[i] = json.RawMessage(value)
			return
		}
		in.(map[string]any)[key] = json.RawMessage(value)
	})
}

// without takes a member out of its object.
func without(pointer string) edit {
	return inside(pointer, func(in any, key string) {
		if _, there := in.(map[string]any)[key]; !there {
			panic(pointer + ": nothing there to take out")
		}
		delete(in.(map[string]any), key)
	})
}

// all does one edit after another.
func all(edits ...edit) edit {
	return func(t testing.TB, doc []byte) []byte {
		for _, e := range edits {
			doc = e(t, doc)
		}
		return doc
	}
}

// whole takes the place of the document.
func whole(text string) edit { return func(testing.TB, []byte) []byte { return []byte(text) } }

// inside calls do with the object or list that holds what a pointer points to.
func inside(pointer string, do func(in any, key string)) edit {
	return func(t testing.TB, doc []byte) []byte {
		t.Helper()
		var tree any
		if err := json.Unmarshal(doc, &tree); err != nil {
			t.Fatal(err)
		}
		steps := strings.Split(pointer, "/")[1:]
		in := tree
		for _, step := range steps[:len(steps)-1] {
			if list, ok := in.([]any); ok {
				i, _ := strconv.Atoi(step)
				in = list[i]
			} else {
				in = in.(map[string]any)[step]
			}
		}
		do(in, steps[len(steps)-1])
		changed, err := json.Marshal(tree)
		if err != nil {
			t.Fatal(err)
		}
		return changed
	}
}

// answered replaces all answers.
func answered(lines ...string) edit {
	answers := map[string]string{}
	for i := 0; i < len(lines); i += 2 {
		answers[lines[i]] = lines[i+1]
	}
	value, err := json.Marshal(answers)
	if err != nil {
		panic(err)
	}
	return with("/answers", string(value))
}

// mustRead reads a document that has to be sound.
func mustRead(t testing.TB, data []byte) *document {
	t.Helper()
	d, err := read(data)
	if err != nil {
		t.Fatalf("refused: %v\n%s", err, data)
	}
	return d
}

// faults lists the faults of an error as "code path".
func faults(t testing.TB, err error) []string {
	t.Helper()
	var list []string
	for _, f := range units.Faults(err) {
		if strings.Contains(f.Error(), "\n") {
			t.Errorf("%q is more than a line", f.Error())
		}
		list = append(list, string(f.Code)+" "+f.Path)
	}
	return list
}

// flat is a text with all white space made single spaces.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

// inOrder asks for texts that follow one another.
func inOrder(t testing.TB, text string, wanted []string) {
	t.Helper()
	rest := flat(text)
	for _, want := range wanted {
		_, after, there := strings.Cut(rest, flat(want))
		if !there {
			t.Fatalf("%q is not (any more) in\n%s", want, text)
		}
		rest = after
	}
}
