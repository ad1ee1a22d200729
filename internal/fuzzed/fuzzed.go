// Package fuzzed turns the bytes that a fuzzer hands over into numbers. It serves
// tests alone.
package fuzzed

import (
	"encoding/binary"
	"math"
)

// Tape hands out bytes one after the other; at its end all is zero.
type Tape []byte

// Byte returns the next byte.
func (t *Tape) Byte() byte {
	if len(*t) == 0 {
		return 0
	}
	b := (*t)[0]
	*t = (*t)[1:]
	return b
}

// Float64 returns the next eight bytes as a float64, which may be any: an infinity
// and NaN as well.
func (t *Tape) Float64() float64 {
	var raw [8]byte
	for i := range raw {
		raw[i] = t.Byte()
	}
	return math.Float64frombits(binary.LittleEndian.Uint64(raw[:]))
}
