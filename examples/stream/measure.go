package main

import (
	"slices"
	"strconv"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// mostReadings is how many readings of a probe are held: the time of an answer grows
// with them.
const mostReadings = 5000

// measure takes readings of a shaft that is turned: all of a line, or none.
func (s *stream) measure(readings []reading) (answer, error) {
	probes, err := places("/readings", readings, s.place)
	if err != nil {
		return answer{}, err
	}
	for i, r := range readings {
		if err = s.add(probes[i], r); err != nil {
			s.drop(probes[:i])
			return answer{}, below("/readings/"+strconv.Itoa(i), err)
		}
	}
	a, err := s.found()
	if err != nil {
		s.drop(probes)
	}
	return a, below("/readings", err)
}

func (s *stream) add(probe int, r reading) error {
	if s.held[probe] == mostReadings {
		return &units.Fault{Code: units.OutOfRange, Want: "at most " + strconv.Itoa(mostReadings) + " readings of a probe"}
	}
	err := s.buffer.Add(probe, align.Reading{At: r.At, Value: r.Value})
	if err == nil {
		s.held[probe]++
	}
	return err
}

// drop takes back the readings that came last.
func (s *stream) drop(probes []int) {
	for _, probe := range probes {
		s.held[probe]--
		_ = s.buffer.Drop(probe, s.held[probe]) // it is there
	}
}

// found tells where the movable shaft lies, or what the readings cannot see yet.
func (s *stream) found() (answer, error) {
	fit, err := s.buffer.Fit()
	if notYet(err) {
		return answer{Unseen: units.Faults(err)}, nil
	}
	if err != nil {
		return answer{}, err
	}
	a, err := s.left(fit.Estimate)
	if err != nil {
		return answer{}, err
	}
	odd, err := arc.Diagnose(fit, s.buffer.Sets()...)
	for _, f := range units.Faults(err) { // what keeps it from being told is told
		odd.Warnings = append(odd.Warnings, *f)
	}
	a.Found, a.Warnings = &fit, odd.Warnings
	s.now, s.seen = fit.Estimate, true
	return a, nil
}

// notYet tells whether more readings are all that is wanted: of a set-up that was
// checked nothing else can be missing.
func notYet(err error) bool {
	other := func(f *units.Fault) bool { return f.Code != units.Missing && f.Code != units.Unseen }
	return err != nil && !slices.ContainsFunc(units.Faults(err), other)
}
