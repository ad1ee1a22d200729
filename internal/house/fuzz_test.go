package house

import (
	"go/ast"
	"go/doc"
	"io/fs"
	"regexp"
	"strings"
	"testing"
)

// reads are the functions that make values out of text.
var reads = regexp.MustCompile(`^(Parse|Read|Decode|Unmarshal)`)

func TestEveryReaderIsFuzzed(t *testing.T) { report(t, readerFaults(t, ours)) }

// readerFaults asks that each exported type that reads itself from text, and each
// exported function that reads, is named in a test file that has a fuzz target. What a
// target does with it, a person has to see; that it was forgotten shows here.
func readerFaults(t *testing.T, tree fs.FS) []string {
	t.Helper()
	return fuzzFaults(t, tree, func(s source) bool { return true }, func(f *doc.Func) bool {
		return f.Recv == "" && reads.MatchString(f.Name) || f.Name == "UnmarshalJSON" || f.Name == "UnmarshalText"
	})
}

func TestEveryEntryPointIsFuzzed(t *testing.T) { report(t, entryFaults(t, ours)) }

// entryFaults asks the same for each exported function and method of the library but
// the text family.
func entryFaults(t *testing.T, tree fs.FS) []string {
	t.Helper()
	return fuzzFaults(t, tree, func(s source) bool { return !s.internal() && !s.example() }, func(f *doc.Func) bool {
		return !textFamily.MatchString(f.Name) && !must.MatchString(f.Name)
	})
}

// fuzzFaults lists what of the packages has to be named and is not.
func fuzzFaults(t *testing.T, tree fs.FS, in func(source) bool, asked func(*doc.Func) bool) []string {
	t.Helper()
	all := parse(t, tree)
	packages := byFolder(all)
	var faults []string
	for _, dir := range folders(all) {
		if !in(packages[dir][0]) {
			continue
		}
		p, err := document(packages[dir])
		if err != nil {
			t.Fatal(err)
		}
		named := fuzzNames(packages[dir])
		for _, f := range functions(p) {
			if name := subject(f); asked(f) && !named[name] {
				faults = append(faults, dir+": no fuzz target names "+name+": "+f.Name)
			}
		}
	}
	return faults
}

// functions lists all exported functions and methods of a package.
func functions(p *doc.Package) []*doc.Func {
	all := p.Funcs
	for _, typ := range p.Types {
		all = append(all, typ.Funcs...)
		all = append(all, typ.Methods...)
	}
	return all
}

// subject is what has to be named: the type of what reads itself, the method behind a
// dot, or the function.
func subject(f *doc.Func) string {
	switch name, _, _ := strings.Cut(strings.TrimPrefix(f.Recv, "*"), "["); { // without type parameters
	case f.Recv == "":
		return f.Name
	case strings.HasPrefix(f.Name, "Unmarshal"):
		return name
	}
	return "." + f.Name
}

// fuzzNames holds what is named in test files that have a fuzz target: what follows
// Fuzz in the name of the target, what stands behind the name of the package and a dot,
// and, with its dot, what stands behind anything else. In a test inside the package any
// name counts as both.
func fuzzNames(sources []source) map[string]bool {
	names := map[string]bool{}
	for _, s := range sources {
		if !s.test() || !hasTarget(s.File) {
			continue
		}
		of, outside := strings.CutSuffix(s.Name.Name, "_test")
		for n := range ast.Preorder(s.File) {
			switch n := n.(type) {
			case *ast.FuncDecl:
				names[strings.TrimPrefix(n.Name.Name, "Fuzz")] = true
			case *ast.SelectorExpr:
				x, plain := n.X.(*ast.Ident)
				if plain && x.Name == of {
					names[n.Sel.Name] = true
				} else {
					names["."+n.Sel.Name] = true
				}
			case *ast.Ident:
				if !outside {
					names[n.Name], names["."+n.Name] = true, true
				}
			}
		}
	}
	return names
}

func hasTarget(file *ast.File) bool {
	for _, d := range file.Decls {
		if f, ok := d.(*ast.FuncDecl); ok && f.Recv == nil && strings.HasPrefix(f.Name.Name, "Fuzz") {
			return true
		}
	}
	return false
}

func TestReaderFaultsAreSeen(t *testing.T) {
	const (
		reader = "package units\n\ntype Angle float64\n\nfunc (a *Angle) UnmarshalText([]byte) error { return nil }\n"
		parser = "package units\n\nfunc ParseAngle(string) {}\n"
		hidden = "package units\n\ntype angle float64\n\nfunc (a *angle) UnmarshalText([]byte) error { return nil }\n"
		target = "package units_test\n\nfunc FuzzWire() { _ = units.Angle(0) }\n"
	)
	seen(t, readerFaults, []badTree{
		{"type without a target", map[string]string{"units/a.go": reader}, "units: no fuzz target names Angle"},
		{"type in a test without a target", map[string]string{"units/a.go": reader, "units/a_test.go": "package units_test\n\nvar _ = units.Angle(0)\n"}, "Angle"},
		{"field of that name", map[string]string{"units/a.go": reader, "units/a_test.go": "package units_test\n\nfunc FuzzWire() { _ = it.Angle }\n"}, "Angle"},
		{"target of another package", map[string]string{"units/a.go": reader, "align/a_test.go": target}, "Angle"},
		{"parser without a target", map[string]string{"units/a.go": parser}, "ParseAngle"},
		{"reader inside", map[string]string{"internal/table/a.go": "package table\n\nfunc Read() {}\n"}, "internal/table: no fuzz target names Read"},

		{"type in a target", map[string]string{"units/a.go": reader, "units/a_test.go": target}, ""},
		{"parser by the name of its target", map[string]string{"units/a.go": parser, "units/a_test.go": "package units_test\n\nfunc FuzzParseAngle() {}\n"}, ""},
		{"not exported", map[string]string{"units/a.go": hidden}, ""},
		{"must", map[string]string{"units/a.go": "package units\n\nfunc MustParseAngle(string) {}\n"}, ""},
	})
}

func TestEntryFaultsAreSeen(t *testing.T) {
	seen(t, entryFaults, []badTree{
		{"function", map[string]string{"align/a.go": function}, "align: no fuzz target names Fit"},
		{"method", map[string]string{"align/a.go": method, "align/a_test.go": "package align_test\n\nfunc FuzzLine() {}\n"}, "align: no fuzz target names .At"},
		{"constructor", map[string]string{"align/a.go": newTable}, "NewTable"},

		{"method in a target", map[string]string{"align/a.go": method, "align/a_test.go": "package align_test\n\nfunc FuzzCalls() { _ = align.Line.At }\n"}, ""},
		{"text only", map[string]string{"align/a.go": text}, ""},
		{"inside", map[string]string{"internal/lsq/a.go": "package lsq\n\nfunc Solve() {}\n"}, ""},
	})
}
