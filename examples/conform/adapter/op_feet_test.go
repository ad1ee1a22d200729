package adapter

var footAnswers = []example{
	// One pad low by 0.1 on a rectangle: that foot and the one diagonally across lift, over
	// 0.02 that all have. Either of the two, or half of it under each.
	{"soft diagonal", "soft_foot", `{"height":"250 mm","feet":` + surveyA + `}`,
		`{"common":"0.02 mm","worst":"0.1 mm","feet":[{"foot":"A","excess":"0.1 mm","soft":true},{"foot":"B","excess":"0 mm","soft":false},
		{"foot":"C","excess":"0 mm","soft":false},{"foot":"D","excess":"0.1 mm","soft":true}],"kinds":["parallel"],
		"advice":[{"shims":[{"foot":"A","flat":"0.1 mm"}]},{"shims":[{"foot":"D","flat":"0.1 mm"}]},{"shims":[{"foot":"A","flat":"0.05 mm"},{"foot":"D","flat":"0.05 mm"}]}]}`},
	{"no limit at all is not the default", "soft_foot", `{"height":"250 mm","limits":{"act":"0 mm"},"feet":[
		{"name":"A","x":"0 mm","y":"-200 mm","lift":"0.01 mm"},{"name":"B","x":"0 mm","y":"200 mm","lift":"0 mm"},{"name":"C","x":"600 mm","y":"-200 mm","lift":"0 mm"},{"name":"D","x":"600 mm","y":"200 mm","lift":"0 mm"}]}`,
		`{"common":"0 mm","worst":"0.01 mm","feet":[{"foot":"A","excess":"0.01 mm","soft":true},{"foot":"B","excess":"0 mm","soft":false},{"foot":"C","excess":"0 mm","soft":false},{"foot":"D","excess":"0 mm","soft":false}],"kinds":["parallel","angular"],"advice":[]}`},
	// Two equal shims at one end lift that end alone: 0.1 at x = 0, nothing at 1 m.
	{"shims under one end", "shim_shift", `{"height":"250 mm","feet":[{"name":"A","x":"0 mm","y":"-200 mm"},{"name":"B","x":"0 mm","y":"200 mm"},{"name":"C","x":"1 m","y":"-200 mm"},{"name":"D","x":"1 m","y":"200 mm"}],
		"shims":[{"foot":"A","flat":"0.1 mm"},{"foot":"B","flat":"0.1 mm"}]}`, `{"up":"0.1 mm","slope":"-0.1 mm/m","sideways":"0 mm"}`},
	// 0.06 + 180/250 * 0.02, and twice 0.06
	{"lift from the shaft", "lift_at_shaft", `{"y":"180 mm","up":"0.06 mm","sideways":"-0.02 mm","height":"250 mm","across":"-180 mm"}`, `{"rolling":"0.0744 mm","hinged":"0.12 mm"}`},
	{"hinged alone", "lift_at_shaft", `{"y":"180 mm","up":"0.06 mm","across":"-180 mm"}`, `{"hinged":"0.12 mm"}`},
	{"pipes", "pipe_strain", `{"limit":"0.003 in","releases":[{"what":"suction","horizontal":"1 mil","vertical":"-3 mil"},{"what":"discharge","horizontal":"3.1 mil","vertical":"0 mil"}]}`,
		`{"strains":[{"what":"suction","largest":"3 mil","over":false},{"what":"discharge","largest":"3.1 mil","over":true}]}`},
	// 2 + 0.62 is wanted; 2 + 0.49 misses by 0.13, and the pack of 2 stays.
	{"packs", "shims", `{"stock":[{"marked":"0.5 mm","measured":"0.49 mm","count":4}],"orders":[{"foot":"A","correction":"0.62 mm","now":[{"marked":"2 mm","count":1}]}]}`,
		`{"stacks":[{"foot":"A","pieces":[{"thickness":"2 mm","count":1},{"thickness":"0.49 mm","count":1}]}]}`},
	{"pieces of one thickness", "shims", `{"stock":[{"marked":"0.5 mm","count":2}],"rule":{"error":"0 mm","pieces":2,"keep":"1 mm"},"orders":[{"foot":"A","correction":"0.5 mm","soft_foot":"0.5 mm"},{"foot":"B","correction":"-1 mm"}]}`,
		`{"stacks":[{"foot":"A","pieces":[{"thickness":"0.5 mm","count":2}]},{"foot":"B","pieces":[]}]}`},
}

