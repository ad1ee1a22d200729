package softfoot_test

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// drawSurvey draws three to eight feet, in two rows of a frame or anywhere, and
// lifts of any sort: none, one, a few, all, all as high, below zero; some felt
// under their corners.
func drawSurvey(t *rapid.T) softfoot.Survey {
	s := softfoot.Survey{Height: units.Length(rapid.IntRange(50, 900).Draw(t, "height")) * mm}
	rows := rapid.Bool().Draw(t, "rows")
	common := units.Length(rapid.SampledFrom([]int{0, 0, 0, 20, 90, 150}).Draw(t, "common")) * um
	count := rapid.IntRange(3, 8).Draw(t, "feet")
	for i := range count {
		f := softfoot.Foot{Name: "foot " + strconv.Itoa(i), Lift: common}
		if rows {
			f.X = units.Length(300*(i/2)+rapid.IntRange(-20, 20).Draw(t, "x")) * mm
			f.Y = units.Length(200-400*(i%2)+rapid.IntRange(-20, 20).Draw(t, "y")) * mm
		} else { // on a ring, so that no three are in line
			angle := 2 * math.Pi * (float64(i) + float64(rapid.IntRange(-30, 30).Draw(t, "turn"))/100) / float64(count)
			f.X, f.Y = (units.Length(600*math.Cos(angle)) * mm).Round(mm), (units.Length(250*math.Sin(angle)) * mm).Round(mm)
		}
		if rapid.IntRange(0, 2).Draw(t, "lifts") == 0 {
			f.Lift += units.Length(rapid.IntRange(-40, 300).Draw(t, "um")) * um
		}
		if f.Lift >= 0 && rapid.IntRange(0, 5).Draw(t, "felt") == 0 {
			f.Gaps, f.Lift = drawGaps(t, f.Lift), 0
		}
		s.Feet = append(s.Feet, f)
	}
	return s
}

// drawGaps draws three or four corners, the smallest gap given, the others that or
// more.
func drawGaps(t *rapid.T, smallest units.Length) []softfoot.Gap {
	gaps := []softfoot.Gap{{X: -30 * mm, Y: -20 * mm}, {X: 35 * mm, Y: -25 * mm}, {X: 30 * mm, Y: 20 * mm}, {X: -28 * mm, Y: 22 * mm}}
	gaps = gaps[:rapid.IntRange(3, 4).Draw(t, "corners")]
	for i := 1; i < len(gaps); i++ {
		gaps[i].Gap = units.Length(rapid.IntRange(0, 120).Draw(t, "wider")) * um
	}
	for i := range gaps {
		gaps[i].Gap += smallest
	}
	return gaps
}

// mapped is a survey with every foot changed, its corners too.
func mapped(s softfoot.Survey, foot func(*softfoot.Foot), corner func(*softfoot.Gap)) softfoot.Survey {
	s.Feet = slices.Clone(s.Feet)
	for i := range s.Feet {
		s.Feet[i].Gaps = slices.Clone(s.Feet[i].Gaps)
		foot(&s.Feet[i])
		for k := range s.Feet[i].Gaps {
			corner(&s.Feet[i].Gaps[k])
		}
	}
	return s
}

// rewritten is a finding with every shift and every taper changed, in the order of
// the feet's names.
func rewritten(f softfoot.Finding, shift func(*softfoot.Shift), taper func(*softfoot.Taper)) softfoot.Finding {
	renew := func(t *softfoot.Taper) *softfoot.Taper {
		if t == nil {
			return nil
		}
		changed := *t
		taper(&changed)
		return &changed
	}
	f.Feet, f.Advice = slices.Clone(f.Feet), slices.Clone(f.Advice)
	for i := range f.Feet {
		f.Feet[i].Taper = renew(f.Feet[i].Taper)
	}
	for i := range f.Advice {
		shift(&f.Advice[i].Shift)
		f.Advice[i].Shims = slices.Clone(f.Advice[i].Shims)
		for k := range f.Advice[i].Shims {
			f.Advice[i].Shims[k].Stepped = renew(f.Advice[i].Shims[k].Stepped)
		}
	}
	return f
}

// alike compares findings whose numbers went through different roundings on the
// way: lengths to 10 nm, slopes to 10 nm over 100 mm.
var alike = cmp.Options{
	cmp.Comparer(func(a, b units.Length) bool { return math.Abs(float64(a-b)) <= 10 }),
	cmp.Comparer(func(a, b units.Slope) bool { return math.Abs(float64(a-b)) <= 1e-7 }),
}

func sameTaper(*softfoot.Taper) {}

func sameGap(*softfoot.Gap) {}

