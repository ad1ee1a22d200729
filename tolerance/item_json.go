package tolerance

import (
	"encoding/json"
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// itemJSON is the wire form of an Item. U and Probability are absent where they
// are unknown.
type itemJSON struct {
	Of    Quantity `json:"of"`
	Plane Plane    `json:"plane"`
	Found string   `json:"found"`
	U     string   `json:"u,omitempty"`
	Limit string   `json:"limit"`
	Ratio float64  `json:"ratio"`

	Probability *float64 `json:"probability,omitempty"`
}

// MarshalJSON writes amounts with their unit and leaves out an unknown
// uncertainty and probability, which have no number. It refuses an amount that is
// not finite, and a probability that is none (OutOfRange).
func (i Item) MarshalJSON() ([]byte, error) {
	var faults check.Faults
	wire := i.wire(&faults, check.Path{})
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return json.Marshal(wire)
}

func (i *Item) wire(faults *check.Faults, at check.Path) itemJSON {
	wire := itemJSON{Of: i.Of, Plane: i.Plane, Ratio: i.Ratio}
	wire.Found = i.Of.write(faults, at.Field("found"), i.Found)
	wire.Limit = i.Of.write(faults, at.Field("limit"), i.Limit)
	if !math.IsNaN(i.Of.number(i.U)) {
		wire.U = i.Of.write(faults, at.Field("u"), i.U)
	}
	wire.Probability = written(faults, at.Field("probability"), i.Probability)
	return wire
}

// UnmarshalJSON reads what MarshalJSON gives. It refuses a quantity or a plane
// that is missing, amounts that are missing or cannot be read as what the quantity
// is counted in, such as are below zero, a limit below the Resolution and a
// probability that is none (OutOfRange), and what cannot be read, as a Verdict does.
func (i *Item) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[itemJSON](data)
	if err != nil {
		return err
	}
	var faults check.Faults
	item := wire.item(&faults, check.Path{})
	if err := faults.Err(); err != nil {
		return err
	}
	*i = item
	return nil
}

func (w *itemJSON) item(faults *check.Faults, at check.Path) Item {
	if w.Plane == 0 {
		faults.Add(units.Missing, at.Field("plane"), nil, "a plane")
	}
	if w.Of == 0 {
		faults.Add(units.Missing, at.Field("of"), nil, "a quantity")
		return Item{} // which units count is not known
	}
	item := Item{Of: w.Of, Plane: w.Plane, U: w.Of.amount(math.NaN()), Ratio: w.Ratio}
	item.Found, _ = w.Of.read(faults, at.Field("found"), w.Found)
	if w.U != "" {
		item.U, _ = w.Of.read(faults, at.Field("u"), w.U)
	}
	limit, sound := w.Of.read(faults, at.Field("limit"), w.Limit)
	if sound && w.Of.nanometres(limit) < Resolution {
		faults.Add(units.OutOfRange, at.Field("limit"), w.Limit, "a limit of at least 1 nm (a slope: 1 nm over a metre)")
	}
	item.Limit = limit
	item.Probability = told(faults, at.Field("probability"), w.Probability)
	return item
}

// written is how a probability is written, nil where it is unknown.
func written(faults *check.Faults, at check.Path, p float64) *float64 {
	if math.IsNaN(p) {
		return nil
	}
	checkProbability(faults, at, p)
	return &p
}

// told is the inverse of written.
func told(faults *check.Faults, at check.Path, p *float64) float64 {
	if p == nil {
		return math.NaN()
	}
	checkProbability(faults, at, *p)
	return *p
}

func checkProbability(faults *check.Faults, at check.Path, p float64) {
	if !(p >= 0 && p <= 1) {
		faults.Add(units.OutOfRange, at, p, "a probability from 0 to 1")
	}
}

// number is the inverse of amount.
func (q Quantity) number(a Amount) float64 {
	if q == Offset {
		return float64(a.Length)
	}
	return float64(a.Slope)
}

// write gives the wire form of an amount.
func (q Quantity) write(faults *check.Faults, at check.Path, a Amount) string {
	var text []byte
	var err error
	if q == Offset {
		text, err = a.Length.MarshalText()
	} else {
		text, err = a.Slope.MarshalText()
	}
	faults.Adopt(at, err)
	return string(text)
}

// read reads the wire form of an amount, which has no sign.
func (q Quantity) read(faults *check.Faults, at check.Path, text string) (a Amount, sound bool) {
	var err error
	if q == Offset {
		a.Length, err = units.ParseLength(text)
	} else {
		a.Slope, err = units.ParseSlope(text)
	}
	faults.Adopt(at, err)
	if q.number(a) < 0 {
		faults.Add(units.OutOfRange, at, text, "an amount not below zero")
		return a, false
	}
	return a, err == nil
}
