package main

import (
	"math"
	"slices"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// stand begins to follow a move from where the machine is now: as it was found, or
// where an earlier move left it.
func (s *stream) stand(r *rest) (answer, error) {
	if !s.seen {
		return answer{}, &units.Fault{Code: units.Unseen, Path: "/rest", Want: "readings first that see where the machine stands"}
	}
	probes, err := places("/rest/readings", r.Readings, s.place)
	if err != nil {
		return answer{}, err
	}
	follow := arc.Follow{From: s.now, Plane: r.Plane, View: s.View}
	start := make([]units.Length, len(probes))
	for i, at := range r.Readings {
		p := &s.Probes[probes[i]]
		first := align.Reading{At: at.At, Value: at.Value, U: p.U.Reading}
		follow.Probes = append(follow.Probes, arc.Standing{Probe: p.Probe, Start: first, AxialFree: p.AxialFree})
		start[i] = at.Value
	}
	next := *s
	next.start = r.Readings
	if next.following, err = follow.Begin(); err != nil {
		return answer{}, renamed(err, restPath)
	}
	a, err := next.followed(start)
	if err == nil {
		*s = next
	}
	return a, below("/rest", err)
}

// restPath is where a field of the library's stands in the line.
func restPath(path string) string {
	return "/rest" + strings.NewReplacer("/probes", "/readings", "/start", "", "/axial_free", "/probe").Replace(path)
}

// follow takes one reading of every probe that follows.
func (s *stream) follow(readings []reading) (answer, error) {
	probes, err := places("/readings", readings, func(name string) int {
		return slices.IndexFunc(s.start, func(r reading) bool { return r.Probe == name })
	})
	if err != nil {
		return answer{}, err
	}
	var faults strict.Faults
	values := make([]units.Length, len(s.start))
	for i, r := range readings {
		values[probes[i]] = r.Value
		if rests := s.start[probes[i]].At; turned(r.At, rests) {
			faults.Add(units.Conflict, strict.Step("/readings", i)+"/at", r.At.String(), "the position at which this probe rests, "+rests.String()+", to half a degree")
		}
	}
	if len(readings) < len(s.start) {
		faults.Add(units.Missing, "/readings", "", "a reading of every probe that follows, taken together")
	}
	if err := faults.Err(); err != nil {
		return answer{}, err
	}
	a, err := s.followed(values)
	return a, below("/readings", err)
}

// turned tells whether two positions are more than a minute of the clock apart, which
// is as well as positions are known (ours).
func turned(a, b units.Clock) bool {
	return math.Abs(math.Remainder(float64(a-b), 360)) > float64(units.Minute)
}

// followed tells how far the machine has been moved, and what is left.
func (s *stream) followed(values []units.Length) (answer, error) {
	at, err := s.following.Now(values...)
	if err != nil {
		return answer{}, err
	}
	a, err := s.left(at.Estimate)
	if err != nil {
		return answer{}, err
	}
	a.Followed, s.now = &at, at.Estimate
	return a, nil
}
