package main

import (
	"bytes"
	"errors"
	"io"
	"maps"
	"slices"
	"strings"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
	"github.com/go-json-experiment/json/jsontext"
)

// takenOut holds the place of a list whose names are those of the lines of a
// working, which strict cannot know: takeOut puts empty text there.
type takenOut struct{}

// UnmarshalText takes the text that stands for the list.
func (*takenOut) UnmarshalText([]byte) error { return nil }

// takeOut takes the values of some members out of a document. One that it cannot
// read stays as it is: strict says what is wrong there.
func takeOut(data []byte, names ...string) (rest []byte, taken map[string]jsontext.Value) {
	list, err := members(data)
	if err != nil || len(data) > bounds.Size {
		return data, nil
	}
	taken = map[string]jsontext.Value{}
	out := []byte{'{'}
	for i, m := range list {
		if slices.Contains(names, m.name) {
			taken[m.name] = m.value // doubled or not: strict refuses that
			m.value = jsontext.Value(`""`)
		}
		if i > 0 {
			out = append(out, ',')
		}
		out = append(append(append(out, quoted(m.name)...), ':'), m.value...)
	}
	return append(out, '}'), taken
}

// member is a name in an object, and the value behind it.
type member struct {
	name  string
	value jsontext.Value
}

// members lists what stands in an object, in its order, doubled or not.
func members(data []byte) ([]member, error) {
	dec := jsontext.NewDecoder(bytes.NewReader(data), jsontext.AllowDuplicateNames(true))
	if start, err := dec.ReadToken(); err != nil || start.Kind() != '{' {
		return nil, errors.New("no object")
	}
	var list []member
	for dec.PeekKind() != '}' {
		name, err := dec.ReadToken()
		if err != nil {
			return nil, err
		}
		m := member{name: name.String()}
		value, err := dec.ReadValue()
		if err != nil {
			return nil, err
		}
		m.value = value.Clone()
		list = append(list, m)
	}
	if _, err := dec.ReadToken(); err != nil {
		return nil, err
	}
	if _, err := dec.ReadToken(); err != io.EOF {
		return nil, errors.New("something after the object")
	}
	return list, nil
}

func quoted(text string) jsontext.Value {
	value, err := jsontext.AppendQuote(nil, text)
	if err != nil {
		return jsontext.Value(`""`) // no text that the decoder gave
	}
	return value
}

// texts reads a list of texts by name.
func texts(faults *strict.Faults, at jsontext.Pointer, list jsontext.Value) map[string]string {
	if list == nil {
		return nil
	}
	all, err := members(list)
	if err != nil {
		faults.Add(units.Malformed, string(at), strict.Short(string(list)), "an object with a text for each line")
	}
	found := map[string]string{}
	for _, m := range all {
		path := string(at.AppendToken(m.name))
		_, twice := found[m.name]
		text, err := jsontext.AppendUnquote(nil, m.value)
		switch {
		case twice:
			faults.Add(units.Duplicate, path, strict.Short(m.name), "each line once")
		case err != nil:
			faults.Add(units.Malformed, path, strict.Short(string(m.value)), "text in quotes, an answer with its unit")
		default:
			found[m.name] = strings.TrimSpace(string(text))
		}
	}
	return found
}

// lengths reads a list of lengths by name. Empty ones are left out.
func lengths(faults *strict.Faults, at jsontext.Pointer, list jsontext.Value) map[string]units.Length {
	found := map[string]units.Length{}
	all := texts(faults, at, list)
	for _, name := range slices.Sorted(maps.Keys(all)) {
		if all[name] == "" {
			continue
		}
		l, err := units.ParseLength(all[name])
		faults.Adopt(err, func(string) string { return string(at.AppendToken(name)) })
		found[name] = l
	}
	return found
}