// What changes when a survey is written down in another way, and nothing else does.
func TestSymmetries(t *testing.T) {
	const along = 1234 * mm
	for _, row := range []struct {
		name   string
		foot   func(*softfoot.Foot)
		corner func(*softfoot.Gap)
		shift  func(*softfoot.Shift)
		taper  func(*softfoot.Taper)
	}{
		{"another zero along the shaft",
			func(f *softfoot.Foot) { f.X += along }, sameGap,
			func(s *softfoot.Shift) { s.Up = s.At(-along) }, sameTaper},
		{"mirrored across",
			func(f *softfoot.Foot) { f.Y *= -1 }, func(g *softfoot.Gap) { g.Y *= -1 },
			func(s *softfoot.Shift) { s.Sideways *= -1 }, func(t *softfoot.Taper) { t.Across *= -1 }},
		{"mirrored along",
			func(f *softfoot.Foot) { f.X *= -1 }, func(g *softfoot.Gap) { g.X *= -1 },
			func(s *softfoot.Shift) { s.Slope *= -1 }, func(t *softfoot.Taper) { t.Along *= -1 }},
		{"seen from the other end",
			func(f *softfoot.Foot) { f.X, f.Y = -f.X, -f.Y }, func(g *softfoot.Gap) { g.X, g.Y = -g.X, -g.Y },
			func(s *softfoot.Shift) { s.Slope, s.Sideways = -s.Slope, -s.Sideways },
			func(t *softfoot.Taper) { t.Along, t.Across = -t.Along, -t.Across }},
		{"a plan and corners four times as large",
			func(f *softfoot.Foot) { f.X, f.Y = 4*f.X, 4*f.Y }, func(g *softfoot.Gap) { g.X, g.Y = 4*g.X, 4*g.Y },
			func(s *softfoot.Shift) { s.Slope, s.Sideways = s.Slope/4, s.Sideways/4 },
			func(t *softfoot.Taper) { t.Along, t.Across = t.Along/4, t.Across/4 }},
	} {
		t.Run(row.name, rapid.MakeCheck(func(t *rapid.T) {
			s := drawSurvey(t)
			want := rewritten(judge(t, s, softfoot.Limits{}), row.shift, row.taper)
			got := judge(t, mapped(s, row.foot, row.corner), softfoot.Limits{})
			if diff := cmp.Diff(want, got, alike); diff != "" {
				t.Errorf("%+v: %s", s, diff)
			}
		}))
	}
}

// Lifts, gaps and limits twice as large: so is everything that is found. Which cure
// of more than four feet comes first hangs on what a dial tells apart, which does
// not grow with them.
func TestScaledLifts(t *testing.T) {
	limits := softfoot.Limits{Act: softfoot.DefaultAct, Margin: softfoot.DefaultMargin, Common: softfoot.DefaultCommon, Taper: softfoot.DefaultTaper, Least: softfoot.DefaultLeast}
	twice := limits
	for _, l := range []*units.Length{&twice.Act, &twice.Margin, &twice.Common, &twice.Taper, &twice.Least} {
		*l *= 2
	}
	rapid.Check(t, func(t *rapid.T) {
		s := drawSurvey(t)
		want := rewritten(judge(t, s, limits),
			func(s *softfoot.Shift) { s.Up, s.Slope, s.Sideways = 2*s.Up, 2*s.Slope, 2*s.Sideways },
			func(t *softfoot.Taper) { t.Rise, t.Along, t.Across = 2*t.Rise, 2*t.Along, 2*t.Across })
		want.Common *= 2
		want.Worst *= 2
		for i := range want.Feet {
			want.Feet[i].Lift *= 2
			want.Feet[i].Excess *= 2
		}
		for i := range want.Advice {
			want.Advice[i].Left *= 2
			for k := range want.Advice[i].Shims {
				want.Advice[i].Shims[k].Flat *= 2
			}
		}
		got := judge(t, mapped(s, func(f *softfoot.Foot) { f.Lift *= 2 }, func(g *softfoot.Gap) { g.Gap *= 2 }), twice)
		if len(s.Feet) > 4 {
			want.Advice, got.Advice = nil, nil
		}
		if diff := cmp.Diff(want, got, alike); diff != "" {
			t.Errorf("%+v: %s", s, diff)
		}
	})
}

// The order in which the feet were gone round changes the order of the lists, and
// which of two ways as good comes first; not what is in them. With more than four
// feet a way may drop out that is just as good as another but for rounding.
func TestOrderOfFeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSurvey(t)
		other := s
		other.Feet = rapid.Permutation(s.Feet).Draw(t, "order")
		want, got := sorted(judge(t, s, softfoot.Limits{})), sorted(judge(t, other, softfoot.Limits{}))
		if len(s.Feet) > 4 {
			want.Advice, got.Advice = nil, nil
		}
		if diff := cmp.Diff(want, got, alike); diff != "" {
			t.Errorf("%+v: %s", s, diff)
		}
	})
}

