package sheet

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/internal/words"
	"example.org/collinear/units"
)

// Difficulty is how much an exercise asks for. The zero value is none.
type Difficulty uint8

// The difficulties.
const (
	OneStep   Difficulty = iota + 1 // a single step of a hand method
	OneMethod                       // a dial method from the readings to the corrections, without growth
	WholeJob                        // a dial method with sag, the growth of both machines, and the corrections
)

var difficultyWords = words.List{OneStep: "one_step", OneMethod: "one_method", WholeJob: "whole_job"}

// String returns the wire form, for one "whole_job".
func (d Difficulty) String() string { return difficultyWords.Word(uint8(d)) }

// MarshalText gives the wire form.
func (d Difficulty) MarshalText() ([]byte, error) { return difficultyWords.Marshal(uint8(d)) }

// UnmarshalText reads the wire form.
func (d *Difficulty) UnmarshalText(text []byte) error {
	return words.Unmarshal(d, difficultyWords, text)
}

// Exercise is a problem that was drawn for a trainee, in a scene of our own. Its working
// is Problem.Working, its handout is [Exercise.Text].
type Exercise struct {
	Seed       uint64     `json:"seed"`
	Difficulty Difficulty `json:"difficulty"`
	System     System     `json:"system"` // in which it was measured, and in which it is to be worked
	Title      string     `json:"title"`
	Story      string     `json:"story"` // where it happens and what is wanted; the numbers stand in the problem
	Problem    Problem    `json:"problem"`
}

// NewExercise draws an exercise. The same seed, difficulty and system give the same
// exercise on every platform.
//
// The numbers are such as a crew would measure: readings in hundredths of a millimetre or
// half mils that keep the validity rule to one of these, distances in 5 mm or eighths of
// an inch, temperatures in whole degrees, misalignments up to 0.8 mm and 1.5 mm/m in
// both planes. The last lines of the working come out the same however a hand rounds the
// lines between, to the places that [Working.Steps] shows or not at all, and every slip
// that the working knows of shows on the full sheet.
//
// It refuses a difficulty and a system that do not exist (Unknown, at /difficulty and
// /system). A seed of which nothing comes after many attempts would be refused too
// (Unreachable, at /seed); none was found.
func NewExercise(seed uint64, d Difficulty, s System) (Exercise, error) {
	e, _, err := newExercise(seed, d, s, mostAttempts)
	return e, err
}

// mostAttempts is how many problems are drawn for one exercise before it is given up. The
// tests draw 18 000 exercises, of which the hardest took 61. Ours.
const mostAttempts = 1000

// newExercise draws so many problems at most, and also tells how many it drew.
func newExercise(seed uint64, d Difficulty, s System, most int) (e Exercise, attempts int, err error) {
	var faults check.Faults
	var root check.Path
	if !difficultyWords.Known(uint8(d)) {
		faults.Add(units.Unknown, root.Field("difficulty"), d, "one_step, one_method or whole_job")
	}
	if !systemWords.Known(uint8(s)) {
		faults.Add(units.Unknown, root.Field("system"), s, "metric or inch")
	}
	if err := faults.Err(); err != nil {
		return Exercise{}, 0, err
	}
	draw := newDraw(seed, d, s)
	scene, subject := draw.scene(), draw.subject(d)
	for attempts = 1; attempts <= most; attempts++ {
		problem := subject(draw)
		if w, err := problem.Working(); err == nil && w.teaches(s) {
			e = Exercise{Seed: seed, Difficulty: d, System: s, Problem: problem}
			e.Title, e.Story = scene.tell(w.title, problem)
			return e, attempts, nil
		}
	}
	faults.Add(units.Unreachable, root.Field("seed"), seed, "a seed that gives an exercise")
	return Exercise{}, attempts, faults.Err()
}
