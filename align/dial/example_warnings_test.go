package dial_test

import (
	"fmt"
	"log"

	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// The stations were exchanged: the dial that the stationary shaft carries cannot
// touch the movable shaft on the stationary side of the other one.
func ExampleReverse_Solve_exchanged() {
	found, err := dial.Reverse{
		CarriedByStationary: dial.Rim{Station: -7 * units.Inch, Readings: dial.Quarters(units.Mil, 0, -7, -14, -7)},
		CarriedByMovable:    dial.Rim{Station: 7 * units.Inch, Readings: dial.Quarters(units.Mil, 0, 12, 24, 12)},
	}.Solve()
	if err != nil {
		log.Fatal(err)
	}
	for _, w := range found.Warnings {
		fmt.Println(w.Code, w.Path)
	}
	// Output:
	// suspect /carried_by_stationary/station
}
