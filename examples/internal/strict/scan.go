package strict

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json/jsontext"
)

// Bounds are those of a document, checked before anything is made of it.
type Bounds struct {
	Size  int // bytes
	Depth int // objects and lists inside one another
}

// scan asks that data is one JSON document within the bounds. Whatever is wrong
// here is one fault, since nothing behind it can be read.
func scan(data []byte, b Bounds, what string) error {
	if len(data) > b.Size {
		return &units.Fault{Code: units.OutOfRange, Want: fmt.Sprintf("%s of at most %d bytes", what, b.Size)}
	}
	dec := jsontext.NewDecoder(bytes.NewReader(data), jsontext.AllowDuplicateNames(true)) // those come with all the others
	if err := scanValue(dec, b.Depth); err != nil {
		return broken(dec, data, err)
	}
	_, err := dec.ReadToken()
	switch {
	case err == io.EOF:
		return nil
	case err == nil:
		err = errors.New("something after the document")
	}
	return broken(dec, data, err)
}

// scanValue reads one value of any kind.
func scanValue(dec *jsontext.Decoder, deepest int) error {
	for {
		if _, err := dec.ReadToken(); err != nil {
			return err
		}
		switch depth := dec.StackDepth(); {
		case depth == 0:
			return nil
		case depth > deepest:
			return &units.Fault{
				Code: units.OutOfRange, Path: string(dec.StackPointer()),
				Want: fmt.Sprintf("at most %d objects and lists inside one another", deepest),
			}
		}
	}
}

// broken turns what the reader of tokens says into a fault that tells the place.
func broken(dec *jsontext.Decoder, data []byte, err error) error {
	if fault := (*units.Fault)(nil); errors.As(err, &fault) {
		return fault
	}
	path, offset := string(dec.StackPointer()), dec.InputOffset()
	if bad := (*jsontext.SyntacticError)(nil); errors.As(err, &bad) {
		path, offset = string(bad.JSONPointer), bad.ByteOffset
		err = bad.Err
	}
	if err == io.EOF || errors.Is(err, io.ErrUnexpectedEOF) {
		err, offset = errors.New("the end of the file"), int64(len(data))
	}
	return &units.Fault{
		Code: units.Malformed, Path: path, Value: Short(err.Error()),
		Want: fmt.Sprintf("a JSON document, which breaks off at byte %d", offset),
	}
}
