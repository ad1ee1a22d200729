package adapter

import (
	"strings"
	"testing"
)

// What cannot be read is answered without a seq, and what can keeps its own.
func TestUnreadableLines(t *testing.T) {
	for _, row := range []struct{ name, line, seq string }{
		{"empty", "", "null"},
		{"blank", "  ", "null"},
		{"no JSON", "hello", "null"},
		{"cut off", `{"seq":1,"op":"fit","input":{"view":`, "null"},
		{"a list", `[1,"stop"]`, "null"},
		{"text", `"stop"`, "null"},
		{"null", `null`, "null"},
		{"trailing text", `{"seq":1,"op":"stop"} please`, "null"},
		{"two objects", `{"seq":1,"op":"stop"}{"seq":2,"op":"stop"}`, "null"},
		{"a brace too many", `{"seq":1,"op":"stop"}}`, "null"},
		{"a comma too many", `{"seq":1,"op":"stop",}`, "null"},
		{"no seq", `{"op":"stop"}`, "null"},
		{"seq as text", `{"seq":"1","op":"stop"}`, "null"},
		{"seq null", `{"seq":null,"op":"stop"}`, "null"},
		{"seq with a fraction", `{"seq":1.5,"op":"stop"}`, "null"},
		{"seq with an exponent", `{"seq":1e3,"op":"stop"}`, "null"},
		{"seq of digits without an end", `{"seq":` + strings.Repeat("9", 1_000_000) + `,"op":"stop"}`, "null"},
		{"seq of 16 digits", `{"seq":1000000000000000,"op":"stop"}`, "null"},
		{"seq as a list", `{"seq":[1],"op":"stop"}`, "null"},
		{"seq twice", `{"seq":1,"seq":2,"op":"stop"}`, "null"},
		{"op twice", `{"seq":1,"op":"stop","op":"fit"}`, "null"},
		{"input twice", `{"seq":1,"op":"fit","input":{},"input":{}}`, "null"},
		{"no UTF-8", "{\"seq\":1,\"op\":\"st\xffop\"}", "null"},
		{"half a surrogate pair", `{"seq":1,"op":"\ud800"}`, "null"},
		{"a byte order mark", "\ufeff" + `{"seq":1,"op":"stop"}`, "null"},
		{"a control character", "{\"seq\":1,\"op\":\"st\x00op\"}", "null"},
		{"very deep", `{"seq":1,"op":"fit","input":` + strings.Repeat(`{"a":`, 100_000), "null"},
		{"very deep and closed", `{"seq":1,"op":"fit","input":` + strings.Repeat("[", 100_000) + strings.Repeat("]", 100_000) + `}`, "null"},
		{"no op", `{"seq":4}`, "4"},
		{"op is a number", `{"seq":4,"op":5}`, "4"},
		{"a member that nobody knows", `{"seq":4,"op":"stop","inputs":{}}`, "4"},
		{"op without an end", `{"seq":4,"op":"` + strings.Repeat("x", 1_000_000), "null"},
		{"a name without an end", `{"seq":4,"op":"stop","` + strings.Repeat("x", 1_000_000) + `":1}`, "4"},
	} {
		t.Run(row.name, func(t *testing.T) {
			lines := served(t, row.line+"\n"+`{"seq":9,"op":"stop"}`+"\n")
			if len(lines) != 2 || lines[1] != `{"seq":9,"result":{}}` {
				t.Fatalf("the program does not go on: %q", lines)
			}
			a := readReply(t, lines[0])
			if string(a.Seq) != row.seq || a.Error == nil || *a.Error != (refusal{"malformed", ""}) {
				t.Errorf("got %s", lines[0])
			}
		})
	}
}

// This is inside what a decoder reads, and no input.
func TestDeepInput(t *testing.T) {
	deep := strings.Repeat("[", 5000) + strings.Repeat("]", 5000)
	a := ask(t, "fit", `{"view":"from_movable","sets":`+deep+`}`)
	if a.Error == nil || *a.Error != (refusal{"malformed", "/sets/0"}) {
		t.Errorf("got %+v", a.Error)
	}
}

func TestLongLines(t *testing.T) {
	padded := func(size int) string {
		const head, tail = `{"seq":1,"op":"mandrel_sag","input":{"at12":"3 mil","at6":"-3 mil"`, `}}`
		return head + strings.Repeat(" ", size-len(head)-len(tail)) + tail
	}
	got := served(t, padded(longest)+"\n"+padded(longest+1)+"\n"+padded(2*longest)+"\n"+padded(longest)+"\n"+padded(longest+1))
	if len(got) != 5 {
		t.Fatalf("%d answers for 5 lines", len(got))
	}
	for i, fits := range []bool{true, false, false, true, false} {
		a := readReply(t, got[i])
		if fits && string(a.Seq) != "1" || !fits && (string(a.Seq) != "null" || *a.Error != refusal{"malformed", ""}) {
			t.Errorf("line %d: got %.200s", i, got[i])
		}
		if strings.Contains(got[i], errTooLong.Error()) == fits {
			t.Errorf("line %d does not say what is wrong: %.200s", i, got[i])
		}
	}
}
