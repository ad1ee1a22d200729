// Package thermal computes how the shaft of a machine moves when the machine
// comes to temperature, and where the shafts of two machines have to stand cold
// so that they run in line.
//
// # What is in
//
// A [Support] is one station of a machine, where it stands on its feet or on a
// pedestal. Its growth comes from the pieces that carry the shaft there (height
// times coefficient times rise, summed), from the legs on either side where they
// differ, or from a measurement. [Growth] lays a line through the supports and
// returns it as an [align.Estimate]: the growth of the centreline relative to
// where it stood cold, with its covariance. [ColdTarget] and [Running] join the
// growth of both machines. [Materials] lists coefficients, each with its source.
//
// # What is out
//
// Growth along the shaft, which closes the gap of the coupling but moves no
// centreline across. Frames that bend: three supports that do not lie on a line
// are refused, not bent. Heat flow: temperatures are the caller's to measure or
// to estimate. Forces of piping, and the lift of the shaft in its bearings by
// the oil film; a measured movement has them in it. Vertical machines, whose
// height grows along the shaft. Coefficients that change with temperature: give
// the mean between cold and running.
//
// # Units and signs
//
// Those of package align: x from the stationary machine towards the movable one
// with x = 0 at the coupling centre, vertical positive upwards, horizontal
// positive towards 3 o'clock, seen from behind the movable machine. A crew that
// faces the movable machine from the stationary end exchanges three and nine,
// and the sign of a horizontal movement, on the way in. Growth is positive
// upwards; a rise below zero, of a machine that runs cold, lets the shaft down.
// A temperature difference in degrees F converts by 5/9 alone, without the 32
// that belongs to a point on the scale; the types of package units keep the two
// apart.
//
// # Accuracy
//
// The formulae are linear. Left out of the growth of a piece is its square: of a
// growth of 1 mm/m, a millionth of the height. Left out of the roll is its
// square, and that the track grows as well. Computed numbers are those of the
// formulae to some units in the last place of the largest term, checked against
// exact fractions, and have the same bits on every platform: only + - * / and
// the square root are used.
//
// # Uncertainty
//
// Propagated to first order, JCGM 100:2008 (GUM), 5.1.2 and 5.2.2. What is
// stated for a height, for a rise or for a measurement is independent of all
// else. An error of a coefficient is shared by all pieces of one machine that
// are of the same [Material], so it moves front and rear together. What is not
// stated counts as exact once anything is stated; where nothing is, the basis
// is [align.Unknown], never zero. A station and a track count as exact: an
// error of them comes in only times the slope of the growth, or of the roll.
//
// # Sources
//
// The growth of a leg and its worked example: R. B. McMillan, Rotating
// Machinery: Practical Solutions to Unbalance and Misalignment, Fairmont, 2004,
// pp. 134-141 (read). The roll of legs that differ, the line through the
// supports and the propagation are derived here.
//
// # Caution
//
// What the makers of the machines say about growth comes first, and a movement
// that was measured from cold to running beats one that was computed: real
// casings are neither at one temperature nor of one material. Temperatures are
// taken on hot surfaces beside turning shafts: keep the guards on, keep clear of
// what turns, use a contactless thermometer or a fixed sensor where skin could
// touch, and mind that a shiny surface reads too cold without contact. Before
// feet or a coupling are touched, isolate and lock out the driver and let
// the machine cool. Local codes and licensed practice come before anything
// computed here, and no limit of this package is permission to run.
package thermal
