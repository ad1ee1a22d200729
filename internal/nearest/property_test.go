package nearest_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/internal/nearest"
	"pgregory.net/rapid"
)

// drawn is an instance that rapid chose, solved and audited.
func drawn(t *rapid.T) (instance, nearest.Point) {
	kind := rapid.IntRange(0, len(kinds)-1).Draw(t, "kind")
	n := rapid.IntRange(1, 8).Draw(t, "variables")
	p := makeInstance(kind, n, rapid.Uint64Range(0, 1<<40).Draw(t, "seed"))
	return p, audited(t, p, p.solve())
}

func audited(t *rapid.T, p instance, got nearest.Point) nearest.Point {
	if err := audit(p, got); err != nil {
		t.Fatal(err)
	}
	return got
}

// sameLength asks that two answers to the same question agree as far as the
// tolerance of the rows goes, see the package comment.
func sameLength(t *rapid.T, a, b nearest.Point, room float64) {
	if a.Status != b.Status {
		t.Fatalf("%v and %v", a.Status, b.Status)
	}
	la, lb := norm(a.X), norm(b.X)
	if math.Abs(la*la-lb*lb) > room+1e-12*(1+la*la) {
		t.Fatalf("|x|^2 of %g and %g, room %g", la*la, lb*lb, room)
	}
}

// room is by how much |x|^2 can be above that of any other answer: four times the
// sum of the multipliers times what each row may be missed by. For half of |x|^2
// is y.b - |A'y|^2/2 but for that sum, and half of the other answer's at least
// the same, with b less the tolerance.
func room(p nearest.Point, rows []nearest.Row) float64 {
	sum := 0.0
	for i, y := range p.Duals {
		sum += 4 * math.Abs(y) * allowed(rows[i])
	}
	return sum
}

func TestOrderOfRowsDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, got := drawn(t)
		turned := instance{n: p.n, want: p.want, rows: rapid.Permutation(p.rows).Draw(t, "rows")}
		other := audited(t, turned, turned.solve())
		sameLength(t, got, other, max(room(got, p.rows), room(other, turned.rows)))
	})
}

func TestScaleOfRowsDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, got := drawn(t)
		scaled := instance{n: p.n, want: p.want}
		for _, r := range p.rows {
			f := math.Pow(2, float64(rapid.IntRange(-20, 20).Draw(t, "power of two")))
			scaled.add(nearest.Row{Coefficients: times(f, r.Coefficients), Least: f * r.Least, Equal: r.Equal})
		}
		// A power of two changes no digit, so not even rounding differs.
		if other := audited(t, scaled, scaled.solve()); other.Status != got.Status || !slices.Equal(other.X, got.X) {
			t.Fatalf("got %v at %v, scaled %v at %v", got.Status, got.X, other.Status, other.X)
		}
	})
}

func TestRotationOfSpaceTurnsTheAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, got := drawn(t)
		mirror := chanceOf(rapid.Uint64().Draw(t, "mirror")).vector(p.n)
		turned := instance{n: p.n, want: p.want}
		for _, r := range p.rows {
			turned.add(nearest.Row{Coefficients: reflect(r.Coefficients, mirror), Least: r.Least, Equal: r.Equal})
		}
		other := audited(t, turned, turned.solve())
		sameLength(t, got, other, max(room(got, p.rows), room(other, turned.rows)))
	})
}

// reflect turns a into its mirror image; two of these make a rotation.
func reflect(a, mirror []float64) []float64 {
	image := slices.Clone(a)
	f := 2 * product(a, mirror) / product(mirror, mirror)
	for j := range image {
		image[j] -= f * mirror[j]
	}
	return image
}

// Rows one by one give the answer of all at once, each set lies in the one before,
// so that the nearest point never comes nearer, and an empty set stays empty.
func TestCutsOneByOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, got := drawn(t)
		s := nearest.New(p.n)
		last := s.Solve()
		for i, r := range p.rows {
			s.Add(r)
			now := audited(t, instance{n: p.n, rows: p.rows[:i+1]}, s.Solve())
			if last.Status == nearest.Empty && now.Status != nearest.Empty {
				t.Fatalf("row %d made an empty set %v", i, now.Status)
			}
			if now.Status == nearest.Found && norm(now.X) < norm(last.X)-room(last, p.rows)/(1+norm(last.X))-1e-13*(1+norm(last.X)) {
				t.Fatalf("row %d shortened x from %g to %g", i, norm(last.X), norm(now.X))
			}
			last = now
		}
		sameLength(t, got, last, max(room(got, p.rows), room(last, p.rows)))
	})
}

// A second call finds nothing left to do, and the same bits.
func TestSolveAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := drawn(t)
		s := nearest.New(p.n)
		s.Add(p.rows...)
		first := s.Solve()
		again := s.Solve()
		if again.Status != first.Status || !slices.Equal(again.X, first.X) || !slices.Equal(again.Duals, first.Duals) || again.Steps != 0 {
			t.Fatalf("first %+v, then %+v", first, again)
		}
	})
}
