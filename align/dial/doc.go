// Package dial solves the hand methods on dials and gauges by the closed forms
// of the handbooks: rim-face, reverse-dial, face-face, a rim dial with a gap
// gauge, and a straightedge with a gap gauge.
//
// The readings stand at 12, 3, 6 and 9 o'clock, in any order, from any zero,
// and may end with the return to the first position. Three of the four are
// enough: the validity rule gives the fourth, and the result says so. For other
// positions the same method's Sets go to align.Fit, of which the closed forms
// are the special case; both agree to rounding.
//
// Signs, axes, sag and views are those of package align. A face and a gap are
// given by the diameter of the circle that the plunger or the gauge sweeps, not
// that of the flange.
//
// Works cited: H. P. Bloch and F. K. Geitner, Machinery Component Maintenance
// and Repair; R. B. McMillan, Rotating Machinery: Practical Solutions to
// Unbalance and Misalignment, Fairmont, 2004; J. Piotrowski, Shaft Alignment
// Handbook, 3rd edition (quoted second-hand).
//
// Turning shafts by hand is work on a machine that could start: isolate and
// lock out the driver first. The makers' instructions, local codes and licensed
// practice come before anything computed here.
package dial
