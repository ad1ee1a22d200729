package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"runtime"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// endless gives the same byte again and again.
type endless byte

func (e endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = byte(e)
	}
	return len(p), nil
}

// allocated returns for how many bytes f asks, freed or not.
func allocated(f func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	f()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// A line of 100 MB is refused with a word, in little room, and the lines behind it are
// answered.
func TestLongLine(t *testing.T) {
	lines := sampleLines(t)
	in := io.MultiReader(
		strings.NewReader(lines[0]+"\n"),
		io.LimitReader(endless('['), 100<<20),
		strings.NewReader("\n"+lines[1]+"\n"),
		io.LimitReader(endless('{'), 100<<20))
	var stdout, stderr bytes.Buffer
	var code int
	room := allocated(func() { code = run(nil, in, &stdout, &stderr) })
	answers := strings.Split(strings.TrimSuffix(stdout.String(), "\n"), "\n")
	if code != ended || len(answers) != 4 {
		t.Fatalf("ends with %d after %d answers", code, len(answers))
	}
	for _, n := range []int{2, 4} {
		want := fmt.Sprintf(`{"line":%d,"faults":[{"code":"out_of_range","path":"","want":"a line of at most 65536 bytes"}]}`, n)
		if answers[n-1] != want {
			t.Errorf("got %s", answers[n-1])
		}
	}
	if r := read(t, answers[2]); len(r.Unseen) == 0 || r.Line != 3 {
		t.Errorf("the line between is answered %s", answers[2])
	}
	if room > 2<<20 {
		t.Errorf("%d bytes were asked for", room)
	}
}

// A line may be as long as is said, and not a byte longer, with an end or without.
func TestLongestLine(t *testing.T) {
	for _, row := range []struct {
		length int
		end    string
		code   int
	}{
		{bounds.Size, "\n", ended}, {bounds.Size, "", ended}, {bounds.Size + 1, "\n", failed}, {bounds.Size + 1, "", failed},
	} {
		text := sampleSetUp + strings.Repeat(" ", row.length-len(sampleSetUp)) + row.end
		var stdout, stderr bytes.Buffer
		if code := run(nil, strings.NewReader(text), &stdout, &stderr); code != row.code {
			t.Errorf("%d bytes and %q: ends with %d, %s", row.length, row.end, code, stdout.String())
		}
	}
}

// begun is a stream behind its set-up.
func begun(t testing.TB, setUp string) *stream {
	t.Helper()
	s := new(stream)
	if a := s.answer([]byte(setUp), nil); len(a.Faults) > 0 {
		t.Fatal(a.Faults[0])
	}
	return s
}

// sizes are how many readings are held.
func sizes(s *stream) (n []int) {
	for _, set := range s.buffer.Sets() {
		n = append(n, len(set.Readings))
	}
	return n
}

// Readings that the library refuses, one of them or all together, are taken back.
func TestTakenBack(t *testing.T) {
	// A spacer that is no longer than a nanometre makes tilts beyond all reckoning.
	spacer := begun(t, in(limits, `"limits":{"flex":"1 mm/m"},"coupling":{"span":"0.0000000001 nm"}`))
	full := begun(t, sampleSetUp)
	for i := range mostReadings {
		r := align.Reading{At: units.Clock(i % 360), Value: units.Length(i % 7)}
		for probe := range 2 {
			if err := full.buffer.Add(probe, r); err != nil {
				t.Fatal(err)
			}
		}
	}
	full.held = []int{mostReadings - 1, mostReadings}
	if err := full.buffer.Drop(0, 0); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name string
		s    *stream
		want string
	}{
		{"beyond reckoning", spacer, "[out_of_range /readings]"},
		{"too many", full, "[out_of_range /readings/1]"},
	} {
		refusals := 0
		for _, line := range sampleLines(t)[1:seen] {
			before := fmt.Sprint(row.s.held)
			a := row.s.answer([]byte(line), nil)
			if len(a.Faults) == 0 || a.Faults[0].Code == units.Missing { // the slip of the sample
				continue
			}
			refusals++
			if got := fmt.Sprint(listed(a.Faults)); got != row.want {
				t.Errorf("%s: got %s, want %s", row.name, got, row.want)
			}
			if after := fmt.Sprint(sizes(row.s)); after != before || fmt.Sprint(row.s.held) != before || row.s.seen {
				t.Errorf("%s: %s are held, counted %v, before %s", row.name, after, row.s.held, before)
			}
		}
		if refusals < 5 {
			t.Errorf("%s: only %d lines were refused", row.name, refusals)
		}
	}
}

// A set-up of nothing but faults is told with a few hundred.
func TestManyFaults(t *testing.T) {
	answers, code := sent(t, `{"setup":{"probes":[`+strings.Repeat("1,", 30_000)+`1]}}`)
	if r := read(t, answers[0]); code != failed || len(r.Faults) < 100 || len(r.Faults) > 300 {
		t.Errorf("%d faults, ends with %d", len(r.Faults), code)
	}
}

// The page says the bounds.
func TestPageSaysTheBounds(t *testing.T) {
	page, err := os.ReadFile("STREAM.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, says := range []string{
		fmt.Sprintf("at most %d bytes", bounds.Size), fmt.Sprintf("more than %d of a probe", mostReadings), fmt.Sprintf("first %d are told", strict.Most),
	} {
		if !strings.Contains(string(page), says) {
			t.Errorf("the page does not say %q", says)
		}
	}
}

// BenchmarkReading answers a line of two readings where so many are held.
func BenchmarkReading(b *testing.B) {
	for _, n := range []int{20, 200, mostReadings - 1} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			s := begun(b, sampleSetUp)
			for i := range n {
				at := 240 * float64(i) / float64(n)
				for probe, r := range sampled(sample.pose, at, uint64(i)) {
					if err := s.add(probe, reading{At: units.Clock(r.at), Value: units.Length(r.value) * units.Millimetre}); err != nil {
						b.Fatal(err)
					}
				}
			}
			text := []byte(line(b, object{"readings": readings(sampled(sample.pose, 240, 1)...)}))
			b.ReportAllocs()
			for b.Loop() {
				a := s.answer(text, nil)
				if err := write(io.Discard, &a); err != nil || a.Found == nil {
					b.Fatal(err, a.Faults)
				}
				s.drop([]int{0, 1})
			}
		})
	}
}
