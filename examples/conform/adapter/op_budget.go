package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
)

type budgetResult struct {
	Shares []share `json:"shares"`
}

// share is the part that one input of a fit brings into its uncertainty.
type share struct {
	Set int              `json:"set"`
	Of  align.Input      `json:"of"`
	U   align.Centreline `json:"u"`
}

func budget(in *setsInput, f *strict.Faults) budgetResult {
	shares, err := align.Budget(in.sets(f)...)
	adoptFit(f, err)
	result := budgetResult{Shares: []share{}}
	for _, s := range shares {
		result.Shares = append(result.Shares, share{s.Set, s.Of, s.Cov.Standard()})
	}
	return result
}
