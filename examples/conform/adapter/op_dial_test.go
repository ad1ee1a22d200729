package adapter

var dialAnswers = []example{
	{"quarters", "quarters", `{"at12":"0 mil","at3":"-7 mil","at6":"-14 mil","at9":"-8 mil"}`,
		`{"miss":"1 mil","half":{"horizontal":"0.5 mil","vertical":"7 mil"}}`},
	{"fourth", "fourth", `{"opposite":"3 mil","across":["10 mil","-2 mil"]}`, `{"reading":"5 mil"}`},
	{"mandrel", "mandrel_sag", `{"at12":"0 mil","at6":"-6 mil"}`, `{"sag":"3 mil"}`},
	// The spot under the dial at 3 came there after three quarters of a turn.
	{"runout taken off", "remove_runout", `{"readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.05 mm"}],"t0":"12:00",
		"runout":[{"turned":"0 deg","value":"0 mm"},{"turned":"270 deg","value":"0.02 mm"}]}`,
		`{"readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.03 mm"}]}`},
	{"runout apart", "separate_runout", `{"first":` + at("0.3", "0.2", "0", "0") + `,"second":` + at("0.1", "0.4", "0", "0") + `}`,
		`{"misalignment":` + at("0.2", "0.3", "0", "0") + `,"runout":` + at("0.1", "-0.1", "0", "0") + `}`},
	// Float adds the same to both; droop of 0.01 in all hangs on the difference at 12.
	{"float and droop", "without_float", `{"a":{"diameter":"100 mm","sag":"0.01 mm","readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.2 mm"}]},
		"b":{"diameter":"100 mm","readings":[{"at":"6:00","value":"0.05 mm"},{"at":"9:00","value":"-0.1 mm"}]}}`,
		`{"diameter":"200 mm","readings":[{"at":"12:00","value":"-0.06 mm"},{"at":"3:00","value":"0.3 mm"}]}`},
}

var dialRefused = []sound{
	{"rim_face", `{"view":"from_movable","carrier":"stationary","rim":{"station":"40 mm","readings":` + rimA + `},"face":{"diameter":"150 mm","readings":` + faceA + `}}`, []change{
		{"no carrier", `"carrier":"stationary",`, ``, "missing /carrier"},
		{"a diameter of zero", `"150 mm"`, `"0 mm"`, "out_of_range /face/diameter"},
		{"between the quarters", `"12:00"`, `"12:30"`, "out_of_range /rim/readings/0/at"},
		{"a quarter twice", `"3:00"`, `"6:00"`, "duplicate /rim/readings/2/at"},
		{"no readings", `"face":{"diameter":"150 mm","readings":` + faceA, `"face":{"diameter":"150 mm","readings":[]`, "missing /face/readings"},
		{"a bore that is text", `"station"`, `"bore":"true","station"`, "malformed /rim/bore"},
	}},
	{"reverse", `{"view":"from_movable","carried_by_stationary":{"station":"40 mm","readings":` + rimA + `},"carried_by_movable":{"station":"-50 mm","readings":` + rimA + `}}`, []change{
		{"one station", `"-50 mm"`, `"40 mm"`, "conflict /carried_by_movable/station"},
	}},
	{"fourth", `{"opposite":"3 mil","across":["10 mil","-2 mil"]}`, []change{
		{"nothing across", `"10 mil","-2 mil"`, ``, "missing /across"},
		{"one across", `,"-2 mil"`, ``, "missing /across/1"},
		{"three across", `"-2 mil"`, `"-2 mil","1 mil"`, "conflict /across/2"},
	}},
	{"remove_runout", `{"readings":[{"at":"3:00","value":"0.05 mm"}],"t0":"12:00","runout":[{"turned":"-90 deg","value":"0 mm"}]}`, []change{
		{"a turn that was not measured", `"-90 deg"`, `"91 deg"`, "missing /readings/0/at"},
		{"a turn twice", `"-90 deg","value":"0 mm"}`, `"-90 deg","value":"0 mm"},{"turned":"270 deg","value":"0 mm"}`, "duplicate /runout/1/turned"},
		{"a turn that is no angle", `"-90 deg"`, `"-90 mm"`, "unknown /runout/0/turned"},
		{"no runout", `[{"turned":"-90 deg","value":"0 mm"}]`, `[]`, "missing /runout"},
	}},
	{"without_float", `{"a":{"diameter":"1 m","readings":[{"at":"3:00","value":"0 mm"},{"at":"9:00","value":"0 mm"}]},"b":{"diameter":"1 m","readings":[{"at":"9:00","value":"0 mm"},{"at":"3:00","value":"0 mm"}]}}`, []change{
		{"not opposite", `"b":{"diameter":"1 m","readings":[{"at":"9:00"`, `"b":{"diameter":"1 m","readings":[{"at":"12:00"`, "conflict /b/readings/0/at"},
		{"other sides", `"b":{`, `"b":{"far":true,`, "conflict /b/far"},
	}},
}
