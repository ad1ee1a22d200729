package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
)

// suite is what stands in the folder testdata.
type suite struct {
	version string
	only    string // what was chosen of it
	hash    string // SHA-256 of the manifest, which holds those of all files
	flags   map[string]flagText
	vectors []vector
	lines   []badLine
}

// flagText explains a flag.
type flagText struct {
	Mistake string `json:"mistake"`
	Effect  string `json:"effect"`
}

// vector is one question with its answer.
type vector struct {
	ID        string               `json:"id"`
	Op        string               `json:"op"`
	Region    string               `json:"region"`
	Flags     []string             `json:"flags"`
	Input     json.RawMessage      `json:"input"`
	Result    json.RawMessage      `json:"result"`
	Tolerance map[string]tolerance `json:"tolerance"`
	Verify    json.RawMessage      `json:"verify"`
	Error     *fault               `json:"error"`
	Twin      string               `json:"twin"`

	area string
}

// tolerance is how far one quantity may be off.
type tolerance struct {
	Within string `json:"within"`
}

// fault is a refusal or a warning on the wire, as far as it is compared.
type fault struct {
	Code string `json:"code"`
	Path string `json:"path"`
}

func (f fault) String() string { return fmt.Sprintf("%s at %q", f.Code, f.Path) }

// manifest lists the files of the suite.
type manifest struct {
	Version string `json:"version"`
	Files   []struct {
		Name   string `json:"name"`
		SHA256 string `json:"sha256"`
		Count  int    `json:"count"`
	} `json:"files"`
}

// loadSuite reads the suite and refuses files that are not as the manifest has
// them: a report is worth nothing if nobody knows what was asked.
func loadSuite(dir fs.FS) (*suite, error) {
	in := files{dir, mostSuite}
	text, err := in.read("manifest.json")
	if err != nil {
		return nil, fmt.Errorf("no suite here: %w", err)
	}
	var m manifest
	if err := json.Unmarshal(text, &m); err != nil {
		return nil, fmt.Errorf("manifest.json: %w", err)
	}
	s := &suite{version: m.Version, hash: sum(text)}
	for _, f := range m.Files {
		text, err := in.read(f.Name)
		if err != nil {
			return nil, err
		}
		if sum(text) != f.SHA256 {
			return nil, fmt.Errorf("%s is not the file that manifest.json names: its SHA-256 is %s", f.Name, sum(text))
		}
		if err := s.take(f.Name, text, f.Count); err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
	}
	return s, nil
}

func sum(text []byte) string {
	hash := sha256.Sum256(text)
	return hex.EncodeToString(hash[:])
}

// take adds what stands in one file.
func (s *suite) take(name string, text []byte, count int) error {
	switch {
	case name == "flags.json":
		return json.Unmarshal(text, &struct{ Flags *map[string]flagText }{&s.flags})
	case name == "lines.txt":
		lines, err := readLines(string(text))
		s.lines = lines
		return err
	case name == "ledger.json" || path.Ext(name) != ".json":
		return nil
	}
	var area struct{ Vectors []json.RawMessage } // each is far larger once it is taken apart
	if err := json.Unmarshal(text, &area); err != nil {
		return err
	}
	if len(area.Vectors) != count {
		return errors.New("the count is not that of the manifest")
	}
	for i, text := range area.Vectors {
		v := vector{area: strings.TrimSuffix(name, ".json")}
		if err := v.read(text); err != nil {
			return fmt.Errorf("vector %d, %q: %w", i, v.ID, err)
		}
		s.vectors = append(s.vectors, v)
	}
	return nil
}

// read reads a vector and asks of it what is taken for granted later.
func (v *vector) read(text []byte) error {
	if err := json.Unmarshal(text, v); err != nil {
		return err
	}
	for at, t := range v.Tolerance {
		if _, err := readWidth(t.Within); err != nil {
			return fmt.Errorf("the tolerance at %s: %w", at, err)
		}
	}
	return v.verifiable()
}

// choose leaves one area, or one vector with the twin that it counts with, where
// they are named.
func (s *suite) choose(area, id string) error {
	if area == "" && id == "" {
		return nil
	}
	twin := ""
	for _, v := range s.vectors {
		if v.ID == id {
			twin = v.Twin
		}
	}
	s.vectors = slices.DeleteFunc(s.vectors, func(v vector) bool {
		return area != "" && v.area != area || id != "" && v.ID != id && v.ID != twin
	})
	s.only, s.lines = strings.TrimSpace(area+" "+id), nil
	if len(s.vectors) == 0 {
		return fmt.Errorf("the suite has no %s", s.only)
	}
	return nil
}
