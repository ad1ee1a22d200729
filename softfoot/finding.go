package softfoot

import "example.org/collinear/units"

// Finding is what a survey says.
type Finding struct {
	Common units.Length  `json:"common"`           // movement of all feet: the smallest lift; zero where a foot went down
	Worst  units.Length  `json:"worst"`            // largest lift above it
	Feet   []FootFinding `json:"feet"`             // in the order of the survey
	Fits   []Explanation `json:"fits"`             // every explanation that fits, the likeliest first; none: no soft foot
	Next   []FollowUp    `json:"next,omitempty"`   // what would tell explanations apart, or has to come first
	Advice []Advice      `json:"advice,omitempty"` // ways to cure, fewest feet first; none where shims do not cure
}

// FootFinding is what a survey says of one foot.
type FootFinding struct {
	Foot   string       `json:"foot"`
	Lift   units.Length `json:"lift"`            // as seen; of gaps the smallest
	Excess units.Length `json:"excess"`          // above the common movement
	Soft   bool         `json:"soft"`            // whether that is above the limit
	Taper  *Taper       `json:"taper,omitempty"` // of gaps that differ by more than the limit
}

// Taper is a gap that is wider at one side of the foot than at the other.
type Taper struct {
	Rise   units.Length `json:"rise"`   // largest gap less smallest
	Along  units.Slope  `json:"along"`  // growth of the gap along the shaft, in the direction of x
	Across units.Slope  `json:"across"` // growth of the gap across, towards 3 o'clock
}

// Explanation is one cause that accounts for what was seen.
type Explanation struct {
	Kind Kind     `json:"kind"`
	Feet []string `json:"feet"`
}

// FollowUp is something to look at next.
type FollowUp struct {
	Check Check    `json:"check"`
	Feet  []string `json:"feet"`
}

// Advice is one way to cure soft feet with shims, given what explains them as
// parallel or angular.
type Advice struct {
	Shims []Shim       `json:"shims"`
	Left  units.Length `json:"left"`  // largest excess lift that may be left: what the shims leave of the lifts as explained, and what that misses of those seen
	Shift Shift        `json:"shift"` // what the flat shims do to the shaft
}

// Shim is what goes under one foot.
type Shim struct {
	Foot    string       `json:"foot"`
	Flat    units.Length `json:"flat,omitzero"`     // thickness under the whole foot
	Stepped *Taper       `json:"stepped,omitempty"` // on top: rising by steps from nothing, thickest where the gap is widest
}
