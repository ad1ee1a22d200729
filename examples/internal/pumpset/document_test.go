package pumpset

import (
	"encoding/json"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// A value of another type, wherever it stands, is one fault at its place.
func TestWrongTypeAtEveryField(t *testing.T) {
	exhaustive(t)
	t.Parallel()
	wrong := []string{`0`, `-1.5`, `1e400`, `null`, `true`, `"x"`, `{}`, `[]`}
	for _, name := range jobs {
		doc := load(t, name)
		for _, p := range values(t, doc) {
			kind := kindAt(t, doc, p)
			for _, value := range wrong {
				if kind == kindOf(value) {
					continue
				}
				_, err := outcome(with(p, value)(t, doc))
				if diff := cmp.Diff([]string{"malformed " + p}, found(t, err)); diff != "" {
					t.Errorf("%s with %s at %s (-want +got):\n%s", name, value, p, diff)
				}
			}
		}
	}
}

// Empty text is nowhere a value.
func TestEmptyTextAtEveryField(t *testing.T) {
	exhaustive(t)
	t.Parallel()
	for _, name := range jobs {
		doc := load(t, name)
		for _, p := range values(t, doc) {
			if kindAt(t, doc, p) != '"' {
				continue
			}
			_, err := outcome(with(p, `""`)(t, doc))
			if diff := cmp.Diff([]string{"missing " + p}, found(t, err)); diff != "" {
				t.Errorf("%s with empty text at %s (-want +got):\n%s", name, p, diff)
			}
		}
	}
}

// An unknown field is one fault at its place, in whichever object it stands.
func TestUnknownFieldInEveryObject(t *testing.T) {
	exhaustive(t)
	t.Parallel()
	for _, name := range jobs {
		doc := load(t, name)
		for _, p := range append(values(t, doc), "") {
			if p != "" && kindAt(t, doc, p) != '{' {
				continue
			}
			_, err := outcome(with(p+"/zz", `"x"`)(t, doc))
			if diff := cmp.Diff([]string{"unknown " + p + "/zz"}, found(t, err)); diff != "" {
				t.Errorf("%s (-want +got):\n%s", name, diff)
			}
		}
	}
}

// A field that is left out is either one that may be, or a fault at its place
// that says so.
func TestEveryFieldLeftOut(t *testing.T) {
	exhaustive(t)
	t.Parallel()
	for _, name := range jobs {
		doc := load(t, name)
		for _, p := range values(t, doc) {
			if up := p[:strings.LastIndex(p, "/")]; up != "" && kindAt(t, doc, up) == '[' {
				continue
			}
			_, err := Read(without(p)(t, doc))
			got := found(t, err)
			if optional(p) && got == nil {
				continue
			}
			if diff := cmp.Diff([]string{"missing " + p}, got); diff != "" || optional(p) {
				t.Errorf("%s without %s (-want +got):\n%s", name, p, diff)
			}
		}
	}
}

// optional tells whether the document may leave out the field at a pointer.
func optional(p string) bool {
	return slices.Contains(strings.Fields(`
		place by when instrument conditions notes units three nine span stationary_rim movable_rim u limits miss return target
		high to_three opening open_at left reverse rim_face face_face rim_gap straightedge_gap sag mandrel far clock speed
		checks runout where strain spacing between single_feet lift gaps lift_left pack marked growth from_centre pieces
		track expansion rise cold profile acceptance confidence sliding own table rule edition per_plane offset slope flex shims error keep`),
		p[strings.LastIndex(p, "/")+1:]) && !needed.MatchString(p) ||
		strings.HasPrefix(p, "/target/") ||
		strings.Contains(p, "/u/") || mayBeOut.MatchString(p)
}

// Some names are needed in one place and not in another.
var (
	needed   = regexp.MustCompile(`^/checks/strain/released/\d+/to_three$|/gaps/\d+/to_three$|/measured/to_three$|/rows/\d+/speed$`)
	mayBeOut = regexp.MustCompile(`^/growth/(source|stationary|movable)$|^/growth/(stationary|movable)/\d+/(at|measured)$|` +
		`^/growth/(stationary|movable)/\d+/(pieces|three|nine)/\d+/(name|source)$|` +
		`^/single_feet/(height|limit)$|^/checks/(strain|runout/\d+)/(limit|source)$|/(pack|stock)/\d+/measured$`)
)

func TestCutShortAnywhere(t *testing.T) {
	for _, name := range jobs {
		doc := load(t, name)
		end := len(strings.TrimRight(string(doc), "\n"))
		for n := range end {
			_, err := outcome(doc[:n])
			if got := found(t, err); len(got) != 1 || !strings.HasPrefix(got[0], "malformed ") {
				t.Fatalf("%s cut short after %d bytes: %q", name, n, got)
			}
		}
	}
}

// One byte of the document replaced by another is refused or taken, but nothing
// panics and no error comes without a fault.
func TestOneByteWrong(t *testing.T) {
	exhaustive(t)
	t.Parallel()
	doc := load(t, "testdata/gauges.json")
	for i := range doc {
		for _, b := range []byte("\x00\"}1\xff") {
			bad := slices.Clone(doc)
			bad[i] = b
			if r, err := outcome(bad); err != nil {
				found(t, err)
			} else {
				checkWidth(t, text(t, r, AsTheJob))
			}
		}
	}
}

// absurd are sizes that no machine has, of each kind of quantity.
var absurd = []struct {
	kind  func(string) bool
	sizes []string
}{
	{reads(units.ParseLength), []string{`"1e302 mm"`, `"-1e302 mm"`, `"1e9 mm"`, `"1e-9 nm"`}},
	{reads(units.ParseSlope), []string{`"1e300 mm/m"`, `"-1 mm/m"`, `"1e-9 mm/m"`}},
	{reads(units.ParseRotationalSpeed), []string{`"1e300 rpm"`, `"0 rpm"`, `"1e-300 rpm"`}},
	{reads(units.ParseTemperature), []string{`"1e300 °C"`, `"-274 °C"`, `"2000 °C"`}},
	{reads(units.ParseTemperatureDifference), []string{`"1e300 K"`, `"-1e300 K"`, `"1e-300 K"`}},
	{reads(units.ParseExpansion), []string{`"1e300 um/m/K"`, `"-1 um/m/K"`, `"1e-290 um/m/K"`}},
	{digits.MatchString, []string{`"0"`, `"999999999"`}},
}

func reads[Q any](parse func(string) (Q, error)) func(string) bool {
	return func(s string) bool {
		_, err := parse(s)
		return err == nil
	}
}

// Sizes that no machine has are refused where they stand, or at least at a place
// that is in the document, or else solved into numbers.
func TestAbsurdSizes(t *testing.T) {
	exhaustive(t)
	t.Parallel()
	for _, name := range jobs {
		doc := load(t, name)
		if name == "testdata/alignment-alone.json" {
			doc = both(with("/target/at", `"11 5/8 in"`), with("/target/opening", `"0.01 mm"`), with("/target/open_at", `"3:00"`),
				with("/target/diameter", `"100 mm"`), with("/tape/feet/0/u", `"1 mm"`))(t, doc)
		}
		for _, p := range values(t, doc) {
			value, _ := valueAt(t, doc, p).(string)
			for _, a := range absurd {
				if !a.kind(value) {
					continue
				}
				for _, size := range a.sizes {
					checkAbsurd(t, name, with(p, size)(t, doc))
				}
			}
		}
	}
}

func checkAbsurd(t *testing.T, name string, bad []byte) {
	t.Helper()
	r, err := outcome(bad)
	checkPlaces(t, bad, err)
	if err != nil {
		return
	}
	report := text(t, r, Metric)
	checkWidth(t, report)
	checkRecord(t, r)
	if strings.Contains(report, "NaN") || strings.Contains(report, "Inf") {
		t.Errorf("%s: no number:\n%s", name, report)
	}
}

// checkPlaces asks that every fault names a field of the document, or one that
// is missing in an object of it.
func checkPlaces(t rapid.TB, doc []byte, err error) {
	t.Helper()
	there := append(values(t, doc), "")
	for _, fault := range units.Faults(err) {
		place := fault.Path
		if fault.Code == units.Missing && place != "" {
			place = place[:strings.LastIndex(place, "/")]
		}
		if !slices.Contains(there, fault.Path) && !slices.Contains(there, place) {
			t.Errorf("a fault that is nowhere in the document: %v", fault)
		}
	}
}

// JOB.md names every field that a job can have.
func TestPageNamesEveryField(t *testing.T) {
	page := string(load(t, "../../pumpset/JOB.md"))
	for _, name := range fieldNames(reflect.TypeFor[Job]()) {
		if !strings.Contains(page, "`"+name+"`") {
			t.Errorf("JOB.md does not name %q", name)
		}
	}
	for _, code := range []string{string(jobFormat), string(Metric), string(Inch), string(three), string(nine), string(flexPlanes)} {
		if !strings.Contains(page, "`\""+code+"\"`") {
			t.Errorf("JOB.md does not name %q", code)
		}
	}
}

// fieldNames lists the JSON names of all fields below a type of this package.
func fieldNames(t reflect.Type) []string {
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice:
		return fieldNames(t.Elem())
	case reflect.Struct:
	default:
		return nil
	}
	var all []string
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if name == "" {
			continue // inside a quantity
		}
		all = append(all, name)
		all = append(all, fieldNames(t.Field(i).Type)...)
	}
	return all
}

// kindOf is the first letter of a value, one for all numbers and one for both
// truths.
func kindOf(value string) byte {
	switch c := value[0]; c {
	case 't', 'f':
		return 't'
	case '"', '{', '[', 'n':
		return c
	}
	return '0'
}

func kindAt(t rapid.TB, doc []byte, pointer string) (kind byte) {
	t.Helper()
	data, err := json.Marshal(valueAt(t, doc, pointer))
	if err != nil {
		t.Fatal(err)
	}
	return kindOf(string(data))
}

func valueAt(t rapid.TB, doc []byte, pointer string) (value any) {
	t.Helper()
	change(t, doc, pointer, func(in any, key string) any {
		switch in := in.(type) {
		case map[string]any:
			value = in[key]
		case []any:
			value = in[index(t, key)]
		}
		return in
	})
	return value
}
