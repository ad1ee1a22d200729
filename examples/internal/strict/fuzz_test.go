package strict_test

import (
	"encoding/json"
	"testing"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// FuzzRead: whatever the bytes are, they are read, or refused with faults; and
// what the standard library does not take for JSON is never read.
func FuzzRead(f *testing.F) {
	f.Add([]byte(sound + `,"marks":["1 mm"],"rows":[[1]],"inside":{"at":"3:00"},"others":[{"at":"x"}]}`))
	f.Add([]byte(`{"name":1,"at":null,"count":1.5,"gain":1e999,"far":[],"name":{}}`))
	f.Add([]byte(`[[[[[[[[[[`))
	f.Fuzz(func(t *testing.T, data []byte) {
		var dst tape
		err := strict.Read(data, bounds, "a tape", &dst)
		if err != nil && len(units.Faults(err)) == 0 {
			t.Fatalf("%v holds no fault", err)
		}
		if err == nil && !json.Valid(data) {
			t.Fatalf("%q was read", data)
		}
		if !json.Valid(data) {
			return
		}
		var whole tape
		if decoded := strict.Decode(data, "a tape", &whole); (decoded != nil) != (len(units.Faults(decoded)) > 0) || err == nil && decoded != nil {
			t.Fatalf("read with %v, decoded with %v", err, decoded)
		}
	})
}
