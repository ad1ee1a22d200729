package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math/big"
	"slices"
	"strings"
)

// difference is one place where an answer is not as wanted.
type difference struct {
	At     string `json:"at"`
	Got    string `json:"got"`
	Want   string `json:"want"`
	Within string `json:"within,omitempty"`
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
	c.values("", "", decode(want), decode(got))
	return c.differences
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
		if !c.same(pattern, w, got) {
			c.note(at, got, want, c.tolerance[pattern].Within)
		}
	}
}

func (c *comparison) note(at string, got, want any, within string) {
	c.differences = append(c.differences, difference{at, show(got), show(want), within})
}

func show(v any) string {
	if v == nil {
		return "nothing"
	}
	text, err := json.Marshal(v)
	if err != nil {
		return fmt.Sprint(v)
	}
	return string(text)
}

func (c *comparison) objects(at, pattern string, want map[string]any, got any) {
	g, isObject := got.(map[string]any)
	if !isObject {
		c.note(at, got, want, "")
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
	case !isList || len(g) != len(want):
		c.note(at, got, want, "")
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
			c.note(at, got, w, "")
		}
	}
}

func sameWarning(want, got any) bool {
	w, _ := want.(map[string]any)
	g, _ := got.(map[string]any)
	return w["code"] == g["code"] && w["path"] == g["path"]
}

// same compares what is neither object nor list. Where the texts differ, they
// may still be the same quantity, or be close enough.
func (c *comparison) same(pattern string, want, got any) bool {
	if want == got {
		return true
	}
	w, err := readQuantity(plain(want))
	if err != nil {
		return false
	}
	g, err := readQuantity(plain(got))
	if err != nil || g.of != w.of {
		return false
	}
	return apart(w, g).Cmp(c.within(pattern)) <= 0
}

// plain returns a text or a number as text.
func plain(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case json.Number:
		return strings.TrimSpace(v.String())
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
