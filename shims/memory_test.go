package shims_test

import (
	"fmt"
	"math/rand/v2"
	"sync"
	"testing"

	"example.org/collinear/shims"
)

// Calls lend their memory to each other, also those that run at once. Each answers
// as alone, and an answer stays as it is while others are found: by a large
// problem after a small one, a proven one after one that is not.
func TestCallsDoNotMeet(t *testing.T) {
	type call struct {
		stock  shims.Stock
		rule   shims.Rule
		orders []shims.Order
		want   string
	}
	r := rand.New(rand.NewPCG(14, 15))
	calls := make([]call, 200)
	for n := range calls {
		c := &calls[n]
		if c.stock, c.rule, c.orders = small(r); n%3 == 0 {
			c.stock, c.orders = hard(), job(r, hard(), 1+r.IntN(9), 2)
		}
		c.rule.Nodes = 1 + r.IntN(2000)
		c.want = shown(c.stock, c.rule, c.orders)
	}
	var group sync.WaitGroup
	for range 8 {
		order := r.Perm(len(calls))
		group.Go(func() {
			answers := make([]shims.Choice, len(calls))
			for _, n := range order {
				answers[n], _ = shims.Choose(calls[n].stock, calls[n].rule, calls[n].orders...)
			}
			for n, got := range answers {
				if fmt.Sprintf("%+v", got) != calls[n].want {
					t.Errorf("call %d: got %+v, want %s", n, got, calls[n].want)
				}
			}
		})
	}
	group.Wait()
}

// shown is the answer of a call as text, which no later call can change.
func shown(stock shims.Stock, rule shims.Rule, orders []shims.Order) string {
	c, _ := shims.Choose(stock, rule, orders...)
	return fmt.Sprintf("%+v", c)
}

// Nor does an answer share memory with the input.
func TestAnswersAreTheirOwn(t *testing.T) {
	stock, orders := hard(), job(rand.New(rand.NewPCG(1, 2)), hard(), 4, 2)
	c, err := shims.Choose(stock, shims.Rule{}, orders...)
	if err != nil {
		t.Fatal(err)
	}
	before := fmt.Sprintf("%+v", c)
	for i := range stock {
		stock[i] = shims.Piece{}
	}
	for i := range orders {
		clear(orders[i].Now)
	}
	if after := fmt.Sprintf("%+v", c); before != after {
		t.Errorf("got %s, before %s", after, before)
	}
}
