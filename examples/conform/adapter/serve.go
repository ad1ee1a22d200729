package adapter

import (
	"bufio"
	"bytes"
	"errors"
	"io"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// longest is how many bytes a line may have, without its end: far more than any
// request needs, which is a few thousand in the suite.
const longest = 1 << 20

// Serve answers requests, one on each line, until stop or the end of the input.
// The error is that of in or out; what stands in a line never ends it.
func Serve(in io.Reader, out io.Writer) error {
	lines, answers := bufio.NewReader(in), bufio.NewWriter(out)
	for {
		line, err := readLine(lines)
		if err == io.EOF {
			return nil
		}
		if err != nil && err != errTooLong {
			return err
		}
		a, stop := answerTo(line, err)
		if err := a.write(answers); err != nil || stop {
			return err
		}
	}
}

var errTooLong = errors.New("the line is too long")

// readLine returns the next line without its end. Of one that is too long it
// returns nothing, and drops the rest.
func readLine(in *bufio.Reader) ([]byte, error) {
	var line []byte
	for tooLong := false; ; {
		piece, err := in.ReadSlice('\n')
		if !tooLong {
			line = append(line, piece...)
		}
		if len(bytes.TrimSuffix(line, []byte("\n"))) > longest {
			tooLong, line = true, nil
		}
		switch {
		case err == bufio.ErrBufferFull:
			continue
		case err != nil && (err != io.EOF || len(line) == 0 && !tooLong):
			return nil, err
		case tooLong:
			return nil, errTooLong
		}
		return bytes.TrimSuffix(line, []byte("\n")), nil // the last may have no end
	}
}

// reply is what is written for a line. One of result, error and skipped is
// there.
type reply struct {
	Seq     jsontext.Value `json:"seq"` // nothing is written as null
	Result  any            `json:"result,omitzero"`
	Error   *units.Fault   `json:"error,omitzero"`
	Faults  []*units.Fault `json:"faults,omitzero"`
	Skipped string         `json:"skipped,omitzero"`
}

// answerTo answers a line, or tells why it could not be read.
func answerTo(line []byte, unread error) (a reply, stop bool) {
	if unread != nil {
		return refuse(nil, unreadable(unread)), false
	}
	r, err := readRequest(line)
	if err != nil {
		return refuse(r.seq, err), false
	}
	switch r.op {
	case "describe":
		return reply{Seq: r.seq, Result: describe()}, false
	case "stop":
		return reply{Seq: r.seq, Result: struct{}{}}, true
	}
	op, known := operations[r.op]
	if !known {
		return reply{Seq: r.seq, Skipped: "no such operation here"}, false
	}
	result, err := op(r.input)
	if err != nil {
		return refuse(r.seq, err), false
	}
	return reply{Seq: r.seq, Result: result}, false
}

// refuse puts all faults into an answer, and the first in front.
func refuse(seq jsontext.Value, err error) reply {
	all := units.Faults(err)
	return reply{Seq: seq, Error: all[0], Faults: all}
}

// write writes the line and flushes it. A result with a number that JSON does
// not have came of an input beyond what can be reckoned with.
func (a reply) write(out *bufio.Writer) error {
	text, err := json.Marshal(a)
	if err != nil {
		text, err = json.Marshal(refuse(a.Seq, &units.Fault{Code: units.OutOfRange, Want: "numbers whose answer a float64 holds"}))
	}
	if err != nil {
		return err
	}
	if _, err := out.Write(append(text, '\n')); err != nil {
		return err
	}
	return out.Flush()
}
