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

	DoF         *float64 `json:"dof,omitzero"`
	Probability *float64 `json:"probability,omitzero"`
	Guard       *float64 `json:"guard,omitzero"`
}

type judgeResult struct {
	Outcome string       `json:"outcome"`
	Governs judged       `json:"governs"`
	Items   []judgedItem `json:"items"`
	AtLeast *float64     `json:"at_least,omitzero"`
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

	Probability *float64 `json:"probability,omitzero"`
}

func judge(in *judgeInput, f *strict.Faults) judgeResult {
	off := lessTarget(f, &in.Position, in.Target)
	in.scattered(f, &off)
	above(f, "/probability", in.Probability)
	by := tolerance.Acceptance{Confidence: value(in.Probability), Guard: value(in.Guard)}
	verdict, err := in.Limits.limits(f, "/limits").JudgeBy(off, in.Coupling.coupling(f), by)
	f.Adopt(err, func(path string) string {
		switch path {
		case "/acceptance/confidence":
			return "/probability"
		case "/acceptance/guard":
			return "/guard"
		}
		if strings.HasPrefix(path, "/coupling") || strings.HasPrefix(path, "/off/") {
			return ofPosition(path)
		}
		return "/limits" + path
	})
	return toldVerdict(verdict)
}

// scattered makes what is off one that comes from a scatter, where degrees of
// freedom are given.
func (in *judgeInput) scattered(f *strict.Faults, off *align.Estimate) {
	if in.DoF == nil || len(*f) > 0 {
		return
	}
	above(f, "/dof", in.DoF)
	cov, err := align.NewCovariance(align.Scatter, off.Cov.Standard(), off.Cov.Correlation())
	f.Adopt(err, ofPosition)
	cov.DoF = *in.DoF
	off.Cov = cov
	f.Adopt(off.Validate(), func(path string) string {
		if path == "/cov/dof" {
			return "/dof"
		}
		return ofPosition(path)
	})
	if len(*f) > 0 {
		off.Cov = align.Covariance{} // the verdict would refuse it again
	}
}

func toldVerdict(v tolerance.Verdict) judgeResult {
	governs := v.Governing()
	result := judgeResult{
		Outcome: v.Outcome.String(),
		Governs: judged{governs.Of.String(), governs.Plane.String()},
		Items:   []judgedItem{},
	}
	uncertain := v.Basis == align.Stated || v.Basis == align.Scatter
	if uncertain {
		result.AtLeast = &v.AtLeast
	}
	for _, item := range v.All() {
		told := judgedItem{
			Of: item.Of.String(), Plane: item.Plane.String(),
			Found: amount(item.Of, item.Found), Limit: amount(item.Of, item.Limit), Ratio: item.Ratio,
		}
		if uncertain {
			told.U, told.Probability = amount(item.Of, item.U), &item.Probability
		}
		result.Items = append(result.Items, told)
	}
	return result
}

// amount prints a length or a slope, whichever the quantity is counted in.
func amount(of tolerance.Quantity, a tolerance.Amount) string {
	if of == tolerance.Offset {
		return a.Length.String()
	}
	return a.Slope.String()
}
