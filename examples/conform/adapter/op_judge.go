package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/tolerance"
)

type judgeInput struct {
	Position position  `json:"position"`
	Target   *position `json:"target,omitzero"`
	Limits   limits    `json:"limits"`
	Coupling coupling  `json:"coupling,omitzero"`
}

type judgeResult struct {
	Outcome string       `json:"outcome"`
	Governs judged       `json:"governs"`
	Items   []judgedItem `json:"items"`
}

// judged names an item.
type judged struct {
	Of    string `json:"of"`
	Plane string `json:"plane"`
}

type judgedItem struct {
	Of    string  `json:"of"`
	Plane string  `json:"plane"`
	Found string  `json:"found"`
	Limit string  `json:"limit"`
	Ratio float64 `json:"ratio"`
	U     string  `json:"u,omitzero"`
}

func judge(in *judgeInput, f *strict.Faults) judgeResult {
	off := lessTarget(f, &in.Position, in.Target)
	verdict, err := in.Limits.limits(f, "/limits").Judge(off, in.Coupling.coupling(f))
	f.Adopt(err, func(path string) string {
		if strings.HasPrefix(path, "/coupling") || strings.HasPrefix(path, "/off/") {
			return ofPosition(path)
		}
		return "/limits" + path
	})
	governs := verdict.Governing()
	result := judgeResult{
		Outcome: verdict.Outcome.String(),
		Governs: judged{governs.Of.String(), governs.Plane.String()},
		Items:   []judgedItem{},
	}
	for _, item := range verdict.All() {
		result.Items = append(result.Items, toldItem(item, verdict.Basis))
	}
	return result
}

func toldItem(i tolerance.Item, basis align.Basis) judgedItem {
	told := judgedItem{
		Of: i.Of.String(), Plane: i.Plane.String(),
		Found: amount(i.Of, i.Found), Limit: amount(i.Of, i.Limit), Ratio: i.Ratio,
	}
	if basis == align.Stated {
		told.U = amount(i.Of, i.U)
	}
	return told
}

// amount prints a length or a slope, whichever the quantity is counted in.
func amount(of tolerance.Quantity, a tolerance.Amount) string {
	if of == tolerance.Offset {
		return a.Length.String()
	}
	return a.Slope.String()
}
