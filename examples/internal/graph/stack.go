package graph

// label is a text that belongs to a place along the axis.
type label struct {
	at    float64 // the place
	words string
	start float64 // where the text begins
	row   int     // counted from the axis downwards
}

// placed gives each label the first row in which it does not run into another.
func placed(labels []label) []label {
	for i := range labels {
		l := &labels[i]
		room := wide(l.words)
		l.start = max(0, min(l.at-room/2, width-room))
		for l.meets(labels[:i]) {
			l.row++
		}
	}
	return labels
}

// meets tells whether a label stands in another's way.
func (l *label) meets(others []label) bool {
	const apart = 1.5
	for _, o := range others {
		if o.row == l.row && o.start < l.start+wide(l.words)+apart && l.start < o.start+wide(o.words)+apart {
			return true
		}
	}
	return false
}
