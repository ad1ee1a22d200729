package train

import (
	"strings"
	"testing"
)

// What a plan could not prove is said, each by itself and all together, and of a plan
// that proved all nothing is.
func TestWarnings(t *testing.T) {
	proven := Plan{Reach: WithinLimits, Work: TotalTravel, Ratio: 0.5, Bound: 0.5, Moves: 3, Proven: true}
	for _, row := range []struct {
		name    string
		change  func(*Plan)
		missing bool // of what is in the way
		want    []string
	}{
		{"all proven", func(*Plan) {}, false, nil},
		{"out of reach", func(p *Plan) { p.Reach = OutOfReach }, false, []string{"unreachable /joints"}},
		{"out of reach, and not known why", func(p *Plan) { p.Reach = OutOfReach }, true, []string{"unreachable /joints", "suspect /in_the_way"}},
		{"far above the bound", func(p *Plan) { p.Bound = 0.4 }, false, []string{"suspect /ratio"}},
		{"hardly above the bound", func(p *Plan) { p.Bound = 0.4999999 }, false, nil},
		{"a little less than a thousandth above the bound", func(p *Plan) { p.Ratio, p.Bound = 0.9, 0.8992 }, false, nil},
		{"a little more than a thousandth above the bound", func(p *Plan) { p.Ratio, p.Bound = 0.9, 0.899 }, false, []string{"suspect /ratio"}},
		{"both next to nothing", func(p *Plan) { p.Ratio, p.Bound = 1.9e-5, 0 }, false, nil},
		{"as far above as is not worth a word", func(p *Plan) { p.Ratio, p.Bound = 2*enough, 0 }, false, nil},
		{"fewer moves may do", func(p *Plan) { p.Proven, p.Work = false, FewestFeet }, false, []string{"suspect /moves"}},
		{"less work may do", func(p *Plan) { p.Proven = false }, false, []string{"suspect /moves"}},
		{"nothing proven", func(p *Plan) { p.Reach, p.Ratio, p.Bound, p.Proven = OutOfReach, 3, 2, false }, true,
			[]string{"unreachable /joints", "suspect /in_the_way", "suspect /ratio", "suspect /moves"}},
	} {
		p := proven
		row.change(&p)
		p.warn(row.missing)
		if len(p.Warnings) != len(row.want) {
			t.Errorf("%s: %v, want %v", row.name, p.Warnings, row.want)
			continue
		}
		for i, w := range p.Warnings {
			if got := string(w.Code) + " " + w.Path; got != row.want[i] || w.Want == "" {
				t.Errorf("%s: %s %q, want %s", row.name, got, w.Want, row.want[i])
			}
		}
	}
	fewest, least := proven, proven
	fewest.Work, fewest.Proven, least.Proven = FewestFeet, false, false
	if fewest.warn(false); fewest.Warnings[0].Value != "3" {
		t.Errorf("the moves are %q", fewest.Warnings[0].Value)
	}
	least.warn(false)
	if few, work := fewest.Warnings[0].Want, least.Warnings[0].Want; !strings.HasPrefix(few, "the fewest moves") || !strings.HasPrefix(work, "the least work") {
		t.Errorf("of the fewest moves it says %q, of the least work %q", few, work)
	}
}
