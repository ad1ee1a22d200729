package units

import (
	"fmt"
	"math"
	"strings"
)

var clocks = quantity{
	name:  "Clock",
	units: []unit{named("deg", "1")},
}

// ParseClock reads a position as hours and minutes, "10:30", or as a decimal
// number of degrees from 12 o'clock, "37.5 deg" or "37.5°". Hours run from 1 to
// 12 without a leading zero, minutes from 00 to 59 with two digits. Half past
// twelve is 12:30, which is 15 degrees. Degrees may have a sign and any size;
// nothing is taken off them.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseClock(s string) (Clock, error) {
	if len(s) <= maxText && strings.Contains(s, ":") {
		return parseHours(s)
	}
	x, err := clocks.parse(s)
	return Clock(x), err
}

// parseHours reads hours and minutes.
func parseHours(text string) (Clock, error) {
	s := &scanner{q: &clocks, text: text}
	hour := s.digits()
	if hour == "" || hour[0] == '0' && hour != "0" {
		return 0, s.fault(Malformed, 0, "an hour from 1 to 12 without a sign or a leading zero")
	}
	if !s.skip(":") {
		return 0, s.fault(Malformed, s.at, "a colon after the hour")
	}
	start := s.at
	minute := s.digits()
	if len(minute) != 2 || s.at != len(text) {
		return 0, s.fault(Malformed, start, "two digits of minutes and the end of the text")
	}
	h, m := small(hour), small(minute)
	if h == 0 {
		return 0, s.fault(OutOfRange, 0, "an hour from 1 to 12: half past twelve is 12:30")
	}
	if h > 12 {
		return 0, s.fault(OutOfRange, 0, "an hour from 1 to 12")
	}
	if m > 59 {
		return 0, s.fault(OutOfRange, start, "minutes from 00 to 59")
	}
	return Clock(h%12)*Hour + Clock(m)*Minute, nil
}

// small returns the value of digits, or 100 if there are more than two.
func small(digits string) int {
	if len(digits) > 2 {
		return 100
	}
	n := 0
	for _, d := range digits {
		n = 10*n + int(d-'0')
	}
	return n
}

// MustParseClock is ParseClock for tests and constants: it panics where that
// returns an error.
func MustParseClock(s string) Clock { return must(ParseClock(s)) }

// String returns the wire form: "10:30" for a whole number of minutes from
// 12:00 to 11:59, and degrees, "37.3 deg", for everything else, also a full
// turn or more. It loses nothing: ParseClock gives c back.
func (c Clock) String() string {
	minutes := float64(c / Minute)
	if !(0 <= minutes && minutes < 720) || minutes != math.Trunc(minutes) {
		return clocks.wire(float64(c))
	}
	hour, minute := int(minutes)/60, int(minutes)%60
	if hour == 0 {
		hour = 12
	}
	return fmt.Sprintf("%d:%02d", hour, minute)
}

// MarshalText returns the wire form. A position that is not finite is a *Fault.
func (c Clock) MarshalText() ([]byte, error) {
	if !finite(float64(c)) {
		return clocks.marshal(float64(c))
	}
	return []byte(c.String()), nil
}

// UnmarshalText reads what ParseClock reads. On an error it leaves c as it is.
func (c *Clock) UnmarshalText(text []byte) error { return unmarshal(c, text, ParseClock) }
