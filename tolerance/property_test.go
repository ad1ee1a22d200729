package tolerance_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// alike asks that two verdicts find the same, item by item in the order given,
// to rounding; scale is how much larger the second is.
func alike(t *rapid.T, what string, a, b tolerance.Verdict, scale float64, order ...int) {
	t.Helper()
	if a.Used != b.Used || a.Used != len(order) {
		t.Fatalf("%s: %d items, were %d", what, b.Used, a.Used)
	}
	for i, j := range order {
		fa, ua, _ := numbers(a.Items[i])
		fb, ub, _ := numbers(b.Items[j])
		size, spread := 1e6, 1e4 // a millimetre found, 10 um uncertain
		if a.Items[i].Of != tolerance.Offset {
			size, spread = 0.05, 1e-3 // 1 mm over the least span
		}
		near(t, what+": found", fb/scale, fa, 20*eps*size)
		if a.Items[i].Ratio != 0 { // has a direction
			near(t, what+": u", ub/scale, ua, 1e-7*spread)
		}
	}
}

// Turning everything about the axis leaves what both planes together find.
func TestTurningLeavesVectors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off, k, l := drawEstimate(t), drawCoupling(t), drawLimits(t)
		l.PerPlane = false
		angle := rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		alike(t, "turned", judged(t, l, off, k), judged(t, l, turned(t, off, angle), k), 1, 0, 1)
	})
}

// turned is off seen by an observer who leans over by an angle.
func turned(tb fataler, off align.Estimate, angle float64) align.Estimate {
	sin, cos := math.Sincos(angle)
	return mapped(tb, off, [4][4]float64{{cos, 0, sin, 0}, {0, cos, 0, sin}, {-sin, 0, cos, 0}, {0, -sin, 0, cos}})
}

// mapped is the estimate of m times the four numbers.
func mapped(tb fataler, off align.Estimate, m [4][4]float64) align.Estimate {
	tb.Helper()
	value, s := plain(off.Value), plain(off.Cov.Standard())
	r := off.Cov.Correlation()
	var to, u [4]float64
	var v, together [4][4]float64
	for i := range m {
		for j := range m {
			to[i] += m[i][j] * value[j]
			for a := range m {
				for b := range m {
					v[i][j] += m[i][a] * m[j][b] * s[a] * s[b] * r[a][b]
				}
			}
		}
	}
	for i := range m {
		u[i] = math.Sqrt(max(0, v[i][i]))
	}
	for i := range m {
		for j := range m {
			if i == j {
				together[i][j] = 1
			} else if u[i]*u[j] > 0 {
				together[i][j] = v[min(i, j)][max(i, j)] / (u[i] * u[j])
			}
		}
	}
	return stated(tb, line(to[0], to[1], to[2], to[3]), line(u[0], u[1], u[2], u[3]), together)
}

// plain is the inverse of line.
func plain(c align.Centreline) [4]float64 {
	return [4]float64{
		float64(c.Horizontal.Offset) / 1e6, float64(c.Horizontal.Slope) * 1e3,
		float64(c.Vertical.Offset) / 1e6, float64(c.Vertical.Slope) * 1e3,
	}
}

// With the roles of the machines exchanged the two flex planes change places, and
// a short coupling is judged the same.
func TestExchangingTheMachines(t *testing.T) {
	signs := [4][4]float64{{1}, {0, -1}, {0, 0, -1}, {0, 0, 0, 1}} // as Centreline.Exchanged
	rapid.Check(t, func(t *rapid.T) {
		off, k, l := drawEstimate(t), drawCoupling(t), drawLimits(t)
		a, b := judged(t, l, off, k), judged(t, l, mapped(t, off, signs), k)
		same, across := []int{0, 1}, []int{1, 0}
		if l.PerPlane {
			same, across = []int{0, 1, 2, 3}, []int{2, 3, 0, 1}
		}
		if k.Span == 0 {
			alike(t, "exchanged, short", a, b, 1, same...)
		} else {
			alike(t, "exchanged, spacer", a, b, 1, across...)
		}
		if a.Outcome != b.Outcome && math.Abs(a.Governing().Ratio-1) > 1e-6 {
			t.Errorf("%v became %v", a, b)
		}
	})
	if got := align.Exact(caseA.Exchanged()); got.Value != mapped(t, align.Exact(caseA), signs).Value {
		t.Errorf("the signs are not those of Exchanged: %v", got.Value)
	}
}

// Twice as far off and twice the limit is the same verdict; twice as far off
// alone is twice the ratio.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off, k, l := drawEstimate(t), drawCoupling(t), drawLimits(t)
		by := float64(int(1) << rapid.IntRange(0, 6).Draw(t, "doublings"))
		order := []int{0, 1}
		if l.PerPlane {
			order = []int{0, 1, 2, 3}
		}
		before, after := judged(t, l, off, k), judged(t, l, off.Times(by), k)
		alike(t, "scaled", before, after, by, order...)
		wider := l
		wider.Offset, wider.Slope, wider.Flex = l.Offset*units.Length(by), l.Slope*units.Slope(by), l.Flex*units.Slope(by)
		again := judged(t, wider, off.Times(by), k)
		for i := range order {
			// half a nanometre of found before scaling, over the limit
			bound := 0.51 * nanometre(before.Items[i])
			near(t, "ratio", again.Items[i].Ratio, before.Items[i].Ratio, bound)
		}
	})
}

// nanometre is one nanometre, or one over a metre, as a share of the limit.
func nanometre(i tolerance.Item) float64 {
	_, _, limit := numbers(i)
	if i.Of == tolerance.Offset {
		return 1 / limit
	}
	return 1e-9 / limit
}

// Of every verdict: outcome, ratios and the governing item follow from found and
// limit, here compared as exact ratios but for a nanometre; Within and Ratio at
// most 1 are the same; both planes together are never more lenient than each.
func TestVerdictFollowsFromItems(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off, k, l := drawEstimate(t), drawCoupling(t), drawLimits(t)
		v := judged(t, l, off, k)
		within, largest := true, 0.0
		for i, item := range v.All() {
			found, u, limit := numbers(item)
			near(t, "ratio", item.Ratio, found/limit, (0.51+0.01*item.Ratio)*nanometre(item)+1e-15*item.Ratio)
			if item.Within() != (item.Ratio <= 1) || found < 0 || !(u >= 0) {
				t.Errorf("item %d: %+v", i, item)
			}
			within = within && item.Within()
			largest = max(largest, item.Ratio)
		}
		if (v.Outcome == tolerance.Within) != within || v.Governing().Ratio != largest {
			t.Errorf("%v, governed by %v", v.Outcome, v.Governing())
		}
		l.PerPlane = false
		together := judged(t, l, off, k)
		l.PerPlane = true
		if each := judged(t, l, off, k); together.Outcome == tolerance.Within && each.Outcome == tolerance.Outside {
			t.Errorf("together %v, each %v", together, each)
		}
	})
}
