package pumpset

import (
	"encoding"
	"regexp"
	"strconv"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type words = strict.Words

// written is a quantity as the crew wrote it down, so that a report can show
// "5 7/16 in" and not what became of it. The zero value is none: "0 mm" is a
// length.
type written[Q any, P interface {
	*Q
	encoding.TextUnmarshaler
}] struct {
	Value Q
	text  string
}

type (
	length      = written[units.Length, *units.Length]
	position    = written[units.Clock, *units.Clock]
	slope       = written[units.Slope, *units.Slope]
	speed       = written[units.RotationalSpeed, *units.RotationalSpeed]
	sliding     = written[units.LinearSpeed, *units.LinearSpeed]
	rise        = written[units.TemperatureDifference, *units.TemperatureDifference]
	temperature = written[units.Temperature, *units.Temperature]
	expansion   = written[units.Expansion, *units.Expansion]
	count       = written[number, *number]
	percent     = written[hundredths, *hundredths]
)

// given tells whether there is a quantity at all.
func (w written[Q, P]) given() bool { return w.text != "" }

// String returns the text as it was written.
func (w written[Q, P]) String() string { return w.text }

// MarshalText gives the text as it was written.
func (w written[Q, P]) MarshalText() ([]byte, error) { return []byte(w.text), nil }

// UnmarshalText reads what the quantity reads.
func (w *written[Q, P]) UnmarshalText(text []byte) error {
	if err := P(&w.Value).UnmarshalText(text); err != nil {
		return err
	}
	w.text = string(text)
	return nil
}

// hundredths is a share as a number between 0 and 1, written "95 %".
type hundredths float64

var inHundred = regexp.MustCompile(`^([0-9]{1,3}(\.[0-9]{1,6})?) ?%$`)

// UnmarshalText takes a number without a sign and the sign for hundredths.
func (h *hundredths) UnmarshalText(text []byte) error {
	s := string(text)
	found := inHundred.FindStringSubmatch(s)
	if found == nil {
		code := units.Malformed
		if s == "" {
			code = units.Missing
		}
		return &units.Fault{Code: code, Value: strict.Short(strconv.Quote(s)), Want: "a number of hundredths, such as \"95 %\""}
	}
	value, err := strconv.ParseFloat(found[1], 64)
	*h = hundredths(value / 100)
	return err
}

// number is a number of pieces.
type number int

var digits = regexp.MustCompile(`^[0-9]{1,9}$`)

// UnmarshalText takes digits alone.
func (n *number) UnmarshalText(text []byte) error {
	s := string(text)
	if !digits.MatchString(s) {
		code := units.Malformed
		if s == "" {
			code = units.Missing
		}
		return &units.Fault{Code: code, Value: strict.Short(strconv.Quote(s)), Want: "a whole number in digits, not below zero, such as \"4\""}
	}
	value, err := strconv.Atoi(s)
	*n = number(value)
	return err
}
