package adapter

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strconv"
	"strings"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json/jsontext"
)

// codesOnWire gives faults of the library the codes of the protocol, where the
// two differ: they do in what stands in the input and cannot be used.
func codesOnWire(err error, input jsontext.Value) {
	var document any // read once it is needed
	for _, fault := range units.Faults(err) {
		if fault.Code != units.Missing && fault.Code != units.Unknown {
			continue
		}
		if document == nil {
			document = read(input)
		}
		if text, there := textAt(document, fault.Path); there {
			fault.Code = codeOnWire(fault, text)
		}
	}
}

// read reads any document; numbers stay as they are written.
func read(input jsontext.Value) (document any) {
	dec := json.NewDecoder(bytes.NewReader(input))
	dec.UseNumber()
	if dec.Decode(&document) != nil {
		return struct{}{} // nothing stands in it
	}
	return document
}

// numberAndUnit is a number, decimal or a fraction, and what may be a unit behind it.
var numberAndUnit = regexp.MustCompile(`^[+-]?([0-9]*\.?[0-9]+([eE][+-]?[0-9]+)?|([0-9]+[ -])?[0-9]+/[0-9]+) ?([^0-9.,/+\s-]\S*|1/\S+)$`)

// codeOnWire returns the code of a fault whose value is this text. To the
// library a unit that is left out is missing, a unit is whatever stands behind
// the number, and a zero is a value that is left out.
func codeOnWire(fault *units.Fault, text string) units.Code {
	unreadable := strings.HasPrefix(fault.Want, "units.Parse") && !strings.Contains(fault.Want, "Unit: ")
	switch {
	case unreadable && fault.Code == units.Missing,
		unreadable && fault.Code == units.Unknown && !numberAndUnit.MatchString(text):
		return units.Malformed
	case fault.Code == units.Missing && (fault.Value == "" || strings.HasPrefix(fault.Value+" ", "0 ")):
		return units.OutOfRange
	}
	return fault.Code
}

// textAt returns the number, or the text that is not empty, at a path of a
// document.
func textAt(document any, path string) (text string, there bool) {
	at := document
	for _, step := range strings.Split(path, "/")[1:] {
		at = stepInto(at, unescape.Replace(step))
	}
	switch found := at.(type) {
	case string:
		return found, found != ""
	case json.Number:
		return found.String(), true
	}
	return "", false
}

var unescape = strings.NewReplacer("~1", "/", "~0", "~")

// stepInto takes one step of a path; it leads nowhere where nothing is.
func stepInto(at any, step string) any {
	switch list := at.(type) {
	case map[string]any:
		return list[step]
	case []any:
		if i, err := strconv.Atoi(step); err == nil && i >= 0 && i < len(list) {
			return list[i]
		}
	}
	return nil
}
