// Package shims chooses the shims under the feet of a machine: which pieces to
// take out and which to put in, so that every foot comes as near as it should to
// the height that is wanted, with pieces that are there.
//
// # What is in, what is out
//
// In: a stock as data ([Stock], [ReadStock]), one [Order] for every single foot,
// a [Rule], and [Choose], which serves all feet together from one stock and from
// what lies under the feet now. Out: where the corrections come from (package
// align), how much of a soft foot is to be filled (package softfoot), and the
// shape of a shim: all pieces are taken to fit under all feet of the call.
//
// # Units and signs
//
// A correction is positive where the foot goes up and more shims go under it.
// [Stack.Error] is what a pack comes to less what was wanted: positive is too
// high.
//
// # What the best choice is
//
// Over all feet together, in this order, each deciding only between choices that
// are equal in those before it:
//
//  1. what the feet lack of [Rule.Keep], summed
//  2. by how much the feet miss the allowed [Rule.Error], summed
//  3. how many pieces lie under all feet
//  4. the size of the errors, summed
//  5. how many pieces are taken out and put in
//
// So there always is an answer, if only the nearest. Where the first two are not
// zero at a foot, [Stack.Reached] is false and a warning says so.
//
// Of choices that are equal in all five, the one taken is the best for the first
// order alone, then for the second, and so on, by the same five; of packs that
// are equal at a foot, the one whose thickest pieces are thickest. Pieces of the
// same thickness count as one: a foot keeps its own, and takes the others in
// the order of the stock.
//
// # Accuracy
//
// All arithmetic is in whole nanometres and exact, and gives the same bits on
// every platform. A thickness that is no whole number of nanometres is refused;
// only the total that is wanted at a foot is rounded to the nanometre, halves away
// from zero. The search is exhaustive, by branch and bound, within a budget of
// nodes: [Choice.Proven] says whether it came to its end. If it did not, the
// choice may not be the best. It was checked against an enumeration of all
// choices on small cases, and against two independent solvers of integer
// programs on large ones (testdata/optima.py).
//
// The figures of thickness are as good as the pieces. A shim that is worn,
// bent, burred or dirty is thicker than it measures between anvils, and every
// joint of two pieces adds a little air: hence few pieces, and hence
// [Piece.Measured].
//
// # Sources
//
// How many pieces may lie under a foot is the caller's to say, because the
// sources differ: R. B. McMillan, Rotating Machinery: Practical Solutions to
// Unbalance and Misalignment, Fairmont, 2004, pp. 112-113 (read) has at most 3;
// a rule of thumb from discussion in the trade is at most 5 (no source). The
// default of 4 lies between them and is ours. The common thicknesses of
// [CommonInch] and [CommonMetric] are from memory, no source.
//
// # Before you touch the machine
//
// Isolate and lock out the driver before loosening a bolt. Lift with proper gear,
// by no more than the piece needs, and never put a hand under a foot that only a
// jack or a bar holds. Use clean and flat shims without burrs, of a material
// that stands the place, and large enough for the foot; clean foot and base too. The
// instructions of the machine's makers on shims and bolts, local codes and
// licensed practice come first. A choice that is reached is not permission to
// run: measure again after tightening.
package shims
