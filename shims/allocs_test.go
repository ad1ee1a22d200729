//go:build !race

package shims_test

import (
	"math/rand/v2"
	"testing"

	"example.org/collinear/shims"
)

// What a call from a full box leaves for the garbage collector is its answer: the
// list of stacks and that of all pieces. With the race detector a pool forgets on
// purpose.
func TestAllocationsOfChoose(t *testing.T) {
	stock := shims.CommonInch(20)
	orders := job(rand.New(rand.NewPCG(3, 4)), stock, 4, 3)
	n := testing.AllocsPerRun(100, func() {
		if c, err := shims.Choose(stock, shims.Rule{}, orders...); err != nil || !c.Proven {
			t.Fatal(c.Proven, err)
		}
	})
	if n > 2 {
		t.Errorf("%v allocations", n)
	}
}
