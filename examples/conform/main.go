// Command conform holds a program against the reference suite in testdata: every
// vector, the invariants that need no expected answer, and lines that are no
// sound request. The program may be written in any language; it answers one
// line of JSON with one, as testdata/PROTOCOL.md says.
//
//	go run ./examples/conform                     this module against the suite
//	go run ./examples/conform -- COMMAND ARGS     any program against the suite
//	go run ./examples/conform -serve              this module as such a program
//
// It prints what failed, and first the mistakes that explain it best. It ends
// with status 0 if nothing failed that was not known to fail, with 1 if
// something did, and with 2 if the suite could not be run.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"example.org/collinear/examples/conform/adapter"
)

// options are the flags of the command.
type options struct {
	suite, report, known string
	area, vector         string
	timeout              time.Duration
	serve                bool
	command              []string
}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// The ways in which the command ends.
const (
	passed = iota
	failed
	broken
)

func run(args []string, in io.Reader, out, notes io.Writer) int {
	o, err := parse(args, notes)
	switch {
	case err != nil:
		return broken // parse has said why
	case o.serve:
		err = adapter.Serve(in, out)
	default:
		return conform(o, out, notes)
	}
	if err != nil {
		return complain(notes, err)
	}
	return passed
}

func parse(args []string, notes io.Writer) (options, error) {
	var o options
	flags := flag.NewFlagSet("conform", flag.ContinueOnError)
	flags.SetOutput(notes)
	flags.StringVar(&o.suite, "suite", "testdata", "`folder` of the suite")
	flags.StringVar(&o.report, "report", "", "`file` for the report as JSON")
	flags.StringVar(&o.known, "known", "", "`file` of known failures: a vector and the reason on each line")
	flags.StringVar(&o.area, "area", "", "ask this `area` only, a file of the suite without .json")
	flags.StringVar(&o.vector, "vector", "", "ask the vector of this `id` only")
	flags.DurationVar(&o.timeout, "timeout", 10*time.Second, "how long one answer may take, above zero")
	flags.BoolVar(&o.serve, "serve", false, "answer requests on standard input instead")
	flags.Usage = func() {
		fmt.Fprintln(notes, "usage: conform [flags] [-- COMMAND ARGS]")
		flags.PrintDefaults()
	}
	err := flags.Parse(args)
	if err == nil && o.timeout <= 0 {
		err = errors.New("-timeout is to be above zero")
		complain(notes, err)
	}
	o.command = flags.Args()
	return o, err
}

// conform runs the suite and prints the report.
func conform(o options, text, notes io.Writer) int {
	s, err := loadSuite(os.DirFS(o.suite))
	if err != nil {
		return complain(notes, err)
	}
	known, err := readKnown(o.known, s)
	if err != nil {
		return complain(notes, err)
	}
	if err := s.choose(o.area, o.vector); err != nil {
		return complain(notes, err)
	}
	p := newProgram(launcher(o.command), o.timeout)
	if err := p.begin(); err != nil {
		return complain(notes, fmt.Errorf("cannot start %s: %w", o.command[0], cause(err)))
	}
	defer p.stop()
	out, err := newOutput(text, o.report)
	if err != nil {
		return complain(notes, err)
	}
	r := s.hold(p, known)
	r.Implementation.Command = o.command
	if err := out.write(r); err != nil {
		return complain(notes, err)
	}
	if r.good() {
		return passed
	}
	return failed
}

// cause is what lies at the bottom of an error, without how it was come upon.
func cause(err error) error {
	for inner := errors.Unwrap(err); inner != nil; inner = errors.Unwrap(err) {
		err = inner
	}
	return err
}

func complain(notes io.Writer, err error) int {
	fmt.Fprintln(notes, "conform:", err)
	return broken
}

// launcher returns how the program is started; no command is this module.
func launcher(command []string) launch {
	if len(command) == 0 {
		return inside(adapter.Serve)
	}
	return process(command)
}
