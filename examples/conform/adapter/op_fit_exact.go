package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
)

type fitExactResult struct {
	fitResult
	Difference position `json:"difference"`
}

func fitExact(in *fitInput, f *strict.Faults) fitExactResult {
	fitted, err := align.FitExact(in.sets(f)...)
	adoptFit(f, err)
	return fitExactResult{in.told(f, fitted.Fitted), told(align.Exact(fitted.Difference))}
}
