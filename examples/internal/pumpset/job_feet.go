package pumpset

// singleFeet are the feet of the movable machine one by one, two and two of
// which, mostly, make a station of the tape.
type singleFeet struct {
	Height length       `json:"height,omitzero"` // of the shaft centreline above the undersides of the feet
	Limit  length       `json:"limit,omitzero"`  // lift above that of all feet, beyond which a foot is soft
	Way    count        `json:"way,omitzero"`    // of those that the sheet lists against soft foot; left out: the first
	Feet   []singleFoot `json:"feet"`
}

type singleFoot struct {
	Name     words    `json:"name"`
	Station  words    `json:"station"` // the name of feet on the tape
	Side     side     `json:"side"`
	Across   length   `json:"across"`             // from below the shaft centreline
	Lift     length   `json:"lift,omitzero"`      // when its bolt alone was loosened; down is negative
	Gaps     []corner `json:"gaps,omitempty"`     // instead
	LiftLeft length   `json:"lift_left,omitzero"` // the same, after the moves
	Pack     []piece  `json:"pack,omitempty"`     // what lies under it now
}

// corner is what a feeler found under one corner of a foot, seen from the middle
// of the foot.
type corner struct {
	Away    length `json:"away"`     // from the coupling; towards it is negative
	ToThree length `json:"to_three"` // to nine is negative
	Gap     length `json:"gap"`
}

// piece is one kind of shim, and how many there are.
type piece struct {
	Marked   length `json:"marked,omitzero"`
	Measured length `json:"measured,omitzero"`
	Count    count  `json:"count"`
}

// stock is what lies in the box, and what a pack has to keep to.
type stock struct {
	Stock  []piece `json:"stock"`
	Error  length  `json:"error,omitzero"`
	Pieces count   `json:"pieces,omitzero"` // most under one foot
	Keep   length  `json:"keep,omitzero"`   // least that stays under a foot
}
