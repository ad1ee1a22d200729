package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// jobs is where the jobs lie that the package behind this program is tested with.
const jobs = "../internal/pumpset/testdata/"

// The golden files hold whole runs of the program. They say that nothing has
// changed; whether it is right the other tests tell.
func TestGolden(t *testing.T) {
	rows := []struct {
		name string
		args []string
	}{
		{"metric", nil},
		{"inch", []string{"-units", "inch"}},
		{"record", []string{"-json"}},
		{"alignment-alone", []string{"-job", jobs + "alignment-alone.json"}},
		{"alignment-alone-record", []string{"-json", "-job", jobs + "alignment-alone.json"}},
		{"bloch-geitner-p203", []string{"-job", jobs + "bloch-geitner-p203.json"}},
		{"mcmillan-8-3", []string{"-job", jobs + "mcmillan-8-3.json"}},
		{"mcmillan-8-3-record", []string{"-json", "-job", jobs + "mcmillan-8-3.json"}},
		{"gauges", []string{"-job", jobs + "gauges.json"}},
		{"spacer", []string{"-job", jobs + "spacer.json"}},
		{"mcmillan-8-3-growth", []string{"-job", jobs + "mcmillan-8-3-growth.json"}},
		{"trouble", []string{"-job", jobs + "trouble.json"}},
		{"trouble-record", []string{"-json", "-job", jobs + "trouble.json"}},
		{"rim-gap", []string{"-job", jobs + "rim-gap.json"}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			var stdout, stderr bytes.Buffer
			if code := run(row.args, &stdout, &stderr); code != solved || stderr.Len() > 0 {
				t.Fatalf("ends with %d and says %q", code, stderr.String())
			}
			file := filepath.Join("testdata", row.name+".golden")
			if *update {
				if err := os.WriteFile(file, stdout.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			golden, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			want := strings.ReplaceAll(string(golden), "\r\n", "\n")
			if diff := cmp.Diff(anywhere(want), anywhere(stdout.String())); diff != "" {
				t.Errorf("differs from %s (-want +got):\n%s", file, diff)
			}
		})
	}
}

// long are numbers that are written with all their digits.
var long = regexp.MustCompile(`\d+\.\d{12,}`)

// anywhere keeps twelve digits of the long numbers of a record, except on the
// platform where the golden files were written: quantiles, which intervals have in
// them, come from functions that differ in the last bit from one processor to another.
func anywhere(record string) string {
	if runtime.GOARCH == "amd64" {
		return record
	}
	return long.ReplaceAllStringFunc(record, func(digits string) string {
		x, err := strconv.ParseFloat(digits, 64)
		if err != nil {
			return digits
		}
		return strconv.FormatFloat(x, 'g', 12, 64)
	})
}
