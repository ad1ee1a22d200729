package main

import (
	"encoding/json"
	"testing"
)

// FuzzAnswer: whatever a program writes, the line is taken for one of a result, a
// refusal and a reason, or there is trouble with it that is told.
func FuzzAnswer(f *testing.F) {
	for _, line := range []string{
		`{"seq":1,"result":{}}`, `{"seq":1,"error":{"code":"missing","path":"/a"}}`, `{"seq":"x","skipped":"not done"}`,
		`{"seq":1,"result":[],"error":{}}`, `{"seq":1,"error":null}`, `{"seq":1,"skipped":7}`, `null`, `{}`, `[`, "\xff",
	} {
		f.Add([]byte(line))
	}
	f.Fuzz(func(t *testing.T, line []byte) {
		seq, a, bad := takeApart(line)
		if bad != nil {
			if bad.Kind == "" {
				t.Errorf("%q: trouble of no kind: %+v", line, *bad)
			}
			return
		}
		given := 0
		for _, there := range []bool{a.Result != nil, a.Error != nil, a.Skipped != nil} {
			if there {
				given++
			}
		}
		if given != 1 || !json.Valid(line) {
			t.Errorf("%q is taken for %+v", line, a)
		}
		if _, bad := read(line, seq+"0"); bad == nil || bad.Kind != wrongSeq {
			t.Errorf("%q passes for the answer to another request", line)
		}
	})
}

// FuzzLines: whatever stands in a file of bad lines, it is read or refused, and what is
// read has a name.
func FuzzLines(f *testing.F) {
	f.Add("# remark\nempty\n> \n< {\"seq\":null,\"error\":{\"code\":\"malformed\",\"path\":\"\"}}\n")
	f.Add("> x\n< y\n")
	f.Add("name\n< {\"result\":{}}\n")
	f.Fuzz(func(t *testing.T, text string) {
		all, err := readLines(text)
		if err != nil && all != nil {
			t.Errorf("%v beside %v", all, err)
		}
		for _, l := range all {
			if l.id == "" {
				t.Errorf("a line without a name: %+v", l)
			}
		}
	})
}

// FuzzDifferences: whatever stands in a result, it is held against what is wanted, and
// what is kept of it is short.
func FuzzDifferences(f *testing.F) {
	vectors := []vector{smallOrder(), fourFeet(), stopped(), {Result: json.RawMessage(`{"offset":"1 mm","list":["1:30",1,{"a":null}],"warnings":[{"code":"suspect","path":""}]}`)}}
	for _, result := range []string{
		`{}`, `{"stacks":[{"foot":"A","pieces":[{"thickness":"1e400 mm","count":1000000}]}]}`, `{"kinds":[1],"advice":[{"shims":[{"foot":"A","flat":"1/1e400 mm"}]}]}`,
		stoppedBest, `{"reach":"on_target","ratio":1e308,"moves":[` + moveA + `,` + moveA + `]}`, `{"offset":"1:1e400","list":["12:00",1e999999999,[]],"warnings":[null,{}]}`,
	} {
		f.Add([]byte(result))
	}
	f.Fuzz(func(t *testing.T, result []byte) {
		if !json.Valid(result) || result[0] != '{' || len(result) > mostLine {
			t.Skip("no result")
		}
		for _, v := range vectors {
			for _, d := range v.differences(result) {
				if len(d.At)+len(d.Got) > 2000 {
					t.Fatalf("%s keeps %d bytes: %+.300v", v.Op, len(d.Got), d)
				}
			}
		}
	})
}
