package train_test

import (
	"encoding/json"
	"math/rand/v2"
	"sync"
	"testing"

	"example.org/collinear/align/train"
)

// A plan takes over the memory of the plan before it. Whatever that was, and however
// many are made at once, the plan is the same to the bit.
func TestPlansDoNotSeeOneAnother(t *testing.T) {
	var trains []train.Train
	for seed := range uint64(24) {
		r := rand.New(rand.NewPCG(seed, 41))
		trains = append(trains, job{machines: 2 + r.IntN(4), perPlane: seed%3 > 0, crowded: seed%2 == 0, scale: 1}.draw(r))
	}
	text := func(i int) string {
		p, err := trains[i].Plan(train.Work(i % 2))
		record, bad := json.Marshal(p)
		if err != nil || bad != nil {
			t.Error(i, err, bad)
		}
		return string(record)
	}
	first := make([]string, len(trains))
	for i := range trains {
		first[i] = text(i)
	}
	var group sync.WaitGroup
	for worker := range 4 {
		group.Go(func() {
			r := rand.New(rand.NewPCG(uint64(worker), 42))
			for range 3 * len(trains) {
				if i := r.IntN(len(trains)); text(i) != first[i] {
					t.Errorf("train %d was planned otherwise the second time", i)
				}
			}
		})
	}
	group.Wait()
}

// A plan is the caller's own: the next one does not change it.
func TestPlanIsKept(t *testing.T) {
	one, other := four(true), four(false)
	p := plan(t, one, train.TotalTravel)
	before, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	plan(t, other, train.LargestMove)
	plan(t, pair(), train.TotalTravel)
	if after, err := json.Marshal(p); err != nil || string(after) != string(before) {
		t.Error("a later plan changed this one")
	}
}
