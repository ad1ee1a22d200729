package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"testing/synctest"
	"time"

	"example.org/collinear/examples/conform/adapter"
)

// behaviours are programs that do not answer as they should, by what the report
// has to call it. Each answers line n of its input.
var behaviours = map[string]struct {
	kind string
	do   func(n int, out io.Writer) error
}{
	"silent":             {timeout, func(int, io.Writer) error { return nil }},
	"ends at once":       {crash, func(int, io.Writer) error { return io.EOF }},
	"talks":              {garbage, say("hello, I am ready\n")},
	"prints a list":      {garbage, say("[1,2]\n")},
	"prints bad JSON":    {garbage, say(`{"seq":1,"result":{}` + "\n")},
	"prints two objects": {garbage, say(`{"seq":1,"result":{}}{"seq":2,"result":{}}` + "\n")},
	"prints nothing":     {garbage, say("\n")},
	"stops in the line":  {partial, say(`{"seq":1,`)},
	"dies in the line": {partial, func(_ int, out io.Writer) error {
		fmt.Fprint(out, `{"seq":1,`)
		return io.EOF
	}},
	"counts from 0":         {wrongSeq, func(n int, out io.Writer) error { return say(fmt.Sprintf(`{"seq":%d,"result":{}}`+"\n", n))(n, out) }},
	"forgets seq":           {wrongSeq, say(`{"result":{}}` + "\n")},
	"seq null":              {wrongSeq, say(`{"seq":null,"result":{}}` + "\n")},
	"seq as text":           {wrongSeq, say(`{"seq":"1","result":{}}` + "\n")},
	"floods":                {tooMuch, say(strings.Repeat("x", 2*mostLine))},
	"floods JSON":           {tooMuch, say(`{"seq":1,"result":"` + strings.Repeat("x", 2*mostLine) + `"}` + "\n")},
	"answers both":          {badAnswer, say(`{"seq":1,"result":{},"error":{"code":"missing","path":""}}` + "\n")},
	"answers neither":       {badAnswer, say(`{"seq":1}` + "\n")},
	"skips without words":   {badAnswer, say(`{"seq":1,"skipped":""}` + "\n")},
	"error that is no code": {badAnswer, say(`{"seq":1,"error":"missing"}` + "\n")},
	"error without a path":  {badAnswer, say(`{"seq":1,"error":{"code":"missing"}}` + "\n")},
	"error without a code":  {badAnswer, say(`{"seq":1,"error":{"path":"/feet"}}` + "\n")},
	"error with no words":   {badAnswer, say(`{"seq":1,"error":{"code":"","path":""}}` + "\n")},
	"error with nothing":    {badAnswer, say(`{"seq":1,"error":{}}` + "\n")},
	"error with code null":  {badAnswer, say(`{"seq":1,"error":{"code":null,"path":""}}` + "\n")},
	"error null":            {badAnswer, say(`{"seq":1,"error":null}` + "\n")},
	"error null and a skip": {badAnswer, say(`{"seq":1,"error":null,"skipped":"no gauges"}` + "\n")},
	"result null":           {badAnswer, say(`{"seq":1,"result":null}` + "\n")},
	"result true":           {badAnswer, say(`{"seq":1,"result":true}` + "\n")},
	"result a list":         {badAnswer, say(`{"seq":1,"result":[]}` + "\n")},
	"skipped null":          {badAnswer, say(`{"seq":1,"skipped":null}` + "\n")},
	"very deep":             {garbage, say(`{"seq":1,"result":` + strings.Repeat("[", mostLine-100) + "\n")},
	"very deep and closed":  {garbage, say(`{"seq":1,"result":` + strings.Repeat(`[`, 30_000) + strings.Repeat("]", 30_000) + "}\n")},
	"very long seq":         {wrongSeq, say(`{"seq":1` + strings.Repeat("0", mostLine-100) + `,"result":{}}` + "\n")},
	"seq with a point":      {wrongSeq, say(`{"seq":1.0,"result":{}}` + "\n")},
	"seq with an exponent":  {wrongSeq, say(`{"seq":1e0,"result":{}}` + "\n")},
	"seq beyond a float64":  {wrongSeq, say(`{"seq":1e999999999,"result":{}}` + "\n")},
	"UTF-16":                {garbage, say("\xff\xfe{\x00\n")},
	"floods empty lines":    {garbage, say(strings.Repeat("\n", 2*mostLine))},
	"members in capitals":   {badAnswer, say(`{"seq":1,"RESULT":{}}` + "\n")},
}

func say(text string) func(int, io.Writer) error {
	return func(_ int, out io.Writer) error {
		_, err := io.WriteString(out, text)
		return err
	}
}

