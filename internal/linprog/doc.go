// Package linprog solves small dense linear programs, of up to about 100 variables
// and 300 rows:
//
//	minimise Cost . x  under  Lower <= x <= Upper  and, for every row,
//	                          Lower <= Coefficients . x <= Upper
//
// Any bound may be infinite, as long as the program cannot be unbounded; see
// [Program].
//
// # Method
//
// The dual simplex method with bounds (C. E. Lemke, The dual method of solving the
// linear programming problem, Naval Research Logistics Quarterly 1, 1954) on a dense
// tableau. It starts with all rows basic and every variable where it is cheapest: at
// a bound or, if it costs nothing, at zero or the bound nearest to it. No reduced
// cost has the wrong sign there, so there is no first phase; and a plan of moves
// starts from moving nothing. A variable between its bounds costs nothing and is
// treated as a free one until it first enters the basis.
//
// The ratio test flips bounds and, among near ties, takes the largest pivot (P. M.
// J. Harris 1973); small pivots make way for better ones or for a new tableau. These
// follow A. Koberstein, The dual simplex method, techniques for a fast and stable
// implementation, thesis, Paderborn 2005. If the dual objective stands still for long
// the least index decides (R. G. Bland 1977), so that no basis comes back. All works
// are cited from memory.
//
// # What is guaranteed
//
// No result rests on the tableau. From the basis that it ends with, the values and
// the multipliers are computed anew from the coefficients, by a factorisation of
// their own, and then have to prove each other: all bounds met to the tolerance
// [Feasibility], no multiplier of the wrong sign beyond [Optimality], the cost equal to
// the bound that the multipliers give. "Infeasible" is answered only with multipliers
// (J. Farkas 1902) whose two ranges are apart by more than a quarter of the tolerance
// and well more than their rounding. What fails is tried again with a new tableau,
// and in the end answered [Stopped]: never by a guess.
//
// So programs that miss being feasible by less than the tolerance count as feasible,
// and those that miss it by more do not. Where the rows are nearly dependent (by
// 1e-11) rounding may leave neither provable. Many optima are often equally good;
// which of them comes out is not said, and may change with the order of the rows.
//
// Multipliers below 1e-11 (with the largest cost and all coefficients scaled to about
// 1) are noise and reported as zero. A variable or row without bound on a side counts
// for nothing in Bound and Farkas while its multiplier is that small; Bound extends
// this to the tolerance.
//
// Lengths and coefficients may have any size within reason (1e60), but like sizes
// serve best: rows and columns are scaled by powers of two so that their largest
// coefficient is about 1, and tolerances are taken from the typical size of bounds.
// So the same program in other units has the same answer.
//
// Equal input gives equal bits on every platform: products that feed sums are
// rounded on their own.
//
// # Limits
//
// No sparse matrices, no whole numbers, no changing of bounds or costs: rows can be
// added, see [Solver.Add], and a solver can be used for another program, see
// [Solver.Load], and that is all. The package judges no units and knows nothing of
// machines.
package linprog
