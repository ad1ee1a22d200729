package pumpset

import (
	"math"
	"testing"

	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Whatever the packs come to, the forecast is where the shaft lies when they are
// in: found, raised at either end by the mean of what was put in, rolled by what
// that does across, and pushed as told; less the target. It shares no code with
// the program.
func TestForecastIsWhatThePacksLeave(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlant(t)
		const limit = 0.4 // mm/m
		r := mustSolve(t, both(p.pack(), with("/acceptance", `{"own": {"source": "s", "flex": "0.4 mm/m"}}`))(t, p.document(t)))
		var more [4]float64 // beyond what cures the soft foot, which leaves the shaft as it is
		for i, s := range r.Packs.Choice.Stacks {
			more[i] = s.Total.In(units.InMillimetres) - 3
		}
		roll := -p.height * sum(more[0], -more[1], more[2], -more[3]) / 2 / (2 * p.across)
		for i, x := range p.feet {
			target := r.Target.At(units.Length(x) * units.Millimetre)
			up := p.oz + p.sz*x + (more[2*i]+more[2*i+1])/2 - target.Vertical.In(units.InMillimetres)
			to3 := p.oy + p.sy*x + roll + r.Found.Moves[i].By.Horizontal.In(units.InMillimetres) - target.Horizontal.In(units.InMillimetres)
			got := r.Packs.Leave.Off.Value.At(units.Length(x) * units.Millimetre)
			near(t, "height", got.Vertical.In(units.InMillimetres), up)
			near(t, "sideways", (got.Horizontal.In(units.InMillimetres)-to3)/(1+p.height/p.across), 0)
		}
		off := r.Packs.Leave.Off.Value
		slope, y := float64(off.Vertical.Slope)/2, off.Horizontal.Offset.In(units.InMillimetres)/p.span
		z := off.Vertical.Offset.In(units.InMillimetres) / p.span
		for i, item := range r.Packs.Leave.Verdict.All() {
			tilt := []float64{z + slope, z - slope}[i]
			near(t, "tilt of a flex plane against its limit, which is rounded", limit/1000*item.Ratio, math.Sqrt(tilt*tilt+y*y))
		}
		checkRecord(t, r)
	})
}

// pack puts three millimetres under each foot, and a coarse box beside it.
func (p *plant) pack() edit {
	var edits []edit
	for _, foot := range []string{"0", "1", "2", "3"} {
		edits = append(edits, with("/single_feet/feet/"+foot+"/pack", `[{"marked": "1 mm", "count": "3"}]`))
	}
	edits = append(edits, with("/shims", `{"stock": [{"marked": "0.1 mm", "count": "9"}, {"marked": "0.25 mm", "count": "9"}, {"marked": "0.5 mm", "count": "9"},
		{"marked": "1 mm", "count": "9"}, {"marked": "2 mm", "count": "9"}], "error": "0.1 mm"}`))
	return both(edits...)
}

// What is not known of where the shaft was found, and of the target, is not known
// of the forecast; the packs add nothing.
func TestForecastHasTheDoubtOfWhatWasFound(t *testing.T) {
	r := mustSolve(t, sample)
	if diff := cmp.Diff(r.Found.Off.Cov, r.Packs.Leave.Off.Cov, same); diff != "" {
		t.Errorf("-found +forecast:\n%s", diff)
	}
	if _, u := r.Packs.Leave.Off.At(0); u.Vertical == 0 {
		t.Error("no uncertainty at all")
	}
}
