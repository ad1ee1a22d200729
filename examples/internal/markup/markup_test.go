package markup

import (
	"encoding/xml"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Any text and any attribute comes back as it went in.
func TestTextComesBack(t *testing.T) {
	printable := rapid.StringMatching(`[ -~äöü≤°]*`)
	rapid.Check(t, func(t *rapid.T) {
		text, value := printable.Draw(t, "text"), printable.Draw(t, "value")
		var w Writer
		w.Open("a", "b", value, "left", "")
		w.Leaf("c", text, "d", value)
		w.Void("e", "f", value)
		w.End()
		var got struct {
			B    string  `xml:"b,attr"`
			Left *string `xml:"left,attr"`
			C    struct {
				D string `xml:"d,attr"`
				T string `xml:",chardata"`
			} `xml:"c"`
			E struct {
				F string `xml:"f,attr"`
			} `xml:"e"`
		}
		if err := xml.NewDecoder(strings.NewReader(w.String())).Decode(&got); err != nil {
			t.Fatalf("%v in %s", err, w.String())
		}
		if got.B != value || got.C.D != value || got.E.F != value || got.C.T != text || got.Left != nil {
			t.Errorf("%+v from %s", got, w.String())
		}
	})
}
