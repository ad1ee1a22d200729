package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// schemaBase is where the schemas are taken to lie: their $id are relative to
// it. Nothing is fetched from there.
const schemaBase = "https://example.org/collinear/testdata/schema/"

// metaschema is the schema that schemas follow.
const metaschema = "https://json-schema.org/draft/2020-12/schema"

// readDocument reads a JSON file as the validator wants it, with numbers as
// they are written.
func readDocument(t *testing.T, file string) any {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return parseDocument(t, text)
}

func parseDocument(t *testing.T, text []byte) any {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// documents reads the files of a folder that have an ending, by their names
// without it.
func documents(t *testing.T, dir, ending string) map[string]any {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*"+ending))
	if err != nil || len(files) == 0 {
		t.Fatalf("no *%s in %s: %v", ending, dir, err)
	}
	docs := map[string]any{}
	for _, file := range files {
		docs[strings.TrimSuffix(filepath.Base(file), ending)] = readDocument(t, file)
	}
	return docs
}

// schemaCompiler knows all schemas of the suite.
func schemaCompiler(t *testing.T) (*jsonschema.Compiler, map[string]any) {
	t.Helper()
	c, docs := jsonschema.NewCompiler(), documents(t, folder+"/schema", ".schema.json")
	for name, doc := range docs {
		if err := c.AddResource(schemaBase+name+".schema.json", doc); err != nil {
			t.Fatal(err)
		}
	}
	return c, docs
}

// schemas compiles those of whole files; common holds what they share.
func schemas(t *testing.T) map[string]*jsonschema.Schema {
	t.Helper()
	c, docs := schemaCompiler(t)
	compiled := map[string]*jsonschema.Schema{}
	for name := range docs {
		if name == "common" {
			continue
		}
		s, err := c.Compile(schemaBase + name + ".schema.json")
		if err != nil {
			t.Fatal(err)
		}
		compiled[name] = s
	}
	return compiled
}

// TestSchemasFollowTheMetaschema tests the schemas themselves, and that each of
// their definitions refers to what there is.
func TestSchemasFollowTheMetaschema(t *testing.T) {
	c, docs := schemaCompiler(t)
	meta := c.MustCompile(metaschema)
	for name, doc := range docs {
		if err := meta.Validate(doc); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		schema := doc.(map[string]any)
		if id := name + ".schema.json"; schema["$schema"] != metaschema || schema["$id"] != id {
			t.Errorf("%s: $schema %v and $id %v, want %s and %s", name, schema["$schema"], schema["$id"], metaschema, id)
		}
		defs, _ := schema["$defs"].(map[string]any)
		for def := range defs {
			if _, err := c.Compile(schemaBase + name + ".schema.json#/$defs/" + def); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// TestFilesFollowTheirSchemas tests every file of the suite, that each has a
// schema, and that no schema is left over.
func TestFilesFollowTheirSchemas(t *testing.T) {
	left := schemas(t)
	for name, doc := range documents(t, folder, ".json") {
		s, there := left[name]
		if !there {
			t.Errorf("%s.json has no schema", name)
			continue
		}
		if err := s.Validate(doc); err != nil {
			t.Errorf("%s.json: %v", name, err)
		}
		delete(left, name)
	}
	for name := range left {
		t.Errorf("%s.schema.json is the schema of nothing", name)
	}
}

// spot is one value in a document, and how to put another in its place.
type spot struct {
	at    string // a JSON Pointer
	value any
	put   func(any)
}

// escape is how a name stands in a JSON Pointer.
var escape = strings.NewReplacer("~", "~0", "/", "~1")

// spots lists a value and all that is in it.
func spots(at string, value any, put func(any)) []spot {
	list := []spot{{at, value, put}}
	switch value := value.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(value)) {
			list = append(list, spots(at+"/"+escape.Replace(name), value[name], func(v any) { value[name] = v })...)
		}
	case []any:
		for i := range value {
			list = append(list, spots(fmt.Sprintf("%s/%d", at, i), value[i], func(v any) { value[i] = v })...)
		}
	}
	return list
}

// with returns a copy of a value with one member of an object in it changed or
// added: a JSON text is put there, or what is there is removed if it is empty.
func with(t *testing.T, value any, at, text string) any {
	t.Helper()
	doc := copied(t, value)
	cut := strings.LastIndexByte(at, '/')
	object, isObject := valueAt(doc, at[:cut]).(map[string]any)
	if _, there := object[at[cut+1:]]; !isObject || text == "" && !there {
		t.Fatalf("%s is not there", at)
	}
	if text == "" {
		delete(object, at[cut+1:])
	} else {
		object[at[cut+1:]] = parseDocument(t, []byte(text))
	}
	return doc
}

// valueAt returns what stands at a JSON Pointer, or nil.
func valueAt(doc any, at string) any {
	for _, s := range spots("", doc, nil) {
		if s.at == at {
			return s.value
		}
	}
	return nil
}

func copied(t *testing.T, value any) any {
	t.Helper()
	text, err := json.Marshal(value)
	if err != nil {
		t.Fatal(err)
	}
	return parseDocument(t, text)
}

// fileOf returns the name of the file that a vector stands in.
func fileOf(id string) string {
	name, _, _ := strings.Cut(id, "-")
	return name
}

// onlyVector returns a file of vectors with but the one named, or as it is if
// the name is that of a file.
func onlyVector(t *testing.T, files map[string]any, id string) map[string]any {
	t.Helper()
	file, there := files[fileOf(id)].(map[string]any)
	if !there {
		t.Fatalf("%s: no such file", id)
	}
	vectors, _ := file["vectors"].([]any)
	if id == fileOf(id) {
		return file
	}
	file = maps.Clone(file)
	for _, v := range vectors {
		if v.(map[string]any)["id"] == id {
			file["vectors"] = []any{v}
			return file
		}
	}
	t.Fatalf("%s: no such vector", id)
	return nil
}

// TestSchemasBite tests that one change to what is sound is enough.
func TestSchemasBite(t *testing.T) {
	files, compiled := documents(t, folder, ".json"), schemas(t)
	for _, row := range spoiled {
		t.Run(row.name, func(t *testing.T) {
			s, sound := compiled[fileOf(row.of)], onlyVector(t, files, row.of)
			if err := s.Validate(sound); err != nil {
				t.Fatalf("%s is not sound before it is spoiled: %v", row.of, err)
			}
			if s.Validate(with(t, sound, row.at, row.text)) == nil {
				t.Errorf("%s may have %s at %s", row.of, row.text, row.at)
			}
		})
	}
}

// TestSchemasKnowEveryValue tests, at every place of every operation, that a
// value is of one type, that nothing may be added to an object and nothing that
// is needed left out, and that no quantity goes without its unit. The input of a refusal is free.
func TestSchemasKnowEveryValue(t *testing.T) {
	notInShort(t)
	compiled := schemas(t)
	for name, file := range documents(t, folder, ".json") {
		seen := map[string]bool{}
		for _, one := range single(file.(map[string]any)) {
			for _, s := range newSpots(one, seen) {
				for _, worse := range spoils(s) {
					s.put(worse)
					if compiled[name] != nil && compiled[name].Validate(one) == nil {
						t.Errorf("%s, %s: %s may be %.200v", name, opOf(one), s.at, worse)
					}
				}
				s.put(s.value)
			}
		}
	}
}

// newSpots lists the spots of a file with one vector that are bound by the
// schema and whose like was not seen.
func newSpots(one map[string]any, seen map[string]bool) []spot {
	return slices.DeleteFunc(spots("", one, nil), func(s spot) bool {
		place := generalPlace(s.at, one)
		if object, isObject := s.value.(map[string]any); isObject {
			place += fmt.Sprint(slices.Sorted(maps.Keys(object)))
		}
		known := seen[place]
		seen[place] = true
		return known || s.at == "" || free(s.at, one)
	})
}

// single returns a file of vectors once for each vector, with that and its
// region alone, and another file as it is.
func single(file map[string]any) []map[string]any {
	vectors, isArea := file["vectors"].([]any)
	if !isArea {
		return []map[string]any{file}
	}
	var list []map[string]any
	for _, v := range vectors {
		one := maps.Clone(file)
		region := fmt.Sprint(v.(map[string]any)["region"])
		one["vectors"], one["regions"] = []any{v}, map[string]any{region: valueAt(file["regions"], "/"+region)}
		list = append(list, one)
	}
	return list
}

// opOf returns the operation of a file with one vector, and whether it refuses.
func opOf(one map[string]any) string {
	vectors, isArea := one["vectors"].([]any)
	if !isArea {
		return ""
	}
	v := vectors[0].(map[string]any)
	if v["error"] != nil {
		return fmt.Sprint(v["op"], " refused")
	}
	return fmt.Sprint(v["op"])
}

// generalPlace is a place without its indices, by operation.
func generalPlace(at string, one map[string]any) string {
	steps := strings.Split(at, "/")
	for i, step := range steps {
		if strings.Trim(step, "0123456789") == "" {
			steps[i] = "*"
		}
	}
	return opOf(one) + strings.Join(steps, "/")
}

// free tells whether a place lies in the input of a refusal.
func free(at string, one map[string]any) bool {
	return strings.HasPrefix(at, "/vectors/0/input") && strings.HasSuffix(opOf(one), " refused")
}

// mayGo is where members may be left out: options, alternatives, and entries of
// maps.
var mayGo = regexp.MustCompile(`^/flags/[^/]+$|^/vectors/0/(` + strings.Join([]string{
	`tolerance/[^/]+`, `verify(/left)?`, `result/(offset|slope|flex)`,
	`result/(feet/\d+/(excess|taper)|items/\d+/found|checks/\d+/return|stacks|residuals/\d+/standardised)`,
	`input/(probability|dof|guard|sets/\d+/mounting|sensors/\d+/((angle/)?u|u/[^/]+|angle))`,
	`input/(target|within|limits|rule|station|high|to_three|opening|open_at|spigot|u_face)`, `input/(limits|rule)/[^/]+`, `input/rows/\d+/(offset|slope|flex)`,
	`input/(reference|work|machines/\d+/(height|feet(/\d+/(vertical|horizontal)(/at_(least|most))?)?))`, `input/joints/\d+/(target|seen_from|coupling|limits(/[^/]+)?)`,
	`result/(ratio|moves|machines|machines/\d+/shift)`,
	`input/(feet/\d+/u|sets/\d+/(readings/\d+/)?u(/[^/]+)?)`, `input/stock/\d+/(marked|measured)`, `input/orders/\d+/(soft_foot|now|now/\d+/(marked|measured))`,
	`input/.*(sag|bore|far|correlation|material/name|material/u|(pieces|three|nine)/\d+/u|(pieces|three|nine)/\d+/u/[^/]+|measured/u|measured/u/[^/]+)`,
}, "|") + `)$`)

// spoils returns values that are not as good as the one in a spot.
func spoils(s spot) []any {
	list := []any{nil}
	switch value := s.value.(type) {
	case map[string]any:
		more := maps.Clone(value)
		more["unheard of"] = "0 mm"
		list = append(list, more)
		for name := range value {
			if !mayGo.MatchString(s.at+"/"+escape.Replace(name)) && !radiusOfRim(value, name) {
				less := maps.Clone(value)
				delete(less, name)
				list = append(list, less)
			}
		}
	case string:
		if cut := strings.LastIndexByte(value, ' '); cut > 0 && measured(s) {
			list = append(list, value[:cut], value+"s")
		}
	}
	return list
}

// radiusOfRim tells of the one member that a rim or a bore may have, and a face
// needs.
func radiusOfRim(probe map[string]any, member string) bool {
	return member == "radius" && (probe["kind"] == "rim" || probe["kind"] == "bore")
}

// measured tells whether a quantity with its unit stands in a spot.
func measured(s spot) bool {
	q, err := readQuantity(s.value.(string))
	return err == nil && q.of != "number" && !strings.HasPrefix(s.at, "/vectors/0/source/")
}
