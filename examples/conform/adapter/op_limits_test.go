package adapter

var limitAnswers = []example{
	// 2 pi rad/s: 60 rpm
	{"rubbing, spacer", "rubbing_limits", `{"sliding":"6.283185307179586 mm/s","speed":"60 rpm","coupling":{"diameter":"200 mm","span":"500 mm"}}`, `{"flex":"10 mm/m"}`},
	{"rubbing, short", "rubbing_limits", `{"sliding":"6.283185307179586 mm/s","speed":"60 rpm","coupling":{"diameter":"200 mm"}}`, `{"offset":"1 mm","slope":"10 mm/m"}`},
	{"next faster row", "limits_at", `{"rows":[{"speed":"3000 rpm","offset":"0.05 mm"},{"speed":"1500 rpm","offset":"0.08 mm"}],"speed":"1501 rpm"}`, `{"offset":"0.05 mm"}`},
	// EASA AR100-2015, table 2-4 (read)
	{"shaft end", "shaft_runout", `{"diameter":"42 mm"}`, `{"over":"30 mm","up_to":"50 mm","limit":"0.05 mm"}`},
	{"on its limit", "judge", `{"position":` + at("0.13", "0.04", "0.1", "0") + `,"target":` + at("0.1", "0", "0", "0") + `,"limits":{"offset":"0.05 mm","slope":"0.2 mm/m"},"coupling":{}}`,
		`{"outcome":"within","governs":{"of":"offset","plane":"both"},"items":[
		{"of":"offset","plane":"both","found":"0.05 mm","limit":"0.05 mm","ratio":1},{"of":"slope","plane":"both","found":"0.1 mm/m","limit":"0.2 mm/m","ratio":0.5}]}`},
	// u of (0.03, 0.04) along itself: 0.6 * 0.01 and 0.8 * 0
	{"with uncertainty", "judge", `{"position":{"horizontal":{"offset":"0.03 mm","slope":"0 mm/m","u":{"offset":"0.01 mm","slope":"0 mm/m"}},
		"vertical":{"offset":"0.04 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}}},"limits":{"offset":"0.04 mm"}}`,
		`{"outcome":"outside","governs":{"of":"offset","plane":"both"},"items":[{"of":"offset","plane":"both","found":"0.05 mm","limit":"0.04 mm","ratio":1.25,"u":"0.006 mm","probability":1e-9}],"at_least":1e-9}`}, // the plane that is known stands on the limit: the chord is a point
	{"as sure as it has to be", "judge", `{"position":{"horizontal":{"offset":"0.03 mm","slope":"0 mm/m","u":{"offset":"0.01 mm","slope":"0 mm/m"}},
		"vertical":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}}},"limits":{"offset":"0.04 mm"},"probability":0.9}`,
		`{"outcome":"undecided","governs":{"of":"offset","plane":"both"},"items":[{"of":"offset","plane":"both","found":"0.03 mm","limit":"0.04 mm","ratio":0.75,"u":"0.01 mm","probability":0.841344746}],"at_least":0.841344746}`},
	{"of one spare reading", "judge", `{"position":{"horizontal":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0.04 mm","slope":"0 mm/m"}},
		"vertical":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}}},"limits":{"offset":"0.04 mm"},"dof":1}`,
		`{"outcome":"within","governs":{"of":"offset","plane":"both"},"items":[{"of":"offset","plane":"both","found":"0 mm","limit":"0.04 mm","ratio":0,"u":"0.04 mm","probability":0.5}],"at_least":0.5}`},
	{"drawn in", "judge", `{"position":{"horizontal":{"offset":"0.03 mm","slope":"0 mm/m","u":{"offset":"0.01 mm","slope":"0 mm/m"}},
		"vertical":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}}},"limits":{"offset":"0.04 mm"},"guard":1.5}`,
		`{"outcome":"undecided","governs":{"of":"offset","plane":"both"},"items":[{"of":"offset","plane":"both","found":"0.03 mm","limit":"0.04 mm","ratio":0.75,"u":"0.01 mm","probability":0.841344746}],"at_least":0.841344746}`},
	{"each plane of a spacer", "judge", `{"position":{` + caseA + `},"limits":{"flex":"0.5 mm/m","per_plane":true},"coupling":{"span":"800 mm"}}`,
		`{"outcome":"outside","governs":{"of":"flex_stationary","plane":"vertical"},"items":[
		{"of":"flex_stationary","plane":"horizontal","found":"0.35 mm/m","limit":"0.5 mm/m","ratio":0.7},{"of":"flex_stationary","plane":"vertical","found":"0.6 mm/m","limit":"0.5 mm/m","ratio":1.2},
		{"of":"flex_movable","plane":"horizontal","found":"0.05 mm/m","limit":"0.5 mm/m","ratio":0.1},{"of":"flex_movable","plane":"vertical","found":"0.1 mm/m","limit":"0.5 mm/m","ratio":0.2}]}`},
}

var limitRefused = []sound{
	{"judge", `{"position":{` + caseA + `},"limits":{"offset":"1 mm","slope":"1 mm/m","flex":"1 mm/m"},"coupling":{"span":"1 m"}}`, []change{
		{"no limit for a spacer", `,"flex":"1 mm/m"`, ``, "missing /limits/flex"},
		{"a limit of zero", `"flex":"1 mm/m"`, `"flex":"0 mm/m"`, "out_of_range /limits/flex"},
		{"a span of zero is not short", `"span":"1 m"`, `"span":"0 m"`, "out_of_range /coupling/span"},
		{"no limits", `"limits":{"offset":"1 mm","slope":"1 mm/m","flex":"1 mm/m"},`, ``, "missing /limits"},
		{"yes is not true", `"limits":{`, `"limits":{"per_plane":"yes",`, "malformed /limits/per_plane"},
	}},
	{"judge", `{"position":{` + caseA + `},"limits":{"offset":"1 mm"}}`, []change{
		{"a limit of zero, though it is for other couplings", `"1 mm"`, `"1 mm","flex":"0 mm/m"`, "out_of_range /limits/flex"},
		{"no limit for a short coupling", `"offset":"1 mm"`, ``, "missing /limits/offset"},
	}},
	{"rubbing_limits", `{"sliding":"1 m/s","speed":"1 Hz","coupling":{"diameter":"1 m"}}`, []change{
		{"no diameter", `"diameter":"1 m"`, ``, "missing /coupling/diameter"},
		{"at rest", `"1 Hz"`, `"0 Hz"`, "out_of_range /speed"},
	}},
	{"limits_at", `{"rows":[{"speed":"1000 rpm","offset":"1 mm"},{"speed":"2000 rpm","offset":"0.5 mm"}],"speed":"2000 rpm"}`, []change{
		{"faster than the table", `"speed":"2000 rpm"}`, `"speed":"2001 rpm"}`, "out_of_range /speed"},
		{"a limit of zero", `"0.5 mm"`, `"0 mm"`, "out_of_range /rows/1/offset"},
		{"a hole", `,"offset":"0.5 mm"`, ``, "missing /rows/1/offset"},
		{"one speed twice", `"1000 rpm"`, `"2000 rpm"`, "duplicate /rows/1/speed"},
		{"no rows", `[{"speed":"1000 rpm","offset":"1 mm"},{"speed":"2000 rpm","offset":"0.5 mm"}]`, `[]`, "missing /rows"},
	}},
	{"shaft_runout", `{"diameter":"42 mm"}`, []change{
		{"off the table", `42`, `6`, "out_of_range /diameter"},
		{"no shaft", `42 mm`, `0 mm`, "out_of_range /diameter"},
	}},
}
