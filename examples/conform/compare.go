package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math/big"
	"path"
	"reflect"
	"slices"
)

// difference is one place where an answer is not as wanted.
type difference struct {
	At     string `json:"at"`
	Got    string `json:"got"`
	Want   string `json:"want"`
	Within string `json:"within,omitempty"`

	junk bool // not as the protocol has it, rather than off
}

// comparison walks through a wanted result and what came, side by side.
type comparison struct {
	tolerance   map[string]tolerance
	differences []difference
}

// compare returns where an answer differs from the result of a vector. What the
// answer has beyond that is not looked at.
func compare(want, got json.RawMessage, tolerance map[string]tolerance) []difference {
	c := comparison{tolerance: tolerance}
	g := decode(got)
	c.values("", "", decode(want), g)
	if isEmpty(g) {
		for i := range c.differences {
			c.differences[i].junk = true
		}
	}
	return c.differences
}

func isEmpty(v any) bool {
	o, isObject := v.(map[string]any)
	return isObject && len(o) == 0
}

// decode reads JSON into maps, lists, texts and numbers as they stand.
func decode(text json.RawMessage) any {
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var v any
	if d.Decode(&v) != nil {
		return nil // json.Valid has been asked: there was no such member
	}
	return v
}

// values compares at a place; pattern is the place with * for each index.
func (c *comparison) values(at, pattern string, want, got any) {
	switch w := want.(type) {
	case map[string]any:
		c.objects(at, pattern, w, got)
	case []any:
		c.lists(at, pattern, w, got)
	default:
		c.same(at, pattern, w, got)
	}
}

// off notes a value that is another than is wanted, or that is not there.
func (c *comparison) off(at string, got, want any, within string) {
	c.differences = append(c.differences, difference{At: at, Got: show(got), Want: show(want), Within: within})
}

// junk notes a value that cannot stand where it does, whatever is wanted.
func (c *comparison) junk(at string, got, want any) {
	c.differences = append(c.differences, difference{At: at, Got: show(got), Want: show(want), junk: true})
}

func show(v any) string {
	if v == nil {
		return "nothing"
	}
	text, err := json.Marshal(v)
	if err != nil {
		return short(fmt.Sprint(v))
	}
	return short(string(text))
}

func (c *comparison) objects(at, pattern string, want map[string]any, got any) {
	g, isObject := got.(map[string]any)
	if !isObject {
		c.other(at, got, want)
		return
	}
	for _, name := range slices.Sorted(maps.Keys(want)) {
		c.values(at+"/"+name, pattern+"/"+name, want[name], g[name])
	}
}

func (c *comparison) lists(at, pattern string, want []any, got any) {
	g, isList := got.([]any)
	switch {
	case isList && pattern == "/warnings":
		c.among(at, want, g)
	case !isList:
		c.other(at, got, want)
	case len(g) != len(want):
		c.off(at, got, want, "")
	default:
		for i := range want {
			c.values(fmt.Sprintf("%s/%d", at, i), pattern+"/*", want[i], g[i])
		}
	}
}

// among asks that every wanted warning is there, in whatever company.
func (c *comparison) among(at string, want, got []any) {
	for _, w := range want {
		if !slices.ContainsFunc(got, func(g any) bool { return sameWarning(w, g) }) {
			c.off(at, got, w, "")
		}
	}
}

func sameWarning(want, got any) bool {
	w, _ := want.(map[string]any)
	g, _ := got.(map[string]any)
	return w["code"] == g["code"] && w["path"] == g["path"]
}

// other notes a value of another type than is wanted, unless there is none.
func (c *comparison) other(at string, got, want any) {
	if got == nil {
		c.off(at, got, want, "")
	} else {
		c.junk(at, got, want)
	}
}

// same compares what is neither object nor list. Numbers without a unit are text
// in vectors and numbers in answers.
func (c *comparison) same(at, pattern string, want, got any) {
	w, err := readQuantity(plain(want))
	switch {
	case err != nil && reflect.TypeOf(got) != reflect.TypeOf(want):
		c.other(at, got, want)
	case err != nil && got != want:
		c.off(at, got, want, "")
	case err == nil:
		c.near(at, pattern, want, got, w)
	}
}

// near compares quantities.
func (c *comparison) near(at, pattern string, want, got any, w quantity) {
	g, err := readQuantity(plain(got))
	_, isNumber := got.(json.Number)
	switch {
	case err != nil || g.of != w.of || isNumber != (w.of == "number"):
		c.other(at, got, want)
	case apart(w, g, isClock(pattern)).Cmp(c.within(pattern)) > 0:
		c.off(at, got, want, c.tolerance[pattern].Within)
	}
}

// isClock tells whether an angle at a place is one on the clock's face, where a
// full turn is none.
func isClock(pattern string) bool {
	switch path.Base(pattern) {
	case "at", "supplied", "middle":
		return true
	}
	return false
}

// plain returns a text or a number as text.
func plain(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case json.Number:
		return v.String()
	}
	return ""
}

// within returns the tolerance at a place, in the unit that readQuantity
// counts in; none is zero.
func (c *comparison) within(pattern string) *big.Rat {
	t, there := c.tolerance[pattern]
	if !there {
		return new(big.Rat)
	}
	q, err := readWidth(t.Within)
	if err != nil {
		panic("the suite has a tolerance that is no quantity: " + err.Error()) // its test reads them all
	}
	return q.value
}
