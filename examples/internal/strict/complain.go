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
	say := func(what error) { fmt.Fprintln(w, printable(cut(name+": "+what.Error()))) }
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

// printable spells out what would break the line or steer the terminal: a path
// may hold any name that stands in a document.
func printable(line string) string {
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
