package main

import (
	"bytes"
	"flag"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "write the sample and its answers anew")

// The sample is invented: a machine that lies 0.21 mm low and 0.13 mm towards 3
// o'clock at the coupling, and falls and runs out away from it.
var sample = struct {
	pose  rigid.Pose
	a, b  rigid.Instrument
	feet  [2]float64
	raise [2]float64 // then, at the feet
	push  [2]float64 // and then sideways
}{
	pose:  rigid.Pose{OffsetY: 0.13, SlopeY: 0.25e-3, OffsetZ: -0.21, SlopeZ: -0.4e-3},
	a:     rigid.Instrument{Kind: rigid.Rim, Carrier: rigid.Stationary, Station: 110, Radius: 75, Sag: 0.04},
	b:     rigid.Instrument{Kind: rigid.Rim, Carrier: rigid.Movable, Station: -90, Radius: 75, Sag: 0.04},
	feet:  [2]float64{400, 1000},
	raise: [2]float64{0.37, 0.61},
	push:  [2]float64{-0.23, -0.38},
}

// moved is a pose whose feet have gone by so much, up or to 3 o'clock.
func moved(p rigid.Pose, feet, up, across [2]float64) rigid.Pose {
	line := func(by [2]float64) (offset, slope float64) {
		slope = (by[1] - by[0]) / (feet[1] - feet[0])
		return by[0] - slope*feet[0], slope
	}
	z, dz := line(up)
	y, dy := line(across)
	return rigid.Pose{OffsetY: p.OffsetY + y, SlopeY: p.SlopeY + dy, OffsetZ: p.OffsetZ + z, SlopeZ: p.SlopeZ + dz}
}

// sampleSetUp is mounted so: two dials half a turn apart, each read to 2 um.
const sampleSetUp = `{"setup":{"view":"from_movable",` +
	`"probes":[` +
	`{"name":"A","probe":{"kind":"rim","carrier":"stationary","station":"110 mm"},"sag":"0.04 mm","u":{"reading":"2 um","station":"0.5 mm","sag":"2 um"}},` +
	`{"name":"B","probe":{"kind":"rim","carrier":"movable","station":"-90 mm"},"sag":"0.04 mm","u":{"reading":"2 um","station":"0.5 mm","sag":"2 um"}}],` +
	`"feet":[{"name":"inboard","x":"400 mm","u":"1 mm"},{"name":"outboard","x":"1 m","u":"1 mm"}],` +
	`"judge":{"limits":{"offset":"0.05 mm","slope":"0.5 mm/m","source":"invented"},"acceptance":{"confidence":0.95}}}}`

// sampled is what both dials show at a clock angle for the first, each from a zero of
// its own: the exact simulation, with normal scatter of 2 um from a fixed seed, to a
// thousandth of a millimetre.
func sampled(p rigid.Pose, at float64, seed uint64) []taken {
	v := rigid.Noise(seed, 0.002, []float64{1 + sample.a.Read(p, at), 2 + sample.b.Read(p, at+180)})
	for i := range v {
		v[i] = math.Round(1000*v[i]) / 1000
	}
	return []taken{{"A", float64(units.Clock(at).Normal()), v[0]}, {"B", float64(units.Clock(at + 180).Normal()), v[1]}}
}

// sampleLines are what an instrument would send: both dials read at every half hour
// from 10 to 2 for the first; a slip; then the machine raised in two steps, and pushed
// in one.
func sampleLines(t rapid.TB) []string {
	t.Helper()
	seed := uint64(0)
	both := func(p rigid.Pose, at float64) []object {
		seed++
		return readings(sampled(p, at, seed)...)
	}
	lines := []string{sampleSetUp}
	for at := -60.0; at <= 60; at += 15 {
		lines = append(lines, line(t, object{"readings": both(sample.pose, at)}))
		if at == 0 {
			lines = append(lines, `{"readings":[{"probe":"A","at":"12:30","value":"1.34"},{"probe":"C","at":"6:30","value":"2.1 mm"}]}`)
		}
	}
	half := [2]float64{sample.raise[0] / 2, sample.raise[1] / 2}
	lines = append(lines, line(t, object{"rest": object{"plane": "vertical", "readings": both(sample.pose, 0)}}))
	for _, up := range [][2]float64{half, sample.raise} {
		lines = append(lines, line(t, object{"readings": both(moved(sample.pose, sample.feet, up, [2]float64{}), 0)}))
	}
	raised := moved(sample.pose, sample.feet, sample.raise, [2]float64{})
	lines = append(lines, line(t, object{"rest": object{"plane": "horizontal", "readings": both(raised, 90)}}))
	return append(lines, line(t, object{"readings": both(moved(raised, sample.feet, [2]float64{}, sample.push), 90)}))
}

