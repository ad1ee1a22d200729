package align

import (
	"math"
	"strings"

	"example.org/collinear/internal/lsq"
	"example.org/collinear/units"
)

// limitCondition is where readings count as singular: it leaves a number at most
// four of a float64's sixteen digits. Common practice has no figure; it is ours.
const limitCondition = 1e12

// plainCondition is up to where the condition is read off the covariance, which
// is good to the condition times some rounding units; beyond, singular values of
// the equations themselves decide.
const plainCondition = 1e6

// fullTurn returns by how much the columns of the four numbers are scaled for the
// condition: as a full turn would leave them, alike in both planes, so that turning
// the clock changes nothing and the best that can be is one.
func (l law) fullTurn() [four]float64 {
	offset, slope := math.Sqrt(l.onOffset), math.Sqrt(l.onSlope)
	return [four]float64{offsetY: offset, slopeY: slope, offsetZ: offset, slopeZ: slope}
}

// judge keeps covariance and condition of the equations, and refuses what is
// singular.
func (s *solution) judge(common *lsq.Triangle, scale [four]float64) error {
	s.keepCovariance(common)
	if s.plain(scale) {
		return nil
	}
	return s.see(common, scale)
}

// plain reads the condition off the covariance, and tells whether that is good
// enough: with D the scale of the columns, one over the least singular value of
// A D^-1 is the root of the largest eigenvalue of D (A'WA)^-1 D.
func (s *solution) plain(scale [four]float64) bool {
	scaled := s.unit
	for i := range scaled {
		for j := range scaled[i] {
			scaled[i][j] *= scale[i] * scale[j]
		}
	}
	s.condition = math.Sqrt(scaled.largest())
	return s.condition < plainCondition
}

// pairs of numbers of different planes, those of one kind first: where all probes
// stood at the same places, turning the two offsets and the two slopes alike parts
// the planes; and those of one plane.
var (
	acrossPlanes = [...][2]int{{offsetY, offsetZ}, {slopeY, slopeZ}, {offsetY, slopeZ}, {slopeY, offsetZ}}
	withinPlanes = [...][2]int{{offsetY, slopeY}, {offsetZ, slopeZ}}
)

// largest returns the largest eigenvalue of a symmetric matrix that has none below
// zero, by Jacobi's rotations until the planes are parted (Golub and Van Loan,
// Matrix Computations, 4th ed., section 8.5, from memory). The matrix is used up.
func (m *matrix) largest() float64 {
	const unit, enough = 0x1p-54, 40 // 1 to 4 are usual
	rounding := unit * (m[0][0] + m[1][1] + m[2][2] + m[3][3])
	for range enough {
		if m.clear(acrossPlanes[:], rounding); m.parted(rounding) {
			break
		}
		m.clear(withinPlanes[:], rounding)
	}
	return max(m.largestOf(offsetY, slopeY), m.largestOf(offsetZ, slopeZ))
}

// clear turns each of the pairs that are above rounding to zero, once.
func (m *matrix) clear(pairs [][2]int, rounding float64) {
	for _, p := range pairs {
		if math.Abs(m[p[0]][p[1]]) > rounding {
			m.turn(p[0], p[1])
		}
	}
}

// parted tells whether no number has to do with one of the other plane.
func (m *matrix) parted(rounding float64) bool {
	for _, p := range acrossPlanes {
		if math.Abs(m[p[0]][p[1]]) > rounding {
			return false
		}
	}
	return true
}

// largestOf is the largest eigenvalue of what rows and columns i and j alone hold.
func (m *matrix) largestOf(i, j int) float64 {
	half := (m[i][i] - m[j][j]) / 2
	return (m[i][i]+m[j][j])/2 + math.Sqrt(square(half)+square(m[i][j]))
}

// turn makes m[i][j] zero by the smaller rotation of rows and columns i and j. Its
// tangent t solves m[i][j] t^2 + d t - m[i][j] = 0, d = m[j][j] - m[i][i].
func (m *matrix) turn(i, j int) {
	off, d := m[i][j], m[j][j]-m[i][i]
	root := math.Sqrt(float64(d*d) + float64(4*off*off))
	if d < 0 {
		root = -root
	}
	t := 2 * off / (d + root)
	cos := 1 / math.Sqrt(1+float64(t*t))
	sin := t * cos
	m[i][i] -= float64(t * off)
	m[j][j] += float64(t * off)
	m[i][j], m[j][i] = 0, 0
	for k := range m {
		if k != i && k != j {
			a, b := m[i][k], m[j][k]
			a, b = float64(cos*a)-float64(sin*b), float64(sin*a)+float64(cos*b)
			m[i][k], m[k][i], m[j][k], m[k][j] = a, a, b, b
		}
	}
}

// see computes the condition from the equations and refuses what is singular,
// naming the numbers that stand in a direction which the readings do not see.
func (s *solution) see(common *lsq.Triangle, scale [four]float64) error {
	var singular [four]float64
	var right, work [four * four]float64
	common.SVD(scale[:], singular[:], right[:], work[:])
	s.condition = 1 / singular[four-1]
	if s.condition < limitCondition {
		return nil
	}
	var blind [four]bool
	for j := range singular {
		if 1/singular[j] < limitCondition {
			continue
		}
		for i := range blind {
			blind[i] = blind[i] || math.Abs(right[four*i+j]) > 1e-6
		}
	}
	return refuse(units.Unseen, "readings that see the "+blindWords(blind))
}

// blindWords names the numbers, of which there is one at least: a direction is of length
// one, so that not all of it can be small.
func blindWords(blind [four]bool) string {
	words := [four]string{"horizontal offset", "horizontal slope", "vertical offset", "vertical slope"}
	var unseen []string
	for i, b := range blind {
		if b {
			unseen = append(unseen, words[i])
		}
	}
	return strings.Join(unseen, ", ")
}
