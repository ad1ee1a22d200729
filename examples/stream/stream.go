package main

import (
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// stream is what is known after some lines. The zero value waits for the set-up.
type stream struct {
	setUp
	buffer *arc.Buffer
	held   []int          // readings in the buffer, of each probe
	now    align.Estimate // where the movable shaft lies
	seen   bool           // whether now is known

	following *arc.Following // nothing while the shaft is turned
	start     []reading      // of the probes that follow, in their order
}

// answer is what is written for a line, or for the fault for which it could not be
// read.
func (s *stream) answer(text []byte, err error) (a answer) {
	var r request
	if err == nil {
		err = strict.Read(text, bounds, "a line", &r)
	}
	if err == nil {
		a, err = s.do(&r)
	}
	if err != nil {
		return answer{Faults: units.Faults(err)}
	}
	return a
}

// do does what a line asks for. Where it returns an error nothing has changed.
func (s *stream) do(r *request) (answer, error) {
	switch {
	case r.SetUp != nil && (r.Rest != nil || r.Readings != nil), r.Rest != nil && r.Readings != nil:
		return answer{}, &units.Fault{Code: units.Conflict, Want: "just one of setup, readings and rest"}
	case s.buffer == nil && r.SetUp == nil:
		return answer{}, &units.Fault{Code: units.Missing, Path: "/setup", Want: "the set-up in the first line"}
	case s.buffer != nil && r.SetUp != nil:
		return answer{}, &units.Fault{Code: units.Duplicate, Path: "/setup", Want: "one set-up, in the first line: start anew for another"}
	case r.SetUp != nil:
		return s.begin(r.SetUp)
	case r.Rest != nil:
		return s.stand(r.Rest)
	case s.following != nil:
		return s.follow(r.Readings)
	}
	return s.measure(r.Readings)
}

// begin takes the set-up.
func (s *stream) begin(u *setUp) (answer, error) {
	if err := u.check(); err != nil {
		return answer{}, err
	}
	room := make([]align.Reading, 0, 100)
	*s = stream{setUp: *u, buffer: arc.NewBuffer(u.sets(room)...), held: make([]int, len(u.Probes))}
	return s.found()
}

// left is what there is to do where the movable shaft lies so.
func (s *stream) left(now align.Estimate) (a answer, err error) {
	off := s.off(now)
	if a.Moves, err = off.Corrections(s.Feet...); err != nil || s.Judge == nil {
		return a, err
	}
	v, err := s.Judge.verdict(off)
	a.Verdict = &v
	return a, err
}

// places returns where in its own list each probe of a line stands. The path is that
// of the readings.
func places(path string, readings []reading, place func(name string) int) ([]int, error) {
	const most = units.Metre // ours: what is far beyond would be held, and refused by every fit from then on
	var faults strict.Faults
	if len(readings) == 0 {
		faults.Add(units.Missing, path, "", "at least one reading")
	}
	list := make([]int, len(readings))
	for i, r := range readings {
		at := strict.Step(path, i)
		if list[i] = place(r.Probe); list[i] < 0 {
			faults.Add(units.Unknown, at+"/probe", strict.Short(r.Probe), "a probe of the set-up, and one that follows once the shaft rests")
		} else if slices.Contains(list[:i], list[i]) {
			faults.Add(units.Duplicate, at+"/probe", strict.Short(r.Probe), "each probe once: a line is of one position of the shaft")
		}
		if r.Value < -most || r.Value > most {
			faults.Add(units.OutOfRange, at+"/value", r.Value.String(), "a reading of at most 1 m")
		}
	}
	return list, faults.Err()
}

// renamed tells faults of the library by what it was given has in the line.
func renamed(err error, name func(path string) string) error {
	var faults strict.Faults
	faults.Adopt(err, name)
	return faults.Err()
}

// below is renamed where no part of a field is to blame alone.
func below(path string, err error) error { return renamed(err, func(string) string { return path }) }
