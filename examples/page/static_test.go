package main

import (
	"encoding/xml"
	"errors"
	"io"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// node is an element of the page as it is delivered.
type node struct {
	tag   string
	attrs map[string]string
}

// nodes reads index.html, and fails where an element is not closed in its place.
func nodes(t *testing.T) []node {
	t.Helper()
	dec := xml.NewDecoder(strings.NewReader(content(t, "index.html")))
	dec.Strict = false // attributes without a value
	dec.Entity = xml.HTMLEntity
	var all []node
	var open []string
	for {
		token, err := dec.RawToken()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			all = append(all, newNode(token))
			if !slices.Contains(xml.HTMLAutoClose, token.Name.Local) {
				open = append(open, token.Name.Local)
			}
		case xml.EndElement:
			if len(open) == 0 || open[len(open)-1] != token.Name.Local {
				t.Fatalf("</%s> closes %q", token.Name.Local, open)
			}
			open = open[:len(open)-1]
		}
	}
	if len(open) > 0 {
		t.Fatalf("left open: %q", open)
	}
	return all
}

func newNode(e xml.StartElement) node {
	n := node{e.Name.Local, map[string]string{}}
	for _, a := range e.Attr {
		n.attrs[a.Name.Local] = a.Value
	}
	return n
}

func content(t *testing.T, name string) string {
	t.Helper()
	data, err := files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func TestPageIsWellFormed(t *testing.T) {
	all := nodes(t)
	ids := map[string]bool{}
	labelled := map[string]bool{}
	for _, n := range all {
		if id := n.attrs["id"]; id != "" && ids[id] {
			t.Errorf("the id %s stands twice", id)
		}
		ids[n.attrs["id"]] = true
		if n.tag == "label" {
			labelled[n.attrs["for"]] = true
		}
	}
	for _, n := range all {
		for _, name := range []string{"for", "aria-labelledby", "aria-describedby"} {
			if id, there := n.attrs[name]; there && !ids[id] {
				t.Errorf("<%s %s=%q> leads nowhere", n.tag, name, id)
			}
		}
		if anchor, inside := strings.CutPrefix(n.attrs["href"], "#"); inside && !ids[anchor] {
			t.Errorf("a link to #%s leads nowhere", anchor)
		}
		if (n.tag == "input" || n.tag == "select") && !labelled[n.attrs["id"]] {
			t.Errorf("<%s id=%q> has no label", n.tag, n.attrs["id"])
		}
		if n.tag == "section" && n.attrs["aria-labelledby"] == "" {
			t.Errorf("a section has no name: %v", n.attrs)
		}
	}
}

var asked = regexp.MustCompile(`\$\("([^"]*)"\)`)

// What the scripts look up by a fixed name is there.
func TestScriptsFindTheirElements(t *testing.T) {
	ids := map[string]bool{}
	for _, n := range nodes(t) {
		ids[n.attrs["id"]] = true
	}
	found := asked.FindAllStringSubmatch(content(t, "page.js"), -1)
	for _, match := range found {
		if !ids[match[1]] {
			t.Errorf("page.js asks for #%s", match[1])
		}
	}
	if len(found) == 0 {
		t.Error("page.js asks for nothing")
	}
}

// The policy lets nothing in but what is delivered with the page, and the page needs
// no exception from it.
func TestPolicyIsStrict(t *testing.T) {
	var policy string
	for _, n := range nodes(t) {
		if n.attrs["http-equiv"] == "Content-Security-Policy" {
			policy = n.attrs["content"]
		}
		for name := range n.attrs {
			if name == "style" || strings.HasPrefix(name, "on") {
				t.Errorf("<%s> has the attribute %s", n.tag, name)
			}
		}
	}
	if !strings.HasPrefix(policy, "default-src 'none'; ") {
		t.Errorf("the policy begins otherwise: %q", policy)
	}
	for _, lax := range []string{"unsafe-inline", "unsafe-eval' 'self", " 'unsafe-eval'", "*", "http", "blob:"} {
		if strings.Contains(policy, lax) {
			t.Errorf("the policy allows %s", lax)
		}
	}
}

func TestNothingPointsOutside(t *testing.T) {
	names, err := fs.Glob(files, "*")
	if err != nil {
		t.Fatal(err)
	}
	markup := 0
	for _, name := range names {
		text := content(t, name)
		for _, bad := range []string{"://", "//www", "@import", "url(", "eval(", "document.write", "outerHTML", "insertAdjacentHTML", "WebSocket", "XMLHttpRequest", "sendBeacon"} {
			if strings.Contains(text, bad) {
				t.Errorf("%s holds %q", name, bad)
			}
		}
		markup += strings.Count(text, "innerHTML")
	}
	if markup != 1 {
		t.Errorf("markup is set in %d places; only the sheet is, which the program escapes", markup)
	}
}
