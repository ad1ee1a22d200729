package pumpset

import "testing"

// FuzzRead: whatever the bytes are, they are refused with faults, or solved into
// a report that fits its page, drawings without a hole, and a record that comes back.
func FuzzRead(f *testing.F) {
	for _, name := range jobs {
		f.Add(load(f, name))
	}
	for _, row := range refusals {
		if doc := row.edit(f, load(f, row.file)); len(doc) < 10_000 {
			f.Add(doc)
		}
	}
	f.Fuzz(func(t *testing.T, doc []byte) {
		r, err := outcome(doc)
		if err != nil {
			found(t, err)
			return
		}
		for _, s := range []System{Metric, Inch} {
			checkWidth(t, text(t, r, s))
			checkMarkup(t, drawing(t, r, s))
			checkMarkup(t, onSheet(t, r, s))
		}
		checkRecord(t, r)
	})
}
