package adapter

import (
	"maps"
	"slices"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
	"github.com/go-json-experiment/json/jsontext"
)

// operation answers an input, or refuses it with faults.
type operation func(input jsontext.Value) (result any, err error)

// operations are those of PROTOCOL.md. To add one, write it in a file of its own
// and add a line.
var operations = map[string]operation{
	"arc":              on(covered),
	"budget":           on(budget),
	"centrelines":      on(centrelines),
	"cold_target":      on(coldTarget),
	"compare":          on(compare),
	"convert":          on(convert),
	"corrections":      on(corrections),
	"coupling":         on(couple),
	"exchange":         on(exchange),
	"expect":           on(expect),
	"face_face":        on(faceFace),
	"fit":              on(fit),
	"fit_exact":        on(fitExact),
	"flange":           on(correctFlange),
	"flange_runout":    on(flangeRunout),
	"follow":           on(follow),
	"forecast":         on(forecast),
	"fourth":           on(fourth),
	"from_flex":        on(fromFlex),
	"growth":           on(growth),
	"judge":            on(judge),
	"lift_at_shaft":    on(liftAtShaft),
	"limits_at":        on(limitsAt),
	"maker_target":     on(makerTarget),
	"mandrel_sag":      on(mandrelSag),
	"merge":            on(merge),
	"pipe_strain":      on(pipeStrain),
	"plan":             on(plan),
	"predict":          on(predict),
	"quarters":         on(quarters),
	"remove_runout":    on(removeRunout),
	"residuals":        on(residuals),
	"reverse":          on(reverse),
	"rim_face":         on(rimFace),
	"rim_gap":          on(rimGap),
	"rubbing_limits":   on(rubbingLimits),
	"running":          on(running),
	"sensor":           on(sense),
	"separate_runout":  on(separateRunout),
	"shaft_runout":     on(shaftRunout),
	"shim_shift":       on(shimShift),
	"shims":            on(choosePacks),
	"slope_from_gap":   on(slopeFromGap),
	"soft_foot":        on(softFoot),
	"straightedge_gap": on(straightedgeGap),
	"without_float":    on(withoutFloat),
}

// description is the answer to describe.
type description struct {
	Name    string   `json:"name"`
	Version string   `json:"version"`
	Ops     []string `json:"ops"`
}

func describe() description {
	return description{Name: "collinear", Version: "unreleased", Ops: slices.Sorted(maps.Keys(operations))}
}

// on makes an operation of a function that answers a document and notes what is
// wrong with it; the answer then does not count.
func on[In, Out any](solve func(in *In, f *strict.Faults) Out) operation {
	return func(input jsontext.Value) (any, error) {
		if input == nil {
			return nil, &units.Fault{Code: units.Missing, Want: "an input"}
		}
		var in In
		if err := strict.Decode(input, "an input", &in); err != nil {
			codesOnWire(err, input)
			return nil, err
		}
		var f strict.Faults
		result := solve(&in, &f)
		codesOnWire(f, input)
		return result, f.Err()
	}
}
