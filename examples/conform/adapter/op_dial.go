package adapter

import (
	"example.org/collinear/align/dial"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type quartersInput struct {
	At12 units.Length `json:"at12"`
	At3  units.Length `json:"at3"`
	At6  units.Length `json:"at6"`
	At9  units.Length `json:"at9"`
}

type quartersResult struct {
	Miss units.Length `json:"miss"`
	Half planes       `json:"half"`
}

// planes is a length in each plane.
type planes struct {
	Horizontal units.Length `json:"horizontal"`
	Vertical   units.Length `json:"vertical"`
}

func quarters(in *quartersInput, _ *strict.Faults) quartersResult {
	return quartersResult{
		Miss: dial.Miss(in.At12, in.At3, in.At6, in.At9),
		Half: planes{Horizontal: dial.HalfTIR(in.At3, in.At9), Vertical: dial.HalfTIR(in.At12, in.At6)},
	}
}

type fourthInput struct {
	Opposite units.Length   `json:"opposite"`
	Across   []units.Length `json:"across"`
}

type fourthResult struct {
	Reading units.Length `json:"reading"`
}

func fourth(in *fourthInput, f *strict.Faults) fourthResult {
	const want = "the two readings that stand across"
	switch len(in.Across) {
	case 2:
		return fourthResult{dial.Fourth(in.Opposite, in.Across[0], in.Across[1])}
	case 0:
		f.Add(units.Missing, "/across", "", want)
	case 1:
		f.Add(units.Missing, "/across/1", "", want)
	default:
		f.Add(units.Conflict, "/across/2", in.Across[2].String(), want)
	}
	return fourthResult{}
}

type mandrelSagInput struct {
	At12 units.Length `json:"at12"`
	At6  units.Length `json:"at6"`
}

type mandrelSagResult struct {
	Sag units.Length `json:"sag"`
}

func mandrelSag(in *mandrelSagInput, _ *strict.Faults) mandrelSagResult {
	return mandrelSagResult{dial.MandrelSag(in.At12, in.At6)}
}
