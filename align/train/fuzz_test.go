package train_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// Whatever document it is given, the planner answers with a plan of finite numbers
// that keeps the limits, or refuses with typed faults.
func FuzzPlan(f *testing.F) {
	add := func(t train.Train) {
		data, err := json.Marshal(t)
		if err != nil {
			f.Fatal(err)
		}
		for w := range byte(3) {
			f.Add(data, w)
		}
	}
	add(pair())
	add(four(true))
	add(four(false))
	for seed := range uint64(3) {
		add(job{machines: 2, scale: 1, away: true, crowded: true}.draw(rand.New(rand.NewPCG(seed, 5))))
	}
	f.Add([]byte(`{"machines":[{"name":"a","feet":[{"name":"1","x":"0 mm"},{"name":"2","x":"1e300 mm"}]}]}`), byte(0))
	f.Fuzz(func(t *testing.T, data []byte, w byte) {
		var tr train.Train
		if json.Unmarshal(data, &tr) != nil || len(tr.Machines) > 4 {
			t.Skip()
		}
		p, err := tr.Plan(train.Work(w % 4))
		if err != nil {
			typed(t, err)
			return
		}
		if math.IsNaN(p.Ratio) || math.IsInf(p.Ratio, 0) || math.IsNaN(float64(p.Travel)) || p.Bound > p.Ratio*(1+1e-6)+1e-9 {
			t.Errorf("ratio %v, bound %v, travel %v", p.Ratio, p.Bound, p.Travel)
		}
		for i, m := range tr.Machines {
			for k, foot := range m.Feet {
				by := p.Machines[i].Feet[k].By
				if m.Name != tr.Reference && (!keeps(foot.Horizontal, by.Horizontal) || !keeps(foot.Vertical, by.Vertical)) {
					t.Errorf("%s %s moves by %v", m.Name, foot.Name, by)
				}
			}
		}
	})
}

func typed(t *testing.T, err error) {
	t.Helper()
	faults := units.Faults(err)
	if len(faults) == 0 {
		t.Errorf("an error without a fault: %v", err)
	}
	for _, fault := range faults {
		if fault.Code == "" || fault.Path == "" || fault.Want == "" {
			t.Errorf("a fault that says too little: %+v", fault)
		}
	}
}
