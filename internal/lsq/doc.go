// Package lsq solves linear least squares by taking in one equation after the
// other: each row is turned into an upper triangle by plane rotations, and is
// then forgotten.
//
// # Method
//
// For the equations A x = b the package keeps the triangle [R | q] of an
// orthogonal factorisation Q'[A | b], never A'A: forming A'A would square the
// condition number. The method is row-wise Givens rotation, see G. H. Golub and
// C. F. Van Loan, Matrix Computations, 4th ed., sections 5.1.8 (the rotation),
// 5.2.5 (factorisation) and 6.5.3 (adding a row); section numbers from memory.
// Rotations are applied as corrections, see H. Rutishauser, The Jacobi method
// for real symmetric matrices, Numerische Mathematik 9 (1966), from memory:
// on the NIST sets, averaged over 400 random orders of rows, that gains up to
// two tenths of a digit over multiplying by sine and cosine, for up to an eighth
// more time.
//
// What remains of any set of equations is again a set of at most n equations
// with the same solution, covariance and, together with [Triangle.SumSquares],
// the same sum of squared residuals. So triangles nest: one set can be reduced
// on its own, unknowns that belong to that set alone can be dropped with their
// rows, and the rest can be added to another triangle. The answer is that of
// the joint fit, even where one set alone is singular.
//
// # Limits
//
// The package judges nothing. Weights, finite numbers, units of like size and
// the decision that a system is singular are the caller's: [Triangle.SVD] gives
// the numbers to decide with. All functions work on memory that the caller
// hands over and allocate nothing; they panic (index out of range) only if that
// memory is too short, which is a mistake of the program, never of its data.
//
// # Accuracy
//
// The computed solution is the exact one of equations changed by a small
// multiple, growing slowly with their number, of the rounding (2^-53) of the
// largest entries of each column. All products that
// feed sums are rounded on their own, and only + - * / and the square root are
// used, so the same rows in the same order give the same bits on every
// platform. Another order changes the result by rounding only.
package lsq
