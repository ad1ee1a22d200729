package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
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
const mostLine = 1 << 20

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

// answer is one line of the program.
type answer struct {
	Seq     json.RawMessage `json:"seq"`
	Result  json.RawMessage `json:"result"`
	Error   *fault          `json:"error"`
	Skipped *string         `json:"skipped"`
}

// program asks a program, and starts it again after trouble.
type program struct {
	start   launch
	patient time.Duration
	running *session
	seq     int
	inARow  int // troubles without an answer in between
}

// mostTroubles is how many troubles in a row end the questions: a program that
// does not start would take the whole day.
const mostTroubles = 10

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
	if p.inARow >= mostTroubles {
		return answer{}, &trouble{gaveUp, fmt.Sprintf("after %d troubles in a row", mostTroubles)}
	}
	a, t := p.exchange(request, seq)
	if t == nil {
		p.inARow = 0
		return a, nil
	}
	p.inARow++
	if e := p.stop(); t.Kind == crash {
		t.Detail = e.words
	}
	return a, t
}

func (p *program) exchange(request []byte, seq string) (answer, *trouble) {
	if p.running == nil {
		s, err := begin(p.start)
		if err != nil {
			return answer{}, &trouble{crash, err.Error()}
		}
		p.running = s
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

// read takes a line apart.
func read(line []byte, seq string) (answer, *trouble) {
	var a answer
	if !bytes.HasPrefix(bytes.TrimSpace(line), []byte("{")) || !json.Valid(line) {
		return a, &trouble{garbage, excerpt(line)}
	}
	if err := json.Unmarshal(line, &a); err != nil {
		return a, &trouble{badAnswer, err.Error()}
	}
	if string(a.Seq) != seq {
		return a, &trouble{wrongSeq, fmt.Sprintf("seq %s where %s was asked", a.Seq, seq)}
	}
	return a, a.check()
}

// check asks that an answer is one of the three.
func (a answer) check() *trouble {
	count := 0
	for _, there := range []bool{a.Result != nil, a.Error != nil, a.Skipped != nil} {
		if there {
			count++
		}
	}
	switch {
	case count != 1:
		return &trouble{badAnswer, "an answer has one of result, error and skipped"}
	case a.Skipped != nil && *a.Skipped == "":
		return &trouble{badAnswer, "skipped without a reason"}
	}
	return nil
}

func excerpt(line []byte) string {
	const most = 80
	if len(line) > most {
		return fmt.Sprintf("%q and %d bytes more", line[:most], len(line)-most)
	}
	return fmt.Sprintf("%q", line)
}
