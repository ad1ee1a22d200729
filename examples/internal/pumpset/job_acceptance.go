package pumpset

// acceptance is what the alignment is judged by: exactly one of these, and how sure
// the verdict has to be.
type acceptance struct {
	Confidence percent `json:"confidence,omitzero"` // none: what was found against its limit alone

	Rule    rule     `json:"rule,omitzero"`
	Sliding sliding  `json:"sliding,omitzero"` // in the coupling, at the job's speed
	Own     *own     `json:"own,omitempty"`
	Table   *bySpeed `json:"table,omitempty"`
}

// own are limits of the crew's own.
type own struct {
	Source   words  `json:"source"`
	Offset   length `json:"offset,omitzero"`
	Slope    slope  `json:"slope,omitzero"`
	Flex     slope  `json:"flex,omitzero"`
	PerPlane bool   `json:"per_plane,omitzero"`
}

// bySpeed is a table of limits, of which the row for the job's speed counts.
type bySpeed struct {
	Source   words `json:"source"`
	Edition  words `json:"edition,omitzero"`
	PerPlane bool  `json:"per_plane,omitzero"`
	Rows     []row `json:"rows"`
}

type row struct {
	Speed  speed  `json:"speed"`
	Offset length `json:"offset,omitzero"`
	Slope  slope  `json:"slope,omitzero"`
	Flex   slope  `json:"flex,omitzero"`
}
