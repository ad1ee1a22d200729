package train_test

import (
	"encoding/json"
	"testing"

	"example.org/collinear/align/train"
	"example.org/collinear/shims"
)

// Whatever document it is given, the planner answers with stacks that come to the
// steps, or refuses with typed faults.
func FuzzPlanShims(f *testing.F) {
	type document struct {
		Train train.Train `json:"train"`
		Stock shims.Stock `json:"stock"`
		Rule  shims.Rule  `json:"rule"`
	}
	add := func(d document) {
		data, err := json.Marshal(d)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	add(document{soundShims().t, shims.CommonMetric(3), shims.Rule{}})
	add(document{shimmedTrain(3, ""), shims.CommonInch(1), shims.Rule{Pieces: 3, Keep: mm, Error: 10 * um}})
	f.Fuzz(func(t *testing.T, data []byte) {
		var d document
		if json.Unmarshal(data, &d) != nil || len(d.Train.Machines) > 4 {
			t.Skip()
		}
		d.Rule.Nodes = min(d.Rule.Nodes, 2000)
		if d.Rule.Nodes == 0 {
			d.Rule.Nodes = 2000
		}
		p, err := d.Train.PlanShims(train.TotalTravel, d.Stock, d.Rule)
		if err != nil {
			typed(t, err)
			return
		}
		handled := 0
		for _, st := range p.Stacks {
			if st.Error != 0 || pieceTotal(st.Pieces) != st.Total {
				t.Errorf("%+v is not what its pieces come to", st)
			}
			for _, piece := range append(st.Out, st.In...) {
				handled += piece.Count
			}
		}
		if handled != p.Handled || (p.Plan.Ratio > 1) != (p.Plan.Reach == train.OutOfReach) {
			t.Errorf("%d handled, told %d; ratio %v, reach %v", handled, p.Handled, p.Plan.Ratio, p.Plan.Reach)
		}
	})
}
