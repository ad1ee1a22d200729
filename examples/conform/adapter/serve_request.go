package adapter

import (
	"bytes"
	"errors"
	"io"
	"maps"
	"regexp"
	"slices"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
	"github.com/go-json-experiment/json/jsontext"
)

// request is a line, taken apart. The input is JSON, and no more is known of it.
type request struct {
	seq   jsontext.Value
	op    string
	input jsontext.Value
}

// whole is what a seq looks like, of no more digits than every language has in its
// numbers; it goes back as it came.
var whole = regexp.MustCompile(`^(0|-?[1-9][0-9]{0,14})$`)

// readRequest takes a line apart. A request that cannot be read has no seq; one
// that is JSON with a seq, and otherwise not as it should be, keeps it.
func readRequest(line []byte) (request, error) {
	members, err := readMembers(line)
	if err != nil {
		return request{}, unreadable(err)
	}
	var r request
	if r.seq = members["seq"]; !whole.Match(r.seq) {
		return request{}, unreadable(errors.New("no seq that is a whole number"))
	}
	op := members["op"]
	if op.Kind() != '"' {
		return r, unreadable(errors.New("no op"))
	}
	text, err := jsontext.AppendUnquote(nil, op)
	if err != nil {
		return r, unreadable(err)
	}
	r.op, r.input = string(text), members["input"]
	delete(members, "seq")
	delete(members, "op")
	delete(members, "input")
	if len(members) > 0 { // the first of them by name, so that the same is said each time
		return r, unreadable(errors.New("a member " + slices.Min(slices.Collect(maps.Keys(members)))))
	}
	return r, nil
}

// readMembers reads the members of the object that a line has to be.
func readMembers(line []byte) (map[string]jsontext.Value, error) {
	// What is doubled in the input is a fault of the input, with a path.
	dec := jsontext.NewDecoder(bytes.NewReader(line), jsontext.AllowDuplicateNames(true))
	if dec.PeekKind() != '{' {
		return nil, errors.New("no object")
	}
	if _, err := dec.ReadToken(); err != nil {
		return nil, err
	}
	members := map[string]jsontext.Value{}
	for dec.PeekKind() != '}' {
		if err := readMember(dec, members); err != nil {
			return nil, err
		}
	}
	if _, err := dec.ReadToken(); err != nil {
		return nil, err
	}
	switch _, err := dec.ReadToken(); err {
	case io.EOF:
		return members, nil
	case nil:
		return nil, errors.New("something after the object")
	default:
		return nil, err
	}
}

func readMember(dec *jsontext.Decoder, members map[string]jsontext.Value) error {
	token, err := dec.ReadToken()
	if err != nil {
		return err
	}
	name := token.String()
	if _, again := members[name]; again {
		return errors.New("a second member " + name)
	}
	value, err := dec.ReadValue()
	members[name] = value.Clone()
	return err
}

// unreadable is the fault of a line that is no request.
func unreadable(err error) error {
	return &units.Fault{
		Code: units.Malformed, Value: strict.Short(err.Error()),
		Want: "one line with a JSON object: seq, a whole number of at most 15 digits, op and input",
	}
}
