package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"sync/atomic"
	"time"
)

// session is a program that runs.
type session struct {
	in    io.WriteCloser
	lines chan piece
	open  atomic.Int64 // bytes that were read behind the last end of a line
	end   func() ending
}

// piece is what was read: a line, or why there is none.
type piece struct {
	line []byte
	bad  *trouble
}

func begin(start launch) (*session, error) {
	in, out, end, err := start()
	if err != nil {
		return nil, err
	}
	s := &session{in: in, lines: make(chan piece, 1)}
	done := make(chan struct{})
	s.end = func() ending {
		close(done)
		in.Close()
		return end()
	}
	go s.listen(out, done)
	return s, nil
}

// listen hands on line after line until one is bad.
func (s *session) listen(out io.Reader, done <-chan struct{}) {
	buffered := bufio.NewReaderSize(counted{out, &s.open}, mostLine)
	for {
		line, bad := nextLine(buffered)
		select {
		case s.lines <- piece{line, bad}:
		case <-done:
			return
		}
		if bad != nil {
			return
		}
	}
}

func nextLine(out *bufio.Reader) ([]byte, *trouble) {
	line, err := out.ReadSlice('\n')
	switch {
	case errors.Is(err, bufio.ErrBufferFull):
		return nil, &trouble{tooMuch, fmt.Sprintf("a line of more than %d bytes", mostLine)}
	case err != nil && len(line) > 0:
		return nil, &trouble{partial, excerpt(line)}
	case err != nil:
		return nil, &trouble{crash, ""}
	}
	return bytes.Clone(bytes.TrimRight(line, "\r\n")), nil
}

// exchange writes a request and waits for a line.
func (s *session) exchange(request []byte, patient time.Duration) ([]byte, *trouble) {
	select {
	case early := <-s.lines:
		if early.bad != nil {
			return nil, early.bad
		}
		return nil, &trouble{tooMuch, "a line that nobody asked for: " + excerpt(early.line)}
	default:
	}
	go s.in.Write(append(request, '\n')) // a program that does not read must not stop us; its end shows below
	select {
	case p := <-s.lines:
		return p.line, p.bad
	case <-time.After(patient):
		if n := s.open.Load(); n > 0 {
			return nil, &trouble{partial, fmt.Sprintf("%d bytes, and no end of the line within %v", n, patient)}
		}
		return nil, &trouble{timeout, fmt.Sprintf("no line within %v", patient)}
	}
}

// counted counts the bytes of a line whose end has not come yet.
type counted struct {
	io.Reader
	open *atomic.Int64
}

func (c counted) Read(p []byte) (int, error) {
	n, err := c.Reader.Read(p)
	if end := bytes.LastIndexByte(p[:n], '\n'); end >= 0 {
		c.open.Store(int64(n - end - 1))
	} else {
		c.open.Add(int64(n))
	}
	return n, err
}
