package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"time"
)

// launch starts a program and returns its two ends, and how to end it.
type launch func() (in io.WriteCloser, out io.Reader, end func() ending, err error)

// ending is how a program ended; nothing of it runs any more.
type ending struct {
	well  bool // by itself, and with status 0
	words string
}

// mostLine is the longest answer that is read: far more than any answer needs.
const mostLine = 1 << 16

// trouble is a way in which a program did not answer at all. It is never taken
// for a refusal.
type trouble struct {
	Kind   string
	Detail string
}

// The kinds of trouble.
const (
	timeout   = "timeout"         // no line in time
	crash     = "crash"           // the program ended
	garbage   = "garbage"         // a line that is no JSON object
	partial   = "partial_line"    // a line without its end
	wrongSeq  = "wrong_seq"       // an answer to another request
	tooMuch   = "too_much_output" // a line beyond mostLine, or one that nobody asked for
	badAnswer = "bad_answer"      // an object that is not as the protocol has it
	gaveUp    = "not_asked"       // the program was in trouble too often
)

// program asks a program, and starts it again after trouble.
type program struct {
	start   launch
	patient time.Duration
	running *session
	seq     int
	inARow  int // troubles without an answer in between
	inAll   int
}

// So many troubles end the questions, in a row or in all: a program that does
// not start, or that dies now and then, would take the whole day.
const (
	mostInARow = 10
	mostInAll  = 50
)

func newProgram(start launch, patient time.Duration) *program {
	return &program{start: start, patient: patient}
}

// ask sends a request and returns its answer, or the trouble.
func (p *program) ask(op string, input json.RawMessage) (answer, *trouble) {
	p.seq++
	request, err := json.Marshal(struct {
		Seq   int             `json:"seq"`
		Op    string          `json:"op"`
		Input json.RawMessage `json:"input,omitempty"`
	}{p.seq, op, input})
	if err != nil {
		return answer{}, &trouble{badAnswer, err.Error()}
	}
	return p.send(request, fmt.Sprint(p.seq))
}

// send sends a line as it stands and returns the answer, which has to have this
// seq.
func (p *program) send(request []byte, seq string) (answer, *trouble) {
	if p.inARow >= mostInARow || p.inAll >= mostInAll {
		return answer{}, &trouble{gaveUp, fmt.Sprintf("after %d troubles, %d of them in a row", p.inAll, p.inARow)}
	}
	a, t := p.exchange(request, seq)
	if t == nil || t.Kind == badAnswer {
		p.inARow = 0 // it still answers line for line
		return a, t
	}
	p.inARow++
	p.inAll++
	t.ended(p.stop())
	return a, t
}

// ended adds how the program ended to a trouble that may come from that.
func (t *trouble) ended(e ending) {
	switch t.Kind {
	case crash, timeout, partial:
		t.Detail = strings.TrimPrefix(strings.TrimSuffix(t.Detail+"; "+e.words, "; "), "; ")
	}
}

// begin starts the program, unless it runs.
func (p *program) begin() error {
	if p.running != nil {
		return nil
	}
	s, err := begin(p.start)
	p.running = s
	return err
}

func (p *program) exchange(request []byte, seq string) (answer, *trouble) {
	if err := p.begin(); err != nil {
		return answer{}, &trouble{crash, err.Error()}
	}
	line, t := p.running.exchange(request, p.patient)
	if t != nil {
		return answer{}, t
	}
	return read(line, seq)
}

// stop ends the program, if it runs, and says how it went.
func (p *program) stop() ending {
	if p.running == nil {
		return ending{}
	}
	e := p.running.end()
	p.running = nil
	return e
}