var footRefused = []sound{
	{"soft_foot", `{"height":"250 mm","feet":` + surveyA + `}`, []change{
		{"neither lift nor gaps", `,"lift":"0.02 mm"`, ``, "missing /feet/1/lift"},
		{"both", `"lift":"0.12 mm"`, `"lift":"0 mm","gaps":[{"x":"0 mm","y":"0 mm","gap":"0 mm"},{"x":"1 mm","y":"0 mm","gap":"0 mm"},{"x":"0 mm","y":"1 mm","gap":"0 mm"}]`, "conflict /feet/0/lift"},
		{"no gaps", `"lift":"0.12 mm"`, `"gaps":[]`, "missing /feet/0/gaps"},
		{"a limit below zero", `"height"`, `"limits":{"taper":"-1 mm"},"height"`, "out_of_range /limits/taper"},
		{"a foot without a name", `"name":"B"`, `"name":""`, "missing /feet/1/name"},
		{"a name twice", `"name":"B"`, `"name":"A"`, "duplicate /feet/1/name"},
		{"no height", `"250 mm"`, `"0 mm"`, "out_of_range /height"},
	}},
	{"shim_shift", `{"height":"1 m","feet":[{"name":"A","x":"0 m","y":"0 m"},{"name":"B","x":"1 m","y":"0 m"},{"name":"C","x":"0 m","y":"1 m"}],"shims":[{"foot":"A","flat":"1 mm"}]}`, []change{
		{"under no foot", `"foot":"A"`, `"foot":"D"`, "unknown /shims/0/foot"},
		{"no shims", `"shims":[{"foot":"A","flat":"1 mm"}]`, `"shims":{}`, "malformed /shims"},
	}},
	{"lift_at_shaft", `{"y":"1 m","up":"1 mm","sideways":"0 mm","height":"1 m"}`, []change{
		{"neither height nor across", `,"height":"1 m"`, ``, "missing "},
		{"no sideways", `"sideways":"0 mm",`, ``, "missing /sideways"},
		{"under the shaft", `"y":"1 m"`, `"y":"0 m"`, "out_of_range /y"},
		{"on one side", `"height":"1 m"`, `"across":"1 m"`, "conflict /across"},
	}},
	{"pipe_strain", `{"limit":"1 mm","releases":[{"what":"suction","horizontal":"0 mm","vertical":"0 mm"}]}`, []change{
		{"a limit of zero", `"1 mm"`, `"0 mm"`, "out_of_range /limit"},
		{"nothing released", `[{"what":"suction","horizontal":"0 mm","vertical":"0 mm"}]`, `[]`, "missing /releases"},
	}},
	{"shims", `{"stock":[{"marked":"0.5 mm","measured":"0.49 mm","count":4}],"rule":{"pieces":4},"orders":[{"foot":"A","correction":"0.62 mm","now":[{"marked":"2 mm","count":1}]}]}`, []change{
		{"no pieces", `"pieces":4`, `"pieces":0`, "out_of_range /rule/pieces"},
		{"half a piece", `"pieces":4`, `"pieces":4.5`, "malformed /rule/pieces"},
		{"a count as text", `"count":4`, `"count":"4"`, "malformed /stock/0/count"},
		{"a count below zero", `"count":4`, `"count":-4`, "out_of_range /stock/0/count"},
		{"more than can be counted", `"count":4`, `"count":1e300`, "out_of_range /stock/0/count"},
		{"measured as nothing", `"0.49 mm"`, `"0 mm"`, "out_of_range /stock/0/measured"},
		{"no thickness", `"marked":"2 mm",`, ``, "missing /orders/0/now/0/marked"},
		{"none of them lie there", `"count":1`, `"count":0`, "out_of_range /orders/0/now/0/count"},
		{"no orders", `[{"foot":"A","correction":"0.62 mm","now":[{"marked":"2 mm","count":1}]}]`, `[]`, "missing /orders"},
		{"no foot", `"foot":"A"`, `"foot":""`, "missing /orders/0/foot"},
	}},
}
