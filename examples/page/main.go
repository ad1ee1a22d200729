// Command page puts the main job of this module into a browser: the library as a
// program for WebAssembly, and a page with a field for all that a crew takes down.
// Whatever is typed is computed at once, in the browser; there is no server behind
// it, and nothing is fetched once the page is there.
//
//	go run ./examples/page              builds it and serves it to this machine alone
//	go run ./examples/page -port 8080   on a port of your choice
//	go run ./examples/page -o FOLDER    builds it into a folder, for any web server
//
// It needs the go command, which compiles the program. It ends with 0, with 1 when
// something could not be done, and with 2 when the flags are wrong.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
)

const (
	done    = 0
	failed  = 1
	misused = 2
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is the whole program without its process.
func run(args []string, stdout, stderr io.Writer) int {
	var o options
	switch err := o.parse(args, stderr); {
	case errors.Is(err, flag.ErrHelp):
		return done
	case err != nil:
		return misused
	}
	if err := o.page(stdout); err != nil {
		fmt.Fprintln(stderr, "page:", err)
		return failed
	}
	return done
}

// options are the flags.
type options struct {
	folder string
	port   uint
}

func (o *options) parse(args []string, stderr io.Writer) error {
	flags := flag.NewFlagSet("page", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.StringVar(&o.folder, "o", "", "build into this `folder` and serve nothing")
	flags.UintVar(&o.port, "port", 0, "serve on this `port` (default: one that is free)")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(stderr, "page: want flags only, got %q\n", flags.Arg(0))
		flags.Usage()
		return errors.New("arguments left over")
	}
	return nil
}

// page builds, and serves if no folder is asked for.
func (o *options) page(stdout io.Writer) error {
	if o.folder != "" {
		if err := build(o.folder, stdout); err != nil {
			return err
		}
		fmt.Fprintln(stdout, "Any web server will do that sends .wasm as application/wasm; a browser does not load it from a file.")
		return nil
	}
	folder, err := os.MkdirTemp("", "page")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	if err := build(folder, stdout); err != nil {
		return err
	}
	return serve(folder, o.port, stdout)
}
