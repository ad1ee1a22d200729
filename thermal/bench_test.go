package thermal_test

import (
	"fmt"
	"testing"

	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// machineFor makes n supports of three pieces each, with everything uncertain or
// nothing.
func machineFor(n int, stated bool) []thermal.Support {
	supports := make([]thermal.Support, n)
	for i := range supports {
		for k, m := range []thermal.Material{steel, bronze, steel} {
			p := piece(units.Length(100+10*k)*mm, m, 30)
			if stated {
				p.U = thermal.Uncertainty{Height: mm, Temperature: 2}
				p.Material.U = 1e-7
			}
			supports[i].Pieces = append(supports[i].Pieces, p)
		}
		supports[i].X = units.Length(200+400*i) * mm
	}
	return supports
}

func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{2, 4, 16} {
		for _, stated := range []bool{false, true} {
			machine := machineFor(n, stated)
			b.Run(fmt.Sprintf("supports=%d/stated=%v", n, stated), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := thermal.Growth(machine...); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkGrowthRefused(b *testing.B) {
	machine := machineFor(2, true)
	machine[1].Pieces[2].Height = 0
	b.ReportAllocs()
	for b.Loop() {
		if _, err := thermal.Growth(machine...); err == nil {
			b.Fatal("answered")
		}
	}
}

func BenchmarkFindMaterial(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := thermal.FindMaterial("concrete structure"); err != nil {
			b.Fatal(err)
		}
	}
}
