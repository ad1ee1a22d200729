package linprog

// The accuracy of results.
const (
	// Feasibility is by how much the value of a row may pass its bound, as part of
	// the bound or of the typical size of all bounds, whichever is larger. Rows and
	// columns are scaled for this so that their largest coefficient is about 1.
	// Bounds of single variables are met exactly.
	Feasibility = 1e-9
	// Optimality is by how much a reduced cost may have the wrong sign, with the
	// largest cost scaled to about 1.
	Optimality = 1e-9
)

// Status says how Solve ended.
type Status uint8

const (
	// Optimal says that X is a cheapest point.
	Optimal Status = iota + 1
	// Infeasible says that no point meets all rows and bounds; Farkas proves it.
	Infeasible
	// Stopped says that neither could be shown: there were too many pivots, or
	// rounding was in the way of every proof. It is no answer.
	Stopped
)

// String returns the status in lower case.
func (s Status) String() string {
	switch s {
	case Optimal:
		return "optimal"
	case Infeasible:
		return "infeasible"
	case Stopped:
		return "stopped"
	}
	return "none"
}

// Solution is what Solve found. Which fields are given depends on Status.
type Solution struct {
	Status Status

	// X and Objective are a cheapest point and its cost.
	X         []float64
	Objective float64

	// Bound is a cost that no point undercuts, computed from RowDuals and the
	// program alone: the sum over all rows of RowDuals times the bound that its
	// sign names, plus the same for ColumnDuals and the bounds of the variables.
	Bound float64

	// RowDuals says by how much the objective rises per unit by which the bounds of
	// a row rise: > 0 where the lower bound holds, < 0 where the upper one holds,
	// exactly 0 where the row could be left out.
	RowDuals []float64

	// ColumnDuals is Cost less the sum of RowDuals times Coefficients: > 0 where the
	// lower bound of the variable holds, < 0 where the upper one does.
	ColumnDuals []float64

	// Farkas, if Infeasible, has a number for each row such that the sum of Farkas
	// times the row's value cannot be the same from the bounds of the rows as from
	// the bounds of the variables.
	Farkas []float64

	// Pivots counts the exchanges of this Solve.
	Pivots int
}
