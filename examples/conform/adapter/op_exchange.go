package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
)

type exchangeInput struct {
	Position position `json:"position"`
}

// exchange leaves the size of every uncertainty: numbers change their sign at
// most.
func exchange(in *exchangeInput, f *strict.Faults) position {
	e := in.Position.estimate(f, "/position")
	return told(align.Estimate{Value: e.Value.Exchanged(), Cov: e.Cov})
}
