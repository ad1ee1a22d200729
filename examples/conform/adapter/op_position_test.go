package adapter

var positionAnswers = []example{
	{"case A, moves", "corrections", `{"position":{` + caseA + `},"feet":` + feetA + `}`, `{"moves":` + movesA + `}`},
	// u^2 of the offset 0.03^2 + 0.04^2, and 0.3 m of a slope known to 0.4 mm/m: 0.12.
	{"moves with a target and uncertainty", "corrections", `{"position":{"horizontal":{"offset":"0.1 mm","slope":"0 mm/m","u":{"offset":"0.03 mm","slope":"0.4 mm/m"}},
		"vertical":{"offset":"0.1 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}}},
		"target":{"horizontal":{"offset":"0.3 mm","slope":"0 mm/m","u":{"offset":"0.04 mm","slope":"0 mm/m"}},
		"vertical":{"offset":"0 mm","slope":"1 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}}},"feet":[{"name":"F","x":"300 mm","u":"2 mm"}]}`,
		`{"moves":[{"foot":"F","horizontal":"0.2 mm","vertical":"0.2 mm","u":{"horizontal":"0.13 mm","vertical":"0.002 mm"}}]}`},
	// The same with offset and slope of the horizontal plane wholly against one another.
	{"moves with a correlation", "corrections", `{"position":{"horizontal":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0.12 mm","slope":"0.4 mm/m"}},
		"vertical":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}},
		"correlation":[[1,-1,0,0],[-1,1,0,0],[0,0,1,0],[0,0,0,1]]},"feet":[{"name":"F","x":"300 mm"}]}`,
		`{"moves":[{"foot":"F","horizontal":"0 mm","vertical":"0 mm","u":{"horizontal":"0 mm","vertical":"0 mm"}}]}`},
	// By the law at x = 40: w = 0.136 and -0.228; less what stands at 12, and twice the sag at 6.
	{"case A, dials", "predict", `{"position":{` + caseA + `},"view":"from_stationary","sets":[
		{"probe":{"kind":"rim","carrier":"stationary","station":"40 mm"},"sag":"0.01 mm","at":["12:00","9:00","6:00"]},
		{"probe":{"kind":"displacement","station":"40 mm","gain":-2},"at":["3:00","9:00"]}]}`,
		`{"sets":[{"readings":[{"at":"12:00","value":"0 mm"},{"at":"9:00","value":"0.354 mm"},{"at":"6:00","value":"0.436 mm"}]},
		{"readings":[{"at":"3:00","value":"0 mm"},{"at":"9:00","value":"-0.544 mm"}]}]}`},
	{"case A, roles exchanged", "exchange", `{"position":{` + caseA + `}}`,
		`{"horizontal":{"offset":"0.12 mm","slope":"-0.4 mm/m"},"vertical":{"offset":"0.2 mm","slope":"-0.7 mm/m"}}`},
	{"case A, spacer", "coupling", `{"position":{` + caseA + `},"coupling":{"span":"800 mm"}}`,
		`{"flex":{"stationary":{"horizontal":"0.35 mm/m","vertical":"-0.6 mm/m"},"movable":{"horizontal":"0.05 mm/m","vertical":"-0.1 mm/m"}}}`},
	{"gap", "coupling", `{"position":` + at("0", "0", "0.3", "0") + `,"coupling":{"diameter":"200 mm"}}`, `{"gap":{"opening":"0.06 mm","at":"9:00"}}`},
	{"slope from a gap", "slope_from_gap", `{"opening":"0.06 mm","at":"9:00","diameter":"200 mm"}`, `{"horizontal":"0.3 mm/m","vertical":"0 mm/m"}`},
	{"case A from its flex planes", "from_flex", `{"span":"800 mm","stationary":{"horizontal":"0.35 mm/m","vertical":"-0.6 mm/m"},
		"movable":{"horizontal":"0.05 mm/m","vertical":"-0.1 mm/m"}}`, `{` + caseA + `}`},
	// 0.05 low at the coupling, open by 0.02 at 12 over 100 mm: it falls 0.2 mm/m.
	{"maker's words", "maker_target", `{"high":"-0.05 mm","opening":"0.02 mm","open_at":"12:00","diameter":"100 mm","view":"from_stationary"}`, at("0", "-0.05", "0", "-0.2")},
	{"maker's words at a station", "maker_target", `{"station":"100 mm","to_three":"0.1 mm","opening":"0.02 mm","open_at":"9:00","diameter":"100 mm","view":"from_stationary"}`, at("-0.08", "0", "-0.2", "0")},
}