// behave runs a behaviour as a program.
func behave(do func(n int, out io.Writer) error) func(io.Reader, io.Writer) error {
	return func(in io.Reader, out io.Writer) error {
		lines := bufio.NewScanner(in)
		for n := 0; lines.Scan(); n++ {
			if do(n, out) != nil {
				return nil
			}
		}
		return lines.Err()
	}
}

// TestTroubleIsCalledWhatItIs tests each behaviour in a bubble of its own time,
// so that waiting costs none.
func TestTroubleIsCalledWhatItIs(t *testing.T) {
	for name, b := range behaviours {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				p := newProgram(inside(behave(b.do)), time.Minute)
				_, trouble := p.ask("describe", nil)
				if trouble == nil || trouble.Kind != b.kind {
					t.Errorf("got %v, want %s", trouble, b.kind)
				}
				p.stop()
			})
		})
	}
}

// TestLineThatNobodyAskedFor tests that a second answer is not taken for that to
// the next request.
func TestLineThatNobodyAskedFor(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		twice := func(n int, out io.Writer) error {
			return say(strings.Repeat(fmt.Sprintf(`{"seq":%d,"result":{}}`+"\n", n+1), 2))(n, out)
		}
		p := newProgram(inside(behave(twice)), time.Minute)
		defer p.stop()
		if _, trouble := p.ask("describe", nil); trouble != nil {
			t.Fatal(trouble)
		}
		synctest.Wait() // until the second line has come
		if _, trouble := p.ask("describe", nil); trouble == nil || trouble.Kind != tooMuch {
			t.Errorf("got %v, want %s", trouble, tooMuch)
		}
	})
}

// TestWaits tests that an answer is waited for as long as was said, and no longer.
func TestWaits(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		slow := func(n int, out io.Writer) error {
			time.Sleep(time.Duration(n+1) * 40 * time.Second)
			return say(fmt.Sprintf(`{"seq":%d,"result":{}}`+"\n", n+1))(n, out)
		}
		p := newProgram(inside(behave(slow)), time.Minute)
		defer p.stop()
		rows := []struct {
			kind  string
			waits time.Duration
		}{{"", 40 * time.Second}, {timeout, time.Minute}}
		for i, row := range rows {
			began, kind := time.Now(), ""
			if _, trouble := p.exchange([]byte("{}"), fmt.Sprint(i+1)); trouble != nil {
				kind = trouble.Kind
			}
			if took := time.Since(began); took != row.waits || kind != row.kind {
				t.Errorf("%q after %v, want %q after %v", kind, took, row.kind, row.waits)
			}
		}
	})
}

// TestTroublesNowAndThen tests that a program which dies on every third request
// is not started for ever.
func TestTroublesNowAndThen(t *testing.T) {
	starts := 0
	p := newProgram(func() (io.WriteCloser, io.Reader, func() ending, error) {
		starts++
		first := 3*starts - 2 // seq goes on
		return inside(behave(func(n int, out io.Writer) error {
			if n == 2 {
				return io.EOF
			}
			return say(fmt.Sprintf(`{"seq":%d,"result":{}}`+"\n", first+n))(n, out)
		}))()
	}, time.Minute)
	defer p.stop()
	for range 6 * mostInAll {
		p.ask("describe", nil)
	}
	if _, trouble := p.ask("describe", nil); trouble == nil || trouble.Kind != gaveUp || starts != mostInAll {
		t.Errorf("got %v after %d starts, want %s after %d", trouble, starts, gaveUp, mostInAll)
	}
}

// TestBadAnswerIsNoReasonToStartAgain tests that a program which answers line for
// line is asked on, whatever it says.
func TestBadAnswerIsNoReasonToStartAgain(t *testing.T) {
	starts := 0
	p := newProgram(func() (io.WriteCloser, io.Reader, func() ending, error) {
		starts++
		return inside(always(`"result":null`))()
	}, time.Minute)
	defer p.stop()
	for i := range 2 * mostInAll {
		if _, trouble := p.ask("describe", nil); trouble == nil || trouble.Kind != badAnswer || starts != 1 {
			t.Fatalf("request %d: got %v after %d starts", i, trouble, starts)
		}
	}
}

