// Command handcheck works hand calculations of alignment line by line, marks what
// a trainee has worked, and sets exercises.
//
//	go run ./examples/handcheck                  the working of the job that is built in
//	go run ./examples/handcheck -job my.json     that of another problem, as SHEET.md describes
//	go run ./examples/handcheck -json            its sheet with empty answers, to be filled in
//	go run ./examples/handcheck -graph           what to draw of it on squared paper
//	go run ./examples/handcheck -check my.json   a sheet marked line by line ("-": the standard input)
//	go run ./examples/handcheck -check example   the sheet built in, of a trainee who made one slip
//	go run ./examples/handcheck -sheet           that sheet, to be saved and changed
//	go run ./examples/handcheck -exercise 7      an exercise; with -worked its working too
//
// It ends with 0 when nothing is wrong, with 1 when something on a sheet is, with 2
// when a file was refused, each fault on a line of its own on the standard error,
// and with 3 when the flags are wrong.
package main

import (
	_ "embed"
	"errors"
	"flag"
	"io"
	"os"

	"example.org/collinear/examples/internal/strict"
)

//go:embed example.json
var builtIn []byte

const (
	right   = 0
	wrong   = 1
	refused = 2
	misused = 3
)

// bounds of a file: bytes, and objects and lists inside one another, of which a
// problem has eight.
var bounds = strict.Bounds{Size: 1 << 20, Depth: 16}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is the whole program without its process.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	var o options
	switch err := o.parse(args, stderr); {
	case errors.Is(err, flag.ErrHelp):
		return right
	case err != nil:
		return misused
	}
	text, code, err := o.answer(stdin)
	if err == nil {
		_, err = io.WriteString(stdout, text)
	}
	if err != nil {
		strict.Complain(stderr, o.name(), err)
		return refused
	}
	return code
}

// answer is what the program prints, and the code that it ends with.
func (o *options) answer(stdin io.Reader) (string, int, error) {
	if o.sheet {
		return string(builtIn), right, nil
	}
	d, err := o.document(stdin)
	switch {
	case err != nil:
		return "", refused, err
	case o.check != "":
		return d.marked()
	}
	text, err := o.show(d)
	return text, right, err
}

// show prints a problem in the form that was asked for.
func (o *options) show(d *document) (string, error) {
	s := d.Units
	if o.units != nil {
		s = *o.units
	}
	switch {
	case o.blank:
		return d.blank(s)
	case o.graph:
		return d.graphs(s)
	case o.seed != nil && !o.worked:
		return d.task, nil
	}
	return d.worked(s, o.markdown), nil
}
