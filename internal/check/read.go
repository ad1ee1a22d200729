package check

import (
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/units"
)

// Read reads JSON into a W, which is how a type stands on the wire: a struct
// without a reader of its own, which embeds none. It is for types that read
// themselves.
//
// It refuses text that is not JSON and values of a wrong type (Malformed), a number
// that a float64 does not hold (OutOfRange), a member that W does not have
// (Unknown), since one that is misspelt would be taken for one that was left out, and
// a member that is needed and is null or left out (Missing). What parts of W find
// wrong with themselves comes with it. All faults come at once, up to two hundred,
// with paths from the text.
func Read[W any](data []byte, needed ...string) (wire W, err error) {
	if !json.Valid(data) {
		return wire, &units.Fault{Code: units.Malformed, Value: strconv.Quote(short(string(data))), Want: "JSON"}
	}
	var faults Faults
	if decode(string(data), &wire) != nil {
		l := locator{fits: func(text string) error { return decode(text, new(W)) }}
		l.find(&faults, Path{}, place{text: string(data)})
	}
	faults.needed(string(data), needed)
	return wire, faults.Err()
}

func decode(text string, into any) error {
	strict := json.NewDecoder(strings.NewReader(text))
	strict.DisallowUnknownFields()
	return strict.Decode(into)
}

func (f *Faults) needed(text string, names []string) {
	if len(names) == 0 {
		return
	}
	empty, parts := split(text)
	if empty != "{}" && text != "null" {
		return // a fault already
	}
	var root Path
	for _, name := range names {
		given := func(p part) bool { return strings.EqualFold(p.name, name) && p.text != "null" } // as encoding/json tells names apart
		if !slices.ContainsFunc(parts, given) {
			f.Add(units.Missing, root.Field(name), nil, "a value: nothing stands for one that is left out")
		}
	}
}

// locator finds the parts of a text that do not fit, by trying each without the
// others: encoding/json tells of the first, and mostly not where it is.
type locator struct{ fits func(text string) error }

// place is a part of a document, with what has to stand around it if all its
// neighbours are left out.
type place struct{ before, text, after string }

func (p place) with(text string) string { return p.before + text + p.after }

// mostFaults is how many are told of one document: more than anybody mends at once.
const mostFaults = 200

// find notes what is wrong with a part. Where the part would not fit either if it
// were empty, it is wrong itself, or reads itself and has said what is wrong.
func (l locator) find(faults *Faults, at Path, p place) {
	err := l.fits(p.with(p.text))
	if err == nil || faults.Len() >= mostFaults {
		return
	}
	before := faults.Len()
	if empty, parts := split(p.text); empty != "" && l.fits(p.with(empty)) == nil {
		for i, inner := range parts {
			step := at.Index(i)
			if inner.key != "" {
				step = at.Field(inner.name)
			}
			l.find(faults, step, place{p.before + empty[:1] + inner.key, inner.text, empty[1:] + p.after})
		}
	}
	if faults.Len() == before {
		l.note(faults, at, p, err)
	}
}

// note says what is wrong with a part as a whole.
func (l locator) note(faults *Faults, at Path, p place, err error) {
	var shape *json.UnmarshalTypeError
	switch {
	case len(units.Faults(err)) > 0:
		faults.Adopt(at, err)
	case !errors.As(err, &shape):
		faults.Add(units.Unknown, at, short(p.text), "a member that is known here")
	case tooLarge(p.text):
		faults.Add(units.OutOfRange, at, short(p.text), "a number that a float64 holds")
	default:
		faults.Add(units.Malformed, at, short(p.text), l.wanted(p))
	}
}

func tooLarge(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return errors.Is(err, strconv.ErrRange)
}

// wanted says what would fit.
func (l locator) wanted(p place) string {
	for _, shape := range [...]struct{ text, words string }{
		{"0.5", "a number"}, {"0", "a whole number"}, {"true", "true or false"}, {"[]", "a list"}, {"{}", "an object"},
	} {
		var wrong *json.UnmarshalTypeError
		if !errors.As(l.fits(p.with(shape.text)), &wrong) {
			return shape.words
		}
	}
	return "text: a word, or a quantity with its unit"
}

// part is a member of an object or an element of a list.
type part struct{ name, key, text string } // key is the name as it stands in the text, with its colon; empty in a list

// split takes an object or a list apart, and returns what an empty one looks like; it
// returns none of any other value. The text is sound JSON.
func split(text string) (empty string, parts []part) {
	d := json.NewDecoder(strings.NewReader(text))
	first, _ := d.Token()
	switch first {
	case json.Delim('{'):
		empty = "{}"
	case json.Delim('['):
		empty = "[]"
	default:
		return "", nil
	}
	for err := error(nil); err == nil && d.More(); {
		var p part
		if empty == "{}" {
			name, _ := d.Token()
			p.name, _ = name.(string)
			quoted, _ := json.Marshal(p.name) // a text always has a JSON form
			p.key = string(quoted) + ":"
		}
		var value json.RawMessage
		err = d.Decode(&value) // none, as all of it is sound
		p.text = string(value)
		parts = append(parts, p)
	}
	return empty, parts
}

// short cuts what was found to what fits into a line.
func short(text string) string {
	return strings.Join(strings.Fields(strings.ToValidUTF8(text[:min(len(text), 40)], "")), " ")
}
