package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
)

type residualsResult struct {
	Residuals []align.Residual `json:"residuals"`
}

func residuals(in *setsInput, f *strict.Faults) residualsResult {
	sets := in.sets(f)
	fitted, err := align.Fit(sets...)
	adoptFit(f, err)
	if err != nil {
		return residualsResult{}
	}
	list, err := align.Residuals(nil, sets, fitted)
	f.Adopt(err, same)
	return residualsResult{list}
}
