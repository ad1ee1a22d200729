package fuzzed

import "testing"

// Fuzz is a fuzz target: what Try asks, from the seeds on.
func (c Calls) Fuzz(f *testing.F) { fuzz(f, c.Seed, c.Try) }

// Fuzz is a fuzz target: what Try asks, from the seeds on.
func (w Wire) Fuzz(f *testing.F) { fuzz(f, w.Seed, w.Try) }

func fuzz(f *testing.F, seed func(add func(...any)), try func(which uint8, raw []byte) error) {
	f.Helper()
	seed(f.Add)
	f.Fuzz(func(t *testing.T, which uint8, raw []byte) {
		if err := try(which, raw); err != nil {
			t.Error(err)
		}
	})
}
