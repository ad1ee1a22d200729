package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
)

// answer is one line of the program: a result, which is an object, a refusal, or
// why the request was skipped.
type answer struct {
	Result  json.RawMessage
	Error   *fault
	Skipped *string
}

// read takes apart a line that has to have this seq.
func read(line []byte, seq string) (answer, *trouble) {
	got, a, t := takeApart(line)
	if got != seq && (t == nil || t.Kind != garbage) {
		return a, &trouble{wrongSeq, fmt.Sprintf("seq %s where %s was asked", short(got), seq)}
	}
	return a, t
}

// takeApart takes a line apart. Names of members count as they are written.
func takeApart(line []byte) (seq string, a answer, t *trouble) {
	var members map[string]json.RawMessage
	if json.Unmarshal(line, &members) != nil || members == nil {
		return "", a, &trouble{garbage, excerpt(line)}
	}
	if err := a.take(members); err != nil {
		t = &trouble{badAnswer, err.Error()}
	}
	return string(members["seq"]), a, t
}

// take reads the one of the three that is there.
func (a *answer) take(members map[string]json.RawMessage) (err error) {
	given := 0
	for name, read := range map[string]func(json.RawMessage) error{
		"result": a.takeResult, "error": a.takeError, "skipped": a.takeSkipped,
	} {
		if text, there := members[name]; there {
			given++
			err = read(text)
		}
	}
	if given != 1 {
		return errors.New("an answer has one of result, error and skipped")
	}
	return err
}

func (a *answer) takeResult(text json.RawMessage) error {
	if !bytes.HasPrefix(text, []byte("{")) {
		return fmt.Errorf("result is no object: %s", excerpt(text))
	}
	a.Result = text
	return nil
}

func (a *answer) takeError(text json.RawMessage) error {
	var f struct{ Code, Path *string }
	if json.Unmarshal(text, &f) != nil || f.Code == nil || f.Path == nil || *f.Code == "" {
		return fmt.Errorf("error has a code and a path, both of them texts: %s", excerpt(text))
	}
	a.Error = &fault{short(*f.Code), short(*f.Path)}
	return nil
}

func (a *answer) takeSkipped(text json.RawMessage) error {
	var reason string
	if json.Unmarshal(text, &reason) != nil || reason == "" {
		return fmt.Errorf("skipped has a reason, a text: %s", excerpt(text))
	}
	reason = short(reason)
	a.Skipped = &reason
	return nil
}

func excerpt(line []byte) string {
	const most = 80
	if len(line) > most {
		return fmt.Sprintf("%q and %d bytes more", line[:most], len(line)-most)
	}
	return fmt.Sprintf("%q", line)
}

// short returns what is kept of a text that came from the program: there may be
// thousands, and each as long as a line, or made to steer the terminal.
func short(text string) string {
	const most = 300
	if len(text) > most {
		return fmt.Sprintf("%s and %d bytes more", printable(strings.ToValidUTF8(text[:most], "")), len(text)-most)
	}
	return printable(text)
}

// misread says why a document could not be read, without the names that its
// parts have in this program.
func misread(err error) string {
	text := err.Error()
	if e, isType := errors.AsType[*json.UnmarshalTypeError](err); isType {
		text = fmt.Sprintf("%q is a %s, which it cannot be", e.Field, e.Value)
	}
	return short(text)
}
