package strict

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode"

	"example.org/collinear/units"
)

// Complain prints one line for each fault of the document of this name, and for an
// error that is none.
func Complain(w io.Writer, name string, err error) {
	say := func(what error) { fmt.Fprintln(w, Printable(cut(name+": "+what.Error()))) }
	all := units.Faults(err)
	for _, fault := range all {
		say(fault)
	}
	if len(all) == 0 {
		say(err)
	}
}

// cut ends a line that is far too long: a path may hold a name as long as the
// document.
func cut(line string) string {
	const most = 2000 // bytes
	if len(line) <= most {
		return line
	}
	return strings.ToValidUTF8(line[:most], "") + "..."
}

// Printable spells out what would break a line or steer the terminal: names, notes
// and paths may hold anything that stands in a document.
func Printable(line string) string {
	var out strings.Builder
	for _, r := range line {
		if unicode.IsGraphic(r) {
			out.WriteRune(r)
		} else {
			out.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
		}
	}
	return out.String()
}