// sorted is a finding with feet by name and ways by their feet.
func sorted(f softfoot.Finding) softfoot.Finding {
	byName := func(a, b softfoot.FootFinding) int { return strings.Compare(a.Foot, b.Foot) }
	f.Feet = slices.SortedFunc(slices.Values(f.Feet), byName)
	for _, e := range f.Fits {
		slices.Sort(e.Feet)
	}
	for _, n := range f.Next {
		slices.Sort(n.Feet)
	}
	for _, way := range f.Advice {
		slices.SortFunc(way.Shims, func(a, b softfoot.Shim) int { return strings.Compare(a.Foot, b.Foot) })
	}
	slices.SortStableFunc(f.Advice, func(a, b softfoot.Advice) int {
		if len(a.Shims) != len(b.Shims) {
			return len(a.Shims) - len(b.Shims)
		}
		return slices.CompareFunc(a.Shims, b.Shims, func(a, b softfoot.Shim) int { return strings.Compare(a.Foot, b.Foot) })
	})
	return f
}

// A lift of all feet on top changes the lifts and Common by that, and whether the
// packing springs; nothing else. (Lifts below zero apart, whose foot goes down.)
func TestCommonLiftOnTop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSurvey(t)
		s = mapped(s, func(f *softfoot.Foot) { f.Lift = max(f.Lift, 0) }, sameGap)
		by := units.Length(rapid.IntRange(1, 200).Draw(t, "by")) * um
		want := judge(t, s, softfoot.Limits{})
		got := judge(t, mapped(s, func(f *softfoot.Foot) {
			if f.Gaps == nil {
				f.Lift += by
			}
		}, func(g *softfoot.Gap) { g.Gap += by }), softfoot.Limits{})
		want.Common += by
		for i := range want.Feet {
			want.Feet[i].Lift += by
		}
		if springs := allSpring(got); springs != (got.Common > softfoot.DefaultCommon) {
			t.Errorf("common %v: got %v", got.Common, got.Fits)
		}
		want, got = withoutAllSpringing(want), withoutAllSpringing(got)
		if diff := cmp.Diff(want, got, alike); diff != "" {
			t.Errorf("%+v, %v on top: %s", s, by, diff)
		}
	})
}

// allSpring tells whether springing is named for all feet.
func allSpring(f softfoot.Finding) bool {
	return slices.ContainsFunc(f.Fits, func(e softfoot.Explanation) bool {
		return e.Kind == softfoot.Springing && len(e.Feet) == len(f.Feet)
	})
}

// withoutAllSpringing takes springing out, and the packing to renew.
func withoutAllSpringing(f softfoot.Finding) softfoot.Finding {
	f.Fits = slices.DeleteFunc(slices.Clone(f.Fits), func(e softfoot.Explanation) bool { return e.Kind == softfoot.Springing })
	f.Next = slices.DeleteFunc(slices.Clone(f.Next), func(n softfoot.FollowUp) bool { return n.Check == softfoot.RenewPacking })
	if len(f.Next) == 0 {
		f.Next = nil
	}
	return f
}

// Twice the same survey, twice the same bits.
func TestDeterministic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSurvey(t)
		if a, b := judge(t, s, softfoot.Limits{}), judge(t, s, softfoot.Limits{}); !reflect.DeepEqual(a, b) {
			t.Errorf("%+v: %+v, then %+v", s, a, b)
		}
	})
}

// What is true of every finding, whatever the survey.
func TestFindingHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSurvey(t)
		checkFinding(t, s, judge(t, s, softfoot.Limits{}))
	})
}

// checkFinding checks what the docs promise of every finding under the default
// limits.
func checkFinding(t rapid.TB, s softfoot.Survey, f softfoot.Finding) {
	t.Helper()
	if len(f.Feet) != len(s.Feet) {
		t.Fatalf("%d feet of %d", len(f.Feet), len(s.Feet))
	}
	worst := units.Length(0)
	for i, foot := range f.Feet {
		lift := s.Feet[i].Lift
		for k, g := range s.Feet[i].Gaps {
			if k == 0 || g.Gap < lift {
				lift = g.Gap
			}
		}
		if foot.Foot != s.Feet[i].Name || foot.Lift != lift || foot.Excess != lift-f.Common {
			t.Errorf("foot %d of %+v: %+v", i, s, foot)
		}
		if foot.Soft != (foot.Excess.Round(nm) > softfoot.DefaultAct) {
			t.Errorf("foot %d: %+v", i, foot)
		}
		worst = max(worst, foot.Excess)
	}
	if worst != f.Worst {
		t.Errorf("worst %v, want %v", f.Worst, worst)
	}
	if f.Fits == nil {
		t.Error("fits is null, not an empty list")
	}
	for k, way := range f.Advice {
		if len(way.Shims) == 0 || way.Left < 0 {
			t.Errorf("advice %d: %+v", k, way)
		}
		for _, shim := range way.Shims {
			if shim.Flat == 0 && shim.Stepped == nil || shim.Flat != 0 && shim.Flat < softfoot.DefaultLeast || shim.Flat != shim.Flat.Round(nm) {
				t.Errorf("advice %d: shim %+v", k, shim)
			}
		}
	}
}
