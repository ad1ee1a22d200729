package nearest

import "math"

// basis is the orthogonal factorisation N = Q R of the normals let in, one column
// each. The vectors q[0], ..., q[n-1] are orthonormal, the first of them, as many
// as there are normals, span the normals, the others what is left of the space.
type basis struct {
	size int         // number of normals
	q    [][]float64 // q[k] is a vector
	r    [][]float64 // r[c] is the column of normal c, up to its diagonal r[c][c]
}

// reset makes the basis one of n vectors and no normals, in the given memory for n x n
// numbers twice.
func (b *basis) reset(q, r []float64, n int) {
	b.q, b.r = b.q[:0], b.r[:0]
	for i := range n {
		b.q = append(b.q, q[i*n:(i+1)*n:(i+1)*n])
		b.r = append(b.r, r[i*n:(i+1)*n:(i+1)*n])
	}
	b.clear()
}

// clear leaves no normals and the unit vectors.
func (b *basis) clear() {
	b.size = 0
	for k, q := range b.q {
		clear(q)
		q[k] = 1
	}
}

// push takes in a normal, given by its components d along the vectors q, some of
// which must lie outside the span so far. It turns the vectors outside until one
// of them, the first, has all of that part. It uses d up.
func (b *basis) push(d []float64) {
	for k := len(d) - 1; k > b.size; k-- {
		if c, s, h := turn(d[k-1], d[k]); h != 0 {
			rotate(b.q[k-1], b.q[k], c, s)
			d[k-1] = h
		}
	}
	copy(b.r[b.size], d[:b.size+1])
	b.size++
}

// drop lets go of normal l. The columns behind it move up by one, which leaves
// each with one number below the diagonal; turning takes that out.
func (b *basis) drop(l int) {
	gone := b.r[l]
	copy(b.r[l:b.size], b.r[l+1:b.size])
	b.size--
	b.r[b.size] = gone
	for c := l; c < b.size; c++ {
		cos, sin, _ := turn(b.r[c][c], b.r[c][c+1])
		for k := c; k < b.size; k++ {
			rotate(b.r[k][c:c+1], b.r[k][c+1:c+2], cos, sin)
		}
		rotate(b.q[c], b.q[c+1], cos, sin)
	}
}

// turn returns the rotation that takes (a, b) to (h, 0); h is 0 if there is
// nothing to turn.
func turn(a, b float64) (cos, sin, h float64) {
	if b == 0 {
		return 1, 0, 0
	}
	h = math.Sqrt(float64(a*a) + float64(b*b))
	return a / h, b / h, h
}

// solve overwrites v with R^-1 v.
func (b *basis) solve(v []float64) {
	for c := b.size - 1; c >= 0; c-- {
		v[c] /= b.r[c][c]
		addTo(v[:c], -v[c], b.r[c][:c])
	}
}

// solveTransposed overwrites v with R'^-1 v.
func (b *basis) solveTransposed(v []float64) {
	for c := range b.size {
		v[c] = (v[c] - dot(b.r[c][:c], v[:c])) / b.r[c][c]
	}
}
