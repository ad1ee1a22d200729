package arc_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// sameBits compares two fits, refusals included, to the last bit.
func sameBits(tb fataler, what string, got align.Fitted, gotErr error, want align.Fitted, wantErr error) {
	tb.Helper()
	if diff := cmp.Diff(codesAndPaths(wantErr), codesAndPaths(gotErr)); diff != "" {
		tb.Fatalf("%s: refusals differ: %s", what, diff)
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(align.Covariance{})); diff != "" {
		tb.Fatalf("%s: %s", what, diff)
	}
}

// batch is what a buffer should hold, kept in the plainest way.
type batch []align.Set

func (b batch) add(set int, r align.Reading) { b[set].Readings = append(b[set].Readings, r) }

func (b batch) drop(set, reading int) {
	var left []align.Reading
	for i, r := range b[set].Readings {
		if i != reading {
			left = append(left, r)
		}
	}
	b[set].Readings = left
}

// Whatever is added and dropped in whatever order, the buffer's fit is that of the
// batch it holds, to the last bit.
func TestBufferIsTheBatch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start := sensorPair(5*um, within(rapid.IntRange(2, 5).Draw(t, "at the start"), 0, 80)...)
		buffer, held := arc.NewBuffer(start...), batch(sensorPair(5*um))
		for i := range start {
			held[i].Readings = slices.Clone(start[i].Readings)
		}
		for range rapid.IntRange(1, 30).Draw(t, "steps") {
			set := rapid.IntRange(0, 1).Draw(t, "set")
			if n := len(held[set].Readings); n > 0 && rapid.Bool().Draw(t, "drop") {
				reading := rapid.IntRange(0, n-1).Draw(t, "reading")
				held.drop(set, reading)
				if err := buffer.Drop(set, reading); err != nil {
					t.Fatal(err)
				}
			} else {
				r := align.Reading{
					At:    units.Clock(rapid.Float64Range(-180, 180).Draw(t, "at")),
					Value: length(rapid.Float64Range(-1, 1).Draw(t, "value")),
				}
				held.add(set, r)
				if err := buffer.Add(set, r); err != nil {
					t.Fatal(err)
				}
			}
			got, gotErr := buffer.Fit()
			want, wantErr := align.Fit(held...)
			sameBits(t, "after a step", got, gotErr, want, wantErr)
		}
		for i, s := range buffer.Sets() {
			if !slices.Equal(s.Readings, held[i].Readings) || s.Probe != held[i].Probe || s.U != held[i].U {
				t.Errorf("set %d: holds %v, want %v", i, s, held[i])
			}
		}
	})
}

// The caller's readings and the buffer's are apart, on the way in and out, spare
// room included.
func TestBufferSharesNoMemory(t *testing.T) {
	start := sensorPair(um, 0, 40, 80)
	start[0].Readings = append(make([]align.Reading, 0, 8), start[0].Readings...)
	buffer := arc.NewBuffer(start...)
	want := buffer.Sets()
	start[0].Readings[0].Value = mm
	start[1].U.Reading = mm
	if diff := cmp.Diff(want, buffer.Sets()); diff != "" {
		t.Errorf("changed with what it was made of: %s", diff)
	}
	out := buffer.Sets()
	out[0].Readings[1].Value = mm
	out[1].View = align.FromStationary
	if diff := cmp.Diff(want, buffer.Sets()); diff != "" {
		t.Errorf("changed with what it gave: %s", diff)
	}
	if err := buffer.Add(0, align.Reading{At: 120, Value: um}); err != nil {
		t.Fatal(err)
	}
	if spare := start[0].Readings[:4][3]; spare != (align.Reading{}) {
		t.Errorf("wrote %v into the caller's spare room", spare)
	}
	if err := buffer.Drop(0, 0); err != nil {
		t.Fatal(err)
	}
	if start[0].Readings[0].Value != mm || start[0].Readings[1].At != 40 {
		t.Errorf("dropping moved the caller's readings: %v", start[0].Readings)
	}
}

