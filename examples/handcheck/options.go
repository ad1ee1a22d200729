package main

import (
	"cmp"
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strconv"

	"example.org/collinear/align/sheet"
	"example.org/collinear/examples/internal/strict"
)

// options are the flags.
type options struct {
	job, check string
	sheet      bool

	seed       *uint64 // of an exercise
	difficulty sheet.Difficulty
	worked     bool

	units                  *sheet.System
	markdown, blank, graph bool
}

func (o *options) parse(args []string, stderr io.Writer) error {
	flags := flag.NewFlagSet("handcheck", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.StringVar(&o.job, "job", "", "work the problem in this `file` instead of the one built in; - is the standard input")
	flags.StringVar(&o.check, "check", "", "mark the sheet in this `file`; - is the standard input, example the sheet built in")
	flags.BoolVar(&o.sheet, "sheet", false, "print the sheet built in")
	flags.Func("exercise", "set the exercise of this `seed`, a whole number", o.setSeed)
	flags.TextVar(&o.difficulty, "difficulty", sheet.OneMethod, "of the exercise: `one_step, one_method or whole_job`")
	flags.BoolVar(&o.worked, "worked", false, "print the working of the exercise too")
	flags.Func("units", "show numbers as `metric or inch` (default: as the file asks, or metric)", o.setUnits)
	flags.BoolVar(&o.markdown, "markdown", false, "print the working as Markdown")
	flags.BoolVar(&o.blank, "json", false, "print a sheet with empty answers, to be filled in and checked")
	flags.BoolVar(&o.graph, "graph", false, "print what to draw on squared paper")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if err := misuse(flags); err != nil {
		fmt.Fprintf(stderr, "handcheck: %v\n", err)
		flags.Usage()
		return err
	}
	return nil
}

func (o *options) setSeed(text string) error {
	seed, err := strconv.ParseUint(text, 10, 64)
	if err != nil {
		return errors.New("want a whole number from 0 up")
	}
	o.seed = &seed
	return nil
}

func (o *options) setUnits(text string) error {
	o.units = new(sheet.System)
	return o.units.UnmarshalText([]byte(text))
}

// beside lists, for flags that do not go with every other, those with which they go.
var beside = map[string][]string{
	"job":        {"units", "markdown", "json", "graph"},
	"check":      {},
	"sheet":      {},
	"exercise":   {"difficulty", "worked", "units", "markdown", "json", "graph"},
	"difficulty": {"exercise", "worked", "units", "markdown", "json", "graph"},
	"worked":     {"exercise", "difficulty", "units", "markdown"},
	"json":       {"job", "exercise", "difficulty", "units"},
	"graph":      {"job", "exercise", "difficulty", "units"},
}

// needs lists flags that say nothing without another.
var needs = map[string]string{"difficulty": "exercise", "worked": "exercise"}

// misuse tells what is left over, at odds or missing on the command line.
func misuse(flags *flag.FlagSet) error {
	if flags.NArg() > 0 {
		return fmt.Errorf("want flags only, got %q", flags.Arg(0))
	}
	var given []string
	flags.Visit(func(f *flag.Flag) { given = append(given, f.Name) })
	for _, name := range given {
		for _, other := range given {
			if list, choosy := beside[name]; choosy && other != name && !slices.Contains(list, other) {
				return fmt.Errorf("-%s does not go with -%s", name, other)
			}
		}
		if other := needs[name]; other != "" && !slices.Contains(given, other) {
			return fmt.Errorf("-%s goes with -%s", name, other)
		}
	}
	return nil
}

const (
	standardInput = "-"
	exampleSheet  = "example"
)

// name is what the faults are told of.
func (o *options) name() string {
	switch {
	case o.seed != nil:
		return "exercise"
	case o.file() == standardInput:
		return "standard input"
	}
	return cmp.Or(o.file(), "built-in example")
}

// file is the one to be read; none: what is built in.
func (o *options) file() string {
	if o.check == exampleSheet {
		return ""
	}
	return cmp.Or(o.check, o.job)
}

// document reads the file, or draws the exercise.
func (o *options) document(stdin io.Reader) (*document, error) {
	if o.seed != nil {
		return o.exercise()
	}
	data, err := o.data(stdin)
	if err != nil {
		return nil, err
	}
	return read(data)
}

func (o *options) data(stdin io.Reader) ([]byte, error) {
	switch o.file() {
	case "":
		return builtIn, nil
	case standardInput:
		return strict.Limited(stdin, bounds.Size)
	}
	return strict.File(o.file(), bounds.Size)
}
