package train

import (
	"strconv"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// widest is the largest gap between Ratio and Bound that is not worth a word, as a
// share of the Ratio, and enough the same of the limits.
const widest = 1e-3

// warn adds what the reader of the plan has to know.
func (p *Plan) warn(blocksMissing bool) {
	var root check.Path
	add := func(code units.Code, path check.Path, value, want string) {
		p.Warnings = append(p.Warnings, units.Fault{Code: code, Path: path.String(), Value: value, Want: want})
	}
	if p.Reach == OutOfReach {
		add(units.Unreachable, root.Field("joints"), number(p.Ratio), "a worst ratio of at most 1: limits stand in the way, and other couplings may be left as far outside, though they could do better")
	}
	if p.Reach == OutOfReach && blocksMissing {
		add(units.Suspect, root.Field("in_the_way"), "", "all that stands in the way: the search came to no answer")
	}
	if p.Ratio-p.Bound > max(widest*p.Ratio, 2*enough) {
		add(units.Suspect, root.Field("ratio"), number(p.Ratio), "less than a thousandth above the bound "+number(p.Bound))
	}
	if !p.Proven && p.Work == FewestFeet {
		add(units.Suspect, root.Field("moves"), strconv.Itoa(p.Moves), "the fewest moves: the search was cut off, and fewer may do")
	} else if !p.Proven {
		add(units.Suspect, root.Field("moves"), strconv.Itoa(p.Moves), "the least work: no solver told it, and less may do")
	}
}

func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
