package adapter

var handAnswers = []example{
	// Case A (derived here from geometry alone): offset +0.12 towards 3 and -0.2 up, slope
	// +0.4 and -0.7 mm/m. A rim at 40 carried by the stationary shaft shows 0.364 at 3,
	// a little less on a circle of 75 mm.
	{"case A, rim and face", "rim_face", `{"view":"from_movable","carrier":"stationary",
		"rim":{"station":"40 mm","readings":` + rimA + `},"face":{"diameter":"150 mm","readings":` + faceA + `},"feet":` + feetA + `}`,
		`{` + caseA + `,"moves":` + movesA + `,"checks":[{"miss":"0.000472 mm"},{"miss":"0 mm"}],"warnings":[]}`},
	{"case A, three quarters and back", "rim_face", `{"view":"from_movable","carrier":"stationary",
		"rim":{"station":"40 mm","readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.364 mm"},{"at":"6:00","value":"0.456 mm"},{"at":"12:00","value":"0.01 mm"}]},
		"face":{"diameter":"150 mm","readings":` + faceA + `}}`,
		`{` + caseA + `,"moves":[],"checks":[{"completed":true,"supplied":"9:00","return":"0.01 mm"},{"miss":"0 mm"}],"warnings":[]}`},
	// R12, R3, R6, R9 of the rim carried by the movable shaft at -50: w = 0.1 and -0.165.
	{"case A, reverse", "reverse", `{"view":"from_movable","carried_by_stationary":{"station":"40 mm","readings":` + rimA + `},
		"carried_by_movable":{"station":"-50 mm","readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"-0.265 mm"},{"at":"6:00","value":"-0.33 mm"},{"at":"9:00","value":"-0.065 mm"}]}}`,
		`{` + caseA + `,"moves":[],"checks":[{"miss":"0.000472 mm"},{"miss":"0 mm"}],"warnings":[]}`},
	// Flex tilts of case A on 800 mm: 0.35 and -0.6, 0.05 and -0.1 mm/m; a face of 100 mm
	// shows their tenth.
	{"case A, both joints", "face_face", `{"view":"from_movable","span":"800 mm",
		"at_stationary":{"diameter":"100 mm","readings":[{"at":"12:00","value":"-0.03 mm"},{"at":"3:00","value":"0.0175 mm"},{"at":"6:00","value":"0.03 mm"},{"at":"9:00","value":"-0.0175 mm"}]},
		"at_movable":{"diameter":"100 mm","readings":[{"at":"12:00","value":"-0.005 mm"},{"at":"3:00","value":"0.0025 mm"},{"at":"6:00","value":"0.005 mm"},{"at":"9:00","value":"-0.0025 mm"}]}}`,
		`{` + caseA + `,"moves":[],"checks":[{"miss":"0 mm"},{"miss":"0 mm"}],"warnings":[]}`},
	{"case A, rim and gaps", "rim_gap", `{"view":"from_movable","carrier":"stationary","rim":{"station":"40 mm","readings":` + rimA + `},
		"gap":{"diameter":"150 mm","readings":` + gapA + `}}`,
		`{` + caseA + `,"moves":[],"checks":[{"miss":"0.000472 mm"},{"miss":"0 mm"}],"warnings":[]}`},
	// Under a straightedge on the stationary rim the gap grows as the other rim sinks.
	{"case A, straightedge and gaps", "straightedge_gap", `{"view":"from_movable","straightedge":{"on":"stationary","station":"40 mm",
		"readings":[{"at":"12:00","value":"0.228 mm"},{"at":"3:00","value":"-0.136 mm"},{"at":"6:00","value":"-0.228 mm"},{"at":"9:00","value":"0.136 mm"}]},
		"gap":{"diameter":"150 mm","readings":` + gapA + `}}`,
		`{` + caseA + `,"moves":[],"checks":[{"miss":"0 mm"},{"miss":"0 mm"}],"warnings":[]}`},
}
