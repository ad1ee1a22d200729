package sheet_test

import (
	"encoding/json"
	"maps"
	"math"
	"reflect"
	"slices"
	"testing"

	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// TestOneSlipIsReportedOnce: with every line written down and a slip at one of them, that
// line is wrong and no other.
func TestOneSlipIsReportedOnce(t *testing.T) {
	t.Parallel()
	shown := 0
	for seed := range uint64(runs(1000)) {
		d := newDraw(3_000_000 + seed)
		one := drawnProblem(t, d)
		var single []deed
		for _, x := range one.page.deeds() {
			if len(x.lines) == 1 {
				single = append(single, x)
			}
		}
		if len(single) == 0 {
			continue
		}
		x := d.deed(single)
		s := one.page.write(d.habit(), one.page.all(), x.made())
		m, err := one.working.Check(s.answers)
		if err != nil {
			t.Fatal(err)
		}
		if worst, _ := one.page.shows(s, nil); worst <= hair {
			continue
		}
		shown++
		if got := wrongOf(m); !slices.Equal(got, one.page.ids(x.lines)) {
			t.Errorf("seed %d: %v: wrong are %q", 3_000_000+seed, x, got)
		}
	}
	t.Logf("it shows on %d sheets", shown)
}

// TestTwoSlips: how often a pair is named where no single slip accounts for the sheet, and
// never two on a sheet that says too little.
func TestTwoSlips(t *testing.T) {
	t.Parallel()
	var count pairTally
	for seed := range uint64(pairRuns()) {
		count.try(t, 4_000_000+seed)
	}
	t.Logf("%d sheets with two slips: one accounts for all or nothing shows on %d, too few lines on %d; the pair is named on %d of the other %d",
		count.sheets, count.single, count.few, count.named, count.named+count.missed)
	if 20*count.named < 19*(count.named+count.missed) {
		t.Errorf("the pair is named on %d of %d", count.named, count.named+count.missed)
	}
}

// pairTally counts what became of sheets with two slips.
type pairTally struct{ sheets, single, few, named, missed int }

func (c *pairTally) try(t *testing.T, seed uint64) {
	t.Helper()
	d := newDraw(seed)
	one := drawnProblem(t, d)
	deeds := one.page.deeds()
	if len(deeds) < 2 {
		return
	}
	a, b := d.deed(deeds), d.deed(deeds)
	if slices.ContainsFunc(a.lines, func(i int) bool { return slices.Contains(b.lines, i) }) {
		return
	}
	made := a.made()
	maps.Copy(made, b.made())
	s := one.page.write(d.habit(), d.which(one.page), made)
	m, err := one.working.Check(s.answers)
	if err != nil {
		t.Fatal(err)
	}
	c.sheets++
	two := slices.ContainsFunc(m.Explanations, func(e sheet.Explanation) bool { return len(e.Slips) > 1 })
	enough := one.independent(t, s) >= 4
	switch worst, _ := one.page.shows(s, nil); {
	case two && !enough:
		t.Errorf("seed %d: two slips are named on a sheet with fewer than four independent lines: %v", seed, m.Explanations)
	case worst <= hair || one.page.oneAccounts(deeds, s):
		c.single++
		if two {
			t.Errorf("seed %d: two slips are named where one accounts: %v", seed, m.Explanations)
		}
	case !enough:
		c.few++
	case slices.ContainsFunc(m.Explanations, func(e sheet.Explanation) bool { return one.page.namesBoth(e, a, b) }):
		c.named++
	default:
		c.missed++
		t.Logf("seed %d: %s: %v and %v: %v", seed, one.working.Title(), a, b, m.Explanations)
	}
}

func pairRuns() int {
	if testing.Short() {
		return 40
	}
	return 1000
}

// oneAccounts tells whether one deed accounts for a sheet.
func (p *handPage) oneAccounts(deeds []deed, s *handSheet) bool {
	return slices.ContainsFunc(deeds, func(x deed) bool {
		worst, _ := p.shows(s, x.made())
		return worst <= hair
	})
}

func (p *handPage) namesBoth(e sheet.Explanation, a, b deed) bool {
	if len(e.Slips) != 2 || e.Left != nil {
		return false
	}
	first, second := sheet.Explanation{Slips: e.Slips[:1]}, sheet.Explanation{Slips: e.Slips[1:]}
	return p.names(first, a) && p.names(second, b) || p.names(first, b) && p.names(second, a)
}

// independent counts the lines of a sheet of which none follows from the others: the rank
// of what they do when all given numbers are changed a little, again and again.
func (one drawn) independent(t *testing.T, s *handSheet) int {
	t.Helper()
	d := newDraw(1)
	var rows [][]float64
	before := one.exact(t, nil)
	for i := range before {
		if s.written[i] {
			rows = append(rows, nil)
		}
	}
	for range 2 * len(rows) {
		after := one.exact(t, func(x float64) float64 { return x * (1 + 1e-6*d.between(-1, 1)) })
		k := 0
		for i := range after {
			if s.written[i] {
				rows[k] = append(rows[k], after[i]-before[i])
				k++
			}
		}
	}
	return rankOf(rows)
}

// exact works all lines from a copy of the problem with every given number changed.
func (one drawn) exact(t *testing.T, change func(float64) float64) []float64 {
	t.Helper()
	text, err := json.Marshal(one.problem)
	if err != nil {
		t.Fatal(err)
	}
	var same sheet.Problem
	if err := json.Unmarshal(text, &same); err != nil {
		t.Fatal(err)
	}
	if change != nil {
		changeAll(reflect.ValueOf(&same).Elem(), change)
	}
	page := workProblem(same)
	return page.write(habit{exact: true}, make([]bool, len(page.lines)), nil).kept
}

// readingOfZero is as how much a reading of zero is taken to change it.
const readingOfZero = float64(units.Millimetre)

// changeAll changes the numbers of a problem, but for places on the clock.
func changeAll(v reflect.Value, change func(float64) float64) {
	switch x := v.Addr().Interface().(type) {
	case *units.Clock:
		return
	case *units.Temperature:
		*x = units.Celsius(change(float64(x.Celsius())))
		return
	}
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(change(v.Float()))
	case reflect.Pointer:
		if !v.IsNil() {
			changeAll(v.Elem(), change)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			switch f := v.Type().Field(i); {
			case !f.IsExported():
			case v.Field(i).IsZero() && (f.Name == "Value" || f.Name == "Lift"): // a reading may be zero
				v.Field(i).SetFloat(change(readingOfZero) - readingOfZero)
			default: // no sag stays none
				changeAll(v.Field(i), change)
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			changeAll(v.Index(i), change)
		}
	}
}

// rankOf eliminates, each time by the largest number that is left.
func rankOf(rows [][]float64) int {
	for _, row := range rows { // all of one size
		size := 0.0
		for _, x := range row {
			size = max(size, math.Abs(x))
		}
		for k := range row {
			if size > 0 {
				row[k] /= size
			}
		}
	}
	rank := 0
	for {
		best, at, column := 1e-4, -1, -1
		for i := rank; i < len(rows); i++ {
			for k, x := range rows[i] {
				if math.Abs(x) > best {
					best, at, column = math.Abs(x), i, k
				}
			}
		}
		if at < 0 {
			return rank
		}
		rows[rank], rows[at] = rows[at], rows[rank]
		for i := rank + 1; i < len(rows); i++ {
			share := rows[i][column] / rows[rank][column]
			for k := range rows[i] {
				rows[i][k] -= share * rows[rank][k]
			}
		}
		rank++
	}
}
