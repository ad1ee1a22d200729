package fuzzed_test

import (
	"encoding/binary"
	"math"
	"testing"

	"example.org/collinear/internal/fuzzed"
)

func TestTape(t *testing.T) {
	raw := binary.LittleEndian.AppendUint64([]byte{7}, math.Float64bits(-2.5))
	from := fuzzed.Tape(append(raw, 9))
	if b := from.Byte(); b != 7 {
		t.Errorf("got %d", b)
	}
	if x := from.Float64(); x != -2.5 {
		t.Errorf("got %v", x)
	}
	if b := from.Byte(); b != 9 {
		t.Errorf("got %d", b)
	}
	if b, x := from.Byte(), from.Float64(); b != 0 || x != 0 {
		t.Errorf("past the end: %d, %v", b, x)
	}
	if raw[0] != 7 {
		t.Error("the bytes were written to")
	}
}
