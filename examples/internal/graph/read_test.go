package graph

import (
	"encoding/xml"
	"errors"
	"io"
	"strconv"
	"strings"

	"pgregory.net/rapid"
)

// element is one element of a drawing, as another program reads it.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

// read reads a figure, which has to be well-formed, and to hold nothing that is no
// number or lies off its paper.
func read(t rapid.TB, f Figure) []element {
	t.Helper()
	var list []element
	dec := xml.NewDecoder(strings.NewReader(f.SVG()))
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, f.SVG())
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			list = append(list, e)
		case xml.CharData:
			list[len(list)-1].text += string(token)
		}
	}
	for _, e := range list {
		for _, p := range e.points(t) {
			if p.x < -0.01 || p.x > f.Width+0.01 || p.y < -0.01 || p.y > f.Height+0.01 {
				t.Errorf("%v of %+v is off the paper of %v by %v", p, e, f.Width, f.Height)
			}
		}
	}
	return list
}

// points are where an element lies: corners, the centre of a circle, and both ends of
// a text as wide as it is taken for.
func (e element) points(t rapid.TB) []point {
	t.Helper()
	var list []point
	for pair := range strings.FieldsSeq(e.attrs["points"]) {
		x, y, _ := strings.Cut(pair, ",")
		list = append(list, point{parsed(t, x), parsed(t, y)})
	}
	switch e.name {
	case "circle":
		list = append(list, point{parsed(t, e.attrs["cx"]), parsed(t, e.attrs["cy"])})
	case "text":
		at := point{0, parsed(t, e.attrs["y"])}
		if x := e.attrs["x"]; x != "" {
			at.x = parsed(t, x)
		}
		long := wide(e.text)
		switch e.attrs["text-anchor"] {
		case left:
			at.x -= long
		case middle:
			at.x -= long / 2
		}
		list = append(list, at, point{at.x + long, at.y - letters})
	}
	return list
}

func parsed(t rapid.TB, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || x != x || x > 1e6 || x < -1e6 {
		t.Fatalf("%q is no coordinate", text)
	}
	return x
}

// having lists the elements of a name that have an attribute of a value.
func having(list []element, name, attribute, value string) []element {
	var some []element
	for _, e := range list {
		if e.name == name && e.attrs[attribute] == value {
			some = append(some, e)
		}
	}
	return some
}
