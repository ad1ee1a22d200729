package arc

import (
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Buffer holds sets whose readings come in, and are dropped, one by one as the
// shaft turns. [Buffer.Fit] is align.Fit of what is held, to the last bit: nothing
// is updated from one reading to the next, so nothing drifts, and a reading that
// is dropped leaves no trace. The zero value holds no sets. A Buffer is not for
// use by several goroutines at once.
type Buffer struct{ sets []align.Set }

// NewBuffer returns a buffer of the given sets, usually still without readings: a
// probe, how it is mounted and its uncertainties each. It copies the readings with
// their room, so that make([]align.Reading, 0, 100) leaves room for a hundred, and
// does not look at them; Fit does.
func NewBuffer(sets ...align.Set) *Buffer {
	b := &Buffer{slices.Clone(sets)}
	for i := range b.sets {
		held := b.sets[i].Readings
		b.sets[i].Readings = append(make([]align.Reading, 0, cap(held)), held...)
	}
	return b
}

// Add appends a reading to a set, counted from 0. It refuses a set that does not
// exist (OutOfRange, at /set) and, with paths from /reading, a position or a value
// that is not finite (NotFinite) and an uncertainty that cannot be (OutOfRange);
// the buffer stays as it was then. Within capacity it allocates nothing.
func (b *Buffer) Add(set int, r align.Reading) error {
	if err := b.checkAdd(set, &r); err != nil {
		return err
	}
	b.sets[set].Readings = append(b.sets[set].Readings, r)
	return nil
}

// Drop takes a reading out of a set, both counted from 0; the readings behind it
// move up by one, in their order. It refuses a set or a reading that does not
// exist (OutOfRange, at /set or /reading); the buffer stays as it was then. It
// allocates nothing and keeps the room.
func (b *Buffer) Drop(set, reading int) error {
	if err := b.checkDrop(set, reading); err != nil {
		return err
	}
	b.sets[set].Readings = slices.Delete(b.sets[set].Readings, reading, reading+1)
	return nil
}

// Sets returns a copy of what is held, in the order in which it came.
func (b *Buffer) Sets() []align.Set { return clone(b.sets) }

// clone returns the sets with readings of their own.
func clone(sets []align.Set) []align.Set {
	list := slices.Clone(sets)
	for i := range list {
		list[i].Readings = slices.Clone(list[i].Readings)
	}
	return list
}

// Fit returns [align.Fit] of the sets that are held, and refuses what it refuses:
// a set with fewer than two readings (Missing, at /sets/0/readings), and readings
// that do not see all four numbers (Unseen, at /sets), as where a sensor was read
// at fewer than three different angles and no other makes up for it: two sensors,
// or one with both channels, need three each. Angles that differ a little are
// answered, with their large uncertainty. Sound sets without warnings allocate
// nothing. Its cost grows with the number of readings.
func (b *Buffer) Fit() (align.Fitted, error) { return align.Fit(b.sets...) }

func (b *Buffer) checkAdd(set int, r *align.Reading) error {
	var faults check.Faults
	var root check.Path
	checkIndex(&faults, root.Field("set"), set, len(b.sets), "a set that is held")
	reading := root.Field("reading")
	check.Finite(&faults, reading.Field("at"), r.At)
	check.Finite(&faults, reading.Field("value"), r.Value)
	check.Weight(&faults, reading.Field("u"), r.U)
	return faults.Err()
}

func (b *Buffer) checkDrop(set, reading int) error {
	var faults check.Faults
	var root check.Path
	if checkIndex(&faults, root.Field("set"), set, len(b.sets), "a set that is held") {
		checkIndex(&faults, root.Field("reading"), reading, len(b.sets[set].Readings), "a reading that is held")
	}
	return faults.Err()
}

// checkIndex asks for an index of a list of n.
func checkIndex(faults *check.Faults, at check.Path, i, n int, what string) bool {
	if i >= 0 && i < n {
		return true
	}
	faults.Add(units.OutOfRange, at, i, what)
	return false
}
