package main

import (
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
)

const folder = "../../testdata"

// whole is a vector with all that the runner passes over.
type whole struct {
	vector
	Tolerance map[string]fullTolerance `json:"tolerance"`
	Since     string                   `json:"since"`
	About     string                   `json:"about"`
	Source    struct {
		Kind, By, Second, Published string
	} `json:"source"`
}

// fullTolerance is a tolerance with how it came about.
type fullTolerance struct {
	Within string      `json:"within"`
	Reason string      `json:"reason"`
	C      json.Number `json:"c"`
	Kappa  string      `json:"kappa"`
	Scale  string      `json:"scale"`
}

// area is a file of vectors.
type area struct {
	Area    string
	Count   int
	Regions map[string]struct{ Class, About string }
	Vectors []whole
}

// ours is the suite, and areas its files of vectors in full.
func ours(t *testing.T) (*suite, []area) {
	t.Helper()
	s, err := loadSuite(os.DirFS(folder))
	if err != nil {
		t.Fatal(err)
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var areas []area
	for _, e := range entries {
		var a area
		text, err := os.ReadFile(folder + "/" + e.Name())
		if !strings.HasSuffix(e.Name(), ".json") || err != nil {
			continue
		}
		if err := json.Unmarshal(text, &a); err != nil {
			t.Fatalf("%s: %v", e.Name(), err)
		}
		if a.Vectors != nil {
			areas = append(areas, a)
		}
	}
	return s, areas
}

// notInShort leaves a long test to the plain run: with the race detector and
// under wasm it would only be slow.
func notInShort(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("long")
	}
}

// TestManifestListsEveryFile tests that nothing lies beside the suite that the
// manifest does not vouch for.
func TestManifestListsEveryFile(t *testing.T) {
	text, err := os.ReadFile(folder + "/manifest.json")
	if err != nil {
		t.Fatal(err)
	}
	var m manifest
	if err := json.Unmarshal(text, &m); err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{"manifest.json": true}
	for _, f := range m.Files {
		listed[f.Name] = true
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if name := e.Name(); !e.IsDir() && !strings.HasSuffix(name, ".md") && !strings.HasPrefix(name, ".") && !listed[name] {
			t.Errorf("%s is not in the manifest", name)
		}
	}
}

// TestVectorsCount tests the size of the suite as it is counted: a vector counts
// if it covers a cell of operation, region and flag that no other covers.
func TestVectorsCount(t *testing.T) {
	_, areas := ours(t)
	count, classes := 0, map[string]int{}
	for _, a := range areas {
		cells := map[[3]string][]string{}
		for _, v := range a.Vectors {
			for _, flag := range v.Flags {
				cell := [3]string{v.Op, v.Region, flag}
				cells[cell] = append(cells[cell], v.ID)
			}
		}
		counted := map[string]bool{}
		for _, ids := range cells {
			if len(ids) == 1 {
				counted[ids[0]] = true
			}
		}
		for _, v := range a.Vectors {
			if !counted[v.ID] {
				t.Errorf("%s covers no cell of its own", v.ID)
				continue
			}
			count++
			classes[a.Regions[v.Region].Class]++
		}
	}
	if count < 300 || 4*classes["hard"] < count || 4*classes["invalid"] < count {
		t.Errorf("%d vectors, %d of them hard and %d invalid; 300 are wanted, and a quarter of each", count, classes["hard"], classes["invalid"])
	}
	t.Log(count, classes)
}

// TestVectorsSayWhatTheyAre tests names, flags, regions and sources.
func TestVectorsSayWhatTheyAre(t *testing.T) {
	s, areas := ours(t)
	seen, used := map[string]bool{}, map[string]bool{}
	for _, a := range areas {
		if a.Count != len(a.Vectors) {
			t.Errorf("%s: the count is %d, and there are %d vectors", a.Area, a.Count, len(a.Vectors))
		}
		for _, v := range a.Vectors {
			if seen[v.ID] {
				t.Errorf("%s is there twice", v.ID)
			}
			seen[v.ID] = true
			for _, flag := range v.Flags {
				used[flag] = true
			}
			for _, why := range v.faults(a, s) {
				t.Errorf("%s: %s", v.ID, why)
			}
		}
	}
	for _, flag := range slices.Sorted(maps.Keys(s.flags)) {
		if !used[flag] {
			t.Errorf("flag %s stands in no vector", flag)
		}
	}
}

// faults says what is wrong with how a vector tells what it is.
func (v whole) faults(a area, s *suite) []string {
	class := a.Regions[v.Region].Class
	var all []string
	for why, is := range map[string]bool{
		"a name with that of the area in front is wanted":          !strings.HasPrefix(v.ID, a.Area+"-"),
		"since, about and a flag are wanted":                       v.Since == "" || v.About == "" || len(v.Flags) == 0,
		"the class of its region is not known":                     !slices.Contains([]string{"plain", "hard", "invalid"}, class),
		"a refusal lies in a region that is invalid, and no other": (class == "invalid") != (v.Error != nil),
		"it says not where its numbers come from, twice":           v.Source.By == "" || v.Error == nil && v.Source.Second == "",
		"one of result and error is wanted":                        (v.Result == nil) == (v.Error == nil),
	} {
		if is {
			all = append(all, why)
		}
	}
	for _, flag := range v.Flags {
		if s.flags[flag].Mistake == "" || s.flags[flag].Effect == "" {
			all = append(all, "flag "+flag+" is not explained")
		}
	}
	return all
}

