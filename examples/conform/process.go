package main

import (
	"fmt"
	"io"
	"os/exec"
	"slices"
	"strings"
	"time"
)

// process starts a command as the program.
func process(command []string) launch {
	return func() (io.WriteCloser, io.Reader, func() ending, error) {
		c := exec.Command(command[0], command[1:]...)
		c.WaitDelay = time.Second // for what it may have started itself and left with our pipes
		var notes tail
		c.Stderr = &notes
		in, err := c.StdinPipe()
		if err != nil {
			return nil, nil, nil, err
		}
		out, err := c.StdoutPipe()
		if err != nil {
			return nil, nil, nil, err
		}
		if err := c.Start(); err != nil {
			return nil, nil, nil, err
		}
		return in, out, func() ending {
			out.Close() // one that still writes finds no reader, and ends
			return ended(c, &notes)
		}, nil
	}
}

// grace is how long a program may take to end after its input has ended.
const grace = 2 * time.Second

// ended waits for the end of a program, kills one that stays, and says how it went.
func ended(c *exec.Cmd, notes *tail) ending {
	late := time.AfterFunc(grace, func() { c.Process.Kill() })
	c.Wait()
	words := c.ProcessState.String()
	if !late.Stop() {
		words = fmt.Sprintf("did not end within %v and was killed", grace)
	}
	if text := strings.TrimSpace(string(notes.end)); text != "" {
		words += fmt.Sprintf("; its last notes: %q", text)
	}
	return ending{c.ProcessState.Success(), words}
}

// tail keeps the end of what is written to it. It has no other way in: a buffer
// that is copied to by itself would keep all.
type tail struct{ end []byte }

const mostNotes = 2000

func (t *tail) Write(p []byte) (int, error) {
	t.end = append(t.end, p[max(0, len(p)-mostNotes):]...)
	t.end = slices.Delete(t.end, 0, max(0, len(t.end)-mostNotes))
	return len(p), nil
}

// inside runs an adapter in this process, over pipes.
func inside(adapter func(io.Reader, io.Writer) error) launch {
	return func() (io.WriteCloser, io.Reader, func() ending, error) {
		requests, in := io.Pipe()
		out, answers := io.Pipe()
		done := make(chan error, 1)
		go func() {
			err := adapter(requests, answers)
			answers.CloseWithError(err)
			requests.CloseWithError(io.ErrClosedPipe)
			done <- err
		}()
		return in, out, func() ending {
			out.Close() // a writer that waits for a reader waits no longer
			err := <-done
			return ending{err == nil, fmt.Sprint("ended with error ", err)}
		}, nil
	}
}
