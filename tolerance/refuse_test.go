package tolerance_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

var (
	nan = math.NaN()
	inf = math.Inf(1)
)

// What is refused, where, and with which code; each has a twin that passes and
// differs in the one value.
func TestRefused(t *testing.T) {
	short, spacer := align.Coupling{}, align.Coupling{Span: 800 * mm}
	both := tolerance.Limits{Offset: um, Slope: mmm}
	judge := func(l tolerance.Limits, off align.Estimate, k align.Coupling) func() error {
		return func() error { _, err := l.Judge(off, k); return err }
	}
	limits := func(l tolerance.Limits) func() error { return judge(l, align.Exact(caseA), short) }
	off := func(offsetY, slopeY, offsetZ, slopeZ float64) func() error {
		return judge(both, align.Exact(line(offsetY, slopeY, offsetZ, slopeZ)), short)
	}
	cov := func(c align.Covariance) func() error { return judge(both, align.Estimate{Cov: c}, short) }
	coupling := func(k align.Coupling) func() error {
		return judge(tolerance.Limits{Offset: um, Flex: mmm}, align.Exact(caseA), k)
	}
	by := func(confidence, guard float64) func() error {
		return func() error {
			_, err := both.JudgeBy(align.Exact(caseA), short, tolerance.Acceptance{Confidence: confidence, Guard: guard})
			return err
		}
	}
	rub := func(v units.LinearSpeed, s units.RotationalSpeed, k align.Coupling) func() error {
		return func() error { _, err := tolerance.Rubbing(v, s, k); return err }
	}
	runout := func(d units.Length) func() error {
		return func() error { _, err := tolerance.ShaftRunout(d); return err }
	}
	at := func(table tolerance.Table, s units.RotationalSpeed) func() error {
		return func() error { _, err := table.At(s); return err }
	}
	table := mustTable(t, tolerance.Row{Speed: 1000, Offset: 2 * um}, tolerance.Row{Speed: 2000, Offset: um})
	hub := align.Coupling{Diameter: 100 * mm}
	rows := []struct {
		name      string
		bad, twin func() error
		want      string
	}{
		{"offset below zero", limits(tolerance.Limits{Offset: -1}), limits(tolerance.Limits{Offset: 1}), "out_of_range /offset"},
		{"offset below what is told apart", limits(tolerance.Limits{Offset: 0.4}), limits(tolerance.Limits{Offset: 0.6}), "out_of_range /offset"},
		{"offset no number", limits(tolerance.Limits{Offset: units.Length(nan)}), limits(tolerance.Limits{Offset: 1}), "not_finite /offset"},
		{"slope without end", limits(tolerance.Limits{Offset: um, Slope: units.Slope(inf)}), limits(tolerance.Limits{Offset: um, Slope: 1}), "not_finite /slope"},
		{"slope below zero", limits(tolerance.Limits{Slope: -mmm}), limits(tolerance.Limits{Slope: mmm}), "out_of_range /slope"},
		{"slope below what is told apart", limits(tolerance.Limits{Slope: 4e-10}), limits(tolerance.Limits{Slope: 6e-10}), "out_of_range /slope"},
		{"flex below zero, also where it is not used", limits(tolerance.Limits{Offset: um, Flex: -mmm}), limits(tolerance.Limits{Offset: um, Flex: mmm}), "out_of_range /flex"},
		{"no limit", limits(tolerance.Limits{}), limits(tolerance.Limits{Slope: mmm}), "missing /offset"},
		{"none for a short coupling", limits(tolerance.Limits{Flex: mmm}), limits(tolerance.Limits{Flex: mmm, Offset: um}), "missing /offset"},
		{"none for a spacer", judge(both, align.Exact(caseA), spacer), judge(tolerance.Limits{Flex: mmm}, align.Exact(caseA), spacer), "missing /flex"},

		{"offset found no number", off(nan, 0, 0, 0), off(1, 0, 0, 0), "not_finite /off/value/horizontal/offset"},
		{"slope found without end", off(0, inf, 0, 0), off(0, 1, 0, 0), "not_finite /off/value/horizontal/slope"},
		{"offset found beyond reckoning", off(0, 0, 1e12, 0), off(0, 0, 1e9, 0), "out_of_range /off/value/vertical/offset"},
		{"slope found no number", off(0, 0, 0, nan), off(0, 0, 0, -1), "not_finite /off/value/vertical/slope"},
		{"a basis that there is not", cov(align.Covariance{Basis: 4}), cov(align.Covariance{Basis: 3}), "out_of_range /off/cov/basis"},
		{"degrees of freedom below zero", cov(align.Covariance{Basis: align.Scatter, DoF: -1}), cov(align.Covariance{Basis: align.Scatter, DoF: 1}), "out_of_range /off/cov/dof"},
		{"degrees of freedom no number, of the unknown", cov(align.Covariance{Basis: align.Unknown, DoF: nan}), cov(align.Covariance{Basis: align.Unknown}), "not_finite /off/cov/dof"},

		{"span below zero", coupling(align.Coupling{Span: -mm}), coupling(align.Coupling{Span: mm}), "out_of_range /coupling/span"},
		{"span no number", coupling(align.Coupling{Span: units.Length(nan)}), coupling(align.Coupling{}), "not_finite /coupling/span"},
		{"span too small to divide by", coupling(align.Coupling{Span: 1e-300}), coupling(align.Coupling{Span: 1e-3}), "out_of_range /coupling/span"},
		{"diameter below zero", coupling(align.Coupling{Diameter: -mm}), coupling(align.Coupling{Diameter: mm}), "out_of_range /coupling/diameter"},

		{"a confidence of one half", by(0.5, 0), by(0.500001, 0), "out_of_range /acceptance/confidence"},
		{"a confidence of one", by(1, 0), by(0.999999, 0), "out_of_range /acceptance/confidence"},
		{"a confidence in per cent", by(95, 0), by(0.95, 0), "out_of_range /acceptance/confidence"},
		{"a confidence below zero", by(-0.95, 0), by(0.95, 0), "out_of_range /acceptance/confidence"},
		{"a confidence no number", by(nan, 0), by(0, 0), "not_finite /acceptance/confidence"},
		{"a guard below zero", by(0, -2), by(0, 2), "out_of_range /acceptance/guard"},
		{"a guard without end", by(0, inf), by(0, 100), "not_finite /acceptance/guard"},
		{"confidence and guard", by(0.95, 2), by(0.95, 0), "conflict /acceptance/guard"},

		{"no sliding speed", rub(0, 1500, hub), rub(1, 1500, hub), "missing /sliding"},
		{"sliding backwards", rub(-1, 1500, hub), rub(1, 1500, hub), "out_of_range /sliding"},
		{"standing still", rub(1, 0, hub), rub(1, 1, hub), "missing /speed"},
		{"speed no number", rub(1, units.RotationalSpeed(nan), hub), rub(1, 1, hub), "not_finite /speed"},
		{"no diameter", rub(1, 1500, align.Coupling{Span: mm}), rub(1, 1500, align.Coupling{Span: mm, Diameter: mm}), "missing /coupling/diameter"},
		{"diameter below zero, to rub on", rub(1, 1500, align.Coupling{Diameter: -mm}), rub(1, 1500, align.Coupling{Diameter: mm}), "out_of_range /coupling/diameter"},
		{"diameter no number", rub(1, 1500, align.Coupling{Diameter: units.Length(nan)}), rub(1, 1500, hub), "not_finite /coupling/diameter"},
		{"span below zero, to rub on", rub(1, 1500, align.Coupling{Diameter: mm, Span: -1}), rub(1, 1500, align.Coupling{Diameter: mm, Span: 1}), "out_of_range /coupling/span"},
		{"sliding so slow that nothing is allowed", rub(1e-7, 3000, hub), rub(1e-3, 3000, hub), "out_of_range /sliding"},
		{"sliding so fast that all is allowed", rub(1e12, 1, hub), rub(1e3, 1, hub), "out_of_range /sliding"},

		{"no diameter of a shaft", runout(0), runout(7 * mm), "missing /diameter"},
		{"shaft below zero", runout(-7 * mm), runout(7 * mm), "out_of_range /diameter"},
		{"shaft no number", runout(units.Length(inf)), runout(7 * mm), "not_finite /diameter"},

		{"beyond the table", at(table, 2000.5), at(table, 2000), "out_of_range /speed"},
		{"no speed to look up", at(table, 0), at(table, 1), "missing /speed"},
		{"speed below zero", at(table, -1000), at(table, 1000), "out_of_range /speed"},
		{"speed to look up no number", at(table, units.RotationalSpeed(nan)), at(table, 1000), "not_finite /speed"},
		{"nothing in the table", at(tolerance.Table{}, 1000), at(table, 1000), "missing /rows"},
	}
	for _, row := range rows {
		wantFaults(t, row.name, row.bad(), row.want)
		if err := row.twin(); err != nil {
			t.Errorf("%s: the twin is refused: %v", row.name, err)
		}
	}
}

