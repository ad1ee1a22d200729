package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type correctionsInput struct {
	Position position     `json:"position"`
	Target   *position    `json:"target,omitzero"`
	Feet     []align.Foot `json:"feet"`
}

type correctionsResult struct {
	Moves []move `json:"moves"`
}

// move is how far the feet of a station go.
type move struct {
	Foot       string        `json:"foot"`
	Horizontal units.Length  `json:"horizontal"`
	Vertical   units.Length  `json:"vertical"`
	U          *align.Vector `json:"u,omitzero"`
}

func corrections(in *correctionsInput, f *strict.Faults) correctionsResult {
	off := lessTarget(f, &in.Position, in.Target)
	moves, err := off.Corrections(in.Feet...)
	f.Adopt(err, ofPosition)
	return correctionsResult{toldMoves(moves)}
}

// lessTarget returns a position less a target that may be left out, or nothing
// where one of them is not sound: the difference would be blamed for it again.
func lessTarget(f *strict.Faults, p, target *position) align.Estimate {
	off := p.estimate(f, "/position")
	if target != nil {
		off = off.Minus(target.estimate(f, "/target"))
	}
	if len(*f) > 0 {
		return align.Estimate{}
	}
	return off
}

// ofPosition blames the position for a difference that the library refuses.
func ofPosition(path string) string {
	for _, prefix := range []string{"/off/value", "/value"} {
		if rest, found := strings.CutPrefix(path, prefix); found {
			return "/position" + rest
		}
	}
	for _, prefix := range []string{"/off/cov", "/cov"} {
		if rest, found := strings.CutPrefix(path, prefix); found {
			return "/position" + uOfPlane.Replace(rest)
		}
	}
	return path
}

// movesOf returns the moves at feet that may be left out.
func movesOf(f *strict.Faults, found align.Estimate, feet []align.Foot) []align.Move {
	if len(feet) == 0 {
		return nil
	}
	moves, err := found.Corrections(feet...)
	f.Adopt(err, same)
	return moves
}

func toldMoves(moves []align.Move) []move {
	list := make([]move, len(moves))
	for i, m := range moves {
		list[i] = toldMove(m)
	}
	return list
}

func toldMove(m align.Move) move {
	told := move{Foot: m.Foot.Name, Horizontal: m.By.Horizontal, Vertical: m.By.Vertical}
	if m.Basis == align.Stated {
		told.U = &m.U
	}
	return told
}
