package align

import "math"

// sweep is one set as its trials see it.
//
// Its readings y, each over its uncertainty, are
//
//	y/u = (1, sin t, cos t)/u (c, S, C) + e
//
// with e independent normal errors of deviation one. An orthogonal Q that turns the
// three columns into a triangle turns e into Q e: errors that are independent and
// normal with deviation one again, whatever Q is. The first row settles the zero c,
// the next two are all that a fit sees of the set, and the others are what no
// harmonic explains. So a trial draws the two errors that the fit sees, and not one
// for each reading. That is exact, and no step of first order: it asks only that the
// errors of readings are normal and independent of those of angles, with which Q
// changes. Derived here.
type sweep struct {
	set      Set // about what is drawn
	first    int // where the first set of its mounting stands
	weight   float64
	readings []weighted
	sin, cos []float64 // to work in: the columns of this trial
	own      equations // where the angles are exact
}

// weighted is a reading times its weight: that weight, the columns of its sine and
// its cosine, and its value less the mean, with the sag in it.
type weighted struct{ one, sin, cos, value float64 }

// equations are the two that a set comes to, in the amplitudes of its sine and its
// cosine, in units of the deviation of a reading of weight one.
type equations struct {
	rows [2][2]float64
	rhs  [2]float64
}

func newSweep(sets []Set, i int) sweep {
	set := &sets[i]
	n := len(set.Readings)
	s := sweep{set: *set, first: mountedAt(sets, i), sin: make([]float64, n), cos: make([]float64, n)}
	mean := 0.0
	for j, r := range set.Readings {
		w := set.weight(j)
		s.weight += float64(w * w)
		mean += float64(w * w * mm(r.Value))
	}
	mean /= s.weight
	for j, r := range set.Readings {
		w := set.weight(j)
		sin, cos := set.sinCos(j)
		s.readings = append(s.readings, weighted{w, w * sin, w * cos, w * (mm(r.Value) - mean)})
	}
	s.own = s.reduce(nil)
	return s
}

// reduce returns the equations of a set whose clock positions err by so many
// radians, in the library's view; none: they do not. Its method is that of
// [system.triangle], with the zero as its first column.
func (s *sweep) reduce(errors []float64) (e equations) {
	meanSin, meanCos := s.turnEach(errors)
	var ss, sc, sy, cc, cy float64
	for i := range s.readings {
		r := &s.readings[i]
		sin, cos := s.sin[i]-float64(meanSin*r.one), s.cos[i]-float64(meanCos*r.one)
		s.sin[i], s.cos[i] = sin, cos
		ss += float64(sin * sin)
		sc += float64(sin * cos)
		sy += float64(sin * r.value)
	}
	along := perhaps(sc, ss)
	for i := range s.readings {
		cos := s.cos[i] - float64(along*s.sin[i])
		cc += float64(cos * cos)
		cy += float64(cos * s.readings[i].value)
	}
	root := [2]float64{math.Sqrt(ss), math.Sqrt(cc)}
	e.rows[0] = [2]float64{root[0], perhaps(sc, root[0])}
	e.rows[1] = [2]float64{0, root[1]}
	e.rhs = [2]float64{perhaps(sy, root[0]), perhaps(cy, root[1])}
	return e
}

// turnEach writes the columns of sine and cosine with each angle off by its error,
// and returns their weighted means.
func (s *sweep) turnEach(errors []float64) (meanSin, meanCos float64) {
	for i := range s.readings {
		r := &s.readings[i]
		s.sin[i], s.cos[i] = r.sin, r.cos
		if errors != nil {
			sin, cos := math.Sincos(errors[i])
			s.sin[i] = float64(r.sin*cos) + float64(r.cos*sin)
			s.cos[i] = float64(r.cos*cos) - float64(r.sin*sin)
		}
		meanSin += float64(r.one * s.sin[i])
		meanCos += float64(r.one * s.cos[i])
	}
	return meanSin / s.weight, meanCos / s.weight
}

// perhaps returns a/b; zero where b is, for a column that is no column.
func perhaps(a, b float64) float64 {
	if b == 0 {
		return 0
	}
	return a / b
}

// turn turns the clock of the equations by an angle of this sine and cosine:
// S sin(t+d) + C cos(t+d) told in the amplitudes S and C.
func (e *equations) turn(sin, cos float64) {
	for i := range e.rows {
		r := &e.rows[i]
		r[0], r[1] = float64(r[0]*cos)+float64(r[1]*sin), float64(r[1]*cos)-float64(r[0]*sin)
	}
}