// golden compares with a file, or writes it.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(plain(want), got); diff != "" {
		t.Errorf("differs from %s (-want +got):\n%s", file, diff)
	}
}

// plain takes back what a checkout may do to the ends of lines.
func plain(text []byte) string { return strings.ReplaceAll(string(text), "\r\n", "\n") }

// The sample is what the simulation says, and the program answers it as ever. Whether
// the answers are right the tests against the simulation tell.
func TestSample(t *testing.T) {
	lines := strings.Join(sampleLines(t), "\n") + "\n"
	golden(t, "job.jsonl", lines)
	var stdout, again, stderr bytes.Buffer
	if code := run(nil, strings.NewReader(lines), &stdout, &stderr); code != ended || stderr.Len() > 0 {
		t.Fatalf("ends with %d and says %q", code, stderr.String())
	}
	if run(nil, strings.NewReader(lines), &again, &stderr); stdout.String() != again.String() {
		t.Error("two runs differ")
	}
	golden(t, "job.golden", rounded(stdout.String()))
}

// decimals is a number with decimals.
var decimals = regexp.MustCompile(`-?\d+\.\d{5,}(e[+-]\d+)?|-?\d+(\.\d+)?e[+-]\d+`)

// rounded keeps four decimals of every number.
func rounded(text string) string {
	return decimals.ReplaceAllStringFunc(text, func(number string) string {
		x, err := strconv.ParseFloat(number, 64)
		if err != nil {
			return number
		}
		return strconv.FormatFloat(math.Round(x*1e4)/1e4+0, 'f', -1, 64) // no negative zero
	})
}

// The page shows some lines of the sample and what they are answered, with dots for
// what it leaves out.
func TestPage(t *testing.T) {
	page, err := os.ReadFile("STREAM.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(plain(page), "```text\n")
	block, _, _ := strings.Cut(rest, "```")
	lines := sampleLines(t)
	answers, _ := sent(t, lines...)
	shown, at := 0, -1
	for _, text := range strings.Split(strings.TrimSpace(block), "\n") {
		mark, text, _ := strings.Cut(text, " ")
		if mark == ">" {
			for at++; at < len(lines) && !like(lines[at], text); at++ {
			}
			if at == len(lines) {
				t.Fatalf("no such line behind the one before: %s", text)
			}
			continue
		}
		shown++
		if at < 0 || mark != "<" || !like(rounded(answers[at]), text) {
			t.Errorf("shows %s %s", mark, text)
		}
	}
	if shown < 5 {
		t.Errorf("only %d answers are shown", shown)
	}
}

// like tells whether a text is a pattern in which " ... " stands for anything.
func like(text, pattern string) bool {
	parts := strings.Split(pattern, " ... ")
	text, begins := strings.CutPrefix(text, parts[0])
	if !begins || len(parts) == 1 {
		return begins && text == ""
	}
	for _, part := range parts[1 : len(parts)-1] {
		_, behind, there := strings.Cut(text, part)
		if !there {
			return false
		}
		text = behind
	}
	return strings.HasSuffix(text, parts[len(parts)-1])
}

func TestLike(t *testing.T) {
	for _, row := range []struct {
		text, pattern string
		want          bool
	}{
		{"abc", "abc", true}, {"abc", "ab", false}, {"abc", "bc", false},
		{"abcd", "a ... d", true}, {"abcd", "b ... d", false}, {"abcd", "a ... c", false},
		{"abcd", "a ... c ... d", true}, {"abcd", "a ... x ... d", false}, {"abcd", "a ... c ... b ... d", false},
	} {
		if like(row.text, row.pattern) != row.want {
			t.Errorf("%q like %q: want %v", row.text, row.pattern, row.want)
		}
	}
}