func TestBufferRefuses(t *testing.T) {
	sound := align.Reading{At: 120, Value: um}
	nan := math.NaN()
	add := func(set int, r align.Reading) func(*arc.Buffer) error {
		return func(b *arc.Buffer) error { return b.Add(set, r) }
	}
	drop := func(set, reading int) func(*arc.Buffer) error {
		return func(b *arc.Buffer) error { return b.Drop(set, reading) }
	}
	rows := []struct {
		name string
		bad  func(*arc.Buffer) error
		code units.Code
		path string
		twin func(*arc.Buffer) error
	}{
		{"add to set -1", add(-1, sound), units.OutOfRange, "/set", add(0, sound)},
		{"add to set 2 of 2", add(2, sound), units.OutOfRange, "/set", add(1, sound)},
		{"a position that is no number", add(0, align.Reading{At: units.Clock(nan)}), units.NotFinite, "/reading/at", add(0, align.Reading{At: 1e9})},
		{"a value that is no number", add(0, align.Reading{Value: units.Length(math.Inf(1))}), units.NotFinite, "/reading/value", add(0, align.Reading{Value: -mm})},
		{"a value too large", add(0, align.Reading{Value: 2e15}), units.OutOfRange, "/reading/value", add(0, align.Reading{Value: 1e15})},
		{"an uncertainty that is no number", add(0, align.Reading{U: units.Length(nan)}), units.NotFinite, "/reading/u", add(0, align.Reading{U: um})},
		{"a negative uncertainty", add(0, align.Reading{U: -um}), units.OutOfRange, "/reading/u", add(0, align.Reading{U: 1})},
		{"an uncertainty too fine", add(0, align.Reading{U: 1e-4}), units.OutOfRange, "/reading/u", add(0, align.Reading{U: 1e-2})},
		{"drop from set -1", drop(-1, 0), units.OutOfRange, "/set", drop(0, 0)},
		{"drop from set 2 of 2", drop(2, 0), units.OutOfRange, "/set", drop(1, 0)},
		{"drop reading -1", drop(0, -1), units.OutOfRange, "/reading", drop(0, 1)},
		{"drop reading 3 of 3", drop(0, 3), units.OutOfRange, "/reading", drop(0, 2)},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			buffer := arc.NewBuffer(sensorPair(um, 0, 40, 80)...)
			before := buffer.Sets()
			if diff := cmp.Diff([]string{string(row.code) + " " + row.path}, codesAndPaths(row.bad(buffer))); diff != "" {
				t.Error(diff)
			}
			if diff := cmp.Diff(before, buffer.Sets()); diff != "" {
				t.Errorf("the refusal left a trace: %s", diff)
			}
			if err := row.twin(buffer); err != nil {
				t.Errorf("its twin: %v", err)
			}
			if cmp.Equal(before, buffer.Sets()) {
				t.Error("its twin left no trace")
			}
		})
	}
	err := arc.NewBuffer().Add(0, align.Reading{At: units.Clock(nan), Value: units.Length(nan), U: -1})
	want := []string{"not_finite /reading/at", "not_finite /reading/value", "out_of_range /reading/u", "out_of_range /set"}
	if diff := cmp.Diff(want, codesAndPaths(err)); diff != "" {
		t.Errorf("all faults at once: %s", diff)
	}
}

// Three different angles each are what two sensors need; a place read again does
// not count, and one reading says nothing.
func TestBufferFitRefusesWhatCannotBeSeen(t *testing.T) {
	rows := []struct {
		name string
		at   []units.Clock
		code units.Code // none: answered
		path string
	}{
		{"no readings", nil, units.Missing, "/sets/1/readings"},
		{"one reading", []units.Clock{0}, units.Missing, "/sets/0/readings"},
		{"two angles", []units.Clock{0, 90}, units.Unseen, "/sets"},
		{"two angles, one of them again and again", []units.Clock{0, 90, 90, 90, 450}, units.Unseen, "/sets"},
		{"three angles", []units.Clock{0, 90, 45}, "", ""},
		{"three angles within a degree", []units.Clock{0, 1, 0.5}, "", ""},
	}
	for _, row := range rows {
		buffer := arc.NewBuffer(sensorPair(um)...)
		for _, at := range row.at {
			for set := range 2 {
				if err := buffer.Add(set, align.Reading{At: at, Value: length(0.2 * math.Cos(float64(at)))}); err != nil {
					t.Fatal(err)
				}
			}
		}
		_, err := buffer.Fit()
		switch {
		case row.code == "" && err != nil:
			t.Errorf("%s: %v", row.name, err)
		case row.code != "":
			checkFault(t, err, row.code, row.path)
		}
	}
}

// A buffer that nobody made holds no sets, and says so.
func TestBufferZero(t *testing.T) {
	var b arc.Buffer
	if sets := b.Sets(); len(sets) != 0 {
		t.Errorf("holds %v", sets)
	}
	_, err := b.Fit()
	checkFault(t, err, units.Missing, "/sets")
	checkFault(t, b.Add(0, align.Reading{}), units.OutOfRange, "/set")
	checkFault(t, b.Drop(0, 0), units.OutOfRange, "/set")
}
