package align_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// FuzzMonteCarlo spoils a job and simulates it. Whatever comes, it is refused with
// faults, or one block sums up to numbers that hang together and can be written: the
// shortest interval is not longer than the symmetric one. A block takes ten thousand trials, so this runs slowly.
func FuzzMonteCarlo(f *testing.F) {
	f.Add([]byte{}, uint64(1), 0.95)
	f.Add([]byte{1, 3, 0, 6, 60}, uint64(1<<63), 0.5)
	f.Add([]byte{2, 40, 0, 1, 60, 0, 3, 1}, uint64(7), 0.9999)
	f.Fuzz(func(t *testing.T, raw []byte, seed uint64, p float64) {
		job := align.MonteCarlo{Sets: statedSets, Target: soundEstimates[0], Feet: soundFeet, Coupling: soundCoupling}
		text, err := json.Marshal(job)
		if err == nil {
			job = align.MonteCarlo{}
			err = json.Unmarshal(text, &job) // a copy, with nothing shared
		}
		if err != nil {
			t.Fatal(err)
		}
		tape := fuzzed.Tape(raw)
		tape.Spoil(&job)
		block, err := job.Block(seed, 3)
		if err != nil {
			refused(t, err)
			return
		}
		s, err := align.Summarise(p, block)
		if err != nil {
			refused(t, err)
			return
		}
		if s.Trials != align.TrialsPerBlock || s.Failed < 0 || s.Failed >= s.Trials {
			t.Errorf("%d trials, %d failed", s.Trials, s.Failed)
		}
		hangsTogether(t, s.Offset.Horizontal)
		hangsTogether(t, s.Offset.Size)
		for _, foot := range s.Feet {
			hangsTogether(t, foot.Vertical)
		}
		if _, err := json.Marshal(s); err != nil {
			t.Errorf("%+v cannot be written: %v", s, err)
		}
	})
}

func refused(t *testing.T, err error) {
	t.Helper()
	if err := fuzzed.Refusal(err); err != nil {
		t.Error(err)
	}
}

func hangsTogether(t *testing.T, d align.Distribution[units.Length]) {
	t.Helper()
	shortest, symmetric := d.Shortest.High-d.Shortest.Low, d.Symmetric.High-d.Symmetric.Low
	if !(shortest >= 0 && shortest <= symmetric) || d.Deviation < 0 || math.IsInf(float64(d.Mean), 0) || math.IsInf(float64(d.Deviation), 0) {
		t.Errorf("%+v", d)
	}
}
