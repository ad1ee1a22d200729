package shims

// cost is what a choice of pieces costs, for one foot or summed over several.
// Costs are compared field by field from the top, and adding the same to two of
// them leaves their order as it is: sums of least costs are lower bounds.
type cost struct {
	short   int64 // nm below what has to be kept
	excess  int64 // nm of error beyond what is allowed
	pieces  int   // under the feet
	err     int64 // nm of error, without sign
	handled int   // pieces taken out and put in
}

// compare returns -1, 0 or +1 as c is better than d, as good, or worse.
func (c cost) compare(d cost) int {
	if c.short != d.short {
		return order(c.short < d.short)
	}
	if c.excess != d.excess {
		return order(c.excess < d.excess)
	}
	if c.pieces != d.pieces {
		return order(c.pieces < d.pieces)
	}
	if c.err != d.err {
		return order(c.err < d.err)
	}
	if c.handled != d.handled {
		return order(c.handled < d.handled)
	}
	return 0
}

func order(less bool) int {
	if less {
		return -1
	}
	return +1
}

func (c cost) plus(d cost) cost {
	return cost{c.short + d.short, c.excess + d.excess, c.pieces + d.pieces, c.err + d.err, c.handled + d.handled}
}

func (c cost) minus(d cost) cost {
	return cost{c.short - d.short, c.excess - d.excess, c.pieces - d.pieces, c.err - d.err, c.handled - d.handled}
}

// reached tells whether enough stays and the error is allowed.
func (c cost) reached() bool { return c.short == 0 && c.excess == 0 }

// missesMoreThan tells whether more is missing than with d, or the errors exceed
// what is allowed by more.
func (c cost) missesMoreThan(d cost) bool { return c.short != d.short || c.excess > d.excess }
