package adapter

import (
	"strconv"
	"strings"
)

const (
	slopesA  = `[{"at":"12:00","value":"0 mm/m"},{"at":"3:00","value":"1.1 mm/m"},{"at":"6:00","value":"1.4 mm/m"},{"at":"9:00","value":"0.3 mm/m"}]`
	flat     = `[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0 mm"},{"at":"6:00","value":"0 mm"},{"at":"9:00","value":"0 mm"}]`
	bumped   = `[{"at":"12:00","value":"0.04 mm"},{"at":"3:00","value":"0 mm"},{"at":"6:00","value":"0 mm"},{"at":"9:00","value":"0 mm"}]`
	inLine   = `"horizontal":{"offset":"0 mm","slope":"0 mm/m"},"vertical":{"offset":"0 mm","slope":"0 mm/m"}`
	rimAt0   = `"probe":{"kind":"rim","carrier":"stationary","station":"0 mm"}`
	rimAt100 = `"probe":{"kind":"rim","carrier":"stationary","station":"100 mm"}`

	soundSensor   = `{"view":"from_movable","sensors":[{"carrier":"stationary","station":"40 mm","gain":1,"readings":` + rimA + `,"u":{"station":"0.5 mm"},"angle":{"gain":1,"readings":` + slopesA + `}}]}`
	soundForecast = `{"view":"from_movable","expected":{` + inLine + `},"sets":[{` + rimAt0 + `,"u":{"reading":"1 um"},"at":["12:00","3:00","6:00","9:00"]},` +
		`{` + rimAt100 + `,"u":{"reading":"1 um"},"at":["12:00","3:00","6:00","9:00"]}],"feet":[{"name":"a","x":"100 mm"}]}`
	soundFollow = `{"from":{` + caseA + `},"plane":"vertical","view":"from_movable","probes":[` +
		`{"probe":{"kind":"rim","carrier":"stationary","station":"40 mm"},"at":"12:00","start":"0 mm","now":"0.058 mm"},` +
		`{"probe":{"kind":"rim","carrier":"movable","station":"-50 mm"},"at":"6:00","start":"0 mm","now":"0.04 mm"}]}`
	soundPair = `{"first":{` + caseAU + `},"second":{` + caseAU + `}}`
	soundAt   = `{"position":{` + inLine + `},"view":"from_movable","sets":[{` + rimAt0 + `,"u":{"reading":"3 um"},"at":["12:00","3:00"]}]}`
)

// uOf is what four numbers have that are known alike in both planes.
func uOf(offset, slope string) string {
	plane := `{"offset":"` + offset + ` mm","slope":"` + slope + ` mm/m"}`
	return `{"horizontal":` + plane + `,"vertical":` + plane + `}`
}

// Worked out by hand: readings at the quarters leave half the differences, the
// rest is a case that the geometry of the protocol gives. Chi-square of four is
// e^-x (1 + x) above 2x.
var arcAnswers = []example{
	{"a third of a turn", "arc", `{"view":"from_movable","at":["12:00","2:00","4:00"]}`, `{"covered":"2.0943951023931953 rad","hole":"4.1887902047863905 rad","middle":"2:00"}`},
	{"both channels", "sensor", soundSensor, `{` + caseA + `,"moves":[],"warnings":[]}`},
	{
		"one reading off", "residuals", `{"view":"from_movable","sets":[{` + rimAt0 + `,"readings":` + bumped + `},{` + rimAt100 + `,"readings":` + flat + `}]}`,
		`{"residuals":[` + residual(0, 0, "0.01") + `,` + residual(0, 1, "-0.01") + `,` + residual(0, 2, "0.01") + `,` + residual(0, 3, "-0.01") + `,` +
			residual(1, 0, "0") + `,` + residual(1, 1, "0") + `,` + residual(1, 2, "0") + `,` + residual(1, 3, "0") + `]}`,
	},
	{
		"two dials", "forecast", soundForecast,
		`{"u":` + uOf("0.0007071067811865475", "0.01") + `,"feet":[{"foot":"a","horizontal":"0.0007071067811865475 mm","vertical":"0.0007071067811865475 mm"}]}`,
	},
	{"raised", "follow", soundFollow, `{"horizontal":{"offset":"0.12 mm","slope":"0.4 mm/m"},"vertical":{"offset":"-0.15 mm","slope":"-0.5 mm/m"}}`},
	{
		"a hundredth apart", "compare", strings.Replace(soundPair, `"0.12 mm"`, `"0.11 mm"`, 1),
		`{"difference":{"horizontal":{"offset":"-0.01 mm","slope":"0 mm/m","u":{"offset":"0.01414213562373095 mm","slope":"0.02828427124746190 mm/m"}},` +
			`"vertical":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0.01414213562373095 mm","slope":"0.02828427124746190 mm/m"}}},"chi_squared":0.5,"degrees_of_freedom":4,"p":0.97350097883925606}`,
	},
	{
		"of one weight", "merge", strings.Replace(soundPair, `"0.12 mm"`, `"0.11 mm"`, 1),
		`{"horizontal":{"offset":"0.115 mm","slope":"0.4 mm/m","u":{"offset":"0.007071067811865475 mm","slope":"0.01414213562373095 mm/m"}},` +
			`"vertical":{"offset":"-0.2 mm","slope":"-0.7 mm/m","u":{"offset":"0.007071067811865475 mm","slope":"0.01414213562373095 mm/m"}}}`,
	},
	{"a reading's own", "expect", soundAt, `{"sets":[{"readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0 mm","u":"0.00424264068711928 mm"}]}]}`},
	{
		"dials alone", "budget", `{"view":"from_movable","sets":[{` + rimAt0 + `,"u":{"reading":"1 um"},"readings":` + flat + `},{` + rimAt100 + `,"u":{"reading":"1 um"},"readings":` + flat + `}]}`,
		`{"shares":[{"set":0,"of":"reading","u":` + uOf("0.0007071067811865475", "0.007071067811865475") + `},{"set":1,"of":"reading","u":` + uOf("0", "0.007071067811865475") + `}]}`,
	},
	{
		"in line", "fit_exact", `{"view":"from_movable","sets":[{"probe":{"kind":"rim","carrier":"stationary","station":"0 mm","radius":"60 mm"},"readings":` + flat + `},{` + rimAt100 + `,"readings":` + flat + `}]}`,
		`{` + inLine + `,"moves":[],"warnings":[` + still(0) + `,` + still(1) + `],"difference":{` + inLine + `}}`,
	},
}

