// Package rigid simulates what a probe reads on two rigid shafts, exactly in
// three dimensions: rays meet cylinders and planes, and no angle is taken to be
// small. It is the oracle that tests hold the library against. Only tests
// import it, and it imports nothing of what it checks.
//
// In: dials on rims, in bores and on faces, feelers, a straightedge, a
// displacement sensor and the faces of a spacer; droop of the bracket, form of
// the touched surface, axial float and noise of the readings. Out: elastic
// shafts, backlash of the coupling, the ball of a tip (a ball of radius q on a
// rim adds q to the radius) and the width of a straightedge (a line here).
//
// Numbers are plain: lengths in millimetres, slopes as ratios, clock angles in
// degrees from 12, growing clockwise for an observer who stands behind the
// movable machine and looks at the stationary one. x runs along the stationary
// axis from the stationary machine towards the movable one, with x = 0 at the
// coupling centre; y points towards 3 o'clock and z up.
//
// A reading is computed as its departure from that of a perfectly aligned pair,
// so nothing of the size of a radius or a station cancels: it is good to 1e-12
// mm for radii up to 500 mm and stations up to metres, which a test confirms
// against a search in 200-bit arithmetic.
package rigid
