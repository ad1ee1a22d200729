package shims_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// jobs makes many problems of one sort, so that a benchmark does not time a
// single lucky one.
func jobs(stock shims.Stock, feet, packs int) [][]shims.Order {
	r := rand.New(rand.NewPCG(7, 7))
	all := make([][]shims.Order, 64)
	for n := range all {
		all[n] = job(r, stock, feet, packs)
	}
	return all
}

// jobsOf makes one of them: each foot has up to so many pieces.
func job(r *rand.Rand, stock shims.Stock, feet, packs int) []shims.Order {
	orders := make([]shims.Order, feet)
	for i := range orders {
		orders[i] = shims.Order{
			Foot:       fmt.Sprint("foot ", i+1),
			Correction: units.Length(r.IntN(300)) * 10 * units.Micrometre,
		}
		for range r.IntN(packs + 1) {
			p := stock[r.IntN(len(stock))]
			p.Count = 1
			orders[i].Now = append(orders[i].Now, p)
		}
	}
	return orders
}

// hard is a made-up stock that has few of everything, and thicknesses that are
// all over the place: many packs come near, few are to be had together.
func hard() shims.Stock {
	var stock shims.Stock
	for i, nm := range []units.Length{
		51_700, 76_300, 101_900, 127_100, 203_300, 251_900, 381_700, 402_100, 509_300, 698_900,
		787_700, 1_001_300, 1_269_100, 1_590_700, 1_998_100, 2_543_300, 3_001_900,
	} {
		stock = append(stock, shims.Piece{Marked: nm.Round(10 * units.Micrometre), Measured: nm, Count: 1 + i%2})
	}
	return stock
}

// BenchmarkMadeUp goes through 4000 made-up stocks that have one or two of each of
// seventeen odd thicknesses, with four feet that have packs already, and tells how
// long one call takes: the median, and what one in a hundred takes longer than. Of a
// stock the fastest round counts, which leaves out what else the machine does; let it
// go round ten times or more (-benchtime 10x). The budget is the default; what it does
// not finish is not proven.
func BenchmarkMadeUp(b *testing.B) {
	r := rand.New(rand.NewPCG(8, 8))
	stocks, orders := make([]shims.Stock, 4000), make([][]shims.Order, 4000)
	for n := range stocks {
		for i := range 17 {
			stocks[n] = append(stocks[n], shims.Piece{Marked: units.Length(50_000 + 100*r.IntN(30_000)), Count: 1 + i%2})
		}
		orders[n] = job(r, stocks[n], 4, 2)
	}
	times, proven := slices.Repeat([]float64{math.Inf(1)}, len(stocks)), 0
	for b.Loop() {
		proven = 0
		for n := range stocks {
			start := time.Now()
			c, err := shims.Choose(stocks[n], shims.Rule{}, orders[n]...)
			times[n] = min(times[n], float64(time.Since(start).Nanoseconds()))
			if err != nil {
				b.Fatal(err)
			}
			if c.Proven {
				proven++
			}
		}
	}
	slices.Sort(times)
	b.ReportMetric(times[len(times)/2], "median-ns")
	b.ReportMetric(times[len(times)*99/100], "p99-ns")
	b.ReportMetric(times[len(times)-1], "max-ns")
	b.ReportMetric(100*float64(proven)/float64(len(stocks)), "%proven")
}

// BenchmarkBudget is a problem that the default budget does not finish.
func BenchmarkBudget(b *testing.B) {
	for _, c := range readOptima(b).Cases {
		if c.Name != beyond[0] {
			continue
		}
		for b.Loop() {
			if _, err := shims.Choose(c.Stock, c.Rule, c.Orders...); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// BenchmarkChoose goes through 64 problems of a sort in turn.
func BenchmarkChoose(b *testing.B) {
	sorts := []struct {
		name  string
		stock shims.Stock
		feet  []int
		packs int
	}{
		{"metric", shims.CommonMetric(20), []int{1, 4, 8, 16}, 0},
		{"inch, packs", shims.CommonInch(20), []int{1, 4, 8, 16}, 3},
		{"metric, scarce", shims.CommonMetric(2), []int{4}, 2},
		{"hard", hard(), []int{4, 8}, 2},
	}
	for _, sort := range sorts {
		for _, feet := range sort.feet {
			all := jobs(sort.stock, feet, sort.packs)
			b.Run(fmt.Sprintf("%s/%d", sort.name, feet), func(b *testing.B) {
				b.ReportAllocs()
				nodes, proven, n := 0, 0, 0
				for b.Loop() {
					c, err := shims.Choose(sort.stock, shims.Rule{}, all[n%len(all)]...)
					if err != nil {
						b.Fatal(err)
					}
					n++
					nodes += c.Nodes
					if c.Proven {
						proven++
					}
				}
				b.ReportMetric(float64(nodes)/float64(n), "nodes/op")
				b.ReportMetric(100*float64(proven)/float64(n), "%proven")
			})
		}
	}
}
