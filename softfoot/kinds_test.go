package softfoot_test

import (
	"fmt"
	"slices"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// gaps are those under the corners of a foot 60 mm along the shaft and 80 mm
// across, in the order near 9, near 3, far 9, far 3 o'clock, in micrometres.
func gaps(list ...float64) (gaps []softfoot.Gap) {
	for i, g := range list {
		gaps = append(gaps, softfoot.Gap{
			X:   units.Length(i/2*2-1) * 30 * mm,
			Y:   units.Length(i%2*2-1) * 40 * mm,
			Gap: units.Length(g) * um,
		})
	}
	return gaps
}

// words is what a finding says, without numbers.
func words(f softfoot.Finding) (list []string) {
	for _, e := range f.Fits {
		list = append(list, fmt.Sprintf("%v%v", e.Kind, e.Feet))
	}
	for _, n := range f.Next {
		list = append(list, fmt.Sprintf("%v%v", n.Check, n.Feet))
	}
	return list
}

// felt is a survey with gaps under the corners of one foot in place of its lift.
func felt(s softfoot.Survey, foot int, under ...float64) softfoot.Survey {
	s.Feet[foot].Lift, s.Feet[foot].Gaps = 0, gaps(under...)
	return s
}

// three is a survey of the first three feet of a rectangle.
func three(lifts ...float64) softfoot.Survey {
	s := rectangle(um, append(lifts, 0)...)
	s.Feet = s.Feet[:3]
	return s
}

// rows is a survey of six or eight feet in two rows, 300 mm apart along the shaft.
func rows(lifts ...float64) softfoot.Survey {
	s := softfoot.Survey{Height: 280 * mm}
	for i, lift := range lifts {
		s.Feet = append(s.Feet, softfoot.Foot{
			Name: []string{"near", "middle", "far", "last"}[i/2] + []string{" 3", " 9"}[i%2],
			X:    units.Length(i/2) * 300 * mm, Y: units.Length(1-2*(i%2)) * 200 * mm, Lift: units.Length(lift) * um,
		})
	}
	return s
}

// Patterns and what a flat frame on pads makes of them: every kind that fits, in
// order, and what would tell them apart. Rectangles are in the order near 3, near
// 9, far 3, far 9.
func TestKinds(t *testing.T) {
	const all, ends = "[near 3 near 9 far 3 far 9]", "[near 3 near 9]"
	four := func(lifts ...float64) softfoot.Survey { return rectangle(um, lifts...) }
	alone := []string{"parallel[near 3]", "angular[near 3]", "feel_corners[near 3]"}
	for _, row := range []struct {
		name   string
		survey softfoot.Survey
		want   []string
		ways   int // of cure
	}{
		{"nothing lifts", four(0, 0, 0, 0), nil, 0},
		{"all lift exactly the limit of one foot", four(50.8, 50.8, 50.8, 50.8), nil, 0},
		{"one lifts exactly the limit", four(50.8, 0, 0, 0), nil, 0},
		{"one lifts a nanometre more", four(50.801, 0, 0, 0), alone, 1},
		{"one lifts less than half a nanometre more", four(50.8004, 0, 0, 0), nil, 0},
		{"the excess is exactly the limit", four(90.8, 40, 40, 40), nil, 0},
		{"the excess is a nanometre more", four(90.801, 40, 40, 40), alone, 1},
		{"a diagonal", four(120, 20, 20, 120), []string{"parallel[near 3 far 9]"}, 3},
		{"the other diagonal", four(20, 120, 120, 20), []string{"parallel[near 9 far 3]"}, 3},
		{"a diagonal of a frame that bends", four(120, 0, 10, 80), []string{"parallel[near 3 far 9]"}, 3},
		{"a diagonal of very unlike lifts", four(300, 0, 0, 90), []string{"parallel[near 3 far 9]", "induced[near 3 far 9]", "part_loads[near 3 far 9]"}, 3},
		{"one end", four(120, 110, 0, 0), []string{"induced" + ends, "springing" + ends, "part_loads" + ends, "renew_packing" + ends}, 0},
		{"one side", four(120, 0, 110, 0), []string{"induced[near 3 far 3]", "springing[near 3 far 3]", "part_loads[near 3 far 3]", "renew_packing[near 3 far 3]"}, 0},
		{"three feet of four", four(120, 120, 120, 0), []string{"induced[near 3 near 9 far 3]", "springing[near 3 near 9 far 3]", "part_loads[near 3 near 9 far 3]", "renew_packing[near 3 near 9 far 3]"}, 0},
		{"all lift exactly the common limit", four(101.6, 101.6, 101.6, 101.6), nil, 0},
		{"all lift a nanometre more", four(101.601, 101.601, 101.601, 101.601), []string{"springing" + all, "renew_packing" + all}, 0},
		{"all lift, a diagonal more", four(250, 150, 150, 250), []string{"springing" + all, "parallel[near 3 far 9]", "renew_packing" + all}, 3},
		{"one alone", four(120, 0, 0, 0), alone, 1},
		{"one alone, felt, flat", felt(four(0, 0, 0, 0), 0, 120, 120, 120, 120), []string{"parallel[near 3]"}, 1},
		{"one alone, felt, just flat", felt(four(0, 0, 0, 0), 0, 120, 120, 170.8, 170.8), []string{"parallel[near 3]"}, 1},
		{"one alone, felt, flat but for less than half a nanometre", felt(four(0, 0, 0, 0), 0, 120, 120, 170.8004, 170.8), []string{"parallel[near 3]"}, 1},
		{"one alone, felt, just not flat", felt(four(0, 0, 0, 0), 0, 120, 120, 170.801, 170.801), []string{"parallel[near 3]", "angular[near 3]"}, 1},
		{"on its edge, no lift", felt(four(0, 0, 0, 0), 0, 0, 0, 80, 80), []string{"angular[near 3]"}, 1},
		{"a foot on its edge in a diagonal", felt(four(0, 0, 0, 100), 0, 100, 100, 200, 200), []string{"parallel[near 3 far 9]", "angular[near 3]"}, 3},
		{"down exactly the margin", four(-25.4, 0, 0, 0), nil, 0},
		{"down a nanometre more", four(-25.401, 0, 0, 0), []string{"induced[near 3]", "part_loads[near 3]"}, 0},
		{"a diagonal, and one goes down", four(120, -60, 0, 120), []string{"parallel[near 3 far 9]", "induced[near 9]", "part_loads[near 9]"}, 3},
		{"three feet, an end", three(120, 120, 0), []string{"induced" + ends, "springing" + ends, "part_loads" + ends, "renew_packing" + ends}, 0},
		{"three feet, one on its edge", felt(three(0, 0, 0), 0, 0, 0, 80, 80), []string{"angular[near 3]"}, 1},
		{"six feet, one alone", rows(0, 0, 0, 0, 0, 120), []string{"parallel[far 9]", "angular[far 9]", "feel_corners[far 9]"}, 1},
		{"six feet, the middle ones: both pads low", rows(0, 0, 120, 120, 0, 0), []string{"parallel[middle 3 middle 9]"}, 1},
		{"six feet, an end", rows(120, 120, 0, 0, 0, 0), []string{"induced" + ends, "springing" + ends, "part_loads" + ends, "renew_packing" + ends}, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			found := judge(t, row.survey, softfoot.Limits{})
			if got := words(found); !slices.Equal(got, row.want) {
				t.Errorf("got %q, want %q", got, row.want)
			}
			if len(found.Advice) != row.ways {
				t.Errorf("got %+v, want %d ways", found.Advice, row.ways)
			}
		})
	}
}

