package align

import (
	"example.org/collinear/internal/lsq"
	"example.org/collinear/units"
)

// reduced is one set as two equations in the sine and the cosine of its own
// harmonic, free of its zero, worth as much as all its readings.
type reduced struct {
	rows   [2][2]float64
	rhs    [2]float64
	sum    float64 // weighted squares that no harmonic explains
	size   float64 // weighted squares of the readings
	weight float64 // sum of the squared weights
}

// reduce takes in all readings of a set. What it works on is b.
func (r *reduced) reduce(set *Set, b *block) {
	*r = reduced{}
	if n := len(set.Readings); n <= atOnce && b.take(set, set.Readings, set.Readings[0].Value) {
		r.rows, r.rhs = b.rows()
		r.count(b, set.Readings[0].Value)
	} else {
		r.nest(set, b)
	}
	r.straighten(set)
}

// count adds what a block tells beside its equations.
func (r *reduced) count(b *block, zero units.Length) {
	r.sum += b.sum
	r.size += b.spread + float64(b.weight*square(b.mean.y+mm(zero)))
	r.weight += b.weight
}

func square(x float64) float64 { return float64(x * x) }

// nest reduces a set block by block to a triangle in (zero, sine, cosine), and
// reading by reading where a block alone sees too little. Its first row settles the
// zero; the other two no longer know of it.
func (r *reduced) nest(set *Set, b *block) {
	var work [3 * (3 + 1)]float64
	own := lsq.In(work[:], 3)
	zero := set.Readings[0].Value
	for rest := set.Readings; len(rest) > 0; {
		n := min(len(rest), atOnce)
		if b.take(set, rest[:n], zero) {
			b.addTo(&own)
			r.count(b, zero)
		} else {
			r.add(&own, set, rest[:n], zero)
		}
		rest = rest[n:]
	}
	r.takeRows(&own)
}

// takeRows takes what of a triangle no longer knows of the zero.
func (r *reduced) takeRows(own *lsq.Triangle) {
	for i := range r.rows {
		var row [3]float64
		r.rhs[i] = own.Row(row[:], i+1)
		r.rows[i] = [2]float64{row[1], row[2]}
	}
	r.sum += own.SumSquares()
}

// add takes in readings one by one.
func (r *reduced) add(own *lsq.Triangle, set *Set, readings []Reading, zero units.Length) {
	for i := range readings {
		u := readings[i].U
		if u == 0 {
			u = set.U.Reading
		}
		w := weightOf(u)
		sin, cos := set.View.Clock(readings[i].At).SinCos()
		row := [3]float64{w, w * sin, w * cos}
		own.Add(row[:], w*mm(readings[i].Value-zero))
		r.size += square(w * mm(readings[i].Value))
		r.weight += float64(w * w)
	}
}

// straighten takes the sag off, which is a harmonic itself.
func (r *reduced) straighten(set *Set) {
	for i := range r.rows {
		r.rhs[i] -= float64(r.rows[i][1] * set.droop())
	}
}

// weight is one over the uncertainty of reading i in millimetres, or one.
func (s *Set) weight(i int) float64 { return weightOf(s.uncertainty(i)) }

func weightOf(u units.Length) float64 {
	if u == 0 {
		return 1
	}
	return float64(units.Millimetre / u)
}
