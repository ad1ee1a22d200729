// Command stream is the library inside a measuring instrument, reduced to what every
// instrument needs: it reads one line of JSON after another on the standard input and
// answers each with one line on the standard output before it reads the next.
//
//	go run ./examples/stream < examples/stream/testdata/job.jsonl
//
// The first line says how the probes are mounted. While the shaft is turned, readings
// follow, and each answer says where the movable shaft lies, or what the readings
// cannot see yet. Then the shaft rests, and each answer says how far the machine has
// been moved and what is left. STREAM.md describes the lines.
//
// It ends with 0 at the end of the input, with 1 when the set-up was refused, or
// reading or writing failed, and with 2 when there are flags or arguments: it has none.
package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json"
)

const (
	ended   = 0
	failed  = 1
	misused = 2
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is the whole program without its process.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) > 0 {
		fmt.Fprintf(stderr, "stream: want nothing behind the name, got %q\nusage: stream < LINES, as STREAM.md describes them\n", args)
		return misused
	}
	if err := serve(stdin, stdout); err != nil {
		fmt.Fprintln(stderr, "stream:", err)
		return failed
	}
	return ended
}

var errSetUp = errors.New("the set-up was refused: its answer says why")

// serve answers every line. The error is that of in or out, or errSetUp.
func serve(in io.Reader, out io.Writer) error {
	lines := bufio.NewReaderSize(in, bounds.Size+1)
	var s stream
	for n := 1; ; n++ {
		text, err := nextLine(lines)
		if err == io.EOF {
			return nil
		}
		if err != nil && len(units.Faults(err)) == 0 {
			return err
		}
		a := s.answer(text, err)
		a.Line = n
		if err := write(out, &a); err != nil {
			return err
		}
		if s.buffer == nil {
			return errSetUp
		}
	}
}

// nextLine returns the next line without its end; it is good until the one after. One
// that is longer than the buffer is a fault, and is read to its end without being kept.
func nextLine(in *bufio.Reader) ([]byte, error) {
	text, err := in.ReadSlice('\n')
	tooLong := err == bufio.ErrBufferFull
	for err == bufio.ErrBufferFull {
		_, err = in.ReadSlice('\n')
	}
	switch {
	case err != nil && err != io.EOF:
		return nil, err
	case tooLong:
		return nil, &units.Fault{Code: units.OutOfRange, Want: fmt.Sprintf("a line of at most %d bytes", bounds.Size)}
	case len(text) > 0:
		return bytes.TrimSuffix(text, []byte("\n")), nil // the last may have no end
	}
	return nil, err
}

// write hands the whole line to the system at once: nothing is left in a buffer.
func write(out io.Writer, a *answer) error {
	text, err := json.Marshal(a)
	if err != nil {
		return err
	}
	_, err = out.Write(append(text, '\n'))
	return err
}
