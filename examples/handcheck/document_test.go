package main

import (
	"os"
	"reflect"
	"regexp"
	"strings"
	"testing"
)

// SHEET.md names every member of a problem that a person writes by hand.
func TestEveryMemberIsDocumented(t *testing.T) {
	page, err := os.ReadFile("SHEET.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range membersOf(reflect.TypeFor[head](), map[reflect.Type]bool{}) {
		if !strings.Contains(string(page), "`"+name+"`") {
			t.Errorf("%s is not in SHEET.md", name)
		}
	}
}

// membersOf lists the JSON names of a type and of all that it holds.
func membersOf(typ reflect.Type, seen map[reflect.Type]bool) []string {
	for typ.Kind() == reflect.Pointer || typ.Kind() == reflect.Slice {
		typ = typ.Elem()
	}
	if typ.Kind() != reflect.Struct || seen[typ] {
		return nil
	}
	seen[typ] = true
	var names []string
	for i := range typ.NumField() {
		name, _, _ := strings.Cut(typ.Field(i).Tag.Get("json"), ",")
		if name == "" { // of a type that reads itself from text
			continue
		}
		names = append(append(names, name), membersOf(typ.Field(i).Type, seen)...)
	}
	return names
}

// Every form of an answer that SHEET.md shows is read as it says.
func TestAnswersOfThePage(t *testing.T) {
	for _, row := range []struct{ line, answer string }{
		{"vertical.offset", "0.18 mm high"}, {"vertical.offset", "0.18 mm"}, {"horizontal.offset", "-0.12 mm"}, {"horizontal.offset", "0.12 mm towards 9 o'clock"},
		{"vertical.foot.inboard.correction", "raise 6 mil"}, {"horizontal.foot.inboard.correction", "push 0.03 mm towards 3 o'clock"},
		{"vertical.slope", "0.5 mm/m open at 12 o'clock"}, {"horizontal.slope", "0.33 mm/m open at 9 o'clock"},
	} {
		if got := check(answered(row.line, row.answer)(t, builtIn)); got.code != right {
			t.Errorf("%s %q: ends with %d\n%s%s", row.line, row.answer, got.code, got.stdout, got.stderr)
		}
	}
}

// The commands that the page and the program's own comment show exist.
func TestCommandsOfThePage(t *testing.T) {
	for _, name := range []string{"SHEET.md", "main.go"} {
		page, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		commands := regexp.MustCompile(`go run \./examples/handcheck([^\n>"]*)`).FindAllStringSubmatch(string(page), -1)
		if len(commands) < 2 {
			t.Errorf("%s shows %q", name, commands)
		}
		for _, found := range commands {
			line, _, _ := strings.Cut(found[1], "   ")
			args := strings.Fields(strings.ReplaceAll(strings.ReplaceAll(line, "my.json", "-"), "mine.json", "-"))
			if got := play(string(builtIn), args...); got.code > wrong {
				t.Errorf("%s: %q ends with %d: %s", name, args, got.code, got.stderr)
			}
		}
	}
}

// The file that the page shows is marked as it says: the rear feet are wrong, and
// by hand they have to go 0.10 mm + 0.5 mm/m * 700 mm down.
func TestFileOfThePage(t *testing.T) {
	page, err := os.ReadFile("SHEET.md")
	if err != nil {
		t.Fatal(err)
	}
	_, block, _ := strings.Cut(strings.ReplaceAll(string(page), "\r\n", "\n"), "```json\n")
	block, _, _ = strings.Cut(block, "```")
	got := play(block, "-check", "-")
	if got.code != wrong || strings.Count(got.stdout, "DOES NOT FOLLOW") != 1 {
		t.Errorf("ends with %d\n%s%s", got.code, got.stdout, got.stderr)
	}
	inOrder(t, got.stdout, []string{"Condensate pump", "written lower 0.20 mm expected lower 0.20 mm follows, within", "written leave expected lower 0.45 mm DOES NOT FOLLOW"})
}
