package sheet_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// given is a number with a unit in the text of an exercise.
var exerciseGiven = regexp.MustCompile(`([+-]?\d[\d./ ]*) (mm/m|um/m/K|mm/s|mm|mil/in/°F|mil/in|mil|in/s|in|°F|°C|rpm)\b`)

// parsed are the givens of a text, as a program that knows nothing of exercises reads
// them, by the type that their unit belongs to.
type exerciseGivens struct {
	lengths      []units.Length
	slopes       []units.Slope
	temperatures []units.Temperature
	expansions   []units.Expansion
	rotations    []units.RotationalSpeed
	speeds       []units.LinearSpeed
}

func readGivens(t *testing.T, text string) (g exerciseGivens) {
	t.Helper()
	_, text, _ = strings.Cut(text, "\nGiven\n")
	text, _, _ = strings.Cut(text, "\nTo find\n")
	for _, m := range exerciseGiven.FindAllStringSubmatch(text, -1) {
		amount := m[1] + " " + m[2]
		if _, after, ok := strings.Cut(m[1], " o'clock "); ok {
			amount = after + " " + m[2]
		}
		switch m[2] {
		case "mm/m", "mil/in":
			g.slopes = append(g.slopes, units.MustParseSlope(amount))
		case "um/m/K", "mil/in/°F":
			g.expansions = append(g.expansions, units.MustParseExpansion(amount))
		case "°F", "°C":
			g.temperatures = append(g.temperatures, units.MustParseTemperature(amount))
		case "mm/s", "in/s":
			g.speeds = append(g.speeds, units.MustParseLinearSpeed(amount))
		case "rpm":
			g.rotations = append(g.rotations, units.MustParseRotationalSpeed(amount))
		default:
			g.lengths = append(g.lengths, units.MustParseLength(strings.TrimPrefix(amount, "+")))
		}
	}
	return g
}

// near tells whether a list has the number, up to the rounding of floats, or its opposite:
// words have the sign.
func hasNear[Q ~float64](list []Q, want Q) bool {
	for _, q := range list {
		if off := float64(max(q, -q) - max(want, -want)); max(off, -off) <= 1e-9*float64(max(want, -want)) {
			return true
		}
	}
	return false
}

// All numbers of the problem, as they stand in its JSON, are in the text that the trainee
// is handed, whatever field they are in. What a crew does not measure is left out by name:
// covariances that no problem has, the rule that shims have to come to just what is
// wanted, the place of a lone mean temperature.
func TestExerciseTextHasAllGivens(t *testing.T) {
	eachExercise(t, 200, func(t *testing.T, e sheet.Exercise, _ sheet.Working) {
		text := e.Text()
		g := readGivens(t, text)
		var tree any
		if err := json.Unmarshal([]byte(mustMarshal(e.Problem)), &tree); err != nil {
			t.Fatal(err)
		}
		walkGivens(tree, "", func(path, value string) {
			if !strings.HasPrefix(path, "/flange_shims/off/cov") && !g.has(t, text, path, value) {
				t.Errorf("%s: %s is not told", path, value)
			}
		})
	})
}

// walkGivens visits the leaves of a JSON tree, but numbers that are zero where zero is
// "nothing".
func walkGivens(tree any, path string, visit func(path, value string)) {
	switch node := tree.(type) {
	case map[string]any:
		for name, child := range node {
			walkGivens(child, path+"/"+name, visit)
		}
	case []any:
		for _, child := range node {
			walkGivens(child, path+"/", visit)
		}
	case string:
		visit(path, node)
	case float64:
		visit(path, "count")
	}
}

