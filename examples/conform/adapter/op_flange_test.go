package adapter

import "strings"

// square has four bolts at the quarters of a circle of 400 mm, 400 mm behind the
// coupling.
const square = `"face":"400 mm","push":"away_from_stationary","view":"from_movable","bolts":[{"name":"A","radius":"200 mm","at":"12:00"},` +
	`{"name":"B","radius":"200 mm","at":"3:00"},{"name":"C","radius":"200 mm","at":"6:00"},{"name":"D","radius":"200 mm","at":"9:00"}]`

// leaning climbs by 1 mm/m towards 3.
var leaning = `{"position":` + at("0", "0", "1", "0") + `,` + square + `}`

// shimmed are shims of so many mm at the four bolts.
func shimmed(a, b, c, d string) string {
	return `"shims":[{"bolt":"A","thickness":"` + a + ` mm"},{"bolt":"B","thickness":"` + b + ` mm"},{"bolt":"C","thickness":"` + c + ` mm"},{"bolt":"D","thickness":"` + d + ` mm"}]`
}

// leaningSlides is what has to be done across the axis of the leaning machine.
const leaningSlides = `"slide":{"horizontal":"-0.4 mm","vertical":"0 mm"},"tilt_shift":{"horizontal":"0.4 mm","vertical":"0 mm"}`

var flangeAnswers = []example{
	{"towards 3", "flange", leaning, `{` + shimmed("0.2", "0.4", "0.2", "0") + `,"axial":"0.2 mm",` + leaningSlides + `}`},
	{"shims that pull up", "flange", strings.Replace(leaning, "away_from", "towards", 1), `{` + shimmed("0.2", "0", "0.2", "0.4") + `,"axial":"-0.2 mm",` + leaningSlides + `}`},
	{"named from the other end", "flange", strings.Replace(leaning, "from_movable", "from_stationary", 1), `{` + shimmed("0.2", "0", "0.2", "0.4") + `,"axial":"0.2 mm",` + leaningSlides + `}`},
	{"on its target", "flange", strings.Replace(leaning, `"face"`, `"target":`+at("0", "0", "1", "0")+`,"face"`, 1),
		`{` + shimmed("0", "0", "0", "0") + `,"axial":"0 mm","slide":{"horizontal":"0 mm","vertical":"0 mm"},"tilt_shift":{"horizontal":"0 mm","vertical":"0 mm"}}`},
	{"to the rabbet's side", "flange", strings.Replace(leaning, `"face"`, `"clearance":"0.5 mm","spigot":{"horizontal":"0.15 mm","vertical":"0 mm"},"face"`, 1),
		`{` + shimmed("0.2", "0.4", "0.2", "0") + `,"axial":"0.2 mm",` + leaningSlides + `,"rabbet":"fits"}`},
	{"beyond the rabbet", "flange", strings.Replace(leaning, `"face"`, `"clearance":"0.5 mm","face"`, 1),
		`{` + shimmed("0.2", "0.4", "0.2", "0") + `,"axial":"0.2 mm",` + leaningSlides + `,"rabbet":"does_not_fit","over":"0.15 mm"}`},
	// The slide by sqrt(0.03^2 + (0.4 m 0.1 mm/m)^2) and, as the slope is 1 mm/m, by 0.3 m 0.1 mm/m beside 0.04 and u_face 40 mm;
	// shims by 0.1 mm/m times how far the bolt stands from D, in each plane.
	{"with uncertainty", "flange", strings.Replace(`{"position":{"horizontal":{"offset":"0 mm","slope":"1 mm/m","u":{"offset":"0.03 mm","slope":"0 mm/m"}},`+
		`"vertical":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0.03 mm","slope":"0.1 mm/m"}}},"u_face":"40 mm",SQUARE}`, "SQUARE", square, 1),
		`{"shims":[{"bolt":"A","thickness":"0.2 mm","u":"0.02 mm"},{"bolt":"B","thickness":"0.4 mm","u":"0 mm"},{"bolt":"C","thickness":"0.2 mm","u":"0.02 mm"},{"bolt":"D","thickness":"0 mm","u":"0 mm"}],` +
			`"axial":"0.2 mm","slide":{"horizontal":"-0.4 mm","vertical":"0 mm","u":{"horizontal":"0.05 mm","vertical":"0.05 mm"}},"tilt_shift":{"horizontal":"0.4 mm","vertical":"0 mm"}}`},
	// EASA AR100-2020, table 2-11 (read)
	{"inside a class", "flange_runout", `{"spigot":"200 mm"}`, `{"limit":"0.1 mm"}`},
	{"where two classes meet", "flange_runout", `{"spigot":"230 mm"}`, `{"limit":"0.1 mm"}`},
}

var flangeRefused = []sound{
	{"flange", `{"position":` + at("0.1", "0", "1", "0") + `,"target":` + at("0", "0", "0", "0") + `,"u_face":"1 mm","clearance":"2 mm","spigot":{"horizontal":"0.1 mm","vertical":"0 mm"},` + square + `}`, []change{
		{"no push", `"push":"away_from_stationary",`, ``, "missing /push"},
		{"strange push", `away_from_stationary`, `up`, "unknown /push"},
		{"no face", `"face":"400 mm",`, ``, "missing /face"},
		{"no view", `"view":"from_movable",`, ``, "missing /view"},
		{"no name", `"name":"B",`, ``, "missing /bolts/1/name"},
		{"no radius", `"name":"B","radius":"200 mm"`, `"name":"B"`, "missing /bolts/1/radius"},
		{"no place", `,"at":"3:00"`, ``, "missing /bolts/1/at"},
		{"radius of zero", `"name":"B","radius":"200 mm"`, `"name":"B","radius":"0 mm"`, "out_of_range /bolts/1/radius"},
		{"a name twice", `"name":"C"`, `"name":"A"`, "duplicate /bolts/2/name"},
		{"a place twice", `"at":"6:00"`, `"at":"360 deg"`, "duplicate /bolts/2/at"},
		{"no bolts", square[strings.Index(square, `{"name":"A"`) : len(square)-1], ``, "missing /bolts"},
		{"spigot beyond the rabbet", `"horizontal":"0.1 mm","vertical":"0 mm"}`, `"horizontal":"1.1 mm","vertical":"0 mm"}`, "conflict /spigot"},
		{"spigot in one plane", `{"horizontal":"0.1 mm","vertical":"0 mm"}`, `{"horizontal":"0.1 mm"}`, "missing /spigot/vertical"},
		{"clearance below zero", `"clearance":"2 mm"`, `"clearance":"-2 mm"`, "out_of_range /clearance"},
		{"u of the face below zero", `"u_face":"1 mm"`, `"u_face":"-1 mm"`, "out_of_range /u_face"},
		{"not known", `"face"`, `"gasket":"1 mm","face"`, "unknown /gasket"},
	}},
	{"flange", `{"position":` + at("0.1", "0", "1", "0") + `,"face":"0 mm","push":"towards_stationary","view":"from_movable","bolts":[{"name":"A","radius":"100 mm","at":"12:00"},` +
		`{"name":"B","radius":"200 mm","at":"2:00"},{"name":"C","radius":"150 mm","at":"10:00"}]}`, []change{
		{"in one line", `150 mm`, `200 mm`, "conflict /bolts"},
	}},
	{"flange_runout", `{"spigot":"200 mm"}`, []change{
		{"beyond the table", `200`, `2241`, "out_of_range /spigot"},
		{"below the table", `200`, `39`, "out_of_range /spigot"},
		{"no spigot", `200`, `0`, "out_of_range /spigot"},
	}},
}
