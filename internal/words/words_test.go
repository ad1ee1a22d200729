package words_test

import (
	"testing"

	"example.org/collinear/internal/words"
)

var sides = words.List{"", "left", "right"}

func TestBothWays(t *testing.T) {
	for i, word := range map[uint8]string{1: "left", 2: "right"} {
		if got, err := sides.Marshal(i); err != nil || string(got) != word || sides.Word(i) != word || !sides.Known(i) {
			t.Errorf("%d: got %q, %v", i, got, err)
		}
		var got uint8
		if err := words.Unmarshal(&got, sides, []byte(word)); err != nil || got != i {
			t.Errorf("%s: got %d, %v", word, got, err)
		}
	}
}

// A value without a word prints as its number and has no wire form; a text that
// is no word of the list is refused with those that are.
func TestRefused(t *testing.T) {
	for _, i := range []uint8{0, 3, 255} {
		if _, err := sides.Marshal(i); err == nil || sides.Known(i) {
			t.Errorf("%d has a wire form", i)
		}
	}
	if got := sides.Word(3); got != "3" {
		t.Errorf("got %q", got)
	}
	for text, want := range map[string]string{
		"":     "want one of left, right (missing)",
		"Left": `want one of left, right, got "Left" (unknown)`,
	} {
		kept := uint8(2)
		if err := words.Unmarshal(&kept, sides, []byte(text)); err == nil || err.Error() != want || kept != 2 {
			t.Errorf("%q: got %v and %d, want %s", text, err, kept, want)
		}
	}
}