// The common movement is the smallest lift, not a middle one: 0.12, 0.02, 0.02,
// 0.12 mm has an excess of 0.10 on the diagonal.
func TestCommonIsSmallest(t *testing.T) {
	found := judge(t, rectangle(um, 120, 20, 20, 120), softfoot.Limits{})
	if found.Common != 20*um || found.Worst != 100*um {
		t.Errorf("common %v, worst %v", found.Common, found.Worst)
	}
	for i, want := range []units.Length{100 * um, 0, 0, 100 * um} {
		if f := found.Feet[i]; f.Excess != want || f.Soft != (want > 0) {
			t.Errorf("got %+v, want an excess of %v", f, want)
		}
	}
}

// Three feet are never parallel, and a foot alone among four or more always is,
// also where the margin is wider than what makes a foot soft.
func TestNarrowAct(t *testing.T) {
	narrow := softfoot.Limits{Act: 10 * um}
	for _, lifts := range [][]float64{{20, 0, 0}, {20, 20, 0}} {
		for _, e := range judge(t, three(lifts...), narrow).Fits {
			if e.Kind == softfoot.Parallel {
				t.Errorf("three feet that lift %v um: %v", lifts, e)
			}
		}
	}
	found := judge(t, rectangle(um, 20, 0, 0, 0), softfoot.Limits{Act: 10 * um, Least: 1 * um})
	if len(found.Advice) != 1 || flats(rectangle(um, 0, 0, 0, 0), found.Advice[0])[0] != 20*um {
		t.Errorf("got %+v", found.Advice)
	}
}