// TestTwinsDifferInOnePlace tests that each refusal has a sound vector that is
// nearly the same, so that whoever always refuses gets nowhere.
func TestTwinsDifferInOnePlace(t *testing.T) {
	_, areas := ours(t)
	byID := map[string]whole{}
	for _, a := range areas {
		for _, v := range a.Vectors {
			byID[v.ID] = v
		}
	}
	for id, v := range byID {
		if v.Error == nil {
			continue
		}
		twin, there := byID[v.Twin]
		if !there || twin.Error != nil || twin.Op != v.Op {
			t.Errorf("%s: its twin %q is no sound vector of its operation", id, v.Twin)
			continue
		}
		if n := places(decode(v.Input), decode(twin.Input)); n != 1 {
			t.Errorf("%s differs from %s in %d places", id, v.Twin, n)
		}
	}
}

// places counts where two documents differ: a value that is another, a member
// or an element that only one of them has.
func places(a, b any) int {
	switch a := a.(type) {
	case map[string]any:
		if b, isObject := b.(map[string]any); isObject {
			return memberPlaces(a, b)
		}
		return 1
	case []any:
		if b, isList := b.([]any); isList {
			return listPlaces(a, b)
		}
		return 1
	}
	if a == b {
		return 0
	}
	return 1
}

func memberPlaces(a, b map[string]any) int {
	n := 0
	for name := range a {
		if _, there := b[name]; there {
			n += places(a[name], b[name])
		} else {
			n++
		}
	}
	for name := range b {
		if _, there := a[name]; !there {
			n++
		}
	}
	return n
}

// listPlaces takes elements that only one of two lists has as cut out where
// that leaves the fewest differences.
func listPlaces(a, b []any) int {
	if len(a) < len(b) {
		a, b = b, a
	}
	if len(a) > len(b) {
		if len(b) == 0 {
			return 1 // the list was emptied
		}
		fewest := len(a)
		for i := range a {
			fewest = min(fewest, 1+listPlaces(slices.Delete(slices.Clone(a), i, i+1), b))
		}
		return fewest
	}
	n := 0
	for i := range a {
		n += places(a[i], b[i])
	}
	return n
}

// TestTolerancesCoverEveryQuantity tests that each quantity in a result has its
// tolerance with a reason, that the tolerance is what the reason says, and that
// no tolerance is left over.
func TestTolerancesCoverEveryQuantity(t *testing.T) {
	_, areas := ours(t)
	for _, a := range areas {
		for _, v := range a.Vectors {
			left := maps.Clone(v.Tolerance)
			leaves("", decode(v.Result), func(at, text string) {
				if _, err := readQuantity(text); err == nil && v.Tolerance[at].Within == "" && !strings.HasSuffix(at, "/at") {
					t.Errorf("%s: %s has no tolerance", v.ID, at)
				}
				delete(left, at)
			})
			for at := range left {
				t.Errorf("%s: the tolerance of %s is that of nothing", v.ID, at)
			}
			for at, tol := range v.Tolerance {
				if why := tol.fault(); why != "" {
					t.Errorf("%s: the tolerance of %s: %s", v.ID, at, why)
				}
			}
		}
	}
}

// leaves calls f for every text in a document, with its place.
func leaves(at string, v any, f func(at, text string)) {
	switch v := v.(type) {
	case map[string]any:
		for name, member := range v {
			leaves(at+"/"+name, member, f)
		}
	case []any:
		for _, element := range v {
			leaves(at+"/*", element, f)
		}
	case string:
		f(at, v)
	}
}

// fault says what is wrong with a tolerance.
func (t fullTolerance) fault() string {
	within, err := readWidth(t.Within)
	if err != nil {
		return err.Error()
	}
	switch t.Reason {
	case "exact", "published", "statistical", "quadrature":
		return ""
	case "rounding":
	default:
		return "no reason that is known: " + t.Reason
	}
	scale, errS := readWidth(t.Scale)
	kappa, errK := readQuantity(t.Kappa)
	if errS != nil || errK != nil || scale.of != within.of || kappa.value.Cmp(rational("1")) < 0 {
		return "scale, kappa of at least 1"
	}
	if !slices.Contains([]string{"16", "64"}, t.C.String()) {
		return "c is 16 or 64"
	}
	scale.value.Mul(scale.value, kappa.value)
	scale.value.Mul(scale.value, rational(t.C.String()))
	scale.value.Quo(scale.value, rational("4503599627370496"))
	low, high := rational("0.99999"), rational("1.00002")
	if within.value.Cmp(low.Mul(low, scale.value)) < 0 || within.value.Cmp(high.Mul(high, scale.value)) > 0 {
		return "within is not c * 2^-52 * kappa * scale"
	}
	return ""
}
