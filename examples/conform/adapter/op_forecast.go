package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type forecastInput struct {
	View     align.View   `json:"view"`
	Expected position     `json:"expected"`
	Sets     []fitReadAt  `json:"sets"`
	Feet     []align.Foot `json:"feet,omitzero"`
}

type forecastResult struct {
	U    align.Centreline `json:"u"`
	Feet []footU          `json:"feet"`
}

type footU struct {
	Foot       string       `json:"foot"`
	Horizontal units.Length `json:"horizontal"`
	Vertical   units.Length `json:"vertical"`
}

func forecast(in *forecastInput, f *strict.Faults) forecastResult {
	expected := in.Expected.estimate(f, "/expected").Value
	sets := make([]align.Set, len(in.Sets))
	for i := range in.Sets {
		path := strict.Step("/sets", i)
		sets[i] = in.Sets[i].set(f, path, in.View)
		if in.Sets[i].U.Reading == nil {
			f.Add(units.Missing, path+"/u/reading", "", "the uncertainty of a reading")
		}
	}
	outlook, err := arc.Forecast(expected, in.Feet, sets...)
	if len(*f) == 0 {
		f.Adopt(err, readAtPath)
	}
	result := forecastResult{U: outlook.Now.Cov.Standard(), Feet: []footU{}}
	for _, m := range outlook.Now.Feet {
		result.Feet = append(result.Feet, footU{m.Foot.Name, m.U.Horizontal, m.U.Vertical})
	}
	return result
}

// readAtPath turns paths of readings into those of a list of positions.
func readAtPath(path string) string {
	if before, ok := strings.CutSuffix(path, "/at"); ok {
		return strings.Replace(before, "/readings/", "/at/", 1)
	}
	if before, ok := strings.CutSuffix(path, "/readings"); ok {
		return before + "/at"
	}
	return path
}
