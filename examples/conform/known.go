package main

import (
	"fmt"
	"os"
	"slices"
	"strings"
)

// mostKnown is how many bytes the list of known failures has at most.
const mostKnown = 1 << 20

// readKnown reads the list of known failures: on each line what is known to
// fail, and the reason. Empty lines and those that begin with # are passed over.
func readKnown(file string, s *suite) (map[string]string, error) {
	if file == "" {
		return nil, nil
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	text, err := readAll(f, file, mostKnown)
	if err == nil && len(text) > mostKnown {
		err = fmt.Errorf("%s is longer than %d bytes", file, mostKnown)
	}
	if err != nil {
		return nil, err
	}
	return parseKnown(file, string(text), s)
}

func parseKnown(file, text string, s *suite) (map[string]string, error) {
	known := map[string]string{}
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		id, reason, _ := strings.Cut(line, " ")
		switch {
		case strings.TrimSpace(reason) == "":
			return nil, fmt.Errorf("%s, line %d: %s stands there without a reason", file, i+1, id)
		case known[id] != "":
			return nil, fmt.Errorf("%s, line %d: %s stands there twice", file, i+1, id)
		case !s.has(id):
			return nil, fmt.Errorf("%s, line %d: the suite has no %s", file, i+1, id)
		}
		known[id] = strings.TrimSpace(reason)
	}
	return known, nil
}

// has tells whether the suite asks something of this name.
func (s *suite) has(id string) bool {
	id, invariant, isInvariant := strings.Cut(id, "/")
	if isInvariant {
		return slices.Contains(invariantNames(), invariant) &&
			slices.ContainsFunc(s.vectors, func(v vector) bool { return v.ID == id && v.hasInvariants() })
	}
	return id == leaveID ||
		slices.ContainsFunc(s.vectors, func(v vector) bool { return v.ID == id }) ||
		slices.ContainsFunc(s.lines, func(l badLine) bool { return l.id == id })
}
