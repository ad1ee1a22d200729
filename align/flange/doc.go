// Package flange corrects machines that hang, stand or lie on a flange: shims at
// the bolts take out the slope, and sliding takes out the offset at the flange
// face.
//
// # Signs
//
// Axes are those of package align: x runs from the stationary machine to the
// movable one, which has the flange, with x = 0 at the coupling centre; horizontal
// is positive towards 3 o'clock and vertical towards 12, for an observer behind
// the movable machine. Bolts stand at clock positions as the crew sees them, from
// the end that [Flange].View names. For a flange of the stationary machine take
// [align.Estimate.Exchanged], and give station, push and view from that end.
//
// A standing machine has 12 o'clock at a mark that the caller names. Give the same
// words to [align.Style] when the correction is put into words, so that nothing is
// raised or lowered.
//
// # Equations
//
// With s the slope and w the offset that were found less the target, u the
// direction of a clock position, and the face at station x_f:
//
//	shim_i = +-s . r_i u(t_i) + c    + where a thicker shim pushes towards +x, - where towards -x
//	axial  = +-c                     the face's centre goes along x
//	slide  = -w(x_f)
//	shift  = +s x_f                  of the offset at the coupling, by the tilt alone
//
// c is the least for which no shim is below zero. Derived here: the face of a
// machine that climbs by s stands across its axis, so at a bolt it lies at
// x = x_f - s . r u, and has to come forward by s . r u; this turns the machine by
// -s about the centre of the face, which stays where it is, and w(0) becomes
// w(x_f) = w(0) + s x_f. Sliding moves all stations alike.
//
// # Accuracy
//
// The equations are of first order in the slope. Against an exact rotation of a
// rigid machine, over bolts at radii up to R, they leave at most
//
//	R s^2            of offset at the face: 0.2 um for R = 200 mm and s = 1 mm/m
//	s^3              of slope: 1e-9 for s = 1 mm/m
//	R s^2 + x_f s^3  of offset at the coupling
//
// with s the size of the slope, both planes together, up to 100 mm/m. Derived
// here, and held against exact rotations in the tests. A correction that may leave
// more than [Remainder] at the face says so in its warnings: make it, measure, and
// correct again.
//
// The machine, its flange and what it is bolted to are taken as rigid, and shims as
// flat, so thin flanges and steep wedges do worse than the figures above. Bolt
// positions are taken as exact: a radius that is wrong by one hundredth makes its
// shim wrong by as much of itself, and a clock position that is wrong by one degree
// by up to 0.017 s r.
//
// # What is not here
//
// The package chooses no shims from a stock and says nothing on what a coupling
// may run at: packages shims and tolerance do. A feeler measurement of soft places
// under a flange is not taken in.
//
// # Before you loosen a bolt
//
// Isolate and lock out the driver. A machine that hangs from its flange, or sticks
// out from it, falls or tips as soon as the bolts let go: take its weight on lift
// gear that is rated for it, or on a support that cannot slip, before the first
// bolt is loosened, and keep hands out of the joint. A standing machine tips as
// well. Part the coupling, as its maker says, so that the shafts carry nothing
// while the flange is open.
//
// A flange that is drawn down onto single shims bends, and may crack. Each shim has
// to be a full washer or a horseshoe round its bolt, all bolts shimmed; between
// bolts the flange stays without support. A ring that is machined to the wedge
// bears all round and is the better cure for more than a trim: its thickness
// at any place is the shim that is told for a bolt there. (Common practice,
// no source.) Shims lift the spigot out of its rabbet by their thickness and may
// open a seal; see what is left of it. Tighten crosswise to the torque of the
// machine's maker, then measure again.
//
// The instructions of the machine's and the coupling's makers, local codes and
// licensed practice come first; nothing computed here, and no limit of
// [Runout], is permission to run.
package flange
