package adapter

var growthAnswers = []example{
	// McMillan, Rotating Machinery, 2004, example 8-3 (read): 17 in by 28 F and 22 in by
	// 60 F at 6.3e-6 per F are 2.9988 and 8.316 mil, 20 in apart.
	{"two legs", "growth", `{"supports":[
		{"x":"0 in","pieces":[{"height":"17 in","material":{"name":"steel","expansion":"6.3 um/m/°F"},"rise":"28 °F"}]},
		{"x":"20 in","pieces":[{"height":"22 in","material":{"name":"steel","expansion":"6.3 um/m/°F"},"cold":"78 °F","profile":[{"up":"0 in","running":"138 °F"}]}]}]}`,
		`{"horizontal":{"offset":"0 mm","slope":"0 mm/m"},"vertical":{"offset":"2.9988 mil","slope":"0.26586 mil/in"}}`},
	// Legs of 1 m grow 0.1 and 0.3: up 0.2, and 1000/500 of the difference towards 3.
	{"legs that differ", "growth", `{"within":"0 mm","supports":[{"x":"0 mm","track":"500 mm",
		"three":[{"height":"1 m","material":{"expansion":"10 um/m/K"},"rise":"10 K"}],"nine":[{"height":"1 m","material":{"expansion":"10 um/m/K"},"rise":"30 K"}]},
		{"x":"1 m","measured":{"by":{"horizontal":"0.4 mm","vertical":"0.2 mm"}}}]}`, at("0.4", "0.2", "0", "0")},
	{"measured with uncertainty", "growth", `{"supports":[{"x":"0 mm","measured":{"by":{"horizontal":"0 mm","vertical":"0.1 mm"},"u":{"vertical":"0.01 mm"}}},
		{"x":"1 m","measured":{"by":{"horizontal":"0 mm","vertical":"0.1 mm"}}}]}`,
		`{"horizontal":{"offset":"0 mm","slope":"0 mm/m","u":{"offset":"0 mm","slope":"0 mm/m"}},"vertical":{"offset":"0.1 mm","slope":"0 mm/m","u":{"offset":"0.01 mm","slope":"0.01 mm/m"}}}`},
	{"cold target", "cold_target", `{"stationary":` + at("0", "0.1", "0", "0.2") + `,"movable":` + at("0", "0.3", "0", "0.1") + `}`, at("0", "-0.2", "0", "0.1")},
	{"running", "running", `{"cold":` + at("0.1", "-0.2", "0", "0.1") + `,"stationary":` + at("0", "0.1", "0", "0.2") + `,"movable":` + at("0", "0.3", "0", "0.1") + `}`, at("0.1", "0", "0", "0")},
}

var growthRefused = []sound{
	{"growth", soundGrowth, []change{
		{"one support", soundGrowth, `{"supports":[{"x":"0 mm","measured":{"by":{"horizontal":"0 mm","vertical":"0 mm"}}}]}`, "missing /supports"},
		{"no way to grow", `"measured":{"by":{"horizontal":"0 mm","vertical":"0.06 mm"}}`, `"pieces":[]`, "missing /supports/2/pieces"},
		{"nothing at all", `,"measured":{"by":{"horizontal":"0 mm","vertical":"0.06 mm"}}`, ``, "missing /supports/2"},
		{"two ways", `"x":"2 m"`, `"x":"2 m","pieces":[{"height":"1 m","material":{"expansion":"10 um/m/K"},"rise":"1 K"}]`, "conflict /supports/2/measured"},
		{"a track of pieces", `"x":"0 m"`, `"x":"0 m","track":"0 mm"`, "conflict /supports/0/track"},
		{"a rise beside a profile", `"cold"`, `"rise":"0 K","cold"`, "conflict /supports/1/three/0/rise"},
		{"cold beside a rise", `"rise":"5 K"`, `"rise":"5 K","cold":"20 degC"`, "conflict /supports/0/pieces/0/cold"},
		{"no rise", `,"rise":"5 K"`, ``, "missing /supports/0/pieces/0/rise"},
		{"no cold", `"cold":"20 degC",`, ``, "missing /supports/1/three/0/cold"},
		{"no spots", `[{"up":"0 m","running":"25 degC"}]`, `[]`, "missing /supports/1/three/0/profile"},
		{"a leg without the other", `"nine":[{"height":"1 m","material":{"expansion":"10 um/m/K"},"rise":"5 K"}],`, ``, "missing /supports/1/nine"},
		{"the other leg alone", `"three":[{"height":"1 m","material":{"expansion":"10 um/m/K"},"cold":"20 degC","profile":[{"up":"0 m","running":"25 degC"}]}],`, ``, "missing /supports/1/three"},
		{"no track", `,"track":"1 m"`, ``, "missing /supports/1/track"},
		{"a track of zero", `"track":"1 m"`, `"track":"0 m"`, "out_of_range /supports/1/track"},
		{"no height", `"height":"1 m"`, `"height":"0 m"`, "out_of_range /supports/0/pieces/0/height"},
		{"does not expand", `"10 um/m/K"`, `"0 um/m/K"`, "out_of_range /supports/0/pieces/0/material/expansion"},
		{"off the line", `"vertical":"0.06 mm"`, `"vertical":"0.6 mm"`, "conflict /supports/1/x"},
		{"at one station", `"2 m"`, `"1 m"`, "conflict /supports/2/x"},
		{"less than nothing off", `"supports"`, `"within":"-1 mm","supports"`, "out_of_range /within"},
	}},
	{"running", `{"cold":{` + caseA + `},"stationary":{` + caseA + `},"movable":{` + caseA + `}}`, []change{
		{"no growth", `,"movable":{` + caseA + `}`, ``, "missing /movable"},
	}},
}