// still is the warning of a dial that stands still.
func still(set int) string {
	return `{"code":"suspect","path":"/sets/` + strconv.Itoa(set) + `/readings","value":"0 mm","want":"a spread from 0.5 um to 25 mm: is the unit right, and did the dial touch?"}`
}

func residual(set, reading int, value string) string {
	standardised := map[byte]string{'0': "1.4142135623730951", '-': "-1.4142135623730951"}[value[0]]
	if value == "0" {
		standardised = "0"
	}
	number := string(rune('0'+set)) + `,"reading":` + string(rune('0'+reading))
	return `{"set":` + number + `,"value":"` + value + ` mm","standardised":` + standardised + `,"leverage":0.75}`
}

var arcRefused = []sound{
	{"arc", `{"view":"from_movable","at":["12:00"]}`, []change{
		{"no positions", `["12:00"]`, `[]`, "missing /at"},
		{"no such hour", `"12:00"`, `"13:00"`, "out_of_range /at/0"},
	}},
	{"sensor", soundSensor, []change{
		{"no gain", `"gain":1,"readings":[{"at":"12:00","value":"0 mm"}`, `"gain":0,"readings":[{"at":"12:00","value":"0 mm"}`, "out_of_range /sensors/0/gain"},
		{"a tape below zero", `"0.5 mm"`, `"-0.5 mm"`, "out_of_range /sensors/0/u/station"},
		{"an angle as a length", `"1.1 mm/m"`, `"1.1 mm"`, "unknown /sensors/0/angle/readings/1/value"},
	}},
	{"forecast", soundForecast, []change{
		{"no uncertainty", `"u":{"reading":"1 um"},"at"`, `"u":{},"at"`, "missing /sets/0/u/reading"},
		{"one of zero", `"1 um"`, `"0 um"`, "out_of_range /sets/0/u/reading"},
		{"a doubled foot", `[{"name":"a","x":"100 mm"}]`, `[{"name":"a","x":"100 mm"},{"name":"a","x":"200 mm"}]`, "duplicate /feet/1/name"},
	}},
	{"follow", soundFollow, []change{
		{"across the move", `"at":"12:00"`, `"at":"3:00"`, "unseen /probes/0/at"},
		{"at one station", `"-50 mm"`, `"40 mm"`, "unseen /probes"},
		{"no plane", `"plane":"vertical",`, ``, "missing /plane"},
		{"a face", `"kind":"rim","carrier":"stationary","station":"40 mm"`, `"kind":"near_face","carrier":"stationary","radius":"40 mm"`, "unseen /probes/0/axial_free"},
	}},
	{"compare", soundPair, []change{
		{"nothing known of one", `"horizontal":{"offset":"0.12 mm","slope":"0.4 mm/m","u":{"offset":"0.01 mm","slope":"0.02 mm/m"}},`, `"horizontal":{"offset":"0.12 mm","slope":"0.4 mm/m"},`, "missing /first/horizontal/u"},
	}},
	{"merge", soundPair, []change{
		{"below zero", `"u":{"offset":"0.01 mm"`, `"u":{"offset":"-0.01 mm"`, "out_of_range /first/horizontal/u/offset"},
	}},
	{"expect", soundAt, []change{
		{"no positions", `["12:00","3:00"]`, `[]`, "missing /sets/0/at"},
		{"a tape below zero", `"reading":"3 um"`, `"reading":"3 um","station":"-1 mm"`, "out_of_range /sets/0/u/station"},
	}},
}
