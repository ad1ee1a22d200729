package main

import (
	"encoding"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/pumpset"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// entry is a field of a job as the page knows it.
type entry struct {
	Name, Label, Hint       string
	Part, List, Item        string
	Needed, Yes, One, Words bool
	Choice                  map[string]string
	Start                   any
}

func loadFormat(t *testing.T) map[string][]entry {
	t.Helper()
	data, err := files.ReadFile("format.json")
	if err != nil {
		t.Fatal(err)
	}
	dec := json.NewDecoder(strings.NewReader(string(data)))
	dec.DisallowUnknownFields()
	var format map[string][]entry
	if err := dec.Decode(&format); err != nil {
		t.Fatal(err)
	}
	return format
}

// The page has a label for every field of the job format, in its order, and no
// others; it knows which are needed, what is in them, and all words to choose from.
func TestFormatIsThatOfTheJob(t *testing.T) {
	w := walk{t, loadFormat(t), map[string]reflect.Type{}}
	w.object("job", reflect.TypeFor[pumpset.Job]())
	for name := range w.format {
		if w.seen[name] == nil {
			t.Errorf("%s: no such part of a job", name)
		}
	}
}

// walk goes through the types of a job along with the page's table of them.
type walk struct {
	*testing.T
	format map[string][]entry
	seen   map[string]reflect.Type
}

func (w walk) object(name string, of reflect.Type) {
	w.Helper()
	if was, twice := w.seen[name]; twice {
		if was != of {
			w.Errorf("%s is both %v and %v", name, was, of)
		}
		return
	}
	w.seen[name] = of
	fields, known := w.format[name]
	if !known {
		w.Fatalf("%s is not in the table", name)
	}
	var got, want []string
	for _, f := range fields {
		got = append(got, f.Name)
	}
	for i := range of.NumField() {
		tag, options, _ := strings.Cut(of.Field(i).Tag.Get("json"), ",")
		want = append(want, tag)
		if at := slices.IndexFunc(fields, func(f entry) bool { return f.Name == tag }); at >= 0 {
			w.field(name, fields[at], of.Field(i).Type, !strings.HasPrefix(options, "omit"))
		}
	}
	if !slices.Equal(got, want) {
		w.Errorf("%s has the fields\n%q, want\n%q", name, got, want)
	}
}

func (w walk) field(in string, f entry, of reflect.Type, needed bool) {
	w.Helper()
	at := in + "/" + f.Name
	if strings.TrimSpace(f.Label) == "" {
		w.Errorf("%s has no label", at)
	}
	if f.Needed != needed {
		w.Errorf("%s: needed is %v", at, f.Needed)
	}
	if of.Kind() == reflect.Pointer {
		of = of.Elem()
	}
	if got, want := f.kind(), kindOf(of); got != want {
		w.Errorf("%s is a %s on the page, and a %s in a job", at, got, want)
		return
	}
	switch f.kind() {
	case "part":
		w.object(f.Part, of)
	case "list":
		w.list(at, f, of.Elem())
	case "text":
		if f.Words != (of == reflect.TypeFor[strict.Words]()) {
			w.Errorf("%s: words are %v, and it is a %v", at, f.Words, of)
		}
		w.choice(at, f, of)
	}
}

func (w walk) list(at string, f entry, of reflect.Type) {
	w.Helper()
	if f.Item == "" {
		w.Errorf("%s: an element has no name", at)
	}
	if f.List != "text" {
		w.object(f.List, of)
	} else if kindOf(of) != "text" {
		w.Errorf("%s: no list of text", at)
	}
}

// choice holds the words to choose from against what reads them, and what this says
// it wants against the words.
func (w walk) choice(at string, f entry, of reflect.Type) {
	w.Helper()
	for word, text := range f.Choice {
		if err := read(of, word); err != nil || text == "" {
			w.Errorf("%s: %q (%q): %v", at, word, text, err)
		}
	}
	all := units.Faults(read(of, "no such word"))
	if len(all) == 0 || all[0].Code != units.Unknown || f.Start != nil {
		return // any text, a quantity, or the format of the document
	}
	rest := strings.TrimPrefix(all[0].Want, "one of ")
	for word := range f.Choice {
		rest = strings.Replace(rest, word, "", 1)
	}
	if rest = strings.Trim(rest, ", or"); rest != "" {
		w.Errorf("%s: %q is left of what may stand there: %q", at, rest, all[0].Want)
	}
}

func read(of reflect.Type, text string) error {
	return reflect.New(of).Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(text))
}

func (f entry) kind() string {
	switch {
	case f.Part != "":
		return "part"
	case f.List != "":
		return "list"
	case f.Yes:
		return "yes or no"
	}
	return "text"
}

func kindOf(of reflect.Type) string {
	switch {
	case reflect.PointerTo(of).Implements(reflect.TypeFor[encoding.TextUnmarshaler]()):
		return "text"
	case of.Kind() == reflect.Struct:
		return "part"
	case of.Kind() == reflect.Slice:
		return "list"
	case of.Kind() == reflect.Bool:
		return "yes or no"
	}
	return of.String()
}
