package words_test

import (
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/internal/words"
)

// FuzzUnmarshal: whatever the text, it is the word of the number that it is read as, or
// it is refused with a fault and leaves the number alone.
func FuzzUnmarshal(f *testing.F) {
	for _, text := range []string{"", "left", "right", "Left", " left", "leftright", "0", "1", "\x00", "\xff"} {
		f.Add(text, uint8(len(text)))
	}
	f.Fuzz(func(t *testing.T, text string, i uint8) {
		got := i
		if err := words.Unmarshal(&got, sides, []byte(text)); err == nil {
			if sides.Word(got) != text || !sides.Known(got) {
				t.Errorf("%q is read as %d, which is %q", text, got, sides.Word(got))
			}
		} else if fuzzed.Refusal(err) != nil || got != i {
			t.Errorf("%q: %d became %d, %v", text, i, got, err)
		}
		word, err := sides.Marshal(i)
		if (err == nil) != sides.Known(i) || err == nil && string(word) != sides.Word(i) || err != nil && fuzzed.Refusal(err) != nil {
			t.Errorf("%d is written as %q, %v", i, word, err)
		}
	})
}
