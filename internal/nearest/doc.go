// Package nearest finds the point of a polyhedron that is nearest to the origin:
//
//	minimise |x|^2   subject to   a_i . x >= b_i   and   a_k . x = b_k,
//
// known as least-distance programming. Unless no point keeps all rows, there is
// exactly one such point. A caller who wants the point nearest to some other
// place, or in another metric, shifts and scales the variables first.
//
// # Method
//
// The dual active-set method of D. Goldfarb and A. Idnani, A numerically stable
// dual method for solving strictly convex quadratic programs, Mathematical
// Programming 27 (1983), from memory; here the matrix of the quadratic form is
// the identity, so that its factor starts as the identity too. The method starts
// at the origin, which is nearest where there are no rows, and lets in the row
// that is broken most, equalities before others. At every moment x is a sum of
// rows with multipliers that have the right signs, so x is the nearest point of
// the rows let in so far, and |x| only grows. Hence rows can be added after an
// answer and the search goes on from there: see [Solver].
//
// The rows let in are held as an orthogonal factorisation, changed by plane
// rotations. Before an answer is given it is made afresh from the rows as handed
// over: they are factorised again, x and the multipliers follow from that, rows
// whose multiplier then has the wrong sign leave, and the search goes on if a
// row is broken.
//
// # What an answer promises
//
// Rows are judged as if they were divided by their length |a|, which makes the
// answer independent of how a row is scaled, but for rounding. With b the least
// value after that division:
//
//   - Found: every row is kept to 1e-10 (1 + |b|), rows with a multiplier are met
//     with equality to the same tolerance, no multiplier y of an inequality is
//     negative, and x is the sum of the rows times y to 1e-13 (|x| + sum |y|).
//     These conditions (Karush, Kuhn, Tucker) are sufficient: x is the nearest
//     point of a set whose least values differ from the given ones by no more
//     than the tolerance, and whose coefficients by no more than rounding. Large
//     multipliers say that such small changes move x far: by about y times the
//     change. They come from rows at small angles to each other.
//   - Empty: there are multipliers y of the right signs under which the rows add
//     up to a contradiction: g = sum y a is zero but for rounding, and sum y b is
//     positive. Then a point that keeps all rows, if there is one, is farther
//     from the origin than (sum y b) / |g|, and this is asked to be at least
//     100 (1 + the largest |b| among the rows with a multiplier). The sum must
//     also exceed 1e-13 of the sum of y (1 + |b|), well above its rounding. The
//     multipliers are handed over as [Point.Duals].
//   - Stopped: neither could be shown, be it that the limit of steps was reached
//     (50 for each row and variable), that the rows lie between the two
//     tolerances, or that a number is not finite. There is no point to misuse then.
//
// Each is checked on the rows as handed over. A row whose coefficients are all
// zero is kept if its least value is at most the tolerance, and otherwise proves
// by itself that the set is empty.
//
// A row at an angle of less than 1e-11 to the span of the rows let in counts as
// lying in it. Numbers should be around 1: whether a row is kept is known to the
// rounding of its sum, (n + 2) 2^-53 |x|, which comes on top of the tolerance. No
// point is given where that exceeds 1e-10, for 60 variables at |x| above 14 000.
//
// # Sameness
//
// Nothing is random and nothing depends on time. Only + - * / and the square root
// are used, and products that feed sums are rounded on their own, so the same
// rows in the same order give the same bits on every platform. Another order
// changes the answer within the tolerance: the squares of two answers, each with
// multipliers y to normalised rows, differ by no more than the sum of 4e-10 y
// (1 + |b|) over the larger of the two.
package nearest
