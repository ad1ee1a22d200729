package pumpset

import (
	"bytes"
	_ "embed"
)

//go:embed job.json
var sample []byte

// Sample returns a whole job on an invented pump set, from the first check of the
// feet to the readings as left.
func Sample() []byte { return bytes.Clone(sample) }
