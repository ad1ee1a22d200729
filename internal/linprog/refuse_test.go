package linprog

import (
	"math"
	"reflect"
	"strings"
	"testing"
)

var nan = math.NaN()

// good returns a program that every row of the tables below spoils in one place.
func good() Program {
	return Program{
		Cost: []float64{1, -1, 0}, Lower: []float64{0, -inf, -inf}, Upper: []float64{inf, 5, inf},
		Rows: []Row{{[]float64{1, 1, 1}, -inf, inf}, {[]float64{0, 1, 0}, 2, 2}},
	}
}

func TestNewRefuses(t *testing.T) {
	for _, c := range []struct {
		name, want string
		spoil      func(*Program)
		twin       func(*Program) // nearly the same, and fine
	}{
		{"fewer lower bounds", "3 costs, but 2 lower",
			func(p *Program) { p.Lower = p.Lower[:2] },
			func(p *Program) {}},
		{"more upper bounds", "4 upper",
			func(p *Program) { p.Upper = append(p.Upper, 1) },
			func(p *Program) {}},
		{"cost that is no number", "variable 2: cost NaN",
			func(p *Program) { p.Cost[2] = nan },
			func(p *Program) { p.Cost[2] = math.Copysign(0, -1) }},
		{"infinite cost", "variable 0: cost +Inf",
			func(p *Program) { p.Cost[0] = inf },
			func(p *Program) { p.Cost[0] = largest }},
		{"cost too large", "variable 0: cost",
			func(p *Program) { p.Cost[0] = 1.01 * largest },
			func(p *Program) { p.Cost[0] = largest }},
		{"gain without end, upwards", "variable 1: a negative cost needs",
			func(p *Program) { p.Upper[1] = inf },
			func(p *Program) { p.Upper[1], p.Cost[1] = inf, 0 }},
		{"gain without end, downwards", "variable 0: a positive cost needs",
			func(p *Program) { p.Lower[0] = -inf },
			func(p *Program) { p.Lower[0], p.Cost[0] = -inf, 0 }},
		{"bounds of a variable crossed", "variable 1: no number lies between",
			func(p *Program) { p.Lower[1] = 5.1 },
			func(p *Program) { p.Lower[1] = 5 }},
		{"bound that is no number", "variable 2: no number lies between",
			func(p *Program) { p.Upper[2] = nan },
			func(p *Program) { p.Upper[2] = 0 }},
		{"bound too large", "variable 2: upper bound",
			func(p *Program) { p.Upper[2] = 2 * largest },
			func(p *Program) { p.Upper[2] = largest }},
		{"nothing above plus infinity", "variable 2: lower bound +Inf",
			func(p *Program) { p.Lower[2] = inf },
			func(p *Program) { p.Lower[2] = -inf }},
		{"nothing below minus infinity", "row 0: upper bound -Inf",
			func(p *Program) { p.Rows[0].Upper = -inf },
			func(p *Program) { p.Rows[0].Upper = inf }},
		{"short row", "row 1: 2 coefficients for 3",
			func(p *Program) { p.Rows[1].Coefficients = []float64{1, 1} },
			func(p *Program) { p.Rows[1].Coefficients = []float64{1, 1, 0} }},
		{"coefficient that is no number", "row 0: coefficient 2: NaN",
			func(p *Program) { p.Rows[0].Coefficients[2] = nan },
			func(p *Program) { p.Rows[0].Coefficients[2] = 0 }},
		{"infinite coefficient", "row 0: coefficient 0: -Inf",
			func(p *Program) { p.Rows[0].Coefficients[0] = -inf },
			func(p *Program) { p.Rows[0].Coefficients[0] = -1 }},
		{"bounds of a row crossed", "row 1: no number lies between",
			func(p *Program) { p.Rows[1].Lower = 2.5 },
			func(p *Program) { p.Rows[1].Lower = 2 }},
		{"bound of a row that is no number", "row 1: no number lies between",
			func(p *Program) { p.Rows[1].Lower = nan },
			func(p *Program) { p.Rows[1].Lower = -inf }},
		{"bound of a row too large", "row 1: lower bound",
			func(p *Program) { p.Rows[1].Lower = -1e61 },
			func(p *Program) { p.Rows[1].Lower = -1e60 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			bad, twin := good(), good()
			c.spoil(&bad)
			if s, err := New(bad); s != nil || err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want %q", err, c.want)
			}
			c.twin(&twin)
			if _, err := New(twin); err != nil {
				t.Errorf("twin: %v", err)
			}
		})
	}
}

func TestAddRefusesAndForgets(t *testing.T) {
	s, other := solver(t, good()), solver(t, good())
	for _, bad := range []Row{
		{[]float64{1}, 0, 1},
		{[]float64{1, nan, 0}, 0, 1},
		{[]float64{1, 1, 0}, 1, 0},
		{[]float64{1, 1, 0}, nan, 0},
		{[]float64{1, 1, 0}, inf, inf},
	} {
		if err := s.Add(bad); err == nil {
			t.Errorf("%v was taken", bad)
		}
	}
	if a, b := s.Solve(), other.Solve(); !reflect.DeepEqual(a, b) {
		t.Errorf("%+v, without the bad rows %+v", a, b)
	}
}

// What the caller does to its slices afterwards is of no account.
func TestNothingIsShared(t *testing.T) {
	p := good()
	s := solver(t, p)
	want := s.Solve()
	p.Cost[0], p.Lower[0], p.Upper[1], p.Rows[0].Coefficients[0] = nan, nan, nan, nan
	again := s.Solve()
	want.X[0], want.RowDuals[0], want.ColumnDuals[0] = again.X[0], again.RowDuals[0], again.ColumnDuals[0]
	want.Pivots = 0
	if !reflect.DeepEqual(again, want) {
		t.Errorf("%+v, before %+v", again, want)
	}
	again.X[1] = nan
	if third := s.Solve(); math.IsNaN(third.X[1]) {
		t.Error("the result is the solver's memory")
	}
}
