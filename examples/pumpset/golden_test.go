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
		{"alignment-alone", []string{"-job", "testdata/alignment-alone.json"}},
		{"alignment-alone-record", []string{"-json", "-job", "testdata/alignment-alone.json"}},
		{"bloch-geitner-p203", []string{"-job", "testdata/bloch-geitner-p203.json"}},
		{"mcmillan-8-3", []string{"-job", "testdata/mcmillan-8-3.json"}},
		{"mcmillan-8-3-record", []string{"-json", "-job", "testdata/mcmillan-8-3.json"}},
		{"gauges", []string{"-job", "testdata/gauges.json"}},
		{"spacer", []string{"-job", "testdata/spacer.json"}},
		{"mcmillan-8-3-growth", []string{"-job", "testdata/mcmillan-8-3-growth.json"}},
		{"trouble", []string{"-job", "testdata/trouble.json"}},
		{"trouble-record", []string{"-json", "-job", "testdata/trouble.json"}},
		{"rim-gap", []string{"-job", "testdata/rim-gap.json"}},
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
			want := strings.ReplaceAll(string(load(t, file)), "\r\n", "\n")
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

func TestSameJobSameBytes(t *testing.T) {
	for _, name := range jobs {
		for _, flag := range []string{"-json", "-units=inch", "-units=metric"} {
			var first, second, stderr bytes.Buffer
			run([]string{"-job", name, flag}, &first, &stderr)
			run([]string{"-job", name, flag}, &second, &stderr)
			if !bytes.Equal(first.Bytes(), second.Bytes()) || first.Len() == 0 {
				t.Errorf("%s %s: two runs differ, or print nothing", name, flag)
			}
		}
	}
}