// An uncertainty can leave what can be reckoned with when an estimate is
// multiplied; here by a factor of 1e20.
func TestUncertaintyBeyondReckoning(t *testing.T) {
	off := stated(t, align.Centreline{}, line(1, 1, 1, 1), uncorrelated)
	_, err := tolerance.Limits{Offset: um}.Judge(off.Times(1e20), align.Coupling{})
	wantFaults(t, "times 1e20", err,
		"out_of_range /off/cov/u/horizontal/offset", "out_of_range /off/cov/u/horizontal/slope",
		"out_of_range /off/cov/u/vertical/offset", "out_of_range /off/cov/u/vertical/slope")
	if v, err := (tolerance.Limits{Offset: um}).Judge(off.Times(1e6), align.Coupling{}); err != nil {
		t.Errorf("%v: the twin is refused: %v", v, err)
	}
}

// Independent faults come all at once.
func TestFaultsTogether(t *testing.T) {
	off := align.Estimate{Value: line(nan, 0, 0, inf), Cov: align.Covariance{Basis: 9, DoF: -1}}
	v, err := tolerance.Limits{Offset: -1, Slope: units.Slope(nan)}.Judge(off, align.Coupling{Span: mm, Diameter: -1})
	wantFaults(t, "everything", err, "out_of_range /offset", "not_finite /slope", "missing /flex",
		"not_finite /off/value/horizontal/offset", "not_finite /off/value/vertical/slope",
		"out_of_range /off/cov/basis", "out_of_range /off/cov/dof", "out_of_range /coupling/diameter")
	if v != (tolerance.Verdict{}) {
		t.Errorf("a refusal comes with %v", v)
	}
	_, err = tolerance.Rubbing(0, -1, align.Coupling{Span: -1})
	wantFaults(t, "rubbing", err, "missing /sliding", "out_of_range /speed", "missing /coupling/diameter", "out_of_range /coupling/span")
}

// A span that may be given, and of which nobody can reckon with the tilts.
func TestVerdictBeyondReckoning(t *testing.T) {
	limits, uncorrelated := tolerance.Limits{Flex: mmm}, [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}
	for name, off := range map[string]align.Estimate{
		"tilts":                  align.Exact(line(0, 0, 1, 0)),
		"uncertainties of tilts": stated(t, line(0, 0, 0, 0), line(0, 0, 1, 0), uncorrelated),
	} {
		for _, limits.PerPlane = range []bool{false, true} {
			v, err := limits.Judge(off, align.Coupling{Span: 1e-15})
			wantFaults(t, name, err, "out_of_range /off")
			if v != (tolerance.Verdict{}) {
				t.Errorf("%s: refused, and yet %v", name, v)
			}
			judged(t, limits, off, align.Coupling{Span: mm})
		}
	}
	unknown := align.Estimate{Cov: align.Covariance{Basis: align.Unknown}}
	judged(t, limits, unknown, align.Coupling{Span: 1e-15}) // what is not known is not too large
}
