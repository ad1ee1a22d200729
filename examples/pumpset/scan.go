package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json/jsontext"
)

// The bounds of a job, checked before anything is made of it.
const (
	maxSize  = 1 << 20 // bytes
	maxDepth = 16      // objects and lists inside one another; a job has eight
)

// scan asks that data is one JSON document within the bounds. Whatever is wrong
// here is one fault, since nothing behind it can be read.
func scan(data []byte) error {
	if len(data) > maxSize {
		return &units.Fault{Code: units.OutOfRange, Want: fmt.Sprintf("a job of at most %d bytes", maxSize)}
	}
	dec := jsontext.NewDecoder(bytes.NewReader(data), jsontext.AllowDuplicateNames(true)) // those come with all the others
	if err := scanValue(dec); err != nil {
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
func scanValue(dec *jsontext.Decoder) error {
	for {
		if _, err := dec.ReadToken(); err != nil {
			return err
		}
		switch depth := dec.StackDepth(); {
		case depth == 0:
			return nil
		case depth > maxDepth:
			return &units.Fault{
				Code: units.OutOfRange, Path: string(dec.StackPointer()),
				Want: fmt.Sprintf("at most %d objects and lists inside one another", maxDepth),
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
		Code: units.Malformed, Path: path, Value: short(err.Error()),
		Want: fmt.Sprintf("a JSON document, which breaks off at byte %d", offset),
	}
}

// short cuts what was found to a length that fits on a line, and keeps it on
// one.
func short(found string) string {
	const most = 60
	found = strings.ToValidUTF8(strings.Join(strings.Fields(found), " "), "?")
	if runes := []rune(found); len(runes) > most {
		return string(runes[:most]) + "..."
	}
	return found
}