// A foot that stands alone in the middle of four, in reach of each of them, cannot
// lift by so much in a flat frame without others; it yields, and its own lift goes
// under it.
func TestOneAloneOfFiveThatNoPadsExplain(t *testing.T) {
	plan := []spot{{-600, -250}, {-202, 44}, {450, -228}, {156, -66}, {116, 30}}
	s := onFeet(plan, []units.Length{0, 300 * um, 0, 0, 0})
	found := judge(t, s, softfoot.Limits{})
	if got, want := words(found), []string{"parallel[1]", "angular[1]", "feel_corners[1]"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if len(found.Advice) != 1 || !slices.Equal(flats(s, found.Advice[0]), []units.Length{0, 300 * um, 0, 0, 0}) {
		t.Errorf("got %+v", found.Advice)
	}
}

// Each limit that is zero takes its default, and each counts on its own.
func TestLimits(t *testing.T) {
	springs := rectangle(um, 100.001, 100.001, 100.001, 100.001)
	loose := []string{"parallel[near 3 far 9]", "induced[near 3 far 9]", "part_loads[near 3 far 9]"}
	tapered := felt(rectangle(um, 0, 0, 0, 0), 0, 0, 0, 60, 60)
	down := rectangle(um, -30, 0, 0, 0)
	small := rectangle(um, 60, 0, 0, 60)
	for _, row := range []struct {
		name   string
		survey softfoot.Survey
		limits softfoot.Limits
		want   []string
		ways   int
	}{
		{"act reached", small, softfoot.Limits{Act: 60 * um}, nil, 0},
		{"act passed", small, softfoot.Limits{Act: 60*um - nm}, []string{"parallel[near 3 far 9]"}, 3},
		{"common reached", springs, softfoot.Limits{Common: 100*um + nm}, nil, 0},
		{"taper reached", tapered, softfoot.Limits{Taper: 60 * um}, nil, 0},
		{"taper passed", tapered, softfoot.Limits{Taper: 60*um - nm}, []string{"angular[near 3]"}, 1},
		{"margin of a foot that goes down reached", down, softfoot.Limits{Margin: 30 * um}, nil, 0},
		{"margin of a foot that goes down passed", down, softfoot.Limits{Margin: 30*um - nm}, []string{"induced[near 3]", "part_loads[near 3]"}, 0},
		// the twist that comes nearest lifts both by the mean of 240 and 69.2 um: 85.4 um
		// off either, which is the margin and a quarter of the largest lift
		{"margin reached", rectangle(um, 240, 0, 0, 69.2), softfoot.Limits{}, []string{"parallel[near 3 far 9]"}, 3},
		{"margin passed", rectangle(um, 240, 0, 0, 69.198), softfoot.Limits{}, loose, 3},
		{"a wider margin reached", rectangle(um, 240, 0, 0, 60), softfoot.Limits{Margin: 30 * um}, []string{"parallel[near 3 far 9]"}, 3},
		{"a wider margin passed", rectangle(um, 240, 0, 0, 60), softfoot.Limits{Margin: 30*um - nm}, loose, 3},
		{"within a narrower margin", rectangle(um, 240, 0, 0, 100), softfoot.Limits{Margin: 11 * um}, []string{"parallel[near 3 far 9]"}, 3},
		{"beyond a narrower margin", rectangle(um, 240, 0, 0, 100), softfoot.Limits{Margin: 9 * um}, loose, 3},
		{"least of half a shim reached", small, softfoot.Limits{Least: 30 * um}, []string{"parallel[near 3 far 9]"}, 3},
		{"least of half a shim passed", small, softfoot.Limits{Least: 30*um + nm}, []string{"parallel[near 3 far 9]"}, 2},
		{"least of a shim reached", small, softfoot.Limits{Least: 60 * um}, []string{"parallel[near 3 far 9]"}, 2},
		{"least of a shim passed", small, softfoot.Limits{Least: 60*um + nm}, []string{"parallel[near 3 far 9]"}, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			found := judge(t, row.survey, row.limits)
			if got := words(found); !slices.Equal(got, row.want) {
				t.Errorf("got %q, want %q", got, row.want)
			}
			if len(found.Advice) != row.ways {
				t.Errorf("got %+v, want %d ways", found.Advice, row.ways)
			}
		})
	}
}

// The defaults are the numbers of the docs.
func TestDefaultLimits(t *testing.T) {
	got := softfoot.Limits{Act: softfoot.DefaultAct, Margin: softfoot.DefaultMargin, Common: softfoot.DefaultCommon, Taper: softfoot.DefaultTaper, Least: softfoot.DefaultLeast}
	if want := (softfoot.Limits{Act: 2 * units.Mil, Margin: 1 * units.Mil, Common: 4 * units.Mil, Taper: 2 * units.Mil, Least: 1 * units.Mil}); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if softfoot.PipingLimit != 76_200*nm { // 0.003 in
		t.Errorf("piping: %v", softfoot.PipingLimit)
	}
}
