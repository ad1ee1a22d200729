package arc_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// roomy makes a buffer of two sensors with n readings of case A each, off by a few
// micrometres, and room for more.
func roomy(tb fataler, n, room int) *arc.Buffer {
	tb.Helper()
	sets := filled(tb, caseA, sensorPair(5*um, within(n, 30, 100)...))
	for i := range sets {
		for j := range sets[i].Readings {
			sets[i].Readings[j].Value += um * units.Length(5-10*(j%2))
		}
		sets[i].Readings = append(make([]align.Reading, 0, n+room), sets[i].Readings...)
	}
	return arc.NewBuffer(sets...)
}

// What is called at every reading while a shaft turns leaves nothing for the
// garbage collector.
func TestBufferAllocatesNothing(t *testing.T) {
	r := align.Reading{At: 30, Value: um}
	for what, f := range map[string]func(*arc.Buffer){
		"Add":          func(b *arc.Buffer) { _ = b.Add(0, r) },
		"Fit":          func(b *arc.Buffer) { _, _ = b.Fit() },
		"Add and Fit":  func(b *arc.Buffer) { _, _ = b.Add(0, r), b.Add(1, r); _, _ = b.Fit() },
		"Drop and Add": func(b *arc.Buffer) { _, _ = b.Drop(1, 0), b.Add(1, r) },
	} {
		for _, n := range []int{3, 9, 60} {
			b := roomy(t, n, 200)
			if _, err := b.Fit(); err != nil { // a refusal would allocate
				t.Fatal(err)
			}
			got := testing.AllocsPerRun(1, func() { // once to warm up, once that counts: in an average growth would hide
				for range 100 {
					f(b)
				}
			})
			if got != 0 {
				t.Errorf("%s with %d readings allocates %v times in a hundred calls", what, n, got)
			}
		}
	}
}
