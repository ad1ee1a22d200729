// Package align holds the geometry of bringing two coupled shafts into one
// line: centrelines with their uncertainty, the probes that see them, the fit
// of a centreline to any mix of readings, and the moves that follow at the feet.
//
// # Axes and signs
//
// The stationary machine's shaft centreline is the axis. x runs along it, from
// the stationary machine towards the movable one, with x = 0 at the coupling
// centre, midway between the flex planes (short coupling: midway between the
// hub faces). A station on the stationary side is negative.
//
// The observer stands behind the movable machine and looks at the stationary
// one: 12 o'clock is up, 3 o'clock is on the right, the clock grows clockwise.
// Vertical is positive upwards, horizontal is positive towards 3 o'clock. A
// reading's clock position is where the plunger of that dial touches, not a
// mark on the shaft. A crew that faces the movable machine from the stationary
// end sees 3 and 9 exchanged; [View] converts, given with the readings on the way
// in, and again with the [Style] when a move is put into words. The direction of
// rotation never changes a sign.
//
// The misalignment in each plane is the line w(x) = offset + slope*x of the
// movable centreline relative to the stationary one. A positive vertical slope
// climbs away from the coupling and opens the gap at 6 o'clock; a positive
// horizontal slope opens it at 9. A dial grows when its plunger is pushed in.
//
// On a vertical machine 12 o'clock is a mark that the caller names, nothing is
// raised or lowered ([Style] has names for it), and sag is zero.
//
// # One idea
//
// Misalignment, growth, target, residual and move are all a [Centreline]. An
// [Estimate] is a centreline with its covariance, and uncertainty lives there
// and nowhere else. What was found minus the target is computed once, with
// [Estimate.Minus]; corrections and verdicts take only that.
//
// # Accuracy
//
// [Fit] is linear: it holds where the slope squared and the offset over the rim
// radius are small. Read at the four quarters, the fitted centreline is within
// 10 nm of exact three-dimensional geometry where the probes stand, up to 1 mm of
// offset at the coupling and 2 mm/m of slope (both planes together), on rims of
// 40 mm radius and more at stations up to 1 m, and on spacers of 200 mm to 2 m
// (from 250 mm where the spacer carries the dials). Beyond that the error grows
// with the offset and with the slope squared: 12 nm at 5 mm, 110 nm at 10 mm/m,
// on rims at 100 mm either side.
//
// On a part of a turn the circle of the rim matters sooner: with 1 mm along the
// middle of the arc and a rim of 75 mm the fit is off by 7.5, 10.4, 11.6 and
// 12.6 um on arcs of 180, 120, 90 and 60 degrees.
//
// These figures were derived here and checked against an exact simulation of two
// rigid shafts.
//
// [FitExact] takes the circle of the rim and the inclination of the shafts into
// account where a radius is given, and says by how much that differs.
//
// # Uncertainty
//
// All uncertainties are standard ones. Those of the readings average out; those of
// what the readings of a set share (station, radius, sag, a common clock error) do
// not, nor over the sets of one [Set.Mounting]. [Budget] tells which of them hurts.
// Half widths of intervals are Student's t times the standard uncertainty, with
// degrees of freedom after Welch and Satterthwaite: [Estimate.Expanded],
// [Move.Expanded]. In simulated jobs of three sets of nine readings, on arcs from 60
// to 360 degrees, with the scatter stated or estimated from 20 degrees of freedom,
// the interval of 95 % held the truth in 94.6 to 96.0 of 100; what three and more
// sets disagree by through their shared errors is in an estimated scatter too, and
// makes the intervals a little wide. Beside something stated of like size, a scatter
// of few degrees of freedom makes them too narrow, which is the formula's own limit:
// at worst 94.8 of 100 with 8, 94.1 with 4, 92.4 with 2 (simulated here).
//
// It is propagated to first order, which fails where an input is uncertain by a
// good part of what it is measured against: stations by over a tenth of the distance
// between them, clock positions by many degrees; and for the size of a vector that
// is not large against its own uncertainty, whose mean at zero is 1.253 u.
// [MonteCarlo] draws whole jobs and needs no first order; hold the two against each
// other where in doubt. Of a scatter of few degrees of freedom beside something
// stated it makes wider intervals for another reason: it adds a drawn Student's t to
// the rest, where the formula above shortens the tails. Verdicts on vectors (package tolerance) integrate.
//
// # Before you touch the machine
//
// The numbers of this package move heavy machines. Isolate and lock out the
// driver before loosening a coupling or a bolt, lift with proper gear, and put
// the guard back before starting. The instructions of the machine's and the
// coupling's makers, local codes and licensed practice come first; nothing
// computed here is permission to run.
package align
