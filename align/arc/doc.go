// Package arc measures with sensors and dials that turn with the shafts and are
// read on any arc that the guard, a pipe or a stuck coupling leaves free.
//
// A full turn with readings at the quarters needs no more than package dial. On a
// part of a turn any reading can be at any angle, and what counts is how much they
// see: the answer comes with its uncertainty, and with what the arc costs. Refused
// is only what cannot be seen at all.
//
// In here: [Sensor], a rotating sensor as sets for align.Fit; [Of], the arc that
// readings cover; [Forecast], how well a measurement will know the centreline at
// the coupling and at the feet, before it is made; [Diagnose], what is odd about
// readings that were taken; [FitRobust], a fit that gives single bad readings little
// weight; [Buffer], readings that come and go one by one; [Follow], the centreline
// while the machine is moved; [Compare] and [Merge], two measurements of one
// machine. Out of here: what an instrument does to turn light or voltage into
// lengths and slopes, how it knows its angle, and any connection to it.
//
// # Units and signs
//
// Axes, signs, views and units are those of package align. A reading's clock
// position is where that sensor stands, seen from where the view says; each sensor
// has its own. A gain is reading per displacement of the other shaft towards the
// sensor, and the shaft that carries it decides what that means for the movable
// one: see [Sensor.Sets]. An angle channel reads slopes, ratios as in the whole
// module, not angles; 1 mm/m is 1 mrad less 3.3e-7 of it.
//
// A shaft is turned one way only while readings are taken. Turned back, the play of
// the coupling shifts one shaft against the other, and sensors on both shafts no
// longer stand where the readings say.
//
// # Accuracy
//
// All is linear, as align.Fit is, and holds where that holds. A displacement sensor
// has no circle of a rim to lose: read at three angles on a quarter turn it has the
// centreline within 20 nm of exact three-dimensional geometry 100 mm either side of
// the coupling, up to 1 mm of offset and 2 mm/m of slope in each plane, at stations
// up to 120 mm; so has a sensor with two channels. A dial that touches a rim loses
// micrometres on a short arc, see align. Both were derived here and checked against
// an exact simulation of two rigid shafts. Uncertainties are of first order.
//
// # Sources
//
// Uncertainty after JCGM 100:2008 (GUM), clauses 5.1.2 to 5.2.2. What an arc costs
// was derived here from the normal equations of a sine, a cosine and a constant on
// it. That at least three readings over about a quarter turn are wanted, taken while
// turning one way, is common practice, no source.
//
// # Before you touch the machine
//
// A shaft that is turned by hand can be turned by its driver: isolate it and lock it
// out before sensors, brackets or chains go on, take them off before it is started,
// and put the guard back. Never take a guard off to win a wider arc on a machine that
// could start. The makers of the machine, of the coupling and of the sensor, local
// codes and licensed practice come first; a small uncertainty is not permission to
// run.
package arc
