package strict_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// large leaves room for what a document may not have too much of.
var large = strict.Bounds{Size: 4 << 20, Depth: 8}

// A document without an end of what nobody needs is refused for that, and with one
// fault where nothing behind it can be read.
func TestRefusedAsAWhole(t *testing.T) {
	for _, row := range []struct{ name, doc, want string }{
		{"a list in a list, for ever", strings.Repeat("[", 100_000), "out_of_range " + strings.Repeat("/0", large.Depth)},
		{"an object in an object, for ever", strings.Repeat(`{"a":`, 100_000), "out_of_range " + strings.Repeat("/a", large.Depth)},
		{"one byte too long", strings.Repeat(" ", large.Size+1), "out_of_range "},
		{"text without an end", `{"name":"` + strings.Repeat("x", 1_000_000), "malformed /name"},
	} {
		var dst tape
		if got := listed(strict.Read([]byte(row.doc), large, "a tape", &dst)); got != row.want {
			t.Errorf("%s: got %.200s, want %s", row.name, got, row.want)
		}
	}
}

// A value as long as the document is one fault, whose message fits on a line.
func TestLongValues(t *testing.T) {
	const million = 1_000_000
	for _, row := range []struct{ name, swap, by, want string }{
		{"digits of a number", `-2.5e-1`, strings.Repeat("9", million), "out_of_range /gain"},
		{"digits of a whole number", `4`, strings.Repeat("9", million), "out_of_range /count"},
		{"digits behind the point of a whole number", `4`, "4.5" + strings.Repeat("9", million), "malformed /count"},
		{"an exponent that nothing holds", `-2.5e-1`, "1e999999999999999999", "out_of_range /gain"},
		{"digits of an exponent", `-2.5e-1`, "1e" + strings.Repeat("9", million), "out_of_range /gain"},
		{"digits of a length", `5 7/16`, strings.Repeat("9", million), "malformed /at"},
		{"digits of a fraction", `5 7/16`, "1/" + strings.Repeat("9", million), "malformed /at"},
		{"exponent of a length", `5 7/16`, "1e999999999", "out_of_range /at"},
		{"numbers in a list for a number", `-2.5e-1`, "[" + strings.Repeat("1,", million) + "1]", "malformed /gain"},
		{"spaces", `-2.5e-1`, "[" + strings.Repeat(" ", million) + "]", "malformed /gain"},
	} {
		doc := strings.Replace(sound, row.swap, row.by, 1) + "}"
		var dst tape
		err := strict.Read([]byte(doc), large, "a tape", &dst)
		if got := listed(err); got != row.want {
			t.Errorf("%s: got %.200s, want %s", row.name, got, row.want)
		}
		if err != nil && len(err.Error()) > 400 {
			t.Errorf("%s: a message of %d bytes", row.name, len(err.Error()))
		}
	}
}

// A small exponent is zero, which is what the nearest number is.
func TestNumberTooSmall(t *testing.T) {
	var dst tape
	err := strict.Read([]byte(strings.Replace(sound, `-2.5e-1`, "1e-999999999", 1)+"}"), large, "a tape", &dst)
	if err != nil || dst.Gain != 0 {
		t.Errorf("got %v, %v", dst.Gain, err)
	}
}

// Of a document of nothing but faults, Most are told and that there are more.
func TestManyFaults(t *testing.T) {
	many := func(text string) string { return strings.TrimSuffix(strings.Repeat(text+",", 5*strict.Most), ",") }
	for _, row := range []struct{ name, doc, first string }{
		{"no quantities", sound + `,"marks":[` + many(`"x"`) + `]}`, "malformed /marks/0"},
		{"no lists", sound + `,"rows":[` + many(`1`) + `]}`, "malformed /rows/0"},
		{"no numbers in a list of lists", sound + `,"rows":[[` + many(`""`) + `]]}`, "malformed /rows/0/0"},
		{"objects without what they need", sound + `,"others":[` + many(`{}`) + `]}`, "missing /others/0/at"},
		{"unknown fields", sound + `,` + many(`"a":1`) + `}`, "unknown /a"},
		{"a field again and again", sound + `,` + many(`"at":"1 mm"`) + `}`, "duplicate /at"},
	} {
		var dst tape
		err := strict.Read([]byte(row.doc), large, "a tape", &dst)
		all := units.Faults(err)
		if len(all) != strict.Most+1 {
			t.Errorf("%s: %d faults, want %d and one", row.name, len(all), strict.Most)
			continue
		}
		if got := fmt.Sprint(all[0].Code, " ", all[0].Path); got != row.first {
			t.Errorf("%s: first %s, want %s", row.name, got, row.first)
		}
		if last := all[strict.Most]; last.Code != units.OutOfRange || last.Path != "" || last.Value != "more" {
			t.Errorf("%s: last %v, want that there are more", row.name, last)
		}
	}
}

// As many faults as are told are told without a word of more.
func TestAllFaultsThatAreTold(t *testing.T) {
	var f strict.Faults
	for i := range strict.Most {
		f.Adopt(&units.Fault{Code: units.Missing, Path: "/x"}, func(string) string { return strict.Step("/list", i) })
	}
	if len(f) != strict.Most || f[strict.Most-1].Path != fmt.Sprint("/list/", strict.Most-1) {
		t.Fatalf("%d faults, the last %v", len(f), f[len(f)-1])
	}
	f.Adopt(errors.Join(&units.Fault{Path: "/y"}, &units.Fault{Path: "/z"}), func(path string) string { return path })
	f.Add(units.Missing, "/z", "", "a value")
	if len(f) != strict.Most+1 || f[strict.Most].Value != "more" {
		t.Errorf("%d faults, the last %v", len(f), f[len(f)-1])
	}
}

// A name as long as the document does not make a line as long.
func TestComplainIsShort(t *testing.T) {
	var out bytes.Buffer
	strict.Complain(&out, "task", &units.Fault{Code: units.Unknown, Path: "/" + strings.Repeat("°", 100_000), Want: "a field"})
	if line := out.String(); len(line) > 2100 || !strings.HasSuffix(line, "°...\n") || strings.Contains(line, "\ufffd") || strings.Contains(line, `\u`) || strings.Count(line, "\n") != 1 {
		t.Errorf("%d bytes, %q", len(line), line[max(0, len(line)-20):])
	}
}

func TestShortLooksAtTheBeginning(t *testing.T) {
	for _, row := range []struct{ name, in, want string }{
		{"a word behind a thousand spaces", "5" + strings.Repeat(" ", 1000) + "mm", "5..."},
		{"nothing but spaces", strings.Repeat(" ", 1001), "..."},
		{"words without an end", strings.Repeat("ab ", 1_000_000), strings.Repeat("ab ", 20) + "..."},
	} {
		if got := strict.Short(row.in); got != row.want {
			t.Errorf("%s: got %q, want %q", row.name, got, row.want)
		}
	}
}