// has tells whether a value of the problem is among what the text tells.
func (g exerciseGivens) has(t *testing.T, text, path, value string) bool {
	switch name := path[strings.LastIndex(path, "/")+1:]; name {
	case "at", "zero":
		return hasClock(text, value)
	case "running", "cold":
		want := units.MustParseTemperature(value).Celsius()
		var list []float64
		for _, x := range g.temperatures {
			list = append(list, x.Celsius())
		}
		return hasNear(list, want)
	case "expansion":
		return hasNear(g.expansions, units.MustParseExpansion(value))
	case "slope":
		s := units.MustParseSlope(value)
		return s == 0 || hasNear(g.slopes, s)
	case "speed":
		return hasNear(g.rotations, units.MustParseRotationalSpeed(value))
	case "sliding":
		return hasNear(g.speeds, units.MustParseLinearSpeed(value))
	case "name":
		return strings.Contains(strings.ToLower(text), value)
	case "foot":
		return strings.Contains(text, value)
	case "view":
		return strings.Contains(text, "stands behind the "+strings.TrimPrefix(value, "from_")+" machine")
	case "carrier":
		return strings.Contains(text, "carried by the "+value+" shaft")
	case "on":
		return strings.Contains(text, "lies on the "+value+" rim")
	case "push":
		return strings.Contains(text, map[string]string{
			"away_from_stationary": "pushes the movable machine away from the stationary one",
			"towards_stationary":   "pushes the movable machine towards the stationary one",
		}[value])
	case "kind":
		return strings.Contains(text, map[string]string{
			"rim": "Rim dial", "near_face": "plunger towards the other", "far_face": "plunger back towards", "gap": "Gauge for the gap",
		}[value])
	case "source", "basis": // of a coefficient, of no covariance
		return true
	case "count", "pieces": // beside the thickness, told as "8 of 0.05 mm"
		return strings.Contains(text, " of ")
	case "error": // told in words
		return strings.Contains(text, "come to just what is wanted")
	}
	l, err := units.ParseLength(value)
	if err != nil {
		t.Errorf("%s: %s is of no kind that this test knows", path, value)
	}
	return l == 0 || hasNear(g.lengths, l)
}

// hasClock tells whether a text names a place on the clock.
func hasClock(text, place string) bool {
	hour, _, _ := strings.Cut(place, ":")
	return strings.Contains(text, hour+" o'clock")
}

// The text gives no line away: neither an answer as the working shows it, nor a formula, nor
// the exact number. Givens that happen to be answers too are shown otherwise.
func TestExerciseTextGivesNothingAway(t *testing.T) {
	eachExercise(t, 200, func(t *testing.T, e sheet.Exercise, w sheet.Working) {
		text := e.Text()
		for _, step := range w.Steps(e.System) {
			for what, secret := range map[string]string{"answer": step.Answer, "exact number": step.Exact, "formula": step.Formula, "source": step.Source} {
				if secret != "leave" && strings.Contains(text, " "+secret) {
					t.Errorf("%s: the %s %q is told", step.ID, what, secret)
				}
			}
		}
	})
}

// What to find, in the order of the working, and the caution at the end.
func TestExerciseTextAsksForEveryLine(t *testing.T) {
	eachExercise(t, 50, func(t *testing.T, e sheet.Exercise, w sheet.Working) {
		text := e.Text()
		_, rest, _ := strings.Cut(text, "\nTo find\n")
		for _, step := range w.Steps(e.System) {
			_, after, found := strings.Cut(rest, step.Sought+"  ["+step.ID+"]\n")
			if !found {
				t.Errorf("%s is not asked for, or out of order", step.ID)
			}
			rest = after
		}
		if !strings.HasPrefix(text, e.Title+"\n\n"+e.Story+"\n\nGiven\n") {
			t.Error("no title and story in front")
		}
		if !strings.HasSuffix(text, w.Text(e.System)[strings.LastIndex(w.Text(e.System), "\n\n"):]) {
			t.Error("no caution at the end")
		}
	})
}

// A reading that was not taken is told to be missing, where it was.
func TestExerciseTextTellsWhatWasNotTaken(t *testing.T) {
	missing := 0
	eachExercise(t, 100, func(t *testing.T, e sheet.Exercise, _ sheet.Working) {
		want := 0
		for _, round := range exerciseRounds(e.Problem) {
			want += 4 - len(round)
		}
		if got := strings.Count(e.Text(), " o'clock not taken"); got != want {
			t.Errorf("%d told to be missing, %d are", got, want)
		}
		missing += want
	})
	if missing == 0 {
		t.Error("none was missing")
	}
}

// The scenes are our own, and told in whole sentences.
func TestExerciseStories(t *testing.T) {
	openings := map[string]bool{}
	eachExercise(t, 50, func(t *testing.T, e sheet.Exercise, _ sheet.Working) {
		opening, _, _ := strings.Cut(e.Story, ".")
		openings[opening] = true
		for _, sentence := range strings.Split(strings.TrimSuffix(e.Story, "."), ". ") {
			if sentence == "" || strings.ToUpper(sentence[:1]) != sentence[:1] {
				t.Errorf("not a sentence: %q", sentence)
			}
		}
		if warm := e.Problem.Job != nil && e.Problem.Job.Movable != nil; strings.Contains(e.Story, "both machines grow as they warm up") != warm {
			t.Errorf("machines that grow: %v, but %q", warm, e.Story)
		}
		if !strings.HasSuffix(e.Story, ".") || strings.ContainsAny(e.Story, "%{}") {
			t.Errorf("%q", e.Story)
		}
	})
	if len(openings) < 5 {
		t.Errorf("%d scenes", len(openings))
	}
}

