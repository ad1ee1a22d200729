package tolerance_test

import (
	"bytes"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

func init() {
	fuzzed.Fresh(func(t *fuzzed.Tape) align.Covariance {
		c, err := align.NewCovariance(align.Basis(t.Byte()%5), line(t.Near(0.003), t.Near(0.01), t.Near(0.004), t.Near(0.02)), uncorrelated)
		if err == nil && c.Basis == align.Scatter {
			c.DoF = t.Near(3)
		}
		return c
	})
}

// must is for what is made before any test runs.
func must[V any](v V, err error) V {
	if err != nil {
		panic(err)
	}
	return v
}

// The arguments that the calls start from. They are copied for each call.
var (
	callLimits   = tolerance.Limits{Offset: 100 * um, Slope: 0.5 * mmm, Flex: 0.8 * mmm, Rule: "a rule", Source: "a source"}
	callOff      = align.Estimate{Value: caseA, Cov: must(align.NewCovariance(align.Stated, line(0.03, 0.1, 0.04, 0.2), uncorrelated))}
	callShort    = align.Coupling{Diameter: 150 * mm}
	callSpacer   = align.Coupling{Name: "spacer", Span: 400 * mm}
	callRows     = []tolerance.Row{{Speed: 1000, Offset: 120 * um, Slope: 0.8 * mmm, Flex: mmm}, {Speed: 2000, Offset: 60 * um, Slope: 0.4 * mmm, Flex: 0.5 * mmm}}
	callTable    = must(tolerance.NewTable("Works standard 4-12", "2024", callRows...))
	callAsked    = tolerance.Acceptance{Confidence: 0.95}
	callVerdicts = [3]tolerance.Verdict{
		must(callLimits.Judge(callOff, callShort)), must(callLimits.JudgeBy(callOff, callSpacer, callAsked)),
		must(callLimits.JudgeBy(callOff, callShort, tolerance.Acceptance{Guard: 1.5})),
	}
	callItem   = callVerdicts[1].Items[0]
	callRunout = must(tolerance.ShaftRunout(100 * mm))
	callStyle  = tolerance.Style{Length: units.InMils, LengthDigits: 1, Slope: units.InMilsPerInch}
)

// calls are the functions that reckon with readings or with geometry.
var calls = fuzzed.Calls{
	{Name: "Acceptance.Validate", Of: tolerance.Acceptance.Validate, With: []any{callAsked}},
	{Name: "APIRP686", Of: tolerance.APIRP686, With: []any{}},
	{Name: "Item.Chance", Of: tolerance.Item.Chance, With: []any{callItem}},
	{Name: "Item.String", Of: tolerance.Item.String, With: []any{callItem}},
	{Name: "Item.Text", Of: tolerance.Item.Text, With: []any{callItem, callStyle}},
	{Name: "Item.Within", Of: tolerance.Item.Within, With: []any{callItem}},
	{Name: "Limits.Judge", Of: tolerance.Limits.Judge, With: []any{callLimits, callOff, callShort}},
	{Name: "Limits.JudgeBy", Of: tolerance.Limits.JudgeBy, With: []any{callLimits, callOff, callSpacer, callAsked}},
	{Name: "Limits.Validate", Of: tolerance.Limits.Validate, With: []any{callLimits}},
	{Name: "NewTable", Of: tolerance.NewTable, With: []any{"Works standard 4-12", "2024", callRows}},
	{Name: "Rubbing", Of: tolerance.Rubbing, With: []any{12.7 * units.MillimetrePerSecond, 2960 * rpm, callShort}},
	{Name: "ShaftRunout", Of: tolerance.ShaftRunout, With: []any{100 * mm}},
	{Name: "Table.At", Of: tolerance.Table.At, With: []any{callTable, 1480 * rpm}},
	{Name: "Table.Rows", Of: tolerance.Table.Rows, With: []any{callTable}},
	{Name: "Table.WriteCSV", Of: throughCSV, With: []any{"Works standard 4-12", "2024", callRows}},
	{Name: "Verdict.All", Of: allOf, With: []any{callVerdicts[1]}, Open: "it hands on what stands in the verdict"},
	{Name: "Verdict.Chance", Of: tolerance.Verdict.Chance, With: []any{callVerdicts[2]}},
	{Name: "Verdict.Governing", Of: tolerance.Verdict.Governing, With: []any{callVerdicts[0]}, Open: "it hands on what stands in the verdict"},
	{Name: "Verdict.String", Of: tolerance.Verdict.String, With: []any{callVerdicts[0]}},
	{Name: "Verdict.Text", Of: tolerance.Verdict.Text, With: []any{callVerdicts[1], callStyle}},
}

// throughCSV asks that a table that is made is written, and read as the same one.
func throughCSV(source, edition string, rows ...tolerance.Row) ([]tolerance.Row, error) {
	table, err := tolerance.NewTable(source, edition, rows...)
	if err != nil {
		return nil, err
	}
	var text bytes.Buffer
	if err := table.WriteCSV(&text); err != nil {
		return nil, err
	}
	written := text.String()
	back, err := tolerance.ReadCSV(&text)
	if err != nil {
		panic("a table that was written is refused: " + err.Error() + "\n" + written)
	}
	if back.Source() != table.Source() || back.Edition() != table.Edition() || len(back.Rows()) != len(table.Rows()) {
		panic("a table comes back changed:\n" + written)
	}
	return back.Rows(), nil
}

func allOf(v tolerance.Verdict) (items []tolerance.Item) {
	for _, item := range v.All() {
		items = append(items, item)
	}
	return items
}

func TestCallsAreSound(t *testing.T) {
	if err := calls.Sound(testing.Short()); err != nil {
		t.Error(err)
	}
}

// FuzzCalls: whatever is asked of a function, it answers with finite numbers, the same
// again, or refuses with faults; it leaves its arguments alone and never panics.
func FuzzCalls(f *testing.F) {
	calls.Fuzz(f)
}