// TestTroubleEnds tests that a program that is always in trouble is not asked
// for ever, and that one that is in trouble now and then is asked on.
func TestTroubleEnds(t *testing.T) {
	starts := 0
	p := newProgram(func() (io.WriteCloser, io.Reader, func() ending, error) {
		starts++
		return nil, nil, nil, io.ErrUnexpectedEOF
	}, time.Minute)
	for range 3 * mostInARow {
		p.ask("describe", nil)
	}
	if _, trouble := p.ask("describe", nil); trouble.Kind != gaveUp || starts != mostInARow {
		t.Errorf("got %v after %d starts, want %s after %d", trouble, starts, gaveUp, mostInARow)
	}
	everyOther := 0
	p = newProgram(inside(func(in io.Reader, out io.Writer) error {
		if everyOther++; everyOther%2 == 0 {
			return nil // ends at once
		}
		return adapter.Serve(io.LimitReader(in, 60), out)
	}), time.Minute)
	defer p.stop()
	good := 0
	for range 5 * mostInARow {
		if _, trouble := p.ask("describe", nil); trouble == nil {
			good++
		}
	}
	if good < mostInARow {
		t.Errorf("only %d answers", good)
	}
}

// TestMain lets this test be the program that is tested: see TestProcess.
func TestMain(m *testing.M) {
	if name, there := os.LookupEnv("CONFORM_BEHAVIOUR"); there {
		os.Exit(beProgram(name))
	}
	os.Exit(m.Run())
}

func beProgram(name string) int {
	if b, there := behaviours[name]; there {
		behave(b.do)(os.Stdin, os.Stdout)
		return 0
	}
	switch name {
	case "panics":
		behave(func(int, io.Writer) error { panic("on purpose") })(os.Stdin, os.Stdout)
	case "stays":
		adapter.Serve(os.Stdin, os.Stdout)
		time.Sleep(time.Hour)
	case "sound":
		adapter.Serve(os.Stdin, os.Stdout)
	case "lingers":
		time.Sleep(3 * time.Second)
	case "leaves a child":
		child := exec.Command(os.Args[0])
		child.Env = []string{"CONFORM_BEHAVIOUR=lingers"}
		child.Stdout = os.Stdout
		child.Start()
		return 3
	}
	return 0
}

// itself is the file of this test, for tests that start it again. They are skipped
// where no process can be started, and where the system does not know how to start
// this one, because an emulator did.
func itself(t *testing.T) string {
	t.Helper()
	if runtime.GOOS == "js" {
		t.Skip("no processes here")
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	if err := exec.Command(self, "-test.run=^$").Run(); errors.Is(err, syscall.ENOEXEC) {
		t.Skip("what an emulator runs cannot start itself here")
	}
	return self
}

// TestProcess tests the same of a program that runs as a process.
func TestProcess(t *testing.T) {
	self := itself(t)
	rows := []struct{ behaviour, kind, says string }{
		{"silent", timeout, ""},
		{"talks", garbage, "ready"},
		{"dies in the line", partial, ""},
		{"floods", tooMuch, ""},
		{"ends at once", crash, "exit status 0"},
		{"panics", crash, "on purpose"},
		{"leaves a child", timeout, "exit status 3"},
		{"sound", "", ""},
		{"stays", "", ""},
	}
	for _, row := range rows {
		t.Run(row.behaviour, func(t *testing.T) {
			t.Setenv("CONFORM_BEHAVIOUR", row.behaviour)
			patient := time.Minute
			if row.kind == timeout {
				patient = 100 * time.Millisecond
			}
			p := newProgram(process([]string{self}), patient)
			_, trouble := p.ask("describe", nil)
			switch {
			case row.kind == "" && trouble != nil:
				t.Error(trouble)
			case row.kind != "" && (trouble == nil || trouble.Kind != row.kind || !strings.Contains(trouble.Detail, row.says)):
				t.Errorf("got %v, want %s that says %q", trouble, row.kind, row.says)
			}
			if e := p.stop(); row.kind == "" && e.well != (row.behaviour == "sound") {
				t.Errorf("ended %+v", e)
			}
		})
	}
	if _, trouble := newProgram(process([]string{"./no-such-program"}), time.Minute).ask("describe", nil); trouble == nil || trouble.Kind != crash {
		t.Errorf("a program that is not there: got %v", trouble)
	}
}

// TestHandbookAdapter tests that the adapter in Python's standard library passes
// what it does, and skips the rest with reasons.
func TestHandbookAdapter(t *testing.T) {
	python, err := exec.LookPath("python3")
	if runtime.GOOS == "js" || err != nil {
		t.Skip("no python3 here")
	}
	s, _ := ours(t)
	r := s.hold(newProgram(process([]string{python, "handbook.py"}), time.Minute), nil)
	if !r.good() || r.Counts.Vectors.Passed < 60 {
		r.print(os.Stderr)
		t.Error("the adapter fails, or does next to nothing")
	}
	for _, o := range r.Skips {
		if o.Op == "rim_face" || o.Op == "reverse" {
			t.Errorf("%s is skipped: %s", o.ID, o.Reason)
		}
	}
}