// A caller may change an exercise: a name that begins with a capital stays as it is, and
// a position between the hours is told as the clock has it.
func TestExerciseTextOfAChangedProblem(t *testing.T) {
	job, err := sheet.NewExercise(1, sheet.WholeJob, sheet.Metric)
	if err != nil {
		t.Fatal(err)
	}
	job.Problem.Job.Feet[0].Name = "Inboard"
	var hung sheet.Exercise
	for seed := uint64(0); seed < 300 && hung.Problem.FlangeShims == nil; seed++ {
		hung, _ = sheet.NewExercise(seed, sheet.OneStep, sheet.Metric)
	}
	if hung.Problem.FlangeShims == nil {
		t.Fatal("no exercise with a flange")
	}
	bolt := &hung.Problem.FlangeShims.Flange.Bolts[0]
	bolt.At = units.Twelve + 45
	for _, row := range []struct{ text, want string }{
		{job.Text(), "- Inboard feet of the movable machine: "},
		{hung.Text(), "- Bolt " + bolt.Name + ": at 1:30, "},
	} {
		if !strings.Contains(row.text, row.want) {
			t.Errorf("no %q in\n%s", row.want, row.text)
		}
	}
}

// A handout says which dial is to show what, and which way a face dial looks.
func TestExerciseTextOfReadingsToSet(t *testing.T) {
	for kind, want := range map[align.Kind]string{
		align.Rim:      "- Rim dial, carried by the stationary shaft, touching 0 mm from the coupling centre",
		align.NearFace: "- Face dial, carried by the stationary shaft, plunger towards the other machine, 100 mm from the axis\n",
		align.FarFace:  "- Face dial, carried by the stationary shaft, plunger back towards the machine that carries it, 100 mm from the axis\n",
		align.Gap:      "- Gauge for the gap between the faces, 100 mm from the axis\n",
	} {
		probe := align.Probe{Kind: kind, Carrier: align.Stationary, Radius: 100 * units.Millimetre}
		e := sheet.Exercise{Problem: sheet.Problem{TargetReadings: &sheet.TargetReadings{Probe: probe}}}
		if text := e.Text(); !strings.Contains(text, want) {
			t.Errorf("%v: no %q in\n%s", kind, want, text)
		}
	}
}

// A handout says how a dial counts where there is one, which readings are wanted without
// sag, and on which side a foot stands.
func TestExerciseTellsHowItWasMeasured(t *testing.T) {
	nothing := regexp.MustCompile(`plunger (in|out) by 0(\.0*)? (mm|in)`)
	for seed := range uint64(120) {
		for _, d := range []sheet.Difficulty{sheet.OneStep, sheet.OneMethod} {
			e, _ := mustExercise(t, seed, d, sheet.Metric)
			text := e.Text()
			dialled := strings.Contains(text, "Rim dial") || strings.Contains(text, "Face dial")
			read := dialled && e.Problem.TargetReadings == nil // what it will show nobody has read
			if strings.Contains(text, "A dial counts up") != read || nothing.MatchString(text) {
				t.Errorf("%v %d: %s", d, seed, text)
			}
			if s := e.Problem.Sweep; s != nil && strings.Contains(text, "wanted without sag,") != (s.Mandrel != nil || s.Rim.Sag != 0) {
				t.Errorf("%v %d: %s", d, seed, text)
			}
			if s := e.Problem.SoftFoot; s != nil {
				left := 0
				for _, f := range s.Feet {
					if f.Y < 0 {
						left++
					}
				}
				if strings.Count(text, "to the 9 o'clock side") != left || strings.Count(text, "to the 3 o'clock side") != len(s.Feet)-left {
					t.Errorf("%v %d: %s", d, seed, text)
				}
			}
			if s := e.Problem.ShimStacks; s != nil {
				soft := 0
				for _, o := range s.Orders {
					if o.SoftFoot != 0 {
						soft++
					}
				}
				if strings.Count(text, "more for its soft foot") != soft {
					t.Errorf("%v %d: %s", d, seed, text)
				}
			}
			if c := e.Problem.ColdTarget; c != nil && strings.Contains(text, "stationary machine does not grow") != (c.Stationary == nil) {
				t.Errorf("%v %d: %s", d, seed, text)
			}
			if s := e.Problem.SlidingLimit; s != nil && (s.Speed < 300*units.RevolutionPerMinute || s.Speed > 3600*units.RevolutionPerMinute) {
				t.Errorf("%v %d: %v", d, seed, s.Speed)
			}
		}
	}
}
