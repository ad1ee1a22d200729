package main

import (
	"strings"
	"testing"
	"time"
)

// TestInvariantsBite tests that each invariant is broken by a program that
// breaks it. Those that keep to their mistake everywhere, as most do, are seen by
// the vectors alone.
func TestInvariantsBite(t *testing.T) {
	notInShort(t)
	s, _ := ours(t)
	s.lines = nil
	byFlag := map[string]slip{}
	for _, w := range slips {
		byFlag[w.flag] = w
	}
	rows := []struct {
		invariant string
		slip      slip
	}{
		{"reversed_order", slip{spoil: eachSweep(func(readings []any) []any { return readings[:3] })}},
		{"repeated", slip{spoil: eachSweep(func(readings []any) []any { return append(readings, readings[:min(3, len(readings)-1)]...) })}},
		{"weighted", slip{spoil: eachSweep(func(readings []any) []any { return readings[len(readings)/6:] })}},
		{"turned", byFlag["hours_as_degrees"]},
		{"moved_origin", byFlag["station_unsigned"]},
		{"scaled", byFlag["mil_as_hundredth"]},
		{"exchanged", slip{spoil: func(_ string, in object) {
			each("", in, func(_ string, o object) {
				if o["kind"] == "rim" {
					o["carrier"] = "stationary"
				}
			})
		}}},
		{"predicted", slip{spoil: func(op string, in object) {
			if op == "predict" {
				each("", in, otherSide)
			}
		}}},
		{"moved", byFlag["correction_for_position"]},
	}
	for _, row := range rows {
		t.Run(row.invariant, func(t *testing.T) {
			p := newProgram(inside(wrongly(row.slip)), time.Minute)
			defer p.stop()
			failed, all := 0, 0
			for _, o := range s.invariants(p) {
				if strings.HasSuffix(o.ID, "/"+row.invariant) {
					all++
					if o.Kind == off {
						failed++
					}
				}
			}
			if failed < 3 {
				t.Errorf("%d of %d failed", failed, all)
			}
		})
	}
}

// eachSweep changes the readings of every set of a fit.
func eachSweep(change func([]any) []any) func(string, object) {
	return func(op string, in object) {
		if op != "fit" {
			return
		}
		each("", in["sets"], func(_ string, o object) {
			if readings, there := o["readings"].([]any); there && len(readings) >= 3 {
				o["readings"] = change(readings)
			}
		})
	}
}
