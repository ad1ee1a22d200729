package linprog

import (
	"errors"
	"fmt"
	"math"
)

// Row is one condition: Lower <= Coefficients . x <= Upper. Either side may be
// infinite; equal sides make an equation, and so the zero bounds of a Row ask for
// Coefficients . x = 0.
type Row struct {
	Coefficients []float64
	Lower, Upper float64
}

// Program is: minimise Cost . x over Lower <= x <= Upper under all Rows. The three
// slices have one entry per variable. Bounds may be infinite, but a variable with a
// positive cost has a finite lower one and a variable with a negative cost a finite
// upper one; so no program is unbounded, and "every variable where it is cheapest"
// is where the method can start. A variable that costs nothing may be free.
type Program struct {
	Cost, Lower, Upper []float64
	Rows               []Row
}

// largest is the size beyond which finite numbers are refused: scaling could not
// be kept from overflowing.
const largest = 1e60

// check returns what keeps the program from being solved.
func (p *Program) check() error {
	n := len(p.Cost)
	if len(p.Lower) != n || len(p.Upper) != n {
		return fmt.Errorf("linprog: %d costs, but %d lower and %d upper bounds", n, len(p.Lower), len(p.Upper))
	}
	for j, c := range p.Cost {
		if err := checkVariable(c, p.Lower[j], p.Upper[j]); err != nil {
			return fmt.Errorf("linprog: variable %d: %w", j, err)
		}
	}
	for i, r := range p.Rows {
		if err := r.check(n); err != nil {
			return fmt.Errorf("linprog: row %d: %w", i, err)
		}
	}
	return nil
}

func checkVariable(cost, lower, upper float64) error {
	if !usable(cost) {
		return fmt.Errorf("cost %v is not finite, or too large", cost)
	}
	if cost > 0 && math.IsInf(lower, -1) {
		return errors.New("a positive cost needs a finite lower bound")
	}
	if cost < 0 && math.IsInf(upper, 1) {
		return errors.New("a negative cost needs a finite upper bound")
	}
	return checkBounds(lower, upper)
}

// check returns what is wrong with a row for n variables.
func (r *Row) check(n int) error {
	if len(r.Coefficients) != n {
		return fmt.Errorf("%d coefficients for %d variables", len(r.Coefficients), n)
	}
	for j, a := range r.Coefficients {
		if !usable(a) {
			return fmt.Errorf("coefficient %d: %v is not finite, or too large", j, a)
		}
	}
	return checkBounds(r.Lower, r.Upper)
}

func checkBounds(lower, upper float64) error {
	if !(lower <= upper) { // also if one is not a number
		return fmt.Errorf("no number lies between %v and %v", lower, upper)
	}
	if !usable(lower) && !math.IsInf(lower, -1) {
		return fmt.Errorf("lower bound %v is too large", lower)
	}
	if !usable(upper) && !math.IsInf(upper, 1) {
		return fmt.Errorf("upper bound %v is too large", upper)
	}
	return nil
}

func usable(x float64) bool { return math.Abs(x) <= largest }
