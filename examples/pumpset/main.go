// Command pumpset is the main job of this module from end to end: it reads what
// a crew took down at a coupled pump and motor, from the first check of the feet
// to the readings as left, and prints what to put right, how far and which way
// each foot has to go, which shims go under it, and how what was left stands
// against its limits.
//
//	go run ./examples/pumpset                  the job that is built in
//	go run ./examples/pumpset -job job.json    another one, as JOB.md describes
//	go run ./examples/pumpset -units inch      shown in mils and inches
//	go run ./examples/pumpset -json            the record, for another program
//	go run ./examples/pumpset -svg job.svg     the graphs into a file as well
//	go run ./examples/pumpset -html job.html   and a page that prints on one sheet
//
// It ends with 0 when the job was solved, with 1 when it was refused, each fault
// on a line of its own on the standard error, and with 2 when the flags are
// wrong.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"example.org/collinear/examples/internal/pumpset"
	"example.org/collinear/examples/internal/strict"
)

const (
	solved  = 0
	refused = 1
	misused = 2
)

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
	file     string
	record   bool
	units    pumpset.System
	svg, web string // files to write
}

func (o *options) parse(args []string, stderr io.Writer) error {
	flags := flag.NewFlagSet("pumpset", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.StringVar(&o.file, "job", "", "read this job `file` instead of the one built in")
	flags.BoolVar(&o.record, "json", false, "print the record as JSON instead of the report")
	flags.StringVar(&o.svg, "svg", "", "write the graphs to this `file` as well")
	flags.StringVar(&o.web, "html", "", "write a page that prints on one sheet to this `file` as well")
	flags.TextVar(&o.units, "units", pumpset.AsTheJob, "show lengths as `metric or inch` (default: as the job asks)")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(stderr, "pumpset: want flags only, got %q\n", flags.Arg(0))
		flags.Usage()
		return errors.New("arguments left over")
	}
	return nil
}

// name is what the faults are told of.
func (o *options) name() string {
	if o.file == "" {
		return "built-in job"
	}
	return o.file
}

func (o *options) report(stdout io.Writer) error {
	data, err := o.data()
	if err != nil {
		return err
	}
	j, err := pumpset.Read(data)
	if err != nil {
		return err
	}
	r, err := pumpset.Solve(j)
	if err != nil {
		return err
	}
	if err := o.files(r); err != nil {
		return err
	}
	if o.record {
		return pumpset.WriteRecord(stdout, r)
	}
	return pumpset.WriteReport(stdout, r, o.units)
}

// files writes the files that are asked for.
func (o *options) files(r pumpset.Record) error {
	write := func(name string, as func(io.Writer, pumpset.Record, pumpset.System) error) error {
		if name == "" {
			return nil
		}
		var out bytes.Buffer
		if err := as(&out, r, o.units); err != nil {
			return err
		}
		return os.WriteFile(name, out.Bytes(), 0o644)
	}
	return errors.Join(write(o.svg, pumpset.WriteDrawing), write(o.web, pumpset.WritePage))
}

func (o *options) data() ([]byte, error) {
	if o.file == "" {
		return pumpset.Sample(), nil
	}
	return strict.File(o.file, pumpset.MaxSize)
}
