// Command train plans the moves of machines that stand in one line, where feet
// cannot go where the arithmetic sends them: it reads what a crew took down at a
// train of coupled machines, and prints what was found at each coupling, what
// stands in the way of the plan in which one machine stays, and the plan in which
// none does, foot by foot in the order of the work.
//
//	go run ./examples/train                  the job that is built in
//	go run ./examples/train -job job.json    another one, as JOB.md describes
//	go run ./examples/train -units inch      shown in mils and inches
//	go run ./examples/train -json            the record, for another program
//
// It ends with 0 when the job was solved, with 1 when it was refused, each fault
// on a line of its own on the standard error, and with 2 when the flags are
// wrong.
package main

import (
	"cmp"
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"example.org/collinear/examples/internal/strict"
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

//go:embed job.json
var builtIn []byte

const (
	solved  = 0
	refused = 1
	misused = 2
)

// bounds of a job: bytes, and objects and lists inside one another, of which a job
// has six.
var bounds = strict.Bounds{Size: 1 << 20, Depth: 16}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is the whole program without its process.
func run(args []string, stdout, stderr io.Writer) int {
	var o options
	switch err := o.parse(args, stderr); {
	case errors.Is(err, flag.ErrHelp):
		return solved
	case err != nil:
		return misused
	}
	if err := o.report(stdout); err != nil {
		strict.Complain(stderr, o.name(), err)
		return refused
	}
	return solved
}

// options are the flags.
type options struct {
	file   string
	record bool
	units  system
}

func (o *options) parse(args []string, stderr io.Writer) error {
	flags := flag.NewFlagSet("train", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.StringVar(&o.file, "job", "", "read this job `file` instead of the one built in")
	flags.BoolVar(&o.record, "json", false, "print the record as JSON instead of the report")
	flags.TextVar(&o.units, "units", asTheJob, "show lengths as `metric or inch` (default: as the job asks)")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(stderr, "train: want flags only, got %q\n", flags.Arg(0))
		flags.Usage()
		return errors.New("arguments left over")
	}
	return nil
}

// name is what the faults are told of.
func (o *options) name() string { return cmp.Or(o.file, "built-in job") }

func (o *options) report(stdout io.Writer) error {
	data, err := o.data()
	if err != nil {
		return err
	}
	r, err := outcome(data)
	if err != nil {
		return err
	}
	if o.record {
		return writeRecord(stdout, r)
	}
	return writeReport(stdout, r, o.units)
}

func (o *options) data() ([]byte, error) {
	if o.file == "" {
		return builtIn, nil
	}
	return strict.File(o.file, bounds.Size)
}

// outcome does the whole job but for the flags.
func outcome(data []byte) (record, error) {
	var j job
	if err := strict.Read(data, bounds, "a job", &j); err != nil {
		return record{}, err
	}
	return solve(&j)
}

// writeRecord prints the record, the same bytes for the same job.
func writeRecord(w io.Writer, r record) error {
	data, err := json.Marshal(r, json.Deterministic(true), jsontext.WithIndent("  "))
	if err != nil {
		return err
	}
	_, err = w.Write(append(data, '\n'))
	return err
}