var positionRefused = []sound{
	{"corrections", `{"position":{` + caseAU + `},"target":{` + caseA + `},"feet":` + feetA + `}`, []change{
		{"no feet", feetA, `[]`, "missing /feet"},
		{"no position", `"position":{` + caseAU + `},`, ``, "missing /position"},
		{"one plane with uncertainties", `"slope":"-0.7 mm/m","u":{"offset":"0.01 mm","slope":"0.02 mm/m"}`, `"slope":"-0.7 mm/m"`, "missing /position/vertical/u"},
		{"the other plane with uncertainties", `"slope":"0.4 mm/m","u":{"offset":"0.01 mm","slope":"0.02 mm/m"}`, `"slope":"0.4 mm/m"`, "missing /position/horizontal/u"},
		{"a target too far to reckon with", `"target":{"horizontal":{"offset":"0.12 mm"`, `"target":{"horizontal":{"offset":"1e10 m"`, "out_of_range /target/horizontal/offset"},
		{"half an uncertainty", `"u":{"offset":"0.01 mm",`, `"u":{`, "missing /position/horizontal/u/offset"},
		{"below zero", `"0.02 mm/m"`, `"-0.02 mm/m"`, "out_of_range /position/horizontal/u/slope"},
		{"three rows", `,[0,0,0,1]]`, `]`, "malformed /position/correlation"},
		{"a row of three", `[0,0,0,1]`, `[0,0,0]`, "malformed /position/correlation/3"},
		{"above one", `[[1,0,0,0],[0,1,0,0]`, `[[1,2,0,0],[2,1,0,0]`, "conflict /position/correlation"},
		{"one-sided", `[[1,0,0,0]`, `[[1,0.5,0,0]`, "conflict /position/correlation/0/1"},
		{"a word in it", `[[1,0,0,0]`, `[["1",0,0,0]`, "malformed /position/correlation/0/0"},
		{"a correlation of nothing", `"target":{`, `"target":{"correlation":[[1,0,0,0],[0,1,0,0],[0,0,1,0],[0,0,0,1]],`, "conflict /target/correlation"},
		{"too far to reckon with", `"offset":"0.12 mm"`, `"offset":"1e10 m"`, "out_of_range /position/horizontal/offset"},
	}},
	{"predict", `{"position":{` + caseA + `},"view":"from_movable","sets":[{"probe":{"kind":"rim","carrier":"movable","station":"0 mm"},"at":["12:00"]}]}`, []change{
		{"no sets", `[{"probe":{"kind":"rim","carrier":"movable","station":"0 mm"},"at":["12:00"]}]`, `[]`, "missing /sets"},
		{"nowhere", `["12:00"]`, `[]`, "missing /sets/0/at"},
		{"no station", `,"station":"0 mm"`, ``, "missing /sets/0/probe/station"},
		{"a sag of a straightedge", `"kind":"rim","carrier":"movable","station":"0 mm"}`, `"kind":"straightedge","carrier":"movable","station":"0 mm"},"sag":"0 mm"`, "conflict /sets/0/sag"},
		{"no such place", `["12:00"]`, `["12.00"]`, "malformed /sets/0/at/0"},
		{"no view", `"view":"from_movable",`, ``, "missing /view"},
	}},
	{"coupling", `{"position":{` + caseA + `},"coupling":{"diameter":"1 m"}}`, []change{
		{"neither diameter nor span", `"diameter":"1 m"`, ``, "missing /coupling"},
		{"a diameter of zero", `"1 m"`, `"0 m"`, "out_of_range /coupling/diameter"},
		{"a span of zero", `"diameter"`, `"span":"0 m","diameter"`, "out_of_range /coupling/span"},
	}},
	{"maker_target", `{"opening":"0 mm","open_at":"3:00","diameter":"1 m","view":"from_movable"}`, []change{
		{"no diameter", `"diameter":"1 m",`, ``, "missing /diameter"},
		{"a diameter of zero", `"1 m"`, `"0 m"`, "out_of_range /diameter"},
	}},
}
