package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/big"
)

// verifiers look at answers in which there is a choice.
var verifiers = map[string]func(v vector, result json.RawMessage) []difference{
	"plan":      verifyPlan,
	"shims":     verifyShims,
	"soft_foot": verifyFeet,
}

// verifiable asks of a vector what its verifier takes for granted.
func (v vector) verifiable() error {
	if v.Verify == nil {
		return nil
	}
	switch v.Op {
	case "plan":
		var in trainInput
		if err := json.Unmarshal(v.Input, &in); err != nil || len(in.Joints) != len(in.Machines)-1 {
			return errors.New("a joint between each two machines is needed to verify a plan")
		}
	case "soft_foot":
		var in struct{ Feet []surveyFoot }
		var want struct{ Left string }
		if err := decodeAll(v.Input, &in, v.Verify, &want); err != nil || want.Left != "" && len(in.Feet) != 4 {
			return errors.New("four feet are needed to verify what is left of a twist")
		}
	}
	return nil
}

// wrong is the answer of a verifier that found one thing wrong.
func wrong(at, got, want string) []difference {
	return []difference{{At: at, Got: short(got), Want: want}}
}

// junk is the same of what is not as the protocol has it.
func junk(at, got, want string) []difference {
	return []difference{{At: at, Got: short(got), Want: want, junk: true}}
}

// lengths reads lengths and remembers what could not be read.
type lengths struct{ err error }

// mm reads a length into millimetres; nothing is zero.
func (l *lengths) mm(text string) *big.Rat { return l.or(text, "0 mm") }

// or is mm with a value for what was left out.
func (l *lengths) or(text, otherwise string) *big.Rat {
	if text == "" {
		text = otherwise
	}
	q, err := readQuantity(text)
	if err == nil && q.of != "length" {
		err = fmt.Errorf("%q is no length", text)
	}
	if err != nil {
		l.err = errors.Join(l.err, err)
		return new(big.Rat)
	}
	return q.value
}

// float is mm in float64.
func (l *lengths) float(text string) float64 {
	x, _ := l.mm(text).Float64()
	return x
}

// differences reports what could not be read.
func (l *lengths) differences(at string) []difference {
	if l.err == nil {
		return nil
	}
	return junk(at, l.err.Error(), "lengths with their unit")
}
